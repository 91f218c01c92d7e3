"""Whether a piece plainly stands up to a push, by a few sums: most do, and then no frame need be solved.

Each sum takes one way in which the push can go to the floor and leaves all else out. What is left out could
only make the piece stiffer (Castigliano: of all ways in balance the true one stores the least work), so what
passes here would pass as a frame too; a margin covers what sliding in the joints and turning on plan add.
"""

from __future__ import annotations

import math
from itertools import pairwise

from reviewer.model.plan import Axis
from reviewer.reference.usual_values import usual_value
from reviewer.workshop.swaying_joints import Tie
from reviewer.workshop.swaying_structure import Rod, Structure


def plainly_stiff(standing: Structure, axis: int, push: float, allowed: float) -> bool:
    """True when a push (N) along an axis at the top plainly moves it less than ``allowed`` (mm)."""
    limit = allowed * usual_value("sway-quick-margin")
    if clamped(standing, axis, push) <= limit:
        return True
    return storeys(standing, axis, push) <= limit or panelled(standing, axis)


def clamped(standing: Structure, axis: int, push: float) -> float:
    """The sway of uprights that stand on both ends of long feet, mm: cantilevers side by side."""
    pins: dict[str, dict[float, None]] = {}
    for ground in standing.grounds:
        if Axis.UP in ground.axes and ground.place[Axis.UP] <= standing.base + 1.0:
            pins.setdefault(ground.part, {})[round(ground.place[axis], 1)] = None
    stiff = 0.0
    for name, rod in standing.uprights().items():
        if len(pins.get(name, ())) > 1 and rod.high[Axis.UP] >= standing.top - 0.2 * standing.height:
            wide, thick = rod.across(axis), rod.across(1 - axis)
            bending = standing.height**3 / (3 * rod.young * thick * wide**3 / 12)
            stiff += 1 / (bending + 1.2 * standing.height / (rod.shear * wide * thick))
    return push / stiff if stiff else math.inf


def _rails(standing: Structure, axis: int) -> dict[tuple[str, str], list[tuple[float, Rod, Tie, Tie]]]:
    """By pair of uprights, the boards fixed to both that run along an axis: height, board, both joints."""
    uprights = standing.uprights()
    ends: dict[str, dict[str, Tie]] = {}
    for tie in standing.ties:
        for name, other in ((tie.one, tie.two), (tie.two, tie.one)):
            if other in uprights and name not in uprights:
                known = ends.setdefault(name, {}).get(other)
                if known is None or known.turn[1 - axis] < tie.turn[1 - axis]:
                    ends[name][other] = tie
    found: dict[tuple[str, str], list[tuple[float, Rod, Tie, Tie]]] = {}
    for name, met in ends.items():
        rod = standing.rods[name]
        if rod.axis != axis or len(met) < 2:
            continue
        order = sorted(met, key=lambda other: (uprights[other].middle[axis], other))
        for one, two in pairwise(order):
            if uprights[two].middle[axis] - uprights[one].middle[axis] > rod.across(Axis.UP):
                places = found.setdefault((one, two), [])
                places.append((met[one].middle[Axis.UP], rod, met[one], met[two]))
    return found


def storeys(standing: Structure, axis: int, push: float) -> float:
    """The sway of pairs of uprights with boards between, mm: each storey bends in an S about its middle."""
    stiff = 0.0
    for (one, two), rails in _rails(standing, axis).items():
        legs = standing.rods[one], standing.rods[two]
        if min(leg.high[Axis.UP] for leg in legs) < standing.top - 0.2 * standing.height:
            continue
        give = _one_frame(standing, axis, legs, sorted(rails, key=lambda each: each[0]))
        stiff += 1 / give if 0 < give < math.inf else 0.0
    return push / stiff if stiff else math.inf


def _one_frame(
    standing: Structure, axis: int, legs: tuple[Rod, Rod], rails: list[tuple[float, Rod, Tie, Tie]]
) -> float:
    """What a frame gives to one newton at its top, mm: pins at its feet, half of the push in each leg."""
    about, share, give = 1 - axis, 0.5, 0.0
    levels = [(max(at - standing.base, 0.0), rail, left, right) for at, rail, left, right in rails]
    arms: list[float] = []  # the leg's moment below and above each rail, for one newton of push
    heights = [level[0] for level in levels]
    for number, at in enumerate(heights):
        below = at if number == 0 else (at - heights[number - 1]) / 2
        last = number == len(heights) - 1
        above = max(standing.height - at, 0.0) if last else (heights[number + 1] - at) / 2
        arms.append(share * (below + above))
    for leg in legs:
        bending = leg.young * leg.across(about) * leg.across(axis) ** 3 / 12
        give += share**2 * heights[0] ** 3 / (3 * bending)
        give += share**2 * max(standing.height - heights[-1], 0.0) ** 3 / (3 * bending)
        give += sum(share**2 * (high - low) ** 3 / (12 * bending) for low, high in pairwise(heights))
    for moment, (_, rail, left, right) in zip(arms, levels, strict=True):
        for tie in (left, right):
            if not tie.turn[about]:
                return math.inf
            give += moment**2 / tie.turn[about]
        deep, wide = rail.across(Axis.UP), rail.across(about)
        give += moment**2 * rail.size[0] / (3 * rail.young * wide * deep**3 / 12)
    return give


def panelled(standing: Structure, axis: int) -> bool:
    """Whether a board or sheet fills most of an upright side along the axis, fixed to two uprights."""
    uprights = standing.uprights()
    low = min(rod.low[axis] for rod in standing.rods.values())
    width = max(rod.high[axis] for rod in standing.rods.values()) - low
    met: dict[str, dict[str, None]] = {}
    for tie in standing.ties:
        if tie.turns or not min(tie.shift):
            continue
        for name, other in ((tie.one, tie.two), (tie.two, tie.one)):
            if other in uprights:
                met.setdefault(name, {})[other] = None
    share = usual_value("sway-panel-share")
    for name, others in met.items():
        rod = standing.rods[name]
        tall = rod.extent(Axis.UP) >= share * standing.height
        if tall and rod.extent(axis) >= share * width and len(others) > 1:
            return True
    return False
