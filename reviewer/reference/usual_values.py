"""Usual values that the working-out takes where a plan says nothing: one row each, with its source."""

from __future__ import annotations

from functools import lru_cache

from reviewer.reference.tables import Row, table


class UsualValue(Row):
    """A row of the table; ``amount`` in ``unit``."""

    name: str
    amount: float
    unit: str
    meaning: str
    source: str
    status: str


@lru_cache(maxsize=1)
def _rows() -> dict[str, UsualValue]:
    return {row.name: row for row in table("usual_values.csv", UsualValue)}


def usual_value(name: str) -> float:
    """The amount of a row, in the row's own unit. Raises KeyError where there is none."""
    return _rows()[name].amount


def usual_source(name: str) -> str:
    """Where a row comes from. Raises KeyError where there is none."""
    return _rows()[name].source


def usual_value_if_any(name: str) -> float | None:
    """The same; None where there is no such row."""
    row = _rows().get(name)
    return row.amount if row else None
