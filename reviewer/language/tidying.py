"""A plan in the tidy form: the same words, comments and line ends, set the same way in every plan.

Everything comes from the words that the reader itself hears, so a new statement or clause of the
grammar is tidied without a change here. Line ends are the writer's. A text that does not read stays as it
is, and so would one that read differently afterwards.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence, Set
from dataclasses import dataclass
from itertools import zip_longest

from reviewer.language.declaring import Declarer
from reviewer.language.layout import GOES_ON, Layout, Statement, laid_out
from reviewer.language.lexer import Lexer, Token
from reviewer.language.numbers import parsed
from reviewer.language.parser import Parser
from reviewer.language.problems import ReadingProblem
from reviewer.language.reading import read
from reviewer.language.sharing import nothing_in_files
from reviewer.language.source import Span
from reviewer.language.tables import END, tables
from reviewer.language.tidy_words import tidy_word
from reviewer.records import NamedTuple

INDENT = 4
#: Blanks between the words of a line and its comment.
BEFORE_COMMENT = 2
#: A written tab runs to the next stop of this many columns.
_TAB_STOP = 4
#: Kinds of token that stand right behind the word before them, and one that the next stands right behind.
_CLOSE_BEHIND = ("COMMA", "COLON", "CLOSE")
_OPENS = "OPEN"
#: Blanks that a comment may hold and that would end a line or move a column for who looks at it.
_ODD_BLANKS = str.maketrans(dict.fromkeys("\t\r\v\f\x85\u2028\u2029\ufeff", " "))


class Tidied(NamedTuple):
    """A text in the tidy form.

    ``lines`` holds for each written line (split at ``\\n``) its tidy form, None for an empty one that goes.
    With ``problems`` the text does not read, and ``text`` is as it was written.
    """

    text: str
    lines: tuple[str | None, ...] = ()
    problems: tuple[ReadingProblem, ...] = ()


@dataclass
class _Row:
    """A line with words, a comment, or both. A quotation that holds line ends makes one row of several."""

    first: int  # written line, from 0
    last: int
    tokens: list[Token]
    comment: str
    begins: int  # the column where the row was written to begin
    column: int  # the column where its comment was written
    level: int = 0
    words: str = ""  # set in as far as they go
    at: int = 0  # the column where its comment goes

    @property
    def width(self) -> int:
        """Where the words end; a comment that stands alone lays claim to no room."""
        return len(self.words.rpartition("\n")[2])


class _ListeningLexer(Lexer):
    """A lexer that keeps all the tokens that it gave."""

    def __init__(self) -> None:
        super().__init__(tables())
        self.heard: list[Token] = []

    def tokens(
        self, text: str, start: int, stop: int, states: list[int], measures: Set[str] = frozenset()
    ) -> Iterator[Token]:
        for token in super().tokens(text, start, stop, states, measures):
            self.heard.append(token)
            yield token


def _heard(text: str) -> tuple[list[Token], tuple[ReadingProblem, ...]]:
    """All tokens of a text in order, the ends of its statements among them, and its problems."""
    parser = Parser(tables(), Declarer())
    parser.lexer = lexer = _ListeningLexer()
    problems = read(text, nothing_in_files, parser=parser).problems
    lexer.heard.sort(key=lambda token: token[2])
    return lexer.heard, problems


def tidied(text: str) -> Tidied:
    """The tidy form of a plan's text. Tidying it once more changes nothing."""
    heard, problems = _heard(text)
    if problems:
        return Tidied(text, (), problems)
    layout = laid_out(text)
    lines = _tidy_lines(text, layout, heard)
    tidy = "".join(f"{line}\n" for line in lines if line is not None)
    again, problems = _heard(tidy)
    if problems or not (_all_heard(heard, layout.text) and _says_the_same(heard, text, again, tidy)):
        problem = ReadingProblem(
            Span(0, 0),
            "This plan would read differently in the tidy form, so it stays as it is.",
            "Report this plan to the makers of dryfit.",
        )
        return Tidied(text, (), (problem,))
    return Tidied(tidy, lines)


def _all_heard(heard: list[Token], plain: str) -> bool:
    """Whether no words stand between the tokens, which would be lost."""
    starts = [*(token[2] for token in heard), len(plain)]
    ends = [0, *(token[3] for token in heard)]
    return not any(plain[end:start].strip() for end, start in zip(ends, starts, strict=True))


def _says_the_same(heard: list[Token], text: str, again: list[Token], tidy: str) -> bool:
    return len(heard) == len(again) and all(
        one[0] == other[0] and _meant(one, text) == _meant(other, tidy)
        for one, other in zip(heard, again, strict=True)
    )


def _meant(token: Token, said: str) -> object:
    kind, value, begin, end = token
    if kind == "NUMBER":
        return parsed(value)
    return said[begin + 1 : end - 1] if kind == "TEXT" else value


# ---------------------------------------------------------------- from written lines to tidy ones


def _tidy_lines(text: str, layout: Layout, heard: list[Token]) -> tuple[str | None, ...]:
    """The tidy form of each written line of a text that reads; None for an empty one that goes."""
    written = text.split("\n")
    rows = _rows(text, layout.text, written, heard)
    _set_levels(rows, _levels(layout.statements))
    _set_words(rows, text, layout.text)
    _set_columns(rows)
    out: list[str | None] = [None] * len(written)
    before = len(written)
    for row in rows:
        if before < row.first - 1:
            out[row.first - 1] = ""
        line = row.words + " " * (row.at - row.width) + row.comment if row.comment else row.words
        out[row.first : row.last + 1] = line.split("\n")
        before = row.last
    return tuple(out)


def _rows(text: str, plain: str, written: list[str], heard: list[Token]) -> list[_Row]:
    """The lines that hold anything, with their tokens; a comma that was a line end is none of them."""
    tokens = [token for token in heard if token[0] != END and text[token[2]] != "\n"]
    rows: list[_Row] = []
    place = at = inside = 0  # inside: the end of the last token before this line
    for number, raw in enumerate(written):
        stop, first = place + len(raw), at
        while at < len(tokens) and tokens[at][2] < stop:
            at += 1
        mark = raw.find("#")
        while mark >= 0 and plain[place + mark] == "#":  # a gauge or quoted: comments are blanked
            mark = raw.find("#", mark + 1)
        comment = _tidy_comment(raw[mark:]) if mark >= 0 else ""
        column = _column(raw, mark) if comment else 0
        if place < inside:
            row = rows[-1]
            row.last, row.comment, row.column = number, comment, column
            row.tokens += tokens[first:at]
        elif comment or at > first:
            begins = _column(raw, tokens[first][2] - place) if at > first else column
            rows.append(_Row(number, number, tokens[first:at], comment, begins, column))
        if at > first:
            inside = tokens[at - 1][3]
        place = stop + 1
    return rows


def _column(raw: str, place: int) -> int:
    return len(raw[:place].expandtabs(_TAB_STOP))


def _tidy_comment(comment: str) -> str:
    tidy = comment.translate(_ODD_BLANKS).rstrip()
    return f"# {tidy[1:]}" if tidy[1:2].isalnum() else tidy


def _levels(statements: Sequence[Statement]) -> dict[int, int]:
    """How many assemblies each statement stands in, by its place in the text."""
    levels: list[int] = []
    for statement in statements:
        levels.append(0 if statement.within is None else levels[statement.within] + 1)
    return {statement.start: level for statement, level in zip(statements, levels, strict=True)}


def _set_levels(rows: list[_Row], statements: dict[int, int]) -> None:
    """Set how deep each row stands. ``statements`` gives the level of each by its place in the text.

    A comment alone goes with the level that it was written nearest to, of those around it; one at the
    margin stays there.
    """
    level = 0
    for row in rows:
        if row.tokens:
            begun = statements.get(row.tokens[0][2])
            level = level if begun is None else begun
            row.level = level if begun is not None else level + 1
    comments: list[tuple[_Row, dict[int, int]]] = []  # since the last words, with the levels open there
    opened: dict[int, int] = {}  # level → the column where it was written
    for row in rows:
        if not row.tokens:
            comments.append((row, opened))
            continue
        for comment, around in comments:
            comment.level = _nearest_level(comment, {**around, row.level: row.begins})
        comments.clear()
        opened = {each: column for each, column in opened.items() if each < row.level}
        opened[row.level] = row.begins
    for comment, around in comments:
        comment.level = _nearest_level(comment, around)


def _nearest_level(comment: _Row, columns: dict[int, int]) -> int:
    if comment.begins == 0:
        return 0
    return min(columns, key=lambda level: (abs(columns[level] - comment.begins), -level))


def _set_words(rows: list[_Row], text: str, plain: str) -> None:
    """Set the words of each row, without a comma where the line end does as well."""
    with_words = [row for row in rows if row.tokens]
    for row, after in zip_longest(with_words, with_words[1:]):
        tokens = row.tokens
        if tokens[-1][0] == "COMMA" and after and not GOES_ON.match(plain, after.tokens[0][2]):
            tokens = tokens[:-1]
        pieces = [" " * (row.level * INDENT)]
        before: Token | None = None
        for token in tokens:
            if before is not None and before[0] != _OPENS and token[0] not in _CLOSE_BEHIND:
                pieces.append(" ")
            pieces.append(tidy_word(token, before, text))
            before = token
        row.words = "".join(pieces)


def _set_columns(rows: list[_Row]) -> None:
    """Set where each comment goes: two blanks behind the words, or below its level where it stands alone.

    Neighbours that were written in one column, from one with words on, stay in one.
    """
    groups: list[list[_Row]] = []
    group: list[_Row] = []
    for row in rows:
        beside = group and row.first == group[-1].last + 1 and row.column == group[0].column
        if row.comment and beside:
            group.append(row)
        elif row.comment and row.tokens:
            group = [row]
            groups.append(group)
        else:
            group = []
            row.at = row.level * INDENT
    for group in groups:
        at = max(row.width for row in group) + BEFORE_COMMENT
        for row in group:
            row.at = at
