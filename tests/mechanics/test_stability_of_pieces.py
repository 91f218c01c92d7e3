"""Tipping against a brute walk around the compass and against a general geometry library."""

from __future__ import annotations

import math
import random

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely.geometry import MultiPoint
from shapely.geometry import Point as ShapelyPoint

from reviewer.mechanics.mass import Mass, combined
from reviewer.mechanics.stability import (
    Balance,
    Load,
    Point,
    Push,
    TippingEdge,
    balance,
    base_depth,
    load_moment,
    load_that_tips,
    push_that_tips,
    restoring_moment,
    restraint_force,
    support_polygon,
    tilt_over_block,
    tilt_that_tips,
    tipping_edges,
    wall_hung_pull,
    weakest,
)
from reviewer.units import NEWTON_PER_KG, TOLERANCE_MM

SEEDS = range(40)
near_a_line = st.tuples(st.floats(0, 900), st.floats(0, 0.3))
places = st.tuples(st.floats(-2000, 2000), st.floats(-2000, 2000))


def random_piece(seed: int) -> tuple[tuple[Point, ...], tuple[TippingEdge, ...], list[Mass]]:
    """Three to seven feet and a few masses, all over the middle of the feet."""
    dice = random.Random(seed)
    feet = [(dice.uniform(0, 900), dice.uniform(0, 500)) for _ in range(dice.randint(4, 7))]
    polygon = support_polygon(feet)
    assert polygon
    x = sum(px for px, _ in polygon) / len(polygon)
    y = sum(py for _, py in polygon) / len(polygon)
    masses = [
        Mass(dice.uniform(1, 30), x + dice.uniform(-9, 9), y + dice.uniform(-9, 9), dice.uniform(10, 1800))
        for _ in range(dice.randint(1, 4))
    ]
    return polygon, tipping_edges(polygon), masses


def stands(polygon: tuple[Point, ...], x: float, y: float) -> bool:
    """True when the place where the floor pushes back lies under the piece (a general geometry library)."""
    return bool(MultiPoint(polygon).convex_hull.covers(ShapelyPoint(x, y)))


def compass(steps: int = 3600) -> list[Point]:
    return [(math.cos(2 * math.pi * k / steps), math.sin(2 * math.pi * k / steps)) for k in range(steps)]


@pytest.mark.parametrize("seed", SEEDS)
def test_least_push_is_that_of_a_walk_around_the_compass(seed: int) -> None:
    polygon, edges, masses = random_piece(seed)
    whole = combined(masses)
    assert whole
    height = 1000.0
    ours = min(push_that_tips(restoring_moment(edge, masses), height) for edge in edges)

    # Push in every direction: the floor's answer moves by F·h/W; it tips once that leaves the feet.
    def tips(force: float) -> bool:
        shift = force * height / whole.weight
        return any(not stands(polygon, whole.x + shift * dx, whole.y + shift * dy) for dx, dy in compass(720))

    assert not tips(ours * 0.9999)
    assert tips(ours * 1.0002)


@pytest.mark.parametrize("seed", SEEDS)
def test_least_tilt_is_that_of_a_walk_around_the_compass(seed: int) -> None:
    polygon, edges, masses = random_piece(seed)
    whole = combined(masses)
    assert whole
    ours = min(tilt_that_tips(edge, whole) for edge in edges)

    # Lean the plumb line in every direction: it tips once the line through the centre misses the feet.
    def tips(degrees: float) -> bool:
        shift = whole.z * math.tan(math.radians(degrees))
        return any(not stands(polygon, whole.x + shift * dx, whole.y + shift * dy) for dx, dy in compass(720))

    assert not tips(ours * 0.9999)
    assert tips(ours * 1.0002)
    edge = min(edges, key=lambda one: tilt_that_tips(one, whole))
    assert restoring_moment(edge, masses, ours) == pytest.approx(0.0, abs=1e-6 * whole.weight)


@pytest.mark.parametrize("seed", SEEDS)
def test_least_load_at_a_place_is_that_of_the_common_centre(seed: int) -> None:
    polygon, edges, masses = random_piece(seed)
    whole = combined(masses)
    assert whole
    dice = random.Random(seed + 1000)
    x, y = whole.x + dice.uniform(-1500, 1500), whole.y + dice.uniform(-1500, 1500)
    tipping = [load_that_tips(edge, restoring_moment(edge, masses), x, y, 500.0) for edge in edges]
    ours = min(tipping)
    assert math.isinf(ours) == stands(polygon, x, y)

    def centre(force: float) -> Point:
        weight = whole.weight + force
        return (whole.x * whole.weight + x * force) / weight, (whole.y * whole.weight + y * force) / weight

    if math.isinf(ours):
        assert stands(polygon, *centre(1e6))
    else:
        assert stands(polygon, *centre(ours * 0.9999))
        assert not stands(polygon, *centre(ours * 1.0001))


@pytest.mark.parametrize("seed", SEEDS)
def test_balance_stands_exactly_when_the_floors_answer_is_under_the_feet(seed: int) -> None:
    polygon, edges, masses = random_piece(seed)
    dice = random.Random(seed + 2000)
    loads = [
        Load(dice.uniform(10, 400), dice.uniform(-300, 1200), dice.uniform(-300, 800), 700.0)
        for _ in range(2)
    ]
    whole = combined([*masses, *(Mass(one.force / NEWTON_PER_KG, one.x, one.y, one.z) for one in loads)])
    assert whole
    margins = [balance(edge, masses, loads).margin for edge in edges]
    assert (min(margins) >= 0) == stands(polygon, whole.x, whole.y)
    # Turning every mass and load about the edge: the margin is the turned centre times its weight.
    for edge, margin in zip(edges, margins, strict=True):
        assert margin == pytest.approx(edge.arm(whole.x, whole.y) * whole.weight)


@pytest.mark.parametrize("tilt", [0.0, 3.0, 12.0])
def test_tilt_is_a_turn_of_the_whole_piece(tilt: float) -> None:
    edge = TippingEdge((0.0, 100.0), (0.0, -100.0))
    masses = [Mass(12.0, 230.0, 40.0, 500.0), Mass(3.0, -80.0, -20.0, 900.0)]
    load, push = Load(270.0, -350.0, 0.0, 800.0), Push(44.0, 60.0, 0.0, 1400.0)
    angle = math.radians(tilt)

    def turned(x: float, z: float) -> tuple[float, float]:
        return x * math.cos(angle) - z * math.sin(angle), x * math.sin(angle) + z * math.cos(angle)

    expected = sum(mass.weight * turned(mass.x, mass.z)[0] for mass in masses)
    assert restoring_moment(edge, masses, tilt) == pytest.approx(expected)
    assert load_moment(edge, load, tilt) == pytest.approx(-load.force * turned(load.x, load.z)[0])
    whole = balance(edge, masses, [load], [push], tilt)
    assert whole.restoring == pytest.approx(expected)
    assert whole.overturning == pytest.approx(
        -load.force * turned(load.x, load.z)[0] + push.force * turned(push.x, push.z)[1]
    )


def test_a_load_inside_the_edge_holds_the_piece_down() -> None:
    edge = TippingEdge((0.0, 1.0), (0.0, -1.0))
    piece = [Mass(10.0, 200.0, 0.0, 400.0)]
    sat_on = balance(edge, piece, [Load(600.0, 50.0, 0.0, 450.0)])
    assert sat_on.overturning == 0
    assert math.isinf(sat_on.ratio)
    assert sat_on.restoring == pytest.approx(10 * NEWTON_PER_KG * 200 + 600 * 50)


def test_ratio_of_a_piece_that_falls_by_itself() -> None:
    edge = TippingEdge((0.0, 1.0), (0.0, -1.0))
    falling = balance(edge, [Mass(10.0, -5.0, 0.0, 400.0)])
    assert falling.ratio == 0
    assert falling.margin < 0
    assert push_that_tips(falling.restoring, 500.0) == 0
    assert load_that_tips(edge, falling.restoring, -100.0, 0.0, 300.0) == 0


def test_weakest_edge_is_named() -> None:
    edges = tipping_edges(((0.0, 0.0), (400.0, 0.0), (400.0, 900.0), (0.0, 900.0)))
    masses = [Mass(20.0, 150.0, 450.0, 800.0)]
    push = [Push(30.0, 150.0, 450.0, 1000.0)]
    worst = weakest(balance(edge, masses, pushes=push) for edge in edges)
    assert worst
    assert worst.edge.outward == pytest.approx((-1.0, 0.0))
    assert worst.ratio == pytest.approx(20 * NEWTON_PER_KG * 150 / 30_000)
    assert weakest([]) is None


@given(st.lists(places, min_size=3, max_size=12) | st.lists(near_a_line, min_size=3, max_size=8))
def test_footprint_is_the_hull_of_a_geometry_library(contacts: list[Point]) -> None:
    polygon = support_polygon(contacts)
    hull = MultiPoint(contacts).convex_hull
    if polygon is None:
        # Area is at most width times length, and length about half the way around.
        assert hull.area <= 3 * TOLERANCE_MM * hull.length / 2
        return
    assert set(polygon) <= set(contacts)
    assert MultiPoint(polygon).convex_hull.hausdorff_distance(hull) <= 2 * TOLERANCE_MM
    edges = tipping_edges(polygon)
    assert all(edge.arm(x, y) >= -2 * TOLERANCE_MM for edge in edges for x, y in contacts)
    # Anticlockwise, and every edge a real one.
    assert sum(a[0] * b[1] - a[1] * b[0] for a, b in edges) > 0
    assert all(math.dist(*edge) > 0 for edge in edges)


@pytest.mark.parametrize(
    "contacts",
    [
        [],
        [(1.0, 2.0)],
        [(1.0, 2.0), (1.0, 2.0), (1.0, 2.0)],
        [(0.0, 0.0), (500.0, 0.0)],
        [(0.0, 0.0), (500.0, 0.0), (900.0, 0.0)],
        [(0.0, 0.0), (300.0, 300.0), (600.0, 600.03)],
        [(0.0, 0.0), (0.0, 0.02), (900.0, 0.0), (900.0, 0.02)],
        [(100.0, 700.0), (100.0, 700.02), (1000.0, 700.0), (1000.0, 700.02)],
        [(100.0, 700.0), (400.0, 700.04), (900.0, 700.0)],
    ],
)
def test_contacts_in_a_line_make_no_footprint(contacts: list[Point]) -> None:
    assert support_polygon(contacts) is None


def test_contacts_along_a_side_are_no_corners() -> None:
    contacts = [(0.0, 0.0), (200.0, 0.0), (400.0, 0.0), (400.0, 300.0), (0.0, 300.0), (100.0, 100.0)]
    assert support_polygon(contacts) == ((0.0, 0.0), (400.0, 0.0), (400.0, 300.0), (0.0, 300.0))
    # A foot a hair outside the line of its neighbours is none either; one that stands out is.
    square = [(100.0, 50.0), (500.0, 50.0), (500.0, 350.0), (100.0, 350.0)]
    assert support_polygon([*square, (300.0, 49.97), (300.0, 350.04), (500.03, 200.0)]) == tuple(square)
    with_nose = support_polygon([*square, (300.0, 49.9)])
    assert with_nose == ((100.0, 50.0), (300.0, 49.9), *square[1:])


def test_base_depth_and_block() -> None:
    polygon = ((0.0, 0.0), (400.0, 0.0), (400.0, 300.0), (0.0, 300.0))
    front = tipping_edges(polygon)[0]
    assert front.outward == pytest.approx((0.0, -1.0))
    assert base_depth(front, polygon) == pytest.approx(300.0)
    assert math.sin(math.radians(tilt_over_block(11.0, 300.0))) == pytest.approx(11 / 300)


def test_restraint_makes_up_what_lacks() -> None:
    edge = TippingEdge((0.0, 1.0), (0.0, -1.0))
    lacking = Balance(edge, 40_000.0, 90_000.0)
    pull = restraint_force(lacking.margin, strap_height=800.0)
    assert pull == pytest.approx(62.5)
    assert lacking.margin + pull * 800 == pytest.approx(0.0)
    assert restraint_force(100.0, 800.0) == 0
    # A strap that rises so steeply that it pulls through the edge, or in front of it, is no help.
    assert math.isinf(restraint_force(-100.0, 300.0, 600.0, -45.0))
    # Level is the shortest arm of a strap that falls to the wall behind the piece.
    assert restraint_force(-100.0, 800.0, 300.0, 20.0) < restraint_force(-100.0, 800.0, 300.0, 0.0)


def test_wall_hung_pull_balances_the_weight() -> None:
    pull = wall_hung_pull(300.0, 150.0, 600.0)
    assert pull * 600 == pytest.approx(300 * 150)


def test_masses_combine_to_one_centre() -> None:
    whole = combined([Mass(3.0, 0.0, 10.0, 100.0), Mass(1.0, 40.0, 10.0, 500.0)])
    assert whole == Mass(4.0, 10.0, 10.0, 200.0)
    assert whole.weight == pytest.approx(39.2266)
    assert whole.moved(y=-25.0) == Mass(4.0, 10.0, -15.0, 200.0)
    assert combined([]) is None
    assert combined([Mass(0.0, 1.0, 1.0, 1.0)]) is None
