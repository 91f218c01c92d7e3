"""How far each joint is used: what the load path brings to it over what holds it may bear.

What holds a joint in different ways does not add up, since the stiffest takes it all first: the one that
holds most counts. A housing bears what comes down on it, so the fasteners beside it have only what pulls.
"""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Literal, NamedTuple

from reviewer.mechanics.fasteners import hardest_pull, pull_and_shear
from reviewer.model.plan import GROUNDS, Axis
from reviewer.reference.joint_values import (
    glue_line,
    joint_factor,
    joint_factor_source,
    joint_statement,
)
from reviewer.setting_out.result import Joint
from reviewer.setting_out.solid import Solid
from reviewer.units import TOLERANCE_MM
from reviewer.workshop.driving import joint_axis
from reviewer.workshop.fastener_holds import FastenerHolds
from reviewer.workshop.fastener_sizes import diameter_of
from reviewer.workshop.holds import Hold, Holder
from reviewer.workshop.housing import Housed, housed
from reviewer.workshop.joint_forces import JointForce, joint_forces
from reviewer.workshop.strengths import strength_factor, strengths

if TYPE_CHECKING:
    from reviewer.review import Review

#: Housings whose cheeks are a tenon's.
_TENONS = ("mortise and tenon", "bridle")
_PRESSED = ("dado", "groove", "rabbet", "half lap", *_TENONS)

#: Who says so, and the source, of what is worked out for woods that no table has.
_BY_GRAVITY = (
    "by its specific gravity",
    "Wood Handbook, FPL-GTR-190 (2010), Table 5-11 (from memory), over the custom for furniture",
)

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


class JointLoad(NamedTuple):
    """What comes to a joint, what holds it, and how far that is used.

    ``use`` has one for shear and one for pull, or one for both, where the load brings them and a value is
    known. ``why`` says why there is none where one is wanted. ``judged`` is false where something holds besides of
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
                    found.append(self._loose_tenon(joint, axis, brief))
                elif fastening.kind != "none":
                    found.append(self.fasteners.holder(joint, fastening, axis, brief))
            if joint.join.housing is not None:
                found.append(self._housing(joint, made, force, brief))
            if joint.join.glue is not None:
                found.append(self._glue(joint, made, brief))
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
        why = dict.fromkeys(
            each.why
            for each in holders
            if ("shear" in lacking and each.shear is None) or ("pull" in lacking and each.pull is None)
        )
        return JointLoad(force, holders, tuple(use), tuple(why), judged)

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

    # -------------------------------------------------------------- housings and glue

    def _bearing(self, part: str, brief: bool) -> Hold | None:
        """What the wood of a part bears across its grain, MPa; None for panels, and along the grain."""
        solid = self.solids[part]
        if solid.long == Axis.UP:
            return None
        limit = strengths(
            self.review.stock_of(part), (solid.width, solid.thickness), flat=True, brief=brief
        ).bearing
        said = f"{part} is pressed across its grain"
        if limit is not None:
            return Hold(limit.value, said, limit.who, limit.source, False)
        wood = self.review.material_of(part)
        if wood.specific_gravity is None:
            source = joint_factor_source("panel-bearing")
            return Hold(joint_factor("panel-bearing"), f"{part} is pressed in", source, source, False)
        from reviewer.mechanics.wood_by_gravity import bearing_by_gravity

        mean = bearing_by_gravity(wood.specific_gravity, wood.family == "hardwood")
        return Hold(mean / strength_factor("clear-bearing"), said, *_BY_GRAVITY, False)

    def _sheared_wood(self, part: str, brief: bool) -> Hold | None:
        solid = self.solids[part]
        limit = strengths(
            self.review.stock_of(part), (solid.width, solid.thickness), flat=False, brief=brief
        ).shear
        said = f"the tenon of {part} is sheared off"
        if limit is not None:
            return Hold(limit.value, said, limit.who, limit.source, False)
        mean = self._shear_strength(part)
        if mean is None:
            return None
        return Hold(mean / strength_factor("clear-shear"), said, *_BY_GRAVITY, False)

    def _shear_strength(self, part: str) -> float | None:
        """The mean shear strength of a wood along its grain, MPa; None for panels."""
        wood = self.review.material_of(part)
        if wood.shear_strength is not None or wood.specific_gravity is None:
            return wood.shear_strength
        from reviewer.mechanics.wood_by_gravity import shear_by_gravity

        return shear_by_gravity(wood.specific_gravity, wood.family == "hardwood")

    def _housing(self, joint: Joint, made: Housed | None, force: JointForce, brief: bool) -> Holder:
        """A housing: what comes down on it is borne by the wood under the part that is let in."""
        assert joint.join.housing is not None
        kind = joint.join.housing.kind
        says = joint_statement("housing", kind)
        bare = Holder(kind, "housing", 1, None, None, says.says, open_shear=True, open_pull=True)
        if made is None or joint.overlap is None or kind not in _PRESSED:
            return bare
        # Drawn out, these let go: nothing but glue or fasteners keeps them.
        bare = bare._replace(open_pull=False)
        inner, outer = self.solids[made.part], self.solids[made.into]
        low, high = joint.overlap.low, joint.overlap.high
        seated = low[Axis.UP] > outer.low[Axis.UP] + TOLERANCE_MM
        if force.part != made.part:
            seated = high[Axis.UP] < outer.high[Axis.UP] - TOLERANCE_MM
        if made.axis == Axis.UP or (not seated and kind not in _TENONS):
            slides = "No value is given: nothing in it keeps the part from sliding along."
            return bare._replace(why=slides, open_shear=made.axis == Axis.UP)
        across = next(axis for axis in (Axis.ACROSS, Axis.DEEP) if axis != made.axis)
        depth, wide = high[made.axis] - low[made.axis], high[across] - low[across]
        holds: list[Hold] = []
        if kind in _TENONS:
            thick = _tenon_thickness(joint, inner, wide)
            sheared = self._sheared_wood(made.part, brief)
            if sheared is not None:
                tall = high[Axis.UP] - low[Axis.UP]
                holds.append(sheared._replace(force=sheared.force * thick * tall / 1.5))
            wide = thick
        elif kind == "half lap":
            depth /= 2
        for name in (made.part, made.into):
            pressed = self._bearing(name, brief)
            if pressed is not None:
                holds.append(pressed._replace(force=pressed.force * wide * depth))
        if not holds:
            return bare._replace(why="No value is given: both parts stand on end, and no table has that.")
        return bare._replace(shear=min(holds, key=lambda each: each.force), open_shear=False)

    def _glue(self, joint: Joint, made: Housed | None, brief: bool) -> Holder:
        """The glue line: a share of what the weaker wood shears at, by how the grain of both meets."""
        assert joint.join.glue is not None
        bare = Holder(
            "glue",
            "glue",
            1,
            None,
            None,
            "No value is given for glue that is pulled apart, or where no single face of it can be measured.",
            open_shear=True,
            open_pull=True,
        )
        if any(name in GROUNDS for name in joint[:2]):
            return bare
        pairing, area = self._glued_face(joint, made)
        line = glue_line(joint.join.glue, pairing)
        if line.low <= 0:
            return bare._replace(
                why="No value is given: glue on end grain is not relied upon.",
                open_shear=False,
                open_pull=False,
                end_grain=True,
            )
        woods = [self._shear_strength(name) for name in joint[:2]]
        known = [each for each in woods if each is not None]
        if area <= 0 or len(known) < 2:
            return bare
        stress = min(known) / strength_factor("clear-shear") * line.low
        stress *= strength_factor("duration-brief" if brief else "duration-lasting")
        holds = Hold(
            stress * area,
            f"the glue line or the wood beside it shears ({pairing}, the low end of a wide range)",
            "a share of the wood's mean shear strength",
            line.source,
            False,
        )
        kind = joint.join.housing.kind if joint.join.housing is not None else None
        if kind in _TENONS:  # drawn out, its cheeks are sheared as well
            return bare._replace(shear=holds, pull=holds, open_shear=False, open_pull=False)
        return bare._replace(shear=holds, open_shear=False)

    def _glued_face(self, joint: Joint, made: Housed | None) -> tuple[str, float]:
        """How the grain of two glued parts meets, and over how many mm²; 0 where no one face is glued."""
        left, right = self.solids[joint.left], self.solids[joint.right]
        crossed = "side to side" if left.long == right.long else "crossed grain"
        kind = joint.join.housing.kind if joint.join.housing is not None else None
        if joint.overlap is None:
            if joint.contact is None:
                return crossed, 0.0
            surfaces = [(joint.contact.surface_of(name), name) for name in joint[:2]]
            ends = [
                name for surface, name in surfaces if surface == "end" and self.review.material_of(name).moves
            ]
            if len(ends) == 2:
                return "end to end", joint.contact.area
            return ("end to side" if ends else crossed), joint.contact.area
        depths = joint.overlap.depths
        if made is None:
            return crossed, 0.0
        if kind in _TENONS:
            others = [axis for axis in range(3) if axis != made.axis]
            tall = max(depths[axis] for axis in others)
            return crossed, 2 * tall * depths[made.axis]
        if kind == "half lap":
            sides = [depths[axis] for axis in range(3) if axis != made.axis]
            return crossed, sides[0] * sides[1]
        return crossed, 0.0

    def _loose_tenon(self, joint: Joint, axis: int | None, brief: bool) -> Holder:
        """A tenon of its own: sheared across, pressed on by its mortises, and drawn out along its cheeks."""
        fastening = next(each for each in joint.join.fastenings if each.kind == "loose tenons")
        bare = self.fasteners.holder(joint, fastening, axis, brief)
        thick, wide, long = fastening.diameter, fastening.width, fastening.length
        if thick is None or wide is None or long is None or any(name in GROUNDS for name in joint[:2]):
            return bare._replace(
                why="No value is given: the plan does not say how large its loose tenons are.",
                open_shear=True,
                open_pull=True,
            )
        upright = [self.solids[name] for name in joint[:2]]
        holds = [
            hold._replace(force=hold.force * thick * long / 2)
            for name in joint[:2]
            if (hold := self._bearing(name, brief)) is not None
        ]
        for each in upright:
            sheared = self._sheared_wood(each.name, brief)
            if sheared is not None:
                # The tenon is of wood at least like its boards.
                mode = f"a loose tenon is sheared off, of wood like {each.name}"
                holds.append(sheared._replace(force=sheared.force * thick * wide / 1.5, mode=mode))
        shear = min(holds, key=lambda each: each.force, default=None)
        pull = None
        woods = [self._shear_strength(name) for name in joint[:2]]
        known = [each for each in woods if each is not None]
        if joint.join.glue is not None and len(known) == 2:
            line = glue_line(joint.join.glue, "crossed grain")
            stress = min(known) / strength_factor("clear-shear") * line.low
            pull = Hold(
                stress * 2 * wide * long / 2,
                "the cheeks of the loose tenon shear off",
                "a share of the wood's mean shear strength",
                line.source,
                False,
            )
        return bare._replace(shear=shear, pull=pull, open_shear=shear is None, open_pull=False)


def _tenon_thickness(joint: Joint, inner: Solid, wide: float) -> float:
    """How thick a tenon is, mm: as stated, or as the parts are set out, or a third of its board."""
    assert joint.join.housing is not None
    stated = joint.join.housing.thickness
    if stated is not None:
        return min(stated, wide)
    return min(wide, inner.thickness * joint_factor("tenon-share"))


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
