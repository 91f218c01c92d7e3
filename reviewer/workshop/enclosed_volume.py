"""How much a piece's drawers and the room behind its doors hold, as the scope for clothing storage counts it.

By bounds, so an estimate: enough to say that a piece is worth a check.
"""

from __future__ import annotations

from reviewer.model.plan import Axis, Moving, Plan
from reviewer.reference.cautions import scopes
from reviewer.reference.usual_values import usual_value
from reviewer.setting_out.result import Extent, SettingOut
from reviewer.workshop.standing import Piece

#: Doors and drawers of a piece that are measured: own choice, far more than reach the scope.
_MEASURED = 40


def drawer_volume(width: float, deep: float, height: float) -> float:
    """mm³ of a drawer, from its inside width and depth and the height to the lowest thing above, all mm.

    CPSC guidance on clothing storage units: the height is taken less 1/8 in.
    """
    return width * deep * max(0.0, height - scopes()["drawer-clearance"].amount)


def door_volume(width: float, deep: float, height: float) -> float:
    """mm³ of the space behind a door that counts: half of it (CPSC guidance), all mm."""
    return width * deep * height * scopes()["door-share"].amount


def in_clothing_scope(height: float, kg: float, volume: float) -> bool:
    """Whether a free-standing piece with doors or drawers is as large as the rule's scope: mm, kg, mm³."""
    amounts = (("clothing-height", height), ("clothing-mass", kg), ("clothing-volume", volume))
    return all(value >= scopes()[name].amount * (1 - 1e-9) for name, value in amounts)


def _drawer(setting: SettingOut, moving: Moving) -> float:
    """mm³ of a drawer: the room over its bottom, between its own walls, up to what is right above it."""
    solids = [setting.solids[name] for name in moving.parts if name in setting.solids]
    bottoms = [solid for solid in solids if solid.thick == Axis.UP]
    if not bottoms:
        return 0.0
    bottom = max(bottoms, key=lambda solid: solid.extent(0) * solid.extent(1))
    low, high = list(bottom.low), list(bottom.high)
    for wall in solids:
        if wall.thick == Axis.UP:
            continue
        axis, middle = wall.thick, (bottom.low[wall.thick] + bottom.high[wall.thick]) / 2
        if wall.high[axis] <= middle:
            low[axis] = max(low[axis], wall.high[axis])
        elif wall.low[axis] >= middle:
            high[axis] = min(high[axis], wall.low[axis])
    own = {*moving.parts}
    floor = bottom.high[Axis.UP]
    above = [
        solid.low[Axis.UP]
        for name, solid in setting.solids.items()
        if name not in own
        and solid.low[Axis.UP] >= floor
        and solid.low[0] < high[0]
        and solid.high[0] > low[0]
        and solid.low[1] < high[1]
        and solid.high[1] > low[1]
    ]
    top = min(above, default=max(solid.high[Axis.UP] for solid in solids))
    return drawer_volume(max(0.0, high[0] - low[0]), max(0.0, high[1] - low[1]), top - floor)


def _behind(piece: Piece, closed: Extent) -> float:
    """mm³ that count of the room behind a door: as wide and tall as the door, to the back of the piece."""
    width, height = closed.high[0] - closed.low[0], closed.high[2] - closed.low[2]
    return door_volume(width, max(0.0, piece.high[1] - closed.high[1]), height)


def _within(setting: SettingOut, moving: Moving, piece: Piece) -> bool:
    """Whether a door or drawer is one of a piece; what nothing hangs yet goes by its place."""
    solids = [setting.solids[name] for name in moving.parts if name in setting.solids]
    if not solids or any(name in piece.parts for name in moving.parts):
        return bool(solids)
    near = usual_value("drawer-near")
    return all(
        piece.low[axis] - near <= solids[0].centre[axis] <= piece.high[axis] + near for axis in range(3)
    )


def enclosed_volume(plan: Plan, setting: SettingOut, piece: Piece) -> float:
    """mm³ of a piece's drawers and of half the room behind its doors, by estimate: of the first forty."""
    total = 0.0
    for moving in [each for each in plan.movings if _within(setting, each, piece)][:_MEASURED]:
        solids = [setting.solids[name] for name in moving.parts if name in setting.solids]
        if moving.kind == "slides":
            total += _drawer(setting, moving)
        elif moving.kind == "opens" and moving.hinge is not None and all(s.thick != Axis.UP for s in solids):
            low = tuple(min(s.low[axis] for s in solids) for axis in range(3))
            high = tuple(max(s.high[axis] for s in solids) for axis in range(3))
            total += _behind(
                piece, Extent(moving.name, (low[0], low[1], low[2]), (high[0], high[1], high[2]))
            )
    return total
