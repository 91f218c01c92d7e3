"""Waivers that accept nothing."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Edit, Finding, Severity
from reviewer.language.wordings import either
from reviewer.model.plan import Waiver
from reviewer.reference.names import nearest
from reviewer.review import Review
from reviewer.rulebook import Rule, Timing, all_rules, rule


def _earlier(review: Review, place: int) -> Waiver | None:
    """A waiver further up that already accepts all there is to accept for this one."""
    waiver = review.plan.waivers[place]
    for number, other in enumerate(review.plan.waivers[:place]):
        shared = not other.on or not waiver.on or set(waiver.on) & set(other.on)
        if number in review.waivers_used and other.rule == waiver.rule and shared:
            return other
    return None


def _waits(review: Review, known: Rule) -> bool:
    """True when the rule has not had its turn yet: it needs every part placed, or judges after this one."""
    unplaced = bool(review.setting.unsettled or review.plan.unknown)
    return known.timing is Timing.LAST or (known.timing is Timing.WHOLE and unplaced)


@rule(
    "waiver-unused", topic="hygiene", severity=Severity.WARNING, timing=Timing.LAST, needs=("plan.waivers",)
)
def waiver_unused(review: Review) -> Iterator[Finding]:
    """A waiver accepts something that nothing finds, or names no rule.

    Goes wrong: The fault was mended and the waiver stayed. It hides the same fault when it comes back,
    or it was misspelt and never accepted anything.

    Judged by: After all other rules, each `accept` must have accepted at least one finding of that rule
    on those parts. A name that is no rule is told with the nearest ones.

    Leaves out: Waivers of rules that wait until every part has its place, and of those that judge last.
    At a size that is not the plan's own, and in a plan that names sizes to try, a waiver may be there for
    another size, so one that accepts nothing is not told.

    Sources: common practice, no source

    Flagged:

        plan "Shelf" in inches
        stock board: 1x8 pine
        part shelf: board, across, flat, 24 long, left at 0, front at 0, on floor
        accept part-floats on shelf because "it hangs on the wall later"

    Quiet:

        plan "Shelf" in inches
        stock board: 1x8 pine
        part shelf: board, across, flat, 24 long, left at 0, front at 0, bottom 40 above floor
        accept part-floats on shelf because "it hangs on the wall later"
    """
    rules = all_rules()
    for place, waiver in enumerate(review.plan.waivers):
        if place in review.waivers_used:
            continue
        known = rules.get(waiver.rule)
        values = {"rule": waiver.rule, "on": waiver.said}
        if known is None:
            near = nearest(waiver.rule, rules)
            yield Finding(
                parts=waiver.on,
                at=waiver.rule_span,
                says="No rule is called “{rule}”, so this accepts nothing.",
                do="Did you mean {near}?" if near else "See dryfit rules for all of them.",
                values={**values, "near": either(near) if near else ""},
                edit=Edit(waiver.rule_span, near[0]) if near else None,
            )
            continue
        if _waits(review, known):
            continue
        on = " on {on}" if waiver.said else ""
        earlier = _earlier(review, place)
        if waiver.rule not in review.rules_ran:
            says = "{rule} is kept silent here, so there is nothing of it to accept."
        elif earlier is not None:
            says = f"What {{rule}} finds{on} is accepted further up already."
        elif review.resized or review.plan.trials:
            continue
        else:
            says = f"Nothing of {{rule}} is found{on}, so this accepts nothing."
        yield Finding(
            parts=waiver.on,
            at=waiver.rule_span,
            also_at=(earlier.span,) if earlier else (),
            says=says,
            do="Take this waiver out.",
            values=values,
            edit=Edit(waiver.span, ""),
        )
