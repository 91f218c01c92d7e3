"""A piece in its room, in each state that can tip it, about each edge of its feet.

Here is what opens, and what storage is tested with: pushes and a child. The numbers (n) are those of
:mod:`reviewer.mechanics.stability`. Moments N·mm, forces N, places mm.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator
from typing import TYPE_CHECKING

from reviewer.mechanics.stability import TippingEdge
from reviewer.model.plan import Axis
from reviewer.setting_out.solid import Vector
from reviewer.units import NEWTON_PER_KG, TOLERANCE_MM, Value
from reviewer.workshop.tipping import (
    Act,
    Kind,
    State,
    balanced,
    from_wall,
    lever,
    nearness,
    side_of,
)
from reviewer.workshop.tipping_ground import Opened
from reviewer.workshop.tipping_loads import Laden

if TYPE_CHECKING:
    from reviewer.workshop.opening import Opening

#: How squarely an edge must look away from the wall for a shelf to be open there.
_FACING = 0.5


class Scene(Laden):
    """A piece in its room: makes the state of each cause about each edge."""

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
