"""Glue size below what has to soak in."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Figure, Finding, Severity
from reviewer.reference.finish_use import is_stain
from reviewer.reference.finishes import compatibility, finish
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.workshop.coat_cases import Spotted, cases, finding
from reviewer.workshop.coating import Schedule, briefly, reason_of

_SAYS = {
    "oil": "On {parts}, {product} goes on wood that was sized with glue: the size shuts the pores, and "
    "oil that cannot soak in stays gummy ({source}).",
    "stain": "On {parts}, {product} goes on wood that was sized with glue: it takes less colour, and none "
    "where the size is thick ({source}).",
}
_DO = {
    "oil": "Leave the size out, or use a film such as polyurethane over it.",
    "stain": "Thin the size well, sand it lightly when dry, and try the colour on a test board first.",
}


@rule("size-keeps-out", topic="finishing", severity=Severity.WARNING, needs=("plan.finishes",))
def size_keeps_out(review: Review) -> Iterator[Finding]:
    """Glue size keeps oil and colour out of the wood.

    Goes wrong: Size is brushed on end grain so that it drinks less. Then the oil does not drink at all: it
    lies on top and stays sticky, while the stain comes up pale.

    Judged by: `glue size` right before an oil that has to soak in, which is a warning, or before a stain or
    dye, which is a note unless a test board is made.

    Leaves out: How thin the size is, and sizing of end grain alone.

    Sources: a woodworking page on glue under finishes, as the compatibility table names it.

    Flagged:

        plan "Shelf" in inches
        stock board: actual 3/4 x 5 1/2 red oak, 8 ft
        part shelf: board, across, flat, 24 long, bottom at 0, left at 0, front at 0
        finish oiled: on shelf
            glue size
            sand 150
            3 coats of oil danish

    Quiet:

        plan "Shelf" in inches
        stock board: actual 3/4 x 5 1/2 red oak, 8 ft
        part shelf: board, across, flat, 24 long, bottom at 0, left at 0, front at 0
        finish clear: on shelf
            glue size
            sand 150
            3 coats of polyurethane oil
    """

    def kept_out(schedule: Schedule) -> Iterator[Spotted]:
        first = schedule.layers[0] if schedule.layers else None
        if first is None or not any(each.work == "glue size" for each in first.worked):
            return
        tried = any(each.work == "test board" for each in first.worked)
        oil = finish(first.product).compat_group.startswith("oil_")
        if not oil and (tried or not is_stain(first.product)):
            return
        pair = compatibility(first.product, "dried_glue")
        values = {
            "kind": "oil" if oil else "stain",
            "source": briefly(pair.source),
            "who": pair.source,
            "why": reason_of(pair),
        }
        yield Spotted(first, schedule.parts, values)

    for case in cases(review.finished_alike, kept_out):
        values = case.first.values
        kind = str(values["kind"])
        yield finding(
            review.plan,
            case,
            _SAYS[kind],
            _DO[kind],
            figures=(Figure("first coat", case.first.layer.said), Figure("why", values["why"])),
            limit=Figure("asked for", "open pores", str(values["who"])),
            severity=Severity.NOTE if kind == "stain" else None,
        )
