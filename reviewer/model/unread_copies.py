"""Names that are unknown only because how many copies there are could not be read: that is told already."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import TYPE_CHECKING

from reviewer.language import declarations as d
from reviewer.language.source import Span
from reviewer.model.naming import CORNERS
from reviewer.model.plan import UnknownName

if TYPE_CHECKING:
    from reviewer.model.assemblies import Made

#: Patterns are held against so many names in all; what is left then is told, though it may follow.
_MOST_COMPARED = 200_000


def without_unread_copies(
    unknown: Iterable[UnknownName],
    kinds: Mapping[str, list[d.Statement]],
    made: Iterable[Made],
    inner: Mapping[Span, str],
) -> list[UnknownName]:
    """Unknown names without ``shelf.2`` and ``shelf.*``, where a clause of shelf could not be read.

    ``inner`` is what names inside an assembly begin with once they are said in full.
    """
    stems = {stem: stem.split(".") for stem in _uncounted(kinds, made)}
    left = _MOST_COMPARED

    def follows(name: str) -> bool:
        nonlocal left
        pieces = name.split(".")
        for length in range(1, len(pieces)):
            if not _copy_word(pieces[length]):
                continue
            if "*" not in pieces[:length]:
                if ".".join(pieces[:length]) in stems:
                    return True
                continue
            left -= len(stems)
            if left > 0 and any(_matches(pieces[:length], own) for own in stems.values()):
                return True
        return False

    return [
        each
        for each in unknown
        if each.what != "part"
        or not (follows(each.name) or (each.span in inner and follows(inner[each.span] + each.name)))
    ]


def _uncounted(kinds: Mapping[str, list[d.Statement]], made: Iterable[Made]) -> dict[str, None]:
    """What may have copies that could not be read, and what is like it."""
    named = [(each.name, each.statement) for each in made]
    for kind in ("part", "outline"):
        named += [(each.name.text, each) for each in kinds.get(kind, ()) if each.name is not None]
    found: dict[str, None] = {}
    likes: dict[str, list[str]] = {}
    for name, statement in named:
        if statement.others or any(isinstance(one, (d.Copies, d.InCorners)) for one in statement.clauses):
            continue
        if statement.damaged:
            found[name] = None
        for clause in statement.clauses:
            if isinstance(clause, d.Like):
                likes.setdefault(clause.name.text, []).append(name)
    waiting = list(found)
    while waiting:
        for name in likes.pop(waiting.pop(), ()):
            if name not in found:
                found[name] = None
                waiting.append(name)
    return found


def _matches(pieces: list[str], own: list[str]) -> bool:
    return len(pieces) == len(own) and all(one in ("*", its) for one, its in zip(pieces, own, strict=True))


def _copy_word(piece: str) -> bool:
    """Whether a copy in a row or in a corner is called so, or a pattern means them all."""
    return piece == "*" or piece.isdecimal() or piece in CORNERS
