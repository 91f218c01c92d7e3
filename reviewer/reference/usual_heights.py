"""Heights at which people usually sit, work and reach, with who says so."""

from __future__ import annotations

from functools import lru_cache
from typing import NamedTuple

from reviewer.reference.tables import Row, table
from reviewer.units import MM_PER_INCH


class UsualHeight(NamedTuple):
    """Between ``low`` and ``high`` mm. ``words`` of a title name its kind; ``what`` says what is measured."""

    kind: str
    what: str
    words: tuple[str, ...]
    low: float
    high: float
    source: str


class _Height(Row):
    kind: str
    what: str
    words: tuple[str, ...]
    low: float
    high: float
    source: str
    status: str


@lru_cache(maxsize=1)
def usual_heights() -> dict[str, UsualHeight]:
    """Every usual height by its kind, in the table's order."""
    return {
        row.kind: UsualHeight(
            row.kind,
            row.what,
            row.words,
            row.low * MM_PER_INCH,
            row.high * MM_PER_INCH,
            f"{row.source} (from memory)" if row.status == "from memory" else row.source,
        )
        for row in table("usual_heights.csv", _Height)
    }
