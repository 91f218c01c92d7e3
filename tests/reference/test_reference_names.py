"""How alike words are: one slip of the pen a word, held to a plain search through all slips."""

from __future__ import annotations

import string

from hypothesis import given
from hypothesis import strategies as st

from reviewer.reference.names import one_slip_apart

WORDS = st.text("abc", max_size=6)


def slips_of(word: str) -> set[str]:
    """The word, and every word that one slip makes of it."""
    letters = string.ascii_lowercase[:4]
    made = {word}
    for at in range(len(word) + 1):
        made |= {word[:at] + letter + word[at:] for letter in letters}
        made |= {word[:at] + letter + word[at + 1 :] for letter in letters if at < len(word)}
        made.add(word[:at] + word[at + 1 :])
        made.add(word[:at] + word[at + 1 : at + 2] + word[at : at + 1] + word[at + 2 :])
    return made


@given(WORDS, WORDS)
def test_one_slip_is_one_slip(one: str, two: str) -> None:
    if one and two:
        assert one_slip_apart(one, two) is (two in slips_of(one))


def test_words_slip_one_by_one() -> None:
    assert one_slip_apart("polyurethan Waterbrone", "polyurethane waterborne")
    assert not one_slip_apart("polyurethane", "polyurethane waterborne")
    assert not one_slip_apart("stones", "shoes")
