"""Rows of copies: the row has a box of its own, and each copy's place in it is an equation."""

from __future__ import annotations

import math
from typing import Any, Generic, NamedTuple, TypeVar

from reviewer.language import declarations as d
from reviewer.model.desk import Desk
from reviewer.model.placing import (
    DIRECTIONS,
    FACES,
    RANK_FACE,
    RANK_MIDDLE,
    RANK_SPAN,
    RANK_STOCK,
    Placer,
)
from reviewer.model.plan import Axis, Box, Edge, Part, Relation, Term

#: A length that is a whole number of spacings but for the last bit of a sum.
_CLOSE = 1e-9


Copied = TypeVar("Copied", Part, Box)


class Row(NamedTuple, Generic[Copied]):
    """A row's box and its copies, which are parts or outlines."""

    box: Box
    copies: tuple[Copied, ...]
    doubtful: bool


def count_of(desk: Desk, row: d.Copies, most: int) -> int:
    """How many copies a row has: as stated, or as many as stand within a length; 0 when told or unknown."""
    if row.number is not None:
        return desk.whole(row.number, "number of copies", most) or 0
    assert row.pitch is not None
    assert row.within is not None
    pitch, within = desk.size_mm(row.pitch, "spacing of the copies"), desk.mm(row.within)
    if pitch is None or within is None:
        return 0
    if within < 0:
        desk.problem(row.span, "The copies have less than no length to stand in.", "Write 0 or more.")
        return 0
    count = math.floor(within / pitch + _CLOSE) + 1
    if count > most:
        desk.problem(
            row.span,
            f"This makes {count} copies; dryfit takes up to {most}.",
            "Look at the spacing and at the length.",
        )
        return 0
    return count


def row_of(
    desk: Desk, placer: Placer, part: Copied, row: d.Copies, clauses: tuple[Any, ...], count: int
) -> Row[Copied]:
    """The row of ``count`` copies of ``part``. On the row's own axis the part's clauses place the row."""
    axis = DIRECTIONS[row.direction]
    gap_clause = next((c for c in reversed(clauses) if isinstance(c, d.Gap)), None)
    to_fit = next((c for c in clauses if isinstance(c, d.Rip) and c.size is None), None)
    doubtful = False
    gap = 0.0
    if gap_clause is not None and gap_clause.size is not None:
        amount = desk.mm(gap_clause.size)
        if amount is None or amount < 0:
            if amount is not None:
                desk.problem(gap_clause.span, "The gap is less than nothing.", "Write 0 or more.")
            doubtful = True
        else:
            gap = amount
    gap_to_fit = gap_clause is not None and gap_clause.size is None

    given: tuple[Relation, ...] = part.relations
    own: list[Relation] = [r for r in given if r.axis == axis and r.which != "size"]
    sizes: list[Relation] = [r for r in given if r.axis == axis and r.which == "size"]
    others: list[Relation] = [r for r in given if r.axis != axis]
    stem = part.name
    first = f"{stem}.1"
    size_of_first = Edge(first, axis, "size")
    low, size = Edge(stem, axis, "low"), Edge(stem, axis, "size")
    relations = list(own)
    between = 1.0 / max(1, count - 1)
    places: list[tuple[tuple[Term, ...], float]]

    for clause in clauses:
        if isinstance(clause, d.RowCentred):
            name = placer.resolve(clause.on)
            if name is None:
                doubtful = True
            else:
                edge = Edge(name, axis, "mid")
                relations.append(Relation(axis, "mid", (Term(1.0, edge),), 0.0, RANK_MIDDLE, clause.span))

    if row.kind == "side by side":
        if gap_to_fit:
            places = [
                ((Term(1.0, low), Term(i * between, size), Term(-i * between, size_of_first)), 0.0)
                for i in range(count)
            ]
        else:
            whole = (Term(float(count), size_of_first),)
            if to_fit is None:
                relations.append(Relation(axis, "size", whole, (count - 1) * gap, RANK_STOCK, row.span))
            else:
                share = (Term(1.0 / count, size),)
                sizes = [Relation(axis, "size", share, -(count - 1) * gap / count, RANK_STOCK, to_fit.span)]
            places = [((Term(1.0, low), Term(float(i), size_of_first)), i * gap) for i in range(count)]
    elif row.kind == "every":
        assert row.pitch is not None
        pitch = desk.size_mm(row.pitch, "spacing of the copies")
        if pitch is None:
            doubtful = True
            pitch = 1.0
        relations.append(
            Relation(axis, "size", (Term(1.0, size_of_first),), (count - 1) * pitch, RANK_STOCK, row.span)
        )
        places = [((Term(1.0, low),), i * pitch) for i in range(count)]
    elif row.kind == "spread between":
        ends = [placer.resolve(word) for word in row.names]
        if None in ends:
            doubtful = True
            ends = [name or stem for name in ends]
        middles = tuple(Term(1.0, Edge(str(name), axis, "mid")) for name in ends)
        relations += [
            Relation(axis, "low", middles, 0.0, RANK_SPAN, row.span, "after"),
            Relation(axis, "high", middles, 0.0, RANK_SPAN, row.span, "before"),
        ]
        places = []
        for i in range(count):
            part_of = (i + 1) / (count + 1)
            places.append(
                (
                    (Term(1.0, low), Term(part_of, size), Term(i - count * part_of, size_of_first)),
                    0.0,
                )
            )
    else:  # spread from one face to another, ends included
        for point, which in zip(row.points, ("low", "high"), strict=True):
            face = placer.face(point.face) if point.face else _outer_face(axis, which)
            name = placer.resolve(point.name)
            if face is None or name is None or face[0] != axis:
                if face is not None and face[0] != axis:
                    desk.problem(
                        point.span,
                        "This face does not look the way the copies are spread.",
                        "Name two faces that look along the row.",
                    )
                doubtful = True
                continue
            relations.append(
                Relation(axis, which, (Term(1.0, Edge(name, axis, face[1])),), 0.0, RANK_SPAN, row.span)  # type: ignore[arg-type]
            )
        places = [
            ((Term(1.0, low), Term(i * between, size), Term(-i * between, size_of_first)), 0.0)
            for i in range(count)
        ]

    copies = []
    for number, (terms, offset) in enumerate(places, start=1):
        placed = Relation(axis, "low", terms, offset, RANK_FACE, row.span)
        copies.append(
            part.model_copy(
                update={
                    "name": f"{stem}.{number}",
                    "relations": (*sizes, placed, *others),
                    "touches": tuple(touch for touch in part.touches if touch.axis != axis),
                },
            )
        )
    for other in Axis:
        if other != axis:
            for which in ("low", "high"):
                edge = Edge(first, other, which)  # type: ignore[arg-type]
                relations.append(Relation(other, which, (Term(1.0, edge),), 0.0, RANK_FACE, part.span))  # type: ignore[arg-type]
    along = tuple(touch for touch in part.touches if touch.axis == axis)
    box = Box(name=stem, kind="row", relations=tuple(relations), touches=along, span=part.span)
    return Row(box, tuple(copies), doubtful)


def _outer_face(axis: Axis, which: str) -> tuple[Axis, Any]:
    return next((face for face in FACES.values() if face == (axis, which)), (axis, which))
