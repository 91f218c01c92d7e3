"""A plan at several sizes as one table, and what a report says of measures that are not the plan's own."""

from __future__ import annotations

from collections.abc import Sequence

from reviewer.findings import Severity
from reviewer.language.numbers import MM_PER, Unit
from reviewer.model.outside import SetMeasure
from reviewer.plan_words import number_text, plan_unit
from reviewer.records import NamedTuple
from reviewer.reports.content import Report, counted_word
from reviewer.wording import listed, sentence

#: Part names told of the first thing to mend before it says how many more there are.
_NAMES = 2
#: Sizes to try that are told one by one.
_SIZES = 8


class SizeRow(NamedTuple):
    """One size: what it is, how it came out, and the first thing to mend in short."""

    place: int  # of its report, from 1
    sizes: tuple[str, ...]
    outcome: str
    weight: Severity | None  # the heaviest finding; None where nothing was found
    errors: int
    warnings: int
    first: str
    first_finding: str  # its whole sentence


class SizeTable(NamedTuple):
    """All sizes of one plan."""

    name: str
    title: str
    measures: tuple[str, ...]
    said: str  # how many there are, and how many pass
    set_to: tuple[str, ...]  # measures that are set to one size throughout
    rows: tuple[SizeRow, ...]


def size_text(amount: float, unit: Unit) -> str:
    """``17 1/2 in``: a size in the plan's own unit."""
    return f"{number_text(amount * MM_PER[unit], unit)} {unit}"


def _text(measure: SetMeasure) -> str:
    return size_text(measure.amount, measure.unit)


def at_sizes(report: Report) -> str:
    """``at length 36 in and height 18 in``, for a plan that is reviewed at several; empty for others."""
    said = [
        f"{measure.name} {_text(measure)}" for measure in report.measures if measure.name in report.varied
    ]
    return f"at {listed(said, most=len(said))}" if said else ""


def set_text(measure: SetMeasure) -> str:
    """Which measure is set, by the call or as one of the sizes to try, and what the plan itself says."""
    if measure.tried:
        # A plan with sizes to try was understood at its own, so that is known.
        own = "" if measure.own is None else f" (by itself it is {size_text(measure.own, measure.unit)})"
        return f"Tried as the plan says: {measure.name} is {_text(measure)} here{own}."
    if measure.own is None:
        own = "gives no size that can be worked out"
    elif measure.own == measure.amount:
        own = "says the same"
    else:
        own = f"says {size_text(measure.own, measure.unit)}"
    return f"Set from outside the plan: {measure.name} is {_text(measure)} here (the plan {own})."


def size_remarks(report: Report) -> tuple[str, ...]:
    """What a reader must know of a report's measures: those set from outside, and sizes left untried."""
    remarks = [set_text(measure) for measure in report.measures]
    plan = report.review.plan if report.review else None
    if plan is None:
        return tuple(remarks)
    if report.sizes_asked and not plan.trials:
        remarks.append("The plan names no sizes to try, so it is reviewed at its own.")
    elif plan.trials and not report.sizes_asked:
        unit = plan_unit(report.source, plan)
        tried = [
            f"{trial.name} {listed([size_text(amount, unit) for amount in trial.amounts], most=_SIZES)}"
            for trial in plan.trials
        ]
        remarks.append(f"The plan names sizes to try: {'; '.join(tried)}. --sizes reviews them all.")
    return tuple(remarks)


def _first(report: Report) -> tuple[str, str]:
    """The first thing to mend in short and in its whole sentence; empty where there is none."""
    if report.file_problem is not None:
        return report.file_problem.says, report.file_problem.says
    if report.problems:
        return report.problems[0].says, report.problems[0].says
    least = min(Severity.WARNING, report.level)
    to_mend = (each for each in report.findings if each.weight >= least and each.waived_because is None)
    found = next(to_mend, None)
    if found is None:
        return "", ""
    on = f" on {listed(found.parts, most=_NAMES)}" if found.parts else ""
    return f"{found.rule}{on}", sentence(found, report.units)


def outcome(report: Report) -> str:
    """``passes`` or ``fails`` at the level asked for; ``not read`` where nothing could be judged."""
    if report.judgement is None:
        return "not read"
    return "passes" if report.passes else "fails"


def _row(report: Report, place: int) -> SizeRow:
    errors, warnings = report.counted(Severity.ERROR), report.counted(Severity.WARNING)
    return SizeRow(
        place,
        tuple(_text(measure) for measure in report.measures if measure.name in report.varied),
        outcome(report),
        Severity.ERROR if errors else Severity.WARNING if warnings else None,
        errors,
        warnings,
        *_first(report),
    )


def size_tables(reports: Sequence[Report]) -> tuple[SizeTable, ...]:
    """One table for every plan that is reviewed at several sizes, in the order of the reports."""
    plans: dict[int, list[tuple[int, Report]]] = {}
    for place, report in enumerate(reports, 1):
        if report.varied:
            plans.setdefault(id(report.source), []).append((place, report))
    return tuple(_table(found) for found in plans.values())


def _table(found: Sequence[tuple[int, Report]]) -> SizeTable:
    first = found[0][1]
    passing = sum(1 for _, report in found if report.passes)
    count = counted_word(len(found), "size")
    if passing == len(found):
        said = f"{count}, and all pass"
    else:
        said = f"{count}: {passing} {'passes' if passing == 1 else 'pass'}, {len(found) - passing} "
        said += "does not" if len(found) - passing == 1 else "do not"
    return SizeTable(
        first.source.name,
        next((report.title for _, report in found if report.review), first.title),
        first.varied,
        said,
        tuple(set_text(measure) for measure in first.measures if measure.name not in first.varied),
        tuple(_row(report, place) for place, report in found),
    )
