"""The room that a tool takes as it works: cylinders in space, and which solids stand in them.

A cylinder ends flat at both ends, so that what only lies beside its mouth is not in its way. The test is
exact for flat-faced solids: what of each lies between the two ends is laid flat along the axis, and the
outline that it gives is held against the circle.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Iterator, Sequence

from reviewer.records import NamedTuple
from reviewer.setting_out.solid import Solid, Vector
from reviewer.units import TOLERANCE_MM

Bounds = tuple[Vector, Vector]
#: A leaf of the tree holds up to this many solids.
_LEAF = 8
#: How often the room in front of a fastener is halved to find where it ends: to a tenth of a millimetre.
_HALVINGS = 14


class Sweep(NamedTuple):
    """A cylinder, mm: from ``low`` to ``high`` along ``way`` (a unit vector) from ``start``."""

    start: Vector
    way: Vector
    low: float
    high: float
    radius: float

    @property
    def bounds(self) -> Bounds:
        """The box around it."""
        low, high = [], []
        first, last, radius = self.low, self.high, self.radius
        for start, way in zip(self.start, self.way, strict=True):
            one, two = start + way * first, start + way * last
            if one > two:
                one, two = two, one
            square = 1 - way * way
            aside = radius * math.sqrt(square) if square > 0.0 else 0.0
            low.append(one - aside)
            high.append(two + aside)
        return (low[0], low[1], low[2]), (high[0], high[1], high[2])


def around(boxes: Sequence[Bounds]) -> Bounds:
    """The box around some boxes."""
    if len(boxes) == 1:
        return boxes[0]
    lows, highs = [low for low, _ in boxes], [high for _, high in boxes]
    return (
        (min(low[0] for low in lows), min(low[1] for low in lows), min(low[2] for low in lows)),
        (max(high[0] for high in highs), max(high[1] for high in highs), max(high[2] for high in highs)),
    )


def _box_faces(solid: Solid) -> Iterator[Sequence[Vector]]:
    centre = solid.centre
    halves = [
        (way[0] * size / 2, way[1] * size / 2, way[2] * size / 2)
        for way, size in zip(solid.directions, solid.size, strict=True)
    ]
    for place in range(3):
        out, one, two = halves[place], halves[(place + 1) % 3], halves[(place + 2) % 3]
        for sign in (1.0, -1.0):
            yield [
                (
                    centre[0] + sign * out[0] + a * one[0] + b * two[0],
                    centre[1] + sign * out[1] + a * one[1] + b * two[1],
                    centre[2] + sign * out[2] + a * one[2] + b * two[2],
                )
                for a, b in ((1, 1), (1, -1), (-1, -1), (-1, 1))
            ]


def _pieces(solid: Solid) -> Iterator[Iterable[Sequence[Vector]]]:
    """The convex pieces of a solid, each as the corners of its faces."""
    if solid.body is None:
        yield _box_faces(solid)
    else:
        for piece in solid.body.pieces:
            yield (face.ring for face in piece.faces)


def _flat_ways(way: Vector) -> tuple[Vector, Vector]:
    """Two unit vectors square to a way and to each other."""
    axis = min(range(3), key=lambda each: (abs(way[each]), each))
    one = [-way[axis] * each for each in way]
    one[axis] += 1.0
    size = math.hypot(*one)
    a = (one[0] / size, one[1] / size, one[2] / size)
    b = (way[1] * a[2] - way[2] * a[1], way[2] * a[0] - way[0] * a[2], way[0] * a[1] - way[1] * a[0])
    return a, b


def _between_ends(
    face: Sequence[tuple[float, float, float]], low: float, high: float
) -> Iterator[tuple[float, float]]:
    """The corners of what of a face lies between both ends, laid flat. Its corners are (along, right, up)."""
    for (s, x, y), (t, u, v) in zip(face, (*face[1:], face[0]), strict=True):
        if low <= s <= high:
            yield x, y
        for end in (low, high):
            if (s < end < t) or (t < end < s):
                share = (end - s) / (t - s)
                yield x + (u - x) * share, y + (v - y) * share


def _hull(points: list[tuple[float, float]]) -> list[tuple[float, float]]:
    """The corners of the outline around some points, in turn."""
    points = sorted(set(points))
    if len(points) < 3:
        return points

    def half(ordered: Iterable[tuple[float, float]]) -> list[tuple[float, float]]:
        found: list[tuple[float, float]] = []
        for x, y in ordered:
            while len(found) > 1:
                (a, b), (c, d) = found[-2], found[-1]
                if (c - a) * (y - b) - (d - b) * (x - a) > 0:
                    break
                found.pop()
            found.append((x, y))
        return found

    return half(points)[:-1] + half(reversed(points))[:-1]


def _away(points: list[tuple[float, float]]) -> float:
    """How far the middle is from the outline around some points; 0 inside."""
    hull = _hull(points)
    if len(hull) > 2 and all(
        a[0] * b[1] - a[1] * b[0] >= 0 for a, b in zip(hull, (*hull[1:], hull[0]), strict=True)
    ):
        return 0.0
    best = math.inf
    for (ax, ay), (bx, by) in zip(hull, (*hull[1:], hull[0]), strict=True):
        dx, dy = bx - ax, by - ay
        size = dx * dx + dy * dy
        share = 0.0 if size == 0 else min(1.0, max(0.0, -(ax * dx + ay * dy) / size))
        best = min(best, math.hypot(ax + dx * share, ay + dy * share))
    return best


def _crosses(solid: Solid, sweep: Sweep, low: float, high: float) -> bool:
    """True when the axis itself runs through a board between two places: most that is in the way is."""
    for way, size, middle in zip(solid.directions, solid.size, _middles(solid, sweep), strict=True):
        slope = sum(a * b for a, b in zip(way, sweep.way, strict=True))
        if abs(slope) < 1e-9:
            if abs(middle) >= size / 2:
                return False
            continue
        one, two = sorted(((-size / 2 - middle) / slope, (size / 2 - middle) / slope))
        low, high = max(low, one), min(high, two)
        if low >= high:
            return False
    return True


def _middles(solid: Solid, sweep: Sweep) -> Iterator[float]:
    """Where a cylinder starts, along each of a board's own ways from its middle."""
    away = [a - b for a, b in zip(sweep.start, solid.centre, strict=True)]
    for way in solid.directions:
        yield sum(a * b for a, b in zip(way, away, strict=True))


def stands_in(solid: Solid, sweep: Sweep) -> bool:
    """True when some of a solid's wood lies in a cylinder; touching it is not enough."""
    low, high = sweep.low + TOLERANCE_MM, sweep.high - TOLERANCE_MM
    if high <= low:
        return False
    if solid.body is None and sweep.radius > 2 * TOLERANCE_MM and _crosses(solid, sweep, low, high):
        return True
    (ox, oy, oz), (wx, wy, wz) = sweep.start, sweep.way
    (ax, ay, az), (bx, by, bz) = _flat_ways(sweep.way)
    for faces in _pieces(solid):
        points: list[tuple[float, float]] = []
        for face in faces:
            turned = [
                (
                    (x - ox) * wx + (y - oy) * wy + (z - oz) * wz,
                    (x - ox) * ax + (y - oy) * ay + (z - oz) * az,
                    (x - ox) * bx + (y - oy) * by + (z - oz) * bz,
                )
                for x, y, z in face
            ]
            points += _between_ends(turned, low, high)
        if points and _away(points) < sweep.radius - TOLERANCE_MM:
            return True
    return False


def free_up_to(solid: Solid, sweep: Sweep) -> float:
    """How far along a cylinder the first of a solid's wood is, mm from its start; its end where none is."""
    if not stands_in(solid, sweep):
        return sweep.high
    low, high = sweep.low, sweep.high
    for _ in range(_HALVINGS):
        middle = (low + high) / 2
        if stands_in(solid, sweep._replace(high=middle)):
            high = middle
        else:
            low = middle
    return low


# ---------------------------------------------------------------- finding what is near


class _Node(NamedTuple):
    low: Vector
    high: Vector
    solids: tuple[Solid, ...]  # of a leaf
    children: tuple[int, int] | None


def _box_of(solids: Sequence[Solid]) -> Bounds:
    low_x, low_y, low_z = map(min, zip(*[solid.low for solid in solids], strict=True))
    high_x, high_y, high_z = map(max, zip(*[solid.high for solid in solids], strict=True))
    return (low_x, low_y, low_z), (high_x, high_y, high_z)


def _by_middle(axis: int) -> Callable[[Solid], float]:
    return lambda solid: solid.low[axis] + solid.high[axis]


class Near:
    """Finds the solids whose bounds come into a box, in the plan's order, without looking at all of them.

    The solids are halved again and again along their longest way, so parts of any size cost the same.
    """

    def __init__(self, solids: Sequence[Solid]) -> None:
        self._rank = {solid.name: place for place, solid in enumerate(solids)}
        self._nodes: list[_Node] = []
        if not solids:
            return
        waiting: list[tuple[list[Solid], int | None, int]] = [(list(solids), None, 0)]
        while waiting:
            some, parent, place = waiting.pop()
            low, high = _box_of(some)
            here = len(self._nodes)
            if len(some) <= _LEAF:
                self._nodes.append(_Node(low, high, tuple(some), None))
            else:
                axis = max(range(3), key=lambda each: (high[each] - low[each], -each))
                some.sort(key=_by_middle(axis))
                middle = len(some) // 2
                self._nodes.append(_Node(low, high, (), (0, 0)))
                waiting.append((some[:middle], here, 0))
                waiting.append((some[middle:], here, 1))
            if parent is not None:
                known = self._nodes[parent]
                assert known.children is not None
                pair = (here, known.children[1]) if place == 0 else (known.children[0], here)
                self._nodes[parent] = known._replace(children=pair)

    def within(self, box: Bounds) -> list[Solid]:
        """The solids whose bounds share room with a box."""
        if not self._nodes:
            return []
        (a, b, c), (d, e, f) = box
        found: list[Solid] = []
        nodes = self._nodes
        waiting = [nodes[0]]
        while waiting:
            _, _, solids, children = waiting.pop()
            if children is not None:
                # Looked at before it is put on the list: of two children mostly one is left.
                for child in children:
                    node = nodes[child]
                    (u, v, w), (x, y, z) = node[:2]
                    if u < d and x > a and v < e and y > b and w < f and z > c:
                        waiting.append(node)
                continue
            for solid in solids:
                (u, v, w), (x, y, z) = solid.low, solid.high
                if u < d and x > a and v < e and y > b and w < f and z > c:
                    found.append(solid)
        found.sort(key=lambda solid: self._rank[solid.name])
        return found
