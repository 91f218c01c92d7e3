"""The table of a plan at several sizes, as the page shows it."""

from __future__ import annotations

from collections.abc import Sequence

from reviewer.reports.content import (
    Report,
)
from reviewer.reports.shown import (
    PlanPage,
    SizeLine,
    SizesShown,
)


def page_prefix(index: int) -> str:
    """What every anchor of a plan's part of the page begins with."""
    return f"plan{index}-"


def sizes_shown(reports: Sequence[Report], pages: Sequence[PlanPage]) -> tuple[SizesShown, ...]:
    """The table of every plan that is reviewed at several sizes."""
    if not any(report.varied for report in reports):
        return ()
    from reviewer.reports.sizes import size_tables

    return tuple(
        SizesShown(
            table.title,
            table.name,
            table.said,
            table.measures,
            table.set_to,
            tuple(
                SizeLine(
                    row.sizes,
                    f"{page_prefix(row.place)}top",
                    row.outcome,
                    row.weight.word if row.weight else "accepted",
                    row.errors,
                    row.warnings,
                    row.first,
                    _anchor_of_first(pages[row.place - 1], row.first_finding),
                )
                for row in table.rows
            ),
        )
        for table in size_tables(reports)
    )


def _anchor_of_first(page: PlanPage, says: str) -> str:
    """Where a sentence stands on the page; empty when it stands nowhere."""
    cards = (card for group in page.groups for card in group.cards)
    return next((card.anchor for card in cards if card.says == says), "")
