"""Round bars, and how many flats stand for a round outside. mm."""

from __future__ import annotations

import math
from collections.abc import Callable

from reviewer.geometry.body import arc_swell, cone_swell
from reviewer.geometry.convex import Convex, clip
from reviewer.geometry.vectors import Vector
from reviewer.model.shapes import Taper
from reviewer.setting_out.blanks import Blank, Section

#: A flat lies no further than this inside of the round that it stands for, mm …
BAR_SAGITTA, ARRIS_SAGITTA = 0.05, 0.5
#: … within so many flats for each quarter of a circle.
FEWEST, _MOST = 3, 16


def flats(radius: float, sagitta: float, fewest: int) -> int:
    """How many flats stand for a quarter of a circle."""
    turn = 2 * math.acos(max(0.0, 1 - sagitta / radius)) if radius > sagitta else math.pi / 2
    return min(_MOST, max(fewest, math.ceil(math.pi / 2 / turn)))


def round_section(blank: Blank, diameter: float, towards: Callable[[Vector], str]) -> Section:
    """A circle in the middle of a board. ``towards`` names a surface by the way it looks."""
    frame, run = blank.frame, blank.run
    one, two = (run + 1) % 3, (run + 2) % 3
    radius = diameter / 2
    number = 4 * flats(radius, BAR_SAGITTA, FEWEST)
    swell = arc_swell(radius, 2 * math.pi / number, frame.axes[run])
    outline, surfaces = [], []
    for i in range(number):
        at = [0.0, 0.0, 0.0]
        angle, half = 2 * math.pi * i / number, math.pi / number
        at[one] = frame.extents[one] / 2 + radius * math.cos(angle)
        at[two] = frame.extents[two] / 2 + radius * math.sin(angle)
        outline.append((at[0], at[1], at[2]))
        out = [0.0, 0.0, 0.0]
        out[one], out[two] = math.cos(angle + half), math.sin(angle + half)
        surfaces.append(towards(frame.way(out)))
    return Section(tuple(outline), tuple(surfaces), (swell,) * number)


def turned(
    blank: Blank, body: Convex, taper: Taper, over: float, diameter: float, towards: Callable[[Vector], str]
) -> Convex:
    """A round bar tapered all round over so many mm: each flat of it leans in."""
    frame, run = blank.frame, blank.run
    one, two = (run + 1) % 3, (run + 2) % 3
    first, last = diameter / 2, taper.to / 2
    number = 4 * flats(first, BAR_SAGITTA, FEWEST)
    half = math.pi / number
    end, inward = (frame.extents[run], -1.0) if taper.side == "high" else (0.0, 1.0)
    slope = (first - last) * math.cos(half) / over
    swell = cone_swell(first, last, 2 * half, frame.axes[run], over)
    left: Convex | None = body
    for i in range(number):
        angle = 2 * half * i + half
        out = [0.0, 0.0, 0.0]
        out[one], out[two] = math.cos(angle), math.sin(angle)
        out[run] = -inward * slope
        middle = [frame.extents[0] / 2, frame.extents[1] / 2, frame.extents[2] / 2]
        middle[run] = end
        offset = sum(out[axis] * middle[axis] for axis in range(3)) + last * math.cos(half)
        normal, place = frame.plane(out, offset)
        if left is not None:
            left = clip(left, normal, place, towards(normal), swell)
    return left or body
