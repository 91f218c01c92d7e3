"""How a solid looks from a side: its visible faces on the paper, and which solid hides which.

All views are parallel projections. A view is three unit vectors of the piece's space: what runs right on
the paper, what runs up on it, and what points at the eye.
"""

from __future__ import annotations

import heapq
import math
from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING

from reviewer.records import NamedTuple
from reviewer.setting_out.solid import Solid, Vector

if TYPE_CHECKING:
    from reviewer.geometry.convex import Convex

Point = tuple[float, float]

#: A face turned further from the eye than this (as a cosine) is on edge, and is not drawn.
ON_EDGE = 1e-6


class View(NamedTuple):
    """A direction of looking, and what it is called."""

    name: str
    right: Vector
    up: Vector
    toward: Vector  # to the eye

    @property
    def along_axis(self) -> bool:
        """True when the eye looks along an axis of the piece."""
        return sum(1 for part in self.toward if part) == 1


class Face(NamedTuple):
    """A visible face: its corners on the paper in mm (up is positive), and how it is turned to the eye.

    ``rims`` are the sides that are true edges of the wood; None: all of them.
    """

    corners: tuple[Point, ...]
    shade: str  # "front", "side" or "top"; "hole" for the mouth of a bore
    rims: tuple[tuple[Point, Point], ...] | None = None


class Seen(NamedTuple):
    """A solid in a view, or one convex piece of it: its visible faces and their bounds, mm on the paper.

    ``piece`` None: a square board, which is known by its solid alone.
    """

    solid: Solid
    faces: tuple[Face, ...]
    low: Point
    high: Point
    near: float  # how far its nearest corner stands towards the eye, mm
    piece: Convex | None = None

    @property
    def largest(self) -> float:
        """The area of its largest visible face, mm² on the paper."""
        return max(flat_area(face.corners) for face in self.faces)

    @property
    def middle(self) -> Point:
        """The middle of the largest visible face."""
        corners = max(self.faces, key=lambda face: flat_area(face.corners)).corners
        return (sum(x for x, _ in corners) / len(corners), sum(y for _, y in corners) / len(corners))


def dot(a: Vector, b: Vector) -> float:
    """The scalar product."""
    return a[0] * b[0] + a[1] * b[1] + a[2] * b[2]


def turned_view(name: str, round_degrees: float, above_degrees: float) -> View:
    """The piece seen from the front, the eye moved to the right and up by so many degrees."""
    a, b = math.radians(round_degrees), math.radians(above_degrees)
    right = (math.cos(a), math.sin(a), 0.0)
    toward = (math.sin(a) * math.cos(b), -math.cos(a) * math.cos(b), math.sin(b))
    up = (-math.sin(a) * math.sin(b), math.cos(a) * math.sin(b), math.cos(b))
    return View(name, right, up, toward)


FRONT = View("From the front", (1.0, 0.0, 0.0), (0.0, 0.0, 1.0), (0.0, -1.0, 0.0))
RIGHT = View("From the right", (0.0, 1.0, 0.0), (0.0, 0.0, 1.0), (1.0, 0.0, 0.0))
ABOVE = View("From above", (1.0, 0.0, 0.0), (0.0, 1.0, 0.0), (0.0, 0.0, 1.0))
IN_DEPTH = turned_view("In depth, from the front right", 32, 24)


def flat_area(corners: Sequence[Point]) -> float:
    """The area of an outline on the paper, mm²."""
    turns = zip(corners, (*corners[1:], corners[0]), strict=True)
    return abs(sum(a[0] * b[1] - b[0] * a[1] for a, b in turns)) / 2


def shade_of(normal: Vector) -> str:
    """The shade of a face by the way it looks."""
    if abs(normal[2]) > 0.7:
        return "top"
    return "side" if abs(normal[0]) > abs(normal[1]) else "front"


def _corner(centre: Vector, a: Vector, b: Vector, c: Vector) -> Vector:
    return (
        centre[0] + a[0] + b[0] + c[0],
        centre[1] + a[1] + b[1] + c[1],
        centre[2] + a[2] + b[2] + c[2],
    )


def _scaled(direction: Vector, by: float) -> Vector:
    return (direction[0] * by, direction[1] * by, direction[2] * by)


def reach(solid: Solid, direction: Vector) -> tuple[float, float]:
    """How far a solid goes in a direction, mm: its lowest and highest point along it."""
    if solid.body is not None:
        ends = [piece.reach(direction) for piece in solid.body.pieces]
        return min(low for low, _ in ends), max(high for _, high in ends)
    middle = dot(solid.centre, direction)
    half = (
        sum(abs(dot(d, direction)) * size for d, size in zip(solid.directions, solid.size, strict=True)) / 2
    )
    return middle - half, middle + half


def seen(solid: Solid, view: View) -> Seen:
    """A square board as the view shows it."""
    halves = [
        _scaled(direction, size / 2) for direction, size in zip(solid.directions, solid.size, strict=True)
    ]
    faces = []
    for index, direction in enumerate(solid.directions):
        a, b = (halves[i] for i in range(3) if i != index)
        for sign in (1.0, -1.0):
            normal = _scaled(direction, sign)
            if dot(normal, view.toward) <= ON_EDGE:
                continue
            out = _scaled(halves[index], sign)
            ring = (
                _corner(solid.centre, out, a, b),
                _corner(solid.centre, out, a, _scaled(b, -1)),
                _corner(solid.centre, out, _scaled(a, -1), _scaled(b, -1)),
                _corner(solid.centre, out, _scaled(a, -1), b),
            )
            faces.append(Face(tuple((dot(c, view.right), dot(c, view.up)) for c in ring), shade_of(normal)))
    left, right = reach(solid, view.right)
    low, high = reach(solid, view.up)
    return Seen(solid, tuple(faces), (left, low), (right, high), reach(solid, view.toward)[1])


def _meet_on_paper(a: Seen, b: Seen) -> bool:
    return a.low[0] < b.high[0] and b.low[0] < a.high[0] and a.low[1] < b.high[1] and b.low[1] < a.high[1]


def in_front_by_bounds(a: Solid, b: Solid, view: View) -> bool:
    """True when ``a`` stands nearer to the eye than ``b``, judged on the axis that parts them best."""
    best, nearer = -math.inf, True
    for axis in range(3):
        toward = view.toward[axis]
        if abs(toward) <= ON_EDGE:
            continue
        after, before = a.low[axis] - b.high[axis], b.low[axis] - a.high[axis]
        if max(after, before) > best:
            best = max(after, before)
            nearer = (after >= before) == (toward > 0)
    return nearer


def _by_bounds(a: Seen, b: Seen, view: View) -> bool | None:
    return in_front_by_bounds(a.solid, b.solid, view)


#: True when the first is nearer to the eye than the second; None where neither covers any of the other.
Nearer = Callable[[Seen, Seen, View], bool | None]


def far_to_near(shown: Sequence[Seen], view: View, nearer: Nearer | None = None) -> list[Seen]:
    """The solids in the order a painter lays them down, so that near ones cover far ones.

    Along an axis of the piece the near faces of square boards sort exactly. In depth, and with a way to
    tell which is ``nearer`` for shaped parts, every pair that meets on the paper is compared; a ring of
    boards that each lie over the next is cut at its farthest one.
    """
    by_depth = sorted(range(len(shown)), key=lambda i: (shown[i].near, i))
    if view.along_axis and nearer is None:
        return [shown[i] for i in by_depth]
    covers: list[list[int]] = [[] for _ in shown]  # those that must wait for this one
    waits = [0] * len(shown)
    by_left = sorted(range(len(shown)), key=lambda i: (shown[i].low[0], i))
    open_now: list[int] = []
    for i in by_left:
        open_now = [j for j in open_now if shown[j].high[0] > shown[i].low[0]]
        for j in open_now:
            if _meet_on_paper(shown[i], shown[j]):
                in_front = (nearer or _by_bounds)(shown[i], shown[j], view)
                if in_front is None:
                    continue
                back, front = (j, i) if in_front else (i, j)
                covers[back].append(front)
                waits[front] += 1
        open_now.append(i)
    rank = {index: place for place, index in enumerate(by_depth)}
    ready = [(rank[i], i) for i in range(len(shown)) if not waits[i]]
    heapq.heapify(ready)
    laid: set[int] = set()
    order: list[Seen] = []
    left = iter(by_depth)
    while len(order) < len(shown):
        i = heapq.heappop(ready)[1] if ready else next(k for k in left if k not in laid)
        if i in laid:
            continue
        laid.add(i)
        order.append(shown[i])
        for front in covers[i]:
            waits[front] -= 1
            if not waits[front] and front not in laid:
                heapq.heappush(ready, (rank[front], front))
    return order


def hidden(one: Seen, nearer: Sequence[Seen]) -> bool:
    """True when solids nearer to the eye cover so much of this one that no reader would find it."""
    steps = (0.1, 0.3, 0.5, 0.7, 0.9)
    spots = [
        (one.low[0] + (one.high[0] - one.low[0]) * u, one.low[1] + (one.high[1] - one.low[1]) * v)
        for u in steps
        for v in steps
    ]
    for other in nearer:
        if _meet_on_paper(one, other):
            spots = [spot for spot in spots if not any(_inside(spot, face.corners) for face in other.faces)]
            if len(spots) < 3:
                return True
    return False


def _inside(spot: Point, corners: Sequence[Point]) -> bool:
    """True when a convex shape holds a point."""
    signs = set()
    for (ax, ay), (bx, by) in zip(corners, (*corners[1:], corners[0]), strict=True):
        turn = (bx - ax) * (spot[1] - ay) - (by - ay) * (spot[0] - ax)
        if turn:
            signs.add(turn > 0)
    return len(signs) < 2
