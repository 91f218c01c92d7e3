"""What one fastener holds, sheared and pulled, in the wood that it really stands in.

NDS 2018 design values as far as its rules reach (``certain``). Beyond them (less than six diameters in the far
part, panels, pocket screws in thin stock, wooden dowels) the same equations give an estimate, and say so.
"""

from __future__ import annotations

import math
from dataclasses import replace
from typing import TYPE_CHECKING, Any, Literal, NamedTuple

from reviewer.mechanics.fasteners import (
    END_GRAIN_LAG_PULL,
    END_GRAIN_SHEAR,
    LARGE_DIAMETER,
    TOE_PULL,
    TOE_SHEAR,
    Gripping,
    glued_dowel_pull,
    grip,
    group_action,
    head_pull_through,
    least_thread,
    pull_and_shear,
    toe_lengths,
    wet_service,
    withdrawal_per_mm,
)
from reviewer.mechanics.pocket_screws import SLANT_DEGREES
from reviewer.mechanics.yield_modes import (
    Joint as ShearJoint,
)
from reviewer.mechanics.yield_modes import (
    Mode,
    bearing_in_main,
    bending_yield_strength,
    dowel_bearing_strength,
    shear_value,
)
from reviewer.model.plan import FLOOR, WALL, Axis, Fastening
from reviewer.reference.gauges import gauge, metric_screw, nail_of_length
from reviewer.reference.joint_values import (
    gravity_of,
    joint_factor,
    joint_factor_source,
    joint_statement,
)
from reviewer.setting_out.result import Joint
from reviewer.units import TOLERANCE_MM
from reviewer.workshop.carrying import stiffness
from reviewer.workshop.driving import (
    Driven,
    Patch,
    fastener_count,
    joint_axis,
    patch_of,
)
from reviewer.workshop.fastener_rows import row_ends, spots
from reviewer.workshop.fastener_sizes import diameter_of
from reviewer.workshop.holds import Hold, Holder
from reviewer.workshop.strengths import strength_factor

if TYPE_CHECKING:
    from reviewer.review import Review

NDS = "NDS 2018"
_NDS_SOURCE = "National Design Specification for Wood Construction 2018, chapters 11 and 12, as transcribed"
ESTIMATE = "an estimate by the same equations"
#: Least depth in the far part, in diameters, for which the NDS gives a value: screws and nails, lag screws.
_LEAST_DEPTH, _LEAST_LAG_DEPTH = 6.0, 4.0
_ONE = {
    "screws": "screw",
    "pocket screws": "screw",
    "nails": "nail",
    "bolts": "bolt",
    "dowels": "dowel",
}


class _Size(NamedTuple):
    """A fastener as the equations take it, mm. ``root`` of screws; None where there is no thread."""

    diameter: float
    root: float
    head: float | None
    thread: float
    grips: Gripping | None
    known: bool  # true where the size stands in the tables


class _Wood(NamedTuple):
    """The wood on one side of a joint, as fasteners feel it."""

    gravity: float
    firm: bool  # solid wood, for which the values were made
    panel: bool
    upright: bool  # its grain runs up and down, along the load


def _screw_size(fastening: Fastening, length: float) -> _Size:
    diameter = diameter_of(fastening)
    if diameter >= LARGE_DIAMETER:
        root = diameter * joint_factor("lag-root")
        return _Size(diameter, root, None, least_thread(length, diameter), "lag screw", True)
    screw = gauge(fastening.gauge) if fastening.gauge is not None else metric_screw(diameter)
    if fastening.gauge is None and fastening.diameter is None:
        screw = gauge("8")
    if screw is None or screw.root is None:
        root = diameter * joint_factor("metric-root")
        return _Size(diameter, root, None, least_thread(length, diameter), "wood screw", False)
    known = fastening.gauge is not None
    return _Size(screw.diameter, screw.root, screw.head, screw.thread(length), "wood screw", known)


def _nail_size(fastening: Fastening, length: float) -> _Size:
    usual, diameter = nail_of_length(length), diameter_of(fastening)
    head = usual.head if fastening.diameter is None else None
    kind: Gripping = "stainless nail" if fastening.metal == "stainless" else "smooth nail"
    return _Size(diameter, diameter, head, length, kind, fastening.diameter is not None)


def _size(fastening: Fastening, length: float) -> _Size:
    if fastening.kind == "nails":
        return _nail_size(fastening, length)
    if fastening.kind == "bolts":
        diameter = diameter_of(fastening)
        return _Size(diameter, diameter, None, 0.0, None, fastening.diameter is not None)
    return _screw_size(fastening, length)


class FastenerHolds:
    """Works out fasteners of one review; what is alike is worked out once."""

    def __init__(self, review: Review) -> None:
        self.review = review
        self.solids = review.setting.solids
        self.driven = {(each.joint[:2], each.fastening.span): each for each in review.driven}
        room = review.plan.room
        self.wet = room is not None and room.outdoors
        self.known: dict[object, tuple[Hold | None, Hold | None]] = {}

    def holder(self, joint: Joint, fastening: Fastening, brief: bool) -> Holder:
        """What the fasteners of a kind hold in a joint. ``brief``: people and the like load it enough."""
        axis, patch = joint_axis(joint, self.solids), patch_of(joint)
        says = joint_statement("fastening", fastening.kind)
        if axis is None or patch is None:
            return Holder(fastening.kind, "fastening", 0, None, None, says.says, fastening=fastening)
        driven = self.driven.get((joint[:2], fastening.span))
        count = driven.count if driven is not None else fastener_count(joint, fastening, axis)[0]
        heights = _heights(patch, axis, count, fastening)
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
            return self._dowels(bare, joint, fastening, axis, brief)
        if fastening.kind not in _ONE:
            return bare
        if driven is None:
            return self._slanted(bare, joint, fastening, axis, brief)
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

        ``changes`` are those of the :class:`Fastening`. None where the joint's fasteners are not driven square.
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
            heights=_heights(patch, driven.axis, number, changed),
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
        end_grain = driven.point_surface == "end" and self._grained(driven.point_part)
        shear, pull = self._driven_holds(driven, brief)
        if shear is not None and driven.fastening.diameter and driven.fastening.diameter >= LARGE_DIAMETER:
            shear = shear.times(self._in_a_row(driven, patch, count))
        holder = bare._replace(shear=shear, pull=pull, end_grain=end_grain)
        return _named(holder, driven.head_part, driven.point_part)

    # -------------------------------------------------------------- what a fastener stands in

    def _grained(self, part: str) -> bool:
        """True for solid wood, whose ends are end grain."""
        return part not in (WALL, FLOOR) and self.review.material_of(part).moves

    def _wood(self, part: str) -> _Wood:
        if part in (WALL, FLOOR):
            return _Wood(joint_factor("stud-gravity"), False, False, True)
        wood, gravity = self.review.material_of(part), gravity_of(self.review.stock_of(part).material)
        firm = wood.moves and gravity.standing in ("read", "read in part", "derived")
        return _Wood(gravity.value, firm, not wood.moves, self.solids[part].long == Axis.UP)

    def _duration(self, brief: bool) -> float:
        return strength_factor("duration-brief" if brief else "duration-lasting")

    def _bearing(self, wood: _Wood, diameter: float, end: bool) -> tuple[float, float]:
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
            self._wood(driven.head_part),
            self._wood(driven.point_part),
            driven.point_part == WALL,
            driven.pocket is not None,
            brief,
        )
        if key not in self.known:
            size = _size(fastening, driven.length)
            shear, pull = self._sheared(driven, size, brief), self._pulled(driven, size, brief)
            if driven.pocket is not None and shear is not None and pull is not None:
                shear, pull = _along_a_pocket(shear, pull)
            self.known[key] = shear, pull
        return self.known[key]

    def _sheared(self, driven: Driven, size: _Size, brief: bool) -> Hold | None:
        head, point = self._wood(driven.head_part), self._wood(driven.point_part)
        wall = driven.point_part == WALL
        gap = self.review.limit("wallboard").amount if wall else 0.0
        bite = min(driven.bite, driven.behind) - gap
        bolt = driven.kind == "bolts"
        end = driven.point_surface == "end"
        one = _ONE[driven.kind]
        main = bite if bolt else bearing_in_main(bite, 2 * size.diameter)
        if driven.grip <= TOLERANCE_MM or main <= TOLERANCE_MM:
            return Hold(0.0, f"the {one} hardly reaches {{point}}", NDS, _NDS_SOURCE, True)
        in_main, main_angle = self._bearing(point, size.diameter, end)
        in_side, side_angle = self._bearing(head, size.diameter, False)
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
        factor = self._duration(brief)
        said = ""
        if end:
            factor *= END_GRAIN_SHEAR
            said = ", in end grain" if self._grained(driven.point_part) else ", in the edge of a panel"
        if self.wet:
            factor *= wet_service("nail" if driven.kind == "nails" else "screw", pulled=False)
        least = _LEAST_LAG_DEPTH if size.grips == "lag screw" else _LEAST_DEPTH
        deep = bolt or bite >= least * size.diameter - TOLERANCE_MM
        mode = _mode(yielding.mode, one)
        certain = deep and size.known and head.firm and point.firm and not gap
        return Hold(yielding.force * factor, mode + said, NDS if certain else ESTIMATE, _NDS_SOURCE, certain)

    def _pulled(self, driven: Driven, size: _Size, brief: bool) -> Hold | None:
        if size.grips is None:
            return None
        point, head = self._wood(driven.point_part), self._wood(driven.head_part)
        wall = driven.point_part == WALL
        gap = self.review.limit("wallboard").amount if wall else 0.0
        nail, one = driven.kind == "nails", _ONE[driven.kind]
        held = grip(driven.length, size.thread, driven.grip + gap, min(driven.behind, 1e9) - gap)
        factor, said, certain = self._duration(brief), "", size.known and point.firm
        if self.wet:
            factor *= wet_service("nail" if nail else "screw", pulled=True)
        if driven.point_surface == "end" and self._grained(driven.point_part):
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
            _NDS_SOURCE,
            certain,
        )
        if size.head is not None and driven.pocket is None:
            through = head_pull_through(size.head, head.gravity, driven.grip) * self._duration(brief)
            if through < found.force:
                # The rule is for round heads; a countersunk one pulls through as an estimate.
                return Hold(
                    through,
                    f"the head of the {one} pulls through {{head}}",
                    NDS if nail and head.firm else ESTIMATE,
                    _NDS_SOURCE,
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

    # -------------------------------------------------------------- slanted nails, dowels

    def _slanted(self, bare: Holder, joint: Joint, fastening: Fastening, axis: int, brief: bool) -> Holder:
        """Nails and screws that are driven at a slant through the end of one part into the other."""
        if fastening.length is None:
            return bare._replace(
                why=f"No value is given: the plan does not say how long its {fastening.kind} are.",
                open_shear=True,
                open_pull=True,
            )
        ends = [name for name in joint[:2] if name in self.solids and self.solids[name].long == axis]
        if fastening.kind not in ("nails", "screws") or len(ends) != 1:
            return bare._replace(
                why="No value is given: rules for slanted fasteners are for an end that stands on a side.",
                open_shear=True,
                open_pull=True,
            )
        head = ends[0]
        point = joint.right if joint.left == head else joint.left
        size = _size(fastening, fastening.length)
        side, main = toe_lengths(fastening.length, self.solids[head].thickness)
        one, wood = _ONE[fastening.kind], self._wood(point)
        under = self._wood(head)
        certain = size.known and wood.firm and under.firm and fastening.kind == "nails"
        main = bearing_in_main(main, 2 * size.diameter)
        shear = pull = None
        if main > TOLERANCE_MM and side > TOLERANCE_MM and size.grips is not None:
            yielding = shear_value(
                ShearJoint(
                    size.root,
                    size.diameter,
                    main,
                    side,
                    dowel_bearing_strength(wood.gravity, size.diameter, 90.0),
                    dowel_bearing_strength(under.gravity, size.diameter, 90.0),
                    bending_yield_strength(size.diameter),
                    90.0,
                )
            )
            wet: Literal["screw", "nail"] = "nail" if fastening.kind == "nails" else "screw"
            factor = self._duration(brief)
            by = NDS if certain else ESTIMATE
            shear = Hold(
                yielding.force * TOE_SHEAR * factor * (wet_service(wet, False) if self.wet else 1.0),
                f"{_mode(yielding.mode, one)}, driven at a slant",
                by,
                _NDS_SOURCE,
                certain,
            )
            out = withdrawal_per_mm(size.grips, wood.gravity, size.diameter)
            deep = min(size.thread, fastening.length - side)
            pull = Hold(
                out * deep * TOE_PULL * factor * (wet_service(wet, True) if self.wet else 1.0),
                f"the {one} draws out of {{point}}, driven at a slant",
                by,
                _NDS_SOURCE,
                certain,
            )
        return _named(bare._replace(shear=shear, pull=pull), head, point)

    def _dowels(self, bare: Holder, joint: Joint, fastening: Fastening, axis: int, brief: bool) -> Holder:
        if fastening.length is None or fastening.diameter is None:
            return bare._replace(
                why="No value is given: the plan does not say how thick and how long its dowels are.",
                open_shear=True,
                open_pull=True,
            )
        if any(name in (WALL, FLOOR) for name in joint[:2]):
            return bare
        diameter, half = fastening.diameter, fastening.length / 2
        woods = [self._wood(name) for name in joint[:2]]
        ends = [self.solids[name].long == axis and self._grained(name) for name in joint[:2]]
        strengths = [self._bearing(wood, diameter, end) for wood, end in zip(woods, ends, strict=True)]
        yielding = shear_value(
            ShearJoint(
                diameter,
                diameter,
                half,
                half,
                strengths[0][0],
                strengths[1][0],
                joint_factor("dowel-bending"),
                max(each[1] for each in strengths),
            )
        )
        factor = self._duration(brief) * (END_GRAIN_SHEAR if any(ends) else 1.0)
        if self.wet:
            factor *= wet_service("screw", pulled=False)
        mode = _mode(yielding.mode, "dowel")
        shear = Hold(yielding.force * factor, mode, ESTIMATE, f"{_NDS_SOURCE}; dowel of wood", False)
        pull = None
        if joint.join.glue is not None:
            bond = joint_factor("dowel-bond") / joint_factor("dowel-share")
            pull = Hold(
                glued_dowel_pull(diameter, half, bond) * self._duration(brief),
                "the glued dowel draws out",
                "bond tests over six",
                f"{joint_factor_source('dowel-bond')}; {joint_factor_source('dowel-share')}",
                False,
            )
        return _named(bare._replace(shear=shear, pull=pull), joint.left, joint.right)


def _along_a_pocket(shear: Hold, pull: Hold) -> tuple[Hold, Hold]:
    """A pocket screw stands at a slant to the joint, so that each force has a share of the other in it."""
    out = pull_and_shear("screw", pull.force, shear.force, 90 - SLANT_DEGREES)
    across = pull_and_shear("screw", pull.force, shear.force, SLANT_DEGREES)
    return shear._replace(force=across), pull._replace(force=out)


def _mode(mode: Mode, one: str) -> str:
    """A yield mode in words, with places for the part under the head and the one with the point."""
    words: dict[Mode, str] = {
        "Im": f"the wood of {{point}} is crushed by the {one}",
        "Is": f"the wood of {{head}} is crushed by the {one}",
        "II": f"the {one} turns stiff in both parts",
        "IIIm": f"the {one} bends in {{point}}",
        "IIIs": f"the {one} bends at the joint and crushes {{head}}",
        "IV": f"the {one} bends on both sides of the joint",
    }
    return f"{words[mode]} (mode {mode})"


def _named(holder: Holder, head: str, point: str) -> Holder:
    """The holder with the names of its parts in what gives way."""

    def of(hold: Hold | None) -> Hold | None:
        if hold is None:
            return None
        into = "the stud" if point == WALL else point
        return hold._replace(mode=hold.mode.replace("{head}", head).replace("{point}", into))

    return holder._replace(shear=of(holder.shear), pull=of(holder.pull), head_part=head, point_part=point)


def _heights(patch: Patch, axis: int, count: int, fastening: Fastening) -> tuple[float, ...]:
    """How far above the low edge of a joint its fasteners stand, mm."""
    run = patch.run(axis)
    if axis == Axis.UP or not count:
        return ()
    across = next(each for each in range(3) if each not in (axis, run))
    stand = spots(
        (patch.low[run], patch.high[run]),
        (patch.low[across], patch.high[across]),
        count,
        fastening,
        one_row=fastening.kind == "pocket screws",
    )
    low = patch.low[Axis.UP]
    return tuple((each.along if run == Axis.UP else each.across) - low for each in stand)
