"""The table of every plan that is reviewed at several sizes, in the terminal."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from reviewer.reports.content import Report, counted_word
from reviewer.reports.excerpt import cells, one_line
from reviewer.reports.plain_text import COLOURS, INDENT, SIGNS, Look, remarks, wrapped
from reviewer.reports.sizes import SizeRow, size_tables

#: What stands over the last column.
_FIRST = "first thing to mend"


def sizes(reports: Sequence[Report], look: Look) -> Iterator[str]:
    """The table of every plan that is reviewed at several sizes."""
    for table in size_tables(reports):
        yield f"{look.painted(one_line(table.name), '1;4')}: “{one_line(table.title)}”"
        yield ""
        yield from remarks(table.set_to, look)
        yield look.painted(table.said, "1")
        yield ""
        head = (*table.measures, "outcome", "errors", "warnings")
        rows = [(*row.sizes, row.outcome, str(row.errors), str(row.warnings)) for row in table.rows]
        wide = [max(cells(line[column]) for line in (head, *rows)) for column in range(len(head))]
        if INDENT + sum(wide) + 2 * (len(wide) - 1) > look.width:
            for row in table.rows:
                yield from _size_in_words(row, table.measures, look)
        else:
            for line, named in zip((head, *rows), (None, *table.rows), strict=True):
                yield from _size_line(line, wide, named, look)
        yield ""
        if not look.full and any(row.outcome == "passes" for row in table.rows):
            text = "Below are the sizes that do not pass; the full review tells of every size."
            if all(row.outcome == "passes" for row in table.rows):
                text = "The full review tells of every size."
            yield from wrapped(text, look.width)
            yield ""


def _size_in_words(row: SizeRow, measures: Sequence[str], look: Look) -> Iterator[str]:
    """A line of the table where its columns have no room."""
    sizes = ", ".join(f"{name} {size}" for name, size in zip(measures, row.sizes, strict=True))
    found = f"{counted_word(row.errors, 'error')}, {counted_word(row.warnings, 'warning')}"
    text = f"{sizes}: {row.outcome}, {found}{f': {row.first}' if row.first else ''}"
    yield from _signed(wrapped(text, look.width, f" {_sign(row)}  ", " " * INDENT), row, look)


def _sign(row: SizeRow) -> str:
    return SIGNS[row.weight] if row.weight else " "


def _signed(lines: list[str], row: SizeRow, look: Look) -> Iterator[str]:
    """The lines with the sign at their head in its colour."""
    code = f"1;{COLOURS[row.weight]}" if row.weight else ""
    yield " " + (look.painted(_sign(row), code) if code else " ") + lines[0][2:]
    yield from lines[1:]


def _size_line(line: tuple[str, ...], wide: Sequence[int], row: SizeRow | None, look: Look) -> Iterator[str]:
    """A line of the table: sign, sizes, outcome and counts in columns, and what to mend first behind them."""
    counts = len(line) - 2  # the two last columns are numbers
    padded = [
        f"{' ' * (room - cells(text))}{text}" if column >= counts else f"{text}{' ' * (room - cells(text))}"
        for column, (text, room) in enumerate(zip(line, wide, strict=True))
    ]
    columns = "  ".join(padded)
    if row is None:
        head = f"{' ' * INDENT}{columns}"
        fits = look.width - cells(head) >= cells(_FIRST) + 2
        yield look.painted(f"{head}  {_FIRST}" if fits else head, "1")
        return
    start = f" {_sign(row)}  {columns}"
    room = look.width - cells(start) - 2
    if not row.first:
        said = [start]
    elif room >= cells(_FIRST):
        said = wrapped(row.first, look.width, f"{start}  ", " " * (cells(start) + 2))
    else:
        said = [start, *wrapped(row.first, look.width, " " * 2 * INDENT, " " * 2 * INDENT)]
    yield from _signed(said, row, look)
