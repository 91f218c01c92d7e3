"""A piece that does not get to its place: doorway, hall, stairs, and standing it up under the ceiling."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Figure, Filling, Finding, Severity, Working
from reviewer.model.plan import Axis, Room
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.rules.fit._made_smaller import APART, SIDES, marked_down
from reviewer.rules.fit._ways_in import (
    GEOMETRY,
    SIZE,
    Hindrance,
    at_the_doorway,
    from_the_hall,
    on_the_landing,
    up_the_stairs,
)
from reviewer.units import TOLERANCE_MM, length
from reviewer.workshop.going_in import Carried, carried, standing_up, upright_through


def _name(review: Review, one: Carried) -> str:
    if len(one.parts) == len(review.setting.solids):
        return review.plan.title
    if len(one.parts) == 1:
        return one.parts[0]
    return f"{one.parts[0]}, with the {len(one.parts) - 1} parts that stay joined to it,"


def _ceiling(review: Review, one: Carried, room: Room) -> Hindrance | None:
    ceiling = room.ceiling
    assert ceiling is not None
    if not one.stands:
        return None
    tall = one.size[Axis.UP]
    values: dict[str, Filling] = {"ceiling": length(ceiling)}
    at = room.spans["ceiling"]
    if tall > ceiling + TOLERANCE_MM:
        values["over"] = length(tall - ceiling)
        return Hindrance(
            f"{{what}} is taller than the room: it is {SIZE}, and the ceiling is {{ceiling}} up, "
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
    do = f"Put it together standing in the room, {APART}."
    if most > tall / 2:
        values["most"] = length(marked_down(most, review))
        do = f"Make it at most {{most}} tall, or put it together standing in the room, {APART}."
    return Hindrance(
        f"{{what}} can't be stood up in the room{why} being tilted up it reaches {{needed}}, "
        f"{{over}} more "
        "than the ceiling at {ceiling}.",
        do,
        at,
        values,
        Working(
            (Figure("tall", length(tall)), Figure("smaller side of its base", length(base))),
            "the longest line from a lower to an upper corner while it is tilted; of a box √(tall² + base²)",
            Figure("reaches", length(needed), GEOMETRY),
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
        size: dict[str, Filling] = {side: length(one.size[axis]) for axis, side in enumerate(SIDES)}
        ways = (
            at_the_doorway(review, one, room) if room.doorway else None,
            from_the_hall(review, one, room) if room.hall else None,
            up_the_stairs(review, one, room) if room.stairs else None,
            on_the_landing(review, one, room) if room.landing else None,
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
