"""Gaps that wood swells into: between the boards of a row, and around what moves in its opening.

All of it is in mm, of square boards, closed. What grows is told apart from where it grows to: a board that
is fixed grows at both edges alike, a hinged door away from its hinges.
"""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections.abc import Callable, Iterator

from reviewer.limits import Limits
from reviewer.model.plan import Axis, Moving, Plan, Stock
from reviewer.records import NamedTuple
from reviewer.reference.materials import material
from reviewer.setting_out.result import SettingOut
from reviewer.setting_out.solid import Solid
from reviewer.units import TOLERANCE_MM
from reviewer.workshop.wood_movement import Season, change_on, made_up, season

#: By how much a board grows on an axis, mm.
Growth = Callable[[Stock, Solid, int], float]
#: A door of more pieces of solid wood than this is not looked at.
MOST_PIECES = 200


class Grower:
    """What boards grow by: from when they are made up, and from the dry end of the year."""

    def __init__(self, limits: Limits, year: Season) -> None:
        self.limits, self.year = limits, year

    def start(self, stock: Stock) -> float:
        """The moisture at which a stock is made up, percent."""
        return made_up(stock, self.limits, self.year).moisture.amount

    def driest(self, stock: Stock) -> float:
        """A stated moisture is taken at its word; else the plan may be built in the dry months; percent."""
        start = self.start(stock)
        return start if stock.moisture is not None else min(start, self.year.dry.amount)

    def usual(self, stock: Stock, solid: Solid, axis: int) -> float:
        """What a board grows on an axis until the humid season, mm."""
        return self._from(self.start(stock), stock, solid, axis)

    def most(self, stock: Stock, solid: Solid, axis: int) -> float:
        """The same when it is made up at the dry end of the year, mm."""
        return self._from(self.driest(stock), stock, solid, axis)

    def _from(self, start: float, stock: Stock, solid: Solid, axis: int) -> float:
        humid = self.year.humid.amount
        return change_on(stock, solid, axis, start, humid) if start < humid else 0.0


class RowGap(NamedTuple):
    """Two neighbours of a row that stand apart."""

    row: str
    first: str
    second: str
    axis: int
    gap: float


class Clearance(NamedTuple):
    """The room that something which moves has on an axis, and what grows into it.

    ``parts`` grow one behind the other, ``beside`` are the parts at the two ends of the room, ``gap`` is what
    both sides together have. ``theirs`` are neighbours that move too, each with the share of its growth that
    comes this way. A hinged edge stays where it is: only the other one has room, and ``held`` is true.
    """

    moving: Moving
    axis: int
    parts: tuple[str, ...]
    beside: tuple[str, ...]
    gap: float
    theirs: tuple[tuple[tuple[str, ...], float], ...]
    held: bool


def row_gaps(plan: Plan, setting: SettingOut) -> Iterator[RowGap]:
    """The gaps between neighbours of a row whose grain runs along the gap, in the plan's order."""
    for name, box in plan.boxes.items():
        if box.kind != "row":
            continue
        number = 1
        while (second := setting.solids.get(f"{name}.{number + 1}")) is not None:
            first = setting.solids.get(f"{name}.{number}")
            number += 1
            if first is None or not (first.square and second.square) or first.long != second.long:
                continue
            found = _between(first, second)
            if found is not None and found[0] != first.long:
                yield RowGap(name, first.name, second.name, *found)


def closing_rows(plan: Plan, setting: SettingOut, limits: Limits) -> tuple[RowGap, ...]:
    """The gaps of rows that the boards beside them may fill: half of what each of the two grows at most."""
    grower = Grower(limits, season(plan, limits))

    def grown(name: str, axis: int) -> float:
        return grower.most(plan.stocks[plan.parts[name].stock], setting.solids[name], axis) / 2

    found = []
    for gap in row_gaps(plan, setting):
        growth = grown(gap.first, gap.axis) + grown(gap.second, gap.axis)
        if growth > 0 and gap.gap - growth < -1e-9:
            found.append(gap)
    return tuple(found)


def _between(first: Solid, second: Solid) -> tuple[int, float] | None:
    """The axis on which two solids stand apart, and how far; None where they do on none or on several."""
    apart = []
    for axis in range(3):
        gap = max(second.low[axis] - first.high[axis], first.low[axis] - second.high[axis])
        if gap > TOLERANCE_MM:
            apart.append((axis, gap))
    return apart[0] if len(apart) == 1 else None


class _Line(NamedTuple):
    """Pieces of one moving thing, one behind the other on an axis, and the box that they fill there."""

    moving: Moving
    axis: int
    parts: tuple[str, ...]
    growth: float
    low: float
    high: float
    at: Solid  # whose place square to the axis the line has


def clearances(
    plan: Plan, setting: SettingOut, floating: frozenset[str], growth: Growth, least: float
) -> Iterator[Clearance]:
    """The narrowest room of each thing that moves, on each axis on which it could bind.

    ``floating`` parts have room of their own in a frame. Only room that growth could fill, but for ``least``,
    is looked for.
    """
    lines = [line for moving in plan.movings for line in _lines(plan, setting, moving, floating, growth)]
    if not lines:
        return
    finder = _Finder(setting, lines, least)
    found: dict[tuple[str, int], tuple[float, Clearance]] = {}
    for line in lines:
        clearance = finder.clearance(line)
        if clearance is None:
            continue
        left = clearance.gap - line.growth
        key = (line.moving.name, line.axis)
        if key not in found or left < found[key][0] - 1e-9:
            found[key] = left, clearance
    for _, clearance in found.values():
        yield clearance


def _axes(moving: Moving, solids: list[Solid]) -> tuple[int, ...]:
    """The axes on which something that moves can bind: those square to its way."""
    if moving.kind == "slides":
        return (Axis.ACROSS, Axis.UP)
    if moving.kind == "lifts":
        return (Axis.ACROSS, Axis.DEEP)
    sizes = [max(s.high[axis] for s in solids) - min(s.low[axis] for s in solids) for axis in range(3)]
    thin = min(range(3), key=lambda axis: (sizes[axis], axis))
    return tuple(axis for axis in range(3) if axis != thin)


def _lines(
    plan: Plan, setting: SettingOut, moving: Moving, floating: frozenset[str], growth: Growth
) -> Iterator[_Line]:
    solids = [setting.solids[name] for name in moving.parts if name in setting.solids]
    growing = [
        solid
        for solid in solids
        if material(plan.stocks[plan.parts[solid.name].stock].material).moves and solid.name not in floating
    ]
    if not growing or len(growing) > MOST_PIECES:
        return
    for axis in _axes(moving, solids):
        others = [other for other in range(3) if other != axis]
        for solid in growing:
            middle = [(solid.low[other] + solid.high[other]) / 2 for other in others]
            here = [
                each
                for each in growing
                if all(each.low[o] <= m <= each.high[o] for o, m in zip(others, middle, strict=True))
            ]
            grows = [growth(plan.stocks[plan.parts[each.name].stock], each, axis) for each in here]
            if sum(grows) > 0:
                parts = tuple(each.name for each, amount in zip(here, grows, strict=True) if amount > 0)
                low, high = min(each.low[axis] for each in here), max(each.high[axis] for each in here)
                yield _Line(moving, axis, parts, sum(grows), low, high, solid)


class _Finder:
    """Finds what is beside a line: every solid by its faces on each axis, in order."""

    def __init__(self, setting: SettingOut, lines: list[_Line], least: float) -> None:
        self.solids = list(setting.solids.values())
        self.most, self.least = max(line.growth for line in lines), least
        self.line_of = {(name, line.axis): line for line in reversed(lines) for name in line.parts}
        self._sorted: dict[tuple[int, bool], tuple[list[float], list[Solid]]] = {}

    def clearance(self, line: _Line) -> Clearance | None:
        hinge = line.moving.hinge
        held = hinge is not None and hinge[0] == line.axis
        gap, beside, theirs = 0.0, [], []
        for side in (False, True):
            if held and hinge is not None and (hinge[1] == "high") == side:
                continue  # the hinges keep it there
            nearest = self._nearest(line, side)
            if nearest is None:
                return None
            gap += nearest[0]
            beside.append(nearest[1].name)
            other = self.line_of.get((nearest[1].name, line.axis))
            if other is not None and (share := self._share(other, not side)) > 0:
                theirs.append((other.parts, share))
        return Clearance(line.moving, line.axis, line.parts, tuple(beside), gap, tuple(theirs), held)

    def _share(self, line: _Line, side: bool) -> float:
        """How much of what a thing grows comes to one side: all away from its hinges, else half."""
        hinge = line.moving.hinge
        if hinge is None or hinge[0] != line.axis:
            return 0.5
        return 0.0 if (hinge[1] == "high") == side else 1.0

    def _by_face(self, axis: int, side: bool) -> tuple[list[float], list[Solid]]:
        key = axis, side
        if key not in self._sorted:
            faces = sorted(
                ((solid.low[axis] if side else solid.high[axis]), number)
                for number, solid in enumerate(self.solids)
            )
            self._sorted[key] = [place for place, _ in faces], [self.solids[number] for _, number in faces]
        return self._sorted[key]

    def _nearest(self, line: _Line, side: bool) -> tuple[float, Solid] | None:
        """The nearest part on a side (true: the high one) that is not of the same thing, and how far."""
        axis = line.axis
        others = [other for other in range(3) if other != axis]
        places, solids = self._by_face(axis, side)
        reach = line.growth + self.most + self.least
        if side:
            first = bisect_left(places, line.high - TOLERANCE_MM)
            last = bisect_right(places, line.high + reach)
        else:
            first = bisect_left(places, line.low - reach)
            last = bisect_right(places, line.low + TOLERANCE_MM)
        best: tuple[float, Solid] | None = None
        mine = set(line.moving.parts)
        for place, solid in zip(places[first:last], solids[first:last], strict=True):
            gap = max(0.0, place - line.high if side else line.low - place)
            if (best is not None and gap >= best[0]) or solid.name in mine:
                continue
            if all(
                min(solid.high[o], line.at.high[o]) - max(solid.low[o], line.at.low[o]) > TOLERANCE_MM
                for o in others
            ):
                best = gap, solid
        return best
