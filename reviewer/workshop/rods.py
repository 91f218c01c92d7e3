"""Fasteners and their holes as round rods in space, and which of them come too near to each other."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Sequence

from reviewer.geometry.vectors import Vector, dot, minus, moved
from reviewer.records import NamedTuple
from reviewer.reference.usual_values import usual_value
from reviewer.units import TOLERANCE_MM
from reviewer.workshop.placed import Placed

#: The smallest cell of the search, mm; longer rods lie in cells that are a power of two as large.
_CELL_MM = 32.0
#: So many pairs of rods are measured, and so many more for each fastener; beyond that they stand in one heap.
_MOST_PAIRS = 30_000
_MOST_PAIRS_EACH = 8


class Rod(NamedTuple):
    """A round rod with round ends from ``start`` to ``end`` (mm): the thread of a fastener, or its hole."""

    start: Vector
    end: Vector
    radius: float
    owner: int  # which of the fasteners
    hole: bool


class Near(NamedTuple):
    """Two fasteners, and the wood between them at ``at``: below 0 they run into each other."""

    one: int
    two: int
    gap: float
    at: Vector
    hole: bool  # whether the hole of either is what is met


def rods_of(placed: Placed, owner: int) -> Iterator[Rod]:
    """A fastener as rods: its thread, half of its taper not counted; the hole that its head is sunk in.

    A biscuit or a loose tenon is as many rods side by side as its width takes.
    """
    way, radius = placed.direction, placed.diameter / 2
    if placed.mouth is None:
        start, end = _shortened(placed.head, placed.point, way, radius, radius)
        if not placed.width:
            yield Rod(start, end, radius, owner, False)
            return
        room = max(0.0, placed.width - placed.diameter)
        count = math.ceil(room / placed.diameter) + 1 if placed.diameter > 0 else 1
        count = min(count, _MOST_SIDE_BY_SIDE)
        for number in range(count):
            off = room * (number / (count - 1) - 0.5) if count > 1 else 0.0
            yield Rod(moved(start, placed.along, off), moved(end, placed.along, off), radius, owner, False)
        return
    taper = usual_value("point-taper") * placed.diameter / 2 if placed.kind != "bolts" else 0.0
    yield Rod(*_shortened(placed.head, placed.point, way, 0.0, max(taper, radius)), radius, owner, False)
    if placed.hole_diameter > 0 and placed.mouth != placed.head:
        hole = placed.hole_diameter / 2
        yield Rod(*_shortened(placed.mouth, placed.head, way, 0.0, hole), hole, owner, True)


_MOST_SIDE_BY_SIDE = 64


def _shortened(start: Vector, end: Vector, way: Vector, first: float, last: float) -> tuple[Vector, Vector]:
    """From start to end less so much at each, so that round ends do not stick out; never past the middle."""
    half = math.dist(start, end) / 2
    return moved(start, way, min(first, half)), moved(end, way, -min(last, half))


def nearest(one: Rod, two: Rod) -> tuple[float, Vector]:
    """How far the axes of two rods are apart, mm, and the place half way between them there."""
    d1, d2, r = minus(one.end, one.start), minus(two.end, two.start), minus(one.start, two.start)
    a, e, f = dot(d1, d1), dot(d2, d2), dot(d2, r)
    if a < 1e-12 and e < 1e-12:
        s = t = 0.0
    elif a < 1e-12:
        s, t = 0.0, min(1.0, max(0.0, f / e))
    else:
        c = dot(d1, r)
        if e < 1e-12:
            s, t = min(1.0, max(0.0, -c / a)), 0.0
        else:
            b = dot(d1, d2)
            flat = a * e - b * b
            s = min(1.0, max(0.0, (b * f - c * e) / flat)) if flat > 1e-9 * a * e else 0.0
            t = (b * s + f) / e
            if t < 0.0:
                s, t = min(1.0, max(0.0, -c / a)), 0.0
            elif t > 1.0:
                s, t = min(1.0, max(0.0, (b - c) / a)), 1.0
    p, q = moved(one.start, d1, s), moved(two.start, d2, t)
    return math.dist(p, q), ((p[0] + q[0]) / 2, (p[1] + q[1]) / 2, (p[2] + q[2]) / 2)


def gap_between(ones: Iterable[Rod], twos: Sequence[Rod]) -> tuple[float, Vector, bool] | None:
    """The wood between two fasteners where they are nearest, mm; the place; whether a hole is met."""
    found: tuple[float, Vector, bool] | None = None
    for one in ones:
        for two in twos:
            apart, at = nearest(one, two)
            gap = apart - one.radius - two.radius
            if found is None or gap < found[0]:
                found = gap, at, one.hole or two.hole
    return found


class _Reach(NamedTuple):
    """The bounds of all rods of a fastener."""

    low: Vector
    high: Vector


def _reach(rods: Sequence[Rod], more: float) -> _Reach:
    low, high = [math.inf] * 3, [-math.inf] * 3
    for start, end, radius, _, _ in rods:
        room = radius + more
        for axis in range(3):
            one, two = start[axis], end[axis]
            if one > two:
                one, two = two, one
            one, two = one - room, two + room
            if one < low[axis]:
                low[axis] = one
            if two > high[axis]:
                high[axis] = two
    return _Reach((low[0], low[1], low[2]), (high[0], high[1], high[2]))


class RodSearch:
    """All fasteners of a piece in a grid, each in cells as large as itself. ``clearance`` in mm."""

    def __init__(self, placed: Sequence[Placed], clearance: float) -> None:
        self.placed, self.clearance = placed, clearance
        self.rods = [tuple(rods_of(each, owner)) for owner, each in enumerate(placed)]
        self.reaches = [_reach(rods, clearance / 2) for rods in self.rods]
        #: By size of cell, then by cell: the fasteners in it.
        self.levels: dict[int, dict[tuple[int, int, int], list[int]]] = {}
        self.crowded = False
        self._looked_at = 0

    def near(self) -> list[Near]:
        """Every pair with less wood between than the clearance, in the order of the plan."""
        found: list[Near] = []
        # The largest first: each looks among those at least as large as itself, and then takes its place.
        levels = [self._level(owner) for owner in range(len(self.placed))]
        order = sorted(range(len(self.placed)), key=lambda owner: (-levels[owner], owner))
        for owner in order:
            for other in self._around(self.reaches[owner]):
                one, two = (other, owner) if other < owner else (owner, other)
                near = self._pair(one, two)
                if near is not None:
                    found.append(near)
            if self._looked_at > _MOST_PAIRS + _MOST_PAIRS_EACH * len(self.placed):
                self.crowded = True
                break
            self._put(owner, levels[owner])
        return sorted(found, key=lambda near: (near.one, near.two))

    def least_gap(self, placed: Placed, leaving_out: frozenset[int]) -> float:
        """The least wood between a fastener that is not of the piece (yet) and all that are, mm.

        With none nearer than the clearance that is given back; the first that comes nearer will do.
        """
        rods = tuple(rods_of(placed, -1))
        least = self.clearance
        for other in self._around(_reach(rods, self.clearance / 2)):
            if other not in leaving_out:
                found = gap_between(rods, self.rods[other])
                if found is not None:
                    least = min(least, found[0])
                if least < self.clearance - TOLERANCE_MM:
                    break
        return least

    @staticmethod
    def gap(rod: Rod, others: Sequence[Rod]) -> float:
        """The wood between a rod and the nearest of some others, mm."""
        return min(nearest(rod, other)[0] - rod.radius - other.radius for other in others)

    def _pair(self, one: int, two: int) -> Near | None:
        self._looked_at += len(self.rods[one]) * len(self.rods[two])
        found = gap_between(self.rods[one], self.rods[two])
        if found is None or found[0] >= self.clearance:
            return None
        return Near(one, two, *found)

    def _level(self, owner: int) -> int:
        (a, b, c), (d, e, f) = self.reaches[owner]
        size = max(d - a, e - b, f - c)
        return max(0, math.ceil(math.log2(max(size, _CELL_MM) / _CELL_MM)))

    def _cells(self, reach: _Reach, level: int) -> list[tuple[int, int, int]]:
        cell = _CELL_MM * 2**level
        (x1, y1, z1), (x2, y2, z2) = reach
        across = range(math.floor(x1 / cell), math.floor(x2 / cell) + 1)
        deep = range(math.floor(y1 / cell), math.floor(y2 / cell) + 1)
        up = range(math.floor(z1 / cell), math.floor(z2 / cell) + 1)
        return [(x, y, z) for x in across for y in deep for z in up]

    def _put(self, owner: int, level: int) -> None:
        cells = self.levels.setdefault(level, {})
        for cell in self._cells(self.reaches[owner], level):
            cells.setdefault(cell, []).append(owner)

    def _around(self, reach: _Reach) -> list[int]:
        """Those already in the grid whose bounds meet some bounds, in order, each once."""
        low, high = reach
        found: dict[int, None] = {}
        for level, cells in self.levels.items():
            for cell in self._cells(reach, level):
                for other in cells.get(cell, ()):
                    (x1, y1, z1), (x2, y2, z2) = self.reaches[other]
                    if (
                        x1 <= high[0]
                        and x2 >= low[0]
                        and y1 <= high[1]
                        and y2 >= low[1]
                        and z1 <= high[2]
                        and z2 >= low[2]
                    ):
                        found[other] = None
        return sorted(found)
