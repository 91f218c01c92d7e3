"""Which states each piece of a plan can come into, each about its weakest edge."""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping, Sequence
from types import MappingProxyType
from typing import TYPE_CHECKING

from reviewer.limits import Limits
from reviewer.model.plan import Plan
from reviewer.records import NamedTuple
from reviewer.setting_out.result import SettingOut
from reviewer.units import TOLERANCE_MM
from reviewer.workshop.loading import OnSpot
from reviewer.workshop.standing import Piece
from reviewer.workshop.tipping import SIDES, State, sides_of
from reviewer.workshop.tipping_scene import Scene
from reviewer.workshop.who_uses import children_here

if TYPE_CHECKING:
    from reviewer.review import Review
    from reviewer.workshop.opening import Opening

#: Ratios that agree to so many places are alike.
_ALIKE = 6
_SAME = 1e-6
_NO_LOADS: Mapping[str, float] = MappingProxyType({})
_NO_SPOTS: Mapping[str, Sequence[OnSpot]] = MappingProxyType({})
#: States in which a wall restraint is of no use: who sits on a bench tips it along the wall.
_UNRESTRAINED = ("sitter", "person", "lean")
_NOT_STORAGE = "for information: that test is made for tall and heavy storage"
_NO_CHILDREN = "for information: the plan names no children here"
_LOCK_FAILED = "for information: as if its interlock did not hold"
_NOT_DECLARED = "for information: the plan has nobody lean on it"


class Tipping(NamedTuple):
    """A piece that stands on the floor with every state that is judged, and what opens of it.

    ``lasting`` and ``spots`` are the loads that stay, of the whole plan; see :func:`states`.
    """

    piece: Piece
    states: tuple[State, ...]
    openings: tuple[Opening, ...] = ()
    lasting: Mapping[str, float] = _NO_LOADS
    spots: Mapping[str, Sequence[OnSpot]] = _NO_SPOTS

    @property
    def worst(self) -> State | None:
        """The state nearest to tipping."""
        return min(self.states, key=_nearness, default=None)

    @property
    def worst_unheld(self) -> State | None:
        """The state in which its wall restraints must make up most, their own hold left out.

        ``unheld`` below 0 is the moment that they must make up, N·mm.
        """
        counted = (state for state in self.states if state.kind not in _UNRESTRAINED)
        return min(counted, key=lambda state: state.unheld, default=None)


def _nearness(state: State) -> tuple[float, float]:
    return round(state.balance.ratio, _ALIKE), round(state.balance.margin)


def _weakest(states: Iterable[State | None]) -> State | None:
    """The state nearest to tipping, with every side on which it is as near (both ends of a bench)."""
    found = [state for state in states if state is not None]
    if not found:
        return None
    worst = min(found, key=_nearness)
    alike = {side for state in found if _alike(state, worst) for side in sides_of(state.balance.edge)}
    return worst._replace(sides=tuple(side for side in SIDES if side in alike))


def _alike(one: State, other: State) -> bool:
    if one.kind != other.kind:
        return False
    if math.isinf(one.balance.ratio) or math.isinf(other.balance.ratio):
        lean, other_lean = one.tips_at, other.tips_at
        return lean.kind == other_lean.kind and math.isclose(lean.amount, other_lean.amount, rel_tol=_SAME)
    return abs(one.balance.ratio - other.balance.ratio) < _SAME


def storage_tested(piece: Piece, limits: Limits) -> bool:
    """True for storage as tall and heavy as the standard for clothing storage speaks of.

    Storage is shelves one over another, or so much room in drawers and behind doors.
    """
    return tall_and_heavy(piece.height, piece.whole.kg, limits) and (piece.storage or in_scope_by_room(piece))


def tall_and_heavy(height: float, kg: float, limits: Limits) -> bool:
    """True from the height and the mass on that the standard for clothing storage speaks of."""
    tall = height >= limits["restraint-height"].amount - TOLERANCE_MM
    return tall and kg >= limits["restraint-mass"].amount * (1 - _SAME)


def in_scope_by_room(piece: Piece) -> bool:
    """True from the room in drawers and behind doors on that the standard speaks of."""
    if not piece.rooms:
        return False
    from reviewer.workshop.enclosed_volume import room_enough

    return room_enough(piece.enclosed)


def pushed(scene: Scene) -> list[State]:
    """The push at the top, about the weakest edge that nothing stops it from falling over; what opens shut
    and, where two or more things open, all of it open.
    """
    found = [_weakest(scene.push(edge) for edge in scene.edges)]
    if scene.openings:
        found.append(_weakest(map(scene.push_open, scene.edges)))
    return [state for state in found if state is not None]


def touched(scene: Scene) -> State | None:
    """A touch at the top of what stands taller than a small child, about its weakest edge; None for others.

    Seats are held against whoever sits on them, and tall and heavy storage against a larger push. What the
    plan puts on a piece stays there and holds it down; only a child is taken to get at it while it is empty.
    """
    piece, limits = scene.piece, scene.limits
    if piece.height < limits["touch-height"].amount - TOLERANCE_MM:
        return None
    if any(not here.load.lasting for here in piece.loads) or storage_tested(piece, limits):
        return None
    children = children_here(scene.plan, limits)
    if not children and piece.loads:
        return None
    limit = "touch-push-children" if children else "touch-push"
    return _weakest(scene.touch(edge, limit) for edge in scene.edges)


def climbed(scene: Scene) -> list[State]:
    """A child on a shelf's edge or on one open door or drawer; and on one where all is open."""
    found = [_weakest(scene.child(edge) for edge in scene.edges)]
    if len(scene.openings) > 1:
        found.append(_weakest(scene.child_all_open(edge) for edge in scene.edges))
    return [state for state in found if state is not None]


def states(
    piece: Piece,
    plan: Plan,
    setting: SettingOut,
    limits: Limits,
    lasting: Mapping[str, float],
    spots: Mapping[str, Sequence[OnSpot]] = _NO_SPOTS,
    openings: tuple[Opening, ...] = (),
) -> tuple[State, ...]:
    """Every state that is judged, each about its weakest edge.

    ``lasting`` is the load that stays all over each part, N, and ``spots`` what stays on one spot of it.
    Nothing for a piece that hangs on the wall.
    """
    if not piece.edges or piece.fixed:
        return ()
    scene = Scene(piece, plan, setting, limits, openings)
    found = [_weakest(map(scene.empty, scene.edges)), _weakest(map(scene.uneven, scene.edges))]
    loaded = (scene.loaded(edge, lasting, spots) for edge in scene.edges)
    found.append(_weakest(loaded))
    if piece.storage or any(here.load.lasting for here in piece.loads):
        found.append(_weakest(scene.high(edge, lasting) for edge in scene.edges))
        found.append(_weakest(scene.declared(edge, lasting, spots) for edge in scene.edges))
    for here in piece.loads:
        if not here.load.lasting:
            found.append(_weakest(state for edge in scene.edges for state in scene.sitting(edge, here)))
    if openings:
        found.append(_weakest(state for edge in scene.edges for state in scene.opened(edge)))
        found.append(_weakest(map(scene.all_opened, scene.edges)))
    found.append(touched(scene))
    if storage_tested(piece, limits):
        found += pushed(scene)
        if plan.room is not None and plan.room.children_under:
            found += climbed(scene)
    return tuple(state for state in found if state is not None)


def shown_besides(
    piece: Piece,
    plan: Plan,
    setting: SettingOut,
    limits: Limits,
    openings: tuple[Opening, ...] = (),
) -> tuple[State, ...]:
    """States that a report shows for information: what makers of such a piece are not held to."""
    if not piece.edges or piece.fixed:
        return ()
    scene = Scene(piece, plan, setting, limits, openings)
    found: list[State | None] = []
    if not storage_tested(piece, limits):
        found += [_for_information(state, _NOT_STORAGE) for state in pushed(scene)[:1]]
        if openings:
            found += [_for_information(state, _NOT_STORAGE) for state in climbed(scene)[:1] if state.opened]
    elif plan.room is None or plan.room.children_under is None:
        found += [_for_information(state, _NO_CHILDREN) for state in climbed(scene)]
    if scene.locked:
        free = Scene(piece, plan, setting, limits, tuple(each._replace(lock=None) for each in openings))
        failed = _weakest(map(free.all_opened, free.edges))
        found.append(failed and _for_information(failed, _LOCK_FAILED))
    if not piece.storage and all(here.load.lasting for here in piece.loads):
        leaning = _weakest(map(scene.leaning, scene.edges))
        found.append(leaning and _for_information(leaning, _NOT_DECLARED))
    return tuple(state for state in found if state is not None)


def _for_information(state: State, why: str) -> State:
    return state._replace(why_not=why)


def openings_of(piece: Piece, review: Review, lasting: Mapping[str, float]) -> tuple[Opening, ...]:
    """What opens of a piece; nothing is worked out for a plan in which nothing moves."""
    if not review.moved:
        return ()
    from reviewer.workshop.opening import openings

    return openings(piece, review.moved, review.setting, review.masses, lasting, review.locks)


def tipping(review: Review) -> tuple[Tipping, ...]:
    """Every piece that stands on the floor and is not joined to the wall, with its states."""

    lasting, spots = review.resting
    found = []
    for piece in review.pieces:
        if not piece.edges or piece.fixed:
            continue
        opens = openings_of(piece, review, lasting)
        met = states(piece, review.plan, review.setting, review.limits, lasting, spots, opens)
        found.append(Tipping(piece, met, opens, lasting, spots))
    return tuple(found)
