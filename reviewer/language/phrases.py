"""What to tell the writer where the text cannot be read: what stands there, what fits, the nearest word."""

from __future__ import annotations

import re

from reviewer.language.parser import NoWayOnError
from reviewer.language.problems import ReadingProblem
from reviewer.language.slips import USUAL_SLIPS, WORD, Stop, begins_clause, last_word, near_keywords
from reviewer.language.source import Span
from reviewer.language.tables import END, STATEMENTS
from reviewer.language.wordings import CLAUSES, FACES, KINDS, NAMED, SHAPES, SUMS, UNITS, did_you_mean, either
from reviewer.reference.names import nearest

_FOR_EACH = "part end for each of left, right: stud, deep, on edge"
_COPY = "a name for the copy"
_SUM = re.compile(r"[\d /½¼¾]+")
_NAMES_AHEAD = re.compile(r"([^\W\d][\w-]*(?:\s+[\w-]+)+)\s*=")
#: More things than this are not listed as what fits; an example says it better.
_MOST_LISTED = 6


def fault_in(
    text: str,
    original: str,
    rule: str,
    start: int,
    end: int,
    error: NoWayOnError,
    expected: frozenset[str],
) -> ReadingProblem:
    """The problem behind a parser's stop, in words for the writer; ``expected`` would have fitted there."""
    stop = Stop(text, original, rule, start, end, error.kind, error.span, expected)
    for usual in USUAL_SLIPS:
        found = usual(stop)
        if found is not None:
            return found
    return _plainly(stop)


# ------------------------------------------------------------ all the rest


def _plainly(stop: Stop) -> ReadingProblem:
    before, said = stop.before, stop.said
    if stop.at_end:
        says = f"The line stops after “{before}”." if before else "There is nothing after this."
    elif before:
        says = f"After “{before}” stands “{said}”, which does not fit there."
    else:
        says = f"“{said}” does not fit here."
    near = near_keywords(said, stop.expected) if WORD.fullmatch(stop.text, *stop.span) else ()
    return stop.problem(says, _next_step(stop, near), last_word(stop) if stop.at_end else None, near)


def _next_step(stop: Stop, near: tuple[str, ...]) -> str:
    if near:
        return did_you_mean(near, "")
    options = _options(stop)
    shape = _FOR_EACH if stop.rule == "part_head" and " for " in stop.text[stop.start : stop.end] else ""
    shape = shape or SHAPES.get(stop.about, "")
    if len(options) > _MOST_LISTED or (stop.about in ("stock", "purchase") and not stop.at_end):
        return CLAUSES[stop.about] if stop.of_clause else f"Write it like this: {shape}"
    example = "." if stop.of_clause else f", as in: {shape}"
    if stop.expected <= {END, "COMMA"} | SUMS and not stop.at_end:
        if stop.of_clause:
            return f"Put a comma before “{stop.said}” if a new clause begins there, or take it out."
        return "Take it out, or begin a new line for a new statement."
    if len(options) == 1 and (options[0] in (KINDS["COLON"], KINDS["EQUALS"]) or options[0][0] == "“"):
        where = "" if stop.at_end else f" before “{stop.said}”"
        return f"{'Add' if stop.at_end else 'Put'} {options[0]}{where}{example}"
    return f"What fits there: {either(options)}{example}"


def _options(stop: Stop) -> list[str]:
    """What would fit, in words, shortest said: faces and units as one thing, sums not at all."""
    shown = set(stop.expected - SUMS or stop.expected)
    named: list[str] = []
    if shown >= FACES:
        named.append("a face (left, right, front, back, bottom or top)")
        shown -= FACES | {"EACH"}
    if shown >= UNITS:
        named.append("a unit (inches, millimetres, centimetres or metres)")
        shown -= UNITS
    if END in shown and stop.of_clause:
        named.append("a comma before the next clause")
        shown -= {"COMMA", END}
    if END in shown and stop.rule.endswith("_head"):  # which ends where the colon stands
        shown = shown - {END} | {"COLON"}
    if "NAME" in shown and stop.rule in NAMED:
        named.append(_COPY if stop.rule == "part_head" and "NUMBER" in shown else NAMED[stop.rule])
        shown -= {"NAME"}
    if shown - {"COMMA"} and not stop.of_clause:
        shown -= {"COMMA"}  # one name more of a list is seldom what is missing
    called = [KINDS[kind] for kind in KINDS if kind in shown]
    words = sorted(f"“{kind.lower()}”" for kind in shown if kind not in KINDS)
    return named + words + called


def unknown_statement(text: str, original: str, start: int, stop: int, end: int) -> ReadingProblem:
    """A statement whose first word begins no statement."""
    word = original[start:stop]
    span = Span(start, stop)
    amount = text[stop:end].strip(" :")
    if _SUM.fullmatch(amount) and WORD.fullmatch(word):
        return ReadingProblem(
            Span(start, end),
            f"“{word}” begins no statement, and for a measure it lacks the equals sign.",
            f"For a measure write: {word} = {amount}",
        )
    near = nearest(word.lower(), [name for name in STATEMENTS if name != "measure"])
    if near:
        return ReadingProblem(
            span,
            f"No statement begins with “{word}”.",
            f"{did_you_mean(near, '')} For example: {SHAPES[near[0]]}",
            near,
        )
    if word.startswith('"'):
        return ReadingProblem(span, "A title has the word plan before it.", f"Write: {SHAPES['plan']}")
    names = _NAMES_AHEAD.match(text, start, end) if text.find("=", start, end) > 0 else None
    if names:
        said = original[start : names.end(1)]
        return ReadingProblem(
            Span(start, names.end(1)),
            f"“{said}” is more than one word, and a name is one.",
            f"Join it with hyphens: {'-'.join(said.split())} = …",
        )
    if begins_clause(word):
        return ReadingProblem(
            span,
            f"“{word}” begins a clause, and this line stands at the margin by itself.",
            "Set the line in by a few spaces to go on with the statement above it.",
        )
    return ReadingProblem(
        span,
        f"No statement begins with “{word}”.",
        "A statement begins with plan, use, stock, outline, part, assembly, join, fit, finish, load, "
        "room, restrain, step, buy, tools, limit, accept or try; a measure is written: height = 17 1/2",
    )
