"""Words to tokens, one at a time, by what the grammar can use at that very place.

A word that is a keyword somewhere is still a free name wherever the grammar does not want the
keyword, so no part name is lost. Where both would do, what follows the word decides.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Set

from reviewer.language.tables import END, Tables

#: The kinds of token that are patterns, in the order they are tried; the rest are words and marks.
_PATTERNS = ("DATE", "NOMINAL", "NUMBER", "NAME", "TEXT", "GAUGE")
_BARE_NUMBER = re.compile(r"\d+(?:/\d+)?")
#: A character that begins nothing.
STRAY = "STRAY"

#: Other spellings of a keyword, so that either side of the ocean writes as at home.
SPELLINGS = {
    "bolt": "bolts",
    "c": "celsius",
    "caster": "castors",
    "casters": "castors",
    "castor": "castors",
    "catch": "catches",
    "centered": "centred",
    "centimeters": "centimetres",
    "clip": "clips",
    "cm": "centimetres",
    "coat": "coats",
    "copy": "copies",
    "day": "days",
    "degree": "degrees",
    "dovetail": "dovetails",
    "dowel": "dowels",
    "f": "fahrenheit",
    "ft": "foot",
    "gal": "gallons",
    "gallon": "gallons",
    "galvanized": "galvanised",
    "glide": "glides",
    "h": "hours",
    "hinge": "hinges",
    "hour": "hours",
    "inch": "inches",
    "kgs": "kg",
    "knob": "knobs",
    "l": "litres",
    "lbs": "lb",
    "leveler": "levellers",
    "levelers": "levellers",
    "leveller": "levellers",
    "liter": "litres",
    "liters": "litres",
    "litre": "litres",
    "m": "metre",
    "meter": "metre",
    "meters": "metres",
    "millimeters": "millimetres",
    "min": "minutes",
    "milliliters": "millilitres",
    "miter": "mitre",
    "ml": "millilitres",
    "mm": "millimetres",
    "month": "months",
    "nail": "nails",
    "ounce": "ounces",
    "outward": "outwards",
    "oz": "ounces",
    "pint": "pints",
    "pt": "pints",
    "pull": "pulls",
    "qt": "quarts",
    "quart": "quarts",
    "screw": "screws",
    "slide": "slides",
    "stay": "stays",
    "toward": "towards",
    "wedge": "wedges",
    "week": "weeks",
    "year": "years",
}


#: Kind, text (a keyword's in the grammar's spelling), and where it begins and ends.
Token = tuple[str, str, int, int]


class Lexer:
    """The tokens of a slice of text. One instance serves every statement; it keeps no state of its own."""

    def __init__(self, tables: Tables) -> None:
        self.actions = tables.actions
        self.words = {word: (word.upper(), word) for word in tables.words}
        self.words |= {spelling: (word.upper(), word) for spelling, word in SPELLINGS.items()}
        self.marks = tables.marks
        marks = "".join(re.escape(mark) for mark in tables.marks)
        tried = [f"(?P<{name}>{tables.patterns[name]})" for name in _PATTERNS]
        self.token = re.compile(rf"\s*(?:{'|'.join(tried)}|(?P<MARK>[{marks}])|(?P<END>\Z)|(?P<{STRAY}>.))")

    def _fit(self, state: int, ahead: re.Match[str]) -> int:
        """How well a state goes on with what is ahead: 0 not at all, 1 as a name, 2 as the word it is."""
        accepted = self.actions[state]
        kind = str(ahead.lastgroup)
        if kind == "NAME":
            keyword = self.words.get(ahead["NAME"])
            if keyword is not None and keyword[0] in accepted:
                return 2
            return 1 if "NAME" in accepted else 0
        if kind == "MARK":
            kind = self.marks[ahead["MARK"]]
        elif kind == "END":
            kind = END
        return 2 if kind in accepted else 0

    def _as_keyword(self, as_keyword: int, as_name: int, ahead: re.Match[str], measured: bool) -> bool:
        """Whether a word is the keyword, where the grammar could take it as that or as a name.

        It is, as long as what follows goes on with it at all. Only for the name of a measure of the plan
        the better reading counts, so that ``gap deep`` is the size of a part where ``gap`` is a measure.
        The two states are where the grammar would go with the one and with the other.
        """
        fit = self._fit(as_keyword, ahead)
        if fit == 2 or (fit and not measured):
            return True
        return fit >= self._fit(as_name, ahead)

    def tokens(
        self, text: str, start: int, stop: int, states: list[int], measures: Set[str] = frozenset()
    ) -> Iterator[Token]:
        """The tokens of a slice, and END. ``states`` is the parser's own stack, read as it grows."""
        match_at = self.token.match
        actions, words, marks = self.actions, self.words, self.marks
        place = start
        ahead: re.Match[str] | None = None  # the next match, where a word could not do without
        while True:
            match = ahead or match_at(text, place, stop)
            assert match is not None
            ahead = None
            kind = match.lastgroup
            assert kind is not None
            value: str = match[kind]
            place = match.end()
            begin = place - len(value)
            if kind == "NAME":
                keyword = words.get(value)
                if keyword is not None:
                    accepted = actions[states[-1]]
                    as_name, as_keyword = accepted.get("NAME"), accepted.get(keyword[0])
                    if as_name is None:
                        kind, value = keyword
                    elif as_keyword is not None:
                        # A reduction comes first either way, and the keyword is what it was made for.
                        if as_keyword < 0 or as_name < 0:
                            kind, value = keyword
                        else:
                            ahead = match_at(text, place, stop)
                            assert ahead is not None
                            if self._as_keyword(as_keyword, as_name, ahead, value in measures):
                                kind, value = keyword
                elif value[0] == "x" and value[1:2].isnumeric() and "X" in actions[states[-1]]:
                    kind, value, place = "X", "x", begin + 1  # 30 x80 where two measures are wanted
            elif kind == "MARK":
                kind = marks[value]
                if (
                    kind == "TIMES"
                    and "TIMES" not in (accepted := actions[states[-1]])
                    and "NAME" in accepted
                ):
                    kind = "NAME"  # a lone star: every part
            elif kind == "NOMINAL":
                if "NOMINAL" not in (accepted := actions[states[-1]]) and "NUMBER" in accepted:
                    number = _BARE_NUMBER.match(text, begin, stop)
                    assert number is not None
                    kind, value, place = "NUMBER", number.group(), number.end()
            elif kind == STRAY and value == "°" and "DEGREES" in actions[states[-1]]:
                kind, value = "DEGREES", "degrees"
            elif kind == "END":
                yield END, "", stop, stop
                return
            yield kind, value, begin, place
