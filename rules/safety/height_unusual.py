"""Seats, tops and shelves at heights that do not suit people."""

from __future__ import annotations

import re
from collections.abc import Iterator

from reviewer.findings import Figure, Finding, Severity, Working
from reviewer.language.source import Span
from reviewer.model.plan import Axis
from reviewer.reference.usual_heights import UsualHeight, usual_heights
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.setting_out.solid import Solid
from reviewer.units import TOLERANCE_MM, length
from reviewer.workshop.who_uses import made_for_a_child, word_in

_HEIGHT = "{part} is {height} above the floor, {side} than a {kind} usually is: {low} to {high} ({source})."
_HEIGHT_DO = (
    "Measure whoever will use it before you cut: the one that suits them is right, and where the public or "
    "people with other needs use it your local code has a say."
)
_GAP = "{part} is {height} above {seat}, {side} than the usual {low} to {high} ({source})."
_REACH = (
    "{part} is {height} above the floor: {high} is as far up as most people reach from the floor ({source})."
)
_REACH_DO = (
    "Put what is rarely wanted there and keep a step stool by, or lower it; your local code has a say where "
    "the public uses it."
)
#: A bed's slats carry a mattress that people sit on.
_BEDS = ("bed", "daybed", "cot", "crib", "bunk", "sofa", "couch", "settee")
#: What goes with a desk or a table and has a height of its own.
_GOES_WITH_IT: tuple[str, ...] = (
    "bench",
    "chair",
    "stool",
    "seat",
    "shelf",
    "shelves",
    "organiser",
    "organizer",
    "drawer",
)
_GOES_WITH_IT += ("drawers", "hutch", "riser", "lamp", "tray", "caddy", "rack", "box", "legs", "screen")
_TABLES = ("table", "desk")
#: What people sit on higher than this is a place to climb to and no seat, mm: own choice.
_NO_SEAT_MM = 1200.0
#: What is worked at is at least so much of the top of the piece: own choice.
_HALF = 0.5
#: A top stands above a seat by no more than this if people sit at it, mm: own choice, a bar and its stool.
_AT_IT_MM = 500.0


def _finding(
    part: str, at: Span, height: float, usual: UsualHeight, says: str, do: str, seat: str = ""
) -> Finding:
    return Finding(
        parts=(part,),
        at=at,
        says=says,
        do=do,
        values={
            "part": part,
            "seat": seat,
            "height": length(height),
            "side": "lower" if height < usual.low else "higher",
            "kind": usual.kind,
            "low": length(usual.low),
            "high": length(usual.high),
            "source": usual.source,
        },
        working=Working(
            figures=(Figure("height", length(height), "by the plan"),),
            limit=Figure(
                "usual at least" if height < usual.low else "usual at most",
                length(usual.low if height < usual.low else usual.high),
                usual.source,
            ),
        ),
        severity=Severity.NOTE,
    )


def _outside(height: float, usual: UsualHeight) -> bool:
    return not usual.low - TOLERANCE_MM <= height <= usual.high + TOLERANCE_MM


def _titled(review: Review, what: str) -> UsualHeight | None:
    """The kind that the title names in most letters: “standing desk” before “desk”."""
    said: list[tuple[int, UsualHeight]] = []
    for usual in usual_heights().values():
        word = word_in(review.plan.title, usual.words) if usual.what == what else None
        if word is not None and (what == "seat" or not _only_qualifies(review.plan.title, word)):
            said.append((len(word), usual))
    return max(said, key=lambda each: each[0], default=(0, None))[1]


def _only_qualifies(title: str, word: str) -> bool:
    """Whether a word of a title is no more than what the next one is for: a “desk shelf” is no desk."""
    after = re.search(rf"{re.escape(word)}s?\s+([a-z]+)", title.lower())
    return after is not None and after[1] in _GOES_WITH_IT


def _rank(solid: Solid) -> tuple[float, float, float]:
    """The highest first, then the leftmost and foremost, whatever the order of the text."""
    return solid.high[Axis.UP], -solid.low[Axis.ACROSS], -solid.low[Axis.DEEP]


def _seats(review: Review) -> Iterator[tuple[str, Span, float]]:
    """The highest seat of each load of people, and how high it is."""
    for load in review.plan.loads:
        on = [name for name in load.on if name in review.setting.solids]
        if load.use == "people seated" and on:
            best = max(on, key=lambda name: _rank(review.setting.solids[name]))
            yield best, load.span, review.setting.solids[best].high[Axis.UP]


def _tops(review: Review) -> Iterator[tuple[str, float]]:
    """The largest flat part at the top of every piece."""
    for piece in review.pieces:
        flat = [
            solid
            for name in piece.parts
            if (solid := review.setting.solids[name]).thick == Axis.UP
            and solid.high[Axis.UP] >= piece.height - 1
        ]
        if flat:
            best = max(flat, key=lambda solid: (round(solid.extent(0) * solid.extent(1)), _rank(solid)))
            yield best.name, best.high[Axis.UP]


def _works_lower(review: Review, top: str, usual: UsualHeight) -> bool:
    """Whether another top is worked at: a desk's below its hutch, or within a case."""
    solids = review.setting.solids
    least = _HALF * solids[top].extent(0) * solids[top].extent(1)
    return any(
        solid.thick == Axis.UP
        and solid.extent(0) * solid.extent(1) >= least
        and not _outside(solid.high[Axis.UP], usual)
        for solid in solids.values()
    )


@rule("height-unusual", topic="safety", severity=Severity.NOTE)
def height_unusual(review: Review) -> Iterator[Finding]:
    """A seat, a table or a shelf at a height that suits few.

    Goes wrong: A seat that is too high cuts into the thighs, one that is too low is hard to get up from, and
    what stands beyond reach is fetched from a chair that tips.

    Judged by: The height of what people are declared to sit on against that of seats (bar and counter
    stools by their title, children's seats by theirs); the top of dining tables, desks, benches and the
    like by the title; how far a table's top is above a seat in the same plan; and shelves with things on
    them above what people reach. Always a note: taste and the person decide.

    Leaves out: Beds and sofas, whose mattress or cushion no plan has; places that are climbed to; the depth
    of seats; how high a person's elbow is; and everything that the plan does not declare a use for. Where
    the public or people with other needs use it, local codes decide.

    Sources: Pheasant's estimates for UK adults, CCOHS on seats and tops, an Ontario resource on standing
    work (each read in part); shop pages for children's seats; the reach of 72 in is common practice.

    Flagged:

        plan "Tall bench" in inches
        stock plank: actual 1 1/2 x 11 1/4 pine, 8 ft
        outline frame: 40 across, 11 1/4 deep, 21 tall, on floor
        part leg for each of left, right: plank, upright, facing side, as tall as frame, on floor
            flush with each of frame, flush with front of frame
        part seat: plank, across, flat, on frame, from left of frame to right of frame
            flush with front of frame
        join seat to leg.*: screws #8 x 3, 3 per joint, from above
        load seat: 2 people seated

    Quiet:

        plan "Low bench" in inches
        stock plank: actual 1 1/2 x 11 1/4 pine, 8 ft
        outline frame: 40 across, 11 1/4 deep, 16 tall, on floor
        part leg for each of left, right: plank, upright, facing side, as tall as frame, on floor
            flush with each of frame, flush with front of frame
        part seat: plank, across, flat, on frame, from left of frame to right of frame
            flush with front of frame
        join seat to leg.*: screws #8 x 3, 3 per joint, from above
        load seat: 2 people seated
    """
    usual = usual_heights()
    child, bed = made_for_a_child(review.plan), word_in(review.plan.title, _BEDS)
    seats = [] if bed else list(_seats(review))
    kind = usual["child's seat"] if child else _titled(review, "seat") or usual["seat"]
    for part, at, height in seats:
        if height <= _NO_SEAT_MM and _outside(height, kind):
            yield _finding(part, at, height, kind, _HEIGHT, _HEIGHT_DO)
    titled = _titled(review, "top")
    if titled is not None and not child:
        for part, height in _tops(review):
            if part in {seat for seat, _, _ in seats} or not _outside(height, titled):
                continue
            if not _works_lower(review, part, titled):
                yield _finding(part, review.span_of(part), height, titled, _HEIGHT, _HEIGHT_DO)
    if seats and word_in(review.plan.title, _TABLES):
        above = usual["child's table above seat" if child else "table above seat"]
        seat, _, low = max(seats, key=lambda each: each[2])
        for part, height in _tops(review):
            if low < height <= low + _AT_IT_MM and _outside(height - low, above):
                at = review.span_of(part)
                yield _finding(part, at, height - low, above, _GAP, _HEIGHT_DO, seat)
    reach = usual["top shelf"]
    for load in review.plan.loads:
        for name in load.on if load.lasting else ():
            solid = review.setting.solids.get(name)
            if solid is not None and solid.high[Axis.UP] > reach.high + TOLERANCE_MM:
                yield _finding(name, load.span, solid.high[Axis.UP], reach, _REACH, _REACH_DO)
                break
