"""What a section tells in figures: how deep a fastener goes, what is left over its point, the thicknesses."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence

from reviewer.model.plan import GROUNDS
from reviewer.records import NamedTuple
from reviewer.reports.flat_shapes import Shape, bounds_of, stretch_inside
from reviewer.reports.joint_section import REACH, Section
from reviewer.reports.svg import Point
from reviewer.units import TOLERANCE_MM, UnitSystem, fine_length, length, show
from reviewer.workshop.placed import Placed

#: Shorter measures than this are told finely, mm.
_FINE = 6.0


class Measured(NamedTuple):
    """A measure beside a section: from where to where on the paper (mm), its name and its value."""

    start: float
    end: float
    name: str
    value: str
    loud: bool = False


class Axis(NamedTuple):
    """A fastener's axis on the paper. ``mouth`` is how far along it the mouth lies: 0 or less."""

    head: Point
    way: Point
    length: float
    mouth: float

    def at(self, along: float, aside: float = 0.0) -> Point:
        return (
            self.head[0] + self.way[0] * along - self.way[1] * aside,
            self.head[1] + self.way[1] * along + self.way[0] * aside,
        )


def axis_of(section: Section, placed: Placed) -> Axis:
    """The axis of a fastener as it lies on the paper of a section."""
    mouth = -math.dist(placed.mouth, placed.head) if placed.mouth is not None else 0.0
    return Axis(section.plane.flat(placed.head), section.plane.turned(placed.direction), placed.length, mouth)


# ---------------------------------------------------------------- where the wood ends


def _along(pieces: Iterable[Shape], start: Point, way: Point, at: float) -> tuple[float, float] | None:
    """From where to where a line runs in some shapes without a gap, around the place ``at`` on it."""
    found = []
    for piece in pieces:
        inside = stretch_inside(piece, start, way)
        if inside is not None:
            found.append(inside)
    low = high = at
    for a, b in sorted(found):
        if a <= high + TOLERANCE_MM and b >= low - TOLERANCE_MM:
            low, high = min(low, a), max(high, b)
    return (low, high) if high > low else None


def _wood_along(section: Section, start: Point, way: Point, at: float) -> tuple[float, float] | None:
    """The same in all the wood of a section."""
    return _along((piece for wood in section.woods for piece in wood.pieces), start, way, at)


def leaves_at(section: Section, axis: Axis) -> float | None:
    """How far along its axis a fastener leaves the wood before its end; None when it stays inside."""
    if axis.way[1] < 0.05:
        return None
    joint = (section.joint_at - axis.head[1]) / axis.way[1]
    wood = _wood_along(section, axis.head, axis.way, max(0.0, min(joint, axis.length)))
    end = wood[1] if wood is not None else 0.0
    return end if end < axis.length - TOLERANCE_MM else None


# ---------------------------------------------------------------- measures


def driven_measures(
    section: Section, placed: Placed, axis: Axis, out_from: float | None, system: UnitSystem
) -> list[Measured]:
    """How a fastener goes in, from its head to what is left over its point or comes out, in turn."""
    point = axis.at(axis.length)
    found = []
    joint = section.joint_at
    square = axis.way[1] > 0.999
    hidden = placed.mouth is None
    if square and joint - axis.head[1] > TOLERANCE_MM:
        name = "in the upper" if hidden else "under head"
        found.append(_measured(axis.head[1], joint, name, system))
    end = axis.at(out_from) if out_from is not None else point
    if end[1] - joint > TOLERANCE_MM:
        found.append(_measured(joint, end[1], "in the lower" if hidden else "bite", system))
    if out_from is not None:
        found.append(_measured(end[1], point[1], "comes out", system, loud=True))
        return found
    if placed.kind == "bolts" or section.lower in GROUNDS:
        return found
    wood = _wood_along(section, point, (0.0, 1.0), 0.0)
    if wood is None or wood[1] <= TOLERANCE_MM:
        found.append(Measured(point[1], point[1], "cover", "none", loud=True))
    elif wood[1] < REACH / 2:
        found.append(_measured(point[1], point[1] + wood[1], "cover", system))
    return found


def _measured(start: float, end: float, name: str, system: UnitSystem, loud: bool = False) -> Measured:
    size = end - start
    return Measured(start, end, name, show((fine_length if size < _FINE else length)(size), system), loud)


def housed_measures(section: Section, shared: Sequence[Shape], system: UnitSystem) -> list[Measured]:
    """How deep a housing is and what it leaves of the wood below."""
    (_, top), (_, bottom) = bounds_of(shared)
    found = [_measured(top, bottom, "shared" if section.crossing else "goes in", system)]
    lower = section.of(section.lower)
    if lower and not section.crossing:
        end = bounds_of(lower)[1][1]
        if TOLERANCE_MM < end - bottom < REACH / 2:
            found.append(_measured(bottom, end, "wood left", system))
    return found


def thicknesses(
    section: Section, window: tuple[Point, Point], system: UnitSystem, across: bool
) -> list[Measured]:
    """The two parts' extents down the paper or across it, of those that end inside the window."""
    axis = 0 if across else 1
    found = []
    for name in (section.upper, section.lower):
        pieces = section.of(name)
        if not pieces or name in GROUNDS:
            continue
        low, high = bounds_of(pieces)
        inside = low[axis] > window[0][axis] - TOLERANCE_MM and high[axis] < window[1][axis] + TOLERANCE_MM
        if inside:
            value = show(length(high[axis] - low[axis]), system)
            found.append(Measured(low[axis], high[axis], name, value))
    return found


def outermost(measures: Sequence[Measured]) -> list[Measured]:
    """Those that do not lie within another one: two would stand on one line."""
    return [
        each
        for each in measures
        if not any(
            other is not each
            and other.start <= each.start + TOLERANCE_MM
            and each.end <= other.end + TOLERANCE_MM
            and other.end - other.start > each.end - each.start + TOLERANCE_MM
            for other in measures
        )
    ]


def edge_measure(section: Section, axis: Axis, system: UnitSystem) -> Measured | None:
    """From the axis to the nearest edge beside it, at the joint."""
    if axis.way[1] < 0.05:
        return None
    at = axis.at((section.joint_at - axis.head[1]) / axis.way[1])
    best: Measured | None = None
    for name, step in ((section.upper, -0.5), (section.lower, 0.5)):
        pieces = section.of(name) if name not in GROUNDS else ()
        inside = _along(pieces, (at[0], at[1] + step), (1.0, 0.0), 0.0)
        if inside is None or not inside[0] < 0 < inside[1]:
            continue
        near = inside[0] if -inside[0] < inside[1] - TOLERANCE_MM else inside[1]
        if abs(near) < REACH / 2 and (best is None or abs(near) < best.end - best.start - TOLERANCE_MM):
            low, high = sorted((at[0], at[0] + near))
            best = _measured(low, high, "to edge", system)
    return best
