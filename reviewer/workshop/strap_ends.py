"""The two ends of a wall strap or bracket: the line that it pulls along, and what its screws hold along that.

Screws are pulled and sheared together by a strap that slants against the face that they stand in: NDS 12.4.1.
Design values without duration factor, as with all restraints. Forces N, lengths mm, angles in degrees. The
strap itself is given no number: its maker rates it.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import TYPE_CHECKING, NamedTuple

from reviewer.mechanics.fasteners import (
    END_GRAIN_SHEAR,
    LARGE_DIAMETER,
    grip,
    pull_and_shear,
    withdrawal_per_mm,
)
from reviewer.mechanics.stability import restraint_force
from reviewer.mechanics.yield_modes import (
    Joint,
    bearing_in_main,
    bending_yield_strength,
    dowel_bearing_strength,
    shear_value,
)
from reviewer.model.plan import Axis, Restraint
from reviewer.reference import gauges
from reviewer.reference.joint_values import gravity_of, joint_factor
from reviewer.reference.usual_values import usual_value
from reviewer.setting_out.solid import Solid, Surface
from reviewer.units import TOLERANCE_MM

if TYPE_CHECKING:
    from reviewer.review import Review

#: A strap no further than this out of the level does not slant; a screw no further from square to its face
#: is pulled straight out.
_LEVEL_DEGREES = 0.05
STRAIGHT_DEGREES = 90.0 - _LEVEL_DEGREES


class StrapLine(NamedTuple):
    """The line that a strap pulls along.

    It pulls at the piece ``up`` above the floor and ``before`` the back of the piece, and falls to the wall
    by ``slope`` degrees: below 0 it rises, at 90 it lies along the back. ``run`` is how far it runs level.
    ``from_face`` is its angle to the surface that its screws at the piece stand in: 90 pulls them straight.
    """

    up: float
    before: float
    run: float
    slope: float
    from_face: float

    @property
    def from_wall(self) -> float:
        """Its angle to the wall: 90 pulls a screw there straight out."""
        return 90.0 - abs(self.slope)

    @property
    def along_back(self) -> bool:
        """True where it has no room to run: it lies flat between piece and wall."""
        return self.run <= TOLERANCE_MM and abs(self.slope) > _LEVEL_DEGREES


class PieceEnd(NamedTuple):
    """What the screws of one strap hold in a part of the piece, N, along the strap.

    ``thread`` is what one has in the part, which is ``deep``; ``covered`` is thin wood over it, ``over``
    the wood beyond the point: below 0 it comes out. ``withdrawal`` and ``shear`` are of one screw.
    ``certain``: the NDS reaches so far.
    """

    part: str
    surface: Surface
    grained: bool
    gravity: float
    gravity_source: str
    deep: float
    covered: float
    thread: float
    over: float
    withdrawal: float
    shear: float
    holds: float
    certain: bool


def strap_line(
    on_piece: float, on_wall: float, gap: float, top_before: float | None = None, recess: float = 0.0
) -> StrapLine:
    """The line of a strap whose ends are at two heights.

    ``gap`` lies between the back of the piece and the wall. Fixed on a back it starts there, ``recess``
    before that of the piece. ``top_before``: fixed on a top, so far from the back. There a strap that falls
    bends over the back edge and pulls from that; one that rises runs straight from its screws.
    """
    drop = on_piece - on_wall
    before = recess
    if top_before is not None:
        before = top_before if drop < 0 else 0.0
    run = gap + before
    slope = math.degrees(math.atan2(drop, run)) if abs(drop) > TOLERANCE_MM else 0.0
    if abs(slope) <= _LEVEL_DEGREES:
        slope = 0.0
    from_face = 90.0 - abs(slope) if top_before is None else max(0.0, -slope)
    return StrapLine(on_piece, before, run, slope, from_face)


def sloping_lever(on_piece: float, arm: float, slope_degrees: float) -> float:
    """How far the line of a strap passes from the tipping edge, mm; 0 where it can't help. (14)

    ``arm`` is how far the place where it pulls lies behind the edge; it falls towards the wall at an angle
    (below 0: rises).
    """
    force = restraint_force(-1.0, on_piece, arm, slope_degrees)
    return 1.0 / force if math.isfinite(force) and force > 0 else 0.0


def pulled_and_sheared(withdrawal: float, shear: float, from_face: float) -> float:
    """What a screw holds along a line at an angle to the face that it stands in, N; 90 pulls it straight.

    Source: NDS 12.4.1 (Hankinson form). Never more than either alone allows, which that formula would.
    """
    if from_face >= STRAIGHT_DEGREES:
        return withdrawal
    if from_face <= _LEVEL_DEGREES:
        return shear
    angle = math.radians(from_face)
    both = pull_and_shear("screw", withdrawal, shear, from_face)
    return min(both, shear / math.cos(angle), withdrawal / math.sin(angle))


def under_a_strap(screw: gauges.Screw, bite: float, gravity: float, gap: float = 0.0) -> float:
    """The design shear Z of a screw through the steel end of a strap, N: NDS 12.3 and, across a gap, TR-12.

    ``bite`` is its length in the wood, point included; ``gap`` what lies between and bears nothing. Small
    screws feel no grain; of large ones the weaker way counts.
    """
    main = bearing_in_main(bite, screw.tip)
    if main <= TOLERANCE_MM:
        return 0.0
    large = screw.diameter >= LARGE_DIAMETER
    return shear_value(
        Joint(
            diameter=screw.root if screw.root is not None else screw.diameter * joint_factor("metric-root"),
            nominal_diameter=screw.diameter,
            main_length=main,
            side_length=usual_value("strap-thickness"),
            main_strength=dowel_bearing_strength(gravity, screw.diameter, 90.0),
            side_strength=joint_factor("strap-bearing"),
            bending_yield=bending_yield_strength(screw.diameter),
            angle=90.0 if large else 0.0,
            gap=gap,
        )
    ).force


def pulled_from(
    screw: gauges.Screw, length: float, covered: float, deep: float, gravity: float
) -> tuple[float, float]:
    """The thread of a strap's screw in a part, mm, and what it holds pulled straight out of side grain, N.

    The strap and thin wood under it take length away; thread past the far face holds nothing. NDS 12.2-2.
    """
    thread = grip(length, screw.thread(length), usual_value("strap-thickness") + covered, deep)
    return thread, withdrawal_per_mm("wood screw", gravity, screw.diameter) * thread


def piece_end(
    review: Review,
    restraint: Restraint,
    screw: gauges.Screw,
    solids: Sequence[Solid],
    axis: int,
    line: StrapLine,
    covered: float,
    choose: bool,
) -> PieceEnd | None:
    """What a strap's screws hold in one of some parts; None where it is fixed to none.

    ``choose``: the plan names none of them, so the maker takes the one that holds best; else the one that
    holds least counts. ``axis`` is the one along the wall's normal, ``covered`` what thin wood lies under
    the strap before the part: it takes length away and holds nothing.
    """
    length = restraint.piece_length
    if not solids or length is None:
        return None
    into = int(Axis.UP) if restraint.on_top else axis
    under = usual_value("strap-thickness") + covered
    ends = [_in_part(review, restraint, screw, length, solid, into, under, covered, line) for solid in solids]
    way = -1 if choose else 1
    return min(ends, key=lambda end: (way * round(end.holds, 3), end.part))


def _in_part(
    review: Review,
    restraint: Restraint,
    screw: gauges.Screw,
    length: float,
    solid: Solid,
    into: int,
    under: float,
    covered: float,
    line: StrapLine,
) -> PieceEnd:
    deep, surface = solid.through(into), solid.surface(into)
    wood, gravity = review.material_of(solid.name), gravity_of(review.stock_of(solid.name).material)
    thread, withdrawal = pulled_from(screw, length, covered, deep, gravity.value)
    shear = under_a_strap(screw, min(length - under, deep), gravity.value, covered)
    certain = wood.moves and gravity.standing in ("read", "read in part", "derived") and not covered
    if surface == "end" and wood.moves:
        # The NDS lets no wood screw be pulled out of end grain (chapter 12, wood screws in withdrawal).
        withdrawal, shear = 0.0, shear * END_GRAIN_SHEAR
    elif not wood.moves and surface != "face":
        withdrawal *= joint_factor("panel-edge")
        shear *= END_GRAIN_SHEAR
    holds = pulled_and_sheared(withdrawal, shear, line.from_face) * restraint.piece_screws
    return PieceEnd(
        solid.name,
        surface,
        wood.moves,
        gravity.value,
        gravity.source,
        deep,
        covered,
        thread,
        deep - (length - under),
        withdrawal,
        shear,
        holds,
        certain and line.from_face >= STRAIGHT_DEGREES,
    )
