"""What to tell the writer where the text cannot be read: what stands there, what fits, the nearest word."""

from __future__ import annotations

import re
from collections.abc import Set

from reviewer.language.examples import beginnings, example_of
from reviewer.language.mending import (
    Trial,
    mended,
    number_lacks_before,
    parted,
    reads_as_name,
    said_otherwise,
)
from reviewer.language.parser import NoWayOnError
from reviewer.language.problems import ReadingProblem
from reviewer.language.slips import LIKELY_SLIPS, ONE_OF, SURE_SLIPS, misspelt_beginning
from reviewer.language.source import Span
from reviewer.language.stopping import WORD, Stop, begins_clause, last_word, near_keywords
from reviewer.language.tables import END, STATEMENTS
from reviewer.language.wordings import CLAUSES, FACES, KINDS, NAMED, SHAPES, SUMS, UNITS, did_you_mean, either
from reviewer.reference.names import nearest

_FOR_EACH = "part end for each of left, right: stud, deep, on edge"
_FROM_TO = "try length: from 36 to 72 by 6"
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
    trial: Trial,
    measures: Set[str],
) -> ReadingProblem:
    """The problem behind a parser's stop, in words for the writer; ``expected`` would have fitted there.

    ``trial`` tells where other words would stop under a rule, so that what is offered is known to read.
    """
    stop = Stop(text, original, rule, start, end, error.kind, error.span, expected, measures)
    for usual in SURE_SLIPS:
        found = usual(stop)
        if found is not None:
            return found
    return (
        _otherwise(stop, trial)
        or _parted(stop, trial)
        or _lone_word(stop, trial)
        or _lacking_number(stop, trial)
        or _mended(stop, trial)
        or next((found for usual in LIKELY_SLIPS if (found := usual(stop)) is not None), None)
        or _plainly(stop)
    )


def _word_within(stop: Stop, word: str) -> Span:
    found = re.compile(rf"(?<![\w-]){re.escape(word)}(?![\w-])").search(stop.text, stop.start, stop.end)
    return Span(found.start(), found.end()) if found else stop.span


# ------------------------------------------------------------ the writer's own words, mended


def _otherwise(stop: Stop, trial: Trial) -> ReadingProblem | None:
    """A usual phrase that the language says in another way."""
    found = said_otherwise(stop, trial)
    if found is None:
        return None
    beginning = misspelt_beginning(stop)
    if beginning is not None:
        return stop.problem(beginning.says, f"Write: {found.words}", beginning.span)
    return stop.problem(_stopped(stop), f"Write: {found.words}", last_word(stop) if stop.at_end else None)


def _parted(stop: Stop, trial: Trial) -> ReadingProblem | None:
    """Clauses that no comma parts."""
    words = parted(stop, trial) if stop.of_clause and not stop.at_end else None
    if words is None:
        return None
    return stop.problem(
        f"“{stop.said}” begins a new clause, and no comma stands before it."
        if END in stop.expected
        else "Several clauses stand here with no commas between them.",
        f"Write: {words}",
        None if END in stop.expected else Span(stop.start, stop.end),
    )


def _lone_word(stop: Stop, trial: Trial) -> ReadingProblem | None:
    """A clause whose first word was taken for a name, since what goes with that word does not stand there."""
    if stop.about not in ("join", "fit", "restrain", "assembly", "outline", "step"):
        return None
    word = reads_as_name(stop, trial)
    if word is None or (stop.about == "step" and word in beginnings("step")):
        return None
    span = _word_within(stop, word)
    example = _example(stop)
    if example == word:  # which is a whole clause, with more words behind it
        return None
    if word in beginnings(stop.about) and example:
        return stop.problem(
            f"“{word}” begins a clause, and what goes with it does not stand here.",
            f"Write it like this: {example}",
            span,
        )
    return misspelt_beginning(stop) or stop.problem(
        f"No clause of {ONE_OF[stop.about]} begins with “{word}”.", CLAUSES[stop.about], span
    )


def _lacking_number(stop: Stop, trial: Trial) -> ReadingProblem | None:
    word = number_lacks_before(stop, trial)
    if word is None:
        return None
    example = _example(stop)
    return stop.problem(
        f"There is no number or measure before “{word}”.",
        f"Write one{f', as in: {example}' if example else ' before it.'}",
        _word_within(stop, word),
    )


def _mended(stop: Stop, trial: Trial) -> ReadingProblem | None:
    """The slip told with the writer's words as they would read, where that is one thing only."""
    found = mended(stop, trial)
    if found is None:
        return None
    beginning = misspelt_beginning(stop)
    if beginning is not None:
        return (
            beginning
            if beginning.near
            else stop.problem(beginning.says, f"Write: {found.words}", beginning.span)
        )
    span = last_word(stop) if stop.at_end else None
    if found.replaced and found.replaced in near_keywords(stop.said, stop.expected):
        near = (found.replaced,)
        return stop.problem(_stopped(stop), did_you_mean(near, ""), span, near)
    if found.inserted:
        where = f"Add “{found.inserted}”" if stop.at_end else f"Put “{found.inserted}” before “{stop.said}”"
        return stop.problem(_stopped(stop), f"{where}: {found.words}", span)
    return stop.problem(_stopped(stop), f"Write: {found.words}", span)


# ------------------------------------------------------------ all the rest


def _stopped(stop: Stop) -> str:
    before, said = stop.before, stop.said
    if stop.at_end:
        return f"The line stops after “{before}”." if before else "There is nothing after this."
    if before:
        return f"After “{before}” stands “{said}”, which does not fit there."
    return f"“{said}” does not fit here."


def _plainly(stop: Stop) -> ReadingProblem:
    near = near_keywords(stop.said, stop.expected) if WORD.fullmatch(stop.text, *stop.span) else ()
    span = last_word(stop) if stop.at_end else None
    return stop.problem(_stopped(stop), _next_step(stop, near), span, near)


def _example(stop: Stop) -> str:
    """What the words that reading stopped in should be like: such a clause, or a statement."""
    words = stop.text[stop.start : stop.end].split()
    if not stop.of_clause:
        in_copies = stop.rule == "part_head" and "for" in words
        in_steps = stop.about == "try" and ("from" in words or "to" in words)
        return _FOR_EACH if in_copies else _FROM_TO if in_steps else SHAPES.get(stop.about, "")
    return example_of(stop.about, words)


def _next_step(stop: Stop, near: tuple[str, ...]) -> str:
    if near:
        return did_you_mean(near, "")
    options = _options(stop)
    example = _example(stop)
    if len(options) > _MOST_LISTED or (stop.about in ("stock", "purchase") and not stop.at_end):
        if example and stop.of_clause:
            return f"Write it like this: {example}"
        return CLAUSES[stop.about] if stop.of_clause else f"Write it like this: {example}"
    as_in = f", as in: {example}" if example else "."
    if stop.expected <= {END, "COMMA"} | SUMS and not stop.at_end:
        if stop.of_clause:
            whole = " ".join(stop.text[stop.start : stop.span.start].split()) == example
            return f"Take it out{f', or write it like this: {example}' if example and not whole else '.'}"
        if stop.about == "try" and stop.said.lower() == "to":
            return f"Write it like this: {example}"
        return "Take it out, or begin a new line for a new statement."
    lone = len(options) == 1 and (options[0][0] == "“" or stop.said == ",")
    if lone and not stop.at_end and example and (stop.of_clause or stop.said == ","):
        return f"Write it like this: {example}"
    if len(options) == 1 and (options[0] in (KINDS["COLON"], KINDS["EQUALS"]) or options[0][0] == "“"):
        where = "" if stop.at_end else f" before “{stop.said}”"
        return f"{'Add' if stop.at_end else 'Put'} {options[0]}{where}{as_in}"
    return f"What fits there: {either(options)}{as_in}"


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
    if shown >= {"NAME", "NUMBER"} and "OPEN" in stop.expected:
        named.append("a number or a measure")
        shown -= {"NAME", "NUMBER"}
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
    if text.startswith(":=", stop) or text.startswith(" :=", stop):
        return ReadingProblem(
            span,
            "A measure has an equals sign without a colon.",
            f"Write: {word} = {text[stop:end].strip(' :=')}",
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
        "A statement begins with plan, use, stock, outline, part, assembly, join, fit, finish, shop, "
        "load, room, restrain, step, buy, tools, limit, accept or try; a measure is written: height = 17 1/2",
    )
