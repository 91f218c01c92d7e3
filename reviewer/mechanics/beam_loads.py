"""The loads on a beam, and the stretches between its supports that they are dealt out to."""

from __future__ import annotations

import math
from bisect import bisect_right
from collections.abc import Iterable, Sequence
from itertools import pairwise

from reviewer.records import NamedTuple
from reviewer.units import TOLERANCE_MM


class PointLoad(NamedTuple):
    """A force in newtons, downwards positive, at a place in mm from the beam's start."""

    at: float
    force: float


class LineLoad(NamedTuple):
    """An even load in newtons per mm, downwards positive, from ``start`` to ``end`` in mm."""

    start: float
    end: float
    intensity: float


class Stretch(NamedTuple):
    """A bay and its own loads, measured from its start; line loads are cut at its ends."""

    start: float
    end: float
    points: list[PointLoad]
    lines: list[LineLoad]

    @property
    def length(self) -> float:
        return self.end - self.start

    def total(self) -> float:
        """All its load, N."""
        return math.fsum(p.force for p in self.points) + math.fsum(
            w.intensity * (w.end - w.start) for w in self.lines
        )

    def moment_about_start(self) -> float:
        """The moment of its load about its start, N·mm."""
        return math.fsum(p.force * p.at for p in self.points) + math.fsum(
            w.intensity * (w.end - w.start) * (w.start + w.end) / 2 for w in self.lines
        )

    def clamped_moments(self) -> tuple[float, float]:
        """The moments at both ends if both were clamped (sagging positive)."""
        span = self.length
        at_start = at_end = 0.0
        for place, force in self.points:
            at_start -= force * place * ((span - place) / span) ** 2
            at_end -= force * (span - place) * (place / span) ** 2
        for start, end, intensity in self.lines:
            a, b = start / span, end / span
            size = intensity * span * span
            at_start -= size * (_clamped_share(b) - _clamped_share(a))
            at_end -= size * (_clamped_share(1 - a) - _clamped_share(1 - b))
        return at_start, at_end


def _clamped_share(u: float) -> float:
    """The integral of u(1-u)² from 0: the clamped moment of an even load on the first part of a span."""
    return u * u * (0.5 - u * (2 / 3 - u / 4))


def _finite(number: float) -> float:
    if not math.isfinite(number):
        raise ValueError("a load has no size")
    return number


def on_beam(at: float, length: float) -> float:
    """The place, drawn in to the beam's ends if it is within tolerance of them; ValueError beyond that."""
    if not -TOLERANCE_MM <= at <= length + TOLERANCE_MM:
        raise ValueError(f"{at} mm is off a beam {length} mm long")
    return min(max(at, 0.0), length)


def _line_on_beam(load: LineLoad, length: float) -> LineLoad:
    if load.end < load.start:
        raise ValueError("a line load ends before it starts")
    return LineLoad(on_beam(load.start, length), on_beam(load.end, length), _finite(load.intensity))


def dealt_out(
    length: float, places: Sequence[float], point_loads: Iterable[PointLoad], line_loads: Iterable[LineLoad]
) -> tuple[Stretch | None, list[Stretch], Stretch | None]:
    """The loads dealt out to the overhang before, the spans and the overhang beyond.

    ``places`` are the supports in order. A force right over a support belongs to the stretch that starts
    there, or to the last one. Raises ValueError for a load that is off the beam or has no size.
    """
    # In one order, so that sums do not depend on the order in which loads were given.
    points = sorted(PointLoad(on_beam(p.at, length), _finite(p.force)) for p in point_loads)
    lines = sorted(_line_on_beam(w, length) for w in line_loads)
    marks = [0.0, *(at for at in places if 0 < at < length), length]
    stretches = [Stretch(a, b, [], []) for a, b in pairwise(marks)]
    last = len(stretches) - 1
    for at, force in points:
        stretch = stretches[min(bisect_right(marks, at) - 1, last)]
        stretch.points.append(PointLoad(at - stretch.start, force))
    for start, end, intensity in lines:
        index = min(bisect_right(marks, start) - 1, last)
        while index <= last and stretches[index].start < end:
            stretch = stretches[index]
            low = max(start, stretch.start) - stretch.start
            high = min(end, stretch.end) - stretch.start
            if high > low:
                stretch.lines.append(LineLoad(low, high, intensity))
            index += 1
    before = stretches.pop(0) if places[0] > 0 else None
    beyond = stretches.pop() if places[-1] < length else None
    return before, stretches, beyond
