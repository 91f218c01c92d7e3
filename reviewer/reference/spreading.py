"""How far a finish goes, how long putting it on takes, and the cans that it is sold in."""

from __future__ import annotations

from functools import lru_cache
from typing import NamedTuple

from reviewer.reference.sources import Standing, named, standing
from reviewer.reference.tables import Row, table
from reviewer.units import LITRES_PER_GALLON, MM_PER_FOOT

#: One square foot per US gallon in square metres per litre (1 m²/L = 40.746 ft²/gal).
_M2_PER_L = (MM_PER_FOOT / 1000) ** 2 / LITRES_PER_GALLON


class Spread(NamedTuple):
    """How far a litre of a finish goes in one coat, m², from thirsty to sealed or smooth wood."""

    least: float
    most: float
    source: str
    status: Standing


class WorkTime(NamedTuple):
    """A work on a surface: m² in an hour (None: it goes by the piece), hours besides, hours to wait after."""

    rate: float | None
    setup: float
    waits: float
    source: str

    def hands_on(self, area_m2: float) -> float:
        """Hours of work on so much surface."""
        return self.setup + (area_m2 / self.rate if self.rate else 0.0)


class CanSize(NamedTuple):
    """A usual can: as a plan writes it, and what is in it, litres."""

    said: str
    litres: float


class _Class(Row):
    class_id: str
    spread_ft2_per_gal_lo: float | None
    spread_ft2_per_gal_hi: float | None
    source_spread_coats: str
    status: str


class _Usual(Row):
    class_id: str
    spread_ft2_per_gal_lo: float
    spread_ft2_per_gal_hi: float
    source: str
    status: str


class _Work(Row):
    work: str
    square_metres_per_hour: float | None
    setup_hours: float
    waits_hours: float
    source: str


class _Can(Row):
    unit_system: str
    said: str
    litres: float


@lru_cache(maxsize=1)
def _spreads() -> dict[str, Spread]:
    found = {}
    for row in table("finish_classes.csv", _Class):
        low, high = row.spread_ft2_per_gal_lo, row.spread_ft2_per_gal_hi
        if low is None or high is None:
            continue
        # The row's status is that of its drying times; the source cell says where the spread is not read.
        firm = standing("from memory" if "memory" in row.source_spread_coats else "read")
        found[row.class_id] = Spread(
            low * _M2_PER_L, high * _M2_PER_L, named(row.source_spread_coats, firm), firm
        )
    for usual in table("finish_spreads.csv", _Usual):
        found[usual.class_id] = Spread(
            usual.spread_ft2_per_gal_lo * _M2_PER_L,
            usual.spread_ft2_per_gal_hi * _M2_PER_L,
            named(usual.source, usual.status),
            standing(usual.status),
        )
    return found


def spread(product: str) -> Spread:
    """How far a class of finish goes. Raises KeyError for one that the tables do not know."""
    return _spreads()[product]


@lru_cache(maxsize=1)
def _works() -> dict[str, WorkTime]:
    return {
        row.work: WorkTime(row.square_metres_per_hour, row.setup_hours, row.waits_hours, row.source)
        for row in table("finish_work.csv", _Work)
    }


def work_time(work: str) -> WorkTime:
    """How long a work takes: a way to put a coat on, ``sand``, ``sand between`` or work on a surface."""
    return _works()[work]


@lru_cache(maxsize=2)
def can_sizes(unit_system: str) -> tuple[CanSize, ...]:
    """The usual cans of a unit system (``inch`` or ``metric``), the smallest first."""
    return tuple(
        CanSize(row.said, row.litres)
        for row in table("can_sizes.csv", _Can)
        if row.unit_system == unit_system
    )


def spread_of_solids(volume_solids: float, dry_mm: float, kept: float = 1.0) -> float:
    """How far a litre goes by what stays of it, m²: ``volume solids / dry thickness``, times the share kept.

    ``volume_solids`` and ``kept`` are shares of one. The arithmetic of the trade's rule
    ``1604 x volume solids / dry mils`` in ft² per US gallon (a spreading-rate sheet; a paint column
    of October 2003).
    """
    return kept * volume_solids / dry_mm
