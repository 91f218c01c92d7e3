"""What hardware holds: a door on its hinges, a drawer on its slides, a leg on its castor.

Hardware holds across a gap, so a fit makes no contact and no joint. Each unit of a fit (an assembly that
is hung as one, or a part) is held by every part of the other list that its hardware reaches, with the one
of its parts that faces it most. What stands on castors bears on the floor straight below its underside.
"""

from __future__ import annotations

import math

from reviewer.limits import Limits
from reviewer.model.plan import FLOOR, GROUNDS, WALL, Axis, Fit, Moving, Plan
from reviewer.records import NamedTuple
from reviewer.setting_out.result import SettingOut
from reviewer.setting_out.setting import gaps
from reviewer.setting_out.solid import Solid, Vector
from reviewer.units import TOLERANCE_MM

#: By kind of hardware, the limit that says how wide a gap it holds across.
REACH = {"hinges": "hinge-reach", "slides": "slide-reach", "shelf pins": "pin-reach"}
_STANDS = {"castors": "castor-height", "glides": "glide-height", "levellers": "leveller-height"}
#: Drawers run between two sides that are apart on these axes.
_LEVEL = (Axis.ACROSS, Axis.DEEP)


class _Beyond(NamedTuple):
    """A part that hardware does not reach: how far off it is (mm), and how much faces it (mm²)."""

    distance: float
    area: float
    part: str
    other: str
    gaps: Vector


def _nearest(beyond: list[_Beyond]) -> _Beyond:
    """The nearest, of some as near the one that faces it most, of those the first of the plan."""
    least = min(each.distance for each in beyond) + TOLERANCE_MM
    near = [each for each in beyond if each.distance <= least]
    most = max(each.area for each in near) - 1.0
    return next(each for each in near if each.area >= most)


class Hung(NamedTuple):
    """One part held by another, or by the floor, through hardware. ``low`` and ``high`` bound the patch (mm).

    ``axis`` is where they are furthest apart: ``gap`` mm there.
    """

    part: str
    other: str
    kind: str
    fit: Fit
    axis: Axis
    gap: float
    low: Vector
    high: Vector


class Missed(NamedTuple):
    """A unit of a fit whose hardware does not reach: the nearest part, the gaps and the reach, mm.

    ``one_sided``: slides hold it on one side already, and this is the other. ``limit`` names the limit.
    """

    unit: tuple[str, ...]
    part: str
    other: str
    kind: str
    fit: Fit
    gaps: Vector
    reach: float
    limit: str
    one_sided: bool


class Hanging(NamedTuple):
    """All that hardware holds, and what it does not reach."""

    hung: tuple[Hung, ...]
    missed: tuple[Missed, ...]


def hanging(plan: Plan, setting: SettingOut, limits: Limits) -> Hanging:
    """What each fit of the plan holds, in the plan's order."""
    hung: list[Hung] = []
    missed: list[Missed] = []
    for fit in plan.fits:
        for piece in fit.pieces:
            for unit in fit.units:
                placed = tuple(name for name in unit if name in setting.solids)
                if not placed:
                    continue
                if piece.kind in REACH:
                    limit = REACH[piece.kind]
                    found, miss = _hung(fit, piece.kind, unit, placed, setting, limits[limit].amount, limit)
                    hung += found
                    missed += miss
                elif piece.kind in _STANDS:
                    limit = _STANDS[piece.kind]
                    stood = _stood(fit, piece.kind, placed, setting, limits[limit].amount, limit)
                    if isinstance(stood, Hung):
                        hung.append(stood)
                    elif stood is not None:
                        missed.append(stood)
    return Hanging(tuple(hung), tuple(missed))


def unhung(plan: Plan, floating: frozenset[str]) -> tuple[Moving, ...]:
    """Movements of what nothing holds and no fit names: all its parts are in the air."""
    hung = (fit for fit in plan.fits if fit.others and any(one.kind != "interlocks" for one in fit.pieces))
    fitted = {name for fit in hung for name in fit.parts}
    return tuple(
        moving
        for moving in plan.movings
        if floating.issuperset(moving.parts) and fitted.isdisjoint(moving.parts)
    )


def _patch(one: Solid, two: Solid) -> tuple[Vector, Vector, float]:
    """The room in which two solids face each other, between them where they are apart; and its area."""
    low, high = [0.0] * 3, [0.0] * 3
    sizes = []
    for axis in range(3):
        first, second = max(one.low[axis], two.low[axis]), min(one.high[axis], two.high[axis])
        low[axis], high[axis] = min(first, second), max(first, second)
        sizes.append(max(0.0, second - first))
    sizes.sort()
    return (low[0], low[1], low[2]), (high[0], high[1], high[2]), sizes[1] * sizes[2]


def _ground(name: str, solid: Solid, setting: SettingOut) -> Solid | None:
    """The wall as a box before which a part stands; None for the floor, and in a plan without a wall."""
    if name != WALL or setting.wall is None:
        return None
    axis, place = setting.wall
    low, high = list(solid.low), list(solid.high)
    low[axis] = high[axis] = place
    return Solid(
        name,
        (low[0], low[1], low[2]),
        (high[0], high[1], high[2]),
        solid.long,
        solid.wide,
        solid.thick,
        solid.directions,
        solid.size,
    )


def _hung(
    fit: Fit,
    kind: str,
    unit: tuple[str, ...],
    placed: tuple[str, ...],
    setting: SettingOut,
    reach: float,
    limit: str,
) -> tuple[list[Hung], list[Missed]]:
    inside = set(unit)
    hung: list[Hung] = []
    beyond: list[_Beyond] = []
    for other in fit.others:
        best: tuple[float, Hung] | None = None
        for name in placed:
            solid = setting.solids[name]
            them = setting.solids.get(other) or _ground(other, solid, setting)
            if them is None or other in inside:
                continue
            apart = gaps(solid, them)
            if max(apart) > reach + TOLERANCE_MM:
                distance = math.sqrt(sum(each * each for each in apart))
                beyond.append(_Beyond(distance, _patch(solid, them)[2], name, other, apart))
                continue
            low, high, area = _patch(solid, them)
            axis = Axis(max(range(3), key=lambda each: (apart[each], low[each] - high[each])))
            if best is None or area > best[0]:
                best = area, Hung(name, other, kind, fit, axis, apart[axis], low, high)
        if best is not None:
            hung.append(best[1])
    if not hung:
        if not beyond:
            return [], []
        far = _nearest(beyond)
        return [], [Missed(unit, far.part, far.other, kind, fit, far.gaps, reach, limit, False)]
    return hung, _one_sided(fit, kind, unit, hung, beyond, setting, (reach, limit))


def _one_sided(
    fit: Fit,
    kind: str,
    unit: tuple[str, ...],
    hung: list[Hung],
    beyond: list[_Beyond],
    setting: SettingOut,
    reach: tuple[float, str],
) -> list[Missed]:
    """The side that a pair of slides does not reach, when it holds on one level side only."""
    if kind != "slides":
        return []
    sides = set()
    for each in hung:
        if each.axis not in _LEVEL or each.other in GROUNDS:
            return []
        sides.add(_is_right(setting, each.part, each.other, each.axis))
    axis = hung[0].axis
    if len(sides) > 1 or any(each.axis != axis for each in hung):
        return []
    across = [
        each
        for each in beyond
        if each.other in setting.solids
        and max(range(3), key=lambda one: each.gaps[one]) == axis
        and _is_right(setting, each.part, each.other, axis) not in sides
    ]
    if not across:
        return []
    far = _nearest(across)
    return [Missed(unit, far.part, far.other, kind, fit, far.gaps, *reach, True)]


def _is_right(setting: SettingOut, part: str, other: str, axis: Axis) -> bool:
    return setting.solids[other].centre[axis] > setting.solids[part].centre[axis]


def _stood(
    fit: Fit, kind: str, placed: tuple[str, ...], setting: SettingOut, most: float, limit: str
) -> Hung | Missed | None:
    """The lowest part of a unit on its castors; missed where they are not as tall as it stands high."""
    name = min(placed, key=lambda each: setting.solids[each].low[Axis.UP])
    solid = setting.solids[name]
    high = solid.low[Axis.UP]
    if fit.height is not None:
        right = abs(high - fit.height) <= TOLERANCE_MM
        most, limit = fit.height, ""
    else:
        if abs(high) <= TOLERANCE_MM:
            return None  # set out as if it stood on the floor itself
        right = 0 < high <= most + TOLERANCE_MM
    if not right:
        return Missed(placed, name, FLOOR, kind, fit, (0.0, 0.0, high), most, limit, False)
    low, top = list(solid.low), list(solid.high)
    top[Axis.UP] = low[Axis.UP]
    return Hung(name, FLOOR, kind, fit, Axis.UP, high, (low[0], low[1], low[2]), (top[0], top[1], top[2]))
