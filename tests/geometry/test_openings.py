"""Boxes through openings and round corners, against turning by small steps and against a search."""

from __future__ import annotations

import math
import random

import pytest
from shapely.affinity import rotate, translate
from shapely.geometry import LineString, box

from reviewer.geometry.openings import (
    goes_through,
    height_to_stand_up,
    longest_into_doorway,
    longest_round_corner,
    outline_round,
    spare,
)


def _turned_goes(p: float, q: float, a: float, b: float, steps: int = 2000) -> float:
    """How much the box round a turned rectangle lacks at the best turn; not above 0 when it goes."""
    best = math.inf
    for step in range(steps + 1):
        angle = math.pi / 2 * step / steps
        sine, cosine = math.sin(angle), math.cos(angle)
        best = min(best, max(p * cosine + q * sine - a, p * sine + q * cosine - b))
    return best


def test_a_rectangle_through_an_opening_as_when_turned_by_small_steps() -> None:
    chance = random.Random(7)
    tilted = 0
    for _ in range(400):
        a, b = chance.uniform(200, 1000), chance.uniform(200, 2200)
        p, q = chance.uniform(5, 1500), chance.uniform(5, 900)
        lacks = _turned_goes(p, q, a, b)
        if abs(lacks) < 1.5:
            continue  # too near to tell by steps
        assert goes_through((p, q), (a, b)) == (lacks < 0), (p, q, a, b)
        tilted += lacks < 0 and max(p, q) > max(a, b)
    assert tilted >= 3  # some go through only when tilted


def test_what_is_left_all_round() -> None:
    assert spare((600, 1900), (812.8, 2032)) == pytest.approx(66, abs=1e-6)  # the height is the nearer
    assert spare((900, 1000), (812.8, 2032)) == pytest.approx(-43.6, abs=0.5)
    chance = random.Random(8)
    for _ in range(100):
        size = chance.uniform(100, 1500), chance.uniform(100, 900)
        opening = chance.uniform(400, 1000), chance.uniform(1000, 2100)
        left = spare(size, opening)
        for by, goes in ((left - 0.01, True), (left + 0.01, False)):
            assert goes_through(size, (opening[0] - 2 * by, opening[1] - 2 * by)) is goes


@pytest.mark.parametrize(
    ("thick", "first", "second", "longest"),
    [
        (0, 1, 1, math.sqrt(8)),  # the ladder: (1 + 1)^1.5
        (0, 8, 1, 5**1.5),  # (4 + 1)^1.5
        (0, 27, 8, 13**1.5),  # (9 + 4)^1.5
        (24, 36, 36, (2 * 36 * math.sqrt(0.5) - 24) / 0.5),  # at 45 degrees by symmetry
        (36, 36, 40, 0),
    ],
)
def test_longest_round_a_corner(thick: float, first: float, second: float, longest: float) -> None:
    assert longest_round_corner(thick, first, second) == pytest.approx(longest, rel=1e-4)


def _round_corner_by_steps(thick: float, first: float, second: float) -> float:
    """The longest whose outer side, its ends on the outer walls, stays thick off the inner corner (shapely)."""
    low, high = thick, 20 * (first + second)
    for _ in range(18):
        middle = (low + high) / 2
        far = math.inf
        for step in range(1, 300):
            angle = math.pi / 2 * step / 300
            side = LineString([(middle * math.cos(angle), 0), (0, middle * math.sin(angle))])
            inner = box(second, first, second + 1e6, first + 1e6)
            far = min(far, 0.0 if side.intersects(inner) else side.distance(inner))
        if far >= thick:
            low = middle
        else:
            high = middle
    return low


def test_longest_round_a_corner_by_steps() -> None:
    chance = random.Random(9)
    for _ in range(5):
        first, second = chance.uniform(700, 1300), chance.uniform(700, 1300)
        thick = chance.uniform(0.05, 0.9) * min(first, second)
        found = longest_round_corner(thick, first, second)
        if found <= thick:
            continue
        assert found == pytest.approx(_round_corner_by_steps(thick, first, second), rel=0.003)


def _into_doorway(long: float, thick: float, hall: float, doorway: float, angles: int = 45) -> bool:
    """A search over all places and turns: from lying along the hall to standing beyond the doorway.

    The hall runs along y from 0 to ``hall``, the doorway is in its wall between x 0 and ``doorway``.
    """
    step = hall / 24
    far = 3 * long
    wall = 0.5
    walls = [
        box(-far, -far, far + doorway, 0),
        box(-far, hall, 0, hall + wall),
        box(doorway, hall, far + doorway, hall + wall),
    ]
    free: dict[tuple[int, int, int], bool] = {}

    def clear(at: tuple[int, int, int]) -> bool:
        if at not in free:
            x, y, turn = at
            shape = rotate(box(-long / 2, -thick / 2, long / 2, thick / 2), 90 * turn / angles, origin=(0, 0))
            shape = translate(shape, x * step, y * step)
            free[at] = not any(shape.intersects(each) for each in walls)
        return free[at]

    middle = round(hall / 2 / step)
    start = (round(-long / step), middle, 0)
    if not clear(start):
        return False
    reached, open_now = {start}, [start]
    while open_now:
        x, y, turn = open_now.pop()
        if (y * step) > hall + long / 2 + thick:
            return True
        for dx, dy, dt in ((1, 0, 0), (-1, 0, 0), (0, 1, 0), (0, -1, 0), (0, 0, 1), (0, 0, -1), (0, 1, 1)):
            at = (x + dx, y + dy, turn + dt)
            if at in reached or not 0 <= at[2] <= angles or not -2 * long < at[0] * step < doorway + long:
                continue
            if clear(at):
                reached.add(at)
                open_now.append(at)
    return False


@pytest.mark.parametrize(
    ("thick", "hall", "doorway"), [(300, 900, 800), (600, 900, 800), (350, 800, 600), (650, 1100, 760)]
)
def test_into_a_doorway_as_by_a_search(thick: float, hall: float, doorway: float) -> None:
    longest = longest_into_doorway(thick, hall, doorway)
    assert _into_doorway(0.88 * longest, thick, hall, doorway)
    assert not _into_doorway(1.06 * longest, thick, hall, doorway)


def test_a_doorway_as_wide_as_it_is_thick_takes_hall_by_doorway_over_thickness() -> None:
    assert longest_into_doorway(600, 900, 800) == pytest.approx(900 * 800 / 600, rel=1e-6)
    assert longest_into_doorway(800, 900, 800) == 0.0
    assert longest_into_doorway(900, 900, 1000) == 0.0


def test_standing_up_by_small_steps() -> None:
    """The height of the outline at each of many turns from lying on its back to standing."""
    chance = random.Random(10)
    for _ in range(60):
        points = [(chance.uniform(0, 600), chance.uniform(0, 2000)) for _ in range(chance.randrange(3, 12))]
        most = 0.0
        for step in range(1001):
            angle = math.pi / 2 * step / 1000
            heights = [-x * math.sin(angle) + z * math.cos(angle) for x, z in points]
            most = max(most, max(heights) - min(heights))
        assert height_to_stand_up(outline_round(points)) == pytest.approx(most, rel=1e-5)


def test_an_outline_of_very_many_corners_is_its_box() -> None:
    ring = [(300 * math.cos(i / 100), 300 * math.sin(i / 100)) for i in range(628)]
    assert height_to_stand_up(ring) == pytest.approx(math.hypot(600, 600), rel=1e-3)
