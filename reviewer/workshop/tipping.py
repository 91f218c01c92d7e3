"""A piece in each state that can tip it, with its moments about the edge it would fall over.

Level floor unless a state says otherwise. Loads that may be gone tomorrow count only where they hurt.
The numbers (n) are those of :mod:`reviewer.mechanics.stability`. Moments N·mm, forces N, places mm.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from itertools import pairwise
from types import MappingProxyType
from typing import Literal, NamedTuple

from reviewer.language.source import Span
from reviewer.limits import Limits
from reviewer.mechanics.stability import (
    Balance,
    Load,
    Point,
    Push,
    TippingEdge,
    balance,
    base_depth,
    restoring_moment,
    tilt_over_block,
)
from reviewer.model.plan import Axis, Plan
from reviewer.model.plan import Load as Declared
from reviewer.reference.loads import planned_load
from reviewer.setting_out.result import SettingOut
from reviewer.setting_out.solid import Solid
from reviewer.units import NEWTON_PER_KG, TOLERANCE_MM
from reviewer.workshop.loading import OnSpot
from reviewer.workshop.standing import LoadHere, Piece

Kind = Literal["empty", "carpet", "loaded", "sitter", "person", "push", "child"]

#: Halvings of a length until it is known to a thousandth of a millimetre.
_HALVINGS = 24
#: Every side over which a piece can tip.
SIDES = ("front", "back", "left", "right")
#: Ratios that agree to so many places are alike.
_ALIKE = 6
#: Words for a floor that lets a piece lean.
_SOFT_FLOORS = ("carpet", "rug")
#: How straight an edge must look at the wall or at the maker to count as that side.
_FACING = 0.5


class State(NamedTuple):
    """What happens to a piece, and the balance about its weakest edge.

    ``place``: how high a push or a child pulls; else how far the force lies outside the edge (below 0:
    inside). ``weight`` is what holds the piece down, ``shifts`` the force that comes nearer to the edge
    when the feet stand further out. ``sides`` are those to which it tips as easily.
    """

    kind: Kind
    balance: Balance
    force: float
    place: float
    said: str  # what the plan calls the load
    span: Span | None  # the clause behind it
    weight: float
    shifts: float
    source: str
    sides: tuple[str, ...] = ()

    def further_out(self, ratio: float) -> float:
        """How far the feet must stand further out at this edge to reach a ratio, mm; 0 where they need not.

        The edge moves by d: the weight's arm grows by d, a force outside has d less, and once inside it
        holds the piece down too. Of a spread load, less and less lies outside.
        """
        held, turned = self.balance.restoring, self.balance.overturning
        if held >= ratio * turned:
            return 0.0
        if self.kind == "loaded":
            return self._further_out_of_load(ratio)
        if not self.shifts or self.place <= 0:
            return (ratio * turned - held) / (self.weight + self.shifts)
        moved = (ratio * turned - held) / (self.weight + ratio * self.shifts)
        if moved <= self.place:
            return moved
        inside = self.shifts * self.place
        return (ratio * (turned - inside) - held + inside) / (self.weight + self.shifts)

    def _further_out_of_load(self, ratio: float) -> float:
        """By halving: an even load over a straight overhang has its middle halfway out."""
        held, turned = self.balance.restoring, self.balance.overturning
        near, far = 0.0, 2 * self.place
        for _ in range(_HALVINGS):
            middle = (near + far) / 2
            left = turned * (1 - middle / (2 * self.place)) ** 2
            if held + self.weight * middle >= ratio * left:
                far = middle
            else:
                near = middle
        return far


def side_of(edge: TippingEdge) -> str:
    """The side over which an edge tips: front, back, left or right."""
    across, deep = edge.outward
    if abs(deep) >= abs(across) - 1e-9:
        return "front" if deep < 0 else "back"
    return "left" if across < 0 else "right"


def free_edges(piece: Piece, setting: SettingOut) -> tuple[TippingEdge, ...]:
    """The edges that nothing stops it from falling over: not those where the wall catches it in time.

    The wall catches a leaning piece when it touches before the centre of mass has passed over the edge:
    gap over height below arm over height of the centre. (10)
    """
    if setting.wall is None:
        return piece.edges
    axis, place = setting.wall
    middle = (piece.low[axis] + piece.high[axis]) / 2
    towards = 1.0 if place >= middle else -1.0
    gap = max(0.0, place - piece.high[axis] if towards > 0 else piece.low[axis] - place)
    whole = piece.whole
    return tuple(
        edge
        for edge in piece.edges
        if edge.outward[axis] * towards <= _FACING
        or gap * whole.z >= edge.arm(whole.x, whole.y) * piece.height
    )


def restraint_hold(piece: Piece, limits: Limits, setting: SettingOut) -> float:
    """The moment that the wall restraints of a piece add, N·mm: force by height, each for its test load. (14)

    One that goes into wallboard alone counts for nothing.
    """
    held = 0.0
    for each in piece.restraints:
        height = each.height
        if height is None:
            height = max(setting.solids[name].high[Axis.UP] for name in each.what if name in setting.solids)
        if each.into != "board":
            held += limits["restraint-force"].amount * each.count * min(height, piece.height)
    return held


class Scene:
    """A piece in its room: makes the state of each cause about each edge.

    ``edges`` are those that nothing keeps it from falling over, ``hold`` the moment of its restraints.
    """

    def __init__(self, piece: Piece, plan: Plan, setting: SettingOut, limits: Limits) -> None:
        self.piece, self.plan, self.setting, self.limits = piece, plan, setting, limits
        self.edges = free_edges(piece, setting)
        self.hold = restraint_hold(piece, limits, setting)
        self.weight = piece.whole.weight
        floor = (plan.room.floor if plan.room else None) or ""
        self.on_carpet = any(word in floor for word in _SOFT_FLOORS)

    def solids(self, names: Sequence[str]) -> list[Solid]:
        return [self.setting.solids[name] for name in names]

    def state(
        self,
        kind: Kind,
        made: Balance,
        force: float = 0.0,
        place: float = 0.0,
        *,
        said: str = "",
        span: Span | None = None,
        source: str = "",
    ) -> State:
        shifts = force if kind in ("sitter", "person") else 0.0
        held = made._replace(restoring=made.restoring + self.hold)
        return State(kind, held, force, place, said, span, self.weight, shifts, source)

    # ------------------------------------------------------------ by itself

    def empty(self, edge: TippingEdge) -> State:
        """Parts inside the edge hold it down, parts outside turn it over. (1)"""
        moments = [mass.weight * edge.arm(mass.x, mass.y) for mass in self.piece.masses]
        held = math.fsum(moment for moment in moments if moment > 0)
        turned = -math.fsum(moment for moment in moments if moment < 0)
        return self.state("empty", Balance(edge, held, turned))

    def carpet(self, edge: TippingEdge) -> State:
        """What its lean takes from its own weight, against what is left of it. (2)"""
        whole, tilt = self.piece.whole, math.radians(self.block(edge))
        held = whole.weight * edge.arm(whole.x, whole.y) * math.cos(tilt)
        source = self.limits["carpet-block"].source
        return self.state(
            "carpet", Balance(edge, held, whole.weight * whole.z * math.sin(tilt)), source=source
        )

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
            x = solid.high[0] if out_x > 0 else solid.low[0]
            y = solid.high[1] if out_y > 0 else solid.low[1]
            best = max(best, (-edge.arm(x, y), solid.high[Axis.UP]))
        return best[0] - inset * (abs(out_x) + abs(out_y)), best[1]

    def sitting(self, edge: TippingEdge, here: LoadHere) -> Iterator[State]:
        """Someone at the edge of what is sat or stood on: the seat test, and one heavy person. (11), (12)"""
        load, solids = here.load, self.solids(here.parts)
        inset = self.limits["sitter-inset"]
        outside, height = self.reach(edge, solids, inset.amount)
        x, y = self._place(edge, outside)
        if load.use == "people seated":
            force, push = self.limits["sitter-force"].amount, self.limits["sitter-push"].amount
            made = balance(edge, [self.piece.whole], [Load(force, x, y, height)], [Push(push, x, y, height)])
            source = self.limits["sitter-force"].source
            yield self.state("sitter", made, force, outside, said=load.said, span=load.span, source=source)
        planned = planned_load(load.use)
        kg = planned.amount if load.weight is None else load.weight / load.count
        made = balance(edge, [self.piece.whole], [Load(kg * NEWTON_PER_KG, x, y, height)])
        source = planned.source if load.weight is None else "the plan"
        yield self.state(
            "person", made, kg * NEWTON_PER_KG, outside, said=load.said, span=load.span, source=source
        )

    @staticmethod
    def _place(edge: TippingEdge, outside: float) -> Point:
        out_x, out_y = edge.outward
        return edge.start[0] + outside * out_x, edge.start[1] + outside * out_y

    # ------------------------------------------------------------ things

    def loaded(
        self, edge: TippingEdge, lasting: Mapping[str, float], spots: Mapping[str, Sequence[OnSpot]]
    ) -> State | None:
        """What rests outside an edge, of spread loads their share; what lies inside may be gone tomorrow."""
        moment = force = 0.0
        causes: list[Declared] = []
        counted: set[str] = set()
        for here in self.piece.loads:
            if not here.load.lasting:
                continue
            for solid in self.solids(here.parts):
                share, lever = outside_share(solid, edge)
                outside = [(lasting[solid.name] * share, lever)] if lasting.get(solid.name) and share else []
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
                        force += math.fsum(newtons for newtons, _ in outside)
                        moment += math.fsum(newtons * lever for newtons, lever in outside)
        if not causes:
            return None
        made = Balance(edge, restoring_moment(edge, [self.piece.whole]), moment)
        said = " and ".join(dict.fromkeys(load.said for load in causes))
        place = moment / force
        return self.state("loaded", made, force, place, said=said, span=causes[0].span, source="the plan")

    # ------------------------------------------------------------ storage

    def push(self, edge: TippingEdge) -> State:
        force = self.limits["tip-push-force"]
        height = min(self.piece.height, self.limits["tip-push-height"].amount)
        tilt = self.block(edge) if self.on_carpet else 0.0
        made = balance(edge, [self.piece.whole], (), [Push(force.amount, *edge.start, height)], tilt)
        return self.state("push", made, force.amount, height, source=force.source)

    def child(self, edge: TippingEdge) -> State | None:
        """A child hanging on the front of the shelf that tips it most, carpet under the back. (2), (5)"""
        highest = self.limits["tip-push-height"].amount
        force = self.limits["child-weight"].amount * NEWTON_PER_KG
        tilt = self.block(edge)
        flat = [
            solid
            for solid in self.solids(self.piece.parts)
            if solid.thick == Axis.UP and solid.high[Axis.UP] <= highest + TOLERANCE_MM
        ]
        found: tuple[Balance, float] | None = None
        for solid in flat:
            outside, height = self.reach(edge, [solid], 0.0)
            place = self._place(edge, outside)
            made = balance(edge, [self.piece.whole], [Load(force, *place, height)], (), tilt)
            if found is None or made.margin < found[0].margin:
                found = made, height
        if found is None:
            return None
        made, height = found
        source = self.limits["child-weight"].source
        return self.state("child", made, force, height, source=source)


def outside_share(solid: Solid, edge: TippingEdge) -> tuple[float, float]:
    """The share of a part's upper face that lies outside an edge, and how far out its middle is, mm."""
    (x0, y0, _), (x1, y1, _) = solid.low, solid.high
    corners = [(x0, y0), (x1, y0), (x1, y1), (x0, y1)]
    arms = [edge.arm(*corner) for corner in corners]
    if min(arms) >= -TOLERANCE_MM:
        return 0.0, 0.0
    cut: list[Point] = []
    for (one, a), (two, b) in zip(
        zip(corners, arms, strict=True), zip(corners[1:] + corners[:1], arms[1:] + arms[:1], strict=True),
        strict=True,
    ):  # fmt: skip
        if a < 0:
            cut.append(one)
        if (a < 0) != (b < 0):
            share = a / (a - b)
            cut.append((one[0] + share * (two[0] - one[0]), one[1] + share * (two[1] - one[1])))
    area = moment = 0.0
    for one, two in pairwise(cut[1:]):
        twice = (one[0] - cut[0][0]) * (two[1] - cut[0][1]) - (two[0] - cut[0][0]) * (one[1] - cut[0][1])
        area += twice / 2
        moment -= twice / 2 * (edge.arm(*cut[0]) + edge.arm(*one) + edge.arm(*two)) / 3
    whole = (x1 - x0) * (y1 - y0)
    return (area / whole, moment / area) if area > 0 else (0.0, 0.0)


def _weakest(states: Iterator[State]) -> State | None:
    """The state nearest to tipping, with every side on which it is as near (both ends of a bench)."""
    found = list(states)
    if not found:
        return None
    worst = min(found, key=lambda state: (round(state.balance.ratio, _ALIKE), round(state.balance.margin)))
    alike = {
        side_of(state.balance.edge)
        for state in found
        if state.kind == worst.kind and abs(state.balance.ratio - worst.balance.ratio) < 10**-_ALIKE
    }
    return worst._replace(sides=tuple(side for side in SIDES if side in alike))


def pushed(piece: Piece, plan: Plan, setting: SettingOut, limits: Limits) -> State | None:
    """The push at the top, about the weakest edge that nothing stops it from falling over."""
    scene = Scene(piece, plan, setting, limits)
    return _weakest(scene.push(edge) for edge in scene.edges)


def climbed(piece: Piece, plan: Plan, setting: SettingOut, limits: Limits) -> State | None:
    """A child hanging on the front."""
    scene = Scene(piece, plan, setting, limits)
    fronts = [edge for edge in scene.edges if side_of(edge) == "front"]
    states = (scene.child(edge) for edge in fronts)
    return _weakest(state for state in states if state is not None)


def qualifies(piece: Piece, limits: Limits) -> bool:
    """True for storage as tall and heavy as the standard for clothing storage speaks of."""
    tall = piece.height >= limits["restraint-height"].amount - TOLERANCE_MM
    return piece.storage and tall and piece.whole.kg >= limits["restraint-mass"].amount


def states(
    piece: Piece,
    plan: Plan,
    setting: SettingOut,
    limits: Limits,
    lasting: Mapping[str, float],
    spots: Mapping[str, Sequence[OnSpot]] = MappingProxyType({}),
) -> tuple[State, ...]:
    """Every state that this piece can come into, each about its weakest edge.

    ``lasting`` is the load that stays all over each part, N, and ``spots`` what stays on one spot of it.
    Nothing for a piece that hangs on the wall.
    """
    if not piece.edges or piece.fixed:
        return ()
    scene = Scene(piece, plan, setting, limits)
    found = [_weakest(scene.empty(edge) for edge in scene.edges)]
    if scene.on_carpet:
        found.append(_weakest(scene.carpet(edge) for edge in scene.edges))
    loaded = (scene.loaded(edge, lasting, spots) for edge in scene.edges)
    found.append(_weakest(state for state in loaded if state is not None))
    for here in piece.loads:
        if not here.load.lasting:
            found.append(_weakest(state for edge in scene.edges for state in scene.sitting(edge, here)))
    if qualifies(piece, limits):
        found.append(pushed(piece, plan, setting, limits))
        if plan.room is not None and plan.room.children_under:
            found.append(climbed(piece, plan, setting, limits))
    return tuple(state for state in found if state is not None)
