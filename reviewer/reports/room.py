"""Where the piece will stand, on one line: what the plan says of the room and nothing else."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.model.plan import OnWall, Room
from reviewer.reports.excerpt import one_line
from reviewer.units import UnitSystem, length, show
from reviewer.wording import listed

_SIDE_WORDS = {"left": "on the left", "right": "on the right", "front": "in front", "behind": "behind"}


def room_line(room: Room, system: UnitSystem) -> str:
    """``hall: indoors, wall behind, floor wood, stairs 30 in wide``."""
    facts = ", ".join(_facts(room, system))
    return f"{one_line(room.name)}: {facts}" if facts else one_line(room.name)


def _facts(room: Room, system: UnitSystem) -> Iterator[str]:
    def size(amount_mm: float) -> str:
        return show(length(amount_mm), system)

    def on_wall(what: str, places: tuple[OnWall, ...]) -> Iterator[str]:
        for place in places:
            yield f"{what} {size(place.across)} across and {size(place.up)} up"

    if "outdoors" in room.said:
        yield "outdoors" if room.outdoors else "indoors"
    if "heated" in room.said and not (room.outdoors and not room.heated):
        yield "heated" if room.heated else "unheated"
    for side, gap in room.walls.items():
        away = f", {size(gap)} away" if gap else ""
        yield f"wall {_SIDE_WORDS.get(side, side)}{away}"
    if room.stud_spacing is not None:
        first = room.stud_first
        of = f" from {size(first)}" if first is not None else ""
        yield f"studs every {size(room.stud_spacing)}{of}"
    if room.stud_places:
        yield f"studs at {listed([size(place) for place in room.stud_places], most=8)}"
    if room.floor is not None:
        yield f"floor {one_line(room.floor)}"
    if room.doorway is not None:
        yield f"doorway {size(room.doorway[0])} wide and {size(room.doorway[1])} tall"
    if room.ceiling is not None:
        yield f"ceiling {size(room.ceiling)} up"
    if room.hall is not None:
        yield f"hall {size(room.hall)} wide"
    if room.stairs is not None:
        yield f"stairs {size(room.stairs)} wide"
    if room.landing is not None:
        yield f"landing {size(room.landing[0])} by {size(room.landing[1])}"
    if room.skirting is not None:
        tall, deep = room.skirting
        yield f"skirting {size(tall)} tall" + (f" and {size(deep)} deep" if deep is not None else "")
    yield from on_wall("outlet", room.outlets)
    yield from on_wall("switch", room.switches)
    for area in room.wall_areas:
        grade = ", near the ground outside" if area.at_grade else ""
        yield (
            f"{area.kind} {size(area.wide)} wide and {size(area.tall)} tall, "
            f"{size(area.across)} across and {size(area.up)} up{grade}"
        )
    yield from on_wall("alarm", room.alarms)
    for heater in room.heaters:
        yield f"{heater.kind} {_SIDE_WORDS[heater.side]}, {size(heater.away)} away"
    if room.firebox is not None:
        yield f"firebox up to {size(room.firebox)}"
    for cord in room.cords:
        yield f"cord {cord.way}"
    if room.children_under is not None:
        yield f"children under {room.children_under:g} years" if room.children_under else "no children"
