"""The cut list, and the boards to buy with what comes out of each, in words."""

from __future__ import annotations

from reviewer.reports.content import Bought, CutRow, Report, sizes_text
from reviewer.units import UnitSystem, Value, length, show
from reviewer.wording import listed

#: Names in a row of the cut list before it says how many more there are.
NAMES = 8
#: Rows of the cut list and boards that a terminal shows; the JSON has all of them.
ROWS = 120


def cut_size(row: CutRow, system: UnitSystem) -> str:
    """Length × width × thickness of a row of the cut list."""
    return sizes_text((row.length, row.width, row.thickness), system)


def board_said(board: Bought, system: UnitSystem) -> str:
    """``stud: 2x4 spruce-pine-fir, 96 in``: what a board or a sheet is."""
    size = show(length(board.length), system)
    if board.width is not None:
        size = f"{show(length(board.width), system)} by {size}"
    return f"{board.stock}: {board.said}, {size}"


def board_words(board: Bought, system: UnitSystem) -> str:
    """What comes out of a board, in words: each piece with its length, and what is left."""
    cuts = []
    for piece in board.pieces:
        size = show(length(piece.length), system)
        if piece.width is not None:
            size = f"{size} by {show(length(piece.width), system)}"
        cuts.append(f"{piece.part} {size}")
    if board.width is None and board.left_over > 0:
        cuts.append(f"left over {show(length(board.left_over), system)}")
    return ", ".join(cuts)


def money_said(amount: float | None) -> str:
    """A price as the plan has its prices; empty where none is known."""
    return "" if amount is None else show(Value(amount, "money"), UnitSystem.METRIC)


def stock_lines(report: Report) -> list[tuple[str, list[str]]]:
    """For plain text: a title and its lines, for the cut list and for what to buy."""
    units, blocks = report.units, []
    if report.cut_list:
        lines = [
            f"{len(row.parts)} × {listed(row.parts, most=NAMES)}: {cut_size(row, units)}, "
            f"from {row.stock} ({row.said})"
            for row in report.cut_list[:ROWS]
        ]
        blocks.append(("Cut list, length × width × thickness", [*lines, *_more(len(report.cut_list))]))
    buying = report.buying
    if buying is not None and (buying.boards or buying.remarks):
        lines = list(buying.remarks)
        for board in buying.boards[:ROWS]:
            price = f" at {money_said(board.price)}" if board.price is not None else ""
            lines.append(f"{board_said(board, units)}{price}, for {board_words(board, units)}")
        lines += _more(len(buying.boards))
        if buying.total is not None:
            lines.append(f"Together {money_said(buying.total)}, in the plan's own prices")
        blocks.append(("Boards and sheets to buy, with what comes out of each", lines))
    return blocks


def _more(count: int) -> list[str]:
    return [f"and {count - ROWS} more; the JSON has them all"] if count > ROWS else []
