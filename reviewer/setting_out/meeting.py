"""How two parts meet when one of them is shaped or slanted: piece by piece and face by face. mm."""

from __future__ import annotations

from collections.abc import Sequence

from reviewer.geometry.body import Body, hollow, volume_of
from reviewer.geometry.convex import Face, shared
from reviewer.geometry.pieces import Flat, Patch, contact_patches
from reviewer.geometry.vectors import UNITS, Vector, bounds, nearest_axis, turned_round
from reviewer.setting_out.bodies import body_of
from reviewer.setting_out.result import Contact, Overlap
from reviewer.setting_out.solid import Solid, Surface
from reviewer.units import TOLERANCE_MM

#: How far the floor and the wall reach beyond the part that stands on them, mm.
_PAST = 10.0


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
    for unit in UNITS:
        if max(abs(way[axis] - unit[axis]) for axis in range(3)) < 1e-9:
            return unit
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
        found = contact_patches(mine.flats, theirs.flats, TOLERANCE_MM)
        return [_contact(first.name, second.name, patch) for patch in found]


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
