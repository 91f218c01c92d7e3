"""Usual cautions of the workshop, and pieces that a rule or a standard speaks of.

They inform and defer: local codes, product manuals and licensed practice decide.
"""

from __future__ import annotations

from functools import lru_cache

from reviewer.records import NamedTuple
from reviewer.reference.sources import Standing, standing
from reviewer.reference.tables import Row, table


class Caution(NamedTuple):
    """What is usual where an operation or a material can hurt."""

    about: str
    trigger: str
    hazard: str
    usual: str
    source: str
    status: Standing


class RegulatedPiece(NamedTuple):
    """A kind of piece that a rule or standard speaks of; ``level`` says how far a plan at home may go."""

    kind: str
    trigger: str
    rule: str
    jurisdiction: str
    level: str
    words: str
    source: str
    status: Standing


class _Caution(Row):
    operation_or_material: str
    plan_trigger: str
    hazard: str
    usual_caution: str
    status: str
    source: str


class _Piece(Row):
    piece_kind: str
    trigger: str
    regulation_or_standard: str
    jurisdiction: str
    level: str
    reviewer_should_say: str
    status: str
    source: str


@lru_cache(maxsize=1)
def shop_cautions() -> tuple[Caution, ...]:
    """Every caution, in the table's order: machines, dust, lifting, finishing, old and treated wood."""
    return tuple(
        Caution(
            row.operation_or_material,
            row.plan_trigger,
            row.hazard,
            row.usual_caution,
            row.source,
            standing(row.status),
        )
        for row in table("shop_cautions.csv", _Caution)
    )


@lru_cache(maxsize=1)
def regulated_pieces() -> tuple[RegulatedPiece, ...]:
    """Every kind of regulated piece, in the table's order."""
    return tuple(
        RegulatedPiece(
            row.piece_kind,
            row.trigger,
            row.regulation_or_standard,
            row.jurisdiction,
            row.level,
            row.reviewer_should_say,
            row.source,
            standing(row.status),
        )
        for row in table("regulated_pieces.csv", _Piece)
    )
