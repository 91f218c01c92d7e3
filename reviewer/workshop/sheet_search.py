"""The search behind the sheet layouts: edge-to-edge (guillotine) cuts, whole numbers only.

Every size here already carries one kerf in both directions, and so does the sheet; pieces then lie
side by side without gaps. Quick methods put piece after piece into the free region that suits it
best. A handful of pieces is also gone through completely (:mod:`reviewer.workshop.few_sheets`).
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from itertools import product
from typing import Literal

from reviewer.records import NamedTuple
from reviewer.workshop.pattern_bounds import Pattern

_MANY = 240
_KEPT_REGIONS = 40
_QUICK_EFFORT = 100_000  # pieces times sheets looked at, more or less

Axis = Literal[0, 1]  # 0: a crosscut, square to the sheet's length; 1: a rip, along it
Split = Literal["crosscut", "rip", "large", "even"]
Choice = Literal["area", "side"]


class Shape(NamedTuple):
    """Pieces that are alike: length along the sheet, width, whether they may be turned, how many."""

    length: int
    width: int
    turns: bool
    number: int

    def ways(self) -> tuple[tuple[int, int, bool], ...]:
        """Length, width and turned, for each way it may lie."""
        lying = ((self.length, self.width, False),)
        if self.turns and self.length != self.width:
            return (*lying, (self.width, self.length, True))
        return lying


class SheetKind(NamedTuple):
    """Sheets of one kind: inside size, weight in the choice, how many there are (None: any)."""

    length: int
    width: int
    weight: int
    limit: int | None


@dataclass
class Region:
    """A rectangle of a sheet: free, a piece, or cut in two at ``at`` from its near edge."""

    length: int
    width: int
    shape: int | None = None
    turned: bool = False
    axis: Axis = 0
    at: int = 0
    parts: tuple[Region, Region] | None = None

    def cut(self, axis: Axis, at: int) -> tuple[Region, Region]:
        """Cut in two; the first part is ``at`` long (or wide)."""
        self.axis, self.at = axis, at
        if axis == 0:
            self.parts = Region(at, self.width), Region(self.length - at, self.width)
        else:
            self.parts = Region(self.length, at), Region(self.length, self.width - at)
        return self.parts

    def fill(self, shape: int, length: int, width: int, turned: bool, first: Axis) -> list[Region]:
        """Put a piece into the near corner, the cut of axis ``first`` before the other; what stays free."""
        here, free = self, list[Region]()
        for axis in (first, 1 - first):
            at, there = (length, here.length) if axis == 0 else (width, here.width)
            if at < there:
                here, rest = here.cut(axis, at)  # type: ignore[arg-type]
                free.append(rest)
        here.shape, here.turned = shape, turned
        return free

    def leaves(self) -> Iterator[Region]:
        """Pieces and free regions, near ones first."""
        waiting = [self]
        while waiting:
            region = waiting.pop()
            if region.parts is None:
                yield region
            else:
                waiting.extend(reversed(region.parts))


@dataclass(frozen=True)
class Packed:
    """Sheets with their kind, and how many of each shape are left out."""

    sheets: tuple[tuple[int, Region], ...]
    left_out: Pattern
    weight: int


@dataclass
class SheetTask:
    """Shapes to cut, kinds of sheet, and the best layouts so far."""

    shapes: Sequence[Shape]
    kinds: Sequence[SheetKind]
    best: Packed | None = None
    nearest: Packed | None = None
    _least_left: int = field(default=-1)

    def offer(self, packed: Packed) -> None:
        """Keep a layout when it is the best so far."""
        if any(packed.left_out):
            pairs = zip(self.shapes, packed.left_out, strict=True)
            left = sum(shape.length * shape.width * number for shape, number in pairs)
            if self.nearest is None or left < self._least_left:
                self.nearest, self._least_left = packed, left
        elif self.best is None or packed.weight < self.best.weight:
            self.best = packed

    # ------------------------------------------------------------ quick layouts

    def orders(self) -> list[list[int]]:
        """Shapes in several orders of size, largest first."""
        shapes = self.shapes
        indices = range(len(shapes))
        keys: list[list[tuple[int, ...]]] = [
            [(-s.width, -s.length) for s in shapes],
            [(-s.length, -s.width) for s in shapes],
            [(-s.length * s.width, -s.length) for s in shapes],
            [(-max(s.length, s.width), -min(s.length, s.width)) for s in shapes],
            [(-min(s.length, s.width), -max(s.length, s.width)) for s in shapes],
            [(-s.length - s.width,) for s in shapes],
        ]
        made = [sorted(indices, key=lambda i, key=key: (key[i], i)) for key in keys]  # type: ignore[misc]
        return [list(order) for order in dict.fromkeys(map(tuple, made))]

    def _spread(self, order: Sequence[int], many: bool) -> list[int]:
        """The pieces of an order; of many pieces, in batches that each hold some of every size."""
        pieces = [index for index in order for _ in range(self.shapes[index].number)]
        batches = -(-len(pieces) // _MANY) if many else 1
        return [index for batch in range(batches) for index in pieces[batch::batches]]

    def openings(self) -> list[list[int]]:
        """Which kind of sheet to open next: cheapest room first, largest first, smallest first."""
        kinds = self.kinds
        indices = range(len(kinds))
        areas = [kind.length * kind.width for kind in kinds]
        made = [
            sorted(indices, key=lambda k: (kinds[k].weight / areas[k], -areas[k], k)),
            sorted(indices, key=lambda k: (-areas[k], k)),
            sorted(indices, key=lambda k: (areas[k], k)),
        ]
        return [list(order) for order in dict.fromkeys(map(tuple, made))]

    def pack(
        self,
        order: Sequence[int],
        limits: Sequence[int | None],
        opening: Sequence[int],
        split: Split,
        choice: Choice,
    ) -> Packed:
        """Piece after piece, in the order given, each into the free region that suits it best.

        Of many free regions only the largest free regions are kept in mind, so that effort grows
        with the number of pieces and no faster.
        """
        left = list(limits)
        left_out = [0] * len(self.shapes)
        sheets: list[tuple[int, Region]] = []
        free: list[Region] = []
        for turn, index in enumerate(order):
            if not turn % _KEPT_REGIONS and turn >= _MANY:
                free.sort(key=lambda region: -region.length * region.width)
                del free[_KEPT_REGIONS:]
            ways = self.shapes[index].ways()
            best: tuple[int, int, int] | None = None
            for place, region in enumerate(free):
                for way, (length, width, _) in enumerate(ways):
                    over, beside = region.length - length, region.width - width
                    if over < 0 or beside < 0:
                        continue
                    score = region.length * region.width if choice == "area" else min(over, beside)
                    if best is None or (score, place, way) < best:
                        best = (score, place, way)
            if best is None:
                opened = self._open(ways, left, opening)
                if opened is None:
                    left_out[index] += 1
                    continue
                kind, way = opened
                region = Region(self.kinds[kind].length, self.kinds[kind].width)
                sheets.append((kind, region))
            else:
                _, place, way = best
                region = free.pop(place)
            length, width, turned = ways[way]
            free.extend(region.fill(index, length, width, turned, _first_cut(region, length, width, split)))
        weight = sum(self.kinds[kind].weight for kind, _ in sheets)
        return Packed(tuple(sheets), tuple(left_out), weight)

    def _open(
        self, ways: Sequence[tuple[int, int, bool]], left: list[int | None], opening: Sequence[int]
    ) -> tuple[int, int] | None:
        for kind in opening:
            if left[kind] == 0:
                continue
            for way, (length, width, _) in enumerate(ways):
                if length <= self.kinds[kind].length and width <= self.kinds[kind].width:
                    limit = left[kind]
                    if limit is not None:
                        left[kind] = limit - 1
                    return kind, way
        return None

    def quick(self, enough: int, rounds: int = 0) -> None:
        """Try the quick methods until a layout weighs no more than ``enough``, or the effort is used up.

        Each method gets one turn, then more with what came last in its order put first; so many
        ``rounds`` at most, where any are given.
        """
        limits = [kind.limit for kind in self.kinds]
        many = sum(shape.number for shape in self.shapes) > _MANY
        splits: tuple[Split, ...] = ("rip", "crosscut", "large", "even")
        choices: tuple[Choice, ...] = ("side", "area")
        orders = [self._spread(order, many) for order in self.orders()]
        methods = list(product(self.openings(), orders, splits, choices))
        if many:
            opening = self.openings()[0]
            methods = [
                (opening, orders[0], "rip", "area"),
                (opening, orders[min(1, len(orders) - 1)], "crosscut", "area"),
            ]
        effort, turns = _QUICK_EFFORT, 0
        while methods and (not rounds or turns < rounds):
            turns += 1
            again = []
            for opening, order, split, choice in methods:
                packed = self.pack(order, limits, opening, split, choice)
                effort -= len(order) * (5 + len(packed.sheets))
                self.offer(packed if many else self.lean(packed, split, choice))
                if self.best is not None and self.best.weight <= enough:
                    return
                late = _late_first(order, packed)
                if late != order:
                    again.append((opening, late, split, choice))
                if effort <= 0:
                    return
            methods = [] if many else again

    def lean(self, packed: Packed, split: Split, choice: Choice) -> Packed:
        """The layout with each sheet exchanged for the cheapest kind that takes the same pieces."""
        if len(self.kinds) == 1:
            return packed
        left = [kind.limit for kind in self.kinds]
        for kind, _ in packed.sheets:
            limit = left[kind]
            if limit is not None:
                left[kind] = limit - 1
        sheets: list[tuple[int, Region]] = []
        cheap = sorted(range(len(self.kinds)), key=lambda k: (self.kinds[k].weight, k))
        for kind, region in packed.sheets:
            content = [leaf.shape for leaf in region.leaves() if leaf.shape is not None]
            for other in cheap:
                if self.kinds[other].weight >= self.kinds[kind].weight:
                    sheets.append((kind, region))
                    break
                if left[other] == 0:
                    continue
                one = [1 if k == other else 0 for k in range(len(self.kinds))]
                again = self.pack(content, one, [other], split, choice)
                if not any(again.left_out):
                    sheets.append(again.sheets[0])
                    limit = left[other]
                    if limit is not None:
                        left[other] = limit - 1
                    break
        weight = sum(self.kinds[kind].weight for kind, _ in sheets)
        return Packed(tuple(sheets), packed.left_out, weight)


def _first_cut(region: Region, length: int, width: int, split: Split) -> Axis:
    if split == "crosscut":
        return 0
    if split == "rip":
        return 1
    over, beside = region.length - length, region.width - width
    crosscut = max(over * region.width, length * beside)
    rip = max(region.length * beside, over * width)
    return 0 if (crosscut > rip) == (split == "large") else 1


def _late_first(order: list[int], packed: Packed) -> list[int]:
    """The order with the pieces of the last sheet, and those left out, moved to the front."""
    late = [index for index, number in enumerate(packed.left_out) for _ in range(number)]
    if not late and packed.sheets:
        late = [leaf.shape for leaf in packed.sheets[-1][1].leaves() if leaf.shape is not None]
    waiting: dict[int, int] = {}
    for index in late:
        waiting[index] = waiting.get(index, 0) + 1
    front, back = list[int](), list[int]()
    for index in order:
        if waiting.get(index):
            waiting[index] -= 1
            front.append(index)
        else:
            back.append(index)
    return front + back
