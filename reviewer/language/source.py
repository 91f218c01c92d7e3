"""Where words stand in a plan: spans in code points, turned into lines and columns only here."""

from __future__ import annotations

from bisect import bisect_right
from dataclasses import dataclass, field
from typing import NamedTuple


class Span(NamedTuple):
    """A run of characters: ``start`` up to but not including ``end``, in code points of the text."""

    start: int
    end: int


class Place(NamedTuple):
    """Line and column, both counted from 1; columns count code points."""

    line: int
    column: int


@dataclass(frozen=True)
class Source:
    """A plan's text and the name a person knows it by."""

    name: str
    text: str
    _starts: tuple[int, ...] = field(init=False, repr=False, compare=False)

    def __post_init__(self) -> None:
        starts = [0]
        text = self.text
        position = text.find("\n")
        while position != -1:
            starts.append(position + 1)
            position = text.find("\n", position + 1)
        object.__setattr__(self, "_starts", tuple(starts))

    def place(self, offset: int) -> Place:
        """Line and column of an offset; one past the end gives the place after the last character."""
        offset = max(0, min(offset, len(self.text)))
        row = bisect_right(self._starts, offset) - 1
        return Place(row + 1, offset - self._starts[row] + 1)

    def line(self, number: int) -> str:
        """The text of a line (from 1) without its line end; empty beyond the last."""
        if not 1 <= number <= len(self._starts):
            return ""
        start = self._starts[number - 1]
        end = self._starts[number] - 1 if number < len(self._starts) else len(self.text)
        return self.text[start:end].rstrip("\r")

    def words(self, span: Span) -> str:
        """The plan's own words under a span."""
        return self.text[span.start : span.end]
