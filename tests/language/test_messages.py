"""What a person is told of a text that cannot be read or understood: every message whole."""

from __future__ import annotations

import re

import pytest

from tests.language.malformed_plans import SLIPS, Slip
from tests.language.reading_texts import HEAD, told, understood

#: Words of programmers, and words that put the blame on somebody.
UNFIT = re.compile(
    r"\b(token|parse[rds]?|syntax|invalid|illegal|unexpected|expected|terminal|grammar|identifier|error|"
    r"traceback|exception|null|wrong|forgot(ten)?|failed|bad|you must|your mistake)\b",
    re.IGNORECASE,
)
#: Names of tokens are in capitals.
TOKEN_NAME = re.compile(r"\$|\b[A-Z]{4,}\b")


def test_there_are_enough_slips_and_each_is_another() -> None:
    assert len(SLIPS) >= 40
    assert len({slip.about for slip in SLIPS}) == len({slip.text for slip in SLIPS}) == len(SLIPS)


@pytest.mark.parametrize("slip", SLIPS, ids=lambda slip: slip.about)
def test_slip_is_told_in_whole_sentences(slip: Slip) -> None:
    assert told(slip.text) == list(slip.told)


@pytest.mark.parametrize("slip", SLIPS, ids=lambda slip: slip.about)
def test_message_is_for_a_person_at_a_bench(slip: Slip) -> None:
    for problem in understood(slip.text).problems:
        own_words = re.sub(
            r"“[^”]*”|such as: .*|as in: .*|Did you mean .*|U\+[0-9A-F]+", "", f"{problem.says} {problem.do}"
        )
        assert not UNFIT.search(own_words)
        assert not TOKEN_NAME.search(own_words)
        assert problem.says[-1] == "."
        assert problem.do
        assert len(problem.says) < 200
        assert len(problem.near) <= 4
        assert 0 <= problem.span.start <= problem.span.end <= len(slip.text)


def test_head_of_the_cases_has_no_slip_itself() -> None:
    assert told(HEAD) == []


def test_both_places_are_shown_where_a_name_is_given_twice() -> None:
    (problem,) = understood(f"{HEAD}part rail: stud, across, flat, 9 long\n").problems
    assert [(span.start, span.end) for span in problem.also_at] == [
        (HEAD.index("rail: stud"), HEAD.index("rail: stud") + 4)
    ]


def test_one_fault_that_all_copies_share_is_told_once() -> None:
    text = (
        f"{HEAD}part end for each of left, right: stud, deep, between leg.frnt-each and leg.back-each\nbuy: 3"
    )
    assert told(text) == [
        "end: The part “end” does not say how it is turned. → Add flat (wide face up) or on edge.",
        "3: The line stops after “3”. → What fits there: the name of a stock, as in: 2 stud 8 ft",
    ]
    turned = text.replace("stud, deep,", "stud, deep, on edge,")
    assert told(turned) == [
        "leg.frnt-each: No part is called “leg.frnt-left”. → "
        "Did you mean leg.front-left, leg.front-right, leg.back-left or end.left?",
        "3: The line stops after “3”. → What fits there: the name of a stock, as in: 2 stud 8 ft",
    ]


def test_unknown_names_wait_while_the_name_of_a_statement_is_lost() -> None:
    """The part could be the very one that is referred to."""
    lost = f"{HEAD}part shlf 1: stud, across, flat\njoin shelf to rail: screws #8 x 2\n"
    assert told(lost) == [
        "shlf 1: “shlf 1” is more than one word, and a name is one. → Join it with hyphens: part shlf-1"
    ]


def test_very_many_slips_are_told_up_to_a_hundred_and_then_counted() -> None:
    found = told(HEAD + "prat a: stud\n" * 20_000)
    assert len(found) == 101
    assert len(set(found[:-1])) == 1
    assert found[-1] == (
        "prat a: stud: From here on 19900 more things cannot be understood. → "
        "Mend those above first, then review the plan again."
    )


def test_long_words_are_cut_in_messages() -> None:
    (one,) = told(HEAD + "x" * 5_000)
    assert one.endswith(
        f": No statement begins with “{'x' * 60}…”. → A statement begins with plan, use, stock, outline, part, "
        "assembly, join, fit, finish, shop, load, room, restrain, step, buy, tools, limit, accept or try; "
        "a measure is written: height = 17 1/2"
    )


def test_long_circle_is_cut_in_its_middle() -> None:
    measures = "".join(f"h{number} = h{(number + 1) % 500}\n" for number in range(500))
    (one,) = told(HEAD + measures)
    assert one == (
        "h0: The measure “h0” is worked out from itself: h0 → h1 → h2 → h3 → h4 → h5 → … (500 in all) → h0. "
        "→ Give one of them as a number."
    )


def test_text_beyond_all_size_is_told_at_once() -> None:
    assert told("x" * 8_000_001) == [
        ": The plan is 8000001 characters long; dryfit reads up to 8000000. → Split it into several plans."
    ]
    assert told("a = 1\n" * 50_001) == [
        ": The plan has 50001 statements; dryfit reads up to 50000. → "
        "Split it into several plans, or use copies."
    ]
