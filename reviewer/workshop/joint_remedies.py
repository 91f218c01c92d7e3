"""What makes a joint hold more, each tried on it: more, longer or thicker fasteners, a cleat under it."""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import TYPE_CHECKING

from reviewer.mechanics.fasteners import END_GRAIN_SHEAR
from reviewer.model.plan import WALL, Axis
from reviewer.records import NamedTuple
from reviewer.reference.gauges import gauge, gauge_names
from reviewer.reference.usual_values import usual_value
from reviewer.setting_out.result import Joint
from reviewer.units import TOLERANCE_MM
from reviewer.workshop.driving import Driven, patch_of
from reviewer.workshop.fastener_sizes import diameter_of
from reviewer.workshop.holds import Holder
from reviewer.workshop.joint_capacity import JointCapacity, JointLoad
from reviewer.workshop.screw_lengths import lacks_cover, usual_lengths

if TYPE_CHECKING:
    from reviewer.review import Review

#: A remedy has to bring a joint to no more than this.
_ENOUGH = 1.0
#: Nobody puts more than so many times as many fasteners into a joint; and so many numbers are tried.
_MOST_TIMES = 4
_MOST_TRIED = 30


class JointRemedy(NamedTuple):
    """One way out: what is changed, to how much or how many, and how far the joint is used then."""

    what: str  # "more", "longer", "thicker", "screws", "cleat"
    amount: float  # how many; how long in mm
    said: str  # a gauge
    ratio: float


def _joint_of(load: JointLoad, holder: Holder) -> Joint | None:
    for joint in load.force.joints:
        if holder.fastening is not None and any(
            each.span == holder.fastening.span for each in joint.join.fastenings
        ):
            return joint
    return None


def _ratio_with(capacity: JointCapacity, load: JointLoad, old: Holder, new: Holder) -> float:
    """How far a joint is used with one of its holders in place of another."""
    span = old.fastening.span if old.fastening is not None else None
    holders = tuple(
        new if each.fastening is not None and each.fastening.span == span else each for each in load.holders
    )
    worst = capacity.used(load.force, holders).worst
    return worst.ratio if worst is not None else math.inf


def _has_room(joint: Joint, driven: Driven, count: int) -> bool:
    """True where so many stand in a row and leave the ends of the joint whole."""
    patch = patch_of(joint)
    if patch is None:
        return False
    apart = usual_value("first-from-end") * diameter_of(driven.fastening)
    run = patch.extent(patch.run(driven.axis))
    rows = (
        2
        if min(patch.extent(a) for a in range(3) if a != driven.axis) >= usual_value("two-rows-width")
        else 1
    )
    return math.ceil(count / rows) * apart <= run - apart + TOLERANCE_MM


def _more(capacity: JointCapacity, load: JointLoad, holder: Holder, joint: Joint) -> Iterator[JointRemedy]:
    brief = capacity.is_brief(load.force)
    driven = capacity.fasteners.driven.get((joint[:2], holder.fastening.span)) if holder.fastening else None
    if driven is None:
        return
    step = max(1, holder.number * _MOST_TIMES // _MOST_TRIED)
    for count in range(holder.number + step, holder.number * _MOST_TIMES + 1, step):
        if not _has_room(joint, driven, count):
            return
        tried = capacity.fasteners.retried(holder, joint, brief, count=count)
        ratio = _ratio_with(capacity, load, holder, tried) if tried is not None else math.inf
        if ratio <= _ENOUGH:
            yield JointRemedy("more", count, "", ratio)
            return


def _longer(
    review: Review, capacity: JointCapacity, load: JointLoad, holder: Holder, joint: Joint
) -> Iterator[JointRemedy]:
    brief = capacity.is_brief(load.force)
    driven = capacity.fasteners.driven.get((joint[:2], holder.fastening.span)) if holder.fastening else None
    if driven is None or holder.kind != "screws":
        return
    for length in usual_lengths(driven, review.units):
        if length <= driven.length + TOLERANCE_MM:
            continue
        if lacks_cover(driven, length, review.limits):
            return
        tried = capacity.fasteners.retried(holder, joint, brief, length=length)
        ratio = _ratio_with(capacity, load, holder, tried) if tried is not None else math.inf
        if ratio <= _ENOUGH:
            yield JointRemedy("longer", length, "", ratio)
            return


def _thicker(capacity: JointCapacity, load: JointLoad, holder: Holder, joint: Joint) -> Iterator[JointRemedy]:
    brief = capacity.is_brief(load.force)
    if holder.kind != "screws" or holder.fastening is None or holder.fastening.gauge is None:
        return
    for name in gauge_names():
        screw = gauge(name)
        if screw is None or screw.root is None or screw.diameter <= diameter_of(holder.fastening):
            continue
        changes = {"gauge": name, "diameter": screw.diameter}
        tried = capacity.fasteners.retried(holder, joint, brief, changes=changes)
        ratio = _ratio_with(capacity, load, holder, tried) if tried is not None else math.inf
        if ratio <= _ENOUGH:
            yield JointRemedy("thicker", 0.0, name, ratio)
            return


def _cleat(review: Review, capacity: JointCapacity, load: JointLoad, holder: Holder) -> Iterator[JointRemedy]:
    """A cleat under a part that screws hold at its end: the same screws, in side grain of what holds it."""
    force, use = load.force, load.worst
    solid = review.setting.solids[force.part]
    ends_there = solid.long == force.axis and holder.end_grain
    if use is None or holder.shear is None or not ends_there or solid.long == Axis.UP or force.to == WALL:
        return
    one = holder.shear.force / END_GRAIN_SHEAR
    count = math.ceil(force.shear / one - 1e-9) if one > 0 else 0
    if count > 0:
        yield JointRemedy("cleat", max(2, count), "", force.shear / (max(2, count) * one))


def remedies(review: Review, capacity: JointCapacity, load: JointLoad) -> list[JointRemedy]:
    """All that brings an overloaded joint to no more than it may bear, in the order of least work."""
    use = load.worst
    joint = _joint_of(load, use.holder) if use is not None else None
    if use is None or joint is None:
        return []
    holder = next(
        each
        for each in load.holders
        if each.fastening is not None
        and use.holder.fastening is not None
        and each.fastening.span == use.holder.fastening.span
    )
    return [
        *_more(capacity, load, holder, joint),
        *_longer(review, capacity, load, holder, joint),
        *_thicker(capacity, load, holder, joint),
        *_cleat(review, capacity, load, holder),
    ]


def screws_instead(
    review: Review, capacity: JointCapacity, load: JointLoad, holder: Holder
) -> JointRemedy | None:
    """The thinnest screws that bear what nails are asked to, as long as those; None if none do."""
    joint = _joint_of(load, holder)
    if joint is None:
        return None
    brief = capacity.is_brief(load.force)
    for name in gauge_names():
        screw = gauge(name)
        if screw is None or screw.root is None:
            continue
        changes = {"kind": "screws", "gauge": name, "diameter": screw.diameter}
        tried = capacity.fasteners.retried(holder, joint, brief, changes=changes)
        ratio = _ratio_with(capacity, load, holder, tried) if tried is not None else math.inf
        if ratio <= _ENOUGH:
            return JointRemedy("screws", holder.number, name, ratio)
    return None
