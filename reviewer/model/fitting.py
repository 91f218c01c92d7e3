"""Fit statements to fits: what a part is hung from, runs on or stands on, and what is put on it."""

from __future__ import annotations

from typing import Any, cast

from reviewer.language import declarations as d
from reviewer.language.source import Span
from reviewer.model.desk import Desk
from reviewer.model.joining import fastener_sizes
from reviewer.model.naming import PartNames, parts_meant
from reviewer.model.plan import FLOOR, WALL, Assembly, Fastening, Fit, FitPiece, HardwareKind, Moving

_MAX_PIECES = 1_000
#: Hardware that holds a part on another, and hardware that holds it off the floor.
HANGS = ("hinges", "slides", "shelf pins")
STANDS = ("castors", "glides", "levellers")
_EXAMPLES = {"hinges": "fit door to side.left: 2 hinges", "slides": "fit drawer.* to side.*: slides 14"}


def fits_of(
    desk: Desk,
    statements: list[d.Statement],
    names: PartNames,
    assemblies: tuple[Assembly, ...],
    movings: tuple[Moving, ...],
    *,
    all_read: bool = True,
) -> tuple[Fit, ...]:
    """Every fit. An assembly that is named whole is hung as one; so is each part that is named alone.

    ``all_read`` is False where some of the plan could not be read, so that not all that moves is known.
    """
    found = []
    locks = _Locks(desk, movings, all_known=all_read and not desk.problems)
    for statement in statements:
        parts = parts_meant(desk, names, statement.names)
        others = parts_meant(desk, names, statement.others, grounds=(WALL, FLOOR))
        pieces: list[FitPiece] = []
        screws: Fastening | None = None
        height: float | None = None
        locked: tuple[str, ...] = ()
        units = _units(parts, assemblies)
        for clause in statement.clauses:
            if isinstance(clause, d.HardwarePiece):
                piece = _piece(desk, clause, statement)
                if piece is not None:
                    pieces.append(piece)
            elif isinstance(clause, d.OneAtATime):
                pieces.append(FitPiece(kind="interlocks", span=clause.span))
                locked = locks.of(units, clause.span)
            elif isinstance(clause, d.StandingHeight):
                height = desk.size_mm(clause.size, "height")
            elif isinstance(clause, d.FastenerClause):
                sizes = fastener_sizes(desk, clause)
                if sizes is not None:
                    screws = Fastening(kind="screws", span=clause.span, **sizes)
        named = any(isinstance(clause, (d.HardwarePiece, d.OneAtATime)) for clause in statement.clauses)
        if not named and not statement.damaged:
            desk.problem(
                statement.head,
                "This fit does not say what hardware it is.",
                f"Name it: {_EXAMPLES['hinges']}",
            )
        if parts and pieces and (others or not statement.others):
            found.append(
                Fit(
                    units=units,
                    others=others,
                    pieces=tuple(pieces),
                    screws=screws,
                    height=height,
                    locked=locked,
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


class _Locks:
    """What the interlocks of a plan lock. What lifts out has no open place, so none can lock it."""

    def __init__(self, desk: Desk, movings: tuple[Moving, ...], *, all_known: bool) -> None:
        self.desk, self.all_known = desk, all_known
        self.movings = [moving for moving in movings if moving.kind != "lifts"]
        self.by_part: dict[str, list[Moving]] | None = None
        self.locked: dict[str, Span] = {}

    def of(self, units: tuple[tuple[str, ...], ...], span: Span) -> tuple[str, ...]:
        """By its name, each thing that opens of which some units are a part, or which is a part of one.

        A drawer in an outer one that slides too is meant by itself, where its own parts are named.
        """
        if self.by_part is None:
            self.by_part = {}
            for moving in self.movings:
                for part in moving.parts:
                    self.by_part.setdefault(part, []).append(moving)
        found: dict[str, None] = {}
        for unit in units:
            whole = set(unit)
            around = [each for each in self.by_part.get(unit[0], ()) if whole.issubset(each.parts)]
            if around:
                found[min(around, key=lambda each: len(each.parts)).name] = None
                continue
            inside = [each for part in unit for each in self.by_part.get(part, ())]
            found |= dict.fromkeys(each.name for each in inside if whole.issuperset(each.parts))
        if units and not found and self.all_known:
            self.desk.problem(
                span,
                "Nothing that is fitted here opens or slides, so nothing can be kept shut.",
                "Say how it moves where it is declared, such as slides out 14, or take out: one at a time",
            )
        for name in found:
            if name in self.locked:
                self.desk.problem(
                    span,
                    f"“{name}” stands in two interlocks.",
                    "Name all that keep one another shut in one statement.",
                    also_at=(self.locked[name],),
                )
                break
        self.locked |= dict.fromkeys(found, span)
        return tuple(found)


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
