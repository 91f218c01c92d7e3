"""Parts in the air."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterator, Sequence
from itertools import accumulate

from reviewer.findings import Filling, Finding, Severity
from reviewer.model.plan import FLOOR, GROUNDS, WALL, Axis
from reviewer.records import NamedTuple
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.setting_out.directions import BEYOND, placing_span, side_of
from reviewer.setting_out.setting import gaps
from reviewer.setting_out.solid import Solid
from reviewer.units import TOLERANCE_MM, fine_length
from reviewer.wording import listed


class _Near(NamedTuple):
    """The nearest thing that stands: its name, the widest gap to it (mm), on which axis and at which end."""

    distance: float
    part: str
    name: str
    gap: float
    axis: int
    end: int


class _Standing:
    """The parts that something holds up, sorted from left to right, to find the nearest one among."""

    def __init__(self, solids: Sequence[Solid]) -> None:
        self.solids = sorted(solids, key=lambda solid: solid.low[0])
        self.lows = [solid.low[0] for solid in self.solids]
        self.reach = list(accumulate((solid.high[0] for solid in self.solids), max))

    def nearest(self, solid: Solid, best: _Near | None) -> _Near | None:
        """The nearest of them to a solid, if nearer than ``best``."""
        start = bisect_left(self.lows, solid.low[0])
        for place in range(start, len(self.solids)):
            if best is not None and self.lows[place] - solid.high[0] > best.distance:
                break
            best = _nearer(solid, self.solids[place], best)
        for place in range(start - 1, -1, -1):
            if best is not None and solid.low[0] - self.reach[place] > best.distance:
                break
            best = _nearer(solid, self.solids[place], best)
        return best


def _nearer(solid: Solid, other: Solid, best: _Near | None) -> _Near | None:
    apart = gaps(solid, other)
    distance = (apart[0] ** 2 + apart[1] ** 2 + apart[2] ** 2) ** 0.5
    if best is not None and distance >= best.distance - TOLERANCE_MM:
        return best
    axis = max(range(3), key=lambda each: (apart[each], each))
    return _Near(distance, solid.name, other.name, apart[axis], axis, side_of(solid, other, axis))


def _to_grounds(review: Review, solid: Solid, best: _Near | None) -> _Near | None:
    above = solid.low[2]
    if best is None or above < best.distance - TOLERANCE_MM:
        best = _Near(above, solid.name, FLOOR, above, Axis.UP, 1)
    if review.setting.wall is not None:
        axis, place = review.setting.wall
        left = solid.centre[axis] > place
        away = solid.low[axis] - place if left else place - solid.high[axis]
        if 0 <= away < best.distance - TOLERANCE_MM:
            best = _Near(away, solid.name, WALL, away, axis, 1 if left else 0)
    return best


def _family(review: Review, name: str) -> str:
    part = review.plan.parts.get(name)
    return part.family if part else name


def _ground_named(name: str) -> str:
    return f"the {name}" if name in GROUNDS else name


def _in_the_air(review: Review, found: list[tuple[tuple[str, ...], _Near]]) -> Finding:
    parts = tuple(name for island, _ in found for name in island)
    near = found[0][1]
    values: dict[str, Filling] = {
        "parts": listed(parts),
        "part": near.part,
        "gap": fine_length(near.gap),
        "where": BEYOND[near.axis][near.end],
        "near": _ground_named(near.name),
    }
    hangs = "hangs" if len(parts) == 1 else "hang"
    who = "it is" if len(parts) == 1 else "{part} is"
    last = "" if near.name in GROUNDS else ", the nearest part that stands"
    return Finding(
        parts=parts,
        at=placing_span(review.plan, near.part, near.axis),
        also_at=() if near.name in GROUNDS else (review.span_of(near.name),),
        says=f"{{parts}} {hangs} in the air: {who} {{gap}} {{where}} {{near}}{last}, with nothing between.",
        do="Close the gap of {gap} to {near}, or add what holds {parts} up.",
        values=values,
    )


@rule("part-floats", topic="fit", severity=Severity.ERROR, needs=("holding.floating",))
def part_floats(review: Review) -> Iterator[Finding]:
    """A part hangs in the air: it touches nothing that stands.

    Goes wrong: The part hangs in the air on paper. At the bench it turns out that a support, a joint
    or a measure was forgotten, often with holes already drilled for it.

    Judged by: From floor and wall upwards, a part is held when it lies on one that is held, or when a
    join fixes it to one, or hardware holds it (hinges and slides across the gap that they need, castors
    off the floor). Parts that hang together are told as one, with the nearest part that stands and how
    far off it is.

    Leaves out: Whether what holds a part is strong enough. What touches something that stands and is not
    carried by it: load-path-broken tells that. Parts that share space with a part that stands are left to
    parts-overlap, parts that miss what they are placed at to meets-nothing, and parts that miss what they
    are joined to to joint-out-of-reach. Doors and drawers without hardware: moves-unfitted tells those.

    Sources: plain statics: what nothing holds falls

    Flagged:

        plan "Bench without rails" in inches
        stock board: 2x10 pine
        part leg for each of left, right: board, upright, facing side, 16 tall, on floor, front at 0
            flush with each of frame
        outline frame: 48 across, 9 1/4 deep, 18 tall, on floor
        part seat: board, across, flat, from left of frame to right of frame, front at 0
            bottom 17 above floor

    Quiet:

        plan "Bench on legs" in inches
        stock board: 2x10 pine
        part leg for each of left, right: board, upright, facing side, 16 tall, on floor, front at 0
            flush with each of frame
        outline frame: 48 across, 9 1/4 deep, 18 tall, on floor
        part seat: board, across, flat, from left of frame to right of frame, front at 0, on leg.left
        join seat to leg.*: screws #8 x 3, 2 per end, from above
    """
    if not review.holding.floating:
        return
    floating = set(review.holding.floating)
    standing = _Standing([solid for name, solid in review.setting.solids.items() if name not in floating])
    apart: dict[tuple[object, ...], list[tuple[tuple[str, ...], _Near]]] = {}
    for island in review.islands:
        if island.lets or not review.told_by_place.isdisjoint(island.parts):
            continue
        families = tuple(dict.fromkeys(_family(review, name) for name in island.parts))
        near: _Near | None = None
        for name in island.parts:
            near = _to_grounds(review, review.setting.solids[name], near)
            near = standing.nearest(review.setting.solids[name], near)
        assert near is not None
        key = (families, _family(review, near.name), near.axis, near.end, round(near.gap, 2))
        apart.setdefault(key, []).append((island.parts, near))
    for gapped in apart.values():
        yield _in_the_air(review, gapped)
