"""Where moving parts are when they are fully open, and the room that they sweep on the way.

A piece is drawn and judged closed; this is worked out only when something asks. What is hinged turns
about a line along its hinged face, at the side to which it opens: a door at its front, a lid at its top.
Bounds are exact for square boards. All in mm.
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from typing import Literal

from reviewer.model.plan import Axis, Moving, Plan
from reviewer.records import NamedTuple
from reviewer.setting_out.result import Extent, SettingOut
from reviewer.setting_out.solid import Solid, Vector

_QUARTER = math.pi / 2
#: A corner that comes within so much of a quarter turn's end has passed it.
_HAIR = 1e-12
Bounds = tuple[Vector, Vector]


class HingeLine(NamedTuple):
    """The line that something turns about: its axis, its two ends, and the way that it opens."""

    axis: Axis
    start: Vector
    end: Vector
    opens_along: Axis
    opens_to: Literal["low", "high"]


class Moved(NamedTuple):
    """One movement in space.

    ``open`` has the bounds of each part when it is fully open, ``swept`` those of all that it passes
    through, closed and open included. What lifts out has no open place: ``open`` is empty.
    """

    moving: Moving
    closed: Extent
    hinge: HingeLine | None
    open: dict[str, Extent]
    swept: dict[str, Extent]

    @property
    def whole_swept(self) -> Extent:
        """The bounds of all the room that it needs."""
        return _around(self.moving.name, self.swept.values())


def moved(plan: Plan, setting: SettingOut) -> tuple[Moved, ...]:
    """Every movement of the plan whose parts have their place, in the plan's order."""
    middle: Vector | None = None
    found = []
    for moving in plan.movings:
        solids = [setting.solids[name] for name in moving.parts if name in setting.solids]
        if not solids:
            continue
        if middle is None:
            middle = _middle(setting.solids.values())
        found.append(_moved(moving, solids, middle))
    return tuple(found)


def _around(name: str, boxes: Iterable[Extent | Solid]) -> Extent:
    listed = list(boxes)
    low = [min(box.low[axis] for box in listed) for axis in range(3)]
    high = [max(box.high[axis] for box in listed) for axis in range(3)]
    return Extent(name, (low[0], low[1], low[2]), (high[0], high[1], high[2]))


def _middle(solids: Iterable[Solid]) -> Vector:
    whole = _around("", solids)
    low, high = whole.low, whole.high
    return ((low[0] + high[0]) / 2, (low[1] + high[1]) / 2, (low[2] + high[2]) / 2)


def _moved(moving: Moving, solids: list[Solid], middle: Vector) -> Moved:
    closed = _around(moving.name, solids)
    if moving.kind == "slides":
        away = moving.distance or 0.0
        out = {solid.name: _pulled(solid, away, both=False) for solid in solids}
        swept = {solid.name: _pulled(solid, away, both=True) for solid in solids}
        return Moved(moving, closed, None, out, swept)
    if moving.kind == "lifts" or moving.hinge is None:
        swept = {solid.name: Extent(solid.name, solid.low, solid.high) for solid in solids}
        return Moved(moving, closed, None, {}, swept)
    hinge = hinge_line(closed, *moving.hinge, middle)
    turn = math.radians(moving.degrees or 0.0)
    return Moved(
        moving,
        closed,
        hinge,
        {solid.name: _turned(solid, hinge, moving.hinge, turn, swept=False) for solid in solids},
        {solid.name: _turned(solid, hinge, moving.hinge, turn, swept=True) for solid in solids},
    )


def _pulled(solid: Solid, away: float, *, both: bool) -> Extent:
    (x0, y0, z0), (x1, y1, z1) = solid.low, solid.high
    return Extent(solid.name, (x0, y0 - away, z0), (x1, y1 if both else y1 - away, z1))


def hinge_line(closed: Extent, face: Axis, side: Literal["low", "high"], middle: Vector) -> HingeLine:
    """The line that a closed box turns about when it is hinged at a face.

    It opens the way that its broad face looks: a door to the front, a lid up, a door in the piece's side
    away from the piece's ``middle``. Where that is the hinged face itself, a lid still opens up and all
    else to the front.
    """
    thin = Axis(min(range(3), key=lambda axis: (closed.high[axis] - closed.low[axis], axis)))
    if thin == face:
        thin = Axis.UP if face == Axis.DEEP else Axis.DEEP
    to: Literal["low", "high"] = "low"
    if thin == Axis.UP:
        to = "high"
    elif thin == Axis.ACROSS:
        to = "low" if closed.low[0] + closed.high[0] < 2 * middle[0] else "high"
    along = Axis(3 - face - thin)
    start, end = list(closed.low), list(closed.high)
    start[face] = end[face] = (closed.low if side == "low" else closed.high)[face]
    start[thin] = end[thin] = (closed.low if to == "low" else closed.high)[thin]
    return HingeLine(along, (start[0], start[1], start[2]), (end[0], end[1], end[2]), thin, to)


def _turned(
    solid: Solid,
    hinge: HingeLine,
    face: tuple[Axis, Literal["low", "high"]],
    turn: float,
    *,
    swept: bool,
) -> Extent:
    """A part's bounds after a turn about the hinge, or those of the way there too.

    In the plane of the turn ``u`` runs from the hinge across the closed part, ``v`` the way that it opens,
    and the turn goes from u to v.
    """
    across, out = face[0], hinge.opens_along
    sign_u = 1.0 if face[1] == "low" else -1.0
    sign_v = -1.0 if hinge.opens_to == "low" else 1.0
    us, vs = [], []
    for place_u in (solid.low[across], solid.high[across]):
        for place_v in (solid.low[out], solid.high[out]):
            u = sign_u * (place_u - hinge.start[across])
            v = sign_v * (place_v - hinge.start[out])
            radius, at = math.hypot(u, v), math.atan2(v, u)
            angles = [at + turn]
            if swept:
                angles.append(at)
                first = math.ceil((at - _HAIR) / _QUARTER)
                last = math.floor((at + turn + _HAIR) / _QUARTER)
                angles += [number * _QUARTER for number in range(first, last + 1)]
            us += [radius * math.cos(angle) for angle in angles]
            vs += [radius * math.sin(angle) for angle in angles]
    low, high = list(solid.low), list(solid.high)
    for axis, sign, found in ((across, sign_u, us), (out, sign_v, vs)):
        places = [hinge.start[axis] + sign * each for each in (min(found), max(found))]
        low[axis], high[axis] = min(places), max(places)
    return Extent(solid.name, (low[0], low[1], low[2]), (high[0], high[1], high[2]))
