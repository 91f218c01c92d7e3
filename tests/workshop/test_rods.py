"""Fasteners that meet, against points sampled along their paths: the axes, the grid, and what is told."""

from __future__ import annotations

import math
import random

import pytest

from reviewer.workshop.placed import Placed
from reviewer.workshop.rods import Rod, RodSearch, nearest, rods_of
from tests.support import review_of
from tests.workshop.random_corners import corners

CLEARANCE_MM = 1.6
CORNERS = list(corners(220, seed=5))
SAMPLES = 60


def sampled(rod: Rod, count: int = SAMPLES) -> list[tuple[float, ...]]:
    return [
        tuple(a + (b - a) * number / count for a, b in zip(rod.start, rod.end, strict=True))
        for number in range(count + 1)
    ]


def brute_distance(one: Rod, two: Rod, count: int = SAMPLES) -> float:
    """The least distance of two axes by points: too large by at most half a step of each."""
    others = sampled(two, count)
    return min(math.dist(p, q) for p in sampled(one, count) for q in others)


def far_apart(one: Rod, two: Rod) -> bool:
    """True, by a few points, where there is no question of their meeting."""
    few = 6
    slack = (step(one) + step(two)) * SAMPLES / few / 2
    return brute_distance(one, two, few) - slack > one.radius + two.radius + 2 * CLEARANCE_MM


def step(rod: Rod) -> float:
    return math.dist(rod.start, rod.end) / SAMPLES


def random_rod(rng: random.Random) -> Rod:
    start = tuple(rng.uniform(0, 40) for _ in range(3))
    kind = rng.random()
    if kind < 0.3:  # square to an axis, as most are
        end = list(start)
        end[rng.randrange(3)] += rng.uniform(-60, 60)
    else:
        end = [rng.uniform(-20, 60) for _ in range(3)]
    return Rod((start[0], start[1], start[2]), (end[0], end[1], end[2]), 2.0, 0, False)


def test_the_nearest_places_of_two_axes() -> None:
    rng = random.Random(3)
    for _ in range(100):
        one, two = random_rod(rng), random_rod(rng)
        apart, at = nearest(one, two)
        brute = brute_distance(one, two)
        assert apart <= brute + 1e-9
        assert brute <= apart + (step(one) + step(two)) / 2 + 1e-9
        # The place told is half way between them.
        for rod in (one, two):
            assert min(math.dist(at, p) for p in sampled(rod)) <= apart / 2 + step(rod)


@pytest.mark.parametrize(
    ("one", "two", "apart"),
    [
        # Crossing, parallel, end to end, a point beside a rod, and a rod that is a point: sums done by hand.
        (((0, 0, 0), (10, 0, 0)), ((5, -5, 3), (5, 5, 3)), 3),
        (((0, 0, 0), (10, 0, 0)), ((2, 4, 0), (12, 4, 0)), 4),
        (((0, 0, 0), (10, 0, 0)), ((13, 4, 0), (20, 4, 0)), 5),
        (((0, 0, 0), (10, 0, 0)), ((5, 0, 7), (5, 0, 7)), 7),
        (((1, 1, 1), (1, 1, 1)), ((1, 1, 4), (1, 1, 4)), 3),
    ],
)
def test_the_nearest_places_by_hand(
    one: tuple[tuple[float, ...], ...], two: tuple[tuple[float, ...], ...], apart: float
) -> None:
    rods = [
        Rod((float(a), float(b), float(c)), (float(d), float(e), float(f)), 1.0, 0, False)
        for (a, b, c), (d, e, f) in (one, two)
    ]
    assert nearest(rods[0], rods[1])[0] == pytest.approx(apart)
    assert nearest(rods[1], rods[0])[0] == pytest.approx(apart)


def brute_pairs(placed: tuple[Placed, ...]) -> dict[tuple[int, int], tuple[float, float]]:
    """The wood between every two fasteners by points, and how far that may be off."""
    rods = [list(rods_of(each, owner)) for owner, each in enumerate(placed)]
    found = {}
    for one in range(len(placed)):
        for two in range(one + 1, len(placed)):
            gaps = [
                (brute_distance(a, b) - a.radius - b.radius, (step(a) + step(b)) / 2)
                for a in rods[one]
                for b in rods[two]
                if not far_apart(a, b)
            ]
            if gaps:
                found[one, two] = min(gaps)[0], max(slack for _, slack in gaps)
    return found


def test_random_corners_meet_as_points_along_their_paths_do() -> None:
    met = 0
    for text in CORNERS:
        placed = review_of(text).placed
        near = {(each.one, each.two): each.gap for each in RodSearch(placed, CLEARANCE_MM).near()}
        brute = brute_pairs(placed)
        assert set(near) <= set(brute), text
        for pair, (gap, slack) in brute.items():
            if gap < CLEARANCE_MM - 1e-9:
                assert pair in near, text
                assert near[pair] <= gap + 1e-9
                assert near[pair] >= gap - slack - 1e-9
                met += 1
            elif gap > CLEARANCE_MM + slack:
                assert pair not in near, text
    assert met > 100  # the corners are crowded enough to mean something


def test_rods_lie_within_the_fasteners_that_they_stand_for() -> None:
    for text in CORNERS[:60]:
        for owner, each in enumerate(review_of(text).placed):
            line = Rod(each.mouth or each.head, each.point, 0.0, 0, False)
            for rod in rods_of(each, owner):
                for end in (rod.start, rod.end):
                    assert nearest(Rod(end, end, 0.0, 0, False), line)[0] <= each.width / 2 + 1e-6


def test_a_grid_of_large_and_small_ones_finds_what_comparing_all_does() -> None:
    rng = random.Random(11)
    template = next(iter(review_of(CORNERS[0]).placed))
    placed = []
    for number in range(300):
        head = tuple(rng.uniform(0, 500) for _ in range(3))
        long = rng.choice((20, 50, 400))
        way = [rng.uniform(-1, 1) for _ in range(3)]
        size = math.hypot(*way)
        point = tuple(h + w / size * long for h, w in zip(head, way, strict=True))
        placed.append(
            template._replace(
                number=number,
                mouth=(head[0], head[1], head[2]),
                head=(head[0], head[1], head[2]),
                point=(point[0], point[1], point[2]),
                hole_diameter=0.0,
                width=0.0,
            )
        )
    search = RodSearch(placed, CLEARANCE_MM)
    found = {(near.one, near.two) for near in search.near()}
    expected = {
        (one, two)
        for one in range(300)
        for two in range(one + 1, 300)
        if search.gap(search.rods[one][0], search.rods[two]) < CLEARANCE_MM
    }
    assert found == expected
    assert len(expected) > 5
