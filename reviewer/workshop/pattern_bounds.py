"""Bounds for cutting stock: what no layout, however clever, can beat.

Whole numbers in and out, so that a bound is a proof and not a rounding. A *pattern* is what one bar
gives: so many pieces of each size. *Worths* put a value on each size such that no pattern is worth
more than its bar costs; the worth of all pieces is then the least they can cost. Good worths come
from the linear programme over all patterns, which makes its patterns as it needs them (P. C. Gilmore
and R. E. Gomory, "A linear programming approach to the cutting-stock problem", Operations Research 9
(1961) 849-859). It runs in floating point; its worths are made whole and checked again before use.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from reviewer.records import NamedTuple

#: Binary places kept when worths become whole numbers.
PLACES = 30
_DENSE = 40
_EPSILON = 1e-9

Pattern = tuple[int, ...]


class Kind(NamedTuple):
    """Bars of one kind: what fits in, what one weighs in the choice, how many there are (None: any)."""

    capacity: int
    weight: int
    limit: int | None


class Steps:
    """Effort left, counted and never timed, so that every machine gives up at the same place."""

    __slots__ = ("left",)

    def __init__(self, left: int) -> None:
        self.left = left

    def spend(self, number: int = 1) -> bool:
        """False once there is none left."""
        self.left -= number
        return self.left >= 0


class Fill(NamedTuple):
    """The most valuable pattern found for one bar, and what none can be worth more than."""

    value: int
    pattern: Pattern
    at_most: int


def densities(values: Sequence[int], sizes: Sequence[int]) -> list[int]:
    """Value per size, rounded up in the last binary place, so that bounds made from it stay bounds."""
    return [-((-value << _DENSE) // size) for value, size in zip(values, sizes, strict=True)]


def most_worth(room: int, density: int) -> int:
    """The most that so much room can be worth at a density of :func:`densities`."""
    return (room * density) >> _DENSE


def best_fill(
    values: Sequence[int], sizes: Sequence[int], limits: Sequence[int], capacity: int, steps: Steps
) -> Fill:
    """The pattern of greatest value that fits: a bounded knapsack by branch and bound.

    When the steps run out the best pattern so far comes back, and ``at_most`` is above its value.
    """
    dense = densities(values, sizes)
    order = [
        index for index, size in enumerate(sizes) if values[index] > 0 and limits[index] and size <= capacity
    ]
    order.sort(key=lambda index: (-dense[index], index))
    items = [(sizes[index], values[index], limits[index]) for index in order]
    after = [dense[index] for index in order[1:]] + [0]
    taken = [0] * len(order)
    best_value, best_taken, left = 0, tuple(taken), steps.left

    def go(at: int, room: int, value: int) -> None:
        nonlocal best_value, best_taken, left
        left -= 1
        size, worth, limit = items[at]
        number = min(limit, room // size)
        while number >= 0 and left >= 0:
            still, now = room - number * size, value + number * worth
            taken[at] = number
            if now > best_value:
                best_value, best_taken = now, tuple(taken)
            if now + (still * after[at] >> _DENSE) > best_value:
                go(at + 1, still, now)
            number -= 1
        taken[at] = 0

    if order:
        go(0, capacity, 0)
    counts = [0] * len(sizes)
    for index, number in zip(order, best_taken, strict=True):
        counts[index] = number
    complete, steps.left = left >= 0, max(0, left)
    at_most = best_value if complete else max(best_value, most_worth(capacity, dense[order[0]]))
    return Fill(best_value, tuple(counts), at_most)


@dataclass(frozen=True)
class Measure:
    """A yardstick for finite bars: no bar of kind k holds more than ``most[k]`` of it."""

    each: Pattern
    most: Pattern

    def spare(self, demand: Sequence[int], left: Sequence[int]) -> int:
        """What the bars left can hold beyond the demand; below nothing, the demand cannot fit."""
        needed = sum(each * number for each, number in zip(self.each, demand, strict=True) if number)
        return sum(most * number for most, number in zip(self.most, left, strict=True)) - needed

    def overfull(self, demand: Sequence[int], left: Sequence[int]) -> bool:
        """True when the demand measures more than all bars left can hold, so that it cannot fit."""
        return self.spare(demand, left) < 0


@dataclass(frozen=True)
class Worths:
    """A proof in whole numbers: no pattern of the demand is worth more than its bar of kind k costs.

    What it costs is the kind's weight and ``rents[k]``. All are scaled by 2**PLACES. A kind with a count
    may earn a rent, paid once for each such bar still to be had; so the bound below holds for what is
    left of any half-made layout.
    """

    each: Pattern
    rents: Pattern

    def value(self, demand: Sequence[int], left: Sequence[int | None]) -> int:
        """What the demand is worth less the rents of the bars left, scaled; below nothing at times."""
        value = sum(worth * number for worth, number in zip(self.each, demand, strict=True) if number)
        return value - sum(
            rent * number for rent, number in zip(self.rents, left, strict=True) if rent and number
        )

    def at_least(self, demand: Sequence[int], left: Sequence[int | None]) -> int:
        """The least weight that cutting the demand from the bars left can come to."""
        return max(0, -(-self.value(demand, left) >> PLACES))

    def as_measure(self, kinds: Sequence[Kind]) -> Measure:
        """The same worths as a yardstick for so many bars of each kind."""
        most = [(kind.weight << PLACES) + rent for kind, rent in zip(kinds, self.rents, strict=True)]
        return Measure(self.each, tuple(most))


_PROOF_STEPS = 60_000
_PRICING_STEPS = 4_000
_PROGRAMME_STEPS = 400_000
_REFRESH = 20  # prices are worked out afresh so often, so that rounding does not pile up
_ROW_WORK = 14  # entries of the programme's table that take as long as one step of a search


def _whole_worths(
    raw: Sequence[float], scale: float, sizes: Sequence[int], demand: Sequence[int], kinds: Sequence[Kind]
) -> Worths:
    each = [max(0, int(worth * scale * (1 << PLACES))) for worth in raw]
    tops = [best_fill(each, sizes, demand, kind.capacity, Steps(_PROOF_STEPS)).at_most for kind in kinds]
    for index, kind in enumerate(kinds):
        allowed = kind.weight << PLACES
        if kind.limit is None and tops[index] > allowed:
            each = [worth * allowed // tops[index] for worth in each]
            tops = [-(-top * allowed // tops[index]) for top in tops]
    rents = [
        0 if kind.limit is None else max(0, top - (kind.weight << PLACES))
        for kind, top in zip(kinds, tops, strict=True)
    ]
    return Worths(tuple(each), tuple(rents))


def material_worths(sizes: Sequence[int], kinds: Sequence[Kind]) -> Worths:
    """Worths by size alone, at the best weight per room that any kind offers."""
    weight, room = min(
        ((kind.weight, kind.capacity) for kind in kinds), key=lambda pair: (pair[0] / pair[1], pair)
    )
    for kind in kinds:  # exactly the least, whatever the division above rounded
        if kind.weight * room < weight * kind.capacity:
            weight, room = kind.weight, kind.capacity
    each = tuple((size * weight << PLACES) // room for size in sizes)
    return Worths(each, tuple(0 for _ in kinds))


def material_measure(sizes: Sequence[int], demand: Sequence[int], kinds: Sequence[Kind]) -> Measure:
    """The yardstick of plain size: what each kind can really be filled to with these pieces."""
    most = tuple(
        best_fill(sizes, sizes, demand, kind.capacity, Steps(_PRICING_STEPS)).at_most for kind in kinds
    )
    return Measure(tuple(sizes), most)


class _Column(NamedTuple):
    cost: float
    entries: tuple[tuple[int, float], ...]
    pattern: Pattern | None = None
    kind: int = -1


class _Solved(NamedTuple):
    worths: tuple[float, ...]
    uses: tuple[tuple[int, Pattern, float], ...]
    steps: int


class Programme(NamedTuple):
    """The linear programme solved: whole worths, how often it would cut each pattern, steps it took."""

    worths: Worths
    uses: tuple[tuple[int, Pattern, float], ...]
    steps: int


def _solve(
    sizes: Sequence[int],
    demand: Sequence[int],
    kinds: Sequence[Kind],
    scale: float,
    sharing: bool,
    most_steps: int,
) -> _Solved:
    """Revised simplex over patterns made on demand.

    Plain: least weight that covers the demand within the counts. ``sharing``: the least share of all
    the bars there are that would do if bars came in fractions; weights play no part then.
    """
    limited = [index for index, kind in enumerate(kinds) if kind.limit is not None]
    rows = len(sizes) + len(limited)
    row_of = {kind: len(sizes) + place for place, kind in enumerate(limited)}
    never = 1e4 * (1 + len(sizes))
    effort = Steps(most_steps)
    # A nudge on the right-hand sides keeps the method from turning in circles; worths stay worths.
    right = [number + 1e-7 * (row + 1) for row, number in enumerate(demand)]
    for place, index in enumerate(limited):
        count = 0 if sharing else kinds[index].limit or 0
        right.append(count + 1e-7 * (rows + place))

    basis: list[_Column] = []
    inverse = [[0.0] * rows for _ in range(rows)]
    values: list[float] = []
    free = [index for index, kind in enumerate(kinds) if kind.limit is None]
    for row in range(rows):
        column = _Column(0.0 if row >= len(sizes) else never, ((row, 1.0),))
        if row < len(sizes):
            offers = [
                (kinds[index].weight / scale / number, index, number)
                for index in free
                if (number := min(demand[row], kinds[index].capacity // sizes[row]))
            ]
            if offers:
                _, index, number = min(offers)
                pattern = tuple(number if place == row else 0 for place in range(len(sizes)))
                column = _Column(kinds[index].weight / scale, ((row, float(number)),), pattern, index)
        entry = column.entries[0][1]
        basis.append(column)
        inverse[row][row] = 1.0 / entry
        values.append(right[row] / entry)

    def duals() -> list[float]:
        prices = [0.0] * rows
        for column, line in zip(basis, inverse, strict=True):
            if column.cost:
                for place, entry in enumerate(line):
                    if entry:
                        prices[place] += column.cost * entry
        return prices

    def entering(prices: list[float]) -> _Column | None:
        best, reduced_best = None, -_EPSILON * 10
        for row in range(rows):
            sign = -1.0 if row < len(sizes) else 1.0
            if -sign * prices[row] < reduced_best:
                best, reduced_best = _Column(0.0, ((row, sign),)), -sign * prices[row]
        if sharing:
            reduced = 1.0 + math.fsum((kinds[index].limit or 0) * prices[row_of[index]] for index in limited)
            if reduced < reduced_best:
                entries = tuple((row_of[index], -float(kinds[index].limit or 0)) for index in limited)
                best, reduced_best = _Column(1.0, entries), reduced
        if best is not None:
            return best
        whole = [max(0, int(price * (1 << PLACES))) for price in prices[: len(sizes)]]
        for index, kind in enumerate(kinds):
            if kind.limit == 0:
                continue
            steps = Steps(_PRICING_STEPS)
            fill = best_fill(whole, sizes, demand, kind.capacity, steps)
            effort.left -= _PRICING_STEPS - steps.left
            worth = math.fsum(prices[row] * number for row, number in enumerate(fill.pattern) if number)
            cost = 0.0 if sharing else kind.weight / scale
            reduced = cost - worth - (prices[row_of[index]] if index in row_of else 0.0)
            if reduced < reduced_best:
                made = [(row, float(number)) for row, number in enumerate(fill.pattern) if number]
                if index in row_of:
                    made.append((row_of[index], 1.0))
                best, reduced_best = _Column(cost, tuple(made), fill.pattern, index), reduced
        return best

    prices = duals()
    for turn in range(1, 40 * rows + 100):
        better = entering(prices) if effort.left > 0 else None
        if better is None:
            break
        along = [math.fsum(line[row] * entry for row, entry in better.entries) for line in inverse]
        leaving, shortest = -1, 0.0
        for row, step in enumerate(along):
            if step > _EPSILON and (leaving < 0 or values[row] / step < shortest):
                leaving, shortest = row, values[row] / step
        if leaving < 0:
            break
        effort.left -= rows * rows // _ROW_WORK
        pivot = inverse[leaving] = [entry / along[leaving] for entry in inverse[leaving]]
        values[leaving] = shortest
        basis[leaving] = better
        touched = [place for place, entry in enumerate(pivot) if entry]
        for row, step in enumerate(along):
            if row != leaving and step:
                line = inverse[row]
                for place in touched:
                    line[place] -= step * pivot[place]
                values[row] -= step * shortest
        if turn % _REFRESH:
            gain = better.cost - math.fsum(prices[row] * entry for row, entry in better.entries)
            for place in touched:
                prices[place] += gain * pivot[place]
        else:
            prices = duals()

    uses = tuple(
        (column.kind, column.pattern, value)
        for column, value in zip(basis, values, strict=True)
        if column.pattern is not None and value > _EPSILON
    )
    return _Solved(tuple(prices[: len(sizes)]), uses, most_steps - effort.left)


def cost_programme(
    sizes: Sequence[int], demand: Sequence[int], kinds: Sequence[Kind], steps: int = _PROGRAMME_STEPS
) -> Programme:
    """Worths for the least weight, and the fractional layout they come from.

    When the steps run out the worths are still sound, only weaker.

    The worths hold for this demand and for any part of it, not for a larger one.
    """
    scale = float(max(1, *(kind.weight for kind in kinds)))
    wanted = [index for index, number in enumerate(demand) if number]
    few_sizes, few = [sizes[index] for index in wanted], [demand[index] for index in wanted]

    def spread(numbers: Sequence[int]) -> Pattern:
        every = [0] * len(sizes)
        for index, number in zip(wanted, numbers, strict=True):
            every[index] = number
        return tuple(every)

    most_steps = min(steps, _PROGRAMME_STEPS)
    solved = _solve(few_sizes, few, kinds, scale, sharing=False, most_steps=most_steps)
    worths = _whole_worths(solved.worths, scale, few_sizes, few, kinds)
    uses = tuple((kind, spread(pattern), value) for kind, pattern, value in solved.uses)
    return Programme(Worths(spread(worths.each), worths.rents), uses, solved.steps)


def sharing_measure(
    sizes: Sequence[int], demand: Sequence[int], kinds: Sequence[Kind]
) -> tuple[Measure, int]:
    """The yardstick by which the pieces fill the most of the bars there are, and the steps it took.

    Every kind has a count.
    """
    raw, _, steps = _solve(sizes, demand, kinds, 1.0, sharing=True, most_steps=_PROGRAMME_STEPS)
    top = max(max(raw), _EPSILON)
    each = tuple(max(0, int(worth / top * (1 << PLACES))) for worth in raw)
    most = tuple(best_fill(each, sizes, demand, kind.capacity, Steps(_PROOF_STEPS)).at_most for kind in kinds)
    return Measure(each, most), steps
