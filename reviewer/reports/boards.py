"""Boards and sheets from the yard as bars, with the pieces that come out of each."""

from __future__ import annotations

from reviewer.reports.content import Bought, Piece
from reviewer.reports.stock_lines import board_words
from reviewer.reports.svg import hatching, label, number, outline, words
from reviewer.units import UnitSystem, length, show

WIDE = 350.0  # drawing units for the longest board of a list
BAR = 30.0
LETTER = 6.4


def _fits(text: str, room: float) -> bool:
    return len(text) * LETTER + 6 <= room


def _piece(piece: Piece, scale: float, tall: float, system: UnitSystem) -> str:
    x, wide = piece.at * scale, piece.length * scale
    y, high = (0.0, tall) if piece.width is None else (piece.across * scale, piece.width * scale)
    size = show(length(piece.length), system)
    strokes = [
        f"<title>{words(f'{piece.part}: {size}')}</title>",
        f'<rect class="piece" x="{number(x)}" y="{number(y)}" '
        f'width="{number(wide)}" height="{number(high)}"/>',
    ]
    middle = (x + wide / 2, y + high / 2)
    if _fits(piece.part, wide) and high >= 14:
        strokes.append(label((middle[0], middle[1] + 4), piece.part, "piece-name"))
    elif _fits(piece.part, high) and wide >= 14:
        strokes.append(label((middle[0] + 4, middle[1]), piece.part, "piece-name", turned=True))
    return f"<g>{''.join(strokes)}</g>"


def board_svg(board: Bought, longest: float, system: UnitSystem) -> str:
    """A board or sheet drawn to the scale at which ``longest`` mm fill the page.

    The gaps between pieces are the saw's; what is hatched is left over.
    """
    scale = WIDE / max(longest, board.length, 1.0)
    wide = board.length * scale
    tall = BAR if board.width is None else board.width * scale
    corners = ((0.0, 0.0), (wide, 0.0), (wide, tall), (0.0, tall))
    yard = hatching(corners, "waste", step=9) + outline(corners, "yard")
    pieces = "".join(_piece(piece, scale, tall, system) for piece in board.pieces)
    box = f"-1 -1 {number(wide + 2)} {number(tall + 2)}"
    return (
        f'<svg class="board" role="img" aria-label="{words(board_words(board, system))}" '
        f'width="{number(wide + 2)}" height="{number(tall + 2)}" viewBox="{box}">{yard}{pieces}</svg>'
    )
