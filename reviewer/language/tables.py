"""The compiled grammar: made once from ``grammar/plan.lark`` and shipped, so that a review starts at once.

lark turns the grammar into an LALR(1) table, and its strict mode proves that no conflict is hidden in
it. What a review needs of that is little, so it is kept as plain JSON and driven by
:mod:`reviewer.language.parser`; lark itself is only loaded to make it.

``python -m reviewer.language.tables`` makes the file anew after a change of the grammar; a test holds
the two equal.
"""

from __future__ import annotations

import json
from functools import lru_cache
from typing import TYPE_CHECKING, Any

from reviewer.records import NamedTuple
from reviewer.shipped import shipped_text

if TYPE_CHECKING:
    from lark import Lark

_GRAMMAR = "plan.lark"
_TABLES = "plan.tables.json"

#: Statements by the word that begins them; a measure begins with its own name and an equals sign.
STATEMENTS = (
    "plan",
    "measure",
    "try",
    "use",
    "stock",
    "outline",
    "assembly",
    "part",
    "join",
    "fit",
    "finish",
    "shop",
    "load",
    "room",
    "restrain",
    "step",
    "buy",
    "tools",
    "limit",
    "accept",
)
#: Statements that a file for plans to use may hold. They make nothing to build.
SHAREABLE = frozenset({"plan", "measure", "stock", "finish"})
#: Statements with a head and clauses, which a failed one is taken apart into.
BLOCKS = (
    "stock",
    "outline",
    "assembly",
    "part",
    "join",
    "fit",
    "finish",
    "shop",
    "load",
    "room",
    "restrain",
    "step",
)
#: Every rule that a text can be read by.
STARTS = (
    *(f"{name}_statement" for name in STATEMENTS),
    *(f"{name}_head" for name in BLOCKS),
    *(f"{name}_clause" for name in BLOCKS),
    "purchase",
)
#: The kind of token that stands at the end of every slice.
END = "$END"
#: Marks that only part one piece from the next; no declaration wants to see them.
_BETWEEN = ("COMMA", "COLON")


class Rule(NamedTuple):
    """One way to make a piece: what it makes, of how many pieces, and who makes it.

    ``maker`` is the name of a method of the declarer; None hands the one piece on as it is, and the
    empty name keeps the pieces as a list. ``shape`` is None when all pieces go to the maker in order;
    else it names them by place, with None for a piece that the text leaves out and a bracket around
    one whose own pieces are spread out.
    """

    makes: int
    size: int
    maker: str | None
    shape: tuple[int | tuple[int] | None, ...] | None


class Tables(NamedTuple):
    """The grammar as the parser drives it. An action is a state to go to, or ``~rule`` to reduce by."""

    words: tuple[str, ...]  # keywords: the kind of token is the word in capitals
    marks: dict[str, str]  # mark → kind
    patterns: dict[str, str]  # kind → regular expression
    rules: tuple[Rule, ...]
    actions: tuple[dict[str, int], ...]  # by state: kind → action
    gotos: tuple[dict[int, int], ...]  # by state: what a reduction made → state
    starts: dict[str, tuple[int, int]]  # rule → its first and its last state


def grammar_text() -> str:
    """The grammar as written."""
    return shipped_text("reviewer.grammar", _GRAMMAR)


def compiled(*, strict: bool = False) -> Lark:
    """lark's own parser of the grammar. Slow; ``strict`` raises on any hidden conflict."""
    from lark import Lark

    return Lark(
        grammar_text(),
        parser="lalr",
        lexer="contextual",
        start=list(STARTS),
        strict=strict,
        maybe_placeholders=True,
    )


def tables_text() -> str:
    """The tables as they should stand in the package: JSON, the same bytes at every run."""
    made = compiled()
    table = made.parser.parser._parse_table
    numbers = _numbered(table)
    rules = sorted(
        {rule for row in table.states.values() for _, rule in row.values() if _is_rule(rule)}, key=_key
    )
    origins = sorted({rule.origin.name for rule in rules})
    rule_numbers = {rule: number for number, rule in enumerate(rules)}
    actions: list[dict[str, int]] = [{} for _ in numbers]
    gotos: list[dict[str, int]] = [{} for _ in numbers]
    for state, number in numbers.items():
        for name, (_, target) in table.states[state].items():
            if _is_rule(target):
                actions[number][name] = ~rule_numbers[target]
            elif name in origins:
                gotos[number][str(origins.index(name))] = numbers[target]
            else:
                actions[number][name] = numbers[target]
    words, marks, patterns = [], {}, {}
    for terminal in made.terminals:
        text = terminal.pattern.value
        if type(terminal.pattern).__name__ == "PatternRE":
            patterns[terminal.name] = text
        elif text.isalpha():
            assert text.upper() == terminal.name
            words.append(text)
        else:
            marks[text] = terminal.name
    data = {
        "words": sorted(words),
        "marks": marks,
        "patterns": patterns,
        "rules": [
            [origins.index(rule.origin.name), len(rule.expansion), _maker(rule), _shape(rule)]
            for rule in rules
        ],
        "actions": actions,
        "gotos": gotos,
        "starts": {
            name: [numbers[table.start_states[name]], numbers[table.end_states[name]]] for name in STARTS
        },
    }
    return json.dumps(data, separators=(",", ":"), sort_keys=True) + "\n"


def _is_rule(target: Any) -> bool:
    return not isinstance(target, int)


def _key(rule: Any) -> tuple[Any, ...]:
    return (rule.origin.name, rule.order, [symbol.name for symbol in rule.expansion])


def _numbered(table: Any) -> dict[int, int]:
    """lark's states renumbered as they are come to from the starts, so that no hash has a say in it."""
    numbers: dict[int, int] = {}
    queue = [table.start_states[name] for name in STARTS]
    for state in queue:  # grows while it is walked
        if state in numbers:
            continue
        numbers[state] = len(numbers)
        for _, (_, target) in sorted(table.states[state].items()):
            if not _is_rule(target) and target not in numbers:
                queue.append(target)
    return numbers


def _maker(rule: Any) -> str | None:
    if rule.options.expand1 and not rule.alias and len(rule.expansion) == 1:
        return None
    name: str = rule.alias or rule.origin.name
    return "" if name.startswith("_") else name


def _shape(rule: Any) -> list[int | list[int] | None] | None:
    """Which pieces of an expansion go to the maker: see :class:`Rule`. lark's own account of ``[…]``."""
    left_out = rule.options.empty_indices or ()
    shape: list[int | list[int] | None] = []
    place = 0
    for absent in left_out or [False] * len(rule.expansion):
        if absent:
            shape.append(None)
            continue
        symbol = rule.expansion[place]
        if symbol.name.startswith("_"):
            shape.append([place])
        elif symbol.name not in _BETWEEN:
            shape.append(place)
        place += 1
    return None if shape == list(range(len(rule.expansion))) else shape


@lru_cache(maxsize=1)
def tables() -> Tables:
    """The shipped tables."""
    stored = json.loads(shipped_text("reviewer.grammar", _TABLES))
    return Tables(
        words=tuple(stored["words"]),
        marks=stored["marks"],
        patterns=stored["patterns"],
        rules=tuple(
            Rule(makes, size, maker, shape and tuple(tuple(p) if isinstance(p, list) else p for p in shape))
            for makes, size, maker, shape in stored["rules"]
        ),
        actions=tuple(stored["actions"]),
        gotos=tuple({int(made): state for made, state in row.items()} for row in stored["gotos"]),
        starts={name: (first, last) for name, (first, last) in stored["starts"].items()},
    )


if __name__ == "__main__":
    from pathlib import Path

    import reviewer.grammar

    target = Path(reviewer.grammar.__path__[0]) / _TABLES
    target.write_text(tables_text(), encoding="utf-8", newline="\n")
