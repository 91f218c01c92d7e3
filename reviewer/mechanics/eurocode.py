"""Fasteners and columns by Eurocode 5 (EN 1995-1-1, chapters 8 and 6), for metric plans.

Lengths mm, forces N, strengths MPa, densities kg/m³, angles in degrees. Read through two public
libraries that code the standard, not from the standard itself. Design values are these times k_mod over
gamma_M (:func:`design_capacity`).
"""

from __future__ import annotations

import math
from itertools import pairwise
from typing import Literal

from reviewer.records import NamedTuple

#: EN 1995-1-1 (6.63), from memory: k_n of solid timber.
_NOTCH_SOLID = 5.0
#: The modes of a single-shear joint of timber to timber, as clause 8.2.2 letters them.
Mode = Literal["a", "b", "c", "d", "e", "f"]
#: The kinds of fastener that differ in how far rope action may help.
Rope = Literal["round nail", "square nail", "other nail", "screw", "bolt"]

#: Clause 8.2.2(2): the largest rope share of the sideways part (bolts from memory).
_ROPE_SHARE: dict[Rope, float] = {
    "round nail": 0.15,
    "square nail": 0.25,
    "other nail": 0.50,
    "screw": 1.0,
    "bolt": 0.25,
}
#: Table 8.1: k_ef of nails in a row by spacing over diameter; 4 d only where prebored.
_IN_A_ROW = ((4.0, 0.5), (7.0, 0.7), (10.0, 0.85), (14.0, 1.0))


class Shear(NamedTuple):
    """The characteristic shear capacity of one fastener in one plane, N, and the mode that sets it."""

    force: float
    mode: Mode


class Distances(NamedTuple):
    """The least distances of Table 8.2 in mm, as the standard names them."""

    along_grain: float  # a1
    across_grain: float  # a2
    loaded_end: float  # a3,t
    unloaded_end: float  # a3,c
    loaded_edge: float  # a4,t
    unloaded_edge: float  # a4,c


def embedment_strength(diameter: float, density: float, prebored: bool) -> float:
    """The embedment strength f_h,k of timber along the grain, MPa.

    For nails and screws up to 8 mm; bolts and thicker screws always take the prebored form. Source:
    EN 1995-1-1 (8.15), (8.16), (8.32).
    """
    if prebored:
        return 0.082 * (1 - 0.01 * diameter) * density
    return 0.082 * density * math.pow(diameter, -0.3)


def embedment_at_angle(
    along_grain: float, diameter: float, angle_degrees: float, wood: Literal["softwood", "lvl", "hardwood"]
) -> float:
    """The embedment strength under a bolt at an angle to the grain, MPa.

    Source: EN 1995-1-1 (8.31), (8.33).
    """
    k90 = {"softwood": 1.35, "lvl": 1.30, "hardwood": 0.90}[wood] + 0.015 * diameter
    angle = math.radians(angle_degrees)
    return along_grain / (k90 * math.sin(angle) ** 2 + math.cos(angle) ** 2)


def yield_moment(tensile_strength: float, diameter: float, square: bool = False) -> float:
    """The yield moment M_y,Rk of a fastener, N·mm. Source: EN 1995-1-1 (8.14), (8.30)."""
    return (0.45 if square else 0.3) * tensile_strength * math.pow(diameter, 2.6)


def screw_effective_diameter(shank: float, root: float, shank_in_point_member: float) -> float:
    """The diameter that counts for a screw in shear, mm. Source: EN 1995-1-1 8.7.1.

    The shank where it enters the member with the point by 4 d or more, else 1.1 times the root.
    """
    return shank if shank_in_point_member >= 4 * shank else 1.1 * root


def sideways_modes(
    head_side: float,
    point_side: float,
    diameter: float,
    head_strength: float,
    point_strength: float,
    yield_moment: float,
) -> dict[Mode, float]:
    """The sideways part of each mode of one shear plane, timber to timber, N, with no rope action.

    ``head_side`` t1 and ``point_side`` t2 are thickness and penetration, strengths are embedment
    strengths. Source: EN 1995-1-1 (8.6).
    """
    t1, t2, d, fh1, my = head_side, point_side, diameter, head_strength, yield_moment
    b = point_strength / fh1
    t = t2 / t1
    stiff = math.sqrt(b + 2 * b**2 * (1 + t + t**2) + b**3 * t**2) - b * (1 + t)
    head_bent = math.sqrt(2 * b * (1 + b) + 4 * b * (2 + b) * my / (fh1 * d * t1**2)) - b
    point_bent = math.sqrt(2 * b**2 * (1 + b) + 4 * b * (1 + 2 * b) * my / (fh1 * d * t2**2)) - b
    return {
        "a": fh1 * t1 * d,
        "b": point_strength * t2 * d,
        "c": fh1 * t1 * d / (1 + b) * stiff,
        "d": 1.05 * fh1 * t1 * d / (2 + b) * head_bent,
        "e": 1.05 * fh1 * t2 * d / (1 + 2 * b) * point_bent,
        "f": 1.15 * math.sqrt(2 * b / (1 + b)) * math.sqrt(2 * my * fh1 * d),
    }


def shear_capacity(sideways: dict[Mode, float], withdrawal: float, rope: Rope) -> Shear:
    """The characteristic shear capacity with rope action, N. Source: EN 1995-1-1 8.2.2.

    Modes c to f gain a quarter of the withdrawal capacity, up to a share of their own that depends on
    the fastener.
    """
    with_rope = {
        mode: force if mode in ("a", "b") else force + min(withdrawal / 4, _ROPE_SHARE[rope] * force)
        for mode, force in sideways.items()
    }
    mode = min(with_rope, key=lambda name: with_rope[name])
    return Shear(with_rope[mode], mode)


def design_capacity(characteristic: float, modification: float, partial_factor: float) -> float:
    """The design value in N: k_mod · R_k / gamma_M. Source: EN 1995-1-1 (2.17)."""
    return modification * characteristic / partial_factor


def nail_withdrawal(
    diameter: float, density: float, penetration: float, head_diameter: float, head_side: float
) -> float:
    """The characteristic pull F_ax,Rk of a smooth nail, N: its point or its head, whichever gives way first.

    Nothing below 8 d of penetration, in proportion up to 12 d; not for a lasting pull. Source: EN 1995-1-1
    (8.24) to (8.26), 8.3.2.
    """
    reach = penetration / (4 * diameter) - 2
    if reach < 0:
        return 0.0
    grip = 20e-6 * density**2
    head = 70e-6 * density**2
    whole = min(grip * diameter * penetration, grip * diameter * head_side + head * head_diameter**2)
    return whole * min(reach, 1.0)


def screw_withdrawal_strength(diameter: float, thread_depth: float, density: float) -> float:
    """The withdrawal strength f_ax,k of a screw of 6 to 12 mm with a root of 0.6 to 0.75 d, MPa.

    ``thread_depth`` l_ef is the thread in the member with the point. Source: EN 1995-1-1 (8.39).
    """
    return 0.52 / math.sqrt(diameter) * math.pow(thread_depth, -0.1) * math.pow(density, 0.8)


def screw_withdrawal(
    strength: float,
    diameter: float,
    thread_depth: float,
    angle_to_grain_degrees: float = 90.0,
    count: int = 1,
) -> float:
    """The characteristic pull F_ax,α,Rk of a group of like screws, N. Source: EN 1995-1-1 (8.38), (8.41).

    Nothing below 6 d of thread or under 30° to the grain; ``count`` screws work as count^0.9.
    """
    if thread_depth < 6 * diameter or angle_to_grain_degrees < 30:
        return 0.0
    angle = math.radians(angle_to_grain_degrees)
    thin = min(diameter / 8, 1.0)
    one = strength * diameter * thread_depth * thin / (1.2 * math.cos(angle) ** 2 + math.sin(angle) ** 2)
    return math.pow(count, 0.9) * one


def declared_withdrawal_strength(declared: float, density: float, declared_density: float) -> float:
    """A strength declared for one density carried over to another, MPa. Source: EN 1995-1-1 (8.40)."""
    return declared * math.pow(density / declared_density, 0.8)


def screw_head_pull(declared: float, head_diameter: float, density: float, declared_density: float) -> float:
    """The characteristic pull of a screw's head through the wood, N. Source: EN 1995-1-1 (8.40b)."""
    return declared * head_diameter**2 * math.pow(density / declared_density, 0.8)


def least_penetration(diameter: float, smooth: bool) -> float:
    """The least depth on the point side, mm: 8 d for smooth nails, 6 d for threaded ones and screws.

    Source: EN 1995-1-1 8.3.1.2, 8.7.1.
    """
    return (8 if smooth else 6) * diameter


def may_go_unbored(thickness: float, diameter: float, density: float) -> bool:
    """True when timber of this thickness takes the fastener with no lead hole. Source: EN 1995-1-1 (8.18)."""
    least = max(7 * diameter, (13 * diameter - 30) * density / 400)
    return thickness >= least and density <= 500 and diameter <= 6


def nails_in_a_row(spacing: float, diameter: float) -> float:
    """The exponent k_ef of the number of nails in a row along the grain. Source: EN 1995-1-1 Table 8.1.

    In proportion between the table's steps; spacing under 4 d has no value and gives 0.
    """
    apart = spacing / diameter
    if apart < _IN_A_ROW[0][0]:
        return 0.0
    for (low, k_low), (high, k_high) in pairwise(_IN_A_ROW):
        if apart <= high:
            return k_low + (k_high - k_low) * (apart - low) / (high - low)
    return _IN_A_ROW[-1][1]


def least_distances(diameter: float, density: float, prebored: bool, angle_degrees: float) -> Distances:
    """The least spacings and distances of nails, and of screws up to 6 mm, in mm.

    ``angle_degrees`` is between load and grain. Unbored holes are for wood up to 500 kg/m³. Source:
    EN 1995-1-1 Table 8.2; a1 unbored from 5 mm on is read in one of the two libraries only.
    """
    d = diameter
    along, across = abs(math.cos(math.radians(angle_degrees))), abs(math.sin(math.radians(angle_degrees)))
    thick = d >= 5
    if prebored:
        edge = 4 if thick else 2
        return Distances(
            (4 + along) * d, (3 + across) * d, (7 + 5 * along) * d, 7 * d, (3 + edge * across) * d, 3 * d
        )
    edge = 5 if thick else 2
    if density > 420:
        return Distances(
            (7 + 8 * along) * d, 7 * d, (15 + 5 * along) * d, 15 * d, (7 + edge * across) * d, 7 * d
        )
    row = 7 if thick else 5
    return Distances(
        (5 + row * along) * d, 5 * d, (10 + 5 * along) * d, 10 * d, (5 + edge * across) * d, 5 * d
    )


def column_reduction(
    length: float, depth: float, crushing_characteristic: float, least_modulus: float
) -> float:
    """The factor k_c, 0 to 1, on the strength along the grain of a solid timber column.

    ``depth`` is the side in the direction it would bow, ``least_modulus`` E_0,05. Source: EN 1995-1-1
    (6.21) to (6.29) with beta_c 0.2, from memory.
    """
    slenderness = length * math.sqrt(12) / depth
    relative = slenderness / math.pi * math.sqrt(crushing_characteristic / least_modulus)
    if relative <= 0.3:
        return 1.0
    k = 0.5 * (1 + 0.2 * (relative - 0.3) + relative**2)
    return 1 / (k + math.sqrt(k**2 - relative**2))


def notch_share(depth: float, left: float, to_reaction: float, slope: float = 0.0) -> float:
    """How much of its shear strength solid timber keeps at a notch on the side of its support, k_v.

    ``left`` of the ``depth`` stays, ``to_reaction`` is the way from the line of the reaction to the corner
    of the notch; ``slope`` is how far the notch runs out along the part for each mm of its depth. Deep
    members split sooner than slight ones. Source: EN 1995-1-1 (6.62), from memory, k_n of solid timber.
    """
    share, high = left / depth, math.sqrt(depth)
    if share >= 1:
        return 1.0
    ease = _NOTCH_SOLID * (1 + 1.1 * math.pow(slope, 1.5) / high)
    splits = math.sqrt(share * (1 - share)) + 0.8 * max(to_reaction, 0.0) / depth * math.sqrt(
        1 / share - share**2
    )
    return min(1.0, ease / (high * splits))
