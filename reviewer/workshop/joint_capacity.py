"""How far each joint is used: what the load path brings to it over what holds it may bear.

What holds a joint in different ways does not add up, since the stiffest takes it all first: the one that
holds most counts. A housing bears what comes down on it, so the fasteners beside it have only what pulls.
"""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Literal

from reviewer.mechanics.fasteners import hardest_pull, pull_and_shear
from reviewer.records import NamedTuple
from reviewer.workshop.driving import joint_axis
from reviewer.workshop.fastener_holds import FastenerHolds
from reviewer.workshop.fastener_sizes import diameter_of
from reviewer.workshop.holds import Hold, Holder
from reviewer.workshop.housing import housed
from reviewer.workshop.joint_forces import JointForce, joint_forces
from reviewer.workshop.strengths import strength_factor
from reviewer.workshop.wood_holds import WoodHolds

if TYPE_CHECKING:
    from reviewer.limits import Limits
    from reviewer.review import Review

Way = Literal["shear", "pull", "shear and pull"]


class JointUse(NamedTuple):
    """How far a joint is used in one way: the force and what may come, N, and what gives way first.

    Both are of the joint as a whole; where a moment opens it (``one``) of the fastener pulled hardest.
    """

    way: Way
    force: float
    limit: float
    holder: Holder
    hold: Hold
    one: bool = False

    @property
    def ratio(self) -> float:
        """The force over what may come; beyond all bounds where nothing may."""
        return self.force / self.limit if self.limit > 0 else math.inf

    def past(self, limits: Limits) -> tuple[float, float]:
        """The ratios past which the joint is at fault, and past which it is not to be built.

        A design value is a limit by itself; an estimate is one only so many times over.
        """
        if self.hold.certain:
            return 1.0, 1.0
        return limits["joint-estimate-share"].amount, limits["joint-error-share"].amount


class JointLoad(NamedTuple):
    """What comes to a joint, what holds it, and how far that is used.

    ``use`` has one for shear and one for pull, or one for both, as the load brings them and a value is known.
    ``why`` says why there is none where one is wanted. ``judged`` is false where something holds besides of
    which nobody knows how much, and the rest alone would not do.
    """

    force: JointForce
    holders: tuple[Holder, ...]
    use: tuple[JointUse, ...]
    why: tuple[str, ...]
    judged: bool

    @property
    def worst(self) -> JointUse | None:
        return max(self.use, key=lambda each: each.ratio, default=None)


class JointCapacity:
    """Works out the joints of one review; a remedy is tried on :meth:`used`."""

    def __init__(self, review: Review) -> None:
        self.review = review
        self.solids = review.setting.solids
        self.fasteners = FastenerHolds(review)
        self.wood = WoodHolds(review, self.fasteners)

    def of(self, force: JointForce) -> JointLoad:
        """One joint as it is made."""
        return self.used(force, self.holders(force))

    def is_brief(self, force: JointForce) -> bool:
        return force.brief >= strength_factor("brief-share")

    def holders(self, force: JointForce) -> tuple[Holder, ...]:
        """All that holds a joint, fasteners first."""
        found: list[Holder] = []
        brief = self.is_brief(force)
        for joint in force.joints:
            made = housed(joint, self.solids) if joint.join.housing is not None else None
            axis = made.axis if made is not None else joint_axis(joint, self.solids)
            for fastening in joint.join.fastenings:
                if fastening.kind == "loose tenons":
                    found.append(self.wood.loose_tenon(joint, axis, brief))
                elif fastening.kind != "none":
                    found.append(self.fasteners.holder(joint, fastening, axis, brief))
            if joint.join.housing is not None:
                found.append(self.wood.housing(joint, made, force, brief))
            if joint.join.glue is not None:
                found.append(self.wood.glue(joint, made, brief))
        return tuple(found)

    # -------------------------------------------------------------- what they come to

    def used(self, force: JointForce, holders: tuple[Holder, ...]) -> JointLoad:
        """How far a joint is used by what comes to it, if these hold it."""
        use: list[JointUse] = []
        open_shear = any(each.open_shear for each in holders)
        open_pull = any(each.open_pull for each in holders)
        lacking: list[str] = []
        judged = True
        shear = self._shear(force, holders) if force.shear > 0 else None
        pull = self._pull(force, holders) if force.pull > 0 or force.moment > 0 else None
        if force.shear > 0 and shear is None:
            lacking.append("shear")
        if (force.pull > 0 or force.moment > 0) and pull is None:
            lacking.append("pull")
        same = shear is not None and pull is not None and shear.holder is pull.holder
        if shear is not None and pull is not None and same and shear.holder.what == "fastening":
            use.append(_together(shear, pull))
        else:
            use += [each for each in (shear, pull) if each is not None]
        for each in use:
            if each.ratio > 1 and (open_shear if each.way == "shear" else open_pull or open_shear):
                judged = False
        why: tuple[str, ...] = ()
        if lacking:
            without = [
                each.why
                for each in holders
                if ("shear" in lacking and each.shear is None) or ("pull" in lacking and each.pull is None)
            ]
            why = tuple(dict.fromkeys(without))
        return JointLoad(force, holders, tuple(use), why, judged)

    def _shear(self, force: JointForce, holders: tuple[Holder, ...]) -> JointUse | None:
        found = [
            JointUse("shear", force.shear, each.shear.force * each.number, each, each.shear)
            for each in _alike(holders)
            if each.shear is not None and each.number
        ]
        return min(found, key=lambda each: each.ratio, default=None)

    def _pull(self, force: JointForce, holders: tuple[Holder, ...]) -> JointUse | None:
        found = []
        for each in _alike(holders):
            if each.pull is None or not each.number:
                continue
            if force.moment <= 0:
                limit = each.pull.force * each.number
                found.append(JointUse("pull", force.pull, limit, each, each.pull))
            elif each.heights:
                # All alike share a pull; a moment takes the highest hardest.
                hardest = force.pull / each.number + hardest_pull(each.heights, force.moment)
                found.append(JointUse("pull", hardest, each.pull.force, each, each.pull, one=True))
        return min(found, key=lambda each: each.ratio, default=None)


def _alike(holders: tuple[Holder, ...]) -> list[Holder]:
    """Holders, those of fasteners alike in several joins of the same parts as one."""
    found: dict[object, Holder] = {}
    for number, each in enumerate(holders):
        key: object = number
        if each.what == "fastening" and each.fastening is not None and each.shear is not None:
            key = (each.kind, round(diameter_of(each.fastening), 3), each.shear.mode, each.shear.force)
        known = found.get(key)
        if known is None:
            found[key] = each
        else:
            found[key] = known._replace(
                number=known.number + each.number, heights=(*known.heights, *each.heights)
            )
    return list(found.values())


def _together(shear: JointUse, pull: JointUse) -> JointUse:
    """Fasteners that are sheared and pulled at once, by NDS 12.4: the load at its slant."""
    holder = shear.holder
    each = shear.force / holder.number
    out = pull.force if pull.one else pull.force / holder.number
    assert holder.shear is not None
    assert holder.pull is not None
    kind: Literal["screw", "nail"] = "nail" if holder.kind == "nails" else "screw"
    slant = math.degrees(math.atan2(out, each))
    limit = pull_and_shear(kind, holder.pull.force, holder.shear.force, slant)
    harder = holder.pull if pull.ratio > shear.ratio else holder.shear
    both = holder.shear.certain and holder.pull.certain
    times = 1 if pull.one else holder.number
    return JointUse(
        "shear and pull",
        math.hypot(each, out) * times,
        limit * times,
        holder,
        harder._replace(certain=both),
        one=pull.one,
    )


def joint_loads(review: Review) -> tuple[JointLoad, ...]:
    """Every joint that a load comes to, with what holds it and how far that is used."""
    forces = joint_forces(review)
    if not forces:
        return ()
    capacity = JointCapacity(review)
    return tuple(capacity.of(force) for force in forces)
