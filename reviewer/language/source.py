"""Where words stand in a plan: spans in code points, turned into lines and columns only here.

A plan that uses other files stands in one text with them, so that a span alone tells its file too.
"""

from __future__ import annotations

from bisect import bisect_right
from dataclasses import dataclass, field

from reviewer.records import NamedTuple


class Span(NamedTuple):
    """A run of characters: ``start`` up to but not including ``end``, in code points of the text."""

    start: int
    end: int


class Place(NamedTuple):
    """Line and column, both counted from 1; columns count code points."""

    line: int
    column: int


class UsedFile(NamedTuple):
    """A file that a plan uses, and where it stands in the plan's joined text.

    ``key`` is the same for the same file, however it is spelt.
    """

    name: str
    key: str
    start: int
    end: int


@dataclass(frozen=True)
class Source:
    """A plan's text and the name a person knows it by.

    Where the plan uses other files, their texts follow its own in ``text``, a line end between each two.
    """

    name: str
    text: str
    used: tuple[UsedFile, ...] = ()
    _starts: tuple[int, ...] = field(init=False, repr=False, compare=False)

    def __post_init__(self) -> None:
        starts = [0]
        text = self.text
        position = text.find("\n")
        while position != -1:
            starts.append(position + 1)
            position = text.find("\n", position + 1)
        object.__setattr__(self, "_starts", tuple(starts))

    @property
    def plan_end(self) -> int:
        """Where the plan's own text ends, and those of the files that it uses have not begun."""
        return self.used[0].start - 1 if self.used else len(self.text)

    def file_at(self, offset: int) -> UsedFile | None:
        """The used file that an offset lies in; None in the plan itself."""
        if not self.used or offset < self.used[0].start:
            return None
        return self.used[bisect_right(self.used, offset, key=lambda file: file.start) - 1]

    def name_at(self, offset: int) -> str:
        """The name of the file that an offset lies in."""
        file = self.file_at(offset)
        return file.name if file else self.name

    def place(self, offset: int) -> Place:
        """Line and column in an offset's own file; one past its end gives the place after its last one."""
        offset = max(0, min(offset, len(self.text)))
        row = bisect_right(self._starts, offset) - 1
        return Place(row - self._first_row(offset) + 1, offset - self._starts[row] + 1)

    def _first_row(self, offset: int) -> int:
        file = self.file_at(offset)
        return bisect_right(self._starts, file.start) - 1 if file else 0

    def line(self, number: int, near: int = 0) -> str:
        """The text of a line (from 1) without its line end, of the file that the offset ``near`` lies in.

        Empty beyond the last line of the text.
        """
        row = number + self._first_row(near) - 1
        if number < 1 or row >= len(self._starts):
            return ""
        start = self._starts[row]
        end = self._starts[row + 1] - 1 if row + 1 < len(self._starts) else len(self.text)
        return self.text[start:end].rstrip("\r")

    def lines(self, file: UsedFile | None = None) -> tuple[str, ...]:
        """The lines of the plan, or of a used file. An empty one behind the last line end is none."""
        start, end = (file.start, file.end) if file else (0, self.plan_end)
        last = self.place(end).line
        found = tuple(self.line(number, start) for number in range(1, last + 1))
        return found if found[-1] else found[:-1]

    def words(self, span: Span) -> str:
        """The plan's own words under a span."""
        return self.text[span.start : span.end]
