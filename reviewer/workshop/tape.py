"""A place on a part as a maker's tape gives it: so far from a named end, so far from a named side."""

from __future__ import annotations

from reviewer.geometry.vectors import dot, minus
from reviewer.records import NamedTuple
from reviewer.setting_out.solid import Solid, Vector
from reviewer.units import TOLERANCE_MM

#: The sides of the piece, by axis, low and high.
SIDE_WORDS = (("left", "right"), ("front", "back"), ("bottom", "top"))
#: Ways along the axes of the piece, as a next step says them, low and high.
WAY_WORDS = (
    ("to the left", "to the right"),
    ("towards the front", "towards the back"),
    ("lower", "higher"),
)


class Taped(NamedTuple):
    """A place on a part, mm: from the nearer end, and from the nearer of the sides across its width."""

    part: str
    end: str  # "left", "top" …
    from_end: float
    side: str
    from_side: float


def side_word(way: Vector) -> str:
    """The side of the piece that a way looks to most."""
    axis = max(range(3), key=lambda each: (round(abs(way[each]), 6), -each))
    return SIDE_WORDS[axis][way[axis] > 0]


def way_word(way: Vector) -> str:
    """The same as a way to go."""
    axis = max(range(3), key=lambda each: (round(abs(way[each]), 6), -each))
    return WAY_WORDS[axis][way[axis] > 0]


def _from_nearer(solid: Solid, point: Vector, own: int) -> tuple[str, float]:
    middle = (
        (solid.low[0] + solid.high[0]) / 2,
        (solid.low[1] + solid.high[1]) / 2,
        (solid.low[2] + solid.high[2]) / 2,
    )
    way = solid.directions[own]
    off = dot(minus(point, middle), way)
    if off < TOLERANCE_MM:  # in the middle: the low side, whatever rounding makes of it
        way, off = (-way[0], -way[1], -way[2]), -off
    return side_word(way), solid.size[own] / 2 - off


def taped(solid: Solid, point: Vector) -> Taped:
    """Where a point lies on a part, from its ends and edges as the square board it is cut from."""
    end, from_end = _from_nearer(solid, point, 0)
    side, from_side = _from_nearer(solid, point, 1)
    return Taped(solid.name, end, from_end, side, from_side)
