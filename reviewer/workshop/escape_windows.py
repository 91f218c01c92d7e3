"""Whether what is clear of an escape window is large enough to get out by."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal

from reviewer.geometry.openings_left import Patch
from reviewer.model.plan import Axis, WallArea
from reviewer.records import NamedTuple
from reviewer.review import Review
from reviewer.units import TOLERANCE_MM
from reviewer.workshop.wall_covers import Clear, Way, better_way, clear_of, patch_of, wall_face

Lack = Literal["area", "width", "height", "sill"]


class Least(NamedTuple):
    """What a code asks of the opening that stays clear, mm and mm²."""

    area: float
    wide: float
    tall: float
    sill: float  # how far up it may begin at the most


class Climbed(NamedTuple):
    """What whoever gets out climbs over, mm: how high it is, and how far it reaches out from the wall."""

    parts: tuple[str, ...]
    up: float
    out: float


class Escape(NamedTuple):
    """An escape window and what the piece leaves of it."""

    window: WallArea
    least: Least
    within: float  # what stands nearer to the wall than this is in front of it, mm
    clear: Clear
    best: Patch | None  # of what is clear the rectangle that lacks least; None where nothing is clear
    lacking: tuple[Lack, ...]  # what that one lacks
    alone: tuple[Lack, ...]  # what the window itself lacks
    climbed: Climbed | None


def lacks(clear: Patch, least: Least) -> tuple[Lack, ...]:
    """Which of the code's measures a clear opening falls short of, area first."""
    slack = TOLERANCE_MM * (clear.wide + clear.tall)
    found: list[Lack] = []
    if clear.area < least.area - slack:
        found.append("area")
    if clear.wide < least.wide - TOLERANCE_MM:
        found.append("width")
    if clear.tall < least.tall - TOLERANCE_MM:
        found.append("height")
    if clear.bottom > least.sill + TOLERANCE_MM:
        found.append("sill")
    return tuple(found)


def wide_enough(tall: float, least: Least) -> float:
    """How wide a clear opening of this height has to be, mm."""
    return max(least.wide, least.area / tall)


def best_of(clear: Sequence[Patch], least: Least) -> Patch | None:
    """The clear rectangle that falls short of the fewest measures, and of those the largest."""
    return min(
        clear, key=lambda each: (len(lacks(each, least)), -each.area, each.bottom, each.left), default=None
    )


def escape_of(review: Review, window: WallArea) -> Escape:
    """What the piece leaves of an escape window, by the review's own limits."""
    area = "escape-area-grade" if window.at_grade else "escape-area"
    names = area, "escape-width", "escape-height", "escape-sill"
    least = Least(*(review.limit(name).amount for name in names))
    within = review.limit("window-depth").amount
    opening = patch_of(window)
    clear = clear_of(review, opening, within)
    best = best_of(clear.left.clear, least)
    lacking = lacks(best, least) if best is not None else ("area", "width", "height")
    climbed = _climbed(review, best, within) if best is not None else None
    return Escape(window, least, within, clear, best, lacking, lacks(opening, least), climbed)


def _climbed(review: Review, clear: Patch, within: float) -> Climbed | None:
    face = wall_face(review)
    below = [
        solid
        for solid in review.setting.solids.values()
        if solid.high[Axis.UP] <= clear.bottom + TOLERANCE_MM
        and solid.low[0] < clear.right - TOLERANCE_MM
        and solid.high[0] > clear.left + TOLERANCE_MM
        and face - solid.high[Axis.DEEP] < within - TOLERANCE_MM
    ]
    if not below:
        return None
    top = max(solid.high[Axis.UP] for solid in below)
    out = face - min(solid.low[Axis.DEEP] for solid in below)
    return Climbed(tuple(solid.name for solid in below), top, out)


def aside(review: Review, found: Escape) -> Way | None:
    """Which way the piece goes along the wall until enough of the window is clear, over its whole height.

    None where the window itself is too small for that, or walls leave no room for it.
    """
    window = found.window
    if found.alone:
        return None
    need = wide_enough(window.tall, found.least)
    face = wall_face(review)
    level = [
        solid
        for solid in review.setting.solids.values()
        if solid.low[Axis.UP] < window.top - TOLERANCE_MM
        and solid.high[Axis.UP] > window.up + TOLERANCE_MM
        and face - solid.high[Axis.DEEP] < found.within - TOLERANCE_MM
    ]
    to_right = window.across + need - min(solid.low[0] for solid in level)
    to_left = max(solid.high[0] for solid in level) - (window.right - need)
    return better_way(review, to_left, to_right)
