"""Pieces that hang on the wall: what pulls and shears each of the screws that they hang by.

The piece is stiff and turns about the lowest line on which it bears on the wall, so that the pull on a screw
goes with its height above that line (13); all screws share what comes down. Off the middle of the screws a
load comes more on those at its side. Where the plan says how far the studs are apart, only screws that can
meet one hold anything; where it says where they lie, only those that do. Forces N, moments N·mm, lengths mm.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING, Literal, NamedTuple

from reviewer.mechanics.fasteners import pull_and_shear
from reviewer.mechanics.wall_fixing import Row, TrueStuds, on_studs, on_true_studs, pulls, slid
from reviewer.model.plan import WALL, Axis, Fastening
from reviewer.reference.usual_values import usual_value
from reviewer.setting_out.result import Joint
from reviewer.units import TOLERANCE_MM
from reviewer.workshop.fastener_holds import FastenerHolds
from reviewer.workshop.holds import Holder
from reviewer.workshop.loading import Declared
from reviewer.workshop.placed import Placed
from reviewer.workshop.restraining import WallSide, wall_side
from reviewer.workshop.standing import Piece
from reviewer.workshop.wall_studs import true_studs

if TYPE_CHECKING:
    from reviewer.review import Review

#: A row runs along the wall when it is no further out of it than this (as a cosine).
_ALONG = 0.9


class Fixing(NamedTuple):
    """The fasteners of one kind of one joint into the wall, and what one of them holds."""

    joint: Joint
    fastening: Fastening
    head_part: str
    holder: Holder
    places: tuple[tuple[float, float], ...]  # along the wall and up, mm
    reach: (
        tuple[float, float] | None
    )  # where they may be moved along the wall; None: they stand at their places
    room: tuple[float, float] | None = None  # where along the wall the joint has room for them, mm
    slides: float = 0.0  # the spacing of a row that may be slid along its joint as a whole, mm; 0: none


class Point(NamedTuple):
    """One fastener in the wall: where it is, the stud that it meets (None: none), and what comes on it."""

    fixing: int
    along: float
    up: float
    meets: bool
    pull: float = 0.0
    shear: float = 0.0
    used: float = 0.0


class WallHung(NamedTuple):
    """A piece that hangs on the wall.

    ``weight`` is its own and all that the plan puts on it, ``out`` how far off the wall and ``along`` where
    along it that lies, ``bearing`` how high the line is that it turns about. ``studs`` is how many different
    studs its screws meet; None where the plan does not say how far they are apart. ``met`` are their middles
    where the plan says where they lie, mm.
    """

    piece: Piece
    wall: WallSide
    weight: float
    out: float
    along: float
    bearing: float
    fixings: tuple[Fixing, ...]
    points: tuple[Point, ...]
    studs: int | None
    met: tuple[float, ...] = ()

    @property
    def moment(self) -> float:
        """The moment that would turn it off the wall, N·mm."""
        return self.weight * self.out

    @property
    def worst(self) -> Point | None:
        """The screw that is used most, of those that hold something."""
        held = [point for point in self.points if point.meets]
        return max(held, key=lambda point: round(point.used, 6), default=None)

    @property
    def used(self) -> float:
        """How far the hardest used screw is used; 1 is all that it may bear."""
        return self.worst.used if self.worst is not None else math.inf

    @property
    def pull(self) -> float:
        """The pull on all its screws together, N."""
        return math.fsum(point.pull for point in self.points)

    @property
    def missed(self) -> int:
        """How many of its screws can't meet a stud."""
        return sum(1 for point in self.points if not point.meets)


class Trial(NamedTuple):
    """What is tried in place of the plan: other screws, into every stud, so many at each, bearing lower.

    Where it is known where the studs lie also the piece shifted along the wall, or a rail across some studs.
    """

    length: float = 0.0  # mm; 0: as they are
    gauge: str | None = None  # only screws of a gauge are changed
    every_stud: bool = False
    times: int = 1
    lower: float = 0.0  # mm
    shift: float = 0.0  # mm
    rail: tuple[float, ...] = ()  # the middles of the studs that it is screwed to


def hangs(piece: Piece) -> bool:
    """True for a piece that is joined to the wall and stands on nothing."""
    return piece.fixed and not piece.feet


def _masonry(piece: Piece) -> bool:
    return any(each.into == "masonry" for each in piece.restraints)


def wall_hung(review: Review) -> Iterator[WallHung]:
    """Every piece that hangs on a framed wall by fasteners of which values are known."""
    for piece in review.pieces:
        if hangs(piece) and not _masonry(piece):
            found = hung_piece(review, piece)
            if found is not None:
                yield found


def hung_piece(review: Review, piece: Piece, trial: Trial | None = None) -> WallHung | None:
    """One piece on the wall, or None where nothing is known of what it hangs by."""
    trial = trial or Trial()
    wall = wall_side(piece, review)
    if review.setting.wall is None:
        return None
    _, place = review.setting.wall
    weight, out, along, brief = _weight(review, piece, wall, place)
    fixings = _fixings(review, piece, wall, brief, trial)
    bearing = _bearing(review, piece)
    if not fixings or bearing is None or weight <= 0:
        return None
    known = true_studs(review)
    met: tuple[float, ...] = ()
    if known is None:
        points, studs = _on_studs(review, fixings, wall, trial, along)
    else:
        points, found_there = _on_true_studs(review, fixings, known.moved(-trial.shift), trial, along)
        met = tuple(stud + trial.shift for stud in found_there)
        studs = len(met)
    found = WallHung(piece, wall, weight, out, along, bearing - trial.lower, fixings, points, studs, met)
    return _loaded(found)


def _weight(review: Review, piece: Piece, wall: WallSide, place: float) -> tuple[float, float, float, bool]:
    """Its own weight and what is on it (N), how far off the wall and where along it (mm), and whether people
    and the like are most of it.
    """
    acts: list[tuple[float, float, float]] = []
    lasting = brief = 0.0
    for mass in piece.masses:
        at = (mass.x, mass.y)
        acts.append((mass.weight, at[wall.axis], at[wall.along]))
        lasting += mass.weight
    for name in piece.parts:
        for load in review.declared.get(name, ()):
            at = _spot(review, name, load)
            acts.append((load.lasting + load.brief, at[wall.axis], at[wall.along]))
            lasting, brief = lasting + load.lasting, brief + load.brief
    weight = math.fsum(force for force, _, _ in acts)
    if weight <= 0:
        return 0.0, 0.0, 0.0, False
    out = math.fsum(force * abs(place - at) for force, at, _ in acts) / weight
    along = math.fsum(force * at for force, _, at in acts) / weight
    return weight, out, along, brief > lasting


def _spot(review: Review, name: str, load: Declared) -> tuple[float, float]:
    solid = review.setting.solids[name]
    at = [solid.centre[0], solid.centre[1]]
    if load.spot is not None and load.spot[0] in (0, 1):
        at[load.spot[0]] = solid.low[load.spot[0]] + load.spot[1]
    return at[0], at[1]


def _bearing(review: Review, piece: Piece) -> float | None:
    """How high the lowest line is on which the piece bears on the wall, mm."""
    inside = set(piece.parts)
    return min(
        (
            contact.low[Axis.UP]
            for contact in review.setting.contacts_of(WALL)
            if contact.other(WALL) in inside
        ),
        default=None,
    )


def _fixings(review: Review, piece: Piece, wall: WallSide, brief: bool, trial: Trial) -> tuple[Fixing, ...]:
    holds = FastenerHolds(review)
    found = []
    for name in piece.parts:
        for joint in review.setting.joints_of.get(name, ()):
            if WALL not in (joint.left, joint.right):
                continue
            placed = review.placed_by_joint.get((joint.left, joint.right, joint.join.span), ())
            for fastening in joint.join.fastenings:
                these = [
                    each for each in placed if each.fastening is fastening or each.fastening == fastening
                ]
                if not these or these[0].point_part != WALL:
                    continue
                holder = holds.holder(joint, fastening, wall.axis, brief)
                changes = {"gauge": trial.gauge} if trial.gauge and fastening.gauge else None
                longer = max(trial.length, fastening.length or 0.0)
                if changes or longer > (fastening.length or 0.0):
                    holder = holds.retried(holder, joint, brief, length=longer, changes=changes) or holder
                if holder.shear is None or holder.pull is None:
                    continue
                found.append(_fixing(joint, fastening, these, holder, wall))
    return tuple(found)


def _fixing(
    joint: Joint, fastening: Fastening, placed: Sequence[Placed], holder: Holder, wall: WallSide
) -> Fixing:
    places = tuple((each.head[wall.along], each.head[Axis.UP]) for each in placed)
    reach = room = None
    slides = 0.0
    contact = joint.contact
    if contact is not None:
        low, high = contact.low[wall.along], contact.high[wall.along]
        inset = min(usual_value("first-from-end") * placed[0].diameter, (high - low) / 4)
        along = abs(placed[0].along[wall.along]) > _ALONG
        if along and fastening.spacing is not None and fastening.count is None:
            slides = fastening.spacing
            inset = min(fastening.from_end or inset, (high - low) / 2)
        room = (low + inset, high - inset)
        if along and fastening.spacing is None and fastening.from_end is None:
            reach = room
    return Fixing(joint, fastening, placed[0].head_part, holder, places, reach, room, slides)


def _on_studs(
    review: Review, fixings: Sequence[Fixing], wall: WallSide, trial: Trial, load: float
) -> tuple[tuple[Point, ...], int | None]:
    """Every fastener with whether it meets a stud; and how many studs are met, where that is known.

    ``load`` is where along the wall the weight lies.
    """
    spacing = review.plan.room.stud_spacing if review.plan.room is not None else None
    rows = []
    ups: list[tuple[float, ...]] = []
    for fixing in fixings:
        places, up, reach = [at for at, _ in fixing.places], [up for _, up in fixing.places], fixing.reach
        contact = fixing.joint.contact
        if trial.every_stud and spacing and contact is not None:
            low, high = contact.low[wall.along], contact.high[wall.along]
            if high - low > spacing:
                many = max(1, math.ceil((high - low) / spacing - 1e-9))
                places, up, reach = [places[0]] * many, [up[0]] * many, (low, high)
        rows.append(Row(tuple(places * trial.times), reach))
        ups.append(tuple(up * trial.times))
    if not spacing:
        points = tuple(
            Point(number, at, up, True)
            for number, (row, heights) in enumerate(zip(rows, ups, strict=True))
            for at, up in zip(row.places, heights, strict=True)
        )
        return points, None
    met = on_studs(rows, spacing, review.limit("stud-target").amount, load)
    found = tuple(
        Point(number, at if stud is None or row.reach is None else stud, up, stud is not None)
        for number, (row, studs, heights) in enumerate(zip(rows, met, ups, strict=True))
        for at, stud, up in zip(row.places, studs, heights, strict=True)
    )
    return found, len({stud for studs in met for stud in studs if stud is not None})


def _on_true_studs(
    review: Review, fixings: Sequence[Fixing], studs: TrueStuds, trial: Trial, load: float
) -> tuple[tuple[Point, ...], tuple[float, ...]]:
    """Every fastener with whether it meets a stud, and the studs that are met, where their places are known.

    What the plan gives its place stands there. Screws of no stated spacing go onto the studs, and a row of a
    stated spacing is slid so that most of them meet some, no nearer to the ends than the plan says.
    """
    off = review.limit("stud-target").amount
    highest = max(range(len(fixings)), key=lambda number: max(up for _, up in fixings[number].places))
    points: list[Point] = []
    met: set[float] = set()
    for number, fixing in enumerate(fixings):
        places, ups, reach = [at for at, _ in fixing.places], [up for _, up in fixing.places], fixing.reach
        room = fixing.room
        if trial.rail:
            if number != highest:
                continue
            reach = (trial.rail[0], trial.rail[-1])
            places, ups = list(trial.rail), [ups[0]] * len(trial.rail)
        elif trial.every_stud and room is not None:
            every = studs.between(room[0] - off, room[1] + off)
            if every:
                places, ups, reach = list(every), [ups[0]] * len(every), room
        elif fixing.slides and room is not None:
            row = slid(room, fixing.slides, studs, off, load)
            if row:
                places, ups = list(row), [ups[0]] * len(row)
        places, ups = places * trial.times, ups * trial.times
        (found,) = on_true_studs([Row(tuple(places), reach)], studs, off, load)
        for at, up, stud in zip(places, ups, found, strict=True):
            if stud is not None and reach is not None:
                at = min(max(stud, reach[0]), reach[1])
            points.append(Point(number, at, up, stud is not None))
        met.update(stud for stud in found if stud is not None)
    return tuple(points), tuple(sorted(met))


def _loaded(hung: WallHung) -> WallHung:
    """The same with what comes on each of its fasteners."""
    held = [point for point in hung.points if point.meets]
    if not held:
        return hung
    heights = [point.up - hung.bearing for point in held]
    drawn = pulls(hung.moment, heights)
    shares = _shares([point.along for point in held], hung.along)
    loaded = []
    for point, pull, share in zip(held, drawn, shares, strict=True):
        holder = hung.fixings[point.fixing].holder
        shear = hung.weight / len(held) * share
        pulled = pull * share
        loaded.append(point._replace(pull=pulled, shear=shear, used=_used(holder, pulled, shear)))
    found = iter(loaded)
    return hung._replace(points=tuple(next(found) if point.meets else point for point in hung.points))


def _shares(places: Sequence[float], at: float) -> list[float]:
    """How much more than the mean comes on each of some fasteners, when the load is at a place along them."""
    middle = math.fsum(places) / len(places)
    squares = math.fsum((place - middle) ** 2 for place in places)
    if squares <= TOLERANCE_MM**2:
        return [1.0] * len(places)
    return [max(0.0, 1 + len(places) * (at - middle) * (place - middle) / squares) for place in places]


def _used(holder: Holder, pull: float, shear: float) -> float:
    """The share of what a fastener may bear that a pull and a shear take together: NDS 12.4.

    Never less than either of them alone takes, which that formula would allow.
    """
    assert holder.pull is not None
    assert holder.shear is not None
    together = math.hypot(pull, shear)
    may_pull, may_shear = holder.pull.force, holder.shear.force
    if not math.isfinite(together) or may_pull <= 0 or may_shear <= 0:
        return math.inf if together > 0 else 0.0
    angle = math.degrees(math.atan2(pull, shear))
    kind: Literal["nail", "screw"] = "nail" if holder.kind == "nails" else "screw"
    both = together / pull_and_shear(kind, may_pull, may_shear, angle)
    return max(both, pull / may_pull, shear / may_shear)
