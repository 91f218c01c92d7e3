"""An order in which a plan's joins can be made, where the plan states none.

It begins with what makers begin with: boards glued up to panels, then what belongs to one assembly, then the
rest as the plan has it, the wall last. Then it is tried: a driver must get at every fastener at its turn,
and what is let into others must still go in. What does not work moves to the front, a few times at most.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from reviewer.language.source import Span
from reviewer.model.plan import GROUNDS, WALL
from reviewer.records import NamedTuple
from reviewer.setting_out.result import Joint
from reviewer.workshop.going_together import held_apart
from reviewer.workshop.joining_order import never_undone

if TYPE_CHECKING:
    from reviewer.review import Review

#: So many orders are tried; then none is proposed.
MOST_TRIED = 12
#: Fasteners that nobody sees, which keep parts from moving out sideways as a tenon does.
_HIDDEN = ("dowels", "loose tenons", "biscuits")


class Joining(NamedTuple):
    """One join of the plan with the joints that it makes. ``assembly`` is what all its parts belong to."""

    span: Span
    joints: tuple[Joint, ...]
    assembly: str
    to_wall: bool


def _joinings(review: Review) -> list[Joining]:
    """The plan's joins in the order that makers would begin with; copies of one join are one."""
    stem_of = {part: each.stem for each in review.plan.assemblies for part in each.parts}
    by_span: dict[Span, list[Joint]] = {}
    for joint in review.joining_doubts.joints:
        if joint.join.reason is None:
            by_span.setdefault(joint.join.span, []).append(joint)
    family = {name: part.family for name, part in review.plan.parts.items()}
    found: list[tuple[int, Joining]] = []
    for span, joints in by_span.items():
        wood = [(joint.left, joint.right) for joint in joints]
        to_wall = any(WALL in pair for pair in wood)
        stems = {stem_of.get(name, "") for pair in wood for name in pair if name not in GROUNDS}
        assembly = stems.pop() if len(stems) == 1 else ""
        panel = all(family.get(left, left) == family.get(right, "") for left, right in wood)
        rank = 3 if to_wall else 0 if panel and joints[0].join.glue is not None else 1 if assembly else 2
        found.append((rank, Joining(span, tuple(joints), assembly, to_wall)))
    return [joining for _, joining in sorted(found, key=lambda each: each[0])]


def _special(review: Review) -> frozenset[int] | None:
    """The joints that only a special tool reaches, in whatever order; None where nothing reaches some."""
    found = review.joining_doubts
    stuck = never_undone(found.joints, [0] * len(found.joints), found.blocked)
    if any(not found.special(place, groups) for place, groups in stuck.items()):
        return None
    return frozenset(stuck)


def _first_that_fails(review: Review, order: Sequence[Joining], special: frozenset[int]) -> int | None:
    """The place in an order of a join that can't be made when its turn comes; None where all can."""
    joints = review.joining_doubts.joints
    turn = {id(joint): number for number, joining in enumerate(order) for joint in joining.joints}
    steps = [turn.get(id(joint)) for joint in joints]
    stuck = never_undone(joints, steps, review.joining_doubts.blocked)
    late = [steps[place] or 0 for place in stuck if place not in special]
    if late:
        return min(late)
    hidden = [placed for placed in review.placed if placed.kind in _HIDDEN]
    if hidden or any(joint.join.housing is not None for joint in joints):
        for held in held_apart(review.setting, hidden, joints, steps):
            return held.step or 0
    return None


def proposed_order(review: Review) -> tuple[Joining, ...]:
    """The joins in an order that works; empty where none was found, or where the plan states steps."""
    if review.plan.steps or not review.setting.whole or not review.joining_doubts.joints:
        return ()
    order, special = _joinings(review), _special(review)
    if special is None:
        return ()
    for _ in range(MOST_TRIED):
        fails = _first_that_fails(review, order, special)
        if fails is None:
            return tuple(order)
        if fails == 0:
            return ()
        order.insert(0, order.pop(fails))
    return ()
