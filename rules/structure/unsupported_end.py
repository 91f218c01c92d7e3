"""Level boards that end with nothing under them."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from reviewer.findings import Figure, Filling, Finding, Severity, Working
from reviewer.mechanics.beam import BeamResult
from reviewer.model.plan import GROUNDS, Axis
from reviewer.records import NamedTuple
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.setting_out.directions import FACES
from reviewer.units import TOLERANCE_MM, fine_length, length
from reviewer.wording import listed
from reviewer.workshop.member import Member

#: Less than this is no sag to tell, mm.
_NO_SAG_MM = 0.005
#: What holds a peg by going into both.
_PEGS = ("dowels", "loose tenons", "wedges", "screws", "bolts")


class _Free(NamedTuple):
    """A board with no support under one half: at which end (0 low, 1 high), and how much sticks out, mm."""

    member: Member
    end: int
    reach: float


def _free(member: Member, share: float) -> _Free | None:
    """The free end of a board that its supports cannot keep level; None for all others."""
    end = member.free_end(share)
    if end is None:
        return None
    low, high = member.outer
    return _Free(member, end, member.length - high if end else low)


def _pegged(review: Review, free: _Free) -> bool:
    """True for a short peg that something goes into: nobody puts a leg under a coat peg."""
    part = free.member.part
    return free.reach <= review.limit("peg-reach").amount + TOLERANCE_MM and any(
        part in (joint.left, joint.right)
        and any(fastening.kind in _PEGS for fastening in joint.join.fastenings)
        for joint in review.setting.joints
    )


def _holds_alone(free: _Free, share: float) -> bool:
    """True for a stub at an upright joint: tall enough for what sticks out, it can't turn down."""
    held = free.member.bearings[0].held
    tall = max(each.held.high[Axis.UP] - each.held.low[Axis.UP] for each in free.member.bearings)
    return held.joined and tall >= share * free.reach - TOLERANCE_MM


def _propped(review: Review, free: _Free, one: bool) -> tuple[str, dict[str, Filling]]:
    """A support under the free end, tried: how far the board sags then."""
    from reviewer.workshop.sagging import most_sag, sag_share

    put = "Put a leg, a cleat or a bracket under the {free} end of {parts}"
    member = free.member
    if len(member.bearings) == 1:  # no longer alone, it does not keep the board from turning
        (bearing,) = member.bearings
        member = replace(member, supports=(((bearing.start + bearing.end) / 2, bearing.held),))
    tried = member.retried(more=(free.member.length if free.end else 0.0,))
    if not isinstance(tried.sag, BeamResult):
        return put, {}
    sags = "it sags" if one else "they sag"
    values: dict[str, Filling] = {"propped": fine_length(most_sag(tried))}
    if most_sag(tried) < _NO_SAG_MM:
        return put, {}  # a stub that does not bend: the figure would say nothing
    if sag_share(tried, review.limits) <= 1:
        return f"{put}: then {sags} {{propped}} in the long run", values
    return f"{put} and one in between, since with that alone {sags} {{propped}}", values


def _finding(review: Review, alike: list[_Free]) -> Finding:
    free = alike[0]
    member = free.member
    parts = tuple(each.member.part for each in alike)
    by = tuple(dict.fromkeys(bearing.held.by for each in alike for bearing in each.member.bearings))
    one = len(parts) == 1
    free_end, held_end = FACES[member.axis][free.end], FACES[member.axis][1 - free.end]
    values: dict[str, Filling] = {
        "parts": listed(parts),
        "by": listed(tuple(f"the {name}" if name in GROUNDS else name for name in by)),
        "free": free_end,
        "held": held_end,
        "reach": length(free.reach),
        "long": length(member.length),
    }
    hold = "holds" if len(by) == 1 else "hold"
    low, high = member.outer
    middle = low < member.length / 2 < high
    where = "in the middle" if middle else "at the {held} end"
    put, more = _propped(review, free, one)
    stops = {name for each in review.unjoined for name in each.rest}
    return Finding(
        told_by="never-joined" if stops.issuperset(parts) else "",
        parts=parts,
        at=review.span_of(parts[0]),
        says=f"{{parts}} {'has' if one else 'have'} nothing under {'its' if one else 'their'} {{free}} end: "
        f"{{reach}} of {{long}} {'stick' if one else 'each stick'} out past {{by}}, "
        f"which {hold} {'it' if one else 'them'} {where} only.",
        do=f"{put}, or fix {'it' if one else 'them'} along the whole length.",
        values=values | more,
        working=Working(
            (
                Figure("length", length(member.length)),
                Figure(f"supports begin, from the {FACES[member.axis][0]} end", length(member.outer[0])),
                Figure("supports end", length(member.outer[1])),
            ),
            "supports begin before the middle and end past it",
            Figure("past the last support", length(free.reach)),
            Figure("half of its length", length(member.length / 2), "statics"),
        ),
    )


@rule("unsupported-end", topic="structure", severity=Severity.ERROR, limits=("overhang-share", "peg-reach"))
def unsupported_end(review: Review) -> Iterator[Finding]:
    """A level board with nothing under one end tips, or hangs by a few screws.

    Goes wrong: The first load on the free end prises the screws out of the other one, or the board
    simply tips. It is usually a leg or a cleat that was forgotten, or a board set out past the frame.

    Judged by: Where the supports of each level part bear along it. It is flagged when all of them lie
    under one half of it, when it would tip, and when it lies loose on one support and sticks out past it
    by more than the share overhang-share of that support. A part let into its only support (a dado, a
    tenon) holds by that. So does a stub at an upright joint, as long as the joint is as tall as the same
    share of what sticks out: a bracket's arm. Dowels, screws or bolts hold a peg that sticks out up to
    peg-reach.

    Leaves out: Whether the joint of such a stub is strong enough. A board held all along one edge, as a
    shelf on a wall is, counts as held at both ends. An end that stops at a part which no join names:
    never-joined tells that.

    Sources: statics; the share for a stub is our own choice

    Flagged:

        plan "Half a bench" in inches
        stock plank: 2x8 spruce-pine-fir
        outline base: 30 across, 7 1/4 deep, 16 tall, on floor
        part leg: plank, upright, facing side, as tall as base, on floor, flush with left of base
            flush with front of base
        part seat: plank, across, flat, on leg, from left of base to right of base, flush with front of base
        join seat to leg: screws #8 x 3, 3 per joint, from above

    Quiet:

        plan "Whole bench" in inches
        stock plank: 2x8 spruce-pine-fir
        outline base: 30 across, 7 1/4 deep, 16 tall, on floor
        part leg for each of left, right: plank, upright, facing side, as tall as base, on floor
            flush with each of base, flush with front of base
        part seat: plank, across, flat, on leg.left, from left of base to right of base, past 3 each end
            flush with front of base
        join seat to leg.*: screws #8 x 3, 3 per joint, from above
    """
    share = review.limit("overhang-share").amount
    alike: dict[tuple[object, ...], list[_Free]] = {}
    for member in review.carrying.members.values():
        free = _free(member, share)
        if free is None or _holds_alone(free, share) or _pegged(review, free):
            continue
        family = review.plan.parts[member.part].family
        key = (family, member.axis, free.end, round(free.reach, 1), round(member.length, 1))
        alike.setdefault(key, []).append(free)
    order = {name: place for place, name in enumerate(review.plan.parts)}
    for group in alike.values():
        group.sort(key=lambda each: order[each.member.part])
        yield _finding(review, group)
