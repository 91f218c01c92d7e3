"""Every coat on the one below it, and the first on the wood."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Finding, Severity
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.rules.finishing.bonding import not_holding
from reviewer.workshop.coating import Meeting


def _holds_not(meeting: Meeting) -> bool:
    return meeting.trouble != "scuff" and not meeting.lifts and not meeting.bleeds


@rule("will-not-bond", topic="finishing", severity=Severity.ERROR, needs=("plan.finishes",))
def will_not_bond(review: Review) -> Iterator[Finding]:
    """A coat that does not hold on the one below it peels, wrinkles or never dries.

    Goes wrong: Everything looks right when the brush is put away. Weeks later the film comes off in
    sheets where a hand or a cup rubs it, or it stays tacky for ever. Then all of it has to come off
    again, down to the wood.

    Judged by: Each coat is looked up on what lies below it, from the wood outwards, in a table of which
    coat holds on which. A coat that does not hold, or that needs another between, is an error. It is only
    a warning where the sources differ, where the table's word is from memory, and where the coat holds but
    looks wrong. Oily woods count as such, and so do the inside of a chest of aromatic cedar and wood that
    still has its old coat. Resinous woods under a clear coat give a note, since the plan does not say
    whether the boards have knots, unless it seals them. Each face of a part is judged by itself. The
    remedy was tried in the whole order of coats.

    Leaves out: What lifts the coat below (lifts), what needs a dulled surface (scuff-first), paint over
    knots (bleeds-through), wood filler and dried glue, which have their own rules; how clean the surface
    is; and more of the same product, where the can decides.

    Sources: the compatibility table with a source on each pair (data sheets, the Wood Handbook, trade
    pages; some pairs are common practice without a source, and they say so).

    Flagged:

        plan "Plant stand" in inches
        stock board: actual 3/4 x 9 1/4 red oak, 8 ft
        part top: board, across, flat, 24 long, bottom at 0, left at 0, front at 0
        finish clear: on top
            sand 120, 150
            2 coats of shellac waxed
            2 coats of polyurethane oil

    Quiet:

        plan "Plant stand" in inches
        stock board: actual 3/4 x 9 1/4 red oak, 8 ft
        part top: board, across, flat, 24 long, bottom at 0, left at 0, front at 0
        finish clear: on top
            sand 120, 150
            2 coats of shellac dewaxed
            2 coats of polyurethane oil
    """
    return not_holding(review, _holds_not)
