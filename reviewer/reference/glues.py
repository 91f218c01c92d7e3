"""Glues: what a maker's words mean, how long each stays open, and how much water it bears."""

from __future__ import annotations

from functools import lru_cache
from typing import Literal, cast

from reviewer.records import NamedTuple
from reviewer.reference.sources import Standing, named, standing
from reviewer.reference.tables import Row, table
from reviewer.reference.wordbook import wordbook
from reviewer.units import MM3_PER_FLUID_OUNCE, MM_PER_FOOT, MM_PER_INCH

_HOURS_PER_MINUTE = 1 / 60
_MM3_PER_GALLON = 128 * MM3_PER_FLUID_OUNCE


class Glue(NamedTuple):
    """A glue. Times are hours, lowest and highest of the sources; plan with the lowest open time."""

    key: str
    said: str
    water_class: str
    water_words: str
    outdoors: Literal["no", "covered", "exposed"]
    open_time: tuple[float, float]
    assembly: tuple[float, float]
    clamped: tuple[float, float]
    unstressed: float  # no hard use before
    full_cure: tuple[float, float]
    least_temperature: float  # °C
    widest_gap: float  # mm
    spread: float | None  # mm² that one mm³ covers, the least of the sources; None where none was found
    end_grain_fraction: float  # of the wood's tension strength along the grain, at the very best
    creeps: str
    on_finish: str  # what squeeze-out does to stain and finish
    note: str
    source: str
    times_source: str
    status: Standing


class _Glue(Row):
    glue_id: str
    name: str
    water_resistance_class: str
    water_resistance_words: str
    outdoors: str
    open_time_min_lo: float
    open_time_min_hi: float
    total_assembly_min_lo: float
    total_assembly_min_hi: float
    clamp_min_lo: float
    clamp_min_hi: float
    no_stress_before_h: float
    full_cure_h_lo: float
    full_cure_h_hi: float
    min_temp_celsius: float
    max_gap_in: float
    end_grain_fraction: float
    spread_ft2_per_gal: str
    creep: str
    stains_or_blocks_finish: str
    use_notes: str
    source_times: str
    source_water: str
    status: str


def _spread(cell: str) -> float | None:
    """The lower of "200-300" square feet a gallon, as mm² for each mm³."""
    return float(cell.split("-")[0]) * MM_PER_FOOT**2 / _MM3_PER_GALLON if cell else None


@lru_cache(maxsize=1)
def _glues() -> dict[str, _Glue]:
    return {row.glue_id: row for row in table("glue.csv", _Glue)}


@lru_cache(maxsize=32)
def glue(key: str) -> Glue:
    """The glue of a key as :func:`find_glue` gives it. Raises KeyError for any other."""
    row = _glues()[key]
    minute = _HOURS_PER_MINUTE
    return Glue(
        key=row.glue_id,
        said=row.name,
        water_class=row.water_resistance_class,
        water_words=row.water_resistance_words,
        outdoors=cast('Literal["no", "covered", "exposed"]', row.outdoors),
        open_time=(row.open_time_min_lo * minute, row.open_time_min_hi * minute),
        assembly=(row.total_assembly_min_lo * minute, row.total_assembly_min_hi * minute),
        clamped=(row.clamp_min_lo * minute, row.clamp_min_hi * minute),
        unstressed=row.no_stress_before_h,
        full_cure=(row.full_cure_h_lo, row.full_cure_h_hi),
        least_temperature=row.min_temp_celsius,
        widest_gap=row.max_gap_in * MM_PER_INCH,
        spread=_spread(row.spread_ft2_per_gal),
        end_grain_fraction=row.end_grain_fraction,
        creeps=row.creep,
        on_finish=row.stains_or_blocks_finish,
        note=row.use_notes,
        source=f"times: {named(row.source_times, row.status)}; water: {named(row.source_water, row.status)}",
        times_source=named(row.source_times, row.status),
        status=standing(row.status),
    )


@lru_cache(maxsize=1)
def glue_keys() -> tuple[str, ...]:
    """Every key that :func:`glue` takes, in the table's order."""
    return tuple(_glues())


def find_glue(words: str) -> str | None:
    """The key of what a maker writes; None where that is not clear. Plain "pva" is taken as yellow PVA."""
    return wordbook("glue").find(words)


def glue_candidates(words: str) -> tuple[str, ...]:
    """Every key that a maker's words can mean, the usual one first; empty when nothing is so called."""
    return wordbook("glue").candidates(words)


def glue_names() -> tuple[str, ...]:
    """All words that name a glue, to find near names among."""
    return wordbook("glue").spoken
