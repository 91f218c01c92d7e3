"""The wall behind, seen through the piece from the front: windows and the like, and what stays clear."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator
from typing import NamedTuple

from reviewer.geometry.openings_left import Patch
from reviewer.reports.in_room import InRoom
from reviewer.reports.placed_labels import ROW, Labels
from reviewer.reports.room_drawing import NEAR_MM, PARTS, TALLEST, WIDEST, on_paper
from reviewer.reports.svg import Point, hatching, line, lines, number, outline, words
from reviewer.review import Review
from reviewer.setting_out.solid import Solid
from reviewer.units import TOLERANCE_MM
from reviewer.workshop.wall_covers import around, behind

#: Room on the paper around the drawing, in its own units.
ASIDE, ABOVE, BELOW = 20.0, 20.0, 22.0
#: The slats of a vent and the sides of an alarm, as drawn.
SLATS, SIDES = 4, 16


class WallShown(NamedTuple):
    """The drawing, what its hatching means where it has some, and what is left out of it."""

    svg: str
    key: str
    remarks: tuple[str, ...]


def wall_drawing(review: Review, found: InRoom | None, prefix: str) -> WallShown | None:
    """What is on the wall as SVG; None where there is nothing but outlets, or too much to draw."""
    solids = list(review.setting.solids.values())
    if found is None or not found.on_wall or len(solids) > PARTS or not behind(review):
        return None
    low, high = found.low, found.high
    near = [thing for thing in found.on_wall if on_paper(thing, low, high)]
    if not near:
        return None
    far = [thing.kind for thing in found.on_wall if thing not in near]
    remarks = [f"Too far away to be drawn: {', '.join(far)}."] if far else []
    things: list[tuple[str, Patch]] = [(thing.kind, thing.patch) for thing in near]
    size = review.limit("outlet-width").amount, review.limit("outlet-height").amount
    plates = [(socket.kind, around(socket.place, *size)) for socket in found.sockets]
    things += [(kind, patch) for kind, patch in plates if low[0] - NEAR_MM < patch.left < high[0] + NEAR_MM]
    clear = [thing.clear for thing in near if thing.clear is not None]
    left = min(low[0], *(patch.left for _, patch in things))
    right = max(high[0], *(patch.right for _, patch in things))
    top = max(high[2], *(patch.top for _, patch in things))
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
    for patch in clear:
        strokes += [hatching(box(patch), "earth", step=6.0), outline(box(patch), "swing")]
    for kind, patch in things:
        strokes += _marks(kind, box(patch))
    strokes += [_label(labels, kind, box(patch)) for kind, patch in things]
    strokes += [_clear_label(labels, box(patch)) for patch in clear]
    if labels.left_out:
        remarks.append("Some words found no room in the drawing; the list has all.")
    said = [thing.said for thing in near]
    ids = f"{prefix}on-wall-name {prefix}on-wall-desc"
    svg = (
        f'<svg class="view room" role="img" aria-labelledby="{ids}" width="{number(wide)}" '
        f'height="{number(tall)}" viewBox="0 0 {number(wide)} {number(tall)}">'
        f'<title id="{prefix}on-wall-name">The wall behind, seen through the piece</title>'
        f'<desc id="{prefix}on-wall-desc">{words("; ".join(said))}</desc>{"".join(strokes)}</svg>'
    )
    key = "Hatched on the wall is the largest part of an escape window that stays clear." if clear else ""
    return WallShown(svg, key, tuple(remarks))


def _parts(solids: list[Solid], box: Callable[[Patch], list[Point]]) -> Iterator[str]:
    """The parts by their bounds, those nearest to the wall first, each place once."""
    shown: dict[tuple[int, ...], str] = {}
    for solid in sorted(solids, key=lambda each: (-each.high[1], each.name)):
        patch = Patch(solid.low[0], solid.low[2], solid.high[0], solid.high[2])
        key = tuple(round(each) for each in patch)
        shown.pop(key, None)
        shown[key] = f"<g><title>{words(solid.name)}</title>{outline(box(patch), 'ghost')}</g>"
    yield from shown.values()


def _marks(kind: str, corners: list[Point]) -> Iterator[str]:
    """An outline of its place, and in it slats for a vent, a diagonal for a panel, bars for a window."""
    (x0, y0), _, (x1, y1), _ = corners
    if kind in ("outlet", "switch"):
        yield outline(corners, "socket")
        return
    if kind == "alarm":
        middle, radius = ((x0 + x1) / 2, (y0 + y1) / 2), (x1 - x0) / 2
        turns = [2 * math.pi * side / SIDES for side in range(SIDES)]
        ring = [(middle[0] + radius * math.cos(turn), middle[1] + radius * math.sin(turn)) for turn in turns]
        yield outline(ring, "on-wall")
        return
    yield outline(corners, "on-wall")
    if kind == "vent":
        rows = [y0 + (y1 - y0) * row / SLATS for row in range(1, SLATS)]
        yield lines([((x0, y), (x1, y)) for y in rows], "on-wall thin")
    elif kind == "panel":
        yield lines([((x0, y0), (x1, y1))], "on-wall thin")
    else:
        yield lines(
            [(((x0 + x1) / 2, y0), ((x0 + x1) / 2, y1)), ((x0, (y0 + y1) / 2), (x1, (y0 + y1) / 2))],
            "on-wall thin",
        )


def _label(labels: Labels, kind: str, corners: list[Point]) -> str:
    (x0, bottom), (x1, _), (_, top), _ = corners
    x, y = (x0 + x1) / 2, (bottom + top) / 2
    return labels.place([(x, top - 4), (x, bottom + ROW), (x, y + 5), (x, y + 22), (x, y - 12)], kind)


def _clear_label(labels: Labels, corners: list[Point]) -> str:
    (x0, bottom), (x1, _), (_, top), _ = corners
    x, y = (x0 + x1) / 2, (bottom + top) / 2
    return labels.place([(x, y + 5), (x, y + 22), (x, y - 12), (x, y + 39), (x, y - 29)], "clear")
