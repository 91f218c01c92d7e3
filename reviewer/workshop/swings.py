"""What stands in the way of doors, lids and drawers: the piece's own parts, each other, and the room.

Each movement is worked out by itself, with all else closed. A drawer that a closed door covers is tried with
that door open, as far as it goes. Square boards are exact; a shaped part is looked at step by step.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING, Literal

from reviewer.geometry.grid import Grid
from reviewer.geometry.openings import outline_round
from reviewer.geometry.swinging import Point, depth, first_stroke, turned
from reviewer.model.plan import Axis, RoomSide
from reviewer.records import NamedTuple
from reviewer.setting_out.moving import Bounds, HingeLine, Moved
from reviewer.setting_out.result import Extent
from reviewer.setting_out.solid import Solid, Vector
from reviewer.units import TOLERANCE_MM

if TYPE_CHECKING:
    from reviewer.geometry.convex import Convex
    from reviewer.review import Review

#: The room's walls reach this far, mm.
_FAR = 1e5
#: A shaped part is looked at in so many steps of its way; beyond so many pairs no more are looked at.
_STEPS = 60
#: Halvings of a drawer's way: to a tenth of a millimetre.
_HALVINGS = 13
#: How far hinges let a door go, in degrees: common practice, no source.
_USUAL_HINGES = (95, 110, 125, 155, 165, 180)
#: Strokes that are no further apart than this (radians or mm) come at once.
_SAME = 1e-6
_MOST_SHAPED_PAIRS = 300
#: So many pairs of boards are looked at, and so many for each thing that moves; beyond that it stops.
_MOST_PAIRS = 20_000
_MOST_PAIRS_EACH = 60

Kind = Literal["part", "wall", "skirting", "heater", "stove", "flue"]


class Obstacle(NamedTuple):
    """What stands still: a part, or something of the room on a side of the piece."""

    kind: Kind
    name: str  # the part
    side: RoomSide | None
    low: Vector
    high: Vector
    solid: Solid | None = None


class BehindDoor(NamedTuple):
    """An open door that a drawer strikes: how far it goes, radians, and what would clear the drawer.

    ``clears`` is the angle of a usual hinge at which it is out of the way, radians; ``stands_in`` how far it
    stands in front of the drawer as it is, mm, from the hinged side. None where that is no help.
    """

    door: str
    angle: float
    clears: float | None
    stands_in: float | None


class Stroke(NamedTuple):
    """Something that strikes another before it is fully open: after ``way`` radians or mm.

    ``part`` is the part of it that strikes. ``further`` is how much further off the thing in the room would
    have to be. ``behind`` is the open door that a drawer strikes.
    """

    moved: Moved
    part: str
    obstacle: Obstacle
    way: float
    further: float = 0.0
    behind: BehindDoor | None = None


class Clash(NamedTuple):
    """Two doors that share room when both are fully open."""

    one: Moved
    two: Moved
    depth: float


class Swings(NamedTuple):
    """All that stands in the way, in the plan's order; ``stopped`` when there was too much to look at."""

    strokes: tuple[Stroke, ...]
    clashes: tuple[Clash, ...]
    stopped: bool
    pairs: int  # how many pairs of boards were looked at


class _Frame(NamedTuple):
    """The plane that a hinged thing turns in, seen along its line, with the line as the origin."""

    axis: Axis
    u: Axis
    v: Axis
    sign_u: float
    sign_v: float
    start: Vector

    def flat(self, point: Vector) -> Point:
        return (
            self.sign_u * (point[self.u] - self.start[self.u]),
            self.sign_v * (point[self.v] - self.start[self.v]),
        )

    def outline(self, low: Vector, high: Vector) -> list[Point]:
        """A box seen along the line, anticlockwise."""
        (u0, v0), (u1, v1) = self.flat(low), self.flat(high)
        (u0, u1), (v0, v1) = sorted((u0, u1)), sorted((v0, v1))
        return [(u0, v0), (u1, v0), (u1, v1), (u0, v1)]

    def turned_body(self, body: Convex, angle: float) -> Convex:
        from reviewer.geometry.convex import Convex, Face

        cosine, sine = math.cos(angle), math.sin(angle)

        def way(point: Vector, start: Vector) -> Vector:
            u = self.sign_u * (point[self.u] - start[self.u])
            v = self.sign_v * (point[self.v] - start[self.v])
            made = list(point)
            made[self.u] = start[self.u] + self.sign_u * (u * cosine - v * sine)
            made[self.v] = start[self.v] + self.sign_v * (u * sine + v * cosine)
            return (made[0], made[1], made[2])

        faces = []
        for face in body.faces:
            ring = tuple(way(point, self.start) for point in face.ring)
            normal = way(face.normal, (0.0, 0.0, 0.0))
            offset = sum(a * b for a, b in zip(normal, ring[0], strict=True))
            faces.append(Face(ring, normal, offset, face.surface))
        return Convex(faces)


def frame_of(hinge: HingeLine, face: tuple[Axis, Literal["low", "high"]]) -> _Frame:
    """The plane of a turn: u from the hinge across the closed thing, v the way that it opens."""
    return _Frame(
        hinge.axis,
        face[0],
        hinge.opens_along,
        1.0 if face[1] == "low" else -1.0,
        -1.0 if hinge.opens_to == "low" else 1.0,
        hinge.start,
    )


class _Looker:
    def __init__(self, review: Review, slack: float, skirting: float) -> None:
        self.review, self.slack = review, slack
        self.solids = list(review.setting.solids.values())
        self.grid = Grid((solid.low, solid.high) for solid in self.solids)
        self.owner: dict[str, list[Moved]] = {}
        for moved in review.moved:
            for part in moved.moving.parts:
                self.owner.setdefault(part, []).append(moved)
        self.room = tuple(room_obstacles(review, skirting))
        self.pairs = self.shaped = 0
        self.most = _MOST_PAIRS + _MOST_PAIRS_EACH * len(review.moved)

    @property
    def stopped(self) -> bool:
        return self.pairs > self.most or self.shaped > _MOST_SHAPED_PAIRS

    def obstacles(self, moved: Moved, swept: Extent) -> Iterator[Obstacle]:
        """What shares room with a part's way: other parts, closed, and the room's things."""
        own = frozenset(moved.moving.parts)
        for number in self.grid.near(swept.low, swept.high):
            solid = self.solids[number]
            if solid.name in own:
                continue
            self.pairs += 1
            if self.pairs > self.most:
                return
            yield Obstacle("part", solid.name, None, solid.low, solid.high, solid)
        for thing in self.room:
            if all(thing.low[a] < swept.high[a] and thing.high[a] > swept.low[a] for a in range(3)):
                yield thing

    def apart(self, solid: Solid, obstacle: Obstacle, axis: int) -> bool:
        """True when two do not share room along a line."""
        shared = min(solid.high[axis], obstacle.high[axis]) - max(solid.low[axis], obstacle.low[axis])
        return shared <= self.slack

    def stroke(self, moved: Moved, name: str, obstacle: Obstacle) -> float | None:
        """How far it goes until it strikes; None where it never does, or shares its place from the start."""
        solid = self.review.setting.solids[name]
        if moved.hinge is not None:
            return self._turning(moved, solid, obstacle)
        return self._sliding(moved, solid, obstacle)

    def _turning(self, moved: Moved, solid: Solid, obstacle: Obstacle) -> float | None:
        assert moved.hinge is not None
        assert moved.moving.hinge is not None
        if self.apart(solid, obstacle, moved.hinge.axis):
            return None
        frame = frame_of(moved.hinge, moved.moving.hinge)
        turn = math.radians(moved.moving.degrees or 0.0)
        mine, theirs = frame.outline(solid.low, solid.high), frame.outline(obstacle.low, obstacle.high)
        if not _shaped(solid, obstacle):
            found = first_stroke(mine, theirs, turn, self.slack)
        else:
            mine = _seen(frame, solid)
            if obstacle.solid is not None:
                theirs = _seen(frame, obstacle.solid)
            found = first_stroke(mine, theirs, turn, self.slack)
            if found is not None:
                steps = [found + (turn - found) * step / _STEPS for step in range(_STEPS + 1)]
                found = self._step_by_step(solid, obstacle, steps, frame.turned_body)
        return None if found is None or found <= 1e-6 else found

    def _sliding(self, moved: Moved, solid: Solid, obstacle: Obstacle) -> float | None:
        if self.apart(solid, obstacle, 0) or self.apart(solid, obstacle, 2):
            return None
        travel = moved.moving.distance or 0.0
        way = solid.low[Axis.DEEP] - obstacle.high[Axis.DEEP]
        if way < -TOLERANCE_MM or way >= travel - self.slack:
            return None  # it stands behind, in its place from the start, or out of reach
        way = max(0.0, way)
        if not _shaped(solid, obstacle):
            return way
        from reviewer.geometry.convex import moved_body

        steps = [way + (travel - way) * step / _STEPS for step in range(_STEPS + 1)]
        return self._step_by_step(solid, obstacle, steps, lambda body, by: moved_body(body, (0.0, -by, 0.0)))

    def _step_by_step(
        self, solid: Solid, obstacle: Obstacle, steps: Sequence[float], move: object
    ) -> float | None:
        from reviewer.geometry.convex import box, intersection
        from reviewer.setting_out.bodies import body_of

        assert callable(move)
        self.shaped += 1
        if self.shaped > _MOST_SHAPED_PAIRS:
            return None
        mine = body_of(solid).pieces
        theirs = body_of(obstacle.solid).pieces if obstacle.solid else (box(obstacle.low, obstacle.high),)
        if any(intersection(one, two, self.slack) for one in mine for two in theirs):
            return None
        for step in steps:
            there = [move(piece, step) for piece in mine]
            if any(intersection(one, two, self.slack) for one in there for two in theirs):
                return step
        return None


def _shaped(solid: Solid, obstacle: Obstacle) -> bool:
    other = obstacle.solid
    return (
        solid.body is not None
        or not solid.square
        or (other is not None and (other.body is not None or not other.square))
    )


def _seen(frame: _Frame, solid: Solid) -> list[Point]:
    """A shaped part seen along the line: the outline round it."""
    from reviewer.setting_out.bodies import body_of

    return outline_round(
        frame.flat(point) for piece in body_of(solid).pieces for face in piece.faces for point in face.ring
    )


def room_obstacles(review: Review, skirting: float) -> Iterator[Obstacle]:
    """Walls, their skirting (``skirting`` deep where the plan does not say) and what is hot, as boxes."""
    room, solids = review.plan.room, review.setting.solids
    low, high = bounds_of(list(solids.values()))
    walls: dict[RoomSide, float] = dict(room.walls) if room is not None else {}
    faces: dict[RoomSide, float] = {side: _face(side, away, low, high) for side, away in walls.items()}
    wall = review.setting.wall
    if wall is not None and wall[0] == Axis.DEEP:
        faces["behind"] = wall[1]  # a plan that is set out from its wall says where it is
    for side, place in faces.items():
        yield Obstacle("wall", "", side, *_beyond(side, place, _FAR))
    if room is None:
        return
    if room.skirting is not None:
        tall, deep = room.skirting
        for side, place in faces.items():
            nearer = place + (deep or skirting) * (1 if side in ("left", "front") else -1)
            (x0, y0, z0), (x1, y1, _) = _beyond(side, nearer, _FAR)
            yield Obstacle("skirting", "", side, (x0, y0, max(z0, 0.0)), (x1, y1, tall))
    for heater in room.heaters:
        place = _face(heater.side, heater.away, low, high)
        yield Obstacle(heater.kind, "", heater.side, *_beyond(heater.side, place, _FAR))


def bounds_of(solids: Sequence[Solid | Extent]) -> Bounds:
    """The box round several."""
    low = [min(solid.low[axis] for solid in solids) for axis in range(3)]
    high = [max(solid.high[axis] for solid in solids) for axis in range(3)]
    return (low[0], low[1], low[2]), (high[0], high[1], high[2])


def _face(side: RoomSide, away: float, low: Vector, high: Vector) -> float:
    if side == "left":
        return low[0] - away
    if side == "right":
        return high[0] + away
    return low[1] - away if side == "front" else high[1] + away


def _beyond(side: RoomSide, place: float, far: float) -> Bounds:
    """All the room on a side from a place on."""
    low, high = [-far, -far, -far], [far, far, far]
    axis = 0 if side in ("left", "right") else 1
    (high if side in ("left", "front") else low)[axis] = place
    return (low[0], low[1], low[2]), (high[0], high[1], high[2])


def swings(review: Review, slack: float, skirting: float) -> Swings:
    """All that stands in the way of what opens and slides. ``slack`` mm of shared room is no stroke."""
    looker = _Looker(review, slack, skirting)
    strokes: list[Stroke] = []
    reach: dict[str, float] = {}  # how far each hinged thing goes
    later: list[tuple[Moved, str, Obstacle]] = []  # drawers behind closed doors
    for moved in sorted(review.moved, key=lambda each: each.hinge is None):
        turn = math.radians(moved.moving.degrees or 0.0)
        met: dict[tuple[str, str | None], list[Stroke]] = {}
        for name, swept in moved.swept.items():
            for obstacle in looker.obstacles(moved, swept):
                doors = [each for each in looker.owner.get(obstacle.name, ()) if each.hinge is not None]
                if moved.hinge is None and doors:
                    if looker.stroke(moved, name, obstacle) is not None:
                        later.append((moved, name, obstacle))
                    continue
                way = looker.stroke(moved, name, obstacle)
                if way is None:
                    continue
                kind = "wall" if obstacle.kind == "skirting" else obstacle.kind
                met.setdefault((kind, obstacle.side), []).append(Stroke(moved, name, obstacle, way))
        ways = [turn]
        for found in met.values():  # of each kind of thing only what is struck first
            least = min(stroke.way for stroke in found)
            ways.append(least)
            strokes += [_with_remedy(stroke) for stroke in found if stroke.way <= least + _SAME]
        reach[moved.moving.name] = min(ways)
    strokes += _behind_doors(looker, later, reach)
    order = {moved.moving.name: number for number, moved in enumerate(review.moved)}
    strokes.sort(key=lambda stroke: order[stroke.moved.moving.name])
    clashes = tuple(_clashes(review, looker))
    return Swings(tuple(strokes), clashes, looker.stopped, looker.pairs)


def _with_remedy(stroke: Stroke) -> Stroke:
    """How much further off a wall has to be so that a thing opens fully."""
    obstacle, moved = stroke.obstacle, stroke.moved
    if obstacle.kind == "part" or obstacle.side is None:
        return stroke
    axis = 0 if obstacle.side in ("left", "right") else 1
    low_side = obstacle.side in ("left", "front")
    swept = moved.whole_swept
    past = obstacle.high[axis] - swept.low[axis] if low_side else swept.high[axis] - obstacle.low[axis]
    return stroke._replace(further=max(0.0, past))


def _behind_doors(
    looker: _Looker, later: Sequence[tuple[Moved, str, Obstacle]], reach: dict[str, float]
) -> Iterator[Stroke]:
    """Drawers that run into a door even when it is open."""
    told: set[tuple[str, str]] = set()
    solids = looker.review.setting.solids
    for moved, _, obstacle in later:
        for door in looker.owner[obstacle.name]:
            key = (moved.moving.name, door.moving.name)
            if door.hinge is None or door.moving.hinge is None or key in told:
                continue
            told.add(key)
            frame, angle = frame_of(door.hinge, door.moving.hinge), reach[door.moving.name]
            for name, swept in moved.swept.items():
                hit = None
                for leaf in (solids[each] for each in door.moving.parts if each in solids):
                    looker.pairs += 1
                    if looker.stopped:
                        return
                    shared = min(swept.high[frame.axis], leaf.high[frame.axis]) - max(
                        swept.low[frame.axis], leaf.low[frame.axis]
                    )
                    there = turned(frame.outline(leaf.low, leaf.high), angle)
                    if (
                        shared > looker.slack
                        and depth(there, frame.outline(swept.low, swept.high)) > looker.slack
                    ):
                        hit = leaf
                        break
                if hit is not None:
                    obstacle = Obstacle("part", hit.name, None, hit.low, hit.high, hit)
                    leaf_open = turned(frame.outline(hit.low, hit.high), angle)
                    way = _way_to(frame, solids[name], leaf_open, moved.moving.distance or 0.0, looker.slack)
                    yield Stroke(
                        moved, name, obstacle, way, behind=_behind(looker, moved, door, frame, angle)
                    )
                    break


def _behind(looker: _Looker, moved: Moved, door: Moved, frame: _Frame, angle: float) -> BehindDoor:
    solids = looker.review.setting.solids
    leaves = [
        frame.outline(solids[each].low, solids[each].high) for each in door.moving.parts if each in solids
    ]
    passed = [frame.outline(swept.low, swept.high) for swept in moved.swept.values()]

    def clear(turn: float) -> bool:
        there = [turned(leaf, turn) for leaf in leaves]
        return all(depth(leaf, way) <= looker.slack for leaf in there for way in passed)

    turns = (math.radians(degrees) for degrees in _USUAL_HINGES)
    clears = next((turn for turn in turns if turn > angle + _SAME and clear(turn)), None)
    stands_in = None
    if angle >= math.pi / 2 - _SAME:  # only its thickness is in the way
        inmost = max(u for leaf in leaves for u, _ in turned(leaf, angle))
        stands_in = inmost - min(u for way in passed for u, _ in way)
    return BehindDoor(door.moving.name, angle, clears, stands_in)


def _way_to(frame: _Frame, solid: Solid, open_leaf: list[Point], travel: float, slack: float) -> float:
    """How far a drawer's part comes until it strikes an open door, mm: all that it passes only ever grows."""
    low, high = 0.0, travel
    for _ in range(_HALVINGS):
        middle = (low + high) / 2
        (x, y, z) = solid.low
        passed = frame.outline((x, y - middle, z), solid.high)
        if depth(open_leaf, passed) > slack:
            high = middle
        else:
            low = middle
    return low


def _clashes(review: Review, looker: _Looker) -> Iterator[Clash]:
    """Pairs of doors that share room when both stand open."""
    doors = [moved for moved in review.moved if moved.hinge is not None and moved.open]
    if len(doors) < 2:
        return
    around = [bounds_of(list(door.open.values())) for door in doors]
    grid = Grid(around)
    solids = review.setting.solids
    for number, one in enumerate(doors):
        for other in grid.near(*around[number]):
            if other <= number or looker.stopped:
                continue
            looker.pairs += 1
            two = doors[other]
            assert one.hinge
            assert two.hinge
            assert one.moving.hinge
            assert two.moving.hinge
            lock = review.locks.get(one.moving.name)
            if lock is not None and lock == review.locks.get(two.moving.name):
                continue  # an interlock keeps one of them shut
            if one.hinge.axis != two.hinge.axis or frozenset(one.moving.parts) & frozenset(two.moving.parts):
                continue
            axis = one.hinge.axis
            best = 0.0
            for first in (solids[name] for name in one.open):
                for second in (solids[name] for name in two.open):
                    looker.pairs += 1
                    if looker.stopped:
                        return
                    if (
                        min(first.high[axis], second.high[axis]) - max(first.low[axis], second.low[axis])
                        > looker.slack
                    ):
                        best = max(best, depth(_open(one, first), _open(two, second)))
            if best > looker.slack:
                yield Clash(one, two, best)


def _open(moved: Moved, solid: Solid) -> list[Point]:
    """A part of an open door, seen along its hinge line, in the places of the piece."""
    assert moved.hinge is not None
    assert moved.moving.hinge is not None
    frame = frame_of(moved.hinge, moved.moving.hinge)
    there = turned(frame.outline(solid.low, solid.high), math.radians(moved.moving.degrees or 0.0))
    places = [
        (frame.start[frame.u] + frame.sign_u * u, frame.start[frame.v] + frame.sign_v * v) for u, v in there
    ]
    flat = places if frame.u < frame.v else [(b, a) for a, b in places]
    return outline_round(flat)
