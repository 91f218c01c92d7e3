"""Where along a part its supports bear, and the knife edges that they are reckoned as."""

from __future__ import annotations

import math
from collections.abc import Iterable

from reviewer.model.plan import Axis
from reviewer.records import NamedTuple
from reviewer.setting_out.solid import Solid
from reviewer.units import TOLERANCE_MM
from reviewer.workshop.holding import Held

#: A support longer than this along the board is many supports, one at least every so often.
BEARING_STEP_MM = 150.0


class Bearing(NamedTuple):
    """The stretch of a part that a support bears on, mm from its low end."""

    start: float
    end: float
    held: Held

    @property
    def length(self) -> float:
        return self.end - self.start


def _covered(solid: Solid, axis: int, held: Iterable[Held]) -> list[tuple[float, float]]:
    """The stretches of a part's axis that its supports bear on, merged, mm from its low end."""
    merged: list[tuple[float, float]] = []
    for bearing in bearings_of(solid, axis, held):
        if merged and bearing.start <= merged[-1][1] + TOLERANCE_MM:
            merged[-1] = (merged[-1][0], max(merged[-1][1], bearing.end))
        else:
            merged.append((bearing.start, bearing.end))
    return merged


def span_axis(solid: Solid, held: tuple[Held, ...], has_strength_across: bool) -> int | None:
    """The level axis that a part spans along; None for an upright part, which spans nothing.

    A board spans along its grain. A sheet that lies on rails all along it spans from rail to rail.
    """
    if solid.long == Axis.UP:
        return None
    long, wide = int(solid.long), int(solid.wide)
    if solid.thick != Axis.UP or not has_strength_across:
        return long
    along = math.fsum(end - start for start, end in _covered(solid, long, held)) / solid.extent(long)
    if along < 0.5:
        return long
    rails = _covered(solid, wide, held)
    middle = solid.extent(wide) / 2
    both_sides = len(rails) > 1 and rails[0][1] < middle < rails[-1][0]
    return wide if both_sides else long


def bearings_of(solid: Solid, axis: int, held: Iterable[Held]) -> list[Bearing]:
    """The stretches of a part that its supports bear on along an axis, from its low end on."""
    start, length = solid.low[axis], solid.extent(axis)
    found = [
        Bearing(
            min(max(0.0, support.low[axis] - start), length),
            max(0.0, min(length, support.high[axis] - start)),
            support,
        )
        for support in held
    ]
    return sorted(found, key=lambda bearing: (bearing.start, bearing.end, bearing.held.by))


def knife_edges(bearings: list[Bearing]) -> list[tuple[float, Held]]:
    """The knife edges that bearings are reckoned as.

    A short one is one edge in its middle, so that it does not keep the board from turning; a long one
    is many. Short ones that lie over each other are one edge: a leg and the rail behind it do not pry. Where
    there is but one bearing, its two ends hold the board.
    """
    alone = max(each.end for each in bearings) - min(each.start for each in bearings) <= BEARING_STEP_MM
    found = []
    shared = {} if alone else _shared_middles(bearings)
    for number, (start, end, support) in enumerate(bearings):
        if end - start <= TOLERANCE_MM:
            found.append((start, support))
        elif end - start <= BEARING_STEP_MM and not alone:
            found.append((shared.get(number, (start + end) / 2), support))
        else:
            steps = max(1, math.ceil((end - start) / BEARING_STEP_MM))
            found += [(start + (end - start) * step / steps, support) for step in range(steps + 1)]
    return sorted(found, key=lambda item: (item[0], item[1].by))


def _shared_middles(bearings: list[Bearing]) -> dict[int, float]:
    """By number, the one place of short bearings that lie over each other: the middle of what they share."""
    found: dict[int, float] = {}
    run: list[int] = []
    low = high = 0.0
    for number, (start, end, _) in enumerate(bearings):
        if not TOLERANCE_MM < end - start <= BEARING_STEP_MM:
            continue
        if run and start < high - TOLERANCE_MM:
            run.append(number)
            low, high = max(low, start), min(high, end)
        else:
            run, low, high = [number], start, end
        if len(run) > 1:
            found.update(dict.fromkeys(run, (low + high) / 2))
    return found
