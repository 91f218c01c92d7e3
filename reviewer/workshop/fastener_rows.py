"""Where a joint's fasteners stand in it: in one row along its middle, or in two where it is wide."""

from __future__ import annotations

import math

from reviewer.model.plan import Fastening
from reviewer.records import NamedTuple
from reviewer.reference.usual_values import usual_value
from reviewer.workshop.fastener_sizes import diameter_of

#: No joint holds more fasteners of a kind than this; a plan that states a count may not state more either.
MOST_IN_JOINT = 1_000
#: A joint is as good as square when it is no longer than so many times its width.
_SQUARE = 1.5


class Spot(NamedTuple):
    """Where one fastener stands in a joint: ``along`` its row and ``across``, mm."""

    along: float
    across: float


def usual_count() -> int:
    """How many fasteners of a kind a joint is taken to have where the plan states no number."""
    return round(usual_value("fasteners-in-joint"))


def _usual_inset(fastening: Fastening) -> float:
    """How far the first of a row stands from the end of the joint where the plan does not say, mm."""
    return usual_value("first-from-end") * diameter_of(fastening)


def row_ends(low: float, high: float, count: int, fastening: Fastening) -> tuple[float, float]:
    """Where the first and the last of a row of fasteners sit along a joint from ``low`` to ``high``, mm.

    A stated spacing is kept, in the middle of the joint; else the outer ones sit near its ends, as far
    from them as the plan says.
    """
    middle, run = (low + high) / 2, high - low
    if count < 2:
        return middle, middle
    if fastening.from_end is not None:
        inset = min(fastening.from_end, run / 2)
    else:
        inset = min(_usual_inset(fastening), run / 4)
    length = run - 2 * inset
    if fastening.spacing is not None and fastening.count is None:
        length = min(length, (count - 1) * fastening.spacing)
    return middle - length / 2, middle + length / 2


def count_in(run: float, fastening: Fastening) -> tuple[int, bool]:
    """How many fasteners of a kind stand in a joint of a length (mm), and whether that is assumed.

    A spacing that gives more than ``MOST_IN_JOINT`` gives that many (``spaced_too_close``).
    """
    if fastening.count is not None:
        return fastening.count, False
    if fastening.spacing is not None:
        inset = fastening.from_end
        if inset is None:
            inset = _usual_inset(fastening)
        # As many as stand that far apart and leave the ends of the joint whole.
        gaps = math.floor(min((run - 2 * inset) / fastening.spacing, MOST_IN_JOINT) + 1e-9)
        return min(max(1, gaps + 1), MOST_IN_JOINT), False
    return usual_count(), True


def spaced_too_close(count: int, fastening: Fastening) -> bool:
    """True where a stated spacing gives so many that the review goes by no more than that."""
    return count >= MOST_IN_JOINT and fastening.count is None


def count_assumed(fastening: Fastening) -> bool:
    """True where neither a count nor a spacing is stated."""
    return fastening.count is None and fastening.spacing is None


def pattern_assumed(fastening: Fastening) -> bool:
    """True where the plan leaves open how many there are or where they stand."""
    return fastening.from_end is None or count_assumed(fastening)


def spots(
    along: tuple[float, float],
    across: tuple[float, float],
    count: int,
    fastening: Fastening,
    one_row: bool = False,
) -> list[Spot]:
    """Where ``count`` fasteners stand in a joint that reaches from low to high ``along`` and ``across``.

    One row goes along the middle, or ``from edge`` off the outer edge where the plan says that. A joint
    that is wide both ways takes two rows: turn about, or in pairs where it is as good as square.
    """
    low, high = across
    width, length = high - low, along[1] - along[0]
    first, last = row_ends(*along, count, fastening)
    middle = (low + high) / 2
    two = not one_row and count >= 2 and width >= usual_value("two-rows-width")
    edge = fastening.from_edge
    if not two:
        if edge is not None:
            middle = min(low + edge, middle)
        if count < 2:
            return [Spot((first + last) / 2, middle)]
        step = (last - first) / (count - 1)
        return [Spot(first + number * step, middle) for number in range(count)]
    inset = min(edge if edge is not None else usual_value("row-inset-share") * width, width / 2)
    rows = (low + inset, high - inset)
    if count >= 4 and count % 2 == 0 and length <= _SQUARE * width and fastening.spacing is None:
        half = count // 2
        first, last = row_ends(*along, half, fastening)
        step = (last - first) / (half - 1)
        return [Spot(first + number // 2 * step, rows[number % 2]) for number in range(count)]
    step = (last - first) / (count - 1)
    return [Spot(first + number * step, rows[number % 2]) for number in range(count)]
