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


def one_slip_apart(words: str, others: str) -> bool:
    """True when each word is the other's but for a letter more, less or other, or two that changed places."""
    ones, twos = words.lower().split(), others.lower().split()
    return len(ones) == len(twos) and all(_one_slip(one, two) for one, two in zip(ones, twos, strict=True))


def _one_slip(one: str, two: str) -> bool:
    if len(one) > len(two):
        one, two = two, one
    if len(two) - len(one) > 1:
        return False
    at = next((at for at, (a, b) in enumerate(zip(one, two, strict=False)) if a != b), len(one))
    if len(one) < len(two):
        return one[at:] == two[at + 1 :]
    return one[at + 1 :] == two[at + 1 :] or (one[at + 1 : at + 2], one[at : at + 1], one[at + 2 :]) == (
        two[at : at + 1],
        two[at + 1 : at + 2],
        two[at + 2 :],
    )
