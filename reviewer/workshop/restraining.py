"""Wall restraints of pieces that stand: the pull that each must hold, and what its screw holds in a stud.

The moment that a piece's balance lacks in its worst state, shared by its restraints, each by its lever. (14)
Forces N, moments N·mm, lengths mm. Masonry is given no number: its fixings have their maker's own data.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from types import MappingProxyType
from typing import TYPE_CHECKING, NamedTuple

from reviewer.mechanics.wall_fixing import Studs
from reviewer.model.plan import Axis, Restraint
from reviewer.plan_words import number_text, plan_unit
from reviewer.reference import gauges
from reviewer.reference.usual_values import usual_value
from reviewer.setting_out.solid import Solid
from reviewer.units import TOLERANCE_MM, UnitSystem
from reviewer.workshop.restraint_parts import (
    before_the_part,
    outlined,
    parts_at,
    parts_there,
    wood_before_wall,
)
from reviewer.workshop.standing import Piece
from reviewer.workshop.strap_ends import PieceEnd, StrapLine, piece_end, sloping_lever, strap_line
from reviewer.workshop.stud_screws import Hold, screw_of, stud_hold
from reviewer.workshop.tipping import State
from reviewer.workshop.tipping_scene import Scene
from reviewer.workshop.tipping_states import openings_of
from reviewer.workshop.usual_sizes import screw_lengths
from reviewer.workshop.wall_studs import studs_along

if TYPE_CHECKING:
    from reviewer.review import Review

#: The sizes of screw that are told as a remedy (safety notes 3.3: two #10 or #12, common practice).
_GAUGES = ("#10", "#12", "#14")
_METRIC_MM = (5.0, 6.0)
#: Less thread than this in a stud is none: a turn of the point.
_GRAZES_MM = 1.0
#: How straight an edge must look away from the wall for a restraint to hold the piece back from it.
_FACING = 0.5
#: A straightened strap whose slope is told in the report, degrees.
SLOPE_TOLD = 45.0


class WallSide(NamedTuple):
    """Where the wall is: on which level axis, on the high side or the low one, and how far off, mm."""

    axis: int
    towards: float  # 1.0 or -1.0
    gap: float

    def back(self, solid: Solid | Piece) -> float:
        """How far something reaches towards the wall, mm: larger is nearer."""
        return solid.high[self.axis] if self.towards > 0 else -solid.low[self.axis]

    @property
    def along(self) -> int:
        """The level axis that runs along the wall."""
        return Axis.DEEP if self.axis == Axis.ACROSS else Axis.ACROSS


class Screwed(NamedTuple):
    """The screw of a restraint, as said or as tried."""

    gauge: str | None
    diameter: float | None  # mm
    length: float  # mm


class Trial(NamedTuple):
    """Another way to tie a piece, tried: what is None stays as the plan has it. A screw goes into a stud."""

    height: float | None = None
    screw: Screwed | None = None
    many: int | None = None
    device: str | None = None
    on_wall: float | None = None
    piece_screw: Screwed | None = None
    piece_screws: int | None = None

    def of(self, restraint: Restraint) -> Restraint:
        """The restraint with what is tried in place of its own."""
        kept: tuple[str, ...] = ("gauge", "diameter") if self.screw is not None else ()
        kept += ("piece_gauge", "piece_diameter") if self.piece_screw is not None else ()
        changes: dict[str, object] = {
            "height": self.height,
            "count": self.many,
            "device": self.device,
            "wall_height": self.on_wall,
            "piece_screws": self.piece_screws,
        }
        if self.piece_screw is not None:
            changes |= {
                "piece_gauge": self.piece_screw.gauge,
                "piece_diameter": self.piece_screw.diameter,
                "piece_length": self.piece_screw.length,
            }
        if self.screw is not None:
            changes |= {
                "gauge": self.screw.gauge,
                "diameter": self.screw.diameter,
                "length": self.screw.length,
                "into": "stud",
            }
        return restraint.model_copy(
            update={name: value for name, value in changes.items() if value is not None or name in kept}
        )


class Tied(NamedTuple):
    """One restraint of a piece.

    ``on_piece`` is how high it holds the piece, ``lever`` its distance from the tipping edge (0 or less: it
    can't help), ``wood`` what lies between its screw's head and the wallboard. ``fixed_to`` are the parts
    there that are thick enough to hold it, ``thin`` those that are not. ``hold`` is None where it does not
    go into a stud or no screw is said. ``on_wall`` is how high it meets the wall, ``line`` is the one that it
    pulls along, ``at_piece`` what its screws at the piece hold: None where the plan does not say which, or
    where it has no such end.
    """

    restraint: Restraint
    on_piece: float
    lever: float
    wood: float
    fixed_to: tuple[str, ...]
    thin: tuple[str, ...]
    screw: Screwed | None
    hold: Hold | None
    line: StrapLine
    on_wall: float
    at_piece: PieceEnd | None = None

    @property
    def two_ends(self) -> bool:
        """True for a strap or a bracket, which is screwed to the piece besides."""
        return self.restraint.device in ("strap", "bracket")

    @property
    def held(self) -> tuple[float, ...]:
        """What each of its ends holds, of those that a value is given for, N."""
        ends = (self.hold.pull if self.hold else None, self.at_piece.holds if self.at_piece else None)
        return tuple(each for each in ends if each is not None)

    @property
    def into_stud(self) -> bool:
        return self.restraint.into in ("stud", None)

    @property
    def board_only(self) -> bool:
        """True for one that wallboard alone holds: said so, or its screw ends there."""
        if self.restraint.into == "board":
            return True
        return self.hold is not None and self.hold.thread < _GRAZES_MM


class Restrained(NamedTuple):
    """A piece with its restraints. ``lacks`` is the moment that they must make up; ``state`` why (or None).

    ``pull`` is what comes on each of the points, ``needed`` that or the test load where it is larger.
    """

    piece: Piece
    wall: WallSide
    state: State | None
    lacks: float
    tied: tuple[Tied, ...]
    pull: float
    needed: float
    arm: float  # how far the back of the piece lies behind the edge that it would tip over

    @property
    def points(self) -> int:
        return sum(each.restraint.count for each in self.tied)


def wall_side(piece: Piece, review: Review) -> WallSide:
    """Where the wall is from a piece. A plan without one whose piece is tied to a wall has it behind."""
    if review.setting.wall is None:
        return WallSide(Axis.DEEP, 1.0, 0.0)
    axis, place = review.setting.wall
    middle = (piece.low[axis] + piece.high[axis]) / 2
    towards = 1.0 if place >= middle else -1.0
    gap = place - piece.high[axis] if towards > 0 else piece.low[axis] - place
    return WallSide(axis, towards, max(0.0, gap))


def worst_state(piece: Piece, review: Review, wall: WallSide) -> tuple[State | None, float]:
    """The state in which the piece needs most from its restraints, and the moment it then lacks, N·mm."""
    lasting, spots = review.resting
    opens = openings_of(piece, review, lasting)
    scene = Scene(piece, review.plan, review.setting, review.limits, opens, worst_by="margin")
    children = review.plan.room is None or review.plan.room.children_under != 0
    met: list[State | None] = []
    for edge in scene.edges:
        if edge.outward[wall.axis] * wall.towards > -_FACING:
            continue  # a restraint holds nothing back that falls along the wall
        met += [scene.empty(edge), scene.uneven(edge), scene.loaded(edge, lasting, spots), scene.push(edge)]
        if opens:
            met += [*scene.opened(edge), scene.all_opened(edge), scene.push_open(edge)]
        if piece.storage:
            met.append(scene.high(edge, lasting))
        if children:
            met += [scene.child(edge), scene.child_all_open(edge) if len(opens) > 1 else None]
    found = [state for state in met if state is not None]
    worst = min(found, key=lambda state: round(state.unheld, 3), default=None)
    return worst, max(0.0, -worst.unheld) if worst else 0.0


def lever_of(on_piece: float, on_wall: float, gap: float, arm: float) -> float:
    """The distance of the line of a strap on a back from the tipping edge, mm; 0 where it can't help. (14)

    ``arm`` is how far its hold on the piece lies behind the edge, ``gap`` how far before the wall.
    """
    return sloping_lever(on_piece, arm, strap_line(on_piece, on_wall, gap).slope)


def solid_instead(review: Review, found: Restrained, tied: Tied) -> tuple[str, ...]:
    """The parts at the height of a restraint that would hold it, whatever the plan names."""
    thick, _ = parts_at(
        found.piece.parts, found.piece, review, found.wall, tied.on_piece, tied.restraint, False
    )
    return tuple(solid.name for solid in thick)


def _tied(restraint: Restraint, piece: Piece, review: Review, wall: WallSide, arm: float) -> Tied:
    solids = review.setting.solids
    stated = restraint.height
    if stated is None:
        stated = max((solids[name].high[Axis.UP] for name in restraint.what if name in solids), default=0.0)
    on_piece = min(stated, piece.height)
    on_wall = restraint.wall_height if restraint.wall_height is not None else stated
    thick, thin = parts_there(restraint, piece, review, wall, on_piece)
    covered, recess = before_the_part(restraint, thick, piece, review, wall, on_piece)
    line = strap_line(on_piece, on_wall, wall.gap, restraint.from_back if restraint.on_top else None, recess)
    lever = sloping_lever(line.up, arm - line.before, line.slope)
    wood = wood_before_wall(restraint, thick or thin, piece, wall)
    screw = None
    if restraint.length and (restraint.gauge or restraint.diameter):
        screw = Screwed(restraint.gauge, restraint.diameter, restraint.length)
    found = screw_of(screw.gauge, screw.diameter) if screw else None
    hold = None
    if screw and found and restraint.into in ("stud", None):
        hold = stud_hold(found, screw.length, wood, review.limits, line.from_wall)
    at_piece = None
    piece_screw = screw_of(restraint.piece_gauge, restraint.piece_diameter)
    if piece_screw is not None:
        choose = outlined(restraint, review)
        at_piece = piece_end(review, restraint, piece_screw, thick, wall.axis, line, covered, choose)
    return Tied(
        restraint,
        on_piece,
        lever,
        wood,
        tuple(solid.name for solid in thick),
        tuple(solid.name for solid in thin),
        screw,
        hold,
        line,
        on_wall,
        at_piece,
    )


def restrained(review: Review) -> Iterator[Restrained]:
    """Every standing piece that the plan ties to a wall."""
    for piece in review.pieces:
        if piece.restraints and piece.feet:
            yield restrained_piece(review, piece)


def restrained_piece(
    review: Review,
    piece: Piece,
    trials: Mapping[int, Trial] = MappingProxyType({}),
    known: Restrained | None = None,
) -> Restrained:
    """A standing piece with its restraints; ``trials`` has what to try, by number of the restraint.

    ``known`` is the piece as the plan has it, so that its balance need not be worked out anew.
    """
    wall = wall_side(piece, review)
    state, lacks = (known.state, known.lacks) if known is not None else worst_state(piece, review, wall)
    arm = _arm(piece, wall, state)
    tied = []
    for number, restraint in enumerate(piece.restraints):
        tried = trials[number].of(restraint) if number in trials else restraint
        tied.append(_tied(tried, piece, review, wall, arm))
    # One into wallboard alone holds nothing, so the others have its share.
    levers = math.fsum(each.lever * each.restraint.count for each in tied if each.restraint.into != "board")
    pull = 0.0 if lacks <= 0 else (lacks / levers if levers > 0 else math.inf)
    needed = max(pull, review.limit("restraint-force").amount)
    return Restrained(piece, wall, state, lacks, tuple(tied), pull, needed, arm)


def _arm(piece: Piece, wall: WallSide, state: State | None) -> float:
    """How far the back of the piece lies behind the edge that it would tip over, mm."""
    if state is None:
        return piece.high[wall.axis] - piece.low[wall.axis]
    middle = [(piece.low[axis] + piece.high[axis]) / 2 for axis in (0, 1)]
    middle[wall.axis] = piece.high[wall.axis] if wall.towards > 0 else piece.low[wall.axis]
    return state.balance.edge.arm(middle[0], middle[1])


def width_of(tied: Tied, found: Restrained, review: Review) -> tuple[float, float]:
    """From where to where along the wall the parts reach that a restraint is fixed to, mm."""
    axis = found.wall.along
    solids = [review.setting.solids[name] for name in tied.restraint.what if name in review.setting.solids]
    low = min((solid.low[axis] for solid in solids), default=found.piece.low[axis])
    high = max((solid.high[axis] for solid in solids), default=found.piece.high[axis])
    return low, high


def studs_for(tied: Tied, found: Restrained, review: Review) -> Studs | None:
    """The studs that a restraint can reach; None for one by a cleat, which may run past the piece."""
    if tied.restraint.device == "cleat" or not tied.into_stud:
        return None
    low, high = width_of(tied, found, review)
    return studs_along(review, low, high)


def screws_to_try(screw: Screwed | None, units: UnitSystem) -> Iterator[Screwed]:
    """The same screw in longer lengths, then thicker ones; those a person buys."""
    longest = usual_value("restraint-screw-longest") + TOLERANCE_MM
    lengths = [each for each in screw_lengths(units) if each <= longest]
    sizes: list[tuple[str | None, float | None]] = []
    if screw is not None:
        sizes.append((screw.gauge, screw.diameter))
    now = screw_of(screw.gauge, screw.diameter) if screw else None
    if units is UnitSystem.INCH or (screw is not None and screw.gauge):
        usual: list[tuple[str | None, float | None]] = [(name, None) for name in _GAUGES]
    else:
        usual = [(None, size) for size in _METRIC_MM]
    for gauge, diameter in usual:
        thick = gauges.gauge(gauge) if gauge else gauges.metric_screw_at_most(diameter or 0.0)
        if thick is not None and (now is None or thick.diameter > now.diameter + TOLERANCE_MM):
            sizes.append((gauge, diameter))
    shortest = screw.length if screw is not None else 0.0
    for gauge, diameter in sizes:
        for length in lengths:
            if length >= shortest - TOLERANCE_MM:
                yield Screwed(gauge, diameter, length)


def better_screw(
    review: Review, found: Restrained, number: int, device: str | None = None
) -> tuple[Screwed, Hold] | None:
    """The shortest screw that holds what comes on a restraint, with the usual thread in the stud.

    Tried on the piece itself, by another ``device`` where one is given; None where none does.
    """
    asked = review.limit("stud-screw-thread").amount - TOLERANCE_MM
    for screw in screws_to_try(found.tied[number].screw, review.units):
        trial = Trial(screw=screw, device=device)
        tried = restrained_piece(review, found.piece, {number: trial}, found)
        hold = tried.tied[number].hold
        if hold is not None and hold.pull >= tried.needed and hold.thread >= asked:
            return screw, hold
    return None


def screw_words(review: Review, screw: Screwed) -> str:
    """The clause that says a screw of a restraint: ``screws #10 x 2 1/2 into stud``."""
    unit = plan_unit(review.source, review.plan)
    if screw.gauge:
        size = screw.gauge
    elif unit == "mm":
        size = number_text(screw.diameter or 0.0, unit)
    else:
        size = f"{number_text(screw.diameter or 0.0, 'mm')} mm"
    return f"screws {size} x {number_text(screw.length, unit)} into stud"
