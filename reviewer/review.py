"""A review in hand: the plan, the piece in space, and everything worked out from them, once, on demand.

Rules and reports read this and nothing else. Each ``cached_property`` is a stage of the road that
costs nothing until something asks for it.
"""

from __future__ import annotations

from dataclasses import replace
from functools import cached_property
from typing import TYPE_CHECKING, Literal

from reviewer.language.source import Source, Span
from reviewer.limits import Limit, Limits
from reviewer.model.plan import GROUNDS, AreaKind, Cord, Heater, Load, Moving, OnWall, Plan, Stock, WallArea
from reviewer.records import dataclass
from reviewer.setting_out.result import SettingOut
from reviewer.units import UnitSystem

if TYPE_CHECKING:
    from reviewer.mechanics.mass import Mass
    from reviewer.reference.materials import Material
    from reviewer.setting_out.moving import Moved
    from reviewer.workshop.assumptions import Assumption
    from reviewer.workshop.carrying import Carrying
    from reviewer.workshop.closing_gaps import RowGap
    from reviewer.workshop.coating import Schedule
    from reviewer.workshop.driving import Driven
    from reviewer.workshop.finish_surfaces import SurfaceSchedule
    from reviewer.workshop.fixing import Held
    from reviewer.workshop.framed_panels import FramedPanel
    from reviewer.workshop.hanging import Hanging
    from reviewer.workshop.holding import Holding
    from reviewer.workshop.joint_capacity import JointLoad
    from reviewer.workshop.loading import Declared, OnSpot
    from reviewer.workshop.locking import Locked
    from reviewer.workshop.placed import Placed
    from reviewer.workshop.reaching import JoiningDoubts
    from reviewer.workshop.restraining import Restrained
    from reviewer.workshop.splitting import Close
    from reviewer.workshop.standing import Piece
    from reviewer.workshop.stranding import Island
    from reviewer.workshop.swaying import NotJudged, Swaying
    from reviewer.workshop.sweeps import Near
    from reviewer.workshop.swings import Swings
    from reviewer.workshop.tipping_states import Tipping
    from reviewer.workshop.unjoined import Unjoined
    from reviewer.workshop.utilisation import Utilisation


@dataclass(frozen=True, eq=False)
class Review:
    """One plan under review. Frozen: a rule can read, never write."""

    source: Source
    plan: Plan
    setting: SettingOut
    limits: Limits
    waivers_used: frozenset[int] = frozenset()  # by place in the plan; known to rules that judge last
    rules_ran: tuple[str, ...] = ()
    resized: bool = False  # whether some measures are set in place of the plan's own

    @property
    def units(self) -> UnitSystem:
        return self.plan.units

    def limit(self, name: str) -> Limit:
        """A limit in force here: the plan's own word, else the folder's settings, else the default."""
        return self.limits[name]

    def span_of(self, part: str) -> Span:
        """Where a part was declared; the title line for the floor, the wall and the whole piece."""
        found = self.plan.parts.get(part)
        return found.span if found else self.plan.span

    def stock_of(self, part: str) -> Stock:
        """The stock that a part is cut from."""
        return self.plan.stocks[self.plan.parts[part].stock]

    def material_of(self, part: str) -> Material:
        """The wood or panel that a part is made of, with its figures."""
        found = self._materials.get(part)
        if found is None:
            from reviewer.reference.materials import material

            found = self._materials[part] = material(self.stock_of(part).material)
        return found

    @cached_property
    def _materials(self) -> dict[str, Material]:
        return {}

    @cached_property
    def loads_by_part(self) -> dict[str, tuple[Load, ...]]:
        """The declared loads of every part that has some, in the plan's order."""
        found: dict[str, list[Load]] = {}
        for load in self.plan.loads:
            for name in load.on:
                found.setdefault(name, []).append(load)
        return {name: tuple(loads) for name, loads in found.items()}

    @cached_property
    def declared(self) -> dict[str, list[Declared]]:
        """What the plan's loads come to on each part."""
        from reviewer.workshop.loading import loads_on

        return loads_on(self.plan, self.setting)

    @cached_property
    def resting(self) -> tuple[dict[str, float], dict[str, list[OnSpot]]]:
        """What stays all over each part (N), and what stays on one spot of it."""
        from reviewer.workshop.loading import resting

        return resting(self.declared, self.setting)

    @cached_property
    def pieces(self) -> tuple[Piece, ...]:
        """The pieces of furniture in the plan, each with its feet, its mass and its use."""
        from reviewer.workshop.standing import pieces

        return pieces(self.plan, self.setting, self.masses, self.hanging.hung if self.hanging else ())

    @cached_property
    def tipping(self) -> tuple[Tipping, ...]:
        """Every piece that stands on the floor, in each state that can tip it."""
        from reviewer.workshop.tipping_states import tipping

        return tipping(self)

    @cached_property
    def restrained(self) -> tuple[Restrained, ...]:
        """Every standing piece that the plan ties to a wall, with what comes on its restraints."""
        from reviewer.workshop.restraining import restrained

        return tuple(restrained(self))

    @cached_property
    def masses(self) -> dict[str, Mass]:
        """Every part's mass at its centre."""
        from reviewer.workshop.weights import part_masses

        return part_masses(self.plan, self.setting)

    @cached_property
    def holding(self) -> Holding:
        """What holds up what."""
        from reviewer.workshop.holding import holding

        return holding(self.setting, self.hanging.hung if self.hanging else ())

    @cached_property
    def hanging(self) -> Hanging | None:
        """What hardware holds, and what it does not reach; None in a plan without a fit."""
        if not self.plan.fits:
            return None
        from reviewer.workshop.hanging import hanging

        return hanging(self.plan, self.setting, self.limits)

    @cached_property
    def stranded(self) -> frozenset[str]:
        """The parts whose load no way leads down from, what floats among them."""
        from reviewer.workshop.holding import may_let_go

        if not any(may_let_go(join) for join in self.plan.joins):
            return frozenset(self.holding.floating)
        from reviewer.workshop.stranding import stranded

        return stranded(self.setting, self.hanging.hung if self.hanging else ())

    @cached_property
    def islands(self) -> list[Island]:
        """The stranded parts, those that hang together as one."""
        if not self.stranded:
            return []
        from reviewer.workshop.stranding import islands

        return islands(self.setting, self.hanging.hung if self.hanging else (), self.stranded)

    @cached_property
    def told_by_place(self) -> frozenset[str]:
        """Stranded parts whose place, joint or hardware is at fault, which is told by itself."""
        from reviewer.workshop.stranding import told_by_place

        found = told_by_place(self.setting, self.stranded)
        for moving in self.unhung:
            found.update(moving.parts)
        if self.hanging is not None:
            for missed in self.hanging.missed:
                found.update(missed.unit)
        return frozenset(found)

    @cached_property
    def unhung(self) -> tuple[Moving, ...]:
        """What moves in use with nothing that holds it and no hardware."""
        if not self.plan.movings or not self.holding.floating:
            return ()
        from reviewer.workshop.hanging import unhung

        return unhung(self.plan, frozenset(self.holding.floating))

    @cached_property
    def unjoined(self) -> tuple[Unjoined, ...]:
        """Parts that stand beside others and that nothing ties to them, in a plan that has joints."""
        named = {name for joint in self.setting.joints for name in (joint.left, joint.right)}
        if not named or named.issuperset(self.setting.solids):
            return ()
        from reviewer.workshop.unjoined import unjoined

        return tuple(unjoined(self))

    @cached_property
    def moved(self) -> tuple[Moved, ...]:
        """Every door, lid and drawer fully open, and the room that it sweeps."""
        if not self.plan.movings:
            return ()
        from reviewer.setting_out.moving import moved

        return moved(self.plan, self.setting)

    @cached_property
    def locks(self) -> dict[str, int]:
        """By the name of what opens, the number of the fit whose interlock lets one open at a time."""
        return {name: number for number, fit in enumerate(self.plan.fits) for name in fit.locked}

    @cached_property
    def swings(self) -> Swings:
        """What stands in the way of doors, lids and drawers."""
        from reviewer.workshop.swings import swings

        slack, skirting = self.limit("cut-difference").amount, self.limit("skirting-thickness").amount
        return swings(self, slack, skirting)

    @property
    def way_in(self) -> tuple[str, ...]:
        """What the plan says of the way into the room and of its height, by the clauses' own words."""
        room = self.plan.room
        said = ("doorway", "ceiling", "stairs", "landing")
        return tuple(word for word in said if word in room.said) if room else ()

    @property
    def sockets(self) -> tuple[tuple[Literal["outlet", "switch"], OnWall], ...]:
        """The outlets and switches on the room's wall."""
        room = self.plan.room
        if room is None:
            return ()
        found: list[tuple[Literal["outlet", "switch"], OnWall]] = []
        found += [("outlet", place) for place in room.outlets]
        found += [("switch", place) for place in room.switches]
        return tuple(found)

    @property
    def heat(self) -> tuple[Heater | float, ...]:
        """What is hot in the room: heaters and the like, and the top of a firebox, mm."""
        room = self.plan.room
        if room is None:
            return ()
        return room.heaters if room.firebox is None else (*room.heaters, room.firebox)

    def wall_areas(self, kind: AreaKind) -> tuple[WallArea, ...]:
        """The windows, vents or panels on the room's wall behind."""
        room = self.plan.room
        return tuple(each for each in room.wall_areas if each.kind == kind) if room else ()

    @property
    def escape_windows(self) -> tuple[WallArea, ...]:
        """The windows that people are to get out by."""
        return self.wall_areas("escape window")

    @property
    def windows(self) -> tuple[WallArea, ...]:
        """All other windows."""
        return self.wall_areas("window")

    @property
    def vents(self) -> tuple[WallArea, ...]:
        """The grilles that air comes or goes by."""
        return self.wall_areas("vent")

    @property
    def electrical_panels(self) -> tuple[WallArea, ...]:
        """The panels with the breakers of the house."""
        return self.wall_areas("panel")

    @property
    def alarms(self) -> tuple[OnWall, ...]:
        """The smoke alarms on the wall."""
        return self.plan.room.alarms if self.plan.room else ()

    @property
    def cords(self) -> tuple[Cord, ...]:
        """The cords of lamps and the like."""
        return self.plan.room.cords if self.plan.room else ()

    @property
    def skirting(self) -> tuple[float, float | None] | None:
        """How tall the room's skirting is and, where the plan says, how deep, mm."""
        return self.plan.room.skirting if self.plan.room else None

    @cached_property
    def moves_with(self) -> dict[str, str]:
        """By part, the name of what it moves with: the outermost of doors, drawers and the like."""
        found: dict[str, str] = {}
        for moving in self.plan.movings:
            for part in moving.parts:
                found.setdefault(part, moving.name)
        return found

    @cached_property
    def carrying(self) -> Carrying:
        """How loads travel, with every spanning part as a beam."""
        from reviewer.workshop.carrying import carrying

        held = self.holding
        if self.stranded:
            from reviewer.workshop.stranding import kept_apart

            held = kept_apart(held, self.stranded)
        return carrying(self.plan, self.setting, held, self.masses, self.declared, lambda: self.driven)

    @cached_property
    def utilisations(self) -> tuple[Utilisation, ...]:
        """How far every part is used: bending, shear, bearing, buckling and sag against what it may."""
        from reviewer.workshop.utilisation import utilisations

        return utilisations(self)

    @cached_property
    def used_by_part(self) -> dict[str, tuple[Utilisation, ...]]:
        """The same by part."""
        found: dict[str, list[Utilisation]] = {}
        for each in self.utilisations:
            found.setdefault(each.part, []).append(each)
        return {part: tuple(uses) for part, uses in found.items()}

    @cached_property
    def joint_loads(self) -> tuple[JointLoad, ...]:
        """What the load path brings to every joint, and how far what holds it is used."""
        from reviewer.workshop.joint_capacity import joint_loads

        return joint_loads(self)

    @cached_property
    def swaying(self) -> list[Swaying | NotJudged]:
        """Every piece that a push at its top moves further than the limits allow."""
        from reviewer.workshop.swaying import swaying

        return swaying(self)

    @cached_property
    def driven(self) -> tuple[Driven, ...]:
        """Every joint's driven fasteners: which part holds head and point, and the wood in the way."""
        if not any(join.fastenings for join in self.plan.joins):
            return ()
        from reviewer.workshop.driving import driven_fasteners

        return driven_fasteners(self.setting, self.placed)

    @cached_property
    def placed(self) -> tuple[Placed, ...]:
        """Every fastener in space, in the order of the plan's joins; see ``fastener_places``."""
        if not any(join.fastenings for join in self.plan.joins):
            return ()
        from reviewer.workshop.fastener_places import fastener_places

        return fastener_places(self.setting)

    @cached_property
    def split_risks(self) -> tuple[Close, ...]:
        """Fasteners too near to an end or an edge, or to the next of their row, in the order of the plan."""
        from reviewer.workshop.splitting import Splitting

        return tuple(Splitting(self).close())

    @cached_property
    def near(self) -> Near:
        """Finds the parts that come into some room."""
        from reviewer.workshop.sweeps import Near

        return Near([solid for name, solid in self.setting.solids.items() if name not in GROUNDS])

    @cached_property
    def joining_doubts(self) -> JoiningDoubts:
        """The joints that meet, and which of them need an order of work so that a driver gets in."""
        from reviewer.workshop.reaching import joining_doubts

        return joining_doubts(self)

    @cached_property
    def placed_by_joint(self) -> dict[tuple[str, str, Span], tuple[Placed, ...]]:
        """The same by joint: both parts in the order of the join, and where the join stands in the plan."""
        found: dict[tuple[str, str, Span], list[Placed]] = {}
        for placed in self.placed:
            joint = placed.joint
            found.setdefault((joint.left, joint.right, joint.join.span), []).append(placed)
        return {key: tuple(each) for key, each in found.items()}

    @cached_property
    def closing_rows(self) -> tuple[RowGap, ...]:
        """The gaps between boards of a row that they may fill in the humid season."""
        from reviewer.workshop.closing_gaps import closing_rows

        return closing_rows(self.plan, self.setting, self.limits)

    @cached_property
    def held_boards(self) -> tuple[Held, ...]:
        """Solid boards and glued-up panels with all that holds them across their grain."""
        from reviewer.workshop.fixing import held_boards

        narrow = self.limit("cross-grain-glue-width").amount
        return tuple(held_boards(self.plan, self.setting, narrow))

    @cached_property
    def locked_boards(self) -> tuple[Locked, ...]:
        """Those of them that are held too hard for the swing of the year."""
        from reviewer.workshop.locking import locked_over_the_year
        from reviewer.workshop.wood_movement import season

        year = season(self.plan, self.limits)
        return locked_over_the_year(self.plan, self.held_boards, self.framed_panels, self.limits, year)

    @cached_property
    def framed_panels(self) -> tuple[FramedPanel, ...]:
        """Solid panels that grooves hold across their grain."""
        from reviewer.workshop.framed_panels import framed_panels

        return framed_panels(self.plan, self.setting)

    @cached_property
    def finished_alike(self) -> tuple[Schedule, ...]:
        """Every set of parts, or of faces of them, that gets the same coats on a like surface."""
        if not self.plan.finishes:
            return ()
        from reviewer.workshop.finish_surfaces import schedules

        return schedules(self.plan, self.setting)

    @cached_property
    def schedules(self) -> tuple[SurfaceSchedule, ...]:
        """Every finished face of every part, with its area and all that goes on it."""
        if not self.plan.finishes:
            return ()
        from reviewer.workshop.finish_surfaces import surface_schedules

        return surface_schedules(self.plan, self.setting, self.finished_alike)

    @cached_property
    def assumptions(self) -> tuple[Assumption, ...]:
        """What the plan leaves unsaid and the review takes for granted, each with its source."""
        from reviewer.workshop.assuming import assumptions

        return assumptions(self)

    def with_waivers_used(self, used: frozenset[int], ran: tuple[str, ...]) -> Review:
        """The same review for the rules that judge last: which waivers matched, which rules ran."""
        return replace(self, waivers_used=used, rules_ran=ran)
