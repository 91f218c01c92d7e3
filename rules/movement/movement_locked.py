"""Solid wood held hard across its grain."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Edit, Figure, Filling, Finding, Severity, Working
from reviewer.model.plan import WALL
from reviewer.plan_words import called
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.units import fine_length, length, ratio
from reviewer.workshop.locking import SLOTTED, Locked
from reviewer.workshop.wood_movement import Season, dried_across, movement, season, yard_moisture

_KINDS = {
    "movement-screwed": "screws in round holes give",
    "movement-nailed": "nails give",
    "movement-dowelled": "dowels and tenons give",
    "movement-glued": "glue across the grain gives",
    SLOTTED: "slotted holes give",
}


def _severity(review: Review, locked: Locked) -> Severity:
    wide = review.limit("cross-grain-glue-width-most").amount
    glued = any(each.kind == "glue" and (each.tongued or not each.at_end) for each in locked.hardest)
    if locked.over <= review.limit("cut-difference").amount:
        return Severity.NOTE  # no tape shows so little
    if (glued and locked.width > wide) or locked.change > review.limit(SLOTTED).amount:
        return Severity.ERROR
    return Severity.WARNING


def _remedy(review: Review, locked: Locked) -> tuple[str, dict[str, Filling], Edit | None]:
    slotted, narrow = review.limit(SLOTTED), review.limit("cross-grain-glue-width")
    half = (
        locked.change * locked.whole_width / locked.width / 2
    )  # at each edge, held hard in the middle alone
    values: dict[str, Filling] = {
        "slot": fine_length(slotted.amount),
        "half": fine_length(half),
        "narrow": length(narrow.amount),
        "fits": length(2 * locked.width * slotted.amount / locked.change),
    }
    if any(fixing.kind in ("glue", "tenon") for fixing in locked.binding):
        do = "Glue it over {narrow} at most, at one edge or in the middle, and let the rest slide: {narrow} "
        do += "of it moves {then}. "
        values["then"] = fine_length(locked.change * min(1.0, narrow.amount / locked.width))
        return f"{do}Or use a sheet for one of the two.", values, None
    if half > slotted.amount:
        do = "Use clips there: they slide as far as it needs. "
        do += "Or make it of boards with gaps between them, each held over {fits} at most in slots."
        return do, values, _in_place_of_all(review, locked, "clips")
    if locked.slotted:
        do = "Fix it hard along its middle only: each edge then moves {half} in its slots. Or use clips."
        return do, values, _in_place_of_all(review, locked, "clips")
    do = "Slot the holes across the grain, or use clips. Each edge then moves {half}, and a slot gives "
    do += "{slot}. One row along the middle may stay fixed."
    return do, values, _in_place_of_all(review, locked, "")


def _in_place_of_all(review: Review, locked: Locked, kind: str) -> Edit | None:
    """The words of the only fastening of a board changed: another ``kind``, or its holes slotted."""
    spans = {fixing.span for fixing in locked.binding}
    if len(spans) != 1:
        return None
    (span,) = spans
    return Edit(span, kind or f"{review.source.words(span)}, slotted")


def _finding(review: Review, alike: list[Locked], year: Season) -> Finding:
    locked = alike[0]
    part = locked.held.parts[0]
    wood = review.material_of(part)
    parts = tuple(dict.fromkeys(name for each in alike for name in each.held.parts))
    to = tuple(dict.fromkeys(fixing.to for each in alike for fixing in each.binding))
    stock = review.stock_of(part)
    moves = movement(stock)
    do, more, edit = _remedy(review, locked)
    yard, settled = yard_moisture(stock, review.limits), year.settled
    wet = yard.amount > year.humid.amount
    in_all = dried_across(stock, locked.width, yard.amount, year.dry.amount) if wet else 0.0
    if in_all / 2 > review.limit(SLOTTED).amount:  # as slots at both edges share it
        do += " Let it settle in the room before you fix it: fixed at {yard} of moisture it would shrink "
        do += "{in_all} by the dry end of the year."
    values: dict[str, Filling] = {
        "parts": called(review.plan, parts),
        "to": called(review.plan, tuple("the wall" if name == WALL else name for name in to)),
        "wood": wood.said,
        "width": length(locked.width),
        "change": fine_length(locked.change),
        "gives": fine_length(locked.gives.amount),
        "who": locked.gives.source,
        "over": fine_length(locked.over),
        "dry": year.dry.value,
        "humid": year.humid.value,
        "yard": yard,
        "settled": settled.value,
        "in_all": fine_length(in_all),
        **more,
    }
    over = "over {width} across the grain by {to}"
    if locked.fixed_at:
        over = f"by {{to}} as far as {{width}} across the grain from {locked.fixed_at}"
    says = (
        f"{{parts}} {'is' if len(parts) == 1 else 'are'} held {over}. "
        "Over that {wood} moves {change} over a year (from {dry} to {humid} of moisture); "
        f"{_KINDS[locked.gives.name]} {{gives}} ({{who}}), so {{over}} too little."
    )
    if wet:
        values["dried"] = fine_length(dried_across(stock, locked.width, yard.amount, settled.amount))
        says += " Before that it shrinks {dried} once, as it dries from {yard} at the yard to {settled}."
    working = Working(
        (
            Figure(
                f"width from {locked.fixed_at}" if locked.fixed_at else "width between the outer fixings",
                length(locked.width),
            ),
            Figure(
                f"{wood.said}, {moves.cut}: change per percent of moisture",
                ratio(moves.coefficient),
                moves.source,
            ),
            Figure("dry end of the year", year.dry.value, year.dry.source),
            Figure("humid end of the year", year.humid.value, year.humid.source),
        ),
        "change = width × change per percent × (humid - dry)"
        if year.by_coefficient
        else "change = width × (humid - dry) / (30 · 100 / S - 30 + dry), S the whole shrinkage in percent",
        Figure("change", fine_length(locked.change)),
        Figure("fixings give", fine_length(locked.gives.amount), locked.gives.source),
    )
    spans = list(dict.fromkeys(fixing.span for fixing in (*locked.hardest, *locked.binding)))
    return Finding(
        parts=parts,
        at=spans[0],
        also_at=tuple(spans[1:]),
        says=says,
        do=do,
        values=values,
        working=working,
        edit=edit,
        severity=_severity(review, locked),
    )


@rule(
    "movement-locked",
    topic="movement",
    severity=Severity.WARNING,
    limits=(
        "movement-screwed",
        "movement-nailed",
        "movement-dowelled",
        "movement-glued",
        SLOTTED,
        "cross-grain-glue-width",
        "cross-grain-glue-width-most",
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
    needs=("locked_boards",),
)
def movement_locked(review: Review) -> Iterator[Finding]:
    """Solid wood that can't swell and shrink across its grain splits, or pushes its frame apart.

    Goes wrong: The top is screwed to its frame in summer. In the heating season it wants to be a quarter
    of an inch narrower and can't: it splits along the grain, or the joint that holds it opens.

    Judged by: Each board, or boards glued edge to edge, and the outermost of its fixings across the grain
    to whatever does not move along: crossed grain, sheets, the wall, and parts that the rest of the piece
    keeps apart. The width between them times the wood's movement times the swing of moisture over the
    year is held against what the hardest fixings give: glue across the grain, dowels and tenons, screws
    and nails, slotted holes. Screws stand as the plan says, else five diameters from the ends of the
    joint. Face to face glue up to cross-grain-glue-width and everything else up to cross-grain-glue-
    width-most is let go, as the trade does. What is over by no more than cut-difference is a note; else
    glue beyond that most, face to face or in a tongue along an end, and more movement than even slotted
    holes give, is an error, the rest a warning. Slotted holes at both edges share the movement: each is
    held against what it moves from the middle, or from where the board is fixed hard. Flat sawn wood is
    assumed where the plan does not say quarter sawn.

    Leaves out: Glue on bare end grain, which holds nothing back. Movement through the thickness and along
    the grain. Clips, which are made to let a top move. A dado or groove without glue is taken to slide.
    Panels glued into the grooves of a frame, and broad faces glued together with their grain crossed:
    panel-trapped and mixed-across-grain tell those.

    Sources: Wood Handbook ch. 13 and equation 13-3 (movement); what fixings give and how wide crossed
    grain may be glued: common practice, no source; five diameters: NDS 2018 commentary, as transcribed

    Flagged:

        plan "Screwed top" in inches
        stock strip: actual 3/4 x 3 1/2 red oak
        stock panel: actual 3/4 x 20 red oak
        stock post: actual 1 1/2 x 1 1/2 red oak
        outline frame: 30 across, 18 deep, 29 tall, on floor
        part leg: post, upright, as tall as frame, in each corner of frame
        part apron for each of front, back: strip, across, on edge, between leg.each-left and leg.each-right
            flush with top of frame, flush with each of leg.each-left
        part end for each of left, right: strip, deep, on edge, between leg.front-each and leg.back-each
            flush with top of frame, flush with each of leg.front-each
        part top: panel, across, flat, on frame, from left of frame to right of frame, centred deep on frame
        join apron.*, end.* to leg.*: pocket screws 1 1/4, 2 per end, glue pva
        join top to apron.*, end.*: screws #8 x 1 1/4, 3 per joint, from below, counterbored 2 3/4
        room parlour: indoors

    Quiet:

        plan "Top that moves" in inches
        stock strip: actual 3/4 x 3 1/2 black cherry
        stock panel: actual 3/4 x 20 black cherry
        stock post: actual 1 1/2 x 1 1/2 black cherry
        outline frame: 30 across, 18 deep, 29 tall, on floor
        part leg: post, upright, as tall as frame, in each corner of frame
        part apron for each of front, back: strip, across, on edge, between leg.each-left and leg.each-right
            flush with top of frame, flush with each of leg.each-left
        part end for each of left, right: strip, deep, on edge, between leg.front-each and leg.back-each
            flush with top of frame, flush with each of leg.front-each
        part top: panel, across, flat, on frame, from left of frame to right of frame, centred deep on frame
        join apron.*, end.* to leg.*: pocket screws 1 1/4, 2 per end, glue pva
        join top to apron.*, end.*: screws #8 x 1 1/4, 3 per joint, from below, counterbored 2 3/4, slotted
        room parlour: indoors
    """
    over_the_year = season(review.plan, review.limits)
    alike: dict[tuple[object, ...], list[Locked]] = {}
    for locked in review.locked_boards:
        held = locked.held
        family = review.plan.parts[held.parts[0]].family
        spans = tuple(sorted({fixing.span for fixing in locked.binding}))
        key = (family, held.axis, spans, locked.gives.name, round(locked.width, 1))
        alike.setdefault(key, []).append(locked)
    for group in alike.values():
        yield _finding(review, group, over_the_year)
