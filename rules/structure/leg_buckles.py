"""Upright parts that bow out under what they carry."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Figure, Filling, Finding, Severity, Working
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.units import Value, force, length, percent, ratio
from reviewer.wording import listed
from reviewer.workshop.bracing import Brace
from reviewer.workshop.columns import Column, column_strength
from reviewer.workshop.strengths import strength_factor, strengths
from reviewer.workshop.utilisation import Utilisation

#: A thicker brace is looked for in steps of so much, so many times.
_STEP, _MOST_STEPS = 1.02, 200


def _pressing(review: Review, part: str) -> tuple[float, bool]:
    """The force on an upright part, N, and whether enough of it does not stay."""
    down = [each for each in review.carrying.handed[part] if each.to.how == "rests"]
    whole = sum(each.force for each in down)
    return whole, sum(each.brief for each in down) >= strength_factor("brief-share") * whole


def _used(review: Review, one: Column) -> float:
    """How far a column is used under the force on its part."""
    whole, brief = _pressing(review, one.part)
    values = strengths(review.stock_of(one.part), one.sides, flat=False, brief=brief)
    return one.stress(whole) / column_strength(one, values).value


def _fits(review: Review, one: Column) -> bool:
    return _used(review, one) <= 1 and one.slenderness <= review.limit("column-slenderness").amount


def _remedy(review: Review, one: Column) -> tuple[str, dict[str, Filling]]:
    """Thicker stock of the plan, else the thickness that does, and a brace in the middle: each tried."""
    from reviewer.workshop.strengthening import own_stocks

    values: dict[str, Filling] = {}
    ways = []
    wide = max(one.sides)
    for stock in own_stocks(review.plan, review.stock_of(one.part)):
        tried = one._replace(sides=(max(wide, stock.thickness), stock.thickness))
        if _fits(review, tried):
            values |= {"usual": stock.said, "at_usual": percent(round(100 * _used(review, tried)))}
            ways.append("Cut {parts} from the stock {usual} of this plan: then it is at {at_usual}")
            break
    else:
        side = one.least
        for _ in range(200):
            side *= 1.02
            tried = one._replace(sides=(max(wide, side), side))
            if _fits(review, tried):
                values |= {"side": length(side), "at_side": percent(round(100 * _used(review, tried)))}
                ways.append("Make {parts} {side} thick: then it is at {at_side}")
                break
    for count, where in ((2, "at half of that height"), (3, "at each third of that height")):
        tried = one._replace(free=one.free / count)
        if _fits(review, tried):
            values["at_braced"] = percent(round(100 * _used(review, tried)))
            ways.append(f"join a rail or a panel to it {where}: then it is at {{at_braced}}")
            break
    said = ", or ".join(ways)
    return f"{said[:1].upper()}{said[1:]}.", values


def _finding(review: Review, parts: tuple[str, ...], worst: Utilisation, one: Column) -> Finding:
    slender = review.limit("column-slenderness")
    whole, _ = _pressing(review, worst.part)
    crushed = worst.ratio > 1 + 1e-9
    values: dict[str, Filling] = {
        "parts": listed(parts),
        "force": force(whole),
        "most": force(whole / worst.ratio),
        "free": length(one.free),
        "thin": length(one.least),
        "wood": worst.named,
        "who": worst.who,
        "used": percent(round(100 * worst.ratio)),
        "over": force(abs(whole - whole / worst.ratio)),
        "slender": ratio(one.slenderness),
        "slenderest": slender.value,
        "by": slender.source,
    }
    one_part = len(parts) == 1
    carries, them, are = ("carries", "it", "is") if one_part else ("each carry", "them", "are")
    says = (
        f"{{parts}} {carries} {{force}}, {are} {{thin}} thick, and nothing keeps {them} from bowing out over "
    )
    says += "{free}. "
    if crushed:
        says += (
            "{most} is the most for {wood} ({who}), so that is {over} too much: {used} of what it may bear."
        )
        certain = worst.certain
        if certain is None and worst.standing != "from memory":
            certain = review.limit("overstressed-error-share").amount
        heavy = certain is not None and worst.ratio > certain
    else:
        says += (
            "That is {slender} times the thickness, and {slenderest} is the most ({by}), though it bears "
            "{used} of what it may."
        )
        heavy = False
    do, more = _remedy(review, one)
    return Finding(
        parts=parts,
        at=review.span_of(parts[0]),
        says=says,
        do=do,
        values=values | more,
        working=Working(
            (
                Figure("force", force(whole)),
                Figure("longest stretch that nothing holds l", length(one.free)),
                Figure("thin side d", length(one.least)),
                Figure("wide side b", length(max(one.sides))),
                Figure("slenderness l / d", ratio(one.slenderness)),
            ),
            "stress = force / (b·d); limit = F_c · C_P of l / d",
            Figure("stress along the grain", worst.value),
            Figure("most it may bear", Value(worst.limit.amount, "stress"), worst.source),
        ),
        severity=Severity.ERROR if heavy else Severity.WARNING,
        told_by="joint-out-of-reach",  # what it misses is what would keep it from bowing out
    )


def _brace_used(review: Review, brace: Brace, one: Column) -> float:
    brief = brace.brief >= strength_factor("brief-share")
    values = strengths(review.stock_of(one.part), one.sides, flat=False, brief=brief)
    return one.stress(brace.pressed) / column_strength(one, values).value


def _brace_remedy(review: Review, brace: Brace) -> tuple[str, dict[str, Filling]]:
    """A thickness that does and a joint in the middle, each tried with the same force."""
    values: dict[str, Filling] = {}
    ways = []
    one, wide = brace.column, max(brace.column.sides)
    side = one.least
    for _ in range(_MOST_STEPS):
        side *= _STEP
        tried = one._replace(sides=(max(wide, side), side))
        used = _brace_used(review, brace, tried)
        if used <= 1:
            values |= {"side": length(side), "at_side": percent(round(100 * used))}
            ways.append("Make {parts} {side} thick: then it is at {at_side}")
            break
    used = _brace_used(review, brace, one._replace(free=one.free / 2))
    if used <= 1:
        values["at_held"] = percent(round(100 * used))
        ways.append("join it to something at half of its length: then it is at {at_held}")
    said = ", or ".join(ways) or "Use a second one, running the other way"
    return f"{said[:1].upper()}{said[1:]}.", values


def _brace_finding(review: Review, parts: tuple[str, ...], worst: Utilisation, brace: Brace) -> Finding:
    one, pressed = brace.column, worst.kind == "buckling"
    force_along = brace.pressed if pressed else brace.pulled
    push = review.limit("sway-force")
    values: dict[str, Filling] = {
        "parts": listed(parts),
        "push": push.value,
        "pusher": push.source,
        "force": force(force_along),
        "most": force(force_along / worst.ratio),
        "over": force(force_along - force_along / worst.ratio),
        "free": length(one.free),
        "thin": length(one.least),
        "wood": worst.named,
        "who": worst.who,
        "used": percent(round(100 * worst.ratio)),
    }
    says = (
        "{parts} "
        + ("runs" if len(parts) == 1 else "run")
        + " slanting, and a push of {push} at the top of the piece ({pusher}), with what the piece carries, "
    )
    if pressed:
        says += (
            "presses it with {force}. It is {thin} thick, and nothing keeps it from bowing out over {free}. "
        )
    else:
        says += "pulls it with {force}. "
    says += "{most} is the most for {wood} ({who}), so that is {over} too much: {used} of what it may bear."
    do, more = _brace_remedy(review, brace) if pressed else ("Make {parts} of thicker or wider stock.", {})
    return Finding(
        parts=parts,
        at=review.span_of(parts[0]),
        says=says,
        do=do,
        values=values | more,
        working=Working(
            (
                Figure("push at the top", push.value, push.source),
                Figure("force along it", force(force_along)),
                Figure("longest stretch that nothing holds l", length(one.free)),
                Figure("thin side d", length(one.least)),
                Figure("wide side b", length(max(one.sides))),
            ),
            "K·u = F over the frame of the piece; stress = force / (b·d)"
            + ("; limit = F_c · C_P of l / d" if pressed else ""),
            Figure("stress along the grain", worst.value),
            Figure("most it may bear", Value(worst.limit.amount, "stress"), worst.source),
        ),
        severity=Severity.WARNING,  # the push is custom
    )


@rule(
    "leg-buckles",
    topic="structure",
    severity=Severity.ERROR,
    limits=("column-slenderness", "column-light-share", "overstressed-error-share", "sway-force"),
)
def leg_buckles(review: Review) -> Iterator[Finding]:
    """A leg or a brace that is too thin for its length bows out sideways under what presses it.

    Goes wrong: The leg is strong enough to be stood on, and still it bends like a ruler pressed on its end:
    once it bows it gives way at once.

    Judged by: What each upright part presses on the floor or on the part under it, against its column
    strength: NDS 3.7.1 for framing lumber and, by a share of their mean strength, for other woods,
    EN 1995-1-1 6.3.2 for a strength class. The length is that of the longest stretch to which nothing is
    joined; both its ends count as held in place and free to turn. Its section is the smallest that tapers
    leave; a round leg counts as a square one of the same area. More
    than what it may bear is an error; where custom sets that and it is not the stiffness that governs, a
    warning until it is overstressed-error-share times as much. A part longer than column-slenderness times
    its thickness is a warning, where it bears at least column-light-share of what it may.

    Slanting parts are pulled and pressed by what the frame of the piece brings to them: all it weighs and
    carries, and a push of sway-force at its top, either way; the worse end of the stiffness of its joints
    counts. More than they may bear is a warning, as the push is custom.

    Leaves out: A part that misses what it is joined to: joint-out-of-reach tells that. Sway of the whole
    frame. Legs pushed sideways, and load that sits to one side of the leg. Notches.

    Sources: NDS 2018, 3.7.1; EN 1995-1-1 6.3.2 (from memory); strengths as for overstressed

    Flagged:

        plan "Tall plant table" in millimetres
        stock stick: actual 12 x 12 spruce-pine-fir
        stock top: actual 20 x 300 spruce-pine-fir
        outline table: 300 across, 300 deep, 1000 tall, on floor
        part leg: stick, upright, facing front, 980 tall, on floor, in each corner of table
        part top: top, across, flat, on leg.front-left, flush with left of table, flush with front of table
            300 long
        join top to leg.*: glue pva, screws 4 x 50, 1 per joint, from above
        load top: 60 kg

    Quiet:

        plan "Plant table" in millimetres
        stock stick: actual 40 x 40 spruce-pine-fir
        stock top: actual 20 x 300 spruce-pine-fir
        outline table: 300 across, 300 deep, 1000 tall, on floor
        part leg: stick, upright, facing front, 980 tall, on floor, in each corner of table
        part top: top, across, flat, on leg.front-left, flush with left of table, flush with front of table
            300 long
        join top to leg.*: glue pva, screws 4 x 50, 1 per joint, from above
        load top: 60 kg
    """
    strained: dict[tuple[object, ...], list[tuple[Utilisation, Brace]]] = {}
    for each in review.utilisations:
        if isinstance(each.by, Brace) and each.ratio > 1 + 1e-9:
            part = review.plan.parts[each.part]
            same = (part.family, part.stock, each.kind, round(each.value.amount, 3))
            strained.setdefault(same, []).append((each, each.by))
    for braces in strained.values():
        worst, brace = braces[0]
        yield _brace_finding(review, tuple(each.part for each, _ in braces), worst, brace)
    slender, light = review.limit("column-slenderness").amount, review.limit("column-light-share").amount
    alike: dict[tuple[object, ...], list[tuple[str, Utilisation, Column]]] = {}
    for each in review.utilisations:
        one = each.by
        if each.kind != "buckling" or not isinstance(one, Column):
            continue
        if each.ratio > 1 + 1e-9 or (one.slenderness > slender and each.ratio >= light):
            part = review.plan.parts[each.part]
            key = (part.family, part.stock, round(one.free, 1), round(each.value.amount, 3))
            alike.setdefault(key, []).append((each.part, each, one))
    for group in alike.values():
        _, worst, one = group[0]
        yield _finding(review, tuple(part for part, _, _ in group), worst, one)
