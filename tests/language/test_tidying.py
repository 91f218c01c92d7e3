"""The tidy form: it says the same, keeps what the writer decides, and is one form."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from hypothesis import Phase, given, settings

from reviewer.language import tidying
from reviewer.language.lexer import SPELLINGS, Token
from reviewer.language.numbers import parsed
from reviewer.language.problems import ReadingProblem
from reviewer.language.reading import read
from reviewer.language.sharing import nothing_in_files
from reviewer.language.tables import tables
from reviewer.language.tidy_words import tidy_number, tidy_word
from reviewer.language.tidying import tidied
from tests.language.plan_texts import (
    EVERY_CLAUSE,
    PLANS,
    READABLE,
    TEXTS,
    UNREADABLE,
    comments_of,
    other_layouts,
)
from tests.language.spanless import declared, spanless
from tests.support import look_at

#: A whole plan cannot be made much smaller, so no time is spent on trying.
PHASES = (Phase.explicit, Phase.generate)
TITLE = 'plan "Bench" in inches\n'


def tidy(text: str) -> str:
    """The tidy form of a text that reads, which is its own tidy form and says the same."""
    found = tidied(text)
    assert found.problems == (), [problem.says for problem in found.problems]
    assert tidied(found.text).text == found.text
    assert declared(found.text) == declared(text)
    assert len(found.lines) == text.count("\n") + 1
    assert "".join(f"{line}\n" for line in found.lines if line is not None) == found.text
    return found.text


def tidy_line(line: str) -> str:
    """The tidy form of a lone statement."""
    return tidy(TITLE + line).removeprefix(TITLE).removesuffix("\n")


# ---------------------------------------------------------------- every plan there is


@pytest.mark.parametrize("name", READABLE)
def test_a_shipped_text_says_the_same(name: str) -> None:
    text = READABLE[name]
    assert comments_of(tidy(text)) == comments_of(text)


@pytest.mark.parametrize("name", [name for name in READABLE if name != EVERY_CLAUSE])
def test_a_shipped_text_is_judged_the_same(name: str) -> None:
    text = READABLE[name]
    before, after = (look_at(each).judgement for each in (text, tidied(text).text))
    assert (before is None) == (after is None)
    if before and after:
        assert spanless(after) == spanless(before)


@pytest.mark.parametrize("name", UNREADABLE)
def test_a_text_that_does_not_read_is_left_alone(name: str) -> None:
    found = tidied(TEXTS[name])
    assert found.text == TEXTS[name]
    assert found.problems == read(TEXTS[name], nothing_in_files).problems != ()


@pytest.mark.parametrize("path", sorted(PLANS.glob("*.plan")), ids=lambda path: path.stem)
def test_our_own_plans_are_tidy(path: Path) -> None:
    text = path.read_text(encoding="utf-8")
    assert tidied(text).text == text


@settings(max_examples=120, deadline=None, derandomize=True, phases=PHASES)
@given(other_layouts(lines=True))
def test_any_layout_says_the_same(texts: tuple[str, str]) -> None:
    text, other = texts
    assert declared(other) == declared(text)  # else the layout drawn is no layout of the same words
    out = tidy(other)
    assert declared(out) == declared(text)
    assert comments_of(out) == comments_of(other.removeprefix("\ufeff"))
    assert not re.search(r"[\t\r\u00a0\ufeff“”½]|[ ]\n|\n\n\n|^\n|\n\n$", out)


@settings(max_examples=120, deadline=None, derandomize=True, phases=PHASES)
@given(other_layouts(lines=False))
def test_layouts_that_differ_in_blanks_and_spelling_have_one_form(texts: tuple[str, str]) -> None:
    text, other = texts
    assert tidy(other) == tidied(text).text


# ---------------------------------------------------------------- words


@pytest.mark.parametrize(
    ("line", "form"),
    [
        ("H=( 3+k )*2", "h = (3 + k) * 2"),
        ("h = 10 -4", "h = 10 - 4"),
        ("h = k/2", "h = k / 2"),
        ("h = 1/2/k", "h = 1/2 / k"),
        ("stock s :2×4  Spruce–Pine-Fir ,8'  at 4.10", "stock s: 2x4 spruce-pine-fir, 8 ft at 4.10"),
        ("stock s: 2x4 pine, moisture 12%", "stock s: 2x4 pine, moisture 12 %"),
        ("part a: s, Centered across on b", "part a: s, centred across on b"),
        ('part a: s, front 2" in front of b', "part a: s, front 2 in in front of b"),
        ("part a: s, front 2 in front of b", "part a: s, front 2 in front of b"),
        ('part a: s, 1 copies every 9" up', "part a: s, 1 copy every 9 in up"),
        ("part a: s, 3 copy every 9 inches up", "part a: s, 3 copies every 9 in up"),
        ("part in: s, flush with Top of TOP", "part in: s, flush with top of top"),
        ("join a to *: screw #8x2½", "join a to *: screws #8 x 2 1/2"),
        ("join a to b: 2 each,miter", "join a to b: 2 each, mitre"),
        ("finish f: on a, 1 coats of oil, dry 1 hours", "finish f: on a, 1 coat of oil, dry 1 h"),
        ("finish f: on a, 2 coat of oil, dry 30 minutes", "finish f: on a, 2 coats of oil, dry 30 min"),
        ("finish f: on a, 1 coat of oil, dry 1 days", "finish f: on a, 1 coat of oil, dry 1 day"),
        ("finish f: on a, 1 coat of oil, dry 1 1/2 day", "finish f: on a, 1 coat of oil, dry 1 1/2 days"),
        ("finish f: on a, 1 coat of oil, dry 1/2 days", "finish f: on a, 1 coat of oil, dry 1/2 day"),
        ("fit a: 1 hinges 2½, 4 caster at 3", "fit a: 1 hinge 2 1/2, 4 castors at 3"),
        ("fit a: 1 caster, leveler", "fit a: 1 castor, levellers"),
        ("part a: s, tilted 1 degrees toward front", "part a: s, tilted 1 degree towards front"),
        ('step "Cut  It" :cut a,wait 2 hours', 'step "Cut  It": cut a, wait 2 h'),
        ("try h:3 ,from 3 to 9 by  2", "try h: 3, from 3 to 9 by 2"),
        ("load a: 40 kgs", "load a: 40 kg"),
        ("load a: 40 lbs per ft", "load a: 40 lb per foot"),
        ("load a: 40 kg per m", "load a: 40 kg per metre"),
        ("load a: 40 lbs per square ft", "load a: 40 lb per square foot"),
        ("room: doorway 30x80", "room: doorway 30 x 80"),
        ("limit sag-ratio :360", "limit sag-ratio: 360"),
        ("accept a on b Because “It’s  ×½ Fine, so”", 'accept a on b because "It’s  ×½ Fine, so"'),
    ],
)
def test_words(line: str, form: str) -> None:
    assert tidy_line(line) == form


@pytest.mark.parametrize(
    ("text", "form"),
    [
        ("2 1/2", "2 1/2"),
        ("2-1/2", "2 1/2"),
        ("2   1/2", "2 1/2"),
        ("2½", "2 1/2"),
        ("2 ½", "2 1/2"),
        ("⅞", "7/8"),
        ("2.50", "2.50"),
        ('5"', "5 in"),
        ("5inch", "5 in"),
        ("5 inches", "5 in"),
        ("5'", "5 ft"),
        ("5 feet", "5 ft"),
        ("5 foot", "5 ft"),
        ("5' 5\"", "5 ft 5 in"),
        ("5'5½\"", "5 ft 5 1/2 in"),
        ("5 ft 5", "5 ft 5"),
        ("18mm", "18 mm"),
        ("1.2 metres", "1.2 m"),
        ("2 meter", "2 m"),
        ("3cm", "3 cm"),
    ],
)
def test_numbers(text: str, form: str) -> None:
    assert tidy_number(text) == form
    assert parsed(form) == parsed(text)
    assert tidy_number(form) == form


@pytest.mark.parametrize("sign", "¼½¾⅐⅑⅒⅓⅔⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞")
def test_fractions_in_one_character_keep_their_amount(sign: str) -> None:
    assert re.fullmatch(r"2 \d+/\d+", tidy_number(f"2{sign}"))
    assert parsed(tidy_number(f"2{sign}")) == parsed(f"2{sign}")


def test_a_unit_of_the_title_in_letters() -> None:
    assert tidy('plan "A" in M\n') == 'plan "A" in m\n'
    assert tidy('plan "A" in centimeters\n') == 'plan "A" in centimetres\n'


def test_title_is_kept_as_written() -> None:
    assert tidy("Plan  “The  BENCH’s ½” IN  mm") == 'plan "The  BENCH’s ½" in millimetres\n'


# ---------------------------------------------------------------- lines and comments


def test_line_ends_of_the_writer_stay_and_do_for_commas() -> None:
    text = "part a:\n  s,across,\n\tflat,   # lies\n on edge\n        between b\n  and c\nload a,\n b: books"
    assert tidy(TITLE + text) == TITLE + (
        "part a:\n    s, across\n    flat  # lies\n    on edge\n    between b\n    and c\nload a\n    b: books\n"
    )


def test_a_comma_stays_where_the_next_line_would_go_on_without_it() -> None:
    text = "load a,\n    to, b: books\n"
    assert tidy(TITLE + text) == TITLE + text
    assert tidy(TITLE + "load a,\n  b: books") == TITLE + "load a\n    b: books\n"


def test_empty_lines() -> None:
    text = f"\n  \n{TITLE}\n\n\t\nh = 3\n\nk = 4\npart a: s\n\n\n    flat\n\n\n"
    assert tidy(text) == f"{TITLE}\nh = 3\n\nk = 4\npart a: s\n\n    flat\n"


@pytest.mark.parametrize("end", ["\n", "\r\n", "", "\n\n\n", "\r\n\r\n", " ", "\t\r\n  "])
def test_one_line_end_at_the_end(end: str) -> None:
    assert tidy("\ufeff" + TITLE.replace("\n", "\r\n") + "h = 3" + end) == TITLE + "h = 3\n"


def test_comments_behind_words() -> None:
    text = "h = 3 #a\nk = 4      #  b\n\nm = 5 # c \t \n#8 of them\n#\n#-- d\n"
    assert tidy(TITLE + text) == TITLE + ("h = 3  # a\nk = 4  #  b\n\nm = 5  # c\n# 8 of them\n#\n#-- d\n")


def test_comments_in_one_column_stay_in_one() -> None:
    text = "height = 3   # a\nh=4          # b\n             # and on\nk = 5   # c\nm = 6\nn = 7        # d\n"
    assert tidy(TITLE + text) == TITLE + (
        "height = 3  # a\nh = 4       # b\n            # and on\nk = 5  # c\nm = 6\nn = 7  # d\n"
    )


def test_comments_in_one_column_that_are_no_neighbours_do_not_wait_for_each_other() -> None:
    text = "h = 3    # a\n\nmmm = 5  # b\nn = 3\nkk = 5   # c\n         # d\n"
    assert tidy(TITLE + text) == TITLE + ("h = 3  # a\n\nmmm = 5  # b\nn = 3\nkk = 5  # c\n        # d\n")


def test_odd_blanks_in_comments_are_plain() -> None:
    assert tidy(TITLE + "h = 3 # a\tb\u2028c\x0bd\r\n") == TITLE + "h = 3  # a b c d\n"


def test_tabs_before_comments_count_as_far_as_they_reach() -> None:
    assert tidy(TITLE + "hh = 3\t# a\nh = 3\t# b\n") == TITLE + "hh = 3  # a\nh = 3   # b\n"


def test_comments_alone_go_with_the_level_they_were_written_nearest_to() -> None:
    text = (
        "part a: s\n # a\n  # b\n  flat\n # c\n        # d\n# e\n  # f\npart b: s\n      # g\nh = 3\n   # h\n"
    )
    assert tidy(TITLE + text) == TITLE + (
        "part a: s\n    # a\n    # b\n    flat\n    # c\n    # d\n# e\n    # f\npart b: s\n# g\nh = 3\n# h\n"
    )


def test_members_of_an_assembly_stand_one_level_in_and_their_clauses_two() -> None:
    text = """\
assembly drawer: 14 across
  5 tall
     # a
     part front:ply,
     flat
            # b
     assembly tray: 3 across
      2 deep
          part a: ply
           flat
          # c
     # d
  join front to tray.a: dovetail
     glue
 # e
# f
h = 3
"""
    assert tidy(TITLE + text) == TITLE + (
        "assembly drawer: 14 across\n    5 tall\n    # a\n    part front: ply\n        flat\n        # b\n"
        "    assembly tray: 3 across\n        2 deep\n        part a: ply\n            flat\n        # c\n"
        "    # d\n    join front to tray.a: dovetails\n        glue\n    # e\n# f\nh = 3\n"
    )


def test_a_quotation_over_two_lines_is_kept_as_written() -> None:
    text = "accept a   because 'x'\n".replace("'x'", '"it is\n\t # so,  \n    5"   #  b')
    assert tidy(TITLE + text) == TITLE + 'accept a because "it is\n\t # so,  \n    5"  #  b\n'


# ---------------------------------------------------------------- what must not happen


def test_a_form_that_would_read_differently_is_given_up(monkeypatch: pytest.MonkeyPatch) -> None:
    text = TITLE + "h = 3  \n"
    monkeypatch.setattr(tidying, "tidy_word", lambda token, before, said: token[1].replace("3", "4"))
    found = tidied(text)
    assert found.text == text
    assert [problem.says for problem in found.problems] == [
        "This plan would read differently in the tidy form, so it stays as it is."
    ]


def test_words_that_nobody_heard_are_not_lost(monkeypatch: pytest.MonkeyPatch) -> None:
    heard = tidying._heard

    def hard_of_hearing(text: str) -> tuple[list[Token], tuple[ReadingProblem, ...]]:
        tokens, problems = heard(text)
        return [token for token in tokens if token[1] != "flat"], problems

    monkeypatch.setattr(tidying, "_heard", hard_of_hearing)
    text = TITLE + "part a: s, flat  \n"
    assert tidied(text).text == text
    assert tidied(text).problems != ()


def test_every_keyword_in_any_spelling_comes_out_as_one_that_reads() -> None:
    words = {**{word: word for word in tables().words}, **SPELLINGS}
    number = ("NUMBER", "1", 0, 1)
    for word in words.values():
        for before in (None, number):
            out = tidy_word((word.upper(), word, 2, 3), before, "")
            assert words[out.lower()] == word  # capitals read as small letters
