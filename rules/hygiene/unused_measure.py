"""Measures that nothing uses."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Edit, Filling, Finding, Severity
from reviewer.review import Review
from reviewer.rulebook import Timing, rule
from reviewer.units import length


@rule(
    "unused-measure",
    topic="hygiene",
    severity=Severity.WARNING,
    timing=Timing.ALWAYS,
    needs=("plan.unused_measures",),
)
def unused_measure(review: Review) -> Iterator[Finding]:
    """A measure that nothing in the plan uses.

    Goes wrong: Somebody changes the measure and trusts that the piece follows. It does not: the parts have
    the old size as a number of their own, or another name's, and what was changed is a line that says
    nothing.

    Judged by: Each measure of the plan must stand in some other statement. Where the plan has the same
    length at one other place, as a plain number of a part or an outline or as another measure, it is
    likely meant there, and that place is told.

    Leaves out: Measures of a file that the plan uses, since such files are there for many plans. Measures
    that the plan says to try, those that are set from outside, and those that stand in a condition
    (`only when`) or in a statement that is left out at this size. A measure that only another unused one
    is worked out from. What a name that nothing declares is likely to mean: unknown-name tells that.

    Sources: the plan's own words

    Flagged:

        plan "Shelf" in inches
        length = 24
        stock board: 1x8 pine
        part shelf: board, across, flat, 24 long, left at 0, front at 0, on floor

    Quiet:

        plan "Shelf" in inches
        length = 24
        stock board: 1x8 pine
        part shelf: board, across, flat, length long, left at 0, front at 0, on floor
    """
    plan = review.plan
    meant = {name for each in plan.unknown if each.what == "measure" for name in each.near}
    meant.update(word for each in plan.unknown for word in each.name.split())
    amounts = {each.name: each.amount for each in plan.measures}
    others = {each.span: each.name for each in plan.measures}
    for measure in plan.unused_measures:
        if measure.name in meant:
            continue
        values: dict[str, Filling] = {"name": measure.name, "amount": length(amounts[measure.name])}
        says, do = (
            "Nothing in the plan uses the measure {name}",
            "Take it out, or write it where it is meant.",
        )
        also_at = measure.same if len(measure.same) == 1 else ()
        if also_at:
            (place,) = also_at
            if place in others:
                values["other"] = others[place]
                says += ", and {other} is {amount} too"
                do = "If {other} should follow it, write: {other} = {name}. If not, take {name} out."
            else:
                values["words"] = " ".join(review.source.words(place).split())
                says += ", but {amount} stands as a number in “{words}”"
                do = "If it is meant there, write {name} in place of the number. If not, take it out."
        yield Finding(
            parts=(),
            at=measure.span,
            also_at=also_at,
            says=f"{says}.",
            do=do,
            values=values,
            edit=None if also_at else Edit(measure.statement, ""),
        )
