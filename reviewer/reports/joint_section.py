"""A joint cut open: the plane of the cut, and the wood in it as shapes on the paper, mm.

On the paper the fastener is driven downwards, or the part that goes into the other comes from above, however
the piece stands; so all sections read alike.
"""

from __future__ import annotations

from collections.abc import Sequence

from reviewer.geometry.vectors import UNITS, cross, dot, minus, moved, times, unit
from reviewer.model.plan import GROUNDS
from reviewer.records import NamedTuple
from reviewer.reports.flat_shapes import (
    HalfPlane,
    Shape,
    area,
    bounds_of,
    common,
    sides,
    stretch_inside,
    without,
)
from reviewer.reports.svg import Point
from reviewer.setting_out.result import Joint, SettingOut
from reviewer.setting_out.solid import Solid, Vector
from reviewer.units import TOLERANCE_MM
from reviewer.workshop.housing import CORNERS, Housed, housed
from reviewer.workshop.housing_cells import SPLINE, HalfSpace, cells_of
from reviewer.workshop.placed import Placed

#: The paper is cut out of a square that reaches so far from the joint, mm.
REACH = 3000.0
#: Shapes smaller than this are no wood worth drawing, mm².
_LEAST_AREA = 0.5
#: Others that touch the two parts of a joint are looked through up to this many.
_MOST_NEIGHBOURS = 200
#: What lies so far beyond the point of a fastener is drawn too, mm.
_NEAR = 10.0


#: Housings in which two parts share a place as equals.
_CROSSING = ("half lap", "bridle", *CORNERS)


class Plane(NamedTuple):
    """The plane of a cut: a point in it, and the ways that run right and down on the paper."""

    origin: Vector
    right: Vector
    down: Vector

    @property
    def normal(self) -> Vector:
        return cross(self.right, self.down)

    def flat(self, point: Vector) -> Point:
        """Where a point in space falls on the paper, mm."""
        away = minus(point, self.origin)
        return dot(away, self.right), dot(away, self.down)

    def turned(self, way: Vector) -> Point:
        """A way in space as it runs on the paper."""
        return dot(way, self.right), dot(way, self.down)


class Wood(NamedTuple):
    """The wood of one part in a section, in convex pieces. ``of_joint``: one of the two that are joined."""

    part: str
    pieces: tuple[Shape, ...]
    of_joint: bool


class Section(NamedTuple):
    """A joint cut open. ``joint_at`` is how far down the face lies that the two parts share.

    ``shared`` is the room of a housing in convex pieces; empty where nothing is let in. ``crossing``: that
    neither part goes into the other there, as both take up the same corner or cross each other.
    """

    plane: Plane
    woods: tuple[Wood, ...]
    shared: tuple[Shape, ...]
    joint_at: float
    upper: str
    lower: str
    crossing: bool = False

    def of(self, part: str) -> tuple[Shape, ...]:
        """The pieces of a part; empty where the cut misses it."""
        return next((wood.pieces for wood in self.woods if wood.part == part), ())


def _flattened(planes: Sequence[HalfSpace], cut: Plane) -> list[HalfPlane] | None:
    """Half-spaces as they cross the paper; None when one of them leaves all of the paper out."""
    found = []
    for normal, offset in planes:
        right, down = dot(normal, cut.right), dot(normal, cut.down)
        room = offset - dot(normal, cut.origin)
        size = (right * right + down * down) ** 0.5
        if size < 1e-9:
            if room < -1e-6:
                return None
            continue
        found.append(HalfPlane(right / size, down / size, room / size))
    return found


def _half_spaces(solid: Solid) -> list[list[HalfSpace]]:
    """A solid as convex pieces, each by its faces."""
    if solid.body is not None:
        return [[HalfSpace(face.normal, face.offset) for face in piece.faces] for piece in solid.body.pieces]
    found = []
    for way, size in zip(solid.directions, solid.size, strict=True):
        middle = dot(way, solid.centre)
        found.append(HalfSpace(way, middle + size / 2))
        found.append(HalfSpace(times(way, -1.0), size / 2 - middle))
    return [found]


def cut_through(solid: Solid, plane: Plane) -> list[Shape]:
    """What a plane cuts of a solid, in convex pieces."""
    paper = ((-REACH, -REACH), (REACH, -REACH), (REACH, REACH), (-REACH, REACH))
    found = []
    for planes in _half_spaces(solid):
        flat = _flattened(planes, plane)
        shape = common(paper, flat) if flat is not None else ()
        if area(shape) > _LEAST_AREA:
            found.append(shape)
    return found


# ---------------------------------------------------------------- the plane


def plane_of_fastener(placed: Placed) -> Plane:
    """The plane of a fastener's axis and the way square to the joint; of a square one, across its row."""
    down = placed.surface_normal
    slant = moved(placed.direction, down, -dot(placed.direction, down))
    if dot(slant, slant) > 1e-4:
        return Plane(placed.head, unit(slant), down)
    across = cross(down, placed.along)
    return Plane(placed.head, unit(across), down)


def plane_of_joint(joint: Joint, setting: SettingOut) -> tuple[Plane, str] | None:
    """The plane that shows a joint without a placed fastener best, and the part that comes from above."""
    solids = setting.solids
    made = housed(joint, solids)
    if made is not None and made.joint.overlap is not None:
        return _plane_of_housing(made, solids)
    contact = joint.contact
    if contact is None:
        return None
    axes = [axis for axis in range(3) if axis != contact.axis]
    extents = [contact.high[axis] - contact.low[axis] for axis in range(3)]
    across = min(axes, key=lambda axis: (round(extents[axis], 3), axis))
    middle = tuple((contact.low[axis] + contact.high[axis]) / 2 for axis in range(3))
    normal = unit(contact.normal)
    right = moved(UNITS[across], normal, -dot(UNITS[across], normal))
    return Plane(middle, unit(right), normal), contact.first  # type: ignore[arg-type]


def _plane_of_housing(made: Housed, solids: dict[str, Solid]) -> tuple[Plane, str]:
    overlap = made.joint.overlap
    housing = made.joint.join.housing
    assert overlap is not None
    assert housing is not None
    left, right = solids[made.joint.left], solids[made.joint.right]
    part, into = solids[made.part], solids[made.into]
    kind = housing.kind
    others = [axis for axis in range(3) if axis != made.axis]
    down, above = made.axis, part
    shown = min(others, key=lambda axis: (round(overlap.depths[axis], 3), axis))
    corner = (left.long, right.long) if left.long != right.long else (right.thick, left.thick)
    if kind in ("mitre", "splined mitre") and corner[0] != corner[1]:
        down, shown, above = int(corner[0]), int(corner[1]), left
    elif kind in ("dovetails", "box joint") and corner[0] != corner[1]:
        down, above = int(corner[0]), left
        shown = next(axis for axis in range(3) if axis not in corner)
    elif kind == "half lap":
        shown = int(part.long)
    elif kind == "bridle":
        shown = int(into.long)
    elif kind in ("mortise and tenon", "tongue and groove"):
        shown = int(part.thick if part.thick != made.axis else part.wide)
    if shown == down:
        shown = next(axis for axis in range(3) if axis != down)
    middle = tuple((overlap.low[axis] + overlap.high[axis]) / 2 for axis in range(3))
    sign = 1.0 if above.centre[down] <= middle[down] else -1.0
    return Plane(middle, UNITS[shown], times(UNITS[down], sign)), above.name  # type: ignore[arg-type]


# ---------------------------------------------------------------- the wood


def _shared(
    joint: Joint, made: Housed | None, solids: dict[str, Solid], plane: Plane
) -> list[tuple[str, Shape]]:
    """The room that both parts of a joint claim, by who gets it, in convex pieces."""
    if made is None:
        return []
    housing = joint.join.housing
    whole = [
        shape
        for one in cut_through(solids[joint.left], plane)
        for two in cut_through(solids[joint.right], plane)
        if area(shape := common(one, sides(two))) > _LEAST_AREA
    ]
    found: list[tuple[str, Shape]] = []
    for cell in cells_of(made, solids, housing.thickness if housing else None):
        flat = _flattened(cell.within, plane)
        if flat is None:
            continue
        for shape in whole:
            owned = common(shape, flat)
            if area(owned) > _LEAST_AREA:
                found.append((cell.part, owned))
    splines = [shape for part, shape in found if part == SPLINE]
    if splines:
        found = [
            (part, left)
            for part, shape in found
            for left in ([shape] if part == SPLINE else without(shape, splines[0]))
        ]
    return found


def section_of(joint: Joint, setting: SettingOut, placed: Placed | None) -> Section | None:
    """A joint cut open, through the fastener where one is placed; None when no plane shows it."""
    solids = setting.solids
    if placed is not None:
        plane, upper = plane_of_fastener(placed), placed.head_part
    else:
        best = plane_of_joint(joint, setting)
        if best is None:
            return None
        plane, upper = best
    lower = joint.right if upper == joint.left else joint.left
    shapes = {name: cut_through(solids[name], plane) for name in (upper, lower) if name not in GROUNDS}
    made = housed(joint, solids) if upper in solids and lower in solids else None
    shared = _shared(joint, made, solids, plane)
    for name, pieces in shapes.items():
        for _, taken in shared:
            pieces = [left for piece in pieces for left in without(piece, taken)]
        pieces += [shape for part, shape in shared if part == name]
        shapes[name] = [piece for piece in pieces if area(piece) > _LEAST_AREA]
    if not shapes.get(upper):
        return None
    woods = [Wood(name, tuple(pieces), True) for name, pieces in shapes.items() if pieces]
    woods += [Wood(SPLINE, (shape,), True) for part, shape in shared if part == SPLINE]
    ground = lower if lower in GROUNDS else None
    if ground is not None:
        at = plane.flat(joint.contact.low)[1] if joint.contact is not None else 0.0
        woods.append(Wood(ground, (((-REACH, at), (REACH, at), (REACH, REACH), (-REACH, REACH)),), True))
    if placed is not None:
        woods += _in_the_way(joint, setting, plane, placed)
    room = tuple(shape for _, shape in shared)
    housing = joint.join.housing
    crossing = housing is not None and housing.kind in _CROSSING
    at = _joint_at(joint, plane, upper, shapes)
    found = Section(plane, tuple(woods), room, at, upper, lower, crossing)
    return _mirrored(found) if _leans_left(found, placed) else found


def _leans_left(section: Section, placed: Placed | None) -> bool:
    """True when more wood lies left of the middle than right: such a joint is drawn from the other side."""
    if placed is not None and abs(dot(placed.direction, section.plane.right)) > 1e-3:
        return False
    for name in (section.lower, section.upper):
        pieces = section.of(name)
        if pieces and name not in GROUNDS:
            (left, _), (right, _) = bounds_of(pieces)
            if abs(right + left) > 0.05:
                return right + left < 0
    return False


def _mirrored(section: Section) -> Section:
    def turned(shape: Shape) -> Shape:
        return tuple((-x, y) for x, y in reversed(shape))

    plane = section.plane
    return section._replace(
        plane=plane._replace(right=times(plane.right, -1.0)),
        woods=tuple(
            wood._replace(pieces=tuple(turned(piece) for piece in wood.pieces)) for wood in section.woods
        ),
        shared=tuple(turned(shape) for shape in section.shared),
    )


def _joint_at(joint: Joint, plane: Plane, upper: str, shapes: dict[str, list[Shape]]) -> float:
    """How far down the upper part ends and the lower one begins, on the line through the origin."""
    ends = []
    for shape in shapes[upper]:
        inside = stretch_inside(shape, (0.0, 0.0), (0.0, 1.0))
        if inside is not None:
            ends.append(inside[1])
    if ends:
        return max(ends)
    place = joint.contact or joint.overlap
    return plane.flat(place.high)[1] if place is not None else 0.0


def _in_the_way(joint: Joint, setting: SettingOut, plane: Plane, placed: Placed) -> list[Wood]:
    """Other parts that touch the two and that the fastener comes to, or would if it were a little longer."""
    names = []
    for name in (joint.left, joint.right):
        if name not in GROUNDS:
            names += [contact.other(name) for contact in setting.contacts_of(name)[:_MOST_NEIGHBOURS]]
    start, way = plane.flat(placed.head), plane.turned(placed.direction)
    found = []
    for name in dict.fromkeys(names):
        if name in (joint.left, joint.right) or name in GROUNDS:
            continue
        pieces = cut_through(setting.solids[name], plane)
        met = [stretch_inside(piece, start, way) for piece in pieces]
        if any(each and each[1] > TOLERANCE_MM and each[0] < placed.length + _NEAR for each in met):
            found.append(Wood(name, tuple(pieces), False))
    return found
