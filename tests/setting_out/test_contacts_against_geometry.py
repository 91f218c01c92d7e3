"""Contacts and overlaps of boxes against general geometry libraries.

Sources: trimesh for the bodies and their faces, scipy (qhull) for the volume that two convex bodies
share, shapely for the area that two faces share. None of them knows that the bodies are boxes.
"""

from __future__ import annotations

from itertools import combinations

import numpy as np
import pytest
import trimesh
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.optimize import linprog
from scipy.spatial import ConvexHull, HalfspaceIntersection
from shapely.geometry import MultiPoint, Polygon

from reviewer.model.plan import Axis
from reviewer.setting_out.contacts import candidates, meetings
from reviewer.setting_out.solid import Solid, square_solid

GRID = 10.0  # mm: boxes on a grid often touch and often share space
Bounds = tuple[tuple[float, float, float], tuple[float, float, float]]


def solid(name: str, bounds: Bounds) -> Solid:
    return square_solid(name, *bounds, Axis.ACROSS, Axis.DEEP, Axis.UP)


@st.composite
def boxes_on_a_grid(draw: st.DrawFn) -> list[Bounds]:
    found = []
    for _ in range(draw(st.integers(2, 6))):
        low = [draw(st.integers(0, 4)) for _ in range(3)]
        size = [draw(st.integers(1, 4)) for _ in range(3)]
        found.append(
            (tuple(GRID * a for a in low), tuple(GRID * (a + b) for a, b in zip(low, size, strict=True)))
        )
    return found  # type: ignore[return-value]


# ------------------------------------------------------------ the reference


def body(bounds: Bounds) -> trimesh.Trimesh:
    return trimesh.creation.box(bounds=bounds)


def halfspaces(mesh: trimesh.Trimesh) -> np.ndarray:
    """Rows of (normal, offset) with normal · x + offset <= 0 inside."""
    normals, origins = mesh.facets_normal, mesh.facets_origin
    return np.column_stack([normals, -np.einsum("ij,ij->i", normals, origins)])


def shared_volume(one: trimesh.Trimesh, two: trimesh.Trimesh) -> float:
    """Volume of the convex body that both hold, mm³."""
    planes = np.vstack([halfspaces(one), halfspaces(two)])
    # The widest ball inside all planes: its middle is an inner point, no room for it means no shared space.
    lengths = np.linalg.norm(planes[:, :3], axis=1)
    best = linprog(
        [0, 0, 0, -1],
        A_ub=np.column_stack([planes[:, :3], lengths]),
        b_ub=-planes[:, 3],
        bounds=[(None, None)] * 3 + [(0, None)],
    )
    if not best.success or best.x[3] < 1e-6:
        return 0.0
    return float(ConvexHull(HalfspaceIntersection(planes, best.x[:3]).intersections).volume)


def shared_faces(one: trimesh.Trimesh, two: trimesh.Trimesh) -> float:
    """Area over which faces of two bodies lie against each other, mm²."""
    total = 0.0
    for facet_1, normal_1, origin in zip(one.facets, one.facets_normal, one.facets_origin, strict=True):
        for facet_2, normal_2 in zip(two.facets, two.facets_normal, strict=True):
            points_1 = one.vertices[np.unique(one.faces[facet_1])]
            points_2 = two.vertices[np.unique(two.faces[facet_2])]
            against = np.allclose(normal_1, -normal_2)
            if against and np.allclose((points_2 - origin) @ normal_1, 0.0, atol=1e-9):
                to_plane = trimesh.geometry.plane_transform(origin, normal_1)
                flat_1, flat_2 = (
                    MultiPoint(trimesh.transform_points(points, to_plane)[:, :2]).convex_hull
                    for points in (points_1, points_2)
                )
                total += float(flat_1.intersection(flat_2).area)
    return total


# ------------------------------------------------------------ the checks


@settings(max_examples=350, deadline=None, derandomize=True)
@given(boxes_on_a_grid())
def test_contacts_and_overlaps_are_those_of_general_geometry(boxes: list[Bounds]) -> None:
    solids = [solid(f"p{number}", bounds) for number, bounds in enumerate(boxes)]
    found = meetings(solids)
    contacts = {frozenset((c.first, c.second)): c for c in found.contacts}
    overlaps = {frozenset((o.first, o.second)): o for o in found.overlaps}
    assert len(contacts) == len(found.contacts)
    assert len(overlaps) == len(found.overlaps)
    assert not found.crowded
    bodies = [body(bounds) for bounds in boxes]
    for one, two in combinations(range(len(boxes)), 2):
        pair = frozenset((f"p{one}", f"p{two}"))
        volume = shared_volume(bodies[one], bodies[two])
        area = shared_faces(bodies[one], bodies[two]) if volume == 0.0 else 0.0
        assert (pair in overlaps) == (volume > 0)
        assert (pair in contacts) == (area > 0)
        if volume:
            assert np.prod(overlaps[pair].depths) == pytest.approx(volume)
        if area:
            contact = contacts[pair]
            assert contact.area == pytest.approx(area)
            patch = [high - low for low, high in zip(contact.low, contact.high, strict=True)]
            assert patch.pop(contact.axis) == 0.0
            assert patch[0] * patch[1] == pytest.approx(area)


@settings(max_examples=150, deadline=None, derandomize=True)
@given(boxes_on_a_grid())
def test_meeting_is_the_same_from_either_side(boxes: list[Bounds]) -> None:
    solids = [solid(f"p{number}", bounds) for number, bounds in enumerate(boxes)]
    there, back = meetings(solids), meetings(solids[::-1])
    assert set(there.contacts) == set(back.contacts)
    assert set(there.overlaps) == set(back.overlaps)
    for contact in there.contacts:
        names = {each.name: each for each in solids}
        first, second = names[contact.first], names[contact.second]
        assert first.high[contact.axis] == second.low[contact.axis]
        assert contact.other(contact.first) == contact.second
        assert contact.other(contact.second) == contact.first


def test_area_of_a_patch_is_that_of_the_polygon_both_faces_share() -> None:
    """By hand: 40 x 30 against 40 x 30, moved by 25 and 10: 15 x 20 = 300."""
    under, over = solid("a", ((0, 0, 0), (40, 30, 20))), solid("b", ((25, 10, 20), (65, 40, 50)))
    (contact,) = meetings([under, over]).contacts
    by_shapely = Polygon([(0, 0), (40, 0), (40, 30), (0, 30)]).intersection(
        Polygon([(25, 10), (65, 10), (65, 40), (25, 40)])
    )
    assert contact.area == by_shapely.area == 300
    assert (contact.first, contact.second, contact.axis) == ("a", "b", 2)
    assert (contact.low, contact.high) == ((25, 10, 20), (40, 30, 20))


@pytest.mark.parametrize(
    ("gap", "contacts", "overlaps"),
    [(0.0, 1, 0), (0.049, 1, 0), (0.051, 0, 0), (-0.049, 1, 0), (-0.051, 0, 1)],
)
@pytest.mark.parametrize("axis", [0, 1, 2])
def test_a_hair_more_or_less_is_still_a_contact(axis: int, gap: float, contacts: int, overlaps: int) -> None:
    """The one tolerance is 0.05 mm."""
    low = [0.0, 0.0, 0.0]
    low[axis] = 100 + gap
    other = (tuple(low), tuple(place + 100 for place in low))
    found = meetings([solid("a", ((0, 0, 0), (100, 100, 100))), solid("b", other)])  # type: ignore[arg-type]
    assert (len(found.contacts), len(found.overlaps)) == (contacts, overlaps)
    for contact in found.contacts:
        assert (contact.first, contact.second, contact.axis) == ("a", "b", axis)
        assert contact.area == pytest.approx(10_000)


@pytest.mark.parametrize("low", [(100, 100, 0), (100, 0, 100), (0, 100, 100), (100, 100, 100)])
def test_meeting_along_a_line_or_at_a_corner_is_no_contact(low: tuple[float, float, float]) -> None:
    high = (low[0] + 50, low[1] + 50, low[2] + 50)
    found = meetings([solid("a", ((0, 0, 0), (100, 100, 100))), solid("b", (low, high))])
    assert found == ((), (), False)


def test_surfaces_are_those_of_the_boards() -> None:
    """An upright's end grain stands on the face of a board that lies flat."""
    board = square_solid("board", (0, 0, 0), (400, 100, 20), Axis.ACROSS, Axis.DEEP, Axis.UP)
    post = square_solid("post", (0, 0, 20), (20, 100, 320), Axis.UP, Axis.DEEP, Axis.ACROSS)
    (contact,) = meetings([post, board]).contacts
    assert (contact.first, contact.first_surface) == ("board", "face")
    assert (contact.second, contact.second_surface) == ("post", "end")
    assert contact.surface_of("post") == "end"
    assert [post.surface(axis) for axis in range(3)] == ["face", "edge", "end"]


PLACES = st.floats(-1e4, 1e4, allow_nan=False).map(lambda place: round(place, 3))


@settings(max_examples=300, deadline=None, derandomize=True)
@given(st.lists(st.tuples(*[st.tuples(PLACES, st.floats(0.1, 4e3)) for _ in range(3)]), max_size=25))
def test_candidates_are_those_of_brute_force(sizes: list[tuple[tuple[float, float], ...]]) -> None:
    solids = [
        solid(f"p{n}", (tuple(a for a, _ in each), tuple(a + b for a, b in each)))  # type: ignore[arg-type]
        for n, each in enumerate(sizes)
    ]
    found = list(candidates(solids))
    assert len(found) == len(set(found))
    brute = {
        (one, two)
        for one, two in combinations(range(len(solids)), 2)
        if all(
            solids[one].low[axis] - 0.05 <= solids[two].high[axis]
            and solids[two].low[axis] - 0.05 <= solids[one].high[axis]
            for axis in range(3)
        )
    }
    assert set(found) == brute


def test_search_in_a_crowd_comes_to_an_end_and_says_so() -> None:
    same = [solid(f"p{n}", ((0, 0, 0), (10, 10, 10))) for n in range(2_000)]
    found = meetings(same)
    assert found.crowded
    assert len(found.contacts) + len(found.overlaps) == 100_000
    # Long parts that cross on every axis but touch nowhere are given up on too.
    lattice = []
    for row in range(60):
        for column in range(60):
            a, b = 30.0 * row, 30.0 * column
            lattice.append(solid(f"x{row}.{column}", ((0, a, b), (1800, a + 9, b + 9))))
            lattice.append(solid(f"y{row}.{column}", ((a + 10, 0, b + 10), (a + 19, 1800, b + 19))))
            lattice.append(solid(f"z{row}.{column}", ((a + 20, b + 20, 0), (a + 29, b + 29, 1800))))
    given_up = meetings(lattice)
    assert given_up.crowded
    assert given_up.overlaps == ()
