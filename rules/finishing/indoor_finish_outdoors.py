"""What weather meets first, where it is made for rooms."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Figure, Finding, Severity
from reviewer.reference.finish_use import is_clear_film, is_paint
from reviewer.reference.finishes import finish
from reviewer.reference.sources import cited
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.workshop.coat_cases import Spotted, cases, finding
from reviewer.workshop.coating import Layer, Schedule, briefly
from reviewer.workshop.wearing import clear_life_outdoors

_SAYS = (
    "Outdoors, {product} is the outermost coat on {parts}, and it is made for rooms: sun and rain break "
    "it up ({source})."
)
_RENEW = (
    "Outdoors, {product} on {parts} is a clear film, which lasts {life}, and the plan does not say that "
    "it is done again ({source})."
)
_DO = {
    "paint": "Use enamel acrylic or another exterior paint outermost.",
    "clear": "Use varnish spar, or an exterior stain that is simply brushed over again, outermost.",
}
_HANDBOOK = "finish table, where each class is used"
_LIFE_SOURCE = "S71; S53"


@rule(
    "indoor-finish-outdoors",
    topic="finishing",
    severity=Severity.WARNING,
    needs=("plan.finishes", "plan.room"),
)
def indoor_finish_outdoors(review: Review) -> Iterator[Finding]:
    """An indoor finish outdoors goes milky, cracks and peels within a season or two.

    Goes wrong: Sun makes an indoor film brittle, rain gets under it through the first crack, and it comes
    off in flakes that have to be scraped out of every corner.

    Judged by: A room that is outdoors, and the outermost coat of each face, by where the finish table says
    that its class is used. Below an outdoor coat an indoor sealer or primer is no fault. A clear outdoor
    film gets a note where the plan does not say how often it is done again.

    Leaves out: Whether a roof keeps off sun and rain, which the plan cannot say; and colour that fades.

    Sources: the finish table, with a source on each class; for the life of clear films outdoors Iowa State
    University Extension and data sheets of spar varnish.

    Flagged:

        plan "Planter box" in inches
        stock board: actual 3/4 x 5 1/2 western red cedar, 8 ft
        part front: board, across, on edge, 30 long, bottom at 0, left at 0, front at 0
        finish clear: on front
            3 coats of polyurethane oil
        room porch: outdoors

    Quiet:

        plan "Planter box" in inches
        stock board: actual 3/4 x 5 1/2 western red cedar, 8 ft
        part front: board, across, on edge, 30 long, bottom at 0, left at 0, front at 0
        finish clear: on front
            3 coats of varnish spar
            renew every 2 years
        room porch: outdoors
    """
    if review.plan.room is None or not review.plan.room.outdoors:
        return
    least, most = clear_life_outdoors()

    def outermost(schedule: Schedule) -> Layer | None:
        return schedule.layers[-1] if schedule.layers else None

    def indoor(schedule: Schedule) -> Iterator[Spotted]:
        last = outermost(schedule)
        if last is None:
            return
        known = finish(last.product)
        if not known.outdoors:
            kind = "paint" if is_paint(last.product) else "clear"
            yield Spotted(last, schedule.parts, {"source": _HANDBOOK, "kind": kind}, kind="indoor")
        elif is_clear_film(last.product):
            finishes = [review.plan.finishes[place] for place in schedule.places]
            if all(each.renewed_months is None for each in finishes):
                life = f"{least:g} to {most:g} years"
                values = {"source": briefly(cited(_LIFE_SOURCE)), "kind": "renew", "life": life}
                yield Spotted(last, schedule.parts, values, kind="renew")

    for case in cases(review.finished_alike, indoor):
        kind = str(case.first.values["kind"])
        renew = kind == "renew"
        yield finding(
            review.plan,
            case,
            _RENEW if renew else _SAYS,
            "Say in the plan how often it is done again, such as: renew every 2 years."
            if renew
            else _DO[kind],
            figures=(Figure("outermost coat", case.first.layer.said),),
            limit=Figure("life of a clear film outdoors", case.first.values["life"], cited(_LIFE_SOURCE))
            if renew
            else None,
            severity=Severity.NOTE if renew else None,
        )
