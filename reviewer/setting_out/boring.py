"""Round holes: where each goes through wood, how deep, and what cannot be bored. mm."""

from __future__ import annotations

import math
from collections.abc import Sequence

from reviewer.geometry.body import Bore, square_ways, stretches_through
from reviewer.geometry.convex import Convex, Face
from reviewer.geometry.vectors import Vector, dot, moved, turned_round, within
from reviewer.model.shapes import Hole
from reviewer.setting_out.blanks import Frame
from reviewer.setting_out.result import Miscut
from reviewer.units import TOLERANCE_MM

#: A face that a hole goes through at a flatter angle than this (as a cosine) is passed by, not entered.
_GLANCING = 0.05
#: A hole is tried for room at so many places round it.
_TRIED = 16


def bored(
    name: str, frame: Frame, surfaces: Sequence[str], pieces: Sequence[Convex], hole: Hole
) -> tuple[Bore | None, list[Miscut]]:
    """The bore that a hole makes in the pieces of a part, and what cannot be done of it."""
    axis, radius = hole.axis, hole.diameter / 2
    local = [0.0, 0.0, 0.0]
    local[axis] = frame.extents[axis] if hole.side == "high" else 0.0
    one, two = (each for each in range(3) if each != axis)
    for each, reach in zip((one, two), hole.places, strict=True):
        whole = frame.extents[each]
        places = {"low": reach.away, "high": whole - reach.away}
        local[each] = places.get(reach.start, whole / 2 + reach.away)
    mouth = frame.point(local)
    way = frame.axes[axis] if hole.side == "low" else turned_round(frame.axes[axis])
    wood = stretches_through(pieces, mouth, way)
    if not wood:
        return None, [Miscut(name, "hole misses the wood", hole.span)]
    miscuts = []
    stretches = wood
    start, end = wood[0]
    through = hole.depth is None
    if hole.depth is not None:
        if hole.depth > end - start + TOLERANCE_MM:
            miscuts.append(Miscut(name, "hole too deep", hole.span, (hole.depth, end - start)))
        through = hole.depth >= end - start - TOLERANCE_MM
        stretches = [(start, min(end, start + hole.depth))]
    for near, far in stretches:
        if not _has_room(pieces, moved(mouth, way, (near + far) / 2), way, radius):
            return None, [*miscuts, Miscut(name, "hole breaks out", hole.span, (hole.diameter,))]
    entry = _mouth(pieces, moved(mouth, way, start), way, surfaces[axis])
    leaving = _mouth(pieces, moved(mouth, way, stretches[-1][1]), way, surfaces[axis])
    bore = Bore(
        mouth,
        way,
        radius,
        tuple(stretches),
        entry,
        leaving if through else ("", 0.0),
        surfaces[axis],
        (surfaces[one], surfaces[two]),
    )
    return bore, miscuts


def on_outline(face: Face, point: Vector) -> bool:
    """True when a point in the plane of a face lies on it, or as good as."""
    right, up = square_ways(face.normal)
    ways = (right, up, turned_round(right), turned_round(up))
    return bool(within(tuple(moved(point, way, TOLERANCE_MM) for way in ways), face.normal, face.ring))


def _has_room(pieces: Sequence[Convex], middle: Vector, way: Vector, radius: float) -> bool:
    """True when a whole circle lies in wood. It may touch the outside."""
    right, up = square_ways(way)
    for i in range(_TRIED):
        angle = 2 * math.pi / _TRIED * i
        at = moved(moved(middle, right, radius * math.cos(angle)), up, radius * math.sin(angle))
        if not any(piece.holds(at, TOLERANCE_MM) for piece in pieces):
            return False
    return True


def _mouth(pieces: Sequence[Convex], place: Vector, way: Vector, usual: str) -> tuple[str, float]:
    """The surface where a bore goes in or out, and how much larger its mouth is than the round."""
    for piece in pieces:
        for face in piece.faces:
            turn = abs(dot(face.normal, way))
            in_plane = abs(dot(face.normal, place) - face.offset) < TOLERANCE_MM
            if turn > _GLANCING and in_plane and on_outline(face, place):
                return face.surface, 1 / turn
    return usual, 1.0
