"""Glue: how much of it joints take, which are glued by end grain alone, and in which step each is done."""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import TYPE_CHECKING

from reviewer.language.source import Span
from reviewer.model.plan import GROUNDS, Fastening, Join
from reviewer.records import NamedTuple
from reviewer.reference.glues import glue
from reviewer.reference.usual_values import usual_value
from reviewer.setting_out.result import Joint
from reviewer.setting_out.solid import Solid
from reviewer.units import TOLERANCE_MM
from reviewer.workshop.housing import housed

if TYPE_CHECKING:
    from reviewer.review import Review

#: What holds two parts together beside glue. Shelf pins only carry.
_KEEPS = (
    "screws", "pocket screws", "nails", "dowels", "bolts", "biscuits", "brackets", "loose tenons", "wedges",
    "clips",
)  # fmt: skip
_SIXTY = 60


def kept_by_more_than_glue(join: Join) -> bool:
    """True when a join is driven, pegged or let in as well."""
    return join.housing is not None or any(each.kind in _KEEPS for each in join.fastenings)


# ---------------------------------------------------------------- areas


def _patch(joint: Joint, axis: int) -> float:
    """The area (mm²) that two parts share, seen along an axis."""
    if joint.overlap is None:
        return joint.contact.area if joint.contact is not None else 0.0
    one, two = (joint.overlap.depths[each] for each in range(3) if each != axis)
    return one * two


def _housed_area(joint: Joint, solids: dict[str, Solid]) -> float:
    """The glued surface (mm²) of a joint that makes room, by its usual form."""
    made = housed(joint, solids)
    housing, overlap = joint.join.housing, joint.overlap
    if made is None or housing is None or overlap is None:
        return _patch(joint, 0)
    part, depths, patch = solids[made.part], overlap.depths, _patch(joint, made.axis)
    across = [depths[each] for each in range(3) if each != made.axis]
    match housing.kind:
        case "dado" | "groove":
            return patch + 2 * made.depth * max(across)  # the bottom and two walls
        case "rabbet":
            return patch + made.depth * max(across)  # the bottom and one wall
        case "mortise and tenon":
            thick = housing.thickness or part.thickness * usual_value("tenon-share")
            wide = depths[part.wide] if part.wide != made.axis else max(across)
            return 2 * made.depth * (wide + thick)  # two cheeks and two edges
        case "bridle":
            return 2 * patch  # two cheeks
        case "mitre" | "splined mitre":
            return patch * math.sqrt(2)
        case "dovetails" | "box joint":
            return 2 * patch  # the cheeks of fingers about as wide as the wood is thick
        case _:
            return patch  # the shared face of a half lap, the edge of a tongue


def _biscuit_area(joint: Joint, axis: int, solids: dict[str, Solid]) -> float:
    """Both sides (mm²) of one biscuit: the largest that the joint has room for."""
    from reviewer.workshop.driving import patch_of
    from reviewer.workshop.fastener_sizes import biscuit_for

    patch = patch_of(joint)
    stock = min((solids[name].thickness for name in joint[:2] if name not in GROUNDS), default=0.0)
    biscuit = biscuit_for(stock, patch.extent(patch.run(axis)) if patch is not None else 0.0)
    return 2 * biscuit.length * biscuit.width


def _fastened_area(joint: Joint, fastening: Fastening, axis: int, solids: dict[str, Solid]) -> float:
    """The glued surface (mm²) of dowels, biscuits and loose tenons."""
    from reviewer.workshop.driving import fastener_count

    count, _ = fastener_count(joint, fastening, axis)
    if fastening.kind == "biscuits":
        return count * _biscuit_area(joint, axis, solids)
    diameter, length = fastening.diameter, fastening.length
    if diameter is None or length is None:
        return 0.0
    if fastening.kind == "dowels":
        return count * math.pi * diameter * length
    return count * 2 * length * (diameter + (fastening.width or 2 * diameter))


class GlueLine(NamedTuple):
    """The glue of one joint: which glue, and how much surface it covers, mm²."""

    joint: Joint
    glue: str
    area: float


def glue_lines(review: Review) -> tuple[GlueLine, ...]:
    """Every glued joint whose parts meet, in the order of the joints."""
    from reviewer.workshop.driving import joint_axis

    solids = review.setting.solids
    found = []
    for joint in review.setting.joints:
        if joint.join.glue is None or not joint.meets:
            continue
        axis = joint_axis(joint, solids) or 0
        if joint.left in GROUNDS or joint.right in GROUNDS or joint.join.housing is None:
            area = _patch(joint, axis)
        else:
            area = _housed_area(joint, solids)
        for fastening in joint.join.fastenings:
            if fastening.kind in ("dowels", "biscuits", "loose tenons"):
                area += _fastened_area(joint, fastening, axis, solids)
        found.append(GlueLine(joint, joint.join.glue, area))
    return tuple(found)


class GlueNeeded(NamedTuple):
    """One glue over some joints: its key, the surface it covers (mm²), how much of it (mm³), how many joints.

    ``volume`` is None where no spread is tabled: the label says how far it goes.
    """

    key: str
    area: float
    volume: float | None
    joints: int


def _needed(key: str, lines: list[GlueLine]) -> GlueNeeded:
    area = math.fsum(line.area for line in lines)
    return GlueNeeded(key, area, glue_volume(key, area), len(lines))


def glue_list(review: Review) -> tuple[GlueNeeded, ...]:
    """Every glue over the whole piece, in the order in which the plan first names them."""
    if not any(join.glue is not None for join in review.plan.joins):
        return ()
    found: dict[str, list[GlueLine]] = {}
    for line in glue_lines(review):
        found.setdefault(line.glue, []).append(line)
    return tuple(_needed(key, lines) for key, lines in found.items())


def glue_by_join(review: Review) -> dict[Span, GlueNeeded]:
    """The glue of every ``join`` statement, by the place of the statement."""
    if not any(join.glue is not None for join in review.plan.joins):
        return {}
    found: dict[Span, list[GlueLine]] = {}
    for line in glue_lines(review):
        found.setdefault(line.joint.join.span, []).append(line)
    return {span: _needed(lines[0].glue, lines) for span, lines in found.items()}


def glue_volume(key: str, area: float) -> float | None:
    """How many mm³ of glue an area (mm²) takes, at the least spread; None where no spread is tabled."""
    spread = glue(key).spread
    return area / spread if spread is not None else None


# ---------------------------------------------------------------- end grain


def _solid_end(review: Review, name: str, surface: str) -> bool:
    return name not in GROUNDS and surface == "end" and review.material_of(name).moves


def end_grain_ends(review: Review, joint: Joint) -> tuple[str, ...]:
    """The parts of solid wood that meet with their ends in a joint with nothing but glue."""
    contact = joint.contact
    if joint.join.glue is None or contact is None or kept_by_more_than_glue(joint.join):
        return ()
    return tuple(
        name for name in (joint.left, joint.right) if _solid_end(review, name, contact.surface_of(name))
    )


def glued_by_ends_alone(review: Review) -> Iterator[tuple[Joint, tuple[str, ...]]]:
    """Joints that glue on end grain alone holds, and the parts whose ends these are.

    Not where the same two are held otherwise too, or both by a third part: a kick that is screwed to the
    bottom above it may be glued to the sides.
    """
    glued: list[tuple[Joint, tuple[str, ...]]] = []
    firm: dict[str, dict[str, None]] = {}
    for joint in review.setting.joints:
        if not joint.meets:
            continue
        ends = end_grain_ends(review, joint)
        if ends:
            glued.append((joint, ends))
        elif joint.join.glue is not None or kept_by_more_than_glue(joint.join):
            firm.setdefault(joint.left, {})[joint.right] = None
            firm.setdefault(joint.right, {})[joint.left] = None
    for joint, ends in glued:
        left, right = firm.get(joint.left, {}), firm.get(joint.right, {})
        if joint.right not in left and not any(name in right for name in left):
            yield joint, ends


def mitred_by_ends(review: Review) -> Iterator[Joint]:
    """Plain mitres of solid boards, end to end, that have no fastener: the glue meets end grain alone."""
    solids = review.setting.solids
    for joint in review.setting.joints:
        housing = joint.join.housing
        if housing is None or housing.kind != "mitre" or not joint.meets:
            continue
        if any(each.kind in _KEEPS for each in joint.join.fastenings) or joint.left in GROUNDS:
            continue
        if joint.right in GROUNDS:
            continue
        two = solids[joint.left], solids[joint.right]
        if two[0].long != two[1].long and all(review.material_of(solid.name).moves for solid in two):
            yield joint


# ---------------------------------------------------------------- in the order of work


def step_of(review: Review, joint: Joint) -> int | None:
    """In which of the plan's steps a joint is made; None where the steps do not say so plainly.

    It is the first step that joins or fits both parts; else the only one that names either.
    """
    naming: list[int] = []
    for number, step in enumerate(review.plan.steps):
        named = [
            (joint.left in work.parts, joint.right in work.parts)
            for work in step.works
            if work.verb in ("join", "fit")
        ]
        one, two = any(left for left, _ in named), any(right for _, right in named)
        if one and two:
            return number
        if one or two:
            naming.append(number)
    return naming[0] if len(naming) == 1 else None


def glued_in_steps(review: Review) -> dict[int, list[Joint]]:
    """The glued joints of every step, by the step's place in the plan; steps that glue nothing are absent."""
    found: dict[int, list[Joint]] = {}
    if not review.plan.steps:
        return found
    known: dict[tuple[str, str], int | None] = {}
    for joint in review.setting.joints:
        if joint.join.glue is None or not joint.meets:
            continue
        pair = (joint.left, joint.right)
        if pair not in known:
            known[pair] = step_of(review, joint)
        number = known[pair]
        if number is not None:
            found.setdefault(number, []).append(joint)
    return found


def gluing_hours(joints: int) -> float:
    """How long it takes to spread the glue of so many joints and to put them together, hours."""
    return joints * usual_value("glue-joint-minutes") / _SIXTY


# ---------------------------------------------------------------- gaps


class Slack(NamedTuple):
    """Room beside a part in the dado or groove that another part's own clause cuts for it, mm in all."""

    joint: Joint
    part: str
    into: str
    wide: float
    thick: float

    @property
    def gap(self) -> float:
        return self.wide - self.thick


def slack_in_recesses(review: Review) -> Iterator[Slack]:
    """Glued parts that stand in a cut which is wider than they are."""
    from reviewer.model.shapes import BoxCut
    from reviewer.workshop.proportions import recess_of_cut

    solids = review.setting.solids
    for joint in review.setting.joints:
        if joint.join.glue is None or not joint.meets:
            continue
        for into, name in ((joint.left, joint.right), (joint.right, joint.left)):
            if into in GROUNDS or name in GROUNDS:
                continue
            shape, solid, goes = review.plan.parts[into].shape, solids[into], solids[name]
            if shape is None or not solid.square or not goes.square:
                continue
            for cutting in shape.cuttings:
                if not isinstance(cutting, BoxCut) or cutting.kind not in ("dado", "groove"):
                    continue
                recess = recess_of_cut(cutting, solid)
                if recess is None or goes.thick == recess.axis:
                    continue
                axis = goes.thick
                inside = all(
                    min(goes.high[way], recess.top[way]) - max(goes.low[way], recess.low[way]) > TOLERANCE_MM
                    for way in range(3)
                )
                within = (
                    goes.low[axis] >= recess.low[axis] - TOLERANCE_MM
                    and goes.high[axis] <= recess.top[axis] + TOLERANCE_MM
                )
                if inside and within:
                    yield Slack(joint, name, into, recess.top[axis] - recess.low[axis], goes.extent(axis))
