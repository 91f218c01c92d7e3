"""A convex body by its flat faces: made, clipped by a plane, grown, and measured. All lengths in mm.

Every face keeps what made it (``surface``), so that after any number of cuts it is still known which
faces were there from the start.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from functools import cached_property
from itertools import pairwise

from reviewer.geometry.vectors import (
    SAME,
    Ring,
    Vector,
    area_of,
    between,
    bounds,
    cross,
    dot,
    minus,
    moved,
    times,
    turned_round,
    unit,
)
from reviewer.records import NamedTuple


class Swell(NamedTuple):
    """A flat face that stands for a strip of a round one: how much more there is than the flat shows.

    ``volume`` is mm³ and ``area`` mm² of the true body for each mm² of the flat. ``along`` is the way of
    the strip; a segment of the circle over a chord c has the area ``segment`` · c².
    """

    volume: float
    area: float
    along: Vector
    segment: float


class Face(NamedTuple):
    """One flat face. The body lies where ``normal · x <= offset``; ``normal`` is a unit vector."""

    ring: Ring
    normal: Vector
    offset: float
    surface: str
    swell: Swell | None = None


class Convex:
    """A convex body. ``low`` and ``high`` are its bounds."""

    def __init__(self, faces: Sequence[Face], known: tuple[Vector, Vector] | None = None) -> None:
        self.faces = tuple(faces)
        self.low, self.high = known or bounds(point for face in self.faces for point in face.ring)

    def __eq__(self, other: object) -> bool:
        return isinstance(other, Convex) and self.faces == other.faces

    def __hash__(self) -> int:
        return hash(self.faces)

    @cached_property
    def _figures(self) -> tuple[float, Vector]:
        origin = self.low
        whole = 0.0
        at = [0.0, 0.0, 0.0]
        for face in self.faces:
            a = minus(face.ring[0], origin)
            for one, two in pairwise(face.ring[1:]):
                b, c = minus(one, origin), minus(two, origin)
                share = dot(a, cross(b, c)) / 6
                whole += share
                for axis in range(3):
                    at[axis] += share * (a[axis] + b[axis] + c[axis]) / 4
        if whole <= 0.0:
            return 0.0, origin
        return whole, (origin[0] + at[0] / whole, origin[1] + at[1] / whole, origin[2] + at[2] / whole)

    @property
    def volume(self) -> float:
        """mm³, of the flat-faced body."""
        return self._figures[0]

    @property
    def centroid(self) -> Vector:
        """Its centre of mass while it is even."""
        return self._figures[1]

    def areas(self) -> tuple[float, ...]:
        """The area of each face, mm²."""
        return tuple(area_of(face.ring) for face in self.faces)

    def reach(self, way: Vector) -> tuple[float, float]:
        """The lowest and the highest point along a way, as multiples of it."""
        places = [dot(point, way) for face in self.faces for point in face.ring]
        return min(places), max(places)

    def holds(self, point: Vector, slack: float = SAME) -> bool:
        """True when a point is inside, or no further than ``slack`` outside of any face."""
        return all(dot(face.normal, point) <= face.offset + slack for face in self.faces)


def oriented_box(
    corner: Vector,
    axes: tuple[Vector, Vector, Vector],
    extents: Sequence[float],
    surfaces: Sequence[str] = ("", "", ""),
) -> Convex:
    """A box from its low corner along three right-handed unit vectors. ``surfaces`` are by axis."""
    a, b, c = (
        (axis[0] * size, axis[1] * size, axis[2] * size) for axis, size in zip(axes, extents, strict=True)
    )
    faces = []
    for number, (out, one, two) in enumerate(((a, b, c), (b, c, a), (c, a, b))):
        normal = axes[number]
        ring = (corner, moved(corner, one), moved(moved(corner, one), two), moved(corner, two))
        high = tuple(moved(point, out) for point in ring)
        faces.append(Face(high, normal, dot(normal, high[0]), surfaces[number]))
        back = turned_round(normal)
        faces.append(Face(ring[::-1], back, dot(back, corner), surfaces[number]))
    return Convex(faces)


def box(low: Vector, high: Vector, surfaces: Sequence[str] = ("", "", "")) -> Convex:
    """A box whose faces look along the axes of space."""
    axes = ((1.0, 0.0, 0.0), (0.0, 1.0, 0.0), (0.0, 0.0, 1.0))
    return oriented_box(low, axes, minus(high, low), surfaces)


def prism(
    outline: Ring,
    way: Vector,
    length: float,
    surfaces: tuple[str, Sequence[str]] = ("", ()),
    swells: Sequence[Swell | None] = (),
) -> Convex:
    """A body of one section. ``outline`` runs anticlockwise seen from where ``way`` (one long) points to.

    ``surfaces`` names the ends, and then the side that begins at each corner.
    """
    count = len(outline)
    top = tuple(moved(point, way, length) for point in outline)
    faces = [
        Face(top, way, dot(way, top[0]), surfaces[0]),
        Face(outline[::-1], turned_round(way), -dot(way, outline[0]), surfaces[0]),
    ]
    for i, point in enumerate(outline):
        after = (i + 1) % count
        normal = unit(cross(minus(outline[after], point), way))
        ring = (point, outline[after], top[after], top[i])
        surface = surfaces[1][i] if surfaces[1] else ""
        faces.append(Face(ring, normal, dot(normal, point), surface, swells[i] if swells else None))
    return Convex(faces)


def clip(
    body: Convex, normal: Vector, offset: float, surface: str = "", swell: Swell | None = None
) -> Convex | None:
    """What of a body lies behind a plane (``normal · x <= offset``).

    The same body when nothing is taken, None when nothing is left. The new face gets ``surface``.
    """
    nx, ny, nz = normal
    rows = [[nx * x + ny * y + nz * z - offset for x, y, z in face.ring] for face in body.faces]
    if max(map(max, rows)) <= SAME:
        return body
    if min(map(min, rows)) >= -SAME:
        return None
    faces: list[Face] = []
    rim: dict[Vector, None] = {}
    for face, row in zip(body.faces, rows, strict=True):
        if max(row) <= SAME:
            faces.append(face)
            for point, height in zip(face.ring, row, strict=True):
                if height >= -SAME:
                    rim[point] = None
            continue
        if min(row) >= -SAME:
            continue
        ring: list[Vector] = []
        for i, point in enumerate(face.ring):
            before, here = row[i - 1], row[i]
            if (before < -SAME and here > SAME) or (before > SAME and here < -SAME):
                through = between(face.ring[i - 1], before, point, here)
                ring.append(through)
                rim[through] = None
            if here <= SAME:
                ring.append(point)
                if here >= -SAME:
                    rim[point] = None
        if len(ring) > 2:
            faces.append(Face(tuple(ring), face.normal, face.offset, face.surface, face.swell))
    cap = _round_about(list(rim), normal)
    if len(cap) > 2:
        faces.append(Face(cap, normal, offset, surface, swell))
    return Convex(faces) if len(faces) > 3 else None


def _round_about(points: list[Vector], normal: Vector) -> Ring:
    """The corners of a flat convex outline put in order round its normal; those that coincide told once."""
    if len(points) < 3:
        return ()
    count = len(points)
    middle = (
        sum(point[0] for point in points) / count,
        sum(point[1] for point in points) / count,
        sum(point[2] for point in points) / count,
    )
    far = max(points, key=lambda point: math.dist(point, middle))
    if math.dist(far, middle) <= SAME:
        return ()
    right = unit(minus(far, middle))
    up = cross(normal, right)

    def angle(point: Vector) -> float:
        way = minus(point, middle)
        return math.atan2(dot(way, up), dot(way, right))

    ring: list[Vector] = []
    for point in sorted(points, key=angle):
        if not ring or math.dist(point, ring[-1]) > SAME:
            ring.append(point)
    if len(ring) > 1 and math.dist(ring[0], ring[-1]) <= SAME:
        ring.pop()
    return tuple(ring)


def intersection(one: Convex, two: Convex, inward: float = 0.0) -> Convex | None:
    """What two bodies share; ``inward`` mm are first taken off every face of the second."""
    if any(
        one.low[axis] >= two.high[axis] - inward - SAME or two.low[axis] + inward >= one.high[axis] - SAME
        for axis in range(3)
    ):
        return None
    left = one
    for face in two.faces:
        kept = clip(left, face.normal, face.offset - inward)
        if kept is None:
            return None
        left = kept
    return left


def grown(body: Convex, by: float) -> Convex:
    """A body with every face moved out by ``by`` mm; corners stay sharp."""
    if by <= 0:
        return body
    room = 10 * by + 1  # more than a sharp corner can move, for all but needles
    low = (body.low[0] - room, body.low[1] - room, body.low[2] - room)
    high = (body.high[0] + room, body.high[1] + room, body.high[2] + room)
    made: Convex | None = box(low, high)
    for face in body.faces:
        assert made is not None  # the body itself lies behind all of these planes
        made = clip(made, face.normal, face.offset + by, face.surface)
    assert made is not None
    return made


def moved_face(face: Face, way: Vector) -> Face:
    """A face somewhere else, turned the same."""
    a, b, c = way
    ring = tuple([(x + a, y + b, z + c) for x, y, z in face.ring])
    return Face(ring, face.normal, face.offset + dot(face.normal, way), face.surface, face.swell)


def moved_body(body: Convex, way: Vector) -> Convex:
    """A body somewhere else, turned the same."""
    faces = [moved_face(face, way) for face in body.faces]
    return Convex(faces, (moved(body.low, way), moved(body.high, way)))


def shared(ones: Iterable[Convex], twos: Sequence[Convex], deeper: float) -> list[Convex]:
    """Every bit of space that two bodies of several pieces share, where they share more than a touch."""
    found = []
    for one in ones:
        for two in twos:
            both = intersection(one, two)
            if both is not None and intersection(both, two, deeper) is not None:
                found.append(both)
    return found


#: Halvings of a distance until it is known to a hair.
_HALVINGS = 26


def way_out(ones: Sequence[Convex], twos: Sequence[Convex], way: Vector, most: float) -> float:
    """How far one body has to move along a way until none of it is left in another, mm, up to ``most``.

    Pieces that share space now are followed till they part; two convex ones never meet again.
    """
    furthest = 0.0
    for one in ones:
        for two in twos:
            if intersection(one, two) is None:
                continue
            if intersection(moved_body(one, times(way, furthest)), two) is None:
                continue
            inside, outside = furthest, most
            for _ in range(_HALVINGS):
                middle = (inside + outside) / 2
                if intersection(moved_body(one, times(way, middle)), two) is None:
                    outside = middle
                else:
                    inside = middle
            furthest = outside
    return furthest
