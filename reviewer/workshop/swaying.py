"""How far a piece sways: a stated push at its top, side to side and front to back, by its frame.

Boards are beams between their joints, as wide as they are and with their shear, so a sheet is a shear panel;
joints are springs at the places where they are. How stiff a joint comes out differs widely, so both ends of
its range are pushed: what sways at the stiff end is sure to, what sways at the soft end alone depends on it.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from reviewer.geometry.vectors import Vector
from reviewer.model.plan import Axis
from reviewer.records import NamedTuple
from reviewer.reference.usual_values import usual_value
from reviewer.workshop.swaying_quick import plainly_stiff
from reviewer.workshop.swaying_structure import Structure, Sway, structure

if TYPE_CHECKING:
    from reviewer.review import Review
    from reviewer.workshop.standing import Piece
    from reviewer.workshop.swaying_frame import Budget
    from reviewer.workshop.swaying_remedies import Remedy

#: Past so many parts in a piece, or so much work for all frames of a plan, the sway is not worked out.
MOST_PARTS = 400
_MOST_TIES = 1_500
_MOST_WORK = 45_000
_AXES = (Axis.ACROSS, Axis.DEEP)


class Swaying(NamedTuple):
    """A piece that sways too far: its worst way, and the changes that were tried.

    ``at_best`` is None where it sways too far with every joint at the stiff end of its range. Else ``sway``
    and ``remedies`` are with every joint at the soft end, and it is how far the piece sways at the stiff one,
    mm.
    """

    uprights: tuple[str, ...]  # the boards that lean over, or whatever its feet are
    sway: Sway
    remedies: tuple[Remedy, ...]
    at_best: float | None = None


class NotJudged(NamedTuple):
    """A piece that is too large to work its frame out, or too much beside the others.

    ``unsolved``: its frame was tried, and rounding left no answer that keeps the balance.
    """

    piece: Piece
    parts: int
    unsolved: bool = False


def _rounded(place: Vector, base: Vector = (0.0, 0.0, 0.0)) -> tuple[float, ...]:
    return tuple(round(each - other, 3) for each, other in zip(place, base, strict=True))


def _likeness(standing: Structure) -> object:
    """The same for pieces that are alike but for their place."""
    base = next(iter(standing.rods.values())).low
    number = {name: index for index, name in enumerate(standing.rods)}
    return (
        tuple(
            (
                _rounded(rod.low, base),
                _rounded(rod.high, base),
                *map(_rounded, (rod.size, *rod.directions)),
                rod.young,
            )
            for rod in standing.rods.values()
        ),
        tuple(
            (
                *(number[tie.one], number[tie.two], tie.turns, _rounded(tie.middle, base)),
                *(round(each) for each in (*tie.shift, *tie.turn)),
            )
            for tie in standing.ties
        ),
        tuple((number.get(each.part), _rounded(each.place, base), each.axes) for each in standing.grounds),
    )


def _thin(review: Review, piece: Piece, standing: Structure, axis: int) -> bool:
    """Whether a piece is so thin that way that it hangs or tips over, and never stands by its joints."""
    solids = [review.setting.solids[name] for name in piece.parts if name in review.setting.solids]
    deep = max(solid.high[axis] for solid in solids) - min(solid.low[axis] for solid in solids)
    return deep < usual_value("thin-piece") * standing.height


def _uprights(standing: Structure) -> tuple[str, ...]:
    named = tuple(standing.uprights())
    return named or tuple(dict.fromkeys(ground.part for ground in standing.grounds))


def _too_far(found: Sequence[Sway], ratio: float) -> Sway | None:
    bad = [sway for sway in found if sway.share(ratio) > 1 + 1e-9]
    return max(bad, key=lambda each: (each.share(ratio), -each.axis)) if bad else None


def _judged(
    review: Review, piece: Piece, soft: Structure, axes: Sequence[int], budget: Budget
) -> Swaying | NotJudged | None:
    from reviewer.mechanics.frame_solver import TooLargeError, UnsolvedError
    from reviewer.workshop.swaying_frame import mechanism, sways
    from reviewer.workshop.swaying_remedies import remedies

    push, ratio = review.limit("sway-force").amount, review.limit("sway-ratio").amount
    parts = len(soft.rods)
    if parts > MOST_PARTS or len(soft.ties) > min(_MOST_TIES, budget.left):
        return NotJudged(piece, parts)
    try:
        loose = _too_far(sways(soft, axes, push, budget), ratio)
        if loose is None:
            return None
        stiff = structure(review, piece, "stiff")
        assert stiff is not None  # it stands as the soft one does
        found = sways(stiff, axes, push, budget)
        sure = _too_far(found, ratio)
        if sure is not None:
            if mechanism(stiff, sure.axis, budget):
                sure = sure._replace(moved=None)
            return Swaying(_uprights(stiff), sure, remedies(review, piece, stiff, sure, budget))
    except TooLargeError:
        return NotJudged(piece, parts)
    except UnsolvedError:
        return NotJudged(piece, parts, unsolved=True)
    (best,) = [sway.moved for sway in found if sway.axis == loose.axis]
    return Swaying(_uprights(soft), loose, remedies(review, piece, soft, loose, budget), best)


def swaying(review: Review) -> list[Swaying | NotJudged]:
    """Every piece that sways further than its limits allow, in the plan's order.

    Pieces that are alike but for their place are worked out once.
    """
    push, ratio = review.limit("sway-force").amount, review.limit("sway-ratio").amount
    found: list[Swaying | NotJudged] = []
    if not review.plan.joins:
        return found
    known: dict[object, Swaying | NotJudged | None] = {}
    budget: Budget | None = None
    for piece in review.pieces:
        if not piece.feet:
            continue
        # First without what only lies on the rest: most pieces are plainly stiff, and cost little so.
        standing = structure(review, piece, "soft", loose=False)
        if standing is None or standing.height <= 0 or not standing.ties:
            continue
        allowed = standing.height / ratio
        axes = [
            axis
            for axis in _AXES
            if not _thin(review, piece, standing, axis) and not plainly_stiff(standing, axis, push, allowed)
        ]
        if not axes:
            continue
        whole = structure(review, piece, "soft")
        if whole is None or not whole.joined():
            continue
        if budget is None:
            from reviewer.workshop.swaying_frame import Budget

            budget = Budget(_MOST_WORK)
        alike = _likeness(whole)
        if alike not in known:
            known[alike] = _judged(review, piece, whole, axes, budget)
        result = known[alike]
        if isinstance(result, NotJudged):
            found.append(result._replace(piece=piece))
        elif result is not None:
            found.append(result._replace(uprights=_uprights(whole)))
    return found
