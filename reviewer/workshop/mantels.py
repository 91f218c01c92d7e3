"""How far wood over a fireplace may reach out from the wall."""

from __future__ import annotations

from typing import NamedTuple

from reviewer.model.plan import Axis
from reviewer.review import Review
from reviewer.units import TOLERANCE_MM


class Mantel(NamedTuple):
    """A part over the opening, mm: how far above it, how far out from the wall, and how far it may."""

    part: str
    above: float
    out: float
    most: float


def most_out(above: float, gap: float, reach: float, slope: float) -> float | None:
    """How far wood this far above the opening may reach out, mm; None where nothing limits it.

    None of it within ``gap``; from there to ``reach`` its distance divided by ``slope``.
    """
    if above >= reach:
        return None
    return above / slope if above >= gap else 0.0


def mantels(review: Review, firebox: float, gap: float, reach: float, slope: float) -> list[Mantel]:
    """Every part over the opening that reaches out too far, the worst first."""
    wall = review.setting.wall
    solids = review.setting.solids.values()
    face = max(solid.high[Axis.DEEP] for solid in solids)
    if wall is not None and wall[0] == Axis.DEEP:
        face = wall[1]
    found = []
    for solid in solids:
        above = solid.low[Axis.UP] - firebox
        if above < -TOLERANCE_MM:
            continue  # beside the opening or in front of it, which the plan does not tell apart
        most = most_out(above + TOLERANCE_MM, gap, reach, slope)
        out = face - solid.low[Axis.DEEP]
        if most is not None and out > most + TOLERANCE_MM:
            found.append(Mantel(solid.name, above, out, most))
    return sorted(found, key=lambda one: -(one.out - one.most))
