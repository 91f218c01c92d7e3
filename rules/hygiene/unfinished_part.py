"""Parts that no finish covers in a plan that has finishes."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from reviewer.findings import Finding, Severity
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.setting_out.solid import Solid
from reviewer.units import TOLERANCE_MM
from reviewer.wording import listed


def _left_bare(review: Review) -> frozenset[str]:
    """Parts that makers leave bare: drawers, and wood that was treated against rot."""
    plan = review.plan
    sliding = {name for moving in plan.movings if moving.kind == "slides" for name in moving.parts}
    treated = {name for name, part in plan.parts.items() if plan.stocks[part.stock].treated}
    return frozenset(sliding | treated)


#: Ways that a piece is looked at: from the front, both sides and above. A back stands to a wall.
_LOOKS = ((1, -1), (0, -1), (0, 1), (2, 1))
_POINTS = (0.1, 0.5, 0.9)
#: Sight lines are followed past so many parts in all; in a larger plan every bare part is told.
_MOST_LOOKED_PAST = 200_000


def _in_sight(solids: Sequence[Solid], one: Solid) -> bool:
    """Whether one of some points on a part's faces can be seen from where people stand, by bounds."""
    for axis, sign in _LOOKS:
        across, up = (other for other in range(3) if other != axis)
        face = one.high[axis] if sign > 0 else one.low[axis]
        before = [
            other
            for other in solids
            if other is not one
            and (
                other.high[axis] > face + TOLERANCE_MM if sign > 0 else other.low[axis] < face - TOLERANCE_MM
            )
        ]
        for share in _POINTS:
            a = one.low[across] + share * one.extent(across)
            for other_share in _POINTS:
                b = one.low[up] + other_share * one.extent(up)
                if not any(
                    each.low[across] <= a <= each.high[across] and each.low[up] <= b <= each.high[up]
                    for each in before
                ):
                    return True
    return False


@rule("unfinished-part", topic="hygiene", severity=Severity.WARNING, needs=("plan.finishes",))
def unfinished_part(review: Review) -> Iterator[Finding]:
    """A part that no finish covers, while others have one.

    Goes wrong: The finish is put on by the list in the plan. The part that is not on it stays bare among
    its neighbours: it takes every stain, and it takes up damp where they do not.

    Judged by: Every part of a plan that has finishes is covered by one of them, on one face at least,
    if it can be seen from the front, the sides or above. Copies are told together. A part that is meant
    to stay bare is accepted with a reason.

    Leaves out: Plans without any finish; what is out of sight, as cleats and bearers often are; what
    slides out in use, since drawers are commonly left bare inside; treated wood; and whether every face
    that shows is covered.

    Sources: common practice, no source.

    Flagged:

        plan "Coat rail" in inches
        stock board: actual 3/4 x 5 1/2 red oak, 8 ft
        part rail: board, across, on edge, 30 long, on floor, left at 0, front at 0
        part ledge: board, across, flat, 30 long, on rail, left at 0, front at 0
        finish clear: on rail
            2 coats of polyurethane oil

    Quiet:

        plan "Coat rail" in inches
        stock board: actual 3/4 x 5 1/2 red oak, 8 ft
        part rail: board, across, on edge, 30 long, on floor, left at 0, front at 0
        part ledge: board, across, flat, 30 long, on rail, left at 0, front at 0
        finish clear: on rail, ledge
            2 coats of polyurethane oil
    """
    plan = review.plan
    if not plan.finishes:
        return
    covered = {name for finish in plan.finishes for name in finish.on}
    bare = _left_bare(review)
    families: dict[str, list[str]] = {}
    for name, part in plan.parts.items():
        if name not in covered and name not in bare:
            families.setdefault(part.family, []).append(name)
    finishes = tuple(finish.name for finish in plan.finishes)
    solids = tuple(review.setting.solids.values())
    looked = 0
    for names in families.values():
        looked += len(solids)
        seen = review.setting.solids.get(names[0])
        if seen is not None and looked <= _MOST_LOOKED_PAST and not _in_sight(solids, seen):
            continue
        first = plan.parts[names[0]]
        yield Finding(
            parts=tuple(names),
            at=first.span,
            says="No finish goes on {parts}; the plan's others have {finishes}.",
            do="Add {said} to the list of a finish, or accept that it stays bare, with the reason.",
            values={
                "parts": listed(tuple(names)),
                "finishes": listed(finishes),
                "said": first.with_copies if len(names) > 1 else names[0],
            },
        )
