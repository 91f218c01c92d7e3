"""Measures that are set from outside the plan, in place of its own: read, worked out, and paired."""

from __future__ import annotations

import itertools
import math
import re
from collections.abc import Mapping, Sequence

from reviewer.language.declarations import Expression, Number, Statement, TryRange, Word
from reviewer.language.numbers import MM_PER, SYSTEM_UNIT, Unit
from reviewer.language.reading import Read, read_sum
from reviewer.language.source import Span
from reviewer.language.wordings import did_you_mean
from reviewer.model.desk import MAX_NAME, Desk
from reviewer.model.trying import MAX_SIZES, even, stepped, too_many_sizes
from reviewer.records import NamedTuple

_NOWHERE = Span(0, 0)  # of words that stand in no plan
_NAME = re.compile(r"[^\s:,=\"]+")
_RANGE = re.compile(r"(?:from\s)?(.+?)\sto\s(.+?)\sby\s(.+)", re.IGNORECASE)
_OPEN_RANGE = re.compile(r"(?:from\s)?(.+?)\sto\s(.+)", re.IGNORECASE)
_LONGEST = 60  # letters of a word that are told
_LONGEST_SIZE = 1_000  # letters of a size: no sum for the bench comes near
_MOST_NAMED = 4  # names that are told of many


class SetMeasure(NamedTuple):
    """A measure set from outside, and what the plan itself makes it; both in the plan's unit."""

    name: str
    amount: float
    own: float | None  # None where the plan's own sum can't be worked out
    unit: Unit
    tried: bool = False  # because the plan says to try it

    @property
    def mm(self) -> float:
        return self.amount * MM_PER[self.unit]

    @property
    def own_mm(self) -> float | None:
        return None if self.own is None else self.own * MM_PER[self.unit]


class Asked(NamedTuple):
    """A measure to set: its name, and the sizes to set it to, one after the other."""

    name: str
    sizes: tuple[tuple[str, Expression | TryRange], ...]  # each with its words
    tried: bool = False  # because the plan says to try them


class NotSetError(Exception):
    """A measure can't be set so: what is wrong, and what to do."""

    def __init__(self, says: str, do: str) -> None:
        super().__init__(says)
        self.says = says
        self.do = do


# ---------------------------------------------------------------- reading what is asked


def asked_measures(words: Sequence[str]) -> tuple[Asked, ...]:
    """What ``length=60``, ``length=36,48,60`` or ``length=36 to 72 by 6`` ask for. Raises NotSetError."""
    found: dict[str, Asked] = {}
    for said in words:
        asked = _asked(" ".join(said.split()))
        if asked.name in found:
            raise NotSetError(
                f"The measure “{asked.name}” is set twice.",
                f"Put all its sizes together: --measure {asked.name}=36,48,60",
            )
        found[asked.name] = asked
    return tuple(found.values())


def _asked(said: str) -> Asked:
    name, equals, values = (piece.strip() for piece in said.partition("="))
    if not equals or not _NAME.fullmatch(name):
        raise NotSetError(
            f"“{_short(said)}” does not say which measure is set to what.",
            "Write the measure, an equals sign and a size, such as: --measure length=60",
        )
    return Asked(name.lower(), tuple(_size(name.lower(), piece.strip()) for piece in values.split(",")))


def _size(name: str, words: str) -> tuple[str, Expression | TryRange]:
    if len(words) > _LONGEST_SIZE:
        raise _unreadable(name, words)
    run = _RANGE.fullmatch(words)
    if run:
        ends = [read_sum(piece) for piece in run.groups()]
        for piece, end in zip(run.groups(), ends, strict=True):
            if end is None:
                raise _unreadable(name, piece)
        first, last, step = ends
        assert first is not None
        assert last is not None
        assert step is not None
        return words, TryRange(first, last, step, _NOWHERE)
    found = read_sum(words)
    if found is not None:
        return words, found
    if _OPEN_RANGE.fullmatch(words):
        raise NotSetError(
            f"“{_short(words)}” does not say how far apart the sizes of {name} are.",
            f'Add the step: --measure "{name}={_short(words)} by 6"',
        )
    raise _unreadable(name, words)


def _unreadable(name: str, words: str) -> NotSetError:
    if not words:
        return NotSetError(
            f"A size of {name} is missing.", f"Write a number or a sum, such as: --measure {name}=60"
        )
    return NotSetError(
        f"“{_short(words)}” can't be read as a size of {name}.",
        "Write a number or a sum as a plan would, such as 60, 5 ft, 1.2 m or “height + 2”.",
    )


def _short(words: str) -> str:
    return words if len(words) <= _LONGEST else f"{words[:_LONGEST]}…"


# ---------------------------------------------------------------- working it out for a plan


def measured(read: Read, asked: Sequence[Asked]) -> tuple[tuple[SetMeasure, ...], ...]:
    """Every pairing of the sizes asked for, worked out with a plan's measures. Raises NotSetError."""
    files = (file.statements for file in read.shared)
    statements: dict[str, Statement] = {}
    for statement in itertools.chain(read.statements, *files):
        if statement.kind == "measure" and statement.name is not None:
            statements.setdefault(statement.name.text, statement)
    for each in asked:
        if each.name not in statements:
            raise _not_stated(each.name, statements)
    alone = {each.name: each.sizes[0][1] for each in asked if len(each.sizes) == 1}
    desk = _desk(read, {name: size for name, size in alone.items() if not isinstance(size, TryRange)})
    lists: list[list[tuple[str, Expression]]] = []
    for each in asked:
        values: list[tuple[str, Expression]] = []
        for words, size in each.sizes:
            if isinstance(size, TryRange):
                amounts = stepped(desk, size)
                if amounts is None:
                    raise _no_size(each.name, words, desk)
                values += [(words, Number(amount, None, _NOWHERE)) for amount in amounts]
            else:
                values.append((words, size))
        lists.append(values)
        count = math.prod(map(len, lists))
        if count > MAX_SIZES:
            raise NotSetError(*too_many_sizes(count))
    names = [each.name for each in asked]
    own = _desk(read, {})
    own_amounts = [None if (amount := own.amount_of(name)) is None else even(amount) for name in names]
    found: dict[tuple[float, ...], tuple[SetMeasure, ...]] = {}
    for pairing in itertools.product(*lists):
        desk = _desk(read, {name: size for name, (_, size) in zip(names, pairing, strict=True)})
        made = []
        for each, (words, _), plan_own in zip(asked, pairing, own_amounts, strict=True):
            amount = desk.amount_of(each.name)
            if amount is None:
                raise _no_size(each.name, words, desk)
            made.append(SetMeasure(each.name, even(amount), plan_own, desk.unit, each.tried))
        found.setdefault(tuple(each.amount for each in made), tuple(made))
    return tuple(found.values())


def _desk(read: Read, values: Mapping[str, Expression]) -> Desk:
    """A desk with the plan's measures alone, some of them set to other sums."""
    titles = [statement for statement in read.statements if statement.kind == "plan"]
    assert titles[0].name is not None
    units, unit = SYSTEM_UNIT[titles[0].name.text]
    desk = Desk(units, unit)
    own = [statement for statement in read.statements if statement.kind == "measure"]
    measures = [statement for statement in own if statement.name and statement.name.text not in values]
    for name, size in values.items():
        word = Word(name, _NOWHERE)
        measures.append(Statement("measure", word, (), (), (size,), None, _NOWHERE, _NOWHERE))
    desk.declare_measures(measures)
    if read.shared:
        from reviewer.model.sharing import Shared

        Shared(desk, read.shared, {"measure": measures})  # what the plan has itself, it does not borrow
    desk.problems.clear()  # what is wrong with the plan's own statements is told when it is understood
    return desk


def _not_stated(name: str, statements: Mapping[str, Statement]) -> NotSetError:
    from reviewer.reference.names import nearest

    if not statements:
        return NotSetError(
            f"This plan states no measure, so “{_short(name)}” can't be set.",
            f"State it in the plan, such as: {_short(name)} = 48",
        )
    near = nearest(name, statements) if len(name) <= MAX_NAME else ()
    known = ", ".join(list(statements)[:_MOST_NAMED]) + (" …" if len(statements) > _MOST_NAMED else "")
    return NotSetError(
        f"This plan states no measure called “{_short(name)}”.", did_you_mean(near, f"It states: {known}")
    )


def _no_size(name: str, words: str, desk: Desk) -> NotSetError:
    """Why words give no size: the first thing that the desk told of."""
    lead = f"“{_short(words)}” gives no size of {name}: "
    if desk.problems:
        told = desk.problems[0]
        return NotSetError(f"{lead}{told.says[0].lower()}{told.says[1:]}", told.do)
    unknown = desk.unknown[0]
    return NotSetError(
        f"{lead}no measure is called “{unknown.name}”.", did_you_mean(unknown.near, "Look at its spelling.")
    )
