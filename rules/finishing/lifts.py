"""A strong solvent over a coat that it softens."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Finding, Severity
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.rules.finishing.bonding import not_holding


@rule("lifts", topic="finishing", severity=Severity.ERROR, needs=("plan.finishes",))
def lifts(review: Review) -> Iterator[Finding]:
    """A coat with a strong solvent lifts and wrinkles a softer coat below it.

    Goes wrong: Within minutes of the first pass of the gun the paint below swells, crawls and wrinkles
    like old skin. It does not lie down again. All of it has to come off, both coats.

    Judged by: Solvent lacquer, lacquer sealer and solvent spray enamel over oil varnish, oil polyurethane,
    alkyd paint, acrylic and water-based films, as the compatibility table has it: an error where the table
    says no or asks for a coat between. The way out was tried in the whole order of coats.

    Leaves out: Coats that swell but are meant to, such as shellac on shellac; a thin mist coat, which some
    get away with; and how old the lower coat is, since old oil films lift too.

    Sources: the compatibility table, with a source on each pair (a page on lacquer, a guitar finish
    seller, a magazine forum); the softer acrylic films partly by inference, which the row says.

    Flagged:

        plan "Toy shelf" in inches
        stock board: actual 3/4 x 7 1/4 yellow-poplar, 8 ft
        part shelf: board, across, flat, 24 long, bottom at 0, left at 0, front at 0
        finish painted: on shelf
            2 coats of enamel alkyd, dry 24 h
            2 coats of lacquer nitrocellulose, by spray

    Quiet:

        plan "Toy shelf" in inches
        stock board: actual 3/4 x 7 1/4 yellow-poplar, 8 ft
        part shelf: board, across, flat, 24 long, bottom at 0, left at 0, front at 0
        finish painted: on shelf
            1 coat of sanding sealer, dry 1 h
            3 coats of lacquer nitrocellulose, by spray
    """
    return not_holding(review, lambda meeting: meeting.lifts)
