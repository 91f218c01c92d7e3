"""Usual cautions of the workshop, and pieces that a rule or a standard speaks of.

They inform and defer: local codes, product manuals and licensed practice decide.
"""

from __future__ import annotations

from functools import lru_cache

from reviewer.records import NamedTuple
from reviewer.reference.sources import Standing, standing
from reviewer.reference.tables import Row, table
from reviewer.units import KG_PER_POUND, MM_PER_FOOT, MM_PER_INCH


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


class RegulatedSign(NamedTuple):
    """By what a kind of regulated piece is known: words of its title, or a shape; and how much that weighs.

    ``but`` are words of a title that make it something else. ``eased`` says what makes a warning a note.
    """

    kind: str
    words: tuple[str, ...]
    but: tuple[str, ...]
    shape: str
    weight: str
    eased: str


class Scope(NamedTuple):
    """Where a rule for some pieces begins, in mm, kg, mm³, a share or a bare number."""

    amount: float
    meaning: str
    source: str


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


class _Sign(Row):
    piece_kind: str
    words: tuple[str, ...]
    but: tuple[str, ...]
    shape: str
    weight: str
    eased: str


class _Scope(Row):
    name: str
    amount: float
    unit: str
    meaning: str
    source: str


#: What one of a scope's unit is in the inside unit of its kind.
_INSIDE = {
    "in": MM_PER_INCH,
    "lb": KG_PER_POUND,
    "ft3": MM_PER_FOOT**3,
    "share": 1.0,
    "years": 1.0,
    "bars": 1.0,
}


@lru_cache(maxsize=1)
def regulated_signs() -> tuple[RegulatedSign, ...]:
    """By what every kind of regulated piece is known, in the table's order: the gravest first."""
    return tuple(
        RegulatedSign(row.piece_kind, row.words, row.but, row.shape, row.weight, row.eased)
        for row in table("regulated_signs.csv", _Sign)
    )


@lru_cache(maxsize=1)
def scopes() -> dict[str, Scope]:
    """Where rules for some pieces begin, by name."""
    return {
        row.name: Scope(row.amount * _INSIDE[row.unit], row.meaning, row.source)
        for row in table("regulated_scopes.csv", _Scope)
    }


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
