"""What is carried in as one, and how it goes through the doorway, round corners, up stairs, and stands up.

A thing is taken as the box round it, but for the diagonal on which it stands up. All in mm.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import TYPE_CHECKING, Literal

from reviewer.geometry.openings import (
    height_to_stand_up,
    longest_into_doorway,
    longest_round_corner,
    outline_round,
    spare,
)
from reviewer.model.plan import GROUNDS, Axis, Join
from reviewer.records import NamedTuple
from reviewer.setting_out.result import Joint
from reviewer.setting_out.solid import Solid, Vector
from reviewer.units import TOLERANCE_MM

if TYPE_CHECKING:
    from reviewer.review import Review

#: What is held by these alone, without glue, comes apart again: common practice, no source.
_COMES_APART = frozenset({"bolts", "wedges", "shelf pins", "clips", "brackets", "none"})

#: A leg is upright, stands on the floor, and is no wider than this, mm: own choice, 6 in.
_LEG_MM = 150.0
#: What stands on legs takes up at most this share of the whole height: own choice.
_ON_LEGS = 0.5

#: Which way a thing is carried: the axis that goes first, by what of it then leads.
Way = Literal["side first", "front first", "top first"]
WAYS: tuple[Way, Way, Way] = ("side first", "front first", "top first")


class Carried(NamedTuple):
    """Parts that go in as one: their bounds as the piece stands, and whether they stand on the floor."""

    parts: tuple[str, ...]
    low: Vector
    high: Vector
    stands: bool

    @property
    def size(self) -> Vector:
        """Across, deep and up, mm."""
        return (self.high[0] - self.low[0], self.high[1] - self.low[1], self.high[2] - self.low[2])


class Turn(NamedTuple):
    """The best way round a corner: which axis is upright, how long it may be there and how long it is."""

    upright: int
    longest: float
    length: float

    @property
    def over(self) -> float:
        """How much too long it is, mm; not above 0 when it goes round."""
        return self.length - self.longest


def comes_apart(join: Join) -> bool:
    """True for a join that is made to be undone: held by bolts, wedges or the like, and not glued."""
    return (
        join.glue is None
        and bool(join.fastenings)
        and all(fastening.kind in _COMES_APART for fastening in join.fastenings)
    )


def _links(review: Review) -> Iterator[tuple[str, str]]:
    """Pairs of parts that stay together on the way in."""
    from reviewer.workshop.gluing import step_of

    setting = review.setting
    in_room = frozenset(number for number, step in enumerate(review.plan.steps) if step.in_the_room)
    joints: dict[tuple[str, str], list[Joint]] = {}
    for joint in setting.joints:
        joints.setdefault(_pair(joint.left, joint.right), []).append(joint)
    joined = frozenset(
        name for one, two in joints if one not in GROUNDS and two not in GROUNDS for name in (one, two)
    )
    loose = frozenset(
        part for moving in review.plan.movings if moving.kind != "opens" for part in moving.parts
    )
    touching = [(contact.first, contact.second) for contact in setting.contacts]
    touching += [(overlap.first, overlap.second) for overlap in setting.overlaps]
    for one, two in dict.fromkeys(_pair(*pair) for pair in touching):
        if one in GROUNDS or two in GROUNDS:
            continue
        if (one in loose or two in loose) and review.moves_with.get(one) != review.moves_with.get(two):
            continue
        here = joints.get((one, two))
        if here is None:
            if one not in joined or two not in joined:
                yield one, two  # nothing says what holds it, so it is not known to come off
            continue
        if all(comes_apart(joint.join) for joint in here):
            continue
        if in_room and all(step_of(review, joint) in in_room for joint in here):
            continue
        yield one, two
    for fit in review.plan.fits:
        hinged = any(piece.kind == "hinges" for piece in fit.pieces)
        for unit in fit.units:
            if hinged and fit.others and fit.others[0] not in GROUNDS:
                yield unit[0], fit.others[0]
            for other in unit[1:]:
                if hinged:
                    yield unit[0], other


def _pair(one: str, two: str) -> tuple[str, str]:
    return (one, two) if one < two else (two, one)


def carried(review: Review) -> tuple[Carried, ...]:
    """Everything that goes in as one, in the order of the first parts; what is alike in size only once."""
    solids = review.setting.solids
    leads = {name: name for name in solids}

    def lead(name: str) -> str:
        while leads[name] != name:
            leads[name] = leads[leads[name]]
            name = leads[name]
        return name

    for one, two in _links(review):
        if one in leads and two in leads:
            leads[lead(one)] = lead(two)
    clusters: dict[str, list[str]] = {}
    for name in solids:
        clusters.setdefault(lead(name), []).append(name)
    found: dict[tuple[int, ...], Carried] = {}
    for names in clusters.values():
        low, high = _bounds(solids[name] for name in names)
        box = Carried(tuple(names), low, high, low[2] <= TOLERANCE_MM)
        key = (*(round(size) for size in sorted(box.size)), round(box.size[2]), int(box.stands))
        found.setdefault(key, box)
    return tuple(found.values())


def _bounds(solids: Iterable[Solid]) -> tuple[Vector, Vector]:
    lows, highs = zip(*((solid.low, solid.high) for solid in solids), strict=True)
    return (
        (min(p[0] for p in lows), min(p[1] for p in lows), min(p[2] for p in lows)),
        (max(p[0] for p in highs), max(p[1] for p in highs), max(p[2] for p in highs)),
    )


def without_legs(review: Review, one: Carried) -> tuple[int, Vector]:
    """How many slender legs a piece stands on, and the size of the box round the rest of it, mm.

    0 and its whole size where it is no table: what is not legs reaches further down than half its height.
    """
    solids = [review.setting.solids[name] for name in one.parts]
    legs = [solid for solid in solids if _is_leg(solid)]
    rest = [solid for solid in solids if not _is_leg(solid)]
    if not legs or not rest:
        return 0, one.size
    low, high = _bounds(rest)
    if high[2] - low[2] > _ON_LEGS * one.size[2]:
        return 0, one.size
    return len(legs), (high[0] - low[0], high[1] - low[1], high[2] - low[2])


def _is_leg(solid: Solid) -> bool:
    return (
        solid.low[2] <= TOLERANCE_MM
        and solid.long == Axis.UP
        and max(solid.extent(0), solid.extent(1)) <= _LEG_MM
    )


def through_doorway(size: Vector, doorway: tuple[float, float]) -> tuple[float, float, float]:
    """What is left all round by each of :data:`WAYS`, mm: turned in the doorway as suits best."""
    across, deep, up = size
    return spare((deep, up), doorway), spare((across, up), doorway), spare((across, deep), doorway)


def _turns(size: Vector, tallest: float) -> Iterator[tuple[int, float, float]]:
    """Each way to hold a box level: the upright axis, its length and its thickness on the floor plan."""
    for upright in range(3):
        if size[upright] <= tallest + TOLERANCE_MM:
            others = [size[axis] for axis in range(3) if axis != upright]
            yield upright, max(others), min(others)


def _best(turns: Iterable[Turn]) -> Turn | None:
    return min(turns, key=lambda turn: (turn.over, turn.upright), default=None)


def from_hall(size: Vector, hall: float, doorway: tuple[float, float]) -> Turn | None:
    """The best way from a hall through a doorway in its side; None when it is too tall every way."""
    return _best(
        Turn(upright, longest_into_doorway(thick, hall, doorway[0]), long)
        for upright, long, thick in _turns(size, doorway[1])
    )


def round_landing(size: Vector, landing: tuple[float, float], headroom: float) -> Turn | None:
    """The best way round a landing; None when it is too tall every way."""
    return _best(
        Turn(upright, longest_round_corner(thick, *landing), long)
        for upright, long, thick in _turns(size, headroom)
    )


def narrowest(size: Vector, headroom: float) -> float | None:
    """How wide stairs have to be for a box that is carried along them, mm: the least of its level sides."""
    found = [
        min(size[axis] for axis in range(3) if axis != upright) for upright, _, _ in _turns(size, headroom)
    ]
    return min(found, default=None)


def standing_up(review: Review, one: Carried) -> float:
    """How high it reaches while it is tilted up, over its back or over a side, whichever is less, mm."""
    solids = review.setting.solids
    across: list[tuple[float, float]] = []
    deep: list[tuple[float, float]] = []
    for name in one.parts:
        solid = solids[name]
        if solid.body is None and solid.square:
            corners: Iterable[Vector] = [
                (x, y, z)
                for x in (solid.low[0], solid.high[0])
                for y in (solid.low[1], solid.high[1])
                for z in (solid.low[2], solid.high[2])
            ]
        else:
            from reviewer.setting_out.bodies import body_of

            body = body_of(solid)
            corners = (point for piece in body.pieces for face in piece.faces for point in face.ring)
        for x, y, z in corners:
            across.append((x, z))
            deep.append((y, z))
    heights = []
    for seen in (deep, across):
        outline = outline_round(seen)
        # Over its back, or its front; over its right side, or its left.
        heights += [height_to_stand_up(outline), height_to_stand_up([(-x, z) for x, z in outline])]
    return min(heights)


def upright_through(size: Vector, doorway: tuple[float, float]) -> bool:
    """Whether it goes through a doorway on its feet."""
    return size[Axis.UP] <= doorway[1] + TOLERANCE_MM and min(size[0], size[1]) <= doorway[0] + TOLERANCE_MM
