"""Joints that make room: which part goes into which, along which axis, how deep, and the room there is."""

from __future__ import annotations

import math

from reviewer.model.plan import HousingKind
from reviewer.records import NamedTuple
from reviewer.reference.usual_values import usual_value
from reviewer.setting_out.result import Joint, Overlap, SettingOut
from reviewer.setting_out.solid import Solid
from reviewer.units import TOLERANCE_MM

_YIELDS = {"face": 0, "edge": 1, "end": 2}
#: Joints that take all that a corner needs, where both parts end.
CORNERS: tuple[HousingKind, ...] = ("mitre", "splined mitre", "dovetails", "box joint")
#: Joints that make room by where they are, not by a stated depth.
BY_PLACE: tuple[HousingKind, ...] = (*CORNERS, "bridle", "tongue and groove")


class Housed(NamedTuple):
    """One part let into another. Lengths in mm along ``axis``.

    ``depth`` is how far they run into each other, ``room`` what the joint takes away. Half laps take
    from both, a mitre, dovetails and a box joint take all that a corner needs, and a bridle all that its
    slot at an end does. A tongue goes in by no more than its board is thick.
    """

    joint: Joint
    axis: int
    part: str
    into: str
    depth: float
    room: float
    room_said: bool

    @property
    def short(self) -> float:
        """How much too shallow the joint is; nothing or less when it is deep enough."""
        return self.depth - self.room


def _at_an_end(overlap: Overlap, solid: Solid, axis: int) -> bool:
    """True when the shared space takes one end of a solid on an axis, and not the whole of it."""
    low = -TOLERANCE_MM <= overlap.low[axis] - solid.low[axis] <= TOLERANCE_MM
    high = -TOLERANCE_MM <= overlap.high[axis] - solid.high[axis] <= TOLERANCE_MM
    return low != high


def _past(overlap: Overlap, one: Solid, two: Solid) -> list[int]:
    """The axes on which the shared space takes one end of both."""
    return [axis for axis in range(3) if _at_an_end(overlap, one, axis) and _at_an_end(overlap, two, axis)]


def _axis(kind: HousingKind, overlap: Overlap, one: Solid, two: Solid) -> int:
    """The axis along which one part goes into the other."""
    every = range(3)
    if kind in ("half lap", "bridle"):
        choice = [axis for axis in every if axis not in (one.long, two.long)]
    elif kind == "mortise and tenon":
        past = _past(overlap, one, two)
        ends = [
            axis
            for axis in every
            if any(solid.long == axis and _at_an_end(overlap, solid, axis) for solid in (one, two))
        ]
        choice = [axis for axis in ends if axis in past] or ends or past
    elif kind in ("dado", "groove", "tongue and groove"):
        choice = _past(overlap, one, two)
    else:
        choice = []
    if len(choice) == 1:
        return choice[0]
    depths = overlap.depths
    return min(choice or every, key=lambda axis: (depths[axis], axis))


def _ends_there(overlap: Overlap, solid: Solid) -> bool:
    """True when the shared space is at an end or an edge of a part, and not only at one of its faces."""
    return any(_at_an_end(overlap, solid, axis) for axis in range(3) if axis != solid.thick)


def _room_by_place(kind: HousingKind, overlap: Overlap, axis: int, part: Solid, into: Solid) -> float:
    """The room (mm) of a joint whose place makes it: all that is needed there, none elsewhere."""
    both = (part, into)
    if kind in ("mitre", "splined mitre"):
        fits = all(any(_at_an_end(overlap, solid, each) for each in range(3)) for solid in both)
    elif kind in CORNERS:
        fits = all(_ends_there(overlap, solid) for solid in both)
    elif kind == "bridle":
        fits = any(_at_an_end(overlap, solid, solid.long) for solid in both)
    else:
        fits = axis not in (part.thick, into.thick) and all(_at_an_end(overlap, each, axis) for each in both)
        return min(part.thickness, into.thickness) if fits else 0.0
    return math.inf if fits else 0.0


def housed(joint: Joint, solids: dict[str, Solid]) -> Housed | None:
    """What a joint's housing makes room for; None for a joint without housing or without shared space."""
    housing, overlap = joint.join.housing, joint.overlap
    if housing is None or overlap is None:
        return None
    left, right = solids[joint.left], solids[joint.right]
    axis = _axis(housing.kind, overlap, left, right)
    part, into = left, right
    if _YIELDS[left.surface(axis)] < _YIELDS[right.surface(axis)]:
        part, into = right, left
    depth = overlap.depths[axis]
    if housing.kind in BY_PLACE:
        room = _room_by_place(housing.kind, overlap, axis, part, into)
    elif housing.depth is not None:
        room = housing.depth
    elif housing.kind == "half lap":
        room = (part.extent(axis) + into.extent(axis)) / 2
    else:
        room = into.extent(axis) * usual_value("housing-share")
    said = housing.depth is not None or housing.kind in (*BY_PLACE, "half lap")
    return Housed(joint, axis, part.name, into.name, depth, room, said)


def housed_joints(setting: SettingOut) -> tuple[Housed, ...]:
    """Every housing that parts really go into, in the order of the joints."""
    found = (housed(joint, setting.solids) for joint in setting.joints if joint.join.housing is not None)
    return tuple(each for each in found if each is not None)
