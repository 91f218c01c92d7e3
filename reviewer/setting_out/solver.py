"""Every part's place, worked out from the plan's equations in the order that they depend on each other.

On each axis the two independent relations of lowest rank settle a box; which two is decided before
any value is known, so the order of statements never changes a result. The rest are checked. The
work is iterative: a thousand parts declared in reverse, or in a circle, are no deeper than one.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import Literal, NamedTuple

from reviewer.language.source import Span
from reviewer.model.placing import RANK_DEFAULT
from reviewer.model.plan import Edge, Relation, Term
from reviewer.setting_out.result import Clash, Unsettled
from reviewer.units import TOLERANCE_MM

Which = Literal["low", "high", "mid", "size"]
#: One axis of one box.
Place = tuple[str, int]
#: With more troubles than this, how many parts wait for each is not counted.
MAX_COUNTED = 50
#: Any two of these settle an axis.
_PAIRS = frozenset(
    frozenset(pair)
    for pair in (
        ("low", "high"),
        ("low", "size"),
        ("high", "size"),
        ("low", "mid"),
        ("high", "mid"),
        ("mid", "size"),
    )
)


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


def _sort_key(relation: Relation) -> tuple[object, ...]:
    """A fixed order among relations of one rank that does not depend on where they stand in the text."""
    return (relation.rank, relation.which, relation.offset, relation.form, relation.terms)


def chosen(relations: Iterable[Relation]) -> Node | tuple[Which, ...]:
    """The node of one axis, or what is known of it when too little is."""
    ordered = sorted(relations, key=_sort_key)
    if not ordered:
        return ()
    first = ordered[0]
    for place, relation in enumerate(ordered[1:], start=1):
        if relation.which != first.which:
            rest = ordered[1:place] + ordered[place + 1 :]
            return Node(first, relation, tuple(rest))
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
        self.values: dict[Edge, float] = {}
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
                self.values[Edge(name, axis, "low")] = low[axis]
                self.values[Edge(name, axis, "high")] = high[axis]
                self.values[Edge(name, axis, "mid")] = (low[axis] + high[axis]) / 2
                self.values[Edge(name, axis, "size")] = high[axis] - low[axis]

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
        values = self.values
        known = {
            node.first.which: values[Edge(edge.solid, edge.axis, node.first.which)],
            node.second.which: values[Edge(edge.solid, edge.axis, node.second.which)],
        }
        low, high = _ends(known)
        if edge.which == "low":
            return low
        if edge.which == "high":
            return high
        return (low + high) / 2 if edge.which == "mid" else high - low

    def evaluated(self, relation: Relation) -> float:
        """The value that a relation asks for, once all its edges are known."""
        values = self.values
        if relation.form == "sum":
            total = relation.offset
            for factor, edge in relation.terms:
                total += factor * values[edge]
            return total
        first, second = (term.edge for term in relation.terms)
        lower, upper = (first, second) if values[first] <= values[second] else (second, first)
        met = lower if relation.form == "after" else upper
        to_slope = 0.0
        if relation.slopes:  # the face that is met slants
            slope = relation.slopes[0 if met is first else 1]
            to_slope = slope.offset + sum(factor * values[edge] for factor, edge in slope.terms)
        if relation.form == "after":
            return values[Edge(lower.solid, lower.axis, "high")] + relation.offset + to_slope
        return values[Edge(upper.solid, upper.axis, "low")] + relation.offset + to_slope

    def _settle_at_once(self, place: Place) -> None:
        """All four values of a place whose two relations can be worked out already; else nothing is done."""
        node = self.nodes.get(place)
        if node is None:
            return
        try:
            known = {
                node.first.which: self.evaluated(node.first),
                node.second.which: self.evaluated(node.second),
            }
        except KeyError:
            return
        low, high = _ends(known)
        name, axis = place
        values = self.values
        values[Edge(name, axis, "low")] = low
        values[Edge(name, axis, "high")] = high
        values[Edge(name, axis, "mid")] = known.get("mid", (low + high) / 2)
        values[Edge(name, axis, "size")] = known.get("size", high - low)

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
        places = [(name, axis) for name in self.names for axis in range(3)]
        for place in places:
            self._settle_at_once(place)
        # What is left goes by the alphabet, so that the order of statements has no say in what is told.
        for name, axis in sorted(place for place in places if Edge(*place, "mid") not in self.values):
            self.settle(Edge(name, axis, "low"))
            self.settle(Edge(name, axis, "high"))
        inside_out = self._inside_out(places)
        troubled: dict[Place, Unsettled] = {
            place: trouble for place, trouble in self.failed.items() if trouble is not None
        }
        troubled |= inside_out
        doubt: set[Place] = set()
        after: set[Place] = set()
        if troubled or self.doubtful:
            troubled, doubt, after = self._roots(troubled)
        untold = doubt | after
        boxes: dict[str, tuple[list[float], list[float]]] = {}
        clashes: list[Clash] = []
        for name in self.names:
            low, high = [0.0] * 3, [0.0] * 3
            whole = True
            for axis in range(3):
                place = (name, axis)
                if place in self.failed or place in inside_out or place in after:
                    whole = False
                    continue
                low[axis] = self.values[Edge(name, axis, "low")]
                high[axis] = self.values[Edge(name, axis, "high")]
                if place not in untold and self.nodes[place].rest:
                    clashes += self._clashes(name, axis, untold)
            if whole:
                boxes[name] = (low, high)
        order = {name: number for number, name in enumerate(self.names)}
        told = sorted(troubled.values(), key=lambda trouble: (order.get(trouble.solid, -1), trouble.axis))
        return Settled(boxes, tuple(clashes), tuple(told))

    def _inside_out(self, places: Iterable[Place]) -> dict[Place, Unsettled]:
        found = {}
        for place in places:
            if place in self.failed:
                continue
            name, axis = place
            size = self.values[Edge(name, axis, "high")] - self.values[Edge(name, axis, "low")]
            if size <= TOLERANCE_MM:
                node = self.nodes[place]
                span = max((node.first, node.second), key=_blame).span
                found[place] = Unsettled(name, axis, "inside-out", span, size=size)
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


def _ends(known: dict[Which, float]) -> tuple[float, float]:
    """Low and high from any two of low, high, mid and size."""
    assert frozenset(known) in _PAIRS
    low, high = known.get("low"), known.get("high")
    if low is not None and high is not None:
        return low, high
    size = known.get("size")
    if low is not None:
        return low, low + (size if size is not None else 2 * (known["mid"] - low))
    if high is not None:
        return high - (size if size is not None else 2 * (high - known["mid"])), high
    half = known["size"] / 2
    return known["mid"] - half, known["mid"] + half
