"""A piece that does not get to its place: doorway, hall, stairs, and standing it up under the ceiling."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import Literal

from reviewer.findings import Figure, Filling, Finding, Severity, Working
from reviewer.language.source import Span
from reviewer.model.plan import Axis, Room
from reviewer.records import NamedTuple
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.setting_out.solid import Vector
from reviewer.units import TOLERANCE_MM, count, length, show
from reviewer.workshop.going_in import (
    WAYS,
    Carried,
    Turn,
    carried,
    from_hall,
    narrowest,
    round_landing,
    standing_up,
    through_doorway,
    upright_through,
    without_legs,
)

_GEOMETRY = "plane geometry"
_SIZE = "{across} across, {deep} deep and {tall} tall"
_APART = (
    "or let it go in as parts: join some with bolts, or write a step that says “in the room” for what is "
    "joined there"
)
_SIDES = ("across", "deep", "tall")
#: Halvings while the largest size that goes in is looked for.
_HALVINGS = 40


class _Way(NamedTuple):
    """One hindrance on the way in: what it comes to in words and figures."""

    says: str
    do: str
    at: Span
    values: dict[str, Filling]
    working: Working
    severity: Severity


def _name(review: Review, one: Carried) -> str:
    if len(one.parts) == len(review.setting.solids):
        return review.plan.title
    if len(one.parts) == 1:
        return one.parts[0]
    return f"{one.parts[0]}, with the {len(one.parts) - 1} parts that stay joined to it,"


def _smaller(size: Vector, goes: Callable[[Vector], bool]) -> tuple[Literal[0, 1, 2], float] | None:
    """The one side that has to be cut least, and what it may be at most, mm; None where no one side helps."""
    best: tuple[float, Literal[0, 1, 2], float] | None = None
    axes: tuple[Literal[0, 1, 2], ...] = (0, 1, 2)
    for axis in axes:

        def with_side(amount: float, axis: int = axis) -> Vector:
            made = list(size)
            made[axis] = amount
            return (made[0], made[1], made[2])

        low, high = size[axis] / 2, size[axis]
        if not goes(with_side(low)):
            continue
        for _ in range(_HALVINGS):
            middle = (low + high) / 2
            if goes(with_side(middle)):
                low = middle
            else:
                high = middle
        if best is None or size[axis] - low < best[0]:
            best = size[axis] - low, axis, low
    return (best[1], best[2]) if best else None


def _do(
    review: Review,
    size: Vector,
    goes: Callable[[Vector], bool],
    values: dict[str, Filling],
    round_it: Callable[[Vector], Turn | None] | None = None,
) -> str:
    """What would help. ``round_it`` is the corner: a piece that is cut to go round on end is told so."""
    smaller = _smaller(size, goes)
    if smaller is None:
        return f"Measure the way in again, {_APART}."
    axis, most = smaller
    values["most"] = length(_down(most, review))
    how = ""
    if round_it is not None:
        turn = round_it((*size[:axis], most, *size[axis + 1 :]))
        if turn is not None and turn.upright == axis:
            how = " and carry it round standing" + (" on end" if axis != 2 else "")
    return f"Make it at most {{most}} {_SIDES[axis]}{how}, {_APART}."


def _down(amount: float, review: Review) -> float:
    """Down to what can be marked on a rule."""
    step = 25.4 / 16 if review.units.value == "inch" else 1.0
    return (amount + 1e-4) // step * step


def _left(amount: float, review: Review) -> str:
    told = show(length(abs(amount)), review.units)
    return f"{told} left all round" if amount >= 0 else f"{told} too large all round"


def _doorway(review: Review, one: Carried, room: Room) -> _Way | None:
    doorway = room.doorway
    assert doorway is not None
    margin = review.limit("doorway-margin")
    found = through_doorway(one.size, doorway)
    best = max(range(3), key=lambda number: round(found[number], 3))
    if found[best] >= margin.amount - TOLERANCE_MM:
        return None
    values: dict[str, Filling] = {
        "wide": length(doorway[0]),
        "high": length(doorway[1]),
        "way": WAYS[best],
        "off": length(abs(2 * found[best])),
        "left": length(abs(found[best])),
        "margin": margin.value,
        "source": margin.source,
    }

    def goes(size: Vector) -> bool:
        return max(through_doorway(size, doorway)) >= margin.amount

    do = _do(review, one.size, goes, values)
    too_large = found[best] < -TOLERANCE_MM
    weight = Severity.ERROR if too_large else Severity.WARNING
    legs, top = without_legs(review, one)
    if legs and max(through_doorway(top, doorway)) >= margin.amount - TOLERANCE_MM:
        # Every table goes in like this: on its side, its legs round the frame, one pair after the other.
        weight = Severity.WARNING if too_large else Severity.NOTE
        values |= {"legs": count(legs)}
        says = (
            "{what} goes through the doorway, {wide} wide and {high} tall, "
            + ("only if" if too_large else "more easily when")
            + f" its legs are brought round the frame one pair after the other: it is {_SIZE}, and {{way}} "
            + ("it is {off} too large as a whole" if too_large else "{left} is left all round as a whole")
            + ", but without its {legs} legs the rest goes through."
        )
        do = (
            "Measure that there is room to swing it on its side before and behind the doorway, with the door "
            "off its hinges if need be; or let the legs come off, with bolts, or in a step that says “in the "
            "room”."
        )
    elif too_large:
        says = (
            f"{{what}} does not go through the doorway, {{wide}} wide and {{high}} tall: it is {_SIZE}, and "
            "even {way}, turned in the opening as suits it best, it is {off} too large."
        )
    else:
        says = (
            f"{{what}} only just goes through the doorway, {{wide}} wide and {{high}} tall: it is "
            f"{_SIZE}, and "
            "{way}, which fits best, leaves {left} all round, less than the {margin} that is usual "
            "({source})."
        )
        do = (
            "Measure the clear opening between the stops with the door open, or off its hinges, before you "
            f"build it; {do[0].lower()}{do[1:]}"
        )
    return _Way(
        says,
        do,
        room.spans["doorway"],
        values,
        Working(
            tuple(
                Figure(way, _left(amount, review), _GEOMETRY) for way, amount in zip(WAYS, found, strict=True)
            ),
            "the best of the three ways, turned in the opening",
            Figure(WAYS[best], _left(found[best], review)),
            Figure("left all round, usual", margin.value, margin.source),
        ),
        weight,
    )


def _turn(
    review: Review, one: Carried, says: str, do: str, at: Span, turn: Turn | None, values: dict[str, Filling]
) -> _Way | None:
    """A corner that it does not go round."""
    if turn is not None and turn.over <= TOLERANCE_MM:
        return None
    if turn is None:
        says += "it is too tall every way that it can be held level."
        figures: tuple[Figure, ...] = ()
        result = limit = None
    elif turn.longest <= 0:
        says += "it is too thick for it every way that it can be held level."
        figures, result, limit = (), None, None
    else:
        values |= {
            "side": length(one.size[turn.upright]),
            "longest": length(turn.longest),
            "length": length(turn.length),
            "over": length(turn.over),
        }
        says += (
            "held level with its {side} side upright, which goes best, it may be {longest} long there, "
            "and it is "
            "{length}: {over} too long."
        )
        figures = (Figure("upright", length(one.size[turn.upright])), Figure("long", length(turn.length)))
        result = Figure("too long by", length(turn.over))
        limit = Figure("longest that turns there", length(turn.longest), _GEOMETRY)
    working = Working(figures, "length - longest that turns there", result, limit)
    return _Way(says, do, at, values, working, Severity.WARNING)


def _hall(review: Review, one: Carried, room: Room) -> _Way | None:
    assert room.hall is not None
    if room.doorway is None:
        return None
    hall, doorway = room.hall, room.doorway
    if max(through_doorway(one.size, doorway)) < -TOLERANCE_MM:
        return None  # told by the doorway itself
    values: dict[str, Filling] = {"hall": length(hall), "wide": length(doorway[0])}

    def round_it(size: Vector) -> Turn | None:
        return from_hall(size, hall, doorway)

    def goes(size: Vector) -> bool:
        turn = round_it(size)
        return turn is not None and turn.over <= 0

    return _turn(
        review,
        one,
        "{what} does not turn from the {hall} wide hall into the {wide} wide doorway in its side: ",
        _do(review, one.size, goes, values, round_it),
        room.spans["hall"],
        from_hall(one.size, hall, doorway),
        values,
    )


def _landing(review: Review, one: Carried, room: Room) -> _Way | None:
    landing = room.landing
    assert landing is not None
    headroom = review.limit("stair-headroom")
    values: dict[str, Filling] = {
        "first": length(landing[0]),
        "second": length(landing[1]),
        "headroom": headroom.value,
        "source": headroom.source,
    }

    def round_it(size: Vector) -> Turn | None:
        return round_landing(size, landing, headroom.amount)

    def goes(size: Vector) -> bool:
        turn = round_it(size)
        return turn is not None and turn.over <= 0

    return _turn(
        review,
        one,
        "{what} does not turn on the landing, {first} by {second}, under {headroom} of headroom ({source}): ",
        _do(review, one.size, goes, values, round_it),
        room.spans["landing"],
        round_landing(one.size, landing, headroom.amount),
        values,
    )


def _stairs(review: Review, one: Carried, room: Room) -> _Way | None:
    stairs = room.stairs
    assert stairs is not None
    headroom, margin = review.limit("stair-headroom"), review.limit("doorway-margin")
    least = narrowest(one.size, headroom.amount)
    if least is not None and least <= stairs - 2 * margin.amount + TOLERANCE_MM:
        return None
    values: dict[str, Filling] = {
        "stairs": length(stairs),
        "headroom": headroom.value,
        "source": headroom.source,
        "margin": margin.value,
        "margin_source": margin.source,
    }

    def goes(size: Vector) -> bool:
        now = narrowest(size, headroom.amount)
        return now is not None and now <= stairs - 2 * margin.amount

    do = _do(review, one.size, goes, values)
    says = f"{{what}} does not go up the stairs, {{stairs}} wide: it is {_SIZE}, and "
    too_wide = least is None or least > stairs + TOLERANCE_MM
    if least is None:
        says += "every way it is taller than the {headroom} under them ({source})."
    else:
        values["least"] = length(least)
        if too_wide:
            says += "the narrowest that it can be held is {least}."
        else:
            says = (
                f"{{what}} only just goes up the stairs, {{stairs}} wide: it is {_SIZE}, and held at its "
                "narrowest, {least}, it leaves less than the {margin} on each side that is usual "
                "({margin_source})."
            )
    return _Way(
        says,
        do,
        room.spans["stairs"],
        values,
        Working(
            (
                Figure("stairs", length(stairs), "as planned"),
                Figure("headroom", headroom.value, headroom.source),
            ),
            "the narrowest that it can be held, and the margin on both sides",
            Figure("narrowest", length(least) if least is not None else "too tall every way"),
            Figure("margin on each side", margin.value, margin.source),
        ),
        Severity.ERROR if too_wide else Severity.WARNING,
    )


def _ceiling(review: Review, one: Carried, room: Room) -> _Way | None:
    ceiling = room.ceiling
    assert ceiling is not None
    if not one.stands:
        return None
    tall = one.size[Axis.UP]
    values: dict[str, Filling] = {"ceiling": length(ceiling)}
    at = room.spans["ceiling"]
    if tall > ceiling + TOLERANCE_MM:
        values["over"] = length(tall - ceiling)
        return _Way(
            f"{{what}} is taller than the room: it is {_SIZE}, and the ceiling is {{ceiling}} up, "
            f"{{over}} less.",
            "Make it at most {ceiling} tall, less what it takes to stand it up.",
            at,
            values,
            Working(
                (Figure("tall", length(tall)),),
                "tall - ceiling",
                Figure("too tall by", length(tall - ceiling)),
                Figure("ceiling", length(ceiling), "as planned"),
            ),
            Severity.ERROR,
        )
    upright = room.doorway is not None and upright_through(one.size, room.doorway)
    if upright or tall <= min(one.size[0], one.size[1]):
        return None
    needed = standing_up(review, one)
    if needed <= ceiling + TOLERANCE_MM:
        return None
    values |= {"needed": length(needed), "over": length(needed - ceiling)}
    why = (
        ": it lies on its way in through the doorway, and" if room.doorway else " if it is carried in lying:"
    )
    base = min(one.size[0], one.size[1])
    most = (ceiling**2 - base**2) ** 0.5 if ceiling > base else 0.0
    do = f"Put it together standing in the room, {_APART}."
    if most > tall / 2:
        values["most"] = length(_down(most, review))
        do = f"Make it at most {{most}} tall, or put it together standing in the room, {_APART}."
    return _Way(
        f"{{what}} can't be stood up in the room{why} being tilted up it reaches {{needed}}, "
        f"{{over}} more "
        "than the ceiling at {ceiling}.",
        do,
        at,
        values,
        Working(
            (Figure("tall", length(tall)), Figure("smaller side of its base", length(base))),
            "the longest line from a lower to an upper corner while it is tilted; of a box √(tall² + base²)",
            Figure("reaches", length(needed), _GEOMETRY),
            Figure("ceiling", length(ceiling), "as planned"),
        ),
        Severity.ERROR if room.doorway else Severity.WARNING,
    )


@rule(
    "will-not-go-in",
    topic="fit",
    severity=Severity.ERROR,
    limits=("doorway-margin", "stair-headroom"),
    needs=("way_in",),
)
def will_not_go_in(review: Review) -> Iterator[Finding]:
    """A piece that does not get through the doorway, round the corner, up the stairs, or onto its feet.

    Goes wrong: The wardrobe is glued up, painted and beautiful, and stands in the workshop. Or it is in the
    room, on its back, and its diagonal is an inch more than the ceiling.

    Judged by: What goes in as one: parts that are joined, without those that bolts, wedges, shelf pins,
    clips or brackets hold without glue, what slides or lifts out, and what a step joins “in the room”. It
    is taken as the box round it. Through the doorway it goes side first, front first or top first, turned
    in the opening as suits it best. From a hall into a doorway in its side, and round a landing, it is
    carried level, with any of its sides upright. Up the stairs it is held at its narrowest. What does not
    go through the doorway on its feet, or may not, is stood up in the room: while it tilts, its longest
    line from a lower to an upper corner must pass below the ceiling. What the plan does not say of the way
    in is not judged.

    What is too large as a whole, but goes through without its slender legs, is a warning and no error: on
    its side its legs go round the frame one pair after the other, if there is room to swing it.

    Leaves out: Other shapes that are smaller than the box round them; tilting something up while it turns;
    door leaves, stops, handles, handrails and lamps that narrow the way; parts that could be unscrewed.
    Things alike in size are told once.

    Sources: plane geometry (a rectangle in a rectangle: Carver 1957, from memory; the ladder in the
    corridor); margin in a doorway: common practice, no source; headroom over stairs: International
    Residential Code, from memory. Local codes set doors, halls and stairs: measure yours.

    Flagged:

        plan "Wardrobe" in inches
        stock panel: birch plywood 3/4
        outline case: 36 across, 24 deep, 90 tall, on floor
        part side for each of left, right: panel, upright, facing side, 24 deep, 90 tall, on floor
            flush with each of case, flush with front of case
        part shelf for each of bottom, top: panel, across, flat, 24 deep
            between side.left and side.right across
            flush with each of case, flush with front of case
        join shelf.* to side.*: screws #8 x 2, 3 per joint, glue pva
        room hall: ceiling 92, doorway 32 x 80

    Quiet:

        plan "Wardrobe" in inches
        stock panel: birch plywood 3/4
        outline case: 36 across, 24 deep, 84 tall, on floor
        part side for each of left, right: panel, upright, facing side, 24 deep, 84 tall, on floor
            flush with each of case, flush with front of case
        part shelf for each of bottom, top: panel, across, flat, 24 deep
            between side.left and side.right across
            flush with each of case, flush with front of case
        join shelf.* to side.*: screws #8 x 2, 3 per joint, glue pva
        room hall: ceiling 92, doorway 32 x 80
    """
    room = review.plan.room
    if room is None or not review.way_in:
        return
    for one in carried(review):
        name = _name(review, one)
        size: dict[str, Filling] = {side: length(one.size[axis]) for axis, side in enumerate(_SIDES)}
        ways = (
            _doorway(review, one, room) if room.doorway else None,
            _hall(review, one, room) if room.hall else None,
            _stairs(review, one, room) if room.stairs else None,
            _landing(review, one, room) if room.landing else None,
            _ceiling(review, one, room) if room.ceiling else None,
        )
        for way in ways:
            if way is not None:
                yield Finding(
                    parts=one.parts,
                    at=way.at,
                    says=way.says,
                    do=way.do,
                    values={**size, **way.values, "what": name},
                    working=way.working,
                    also_at=(review.span_of(one.parts[0]),),
                    severity=way.severity,
                )
