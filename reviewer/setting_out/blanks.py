"""The board that a part is cut from: where it lies in space, and how its ends are cut before all else.

A square part lies along the axes of the piece and fills its setting-out box. A leaning part and a brace
have axes of their own; their box bounds them.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence

from reviewer.geometry.convex import Convex, Swell, clip, oriented_box, prism
from reviewer.geometry.slanting import EndCut, leaning, rise, section_of_level
from reviewer.geometry.vectors import UNITS, Vector, dot, moved, turned_round
from reviewer.model.plan import Axis, Part
from reviewer.model.shapes import Lean, Rising, Side
from reviewer.records import NamedTuple
from reviewer.setting_out.result import Miscut
from reviewer.units import TOLERANCE_MM

#: An end and a plane (unit normal outwards, offset) that it is cut along.
End = tuple[int, Side]
Plane = tuple[Vector, float]


class Frame(NamedTuple):
    """A board's own box: its low corner in space, its axes (each named for the piece's axis it is nearest
    to), and its size along each, mm. Places on it count from its low faces.
    """

    corner: Vector
    axes: tuple[Vector, Vector, Vector]
    extents: Vector

    def point(self, local: Sequence[float]) -> Vector:
        """A place of the board in space."""
        at = self.corner
        for axis in range(3):
            at = moved(at, self.axes[axis], local[axis])
        return at

    def way(self, local: Sequence[float]) -> Vector:
        """A direction of the board in space."""
        x, y, z = (sum(local[axis] * self.axes[axis][each] for axis in range(3)) for each in range(3))
        return (x, y, z)

    def plane(self, local: Sequence[float], offset: float) -> Plane:
        """A plane ``local · x = offset`` of the board in space; ``local`` need not be one long."""
        size = math.hypot(*local)
        normal = self.way([part / size for part in local])
        return normal, offset / size + dot(normal, self.corner)

    @property
    def middle(self) -> Vector:
        """The middle of the board."""
        return self.point([size / 2 for size in self.extents])


class Blank(NamedTuple):
    """A frame, its axis along the slanting board, and the planes of its ends where they are not square."""

    frame: Frame
    run: int
    ends: Mapping[End, tuple[Plane, ...]]
    lower_end: Side  # which end of ``run`` is the lower one of a brace

    def end(self, axis: int, side: Side, slant: object) -> End:
        """The end of the board that a clause means by a face of the piece."""
        if isinstance(slant, Rising) and axis in (slant.along_axis, slant.up_axis):
            lower = (side == "low") == (axis == slant.up_axis or slant.towards == "high")
            other: Side = "high" if self.lower_end == "low" else "low"
            return self.run, (self.lower_end if lower else other)
        return axis, side


def _square(low: Vector, high: Vector, run: int) -> Blank:
    extents = (high[0] - low[0], high[1] - low[1], high[2] - low[2])
    return Blank(Frame(low, UNITS, extents), run, {}, "low")


def _leaning(part: Part, lean: Lean, low: Vector, high: Vector) -> Blank | Miscut:
    runs = (lean.run_across, lean.run_deep)
    tall = high[2] - low[2]
    level = [high[axis] - low[axis] - tall * abs(runs[axis]) for axis in (0, 1)]
    thick_axis = part.thick if part.thick != Axis.UP else part.wide if part.wide != Axis.UP else part.long
    width, thickness = section_of_level(*runs, thick_axis, level[0], level[1])
    if min(width, thickness) <= TOLERANCE_MM:
        least = min((0, 1), key=lambda axis: (level[axis], axis))
        room = high[least] - low[least]
        return Miscut(part.name, "leans too far", lean.span, (tall * abs(runs[least]), room), unmade=True)
    ways = leaning(*runs, thick_axis)
    # The furthest corner of the level ends, along the board from its middle: the long point.
    half = (tall + width * abs(ways.along_face[2]) + thickness * abs(ways.out_of_face[2])) / 2 / ways.up[2]
    axes = [ways.up, ways.up, ways.up]
    axes[thick_axis], axes[1 - thick_axis] = ways.out_of_face, ways.along_face
    sizes = [2 * half, 2 * half, 2 * half]
    sizes[thick_axis], sizes[1 - thick_axis] = thickness, width
    corner: Vector = ((low[0] + high[0]) / 2, (low[1] + high[1]) / 2, (low[2] + high[2]) / 2)
    for axis in range(3):
        corner = moved(corner, axes[axis], -sizes[axis] / 2)
    frame = Frame(corner, (axes[0], axes[1], axes[2]), (sizes[0], sizes[1], sizes[2]))
    ends: dict[End, tuple[Plane, ...]] = {
        (2, "low"): (((0.0, 0.0, -1.0), -low[2]),),
        (2, "high"): (((0.0, 0.0, 1.0), high[2]),),
    }
    return Blank(frame, 2, ends, "low")


def _rising(part: Part, rising: Rising, low: Vector, high: Vector, width: float | None) -> Blank | Miscut:
    along, up = rising.along_axis, rising.up_axis
    box_along, box_up = high[along] - low[along], high[up] - low[up]
    found = rise(box_along, box_up, width, rising.low_end, rising.high_end) if width is not None else None
    if width is None or found is None:
        sizes = (width or 0.0, box_along, box_up)
        return Miscut(part.name, "brace does not fit", rising.span, sizes, unmade=True)
    lie_cos, lie_sin = math.cos(found.angle), math.sin(found.angle)
    sign = 1.0 if rising.towards == "high" else -1.0

    def placed(at_along: float, at_up: float) -> Vector:
        at = [0.0, 0.0, 0.0]
        at[along], at[up] = at_along, at_up
        return (at[0], at[1], at[2])

    run = part.long if part.long in (along, up) else along
    thick = 3 - along - up
    axes = [UNITS[thick]] * 3
    climb = placed(sign * lie_cos, lie_sin)  # from the lower end to the upper one
    if run == up:
        axes[up], axes[along] = climb, placed(lie_sin, -sign * lie_cos)
    else:
        axes[along], axes[up] = placed(lie_cos, sign * lie_sin), placed(-sign * lie_sin, lie_cos)
    lower: Side = "low" if run == up or sign > 0 else "high"
    beyond = [_beyond(end, found.angle, width) for end in (rising.low_end, rising.high_end)]
    between = math.dist(found.low, found.high)
    sizes_of = [0.0, 0.0, 0.0]
    sizes_of[thick] = high[thick] - low[thick]
    sizes_of[along] = sizes_of[up] = width
    sizes_of[run] = between + beyond[0] + beyond[1]

    def in_space(place: tuple[float, float]) -> Vector:
        at = list(low)
        at[along] = low[along] + place[0] if sign > 0 else high[along] - place[0]
        at[up] = low[up] + place[1]
        return (at[0], at[1], at[2])

    start = moved(in_space(found.low), climb, -beyond[0])
    if lower == "high":
        start = moved(start, climb, sizes_of[run])
    corner = moved(start, axes[along if run == up else up], -width / 2)
    frame = Frame(corner, (axes[0], axes[1], axes[2]), (sizes_of[0], sizes_of[1], sizes_of[2]))
    upper: Side = "high" if lower == "low" else "low"
    sides = ((-1.0, low[up], rising.low_end, lower), (1.0, high[up], rising.high_end, upper))
    ends: dict[End, tuple[Plane, ...]] = {}
    for way, level, cut, side in sides:
        planes: list[Plane] = []
        if cut in ("level", "corner"):
            planes.append((placed(0.0, way), way * level))
        if cut in ("plumb", "corner"):
            out = way * sign
            planes.append((placed(out, 0.0), out * (high[along] if out > 0 else low[along])))
        if planes:
            ends[run, side] = tuple(planes)
    return Blank(frame, run, ends, lower)


def _beyond(end: EndCut, angle: float, width: float) -> float:
    """How far the long point of an end lies beyond its middle, along the board, mm."""
    if end == "level":
        return width / 2 / math.tan(angle)
    return width / 2 * math.tan(angle) if end == "plumb" else 0.0


def blank_of(part: Part, low: Vector, high: Vector, width: float | None) -> Blank | Miscut:
    """The board that a part is cut from. ``width`` is the board's own, for a brace; None: not known."""
    slant = part.shape.slant if part.shape is not None else None
    if isinstance(slant, Lean):
        return _leaning(part, slant, low, high)
    if isinstance(slant, Rising):
        return _rising(part, slant, low, high, width)
    return _square(low, high, part.long)


def surfaces_of(part: Part) -> tuple[str, str, str]:
    """Which surface of the board looks along each axis."""
    found = ["face", "face", "face"]
    found[part.long], found[part.wide] = "end", "edge"
    return found[0], found[1], found[2]


def surface_towards(blank: Blank, surfaces: Sequence[str], normal: Vector) -> str:
    """The kind of a new surface by the board's axis that it looks along most; of two alike the end."""
    order = {"end": 0, "edge": 1, "face": 2}
    best = max(
        range(3),
        key=lambda axis: (round(abs(dot(blank.frame.axes[axis], normal)), 6), -order[surfaces[axis]]),
    )
    return surfaces[best]


class Section(NamedTuple):
    """An outline across a board where it is not square, in the board's own places; its sides by corner."""

    outline: tuple[Vector, ...]
    surfaces: tuple[str, ...]
    swells: tuple[Swell | None, ...]


def cut_to_ends(
    blank: Blank, surfaces: Sequence[str], suits: Mapping[End, Plane], section: Section | None = None
) -> Convex | None:
    """The board with its ends cut; those in ``suits`` are made longer first and then cut along a plane."""
    frame, run = blank.frame, blank.run
    low, high = [0.0, 0.0, 0.0], list(frame.extents)
    for (axis, side), (normal, offset) in suits.items():
        out = frame.axes[axis] if side == "high" else turned_round(frame.axes[axis])
        turn = dot(normal, out)
        places = []
        for one in (0, 1):
            for two in (0, 1):
                local = [0.0, 0.0, 0.0]
                local[(axis + 1) % 3] = one * frame.extents[(axis + 1) % 3]
                local[(axis + 2) % 3] = two * frame.extents[(axis + 2) % 3]
                edge = frame.point(local)
                place = (offset - dot(normal, edge)) / turn
                places.append(place if side == "high" else -place)
        if side == "high":
            high[axis] = max(*places, high[axis])
        else:
            low[axis] = min(*places, low[axis])
    sizes = [high[axis] - low[axis] for axis in range(3)]
    body: Convex | None
    if section is not None:
        ring = []
        for point in section.outline:
            local = list(point)
            local[run] = low[run]
            ring.append(frame.point(local))
        ends = (surfaces[run], section.surfaces)
        body = prism(tuple(ring), frame.axes[run], sizes[run], ends, section.swells)
    else:
        body = oriented_box(frame.point(low), frame.axes, sizes, surfaces)
    planes = [
        (plane, surfaces[end[0]]) for end, cuts in blank.ends.items() if end not in suits for plane in cuts
    ]
    planes += [(plane, surfaces[end[0]]) for end, plane in suits.items()]
    for (normal, offset), surface in planes:
        if body is not None:
            body = clip(body, normal, offset, surface)
    return body
