"""What touches and what overlaps: a sort-and-sweep on the axis that separates the parts best.

Square solids are compared by their bounds, which are exact for them; others by their convex pieces
(:mod:`reviewer.setting_out.meeting`). The broad phase serves every kind of solid, since bounds are always
kept.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence

from reviewer.records import NamedTuple
from reviewer.setting_out.result import Contact, Overlap
from reviewer.setting_out.solid import Solid, Surface, Vector
from reviewer.units import TOLERANCE_MM

#: A piece of furniture has a few contacts a part. Beyond this many pairs a plan is not a piece.
MAX_PAIRS = 100_000
MAX_CANDIDATES = 6_000_000

_UNITS: tuple[Vector, Vector, Vector] = ((1.0, 0.0, 0.0), (0.0, 1.0, 0.0), (0.0, 0.0, 1.0))


#: A shaped pair takes a hundred times as long as a square one, and a sound piece has hardly any that overlap.
MAX_SHAPED_OVERLAPS = 300


class Meetings(NamedTuple):
    """Contacts and overlaps in the order of the solids; ``crowded`` when the search stopped early."""

    contacts: tuple[Contact, ...]
    overlaps: tuple[Overlap, ...]
    crowded: bool


def _pairs_on(solids: Sequence[Solid], axis: int, near: float) -> int:
    """How many pairs share ground on an axis or come so near there, counted without making them."""
    lows = sorted(solid.low[axis] for solid in solids)
    highs = sorted(solid.high[axis] + near for solid in solids)
    open_now = total = ended = 0
    for low in lows:
        while highs[ended] < low:
            ended += 1
            open_now -= 1
        total += open_now
        open_now += 1
    return total


def candidates(solids: Sequence[Solid], apart: float = 0.0) -> Iterator[tuple[int, int]]:
    """Pairs of indexes whose bounds are no more than ``apart`` mm and the tolerance apart, each once.

    Raises OverflowError in a plan far too crowded.
    """
    if len(solids) < 2:
        return
    near = apart + TOLERANCE_MM
    axis = min(range(3), key=lambda each: (_pairs_on(solids, each, near), each))
    first, second = (other for other in range(3) if other != axis)
    numbers = range(len(solids))
    order = sorted(numbers, key=lambda index: solids[index].low[axis])
    ending = iter(sorted(numbers, key=lambda index: solids[index].high[axis]))
    ends_next = next(ending)
    open_now: dict[int, tuple[float, float, float, float]] = {}  # bounds on the other two axes
    looked = 0
    for index in order:
        low, high = solids[index].low, solids[index].high
        start = low[axis] - near
        while solids[ends_next].high[axis] < start:  # this one's own end is never before its start
            del open_now[ends_next]
            ends_next = next(ending)
        looked += len(open_now)
        if looked > MAX_CANDIDATES:
            raise OverflowError
        from_1, to_1 = low[first] - near, high[first] + near
        from_2, to_2 = low[second] - near, high[second] + near
        for other, (low_1, high_1, low_2, high_2) in open_now.items():
            if low_1 <= to_1 and high_1 >= from_1 and low_2 <= to_2 and high_2 >= from_2:
                yield (other, index) if other < index else (index, other)
        open_now[index] = low[first], high[first], low[second], high[second]


def _meeting(one: Solid, two: Solid) -> Contact | Overlap | None:
    """How two square solids meet: a face, shared space, or (along a line or a corner) nothing."""
    low = [max(one.low[axis], two.low[axis]) for axis in range(3)]
    high = [min(one.high[axis], two.high[axis]) for axis in range(3)]
    depth = [high[axis] - low[axis] for axis in range(3)]
    flat = [axis for axis in range(3) if depth[axis] <= TOLERANCE_MM]
    if not flat:
        shared_low = (low[0], low[1], low[2])
        shared_high = (high[0], high[1], high[2])
        first, second = sorted((one.name, two.name))
        return Overlap(first, second, shared_low, shared_high, depth[0] * depth[1] * depth[2])
    if len(flat) > 1:
        return None
    axis = flat[0]
    middle = (low[axis] + high[axis]) / 2
    patch_low, patch_high = list(low), list(high)
    patch_low[axis] = patch_high[axis] = middle
    lower, upper = (one, two) if one.centre[axis] <= two.centre[axis] else (two, one)
    area = 1.0
    for other in range(3):
        if other != axis:
            area *= depth[other]
    return Contact(
        lower.name,
        upper.name,
        axis,
        (patch_low[0], patch_low[1], patch_low[2]),
        (patch_high[0], patch_high[1], patch_high[2]),
        area,
        lower.surface(axis),
        upper.surface(axis),
        _UNITS[axis],
    )


def meetings(solids: Sequence[Solid]) -> Meetings:
    """All contacts and overlaps among solids, in the order of the first and then the second of a pair."""
    contacts: list[tuple[int, int, Contact]] = []
    overlaps: list[tuple[int, int, Overlap]] = []
    crowded = False
    shaped_overlaps = 0
    shaped = {index for index, solid in enumerate(solids) if solid.body is not None or not solid.square}
    meet = _shaped_meeting(solids) if shaped else None
    try:
        for one, two in candidates(solids):
            if meet is not None and (one in shaped or two in shaped):
                for each in meet(one, two):
                    if isinstance(each, Contact):
                        contacts.append((one, two, each))
                    else:
                        overlaps.append((one, two, each))
                        shaped_overlaps += 1
                if shaped_overlaps >= MAX_SHAPED_OVERLAPS:
                    crowded = True
                    break
                found = None
            else:
                found = _meeting(solids[one], solids[two])
            if isinstance(found, Contact):
                contacts.append((one, two, found))
            elif found is not None:
                overlaps.append((one, two, found))
            if len(contacts) + len(overlaps) >= MAX_PAIRS:
                crowded = True
                break
    except OverflowError:
        crowded = True
    return Meetings(
        tuple(contact for _, _, contact in sorted(contacts)),
        tuple(overlap for _, _, overlap in sorted(overlaps)),
        crowded,
    )


def _shaped_meeting(solids: Sequence[Solid]) -> Callable[[int, int], list[Contact | Overlap]]:
    """How two solids by number meet when one of them is no square board; bodies are made once."""
    from reviewer.setting_out.meeting import Meeter

    return Meeter(solids).meet


def ground_contacts(solid: Solid, ground: str, axis: int, place: float) -> Sequence[Contact]:
    """The faces with which a solid stands on the floor (``axis`` up) or against the wall; none off it.

    The floor is on the low side of its parts, the wall (behind or to the right) on the high side. A square
    board has one, a shaped one as many as it has feet.
    """
    on_low_side = ground == "floor" or place <= solid.low[axis] + TOLERANCE_MM
    mine = solid.low[axis] if on_low_side else solid.high[axis]
    if abs(mine - place) > TOLERANCE_MM:
        return ()
    if solid.body is not None or not solid.square:
        from reviewer.setting_out.meeting import standing_faces

        return standing_faces(solid, ground, axis, place, on_low_side)
    low: list[float] = list(solid.low)
    high: list[float] = list(solid.high)
    low[axis] = high[axis] = place
    area = 1.0
    for other in range(3):
        if other != axis:
            area *= solid.extent(other)
    patch: tuple[Vector, Vector] = ((low[0], low[1], low[2]), (high[0], high[1], high[2]))
    face: Surface = "face"
    if on_low_side:
        return (Contact(ground, solid.name, axis, *patch, area, face, solid.surface(axis), _UNITS[axis]),)
    return (Contact(solid.name, ground, axis, *patch, area, solid.surface(axis), face, _UNITS[axis]),)
