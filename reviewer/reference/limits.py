"""The limits that hold when neither the plan nor a settings file says otherwise."""

from __future__ import annotations

from typing import cast, get_args

from reviewer.limits import Limit
from reviewer.reference.tables import Row, table
from reviewer.units import KG_PER_POUND, MM_PER_FOOT, MM_PER_INCH, NEWTON_PER_POUND, Kind, Value


class LimitRow(Row):
    """A row of the limits table; ``amount`` is in ``unit``, the unit that a person would write it in."""

    name: str
    amount: float
    unit: str
    kind: str
    meaning: str
    source: str
    status: str


#: What one of a unit is in the inside unit of a kind.
_INSIDE = {
    ("length", "in"): MM_PER_INCH,
    ("length", "mm"): 1.0,
    ("fine length", "in"): MM_PER_INCH,
    ("fine length", "mm"): 1.0,
    ("area", "mm2"): 1.0,
    ("opening area", "ft2"): MM_PER_FOOT**2,
    ("force", "lb"): NEWTON_PER_POUND,
    ("force", "N"): 1.0,
    ("mass", "lb"): KG_PER_POUND,
    ("mass", "kg"): 1.0,
    ("percent", "%"): 1.0,
    ("ratio", "ratio"): 1.0,
    ("ratio", "diameters"): 1.0,
    ("count", "count"): 1.0,
    ("count", "years"): 1.0,
}


def limit_rows() -> tuple[LimitRow, ...]:
    """Every limit as the table has it, in the table's order."""
    return table("limits.csv", LimitRow)


def _limit(row: LimitRow) -> Limit:
    assert row.kind in get_args(Kind)
    amount = row.amount * _INSIDE[row.kind, row.unit]
    return Limit(row.name, Value(amount, cast("Kind", row.kind)), row.meaning, row.source)


def default_limits() -> dict[str, Limit]:
    """Every limit by name, in the inside unit of its kind, in the table's order; a new dict each time."""
    return {row.name: _limit(row) for row in limit_rows()}
