"""The studs of the wall: how far apart, where they truly lie if the plan says so, how far to shift a piece.

Places are counted along the wall from the plan's left corner, or from its front on a wall at the side. mm.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import TYPE_CHECKING

from reviewer.mechanics.wall_fixing import Studs, TrueStuds, shift_onto, studs_behind, studs_reached
from reviewer.model.plan import Axis
from reviewer.records import NamedTuple
from reviewer.reference.usual_values import usual_value
from reviewer.units import MM_PER_INCH, TOLERANCE_MM, UnitSystem, length, show
from reviewer.wording import listed
from reviewer.workshop.standing import Piece

if TYPE_CHECKING:
    from reviewer.review import Review

#: Studs that are told one by one.
_MOST_NAMED = 8
#: From where places along a wall are counted: the corner, what lies before it, what lies behind it.
_CORNERS = {
    True: ("the plan's left corner", "left of", "right of it"),
    False: ("the plan's front corner", "before", "behind it"),
}


def stud_spacing(review: Review) -> float:
    """From stud to stud, mm: as the plan says, else as usual."""
    room = review.plan.room
    said = room.stud_spacing if room is not None else None
    return said if said else review.limit("stud-spacing").amount


def true_studs(review: Review) -> TrueStuds | None:
    """Where the plan says that the studs lie; None where it does not."""
    room = review.plan.room
    if room is None:
        return None
    row = TrueStuds()
    if room.stud_first is not None and room.stud_spacing:
        row = TrueStuds((), room.stud_first, room.stud_spacing)
    elif not room.stud_places:
        return None
    # Two that would lie in one another are one stud that was measured twice.
    apart = usual_value("stud-edge") - TOLERANCE_MM
    single: list[float] = []
    for place in room.stud_places:
        near = row.nearest(place)
        if (near is None or abs(near - place) >= apart) and (not single or place - single[-1] >= apart):
            single.append(place)
    return row._replace(places=tuple(single))


def studs_along(review: Review, low: float, high: float) -> Studs:
    """The studs behind what reaches from one place along the wall to another: counted where they are known.

    One counts where a screw behind the piece still has enough of its wood. Else by how far they are apart.
    """
    known = true_studs(review)
    if known is None:
        return studs_behind(high - low, stud_spacing(review))
    return studs_reached(known, low, high, review.limit("stud-target").amount)


def studs_beside(review: Review, low: float, high: float) -> list[tuple[float, float]]:
    """The next stud on each side that is not reached between two places: its middle, and how far it is off.

    The nearer first, mm.
    """
    known, off = true_studs(review), review.limit("stud-target").amount
    if known is None:
        return []
    below, above = known.beside(low - off, high + off)
    found = [(below, low - below)] if below is not None else []
    if above is not None:
        found.append((above, above - high))
    return sorted(found, key=lambda each: (round(each[1], 3), each[0]))


def rail_studs(review: Review, low: float, high: float, wanted: int) -> tuple[float, ...]:
    """The studs that a rail across a width reaches, and past it if it must; empty where they are too few.

    No further past it than studs are apart.
    """
    known = true_studs(review)
    if known is None:
        return ()
    past = stud_spacing(review)
    found = list(studs_along(review, low, high).places or ())
    middle = (low + high) / 2
    more = [each for each in known.between(low - past, high + past) if each not in found]
    more.sort(key=lambda stud: (round(abs(stud - middle), 3), stud))
    found += more[: max(0, wanted - len(found))]
    return tuple(sorted(found)) if len(found) >= wanted else ()


def shift_to(review: Review, piece: Piece, low: float, high: float, wanted: int, axis: int) -> float | None:
    """How far to shift a piece along the wall for so many studs behind a width, mm; None where nothing does.

    Tried: with the studs then inside the width, else with enough of their wood there, no further than studs
    usually are apart, and where no wall, heater, outlet or other part is in the way.
    """
    known = true_studs(review)
    if known is None:
        return None
    most, off = stud_spacing(review), review.limit("stud-target").amount
    for reach in (0.0, off):
        ways = [shift_onto(known, low, high, reach, wanted, most, side) for side in (-1.0, 1.0)]
        for way in sorted((on_tape(review, way) for way in ways if way is not None), key=abs):
            reached = studs_reached(known, low + way, high + way, off).most >= wanted
            if reached and way_is_free(review, piece, axis, way):
                return way
    return None


def on_tape(review: Review, way: float) -> float:
    """The next larger way that a person reads off a tape, mm."""
    step = 5.0 if review.units is UnitSystem.METRIC else MM_PER_INCH / 4
    return math.copysign(math.ceil(abs(way) / step - 1e-6) * step, way)


def way_is_free(review: Review, piece: Piece, axis: int, way: float) -> bool:
    """True where a piece that is shifted along the wall so far runs into nothing.

    And where it covers no more than now of an outlet, a window, a vent or the like.
    """
    from reviewer.workshop.swings import room_obstacles

    inside = set(piece.parts)
    solids = review.setting.solids
    skirting = review.limit("skirting-thickness").amount
    along_wall = ("left", "right") if axis == Axis.ACROSS else ("front", "behind")
    boxes = [
        (thing.low, thing.high) for thing in room_obstacles(review, skirting) if thing.side in along_wall
    ]
    boxes += [(each.low, each.high) for name, each in solids.items() if name not in inside]
    # A piece is a box here: what it would slide past counts as in its way.
    low, high = list(piece.low), list(piece.high)
    low[axis], high[axis] = min(low[axis], low[axis] + way), max(high[axis], high[axis] + way)
    for other_low, other_high in boxes:
        if all(
            low[each] < other_high[each] - TOLERANCE_MM and high[each] > other_low[each] + TOLERANCE_MM
            for each in range(3)
        ):
            return False
    if axis != Axis.ACROSS:
        return True  # outlets, windows and the like are those of the wall behind
    left, right = piece.low[Axis.ACROSS], piece.high[Axis.ACROSS]
    return not any(
        _shared(left + way, right + way, place) > _shared(left, right, place) + TOLERANCE_MM
        for place in _to_keep_clear(review)
        if piece.low[Axis.UP] < place.top and piece.high[Axis.UP] > place.bottom
    )


class _Clear(NamedTuple):
    """What on the wall behind is to stay clear, mm: from where to where across, and up."""

    left: float
    right: float
    bottom: float
    top: float


def _shared(left: float, right: float, place: _Clear) -> float:
    return max(0.0, min(right, place.right) - max(left, place.left))


def _to_keep_clear(review: Review) -> Iterator[_Clear]:
    """Outlets, switches, alarms, windows, vents and the working space before panels."""
    room = review.plan.room
    if room is None:
        return
    plates = [(each, "outlet") for _, each in review.sockets] + [(each, "alarm") for each in room.alarms]
    for place, kind in plates:
        half = review.limit(f"{kind}-width").amount / 2
        yield _Clear(place.across - half, place.across + half, place.up - half, place.up + half)
    for area in room.wall_areas:
        if area.kind == "panel":
            more = max(0.0, review.limit("panel-space-width").amount - area.wide)
            top = max(area.top, review.limit("panel-space-height").amount)
            yield _Clear(area.across - more, area.right + more, 0.0, top)
        else:
            yield _Clear(area.across, area.right, area.up, area.top)


def corner(axis: int) -> str:
    """From where places along a wall are counted: ``the plan's left corner``."""
    return _CORNERS[axis == Axis.ACROSS][0]


def side_words(axis: int, way: float) -> str:
    """``to the right``: which way along the wall."""
    if axis == Axis.ACROSS:
        return "to the right" if way > 0 else "to the left"
    return "towards the back" if way > 0 else "towards the front"


def stud_words(review: Review, places: tuple[float, ...], axis: int, *, corner_said: bool = False) -> str:
    """``10 in and 26 in from the plan's left corner``: the middles of some studs.

    ``corner_said``: a sentence before tells from where, so that it is left out where it can be.
    """
    start, before, after = _CORNERS[axis == Axis.ACROSS]
    texts = []
    for number, place in enumerate(places):
        said = show(length(abs(place)), review.units)
        if place < -TOLERANCE_MM:
            last = number + 1 == len(places) or places[number + 1] >= -TOLERANCE_MM
            texts.append(f"{said} {before} {start}" if last else said)
        else:
            texts.append(f"{said} {after}" if places[0] < -TOLERANCE_MM else said)
    known = corner_said or (places and places[0] < -TOLERANCE_MM)
    return listed(texts, most=_MOST_NAMED) + ("" if known else f" from {start}")


def behind_words(review: Review, low: float, high: float, axis: int) -> str:
    """What studs the plan has behind a width of wall, or else which is the nearest."""
    places = studs_along(review, low, high).places or ()
    if places:
        many = "studs behind it are" if len(places) > 1 else "only stud behind it is"
        return f"the plan's {many} at {stud_words(review, places, axis)}"
    beside = studs_beside(review, low, high)
    if not beside:
        return "the plan has no stud there"
    stud, away = beside[0]
    return (
        f"the plan has no stud behind it, and the nearest is at {stud_words(review, (stud,), axis)}, "
        f"{show(length(away), review.units)} off {side_words(axis, stud - low)}"
    )
