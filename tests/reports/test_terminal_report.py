"""The terminal report, whole: what a pipe gets is pinned to the byte."""

from __future__ import annotations

import io
import re
import subprocess
import sys
from dataclasses import replace

import pytest
from made_by_hand import bench_report, bookcase_report, clean_bench_report, plan_with, set_out

from reviewer.findings import Edit, Finding, Severity
from reviewer.judging import Judgement
from reviewer.language.problems import FileProblem, ReadingProblem
from reviewer.language.source import Source, Span
from reviewer.reports.content import Report, unread
from reviewer.reports.excerpt import cells
from reviewer.reports.plain_text import Look, wants_colour, width_for, wrapped
from reviewer.reports.terminal import render_terminal
from reviewer.review import Review
from reviewer.units import length
from reviewer.workshop.assumptions import Assumption

BENCH = """\
plans/bench.plan: “Reading bench”

1 warning where someone can be hurt: this comes first

plans/bench.plan:31:14: warning: tips
 !  The bench tips when someone sits on the end of seat.1: the margin is 0.82.
      31 | load seat.*: 2 people seated
         |              ^^^^^^^^^^^^^^^
    working  one person 225 lb, seat past the leg 3 in; moment holding / moment tipping
             gives margin 0.82; limit: least margin 1.5 (made up for the test)
    next     Move the legs out until the seat runs 2 in past them.

2 errors: do not build this

plans/bench.plan:13:46: error: cut-does-not-fit
 X  rail.front is cut 41 1/2 in long, but it has 35 in to fill: 6 1/2 in too much.
      13 |     between leg.front-left and leg.front-right, cut 41 1/2
         |                                                 ^^^^^^^^^^
    also at plans/bench.plan:10:1
      10 | part leg: stud, upright, facing front, as tall as frame
         | ^^^^^^^^
    working  stated cut 41 1/2 in, space between the legs 35 in; stated cut - space
             gives too long by 6 1/2 in; limit: allowed 1/32 in (common practice, no
             source)
    next     Cut it 35 in long.
    plan     write “cut 35” in place of “cut 41 1/2” (plans/bench.plan:13:46)

plans/bench.plan:23:31: error: screw-breaks-through
 X  The screws into seat.1 come out of the far face by 1/2 in.
      23 | join seat.* to rail.*, end.*: screws #8 x 2 1/2, from below, every 10
         |                               ^^^^^^^^^^^^^^^^^
    next     Use screws 2 in long.

1 note: worth knowing

plans/bench.plan:6:1: note: waste-high
 -  23 % of the wood bought ends up as offcuts.

1 accepted with a reason

 ~  plans/bench.plan:21:33: open-joint on seat.1 and seat.2: “the gap between the seat
    planks is wanted”

Caution: rags-self-heat
    Rags, pads and brushes with stain gel on them heat up by themselves and can set a
    heap or a bin on fire within hours. Spread rags flat outdoors in a single layer
    until hard, or drown them in a lidded metal can; never in a pile or ordinary bin.
    Local waste rules apply. The label, local rules and licensed practice come first.

2 things to mend before you buy wood; 1 to think over; 1 note; 1 accepted with a reason.
"""


def told(
    text: str, start: int, end: int, *, name: str = "a.plan", says: str = "It is wrong.", width: int = 88
) -> str:
    """The report of one finding on a plan of that text, without its heading and its verdict."""
    source = Source(name, text)
    finding = Finding((), Span(start, end), says, "Mend it.").stamped("out-of-pair", "fit", Severity.ERROR)
    review = Review(source, plan_with(source, title="t"), set_out(), {})
    shown = render_terminal(
        [Report(source, review=review, judgement=Judgement((finding,), (), ()))], width=width
    )
    return shown.split("do not build this\n\n")[1].rsplit("\n\n", 1)[0]


def test_bench_whole() -> None:
    assert render_terminal([bench_report()]) == BENCH


def test_tab_runs_to_its_stop_and_columns_count_code_points() -> None:
    assert told("part a\n\tab\tcut 5\n", 11, 16) == (
        "a.plan:2:5: error: out-of-pair\n"
        " X  It is wrong.\n"
        "       2 |     ab  cut 5\n"
        "         |         ^^^^^\n"
        "    next     Mend it."
    )


def test_tab_under_the_mark_is_marked_as_wide_as_it_is_shown() -> None:
    assert told("a\tb", 0, 3).splitlines()[2:4] == ["       1 | a   b", "         | ^^^^^"]


def test_wide_and_combining_characters() -> None:
    # East Asian Width (UAX 11): the hammer and the ideographs are W, two cells; U+0301 combines, no cell.
    text = "# 🔨 木工 cafe\u0301 cut 5"
    start = text.index("cut 5")
    assert told(text, start, start + 5).splitlines() == [
        "a.plan:1:14: error: out-of-pair",
        " X  It is wrong.",
        "       1 | # 🔨 木工 cafe\u0301 cut 5",
        "         |                ^^^^^",
        "    next     Mend it.",
    ]
    assert told(text, text.index("🔨"), text.index("🔨") + 1).splitlines()[3] == "         |   ^^"


def test_windows_line_ends_do_not_reach_the_terminal() -> None:
    shown = told("one\r\ntwo three\r\n", 9, 14)
    assert shown.splitlines()[0] == "a.plan:2:5: error: out-of-pair"
    assert shown.splitlines()[2:4] == ["       2 | two three", "         |     ^^^^^"]
    assert "\r" not in shown


def test_empty_file_and_last_line_without_an_end() -> None:
    assert told("", 0, 0).splitlines()[0] == "a.plan:1:1: error: out-of-pair"
    assert told("", 0, 0).splitlines()[2:4] == ["       1 |", "         | ^"]
    assert told("a\nbc", 3, 4).splitlines()[0] == "a.plan:2:2: error: out-of-pair"
    assert told("a\nbc", 3, 4).splitlines()[2:4] == ["       2 | bc", "         |  ^"]
    assert told("a\nbc", 4, 4).splitlines()[2:4] == ["       2 | bc", "         |   ^"]


def test_words_over_several_lines_say_how_many_more() -> None:
    assert told("aa\n bb\ncc\n", 1, 9).splitlines()[2:4] == [
        "       1 | aa",
        "         |  ^ and 2 lines more",
    ]


def test_a_line_end_under_the_mark_is_not_a_line_more() -> None:
    assert told("aa\nbb\n", 0, 3).splitlines()[2:4] == ["       1 | aa", "         | ^^"]


def test_long_lines_are_cut_in_sight_around_the_words() -> None:
    text = "x" * 200 + "HERE" + "y" * 200
    line, mark = told(text, 200, 204, width=60).splitlines()[2:4]
    assert line == "       1 | …" + "x" * 12 + "HERE" + "y" * 31 + "…"
    assert mark == "         | " + " " * 13 + "^^^^"
    assert cells(line) == 60


def test_words_longer_than_the_line_are_cut_in_sight() -> None:
    line, mark = told("z" * 300, 0, 300, width=50).splitlines()[2:4]
    assert line == "       1 | " + "z" * 38 + "…"
    assert mark == "         | " + "^" * 39


def test_controls_and_reordering_marks_are_shown_not_obeyed() -> None:
    shown = told(
        "a\x1b[31m\u202eb", 0, 1, says="Part {{x\x1b]0;y\x07 is off.".replace("{{", ""), name="p\x1b.plan"
    )
    assert "\x1b" not in shown
    assert "\u202e" not in shown
    assert "p␛.plan:1:1" in shown
    assert "a␛[31m\ufffdb" in shown
    assert "x␛]0;y␇ is off." in shown


def test_text_problems_are_told_like_errors() -> None:
    source = Source("a.plan", "part leg: stdu\npart leg: stud\n")
    problem = ReadingProblem(
        Span(10, 14),
        "There is no stock called stdu.",
        "Write a stock's name.",
        ("stud", "stub"),
        (Span(20, 23),),
    )
    assert render_terminal([Report(source, problems=(problem,))]) == (
        "a.plan\n"
        "\n"
        "a.plan:1:11: error: text not read\n"
        " X  There is no stock called stdu.\n"
        "       1 | part leg: stdu\n"
        "         |           ^^^^\n"
        "    also at a.plan:2:6\n"
        "       2 | part leg: stud\n"
        "         |      ^^^\n"
        "    near     known here: stud and stub\n"
        "    next     Write a stock's name.\n"
        "\n"
        "1 thing to mend before you buy wood; the plan is not reviewed until the text can be\n"
        "read.\n"
    )


def test_a_file_that_gave_no_text_has_no_place() -> None:
    problem = FileProblem("gone.plan", "There is no file gone.plan here.", "Check the name.")
    assert render_terminal([unread(problem)]) == (
        "gone.plan\n"
        "\n"
        "gone.plan: error: file not read\n"
        " X  There is no file gone.plan here.\n"
        "    next     Check the name.\n"
        "\n"
        "1 thing to mend before you buy wood; the plan is not reviewed until the text can be\n"
        "read.\n"
    )


def test_clean_plan_says_how_many_rules_looked() -> None:
    shown = render_terminal([clean_bench_report()])
    assert shown.startswith("plans/bench.plan: “Reading bench”\n\nCaution: rags-self-heat\n")
    assert shown.endswith("come first.\n\nNothing to mend: 6 rules looked at this plan.\n")


def test_only_warnings_need_not_be_mended() -> None:
    report = bench_report()
    assert report.judgement
    some = tuple(f for f in report.judgement.findings if f.weight is Severity.WARNING)
    shown = render_terminal([replace(report, judgement=Judgement(some, (), ("tips",)))])
    assert shown.splitlines()[-1] == "Nothing that must be mended, 1 thing to think over before you buy wood."


def test_several_plans_share_one_verdict() -> None:
    shown = render_terminal([bench_report(), bookcase_report(), clean_bench_report()])
    assert shown.endswith(
        "\n\n3 things to mend before you buy wood; 2 to think over; 1 note; 1 accepted with a reason;\n"
        "2 of 3 plans have something to mend.\n"
    )
    assert shown.index("plans/bench.plan: “Reading bench”") < shown.index("plans/bookcase.plan: “Bookcase")


def test_no_rule_at_all_is_said_not_passed() -> None:
    report = bench_report(judgement=Judgement((), (), ()))
    last = render_terminal([report]).splitlines()[-1]
    assert last == "Nothing was judged: no rule looked at this plan."


def noted(count: int) -> Report:
    report = bench_report()
    source = report.source
    notes = tuple(
        Finding((f"p{n}",), Span(n, n + 1), f"Thing {n}.", "Do it.").stamped(
            "no-pilot", "fasteners", Severity.NOTE
        )
        for n in range(count)
    )
    return Report(source, review=report.review, judgement=Judgement(notes, (), ("no-pilot",)))


def test_many_notes_of_a_rule_are_counted_and_full_tells_each() -> None:
    assert " -  4 notes from no-pilot: the full review lists them.\n" in render_terminal([noted(4)])
    assert "Thing 2." not in render_terminal([noted(4)])
    assert all(f"Thing {n}." in render_terminal([noted(4)], full=True) for n in range(4))
    assert all(f"Thing {n}." in render_terminal([noted(3)]) for n in range(3))


def test_assumptions_are_counted_and_full_tells_each() -> None:
    taken = Assumption(
        "seat.1", "pilot holes are {value} wide", length(25.4 / 8), "a made-up table", "pilot 1/8", Span(0, 4)
    )
    report = replace(clean_bench_report(), assumptions=(taken,))
    short, full = render_terminal([report]), render_terminal([report], full=True)
    assert "1 thing was taken for granted where the plan is silent; the full review lists them.\n" in short
    assert "pilot holes" not in short
    assert (
        " -  seat.1: pilot holes are 1/8 in wide (a made-up table). To say otherwise, write:\n"
        "    pilot 1/8.\n"
    ) in full


def test_edits_in_words() -> None:
    report = bench_report()
    assert report.judgement
    first = report.judgement.findings[0]

    def line(edit: Edit) -> str:
        changed = replace(report, judgement=Judgement((replace(first, edit=edit),), (), ("x",)))
        return next(row for row in render_terminal([changed]).splitlines() if row.startswith("    plan"))

    assert line(Edit(first.at, "")) == "    plan     take out “cut 41 1/2” (plans/bench.plan:13:46)"
    after = Span(first.at.end, first.at.end)
    assert line(Edit(after, ", glue pva")) == "    plan     add “, glue pva” (plans/bench.plan:13:56)"


def test_safety_comes_first_however_heavy() -> None:
    report = bench_report()
    assert report.judgement
    cut, screw, tips, _ = report.judgement.findings
    hurts = replace(tips, weight=Severity.NOTE)
    ordered = replace(report, judgement=Judgement((cut, screw, hurts), (), ("x",))).findings
    assert [finding.rule for finding in ordered] == ["tips", "cut-does-not-fit", "screw-breaks-through"]


ANSI = re.compile("\x1b\\[[0-9;]*m")


def test_colour_adds_nothing_but_colour() -> None:
    plain = render_terminal([bench_report(), bookcase_report()])
    painted = render_terminal([bench_report(), bookcase_report()], colour=True)
    assert "\x1b" not in plain
    assert "\x1b[1;31m" in painted
    assert ANSI.sub("", painted) == plain


class Screen(io.StringIO):
    def isatty(self) -> bool:
        return True


@pytest.mark.parametrize(
    ("stream", "environ", "forced", "wanted"),
    [
        (io.StringIO(), {}, None, False),
        (Screen(), {}, None, True),
        (Screen(), {"NO_COLOR": "1"}, None, False),
        (Screen(), {"NO_COLOR": ""}, None, True),  # set but empty does not count
        (Screen(), {"TERM": "dumb"}, None, False),
        (io.StringIO(), {"NO_COLOR": "1"}, True, True),
        (Screen(), {}, False, False),
    ],
)
def test_who_gets_colour(
    stream: io.StringIO, environ: dict[str, str], forced: bool | None, wanted: bool
) -> None:
    assert wants_colour(stream, environ, forced) is wanted


def test_a_pipe_is_always_88_wide(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("COLUMNS", "61")
    assert width_for(io.StringIO()) == 88
    assert width_for(Screen()) == 61
    monkeypatch.setenv("COLUMNS", "12")
    assert width_for(Screen()) == 40


@pytest.mark.parametrize("width", [40, 60, 88, 120])
def test_nothing_is_wider_than_asked(width: int) -> None:
    lines = render_terminal([bench_report(), bookcase_report()], width=width, full=True).splitlines()
    assert len(lines) > 40
    heads = re.compile(r"plans/\w+\.plan(:\d+:\d+: |: “)|    also at |.* and \d+ lines? more$")
    assert [line for line in lines if cells(line) > width and not heads.match(line)] == []


def test_a_number_stays_with_its_fraction_and_unit() -> None:
    assert wrapped("it takes 25 fl oz of it", 14) == ["it takes", "25 fl oz of it"]
    assert wrapped("over all 49.3 sq ft of it", 15) == ["over all", "49.3 sq ft of", "it"]
    assert wrapped("cut it to 41 1/2 in today", 17) == ["cut it to", "41 1/2 in today"]
    assert wrapped("in the year 12 indeed", 14) == ["in the year 12", "indeed"]


def test_terminal_loads_no_template_engine() -> None:
    code = "import sys, reviewer.reports.terminal; print([m for m in ('jinja2', 'html') if m in sys.modules])"
    seen = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True).stdout
    assert seen == "[]\n"


def test_look_without_colour_paints_nothing() -> None:
    assert Look().painted("word", "31") == "word"
    assert Look(colour=True).painted("", "31") == ""
