"""Good cutting layouts made quickly: what the search starts from, and all there is for a large order.

Whole numbers only, as in :mod:`reviewer.workshop.bar_search`. Each method runs near linear in the
number of pieces: *best fit* puts piece after piece, longest first, into the bar that it fills best;
*fullest* fills bar after bar as full as the pieces left allow.
"""

from __future__ import annotations

import math
from bisect import bisect_left, insort
from collections.abc import Sequence

from reviewer.records import NamedTuple
from reviewer.workshop.pattern_bounds import Kind, Pattern, Steps, best_fill

#: Above so many sizes or pieces only what is near linear is done.
MOST_SIZES = 84
MOST_PIECES = 160
_FILL_STEPS = 1_000

Left = Sequence[int | None]


class BarKind(NamedTuple):
    """Bars of one kind: room, what one costs in whole units, whether it counts as one, how many."""

    capacity: int
    cost: int
    counted: bool
    limit: int | None


class Use(NamedTuple):
    """So many bars of one kind cut alike: ``cuts`` are size and number, longest first."""

    kind: int
    cuts: tuple[tuple[int, int], ...]
    times: int


def use(kind: int, pattern: Pattern, times: int) -> Use:
    """So many bars of one kind cut to a pattern."""
    return Use(kind, tuple((index, number) for index, number in enumerate(pattern) if number), times)


class Task:
    """A demand for sizes (longest first), the kinds of bar, and the best layouts so far.

    Cost first, then bars, are one weight: cost / ``unit`` * ``base`` + bars.
    """

    def __init__(self, sizes: Sequence[int], demand: Sequence[int], kinds: Sequence[BarKind]) -> None:
        self.sizes = tuple(sizes)
        self.demand = tuple(demand)
        self.pieces = sum(demand)
        self.small = len(sizes) <= MOST_SIZES
        self.unit = math.gcd(*(kind.cost for kind in kinds)) or 1
        self.base = 64 * (self.pieces + 1)
        # What pieces come to is a whole number of their common measure; room beyond that is no room.
        step = math.gcd(*sizes) or 1
        self.kinds = tuple(
            Kind(
                kind.capacity - kind.capacity % step,
                kind.cost // self.unit * self.base + kind.counted,
                kind.limit,
            )
            for kind in kinds
        )
        self.limits = tuple(kind.limit for kind in kinds)
        self.orders = self._orders()
        self.best: tuple[Use, ...] | None = None
        #: What a layout must stay below to be of use; all the bars there are, at first.
        self.ceiling: int | None = None
        if None not in self.limits:
            self.ceiling = 1 + sum(kind.weight * (kind.limit or 0) for kind in self.kinds)
        self.nearest: tuple[Use, ...] = ()
        self.left_out = self.demand
        self._least_left = self.measure(self.demand)

    def measure(self, pattern: Sequence[int]) -> int:
        """The sizes of a pattern together."""
        return sum(size * number for size, number in zip(self.sizes, pattern, strict=True) if number)

    def weigh(self, uses: Sequence[Use]) -> int:
        """The weight of a layout."""
        return sum(self.kinds[each.kind].weight * each.times for each in uses)

    def offer(self, uses: Sequence[Use], rest: Sequence[int]) -> None:
        """Keep a layout when it is the best so far, each bar exchanged for the least that holds it."""
        if any(rest):
            left = self.measure(rest)
            if left < self._least_left:
                self.nearest, self.left_out, self._least_left = tuple(uses), tuple(rest), left
            return
        lean = self._lean(uses)
        weight = self.weigh(lean)
        if self.ceiling is None or weight < self.ceiling:
            self.best, self.ceiling = lean, weight

    def _lean(self, uses: Sequence[Use]) -> tuple[Use, ...]:
        spare = list(self.limits)
        for each in uses:
            limit = spare[each.kind]
            if limit is not None:
                spare[each.kind] = limit - each.times
        order = sorted(range(len(self.kinds)), key=lambda index: (self.kinds[index].weight, index))
        result: list[Use] = []
        for each in uses:
            if not each.cuts:
                continue
            used, times = sum(self.sizes[index] * number for index, number in each.cuts), each.times
            for index in order:
                room = spare[index]
                if self.kinds[index].weight >= self.kinds[each.kind].weight or not times:
                    break
                if self.kinds[index].capacity < used or room == 0:
                    continue
                moved = times if room is None else min(times, room)
                result.append(Use(index, each.cuts, moved))
                times -= moved
                if room is not None:
                    spare[index] = room - moved
                back = spare[each.kind]
                if back is not None:
                    spare[each.kind] = back + moved
            if times:
                result.append(Use(each.kind, each.cuts, times))
        return tuple(result)

    def _orders(self) -> tuple[tuple[int, ...], ...]:
        """Which kind to open next: cheapest room first, longest first, shortest first, each one first."""
        kinds = self.kinds
        indices = range(len(kinds))
        cheap = sorted(indices, key=lambda k: (kinds[k].weight / kinds[k].capacity, -kinds[k].capacity, k))
        longest = sorted(indices, key=lambda k: (-kinds[k].capacity, kinds[k].weight, k))
        shortest = sorted(indices, key=lambda k: (kinds[k].capacity, kinds[k].weight, k))
        orders = [tuple(cheap), tuple(longest), tuple(shortest)]
        if self.pieces <= MOST_PIECES:
            orders += [(first, *(k for k in cheap if k != first)) for first in indices]
        return tuple(dict.fromkeys(orders))

    def best_fit(
        self, demand: Sequence[int], limits: Left, order: Sequence[int]
    ) -> tuple[list[Use], list[int]]:
        """Longest first, each into the bar it fills best; a new bar is of the first kind in ``order``."""
        left = list(limits)
        open_bars: list[tuple[int, int]] = []  # (room, bar)
        bars: list[tuple[int, dict[int, int]]] = []
        rest = [0] * len(self.sizes)
        for index, number in enumerate(demand):
            size = self.sizes[index]
            for done in range(number):
                place = bisect_left(open_bars, (size, -1))
                if place < len(open_bars):
                    room, bar = open_bars.pop(place)
                else:
                    kind = next(
                        (k for k in order if left[k] != 0 and self.kinds[k].capacity >= size),
                        None,
                    )
                    if kind is None:
                        rest[index] = number - done
                        break
                    limit = left[kind]
                    if limit is not None:
                        left[kind] = limit - 1
                    room, bar = self.kinds[kind].capacity, len(bars)
                    bars.append((kind, {}))
                bars[bar][1][index] = bars[bar][1].get(index, 0) + 1
                insort(open_bars, (room - size, bar))
        grouped: dict[tuple[int, tuple[tuple[int, int], ...]], int] = {}
        for kind, content in bars:
            key = (kind, tuple(content.items()))
            grouped[key] = grouped.get(key, 0) + 1
        return [Use(kind, cuts, times) for (kind, cuts), times in grouped.items()], rest

    def fullest(self, demand: Sequence[int], limits: Left, anchored: bool) -> tuple[list[Use], list[int]]:
        """Bar after bar filled as full as can be; ``anchored``: each begins with the longest piece left."""
        rest, left, uses = list(demand), list(limits), list[Use]()
        while any(rest):
            first = next(index for index, number in enumerate(rest) if number)
            choice: tuple[float, int, int, Pattern] | None = None
            for index, kind in enumerate(self.kinds):
                start = self.sizes[first] if anchored else 0
                if left[index] == 0 or kind.capacity < start:
                    continue
                if anchored:
                    rest[first] -= 1
                fill = best_fill(self.sizes, self.sizes, rest, kind.capacity - start, Steps(_FILL_STEPS))
                pattern = list(fill.pattern)
                if anchored:
                    rest[first] += 1
                    pattern[first] += 1
                used = start + fill.value
                if used:
                    waste = kind.weight / used if kind.limit is None else 1 - used / kind.capacity
                    found = (waste, -kind.capacity, index, tuple(pattern))
                    choice = found if choice is None else min(choice, found)
            if choice is None:
                break
            _, _, index, chosen = choice
            times = min(rest[i] // number for i, number in enumerate(chosen) if number)
            limit = left[index]
            if limit is not None:
                times = min(times, limit)
                left[index] = limit - times
            for i, number in enumerate(chosen):
                rest[i] -= number * times
            uses.append(use(index, chosen, times))
        return uses, rest

    def quick(self, demand: Sequence[int], limits: Left, before: Sequence[Use] = ()) -> None:
        """Try every quick method on a demand, after the bars already used ``before``."""
        made = [self.best_fit(demand, limits, order) for order in self.orders]
        if self.small:
            made += [self.fullest(demand, limits, anchored) for anchored in (True, False)]
        for uses, rest in made:
            self.offer([*before, *uses], rest)

    def round_down(
        self,
        fractions: Sequence[tuple[int, Pattern, float]],
        demand: Sequence[int],
        limits: Left,
        uses: list[Use],
    ) -> tuple[Pattern, tuple[int | None, ...]]:
        """What is left after the whole part of a fractional layout, or after the pattern it uses most.

        ``uses`` grows by what is taken; the quick methods are tried on the rest.
        """
        rest, left, known = list(demand), list(limits), len(uses)
        for index, pattern, value in sorted(fractions, key=lambda f: (-f[2], f[0], f[1])):
            times = min(int(value + 1e-6), *(rest[i] // n for i, n in enumerate(pattern) if n))
            if not times and len(uses) == known:
                times = 1
            limit = left[index]
            if limit is not None:
                times = min(times, limit)
                left[index] = limit - times
            if times > 0:
                uses.append(use(index, pattern, times))
                for i, number in enumerate(pattern):
                    rest[i] -= number * times
        self.quick(rest, left, uses)
        return tuple(rest), tuple(left)
