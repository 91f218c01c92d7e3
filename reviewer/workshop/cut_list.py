"""The cut list: the parts as pieces for the saw, by stock in the plan's order.

Parts whose place could not be settled have no size and are left out.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from reviewer.model.plan import Stock
from reviewer.units import TOLERANCE_MM
from reviewer.workshop.cutting import Piece
from reviewer.workshop.sheet_layout import SheetPiece

if TYPE_CHECKING:
    from reviewer.review import Review


@dataclass(frozen=True)
class CutRow:
    """Parts that are cut alike, sizes in mm.

    ``ripped``: narrower than the board it is cut from. ``planed``: thinner.
    """

    names: tuple[str, ...]
    stock: Stock
    length: float
    width: float
    thickness: float
    ripped: bool
    planed: bool

    @property
    def count(self) -> int:
        return len(self.names)


@dataclass(frozen=True)
class StockPieces:
    """All parts of one stock, ready for the saw.

    A ripped part is taken to use a full-width length of its board, although two may come side by side
    out of one; ``ripped`` names them, so that a result can say so. ``too_wide`` and ``too_thick`` name
    parts that no board of the stock holds. ``bars`` has a piece for every part of a board, ``sheets``
    one for every part of a sheet, along the sheet's grain; ``turnable`` names those whose grain the plan
    leaves open.
    """

    stock: Stock
    rows: tuple[CutRow, ...]
    bars: tuple[Piece, ...]
    sheets: tuple[SheetPiece, ...]
    ripped: tuple[str, ...]
    too_wide: tuple[str, ...]
    too_thick: tuple[str, ...]
    turnable: tuple[str, ...]


def cut_list(review: Review) -> tuple[CutRow, ...]:
    """Parts that are alike as one row each, stocks and parts in the plan's order."""
    groups: dict[str, dict[tuple[float, ...], list[str]]] = {name: {} for name in review.plan.stocks}
    for name, part in review.plan.parts.items():
        solid = review.setting.solids.get(name)
        if solid is not None and min(solid.size) > 0 and part.stock in groups:
            size = tuple(round(amount, 3) for amount in solid.size)
            groups[part.stock].setdefault(size, []).append(name)
    rows = []
    for stock_name, sizes in groups.items():
        stock = review.plan.stocks[stock_name]
        for names in sizes.values():
            length, width, thickness = review.setting.solids[names[0]].size
            ripped = stock.width is not None and width < stock.width - TOLERANCE_MM
            planed = thickness < stock.thickness - TOLERANCE_MM
            rows.append(CutRow(tuple(names), stock, length, width, thickness, ripped, planed))
    return tuple(rows)


def pieces_by_stock(review: Review) -> tuple[StockPieces, ...]:
    """The parts of every stock that has some, as pieces for the saw."""
    rows: dict[str, list[CutRow]] = {}
    for row in cut_list(review):
        rows.setdefault(row.stock.name, []).append(row)
    return tuple(_stock_pieces(review, found) for found in rows.values())


def _stock_pieces(review: Review, rows: Sequence[CutRow]) -> StockPieces:
    stock = rows[0].stock
    bars: list[Piece] = []
    sheets: list[SheetPiece] = []
    turnable: list[str] = []
    without_grain = not review.material_of(rows[0].names[0]).grained
    solid_wood = stock.kind == "sheet" and review.material_of(rows[0].names[0]).moves
    for row in rows:
        for name in row.names:
            if stock.kind == "board":
                bars.append(Piece(name, row.length))
                continue
            part = review.plan.parts[name]
            # Setting out lays a sheet part's length along its grain.
            free = without_grain and not part.grain_said
            sheets.append(SheetPiece(name, row.length, row.width, free))
            if not part.grain_said and not free and not solid_wood:
                turnable.append(name)
    boards = stock.kind == "board" and stock.width is not None
    return StockPieces(
        stock,
        tuple(rows),
        tuple(bars),
        tuple(sheets),
        _names(rows, lambda row: boards and row.ripped),
        _names(rows, lambda row: boards and row.width > (stock.width or 0.0) + TOLERANCE_MM),
        _names(rows, lambda row: row.thickness > stock.thickness + TOLERANCE_MM),
        tuple(turnable),
    )


def _names(rows: Sequence[CutRow], which: Callable[[CutRow], bool]) -> tuple[str, ...]:
    return tuple(name for row in rows if which(row) for name in row.names)
