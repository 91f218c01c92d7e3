"""How two parts meet when one of them is shaped or slanted: piece by piece and face by face. mm."""

from __future__ import annotations

import math
from collections.abc import Sequence

from reviewer.geometry.body import Body, Bore, hollow, volume_of
from reviewer.geometry.convex import Face, shared
from reviewer.geometry.pieces import Flat, Patch, contact_patches
from reviewer.geometry.vectors import (
    UNITS,
    Vector,
    area_of,
    bounds,
    clipped_ring,
    dot,
    minus,
    moved,
    nearest_axis,
    turned_round,
    unit,
)
from reviewer.setting_out.bodies import body_of
from reviewer.setting_out.result import Contact, Overlap
from reviewer.setting_out.solid import Solid, Surface
from reviewer.units import TOLERANCE_MM

#: How far the floor and the wall reach beyond the part that stands on them, mm.
_PAST = 10.0
#: An end stands square on the floor of a bore when it looks along it so nearly (as a cosine).
_STRAIGHT = 0.9999


def _surface(name: str) -> Surface:
    return "end" if name == "end" else "edge" if name == "edge" else "face"


def _contact(one: str, two: str, patch: Patch) -> Contact:
    """A patch as a contact; its face is that of ``one``."""
    normal = patch.face.normal
    axis = nearest_axis(normal)
    mine, theirs = _surface(patch.face.surface), _surface(patch.other_surface)
    if normal[axis] < 0:
        one, two, mine, theirs, normal = two, one, theirs, mine, turned_round(normal)
    corners = tuple(dict.fromkeys(corner for ring in patch.rings for corner in ring))
    return Contact(one, two, axis, patch.low, patch.high, patch.area, mine, theirs, _plain(normal), corners)


def _plain(way: Vector) -> Vector:
    """A way without minus naughts and last bits where it is an axis."""
    for plain in UNITS:
        if max(abs(way[axis] - plain[axis]) for axis in range(3)) < 1e-9:
            return plain
    return (way[0] + 0.0, way[1] + 0.0, way[2] + 0.0)


class Meeter:
    """Compares pairs of some solids; each square one is made a body once, when first asked for."""

    def __init__(self, solids: Sequence[Solid]) -> None:
        self._solids = solids
        self._bodies: dict[int, Body] = {}

    def _body(self, number: int) -> Body:
        if number not in self._bodies:
            self._bodies[number] = body_of(self._solids[number])
        return self._bodies[number]

    def meet(self, one: int, two: int) -> list[Contact | Overlap]:
        """The space that both claim, or else the faces where they touch: none, one or several."""
        first, second = self._solids[one], self._solids[two]
        mine, theirs = self._body(one), self._body(two)
        both = shared(mine.pieces, theirs.pieces, TOLERANCE_MM)
        bores = (*mine.bores, *theirs.bores)
        if bores:
            both = [bit for bit in both if not hollow(bit, bores, TOLERANCE_MM)]
        if both:
            low, high = bounds(point for bit in both for point in (bit.low, bit.high))
            names = sorted((first.name, second.name))
            volume = sum(volume_of(bit, bores) for bit in both)
            return [Overlap(names[0], names[1], low, high, volume)]
        patches = contact_patches(mine.flats, theirs.flats, TOLERANCE_MM)
        found: list[Contact | Overlap] = [_contact(first.name, second.name, patch) for patch in patches]
        for bored, bar, inside, filling in ((first, second, mine, theirs), (second, first, theirs, mine)):
            for bore in inside.bores:
                found += _in_bore(bored.name, bar.name, bore, filling)
        return found


def _in_bore(bored: str, bar: str, bore: Bore, filling: Body) -> list[Contact]:
    """Where a round bar fills a bore: all round its wall, and on its floor.

    The wall looks every way at once. Its contact gets the way most nearly up, since the bar rests in it.
    """
    start, end = bore.stretches[0][0], bore.stretches[-1][1]
    rings, area, floor = [], 0.0, []
    surface = "face"
    for face in filling.skin:
        far = [dot(minus(point, bore.mouth), bore.way) for point in face.ring]
        aside = [_aside(point, bore) for point in face.ring]
        if max(aside) > bore.radius + TOLERANCE_MM:
            continue
        if face.swell is not None and min(aside) >= bore.radius - TOLERANCE_MM:
            place = dot(bore.mouth, bore.way)
            ring = clipped_ring(face.ring, bore.way, place + end)
            ring = clipped_ring(ring, turned_round(bore.way), -place - start) if ring else ()
            if ring:
                rings.append(ring)
                area += area_of(ring) * face.swell.area
                surface = face.surface
        elif (
            not bore.leaving[0]
            and dot(face.normal, bore.way) > _STRAIGHT
            and max(abs(place - end) for place in far) <= TOLERANCE_MM
        ):
            floor.append(Patch(face.ring, face, bore.floor))
    found = [_contact(bar, bored, patch) for patch in floor]
    if rings:
        up = max(UNITS[::-1], key=lambda way: round(1 - abs(dot(way, bore.way)), 6))
        normal = unit(moved(up, bore.way, -dot(up, bore.way)))
        low, high = bounds(point for ring in rings for point in ring)
        corners = tuple(dict.fromkeys(corner for ring in rings for corner in ring))
        names, surfaces = (bored, bar), (_surface(bore.walls[0]), _surface(surface))
        found.append(
            Contact(*names, nearest_axis(normal), low, high, area, *surfaces, _plain(normal), corners)
        )
    return found


def _aside(point: Vector, bore: Bore) -> float:
    """How far a point is from the middle line of a bore, mm."""
    off = minus(point, bore.mouth)
    return math.dist(off, moved((0.0, 0.0, 0.0), bore.way, dot(off, bore.way)))


def gap_within_bounds(one: Solid, two: Solid) -> Vector:
    """How far two solids are apart on the axis that closes the gap soonest, mm; naughts where they touch.

    Of each two convex pieces the face that parts them furthest is taken: exact where a face looks at the
    other piece, a little too little where only edges do.
    """
    best: Vector | None = None
    for mine in body_of(one).pieces:
        for theirs in body_of(two).pieces:
            apart, normal = max(
                (first_low - face.offset, face.normal)
                for piece, other in ((mine, theirs), (theirs, mine))
                for face in piece.faces
                for first_low in (other.reach(face.normal)[0],)
            )
            if apart <= TOLERANCE_MM:
                return (0.0, 0.0, 0.0)
            axis = nearest_axis(normal)
            if best is None or apart / abs(normal[axis]) < max(best):
                gap = [0.0, 0.0, 0.0]
                gap[axis] = apart / abs(normal[axis])
                best = (gap[0], gap[1], gap[2])
    return best or (0.0, 0.0, 0.0)


def standing_faces(
    solid: Solid, ground: str, axis: int, place: float, on_low_side: bool
) -> tuple[Contact, ...]:
    """The faces of a shaped part that lie in the floor or the wall, those that hang together as one."""
    body = body_of(solid)
    low, high = list(body.low), list(body.high)
    for each in range(3):
        low[each], high[each] = low[each] - _PAST, high[each] + _PAST
    one, two = (axis + 1) % 3, (axis + 2) % 3

    def corner(at_one: float, at_two: float) -> Vector:
        at = [place, place, place]
        at[one], at[two] = at_one, at_two
        return (at[0], at[1], at[2])

    ring = (
        corner(low[one], low[two]),
        corner(high[one], low[two]),
        corner(high[one], high[two]),
        corner(low[one], high[two]),
    )
    normal = UNITS[axis]
    plane = Face(ring, normal, place, "face")
    if not on_low_side:
        plane = Face(ring[::-1], turned_round(normal), -place, "face")
    found = contact_patches(body.flats, [Flat(plane, *bounds(ring))], TOLERANCE_MM)
    return tuple(_contact(solid.name, ground, patch) for patch in found)
