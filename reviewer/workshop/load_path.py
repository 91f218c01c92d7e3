"""The way of all loads through the piece: every force that goes over, and what comes down where."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from reviewer.mechanics.beam import BeamResult
from reviewer.model.plan import GROUNDS, Axis
from reviewer.records import NamedTuple
from reviewer.setting_out.solid import Vector

if TYPE_CHECKING:
    from reviewer.review import Review
    from reviewer.workshop.member import Member


class Step(NamedTuple):
    """A force (N, downwards) that a part hands on to another, the floor or the wall, at its middle (mm)."""

    part: str
    to: str
    at: Vector
    force: float

    @property
    def lands(self) -> bool:
        """True where it reaches the floor or the wall."""
        return self.to in GROUNDS


class Put(NamedTuple):
    """A declared load (N) on a part, and where from above it is put, mm."""

    part: str
    at: Vector
    force: float


class LoadPath(NamedTuple):
    """All that weighs (N) and its way down. Together ``weights`` and ``loads`` are what arrives and ends.

    ``ends`` are the forces that a part cannot hand on. ``tips`` are parts that cannot stand as drawn: with
    any of them no force is known, and ``steps`` is empty.
    """

    weights: float
    loads: float
    puts: tuple[Put, ...]
    steps: tuple[Step, ...]
    ends: tuple[tuple[str, float], ...]
    tips: tuple[str, ...]

    def on(self, ground: str) -> float:
        """What comes down on the floor or the wall, N."""
        return math.fsum(step.force for step in self.steps if step.to == ground)


def _tips(member: Member) -> bool:
    """True for a part on one edge that nothing holds level, so that its forces are not known."""
    return not isinstance(member.standing, BeamResult) and not all(
        each.held.joined for each in member.bearings
    )


def load_path(review: Review) -> LoadPath | None:
    """The way of all loads; None as long as a part has no place."""
    setting = review.setting
    if not setting.whole or not setting.solids:
        return None
    carrying = review.carrying
    puts = []
    for name, loads in review.declared.items():
        solid = setting.solids[name]
        for load in loads:
            at = [*solid.centre]
            at[Axis.UP] = solid.high[Axis.UP]
            if load.spot is not None:
                axis, place = load.spot
                at[axis] = solid.low[axis] + place
            puts.append(Put(name, (at[0], at[1], at[2]), load.lasting + load.brief))
    tips = tuple(name for name, member in carrying.members.items() if _tips(member))
    steps = tuple(
        Step(name, each.to.by, each.to.middle, each.force)
        for name, handed in carrying.handed.items()
        for each in handed
    )
    return LoadPath(
        math.fsum(mass.weight for mass in review.masses.values()),
        math.fsum(carrying.declared.values()),
        tuple(puts),
        () if tips else steps,
        tuple(carrying.lost.items()),
        tips,
    )
