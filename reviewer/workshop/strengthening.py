"""Remedies for a part that spans, each tried on its beam: thicker stock, a higher board, a shorter span."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator

from reviewer.mechanics.beam import Bay
from reviewer.model.plan import Plan, Stock
from reviewer.records import NamedTuple
from reviewer.units import MM_PER_INCH, TOLERANCE_MM, UnitSystem
from reviewer.workshop.member import Member
from reviewer.workshop.usual_sizes import UsualStock, thicker_stock

#: How far a member is used, as a ratio: a remedy does when it comes to no more than 1.
Use = Callable[[Member], float]

_ROUNDS = 30
#: Nobody moves a support by more than to this share of the span to save a board.
_SHORTEST = 0.5
#: Spans and heights are told in these steps.
_STEP = {UnitSystem.INCH: MM_PER_INCH / 8, UnitSystem.METRIC: 1.0}


class Thicker(NamedTuple):
    """Stock that does: its name in the plan (``own``) or its usual one, and the member cut from it."""

    said: str
    own: bool
    member: Member


def own_stocks(plan: Plan, stock: Stock) -> list[UsualStock]:
    """The thicker stocks of the same wood that the plan lists, thinnest first."""
    found = [
        UsualStock(each.name, each.thickness)
        for each in plan.stocks.values()
        if each.kind == stock.kind and each.material == stock.material and each.grade == stock.grade
        if each.round == stock.round and each.thickness > stock.thickness + TOLERANCE_MM
        if each.width is None or stock.width is None or each.width >= stock.width - TOLERANCE_MM
    ]
    return sorted(found, key=lambda each: each.thickness)


def _usual(stock: Stock, system: UnitSystem) -> Iterator[UsualStock]:
    thickness = stock.thickness
    while (usual := thicker_stock(stock, thickness + 2 * TOLERANCE_MM, system)) is not None:
        yield usual
        thickness = usual.thickness


def thicker_that_does(plan: Plan, member: Member, stock: Stock, use: Use) -> Thicker | None:
    """The thinnest stock of the plan that does, else the thinnest usual one; for a part that lies flat."""
    for own, choices in ((True, own_stocks(plan, stock)), (False, _usual(stock, plan.units))):
        for choice in choices:
            tried = member.retried(choice.thickness / member.height)
            if use(tried) <= 1:
                return Thicker(choice.said, own, tried)
    return None


def height_that_does(member: Member, use: Use, system: UnitSystem) -> tuple[float, Member]:
    """The height (mm, in whole steps) from which on the same board does, and that board."""
    low, high = 1.0, 2.0
    while use(member.retried(high)) > 1 and high < 64:
        low, high = high, high * 2
    for _ in range(_ROUNDS):
        middle = (low + high) / 2
        low, high = (middle, high) if use(member.retried(middle)) > 1 else (low, middle)
    height = whole_steps(member.height * high, system)
    return height, member.retried(height / member.height)


def whole_steps(size: float, system: UnitSystem) -> float:
    """A size in mm up to the next whole step that it is told in."""
    return math.ceil(size / _STEP[system] - 1e-9) * _STEP[system]


def span_that_does(member: Member, bay: Bay, use: Use, system: UnitSystem) -> tuple[float, Member] | None:
    """The longest span (mm, in whole steps) in place of a bay's that does; None where it is far shorter."""
    low, high = _SHORTEST, 1.0
    if bay.kind != "span" or use(member.retried(times_length=low)) > 1:
        return None
    for _ in range(_ROUNDS):
        middle = (low + high) / 2
        low, high = (low, middle) if use(member.retried(times_length=middle)) > 1 else (middle, high)
    step = _STEP[system]
    span = math.floor(bay.length * low / step + 1e-9) * step
    tried = member.retried(times_length=span / bay.length)
    return (span, tried) if span > 0 and use(tried) <= 1 else None


def propped_in(member: Member, bay: Bay) -> Member:
    """The member with one more support, in the middle of a span or under a free end."""
    at = bay.sag_at if bay.kind == "overhang" else (bay.start + bay.end) / 2
    return member.retried(more=(at,))
