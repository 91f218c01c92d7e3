"""What things and people weigh: the planned load of a use, in kilograms per millimetre, per area or each."""

from __future__ import annotations

from functools import lru_cache
from typing import Literal, cast

from reviewer.records import NamedTuple
from reviewer.reference.names import even
from reviewer.reference.sources import Standing, standing
from reviewer.reference.tables import Row, table
from reviewer.units import KG_PER_POUND, MM_PER_FOOT, MM_PER_INCH

Basis = Literal["per length", "per area", "each"]


class PlannedLoad(NamedTuple):
    """The load of a use. ``amount`` is kg per mm of shelf, kg per mm² or kg each, by ``basis``."""

    use: str
    basis: Basis
    amount: float
    spread_over: float | None  # mm of length that each one takes; None for a load on one spot
    lasting: bool  # stays for months, so that the wood creeps
    source: str
    status: Standing
    note: str


class _Use(Row):
    use: str
    words: tuple[str, ...]
    basis: str
    load_row: str
    column: str
    amount_lb: float | None
    depth_in: float | None
    spread_in: float | None
    lasting: bool
    status: str
    source: str
    note: str


class _Weight(Row):
    use: str
    low: float | None
    typical: float | None
    high: float | None
    units: str
    status: str
    source: str


@lru_cache(maxsize=1)
def _uses() -> dict[str, _Use]:
    return {row.use: row for row in table("load_uses.csv", _Use)}


@lru_cache(maxsize=1)
def _spoken() -> dict[str, str]:
    return {even(words): row.use for row in _uses().values() for words in (row.use, *row.words)}


@lru_cache(maxsize=1)
def _weights() -> dict[str, _Weight]:
    return {row.use: row for row in table("loads.csv", _Weight)}


def use_names() -> tuple[str, ...]:
    """Every use that :func:`planned_load` takes, in the table's order."""
    return tuple(_uses())


def find_use(words: str) -> str | None:
    """The use that a maker's words mean ("records", "TV", "person seated"); None when they name none."""
    return _spoken().get(even(words))


def load_words() -> tuple[str, ...]:
    """All words that name a use, to find near names among."""
    return tuple(sorted(_spoken()))


def _kilograms(use: _Use, pounds: float) -> float:
    match use.basis:
        case "per length":
            return pounds * KG_PER_POUND / MM_PER_FOOT
        case "per area":
            # A weight by volume is carried as deep as the use stacks it.
            depth = 1.0 if use.depth_in is None else use.depth_in * MM_PER_INCH / MM_PER_FOOT
            return pounds * depth * KG_PER_POUND / MM_PER_FOOT**2
        case _:
            return pounds * KG_PER_POUND


@lru_cache(maxsize=64)
def planned_load(use: str) -> PlannedLoad:
    """The load to plan for, of a use as :func:`find_use` gives it. Raises KeyError for any other."""
    row = _uses()[use]
    pounds, source, status = row.amount_lb, row.source, row.status
    if row.load_row:
        weight = _weights()[row.load_row]
        pounds = {"low": weight.low, "typical": weight.typical, "high": weight.high}[row.column]
        source, status = weight.source, weight.status
    assert pounds is not None
    return PlannedLoad(
        row.use,
        cast("Basis", row.basis),
        _kilograms(row, pounds),
        None if row.spread_in is None else row.spread_in * MM_PER_INCH,
        row.lasting,
        source,
        standing(status),
        row.note,
    )
