"""The slips that writers make most, each with its own cure."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Set
from typing import NamedTuple

from reviewer.language.examples import example_of
from reviewer.language.lexer import SPELLINGS, STRAY
from reviewer.language.numbers import UNIT_WORDS
from reviewer.language.problems import ReadingProblem
from reviewer.language.source import Span
from reviewer.language.tables import END, tables
from reviewer.language.wordings import CLAUSES, KINDS, MEANT, NAMED, SHAPES, SIZES, SUMS, WAYS, did_you_mean
from reviewer.reference.names import nearest

WORD = re.compile(r"[^\W\d][\w-]*")
_OF_A_NAME = re.compile(r"[\w-]+")
_NOMINAL = re.compile(r"\d+(?:/\d+)?x\d+")
_THICKNESS_FIRST = re.compile(r"(\d[\d /.½¼¾⅛⅜⅝⅞]*(?: ?(?:mm|cm|in|inch|inches|\"))?) ([^\W\d][\w -]*)")
_COUNTED_FIRST = re.compile(
    r"(\d+) ((?:pocket )?screws?|nails?|dowels?|bolts?|biscuits?|brackets?|wedges?|clips?|loose tenons?)"
    r"( .*?)?(?: per joint| each)?"
)
_MARKED_WHOLE = re.compile(r"(\d+)( ?(?:\"|in\b|inch\b|inches\b))\s*$")
_SEVERAL = re.compile(r"(\w+) [\w.-]+(?:(?:, ?| and | & )[\w.-]+)+")
_COPIES = {
    "part": ", or one for copies: part end for each of left, right",
    "assembly": ", or one for copies: assembly door for each of left, right",
}
#: Of words without quotation marks, so many letters are shown at most.
_LONG_TITLE = 60
_SHORT_UNITS = {
    "millimetres": "mm",
    "millimeters": "mm",
    "millimetre": "mm",
    "centimetres": "cm",
    "centimeters": "cm",
}
_UNITS = (*(unit for unit in UNIT_WORDS if len(unit) > 3), *_SHORT_UNITS)
_FOREIGN_UNITS = frozenset(
    {"yard", "yards", "yd", "yds", "thou", "mil", "mils", "micron", "microns", "dm", "um", "km", "mile"}
)
#: A statement of each kind, as messages call it.
ONE_OF = {
    "stock": "a stock",
    "outline": "an outline",
    "part": "a part",
    "join": "a join",
    "finish": "a finish",
    "load": "a load",
    "room": "a room",
    "restrain": "a restraint",
    "assembly": "an assembly",
    "fit": "a fit",
    "step": "a step",
}


class Stop(NamedTuple):
    """Where reading stopped, and what it was about to read."""

    text: str  # laid out
    original: str
    rule: str
    start: int
    end: int
    kind: str  # of the token that does not fit
    span: Span  # of that token
    expected: frozenset[str]
    measures: Set[str] = frozenset()  # the names that the plan gives to measures

    @property
    def about(self) -> str:
        """The kind of statement: part, join …"""
        return self.rule.rpartition("_")[0] or self.rule

    @property
    def of_clause(self) -> bool:
        return self.rule.endswith("_clause") or self.rule == "purchase"

    @property
    def at_end(self) -> bool:
        return self.kind == END

    @property
    def said(self) -> str:
        return self.original[self.span.start : self.span.end]

    @property
    def before(self) -> str:
        """The words just before, for “after …”: at most the last three of the clause."""
        place = self.span.start
        cut = max(self.text.rfind(mark, self.start, place) for mark in ",:") + 1
        return " ".join(self.original[max(cut, self.start) : place].split()[-3:])

    def problem(
        self, says: str, do: str, span: Span | None = None, near: Iterable[str] = ()
    ) -> ReadingProblem:
        return ReadingProblem(self.span if span is None else span, says, do, tuple(near))


def _unclosed_quotation(stop: Stop) -> ReadingProblem | None:
    if stop.kind != STRAY or stop.text[stop.span.start] != '"':
        return None
    line_end = stop.original.find("\n", stop.span.start)
    last = stop.end if line_end < 0 else min(stop.end, line_end)
    return stop.problem(
        "A quotation begins here and is not closed on the same line.",
        'Put the closing mark (") at the end of the quoted words.',
        Span(stop.span.start, max(last, stop.span.end)),
    )


def _nominal_as_measure(stop: Stop) -> ReadingProblem | None:
    place = stop.text.rfind(" ", stop.start, stop.span.start) + 1
    text = stop.text
    found = _NOMINAL.match(text, max(place, stop.start), stop.end)
    if found is None or not found.start() <= stop.span.start < found.end():
        return None
    said = stop.original[found.start() : found.end()]
    span = Span(found.start(), found.end())
    if stop.rule == "stock_clause":
        wood = " ".join(stop.original[stop.start : found.start()].split())
        if not WORD.match(wood):
            return None
        return stop.problem(
            f"The section “{said}” stands behind its wood.", f"Put it before: {said} {wood}", span
        )
    real = _real_size(text[found.start() : found.end()])
    return stop.problem(
        f"“{said}” is a nominal size, a name at the yard and no measure, so it can't stand here."
        + (f" A {said} is {real}." if real else ""),
        "Name it in a stock statement and the stock in the part. A length stands alone, such as: 42 long",
        span,
    )


def _real_size(nominal: str) -> str:
    """``1 1/2 by 3 1/2 in``; empty for what no yard lists."""
    from reviewer.reference.sections import nominal_section
    from reviewer.units import inches

    section = nominal_section(nominal)
    if section is None or section.width is None:
        return ""
    return f"{inches(section.thickness)} by {inches(section.width)} in"


def _spaced_section(stop: Stop) -> ReadingProblem | None:
    sizes = " ".join(stop.original[stop.start : stop.end].split())
    if stop.rule != "stock_clause" or stop.kind != "X" or not sizes[0].isdigit():
        return None
    return stop.problem(
        f"“{sizes}” gives two sizes without saying that they are real ones.",
        f"Write actual before real sizes: actual {sizes}. A nominal size has no spaces: 2x4",
        Span(stop.end - len(stop.text[stop.start : stop.end].lstrip()), stop.end),
    )


def _wood_without_size(stop: Stop) -> ReadingProblem | None:
    if stop.rule != "stock_clause" or not stop.at_end or not stop.expected >= {"NAME", "NUMBER"}:
        return None
    wood = stop.before
    words = stop.original[stop.start : stop.end].split()
    example = example_of("stock", [word.lower() for word in words])
    first = stop.original.index(words[0], stop.start)
    if example == words[0].lower():
        return stop.problem(
            f"“{words[0]}” is a whole clause, and more words stand behind it.",
            f"Write: {example}",
            Span(stop.original.index(words[1], first + len(words[0])), last_word(stop).end),
        )
    if example:
        return stop.problem(
            f"“{words[0]}” begins a clause, and what goes with it does not stand here.",
            f"Write it like this: {example}",
            Span(first, first + len(words[0])),
        )
    return stop.problem(
        f"“{wood}” has no size.",
        f"Put its section before it: 2x4 {wood}, or actual 45 x 95 {wood}. "
        f"A sheet has its thickness behind it: {wood} 3/4",
        last_word(stop),
    )


def _thickness_first(stop: Stop) -> ReadingProblem | None:
    if stop.rule != "stock_clause" or stop.kind != "NAME":
        return None
    words = " ".join(stop.original[stop.start : stop.end].split())
    found = _THICKNESS_FIRST.fullmatch(words)
    if found is None:
        return None
    return stop.problem(
        f"The thickness “{found[1]}” stands before its sheet.",
        f"Put it behind: {found[2]} {found[1]}",
        Span(stop.end - len(stop.text[stop.start : stop.end].lstrip()), stop.span.start - 1),
    )


def _fasteners_counted_first(stop: Stop) -> ReadingProblem | None:
    """2 screws #8 x 2: in the language the number of fasteners has a clause of its own."""
    if stop.rule != "join_clause":
        return None
    found = _COUNTED_FIRST.fullmatch(" ".join(stop.text[stop.start : stop.end].split()))
    if found is None:
        return None
    sort = SPELLINGS.get(found[2].split()[-1], found[2].split()[-1])
    sort = " ".join([*found[2].split()[:-1], sort])
    example = example_of("join", sort.split())
    size = (
        re.sub(r"(?:^|\s)(?:per|each)\b.*", "", found[3] or "").strip() or example.removeprefix(sort).strip()
    )
    return stop.problem(
        f"How many {sort} there are has a clause of its own.",
        f"Write: {f'{sort} {size}'.strip()}, {found[1]} per joint",
        stop.span,
    )


def _mark_inside_number(stop: Stop) -> ReadingProblem | None:
    if stop.kind != "NUMBER" or "/" not in stop.said:
        return None
    found = _MARKED_WHOLE.search(stop.text, stop.start, stop.span.start)
    if found is None:
        return None
    unit = found[2].strip()
    gap = "" if unit == '"' else " "
    return stop.problem(
        f"The unit of “{found[1]} {stop.said}” stands inside the number.",
        f"Put it behind the whole number: {found[1]} {stop.said.strip(chr(34))}{gap}{unit}",
        Span(found.start(), stop.span.end),
    )


def _no_unit(stop: Stop) -> ReadingProblem | None:
    """A word right behind a number that is nearly a unit, or one of those that nobody builds in."""
    if stop.kind != "NAME" or not stop.text[stop.start : stop.span.start].rstrip()[-1:].isdigit():
        return None
    if "NUMBER" in stop.expected or stop.about in ("stock", "purchase"):
        return None
    said = stop.said.lower()
    near = nearest(said, _UNITS) if len(said) > 3 else ()
    if near_keywords(said, stop.expected) or not (near or said in _FOREIGN_UNITS):
        return None
    near = tuple(_SHORT_UNITS.get(name, name) for name in near[:1])
    return stop.problem(
        f"“{stop.said}” is no unit that dryfit knows.",
        did_you_mean(near[:1], "A length is in inches (in), feet (ft), mm, cm or m."),
        near=near[:1],
    )


def _several_names(stop: Stop) -> ReadingProblem | None:
    words = stop.text[stop.start : stop.end].split()
    if stop.rule not in ("stock_head", "outline_head", "part_head", "finish_head", "assembly_head"):
        return None
    found = _SEVERAL.fullmatch(" ".join(words))
    if found is None:
        return None
    kind = found[1]
    return stop.problem(
        f"Several names stand here, and {ONE_OF[kind]} has one.",
        f"Write a statement for each{_COPIES.get(kind, '.')}",
        Span(stop.start + len(kind) + 1, stop.start + len(stop.text[stop.start : stop.end].rstrip())),
    )


def _stray_mark(stop: Stop) -> ReadingProblem | None:
    mark = stop.text[stop.span.start : stop.span.end]
    if mark == ";":
        return stop.problem("A semicolon parts nothing here.", "Write a comma between two clauses.")
    if mark == "." and stop.kind == STRAY:
        return stop.problem("A full stop has no meaning here.", "Take it out.")
    if mark == "#":
        return stop.problem("A remark needs a space before its #.", "Put a space before the #.")
    if stop.kind == STRAY and not mark.isprintable():
        return stop.problem(
            f"Here stands a character that can't be seen (U+{ord(stop.said):04X}).", "Take it out."
        )
    if mark == "(" and END in stop.expected:
        return stop.problem(
            "A bracket holds a sum, and no sum goes on here.",
            "Put a remark behind # at the end of the line.",
            Span(stop.span.start, stop.end),
        )
    if mark == "-" and "NUMBER" in stop.expected:
        return stop.problem(
            "A number can't begin with a minus.",
            "Count from the other side instead: below, left of, in front of, less.",
        )
    return None


def _unclosed_bracket(stop: Stop) -> ReadingProblem | None:
    if "CLOSE" not in stop.expected:
        return None
    open_at: list[int] = []
    for place in range(stop.start, stop.span.start):
        if stop.text[place] == "(":
            open_at.append(place)
        elif stop.text[place] == ")" and open_at:
            open_at.pop()
    if not open_at:
        return None
    return stop.problem(
        "This bracket is not closed.",
        "Put a closing bracket behind the sum.",
        Span(
            open_at[-1],
            max(stop.start + len(stop.text[stop.start : stop.span.start].rstrip()), open_at[-1] + 1),
        ),
    )


def misspelt_beginning(stop: Stop) -> ReadingProblem | None:
    """A clause whose first word is nearly one that a clause begins with, and was taken for a name."""
    if not stop.of_clause:
        return None
    first = WORD.search(stop.text, stop.start, stop.end)
    if first is None or stop.text[stop.start : first.start()].strip() or first.end() > stop.span.start:
        return None
    if len(first.group()) < 3 or "=" in stop.text[stop.start : stop.end]:
        return None
    kinds = tables().actions[tables().starts[stop.rule][0]]
    keywords = {kind.lower() for kind in kinds if kind not in KINDS}
    if SPELLINGS.get(first.group(), first.group()) in keywords or "NAME" not in kinds:
        return None
    said = stop.original[first.start() : first.end()]
    if begins_clause(first.group()):
        return stop.problem(
            f"“{said}” begins no clause of {ONE_OF.get(stop.about, 'this')}.",
            CLAUSES[stop.about],
            Span(first.start(), first.end()),
        )
    near = near_keywords(first.group(), kinds)
    if not near:
        return None
    return stop.problem(
        f"No clause here begins with “{said}”.",
        did_you_mean(near, ""),
        Span(first.start(), first.end()),
        near,
    )


def _missing_colon(stop: Stop) -> ReadingProblem | None:
    if "COLON" not in stop.expected or stop.text.find(":", stop.start, stop.end) >= 0:
        return None
    where = "at the end" if stop.at_end else f"before “{stop.said}”"
    if stop.said.lower() in ("with", "using", "by", "is", "=", "-"):
        where = f"in the place of “{stop.said}”"
    return stop.problem(
        f"There is no colon after “{stop.before}”.",
        f"Put one {where}, as in: {SHAPES[stop.about]}",
        last_word(stop) if stop.at_end else None,
    )


def _name_of_two_words(stop: Stop) -> ReadingProblem | None:
    heads = ("stock_head", "outline_head", "part_head", "finish_head", "assembly_head")
    if stop.rule not in heads or "NAME" in stop.expected:
        return None
    words = stop.text[stop.start : stop.end].split()
    if len(words) < 3 or not all(_OF_A_NAME.fullmatch(word) for word in words) or "EACH" in stop.expected:
        return None
    place = stop.text.index(words[1], stop.start + len(words[0]))
    said = stop.original[place : stop.end].rstrip()
    return stop.problem(
        f"“{said}” is more than one word, and a name is one.",
        f"Join it with hyphens: {words[0]} {'-'.join(words[1:])}",
        Span(place, place + len(said)),
    )


def _numbers_side_by_side(stop: Stop) -> ReadingProblem | None:
    if stop.kind != "NUMBER" or "NUMBER" in stop.expected or not stop.expected & SUMS:
        return None
    return stop.problem(
        f"“{stop.said}” follows another number or measure with nothing between them.",
        "Put + - * or / between the two, or a comma before the next clause.",
    )


def _number_as_name(stop: Stop) -> ReadingProblem | None:
    if stop.kind != "NUMBER" or "NUMBER" in stop.expected or "NAME" not in stop.expected:
        return None
    example = example_of(stop.about, stop.text[stop.start : stop.end].split())
    if stop.about in ("join", "fit", "room") and stop.of_clause and example:
        return stop.problem(
            f"“{stop.said}” is a number where a word should stand.", f"Write it like this: {example}"
        )
    return stop.problem(
        f"“{stop.said}” is a number where a name should stand.",
        "Give it a name that begins with a letter."
        if stop.rule.endswith("_head")
        else f"Write {NAMED.get(stop.rule, NAMED.get(f'{stop.about}_head', 'a name'))}"
        + ("." if stop.of_clause else f", as in: {SHAPES[stop.about]}"),
    )


def _counted_from_nothing(stop: Stop) -> ReadingProblem | None:
    if not stop.at_end or not stop.expected >= WAYS:
        return None
    return stop.problem(
        f"“{stop.before}” does not say what it is counted from.",
        "Add it, as in: bottom 15 above floor, left 2 right of left of frame. "
        "From the plan's own corner: left at 4",
        last_word(stop),
    )


def _size_without_number(stop: Stop) -> ReadingProblem | None:
    if not stop.at_end or not stop.expected >= SIZES:
        return None
    last = last_word(stop)
    word = stop.original[last.start : last.end]
    if word.upper() not in SIZES:
        return None
    return stop.problem(
        f"There is no number or measure before “{word}”, so it is read as the name of one.",
        f"Write the number before it: 12 {word.lower()}",
        last,
    )


def _unquoted(stop: Stop) -> ReadingProblem | None:
    if stop.expected != {"TEXT"} or stop.kind in ("TEXT", STRAY):
        return None
    if stop.at_end or stop.kind == "COLON":
        return None
    last = stop.end
    if stop.about == "step":
        colon = stop.text.find(":", stop.span.start, stop.end)
        last = colon if colon >= 0 else stop.end
    elif stop.about == "plan":
        unit = stop.text.find(" in ", stop.span.start, stop.end)
        last = unit if unit >= 0 else stop.end
    said = stop.original[stop.span.start : last].rstrip()
    if len(said) > _LONG_TITLE:
        said = stop.said
    example = f'{stop.about} "{said}"'
    if stop.about not in ("step", "use"):
        example = example_of(stop.about, ["none"]) or SHAPES[stop.about]
    return stop.problem(
        f"“{said}” is not in quotation marks.",
        f"Put the words in quotation marks, as in: {example}",
        Span(stop.span.start, stop.span.start + len(said)),
    )


#: Each gives the problem when the stop is its kind of slip, else None. The first one counts. These
#: have a cure of their own, whatever else would read.
SURE_SLIPS: tuple[Callable[[Stop], ReadingProblem | None], ...] = (
    _unclosed_quotation,
    _missing_colon,
    _nominal_as_measure,
    _thickness_first,
    _fasteners_counted_first,
    _mark_inside_number,
    _stray_mark,
    _unclosed_bracket,
    _several_names,
    _name_of_two_words,
    _unquoted,
)
#: And these count when no small change makes the words read.
LIKELY_SLIPS: tuple[Callable[[Stop], ReadingProblem | None], ...] = (
    _no_unit,
    _spaced_section,
    _wood_without_size,
    misspelt_beginning,
    _numbers_side_by_side,
    _number_as_name,
    _counted_from_nothing,
    _size_without_number,
)


def near_keywords(word: str, kinds: Iterable[str]) -> tuple[str, ...]:
    """The keywords among some kinds that a word is nearly, or that writers mean by it."""
    words = [kind.lower() for kind in kinds if kind not in KINDS]
    meant = MEANT.get(word.lower())
    if meant in words:
        return (str(meant),)
    if len(word) < 3:
        return ()
    return tuple(name for name in nearest(word.lower(), words) if name != word.lower())


def last_word(stop: Stop) -> Span:
    """The last word before the end of the slice."""
    last = stop.start + len(stop.text[stop.start : stop.end].rstrip())
    first = max(stop.text.rfind(mark, stop.start, last) for mark in " ,") + 1
    return Span(max(first, stop.start), last)


def begins_clause(word: str) -> bool:
    """Whether a clause of any statement begins with a word or number."""
    known = tables()
    kind = "NUMBER" if word[:1].isdigit() else word.upper()
    if kind in KINDS and kind != "NUMBER":
        return False
    return any(
        kind in known.actions[first] for rule, (first, _) in known.starts.items() if rule.endswith("_clause")
    )
