"""Two parts where only one has room."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from reviewer.findings import Edit, Figure, Filling, Finding, Severity, Working
from reviewer.language.source import Span
from reviewer.model.plan import HousingKind
from reviewer.plan_words import number_text, plan_unit
from reviewer.records import NamedTuple
from reviewer.reference.usual_values import usual_value
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.setting_out.directions import ALONG, TOWARDS, placing_span
from reviewer.setting_out.result import Overlap
from reviewer.setting_out.solid import Solid
from reviewer.units import TOLERANCE_MM, Value, fine_length
from reviewer.wording import listed
from reviewer.workshop.housing import BY_PLACE, Housed, housed

if TYPE_CHECKING:
    from reviewer.workshop.proportions import MeetingTenons, Tenon

#: Volumes that differ by less than this share are alike: the same board, set out by other sums.
_ALIKE = 1e-6
#: Where a joint that has no depth of its own makes room, and what to do elsewhere.
_CORNER = (
    "where both parts end",
    "Let both end in the corner, or use a joint for the middle of a part, such as a half lap.",
)
_ONLY: dict[HousingKind, tuple[str, str]] = {
    "mitre": _CORNER,
    "splined mitre": _CORNER,
    "dovetails": _CORNER,
    "box joint": _CORNER,
    "bridle": (
        "at the end of one of the parts",
        "Let one of them end there, or use a joint for the middle of a part, such as a half lap.",
    ),
    "tongue and groove": (
        "along edges that meet, as deep as the thinner part is thick",
        "Let them meet edge to edge, or let {parts} go in {short} less.",
    ),
}


#: Of more overlaps than this, shaped parts are told the shift of their bounds: the true one takes long.
MAX_EXACT = 60


class _Shift(NamedTuple):
    """The least move that clears an overlap: which part, on which axis, to which end, mm."""

    part: str
    other: str
    axis: int
    end: int
    by: float


def _least_shift(first: Solid, second: Solid, *, exact: bool) -> _Shift:
    """The smaller part moves; of two alike the second. ``exact``: shaped parts go as far as they have to."""
    smaller_first = first.volume < second.volume * (1 - _ALIKE)
    moved, kept = (first, second) if smaller_first else (second, first)
    ways = [
        (
            round(kept.high[axis] - moved.low[axis] if end else moved.high[axis] - kept.low[axis], 6),
            axis,
            end,
        )
        for axis in range(3)
        for end in (0, 1)
    ]
    if exact and (moved.body is not None or kept.body is not None):
        ways = _true_ways(moved, kept, ways)
    by, axis, end = min(ways)
    return _Shift(moved.name, kept.name, axis, end, by)


def _true_ways(moved: Solid, kept: Solid, ways: list[tuple[float, int, int]]) -> list[tuple[float, int, int]]:
    """The same six ways, each as far as a shaped or slanted part really has to go."""
    from reviewer.geometry.convex import way_out
    from reviewer.geometry.vectors import UNITS, times
    from reviewer.setting_out.bodies import body_of

    pieces, others = body_of(moved).pieces, body_of(kept).pieces
    return [
        (round(way_out(pieces, others, times(UNITS[axis], 1.0 if end else -1.0), most), 6), axis, end)
        for most, axis, end in ways
    ]


def _ends_inside(review: Review, shift: _Shift) -> bool:
    """True when an end of a board, or an edge of a sheet, is inside the other, so that a cut clears it."""
    moved, kept = review.setting.solids[shift.part], review.setting.solids[shift.other]
    if shift.axis != moved.long and (
        review.stock_of(shift.part).kind == "board" or shift.axis == moved.thick
    ):
        return False
    low = moved.low[shift.axis] < kept.low[shift.axis] - TOLERANCE_MM
    high = moved.high[shift.axis] > kept.high[shift.axis] + TOLERANCE_MM
    return low != high


def _takes_notch(notched: Solid, through: Solid) -> bool:
    """True when a notch in one part makes room for the other: open to a side, right through, no half gone.

    Taken away over the whole of two axes it would be an end sawn off, or the part in two.
    """
    open_to = []
    whole = 0
    for axis in range(3):
        low, high = max(notched.low[axis], through.low[axis]), min(notched.high[axis], through.high[axis])
        at_low, at_high = low <= notched.low[axis] + TOLERANCE_MM, high >= notched.high[axis] - TOLERANCE_MM
        if at_low and at_high:
            whole += 1
        elif at_low or at_high:
            open_to.append((high - low) / notched.extent(axis))
    return whole == 1 and bool(open_to) and max(open_to) <= usual_value("housing-share")


def _notch(review: Review, shifts: list[_Shift]) -> tuple[tuple[str, ...], tuple[str, ...]] | None:
    """Which parts can be notched and for which others, where that clears all these overlaps."""
    solids = review.setting.solids
    for pairs in (
        [(shift.other, shift.part) for shift in shifts],
        [(shift.part, shift.other) for shift in shifts],
    ):
        if all(_takes_notch(solids[one], solids[other]) for one, other in pairs):
            notched, through = zip(*pairs, strict=True)
            return tuple(dict.fromkeys(notched)), tuple(dict.fromkeys(through))
    return None


def _weight(depth: float, review: Review) -> Severity | None:
    """What no rule and pencil shows is only a warning: a swipe of the plane mends it."""
    return Severity.WARNING if depth <= review.limit("cut-difference").amount else None


def _in_the_way(review: Review, shifts: list[_Shift]) -> Finding:
    first = shifts[0]
    parts = tuple(dict.fromkeys(shift.part for shift in shifts))
    others = tuple(dict.fromkeys(shift.other for shift in shifts))
    values: dict[str, Filling] = {
        "parts": listed(parts),
        "others": listed(others),
        "depth": fine_length(first.by),
        "along": ALONG[first.axis],
        "way": TOWARDS[first.axis][first.end],
    }
    runs = "runs" if len(parts) == 1 else "run"
    if all(_ends_inside(review, shift) for shift in shifts):
        move = "Take {depth} off {parts} at {others}"
    else:
        move = "Move {parts} {depth} {way}" if len(shifts) == 1 else "Set them {depth} apart {along}"
    do = f"{move}, or join them with what makes room, such as a dado or a half lap."
    notch = _notch(review, shifts)
    if notch is not None:
        values |= {"notched": listed(notch[0]), "through": listed(notch[1]), "one": notch[1][0]}
        clause = "with the clause" if len(notch[1]) == 1 else "with a clause for each, such as"
        do = (
            f"{move}, join them with what makes room, such as a dado or a half lap, or notch {{notched}} for "
            f"{{through}} {clause}: notch for {{one}}"
        )
    return Finding(
        parts=tuple(dict.fromkeys((*parts, *others))),
        at=placing_span(review.plan, first.part, first.axis),
        also_at=(review.span_of(first.other),),
        says=f"{{parts}} {runs} {{depth}} into {{others}} {{along}}, and no joint makes room for that.",
        do=do,
        values=values,
        severity=_weight(first.by, review),
    )


def _too_shallow(review: Review, found: list[Housed]) -> Finding:
    first = found[0]
    housing = first.joint.join.housing
    assert housing is not None
    parts = tuple(dict.fromkeys(each.part for each in found))
    into = tuple(dict.fromkeys(each.into for each in found))
    values: dict[str, Filling] = {
        "parts": listed(parts),
        "into": listed(into),
        "joint": housing.kind,
        "depth": fine_length(first.depth),
        "along": ALONG[first.axis],
        "room": fine_length(first.room),
        "short": fine_length(first.short),
    }
    goes = "goes" if len(parts) == 1 else "go"
    long = "long" if housing.kind == "mortise and tenon" else "deep"
    by_place = housing.kind in BY_PLACE
    if by_place:
        where, do = _ONLY[housing.kind]
        a, make = ("", "make") if housing.kind == "dovetails" else ("a ", "makes")
        says = f"but {a}{{joint}} {make} room only {where}"
    else:
        says = (
            f"but the {{joint}} is {{room}} {long}: {{short}} too shallow"
            if first.room_said
            else "but the {joint} has no stated depth, and the usual half of the wood is {room}: "
            "{short} too shallow"
        )
        do = f"Make the {{joint}} {{depth}} {long}, or let {{parts}} go in {{short}} less."
    unit = plan_unit(review.source, review.plan)
    # Deeper than half of the wood is no remedy: there the part has to go in less.
    into_wood = review.setting.solids[first.into].extent(first.axis)
    deeper = first.depth <= into_wood / 2 + TOLERANCE_MM and not by_place
    return Finding(
        parts=tuple(dict.fromkeys((*parts, *into))),
        at=housing.span,
        also_at=(placing_span(review.plan, first.part, first.axis),),
        says=f"{{parts}} {goes} {{depth}} into {{into}} {{along}}, {says}.",
        do=do if deeper or by_place else "Let {parts} go in {short} less.",
        values=values,
        working=Working(
            (
                Figure("shared space", fine_length(first.depth)),
                Figure("room made", fine_length(first.room), "stated in the plan" if first.room_said else ""),
            ),
            "shared space - room made",
            Figure("too shallow by", fine_length(first.short)),
        )
        if not by_place
        else None,
        edit=Edit(housing.span, f"{housing.kind} {number_text(first.depth, unit)} {long}")
        if deeper
        else None,
        severity=_weight(first.short, review),
    )


def _tenons_of(review: Review) -> dict[str, list[Tenon]]:
    """By part, the tenons cut on it."""
    found: dict[str, list[Tenon]] = {}
    if any(
        join.housing is not None and join.housing.kind == "mortise and tenon" for join in review.plan.joins
    ):
        from reviewer.workshop.proportions import tenons

        for tenon in tenons(review):
            found.setdefault(tenon.part, []).append(tenon)
    return found


def _tenons_meeting(
    review: Review, tenons_of: dict[str, list[Tenon]], overlap: Overlap
) -> MeetingTenons | None:
    """What is left of an overlap where both parts are tenoned into the wood that it lies in."""
    one, two = tenons_of.get(overlap.first, ()), tenons_of.get(overlap.second, ())
    if not one or not two:
        return None
    from reviewer.workshop.proportions import tenons_meeting

    return tenons_meeting(one, two, review.setting.solids, overlap)


def _tenons_meet(found: list[MeetingTenons]) -> Finding:
    """Tenons of two parts that come together in a third: every maker mitres their tips, so it is a note."""
    first = found[0]
    parts = tuple(dict.fromkeys(each.one for each in found))
    others = tuple(dict.fromkeys(each.two for each in found))
    into = tuple(dict.fromkeys(each.into for each in found))
    values: dict[str, Filling] = {
        "parts": listed(parts),
        "others": listed(others),
        "into": listed(into),
        "depth": fine_length(first.by),
    }
    return Finding(
        parts=tuple(dict.fromkeys((*parts, *others))),
        at=first.span,
        says="The tenons of {parts} and of {others} meet in {into}: {depth} of them want the same place.",
        do="Mitre the tips of the tenons where they meet, or cut one of them {depth} shorter.",
        values=values,
        severity=Severity.NOTE,
    )


@rule("parts-overlap", topic="fit", severity=Severity.ERROR, limits=("cut-difference",))
def parts_overlap(review: Review) -> Iterator[Finding]:
    """Two parts claim the same space, and no joint makes room for it.

    Goes wrong: On paper both parts are there; at the bench the second one does not go in. It gets
    cut short on the spot, and then what was to meet its other end no longer does.

    Judged by: The box that two solids share. A housing between the two (dado, groove, rabbet, half
    lap, mortise and tenon, mitre, bridle, tongue and groove, dovetails, box joint) makes room: by its
    stated depth along the way the one goes into the other; of no stated depth, half of the wood it is cut
    into; a half lap half of each part; mitres, dovetails and a box joint all of a corner where both parts
    end; a bridle all of it where one of them ends; a tongue as much as the thinner part is thick, along
    edges that meet. What is left over is the fault. The shift told is the least
    that clears it: over all six ways, how far the smaller part would have to go. A notch is offered where
    it is open to a side of the part, goes right through it and takes no more than half. Up to the limit
    cut-difference it is a warning only. Where two rails are tenoned into one leg, what stands in the leg are
    their tenons and not the whole rails: a third of the thickness where the plan does not say, in the middle.
    Tenons that still meet are a note, as makers mitre their tips.

    Leaves out: The real shape of shoulders and tenons, and the rounding of eased edges. Whether a
    housing weakens the part it is cut into.

    Sources: plain geometry; half of the wood for a housing of no stated depth is common practice, no
    source

    Flagged:

        plan "Shelf between sides" in inches
        stock board: 1x12 pine
        part side for each of left, right: board, upright, facing side, 36 tall, on floor
            flush with front of case, flush with each of case
        part shelf: board, across, flat, from left of case to right of case
            flush with front of case, bottom 12 above floor
        outline case: 30 across, 12 deep, 36 tall, on floor
        join shelf to side.*: screws #8 x 2, 3 per end, from outside

    Quiet:

        plan "Shelf between sides" in inches
        stock board: 1x12 pine
        part side for each of left, right: board, upright, facing side, 36 tall, on floor
            flush with front of case, flush with each of case
        part shelf: board, across, flat, between side.left and side.right, housed 1/4 each end
            flush with front of case, bottom 12 above floor
        outline case: 30 across, 12 deep, 36 tall, on floor
        join shelf to side.*: dado 1/4 deep, glue pva
    """
    setting = review.setting
    solids = setting.solids
    order = {name: place for place, name in enumerate(solids)}
    rooms: dict[tuple[str, str], Housed] = {}
    for joint in setting.joints:
        made = housed(joint, solids)
        if made is not None and joint.overlap is not None:
            pair = (joint.overlap.first, joint.overlap.second)
            if pair not in rooms or made.short < rooms[pair].short:
                rooms[pair] = made
    tenons_of = _tenons_of(review)
    bare: dict[tuple[Span, int, float], list[_Shift]] = {}
    meeting: dict[tuple[Span, float], list[MeetingTenons]] = {}
    shallow: dict[tuple[Span, float], list[Housed]] = {}
    for number, overlap in enumerate(setting.overlaps):
        made = rooms.get((overlap.first, overlap.second))
        if made is None:
            first, second = sorted((overlap.first, overlap.second), key=order.__getitem__)
            tenoned = _tenons_meeting(review, tenons_of, overlap)
            if tenoned is not None:
                if tenoned.by > TOLERANCE_MM:
                    meeting.setdefault((tenoned.span, round(tenoned.by, 2)), []).append(tenoned)
                continue
            shift = _least_shift(solids[first], solids[second], exact=number < MAX_EXACT)
            clause = placing_span(review.plan, shift.part, shift.axis)
            bare.setdefault((clause, shift.axis, round(shift.by, 2)), []).append(shift)
        elif made.short > TOLERANCE_MM:
            shallow.setdefault((made.joint.join.span, round(made.short, 2)), []).append(made)
    for shifts in bare.values():
        yield _in_the_way(review, shifts)
    for tips in meeting.values():
        yield _tenons_meet(tips)
    for found in shallow.values():
        yield _too_shallow(review, found)
    if setting.crowded:
        pairs: Value = Value(len(setting.contacts) + len(setting.overlaps), "count")
        yield Finding(
            parts=(),
            at=review.plan.span,
            says="So many parts touch or share space that the search stopped after {pairs} meetings: "
            "the rest of the piece is not looked at.",
            do="Mend the overlaps told here and review again, or split the plan.",
            values={"pairs": pairs},
        )
