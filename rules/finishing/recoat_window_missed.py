"""Waiting longer between two coats than the product bonds by itself."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Edit, Figure, Filling, Finding, Severity
from reviewer.language.source import Span
from reviewer.reference.finish_use import is_primer
from reviewer.reference.finishes import finish
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.units import hours
from reviewer.workshop.coat_cases import Spotted, cases, finding
from reviewer.workshop.coating import Schedule, briefly
from reviewer.workshop.coating_remedies import scuff_grit

_SAYS = (
    "On {parts}, {coat} goes on {stated} after {lower}: past {window} the coat below has set, and the next "
    "only grips where it is dulled ({source})."
)


def _late(schedule: Schedule, outdoors: bool) -> Iterator[Spotted]:
    for meeting in schedule.meetings:
        lower, upper = meeting.lower, meeting.upper
        if lower is None or lower.dry is None or upper.sanded or meeting.trouble is not None:
            continue
        known = finish(lower.product)
        # Unlike products of one kind say so in the table, such as oil varnish over oil polyurethane.
        kin = meeting.same_product or known.compat_group == finish(upper.product).compat_group
        kin = kin or meeting.pair.reason_code.startswith("SELF_") or (outdoors and is_primer(lower.product))
        # Spray enamel may follow again once it is hard, and a stain takes more of itself at any time.
        if known.scuff_after is None or not kin or not known.film or meeting.pair.window is not None:
            continue
        if lower.dry > known.scuff_after:
            values: dict[str, Filling] = {
                "stated": hours(lower.dry),
                "lower": lower.words,
                "window": hours(known.scuff_after),
                "over": hours(lower.dry - known.scuff_after),
                "source": briefly(known.drying_source),
                "grit": str(scuff_grit(lower)),
            }
            yield Spotted(upper, schedule.parts, values, below=lower)


def _edit(spotted: Spotted) -> Edit:
    grit, step = spotted.values["grit"], spotted.layer.step
    if spotted.below is not None and spotted.below.step is step:
        end = Span(step.span.end, step.span.end)
        return Edit(end, f", sand {grit} between coats")
    return Edit(Span(step.span.start, step.span.start), f"sand {grit}, ")


@rule("recoat-window-missed", topic="finishing", severity=Severity.WARNING, needs=("plan.finishes",))
def recoat_window_missed(review: Review) -> Iterator[Finding]:
    """Wait too long between two coats of one product, and the second no longer bonds by itself.

    Goes wrong: The first coat goes on one weekend and the second the next. The first has gone hard, so
    the second lies on it unbonded and flakes at the edges within the year.

    Judged by: The drying time that the plan states between two coats of one kind, against the longest that
    the product's sheets allow without sanding: 24 h for most varnishes and polyurethanes, two weeks for
    paints, and outdoors two weeks between primer and paint, since a primer weathers. With any sanding
    between, the wait may be as long as you like.

    Leaves out: Drying times that the plan does not state; shellac and solvent lacquer, which melt into the
    coat below; stains and oils, which build no film; and coats of unlike products.

    Sources: the finish table, with a source on each class (data sheets and labels); the window of water-based
    films is from memory, which the row says.

    Flagged:

        plan "Side table" in inches
        stock board: actual 3/4 x 9 1/4 red oak, 8 ft
        part top: board, across, flat, 24 long, bottom at 0, left at 0, front at 0
        finish clear: on top
            3 coats of polyurethane oil, dry 7 days

    Quiet:

        plan "Side table" in inches
        stock board: actual 3/4 x 9 1/4 red oak, 8 ft
        part top: board, across, flat, 24 long, bottom at 0, left at 0, front at 0
        finish clear: on top
            3 coats of polyurethane oil, dry 7 days, sand 220 between coats
    """
    outdoors = review.plan.room is not None and review.plan.room.outdoors
    for case in cases(review.finished_alike, lambda schedule: _late(schedule, outdoors)):
        values = case.first.values
        below = case.first.below
        assert below is not None
        known = finish(below.product)
        yield finding(
            review.plan,
            case,
            _SAYS,
            "Sand {lower} dull with {grit} grit and wipe it before the next, or recoat within {window}.",
            figures=(
                Figure("stated wait", values["stated"], "the plan"),
                Figure("too long by", values["over"]),
            ),
            limit=Figure("longest wait without sanding", values["window"], known.drying_source),
            edit=_edit(case.first),
        )
