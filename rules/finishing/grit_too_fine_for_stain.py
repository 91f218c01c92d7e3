"""Wood sanded so fine that it takes no stain."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Figure, Finding, Severity, Working
from reviewer.plan_words import called
from reviewer.reference.finishes import finish
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.workshop.last_grits import last_grits

_SAYS = (
    "On {parts}, the wood is sanded to {grit} grit before {coat}, and {limit} is the finest that lets "
    "it in ({what}; {source})."
)


@rule("grit-too-fine-for-stain", topic="finishing", severity=Severity.WARNING, needs=("plan.finishes",))
def grit_too_fine_for_stain(review: Review) -> Iterator[Finding]:
    """Wood that is polished with fine paper closes up and takes little colour.

    Goes wrong: The stain comes out pale, and paler where the sander stood longer. A second coat only
    lies on top.

    Judged by: The last grit before a first coat of stain or dye, against the finest that the sanding
    table has for it: by softwood and hardwood for wiping stain.

    Leaves out: Oils, waxes and paint, where makers differ or the coat fills; end grain, which takes one
    grit finer; and finishes that say no sanding.

    Sources: the sanding table, with a source on each line (data sheets, magazines; some lines are common
    practice without a source, and the finding says so).

    Flagged:

        plan "Coat rail" in inches
        stock board: actual 3/4 x 5 1/2 hard maple, 8 ft
        part rail: board, across, on edge, 30 long, bottom at 0, left at 0, front at 0
        finish clear: on rail
            sand 120, 180, 320
            1 coat of stain oil, dry 7 days

    Quiet:

        plan "Coat rail" in inches
        stock board: actual 3/4 x 5 1/2 hard maple, 8 ft
        part rail: board, across, on edge, 30 long, bottom at 0, left at 0, front at 0
        finish clear: on rail
            sand 120, 180
            1 coat of stain oil, dry 7 days
    """
    for each in last_grits(review):
        limit = each.line.high
        if limit is None or each.grit <= limit or finish(each.layer.product).role != "colour":
            continue
        parts = tuple(each.where)
        yield Finding(
            parts=parts,
            at=each.layer.step.span,
            says=_SAYS,
            do="Stop at {limit} grit before {coat}.",
            values={
                "parts": called(review.plan, tuple(each.where.values())),
                "grit": str(each.grit),
                "limit": f"{limit:g}",
                "coat": each.layer.said,
                "what": each.line.applies_to.split(" (")[0],
                "source": each.line.source,
            },
            working=Working(
                figures=(Figure("last grit on bare wood", str(each.grit), "the plan"),),
                limit=Figure("finest grit before it", f"{limit:g}", each.line.source),
            ),
        )
