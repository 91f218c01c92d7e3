"""Thinner in the can."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Figure, Filling, Finding, Severity
from reviewer.reference.finish_use import finish_use
from reviewer.reference.finishes import finish
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.units import percent
from reviewer.workshop.coat_cases import Spotted, cases, finding
from reviewer.workshop.coating import Schedule, briefly

_SAYS = {
    "some": "On {parts}, {product} is thinned {thinned}, and bears {most}: the film comes out thin and "
    "weak ({source}).",
    "none": "On {parts}, {product} is thinned {thinned}, and is made to be used as it is ({source}).",
}


@rule("thinned-too-far", topic="finishing", severity=Severity.WARNING, needs=("plan.finishes",))
def thinned_too_far(review: Review) -> Iterator[Finding]:
    """A product thinned further than it bears runs, covers badly and dries to a weak film.

    Goes wrong: Thinned to brush easily, the paint runs off the edges and hides nothing. Water-based films
    thinned too far crack or rub off, since the binder no longer holds together.

    Judged by: The thinning that the plan states for each coat against the most that its class bears.

    Leaves out: What it is thinned with, which the label says; and local limits on solvents in the air.

    Sources: the table of finishes in use; where no data sheet says it, common practice, no source. The
    label on the can wins.

    Flagged:

        plan "Pin board" in inches
        stock board: actual 3/4 x 7 1/4 yellow-poplar, 8 ft
        part board: board, across, on edge, 24 long, bottom at 0, left at 0, front at 0
        finish clear: on board
            2 coats of polyurethane waterborne, thinned 40 %, dry 3 h

    Quiet:

        plan "Pin board" in inches
        stock board: actual 3/4 x 7 1/4 yellow-poplar, 8 ft
        part board: board, across, on edge, 24 long, bottom at 0, left at 0, front at 0
        finish clear: on board
            2 coats of polyurethane waterborne, thinned 10 %, dry 3 h
    """

    def thin(schedule: Schedule) -> Iterator[Spotted]:
        for layer in schedule.layers:
            use = finish_use(layer.product)
            if layer.number == 1 and layer.step.thinned > use.most_thinned:
                values: dict[str, Filling] = {
                    "thinned": percent(layer.step.thinned),
                    "most": percent(use.most_thinned),
                    "carrier": finish(layer.product).carrier,
                    "source": briefly(use.source),
                    "kind": "some" if use.most_thinned else "none",
                }
                yield Spotted(layer, schedule.parts, values)

    for case in cases(review.finished_alike, thin):
        values, use = case.first.values, finish_use(case.first.layer.product)
        some = values["kind"] == "some"
        yield finding(
            review.plan,
            case,
            _SAYS[str(values["kind"])],
            "Thin it {most} at the most, and go by the label."
            if some
            else "Leave it as it comes, and go by the label.",
            figures=(Figure("thinned", values["thinned"], "the plan"),),
            limit=Figure("most thinning", values["most"], use.source),
        )
