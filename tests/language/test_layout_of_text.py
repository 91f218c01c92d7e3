"""The layout pass: one character out for each one in, comments blanked, blocks joined, slips noticed."""

from __future__ import annotations

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from reviewer.language.layout import laid_out
from reviewer.language.reading import read
from reviewer.language.source import Source, Span
from tests.language.reading_texts import HEAD, told, understood

LINES = st.text(
    st.sampled_from(" \t\r\n\"'#,:;()x×½“”‘’–−İıßΣςﬁ🪵\ufeff\u00a0\u200b\u2028\x00\x85aAbBpPrRtT1279/.*+-=")
)


@settings(max_examples=600, deadline=None, derandomize=True)
@given(st.one_of(st.text(), LINES))
@example("")
@example('\ufeffplan "İ" in inches\r\n\tpart 🪵: a # b\r\n')
def test_one_character_out_for_each_one_in(text: str) -> None:
    layout = laid_out(text)
    assert len(layout.text) == len(text)
    assert "\n" not in layout.text
    last = 0
    for start, end, _ in layout.statements:
        assert last <= start < end <= len(text)
        assert not layout.text[start].isspace()
        last = end
    for problem in layout.problems:
        assert 0 <= problem.span.start <= problem.span.end <= len(text)


def words_of(text: str) -> list[str]:
    layout = laid_out(text)
    return [
        " ".join(layout.text[start:end].split()).replace(" ,", ",") for start, end, _ in layout.statements
    ]


def test_statements_are_split_at_the_margin_and_blocks_joined_by_commas() -> None:
    text = "part a: b\n    c\n\n\n    d,\n    e\npart f:\n    g\nh = 3"
    assert words_of(text) == ["part a: b, c, d, e", "part f: g", "h = 3"]


@pytest.mark.parametrize("word", ["and", "to", "because"])
def test_a_block_line_goes_on_with_the_line_before(word: str) -> None:
    assert words_of(f"x a:\n  b\n  {word} c") == [f"x a: b {word} c"]


def test_a_block_line_of_a_name_that_only_begins_so_is_a_clause_of_its_own() -> None:
    assert words_of("x a:\n  b\n  android c") == ["x a: b, android c"]


def test_comments_and_gauges() -> None:
    text = '# a title\nx a: #8 b # c #8\n  # 8 of them\n  d #9 e\n  f # "g\nh: "i # j" # k'
    assert words_of(text) == ["x a: #8 b, d #9 e, f", 'h: "i # j"']


def test_a_mark_for_inches_opens_no_quotation() -> None:
    assert words_of('h = 5" # "the height"') == ['h = 5"']
    assert words_of('h = 5½" # x') == ['h = 5½"']


def test_look_alikes_are_made_plain() -> None:
    assert words_of("PART A:\u00a0“B” ‘C’ 2×4 3 − 4 5–6 7⁄8，D：…") == [
        "part a: \"b\" 'c' 2x4 3 - 4 5-6 7/8,d:."
    ]


def test_last_line_without_a_new_line_and_windows_line_ends_read_alike() -> None:
    tidy = HEAD + "height = 3"
    plans = [
        understood(text).plan for text in (tidy, tidy + "\n", tidy.replace("\n", "\r\n"), "\ufeff" + tidy)
    ]
    assert plans[0] is not None
    shown = [
        plan and [(part.name, part.long, [r[:5] for r in part.relations]) for part in plan.parts.values()]
        for plan in plans
    ]
    assert shown[0] is not None
    assert shown[0] == shown[1] == shown[2] == shown[3]


def test_tabs_set_lines_in() -> None:
    assert told(HEAD.replace("    in each", "\tin each")) == []


def test_capitals_read_and_titles_keep_theirs() -> None:
    plan = understood(HEAD.replace("part rail: stud", "Part RAIL: Stud").replace("Bench", "The BENCH")).plan
    assert plan is not None
    assert plan.title == "The BENCH"
    assert "rail" in plan.parts


def test_reasons_keep_their_capitals() -> None:
    text = HEAD + 'accept open-joint on rail because "Asked for by Ada"\n'
    text += 'join leg.* to rail: none because "Leans there; İ"\n'
    plan = understood(text).plan
    assert plan is not None
    assert plan.waivers[0].reason == "Asked for by Ada"
    assert plan.joins[0].reason == "Leans there; İ"


@pytest.mark.parametrize(
    "line",
    [
        "part a: stud, across",
        "stock a: 2x4 pine",
        "outline a: 3 across",
        "finish a: on b",
        "limit a: 3",
        "join a to b: biscuits",
        "load a: books",
        "restrain a to wall: strap",
        "room: indoors",
        "room hall: indoors",
        "buy: 2 stud 8 ft",
        "tools: drill",
        'accept a on b because "c"',
        'accept a because "c"',
        "height = 3",
        'plan "a" in inches',
    ],
)
def test_a_statement_set_in_is_noticed_and_still_read(line: str) -> None:
    found = read(f"{HEAD}    {line}\n")
    (problem,) = found.problems
    assert problem.span == Span(len(HEAD) + 4, len(HEAD) + 4 + len(line))
    assert problem.says == "This line begins a statement of its own, but it stands in from the margin."
    assert len(found.statements) == 6


@pytest.mark.parametrize(
    ("words", "do"),
    [
        ("2,5", "Write 2.5 for one number, or 2, 5 with a space for two."),
        ("12,75", "Write 12.75 for one number, or 12, 75 with a space for two."),
    ],
)
def test_a_comma_inside_a_number_is_told(words: str, do: str) -> None:
    (problem,) = laid_out(f"h = {words}").problems
    assert (problem.span, problem.do) == (Span(4, 4 + len(words)), do)


@pytest.mark.parametrize("text", ["sand 80,120,150", 'because "2,5"', "sand 80, 120", "a # 2,5", '5", 6'])
def test_a_comma_that_is_no_slip_is_not_told(text: str) -> None:
    assert laid_out(text).problems == ()


def test_a_decimal_comma_after_a_quotation_is_told() -> None:
    (problem,) = laid_out('x "2,5" and 2,5').problems
    assert problem.span == Span(12, 15)


def test_places_count_code_points_and_lines_from_one() -> None:
    source = Source("t", "a🪵b\r\n\tc\nlast")
    assert source.place(0) == (1, 1)
    assert source.place(2) == (1, 3)
    assert source.place(source.text.index("c")) == (2, 2)
    assert source.place(len(source.text)) == (3, 5)
    assert source.place(10_000) == (3, 5)
    assert source.line(1) == "a🪵b"
    assert source.line(3) == "last"
    assert source.line(4) == ""
