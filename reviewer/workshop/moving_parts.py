"""Lids and the boxes under them: what is hinged over a space, how heavy it is, and what holds it open."""

from __future__ import annotations

from collections.abc import Mapping
from typing import NamedTuple

from reviewer.mechanics.mass import Mass
from reviewer.model.plan import Axis, Moving, Plan
from reviewer.reference.usual_values import usual_value
from reviewer.setting_out.result import SettingOut
from reviewer.setting_out.solid import Solid

#: Lids that are looked at: own choice. Who has more has the same one many times.
_LIDS = 40


class LiddedBox(NamedTuple):
    """A lid over a box: the lid's parts, its mass (kg), the room inside (mm³), whether a stay holds it."""

    moving: Moving
    lid: tuple[str, ...]
    hinged: bool
    kg: float
    volume: float
    stayed: bool


def lidded_boxes(plan: Plan, setting: SettingOut, masses: Mapping[str, Mass]) -> tuple[LiddedBox, ...]:
    """The lids that lie flat over a space with walls on four sides and a bottom, by bounds: forty at most."""
    found: list[LiddedBox] = []
    for moving in plan.movings:
        if len(found) == _LIDS:
            break
        lid = [setting.solids[name] for name in moving.parts if name in setting.solids]
        if moving.kind == "slides" or not lid or not all(solid.thick == Axis.UP for solid in lid):
            continue
        volume = _under(lid, moving, setting)
        if volume <= 0:
            continue
        stayed = any(
            piece.kind == "stays"
            for fit in plan.fits
            for piece in fit.pieces
            if {*fit.parts} & {*moving.parts}
        )
        kg = sum(masses[solid.name].kg for solid in lid if solid.name in masses)
        hinged = moving.kind == "opens"
        found.append(LiddedBox(moving, tuple(solid.name for solid in lid), hinged, kg, volume, stayed))
    return tuple(found)


def _under(lid: list[Solid], moving: Moving, setting: SettingOut) -> float:
    """mm³ of the room under a lid; 0 where it is no closed box."""
    own = {*moving.parts}
    low = [min(solid.low[axis] for solid in lid) for axis in range(3)]
    high = [max(solid.high[axis] for solid in lid) for axis in range(3)]
    over = low[Axis.UP]
    inner: dict[tuple[int, bool], float] = {}
    bottom: float | None = None
    for name, solid in setting.solids.items():
        if name in own or solid.low[Axis.UP] >= over:
            continue
        if solid.thick == Axis.UP:
            shared = [min(solid.high[axis], high[axis]) - max(solid.low[axis], low[axis]) for axis in (0, 1)]
            area = (high[0] - low[0]) * (high[1] - low[1])
            if min(shared) > 0 and shared[0] * shared[1] >= usual_value("box-bottom-share") * area:
                bottom = max(solid.high[Axis.UP], bottom if bottom is not None else solid.high[Axis.UP])
            continue
        axis, along = solid.thick, 1 - solid.thick
        if min(solid.high[along], high[along]) - max(solid.low[along], low[along]) < usual_value(
            "box-wall-along"
        ) * (high[along] - low[along]):
            continue
        near = usual_value("box-wall-near") * (high[axis] - low[axis])
        if min(abs(solid.high[axis] - low[axis]), abs(solid.low[axis] - low[axis])) <= near:
            inner[axis, False] = max(solid.high[axis], inner.get((axis, False), solid.high[axis]))
        elif min(abs(solid.low[axis] - high[axis]), abs(solid.high[axis] - high[axis])) <= near:
            inner[axis, True] = min(solid.low[axis], inner.get((axis, True), solid.low[axis]))
    if bottom is None or len(inner) < 4:
        return 0.0
    sizes = [inner[axis, True] - inner[axis, False] for axis in (0, 1)]
    return max(0.0, sizes[0]) * max(0.0, sizes[1]) * max(0.0, over - bottom)
