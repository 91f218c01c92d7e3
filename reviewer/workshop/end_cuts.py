"""What is left of a board where it comes to bear at its ends: tenons, laps, notches and pockets for screws.

The whole force on a support passes through the section there. An end that is notched on the side that the
support is on splits from the corner of the notch long before it shears off, so it counts for less still.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Sequence

from reviewer.mechanics.eurocode import notch_share
from reviewer.mechanics.pocket_screws import POCKET_RADIUS, SLANT_DEGREES, PocketPath
from reviewer.mechanics.strength import compression_notch_depth, tension_notch_share
from reviewer.model.plan import Axis
from reviewer.records import NamedTuple
from reviewer.setting_out.solid import Solid
from reviewer.units import TOLERANCE_MM
from reviewer.workshop.bearing import Bearing
from reviewer.workshop.driving import Driven, patch_of
from reviewer.workshop.fastener_rows import row_ends
from reviewer.workshop.net_sections import NetSection, Room

#: A section that keeps less than this share of its area is as good as cut off.
_LEAST_SHARE = 0.01
#: Cuts with a sharp corner, from which wood splits. A taper or a curve runs out gently.
_SPLITS = ("notch", "rabbet", "dado", "groove", "half lap", "tenon", "bridle")


class EndCut(NamedTuple):
    """What a cut leaves of a member at one of its ends (0 low, 1 high). Lengths in mm.

    ``area`` mm² is what bears shear, ``depth`` the whole height of the member, ``left`` what a notch on the
    side of the support leaves of it (all of it where there is none). ``corner`` is how far from the line of
    the reaction the cut ends, ``why`` names it for a person.
    """

    end: int
    at: float
    area: float
    depth: float
    left: float
    corner: float
    why: str

    @property
    def notched(self) -> bool:
        """True where the end may split along the grain from the corner of the cut."""
        return self.left < self.depth - TOLERANCE_MM

    def scaled(self, times_height: float, times_length: float) -> EndCut:
        """The same cut in a member so many times as high and as long. A notch stays as deep as it is."""
        left = self.depth * times_height - (self.depth - self.left)
        return self._replace(
            at=self.at * times_length,
            area=self.area * (left / self.left),
            depth=self.depth * times_height,
            left=left,
        )

    def share(self, by_class: bool) -> float:
        """How much of the shear strength of what is left such an end keeps, 0 to 1.

        ``by_class``: as EN 1995-1-1 has it, for strength classes; else as the NDS has it.
        """
        if not self.notched:
            return 1.0
        if by_class:
            return notch_share(self.depth, self.left, self.corner)
        return tension_notch_share(self.depth, self.left)


def end_cuts(
    solid: Solid,
    axis: int,
    bearings: Sequence[Bearing],
    places: Sequence[float],
    sections: Iterable[NetSection],
    pockets: Iterable[Driven],
) -> tuple[EndCut, ...]:
    """The cuts at the ends of a member that lie over its outer supports.

    ``sections`` are all its stretches that are cut, those at its ends included, and ``places`` the lines of
    its reactions, mm from its low end. ``pockets`` are the pocket screws that hold it.
    """
    sections, pockets = tuple(sections), tuple(pockets)
    length, height = solid.extent(axis), solid.extent(Axis.UP)
    whole = solid.extent(3 - axis - Axis.UP) * height
    found = []
    for end in (0, 1):
        cut = next((each for each in sections[:: 1 if end == 0 else -1] if _reaches(each, end, length)), None)
        bored = _bored_at(solid, axis, end, pockets)
        if cut is None and not bored:
            continue
        inner = length if cut is None else (cut.end if end == 0 else length - cut.start)
        bearing = _outer(bearings, end, length, inner)
        if bearing is None:
            continue
        edge = bearing.end if end == 0 else length - bearing.start
        line = min(place if end == 0 else length - place for place in places)
        area, left, corner, whys = whole, height, 0.0, []
        if cut is not None:
            area, corner = cut.area, inner - line
            whys.append(cut.why)
            sharp = any(word in _SPLITS for word in cut.why.split(" and "))
            if sharp and cut.below > TOLERANCE_MM and bearing.held.how != "hangs":
                left = height - cut.below
            elif cut.above > TOLERANCE_MM and cut.below <= TOLERANCE_MM:
                rest = height - cut.above
                area *= compression_notch_depth(height, rest, inner - edge) / rest
        if bored:
            area -= math.fsum(_taken(each) for each in bored)
            whys.append("pockets for screws")
        at = min(edge, length)
        found.append(
            EndCut(
                end,
                at if end == 0 else length - at,
                max(area, _LEAST_SHARE * whole),
                height,
                left,
                corner,
                " and ".join(each for each in whys if each),
            )
        )
    return tuple(found)


def _reaches(cut: NetSection, end: int, length: float) -> bool:
    """True for a stretch at an end that is not cut all along."""
    low, high = cut.start <= TOLERANCE_MM, cut.end >= length - TOLERANCE_MM
    return (low if end == 0 else high) and not (low and high)


def _outer(bearings: Sequence[Bearing], end: int, length: float, inner: float) -> Bearing | None:
    """The bearing nearest to an end; None where the cut does not reach it."""
    near = min(bearings, key=lambda each: each.start if end == 0 else length - each.end)
    first = near.start if end == 0 else length - near.end
    return near if first <= inner + TOLERANCE_MM else None


def _bored_at(solid: Solid, axis: int, end: int, pockets: Iterable[Driven]) -> list[Driven]:
    """The pockets that leave through an end of a member."""
    found = []
    for each in pockets:
        patch = patch_of(each.joint)
        if each.axis != axis or each.pocket is None or patch is None:
            continue
        face = solid.low[axis] if end == 0 else solid.high[axis]
        if patch.low[axis] - TOLERANCE_MM <= face <= patch.high[axis] + TOLERANCE_MM:
            found.append(each)
    return found


def _depth_at_shoulder(driven: Driven, pocket: PocketPath) -> float:
    """How deep from its face a pocket reaches where its screw's head sits, mm."""
    slant = math.radians(SLANT_DEGREES)
    return driven.pocket_stock / 2 - pocket.grip * math.sin(slant) + POCKET_RADIUS * math.cos(slant)


def _taken(driven: Driven) -> float:
    """The area that all pockets of a joint take out of the section at their deepest, mm²."""
    assert driven.pocket is not None
    slant = math.radians(SLANT_DEGREES)
    deep = min(2 * POCKET_RADIUS / math.cos(slant), _depth_at_shoulder(driven, driven.pocket))
    return driven.count * 2 * POCKET_RADIUS * max(deep, 0.0)


def pockets_along(solid: Solid, axis: int, pockets: Iterable[Driven]) -> Iterator[Room]:
    """The pockets that leave through an edge of a member, as rooms: how they weaken it along its span.

    The face that they are bored in is the low one: which one it is changes nothing in the section's figures
    but for boards that lie flat, where the low one is the usual.
    """
    slant = math.radians(SLANT_DEGREES)
    for each in pockets:
        patch, pocket = patch_of(each.joint), each.pocket
        if each.axis == axis or pocket is None or patch is None or patch.run(each.axis) != axis:
            continue
        third = 3 - axis - each.axis
        first, last = row_ends(patch.low[axis], patch.high[axis], each.count, each.fastening)
        near, far = pocket.grip * math.cos(slant), pocket.entry + POCKET_RADIUS / math.sin(slant)
        at_low = abs(patch.low[each.axis] - solid.low[each.axis]) <= abs(
            solid.high[each.axis] - patch.high[each.axis]
        )
        for number in range(min(each.count, _MOST_POCKETS)):
            place = first if each.count < 2 else first + (last - first) * number / (each.count - 1)
            low, high = list(solid.low), list(solid.high)
            low[axis], high[axis] = place - POCKET_RADIUS, place + POCKET_RADIUS
            edge = solid.low[each.axis] if at_low else solid.high[each.axis]
            low[each.axis] = edge + near if at_low else max(edge - far, solid.low[each.axis])
            high[each.axis] = min(edge + far, solid.high[each.axis]) if at_low else edge - near
            high[third] = solid.low[third] + max(_depth_at_shoulder(each, pocket), 0.0)
            yield Room((low[0], low[1], low[2]), (high[0], high[1], high[2]), "pockets for screws")


#: No row of a joint is looked at beyond so many pockets.
_MOST_POCKETS = 60
