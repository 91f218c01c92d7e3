"""Screws, nails and bolts that no tool gets at when their turn comes."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Figure, Filling, Finding, Severity, Working
from reviewer.plan_words import called
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.units import length
from reviewer.workshop.reaching import OutOfReach, Reach, Room, free_from_behind, out_of_reach, room_for

#: Less room than this in front of a fastener is none.
_NO_ROOM_MM = 0.5


def _next_step(review: Review, reach: Reach, worst: OutOfReach, room: Room) -> tuple[str, dict[str, Filling]]:
    """What was tried and does it; the weightiest first."""
    if worst.special is not None:
        return "Have {special} at hand, no longer than {short} with its bit.", {
            "special": worst.special.said,
            "short": length(review.limit("short-driver-length").amount),
        }
    if worst.sooner:
        return "Join {head} to {point} in a step before {way} is put in: then the way is free.", {}
    if free_from_behind(reach, worst):
        if worst.placed.kind == "pocket screws":
            return (
                "Screw through {point} from its other side into the end of {head} instead: there the way is "
                "free.",
                {},
            )
        return "Drive them from the other side, through {point}: there the way is free.", {}
    if room.tool.name == "spanner":
        return "Move the bolts to where {way} is not in front of them, or take a shorter bolt.", {}
    return (
        "Move them away from {way}, drive them from another side, or join these two with dowels and glue.",
        {},
    )


def _finding(review: Review, reach: Reach, group: list[OutOfReach]) -> Finding:
    rooms = [room_for(reach, each) for each in group]
    worst, room = min(zip(group, rooms, strict=True), key=lambda each: round(each[1].free - each[1].needs, 2))
    heads = tuple(dict.fromkeys(each.placed.head_part for each in group))
    points = tuple(dict.fromkeys(each.placed.point_part for each in group))
    in_the_way = tuple(dict.fromkeys(name for each in rooms for name in each.parts))
    limit = review.limit(room.tool.limit)
    spans = tuple(dict.fromkeys(each.placed.fastening.span for each in group))
    do, more = _next_step(review, reach, worst, room)
    alike = all(abs(each.free - room.free) < 1.0 for each in rooms)
    values: dict[str, Filling] = {
        "kind": worst.placed.kind,
        "heads": called(review.plan, heads),
        "points": called(review.plan, points),
        "head": worst.placed.head_part,
        "point": worst.placed.point_part,
        "way": called(review.plan, room.parts),
        "ways": called(review.plan, in_the_way),
        "tool": room.tool.said,
        "free": length(room.free),
        "needs": length(room.needs),
        "lack": length(room.needs - room.free),
        "who": limit.source,
        **more,
    }
    stand = "stands" if len(in_the_way) == 1 else "stand"
    when = ""
    if worst.step is not None and worst.sooner:
        values["step"] = review.plan.steps[worst.step].title
        when = ", when “{step}” joins them"
    elif worst.special is None:
        when = ", and no order of work leaves the way free"
    if room.free < _NO_ROOM_MM:
        there = "there is no room at all"
    else:
        there = f"there is {'' if alike else 'as little as '}{{free}}"
    says = (
        f"{{ways}} {stand} in front of the {{kind}} from {{heads}} into {{points}}{when}: {{tool}} needs "
        f"{{needs}} ({{who}}) and {there}, so {{lack}} is missing."
    )
    if worst.special is not None:
        says += " Only {special} gets in."
    return Finding(
        parts=tuple(dict.fromkeys((*heads, *points))),
        at=spans[0],
        also_at=spans[1:],
        says=says,
        do=do,
        values=values,
        working=Working(
            (
                Figure(f"room in front of {worst.placed.head_part}", length(room.free)),
                Figure(f"{room.tool.said} with the {worst.placed.kind} standing out", length(room.needs)),
            ),
            "missing = needed - room",
            Figure("missing", length(room.needs - room.free)),
            Figure(f"{room.tool.said} behind its bit or shaft", length(limit.amount), limit.source),
        ),
        severity=Severity.NOTE if worst.special is not None else Severity.ERROR,
    )


@rule(
    "driver-cannot-reach",
    topic="fasteners",
    severity=Severity.ERROR,
    limits=("driver-length", "driver-width", "driver-bit", "long-bit", "driver-lean", "screwdriver-shaft",
            "screwdriver-handle", "screwdriver-width", "short-driver-length", "hammer-room", "hammer-width",
            "nail-punch", "spanner-room"),
    needs=("placed",),
)  # fmt: skip
def driver_cannot_reach(review: Review) -> Iterator[Finding]:
    """A fastener that no tool gets at when its turn comes is never driven.

    Goes wrong: The last rail is in its place, and the drill does not fit between it and the next one. The
    screw stays half driven, or the glued frame has to come apart again.

    Judged by: In front of each screw, nail and bolt stand a bit and a driver as cylinders along its axis,
    further out by what the fastener still stands out as it meets the joint. A driver, one with a long bit,
    a screwdriver, a hammer, a hammer on a punch or a spanner will do, and what has a long front may lean
    by driver-lean. A bolt is put in over its whole length, and a spanner reaches both of its ends. Only
    parts count that are in place by then: the plan's steps say, and within a step, or without steps, any
    order will do that leaves the way free. Where only an angle driver or a palm nailer gets in, it is a
    note. Where the plan leaves open where the fasteners stand, one place that is reached is enough.

    Leaves out: Which way the handle of a hammer or an angle driver goes. Boring the holes first. Doors and
    drawers, which come out. What the floor and the wall are in the way of: the piece can be laid down. More
    than 1000 joints with something in front of their fasteners, or more than 200 rounds of taking the piece
    apart: what is beyond that is taken to work.

    Sources: sizes of tools: common practice, no source

    Flagged:

        plan "Tight spacer" in inches
        stock board: actual 3/4 x 5 1/2 pine
        outline box: 4 1/2 across, 5 1/2 deep, 20 tall, on floor
        part side for each of left, right: board, upright, facing side, as tall as box, on floor
            flush with each of box, flush with front of box
        part spacer: board, across, flat, between side.left and side.right, bottom 10 above floor
            flush with front of box
        join spacer to side.*: pocket screws 1 1/4, 2 per end, 1 from ends, from below

    Quiet:

        plan "Roomy spacer" in inches
        stock board: actual 3/4 x 5 1/2 pine
        outline box: 21 1/2 across, 5 1/2 deep, 20 tall, on floor
        part side for each of left, right: board, upright, facing side, as tall as box, on floor
            flush with each of box, flush with front of box
        part spacer: board, across, flat, between side.left and side.right, bottom 10 above floor
            flush with front of box
        join spacer to side.*: pocket screws 1 1/4, 2 per end, 1 from ends, from below
    """
    groups: dict[object, list[OutOfReach]] = {}
    for found in out_of_reach(review):
        # One note says which tool to have at hand; what can't be driven at all is told join by join.
        key = id(found.placed.fastening) if found.special is None else (found.special.name, found.placed.kind)
        groups.setdefault(key, []).append(found)
    if not groups:
        return
    reach = Reach(review.setting, review.limits)
    for group in groups.values():
        yield _finding(review, reach, group)
