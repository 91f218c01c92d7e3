"""Preservative-treated wood in a room, or where food and children's hands are."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Finding, Severity
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.wording import listed
from reviewer.workshop.who_uses import made_for_a_child

#: Loads that are food or what it is eaten from.
_FOOD = frozenset({"dishes", "kitchen goods", "canned goods"})

_SAYS = (
    "{parts} {are} cut from {stock}, which is treated with preservative, and {why}: its dust and what rubs "
    "off should not get near food, bedding or children."
)
_DO = (
    "Use untreated wood here; treated wood is for what stands outdoors or on the ground. Its label and your "
    "local waste rules say what it may be used for and where offcuts go: never into a stove."
)


@rule(
    "treated-wood-indoors",
    topic="safety",
    severity=Severity.WARNING,
    needs=("plan.stocks",),
)
def treated_wood_indoors(review: Review) -> Iterator[Finding]:
    """Treated wood in a room, or near food or in a child's piece.

    Goes wrong: Deck boards are cheap and straight. Indoors the salts in them come off on hands, on what is
    kept in the piece and in the dust of every cut.

    Judged by: A stock said to be treated that a part is cut from, where the plan says that the piece
    stands indoors; wherever it stands, where food or dishes are declared on those parts, or the title
    gives the piece to a child.

    Leaves out: What the wood is treated with; old treated wood (with arsenic before 2004) that the plan
    calls reclaimed only; planters with vegetables, which the plan cannot say. Its label and local rules
    decide what it may be used for.

    Sources: handling sheet of a treated-wood trade group and an older consumer sheet of the EPA (read; the
    older one allowed use indoors after cleaning). Untreated wood indoors is the careful practice.

    Flagged:

        plan "Shelf" in inches
        stock deck: 2x6 southern pine, 8 ft, treated
        part shelf: deck, across, flat, 30 long, on floor, left at 0, front at 0
        room kitchen: indoors

    Quiet:

        plan "Shelf" in inches
        stock deck: 2x6 southern pine, 8 ft, treated
        part shelf: deck, across, flat, 30 long, on floor, left at 0, front at 0
        room porch: outdoors
    """
    treated = [name for name, stock in review.plan.stocks.items() if stock.treated]
    if not treated:
        return
    room = review.plan.room
    indoors = room is not None and not room.outdoors
    with_food = {name for load in review.plan.loads if load.use in _FOOD for name in load.on}
    for name in treated:
        parts = tuple(part.name for part in review.plan.parts.values() if part.stock == name)
        fed = tuple(part for part in parts if part in with_food)
        if not parts:
            continue
        if indoors:
            why = "the piece stands indoors"
        elif fed:
            parts, why = fed, "food or dishes lie on it"
        elif made_for_a_child(review.plan):
            why = "the piece is a child's"
        else:
            continue
        yield Finding(
            parts=parts,
            at=review.plan.stocks[name].span,
            says=_SAYS,
            do=_DO,
            values={
                "parts": listed(parts),
                "are": "is" if len(parts) == 1 else "are",
                "stock": name,
                "why": why,
            },
            also_at=(room.span,) if room is not None and indoors else (),
        )
