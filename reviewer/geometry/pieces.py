"""A body made of several convex pieces: wood taken away from it, and the skin that is left. mm."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from itertools import pairwise

from reviewer.geometry.convex import Convex, Face, clip, intersection
from reviewer.geometry.vectors import (
    SAME,
    Ring,
    Vector,
    area_of,
    bounds,
    cross,
    dot,
    minus,
    moved,
    turned_round,
    within,
    without,
)
from reviewer.records import NamedTuple

#: Two ways are the same, or opposed, when their cosine is within this of one.
_PARALLEL = 1e-9
#: Bits of skin smaller than this are rounding, mm².
_SPECK_MM2 = 1e-5
#: Two pieces hang together when they share more than this, mm².
_HOLDS_MM2 = 1.0


def cut_away(
    piece: Convex, tool: Convex, surface_of: Callable[[Vector], str], deeper: float = 0.0
) -> list[Convex]:
    """What is left of a piece when a tool has taken its own space out of it, in convex bits.

    ``surface_of`` names a new face by the way it looks. The piece itself comes back untouched when they
    share no more than a skin ``deeper`` mm thick. At most one bit for each face of the tool.
    """
    if intersection(piece, tool, deeper) is None:
        return [piece]
    bits: list[Convex] = []
    rest = piece
    for face in tool.faces:
        back = turned_round(face.normal)
        inside = clip(rest, face.normal, face.offset)
        if inside is None:
            return [piece]
        if inside is not rest:
            outside = clip(rest, back, -face.offset, surface_of(back))
            if outside is not None:
                bits.append(outside)
        rest = inside
    return bits


def skin(pieces: Sequence[Convex]) -> tuple[tuple[tuple[Face, ...], ...], int]:
    """The outer faces of each piece, without the seams between them; and in how many lumps they hang.

    A face that a seam covers in part comes back as several convex bits.
    """
    if len(pieces) == 1:
        return (pieces[0].faces,), 1
    found: list[tuple[Face, ...]] = []
    leads = list(range(len(pieces)))

    def lead(number: int) -> int:
        while leads[number] != number:
            leads[number] = leads[leads[number]]
            number = leads[number]
        return number

    touching = [
        [
            two
            for two, other in enumerate(pieces)
            if two != one
            and all(
                piece.low[axis] <= other.high[axis] + SAME and other.low[axis] <= piece.high[axis] + SAME
                for axis in range(3)
            )
        ]
        for one, piece in enumerate(pieces)
    ]
    for one, piece in enumerate(pieces):
        outer: list[Face] = []
        for face in piece.faces:
            rings: list[Ring] = [face.ring]
            for two in touching[one]:
                for other in pieces[two].faces:
                    if not _opposed(face, other):
                        continue
                    left: list[Ring] = []
                    for ring in rings:
                        bits, taken = without(ring, other.normal, other.ring)
                        left += bits
                        if taken and area_of(taken) > _HOLDS_MM2:
                            leads[lead(one)] = lead(two)
                    rings = left
            outer += [face._replace(ring=ring) for ring in rings if area_of(ring) > _SPECK_MM2]
        found.append(tuple(outer))
    return tuple(found), sum(1 for number in range(len(pieces)) if lead(number) == number)


def _opposed(face: Face, other: Face) -> bool:
    return abs(face.offset + other.offset) <= SAME and dot(face.normal, other.normal) <= _PARALLEL - 1.0


def on_face(face: Face, point: Vector, slack: float = SAME) -> bool:
    """True when a point lies on a face or its rim, or no further than ``slack`` mm off."""
    if abs(dot(face.normal, point) - face.offset) > slack:
        return False
    for i, corner in enumerate(face.ring):
        out = cross(minus(corner, face.ring[i - 1]), face.normal)
        if dot(out, minus(point, corner)) > slack * math.hypot(*out):
            return False
    return True


class Edge(NamedTuple):
    """A side of a face. ``beyond``: which way the next flat of the same round looks; None: a true edge."""

    start: Vector
    end: Vector
    beyond: Vector | None


#: Beside an edge it is tried so far out whether the face goes on, mm.
_BESIDE = 0.01


def true_edges(outer: Sequence[Sequence[Face]]) -> tuple[tuple[tuple[Edge, ...], ...], ...]:
    """The sides of every face that are edges of the whole body, tried at the middle of each step."""
    planes: dict[tuple[float, ...], list[Face]] = {}
    rounds: list[Face] = []
    for faces in outer:
        for face in faces:
            planes.setdefault(_plane(face), []).append(face)
            if face.swell is not None:
                rounds.append(face)

    def edges(face: Face) -> tuple[Edge, ...]:
        found = []
        alike = [other for other in planes[_plane(face)] if other is not face]
        for i, last in enumerate(face.ring):
            for start, end in pairwise(_steps(face.ring[i - 1], last, alike)):
                way = minus(end, start)
                middle = moved(start, way, 0.5)
                out = cross(way, face.normal)
                beside = moved(middle, out, _BESIDE / math.hypot(*out))
                if any(on_face(other, beside) for other in alike):
                    continue
                beyond = None
                if face.swell is not None:
                    beyond = next(
                        (other.normal for other in rounds if other is not face and on_face(other, middle)),
                        None,
                    )
                found.append(Edge(start, end, beyond))
        return tuple(found)

    return tuple(tuple(edges(face) for face in faces) for faces in outer)


def _steps(start: Vector, end: Vector, others: Sequence[Face]) -> list[Vector]:
    """A side of a face in the steps in which faces beside it begin and end."""
    way = minus(end, start)
    size = math.hypot(*way)
    places = {0.0: start, 1.0: end}
    for other in others:
        for corner in other.ring:
            share = dot(minus(corner, start), way) / (size * size)
            aside = math.dist(corner, moved(start, way, share))
            if aside <= SAME and all(abs(share - known) * size > SAME for known in places):
                places[share] = corner
    return [places[share] for share in sorted(places) if -SAME < share < 1 + SAME]


def _plane(face: Face) -> tuple[float, ...]:
    return (*(round(part, 6) + 0.0 for part in face.normal), round(face.offset, 3) + 0.0)


class Flat(NamedTuple):
    """A flat face and its bounds."""

    face: Face
    low: Vector
    high: Vector


#: Faces turned this far from each other (as a cosine) can't lie flat together over any useful width.
_FLAT = 0.999


def touching(face: Face, other: Face, tolerance: float) -> Ring:
    """The outline over which two faces lie against each other; empty when they do not.

    They do where they look at each other and are nowhere further apart than ``tolerance`` mm.
    """
    if dot(face.normal, other.normal) > -_FLAT:
        return ()
    ring = within(face.ring, other.normal, other.ring)
    if not ring:
        return ()
    if any(abs(dot(other.normal, point) - other.offset) > tolerance for point in ring):
        return ()
    return ring


class Patch:
    """Flat bits that lie side by side in one plane, with what their faces are on either side."""

    def __init__(self, ring: Ring, face: Face, other_surface: str) -> None:
        self.rings = [ring]
        self.face = face
        self.other_surface = other_surface
        self.low, self.high = bounds(ring)

    @property
    def area(self) -> float:
        """mm²."""
        return sum(map(area_of, self.rings))

    def wider_than(self, tolerance: float) -> bool:
        """False for a patch that is no more than a line."""
        longest = max(self.high[axis] - self.low[axis] for axis in range(3))
        return longest > tolerance and self.area > tolerance * longest

    def meets(self, other: Patch, tolerance: float) -> bool:
        """True when another patch goes on where this one ends, in the same plane and between like faces."""
        return (
            self.face.surface == other.face.surface
            and self.other_surface == other.other_surface
            and dot(self.face.normal, other.face.normal) > _FLAT
            and all(
                self.low[axis] <= other.high[axis] + tolerance
                and other.low[axis] <= self.high[axis] + tolerance
                for axis in range(3)
            )
        )

    def take(self, other: Patch) -> None:
        """Make another patch part of this one."""
        self.rings += other.rings
        self.low, self.high = bounds((self.low, self.high, other.low, other.high))


def joined_patches(found: Sequence[Patch], tolerance: float) -> list[Patch]:
    """Patches that go on in each other made one, and mere lines left out; from the left, front and bottom."""
    whole: list[Patch] = []
    for patch in found:
        for other in [each for each in whole if each.meets(patch, tolerance)]:
            whole.remove(other)
            other.take(patch)
            patch = other
        whole.append(patch)
    wide = [patch for patch in whole if patch.wider_than(tolerance)]
    return sorted(wide, key=lambda patch: tuple(round(place, 3) for place in (*patch.low, *patch.high)))


def contact_patches(ones: Sequence[Flat], twos: Sequence[Flat], tolerance: float) -> list[Patch]:
    """Where two skins lie against each other; ``face`` of each patch is the first skin's."""
    found = []
    for face, low, high in ones:
        for other, other_low, other_high in twos:
            if (
                low[0] <= other_high[0] + tolerance
                and other_low[0] <= high[0] + tolerance
                and low[1] <= other_high[1] + tolerance
                and other_low[1] <= high[1] + tolerance
                and low[2] <= other_high[2] + tolerance
                and other_low[2] <= high[2] + tolerance
            ):
                ring = touching(face, other, tolerance)
                if ring:
                    found.append(Patch(ring, face, other.surface))
    return joined_patches(found, tolerance)
