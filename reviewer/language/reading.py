"""Reading a plan: text to declarations, and every slip of the file in one run.

Statements are parsed one by one. A failed one is taken apart: its head and each clause are read by
themselves, so that one broken clause hides neither its neighbours nor the next statement.
"""

from __future__ import annotations

import re
from bisect import bisect_right
from collections.abc import Collection, Iterator
from functools import lru_cache
from typing import TYPE_CHECKING, Any

from reviewer.language import declarations as d
from reviewer.language.declaring import Declarer
from reviewer.language.layout import Layout, laid_out
from reviewer.language.numbers import NumberError
from reviewer.language.parser import NoWayOnError, Parser
from reviewer.language.problems import ReadingProblem
from reviewer.language.source import Span
from reviewer.language.tables import BLOCKS, SHAREABLE, STATEMENTS, tables
from reviewer.language.wordings import CLAUSES
from reviewer.records import NamedTuple

if TYPE_CHECKING:
    from reviewer.language.sharing import LaidOutFile, Loader, SharedFile
    from reviewer.language.stopping import Stop

MAX_STATEMENTS = 50_000
MAX_CHARACTERS = 8_000_000
#: So many slips are told with all that helps to mend them; of more, it is only told how many there are.
MAX_TOLD = 100

_FIRST_WORD = re.compile(r"[^\s:,=]+")
_MEASURE = re.compile(r"([^\s:,=\"]+)\s*=")
_SPLITS = re.compile(r'(?<!\d)"[^"]*"|:|,')
_TITLE = re.compile(r'plan\b|[^\s"]*\s*"')
_USE = re.compile(r'\buse\s*"')


class Read(NamedTuple):
    """What reading gives: the statements that could be read, in order, and every slip.

    ``lost`` is true when a statement's very name could not be read, so that a name which nothing
    declares may be no fault of its own. Where the plan uses other files, ``text`` is its own text with
    theirs behind it, which all spans count in, and ``shared`` is what those files say.
    """

    statements: tuple[d.Statement, ...]
    problems: tuple[ReadingProblem, ...]
    lost: bool = False
    text: str | None = None
    shared: tuple[SharedFile, ...] = ()


@lru_cache(maxsize=1)
def _parser() -> Parser:
    return Parser(tables(), Declarer())


class _FaultError(Exception):
    def __init__(self, problem: ReadingProblem) -> None:
        super().__init__(problem.says)
        self.problem = problem


class _Reader:
    def __init__(
        self, original: str, layout: Layout, parser: Parser, files: tuple[LaidOutFile, ...] = ()
    ) -> None:
        self.original = original
        self.text = text = layout.text
        places = layout.statements
        if files:
            places = (*places, *(place for each in files for place in each.statements))
        found = (_MEASURE.match(text, start, end) for start, end, _ in places)
        self.measures = frozenset(match[1] for match in found if match)
        self.parser = parser
        self.problems: list[ReadingProblem] = []

    def tell(self, start: int, end: int, says: str, do: str) -> None:
        self.problems.append(ReadingProblem(Span(start, end), says, do))

    @property
    def in_a_hurry(self) -> bool:
        """After very many slips the words for one more are not looked for."""
        return len(self.problems) >= MAX_TOLD

    def line_end(self, start: int, end: int) -> int:
        """Where the words of a statement's first line end."""
        stop = self.original.find("\n", start, end)
        return end if stop < 0 else start + len(self.text[start:stop].rstrip())

    def parse(self, rule: str, start: int, end: int) -> Any:
        """The declaration under a rule, or _FaultError with words for the writer."""
        try:
            return self.parser.parse(rule, self.text, self.original, start, end, self.measures)
        except NoWayOnError as error:
            if self.in_a_hurry:
                raise _FaultError(_beyond(start, end)) from None
            from reviewer.language.phrases import fault_in  # only where there is something to say

            expected = self.parser.expected(rule, self.text, start, end, error.span.start, self.measures)
            problem = fault_in(
                self.text, self.original, rule, start, end, error, expected, self.trial, self.measures
            )
            raise _FaultError(problem) from None
        except NumberError as error:
            raise _FaultError(ReadingProblem(error.span, error.says, error.do)) from None

    def trial(self, rule: str, text: str) -> Stop | None:
        """Where reading other words under a rule would stop; None when they read."""
        from reviewer.language.stopping import Stop

        parser = _parser()  # never the one that somebody listens to
        try:
            parser.parse(rule, text, text, 0, len(text), self.measures)
        except NoWayOnError as error:
            expected = parser.expected(rule, text, 0, len(text), error.span.start, self.measures)
            return Stop(text, text, rule, 0, len(text), error.kind, error.span, expected, self.measures)
        except NumberError as error:
            return Stop(text, text, rule, 0, len(text), "NUMBER", error.span, frozenset())
        return None

    def kind(self, start: int, end: int) -> str | None:
        """What kind of statement stands there, by its first word; None for none that there is."""
        if _MEASURE.match(self.text, start, end):
            return "measure"
        first = _FIRST_WORD.match(self.text, start, end)
        word = first.group() if first else ""
        return word if word in STATEMENTS and word != "measure" else None

    def statement(self, start: int, end: int) -> d.Statement | None:
        kind = self.kind(start, end)
        if kind is None:
            first = _FIRST_WORD.match(self.text, start, end)
            stop = first.end() if first else start + 1
            self.problems.append(self.unknown(start, stop, end))
            return None
        try:
            made: d.Statement = self.parse(f"{kind}_statement", start, end)
        except _FaultError as fault:
            if (kind in BLOCKS or kind == "buy") and not self.in_a_hurry:
                return self.taken_apart(kind, start, end, fault.problem)
            self.problems.append(fault.problem)
            return None
        return made

    def unknown(self, start: int, stop: int, end: int) -> ReadingProblem:
        """What to tell of a statement whose first word begins none."""
        if self.in_a_hurry:
            return _beyond(start, end)
        from reviewer.language.phrases import unknown_statement

        return unknown_statement(self.text, self.original, start, stop, end)

    # ------------------------------------------------------------ taking a failed statement apart

    def taken_apart(self, kind: str, start: int, end: int, whole: ReadingProblem) -> d.Statement | None:
        """What can be read of head and clauses, each by itself; ``whole`` is told when that shows nothing."""
        told = len(self.problems)
        colon = next((mark.start() for mark in self.splits(start, end) if mark.group() == ":"), None)
        if colon is None:
            self.problems.append(whole)
            return None
        head: d.Statement | None = d.Statement(
            "buy", None, (), (), (), None, Span(start, colon), Span(start, end)
        )
        if kind != "buy":
            try:
                head = self.parse(f"{kind}_head", start, colon)
            except _FaultError as fault:
                head = None
                self.problems.append(fault.problem)
        rule = "purchase" if kind == "buy" else f"{kind}_clause"
        clauses: list[Any] = []
        broken = False
        places = list(self.pieces("purchase" if kind == "buy" else kind, colon, end))
        done = -1  # pieces up to this one are dealt with
        for number, (place, stop) in enumerate(places):
            if number <= done:
                continue
            try:
                clause = self.parse(rule, place, stop)
            except _FaultError as fault:
                broken = True
                done = self.split_by_comma(rule, places, number)
                if done < number:
                    self.problems.append(fault.problem)
                continue
            if not (broken and isinstance(clause, d.More)):  # it went on with what could not be read
                broken = False
                clauses.append(clause)
        if len(self.problems) == told:  # each piece reads, the whole does not
            self.problems.append(whole)
        return head and head._replace(clauses=tuple(clauses), span=Span(start, end), damaged=True)

    def split_by_comma(self, rule: str, places: list[tuple[int, int]], number: int) -> int:
        """The last piece that is told of, where a comma stands inside a clause; -1 where none does."""
        if self.in_a_hurry:
            return -1
        from reviewer.language.mending import joined

        for first in (number, number - 1):
            if 0 <= first < len(places) - 1:
                (start, middle), (after, end) = places[first], places[first + 1]
                one, other = self.text[start:middle], self.text[after:end]
                whole = joined(rule, one.strip(), other.strip(), self.trial)
                if whole is not None:
                    blanks = len(one) - len(one.lstrip())
                    last, stop = first + 1, after + len(other.rstrip())
                    for after, end in places[first + 2 :]:  # a list goes on with what is no clause
                        other = self.text[after:end]
                        more = joined(rule, whole, other.strip(), self.trial)
                        if more is None or self.trial(rule, other.strip()) is None:
                            break
                        whole, last, stop = more, last + 1, after + len(other.rstrip())
                    says = "A comma stands in the middle of this clause."
                    if last > first + 1:
                        says = "Commas stand in the middle of this clause."
                    self.tell(start + blanks, stop, says, f"Write: {whole}")
                    return last
        return -1

    def splits(self, start: int, end: int) -> Iterator[re.Match[str]]:
        """The colons and commas outside quotations."""
        return (mark for mark in _SPLITS.finditer(self.text, start, end) if mark.group() in (":", ","))

    def pieces(self, about: str, colon: int, end: int) -> Iterator[tuple[int, int]]:
        """The clauses behind a colon, as places in the text. An empty one is told and passed over."""
        before = colon
        for stop in [*(m.start() for m in self.splits(colon + 1, end) if m.group() == ","), end]:
            if self.text[before + 1 : stop].strip():
                yield before + 1, stop
            elif before == colon and stop == end:
                self.tell(colon, colon + 1, "There is nothing after this colon.", CLAUSES[about])
            elif stop == end:
                self.tell(before, before + 1, "There is nothing after this comma.", "Take it out.")
            else:
                self.tell(stop, stop + 1, "There is nothing before this comma.", "Take it out.")
            before = stop


def _beyond(start: int, end: int) -> ReadingProblem:
    return ReadingProblem(Span(start, end), "This cannot be read.", "Write it more plainly.")


def _beyond_all(says: str, do: str) -> Read:
    return Read((), (ReadingProblem(Span(0, 0), says, do),), lost=True)


def read(text: str, load: Loader | None = None, *, parser: Parser | None = None) -> Read:
    """The declarations of a plan's text and all its slips, both in the order of the text.

    ``load`` gives the files that the plan's use statements name; without it none is at hand. ``parser`` is
    for who wants to listen to its words (reviewer/language/tidying.py).
    """
    if len(text) > MAX_CHARACTERS:
        return _beyond_all(
            f"The plan is {len(text)} characters long; dryfit reads up to {MAX_CHARACTERS}.",
            "Split it into several plans.",
        )
    layout = laid_out(text)
    if len(layout.statements) > MAX_STATEMENTS:
        return _beyond_all(
            f"The plan has {len(layout.statements)} statements; dryfit reads up to {MAX_STATEMENTS}.",
            "Split it into several plans, or use copies.",
        )
    if _USE.search(layout.text):
        return _read_with_files(text, layout, load, parser or _parser())
    reader = _Reader(text, layout, parser or _parser())
    return _read_plan(reader, layout)


def for_use(kinds: Collection[str]) -> bool:
    """Whether statements of these kinds alone make a file for plans to use, and nothing to build."""
    return ("stock" in kinds or "finish" in kinds) and SHAREABLE.issuperset(kinds)


def _read_plan(reader: _Reader, layout: Layout) -> Read:
    """What the plan itself says, with every problem told so far."""
    made = [reader.statement(place.start, place.end) for place in layout.statements]
    statements = [statement for statement in _nested(made, layout) if statement is not None]
    lost = None in made
    # A file for plans to use needs no title; what it is gets told once it is understood.
    if not any(statement.kind == "plan" for statement in statements) and (
        lost or not for_use({statement.kind for statement in statements})
    ):
        _tell_untitled(reader, layout)
    problems = [*layout.problems, *_not_told_by(layout, reader.problems)]
    ordered = tuple(sorted(problems, key=lambda problem: problem.span))
    return Read(tuple(statements), ordered, lost)


def _nested(made: list[d.Statement | None], layout: Layout) -> list[d.Statement | None]:
    """The statements that stand by themselves, each assembly with its members in it."""
    if all(place.within is None for place in layout.statements):
        return made
    members: dict[int, list[d.Statement]] = {}
    lost: set[int] = set()  # the assemblies of whose members one could not be read
    outer: list[d.Statement | None] = []
    # From the last to the first: an assembly's members stand behind it, and may be assemblies.
    for number in range(len(made) - 1, -1, -1):
        statement, within = made[number], layout.statements[number].within
        if statement is not None and number in members:
            statement = statement._replace(members=tuple(reversed(members[number])))
        if statement is not None and number in lost:
            statement = statement._replace(damaged=True)
        if within is None:
            outer.append(statement)
        elif statement is not None:
            members.setdefault(within, []).append(statement)
        else:
            lost.add(within)
    outer.reverse()
    return outer


def _read_with_files(text: str, layout: Layout, load: Loader | None, parser: Parser) -> Read:
    """A plan with the files that it uses. Each slice is read where it stands in the joined text."""
    from reviewer.language.sharing import joined, no_files

    whole = joined(text, layout, load or no_files, most=MAX_CHARACTERS, most_statements=MAX_STATEMENTS)
    reader = _Reader(whole.text, whole.layout, parser, whole.files)
    reader.problems += whole.problems
    shared = tuple(_read_file(reader, each) for each in whole.files)
    lost = bool(reader.problems)  # what could not be had or read in a file may be what a name means
    found = _read_plan(reader, whole.layout)
    return found._replace(lost=lost or found.lost, text=whole.text if shared else None, shared=shared)


def _read_file(reader: _Reader, laid: LaidOutFile) -> SharedFile:
    """What a used file says. A statement that it can't hold is told and not read."""
    from reviewer.language.sharing import SharedFile

    title: d.Statement | None = None
    statements = []
    for start, end, within in laid.statements:
        if within is not None:  # told with what it is a member of
            continue
        kind = reader.kind(start, end)
        if kind is not None and kind not in SHAREABLE:
            head = Span(start, reader.line_end(start, end))
            says = (
                f"A file that a plan uses holds stock, finishes and measures; “{kind}” begins none of these."
            )
            if kind == "use":
                says = "A file that a plan uses can't use another one."
            reader.tell(*head, says, "Move it to the plan itself.")
            continue
        statement = reader.statement(start, end)
        if statement is None:
            continue
        if kind != "plan":
            statements.append(statement)
        elif title is None:
            title = statement
        else:
            says = f"The file {laid.file.name} has a second title."
            reader.problems.append(
                ReadingProblem(statement.span, says, "Keep one of the two.", (), (title.span,))
            )
    return SharedFile(laid.file, title.name.text if title and title.name else None, tuple(statements))


def read_sum(words: str) -> d.Expression | None:
    """The sum that words make, as behind a measure's equals sign; None when they make none.

    Its spans count in a line of this function's own, so no one can be shown them.
    """
    text = f"it = {words}"
    layout = laid_out(text)
    reader = _Reader(text, layout, _parser())
    made = reader.statement(0, len(layout.text.rstrip()))
    if made is None or layout.problems:
        return None
    found = made.clauses[0]
    assert isinstance(found, d.Number | d.MeasureName | d.Sum)
    return found


def _tell_untitled(reader: _Reader, layout: Layout) -> None:
    """Tell that the title is missing, unless one was tried and could not be read."""
    if not layout.statements:
        reader.tell(
            0,
            0,
            "There is nothing in this plan yet.",
            'Begin with a title and the unit of its numbers, such as: plan "Reading bench" in inches',
        )
    elif not any(_TITLE.match(layout.text, place.start, place.end) for place in layout.statements):
        start, end, _ = layout.statements[0]
        reader.tell(
            start,
            reader.line_end(start, end),
            "The plan does not begin with its title and the unit of its numbers.",
            'Put a first line such as: plan "Reading bench" in inches',
        )


def _not_told_by(layout: Layout, problems: list[ReadingProblem]) -> Iterator[ReadingProblem]:
    """The problems at places that the layout has not told of already."""
    told = sorted(problem.span for problem in layout.problems)
    for problem in problems:
        last = bisect_right(told, (problem.span.start, len(layout.text))) - 1
        if last < 0 or problem.span.start >= told[last].end:
            yield problem
