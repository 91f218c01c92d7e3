"""What people and things that lie on a piece do to it, about each edge of its feet.

Loads that may be gone tomorrow count only where they hurt. The numbers (n) are those of
:mod:`reviewer.mechanics.stability`. Moments N·mm, forces N, places mm.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from functools import cached_property

from reviewer.mechanics.stability import TippingEdge
from reviewer.model.plan import Axis
from reviewer.model.plan import Load as Declared
from reviewer.reference.loads import planned_load
from reviewer.setting_out.solid import Solid
from reviewer.units import MM_PER_INCH, NEWTON_PER_KG, TOLERANCE_MM
from reviewer.workshop.loading import PLAN_SAYS, OnSpot
from reviewer.workshop.standing import LoadHere
from reviewer.workshop.tipping import Act, State, lever, outside_share
from reviewer.workshop.tipping_ground import ON_SHELF, Ground


class Laden(Ground):
    """A piece with who sits or leans on it, and with what is kept on it."""

    # ------------------------------------------------------------ people

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
