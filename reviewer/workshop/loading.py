"""What the plan asks each part to carry: how much, how long it stays, and where on the part it is."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from itertools import pairwise

from reviewer.model.plan import Axis, Load, Plan
from reviewer.records import NamedTuple
from reviewer.reference.loads import planned_load
from reviewer.setting_out.result import SettingOut
from reviewer.setting_out.solid import Solid
from reviewer.units import NEWTON_PER_KG, TOLERANCE_MM

#: Where a load is from that the plan states.
PLAN_SAYS = "the plan"


class Carried(NamedTuple):
    """A force (N, downwards) at a place along a part, the lasting and the brief share of it."""

    at: float
    lasting: float
    brief: float


class Spread(NamedTuple):
    """An even load on a stretch of a part: mm from its low end, lasting and brief N/mm."""

    start: float
    end: float
    lasting: float
    brief: float


class Declared(NamedTuple):
    """One declared load on one part: lasting and brief N, and over how many mm of it (None: all).

    ``spot`` is the axis and the place on it (mm from the part's low end) that the plan gives it.
    ``by_size`` is true of a load by length or area: a shorter part carries less of it.
    """

    lasting: float
    brief: float
    reach: float | None
    spot: tuple[int, float] | None = None
    by_size: bool = False

    def shrunk(self, times_length: float) -> Declared:
        """The load on the same part so many times as long."""
        if times_length == 1.0:
            return self
        times = times_length if self.by_size else 1.0
        spot = None if self.spot is None else (self.spot[0], self.spot[1] * times_length)
        return self._replace(lasting=self.lasting * times, brief=self.brief * times, spot=spot)


def loads_on(plan: Plan, setting: SettingOut) -> dict[str, list[Declared]]:
    """Declared loads by part, shared over the parts of a load by their upward faces."""
    found: dict[str, list[Declared]] = {}
    for load in plan.loads:
        solids = [setting.solids[name] for name in load.on if name in setting.solids]
        whole = math.fsum(map(_top_area, solids))
        abreast: dict[tuple[float, ...], float] = {}
        for solid in solids:
            abreast[_shelf(solid)] = abreast.get(_shelf(solid), 0.0) + _top_area(solid)
        for solid in solids:
            area = _top_area(solid)
            newtons = _newtons(load, solid, area / whole, area / abreast[_shelf(solid)])
            lasting, brief = (newtons, 0.0) if load.lasting else (0.0, newtons)
            made = Declared(lasting, brief, _reach(load), _spot_on(load, solid), _by_size(load))
            found.setdefault(solid.name, []).append(made)
    return found


def _spot_on(load: Load, solid: Solid) -> tuple[int, float] | None:
    """Where on a part a load rests, from its low end; at its end where the part is shorter than that."""
    if load.spot is None:
        return None
    axis, end, away = load.spot
    whole = solid.extent(axis)
    away = min(away, whole)
    return axis, away if end == "low" else whole - away


class OnSpot(NamedTuple):
    """What stays (N) on one spot of a part, seen from above: across and deep, mm in space."""

    newtons: float
    point: tuple[float, float]


def resting(
    declared: Mapping[str, Sequence[Declared]], setting: SettingOut
) -> tuple[dict[str, float], dict[str, list[OnSpot]]]:
    """What stays all over each part (N), and what stays on one spot of it."""
    spread: dict[str, float] = {}
    spots: dict[str, list[OnSpot]] = {}
    for name, loads in declared.items():
        spread[name] = sum(each.lasting for each in loads if each.spot is None)
        for each in loads:
            if each.spot is not None and each.lasting > 0:
                solid = setting.solids[name]
                axis, place = each.spot
                point = [solid.centre[Axis.ACROSS], solid.centre[Axis.DEEP]]
                point[axis] = solid.low[axis] + place
                spots.setdefault(name, []).append(OnSpot(each.lasting, (point[0], point[1])))
    return spread, spots


def _top_area(solid: Solid) -> float:
    return solid.extent(Axis.ACROSS) * solid.extent(Axis.DEEP)


def _run(solid: Solid) -> Axis:
    return Axis.ACROSS if solid.extent(Axis.ACROSS) >= solid.extent(Axis.DEEP) else Axis.DEEP


def _shelf(solid: Solid) -> tuple[float, ...]:
    """What boards that lie abreast have in common: one height, one run. They share a load per length."""
    run = _run(solid)
    return (run, *(round(each, 1) for each in (solid.high[Axis.UP], solid.low[run], solid.high[run])))


def _reach(load: Load) -> float | None:
    """Over how many mm of a part a load goes: people and things take their place, the rest is everywhere."""
    if load.spot is not None:
        return 0.0
    if load.per_length is not None or load.per_area is not None or load.use == "stated":
        return None
    planned = planned_load(load.use)
    return None if planned.basis != "each" else (planned.spread_over or 0.0) * load.count


def _by_size(load: Load) -> bool:
    if load.weight is not None:
        return False
    if load.per_length is not None or load.per_area is not None:
        return True
    return planned_load(load.use).basis != "each"


def _newtons(load: Load, solid: Solid, share: float, share_abreast: float) -> float:
    run = solid.extent(_run(solid))
    if load.weight is not None:
        return load.weight * NEWTON_PER_KG * share
    if load.per_length is not None:
        return load.per_length * run * NEWTON_PER_KG * share_abreast
    if load.per_area is not None:
        return load.per_area * _top_area(solid) * NEWTON_PER_KG
    planned = planned_load(load.use)
    if planned.basis == "per length":
        return planned.amount * run * NEWTON_PER_KG * load.count * share_abreast
    if planned.basis == "per area":
        return planned.amount * _top_area(solid) * NEWTON_PER_KG * load.count
    return planned.amount * load.count * NEWTON_PER_KG * share


def _busiest(places: Sequence[float], length: float) -> float:
    """The middle of the longest stretch between two supports: where a load on one spot does most."""
    gaps = [(b - a, -a) for a, b in pairwise(places)]
    widest, start = max(gaps, default=(length, 0.0))
    return -start + widest / 2 if widest > TOLERANCE_MM else length / 2


def placed(
    declared: Sequence[Declared], places: Sequence[float], length: float, axis: int
) -> tuple[tuple[float, float], list[Spread], list[Carried]]:
    """Declared loads along a part: over all of it (lasting and brief N/mm), on a stretch, on a spot.

    A load whose spot is counted on another axis than the part's own rests where it does most.
    """
    lasting = brief = 0.0
    spreads, points = [], []
    middle = _busiest(places, length)
    for load in declared:
        if load.spot is not None and load.spot[0] == axis:
            points.append(Carried(load.spot[1], load.lasting, load.brief))
        elif load.reach is None or load.reach >= length:
            lasting, brief = lasting + load.lasting / length, brief + load.brief / length
        elif load.reach > 0:
            start = min(max(middle - load.reach / 2, 0.0), length - load.reach)
            each = (load.lasting / load.reach, load.brief / load.reach)
            spreads.append(Spread(start, start + load.reach, *each))
        else:
            points.append(Carried(middle, load.lasting, load.brief))
    return (lasting, brief), spreads, points
