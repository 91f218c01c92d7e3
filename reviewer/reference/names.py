"""Near names: what somebody probably meant by a word that nothing is called."""

from __future__ import annotations

import re
from collections.abc import Iterable

#: How alike two words must be, from 0 to 1; difflib's own default.
_ALIKE = 0.6

_NO_WORD = re.compile(r"[\W_]+")


def even(words: str) -> str:
    """The words in lower case with single spaces: hyphens, commas and brackets count as spaces."""
    return _NO_WORD.sub(" ", words.casefold()).strip()


def nearest(word: str, known: Iterable[str], most: int = 4) -> tuple[str, ...]:
    """The known names most like a word, likeliest first, at most so many; equal likeness by alphabet.

    Case, hyphens and spaces do not count. Empty when nothing comes near.
    """
    from difflib import SequenceMatcher

    matcher: SequenceMatcher[str] = SequenceMatcher()
    matcher.set_seq2(even(word))  # the matcher keeps what it works out about its second word
    near: list[tuple[float, str]] = []
    for name in sorted(set(known)):
        matcher.set_seq1(even(name))
        if matcher.real_quick_ratio() >= _ALIKE and matcher.quick_ratio() >= _ALIKE:
            likeness = matcher.ratio()
            if likeness >= _ALIKE:
                near.append((-likeness, name))
    return tuple(name for _, name in sorted(near)[:most])
