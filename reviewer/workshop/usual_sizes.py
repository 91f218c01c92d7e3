"""The sizes that a shop has: the next thicker board or sheet, and the lengths that screws come in."""

from __future__ import annotations

import math

from reviewer.model.plan import Stock
from reviewer.records import NamedTuple
from reviewer.reference.gauges import pocket_screw
from reviewer.reference.sections import nominal_names, nominal_section, sheet_thickness
from reviewer.units import MM_PER_INCH, TOLERANCE_MM, UnitSystem

#: Screws go up by this much from the shortest on (common practice, no source).
_STEP_MM = {UnitSystem.INCH: MM_PER_INCH / 4, UnitSystem.METRIC: 5.0}
_SHORTEST_MM = {UnitSystem.INCH: MM_PER_INCH / 2, UnitSystem.METRIC: 15.0}
_LONGEST_MM = 200.0
#: The finest steps in which sheets are named, and the thickest that is looked for.
_SHEET_STEPS = {UnitSystem.INCH: MM_PER_INCH / 32, UnitSystem.METRIC: 1.0}
_THICKEST_MM = 50.0


class UsualStock(NamedTuple):
    """A board or sheet by its usual name, and how thick it really is, mm."""

    said: str
    thickness: float


def thicker_stock(stock: Stock, at_least: float, system: UnitSystem) -> UsualStock | None:
    """The thinnest usual stock of the same kind that is ``at_least`` so many mm; None when none is listed."""
    found = list(_sheets(stock, system) if stock.kind == "sheet" else _boards(stock))
    fit = [each for each in found if each.thickness >= at_least - TOLERANCE_MM]
    return min(fit, key=lambda each: each.thickness, default=None)


def _boards(stock: Stock) -> list[UsualStock]:
    """Dressed boards as wide as this one; only those named by nominal size are listed."""
    if stock.nominal is None:
        return []
    sections = [section for name in nominal_names() if (section := nominal_section(name)) is not None]
    return [
        UsualStock(section.nominal, section.thickness)
        for section in sections
        if section.width is not None and stock.width is not None
        if abs(section.width - stock.width) <= TOLERANCE_MM
    ]


def _sheets(stock: Stock, system: UnitSystem) -> list[UsualStock]:
    step = _SHEET_STEPS[system]
    steps = range(1, math.floor(_THICKEST_MM / step) + 1)
    rows = [row for each in steps if (row := sheet_thickness(stock.material, each * step)) is not None]
    return [UsualStock(row.nominal, row.actual) for row in rows]


def screw_lengths(system: UnitSystem) -> list[float]:
    """The lengths that screws and nails come in, shortest first, mm."""
    step, shortest = _STEP_MM[system], _SHORTEST_MM[system]
    return [shortest + step * each for each in range(math.floor((_LONGEST_MM - shortest) / step) + 1)]


def pocket_screw_lengths(system: UnitSystem) -> list[float]:
    """The lengths that pocket screws come in, by the usual chart, shortest first, mm."""
    stocks = range(1, 33)  # sixteenths of an inch: no pocket is bored in thicker stock
    usual = (pocket_screw(each * MM_PER_INCH / 16) for each in stocks)
    return sorted({as_sold(screw.length, system) for screw in usual if screw is not None})


def as_sold(length: float, system: UnitSystem) -> float:
    """A length of the chart as a shop names it: the same in inches, else whole millimetres."""
    return length if system is UnitSystem.INCH else float(round(length))
