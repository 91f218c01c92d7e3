"""Every part's place, worked out from the plan's equations in the order that they depend on each other.

On each axis the two independent relations of lowest rank settle a box; which two is decided before
any value is known, so the order of statements never changes a result. The rest are checked. The
work is iterative: a thousand parts declared in reverse, or in a circle, are no deeper than one.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from operator import attrgetter
from typing import Literal

from reviewer.language.source import Span
from reviewer.model.placing import RANK_DEFAULT
from reviewer.model.plan import Edge, Relation, Term
from reviewer.records import NamedTuple
from reviewer.setting_out.result import Clash, Unsettled
from reviewer.units import TOLERANCE_MM

Which = Literal["low", "high", "mid", "size"]
#: One axis of one box.
Place = tuple[str, int]
#: With more troubles than this, how many parts wait for each is not counted.
MAX_COUNTED = 50
#: Low and high from any two of low, high, mid and size.
_ENDS: dict[tuple[Which, Which], Callable[[float, float], tuple[float, float]]] = {
    ("low", "high"): lambda low, high: (low, high),
    ("low", "size"): lambda low, size: (low, low + size),
    ("low", "mid"): lambda low, mid: (low, low + 2 * (mid - low)),
    ("high", "size"): lambda high, size: (high - size, high),
    ("high", "mid"): lambda high, mid: (high - 2 * (high - mid), high),
    ("mid", "size"): lambda mid, size: (mid - size / 2, mid + size / 2),
}


class Node(NamedTuple):
    """One axis of one box: the two relations that settle it and the rest, to be checked."""

    first: Relation
    second: Relation
    rest: tuple[Relation, ...]


class Settled(NamedTuple):
    """All boxes that could be placed, and what could not or does not agree."""

    boxes: dict[str, tuple[list[float], list[float]]]
    clashes: tuple[Clash, ...]
    unsettled: tuple[Unsettled, ...]


#: A fixed order among relations of one rank that does not depend on where they stand in the text.
_sort_key = attrgetter("rank", "which", "offset", "form", "terms")


def chosen(relations: Sequence[Relation]) -> Node | tuple[Which, ...]:
    """The node of one axis, or what is known of it when too little is."""
    ordered = sorted(relations, key=_sort_key) if len(relations) > 1 else relations
    if not ordered:
        return ()
    first = ordered[0]
    for place, relation in enumerate(ordered[1:], start=1):
        if relation.which != first.which:
            rest = (*ordered[1:place], *ordered[place + 1 :])
            return Node(first, relation, rest)
    return (first.which,)


class Solver:
    """Settles all boxes of a plan. ``fixed`` are boxes known from the start: the floor and the wall.

    ``doubtful`` names boxes that an unknown name keeps from being placed: nothing is told of them.
    """

    def __init__(
        self,
        relations: Mapping[str, tuple[tuple[Relation, ...], Span]],
        fixed: Mapping[str, tuple[list[float], list[float]]],
        doubtful: frozenset[str] = frozenset(),
    ) -> None:
        self.names = tuple(relations)
        self.spans = {name: span for name, (_, span) in relations.items()}
        self.nodes: dict[Place, Node] = {}
        self.lacking: dict[Place, tuple[Which, ...]] = {}
        self.doubtful = doubtful
        self.values: dict[tuple[str, int, Which], float] = {}  # by edge
        self.ends: dict[Place, tuple[float, float]] = {}  # low and high of each place that is settled
        self.failed: dict[Place, Unsettled | None] = {}  # None: another place is the root of it
        for name, (all_relations, _) in relations.items():
            by_axis: tuple[list[Relation], list[Relation], list[Relation]] = ([], [], [])
            for relation in all_relations:
                by_axis[relation.axis].append(relation)
            for axis in range(3):
                node = chosen(by_axis[axis])
                if isinstance(node, Node):
                    self.nodes[name, axis] = node
                else:
                    self.lacking[name, axis] = node
        for name, (low, high) in fixed.items():
            for axis in range(3):
                self.values[name, axis, "low"] = low[axis]
                self.values[name, axis, "high"] = high[axis]
                self.values[name, axis, "mid"] = (low[axis] + high[axis]) / 2
                self.values[name, axis, "size"] = high[axis] - low[axis]

    # ------------------------------------------------------------ evaluation

    def _needs(self, edge: Edge) -> tuple[Edge, ...]:
        """What an edge is worked out from: other boxes' edges, or the two settled edges of its own axis."""
        node = self.nodes[edge.solid, edge.axis]
        for relation in (node.first, node.second):
            if relation.which == edge.which:
                return _terms_needed(relation)
        return (
            Edge(edge.solid, edge.axis, node.first.which),
            Edge(edge.solid, edge.axis, node.second.which),
        )

    def _compute(self, edge: Edge) -> float:
        node = self.nodes[edge.solid, edge.axis]
        for relation in (node.first, node.second):
            if relation.which == edge.which:
                return self.evaluated(relation)
        first, second = node.first.which, node.second.which
        values, (name, axis, which) = self.values, edge
        low, high = _ends(first, values[name, axis, first], second, values[name, axis, second])
        if which == "low":
            return low
        if which == "high":
            return high
        return (low + high) / 2 if which == "mid" else high - low

    def evaluated(self, relation: Relation) -> float:
        """The value that a relation asks for, once all its edges are known. Raises KeyError before."""
        values = self.values
        _, _, terms, total, _, _, form, slopes = relation
        if form == "sum":
            for factor, edge in terms:
                total += factor * values[edge]
            return total
        (_, first), (_, second) = terms
        lower, upper = (first, second) if values[first] <= values[second] else (second, first)
        if slopes:  # the face that is met slants
            met = lower if form == "after" else upper
            slope = slopes[0 if met is first else 1]
            total += slope.offset + sum(factor * values[edge] for factor, edge in slope.terms)
        if form == "after":
            return values[lower.solid, lower.axis, "high"] + total
        return values[upper.solid, upper.axis, "low"] + total

    def _settled_at_once(self, place: Place) -> bool:
        """Whether all four values of a place could be had from what is known already.

        When only one of its two relations can be worked out, that one is kept: a row needs the size of
        its first copy, and the copy the place of the row.
        """
        node = self.nodes.get(place)
        if node is None:
            return False
        name, axis = place
        values, evaluated = self.values, self.evaluated
        first, second = node.first, node.second
        try:
            one = values[name, axis, first.which] = evaluated(first)
        except KeyError:
            one = None
        try:
            two = values[name, axis, second.which] = evaluated(second)
        except KeyError:
            return False
        if one is None:
            return False
        self.ends[place] = low, high = _ends(first.which, one, second.which, two)
        kinds = (first.which, second.which)
        if "low" not in kinds:
            values[name, axis, "low"] = low
        if "high" not in kinds:
            values[name, axis, "high"] = high
        if "mid" not in kinds:
            values[name, axis, "mid"] = (low + high) / 2
        if "size" not in kinds:
            values[name, axis, "size"] = high - low
        return True

    def settle(self, goal: Edge) -> None:
        """Work out an edge and all that it needs. A failure is kept under the axis at its root."""
        values, failed = self.values, self.failed
        stack = [goal]
        on_path: dict[Edge, None] = {}
        while stack:
            edge = stack[-1]
            if edge in values or (edge.solid, edge.axis) in failed:
                stack.pop()
                on_path.pop(edge, None)
                continue
            place = (edge.solid, edge.axis)
            if place not in self.nodes:
                self._fail_missing(place)
                continue
            waiting = None
            broken = False
            for need in self._needs(edge):
                if need in values:
                    continue
                if (need.solid, need.axis) in failed:
                    broken = True
                    break
                waiting = need
                break
            if broken:
                failed[place] = None  # the root tells it
                continue
            if waiting is None:
                values[edge] = self._compute(edge)
                stack.pop()
                on_path.pop(edge, None)
                continue
            if waiting in on_path or waiting == edge:
                self._fail_circle([*on_path, edge], waiting)
                continue
            on_path[edge] = None
            stack.append(waiting)

    def _fail_missing(self, place: tuple[str, int]) -> None:
        name, axis = place
        self.failed[place] = Unsettled(
            name,
            axis,
            "missing",
            self.spans.get(name, Span(0, 0)),  # only a doubtful box has no relations at all
            known=self.lacking.get(place, ()),
        )

    def _fail_circle(self, path: list[Edge], again: Edge) -> None:
        loop = path[path.index(again) :]
        names = list(dict.fromkeys(edge.solid for edge in loop))
        start = names.index(min(names))
        names = names[start:] + names[:start]
        root = next(edge for edge in loop if edge.solid == names[0])
        node = self.nodes[root.solid, root.axis]
        relation = node.first if node.first.terms else node.second
        trouble = Unsettled(root.solid, root.axis, "circle", relation.span, circle=tuple(names))
        for edge in loop:
            self.failed.setdefault((edge.solid, edge.axis), None)
        self.failed[root.solid, root.axis] = trouble

    # ------------------------------------------------------------ the whole

    def solve(self) -> Settled:
        """All boxes, in the order of the plan."""
        settled_at_once = self._settled_at_once
        places = [(name, axis) for name in self.names for axis in range(3)]
        left = [place for place in places if not settled_at_once(place)]
        # Once more from the end, for what is told before the things that it stands by.
        left = [place for place in reversed(left) if not settled_at_once(place)]
        # What is left goes by the alphabet, so that the order of statements has no say in what is told.
        for name, axis in sorted(left):
            self.settle(Edge(name, axis, "low"))
            self.settle(Edge(name, axis, "high"))
            if (name, axis) not in self.failed:
                self.ends[name, axis] = self.values[name, axis, "low"], self.values[name, axis, "high"]
        inside_out = self._inside_out()
        troubled: dict[Place, Unsettled] = {
            place: trouble for place, trouble in self.failed.items() if trouble is not None
        }
        troubled |= inside_out
        doubt: set[Place] = set()
        after: set[Place] = set()
        if troubled or self.doubtful:
            troubled, doubt, after = self._roots(troubled)
        untold = doubt | after
        unplaced = {*self.failed, *inside_out, *after}
        boxes: dict[str, tuple[list[float], list[float]]] = {}
        clashes: list[Clash] = []
        for name in self.names:
            mine = ((name, 0), (name, 1), (name, 2))
            if unplaced.isdisjoint(mine):
                across, deep, up = (self.ends[place] for place in mine)
                boxes[name] = [across[0], deep[0], up[0]], [across[1], deep[1], up[1]]
        for place, node in self.nodes.items():
            if node.rest and place not in unplaced and place not in untold:
                clashes += self._clashes(*place, untold)
        order = {name: number for number, name in enumerate(self.names)}
        told = sorted(troubled.values(), key=lambda trouble: (order.get(trouble.solid, -1), trouble.axis))
        return Settled(boxes, tuple(clashes), tuple(told))

    def _inside_out(self) -> dict[Place, Unsettled]:
        found = {}
        for place, (low, high) in self.ends.items():
            if high - low <= TOLERANCE_MM and place not in self.failed:
                node = self.nodes[place]
                span = max((node.first, node.second), key=_blame).span
                found[place] = Unsettled(*place, "inside-out", span, size=high - low)
        return found

    # ------------------------------------------------------------ what depends on what

    def _dependents(self) -> dict[Place, list[Place]]:
        """For each place, the places that are worked out from it."""
        found: dict[Place, list[Place]] = {}
        for place, node in self.nodes.items():
            on = {
                (term.edge.solid, term.edge.axis)
                for relation in (node.first, node.second)
                for term in _all_terms(relation)
            }
            for each in on:
                found.setdefault(each, []).append(place)
        return found

    def _roots(
        self, troubled: dict[Place, Unsettled]
    ) -> tuple[dict[Place, Unsettled], set[Place], set[Place]]:
        """Each trouble once, at its root, with how many parts wait for it.

        A trouble that follows from another, or from a name that nothing declares, is not told. Besides:
        the places that such a name makes doubtful, and those that follow from a trouble.
        """
        dependents = self._dependents()
        doubted = [(name, axis) for name in self.doubtful for axis in range(3)]
        doubt = _reached(doubted, dependents) | set(doubted)
        after = _reached(troubled, dependents)
        roots = {place: trouble for place, trouble in troubled.items() if place not in doubt}
        first = {place: t for place, t in roots.items() if place not in after or t.why == "circle"}
        if roots and not first:  # they hang on one another
            least = min(roots)
            first = {least: roots[least]}
        if len(first) <= MAX_COUNTED:
            for place, trouble in first.items():
                waiting = {name for name, _ in _reached([place], dependents)} | set(trouble.circle)
                first[place] = trouble._replace(drags=len(waiting - {place[0]}))
        return first, doubt, after

    def _clashes(self, name: str, axis: int, untold: set[Place]) -> list[Clash]:
        node = self.nodes[name, axis]
        found = []
        for relation in node.rest:
            if relation.rank >= RANK_DEFAULT:
                continue
            needed = _terms_needed(relation)
            for edge in needed:
                self.settle(edge)
            if any(edge not in self.values or (edge.solid, edge.axis) in untold for edge in needed):
                continue
            edge = Edge(name, axis, relation.which)
            if edge not in self.values:
                self.settle(edge)
            settled, stated = self.values[edge], self.evaluated(relation)
            if abs(settled - stated) > TOLERANCE_MM:
                against = node.first if node.first.which == relation.which else node.second
                if node.first.which != relation.which and node.second.which != relation.which:
                    against = max((node.first, node.second), key=_blame)
                found.append(Clash(name, axis, relation.which, settled, stated, relation.span, against.span))
        return found


def _blame(relation: Relation) -> tuple[int, Span]:
    """Of two relations that do not go together, the one to show: the weaker, and then the later."""
    return (relation.rank, relation.span)


def _reached(starts: Iterable[Place], dependents: Mapping[Place, list[Place]]) -> set[Place]:
    """All places that depend on some, at any remove. A start is among them only if it is come to again."""
    reached: set[Place] = set()
    stack = list(starts)
    while stack:
        for place in dependents.get(stack.pop(), ()):
            if place not in reached:
                reached.add(place)
                stack.append(place)
    return reached


def _all_terms(relation: Relation) -> tuple[Term, ...]:
    if not relation.slopes:
        return relation.terms
    return (*relation.terms, *(term for slope in relation.slopes for term in slope.terms))


def _terms_needed(relation: Relation) -> tuple[Edge, ...]:
    if relation.form == "sum":
        return tuple(term.edge for term in relation.terms)
    first, second = (term.edge for term in relation.terms)
    which: Which = "high" if relation.form == "after" else "low"
    return (
        first,
        second,
        Edge(first.solid, first.axis, which),
        Edge(second.solid, second.axis, which),
        *(term.edge for slope in relation.slopes for term in slope.terms),
    )


def _ends(first: Which, one: float, second: Which, two: float) -> tuple[float, float]:
    """Low and high from two that are known of low, high, mid and size."""
    ends = _ENDS.get((first, second))
    return ends(one, two) if ends is not None else _ENDS[second, first](two, one)
