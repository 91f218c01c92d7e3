"""Sanding that leaves out a grit."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from reviewer.findings import Figure, Finding, Severity, Working
from reviewer.language.source import Span
from reviewer.model.plan import Finish, Sanding
from reviewer.plan_words import called
from reviewer.reference.sanding import grit_sizes, longest_step, step_ratio
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.units import ratio


def _steps(finish: Finish) -> Iterator[tuple[int, int, Span]]:
    """Each grit on the bare wood with the next finer one, up to the first coat."""
    grits: list[tuple[int, Span]] = []
    for step in finish.steps:
        if isinstance(step, Sanding):
            grits += [(grit, step.span) for grit in step.grits]
        elif hasattr(step, "product") and hasattr(step, "count"):
            break
    for (coarse, _), (fine, span) in pairwise(grits):
        if fine > coarse:
            yield coarse, fine, span


def _between(coarse: int, fine: int, most: float) -> int | None:
    """The coarsest grit that parts a step into two short enough; None where one more is not enough."""
    for grit in grit_sizes():
        first, second = step_ratio(coarse, grit), step_ratio(grit, fine)
        if coarse < grit < fine and first and second and first <= most and second <= most:
            return grit
    return None


_SAYS = (
    "On {parts}, the sanding goes from {coarse} to {fine} grit: the grains of the one are {jump} "
    "times as coarse, and {most} is the most that the next paper takes the scratches out of "
    "(mean grain on the FEPA P scale)."
)
_SOURCE = "worked out from the jumps that pages on sanding let pass and name as bad"


@rule("grit-jump", topic="finishing", severity=Severity.WARNING, needs=("plan.finishes",))
def grit_jump(review: Review) -> Iterator[Finding]:
    """A step between two grits so large that the finer paper does not take out the coarser one's scratches.

    Goes wrong: The wood feels smooth, since the tops are polished and the scratches are only deep. The
    stain finds every one of them.

    Judged by: The mean grain of each grit on the bare wood against that of the next, on the FEPA P scale.
    80 to 150 and 60 to 120 pass, 80 to 220 does not.

    Leaves out: Sanding between coats; grits that the table does not have; and how long each is used.

    Sources: the grain sizes of the FEPA P scale; two pages on sanding that name 80 to 220 as a bad jump;
    the ratio is worked out from what they let pass.

    Flagged:

        plan "Coat rail" in inches
        stock board: actual 3/4 x 5 1/2 red oak, 8 ft
        part rail: board, across, on edge, 30 long, bottom at 0, left at 0, front at 0
        finish clear: on rail
            sand 80, 220
            3 coats of polyurethane waterborne, dry 2 h

    Quiet:

        plan "Coat rail" in inches
        stock board: actual 3/4 x 5 1/2 red oak, 8 ft
        part rail: board, across, on edge, 30 long, bottom at 0, left at 0, front at 0
        finish clear: on rail
            sand 80, 120, 180, 220
            3 coats of polyurethane waterborne, dry 2 h
    """
    line = longest_step()
    assert line.high is not None
    for finish in review.plan.finishes:
        for coarse, fine, span in _steps(finish):
            jump = step_ratio(coarse, fine)
            if jump is None or jump <= line.high + 1e-9:
                continue
            between = _between(coarse, fine, line.high)
            yield Finding(
                parts=finish.on,
                at=span,
                says=_SAYS,
                do="Sand with {between} grit in between." if between else "Put two more grits in between.",
                values={
                    "parts": called(review.plan, finish.on),
                    "coarse": str(coarse),
                    "fine": str(fine),
                    "jump": ratio(jump),
                    "most": ratio(line.high),
                    "between": str(between),
                },
                working=Working(
                    figures=(
                        Figure(f"mean grain of {coarse} over that of {fine}", ratio(jump), "FEPA P scale"),
                    ),
                    limit=Figure("largest step", ratio(line.high), _SOURCE),
                ),
            )
