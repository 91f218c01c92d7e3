"""What holds up what: every part's supports, found from the floor and the wall upwards.

A part is held by what it rests on, by a joint at its side or end, or (when nothing is under it) by a
joint above it. A joint can carry either way, so the direction is settled by the way to the ground:
the part that comes sooner to the floor or the wall holds the other. A way that hangs counts as longer
than any that stands, and a wall restraint holds up only what would fall without it.
"""

from __future__ import annotations

from collections.abc import Iterable
from heapq import heappop, heappush
from typing import TYPE_CHECKING, Literal

from reviewer.model.plan import FLOOR, GROUNDS, WALL, Axis, Join
from reviewer.records import NamedTuple, dataclass
from reviewer.setting_out.result import Joint, SettingOut
from reviewer.setting_out.solid import Solid, Vector
from reviewer.units import TOLERANCE_MM
from reviewer.workshop.driving import joint_axis

if TYPE_CHECKING:
    from reviewer.workshop.hanging import Hung

How = Literal["rests", "joint", "hangs"]
_GROUND = "the ground"
#: Pegs that draw out of their holes unless glue keeps them.
PEGS = ("dowels", "biscuits", "loose tenons", "shelf pins")
#: How far from the ground: times that only a wall restraint holds, times that it hangs, steps.
_Way = tuple[int, int, int]
_STEP: _Way = (0, 0, 1)
_HANG: _Way = (0, 1, 1)
_RESTRAINT: _Way = (1, 0, 1)


class Held(NamedTuple):
    """One support of a part: by what, how, and the patch (mm) where it bears.

    ``housed`` is true where the part is let into what holds it (a dado, a tenon).
    """

    by: str
    how: How
    low: Vector
    high: Vector
    joined: bool
    housed: bool = False

    @property
    def middle(self) -> Vector:
        return (
            (self.low[0] + self.high[0]) / 2,
            (self.low[1] + self.high[1]) / 2,
            (self.low[2] + self.high[2]) / 2,
        )


@dataclass(frozen=True)
class Holding:
    """Supports by part, the parts in an order in which each comes before what holds it, and the floaters."""

    supports: dict[str, tuple[Held, ...]]
    order: tuple[str, ...]
    floating: tuple[str, ...]


class Link(NamedTuple):
    """Two parts that meet so that one may hold up the other, and the patch (mm) where they do."""

    lower: str  # for a level contact: the one below; for a side joint: simply the first
    upper: str
    level: bool  # one lies on the other
    low: Vector
    high: Vector
    joined: bool
    housed: bool = False
    firm: bool = True  # False: nails alone, which hold up only what nothing better holds
    restraint: bool = False
    hung: bool = False  # by hardware: the lower one holds the upper, never the other way


def binds(join: Join) -> bool:
    """True when a join holds its parts together; *none because* holds nothing."""
    return bool(join.glue or join.housing) or any(each.kind != "none" for each in join.fastenings)


def may_let_go(join: Join) -> bool:
    """True for a join with neither glue nor anything driven: dry pegs and housings may carry nothing."""
    return binds(join) and not join.glue and all(each.kind in (*PEGS, "none") for each in join.fastenings)


def _firm(join: Join) -> bool:
    return bool(join.glue or join.housing) or any(
        each.kind not in ("none", "nails") for each in join.fastenings
    )


def _pair(one: str, two: str) -> tuple[str, str]:
    return (one, two) if one < two else (two, one)


def links_between(setting: SettingOut, hung: Iterable[Hung]) -> list[Link]:
    """Every pair of parts of which one may hold up the other, the floor and the wall among them."""
    joined: dict[tuple[str, str], bool] = {}
    for joint in setting.joints:
        if joint.meets and binds(joint.join):
            pair = _pair(joint.left, joint.right)
            joined[pair] = joined.get(pair, False) or _firm(joint.join)
    restrained = {name for each in setting.restraints if each.device != "strap" for name in each.what}
    links = []
    for contact in setting.contacts:
        pair = _pair(contact.first, contact.second)
        level = contact.axis == Axis.UP
        is_joined, firm = pair in joined, joined.get(pair, True)
        restraint = WALL in pair and not is_joined and contact.other(WALL) in restrained
        # An unfixed part only leans on what stands beside it.
        if level or is_joined or restraint:
            links.append(
                Link(
                    contact.first,
                    contact.second,
                    level,
                    contact.low,
                    contact.high,
                    is_joined,
                    firm=firm,
                    restraint=restraint,
                )
            )
    done: set[tuple[str, str]] = set()
    for joint in setting.joints:
        pair = _pair(joint.left, joint.right)
        if joint.overlap is not None and binds(joint.join) and pair not in done:
            done.add(pair)
            links.append(_overlap_link(joint, setting.solids, joined[pair]))
    links += [Link(each.other, each.part, False, each.low, each.high, True, hung=True) for each in hung]
    return links


def _overlap_link(joint: Joint, solids: dict[str, Solid], firm: bool) -> Link:
    assert joint.overlap is not None
    level = joint_axis(joint, solids) == Axis.UP
    lower, upper = joint.left, joint.right
    if level and solids[lower].centre[Axis.UP] > solids[upper].centre[Axis.UP]:
        lower, upper = upper, lower
    return Link(lower, upper, level, joint.overlap.low, joint.overlap.high, True, housed=True, firm=firm)


def _ways(links: Iterable[Link]) -> dict[str, _Way]:
    """How far each part is from the ground; parts that nothing leads to are absent."""
    out: dict[str, list[tuple[str, _Way]]] = {}
    for link in links:
        lower = _GROUND if link.lower in GROUNDS else link.lower
        upper = _GROUND if link.upper in GROUNDS else link.upper
        step = _RESTRAINT if link.restraint else _STEP
        out.setdefault(lower, []).append((upper, step))
        if link.hung:
            continue
        if not link.level:
            out.setdefault(upper, []).append((lower, step))
        elif link.joined:
            out.setdefault(upper, []).append((lower, _HANG))
    way: dict[str, _Way] = {}
    waiting: list[tuple[_Way, str]] = [((0, 0, 0), _GROUND)]
    while waiting:
        here, name = heappop(waiting)
        if name in way:
            continue
        way[name] = here
        for other, step in out.get(name, ()):
            if other not in way:
                heappush(waiting, ((here[0] + step[0], here[1] + step[1], here[2] + step[2]), other))
    return way


def _hung_units(hung: Iterable[Hung]) -> dict[str, tuple[str, ...]]:
    """By part that hardware holds: all that hangs with it, as a drawer hangs in its two sides."""
    found: dict[str, tuple[str, ...]] = {}
    for each in hung:
        for unit in each.fit.units:
            if each.part in unit:
                found[each.part] = unit
    return found


def _side(
    link: Link, way: dict[str, _Way], solids: dict[str, Solid], units: dict[str, tuple[str, ...]]
) -> tuple[str, str] | None:
    """Which of two parts joined side by side holds the other: (held, by); None when neither does."""
    lower, upper = link.lower, link.upper
    if units:
        # What hardware holds bears the rest of its unit, however far its own way to the ground is.
        if upper in units.get(lower, ()) and upper not in units:
            return (upper, lower)
        if lower in units.get(upper, ()) and lower not in units:
            return (lower, upper)
    if way[lower] != way[upper]:
        return (upper, lower) if way[lower] < way[upper] else (lower, upper)
    lower_lies, upper_lies = solids[lower].thick == Axis.UP, solids[upper].thick == Axis.UP
    if lower_lies == upper_lies:
        return None
    # As near to the ground as each other: a board on edge or upright holds one that lies flat.
    return (lower, upper) if lower_lies else (upper, lower)


def holding(setting: SettingOut, hung: Iterable[Hung] = ()) -> Holding:
    """Every part's supports. Parts that nothing leads to from the ground are ``floating``."""
    hung = tuple(hung)
    links = links_between(setting, hung)
    way, units = _ways(links), _hung_units(hung)
    found: dict[str, list[tuple[Held, bool]]] = {}

    def hold(name: str, link: Link, by: str, how: How) -> None:
        held = Held(by, how, link.low, link.high, link.joined or link.restraint, link.housed)
        found.setdefault(name, []).append((held, link.firm or how == "rests"))

    for link in links:
        lower, upper = link.lower, link.upper
        if lower in GROUNDS or upper in GROUNDS:
            name, by = (upper, lower) if lower in GROUNDS else (lower, upper)
            if not link.restraint or way[name][0]:
                rests = by == FLOOR and (link.level or link.hung)
                hold(name, link, by, "rests" if rests else "joint")
        elif lower not in way or upper not in way:
            continue
        elif link.hung:
            hold(upper, link, lower, "joint")
        elif not link.level:
            side = _side(link, way, setting.solids, units)
            if side is not None:
                hold(side[0], link, side[1], "joint")
        elif way[lower][:2] <= way[upper][:2]:
            hold(upper, link, lower, "rests")
        elif link.joined:
            hold(lower, link, upper, "hangs")
    names = list(setting.solids)
    supports: dict[str, list[Held]] = {}
    for name, listed in found.items():
        some_firm = any(firm for _, firm in listed)
        supports[name] = _seats([held for held, firm in listed if firm or not some_firm])
    order = _order(names, supports)
    if len(order) < len(names):
        _break_circles(supports, set(names).difference(order), way)
        order = _order(names, supports)
    floating = tuple(name for name in names if name not in way)
    return Holding({name: tuple(held) for name, held in supports.items()}, tuple(order), floating)


def _seats(held: list[Held]) -> list[Held]:
    """The supports of a part but for the sides of a notch that it sits in: what it rests on there bears it.

    Else a notched joist would have two supports side by side in one post, which clamp it.
    """
    if len(held) < 2:
        return held
    rests = [each for each in held if each.how == "rests"]
    return [
        each
        for each in held
        if each.how != "joint"
        or each.housed
        or not any(each.by == rest.by and _touch(each, rest) for rest in rests)
    ]


def _touch(one: Held, two: Held) -> bool:
    return all(
        min(one.high[axis], two.high[axis]) >= max(one.low[axis], two.low[axis]) - TOLERANCE_MM
        for axis in range(3)
    )


def _order(names: list[str], supports: dict[str, list[Held]]) -> list[str]:
    """Parts so that each comes before what holds it; those in a circle, or below one, are left out."""
    waiting: dict[str, int] = dict.fromkeys(names, 0)
    for held in supports.values():
        for support in held:
            if support.by in waiting:
                waiting[support.by] += 1
    order = [name for name in names if waiting[name] == 0]
    for name in order:  # grows while it is walked
        for support in supports.get(name, ()):
            if support.by in waiting:
                waiting[support.by] -= 1
                if waiting[support.by] == 0:
                    order.append(support.by)
    return order


def _break_circles(supports: dict[str, list[Held]], stuck: set[str], way: dict[str, _Way]) -> None:
    """Let parts of a circle go of what is no nearer to the ground than they are.

    Each part keeps the support by which its own way leads, so none falls.
    """
    from reviewer.workshop.circles import circles

    leads = {name: [held.by for held in supports.get(name, ()) if held.by in stuck] for name in sorted(stuck)}
    for circle in circles(leads):
        for name in circle:
            supports[name] = [
                held for held in supports[name] if held.by not in circle or way[held.by] < way[name]
            ]
