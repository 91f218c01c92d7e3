"""The piece in its room, seen from above with its back up: walls, what opens, outlets, what is hot."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator
from typing import NamedTuple

from reviewer.model.plan import Axis, RoomSide, WallArea
from reviewer.reports.placed_labels import LETTER, ROW, Labels
from reviewer.reports.svg import Point, hatching, line, number, outline, words
from reviewer.review import Review
from reviewer.setting_out.moving import Moved
from reviewer.units import TOLERANCE_MM, Value, length, show
from reviewer.workshop.swings import Obstacle, Stroke, bounds_of, frame_of, room_obstacles

#: Room on the paper for the drawing, in its own units, and around it.
WIDEST, TALLEST = 320.0, 340.0
ASIDE, ABOVE, BELOW = 20.0, 26.0, 26.0
#: How thick a wall and a heater are drawn, and the least size of a mark.
WALL, HOT, MARK = 9.0, 14.0, 5.0
#: What is further from the piece than this is told in words and not drawn, mm.
NEAR_MM = 1500.0
#: So many parts and movements are drawn.
PARTS, MOVEMENTS = 400, 40


class RoomShown(NamedTuple):
    """The drawing, the same in words, and what is left out."""

    svg: str
    said: tuple[str, ...]
    remarks: tuple[str, ...]


class _Paper(NamedTuple):
    left: float
    back: float  # the largest place front to back
    scale: float
    inset: float

    def at(self, x: float, y: float) -> Point:
        return ASIDE + self.inset + (x - self.left) * self.scale, ABOVE + (self.back - y) * self.scale

    def box(self, x0: float, y0: float, x1: float, y1: float) -> list[Point]:
        return [self.at(x0, y0), self.at(x1, y0), self.at(x1, y1), self.at(x0, y1)]


def room_drawing(review: Review, prefix: str) -> RoomShown | None:
    """The drawing as SVG; None where the plan has no room, or nothing in it that a drawing could show."""
    room, solids = review.plan.room, list(review.setting.solids.values())
    if room is None or not solids or len(solids) > PARTS or not review.setting.whole:
        return None
    if not (room.walls or room.heaters or room.wall_areas or review.sockets or review.plan.movings):
        return None
    skirting = review.limit("skirting-thickness").amount
    things = list(room_obstacles(review, skirting))
    low, high = bounds_of(solids)
    drawn = [thing for thing in things if _away(thing, low, high) <= NEAR_MM]
    opening = [moved for moved in review.moved if moved.open][:MOVEMENTS]
    moves = list(_seen_once(opening))
    paper, tall = _paper(low, high, drawn, moves, _ends(review, low, high))
    wide = WIDEST + 2 * ASIDE
    labels, strokes = Labels(wide), list[str]()
    edges = (paper.left, paper.back - tall / paper.scale)
    for thing in drawn:
        strokes += _thing(thing, paper, tall, wide)
    shown: dict[tuple[int, ...], str] = {}
    for solid in sorted(solids, key=lambda each: (each.high[2], each.name)):
        (x0, y0, _), (x1, y1, _) = solid.low, solid.high
        key = (round(x0), round(y0), round(x1), round(y1))
        face = outline(paper.box(x0, y0, x1, y1), "ghost")
        shown.pop(key, None)
        shown[key] = f"<g><title>{words(solid.name)}</title>{face}</g>"
    strokes += shown.values()
    strokes.append(outline(paper.box(low[0], low[1], high[0], high[1]), "piece-round"))
    said = [_walls_said(thing, low, high, review) for thing in things if thing.kind != "skirting"]
    struck = _struck(review)
    for moved in moves:
        stroke = struck.get(moved.moving.name)
        strokes += _move(moved, stroke, paper)
        if stroke is not None:
            strokes.append(_stroke_label(labels, moved, stroke, paper, review))
    said += [_move_said(moved, struck.get(moved.moving.name), review) for moved in opening]
    behind = (thing.low[1] for thing in things if thing.side == "behind" and thing.kind == "wall")
    wall = next(behind, high[1])
    for kind, place in review.sockets:
        x, y = paper.at(place.across, wall)
        points = [(x - MARK, y), (x + MARK, y), (x, y + 1.8 * MARK)]
        square = [(x - MARK, y), (x + MARK, y), (x + MARK, y + 1.5 * MARK), (x - MARK, y + 1.5 * MARK)]
        strokes.append(outline(points if kind == "outlet" else square, "socket"))
        up = show(length(place.up), review.units)
        strokes.append(labels.place([(x, y - WALL - 4), (x, y + 26), (x, y + 42)], f"{kind} {up} up"))
        said.append(f"{kind} {show(length(place.across), review.units)} across, {up} up")
    if room.wall_areas:
        strokes += _on_wall(room.wall_areas, low, high, paper, wall)
    for thing in drawn:
        strokes.append(_thing_label(labels, thing, low, high, paper, review, edges))
    x, y = paper.at((low[0] + high[0]) / 2, (low[1] + high[1]) / 2)
    size = f"{show(length(high[0] - low[0]), review.units)} by {show(length(high[1] - low[1]), review.units)}"
    strokes.append(labels.place([(x, y + 5), (x, y + 22), (x, y - 13), (x, y + 39)], size))
    height = ABOVE + tall + BELOW
    ids = f"{prefix}room-name {prefix}room-desc"
    said = [text for text in said if text]
    svg = (
        f'<svg class="view room" role="img" aria-labelledby="{ids}" width="{number(wide)}" '
        f'height="{number(height)}" viewBox="0 0 {number(wide)} {number(height)}">'
        f'<title id="{prefix}room-name">The piece in its room, from above</title>'
        f'<desc id="{prefix}room-desc">{words("; ".join(said))}</desc>{"".join(strokes)}</svg>'
    )
    remarks = []
    far = [_name(thing) for thing in things if thing not in drawn and thing.kind != "skirting"]
    if far:
        remarks.append(f"Too far away to be drawn: {', '.join(far)}.")
    if labels.left_out:
        remarks.append("Some words found no room in the drawing; the list has all.")
    return RoomShown(svg, tuple(said), tuple(remarks))


def _on_wall(
    areas: Iterable[WallArea],
    low: tuple[float, ...],
    high: tuple[float, ...],
    paper: _Paper,
    wall: float,
) -> Iterator[str]:
    """Windows and the like as gaps in the wall; the drawing from the front has their names."""
    for area in areas:
        if area.across > high[0] + NEAR_MM or area.right < low[0] - NEAR_MM:
            continue
        x0, y = paper.at(area.across, wall)
        x1, _ = paper.at(area.right, wall)
        gap = outline([(x0, y - WALL), (x1, y - WALL), (x1, y), (x0, y)], "gap-in-wall")
        yield f"<g><title>{area.kind}</title>{gap}</g>"
        if area.kind in ("window", "escape window"):
            yield line((x0, y - WALL / 2), (x1, y - WALL / 2), "floor")


_SIDES: dict[RoomSide, tuple[int, bool]] = {
    "left": (0, True),
    "right": (0, False),
    "front": (1, True),
    "behind": (1, False),
}
_WHERE: dict[RoomSide, str] = {
    "left": "on the left",
    "right": "on the right",
    "front": "in front",
    "behind": "behind",
}


def _place(thing: Obstacle) -> float:
    """Where the face of a thing is, on its own axis."""
    assert thing.side is not None
    axis, low_side = _SIDES[thing.side]
    return thing.high[axis] if low_side else thing.low[axis]


def _away(thing: Obstacle, low: tuple[float, ...], high: tuple[float, ...]) -> float:
    assert thing.side is not None
    axis, low_side = _SIDES[thing.side]
    return low[axis] - _place(thing) if low_side else _place(thing) - high[axis]


def _name(thing: Obstacle) -> str:
    assert thing.side is not None
    return f"{thing.kind} {_WHERE[thing.side]}"


def _seen_once(opening: list[Moved]) -> Iterator[Moved]:
    """What opens or slides, those that lie over each other in this view once."""
    told: set[tuple[int, ...]] = set()
    for moved in opening:
        swept = moved.whole_swept
        key = tuple(round(each) for each in (*swept.low[:2], *swept.high[:2]))
        if key not in told:
            told.add(key)
            yield moved


def _ends(review: Review, low: tuple[float, ...], high: tuple[float, ...]) -> list[float]:
    """Where what is on the wall near the piece begins and ends across, mm."""
    room = review.plan.room
    areas = room.wall_areas if room is not None else ()
    ends = [end for area in areas for end in (area.across, area.right)]
    ends += [place.across for _, place in review.sockets]
    return [min(max(end, low[0] - NEAR_MM), high[0] + NEAR_MM) for end in ends]


def _paper(
    low: tuple[float, ...],
    high: tuple[float, ...],
    drawn: list[Obstacle],
    moves: list[Moved],
    ends: list[float],
) -> tuple[_Paper, float]:
    """The scale and the place of the drawing, and how tall it is on paper."""
    xs, ys = [low[0], high[0], *ends], [low[1], high[1]]
    for thing in drawn:
        assert thing.side is not None
        (xs if thing.side in ("left", "right") else ys).append(_place(thing))
    for moved in moves:
        swept = moved.whole_swept
        xs += [swept.low[0], swept.high[0]]
        ys += [swept.low[1], swept.high[1]]
    wide_mm, tall_mm = max(max(xs) - min(xs), TOLERANCE_MM), max(max(ys) - min(ys), TOLERANCE_MM)
    scale = min((WIDEST - 2 * HOT) / wide_mm, (TALLEST - 2 * HOT) / tall_mm)
    inset = (WIDEST - wide_mm * scale) / 2
    return _Paper(min(xs), max(ys) + HOT / scale, scale, inset), tall_mm * scale + 2 * HOT


def _thing(thing: Obstacle, paper: _Paper, tall: float, wide: float) -> Iterator[str]:
    """A wall as a hatched strip, a skirting as a line, what is hot as a crossed box."""
    assert thing.side is not None
    axis, low_side = _SIDES[thing.side]
    x, y = paper.at(_place(thing), _place(thing))
    deep = HOT if thing.kind in ("heater", "stove", "flue") else WALL
    if axis == 0:
        x0, x1 = (x - deep, x) if low_side else (x, x + deep)
        box = [(x0, ABOVE), (x1, ABOVE), (x1, ABOVE + tall), (x0, ABOVE + tall)]
        face = ((x, ABOVE), (x, ABOVE + tall))
        third = tall / 3
        hot = [(x0, ABOVE + third), (x1, ABOVE + third), (x1, ABOVE + 2 * third), (x0, ABOVE + 2 * third)]
    else:
        y0, y1 = (y, y + deep) if low_side else (y - deep, y)
        box = [(ASIDE, y0), (wide - ASIDE, y0), (wide - ASIDE, y1), (ASIDE, y1)]
        face = ((ASIDE, y), (wide - ASIDE, y))
        hot = [(wide / 3, y0), (2 * wide / 3, y0), (2 * wide / 3, y1), (wide / 3, y1)]
    if thing.kind == "skirting":
        yield line(*face, "earth")
    elif thing.kind == "wall":
        yield hatching(box, "earth", step=5.0)
        yield line(*face, "floor")
    else:
        yield outline(hot, "hot")
        yield hatching(hot, "earth", step=5.0, crossed=True)


def _thing_label(
    labels: Labels,
    thing: Obstacle,
    low: tuple[float, ...],
    high: tuple[float, ...],
    paper: _Paper,
    review: Review,
    edges: tuple[float, float],
) -> str:
    """How far off it is, beside it."""
    away = _away(thing, low, high)
    if thing.side is None or thing.kind == "skirting" or (thing.kind == "wall" and away <= TOLERANCE_MM):
        return ""
    text = f"{thing.kind} {show(length(away), review.units)}"
    axis, low_side = _SIDES[thing.side]
    if axis == 0:
        side = low[0] if low_side else high[0]
        x, y = paper.at(side, (low[1] + high[1]) / 2)
        inside = len(text) * LETTER / 2 + 6
        x += inside if low_side else -inside
        spots = [(x, y + row * ROW) for row in (0, 1, -1, 2, -2, 4, -4, 6)]
    else:
        side = low[1] if low_side else high[1]
        x, y = paper.at((low[0] + high[0]) / 2, (_place(thing) + side) / 2)
        far = paper.at(0.0, _place(thing))[1]
        beyond = far + HOT + 12 if low_side else far - HOT - 4
        spots = [
            (x, y + 5),
            (x, beyond),
            (x - 90, y + 5),
            (x + 90, y + 5),
            (x - 90, beyond),
            (x + 90, beyond),
        ]
    return labels.place(spots, text)


def _leaf(moved: Moved, angle: float) -> list[Point]:
    """The outline of an upright door after a turn, in the places of the piece."""
    assert moved.hinge is not None
    assert moved.moving.hinge is not None
    frame = frame_of(moved.hinge, moved.moving.hinge)
    from reviewer.geometry.swinging import turned

    there = turned(frame.outline(moved.closed.low, moved.closed.high), angle)
    flat = [
        (frame.start[frame.u] + frame.sign_u * u, frame.start[frame.v] + frame.sign_v * v) for u, v in there
    ]
    return flat if frame.u == Axis.ACROSS else [(b, a) for a, b in flat]


def _move(moved: Moved, stroke: Stroke | None, paper: _Paper) -> Iterator[str]:
    """A door as its open leaf and the arc of its free corner; a drawer or a lid as the room that it takes."""
    title = f"<title>{words(moved.moving.name)}</title>"
    if moved.hinge is None or moved.hinge.axis != Axis.UP:
        boxes = bounds_of(list(moved.open.values()))
        (x0, y0, _), (x1, y1, _) = boxes
        yield f"<g>{title}{outline(paper.box(x0, y0, x1, y1), 'swing')}</g>"
        return
    turn = math.radians(moved.moving.degrees or 0.0)
    end = stroke.way if stroke is not None else turn
    centre = moved.hinge.start
    corners = _leaf(moved, 0.0)
    free = max(range(4), key=lambda i: math.dist(corners[i], centre[:2]))
    path = " ".join(
        f"{number(x)},{number(y)}"
        for x, y in (paper.at(*_leaf(moved, turn * step / 24)[free]) for step in range(25))
    )
    arc = f'<polyline class="swing" points="{path}"/>'
    leaf = outline([paper.at(*point) for point in _leaf(moved, turn)], "swing")
    struck = ""
    if stroke is not None:
        struck = outline([paper.at(*point) for point in _leaf(moved, end)], "struck")
    yield f"<g>{title}{arc}{leaf}{struck}</g>"


def _struck(review: Review) -> dict[str, Stroke]:
    """The first stroke of each thing that moves."""
    found: dict[str, Stroke] = {}
    for stroke in review.swings.strokes if review.plan.movings else ():
        name = stroke.moved.moving.name
        if name not in found or stroke.way < found[name].way:
            found[name] = stroke
    return found


def _stroke_label(labels: Labels, moved: Moved, stroke: Stroke, paper: _Paper, review: Review) -> str:
    if moved.hinge is not None and moved.hinge.axis == Axis.UP:
        text = f"strikes at {show(Value(math.degrees(stroke.way), 'angle'), review.units)}"
        corners = [paper.at(*point) for point in _leaf(moved, stroke.way)]
        x, y = max(corners, key=lambda point: point[1])
    else:
        text = "strikes"
        swept = moved.whole_swept
        x, y = paper.at((swept.low[0] + swept.high[0]) / 2, swept.low[1])
    return labels.place(
        [(x, y + 14), (x + 50, y + 14), (x - 50, y + 14), (x, y + 30), (x, y - 14)], text, "force sag"
    )


def _move_said(moved: Moved, stroke: Stroke | None, review: Review) -> str:
    moving, units = moved.moving, review.units
    if moving.kind == "slides":
        said = f"{moving.name} slides out {show(length(moving.distance or 0.0), units)}"
        return said if stroke is None else f"{said}, strikes after {show(length(stroke.way), units)}"
    said = f"{moving.name} opens {show(Value(moving.degrees or 0.0, 'angle'), units)}"
    if stroke is None:
        return said
    return f"{said}, strikes at {show(Value(math.degrees(stroke.way), 'angle'), units)}"


def _walls_said(thing: Obstacle, low: tuple[float, ...], high: tuple[float, ...], review: Review) -> str:
    away = _away(thing, low, high)
    near = "close by" if away <= TOLERANCE_MM else f"{show(length(away), review.units)} away"
    return f"{_name(thing)}, {near}"
