"""When something that turns about a line first strikes something that stands still, seen along that line.

The line is the origin; angles are in radians, from the first coordinate towards the second. All in mm.
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Iterator, Sequence

Point = tuple[float, float]
Outline = Sequence[Point]

#: Angles between two that matter at which the depth of a stroke is looked at, and halvings after that.
_LOOKS = 8
_HALVINGS = 30
_TURN = 2 * math.pi
#: A point this near to the end of a side counts as on it, mm.
_HAIR = 1e-6


def turned(outline: Outline, angle: float) -> list[Point]:
    """An outline turned about the origin."""
    cosine, sine = math.cos(angle), math.sin(angle)
    return [(x * cosine - y * sine, x * sine + y * cosine) for x, y in outline]


def depth(one: Outline, two: Outline) -> float:
    """How far two convex outlines go into each other, mm: the least way out; below 0 they are apart."""
    least = math.inf
    for outline in (one, two):
        for number, (x, y) in enumerate(outline):
            x0, y0 = outline[number - 1]
            size = math.hypot(x - x0, y - y0)
            if size <= 1e-9:
                continue
            nx, ny = (y - y0) / size, (x0 - x) / size
            ones = [px * nx + py * ny for px, py in one]
            twos = [px * nx + py * ny for px, py in two]
            least = min(least, max(ones) - min(twos), max(twos) - min(ones))
            if least <= -1e-9:
                return least
    return least


def _crossings(points: Outline, outline: Outline, way: float) -> Iterator[float]:
    """The turns at which a point comes to lie on a side of an outline; ``way`` -1: the sides turn back."""
    polar = [(math.hypot(px, py), math.atan2(py, px)) for px, py in points]
    for number, (x, y) in enumerate(outline):
        x0, y0 = outline[number - 1]
        size = math.hypot(x - x0, y - y0)
        if size <= 1e-9:
            continue
        nx, ny = (y - y0) / size, (x0 - x) / size
        offset, facing = nx * x + ny * y, math.atan2(ny, nx)
        start, end = ny * -x0 + nx * y0 - _HAIR, ny * -x + nx * y + _HAIR  # along the side
        for radius, at in polar:
            if radius < abs(offset) or radius <= 0:
                continue
            aside = math.acos(max(-1.0, min(1.0, offset / radius)))
            along = math.sqrt(max(0.0, radius * radius - offset * offset))
            if start <= along <= end:
                yield way * (facing + aside - at)
            if start <= -along <= end:
                yield way * (facing - aside - at)


def first_stroke(moving: Outline, fixed: Outline, turn: float, slack: float) -> float | None:
    """The angle of a turn at which a convex outline is first deeper than ``slack`` in another; None: never.

    Two outlines begin or cease to touch only where a corner of one is on a side of the other.
    Between two such angles one look tells whether they touch; where they do, how deep is closed in on.
    """
    reach = max(math.hypot(*point) for point in moving)
    if all(math.hypot(*point) > 2 * reach for point in fixed) and _apart(fixed, reach):
        return None
    marks = {0.0, turn}
    for angle in (*_crossings(moving, fixed, 1.0), *_crossings(fixed, moving, -1.0)):
        angle %= _TURN
        if angle < turn:
            marks.add(angle)
    ordered = sorted(marks)
    for start, end in itertools.pairwise(ordered):
        if depth(turned(moving, (start + end) / 2), fixed) <= 0:
            continue
        before = start
        for look in range(1, _LOOKS + 1):
            angle = start + (end - start) * look / _LOOKS
            if depth(turned(moving, angle), fixed) > slack:
                return _closed_in(moving, fixed, before, angle, slack)
            before = angle
    return None


def _apart(fixed: Outline, reach: float) -> bool:
    """True when an outline lies beyond the furthest that a turning one reaches, on some side."""
    xs, ys = [x for x, _ in fixed], [y for _, y in fixed]
    return min(xs) > reach or max(xs) < -reach or min(ys) > reach or max(ys) < -reach


def _closed_in(moving: Outline, fixed: Outline, low: float, high: float, slack: float) -> float:
    if depth(turned(moving, low), fixed) > slack:
        return low
    for _ in range(_HALVINGS):
        middle = (low + high) / 2
        if depth(turned(moving, middle), fixed) > slack:
            high = middle
        else:
            low = middle
    return high
