"""Flat clear coats, one upon the other, over a dark colour."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Figure, Finding, Severity
from reviewer.reference.finish_use import is_clear_film
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.units import count
from reviewer.workshop.coat_cases import Spotted, cases, finding
from reviewer.workshop.coating import Layer, Schedule

_SAYS = (
    "On {parts}, {coats} coats of {sheen} clear lie over {colour} (told from more than {most} on): the "
    "flatting in each coat clouds a dark colour ({source})."
)


@rule(
    "clouds-dark",
    topic="finishing",
    severity=Severity.WARNING,
    limits=("flat-coats-over-dark",),
    needs=("plan.finishes",),
)
def clouds_dark(review: Review) -> Iterator[Finding]:
    """Several coats of satin or matt clear cloud the dark colour below them.

    Goes wrong: The black shelf is grey by the third coat, milky in side light. The powder that makes a
    clear coat flat stays in it, and every coat adds some.

    Judged by: How many coats of clear film that the plan calls satin or matt lie over a coat whose colour
    it calls dark.

    Leaves out: Films whose sheen the plan does not name; how thick the coats are; and light colours, where
    it does not show.

    Sources: common practice, no source: build with gloss, and make only the last coat satin.

    Flagged:

        plan "Display shelf" in inches
        stock board: actual 3/4 x 9 1/4 yellow-poplar, 8 ft
        part shelf: board, across, flat, 24 long, bottom at 0, left at 0, front at 0
        finish black: on shelf
            1 coat of stain gel black, dry 2 days
            4 coats of polyurethane oil satin, dry 8 h

    Quiet:

        plan "Display shelf" in inches
        stock board: actual 3/4 x 9 1/4 yellow-poplar, 8 ft
        part shelf: board, across, flat, 24 long, bottom at 0, left at 0, front at 0
        finish black: on shelf
            1 coat of stain gel black, dry 2 days
            3 coats of polyurethane oil gloss, dry 8 h
            1 coat of polyurethane oil satin
    """
    most = review.limit("flat-coats-over-dark")

    def cloudy(schedule: Schedule) -> Iterator[Spotted]:
        dark = None
        flat: list[Layer] = []
        for layer in schedule.layers:
            if layer.step.shade == "dark":
                dark, flat = layer, []
            elif is_clear_film(layer.product) and layer.step.sheen in ("satin", "matt"):
                flat.append(layer)
        if dark is None or len(flat) <= most.amount:
            return
        values = {
            "coats": count(len(flat)),
            "sheen": flat[-1].step.sheen or "",
            "colour": dark.said,
            "most": most.value,
            "source": most.source,
        }
        yield Spotted(flat[-1], schedule.parts, values, below=dark)

    for case in cases(review.finished_alike, cloudy):
        yield finding(
            review.plan,
            case,
            _SAYS,
            "Build with gloss coats, and make only the last one {sheen}.",
            figures=(Figure("flat clear coats", case.first.values["coats"]),),
            limit=Figure("most over a dark colour", most.value, most.source),
        )
