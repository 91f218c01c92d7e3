"""The feet of a piece seen from above: the outline that it tips over, its weak edges, where its weight lies.

The front is below. The outline around the feet is drawn full, the edges over which it is nearest to tipping
heavy, the bounds of the whole piece dashed; a line shows how far inside the nearest edge the weight lies.
"""

from __future__ import annotations

import math

from reviewer.mechanics.stability import TippingEdge
from reviewer.reports.svg import Point, label, line, number, outline, words
from reviewer.units import UnitSystem, length, show
from reviewer.workshop.standing import Piece
from reviewer.workshop.tipping import State, sides_of

#: Room for the piece, and around it for the words, in drawing units.
WIDEST, TALLEST = 250.0, 200.0
ASIDE, ABOVE, BELOW = 45.0, 58.0, 26.0
DOT = 4.5
#: Edges as far from the middle and as long as each other to within this are alike, mm.
ALIKE = 0.5


def key_of(state: State, piece: Piece, system: UnitSystem) -> str:
    """What the drawing says, in words."""
    whole, edge = piece.whole, state.balance.edge
    arm = edge.arm(whole.x, whole.y)
    where = "inside" if arm >= 0 else "outside"
    many = len(piece.polygon or ())
    return (
        f"The outline around its feet has {many} corners, the whole piece is dashed. Its weight lies "
        f"{show(length(abs(arm)), system)} {where} the heavy line, over which it is nearest to tipping."
    )


def weak_edges(state: State, piece: Piece) -> tuple[TippingEdge, ...]:
    """The edge that a state is nearest to tipping over, and its like on the sides told with it."""
    first, whole = state.balance.edge, piece.whole
    far, long = first.arm(whole.x, whole.y), math.dist(first.start, first.end)
    return tuple(
        edge
        for edge in piece.edges
        if set(sides_of(edge)) & set(state.sides)
        and abs(edge.arm(whole.x, whole.y) - far) <= ALIKE
        and abs(math.dist(edge.start, edge.end) - long) <= ALIKE
    ) or (first,)


def footprint_drawing(state: State, piece: Piece, system: UnitSystem, name: str) -> str:
    """The feet as SVG; empty for a piece that has no footprint."""
    if not piece.polygon:
        return ""
    spread = [*piece.polygon, (piece.low[0], piece.low[1]), (piece.high[0], piece.high[1])]
    low = min(x for x, _ in spread), min(y for _, y in spread)
    high = max(x for x, _ in spread), max(y for _, y in spread)
    wide, deep = max(high[0] - low[0], 1.0), max(high[1] - low[1], 1.0)
    scale = min(WIDEST / wide, TALLEST / deep)
    left = ASIDE + (WIDEST - wide * scale) / 2

    def at(x: float, y: float) -> Point:
        return left + (x - low[0]) * scale, ABOVE + (high[1] - y) * scale

    page_wide, floor = WIDEST + 2 * ASIDE, ABOVE + deep * scale
    corners = [(piece.low[0], piece.low[1]), (piece.high[0], piece.low[1])]
    corners += [(piece.high[0], piece.high[1]), (piece.low[0], piece.high[1])]
    strokes = [
        outline([at(*corner) for corner in corners], "stands-open"),
        outline([at(*corner) for corner in piece.polygon], "footprint"),
    ]
    strokes += [line(at(*one.start), at(*one.end), "tips-over") for one in weak_edges(state, piece)]
    whole, edge = piece.whole, state.balance.edge
    arm = edge.arm(whole.x, whole.y)
    out_x, out_y = edge.outward
    foot = at(whole.x + arm * out_x, whole.y + arm * out_y)
    middle = at(whole.x, whole.y)
    strokes.append(line(middle, foot, "rule-line"))
    strokes.append(f'<circle class="centre" cx="{number(middle[0])}" cy="{number(middle[1])}" r="{DOT}"/>')
    text = show(length(abs(arm)), system)
    strokes.append(label((middle[0], middle[1] - 10), text, "force"))
    strokes.append(label((page_wide / 2, 18), "its feet from above", "outcome-word"))
    strokes.append(label((page_wide / 2, floor + 18), "front", "small-word"))
    strokes.append(label((page_wide / 2, ABOVE - 8), "back", "small-word"))
    ids, desc = f"{name}-name {name}-desc", key_of(state, piece, system)
    height = floor + BELOW
    return (
        f'<svg class="view footprint-view" role="img" aria-labelledby="{ids}" width="{number(page_wide)}" '
        f'height="{number(height)}" viewBox="0 0 {number(page_wide)} {number(height)}">'
        f'<title id="{name}-name">Its feet seen from above</title>'
        f'<desc id="{name}-desc">{words(desc)}</desc>{"".join(strokes)}</svg>'
    )
