"""Glue that was squeezed out, under a finish that shows the wood."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Edit, Figure, Filling, Finding, Severity
from reviewer.language.source import Span
from reviewer.reference.finish_use import is_stain
from reviewer.reference.finishes import compatibility
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.workshop.coat_cases import Spotted, cases, finding
from reviewer.workshop.coating import Schedule, briefly, reason_of
from reviewer.workshop.finish_surfaces import orders

_GLUE = "dried_glue"
_SAYS = {
    "stain": "On {parts}, glue that was squeezed out of the joints seals the wood, and {coat} leaves "
    "light spots there; the plan does not say that it comes off first ({source}).",
    "clear": "On {parts}, glue that was squeezed out of the joints shows under {coat} as light spots, and "
    "the plan neither cleans it off nor sands ({source}).",
    "paint": "On {parts}, glue that was squeezed out of the joints stays as a ridge under {coat}, and the "
    "plan neither cleans it off nor sands ({source}).",
}
_DO = (
    "Scrape off the glue and sand there with the same grit as around it before the first coat (clean off "
    "glue); water or mineral spirits on the wood shows what is left."
)


@rule("glue-shows", topic="finishing", severity=Severity.WARNING, needs=("plan.finishes",))
def glue_shows(review: Review) -> Iterator[Finding]:
    """Glue that was squeezed out of a joint keeps stain out and shows as a light spot.

    Goes wrong: The joint was wiped with a wet rag and looked clean. The stain finds a film of glue around
    it, and every corner has a pale halo that only scraping takes off.

    Judged by: Parts with glued joints that are finished after assembly, where the plan does not say
    `clean off glue`. Under stain or dye it is a warning, since ordinary sanding leaves glue in the pores;
    under clear coats and paint it is a note, and only where nothing is sanded before the first coat.
    Finishing before assembly, with the glue lines masked, keeps it off the wood.

    Leaves out: How much glue is squeezed out, and whether the joint is one that anyone sees.

    Sources: a woodworking page on glue under finishes, as the compatibility table names it.

    Flagged:

        plan "Frame" in inches
        stock board: actual 3/4 x 3 1/2 red oak, 8 ft
        part rail: board, across, flat, 24 long, bottom at 0, left at 0, front at 0
        part stile: board, deep, flat, 12 long, bottom at 0, left at 0, front at 3 1/2
        join stile to rail: dowels 3/8 x 2, 2 per joint, glue pva
        finish dark: on rail, stile
            sand 120, 150
            1 coat of stain oil, dry 24 h
            2 coats of polyurethane oil

    Quiet:

        plan "Frame" in inches
        stock board: actual 3/4 x 3 1/2 red oak, 8 ft
        part rail: board, across, flat, 24 long, bottom at 0, left at 0, front at 0
        part stile: board, deep, flat, 12 long, bottom at 0, left at 0, front at 3 1/2
        join stile to rail: dowels 3/8 x 2, 2 per joint, glue pva
        finish dark: on rail, stile
            clean off glue
            sand 120, 150
            1 coat of stain oil, dry 24 h
            2 coats of polyurethane oil
    """
    order = orders(review.plan)
    glued = {
        name
        for name, joints in review.setting.joints_of.items()
        if any(joint.join.glue is not None for joint in joints)
    }
    if not glued:
        return

    def left_on(schedule: Schedule) -> Iterator[Spotted]:
        first = schedule.layers[0] if schedule.layers else None
        parts = tuple(name for name in schedule.parts if name in glued)
        if first is None or not parts or order[schedule.places[0]].when == "before":
            return
        if any(each.work == "clean off glue" for each in first.worked):
            return
        pair = compatibility(first.product, _GLUE)
        stained = next((each for each in schedule.layers if is_stain(each.product)), None)
        if stained is None and first.sanded:
            return
        kind = "stain" if stained else "paint" if pair.verdict == "scuff_first" else "clear"
        values: dict[str, Filling] = {
            "kind": kind,
            "source": briefly(pair.source),
            "who": pair.source,
            "reason": reason_of(pair),
        }
        yield Spotted(stained or first, parts, values)

    for case in cases(review.finished_alike, left_on):
        values, layer = case.first.values, case.first.layer
        start = layer.step.span.start
        stain = values["kind"] == "stain"
        yield finding(
            review.plan,
            case,
            _SAYS[str(values["kind"])],
            _DO,
            figures=(Figure("coat", layer.said), Figure("why", values["reason"])),
            limit=Figure("asked for", "wood without glue on it", str(values["who"])),
            severity=None if stain else Severity.NOTE,
            edit=Edit(Span(start, start), "clean off glue, "),
        )
