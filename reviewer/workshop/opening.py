"""Doors, drawers and lids of a piece as they stand open: where their weight is then, and what is in them.

Only a plan in which something moves asks for this. What lifts out has no open place and is passed over.
Places mm, masses kg, volumes mm³.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping, Sequence
from typing import Literal

from reviewer.mechanics.mass import Mass, combined
from reviewer.mechanics.stability import TippingEdge
from reviewer.model.plan import Axis
from reviewer.records import NamedTuple
from reviewer.reference.usual_values import usual_source, usual_value
from reviewer.setting_out.moving import Moved
from reviewer.setting_out.result import SettingOut
from reviewer.setting_out.solid import Solid, Vector
from reviewer.units import KG_PER_POUND, NEWTON_PER_KG, TOLERANCE_MM
from reviewer.workshop.enclosed_volume import Box, Room, cubic_feet
from reviewer.workshop.loading import PLAN_SAYS
from reviewer.workshop.standing import Piece

Way = Literal["drawer", "door", "lid"]

#: What is open by less than this counts as shut, radians: about six degrees.
_AJAR = 0.1


class Opening(NamedTuple):
    """Something of a piece that opens. Masses and places are those of the closed piece.

    ``contents`` is what the plan puts in it, or where it says nothing its usual filling; None for doors
    and lids. Of those with the same ``lock`` an interlock lets one open at a time.
    """

    name: str
    way: Way
    parts: tuple[str, ...]
    moved: Moved
    box: Box
    mass: Mass
    contents: Mass | None
    filling: str  # where the weight of the contents is from
    lock: int | None = None

    def corners(self) -> list[Vector]:
        """The corners of its bounds when it is closed."""
        low, high = self.box
        return [(x, y, z) for x in (low[0], high[0]) for y in (low[1], high[1]) for z in (low[2], high[2])]

    def turn(self, edge: TippingEdge) -> float:
        """How far it is open when its own weight is furthest out over an edge, radians or mm."""
        if self.way == "drawer":
            # A drawer that opens away from an edge stays closed in the worst case.
            return self.travel if edge.outward[1] < 0 else 0.0
        hinge, most = self.moved.hinge, math.radians(self.moved.moving.degrees or 0.0)
        assert hinge is not None
        along, out = self._ways()
        u, v = self._flat((self.mass.x, self.mass.y, self.mass.z))
        begins = math.atan2(v, u)
        towards = math.atan2(_level(out, edge), _level(along, edge))
        needed = (towards - begins) % (2 * math.pi)
        if needed <= most:
            return needed if needed > _AJAR else 0.0
        arms = [
            (_out_by(edge, self.place((self.mass.x, self.mass.y, self.mass.z), t)), t) for t in (0.0, most)
        ]
        return max(arms)[1]

    @property
    def travel(self) -> float:
        """How far a drawer comes out, mm."""
        return self.moved.moving.distance or 0.0

    def _ways(self) -> tuple[Vector, Vector]:
        """Across the closed part from the hinge, and the way that it opens."""
        hinge, face = self.moved.hinge, self.moved.moving.hinge
        assert hinge is not None
        assert face is not None
        along, out = [0.0] * 3, [0.0] * 3
        along[face[0]] = 1.0 if face[1] == "low" else -1.0
        out[hinge.opens_along] = -1.0 if hinge.opens_to == "low" else 1.0
        return (along[0], along[1], along[2]), (out[0], out[1], out[2])

    def _flat(self, point: Vector) -> tuple[float, float]:
        hinge = self.moved.hinge
        assert hinge is not None
        away = (point[0] - hinge.start[0], point[1] - hinge.start[1], point[2] - hinge.start[2])
        along, out = self._ways()
        return _dot(away, along), _dot(away, out)

    def place(self, point: Vector, turn: float) -> Vector:
        """Where a place of the closed piece is when this is open so far."""
        if self.way == "drawer":
            return (point[0], point[1] - turn, point[2])
        hinge = self.moved.hinge
        assert hinge is not None
        along, out = self._ways()
        u, v = self._flat(point)
        cos, sin = math.cos(turn), math.sin(turn)
        du, dv = u * cos - v * sin - u, u * sin + v * cos - v
        return (
            point[0] + du * along[0] + dv * out[0],
            point[1] + du * along[1] + dv * out[1],
            point[2] + du * along[2] + dv * out[2],
        )

    def opened(self, mass: Mass, turn: float) -> Mass:
        """A mass in it when it is open so far."""
        return Mass(mass.kg, *self.place((mass.x, mass.y, mass.z), turn))

    def bounds(self, turn: float) -> Box:
        """The bounds of the whole of it when it is open so far."""
        return around(self.place(corner, turn) for corner in self.corners())

    def hold(self, edge: TippingEdge, turn: float) -> Vector:
        """Where someone who hangs on it turns the piece over most: the top of the corner furthest out."""
        return max(
            (self.place(corner, turn) for corner in self.corners()),
            key=lambda place: (round(_out_by(edge, place), 6), place[2], place),
        )


def _dot(a: Vector, b: Vector) -> float:
    return a[0] * b[0] + a[1] * b[1] + a[2] * b[2]


def _level(way: Vector, edge: TippingEdge) -> float:
    return way[0] * edge.outward[0] + way[1] * edge.outward[1]


def _out_by(edge: TippingEdge, place: Vector) -> float:
    return -edge.arm(place[0], place[1])


def around(points: Iterable[Vector]) -> Box:
    """The bounds of some places."""
    listed = list(points)
    low = [min(point[axis] for point in listed) for axis in range(3)]
    high = [max(point[axis] for point in listed) for axis in range(3)]
    return (low[0], low[1], low[2]), (high[0], high[1], high[2])


def clash(one: Box, two: Box) -> bool:
    """True when two open things want the same room, so that they cannot both be open."""
    return all(
        min(one[1][axis], two[1][axis]) - max(one[0][axis], two[0][axis]) > TOLERANCE_MM for axis in range(3)
    )


def openings(
    piece: Piece,
    moved: Iterable[Moved],
    setting: SettingOut,
    masses: Mapping[str, Mass],
    lasting: Mapping[str, float],
    locks: Mapping[str, int],
) -> tuple[Opening, ...]:
    """All that opens in a piece, in the plan's order.

    ``lasting`` is the declared load that stays on each part, N; ``locks`` has the interlock of what has one.
    """
    here = set(piece.parts)
    inside = {room.name: room for room in piece.rooms}
    found = []
    for each in moved:
        names = tuple(name for name in each.moving.parts if name in here and name in setting.solids)
        if not names or each.moving.kind == "lifts":
            continue
        if each.moving.kind == "opens" and each.hinge is None:
            continue
        whole = combined(masses[name] for name in names)
        if whole is None:
            continue
        way: Way = "drawer"
        if each.hinge is not None:
            way = "lid" if each.hinge.opens_along == Axis.UP else "door"
        solids = [setting.solids[name] for name in names]
        contents, filling = None, ""
        if way == "drawer":
            contents, filling = _contents(names, solids, inside.get(each.moving.name), lasting)
        bounds = around([*(solid.low for solid in solids), *(solid.high for solid in solids)])
        name = each.moving.name
        lock = locks.get(name)
        found.append(Opening(name, way, names, each, bounds, whole, contents, filling, lock))
    return tuple(found)


def _contents(
    names: Sequence[str],
    solids: Sequence[Solid],
    room: Room | None,
    lasting: Mapping[str, float],
) -> tuple[Mass | None, str]:
    """What lies in a drawer: the plan's load, or its usual filling."""
    put = [(lasting[name], solid) for name, solid in zip(names, solids, strict=True) if lasting.get(name)]
    if put:
        kg = math.fsum(newtons for newtons, _ in put) / NEWTON_PER_KG
        middle = (
            room.box
            if room is not None
            else around([*(solid.low for _, solid in put), *(solid.high for _, solid in put)])
        )
        return _mass_in(kg, middle), PLAN_SAYS
    if room is None or room.counted <= 0:
        return None, ""
    kg = cubic_feet(room.counted) * usual_value("drawer-filling") * KG_PER_POUND
    return _mass_in(kg, room.box), usual_source("drawer-filling")


def _mass_in(kg: float, box: Box) -> Mass:
    low, high = box
    return Mass(kg, (low[0] + high[0]) / 2, (low[1] + high[1]) / 2, (low[2] + high[2]) / 2)
