"""How fasteners look cut along their axis: outlines in mm, to scale in length and thickness.

A place is how far along the axis from the head towards the point, and how far to the side of it.
"""

from __future__ import annotations

from collections.abc import Callable

from reviewer.records import NamedTuple
from reviewer.reports.svg import Point
from reviewer.workshop.placed import Placed

#: The thread of a screw: this much of its length (two thirds are usual), at most so many turns drawn.
_THREADED = 2 / 3
_MOST_TURNS = 10


class Drawn(NamedTuple):
    """One outline of a fastener: ``metal``, ``wood`` (dowels and the like) or ``hollow`` (what is bored)."""

    outline: tuple[Point, ...]
    look: str


def _box(start: float, end: float, half: float) -> tuple[Point, ...]:
    return ((start, -half), (end, -half), (end, half), (start, half))


def _screw(placed: Placed) -> list[Drawn]:
    length, half = placed.length, placed.diameter / 2
    head = max(placed.head_diameter / 2, half)
    deep = min(head - half, length / 4) if placed.kind == "screws" else min(half, length / 6)
    tip = length - min(2 * placed.diameter, length / 3)
    start = max(deep, length * (1 - _THREADED))
    root = half * 0.72
    above: list[Point] = [(start, -root)]
    turns = max(2, min(_MOST_TURNS, int((tip - start) / max(half, 0.5))))
    pitch = (tip - start) / turns
    for turn in range(turns):
        above += [(start + (turn + 0.5) * pitch, -half), (start + (turn + 1) * pitch, -root)]
    under = [(along, -aside) for along, aside in reversed(above)]
    neck: list[Point] = (
        [(0.0, -head), (deep, -root)]
        if placed.kind == "screws"
        else [(0.0, -head), (deep, -head), (deep, -root)]
    )
    back = [(along, -aside) for along, aside in reversed(neck)]
    return [Drawn((*neck, *above, (length, 0.0), *under, *back), "metal")]


def _nail(placed: Placed) -> list[Drawn]:
    length, half = placed.length, placed.diameter / 2
    head = max(placed.head_diameter / 2, half)
    thick = min(half, length / 10)
    tip = length - min(2 * placed.diameter, length / 3)
    one = [(0.0, -head), (thick, -head), (thick, -half), (tip, -half), (length, 0.0)]
    return [Drawn((*one, *((along, -aside) for along, aside in reversed(one[:-1]))), "metal")]


def _bolt(placed: Placed) -> list[Drawn]:
    length, half = placed.length, placed.diameter / 2
    head = max(placed.head_diameter / 2, half * 1.7)
    thick = placed.diameter * 0.65
    nut = _box(length - thick * 1.3, length - thick * 0.3, head)
    return [
        Drawn(_box(0.0, length, half), "metal"),
        Drawn(_box(-thick, 0.0, head), "metal"),
        Drawn(nut, "metal"),
    ]


def _dowel(placed: Placed) -> list[Drawn]:
    length, half = placed.length, placed.diameter / 2
    less = min(half * 0.35, length / 10)
    one = [(0.0, -half + less), (less, -half), (length - less, -half), (length, -half + less)]
    return [Drawn((*one, *((along, -aside) for along, aside in reversed(one))), "wood")]


def _flat(placed: Placed) -> list[Drawn]:
    return [Drawn(_box(0.0, placed.length, placed.diameter / 2), "wood")]


_LOOKS: dict[str, Callable[[Placed], list[Drawn]]] = {
    "screws": _screw,
    "pocket screws": _screw,
    "nails": _nail,
    "bolts": _bolt,
    "dowels": _dowel,
    "biscuits": _flat,
    "loose tenons": _flat,
}


def bored(placed: Placed) -> tuple[Point, ...]:
    """What is bored away over the head, a counterbore or a pocket; empty where nothing is."""
    if placed.mouth is None or placed.hole_diameter <= 0:
        return ()
    deep = sum(abs(a - b) ** 2 for a, b in zip(placed.mouth, placed.head, strict=True)) ** 0.5
    if deep < 0.05:
        return ()
    half = placed.hole_diameter / 2
    # Further than the mouth, so that a slanting hole opens over all of its long oval in the face.
    return _box(-deep - half * 4, 0.0, half)


def outlines_of(placed: Placed) -> list[Drawn]:
    """The outlines of a placed fastener, less what is bored for it; empty for kinds without a place."""
    look = _LOOKS.get(placed.kind)
    return look(placed) if look is not None else []
