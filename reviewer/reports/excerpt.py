"""The plan's own lines with the words in question marked, and how wide any text stands in a terminal.

Spans are code points; a terminal counts cells. A tab runs to the next stop, a wide character takes two
cells and a combining mark none, so the cells are counted here and nowhere else.
"""

from __future__ import annotations

import re
import unicodedata
from functools import lru_cache

from reviewer.language.source import Source, Span
from reviewer.records import NamedTuple

TAB_STOP = 4

_PICTURES = 0x2400  # Unicode's control pictures start here, in the order of the controls
_REPLACEMENT = "\ufffd"
#: Marks that reorder or break the text around them.
_REORDERING = (0x61C, 0x200E, 0x200F, 0x2028, 0x2029, *range(0x202A, 0x202F), *range(0x2066, 0x206A))
#: Characters that would move, hide or reorder text, each with the sign shown in its place.
_UNSEEN = (
    {code: chr(_PICTURES + code) for code in range(0x20) if chr(code) not in "\t\n"}
    | {0x7F: "\u2421"}
    | dict.fromkeys((*range(0x80, 0xA0), *_REORDERING), _REPLACEMENT)
)
_SURROGATE = re.compile("[\ud800-\udfff]")
_EMOJI_STYLE = "\ufe0f"


class MarkedLine(NamedTuple):
    """A line of the plan in three runs: before the words in question, the words, and after them."""

    number: int
    before: str
    words: str
    after: str


def visible(text: str) -> str:
    """The text with every control and reordering character shown as a sign. Tabs and new lines stay."""
    return _SURROGATE.sub(_REPLACEMENT, text.translate(_UNSEEN))


def one_line(text: str) -> str:
    """The text made visible, on one line, each run of blanks as one space."""
    return visible(" ".join(re.split(r"[ \t\r\n]+", text)))


@lru_cache(maxsize=2048)
def _cells_of(char: str) -> int:
    if unicodedata.category(char) in ("Mn", "Me", "Cf"):
        return 0
    return 2 if unicodedata.east_asian_width(char) in "WF" else 1


def cells(text: str) -> int:
    """How many terminal cells the text takes. Expects no tabs or controls: see :func:`laid_out`."""
    if text.isascii():
        return len(text)
    total = sum(map(_cells_of, text))
    if _EMOJI_STYLE in text:  # asks for the picture form of a narrow sign, which is two cells wide
        total += sum(
            1
            for index, char in enumerate(text)
            if char == _EMOJI_STYLE and index and _cells_of(text[index - 1]) == 1
        )
    return total


def laid_out(text: str, start: int = 0) -> str:
    """The text made visible, with tabs as the spaces they stand for when it begins at cell ``start``."""
    runs = visible(text).split("\t")
    out = runs[0]
    at = start + cells(out)
    for run in runs[1:]:
        blank = TAB_STOP - at % TAB_STOP
        out += " " * blank + run
        at += blank + cells(run)
    return out


def marked_lines(source: Source, span: Span) -> tuple[MarkedLine, ...]:
    """Every line that a span touches. An empty span marks nothing at its place; there is always one line."""
    size = len(source.text)
    start = max(0, min(span.start, size))
    end = max(start, min(span.end, size))
    while end > start and source.text[end - 1] in "\r\n":
        end -= 1
    first = source.place(start)
    last = source.place(end)
    lines = []
    for number in range(first.line, last.line + 1):
        text = source.line(number, start)
        low = first.column - 1 if number == first.line else len(text) - len(text.lstrip())
        high = last.column - 1 if number == last.line else len(text)
        low = min(low, len(text))
        high = max(low, min(high, len(text)))
        lines.append(MarkedLine(number, text[:low], text[low:high], text[high:]))
    return tuple(lines)
