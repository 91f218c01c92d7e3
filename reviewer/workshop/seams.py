"""Where two joined parts meet, as a flat place that a row of fasteners runs along. Lengths mm."""

from __future__ import annotations

import math
from itertools import combinations

from reviewer.geometry.vectors import UNITS, cross, dot, minus, moved, turned_round, unit
from reviewer.records import NamedTuple
from reviewer.setting_out.solid import Solid, Vector
from reviewer.units import TOLERANCE_MM

#: Ways less apart from flat than this (as a sine) have no direction to go by.
_FLAT = 1e-6


class Seam(NamedTuple):
    """Where two parts meet, as a flat place. ``normal`` goes from the head part into the point part.

    ``origin`` is a point of it; ``along`` and ``across`` are unit vectors in it, and ``run`` and ``width``
    how far it reaches from the origin on them, mm.
    """

    origin: Vector
    normal: Vector
    along: Vector
    across: Vector
    run: tuple[float, float]
    width: tuple[float, float]

    def at(self, along: float, across: float) -> Vector:
        o, a, c = self.origin, self.along, self.across
        return (
            o[0] + a[0] * along + c[0] * across,
            o[1] + a[1] * along + c[1] * across,
            o[2] + a[2] * along + c[2] * across,
        )


def on_seam(seam: Seam, along: float, solid: Solid, through: Vector, off: float) -> Vector:
    """The point of a seam at a place of its row, ``off`` mm past the middle of a board's thickness."""
    start = seam.at(along, 0.0)
    middle = (
        (solid.low[0] + solid.high[0]) / 2,
        (solid.low[1] + solid.high[1]) / 2,
        (solid.low[2] + solid.high[2]) / 2,
    )
    across = dot(seam.across, through)
    if abs(across) < _FLAT:
        return seam.at(along, sum(seam.width) / 2)
    return moved(start, seam.across, (dot(minus(middle, start), through) + off) / across)


def slanting_seam(
    corners: tuple[Vector, ...], normal: Vector, run: int | None, middle_of_all: Vector
) -> Seam:
    """The seam of a patch that follows no axis of the piece. Its row lies along the middle of the patch."""
    count = len(corners)
    x, y, z = (sum(each[axis] for each in corners) / count for axis in range(3))
    origin = (x, y, z)

    def extent(way: Vector) -> tuple[float, float]:
        reach = [dot(minus(each, origin), way) for each in corners]
        return min(reach), max(reach)

    ways = []
    for axis in range(3) if run is None else (run,):
        flat = moved(UNITS[axis], normal, -dot(UNITS[axis], normal))
        if math.hypot(*flat) > _FLAT:
            ways.append(unit(flat))
    along = max(ways, key=lambda way: extent(way)[1] - extent(way)[0])
    if dot(minus(origin, middle_of_all), along) > TOLERANCE_MM:
        along = turned_round(along)
    across = cross(normal, along)
    if dot(minus(origin, middle_of_all), across) > TOLERANCE_MM:
        across = turned_round(across)
    width = extent(across)
    middle = (width[0] + width[1]) / 2
    # Where the middle line of the patch enters and leaves it. The corners may be those of several pieces, so
    # they need not go round: the outline is the outermost of all lines between two of them.
    reach = []
    for one, two in combinations(corners, 2):
        low, high = dot(minus(one, origin), across), dot(minus(two, origin), across)
        if (low - middle) * (high - middle) <= 0 and low != high:
            share = (middle - low) / (high - low)
            near, far = dot(minus(one, origin), along), dot(minus(two, origin), along)
            reach.append(near + share * (far - near))
    return Seam(origin, normal, along, across, (min(reach), max(reach)) if reach else extent(along), width)
