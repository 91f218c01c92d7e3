"""How loads travel: every part with what it carries, what holds it, and (where it spans) its beam.

Loads come down from the top: a part's own weight, its declared loads and the reactions of whatever
it holds up go to its own supports by statics. A part that runs level is a continuous beam on the
supports that it really has; an upright one passes its load straight down.

Two beams that lie along each other bend as one and share the load by their stiffness, as a shelf and
the strip along its edge do; they count side by side, not as one glued section.

A part that leans or slants is no beam by its bounds: it hands its load straight on, and nothing is said
of how it bends (``slanting``).

Left out here: twisting of a part held along one edge only, and shares of load that a stiffer
neighbour draws to itself across several boards.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from typing import TYPE_CHECKING

from reviewer.mechanics.beam import BeamResult, Unstable, second_moment
from reviewer.mechanics.mass import Mass
from reviewer.model.plan import FLOOR, GROUNDS, Axis, Plan, Stock
from reviewer.records import NamedTuple, dataclass
from reviewer.reference.materials import Material, material
from reviewer.setting_out.result import SettingOut
from reviewer.setting_out.solid import Solid, Vector
from reviewer.units import TOLERANCE_MM
from reviewer.workshop.bearing import BEARING_STEP_MM, Bearing, bearings_of, knife_edges, span_axis
from reviewer.workshop.bending import (
    Along,
    Beam,
    Stood,
    at_reactions,
    rounded,
    rounded_place,
    rounded_size,
    rounded_spread,
    stood,
)
from reviewer.workshop.holding import Held, Holding
from reviewer.workshop.loading import Carried, Declared, Spread, placed
from reviewer.workshop.member import Beside, Member

if TYPE_CHECKING:
    from reviewer.workshop.driving import Driven
    from reviewer.workshop.end_cuts import EndCut
    from reviewer.workshop.net_sections import NetSection, Room

#: Two beams that meet over this share of the one bend together.
_ALONG = 0.5


class Handed(NamedTuple):
    """What a part hands on to one of its supports, N downwards: what stays, and what does not."""

    to: Held
    lasting: float
    brief: float

    @property
    def force(self) -> float:
        return self.lasting + self.brief


@dataclass(frozen=True)
class Carrying:
    """Members by part, the force (N) that reaches each ground, and the load declared on each part (N).

    ``handed`` has what each part hands on to each of its supports. ``slanting`` are the parts that would span
    but lean or slant, and so are not reckoned as beams.
    """

    members: dict[str, Member]
    on_floor: float
    on_wall: float
    declared: dict[str, float]
    lost: dict[str, float]  # N that a part holds with nothing to hand it on to
    handed: dict[str, tuple[Handed, ...]]
    slanting: tuple[str, ...] = ()


def creep_factor(wood: Material, plan: Plan) -> tuple[float, str]:
    """The growth of a lasting sag over the years where the piece stands, and its source."""
    room = plan.room
    if room is None or (not room.outdoors and room.heated):
        return wood.creep_indoors, wood.creep_source
    factor = wood.creep_exposed if room.outdoors else wood.creep_covered
    return factor if factor is not None else wood.creep_indoors, wood.creep_source


def stiffness(stock: Stock, along: bool = True) -> tuple[float, str]:
    """The modulus of elasticity of a stock (MPa, mean) and its source; of its grade where one is stated.

    ``along`` is true where it bends along its grain; across it only sheets have a figure.
    """
    wood = material(stock.material)
    if not along and wood.modulus_across is not None:
        return wood.modulus_across, wood.source
    if stock.grade is not None and wood.kind == "species":
        from reviewer.reference.grades import grade_of, strength_class

        known = strength_class(stock.grade)
        if known is not None:
            return known.modulus, known.source
        graded = grade_of(stock.material, stock.grade)
        if graded:
            least = min(graded, key=lambda row: row.modulus)
            return least.modulus, least.source
    return wood.modulus_of_elasticity, wood.source


# ---------------------------------------------------------------- the way down


class _Arriving(NamedTuple):
    """A reaction that a part takes from what it holds up, at a place in space."""

    at: tuple[float, ...]
    lasting: float
    brief: float


class _Carrier:
    def __init__(
        self,
        plan: Plan,
        setting: SettingOut,
        held: Holding,
        masses: dict[str, Mass],
        declared: dict[str, list[Declared]],
        driven: Callable[[], tuple[Driven, ...]],
    ) -> None:
        self.plan = plan
        self.driven = driven
        self.setting = setting
        self.held = held
        self.masses = masses
        self.declared = declared
        self.arriving: dict[str, list[_Arriving]] = {}
        self.members: dict[str, Member] = {}
        self.beams: dict[tuple[Beam, float, Along], tuple[int, Stood]] = {}  # copies bend alike; numbered
        self.weakened: dict[object, tuple[float, BeamResult | Unstable]] = {}  # likewise, by what is cut
        self.bends: dict[str, bool] = {}
        self.stiffened: dict[str, float] = {}  # N·mm² of what is fixed along a part and rides on it
        self.grounds = dict.fromkeys(GROUNDS, 0.0)
        self.lost: dict[str, float] = {}
        self.handed: dict[str, dict[Held, Handed]] = {}
        self.slanting: list[str] = []
        self.rooms: dict[str, tuple[Room, ...]] | None = None  # known once a part asks for them
        self.nets: dict[object, tuple[NetSection, ...]] = {}  # copies of a board are cut alike
        self.pocket_joins = any(
            each.kind == "pocket screws" for join in plan.joins for each in join.fastenings
        )
        self.pockets: dict[str, list[Driven]] | None = None  # by the part that they are bored in; likewise

    def carry(self) -> Carrying:
        for name in self.held.order:
            self._part(name)
        declared = {
            name: math.fsum(each.lasting + each.brief for each in loads)
            for name, loads in self.declared.items()
        }
        handed = {name: tuple(found.values()) for name, found in self.handed.items()}
        grounds = self.grounds["floor"], self.grounds["wall"]
        return Carrying(self.members, *grounds, declared, self.lost, handed, tuple(self.slanting))

    def _hand_on(self, name: str, support: Held, at: tuple[float, ...], lasting: float, brief: float) -> None:
        found = self.handed.setdefault(name, {})
        before = found.get(support)
        if before is None:
            found[support] = Handed(support, lasting, brief)
        else:
            found[support] = Handed(support, before.lasting + lasting, before.brief + brief)
        if support.by in GROUNDS:
            self.grounds[support.by] += lasting + brief
        else:
            self.arriving.setdefault(support.by, []).append(_Arriving(at, lasting, brief))

    def _part(self, name: str) -> None:
        supports = self.held.supports.get(name, ())
        declared = self.declared.get(name, [])
        arriving = self.arriving.pop(name, [])
        # What it must hand on in all.
        lasting = self.masses[name].weight + math.fsum(each.lasting for each in declared)
        lasting += math.fsum(each.lasting for each in arriving)
        brief = math.fsum(each.brief for each in declared) + math.fsum(each.brief for each in arriving)
        if not supports:
            self.lost[name] = lasting + brief
            return
        member = self._member(name, supports, declared, arriving)
        if member is not None:
            self.members[name] = member
            if isinstance(member.standing, BeamResult):
                share = lasting / (lasting + brief) if lasting + brief else 1.0
                self._reactions(member, member.standing, share)
                self._share_out(member)
                return
        # An upright part, or one that would tip: what it rests on shares the load evenly.
        under = [support for support in supports if support.how == "rests"] or list(supports)
        for support in under:
            self._hand_on(name, support, support.middle, lasting / len(under), brief / len(under))

    def _member(
        self,
        name: str,
        supports: tuple[Held, ...],
        declared: list[Declared],
        arriving: list[_Arriving],
    ) -> Member | None:
        solid = self.setting.solids[name]
        wood = material(self.plan.stocks[self.plan.parts[name].stock].material)
        axis = span_axis(solid, supports, wood.modulus_across is not None)
        if axis is None:
            return None
        if not solid.square:
            self.slanting.append(name)
            return None
        bearings = bearings_of(solid, axis, supports)
        length = rounded_place(solid.extent(axis))
        if any(each.held.by == FLOOR and each.length >= length - TOLERANCE_MM for each in bearings):
            return None  # it lies on the floor
        beside = tuple(
            Beside(each, self._stiffness(each.held.by, axis))
            for each in bearings
            if each.length >= length * _ALONG and self._bends_too(each.held.by, axis)
        )
        lines = {each.bearing for each in beside}
        rest = [each for each in bearings if each not in lines]
        half = length / 2
        carries = any(each.end < half for each in rest) and any(each.start > half for each in rest)
        if beside and carries:
            member = self._beam(name, axis, rest, declared, arriving, beside)
            if isinstance(member.standing, BeamResult):
                return member
        for each in beside:
            if each.bearing.held.joined:  # it rides on that beam, and stiffens it
                riders = self.stiffened.get(each.bearing.held.by, 0.0)
                own = self._stiffness(name, axis) + self.stiffened.get(name, 0.0)
                self.stiffened[each.bearing.held.by] = riders + own / len(beside)
        return self._beam(name, axis, bearings, declared, arriving, ())

    def _stiffness(self, name: str, axis: int) -> float:
        """The bending stiffness of a part by itself, N·mm²."""
        solid = self.setting.solids[name]
        modulus, _ = stiffness(self.plan.stocks[self.plan.parts[name].stock], axis == solid.long)
        return modulus * second_moment(solid.extent(3 - axis - Axis.UP), solid.extent(Axis.UP))

    def _bends_too(self, name: str, axis: int) -> bool:
        """True for a level beam along an axis that does not itself lie on something all along."""
        if name in GROUNDS or self.setting.solids[name].long != axis or not self.setting.solids[name].square:
            return False
        if name not in self.bends:
            solid = self.setting.solids[name]
            held = bearings_of(solid, axis, self.held.supports.get(name, ()))
            self.bends[name] = math.fsum(each.length for each in held) < solid.extent(axis) * _ALONG
        return self.bends[name]

    def _beam(
        self,
        name: str,
        axis: int,
        bearings: list[Bearing],
        declared: list[Declared],
        arriving: list[_Arriving],
        beside: tuple[Beside, ...],
    ) -> Member:
        solid = self.setting.solids[name]
        stock = self.plan.stocks[self.plan.parts[name].stock]
        length, start = rounded_place(solid.extent(axis)), solid.low[axis]
        places = knife_edges(bearings)
        clamped = len(bearings) == 1 and bearings[0].held.housed
        if clamped:
            places = [((bearings[0].start + bearings[0].end) / 2, bearings[0].held)]
        over_all, spreads, points = placed(declared, [at for at, _ in places], length, axis)
        own = rounded_size(self.masses[name].weight / length)
        arrived = [
            rounded(Carried(min(max(each.at[axis] - start, 0.0), length), each.lasting, each.brief))
            for each in arriving
        ]
        modulus, _ = stiffness(stock, axis == solid.long)
        width, height = solid.extent(3 - axis - Axis.UP), solid.extent(Axis.UP)
        inertia = second_moment(width, height)
        stiffened = self.stiffened.get(name, 0.0)
        creep, _ = creep_factor(material(stock.material), self.plan)
        alone = modulus * inertia + stiffened
        together = alone + math.fsum(each.stiffness for each in beside)
        beam = Beam(
            length,
            rounded_size(together),
            (rounded_size(own + over_all[0]), rounded_size(over_all[1])),
            tuple(rounded_spread(each) for each in spreads),
            tuple(sorted((*map(rounded, points), *arrived))),
            creep,
            clamped,
        )
        along = tuple((rounded_place(at), support.joined) for at, support in places)
        share = rounded_size(alone / together)
        # A beam is long to hash, so it is looked up once and goes by its number from here on.
        alike = (beam, share, along)
        known = self.beams.get(alike)
        if known is None:
            known = self.beams[alike] = len(self.beams), stood(beam, share, along)
        number, (kept, standing, sag) = known
        rooms, at_ends = self._rooms(name, axis)
        sections, weakness = self._sections(name, axis, rooms), 1.0
        if sections and isinstance(standing, BeamResult):
            key = (number, sections, rounded_size(inertia), rounded_size(modulus))
            weak = self.weakened.get(key)
            if weak is None:
                held = [along[index][0] for index in kept]
                weak = self.weakened[key] = _weakened(beam, standing, sections, held, inertia, modulus)
            weakness, sag = weak
        places = [(along[index][0], places[index][1]) for index in kept]
        ends: tuple[EndCut, ...] = ()
        if at_ends or solid.body is not None or self._pocketed(name):
            from reviewer.workshop.end_cuts import end_cuts

            cut = self._sections(name, axis, [*rooms, *at_ends]) if at_ends else sections
            ends = end_cuts(solid, axis, bearings, [at for at, _ in places], cut, self._pockets(name))
        holding = {support for _, support in places} | {each.bearing.held for each in beside}
        bearings = sorted([*bearings, *(each.bearing for each in beside)], key=lambda each: each[:2])
        return Member(
            part=name,
            axis=axis,
            length=length,
            width=width,
            height=height,
            bearings=tuple(bearing for bearing in bearings if bearing.held in holding),
            supports=tuple(places),
            uniform=beam.uniform,
            own=own,
            spreads=beam.spreads,
            points=beam.points,
            declared=tuple(declared),
            arrived=tuple(arrived),
            modulus=modulus,
            second_moment=inertia,
            stiffened=stiffened,
            beside=beside,
            creep=creep,
            clamped=clamped,
            sag=sag,
            standing=standing,
            sections=sections,
            weakness=weakness,
            ends=ends,
        )

    def _rooms(self, name: str, axis: int) -> tuple[list[Room], list[Room]]:
        """What joints and pockets take out of a part along its span, and what they take at its ends."""
        solid, joints = self.setting.solids[name], self.setting.joints_of.get(name, ())
        along: list[Room] = []
        at_ends: list[Room] = []
        if any(each.join.housing is not None and each.overlap is not None for each in joints):
            from reviewer.workshop.net_sections import rooms_of

            if self.rooms is None:
                self.rooms = rooms_of(self.plan, self.setting)
            for room in self.rooms.get(name, ()):
                (at_ends if _at_one_end(solid, axis, room.low, room.high) else along).append(room)
        if self._pocketed(name):
            from reviewer.workshop.end_cuts import pockets_along

            along += pockets_along(solid, axis, self._pockets(name))
        return along, at_ends

    def _pocketed(self, name: str) -> bool:
        """True where pockets for screws may be bored in a part."""
        return self.pocket_joins and any(
            each.kind == "pocket screws"
            for joint in self.setting.joints_of.get(name, ())
            for each in joint.join.fastenings
        )

    def _pockets(self, name: str) -> list[Driven]:
        """The pocket screws whose pockets are bored in a part."""
        if not self._pocketed(name):
            return []
        if self.pockets is None:
            self.pockets = {}
            for each in self.driven():
                if each.pocket is not None:
                    self.pockets.setdefault(each.head_part, []).append(each)
        return self.pockets.get(name, [])

    def _sections(self, name: str, axis: int, rooms: list[Room]) -> tuple[NetSection, ...]:
        """Where cuts and joints leave less of a part than its bounds."""
        solid = self.setting.solids[name]
        if solid.body is None and not rooms:
            return ()
        from reviewer.workshop.net_sections import net_sections

        shape = self.plan.parts[name].shape
        apart = [
            tuple(
                round(at - low, 6)
                for end in (room.low, room.high)
                for at, low in zip(end, solid.low, strict=True)
            )
            for room in rooms
        ]
        sizes = tuple(round(solid.extent(each), 6) for each in range(3))
        key = (shape, axis, solid.long, solid.wide, sizes, tuple(apart), tuple(room.why for room in rooms))
        found = self.nets.get(key)
        if found is None:
            found = self.nets[key] = net_sections(solid, axis, rooms, shape)
        return found

    def _reactions(self, member: Member, standing: BeamResult, share: float) -> None:
        """Hand the beam's reactions on; the lasting share of them is taken alike at every support."""
        start = self.setting.solids[member.part].low[member.axis]
        forces = [0.0] * len(member.supports)
        for reaction, here in at_reactions(member.places, standing):
            for number in here:
                forces[number] = reaction / len(here)
        for (place, support), force in zip(member.supports, bedded(member, forces), strict=True):
            at = list(support.middle)
            at[member.axis] = start + place
            self._hand_on(member.part, support, tuple(at), force * share, force * (1 - share))

    def _share_out(self, member: Member) -> None:
        """Hand on what the beams beside a part carry of its load, where it lies on them."""
        start = self.setting.solids[member.part].low[member.axis]
        whole = math.fsum(each.stiffness for each in member.beside)
        for bearing, beam_stiffness in member.beside:
            part = (1 - member.share) * beam_stiffness / whole
            steps = max(1, math.ceil(bearing.length / BEARING_STEP_MM))
            loads = [*member.points]
            for low, high, slow, quick in (Spread(0.0, member.length, *member.uniform), *member.spreads):
                total = (high - low) / steps
                low, high = max(low, bearing.start), min(high, bearing.end)
                loads += [
                    Carried(low + (high - low) * (step + 0.5) / steps, slow * total, quick * total)
                    for step in range(steps)
                ]
            for place, slow, quick in loads:
                at = list(bearing.held.middle)
                at[member.axis] = start + min(max(place, bearing.start), bearing.end)
                self._hand_on(member.part, bearing.held, tuple(at), slow * part, quick * part)


def _weakened(
    beam: Beam,
    standing: BeamResult,
    sections: tuple[NetSection, ...],
    held: list[float],
    inertia: float,
    modulus: float,
) -> tuple[float, BeamResult | Unstable]:
    """How much farther a beam sags for what is cut out of it, and its state in the long run."""
    from reviewer.workshop.net_sections import sag_growth

    weakness = sag_growth(standing, sections, inertia)
    lost = modulus * inertia * (1 - 1 / weakness)
    weak = beam._replace(bending_stiffness=beam.bending_stiffness - lost)
    return weakness, weak.solved(held, beam.creep)


def bedded(member: Member, forces: list[float]) -> list[float]:
    """The forces on a member's supports (N), where short bearings that meet or overlap share them.

    As knife edges a hand's breadth apart they would pry against each other; in truth the board beds down on
    both, and a joint at its end has nothing to do where a cleat lies under it. What they bear together stays.
    """
    if min(forces, default=0.0) >= 0:
        return forces
    short = {each.held: each for each in member.bearings if each.length <= BEARING_STEP_MM}
    runs: list[list[int]] = []
    reach = -math.inf
    order = [number for number, (_, held) in enumerate(member.supports) if held in short]
    order.sort(key=lambda number: short[member.supports[number][1]].start)
    for number in order:
        bearing = short[member.supports[number][1]]
        if runs and bearing.start <= reach + TOLERANCE_MM:
            runs[-1].append(number)
        else:
            runs.append([number])
            reach = bearing.end
        reach = max(reach, bearing.end)
    shared = list(forces)
    for run in runs:
        parts = {member.supports[number][1] for number in run}
        if len(parts) > 1 and min(forces[number] for number in run) < 0:
            net = math.fsum(forces[number] for number in run)
            lengths = [short[member.supports[number][1]].length for number in run]
            whole = math.fsum(lengths)
            for number, length in zip(run, lengths, strict=True):
                shared[number] = net * (length / whole if whole > 0 else 1 / len(run))
    return shared


def _at_one_end(solid: Solid, axis: int, low: Vector, high: Vector) -> bool:
    """True where a space reaches one end of a part and not the other: there it lies on its support."""
    at_low = low[axis] <= solid.low[axis] + TOLERANCE_MM
    at_high = high[axis] >= solid.high[axis] - TOLERANCE_MM
    return at_low != at_high


def carrying(
    plan: Plan,
    setting: SettingOut,
    held: Holding,
    masses: dict[str, Mass],
    declared: dict[str, list[Declared]],
    driven: Callable[[], tuple[Driven, ...]],
) -> Carrying:
    """All loads of the piece brought down to floor and wall. ``driven`` gives its fasteners, when asked."""
    return _Carrier(plan, setting, held, masses, declared, driven).carry()
