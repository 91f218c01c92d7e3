"""What a state of a piece is: the forces on it, and their moments about the edge it would fall over.

The numbers (n) are those of :mod:`reviewer.mechanics.stability`. Moments N·mm, forces N, places mm.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from itertools import pairwise
from typing import TYPE_CHECKING, Literal

from reviewer.language.source import Span
from reviewer.limits import Limits
from reviewer.mechanics.stability import Balance, Point, TippingEdge
from reviewer.model.plan import Axis, Restraint
from reviewer.records import NamedTuple
from reviewer.setting_out.result import SettingOut
from reviewer.setting_out.solid import Solid, Vector
from reviewer.units import TOLERANCE_MM, Value
from reviewer.workshop.standing import Piece

if TYPE_CHECKING:
    from reviewer.workshop.opening import Opening

Kind = Literal[
    "empty",
    "floor",
    "carpet",
    "high",
    "declared",
    "loaded",
    "open",
    "all open",
    "sitter",
    "person",
    "lean",
    "push",
    "push open",
    "touch",
    "child",
    "child open",
]
Role = Literal["weight", "contents", "load", "push"]
#: How moments are told apart. ``apart``: what acts inside the edge holds, what acts outside turns.
#: ``lean``: a weight holds by its arm, and turns by what leaning takes from it.
Split = Literal["apart", "lean"]

#: Halvings of a length until it is known to a thousandth of a millimetre.
_HALVINGS = 24
#: Every side over which a piece can tip.
SIDES = ("front", "back", "left", "right")
#: How straight an edge must look at the wall or at the maker to count as that side.
_FACING = 0.5
#: An edge that faces two sides alike to within this faces both.
_EVENLY = 1e-3


class Act(NamedTuple):
    """A force on a piece: its place on the level floor, and how far inside the edge it acts once it leans.

    ``lever`` below 0 turns the piece over. That of a push is its height, counted as turning.
    """

    role: Role
    said: str
    newtons: float
    at: Vector
    lever: float

    @property
    def moment(self) -> float:
        """N·mm; above 0 it holds the piece down."""
        return self.newtons * self.lever


def lever(edge: TippingEdge, at: Vector, tilt_degrees: float = 0.0) -> float:
    """How far inside an edge a weight acts once the piece leans towards it, mm. (2)"""
    tilt = math.radians(tilt_degrees)
    return edge.arm(at[0], at[1]) * math.cos(tilt) - at[2] * math.sin(tilt)


def push_lever(edge: TippingEdge, at: Vector, tilt_degrees: float = 0.0) -> float:
    """That of a level push towards the edge, below 0. (6)"""
    tilt = math.radians(tilt_degrees)
    return -(at[2] * math.cos(tilt) + edge.arm(at[0], at[1]) * math.sin(tilt))


def balanced(
    edge: TippingEdge, acts: Sequence[Act], split: Split, tilt_degrees: float = 0.0, further: float = 0.0
) -> Balance:
    """The moments of some forces about an edge; ``further`` as if it lay so many mm further out. (7)"""
    tilt = math.radians(tilt_degrees)
    held: list[float] = []
    turned: list[float] = []
    for act in acts:
        if act.role == "push":
            turned.append(-act.moment)
            continue
        moment = act.newtons * (act.lever + further * math.cos(tilt))
        if split == "lean" and act.role != "load":
            lean = act.newtons * act.at[2] * math.sin(tilt)
            turned.append(lean)
            (held if moment + lean >= 0 else turned).append(abs(moment + lean))
        elif moment >= 0:
            held.append(moment)
        else:
            turned.append(-moment)
    return Balance(edge, math.fsum(held), math.fsum(turned))


class State(NamedTuple):
    """What happens to a piece, and the balance about its weakest edge.

    ``place``: how high a push or a child pulls; else how far the force lies outside the edge (below 0:
    inside). ``weight`` is what holds the piece down, ``shifts`` the force that comes nearer to the edge
    when the feet stand further out. ``sides`` are those to which it tips as easily. ``hold`` is what the
    wall restraints add, within ``balance.restoring``. ``tips_at`` is the force, or the lean, that just tips
    it (without end where none does), worked out when asked. One that is shown for information alone
    has a ``why_not``.
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
    tilt: float = 0.0  # degrees that it leans towards the edge
    hold: float = 0.0
    acts: tuple[Act, ...] = ()
    split: Split = "apart"
    on: str = ""  # the part, the door or the drawer that the force is on
    opened: tuple[tuple[Opening, float], ...] = ()  # what is open, and how far
    known_tips_at: Value | None = None  # where it is not to be worked out from the forces
    kept_shut: tuple[str, ...] = ()  # what an interlock keeps shut while others are open
    why_not: str = ""  # why it is not judged

    @property
    def judged(self) -> bool:
        return not self.why_not

    @property
    def tips_at(self) -> Value:
        """What just tips it."""
        return self.known_tips_at if self.known_tips_at is not None else _tips_at(self)

    @property
    def unheld(self) -> float:
        """The margin without any wall restraint, N·mm: below 0 it is what restraints must make up."""
        return self.balance.margin - self.hold

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
        if self.kind not in ("empty", "sitter", "person"):
            return self._further_out_by_trial(ratio)
        if not self.shifts or self.place <= 0:
            return (ratio * turned - held) / (self.weight + self.shifts)
        moved = (ratio * turned - held) / (self.weight + ratio * self.shifts)
        if moved <= self.place:
            return moved
        inside = self.shifts * self.place
        return (ratio * (turned - inside) - held + inside) / (self.weight + self.shifts)

    def _further_out_by_trial(self, ratio: float) -> float:
        """By halving, with every force at its own arm."""
        near, far = 0.0, (ratio * self.balance.overturning - self.balance.restoring) / self.weight
        for _ in range(_HALVINGS):
            middle = (near + far) / 2
            made = balanced(self.balance.edge, self.acts, self.split, self.tilt, middle)
            if made.restoring + self.hold >= ratio * made.overturning:
                far = middle
            else:
                near = middle
        return far

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


def nearness(state: State) -> tuple[float, float]:
    """By which the state nearest to tipping comes first: the ratio, and what is left."""
    return round(state.balance.ratio, 6), round(state.balance.margin, 3)


def _tips_at(state: State) -> Value:
    """What just tips it: the force where one is put on it, else the lean of the floor. (8), (10), (11)"""
    force = [act for act in state.acts if act.role in ("load", "push")]
    if state.kind == "loaded":
        return Value(state.force * state.balance.ratio, "force")
    if force:
        # Who sits inside the edge holds the piece down: what tips it then is the push.
        main = next((act for act in force if act.lever < 0), force[0])
        others = state.balance.margin - main.moment
        if others <= 0:
            return Value(0.0, "force")
        return Value(others / -main.lever if main.lever < 0 else math.inf, "force")
    held = math.fsum(act.newtons * state.balance.edge.arm(act.at[0], act.at[1]) for act in state.acts)
    high = math.fsum(act.newtons * act.at[2] for act in state.acts)
    whole = math.hypot(held, high)
    if state.hold >= whole or not whole:
        return Value(math.inf, "angle")
    lean = math.acos(-state.hold / whole) - math.atan2(high, held)
    return Value(max(0.0, math.degrees(lean)), "angle")


def side_of(edge: TippingEdge) -> str:
    """The side over which an edge tips: front, back, left or right."""
    across, deep = edge.outward
    if abs(deep) >= abs(across) - 1e-9:
        return "front" if deep < 0 else "back"
    return "left" if across < 0 else "right"


def sides_of(edge: TippingEdge) -> tuple[str, ...]:
    """The same; both sides of an edge that cuts a corner evenly, as between the feet of a cross."""
    across, deep = edge.outward
    if abs(abs(deep) - abs(across)) > _EVENLY:
        return (side_of(edge),)
    return ("front" if deep < 0 else "back", "left" if across < 0 else "right")


def edges_of(piece: Piece, castor_swivel: float = 0.0) -> tuple[TippingEdge, ...]:
    """The lines over which a piece tips, those on castors with every wheel turned inwards.

    ``castor_swivel`` is how far inside the corner of what it is fixed to a castor then touches the floor.
    """
    if not piece.castors or not castor_swivel:
        return piece.edges
    wheels = set(piece.castors)

    def inside(edge: TippingEdge, point: Point, least: float) -> Point:
        if point not in wheels:
            return point
        out_x, out_y = edge.outward
        return point[0] - least * out_x, point[1] - least * out_y

    moved = []
    for edge in piece.edges:
        depth = max(edge.arm(x, y) for x, y in piece.polygon or ())
        least = min(castor_swivel, depth / 2)
        moved.append(TippingEdge(inside(edge, edge.start, least), inside(edge, edge.end, least)))
    return tuple(moved)


def free_edges(piece: Piece, setting: SettingOut, castor_swivel: float = 0.0) -> tuple[TippingEdge, ...]:
    """The edges that nothing stops it from falling over: not those where the wall catches it in time.

    The wall catches a leaning piece when it touches before the centre of mass has passed over the edge:
    gap over height below arm over height of the centre. (10) A piece that leans on the wall is caught
    already, even where its centre lies behind its feet, as that of a ladder does.
    """
    edges = edges_of(piece, castor_swivel)
    if setting.wall is None:
        return edges
    axis, place = setting.wall
    middle = (piece.low[axis] + piece.high[axis]) / 2
    towards = 1.0 if place >= middle else -1.0
    gap = max(0.0, place - piece.high[axis] if towards > 0 else piece.low[axis] - place)
    whole = piece.whole
    return tuple(
        edge
        for edge in edges
        if edge.outward[axis] * towards <= _FACING
        or (gap > TOLERANCE_MM and gap * whole.z >= edge.arm(whole.x, whole.y) * piece.height)
    )


def restraint_hold(
    piece: Piece, limits: Limits, setting: SettingOut, edge: TippingEdge | None = None
) -> float:
    """The moment that the wall restraints of a piece add, N·mm: force by height, each for its test load. (14)

    By the lever of its true line where the plan says how high it meets the wall. One that goes into
    wallboard alone counts for nothing. With an ``edge`` only what helps there counts: a strap pulls straight
    to the wall alone, whatever is screwed fast holds along the wall too.
    """
    held = 0.0
    for each in piece.restraints:
        height = each.height
        if height is None:
            height = max(setting.solids[name].high[Axis.UP] for name in each.what if name in setting.solids)
        if each.into != "board":
            share = 1.0
            if edge is not None:
                share = from_wall(edge, piece, setting)
                if each.device != "strap" and share >= 0:
                    share = 1.0
            lever = min(height, piece.height)
            if each.wall_height is not None:
                lever = _strap_lever(each, lever, each.wall_height, piece, setting, edge)
            held += limits["restraint-force"].amount * each.count * lever * max(0.0, share)
    return held


def _strap_lever(
    restraint: Restraint,
    height: float,
    on_wall: float,
    piece: Piece,
    setting: SettingOut,
    edge: TippingEdge | None,
) -> float:
    """How far the line of a strap passes from an edge (None: from the front of the piece), mm. (14)"""
    from reviewer.workshop.strap_ends import sloping_lever, strap_line

    axis, place = setting.wall or (Axis.DEEP, piece.high[Axis.DEEP])
    behind = place >= (piece.low[axis] + piece.high[axis]) / 2
    gap = max(0.0, place - piece.high[axis] if behind else piece.low[axis] - place)
    arm = piece.high[axis] - piece.low[axis]
    if edge is not None:
        back = [(piece.low[each] + piece.high[each]) / 2 for each in (0, 1)]
        back[axis] = piece.high[axis] if behind else piece.low[axis]
        arm = edge.arm(back[0], back[1])
    line = strap_line(height, on_wall, gap, restraint.from_back if restraint.on_top else None)
    return sloping_lever(line.up, arm - line.before, line.slope)


def from_wall(edge: TippingEdge, piece: Piece, setting: SettingOut) -> float:
    """How squarely a fall over an edge leads away from the wall: 1 straight away, 0 along it, -1 towards it.

    A plan without a wall whose piece is tied to one has it behind.
    """
    axis, towards = Axis.DEEP, 1.0
    if setting.wall is not None:
        axis, place = setting.wall
        towards = 1.0 if place >= (piece.low[axis] + piece.high[axis]) / 2 else -1.0
    away = -edge.outward[axis] * towards
    return 0.0 if abs(away) < 1e-9 else away


def outside_share(solid: Solid, edge: TippingEdge) -> tuple[float, float]:
    """The share of a part's upper face that lies outside an edge, and how far out its middle is, mm."""
    (x0, y0, _), (x1, y1, _) = solid.low, solid.high
    out_x, out_y = edge.outward
    # Mostly all of it is inside, which the corner furthest out tells by itself.
    if edge.arm(x1 if out_x > 0 else x0, y1 if out_y > 0 else y0) >= -TOLERANCE_MM:
        return 0.0, 0.0
    corners = [(x0, y0), (x1, y0), (x1, y1), (x0, y1)]
    arms = [edge.arm(*corner) for corner in corners]
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
