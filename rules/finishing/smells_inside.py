"""Oil and varnish inside drawers."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Figure, Finding, Severity
from reviewer.reference.finishes import finish
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.units import TOLERANCE_MM
from reviewer.workshop.coat_cases import Spotted, cases, finding
from reviewer.workshop.coating import Schedule

_SAYS = (
    "Inside a drawer, {product} on {parts} smells for months, and what lies in it takes the smell on "
    "({source})."
)
_SOURCE = "Finishing supplier, tip on finish for enclosed spaces"
_OILY = ("oil", "oil/alkyd")
_DEEP = 1


@rule("smells-inside", topic="finishing", severity=Severity.WARNING, needs=("plan.finishes", "plan.movings"))
def smells_inside(review: Review) -> Iterator[Finding]:
    """Oil, alkyd paint and oil varnish inside a drawer smell for months to years.

    Goes wrong: The drawer shuts the solvent and the oil in. Opened a year later it still smells of varnish,
    and so do the linen and the books in it.

    Judged by: Oil, oil varnish and alkyd products on the sides, back and floor of what slides out. Its
    front, which is outside, is left out.

    Leaves out: Cupboards behind doors, which are aired more; and how long it stands open before use.

    Sources: a page on finishing drawers, which asks for shellac or water-based finish.

    Flagged:

        plan "Drawer" in inches
        stock board: actual 1/2 x 5 1/2 yellow-poplar, 8 ft
        assembly drawer: 20 across, 16 deep, 5 1/2 tall, left at 0, front at 0, on floor, slides out 14
            part side for each of left, right: board, deep, on edge, as deep as drawer
                flush with each of drawer, flush with front of drawer, flush with bottom of drawer
            part end for each of front, back: board, across, on edge, between side.left and side.right
                flush with each of drawer, flush with bottom of drawer
            join end.* to side.*: box joint, glue pva
        finish oiled: on drawer.*
            2 coats of oil danish

    Quiet:

        plan "Drawer" in inches
        stock board: actual 1/2 x 5 1/2 yellow-poplar, 8 ft
        assembly drawer: 20 across, 16 deep, 5 1/2 tall, left at 0, front at 0, on floor, slides out 14
            part side for each of left, right: board, deep, on edge, as deep as drawer
                flush with each of drawer, flush with front of drawer, flush with bottom of drawer
            part end for each of front, back: board, across, on edge, between side.left and side.right
                flush with each of drawer, flush with bottom of drawer
            join end.* to side.*: box joint, glue pva
        finish oiled: on drawer.*
            2 coats of shellac dewaxed
    """
    solids = review.setting.solids
    inside: set[str] = set()
    for moving in review.plan.movings:
        if moving.kind != "slides":
            continue
        parts = [solids[name] for name in moving.parts if name in solids]
        foremost = min((solid.low[_DEEP] for solid in parts), default=0.0)
        # A side that runs to the very front is a side all the same: only what faces forwards is the front.
        inside.update(
            solid.name
            for solid in parts
            if solid.low[_DEEP] > foremost + TOLERANCE_MM or solid.thick != _DEEP
        )

    def smelly(schedule: Schedule) -> Iterator[Spotted]:
        parts = tuple(name for name in schedule.parts if name in inside)
        layer = next((each for each in schedule.layers if finish(each.product).family in _OILY), None)
        if parts and layer is not None:
            yield Spotted(layer, parts, {"source": _SOURCE})

    for case in cases(review.finished_alike, smelly):
        yield finding(
            review.plan,
            case,
            _SAYS,
            "Use shellac dewaxed or a water-based finish inside, or leave it bare.",
            figures=(Figure("finish inside", case.first.layer.said),),
            limit=Figure("asked for", "shellac or water-based", _SOURCE),
        )
