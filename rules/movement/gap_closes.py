"""A gap that wood swells shut."""

from __future__ import annotations

import math
from collections.abc import Iterator

from reviewer.findings import Figure, Filling, Finding, Severity, Working
from reviewer.records import NamedTuple
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.setting_out.directions import ALONG
from reviewer.units import MM_PER_INCH, TOLERANCE_MM, UnitSystem, fine_length, length, percent, ratio
from reviewer.wording import listed
from reviewer.workshop.closing_gaps import Clearance, Grower, RowGap, clearances
from reviewer.workshop.wood_movement import (
    by_coefficient,
    made_up,
    movement,
    movement_through,
    season,
)


class _Closing(NamedTuple):
    """A gap, how much of it is needed to stay open, and what grows into it: each part with its share."""

    parts: tuple[str, ...]
    axis: int
    gap: float
    needed: float
    shares: tuple[tuple[str, float], ...]
    beside: tuple[str, ...]
    held: bool
    what: str  # the name of the thing that moves; empty for a row
    others: tuple[str, ...]  # the names of what moves beside it and grows towards it
    dry_only: bool


def _growth(
    review: Review, grower: Grower, shares: tuple[tuple[str, float], ...], axis: int, most: bool
) -> float:
    by = grower.most if most else grower.usual
    return sum(share * by(review.stock_of(name), review.setting.solids[name], axis) for name, share in shares)


def _marked_up(review: Review, amount: float) -> float:
    """A size rounded up to the next mark of a bench rule: 1/16 in or a millimetre."""
    mark = MM_PER_INCH / 16 if review.units is UnitSystem.INCH else 1.0
    return math.ceil(amount / mark - 1e-6) * mark


def _judged(
    review: Review, grower: Grower, found: RowGap | Clearance, shares: tuple[tuple[str, float], ...]
) -> _Closing | None:
    row = isinstance(found, RowGap)
    needed = 0.0 if row else review.limit("moving-clearance").amount
    most = _growth(review, grower, shares, found.axis, True)
    if found.gap - most >= needed - 1e-9 or most <= 0:
        return None
    usual = _growth(review, grower, shares, found.axis, False)
    dry_only = found.gap - usual >= needed - 1e-9
    if isinstance(found, RowGap):
        return _Closing(
            (found.first, found.second), found.axis, found.gap, 0.0, shares, (), False, "", (), dry_only
        )
    return _Closing(
        parts=found.parts,
        axis=found.axis,
        gap=found.gap,
        needed=needed,
        shares=shares,
        beside=found.beside,
        held=found.held,
        what=found.moving.name,
        others=tuple(
            dict.fromkeys(review.moves_with.get(name, name) for parts, _ in found.theirs for name in parts)
        ),
        dry_only=dry_only,
    )


def _figures(review: Review, closing: _Closing) -> list[Figure]:
    figures, told = [], set[tuple[str, float, float]]()
    for name, share in closing.shares:
        stock, solid = review.stock_of(name), review.setting.solids[name]
        moves = movement(stock) if closing.axis == solid.wide else movement_through(stock)
        size = solid.extent(closing.axis)
        if (stock.name, round(size, 1), share) in told:
            continue
        told.add((stock.name, round(size, 1), share))
        figures.append(
            Figure(f"{name}, {review.material_of(name).said}, {ALONG[closing.axis]}", length(size))
        )
        figures.append(
            Figure(f"{moves.cut}: change per percent of moisture", ratio(moves.coefficient), moves.source)
        )
    return figures


def _says(closing: _Closing, left: float, copies: bool) -> str:
    """The sentences about a gap; ``left`` of it stays open, mm."""
    when = "Made up at the dry end of the year, " if closing.dry_only else ""
    swell = "as {wood} comes from {start} of moisture to {humid} in the humid season"
    if not closing.what:
        more = ": {over} more than there is" if left < -TOLERANCE_MM else ""
        return (
            f"{when}{{names}} grow {{growth}} into the gap of {{gap}} between them, {swell}. It closes{more}."
        )
    many = copies or len(closing.shares) > len(closing.parts)
    room = "to {beside} it has a gap of {gap}" if closing.held else "to {beside} it has {gap} in all"
    says = f"{when}{{names}} {'swell' if many else 'swells'} {{growth}} {ALONG[closing.axis]}, {swell}; "
    if closing.gap <= TOLERANCE_MM:
        room = "to {beside} it has no gap at all"
    if many:
        room = room.replace("it has", "there is")
    if left < -TOLERANCE_MM:
        return f"{says}{room}, so {{over}} too little."
    return f"{says}{room}, so {{left}} is left. To move freely it needs {{needed}} ({{who}})."


def _finding(review: Review, grower: Grower, group: list[_Closing]) -> Finding:
    closing, year = group[0], grower.year
    stock = review.stock_of(closing.shares[0][0])
    growth = _growth(review, grower, closing.shares, closing.axis, closing.dry_only)
    most = _growth(review, grower, closing.shares, closing.axis, True)
    made = made_up(stock, review.limits, year)
    start, source = (year.dry.value, year.dry.source) if closing.dry_only else (made.moisture, made.source)
    left, clear = closing.gap - growth, review.limit("moving-clearance")
    wider = _marked_up(review, most + closing.needed)
    parts = tuple(dict.fromkeys(name for each in group for name in each.parts))
    names = tuple(dict.fromkeys(each.what for each in group)) if closing.what else parts
    swelling = tuple(dict.fromkeys((*names, *(n for each in group for n in each.others))))
    values: dict[str, Filling] = {
        "names": listed(swelling),
        "beside": listed(tuple(dict.fromkeys(name for each in group for name in each.beside))),
        "wood": review.material_of(closing.shares[0][0]).said,
        "gap": fine_length(closing.gap),
        "growth": fine_length(growth),
        "start": start,
        "humid": year.humid.value,
        "over": fine_length(max(0.0, -left)),
        "left": fine_length(max(0.0, left)),
        "wider": fine_length(wider),
        "then": fine_length(wider - most),
        "driest": percent(grower.driest(stock)),
        "needed": clear.value,
        "who": clear.source,
    }
    do = "Leave {wider}" + (" there" if closing.held else " in all" if closing.what else " between them")
    small = not closing.what and -left <= review.limit("cut-difference").amount  # no tape shows so little
    spans = tuple(dict.fromkeys(review.span_of(name) for name in parts))
    growing = "size × change per percent × (humid - start)"
    if not by_coefficient(start.amount, year.humid.amount):
        growing = "size × (humid - start) / (30 · 100 / S - 30 + start), S the whole shrinkage in percent"
    return Finding(
        parts=parts,
        at=spans[0],
        also_at=spans[1:],
        says=_says(closing, left, len(swelling) > 1),
        do=f"{do}: of that {{then}} stays open in the humid season, with wood from {{driest}} of moisture.",
        values=values,
        working=Working(
            (
                *_figures(review, closing),
                Figure("start, when it is made up", start, source),
                Figure("humid end of the year", year.humid.value, year.humid.source),
                Figure("growth, all shares added", fine_length(growth)),
                Figure("gap", fine_length(closing.gap), "the plan"),
            ),
            f"left = gap - growth; growth of each = share × {growing}",
            Figure("left in the humid season", fine_length(left)),
            Figure("needed", clear.value, clear.source) if closing.what else None,
        ),
        severity=Severity.NOTE if closing.dry_only or small else None,
    )


@rule(
    "gap-closes",
    topic="movement",
    severity=Severity.WARNING,
    limits=(
        "moving-clearance",
        "cut-difference",
        "moisture-season-low",
        "moisture-season-high",
        "humidity-season-low",
        "humidity-season-high",
        "moisture-outdoors-low",
        "moisture-outdoors-high",
        "moisture-room",
        "moisture-yard",
        "moisture-yard-hardwood",
        "moisture-yard-panel",
    ),
)
def gap_closes(review: Review) -> Iterator[Finding]:
    """A gap between boards, or around a door or a drawer, that the wood swells shut in the humid season.

    Goes wrong: The door of wide boards clears its opening by a hair in winter. In August it no longer
    closes, and planed then, it rattles in the next winter. Planks laid close outdoors push their frame apart.

    Judged by: Neighbours of a row that stand apart, and what opens, slides or lifts out between parts that
    face it. Wood grows across its grain in its width and through its thickness, from the moisture at which it
    is made up (as bought, or settled in its room, whichever is drier) to the humid end of the year. Into a
    gap of a row each neighbour grows by half. A hinged door grows away from its hinges; a drawer, a tray and
    the other two edges of a door have the room of both sides together, and what moves beside them grows too.
    Moving things need moving-clearance besides. What stays open so, but not when made up at the dry end of
    the year, is a note, and so is a row that is over by no more than cut-difference. Flat sawn wood is
    assumed where the plan does not say quarter sawn.

    Such a gap of a row is told here and not as an open joint.

    Leaves out: Sheets, which lie still. Boards that touch in a row. Doors and drawers with nothing but
    hardware beside them. The opening, which is taken to keep its size. Panels in
    grooves, which have their room there. Things of more than 200 pieces of solid wood. Parts that lean.

    Sources: Wood Handbook ch. 13 and equation 13-3 (movement); room to move freely: common practice, no
    source

    Flagged:

        plan "Slatted seat" in inches
        stock plank: actual 1 x 9 1/4 red oak
        stock post: actual 2 x 2 red oak
        outline frame: 40 across, 18 9/16 deep, 16 tall, on floor
        part leg: post, upright, as tall as frame, in each corner of frame
        part rail for each of left, right: post, deep, flat, between leg.front-each and leg.back-each
            flush with top of frame, flush with each of leg.front-each
        part seat: plank, across, flat, on frame, from left of frame to right of frame
            2 copies side by side deep, gap 1/16, row centred on frame
        join rail.* to leg.*: dowels 3/8 x 2, 2 per joint, glue pva
        join seat.* to rail.*: screws #8 x 1 3/4, 2 per joint, from below, counterbored 1, slotted
        room porch: outdoors

    Quiet:

        plan "Slatted seat" in inches
        stock plank: actual 1 x 4 1/2 red oak
        stock post: actual 2 x 2 red oak
        outline frame: 40 across, 19 1/2 deep, 16 tall, on floor
        part leg: post, upright, as tall as frame, in each corner of frame
        part rail for each of left, right: post, deep, flat, between leg.front-each and leg.back-each
            flush with top of frame, flush with each of leg.front-each
        part seat: plank, across, flat, on frame, from left of frame to right of frame
            4 copies side by side deep, gap 1/4, row centred on frame
        join rail.* to leg.*: dowels 3/8 x 2, 2 per joint, glue pva
        join seat.* to rail.*: screws #8 x 1 3/4, 2 per joint, from below, counterbored 1, slotted
        room porch: outdoors
    """
    grower = Grower(review.limits, season(review.plan, review.limits))
    alike: dict[tuple[object, ...], list[_Closing]] = {}
    for gap in review.closing_rows:
        shares = tuple((name, 0.5) for name in (gap.first, gap.second))
        closing = _judged(review, grower, gap, shares)
        if closing is not None:
            family = review.plan.parts[gap.first].family
            alike.setdefault(("row", family, gap.axis, round(gap.gap, 1), closing.dry_only), []).append(
                closing
            )
    if review.plan.movings:
        floating = frozenset(
            name for panel in review.framed_panels if not panel.glued for name in panel.parts
        )
        least = review.limit("moving-clearance").amount
        for room in clearances(review.plan, review.setting, floating, grower.most, least):
            others = tuple((name, share) for parts, share in room.theirs for name in parts)
            closing = _judged(review, grower, room, (*((name, 1.0) for name in room.parts), *others))
            if closing is not None:
                key = (room.moving.span, room.axis, round(room.gap, 1), closing.dry_only, len(others))
                alike.setdefault(key, []).append(closing)
    for group in alike.values():
        yield _finding(review, grower, group)
