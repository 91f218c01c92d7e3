"""Where reading stopped, and what messages ask about that place."""

from __future__ import annotations

import re
from collections.abc import Iterable, Set

from reviewer.language.problems import ReadingProblem
from reviewer.language.source import Span
from reviewer.language.tables import END, tables
from reviewer.language.wordings import KINDS, MEANT
from reviewer.records import NamedTuple
from reviewer.reference.names import nearest

WORD = re.compile(r"[^\W\d][\w-]*")


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
    measures: Set[str] = frozenset()  # the names that the plan gives to measures

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
    if kind in KINDS and kind != "NUMBER":
        return False
    return any(
        kind in known.actions[first] for rule, (first, _) in known.starts.items() if rule.endswith("_clause")
    )
