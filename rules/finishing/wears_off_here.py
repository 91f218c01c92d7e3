"""A thin finish where people sit, step or put down cups."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Figure, Filling, Finding, Severity
from reviewer.reference.finish_use import finish_use
from reviewer.reference.finishes import finish
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.units import count
from reviewer.workshop.coat_cases import Spotted, cases, finding
from reviewer.workshop.coating import Schedule, briefly
from reviewer.workshop.wearing import on_top, used_surfaces

_SAYS = {
    "little": "On {parts}, used as a {use}, the finish is {product}: hands, clothes and cups wear it through "
    "({source}).",
    "thin": "On {parts}, used as a {use}, the plan has {coats} of {product}, and it takes {needed} to "
    "stand up to that ({source}).",
    "none": "On {parts}, used as a {use}, {product} has nothing over it: it rubs off on clothes and hands "
    "({source}).",
    "some": "On {parts}, used as a {use}, {product} is outermost: water and spirits leave rings in it "
    "({source}).",
}
_DO = {
    "little": "Put on a film that takes wear, such as 3 coats of polyurethane, or plan to renew it often.",
    "thin": "Give it {needed} coats of {product} in all.",
    "none": "Put a clear coat over it that goes with it, such as 2 coats of polyurethane.",
    "some": "Use coasters, or put a harder film over it, such as polyurethane waterborne.",
}


@rule(
    "wears-off-here",
    topic="finishing",
    severity=Severity.WARNING,
    limits=("table-height-low", "table-height-high"),
    needs=("plan.finishes", "plan.loads"),
)
def wears_off_here(review: Review) -> Iterator[Finding]:
    """Wax or a thin oil wears off a seat, a step or a table top within months.

    Goes wrong: The waxed table is lovely until the first wet glass leaves a white ring, and the waxed seat
    is grey and rough by spring.

    Judged by: The strongest coat on the upper face of a part that the plan loads with people or plants, or
    that is the top of a piece of table height. Wax, linseed, food oils, chalk-type and milk paint, and
    stain alone give a warning, and so do too few coats of an oil. Shellac on a table top is a note. Where
    the plan says that it is renewed, wax and oil pass.

    Leaves out: Place mats and cushions; table tops that are not the highest part of their piece; and sheen.

    Sources: the finish table (usual coats) and the table of finishes in use, with a source on each class;
    what takes wear is common practice, no source.

    Flagged:

        plan "Hall stool" in inches
        stock board: actual 1 x 11 1/4 red oak, 8 ft
        part seat: board, across, flat, 16 long, bottom at 17, left at 0, front at 0
        part side for each of left, right: board, upright, facing side, 17 tall
            on floor, flush with each of seat, front at 0
        join seat to side.*: screws #8 x 2, 2 per joint, from above
        finish waxed: on seat
            1 coat of wax paste
        load seat: 1 person seated

    Quiet:

        plan "Hall stool" in inches
        stock board: actual 1 x 11 1/4 red oak, 8 ft
        part seat: board, across, flat, 16 long, bottom at 17, left at 0, front at 0
        part side for each of left, right: board, upright, facing side, 17 tall
            on floor, flush with each of seat, front at 0
        join seat to side.*: screws #8 x 2, 2 per joint, from above
        finish waxed: on seat
            3 coats of polyurethane oil, dry 30 days, sand 220 between coats
            1 coat of wax paste
        load seat: 1 person seated
    """
    used = used_surfaces(review)
    if not used:
        return

    def weak(schedule: Schedule) -> Iterator[Spotted]:
        if not schedule.layers:
            return
        wears = [finish_use(layer.product).wear for layer in schedule.layers]
        if "hard" in wears:
            return
        places = [review.plan.finishes[place] for place in schedule.places]
        if any(each.renewed_months for each in places) and wears[-1] != "none":
            return
        by_use: dict[str, list[str]] = {}
        for name in schedule.parts:
            if name in used and on_top(schedule, name):
                by_use.setdefault(used[name], []).append(name)
        last = schedule.layers[-1]
        wear = "some" if "some" in wears else "thin" if "thin" in wears else wears[-1]
        layer = next(each for each, how in zip(schedule.layers, wears, strict=True) if how == wear)
        layer = last if wear in ("little", "none") else layer
        known = finish(layer.product)
        coats = sum(1 for each in schedule.layers if each.product == layer.product)
        for use, names in by_use.items():
            if wear == "thin" and coats >= known.coats[0]:
                continue
            if wear == "some" and use != "table top":
                continue
            values: dict[str, Filling] = {
                "use": use,
                "wear": wear,
                "source": briefly(finish_use(layer.product).source),
                "coats": f"{coats} coat{'s' if coats > 1 else ''}",
                "needed": count(known.coats[0]),
            }
            yield Spotted(layer, tuple(names), values, kind=use)

    for case in cases(review.finished_alike, weak):
        values = case.first.values
        wear = str(values["wear"])
        yield finding(
            review.plan,
            case,
            _SAYS[wear],
            _DO[wear],
            figures=(Figure("use", values["use"]), Figure("coats", values["coats"])),
            limit=Figure("usual coats", values["needed"], str(values["source"])),
            severity=Severity.NOTE if wear == "some" else None,
        )
