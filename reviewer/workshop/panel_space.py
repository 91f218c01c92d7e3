"""The working space before an electrical panel, and what of the piece stands in it."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator

from reviewer.model.plan import Axis, WallArea
from reviewer.records import NamedTuple
from reviewer.review import Review
from reviewer.setting_out.solid import Solid
from reviewer.units import TOLERANCE_MM
from reviewer.workshop.wall_covers import Way, better_way, wall_face

#: A part is held against so many nearer ones to see whether it takes any more.
_NEAREST = 8


class InSpace(NamedTuple):
    """A part in the working space, mm: where it begins and ends across, and how far it is off the wall."""

    part: str
    start: float
    end: float
    gap: float


class Space(NamedTuple):
    """A working space that the piece stands in, mm."""

    wide: float  # what it is to be
    deep: float
    tall: float
    clear: float  # how wide it is clear with all of the panel before it; 0 where something stands before that
    parts: tuple[InSpace, ...]  # what bounds it, the nearest to the wall first
    way: Way | None  # the way along the wall that clears it


def _before(panel: tuple[float, float], start: float, end: float) -> bool:
    return start < panel[1] - TOLERANCE_MM and end > panel[0] + TOLERANCE_MM


def clear_width(panel: tuple[float, float], taken: Iterable[tuple[float, float]]) -> float:
    """How wide it is clear around a panel, from its left to its right, mm; 0 where something is before it."""
    left, right = -math.inf, math.inf
    for start, end in taken:
        if _before(panel, start, end):
            return 0.0
        if end <= panel[0] + TOLERANCE_MM:
            left = max(left, end)
        else:
            right = min(right, start)
    return right - left


def taken_space(review: Review, panel: WallArea, wide: float, deep: float, tall: float) -> Space | None:
    """What the piece takes of a panel's working space; None where it leaves enough.

    The space is as wide as the panel or ``wide``, whichever is more, and may lie to either side as long as
    the whole panel is before it; it goes from the floor to the panel's top or ``tall``, whichever is more.
    """
    wide, tall = max(wide, panel.wide), max(tall, panel.top)
    face = wall_face(review)
    low = (panel.right - wide, face - deep, 0.0)
    high = (panel.across + wide, face, tall)
    found = list(_in_space(review.setting.solids.values(), low, high))
    if not found:
        return None
    ends = panel.across, panel.right
    start, end = _between_walls(review)
    taken = [(each.start, each.end) for each in found]
    clear = clear_width(ends, [*taken, (-math.inf, start), (end, math.inf)])
    if clear >= wide - TOLERANCE_MM:
        return None
    before = [each for each in found if _before(ends, each.start, each.end)]
    if not before:
        left = max((each.end for each in found if each.end <= ends[0] + TOLERANCE_MM), default=-math.inf)
        right = min((each.start for each in found if each.start >= ends[1] - TOLERANCE_MM), default=math.inf)
        before = [each for each in found if each.end == left or each.start == right]
    nearest = list[InSpace]()
    for each in sorted(before, key=lambda each: each.gap):
        if not any(one.start <= each.start and one.end >= each.end for one in nearest[:_NEAREST]):
            nearest.append(each)
    solids = [
        solid
        for solid in review.setting.solids.values()
        if solid.high[Axis.DEEP] > low[1] + TOLERANCE_MM and solid.low[Axis.UP] < tall - TOLERANCE_MM
    ]
    to_right = max(ends[1], start + wide) - min(solid.low[0] for solid in solids)
    to_left = max(solid.high[0] for solid in solids) - min(ends[0], end - wide)
    way = better_way(review, to_left, to_right)
    return Space(wide, deep, tall, clear, tuple(nearest), way)


def _between_walls(review: Review) -> tuple[float, float]:
    """Where the walls beside the piece are, mm; infinitely far where the plan names none."""
    room, solids = review.plan.room, review.setting.solids.values()
    walls = room.walls if room is not None else {}
    start = min(solid.low[0] for solid in solids) - walls["left"] if "left" in walls else -math.inf
    end = max(solid.high[0] for solid in solids) + walls["right"] if "right" in walls else math.inf
    return start, end


def _in_space(
    solids: Iterable[Solid], low: tuple[float, float, float], high: tuple[float, float, float]
) -> Iterator[InSpace]:
    for solid in solids:
        if any(
            solid.low[axis] > high[axis] - TOLERANCE_MM or solid.high[axis] < low[axis] + TOLERANCE_MM
            for axis in range(3)
        ):
            continue
        gap = max(0.0, high[1] - solid.high[Axis.DEEP])
        if solid.body is None:
            yield InSpace(solid.name, solid.low[0], solid.high[0], gap)
            continue
        from reviewer.geometry.convex import box, intersection

        space = box(low, high)
        bits = [bit for piece in solid.body.pieces if (bit := intersection(piece, space)) is not None]
        if bits:
            start, end = min(bit.low[0] for bit in bits), max(bit.high[0] for bit in bits)
            yield InSpace(solid.name, start, end, gap)
