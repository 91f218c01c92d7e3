"""Which parts of a piece hold its wall restraints, and what lies between them and the wall. Lengths mm."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from reviewer.model.plan import Axis, Restraint
from reviewer.reference.usual_values import usual_value
from reviewer.setting_out.solid import Solid
from reviewer.units import TOLERANCE_MM
from reviewer.workshop.standing import Piece

if TYPE_CHECKING:
    from reviewer.review import Review
    from reviewer.workshop.restraining import WallSide


def outlined(restraint: Restraint, review: Review) -> bool:
    """True where a restraint names the piece as a whole."""
    return any(word in review.plan.boxes for word in restraint.said.split(", "))


def parts_there(
    restraint: Restraint, piece: Piece, review: Review, wall: WallSide, height: float
) -> tuple[list[Solid], list[Solid]]:
    """The parts that a restraint can be fixed to at a height, and those there that are too thin."""
    inside = set(piece.parts)
    names = [name for name in restraint.what if name in inside]
    return parts_at(names, piece, review, wall, height, restraint, not outlined(restraint, review))


def parts_at(
    names: Sequence[str],
    piece: Piece,
    review: Review,
    wall: WallSide,
    height: float,
    restraint: Restraint,
    named: bool,
) -> tuple[list[Solid], list[Solid]]:
    """Those of some parts that stand at a height, thick enough and too thin ones.

    Not ``named``: the plan names no part, so only what reaches near the wall, stays put and lets the
    restraint's screw through to the wall is meant. One on a top is fixed to what has its top there, and to
    boards that lie flat before those whose end or edge comes up.
    """
    least = review.limit("restraint-part").amount - TOLERANCE_MM
    back = wall.back(piece)
    near = back - usual_value("restraint-near-back")
    top = restraint.from_back if restraint.on_top else None
    thick: list[Solid] = []
    thin: list[Solid] = []
    for name in names:
        solid = review.setting.solids.get(name)
        if solid is None:
            continue
        if not solid.low[Axis.UP] - TOLERANCE_MM <= height <= solid.high[Axis.UP] + TOLERANCE_MM:
            continue
        if top is not None:
            spot = back - top if top else min(back, wall.back(solid))
            if spot < near and not top:
                continue
            if abs(solid.high[Axis.UP] - height) > TOLERANCE_MM or name in review.moves_with:
                continue
            if not wall.back(solid) - solid.extent(wall.axis) <= spot <= wall.back(solid) + TOLERANCE_MM:
                continue
        elif not named:
            if wall.back(solid) < near or name in review.moves_with:
                continue
            too_deep = restraint.length is not None and solid.through(wall.axis) >= restraint.length
            if restraint.device == "screws" and too_deep:
                continue
        (thick if solid.thickness >= least else thin).append(solid)
    flat = [solid for solid in thick if solid.surface(Axis.UP) == "face"] if top is not None else []
    return flat or thick, thin


def before_the_part(
    restraint: Restraint, fixed: Sequence[Solid], piece: Piece, review: Review, wall: WallSide, height: float
) -> tuple[float, float]:
    """What a strap's screws at the piece go through first, mm, and how far before the back it lies.

    A rail behind a thin back is screwed to through that; without one before it, the strap reaches in to it.
    """
    if restraint.on_top or not fixed or restraint.device not in ("strap", "bracket"):
        return 0.0, 0.0
    nearest = max(fixed, key=wall.back)
    recess = wall.back(piece) - wall.back(nearest)
    if recess <= TOLERANCE_MM:
        return 0.0, 0.0
    along = wall.along
    for name in piece.parts:
        solid = review.setting.solids[name]
        if (
            wall.back(solid) > wall.back(nearest) + TOLERANCE_MM
            and solid.low[Axis.UP] <= height <= solid.high[Axis.UP]
            and solid.low[along] < nearest.high[along]
            and nearest.low[along] < solid.high[along]
        ):
            return recess, 0.0
    return 0.0, recess


def wood_before_wall(restraint: Restraint, solids: Sequence[Solid], piece: Piece, wall: WallSide) -> float:
    """What lies between the head of a restraint's screw and the wallboard, mm; before a strap's nothing.

    A screw through the piece goes through its part and whatever is left to the wall, a gap or a back.
    """
    if restraint.device in ("strap", "bracket"):
        return 0.0
    back = wall.back(piece) + wall.gap
    nearest = min(((solid.through(wall.axis), back - wall.back(solid)) for solid in solids), default=None)
    if restraint.device == "cleat":
        usual = usual_value("cleat-thickness")
        # The rail itself where the plan names it, else one of usual thickness on the wall.
        return nearest[0] if nearest is not None and nearest[0] <= 2 * usual else usual
    return sum(nearest) if nearest is not None else 0.0
