"""What no load leaves: parts that no way leads down from to the floor or the wall.

A way goes from a part to what it lies on, and to what it is tied to beside or above it. What merely
touches at the side carries nothing, and neither does a dry joint that lets the part slide down or drop
out. Where it is not certain that a joint lets go, it is taken to carry.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import TYPE_CHECKING, Literal

from reviewer.model.plan import GROUNDS, Axis, HousingKind, Join
from reviewer.records import NamedTuple
from reviewer.setting_out.result import Joint, SettingOut
from reviewer.setting_out.solid import Solid
from reviewer.units import TOLERANCE_MM
from reviewer.workshop.holding import PEGS, Holding, Link, binds, links_between, may_let_go

if TYPE_CHECKING:
    from reviewer.workshop.hanging import Hung

#: Housings that a part leaves the way it went in, unless something keeps it.
_OPEN: tuple[HousingKind, ...] = ("dado", "rabbet", "groove", "mortise and tenon", "tongue and groove")

#: How a part meets what does not carry it: it touches, it slides down in its housing, it drops out.
Loose = Literal["touches", "slides", "drops"]


class Lets(NamedTuple):
    """One part that meets another which does not carry it, how, and the join that says so."""

    part: str
    other: str
    how: Loose
    join: Join | None


class Island(NamedTuple):
    """Parts that hang together and that no way leads down from, in the plan's order.

    ``ways`` has, by part, what its load goes on to inside of the island; ``lets`` what its parts meet
    outside of it, without being carried there.
    """

    parts: tuple[str, ...]
    ways: dict[str, tuple[str, ...]]
    lets: tuple[Lets, ...]

    def path_from(self, start: str, solids: Mapping[str, Solid]) -> tuple[str, ...]:
        """The way of a load from a part to where it ends: the lowest part that touches something else."""
        before: dict[str, str] = {start: ""}
        reached = [start]
        for name in reached:  # grows while it is gone through
            for other in self.ways.get(name, ()):
                if other not in before:
                    before[other] = name
                    reached.append(other)
        meets = {each.part for each in self.lets}
        ends = [name for name in reached if name in meets] or reached
        end = min(ends, key=lambda name: round(solids[name].low[Axis.UP], 2))
        path = [end]
        while before[path[-1]]:
            path.append(before[path[-1]])
        return tuple(reversed(path))


def _pair(one: str, two: str) -> tuple[str, str]:
    return (one, two) if one < two else (two, one)


class _Ties:
    """What the joints of each pair can carry, and which way."""

    def __init__(self, setting: SettingOut) -> None:
        self.setting = setting
        self.joints: dict[tuple[str, str], list[Joint]] = {}
        for joint in setting.joints:
            if joint.meets and binds(joint.join):
                self.joints.setdefault(_pair(joint.left, joint.right), []).append(joint)

    def lets_go(self, part: str, other: str, level: bool) -> Lets | None:
        """How all joints of a pair let the part slip from the other; None where one of them carries."""
        found: Lets | None = None
        for joint in self.joints.get(_pair(part, other), ()):
            how = self._slips(joint, part, other, level)
            if how is None:
                return None
            found = found or Lets(part, other, how, joint.join)
        return found

    def _slips(self, joint: Joint, part: str, other: str, level: bool) -> Loose | None:
        join = joint.join
        if not may_let_go(join):
            return None
        pegged = any(each.kind in PEGS for each in join.fastenings)
        opens = join.housing is not None and join.housing.kind in _OPEN and joint.overlap is not None
        if level:
            return "drops" if opens or (pegged and join.housing is None) else None
        if pegged or not opens or joint.overlap is None:
            return None
        under = joint.overlap.low[Axis.UP] - self._low(other)
        over = self._high(part) - joint.overlap.high[Axis.UP]
        return "slides" if under <= TOLERANCE_MM and over <= TOLERANCE_MM else None

    def _low(self, name: str) -> float:
        return self.setting.solids[name].low[Axis.UP]

    def _high(self, name: str) -> float:
        return self.setting.solids[name].high[Axis.UP]


def _ways(link: Link, ties: _Ties) -> list[tuple[str, str]]:
    """From which part to which a load can go over a link."""
    lower, upper = link.lower, link.upper
    if link.hung:
        return [(upper, lower)]
    if link.restraint:
        return [(lower, upper), (upper, lower)]
    if link.level:
        up = link.joined and ties.lets_go(lower, upper, level=True) is None
        return [(upper, lower), (lower, upper)] if up else [(upper, lower)]
    pairs = [(lower, upper), (upper, lower)]
    return [pair for pair in pairs if pair[0] in GROUNDS or ties.lets_go(*pair, level=False) is None]


def stranded(setting: SettingOut, hung: Iterable[Hung]) -> frozenset[str]:
    """The parts whose load no way leads down from.

    Where no join may let go these are the parts that float, and nobody need ask.
    """
    ties = _Ties(setting)
    comes_from: dict[str, list[str]] = {}
    for link in links_between(setting, hung):
        for part, to in _ways(link, ties):
            comes_from.setdefault(to, []).append(part)
    carried = set(GROUNDS)
    reached = list(GROUNDS)
    for name in reached:  # grows while it is gone through
        for other in comes_from.get(name, ()):
            if other not in carried:
                carried.add(other)
                reached.append(other)
    return frozenset(name for name in setting.solids if name not in carried)


def kept_apart(held: Holding, stuck: frozenset[str]) -> Holding:
    """The same holding, in which nothing that carries no load holds up what is stuck."""
    if stuck.issubset(held.floating):
        return held
    supports = {
        name: tuple(each for each in found if name not in stuck or each.by in stuck)
        for name, found in held.supports.items()
    }
    return Holding({name: found for name, found in supports.items() if found}, held.order, held.floating)


def islands(setting: SettingOut, hung: Iterable[Hung], stuck: frozenset[str]) -> list[Island]:
    """The stuck parts, those that touch each other or share space as one, in the plan's order."""
    order = {name: place for place, name in enumerate(setting.solids)}
    beside: dict[str, list[str]] = {name: [] for name in order if name in stuck}
    meets: dict[str, dict[str, None]] = {name: {} for name in beside}  # in order
    faces = [(each.first, each.second) for each in setting.contacts]
    shares = [(each.first, each.second) for each in setting.overlaps]
    for one, two in (*faces, *shares):
        if one in stuck and two in stuck:
            beside[one].append(two)
            beside[two].append(one)
        elif one in stuck or two in stuck:
            part, other = (one, two) if one in stuck else (two, one)
            meets[part][other] = None
    ties = _Ties(setting)
    ways: dict[str, list[str]] = {}
    lets: dict[str, dict[str, Lets]] = {}
    for link in links_between(setting, hung):
        for part, to in _ways(link, ties):
            if part in stuck and to in stuck:
                ways.setdefault(part, []).append(to)
        for part, to in ((link.lower, link.upper), (link.upper, link.lower)):
            slips = ties.lets_go(part, to, link.level) if part in stuck and to not in stuck else None
            if slips is not None:
                lets.setdefault(part, {})[to] = slips
    found: list[Island] = []
    seen: set[str] = set()
    for start in beside:
        if start in seen:
            continue
        seen.add(start)
        island = [start]
        for name in island:  # grows while it is gone through
            for other in beside[name]:
                if other not in seen:
                    seen.add(other)
                    island.append(other)
        island.sort(key=order.__getitem__)
        met = [
            lets.get(name, {}).get(other, Lets(name, other, "touches", None))
            for name in island
            for other in meets[name]
        ]
        chosen = {name: tuple(dict.fromkeys(ways[name])) for name in island if name in ways}
        found.append(Island(tuple(island), chosen, tuple(met)))
    return found


def told_by_place(setting: SettingOut, stuck: frozenset[str]) -> set[str]:
    """Stuck parts at fault by place or joint: they share space, sink in, or miss what they should meet."""
    found = {broken.part for broken in setting.broken_touches}
    found |= {name for joint in setting.joints if not joint.meets for name in (joint.left, joint.right)}
    found |= {name for name in stuck if setting.solids[name].low[Axis.UP] < -TOLERANCE_MM}
    wanted = {_pair(each.left, each.right) for each in setting.joints if each.join.housing is not None}
    for overlap in setting.overlaps:
        pair = _pair(overlap.first, overlap.second)
        if pair not in wanted and (pair[0] in stuck) != (pair[1] in stuck):
            found |= {*pair}
    return found
