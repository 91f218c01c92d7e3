"""Fasteners driven from a side that does not lead across the joint."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Edit, Filling, Finding, Severity
from reviewer.model.plan import Side
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.units import TOLERANCE_MM
from reviewer.wording import listed
from reviewer.workshop.driving import SIDES, Driven
from reviewer.workshop.screw_lengths import bite_least, by_fastening, lacks_cover

#: How two parts meet that share a face square to an axis.
_MEET = ("side by side", "one behind the other", "one above the other")
_SAID: dict[Side, str] = {"below": "below", "above": "above"}


def _across(axis: int) -> tuple[Side, Side]:
    """The two sides from which a fastener goes along an axis."""
    low, high = (side for side, (each, _) in SIDES.items() if each == axis)
    return low, high


def _said(side: Side | None) -> str:
    return _SAID.get(side, f"the {side}") if side is not None else ""


def _better_side(review: Review, group: list[Driven]) -> Side | None:
    """The side that the same screws can be driven from in all these joints; None when none suits all."""
    solids = review.setting.solids
    sides: set[Side] = set()
    for each in group:
        if each.head_part not in solids or each.point_part not in solids:
            return None
        low, high = _across(each.axis)
        head, point = solids[each.head_part], solids[each.point_part]
        sides.add(low if head.centre[each.axis] < point.centre[each.axis] else high)
        if lacks_cover(each, each.length, review.limits):
            return None
        if each.bite < bite_least(each, review.limits).amount - TOLERANCE_MM:
            return None
    return sides.pop() if len(sides) == 1 else None


def _finding(review: Review, group: list[Driven]) -> Finding:
    first = group[0]
    names = tuple(dict.fromkeys(f"{each.joint.left} to {each.joint.right}" for each in group))
    parts = tuple(dict.fromkeys(name for each in group for name in (each.joint.left, each.joint.right)))
    pocket = first.kind == "pocket screws"
    axes = [axis for axis in range(3) if axis != first.axis] if pocket else [first.axis]
    sides = [side for axis in axes for side in _across(axis)]
    values: dict[str, Filling] = {
        "kind": first.kind,
        "joints": listed(names),
        "side": _said(first.fastening.driven_from),
        "sides": f"{', '.join(map(_said, sides[:-1]))} or {_said(sides[-1])}",
    }
    if pocket:
        says = (
            "The pockets of {joints} can't be bored from {side}: that is the way the screws run there, "
            f"since the parts meet {_MEET[first.axis]}."
        )
    else:
        says = (
            "The {kind} of {joints} are driven from {side}, but there the parts meet "
            f"{_MEET[first.axis]}: driven that way they run along the joint and never cross it."
        )
    apart = any(each.fastening.span == first.fastening.span and not each.misses for each in review.driven)
    where = (" in a join of its own" if len(names) == 1 else " in a join of their own") if apart else ""
    span = first.fastening.from_span
    better = _better_side(review, group) if not pocket and not apart else None
    return Finding(
        parts=tuple(part for part in parts if part in review.plan.parts),
        at=span or first.fastening.span,
        says=says,
        do=("Bore them" if pocket else "Drive them") + f" from {{sides}}{where}.",
        values=values,
        edit=Edit(span, f"from {better}") if span is not None and better is not None else None,
    )


@rule(
    "side-misses-joint",
    topic="fasteners",
    severity=Severity.ERROR,
    limits=("cover", "cut-difference", "bite-least", "wallboard", "pocket-length-difference"),
    needs=("driven",),
)
def side_misses_joint(review: Review) -> Iterator[Finding]:
    """A screw driven along a joint instead of across it holds nothing together.

    Goes wrong: Nobody drives such a screw, so on the day it is clear that the plan does not say how the
    joint is made, and the screws bought are of the wrong length for how it can be.

    Judged by: The face that two parts share. A screw, nail or bolt crosses it only when it is driven square
    to it; a pocket screw runs square to it, so its pocket is bored from one of the other sides. Both
    faces of a rabbet can be fastened.

    Leaves out: Screws driven at a slant without a pocket. Inside and outside, which are always read as one
    of the two sides that lead across.

    Sources: plain geometry

    Flagged:

        plan "Along the joint" in inches
        stock board: actual 3/4 x 5 1/2 pine
        outline box: 20 across, 5 1/2 deep, 6 tall, on floor
        part side for each of left, right: board, upright, facing side, as tall as box, on floor
            flush with each of box, flush with front of box
        part top: board, across, flat, on box, from left of box to right of box, flush with front of box
        join top to side.*: screws #8 x 2, 2 per joint, from left

    Quiet:

        plan "Across the joint" in inches
        stock board: actual 3/4 x 5 1/2 pine
        outline box: 20 across, 5 1/2 deep, 6 tall, on floor
        part side for each of left, right: board, upright, facing side, as tall as box, on floor
            flush with each of box, flush with front of box
        part top: board, across, flat, on box, from left of box to right of box, flush with front of box
        join top to side.*: screws #8 x 2, 2 per joint, from above
    """
    for group in by_fastening(each for each in review.driven if each.misses):
        axes: dict[int, list[Driven]] = {}
        for each in group:
            axes.setdefault(each.axis, []).append(each)
        for wrong in axes.values():
            yield _finding(review, wrong)
