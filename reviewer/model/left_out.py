"""What is left out of a plan at some sizes: names that nothing stands for there, and why."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from reviewer.language import declarations as d
from reviewer.language.source import Span
from reviewer.records import NamedTuple


def conditional(statements: Iterable[d.Statement]) -> bool:
    """Whether anything counts at some sizes only: a plan without conditions pays for this look alone."""
    return any(
        d.OnlyWhen in map(type, statement.clauses)
        or (bool(statement.members) and conditional(statement.members))
        for statement in statements
    )


class Reason(NamedTuple):
    """Why a name is not there: when it is left out in words, and where the plan says so."""

    name: str
    when: str
    span: Span


class Absent(NamedTuple):
    """A part that is left out. Another part may still be like it."""

    name: str
    family: str
    each: str | None
    statement: d.Statement


#: Names held against patterns, in all: a piece of furniture comes nowhere near. Beyond it a pattern that
#: fits nothing is told as an unknown name, whether it means something that is left out or not.
MAX_COMPARED = 2_000_000


class LeftOut:
    """The names that are left out at these sizes. A star in one stands for any copy of an assembly."""

    def __init__(self) -> None:
        self.parts: list[Absent] = []
        self.finishes: set[str] = set()  # by name, which nothing but a step refers to
        self._names: dict[str, Reason] = {}
        self._stems: dict[str, Reason] = {}
        self._split: list[tuple[list[str], Reason]] = []
        self._starred: list[tuple[list[str], Reason]] = []
        self._fitted: dict[str, Reason | None] = {}
        self._compared = 0

    def add(self, reason: Reason) -> None:
        """Keep a name with its reason; the first one counts."""
        if reason.name in self._names:
            return
        self._names[reason.name] = reason
        pieces = reason.name.split(".")
        self._split.append((pieces, reason))
        if "*" in pieces:
            self._starred.append((pieces, reason))
        stem = reason.name.rpartition(".")[0]
        while stem:
            self._stems.setdefault(stem, reason)
            stem = stem.rpartition(".")[0]

    def reason(self, text: str) -> Reason | None:
        """Why a word names nothing: it means a name that is left out, its copies, or what it begins with."""
        if "*" in text:
            return self._fits(text, self._split)
        stem = text
        while stem:
            if stem in self._names:
                return self._names[stem]
            stem = stem.rpartition(".")[0]
        return self._stems.get(text) or self._fits(text, self._starred)

    def _fits(self, text: str, names: list[tuple[list[str], Reason]]) -> Reason | None:
        if text not in self._fitted:
            asked = text.split(".")
            self._fitted[text] = None
            for pieces, reason in names:
                self._compared += 1
                if self._compared > MAX_COMPARED:
                    break
                if _alike(asked, pieces):
                    self._fitted[text] = reason
                    break
        return self._fitted[text]


def _alike(one: Sequence[str], other: Sequence[str]) -> bool:
    """Whether two patterns can mean the same name, or one what the other begins with."""
    return all("*" in a or "*" in b or a == b for a, b in zip(one, other, strict=False))
