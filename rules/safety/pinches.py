"""Lids that fall shut, and gaps beside doors that squeeze fingers."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Figure, Finding, Severity, Working
from reviewer.model.plan import Axis
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.setting_out.moving import Moved
from reviewer.units import TOLERANCE_MM, count, fine_length, mass
from reviewer.wording import listed
from reviewer.workshop.who_uses import children_here

_FALLS = (
    "{lid} weighs {heavy} and nothing holds it open: a hinged lid from {least} on that falls shut hurts "
    "fingers, and a child's neck worse."
)
_FALLS_DO = (
    "Fit a stay that holds it at any angle: “fit {part} to {frame}: 1 stay”, or let the lid lift off; on "
    "a chest for children the toy-chest standard decides."
)
_GAP = (
    "Beside {moving} is a gap of {gap} to {other}: fingers go in from {least} on and are squeezed in gaps "
    "below {most} when it moves."
)
_GAP_DO = (
    "Make the gap narrower than {least} or at least {most}, or cover it; the standards for furniture and "
    "whoever checks it by them decide."
)
_CUT_SHORT = "There are so many things here that open that only {some} of them were looked at."
_CUT_SHORT_DO = (
    "Look at the others by hand: a stay for every heavy lid, no gap that squeezes; the standards for "
    "furniture decide."
)
#: What a lid falls shut on is no further below it, mm: own choice, fingers go between.
_BELOW_MM = 50.0
#: Doors and lids that are looked at: own choice.
_LOOKED_AT = 60


def _beside(review: Review, moved: Moved) -> tuple[str, float] | None:
    """The nearest part beside a closed door or lid, in its own plane, with a gap that squeezes."""
    least, most = review.limit("pinch-gap-least").amount, review.limit("pinch-gap-most").amount
    closed, own = moved.closed, {*moved.moving.parts}
    thin = min(range(3), key=lambda axis: closed.high[axis] - closed.low[axis])
    best: tuple[str, float] | None = None
    for name, solid in review.setting.solids.items():
        if name in own:
            continue
        inside = [
            min(solid.high[axis], closed.high[axis]) - max(solid.low[axis], closed.low[axis])
            for axis in range(3)
        ]
        if inside[thin] <= TOLERANCE_MM:
            continue
        for axis in (each for each in range(3) if each != thin):
            gap, along = -inside[axis], inside[3 - thin - axis]
            if (
                least <= gap < most - TOLERANCE_MM
                and along > most
                and (best is None or (gap, solid.low) < (best[1], review.setting.solids[best[0]].low))
            ):
                best = name, gap
    return best


def _lies_on_something(review: Review, moved: Moved) -> bool:
    """Whether a shut lid has something close below it: what falls shut falls on that."""
    closed, own = moved.closed, {*moved.moving.parts}
    return any(
        name not in own
        and -TOLERANCE_MM <= closed.low[Axis.UP] - solid.high[Axis.UP] <= _BELOW_MM
        and all(
            min(solid.high[axis], closed.high[axis]) - max(solid.low[axis], closed.low[axis]) > TOLERANCE_MM
            for axis in (0, 1)
        )
        for name, solid in review.setting.solids.items()
    )


def _falls(review: Review, moved: Moved) -> Finding | None:
    moving = moved.moving
    solids = [review.setting.solids[name] for name in moving.parts if name in review.setting.solids]
    if not solids or not all(solid.thick == Axis.UP for solid in solids) or moved.hinge is None:
        return None
    if moved.hinge.axis == Axis.UP or moved.hinge.opens_to == "low":
        return None  # a door, or a flap that hangs down when it is open
    if not _lies_on_something(review, moved):
        return None  # the leaf of a table, which hangs when it is down
    fits = [fit for fit in review.plan.fits if {*fit.parts} & {*moving.parts}]
    if any(piece.kind == "stays" for fit in fits for piece in fit.pieces):
        return None
    kg = sum(review.masses[solid.name].kg for solid in solids)
    limit = review.limit("lid-mass")
    if kg < limit.amount:
        return None
    frame = next((name for fit in fits for name in fit.others), "the part that its hinges are on")
    return Finding(
        parts=moving.parts,
        at=moving.span,
        says=_FALLS,
        do=_FALLS_DO,
        values={
            "lid": listed(moving.parts),
            "part": moving.name,
            "frame": frame,
            "heavy": mass(kg),
            "least": limit.value,
        },
        working=Working(
            figures=(Figure("mass of the lid", mass(kg), "its parts at 12 % moisture"),),
            limit=Figure("from", limit.value, limit.source),
        ),
    )


@rule(
    "pinches",
    topic="safety",
    severity=Severity.WARNING,
    limits=("lid-mass", "pinch-gap-least", "pinch-gap-most", "child-age"),
    needs=("plan.movings",),
)
def pinches(review: Review) -> Iterator[Finding]:
    """A lid that falls shut, or a gap beside a door that squeezes fingers.

    Goes wrong: A lid without a stay drops on the hands or the neck of whoever leans over the chest. Beside
    a door a finger goes into the gap and the door shuts.

    Judged by: A hinged lid that opens upwards and weighs something needs a stay that holds it. Where
    children are about, the gap between a closed door or lid and the parts beside it, in its own plane, is
    neither of a size that fingers go into nor so narrow that they are squeezed.

    Leaves out: The leaf of a table, which lies on nothing; sides of drawers; gaps that open up on the way,
    springs and soft closers, and how well a stay holds. Local rules and the standards for the piece decide.

    Sources: gaps of 8 and 25 mm as in EN 581-1 and EN 12520 (from memory); the mass is an own choice; that
    falling lids have killed infants: CPSC release of April 1982 on toy chest lids (read).

    Flagged:

        plan "Book chest" in inches
        stock board: actual 3/4 x 14 pine panel, 8 ft
        outline chest: 30 across, 14 deep, 14 tall, on floor
        part end for each of left, right: board, upright, facing side, as tall as chest, on floor
            flush with each of chest, front 0 behind front of chest
        part wall for each of front, back: board, across, on edge, between end.left and end.right
            flush with each of chest, flush with bottom of chest
        part base: board, across, flat, rip 12 1/2, between end.left and end.right
            back 0 in front of front of wall.back, bottom 0 above floor
        part lid: board, across, flat, on chest, from left of chest to right of chest
            front 0 behind front of chest, opens 95 degrees, hinged back
        join wall.* to end.*: screws #8 x 2, 4 per end
        join base to end.*, wall.*: screws #8 x 2, every 6
        fit lid to wall.back: 2 hinges

    Quiet:

        plan "Book chest" in inches
        stock board: actual 3/4 x 14 pine panel, 8 ft
        outline chest: 30 across, 14 deep, 14 tall, on floor
        part end for each of left, right: board, upright, facing side, as tall as chest, on floor
            flush with each of chest, front 0 behind front of chest
        part wall for each of front, back: board, across, on edge, between end.left and end.right
            flush with each of chest, flush with bottom of chest
        part base: board, across, flat, rip 12 1/2, between end.left and end.right
            back 0 in front of front of wall.back, bottom 0 above floor
        part lid: board, across, flat, on chest, from left of chest to right of chest
            front 0 behind front of chest, opens 95 degrees, hinged back
        join wall.* to end.*: screws #8 x 2, 4 per end
        join base to end.*, wall.*: screws #8 x 2, every 6
        fit lid to wall.back: 2 hinges
        fit lid to end.right: 1 stay
    """
    children = children_here(review.plan, review.limits)
    opening = [moved for moved in review.moved if moved.moving.kind == "opens"]
    if len(opening) > _LOOKED_AT:
        yield Finding(
            parts=(),
            at=review.plan.span,
            says=_CUT_SHORT,
            do=_CUT_SHORT_DO,
            values={"some": count(_LOOKED_AT)},
            severity=Severity.NOTE,
        )
    for moved in opening[:_LOOKED_AT]:
        found = _falls(review, moved)
        if found is not None:
            yield found
        beside = _beside(review, moved) if children else None
        if beside is not None:
            least, most = review.limit("pinch-gap-least"), review.limit("pinch-gap-most")
            name, gap = beside
            yield Finding(
                parts=(*moved.moving.parts, name),
                at=moved.moving.span,
                says=_GAP,
                do=_GAP_DO,
                values={
                    "moving": moved.moving.name,
                    "other": name,
                    "gap": fine_length(gap),
                    "least": least.value,
                    "most": most.value,
                },
                working=Working(
                    figures=(
                        Figure("gap", fine_length(gap), "by the plan"),
                        Figure("fingers go in from", least.value, least.source),
                    ),
                    limit=Figure("squeezed below", most.value, most.source),
                ),
            )
