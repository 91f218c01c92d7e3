"""Fit statements to fits: what a part is hung from, runs on or stands on, and what is put on it."""

from __future__ import annotations

from typing import Any, cast

from reviewer.language import declarations as d
from reviewer.language.source import Span
from reviewer.model.desk import Desk
from reviewer.model.joining import fastener_sizes
from reviewer.model.naming import PartNames, parts_meant
from reviewer.model.plan import FLOOR, WALL, Assembly, Fastening, Fit, FitPiece, HardwareKind

_MAX_PIECES = 1_000
#: Hardware that holds a part on another, and hardware that holds it off the floor.
HANGS = ("hinges", "slides", "shelf pins")
STANDS = ("castors", "glides", "levellers")
_EXAMPLES = {"hinges": "fit door to side.left: 2 hinges", "slides": "fit drawer.* to side.*: slides 14"}


def fits_of(
    desk: Desk, statements: list[d.Statement], names: PartNames, assemblies: tuple[Assembly, ...]
) -> tuple[Fit, ...]:
    """Every fit. An assembly that is named whole is hung as one; so is each part that is named alone."""
    found = []
    for statement in statements:
        parts = parts_meant(desk, names, statement.names)
        others = parts_meant(desk, names, statement.others, grounds=(WALL, FLOOR))
        pieces: list[FitPiece] = []
        screws: Fastening | None = None
        height: float | None = None
        for clause in statement.clauses:
            if isinstance(clause, d.HardwarePiece):
                piece = _piece(desk, clause, statement)
                if piece is not None:
                    pieces.append(piece)
            elif isinstance(clause, d.StandingHeight):
                height = desk.size_mm(clause.size, "height")
            elif isinstance(clause, d.FastenerClause):
                sizes = fastener_sizes(desk, clause)
                if sizes is not None:
                    screws = Fastening(kind="screws", span=clause.span, **sizes)
        named = any(isinstance(clause, d.HardwarePiece) for clause in statement.clauses)
        if not named and not statement.damaged:
            desk.problem(
                statement.head,
                "This fit does not say what hardware it is.",
                f"Name it: {_EXAMPLES['hinges']}",
            )
        if parts and pieces and (others or not statement.others):
            found.append(
                Fit(
                    units=_units(parts, assemblies),
                    others=others,
                    pieces=tuple(pieces),
                    screws=screws,
                    height=height,
                    span=statement.head,
                )
            )
    return tuple(found)


def _piece(desk: Desk, clause: d.HardwarePiece, statement: d.Statement) -> FitPiece | None:
    count = desk.whole(clause.number, f"number of {clause.kind}", _MAX_PIECES) if clause.number else None
    size = desk.size_mm(clause.size, "size") if clause.size is not None else None
    if clause.number is not None and count is None:
        return None
    others = {word.text for word in statement.others}
    if clause.kind in HANGS and (not others or others & {FLOOR}):
        desk.problem(
            clause.span,
            f"This does not say what the {clause.kind} hold on to.",
            f"Name it after to: {_EXAMPLES[clause.kind]}",
        )
        return None
    if clause.kind in STANDS and others and others != {FLOOR}:
        at = Span(statement.others[0].span.start, statement.others[-1].span.end)
        desk.problem(
            at,
            f"A part stands with its {clause.kind} on the floor, and this names something else.",
            f"Write: fit leg.* to floor: {clause.kind}, 2 1/2 tall",
        )
        return None
    return FitPiece(
        kind=cast(HardwareKind, clause.kind), count=count, size=size, price=clause.price, span=clause.span
    )


def _units(parts: tuple[str, ...], assemblies: tuple[Assembly, ...]) -> tuple[tuple[str, ...], ...]:
    """The parts by what hangs together: assemblies that are wholly among them, then the rest."""
    left: dict[str, Any] = dict.fromkeys(parts)
    units = []
    for assembly in assemblies:  # an outer one comes before those in it
        if len(assembly.parts) > 1 and all(name in left for name in assembly.parts):
            units.append(assembly.parts)
            for name in assembly.parts:
                del left[name]
    units += [(name,) for name in left]
    order = {name: place for place, name in enumerate(parts)}
    return tuple(sorted(units, key=lambda unit: order[unit[0]]))
