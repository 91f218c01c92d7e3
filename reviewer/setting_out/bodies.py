"""The convex pieces of any solid, so that shaped, slanted and square parts can be compared alike."""

from __future__ import annotations

from reviewer.geometry.body import Body
from reviewer.geometry.convex import box, oriented_box
from reviewer.geometry.vectors import moved
from reviewer.setting_out.solid import Solid


def body_of(solid: Solid) -> Body:
    """A solid as convex pieces. That of a square board is made anew each time."""
    if solid.body is not None:
        return solid.body
    if solid.square:
        surfaces = (solid.surface(0), solid.surface(1), solid.surface(2))
        return Body([box(solid.low, solid.high, surfaces)])
    corner = solid.centre
    for way, size in zip(solid.directions, solid.size, strict=True):
        corner = moved(corner, way, -size / 2)
    return Body([oriented_box(corner, solid.directions, solid.size, ("end", "edge", "face"))])
