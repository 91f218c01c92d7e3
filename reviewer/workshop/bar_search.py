"""The search behind the cutting layouts: whole numbers only, no names, no millimetres.

A problem is a demand for sizes (longest first) and kinds of bar. Quick methods give a good layout and
bounds (:mod:`reviewer.workshop.pattern_bounds`) say what nothing beats. Where the two differ, every
choice of bars that would be cheaper is taken up, cheapest first, and shown to be too little or found
to be enough: by a yardstick that overflows, or by going through all patterns within a counted effort.
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Sequence
from dataclasses import dataclass, field, replace

from reviewer.records import NamedTuple
from reviewer.workshop.pattern_bounds import (
    Kind,
    Measure,
    Pattern,
    Steps,
    Worths,
    cost_programme,
    densities,
    material_measure,
    material_worths,
    most_worth,
    sharing_measure,
)
from reviewer.workshop.quick_layouts import MOST_PIECES, BarKind, Task, Use, use

SEARCH_STEPS = 200_000
_ATTAINABLE = 50_000
_CHOICES = 400
_CHOICE_STEPS = 20_000
_SIZES_A_STEP = 4  # sizes of a pattern that take as long to look at as one step
_ROUNDING_SHARE = 3  # effort for rounding the programme, against that for the search


@dataclass(frozen=True)
class Found:
    """What the search knows at its end.

    ``uses`` packs everything (None: no such layout found); ``proven`` says that this is settled:
    no cheaper layout exists, or none at all. ``cost_at_least`` is a bound either way. ``nearest`` is
    the layout that leaves least out, with what it leaves.
    """

    uses: tuple[Use, ...] | None
    proven: bool
    cost_at_least: int
    nearest: tuple[Use, ...]
    left_out: Pattern


class _Tally(NamedTuple):
    """Which weights can really occur: cost * base + bars, with costs that some bars add up to."""

    base: int
    attainable: tuple[int, ...]
    fewest: int

    def raised(self, weight: int) -> int:
        """The least weight at or above ``weight`` that any set of bars can come to."""
        cost, bars = divmod(weight, self.base)
        if bars * 64 > self.base:  # more bars than pieces: it is the next cost
            cost, bars = cost + 1, 0
        if self.attainable and cost <= self.attainable[-1]:
            real = self.attainable[bisect_left(self.attainable, cost)]
            if real > cost:
                cost, bars = real, 0
        return cost * self.base + max(bars, self.fewest)


def _attainable(costs: Sequence[int], most: int) -> tuple[int, ...]:
    """Every total up to ``most`` that these costs can come to; empty when too many to list."""
    if most > _ATTAINABLE:
        return ()
    reached = bytearray(most + 1)
    reached[0] = 1
    for cost in sorted(set(costs) - {0}):
        for total in range(cost, most + 1):
            if reached[total - cost]:
                reached[total] = 1
    return tuple(total for total in range(most + 1) if reached[total])


def _tally(task: Task) -> _Tally:
    costs = [kind.weight // task.base for kind in task.kinds]
    counted = all(kind.weight % task.base for kind in task.kinds)
    widest = max(kind.capacity for kind in task.kinds)
    fewest = -(-task.measure(task.demand) // widest) if counted else 0
    return _Tally(task.base, _attainable(costs, (task.ceiling or 0) // task.base), fewest)


@dataclass
class _Dive:
    """Can these bars give all pieces? Depth first through all patterns that hold the longest piece left.

    ``measures``: yardsticks; the last one guides which patterns come first. A pattern that wastes more of
    it than is to spare leads nowhere.
    """

    sizes: Pattern
    capacities: Pattern
    measures: Sequence[Measure]
    steps: Steps
    seen: set[tuple[Pattern, Pattern]] = field(default_factory=set)
    chosen: list[Use] = field(default_factory=list)

    def go(self, rest: Pattern, left: Pattern) -> bool | None:
        """True with the layout in ``chosen``; False when there is none; None when the effort ran out."""
        if not any(rest):
            return True
        if not self.steps.spend(1 + len(rest) // _SIZES_A_STEP):
            return None
        if (rest, left) in self.seen:
            return False
        self.seen.add((rest, left))
        if any(measure.overfull(rest, left) for measure in self.measures):
            return False
        candidates = self.candidates(rest, left)
        if candidates is None:
            return None
        for _, _, kind, pattern in candidates:
            after = tuple(a - b for a, b in zip(rest, pattern, strict=True))
            self.chosen.append(use(kind, pattern, 1))
            done = self.go(after, (*left[:kind], left[kind] - 1, *left[kind + 1 :]))
            if done or done is None:
                return done
            self.chosen.pop()
        return False

    def candidates(self, rest: Pattern, left: Pattern) -> list[tuple[int, int, int, Pattern]] | None:
        """Full patterns with the longest piece left, least wasteful first; None: effort ran out."""
        guide = self.measures[-1]
        first = next(index for index, number in enumerate(rest) if number)
        dense = densities(guide.each, self.sizes)
        for index in range(len(dense) - 2, -1, -1):
            dense[index] = max(dense[index], dense[index + 1])
        spare = guide.spare(rest, left)
        found: list[tuple[int, int, int, Pattern]] = []
        for index, capacity in enumerate(self.capacities):
            if not left[index] or capacity < self.sizes[first]:
                continue
            most = guide.most[index]
            patterns = self.full_patterns(first, rest, capacity, guide.each, dense, most - spare)
            if patterns is None:
                return None
            found.extend((most - value, room, index, pattern) for value, room, pattern in patterns)
        found.sort(key=lambda c: (c[0], c[1], c[2], tuple(-number for number in c[3])))
        return found

    def full_patterns(
        self,
        first: int,
        rest: Pattern,
        capacity: int,
        each: Pattern,
        dense: Sequence[int],
        floor: int,
    ) -> list[tuple[int, int, Pattern]] | None:
        """Patterns with the piece at ``first`` that leave no room for any other: (worth, room, pattern)."""
        sizes, last = self.sizes, len(rest)
        after = [0] * (last + 1)
        for index in range(last - 1, first - 1, -1):
            after[index] = after[index + 1] + sizes[index] * rest[index]
        found: list[tuple[int, int, Pattern]] = []
        taken = [0] * last

        def go(at: int, room: int, value: int, unused: int) -> bool:
            # ``unused`` is the smallest size of which some was left aside: it must not fit at the end.
            if room - after[at] >= unused:
                return True
            if at < last and value + most_worth(room, dense[at]) < floor:
                return True
            if not self.steps.spend():
                return False
            while at < last and (not rest[at] or sizes[at] > room):
                if rest[at]:
                    unused = sizes[at]
                at += 1
            if at == last:
                if room < unused and value >= floor:
                    found.append((value, room, tuple(taken)))
                return True
            least = 1 if at == first else 0
            most = min(rest[at], room // sizes[at])
            for number in range(most, least - 1, -1):
                taken[at] = number
                still = unused if number == rest[at] else sizes[at]
                if not go(at + 1, room - number * sizes[at], value + number * each[at], still):
                    return False
            taken[at] = 0
            return True

        return found if go(first, capacity, 0, capacity + 1) else None


class _Chooser:
    """One problem: what is known of it, and the effort that is left for it."""

    def __init__(self, task: Task, steps: int) -> None:
        self.task = task
        self.steps = Steps(steps)
        self.too_little: list[Pattern] = []
        self.worths: list[Worths] = [material_worths(task.sizes, task.kinds)]
        self.tally = _tally(task)

    def lowest(self) -> int:
        """A weight that no layout of everything is below."""
        task = self.task
        return self.tally.raised(max(each.at_least(task.demand, task.limits) for each in self.worths))

    def settled(self) -> bool:
        return self.task.ceiling is not None and self.task.ceiling <= self.lowest()

    def programme(self) -> None:
        """Bring in the linear programme: a better bound, and layouts from rounding it by turns.

        Whatever it cuts whole times is kept, else the pattern it uses most; then it is solved again for
        the rest, as long as that may still lead to something better.
        """
        task = self.task
        rest, left, uses = task.demand, task.limits, list[Use]()
        steps = self.steps.left * _ROUNDING_SHARE
        if task.pieces > MOST_PIECES:
            steps //= 8
        while any(rest) and steps > 0:
            kinds = [kind._replace(limit=limit) for kind, limit in zip(task.kinds, left, strict=True)]
            programme = cost_programme(task.sizes, rest, kinds, steps)
            steps -= programme.steps
            known = len(uses)
            if not known:
                self.worths.append(programme.worths)
            rest, left = task.round_down(programme.uses, rest, left, uses)
            self.tally = _tally(task)
            if self.settled() or len(uses) == known:
                break

    def enough(self, bars: Pattern, others: int = 0) -> bool | None:
        """Whether so many bars of each kind give all pieces; a layout goes to the task. None: not known.

        ``others`` more choices wait for their share of the effort.
        """
        task = self.task
        if any(all(a <= b for a, b in zip(bars, known, strict=True)) for known in self.too_little):
            return False
        measures = self.yardsticks(bars)
        answer: bool | None = False
        if not any(measure.overfull(task.demand, bars) for measure in measures):
            before = task.ceiling
            task.quick(task.demand, bars)
            if task.best is not None and task.ceiling != before:
                return True
            granted = max(_CHOICE_STEPS, self.steps.left // (1 + others))
            steps = Steps(granted)
            dive = _Dive(task.sizes, tuple(kind.capacity for kind in task.kinds), measures, steps)
            answer = dive.go(task.demand, bars)
            self.steps.left -= granted - steps.left
            if answer:
                task.offer(dive.chosen, (0,) * len(task.demand))
        if answer is False:
            self.too_little.append(bars)
        return answer

    def yardsticks(self, bars: Pattern) -> list[Measure]:
        """Measures for so many bars of each kind, up to the first that overflows."""
        task = self.task
        kinds = [Kind(kind.capacity, 0, number) for kind, number in zip(task.kinds, bars, strict=True)]
        measures = [material_measure(task.sizes, task.demand, kinds)]
        measures += [worths.as_measure(task.kinds) for worths in self.worths[1:]]
        if len(kinds) > 1 and not any(measure.overfull(task.demand, bars) for measure in measures):
            measure, steps = sharing_measure(task.sizes, task.demand, kinds)
            self.steps.left -= steps
            measures.append(measure)
        return measures

    def choices(self) -> list[Pattern] | None:
        """Every number of bars of each kind that would beat the best layout, the cheapest first.

        Bars that cost nothing are all there. None when there are too many choices to go through.
        """
        task = self.task
        low, high = self.lowest(), task.ceiling or 0
        total = task.measure(task.demand)
        paid = [index for index, kind in enumerate(task.kinds) if kind.weight]
        bars = [kind.limit if kind.limit is not None else task.pieces for kind in task.kinds]
        found: list[tuple[int, Pattern]] = []
        effort = Steps(_CHOICES * 50)

        def go(place: int, weight: int) -> bool:
            if not effort.spend() or len(found) > _CHOICES:
                return False
            if place == len(paid):
                room = sum(kind.capacity * number for kind, number in zip(task.kinds, bars, strict=True))
                if weight >= low and room >= total:
                    found.append((weight, tuple(bars)))
                return True
            index = paid[place]
            kind = task.kinds[index]
            most = min(bars[index], (high - 1 - weight) // kind.weight)
            limit = bars[index]
            least = 0
            if place == len(paid) - 1 and weight < low:  # the last kind must make up the rest
                least = -(-(low - weight) // kind.weight)
            for number in range(least, most + 1):
                bars[index] = number
                if not go(place + 1, weight + number * kind.weight):
                    return False
            bars[index] = limit
            return True

        return [chosen for _, chosen in sorted(found)] if go(0, 0) else None

    def go_through(self) -> bool:
        """True once it is settled that nothing beats the best layout, or that there is none."""
        task = self.task
        if task.best is None:
            every = tuple(task.pieces if limit is None else limit for limit in task.limits)
            answer = self.enough(every)
            if not answer:
                return answer is False
        choices = self.choices()
        if choices is None:
            return False
        known = True
        for place, bars in enumerate(choices):
            if self.steps.left <= 0:
                return False
            answer = self.enough(bars, len(choices) - 1 - place)
            if answer:
                return known
            known = known and answer is False
        return known


def search_layout(
    sizes: Sequence[int], demand: Sequence[int], kinds: Sequence[BarKind], steps: int = SEARCH_STEPS
) -> Found:
    """The cheapest layout of all pieces, of those the one of fewest bars found; see :class:`Found`.

    ``sizes`` strictly fall; each piece and each bar's capacity already carry the saw's kerf. Kinds
    that hold no piece may be there. Same input, same layout, on every machine.
    """
    if not sizes:
        return Found((), True, 0, (), ())
    real = [place for place, kind in enumerate(kinds) if kind.capacity >= sizes[-1] and kind.limit != 0]
    found = _search(Task(sizes, demand, [kinds[place] for place in real]), steps)

    def original(uses: tuple[Use, ...]) -> tuple[Use, ...]:
        return tuple(each._replace(kind=real[each.kind]) for each in uses)

    uses = None if found.uses is None else original(found.uses)
    return replace(found, uses=uses, nearest=original(found.nearest))


def _search(task: Task, steps: int) -> Found:
    task.quick(task.demand, task.limits)
    if not any(kind.capacity >= task.sizes[0] for kind in task.kinds):
        return Found(None, True, 0, task.nearest, task.left_out)
    chooser = _Chooser(task, steps)
    done = chooser.settled()
    if task.small and not done:
        chooser.programme()
        done = chooser.settled() or (task.pieces <= MOST_PIECES and chooser.go_through())
    if task.best is None:
        return Found(None, done, 0, task.nearest, task.left_out)
    cost = task.weigh(task.best) // task.base * task.unit
    at_least = cost if done else min(cost, chooser.lowest() // task.base * task.unit)
    return Found(task.best, at_least == cost, at_least, task.best, (0,) * len(task.sizes))
