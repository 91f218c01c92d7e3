"""Convex bodies against scipy's half-spaces and trimesh's figures: clipped, shared, touching, grown."""

from __future__ import annotations

import math
import random

import numpy as np
import pytest
from shapely.geometry import Polygon

from reviewer.geometry.convex import Convex, box, clip, grown, intersection, oriented_box, prism, way_out
from reviewer.geometry.pieces import Flat, contact_patches, cut_away, skin
from reviewer.geometry.vectors import Vector, area_of, bounds, dot, turned_round, unit, within, without
from tests.geometry import reference

Plane = tuple[Vector, float]


def way(chance: random.Random) -> Vector:
    return unit((chance.gauss(0, 1), chance.gauss(0, 1), chance.gauss(0, 1)))


def turned_axes(chance: random.Random) -> tuple[Vector, Vector, Vector]:
    from reviewer.geometry.body import square_ways

    along = way(chance)
    right, up = square_ways(along)
    return right, up, along


def some_body(chance: random.Random, cuts: int = 5) -> tuple[Convex, list[Plane]]:
    """A turned box with some corners cut off, and the planes that bound it."""
    axes = turned_axes(chance)
    corner = tuple(chance.uniform(-500, 500) for _ in range(3))
    sizes = [chance.uniform(10, 300) for _ in range(3)]
    body = oriented_box(corner, axes, sizes)  # type: ignore[arg-type]
    planes = [(face.normal, face.offset) for face in body.faces]
    for _ in range(cuts):
        normal = way(chance)
        low, high = body.reach(normal)
        offset = low + (high - low) * chance.uniform(0.5, 1.0)
        left = clip(body, normal, offset, "cut")
        assert left is not None
        body = left
        planes.append((normal, offset))
    return body, planes


@pytest.mark.parametrize("seed", range(120))
def test_figures_of_a_clipped_body(seed: int) -> None:
    body, planes = some_body(random.Random(seed))
    mesh = reference.body_of(reference.rows_of(planes))
    assert mesh is not None
    assert body.volume == pytest.approx(mesh.volume, rel=1e-7)
    assert body.centroid == pytest.approx(tuple(mesh.center_mass), abs=1e-5)
    assert sum(body.areas()) == pytest.approx(mesh.area, rel=1e-7)
    assert (*body.low, *body.high) == pytest.approx(mesh.bounds.reshape(6), abs=1e-6)
    # Every face is flat, lies in its plane and turns round its normal.
    for face in body.faces:
        assert max(abs(dot(face.normal, point) - face.offset) for point in face.ring) < 1e-6
        assert area_of(face.ring) > 0


@pytest.mark.parametrize("seed", range(120))
def test_clipped_and_kept_off_are_the_whole(seed: int) -> None:
    chance = random.Random(seed)
    body, _ = some_body(chance)
    normal = way(chance)
    low, high = body.reach(normal)
    offset = low + (high - low) * chance.random()
    one = clip(body, normal, offset)
    two = clip(body, turned_round(normal), -offset)
    assert one is not None
    assert two is not None
    assert one.volume + two.volume == pytest.approx(body.volume, rel=1e-9)


def test_a_plane_beside_the_body_changes_nothing_and_one_beyond_leaves_nothing() -> None:
    body = box((0, 0, 0), (10, 20, 30))
    assert clip(body, (1, 0, 0), 10) is body
    assert clip(body, (1, 0, 0), 11) is body
    assert clip(body, (1, 0, 0), 0) is None
    assert clip(body, (1, 0, 0), -1) is None


@pytest.mark.parametrize("seed", range(120))
def test_shared_space(seed: int) -> None:
    chance = random.Random(1000 + seed)
    one, planes_one = some_body(chance)
    two, planes_two = some_body(chance)
    from reviewer.geometry.convex import moved_body

    shift = tuple(a - b + chance.uniform(-60, 60) for a, b in zip(one.centroid, two.centroid, strict=True))
    two = moved_body(two, shift)  # type: ignore[arg-type]
    moved = [(normal, offset + dot(normal, shift)) for normal, offset in planes_two]  # type: ignore[arg-type]
    expected = reference.volume(reference.rows_of([*planes_one, *moved]))
    for first, second in ((one, two), (two, one)):
        found = intersection(first, second)
        assert (0.0 if found is None else found.volume) == pytest.approx(expected, rel=1e-6, abs=0.01)
    bits = cut_away(one, two, lambda normal: "new")
    assert len(bits) <= len(two.faces)
    assert sum(bit.volume for bit in bits) == pytest.approx(one.volume - expected, rel=1e-7, abs=0.01)


@pytest.mark.parametrize("seed", range(120))
def test_faces_that_lie_against_each_other(seed: int) -> None:
    """A body sawn in two along a slanting plane, and one half slid along the cut."""
    from reviewer.geometry.convex import moved_body

    chance = random.Random(2000 + seed)
    body, planes = some_body(chance, 3)
    normal = way(chance)
    low, high = body.reach(normal)
    offset = low + (high - low) * chance.uniform(0.3, 0.7)
    one = clip(body, normal, offset, "end")
    two = clip(body, turned_round(normal), -offset, "face")
    assert one is not None
    assert two is not None
    from reviewer.geometry.body import square_ways

    right, up = square_ways(normal)
    a, b = chance.uniform(-30, 30), chance.uniform(-30, 30)
    slide = tuple(a * right[axis] + b * up[axis] for axis in range(3))
    two = moved_body(two, slide)  # type: ignore[arg-type]
    rows_one = reference.rows_of([*planes, (normal, offset)])
    rows_two = reference.rows_of(
        [(n, o + dot(n, slide)) for n, o in [*planes, (turned_round(normal), -offset)]]  # type: ignore[arg-type]
    )
    expected = reference.shared_face_area(rows_one, rows_two)
    flats = [[Flat(face, *bounds(face.ring)) for face in each.faces] for each in (one, two)]
    found = contact_patches(flats[0], flats[1], 0.05)
    assert sum(patch.area for patch in found) == pytest.approx(expected, rel=1e-6, abs=0.05)
    for patch in found:
        assert patch.face.normal == normal
        assert (patch.face.surface, patch.other_surface) == ("end", "face")


@pytest.mark.parametrize("seed", range(60))
def test_outlines_within_and_without_each_other(seed: int) -> None:
    """Against shapely."""
    chance = random.Random(seed)
    rings = []
    for _ in range(2):
        turns = sorted(chance.uniform(0, 2 * math.pi) for _ in range(chance.randint(3, 8)))
        x, y = chance.uniform(-20, 20), chance.uniform(-20, 20)
        rings.append(tuple((x + 40 * math.cos(turn), y + 40 * math.sin(turn), 7.0) for turn in turns))
    one, two = (Polygon([(x, y) for x, y, _ in ring]) for ring in rings)
    both = within(rings[0], (0, 0, 1), rings[1])
    bits, taken = without(rings[0], (0, 0, 1), rings[1])
    shared = one.intersection(two).area
    assert (area_of(both) if both else 0.0) == pytest.approx(shared, abs=1e-6)
    assert (area_of(taken) if taken else 0.0) == pytest.approx(shared, abs=1e-6)
    assert sum(map(area_of, bits)) == pytest.approx(one.difference(two).area, abs=1e-6)


@pytest.mark.parametrize("seed", range(40))
def test_notched_boxes_against_a_count_of_cells(seed: int) -> None:
    """Boxes out of a box on a grid of 10 mm: volume and outside by counting cells and their bare sides."""
    chance = random.Random(seed)
    size = 8
    wood = np.ones((size, size, size), dtype=bool)
    pieces = [box((0, 0, 0), (80, 80, 80))]
    for _ in range(4):
        low = [chance.randint(0, size - 2) for _ in range(3)]
        high = [chance.randint(a + 1, size) for a in low]
        wood[low[0] : high[0], low[1] : high[1], low[2] : high[2]] = False
        tool = box(tuple(10.0 * a for a in low), tuple(10.0 * b for b in high))  # type: ignore[arg-type]
        pieces = [bit for piece in pieces for bit in cut_away(piece, tool, lambda normal: "")]
    assert sum(piece.volume for piece in pieces) == pytest.approx(1000 * wood.sum())
    if not wood.any():
        return
    padded = np.pad(wood, 1)
    bare = sum(int((padded != np.roll(padded, 1, axis)).sum()) for axis in range(3))
    faces, lumps = skin(pieces)
    assert sum(area_of(face.ring) for outer in faces for face in outer) == pytest.approx(100 * bare)
    from scipy.ndimage import label

    assert lumps == label(wood)[1]


def test_a_grown_box_has_room_all_round() -> None:
    bigger = grown(box((0, 0, 0), (10, 20, 30)), 2)
    assert (bigger.low, bigger.high) == ((-2, -2, -2), (12, 22, 32))
    assert bigger.volume == pytest.approx(14 * 24 * 34)


def test_a_prism_of_six_sides() -> None:
    """By hand: a regular hexagon of side 10 has the area 150 √3."""
    ring = tuple((10 * math.cos(i * math.pi / 3), 10 * math.sin(i * math.pi / 3), 5.0) for i in range(6))
    bar = prism(ring, (0, 0, 1), 7)
    assert bar.volume == pytest.approx(150 * math.sqrt(3) * 7)
    assert sum(bar.areas()) == pytest.approx(2 * 150 * math.sqrt(3) + 6 * 70)
    assert bar.centroid == pytest.approx((0, 0, 8.5))


def test_the_way_out_of_another_body() -> None:
    """By hand: a box in a corner of another, and a box under a slanting face (1 up on 2 across)."""
    one, two = box((0, 0, 0), (10, 10, 10)), box((7, 4, 2), (30, 30, 30))
    ways = {(-1, 0, 0): 3, (0, -1, 0): 6, (0, 0, -1): 8, (1, 0, 0): 30}
    for way, far in ways.items():
        assert way_out([one], [two], way, 100) == pytest.approx(far, abs=1e-4)  # type: ignore[arg-type]
    wedge = clip(box((0, 0, 0), (20, 10, 10)), unit((-1, 0, 2)), 0.0)  # below z = x / 2
    assert wedge is not None
    block = box((0, 0, 4), (12, 10, 20))
    assert way_out([block], [wedge], (0, 0, 1), 100) == pytest.approx(2, abs=1e-4)
    assert way_out([block], [wedge], (-1, 0, 0), 100) == pytest.approx(4, abs=1e-4)
    assert way_out([box((0, 0, 50), (1, 1, 51))], [wedge], (0, 0, 1), 100) == 0
