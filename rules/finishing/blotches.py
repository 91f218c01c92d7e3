"""Liquid stain on a wood that takes it in spots."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Edit, Figure, Finding, Severity
from reviewer.language.source import Span
from reviewer.reference.finish_use import is_water_based
from reviewer.reference.finishes import finish
from reviewer.reference.sources import cited
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.workshop.coat_cases import Spotted, cases, finding
from reviewer.workshop.coating import Schedule, briefly
from reviewer.workshop.coating_remedies import words_for

_SAYS = (
    "On {parts}, {product} comes out in spots: {wood} takes it dark where the grain turns up and pale "
    "beside it ({source})."
)
_LIQUID = ("stain_oil", "stain_water", "dye_water", "dye_alcohol")
_BADLY = ("moderate", "severe")
_SOURCE = "S37; which woods, common practice"


@rule("blotches", topic="finishing", severity=Severity.WARNING, needs=("plan.finishes",))
def blotches(review: Review) -> Iterator[Finding]:
    """Pine, birch, cherry, maple and their like take liquid stain in blotches.

    Goes wrong: The stain that was even on the oak sample comes up in dark clouds on the pine shelf. It
    cannot be wiped out again, only sanded off to bare wood.

    Judged by: A liquid stain or dye as the first coat on a wood that the species table calls moderately or
    severely blotchy, with nothing on the wood first that evens it: conditioner, a thin coat of shellac or
    glue size. Gel stain sits on the surface and passes, and so does a test board: who makes one sees it.

    Leaves out: Boards that happen to be even; sprayed dye, built up in light passes; and plywood, whose
    face veneer the plan does not name.

    Sources: a woodworking magazine for conditioner and gel stain; which woods blotch is common practice.

    Flagged:

        plan "Chest lid" in inches
        stock board: 1x8 eastern white pine, 8 ft
        part lid: board, across, flat, 24 long, bottom at 0, left at 0, front at 0
        finish dark: on lid
            sand 120, 150
            1 coat of stain oil, dry 24 h
            2 coats of polyurethane oil

    Quiet:

        plan "Chest lid" in inches
        stock board: 1x8 eastern white pine, 8 ft
        part lid: board, across, flat, 24 long, bottom at 0, left at 0, front at 0
        finish dark: on lid
            sand 120, 150
            1 coat of conditioner oil, dry 15 min
            1 coat of stain oil, dry 24 h
            2 coats of polyurethane oil
    """

    def uneven(schedule: Schedule) -> Iterator[Spotted]:
        first = schedule.layers[0] if schedule.layers else None
        if first is None or finish(first.product).compat_group not in _LIQUID:
            return
        if any(each.work in ("glue size", "test board") for each in first.worked):
            return
        if first.step.applied == "spray" and finish(first.product).compat_group.startswith("dye"):
            return
        by_wood: dict[str, list[str]] = {}
        for name in schedule.parts:
            wood = review.material_of(name)
            if wood.blotches in _BADLY:
                by_wood.setdefault(wood.said, []).append(name)
        for said, names in by_wood.items():
            values = {
                "wood": said,
                "source": briefly(cited(_SOURCE)),
                "blotches": review.material_of(names[0]).blotches,
            }
            yield Spotted(first, tuple(names), values, kind=said)

    for case in cases(review.finished_alike, uneven):
        layer, values = case.first.layer, case.first.values
        dye = finish(layer.product).compat_group.startswith("dye")
        first = "conditioner waterborne" if is_water_based(layer.product) else "conditioner oil"
        start = layer.step.span.start
        yield finding(
            review.plan,
            case,
            _SAYS,
            "Wet the wood first with glue size, or spray the dye in light passes; try it on an offcut."
            if dye
            else f"Put 1 coat of {first} on just before it, or use {words_for('stain_gel')}; try it on an "
            f"offcut.",
            figures=(Figure("wood", values["wood"]), Figure("first coat", layer.said)),
            limit=Figure("this wood blotches", values["blotches"], cited(_SOURCE)),
            edit=None if dye else Edit(Span(start, start), f"1 coat of {first}, dry 15 min, "),
        )
