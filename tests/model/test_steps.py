"""The writer's order of work: what the model keeps of it, and what the reports show."""

from __future__ import annotations

import json

import pytest

from reviewer.model.plan import Remark, Waiting, Work
from reviewer.reports.gathering import report_of
from reviewer.reports.html import render_html
from reviewer.reports.json_report import render_json
from reviewer.reports.order import StepRow, order_of
from reviewer.reports.terminal import render_terminal
from tests.support import look_at, review_of, told

PLAN = """
plan "Table" in inches
stock board: 1x8 pine
part leg for each of left, right: board, upright, facing side, 24 tall, on floor, front at 0
    left at 0
part top: board, across, flat, 24 long, left at 20, front at 20, on floor
finish oiled: on top, leg.*
    2 coats of oil danish, dry 24 h
"""


def test_what_a_step_says_in_order() -> None:
    plan = review_of(PLAN + 'step "Make ready": cut leg.*, top, "mark it", wait 90 min, finish oiled\n').plan
    (step,) = plan.steps
    assert step.title == "Make ready"
    assert [type(item) for item in step.items] == [Work, Work, Remark, Waiting, Work]
    assert [(work.verb, work.said, work.parts, work.finish) for work in step.works] == [
        ("cut", "leg.*", ("leg.left", "leg.right"), None),
        ("cut", "top", ("top",), None),
        ("finish", "oiled", ("top", "leg.left", "leg.right"), "oiled"),
    ]
    assert step.items[3] == Waiting(1.5, step.items[3].span)


def test_a_plan_without_steps_has_none() -> None:
    assert review_of(PLAN).plan.steps == ()


@pytest.mark.parametrize("before", ["wait 1 h", '"take care"'])
def test_a_bare_name_needs_a_list_to_go_on_with(before: str) -> None:
    problems = look_at(PLAN + f'step "Glue": join top, {before}, leg.left\n').problems
    assert [(problem.says, problem.do) for problem in problems] == [
        (
            "“leg.left” stands alone, and what comes before it is no list that it could go on with.",
            "Say what is done to it: join leg.left",
        )
    ]


def test_unknown_names_are_told_as_elsewhere() -> None:
    assert told(PLAN + 'step "Glue": join tpo, finish oild, finish gloss\n', "unknown-name") == [
        "error - @ tpo: No part is called “tpo”. → Did you mean top?",
        "error - @ oild: No finish schedule is called “oild”. → Did you mean oiled?",
        "error - @ gloss: No finish schedule is called “gloss”. → Look at its spelling, or write it, such as: "
        "finish gloss: on top, 1 coat of shellac",
    ]


STEPS = """
step "Parts": cut leg.*, top, drill top, "the holes from below"
step "Glue up": join leg.*, top, wait 1 h, sand top, leg.*
step "Oil": finish oiled, wait 1 day
step "Rest"
    wait 30 min
"""


def test_steps_in_words_with_their_waits() -> None:
    # Two coats that dry 24 h each and a day after: 72 h; with 1 h and half an hour 73.5 h in all.
    order = order_of(review_of(PLAN + STEPS.replace('"Rest"\n    ', '"Rest": ')))
    assert order.steps == (
        StepRow("Parts", ("cut leg.* and top", "drill top", "“the holes from below”"), 0.0),
        StepRow("Glue up", ("join leg.* and top", "wait 1 h", "sand top and leg.*"), 1.0),
        StepRow("Oil", ("finish oiled, which dries 2 days in all", "wait 24 h"), 72.0),
        StepRow("Rest", ("wait 30 min",), 0.5),
    )
    assert order.waits == 73.5


def test_the_reports_number_them() -> None:
    found = look_at(PLAN + STEPS.replace('"Rest"\n    ', '"Rest": '), only="step-out-of-order")
    report = report_of(found.source, found.problems, found.review, found.judgement)
    full = render_terminal([report], full=True)
    assert (
        "Order of work\n\nAs the plan has it.\n"
        "  1  Parts: cut leg.* and top; drill top; “the holes from below”\n"
        "  2  Glue up: join leg.* and top; wait 1 h; sand top and leg.*\n"
        "  3  Oil: finish oiled, which dries 2 days in all; wait 24 h\n"
        "  4  Rest: wait 30 min\n"
        "Waiting in all: 3.1 days.\n"
    ) in full
    assert "Order of work" not in render_terminal([report])
    page = render_html([report])
    assert "<li><b>Glue up</b>: join leg.* and top; wait 1 h; sand top and leg.*</li>" in page
    assert '<p class="total">Waiting in all: 3.1 days</p>' in page
    order = json.loads(render_json([report]))["plans"][0]["order"]
    assert order["waits_h"] == 73.5
    assert order["steps"][3] == {"title": "Rest", "does": ["wait 30 min"], "waits_h": 0.5}


def test_without_steps_and_joins_no_report_speaks_of_them() -> None:
    found = look_at(PLAN, only="step-out-of-order")
    report = report_of(found.source, found.problems, found.review, found.judgement)
    assert "Order of work" not in render_html([report]) + render_terminal([report], full=True)
