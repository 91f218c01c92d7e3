"""Whether what is in the basket gives all the parts."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from reviewer.findings import Edit, Figure, Filling, Finding, Severity, Working
from reviewer.language.source import Span
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.units import (
    MM_PER_FOOT,
    MM_PER_INCH,
    UnitSystem,
    Value,
    close,
    count,
    fine_length,
    inches,
    length,
)
from reviewer.wording import listed

if TYPE_CHECKING:  # cutting layouts load only for a plan with a basket
    from reviewer.workshop.cutting import Bar
    from reviewer.workshop.outcomes import Addition, Proof
    from reviewer.workshop.sheet_layout import Sheet
    from reviewer.workshop.shopping import StockInBasket

_SAYS = "{bought} {verb} not give all that {stock} is needed for: {left} {has} nothing to come from. {why}."
_NONE = "The basket has no {stock}, and {left} {is_} cut from it."
_PERHAPS = (
    "No way was found to get all that {stock} is needed for out of {bought}, and none was ruled out: "
    "{left} {has} nothing to come from in the best of them{ripped}."
)
_RIPPED = ", which takes a full board for each ripped part; strips may come side by side"
_WHY = {
    "too big": "{first} needs {needed} and the largest to be had there is {available}",
    "material": "The parts with the saw cuts between them come to {needed} and there are {available}",
    "number": "{needed} parts of {smallest} or longer are needed, and that gives {available} of them",
    "every way": (
        "The parts come to {needed} of {available}, but every way to cut them was tried or ruled out"
    ),
}
_WHY_SHEETS = _WHY | {
    "material": "The parts come to {needed}, and there are {available} without a single saw cut",
    "number": "{needed} parts of {smallest} or longer are needed, and only {available} lie side by side",
}
_TRIMMED = " (saw cuts of {kerf}, {trim} off each {side}: {set_by})"
_ADD = "Add {added}: with it everything was found to come out."
_NO_OFFER = "No length or size on offer helps: look for larger stock, or make the parts smaller."
_BEST = "Lay it out by hand, or add to the basket to be certain."


def _plan_length(amount_mm: float, system: UnitSystem) -> str:
    """A length as a plan writes it, exactly."""
    sixteenths = amount_mm / MM_PER_INCH * 16
    if system is UnitSystem.METRIC or not close(round(sixteenths) * MM_PER_INCH / 16, amount_mm):
        return f"{amount_mm:.1f}".rstrip("0").rstrip(".") + " mm"
    feet = round(amount_mm / MM_PER_FOOT)
    return f"{feet} ft" if close(amount_mm, feet * MM_PER_FOOT) else f"{inches(amount_mm)} in"


def _added(each: StockInBasket, system: UnitSystem) -> str:
    """What to add in the plan's words; empty where no offer helps."""
    addition: Addition[object, Bar | Sheet] | None = getattr(each.outcome, "addition", None)
    if addition is None:
        return ""
    lines = []
    for item in addition.buy:
        size = f" {_plan_length(item.length, system)}" if each.stock.kind == "board" else ""
        lines.append(f"{item.count} {each.stock.name}{size}")
    return ", ".join(lines)


def _edit(review: Review, each: StockInBasket, added: str) -> Edit | None:
    """The basket with the addition; none for a sheet of another size than the plan would mean."""
    assert review.plan.basket is not None
    lines = each.lines or review.plan.basket.lines
    if not added or not lines:
        return None
    if each.stock.kind == "sheet":
        from reviewer.workshop.shopping import sheets_on_offer

        first = sheets_on_offer(each.stock)[0]
        addition: Addition[object, Sheet] | None = getattr(each.outcome, "addition", None)
        sizes = {(item.length, item.width) for item in addition.buy} if addition else set()
        if sizes != {(first.length, first.width)}:
            return None
    end = lines[-1].span.end
    return Edit(Span(end, end), f", {added}")


def _amount(proof: Proof[object], amount: float, sheets: bool) -> Value:
    if proof.by == "number":
        return count(amount)
    return Value(amount, "area") if sheets and proof.by != "too big" else length(amount)


def _finding(review: Review, each: StockInBasket) -> Finding | None:
    outcome = each.outcome
    proof = getattr(outcome, "proof", None)
    from reviewer.workshop.outcomes import Undecided

    undecided = isinstance(outcome, Undecided)
    if proof is None and not undecided:
        return None
    assert review.plan.basket is not None
    sheets = each.stock.kind == "sheet"
    left = tuple(piece.name for piece in getattr(outcome, "left_over", ()))
    bought = [review.source.words(line.span) for line in each.lines]
    added = _added(each, review.units)
    kerf, trim = review.limit("kerf"), review.limit("trimmed-edge" if sheets else "trimmed-end")
    values: dict[str, Filling] = {
        "bought": listed(bought),
        "verb": "do" if len(bought) > 1 or any(line.count > 1 for line in each.lines) else "does",
        "stock": each.stock.name,
        "left": listed(left),
        "has": "has" if len(left) == 1 else "have",
        "is_": "is" if len(left) == 1 else "are",
        "kerf": kerf.value,
        "trim": trim.value,
        "side": "edge" if sheets else "end",
        "set_by": kerf.source,
        "added": added,
        "ripped": _RIPPED if each.pieces.ripped else "",
    }
    says, do, working = _PERHAPS, _BEST, None
    if proof is not None:
        smallest = min(proof.pieces, key=lambda piece: piece.length, default=None)
        values |= {
            "first": proof.pieces[0].name if proof.pieces else "",
            "needed": _amount(proof, proof.needed, sheets),
            "available": _amount(proof, proof.available, sheets),
            "smallest": length(smallest.length if smallest else 0.0),
        }
        why = (_WHY_SHEETS if sheets else _WHY)[proof.by]
        says = _SAYS.replace("{why}", why + _TRIMMED) if each.lines else _NONE
        do = _ADD if added else _NO_OFFER
        working = (
            None
            if not each.lines
            else Working(
                figures=(
                    Figure("saw cut", fine_length(kerf.amount), kerf.source),
                    Figure(f"off each {values['side']}", length(trim.amount), trim.source),
                    Figure("parts", count(len(each.pieces.bars) + len(each.pieces.sheets)), "the plan"),
                ),
                formula=_FORMULAS[proof.by],
                result=Figure("needed", values["needed"]),
                limit=Figure("to be had", values["available"], "the basket"),
            )
        )
    spans = tuple(line.span for line in each.lines) or (review.plan.basket.span,)
    return Finding(
        parts=left,
        at=spans[0],
        says=says,
        do=do,
        values=values,
        working=working,
        also_at=spans[1:],
        edit=_edit(review, each, added),
        severity=Severity.WARNING if undecided else Severity.ERROR,
    )


_FORMULAS = {
    "too big": "the part against the largest board or sheet, its ends and edges trimmed",
    "material": "all parts and the least cuts between them against all there is",
    "number": "parts of at least that size against how many each board or sheet gives",
    "every way": "all ways to cut, each tried or ruled out by a bound",
}


@rule(
    "basket-short",
    topic="buying",
    severity=Severity.ERROR,
    limits=("kerf", "trimmed-end", "trimmed-edge"),
    needs=("plan.basket",),
)
def basket_short(review: Review) -> Iterator[Finding]:
    """The boards in the basket do not give all the parts.

    Goes wrong: Two 48 in seats look like one 8 ft board until the saw takes its kerf and the split ends
    come off. The last part comes out short with the shop shut, or a board has to be bought at another
    yard and does not match.

    Judged by: Every part is cut whole out of the boards and sheets of its stock, with the saw's kerf
    between parts and the trimmed ends lost. Where nothing fits, the reason is proven: a part too large,
    too little wood, too few of one size, or every way of cutting tried or ruled out. What to add was
    tried with the lengths on offer. Where no way was found and none was ruled out it is a warning.

    Leaves out: Knots and splits inside a board; grain to match; two strips ripped side by side out of one
    board, which each count as a whole one; spare wood; and stocks of which the basket names no size.

    Sources: plain sums; kerf and trimmed ends are common practice without a source, and can be set.

    Flagged:

        plan "Seat boards" in inches
        stock plank: 2x8 spruce-pine-fir, 8 ft at 9.80
        part seat: plank, across, flat, 48 long, bottom at 0, left at 0, front at 0
            2 copies side by side deep, gap 1/8
        buy: 1 plank 8 ft

    Quiet:

        plan "Seat boards" in inches
        stock plank: 2x8 spruce-pine-fir, 8 ft at 9.80, 10 ft at 12
        part seat: plank, across, flat, 48 long, bottom at 0, left at 0, front at 0
            2 copies side by side deep, gap 1/8
        buy: 1 plank 10 ft
    """
    if review.plan.basket is None:
        return
    from reviewer.workshop.shopping import basket_outcome

    outcome = basket_outcome(review)
    for each in outcome.stocks if outcome else ():
        finding = _finding(review, each)
        if finding is not None:
            yield finding
