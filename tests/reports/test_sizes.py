"""A plan at several sizes: the table in the terminal and on the page."""

from __future__ import annotations

import re
import subprocess
from dataclasses import replace
from pathlib import Path

import pytest
from made_by_hand import bench_report, bookcase_report, clean_bench_report
from test_browser import BROWSER, HARNESS, browse, complaints

from reviewer.findings import Severity
from reviewer.language.problems import ReadingProblem
from reviewer.language.source import Source, Span
from reviewer.model.outside import SetMeasure
from reviewer.reports.content import Report
from reviewer.reports.html import render_html
from reviewer.reports.sizes import set_text, size_tables, size_text
from reviewer.reports.terminal import render_terminal

MANY = ("length", "height")


def sized(report: Report, length: float, height: float = 18.0, varied: tuple[str, ...] = MANY[:1]) -> Report:
    measures = (SetMeasure("length", length, 48.0, "in"), SetMeasure("height", height, 17.5, "in"))
    return replace(report, measures=measures, varied=varied)


def three() -> list[Report]:
    """One size that passes, one with errors and one that the text can't have, all of one file."""
    flawed, clean = bench_report(), clean_bench_report()
    problem = ReadingProblem(Span(0, 4), "The size comes to -2 in, and it must be more than 0.", "Look.")
    source = flawed.source
    return [
        sized(replace(clean, source=source), 36),
        sized(flawed, 48),
        sized(Report(source, (problem,)), 4),
    ]


def test_the_table_counts_what_each_size_has() -> None:
    reports = [*three(), bookcase_report()]
    (table,) = size_tables(reports)
    assert (table.title, table.said) == ("Reading bench", "3 sizes: 1 passes, 2 do not")
    assert table.set_to == ("Set from outside the plan: height is 18 in here (the plan says 17 1/2 in).",)
    flawed = bench_report()
    rows = [(row.place, row.sizes, row.outcome, row.errors, row.warnings) for row in table.rows]
    assert rows == [
        (1, ("36 in",), "passes", 0, 0),
        (2, ("48 in",), "fails", flawed.counted(Severity.ERROR), flawed.counted(Severity.WARNING)),
        (3, ("4 in",), "not read", 1, 0),
    ]
    assert table.rows[2].first == "The size comes to -2 in, and it must be more than 0."
    assert table.rows[0].first == ""


def test_plans_under_one_name_have_tables_of_their_own() -> None:
    first, second = three(), [replace(each, source=Source("b.plan", "")) for each in three()[2:]]
    assert [len(table.rows) for table in size_tables([*first, *second])] == [3, 1]


def test_level_decides_what_passes() -> None:
    flawed = bench_report()
    assert not flawed.passes
    noted = clean_bench_report()
    assert noted.passes
    assert not replace(noted, judgement=None).passes


@pytest.mark.parametrize("width", [40, 60, 88, 140])
def test_the_table_fits_every_terminal(width: int) -> None:
    out = render_terminal([replace(each, varied=MANY) for each in three()], width=width)
    table = out[: out.index("Below are")]
    assert max(map(len, table.splitlines())) <= width
    assert "The size comes to -2 in" in " ".join(table.split())
    assert ("first thing to mend" in table) == (width > 60)
    assert ("outcome" in table) == (width >= 60)
    if width == 40:
        assert (
            "\n    length 36 in, height 18 in: passes,\n    0 errors, 0 warnings\n X  length 48 in" in table
        )


def test_colour_only_repeats_what_a_sign_says() -> None:
    plain, painted = (render_terminal(three(), colour=colour) for colour in (False, True))
    assert "\x1b[" in painted
    assert re.sub(r"\x1b\[[\d;]*m", "", painted) == plain


def test_words_of_a_measure() -> None:
    assert size_text(17.5, "in") == "17 1/2 in"
    assert size_text(0.1 + 0.2, "m") == "0.3 m"
    assert set_text(SetMeasure("length", 60, 48, "in")) == (
        "Set from outside the plan: length is 60 in here (the plan says 48 in)."
    )
    assert set_text(SetMeasure("length", 600, 600, "mm")) == (
        "Set from outside the plan: length is 600 mm here (the plan says the same)."
    )
    assert set_text(SetMeasure("length", 60, 48, "in", tried=True)) == (
        "Tried as the plan says: length is 60 in here (by itself it is 48 in)."
    )


def test_hostile_names_do_no_harm() -> None:
    source = Source("<b>\x1b[31m.plan", "")
    reports = [replace(sized(clean_bench_report(), size), source=source) for size in (36, 48)]
    out, page = render_terminal(reports), render_html(reports)
    assert "\x1b" not in out
    assert "<b>" not in page


# ---------------------------------------------------------------- on the page


def test_each_size_links_to_its_report_and_its_first_finding() -> None:
    page = render_html(three())
    for place in (1, 2, 3):
        assert f'<a href="#plan{place}-top">' in page
        assert f'id="plan{place}-top"' in page
    links = re.findall(r'href="#(plan\d-finding-\d+)">', page[: page.index("<article")])
    assert len(links) == 2
    assert all(f'id="{link}"' in page for link in links)
    assert "<title>2 of 3 sizes have something to mend before you buy wood · 3 sizes</title>" in page


@pytest.mark.browser
@pytest.mark.skipif(BROWSER is None, reason="no browser is installed here")
def test_the_page_fits_its_width(tmp_path: Path) -> None:
    (tmp_path / "page.html").write_text(render_html([replace(each, varied=MANY) for each in three()]))
    log: subprocess.CompletedProcess[str] = browse(
        tmp_path, "page.html", "--enable-logging=stderr", "--dump-dom"
    )
    assert complaints(log.stderr) == []
    for width in (390, 1280):
        (tmp_path / f"at-{width}.html").write_text(HARNESS.format(width=width), encoding="utf-8")
        more = ("--allow-file-access-from-files", "--dump-dom", "--window-size=1400,1000")
        found = re.search(
            r"scroll (\d+) client (\d+) wide \[(.*)\]", browse(tmp_path, f"at-{width}.html", *more).stdout
        )
        assert found, "the harness did not run"
        assert (found[1], found[3]) == (found[2], "")
