"""Who owns which wood where one part is let into another: a housing as cells in space.

Each cell is given by half-spaces; together they fill the room that both parts claim. What the plan leaves
open (how thick a tenon, how many dovetails) is drawn as it is usually made.
"""

from __future__ import annotations

import math

from reviewer.model.plan import HousingKind
from reviewer.records import NamedTuple
from reviewer.reference.usual_values import usual_value
from reviewer.setting_out.result import Overlap
from reviewer.setting_out.solid import Solid, Vector
from reviewer.workshop.housing import Housed

SPLINE = ""
#: More fingers than this would be too fine to draw.
_MOST_FINGERS = 9


class HalfSpace(NamedTuple):
    """Where ``normal · x <= offset``, mm."""

    normal: Vector
    offset: float


class Cell(NamedTuple):
    """Some of the shared room: whose wood fills it, and between which planes it lies."""

    part: str  # SPLINE: a piece of its own
    within: tuple[HalfSpace, ...]


def _unit(axis: int, sign: float = 1.0) -> Vector:
    return tuple(sign if each == axis else 0.0 for each in range(3))  # type: ignore[return-value]


def _between(axis: int, low: float, high: float) -> tuple[HalfSpace, HalfSpace]:
    return HalfSpace(_unit(axis, -1.0), -low), HalfSpace(_unit(axis), high)


def _layers(inner: str, outer: str, axis: int, middle: float, half: float) -> tuple[Cell, ...]:
    """The inner part between two layers of the outer one."""
    return (
        Cell(inner, _between(axis, middle - half, middle + half)),
        Cell(outer, (HalfSpace(_unit(axis), middle - half),)),
        Cell(outer, (HalfSpace(_unit(axis, -1.0), -(middle + half)),)),
    )


def _inner_and_outer(solid: Solid, overlap: Overlap, axis: int) -> tuple[float, float]:
    """Where the shared room begins on the side that a part comes from, and where it ends."""
    if solid.low[axis] < overlap.low[axis] - 1e-6:
        return overlap.low[axis], overlap.high[axis]
    return overlap.high[axis], overlap.low[axis]


def _mitred(made: Housed, left: Solid, right: Solid, spline: bool) -> tuple[Cell, ...]:
    overlap = made.joint.overlap
    assert overlap is not None
    ways = _mitre_axes(made, left, right)
    if ways is None:
        return (Cell(made.part, ()),)
    one, two = ways
    # The cut runs from the inner corner, where both parts go on, to the outer one.
    in_one, out_one = _inner_and_outer(left, overlap, one)
    in_two, out_two = _inner_and_outer(right, overlap, two)
    # The corner at the inner end of the left part and the outer end of the right one is left wood.
    normal = [0.0, 0.0, 0.0]
    normal[one], normal[two] = out_two - in_two, -(out_one - in_one)
    size = math.hypot(normal[one], normal[two]) or 1.0
    way = (normal[0] / size, normal[1] / size, normal[2] / size)
    at = way[one] * in_one + way[two] * in_two
    inside = way[one] * in_one + way[two] * out_two - at
    if inside > 0:
        way, at = (-way[0], -way[1], -way[2]), -at
    back = (-way[0], -way[1], -way[2])
    cells = (Cell(left.name, (HalfSpace(way, at),)), Cell(right.name, (HalfSpace(back, -at),)))
    if not spline:
        return cells
    thin = min(left.thickness, right.thickness) * usual_value("spline-share")
    run = [0.0, 0.0, 0.0]
    run[one], run[two] = (out_one - in_one) / size, (out_two - in_two) / size
    along = (run[0], run[1], run[2])
    middle = along[one] * (in_one + out_one) / 2 + along[two] * (in_two + out_two) / 2
    reach = size / 4
    key = (
        HalfSpace(along, middle + thin / 2),
        HalfSpace((-along[0], -along[1], -along[2]), -(middle - thin / 2)),
        HalfSpace(way, at + reach),
        HalfSpace(back, -at + reach),
    )
    return (Cell(SPLINE, key), *cells)


def _mitre_axes(made: Housed, left: Solid, right: Solid) -> tuple[int, int] | None:
    """The axes of the left and the right part that a corner joint turns between."""
    if left.long != right.long:
        return int(left.long), int(right.long)
    if left.thick != right.thick:  # two boards edge to edge along a corner
        return int(right.thick), int(left.thick)
    return None


def _fingers(made: Housed, left: Solid, right: Solid, slanted: bool) -> tuple[Cell, ...]:
    """Tails of the left part between pins of the right one, or straight fingers in turn."""
    overlap = made.joint.overlap
    assert overlap is not None
    ways = _mitre_axes(made, left, right)
    if ways is None:
        return (Cell(made.part, ()),)
    along = ways[0]
    (run,) = (axis for axis in range(3) if axis not in ways)
    low, high = overlap.low[run], overlap.high[run]
    wide = high - low
    usual = max(left.thickness, right.thickness) * (1.0 if slanted else 0.75)
    count = min(_MOST_FINGERS, max(3, 2 * round((wide / max(usual, 1.0) - 1) / 2) + 1))
    step = wide / count
    slope = usual_value("dovetail-slope") if slanted else 0.0
    deep = overlap.high[along] - overlap.low[along]
    # A tail is widest at the end of its board.
    end_is_high = left.low[along] < overlap.low[along] - 1e-6
    middle = (overlap.low[along] + overlap.high[along]) / 2
    lean = min(slope, 0.8 * step / max(deep, 1e-6)) * (1.0 if end_is_high else -1.0)
    cells = []
    for place in range(count):
        tail = place % 2 == 1
        sign = lean if tail else -lean
        planes = []
        if place > 0:
            start = low + place * step
            planes.append(_leaning(run, along, -1.0, -start, -sign, middle))
        if place < count - 1:
            end = low + (place + 1) * step
            planes.append(_leaning(run, along, 1.0, end, -sign, middle))
        cells.append(Cell(left.name if tail else right.name, tuple(planes)))
    return tuple(cells)


def _leaning(run: int, along: int, sign: float, offset: float, lean: float, middle: float) -> HalfSpace:
    """``sign * x_run + lean * (x_along - middle) <= offset``."""
    normal = [0.0, 0.0, 0.0]
    normal[run], normal[along] = sign, lean
    return HalfSpace((normal[0], normal[1], normal[2]), offset + lean * middle)


def cells_of(made: Housed, solids: dict[str, Solid], thickness: float | None) -> tuple[Cell, ...]:
    """The cells of a joint's housing. ``thickness`` is that of a tenon, mm, where the plan states one."""
    overlap = made.joint.overlap
    housing = made.joint.join.housing
    assert overlap is not None
    assert housing is not None
    left, right = solids[made.joint.left], solids[made.joint.right]
    part, into = solids[made.part], solids[made.into]
    kind: HousingKind = housing.kind
    if kind in ("mitre", "splined mitre"):
        return _mitred(made, left, right, spline=kind == "splined mitre")
    if kind in ("dovetails", "box joint"):
        return _fingers(made, left, right, slanted=kind == "dovetails")
    low, high = overlap.low[made.axis], overlap.high[made.axis]
    if kind == "half lap":
        over = part.centre[made.axis] >= into.centre[made.axis]
        upper, lower = (part, into) if over else (into, part)
        half = (low + high) / 2
        return (
            Cell(lower.name, (HalfSpace(_unit(made.axis), half),)),
            Cell(upper.name, (HalfSpace(_unit(made.axis, -1.0), -half),)),
        )
    third = usual_value("tenon-share") / 2
    if kind == "bridle":
        return _layers(part.name, into.name, made.axis, (low + high) / 2, (high - low) * third)
    if kind in ("mortise and tenon", "tongue and groove"):
        across = part.thick if part.thick != made.axis else part.wide
        near, far = overlap.low[across], overlap.high[across]
        half = min((thickness or 0.0) / 2 or (far - near) * third, (far - near) / 2)
        return _layers(part.name, into.name, int(across), (near + far) / 2, half)
    return (Cell(part.name, ()),)
