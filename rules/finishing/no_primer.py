"""Paint straight on wood that asks for a primer."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Edit, Figure, Finding, Severity
from reviewer.language.source import Span
from reviewer.reference.finish_use import wants_primer
from reviewer.reference.materials import Material
from reviewer.reference.sources import cited
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.workshop.bleeding import bleeds_what
from reviewer.workshop.coat_cases import Spotted, cases, finding
from reviewer.workshop.coating import Schedule, briefly

_SAYS = {
    "bleeds": "On {parts}, {product} goes on bare {wood}: {what} comes through as stains ({source}).",
    "drinks": "On {parts}, {product} goes on bare {wood}, which drinks it unevenly, most of all at the edges "
    "({source}).",
    "bare": "On {parts}, {product} goes straight on bare wood: it takes more coats, and grips less than on a "
    "primer ({source}).",
}
_DO = {
    "shellac": "Put 1 coat of primer shellac on first.",
    "alkyd": "Put 1 coat of primer alkyd on first, or primer shellac.",
    "any": "Put 1 coat of primer on first.",
}
#: Fibre and chip boards.
_DRINKS = ("mdf", "particleboard", "osb", "hardboard", "tempered hardboard")
_HANDBOOK = "S04"
_CUSTOM = "common practice, no source"


def _primer(wood: Material, sealed: bool) -> tuple[str, str, str, str]:
    """Why a primer is wanted, what comes through, which primer, and who says so."""
    what = bleeds_what(wood)
    if what is not None and not (what.resin and sealed):
        return "bleeds", what.said, "shellac" if what.resin else "alkyd", what.source
    if wood.key in _DRINKS:
        return "drinks", "", "shellac", _CUSTOM
    return "bare", "", "any", cited(_HANDBOOK)


@rule("no-primer", topic="finishing", severity=Severity.WARNING, needs=("plan.finishes",))
def no_primer(review: Review) -> Iterator[Finding]:
    """Paint on bare wood stains, sinks in and grips less than paint on a primer.

    Goes wrong: Knots and tannin come up as brown spots, through any number of coats of the same paint.
    Fibreboard edges stay rough and dull. On bare wood the second coat still looks like the first.

    Judged by: Paint as the first coat on the wood. It is a warning on woods whose resin, tannin or colour
    comes through, and on fibre and chip board; on other woods it is a note. A coat of shellac counts as a
    primer. Chalk-type and milk paint, and solid exterior stain, are made to go on bare wood.

    Leaves out: Paints whose label says that they prime themselves; and how light the colour is.

    Sources: the Wood Handbook, ch. 16, for primer under paint and for extractives; knots by how-to pages;
    fibreboard is common practice, no source.

    Flagged:

        plan "Book ledge" in inches
        stock board: 1x4 eastern white pine, 8 ft
        part ledge: board, across, flat, 24 long, bottom at 0, left at 0, front at 0
        finish painted: on ledge
            sand 120, 150
            2 coats of enamel acrylic, dry 4 h

    Quiet:

        plan "Book ledge" in inches
        stock board: 1x4 eastern white pine, 8 ft
        part ledge: board, across, flat, 24 long, bottom at 0, left at 0, front at 0
        finish painted: on ledge
            sand 120, 150
            1 coat of primer shellac
            2 coats of enamel acrylic, dry 4 h
    """

    def bare(schedule: Schedule) -> Iterator[Spotted]:
        first = schedule.layers[0] if schedule.layers else None
        if first is None or not wants_primer(first.product):
            return
        meeting = schedule.meetings[0]
        if meeting.trouble is not None and not meeting.bleeds:  # told by what does not bond
            return
        if any(each.work in ("fill grain", "glue size") for each in first.worked):
            return
        sealed = any(each.work == "seal knots" for each in first.worked)
        by_why: dict[tuple[str, str, str, str, str], list[str]] = {}
        for name in schedule.parts:
            wood = review.material_of(name)
            by_why.setdefault((*_primer(wood, sealed), wood.said), []).append(name)
        for (why, what, primer, source, said), names in by_why.items():
            values = {
                "wood": said,
                "what": what,
                "source": briefly(source),
                "why": why,
                "primer": primer,
                "who": source,
            }
            if meeting.bleeds and why == "bleeds":
                values |= {
                    "reason": meeting.reason,
                    "who": meeting.pair.source,
                    "source": briefly(meeting.pair.source),
                }
            yield Spotted(first, tuple(names), values, kind=f"{why} {said}")

    for case in cases(review.finished_alike, bare):
        values = case.first.values
        why, primer = str(values["why"]), str(values["primer"])
        start = case.first.layer.step.span.start
        kind = {"shellac": "primer shellac", "alkyd": "primer alkyd", "any": "primer acrylic"}[primer]
        yield finding(
            review.plan,
            case,
            _SAYS[why],
            _DO[primer],
            figures=(
                Figure("wood", values["wood"]),
                Figure("first coat", case.first.layer.said),
                *((Figure("why", values["reason"]),) if "reason" in values else ()),
            ),
            limit=Figure("asked for", "a primer", str(values["who"])),
            severity=Severity.NOTE if why == "bare" else None,
            edit=Edit(Span(start, start), f"1 coat of {kind}, "),
        )
