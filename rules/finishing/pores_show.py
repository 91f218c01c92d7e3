"""Gloss on open grain."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Figure, Finding, Severity
from reviewer.reference.finish_use import is_clear_film, open_pored
from reviewer.reference.finishes import finish
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.workshop.coat_cases import Spotted, cases, finding
from reviewer.workshop.coating import Schedule

_SAYS = "On {parts}, {product} is glossy over unfilled {wood}: every open pore shows as a pit ({source})."
_FILLERS = ("filler_oil", "filler_water", "epoxy")


@rule("pores-show", topic="finishing", severity=Severity.NOTE, needs=("plan.finishes",))
def pores_show(review: Review) -> Iterator[Finding]:
    """A gloss film on open-pored wood shows every pore unless the grain is filled first.

    Goes wrong: Oak under gloss looks like orange peel with scratches: the light catches the rim of every
    pore, and more coats only make it shinier.

    Judged by: A clear film that the plan calls gloss, outermost on oak, ash, walnut, mahogany and their
    like, with no grain filler and no grain filled below it. A satin or matt film hides it.

    Leaves out: Films whose sheen the plan does not name; and whether you like the open look.

    Sources: the Wood Handbook, ch. 16, for filling open-pored wood in clear work; the list of woods partly
    from memory.

    Flagged:

        plan "Desk top" in inches
        stock board: actual 3/4 x 9 1/4 red oak, 8 ft
        part top: board, across, flat, 30 long, bottom at 0, left at 0, front at 0
        finish clear: on top
            3 coats of polyurethane oil gloss

    Quiet:

        plan "Desk top" in inches
        stock board: actual 3/4 x 9 1/4 red oak, 8 ft
        part top: board, across, flat, 30 long, bottom at 0, left at 0, front at 0
        finish clear: on top
            1 coat of grain filler oil, dry 2 days
            3 coats of polyurethane oil gloss
    """

    def glossy(schedule: Schedule) -> Iterator[Spotted]:
        last = schedule.layers[-1] if schedule.layers else None
        if last is None or last.step.sheen != "gloss" or not is_clear_film(last.product):
            return
        filled = any(finish(each.product).compat_group in _FILLERS for each in schedule.layers)
        if filled or any(work.work == "fill grain" for each in schedule.layers for work in each.worked):
            return
        by_wood: dict[str, list[str]] = {}
        for name in schedule.parts:
            wood = review.material_of(name)
            if wood.key in open_pored():
                by_wood.setdefault(wood.key, []).append(name)
        for key, names in by_wood.items():
            values = {"wood": review.material_of(names[0]).said, "source": open_pored()[key]}
            yield Spotted(last, tuple(names), values, kind=key)

    for case in cases(review.finished_alike, glossy):
        values = case.first.values
        yield finding(
            review.plan,
            case,
            _SAYS,
            "Fill the grain before the first clear coat, or choose a satin sheen.",
            figures=(Figure("wood", values["wood"]), Figure("sheen", "gloss", "the plan")),
            limit=Figure("open pores", "filled", str(values["source"])),
        )
