"""Sanding on bare stain."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Figure, Finding, Severity
from reviewer.reference.finish_use import is_stain
from reviewer.reference.sources import cited
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.workshop.coat_cases import Spotted, cases, finding
from reviewer.workshop.coating import Schedule, briefly

_SAYS = (
    "On {parts}, {below} is sanded with {grit} grit before {coat}: that takes the colour off edges and high "
    "spots ({source})."
)
_SOURCE = "S132"


@rule("sands-off-colour", topic="finishing", severity=Severity.WARNING, needs=("plan.finishes",))
def sands_off_colour(review: Review) -> Iterator[Finding]:
    """Stain that is sanded before its first clear coat comes off in patches.

    Goes wrong: One pass of fine paper over the stain, and every edge and corner is bare wood again. New
    stain on those spots never quite matches.

    Judged by: Sanding that stands between a stain or dye and the coat above it. The first sanding belongs
    on the first clear coat.

    Leaves out: Rubbing stain back on purpose for a worn look, which distress edges and distress faces say.

    Sources: a woodworking how-to page that asks for no sanding between stain and the first clear coat.

    Flagged:

        plan "Picture shelf" in inches
        stock board: actual 3/4 x 5 1/2 red oak, 8 ft
        part shelf: board, across, flat, 24 long, bottom at 0, left at 0, front at 0
        finish dark: on shelf
            1 coat of stain oil, dry 24 h
            sand 320
            2 coats of polyurethane oil

    Quiet:

        plan "Picture shelf" in inches
        stock board: actual 3/4 x 5 1/2 red oak, 8 ft
        part shelf: board, across, flat, 24 long, bottom at 0, left at 0, front at 0
        finish dark: on shelf
            1 coat of stain oil, dry 24 h
            2 coats of polyurethane oil, sand 320 between coats
    """

    def sanded(schedule: Schedule) -> Iterator[Spotted]:
        for meeting in schedule.meetings:
            lower, upper = meeting.lower, meeting.upper
            if lower is None or not upper.sanded or not is_stain(lower.product):
                continue
            if any(each.work.startswith("distress") for each in upper.worked):
                continue
            values = {"grit": str(upper.sanded[0]), "source": briefly(cited(_SOURCE))}
            yield Spotted(upper, schedule.parts, values, below=lower)

    for case in cases(review.finished_alike, sanded):
        yield finding(
            review.plan,
            case,
            _SAYS,
            "Leave the stain unsanded, and sand the first coat over it instead.",
            figures=(Figure("sanded with", case.first.values["grit"]),),
            limit=Figure("sanding on stain", "none", cited(_SOURCE)),
        )
