"""The slips that writers make most, each with its own cure."""

from __future__ import annotations

import re
from collections.abc import Callable

from reviewer.language.examples import example_of
from reviewer.language.lexer import SPELLINGS, STRAY
from reviewer.language.problems import ReadingProblem
from reviewer.language.slips_of_numbers import (
    counted_from_nothing,
    fasteners_counted_first,
    mark_inside_number,
    no_unit,
    nominal_as_measure,
    number_as_name,
    numbers_side_by_side,
    size_without_number,
    spaced_section,
    thickness_first,
    wood_without_size,
)
from reviewer.language.source import Span
from reviewer.language.stopping import WORD, Stop, begins_clause, last_word, near_keywords
from reviewer.language.tables import END, tables
from reviewer.language.wordings import CLAUSES, KINDS, SHAPES, did_you_mean

_OF_A_NAME = re.compile(r"[\w-]+")
_SEVERAL = re.compile(r"(\w+) [\w.-]+(?:(?:, ?| and | & )[\w.-]+)+")
_COPIES = {
    "part": ", or one for copies: part end for each of left, right",
    "assembly": ", or one for copies: assembly door for each of left, right",
}
#: Of words without quotation marks, so many letters are shown at most.
_LONG_TITLE = 60
#: A statement of each kind, as messages call it.
ONE_OF = {
    "stock": "a stock",
    "outline": "an outline",
    "part": "a part",
    "join": "a join",
    "finish": "a finish",
    "shop": "a shop",
    "load": "a load",
    "room": "a room",
    "restrain": "a restraint",
    "assembly": "an assembly",
    "fit": "a fit",
    "step": "a step",
}


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
    nominal_as_measure,
    thickness_first,
    fasteners_counted_first,
    mark_inside_number,
    _stray_mark,
    _unclosed_bracket,
    _several_names,
    _name_of_two_words,
    _unquoted,
)
#: And these count when no small change makes the words read.
LIKELY_SLIPS: tuple[Callable[[Stop], ReadingProblem | None], ...] = (
    no_unit,
    spaced_section,
    wood_without_size,
    misspelt_beginning,
    numbers_side_by_side,
    number_as_name,
    counted_from_nothing,
    size_without_number,
)
