"""Pocket screws that do not suit the stock they are driven through."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Edit, Figure, Filling, Finding, Severity, Working
from reviewer.reference.gauges import PocketScrew, pocket_screw
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.units import TOLERANCE_MM, fine_length, length
from reviewer.wording import listed
from reviewer.workshop.driving import Driven
from reviewer.workshop.screw_lengths import (
    NAMED_THINNER_MM,
    bite_least,
    by_fastening,
    lacks_cover,
    with_length,
)
from reviewer.workshop.usual_sizes import as_sold


def _usual(review: Review, driven: Driven) -> PocketScrew | None:
    hardwood = review.material_of(driven.head_part).family == "hardwood"
    return pocket_screw(driven.pocket_stock, hardwood)


def _heads(group: list[Driven]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(each.head_part for each in group))


def _wrong_length(review: Review, group: list[Driven], usual: PocketScrew, whole: bool) -> Finding:
    """``whole``: all that these words of the plan fasten is in the group."""
    worst = group[0]
    heads = _heads(group)
    limit = review.limit("pocket-length-difference")
    longer, use = worst.length > usual.length, as_sold(usual.length, review.units)
    values: dict[str, Filling] = {
        "heads": listed(heads),
        "long": length(worst.length),
        "usual": length(use),
        "stock": length(worst.pocket_stock),
        "who": usual.source,
        "off": length(abs(worst.length - use)),
        "bite": fine_length(worst.bite),
        "cover": fine_length(worst.cover),
        "usual_bite": fine_length(worst.bite_of(use)),
    }
    edit: Edit | None = None
    if whole:
        edit = with_length(review.source, review.plan, worst.fastening, use)
    return Finding(
        parts=heads,
        at=worst.fastening.span,
        says=f"Pocket screws {{long}} long are {{off}} {'longer' if longer else 'shorter'} than usual "
        "for {heads}, {stock} thick: {usual} ({who}). They bite {bite}"
        + (
            ", and leave {cover} of wood over the point." if longer else "; the usual ones bite {usual_bite}."
        ),
        do="Use {usual} pocket screws.",
        values=values,
        working=Working(
            (
                Figure("thickness of the stock", length(worst.pocket_stock)),
                Figure("usual length for it", length(use), usual.source),
            ),
            "difference = length - usual length",
            Figure("difference", length(abs(worst.length - use))),
            Figure("most", length(limit.amount), limit.source),
        ),
        edit=edit,
    )


def _wrong_thread(review: Review, group: list[Driven], usual: PocketScrew) -> Finding:
    worst = group[0]
    heads = _heads(group)
    wood = review.material_of(worst.head_part)
    values: dict[str, Filling] = {
        "heads": listed(heads),
        "wood": wood.said,
        "thread": worst.fastening.thread or "",
        "usual": usual.thread,
        "who": usual.source,
    }
    why = (
        "a coarse thread splits hard wood"
        if usual.thread == "fine"
        else "a fine thread strips soft wood and sheets"
    )
    return Finding(
        parts=heads,
        at=worst.fastening.span,
        says="The pocket screws in {heads} have a {thread} thread, and for {wood} a {usual} one is usual "
        f"({{who}}): {why}.",
        do="Use pocket screws with a {usual} thread.",
        values=values,
    )


@rule(
    "pocket-mismatch",
    topic="fasteners",
    severity=Severity.WARNING,
    limits=(
        "pocket-length-difference",
        "pocket-stock-least",
        "cover",
        "cut-difference",
        "bite-least",
        "wallboard",
    ),
    needs=("driven",),
)
def pocket_mismatch(review: Review) -> Iterator[Finding]:
    """A pocket screw of another length or thread than its stock asks for holds badly or splits the wood.

    Goes wrong: The stop on the drill is set by the thickness of the stock. A screw that is too short for
    it has hardly any thread beyond the joint, one that is too long goes for the far face. A coarse thread
    splits hard wood, a fine one strips soft wood.

    Judged by: The thickness of the board that the pocket is bored in, the nearest line of the usual chart,
    and the limit pocket-length-difference. A thread is judged only where the plan states it: fine for
    hardwood, coarse for softwood and sheets. A longer screw that also comes out of the far part is left to
    screw-breaks-through, a shorter one that hardly holds to screw-too-short: both name the length. Stock
    below pocket-stock-least is for pocket-in-thin-stock.

    Leaves out: Stock that the chart does not list (between its lines, or thicker than 1 1/2 in).

    Sources: the usual chart of pocket screws: its line for 1 1/2 in stock read, the others common
    practice, no source; threads from a how-to page

    Flagged:

        plan "Short pockets" in inches
        stock stud: 2x4 spruce-pine-fir
        outline frame: 30 across, 3 1/2 deep, 16 tall, on floor
        part leg for each of left, right: stud, upright, facing side, as tall as frame, on floor
            flush with each of frame, flush with front of frame
        part rail: stud, across, on edge, between leg.left and leg.right, flush with top of frame
            centred deep on frame
        join rail to leg.*: pocket screws 2, 2 per end

    Quiet:

        plan "Right pockets" in inches
        stock stud: 2x4 spruce-pine-fir
        outline frame: 30 across, 3 1/2 deep, 16 tall, on floor
        part leg for each of left, right: stud, upright, facing side, as tall as frame, on floor
            flush with each of frame, flush with front of frame
        part rail: stud, across, on edge, between leg.left and leg.right, flush with top of frame
            centred deep on frame
        join rail to leg.*: pocket screws 2 1/2, 2 per end, coarse thread
    """
    least = review.limit("pocket-stock-least").amount
    most_off = review.limit("pocket-length-difference").amount
    for group in by_fastening(each for each in review.driven if each.pocket is not None and not each.misses):
        # What another rule tells of the same words is told once.
        too_short = any(each.bite < bite_least(each, review.limits).amount - TOLERANCE_MM for each in group)
        comes_out = any(lacks_cover(each, each.length, review.limits) for each in group)
        lengths: dict[float, tuple[PocketScrew, list[Driven]]] = {}
        threads: dict[str, tuple[PocketScrew, list[Driven]]] = {}
        for each in group:
            usual = _usual(review, each)
            if usual is None or each.pocket_stock < least - NAMED_THINNER_MM:
                continue
            off = each.length - usual.length
            if abs(off) > most_off + TOLERANCE_MM and not (comes_out if off > 0 else too_short):
                lengths.setdefault(usual.length, (usual, []))[1].append(each)
            if each.fastening.thread not in (None, usual.thread):
                wood = review.material_of(each.head_part).key
                threads.setdefault(wood, (usual, []))[1].append(each)
        for usual, wrong in lengths.values():
            yield _wrong_length(review, wrong, usual, len(wrong) == len(group))
        for usual, wrong in threads.values():
            yield _wrong_thread(review, wrong, usual)
