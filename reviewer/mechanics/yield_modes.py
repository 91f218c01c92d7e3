"""Shear of a dowel-like fastener by the yield-limit equations of the NDS: every mode and the lowest.

Lengths mm, forces N, stresses MPa, angles in degrees. Source: National Design Specification for Wood
Construction (NDS 2018), 12.3 and Tables 12.3.1A, 12.3.1B, 12.3.3. These are reference design values;
the Wood Handbook's like-looking equations give a yield load with no margin and are not mixed in.
"""

from __future__ import annotations

import math
from typing import Literal

from reviewer.mechanics.fasteners import LARGE_DIAMETER
from reviewer.records import NamedTuple
from reviewer.units import MM_PER_INCH, MPA_PER_PSI

#: How the joint gives way: wood crushed in the main or side member (I), the fastener turned stiff (II),
#: bent once in the main or side member (III), bent twice (IV).
Mode = Literal["Im", "Is", "II", "IIIm", "IIIs", "IV"]

#: NDS Table 12.3.3, psi and inches.
_SMALL, _SMALL_POWER = 16_600.0, 1.84
_PARALLEL = 11_200.0
_ACROSS, _ACROSS_POWER = 6_100.0, 1.45
#: NDS Table 12.3.1B: reduction of small fasteners, D in inches.
_THINNEST, _THINNEST_REDUCTION = 0.17, 2.2


#: NDS Table I1: bending yield strength by nominal diameter, inches and psi; the last for all that is thicker.
_BENDING_YIELD = (
    (0.142, 100_000.0),
    (0.177, 90_000.0),
    (0.236, 80_000.0),
    (0.273, 70_000.0),
    (0.344, 60_000.0),
    (math.inf, 45_000.0),
)


class Yielding(NamedTuple):
    """The reference shear value Z of one fastener, N, and the mode that sets it."""

    force: float
    mode: Mode


class Joint(NamedTuple):
    """One fastener through two members (or a main one between two sides, in double shear).

    ``diameter`` is the one the equations take: the root of wood screws and lag screws, the shank of
    nails and bolts; ``nominal_diameter`` is the size asked for at the counter. Lengths are bearing
    lengths; strengths are dowel bearing strengths in MPa; ``angle`` is the largest between load and
    grain in either member. ``gap`` is room between the members that bears nothing, as wallboard; in single
    shear only.
    """

    diameter: float
    nominal_diameter: float
    main_length: float
    side_length: float
    main_strength: float
    side_strength: float
    bending_yield: float
    angle: float = 0.0
    double_shear: bool = False
    gap: float = 0.0


def at_an_angle(along: float, across: float, angle_degrees: float) -> float:
    """A strength at an angle to the grain by the Hankinson formula, in the unit of its inputs.

    Source: NDS 12.3-11; Wood Handbook equation 8-16.
    """
    angle = math.radians(angle_degrees)
    return along * across / (along * math.sin(angle) ** 2 + across * math.cos(angle) ** 2)


def dowel_bearing_strength(specific_gravity: float, diameter: float, angle_degrees: float = 0.0) -> float:
    """The dowel bearing strength F_e of wood, MPa, under a load at an angle to the grain.

    ``diameter`` is nominal. Below 1/4 in the grain direction does not matter. Source: NDS Table 12.3.3,
    whose printed cells are rounded to 50 psi.
    """
    if diameter < LARGE_DIAMETER:
        return _SMALL * math.pow(specific_gravity, _SMALL_POWER) * MPA_PER_PSI
    along = _PARALLEL * specific_gravity
    across = _ACROSS * math.pow(specific_gravity, _ACROSS_POWER) / math.sqrt(diameter / MM_PER_INCH)
    return at_an_angle(along, across, angle_degrees) * MPA_PER_PSI


def bearing_in_main(penetration: float, tip: float) -> float:
    """The bearing length in the main member, mm, of a fastener whose tapered point ends in it: p - E/2.

    ``tip`` E is twice the diameter for nails and wood screws, tabled for lag screws; ``penetration``
    includes it. Source: NDS 12.3.5.3.
    """
    return max(0.0, penetration - tip / 2)


def bending_yield_strength(diameter: float) -> float:
    """The bending yield strength F_yb of a nail or screw of a nominal diameter, MPa; 45,000 psi for bolts.

    Source: NDS Table I1.
    """
    inches = diameter / MM_PER_INCH
    return next(psi for up_to, psi in _BENDING_YIELD if inches <= up_to) * MPA_PER_PSI


def yield_modes(joint: Joint) -> dict[Mode, float]:
    """The reference value of each mode in N; double shear has no modes II and IIIm.

    A joint with nothing to bear on has no value: every length must be above 0 (ValueError).
    """
    d, fyb = joint.diameter, joint.bending_yield
    lm, ls, fem, fes = joint.main_length, joint.side_length, joint.main_strength, joint.side_strength
    if min(d, lm, ls, fem, fes, fyb) <= 0:
        raise ValueError("a shear joint needs wood on both sides and a fastener")
    re, rt = fem / fes, lm / ls
    if joint.gap > 0 and not joint.double_shear:
        return _across_a_gap(joint)
    crush, turn, bend = _reductions(joint)

    k1 = (math.sqrt(re + 2 * re**2 * (1 + rt + rt**2) + rt**2 * re**3) - re * (1 + rt)) / (1 + re)
    k2 = -1 + math.sqrt(2 * (1 + re) + 2 * fyb * (1 + 2 * re) * d**2 / (3 * fem * lm**2))
    k3 = -1 + math.sqrt(2 * (1 + re) / re + 2 * fyb * (2 + re) * d**2 / (3 * fem * ls**2))
    main_crushed = d * lm * fem / crush
    side_crushed = d * ls * fes / crush
    side_bent = k3 * d * ls * fem / ((2 + re) * bend)
    bent_twice = d**2 / bend * math.sqrt(2 * fem * fyb / (3 * (1 + re)))
    if joint.double_shear:
        return {"Im": main_crushed, "Is": 2 * side_crushed, "IIIs": 2 * side_bent, "IV": 2 * bent_twice}
    return {
        "Im": main_crushed,
        "Is": side_crushed,
        "II": k1 * d * ls * fes / turn,
        "IIIm": k2 * d * lm * fem / ((1 + 2 * re) * bend),
        "IIIs": side_bent,
        "IV": bent_twice,
    }


def _across_a_gap(joint: Joint) -> dict[Mode, float]:
    """Single shear with room between the members: AWC TR-12, from memory; with no gap as above."""
    d, gap = joint.diameter, joint.gap
    lm, ls = joint.main_length, joint.side_length
    qm, qs = joint.main_strength * d, joint.side_strength * d
    hinge = joint.bending_yield * d**3 / 6
    crush, turn, bend = _reductions(joint)

    def force(a: float, b: float, c: float) -> float:
        return (-b + math.sqrt(b * b + 4 * a * c)) / (2 * a)

    stiff_main, stiff_side = 1 / (4 * qm), 1 / (4 * qs)
    return {
        "Im": qm * lm / crush,
        "Is": qs * ls / crush,
        "II": force(stiff_side + stiff_main, ls / 2 + gap + lm / 2, qs * ls**2 / 4 + qm * lm**2 / 4) / turn,
        "IIIm": force(2 * stiff_side + stiff_main, gap + lm / 2, hinge + qm * lm**2 / 4) / bend,
        "IIIs": force(stiff_side + 2 * stiff_main, ls / 2 + gap, qs * ls**2 / 4 + hinge) / bend,
        "IV": force(2 * stiff_side + 2 * stiff_main, gap, 2 * hinge) / bend,
    }


def shear_value(joint: Joint) -> Yielding:
    """The reference shear value Z of the fastener and the mode that governs it."""
    modes = yield_modes(joint)
    mode = min(modes, key=lambda name: modes[name])
    return Yielding(modes[mode], mode)


def _reductions(joint: Joint) -> tuple[float, float, float]:
    """The reduction terms R_d of modes I, of mode II and of modes III and IV (NDS Table 12.3.1B)."""
    grain = 1 + 0.25 * joint.angle / 90
    if joint.diameter >= LARGE_DIAMETER:
        return 4 * grain, 3.6 * grain, 3.2 * grain
    inches = joint.diameter / MM_PER_INCH
    small = _THINNEST_REDUCTION if inches <= _THINNEST else 10 * inches + 0.5
    if joint.nominal_diameter >= LARGE_DIAMETER:
        small *= grain
    return small, small, small
