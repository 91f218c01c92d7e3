"""Slanted nails and wooden dowels: what they hold."""

from __future__ import annotations

from typing import TYPE_CHECKING, Literal

from reviewer.mechanics.fasteners import (
    END_GRAIN_SHEAR,
    TOE_PULL,
    TOE_SHEAR,
    glued_dowel_pull,
    toe_lengths,
    wet_service,
    withdrawal_per_mm,
)
from reviewer.mechanics.yield_modes import Joint as ShearJoint
from reviewer.mechanics.yield_modes import (
    bearing_in_main,
    bending_yield_strength,
    dowel_bearing_strength,
    shear_value,
)
from reviewer.model.plan import FLOOR, WALL, Fastening
from reviewer.reference.joint_values import joint_factor, joint_factor_source
from reviewer.setting_out.result import Joint
from reviewer.units import TOLERANCE_MM
from reviewer.workshop.fastener_wood import ESTIMATE, NDS, NDS_SOURCE, ONE, mode_words, named_holder, size_of
from reviewer.workshop.holds import Hold, Holder

if TYPE_CHECKING:
    from reviewer.workshop.fastener_holds import FastenerHolds


def slanted(
    holds: FastenerHolds, bare: Holder, joint: Joint, fastening: Fastening, axis: int, brief: bool
) -> Holder:
    """Nails and screws that are driven at a slant through the end of one part into the other."""
    if fastening.length is None:
        return bare._replace(
            why=f"No value is given: the plan does not say how long its {fastening.kind} are.",
            open_shear=True,
            open_pull=True,
        )
    ends = [name for name in joint[:2] if name in holds.solids and holds.solids[name].long == axis]
    if fastening.kind not in ("nails", "screws") or len(ends) != 1:
        return bare._replace(
            why="No value is given: rules for slanted fasteners are for an end that stands on a side.",
            open_shear=True,
            open_pull=True,
        )
    head = ends[0]
    point = joint.right if joint.left == head else joint.left
    size = size_of(fastening, fastening.length)
    side, main = toe_lengths(fastening.length, holds.solids[head].thickness)
    one, wood = ONE[fastening.kind], holds.wood(point)
    under = holds.wood(head)
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
        factor = holds.duration(brief)
        by = NDS if certain else ESTIMATE
        shear = Hold(
            yielding.force * TOE_SHEAR * factor * (wet_service(wet, False) if holds.wet else 1.0),
            f"{mode_words(yielding.mode, one)}, driven at a slant",
            by,
            NDS_SOURCE,
            certain,
        )
        out = withdrawal_per_mm(size.grips, wood.gravity, size.diameter)
        deep = min(size.thread, fastening.length - side)
        pull = Hold(
            out * deep * TOE_PULL * factor * (wet_service(wet, True) if holds.wet else 1.0),
            f"the {one} draws out of {{point}}, driven at a slant",
            by,
            NDS_SOURCE,
            certain,
        )
    return named_holder(bare._replace(shear=shear, pull=pull), head, point)


def dowels(
    holds: FastenerHolds, bare: Holder, joint: Joint, fastening: Fastening, axis: int, brief: bool
) -> Holder:
    """Wooden dowels: glued they are drawn out and sheared, dry they are sheared alone."""
    if fastening.length is None or fastening.diameter is None:
        return bare._replace(
            why="No value is given: the plan does not say how thick and how long its dowels are.",
            open_shear=True,
            open_pull=True,
        )
    if any(name in (WALL, FLOOR) for name in joint[:2]):
        return bare
    diameter, half = fastening.diameter, fastening.length / 2
    woods = [holds.wood(name) for name in joint[:2]]
    ends = [holds.solids[name].long == axis and holds.grained(name) for name in joint[:2]]
    strengths = [holds.bearing(wood, diameter, end) for wood, end in zip(woods, ends, strict=True)]
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
    factor = holds.duration(brief) * (END_GRAIN_SHEAR if any(ends) else 1.0)
    if holds.wet:
        factor *= wet_service("screw", pulled=False)
    mode = mode_words(yielding.mode, "dowel")
    shear = Hold(yielding.force * factor, mode, ESTIMATE, f"{NDS_SOURCE}; dowel of wood", False)
    pull = None
    if joint.join.glue is not None:
        bond = joint_factor("dowel-bond") / joint_factor("dowel-share")
        pull = Hold(
            glued_dowel_pull(diameter, half, bond) * holds.duration(brief),
            "the glued dowel draws out",
            "bond tests over six",
            f"{joint_factor_source('dowel-bond')}; {joint_factor_source('dowel-share')}",
            False,
        )
    return named_holder(bare._replace(shear=shear, pull=pull), joint.left, joint.right)
