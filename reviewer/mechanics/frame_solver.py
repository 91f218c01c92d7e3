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

from reviewer.records import NamedTuple

FREEDOMS = 6
_ROWS = range(FREEDOMS)
_NO_ROW = [0.0] * FREEDOMS
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
        of which some 60,000 take a second.
        """
        self.count = count
        self.springs = tuple(springs)
        neighbours: list[dict[int, None]] = [{} for _ in range(count)]
        # Springs that hold the same nodes mostly follow each other, and are looked at once.
        last: tuple[int, ...] = ()
        for _, held in self.springs:
            nodes = tuple([node for node, _ in held])
            if nodes != last:
                last = nodes
                for one in nodes:
                    neighbours[one].update([(two, None) for two in nodes if two != one])
        self.order, joined, self.work = elimination_order(neighbours, most)
        place = [0] * count
        for number, node in enumerate(self.order):
            place[node] = number
        # Everything from here on counts by place in the order. A block below the diagonal keeps the rows of
        # the later node, so its row and the earlier node's pivots meet without turning anything; of a block
        # on the diagonal only the lower triangle is kept.
        self._below: list[dict[int, _Block]] = [
            {place[node]: [_NO_ROW[:] for _ in _ROWS] for node in found} for found in joined
        ]
        self._pivots: list[_Block] = [[[0.0] * (k + 1) for k in _ROWS] for _ in range(count)]
        self._add_up(place)
        self._hold(place, fixed)
        self._through: list[list[tuple[int, _Block]]] = []
        self.loose = self._eliminate()

    def _add_up(self, place: list[int]) -> None:
        pivots, below = self._pivots, self._below
        for stiffness, stretch in self.springs:
            if not stiffness:
                continue
            # Most springs lie along an axis: half of what they take part in is nothing.
            held = [
                (place[node], [(k, part) for k, part in enumerate(parts) if part]) for node, parts in stretch
            ]
            for here, ours in held:
                block = pivots[here]
                for r, part in ours:
                    row, factor = block[r], stiffness * part
                    for k, own in ours:
                        if k > r:
                            break
                        row[k] += factor * own
                for there, theirs in held:
                    if there > here:
                        block = below[here][there]
                        for r, part in theirs:
                            row, factor = block[r], stiffness * part
                            for k, own in ours:
                                row[k] += factor * own

    def _hold(self, place: list[int], fixed: Iterable[tuple[int, int]]) -> None:
        """Take fixed freedoms, and turns that nothing takes part in, out of the system."""
        self._held: dict[int, dict[int, None]] = {}
        for node, freedom in fixed:
            self._held.setdefault(place[node], {})[freedom] = None
        self._idle: dict[int, dict[int, None]] = {}
        self._sizes = [[row[-1] for row in block] for block in self._pivots]
        for here, sizes in enumerate(self._sizes):
            for k in (3, 4, 5):
                if not sizes[k] and k not in self._held.get(here, ()):
                    self._idle.setdefault(here, {})[k] = None
        for here, idle in self._idle.items():
            self._held.setdefault(here, {}).update(idle)
        if not self._held:
            return
        for here, block in enumerate(self._pivots):
            held = self._held.get(here, {})
            for k in held:
                block[k] = _NO_ROW[: k + 1]
                for row in block[k:]:
                    row[k] = 0.0
                block[k][k] = self._sizes[here][k] = 1.0
            for there, rows in self._below[here].items():
                for k in held:
                    for row in rows:
                        row[k] = 0.0
                for k in self._held.get(there, ()):
                    rows[k] = _NO_ROW[:]

    def _eliminate(self) -> Loose | None:
        below, pivots = self._below, self._pivots
        for here, block in enumerate(pivots):
            loose = _factorise(block, self._sizes[here])
            if loose is not None:
                return self._loose(here, loose)
            mine = sorted(below[here].items())
            through = []
            for number, (there, rows) in enumerate(mine):
                halves, shares = _halved(block, rows)
                through.append((there, shares))
                _take_off_own(pivots[there], halves, shares)
                for earlier, theirs in through[:number]:
                    _take_off(below[earlier][there], halves, theirs)
            self._through.append(through)
        return None

    def _loose(self, here: int, freedom: int) -> Loose:
        """The motion that meets no stiffness: one at the freedom, and what everything before it then does."""
        block = self._pivots[here]
        motion = [_NO_ROW[:] for _ in range(self.count)]
        motion[here][freedom] = 1.0
        for k in range(freedom - 1, -1, -1):
            motion[here][k] = -sum(block[r][k] * motion[here][r] for r in range(k + 1, freedom + 1))
        self._back(motion, here)
        return Loose(self.order[here], freedom, self._by_node(motion))

    def _back(self, moved: list[list[float]], start: int) -> None:
        """From what each node brings with it to how it moves, the last first."""
        for here in range(start - 1, -1, -1):
            a, b, c, d, e, f = moved[here]
            for there, shares in self._through[here]:
                for shift, (g, h, i, j, k, m) in zip(moved[there], shares, strict=True):
                    if shift:
                        a -= g * shift
                        b -= h * shift
                        c -= i * shift
                        d -= j * shift
                        e -= k * shift
                        f -= m * shift
            _, (l10, _), (l20, l21, _), (l30, l31, l32, _), (*l4, _), (*l5, _) = self._pivots[here]
            e -= l5[4] * f
            d -= l4[3] * e + l5[3] * f
            c -= l32 * d + l4[2] * e + l5[2] * f
            b -= l21 * c + l31 * d + l4[1] * e + l5[1] * f
            a -= l10 * b + l20 * c + l30 * d + l4[0] * e + l5[0] * f
            moved[here] = [a, b, c, d, e, f]

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
        for here, held in self._held.items():
            for k in held:
                if moved[here][k] and k in self._idle.get(here, ()):
                    motion = [_NO_ROW[:] for _ in range(self.count)]
                    motion[here][k] = 1.0
                    return Loose(self.order[here], k, self._by_node(motion))
                moved[here][k] = 0.0
        for here, mine in enumerate(moved):
            if not any(mine):
                continue
            (d0,), (l10, d1), (l20, l21, d2), (l30, l31, l32, d3), (*l4, d4), (*l5, d5) = self._pivots[here]
            a, b, c, d, e, f = mine
            b -= l10 * a
            c -= l20 * a + l21 * b
            d -= l30 * a + l31 * b + l32 * c
            e -= l4[0] * a + l4[1] * b + l4[2] * c + l4[3] * d
            f -= l5[0] * a + l5[1] * b + l5[2] * c + l5[3] * d + l5[4] * e
            for there, shares in self._through[here]:
                moved[there] = [
                    x - (a * g + b * h + c * i + d * j + e * k + f * m)
                    for x, (g, h, i, j, k, m) in zip(moved[there], shares, strict=True)
                ]
            moved[here] = [a / d0, b / d1, c / d2, d / d3, e / d4, f / d5]
        self._back(moved, self.count)
        found = self._by_node(moved)
        done = sum(sum(a * b for a, b in zip(load, found[node], strict=True)) for node, load in loads.items())
        if not abs(self.energy(found) - done) <= _BALANCE * done:
            raise UnsolvedError
        return found

    def energy(self, moved: Sequence[Six]) -> float:
        """Twice the work stored in the springs when the nodes have moved so, N·mm."""
        total = 0.0
        for stiffness, held in self.springs:
            stretched = 0.0
            for node, (a, b, c, d, e, f) in held:
                g, h, i, j, k, m = moved[node]
                stretched += a * g + b * h + c * i + d * j + e * k + f * m
            total += stiffness * stretched * stretched
        return total


def stretch(spring: Spring, moved: Sequence[Six]) -> float:
    """How far a spring is stretched when the nodes have moved so (mm, or rad for a turning spring)."""
    return sum(sum(a * b for a, b in zip(part, moved[node], strict=True)) for node, part in spring.stretch)


def _factorise(block: _Block, sizes: Sequence[float]) -> int | None:
    """LDLᵀ of a block in place: D on the diagonal, L below it. Gives the first pivot that is nothing."""
    for k in _ROWS:
        pivot = block[k][k]
        if not pivot > _LOOSE_SHARE * sizes[k]:
            return k
        for r in range(k + 1, FREEDOMS):
            other = block[r]
            if other[k]:
                factor = other[k] / pivot
                for c in range(k + 1, r + 1):
                    other[c] -= factor * block[c][k]
        for r in range(k + 1, FREEDOMS):
            block[r][k] /= pivot
    return None


def _halved(block: _Block, rows: _Block) -> tuple[_Block, _Block]:
    """L⁻¹ times each row by the factors of a block, and D⁻¹ times that."""
    (d0,), (l10, d1), (l20, l21, d2), (l30, l31, l32, d3), (l40, l41, l42, l43, d4), last = block
    l50, l51, l52, l53, l54, d5 = last
    halves, shares = [], []
    for a, b, c, d, e, f in rows:
        b -= l10 * a
        c -= l20 * a + l21 * b
        d -= l30 * a + l31 * b + l32 * c
        e -= l40 * a + l41 * b + l42 * c + l43 * d
        f -= l50 * a + l51 * b + l52 * c + l53 * d + l54 * e
        halves.append([a, b, c, d, e, f])
        shares.append([a / d0, b / d1, c / d2, d / d3, e / d4, f / d5])
    return halves, shares


def _take_off(block: _Block, halves: _Block, shares: _Block) -> None:
    """Take what passes through an eliminated node off the block between two of its neighbours.

    Most of the time goes here, so it is written out.
    """
    (
        (a0, b0, c0, d0, e0, f0),
        (a1, b1, c1, d1, e1, f1),
        (a2, b2, c2, d2, e2, f2),
        (a3, b3, c3, d3, e3, f3),
        (a4, b4, c4, d4, e4, f4),
        (a5, b5, c5, d5, e5, f5),
    ) = shares
    for number, (g, h, i, j, k, m) in enumerate(halves):
        p, q, r, s, t, u = block[number]
        block[number] = [
            p - (a0 * g + b0 * h + c0 * i + d0 * j + e0 * k + f0 * m),
            q - (a1 * g + b1 * h + c1 * i + d1 * j + e1 * k + f1 * m),
            r - (a2 * g + b2 * h + c2 * i + d2 * j + e2 * k + f2 * m),
            s - (a3 * g + b3 * h + c3 * i + d3 * j + e3 * k + f3 * m),
            t - (a4 * g + b4 * h + c4 * i + d4 * j + e4 * k + f4 * m),
            u - (a5 * g + b5 * h + c5 * i + d5 * j + e5 * k + f5 * m),
        ]


def _take_off_own(block: _Block, halves: _Block, shares: _Block) -> None:
    """The same off the block of one neighbour, of which only the lower triangle is kept."""
    for number, (g, h, i, j, k, m) in enumerate(halves):
        block[number] = [
            x - (a * g + b * h + c * i + d * j + e * k + f * m)
            for x, (a, b, c, d, e, f) in zip(block[number], shares, strict=False)
        ]
