"""Knots, resin and tannin under paint that nothing seals."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Edit, Figure, Filling, Finding, Severity
from reviewer.model.plan import Coats
from reviewer.reference.finish_use import finish_use, is_paint, is_primer, wants_primer
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.units import hours
from reviewer.workshop.bleeding import Bleeding, bleeds_what, tannin_primer_hours
from reviewer.workshop.coat_cases import Spotted, cases, finding
from reviewer.workshop.coating import KNOTTY_WOOD, Layer, Schedule, briefly

_SAYS = {
    "light": "On {parts}, {primer} does not hold back {what}: {wood} comes through {colour} as stains "
    "({source}).",
    "unsaid": "On {parts}, {primer} does not hold back {what}: {wood} comes through {colour} as stains "
    "where its colour is light ({source}).",
    "knots": "On {parts}, {primer} does not hold back {what}: where the {wood} has knots, {colour} gets "
    "brown spots if its colour is light ({source}).",
}
_DO = {
    True: "Put 1 coat of primer shellac on in place of {primer}, or seal the knots with it first; boards "
    "without knots need none.",
    False: "Put 1 coat of primer alkyd or primer shellac on in place of {primer}, or let {primer} dry "
    "{wait} where its label says that it blocks stains.",
}

_UNPRIMED = "Put 1 coat of primer shellac below {primer}; boards without knots or tannin need none."


@rule(
    "bleeds-through",
    topic="finishing",
    severity=Severity.WARNING,
    needs=("plan.finishes",),
)
def bleeds_through(review: Review) -> Iterator[Finding]:
    """Knots and tannin come through light paint unless the primer seals them.

    Goes wrong: White is white for a month. Then a brown spot stands over every knot, and oak or cedar
    turns yellow in streaks. More white paint does not help.

    Judged by: Painted woods that the species table says bleed resin, tannin or colour, where no coat below
    the paint seals it: shellac and shellac primer seal both, alkyd primer seals tannin, and acrylic primer
    seals tannin only once it has dried for a day or two. It is a warning under a light colour and a note
    where the plan names no colour, or where the wood has little resin. Knots that the plan seals first are
    sealed. Dark paint hides it. Paint with no primer at all is no-primer's.

    Leaves out: Whether the boards have knots, and how old and dry the resin is.

    Sources: how-to pages and a trade magazine on shellac primer over knots; the Wood Handbook, ch. 16, for
    the extractives of redwood and cedar and the drying of stain-blocking primer; oak and mahogany from
    memory.

    Flagged:

        plan "Wall shelf" in inches
        stock board: 1x8 spruce-pine-fir, 8 ft
        part shelf: board, across, flat, 24 long, bottom at 0, left at 0, front at 0
        finish painted: on shelf
            1 coat of primer acrylic
            2 coats of enamel acrylic white, dry 4 h

    Quiet:

        plan "Wall shelf" in inches
        stock board: 1x8 spruce-pine-fir, 8 ft
        part shelf: board, across, flat, 24 long, bottom at 0, left at 0, front at 0
        finish painted: on shelf
            1 coat of primer shellac
            2 coats of enamel acrylic white, dry 4 h
    """
    wait = tannin_primer_hours()

    def sealed(layer: Layer, what: Bleeding) -> bool:
        use = finish_use(layer.product)
        if what.resin:
            return use.seals_resin
        dry = layer.dry or 0.0
        return use.seals_tannin == "yes" or (use.seals_tannin == "slow" and dry >= wait)

    def shows(schedule: Schedule) -> Iterator[Spotted]:
        layers = schedule.layers
        at = next((place for place, each in enumerate(layers) if is_paint(each.product)), None)
        if at is None or (at == 0 and wants_primer(layers[0].product)):
            return
        paints = [each for each in layers[at:] if is_paint(each.product)]
        painted = [each for each in paints if not is_primer(each.product)] or paints
        if painted[-1].step.shade == "dark":
            return
        light = painted[-1].step.shade == "light"
        by_wood: dict[tuple[str, Bleeding], list[str]] = {}
        for name in schedule.parts:
            wood = review.material_of(name)
            what = bleeds_what(wood)
            if what is None or (what.resin and schedule.surface != KNOTTY_WOOD):
                continue
            if not any(sealed(each, what) for each in layers):
                by_wood.setdefault((wood.said, what), []).append(name)
        for (said, what), names in by_wood.items():
            heavy = light and not what.slight
            who = schedule.meetings[at].pair.source if what.resin and at == 0 else what.source
            values: dict[str, Filling] = {
                "wood": said,
                "what": what.said,
                "colour": painted[-1].said,
                "primer": layers[at].said,
                "source": briefly(who),
                "wait": hours(wait),
                "who": who,
                "how": "light" if light else "knots" if what.resin else "unsaid",
                "resin": "yes" if what.resin else "",
                "weight": "heavy" if heavy else "",
                "reason": schedule.meetings[at].reason if what.resin else "",
            }
            yield Spotted(layers[at], tuple(names), values, kind=said)

    for case in cases(review.finished_alike, shows):
        values = case.first.values
        step = case.first.layer.step
        yield finding(
            review.plan,
            case,
            _SAYS[str(values["how"])],
            _DO[bool(values["resin"])] if is_primer(case.first.layer.product) else _UNPRIMED,
            figures=(
                Figure("wood", values["wood"]),
                Figure("below the colour", values["primer"]),
                *((Figure("why", values["reason"]),) if values["reason"] else ()),
            ),
            limit=Figure("asked for", "a primer that seals", str(values["who"])),
            severity=None if values["weight"] else Severity.NOTE,
            edit=_edit(review, step) if is_primer(case.first.layer.product) else None,
        )


def _edit(review: Review, step: Coats) -> Edit | None:
    amount, of, _ = review.source.words(step.span).partition(" of ")
    return Edit(step.span, f"{amount}{of}primer shellac") if of and step.count == 1 else None
