"""What is on the wall behind the piece, for every report, and what the piece leaves clear of it."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Literal, NamedTuple

from reviewer.geometry.openings_left import Patch
from reviewer.review import Review
from reviewer.units import length, show
from reviewer.workshop.escape_windows import escape_of
from reviewer.workshop.wall_covers import around, behind, patch_of


class OnTheWall(NamedTuple):
    """A window, a vent, a panel or an alarm.

    ``clear`` is the largest clear opening that the piece leaves of an escape window before which it stands;
    None where it does not, and where it leaves nothing.
    """

    kind: Literal["escape window", "window", "vent", "panel", "alarm"]
    patch: Patch
    clear: Patch | None
    said: str


def on_wall(review: Review) -> Iterator[OnTheWall]:
    """Windows, vents and panels in the plan's order, then alarms, with what is clear of them in words."""
    room = review.plan.room
    if room is None or not (room.wall_areas or room.alarms):
        return

    def size(amount_mm: float) -> str:
        return show(length(amount_mm), review.units)

    seen = behind(review)
    for area in room.wall_areas:
        where = f"{size(area.across)} across, {size(area.up)} up"
        said = f"{area.kind} {size(area.wide)} by {size(area.tall)}, {where}"
        found = OnTheWall(area.kind, patch_of(area), None, said)
        escape = escape_of(review, area) if seen and area.kind == "escape window" else None
        if escape is not None and escape.clear.before:
            clear = escape.best
            if clear is None:
                left = "nothing of it clear"
            else:
                left = f"of it clear {size(clear.wide)} by {size(clear.tall)}, {size(clear.bottom)} up"
            found = found._replace(clear=clear, said=f"{said}, {left}")
        yield found
    wide = review.limit("alarm-width").amount
    for place in room.alarms:
        said = f"alarm {size(place.across)} across, {size(place.up)} up"
        yield OnTheWall("alarm", around(place, wide, wide), None, said)
