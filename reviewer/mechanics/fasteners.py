"""What nails, screws and bolts hold: pull, head, pull and shear together, groups, lead holes.

Lengths mm, forces N, per length N/mm, angles in degrees. Values are design values of the National
Design Specification for Wood Construction (NDS 2018), chapters 11 and 12, in force where its limits are
met; they are about a fifth of the average load at failure and are never mixed with it. Much furniture
lies outside those limits, so the values compare and warn; they do not certify. Specific gravity G is
that of the NDS: ovendry mass and ovendry volume. Shear is in :mod:`reviewer.mechanics.yield_modes`.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import Literal

from reviewer.records import NamedTuple
from reviewer.units import MM_PER_INCH, NEWTON_PER_POUND

#: The woods for which the withdrawal equations hold (NDS Tables 12.2A to 12.2D).
GRAVITY_RANGE = (0.31, 0.73)
#: From this diameter on the NDS treats a fastener as large: grain direction and group action count.
LARGE_DIAMETER = 0.25 * MM_PER_INCH
#: NDS 12.4: the load duration factor of a connection never exceeds this.
LARGEST_LOAD_DURATION = 1.6

#: The kinds of fastener that hold by their shank or thread in side grain.
Gripping = Literal["wood screw", "smooth nail", "ring-shank nail", "stainless nail", "lag screw"]

#: NDS equations 12.2-1 to 12.2-5: W = coefficient · G^a · D^b in pounds per inch, D in inches.
_WITHDRAWAL: dict[Gripping, tuple[float, float, float]] = {
    "lag screw": (1800.0, 1.5, 0.75),
    "wood screw": (2850.0, 2.0, 1.0),
    "smooth nail": (1380.0, 2.5, 1.0),
    "stainless nail": (465.0, 1.5, 1.0),
    "ring-shank nail": (1800.0, 2.0, 1.0),
}
#: NDS equation 12.2-6, pounds and inches: pull of a head through a side member up to 2.5 heads thick.
_HEAD = 690.0
_HEADS_THICK = 2.5
#: NDS 12.5.2: what a fastener driven into end grain keeps of its shear value, and a lag screw of its pull.
END_GRAIN_SHEAR = 0.67
END_GRAIN_LAG_PULL = 0.75
#: NDS 12.5.4: what a slanted (toe-driven) nail keeps of its shear and of its pull.
TOE_SHEAR, TOE_PULL = 0.83, 0.67
#: NDS 12.1.6: a toe-driven nail stands at 30° to its member and starts a third of its length up from the end.
TOE_DEGREES, _TOE_START = 30.0, 1 / 3
#: NDS Table 11.3.3: wood that is wet in service, and nails in wood that dries after they are driven.
_WET, _WET_NAIL_PULL = 0.7, 0.25
#: NDS 11.3.6: load/slip modulus of a large fastener, pounds and inches, times D^1.5.
_SLIP_WOOD, _SLIP_STEEL = 180_000.0, 270_000.0

#: Specific gravities that part the lead-hole rules of NDS 12.1.
_DENSE, _MEDIUM = 0.6, 0.5


class LeadHole(NamedTuple):
    """A stepped hole: its width for the bare shank and for the thread, mm."""

    shank: float
    thread: float


class HoleRange(NamedTuple):
    """The narrowest and the widest hole of a rule, mm."""

    narrowest: float
    widest: float


def withdrawal_per_mm(kind: Gripping, specific_gravity: float, diameter: float) -> float:
    """The design pull-out value W per mm of grip in side grain, N/mm.

    Grip is thread in the main member for wood screws, thread less tip for lag screws, whole depth for
    nails; see :func:`grip`. Source: NDS 12.2-1 to 12.2-5, G from 0.31 to 0.73. Nothing is allowed for
    nails and wood screws in end grain; lag screws there hold 0.75 of it (NDS 12.5.2).
    """
    coefficient, gravity_power, diameter_power = _WITHDRAWAL[kind]
    pounds_per_inch = (
        coefficient
        * math.pow(specific_gravity, gravity_power)
        * math.pow(diameter / MM_PER_INCH, diameter_power)
    )
    return pounds_per_inch * NEWTON_PER_POUND / MM_PER_INCH


def least_thread(length: float, diameter: float) -> float:
    """The thread that a standard wood screw carries at least, tip included, mm: max(4·D, 2·L/3).

    Source: NDS Appendix L.
    """
    return max(4 * diameter, 2 * length / 3)


def grip(length: float, thread: float, side: float, main: float = math.inf, tip: float = 0.0) -> float:
    """The length of thread inside the main member, mm, never below 0.

    ``side`` is all wood between the head and the main member, ``main`` the main member's thickness,
    ``tip`` the part of the point that does not count (lag screws). For nails ``thread`` is the length.
    """
    return max(0.0, min(length - tip, side + main) - max(length - thread, side))


def head_pull_through(head_diameter: float, specific_gravity: float, net_thickness: float) -> float:
    """The design pull of a round head through the side member W_H, N.

    ``net_thickness`` is the wood left under the head. Source: NDS 12.2.5.1 (2018). Flat countersunk
    heads and plywood are outside it.
    """
    head, thickness = head_diameter / MM_PER_INCH, net_thickness / MM_PER_INCH
    under = min(thickness, _HEADS_THICK * head)
    return _HEAD * math.pi * head * specific_gravity**2 * under * NEWTON_PER_POUND


def pull_and_shear(
    kind: Literal["screw", "nail"], withdrawal: float, lateral: float, angle_degrees: float
) -> float:
    """The design load Z'_α at an angle to the wood's surface, N: 90 is straight pull, 0 is shear.

    ``withdrawal`` is W'·p and ``lateral`` is Z', both N. Screws and lag screws by the Hankinson formula
    (NDS 12.4-1), nails by the linear one (NDS 12.4-2).
    """
    angle = math.radians(angle_degrees)
    along, out = math.cos(angle), math.sin(angle)
    if kind == "screw":
        along, out = along * along, out * out
    below = withdrawal * along + lateral * out
    return withdrawal * lateral / below if below > 0 else 0.0


def wet_service(kind: Literal["screw", "nail"], pulled: bool) -> float:
    """The wet service factor C_M, 0 to 1, of wood that gets wet in use.

    Source: NDS Table 11.3.3: 0.7, but 0.25 for nails that are pulled, whose wood swells and shrinks.
    """
    return _WET_NAIL_PULL if kind == "nail" and pulled else _WET


def toe_lengths(length: float, side: float) -> tuple[float, float]:
    """The bearing lengths of a toe-driven nail in the side member and in the main member, mm.

    The lesser of the side member and L/3, and L·cos 30° - L/3. Source: NDS commentary to 12.1.6.
    """
    start = length * _TOE_START
    return min(side, start), max(0.0, length * math.cos(math.radians(TOE_DEGREES)) - start)


def hardest_pull(heights: Sequence[float], moment: float) -> float:
    """The pull on the fastener furthest from the edge that the parts press on, N: a moment opens the joint.

    ``heights`` are the distances of the fasteners from that edge, mm; each is pulled in proportion to its
    own. Statics of a stiff joint that turns about its edge: M = Σ T·z, T ∝ z.
    """
    squares = math.fsum(each * each for each in heights)
    return moment * max(heights) / squares if squares > 0 else math.inf


def glued_dowel_pull(diameter: float, depth: float, bond: float) -> float:
    """The pull of a dowel glued over a depth, N: π·D·depth·τ with the mean bond shear τ, MPa.

    A first estimate (derived); beyond some depth the dowel itself breaks first.
    """
    return math.pi * diameter * depth * bond


def penetration_factor(
    kind: Literal["screw", "nail", "lag screw"], penetration: float, diameter: float
) -> float:
    """The share of the shear value that the depth in the main member allows, 0 to 1.

    Nothing below 6·D (lag screws 4·D), in proportion up to 10·D (8·D), whole above. Source: NDS Tables
    12J to 12R, footnotes; the same as finding the value anew with the true bearing length, or lower.
    """
    least, whole = (4, 8) if kind == "lag screw" else (6, 10)
    depth = penetration / diameter
    return min(depth / whole, 1.0) if depth >= least else 0.0


def group_action(
    in_a_row: int,
    spacing: float,
    diameter: float,
    main_stiffness: float,
    side_stiffness: float,
    steel_side: bool = False,
) -> float:
    """The group action factor C_g of fasteners in a row along the load, 0 to 1.

    Stiffnesses are E·A of the whole member, N. 1 for small diameters. Source: NDS equation 11.3-1.
    """
    if diameter < LARGE_DIAMETER or in_a_row < 2:
        return 1.0
    slip_inch = (_SLIP_STEEL if steel_side else _SLIP_WOOD) * math.pow(diameter / MM_PER_INCH, 1.5)
    slip = slip_inch * NEWTON_PER_POUND / MM_PER_INCH
    u = 1 + slip * spacing / 2 * (1 / main_stiffness + 1 / side_stiffness)
    m = 1 / (u + math.sqrt(u * u - 1))  # u - √(u² - 1), without losing digits
    ratio = min(main_stiffness, side_stiffness) / max(main_stiffness, side_stiffness)
    n = in_a_row
    below = n * ((1 + ratio * math.pow(m, n)) * (1 + m) - 1 + math.pow(m, 2 * n))
    return m * (1 - math.pow(m, 2 * n)) / below * (1 + ratio) / (1 - m)


def screw_hole_for_pull(specific_gravity: float, root_diameter: float) -> float:
    """The lead hole of a wood screw that is pulled, mm; 0 where none is asked for.

    Source: NDS 12.1.5.2: 90 % of the root in dense wood, 70 % in medium, none asked for in light wood.
    """
    if specific_gravity > _DENSE:
        return 0.9 * root_diameter
    return 0.7 * root_diameter if specific_gravity > _MEDIUM else 0.0


def screw_hole_for_shear(specific_gravity: float, diameter: float, root_diameter: float) -> LeadHole:
    """The lead hole of a wood screw that is sheared: shank and root, or 7/8 of them in lighter wood, mm.

    Source: NDS 12.1.5.3.
    """
    share = 1.0 if specific_gravity > _DENSE else 7 / 8
    return LeadHole(share * diameter, share * root_diameter)


def lag_screw_hole(specific_gravity: float, diameter: float) -> HoleRange:
    """The lead hole for the thread of a lag screw, mm; its shank takes a hole of its own diameter.

    Source: NDS 12.1.4.2: 65-85 %, 60-75 % or 40-70 % of the diameter in dense, medium and light wood.
    """
    if specific_gravity > _DENSE:
        low, high = 0.65, 0.85
    elif specific_gravity > _MEDIUM:
        low, high = 0.60, 0.75
    else:
        low, high = 0.40, 0.70
    return HoleRange(low * diameter, high * diameter)


def widest_nail_hole(specific_gravity: float, diameter: float) -> float:
    """The widest hole that may be bored for a nail, mm. Source: NDS 12.1.6.3: 90 % dense, else 75 %."""
    return (0.9 if specific_gravity > _DENSE else 0.75) * diameter


def bolt_hole(diameter: float) -> HoleRange:
    """The hole for a bolt, mm: 1/32 to 1/16 in over its diameter. Source: NDS 12.1.3.2."""
    return HoleRange(diameter + MM_PER_INCH / 32, diameter + MM_PER_INCH / 16)
