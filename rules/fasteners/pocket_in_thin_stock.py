"""Pocket screws in stock that is too thin for a pocket."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Figure, Filling, Finding, Severity, Working
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.units import fine_length, length
from reviewer.wording import listed
from reviewer.workshop.driving import Driven
from reviewer.workshop.screw_lengths import NAMED_THINNER_MM, by_fastening


def _finding(review: Review, group: list[Driven]) -> Finding:
    limit = review.limit("pocket-stock-least")
    stock = min(each.pocket_stock for each in group)
    heads = tuple(dict.fromkeys(each.head_part for each in group))
    values: dict[str, Filling] = {
        "heads": listed(heads),
        "stock": length(stock),
        "least": length(limit.amount),
        "who": limit.source,
        "lack": fine_length(limit.amount - stock),
    }
    return Finding(
        parts=heads,
        at=group[0].fastening.span,
        says=f"{{heads}} {'is' if len(heads) == 1 else 'are'} {{stock}} thick, too thin for a pocket: "
        "{least} is the least ({who}), so {lack} is missing and the head would not sit inside the wood.",
        do="Screw through the other part into the edge of {heads}, use a cleat or dowels, or take stock "
        "{least} thick.",
        values=values,
        working=Working(
            (Figure("thickness", length(stock)),), "", None, Figure("least", length(limit.amount))
        ),
    )


@rule("pocket-in-thin-stock", topic="fasteners", severity=Severity.ERROR, limits=("pocket-stock-least",))
def pocket_in_thin_stock(review: Review) -> Iterator[Finding]:
    """A pocket is bored in wood that is too thin to hold it.

    Goes wrong: The bit comes out of the other face, or the pocket breaks open at the end, and the head of the
    screw finds nothing to draw on.

    Judged by: The thickness of the board that the pocket is bored in, against pocket-stock-least. A sheet
    sold as 1/2 in may measure up to 1 mm less.

    Leaves out: Whether the length and the thread suit the stock, which is for pocket-mismatch. Small
    bits made for thin stock: set pocket-stock-least to what yours takes.

    Sources: the usual chart of pocket screws, common practice, no source

    Flagged:

        plan "Thin rail" in inches
        stock stud: 2x4 spruce-pine-fir
        stock slat: actual 3/8 x 3 1/2 spruce-pine-fir
        outline frame: 30 across, 3 1/2 deep, 16 tall, on floor
        part leg for each of left, right: stud, upright, facing side, as tall as frame, on floor
            flush with each of frame, flush with front of frame
        part rail: slat, across, on edge, between leg.left and leg.right, flush with top of frame
            centred deep on frame
        join rail to leg.*: pocket screws 1, 2 per end

    Quiet:

        plan "Thick rail" in inches
        stock stud: 2x4 spruce-pine-fir
        stock slat: actual 3/4 x 3 1/2 spruce-pine-fir
        outline frame: 30 across, 3 1/2 deep, 16 tall, on floor
        part leg for each of left, right: stud, upright, facing side, as tall as frame, on floor
            flush with each of frame, flush with front of frame
        part rail: slat, across, on edge, between leg.left and leg.right, flush with top of frame
            centred deep on frame
        join rail to leg.*: pocket screws 1 1/4, 2 per end
    """
    least = review.limit("pocket-stock-least").amount - NAMED_THINNER_MM
    for group in by_fastening(each for each in review.driven if each.pocket is not None and not each.misses):
        thin = [each for each in group if each.pocket_stock < least]
        if thin:
            yield _finding(review, thin)
