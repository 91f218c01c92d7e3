"""A part as a solid: a board with axes of its own, standing anywhere in space.

One kind of solid serves every part. ``directions`` are the board's own axes (along, across and
through the wood) as unit vectors, so a splayed leg is the same kind of thing as an upright; a
square part is one whose directions are the piece's own. Bounds are always kept, since the broad
phase of every search needs them.

A part that is not a square board has a ``body``: its convex pieces. Volume, centre and areas are then
exact, round things included; where parts meet, a round outside counts as the many-sided bar inside it,
and a round hole makes room for what goes into it but is not taken out of the face it begins in.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

from reviewer.model.plan import Axis

if TYPE_CHECKING:
    from reviewer.geometry.body import Body

Vector = tuple[float, float, float]
Surface = Literal["end", "edge", "face"]

_SURFACES: tuple[Surface, Surface, Surface] = ("end", "edge", "face")
_UNITS: tuple[Vector, Vector, Vector] = ((1.0, 0.0, 0.0), (0.0, 1.0, 0.0), (0.0, 0.0, 1.0))


@dataclass(frozen=True, slots=True)
class Solid:
    """A board in space. ``low`` and ``high`` are its bounds in mm.

    ``size`` is length, width and thickness of the square board that it is cut from; the length is to the
    long point of each end. ``body`` None: it is that square board.
    """

    name: str
    low: Vector
    high: Vector
    long: Axis
    wide: Axis
    thick: Axis
    directions: tuple[Vector, Vector, Vector]
    size: Vector
    body: Body | None = None

    @property
    def length(self) -> float:
        """Along the board, mm: its cut length."""
        return self.size[0]

    @property
    def width(self) -> float:
        """Across the wide face, mm."""
        return self.size[1]

    @property
    def thickness(self) -> float:
        """Through the board, mm."""
        return self.size[2]

    @property
    def centre(self) -> Vector:
        """The centre of mass while the wood is even, mm: of a square board its middle."""
        if self.body is not None:
            return self.body.centroid
        return (
            (self.low[0] + self.high[0]) / 2,
            (self.low[1] + self.high[1]) / 2,
            (self.low[2] + self.high[2]) / 2,
        )

    @property
    def volume(self) -> float:
        """mm³ of wood."""
        if self.body is not None:
            return self.body.volume
        return self.size[0] * self.size[1] * self.size[2]

    def surface_area(self) -> dict[Surface, float]:
        """The outside by kind of surface, mm²: both ends, both edges, both faces, and what cuts lay bare.

        A cut counts as the surface whose way it looks most; the wall of a hole half as each of two.
        """
        if self.body is not None:
            return {kind: self.body.areas.get(kind, 0.0) for kind in _SURFACES}
        length, width, thickness = self.size
        areas = (width * thickness, length * thickness, length * width)
        return {kind: 2 * area for kind, area in zip(_SURFACES, areas, strict=True)}

    @property
    def square(self) -> bool:
        """True when the board's axes are the piece's axes."""
        return self.directions == (_UNITS[self.long], _UNITS[self.wide], _UNITS[self.thick])

    def extent(self, axis: int) -> float:
        """The size of the bounds on an axis, mm."""
        return self.high[axis] - self.low[axis]

    def surface(self, axis: int) -> Surface:
        """Which surface of the board looks along an axis of the piece."""
        if axis == self.long:
            return "end"
        return "edge" if axis == self.wide else "face"


def square_solid(name: str, low: Vector, high: Vector, long: Axis, wide: Axis, thick: Axis) -> Solid:
    """A board whose axes are the piece's own, filling its setting-out box."""
    extents = tuple(high[axis] - low[axis] for axis in range(3))
    return Solid(
        name,
        low,
        high,
        long,
        wide,
        thick,
        (_UNITS[long], _UNITS[wide], _UNITS[thick]),
        (extents[long], extents[wide], extents[thick]),
    )
