"""Conditioner and the stain that follows."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Edit, Figure, Filling, Finding, Severity
from reviewer.reference.finish_use import is_stain, is_water_based
from reviewer.reference.finishes import finish
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.units import hours
from reviewer.workshop.coat_cases import Spotted, cases, finding
from reviewer.workshop.coating import Schedule, briefly

_SAYS = {
    "base": "On {parts}, {below} lies under {product}: one is made with water and the other with oil, so "
    "the stain takes unevenly ({source}).",
    "late": "On {parts}, {below} dries {stated} before {product}: past {window} it has cured, and shuts "
    "the stain out ({source}).",
}
_DO = {
    "base": "Use {right} in place of {below}.",
    "late": "Put the stain on within {window}, while the conditioner is still damp.",
}


@rule("conditioner-mismatched", topic="finishing", severity=Severity.WARNING, needs=("plan.finishes",))
def conditioner_mismatched(review: Review) -> Iterator[Finding]:
    """Conditioner works only with a stain of its own kind, and only while it is still damp.

    Goes wrong: The conditioner has dried overnight and shuts the wood, so the stain wipes off again; or
    water meets oil, and the stain beads up in spots.

    Judged by: A conditioner right below a stain: both water-based or both oil, and no longer between them
    than the window of the conditioner.

    Leaves out: Drying times that the plan does not state.

    Sources: woodworking pages on conditioners for the base and the window; the longest of 2 h is from
    memory of labels.

    Flagged:

        plan "Pine tray" in inches
        stock board: actual 3/4 x 5 1/2 eastern white pine, 8 ft
        part tray: board, across, flat, 24 long, bottom at 0, left at 0, front at 0
        finish dark: on tray
            1 coat of conditioner oil, dry 24 h
            1 coat of stain oil, dry 24 h
            2 coats of polyurethane oil

    Quiet:

        plan "Pine tray" in inches
        stock board: actual 3/4 x 5 1/2 eastern white pine, 8 ft
        part tray: board, across, flat, 24 long, bottom at 0, left at 0, front at 0
        finish dark: on tray
            1 coat of conditioner oil, dry 15 min
            1 coat of stain oil, dry 24 h
            2 coats of polyurethane oil
    """
    late_after = finish("conditioner_oil").scuff_after

    def mismatched(schedule: Schedule) -> Iterator[Spotted]:
        for meeting in schedule.meetings:
            lower, upper = meeting.lower, meeting.upper
            if lower is None or not is_stain(upper.product) or meeting.trouble is not None:
                continue
            known = finish(lower.product)
            if known.compat_group != "conditioner":
                continue
            values: dict[str, Filling] = {"source": briefly(known.source)}
            if is_water_based(lower.product) != is_water_based(upper.product):
                right = "conditioner waterborne" if is_water_based(upper.product) else "conditioner oil"
                yield Spotted(
                    upper, schedule.parts, {**values, "kind": "base", "right": right}, "base", lower
                )
            elif lower.dry is not None and late_after is not None and lower.dry > late_after:
                late = {"stated": hours(lower.dry), "window": hours(late_after)}
                yield Spotted(upper, schedule.parts, {**values, **late, "kind": "late"}, "late", lower)

    for case in cases(review.finished_alike, mismatched):
        values, below = case.first.values, case.first.below
        assert below is not None
        kind = str(values["kind"])
        edit = None
        if kind == "late" and below.step.dry_span is not None:
            edit = Edit(below.step.dry_span, "dry 15 min")
        yield finding(
            review.plan,
            case,
            _SAYS[kind],
            _DO[kind],
            figures=(Figure("conditioner", below.said), Figure("stain", case.first.layer.said)),
            limit=Figure("asked for", "the same base, still damp", finish(below.product).source),
            edit=edit,
        )
