"""For whom a piece is made: children or not, and what its title calls it."""

from __future__ import annotations

import re
from collections.abc import Iterable
from functools import lru_cache

from reviewer.limits import Limits
from reviewer.model.plan import Plan

#: Words of a title that say a piece is made for a child, and what makes another thing of them: own choice.
_CHILDS: dict[str, tuple[str, ...]] = {
    "child": ("child-proof", "childproof", "child-free"),
    "children": (),
    "kid": ("kid leather", "kid skin", "kid glove", "kid-free", "goat"),
    "toddler": (),
    "baby": ("baby grand", "baby's breath", "baby’s breath", "baby greens", "baby leaf"),
    "infant": (),
    "nursery": (
        "plant nursery", "tree nursery", "garden nursery", "nursery plant", "nursery garden", "nursery pot",
        "nursery stock", "nursery tray", "seedling", "seed tray", "potting", "greenhouse", "cold frame",
    ),
    "preschool": (),
    "playroom": (),
}  # fmt: skip


@lru_cache(maxsize=512)
def _pattern(word: str) -> re.Pattern[str]:
    return re.compile(rf"(?<![a-z]){re.escape(word)}(?:s|es|'s|’s)?(?![a-z])")


def word_in(text: str, words: Iterable[str]) -> str | None:
    """The longest of the words that a text has, whole and in any case; None when it has none."""
    said = text.lower()
    found = [word for word in words if word in said and _pattern(word).search(said)]
    return max(found, key=len, default=None)


def made_for_a_child(plan: Plan) -> bool:
    """True when the title says so: “Toddler bench”, “Child's book chest”; not “Plant nursery bench”."""
    return any(
        word_in(plan.title, (word,)) is not None and word_in(plan.title, others) is None
        for word, others in _CHILDS.items()
    )


def children_here(plan: Plan, limits: Limits) -> float | None:
    """Up to what age children are about, in years; 0: none are; None: the plan does not say.

    A piece that its title gives to a child has one, whatever the room says.
    """
    said = plan.room.children_under if plan.room else None
    if made_for_a_child(plan):
        return max(said or 0.0, limits["child-age"].amount)
    return said
