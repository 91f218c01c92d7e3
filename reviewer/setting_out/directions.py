"""Axes, ways and faces in a maker's words, and the clause of the plan that puts a part where it is."""

from __future__ import annotations

from reviewer.language.source import Span
from reviewer.model.plan import Plan
from reviewer.setting_out.solid import Solid

#: How an axis runs, by axis.
ALONG = ("side to side", "front to back", "up and down")
#: Which way the low and the high end of an axis lie, by axis.
TOWARDS = (("to the left", "to the right"), ("to the front", "to the back"), ("down", "up"))
#: Where something lies that is past another at its low or its high end, by axis.
BEYOND = (("to the left of", "to the right of"), ("in front of", "behind"), ("below", "above"))
#: The faces at the low and the high end of an axis, by axis.
FACES = (("left", "right"), ("front", "back"), ("bottom", "top"))
#: What the plan calls each axis.
AXIS_NAMES = ("across", "deep", "up")


def side_of(one: Solid, two: Solid, axis: int) -> int:
    """1 when the first of two lies at the high side of the second on an axis, else 0."""
    return 1 if one.centre[axis] >= two.centre[axis] else 0


def placing_span(plan: Plan, name: str, axis: int) -> Span:
    """The clause that settles a part or an outline on an axis; its head where only its stock does.

    A clause that places comes before one that gives a size.
    """
    found = plan.parts.get(name) or plan.boxes.get(name)
    if found is None:
        return plan.span
    clauses = [
        relation for relation in found.relations if relation.axis == axis and relation.span != found.span
    ]
    if not clauses:
        return found.span
    return min(clauses, key=lambda clause: (clause.which == "size", clause.rank, clause.span)).span
