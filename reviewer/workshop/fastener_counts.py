"""How many fasteners of each kind the joints take, join by join and over the whole piece."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING

from reviewer.language.source import Span
from reviewer.limits import Limits
from reviewer.model.plan import Fastening, FasteningKind, Join
from reviewer.records import NamedTuple
from reviewer.reference.packs import packs_for
from reviewer.setting_out.result import Joint
from reviewer.setting_out.solid import Surface
from reviewer.workshop.driving import fastener_count, joint_axis

if TYPE_CHECKING:
    from reviewer.review import Review

#: Kinds that are sold by the box and of which some are dropped, stripped or snapped.
_BOXED = ("screws", "pocket screws")


@dataclass(frozen=True)
class Fasteners:
    """Fasteners that are alike. Lengths in mm; ``diameter`` of a loose tenon is its thickness.

    ``assumed`` of the ``count`` are in joints for which the plan states no number.
    """

    kind: FasteningKind
    gauge: str | None
    diameter: float | None
    width: float | None
    length: float | None
    metal: str | None
    count: int
    joints: int
    assumed: int

    def to_buy(self, limits: Limits) -> int:
        """How many to buy: of screws some spare, in whole steps."""
        if self.kind not in _BOXED:
            return self.count
        spare, step = limits["screw-spares"].amount / 100, max(1.0, limits["screw-step"].amount)
        return math.ceil(math.ceil(self.count * (1 + spare) / step - 1e-9) * step)

    def packs(self, limits: Limits) -> tuple[tuple[int, int], ...]:
        """The usual boxes that hold them, as how many of which size; empty for what is sold singly."""
        return packs_for(self.kind, self.to_buy(limits))


class JoinMade(NamedTuple):
    """A ``join`` statement as built: in how many joints its parts meet, and what fastens them.

    ``surfaces`` are the surfaces of both that meet, where all its joints meet alike and nothing is let in.
    """

    join: Join
    joints: int
    surfaces: tuple[Surface, Surface] | None
    fasteners: tuple[Fasteners, ...]


class _Counted(NamedTuple):
    joint: Joint
    fastening: Fastening
    number: int
    assumed: bool


def _counted(review: Review) -> Iterator[_Counted]:
    """Every joint's fasteners, in the order of the plan's joins."""
    driven = {(each.joint[:2], each.fastening.span): each for each in review.driven}
    for joint in review.setting.joints:
        for fastening in joint.join.fastenings:
            if fastening.kind == "none" or not joint.meets:
                continue
            known = driven.get((joint[:2], fastening.span))
            axis = joint_axis(joint, review.setting.solids) or 0
            count, assumed = (
                (known.count, known.count_assumed)
                if known is not None
                else fastener_count(joint, fastening, axis)
            )
            yield _Counted(joint, fastening, count, assumed)


class _Sums:
    """Fasteners added up by what they are, in the order in which they are first met."""

    def __init__(self) -> None:
        self._sums: dict[
            tuple[FasteningKind, str | None, float | None, float | None, float | None, str | None], list[int]
        ] = {}

    def add(self, each: _Counted) -> None:
        what = each.fastening
        key = (what.kind, what.gauge, what.diameter, what.width, what.length, what.metal)
        sums = self._sums.setdefault(key, [0, 0, 0])
        sums[0] += each.number
        sums[1] += 1
        sums[2] += each.number if each.assumed else 0

    def fasteners(self) -> tuple[Fasteners, ...]:
        return tuple(Fasteners(*key, *sums) for key, sums in self._sums.items())


def fastener_list(review: Review) -> tuple[Fasteners, ...]:
    """All fasteners by kind, size and metal, in the order in which the plan first names them."""
    sums = _Sums()
    for each in _counted(review):
        sums.add(each)
    return sums.fasteners()


def _surfaces(joint: Joint) -> tuple[Surface, Surface] | None:
    """Which surfaces of the first and the second part meet; None where they share space."""
    contact = joint.contact
    if contact is None or joint.overlap is not None:
        return None
    return contact.surface_of(joint.left), contact.surface_of(joint.right)


def joins_made(review: Review) -> tuple[JoinMade, ...]:
    """Every join whose parts meet, in the plan's order; copies of one statement are one join."""
    joints: dict[Span, int] = {}
    joins: dict[Span, Join] = {}
    sums: dict[Span, _Sums] = {}
    surfaces: dict[Span, set[tuple[Surface, Surface] | None]] = {}
    for joint in review.setting.joints:
        if joint.meets:
            place = joint.join.span
            joins.setdefault(place, joint.join)
            joints[place] = joints.get(place, 0) + 1
            surfaces.setdefault(place, set()).add(_surfaces(joint))
    for each in _counted(review):
        sums.setdefault(each.joint.join.span, _Sums()).add(each)
    return tuple(
        JoinMade(
            join,
            joints[place],
            next(iter(surfaces[place])) if len(surfaces[place]) == 1 else None,
            sums[place].fasteners() if place in sums else (),
        )
        for place, join in joins.items()
    )
