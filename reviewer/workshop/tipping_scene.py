"""A piece in its room, in each state that can tip it, about each edge of its feet.

Level floor unless a state says otherwise. Loads that may be gone tomorrow count only where they hurt.
The numbers (n) are those of :mod:`reviewer.mechanics.stability`. Moments N·mm, forces N, places mm.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Mapping, Sequence
from functools import cached_property
from typing import TYPE_CHECKING, Literal

from reviewer.language.source import Span
from reviewer.limits import Limits
from reviewer.mechanics.mass import Mass
from reviewer.mechanics.stability import Balance, Point, TippingEdge, base_depth, tilt_over_block
from reviewer.model.plan import Axis, Plan
from reviewer.model.plan import Load as Declared
from reviewer.reference.loads import planned_load
from reviewer.setting_out.result import SettingOut
from reviewer.setting_out.solid import Solid, Vector
from reviewer.units import MM_PER_FOOT, MM_PER_INCH, NEWTON_PER_KG, TOLERANCE_MM, Value
from reviewer.workshop.loading import PLAN_SAYS, OnSpot
from reviewer.workshop.standing import LoadHere, Piece
from reviewer.workshop.tipping import (
    Act,
    Kind,
    Role,
    Split,
    State,
    balanced,
    free_edges,
    from_wall,
    lever,
    nearness,
    outside_share,
    push_lever,
    restraint_hold,
    side_of,
)

if TYPE_CHECKING:
    from reviewer.workshop.opening import Opening

#: Words for a floor that lets a piece lean.
_SOFT_FLOORS = ("carpet", "rug")
#: What opens is looked at up to so many of one piece; a piece with more is told by its heaviest.
MOST_OPENINGS = 100
#: How squarely an edge must look away from the wall for a shelf to be open there.
_FACING = 0.5
#: What forces are called: the piece by itself, and what stands on a shelf.
OWN_WEIGHT = "its own weight"
ON_SHELF = "on "

Opened = tuple["Opening", float]


class Scene:
    """A piece in its room: makes the state of each cause about each edge.

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

    # ------------------------------------------------------------ people

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

    def sitting(self, edge: TippingEdge, here: LoadHere) -> Iterator[State]:
        """Someone at the edge of what is sat or stood on: the seat test, and one heavy person. (11), (12)"""
        load, solids = here.load, self.solids(here.parts)
        # Who leans on a top leans on its very edge.
        inset = 0.0 if load.use == "person leaning" else self.limits["sitter-inset"].amount
        outside, height = self.reach(edge, solids, inset)
        at = (*self._place(edge, outside), height)
        if load.use == "people seated":
            force, push = self.limits["sitter-force"].amount, self.limits["sitter-push"].amount
            acts = [
                *self.own(edge),
                self._load("someone seated", force, at, edge, 0.0),
                self._push("a push", push, at, edge, 0.0),
            ]
            yield self.state(
                "sitter",
                edge,
                acts,
                force=force,
                place=outside,
                said=load.said,
                span=load.span,
                source=self.limits["sitter-force"].source,
            )
        planned = planned_load(load.use)
        kg = planned.amount if load.weight is None else load.weight / load.count
        force = kg * NEWTON_PER_KG
        yield self.state(
            "person",
            edge,
            [*self.own(edge), self._load("one person", force, at, edge, 0.0)],
            force=force,
            place=outside,
            said=load.said,
            span=load.span,
            source=planned.source if load.weight is None else PLAN_SAYS,
        )

    def leaning(self, edge: TippingEdge) -> State | None:
        """Someone who leans on the edge of the top of what is no storage. (11)"""
        height = self.piece.height - TOLERANCE_MM
        tops = [solid for solid in self.solids(self.piece.parts) if solid.high[Axis.UP] >= height]
        planned = planned_load("person leaning")
        force = planned.amount * NEWTON_PER_KG
        outside, high = self.reach(edge, tops, 0.0)
        at = (*self._place(edge, outside), high)
        acts = [*self.own(edge), self._load("someone leaning", force, at, edge, 0.0)]
        return self.state("lean", edge, acts, force=force, place=outside, source=planned.source)

    @staticmethod
    def _place(edge: TippingEdge, outside: float) -> Point:
        """A place so far outside an edge, over its middle."""
        out_x, out_y = edge.outward
        x, y = (edge.start[0] + edge.end[0]) / 2, (edge.start[1] + edge.end[1]) / 2
        return x + outside * out_x, y + outside * out_y

    # ------------------------------------------------------------ things

    def loaded(
        self, edge: TippingEdge, lasting: Mapping[str, float], spots: Mapping[str, Sequence[OnSpot]]
    ) -> State | None:
        """What rests outside an edge, of spread loads their share; what lies inside may be gone tomorrow."""
        acts: list[Act] = []
        causes: list[Declared] = []
        counted: set[str] = set()
        for here in self.piece.loads:
            if not here.load.lasting:
                continue
            for solid in self.solids(here.parts):
                share, away = outside_share(solid, edge)
                outside = [(lasting[solid.name] * share, away)] if lasting.get(solid.name) and share else []
                outside += [
                    (each.newtons, -arm)
                    for each in spots.get(solid.name, ())
                    if (arm := edge.arm(*each.point)) < -TOLERANCE_MM
                ]
                if outside:
                    causes.append(here.load)
                    # All loads on a part are in one sum, which counts once.
                    if solid.name not in counted:
                        counted.add(solid.name)
                        for newtons, away in outside:
                            at = (*self._place(edge, away), solid.high[Axis.UP])
                            acts.append(self._load(solid.name, newtons, at, edge, 0.0))

        if not causes:
            return None
        force = math.fsum(act.newtons for act in acts)
        place = -math.fsum(act.moment for act in acts) / force
        said = " and ".join(dict.fromkeys(load.said for load in causes))
        return self.state(
            "loaded",
            edge,
            [*self.own(edge), *acts],
            force=force,
            place=place,
            said=said,
            span=causes[0].span,
            source=PLAN_SAYS,
        )

    @cached_property
    def shelves(self) -> tuple[Solid, ...]:
        """The flat boards that do not move and are wide enough for a book."""
        from reviewer.reference.usual_values import usual_value

        least = usual_value("shelf-room")
        return tuple(
            solid
            for solid in self.solids(self.piece.parts)
            if solid.thick == Axis.UP
            and solid.name not in self._moving
            and min(solid.extent(Axis.ACROSS), solid.extent(Axis.DEEP)) >= least
        )

    @cached_property
    def _moving(self) -> frozenset[str]:
        return frozenset(name for opening in self.openings for name in opening.parts)

    def may_stand_on_it(self, lasting: Mapping[str, float]) -> list[tuple[Solid, float]]:
        """What may lie on each part, N: the plan's load, and books on shelves of storage that have none."""
        if self._loads is not None:
            return self._loads
        loads = [
            (self.setting.solids[name], lasting[name])
            for name in self.piece.parts
            if lasting.get(name) and name not in self._moving
        ]
        if self.piece.storage:
            books = planned_load("books").amount * NEWTON_PER_KG
            for solid in self.shelves:
                if not lasting.get(solid.name):
                    run = max(solid.extent(Axis.ACROSS), solid.extent(Axis.DEEP))
                    loads.append((solid, books * run))
        self._loads = loads
        return loads

    def high(self, edge: TippingEdge, lasting: Mapping[str, float]) -> State | None:
        """Loaded at its worst on a floor that lets it lean: only what makes it top-heavy is there. (2), (10)

        Each load counts where its arm over its height is less than that of the whole, so that it makes the
        piece lean rather than stand.
        """
        from reviewer.reference.usual_values import usual_value

        tilt, limit = self.floor_tilt(edge)
        high = usual_value("contents-centre") * MM_PER_INCH
        whole = self.piece.whole
        arm, rise = whole.weight * edge.arm(whole.x, whole.y), whole.weight * whole.z
        loads = []
        for solid, newtons in self.may_stand_on_it(lasting):
            x, y, top = solid.centre[0], solid.centre[1], solid.high[Axis.UP] + high
            inside = edge.arm(x, y)
            loads.append((round(inside / top, 9), solid.name, newtons, inside, (x, y, top)))
        loads.sort()
        counted: list[Act] = []
        for _, name, newtons, inside, at in loads:
            if inside * rise >= arm * at[2]:
                break
            counted.append(Act("contents", f"{ON_SHELF}{name}", newtons, at, lever(edge, at, tilt)))
            arm += newtons * inside
            rise += newtons * at[2]
        if not counted:
            return None
        acts = self.own(edge, tilt)
        source = f"{planned_load('books').source}; {self.limits[limit].source}"
        force = math.fsum(act.newtons for act in counted)
        return self.state("high", edge, [*acts, *counted], "lean", tilt=tilt, force=force, source=source)

    def declared(
        self, edge: TippingEdge, lasting: Mapping[str, float], spots: Mapping[str, Sequence[OnSpot]]
    ) -> State | None:
        """With all that the plan puts on it and in it, on a floor that lets it lean. (2)"""
        from reviewer.reference.usual_values import usual_value

        tilt, limit = self.floor_tilt(edge)
        high = usual_value("contents-centre") * MM_PER_INCH
        counted: list[Act] = []
        for solid in self.solids(self.piece.parts):
            if solid.name in self._moving:
                continue
            x, y, _ = solid.centre
            on_it = [(lasting[solid.name], (x, y))] if lasting.get(solid.name) else []
            on_it += [(each.newtons, each.point) for each in spots.get(solid.name, ())]
            for newtons, (x, y) in on_it:
                at = (x, y, solid.high[Axis.UP] + high)
                act = Act("contents", f"{ON_SHELF}{solid.name}", newtons, at, lever(edge, at, tilt))
                counted.append(act)
        for opening in self.openings:
            if opening.contents is not None and opening.filling == PLAN_SAYS:
                counted.append(self._weight("contents", f"in {opening.name}", opening.contents, edge, tilt))
        if not counted:
            return None
        force = math.fsum(act.newtons for act in counted)
        source = f"{PLAN_SAYS}; {self.limits[limit].source}"
        acts = [*self.own(edge, tilt), *counted]
        return self.state("declared", edge, acts, "lean", tilt=tilt, force=force, source=source)

    # ------------------------------------------------------------ what opens

    def opened(self, edge: TippingEdge) -> Iterator[State]:
        """Each door, lid and drawer open by itself, what is in it with it. (3), (4)"""
        for opening in self.openings:
            turn = opening.turn(edge)
            if turn:
                yield self._open("open", edge, ((opening, turn),))

    def all_opened(self, edge: TippingEdge) -> State | None:
        """All that can be open together."""
        tilt, _ = self.floor_tilt(edge)

        def made(weigh: float) -> list[State]:
            together = self.together(edge, tilt, weigh)
            return [self._open("all open", edge, together)] if len(together) > 1 else []

        return self._worst(made)

    def _worst(self, made: Callable[[float], list[State]]) -> State | None:
        """The worst state of what can be open together; see :func:`worst_of`."""
        from reviewer.workshop.open_together import worst_of

        return worst_of(made, self._worst_by, locked=self.locked)

    def _open(self, kind: Kind, edge: TippingEdge, opened: tuple[Opened, ...]) -> State:
        tilt, _ = self.floor_tilt(edge)
        acts = self.own(edge, tilt, opened, filled=True)
        source = "; ".join(dict.fromkeys(opening.filling for opening, _ in opened if opening.filling))
        outermost, turn = max(opened, key=lambda each: -edge.arm(*each[0].hold(edge, each[1])[:2]))
        outside = -edge.arm(*outermost.hold(edge, turn)[:2])
        made = balanced(edge, acts, "apart", tilt)
        spare = made.margin + self.hold(edge)
        away = -lever(edge, outermost.hold(edge, turn), tilt)
        tips = Value(0.0 if spare <= 0 else spare / away if away > 0 else math.inf, "force")
        on = opened[0][0].name if len(opened) == 1 else ""
        return self.state(
            kind,
            edge,
            acts,
            tilt=tilt,
            place=outside,
            source=source,
            on=on,
            opened=opened,
            tips_at=tips,
        )

    def together(self, edge: TippingEdge, tilt: float = 0.0, weigh: float = 1.0) -> tuple[Opened, ...]:
        """What tips most when it is all open at once; see :func:`open_together`."""
        from reviewer.workshop.open_together import open_together

        return open_together(self.openings, edge, tilt, weigh)

    # ------------------------------------------------------------ storage

    def push(self, edge: TippingEdge, opened: tuple[Opened, ...] = ()) -> State:
        """A push or a pull at the top; with doors and drawers open where some are given. (6)"""
        return self._pushed("push open" if opened else "push", edge, "tip-push-force", opened)

    def touch(self, edge: TippingEdge, limit: str) -> State:
        """The small push of a limit at the top of a shut and empty piece. (6)"""
        return self._pushed("touch", edge, limit)

    def _pushed(self, kind: Kind, edge: TippingEdge, limit: str, opened: tuple[Opened, ...] = ()) -> State:
        force = self.limits[limit]
        height = min(self.piece.height, self.limits["tip-push-height"].amount)
        tilt = self.block(edge) if self.on_carpet else 0.0
        at = (*self._place(edge, 0.0), height)
        acts = [
            *self.own(edge, tilt, opened, filled=True),
            self._push("a touch" if kind == "touch" else "a push or pull", force.amount, at, edge, tilt),
        ]
        return self.state(
            kind, edge, acts, tilt=tilt, force=force.amount, place=height, source=force.source, opened=opened
        )

    def child(self, edge: TippingEdge) -> State | None:
        """A child hanging on the front of what tips it most, carpet under the back. (2), (5)

        On a shelf's edge where the edge of the feet is at an open side; on one open door or drawer anywhere.
        """
        found = [state for opening in self.openings if (state := self._child_on(edge, opening, ()))]
        if self._climbed_at(edge):
            highest = self.limits["tip-push-height"].amount
            tilt = self.block(edge)
            for solid in self.solids(self.piece.parts):
                if solid.thick != Axis.UP or solid.high[Axis.UP] > highest + TOLERANCE_MM:
                    continue
                if any(solid.name in opening.parts for opening in self.openings):
                    continue
                outside, height = self.reach(edge, [solid], 0.0)
                at = (*self._place(edge, outside), height)
                found.append(self._child("child", edge, self.own(edge, tilt), at, tilt, solid.name, ()))
        return min(found, key=nearness, default=None)

    def push_open(self, edge: TippingEdge) -> State | None:
        """The push with all open that can be open together."""
        tilt = self.block(edge) if self.on_carpet else 0.0

        def made(weigh: float) -> list[State]:
            together = self.together(edge, tilt, weigh)
            return [self.push(edge, together)] if together else []

        return self._worst(made)

    def _climbed_at(self, edge: TippingEdge) -> bool:
        """Whether a shelf's edge may be open there: the front, away from the wall, anywhere without one."""
        if side_of(edge) == "front" or self.setting.wall is None:
            return True
        return from_wall(edge, self.piece, self.setting) > _FACING

    def child_all_open(self, edge: TippingEdge) -> State | None:
        """A child hanging on one of all that can be open together, each with what is in it.

        Of what an interlock locks, the one that the child hangs on is the open one.
        """
        from reviewer.workshop.open_together import in_place_of_others

        def made(weigh: float) -> list[State]:
            together = self.together(edge, self.block(edge), weigh)
            if len(together) < 2:
                return []
            hung = [(opening, together) for opening, _ in together]
            if self.locked:
                hung += in_place_of_others(self.openings, together, edge)
            states = (self._child_on(edge, opening, opened) for opening, opened in hung)
            return [state for state in states if state]

        return self._worst(made)

    def _child_on(self, edge: TippingEdge, opening: Opening, together: tuple[Opened, ...]) -> State | None:
        turn = opening.turn(edge)
        at = opening.hold(edge, turn)
        if opening.way == "lid" or not turn:
            return None
        highest = self.limits["tip-push-height"].amount
        if opening.bounds(turn)[0][2] > highest:
            return None  # out of a child's reach
        at = (at[0], at[1], min(at[2], highest))
        tilt = self.block(edge)
        opened = together or ((opening, turn),)
        acts = self.own(edge, tilt, opened, filled=True)
        return self._child("child open" if together else "child", edge, acts, at, tilt, opening.name, opened)

    def _child(
        self,
        kind: Kind,
        edge: TippingEdge,
        acts: list[Act],
        at: Vector,
        tilt: float,
        on: str,
        opened: tuple[Opened, ...],
    ) -> State:
        weight = self.limits["child-weight"]
        force = weight.amount * NEWTON_PER_KG
        return self.state(
            kind,
            edge,
            [*acts, self._load("a child", force, at, edge, tilt)],
            tilt=tilt,
            force=force,
            place=at[2],
            source=weight.source,
            on=on,
            opened=opened,
        )


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
