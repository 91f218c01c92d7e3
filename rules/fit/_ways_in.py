"""What hinders a piece on its way in: the doorway, the hall before it, stairs and their landing."""

from __future__ import annotations

from reviewer.findings import Figure, Filling, Severity, Working
from reviewer.language.source import Span
from reviewer.model.plan import Room
from reviewer.records import NamedTuple
from reviewer.review import Review
from reviewer.rules.fit._made_smaller import smaller_size
from reviewer.setting_out.solid import Vector
from reviewer.units import TOLERANCE_MM, count, length, show
from reviewer.workshop.going_in import (
    WAYS,
    Carried,
    Turn,
    from_hall,
    narrowest,
    round_landing,
    through_doorway,
    without_legs,
)

GEOMETRY = "plane geometry"
SIZE = "{across} across, {deep} deep and {tall} tall"


class Hindrance(NamedTuple):
    """One hindrance on the way in: what it comes to in words and figures."""

    says: str
    do: str
    at: Span
    values: dict[str, Filling]
    working: Working
    severity: Severity


def _left(amount: float, review: Review) -> str:
    told = show(length(abs(amount)), review.units)
    return f"{told} left all round" if amount >= 0 else f"{told} too large all round"


def at_the_doorway(review: Review, one: Carried, room: Room) -> Hindrance | None:
    """A doorway that it does not go through, or only just, in the best of the three ways."""
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

    do = smaller_size(review, one.size, goes, values)
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
            + f" its legs are brought round the frame one pair after the other: it is {SIZE}, and {{way}} "
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
            f"{{what}} does not go through the doorway, {{wide}} wide and {{high}} tall: it is {SIZE}, and "
            "even {way}, turned in the opening as suits it best, it is {off} too large."
        )
    else:
        says = (
            f"{{what}} only just goes through the doorway, {{wide}} wide and {{high}} tall: it is "
            f"{SIZE}, and "
            "{way}, which fits best, leaves {left} all round, less than the {margin} that is usual "
            "({source})."
        )
        do = (
            "Measure the clear opening between the stops with the door open, or off its hinges, before you "
            f"build it; {do[0].lower()}{do[1:]}"
        )
    return Hindrance(
        says,
        do,
        room.spans["doorway"],
        values,
        Working(
            tuple(
                Figure(way, _left(amount, review), GEOMETRY) for way, amount in zip(WAYS, found, strict=True)
            ),
            "the best of the three ways, turned in the opening",
            Figure(WAYS[best], _left(found[best], review)),
            Figure("left all round, usual", margin.value, margin.source),
        ),
        weight,
    )


def _turn(
    review: Review, one: Carried, says: str, do: str, at: Span, turn: Turn | None, values: dict[str, Filling]
) -> Hindrance | None:
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
        limit = Figure("longest that turns there", length(turn.longest), GEOMETRY)
    working = Working(figures, "length - longest that turns there", result, limit)
    return Hindrance(says, do, at, values, working, Severity.WARNING)


def from_the_hall(review: Review, one: Carried, room: Room) -> Hindrance | None:
    """A hall too narrow to turn it into the doorway; nothing where the doorway itself is too small."""
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
        smaller_size(review, one.size, goes, values, round_it),
        room.spans["hall"],
        from_hall(one.size, hall, doorway),
        values,
    )


def on_the_landing(review: Review, one: Carried, room: Room) -> Hindrance | None:
    """A landing that it does not turn on."""
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
        smaller_size(review, one.size, goes, values, round_it),
        room.spans["landing"],
        round_landing(one.size, landing, headroom.amount),
        values,
    )


def up_the_stairs(review: Review, one: Carried, room: Room) -> Hindrance | None:
    """Stairs that it is too wide or too tall for, or only just goes up."""
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

    do = smaller_size(review, one.size, goes, values)
    says = f"{{what}} does not go up the stairs, {{stairs}} wide: it is {SIZE}, and "
    too_wide = least is None or least > stairs + TOLERANCE_MM
    if least is None:
        says += "every way it is taller than the {headroom} under them ({source})."
    else:
        values["least"] = length(least)
        if too_wide:
            says += "the narrowest that it can be held is {least}."
        else:
            says = (
                f"{{what}} only just goes up the stairs, {{stairs}} wide: it is {SIZE}, and held at its "
                "narrowest, {least}, it leaves less than the {margin} on each side that is usual "
                "({margin_source})."
            )
    return Hindrance(
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
