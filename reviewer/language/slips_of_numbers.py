"""Slips of numbers, sizes and their units, each with its own cure."""

from __future__ import annotations

import re

from reviewer.language.examples import example_of
from reviewer.language.lexer import SPELLINGS
from reviewer.language.numbers import UNIT_WORDS
from reviewer.language.problems import ReadingProblem
from reviewer.language.source import Span
from reviewer.language.stopping import WORD, Stop, last_word, near_keywords
from reviewer.language.wordings import NAMED, SHAPES, SIZES, SUMS, WAYS, did_you_mean
from reviewer.reference.names import nearest

_NOMINAL = re.compile(r"\d+(?:/\d+)?x\d+")
_THICKNESS_FIRST = re.compile(r"(\d[\d /.½¼¾⅛⅜⅝⅞]*(?: ?(?:mm|cm|in|inch|inches|\"))?) ([^\W\d][\w -]*)")
_COUNTED_FIRST = re.compile(
    r"(\d+) ((?:pocket )?screws?|nails?|dowels?|bolts?|biscuits?|brackets?|wedges?|clips?|loose tenons?)"
    r"( .*?)?(?: per joint| each)?"
)
_MARKED_WHOLE = re.compile(r"(\d+)( ?(?:\"|in\b|inch\b|inches\b))\s*$")
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


def nominal_as_measure(stop: Stop) -> ReadingProblem | None:
    """A nominal size where a measure should stand, or behind its wood."""
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


def thickness_first(stop: Stop) -> ReadingProblem | None:
    """A sheet's thickness before its name."""
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


def fasteners_counted_first(stop: Stop) -> ReadingProblem | None:
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


def mark_inside_number(stop: Stop) -> ReadingProblem | None:
    """12" 1/2: the unit stands inside the number."""
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


def no_unit(stop: Stop) -> ReadingProblem | None:
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


def spaced_section(stop: Stop) -> ReadingProblem | None:
    """Two sizes of a stock that are not said to be real ones."""
    sizes = " ".join(stop.original[stop.start : stop.end].split())
    if stop.rule != "stock_clause" or stop.kind != "X" or not sizes[0].isdigit():
        return None
    return stop.problem(
        f"“{sizes}” gives two sizes without saying that they are real ones.",
        f"Write actual before real sizes: actual {sizes}. A nominal size has no spaces: 2x4",
        Span(stop.end - len(stop.text[stop.start : stop.end].lstrip()), stop.end),
    )


def wood_without_size(stop: Stop) -> ReadingProblem | None:
    """A wood alone, or a word of a stock whose rest is not there."""
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


def numbers_side_by_side(stop: Stop) -> ReadingProblem | None:
    """Two numbers with nothing between them."""
    if stop.kind != "NUMBER" or "NUMBER" in stop.expected or not stop.expected & SUMS:
        return None
    return stop.problem(
        f"“{stop.said}” follows another number or measure with nothing between them.",
        "Put + - * or / between the two, or a comma before the next clause.",
    )


def number_as_name(stop: Stop) -> ReadingProblem | None:
    """A number where a name should stand."""
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


def counted_from_nothing(stop: Stop) -> ReadingProblem | None:
    """left 3: it is not said what that is counted from."""
    if not stop.at_end or not stop.expected >= WAYS:
        return None
    return stop.problem(
        f"“{stop.before}” does not say what it is counted from.",
        "Add it, as in: bottom 15 above floor, left 2 right of left of frame. "
        "From the plan's own corner: left at 4",
        last_word(stop),
    )


def size_without_number(stop: Stop) -> ReadingProblem | None:
    """A direction of a size with no number before it."""
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
