"""The piece in its room, seen from above with its back up: walls, what opens, outlets, what is hot."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from typing import NamedTuple

from reviewer.geometry.vectors import Vector
from reviewer.model.plan import Axis
from reviewer.reports.in_room import MOVEMENTS, SIDES, InRoom, Near, Opens, Socket
from reviewer.reports.on_wall import OnTheWall
from reviewer.reports.placed_labels import LETTER, ROW, Labels
from reviewer.reports.svg import Point, hatching, line, number, outline, words
from reviewer.review import Review
from reviewer.setting_out.moving import Moved
from reviewer.units import TOLERANCE_MM, Value, length, show
from reviewer.workshop.swings import Stroke, bounds_of, frame_of

#: Room on the paper for the drawing, in its own units, and around it.
WIDEST, TALLEST = 320.0, 340.0
ASIDE, ABOVE, BELOW = 20.0, 26.0, 26.0
#: How thick a wall and a heater are drawn, and the least size of a mark.
WALL, HOT, MARK = 9.0, 14.0, 5.0
#: What is further from the piece than this is told in words and not drawn, mm.
NEAR_MM = 1500.0
#: So many parts are drawn.
PARTS = 400


class RoomShown(NamedTuple):
    """The drawing, the same in words, and what is left out."""

    svg: str  # empty where there is too much to draw
    said: tuple[str, ...]
    remarks: tuple[str, ...]
    key: str = ""  # what its signs mean


class _Paper(NamedTuple):
    left: float
    back: float  # the largest place front to back
    scale: float
    inset: float

    def at(self, x: float, y: float) -> Point:
        return ASIDE + self.inset + (x - self.left) * self.scale, ABOVE + (self.back - y) * self.scale

    def box(self, x0: float, y0: float, x1: float, y1: float) -> list[Point]:
        return [self.at(x0, y0), self.at(x1, y0), self.at(x1, y1), self.at(x0, y1)]


def room_drawing(review: Review, found: InRoom | None, prefix: str) -> RoomShown | None:
    """The drawing as SVG and what it shows in words; None where there is nothing to show."""
    solids = list(review.setting.solids.values())
    if found is None:
        return None
    if len(solids) > PARTS:
        return RoomShown("", found.said, (f"A piece of more than {PARTS} parts is not drawn in its room.",))
    low, high = found.low, found.high
    drawn = [near for near in found.near if near.away <= NEAR_MM]
    moves = list(_seen_once(found.opens[:MOVEMENTS]))
    paper, tall = _paper(low, high, drawn, moves, _ends(found))
    wide = WIDEST + 2 * ASIDE
    labels, strokes = Labels(wide), list[str]()
    for near in drawn:
        strokes += _thing(near, paper, tall, wide)
    shown: dict[tuple[int, ...], str] = {}
    for solid in sorted(solids, key=lambda each: (each.high[2], each.name)):
        (x0, y0, _), (x1, y1, _) = solid.low, solid.high
        key = (round(x0), round(y0), round(x1), round(y1))
        face = outline(paper.box(x0, y0, x1, y1), "ghost")
        shown.pop(key, None)
        shown[key] = f"<g><title>{words(solid.name)}</title>{face}</g>"
    strokes += shown.values()
    strokes.append(outline(paper.box(low[0], low[1], high[0], high[1]), "piece-round"))
    for moved, stroke, _ in moves:
        strokes += _move(moved, stroke, paper)
        if stroke is not None:
            strokes.append(_stroke_label(labels, moved, stroke, paper, review))
    behind = (near.place for near in found.near if near.side == "behind" and near.thing.kind == "wall")
    wall = next(behind, high[1])
    for socket in found.sockets:
        strokes += _socket(socket, wall, paper, labels, review)
    for thing in found.on_wall:
        if thing.kind != "alarm" and on_paper(thing, low, high):
            strokes += _on_wall(thing, wall, paper)
    for near in drawn:
        strokes.append(_thing_label(labels, near, low, high, paper, review))
    x, y = paper.at((low[0] + high[0]) / 2, (low[1] + high[1]) / 2)
    size = f"{show(length(high[0] - low[0]), review.units)} by {show(length(high[1] - low[1]), review.units)}"
    strokes.append(labels.place([(x, y + 5), (x, y + 22), (x, y - 13), (x, y + 39)], size))
    height = ABOVE + tall + BELOW
    ids = f"{prefix}room-name {prefix}room-desc"
    svg = (
        f'<svg class="view room" role="img" aria-labelledby="{ids}" width="{number(wide)}" '
        f'height="{number(height)}" viewBox="0 0 {number(wide)} {number(height)}">'
        f'<title id="{prefix}room-name">The piece in its room, from above</title>'
        f'<desc id="{prefix}room-desc">{words("; ".join(found.said))}</desc>{"".join(strokes)}</svg>'
    )
    remarks = []
    far = [near.name for near in found.near if near not in drawn and near.thing.kind != "skirting"]
    if far:
        remarks.append(f"Too far away to be drawn: {', '.join(far)}.")
    if labels.left_out:
        remarks.append("Some words found no room in the drawing; the list has all.")
    return RoomShown(svg, found.said, tuple(remarks), _key(found, moves))


def _key(found: InRoom, moves: Sequence[Opens]) -> str:
    """What the signs mean that are drawn."""
    signs = []
    if moves:
        strikes = any(each.stroke is not None for each in moves)
        signs.append("Dashed is what opens" + ("; a thick outline is where it strikes." if strikes else "."))
    kinds = {socket.kind for socket in found.sockets}
    if "outlet" in kinds:
        signs.append("A triangle on the wall is an outlet.")
    if "switch" in kinds:
        signs.append("A square on the wall is a switch.")
    return " ".join(signs)


def _socket(socket: Socket, wall: float, paper: _Paper, labels: Labels, review: Review) -> Iterator[str]:
    """An outlet as a triangle on the wall, a switch as a square, and how high it is."""
    x, y = paper.at(socket.place.across, wall)
    points = [(x - MARK, y), (x + MARK, y), (x, y + 1.8 * MARK)]
    square = [(x - MARK, y), (x + MARK, y), (x + MARK, y + 1.5 * MARK), (x - MARK, y + 1.5 * MARK)]
    yield outline(points if socket.kind == "outlet" else square, "socket")
    up = show(length(socket.place.up), review.units)
    yield labels.place([(x, y - WALL - 4), (x, y + 26), (x, y + 42)], f"{socket.kind} {up} up")


def on_paper(thing: OnTheWall, low: Vector, high: Vector) -> bool:
    """Whether some of it is near enough to the piece to be drawn."""
    return thing.patch.left < high[0] + NEAR_MM and thing.patch.right > low[0] - NEAR_MM


def _on_wall(thing: OnTheWall, wall: float, paper: _Paper) -> Iterator[str]:
    """A window or the like as a gap in the wall; the drawing from the front has its name."""
    (x0, y), (x1, _) = paper.at(thing.patch.left, wall), paper.at(thing.patch.right, wall)
    gap = outline([(x0, y - WALL), (x1, y - WALL), (x1, y), (x0, y)], "gap-in-wall")
    yield f"<g><title>{thing.kind}</title>{gap}</g>"
    if thing.kind in ("window", "escape window"):
        yield line((x0, y - WALL / 2), (x1, y - WALL / 2), "floor")


def _seen_once(opens: Sequence[Opens]) -> Iterator[Opens]:
    """What opens or slides, those that lie over each other in this view once."""
    told: set[tuple[int, ...]] = set()
    for each in opens:
        swept = each.moved.whole_swept
        key = tuple(round(place) for place in (*swept.low[:2], *swept.high[:2]))
        if key not in told:
            told.add(key)
            yield each


def _ends(found: InRoom) -> list[float]:
    """Where what is on the wall near the piece begins and ends across, mm."""
    ends = [end for each in found.on_wall for end in (each.patch.left, each.patch.right)]
    ends += [socket.place.across for socket in found.sockets]
    return [min(max(end, found.low[0] - NEAR_MM), found.high[0] + NEAR_MM) for end in ends]


def _paper(
    low: Vector, high: Vector, drawn: list[Near], moves: list[Opens], ends: list[float]
) -> tuple[_Paper, float]:
    """The scale and the place of the drawing, and how tall it is on paper."""
    xs, ys = [low[0], high[0], *ends], [low[1], high[1]]
    for near in drawn:
        (xs if near.side in ("left", "right") else ys).append(near.place)
    for each in moves:
        swept = each.moved.whole_swept
        xs += [swept.low[0], swept.high[0]]
        ys += [swept.low[1], swept.high[1]]
    wide_mm, tall_mm = max(max(xs) - min(xs), TOLERANCE_MM), max(max(ys) - min(ys), TOLERANCE_MM)
    scale = min((WIDEST - 2 * HOT) / wide_mm, (TALLEST - 2 * HOT) / tall_mm)
    inset = (WIDEST - wide_mm * scale) / 2
    return _Paper(min(xs), max(ys) + HOT / scale, scale, inset), tall_mm * scale + 2 * HOT


def _thing(near: Near, paper: _Paper, tall: float, wide: float) -> Iterator[str]:
    """A wall as a hatched strip, a skirting as a line, what is hot as a crossed box."""
    thing = near.thing
    axis, low_side = SIDES[near.side]
    x, y = paper.at(near.place, near.place)
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


def _thing_label(labels: Labels, near: Near, low: Vector, high: Vector, paper: _Paper, review: Review) -> str:
    """How far off it is, beside it."""
    thing, away = near.thing, near.away
    if thing.kind == "skirting" or (thing.kind == "wall" and away <= TOLERANCE_MM):
        return ""
    text = f"{thing.kind} {show(length(away), review.units)}"
    axis, low_side = SIDES[near.side]
    if axis == 0:
        side = low[0] if low_side else high[0]
        x, y = paper.at(side, (low[1] + high[1]) / 2)
        inside = len(text) * LETTER / 2 + 6
        x += inside if low_side else -inside
        spots = [(x, y + row * ROW) for row in (0, 1, -1, 2, -2, 4, -4, 6)]
    else:
        side = low[1] if low_side else high[1]
        x, y = paper.at((low[0] + high[0]) / 2, (near.place + side) / 2)
        far = paper.at(0.0, near.place)[1]
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
