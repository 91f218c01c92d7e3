"""How much wood a line meets: through the true bodies of parts, one behind another."""

from __future__ import annotations

import math
from collections.abc import Iterable
from functools import cached_property
from typing import TYPE_CHECKING

from reviewer.model.plan import GROUNDS
from reviewer.setting_out.result import SettingOut
from reviewer.setting_out.solid import Solid, Vector
from reviewer.units import TOLERANCE_MM

if TYPE_CHECKING:
    from reviewer.geometry.convex import Convex

_SLACK_MM = 0.1
#: From where to where a line lies in wood, as mm from its start.
Stretch = tuple[float, float]


def stretch_through_box(low: Vector, high: Vector, start: Vector, way: Vector) -> Stretch | None:
    """Where a line lies in a box that stands square; None where it misses it."""
    near, far = -math.inf, math.inf
    for axis in range(3):
        step, at = way[axis], start[axis]
        if abs(step) < 1e-12:
            if not low[axis] - 1e-9 <= at <= high[axis] + 1e-9:
                return None
            continue
        one, two = (low[axis] - at) / step, (high[axis] - at) / step
        if one > two:
            one, two = two, one
        near, far = max(near, one), min(far, two)
    return (near, far) if far > near else None


def joined(stretches: Iterable[Stretch]) -> list[Stretch]:
    """Stretches in order, those that meet or overlap made one."""
    found: list[Stretch] = []
    for near, far in sorted(stretches):
        if found and near <= found[-1][1] + TOLERANCE_MM:
            found[-1] = (found[-1][0], max(far, found[-1][1]))
        else:
            found.append((near, far))
    return found


class Wood:
    """The parts of a piece as wood that lines go through. Bodies of shaped parts are kept as they are met.

    Bores are not taken out: a line that goes down a hole counts as in wood. Floor and wall are no wood.
    """

    def __init__(self, setting: SettingOut) -> None:
        self.setting = setting
        self.solids = setting.solids
        self._pieces: dict[str, tuple[Convex, ...]] = {}
        self._beside: dict[str, list[str]] = {}
        self._sharing: dict[str, list[str]] | None = None

    @cached_property
    def _bounds(self) -> dict[str, tuple[Vector, Vector]]:
        """Bounds with some slack."""
        return {
            name: (
                (solid.low[0] - _SLACK_MM, solid.low[1] - _SLACK_MM, solid.low[2] - _SLACK_MM),
                (solid.high[0] + _SLACK_MM, solid.high[1] + _SLACK_MM, solid.high[2] + _SLACK_MM),
            )
            for name, solid in self.solids.items()
        }

    def plain(self, name: str) -> bool:
        """True for a square board with nothing cut away, which fills its bounds."""
        solid = self.solids[name]
        return solid.body is None and solid.square

    def through(self, name: str, start: Vector, way: Vector) -> list[Stretch]:
        """Where a line lies in one part."""
        solid = self.solids[name]
        if self.plain(name):
            found = stretch_through_box(solid.low, solid.high, start, way)
            return [found] if found is not None else []
        from reviewer.geometry.body import stretches_through

        return stretches_through(self._body(solid), start, way)

    def _body(self, solid: Solid) -> tuple[Convex, ...]:
        found = self._pieces.get(solid.name)
        if found is None:
            from reviewer.setting_out.bodies import body_of

            found = self._pieces[solid.name] = body_of(solid).pieces
        return found

    def beside(self, name: str) -> list[str]:
        """The parts that touch a part or share space with it, in the order in which they are found."""
        known = self._beside.get(name)
        if known is not None:
            return known
        if self._sharing is None:
            self._sharing = {}
            for overlap in self.setting.overlaps:
                self._sharing.setdefault(overlap.first, []).append(overlap.second)
                self._sharing.setdefault(overlap.second, []).append(overlap.first)
        touching = (contact.other(name) for contact in self.setting.contacts_of(name))
        every = dict.fromkeys((*touching, *self._sharing.get(name, ())))
        found = self._beside[name] = [each for each in every if each not in GROUNDS]
        return found

    def until(
        self, parts: Iterable[str], start: Vector, way: Vector, seam: float, enough: float
    ) -> tuple[float, tuple[str, ...]]:
        """How far wood goes on along a line from ``seam``, and what behind the first parts adds to it.

        It begins in ``parts`` and goes on into whatever lies against them, until it has ``enough`` (mm from
        the start) or comes out. ``seam`` itself is given back where there is no wood.
        """
        stretches = [each for name in parts for each in self.through(name, start, way)]
        far = _end(stretches, seam)
        behind: list[str] = []
        waiting = list(parts)
        seen = set(waiting)
        while waiting and far < enough and far > seam:
            x, y, z = (start[axis] + way[axis] * far for axis in range(3))
            for name in self.beside(waiting.pop(0)):
                (low_x, low_y, low_z), (high_x, high_y, high_z) = self._bounds[name]
                if not (low_x <= x <= high_x and low_y <= y <= high_y and low_z <= z <= high_z):
                    continue  # it is nowhere near where the wood ends so far
                if name in seen:
                    continue
                seen.add(name)
                found = self.through(name, start, way)
                if any(near <= far + TOLERANCE_MM < end for near, end in found):
                    stretches += found
                    before, far = far, _end(stretches, seam)
                    waiting.append(name)
                    if far > before + TOLERANCE_MM:
                        behind.append(name)
        return far, tuple(behind)


def _end(stretches: list[Stretch], seam: float) -> float:
    """Where the wood that begins at ``seam`` ends."""
    for near, far in joined(stretches):
        if near <= seam + TOLERANCE_MM and far > seam + TOLERANCE_MM:
            return far
    return seam
