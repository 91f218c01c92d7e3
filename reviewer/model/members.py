"""The names inside an assembly, before any of its members is made."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from reviewer.language import declarations as d
from reviewer.model.desk import MAX_NAME
from reviewer.model.naming import CORNERS, with_each

#: Assemblies one in another. No piece that was ever built needs so many.
MAX_DEPTH = 8
#: Steps in looking for the members that patterns mean, for a whole plan.
MAX_LOOKED = 2_000_000
#: In a member's name: the number of a copy.
NUMBER = "#"
#: Names by their pieces, one in another.
Tree = dict[str, Any]


def _put(tree: Tree, name: str) -> Tree:
    for piece in name.split("."):
        tree = tree.setdefault(piece, {})
    return tree


def members_of(statement: d.Statement, depth: int) -> Tree:
    """The names inside an assembly, piece by piece; :data:`NUMBER` stands for that of a copy."""
    tree: Tree = {}
    for member in statement.members:
        if member.kind not in ("part", "outline", "assembly") or member.name is None:
            continue
        kinds = {type(clause) for clause in member.clauses}
        for copy in member.others or (None,):
            name = member.name.text if copy is None else f"{member.name.text}.{copy.text}"
            if len(name) > MAX_NAME:
                continue
            places = [_put(tree, name)]
            if member.kind == "part" and kinds & {d.InCorners, d.Like}:
                places += [places[0].setdefault(corner, {}) for corner in CORNERS]
            if kinds & {d.Copies, d.Like}:
                places = [place.setdefault(NUMBER, {}) for place in places]
            if member.kind == "assembly" and depth < MAX_DEPTH:
                inner = members_of(member, depth + 1)
                for place in places:
                    place.update(inner)
    return tree


class MemberNames:
    """Looks up what names and patterns mean inside assemblies; after very many steps it gives up."""

    def __init__(self) -> None:
        self.looked = 0

    @property
    def given_up(self) -> bool:
        """Whether so many steps were taken that nothing more is looked up."""
        return self.looked > MAX_LOOKED

    def owns(self, tree: Tree, pieces: Sequence[str]) -> bool:
        """Whether a name, a stem or a pattern means something in a tree of names."""
        self.looked += 1
        if not pieces:
            return True
        if self.given_up:
            return False
        piece, rest = pieces[0], pieces[1:]
        if piece == "*":
            return bool(tree) and (not rest or any(self.owns(inner, rest) for inner in tree.values()))
        inner = tree.get(piece)
        if inner is not None:
            return self.owns(inner, rest)
        if piece.isdigit():
            return NUMBER in tree and self.owns(tree[NUMBER], rest)
        if with_each(piece, "") != piece:  # a copy's own word, which only its part knows
            before, _, after = piece.partition("each")
            return any(
                self.owns(inner, rest)
                for name, inner in tree.items()
                if name.startswith(before) and name.endswith(after)
            )
        return False
