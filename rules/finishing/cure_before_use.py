"""When a finish takes hard use."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import timedelta

from reviewer.findings import Figure, Finding, Severity
from reviewer.reference.finishes import finish
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.units import Value, hours
from reviewer.workshop.coat_cases import Spotted, cases, finding
from reviewer.workshop.coating import Layer, Schedule, briefly

_CHILDREN = (
    "Children under {age} use the room, and {product} on {parts} takes up to {cure} after its last coat "
    "to harden right through{on}: until then it marks, and must not be chewed ({source})."
)
_STICKS = (
    "On {parts}, {product} sticks to itself until it has cured, up to {cure} after its last coat{on}: "
    "doors and drawers shut before that tear it ({source})."
)
_HOURS_PER_DAY = 24


@rule(
    "cure-before-use",
    topic="finishing",
    severity=Severity.NOTE,
    limits=("child-age",),
    needs=("plan.finishes",),
)
def cure_before_use(review: Review) -> Iterator[Finding]:
    """A finish is dry long before it is hard.

    Goes wrong: Dry to the touch on Sunday, back in the room on Monday: the vase leaves its ring for good,
    the painted door sticks to the frame and takes the paint with it, and the toddler has chewed a corner.

    Judged by: The full cure of the slowest coat by the finish table. It is told where small children use
    the room, and where acrylic paint on a part that opens or slides meets itself. Where the plan names
    the day on which finishing starts, so is the date, with the drying times of the plan and no idle days.

    Leaves out: The day on which the piece is wanted, which a plan cannot say; and light use, which most
    films take much sooner. The label's own cure time wins.

    Sources: the finish table, with a source on each class (data sheets, labels, a household page on paint
    that sticks to itself).

    Flagged:

        plan "Low shelf" in inches
        stock board: actual 3/4 x 7 1/4 yellow-poplar, 8 ft
        part shelf: board, across, flat, 24 long, bottom at 0, left at 0, front at 0
        finish clear: on shelf
            3 coats of polyurethane oil, dry 8 h
        room nursery: indoors, children under 3
        shop: 70 F, start 2027-03-01

    Quiet:

        plan "Low shelf" in inches
        stock board: actual 3/4 x 7 1/4 yellow-poplar, 8 ft
        part shelf: board, across, flat, 24 long, bottom at 0, left at 0, front at 0
        finish clear: on shelf
            3 coats of polyurethane oil, dry 8 h
        room study: indoors, no children
    """
    room, shop = review.plan.room, review.plan.shop
    years = (room.children_under if room else None) or 0.0
    small = 0.0 < years <= review.limit("child-age").amount
    moving = {name for each in review.plan.movings for name in each.parts}
    if not small and not moving:
        return

    def slowest(schedule: Schedule) -> tuple[Layer, float] | None:
        cures = [(finish(layer.product).full_cure, layer) for layer in schedule.layers]
        known = [(cure[1], place, layer) for place, (cure, layer) in enumerate(cures) if cure is not None]
        if not known:
            return None
        cure, _, layer = max(known, key=lambda each: each[:2])
        return layer, cure

    def soft(schedule: Schedule) -> Iterator[Spotted]:
        found = slowest(schedule)
        if found is None:
            return
        layer, cure = found
        on = ""
        if shop is not None and shop.start is not None:
            days = -(-(schedule.calendar.total + cure) // _HOURS_PER_DAY)
            on = f", until {shop.start + timedelta(days=days)} at the earliest"
        values: dict[str, Value | str] = {
            "cure": hours(cure),
            "on": on,
            "source": briefly(finish(layer.product).drying_source),
        }
        if small:
            values["age"] = f"{years:g}"
            yield Spotted(layer, schedule.parts, {**values, "kind": "children"}, kind="children")
            return
        last = schedule.layers[-1]
        sticks = tuple(name for name in schedule.parts if name in moving)
        if finish(last.product).compat_group == "paint_acrylic" and sticks:
            yield Spotted(last, sticks, {**values, "kind": "sticks"}, kind="sticks")

    for case in cases(review.finished_alike, soft):
        values = case.first.values
        children = values["kind"] == "children"
        known = finish(case.first.layer.product)
        yield finding(
            review.plan,
            case,
            _CHILDREN if children else _STICKS,
            "Keep the piece away from them until then, and use a product whose label allows it for children."
            if children
            else "Leave doors and drawers open until then, or rub a little paste wax where they meet.",
            figures=(Figure("coat", case.first.layer.said),),
            limit=Figure("full cure after the last coat", values["cure"], known.drying_source),
        )
