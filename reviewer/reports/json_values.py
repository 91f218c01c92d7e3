"""Values as every part of the JSON report has them: numbers, places in the text, measures with their unit."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import Any

from reviewer.findings import Filling
from reviewer.language.source import Source, Span
from reviewer.units import Kind, UnitSystem, Value, show

Json = dict[str, Any]

INSIDE_UNITS: dict[Kind, str] = {
    "length": "mm",
    "fine length": "mm",
    "force": "N",
    "mass": "kg",
    "stress": "MPa",
    "moment": "N·mm",
    "area": "mm²",
    "opening area": "mm²",
    "volume": "mm³",
    "liquid": "mm³",
    "line load": "N/mm",
    "count": "1",
    "ratio": "1",
    "percent": "%",
    "angle": "°",
    "hours": "h",
    "temperature": "°C",
    "money": "as in the plan",
}


def number(amount: float) -> float | None:
    """The number to nine digits, so that no machine's last bit shows; None where there is no limit."""
    return float(f"{amount:.9g}") + 0.0 if math.isfinite(amount) else None


def small(amount: float) -> float | None:
    """A place, a force or a moment: what is next to nothing by rounding alone is 0."""
    return number(round(amount, 6))


def numbers(amounts: Sequence[float]) -> list[float | None]:
    """The same for several."""
    return [number(amount) for amount in amounts]


def span_json(source: Source, span: Span) -> Json:
    """A run of the text: offsets, lines and columns, and the file where it is not the plan's own."""
    first, last = source.place(span.start), source.place(span.end)
    file = source.file_at(span.start)
    begins = file.start if file else 0
    return {
        **({"file": file.name} if file else {}),
        "start": span.start - begins,
        "end": span.end - begins,
        "line": first.line,
        "column": first.column,
        "end_line": last.line,
        "end_column": last.column,
    }


def value_json(filling: Filling, system: UnitSystem) -> Json:
    """A value with its unit inside and the text for a person; a word has its text only."""
    if not isinstance(filling, Value):
        return {"text": filling}
    return {
        "amount": number(filling.amount),
        "unit": INSIDE_UNITS[filling.kind],
        "kind": filling.kind,
        "text": show(filling, system),
    }
