"""What rectangles in front of an opening leave of it: the area, and every largest rectangle that is clear.

Exact while the edges of what covers are few; more of them are moved outwards on to a grid, so that what is
left is never told too large.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from reviewer.records import NamedTuple

#: So many different edges are kept each way; beyond that they go out to a grid of as many.
MOST_EDGES = 96
#: What is thinner than this is no edge of its own, mm.
_SAME = 1e-6


class Patch(NamedTuple):
    """An upright rectangle, mm."""

    left: float
    bottom: float
    right: float
    top: float

    @property
    def wide(self) -> float:
        """Across, mm."""
        return self.right - self.left

    @property
    def tall(self) -> float:
        """Upwards, mm."""
        return self.top - self.bottom

    @property
    def area(self) -> float:
        """mm²."""
        return max(0.0, self.wide) * max(0.0, self.tall)


class Left(NamedTuple):
    """What is left of an opening."""

    area: float  # mm², of all that is clear
    clear: tuple[Patch, ...]  # every clear rectangle that no other clear one holds, the largest first
    exact: bool  # False where the edges were moved out to a grid


def left_of(opening: Patch, covers: Iterable[Patch]) -> Left:
    """What the covers leave of an opening."""
    inside = list(dict.fromkeys(cut for cover in covers if (cut := common(opening, cover)) is not None))
    exact = True
    xs = _edges(opening.left, opening.right, [x for cover in inside for x in (cover.left, cover.right)])
    ys = _edges(opening.bottom, opening.top, [y for cover in inside for y in (cover.bottom, cover.top)])
    if len(xs) > MOST_EDGES:
        xs, exact = _even(opening.left, opening.right), False
    if len(ys) > MOST_EDGES:
        ys, exact = _even(opening.bottom, opening.top), False
    rows = _free_rows(xs, ys, inside)
    area = sum(
        (ys[j + 1] - ys[j]) * (xs[b] - xs[a])
        for j, row in enumerate(rows)
        for a, b in _runs(row, len(xs) - 1)
    )
    clear = [Patch(xs[a], ys[i], xs[b], ys[j]) for a, i, b, j in _largest(rows, len(xs) - 1)]
    return Left(area, tuple(sorted(clear, key=lambda each: (-each.area, each.bottom, each.left))), exact)


def common(one: Patch, two: Patch) -> Patch | None:
    """What two rectangles share, None where that is no area."""
    cut = Patch(
        max(one.left, two.left), max(one.bottom, two.bottom), min(one.right, two.right), min(one.top, two.top)
    )
    return cut if cut.wide > _SAME and cut.tall > _SAME else None


def holds(outer: Patch, inner: Patch) -> bool:
    """True when a rectangle lies within another."""
    return (
        outer.left <= inner.left + _SAME
        and outer.bottom <= inner.bottom + _SAME
        and outer.right >= inner.right - _SAME
        and outer.top >= inner.top - _SAME
    )


def _edges(first: float, last: float, between: list[float]) -> list[float]:
    found = [first]
    for place in sorted(between):
        if place > found[-1] + _SAME and place < last - _SAME:
            found.append(place)
    return [*found, last]


def _even(first: float, last: float) -> list[float]:
    step = (last - first) / MOST_EDGES
    return [*(first + step * i for i in range(MOST_EDGES)), last]


def _free_rows(xs: Sequence[float], ys: Sequence[float], covers: Sequence[Patch]) -> list[int]:
    """By row of cells, the free ones as the bits of a number, the lowest on the left."""
    from bisect import bisect_left, bisect_right

    rows = [(1 << (len(xs) - 1)) - 1] * (len(ys) - 1)
    for cover in covers:
        a = bisect_right(xs, cover.left + _SAME) - 1
        b = bisect_left(xs, cover.right - _SAME)
        low = bisect_right(ys, cover.bottom + _SAME) - 1
        keep = ~(((1 << (b - a)) - 1) << a)
        for j in range(low, bisect_left(ys, cover.top - _SAME)):
            rows[j] &= keep
    return rows


def _runs(row: int, count: int) -> Iterator[tuple[int, int]]:
    """Where cells in a row are free without a break, as first and one past the last."""
    at = 0
    while at < count and row >> at:
        at += ((row >> at) & -(row >> at)).bit_length() - 1  # to the next free one
        rest = ~(row >> at)
        end = at + (rest & -rest).bit_length() - 1
        yield at, end
        at = end


def _largest(rows: Sequence[int], count: int) -> Iterator[tuple[int, int, int, int]]:
    """Every free rectangle of cells that can't grow to any side: left, bottom, right, top."""
    for i in range(len(rows)):
        common = (1 << count) - 1
        for j in range(i, len(rows)):
            common &= rows[j]
            if not common:
                break
            for a, b in _runs(common, count):
                run = ((1 << (b - a)) - 1) << a
                below = i > 0 and rows[i - 1] & run == run
                above = j + 1 < len(rows) and rows[j + 1] & run == run
                if not below and not above:
                    yield a, i, b, j + 1
