"""The loop that drives the compiled grammar, against lark's own parser of the same grammar.

Source: lark (https://github.com/lark-parser/lark), a general-purpose parsing library, as the reference.
"""

from __future__ import annotations

from collections.abc import Set
from functools import cache
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from lark import Lark, Token, Tree
from lark.exceptions import UnexpectedToken

from reviewer.language.lexer import Lexer
from reviewer.language.parser import NoWayOnError, Parser
from reviewer.language.source import Span
from reviewer.language.tables import END, STARTS, compiled, tables

STATEMENTS = {
    "plan_statement": ['plan "a" in inches', 'plan "a b" in mm'],
    "measure_statement": ["h = 17 1/2", "h = (a + 2 * b) / 3 - c", "h = ((1))"],
    "use_statement": ['use "shop-stock.plan"'],
    "stock_statement": [
        "stock s: 2x4 pine, 8 ft at 4.10, sheet 4 x 8, grade no.2, moisture 12 %, treated, reclaimed, old paint",
        "stock s: 2x4 pine, grade select structural",
    ],
    "outline_statement": ["outline o: 4 across, as tall as p, on floor, bottom 2 above top of q"],
    "part_statement": [
        "part a: s, across, flat, between b and c up less 1/8, on d",
        "part a for each of left, 2, right: like b, mirrored across about c",
        "part a: mitre 45 at both ends, long at top, notch 2 deep by 4 tall at front bottom, hole 3 by 1 into left, 2 from top",
        "part a: splayed 8 degrees towards back and 3 degrees towards left, ends cut level, only when a at least b - 1",
        "part a: splayed 8 degrees outwards, tilted 3 degrees outwards deep and 4 degrees across",
        "part a: s, 3 copies spread evenly up from left of a to b, gap to fit, rip 3, row centred on x",
    ],
    "join_statement": ['join a, b.* to c: screws #8 x 2, dado 3 deep, glue pva, none because "x"'],
    "finish_statement": [
        "finish f: on a, b, sand 80, 120, 2 coats of x y, sand 3 between coats, dry 4 h",
        "finish f: on top and ends of a, edges of b, all but top of c, before assembly, mask glue lines",
        "finish f: on all but left and right of b, after assembly, by brush, thinned 10 %, test board",
        "finish f: on a, fill grain with x, fill holes, fill holes with x y, seal knots with x, age with y",
        "finish f: on a, wipe with x, plug pockets, raise grain, distress edges, distress faces, glue size",
        "finish f: on a, clean off glue, strip old paint, strip old finish, renew every 2 years",
        "finish f: on a, renew every month, have 1/2 gallon of x, buy 2 quarts of x y at 14.50",
    ],
    "shop_statement": ["shop: 65 f, 10 degrees c at night, 50 % humidity, start 2027-03-01, 3 h per day"],
    "load_statement": [
        "load a: 3 lb per square foot, 3 kg per square metre",
        "load a: 2 people seated, books, 40 kg, 3 lb per foot",
    ],
    "room_statement": [
        "room: indoors, wall behind 2 away, doorway 30 x 80",
        "room the hall: no children",
        "room: studs every 16 from 10, studs at 6 and 22 and (30 + 9)",
    ],
    "restrain_statement": [
        "restrain a to wall: strap, screws #8 x 2 into stud, 68 up, 2 of them",
        "restrain a to wall: strap, on top 4 from back, 2 screws #8 x 5/8 into piece, 64 up on wall, on top",
        "restrain a to wall: screws 4 x 16 into piece, screws 16 into masonry, 2 screws 4 into piece",
    ],
    "try_statement": ["try a: 3, b + 1, from 3 to 9 by 2"],
    "assembly_statement": [
        "assembly a:",
        "assembly a for each of b, c: 3 across, 2 copies side by side up, hinged left",
    ],
    "fit_statement": [
        "fit a: hinges",
        "fit a, b to c: 2 hinges 3 at 4, castors, 3 tall, screws #8 x 2, one at a time",
    ],
    "step_statement": ['step "a b": join a, b, wait 3 h, "c d"'],
    "buy_statement": ["buy: 2 a 8 ft, 3 b"],
    "tools_statement": ["tools: mitre saw, drill"],
    "limit_statement": ["limit sag-ratio: 360", "limit restraint-mass: 30 lb"],
    "accept_statement": ['accept a on b, c because "d"', 'accept a because "d"'],
}


class TreeMaker:
    """Makes lark's kind of tree: the name of each rule and its pieces, marks between them left out."""

    def word(self, text: str, span: Span) -> str:
        return text

    figure = word

    def maker(self, name: str) -> Any:
        return lambda pieces, span: (name, pieces)


@cache
def reference() -> Lark:
    return compiled()


@cache
def driven() -> Parser:
    return Parser(tables(), TreeMaker())


def plain(tree: Any) -> Any:
    """lark's tree as TreeMaker makes it."""
    if not isinstance(tree, Tree):
        return tree if tree is None else str(tree)
    kept = [
        plain(child)
        for child in tree.children
        if not (isinstance(child, Token) and child.type in ("COMMA", "COLON"))
    ]
    return (str(tree.data), kept)


class Recording(Lexer):
    """Keeps the tokens that the parser asked for."""

    def tokens(
        self, text: str, start: int, stop: int, states: list[int], measures: Set[str] = frozenset()
    ) -> Any:
        self.seen: list[tuple[str, str, int, int]] = []
        for token in super().tokens(text, start, stop, states, measures):
            self.seen.append(token)
            yield token


def both_ways(rule: str, text: str) -> tuple[Any, frozenset[str] | None, Any, frozenset[str] | None]:
    """The tree and, on a stop, what was expected: ours and then lark's, on the same tokens."""
    parser = driven()
    recording = Recording(tables())
    parser.lexer = recording
    ours, ours_expected = None, None
    try:
        ours = parser.parse(rule, text, text, 0, len(text))
    except NoWayOnError as error:
        ours_expected = parser.expected(rule, text, 0, len(text), error.span.start)
        recording.seen = [t for t in recording.seen if t[2] <= error.span.start]
        seen = recording.seen
        if not seen or seen[-1][0] != error.kind:  # the second walk stops one token short
            seen.append((error.kind, "", *error.span))
    interactive = reference().parse_interactive("", start=rule)
    theirs, theirs_expected = None, None
    try:
        for kind, value, _, _ in recording.seen:
            before = interactive.copy()
            if kind == END:
                theirs = plain(interactive.feed_eof())
            else:
                value = value[1:-1] if kind == "TEXT" else value
                interactive.feed_token(Token(kind, value))
    except UnexpectedToken:
        theirs_expected = frozenset(before.accepts())
    return ours, ours_expected, theirs, theirs_expected


def test_every_start_that_is_a_statement_has_a_case() -> None:
    assert set(STATEMENTS) == {name for name in STARTS if name.endswith("_statement")}


@pytest.mark.parametrize(("rule", "text"), [(rule, text) for rule in STATEMENTS for text in STATEMENTS[rule]])
def test_same_tree(rule: str, text: str) -> None:
    ours, _, theirs, _ = both_ways(rule, text)
    assert ours is not None
    assert ours == theirs


WORDS = st.sampled_from(
    [
        *tables().words,
        *tables().marks,
        "a",
        "b.c",
        "leg.*",
        "17 1/2",
        "3",
        "2x4",
        "#8",
        '"why"',
        "(",
        ")",
        ",",
        ":",
    ]
)


@settings(max_examples=1_500, deadline=None, derandomize=True)
@given(st.sampled_from(STARTS), st.lists(WORDS, max_size=9), st.data())
def test_same_verdict_and_same_expectation_on_any_words(
    rule: str, words: list[str], data: st.DataObject
) -> None:
    """Random words mostly stop early, so half of the cases begin with a clause that reads."""
    statement = f"{rule.partition('_')[0]}_statement"
    if statement in STATEMENTS and rule == statement:
        whole = data.draw(st.sampled_from(STATEMENTS[statement])).split(" ")
        words = whole[: data.draw(st.integers(0, len(whole)))] + words[:3]
    ours, ours_expected, theirs, theirs_expected = both_ways(rule, " ".join(words))
    assert (ours is None) == (theirs is None)
    assert ours == theirs
    assert ours_expected == theirs_expected
