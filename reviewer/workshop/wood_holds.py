"""What housings, glue lines and loose tenons hold: wood that bears on wood, is sheared, or is glued to it.

Values are shares of what the wood bears, as the furniture trade takes them, or design values of framing
lumber; a joint of them has no published value of its own, so that all are estimates.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

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
from reviewer.workshop.fastener_holds import FastenerHolds
from reviewer.workshop.holds import Hold, Holder
from reviewer.workshop.housing import Housed
from reviewer.workshop.joint_forces import JointForce
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


class WoodHolds:
    """Works out what holds by wood or glue in the joints of one review."""

    def __init__(self, review: Review, fasteners: FastenerHolds) -> None:
        self.review = review
        self.solids = review.setting.solids
        self.fasteners = fasteners

    def _bearing(self, part: str, wide: float, deep: float, brief: bool) -> Hold | None:
        """What the wood of a part bears across its grain, so wide and so deep; None for wood on end."""
        solid = self.solids[part]
        if solid.long == Axis.UP:
            return None
        limit = strengths(
            self.review.stock_of(part), (solid.width, solid.thickness), flat=True, brief=brief
        ).bearing
        said = f"{part} is pressed across its grain"
        if limit is not None:
            return Hold(limit.value * wide * deep, said, limit.who, limit.source, False)
        wood = self.review.material_of(part)
        if wood.specific_gravity is None:
            source = joint_factor_source("panel-bearing")
            return Hold(
                joint_factor("panel-bearing") * wide * deep,
                f"{part} is pressed in",
                "an estimate, from memory",
                source,
                False,
            )
        from reviewer.mechanics.wood_by_gravity import bearing_by_gravity

        mean = bearing_by_gravity(wood.specific_gravity, wood.family == "hardwood")
        return Hold(mean / strength_factor("clear-bearing") * wide * deep, said, *_BY_GRAVITY, False)

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

    def housing(self, joint: Joint, made: Housed | None, force: JointForce, brief: bool) -> Holder:
        """A housing: what comes down on it is borne by the wood under the part that is let in."""
        assert joint.join.housing is not None
        kind = joint.join.housing.kind
        says = joint_statement("housing", kind)
        if made is None or joint.overlap is None or kind not in _PRESSED:
            return Holder(kind, "housing", 1, None, None, says.says, open_shear=True, open_pull=True)
        # Drawn out, these let go: nothing but glue or fasteners keeps them.
        bare = Holder(kind, "housing", 1, None, None, says.says, open_shear=True)
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
            pressed = self._bearing(name, wide, depth, brief)
            if pressed is not None:
                holds.append(pressed)
        if not holds:
            return bare._replace(why="No value is given: both parts stand on end, and no table has that.")
        return bare._replace(shear=min(holds, key=lambda each: each.force), open_shear=False)

    def glue(self, joint: Joint, made: Housed | None, brief: bool) -> Holder:
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

    def loose_tenon(self, joint: Joint, axis: int | None, brief: bool) -> Holder:
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
        pressed = [self._bearing(name, thick, long / 2, brief) for name in joint[:2]]
        holds = [hold for hold in pressed if hold is not None]
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
