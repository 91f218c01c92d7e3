"""Solid panels let into grooves across their grain: how wide, and how much room the grooves leave them.

A board swells at its edges. Where both edges are in grooves, or in one groove and against something, all
that it grows has to find room in them.
"""

from __future__ import annotations

from collections.abc import Iterable

from reviewer.model.plan import GROUNDS, HousingKind, Plan
from reviewer.records import NamedTuple
from reviewer.reference.materials import material
from reviewer.setting_out.result import SettingOut
from reviewer.workshop.housing import Housed, housed

_GROOVES: tuple[HousingKind, ...] = ("groove", "dado")


class PanelEdge(NamedTuple):
    """One edge of a panel: its shallowest groove, or the part that stops it where there is none."""

    groove: Housed | None
    to: str
    glued: bool

    @property
    def room(self) -> float:
        """How far the edge can still move outwards, mm."""
        return max(0.0, -self.groove.short) if self.groove is not None and not self.glued else 0.0


class FramedPanel(NamedTuple):
    """A solid panel that grooves hold. ``parts`` are its boards, ``width`` in mm across their grain.

    ``one`` is true where glue makes the boards one; ``ends`` are the grooves that its ends are in, ``fixed``
    every pair of part and neighbour that a groove joins.
    """

    parts: tuple[str, ...]
    one: bool
    width: float
    low: PanelEdge
    high: PanelEdge
    ends: tuple[Housed, ...]
    fixed: frozenset[tuple[str, str]]

    @property
    def room(self) -> float:
        """The room that both edges have together, mm."""
        return self.low.room + self.high.room

    @property
    def glued(self) -> tuple[Housed, ...]:
        """The glued grooves, where they keep the panel from moving: at both edges, or along an end.

        Loose boards have their joints to move in.
        """
        if not self.one:
            return ()
        edges = [edge.groove for edge in (self.low, self.high) if edge.glued and edge.groove is not None]
        ends = [each for each in self.ends if each.joint.join.glue is not None]
        return (*(edges if len(edges) > 1 else ()), *ends)


def framed_panels(plan: Plan, setting: SettingOut) -> tuple[FramedPanel, ...]:
    """Every solid panel that can't move at either edge without meeting the end of a groove or a part."""
    grooves = [
        found
        for joint in setting.joints
        if joint.join.housing is not None and joint.join.housing.kind in _GROOVES
        if (found := housed(joint, setting.solids)) is not None
    ]
    if not grooves:
        return ()
    return _Framer(plan, setting, grooves).panels()


class _Framer:
    def __init__(self, plan: Plan, setting: SettingOut, grooves: list[Housed]) -> None:
        self.setting, self.solids = setting, setting.solids
        moving = {name for name, stock in plan.stocks.items() if material(stock.material).moves}
        self.solid_wood = {name for name, part in plan.parts.items() if part.stock in moving}
        self.grooves: dict[str, list[Housed]] = {}
        for found in grooves:
            if found.part in self.solid_wood and self.solids[found.part].square:
                self.grooves.setdefault(found.part, []).append(found)

    def panels(self) -> tuple[FramedPanel, ...]:
        found, seen = [], set[str]()
        for name, grooves in self.grooves.items():
            axis = int(self.solids[name].wide)
            if name in seen or all(groove.axis != axis for groove in grooves):
                continue
            parts, one = self._row(name)
            seen.update(parts)
            panel = self._panel(parts, axis, one)
            if panel is not None:
                found.append(panel)
        return tuple(found)

    def _row(self, name: str) -> tuple[tuple[str, ...], bool]:
        """A board with all that lies edge to edge with it, and whether glue makes them one.

        Glued or not, what one pushes, all push.
        """
        row, known, one = [name], {name}, True
        for each in row:
            solid = self.solids[each]
            for contact in self.setting.contacts_of(each):
                other = contact.other(each)
                if contact.axis != solid.wide or other not in self.solid_wood or other in known:
                    continue
                beside = self.solids[other]
                if (beside.long, beside.wide) == (solid.long, solid.wide) and beside.square:
                    row.append(other)
                    known.add(other)
                    one = one and self._glued(each, other)
        return tuple(row), one

    def _glued(self, one: str, other: str) -> bool:
        joints = self.setting.joints_of.get(one, ())
        return any(other in (joint.left, joint.right) and joint.join.glue is not None for joint in joints)

    def _panel(self, parts: tuple[str, ...], axis: int, one: bool) -> FramedPanel | None:
        lows = [self.solids[name].low[axis] for name in parts]
        highs = [self.solids[name].high[axis] for name in parts]
        first, last = parts[lows.index(min(lows))], parts[highs.index(max(highs))]
        low = self._edge(first, axis, parts, "low")
        high = self._edge(last, axis, parts, "high")
        if low is None or high is None or (low.groove is None and high.groove is None):
            return None
        every = [groove for name in parts for groove in self.grooves.get(name, ())]
        ends = tuple(groove for groove in every if groove.axis == self.solids[groove.part].long)
        pairs = frozenset((groove.part, groove.into) for groove in every)
        return FramedPanel(parts, one, max(highs) - min(lows), low, high, ends, pairs)

    def _edge(self, name: str, axis: int, parts: Iterable[str], side: str) -> PanelEdge | None:
        """What an edge of the panel meets; None where it is free to move."""
        solid = self.solids[name]
        here = [
            groove
            for groove in self.grooves.get(name, ())
            if groove.axis == axis
            and (self.solids[groove.into].centre[axis] < solid.centre[axis]) == (side == "low")
        ]
        if here:
            shallowest = min(here, key=lambda groove: -groove.short)
            return PanelEdge(
                shallowest, shallowest.into, any(groove.joint.join.glue is not None for groove in here)
            )
        for contact in self.setting.contacts_of(name):
            other = contact.other(name)
            beyond = contact.second == name if side == "low" else contact.first == name
            if contact.axis == axis and beyond and other not in GROUNDS and other not in parts:
                return PanelEdge(None, other, False)
        return None
