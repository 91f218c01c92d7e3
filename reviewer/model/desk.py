"""The understander's desk: what is known so far, and every slip found on the way.

It holds the measures and their unit, collects problems (the plan cannot be understood there) and
unknown names (a rule tells those), so that the builders of parts, joins and the rest stay plain.
"""

from __future__ import annotations

import math
import operator
from collections.abc import Callable, Iterable, Iterator, Mapping, Set
from contextlib import contextmanager

from reviewer.language.declarations import Expression, MeasureName, Number, Statement, Sum, Word
from reviewer.language.numbers import MM_PER, Unit
from reviewer.language.problems import ReadingProblem
from reviewer.language.source import Span
from reviewer.language.wordings import kept_words, round_trip
from reviewer.model.plan import BareFastener, Measure, UnknownName
from reviewer.reference.names import nearest
from reviewer.units import UnitSystem

#: A tenth of a kilometre: nothing in a room is longer, and sums stay far from overflow.
MAX_LENGTH_MM = 100_000.0
#: No sum may come to more; so much squared is still far from overflow.
MAX_AMOUNT = 1e12
_SIGNS: dict[str, Callable[[float, float], float]] = {
    "+": operator.add,
    "-": operator.sub,
    "*": operator.mul,
    "/": operator.truediv,
}
#: Numbers in words, which a plan has in figures.
_FIGURES = {
    "one": 1,
    "two": 2,
    "three": 3,
    "four": 4,
    "five": 5,
    "six": 6,
    "eight": 8,
    "ten": 10,
    "twelve": 12,
}
#: Letters to look for times names to look among, in all: some dozens of slips in a plan of a thousand parts.
MAX_SOUGHT = 400_000
_EACH = 10  # what a comparison costs besides its letters
#: Clauses over all parts, those that are taken over and those of every copy counted each time.
MAX_CLAUSES = 1_000_000
#: Names that the lists of joins, loads, finishes and the rest come to in all.
MAX_LISTED = 1_000_000
#: A name longer than this is no name that somebody says.
MAX_NAME = 100


class Desk:
    """Measures, problems and unknown names of one plan while it is being understood."""

    def __init__(
        self,
        units: UnitSystem,
        unit: Unit,
        *,
        unit_said: bool = True,
        outside: Mapping[str, float] | None = None,
    ) -> None:
        self.units = units
        self.unit = unit
        self.unit_said = unit_said
        self.mm_per_unit = MM_PER[unit]
        self._home = unit
        self._lent: dict[str, Unit] = {}  # the unit of every measure that comes from a used file
        self.problems: list[ReadingProblem] = []
        self.unknown: list[UnknownName] = []
        self._declared: dict[str, Statement] = {}
        self._outside = outside or {}  # measures set in place of the plan's own, in the plan's unit
        self._amounts: dict[str, float | None] = {}
        self._used: set[str] = set()
        self._unknown_at: set[Span] = set()
        self._sought = 0
        self.unmade_stocks: set[str] = set()  # declared, but something in them is wrong and told already
        #: Bare numbers that may be of another unit, by their place: the length that they come to, mm.
        self.bare_numbers: dict[Span, float] = {}
        self.bare_fasteners: list[BareFastener] = []
        #: Bare sizes of fasteners beyond these are kept, mm: thicker, longer, shorter.
        self.fastener_bounds = (math.inf, math.inf, 0.0)
        self.longest_bare = math.inf  # in an inch plan: bare numbers that make more are kept, mm
        self.stock_names: Set[str] = frozenset()
        self._told_at: set[Span] = set()
        self._clauses = 0
        self._listed = 0
        #: By the place of a word inside an assembly: what stands before the names of the members there.
        self.inner: dict[Span, str] = {}

    # ------------------------------------------------------------ slips

    def problem(
        self, span: Span, says: str, do: str, near: tuple[str, ...] = (), also_at: tuple[Span, ...] = ()
    ) -> None:
        """Note a slip that the plan cannot be understood past."""
        self.problems.append(ReadingProblem(span, says, do, near, also_at))

    def told_for_copies(self, span: Span) -> bool:
        """True from the second time on that a slip of this place is about to be told: copies share it."""
        told = span in self._told_at
        self._told_at.add(span)
        return told

    def near(self, word: str, known: Iterable[str]) -> tuple[str, ...]:
        """The known names nearest to a word. The search is slow, so only so much of it is done for a plan."""
        names = tuple(known)
        self._sought += (len(word) + _EACH) * len(names)
        if self._sought > MAX_SOUGHT or len(word) > MAX_NAME:
            return ()
        return nearest(word, names)

    def unknown_name(self, word: Word, what: str, known: Iterable[str]) -> None:
        """Note a name that nothing declares: once for its place, however many copies come by it."""
        if what == "stock" and word.text in self.unmade_stocks:
            return
        if word.span not in self._unknown_at:
            self._unknown_at.add(word.span)
            before = self.inner.get(word.span)
            if before is not None:  # members are told by the names that they have in their assembly
                word = word._replace(text=word.text.removeprefix(before))
                if self._sought <= MAX_SOUGHT:
                    known = [each.removeprefix(before) for each in known]
            name = word.text if len(word.text) <= MAX_NAME else f"{word.text[:MAX_NAME]}…"
            self.unknown.append(UnknownName(name, what, self.near(word.text, known), word.span))

    # ------------------------------------------------------------ bounds

    def room_for_clauses(self, count: int, span: Span) -> bool:
        """Whether so many more clauses of parts can still be worked out; the first time not is told."""
        before = self._clauses
        self._clauses += count
        if before <= MAX_CLAUSES < self._clauses:
            self.problem(
                span,
                f"With this the parts come to more than {MAX_CLAUSES} clauses in all, "
                "far beyond any piece of furniture.",
                "Take out clauses that say a thing again, or split the plan.",
            )
        return self._clauses <= MAX_CLAUSES

    def room_for_names(self, count: int, span: Span) -> bool:
        """Whether lists can still name so many more parts; the first time not is told."""
        before = self._listed
        self._listed += count
        if before <= MAX_LISTED < self._listed:
            self.problem(
                span,
                f"With this the lists of the plan name parts more than {MAX_LISTED} times in all, "
                "far beyond any piece of furniture.",
                "Name fewer parts at a time, or split the plan.",
            )
        return self._listed <= MAX_LISTED

    # ------------------------------------------------------------ measures

    @contextmanager
    def written_in(self, unit: Unit) -> Iterator[None]:
        """Takes bare numbers in another unit for a while: those of a used file with a unit of its own."""
        before = self.unit
        self.unit, self.mm_per_unit = unit, MM_PER[unit]
        try:
            yield
        finally:
            self.unit, self.mm_per_unit = before, MM_PER[before]

    def declare_measures(self, statements: Iterable[Statement], lent: Unit | None = None) -> None:
        """Take in every measure statement; the values follow on demand, in any order.

        ``lent`` is the unit of measures that come from a used file.
        """
        for statement in statements:
            assert statement.name is not None
            name = statement.name.text
            if name in kept_words()[0]:
                self.problem(
                    statement.name.span,
                    f"“{name}” could be read two ways in a plan, so no measure can be called that.",
                    f"Choose another name, such as {name}-1.",
                )
            if name in self._declared:
                first = self._declared[name].name
                assert first is not None
                self.problem(
                    statement.name.span,
                    f"The measure “{name}” is given twice.",
                    "Keep one of the two, or give the second another name.",
                    also_at=(first.span,),
                )
                continue
            self._declared[name] = statement
            if lent is not None:
                self._lent[name] = lent
        for name, amount in self._outside.items():
            if name in self._declared:
                # What the plan's own sum is made of stays in use, though it is not worked out here.
                own = self._declared[name].clauses[0]
                assert isinstance(own, Number | MeasureName | Sum)
                self._used.update(self._pending(own))
                self._amounts[name] = amount

    def stated(self) -> tuple[str, ...]:
        """The name of every measure, in the plan's order."""
        return tuple(self._declared)

    def amount_of(self, name: str) -> float | None:
        """A measure's amount in the plan's unit; None when it can't be worked out (told)."""
        self._settle(name)
        return self._amounts[name]

    def _pending(self, expression: Expression) -> list[str]:
        """Names inside an expression whose values are not known yet."""
        names: list[str] = []
        stack: list[Expression] = [expression]
        while stack:
            node = stack.pop()
            if isinstance(node, Sum):
                stack += (node.right, node.left)
            elif (
                isinstance(node, MeasureName)
                and node.name in self._declared
                and node.name not in self._amounts
            ):
                names.append(node.name)
        return names

    def _settle(self, name: str) -> None:
        """Work out a measure and all it needs, without recursion; a circle is told once."""
        waiting: list[str] = [name]
        on_path: dict[str, None] = {}
        while waiting:
            current = waiting[-1]
            if current in self._amounts:
                waiting.pop()
                continue
            statement = self._declared[current]
            expression = statement.clauses[0]
            assert isinstance(expression, Number | MeasureName | Sum)
            needs = self._pending(expression)
            circle = [need for need in needs if need in on_path or need == current]
            if circle:
                path = [*on_path, current]
                loop = path[path.index(circle[0]) :]
                first = loop.index(min(loop))
                loop = [*loop[first:], *loop[:first]]
                word = self._declared[loop[0]].name
                assert word is not None
                self.problem(
                    word.span,
                    f"The measure “{loop[0]}” is worked out from itself: {round_trip(loop)}.",
                    "Give one of them as a number." if len(loop) > 1 else "Give it as a number.",
                )
                for member in loop:
                    self._amounts[member] = None
                continue
            if needs:
                on_path[current] = None
                waiting.append(needs[0])
                continue
            on_path.pop(current, None)
            self._amounts[current] = self._worked_out(current, expression)

    def _worked_out(self, name: str, expression: Expression) -> float | None:
        """A measure's value in the plan's unit, its own bare numbers in the unit of its file."""
        unit = self._lent.get(name, self._home)
        if unit == self.unit == self._home:
            return self._sum(expression)
        with self.written_in(unit):
            amount = self._sum(expression)
        return None if amount is None else amount * MM_PER[unit] / MM_PER[self._home]

    def amount(self, expression: Expression) -> float | None:
        """An expression's value in its bare numbers' unit; None when something in it is not known (told)."""
        if not isinstance(expression, Number):
            for name in self._pending(expression):
                self._settle(name)
        return self._sum(expression)

    def _sum(self, expression: Expression) -> float | None:
        if isinstance(expression, Number):
            if expression.unit is None:
                return expression.amount
            return expression.amount * MM_PER[expression.unit] / self.mm_per_unit
        values: list[float | None] = []
        todo: list[tuple[Expression, bool]] = [(expression, False)]
        while todo:
            node, ready = todo.pop()
            if isinstance(node, Number):
                values.append(
                    node.amount if node.unit is None else node.amount * MM_PER[node.unit] / self.mm_per_unit
                )
            elif isinstance(node, MeasureName):
                values.append(self._measure(node))
            elif not ready:
                todo += ((node, True), (node.right, False), (node.left, False))
            else:
                right, left = values.pop(), values.pop()
                values.append(self._joined(node, left, right))
        return values[0]

    def _measure(self, node: MeasureName) -> float | None:
        if node.name not in self._declared:
            word = Word(node.name, node.span)
            pieces = node.name.split("-")
            if len(pieces) > 1 and pieces[0] in self._declared:
                self.problem(
                    node.span,
                    f"“{node.name}” is read as one name, since its minus has no spaces.",
                    f"For a sum put a space on each side: {' - '.join(pieces)}",
                )
            elif node.name in self.stock_names:
                self.problem(
                    node.span,
                    f"“{node.name}” is a stock, and without a comma behind it it is read as a measure.",
                    f"Put a comma behind it: {node.name}, …",
                )
            elif node.name in _FIGURES:
                self.problem(
                    node.span,
                    f"“{node.name}” is read as the name of a measure.",
                    f"Write the number in figures: {_FIGURES[node.name]}",
                )
            else:
                self.unknown_name(word, "measure", self._declared)
            return None
        self._used.add(node.name)
        amount = self._amounts.get(node.name)
        if amount is None or self.unit == self._home:
            return amount
        return amount * MM_PER[self._home] / self.mm_per_unit

    def _joined(self, node: Sum, left: float | None, right: float | None) -> float | None:
        if left is None or right is None or (self._lent and self._mixed(node)):
            return None
        if node.sign == "/" and right == 0:
            self.problem(node.span, "This divides by 0.", "Divide by another number.")
            return None
        made = _SIGNS[node.sign](left, right)
        if not abs(made) < MAX_AMOUNT:
            self.problem(node.span, "This sum comes to more than any measure can be.", "Look at its numbers.")
            return None
        return made

    def _mixed(self, node: Sum) -> bool:
        """Whether a sum takes a measure of a file in another unit for a bare number (told).

        Such a measure can only be a length: as a number of things it would come out in the wrong unit.
        """
        if node.sign == "/":
            suspects = [node.right]
        elif node.sign == "*" and not isinstance(node.left, Number) and not isinstance(node.right, Number):
            suspects = [node.left, node.right]
        else:
            return False
        while suspects:
            part = suspects.pop()
            if isinstance(part, Sum):
                suspects += (part.right, part.left)
            elif isinstance(part, MeasureName) and self._lent.get(part.name, self._home) != self.unit:
                self.problem(
                    part.span,
                    f"“{part.name}” is written in another unit in another file, so it is a length, "
                    f"and nothing can be {'divided' if node.sign == '/' else 'multiplied'} by it here.",
                    "Write the number itself, or give the measure in the same file as this.",
                )
                return True
        return False

    def measures(self) -> tuple[Measure, ...]:
        """Every measure with its value, in the order of the plan; those of used files where they are used."""
        found = []
        for name, statement in self._declared.items():
            self._settle(name)
            amount = self._amounts[name]
            if amount is not None and (name in self._used or name not in self._lent):
                found.append(
                    Measure(
                        name=name,
                        amount=amount * self.mm_per_unit,
                        used=name in self._used,
                        span=statement.head,
                    )
                )
        return tuple(found)

    # ------------------------------------------------------------ checked values

    def mm(self, expression: Expression) -> float | None:
        """A length in millimetres, zero and negative allowed; None when it is not known (told)."""
        amount = self.amount(expression)
        if amount is None:
            return None
        length = amount * self.mm_per_unit
        if not abs(length) <= MAX_LENGTH_MM:
            self.problem(
                expression.span,
                "This measure is longer than 100 m, far beyond any piece in a room.",
                "Look at the number and its unit.",
            )
            return None
        if length > self.longest_bare or (self.unit == "mm" and length % 1):
            self._note_bare(expression, length)
        return length

    def _note_bare(self, expression: Expression, length: float) -> None:
        """Keep a lone number without a unit, at its place, for the rule that doubts its unit."""
        if isinstance(expression, MeasureName):
            stated = self._declared.get(expression.name)
            if stated is None or expression.name in self._outside or expression.name in self._lent:
                return
            expression = stated.clauses[0]  # type: ignore[assignment]
        if isinstance(expression, Number) and expression.unit is None:
            self.bare_numbers[expression.span] = length

    def said(self, length_mm: float) -> str:
        """A length in the plan's own unit; without one where the plan's title does not name it."""
        return f"{length_mm / self.mm_per_unit:g}{f' {self.unit}' if self.unit_said else ''}"

    def size_mm(self, expression: Expression, what: str) -> float | None:
        """A length that must be more than nothing; None when it is not (told)."""
        length = self.mm(expression)
        if length is not None and length <= 0:
            self.problem(
                expression.span,
                f"The {what} comes to {self.said(length)}, and it must be more than 0.",
                "Look at the number, or at the measures that it is worked out from.",
            )
            return None
        return length

    def whole(self, number: Number, what: str, most: int) -> int | None:
        """A count from 1 to ``most``; None when it is not (told)."""
        if number.unit is not None or number.amount != int(number.amount) or number.amount < 1:
            self.problem(
                number.span,
                f"The {what} can't be {number.amount:g}{f' {number.unit}' if number.unit else ''}.",
                "Write a whole number from 1, without a unit.",
            )
            return None
        if number.amount > most:
            self.problem(
                number.span,
                f"The {what} is {number.amount:.0f}; dryfit goes up to {most}.",
                "Look at the number, or split the plan.",
            )
            return None
        return int(number.amount)
