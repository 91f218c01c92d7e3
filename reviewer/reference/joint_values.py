"""What joints hold by: specific gravities, shares of glue lines, factors; and what has no value and why."""

from __future__ import annotations

from functools import lru_cache

from reviewer.records import NamedTuple
from reviewer.reference.materials import material
from reviewer.reference.sources import Standing, named, standing
from reviewer.reference.tables import Row, table


class Gravity(NamedTuple):
    """The specific gravity that fasteners are reckoned with, and how firm it is."""

    value: float
    source: str
    standing: Standing


class GlueLine(NamedTuple):
    """What a glue line holds at least and at most, as a share of the wood's own shear strength."""

    low: float
    high: float
    source: str


class JointStatement(NamedTuple):
    """What is given for a kind of joint (shear, pull), and in a sentence what by, or why nothing is."""

    shear: bool
    pull: bool
    says: str
    source: str
    standing: Standing


class _Gravity(Row):
    key: str
    gravity: float
    row: str
    src: str
    status: str


class _Line(Row):
    what: str
    key: str
    low: float
    high: float
    source: str


class _Factor(Row):
    name: str
    amount: float
    unit: str
    meaning: str
    source: str
    status: str


class _Statement(Row):
    what: str
    kind: str
    shear: str
    pull: str
    says: str
    source: str
    status: str


@lru_cache(maxsize=1)
def _factors() -> dict[str, _Factor]:
    return {row.name: row for row in table("joint_factors.csv", _Factor)}


def joint_factor(name: str) -> float:
    """The amount of a row of the joint factors. Raises KeyError where there is none."""
    return _factors()[name].amount


def joint_factor_source(name: str) -> str:
    """Who says so, for a person."""
    row = _factors()[name]
    return named(row.source, row.status)


@lru_cache(maxsize=1)
def _gravities() -> dict[str, _Gravity]:
    return {row.key: row for row in table("specific_gravities.csv", _Gravity)}


@lru_cache(maxsize=256)
def gravity_of(key: str) -> Gravity:
    """The specific gravity (ovendry mass and volume) of a wood or panel.

    The NDS table's where it has the wood, else the Wood Handbook's at 12 % moisture, which is a few percent
    lower and so on the cautious side; that of a panel by its density, as an estimate.
    """
    row = _gravities().get(key)
    if row is not None:
        return Gravity(row.gravity, named(row.src, row.status), standing(row.status))
    wood = material(key)
    if wood.specific_gravity is not None:
        return Gravity(wood.specific_gravity, wood.source, wood.status)
    return Gravity(wood.density / joint_factor("wood-density-at-12"), "by its density", "derived")


@lru_cache(maxsize=1)
def _lines() -> dict[tuple[str, str], _Line]:
    return {(row.what, row.key): row for row in table("glue_lines.csv", _Line)}


def glue_line(glue: str, pairing: str) -> GlueLine:
    """What a glue holds between two surfaces, dry and clamped close, as a share of the wood's shear strength.

    ``pairing`` is *side to side*, *crossed grain*, *end to side* or *end to end*. KeyError for any other.
    """
    by_glue, by_grain = _lines()["glue", glue], _lines()["pairing", pairing]
    return GlueLine(
        by_glue.low * by_grain.low,
        by_glue.high * by_grain.high,
        f"{by_grain.source}; {by_glue.source}",
    )


@lru_cache(maxsize=1)
def _statements() -> dict[tuple[str, str], JointStatement]:
    return {
        (row.what, row.kind): JointStatement(
            row.shear == "given", row.pull == "given", row.says, row.source, standing(row.status)
        )
        for row in table("joint_capacities.csv", _Statement)
    }


def joint_statement(what: str, kind: str) -> JointStatement:
    """What is given for a kind of *fastening* or *housing*. Raises KeyError for any other."""
    return _statements()[what, kind]
