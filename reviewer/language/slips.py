"""The slips that writers make most, each with its own cure."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable
from typing import NamedTuple

from reviewer.language.lexer import STRAY
from reviewer.language.problems import ReadingProblem
from reviewer.language.source import Span
from reviewer.language.tables import END, tables
from reviewer.language.wordings import CLAUSES, KINDS, MEANT, NAMED, SHAPES, SIZES, SUMS, WAYS, did_you_mean
from reviewer.reference.names import nearest

WORD = re.compile(r"[^\W\d][\w-]*")
_OF_A_NAME = re.compile(r"[\w-]+")
_NOMINAL = re.compile(r"\d+(?:/\d+)?x\d+")
_ONE_OF = {
    "stock": "a stock",
    "outline": "an outline",
    "part": "a part",
    "join": "a join",
    "finish": "a finish",
    "load": "a load",
    "room": "a room",
    "restrain": "a restraint",
    "assembly": "an assembly",
    "fit": "a fit",
    "step": "a step",
}


class Stop(NamedTuple):
    """Where reading stopped, and what it was about to read."""

    text: str  # laid out
    original: str
    rule: str
    start: int
    end: int
    kind: str  # of the token that does not fit
    span: Span  # of that token
    expected: frozenset[str]

    @property
    def about(self) -> str:
        """The kind of statement: part, join …"""
        return self.rule.rpartition("_")[0] or self.rule

    @property
    def of_clause(self) -> bool:
        return self.rule.endswith("_clause") or self.rule == "purchase"

    @property
    def at_end(self) -> bool:
        return self.kind == END

    @property
    def said(self) -> str:
        return self.original[self.span.start : self.span.end]

    @property
    def before(self) -> str:
        """The words just before, for “after …”: at most the last three of the clause."""
        place = self.span.start
        cut = max(self.text.rfind(mark, self.start, place) for mark in ",:") + 1
        return " ".join(self.original[max(cut, self.start) : place].split()[-3:])

    def problem(
        self, says: str, do: str, span: Span | None = None, near: Iterable[str] = ()
    ) -> ReadingProblem:
        return ReadingProblem(self.span if span is None else span, says, do, tuple(near))


def _unclosed_quotation(stop: Stop) -> ReadingProblem | None:
    if stop.kind != STRAY or stop.text[stop.span.start] != '"':
        return None
    line_end = stop.original.find("\n", stop.span.start)
    last = stop.end if line_end < 0 else min(stop.end, line_end)
    return stop.problem(
        "A quotation begins here and is not closed on the same line.",
        'Put the closing mark (") at the end of the quoted words.',
        Span(stop.span.start, max(last, stop.span.end)),
    )


def _nominal_as_measure(stop: Stop) -> ReadingProblem | None:
    place = stop.text.rfind(" ", stop.start, stop.span.start) + 1
    found = _NOMINAL.match(stop.text, max(place, stop.start), stop.end)
    if found is None or not found.start() <= stop.span.start < found.end():
        return None
    said = stop.original[found.start() : found.end()]
    span = Span(found.start(), found.end())
    if stop.about == "stock":
        wood = " ".join(stop.original[stop.start : found.start()].split())
        if not WORD.match(wood):
            return None
        return stop.problem(
            f"The section “{said}” stands behind its wood.", f"Put it before: {said} {wood}", span
        )
    return stop.problem(
        f"“{said}” is a nominal size, a name at the yard and no measure, so it can't stand here.",
        "Name it in a stock statement, or write the real sizes with spaces, such as: 1 1/2 x 3 1/2",
        span,
    )


def _spaced_section(stop: Stop) -> ReadingProblem | None:
    sizes = " ".join(stop.original[stop.start : stop.end].split())
    if stop.rule != "stock_clause" or stop.kind != "X" or not sizes[0].isdigit():
        return None
    return stop.problem(
        f"“{sizes}” gives two sizes without saying that they are real ones.",
        f"Write actual before real sizes: actual {sizes}. A nominal size has no spaces: 2x4",
        Span(stop.end - len(stop.text[stop.start : stop.end].lstrip()), stop.end),
    )


def _wood_without_size(stop: Stop) -> ReadingProblem | None:
    if stop.rule != "stock_clause" or not stop.at_end or not stop.expected >= {"NAME", "NUMBER"}:
        return None
    wood = stop.before
    return stop.problem(
        f"“{wood}” has no size.",
        f"Put its section before it: 2x4 {wood}, or actual 45 x 95 {wood}. "
        f"A sheet has its thickness behind it: {wood} 3/4",
        last_word(stop),
    )


def _stray_mark(stop: Stop) -> ReadingProblem | None:
    mark = stop.text[stop.span.start : stop.span.end]
    if mark == ";":
        return stop.problem("A semicolon parts nothing here.", "Write a comma between two clauses.")
    if mark == "." and stop.kind == STRAY:
        return stop.problem("A full stop has no meaning here.", "Take it out.")
    if mark == "#":
        return stop.problem("A remark needs a space before its #.", "Put a space before the #.")
    if stop.kind == STRAY and not mark.isprintable():
        return stop.problem(
            f"Here stands a character that can't be seen (U+{ord(stop.said):04X}).", "Take it out."
        )
    if mark == "(" and END in stop.expected:
        return stop.problem(
            "A bracket holds a sum, and no sum goes on here.",
            "Put a remark behind # at the end of the line.",
            Span(stop.span.start, stop.end),
        )
    if mark == "-" and "NUMBER" in stop.expected:
        return stop.problem(
            "A number can't begin with a minus.",
            "Count from the other side instead: below, left of, in front of, less.",
        )
    return None


def _unclosed_bracket(stop: Stop) -> ReadingProblem | None:
    if "CLOSE" not in stop.expected:
        return None
    open_at: list[int] = []
    for place in range(stop.start, stop.span.start):
        if stop.text[place] == "(":
            open_at.append(place)
        elif stop.text[place] == ")" and open_at:
            open_at.pop()
    if not open_at:
        return None
    return stop.problem(
        "This bracket is not closed.",
        "Put a closing bracket behind the sum.",
        Span(
            open_at[-1],
            max(stop.start + len(stop.text[stop.start : stop.span.start].rstrip()), open_at[-1] + 1),
        ),
    )


def _misspelt_beginning(stop: Stop) -> ReadingProblem | None:
    """A clause whose first word is nearly one that a clause begins with, and was taken for a name."""
    if not stop.of_clause:
        return None
    first = WORD.search(stop.text, stop.start, stop.end)
    if first is None or stop.text[stop.start : first.start()].strip() or first.end() > stop.span.start:
        return None
    if len(first.group()) < 3 or "=" in stop.text[stop.start : stop.end]:
        return None
    kinds = tables().actions[tables().starts[stop.rule][0]]
    if first.group().upper() in kinds or "NAME" not in kinds:
        return None
    said = stop.original[first.start() : first.end()]
    if begins_clause(first.group()):
        return stop.problem(
            f"“{said}” begins no clause of {_ONE_OF.get(stop.about, 'this')}.",
            CLAUSES[stop.about],
            Span(first.start(), first.end()),
        )
    near = near_keywords(first.group(), kinds)
    if not near:
        return None
    return stop.problem(
        f"No clause here begins with “{said}”.",
        did_you_mean(near, ""),
        Span(first.start(), first.end()),
        near,
    )


def _missing_colon(stop: Stop) -> ReadingProblem | None:
    if "COLON" not in stop.expected or stop.text.find(":", stop.start, stop.end) >= 0:
        return None
    where = "at the end" if stop.at_end else f"before “{stop.said}”"
    return stop.problem(
        f"There is no colon after “{stop.before}”.",
        f"Put one {where}, as in: {SHAPES[stop.about]}",
        last_word(stop) if stop.at_end else None,
    )


def _name_of_two_words(stop: Stop) -> ReadingProblem | None:
    if stop.rule not in ("stock_head", "outline_head", "part_head", "finish_head") or "NAME" in stop.expected:
        return None
    words = stop.text[stop.start : stop.end].split()
    if len(words) < 3 or not all(_OF_A_NAME.fullmatch(word) for word in words) or "EACH" in stop.expected:
        return None
    place = stop.text.index(words[1], stop.start + len(words[0]))
    said = stop.original[place : stop.end].rstrip()
    return stop.problem(
        f"“{said}” is more than one word, and a name is one.",
        f"Join it with hyphens: {words[0]} {'-'.join(words[1:])}",
        Span(place, place + len(said)),
    )


def _numbers_side_by_side(stop: Stop) -> ReadingProblem | None:
    if stop.kind != "NUMBER" or "NUMBER" in stop.expected or not stop.expected & SUMS:
        return None
    return stop.problem(
        f"“{stop.said}” follows another number or measure with nothing between them.",
        "Put + - * or / between the two, or a comma before the next clause.",
    )


def _number_as_name(stop: Stop) -> ReadingProblem | None:
    if stop.kind != "NUMBER" or "NUMBER" in stop.expected or "NAME" not in stop.expected:
        return None
    return stop.problem(
        f"“{stop.said}” is a number where a name should stand.",
        "Give it a name that begins with a letter."
        if stop.rule.endswith("_head")
        else f"Write {NAMED.get(stop.rule, 'a name')}.",
    )


def _counted_from_nothing(stop: Stop) -> ReadingProblem | None:
    if not stop.at_end or not stop.expected >= WAYS:
        return None
    return stop.problem(
        f"“{stop.before}” does not say what it is counted from.",
        "Add it, as in: bottom 15 above floor, left 2 right of left of frame. "
        "From the plan's own corner: left at 4",
        last_word(stop),
    )


def _size_without_number(stop: Stop) -> ReadingProblem | None:
    if not stop.at_end or not stop.expected >= SIZES:
        return None
    last = last_word(stop)
    word = stop.original[last.start : last.end]
    if word.upper() not in SIZES:
        return None
    return stop.problem(
        f"There is no number or measure before “{word}”, so it is read as the name of one.",
        f"Write the number before it: 12 {word.lower()}",
        last,
    )


def _unquoted(stop: Stop) -> ReadingProblem | None:
    if stop.kind != "NAME" or stop.expected != {"TEXT"}:
        return None
    return stop.problem(
        f"“{stop.said}” is not in quotation marks.",
        f"Put the words in quotation marks, as in: {SHAPES[stop.about]}",
    )


#: Each gives the problem when the stop is its kind of slip, else None. The first one counts.
USUAL_SLIPS: tuple[Callable[[Stop], ReadingProblem | None], ...] = (
    _unclosed_quotation,
    _nominal_as_measure,
    _spaced_section,
    _wood_without_size,
    _stray_mark,
    _unclosed_bracket,
    _misspelt_beginning,
    _missing_colon,
    _name_of_two_words,
    _numbers_side_by_side,
    _number_as_name,
    _counted_from_nothing,
    _size_without_number,
    _unquoted,
)


def near_keywords(word: str, kinds: Iterable[str]) -> tuple[str, ...]:
    """The keywords among some kinds that a word is nearly, or that writers mean by it."""
    words = [kind.lower() for kind in kinds if kind not in KINDS]
    meant = MEANT.get(word.lower())
    if meant in words:
        return (str(meant),)
    if len(word) < 3:
        return ()
    return tuple(name for name in nearest(word.lower(), words) if name != word.lower())


def last_word(stop: Stop) -> Span:
    """The last word before the end of the slice."""
    last = stop.start + len(stop.text[stop.start : stop.end].rstrip())
    first = max(stop.text.rfind(mark, stop.start, last) for mark in " ,") + 1
    return Span(max(first, stop.start), last)


def begins_clause(word: str) -> bool:
    """Whether a clause of any statement begins with a word or number."""
    known = tables()
    kind = "NUMBER" if word[:1].isdigit() else word.upper()
    return any(
        kind in known.actions[first] for rule, (first, _) in known.starts.items() if rule.endswith("_clause")
    )
