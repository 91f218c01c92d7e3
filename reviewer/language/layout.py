"""The layout pass: the same text with one character out for each one in, so that offsets stay true.

Capitals are lowered, comments blanked, look-alike marks made plain, and the line ends inside a block
turned into commas. What comes out is split at the margin into statements.
"""

from __future__ import annotations

import re

from reviewer.language.problems import ReadingProblem
from reviewer.language.source import Span
from reviewer.records import NamedTuple

#: Blanks of every kind, and marks that take no room at all, which come along from pages and letters.
_BLANKS = (
    "\t\r\f\v\x85\xa0\xad\u1680\u180e"
    + "".join(map(chr, range(0x2000, 0x200C)))
    + ("\u2028\u2029\u202f\u205f\u2060\u3000\ufeff")
)
_LOOK_ALIKES = str.maketrans(
    {
        **dict.fromkeys(_BLANKS, " "),
        "“": '"',
        "”": '"',
        "„": '"',
        "″": '"',
        "‘": "'",
        "’": "'",
        "′": "'",
        "×": "x",
        "–": "-",
        "−": "-",
        "‐": "-",
        "‑": "-",
        "⁄": "/",
        "º": "°",
        "˚": "°",
        "：": ":",
        "，": ",",
        "…": ".",
    }
)
#: A block line that begins so goes on with the line before: its line end becomes no comma.
GOES_ON = re.compile(r"(?:and|because|to)\b")
#: A line that can only be a statement, however far in it stands: no clause is like it.
_STATEMENT_IN_BLOCK = re.compile(
    r"(?:plan|use|step) +\"|(?:stock|outline|part|assembly|finish|limit|try) +[^:,]+:"
    r"|(?:join|fit|load|restrain) +[^:,]+:|room\b[^:,]*:|(?:buy|tools|shop) *:"
    r"|accept +\S+ +(?:on|because)\b|[^\W\d][\w-]* *="
)
_ASSEMBLY = re.compile(r"assembly\b")
#: What an assembly can hold: statements of its own, one level in.
_MEMBER = re.compile(r"(?:outline|part|assembly|join|fit|finish|load) +[^\s:,=]")
#: What belongs to the whole plan and to no assembly.
_OWN = re.compile(
    r"plan +\"|use +\"|(?:stock|limit|try) +[^:,]+:|restrain +[^:,]+:|step +\"|room\b[^:,]*:"
    r"|(?:buy|tools|shop) *:|accept +\S+ +(?:on|because)\b|[^\W\d][\w-]* *="
)
#: Words with a colon behind them, as every statement but a few has; a clause has no colon.
_LIKE_STATEMENT = re.compile(r"[^\W\d][\w-]* +[^\s:,=\"][^:,=\"]*:")
_WHOLE_PLAN = {
    "plan": "The title",
    "use": "A shared file",
    "stock": "A stock",
    "limit": "A limit",
    "try": "A try statement",
    "restrain": "A restraint",
    "step": "A step",
    "room": "The room",
    "shop": "The shop",
    "buy": "What to buy",
    "tools": "The list of tools",
    "accept": "A waiver",
}
#: A quotation, which is passed over, or two numbers with only a comma between them.
_DECIMAL_COMMA = re.compile(r'(?<![\d½¼¾])"[^"\n]*"|(?<![\d.,])\d+,\d+(?![\d,])')
#: What every such pair has; soon looked for, and few plans have it.
_COMMA_FIGURE = re.compile(r",\d")


#: Two short marks behind a figure, which many keyboards have for the inch mark.
_TWO_MARKS = re.compile(r"(?<=[\d½¼¾⅛⅜⅝⅞])''")
#: Assemblies further in than this are taken as members of the last one; far fewer are told of as too deep.
_MOST_NESTED = 50
_BYTE_ORDER_MARK = "\ufeff"


class Statement(NamedTuple):
    """A statement's place in the laid-out text, and which statement it is a member of, by number."""

    start: int
    end: int
    within: int | None = None


class Layout(NamedTuple):
    """The laid-out text, its statements, and what the layout itself gets wrong."""

    text: str
    statements: tuple[Statement, ...]
    problems: tuple[ReadingProblem, ...]


def _lowered(text: str) -> str:
    lowered = text.lower()
    if len(lowered) == len(text):
        return lowered
    # A few capitals lower to two characters; those stay as they are.
    return "".join(low if len(low := char.lower()) == 1 else char for char in text)


def _uncommented(line: str) -> str:
    """The line with its comment blanked. ``#8`` after other words is a gauge, ``# 8`` is a comment."""
    quoted = False
    for place, char in enumerate(line):
        if char == '"' and (quoted or place == 0 or not line[place - 1].isnumeric()):
            quoted = not quoted
        elif char == "#" and not quoted:
            first = not line[:place].strip()
            gauge = line[place + 1 : place + 2].isdigit()
            if first or (line[place - 1] == " " and not gauge):
                return line[:place] + " " * (len(line) - place)
    return line


def _joint_between(block_line: str, so_far: str) -> str:
    """The character that a line end becomes before a line that goes on with its block."""
    if not so_far or so_far[-1] in ",:" or GOES_ON.match(block_line):
        return " "
    return ","


def _stands_as_member(indent: int, words: str, member: tuple[int, int] | None, assembly: int) -> bool:
    """Whether a line is a member that is misspelt: it stands where a member can and has a colon."""
    where = member is None or member[1] != assembly or indent == member[0]
    return where and bool(_LIKE_STATEMENT.match(words)) and not _OWN.match(words)


def _not_in_assembly(start: int, words: str) -> ReadingProblem:
    first = re.split(r"[\s:]", words, maxsplit=1)[0]
    what = _WHOLE_PLAN.get(first, "A measure")
    return ReadingProblem(
        Span(start, start + len(words)),
        f"{what} belongs to the whole plan and can't stand in an assembly.",
        "Move it to the margin, above the assembly.",
    )


def _behind_members(start: int, words: str, level: bool) -> ReadingProblem:
    where = "as far in as" if level else "less far in than"
    return ReadingProblem(
        Span(start, start + len(words)),
        f"This clause stands {where} the assembly's members above it, so it could belong to either.",
        "For the assembly, move it above its members; for the member, set it further in than the member.",
    )


def _too_far_in(start: int, words: str) -> ReadingProblem:
    return ReadingProblem(
        Span(start, start + len(words)),
        "This stands further in than the members above it, and only an assembly has members.",
        "Set it in as far as the other members, or put it in an assembly of its own.",
    )


def laid_out(text: str) -> Layout:
    """The layout of a plan's text. ``len(result.text) == len(text)`` always."""
    plain = _lowered(text).translate(_LOOK_ALIKES)
    if "''" in plain:
        plain = _TWO_MARKS.sub('" ', plain)
    problems: list[ReadingProblem] = []
    statements: list[Statement] = []
    pieces: list[str] = []
    offset = 0
    start: int | None = None
    tail = ""  # the current statement's last line of words, for what a line end becomes
    blanks_since: list[int] = []  # indexes in pieces of line ends since the last words
    nested: list[tuple[int, int]] = []  # the assemblies that are open: how far in they stand, their number
    member: tuple[int, int] | None = None  # the last member: how far in it stands, and in which assembly
    told_behind = False

    for raw in plain.split("\n"):
        line = _uncommented(raw) if "#" in raw else raw
        before = line.rstrip()
        words = before.lstrip()
        if words:
            indent = len(before) - len(words)
            if indent == 1 and offset == 0 and text[0] == _BYTE_ORDER_MARK:
                indent = 0
            new = indent == 0
            within: int | None = None
            if not indent:
                nested = []
                member = None
            elif nested and (_MEMBER.match(words) or _stands_as_member(indent, words, member, nested[-1][1])):
                new = True
                while len(nested) > 1 and indent <= nested[-1][0]:
                    nested.pop()
                within = nested[-1][1]
                if member is not None and member[1] == within and indent > member[0]:
                    problems.append(_too_far_in(offset + indent, words))
                member = (indent, within)
            elif (
                nested
                and member is not None
                and indent <= member[0]
                and tail.rstrip()[-1:] not in (",", ":")
                and not GOES_ON.match(words)
                and not _OWN.match(words)
            ):
                # Which of the two it is a clause of can't be known: the reader above would take the last.
                if not told_behind:
                    problems.append(_behind_members(offset + indent, words, indent == member[0]))
                told_behind = True
                pieces.append(" " * len(line))
                blanks_since.append(len(pieces))
                pieces.append("\n")
                offset += len(raw) + 1
                continue
            elif nested and _OWN.match(words):
                new = True
                problems.append(_not_in_assembly(offset + indent, words))
            elif indent and (start is None or _STATEMENT_IN_BLOCK.match(words)):
                new = True
                problems.append(
                    ReadingProblem(
                        Span(offset + indent, offset + indent + len(words)),
                        "This line begins a statement of its own, but it stands in from the margin."
                        if statements
                        else "This first line stands in from the margin.",
                        "Move it to the margin.",
                    )
                )
            if new:
                start = offset + len(before) - len(words)
                told_behind = False
                if _ASSEMBLY.match(words) and len(nested) < _MOST_NESTED:
                    nested.append((indent, len(statements)))
                    member = member if indent else None
                statements.append(Statement(start, start, within))
            elif blanks_since:
                pieces[blanks_since[0]] = _joint_between(words, tail)
            tail = before
            blanks_since = []
            assert start is not None
            statements[-1] = Statement(start, offset + len(before), statements[-1].within)
        pieces += (line, "\n")
        blanks_since.append(len(pieces) - 1)
        offset += len(raw) + 1
    pieces.pop()
    joined = "".join(pieces)
    problems.extend(_decimal_commas(joined))
    return Layout(joined.replace("\n", " "), tuple(statements), tuple(problems))


def _decimal_commas(text: str) -> list[ReadingProblem]:
    if _COMMA_FIGURE.search(text) is None:
        return []
    found = []
    for match in _DECIMAL_COMMA.finditer(text):
        words = match.group()
        if words[0] == '"':
            continue
        whole, _, part = words.partition(",")
        found.append(
            ReadingProblem(
                Span(match.start(), match.end()),
                f"“{words}” has a comma right between two figures, so it can be read two ways.",
                f"Write {whole}.{part} for one number, or {whole}, {part} with a space for two.",
            )
        )
    return found
