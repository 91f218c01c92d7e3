"""Cutting layouts for sheets: which to buy, and whether those at hand give all pieces.

Every cut runs from edge to edge, as a track saw or a table saw makes it, and turns ``kerf`` mm to
dust, by the same rule as for boards (:mod:`reviewer.workshop.cutting`): between two pieces there is a
kerf; beyond the last one the blade takes its kerf from what is left, or all of it. ``trim`` mm are
lost along every edge of a sheet.

``length`` is always along the sheet's length, which is the way its face grain runs; a piece keeps
that direction unless it may be turned.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import replace
from typing import Literal

from reviewer.records import NamedTuple
from reviewer.units import TOLERANCE_MM
from reviewer.workshop.bar_search import search_layout
from reviewer.workshop.cutting import TICKS_PER_MM, TICKS_PER_MONEY, check_lengths, in_ticks
from reviewer.workshop.few_sheets import Few
from reviewer.workshop.outcomes import Addition, CannotFit, Chosen, Fits, Proof, Undecided
from reviewer.workshop.quick_layouts import BarKind
from reviewer.workshop.sheet_layout import (
    LaidSheet,
    Offcut,
    PlacedPiece,
    Sheet,
    SheetCut,
    SheetLayout,
    SheetPiece,
    Tree,
)
from reviewer.workshop.sheet_search import Packed, Region, Shape, SheetKind, SheetTask

_BOUND_STEPS = 20_000


SheetsChosen = Chosen[SheetLayout]
SheetsFit = Fits[SheetLayout, Sheet]
SheetsCannotFit = CannotFit[SheetLayout, SheetPiece, Sheet]
SheetsUndecided = Undecided[SheetLayout, SheetPiece, Sheet]


class _Join(NamedTuple):
    """A cut whose parts are being looked at; ``parted``: something is left beyond it."""

    how: Literal["crosscut", "rip"]
    at: float
    there: Offcut
    parted: bool


class _Known(NamedTuple):
    """What the search knows at its end: a layout (None: none found), whether that is settled, a bound."""

    packed: Packed | None
    proven: bool
    cost_at_least: int
    nearest: Packed


class _Bench:
    """The pieces grouped by size and the sheets as the search takes them."""

    def __init__(
        self, pieces: Sequence[SheetPiece], sheets: Sequence[Sheet], kerf: float, trim: float
    ) -> None:
        check_lengths("a piece", (size for piece in pieces for size in piece[1:3]))
        check_lengths("a sheet", (size for sheet in sheets for size in (sheet.length, sheet.width)))
        if not (math.isfinite(kerf) and math.isfinite(trim) and kerf >= 0 and trim >= 0):
            raise ValueError(f"kerf and trim cannot be below nothing: {kerf!r} mm, {trim!r} mm")
        self.kerf, self.trim, self.sheets = kerf, trim, tuple(sheets)
        self.blade = in_ticks(kerf)
        groups: dict[tuple[int, int, bool], list[SheetPiece]] = {}
        for piece in pieces:
            key = in_ticks(piece.length), in_ticks(piece.width), piece.turns
            groups.setdefault(key, []).append(piece)
        self.groups = {key: groups[key] for key in sorted(groups, key=lambda k: (-k[0] * k[1], k))}
        self.shapes = [
            Shape(length + self.blade, width + self.blade, turns, len(group))
            for (length, width, turns), group in self.groups.items()
        ]

    def usable(self, sheet: Sheet) -> tuple[float, float]:
        """Length and width within the trimmed edges, mm; (0, 0) when trimming leaves nothing."""
        length, width = sheet.length - 2 * self.trim, sheet.width - 2 * self.trim
        return (length, width) if length > 0 and width > 0 else (0.0, 0.0)

    def room(self, sheet: Sheet) -> tuple[int, int]:
        """What the shapes (each with one kerf) may come to both ways; (0, 0) for nothing."""
        length, width = self.usable(sheet)
        if not length:
            return 0, 0
        spare = self.blade + in_ticks(TOLERANCE_MM)
        return in_ticks(length) + spare, in_ticks(width) + spare

    # ------------------------------------------------------------ bounds

    def relaxed(self, kinds: Sequence[BarKind]) -> tuple[bool, int]:
        """Whether pieces and sheets as mere areas show that it cannot be, and the least it can cost."""
        areas: dict[int, int] = {}
        for shape in self.shapes:
            areas[shape.length * shape.width] = areas.get(shape.length * shape.width, 0) + shape.number
        sizes = sorted(areas, reverse=True)
        found = search_layout(sizes, [areas[size] for size in sizes], kinds, _BOUND_STEPS)
        return found.uses is None and found.proven, found.cost_at_least

    def side_by_side(self, axis: int) -> tuple[list[tuple[int, int]], list[int]]:
        """Shapes of which no two lie behind each other on ``axis`` of any sheet: (size across, shape).

        Of such pieces each needs a strip of its own across the sheet, so that they are boards of a kind
        to be cut from the sheet's other side. Also that other side of each sheet.
        """
        rooms = [self.room(sheet) for sheet in self.sheets]
        longest = max((room[axis] for room in rooms), default=0)
        found = []
        for index, shape in enumerate(self.shapes):
            ways = [
                way for way in shape.ways() if any(way[0] <= room[0] and way[1] <= room[1] for room in rooms)
            ]
            if ways and all(2 * way[axis] > longest for way in ways):
                found.append((min(way[1 - axis] for way in ways), index))
        return sorted(found, reverse=True), [room[1 - axis] for room in rooms]

    def strips(self, axis: int, costs: Sequence[BarKind]) -> tuple[bool, int]:
        """As :meth:`relaxed`, of the pieces that must lie side by side."""
        found, across = self.side_by_side(axis)
        numbers: dict[int, int] = {}
        for size, index in found:
            numbers[size] = numbers.get(size, 0) + self.shapes[index].number
        kinds = [kind._replace(capacity=room) for kind, room in zip(costs, across, strict=True)]
        real = [kind for kind in kinds if kind.capacity]
        if not numbers or not real:
            return False, 0
        sizes = sorted(numbers, reverse=True)
        layout = search_layout(sizes, [numbers[size] for size in sizes], real, _BOUND_STEPS)
        return layout.uses is None and layout.proven, layout.cost_at_least

    # ------------------------------------------------------------ search

    def search(self, costs: Sequence[int], free: int = 0) -> _Known:
        """The search over all sheets; the first ``free`` of them cost nothing and are not counted."""
        nothing = Packed((), tuple(shape.number for shape in self.shapes), 0)
        if not self.shapes:
            return _Known(Packed((), (), 0), True, 0, nothing)
        rooms = [self.room(sheet) for sheet in self.sheets]
        places = [place for place, room in enumerate(rooms) if room[0] and self.sheets[place].count != 0]
        base = 2 * sum(shape.number for shape in self.shapes) + 1
        costs = [0 if place < free else cost for place, cost in enumerate(costs)]
        unit = math.gcd(*costs) or 1
        kinds = [
            SheetKind(*rooms[place], costs[place] // unit * base + (place >= free), self.sheets[place].count)
            for place in places
        ]
        areas = [
            BarKind(rooms[place][0] * rooms[place][1], costs[place], place >= free, self.sheets[place].count)
            for place in places
        ]
        if self.too_big():
            task = SheetTask(self.shapes, kinds)
            if kinds:
                task.quick(0)
            return _Known(None, True, 0, self._original(task.nearest or nothing, places))
        lines = [
            BarKind(0, 0 if place < free else cost, place >= free, self.sheets[place].count)
            for place, cost in enumerate(costs)
        ]
        bounds = [self.relaxed(areas), self.strips(0, lines), self.strips(1, lines)]
        hopeless = any(bound[0] for bound in bounds)
        at_least = max(bound[1] for bound in bounds)
        task = SheetTask(self.shapes, kinds)
        enough = at_least // unit * base

        def settled() -> bool:
            return hopeless or (task.best is not None and task.best.weight // base * unit <= at_least)

        task.quick(enough, rounds=1)
        proven = settled()
        if not proven and Few.suits(self.shapes):
            answer = Few(self.shapes, kinds).run()
            proven = answer is not None
            if isinstance(answer, Packed):
                task.offer(answer)
        if not proven:
            task.quick(enough)
            proven = settled()
        best = None if task.best is None else self._original(task.best, places)
        cost = 0 if best is None else best.weight // base * unit
        return _Known(
            best,
            proven,
            cost if proven else min(cost, at_least),
            self._original(task.nearest or nothing, places),
        )

    @staticmethod
    def _original(packed: Packed, places: Sequence[int]) -> Packed:
        return replace(packed, sheets=tuple((places[kind], region) for kind, region in packed.sheets))

    # ------------------------------------------------------------ layouts

    def layout(self, packed: Packed) -> tuple[SheetLayout, tuple[SheetPiece, ...]]:
        """The regions with the pieces' names put in, plan order, and the pieces that are left."""
        queues = [iter(group) for group in self.groups.values()]
        made = []
        for kind, region in packed.sheets:
            sheet = self.sheets[kind]
            tree = self._tree(region, queues, sheet)
            made.append(LaidSheet(sheet.length, sheet.width, sheet.price, tree))
        left = tuple(piece for queue in queues for piece in queue)
        return SheetLayout(tuple(made), self.kerf, self.trim), left

    def _tree(self, region: Region, queues: Sequence[Iterator[SheetPiece]], sheet: Sheet) -> Tree:
        """The region as cuts and pieces in mm. Without recursion: a long strip is cut many times over."""
        waiting: list[tuple[Region, Offcut] | _Join] = [
            (region, Offcut(self.trim, self.trim, *self.usable(sheet)))
        ]
        done: list[Tree] = []
        while waiting:
            now = waiting.pop()
            if isinstance(now, _Join):
                second = done.pop() if now.parted else None
                done.append(SheetCut(now.how, now.at, *now.there, done.pop(), second))
                continue
            here, there = now
            if here.shape is not None:
                piece = next(queues[here.shape])
                lying = (piece.width, piece.length) if here.turned else (piece.length, piece.width)
                done.append(PlacedPiece(piece.name, there.x, there.y, *lying, here.turned))
            elif here.parts is None:
                done.append(there)
            else:
                waiting.extend(self._sawn(here, here.parts, there))
        return done.pop()

    def _sawn(
        self, region: Region, parts: tuple[Region, Region], there: Offcut
    ) -> list[tuple[Region, Offcut] | _Join]:
        """What is still to do about a cut region: join its parts last, look at the near one first."""
        x, y, length, width = there
        near = (region.at - self.blade) / TICKS_PER_MM
        whole = length if region.axis == 0 else width
        if whole - near <= TOLERANCE_MM:  # the near part ends with the sheet: there is nothing to cut
            return [(parts[0], there)]
        start = near + self.kerf
        if region.axis == 0:
            join = _Join("crosscut", x + near, there, whole - start > TOLERANCE_MM)
            rooms = Offcut(x, y, near, width), Offcut(x + start, y, length - start, width)
        else:
            join = _Join("rip", y + near, there, whole - start > TOLERANCE_MM)
            rooms = Offcut(x, y, length, near), Offcut(x, y + start, length, width - start)
        far = [(parts[1], rooms[1])] if join.parted else []
        return [join, *far, (parts[0], rooms[0])]

    # ------------------------------------------------------------ proofs

    def too_big(self) -> Proof[SheetPiece] | None:
        rooms = [self.room(sheet) for sheet in self.sheets if sheet.count != 0]
        rooms = [room for room in rooms if room[0]]
        if not rooms:
            return None
        pieces = tuple(
            piece
            for shape, group in zip(self.shapes, self.groups.values(), strict=True)
            if not any(way[0] <= room[0] and way[1] <= room[1] for way in shape.ways() for room in rooms)
            for piece in group
        )
        if not pieces:
            return None
        usable = [self.usable(sheet) for sheet in self.sheets if sheet.count != 0]
        length, width = max(room[0] for room in usable), max(room[1] for room in usable)
        first = pieces[0]
        sides = (first.length, first.width)
        if first.turns and length >= width:
            sides = (max(sides), min(sides))
        if sides[1] > width + TOLERANCE_MM and sides[0] <= length + TOLERANCE_MM:
            return Proof("too big", pieces, sides[1], width)
        return Proof("too big", pieces, sides[0], length)

    def material(self, by: Literal["material", "every way"]) -> Proof[SheetPiece]:
        pieces = tuple(piece for group in self.groups.values() for piece in group)
        needed = math.fsum(piece.length * piece.width for piece in pieces)
        there = math.fsum(math.prod(self.usable(sheet)) * (sheet.count or 0) for sheet in self.sheets)
        return Proof(by, pieces, needed, there)

    def number(self) -> Proof[SheetPiece] | None:
        """Long (or wide) pieces of which the sheets give too few side by side, if there are any."""
        groups = list(self.groups.values())
        worst: Proof[SheetPiece] | None = None
        for axis in (0, 1):
            found, across = self.side_by_side(axis)
            pieces: list[SheetPiece] = []
            for size, index in found:
                pieces.extend(groups[index])
                available = sum(
                    room // size * (sheet.count or 0) for room, sheet in zip(across, self.sheets, strict=True)
                )
                short = len(pieces) - available
                if short > 0 and (worst is None or short > worst.needed - worst.available):
                    worst = Proof("number", tuple(pieces), len(pieces), available)
        return worst

    def proof(self, known: _Known) -> Proof[SheetPiece] | None:
        """The simplest reason why it cannot be, or None when there is none yet."""
        too_big = self.too_big()
        if too_big:
            return too_big
        if all(sheet.count is not None for sheet in self.sheets):
            material = self.material("material")
            if material.needed > material.available + TOLERANCE_MM * sum(
                sum(self.usable(sheet)) * (sheet.count or 0) for sheet in self.sheets
            ):
                return material
            number = self.number()
            if number:
                return number
        return self.material("every way") if known.proven else None


def _areas(sheets: Sequence[Sheet]) -> list[int]:
    """Areas as whole numbers, a hundredth of a mm² each."""
    return [round(sheet.length * sheet.width * 100) for sheet in sheets]


def _numbers(sheets: Sequence[Sheet], packed: Packed) -> list[int]:
    numbers = [0] * len(sheets)
    for kind, _ in packed.sheets:
        numbers[kind] += 1
    return numbers


def _untouched(sheets: Sequence[Sheet], numbers: Sequence[int]) -> tuple[Sheet, ...]:
    return tuple(
        sheet if sheet.count is None else replace(sheet, count=sheet.count - number)
        for sheet, number in zip(sheets, numbers, strict=True)
        if sheet.count is None or sheet.count > number
    )


def choose_sheets(
    pieces: Sequence[SheetPiece], offers: Sequence[Sheet], kerf: float, trim: float = 0.0
) -> SheetsChosen | SheetsCannotFit | SheetsUndecided:
    """The cheapest sheets that give all pieces, and how to cut them.

    Cheapest by price when every offer has one, else the least area bought; then the fewest sheets.
    Proven for a handful of pieces, or where a bound says that nothing is cheaper; else the best of
    several methods. ``kerf`` and ``trim`` are mm. Raises ValueError for a size that is none.
    """
    bench = _Bench(pieces, offers, kerf, trim)
    by_price = all(sheet.price is not None for sheet in offers)
    prices = [round((sheet.price or 0.0) * TICKS_PER_MONEY) for sheet in offers]
    known = bench.search(prices if by_price else _areas(offers))
    if known.packed is not None:
        layout, _ = bench.layout(known.packed)
        at_least = known.cost_at_least / (TICKS_PER_MONEY if by_price else 100)
        return Chosen(layout, known.proven, at_least, "price" if by_price else "area")
    best, left = bench.layout(known.nearest)
    proof = bench.proof(known)
    return CannotFit(proof, best, left, None) if proof else Undecided(best, left, None)


def fit_in_sheets(
    pieces: Sequence[SheetPiece],
    sheets: Sequence[Sheet],
    kerf: float,
    trim: float = 0.0,
    offers: Sequence[Sheet] = (),
) -> SheetsFit | SheetsCannotFit | SheetsUndecided:
    """Whether the sheets give all pieces, with the layout or with the proof that there is none.

    When it does not fit, ``offers`` are what may be added. ``kerf`` and ``trim`` are mm. Raises
    ValueError for a size that is none.
    """
    bench = _Bench(pieces, sheets, kerf, trim)
    known = bench.search(_areas(sheets))
    if known.packed is not None:
        return Fits(bench.layout(known.packed)[0], _untouched(sheets, _numbers(sheets, known.packed)))
    best, left = bench.layout(known.nearest)
    proof = bench.proof(known)
    addition = None
    if offers:
        wider = _Bench(pieces, [*sheets, *offers], kerf, trim)
        more = wider.search(_areas(wider.sheets), free=len(sheets))
        if more.packed is not None:
            layout, numbers = wider.layout(more.packed)[0], _numbers(wider.sheets, more.packed)
            there, bought = numbers[: len(sheets)], numbers[len(sheets) :]
            if not any(bought):  # the second look found what the first did not
                return Fits(layout, _untouched(sheets, there))
            buy = tuple(replace(sheet, count=n) for sheet, n in zip(offers, bought, strict=True) if n)
            addition = Addition(buy, layout, more.proven)
    return CannotFit(proof, best, left, addition) if proof else Undecided(best, left, addition)
