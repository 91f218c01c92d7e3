"""Checks of cutting layouts by their bare measures, and general solvers to compare their answers with.

Nothing here uses the code under test: a layout is judged by what a tape measure would find.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence
from itertools import combinations, product
from pathlib import Path
from typing import Any, NamedTuple

import numpy
from scipy.optimize import Bounds, LinearConstraint, milp

DATA = Path(__file__).parents[1] / "published" / "data" / "cutting"
#: Two places closer than this are the same place (a tenth of a mark on a bench rule), mm.
SAME = 0.05 + 1e-6


# ---------------------------------------------------------------- measuring


def assert_bars_right(layout: Any, pieces: Iterable[tuple[str, float]], kerf: float, trim: float) -> None:
    """Every piece once at its length, a kerf between neighbours, trimmed ends kept clear, offcuts true."""
    cut = Counter((c.name, c.length) for bar in layout.bars for c in bar.cuts)
    assert cut == Counter(tuple(piece) for piece in pieces)
    for bar in layout.bars:
        assert bar.cuts
        at = trim
        for c in bar.cuts:
            assert c.start >= at - 1e-6
            at = c.start + c.length + kerf
        last = at - kerf
        assert last <= bar.length - trim + SAME
        assert abs(bar.offcut - max(0.0, bar.length - trim - at)) < 1e-6


def assert_bought_from(layout: Any, offers: Iterable[tuple[float, int | None]]) -> None:
    """No bar of a length that is not offered, and of none more than there are."""
    there: dict[float, float] = {}
    for length, count in offers:
        there[length] = there.get(length, 0) + (float("inf") if count is None else count)
    for length, number in Counter(bar.length for bar in layout.bars).items():
        assert number <= there.get(length, 0)


class Rectangle(NamedTuple):
    """A piece as it lies."""

    x: float
    y: float
    length: float
    width: float


def _apart(one: Rectangle, two: Rectangle, kerf: float) -> bool:
    gaps = (
        two.x - (one.x + one.length),
        one.x - (two.x + two.length),
        two.y - (one.y + one.width),
        one.y - (two.y + two.width),
    )
    return max(gaps) >= kerf - SAME


def can_be_cut_apart(pieces: Sequence[Rectangle], kerf: float) -> bool:
    """True when edge-to-edge cuts of one kerf's width free every piece: looked for, not looked up."""
    if len(pieces) <= 1:
        return True
    for low, size in ((0, 2), (1, 3)):
        order = sorted(pieces, key=lambda piece: piece[low])
        reach = order[0][low] + order[0][size]
        for place in range(1, len(order)):
            if order[place][low] - reach >= kerf - SAME:
                near, far = order[:place], order[place:]
                if can_be_cut_apart(near, kerf) and can_be_cut_apart(far, kerf):
                    return True
            reach = max(reach, order[place][low] + order[place][size])
    return False


def assert_sheets_right(layout: Any, pieces: Iterable[Any], kerf: float, trim: float) -> None:
    """Every piece once and turned only where it may be; inside, a kerf apart, free by edge-to-edge cuts."""
    asked = {piece.name: piece for piece in pieces}
    names = [placed.name for sheet in layout.sheets for placed in sheet.pieces]
    assert Counter(names) == Counter(list(asked))
    for sheet in layout.sheets:
        assert sheet.pieces
        lying = []
        for placed in sheet.pieces:
            piece = asked[placed.name]
            assert not placed.turned or piece.turns
            sides = (piece.width, piece.length) if placed.turned else (piece.length, piece.width)
            assert (placed.length, placed.width) == sides
            assert placed.x >= trim - 1e-6
            assert placed.y >= trim - 1e-6
            assert placed.x + placed.length <= sheet.length - trim + SAME
            assert placed.y + placed.width <= sheet.width - trim + SAME
            lying.append(Rectangle(placed.x, placed.y, placed.length, placed.width))
        assert all(_apart(one, two, kerf) for one, two in combinations(lying, 2))
        assert can_be_cut_apart(lying, kerf)
        saw(sheet.tree, Rectangle(trim, trim, sheet.length - 2 * trim, sheet.width - 2 * trim), kerf)


def _same(one: Sequence[float], two: Sequence[float]) -> bool:
    return all(abs(a - b) <= SAME for a, b in zip(one, two, strict=True))


def saw(tree: Any, there: Rectangle, kerf: float) -> None:
    """Make the cuts of a tree one by one; every piece and offcut must be what then lies on the bench."""
    if not hasattr(tree, "how"):
        assert _same((tree.x, tree.y, tree.length, tree.width), there)
        return
    assert _same((tree.x, tree.y, tree.length, tree.width), there)
    if tree.how == "crosscut":
        near = Rectangle(there.x, there.y, tree.at - there.x, there.width)
        far = Rectangle(tree.at + kerf, there.y, there.x + there.length - tree.at - kerf, there.width)
        left = far.length
    else:
        near = Rectangle(there.x, there.y, there.length, tree.at - there.y)
        far = Rectangle(there.x, tree.at + kerf, there.length, there.y + there.width - tree.at - kerf)
        left = far.width
    saw(tree.first, near, kerf)
    if tree.second is None:
        assert left <= SAME
    else:
        saw(tree.second, far, kerf)


# ---------------------------------------------------------------- general solvers


def _patterns(sizes: Sequence[int], demand: Sequence[int], capacity: int) -> list[tuple[int, ...]]:
    found = [
        pattern
        for pattern in product(*(range(number + 1) for number in demand))
        if any(pattern) and sum(s * n for s, n in zip(sizes, pattern, strict=True)) <= capacity
    ]
    return found


def least_cost(
    pieces: Sequence[int], bars: Sequence[tuple[int, float, int | None]], kerf: int
) -> float | None:
    """The least cost of bars (length, cost, count) that give all pieces, or None when nothing does.

    An integer programme over every pattern there is, solved by scipy's general solver. Whole lengths:
    n pieces and the n - 1 cuts between them must fit, that is n times (piece + kerf) in bar + kerf.
    """
    numbers = Counter(pieces)
    sizes = sorted(numbers, reverse=True)
    demand = [numbers[size] for size in sizes]
    columns, costs, kinds = [], [], []
    for kind, (length, cost, count) in enumerate(bars):
        if count == 0:
            continue
        for pattern in _patterns([size + kerf for size in sizes], demand, length + kerf):
            columns.append(pattern)
            costs.append(cost)
            kinds.append(kind)
    if not pieces:
        return 0.0
    if not columns:
        return None
    matrix = numpy.array(columns, dtype=float).T
    constraints = [LinearConstraint(matrix, lb=numpy.array(demand, dtype=float))]
    for kind, (_, _, count) in enumerate(bars):
        if count is not None:
            row = numpy.array([[1.0 if k == kind else 0.0 for k in kinds]])
            constraints.append(LinearConstraint(row, ub=numpy.array([float(count)])))
    answer = milp(
        numpy.array(costs, dtype=float),
        constraints=constraints,
        integrality=numpy.ones(len(costs)),
        bounds=Bounds(0, numpy.inf),
        options={"mip_rel_gap": 0.0},
    )
    return float(answer.fun) if answer.status == 0 else None


def sheet_holds(pieces: Sequence[tuple[int, int, bool]], length: int, width: int, kerf: int) -> bool:
    """Whether up to four pieces (length, width, may turn) lie in one sheet, a kerf apart.

    An integer programme that puts each pair apart on one side or other. Up to four pieces apart can
    always be freed by edge-to-edge cuts (it takes five to lock each other in), so the question is the
    same as for a saw.
    """
    assert len(pieces) <= 4
    count = len(pieces)
    # Per piece: x, y, turned; per pair: four binaries, one of which holds.
    pairs = list(combinations(range(count), 2))
    size = 3 * count + 4 * len(pairs)
    big = float(length + width + kerf)
    rows: list[list[float]] = []
    uppers: list[float] = []

    def extent(row: list[float], piece: int, axis: int, factor: float) -> float:
        """Add a piece's extent on an axis to a row; what of it is constant comes back."""
        sides = pieces[piece][:2]
        row[3 * piece + 2] += factor * (sides[1 - axis] - sides[axis])
        return factor * sides[axis]

    for piece in range(count):
        for axis, most in ((0, length), (1, width)):
            row = [0.0] * size
            row[3 * piece + axis] = 1.0
            constant = extent(row, piece, axis, 1.0)
            rows.append(row)
            uppers.append(most - constant)
    for place, (one, two) in enumerate(pairs):
        first = 3 * count + 4 * place
        for turn, (near, far, axis) in enumerate(
            ((one, two, 0), (two, one, 0), (one, two, 1), (two, one, 1))
        ):
            row = [0.0] * size  # near + extent + kerf <= far + big * (1 - chosen)
            row[3 * near + axis] += 1.0
            row[3 * far + axis] -= 1.0
            constant = extent(row, near, axis, 1.0)
            row[first + turn] = big
            rows.append(row)
            uppers.append(big - kerf - constant)
        row = [0.0] * size
        for turn in range(4):
            row[first + turn] = -1.0
        rows.append(row)
        uppers.append(-1.0)
    upper = [float("inf")] * size
    whole = [1.0] * size
    for piece in range(count):
        upper[3 * piece + 2] = 1.0 if pieces[piece][2] else 0.0
    for place in range(3 * count, size):
        upper[place] = 1.0
    answer = milp(
        numpy.zeros(size),
        constraints=LinearConstraint(numpy.array(rows), ub=numpy.array(uppers)),
        integrality=numpy.array(whole),
        bounds=Bounds(numpy.zeros(size), numpy.array(upper)),
    )
    assert answer.status in (0, 2)
    return bool(answer.status == 0)


# ---------------------------------------------------------------- open data


class BarInstance(NamedTuple):
    """One instance of the one-dimensional set: no kerf."""

    name: str
    bar: int
    pieces: tuple[int, ...]

    @property
    def material_bound(self) -> int:
        """So many bars hold as much as all pieces together; no layout needs fewer."""
        return -(-sum(self.pieces) // self.bar)


def bar_instances() -> list[BarInstance]:
    """The twenty instances of 120 pieces; source in the README beside the file."""
    words = iter((DATA / "one-dimensional-u120.txt").read_text().split())
    found = []
    for _ in range(int(next(words))):
        name, bar, number, _ = next(words), int(next(words)), int(next(words)), next(words)
        found.append(BarInstance(name, bar, tuple(int(next(words)) for _ in range(number))))
    return found


def sheet_instance(number: int) -> tuple[tuple[int, int], list[tuple[int, int]]]:
    """The sheet and the pieces of a two-dimensional instance; source in the README beside the file."""
    numbers = [int(word) for word in (DATA / f"two-dimensional-gcut{number}.txt").read_text().split()]
    count, length, width = numbers[:3]
    rest = numbers[3:]
    assert len(rest) == 3 * count
    return (length, width), [(rest[3 * i], rest[3 * i + 1]) for i in range(count)]
