"""Sheets, pieces, and which piece lies where in which sheet, with the cuts as a tree. All mm."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from reviewer.records import NamedTuple
from reviewer.workshop.cutting import sum_of_prices


class SheetPiece(NamedTuple):
    """A piece to cut, mm: ``length`` along the sheet. ``turns``: it may lie the other way round."""

    name: str
    length: float
    width: float
    turns: bool = False


@dataclass(frozen=True)
class Sheet:
    """Sheets of one size, mm: on offer, in the basket or to buy. ``count`` None: as many as wanted."""

    length: float
    width: float
    price: float | None = None
    count: int | None = None


class PlacedPiece(NamedTuple):
    """A piece in its sheet: its near corner and its size as it lies, mm."""

    name: str
    x: float  # along the sheet's length
    y: float
    length: float
    width: float
    turned: bool


class Offcut(NamedTuple):
    """What a cut leaves over: its near corner and size, mm."""

    x: float
    y: float
    length: float
    width: float


@dataclass(frozen=True)
class SheetCut:
    """A cut from edge to edge of a rectangle. The blade's near side runs at ``at`` mm.

    A *crosscut* is square to the sheet's length, at x; a *rip* runs along it, at y. ``first`` is what
    lies before the cut, ``second`` what lies beyond; None where the blade took it all. Cuts are made in
    the order of the tree: a rectangle is cut before its parts are.
    """

    how: Literal["crosscut", "rip"]
    at: float
    x: float
    y: float
    length: float
    width: float
    first: PlacedPiece | Offcut | SheetCut
    second: PlacedPiece | Offcut | SheetCut | None


Tree = PlacedPiece | Offcut | SheetCut


@dataclass(frozen=True)
class LaidSheet:
    """One sheet and the cuts that give its pieces; ``tree`` is what is left when the edges are trimmed."""

    length: float
    width: float
    price: float | None
    tree: Tree

    def _nodes(self) -> Iterator[Tree]:
        waiting: list[Tree] = [self.tree]
        while waiting:
            node = waiting.pop()
            yield node
            if isinstance(node, SheetCut):
                waiting.extend(part for part in (node.second, node.first) if part is not None)

    @property
    def cuts(self) -> tuple[SheetCut, ...]:
        """The cuts in the order to make them."""
        return tuple(node for node in self._nodes() if isinstance(node, SheetCut))

    @property
    def pieces(self) -> tuple[PlacedPiece, ...]:
        """The pieces in the order in which they come off."""
        return tuple(node for node in self._nodes() if isinstance(node, PlacedPiece))

    @property
    def offcuts(self) -> tuple[Offcut, ...]:
        """What is left over, largest first."""
        found = [node for node in self._nodes() if isinstance(node, Offcut)]
        return tuple(sorted(found, key=lambda o: (-o.length * o.width, o.x, o.y)))


@dataclass(frozen=True)
class SheetLayout:
    """Sheets and what comes out of each."""

    sheets: tuple[LaidSheet, ...]
    kerf: float
    trim: float

    @property
    def bought(self) -> tuple[Sheet, ...]:
        """The sheets by size and price, with how many of each."""
        numbers: dict[tuple[float, float, float | None], int] = {}
        for sheet in self.sheets:
            key = sheet.length, sheet.width, sheet.price
            numbers[key] = numbers.get(key, 0) + 1
        return tuple(Sheet(*key, number) for key, number in numbers.items())

    @property
    def area(self) -> float:
        """All sheets together, mm²."""
        return math.fsum(sheet.length * sheet.width for sheet in self.sheets)

    @property
    def cut_area(self) -> float:
        """All pieces together, mm²."""
        return math.fsum(piece.length * piece.width for sheet in self.sheets for piece in sheet.pieces)

    @property
    def price(self) -> float | None:
        """What the sheets cost together; None when the price of one is not known."""
        return sum_of_prices(sheet.price for sheet in self.sheets)

    @property
    def waste(self) -> float:
        """The share of the sheets that ends up in no piece, percent."""
        return 100 * (1 - self.cut_area / self.area) if self.sheets else 0.0
