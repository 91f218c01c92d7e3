"""From a plan's text, over the whole road, to what the reports tell."""

from __future__ import annotations

import json

from reviewer.judging import Judgement
from reviewer.reference.limits import default_limits
from reviewer.reports.gathering import report_of
from reviewer.reports.html import render_html
from reviewer.reports.json_report import render_json
from reviewer.reports.terminal import render_terminal
from reviewer.reviewing import reviewed
from reviewer.settings import Settings

TEXT = """\
plan "Shelf by the door" in inches
stock board: 1x8 ponderosa pine, 8 ft at 14
outline case: 36 across, 7 1/4 deep, 24 tall, on floor
part side for each of left, right: board, upright, facing side
    24 tall, flush with each of case, flush with front of case, on floor
part shelf: board, across, flat
    between side.left and side.right, flush with front of case, flush with top of case
join shelf to side.*: screws #8 x 1 1/2, 2 per end
finish oiled: on side.*, shelf
    sand 120, 180
    2 coats of oil danish, dry 24 h
"""


def test_a_plan_from_its_text_to_its_reports() -> None:
    found = reviewed("shelf.plan", TEXT, Settings(default_limits()), {})
    assert [problem.says for problem in found.problems] == []
    assert found.review
    report = report_of(found.source, found.problems, found.review, Judgement((), (), ("tips",)))
    # by hand: 36 less two sides of 3/4 leaves 34 1/2
    rows = [
        (row.parts, round(row.length / 25.4, 4), round(row.thickness / 25.4, 4)) for row in report.cut_list
    ]
    assert rows == [(("shelf",), 34.5, 0.75), (("side.left", "side.right"), 24.0, 0.75)]
    assert report.mass is not None
    # (34 1/2 + 48) x 7 1/4 x 3/4 in is 0.00735 m³; ponderosa pine at 0.40 dry to 0.45 air-dry is about 3.3 kg
    assert 2.9 < report.mass < 3.5
    page = render_html([report])
    assert "Nothing to mend: 1 rule looked at this plan" in page
    assert "34 1/2 × 7 1/4 × 3/4 in" in page
    assert "rags-self-heat" in page
    assert json.loads(render_json([report]))["plans"][0]["mass_kg"] > 0
    assert render_terminal([report]).endswith("Nothing to mend: 1 rule looked at this plan.\n")


def test_a_terminal_does_not_wait_for_the_lists() -> None:
    found = reviewed("shelf.plan", TEXT, Settings(default_limits()), {})
    report = report_of(found.source, found.problems, found.review, found.judgement, lists=False)
    assert report.cut_list == ()
    assert report.mass is None


def test_a_plan_that_cannot_be_read() -> None:
    found = reviewed(
        "shelf.plan", 'plan "Shelf" in inches\n\npart shelf ??? board\n', Settings(default_limits()), {}
    )
    assert len(found.problems) == 1
    shown = render_terminal([report_of(found.source, found.problems, found.review, found.judgement)])
    assert "shelf.plan:3:" in shown
    assert ": error: text not read\n" in shown
    assert "1 thing to mend before you buy wood" in shown
