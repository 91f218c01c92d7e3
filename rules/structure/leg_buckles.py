"""Upright parts that bow out under what they carry."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Figure, Filling, Finding, Severity, Working
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.units import Value, force, length, percent, ratio
from reviewer.wording import listed
from reviewer.workshop.columns import Column, column_strength
from reviewer.workshop.strengths import strength_factor, strengths
from reviewer.workshop.utilisation import Utilisation


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
    )


@rule(
    "leg-buckles",
    topic="structure",
    severity=Severity.ERROR,
    limits=("column-slenderness", "column-light-share", "overstressed-error-share"),
)
def leg_buckles(review: Review) -> Iterator[Finding]:
    """A leg that is too thin for its length bows out sideways under the load.

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

    Leaves out: Sway of the whole frame. Legs pushed sideways, and load that sits to one side of the leg.
    Notches.

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
