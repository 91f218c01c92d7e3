"""The room in a piece's drawers and behind its doors, as the scope for clothing storage counts it.

The one place that measures it: the rules that ask for the scope and the reports that show it take it from
the piece. By bounds, so an estimate: enough to say that a piece is worth a check. Places mm, volumes mm³.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import replace
from typing import TYPE_CHECKING, Literal

from reviewer.geometry.grid import Grid
from reviewer.model.plan import Axis, Moving, Plan
from reviewer.records import NamedTuple
from reviewer.reference.cautions import scopes
from reviewer.reference.usual_values import usual_value
from reviewer.setting_out.result import SettingOut
from reviewer.setting_out.solid import Solid, Vector
from reviewer.units import MM_PER_FOOT, TOLERANCE_MM

if TYPE_CHECKING:
    from reviewer.workshop.standing import Piece

Box = tuple[Vector, Vector]

#: A drawer's walls stand within this of the edges of its bottom, which may stick out as its runners, mm.
_LIP_MM = 25.0
#: Looked so far for what lies over a drawer or behind a door, and then twice as far again and again, mm.
_FIRST_LOOK_MM = 200.0
#: What is behind a door is looked for on a spot so wide, mm.
_SPOT_MM = 1.0
_SAME = 1e-9


class Room(NamedTuple):
    """The room in a drawer or behind a door. ``counted`` is what of it counts for the scope, mm³."""

    name: str
    way: Literal["drawer", "door"]
    box: Box
    counted: float


def drawer_volume(width: float, deep: float, height: float) -> float:
    """mm³ of a drawer, from its inside width and depth and the height to the lowest thing above, all mm.

    CPSC guidance on clothing storage units: the height is taken less 1/8 in.
    """
    return width * deep * max(0.0, height - scopes()["drawer-clearance"].amount)


def door_volume(width: float, deep: float, height: float) -> float:
    """mm³ of the space behind a door that counts: half of it (CPSC guidance), all mm."""
    return width * deep * height * scopes()["door-share"].amount


def room_enough(volume: float) -> bool:
    """Whether a piece has as much room as the rule's scope, mm³ as counted."""
    return volume >= scopes()["clothing-volume"].amount * (1 - _SAME)


def in_clothing_scope(height: float, kg: float, volume: float) -> bool:
    """Whether a free-standing piece with doors or drawers is as large as the rule's scope: mm, kg, mm³."""
    amounts = (("clothing-height", height), ("clothing-mass", kg))
    large = all(value >= scopes()[name].amount * (1 - _SAME) for name, value in amounts)
    return large and room_enough(volume)


def with_rooms(pieces: Sequence[Piece], plan: Plan, setting: SettingOut) -> tuple[Piece, ...]:
    """The pieces of a plan in which something moves, each with the rooms that its doors and drawers close."""
    owner = {part: number for number, piece in enumerate(pieces) for part in piece.parts}
    looks: list[_Look] = []
    found: list[list[Room]] = [[] for _ in pieces]
    for moving in plan.movings:
        solids = [setting.solids[name] for name in moving.parts if name in setting.solids]
        if not solids or moving.kind == "lifts":
            continue
        here = _piece_of(solids, owner, pieces)
        if here is None:
            continue
        if not looks:
            looks.append(_Look(setting))
        room = _room(moving, solids, pieces[here], looks[0])
        if room is not None:
            found[here].append(room)
    return tuple(
        replace(piece, rooms=tuple(rooms)) if rooms else piece
        for piece, rooms in zip(pieces, found, strict=True)
    )


def _piece_of(solids: Sequence[Solid], owner: dict[str, int], pieces: Sequence[Piece]) -> int | None:
    """The piece that a door or drawer is of; what nothing hangs yet goes by its place."""
    own = owner[solids[0].name]
    if pieces[own].feet or pieces[own].fixed:
        return own
    middle, near = solids[0].centre, usual_value("drawer-near")
    for number, piece in enumerate(pieces):
        if piece.feet and all(
            piece.low[axis] - near <= middle[axis] <= piece.high[axis] + near for axis in range(3)
        ):
            return number
    return own


class _Look:
    """What lies over a place or behind it, found through a grid so that no drawer asks all parts."""

    def __init__(self, setting: SettingOut) -> None:
        self._solids = list(setting.solids.values())
        self._grid = Grid((solid.low, solid.high) for solid in self._solids)
        self._most = max(max(*map(abs, solid.low), *map(abs, solid.high)) for solid in self._solids)

    def nearest(
        self, spot: Box, axis: Axis, counts: Callable[[Solid], bool], *, up: bool = True
    ) -> float | None:
        """The nearest face of what counts, along an axis from a flat place; None where there is none."""
        start = spot[0][axis]
        for near, far in _looks(2 * self._most + _FIRST_LOOK_MM):
            low, high = list(spot[0]), list(spot[1])
            low[axis], high[axis] = (start + near, start + far) if up else (start - far, start - near)
            faces = []
            for number in self._grid.near((low[0], low[1], low[2]), (high[0], high[1], high[2])):
                solid = self._solids[number]
                face = solid.low[axis] if up else solid.high[axis]
                beyond = face >= start - TOLERANCE_MM if up else face <= start + TOLERANCE_MM
                if beyond and counts(solid):
                    faces.append(face)
            if faces:
                return min(faces) if up else max(faces)
        return None


def _looks(most: float) -> Iterator[tuple[float, float]]:
    near, far = 0.0, _FIRST_LOOK_MM
    while near < most:
        yield near, far
        near, far = far, 2 * far


def _room(moving: Moving, solids: Sequence[Solid], piece: Piece, look: _Look) -> Room | None:
    own = {solid.name for solid in solids}
    if moving.kind == "slides":
        box = _inside(solids, own, look)
        return box and Room(moving.name, "drawer", box, drawer_volume(*_sizes(box)))
    if moving.hinge is None:
        return None
    box = _behind(moving, solids, own, piece, look)
    return box and Room(moving.name, "door", box, door_volume(*_sizes(box)))


def _sizes(box: Box) -> tuple[float, float, float]:
    width, deep, height = (max(0.0, box[1][axis] - box[0][axis]) for axis in range(3))
    return width, deep, height


def _inside(solids: Sequence[Solid], own: set[str], look: _Look) -> Box | None:
    """The room in a drawer: over its bottom, between its walls, up to the lowest thing above.

    What stands further in than the walls are thick is a divider and takes nothing. Where there is no
    wall the room ends with the bottom; None without a bottom and some wall.
    """
    flat = [solid for solid in solids if solid.thick == Axis.UP]
    walls = [solid for solid in solids if solid.thick != Axis.UP]
    if not flat or not walls:
        return None
    bottom = max(flat, key=lambda solid: (solid.extent(Axis.ACROSS) * solid.extent(Axis.DEEP), solid.name))
    floor = bottom.high[Axis.UP]
    low, high = [bottom.low[0], bottom.low[1], floor], [bottom.high[0], bottom.high[1], floor]
    for axis, other in ((Axis.ACROSS, Axis.DEEP), (Axis.DEEP, Axis.ACROSS)):
        middle = bottom.centre[other]
        facing = [
            each for each in walls if each.thick == axis and each.low[other] < middle < each.high[other]
        ]
        low[axis] = _inner(((wall.low[axis], wall.high[axis]) for wall in facing), low[axis])
        high[axis] = -_inner(((-wall.high[axis], -wall.low[axis]) for wall in facing), -high[axis])
        if high[axis] <= low[axis]:
            return None
    spot = ((low[0], low[1], floor), (high[0], high[1], floor))
    over = look.nearest(spot, Axis.UP, lambda solid: solid.name not in own)
    high[2] = max(solid.high[Axis.UP] for solid in solids) if over is None else over
    return (low[0], low[1], low[2]), (high[0], high[1], high[2])


def _inner(walls: Iterable[tuple[float, float]], edge: float) -> float:
    """The inner face of what stands at the edge of a bottom, one wall laid against another."""
    inner, reach = edge, _LIP_MM
    for near, far in sorted(walls):
        if far > inner and near <= inner + reach:
            inner, reach = far, TOLERANCE_MM
    return inner


def _behind(moving: Moving, solids: Sequence[Solid], own: set[str], piece: Piece, look: _Look) -> Box | None:
    """The room behind a door, as wide and tall as it, to the next board along it or the piece's end."""
    low = [min(solid.low[axis] for solid in solids) for axis in range(3)]
    high = [max(solid.high[axis] for solid in solids) for axis in range(3)]
    thin = Axis(min(range(3), key=lambda axis: (high[axis] - low[axis], axis)))
    if thin == Axis.UP:
        return None  # a lid
    # A door in the side of a piece looks away from its middle, any other to the front.
    middle = (piece.low[thin] + piece.high[thin]) / 2
    inwards = thin == Axis.DEEP or (low[thin] + high[thin]) / 2 < middle
    start = high[thin] if inwards else low[thin]
    centre = [(one + two) / 2 for one, two in zip(low, high, strict=True)]
    centre[thin] = start
    spot_low, spot_high = [each - _SPOT_MM / 2 for each in centre], [each + _SPOT_MM / 2 for each in centre]
    spot_low[thin] = spot_high[thin] = start
    end = look.nearest(
        ((spot_low[0], spot_low[1], spot_low[2]), (spot_high[0], spot_high[1], spot_high[2])),
        thin,
        lambda solid: solid.thick == thin and solid.name not in own,
        up=inwards,
    )
    if inwards:
        far = piece.high[thin] if end is None else min(end, piece.high[thin])
        low[thin], high[thin] = start, max(start, far)
    else:
        far = piece.low[thin] if end is None else max(end, piece.low[thin])
        low[thin], high[thin] = min(start, far), start
    return (low[0], low[1], low[2]), (high[0], high[1], high[2])


def counted(rooms: Iterable[Room]) -> float:
    """mm³ of some rooms as the scope counts them: drawers whole, behind doors half."""
    return math.fsum(room.counted for room in rooms)


def cubic_feet(volume: float) -> float:
    """A volume in cubic feet, in which the scope and a drawer's filling are printed."""
    return volume / MM_PER_FOOT**3
