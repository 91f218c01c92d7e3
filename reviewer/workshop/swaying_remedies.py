"""What would help a piece that sways: each change made in the model, one at a time, and pushed again.

Added boards are usual ones, named in the words of each change. What is added reaches only parts that are
there, so a change that finds nothing to hold on to is not offered.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from itertools import pairwise
from typing import TYPE_CHECKING

from reviewer.geometry.vectors import UNITS, Vector, cross, minus, unit
from reviewer.mechanics.frame_solver import TooLargeError, UnsolvedError
from reviewer.model.plan import Axis
from reviewer.records import NamedTuple
from reviewer.reference.usual_values import usual_value
from reviewer.workshop.swaying_frame import Budget, sways
from reviewer.workshop.swaying_joints import Tie, of_glue, of_screws
from reviewer.workshop.swaying_structure import Rod, Structure, Sway, structure

if TYPE_CHECKING:
    from reviewer.review import Review
    from reviewer.workshop.standing import Piece

_Change = tuple[dict[str, Rod], list[Tie]]


class Remedy(NamedTuple):
    """A change, as one would tell it to do, and how far the piece then sways under the same push, mm."""

    do: str
    moved: float


def _planes(standing: Structure, axis: int) -> list[tuple[float, int]]:
    """The faces in which the piece can be braced along an axis: its back, or both ends; and which way out."""
    other = 1 - axis
    low = min(rod.low[other] for rod in standing.rods.values())
    high = max(rod.high[other] for rod in standing.rods.values())
    return [(high, 1)] if axis == Axis.ACROSS else [(low, -1), (high, 1)]


def _at_plane(standing: Structure, axis: int, plane: float, way: int) -> dict[str, Rod]:
    """The uprights that reach a face, in order along the axis."""
    other = 1 - axis
    found = {
        name: rod
        for name, rod in standing.uprights().items()
        if abs((rod.high if way > 0 else rod.low)[other] - plane) <= usual_value("sway-reach")
    }
    return dict(sorted(found.items(), key=lambda item: (item[1].middle[axis], item[0])))


def _panels(standing: Structure, axis: int) -> _Change | None:
    rods: dict[str, Rod] = {}
    more: list[Tie] = []
    other = 1 - axis
    sheet, every = usual_value("sway-sheet-thickness"), usual_value("sway-added-screws")
    for plane, way in _planes(standing, axis):
        held = _at_plane(standing, axis, plane, way)
        if len(held) < 2:
            return None
        low, high = [0.0] * 3, [0.0] * 3
        low[axis] = min(rod.low[axis] for rod in held.values())
        high[axis] = max(rod.high[axis] for rod in held.values())
        low[other], high[other] = sorted((plane, plane + way * sheet))
        low[Axis.UP] = min(rod.low[Axis.UP] for rod in held.values())
        high[Axis.UP] = max(rod.high[Axis.UP] for rod in held.values())
        size = (high[Axis.UP] - low[Axis.UP], high[axis] - low[axis], sheet)
        name = f"a sheet at {plane:.0f}"
        rods[name] = _rod(low, high, (UNITS[Axis.UP], UNITS[axis], UNITS[other]), size)
        for upright, rod in held.items():
            start, end = list(rod.low), list(rod.high)
            start[other] = end[other] = plane
            count = max(2, int((rod.high[Axis.UP] - rod.low[Axis.UP]) / every))
            bounds = ((start[0], start[1], start[2]), (end[0], end[1], end[2]))
            more.append(of_screws((upright, name), other, bounds, count, standing.end))
    return rods, more


def _rod(
    low: Sequence[float], high: Sequence[float], ways: tuple[Vector, Vector, Vector], size: Vector
) -> Rod:
    one, two = (low[0], low[1], low[2]), (high[0], high[1], high[2])
    middle = ((one[0] + two[0]) / 2, (one[1] + two[1]) / 2, (one[2] + two[2]) / 2)
    young = usual_value("sway-added-modulus")
    return Rod(middle, ways, size, one, two, young, young * usual_value("shear-share-of-wood"))


def _strip() -> tuple[float, float]:
    """The width and thickness of a strip to be added, mm."""
    return usual_value("sway-strip-width"), usual_value("sway-strip-thickness")


def _stretchers(standing: Structure, axis: int) -> _Change | None:
    """A strip on edge, glued between every two uprights that stand in a row, low down."""
    low_free = standing.base + usual_value("sway-stretcher-free") * standing.height
    if any(
        rod.axis == axis and rod.middle[Axis.UP] < low_free and not rod.upright
        for rod in standing.rods.values()
    ):
        return None
    other, rods, more = 1 - axis, {}, []
    wide, thick = _strip()
    at = standing.base + usual_value("sway-stretcher-height") * standing.height
    for one, two in _in_rows(standing, axis):
        left, right = standing.rods[one], standing.rods[two]
        low, high = [0.0] * 3, [0.0] * 3
        low[axis], high[axis] = left.high[axis], right.low[axis]
        low[other], high[other] = left.middle[other] - thick / 2, left.middle[other] + thick / 2
        low[Axis.UP], high[Axis.UP] = at - wide / 2, at + wide / 2
        name = f"a stretcher from {one} to {two}"
        size = (high[axis] - low[axis], wide, thick)
        rods[name] = _rod(low, high, (UNITS[axis], UNITS[Axis.UP], UNITS[other]), size)
        for upright, face in ((one, low[axis]), (two, high[axis])):
            start, end = list(low), list(high)
            start[axis] = end[axis] = face
            bounds = ((start[0], start[1], start[2]), (end[0], end[1], end[2]))
            more.append(of_glue((upright, name), axis, bounds, standing.end, into_end=True))
    return (rods, more) if rods else None


def _in_rows(standing: Structure, axis: int) -> Iterator[tuple[str, str]]:
    """Neighbouring uprights that stand in line along an axis with room between them."""
    rows: dict[int, list[str]] = {}
    for name, rod in standing.uprights().items():
        rows.setdefault(round(rod.middle[1 - axis] / usual_value("sway-reach")), []).append(name)
    for row in rows.values():
        row.sort(key=lambda name: (standing.rods[name].middle[axis], name))
        for one, two in pairwise(row):
            if standing.rods[two].low[axis] - standing.rods[one].high[axis] > usual_value("sway-reach"):
                yield one, two


def _braces(standing: Structure, axis: int) -> _Change | None:
    """A strip screwed flat on the outermost uprights of a face, from low on one to high on the other."""
    other, rods, more = 1 - axis, {}, []
    wide, thick = _strip()
    for plane, way in _planes(standing, axis):
        held = list(_at_plane(standing, axis, plane, way))
        if len(held) < 2:
            return None
        left, right = standing.rods[held[0]], standing.rods[held[-1]]
        start, end = list(left.middle), list(right.middle)
        start[other] = end[other] = plane + way * thick / 2
        start[Axis.UP] = left.low[Axis.UP] + wide
        end[Axis.UP] = right.high[Axis.UP] - wide
        one, two = (start[0], start[1], start[2]), (end[0], end[1], end[2])
        along = unit(minus(two, one))
        name = f"a brace at {plane:.0f}"
        ways = (along, cross(UNITS[other], along), UNITS[other])
        low = [min(pair) for pair in zip(one, two, strict=True)]
        high = [max(pair) for pair in zip(one, two, strict=True)]
        rods[name] = _rod(low, high, ways, (math.dist(one, two), wide, thick))
        for upright, rod, at in ((held[0], left, one), (held[-1], right, two)):
            first, last = list(at), list(at)
            first[other] = last[other] = plane
            first[axis], last[axis] = rod.low[axis], rod.high[axis]
            first[Axis.UP] -= wide / 2
            last[Axis.UP] += wide / 2
            bounds = ((first[0], first[1], first[2]), (last[0], last[1], last[2]))
            more.append(of_screws((upright, name), other, bounds, 2, standing.end))
    return rods, more


def _moved(standing: Structure, sway: Sway, budget: Budget) -> float | None:
    try:
        return sways(standing, [sway.axis], sway.push, budget)[0].moved
    except (TooLargeError, UnsolvedError):
        return None


def remedies(
    review: Review, piece: Piece, standing: Structure, sway: Sway, budget: Budget
) -> tuple[Remedy, ...]:
    """The changes that help, what helps most first; those that there is no work left for are not tried."""
    across = sway.axis == Axis.ACROSS
    tried: list[tuple[str, Structure | None]] = []
    for do, change in (
        (
            "screw a back panel over its whole back" if across else "screw a panel over each end",
            _panels(standing, sway.axis),
        ),
        ("glue in a stretcher low down between its legs", _stretchers(standing, sway.axis)),
        (
            "screw a diagonal brace over its back" if across else "screw a diagonal brace over each end",
            _braces(standing, sway.axis),
        ),
    ):
        if change is not None:
            tried.append((do, standing.with_more(*change)))
    if not all(tie.glued for tie in standing.ties):
        tried.append(("glue its joints as well", structure(review, piece, standing.end, glued=True)))
    found = []
    for do, changed in tried:
        then = _moved(changed, sway, budget) if changed is not None else None
        if then is not None and (sway.moved is None or then < sway.moved):
            found.append(Remedy(do, then))
    return tuple(sorted(found, key=lambda each: each.moved))
