"""Statements that count at some sizes only: settled from the measures alone, before any part is made.

A statement whose condition does not hold is left out altogether. What it would have named is kept with
the reason, so that lists pass over it and a part that is placed by it can be told why it is not there.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence

from reviewer.language import declarations as d
from reviewer.model.desk import Desk
from reviewer.model.left_out import Absent, LeftOut, Reason
from reviewer.model.naming import with_each
from reviewer.records import NamedTuple

#: Sums with more numbers and names than this are not repeated in a message.
_MOST_SAID = 6
#: How near two sides are when they are the same size: sums leave a last figure behind.
_SAME = 1e-9
_OTHERWISE = {
    "over": "is {} or less",
    "under": "is {} or more",
    "at least": "is under {}",
    "at most": "is over {}",
}
_TIGHT = ("*", "/")


class Standing(NamedTuple):
    """The statements that count at these sizes, without their conditions, and what is left out."""

    statements: tuple[d.Statement, ...]
    left_out: LeftOut


def standing(desk: Desk, statements: Sequence[d.Statement]) -> Standing:
    """What counts of a plan's statements, once the desk knows its measures."""
    left_out = LeftOut()
    return Standing(tuple(_settled(desk, statements, "", left_out)), left_out)


def _settled(
    desk: Desk, statements: Sequence[d.Statement], within: str, left_out: LeftOut
) -> Iterable[d.Statement]:
    """The statements of one scope that count; ``within`` goes before the names of an assembly's members."""
    failed = {id(statement): _failed(desk, statement) for statement in statements}
    likeness = _Likeness(statements, failed)
    for statement in statements:
        clauses = tuple(clause for clause in statement.clauses if not isinstance(clause, d.OnlyWhen))
        bare = statement if len(clauses) == len(statement.clauses) else statement._replace(clauses=clauses)
        reason = failed[id(statement)]
        if bare.kind == "part":
            kept = []
            for name, each in _copies(bare):
                found = reason or likeness.reason(name, each, statement)
                if found is None:
                    kept.append(each)
                    continue
                left_out.add(found._replace(name=within + name))
                assert bare.name is not None
                left_out.parts.append(Absent(within + name, within + bare.name.text, each, bare))
            if len(kept) < len(_copies(bare)):
                if not kept:
                    continue
                bare = bare._replace(others=tuple(word for word in bare.others if word.text in kept))
        elif reason is not None:
            if bare.kind in ("outline", "assembly"):
                for name, _ in _copies(bare):
                    left_out.add(reason._replace(name=within + name))
            elif bare.kind == "finish" and bare.name is not None:
                left_out.finishes.add(bare.name.text)
            continue
        elif bare.members:
            inner = _settled(desk, bare.members, f"{within}{_stem_of_members(bare)}.", left_out)
            bare = bare._replace(members=tuple(inner))
        yield bare


def _copies(statement: d.Statement) -> list[tuple[str, str | None]]:
    """The names that a statement declares, each with the copy's own word."""
    assert statement.name is not None
    family = statement.name.text
    if not statement.others:
        return [(family, None)]
    return [(f"{family}.{copy.text}", copy.text) for copy in statement.others]


def _stem_of_members(statement: d.Statement) -> str:
    """What the names of an assembly's members begin with; a star for the word of each copy."""
    assert statement.name is not None
    stem = statement.name.text
    stem += ".*" if statement.others else ""
    return stem + (".*" if any(isinstance(clause, d.Copies) for clause in statement.clauses) else "")


class _Likeness:
    """A part without a condition of its own is left out with the part that it is like."""

    def __init__(self, statements: Sequence[d.Statement], failed: dict[int, Reason | None]) -> None:
        self._known: dict[str, list[tuple[str | None, d.Statement]]] = {}
        self._failed = failed
        if not any(failed.values()):
            return
        for statement in statements:
            if statement.kind == "part":
                for name, each in _copies(statement):
                    self._known.setdefault(name, []).append((each, statement))
        self._settled: dict[str, Reason | None] = {}

    def reason(self, name: str, each: str | None, statement: d.Statement) -> Reason | None:
        """Why a part is left out with another one; None when it stands. No chain is walked twice."""
        path: dict[str, None] = {}
        found: Reason | None = None
        while self._known and _own(statement) is None:
            path[name] = None
            like = next((clause for clause in statement.clauses if isinstance(clause, d.Like)), None)
            if like is None:
                break
            name = with_each(like.name.text, each)
            others = self._known.get(name) or self._known.get(name.rpartition(".")[0])
            if not others or name in path:
                break
            if name in self._settled:
                found = self._settled[name]
                break
            there = [other for other in others if self._failed[id(other[1])] is None]
            if not there:
                found = self._failed[id(others[0][1])]
                break
            each, statement = there[0]
        for passed in path:
            self._settled[passed] = found
        return found


def _own(statement: d.Statement) -> d.OnlyWhen | None:
    return next((clause for clause in statement.clauses if isinstance(clause, d.OnlyWhen)), None)


# ---------------------------------------------------------------- one condition


def _failed(desk: Desk, statement: d.Statement) -> Reason | None:
    """The first condition of a statement that does not hold; one that can't be worked out is told."""
    for clause in statement.clauses:
        if isinstance(clause, d.OnlyWhen):
            left, right = desk.amount(clause.left), desk.amount(clause.right)
            if left is None or right is None or _holds(clause.way, left, right):
                continue
            name = statement.name.text if statement.name else ""
            return Reason(name, _when(desk, clause, left, right), clause.span)
    return None


def _holds(way: str, left: float, right: float) -> bool:
    same = math.isclose(left, right, rel_tol=_SAME, abs_tol=_SAME)
    if same:
        return way in ("at least", "at most")
    return left > right if way in ("over", "at least") else left < right


def _when(desk: Desk, clause: d.OnlyWhen, left: float, right: float) -> str:
    """``length is 60 in or less (here 48 in)``."""
    here, there = (desk.said(amount * desk.mm_per_unit) for amount in (left, right))
    plain = isinstance(clause.right, d.Number)
    limit = there if plain else _words(clause.right)
    against = "" if plain else f" against {there}"
    return f"{_words(clause.left)} {_OTHERWISE[clause.way].format(limit)} (here {here}{against})"


def _words(expression: d.Expression) -> str:
    """A sum as a plan would write it; a long one is only called that."""
    said: list[tuple[str, str]] = []  # the words of a piece, and the sign that joins it
    todo: list[tuple[d.Expression, bool]] = [(expression, False)]
    leaves = 0
    while todo:
        node, ready = todo.pop()
        if not isinstance(node, d.Sum):
            leaves += 1
            if leaves > _MOST_SAID:
                return "the sum"
            text = (
                node.name
                if isinstance(node, d.MeasureName)
                else f"{node.amount:g} {node.unit or ''}".rstrip()
            )
            said.append((text, ""))
        elif not ready:
            todo += ((node, True), (node.right, False), (node.left, False))
        else:
            (right, right_sign), (left, left_sign) = said.pop(), said.pop()
            if node.sign in _TIGHT and left_sign in ("+", "-"):
                left = f"({left})"
            if right_sign and not (node.sign == "+" or (node.sign == "-" and right_sign in _TIGHT)):
                right = f"({right})"
            said.append((f"{left} {node.sign} {right}", node.sign))
    return said[0][0]
