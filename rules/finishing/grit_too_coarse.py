"""Wood left so coarse that the first coat shows the scratches."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Figure, Finding, Severity, Working
from reviewer.plan_words import called
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.workshop.last_grits import last_grits

_SAYS = (
    "On {parts}, the wood is left at {grit} grit below {coat}, and {limit} is the coarsest that does "
    "not show ({what}; {source})."
)


@rule("grit-too-coarse", topic="finishing", severity=Severity.WARNING, needs=("plan.finishes",))
def grit_too_coarse(review: Review) -> Iterator[Finding]:
    """A stain or a clear coat over coarse scratches shows every one of them.

    Goes wrong: The scratches that nobody saw on the dry wood are drawn dark by the stain, or stand under
    the clear coat like a pattern. They only come out with the finish.

    Judged by: The last grit before the first coat, against the coarsest that the sanding table has for
    it: by softwood and hardwood for wiping stain, by kind for clear films.

    Leaves out: Oils, waxes and paint, where makers differ or the coat fills; end grain, which takes one
    grit finer; and finishes that say no sanding.

    Sources: the sanding table, with a source on each line (data sheets, magazines; some lines are common
    practice without a source, and the finding says so).

    Flagged:

        plan "Coat rail" in inches
        stock board: actual 3/4 x 5 1/2 red oak, 8 ft
        part rail: board, across, on edge, 30 long, bottom at 0, left at 0, front at 0
        finish clear: on rail
            sand 60, 100
            1 coat of polyurethane oil, dry 7 days

    Quiet:

        plan "Coat rail" in inches
        stock board: actual 3/4 x 5 1/2 red oak, 8 ft
        part rail: board, across, on edge, 30 long, bottom at 0, left at 0, front at 0
        finish clear: on rail
            sand 80, 120, 150
            1 coat of polyurethane oil, dry 7 days
    """
    for each in last_grits(review):
        limit = each.line.low
        if limit is None or each.grit >= limit:
            continue
        parts = tuple(each.where)
        yield Finding(
            parts=parts,
            at=each.layer.step.span,
            says=_SAYS,
            do="Go on to {limit} grit before {coat}.",
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
                limit=Figure("coarsest grit before it", f"{limit:g}", each.line.source),
            ),
        )
