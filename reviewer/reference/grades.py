"""Graded lumber: design values by species group and grade, and the European strength classes."""

from __future__ import annotations

from functools import lru_cache

from reviewer.records import NamedTuple
from reviewer.reference.names import even
from reviewer.reference.sources import Standing, cited, standing
from reviewer.reference.tables import Row, table
from reviewer.units import MPA_PER_PSI


class DesignValues(NamedTuple):
    """Reference design values of a grade, MPa, before any factor; ``modulus`` is a mean.

    ``width_class`` is the range of nominal widths, inches, as the table words it.
    """

    system: str
    group: str
    grade: str
    width_class: str
    bending: float
    tension: float
    shear: float
    compression_across: float
    compression: float
    modulus: float
    modulus_least: float
    size_factor_applies: bool
    source: str
    status: Standing


class StrengthClass(NamedTuple):
    """A class of EN 338, MPa and kg/m³: characteristic strength, mean stiffness and density."""

    name: str
    bending: float
    shear: float
    compression_across: float
    compression: float
    modulus: float
    modulus_least: float  # E_0,05
    modulus_across: float
    density: float
    source: str
    status: Standing


class _Grade(Row):
    system: str
    species_group: str
    grade: str
    width_class_in: str
    Fb_psi: float
    Ft_psi: float
    Fv_psi: float
    Fc_perp_psi: float
    Fc_psi: float
    E_psi: float
    Emin_psi: float
    size_factor_applies: str
    src: str
    status: str


class _Class(Row):
    class_name: str
    fm_k_mpa: float
    fc0_k_mpa: float
    fc90_k_mpa: float
    fv_k_2003_mpa: float
    e0_mean_mpa: float
    e0_05_mpa: float
    e90_mean_mpa: float
    rho_mean: float
    src: str
    status: str


@lru_cache(maxsize=1)
def design_values() -> tuple[DesignValues, ...]:
    """Every grade of the table, in its order."""
    return tuple(
        DesignValues(
            row.system,
            row.species_group,
            row.grade,
            row.width_class_in,
            row.Fb_psi * MPA_PER_PSI,
            row.Ft_psi * MPA_PER_PSI,
            row.Fv_psi * MPA_PER_PSI,
            row.Fc_perp_psi * MPA_PER_PSI,
            row.Fc_psi * MPA_PER_PSI,
            row.E_psi * MPA_PER_PSI,
            row.Emin_psi * MPA_PER_PSI,
            row.size_factor_applies.startswith("yes"),
            cited(row.src),
            standing(row.status),
        )
        for row in table("lumber_grades.csv", _Grade)
    )


def grade_of(material_key: str, grade: str) -> tuple[DesignValues, ...]:
    """The rows of a species group (a material key) and a grade ("No.2", "no 2", "stud", "select structural").

    One row, or one for each width class; empty when the table has no such grade.
    """
    asked = " ".join(_STAMPED.get(word, word) for word in even(grade).split() if word not in _LINKS)
    return tuple(
        row
        for row in design_values()
        if row.group.casefold() == material_key and asked in map(even, row.grade.split(" and "))
    )


def grades_of(material_key: str) -> tuple[str, ...]:
    """The grades of a species group as a plan may say them, in the order of the table."""
    found = (
        each.replace(" & Btr", " and better").casefold()
        for row in design_values()
        if row.group.casefold() == material_key
        for each in row.grade.split(" and ")
    )
    return tuple(dict.fromkeys(found))


#: What a grade stamp shortens, and what people say in full (the words of stamps, from memory).
_STAMPED = {"better": "btr", "sel": "select", "str": "structural"}
_LINKS = ("and", "or")


@lru_cache(maxsize=1)
def _classes() -> dict[str, StrengthClass]:
    return {
        even(row.class_name): StrengthClass(
            row.class_name,
            row.fm_k_mpa,
            row.fv_k_2003_mpa,
            row.fc90_k_mpa,
            row.fc0_k_mpa,
            row.e0_mean_mpa,
            row.e0_05_mpa,
            row.e90_mean_mpa,
            row.rho_mean,
            cited(row.src),
            standing(row.status),
        )
        for row in table("en338_classes.csv", _Class)
    }


def strength_class(name: str) -> StrengthClass | None:
    """A class of EN 338 by its name ("C24", "d30"); None when there is no such class."""
    return _classes().get(even(name))
