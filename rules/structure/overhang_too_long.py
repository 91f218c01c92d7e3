"""Boards that stick out too far past their last support."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Figure, Filling, Finding, Severity, Working
from reviewer.records import NamedTuple
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.setting_out.directions import FACES
from reviewer.units import TOLERANCE_MM, length, ratio
from reviewer.wording import listed
from reviewer.workshop.member import Member


class _Overhang(NamedTuple):
    """How far a board sticks out (mm), at which ends, and how far its outer supports are apart."""

    member: Member
    reach: float
    ends: tuple[int, ...]  # 0 low, 1 high; both where they are alike
    between: float


def _overhang(member: Member, share: float) -> _Overhang | None:
    """The longer overhang of a board that its supports keep level; None for all others."""
    if member.clamped or member.free_end(share) is not None:
        return None
    low, high = member.outer
    beyond = member.length - high
    reach = max(low, beyond)
    ends = tuple(end for end, each in enumerate((low, beyond)) if each >= reach - TOLERANCE_MM)
    return _Overhang(member, reach, ends, high - low)


def _finding(review: Review, alike: list[_Overhang]) -> Finding:
    overhang = alike[0]
    parts = tuple(each.member.part for each in alike)
    one = len(parts) == 1
    limit = review.limit("overhang-share")
    allowed = limit.amount * overhang.between
    # Moving a support out shortens the overhang and lengthens what it is measured against.
    move = (overhang.reach - allowed) / (1 + limit.amount * len(overhang.ends))
    faces = FACES[overhang.member.axis]
    values: dict[str, Filling] = {
        "parts": listed(parts),
        "ends": " and ".join(faces[end] for end in overhang.ends),
        "reach": length(overhang.reach),
        "between": length(overhang.between),
        "most": length(allowed),
        "over": length(overhang.reach - allowed),
        "share": limit.value,
        "who": limit.source,
        "move": length(move),
        "less": length(overhang.reach - move),
        "wider": length(overhang.between + move * len(overhang.ends)),
    }
    both = len(overhang.ends) == 2
    its, sticks = ("its", "sticks") if one else ("their", "stick")
    return Finding(
        parts=parts,
        at=review.span_of(parts[0]),
        says=f"{{parts}} {sticks} out {{reach}} at the {{ends}} {'ends' if both else 'end'}. "
        f"With {{between}} between {its} outer supports {{most}} is the most ({{share}} of it; {{who}}), "
        "so that is {over} too much.",
        do=("Move both outer supports out" if both else "Move the outer support there out")
        + " by {move}: then {less} sticks out past {wider}. Or cut {over} off "
        + ("each end." if both else "that end."),
        values=values,
        working=Working(
            (
                Figure("between the outer supports", length(overhang.between)),
                Figure("share", ratio(limit.amount), limit.source),
            ),
            "share × length between the outer supports",
            Figure("sticks out", length(overhang.reach)),
            Figure("most", length(allowed), limit.source),
        ),
    )


@rule("overhang-too-long", topic="structure", severity=Severity.WARNING, limits=("overhang-share",))
def overhang_too_long(review: Review) -> Iterator[Finding]:
    """A board that sticks out far past its last support lifts off the other one.

    Goes wrong: Someone sits on the end of the bench and the far end comes up, or the screws at the
    far end are pulled with every use and work loose.

    Judged by: How far each level part sticks out past the outer edge of its last support, against the
    share overhang-share of the length between the outer edges of its outer supports. A few inches past
    the legs of a bench are well within it.

    Leaves out: What the board carries and where: a light shelf may stick out further. How far it sags
    there is told by sags, and a board with no support under one half by unsupported-end. Overhangs to the
    side of a part's span, such as the front edge of a shelf on a wall cleat.

    Sources: a quarter of the length between the supports: common practice, no source

    Flagged:

        plan "Narrow trestle" in inches
        stock plank: 2x10 spruce-pine-fir
        outline base: 24 across, 9 1/4 deep, 16 tall, on floor
        part leg for each of left, right: plank, upright, facing side, as tall as base, on floor
            flush with each of base, flush with front of base
        part seat: plank, across, flat, on leg.left, from left of base to right of base, past 9 each end
            flush with front of base
        join seat to leg.*: screws #8 x 3, 3 per joint, from above

    Quiet:

        plan "Wide trestle" in inches
        stock plank: 2x10 spruce-pine-fir
        outline base: 30 across, 9 1/4 deep, 16 tall, on floor
        part leg for each of left, right: plank, upright, facing side, as tall as base, on floor
            flush with each of base, flush with front of base
        part seat: plank, across, flat, on leg.left, from left of base to right of base, past 6 each end
            flush with front of base
        join seat to leg.*: screws #8 x 3, 3 per joint, from above
    """
    share = review.limit("overhang-share").amount
    alike: dict[tuple[object, ...], list[_Overhang]] = {}
    for member in review.carrying.members.values():
        overhang = _overhang(member, share)
        if overhang is None or overhang.reach <= share * overhang.between + TOLERANCE_MM:
            continue
        figures = (round(overhang.reach, 1), round(overhang.between, 1))
        key = (review.plan.parts[member.part].family, member.axis, overhang.ends, *figures)
        alike.setdefault(key, []).append(overhang)
    order = {name: place for place, name in enumerate(review.plan.parts)}
    for group in alike.values():
        group.sort(key=lambda each: order[each.member.part])
        yield _finding(review, group)
