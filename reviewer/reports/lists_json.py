"""Parts, the cut list, what to buy and the order of work, as ``review.schema.json`` promises them."""

from __future__ import annotations

from reviewer.reference.cautions import Caution
from reviewer.reports.content import Bought, Buying, CutRow, Piece
from reviewer.reports.json_values import Json, number, numbers, span_json
from reviewer.reports.order import Order
from reviewer.review import Review
from reviewer.setting_out.solid import Solid


def part_json(solid: Solid, review: Review) -> Json:
    """A part: its size, and where it stands and which way it runs."""
    part = review.plan.parts.get(solid.name)
    return {
        "name": solid.name,
        "stock": part.stock if part else None,
        "length_mm": number(solid.length),
        "width_mm": number(solid.width),
        "thickness_mm": number(solid.thickness),
        "volume_mm3": number(solid.volume),
        "low_mm": numbers(solid.low),
        "high_mm": numbers(solid.high),
        "along": numbers(solid.directions[0]),
        "across": numbers(solid.directions[1]),
        "through": numbers(solid.directions[2]),
        "at": span_json(review.source, review.span_of(solid.name)),
    }


def cut_row_json(row: CutRow) -> Json:
    """A row of the cut list."""
    return {
        "parts": list(row.parts),
        "stock": row.stock,
        "said": row.said,
        "length_mm": number(row.length),
        "width_mm": number(row.width),
        "thickness_mm": number(row.thickness),
    }


def buying_json(buying: Buying | None) -> Json | None:
    """Boards with what comes out of each, and hardware; None before every part has its place."""
    if buying is None:
        return None
    return {
        "boards": [_bought(board) for board in buying.boards],
        "hardware": [
            {
                "how_many": item.how_many,
                "said": item.said,
                "why": item.why,
                "price": None if item.price is None else number(item.price),
            }
            for item in buying.hardware
        ],
        "total": None if buying.total is None else number(buying.total),
        "remarks": list(buying.remarks),
    }


def _bought(board: Bought) -> Json:
    return {
        "stock": board.stock,
        "said": board.said,
        "length_mm": number(board.length),
        "width_mm": None if board.width is None else number(board.width),
        "price": None if board.price is None else number(board.price),
        "pieces": [_piece(piece) for piece in board.pieces],
        "left_over": number(board.left_over),
    }


def _piece(piece: Piece) -> Json:
    return {
        "part": piece.part,
        "start_mm": number(piece.at),
        "length_mm": number(piece.length),
        "across_mm": number(piece.across),
        "width_mm": None if piece.width is None else number(piece.width),
    }


def order_json(order: Order) -> Json:
    """The order of work, step by step."""
    return {
        "steps": [
            {"title": step.title, "does": list(step.does), "waits_h": number(step.waits)}
            for step in order.steps
        ],
        "waits_h": number(order.waits),
        "proposed": order.proposed,
    }


def caution_json(caution: Caution, work: str) -> Json:
    """A caution, and the part of the work that calls for it."""
    return {
        "work": work,
        "about": caution.about,
        "hazard": caution.hazard,
        "usual": caution.usual,
        "status": caution.status,
        "source": caution.source,
    }
