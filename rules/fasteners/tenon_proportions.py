"""Tenons, loose tenons and biscuits that are too thick, too thin or too short for the wood about them."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from reviewer.findings import Edit, Figure, Filling, Finding, Severity, Working
from reviewer.language.source import Span
from reviewer.model.plan import GROUNDS, Fastening
from reviewer.plan_words import called, number_text, plan_unit
from reviewer.records import NamedTuple
from reviewer.reference.usual_values import usual_value
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.setting_out.result import Joint
from reviewer.setting_out.solid import Solid
from reviewer.units import MM_PER_INCH, TOLERANCE_MM, UnitSystem, fine_length, length, ratio
from reviewer.workshop.driving import joint_axis
from reviewer.workshop.proportions import Tenon, tenons
from reviewer.workshop.screw_lengths import NAMED_THINNER_MM


def _names(group: list[Tenon]) -> tuple[tuple[str, ...], tuple[str, ...]]:
    return (
        tuple(dict.fromkeys(each.part for each in group)),
        tuple(dict.fromkeys(each.into for each in group)),
    )


def _span(tenon: Tenon) -> Span:
    housing = tenon.joint.join.housing
    assert housing is not None
    return housing.span


def _handy(mm: float, units: UnitSystem) -> float:
    """The nearest size that a chisel or a bit has: whole millimetres, sixteenths of an inch."""
    step = MM_PER_INCH / 16 if units is UnitSystem.INCH else 1.0
    return max(1, round(mm / step)) * step


def _edit(review: Review, group: list[Tenon], thickness: float | None, depth: float | None) -> Edit | None:
    """The clause with another thickness; a length is only kept, for a part's place hangs on it."""
    if thickness is None or len({round(each.stock, 1) for each in group}) > 1:
        return None
    unit, housing = plan_unit(review.source, review.plan), group[0].joint.join.housing
    assert housing is not None
    long = f" {number_text(housing.depth, unit)} long" if housing.depth is not None else ""
    return Edit(housing.span, f"mortise and tenon{long} {number_text(thickness, unit, 0.4)} thick")


def _thickness(review: Review, group: list[Tenon]) -> Finding:
    """The tenon's own share of its board, too much or too little."""
    worst = max(group, key=lambda each: round(abs(each.share - 1 / 3), 3))
    thick = worst.share > 1 / 3
    limit = review.limit("tenon-share-most" if thick else "tenon-share-least")
    parts, others = _names(group)
    use, one = _handy(worst.stock * usual_value("tenon-share"), review.units), len(parts) == 1
    values: dict[str, Filling] = {
        "parts": called(review.plan, parts),
        "thick": fine_length(worst.thickness),
        "stock": fine_length(worst.stock),
        "share": ratio(round(worst.share, 2)),
        "limit": fine_length(worst.stock * limit.amount),
        "who": limit.source,
        "shoulder": fine_length((worst.stock - worst.thickness) / 2),
        "use": fine_length(use),
    }
    why = (
        "leaves shoulders of only {shoulder} each, too little to bear on"
        if thick
        else "makes for a neck that snaps first"
    )
    return Finding(
        parts=(*parts, *(name for name in others if name not in parts)),
        at=_span(worst),
        says=f"The {'tenon' if one else 'tenons'} of {{parts}} {'is' if one else 'are'} {{thick}} thick on "
        f"wood {{stock}} thick: that {why}. {'At most' if thick else 'At least'} {{limit}} is usual "
        f"({{who}}).",
        do=f"Make {'it' if one else 'them'} about {{use}} thick, a third of the wood.",
        values=values,
        working=Working(
            (
                Figure("tenon", fine_length(worst.thickness)),
                Figure(f"thickness of {worst.part}", fine_length(worst.stock)),
            ),
            "share = tenon / thickness",
            Figure("share", ratio(round(worst.share, 3))),
            Figure("limit", ratio(limit.amount), limit.source),
        ),
        edit=_edit(review, group, use, worst.depth),
    )


def _walls(review: Review, group: list[Tenon]) -> Finding:
    """Too little wood beside the mortise."""
    limit = review.limit("mortise-wall-least")
    worst = min(group, key=lambda each: round(min(each.walls), 2))
    parts, others = _names(group)
    wall = min(worst.walls)
    values: dict[str, Filling] = {
        "parts": called(review.plan, parts),
        "into": called(review.plan, others),
        "thick": fine_length(worst.thickness),
        "wall": fine_length(max(0.0, wall)),
        "limit": fine_length(limit.amount),
        "who": limit.source,
        "lack": fine_length(limit.amount - wall),
    }
    says = (
        "The mortise for the tenon of {parts}, {thick} thick, leaves {wall} of {into} beside it; {limit} is "
        "the least ({who}), so {lack} is missing and the wall splits out."
        if wall > TOLERANCE_MM
        else "The mortise for the tenon of {parts}, {thick} thick, breaks out of the side of {into}; {limit} "
        "of wood beside it is the least ({who})."
    )
    assumed = "" if worst.thickness_said else " The plan names no thickness, so a third of the wood is taken."
    return Finding(
        parts=(*others, *(name for name in parts if name not in others)),
        at=_span(worst),
        says=says + assumed,
        do="Make the tenon thinner, or move {parts} further in from the side of {into}.",
        values=values,
        working=Working(
            (
                Figure("tenon", fine_length(worst.thickness)),
                Figure("wood on one side", fine_length(worst.walls[0])),
                Figure("wood on the other", fine_length(worst.walls[1])),
            ),
            "",
            None,
            Figure("least", fine_length(limit.amount), limit.source),
        ),
        severity=None if wall > TOLERANCE_MM else Severity.ERROR,
    )


def _floor(review: Review, group: list[Tenon]) -> Finding:
    """A blind mortise that leaves a skin of wood below it."""
    limit = review.limit("mortise-wall-least")
    worst = min(group, key=lambda each: round(each.floor, 2))
    parts, others = _names(group)
    values: dict[str, Filling] = {
        "parts": called(review.plan, parts),
        "into": called(review.plan, others),
        "deep": fine_length(worst.depth),
        "wood": fine_length(worst.through),
        "floor": fine_length(worst.floor),
        "limit": fine_length(limit.amount),
        "who": limit.source,
        "most": fine_length(worst.through - limit.amount),
    }
    return Finding(
        parts=(*others, *(name for name in parts if name not in others)),
        at=_span(worst),
        says="The tenon of {parts} goes {deep} into {into}, {wood} thick there: only {floor} is left below "
        "the mortise, and the chisel goes through it. {limit} is the least ({who}).",
        do="Let it in {most} or less, or right through.",
        values=values,
    )


def _short(review: Review, group: list[Tenon]) -> Finding:
    """A stub that hardly goes in."""
    share, enough = review.limit("tenon-depth-share"), review.limit("tenon-depth-enough")
    worst = min(group, key=lambda each: round(each.depth / each.through, 3))
    parts, others = _names(group)
    want = min(worst.through * share.amount, enough.amount)
    values: dict[str, Filling] = {
        "parts": called(review.plan, parts),
        "into": called(review.plan, others),
        "deep": fine_length(worst.depth),
        "wood": fine_length(worst.through),
        "want": fine_length(want),
        "who": (share if want < enough.amount else enough).source,
        "lack": fine_length(want - worst.depth),
    }
    return Finding(
        parts=(*parts, *(name for name in others if name not in parts)),
        at=_span(worst),
        says="The tenon of {parts} goes only {deep} into {into}, {wood} thick there; {want} is the least "
        "({who}), so {lack} is missing and little glue holds it.",
        do="Let it in {want} or more: lengthen the tenon and what it is housed by.",
        values=values,
    )


def _loose_room(joint: Joint, solids: dict[str, Solid], axis: int) -> tuple[str, float] | None:
    """The thinner of the parts that a loose tenon or a biscuit goes into by an end or an edge."""
    entered = [
        solids[name]
        for name in (joint.left, joint.right)
        if name not in GROUNDS and axis != solids[name].thick
    ]
    if not entered:
        return None
    thin = min(entered, key=lambda solid: round(solid.thickness, 2))
    return thin.name, thin.thickness


class _Loose(NamedTuple):
    joint: Joint
    fastening: Fastening
    part: str
    stock: float


def _loose(review: Review) -> Iterator[_Loose]:
    solids = review.setting.solids
    for joint in review.setting.joints:
        for fastening in joint.join.fastenings:
            if fastening.kind not in ("loose tenons", "biscuits") or not joint.meets:
                continue
            axis = joint_axis(joint, solids)
            room = _loose_room(joint, solids, axis) if axis is not None else None
            if room is not None:
                yield _Loose(joint, fastening, *room)


def _loose_finding(review: Review, group: list[_Loose]) -> Finding:
    worst = min(group, key=lambda each: round(each.stock, 2))
    parts = tuple(dict.fromkeys(each.part for each in group))
    values: dict[str, Filling] = {"parts": called(review.plan, parts), "stock": length(worst.stock)}
    if worst.fastening.kind == "biscuits":
        limit = review.limit("biscuit-stock-least")
        values |= {
            "least": length(limit.amount),
            "who": limit.source,
            "lack": fine_length(limit.amount - worst.stock),
        }
        says = (
            "Biscuits go into {parts}, {stock} thick, and {least} is the least ({who}): {lack} is missing. "
            "The slot takes 4 mm and the biscuit swells, so it shows through the face."
        )
        do = "Join it with a tongue or a dado instead, or take stock {least} thick."
    else:
        limit = review.limit("tenon-share-most")
        assert worst.fastening.diameter is not None
        values |= {
            "thick": fine_length(worst.fastening.diameter),
            "most": fine_length(worst.stock * limit.amount),
            "third": fine_length(_handy(worst.stock * usual_value("tenon-share"), review.units)),
            "who": limit.source,
            "wall": fine_length((worst.stock - worst.fastening.diameter) / 2),
        }
        says = (
            "Loose tenons {thick} thick go into {parts}, {stock} thick: only {wall} of wood is left on each "
            "side. At most {most} is usual there ({who})."
        )
        do = "Take tenons about {third} thick."
    return Finding(parts=parts, at=worst.fastening.span, says=says, do=do, values=values)


def _too_thin_for(review: Review, each: _Loose) -> bool:
    if each.fastening.kind == "biscuits":
        return each.stock < review.limit("biscuit-stock-least").amount - NAMED_THINNER_MM
    most = review.limit("tenon-share-most").amount
    return each.fastening.diameter is not None and each.fastening.diameter > each.stock * most + TOLERANCE_MM


_Judge = Callable[[Tenon], bool]
_Teller = Callable[[Review, list[Tenon]], Finding]


def _judges(review: Review) -> tuple[tuple[_Judge, _Teller], ...]:
    least, most = review.limit("tenon-share-least").amount, review.limit("tenon-share-most").amount
    wall = review.limit("mortise-wall-least").amount
    share, enough = review.limit("tenon-depth-share").amount, review.limit("tenon-depth-enough").amount

    def misshapen(each: Tenon) -> bool:
        if not each.thickness_said or each.bare:
            return False
        return each.share > most + 0.005 or each.share < least - 0.005

    def thin_wall(each: Tenon) -> bool:
        return min(each.walls) < wall - TOLERANCE_MM and not misshapen(each)

    def thin_floor(each: Tenon) -> bool:
        return each.blind and each.floor < wall - TOLERANCE_MM

    def short(each: Tenon) -> bool:
        return each.depth < min(each.through * share, enough) - TOLERANCE_MM

    return ((misshapen, _thickness), (thin_wall, _walls), (thin_floor, _floor), (short, _short))


@rule(
    "tenon-proportions",
    topic="fasteners",
    severity=Severity.WARNING,
    limits=("tenon-share-least", "tenon-share-most", "mortise-wall-least", "tenon-depth-share",
            "tenon-depth-enough", "biscuit-stock-least"),
)  # fmt: skip
def tenon_proportions(review: Review) -> Iterator[Finding]:
    """A tenon too thick or too thin for its wood, or a mortise with too little wood about it.

    Goes wrong: A thick tenon leaves thin shoulders and thin walls beside its mortise, and the walls split
    when it is driven home; a thin one snaps at the shoulder. A stub of a tenon comes out with the first
    kick; a mortise chopped nearly through shows its chisel marks on the face.

    Judged by: A stated thickness against that of its board, between tenon-share-least and tenon-share-most.
    What is left of the mortised part on both sides of the tenon, which is taken in the middle of what the
    two share, and below a blind mortise, against mortise-wall-least. How far it goes in, against the lesser
    of tenon-depth-share of the wood there and tenon-depth-enough. Loose tenons against the thinner part
    that they go into by an end or an edge; biscuits by biscuit-stock-least.

    Leaves out: The thickness of a tenon for which the plan states none: a third is taken. Boards let in
    whole, such as slats, which have no shoulders. Haunches, and how wide a tenon is: the language has no
    words for them, so keep the mortise away from the end of a leg, haunch the tenon at a corner, and make two
    of one wider than about 4 in. Bridles, whose slot and tongue are a third each by custom. Parts that lean.

    Sources: Notes on building construction: mortise and tenon (1/4 to 1/3); Sizes of mortise-and-tenon
    joints in older texts (up to a half, walls of 3/16 in); Rule of thumb for mortise-and-tenon size (depth);
    the rest common practice, no source

    Flagged:

        plan "Low table" in inches
        stock leg: actual 2 x 2 red oak
        stock rail: actual 3/4 x 3 red oak
        outline frame: 40 across, 20 deep, 17 tall, on floor
        part leg: leg, upright, as tall as frame, in each corner of frame
        part rail: rail, across, on edge, between leg.front-left and leg.front-right, housed 1 each end
            centred deep on leg.front-left, flush with top of frame
        join rail to leg.*: mortise and tenon 1 long 1/2 thick, glue pva

    Quiet:

        plan "Low table" in inches
        stock leg: actual 2 x 2 red oak
        stock rail: actual 3/4 x 3 red oak
        outline frame: 40 across, 20 deep, 17 tall, on floor
        part leg: leg, upright, as tall as frame, in each corner of frame
        part rail: rail, across, on edge, between leg.front-left and leg.front-right, housed 1 each end
            centred deep on leg.front-left, flush with top of frame
        join rail to leg.*: mortise and tenon 1 long 1/4 thick, glue pva
    """
    if any(
        join.housing is not None and join.housing.kind == "mortise and tenon" for join in review.plan.joins
    ):
        found = tuple(tenons(review))
        for judge, tell in _judges(review):
            groups: dict[Span, list[Tenon]] = {}
            for each in found:
                if judge(each):
                    groups.setdefault(_span(each), []).append(each)
            for group in groups.values():
                yield tell(review, group)
    loose: dict[Span, list[_Loose]] = {}
    for one in _loose(review):
        if _too_thin_for(review, one):
            loose.setdefault(one.fastening.span, []).append(one)
    for thin in loose.values():
        yield _loose_finding(review, thin)
