"""What would make a piece steadier: each change tried by itself, and the piece worked out anew with it."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import replace
from typing import TYPE_CHECKING, Literal, NamedTuple

from reviewer.limits import Limits
from reviewer.mechanics.mass import Mass
from reviewer.mechanics.stability import Point, support_polygon
from reviewer.model.plan import Axis, Restraint
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
from reviewer.workshop.tipping import SIDES, State, from_wall, lever, side_of
from reviewer.workshop.tipping_states import Tipping, states

if TYPE_CHECKING:
    from reviewer.review import Review

#: How often feet are set further out until no side is weak.
_ROUNDS = 4
_SAME = 1e-6

Change = Literal["deeper", "ballast", "restraint", "interlock"]
#: What is tried as a restraint.
Device = Literal["strap", "bracket", "cleat"]


class Tried(NamedTuple):
    """One change: how much of it was tried, and the state that is then nearest to tipping.

    ``enough`` is how much of it would reach the least ratio in every state; without end where none would.
    For a restraint that is the pull of all points together, for an interlock the drawers that it locks, for
    the others the length and the mass. ``device`` is what a restraint is; ``sides`` are those at which feet
    must stand further out for enough.
    """

    change: Change
    amount: Value
    worst: State
    enough: Value
    device: Device | None = None
    sides: tuple[str, ...] = ()

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
    weak = _weak(tipping, least)
    if worst is None or not weak:
        return ()

    def anew(piece: Piece) -> State:
        return _worst_with(piece, tipping, review)

    found = [
        _deeper(tipping, worst, review, anew),
        _ballast(tipping.piece, worst, weak, least, anew),
    ]
    restrained = _restraint(tipping.piece, weak, least, review, anew)
    if restrained is not None:
        found.append(restrained)
    locked = _interlock(tipping, worst, least, review)
    if locked is not None:
        found.append(locked)
    return tuple(sorted(found, key=lambda each: -round(each.ratio, 6)))


def _weak(tipping: Tipping, least: float) -> list[State]:
    """The states of a piece that do not reach a ratio; none where its worst one does."""
    worst = tipping.worst
    if worst is None or worst.balance.ratio >= least:
        return []
    return [state for state in tipping.states if state.balance.ratio < least]


def _worst_with(piece: Piece, tipping: Tipping, review: Review) -> State:
    """The state nearest to tipping of the piece as it was changed."""
    found = Tipping(piece, _states_with(piece, tipping, review)).worst
    assert found is not None
    return found


def _states_with(piece: Piece, tipping: Tipping, review: Review) -> tuple[State, ...]:
    return states(
        piece,
        review.plan,
        review.setting,
        review.limits,
        tipping.lasting,
        tipping.spots,
        tipping.openings,
    )


def wall_in_reach(review: Review) -> bool:
    """Whether the plan has a wall that a restraint can reach from the piece."""
    if review.setting.wall is None:
        return False
    gap = review.plan.room.wall_gap if review.plan.room is not None else None
    return (gap or 0.0) <= review.limit("restraint-reach").amount


def usual_device(piece: Piece, review: Review) -> Device:
    """What a piece is usually tied with: a strap, a bracket, or a cleat across the studs.

    A strap pulls straight to its wall, so one at the side would not keep the front from coming over. Where
    no two studs can lie behind a piece, a rail across them holds it.
    """
    from reviewer.workshop.restraining import wall_side
    from reviewer.workshop.wall_studs import studs_along

    wall = wall_side(piece, review)
    behind = studs_along(review, piece.low[wall.along], piece.high[wall.along])
    if behind.most < round(review.limit("restraint-points").amount):
        return "cleat"
    return "strap" if wall.axis == Axis.DEEP else "bracket"


def device_that_mends(tipping: Tipping, review: Review) -> Device | None:
    """The device that was tried on a piece that tips, None where none was."""
    tried = restraint_tried(tipping, review)
    return tried.device if tried is not None else None


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


def restraint_tried(tipping: Tipping, review: Review) -> Tried | None:
    """The restraint of :func:`tried_changes`. Every piece that tips is asked for it, so no other is tried."""
    least = review.limit("tip-ratio-least").amount
    weak = _weak(tipping, least)
    if not weak:
        return None
    return _restraint(tipping.piece, weak, least, review, lambda piece: _worst_with(piece, tipping, review))


def with_brackets(tipping: Tipping, review: Review) -> float:
    """The least ratio of any state with brackets in place of all straps."""
    fast = tuple(
        one.model_copy(update={"device": "bracket"}) if one.device == "strap" else one
        for one in tipping.piece.restraints
    )
    return _worst_with(replace(tipping.piece, restraints=fast), tipping, review).balance.ratio


class Wider(NamedTuple):
    """Feet further out, mm, at some sides, and the least ratio of any state then."""

    sides: tuple[str, ...]
    further: float
    ratio: float


def wide_enough(
    tipping: Tipping, review: Review, rounded: Callable[[float], float] = lambda mm: mm
) -> Wider | None:
    """How far out the feet must stand, and at which sides, to reach the least ratio in every state.

    What steadies one side may leave another as the weakest, so it is tried, and the others are added.
    ``rounded`` makes a length what a maker can mark. None where it does not help; a ratio that is still
    too little where no such distance was found.
    """
    worst, least = tipping.worst, review.limit("tip-ratio-least").amount
    if worst is None:
        return None
    found, further = tipping.states, 0.0
    sides: tuple[str, ...] = ()
    for _ in range(_ROUNDS):
        weak = [state for state in found if state.balance.ratio < least * (1 - _SAME)]
        if not weak:
            break
        # A side that is weak for the first time has not moved yet.
        needed = max(
            (further if any(side in sides for side in state.sides) else 0.0) + state.further_out(least)
            for state in weak
        )
        needed = max(needed, further)
        if not math.isfinite(needed):
            break
        sides = tuple(side for side in SIDES if side in sides or any(side in one.sides for one in weak))
        further = rounded(needed)
        found = _states_with(wider(tipping.piece, sides, further), tipping, review)
    ratio = min(state.balance.ratio for state in found)
    return Wider(sides, further, ratio) if ratio > worst.balance.ratio else None


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


def _deeper(tipping: Tipping, worst: State, review: Review, anew: Callable[[Piece], State]) -> Tried:
    amount = usual_value("steadied-deeper") * MM_PER_INCH
    found = wide_enough(tipping, review)
    least = review.limit("tip-ratio-least").amount
    reached = found is not None and found.ratio >= least * (1 - _SAME)
    enough = found.further if found is not None and reached else math.inf
    sides = found.sides if found is not None else ()
    return Tried(
        "deeper", length(amount), anew(wider(tipping.piece, worst.sides, amount)), length(enough), sides=sides
    )


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
    weak: list[State],
    least: float,
    review: Review,
    anew: Callable[[Piece], State],
) -> Tried | None:
    limits: Limits = review.limits
    away = [from_wall(state.balance.edge, piece, review.setting) for state in weak]
    if not wall_in_reach(review) or min(away) < 0:
        return None
    height = restraint_height(piece)
    points = round(limits["restraint-points"].amount)

    def tied(device: Device) -> State:
        one = Restraint(
            what=piece.parts,
            said="",
            device=device,
            into="stud",
            height=height,
            count=points,
            span=review.plan.span,
        )
        return anew(replace(piece, restraints=(*piece.restraints, one)))

    device = usual_device(piece, review)
    found = tied(device)
    if device == "strap" and found.balance.ratio < least:
        # A strap holds nothing back along the wall; what is screwed fast does.
        fast = tied("bracket")
        if fast.balance.ratio >= least:
            device, found = "bracket", fast
    needed = max(_lacks(state, least) for state in weak) / height
    amount = force(points * limits["restraint-force"].amount)
    return Tried("restraint", amount, found, force(needed), device)
