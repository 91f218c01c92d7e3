"""Convex bodies and their meetings by general geometry libraries.

Sources: scipy (qhull) for bodies from half-spaces, trimesh for their figures and faces, shapely for the
area that two outlines share. None of them knows the code under test.
"""

from __future__ import annotations

import numpy as np
import trimesh
from scipy.optimize import linprog
from scipy.spatial import ConvexHull, HalfspaceIntersection
from shapely.geometry import MultiPoint

Rows = np.ndarray  # (n, 4): normal · x + offset <= 0 inside


def rows_of(planes: list[tuple[tuple[float, float, float], float]]) -> Rows:
    """Half-spaces ``normal · x <= offset`` as rows; normals are made one long."""
    normals = np.array([normal for normal, _ in planes], dtype=float)
    offsets = np.array([offset for _, offset in planes], dtype=float)
    sizes = np.linalg.norm(normals, axis=1)
    return np.column_stack([normals / sizes[:, None], -offsets / sizes])


def inner(rows: Rows) -> tuple[np.ndarray, float]:
    """The middle and the radius of the widest ball inside; a radius below 0 where there is none."""
    best = linprog(
        [0, 0, 0, -1],
        A_ub=np.column_stack([rows[:, :3], np.ones(len(rows))]),
        b_ub=-rows[:, 3],
        bounds=[(None, None)] * 3 + [(None, 1e6)],
    )
    return best.x[:3], float(best.x[3])


def body_of(rows: Rows) -> trimesh.Trimesh | None:
    """The body behind all planes; None where there is no room for a ball of 1/1000 mm."""
    middle, radius = inner(rows)
    if radius < 1e-3:
        return None
    corners = HalfspaceIntersection(rows, middle).intersections
    return trimesh.Trimesh(*_hull(corners), process=True)


def _hull(corners: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
    hull = ConvexHull(corners)
    faces = []
    for simplex, equation in zip(hull.simplices, hull.equations, strict=True):
        a, b, c = hull.points[simplex]
        turned = np.dot(np.cross(b - a, c - a), equation[:3]) < 0
        faces.append(simplex[::-1] if turned else simplex)
    return hull.points, np.array(faces)


def volume(rows: Rows) -> float:
    """mm³; 0 where there is no room."""
    body = body_of(rows)
    return 0.0 if body is None else float(body.volume)


def box_rows(low: tuple[float, ...], high: tuple[float, ...]) -> Rows:
    eye = np.eye(3)
    return np.vstack([np.column_stack([eye, -np.array(high)]), np.column_stack([-eye, np.array(low)])])


def shared_face_area(one: Rows, two: Rows, tolerance: float = 1e-6) -> float:
    """The area over which faces of two bodies lie against each other, mm²."""
    total = 0.0
    bodies = [body_of(one), body_of(two)]
    assert bodies[0] is not None
    assert bodies[1] is not None
    for row in one:
        for other in two:
            if np.dot(row[:3], other[:3]) > -1 + 1e-9 or abs(row[3] + other[3]) > tolerance:
                continue
            to_plane = trimesh.geometry.plane_transform(-row[3] * row[:3], row[:3])
            flats = []
            for body, plane in ((bodies[0], row), (bodies[1], other)):
                on = body.vertices[np.abs(body.vertices @ plane[:3] + plane[3]) < 1e-6]
                if len(on) < 3:
                    break
                flats.append(MultiPoint(trimesh.transform_points(on, to_plane)[:, :2]).convex_hull)
            if len(flats) == 2:
                total += float(flats[0].intersection(flats[1]).area)
    return total
