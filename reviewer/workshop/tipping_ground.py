"""A piece in its room by itself: its edges, the forces of its own weight, and the floor under it.

Level floor unless a state says otherwise. What people and things do to it is in :mod:`tipping_loads`, what
opens and the tests of storage in :mod:`tipping_scene`. The numbers (n) are those of
:mod:`reviewer.mechanics.stability`. Moments N·mm, forces N, places mm.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from functools import cached_property
from typing import TYPE_CHECKING, Literal

from reviewer.language.source import Span
from reviewer.limits import Limits
from reviewer.mechanics.mass import Mass
from reviewer.mechanics.stability import Balance, Point, TippingEdge, base_depth, tilt_over_block
from reviewer.model.plan import Axis, Plan
from reviewer.setting_out.result import SettingOut
from reviewer.setting_out.solid import Solid, Vector
from reviewer.units import MM_PER_FOOT, Value
from reviewer.workshop.standing import Piece
from reviewer.workshop.tipping import (
    Act,
    Kind,
    Role,
    Split,
    State,
    balanced,
    free_edges,
    lever,
    push_lever,
    restraint_hold,
)

if TYPE_CHECKING:
    from reviewer.workshop.opening import Opening

#: Words for a floor that lets a piece lean.
_SOFT_FLOORS = ("carpet", "rug")
#: What opens is looked at up to so many of one piece; a piece with more is told by its heaviest.
MOST_OPENINGS = 100
#: What forces are called: the piece by itself, and what stands on a shelf.
OWN_WEIGHT = "its own weight"
ON_SHELF = "on "

Opened = tuple["Opening", float]


class Ground:
    """A piece on its floor: makes states from forces about an edge.

    ``edges`` are those that nothing keeps it from falling over. Of what interlocks let open, that is taken
    which is ``worst_by`` the ratio of the moments, or by what is left of them.
    """

    def __init__(
        self,
        piece: Piece,
        plan: Plan,
        setting: SettingOut,
        limits: Limits,
        openings: tuple[Opening, ...] = (),
        *,
        worst_by: Literal["ratio", "margin"] = "ratio",
    ) -> None:
        self.piece, self.plan, self.setting, self.limits = piece, plan, setting, limits
        self.edges = free_edges(piece, setting, limits["castor-swivel"].amount)
        self.weight = piece.whole.weight
        self._loads: list[tuple[Solid, float]] | None = None  # the same for every edge
        self._holds: dict[TippingEdge, float] = {}  # the same in every state, as are those below
        self._tilts: dict[TippingEdge, tuple[float, str]] = {}
        self._own: dict[tuple[TippingEdge, float], Act] = {}
        self.openings = openings
        if len(openings) > MOST_OPENINGS:
            self.openings = tuple(sorted(openings, key=lambda each: -each.mass.kg)[:MOST_OPENINGS])
        self.locked = bool(openings) and self._locked()
        self._worst_by = worst_by
        floor = (plan.room.floor if plan.room else None) or ""
        self.on_carpet = any(word in floor for word in _SOFT_FLOORS)

    def solids(self, names: Sequence[str]) -> list[Solid]:
        return [self.setting.solids[name] for name in names]

    def hold(self, edge: TippingEdge) -> float:
        """What the wall restraints add about an edge, N·mm. (14)"""
        if not self.piece.restraints:
            return 0.0
        found = self._holds.get(edge)
        if found is None:
            found = self._holds[edge] = restraint_hold(self.piece, self.limits, self.setting, edge)
        return found

    def state(
        self,
        kind: Kind,
        edge: TippingEdge,
        acts: Sequence[Act],
        split: Split = "apart",
        *,
        tilt: float = 0.0,
        made: Balance | None = None,
        force: float = 0.0,
        place: float = 0.0,
        said: str = "",
        span: Span | None = None,
        source: str = "",
        on: str = "",
        opened: tuple[Opened, ...] = (),
        tips_at: Value | None = None,
    ) -> State:
        """A state from its forces; ``made`` where their balance is counted part by part."""
        hold = self.hold(edge)
        found = made or balanced(edge, acts, split, tilt)
        found = Balance(found.edge, found.restoring + hold, found.overturning)
        return State(
            kind=kind,
            balance=found,
            force=force,
            place=place,
            said=said,
            span=span,
            weight=self.weight,
            shifts=force if kind in ("sitter", "person", "lean") else 0.0,
            source=source,
            tilt=tilt,
            hold=hold,
            acts=tuple(acts),
            split=split,
            on=on,
            opened=opened,
            known_tips_at=tips_at,
            kept_shut=self._kept_shut(opened) if self.locked and opened else (),
        )

    def _locked(self) -> bool:
        from reviewer.workshop.open_together import interlocked

        return bool(interlocked(self.openings))

    def _kept_shut(self, opened: Sequence[Opened]) -> tuple[str, ...]:
        """What interlocks keep shut while some are open."""
        locks = {opening.lock for opening, _ in opened if opening.lock is not None}
        names = {opening.name for opening, _ in opened}
        return tuple(each.name for each in self.openings if each.lock in locks and each.name not in names)

    # ------------------------------------------------------------ its own weight

    def own(
        self,
        edge: TippingEdge,
        tilt: float = 0.0,
        opened: Sequence[Opened] = (),
        *,
        filled: bool = False,
    ) -> list[Act]:
        """The weights of the piece, what is open apart; its contents only where they hurt. (1)-(4)"""
        whole = self.piece.whole
        if not opened and whole.kg:
            act = self._own.get((edge, tilt))
            if act is None:
                act = self._own[edge, tilt] = self._weight("weight", OWN_WEIGHT, whole, edge, tilt)
            return [act]
        rest = _without(whole, [opening.mass for opening, _ in opened])
        acts = [self._weight("weight", OWN_WEIGHT, rest, edge, tilt)] if rest.kg else []
        for opening, turn in opened:
            moved = opening.opened(opening.mass, turn)
            acts.append(self._weight("weight", opening.name, moved, edge, tilt))
            if filled and opening.contents is not None:
                inside = self._weight(
                    "contents", f"in {opening.name}", opening.opened(opening.contents, turn), edge, tilt
                )
                if inside.lever < 0:
                    acts.append(inside)
        return acts

    @staticmethod
    def _weight(role: Role, said: str, mass: Mass, edge: TippingEdge, tilt: float) -> Act:
        at = (mass.x, mass.y, mass.z)
        return Act(role, said, mass.weight, at, lever(edge, at, tilt))

    @staticmethod
    def _load(said: str, newtons: float, at: Vector, edge: TippingEdge, tilt: float) -> Act:
        return Act("load", said, newtons, at, lever(edge, at, tilt))

    @staticmethod
    def _push(said: str, newtons: float, at: Vector, edge: TippingEdge, tilt: float) -> Act:
        return Act("push", said, newtons, at, push_lever(edge, at, tilt))

    # ------------------------------------------------------------ by itself

    def empty(self, edge: TippingEdge) -> State:
        """Parts inside the edge hold it down, parts outside turn it over. (1)"""
        moments = [mass.weight * edge.arm(mass.x, mass.y) for mass in self.piece.masses]
        held = math.fsum(moment for moment in moments if moment > 0)
        turned = -math.fsum(moment for moment in moments if moment < 0)
        return self.state("empty", edge, self.own(edge), made=Balance(edge, held, turned))

    def uneven(self, edge: TippingEdge) -> State:
        """On carpet, or on a floor out of level: what its lean takes, against what is left of it. (2)"""
        tilt, name = self.floor_tilt(edge)
        kind: Kind = "carpet" if self.on_carpet else "floor"
        return self.state(
            kind, edge, self.own(edge, tilt), "lean", tilt=tilt, source=self.limits[name].source
        )

    def floor_tilt(self, edge: TippingEdge) -> tuple[float, str]:
        """The lean of the floor here, degrees, and the limit that it is from."""
        found = self._tilts.get(edge)
        if found is None:
            if self.on_carpet:
                found = self.block(edge), "carpet-block"
            else:
                out = self.limits["floor-out"].amount
                found = math.degrees(math.atan(out / MM_PER_FOOT)), "floor-out"
            self._tilts[edge] = found
        return found

    def block(self, edge: TippingEdge) -> float:
        """The tilt when carpet lifts the far side, degrees."""
        assert self.piece.polygon is not None
        return tilt_over_block(self.limits["carpet-block"].amount, base_depth(edge, self.piece.polygon))

    def reach(self, edge: TippingEdge, solids: Sequence[Solid], inset: float) -> tuple[float, float]:
        """How far a load on some parts can lie outside an edge (mm, below 0: inside), and how high."""
        out_x, out_y = edge.outward
        best = (-math.inf, 0.0)
        for solid in solids:
            if solid.body is not None:
                ends = [piece.reach((out_x, out_y, 0.0))[1] for piece in solid.body.pieces]
                outside = max(ends) - edge.start[0] * out_x - edge.start[1] * out_y - inset
            else:
                x = solid.high[0] if out_x > 0 else solid.low[0]
                y = solid.high[1] if out_y > 0 else solid.low[1]
                outside = -edge.arm(x, y) - inset * (abs(out_x) + abs(out_y))
            best = max(best, (outside, solid.high[Axis.UP]))
        return best

    @staticmethod
    def _place(edge: TippingEdge, outside: float) -> Point:
        """A place so far outside an edge, over its middle."""
        out_x, out_y = edge.outward
        x, y = (edge.start[0] + edge.end[0]) / 2, (edge.start[1] + edge.end[1]) / 2
        return x + outside * out_x, y + outside * out_y

    @cached_property
    def _moving(self) -> frozenset[str]:
        return frozenset(name for opening in self.openings for name in opening.parts)


def _without(whole: Mass, taken: Sequence[Mass]) -> Mass:
    """What is left of a mass when some are taken out of it."""
    if not taken:
        return whole
    kg = whole.kg - math.fsum(mass.kg for mass in taken)
    if kg <= whole.kg * 1e-9:
        return Mass(0.0, whole.x, whole.y, whole.z)
    x, y, z = (
        (whole.kg * whole[axis] - math.fsum(mass.kg * mass[axis] for mass in taken)) / kg
        for axis in (1, 2, 3)
    )
    return Mass(kg, x, y, z)
