"""No text makes tidying raise, hang, take more than its share of time, or change what is said."""

from __future__ import annotations

import sys
from types import FrameType

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from reviewer.language.reading import read
from reviewer.language.sharing import nothing_in_files
from reviewer.language.tidying import tidied
from tests.language.reading_texts import HEAD
from tests.language.spanless import declared
from tests.language.test_hostile_text import LINES, WILD, WORDS, bounded, mutated

ODD = st.text(
    st.sampled_from(
        " \t\r\n\"'#,:;()x×½“”‘’–−İıßΣςﬁ🪵\ufeff\u00a0\u200b\u2028\x00\x1c\x85aAbBpPrRtT1279/.*+-="
    ),
    max_size=60,
)
TITLE = 'plan "a" in inches\n'


def gone_through(text: str) -> None:
    """Tidies a text, with what must hold of any."""
    found = tidied(text)
    if found.problems:
        assert found.text == text
        assert found.problems == read(text, nothing_in_files).problems
        return
    assert declared(found.text) == declared(text)
    assert tidied(found.text).text == found.text
    assert found.text.count("#") == text.count("#")


@settings(max_examples=400, deadline=None, derandomize=True)
@given(mutated())
def test_mutated_bench(text: str) -> None:
    gone_through(text)


@settings(max_examples=400, deadline=None, derandomize=True)
@given(st.lists(st.sampled_from([*WORDS, "a", "b", "stud", "3", "12"]), max_size=30))
def test_words_in_any_order(words: list[str]) -> None:
    gone_through(HEAD + " ".join(words))


@settings(max_examples=600, deadline=None, derandomize=True)
@given(ODD, ODD, ODD)
def test_odd_characters(one: str, two: str, three: str) -> None:
    gone_through(one)
    gone_through(f"{TITLE}h = 3 {one}")
    gone_through(f"{TITLE}accept a because “{one}”{two}\n # {three}\nh={two}3")
    gone_through(f"{one}\n#{two}\n{TITLE}part a: b # {two}\n  c # {three}\n {one}\n  d{two}")


@settings(max_examples=400, deadline=None, derandomize=True)
@given(st.lists(st.sampled_from(LINES), max_size=30))
def test_lines_of_the_bench_in_any_order(lines: list[str]) -> None:
    gone_through(TITLE + "\n".join(lines))


@pytest.mark.parametrize("about", WILD)
def test_wild_text_comes_to_an_end(about: str) -> None:
    depth = sys.getrecursionlimit()
    with bounded():
        found = tidied(f"{HEAD}{WILD[about]}")
    assert sys.getrecursionlimit() == depth
    assert found.problems == () or found.text == f"{HEAD}{WILD[about]}"


def calls(text: str) -> int:
    """How many calls of functions a tidying takes."""
    count = 0

    def counted(frame: FrameType, event: str, about: object) -> None:
        nonlocal count
        count += event in ("call", "c_call")

    before = sys.getprofile()
    sys.setprofile(counted)
    try:
        tidied(text)
    finally:
        sys.setprofile(before)
    return count


@pytest.mark.parametrize(
    "line",
    [
        "part a@: s, flat,  # b\n  # c\n\n  9 long",
        "# a",
        "h@ = 3  # a",
        "part a: s" + ", flat" * 9 + "\n    flat" * 9,
    ],
)
def test_twice_the_statements_take_twice_the_work(line: str) -> None:
    few, many = (HEAD + "".join(line.replace("@", str(n)) + "\n" for n in range(size)) for size in (100, 200))
    tidied(few)  # so that what is kept once made is made
    assert tidied(many).problems == ()
    assert calls(many) < 2.1 * calls(few)


def test_ten_thousand_statements_come_to_an_end() -> None:
    text = HEAD + "".join(f"part a{n}:  stud,flat   # a\n  # b\n  9 long\n" for n in range(10_000))
    with bounded():
        assert tidied(text).problems == ()
