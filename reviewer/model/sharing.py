"""What a plan takes over from the files that it uses: the measures, stock and finishes it has not itself.

A name that the plan declares wins over a used file's; a name in two used files is a clash. Bare numbers
are in their own file's unit.
"""

from __future__ import annotations

from collections.abc import Iterator, Set
from typing import Any

from reviewer.language import declarations as d
from reviewer.language.numbers import SYSTEM_UNIT, Unit
from reviewer.language.sharing import SharedFile
from reviewer.model import finishing
from reviewer.model.desk import Desk
from reviewer.model.left_out import conditional
from reviewer.model.naming import PartNames
from reviewer.model.plan import Basket, Part, Stock
from reviewer.model.stocks import stocks_of


class Shared:
    """The used files of one plan. Their measures are declared at once; stock and finishes are asked for."""

    def __init__(self, desk: Desk, files: tuple[SharedFile, ...], own: dict[str, list[d.Statement]]) -> None:
        self.desk = desk
        self.files = files
        self.own = own
        self._stocks: dict[str, Stock] = {}
        for file, statements in self._lent("measure", self._named("measure")):
            desk.declare_measures(statements, lent=self._unit(file))

    def _named(self, kind: str) -> set[str]:
        return {statement.name.text for statement in self.own.get(kind, []) if statement.name}

    def _unit(self, file: SharedFile) -> Unit:
        return self.desk.unit if file.unit is None else SYSTEM_UNIT[file.unit][1]

    def _lent(self, kind: str, replaced: Set[str]) -> Iterator[tuple[SharedFile, list[d.Statement]]]:
        """Each file's statements of a kind, without those that the plan replaces. Clashes are told."""
        known: dict[str, tuple[SharedFile, d.Word]] = {}
        for file in self.files:
            lent = []
            for statement in file.statements:
                name = statement.name
                if statement.kind != kind or name is None or name.text in replaced:
                    continue
                other, first = known.setdefault(name.text, (file, name))
                if other is file:
                    lent.append(statement)
                    continue
                self.desk.problem(
                    name.span,
                    f"The {kind} “{name.text}” is given in both {other.file.name} and {file.file.name}.",
                    f"Take one of the two out, or give the plan its own {kind} “{name.text}”, which wins.",
                    also_at=(first.span,),
                )
            if conditional(lent):
                from reviewer.model.conditions import standing

                with self.desk.written_in(self._unit(file)):
                    lent = list(standing(self.desk, lent).statements)
            yield file, lent

    # ------------------------------------------------------------ stock

    def stocks(self) -> dict[str, Stock]:
        """Every stock of the files, by name, in the order of their use."""
        for file, statements in self._lent("stock", self._named("stock")):
            with self.desk.written_in(self._unit(file)):
                self._stocks |= stocks_of(self.desk, statements)
        return self._stocks

    def needed(
        self, stocks: dict[str, Stock], parts: dict[str, Part], basket: Basket | None
    ) -> dict[str, Stock]:
        """The plan's own stock, and of the files' what a part is cut from or what is to be bought."""
        asked = {part.stock for part in parts.values()}
        if basket is not None:
            asked.update(line.stock for line in basket.lines)
        return {name: stock for name, stock in stocks.items() if name in asked or name not in self._stocks}

    # ------------------------------------------------------------ finishes

    def finishes(self, names: PartNames) -> list[d.Statement]:
        """The plan's finishes, with what they leave unsaid taken from the files, then the files' others.

        A finish that the plan does not name goes on those of the parts it names that the plan has.
        """
        own = self.own.get("finish", [])
        lent = self._lent_finishes(own)
        self._look_through(list(lent.values()))
        found = [_filled(statement, lent.get(_name(statement))) for statement in own]
        said = self._named("finish")
        for name, statement in lent.items():
            on, steps = _parted(statement)
            here = [clause for clause in on if names.meant_by(clause.name.text)]
            if here and name not in said:
                found.append(statement._replace(clauses=(*here, *steps)))
        return found

    def _lent_finishes(self, own: list[d.Statement]) -> dict[str, d.Statement]:
        """The files' finishes by name, without those that the plan says in full."""
        in_part = {_name(statement) for statement in own if not all(_parted(statement))}
        lent: dict[str, d.Statement] = {}
        for _, statements in self._lent("finish", self._named("finish") - in_part):
            for statement in statements:
                first = lent.setdefault(_name(statement), statement)
                if first is not statement:
                    self.desk.problem(
                        statement.head,
                        f"The finish “{_name(statement)}” is given twice.",
                        "Give one of the two another name.",
                        also_at=(first.head,),
                    )
        return lent

    def _look_through(self, statements: list[d.Statement]) -> None:
        """Tell the slips in every finish of the files, whether or not this plan has a part for it."""
        alone = [
            statement._replace(clauses=tuple(_parted(statement)[1]), damaged=True) for statement in statements
        ]
        finishing.finishes_of(self.desk, alone, PartNames(()))


def _name(statement: d.Statement) -> str:
    return statement.name.text if statement.name else ""


def _parted(statement: d.Statement) -> tuple[list[d.FinishOn], list[Any]]:
    """What a finish goes on, a clause for each name, and its steps."""
    on: list[d.FinishOn] = []
    steps: list[Any] = []
    listing = False
    for clause in statement.clauses:
        if isinstance(clause, d.FinishOn):
            on.append(clause)
            listing = True
        elif listing and isinstance(clause, d.More) and clause.number is None:
            on.append(d.FinishOn(clause.word, clause.span))
        else:
            steps.append(clause)
            listing = False
    return on, steps


def _filled(statement: d.Statement, other: d.Statement | None) -> d.Statement:
    """A finish of the plan; where it says no steps, or no parts, with those of a used file's."""
    if other is None:
        return statement
    on, steps = _parted(statement)
    other_on, other_steps = _parted(other)
    return statement._replace(clauses=(*(on or other_on), *(steps or other_steps)))
