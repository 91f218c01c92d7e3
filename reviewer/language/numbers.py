"""A number's text to its amount and unit: 2 1/2, 2-1/2, 2½, 18 mm, 5 ft 5, 5' 5\"."""

from __future__ import annotations

import re
import unicodedata
from functools import lru_cache
from typing import Literal

from reviewer.language.declarations import Number
from reviewer.language.source import Span
from reviewer.units import MM_PER_FOOT, MM_PER_INCH, UnitSystem

Unit = Literal["mm", "cm", "m", "in", "ft"]

UNIT_WORDS: dict[str, Unit] = {
    '"': "in",
    "in": "in",
    "inch": "in",
    "inches": "in",
    "'": "ft",
    "ft": "ft",
    "foot": "ft",
    "feet": "ft",
    "mm": "mm",
    "cm": "cm",
    "m": "m",
    "metre": "m",
    "metres": "m",
    "meter": "m",
    "meters": "m",
}
MM_PER: dict[Unit, float] = {"mm": 1.0, "cm": 10.0, "m": 1000.0, "in": MM_PER_INCH, "ft": MM_PER_FOOT}
#: The plan's own unit, by the system its title names.
SYSTEM_UNIT: dict[str, tuple[UnitSystem, Unit]] = {
    "inches": (UnitSystem.INCH, "in"),
    "millimetres": (UnitSystem.METRIC, "mm"),
    "centimetres": (UnitSystem.METRIC, "cm"),
    "metres": (UnitSystem.METRIC, "m"),
    "metre": (UnitSystem.METRIC, "m"),
}
#: A number longer than this is a slip or worse; sums of shorter ones stay exact to far below a hair.
MAX_FIGURES = 15
_PIECES = re.compile(r"\d+/\d+|\d+\.\d+|\d+|[^\d\s-]")
_WORD = re.compile(r"[a-z]+|[\"']")


class NumberError(ValueError):
    """A number that cannot be meant: what is wrong with it, what to do, and where it stands."""

    def __init__(self, says: str, do: str, span: Span) -> None:
        super().__init__(says)
        self.says = says
        self.do = do
        self.span = span


def _amount(text: str) -> float:
    total = 0.0
    for piece in _PIECES.findall(text):
        if len(piece) > MAX_FIGURES:
            raise NumberError(
                f"This number has {len(piece)} figures, far more than any measure needs.",
                "Write a shorter number.",
                Span(0, len(text)),
            )
        if "/" in piece:
            over, _, under = piece.partition("/")
            if int(under) == 0:
                raise NumberError(
                    f"The fraction {piece} has nothing below its line to divide by.",
                    "Write the lower number of the fraction, as in 1/2.",
                    Span(0, len(text)),
                )
            total += int(over) / int(under)
        elif piece[0].isdigit():
            total += float(piece)
        else:
            total += unicodedata.numeric(piece)
    return total


@lru_cache(maxsize=4096)
def parsed(text: str) -> tuple[float, Unit | None]:
    """Amount and unit of a number's text. A compound of feet and inches comes out in inches.

    Raises NumberError for a fraction over nothing and for a number without end.
    """
    words = list(_WORD.finditer(text))
    if not words:
        return _amount(text), None
    unit = UNIT_WORDS[words[0].group()]
    amount = _amount(text[: words[0].start()])
    rest = text[words[0].end() :]
    if rest.strip():
        return amount * 12 + _amount(_WORD.sub("", rest)), "in"
    return amount, unit


def number(text: str, span: Span) -> Number:
    """The declaration of a number. Raises NumberError with the number's span."""
    try:
        amount, unit = parsed(text)
    except NumberError as error:
        raise NumberError(error.says, error.do, span) from None
    return Number(amount, unit, span)
