"""A clear coat that turns amber over a light colour."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Edit, Figure, Filling, Finding, Severity
from reviewer.language.source import Source, Span
from reviewer.model.plan import Coats
from reviewer.reference.finish_use import is_clear_film, is_paint, is_primer, is_stain
from reviewer.reference.finishes import finish
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.units import hours
from reviewer.workshop.coat_cases import Spotted, cases, finding
from reviewer.workshop.coating import Layer, Schedule, briefly, meetings
from reviewer.workshop.coating_remedies import words_for

_LIGHT = "On {parts}, {product} turns amber over {colour}: the light colour goes yellow ({source})."
_UNSAID = (
    "On {parts}, {product} turns amber over {colour}: a white or light colour would go yellow ({source})."
)
_CLEAR_KEY = "poly_water"
_CLEAR = words_for(_CLEAR_KEY)
_DO = f"Use a clear coat that stays clear, such as {_CLEAR}, in place of {{product}}"


def _colour(below: list[Layer]) -> Layer | None:
    """The coat that one sees through a clear film: the last paint below, else a stain of a light colour."""
    for layer in reversed(below):
        if is_primer(layer.product):
            continue
        if is_paint(layer.product) or (is_stain(layer.product) and layer.step.shade == "light"):
            return layer
    return None


def _edit(source: Source, step: Coats) -> Edit | None:
    """The clear coat in place of the amber one; a drying time stated for that one goes with it."""
    amount, of, _ = source.words(step.span).partition(" of ")
    if not of:
        return None
    stated = step.dry_span
    if stated is None or stated.start < step.span.end:
        return Edit(step.span, f"{amount}{of}{_CLEAR}")
    between = source.words(Span(step.span.end, stated.start))
    if "#" in between:
        return None
    kept = between.rstrip().removesuffix(",")
    return Edit(Span(step.span.start, stated.end), f"{amount}{of}{_CLEAR}{kept}")


def _waits(schedule: Schedule, layer: Layer) -> tuple[str, Filling]:
    """What lies below the clear coat told instead, and how long it must dry first.

    Empty where it does, or dries no less too short for the amber one: coat-too-soon tells that already.
    """
    changed = [
        each._replace(product=_CLEAR_KEY, said=_CLEAR, dry=None) if each.step is layer.step else each
        for each in schedule.layers
    ]
    pairs = zip(schedule.meetings, meetings(schedule.surface, changed), strict=True)
    for was, meeting in pairs:
        if meeting.upper.step is not layer.step or meeting.wait is None:
            continue
        if meeting.missing > was.missing:
            return meeting.below, hours(meeting.wait)
    return "", ""


@rule("yellows-light-colour", topic="finishing", severity=Severity.WARNING, needs=("plan.finishes",))
def yellows_light_colour(review: Review) -> Iterator[Finding]:
    """A clear coat that ambers turns a white or light colour yellow.

    Goes wrong: The white shelf gets two coats of oil polyurethane to protect it. It is cream the same
    evening and the colour of weak tea after two summers, lighter wherever a book stood.

    Judged by: A clear film that the finish table says yellows, over paint, or over a stain of a light
    colour. It is a warning where the plan names the colour as light, and a note where it names none. Over
    a dark colour nothing is told.

    Leaves out: Slight yellowing, such as that of pale shellac; alkyd whites, which yellow by themselves;
    and whether you like the look.

    Sources: the finish table and the compatibility table (data sheet of an interior oil-modified
    polyurethane; data sheets).

    Flagged:

        plan "Window shelf" in inches
        stock board: actual 3/4 x 7 1/4 yellow-poplar, 8 ft
        part shelf: board, across, flat, 24 long, bottom at 0, left at 0, front at 0
        finish white: on shelf
            1 coat of primer acrylic
            2 coats of enamel acrylic white, dry 24 h
            sand 220
            2 coats of polyurethane oil

    Quiet:

        plan "Window shelf" in inches
        stock board: actual 3/4 x 7 1/4 yellow-poplar, 8 ft
        part shelf: board, across, flat, 24 long, bottom at 0, left at 0, front at 0
        finish white: on shelf
            1 coat of primer acrylic
            2 coats of enamel acrylic white, dry 24 h
            2 coats of polyurethane waterborne
    """

    def ambers(schedule: Schedule) -> Iterator[Spotted]:
        for at, layer in enumerate(schedule.layers):
            known = finish(layer.product)
            if not is_clear_film(layer.product) or not known.yellows.startswith("yes"):
                continue
            colour = _colour(list(schedule.layers[:at]))
            if colour is None or colour.step.shade == "dark":
                continue
            under, later = _waits(schedule, layer)
            values: dict[str, Filling] = {
                "colour": colour.said,
                "source": briefly(known.source),
                "shade": colour.step.shade or "",
                "yellows": known.yellows,
                "under": under,
                "later": later,
            }
            yield Spotted(layer, schedule.parts, values, below=colour)

    for case in cases(review.finished_alike, ambers):
        layer, values = case.first.layer, case.first.values
        yield finding(
            review.plan,
            case,
            _LIGHT if values["shade"] else _UNSAID,
            f"{_DO}, once {{under}} has dried {{later}}." if values["later"] else f"{_DO}.",
            figures=(Figure("clear coat", layer.said), Figure("colour below it", values["colour"])),
            limit=Figure("yellows", values["yellows"], finish(layer.product).source),
            severity=None if values["shade"] else Severity.NOTE,
            edit=None if values["later"] else _edit(review.source, layer.step),
        )
