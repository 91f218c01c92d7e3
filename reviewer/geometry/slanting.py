"""Boards out of plumb: how a leaning board lies, its level section, and the rise of a brace. mm, radians."""

from __future__ import annotations

import math
from typing import Literal

from reviewer.geometry.vectors import Vector
from reviewer.records import NamedTuple

EndCut = Literal["square", "level", "plumb", "corner"]

#: Halvings of an angle until its last bit is known.
_HALVINGS = 60


class Leaning(NamedTuple):
    """How a board leans: unit vectors up along it, along its face and out of its face.

    The face keeps a level line: that which runs along the axis of its width. So a rail meets it squarely.
    """

    up: Vector
    along_face: Vector
    out_of_face: Vector


def leaning(run_across: float, run_deep: float, thick_axis: int) -> Leaning:
    """The ways of a board whose middle line moves so far across and deep for each mm up.

    ``thick_axis`` (0 across, 1 deep) is the level axis nearest to its thickness.
    """
    runs = (run_across, run_deep)
    wide_axis = 1 - thick_axis
    run_wide, run_thick = runs[wide_axis], runs[thick_axis]
    long = math.sqrt(1 + run_wide * run_wide + run_thick * run_thick)
    tilt = math.sqrt(1 + run_thick * run_thick)

    def placed(wide: float, thick: float, up: float) -> Vector:
        return (wide, thick, up) if wide_axis == 0 else (thick, wide, up)

    return Leaning(
        placed(run_wide / long, run_thick / long, 1 / long),
        placed(tilt / long, -run_wide * run_thick / (tilt * long), -run_wide / (tilt * long)),
        placed(0.0, 1 / tilt, -run_thick / tilt),
    )


def level_section(
    run_across: float, run_deep: float, thick_axis: int, width: float, thickness: float
) -> tuple[float, float]:
    """The bounds of a leaning board's level section, across and deep, mm.

    ``thick_axis`` (0 across, 1 deep) is the level axis nearest to the thickness; the other is that of the
    width. Both are plain multiples of ``width`` and ``thickness``: ask with (1, 0) and (0, 1) for the
    factors. On the thick axis it is thickness · √(1 + rₜ²); on the wide axis
    (width · √(1 + rᵥ² + rₜ²) + |rᵥ rₜ| · thickness) / √(1 + rₜ²), with rₜ and rᵥ the runs on the thick and
    the wide axis. Own derivation from the square section and the level plane.
    """
    runs = (run_across, run_deep)
    run_wide, run_thick = runs[1 - thick_axis], runs[thick_axis]
    tilt = math.sqrt(1 + run_thick * run_thick)
    thick = thickness * tilt
    long = math.sqrt(1 + run_wide * run_wide + run_thick * run_thick)
    wide = (width * long + abs(run_wide * run_thick) * thickness) / tilt
    return (thick, wide) if thick_axis == 0 else (wide, thick)


def section_of_level(
    run_across: float, run_deep: float, thick_axis: int, across: float, deep: float
) -> tuple[float, float]:
    """The width and thickness of the board that has a level section of these bounds: the way back."""
    runs = (run_across, run_deep)
    run_wide, run_thick = runs[1 - thick_axis], runs[thick_axis]
    level = (across, deep)
    tilt = math.sqrt(1 + run_thick * run_thick)
    thickness = level[thick_axis] / tilt
    long = math.sqrt(1 + run_wide * run_wide + run_thick * run_thick)
    return (level[1 - thick_axis] * tilt - abs(run_wide * run_thick) * thickness) / long, thickness


class Rise(NamedTuple):
    """A slanting board in its box: its angle from level, and the middles of its ends from the low corner."""

    angle: float
    low: tuple[float, float]
    high: tuple[float, float]


def _room(end: EndCut, angle: float, width: float) -> tuple[float, float]:
    """How far an end of a slanting board reaches beyond its own middle, along and up."""
    half = width / 2
    if end == "square":
        return half * math.sin(angle), half * math.cos(angle)
    if end == "level":
        return half / math.sin(angle), 0.0
    if end == "plumb":
        return 0.0, half / math.cos(angle)
    return 0.0, 0.0


def rise(along: float, up: float, width: float, low_end: EndCut, high_end: EndCut) -> Rise | None:
    """How a board of this width lies in a box so that it just fills it; None where it does not fit.

    With φ the angle, each end takes room of the box, and what is left must lie at the angle φ too:
    (along - room along) sin φ = (up - room up) cos φ. Found by halving.
    """
    if min(along, up, width) <= 0:
        return None
    ends = (low_end, high_end)
    squares = ends.count("square")
    fixed = (width / 2) * (ends.count("level") - ends.count("plumb"))

    def off(angle: float) -> float:
        # Room along times sine less room up times cosine is ±W/2 for level and plumb, -W/2 cos 2φ for square.
        turned = squares * (width / 2) * math.cos(2 * angle)
        return along * math.sin(angle) - up * math.cos(angle) - fixed + turned

    low, high = 0.0, math.pi / 2
    if off(low) >= 0 or off(high) <= 0:
        return None
    for _ in range(_HALVINGS):
        middle = (low + high) / 2
        if off(middle) < 0:
            low = middle
        else:
            high = middle
    angle = (low + high) / 2
    first, last = _room(low_end, angle, width), _room(high_end, angle, width)
    start, end = first, (along - last[0], up - last[1])
    if end[0] <= start[0] or end[1] <= start[1]:
        return None
    return Rise(angle, start, end)
