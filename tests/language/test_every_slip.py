"""The table of slips goes through the whole language, and every example that a message shows reads."""

from __future__ import annotations

import re

import pytest

from reviewer.language.examples import _COUNTED, EXAMPLES, beginnings
from reviewer.language.lexer import SPELLINGS
from reviewer.language.problems import ReadingProblem
from reviewer.language.reading import read
from reviewer.language.tables import BLOCKS, STATEMENTS
from reviewer.language.wordings import SHAPES
from tests.language.malformed_plans import SLIPS
from tests.language.reading_texts import HEAD, understood
from tests.language.spanless import declared

STATEMENT = {
    "stock": "stock a: 2x4 pine, @",
    "outline": "outline a: @",
    "assembly": "assembly a: @",
    "part": "part a: stud, @",
    "join": "join a to b: @",
    "fit": "fit a: @",
    "finish": "finish a: on b, @",
    "shop": "shop: @",
    "load": "load a: @",
    "room": "room: @",
    "restrain": "restrain a to wall: @",
    "step": 'step "Glue up": @',
    "purchase": "buy: @",
}
#: Clauses that no slip is shown of, each with its reason.
WITHOUT_A_SLIP = {
    ("outline", "each"): "each is no face of an outline; the part shows the slip",
}
CLAUSES = [(about, first) for about in EXAMPLES for first in sorted(beginnings(about))]
#: Statements whose clauses are in part those of a part: one slip for all of them is enough.
LIKE_PART = ("outline", "assembly")


def _clauses(text: str) -> list[tuple[str, str]]:
    """Each clause of a text as its statement and its first word, in the language's own spelling."""
    found = []
    for line in text.lower().split("\n"):
        head = re.match(r"\s*(\w+)\b[^:]*:", line)
        if head:
            for clause in line[head.end() :].split(","):
                words = clause.split()
                if words:
                    found.append((head[1], SPELLINGS.get(words[0], words[0])))
                    found += [
                        (head[1], SPELLINGS.get(word, word)) for word in words[1:2] if words[0][0].isdigit()
                    ]
    return found


SAID = {clause for slip in SLIPS for clause in _clauses(slip.text.removeprefix(HEAD))}


@pytest.mark.parametrize("kind", sorted(STATEMENTS))
def test_every_kind_of_statement_is_in_the_table_of_slips(kind: str) -> None:
    begun = r"^[^\W\d][\w-]* *=" if kind == "measure" else rf"^ *{kind}\b"
    assert any(re.search(begun, slip.text.removeprefix(HEAD), re.MULTILINE) for slip in SLIPS)


@pytest.mark.parametrize(("about", "first"), CLAUSES, ids=lambda each: each)
def test_every_kind_of_clause_is_in_the_table_of_slips(about: str, first: str) -> None:
    if (about, first) in WITHOUT_A_SLIP:
        assert (about, first) not in SAID
    elif first == "only":
        assert any(word == first for _, word in SAID)
    else:
        assert (about, first) in SAID or (about in LIKE_PART and ("part", first) in SAID)


@pytest.mark.parametrize("about", sorted(EXAMPLES))
def test_every_kind_of_clause_has_an_example(about: str) -> None:
    assert sorted(EXAMPLES[about]) == sorted(beginnings(about))


EVERY_EXAMPLE = [
    *((about, clause) for about, clauses in EXAMPLES.items() for clause in clauses.values()),
    *((about, clause) for about, clauses in _COUNTED.items() for clause in clauses.values()),
]


@pytest.mark.parametrize(("about", "clause"), EVERY_EXAMPLE, ids=lambda each: each)
def test_every_example_reads(about: str, clause: str) -> None:
    assert read(f'plan "Bench" in inches\n{STATEMENT[about].replace("@", clause)}\n').problems == ()


@pytest.mark.parametrize("shape", [shape for kind, shape in SHAPES.items() if kind != "use"])
def test_every_whole_example_reads(shape: str) -> None:
    """All but that of a use statement, which reads only with its file beside it."""
    title = "" if shape.startswith("plan") else 'plan "Bench" in inches\n'
    assert read(f"{title}{shape}\n").problems == ()


# ---------------------------------------------------------------- what a message offers


def _mended(text: str, problem: ReadingProblem) -> str | None:
    """The text with the words that the message offers in the place of those it speaks of."""
    offered = re.fullmatch(r"(?:Write|Put “[^”]+” before “[^”]+”|Add “[^”]+”): (.+)", problem.do)
    if offered is None or offered[1].startswith("use "):  # which reads only with its file beside it
        return None
    line = max(text.rfind("\n", 0, problem.span.start), -1) + 1
    line_end = text.index("\n", problem.span.end)
    first = text[line:line_end].split()[0].lower()
    if offered[1].split()[0] == first or text[line] == '"':  # a head, or a statement without clauses
        colon = text.find(":", problem.span.end, line_end)
        end = colon if first in BLOCKS and colon > 0 else line_end
        return text[:line] + offered[1] + text[end:]
    start = max(text.rfind(mark, 0, problem.span.start) for mark in ",:") + 1
    ends = [place for mark in ",\n" if (place := text.find(mark, problem.span.end)) >= 0]
    return f"{text[:start]} {offered[1]}{text[min(ends) :]}"


OFFERED = [
    (slip.about, slip.text, problem)
    for slip in SLIPS
    for problem in read(slip.text).problems
    if len(read(slip.text).problems) == 1 and problem.do.startswith(("Write: ", "Put “", "Add “"))
]


@pytest.mark.parametrize(
    ("text", "problem"), [each[1:] for each in OFFERED], ids=[each[0] for each in OFFERED]
)
def test_words_that_are_offered_read(text: str, problem: ReadingProblem) -> None:
    mended = _mended(text, problem)
    if mended is not None:
        assert read(mended).problems == ()


def test_enough_messages_offer_the_writers_own_words_mended() -> None:
    assert sum(_mended(text, problem) is not None for _, text, problem in OFFERED) >= 60


def test_a_degree_sign_reads_as_the_word() -> None:
    for sign in "°º˚":
        text = f"{HEAD}part a: stud, upright, facing front, 9 tall, on floor, tilted 8{sign} towards front\n"
        assert read(text).problems == ()
        assert declared(text) == declared(text.replace(sign, " degrees"))


def test_two_short_marks_are_an_inch_mark() -> None:
    text = f"{HEAD}height = 12'' + 5' 6''\n"
    assert understood(text).problems == ()
    assert [round(measure.amount, 3) for measure in understood(text).plan.measures] == [1981.2]  # type: ignore[union-attr]


def test_blanks_before_a_fraction_are_no_matter() -> None:
    for number in ("2 ½", "2  ½", "2   1/2", "2½"):
        plan = understood(f"{HEAD}height = {number}\n").plan
        assert plan is not None
        assert plan.measures[0].amount == 63.5
