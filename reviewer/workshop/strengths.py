"""What a part may be stressed to: design values of graded lumber, of strength classes, or of clear wood.

Graded framing lumber takes NDS reference values and factors; a class of EN 338 its characteristic values
by EN 1995-1-1; any other wood or panel a share of its mean strength, which is the custom for furniture and
no design value. The three are never mixed: every value says which it is.
"""

from __future__ import annotations

from functools import lru_cache

from reviewer.mechanics.strength import Factors, Property, design_value
from reviewer.model.plan import Stock
from reviewer.records import NamedTuple
from reviewer.reference.grades import DesignValues, StrengthClass, grade_of, strength_class
from reviewer.reference.materials import Material, material
from reviewer.reference.sources import NO_SOURCE, Standing
from reviewer.reference.tables import Row, table
from reviewer.units import MM_PER_INCH, TOLERANCE_MM

#: The grade taken for framing lumber of no stated grade: what yards keep (common practice, no source).
USUAL_GRADE = "No.2"
#: The table of size factors is for lumber from 1 1/2 in (2 in nominal) on.
_FRAMING_MM = 1.5 * MM_PER_INCH


class Strength(NamedTuple):
    """A stress that a part may bear, MPa, and how firm that is.

    ``named`` says for a person what it is a value of, ``who`` in short who sets it. ``certain`` is how many
    times the value is too much by what was read alone; None where custom or memory has its part in it.
    """

    value: float
    source: str
    standing: Standing
    named: str
    who: str
    certain: float | None = None


class Strengths(NamedTuple):
    """The design values of one section of a stock, MPa; None where no table has one.

    ``least_modulus`` is for buckling: E'_min in the NDS way, E_0,05 for a class of EN 338, whose
    ``compression`` is then f_c,0,d and ``crushing_characteristic`` f_c,0,k.
    """

    bending: Strength
    shear: Strength | None
    bearing: Strength | None
    compression: Strength
    least_modulus: float
    crushing_characteristic: float | None = None


class _Factor(Row):
    name: str
    amount: float
    source: str
    status: str


class _Size(Row):
    nominal_in: float
    up_to_in: float
    bending: float
    compression: float
    flat_use: float
    stud_bending: float
    stud_compression: float
    source: str


@lru_cache(maxsize=1)
def _factors() -> dict[str, _Factor]:
    return {row.name: row for row in table("strength_factors.csv", _Factor)}


def strength_factor(name: str) -> float:
    """The amount of a row of the strength factors. Raises KeyError where there is none."""
    return _factors()[name].amount


def _size(width: float) -> _Size:
    """The row of the size factors for a width in mm; the last one for all that is wider."""
    rows = table("size_factors.csv", _Size)
    return next(
        (row for row in rows if width <= row.up_to_in * MM_PER_INCH + TOLERANCE_MM),
        rows[-1],
    )


def _row_for(rows: tuple[DesignValues, ...], width: float) -> DesignValues:
    """The row of a grade for a width in mm: rows are in the order of their width classes."""
    nominal = _size(width).nominal_in
    if len(rows) == 1:
        return rows[0]
    for row in rows:
        if nominal <= float(row.width_class.rpartition("-")[2]):
            return row
    return rows[-1]


def graded_rows(stock: Stock) -> tuple[DesignValues, ...]:
    """The rows of the graded lumber that a stock is, of the usual grade where none is stated; or none."""
    return _graded(stock.material, stock.kind, stock.grade)


@lru_cache(maxsize=256)
def _graded(key: str, kind: str, grade: str | None) -> tuple[DesignValues, ...]:
    if kind != "board" or material(key).kind != "species":
        return ()
    return grade_of(key, grade if grade is not None else USUAL_GRADE)


@lru_cache(maxsize=512)
def _strengths(
    key: str,
    kind: str,
    grade: str | None,
    section: tuple[float, float],
    flat: bool,
    brief: bool,
    along: bool,
) -> Strengths:
    wood = material(key)
    known = strength_class(grade) if grade is not None and kind == "board" else None
    if known is not None:
        return _by_class(known, brief)
    rows = _graded(key, kind, grade)
    if rows:
        return _by_grade(_row_for(rows, section[0]), section, flat, brief, grade is None)
    return _by_custom(wood, along)


def strengths(
    stock: Stock, section: tuple[float, float], *, flat: bool, brief: bool, along: bool = True
) -> Strengths:
    """What a part of a stock may be stressed to.

    ``section`` is the wider and the narrower side in mm; ``flat``: it bends across the narrower one.
    ``brief``: people and the like make up enough of the load. ``along`` False: a sheet bent across its
    face grain.
    """
    wide, thin = round(max(section), 3), round(min(section), 3)
    return _strengths(stock.material, stock.kind, stock.grade, (wide, thin), flat, brief, along)


def _by_class(known: StrengthClass, brief: bool) -> Strengths:
    """EN 1995-1-1 (2.14): k_mod · f_k / gamma_M, over the load factor, since loads here carry none."""
    modification = strength_factor("modification-brief" if brief else "modification-lasting")
    safety = strength_factor("material-factor") * strength_factor("load-factor")
    source = (
        f"{known.source}; EN 1995-1-1: k_mod {modification:g} over gamma_M "
        f"{strength_factor('material-factor'):g}; load factor {strength_factor('load-factor'):g} of EN 1990 "
        "from memory"
    )

    def of(characteristic: float) -> Strength:
        return Strength(
            modification * characteristic / safety,
            source,
            "from memory",
            f"strength class {known.name}",
            "EN 338 and EN 1995-1-1",
            strength_factor("load-factor"),
        )

    return Strengths(
        of(known.bending),
        of(known.shear),
        of(known.compression_across),
        of(known.compression),
        known.modulus_least,
        known.compression,
    )


def _by_grade(
    row: DesignValues, section: tuple[float, float], flat: bool, brief: bool, assumed: bool
) -> Strengths:
    """NDS 2018 4.3: the reference values times duration, size and flat use."""
    duration = strength_factor("duration-brief" if brief else "duration-lasting")
    size = _size(section[0])
    framing = section[1] >= _FRAMING_MM - TOLERANCE_MM
    stud = row.grade == "Stud"
    of_bending, of_compression = size.bending, size.compression
    if stud:
        of_bending, of_compression = size.stud_bending, size.stud_compression
    if not row.size_factor_applies or not framing:
        of_bending = of_compression = 1.0
    factors = Factors(
        load_duration=duration, size=of_bending, flat_use=size.flat_use if flat and framing else 1.0
    )
    crushing = Factors(load_duration=duration, size=of_compression)
    # The table is for framing lumber; thinner boards of it take its bare values, as a custom.
    standing: Standing = row.status if framing else "common practice"
    name = f"{row.group} {row.grade}" + (", grade not stated" if assumed else "")

    def of(property: Property, reference: float, with_factors: Factors) -> Strength:
        value = design_value(property, reference, with_factors)
        return Strength(value, row.source, standing, name, "NDS 2018", 1.0 if framing else None)

    return Strengths(
        of("bending", row.bending, factors),
        of("shear", row.shear, factors),
        of("bearing", row.compression_across, factors),
        of("compression", row.compression, crushing),
        row.modulus_least,
    )


def _by_custom(wood: Material, along: bool) -> Strengths:
    """A share of the mean strength of clear wood or of a panel: the custom for furniture boards."""
    standing: Standing = "from memory" if wood.status == "from memory" else "common practice"
    broken = wood.bending_strength if along else wood.bending_strength_across or wood.bending_strength

    def of(mean: float, share: str) -> Strength:
        divisor = strength_factor(share)
        return Strength(
            mean / divisor,
            f"1/{divisor:g} of the mean at failure, {wood.source}; share: {_factors()[share].source}",
            standing,
            wood.said,
            f"the mean at failure over {divisor:g}; {NO_SOURCE}",
        )

    shear, bearing = wood.shear_strength, wood.bearing_strength
    return Strengths(
        of(broken, "clear-bending"),
        None if shear is None else of(shear, "clear-shear"),
        None if bearing is None else of(bearing, "clear-bearing"),
        of(wood.bending_strength, "clear-bending"),
        wood.modulus_of_elasticity * strength_factor("clear-modulus-least"),
    )
