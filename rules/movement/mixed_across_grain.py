"""Broad faces glued together that do not move alike."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Figure, Filling, Finding, Severity, Working
from reviewer.language.source import Span
from reviewer.records import NamedTuple
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.units import TOLERANCE_MM, fine_length, length, ratio
from reviewer.wording import listed
from reviewer.workshop.fixing import Fixing, Held
from reviewer.workshop.wood_movement import change_across, movement, season


class _Laminated(NamedTuple):
    """A solid board or panel with its face glued to what stays as it is across its grain; mm."""

    parts: tuple[str, ...]
    to: tuple[str, ...]
    width: float
    change: float
    spans: tuple[Span, ...]


def _laminated(review: Review, held: Held, dry: float, humid: float) -> _Laminated | None:
    glue: list[Fixing] = [fixing for fixing in held.fixings if fixing.laminated]
    if not glue:
        return None
    width = max(each.high for each in glue) - min(each.low for each in glue)
    change = change_across(review.stock_of(glue[0].part), width, dry, humid)
    limit = review.limit("movement-glued").amount
    if width <= review.limit("cross-grain-glue-width").amount + TOLERANCE_MM or change <= limit + 1e-9:
        return None
    return _Laminated(
        tuple(dict.fromkeys(each.part for each in glue)),
        tuple(dict.fromkeys(each.to for each in glue)),
        width,
        change,
        tuple(dict.fromkeys(each.span for each in glue)),
    )


def _finding(review: Review, group: list[_Laminated]) -> Finding:
    worst = max(group, key=lambda each: each.change)
    year = season(review.plan, review.limits)
    stock, limit = review.stock_of(worst.parts[0]), review.limit("movement-glued")
    moves, slots = movement(stock), review.limit("movement-slotted")
    solid = [name for name in worst.to if review.material_of(name).moves]
    parts = tuple(dict.fromkeys(name for each in (worst, *group) for name in (*each.parts, *each.to)))
    wood, over = review.material_of(worst.parts[0]).said, worst.change - limit.amount
    values: dict[str, Filling] = {
        "parts": listed(worst.parts),
        "to": listed(worst.to),
        "wood": wood,
        "width": length(worst.width),
        "change": fine_length(worst.change),
        "dry": year.dry.value,
        "humid": year.humid.value,
        "gives": limit.value,
        "who": limit.source,
        "over": fine_length(over),
        "narrow": review.limit("cross-grain-glue-width").value,
        "half": fine_length(worst.change / 2),
        "slots": slots.value,
        "fits": length(worst.width * 2 * slots.amount / worst.change),
        "sheet": review.material_of(worst.to[0]).said,
    }
    one, rate = len(worst.parts) == 1, ratio(moves.coefficient)
    crossed = "whose grain runs across it" if solid else "{sheet}, which lies still"
    join = " " if solid else ", "
    do = "Glue only a strip of {narrow} along the middle and hold both edges with screws in slotted holes: "
    do += "each edge then moves {half}, and slots give {slots}."
    if worst.change / 2 > slots.amount:
        do = "Leave the glue out, and screw it on in boards up to {fits} wide with gaps between them, each "
        do += "fixed along its middle and slotted at both edges: slots give {slots}, and no edge moves more."
    if solid:
        do = f"Let the grain of both run the same way, so that they move as one. Or: {do[0].lower()}{do[1:]}"
    small = over <= review.limit("cut-difference").amount
    spans = tuple(dict.fromkeys(span for each in group for span in each.spans))
    return Finding(
        parts=parts,
        at=spans[0],
        also_at=spans[1:],
        says=f"{{parts}} {'is' if one else 'are'} glued face to face to {{to}}{join}{crossed}. Over "
        "{width} across the grain {wood} moves {change} over a year (from {dry} to {humid} of moisture); "
        "glue across the grain gives {gives} ({who}), so {over} too little: it cups, splits or lets go.",
        do=do,
        values=values,
        working=Working(
            (
                Figure("width glued across the grain", length(worst.width)),
                Figure(f"{wood}, {moves.cut}: change per percent of moisture", rate, moves.source),
                Figure("dry end of the year", year.dry.value, year.dry.source),
                Figure("humid end of the year", year.humid.value, year.humid.source),
            ),
            "change = width × change per percent × (humid - dry)"
            if year.by_coefficient
            else "change = width × (humid - dry) / (30 · 100 / S - 30 + dry), S from green to dry in percent",
            Figure("change", fine_length(worst.change)),
            Figure("glue gives", limit.value, limit.source),
        ),
        severity=Severity.NOTE if small else None,
    )


@rule(
    "mixed-across-grain",
    topic="movement",
    severity=Severity.WARNING,
    limits=(
        "movement-glued",
        "movement-slotted",
        "cross-grain-glue-width",
        "cut-difference",
        "moisture-season-low",
        "moisture-season-high",
        "humidity-season-low",
        "humidity-season-high",
        "moisture-outdoors-low",
        "moisture-outdoors-high",
        "moisture-room",
    ),
    needs=("held_boards",),
)
def mixed_across_grain(review: Review) -> Iterator[Finding]:
    """Broad faces are glued together that do not move alike: crossed boards, or solid wood on a sheet.

    Goes wrong: A solid top is glued all over onto plywood, to save on thick boards. With the first winter it
    cups like a dish, or it shears off the glue and splits.

    Judged by: Two parts glued face to face over more than cross-grain-glue-width both ways, of which one is
    solid wood and the other a sheet, or solid wood with its grain across. The glued width times the movement
    of the wood over the year is held against movement-glued; boards that are glued edge to edge count as one.
    What is over by no more than cut-difference is a note. The pair is told once, by the one that moves more.
    Flat sawn wood is assumed where the plan does not say quarter sawn.

    Leaves out: All other glue across the grain (battens, aprons, edges, ends, housings) and screws:
    movement-locked tells those. Lippings and strips up to that width. Veneers: any solid part counts as a
    board. How far the pair cups.

    Sources: Wood Handbook ch. 13 and equation 13-3 (movement); what glue and slots give, and how wide
    crossed grain may be glued: common practice, no source

    Flagged:

        plan "Tray top" in inches
        stock ply: birch plywood 1/2
        stock board: actual 1/2 x 14 red oak
        part core: ply, flat, 24 across, 14 deep, on floor, left at 0, front at 0
        part face: board, across, flat, 24 long, on core, left at 0, front at 0
        join face to core: glue pva

    Quiet:

        plan "Tray top" in inches
        stock ply: birch plywood 1/2
        stock board: actual 3/4 x 14 red oak
        part core: ply, flat, 24 across, 14 deep, on floor, left at 0, front at 0
        part face: board, across, flat, 24 long, on core, left at 0, front at 0
        join face to core: screws #6 x 1, 4 per joint, from below, slotted
    """
    year = season(review.plan, review.limits)
    alike: dict[tuple[Span, ...], list[_Laminated]] = {}
    for held in review.held_boards:
        found = _laminated(review, held, year.dry.amount, year.humid.amount)
        if found is not None:
            alike.setdefault(found.spans, []).append(found)
    for group in alike.values():
        yield _finding(review, group)
