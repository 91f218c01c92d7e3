"""A coat over a glossy one with no sanding between."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Finding, Severity
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.rules.finishing.bonding import not_holding


@rule("scuff-first", topic="finishing", severity=Severity.WARNING, needs=("plan.finishes",))
def scuff_first(review: Review) -> Iterator[Finding]:
    """A coat over a hard, glossy one of another kind has nothing to grip unless that is dulled first.

    Goes wrong: The new coat looks perfect and lies on the old one like a sheet of film. The first knock
    chips it, and a fingernail peels it on from there.

    Judged by: The pairs that the compatibility table lets hold only on a dulled surface, where no sanding
    stands between the two coats. Sanding between the coats of one product is no sanding below it.

    Leaves out: How fine and how well the surface is dulled; and waiting too long within one product, which
    recoat-window-missed tells.

    Sources: the compatibility table, with a source on each pair (data sheets, magazines, trade pages).

    Flagged:

        plan "Tray" in inches
        stock board: actual 1/2 x 7 1/4 yellow-poplar, 8 ft
        part tray: board, across, flat, 18 long, bottom at 0, left at 0, front at 0
        finish clear: on tray
            2 coats of polyurethane oil, dry 7 days
            1 coat of polyurethane waterborne

    Quiet:

        plan "Tray" in inches
        stock board: actual 1/2 x 7 1/4 yellow-poplar, 8 ft
        part tray: board, across, flat, 18 long, bottom at 0, left at 0, front at 0
        finish clear: on tray
            2 coats of polyurethane oil, dry 7 days
            sand 220
            1 coat of polyurethane waterborne
    """
    return not_holding(review, lambda meeting: meeting.trouble == "scuff")
