"""Stresses in a rectangular part, and the design values that they are held against.

Lengths mm, forces N, moments N·mm, stresses MPa. Design values follow the National Design Specification
for Wood Construction (NDS 2018), chapters 3 and 4; they are set with margin, unlike the mean values of
clear wood in a handbook, and the two are never mixed.
"""

from __future__ import annotations

import math
from typing import Literal

from reviewer.records import NamedTuple

#: NDS 3.7.1.4: a solid column may not be longer than this many times its least side.
LARGEST_COLUMN_SLENDERNESS = 50.0
#: NDS 3.7.1.5: sawn lumber.
SAWN_COLUMN_C = 0.8

#: Which property of the wood a design value is of.
Property = Literal["bending", "tension", "shear", "bearing", "compression", "modulus"]


class Factors(NamedTuple):
    """The adjustment factors of one property, named as the NDS names them; 1 where nothing is said."""

    load_duration: float = 1.0  # C_D
    wet_service: float = 1.0  # C_M
    temperature: float = 1.0  # C_t
    size: float = 1.0  # C_F
    flat_use: float = 1.0  # C_fu
    incising: float = 1.0  # C_i
    repetitive: float = 1.0  # C_r
    bearing_area: float = 1.0  # C_b
    beam_stability: float = 1.0  # C_L
    column_stability: float = 1.0  # C_P


_ALWAYS = ("wet_service", "temperature", "incising")
#: NDS Table 4.3.1: which factors touch which property. Bearing and stiffness take no load duration.
_TOUCHES: dict[Property, tuple[str, ...]] = {
    "bending": (*_ALWAYS, "load_duration", "beam_stability", "size", "flat_use", "repetitive"),
    "tension": (*_ALWAYS, "load_duration", "size"),
    "shear": (*_ALWAYS, "load_duration"),
    "bearing": (*_ALWAYS, "bearing_area"),
    "compression": (*_ALWAYS, "load_duration", "size", "column_stability"),
    "modulus": _ALWAYS,
}


def design_value(of: Property, reference: float, factors: Factors) -> float:
    """The adjusted design value in MPa: the reference value times the factors that touch that property.

    Source: NDS 2018 Table 4.3.1. A factor that does not touch the property is left out, whatever it is.
    """
    value: float = reference * math.prod(getattr(factors, name) for name in _TOUCHES[of])
    return value


def bending_stress(moment: float, section_modulus: float) -> float:
    """The stress at the outer fibre, MPa: M / S."""
    return abs(moment) / section_modulus


def shear_stress(shear: float, width: float, thickness: float) -> float:
    """The largest shear stress in a rectangle, MPa: 1.5·V / (b·h)."""
    return 1.5 * abs(shear) / (width * thickness)


def tension_notch_share(depth: float, left: float) -> float:
    """How much of the shear that its section bears an end has left when it is notched on the tension side.

    ``left`` of the ``depth`` stays above the notch: (d_n / d)², since such an end splits from the corner of
    the notch. Source: NDS 2018 3.4.3.2 (a), from memory.
    """
    return (left / depth) ** 2


def compression_notch_depth(depth: float, left: float, reach: float) -> float:
    """The depth (mm) that bears shear at an end notched on the compression side.

    ``reach`` is how far the notch goes past the inner edge of the support. d - (d - d_n)·e / d_n, and d_n
    where it goes farther than that. Source: NDS 2018 3.4.3.2 (e), from memory.
    """
    return depth - (depth - left) * min(max(reach, 0.0), left) / left


def bearing_stress(force: float, width: float, bearing_length: float) -> float:
    """The stress under a bearing, MPa: R / (b·l_b)."""
    return abs(force) / (width * bearing_length)


def axial_stress(force: float, width: float, thickness: float) -> float:
    """The even stress along a straight part, MPa."""
    return abs(force) / (width * thickness)


def column_buckling_stress(effective_length: float, depth: float, least_modulus: float) -> float:
    """The critical buckling stress F_cE of a column, MPa: 0.822·E'_min / (l_e / d)².

    ``depth`` is the side in the direction it would bow; ``least_modulus`` is E'_min, the low (5 %) value
    with a margin, not the mean. Source: NDS 3.7.1.
    """
    return 0.822 * least_modulus / (effective_length / depth) ** 2


def column_stability(
    buckling_stress: float, crushing_value: float, c: float = SAWN_COLUMN_C, built_up: float = 1.0
) -> float:
    """The column stability factor C_P, 0 to 1.

    ``crushing_value`` is F_c*: the compression value with every factor but C_P. ``built_up`` is K_f, 0.6
    for nailed plies bowing across the plies. Source: NDS 3.7.1 and 15.3.
    """
    ratio = buckling_stress / crushing_value
    return built_up * _interaction(ratio, c)


def beam_slenderness(effective_length: float, depth: float, width: float) -> float:
    """The slenderness ratio R_B of a beam on edge: √(l_e·d / b²). Source: NDS 3.3.3."""
    return math.sqrt(effective_length * depth) / width


def effective_length_centre_load(unbraced_length: float, depth: float) -> float:
    """The effective length of a single span loaded at its centre, mm: 1.37·l_u + 3·d.

    Source: NDS Table 3.3.3, for l_u / d of 7 and more.
    """
    return 1.37 * unbraced_length + 3 * depth


def beam_buckling_stress(slenderness: float, least_modulus: float) -> float:
    """The stress F_bE at which a beam rolls over, MPa: 1.2·E'_min / R_B². Source: NDS 3.3.3."""
    return 1.2 * least_modulus / slenderness**2


def beam_stability(buckling_stress: float, bending_value: float) -> float:
    """The beam stability factor C_L, 0 to 1.

    ``bending_value`` is F_b*: the bending value with every factor but C_L, C_fu. Source: NDS 3.3.3.
    """
    return _interaction(buckling_stress / bending_value, 0.95)


def _interaction(ratio: float, c: float) -> float:
    """The root of c·x² - (1 + r)·x + r = 0 that lies below 1, written so that a small r keeps its digits."""
    half = (1 + ratio) / (2 * c)
    return (ratio / c) / (half + math.sqrt(half * half - ratio / c))
