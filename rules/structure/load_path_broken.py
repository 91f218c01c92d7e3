"""Loads that nothing brings down to the floor or the wall."""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import TYPE_CHECKING

from reviewer.findings import Figure, Filling, Finding, Severity, Working
from reviewer.language.source import Span
from reviewer.model.plan import GROUNDS
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.units import force
from reviewer.wording import listed

if TYPE_CHECKING:
    from reviewer.workshop.stranding import Island, Lets

_JOINED = {
    "touches": ("only touches {others}, with no joint there", "only touch {others}, with no joint there"),
    "slides": (
        "is only let into {others}, where nothing keeps it from sliding down",
        "are only let into {others}, where nothing keeps them from sliding down",
    ),
    "drops": (
        "only hangs in {others} dry, and drops out",
        "only hang in {others} dry, and drop out",
    ),
}


def _ground_named(name: str) -> str:
    return f"the {name}" if name in GROUNDS else name


def _family(review: Review, name: str) -> str:
    part = review.plan.parts.get(name)
    return part.family if part else name


def _declared(review: Review, name: str) -> float:
    return math.fsum(each.lasting + each.brief for each in review.declared.get(name, ()))


def _start(review: Review, island: Island) -> str:
    """The part whose load the path is shown for: the one that bears most, the heaviest where none bears."""
    loads = {name: _declared(review, name) for name in island.parts}
    weights = {name: review.masses[name].weight for name in island.parts}
    return max(island.parts, key=lambda name: (loads[name], round(weights[name], 6)))


def _told(island: Island, end: str) -> tuple[Lets, ...]:
    """How the island meets what does not carry it: as the end of the path does, the worst made first."""
    hows = [each.how for each in island.lets if each.part == end] or [each.how for each in island.lets]
    how = next((each for each in hows if each != "touches"), "touches")
    return tuple(each for each in island.lets if each.how == how)


def _spans(review: Review, paths: list[tuple[str, ...]], lets: tuple[Lets, ...]) -> list[Span]:
    """The loads, every part of the path, and the joins that let go."""
    spans = [load.span for path in paths for load in review.loads_by_part.get(path[0], ())]
    spans += [each.join.span for each in lets if each.join is not None]
    spans += [review.span_of(name) for path in paths for name in path[1:]]
    spans += [review.span_of(each.other) for each in lets if each.other not in GROUNDS]
    return list(dict.fromkeys(spans))


def _finding(review: Review, alike: list[tuple[Island, tuple[str, ...], tuple[Lets, ...]]]) -> Finding:
    paths = [path for _, path, _ in alike]
    parts = tuple(name for island, _, _ in alike for name in island.parts)
    lets = tuple(each for _, _, some in alike for each in some)
    ends = tuple(dict.fromkeys(path[-1] for path in paths))
    starts = tuple(dict.fromkeys(path[0] for path in paths))
    others = tuple(dict.fromkeys(_ground_named(each.other) for each in lets))
    slack = tuple(dict.fromkeys(each.part for each in lets))
    own = math.fsum(review.masses[name].weight for name in parts)
    loads = math.fsum(_declared(review, name) for name in parts)
    path = paths[0]
    values: dict[str, Filling] = {
        "slack": listed(slack),
        "others": listed(others),
        "whole": force(own + loads),
        "path": ", then ".join(path[1:]),
        "starts": listed(starts),
    }
    does = _JOINED[lets[0].how][len(slack) > 1]
    if len(path) > 1:
        what = "The load on" if loads else "The weight of"
        says = f"{what} {{starts}} goes to {{path}} and ends there: {{slack}} {does}. "
        says += "{whole} in all cannot reach the floor or the wall."
    else:
        its = "its load" if len(starts) == 1 else "their loads"
        what = f"{{starts}} and {its}, {{whole}} in all," if loads else "the weight of {starts}, {whole},"
        who = "{slack}" if slack != starts else "it" if len(slack) == 1 else "they"
        says = f"Nothing brings {what} to the floor or the wall: {who} {does}."
    if lets[0].how == "touches":
        do = "Join {slack} to {others}, or put something under {slack} that stands."
    else:
        do = "Glue or screw {slack} to {others}, or put a rail or a cleat under {slack}."
    spans = _spans(review, paths, lets)
    figures = [Figure("own weight of what hangs there", force(own))]
    if loads:
        figures.append(Figure("loads on it", force(loads)))
    figures += [
        Figure(f"way {number}", " → ".join((*way, "ends")))
        for number, way in enumerate(dict.fromkeys(paths), 1)
        if number <= 4
    ]
    return Finding(
        parts=parts,
        at=review.span_of(ends[0]),
        also_at=tuple(span for span in spans if span != review.span_of(ends[0]))[:4],
        says=says,
        do=do,
        values=values,
        working=Working(
            tuple(figures),
            "weights + loads = what must reach the floor and the wall",
            Figure("does not reach them", force(own + loads)),
        ),
    )


@rule("load-path-broken", topic="structure", severity=Severity.ERROR, needs=("islands",))
def load_path_broken(review: Review) -> Iterator[Finding]:
    """A load has no way down to the floor or the wall through joints that can carry it.

    Goes wrong: The part stays where it is as long as clamps, friction or a tight fit hold it. Then wood
    dries, somebody leans on it, and it slides down or drops out with all that stands on it.

    Judged by: From every part its weight and its loads go on to what it lies on and to what a joint or
    hardware ties it to, as far as the floor or the wall. What merely touches at the side or from below,
    with no joint, carries nothing. Neither does a dry housing that is open downwards, where the part lies
    on no wood of the other and nothing of it lies on the other's, nor dry pegs and dry housings from which a
    part hangs. Parts that hang together are told as one, with the way of the heaviest load and where it ends.

    Leaves out: Whether a joint on the way is strong enough. Friction and pressure: a board wedged in counts
    as loose. Dry laps, mitres, dovetails and everything glued, driven or bolted count as able to carry.
    Parts that touch nothing that stands: part-floats tells those. Parts at fault by their place or their
    hardware are left to the rules about these.

    Sources: plain statics: a force ends nowhere but at what can push back

    Flagged:

        plan "Case with a loose shelf" in inches
        stock board: 1x10 pine
        outline case: 24 across, 9 1/4 deep, 30 tall, on floor
        part side for each of left, right: board, upright, facing side, as tall as case, on floor
            flush with each of case, flush with front of case
        part top: board, across, flat, on side.left, from left of case to right of case
            flush with front of case
        part shelf: board, across, flat, between side.left and side.right, flush with front of case
            bottom 14 above floor
        join top to side.*: screws #8 x 2, 3 per joint, from above
        load shelf: books

    Quiet:

        plan "Case with a shelf let in" in inches
        stock board: 1x10 pine
        outline case: 24 across, 9 1/4 deep, 30 tall, on floor
        part side for each of left, right: board, upright, facing side, as tall as case, on floor
            flush with each of case, flush with front of case
        part top: board, across, flat, on side.left, from left of case to right of case
            flush with front of case
        part shelf: board, across, flat, between side.left and side.right, housed 1/4 each end
            flush with front of case, bottom 14 above floor
        join top to side.*: screws #8 x 2, 3 per joint, from above
        join shelf to side.*: dado 1/4 deep, glue pva
        load shelf: books
    """
    alike: dict[tuple[object, ...], list[tuple[Island, tuple[str, ...], tuple[Lets, ...]]]] = {}
    for island in review.islands:
        if not island.lets or not review.told_by_place.isdisjoint(island.parts):
            continue
        path = island.path_from(_start(review, island), review.setting.solids)
        lets = _told(island, path[-1])
        families = tuple(dict.fromkeys(_family(review, name) for name in island.parts))
        theirs = tuple(dict.fromkeys(_family(review, each.other) for each in lets))
        ways = tuple(_family(review, name) for name in path)
        alike.setdefault((families, theirs, ways, lets[0].how), []).append((island, path, lets))
    for found in alike.values():
        yield _finding(review, found)
