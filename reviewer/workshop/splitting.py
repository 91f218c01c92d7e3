"""How near each fastener stands to the ends and edges of the wood it goes into, and to its neighbour.

Only what goes across the grain splits a board at its end; what goes into end grain has edges all round.
Distances are those of the board as cut, through its true body where it is shaped.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import TYPE_CHECKING, Literal

from reviewer.geometry.vectors import dot, minus, moved, times
from reviewer.limits import Limit
from reviewer.model.plan import GROUNDS
from reviewer.records import NamedTuple
from reviewer.reference import gauges
from reviewer.reference.usual_values import usual_value
from reviewer.setting_out.solid import Solid, Vector
from reviewer.workshop.placed import Placed
from reviewer.workshop.tape import side_word
from reviewer.workshop.wood_along import Wood

if TYPE_CHECKING:
    from reviewer.review import Review

_SPLITTING = ("screws", "pocket screws", "nails", "bolts")
What = Literal["edge", "end", "row"]


class Close(NamedTuple):
    """A fastener too near to an end or an edge of a part (``side`` names which), or to the next of its row.

    ``distance`` is from its middle, ``least`` the least for its diameter, mm; ``diameters`` is that as the
    limit has it, hardwood counted.
    """

    placed: Placed
    part: str
    what: What
    side: str
    distance: float
    least: float
    diameters: float
    limit: Limit
    bored: bool

    @property
    def lack(self) -> float:
        return self.least - self.distance


def bored(placed: Placed) -> bool:
    """Whether it goes into a hole: bolts and pocket screws do, nails only where the plan says so.

    Screws do unless the plan says that they don't; that is noted as assumed.
    """
    pilot = placed.fastening.pilot
    if placed.kind == "nails":
        return pilot == "drilled"
    return pilot != "none"


def _entry(placed: Placed, part: str) -> Vector:
    """Where a fastener enters a part; of a pocket screw where it leaves the one that its pocket is in."""
    if part == placed.head_part and placed.kind != "pocket screws":
        return placed.mouth if placed.mouth is not None else placed.head
    return moved(placed.head, placed.direction, placed.grip)


class Splitting:
    """Every fastener of a review against the ends and edges of both its parts."""

    def __init__(self, review: Review) -> None:
        self.review, self.wood = review, Wood(review.setting)
        self._hard: dict[str, float] = {}
        self._splits: dict[str, bool] = {}

    def close(self, what: tuple[What, ...]) -> Iterator[Close]:
        """All that stand too near to something of these kinds, in the order of the plan."""
        before: Placed | None = None
        for placed in self.review.placed:
            if placed.kind in _SPLITTING:
                for part in (placed.head_part, placed.point_part):
                    if part not in GROUNDS:
                        yield from self._close(placed, part, before, what)
            before = placed

    def least(self, what: What, part: str, is_bored: bool) -> tuple[float, Limit]:
        """The least distance in diameters, and the limit that says so."""
        if what == "edge":
            limit = self.review.limit("split-edge")
            return limit.amount, limit
        name = "split-end" if what == "end" else "split-spacing"
        limit = self.review.limit(name if is_bored else f"{name}-unbored")
        share = 1.0 if is_bored else self._hardness(part)
        return limit.amount * share, limit

    def _hardness(self, part: str) -> float:
        """How many times as much as softwood a part asks for where no hole is bored."""
        found = self._hard.get(part)
        if found is None:
            material = self.review.material_of(part)
            hard = material.family == "hardwood" or not material.grained
            found = self._hard[part] = self.review.limit("split-hardwood").amount if hard else 1.0
        return found

    def _close(
        self, placed: Placed, part: str, before: Placed | None, what: tuple[What, ...]
    ) -> Iterator[Close]:
        splits = self._splits.get(part)
        if splits is None:
            material = self.review.material_of(part)
            splits = self._splits[part] = material.moves or not material.grained
        if not splits and "edge" not in what:
            return
        solid, way = self.wood.solids[part], placed.direction
        own = max(range(3), key=lambda each: abs(dot(way, solid.directions[each])))
        at = _entry(placed, part)
        if placed.fastening.angle is not None and part == placed.head_part:
            own = _surface_axis(solid, at)
        hole = bored(placed)
        if "edge" in what:
            for across in (1, 2):
                if across != own:
                    yield from self._beside(placed, solid, at, across, "edge", hole)
        if own == 0 or not splits:
            return  # into end grain, or into plywood, whose plies cross
        if "end" in what:
            yield from self._beside(placed, solid, at, 0, "end", hole)
        if "row" in what and before is not None and _one_row(before, placed):
            apart = minus(_entry(placed, part), _entry(before, part))
            along = abs(dot(apart, solid.directions[0]))
            aside = math.sqrt(max(0.0, dot(apart, apart) - along * along))
            diameters, limit = self.least("row", part, hole)
            # Two that run into each other are told by fasteners-collide.
            meet = math.hypot(aside, along) <= placed.diameter
            if not meet and aside < placed.diameter and along < diameters * placed.diameter - _SLACK_MM:
                yield Close(
                    placed, part, "row", "", along, diameters * placed.diameter, diameters, limit, hole
                )

    def _beside(
        self, placed: Placed, solid: Solid, at: Vector, own: int, what: What, hole: bool
    ) -> Iterator[Close]:
        """The nearer end or edge on one of the board's own axes, if it is too near."""
        diameters, limit = self.least(what, solid.name, hole)
        least = diameters * placed.diameter
        way = solid.directions[own]
        low, high = self._room(solid, placed, at, way, own, least)
        if min(low, high) >= least - _SLACK_MM:
            return
        side = side_word(way if high < low else times(way, -1.0))
        yield Close(placed, solid.name, what, side, min(low, high), least, diameters, limit, hole)

    def _room(
        self, solid: Solid, placed: Placed, at: Vector, way: Vector, own: int, least: float
    ) -> tuple[float, float]:
        """How much wood lies on both sides of a place on one of the board's own axes, mm."""
        middle = (
            (solid.low[0] + solid.high[0]) / 2,
            (solid.low[1] + solid.high[1]) / 2,
            (solid.low[2] + solid.high[2]) / 2,
        )
        if solid.body is None:
            off, half = dot(minus(at, middle), way), solid.size[own] / 2
            return max(0.0, half + off), max(0.0, half - off)
        # A little way into the wood, off the surface that it enters through.
        inside = moved(at, placed.direction, _INTO_MM)
        for near, far in self.wood.through(solid.name, inside, way):
            if near <= 0.0 <= far:
                return -near, far
        return least, least  # it misses this part, which is told elsewhere


#: A hair's breadth does not split a board: measures are held to this, mm.
_SLACK_MM = 0.4
_INTO_MM = 1.0


def _surface_axis(solid: Solid, at: Vector) -> int:
    """The board's own axis square to the surface that a place lies on."""
    middle = (
        (solid.low[0] + solid.high[0]) / 2,
        (solid.low[1] + solid.high[1]) / 2,
        (solid.low[2] + solid.high[2]) / 2,
    )
    off = minus(at, middle)
    return min(range(3), key=lambda own: solid.size[own] / 2 - abs(dot(off, solid.directions[own])))


def _one_row(one: Placed, two: Placed) -> bool:
    return one.number + 1 == two.number and one.joint[:2] == two.joint[:2] and one.fastening is two.fastening


def usual_pilot(placed: Placed, hardwood: bool) -> gauges.Hole | None:
    """The usual pilot hole for a screw; None where the tables list none."""
    fastening = placed.fastening
    screw = gauges.gauge(fastening.gauge) if fastening.gauge else gauges.metric_screw(placed.diameter)
    if screw is None:
        return None
    return screw.pilot_hardwood if hardwood else screw.pilot_softwood


def thinner(placed: Placed, most: float) -> gauges.Screw | None:
    """The thickest usual screw that is no thicker than so many mm; None for others than screws."""
    if placed.kind != "screws":
        return None
    if placed.fastening.gauge:
        every = [gauges.gauge(name) for name in gauges.gauge_names()]
    else:
        every = [gauges.metric_screw(float(name.split()[0])) for name in gauges.metric_screw_names()]
    fitting = [each for each in every if each is not None and each.diameter <= most]
    least = usual_value("thinnest-screw")
    fitting = [each for each in fitting if each.diameter >= least]
    return max(fitting, key=lambda each: each.diameter) if fitting else None
