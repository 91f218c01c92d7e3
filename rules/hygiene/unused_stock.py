"""Stock that no part is cut from."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Edit, Filling, Finding, Severity
from reviewer.language.source import Span
from reviewer.review import Review
from reviewer.rulebook import Timing, rule


@rule(
    "unused-stock",
    topic="hygiene",
    severity=Severity.WARNING,
    timing=Timing.ALWAYS,
    needs=("plan.unused_stocks",),
)
def unused_stock(review: Review) -> Iterator[Finding]:
    """A stock that no part is cut from and that is not bought.

    Goes wrong: The plan says a board that the piece has no use for. Most often a part that was meant to be
    cut from it names another stock, and is then bought, weighed and reckoned as the wrong wood. Otherwise
    it is left from an earlier draft and sends somebody to the yard for nothing.

    Judged by: Each stock of the plan must be named by a part, or stand in the list of what is bought.

    Leaves out: Stock of a file that the plan uses, since such files are there for many plans. What is named
    only by parts that are left out at this size. What a name that nothing declares is likely to mean:
    unknown-name tells that.

    Sources: the plan's own words

    Flagged:

        plan "Shelf" in inches
        stock board: 1x8 pine
        stock cleat: 1x2 pine
        part shelf: board, across, flat, 24 long, left at 0, front at 0, on floor

    Quiet:

        plan "Shelf" in inches
        stock board: 1x8 pine
        stock cleat: 1x2 pine
        part shelf: board, across, flat, 24 long, left at 0, front at 0, on floor
        part under: cleat, across, flat, 24 long, left at 0, front at 10, on floor
    """
    plan = review.plan
    unknown = [each for each in plan.unknown if each.what == "stock"]
    meant = {name for each in unknown for name in each.near}
    strange = dict.fromkeys(each.name for each in unknown if not each.near)
    for stock in plan.unused_stocks:
        if stock.name in meant:
            continue
        values: dict[str, Filling] = {"name": stock.name, "said": plan.stocks[stock.name].said}
        also_at: tuple[Span, ...] = ()
        do = "Name it in the part that is meant to be cut from it, or take it out."
        if len(strange) == 1:  # a part is cut from a stock that nobody knows: it may well be this one
            first = next(each for each in unknown if each.name in strange)
            values["strange"], also_at = first.name, (first.span,)
            do = "If “{strange}” is meant to be this one, write {name} there. If not, take it out."
        yield Finding(
            parts=(),
            at=stock.span,
            also_at=also_at,
            says="No part is cut from the stock {name} ({said}), and none of it is bought.",
            do=do,
            values=values,
            edit=None if strange else Edit(stock.statement, ""),
        )
