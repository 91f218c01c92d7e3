"""The cans that a plan names, against what its coats take."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from reviewer.findings import Edit, Figure, Filling, Finding, Severity, Working
from reviewer.language.source import Span
from reviewer.plan_words import called
from reviewer.reference.spreading import Spread, spread
from reviewer.reference.usual_values import usual_value
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.units import LITRES_PER_GALLON, MM3_PER_LITRE, MM_PER_FOOT, UnitSystem, Value, liquid, percent

if TYPE_CHECKING:
    from reviewer.workshop.finish_quantities import ProductNeed

_SHORT = (
    "The plan has {have} of {product}, and its coats take about {likely} ({least} to {most}): it is likely "
    "to run out in {coat} on {parts}."
)
_SURE = (
    "The plan has {have} of {product}, and its coats take at least {least}, about {likely}: it runs out in "
    "{coat} on {parts}."
)
_NEAR = (
    "The plan has {have} of {product}, and its coats take about {likely}; where the wood is thirsty {most}, "
    "and it runs out in {coat} on {parts}."
)
_DO = "Buy {more} more: with it there is enough, thirsty wood counted in."


@rule("finish-runs-short", topic="finishing", severity=Severity.WARNING, needs=("plan.cans",))
def finish_runs_short(review: Review) -> Iterator[Finding]:
    """A can that is empty before its last coat is on.

    Goes wrong: The last coat ends in the middle of the top. By the time that the next can is here the edge of
    it has dried, and the lap shows; a can of another batch can differ in colour and sheen.

    Judged by: The true area of every surface that gets a coat, less what joints hide, over how far the
    product goes by its class, and 15 % for what stays in brush and can; for a sprayed coat, over what a gun
    puts on the wood. The first coat on bare wood goes the least far of the range, and its end grain takes
    twice as much. Less in the cans than is likely to be needed is a warning; less only than thirsty
    wood needs is a note. A thinned coat takes so much less from the can.

    Leaves out: Products of which the plan names no can; what a can really holds after a year on the shelf;
    and how far a coat goes on wood as rough as the saw left it, which takes more.

    Sources: data sheets and labels for how far a class goes, where the tables have one; for the other
    classes, and for end grain, common practice, no source. Waste from a data sheet, spray from a paint
    column.

    Flagged:

        plan "Table top" in inches
        stock board: actual 3/4 x 11 1/4 red oak, 8 ft
        part top: board, across, flat, 72 long, bottom at 30, left at 0, front at 0
        finish clear: on top
            sand 120, 150, 180
            3 coats of polyurethane oil, dry 10 h, sand 220 between coats
            have 1/2 pint of polyurethane oil

    Quiet:

        plan "Table top" in inches
        stock board: actual 3/4 x 11 1/4 red oak, 8 ft
        part top: board, across, flat, 72 long, bottom at 30, left at 0, front at 0
        finish clear: on top
            sand 120, 150, 180
            3 coats of polyurethane oil, dry 10 h, sand 220 between coats
            have 1/2 pint of polyurethane oil, buy 1 quart of polyurethane oil
    """
    from reviewer.workshop.finish_quantities import cans_for, finish_quantities

    for need in finish_quantities(review).products:
        if not need.cans:
            continue
        amount, have = need.amount, need.have
        short = need.runs_out_in(have)
        coat = short or need.runs_out_in(have, likely=False)
        if coat is None:
            continue
        sure = have < amount.least - 1e-9
        more = cans_for(amount.most - have, review.units.value)
        rate = spread(need.product)
        last = need.cans[-1].span
        values: dict[str, Filling] = {
            "have": _litres(have),
            "product": need.said,
            "least": _litres(amount.least),
            "likely": _litres(amount.likely),
            "most": _litres(amount.most),
            "coat": coat.layer.words,
            "parts": called(review.plan, coat.parts),
            "more": more.said,
        }
        yield Finding(
            parts=coat.parts,
            at=last,
            says=(_SURE if sure else _SHORT) if short else _NEAR,
            do=_DO,
            values=values,
            working=Working(
                figures=(
                    Figure("surface in all its coats", _area(sum(each.area for each in need.coats))),
                    Figure(*_spread_said(rate, review.units), rate.source),
                    _lost(need),
                    Figure("thirsty wood takes", values["most"]),
                    Figure("how firm the spread is", rate.status),
                ),
                formula="area × coats / spread × (1 + what is lost)",
                result=Figure("likely to be needed", values["likely"]),
                limit=Figure("in the cans", values["have"], "the plan"),
            ),
            also_at=tuple(can.span for can in need.cans[:-1]),
            edit=Edit(Span(last.end, last.end), f", buy {more.said} of {need.said}"),
            severity=Severity.WARNING if short else Severity.NOTE,
        )


def _litres(amount: float) -> Value:
    return liquid(amount * MM3_PER_LITRE)


def _area(square_metres: float) -> Value:
    return Value(square_metres * 1e6, "area")


def _spread_said(rate: Spread, units: UnitSystem) -> tuple[str, str]:
    """``a gallon goes`` ``350 to 400 sq ft``."""
    if units is UnitSystem.METRIC:
        least, most = f"{rate.least:.1f}", f"{rate.most:.1f} m²"
        name = "a litre goes"
    else:
        per_gallon = LITRES_PER_GALLON / (MM_PER_FOOT / 1000) ** 2
        least, most = f"{rate.least * per_gallon:.0f}", f"{rate.most * per_gallon:.0f} sq ft"
        name = "a gallon goes"
    return name, most if rate.least == rate.most else f"{least} to {most}"


def _lost(need: ProductNeed) -> Figure:
    """What does not reach the wood."""
    if all(coat.layer.step.applied == "spray" for coat in need.coats):
        least, most = (usual_value(f"spray-transfer-{end}") * 100 for end in ("least", "most"))
        return Figure("a gun puts on the wood", f"{least:.0f} to {most:.0f} %", "a paint column; memory")
    return Figure("kept by brush and can", percent(usual_value("coat-waste") * 100), "a data sheet")
