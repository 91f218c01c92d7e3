"""How the tidy form spells a word: one way for each keyword, number and unit, in the writer's own units."""

from __future__ import annotations

import re
import unicodedata

from reviewer.language.lexer import SPELLINGS, Token
from reviewer.language.numbers import UNIT_WORDS, parsed

#: Units behind a number, by their symbols (ISO 80000-3, -5). A day is short enough as a word.
_SYMBOLS = {
    "HOURS": "h",
    "MINUTES": "min",
    "FAHRENHEIT": "F",
    "CELSIUS": "C",
    "LITRES": "l",
    "MILLILITRES": "ml",
}
#: Words before what is counted one by one: every year, 3 h per day.
_OF_ONE = ("EVERY", "PER")
_PIECES = re.compile(r"\d+/\d+|\d+\.\d+|\d+|[a-z]+|[^\d\s-]")


def _plurals(singular: str) -> tuple[str, ...]:
    return singular + "s", singular + "es", singular[:-1] + "ies"


#: What is counted one of, by the kind of token that stands for many: COATS → coat.
_ONE_OF = {
    plural.upper(): spelling
    for spelling, plural in SPELLINGS.items()
    if plural in _plurals(spelling) and plural.upper() not in _SYMBOLS
}


def tidy_number(text: str) -> str:
    """A number's tidy text: ``2-1/2"``, ``2½ inches`` and ``2 1/2 in`` all come out as ``2 1/2 in``.

    ``text`` is laid out (small letters, plain marks). The unit stays the writer's, and a decimal stays one.
    """
    pieces: list[str] = []
    for piece in _PIECES.findall(text):
        if piece in UNIT_WORDS:
            pieces.append(UNIT_WORDS[piece])
        elif piece[0].isdecimal():
            pieces.append(piece)
        else:  # a fraction in one character comes apart into figures around a slash of its own
            pieces.append(unicodedata.normalize("NFKC", piece).replace("⁄", "/"))
    return " ".join(pieces)


def tidy_word(token: Token, before: Token | None, said: str) -> str:
    """A token as the tidy form spells it. ``before`` stands before it on its line.

    ``said`` is the text as the writer wrote it: what stands in quotation marks is kept as it is there.
    """
    kind, value, begin, end = token
    if kind == "NUMBER":
        return tidy_number(value)
    if kind == "TEXT":
        return f'"{said[begin + 1 : end - 1]}"'
    if kind == "METRE" and before is not None and before[0] == "IN":
        return "m"  # a plan in one metre it is not
    if before is not None and before[0] == "NUMBER":
        if kind in _SYMBOLS:
            return _SYMBOLS[kind]
        if kind in _ONE_OF and 0 < parsed(before[1])[0] <= 1:
            return _ONE_OF[kind]
    if before is not None and before[0] in _OF_ONE and kind in _ONE_OF:
        return _ONE_OF[kind]
    return value
