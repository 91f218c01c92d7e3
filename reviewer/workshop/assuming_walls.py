"""What is taken for granted about the wall: its studs, and the board before them."""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import TYPE_CHECKING

from reviewer.model.plan import WALL, Restraint
from reviewer.plan_words import number_text, plan_unit
from reviewer.reference.sources import NO_SOURCE
from reviewer.units import force
from reviewer.wording import listed
from reviewer.workshop.assuming_woods import assumed_limit, is_set
from reviewer.workshop.assumptions import Assumption

if TYPE_CHECKING:
    from reviewer.language.source import Span
    from reviewer.review import Review
    from reviewer.workshop.restraining import Restrained

_PIECE_SCREW_SAID = "screws #8 x 5/8 in into piece"
_WORKED_OUT = "no source; such screws hold that by the NDS, or by its equations as an estimate"
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
    if any(_has_unsaid_end(each) for each in plan.restraints):
        yield from _ends_at_the_piece(review)
    limit = review.limit("stud-spacing")
    said = room is not None and (room.stud_spacing is not None or bool(room.stud_places))
    if not said and not is_set(limit.source):
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


def _has_unsaid_end(restraint: Restraint) -> bool:
    return restraint.device in ("strap", "bracket") and restraint.piece_length is None


def _ends_at_the_piece(review: Review) -> Iterator[Assumption]:
    """Straps whose screws at the piece the plan does not name: these are taken to hold what is asked."""
    from reviewer.workshop.strap_remedies import better_at_piece, piece_screw_words

    worst: dict[Span, tuple[Restrained, int]] = {}
    for found in review.restrained:  # a restraint of a plan whose parts stand apart is one of several pieces
        for number, tied in enumerate(found.tied):
            if not _has_unsaid_end(tied.restraint) or not tied.fixed_to or not math.isfinite(found.needed):
                continue
            known = worst.get(tied.restraint.span)
            if known is None or found.needed > known[0].needed:
                worst[tied.restraint.span] = found, number
    for found, number in worst.values():
        restraint = found.tied[number].restraint
        better = better_at_piece(review, found, number)
        words = piece_screw_words(review, better.screw, better.number) if better else _PIECE_SCREW_SAID
        yield Assumption(
            restraint.said,
            f"what screws its {restraint.device} to the piece is taken to hold what is asked, {{value}}",
            force(found.needed),
            _WORKED_OUT if better else NO_SOURCE,
            words,
            restraint.span,
        )


def _screwed_on(review: Review) -> list[str]:
    """The parts that are joined to the wall, in the order of the joints."""
    found: dict[str, None] = {}
    if review.setting.wall is not None:
        for joint in review.setting.joints:
            if joint.meets and WALL in (joint.left, joint.right) and joint.join.fastenings:
                found.setdefault(joint.left if joint.right == WALL else joint.right)
    return list(found)
