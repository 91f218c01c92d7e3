"""The wall behind, seen through the piece from the front: windows and the like, and what stays clear."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator
from typing import NamedTuple

from reviewer.geometry.openings_left import Patch
from reviewer.reports.placed_labels import ROW, Labels
from reviewer.reports.svg import Point, hatching, line, lines, number, outline, words
from reviewer.review import Review
from reviewer.setting_out.solid import Solid
from reviewer.units import TOLERANCE_MM, length, show
from reviewer.workshop.escape_windows import escape_of
from reviewer.workshop.swings import bounds_of
from reviewer.workshop.wall_covers import around, behind, patch_of

#: Room on the paper for the drawing, in its own units, and around it.
WIDEST, TALLEST = 320.0, 340.0
ASIDE, ABOVE, BELOW = 20.0, 20.0, 22.0
#: What is further from the piece than this is told in words and not drawn, mm.
NEAR_MM = 1500.0
#: The slats of a vent and the sides of an alarm, as drawn.
SLATS, SIDES = 4, 16


class WallShown(NamedTuple):
    """The drawing, the same in words, and what is left out. ``svg`` is empty where all is too far away."""

    svg: str
    said: tuple[str, ...]
    remarks: tuple[str, ...]


class _Thing(NamedTuple):
    kind: str
    patch: Patch
    clear: Patch | None  # the best that the piece leaves of it, where it takes some


def wall_drawing(review: Review, prefix: str) -> WallShown | None:
    """What is on the wall; None where the plan tells of nothing there but outlets and switches."""
    room, solids = review.plan.room, list(review.setting.solids.values())
    if room is None or not (room.wall_areas or room.alarms) or not solids or not behind(review):
        return None
    things = list(_things(review))
    low, high = bounds_of(solids)
    near = [
        thing
        for thing in things
        if thing.patch.left < high[0] + NEAR_MM and thing.patch.right > low[0] - NEAR_MM
    ]
    said = tuple(_said(thing, review) for thing in things if thing.kind not in ("outlet", "switch"))
    far = [thing.kind for thing in things if thing not in near]
    remarks = [f"Too far away to be drawn: {', '.join(far)}."] if far else []
    if not near:
        return WallShown("", said, tuple(remarks))
    left = min(low[0], *(thing.patch.left for thing in near))
    right = max(high[0], *(thing.patch.right for thing in near))
    top = max(high[2], *(thing.patch.top for thing in near))
    scale = min(WIDEST / (right - left), TALLEST / max(top, TOLERANCE_MM))
    inset = ASIDE + (WIDEST - (right - left) * scale) / 2
    wide, tall = WIDEST + 2 * ASIDE, ABOVE + top * scale + BELOW

    def box(patch: Patch) -> list[Point]:
        x0, x1 = (inset + (x - left) * scale for x in (patch.left, patch.right))
        y0, y1 = (ABOVE + (top - y) * scale for y in (patch.bottom, patch.top))
        return [(x0, y0), (x1, y0), (x1, y1), (x0, y1)]

    ground = ABOVE + top * scale
    floor = (ASIDE / 2, ground), (wide - ASIDE / 2, ground)
    labels, strokes = Labels(wide), [line(*floor, "floor")]
    strokes += _parts(solids, box)
    for thing in near:
        strokes += _marks(thing, box)
    for thing in near:
        strokes.append(_label(labels, thing, box(thing.patch)))
    for thing in near:
        if thing.clear is not None:
            strokes.append(_clear_label(labels, box(thing.clear)))
    if labels.left_out:
        remarks.append("Some words found no room in the drawing; the list has all.")
    ids = f"{prefix}on-wall-name {prefix}on-wall-desc"
    svg = (
        f'<svg class="view room" role="img" aria-labelledby="{ids}" width="{number(wide)}" '
        f'height="{number(tall)}" viewBox="0 0 {number(wide)} {number(tall)}">'
        f'<title id="{prefix}on-wall-name">The wall behind, seen through the piece</title>'
        f'<desc id="{prefix}on-wall-desc">{words("; ".join(said))}</desc>{"".join(strokes)}</svg>'
    )
    return WallShown(svg, said, tuple(remarks))


def _things(review: Review) -> Iterator[_Thing]:
    room = review.plan.room
    assert room is not None
    for area in room.wall_areas:
        clear = None
        if area.kind == "escape window":
            found = escape_of(review, area)
            clear = found.best if found.clear.before else None
        yield _Thing(area.kind, patch_of(area), clear)
    alarm = review.limit("alarm-width").amount
    for place in room.alarms:
        yield _Thing("alarm", around(place, alarm, alarm), None)
    wide, tall = review.limit("outlet-width").amount, review.limit("outlet-height").amount
    for kind, place in review.sockets:
        yield _Thing(kind, around(place, wide, tall), None)


def _parts(solids: list[Solid], box: Callable[[Patch], list[Point]]) -> Iterator[str]:
    """The parts by their bounds, those nearest to the wall first, each place once."""
    shown: dict[tuple[int, ...], str] = {}
    for solid in sorted(solids, key=lambda each: (-each.high[1], each.name)):
        patch = Patch(solid.low[0], solid.low[2], solid.high[0], solid.high[2])
        key = tuple(round(each) for each in patch)
        shown.pop(key, None)
        shown[key] = f"<g><title>{words(solid.name)}</title>{outline(box(patch), 'ghost')}</g>"
    yield from shown.values()


def _marks(thing: _Thing, box: Callable[[Patch], list[Point]]) -> Iterator[str]:
    corners = box(thing.patch)
    (x0, y0), _, (x1, y1), _ = corners
    if thing.clear is not None:
        yield hatching(box(thing.clear), "earth", step=6.0)
        yield outline(box(thing.clear), "swing")
    if thing.kind in ("outlet", "switch"):
        yield outline(corners, "socket")
        return
    if thing.kind == "alarm":
        middle, radius = ((x0 + x1) / 2, (y0 + y1) / 2), (x1 - x0) / 2
        turns = [2 * math.pi * side / SIDES for side in range(SIDES)]
        ring = [(middle[0] + radius * math.cos(turn), middle[1] + radius * math.sin(turn)) for turn in turns]
        yield outline(ring, "on-wall")
        return
    yield outline(corners, "on-wall")
    if thing.kind == "vent":
        rows = [y0 + (y1 - y0) * row / SLATS for row in range(1, SLATS)]
        yield lines([((x0, y), (x1, y)) for y in rows], "on-wall thin")
    elif thing.kind == "panel":
        yield lines([((x0, y0), (x1, y1))], "on-wall thin")
    else:
        yield lines(
            [(((x0 + x1) / 2, y0), ((x0 + x1) / 2, y1)), ((x0, (y0 + y1) / 2), (x1, (y0 + y1) / 2))],
            "on-wall thin",
        )


def _label(labels: Labels, thing: _Thing, corners: list[Point]) -> str:
    (x0, bottom), (x1, _), (_, top), _ = corners
    x, y = (x0 + x1) / 2, (bottom + top) / 2
    return labels.place([(x, top - 4), (x, bottom + ROW), (x, y + 5), (x, y + 22), (x, y - 12)], thing.kind)


def _clear_label(labels: Labels, corners: list[Point]) -> str:
    (x0, bottom), (x1, _), (_, top), _ = corners
    x, y = (x0 + x1) / 2, (bottom + top) / 2
    return labels.place([(x, y + 5), (x, y + 22), (x, y - 12), (x, y + 39), (x, y - 29)], "clear")


def _said(thing: _Thing, review: Review) -> str:
    def size(amount_mm: float) -> str:
        return show(length(amount_mm), review.units)

    left, bottom, right, top = thing.patch
    if thing.kind == "alarm":
        return f"alarm {size((left + right) / 2)} across, {size((bottom + top) / 2)} up"
    said = (
        f"{thing.kind} {size(right - left)} by {size(top - bottom)}, {size(left)} across, {size(bottom)} up"
    )
    clear = thing.clear
    if clear is None:
        return said
    return f"{said}, of it clear {size(clear.wide)} by {size(clear.tall)}, {size(clear.bottom)} up"
