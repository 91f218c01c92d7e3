"""Convex shapes on the paper: clipped, taken out of each other, their true edges, and the strokes of wood.

A point is right and down, so that a shape is drawn as it stands. Nothing here knows what it draws.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from reviewer.records import NamedTuple
from reviewer.reports.svg import Point, number

Shape = tuple[Point, ...]

#: Two places nearer than this are one.
SAME = 1e-6


class HalfPlane(NamedTuple):
    """Where ``right * x + down * y <= offset``."""

    right: float
    down: float
    offset: float

    def past(self, point: Point) -> float:
        """How far a point lies outside, in lengths of the normal; negative inside."""
        return self.right * point[0] + self.down * point[1] - self.offset


def clipped(shape: Shape, by: HalfPlane) -> Shape:
    """What of a convex shape lies in a half-plane; empty when nothing does."""
    past = [by.past(point) for point in shape]
    if not past or max(past) <= SAME:
        return shape
    if min(past) >= -SAME:
        return ()
    found: list[Point] = []
    for here, there, a, b in zip(shape, (*shape[1:], shape[0]), past, (*past[1:], past[0]), strict=True):
        if a <= 0:
            found.append(here)
        if (a < 0 < b) or (b < 0 < a):
            share = a / (a - b)
            found.append((here[0] + (there[0] - here[0]) * share, here[1] + (there[1] - here[1]) * share))
    return tuple(found) if len(found) > 2 else ()


def common(shape: Shape, planes: Sequence[HalfPlane]) -> Shape:
    """What of a convex shape lies in all of some half-planes."""
    for plane in planes:
        shape = clipped(shape, plane)
        if not shape:
            return ()
    return shape


def sides(shape: Shape) -> tuple[HalfPlane, ...]:
    """The half-planes that a convex shape is the common part of."""
    turn = _signed_area(shape)
    found = []
    for (ax, ay), (bx, by) in zip(shape, (*shape[1:], shape[0]), strict=True):
        right, down = (by - ay, ax - bx) if turn > 0 else (ay - by, bx - ax)
        size = math.hypot(right, down)
        if size > SAME:
            right, down = right / size, down / size
            found.append(HalfPlane(right, down, right * ax + down * ay))
    return tuple(found)


def without(shape: Shape, hole: Shape) -> list[Shape]:
    """Convex pieces of what a convex hole leaves of a convex shape."""
    left = []
    for right, down, offset in sides(hole) if hole else ():
        outside = clipped(shape, HalfPlane(-right, -down, -offset))
        if outside:
            left.append(outside)
        shape = clipped(shape, HalfPlane(right, down, offset))
        if not shape:
            break
    return left if hole else [shape]


def _signed_area(shape: Shape) -> float:
    pairs = zip(shape, (*shape[1:], shape[0]), strict=True)
    return sum(a[0] * b[1] - b[0] * a[1] for a, b in pairs) / 2


def area(shape: Shape) -> float:
    """The area of a shape; 0 of an empty one."""
    return abs(_signed_area(shape)) if shape else 0.0


def bounds_of(shapes: Sequence[Shape]) -> tuple[Point, Point]:
    """The lowest and the highest of each coordinate over some shapes, of which at least one has corners."""
    xs = [x for shape in shapes for x, _ in shape]
    ys = [y for shape in shapes for _, y in shape]
    return (min(xs), min(ys)), (max(xs), max(ys))


def stretch_inside(shape: Shape, start: Point, way: Point) -> tuple[float, float] | None:
    """From where to where a straight line runs inside a convex shape, as multiples of ``way``."""
    low, high = -math.inf, math.inf
    for right, down, offset in sides(shape):
        slope = right * way[0] + down * way[1]
        room = offset - right * start[0] - down * start[1]
        if abs(slope) <= SAME:
            if room < -SAME:
                return None
        elif slope > 0:
            high = min(high, room / slope)
        else:
            low = max(low, room / slope)
    return (low, high) if high - low > SAME else None


Stretch = tuple[Point, Point]


def _uncovered(start: Point, end: Point, others: Sequence[Stretch]) -> list[Stretch]:
    """What of a side no other side lies on."""
    length = math.dist(start, end)
    if length <= SAME:
        return []
    way = ((end[0] - start[0]) / length, (end[1] - start[1]) / length)
    covered = []
    for one, two in others:
        places = []
        for point in (one, two):
            dx, dy = point[0] - start[0], point[1] - start[1]
            if abs(dx * way[1] - dy * way[0]) > 1e-3:
                break
            places.append(dx * way[0] + dy * way[1])
        else:
            covered.append((min(places), max(places)))
    left, at = [], 0.0
    for low, high in sorted(covered):
        if low > at + 1e-3:
            left.append((at, min(low, length)))
        at = max(at, high)
        if at >= length:
            break
    if at < length - 1e-3:
        left.append((at, length))
    return [
        (
            (start[0] + way[0] * low, start[1] + way[1] * low),
            (start[0] + way[0] * high, start[1] + way[1] * high),
        )
        for low, high in left
        if low < length
    ]


def _sides_of(shape: Shape) -> list[Stretch]:
    return list(zip(shape, (*shape[1:], shape[0]), strict=True))


def true_edges(pieces: Sequence[Shape], window: Shape) -> list[Stretch]:
    """The edges of a shape that is given in convex pieces: no seam between two, no edge of the window."""
    found = []
    for place, piece in enumerate(pieces):
        others = [side for other, shape in enumerate(pieces) if other != place for side in _sides_of(shape)]
        others += _sides_of(window)
        for start, end in _sides_of(piece):
            found += _uncovered(start, end, others)
    return found


# ---------------------------------------------------------------- strokes of wood


def long_strokes(shape: Shape, way: Point, steps: Sequence[float]) -> str:
    """Path of the lines along a way that cross a convex shape, set apart by ``steps`` in turn."""
    across = (-way[1], way[0])
    places = [point[0] * across[0] + point[1] * across[1] for point in shape]
    round_of = sum(steps)
    at = math.floor(min(places) / round_of) * round_of
    path = []
    turn = 0
    while at < max(places):
        if at > min(places):
            inside = stretch_inside(shape, (across[0] * at, across[1] * at), way)
            if inside:
                path.append(
                    "M"
                    + "L".join(
                        f"{number(across[0] * at + way[0] * far)},{number(across[1] * at + way[1] * far)}"
                        for far in inside
                    )
                )
        at += steps[turn % len(steps)]
        turn += 1
    return "".join(path)


def _crossings(shape: Shape, middle: Point, radius: float) -> Iterator[float]:
    """The angles at which a circle crosses the sides of a shape."""
    for (ax, ay), (bx, by) in _sides_of(shape):
        dx, dy, fx, fy = bx - ax, by - ay, ax - middle[0], ay - middle[1]
        a, b, c = dx * dx + dy * dy, 2 * (fx * dx + fy * dy), fx * fx + fy * fy - radius * radius
        inside = b * b - 4 * a * c
        if a <= SAME or inside <= 0:
            continue
        for sign in (-1.0, 1.0):
            share = (-b + sign * math.sqrt(inside)) / (2 * a)
            if 0 <= share < 1:
                yield math.atan2(fy + dy * share, fx + dx * share)


def _place_on(middle: Point, radius: float, angle: float) -> str:
    return f"{number(middle[0] + radius * math.cos(angle))},{number(middle[1] + radius * math.sin(angle))}"


def ring_strokes(shape: Shape, middle: Point, steps: Sequence[float]) -> str:
    """Path of the arcs round a middle that lie in a convex shape: how end grain looks."""
    planes = sides(shape)
    corners = [math.dist(middle, corner) for corner in shape]
    nearest = max(0.0, max(plane.past(middle) for plane in planes))
    path = []
    round_of = sum(steps)
    radius, turn = math.floor(nearest / round_of) * round_of, 0
    while radius < max(corners):
        radius += steps[turn % len(steps)]
        turn += 1
        if radius <= nearest:
            continue
        angles = sorted(_crossings(shape, middle, radius))
        for start, end in zip(
            angles, (*angles[1:], angles[0] + 2 * math.pi if angles else 0.0), strict=False
        ):
            half = (start + end) / 2
            spot = (middle[0] + radius * math.cos(half), middle[1] + radius * math.sin(half))
            if end - start < 1e-4 or any(plane.past(spot) > 0 for plane in planes):
                continue
            near, far = (_place_on(middle, radius, angle) for angle in (start, end))
            size, large = number(radius), int(end - start > math.pi)
            path.append(f"M{near}A{size} {size} 0 {large} 1 {far}")
    return "".join(path)
