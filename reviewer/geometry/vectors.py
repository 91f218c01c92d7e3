"""Vectors of three floats, and flat convex outlines made of them. All lengths in mm."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from itertools import pairwise

Vector = tuple[float, float, float]
#: The corners of a flat convex outline, anticlockwise where its normal points at the eye.
Ring = tuple[Vector, ...]

#: Numbers closer than this are the same but for rounding, mm. Far below anything that can be measured.
SAME = 1e-6

UNITS: tuple[Vector, Vector, Vector] = ((1.0, 0.0, 0.0), (0.0, 1.0, 0.0), (0.0, 0.0, 1.0))


def dot(a: Vector, b: Vector) -> float:
    """The scalar product."""
    return a[0] * b[0] + a[1] * b[1] + a[2] * b[2]


def cross(a: Vector, b: Vector) -> Vector:
    """The vector product: square to both."""
    return (a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0])


def minus(a: Vector, b: Vector) -> Vector:
    """From the second point to the first."""
    return (a[0] - b[0], a[1] - b[1], a[2] - b[2])


def moved(point: Vector, way: Vector, by: float = 1.0) -> Vector:
    """A point, ``by`` times ``way`` further on."""
    return (point[0] + way[0] * by, point[1] + way[1] * by, point[2] + way[2] * by)


def times(way: Vector, by: float) -> Vector:
    """A way made so many times as long."""
    return (way[0] * by, way[1] * by, way[2] * by)


def turned_round(way: Vector) -> Vector:
    """The opposite way."""
    return (-way[0], -way[1], -way[2])


def unit(way: Vector) -> Vector:
    """The same way, one long. The way must have a length."""
    size = math.hypot(*way)
    return (way[0] / size, way[1] / size, way[2] / size)


def bounds(points: Iterable[Vector]) -> tuple[Vector, Vector]:
    """The lowest and the highest of each coordinate over some points."""
    xs, ys, zs = zip(*points, strict=True)
    return (min(xs), min(ys), min(zs)), (max(xs), max(ys), max(zs))


def nearest_axis(way: Vector) -> int:
    """The axis that a way runs along most; of two alike the first."""
    return max(range(3), key=lambda axis: (round(abs(way[axis]), 6), -axis))


def area_of(ring: Sequence[Vector]) -> float:
    """The area of a flat outline, mm²."""
    first = ring[0]
    total = [0.0, 0.0, 0.0]
    for one, two in pairwise(ring[1:]):
        part = cross(minus(one, first), minus(two, first))
        total[0] += part[0]
        total[1] += part[1]
        total[2] += part[2]
    return math.hypot(*total) / 2


def middle_of(ring: Sequence[Vector]) -> Vector:
    """The centroid of a flat convex outline; the mean of its corners where it has no area."""
    first = ring[0]
    whole = 0.0
    at = [0.0, 0.0, 0.0]
    for one, two in pairwise(ring[1:]):
        share = math.hypot(*cross(minus(one, first), minus(two, first)))
        whole += share
        for axis in range(3):
            at[axis] += share * (first[axis] + one[axis] + two[axis]) / 3
    if not whole:
        count = len(ring)
        return (
            sum(point[0] for point in ring) / count,
            sum(point[1] for point in ring) / count,
            sum(point[2] for point in ring) / count,
        )
    return (at[0] / whole, at[1] / whole, at[2] / whole)


def clipped_ring(ring: Sequence[Vector], normal: Vector, offset: float) -> Ring:
    """What of a flat convex outline lies behind a plane (``normal · x <= offset``); empty when none does."""
    heights = [dot(normal, point) - offset for point in ring]
    if max(heights) <= SAME:
        return tuple(ring)
    if min(heights) >= -SAME:
        return ()
    kept: list[Vector] = []
    for i, point in enumerate(ring):
        before, here = heights[i - 1], heights[i]
        if (before < -SAME and here > SAME) or (before > SAME and here < -SAME):
            kept.append(between(ring[i - 1], before, point, here))
        if here <= SAME:
            kept.append(point)
    return tuple(kept) if len(kept) > 2 else ()


def between(a: Vector, height_a: float, b: Vector, height_b: float) -> Vector:
    """Where the line between two points on either side of a plane goes through it.

    Always worked out from the lower point, so that the faces on both sides of an edge agree to the last bit.
    """
    if height_a > height_b:
        a, height_a, b, height_b = b, height_b, a, height_a
    share = height_a / (height_a - height_b)
    return (a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share, a[2] + (b[2] - a[2]) * share)


def within(ring: Sequence[Vector], normal: Vector, other: Sequence[Vector]) -> Ring:
    """What of a flat convex outline lies over another one, seen along the normal of the other."""
    left: Ring = tuple(ring)
    for i, corner in enumerate(other):
        out = cross(minus(corner, other[i - 1]), normal)
        size = math.hypot(*out)
        if size <= SAME:
            continue
        out = (out[0] / size, out[1] / size, out[2] / size)
        left = clipped_ring(left, out, dot(out, corner))
        if not left:
            return ()
    return left


def without(ring: Sequence[Vector], normal: Vector, other: Sequence[Vector]) -> tuple[list[Ring], Ring]:
    """What another outline (with this normal) leaves of one, in convex bits; and what it takes."""
    left: Ring = tuple(ring)
    bits: list[Ring] = []
    for i, corner in enumerate(other):
        out = cross(minus(corner, other[i - 1]), normal)
        size = math.hypot(*out)
        if size <= SAME:
            continue
        out = (out[0] / size, out[1] / size, out[2] / size)
        offset = dot(out, corner)
        inside = clipped_ring(left, out, offset)
        if not inside:
            return [tuple(ring)], ()
        outside = clipped_ring(left, turned_round(out), -offset)
        if outside:
            bits.append(outside)
        left = inside
    return bits, left
