"""Maker's words and the keys that they can mean."""

from __future__ import annotations

import re
from collections.abc import Iterable
from functools import lru_cache

from reviewer.records import NamedTuple
from reviewer.reference.names import even
from reviewer.reference.tables import Row, table


class WordRow(Row):
    """A row of a table of words. ``standing`` is plain, usual (of several meanings) or possible."""

    words: str
    key: str
    standing: str


class _Synonym(Row):
    about: str
    word: str
    same_as: str


class _Meaning(NamedTuple):
    key: str
    usual: bool


class Wordbook:
    """Words for keys. They match in any order; case, hyphens and commas do not count."""

    def __init__(self, rows: Iterable[WordRow], synonyms: Iterable[tuple[str, str]] = ()) -> None:
        """``synonyms`` are (word, the word of the table for it); an empty one is passed over."""
        found: dict[tuple[str, ...], dict[str, bool]] = {}
        spoken: set[str] = set()
        for row in rows:
            found.setdefault(_sorted(even(row.words)), {})[row.key] = row.standing == "usual"
            spoken.add(even(row.words))
        self._found = {
            words: tuple(
                sorted((_Meaning(*item) for item in keys.items()), key=lambda known: not known.usual)
            )
            for words, keys in found.items()
        }
        self._same = {even(word): even(same_as) for word, same_as in synonyms}
        longest_first = sorted(self._same, key=lambda word: (-len(word), word))
        self._synonym = (
            re.compile(rf"\b(?:{'|'.join(map(re.escape, longest_first))})\b") if self._same else None
        )
        self.spoken = tuple(sorted(spoken))

    def _exactly(self, words: str) -> tuple[_Meaning, ...]:
        plain = even(words)
        return self._found.get(_sorted(plain)) or self._found.get(_sorted(self.translated(plain)), ())

    def translated(self, plain: str) -> str:
        """Even words with the table's own word in place of each synonym."""
        if self._synonym is None:
            return plain
        return " ".join(self._synonym.sub(lambda word: self._same[word[0]], plain).split())

    def find(self, words: str) -> str | None:
        """The one key that the words mean: the only one, else the usual one; None when that is not clear."""
        meanings = self._exactly(words)
        usual = [meaning.key for meaning in meanings if meaning.usual]
        if len(usual) == 1:
            return usual[0]
        return meanings[0].key if len(meanings) == 1 else None

    def candidates(self, words: str) -> tuple[str, ...]:
        """Every key that the words can mean, the usual one first.

        Words that are no name of anything find the keys whose names hold all of them.
        """
        meanings = self._exactly(words)
        if meanings:
            return tuple(meaning.key for meaning in meanings)
        asked = set(self.translated(even(words)).split())
        if not asked:
            return ()
        holding = (keys for named, keys in self._found.items() if asked <= set(named))
        return tuple(dict.fromkeys(meaning.key for keys in holding for meaning in keys))


def _sorted(plain: str) -> tuple[str, ...]:
    return tuple(sorted(plain.split()))


@lru_cache(maxsize=8)
def wordbook(about: str) -> Wordbook:
    """The words about ``material``, ``finish`` or ``glue``, out of their table and the synonyms.

    Those about a ``panel`` are only words that say that boards were glued edge to edge.
    """
    synonyms = ((row.word, row.same_as) for row in table("synonyms.csv", _Synonym) if row.about == about)
    names = table(f"{about}_names.csv", WordRow) if about != "panel" else ()
    return Wordbook(names, synonyms)
