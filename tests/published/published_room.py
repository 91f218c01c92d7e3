"""The formulas of the room: openings, corners, standing up, and doors that strike."""

from __future__ import annotations

import math

from published_formulas import formula
from published_measures import Inputs

from reviewer.geometry.openings import (
    goes_through,
    height_to_stand_up,
    longest_into_doorway,
    longest_round_corner,
    outline_round,
    spare,
)
from reviewer.geometry.openings_left import Patch, left_of
from reviewer.geometry.swinging import first_stroke
from reviewer.reference.limits import default_limits
from reviewer.workshop.escape_windows import Least, lacks, wide_enough
from reviewer.workshop.mantels import most_out
from reviewer.workshop.panel_space import clear_width

#: A wall and a leaf thick enough to be struck, and thin enough not to matter, mm.
_FAR, _THIN = 1e4, 1e-6


def _said(true: bool) -> str:
    return "yes" if true else "no"


def _standing(i: Inputs) -> float:
    tall, base = i.measure("tall"), i.measure("base")
    return height_to_stand_up(outline_round([(0.0, 0.0), (base, 0.0), (base, tall), (0.0, tall)]))


@formula("stand-up height")
def _stand_up(i: Inputs) -> float:
    return _standing(i)


@formula("stood up under")
def _stood_up(i: Inputs) -> str:
    return _said(_standing(i) <= i.measure("ceiling"))


def _corner(i: Inputs) -> float:
    return longest_round_corner(i.measure("thick"), i.measure("first"), i.measure("second"))


@formula("longest round a corner")
def _longest(i: Inputs) -> float:
    return _corner(i)


@formula("turns round a corner")
def _turns(i: Inputs) -> str:
    return _said(i.measure("long") <= _corner(i))


@formula("longest into a doorway")
def _doorway(i: Inputs) -> float:
    return longest_into_doorway(i.measure("thick"), i.measure("hall"), i.measure("doorway"))


@formula("left in a doorway")
def _left(i: Inputs) -> float:
    return spare((i.measure("wide"), i.measure("tall")), (i.measure("doorway"), i.measure("high")))


@formula("goes through turned")
def _goes(i: Inputs) -> str:
    opening = i.measure("doorway"), i.measure("high")
    return _said(goes_through((i.measure("long"), i.measure("thick")), opening))


@formula("default limit")
def _limit(i: Inputs) -> float:
    return default_limits()[i.word("name")].amount


def _leaf(wide: float, thick: float) -> list[tuple[float, float]]:
    return [(0.0, -thick), (wide, -thick), (wide, 0.0), (0.0, 0.0)]


@formula("door needs at its free edge")
def _free_edge(i: Inputs) -> float:
    wide, thick = i.measure("wide"), i.measure("thick")
    low, high = 0.0, thick
    for _ in range(40):  # the least gap at which a stile beside the shut door is never struck
        gap = (low + high) / 2
        stile = [(wide + gap, -thick), (wide + gap + 50, -thick), (wide + gap + 50, 0.0), (wide + gap, 0.0)]
        if first_stroke(_leaf(wide, thick), stile, math.pi / 2, 0.0) is None:
            high = gap
        else:
            low = gap
    return high


@formula("door strikes wall in front")
def _in_front(i: Inputs) -> float:
    away = i.measure("away")
    wall = [(-_FAR, away), (_FAR, away), (_FAR, away + _FAR), (-_FAR, away + _FAR)]
    found = first_stroke(_leaf(i.measure("wide"), _THIN), wall, math.pi / 2, 0.0)
    return math.degrees(found) if found is not None else math.nan


@formula("door strikes wall beside")
def _beside(i: Inputs) -> float:
    away = i.measure("away")
    wall = [(-away - _FAR, -_FAR), (-away, -_FAR), (-away, _FAR), (-away - _FAR, _FAR)]
    found = first_stroke(_leaf(i.measure("wide"), _THIN), wall, math.pi, 0.0)
    return math.degrees(found) if found is not None else math.nan


def _mantel(i: Inputs) -> float | None:
    limits = default_limits()
    gap, reach, slope = (limits[f"mantel-{name}"].amount for name in ("gap", "reach", "slope"))
    return most_out(i.measure("above"), gap, reach, slope)


def _least(i: Inputs) -> Least:
    limits = default_limits()
    area = "escape-area-grade" if i.word("ground") == "grade" else "escape-area"
    return Least(*(limits[name].amount for name in (area, "escape-width", "escape-height", "escape-sill")))


@formula("clear opening")
def _clear(i: Inputs) -> float:
    return Patch(0, 0, i.measure("wide"), i.measure("tall")).area


@formula("escape opening lacks")
def _escape(i: Inputs) -> str:
    sill, wide, tall = i.measure("sill"), i.measure("wide"), i.measure("tall")
    return ", ".join(lacks(Patch(0, sill, wide, sill + tall), _least(i))) or "nothing"


@formula("escape opening needs this width")
def _needed(i: Inputs) -> float:
    return wide_enough(i.measure("tall"), _least(i))


@formula("clear of an opening")
def _clear_of(i: Inputs) -> float:
    """What a cover leaves of an opening, its left lower corner counted from that of the opening."""
    cover = Patch(
        i.measure("left"),
        i.measure("bottom"),
        i.measure("left") + i.measure("cover wide"),
        i.measure("bottom") + i.measure("cover tall"),
    )
    return left_of(Patch(0, 0, i.measure("wide"), i.measure("tall")), [cover]).area


@formula("clear before a panel")
def _before_panel(i: Inputs) -> float:
    panel = 0.0, i.measure("panel")
    left, right = -i.measure("clear left"), panel[1] + i.measure("clear right")
    return clear_width(panel, [(left - 100, left), (right, right + 100)])


@formula("mantel projection")
def _projection(i: Inputs) -> float:
    most = _mantel(i)
    return math.nan if most is None else most


@formula("mantel limited")
def _limited(i: Inputs) -> str:
    most = _mantel(i)
    return "no limit" if most is None else "limited" if most else "none of it"
