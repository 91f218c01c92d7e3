"""A whole body: its convex pieces, the round bores through them, and its exact figures. mm.

Round things are many-sided in the pieces and exact in the figures. A round outside is a chain of flat
chords, each with its :class:`Swell`: what the arc over it adds to volume and area. Bores are not cut
out of the pieces at all; volume, centre and areas count them, and an overlap leaves them out.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from functools import cached_property

from reviewer.geometry.convex import Convex, Face, Swell, intersection, moved_body, moved_face, prism
from reviewer.geometry.pieces import Edge, Flat, on_face, skin, true_edges
from reviewer.geometry.vectors import (
    SAME,
    UNITS,
    Vector,
    area_of,
    bounds,
    cross,
    dot,
    middle_of,
    minus,
    moved,
    unit,
)
from reviewer.records import NamedTuple

#: A bore as a many-sided prism has so many sides where the space of another part is taken from it.
_BORE_SIDES = 32
#: The centre of a flat segment of a circle lies this share of its height above the chord.
_SEGMENT_CENTRE = 0.6


class Bore(NamedTuple):
    """A round hole: from ``mouth`` (in the middle of it) ``way`` into the wood.

    ``stretches`` are the parts of it that go through wood, as mm from the mouth. The surface it enters
    through and the one it leaves through (empty: it stops in the wood) are named, with the slant of each:
    how much larger the mouth is than the round. ``walls`` are the two surfaces that its wall is half of each.
    """

    mouth: Vector
    way: Vector
    radius: float
    stretches: tuple[tuple[float, float], ...]
    entry: tuple[str, float]
    leaving: tuple[str, float]
    floor: str
    walls: tuple[str, str]

    @property
    def length(self) -> float:
        """How much of it goes through wood, mm."""
        return math.fsum(end - start for start, end in self.stretches)

    @property
    def volume(self) -> float:
        """mm³ of wood taken away."""
        return math.pi * self.radius**2 * self.length

    @property
    def middle(self) -> Vector:
        """The centre of what is taken away."""
        whole = self.length
        moment = math.fsum((end * end - start * start) / 2 for start, end in self.stretches)
        return moved(self.mouth, self.way, moment / whole) if whole else self.mouth

    def holds(self, point: Vector, slack: float) -> bool:
        """True when a point is inside the hole, or no further than ``slack`` outside of it."""
        off = minus(point, self.mouth)
        far = dot(off, self.way)
        aside = math.dist(off, (self.way[0] * far, self.way[1] * far, self.way[2] * far))
        return (
            self.stretches[0][0] - slack <= far <= self.stretches[-1][1] + slack
            and aside <= self.radius + slack
        )

    @property
    def prism(self) -> Convex:
        """The hole as a many-sided body of the same volume."""
        return round_prism(
            moved(self.mouth, self.way, self.stretches[0][0]),
            self.way,
            self.radius,
            self.stretches[-1][1] - self.stretches[0][0],
            _BORE_SIDES,
        )


def square_ways(way: Vector) -> tuple[Vector, Vector]:
    """Two unit vectors square to a way and to each other, right-handed with it."""
    least = min(range(3), key=lambda axis: (round(abs(way[axis]), 6), axis))
    right = unit(cross(UNITS[least], way))
    return right, cross(way, right)


def round_prism(middle: Vector, way: Vector, radius: float, length: float, sides: int) -> Convex:
    """A many-sided bar of the same volume as a round one."""
    right, up = square_ways(way)
    turn = 2 * math.pi / sides
    reach = radius * math.sqrt(turn / math.sin(turn))
    ring: list[Vector] = []
    for i in range(sides):
        out = moved(middle, right, reach * math.cos(i * turn))
        ring.append(moved(out, up, reach * math.sin(i * turn)))
    return prism(tuple(ring), way, length)


class Body:
    """Convex pieces that make one part. All figures are of the true shape, round things included."""

    def __init__(self, pieces: Sequence[Convex], bores: Sequence[Bore] = ()) -> None:
        self.pieces = tuple(pieces)
        self.bores = tuple(bores)
        lows = [piece.low for piece in self.pieces]
        highs = [piece.high for piece in self.pieces]
        self.low, self.high = bounds((*lows, *highs))

    def __eq__(self, other: object) -> bool:
        return isinstance(other, Body) and (self.pieces, self.bores) == (other.pieces, other.bores)

    def __hash__(self) -> int:
        return hash((self.pieces, self.bores))

    @cached_property
    def _skin(self) -> tuple[tuple[tuple[Face, ...], ...], int]:
        return skin(self.pieces)

    @property
    def skin_of_pieces(self) -> tuple[tuple[Face, ...], ...]:
        """The outside faces of each piece, without the seams between pieces; mouths of bores not cut out."""
        return self._skin[0]

    @cached_property
    def skin(self) -> tuple[Face, ...]:
        """Every outside face."""
        return tuple(face for outer in self._skin[0] for face in outer)

    @cached_property
    def edges(self) -> tuple[tuple[tuple[Edge, ...], ...], ...]:
        """The true edges of each face in :attr:`skin_of_pieces`: not those where it goes on in its plane."""
        return true_edges(self.skin_of_pieces)

    @property
    def lumps(self) -> int:
        """In how many lumps it hangs together."""
        return self._skin[1]

    @cached_property
    def _figures(self) -> tuple[float, Vector]:
        parts = [(piece.volume, piece.centroid) for piece in self.pieces]
        for face in self.skin:
            if face.swell is not None:
                area = area_of(face.ring)
                more = area * face.swell.volume
                # For a flat segment the area is 2/3 of chord by height.
                height = 1.5 * face.swell.volume
                parts.append((more, moved(middle_of(face.ring), face.normal, _SEGMENT_CENTRE * height)))
        parts += [(-bore.volume, bore.middle) for bore in self.bores]
        whole = math.fsum(volume for volume, _ in parts)
        if whole <= 0.0:
            return 0.0, self.low
        x, y, z = (math.fsum(volume * at[axis] for volume, at in parts) / whole for axis in range(3))
        return whole, (x, y, z)

    @cached_property
    def flats(self) -> tuple[Flat, ...]:
        """The flat faces of the skin with their bounds: what another part can lie against."""
        return tuple(Flat(face, *bounds(face.ring)) for face in self.skin if face.swell is None)

    def moved(self, way: Vector) -> Body:
        """The same body somewhere else; what is known of this one is not worked out again."""
        made = Body(
            [moved_body(piece, way) for piece in self.pieces],
            [bore._replace(mouth=moved(bore.mouth, way)) for bore in self.bores],
        )
        if len(self.pieces) > 1:
            outer = tuple(tuple(moved_face(face, way) for face in faces) for faces in self.skin_of_pieces)
            made.__dict__["_skin"] = (outer, self.lumps)
        volume, centre = self._figures
        made.__dict__["_figures"] = (volume, moved(centre, way))
        made.__dict__["areas"] = self.areas
        return made

    @property
    def volume(self) -> float:
        """mm³."""
        return self._figures[0]

    @property
    def centroid(self) -> Vector:
        """The centre of mass while the wood is even."""
        return self._figures[1]

    @cached_property
    def areas(self) -> dict[str, float]:
        """The outside by kind of surface, mm²; walls and floors of bores included."""
        found: dict[str, float] = {}

        def add(surface: str, area: float) -> None:
            found[surface] = found.get(surface, 0.0) + area

        for face in self.skin:
            area = area_of(face.ring)
            add(face.surface, area * (face.swell.area if face.swell else 1.0))
            if face.swell is not None:
                for surface, more in self._segments(face, face.swell):
                    add(surface, more)
        for bore in self.bores:
            round_area = math.pi * bore.radius**2
            add(bore.entry[0], -round_area * bore.entry[1])
            if bore.leaving[0]:
                add(bore.leaving[0], -round_area * bore.leaving[1])
            else:
                add(bore.floor, round_area)
            for wall in bore.walls:
                add(wall, math.pi * bore.radius * bore.length)
        return {surface: found[surface] for surface in sorted(found)}

    def _segments(self, face: Face, swell: Swell) -> list[tuple[str, float]]:
        """What the arc over a chord adds to the faces at both ends of the strip."""
        across = unit(cross(face.normal, swell.along))
        found = []
        for i, corner in enumerate(face.ring):
            edge = minus(corner, face.ring[i - 1])
            chord = abs(dot(edge, across))
            if chord <= SAME or chord < 0.01 * math.hypot(*edge):
                continue
            middle = moved(face.ring[i - 1], edge, 0.5)
            end = next((other for other in self.skin if other.swell is None and on_face(other, middle)), None)
            if end is not None:
                slant = abs(dot(end.normal, swell.along))
                if slant > 0.01:
                    found.append((end.surface, swell.segment * chord * chord / slant))
        return found


def volume_of(body: Convex, bores: Sequence[Bore]) -> float:
    """The volume of a convex bit of wood, mm³, less what bores take out of it."""
    taken = 0.0
    for bore in bores:
        hollow = intersection(body, bore.prism)
        if hollow is not None:
            taken += hollow.volume
    return max(0.0, body.volume - taken)


def hollow(body: Convex, bores: Sequence[Bore], slack: float) -> bool:
    """True when a convex bit of space lies within one bore, and so in no wood."""
    return any(all(bore.holds(point, slack) for face in body.faces for point in face.ring) for bore in bores)


def stretches_through(pieces: Sequence[Convex], start: Vector, way: Vector) -> list[tuple[float, float]]:
    """Where a line goes through wood, as mm from its start, in order; stretches that meet made one."""
    found: list[tuple[float, float]] = []
    for piece in pieces:
        near, far = -math.inf, math.inf
        for face in piece.faces:
            turn = dot(face.normal, way)
            apart = face.offset - dot(face.normal, start)
            if abs(turn) < 1e-12:
                if apart < -SAME:
                    near, far = 1.0, 0.0
                    break
            elif turn > 0:
                far = min(far, apart / turn)
            else:
                near = max(near, apart / turn)
        if far > near + SAME:
            found.append((near, far))
    joined: list[tuple[float, float]] = []
    for near, far in sorted(found):
        if joined and near <= joined[-1][1] + 10 * SAME:
            joined[-1] = (joined[-1][0], max(far, joined[-1][1]))
        else:
            joined.append((near, far))
    return joined


def arc_swell(radius: float, turn: float, along: Vector) -> Swell:
    """What an arc of ``radius`` mm over ``turn`` radians adds to its chord, for a strip of even width."""
    chord = 2 * radius * math.sin(turn / 2)
    segment = radius * radius * (turn - math.sin(turn)) / 2
    return Swell(segment / chord, radius * turn / chord, along, segment / chord**2)


def cone_swell(first: float, last: float, turn: float, along: Vector, length: float) -> Swell:
    """As :func:`arc_swell` for a bar that goes from one radius to another over ``length`` mm.

    From ∫r² over a frustum, h (r₁² + r₁r₂ + r₂²) / 3, against the flat's ∫r, h (r₁ + r₂) / 2; and the slant
    of the cone's side against that of the flat over its chord.
    """
    even = (2 / 3) * (first * first + first * last + last * last) / (first + last)
    plain = arc_swell(even, turn, along)
    true = math.hypot(length, first - last)
    flat = math.hypot(length, (first - last) * math.cos(turn / 2))
    return Swell(plain.volume * length / flat, plain.area * true / flat, along, plain.segment)
