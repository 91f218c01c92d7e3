"""Plain text as a terminal or a pipe shows it: its width in cells, its colours, where lines break."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from typing import TextIO

from reviewer.findings import Severity
from reviewer.language.source import Source, Span
from reviewer.records import NamedTuple
from reviewer.reports.excerpt import cells, one_line

PIPED_WIDTH = 88
NARROWEST = 40
INDENT = 4
#: The sign and the colour that stand for a severity beside its word.
SIGNS = {Severity.ERROR: "X", Severity.WARNING: "!", Severity.NOTE: "-"}
COLOURS = {Severity.ERROR: "31", Severity.WARNING: "33", Severity.NOTE: "36"}


class Look(NamedTuple):
    """How the text is set: its width in cells, with or without colour, in short or in full."""

    width: int = PIPED_WIDTH
    colour: bool = False
    full: bool = False

    def painted(self, text: str, code: str) -> str:
        return f"\x1b[{code}m{text}\x1b[0m" if self.colour and text else text


def wants_colour(stream: TextIO, environ: Mapping[str, str], forced: bool | None = None) -> bool:
    """True when colour should be used: as ``forced`` says, else on a terminal unless NO_COLOR is set."""
    if forced is not None:
        return forced
    if environ.get("NO_COLOR") or environ.get("TERM") == "dumb":
        return False
    return stream.isatty()


def width_for(stream: TextIO) -> int:
    """The terminal's width in cells; 88 when piped, so that a pipe always gets the same bytes."""
    if not stream.isatty():
        return PIPED_WIDTH
    import shutil  # it loads what packs archives

    return max(NARROWEST, min(shutil.get_terminal_size((PIPED_WIDTH, 24)).columns, 120))


_KEEP = re.compile(
    r"(?<=\d) (?=\d+/\d)"
    r"|(?<=\d) (?=(?:in|ft|mm|cm|m|kg|g|lb|N|psi|MPa|h|min|days|sq|cu|fl|qt|ml|%|°)(?![A-Za-z]))"
    r"|(?<=\d sq|\d cu|\d fl) (?=(?:in|ft|oz)(?![A-Za-z]))"
)


def wrapped(text: str, width: int, first: str = "", rest: str = "") -> list[str]:
    """The text broken at blanks to fit ``width`` cells. A number is never parted from its unit."""
    text = _KEEP.sub("\0", one_line(text))
    if text.isascii():
        return [line.replace("\0", " ") for line in _wrapped_ascii(text, width, first, rest)]
    lines = []
    line, used, empty = first, cells(first), True
    for word in text.split(" "):
        wide = len(word) if word.isascii() else cells(word)
        if not empty and used + 1 + wide > width:
            lines.append(line.rstrip())
            line, used, empty = rest, cells(rest), True
        line += word if empty else f" {word}"
        used += wide if empty else wide + 1
        empty = False
    lines.append(line.rstrip())
    return [line.replace("\0", " ") for line in lines]


def _wrapped_ascii(text: str, width: int, first: str, rest: str) -> Iterator[str]:
    """The same where each character takes one cell: a line's end is found at once, not word by word."""
    start, lead, room = 0, first, width - cells(first)
    while len(text) - start > room:
        stop = text.rfind(" ", start, start + room + 1) if room >= 0 else -1
        if stop < 0:  # a word wider than the line stands alone in it
            stop = text.find(" ", start)
            if stop < 0:
                break
        yield (lead + text[start:stop]).rstrip()
        start, lead, room = stop + 1, rest, width - cells(rest)
    yield (lead + text[start:]).rstrip()


def items(texts: Iterable[str], look: Look) -> Iterator[str]:
    """Each text behind a stroke of its own."""
    for text in texts:
        yield from wrapped(text, look.width, " -  ", " " * INDENT)


def labelled(label: str, text: str, look: Look) -> Iterator[str]:
    """The text behind a short word that says what it is."""
    first, *others = wrapped(text, look.width, " " * INDENT + f"{label:<9}", " " * (INDENT + 9))
    yield first[:INDENT] + look.painted(label, "1") + first[INDENT + len(label) :]
    yield from others


def remarks(texts: Sequence[str], look: Look) -> Iterator[str]:
    """Sentences that stand by themselves, with a blank line after them."""
    for text in texts:
        yield from wrapped(text, look.width)
    if texts:
        yield ""


def where(source: Source, span: Span) -> str:
    """``plans/bench.plan:13:46``: file, line and column, counted from 1."""
    place = source.place(span.start)
    return f"{one_line(source.name_at(span.start))}:{place.line}:{place.column}"
