"""What the load path brings to each joint: pressing, sliding along the face, pulling apart, and turning open.

A load goes straight down, so what meets face to side is sheared, what hangs is pulled apart, and what lies on
something is pressed and loads no fastener. A part that is held on one side only, and by nothing else, turns
about the lower edge of its joint: that moment pulls on what stands above.

Left out: sideways pushes, which no load of a plan has (``swaying`` judges them); the turning of parts that
several joints keep from it, where it depends on how stiff each of them is.
"""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from reviewer.model.plan import FLOOR, GROUNDS, Axis
from reviewer.records import NamedTuple
from reviewer.setting_out.result import Joint
from reviewer.setting_out.solid import Solid, Vector
from reviewer.units import TOLERANCE_MM
from reviewer.workshop.driving import joint_axis
from reviewer.workshop.holding import Held, binds

if TYPE_CHECKING:
    from reviewer.review import Review


class JointForce(NamedTuple):
    """What one part brings to the joints with one of its supports. N, mm; the moment in N·mm.

    ``presses`` is borne by contact, ``shear`` goes along the face, ``pull`` takes the parts apart, ``moment``
    turns the joint open about the low edge of its patch. ``axis`` is square to the face, ``low`` and ``high``
    bound the patch. ``brief`` is the share of the load that does not stay.
    """

    part: str
    to: str
    joints: tuple[Joint, ...]
    axis: int
    low: Vector
    high: Vector
    presses: float
    shear: float
    pull: float
    moment: float
    brief: float

    @property
    def loads(self) -> bool:
        """True where anything but contact has to bear it."""
        return self.shear > 0 or self.pull > 0 or self.moment > 0


#: Forces below this are none, N.
_LEAST_N = 0.05


def _pair(one: str, two: str) -> tuple[str, str]:
    return (one, two) if one < two else (two, one)


def _upwards(joint: Joint, part: str, axis: int | None, solids: dict[str, Solid]) -> float:
    """How far the way from a part into its support points upwards, -1 to 1: 0 for faces that stand."""
    contact = joint.contact
    if contact is not None and joint.overlap is None:
        up = contact.normal[Axis.UP]
        return up if contact.first == part else -up
    if axis != Axis.UP:
        return 0.0
    other = joint.right if joint.left == part else joint.left
    return 1.0 if solids[other].centre[Axis.UP] > solids[part].centre[Axis.UP] else -1.0


class _Forces:
    def __init__(self, review: Review) -> None:
        self.review = review
        self.solids = review.setting.solids
        self.supports = review.holding.supports
        self.handed = review.carrying.handed
        self.joints: dict[tuple[str, str], list[Joint]] = {}
        self.beside: dict[str, dict[str, None]] = {}  # all that a part is joined to, in order
        for joint in review.setting.joints:
            if joint.meets and binds(joint.join):
                self.joints.setdefault(_pair(joint.left, joint.right), []).append(joint)
                self.beside.setdefault(joint.left, {})[joint.right] = None
                self.beside.setdefault(joint.right, {})[joint.left] = None
        self.brought: dict[str, list[tuple[Vector, float]]] | None = None

    def all(self) -> tuple[JointForce, ...]:
        found: list[JointForce] = []
        for part, handed in self.handed.items():
            by: dict[str, list[tuple[Held, float, float]]] = {}
            for each in handed:
                if each.to.joined and each.to.by != FLOOR and _pair(part, each.to.by) in self.joints:
                    by.setdefault(each.to.by, []).append((each.to, each.force, each.brief))
            if not by:
                continue
            moments = self._moments(part, [each.to for each in handed])
            for to, forces in by.items():
                found.append(self._force(part, to, forces, moments.get(to, 0.0)))
        return tuple(found)

    def _force(
        self, part: str, to: str, forces: list[tuple[Held, float, float]], moment: float
    ) -> JointForce:
        joints = self.joints[_pair(part, to)]
        axis = joint_axis(joints[0], self.solids)
        presses = shear = pull = 0.0
        for held, force, _ in forces:
            if held.how == "rests":
                up = -1.0
            elif held.how == "hangs":
                up = 1.0
            else:
                up = _upwards(joints[0], part, axis, self.solids)
            shear += abs(force) * math.sqrt(max(0.0, 1 - up * up))
            along = force * up
            pull += max(0.0, along)
            presses += max(0.0, -along)
        held = max(forces, key=lambda each: abs(each[1]))[0]
        whole = math.fsum(abs(force) for _, force, _ in forces)
        brief = math.fsum(abs(each) for _, _, each in forces)
        return JointForce(
            part,
            to,
            tuple(joints),
            axis if axis is not None else Axis.UP,
            held.low,
            held.high,
            presses,
            shear if shear > _LEAST_N else 0.0,
            pull if pull > _LEAST_N else 0.0,
            moment,
            brief / whole if whole > 0 else 0.0,
        )

    def _moments(self, part: str, held: list[Held]) -> dict[str, float]:
        """By support, the moment that turns a part off it, N·mm, where it is held on one side alone."""
        if any(each.how != "joint" or not each.joined for each in held) or not self.solids[part].square:
            return {}
        names = {each.by for each in held}
        for other in self.beside.get(part, {}):
            own = {each.by for each in self.supports.get(other, ())} if other not in names else set()
            if other not in names and own != {part}:
                return {}  # what else it is joined to keeps it from turning, too
        sides = set()
        for each in held:
            joints = self.joints.get(_pair(part, each.by))
            axis = joint_axis(joints[0], self.solids) if joints else None
            if axis is None or axis == Axis.UP:
                return {}
            middle = each.middle[axis]
            sides.add((axis, round(middle, 1), middle > self.solids[part].centre[axis]))
        if len(sides) != 1:
            return {}
        ((axis, place, _),) = sides
        total = math.fsum(force * abs(at[axis] - place) for at, force in self._on(part))
        shares = {each.by: 0.0 for each in held}
        for handed in self.handed[part]:
            shares[handed.to.by] += abs(handed.force)
        whole = math.fsum(shares.values())
        if whole <= _LEAST_N:
            return {}
        return {by: total * share / whole for by, share in shares.items()}

    def _on(self, part: str) -> list[tuple[Vector, float]]:
        """All that weighs on a part: where, mm, and N."""
        if self.brought is None:
            self.brought = {}
            for handed in self.handed.values():
                for each in handed:
                    if each.to.by not in GROUNDS:
                        self.brought.setdefault(each.to.by, []).append((each.to.middle, each.force))
        solid, mass = self.solids[part], self.review.masses[part]
        found = [(solid.centre, mass.weight), *self.brought.get(part, ())]
        for load in self.review.declared.get(part, ()):
            at = list(solid.centre)
            if load.spot is not None:
                at[load.spot[0]] = solid.low[load.spot[0]] + load.spot[1]
            found.append(((at[0], at[1], at[2]), load.lasting + load.brief))
        return found


def joint_forces(review: Review) -> tuple[JointForce, ...]:
    """What comes to every joint that loads go through, in the order in which they come down."""
    return _Forces(review).all() if review.setting.joints else ()


def patch_height(force: JointForce) -> float:
    """How tall the patch of a joint is, mm, never nothing."""
    return max(force.high[Axis.UP] - force.low[Axis.UP], TOLERANCE_MM)
