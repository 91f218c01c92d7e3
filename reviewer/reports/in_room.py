"""The piece in its room, for every report: what stands near it, what opens and where it strikes, outlets."""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import Literal, NamedTuple

from reviewer.geometry.vectors import Vector
from reviewer.model.plan import OnWall, RoomSide
from reviewer.reports.content import counted_word
from reviewer.reports.on_wall import OnTheWall, on_wall
from reviewer.review import Review
from reviewer.setting_out.moving import Moved
from reviewer.units import TOLERANCE_MM, UnitSystem, Value, length, show
from reviewer.workshop.swings import Obstacle, Stroke, bounds_of, room_obstacles

#: Movements that a report tells of; the JSON has all of them.
MOVEMENTS = 40

#: The level axis that a side of the room lies on, and whether it is the low end of it.
SIDES: dict[RoomSide, tuple[int, bool]] = {
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


class Near(NamedTuple):
    """A wall, its skirting or what is hot, and how far off the piece it is, mm.

    ``said`` is empty for a skirting, which stands with its wall.
    """

    thing: Obstacle
    side: RoomSide
    away: float
    said: str

    @property
    def place(self) -> float:
        """Where its face is, on its own axis."""
        axis, low_side = SIDES[self.side]
        return self.thing.high[axis] if low_side else self.thing.low[axis]

    @property
    def name(self) -> str:
        return f"{self.thing.kind} {_WHERE[self.side]}"


class Opens(NamedTuple):
    """Something that opens or slides, and its first stroke against another thing, where there is one."""

    moved: Moved
    stroke: Stroke | None
    said: str


class Socket(NamedTuple):
    """An outlet or a switch on the wall."""

    kind: Literal["outlet", "switch"]
    place: OnWall
    said: str


class InRoom(NamedTuple):
    """The piece, from ``low`` to ``high``, and what is about it."""

    low: Vector
    high: Vector
    near: tuple[Near, ...]
    opens: tuple[Opens, ...]
    sockets: tuple[Socket, ...]
    on_wall: tuple[OnTheWall, ...]

    @property
    def said(self) -> tuple[str, ...]:
        """A line for each thing; movements past ``MOVEMENTS`` are counted."""
        lines = [each.said for each in self.near if each.said]
        lines += [each.said for each in self.opens[:MOVEMENTS]]
        left = len(self.opens) - MOVEMENTS
        if left > 0:
            lines.append(f"{counted_word(left, 'more thing opens', 'more things open')}; the JSON has all")
        lines += [each.said for each in self.sockets]
        return (*lines, *(each.said for each in self.on_wall))


def in_room(review: Review) -> InRoom | None:
    """The piece in its room; None where the plan has no room, or nothing in it that counts for a place."""
    room, solids = review.plan.room, list(review.setting.solids.values())
    if room is None or not solids or not review.setting.whole:
        return None
    fixed = room.walls or room.heaters or room.wall_areas or room.alarms or review.sockets
    if not (fixed or review.plan.movings):
        return None
    low, high = bounds_of(solids)
    return InRoom(
        low,
        high,
        tuple(_near(review, low, high)),
        tuple(_opens(review)),
        tuple(
            Socket(
                kind,
                place,
                f"{kind} {show(length(place.across), review.units)} across, "
                f"{show(length(place.up), review.units)} up",
            )
            for kind, place in review.sockets
        ),
        tuple(on_wall(review)),
    )


def _near(review: Review, low: Vector, high: Vector) -> Iterator[Near]:
    for thing in room_obstacles(review, review.limit("skirting-thickness").amount):
        if thing.side is None:
            continue
        axis, low_side = SIDES[thing.side]
        away = low[axis] - thing.high[axis] if low_side else thing.low[axis] - high[axis]
        near = "close by" if away <= TOLERANCE_MM else f"{show(length(away), review.units)} away"
        found = Near(thing, thing.side, away, "")
        yield found if thing.kind == "skirting" else found._replace(said=f"{found.name}, {near}")


def _opens(review: Review) -> Iterator[Opens]:
    first: dict[str, Stroke] = {}
    for stroke in review.swings.strokes if review.plan.movings else ():
        name = stroke.moved.moving.name
        if name not in first or stroke.way < first[name].way:
            first[name] = stroke
    for moved in review.moved:
        if moved.open:
            strikes = first.get(moved.moving.name)
            yield Opens(moved, strikes, _opens_said(moved, strikes, review.units))


def _opens_said(moved: Moved, stroke: Stroke | None, units: UnitSystem) -> str:
    moving = moved.moving
    if moving.kind == "slides":
        said = f"{moving.name} slides out {show(length(moving.distance or 0.0), units)}"
        return said if stroke is None else f"{said}, strikes after {show(length(stroke.way), units)}"
    said = f"{moving.name} opens {show(Value(moving.degrees or 0.0, 'angle'), units)}"
    if stroke is None:
        return said
    return f"{said}, strikes at {show(Value(math.degrees(stroke.way), 'angle'), units)}"
