"""Sanding: the size of each grit, and the rules of the trade about steps and last grits."""

from __future__ import annotations

from functools import lru_cache

from reviewer.records import NamedTuple
from reviewer.reference.sources import Standing, named, standing
from reviewer.reference.tables import Row, table

_MM_PER_MICROMETRE = 0.001


class SandingRule(NamedTuple):
    """A line of the sanding table; ``low`` and ``high`` are grits, a ratio or a number of passes."""

    name: str
    kind: str
    applies_to: str
    low: float | None
    high: float | None
    says: str
    source: str
    status: Standing


class _Row(Row):
    rule_id: str
    kind: str
    applies_to: str
    value_lo: float | None
    value_hi: float | None
    statement: str
    source: str
    status: str


@lru_cache(maxsize=1)
def sanding_rules() -> tuple[SandingRule, ...]:
    """Every rule of the table except the grit sizes, in its order."""
    return tuple(
        SandingRule(
            row.rule_id,
            row.kind,
            row.applies_to,
            row.value_lo,
            row.value_hi,
            row.statement,
            named(row.source, row.status),
            standing(row.status),
        )
        for row in table("sanding.csv", _Row)
        if row.kind != "grit_size"
    )


@lru_cache(maxsize=1)
def grit_sizes() -> dict[int, float]:
    """The mean grain of each grit of the FEPA P scale, mm, coarsest first."""
    return {
        int(row.applies_to.removeprefix("P")): row.value_lo * _MM_PER_MICROMETRE
        for row in table("sanding.csv", _Row)
        if row.kind == "grit_size" and row.value_lo is not None
    }


def step_ratio(from_grit: int, to_grit: int) -> float | None:
    """How many times coarser one grit is than the next, by mean grain; None for a grit not tabled.

    80 to 220 is 2.96 (finishing notes, check W17); above 2.2 the step is too big.
    """
    sizes = grit_sizes()
    coarse, fine = sizes.get(from_grit), sizes.get(to_grit)
    return coarse / fine if coarse and fine else None


@lru_cache(maxsize=1)
def _by_name() -> dict[str, SandingRule]:
    return {rule.name: rule for rule in sanding_rules()}


def longest_step() -> SandingRule:
    """The rule for the largest step from one grit to the next, by mean grain; its ``high`` is the ratio."""
    return _by_name()["SND-K3"]


#: The line on the last grit below a first coat, by group of the compatibility table; stains by the wood.
_LAST_GRIT = {
    "dye_water": "SND-F3",
    "dye_alcohol": "SND-F3",
    "stain_gel": "SND-F4",
    "poly_oil": "SND-F5",
    "varnish": "SND-F6",
    "lacquer": "SND-F6",
    "clear_water": "SND-F6",
    "shellac_dewaxed": "SND-F6",
    "shellac_waxed": "SND-F6",
    "ext_stain": "SND-F13",
}
_STAINS = {"softwood": "SND-F1", "hardwood": "SND-F2"}


def last_grit(group: str, family: str) -> SandingRule | None:
    """The line on the last grit on bare wood below a product of a group; None where makers differ too much.

    Oils, waxes and paints have none: the sources on oils differ from 150 to 400, and paint fills.
    """
    name = _STAINS.get(family) if group in ("stain_oil", "stain_water") else _LAST_GRIT.get(group)
    return _by_name()[name] if name else None
