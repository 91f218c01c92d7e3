"""Wood that comes wet from the yard into a heated room."""

from __future__ import annotations

import math
from collections.abc import Iterator

from reviewer.findings import Figure, Filling, Finding, Severity, Working
from reviewer.limits import Limit
from reviewer.model.plan import WALL, Stock
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.units import fine_length, length, percent, ratio
from reviewer.wording import listed
from reviewer.workshop.locking import FrameGlue, Locked, stock_of, without_laminated, worst_locked
from reviewer.workshop.wood_movement import (
    by_coefficient,
    dried_across,
    movement,
    season,
    usual_at_yard,
    yard_moisture,
)

_HOLDS = {
    "movement-screwed": "screws in round holes give",
    "movement-nailed": "nails give",
    "movement-dowelled": "dowels and tenons give",
    "movement-glued": "glue across the grain gives",
    "movement-slotted": "slotted holes give",
}


def _dry_enough(stock: Stock, locked: Locked, bought: float, settled: float) -> int:
    """The wettest whole percent that the wood may be bought at, so that its fixings give enough."""
    least = math.ceil(settled)
    for moisture in range(math.ceil(bought) - 1, least, -1):
        if dried_across(stock, locked.width, moisture, settled) <= locked.gives.amount:
            return moisture
    return least


def _shrinks(review: Review) -> dict[str, list[Locked]]:
    """By stock, the boards that drying moves more than their fixings give, and the year alone does not."""
    narrow = review.limit("cross-grain-glue-width").amount
    year = season(review.plan, review.limits)
    told = {name for locked in review.locked_boards for name in locked.held.parts}
    frame = FrameGlue(review.framed_panels)
    found: dict[str, list[Locked]] = {}
    for board in review.held_boards:
        held = without_laminated(board)
        if held is None or not told.isdisjoint(held.parts):
            continue
        stock = stock_of(review.plan, held)
        bought = yard_moisture(stock, review.limits).amount
        if bought <= year.humid.amount:
            continue
        locked = worst_locked(held, stock, review.limits, bought, year.settled.amount, narrow, narrow)
        if locked is not None and not frame.holds(locked):
            found.setdefault(stock.name, []).append(locked)
    return found


def _finding(review: Review, stock: Stock, group: list[Locked], settled: Limit) -> Finding:
    widest = max(group, key=lambda each: each.over)
    bought, stamp = yard_moisture(stock, review.limits), usual_at_yard(stock, review.limits)
    said = stock.moisture is not None
    moves, wood = movement(stock), review.material_of(widest.held.parts[0]).said
    parts = tuple(dict.fromkeys(name for each in group for name in each.held.parts))
    others = tuple(name for name in parts if name not in widest.held.parts)
    dry = _dry_enough(stock, widest, bought.amount, settled.amount)
    same = [each for each in group if each.held.parts == widest.held.parts]
    to = tuple(dict.fromkeys(fixing.to for each in same for fixing in each.binding))
    values: dict[str, Filling] = {
        "stock": stock.name,
        "wood": wood,
        "parts": listed(widest.held.parts),
        "to": listed(tuple("the wall" if name == WALL else name for name in to)),
        "bought": bought,
        "stamp": stamp.source,
        "settled": settled.value,
        "width": length(widest.width),
        "change": fine_length(widest.change),
        "gives": fine_length(widest.gives.amount),
        "who": widest.gives.source,
        "over": fine_length(widest.over),
        "dry": percent(dry),
        "then": fine_length(dried_across(stock, widest.width, dry, settled.amount)),
        "others": listed(others),
    }
    comes = "is bought at {bought} of moisture"
    if not said:
        comes = "may hold up to {bought} of moisture when bought ({stamp})"
    shrinks = "shrinks" if len(widest.held.parts) == 1 else "shrink"
    fixed = "are" if len(to) > 1 else "is"
    more = " Others of it are held too wide as well: {others}." if others else ""
    slots = review.limit("movement-slotted").amount
    note = widest.over <= review.limit("cut-difference").amount or (not said and widest.change <= slots)
    rate = Figure(
        f"{wood}, {moves.cut}: change per percent of moisture", ratio(moves.coefficient), moves.source
    )
    formula = "change = width × change per percent × (bought - settled)"
    if not by_coefficient(bought.amount, settled.amount) and moves.shrinkage is not None:
        rate = Figure(f"{wood}, {moves.cut}: S, green to dry", percent(moves.shrinkage), moves.source)
        formula = "change = width × (bought - settled) / (30 · 100 / S - 30 + bought)"
    at_which = f"from {widest.fixed_at} to where" if widest.fixed_at else "at which"
    return Finding(
        parts=parts,
        at=stock.span,
        also_at=tuple(dict.fromkeys(fixing.span for each in group for fixing in each.hardest)),
        says=f"{{stock}} ({{wood}}) {comes} and dries to {{settled}} in a heated room. {{parts}} then "
        f"{shrinks} {{change}} over the {{width}} across the grain {at_which} {{to}} {fixed} fixed to it; "
        f"{_HOLDS[widest.gives.name]} {{gives}} ({{who}}), so {{over}} too little.{more}",
        do="Buy it at {dry} or drier: then it shrinks {then} there. Or stack it in the room with air between "
        "the boards, and cut it when a moisture meter reads {dry}.",
        values=values,
        working=Working(
            (
                Figure(
                    f"width from {widest.fixed_at}" if widest.fixed_at else "width between the outer fixings",
                    length(widest.width),
                ),
                rate,
                Figure("bought at", bought, "the plan" if said else stamp.source),
                Figure("settled in the room", settled.value, settled.source),
            ),
            formula,
            Figure("change", fine_length(widest.change)),
            Figure("fixings give", fine_length(widest.gives.amount), widest.gives.source),
        ),
        severity=Severity.NOTE if note else None,
    )


@rule(
    "yard-wet",
    topic="movement",
    severity=Severity.WARNING,
    limits=(
        "movement-screwed",
        "movement-nailed",
        "movement-dowelled",
        "movement-glued",
        "movement-slotted",
        "cross-grain-glue-width",
        "cut-difference",
        "moisture-season-low",
        "moisture-season-high",
        "humidity-season-low",
        "humidity-season-high",
        "moisture-room",
        "moisture-yard",
        "moisture-yard-hardwood",
        "moisture-yard-panel",
    ),
    needs=("held_boards",),
)
def yard_wet(review: Review) -> Iterator[Finding]:
    """Wood is built in as wet as the yard sells it, and shrinks against its fixings in a heated room.

    Goes wrong: The bench is screwed together on the day the planks come home. By the first winter each plank
    is a quarter of an inch narrower: it has split at its screws, and its joints gape.

    Judged by: For a heated room, each solid board, or boards glued edge to edge, that is bought wetter than
    wood gets there in the humid season. What it shrinks until it has settled, over the width between the
    outer fixings that hold it across its grain, is held against what the hardest of them give, as
    movement-locked does for the seasons. Widths up to cross-grain-glue-width are let go. Where the plan
    states no moisture, the stamp's limit is the most that the wood may hold, not what it holds: that is a
    note, unless it shrinks by more than even slotted holes give. One finding for each stock, by its widest
    part.

    Leaves out: What movement-locked tells already, drying included. Rooms without heating and the outdoors,
    where wood from the yard stays as it is or nearly so. How long it takes to settle, for which we have no
    source: a moisture meter tells. Boards that twist and cup as they dry. Gaps that open between boards.

    Sources: grade stamps of western lumber and southern pine (moisture at the yard); Wood Handbook ch. 13 and
    equation 13-3 (movement); what fixings give: common practice, no source

    Flagged:

        plan "Low bench" in inches
        stock plank: 2x8 spruce-pine-fir, moisture 19 %
        stock stud: 2x4 spruce-pine-fir
        outline frame: 48 across, 14 1/2 deep, 16 tall, on floor
        part leg: stud, upright, facing front, as tall as frame, in each corner of frame
        part rail for each of left, right: stud, deep, on edge, between leg.front-each and leg.back-each
            flush with top of frame, flush with each of leg.front-each
        part seat: plank, across, flat, on frame, from left of frame to right of frame, past 2 each end
            2 copies side by side deep, gap 1/8, row centred on frame
        join rail.* to leg.*: pocket screws 2 1/2, 2 per end, glue pva
        join seat.* to rail.*: screws #8 x 2 1/2, 2 per joint, from below, counterbored 2
        room hall: indoors, heated

    Quiet:

        plan "Low bench" in inches
        stock plank: 2x8 spruce-pine-fir, moisture 10 %
        stock stud: 2x4 spruce-pine-fir
        outline frame: 48 across, 14 1/2 deep, 16 tall, on floor
        part leg: stud, upright, facing front, as tall as frame, in each corner of frame
        part rail for each of left, right: stud, deep, on edge, between leg.front-each and leg.back-each
            flush with top of frame, flush with each of leg.front-each
        part seat: plank, across, flat, on frame, from left of frame to right of frame, past 2 each end
            2 copies side by side deep, gap 1/8, row centred on frame
        join rail.* to leg.*: pocket screws 2 1/2, 2 per end, glue pva
        join seat.* to rail.*: screws #8 x 2 1/2, 2 per joint, from below, counterbored 2
        room hall: indoors, heated
    """
    room = review.plan.room
    if room is not None and (room.outdoors or not room.heated):
        return
    settled = season(review.plan, review.limits).settled
    for name, group in _shrinks(review).items():
        yield _finding(review, review.plan.stocks[name], group, settled)
