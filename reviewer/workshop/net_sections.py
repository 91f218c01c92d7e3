"""Where a part is weaker than its bounds: cuts, holes, tapers, and the room that joints take out of it.

A cross-section is measured as it is: the pieces of a shaped part are sliced square to the way it spans, and
what holes and housings take is taken off as rectangles. What fills a housing again is not counted, though
glue gives some of it back.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from itertools import pairwise
from typing import TYPE_CHECKING

from reviewer.mechanics.beam import BeamResult
from reviewer.model.plan import Axis, Plan
from reviewer.model.shapes import Shape
from reviewer.records import NamedTuple
from reviewer.reference.usual_values import usual_value
from reviewer.setting_out.result import SettingOut
from reviewer.setting_out.solid import Solid
from reviewer.units import TOLERANCE_MM

if TYPE_CHECKING:
    from reviewer.geometry.convex import Convex
    from reviewer.workshop.housing import Housed

#: A part is sliced at no more than so many places; then at even ones.
MOST_SLICES = 60
#: Steps of the integral of the moment's square over a weak stretch.
_STEPS = 8
#: A section that keeps less than this share of its second moment is as good as cut through.
_LEAST_SHARE = 0.01
#: A stretch whose ends differ by less than this share of the whole is even.
_EVEN = 0.01


class NetSection(NamedTuple):
    """A stretch of a part (mm from its low end) and the least section there.

    ``area`` mm², ``second_moment`` mm⁴ about the level axis through the middle of what is left, ``modulus``
    mm³ to the farther of top and bottom. ``why`` names the cut for a person. ``below`` and ``above`` are how
    much of the height is gone over the whole width at the bottom and at the top, mm.
    """

    start: float
    end: float
    area: float
    second_moment: float
    modulus: float
    why: str
    below: float = 0.0
    above: float = 0.0

    def scaled(self, times_height: float, times_length: float) -> NetSection:
        """The same cut in a part so many times as high and as long."""
        return NetSection(
            self.start * times_length,
            self.end * times_length,
            self.area * times_height,
            self.second_moment * times_height**3,
            self.modulus * times_height**2,
            self.why,
            self.below * times_height,
            self.above * times_height,
        )


class _Rectangle(NamedTuple):
    """A rectangle in the section: from ... to across the span, and from ... to upwards."""

    left: float
    right: float
    bottom: float
    top: float


class Room(NamedTuple):
    """What a housing or a hole takes out of a part: bounds in space."""

    low: tuple[float, float, float]
    high: tuple[float, float, float]
    why: str


def _housing_rooms(
    housings: Sequence[Housed], solids: Mapping[str, Solid], plan: Plan
) -> dict[str, list[Room]]:
    """By part, the space that each of its joints takes out of it. Corners at an end take nothing here.

    A tenon and the tongue of a bridle leave their cheeks behind, but for those of round bars, which are
    turned to no size that the plan says.
    """
    found: dict[str, list[Room]] = {}

    def cheeks(each: Housed, name: str, why: str) -> None:
        if not plan.stocks[plan.parts[name].stock].round:
            found.setdefault(name, []).extend(_cheeks(each, solids[name], why))

    for each in housings:
        housing, overlap = each.joint.join.housing, each.joint.overlap
        if housing is None or overlap is None:
            continue
        why = housing.kind
        if why in ("dado", "groove", "rabbet", "mortise and tenon"):
            found.setdefault(each.into, []).append(Room(overlap.low, overlap.high, why))
            if why == "mortise and tenon":
                cheeks(each, each.part, "tenon")
        elif why == "bridle":
            for name in (each.joint.left, each.joint.right):
                cheeks(each, name, why)
        elif why == "half lap":
            middle = (overlap.low[each.axis] + overlap.high[each.axis]) / 2
            for name, half in _halves(each, solids, middle):
                found.setdefault(name, []).append(half)
    return found


def _cheeks(each: Housed, solid: Solid, why: str) -> Iterator[Room]:
    """What is sawn off both sides of an end, so that a tenon is left in its middle.

    Its thickness is the stated one, else the usual share; across the thinner side, or level in a square bar.
    """
    housing, overlap = each.joint.join.housing, each.joint.overlap
    assert housing is not None
    assert overlap is not None
    thin = int(solid.thick)
    if thin == Axis.UP and abs(solid.extent(solid.wide) - solid.extent(thin)) <= TOLERANCE_MM:
        thin = int(solid.wide)
    whole = solid.extent(thin)
    thick = housing.thickness or whole * usual_value("tenon-share")
    if thick >= whole - TOLERANCE_MM:
        return
    middle = (solid.low[thin] + solid.high[thin]) / 2
    for low, high in ((solid.low[thin], middle - thick / 2), (middle + thick / 2, solid.high[thin])):
        lows, highs = list(overlap.low), list(overlap.high)
        for axis in range(3):
            if axis != solid.long:
                lows[axis], highs[axis] = solid.low[axis], solid.high[axis]
        lows[thin], highs[thin] = low, high
        yield Room((lows[0], lows[1], lows[2]), (highs[0], highs[1], highs[2]), why)


def _halves(each: Housed, solids: Mapping[str, Solid], middle: float) -> Iterator[tuple[str, Room]]:
    """A half lap: the part on the low side loses the upper half of the shared space, the other the lower."""
    assert each.joint.overlap is not None
    _, _, low, high, _ = each.joint.overlap
    lower, upper = list(high), list(low)
    lower[each.axis] = upper[each.axis] = middle
    halves = (
        Room((upper[0], upper[1], upper[2]), high, "half lap"),
        Room(low, (lower[0], lower[1], lower[2]), "half lap"),
    )
    one, two = each.joint.left, each.joint.right
    if solids[one].centre[each.axis] > solids[two].centre[each.axis]:
        one, two = two, one
    yield from zip((one, two), halves, strict=True)


def _slice(piece: Convex, axis: int, place: float, across: int) -> list[tuple[float, float]]:
    """The corners of a piece's cut at a place, as (across, up) in order round it; empty when it misses."""
    points: list[tuple[float, float]] = []
    if not piece.low[axis] < place < piece.high[axis]:
        return points
    for face in piece.faces:
        ring = face.ring
        for one, two in zip(ring, (*ring[1:], ring[0]), strict=True):
            a, b = one[axis] - place, two[axis] - place
            if (a < 0) != (b < 0):
                share = a / (a - b)
                points.append(
                    (
                        one[across] + share * (two[across] - one[across]),
                        one[Axis.UP] + share * (two[Axis.UP] - one[Axis.UP]),
                    )
                )
    if len(points) < 3:
        return []
    middle = (
        math.fsum(x for x, _ in points) / len(points),
        math.fsum(y for _, y in points) / len(points),
    )
    return sorted(points, key=lambda point: math.atan2(point[1] - middle[1], point[0] - middle[0]))


class _Sums(NamedTuple):
    """Area, and its first and second moment about the level line at height 0."""

    area: float
    first: float
    second: float


def _polygon(points: Sequence[tuple[float, float]]) -> _Sums:
    area = first = second = 0.0
    for (x0, y0), (x1, y1) in zip(points, (*points[1:], points[0]), strict=True):
        turn = x0 * y1 - x1 * y0
        area += turn / 2
        first += turn * (y0 + y1) / 6
        second += turn * (y0 * y0 + y0 * y1 + y1 * y1) / 12
    return _Sums(area, first, second)


def _rectangle(one: _Rectangle) -> _Sums:
    width = one.right - one.left
    return _Sums(
        width * (one.top - one.bottom),
        width * (one.top**2 - one.bottom**2) / 2,
        width * (one.top**3 - one.bottom**3) / 3,
    )


def _apart(rectangles: Sequence[_Rectangle]) -> list[_Rectangle]:
    """The same space as rectangles that do not share any: strips between all their sides."""
    if len(rectangles) < 2:
        return list(rectangles)
    marks = sorted({mark for each in rectangles for mark in (each.bottom, each.top)})
    found = []
    for bottom, top in pairwise(marks):
        spans = sorted((r.left, r.right) for r in rectangles if r.bottom <= bottom and r.top >= top)
        at = -math.inf
        for left, right in spans:
            if right > max(left, at):
                found.append(_Rectangle(max(left, at), right, bottom, top))
                at = right
    return found


class _Section(NamedTuple):
    """What is left at a place, what is cut there, and how much of the height is gone below and above."""

    area: float
    second_moment: float
    modulus: float
    why: str
    below: float
    above: float


def _section(solid: Solid, axis: int, place: float, rooms: Sequence[Room]) -> _Section | None:
    """The section at a place in space; None where nothing is left.

    Heights are counted from the part's bottom, so that the sums keep their digits.
    """
    across = 3 - axis - Axis.UP
    bottom = solid.low[Axis.UP]
    whys: dict[str, None] = {}
    shapes: list[_Sums] = []
    low, high = math.inf, -math.inf
    if solid.body is None:
        whole = _Rectangle(solid.low[across], solid.high[across], 0.0, solid.extent(Axis.UP))
        shapes.append(_rectangle(whole))
        low, high = whole.bottom, whole.top
    else:
        for piece in solid.body.pieces:
            points = [(x, y - bottom) for x, y in _slice(piece, axis, place, across)]
            if points:
                shapes.append(_polygon(points))
                low = min(low, *(y for _, y in points))
                high = max(high, *(y for _, y in points))
    gone = []
    for room in rooms:
        if not room.low[axis] < place < room.high[axis]:
            continue
        clipped = _Rectangle(
            max(room.low[across], solid.low[across]),
            min(room.high[across], solid.high[across]),
            max(room.low[Axis.UP] - bottom, 0.0),
            min(room.high[Axis.UP] - bottom, solid.extent(Axis.UP)),
        )
        if clipped.right > clipped.left and clipped.top > clipped.bottom:
            gone.append(clipped)
            whys[room.why] = None
    area = math.fsum(each.area for each in shapes)
    first = math.fsum(each.first for each in shapes)
    second = math.fsum(each.second for each in shapes)
    wide = solid.extent(across)
    for each in _apart(gone):
        taken = _rectangle(each)
        area, first, second = area - taken.area, first - taken.first, second - taken.second
        if each.right - each.left >= wide - TOLERANCE_MM:  # all of the width: the outer fibre is gone too
            if each.bottom <= low + TOLERANCE_MM:
                low = max(low, each.top)
            if each.top >= high - TOLERANCE_MM:
                high = min(high, each.bottom)
    if area <= 0 or high <= low:
        return None
    middle = first / area
    about = second - area * middle * middle
    if about <= 0:
        return None
    modulus = about / max(high - middle, middle - low)
    return _Section(area, about, modulus, " and ".join(whys), low, solid.extent(Axis.UP) - high)


def _bores(solid: Solid, axis: int) -> list[Room]:
    """Round holes as the square rooms round them; one that runs along the span at an angle by its bounds."""
    if solid.body is None:
        return []
    found = []
    for bore in solid.body.bores:
        if not bore.stretches:
            continue
        ends = [
            tuple(m + w * far for m, w in zip(bore.mouth, bore.way, strict=True))
            for far in (bore.stretches[0][0], bore.stretches[-1][1])
        ]
        aside = [bore.radius * math.sqrt(max(0.0, 1 - way * way)) for way in bore.way]
        low = [min(end[i] for end in ends) - aside[i] for i in range(3)]
        high = [max(end[i] for end in ends) + aside[i] for i in range(3)]
        found.append(Room((low[0], low[1], low[2]), (high[0], high[1], high[2]), "hole"))
    return found


def cut_words(shape: Shape | None) -> str:
    """What the plan cuts out of a part, for a person: notch, dado, taper and so on."""
    if shape is None:
        return ""
    kinds = dict.fromkeys(
        getattr(cutting, "kind", type(cutting).__name__.lower()) for cutting in shape.cuttings
    )
    words = [{"fittednotch": "notch"}.get(kind, kind) for kind in kinds]
    return " and ".join(dict.fromkeys(words))


def net_sections(
    solid: Solid, axis: int, rooms: Sequence[Room], shape: Shape | None
) -> tuple[NetSection, ...]:
    """The stretches of a part where less than its bounds is left, in order along an axis.

    ``rooms`` are what its joints take. A stretch that tapers comes as several short ones.
    """
    if solid.body is None and not rooms:
        return ()
    start, end = solid.low[axis], solid.high[axis]
    rooms = [*rooms, *_bores(solid, axis)]
    marks = {start, end}
    for room in rooms:
        marks.update(min(max(at, start), end) for at in (room.low[axis], room.high[axis]))
    for piece in solid.body.pieces if solid.body else ():
        marks.update(point[axis] for face in piece.faces for point in face.ring)
    places: list[float] = []
    for mark in sorted(marks):
        if not places or mark - places[-1] > TOLERANCE_MM:
            places.append(mark)
    if len(places) > MOST_SLICES:
        places = [start + (end - start) * step / MOST_SLICES for step in range(MOST_SLICES + 1)]
    across = 3 - axis - Axis.UP
    whole_area = solid.extent(across) * solid.extent(Axis.UP)
    whole = solid.extent(across) * solid.extent(Axis.UP) ** 3 / 12
    cut = cut_words(shape)
    found: list[NetSection] = []

    def keep(low: float, high: float, section: _Section | None) -> None:
        # Setting out refuses what is cut in two, so a place where nothing is found tells nothing.
        if section is None:
            return
        area, about, left, why, below, above = section
        if about < whole * (1 - 1e-6) or area < whole_area * (1 - 1e-6):
            about = max(about, _LEAST_SHARE * whole)
            found.append(NetSection(low - start, high - start, area, about, left, why or cut, below, above))

    for low, high in pairwise(places):
        inset = min(0.01, (high - low) / 4)
        ends = [_section(solid, axis, place, rooms) for place in (low + inset, high - inset)]
        one, two = ends
        if one is None or two is None or abs(one.second_moment - two.second_moment) > _EVEN * whole:
            steps = [low + (high - low) * step / _STEPS for step in range(_STEPS + 1)]
            for a, b in pairwise(steps):
                keep(a, b, _section(solid, axis, (a + b) / 2, rooms))
        else:
            keep(low, high, min(one, two, key=lambda each: each.second_moment))
    return tuple(found)


def sag_growth(beam: BeamResult, sections: Sequence[NetSection], second_moment: float) -> float:
    """How much farther a part sags than one of even section, as a factor of 1 or more.

    By the energy of bending: each stretch gives way as the square of its moment over what is left of its
    second moment (the unit-load method, with the part's own moments for those of the unit load).
    """
    whole = _squares(beam, 0.0, beam.length)
    if whole <= 0:
        return 1.0
    more = math.fsum(
        (second_moment / each.second_moment - 1) * _squares(beam, each.start, each.end) for each in sections
    )
    return 1 + more / whole


def _squares(beam: BeamResult, start: float, end: float) -> float:
    """The integral of the moment's square over a stretch, by Simpson's rule within each bay."""
    marks = sorted(
        {start, end, *(at for bay in beam.bays for at in (bay.start, bay.end) if start < at < end)}
    )
    whole = 0.0
    for low, high in pairwise(marks):
        step = (high - low) / (2 * _STEPS)
        sums = 0.0
        for index in range(2 * _STEPS + 1):
            weight = 1 if index in (0, 2 * _STEPS) else 4 if index % 2 else 2
            sums += weight * beam.moment(min(low + index * step, beam.length)) ** 2
        whole += sums * step / 3
    return whole


def rooms_of(plan: Plan, setting: SettingOut) -> dict[str, tuple[Room, ...]]:
    """By part, what the joints of the piece take out of it."""
    if not any(joint.join.housing is not None for joint in setting.joints):
        return {}
    from reviewer.workshop.housing import housed_joints

    found = _housing_rooms(housed_joints(setting), setting.solids, plan)
    return {name: tuple(rooms) for name, rooms in found.items()}
