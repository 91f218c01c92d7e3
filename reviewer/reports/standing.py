"""Cautions that stand in every report where they apply: no setting or waiver leaves them out."""

from __future__ import annotations

from reviewer.model.plan import Coats, Plan, Surfacing
from reviewer.records import NamedTuple
from reviewer.reference.cautions import shop_cautions
from reviewer.reference.finishes import finish
from reviewer.review import Review
from reviewer.wording import listed


def products_of(plan: Plan) -> dict[str, str]:
    """The classes of finish that are put on, those on knots too, each with what the plan first calls it."""
    found: dict[str, str] = {}
    for each in plan.finishes:
        for step in each.steps:
            if isinstance(step, Coats):
                found.setdefault(step.product, step.said)
            elif isinstance(step, Surfacing) and step.product is not None:
                found.setdefault(step.product, step.stuff)
    return found


def old_paint_in(plan: Plan) -> bool:
    """Whether paint of an unknown age may be on the wood: it is so said, stripped, or the wood is old."""
    used = {part.stock for part in plan.parts.values()}
    for name, stock in plan.stocks.items():
        if name in used and (stock.old_coat == "paint" or (stock.reclaimed and stock.old_coat is None)):
            return True
    works = (step for each in plan.finishes for step in each.steps if isinstance(step, Surfacing))
    return any(work.work == "strip old paint" for work in works)


class Standing(NamedTuple):
    """A caution that is told in every report where it applies, and that no setting or waiver takes out."""

    name: str
    says: str
    source: str
    about: str  # the row of the table that it comes from


#: By the row of the table: the name that it stands under, and what comes before the row's own words.
_STANDING = {
    "oil, oil-varnish, stain, boiled linseed, tung": (
        "rags-self-heat",
        "rags, pads and brushes with {products} on them heat up by themselves and can set a heap or a bin on "
        "fire within hours.",
    ),
    "old paint": ("old-paint", "old paint can hold lead, and its dust poisons, children above all."),
}
_LAST = "The label, local rules and licensed practice come first."


def standing_cautions(review: Review) -> tuple[Standing, ...]:
    """What can burn a house down or poison a child, where the plan's finish or wood brings it.

    They are no findings: nothing in the plan is to be mended, so a sound plan passes with them; but the
    report has them before its verdict, in short reviews too.
    """
    plan = review.plan
    if not plan.finishes and not any(stock.reclaimed or stock.old_coat for stock in plan.stocks.values()):
        return ()
    heating = [said for product, said in products_of(plan).items() if finish(product).rags_self_heat]
    called = {"oil, oil-varnish, stain, boiled linseed, tung": bool(heating), "old paint": old_paint_in(plan)}
    if not any(called.values()):
        return ()
    rows = {caution.about: caution for caution in shop_cautions()}
    found = []
    for about, (name, says) in _STANDING.items():
        if called[about]:
            words = says.format(products=listed(tuple(heating), most=len(heating)))
            row = rows[about]
            found.append(
                Standing(
                    name,
                    f"{words[0].upper()}{words[1:]} {row.usual} {_LAST}",
                    f"{row.source}; {row.status}",
                    about,
                )
            )
    return tuple(found)
