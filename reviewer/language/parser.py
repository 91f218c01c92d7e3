"""The loop that drives the compiled grammar over one statement or clause.

A plain LALR(1) automaton: tokens are shifted, pieces reduced, and each reduction is handed to the
method of the declarer that bears its name, together with the span it covers. No tree stands between.
"""

from __future__ import annotations

from collections.abc import Callable, Set
from typing import Any, Protocol

from reviewer.language.lexer import Lexer
from reviewer.language.source import Span
from reviewer.language.tables import END, Tables

Maker = Callable[[list[Any], Span], Any]
Shape = tuple[int | tuple[int] | None, ...]
#: The kinds of token that the declarer makes pieces of; of the rest the text is the piece.
_MADE = frozenset(["NAME", "NUMBER", "TEXT"])


class Declares(Protocol):
    """What makes pieces of names, numbers and reductions."""

    def word(self, text: str, span: Span) -> Any: ...

    def figure(self, text: str, span: Span) -> Any: ...

    def maker(self, name: str) -> Maker | None: ...


class NoWayOnError(Exception):
    """The grammar has no use for a token of this kind at this place."""

    def __init__(self, kind: str, span: Span) -> None:
        super().__init__(kind)
        self.kind = kind
        self.span = span


def _shaped(pieces: list[Any], shape: Shape) -> list[Any]:
    """The pieces that a maker wants. A list that leads is grown in place, so that long lists stay cheap."""
    first = shape[0]
    if isinstance(first, tuple):
        made: list[Any] = pieces[first[0]]
        shape = shape[1:]
    else:
        made = []
    for place in shape:
        if place is None:
            made.append(None)
        elif isinstance(place, tuple):
            made += pieces[place[0]]
        else:
            made.append(pieces[place])
    return made


class Parser:
    """Makes declarations of slices of text. Keeps no state between two slices."""

    def __init__(self, tables: Tables, declarer: Declares) -> None:
        self.tables = tables
        self.lexer = Lexer(tables)
        self.word = declarer.word
        self.figure = declarer.figure
        self.rules: tuple[tuple[int, int, Maker | None, Shape | None], ...] = tuple(
            (rule.makes, rule.size, declarer.maker(rule.maker) if rule.maker else None, rule.shape)
            for rule in tables.rules
        )
        self.finals = frozenset(last for _, last in tables.starts.values())
        #: A reduction that hands its one piece on changes nothing but the state.
        self.handed_on = tuple(
            maker is None and rule.maker != ""
            for rule, (_, _, maker, _) in zip(tables.rules, self.rules, strict=True)
        )

    def parse(
        self, rule: str, text: str, said: str, start: int, stop: int, measures: Set[str] = frozenset()
    ) -> Any:
        """What the declarer makes of a slice under a rule. Raises NoWayOnError.

        ``text`` is laid out, ``said`` is the same text as the writer wrote it: quotations come from it.
        ``measures`` are the names that the plan gives to measures.
        """
        actions, gotos, rules, handed_on = self.tables.actions, self.tables.gotos, self.rules, self.handed_on
        word, figure = self.word, self.figure
        new = tuple.__new__  # a span is made for every piece, and Span(…) takes half as long again
        first, last = self.tables.starts[rule]
        states = [first]
        pieces: list[Any] = []
        starts: list[int] = []
        covered = start  # the end of the last token shifted, which is where any reduction ends
        for kind, value, begin, end in self.lexer.tokens(text, start, stop, states, measures):
            while True:
                try:
                    action = actions[states[-1]][kind]
                except KeyError:
                    raise NoWayOnError(kind, Span(begin, end)) from None
                if action >= 0:
                    states.append(action)
                    starts.append(begin)
                    covered = end
                    if kind not in _MADE:
                        pieces.append(value)
                    elif kind == "NAME":
                        pieces.append(word(value, new(Span, (begin, end))))
                    elif kind == "NUMBER":
                        pieces.append(figure(value, new(Span, (begin, end))))
                    else:
                        pieces.append(word(said[begin + 1 : end - 1], new(Span, (begin, end))))
                    break
                number = ~action
                makes, size, maker, shape = rules[number]
                if not handed_on[number]:
                    if size == 1:
                        made = [pieces[-1]]
                    else:
                        made = pieces[-size:]
                        del pieces[1 - size :], states[1 - size :], starts[1 - size :]
                    if shape is not None:
                        made = _shaped(made, shape)
                    pieces[-1] = made if maker is None else maker(made, new(Span, (starts[-1], covered)))
                states[-1] = gotos[states[-2]][makes]
                if kind == END and states[-1] == last and len(states) == 2:
                    return pieces[0]
        raise AssertionError("the lexer ends every slice with END")

    def expected(
        self, rule: str, text: str, start: int, stop: int, place: int, measures: Set[str] = frozenset()
    ) -> frozenset[str]:
        """The kinds of token that would go on at a place.

        The automaton may have reduced in vain before it stopped, so the way there is gone once more.
        """
        states = [self.tables.starts[rule][0]]
        for kind, _, begin, _ in self.lexer.tokens(text, start, stop, states, measures):
            if begin >= place:
                break
            self._goes_on(states, kind)
        return frozenset(kind for kind in self.tables.actions[states[-1]] if self._goes_on([*states], kind))

    def _goes_on(self, states: list[int], kind: str) -> bool:
        """Whether a token can be taken; the stack of states is left as it is then."""
        actions, gotos = self.tables.actions, self.tables.gotos
        while True:
            if kind == END and len(states) == 2 and states[-1] in self.finals:
                return True
            action = actions[states[-1]].get(kind)
            if action is None:
                return False
            if action >= 0:
                states.append(action)
                return True
            makes, size, _, _ = self.rules[~action]
            del states[-size:]
            states.append(gotos[states[-1]][makes])
