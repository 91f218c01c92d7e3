"""Where the piece will stand, on one line: what the plan says of the room and nothing else."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.model.plan import OnWall, Room
from reviewer.reports.excerpt import one_line
from reviewer.units import UnitSystem, length, show


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
    if room.wall is not None:
        away = f", {size(room.wall_gap)} away" if room.wall_gap is not None else ""
        yield f"wall {'on the ' if room.wall != 'behind' else ''}{room.wall}{away}"
    if room.stud_spacing is not None:
        yield f"studs every {size(room.stud_spacing)}"
    if room.floor is not None:
        yield f"floor {one_line(room.floor)}"
    if room.doorway is not None:
        yield f"doorway {size(room.doorway[0])} wide and {size(room.doorway[1])} tall"
    if room.ceiling is not None:
        yield f"ceiling {size(room.ceiling)} up"
    if room.stairs is not None:
        yield f"stairs {size(room.stairs)} wide"
    if room.skirting is not None:
        tall, deep = room.skirting
        yield f"skirting {size(tall)} tall" + (f" and {size(deep)} deep" if deep is not None else "")
    yield from on_wall("outlet", room.outlets)
    yield from on_wall("switch", room.switches)
    for heater in room.heaters:
        where = {"front": "in front", "behind": "behind"}.get(heater.side, f"on the {heater.side}")
        yield f"heater {where}, {size(heater.away)} away"
    if room.children_under is not None:
        yield f"children under {room.children_under:g} years" if room.children_under else "no children"
