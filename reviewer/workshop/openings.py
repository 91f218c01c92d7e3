"""Openings between bars: rails, slats and rungs with a gap that goes right through. By bounds, in mm."""

from __future__ import annotations

import itertools
from bisect import bisect_left, bisect_right
from collections.abc import Iterator
from typing import NamedTuple

from reviewer.model.plan import Plan
from reviewer.reference.usual_values import usual_value
from reviewer.setting_out.result import SettingOut
from reviewer.setting_out.solid import Solid
from reviewer.units import TOLERANCE_MM

#: Pairs of bars that are looked at all round before the rest is left: own choice.
PAIRS = 60
#: Bars are narrower than this share of their length: own choice.
_SLENDER = 0.5


class Opening(NamedTuple):
    """A gap between two bars: how wide it is, and its bounds."""

    first: str
    second: str
    gap: float
    low: tuple[float, float, float]
    high: tuple[float, float, float]


class Openings(NamedTuple):
    """The openings of a piece, one for each two families of bars; ``cut_short`` when there were too many."""

    found: tuple[Opening, ...]
    cut_short: bool


def _shared(one: Solid, other: Solid, axis: int) -> tuple[float, float]:
    return max(one.low[axis], other.low[axis]), min(one.high[axis], other.high[axis])


def _pairs(bars: list[Solid], axis: int, least: float, most: float) -> Iterator[tuple[Solid, Solid]]:
    """Two bars each with a gap between the sizes on an axis."""
    by_low = sorted(bars, key=lambda solid: solid.low[axis])
    lows = [solid.low[axis] for solid in by_low]
    for bar in by_low:
        start = bisect_left(lows, bar.high[axis] + least - TOLERANCE_MM)
        end = bisect_right(lows, bar.high[axis] + most - TOLERANCE_MM)
        for other in by_low[start:end]:
            yield bar, other


def _covers(solid: Solid, opening: Opening, axis: int) -> bool:
    inside = min(solid.high[axis], opening.high[axis]) - max(solid.low[axis], opening.low[axis])
    return inside >= usual_value("opening-closed") * (opening.high[axis] - opening.low[axis])


def _near(solid: Solid, axis: int, place: float, within: float) -> bool:
    return solid.low[axis] <= place + within and solid.high[axis] >= place - within


def _left_open(
    opening: Opening, axis: int, long: int, through: int, setting: SettingOut, least: float, most: float
) -> Opening | None:
    """What is open of it: less what lies on either bar. None where it is closed, or open at an end."""
    ends = [False, False]
    from_, to = opening.low[axis], opening.high[axis]
    for name, solid in setting.solids.items():
        if name in (opening.first, opening.second):
            continue
        if not _near(solid, axis, opening.low[axis], most) and not _near(
            solid, axis, opening.high[axis], most
        ):
            continue
        inside = [
            min(solid.high[each], opening.high[each]) - max(solid.low[each], opening.low[each])
            for each in range(3)
        ]
        if min(inside) > TOLERANCE_MM:
            if solid.low[axis] <= opening.low[axis] + TOLERANCE_MM:
                from_ = max(from_, solid.high[axis])
            elif solid.high[axis] >= opening.high[axis] - TOLERANCE_MM:
                to = min(to, solid.low[axis])
            else:
                return None  # something stands in the middle of it
        over = min(solid.high[long], opening.high[long]) - max(solid.low[long], opening.low[long])
        if (
            _covers(solid, opening, axis)
            and over >= 0.5 * (opening.high[long] - opening.low[long])
            and solid.low[through] <= opening.high[through] + most
            and solid.high[through] >= opening.low[through] - most
        ):
            return None  # a back or a panel closes it
        if _covers(solid, opening, axis) and inside[through] > -most / 2:
            ends[0] = ends[0] or _near(solid, long, opening.low[long], most)
            ends[1] = ends[1] or _near(solid, long, opening.high[long], most)
    if setting.wall is not None and setting.wall[0] == through:
        place = setting.wall[1]
        if min(abs(place - opening.low[through]), abs(place - opening.high[through])) < most:
            return None
    if not all(ends) or to - from_ < least - TOLERANCE_MM:
        return None
    low, high = list(opening.low), list(opening.high)
    low[axis], high[axis] = from_, to
    return opening._replace(gap=to - from_, low=(low[0], low[1], low[2]), high=(high[0], high[1], high[2]))


def openings(
    plan: Plan, setting: SettingOut, least: float, most: float, lowest: float, deepest: float
) -> Openings:
    """Those from ``least`` to below ``most``, above ``lowest``, between bars no deeper than ``deepest``."""
    found: list[Opening] = []
    told: set[tuple[str, str]] = set()
    looked = tried = 0
    high_up = [s for s in setting.solids.values() if s.high[2] >= lowest]
    for axis in (0, 1, 2):
        for through in (each for each in (0, 1, 2) if each != axis):
            long = 3 - axis - through
            bars = [
                s
                for s in high_up
                if s.extent(through) <= deepest and s.extent(axis) <= _SLENDER * s.extent(long)
            ]
            for one, other in _pairs(bars, axis, least, most):
                tried += 1
                if tried > PAIRS * 200 or looked >= PAIRS:
                    return Openings(tuple(found), True)
                low, high = [0.0] * 3, [0.0] * 3
                low[axis], high[axis] = one.high[axis], other.low[axis]
                low[long], high[long] = _shared(one, other, long)
                low[through], high[through] = _shared(one, other, through)
                if high[long] - low[long] < least or high[through] - low[through] <= TOLERANCE_MM:
                    continue
                if low[2] < lowest - TOLERANCE_MM:
                    continue
                key = plan.parts[one.name].family, plan.parts[other.name].family
                if key in told:
                    continue
                looked += 1
                opening = Opening(
                    one.name,
                    other.name,
                    high[axis] - low[axis],
                    (low[0], low[1], low[2]),
                    (high[0], high[1], high[2]),
                )
                left = _left_open(opening, axis, long, through, setting, least, most)
                if left is not None:
                    told.add(key)
                    found.append(left)
    return Openings(tuple(found), False)


def narrow_gaps(plan: Plan, setting: SettingOut, least: float, most: float) -> tuple[Opening, ...]:
    """Gaps of those sizes between neighbours of a row of copies, one for each row."""
    families: dict[str, list[Solid]] = {}
    for name, solid in setting.solids.items():
        families.setdefault(plan.parts[name].family, []).append(solid)
    found = []
    for row in families.values():
        if len(row) < 2:
            continue
        spread = [max(s.centre[axis] for s in row) - min(s.centre[axis] for s in row) for axis in range(3)]
        axis = max(range(3), key=lambda each: spread[each])
        ordered = sorted(row, key=lambda solid: solid.low[axis])
        for one, other in itertools.pairwise(ordered):
            gap = other.low[axis] - one.high[axis]
            shared = [_shared(one, other, each) for each in range(3) if each != axis]
            lengths = sorted(b - a for a, b in shared)
            in_it = lengths[0] > TOLERANCE_MM and lengths[1] > most  # thin slats squeeze like thick ones
            if in_it and least - TOLERANCE_MM <= gap < most - TOLERANCE_MM:
                found.append(Opening(one.name, other.name, gap, one.low, other.high))
                break
    return tuple(found)
