"""Ends of boards that rest on too little."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Figure, Filling, Finding, Severity, Working
from reviewer.records import NamedTuple
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.setting_out.directions import FACES
from reviewer.units import TOLERANCE_MM, fine_length
from reviewer.wording import listed
from reviewer.workshop.bearing import Bearing
from reviewer.workshop.member import Member


class _Short(NamedTuple):
    """An end of a board (0 low, 1 high) that rests on one support, too little of it."""

    member: Member
    bearing: Bearing
    end: int


def _short(member: Member, least: float) -> Iterator[_Short]:
    """The ends of a member where all that it rests on is shorter than ``least``."""
    for end in (0, 1):
        at_end = [
            bearing
            for bearing in member.bearings
            if (bearing.end >= member.length - least if end else bearing.start <= least)
        ]
        if not at_end or not all(each.held.how == "rests" and not each.held.housed for each in at_end):
            continue  # a joint holds that end, or nothing does
        longest = max(at_end, key=lambda each: each.length)
        if longest.length < least - TOLERANCE_MM:
            yield _Short(member, longest, end)


def _finding(review: Review, alike: list[_Short]) -> Finding:
    short = alike[0]
    limit = review.limit("bearing-least")
    parts = tuple(dict.fromkeys(each.member.part for each in alike))
    by = tuple(dict.fromkeys(each.bearing.held.by for each in alike))
    ends = sorted({each.end for each in alike})
    one = len(parts) == 1
    values: dict[str, Filling] = {
        "parts": listed(parts),
        "by": listed(by),
        "rests": fine_length(short.bearing.length),
        "least": fine_length(limit.amount),
        "who": limit.source,
        "lack": fine_length(limit.amount - short.bearing.length),
        "ends": " and ".join(FACES[short.member.axis][end] for end in ends),
    }
    where = "end" if len(ends) == 1 else "ends"
    support = review.setting.solids.get(short.bearing.held.by)
    thin = support is not None and support.extent(short.member.axis) < limit.amount
    first = (
        "Use stock at least {least} thick for {by}"
        if thin
        else f"Make {{parts}} {{lack}} longer at the {{ends}} {where}"
    )
    return Finding(
        parts=(*parts, *by),
        at=review.span_of(parts[0]),
        also_at=tuple(review.span_of(name) for name in by[:1] if name in review.plan.parts),
        says=f"{{parts}} {'rests' if one else 'rest'} on only {{rests}} of {{by}} at the {{ends}} {where}. "
        "{least} is the least ({who}), so {lack} is missing.",
        do=f"{first}: then {'it rests' if one else 'they rest'} on {{least}}. Or let {{parts}} into a dado, "
        "or put a cleat under there.",
        values=values,
        working=Working(
            (Figure("length of the bearing", fine_length(short.bearing.length)),),
            "missing = least - length of the bearing",
            Figure("missing", fine_length(limit.amount - short.bearing.length)),
            Figure("least", fine_length(limit.amount), limit.source),
        ),
    )


@rule("bearing-too-short", topic="structure", severity=Severity.ERROR, limits=("bearing-least",))
def bearing_too_short(review: Review) -> Iterator[Finding]:
    """A shelf that barely reaches its support slips off it.

    Goes wrong: The case spreads by a hair, the shelf dries, someone knocks it: an end that lay on an
    eighth of an inch lies on nothing.

    Judged by: The length along the board on which an end of it rests, against the limit bearing-least.
    Only ends that lie loose or screwed on top of something are judged; an end joined at its side, or let
    into a dado or tenon, is held by that joint.

    Leaves out: Shelf pins and brackets, whose own size the plan does not tell. Crushing of the wood.

    Sources: an ordinary dado is 1/4 to 3/8 in deep (joints reference, 4.6; common practice, no source)

    Flagged:

        plan "Shelf on thin ledges" in inches
        stock board: 1x8 pine
        stock ledge: actual 3/16 x 3/4 pine
        outline case: 24 across, 7 1/4 deep, 12 tall, on floor
        part side for each of left, right: board, upright, facing side, 12 tall, on floor
            flush with each of case, flush with front of case
        part ledge.left: ledge, deep, on edge, 7 1/4 long, against right of side.left
            flush with front of case, bottom 5 above floor
        part ledge.right: like ledge.left, mirrored across about case
        part shelf: board, across, flat, on ledge.left, between side.left and side.right
            flush with front of case
        join ledge.* to side.*: glue pva

    Quiet:

        plan "Shelf on good ledges" in inches
        stock board: 1x8 pine
        stock ledge: actual 1/4 x 3/4 pine
        outline case: 24 across, 7 1/4 deep, 12 tall, on floor
        part side for each of left, right: board, upright, facing side, 12 tall, on floor
            flush with each of case, flush with front of case
        part ledge.left: ledge, deep, on edge, 7 1/4 long, against right of side.left
            flush with front of case, bottom 5 above floor
        part ledge.right: like ledge.left, mirrored across about case
        part shelf: board, across, flat, on ledge.left, between side.left and side.right
            flush with front of case
        join ledge.* to side.*: glue pva
    """
    least = review.limit("bearing-least").amount
    alike: dict[tuple[object, ...], list[_Short]] = {}
    for member in review.carrying.members.values():
        for short in _short(member, least):
            key = (review.plan.parts[member.part].family, member.axis, round(short.bearing.length, 2))
            alike.setdefault(key, []).append(short)
    order = {name: place for place, name in enumerate(review.plan.parts)}
    for group in alike.values():
        group.sort(key=lambda each: (order[each.member.part], each.end))
        yield _finding(review, group)
