"""The first stroke of something that turns, against looking at it by small steps (shapely)."""

from __future__ import annotations

import math
import random

import pytest
from shapely.affinity import rotate
from shapely.geometry import Polygon

from reviewer.geometry.grid import Grid
from reviewer.geometry.swinging import depth, first_stroke, turned

STEPS = 1440


def _by_steps(
    moving: list[tuple[float, float]], fixed: list[tuple[float, float]], turn: float
) -> float | None:
    """The first of many turns at which the two share area."""
    shape, still = Polygon(moving), Polygon(fixed)
    for step in range(STEPS + 1):
        angle = turn * step / STEPS
        if rotate(shape, angle, origin=(0, 0), use_radians=True).intersection(still).area > 1e-6:
            return angle
    return None


def _box(x0: float, y0: float, x1: float, y1: float) -> list[tuple[float, float]]:
    return [(x0, y0), (x1, y0), (x1, y1), (x0, y1)]


def test_the_first_stroke_is_that_of_small_steps() -> None:
    """Doors of random size and place about random hinges, against random boxes, 260 times."""
    chance = random.Random(20)
    struck = clear = 0
    for _ in range(260):
        wide, thick = chance.uniform(200, 900), chance.uniform(12, 40)
        inset = chance.uniform(-10, 30)
        door = _box(inset, -thick, inset + wide, chance.uniform(-2, 2))
        x, y = chance.uniform(-700, 900), chance.uniform(-60, 900)
        thing = _box(x, y, x + chance.uniform(5, 500), y + chance.uniform(5, 500))
        if depth(door, thing) > 0:
            continue  # they share room when it is shut
        turn = math.radians(chance.uniform(60, 180))
        found, seen = first_stroke(door, thing, turn, 0.0), _by_steps(door, thing, turn)
        if seen is None:
            clear += 1
            # Between two steps a corner may be passed that no step shows, but never by much.
            if found is not None:
                assert depth(turned(door, found + 1e-4), thing) < 2.0
            continue
        struck += 1
        assert found is not None
        assert seen - 2 * turn / STEPS <= found <= seen + 1e-6
    assert struck > 80
    assert clear > 40
    assert struck + clear > 200


def test_other_shapes_and_depths() -> None:
    chance = random.Random(21)
    struck = 0
    for _ in range(120):
        ring = [
            (250 + 200 * math.cos(a) * chance.uniform(0.5, 1), 200 * math.sin(a) * chance.uniform(0.5, 1))
            for a in (0, 1.3, 2.6, 3.9, 5.2)
        ]
        door = list(Polygon(ring).convex_hull.exterior.coords)[:-1]
        thing = _box(
            *(chance.uniform(-500, 0) for _ in range(2)), *(chance.uniform(50, 500) for _ in range(2))
        )
        thing = [(x + 100, y + 500) for x, y in thing]
        if depth(door, thing) > 0:
            continue
        found = first_stroke(door, thing, math.pi, 3.0)
        if found is None:
            assert all(depth(turned(door, math.pi * i / 500), thing) <= 3.2 for i in range(501))
            continue
        struck += 1
        assert depth(turned(door, found), thing) == pytest.approx(3.0, abs=1e-3)
        assert all(depth(turned(door, found * i / 500), thing) <= 3.2 for i in range(500))
    assert struck > 20


def test_depth_is_the_least_way_out() -> None:
    assert depth(_box(0, 0, 10, 10), _box(7, 2, 20, 8)) == pytest.approx(3)
    assert depth(_box(0, 0, 10, 10), _box(10, 0, 20, 10)) == pytest.approx(0)
    assert depth(_box(0, 0, 10, 10), _box(12, 0, 20, 10)) < 0


def test_the_inner_corner_of_a_door_swings_out_further_than_the_door_is_wide() -> None:
    """√(w² + t²) - w: a door 400 wide and 40 thick needs 2 mm (plain geometry)."""
    door = _box(0, -40, 400, 0)
    stile = _box(401.9, -40, 440, 0)
    assert first_stroke(door, stile, 2.0, 0.0) is not None
    assert first_stroke(door, [(x + 0.2, y) for x, y in stile], 2.0, 0.0) is None


def test_the_grid_finds_what_comparing_all_finds() -> None:
    chance = random.Random(22)
    boxes = []
    for _ in range(400):
        low = tuple(chance.uniform(-900, 900) for _ in range(3))
        size = tuple(10 ** chance.uniform(0.5, 3.2) for _ in range(3))
        boxes.append(((low[0], low[1], low[2]), (low[0] + size[0], low[1] + size[1], low[2] + size[2])))
    grid = Grid(boxes)
    for low, high in boxes[:120]:
        near = [
            number
            for number, (a, b) in enumerate(boxes)
            if all(a[axis] < high[axis] and b[axis] > low[axis] for axis in range(3))
        ]
        assert list(grid.near(low, high)) == near


@pytest.mark.parametrize("quarter", range(4))
@pytest.mark.parametrize(("away", "struck"), [(95.0, True), (99.0, True), (101.0, False), (300.0, False)])
def test_a_long_wall_near_the_furthest_reach(quarter: int, away: float, struck: bool) -> None:
    """A thin leaf 100 long turns half round past a wall whose corners are far away: 100 sin x = 95 at 71.8°."""
    leaf = turned([(0.0, 0.0), (100.0, 0.0), (100.0, 0.1), (0.0, 0.1)], quarter * math.pi / 2)
    wall = turned([(-1e5, away), (1e5, away), (1e5, 2e5), (-1e5, 2e5)], quarter * math.pi / 2)
    found = first_stroke(leaf, wall, math.pi, 0.0)
    if struck:
        assert found == pytest.approx(math.asin(away / 100), abs=0.01)
    else:
        assert found is None
