"""What food touches."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Figure, Finding, Severity
from reviewer.reference.finish_use import food_piece, is_paint, is_stain
from reviewer.reference.finishes import finish
from reviewer.reference.sources import cited
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.workshop.coat_cases import Spotted, cases, finding
from reviewer.workshop.coating import Schedule, briefly

_SAYS = {
    "never": "On {parts}, {product} is not for a {thing}: {why} ({source}).",
    "film": "On {parts}, {product} is a film, and on a {thing} knives chip it into the food ({source}).",
    "driers": "On {parts}, {product} may hold metal driers: on a {thing} its label has to say that it may "
    "touch food ({source}).",
    "cured": "On {parts}, {product} may touch the food on a {thing} only once it has cured, and only "
    "where its label says so ({source}).",
}
_DO = {
    "never": "Use oil mineral or melted paraffin, which the Forest Products Laboratory names for such "
    "things.",
    "film": "Use oil mineral or melted paraffin, and renew it.",
    "driers": "Use oil tung or oil mineral, or a can whose label names food.",
    "cured": "Keep food off until the full cure that the label gives.",
}
_FPL = "S62"


def _trouble(product: str, use: str) -> tuple[str, str, Severity] | None:
    """What is wrong with a class on a thing that food lies on: kind, why, and how much it matters."""
    known = finish(product)
    if is_stain(product):
        return "never", "stains hold pigments and binders that no one tests for food", Severity.WARNING
    if known.food.startswith(("not for", "contains")):
        why = "it holds a fungicide" if "fungicide" in known.food else "its class is not made to touch food"
        return "never", why, Severity.WARNING
    if known.film and use == "board":
        return "film", "", Severity.WARNING
    if "driers" in known.food:
        return "driers", "", Severity.WARNING
    if known.full_cure is not None and known.role != "prep":
        return "cured", "", Severity.NOTE
    return None


@rule("food-contact", topic="finishing", severity=Severity.WARNING, needs=("plan.finishes",))
def food_contact(review: Review) -> Iterator[Finding]:
    """Paint, stain or a film does not belong where food is cut or served.

    Goes wrong: The knife chips the varnish into the bread, and water creeps below what is left of it.
    Preservatives are made to kill what grows, and do not stop at fungus.

    Judged by: Parts whose name, or a plan whose title, names a thing that food lies on, such as a cutting
    board or a salad bowl. Stain, paint, preservative and outdoor varnish are a warning there, and so is a
    film where knives go, and boiled linseed oil for its driers. Other finishes that cure get a note.
    The label and your local rules on food contact decide.

    Leaves out: Worktops and tables, where plates come between; and things whose name does not say it.

    Sources: Forest Products Laboratory, finishes for items used for food; 21 CFR 175.300 for which drying
    oils may be used; the driers of boiled linseed from memory.

    Flagged:

        plan "Cutting board" in inches
        stock board: actual 1 x 9 1/4 hard maple, 8 ft
        part board: board, across, flat, 14 long, bottom at 0, left at 0, front at 0
        finish clear: on board
            2 coats of varnish spar

    Quiet:

        plan "Cutting board" in inches
        stock board: actual 1 x 9 1/4 hard maple, 8 ft
        part board: board, across, flat, 14 long, bottom at 0, left at 0, front at 0
        finish oiled: on board
            3 coats of oil mineral
    """
    named = {name: food_piece(name) for name in review.plan.parts}
    if not any(named.values()):  # the title is about the whole piece, unless a part says it of itself
        named = dict.fromkeys(named, food_piece(review.plan.title))

    def touched(schedule: Schedule) -> Iterator[Spotted]:
        by_thing: dict[tuple[str, str], list[str]] = {}
        for name in schedule.parts:
            thing = named[name]
            if thing is not None:
                by_thing.setdefault(thing, []).append(name)
        for (said, use), names in by_thing.items():
            seen = set()
            for layer in schedule.layers:
                trouble = _trouble(layer.product, use)
                if trouble is None or layer.product in seen:
                    continue
                seen.add(layer.product)
                kind, why, severity = trouble
                source = (
                    "from memory"
                    if kind == "driers"
                    else (
                        cited(_FPL)
                        if kind == "film" or is_paint(layer.product)
                        else briefly(finish(layer.product).source)
                    )
                )
                values = {"thing": said, "kind": kind, "why": why, "source": source, "weight": severity.word}
                yield Spotted(layer, tuple(names), values, kind=said)

    for case in cases(review.finished_alike, touched):
        values = case.first.values
        kind = str(values["kind"])
        yield finding(
            review.plan,
            case,
            _SAYS[kind],
            _DO[kind],
            figures=(Figure("used as", values["thing"]),),
            limit=Figure("food", finish(case.first.layer.product).food, str(values["source"])),
            severity=Severity.NOTE if values["weight"] == "note" else None,
        )
