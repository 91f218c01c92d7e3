"""Words that begin a clause and stand alone, which the grammar can only take for names."""

from __future__ import annotations

from reviewer.language.declarations import Word
from reviewer.model.desk import Desk


def tell_half_said(desk: Desk, word: Word, about: str) -> bool:
    """Tell that a clause of a statement is only half said; false where the word begins none that goes on.

    Asked only of a name that nothing declares, so that a part or a stock may well be called like that.
    """
    from reviewer.language.examples import beginnings, example_of

    example = example_of(about, [word.text])
    if word.text not in beginnings(about) or example in ("", word.text):
        return False
    desk.problem(
        word.span,
        f"“{word.text}” begins a clause, and what goes with it does not stand here.",
        f"Write it like this: {example}",
    )
    return True
