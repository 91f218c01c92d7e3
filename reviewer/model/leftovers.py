"""What a plan states and nothing names: its own stock and measures. Loads only where there may be some.

A statement that is left out at these sizes names what it names all the same, and so does a size to try.
"""

from __future__ import annotations

import math
from collections.abc import Collection, Iterable, Iterator

from reviewer.language import declarations as d
from reviewer.language.numbers import MM_PER
from reviewer.language.reading import Read
from reviewer.language.source import Span
from reviewer.model.desk import Desk
from reviewer.model.plan import Measure, Plan, Unused

#: How near two lengths are that are the same, mm: sums leave a last figure behind.
_SAME_MM = 1e-6
#: Clauses with one length in them. Numbers of other clauses may be counts, angles or grits.
_LENGTHS = (d.Sized, d.Offset, d.CutClause, d.Rip, d.Gap)


def with_leftovers(plan: Plan, desk: Desk, read: Read, outside: Collection[str]) -> Plan:
    """The plan with what of its own stock and measures nothing names.

    ``outside`` are the measures that are set in place of the plan's own, which somebody asked for.
    """
    cut = {part.stock for part in plan.parts.values()}
    if plan.basket is not None:
        cut.update(line.stock for line in plan.basket.lines)
    idle_stocks = [name for name in plan.stocks if name not in cut]
    idle = [each for each in plan.measures if not each.used and each.name not in outside]
    statements = [*_all_of(read.statements)]
    if idle_stocks:
        words = {
            clause.name.text
            for statement in statements
            for clause in statement.clauses
            if isinstance(clause, d.OfStock)
        }
        idle_stocks = [name for name in idle_stocks if name not in words]
    if idle:
        named = _named([*statements, *(each for file in read.shared for each in file.statements)])
        idle = [each for each in idle if each.name not in named]
    stated = {
        (statement.kind, statement.name.text): statement
        for statement in statements
        if statement.kind in ("stock", "measure") and statement.name is not None
    }
    unused_stocks = [_unused(stated["stock", name], ()) for name in idle_stocks]
    places = list(_lone_lengths(desk, statements)) if idle else []
    unused_measures = [
        _unused(stated["measure", each.name], _same(each, plan.measures, places)) for each in idle
    ]
    return plan.model_copy(
        update={"unused_stocks": tuple(unused_stocks), "unused_measures": tuple(unused_measures)}
    )


def _unused(statement: d.Statement, same: tuple[Span, ...]) -> Unused:
    assert statement.name is not None
    return Unused(statement.name.text, statement.head, statement.span, same)


def _all_of(statements: Iterable[d.Statement]) -> Iterator[d.Statement]:
    """The statements with the members of assemblies."""
    waiting = [*statements][::-1]
    while waiting:
        statement = waiting.pop()
        yield statement
        waiting += statement.members[::-1]


def _named(statements: Iterable[d.Statement]) -> set[str]:
    """The measures that stand in some sum, or that a statement says to try."""
    found: set[str] = set()
    for statement in statements:
        if statement.kind == "try" and statement.name is not None:
            found.add(statement.name.text)
        waiting: list[object] = [statement.clauses]
        while waiting:
            node = waiting.pop()
            if isinstance(node, d.MeasureName):
                found.add(node.name)
            elif isinstance(node, tuple) and not isinstance(node, Span | d.Word):
                waiting += node
    return found


def _lone_lengths(desk: Desk, statements: Iterable[d.Statement]) -> Iterator[tuple[float, Span]]:
    """The plain numbers that are lengths of parts and outlines, mm, each with the place of its clause."""
    for statement in statements:
        if statement.kind not in ("part", "outline", "assembly"):
            continue
        for clause in statement.clauses:
            if isinstance(clause, _LENGTHS) and isinstance(clause.size, d.Number):
                size = clause.size
                yield size.amount * (MM_PER[size.unit] if size.unit else desk.mm_per_unit), clause.span


def _same(
    measure: Measure, measures: Iterable[Measure], places: Iterable[tuple[float, Span]]
) -> tuple[Span, ...]:
    """Where the plan has the same length again: as a number, or as a measure that something uses."""
    again = [(other.amount, other.span) for other in measures if other.used and other.name != measure.name]
    return tuple(
        span
        for amount, span in (*places, *again)
        if math.isclose(amount, measure.amount, rel_tol=0, abs_tol=_SAME_MM)
    )
