"""What is taken for granted about the wall: its studs, and the board before them."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from reviewer.model.plan import WALL
from reviewer.plan_words import number_text, plan_unit
from reviewer.reference.sources import NO_SOURCE
from reviewer.wording import listed
from reviewer.workshop.assuming_woods import assumed_limit, is_set
from reviewer.workshop.assumptions import Assumption

if TYPE_CHECKING:
    from reviewer.review import Review

_ROOM_SAID = "indoors, heated, wall behind"


def walls(review: Review) -> Iterator[Assumption]:
    """Studs and board of a wall that something is fixed to; nothing where nothing is."""
    plan, room = review.plan, review.plan.room
    into_studs = [each for each in plan.restraints if each.into in ("stud", None)]
    hung = _screwed_on(review)
    for restraint in into_studs:
        if restraint.into is None:
            yield Assumption(
                restraint.said,
                "what ties it to the wall is taken to go into {value}",
                "studs",
                NO_SOURCE,
                "into stud",
                restraint.span,
            )
    limit = review.limit("stud-spacing")
    if (room is None or room.stud_spacing is None) and not is_set(limit.source):
        size = number_text(limit.amount, plan_unit(review.source, plan))
        say = f"studs every {size}" if room else f"room: {_ROOM_SAID}, studs every {size}"
        if into_studs:
            span = room.span if room else into_studs[0].span
            yield Assumption(
                "the wall", "its studs are taken to be {value} apart", limit.value, limit.source, say, span
            )
        if hung:
            yield Assumption(
                listed(hung),
                "each screw into the wall is taken to meet {value}",
                "a stud",
                NO_SOURCE,
                say,
                room.span if room else review.span_of(hung[0]),
            )
    if into_studs or hung:
        yield from assumed_limit(
            review,
            "stud-gravity",
            "the studs",
            "taken as light softwood, of specific gravity {value}",
        )
        yield from assumed_limit(review, "wallboard", "the wall", "its board is taken to be {value} thick")


def _screwed_on(review: Review) -> list[str]:
    """The parts that are joined to the wall, in the order of the joints."""
    found: dict[str, None] = {}
    if review.setting.wall is not None:
        for joint in review.setting.joints:
            if joint.meets and WALL in (joint.left, joint.right) and joint.join.fastenings:
                found.setdefault(joint.left if joint.right == WALL else joint.right)
    return list(found)
