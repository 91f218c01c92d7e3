"""Plugs glued into pockets, under a finish that shows the wood."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Figure, Finding, Severity
from reviewer.reference.finish_use import is_paint, is_stain
from reviewer.reference.sources import NO_SOURCE
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.workshop.coat_cases import Spotted, cases, finding
from reviewer.workshop.coating import Schedule

_SAYS = {
    "stain": "On {parts}, the plugs in the pockets go under {coat}: their grain runs steeply, takes more "
    "colour and shows as dark ovals ({source}).",
    "clear": "On {parts}, the plugs in the pockets go under {coat}: they show as ovals, most of all in "
    "another wood ({source}).",
}
_DO = (
    "Plug with the same wood, sand the plugs one grit finer than around them and try it on a test board, "
    "or turn the pockets where nobody looks."
)


@rule("plugs-show", topic="finishing", severity=Severity.NOTE, needs=("plan.finishes",))
def plugs_show(review: Review) -> Iterator[Finding]:
    """Plugged pockets show through stain and clear coats.

    Goes wrong: Cut flush and sanded, the plug is hardly seen. The stain turns it into a dark oval, since
    its grain comes up to the surface at a steep slant and drinks more.

    Judged by: `plug pockets` in a finish whose coats are all stain or clear. Any paint above hides the
    plugs, and a test board shows them before it matters.

    Leaves out: Which wood the plugs are of, and whether anyone sees that side.

    Sources: common practice, no source.

    Flagged:

        plan "Shelf" in inches
        stock board: actual 3/4 x 5 1/2 red oak, 8 ft
        part shelf: board, across, flat, 24 long, bottom at 0, left at 0, front at 0
        finish dark: on shelf
            plug pockets, sand 120, 150
            1 coat of stain oil, dry 24 h
            2 coats of polyurethane oil

    Quiet:

        plan "Shelf" in inches
        stock board: actual 3/4 x 5 1/2 red oak, 8 ft
        part shelf: board, across, flat, 24 long, bottom at 0, left at 0, front at 0
        finish painted: on shelf
            plug pockets, sand 120, 150
            1 coat of primer alkyd
            2 coats of enamel acrylic
    """

    def plugged(schedule: Schedule) -> Iterator[Spotted]:
        for place, layer in enumerate(schedule.layers):
            if not any(each.work == "plug pockets" for each in layer.worked):
                continue
            above = schedule.layers[place:]
            if any(is_paint(each.product) for each in above):
                continue
            if any(each.work == "test board" for one in schedule.layers for each in one.worked):
                continue
            stain = next((each for each in above if is_stain(each.product)), None)
            values = {"source": NO_SOURCE, "kind": "stain" if stain else "clear"}
            yield Spotted(stain or layer, schedule.parts, values)

    for case in cases(review.finished_alike, plugged):
        yield finding(
            review.plan,
            case,
            _SAYS[str(case.first.values["kind"])],
            _DO,
            figures=(Figure("coat over the plugs", case.first.layer.said),),
            limit=Figure("asked for", "plugs that nobody sees", NO_SOURCE),
        )
