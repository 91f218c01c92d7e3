"""Every edge-to-edge layout of a handful of pieces on sheets, in whole numbers.

Every arrangement of edge-to-edge cuts is two smaller ones beside or behind each other, so the least
boxes that hold a set of pieces follow from those of its parts. Sizes carry the kerf, as in
:mod:`reviewer.workshop.sheet_search`.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import product

from reviewer.records import NamedTuple
from reviewer.workshop.pattern_bounds import Pattern, Steps
from reviewer.workshop.sheet_search import Axis, Packed, Region, Shape, SheetKind

FEW_STATES = 4_096
FEW_STEPS = 150_000


class _Box(NamedTuple):
    length: int
    width: int
    way: tuple[int, bool] | tuple[Axis, int, int, int, int]


class Few:
    """Every edge-to-edge layout of a handful of pieces: least boxes of each set, then the cheapest cover."""

    def __init__(self, shapes: Sequence[Shape], kinds: Sequence[SheetKind], steps: int = FEW_STEPS) -> None:
        self.shapes = tuple(shapes)
        self.kinds = tuple(kinds)
        self.steps = Steps(steps)
        self.boxes: dict[int, list[_Box]] = {}
        self.patterns: dict[int, Pattern] = {}

    @staticmethod
    def suits(shapes: Sequence[Shape]) -> bool:
        """True when there are few enough sets of pieces to go through."""
        states = 1
        for shape in shapes:
            states *= shape.number + 1
        return states <= FEW_STATES

    def _grow(self) -> bool:
        """Work out the least boxes of all sets, parts before wholes; False when the effort runs out.

        A set is known by its number in mixed radix; a part and what it leaves of a set add up to it.
        """
        longest = max(kind.length for kind in self.kinds)
        widest = max(kind.width for kind in self.kinds)
        largest = max(kind.length * kind.width for kind in self.kinds)
        areas = [shape.length * shape.width for shape in self.shapes]
        radix = [1]
        for shape in self.shapes:
            radix.append(radix[-1] * (shape.number + 1))
        boxes = self.boxes
        for pattern in product(*(range(shape.number + 1) for shape in self.shapes)):
            if sum(area * number for area, number in zip(areas, pattern, strict=True)) > largest:
                continue
            whole = sum(step * number for step, number in zip(radix, pattern, strict=False))
            found: list[_Box] = []
            if sum(pattern) == 1:
                index = pattern.index(1)
                ways = self.shapes[index].ways()
                found = [
                    _Box(*way[:2], (index, way[2])) for way in ways if way[0] <= longest and way[1] <= widest
                ]
            parts = [0]
            for step, number in zip(radix, pattern, strict=False):
                parts = [part + step * taken for taken in range(number + 1) for part in parts]
            if not self.steps.spend(1 + len(parts) // 8):
                return False
            for part in parts:
                other = whole - part
                if part > other or part not in boxes or other not in boxes:
                    continue
                firsts, seconds = boxes[part], boxes[other]
                if not self.steps.spend(len(firsts) * len(seconds)):
                    return False
                for i, one in enumerate(firsts):
                    for j, two in enumerate(seconds):
                        ahead, beside = one.length + two.length, one.width + two.width
                        if ahead <= longest:
                            found.append(_Box(ahead, max(one.width, two.width), (0, part, i, other, j)))
                        if beside <= widest:
                            found.append(_Box(max(one.length, two.length), beside, (1, part, i, other, j)))
            if found:
                boxes[whole] = _least(found)
                self.patterns[whole] = pattern
        return True

    def run(self) -> Packed | bool | None:
        """The lightest layout; False when there is none; None when the effort ran out."""
        if not self._grow():
            return None
        fitting = [
            [
                next((b for b in boxes if b.length <= kind.length and b.width <= kind.width), None)
                for kind in self.kinds
            ]
            for boxes in self.boxes.values()
        ]
        patterns = list(self.patterns.values())
        self.by_first: list[list[tuple[int, Pattern, _Box]]] = [[] for _ in self.shapes]
        for pattern, row in zip(patterns, fitting, strict=True):
            first = next(index for index, number in enumerate(pattern) if number)
            for kind, box in enumerate(row):
                if box is not None:
                    self.by_first[first].append((kind, pattern, box))
        self.known: dict[
            tuple[Pattern, tuple[int | None, ...]], tuple[int, tuple[int, Pattern, _Box] | None] | None
        ] = {}
        demand = tuple(shape.number for shape in self.shapes)
        limits = tuple(kind.limit for kind in self.kinds)
        if not self._cover(demand, limits):
            return None if self.steps.left < 0 else False
        sheets: list[tuple[int, Region]] = []
        rest, left, weight = demand, limits, 0
        while any(rest):
            answer = self.known[rest, left]
            assert answer is not None
            assert answer[1] is not None
            kind, pattern, box = answer[1]
            region = Region(self.kinds[kind].length, self.kinds[kind].width)
            self._draw(region, box)
            sheets.append((kind, region))
            weight += self.kinds[kind].weight
            rest, left = self._after(rest, left, kind, pattern)
        return Packed(tuple(sheets), (0,) * len(self.shapes), weight)

    @staticmethod
    def _after(
        rest: Pattern, left: tuple[int | None, ...], kind: int, pattern: Pattern
    ) -> tuple[Pattern, tuple[int | None, ...]]:
        limit = left[kind]
        bars = left if limit is None else (*left[:kind], limit - 1, *left[kind + 1 :])
        return tuple(a - b for a, b in zip(rest, pattern, strict=True)), bars

    def _cover(self, rest: Pattern, left: tuple[int | None, ...]) -> bool:
        """Fill ``known`` for what is left; False when it cannot be covered or the effort ran out."""
        if not any(rest):
            self.known[rest, left] = (0, None)
            return True
        if (rest, left) in self.known:
            return self.known[rest, left] is not None
        first = next(index for index, number in enumerate(rest) if number)
        best: tuple[int, tuple[int, Pattern, _Box]] | None = None
        for kind, pattern, box in reversed(self.by_first[first]):
            if not self.steps.spend():
                return False
            if left[kind] == 0 or any(a > b for a, b in zip(pattern, rest, strict=True)):
                continue
            after = self._after(rest, left, kind, pattern)
            if self._cover(*after):
                answer = self.known[after]
                assert answer is not None
                weight = self.kinds[kind].weight + answer[0]
                if best is None or weight < best[0]:
                    best = (weight, (kind, pattern, box))
            if self.steps.left < 0:
                return False
        self.known[rest, left] = best
        return best is not None

    def _draw(self, region: Region, box: _Box) -> None:
        """Lay a box into the near corner of a region, cut by cut."""
        waiting = [(region, box)]
        while waiting:
            here, now = waiting.pop()
            if now.width < here.width:
                here, _ = here.cut(1, now.width)
            if now.length < here.length:
                here, _ = here.cut(0, now.length)
            if len(now.way) == 2:
                here.shape, here.turned = now.way
                continue
            axis, part, i, other, j = now.way
            one, two = self.boxes[part][i], self.boxes[other][j]
            first, second = here.cut(axis, one.length if axis == 0 else one.width)
            waiting.extend([(second, two), (first, one)])


def _least(found: list[_Box]) -> list[_Box]:
    """The boxes that no other is within."""
    kept: list[_Box] = []
    for box in sorted(found, key=lambda box: (box.length, box.width)):
        if not kept or box.width < kept[-1].width:
            kept.append(box)
    return kept
