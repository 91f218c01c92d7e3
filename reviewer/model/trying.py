"""Sizes that a plan says to try: each measure's sizes, worked out and counted before any is reviewed."""

from __future__ import annotations

import math

from reviewer.language import declarations as d
from reviewer.language.source import Span
from reviewer.model.desk import Desk
from reviewer.model.plan import Trial

#: So many sizes are reviewed in one go: some minutes for a piece of a thousand parts.
MAX_SIZES = 200
#: A last size is met when the steps come this near to it, as a share of a step.
_NEAR = 1e-9
_FIGURES = 12  # that an amount keeps
_COUNTED = 100_000  # sizes that are too many but still counted


def even(amount: float) -> float:
    """An amount without the last figures that a sum leaves behind, so that 4 ft and 48 in are one size."""
    return float(f"{amount:.{_FIGURES}g}")


def too_many_sizes(count: float) -> tuple[str, str]:
    """What to tell of more sizes than are reviewed in one go, and what to do."""
    said = f"{count:.0f}" if count <= _COUNTED else f"more than {_COUNTED}"
    return (
        f"This comes to {said} sizes; dryfit reviews up to {MAX_SIZES} in one go.",
        "Take a larger step, or fewer sizes.",
    )


def stepped(desk: Desk, sizes: d.TryRange) -> tuple[float, ...] | None:
    """The sizes of a range in the plan's unit, smallest first; None when it has none (told)."""
    first, last, step = (desk.amount(each) for each in (sizes.first, sizes.last, sizes.step))
    if first is None or last is None or step is None:
        return None
    if step <= 0:
        desk.problem(
            sizes.step.span,
            f"The step from size to size comes to {desk.said(step * desk.mm_per_unit)}, "
            "and it must be more than 0.",
            "Write how much larger each size is than the one before it.",
        )
        return None
    if last < first:
        says = desk.said(first * desk.mm_per_unit), desk.said(last * desk.mm_per_unit)
        desk.problem(
            sizes.span,
            f"The sizes begin at {says[0]} and end at {says[1]}, which is less.",
            "Write the smaller size first.",
        )
        return None
    steps = (last - first) / step + _NEAR
    if not steps < MAX_SIZES:
        desk.problem(sizes.span, *too_many_sizes(steps // 1 + 1))
        return None
    return tuple(even(first + number * step) for number in range(math.floor(steps) + 1))


def trials_of(desk: Desk, statements: list[d.Statement]) -> tuple[Trial, ...]:
    """What the plan says to try, each measure once, in the order of the plan."""
    known = dict.fromkeys(desk.stated())
    found: dict[str, Trial] = {}
    for statement in statements:
        assert statement.name is not None
        name, span = statement.name
        if name not in known:
            desk.unknown_name(statement.name, "measure", known)
            continue
        if name in found:
            desk.problem(
                span,
                f"The sizes of “{name}” to try are given twice.",
                "Put them all in one statement.",
                also_at=(found[name].span,),
            )
            continue
        amounts = _amounts(desk, statement)
        if amounts is not None:
            found[name] = Trial(name, amounts, statement.span)
    trials = tuple(found.values())
    count = math.prod(len(trial.amounts) for trial in trials)
    if count > MAX_SIZES and len(trials) > 1:
        desk.problem(
            trials[-1].span,
            f"With every pairing of its sizes the plan comes to {count}; "
            f"dryfit reviews up to {MAX_SIZES} in one go.",
            "Take a larger step, or fewer sizes.",
        )
    return trials


def _amounts(desk: Desk, statement: d.Statement) -> tuple[float, ...] | None:
    amounts: dict[float, None] = {}
    known = True
    for clause in statement.clauses:
        made: tuple[float | None, ...] | None
        if isinstance(clause, d.TryRange):
            made = stepped(desk, clause)
        else:
            assert isinstance(clause, d.Number | d.MeasureName | d.Sum)
            made = (desk.amount(clause),)
        for amount in made or (None,):
            if amount is None:
                known = False
            else:
                amounts[even(amount)] = None
    if not known:
        return None
    if len(amounts) > MAX_SIZES:
        span = Span(statement.clauses[0].span.start, statement.span.end)  # type: ignore[attr-defined]
        desk.problem(span, *too_many_sizes(len(amounts)))
        return None
    return tuple(amounts)
