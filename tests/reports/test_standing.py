"""How each piece keeps standing, as the page, the terminal and the JSON tell it."""

from __future__ import annotations

import json
import math
import re
import xml.etree.ElementTree as ET
from collections.abc import Iterator
from pathlib import Path
from typing import get_args

import pytest

from reviewer.reports.content import Report
from reviewer.reports.gathering import report_of
from reviewer.reports.html import render_html
from reviewer.reports.json_report import render_json
from reviewer.reports.stability_page import unbroken
from reviewer.reports.terminal import render_terminal
from reviewer.workshop.tipping import Kind
from tests.rules.everyday_pieces import BENCH, BOOKCASE, LAMP_TABLE, WALL_SHELF
from tests.support import look_at

PLANS = Path(__file__).parents[2] / "plans"
TIPPING_BENCH = BENCH.replace("42 across", "24 across").replace("past 3 each", "past 12 each")


def report(text: str) -> Report:
    found = look_at(text)
    return report_of(found.source, found.problems, found.review, found.judgement)


def section(page: str) -> str:
    found = re.search(r'<section id="plan1-stability".*?</section>', page, re.DOTALL)
    assert found
    return found[0]


def test_the_page_draws_and_lists_every_piece_that_stands() -> None:
    page = section(render_html([report(TIPPING_BENCH)]))
    drawn = re.findall(r"<svg class=\"view balance\".*?</svg>", page, re.DOTALL)
    assert 1 <= len(drawn) <= 4
    for svg in drawn:
        root = ET.fromstring(svg)
        width, height = float(root.get("width", 0)), float(root.get("height", 0))
        for each in root.iter("text"):
            assert 0 <= float(each.get("x", -1)) <= width
            assert 0 <= float(each.get("y", -1)) <= height
    assert "TIPS, ratio" in drawn[0]
    assert "What just tips it" in page
    assert "Of the changes, each tried by itself, this one helps most" in page
    assert "Changes, each tried by itself" in page


def test_a_sound_piece_is_drawn_too_and_asks_for_no_change() -> None:
    page = section(render_html([report(BOOKCASE)]))
    assert "stands, ratio" in page
    assert "TIPS" not in page
    assert "Changes, each tried" not in page


def test_what_hangs_on_the_wall_has_no_such_section() -> None:
    assert "Will it stay up" not in render_html([report(WALL_SHELF)])
    assert json.loads(render_json([report(WALL_SHELF)]))["plans"][0]["stability"] == []


def test_the_terminal_tells_it_in_a_full_review_only() -> None:
    made = report(TIPPING_BENCH)
    full = render_terminal([made], full=True)
    assert "Will it stay up" in full
    assert "tips, 0." in full
    assert "Will it stay up" not in render_terminal([made])


def test_the_json_has_forces_that_make_up_the_moments() -> None:
    (piece,) = json.loads(render_json([report(BOOKCASE)]))["plans"][0]["stability"]
    assert piece["states"]
    for state in piece["states"]:
        margin = sum(each["force_n"] * each["lever_mm"] for each in state["forces"])
        assert margin + state["by_restraints_n_mm"] == pytest.approx(state["margin_n_mm"], rel=1e-5, abs=1.0)
        held, turned = state["holds_n_mm"], state["turns_n_mm"]
        assert held - turned == pytest.approx(state["margin_n_mm"], rel=1e-6, abs=1.0)
        if state["ratio"] is not None:
            assert state["ratio"] == pytest.approx(held / turned, rel=1e-6)
    # Nearest to tipping first, those for information last.
    judged = [each["ratio"] or math.inf for each in piece["states"] if each["judged"]]
    assert judged == sorted(judged)


def test_a_lamp_table_is_shown_a_push_for_information() -> None:
    (piece,) = json.loads(render_json([report(LAMP_TABLE)]))["plans"][0]["stability"]
    asides = [each for each in piece["states"] if not each["judged"]]
    assert [each["kind"] for each in asides] == ["push", "lean"]
    assert all(each["outcome"] == "not judged" and "for information" in each["says"] for each in asides)
    assert "test loads for storage are not asked of it" in piece["scope"]


@pytest.mark.parametrize("path", sorted(PLANS.glob("*.plan")), ids=lambda path: path.stem)
def test_it_never_certifies(path: Path) -> None:
    from reviewer.reviewing import reviewed
    from reviewer.rulebook import all_rules
    from tests.support import plans_shared, settings

    found = reviewed(path.name, path.read_text("utf-8"), settings(), all_rules(), plans_shared())
    made = report_of(found.source, found.problems, found.review, found.judgement)
    for piece in json.loads(render_json([made]))["plans"][0]["stability"]:
        words = json.dumps(piece).lower()
        assert not any(said in words for said in ("is safe", "complies", "approved", "no restraint needed"))
        assert "no certificate" in piece["scope"]


def test_the_schema_knows_every_kind_of_state() -> None:
    text = (PLANS.parent / "reviewer" / "reports" / "review.schema.json").read_text(encoding="utf-8")
    kinds = json.loads(text)
    assert list(get_args(Kind)) in list(_enums(kinds))


def test_a_measure_under_a_drawing_is_never_broken_over_two_lines() -> None:
    assert unbroken("15.4 lb × 7 3/16 in holds 9.21 lb·ft; 3 in all") == (
        "15.4\u00a0lb × 7\u00a03/16\u00a0in holds 9.21\u00a0lb·ft; 3\u00a0in all"
    )


def _enums(part: object) -> Iterator[object]:
    """Every list of allowed words in a schema."""
    if isinstance(part, dict):
        yield from ([part["enum"]] if "enum" in part else [])
        for each in part.values():
            yield from _enums(each)
    elif isinstance(part, list):
        for each in part:
            yield from _enums(each)
