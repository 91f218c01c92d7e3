"""The part of the page on how a piece is fixed to the wall: its drawing, its figures, its cautions."""

from __future__ import annotations

import re
from pathlib import Path
from xml.etree import ElementTree

import pytest

from reviewer.reports.wall_fixing import wall_fixings
from tests.rules.safety.test_wall_restraints import case
from tests.support import look_at, review_of

PLANS = Path(__file__).parent.parent.parent / "plans"


def shown(text: str):  # type: ignore[no-untyped-def]
    return wall_fixings(review_of(text), "plan1-")


def figures(text: str) -> dict[str, str]:
    (only,) = shown(text)
    return dict(only.figures)


def test_a_tied_case_in_figures() -> None:
    found = figures(case("strap, screws #10 x 2 1/2 into stud, 56 up, 2 of them"))
    assert found["Each of 2 is to hold"].startswith("60 lb (test load")
    assert found["Fixed at the piece to"] == "side.left and side.right"
    assert found["Its screw in the wall"] == "159 lb, with 1 21/32 in of thread in the stud"
    assert (
        found["Studs behind it"]
        == "2 for certain, 3 where it stands well (16 in apart): find them, then set the piece"
    )
    pulls = found["Pull on each restraint of case, 56 in up"]
    level, falling, rising = (float(each) for each in re.findall(r"([\d.]+) lb", pulls))
    # (14): falling at 45 degrees the lever grows by (56 + d) / 56 / √2, rising it shrinks by (56 - d) / 56 / √2.
    assert level < rising
    assert 1 / falling - 1 / rising == pytest.approx(2 * 11.5 / 56 / 2**0.5 / level, rel=0.1)


def test_the_drawing_shows_each_fixing_and_where_it_is() -> None:
    (only,) = shown(case("strap, screws #10 x 2 1/2 into stud, 56 up, 2 of them"))
    drawn = ElementTree.fromstring(only.svg)
    circles = [
        each for each in drawn.iter() if each.tag == "circle" and each.get("class", "").startswith("fix")
    ]
    assert len([each for each in circles if each.get("class") == "fix"]) == 2
    assert "58 in up" not in only.svg
    assert "56 in up" in only.svg
    assert "2 × 60 lb towards you" in only.svg
    floor = next(each for each in drawn.iter() if each.get("class") == "floor")
    tall = float(floor.get("y1", "0")) - 30.0
    up = float(floor.get("y1", "0")) - float(circles[0].get("cy", "0"))
    assert up / tall == pytest.approx(56 / 60, abs=0.01)


def test_a_restraint_too_many_is_drawn_beside_the_stud() -> None:
    (only,) = shown(case("strap, screws #10 x 2 1/2 into stud, 56 up, 2 of them", width="14"))
    assert only.svg.count('class="fix missed"') == 1


def test_masonry_says_so_and_gives_no_hold() -> None:
    found = figures(case("strap, screws #10 x 2 1/2 into masonry, 56 up, 2 of them"))
    assert found["Its screw in the wall"] == "into masonry: the maker of the anchor says what it holds"
    assert "Studs behind it" not in found
    (only,) = shown(case("strap, screws #10 x 2 1/2 into masonry, 56 up, 2 of them"))
    assert "brick, block or concrete" in only.remarks[0]
    assert 'class="stud"' not in only.svg


@pytest.mark.parametrize("wall", ["wall left", "wall right 1 away", "wall behind 2 away"])
def test_any_wall_is_drawn(wall: str) -> None:
    text = case("strap, screws #10 x 2 1/2 into stud, 56 up, 2 of them").replace("wall behind", wall)
    (only,) = shown(text)
    assert ElementTree.fromstring(only.svg) is not None


@pytest.mark.parametrize("name", ["wall-shelf", "hidden-cleat-shelf", "picture-ledge", "notice-board"])
def test_what_hangs_is_told_and_drawn(name: str) -> None:
    (only,) = shown((PLANS / f"{name}.plan").read_text("utf-8"))
    told = dict(only.figures)
    assert "Pull on its screws together" in told
    met, whole = re.match(r"(\d+) of (\d+)", told["Screws that can meet a stud"]).groups()  # type: ignore[union-attr]
    assert met == whole
    assert only.svg.count('class="fix"') == int(whole)


def test_a_plan_without_a_wall_has_no_such_part() -> None:
    assert shown((PLANS / "plant-stand.plan").read_text("utf-8")) == ()


def test_the_page_defers() -> None:
    from reviewer.reports.gathering import report_of
    from reviewer.reports.html import render_html

    found = look_at(case("strap, screws #10 x 2 1/2 into stud, 56 up, 2 of them"))
    page = render_html([report_of(found.source, found.problems, found.review, found.judgement)])
    assert "a calculation is no certification" in page
    assert "local codes and licensed practice come first" in page
    assert 'id="plan1-wall"' in page
