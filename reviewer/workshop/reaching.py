"""Whether a driver gets at each fastener when its turn comes, and what is in its way where none does."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Iterator, Sequence
from itertools import groupby, islice
from typing import TYPE_CHECKING

from reviewer.geometry.vectors import cross, dot, minus, moved
from reviewer.limits import Limits
from reviewer.model.plan import GROUNDS
from reviewer.records import NamedTuple
from reviewer.reference.usual_values import usual_value
from reviewer.setting_out.result import Joint, SettingOut
from reviewer.setting_out.solid import Solid, Vector
from reviewer.units import TOLERANCE_MM
from reviewer.workshop.joining_order import Groups, never_undone, steps_of_joints
from reviewer.workshop.placed import Placed
from reviewer.workshop.sweeps import Near, Sweep, around, free_up_to, stands_in
from reviewer.workshop.tool_room import Tool, Way, tools_for, ways_to_drive

if TYPE_CHECKING:
    from reviewer.review import Review


#: So many joints with something in front of their fasteners are looked into; further ones are taken to work.
MOST_IN_DOUBT = 1000
#: How far from its middle a fastener is tried too, as shares of the width of a joint.
_ASIDE = (-0.25, 0.25)

#: A fastener that crosses its joint flatter than this (as a cosine) has no place there to go by.
_STEEP = 0.05
#: Places that agree to so many decimals of a mm are alike.
_ALIKE = 7


class Blocked(NamedTuple):
    """A way of driving a fastener, and the parts that stand in it when the piece is whole."""

    way: Way
    parts: tuple[str, ...]


class OutOfReach(NamedTuple):
    """The fasteners of one kind in a joint that no handy tool reaches at their turn.

    ``placed`` is the first of them, and ``groups`` what hangs together as it is driven. ``step`` is the step
    of the plan that joins it, where one does. ``special`` is a tool that does reach it, though not every shop
    has it. ``sooner`` tells that another order would do.
    """

    placed: Placed
    groups: Groups
    step: int | None
    special: Tool | None
    sooner: bool

    def there(self, parts: Iterable[str]) -> tuple[str, ...]:
        """Those of some parts that are in place by then."""
        return tuple(name for name in parts if _there(self.placed.joint, name, self.groups))


class JoiningDoubts(NamedTuple):
    """The joints of a piece that meet, and which of them some order might leave no way to drive.

    ``blocked`` has those by place among the joints; each says whether it can be undone while the parts of a
    group are there.
    """

    joints: tuple[Joint, ...]
    doubts: dict[int, list[_Doubt]]

    @property
    def blocked(self) -> dict[int, Callable[[Groups], bool]]:
        def undone(place: int) -> Callable[[Groups], bool]:
            return lambda groups: not any(doubt.unreached(groups) for doubt in self.doubts[place])

        return {place: undone(place) for place in sorted(self.doubts)}

    def special(self, place: int, groups: Groups) -> bool:
        """Whether a tool that not every shop has reaches all of a joint that is stuck."""
        return all(
            tried.reached(groups, handy=False) is not None
            for doubt in self.doubts[place]
            for tried in doubt.unreached(groups)
        )


class Room(NamedTuple):
    """What is in the way of the tool that lacks least, how far it is free and how much that needs, mm."""

    parts: tuple[str, ...]
    tool: Tool
    free: float
    needs: float


class Reach:
    """What stands in the way of tools among some solids."""

    def __init__(self, setting: SettingOut, limits: Limits, near: Near | None = None) -> None:
        self.solids = setting.solids
        self.limits = limits
        self.near = near or Near([solid for name, solid in setting.solids.items() if name not in GROUNDS])
        #: Which of the ways was free last time, by how a fastener lies: copies have the same.
        self.was_free: dict[object, int] = {}
        self._met: dict[tuple[float, ...], bool] = {}  # whether alike boards stand in alike sweeps
        self._tools: dict[str, tuple[Tool, ...]] = {}  # by kind of fastener

    def standing(self, placed: Placed, sweeps: tuple[Sweep, ...]) -> Iterator[str]:
        """The parts that stand in some sweeps over a fastener, one by one; its own only where they may."""
        own = (placed.head_part, placed.point_part)
        seen: set[str] = set()
        boxes = [sweep.bounds for sweep in sweeps]
        near = self.near.within(around(boxes))
        for sweep, (low, high) in zip(sweeps, boxes, strict=True) if near else ():
            alike: tuple[float, ...] = ()
            for solid in near:
                name = solid.name
                if name in seen or (name in own and not self._may_block(solid, placed, sweep)):
                    continue
                (a, b, c), (d, e, f) = solid.low, solid.high
                if a < high[0] and d > low[0] and b < high[1] and e > low[1] and c < high[2] and f > low[2]:
                    alike = alike or _shape_of(sweep)
                    if self._stands_in(solid, sweep, alike):
                        seen.add(name)
                        yield name

    def _stands_in(self, solid: Solid, sweep: Sweep, alike: tuple[float, ...]) -> bool:
        """Whether a solid stands in a sweep; of square boards worked out once for all that lie alike."""
        if solid.body is not None or not solid.square:
            return stands_in(solid, sweep)
        (x, y, z), (a, b, c), (d, e, f) = sweep.start, solid.low, solid.high
        key = (
            *alike,
            round(a - x, _ALIKE),
            round(b - y, _ALIKE),
            round(c - z, _ALIKE),
            round(d - x, _ALIKE),
            round(e - y, _ALIKE),
            round(f - z, _ALIKE),
        )
        found = self._met.get(key)
        if found is None:
            found = self._met[key] = stands_in(solid, sweep)
        return found

    def in_the_way(self, placed: Placed, sweeps: tuple[Sweep, ...]) -> tuple[str, ...]:
        """All of them."""
        return tuple(self.standing(placed, sweeps))

    def _may_block(self, solid: Solid, placed: Placed, sweep: Sweep) -> bool:
        """Whether one of the two parts of a fastener can be in the way of a tool."""
        if solid.name == placed.head_part:
            return False  # its true face is where the mouth is; a notch in it is made to be driven in
        return placed.kind != "bolts" or sweep.start != placed.point

    def ways(self, placed: Placed) -> Iterator[Blocked]:
        """Every way of driving a fastener with what stands in it."""
        for way in self.ways_to_drive(placed):
            yield Blocked(way, self.in_the_way(placed, way.sweeps))

    def ways_to_drive(self, placed: Placed) -> Iterator[Way]:
        """Every way of driving a fastener, the handiest first; none for what is not driven."""
        tools = self._tools.get(placed.kind)
        if tools is None:
            tools = self._tools[placed.kind] = tools_for(placed.kind, self.limits)
        return ways_to_drive(placed, tools, self.limits)


def _shape_of(sweep: Sweep) -> tuple[float, ...]:
    """A cylinder but for where it starts."""
    numbers = (*sweep.way, sweep.low, sweep.high, sweep.radius)
    return tuple([round(number, _ALIKE) for number in numbers])


def _at(point: Vector, axis: int, place: float) -> Vector:
    """The same point at another place of an axis."""
    return (
        place if axis == 0 else point[0],
        place if axis == 1 else point[1],
        place if axis == 2 else point[2],
    )


def from_behind(placed: Placed, point_part: Solid) -> Placed | None:
    """The same screw driven from the other side; None where it would not bite there."""
    axis = max(range(3), key=lambda each: abs(placed.direction[each]))
    if point_part.body is not None or abs(placed.direction[axis]) < 1 - 1e-6:
        return None
    contact = placed.joint.contact
    if contact is None:
        return None
    forwards = placed.direction[axis] > 0
    face = point_part.high[axis] if forwards else point_part.low[axis]
    through = abs(face - contact.low[axis])
    if through > placed.length * (1 - usual_value("screw-bite")):
        return None
    mouth = _at(placed.head, axis, face)
    point = _at(placed.head, axis, face - placed.length if forwards else face + placed.length)
    normal = placed.surface_normal
    return placed._replace(
        head_part=placed.point_part,
        point_part=placed.head_part,
        mouth=mouth,
        head=mouth,
        point=point,
        surface_normal=(-normal[0], -normal[1], -normal[2]),
    )


class _Search:
    """One way of driving a fastener, and what stands in it as far as anybody has had to look."""

    def __init__(self, reach: Reach, placed: Placed, way: Way) -> None:
        self.way = way
        self._found: list[str] = []
        self._more = reach.standing(placed, way.sweeps)

    def first(self, there: Callable[[str], bool]) -> str | None:
        """The first part in the way that is in place; None when the way is free."""
        for name in self._found:
            if there(name):
                return name
        for name in self._more:
            self._found.append(name)
            if there(name):
                return name
        return None


class _Tried:
    """A fastener that something of the whole piece stands in front of, whatever handy tool is taken.

    It is looked at anew only when one of the parts that were in its ways has gone: a piece is taken apart
    joint by joint, and most joints do not care.
    """

    def __init__(self, placed: Placed, searches: Sequence[_Search]) -> None:
        self.placed = placed
        self._searches = searches
        self._held_by: tuple[str, ...] = ()

    def reached(self, groups: Groups, handy: bool = True) -> Tool | None:
        """The first tool that gets at it while some parts hang together."""

        def there(name: str) -> bool:
            return _there(self.placed.joint, name, groups)

        if handy and self._held_by and all(map(there, self._held_by)):
            return None
        held_by: dict[str, None] = {}
        for search in self._searches:
            if handy and not search.way.tool.handy:
                continue
            name = search.first(there)
            if name is None:
                return search.way.tool
            held_by[name] = None
        if handy:
            self._held_by = tuple(held_by)
        return None


class _Doubt(NamedTuple):
    """The fasteners of one kind in a joint that something of the whole piece stands in the way of.

    ``free_to_move``: the plan leaves open where they stand, so one place that is reached will do.
    """

    fasteners: tuple[_Tried, ...]
    free_to_move: bool

    def unreached(self, groups: Groups) -> list[_Tried]:
        """Those that no handy tool reaches while some parts hang together."""
        found = []
        for tried in self.fasteners:
            if tried.reached(groups) is None:
                found.append(tried)
            elif self.free_to_move:
                return []
        return found


def _tried(reach: Reach, placed: Placed) -> _Tried | None:
    """A fastener that is in doubt; None when a handy tool gets at it in the whole piece."""
    lies = (placed.kind, *[round(each, 3) for each in placed.direction])
    guess = reach.was_free.get(lies)
    if guess is not None:
        way = next(islice(reach.ways_to_drive(placed), guess, None), None)
        if way is not None and not any(reach.standing(placed, way.sweeps)):
            return None
    searches = []
    for number, way in enumerate(reach.ways_to_drive(placed)):
        search = _Search(reach, placed, way)
        if way.tool.handy and search.first(lambda name: True) is None:
            reach.was_free[lies] = number
            return None
        searches.append(search)
    return _Tried(placed, searches) if searches else None


def _elsewhere(group: Sequence[Placed]) -> Iterator[Placed]:
    """Other places of a joint where its fasteners may stand, as the plan leaves that open."""
    first, last = group[0], group[-1]
    middle = tuple((b - a) / 2 for a, b in zip(first.head, last.head, strict=True))
    if len(group) > 1:
        yield _shifted(first, middle)
    contact = first.joint.contact
    if contact is None or first.kind == "pocket screws":
        return
    across = cross(first.surface_normal, first.along)
    room = sum(
        abs(way) * (high - low) for way, low, high in zip(across, contact.low, contact.high, strict=True)
    )
    for share in _ASIDE:
        yield _shifted(first, tuple(a + share * room * b for a, b in zip(middle, across, strict=True)))


def _shifted(placed: Placed, by: Sequence[float]) -> Placed:
    def moved_there(point: Vector) -> Vector:
        return (point[0] + by[0], point[1] + by[1], point[2] + by[2])

    mouth = moved_there(placed.mouth) if placed.mouth is not None else None
    return placed._replace(mouth=mouth, head=moved_there(placed.head), point=moved_there(placed.point))


def _doubt(reach: Reach, group: Sequence[Placed]) -> _Doubt | None:
    """What stands in the way of the fasteners of one kind in a joint; None where nothing does."""
    free_to_move = group[0].pattern_assumed
    found = []
    for placed in (*group, *(_elsewhere(group) if free_to_move else ())):
        tried = _tried(reach, placed)
        if tried is not None:
            found.append(tried)
        elif free_to_move:
            return None
    return _Doubt(tuple(found), free_to_move) if found else None


def joining_doubts(review: Review) -> JoiningDoubts:
    """Which joints of a piece need an order, as something may stand in front of their fasteners."""
    joints = tuple(joint for joint in review.setting.joints if joint.meets)
    driven = [placed for placed in review.placed if placed.mouth is not None]
    if not driven:
        return JoiningDoubts(joints, {})
    reach = Reach(review.setting, review.limits, review.near)
    place_of = {id(joint): place for place, joint in enumerate(joints)}
    doubts: dict[int, list[_Doubt]] = {}
    for _, same in groupby(driven, key=lambda placed: (id(placed.joint), id(placed.fastening))):
        group = list(same)
        doubt = _doubt(reach, group)
        if len(doubts) >= MOST_IN_DOUBT:
            break
        if doubt is not None:
            doubts.setdefault(place_of[id(group[0].joint)], []).append(doubt)
    return JoiningDoubts(joints, doubts)


def out_of_reach(review: Review) -> tuple[OutOfReach, ...]:
    """Every fastener that no handy tool reaches at its turn, in the order of the plan's joins."""
    joints, doubts = review.joining_doubts
    if not doubts:
        return ()
    blocked = review.joining_doubts.blocked
    steps = steps_of_joints(review.plan.steps, joints)
    stuck = never_undone(joints, steps, blocked)
    if not stuck:
        return ()
    anyhow = never_undone(joints, [0] * len(joints), blocked) if review.plan.steps else stuck
    found = []
    for place, groups in sorted(stuck.items(), key=lambda each: each[0]):
        for doubt in doubts[place]:
            unreached = doubt.unreached(groups)
            if unreached:
                special = unreached[0].reached(groups, handy=False)
                sooner = place not in anyhow
                found.append(OutOfReach(unreached[0].placed, groups, steps[place], special, sooner))
    return tuple(found)


def _there(joint: Joint, name: str, groups: Groups) -> bool:
    """Whether a part is in place while a joint is made: it is one of the two, or hangs together with them."""
    if name in (joint.left, joint.right):
        return True
    return any(
        side not in GROUNDS and groups.of(name) == groups.of(side) for side in (joint.left, joint.right)
    )


def _free(reach: Reach, parts: Iterable[str], sweep: Sweep) -> float:
    """How far some parts leave a cylinder free; more than its end where they leave all of it."""
    free = math.inf
    for name in parts:
        nearer = sweep if free == math.inf else sweep._replace(high=free)
        if stands_in(reach.solids[name], nearer):
            free = free_up_to(reach.solids[name], nearer)
    return free


def room_for(reach: Reach, found: OutOfReach) -> Room:
    """What is in the way of the tool that lacks least, square to the fastener."""
    best: Room | None = None
    for way in reach.ways_to_drive(found.placed):
        if way.leaning or not way.tool.handy:
            continue
        parts = found.there(reach.in_the_way(found.placed, way.sweeps))
        free, needs = way.needs, way.needs
        for sweep in way.sweeps:
            reached = _free(reach, parts, sweep)
            if sweep.start == found.placed.mouth:
                free = min(free, reached)
            elif free == needs and reached < sweep.high:  # only the nut of a bolt is out of reach
                free, needs = reached, sweep.high
        if best is None or needs - free < best.needs - best.free - TOLERANCE_MM:
            best = Room(parts, way.tool, free, needs)
    assert best is not None
    return best


def free_from_behind(reach: Reach, found: OutOfReach) -> bool:
    """True when a screw could be driven through the far side of the other part.

    In place of a pocket screw it is a plain one, long enough, into the end that the pocket was to leave.
    """
    placed = found.placed
    if placed.kind not in ("screws", "pocket screws") or placed.point_part in GROUNDS:
        return False
    if placed.kind == "pocket screws":
        placed = _square_screw(placed)
    turned = from_behind(placed, reach.solids[placed.point_part])
    if turned is None:
        return False
    return any(blocked.way.tool.handy and not found.there(blocked.parts) for blocked in reach.ways(turned))


def _square_screw(placed: Placed) -> Placed:
    """A plain screw square to the joint where a pocket screw crosses it."""
    contact = placed.joint.contact
    slope = dot(placed.direction, placed.surface_normal)
    if contact is None or slope < _STEEP:
        return placed
    at = moved(
        placed.head,
        placed.direction,
        dot(minus(contact.low, placed.head), placed.surface_normal) / slope,
    )
    return placed._replace(
        fastening=placed.fastening.model_copy(update={"kind": "screws"}),
        mouth=at,
        head=at,
        point=moved(at, placed.surface_normal, 2 * placed.length),
    )
