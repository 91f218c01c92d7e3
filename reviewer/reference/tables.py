"""The tables: CSV files beside this one, each read once, when first asked for, into frozen records.

A record is a :class:`Row` whose annotated names are columns. The type says how the cells are read: ``str``,
``float``, ``int``, ``bool`` (yes or no), ``float | None`` (an empty cell is None) and ``tuple[str, ...]``
(parts between semicolons). Columns that the record does not name are left alone.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Any, TypeVar

from reviewer.shipped import shipped_text

PACKAGE = "reviewer.reference"


class Row:
    """A row of a table: frozen, its fields the annotated columns.

    Not a NamedTuple or dataclass, because those build code when their class is made, and a review on
    the terminal waits for some thirty of them.
    """

    def __init__(self, fields: tuple[str, ...], cells: list[Any]) -> None:
        self.__dict__.update(zip(fields, cells, strict=True))

    def __setattr__(self, name: str, value: object) -> None:
        raise AttributeError(f"a table's row does not change: {name}")

    def __repr__(self) -> str:
        fields = ", ".join(f"{name}={value!r}" for name, value in vars(self).items())
        return f"{type(self).__name__}({fields})"


R = TypeVar("R", bound=Row)


class TableError(Exception):
    """A table that cannot be read as the record asked for; the message names file, row and column."""


def _yes(cell: str) -> bool:
    if cell not in ("yes", "no"):
        raise ValueError("neither yes nor no")
    return cell == "yes"


def _maybe(cell: str) -> float | None:
    return float(cell) if cell else None


def _parts(cell: str) -> tuple[str, ...]:
    return tuple(part.strip() for part in cell.split(";") if part.strip())


#: By the annotation as it is written, which need not be evaluated so.
_READERS: dict[str, Callable[[str], Any] | None] = {
    "str": None,
    "float": float,
    "int": int,
    "bool": _yes,
    "float | None": _maybe,
    "tuple[str, ...]": _parts,
}

_kept: dict[tuple[str, type[Row]], tuple[Any, ...]] = {}


def converted(name: str, record: type[R], columns: list[str], rows: list[list[str]]) -> tuple[R, ...]:
    """The rows of a table as records. Raises TableError as :func:`table` does."""
    hints: dict[str, str] = {}
    for kind in reversed(record.__mro__):
        hints.update(getattr(kind, "__annotations__", {}))
    missing = [field for field in hints if field not in columns]
    if missing:
        raise TableError(f"{name} has no column {missing[0]!r}")
    fields = tuple(hints)
    take = [(columns.index(field), _READERS[hint]) for field, hint in hints.items()]
    records: list[R] = []
    for number, row in enumerate(rows, start=2):
        if len(row) != len(columns):
            raise TableError(f"{name}, row {number}: {len(row)} cells under {len(columns)} columns")
        try:
            records.append(record(fields, [read(row[at]) if read else row[at] for at, read in take]))
        except ValueError as error:
            cells = ", ".join(f"{columns[at]} {row[at]!r}" for at, read in take if read)
            raise TableError(f"{name}, row {number}: {error} (in {cells})") from error
    return tuple(records)


def table(name: str, record: type[R]) -> tuple[R, ...]:
    """All rows of a table as records, in file order; read at the first call and kept.

    Raises TableError when a column lacks or a cell does not read as its field's type.
    """
    kept = _kept.get((name, record))
    if kept is None:
        import csv

        columns, *rows = csv.reader(shipped_text(PACKAGE, name).splitlines(keepends=True))
        kept = _kept[name, record] = converted(name, record, columns, rows)
    return kept
