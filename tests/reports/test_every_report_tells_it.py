"""What the page tells stands in the JSON and in the full terminal report too; drawings apart."""

from __future__ import annotations

import html
import json
import re
from importlib import resources
from pathlib import Path
from typing import Any

import jsonschema
import pytest

from reviewer.reports.content import DEFERS, Report
from reviewer.reports.gathering import report_of
from reviewer.reports.html import render_html
from reviewer.reports.json_report import render_json
from reviewer.reports.terminal import render_terminal
from tests.support import look_at

PLANS = Path(__file__).parents[2] / "plans"
NAMES = ("open-bookcase", "base-cabinet", "wall-shelf")
SCHEMA = json.loads((resources.files("reviewer.reports") / "review.schema.json").read_text(encoding="utf-8"))
#: By the heading on the page: the key of a plan in the JSON, and the heading in the terminal.
SECTIONS = {
    "In its room": ("in_room", "In its room"),
    "Fixing to the wall": ("wall_fixings", "Fixing to the wall"),
    "How far each part is used": ("use", "How far each part is used, of its limit"),
    "How far each joint is used": ("joint_use", "How far each joint is used"),
    "Way of the loads": ("load_path", "Way of the loads"),
    "Will it stay up": ("stability", "Will it stay up"),
    "Cut list": ("cut_list", "Cut list, length × width × thickness"),
    "Joints": ("joints", "What the joints take"),
    "What to buy": ("buying", "Boards and sheets to buy, with what comes out of each"),
    "Finish": ("finishing", "When the finish is done"),
    "Order of work": ("order", "Order of work"),
    "Taken for granted": ("assumptions", "taken for granted where the plan is silent"),
    "Accepted with a reason": ("accepted", "accepted with a reason"),
    "Usual cautions": ("cautions", "Usual cautions for this work, each once"),
}
#: On the page alone: drawings, and the plan's own text.
PAGE_ALONE = {"Drawing", "The plan"}
FINDINGS = {"Where someone can be hurt", "To mend before you buy wood", "To think over", "Worth knowing"}


@pytest.fixture(scope="module", params=NAMES)
def told(request: pytest.FixtureRequest) -> tuple[Report, str, str, dict[str, Any]]:
    found = look_at((PLANS / f"{request.param}.plan").read_text("utf-8"))
    report = report_of(found.source, found.problems, found.review, found.judgement)
    document = json.loads(render_json([report]))
    jsonschema.validate(document, SCHEMA, cls=jsonschema.Draft202012Validator)
    text = render_terminal([report], full=True)
    return report, html.unescape(render_html([report])), text, document


def flat(text: str) -> str:
    return " ".join(text.split())


def test_every_section_of_the_page_is_in_the_others(
    told: tuple[Report, str, str, dict[str, Any]],
) -> None:
    _, page, text, document = told
    headings = set(re.findall(r"<h3>(.*?)</h3>", page)) - PAGE_ALONE - FINDINGS - {"Findings"}
    assert len(headings) >= 10
    for heading in headings:
        key, line = SECTIONS[heading]
        assert document["plans"][0][key], heading
        assert line in text, heading


def test_the_cut_list_and_what_to_buy_are_the_same_everywhere(
    told: tuple[Report, str, str, dict[str, Any]],
) -> None:
    report, page, text, document = told
    plan, words = document["plans"][0], flat(text)
    rows = re.findall(r'<td class="num">(\d+)</td><th scope="row">(.*?)<br>.*?</th><td>(.*?)</td>', page)
    assert len(rows) == len(plan["cut_list"]) > 2
    for (many, names, size), row in zip(rows, plan["cut_list"], strict=True):
        assert int(many) == len(row["parts"])
        assert f"- {many} × {names}: {size}, from {row['stock']} ({row['said']})" in words
    for name, cuts in re.findall(
        r'<p class="bar-name"><b>(.*?)</b>.*?<p class="small">(.*?)</p>', page, re.S
    ):
        assert name in words
        assert f"for {cuts}" in words
    assert report.buying is not None
    assert len(re.findall(r'class="bar-name"', page)) == len(report.buying.boards) > 0
    (total,) = re.findall(r"Together [\d.]+, in the plan's own prices", page)
    assert total in words
    for item in plan["buying"]["hardware"]:
        assert item["said"] in words
        assert item["said"] in page


def test_the_piece_as_a_whole(told: tuple[Report, str, str, dict[str, Any]]) -> None:
    _, page, text, document = told
    (overall,) = re.findall(r"<dt>Across × deep × up</dt><dd>(.*?)</dd>", page)
    (weighs,) = re.findall(r"<dt>Weighs</dt><dd>(.*?)</dd>", page)
    count = len(document["plans"][0]["parts"])
    assert flat(text).find(f"{overall} (across × deep × up), {weighs}, {count} parts.") > 0


def test_sentences_that_stand_by_themselves(told: tuple[Report, str, str, dict[str, Any]]) -> None:
    _, page, text, document = told
    words, plan = flat(text), document["plans"][0]
    assert DEFERS in words
    assert DEFERS in page
    assert document["defers"] == DEFERS
    assert plan["passes"] is True
    (lead,) = re.findall(r'Order of work</h3>\n<p class="lead">(.*?)</p>', page)
    assert lead in words
    for finding in plan["accepted"]:
        assert finding["says"] in words
        assert finding["says"] in flat(page)
    for source in {row["source"] for row in plan["use"]}:
        assert source in words


def test_cautions_are_the_same_everywhere(told: tuple[Report, str, str, dict[str, Any]]) -> None:
    """Those that go by the weight of the piece too, which a terminal once had not to hand."""
    _, page, text, document = told
    words, plan = flat(text), document["plans"][0]
    standing = {each["name"] for each in plan["standing"]}
    listed = [each for each in plan["cautions"] if each["usual"] in words]
    assert len(listed) >= len(plan["cautions"]) - len(standing)
    for each in listed:
        assert each["usual"] in page


def test_a_plan_that_fails_says_so() -> None:
    text = (PLANS / "flawed" / "cut-does-not-fit.plan").read_text("utf-8")
    found = look_at(text)
    report = report_of(found.source, found.problems, found.review, found.judgement)
    assert json.loads(render_json([report]))["plans"][0]["passes"] is False


# ---------------------------------------------------------------- sentences that once read wrong


def full_text(name: str) -> str:
    found = look_at((PLANS / f"{name}.plan").read_text("utf-8"))
    report = report_of(found.source, found.problems, found.review, found.judgement)
    return flat(render_terminal([report], full=True))


def test_what_hangs_on_the_wall_is_judged_once() -> None:
    """The way of the loads gave the cleat's two screws all of the shelf (70 %), its fixing a share (27 %)."""
    text = full_text("wall-shelf")
    assert "27 % of what it may bear" in text
    assert "cleat to the wall" not in text
    assert "How far each joint is used" not in text  # the shelf lies on the others, the rest is the wall's


def test_straps_are_counted() -> None:
    text = full_text("map-cabinet")
    assert "2 straps to the wall, screws #10" in text
    assert "2 strap " not in text


def test_a_strap_is_weighed_against_the_piece_without_it() -> None:
    text = full_text("base-cabinet")
    assert "Without them its balance lacks, at worst: 93.8 lb·ft; tried: test weight of ASTM" in text
    assert "))" not in text.split("Fixing to the wall")[1].split("How far each part")[0]


@pytest.mark.parametrize("name", [*NAMES, "map-cabinet"])
def test_no_sentence_names_a_file_of_ours_or_a_word_twice(name: str) -> None:
    """Words that stand twice in a row, tables that are named twice, and names of our own files."""
    text = full_text(name)
    assert ".csv" not in text
    assert re.findall(r"(Table [\w.]+) \([\w+-]+\), \1", text) == []
    twice = re.findall(r"\b([a-z]{2,}) \1\b", text)
    assert twice == []


def test_a_status_that_only_repeats_its_source_is_left_out() -> None:
    found = look_at((PLANS / "open-bookcase.plan").read_text("utf-8"))
    page = render_html([report_of(found.source, found.problems, found.review, found.judgement)])
    assert "common practice, no source." in page
    assert "no source; common practice" not in page


def test_the_key_of_the_room_has_only_what_is_drawn() -> None:
    found = look_at((PLANS / "base-cabinet.plan").read_text("utf-8"))
    page = render_html([report_of(found.source, found.problems, found.review, found.judgement)])
    assert "Dashed is what opens." in page
    assert "is an outlet" not in page
    assert "where it strikes" not in page
