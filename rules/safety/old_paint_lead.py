"""Old paint, which may hold lead."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Finding, Severity
from reviewer.model.plan import Sanding, Surfacing
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.wording import listed
from reviewer.workshop.who_uses import children_here

_SAYS = (
    "{parts} {are} cut from {stock}, which has old paint on it{reclaimed}: paint from before 1978 often "
    "holds lead, and its dust harms children most{sanded}{children}."
)
_DO = (
    "Have the paint tested before you cut or sand it, and until then treat it as lead: no dry sanding, no "
    "flame, children kept away, dust and chips bagged. Local rules say who may work on it and where it goes; "
    "a certified renovator or the health office can tell."
)


def _dry_sanded(review: Review, part: str) -> bool:
    """Whether a finish sands a part before the old paint is off it."""
    for finish in review.plan.finishes:
        if part not in finish.on:
            continue
        for step in finish.steps:
            if isinstance(step, Sanding):
                return True
            if isinstance(step, Surfacing) and step.work == "strip old paint":
                return False
    return False


@rule(
    "old-paint-lead",
    topic="safety",
    severity=Severity.WARNING,
    limits=("child-age",),
    needs=("plan.stocks",),
)
def old_paint_lead(review: Review) -> Iterator[Finding]:
    """Wood with old paint on it, which may hold lead.

    Goes wrong: Old doors and boards look well on a new shelf. Sanding them fills the house with lead dust,
    and a child that gnaws the edge takes in more.

    Judged by: Every stock with “old paint” that a part is cut from. It is an error where children are about
    (the room says so, or the title) or where the finish sands the part before the paint is stripped.

    Leaves out: What the paint really holds: only a test tells. Old varnish, and paint on what is painted
    over in place. Wood whose paint was taken off by others still deserves a test. Local rules and certified,
    licensed renovators decide how it is worked and where it goes.

    Sources: EPA on lead in renovation and 40 CFR 745 subpart E (read, in a digest); 16 CFR 1303 limits lead
    in new paint to 90 ppm (read, in a summary).

    Flagged:

        plan "Book shelf" in inches
        stock door: actual 1 x 8 pine, 6 ft, reclaimed, old paint
        part shelf: door, across, flat, 30 long, on floor, left at 0, front at 0

    Quiet:

        plan "Book shelf" in inches
        stock door: actual 1 x 8 pine, 6 ft, reclaimed, old finish
        part shelf: door, across, flat, 30 long, on floor, left at 0, front at 0
    """
    painted = [name for name, stock in review.plan.stocks.items() if stock.old_coat == "paint"]
    if not painted:
        return
    children = children_here(review.plan, review.limits)
    for name in painted:
        stock = review.plan.stocks[name]
        parts = tuple(part.name for part in review.plan.parts.values() if part.stock == name)
        if not parts:
            continue
        sanded = [part for part in parts if _dry_sanded(review, part)]
        yield Finding(
            parts=parts,
            at=stock.span,
            says=_SAYS,
            do=_DO,
            values={
                "parts": listed(parts),
                "are": "is" if len(parts) == 1 else "are",
                "stock": name,
                "reclaimed": " and comes out of an old house or piece" if stock.reclaimed else "",
                "sanded": f"; the plan sands {listed(sanded)} before the paint is stripped" if sanded else "",
                "children": "; children are about here" if children else "",
            },
            severity=Severity.ERROR if children or sanded else Severity.WARNING,
        )
