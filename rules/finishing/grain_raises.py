"""Water on bare wood."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Edit, Figure, Finding, Severity
from reviewer.language.source import Span
from reviewer.reference.finish_use import is_paint, is_water_based
from reviewer.reference.finishes import finish
from reviewer.reference.sources import cited
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.workshop.coat_cases import Spotted, cases, finding
from reviewer.workshop.coating import Schedule, briefly

_SAYS = (
    "On {parts}, {product} is the first wet thing on the wood, and nothing is sanded after it: the water "
    "raises the grain, and it stays rough ({source})."
)
_SOURCE = "S42,S43"


@rule("grain-raises", topic="finishing", severity=Severity.WARNING, needs=("plan.finishes",))
def grain_raises(review: Review) -> Iterator[Finding]:
    """Water-based stain or clear coat raises the grain, and it stays rough unless it is sanded off.

    Goes wrong: The wood was smooth as glass. After the first coat it feels like fine sandpaper, and every
    further coat only seals the fuzz in.

    Judged by: A water-based dye, stain or clear coat as the first coat on bare wood, where the plan
    neither raises the grain first nor sands the first coat that may be sanded.

    Leaves out: Paint and primer, which hide it and are mostly sanded anyway; panels of fibre; and sealers.

    Sources: woodworking magazines on dyes and water-based finishes.

    Flagged:

        plan "Cubby" in inches
        stock board: actual 3/4 x 7 1/4 hard maple, 8 ft
        part shelf: board, across, flat, 24 long, bottom at 0, left at 0, front at 0
        finish clear: on shelf
            sand 120, 150, 180
            3 coats of polyurethane waterborne, dry 3 h

    Quiet:

        plan "Cubby" in inches
        stock board: actual 3/4 x 7 1/4 hard maple, 8 ft
        part shelf: board, across, flat, 24 long, bottom at 0, left at 0, front at 0
        finish clear: on shelf
            sand 120, 150, 180
            raise grain
            3 coats of polyurethane waterborne, dry 3 h
    """

    def rough(schedule: Schedule) -> Iterator[Spotted]:
        first = schedule.layers[0] if schedule.layers else None
        if first is None or not is_water_based(first.product) or is_paint(first.product):
            return
        if finish(first.product).role == "prep" or any(each.work == "raise grain" for each in first.worked):
            return
        if any(layer.sanded for layer in schedule.layers[1:]):
            return
        grained = tuple(name for name in schedule.parts if review.material_of(name).grained)
        if grained:
            yield Spotted(first, grained, {"source": briefly(cited(_SOURCE))})

    for case in cases(review.finished_alike, rough):
        start = case.first.layer.step.span.start
        yield finding(
            review.plan,
            case,
            _SAYS,
            "Wet the wood, let it dry and sand it lightly before the first coat (raise grain), or sand "
            "between coats.",
            figures=(Figure("first coat", case.first.layer.said),),
            limit=Figure("asked for", "raised grain sanded off", cited(_SOURCE)),
            edit=Edit(Span(start, start), "raise grain, "),
        )
