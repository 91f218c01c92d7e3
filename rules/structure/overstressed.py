"""Parts that are stressed beyond what their wood may bear."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Figure, Filling, Finding, Severity, Working
from reviewer.mechanics.beam import Bay, BeamResult
from reviewer.model.plan import Axis
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.units import Value, fine_length, force, length, percent
from reviewer.wording import listed
from reviewer.workshop.carrying import Handed
from reviewer.workshop.end_cuts import EndCut
from reviewer.workshop.member import Member
from reviewer.workshop.sagging import Sag, sag_share, worst_sag
from reviewer.workshop.stressing import Stressed
from reviewer.workshop.utilisation import Utilisation, strengths_of, stresses

_KINDS = ("bending", "shear", "bearing")
_DOES = {"bending": "is bent to", "shear": "is sheared to", "bearing": "is pressed across its grain to"}
_MANY = {"bending": "are bent to", "shear": "are sheared to", "bearing": "are pressed across their grain to"}


def stress_use(review: Review, member: Member) -> float:
    """The worst of bending and shear over what it may bear; beyond all bounds where nothing holds it."""
    if not isinstance(member.standing, BeamResult):
        return float("inf")
    return max((stress / limit.value for _, stress, limit, _ in stresses(review, member)), default=0.0)


def _bay(member: Member, at: float) -> Bay | None:
    if not isinstance(member.standing, BeamResult):
        return None
    bays = [bay for bay in member.standing.bays if bay.start <= at <= bay.end]
    return max(bays, key=lambda bay: bay.length, default=None)


def _sag_besides(review: Review, parts: tuple[str, ...]) -> Sag | None:
    """The worst sag of parts that sag too far as well; None where none does."""
    members = review.carrying.members
    much = review.limit("overhang-share").amount
    found = [
        sag
        for name in parts
        if name in members
        and members[name].free_end(much) is None
        and (sag := worst_sag(members[name], review.limits)) is not None
        and sag.share > 1 + 1e-9
    ]
    return max(found, key=lambda sag: sag.share, default=None)


def _along(worst: Utilisation) -> bool:
    """Whether it is stressed between its ends, where what mends it mends a sag too."""
    return isinstance(worst.by, Stressed) and worst.by.end is None


def breaks_sooner(review: Review, part: str) -> bool:
    """Whether a part is told here as an error of bending or shear, with its sag: then sags leaves it."""
    own = [each for each in review.used_by_part.get(part, ()) if each.kind in _KINDS]
    worst = max(own, key=lambda each: each.ratio, default=None)
    return worst is not None and _along(worst) and _severity(review, worst) is Severity.ERROR


def bent_too_much(review: Review, part: str) -> Utilisation | None:
    """The stress of a part that only warns here, where what mends a sag mends it: then sags tells it."""
    uses = review.used_by_part.get(part, ())
    over = [each for each in uses if each.kind in _KINDS and each.ratio > 1 + 1e-9]
    worst = max(over, key=lambda each: each.ratio, default=None)
    if worst is None or not all(_along(each) for each in over):
        return None
    return worst if _severity(review, worst) is Severity.WARNING else None


def _spanning_remedy(
    review: Review, worst: Utilisation, by: Stressed, sags: bool
) -> tuple[str, dict[str, Filling]]:
    """Thicker stock, one more support and a shorter span, each tried on the same beam, for its sag too."""
    from reviewer.workshop.strengthening import (
        height_that_does,
        propped_in,
        span_that_does,
        thicker_that_does,
    )

    member = review.carrying.members[worst.part]
    stock = review.stock_of(worst.part)
    values: dict[str, Filling] = {}
    ways = []

    def used(tried: Member) -> float:
        stressed = stress_use(review, tried)
        return max(stressed, sag_share(tried, review.limits)) if sags else stressed

    def at(tried: Member) -> Value:
        return percent(round(100 * used(tried)))

    lies = review.setting.solids[worst.part].thick == Axis.UP
    thicker = thicker_that_does(review.plan, member, stock, used) if lies else None
    if thicker is not None:
        values |= {"usual": thicker.said, "at_usual": at(thicker.member)}
        ways.append(
            ("use the stock {usual} of this plan" if thicker.own else "use {usual}")
            + ": then it is at {at_usual}"
        )
    else:
        height, tried = height_that_does(member, used, review.units)
        values |= {"height": length(height), "at_height": at(tried)}
        what = "stock {height} thick" if lies else "a board {height} high"
        ways.append(f"use {what} or more: then it is at {{at_height}}")
    bay = _bay(member, by.at)
    if bay is not None:
        tried = propped_in(member, bay)
        if used(tried) <= 1:
            values["at_propped"] = at(tried)
            where = "its free end" if bay.kind == "overhang" else "the middle of the span"
            ways.append(f"put a support under {where}: then it is at {{at_propped}}")
        shorter = span_that_does(member, bay, used, review.units)
        if shorter is not None:
            values |= {"shorter": length(shorter[0]), "at_shorter": at(shorter[1])}
            ways.append("bring the supports to {shorter} from each other: then it is at {at_shorter}")
    if by.end is not None:
        ways[:0] = _end_ways(review, worst, by.end, values)
    said = ", or ".join(ways)
    return f"{said[0].upper()}{said[1:]}.", values


def _end_ways(review: Review, worst: Utilisation, cut: EndCut, values: dict[str, Filling]) -> list[str]:
    """A thicker tenon or a shallower cut at the end, tried; none where that is still too much."""
    from reviewer.workshop.strengthening import whole_steps

    assert isinstance(worst.by, Stressed)
    member = review.carrying.members[worst.part]
    by_class = strengths_of(review, member).crushing_characteristic is not None
    if cut.why == "tenon" and not cut.notched:
        thick = whole_steps(cut.area / cut.depth * worst.ratio, review.units)
        if thick > member.width / 2:
            return []
        values |= {
            "thick": length(thick),
            "at_thick": percent(100 * worst.ratio * cut.area / cut.depth / thick),
        }
        return ["make its tenons {thick} thick: then it is at {at_thick}"]
    if not cut.notched or cut.why == "tenon":
        return []
    deep = cut.depth - cut.left
    step = whole_steps(1e-6, review.units)
    for number in range(1, int(deep * 3 / 4 / step) + 1):
        less = deep - number * step
        tried = cut._replace(left=cut.depth - less, area=cut.area * (cut.depth - less) / cut.left)
        used = worst.ratio * (cut.area * cut.share(by_class)) / (tried.area * tried.share(by_class))
        if used <= 1:
            values |= {"shallow": length(less), "at_shallow": percent(round(100 * used))}
            return [f"cut the {cut.why} {{shallow}} deep at that end: then it is at {{at_shallow}}"]
    return []


def _patch(by: Handed) -> tuple[float, float]:
    """The longer and the shorter side of what two parts share, mm."""
    sides = [by.to.high[axis] - by.to.low[axis] for axis in (Axis.ACROSS, Axis.DEEP)]
    return max(sides), min(sides)


def _bearing_remedy(review: Review, worst: Utilisation, by: Handed) -> tuple[str, dict[str, Filling]]:
    """The same patch made wider the short way, until it bears the load."""
    from reviewer.workshop.strengthening import whole_steps

    long, short = _patch(by)
    needed = whole_steps(short * worst.ratio, review.units)
    values: dict[str, Filling] = {
        "long": length(long),
        "now": length(short),
        "needed": length(needed),
        "at_needed": percent(round(100 * worst.ratio * short / needed)),
    }
    return (
        "Let them meet over {long} by {needed}, not {long} by {now}: then it is at {at_needed}. A wider leg, "
        "or a block of harder wood joined beside it, gives that."
    ), values


def _working(review: Review, worst: Utilisation) -> Working:
    by = worst.by
    result = Figure(f"{worst.kind} stress", worst.value)
    limit = Figure("most it may bear", worst.limit, worst.source)
    if isinstance(by, Handed):
        long, short = _patch(by)
        figures = (
            Figure("force", force(by.force)),
            Figure("what they share: long side", length(long)),
            Figure("short side", length(short)),
        )
        return Working(figures, "stress = force / (long side × short side)", result, limit)
    assert isinstance(by, Stressed)
    member = review.carrying.members[worst.part]
    listing = [
        Figure("width b", length(member.width)),
        Figure("height h, as it bends", length(member.height)),
    ]
    listing.append(Figure("place, from its low end", length(by.at)))
    if by.end is not None:
        listing.append(Figure(f"height left by {by.why}", length(by.end.left)))
    if by.net is not None:
        listing.append(
            Figure(f"weakened there by {by.net.why or 'its shape'}", length(by.net.end - by.net.start))
        )
    if worst.kind == "bending":
        listing.append(Figure("bending moment M", Value(abs(by.effect), "moment")))
        if by.net is not None:
            listing.append(Figure("S left there, over b·h² / 6", _share(6 * by.net.modulus, member, 2)))
        formula = "stress = M / S, S = b·h² / 6 of what is left"
    else:
        listing.append(Figure("shear force V", force(abs(by.effect))))
        if by.net is not None:
            listing.append(Figure("area left there, over b·h", _share(by.net.area, member, 1)))
        formula = "stress = 1.5·V / (b·h) of what is left"
        if by.end is not None:
            listing.append(Figure("area left there, over b·h", _share(by.end.area, member, 1)))
        if by.share < 1:
            by_class = worst.who.startswith("EN ")
            how = "k_v, EN 1995-1-1 (6.62)" if by_class else "(height left / h)², NDS 2018 3.4.3.2"
            source = f"{how}, from memory"
            listing.append(Figure("share of it that does not split", percent(100 * by.share), source))
            formula += ", over the share that does not split"
    return Working(tuple(listing), formula, result, limit)


def _share(left: float, member: Member, power: int) -> Value:
    return percent(100 * left / (member.width * member.height**power))


def _severity(review: Review, worst: Utilisation) -> Severity:
    """What was read makes an error; custom alone a warning until it is far beyond; memory never more."""
    if worst.ratio <= 1 + 1e-9:
        return Severity.NOTE
    certain = worst.certain
    if certain is None and worst.standing != "from memory":
        certain = review.limit("overstressed-error-share").amount
    return Severity.ERROR if certain is not None and worst.ratio > certain else Severity.WARNING


def _finding(
    review: Review, parts: tuple[str, ...], worst: Utilisation, others: list[Utilisation]
) -> Finding:
    severity, by = _severity(review, worst), worst.by
    over = worst.value.amount - worst.limit.amount
    values: dict[str, Filling] = {
        "parts": listed(parts),
        "stress": worst.value,
        "most": worst.limit,
        "wood": worst.named,
        "who": worst.who,
        "used": percent(round(100 * worst.ratio)),
        "over": Value(abs(over), "stress"),
    }
    verb = (_DOES if len(parts) == 1 else _MANY)[worst.kind]
    where = ""
    if isinstance(by, Handed):
        values |= {"other": worst.with_part, "force": force(by.force)}
        where = " where {force} comes to bear between it and {other}"
    elif isinstance(by, Stressed) and (by.net is not None or by.end is not None):
        values["cut"] = by.why
        them = "it" if len(parts) == 1 else "them"
        where = f" where the {{cut}} {'weaken' if by.why.endswith('screws') else 'weakens'} {them}"
        if by.end is not None:
            where += f" over {'its' if len(parts) == 1 else 'their'} support"
        if by.share < 1:
            where += ", counting that such an end splits"
    says = f"{{parts}} {verb} {{stress}}{where}. {{wood}} may bear {{most}} in {worst.kind} ({{who}}), "
    if severity is Severity.NOTE:
        says += "so only {over} is left." if over < 0 else "so nothing is left."
    else:
        says += "so that is {over} too much: {used} of what it may bear."
    if others:
        rest = []
        for number, each in enumerate(others):
            values[f"other_{number}"] = percent(round(100 * each.ratio))
            rest.append(f"{each.kind} is at {{other_{number}}}")
        says += f" {worst.kind.capitalize()} governs; {' and '.join(rest)}."
    sag = None
    if severity is Severity.ERROR and _along(worst):
        sag = _sag_besides(review, parts)
    if sag is not None:
        values |= {"sag": fine_length(sag.bay.sag), "sag_limit": fine_length(sag.allowed)}
        who = "It also sags" if len(parts) == 1 else "They also sag"
        says += f" {who} {{sag}} where {{sag_limit}} is the limit; what is told next is enough for both."
    if severity is Severity.NOTE:
        do = "Choose the straightest boards with the fewest knots for {parts}."
        more: dict[str, Filling] = {}
    elif isinstance(by, Handed):
        do, more = _bearing_remedy(review, worst, by)
    else:
        assert isinstance(by, Stressed)
        do, more = _spanning_remedy(review, worst, by, sag is not None)
    loads = [load.span for part in parts for load in review.loads_by_part.get(part, ())]
    return Finding(
        parts=parts,
        at=loads[0] if loads else review.span_of(parts[0]),
        also_at=(review.span_of(parts[0]),) if loads else (),
        says=says,
        do=do,
        values=values | more,
        working=_working(review, worst),
        severity=severity,
        told_by="sags" if all(bent_too_much(review, part) for part in parts) else "",
    )


@rule(
    "overstressed",
    topic="structure",
    severity=Severity.ERROR,
    limits=("overstressed-near-share", "overstressed-error-share", "overhang-share"),
)
def overstressed(review: Review) -> Iterator[Finding]:
    """A board that is loaded beyond what its wood may bear breaks, crushes or shears.

    Goes wrong: The seat cracks at a knot when a second person sits down, or the rail splits along the
    notch that was cut for its neighbour.

    Judged by: Bending and shear of each part that spans, as carried, and pressure across the grain where a
    part rests on another, against what the wood may bear. Framing lumber: NDS design values of its grade
    (No.2 where none is stated) with load duration, size and flat use. A strength class: EN 338 by EN
    1995-1-1. Any other wood or sheet: a share of its mean strength, as is the custom for furniture. Cuts,
    holes and the room that joints take count as gone, and at an end that lies over its support what a
    tenon, a lap, a notch or pockets for screws leave. An end notched on the side of its support splits: it
    counts for (d_n / d)² of the shear that its section bears, in a strength class for k_v. From
    overstressed-near-share of the limit it is a note, beyond it an error; where only custom sets the limit
    a warning, and an error from overstressed-error-share times the limit on. A value from memory raises no
    error. A part that is bent or sheared too much and sags too far as well is told once, with both figures:
    here where the stress is an error, else by sags.

    Leaves out: Boards on edge that could roll over, and twisting. Shear nearer to a support than the board is
    high, where its end is whole. Dovetails, mitres and round tenons at an end, and notches over a support
    between the ends. Shear within sheets. Parts that lean or slant. Whether many boards share what
    comes on one (they bear 15 % more then). Whether the joints hold. Buildings, and whatever people hang
    from: there a licensed engineer works it out.

    Sources: NDS 2018 and its Supplement, Tables 4A, 4B (as coded in a public engineering library); EN 338,
    EN 1995-1-1; notched ends: NDS 2018 3.4.3.2 and EN 1995-1-1 (6.62), from memory; Wood Handbook ch. 5 for
    mean strengths; a sixth of them: common practice, no source

    Flagged:

        plan "Plank seat" in inches
        stock plank: 2x8 spruce-pine-fir
        outline base: 40 across, 7 1/4 deep, 18 tall, on floor
        part leg for each of left, right: plank, upright, facing side, 16 1/2 tall, on floor
            flush with each of base, flush with front of base
        part seat: plank, across, flat, on leg.left, from left of base to right of base
            flush with front of base
        join seat to leg.*: screws #8 x 3, 3 per joint, from above
        load seat: 2 people standing

    Quiet:

        plan "Plank seat" in inches
        stock plank: 2x8 spruce-pine-fir
        outline base: 40 across, 7 1/4 deep, 18 tall, on floor
        part leg for each of left, right: plank, upright, facing side, 16 1/2 tall, on floor
            flush with each of base, flush with front of base
        part seat: plank, across, flat, on leg.left, from left of base to right of base
            flush with front of base
        join seat to leg.*: screws #8 x 3, 3 per joint, from above
        load seat: 1 person seated
    """
    near = min(review.limit("overstressed-near-share").amount, 1.0)
    by_part: dict[str, dict[str, Utilisation]] = {}
    for each in review.utilisations:
        if each.kind in _KINDS:
            found = by_part.setdefault(each.part, {})
            if each.kind not in found or each.ratio > found[each.kind].ratio:
                found[each.kind] = each
    alike: dict[tuple[object, ...], list[tuple[str, Utilisation]]] = {}
    for name, kinds in by_part.items():
        worst = max(kinds.values(), key=lambda each: each.ratio)
        if worst.ratio >= near:
            part = review.plan.parts[name]
            key = (part.family, part.stock, worst.kind, round(worst.value.amount, 3))
            alike.setdefault(key, []).append((name, worst))
    order = {name: place for place, name in enumerate(review.plan.parts)}
    for group in alike.values():
        group.sort(key=lambda each: order[each[0]])
        name, worst = group[0]
        others = [each for kind, each in by_part[name].items() if kind != worst.kind]
        yield _finding(review, tuple(part for part, _ in group), worst, others)
