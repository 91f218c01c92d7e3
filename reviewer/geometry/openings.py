"""Boxes through openings, round corners and up under ceilings. Plain plane geometry, all in mm."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from itertools import combinations

Point = tuple[float, float]

#: Halvings of a distance until it is known to a hair.
_HALVINGS = 40
#: Angles looked at while something turns a corner, before the worst of them is closed in on.
_ANGLES = 90
#: An outline of more corners than this is taken for the box round it.
_MOST_CORNERS = 400


def goes_through(size: Point, opening: Point) -> bool:
    """Whether a rectangle goes through a rectangular opening, turned in its plane as it likes.

    With p >= q the rectangle and a >= b the opening: q <= b, and p <= a or
    b (p² + q²) >= 2 p q a + (p² - q²) √(p² + q² - a²). Carver, "Solution to problem E 1225",
    American Mathematical Monthly 64 (1957), from memory; a test holds it to turning by small steps.
    """
    p, q = max(size), min(size)
    a, b = max(opening), min(opening)
    if q > b:
        return False
    if p <= a:
        return True
    return b * (p * p + q * q) >= 2 * p * q * a + (p * p - q * q) * math.sqrt(p * p + q * q - a * a)


def spare(size: Point, opening: Point) -> float:
    """How much is left all round when a rectangle goes through an opening, mm; below 0: how much lacks."""
    low, high = min(opening) / 2 - max(*size, *opening), min(opening) / 2
    for _ in range(_HALVINGS):
        middle = (low + high) / 2
        if goes_through(size, (opening[0] - 2 * middle, opening[1] - 2 * middle)):
            low = middle
        else:
            high = middle
    return low


def longest_round_corner(thick: float, first: float, second: float) -> float:
    """The longest rectangle of this thickness that turns from one passage into another, square to it, mm.

    Its outer corners slide along the outer walls while it clears the inner corner: at the angle x,
    L = (first sin x + second cos x - thick) / (sin x cos x), and the least of these counts. Without
    thickness it is the ladder in the corridor, (first^⅔ + second^⅔)^(3/2). 0 where it is too thick.
    """
    if thick >= min(first, second):
        return 0.0

    def longest(angle: float) -> float:
        sine, cosine = math.sin(angle), math.cos(angle)
        return (first * sine + second * cosine - thick) / (sine * cosine)

    return max(0.0, _least(longest, 0.0, math.pi / 2))


def longest_into_doorway(thick: float, hall: float, doorway: float) -> float:
    """The longest rectangle of this thickness that turns from a hall through a doorway in its side, mm.

    It slides along one jamb. Until it has turned so far that the doorway is as wide as it is thick
    (sin x = thick / doorway), its leading end must not have passed the other jamb, while its tail is in the
    hall: L <= doorway cos x + (hall - thick cos x) / sin x. Where it has turned so far this is
    hall · doorway / thick. The wall is taken to be thin and the hall long. Own derivation; a test holds
    it to a search over all places and turns.
    """
    if thick >= min(hall, doorway):
        return 0.0
    most = math.asin(thick / doorway)

    def longest(angle: float) -> float:
        return doorway * math.cos(angle) + (hall - thick * math.cos(angle)) / math.sin(angle)

    return min(_least(longest, 0.0, most), hall * doorway / thick)


def _least(function: object, start: float, end: float) -> float:
    """The least value of a smooth function between two angles, both left out."""
    assert callable(function)
    step = (end - start) / _ANGLES
    angles = [start + (number + 0.5) * step for number in range(_ANGLES)]
    best = min(angles, key=function)
    low, high = max(start + 1e-9, best - step), min(end - 1e-9, best + step)
    for _ in range(_HALVINGS):
        one, two = low + (high - low) / 3, high - (high - low) / 3
        if function(one) < function(two):
            high = two
        else:
            low = one
    return float(function((low + high) / 2))


def outline_round(points: Iterable[Point]) -> list[Point]:
    """The corners of the convex outline round some points, anticlockwise."""
    ordered = sorted(set(points))
    if len(ordered) < 3:
        return ordered

    def half(some: Iterable[Point]) -> list[Point]:
        kept: list[Point] = []
        for point in some:
            while len(kept) > 1 and _turn(kept[-2], kept[-1], point) <= 0:
                kept.pop()
            kept.append(point)
        return kept[:-1]

    return half(ordered) + half(reversed(ordered))


def _turn(a: Point, b: Point, c: Point) -> float:
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])


def height_to_stand_up(corners: Sequence[Point]) -> float:
    """How high something reaches while it is tilted up from lying on its back, mm.

    ``corners`` are those seen from its side: from front to back, and up. It is the longest line between
    two of them that stands upright at some time in that quarter turn; of a box the diagonal.
    """
    listed = list(corners)
    if len(listed) > _MOST_CORNERS:
        across, up = [x for x, _ in listed], [y for _, y in listed]
        return math.hypot(max(across) - min(across), max(up) - min(up))
    best = 0.0
    for (x0, y0), (x1, y1) in combinations(listed, 2):
        wide, tall = x1 - x0, y1 - y0
        if tall < 0:
            wide, tall = -wide, -tall
        # Lying on its back the back is below: only what is in front when standing comes to stand above.
        best = max(best, math.hypot(wide, tall) if wide <= 0 else max(wide, tall))
    return best
