"""What one fastener holds, sheared and pulled, in the wood that it really stands in.

NDS 2018 design values as far as its rules reach (``certain``). Beyond them (less than six diameters in the
far part, panels, pocket screws in thin stock, wooden dowels) the same equations give an estimate, and say so.
"""

from __future__ import annotations

import math
from dataclasses import replace
from typing import TYPE_CHECKING, Any

from reviewer.mechanics.fasteners import (
    END_GRAIN_LAG_PULL,
    END_GRAIN_SHEAR,
    LARGE_DIAMETER,
    grip,
    group_action,
    head_pull_through,
    pull_and_shear,
    wet_service,
    withdrawal_per_mm,
)
from reviewer.mechanics.pocket_screws import SLANT_DEGREES
from reviewer.mechanics.yield_modes import (
    Joint as ShearJoint,
)
from reviewer.mechanics.yield_modes import (
    bearing_in_main,
    bending_yield_strength,
    dowel_bearing_strength,
    shear_value,
)
from reviewer.model.plan import FLOOR, WALL, Axis, Fastening
from reviewer.reference.joint_values import (
    gravity_of,
    joint_factor,
    joint_statement,
)
from reviewer.setting_out.result import Joint
from reviewer.units import TOLERANCE_MM
from reviewer.workshop.carrying import stiffness
from reviewer.workshop.driving import (
    Driven,
    Patch,
    fastener_count,
    patch_of,
)
from reviewer.workshop.fastener_rows import row_ends
from reviewer.workshop.fastener_sizes import diameter_of
from reviewer.workshop.fastener_wood import (
    ESTIMATE,
    LEAST_DEPTH,
    LEAST_LAG_DEPTH,
    NDS,
    NDS_SOURCE,
    ONE,
    Size,
    Wood,
    heights_in,
    mode_words,
    named_holder,
    size_of,
)
from reviewer.workshop.holds import Hold, Holder
from reviewer.workshop.peg_holds import dowels, slanted
from reviewer.workshop.strengths import strength_factor

if TYPE_CHECKING:
    from reviewer.review import Review


class FastenerHolds:
    """Works out fasteners of one review; what is alike is worked out once."""

    def __init__(self, review: Review) -> None:
        self.review = review
        self.solids = review.setting.solids
        self.driven = {(each.joint[:2], each.fastening.span): each for each in review.driven}
        room = review.plan.room
        self.wet = room is not None and room.outdoors
        self.known: dict[object, tuple[Hold | None, Hold | None]] = {}
        self.woods: dict[str, Wood] = {}

    def holder(self, joint: Joint, fastening: Fastening, axis: int | None, brief: bool) -> Holder:
        """What the fasteners of a kind hold in a joint that is met along ``axis``.

        ``brief``: people and the like load it enough.
        """
        patch = patch_of(joint)
        says = joint_statement("fastening", fastening.kind)
        if axis is None or patch is None:
            return Holder(fastening.kind, "fastening", 0, None, None, says.says, fastening=fastening)
        driven = self.driven.get((joint[:2], fastening.span))
        count = driven.count if driven is not None else fastener_count(joint, fastening, axis)[0]
        heights = heights_in(patch, axis, count, fastening)
        bare = Holder(
            fastening.kind,
            "fastening",
            count,
            None,
            None,
            says.says,
            heights,
            open_shear=not says.shear and fastening.kind not in ("none", "clips"),
            open_pull=not says.pull and fastening.kind != "none",
            fastening=fastening,
        )
        if fastening.kind == "dowels":
            return dowels(self, bare, joint, fastening, axis, brief)
        if fastening.kind not in ONE:
            return bare
        if driven is None:
            return slanted(self, bare, joint, fastening, axis, brief)
        return self._square(bare, driven, patch, brief)

    def retried(
        self,
        holder: Holder,
        joint: Joint,
        brief: bool,
        *,
        count: int | None = None,
        length: float | None = None,
        changes: dict[str, Any] | None = None,
    ) -> Holder | None:
        """The same fasteners in another number, of another length (mm) or kind: a remedy, tried.

        ``changes`` are those of the :class:`Fastening`. None where they are not driven square.
        """
        fastening, patch = holder.fastening, patch_of(joint)
        if fastening is None or patch is None:
            return None
        driven = self.driven.get((joint[:2], fastening.span))
        if driven is None or driven.misses:
            return None
        number = holder.number if count is None else count
        changed = fastening.model_copy(update=changes or {})
        long = driven.length if length is None else length
        tried = replace(driven, fastening=changed, length=long, count=number, bite=driven.bite_of(long))
        bare = holder._replace(
            kind=changed.kind,
            number=number,
            heights=heights_in(patch, driven.axis, number, changed),
            fastening=changed,
            shear=None,
            pull=None,
        )
        return self._square(bare, tried, patch, brief)

    def _square(self, bare: Holder, driven: Driven, patch: Patch, brief: bool) -> Holder:
        """What fasteners hold that are driven square to the joint, or out of a pocket."""
        count = bare.number
        if driven.misses:
            return bare._replace(why="They are driven from a side that does not lead across the joint.")
        end_grain = driven.point_surface == "end" and self.grained(driven.point_part)
        shear, pull = self._driven_holds(driven, brief)
        if shear is not None and driven.fastening.diameter and driven.fastening.diameter >= LARGE_DIAMETER:
            shear = shear.times(self._in_a_row(driven, patch, count))
        holder = bare._replace(shear=shear, pull=pull, end_grain=end_grain)
        return named_holder(holder, driven.head_part, driven.point_part)

    # -------------------------------------------------------------- what a fastener stands in

    def grained(self, part: str) -> bool:
        """True for solid wood, whose ends are end grain."""
        return part not in (WALL, FLOOR) and self.review.material_of(part).moves

    def wood(self, part: str) -> Wood:
        found = self.woods.get(part)
        if found is None:
            found = self.woods[part] = self._wood_of(part)
        return found

    def _wood_of(self, part: str) -> Wood:
        if part in (WALL, FLOOR):
            return Wood(self.review.limit("stud-gravity").amount, False, False, True)
        wood, gravity = self.review.material_of(part), gravity_of(self.review.stock_of(part).material)
        firm = wood.moves and gravity.standing in ("read", "read in part", "derived")
        return Wood(gravity.value, firm, not wood.moves, self.solids[part].long == Axis.UP)

    def duration(self, brief: bool) -> float:
        return strength_factor("duration-brief" if brief else "duration-lasting")

    def bearing(self, wood: Wood, diameter: float, end: bool) -> tuple[float, float]:
        """Dowel bearing strength (MPa) under a load that goes straight down, and its angle to the grain."""
        angle = 0.0 if wood.upright and not end else 90.0
        return dowel_bearing_strength(wood.gravity, diameter, angle), angle

    # -------------------------------------------------------------- screws, nails, bolts

    def _driven_holds(self, driven: Driven, brief: bool) -> tuple[Hold | None, Hold | None]:
        fastening = driven.fastening
        key = (
            fastening.kind,
            fastening.gauge,
            fastening.diameter,
            fastening.metal,
            round(driven.length, 3),
            round(driven.grip, 3),
            round(driven.bite, 3),
            round(min(driven.behind, 1e9), 3),
            driven.point_surface,
            driven.head_surface,
            self.wood(driven.head_part),
            self.wood(driven.point_part),
            driven.point_part == WALL,
            driven.pocket is not None,
            brief,
        )
        if key not in self.known:
            size = size_of(fastening, driven.length)
            shear, pull = self._sheared(driven, size, brief), self._pulled(driven, size, brief)
            if driven.pocket is not None and shear is not None and pull is not None:
                shear, pull = _along_a_pocket(shear, pull)
            self.known[key] = shear, pull
        return self.known[key]

    def _sheared(self, driven: Driven, size: Size, brief: bool) -> Hold | None:
        head, point = self.wood(driven.head_part), self.wood(driven.point_part)
        wall = driven.point_part == WALL
        gap = self.review.limit("wallboard").amount if wall else 0.0
        bite = min(driven.bite, driven.behind) - gap
        bolt = driven.kind == "bolts"
        end = driven.point_surface == "end"
        one = ONE[driven.kind]
        main = bite if bolt else bearing_in_main(bite, 2 * size.diameter)
        if driven.grip <= TOLERANCE_MM or main <= TOLERANCE_MM:
            return Hold(0.0, f"the {one} hardly reaches {{point}}", NDS, NDS_SOURCE, True)
        in_main, main_angle = self.bearing(point, size.diameter, end)
        in_side, side_angle = self.bearing(head, size.diameter, False)
        yielding = shear_value(
            ShearJoint(
                diameter=size.root,
                nominal_diameter=size.diameter,
                main_length=main,
                side_length=driven.grip,
                main_strength=in_main,
                side_strength=in_side,
                bending_yield=bending_yield_strength(math.inf if bolt else size.diameter),
                angle=max(main_angle, side_angle),
                gap=gap,
            )
        )
        factor = self.duration(brief)
        said = ""
        if end:
            factor *= END_GRAIN_SHEAR
            said = ", in end grain" if self.grained(driven.point_part) else ", in the edge of a panel"
        if self.wet:
            factor *= wet_service("nail" if driven.kind == "nails" else "screw", pulled=False)
        least = LEAST_LAG_DEPTH if size.grips == "lag screw" else LEAST_DEPTH
        deep = bolt or bite >= least * size.diameter - TOLERANCE_MM
        mode = mode_words(yielding.mode, one)
        certain = deep and size.known and head.firm and point.firm and not gap
        return Hold(yielding.force * factor, mode + said, NDS if certain else ESTIMATE, NDS_SOURCE, certain)

    def _pulled(self, driven: Driven, size: Size, brief: bool) -> Hold | None:
        if size.grips is None:
            return None
        point, head = self.wood(driven.point_part), self.wood(driven.head_part)
        wall = driven.point_part == WALL
        gap = self.review.limit("wallboard").amount if wall else 0.0
        nail, one = driven.kind == "nails", ONE[driven.kind]
        held = grip(driven.length, size.thread, driven.grip + gap, min(driven.behind, 1e9) - gap)
        factor, said, certain = self.duration(brief), "", size.known and point.firm
        if self.wet:
            factor *= wet_service("nail" if nail else "screw", pulled=True)
        if driven.point_surface == "end" and self.grained(driven.point_part):
            said = "the end grain of {point}"
            if size.grips == "lag screw":
                factor *= END_GRAIN_LAG_PULL
            elif nail:
                factor = 0.0
            else:
                factor, certain = factor * joint_factor("end-grain-pull"), False
        elif point.panel and driven.point_surface != "face":
            factor, certain = factor * joint_factor("panel-edge"), False
        out = withdrawal_per_mm(size.grips, point.gravity, size.diameter) * held * factor
        found = Hold(
            out,
            f"the {one} draws out of {said or '{point}'}",
            NDS if certain else ESTIMATE,
            NDS_SOURCE,
            certain,
        )
        if size.head is not None and driven.pocket is None:
            through = head_pull_through(size.head, head.gravity, driven.grip) * self.duration(brief)
            if through < found.force:
                # The rule is for round heads; a countersunk one pulls through as an estimate.
                return Hold(
                    through,
                    f"the head of the {one} pulls through {{head}}",
                    NDS if nail and head.firm else ESTIMATE,
                    NDS_SOURCE,
                    nail and certain and head.firm,
                )
        return found

    def _in_a_row(self, driven: Driven, patch: Patch, count: int) -> float:
        """The group action factor of large fasteners that stand in a row along the load."""
        run = patch.run(driven.axis)
        if count < 2 or run != Axis.UP or driven.point_part in (WALL, FLOOR):
            return 1.0
        first, last = row_ends(patch.low[run], patch.high[run], count, driven.fastening)
        firm = [
            stiffness(self.review.stock_of(name))[0] * self.solids[name].width * self.solids[name].thickness
            for name in (driven.point_part, driven.head_part)
        ]
        return group_action(
            count, (last - first) / (count - 1), diameter_of(driven.fastening), firm[0], firm[1]
        )


def _along_a_pocket(shear: Hold, pull: Hold) -> tuple[Hold, Hold]:
    """A pocket screw stands at a slant to the joint, so that each force has a share of the other in it."""
    out = pull_and_shear("screw", pull.force, shear.force, 90 - SLANT_DEGREES)
    across = pull_and_shear("screw", pull.force, shear.force, SLANT_DEGREES)
    return shear._replace(force=across), pull._replace(force=out)
