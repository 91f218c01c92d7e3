"""Boards that sag too far under what they carry for years."""

from __future__ import annotations

import math
from collections.abc import Iterator

from reviewer.findings import Figure, Filling, Finding, Severity, Working
from reviewer.language.source import Span
from reviewer.mechanics.beam import BeamResult
from reviewer.model.plan import Axis
from reviewer.reference.loads import planned_load
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.units import TOLERANCE_MM, Value, fine_length, force, length, ratio
from reviewer.wording import listed
from reviewer.workshop.carrying import creep_factor, stiffness
from reviewer.workshop.member import Member
from reviewer.workshop.sagging import Sag, height_enough, most_sag, sag_share, worst_sag

#: Two beams that bend together sag alike, but for the ways in which they are held.
_MUCH_ALIKE = 1.1


def _load_spans(review: Review, part: str) -> list[Span]:
    return [load.span for load in review.loads_by_part.get(part, ())]


def _working(review: Review, sag: Sag) -> Working:
    member, bay = sag.member, sag.bay
    stock, wood = review.stock_of(member.part), review.material_of(member.part)
    modulus, source = stiffness(stock, member.axis == review.setting.solids[member.part].long)
    creep, creep_source = creep_factor(wood, review.plan)
    loads = review.loads_by_part.get(member.part, ())
    sources = {
        load.said: "stated in the plan" if load.weighed else planned_load(load.use).source for load in loads
    }
    figures = [
        Figure("overhang" if bay.kind == "overhang" else "span", length(bay.length)),
        Figure("its own weight", Value(member.own, "line load")),
    ]
    lasting = member.uniform[0] - member.own
    said = "; ".join(f"{name}: {source}" for name, source in sources.items())
    if lasting > 0:
        figures.append(Figure("load that stays", Value(lasting, "line load"), said))
    if member.uniform[1] > 0:
        figures.append(Figure("load for a while", Value(member.uniform[1], "line load"), said))
    if member.spreads:
        on_a_stretch = math.fsum(
            (each.end - each.start) * (each.lasting + each.brief) for each in member.spreads
        )
        figures.append(Figure("load on one stretch", force(on_a_stretch), said))
    if member.points:
        on_spots = math.fsum(each.lasting + each.brief for each in member.points)
        figures.append(Figure("forces from what it holds, and loads on one spot", force(on_spots)))
    figures += [
        Figure(f"stiffness E of {wood.said}", Value(modulus, "stress"), source),
        Figure("width b", length(member.width)),
        Figure("thickness h, as it bends", length(member.height)),
        Figure("growth of a lasting sag over the years", ratio(creep), creep_source),
        Figure("supports along it", Value(len(set(member.places)), "count")),
    ]
    if member.weakness > 1:
        cuts = " and ".join(dict.fromkeys(each.why for each in member.sections if each.why))
        figures.append(
            Figure(f"growth of the sag by what is cut away: {cuts or 'its shape'}", ratio(member.weakness))
        )
    own = member.modulus * member.second_moment
    more = member.stiffened + math.fsum(each.stiffness for each in member.beside)
    if more > 0:
        figures.append(Figure("E·I of what bends with it, over its own", ratio(more / own)))
    assert isinstance(member.sag, BeamResult)
    alone = len(member.sag.bays) == 1 and not member.clamped
    simple = alone and not member.spreads and not member.points and not more and member.weakness <= 1
    formula = (
        "sag = 5·w·L⁴ / (384·E·I), I = b·h³ / 12, w = growth × what stays + what does not"
        if simple
        else "E·I·y″ = -M over all its supports, I = b·h³ / 12, what stays × growth"
    )
    result = Figure("sag in the long run", fine_length(bay.sag))
    return Working(
        tuple(figures), formula, result, Figure("limit", fine_length(sag.allowed), sag.limit.source)
    )


def _remedy(review: Review, sag: Sag, bent: bool) -> tuple[str, dict[str, Filling]]:
    """Thicker stock, one more support and a shorter span, each tried on the same beam, bent less too."""
    from reviewer.rules.structure.overstressed import stress_use
    from reviewer.workshop.strengthening import (
        height_that_does,
        propped_in,
        span_that_does,
        thicker_that_does,
    )

    member, limits = sag.member, review.limits

    def use(tried: Member) -> float:
        share = sag_share(tried, limits)
        return max(share, stress_use(review, tried)) if bent else share

    height = height_that_does(member, use, review.units)[0] if bent else height_enough(sag, limits)
    values: dict[str, Filling] = {"height": length(height)}
    lies = review.setting.solids[member.part].thick == Axis.UP
    do = "Use stock {height} thick or more" if lies else "Use a board {height} high or more"
    stock = review.stock_of(member.part)
    thicker = thicker_that_does(review.plan, member, stock, use) if lies else None
    if thicker is not None:
        values |= {"usual": thicker.said, "at_usual": fine_length(most_sag(thicker.member))}
        do += (
            " (the stock {usual} of this plan does: then it sags {at_usual})"
            if thicker.own
            else " (the next usual size is {usual}: then it sags {at_usual})"
        )
    else:
        values["at_height"] = fine_length(most_sag(member.retried(height / member.height)))
        do += " (then it sags {at_height})"
    propped = propped_in(member, sag.bay)
    if use(propped) <= 1:
        values["propped"] = fine_length(most_sag(propped))
        where = "its free end" if sag.bay.kind == "overhang" else "the middle of the span"
        do += f", or put a support under {where}: then it sags {{propped}}"
    shorter = span_that_does(member, sag.bay, use, review.units)
    if shorter is not None:
        values |= {"shorter": length(shorter[0]), "at_shorter": fine_length(most_sag(shorter[1]))}
        do += ", or bring the supports to {shorter} from each other: then it sags {at_shorter}"
    return f"{do}.", values


def _breaks_sooner(review: Review, parts: tuple[str, ...]) -> bool:
    """Whether overstressed tells these parts as an error, with how far they sag."""
    from reviewer.rules.structure.overstressed import breaks_sooner

    return all(breaks_sooner(review, part) for part in parts)


def _bent(review: Review, alike: list[Sag], values: dict[str, Filling]) -> tuple[Sag | None, str]:
    """The part that is bent most beyond what it may bear, if overstressed leaves that to sags; in words."""
    from reviewer.rules.structure.overstressed import bent_too_much

    found = [(use, each) for each in alike if (use := bent_too_much(review, each.member.part)) is not None]
    if not found:
        return None, ""
    use, most = max(found, key=lambda each: each[0].ratio)
    which = tuple(each.member.part for _, each in found)
    values |= {
        "stress": use.value,
        "most": use.limit,
        "wood": use.named,
        "stress_by": use.who,
        "which": listed(which),
    }
    several = len(which) > 1
    who = "{which}" if len(which) < len(alike) else "They" if several else "It"
    does = f"{'are' if several else 'is'} also {'bent' if use.kind == 'bending' else 'sheared'}"
    return most, (
        f" {who} {does} to {{stress}} where {{wood}} may bear {{most}} ({{stress_by}}); what is told next is "
        "enough for both."
    )


def _finding(review: Review, alike: list[Sag], severity: Severity) -> Finding:
    sag = alike[0]
    parts = tuple(each.member.part for each in alike)
    bay, one = sag.bay, len(parts) == 1
    values: dict[str, Filling] = {
        "parts": listed(parts),
        "sag": fine_length(bay.sag),
        "span": length(bay.length),
        "limit": fine_length(sag.allowed),
        "who": sag.limit.source,
        "by": sag.limit.value if sag.limit.name == "sag-ratio" else fine_length(sag.limit.amount),
        "over": fine_length(abs(bay.sag - sag.allowed)),
    }
    verb = "sags" if one else "each sag"
    where = "at the end of an overhang of {span}" if bay.kind == "overhang" else "over a span of {span}"
    span = "twice the overhang" if bay.kind == "overhang" else "the span"
    rate = f"{span} divided by {{by}}" if sag.limit.name == "sag-ratio" else f"{{by}} a foot of {span}"
    says = f"{{parts}} {verb} {{sag}} {where} in the long run. The limit is {{limit}} ({rate}; {{who}}), "
    if severity is Severity.NOTE:
        left = "only {over} is left" if sag.allowed - bay.sag > TOLERANCE_MM else "nothing is left"
        says += f"so {left}, and boards differ by more."
        do = "Choose the stiffest boards for {parts}, or lay them so that a bow points up."
    else:
        says += "so that is {over} too much."
        bent, said = None, ""
        if not _breaks_sooner(review, parts):
            bent, said = _bent(review, alike, values)
        says += said
        do, more = _remedy(review, bent or sag, bent is not None)
        values |= more
    spans = [span for part in parts for span in _load_spans(review, part)]
    return Finding(
        parts=parts,
        at=spans[0] if spans else review.span_of(parts[0]),
        also_at=(review.span_of(parts[0]),) if spans else (),
        says=says,
        do=do,
        values=values,
        working=_working(review, sag),
        severity=severity,
        told_by="overstressed" if severity is not Severity.NOTE and _breaks_sooner(review, parts) else "",
    )


@rule(
    "sags",
    topic="structure",
    severity=Severity.WARNING,
    limits=("sag-ratio", "sag-per-foot", "sag-near-share", "sag-error-share", "overhang-share"),
)
def sags(review: Review) -> Iterator[Finding]:
    """A board that is too thin for its span sags, and goes on sagging for years.

    Goes wrong: The shelf looks straight on the first day. Under books it creeps: in a few years a
    board of wood sags twice as far as at first, particleboard three times. Doors bind, books lean,
    and the eye sees the curve long before anything breaks.

    Judged by: Each part that spans is a straight beam on the supports that it really has, over as many of
    them as there are. It carries its own weight, its loads and what rests on it; loads that stay are
    multiplied by the creep of the wood in that room. The worst sag of each bay is held against its span
    divided by sag-ratio; where sag-per-foot is set, the stricter of the two counts. An overhang counts
    with twice its length, as is customary. Beyond the limit is a warning, from sag-error-share times the
    limit an error, from sag-near-share of it a note. A short bearing is taken as one knife edge in its
    middle, so that a dado or two screws do not stiffen the board. People take 24 in each and stand in the
    middle of the longest bay. Cuts, holes and the room that joints take out of a board make it sag
    farther, by the energy of bending. Thicker stock, one more support and a shorter span are each tried
    on the same beam before they are told. A board that is bent too much as well, though no more than a
    warning, is told here with both figures, and the next step is enough for both.

    Leaves out: Parts that lean or slant. Shear and the give of supports and joints. What is fixed along a
    board bends with it side by side, not as one section, though glue makes it stiffer than that. A shelf
    held all along by a back or by a cleat on the wall counts as held there, so the drop of its front edge
    is not seen. What people shift by leaning to one side, and a person's whole weight on one slat of
    several: a load is shared by the parts it names.

    Sources: Wood Handbook ch. 8 and 9 (bending); creep from Wood Handbook, EN 1995-1-1 Table 3.2 and NDS
    3.5.2; span / 240 in the long run is common practice, no source; twice the overhang as in IBC
    Table 1604.3 (from memory)

    Flagged:

        plan "Long shelf" in inches
        stock board: 1x10 pine
        part side for each of left, right: board, upright, facing side, 12 tall, on floor
            flush with each of case, flush with front of case
        part shelf: board, across, flat, on side.left, from left of case to right of case
            flush with front of case
        outline case: 48 across, 9 1/4 deep, 13 tall, on floor
        join shelf to side.*: screws #8 x 2, 3 per joint, from above
        load shelf: books
        room study: indoors

    Quiet:

        plan "Short shelf" in inches
        stock board: 1x10 pine
        part side for each of left, right: board, upright, facing side, 12 tall, on floor
            flush with each of case, flush with front of case
        part shelf: board, across, flat, on side.left, from left of case to right of case
            flush with front of case
        outline case: 24 across, 9 1/4 deep, 13 tall, on floor
        join shelf to side.*: screws #8 x 2, 3 per joint, from above
        load shelf: books
        room study: indoors
    """
    near, far = review.limit("sag-near-share").amount, review.limit("sag-error-share").amount
    found = [
        sag
        for member in review.carrying.members.values()
        if member.free_end(review.limit("overhang-share").amount) is None
        and (sag := worst_sag(member, review.limits)) is not None
        and sag.share >= min(near, 1.0)
    ]
    # A strip that bends with its shelf is not told again, unless it is the worse of the two.
    with_it = {each.bearing.held.by: sag.share for sag in found for each in sag.member.beside}
    alike: dict[tuple[object, ...], list[Sag]] = {}
    for sag in found:
        if sag.share <= with_it.get(sag.member.part, 0.0) * _MUCH_ALIKE:
            continue
        part = review.plan.parts[sag.member.part]
        figures = (round(sag.bay.length, 1), round(sag.bay.sag, 2), round(sag.allowed, 2))
        alike.setdefault((part.family, part.stock, sag.bay.kind, *figures), []).append(sag)
    order = {name: place for place, name in enumerate(review.plan.parts)}
    for group in alike.values():
        group.sort(key=lambda each: order[each.member.part])
        share = group[0].share
        # Exactly on the limit is within it.
        heavy = Severity.ERROR if share >= far else Severity.WARNING
        yield _finding(review, group, heavy if share > 1 + 1e-9 else Severity.NOTE)
