"""A sparse symmetric system with six freedoms to a node, factorised as LDLᵀ in blocks, without numpy.

Numpy alone would cost a cold start more than most frames do. The nodes are eliminated in the order of least
degree (the neighbours of a node become neighbours of each other), so a rail between two legs costs no more
than its own two ends. Nothing is pivoted: the matrix is a sum of springs, so it can't be negative, and a
pivot of nothing is a freedom that no spring holds.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from heapq import heapify, heappop, heappush
from typing import NamedTuple

FREEDOMS = 6
#: A pivot below this share of its diagonal is what rounding leaves of nothing.
_LOOSE_SHARE = 1e-11
#: The springs hold what the loads do, but for this share of it.
_BALANCE = 1e-6

Six = tuple[float, float, float, float, float, float]
_Block = list[list[float]]
NOTHING: Six = (0.0, 0.0, 0.0, 0.0, 0.0, 0.0)


class Spring(NamedTuple):
    """A stiffness, and how far it is stretched by each freedom of the nodes that it holds.

    Freedoms are three shifts (mm) and three turns (rad); stiffness is in N/mm where the stretch is in mm, and
    in N·mm where it is in rad.
    """

    stiffness: float
    stretch: tuple[tuple[int, Six], ...]


class Loose(NamedTuple):
    """No spring holds ``freedom`` (0 to 2 shift, 3 to 5 turn) of ``node``; ``motion`` is how all move so."""

    node: int
    freedom: int
    motion: tuple[Six, ...]


class TooLargeError(Exception):
    """The system would take more work than was allowed. Nothing has been solved."""


class UnsolvedError(Exception):
    """Rounding has eaten the answer: what the loads do and what the springs hold are not the same."""


def elimination_order(
    neighbours: Sequence[dict[int, None]], most: float
) -> tuple[list[int], list[list[int]], int]:
    """The nodes in order of least degree, by place what is still joined to it when it goes, and the work.

    The work counts the blocks that are changed. ``neighbours`` is used up. Raises :class:`TooLargeError`
    as soon as the work passes ``most``.
    """
    work = 0
    waiting = [(len(found), node) for node, found in enumerate(neighbours)]
    heapify(waiting)
    gone = [False] * len(neighbours)
    order: list[int] = []
    joined: list[list[int]] = []
    while waiting:
        degree, node = heappop(waiting)
        if gone[node] or degree != len(neighbours[node]):
            continue
        gone[node] = True
        order.append(node)
        left = list(neighbours[node])
        work += 1 + len(left) * (len(left) + 3) // 2
        if work > most:
            raise TooLargeError
        joined.append(left)
        for one in left:
            mine = neighbours[one]
            del mine[node]
            mine.update((two, None) for two in left if two != one)
            heappush(waiting, (len(mine), one))
    return order, joined, work


class Factors:
    """The factorised system. ``loose`` is what no spring holds, None when everything is held."""

    def __init__(
        self,
        count: int,
        springs: Iterable[Spring],
        fixed: Iterable[tuple[int, int]],
        most: float = math.inf,
    ) -> None:
        """``count`` nodes held by ``springs``; ``fixed`` freedoms (node, freedom) do not move at all.

        Raises :class:`TooLargeError` when it takes more work than ``most``: blocks of 6 by 6 to be changed,
        of which some 30,000 take a second.
        """
        self.count = count
        self.springs = tuple(springs)
        neighbours: list[dict[int, None]] = [{} for _ in range(count)]
        for spring in self.springs:
            for one, _ in spring.stretch:
                for two, _ in spring.stretch:
                    if one != two:
                        neighbours[one][two] = None
        self.order, joined, self.work = elimination_order(neighbours, most)
        place = [0] * count
        for number, node in enumerate(self.order):
            place[node] = number
        # Everything from here on counts by place in the order. A block below the diagonal keeps the rows of
        # the later node, so its row and the earlier node's pivots meet without turning anything.
        self._below: list[dict[int, _Block]] = [
            {place[node]: [[0.0] * FREEDOMS for _ in range(FREEDOMS)] for node in found} for found in joined
        ]
        self._pivots: list[_Block] = [[[0.0] * FREEDOMS for _ in range(FREEDOMS)] for _ in range(count)]
        self._add_up(place)
        self._hold(place, fixed)
        self._through: list[list[tuple[int, _Block]]] = []
        self.loose = self._eliminate()

    def _add_up(self, place: list[int]) -> None:
        for stiffness, stretch in self.springs:
            if not stiffness:
                continue
            for one, ours in stretch:
                here = place[one]
                g, h, i, j, k, m = (stiffness * each for each in ours)
                for two, theirs in stretch:
                    there = place[two]
                    if there < here:
                        continue
                    block = self._pivots[here] if there == here else self._below[here][there]
                    for number, factor in enumerate(theirs):
                        if factor:
                            a, b, c, d, e, f = block[number]
                            block[number] = [
                                a + factor * g,
                                b + factor * h,
                                c + factor * i,
                                d + factor * j,
                                e + factor * k,
                                f + factor * m,
                            ]

    def _hold(self, place: list[int], fixed: Iterable[tuple[int, int]]) -> None:
        """Take fixed freedoms, and turns that nothing takes part in, out of the system."""
        self._held = [[False] * FREEDOMS for _ in range(self.count)]
        for node, freedom in fixed:
            self._held[place[node]][freedom] = True
        self._idle = [[False] * FREEDOMS for _ in range(self.count)]
        self._sizes = [[self._pivots[here][k][k] for k in range(FREEDOMS)] for here in range(self.count)]
        for here in range(self.count):
            for k in range(3, FREEDOMS):
                if not self._sizes[here][k]:
                    self._idle[here][k] = not self._held[here][k]
                    self._held[here][k] = True
        for here, block in enumerate(self._pivots):
            held = self._held[here]
            for k in range(FREEDOMS):
                if held[k]:
                    block[k] = [0.0] * FREEDOMS
                    for row in block:
                        row[k] = 0.0
                    block[k][k] = self._sizes[here][k] = 1.0
            for there, rows in self._below[here].items():
                theirs = self._held[there]
                for r, row in enumerate(rows):
                    if theirs[r]:
                        rows[r] = [0.0] * FREEDOMS
                    elif any(held):
                        rows[r] = [0.0 if held[k] else each for k, each in enumerate(row)]

    def _eliminate(self) -> Loose | None:
        below = self._below
        for here in range(self.count):
            block = self._pivots[here]
            loose = _factorise(block, self._sizes[here])
            if loose is not None:
                return self._loose(here, loose)
            mine = sorted(below[here].items())
            through = [(there, [_divided(block, row) for row in rows]) for there, rows in mine]
            self._through.append(through)
            for number, (there, shares) in enumerate(through):
                _take_off(self._pivots[there], mine[number][1], shares)
                for later, rows in mine[number + 1 :]:
                    _take_off(below[there][later], rows, shares)
        return None

    def _loose(self, here: int, freedom: int) -> Loose:
        """The motion that meets no stiffness: one at the freedom, and what everything before it then does."""
        block = self._pivots[here]
        motion = [[0.0] * FREEDOMS for _ in range(self.count)]
        motion[here][freedom] = 1.0
        for k in range(freedom - 1, -1, -1):
            motion[here][k] = -sum(block[r][k] * motion[here][r] for r in range(k + 1, freedom + 1))
        self._back(motion, here)
        return Loose(self.order[here], freedom, self._by_node(motion))

    def _back(self, moved: list[list[float]], start: int) -> None:
        for here in range(start - 1, -1, -1):
            mine = moved[here]
            for there, shares in self._through[here]:
                for share, shift in zip(shares, moved[there], strict=True):
                    if shift:
                        for k in range(FREEDOMS):
                            mine[k] -= share[k] * shift

    def _by_node(self, moved: list[list[float]]) -> tuple[Six, ...]:
        found: list[Six] = [NOTHING] * self.count
        for here, node in enumerate(self.order):
            a, b, c, d, e, f = moved[here]
            found[node] = (a, b, c, d, e, f)
        return tuple(found)

    def solve(self, loads: dict[int, Six]) -> tuple[Six, ...] | Loose:
        """The shifts (mm) and turns (rad) of every node under forces (N) and moments (N·mm) by node.

        A load on a freedom that no spring takes part in is given back as :class:`Loose`. Raises ValueError
        when the system is loose as it stands (see ``loose``), and :class:`UnsolvedError` when the answer does
        not keep the balance of work.
        """
        if self.loose is not None:
            raise ValueError("nothing holds the frame")
        moved = [list(loads.get(node, NOTHING)) for node in self.order]
        for here, load in enumerate(moved):
            for k in range(FREEDOMS):
                if load[k] and self._idle[here][k]:
                    motion = [[0.0] * FREEDOMS for _ in range(self.count)]
                    motion[here][k] = 1.0
                    return Loose(self.order[here], k, self._by_node(motion))
                if self._held[here][k]:
                    load[k] = 0.0
        for here in range(self.count):
            mine = moved[here]
            if any(mine):
                for there, rows in self._through[here]:
                    theirs = moved[there]
                    for r, row in enumerate(rows):
                        theirs[r] -= sum(a * b for a, b in zip(row, mine, strict=True))
        for here in range(self.count):
            moved[here] = _divided(self._pivots[here], moved[here])
        self._back(moved, self.count)
        found = self._by_node(moved)
        done = sum(sum(a * b for a, b in zip(load, found[node], strict=True)) for node, load in loads.items())
        if not abs(self.energy(found) - done) <= _BALANCE * done:
            raise UnsolvedError
        return found

    def energy(self, moved: Sequence[Six]) -> float:
        """Twice the work stored in the springs when the nodes have moved so, N·mm."""
        total = 0.0
        for spring in self.springs:
            stretched = stretch(spring, moved)
            total += spring.stiffness * stretched * stretched
        return total


def stretch(spring: Spring, moved: Sequence[Six]) -> float:
    """How far a spring is stretched when the nodes have moved so (mm, or rad for a turning spring)."""
    return sum(sum(a * b for a, b in zip(part, moved[node], strict=True)) for node, part in spring.stretch)


def _factorise(block: _Block, sizes: Sequence[float]) -> int | None:
    """LDLᵀ of a block in place: D on the diagonal, L below it. Gives the first pivot that is nothing."""
    for k in range(FREEDOMS):
        row = block[k]
        pivot = row[k]
        if pivot <= _LOOSE_SHARE * sizes[k]:
            return k
        for r in range(k + 1, FREEDOMS):
            other = block[r]
            factor = other[k] / pivot
            if factor:
                for c in range(k + 1, r + 1):
                    other[c] -= factor * block[c][k]
        for r in range(k + 1, FREEDOMS):
            block[r][k] /= pivot
    return None


def _divided(block: _Block, row: Sequence[float]) -> list[float]:
    """D⁻¹ times a row, by the factors of a block."""
    (d0, *_), (l10, d1, *_), (l20, l21, d2, *_), (l30, l31, l32, d3, *_), (*l4, d4, _), (*l5, d5) = block
    a, b, c, d, e, f = row
    b -= l10 * a
    c -= l20 * a + l21 * b
    d -= l30 * a + l31 * b + l32 * c
    e -= l4[0] * a + l4[1] * b + l4[2] * c + l4[3] * d
    f = (f - (l5[0] * a + l5[1] * b + l5[2] * c + l5[3] * d + l5[4] * e)) / d5
    e = e / d4 - l5[4] * f
    d = d / d3 - l4[3] * e - l5[3] * f
    c = c / d2 - l32 * d - l4[2] * e - l5[2] * f
    b = b / d1 - l21 * c - l31 * d - l4[1] * e - l5[1] * f
    a = a / d0 - l10 * b - l20 * c - l30 * d - l4[0] * e - l5[0] * f
    return [a, b, c, d, e, f]


def _take_off(block: _Block, rows: _Block, shares: _Block) -> None:
    """Take what passes through an eliminated node off the block between two of its neighbours."""
    for number, (g, h, i, j, k, m) in enumerate(rows):
        if g or h or i or j or k or m:
            block[number] = [
                x - (a * g + b * h + c * i + d * j + e * k + f * m)
                for x, (a, b, c, d, e, f) in zip(block[number], shares, strict=True)
            ]
