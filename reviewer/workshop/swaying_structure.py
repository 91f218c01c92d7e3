"""A piece as it stands up to a push: its boards as rods, its joints as ties, and what holds it.

Doors, drawers and what only lies on hardware take no part. Places are mm, stiffness N/mm and N·mm a rad.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from typing import TYPE_CHECKING

from reviewer.geometry.vectors import Vector, nearest_axis
from reviewer.model.plan import FLOOR, GROUNDS, WALL, Axis
from reviewer.records import NamedTuple
from reviewer.reference.joint_stiffness import End
from reviewer.reference.usual_values import usual_value
from reviewer.workshop.carrying import stiffness
from reviewer.workshop.swaying_joints import Tie, resting, ties

if TYPE_CHECKING:
    from reviewer.review import Review
    from reviewer.workshop.standing import Piece

#: A board that leans less than this from upright (cosine) stands upright.
_UPRIGHT = 0.9


class Rod(NamedTuple):
    """A board along its long axis: the middle, its own axes, its size (mm) and moduli along it (MPa)."""

    middle: Vector
    directions: tuple[Vector, Vector, Vector]
    size: Vector
    low: Vector
    high: Vector
    young: float
    shear: float

    @property
    def upright(self) -> bool:
        return abs(self.directions[0][Axis.UP]) >= _UPRIGHT

    @property
    def axis(self) -> int:
        """The axis of the piece that it runs along most."""
        return nearest_axis(self.directions[0])

    def extent(self, axis: int) -> float:
        return self.high[axis] - self.low[axis]

    def across(self, axis: int) -> float:
        """How thick it is on an axis that it does not run along, mm: of a slanted one by its nearest side."""
        wide, thick = self.directions[1], self.directions[2]
        return self.size[1] if abs(wide[axis]) >= abs(thick[axis]) else self.size[2]


class Ground(NamedTuple):
    """A place where floor or wall holds a part, and on which axes."""

    part: str
    place: Vector
    axes: tuple[int, ...]


class Sway(NamedTuple):
    """A push (N) at a height (mm) along an axis and how far it moves the piece, mm (None: only pins hold)."""

    axis: int
    push: float
    height: float
    moved: float | None

    def share(self, ratio: float) -> float:
        """The sway over what is allowed, height / ratio; above 1 it is too much."""
        return self.moved * ratio / self.height if self.moved is not None else math.inf


class Structure(NamedTuple):
    """All of a piece that can stand up to a push, tied to the floor. ``base`` and ``top`` are mm up.

    ``end`` is that of the ranges which its joints were taken at.
    """

    rods: dict[str, Rod]
    ties: tuple[Tie, ...]
    grounds: tuple[Ground, ...]
    base: float
    top: float
    end: End = "stiff"

    @property
    def height(self) -> float:
        return self.top - self.base

    def uprights(self) -> dict[str, Rod]:
        """The boards that stand upright on the floor, in the plan's order."""
        feet = {ground.part for ground in self.grounds if Axis.UP in ground.axes}
        return {name: rod for name, rod in self.rods.items() if rod.upright and name in feet}

    def joined(self) -> bool:
        """Whether ties alone lead from each part to all others: else a join is lacking, told elsewhere."""
        beside: dict[str, list[str]] = {}
        for tie in self.ties:
            beside.setdefault(tie.one, []).append(tie.two)
            beside.setdefault(tie.two, []).append(tie.one)
        reached = dict.fromkeys(list(self.rods)[:1])
        waiting = list(reached)
        for name in waiting:  # grows while it is walked
            for other in beside.get(name, ()):
                if other not in reached:
                    reached[other] = None
                    waiting.append(other)
        return len(reached) == len(self.rods)

    def with_more(self, rods: dict[str, Rod], more: Sequence[Tie]) -> Structure:
        """The same with boards and joints added."""
        return self._replace(rods={**self.rods, **rods}, ties=(*self.ties, *more))


def _rod(review: Review, name: str) -> Rod:
    solid = review.setting.solids[name]
    part = review.plan.parts[name]
    young, _ = stiffness(review.stock_of(name), part.grain == part.long)
    wood = review.material_of(name)
    shear = young * usual_value("shear-share-of-wood" if wood.grained else "shear-share-without-grain")
    middle = (
        (solid.low[0] + solid.high[0]) / 2,
        (solid.low[1] + solid.high[1]) / 2,
        (solid.low[2] + solid.high[2]) / 2,
    )
    return Rod(middle, solid.directions, solid.size, solid.low, solid.high, young, shear)


def _feet(part: str, low: Vector, high: Vector) -> Iterable[Ground]:
    """A foot's pins: one in its middle, or one at each end on an axis on which it is long."""
    every = (Axis.ACROSS, Axis.DEEP, Axis.UP)
    places: list[list[float]] = [[]]
    for axis in (Axis.ACROSS, Axis.DEEP):
        ends = (low[axis], high[axis])
        at = ends if ends[1] - ends[0] >= usual_value("sway-long-foot") else (sum(ends) / 2,)
        places = [[*place, each] for place in places for each in at]
    for x, y in places:
        yield Ground(part, (x, y, low[Axis.UP]), every)


def _grounds(review: Review, piece: Piece, here: dict[str, None]) -> list[Ground]:
    setting = review.setting
    found: list[Ground] = []
    every = (Axis.ACROSS, Axis.DEEP, Axis.UP)
    for name in piece.feet:
        if name not in here:
            continue
        for contact in setting.contacts_of(name):
            if contact.other(name) == FLOOR:
                found += _feet(name, contact.low, contact.high)
    if review.hanging is not None:
        for hung in review.hanging.hung:
            if hung.other == FLOOR and hung.part in here:
                found += _feet(hung.part, hung.low, hung.high)
    if piece.fixed:
        for contact in setting.contacts_of(WALL):
            name = contact.other(WALL)
            if name in here and any(WALL in joint[:2] for joint in setting.joints_of.get(name, ())):
                ends = contact.low, contact.high
                found += [Ground(name, place, every) for place in ends]
    look = setting.wall[0] if setting.wall is not None else Axis.DEEP
    for restraint in piece.restraints:
        # A strap only keeps the piece from leaving the wall; whatever is screwed on holds it every way.
        axes = (look,) if restraint.device == "strap" else every
        for name in restraint.what:
            if name in here:
                solid = setting.solids[name]
                height = restraint.height if restraint.height is not None else solid.high[Axis.UP]
                if solid.low[Axis.UP] <= height <= solid.high[Axis.UP]:
                    middle = solid.centre
                    found.append(Ground(name, (middle[0], middle[1], height), axes))
    return found


def _standing(here: dict[str, None], joints: Sequence[Tie], grounds: Sequence[Ground]) -> dict[str, None]:
    """The parts that ties lead to from the ground."""
    beside: dict[str, list[str]] = {}
    for tie in joints:
        beside.setdefault(tie.one, []).append(tie.two)
        beside.setdefault(tie.two, []).append(tie.one)
    reached = dict.fromkeys(ground.part for ground in grounds)
    waiting = list(reached)
    for name in waiting:  # grows while it is walked
        for other in beside.get(name, ()):
            if other not in reached and other in here:
                reached[other] = None
                waiting.append(other)
    return reached


def structure(
    review: Review, piece: Piece, end: End = "stiff", *, glued: bool = False, loose: bool = True
) -> Structure | None:
    """The piece as rods and ties; None where nothing of it stands on the floor.

    Joints are as stiff as that end of their range. ``glued`` takes every joint as glued,
    ``loose`` takes parts with it that only lie on others.
    """
    setting, moving = review.setting, review.moves_with
    here = {name: None for name in piece.parts if name not in moving}
    joints = [
        joint
        for name in here
        for joint in setting.joints_of.get(name, ())
        if joint.left == name and joint.right in here
    ]
    found = ties(joints, setting.solids, end, glued=glued)
    if loose:
        tied = {(tie.one, tie.two) for tie in found} | {(tie.two, tie.one) for tie in found}
        for name in here:
            for contact in setting.contacts_of(name):
                if (
                    contact.first == name
                    and contact.axis == Axis.UP
                    and contact.second in here
                    and name not in GROUNDS
                    and (name, contact.second) not in tied
                ):
                    found.append(resting(contact, end))
    grounds = _grounds(review, piece, here)
    feet = [ground for ground in grounds if Axis.UP in ground.axes]
    if not feet or not any(ground.part in piece.feet for ground in feet):
        return None
    standing = _standing(here, found, grounds)
    kept = {name: None for name in here if name in standing}
    rods = {name: _rod(review, name) for name in kept}
    base = min(ground.place[Axis.UP] for ground in feet)
    top = max(rod.high[Axis.UP] for rod in rods.values())
    held = tuple(tie for tie in found if tie.one in kept and tie.two in kept)
    return Structure(rods, held, tuple(grounds), base, top, end)
