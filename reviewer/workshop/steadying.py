"""What would make a piece steadier: each change tried by itself, and the piece worked out anew with it."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import replace
from typing import TYPE_CHECKING, Literal, NamedTuple

from reviewer.limits import Limits
from reviewer.mechanics.mass import Mass
from reviewer.mechanics.stability import Point, support_polygon
from reviewer.model.plan import Restraint
from reviewer.reference.usual_values import usual_value
from reviewer.units import (
    KG_PER_POUND,
    MM_PER_INCH,
    NEWTON_PER_KG,
    TOLERANCE_MM,
    Value,
    count,
    force,
    length,
    mass,
)
from reviewer.workshop.standing import Piece
from reviewer.workshop.tipping import State, from_wall, lever, side_of
from reviewer.workshop.tipping_states import Tipping, states

if TYPE_CHECKING:
    from reviewer.review import Review

Change = Literal["deeper", "ballast", "restraint", "interlock"]


class Tried(NamedTuple):
    """One change: how much of it was tried, and the state that is then nearest to tipping.

    ``enough`` is how much of it would reach the least ratio in every state; without end where none would.
    For a restraint that is the pull of all points together, for an interlock the drawers that it locks, for
    the others the length and the mass.
    """

    change: Change
    amount: Value
    worst: State
    enough: Value

    @property
    def ratio(self) -> float:
        """The least ratio of any state with the change."""
        return self.worst.balance.ratio


def tried_changes(tipping: Tipping, review: Review) -> tuple[Tried, ...]:
    """Each change that can be made to a piece, the one that helps most first; none for one that stands well.

    A restraint is tried where the plan has a wall that the piece falls away from, an interlock on drawers
    that run on slides and can be open together, where it helps at all.
    """
    worst, least = tipping.worst, review.limit("tip-ratio-least").amount
    if worst is None or worst.balance.ratio >= least:
        return ()
    weak = [state for state in tipping.states if state.balance.ratio < least]

    def anew(piece: Piece) -> State:
        return _worst_with(piece, tipping, review)

    found = [
        _deeper(tipping.piece, worst, weak, least, anew),
        _ballast(tipping.piece, worst, weak, least, anew),
    ]
    restrained = _restraint(tipping.piece, worst, weak, least, review, anew)
    if restrained is not None:
        found.append(restrained)
    locked = _interlock(tipping, worst, least, review)
    if locked is not None:
        found.append(locked)
    return tuple(sorted(found, key=lambda each: -round(each.ratio, 6)))


def _worst_with(piece: Piece, tipping: Tipping, review: Review) -> State:
    """The state nearest to tipping of the piece as it was changed."""
    made = states(
        piece,
        review.plan,
        review.setting,
        review.limits,
        tipping.lasting,
        tipping.spots,
        tipping.openings,
    )
    found = Tipping(piece, made).worst
    assert found is not None
    return found


def lockable(tipping: Tipping, review: Review) -> tuple[str, ...]:
    """The drawers on slides that no one interlock locks yet: what slides with an interlock are sold for."""
    fitted = {
        name
        for fit in review.plan.fits
        if any(piece.kind == "slides" for piece in fit.pieces)
        for name in fit.parts
    }
    drawers = [
        each for each in tipping.openings if each.way == "drawer" and not fitted.isdisjoint(each.parts)
    ]
    one_lock = len({each.lock for each in drawers}) == 1 and drawers[0].lock is not None
    return () if len(drawers) < 2 or one_lock else tuple(each.name for each in drawers)


def _interlock(tipping: Tipping, worst: State, least: float, review: Review) -> Tried | None:
    names = lockable(tipping, review)
    if not names:
        return None
    lock = len(review.plan.fits)  # no fit of the plan has this number
    opens = tuple(each._replace(lock=lock) if each.name in names else each for each in tipping.openings)
    then = _worst_with(tipping.piece, tipping._replace(openings=opens), review)
    if then.balance.ratio <= worst.balance.ratio * (1 + 1e-6):
        return None
    enough = len(names) if then.balance.ratio >= least else math.inf
    return Tried("interlock", count(len(names)), then, count(enough))


def restraint_mends(tipping: Tipping, review: Review) -> bool:
    """Whether restraints to the wall, of the least number and pull, are enough in every state."""
    least = review.limit("tip-ratio-least").amount
    return any(each.change == "restraint" and each.ratio >= least for each in tried_changes(tipping, review))


def with_wider_feet(tipping: Tipping, review: Review, sides: tuple[str, ...], further: float) -> float | None:
    """The least ratio of any state with the feet so far out, mm; None where that does not help."""
    worst = tipping.worst
    if worst is None or not math.isfinite(further):
        return None
    found = _worst_with(wider(tipping.piece, sides, further), tipping, review).balance.ratio
    return found if found > worst.balance.ratio else None


def wider(piece: Piece, sides: tuple[str, ...], further: float) -> Piece:
    """The piece with its feet so much further out at some sides, and nothing else of it changed."""
    assert piece.polygon is not None
    moved: list[Point] = list(piece.polygon)
    wheels = list(piece.castors)
    ways: dict[Point, list[Point]] = {}
    for edge in piece.edges:
        if side_of(edge) in sides:
            out_x, out_y = edge.outward
            for x, y in edge:
                moved.append((x + further * out_x, y + further * out_y))
                ways.setdefault((x, y), []).append((out_x, out_y))
                if (x, y) in piece.castors:
                    wheels.append(moved[-1])
    for (x, y), both in ways.items():
        if len(both) == 2:  # a foot at a corner goes out both ways
            (ax, ay), (bx, by) = both
            share = 1 + ax * bx + ay * by
            if share > 0.5:
                moved.append((x + further * (ax + bx) / share, y + further * (ay + by) / share))
                if (x, y) in piece.castors:
                    wheels.append(moved[-1])
    return replace(piece, polygon=support_polygon(moved), castors=tuple(wheels))


def _deeper(
    piece: Piece, worst: State, weak: list[State], least: float, anew: Callable[[Piece], State]
) -> Tried:
    amount = usual_value("steadied-deeper") * MM_PER_INCH
    enough = max(state.further_out(least) for state in weak)
    return Tried("deeper", length(amount), anew(wider(piece, worst.sides, amount)), length(enough))


def ballast_place(piece: Piece, worst: State) -> tuple[float, float, float]:
    """Where ballast helps: low over the feet furthest from the edge, or in the middle of two weak sides."""
    assert piece.polygon is not None
    edge = worst.balance.edge
    points = list(piece.polygon)
    if len(worst.sides) == 1:
        far = max(edge.arm(x, y) for x, y in points)
        points = [(x, y) for x, y in points if edge.arm(x, y) >= far - TOLERANCE_MM]
    x = math.fsum(x for x, _ in points) / len(points)
    y = math.fsum(y for _, y in points) / len(points)
    return x, y, usual_value("steadied-ballast-up") * MM_PER_INCH


def _ballast(
    piece: Piece, worst: State, weak: list[State], least: float, anew: Callable[[Piece], State]
) -> Tried:
    kg = usual_value("steadied-ballast") * KG_PER_POUND
    at = ballast_place(piece, worst)
    heavier = replace(piece, masses=(*piece.masses, Mass(kg, *at)))
    needed = 0.0
    for state in weak:
        arm = lever(state.balance.edge, at, state.tilt)
        needed = max(needed, _lacks(state, least) / arm / NEWTON_PER_KG if arm > 0 else math.inf)
    return Tried("ballast", mass(kg), anew(heavier), mass(needed))


def _lacks(state: State, least: float) -> float:
    """The holding moment that a state lacks to reach a ratio, N·mm."""
    return max(0.0, least * state.balance.overturning - state.balance.restoring)


def restraint_height(piece: Piece) -> float:
    """How high a restraint is tried, mm."""
    return max(piece.height / 2, piece.height - usual_value("steadied-below-top") * MM_PER_INCH)


def _restraint(
    piece: Piece,
    worst: State,
    weak: list[State],
    least: float,
    review: Review,
    anew: Callable[[Piece], State],
) -> Tried | None:
    limits: Limits = review.limits
    if review.setting.wall is None or any(
        from_wall(state.balance.edge, piece, review.setting) < 1 - 1e-6 for state in weak
    ):
        return None
    height = restraint_height(piece)
    points = round(limits["restraint-points"].amount)
    strap = Restraint(
        what=piece.parts,
        said="",
        device="strap",
        into="stud",
        height=height,
        count=points,
        span=review.plan.span,
    )
    tied = replace(piece, restraints=(*piece.restraints, strap))
    needed = max(_lacks(state, least) for state in weak) / height
    amount = force(points * limits["restraint-force"].amount)
    return Tried("restraint", amount, anew(tied), force(needed))
