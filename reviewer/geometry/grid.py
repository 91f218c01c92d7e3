"""Boxes in a grid of several sizes, so that what is near something is found without asking all. mm."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator
from itertools import product

from reviewer.geometry.vectors import Vector

#: The smallest cell, mm; a larger box lies in cells that are a power of two as large.
_CELL_MM = 64.0
_MOST_LEVELS = 40


class Grid:
    """Boxes by number, each in a few cells of about its own size. Looking up costs what lies near."""

    def __init__(self, boxes: Iterable[tuple[Vector, Vector]]) -> None:
        self._boxes = list(boxes)
        self._cells: dict[int, dict[tuple[int, int, int], list[int]]] = {}
        self._numbers: dict[int, list[int]] = {}
        for number, (low, high) in enumerate(self._boxes):
            widest = max(high[axis] - low[axis] for axis in range(3))
            level = 0
            while _CELL_MM * 2**level < widest and level < _MOST_LEVELS:
                level += 1
            cells = self._cells.setdefault(level, {})
            self._numbers.setdefault(level, []).append(number)
            for cell in _cells_of(low, high, _CELL_MM * 2**level):
                cells.setdefault(cell, []).append(number)

    def near(self, low: Vector, high: Vector) -> Iterator[int]:
        """The numbers of all boxes that share some room with this one, each once, in order."""
        found: set[int] = set()
        for level, cells in self._cells.items():
            size = _CELL_MM * 2**level
            many = math.prod(math.floor(high[a] / size) - math.floor(low[a] / size) + 1 for a in range(3))
            if many > len(self._numbers[level]):
                found.update(self._numbers[level])
            else:
                for cell in _cells_of(low, high, size):
                    found.update(cells.get(cell, ()))
        for number in sorted(found):
            other_low, other_high = self._boxes[number]
            if all(other_low[a] < high[a] and other_high[a] > low[a] for a in range(3)):
                yield number


def _cells_of(low: Vector, high: Vector, size: float) -> Iterator[tuple[int, int, int]]:
    ranges = [range(math.floor(low[a] / size), math.floor(high[a] / size) + 1) for a in range(3)]
    yield from product(*ranges)
