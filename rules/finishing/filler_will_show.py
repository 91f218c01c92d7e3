"""Wood filler under a stain or a clear coat."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Figure, Finding, Severity, Working
from reviewer.language.source import Span
from reviewer.model.plan import Surfacing
from reviewer.plan_words import called
from reviewer.reference.finishes import Compatibility, compatibility
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.workshop.coating import Layer, Schedule, reason_of

#: What a plan says of filler that has the colour of the finished work already.
_MATCHED = frozenset(
    {"tinted", "coloured", "colored", "dyed", "matched", "matching", "colour-matched", "color-matched"}
)
_PATCH = "putty_patch"
#: The table's reason for a coat that hides a patch.
_HIDES = "PATCH_PAINT"
_SAYS = "On {parts}, {coat} goes over holes filled with {stuff}, and {why} ({source})."
_DO = "Fill the holes after the colour is on, with filler tinted to match it; try both on a test board."
_WHY = {
    "PATCH_STAIN": "filler does not take colour like the wood around it: each patch stays a pale spot",
    "PATCH_CLEAR": "each patch shows through it as a spot",
}


def _filled(schedule: Schedule) -> Iterator[tuple[Surfacing, Layer, Compatibility]]:
    """Each filling of holes with the coat on it, where no coat that follows hides it."""
    for place, layer in enumerate(schedule.layers):
        for work in layer.worked:
            if work.work != "fill holes" or _MATCHED.intersection(work.stuff.split()):
                continue
            above = [compatibility(each.product, _PATCH) for each in schedule.layers[place:]]
            if above[0].reason_code in _WHY and all(each.reason_code != _HIDES for each in above):
                yield work, layer, above[0]


@rule("filler-will-show", topic="finishing", severity=Severity.WARNING, needs=("plan.finishes",))
def filler_will_show(review: Review) -> Iterator[Finding]:
    """Filled holes that a stain or a clear coat brings out.

    Goes wrong: Dry, the patch looks like the wood. Under stain it stays pale, or drinks and goes dark,
    and under a clear coat it keeps the dull colour of putty while the wood around it comes alive.

    Judged by: `fill holes` in a finish, and what the first coat after it does on a patch of filler: a
    stain, a dye or an oil does not colour it, a clear coat shows it. Paint anywhere above hides it.
    Filler that is said to be tinted, coloured or matched passes.

    Leaves out: Plugs of wood; filler for the grain, which is a coat; and how well a colour is matched.

    Sources: common practice, no source, as the compatibility table says of each pair.

    Flagged:

        plan "Coat rail" in inches
        stock board: actual 3/4 x 5 1/2 red oak, 8 ft
        part rail: board, across, on edge, 30 long, bottom at 0, left at 0, front at 0
        finish clear: on rail
            fill holes with wood filler, sand 120, 150
            1 coat of stain gel, dry 24 h
            2 coats of polyurethane oil, dry 8 h

    Quiet:

        plan "Coat rail" in inches
        stock board: actual 3/4 x 5 1/2 red oak, 8 ft
        part rail: board, across, on edge, 30 long, bottom at 0, left at 0, front at 0
        finish clear: on rail
            sand 120, 150
            1 coat of stain gel, dry 24 h
            fill holes with tinted filler
            2 coats of polyurethane oil, dry 8 h
    """
    told: dict[Span, tuple[Surfacing, Layer, Compatibility, dict[str, str]]] = {}
    for schedule in review.finished_alike:
        for work, layer, pair in _filled(schedule):
            told.setdefault(work.span, (work, layer, pair, {}))[3].update(schedule.where)
    for work, layer, pair, where in told.values():
        yield Finding(
            parts=tuple(where),
            at=work.span,
            says=_SAYS,
            do=_DO,
            values={
                "parts": called(review.plan, tuple(where.values())),
                "coat": layer.words,
                "stuff": work.stuff or "filler",
                "why": _WHY[pair.reason_code],
                "source": pair.source,
            },
            working=Working(
                figures=(
                    Figure("what the table says", "shows", pair.source),
                    Figure("what that rests on", pair.status),
                    Figure("why", reason_of(pair)),
                )
            ),
            also_at=(layer.step.span,),
        )
