"""Pieces as they stand: which parts make one piece, on which feet, and whether it stores things.

A plan may hold several pieces that do not touch; each tips by itself. Places are mm.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from functools import cached_property
from typing import TYPE_CHECKING

from reviewer.mechanics.mass import Mass, combined
from reviewer.mechanics.stability import Point, TippingEdge, support_polygon, tipping_edges
from reviewer.model.plan import FLOOR, GROUNDS, WALL, Axis, Load, Plan, Restraint
from reviewer.records import NamedTuple, dataclass
from reviewer.reference.usual_values import usual_value
from reviewer.setting_out.result import SettingOut
from reviewer.setting_out.solid import Solid, Vector

if TYPE_CHECKING:
    from reviewer.workshop.enclosed_volume import Room
    from reviewer.workshop.hanging import Hung

#: Uses that lie on a piece without being stored in it. Ornaments and plants stand on lamp tables too.
_NOT_STORED = frozenset({"ornaments", "plants", "lamp", "aquarium", "water", "stated"})
#: A case of this many levels is taken to store things even where the plan declares no load.
_LEVELS_OF_A_CASE = 3


class LoadHere(NamedTuple):
    """A declared load and the parts of one piece that it lies on."""

    load: Load
    parts: tuple[str, ...]


@dataclass(frozen=True)
class Piece:
    """Parts that touch one another, and how they stand together. ``feet`` are those on the floor."""

    parts: tuple[str, ...]
    feet: tuple[str, ...]
    polygon: tuple[Point, ...] | None  # the footprint, anticlockwise; None without one
    masses: tuple[Mass, ...]
    low: Vector
    high: Vector
    levels: int
    fixed: bool  # joined to the wall
    loads: tuple[LoadHere, ...]
    restraints: tuple[Restraint, ...]
    castors: tuple[Point, ...] = ()  # the corners of what stands on castors, among those of the footprint
    rooms: tuple[Room, ...] = ()  # in its drawers and behind its doors

    @property
    def height(self) -> float:
        """From the floor to the top, mm."""
        return self.high[Axis.UP]

    @property
    def enclosed(self) -> float:
        """The room in its drawers and behind its doors, mm³ as the scope for clothing storage counts it."""
        if not self.rooms:
            return 0.0
        from reviewer.workshop.enclosed_volume import counted

        return counted(self.rooms)

    @cached_property
    def whole(self) -> Mass:
        """The piece as one mass."""
        return combined(self.masses) or Mass(0.0, *self.low)

    @cached_property
    def edges(self) -> tuple[TippingEdge, ...]:
        """The lines over which it can tip; none when it does not stand on the floor."""
        return tipping_edges(self.polygon) if self.polygon else ()

    @property
    def stored(self) -> bool:
        """True when the plan declares a load of things kept in it."""
        return any(here.load.lasting and here.load.use not in _NOT_STORED for here in self.loads)

    @property
    def storage(self) -> bool:
        """True for a case that things are kept in: shelves one over another, not a table or a seat.

        Two levels without a stored load may be a table with a shelf under it, so they do not count.
        """
        return self.levels >= _LEVELS_OF_A_CASE or (self.levels > 1 and self.stored)

    @property
    def shelved(self) -> bool:
        """True from two levels on: it may be storage."""
        return self.levels > 1


def _clusters(setting: SettingOut, hung: Iterable[Hung]) -> list[list[str]]:
    """Parts that touch, share space, hang on each other or are to be joined, in the plan's order.

    What a join names and does not reach is told by itself; here it counts as it is meant, as one piece.
    """
    leads: dict[str, str] = {name: name for name in setting.solids}

    def lead(name: str) -> str:
        while leads[name] != name:
            leads[name] = leads[leads[name]]
            name = leads[name]
        return name

    touching = [(contact.first, contact.second) for contact in setting.contacts]
    touching += [(overlap.first, overlap.second) for overlap in setting.overlaps]
    touching += [(each.part, each.other) for each in hung]
    for joint in setting.joints:
        if not joint.meets:  # a pattern of which no part is met is there with its first alone
            groups = [group for group in joint.join.right_groups if joint.right in group]
            touching += [(joint.left, name) for group in groups[:1] for name in group if name in leads]
            touching.append((joint.left, joint.right))
    for one, two in touching:
        if one not in GROUNDS and two not in GROUNDS:
            leads[lead(one)] = lead(two)
    clusters: dict[str, list[str]] = {}
    for name in setting.solids:
        clusters.setdefault(lead(name), []).append(name)
    return list(clusters.values())


def _levels(solids: Iterable[Solid], floor_plan: float) -> int:
    """How many flat layers lie one over another with room between them."""
    flat = sorted((solid.low[Axis.UP], solid.high[Axis.UP], _area(solid)) for solid in solids if _flat(solid))
    layers: list[list[float]] = []  # the top and the area of each
    for low, high, area in flat:
        if layers and low - layers[-1][0] < usual_value("shelf-room"):
            layers[-1] = [max(layers[-1][0], high), layers[-1][1] + area]
        else:
            layers.append([high, area])
    return sum(1 for _, area in layers if area >= usual_value("level-share") * floor_plan)


def _flat(solid: Solid) -> bool:
    return solid.thick == Axis.UP


def _area(solid: Solid) -> float:
    return solid.extent(Axis.ACROSS) * solid.extent(Axis.DEEP)


def _by_piece(names: Iterable[str], owner: Mapping[str, int]) -> dict[int, tuple[str, ...]]:
    """Some parts by the number of the piece that they belong to."""
    found: dict[int, list[str]] = {}
    for name in names:
        if name in owner:
            found.setdefault(owner[name], []).append(name)
    return {number: tuple(parts) for number, parts in found.items()}


def pieces(
    plan: Plan, setting: SettingOut, masses: Mapping[str, Mass], hung: tuple[Hung, ...] = ()
) -> tuple[Piece, ...]:
    """Every piece of the plan, in the order of their first parts."""
    clusters = _clusters(setting, hung)
    owner = {name: number for number, cluster in enumerate(clusters) for name in cluster}
    loads: list[list[LoadHere]] = [[] for _ in clusters]
    for load in plan.loads:
        for number, parts in _by_piece(load.on, owner).items():
            loads[number].append(LoadHere(load, parts))
    restraints: list[list[Restraint]] = [[] for _ in clusters]
    for restraint in plan.restraints:
        for number in _by_piece(restraint.what, owner):
            restraints[number].append(restraint)
    on_wall = set()
    for contact in setting.contacts_of(WALL):
        part = contact.other(WALL)
        if any(WALL in (joint.left, joint.right) for joint in setting.joints_of.get(part, ())):
            on_wall.add(owner[part])
    on_wall.update(owner[each.part] for each in hung if each.other == WALL)
    patches: dict[str, list[Point]] = {}
    wheels: dict[str, list[Point]] = {}
    for contact in setting.contacts_of(FLOOR):
        (x0, y0, _), (x1, y1, _) = contact.low, contact.high
        corners = [(x, y) for x, y, _ in contact.corners] or [(x0, y0), (x1, y0), (x1, y1), (x0, y1)]
        patches.setdefault(contact.other(FLOOR), []).extend(corners)
    for each in hung:
        if each.other == FLOOR:  # it stands on what is right below its underside
            (x0, y0, _), (x1, y1, _) = each.low, each.high
            corners = [(x0, y0), (x1, y0), (x1, y1), (x0, y1)]
            patches.setdefault(each.part, []).extend(corners)
            if each.kind == "castors":
                wheels.setdefault(each.part, []).extend(corners)
    # What moves is no foot to rely on, be it that nothing else stands on the floor.
    moving = {name for each in plan.movings if each.kind != "lifts" for name in each.parts}
    found = []
    for number, cluster in enumerate(clusters):
        solids = [setting.solids[name] for name in cluster]
        low = tuple(min(solid.low[axis] for solid in solids) for axis in range(3))
        high = tuple(max(solid.high[axis] for solid in solids) for axis in range(3))
        feet = tuple(name for name in cluster if name in patches)
        feet = tuple(name for name in feet if name not in moving) or feet
        found.append(
            Piece(
                parts=tuple(cluster),
                feet=feet,
                polygon=support_polygon(point for name in feet for point in patches[name]),
                masses=tuple(masses[name] for name in cluster),
                low=(low[0], low[1], low[2]),
                high=(high[0], high[1], high[2]),
                levels=_levels(solids, (high[0] - low[0]) * (high[1] - low[1])),
                fixed=number in on_wall,
                loads=tuple(loads[number]),
                restraints=tuple(restraints[number]),
                castors=tuple(point for name in feet for point in wheels.get(name, ())),
            )
        )
    if not plan.movings:
        return tuple(found)
    from reviewer.workshop.enclosed_volume import with_rooms

    return with_rooms(found, plan, setting)
