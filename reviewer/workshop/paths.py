"""What each fastener goes through at its real place: the wood before its point and beside its thread."""

from __future__ import annotations

import math
from collections.abc import Sequence

from reviewer.geometry.vectors import Vector, cross, dot, moved, times
from reviewer.model.plan import GROUNDS
from reviewer.records import NamedTuple
from reviewer.reference.usual_values import usual_value
from reviewer.units import TOLERANCE_MM
from reviewer.workshop.placed import Placed
from reviewer.workshop.wood_along import Stretch, Wood, joined

#: Where the point comes nearer than this to the far face, what lies behind that face counts too.
_NEAR_MM = 10.0
#: In how many steps the wood beside a thread is measured, as shares of half its thickness.
_STEPS = 8


class Reach(NamedTuple):
    """The wood in front of one fastener, mm square to the faces that meet; what adds to the far part."""

    placed: Placed
    behind: float
    beyond: tuple[str, ...]


class Beside(NamedTuple):
    """One thread that shows at a side: ``shows`` is how much of half its thickness lies in no wood, mm."""

    placed: Placed
    shows: float


class Paths:
    """The fasteners of a piece against its wood."""

    def __init__(self, wood: Wood) -> None:
        self.wood = wood

    def least(self, placed: Sequence[Placed]) -> Reach:
        """The one of a joint's fasteners with the least wood before its point; of several the first."""
        first = placed[0]
        if first.point_part in GROUNDS:
            return Reach(first, math.inf, ())
        least: Reach | None = None
        for each in placed:
            reach = self._reach(each)
            if least is None or reach.behind < least.behind - TOLERANCE_MM:
                least = reach
        assert least is not None
        return least

    def _reach(self, each: Placed) -> Reach:
        way = each.direction
        point, length, square = each.point_part, each.length, dot(way, each.surface_normal)
        own, rest = each.grip, length
        seam = moved(each.head, way, own)
        # Nearly always the far part is a square board that the axis enters inside its edges.
        far = self._plain_far(point, seam, way)
        if far is not None and own + far >= length + _NEAR_MM:
            return Reach(each, far * square, ())
        end, behind = self.wood.until((point,), each.head, way, own, rest + _NEAR_MM)
        beyond = behind if own + (far or end - own) < length - TOLERANCE_MM else ()
        return Reach(each, (end - own) * square, beyond)

    def _plain_far(self, name: str, seam: Vector, way: Vector) -> float | None:
        if not self.wood.plain(name):
            return None
        found = self.wood.through(name, seam, way)
        return found[0][1] if found and found[0][0] <= TOLERANCE_MM else None

    def beside(self, each: Placed) -> Beside | None:
        """The thread of a fastener that shows at a side of the wood; None where all of it lies in wood.

        Lines along the thread at half its thickness must lie in wood from the seam to where the point
        tapers; one whose axis comes out before that is told by what it has in front, not here.
        """
        if each.point_part in GROUNDS:
            return None
        radius, way, length = each.diameter / 2, each.direction, each.length
        # Where it goes in at a slant one side of the thread comes to the seam later than the other.
        start = each.grip + self.past_seam(each)
        end = length - usual_value("point-taper") * each.diameter
        if end <= start + TOLERANCE_MM:
            return None
        aside = cross(way, each.along)
        if self._clear(each, way, aside, radius, start, end):
            return None
        parts = dict.fromkeys((each.head_part, each.point_part, *self.wood.beside(each.point_part)))
        names = tuple(parts)
        if not self._covered(names, each.head, way, start, end):
            return None
        for step in range(_STEPS, 0, -1):
            off = radius * step / _STEPS
            if all(
                self._covered(names, moved(each.head, side, off), way, start, end)
                for side in (each.along, times(each.along, -1.0), aside, times(aside, -1.0))
            ):
                return Beside(each, radius - off) if step < _STEPS else None
        return Beside(each, radius)

    def past_seam(self, each: Placed) -> float:
        """How far past the seam all of the thread is beyond it, mm along the fastener."""
        square = dot(each.direction, each.surface_normal)
        return each.diameter / 2 * math.sqrt(max(0.0, 1 - square * square)) / max(square, 0.1)

    def _clear(
        self, each: Placed, way: Vector, aside: Vector, radius: float, start: float, end: float
    ) -> bool:
        """True, cheaply, for a thread well inside a square board."""
        if not self.wood.plain(each.point_part):
            return False
        solid = self.wood.solids[each.point_part]
        one, two = moved(each.head, way, start), moved(each.head, way, end)
        for axis in range(3):
            room = radius * math.sqrt(max(0.0, 1 - way[axis] ** 2))
            low, high = min(one[axis], two[axis]), max(one[axis], two[axis])
            slack = TOLERANCE_MM
            if low - room < solid.low[axis] - slack or high + room > solid.high[axis] + slack:
                return False
        return True

    def _covered(self, names: Sequence[str], start: Vector, way: Vector, near: float, far: float) -> bool:
        """True where a line lies in wood from ``near`` to ``far``."""
        stretches: list[Stretch] = [each for name in names for each in self.wood.through(name, start, way)]
        return any(
            low <= near + TOLERANCE_MM and high >= far - TOLERANCE_MM for low, high in joined(stretches)
        )
