"""How loads travel and how far parts are used, as every report tells it."""

from __future__ import annotations

import json
import re
import xml.etree.ElementTree as ElementTree
from dataclasses import replace
from pathlib import Path

import jsonschema
import pytest
from hypothesis import given, settings

from reviewer.mechanics.beam import BeamResult
from reviewer.reports.bent_shape import bend_times, bent_svg
from reviewer.reports.content import Report
from reviewer.reports.gathering import report_of
from reviewer.reports.html import render_html
from reviewer.reports.json_report import render_json
from reviewer.reports.load_drawing import load_drawing
from reviewer.reports.terminal import render_terminal
from reviewer.reports.used import landings, path_text, value_text
from reviewer.units import NEWTON_PER_POUND, UnitSystem, fine_length
from tests.rules.test_any_heap import HEAPS
from tests.support import look_at

SCHEMA = json.loads((Path(__file__).parents[2] / "reviewer/reports/review.schema.json").read_text("utf-8"))
SVG = "{http://www.w3.org/2000/svg}"

SHELF = """
plan "Long shelf" in inches
stock board: 1x10 pine
part side for each of left, right: board, upright, facing side, 12 tall, on floor
    flush with each of case, flush with front of case
part shelf: board, across, flat, on side.left, from left of case to right of case
    flush with front of case
outline case: 48 across, 9 1/4 deep, 13 tall, on floor
join shelf to side.*: screws #8 x 2, 3 per joint, from above
load shelf: books
room study: indoors
"""
BROKEN = (
    SHELF + "part ledge: board, across, flat, between side.left and side.right, flush with front of case\n"
)
BROKEN += "    bottom 4 above floor\nload ledge: 10 lb\n"
TIPPING = """
plan "Seesaw" in inches
stock board: 1x10 pine
part post: board, upright, facing side, 12 tall, on floor, front at 0, left at 12
part shelf: board, across, flat, 40 long, left at 0, front at 0, on post
"""


def report(text: str, *, lists: bool = True, carried: bool = True) -> Report:
    found = look_at(text)
    assert found.review is not None
    return report_of(
        found.source, found.problems, found.review, found.judgement, lists=lists, carried=carried
    )


def svgs(page: str, css: str) -> list[ElementTree.Element]:
    """The drawings of a class on a page; each must be well formed by itself."""
    found = re.findall(rf'<svg class="view {css}".*?</svg>', page, re.S)
    return [ElementTree.fromstring(text.replace("<svg ", f'<svg xmlns="{SVG[1:-1]}" ', 1)) for text in found]


def words_of(svg: ElementTree.Element) -> list[str]:
    return [element.text or "" for element in svg.iter(f"{SVG}text")]


# ---------------------------------------------------------------- what they say


def test_the_balance_and_what_lands_where() -> None:
    made = report(SHELF)
    assert made.carried is not None
    path = made.carried.path
    assert path is not None
    # 25 lb of books a foot on four feet.
    assert path.loads / NEWTON_PER_POUND == pytest.approx(100, abs=0.1)
    (row,) = landings(path)
    assert (row.parts, row.to) == (("side.left", "side.right"), "floor")
    assert 2 * row.force == pytest.approx(path.weights + path.loads, rel=1e-9)
    assert "comes down on the floor." in path_text(path, UnitSystem.INCH)


def test_the_hardest_used_part_comes_first_with_its_limit() -> None:
    made = report(
        SHELF.replace("part shelf", "part wide-shelf")
        .replace(" shelf:", " wide-shelf:")
        .replace("join shelf", "join wide-shelf")
    )
    assert made.carried is not None
    rows = made.carried.use
    assert rows[0].parts == ("wide-shelf",)
    assert rows[-1].parts == ("side.left", "side.right")
    assert rows[0].governs == "sag"
    assert [row.ratio for row in rows] == sorted((row.ratio for row in rows), reverse=True)
    assert rows[0].ratio > 1
    assert int(rows[0].percent.removesuffix(" %")) > 100
    parts = [part for row in rows for part in row.parts]
    assert len(parts) == len(set(parts))


def test_what_ends_is_said_and_marked() -> None:
    made = report(BROKEN)
    assert made.carried is not None
    path = made.carried.path
    assert path is not None
    assert [name for name, _ in path.ends] == ["ledge"]
    assert "ends at ledge and reaches neither floor nor wall." in path_text(path, UnitSystem.INCH)
    total = path.on("floor") + sum(amount for _, amount in path.ends)
    assert total == pytest.approx(path.weights + path.loads, rel=1e-9)
    (drawn,) = svgs(render_html([made]), "loads")
    assert "ends here" in words_of(drawn)


def test_where_something_tips_no_force_is_given() -> None:
    made = report(TIPPING)
    assert made.carried is not None
    path = made.carried.path
    assert path is not None
    assert path.tips == ("shelf",)
    assert path.steps == ()
    page = render_html([made])
    assert svgs(page, "loads") == []
    assert "No forces are given: as drawn, nothing keeps shelf level" in page
    told = json.loads(render_json([made]))["plans"][0]["load_path"]
    assert told["on_floor_n"] is None
    assert told["steps"] == []


# ---------------------------------------------------------------- the drawings


def test_the_way_of_the_loads_is_drawn_with_figures() -> None:
    (drawn,) = svgs(render_html([report(SHELF)]), "loads")
    figures = words_of(drawn)
    assert "100 lb" in figures
    assert len([figure for figure in figures if figure.endswith(" lb")]) == 3
    names = [title.text for title in drawn.iter(f"{SVG}title")]
    assert names[0] == "The way of the loads, from the front"
    assert drawn.find(f"{SVG}desc") is not None
    assert set((drawn.get("aria-labelledby") or "").split()) == {
        element.get("id") for element in drawn.iter() if element.get("id")
    }


def test_the_widest_arrow_has_the_most_force() -> None:
    made = report(SHELF.replace("load shelf: books", "load shelf: 100 lb at 10 from left"))
    assert made.carried is not None
    assert made.carried.path is not None
    assert made.review is not None
    svg, remarks = load_drawing(
        made.carried.path, list(made.review.setting.solids.values()), UnitSystem.INCH, "p-"
    )
    assert remarks == ()
    widths = {}
    for title, points in re.findall(
        r'<g><title>([^<]*)</title><polygon class="flow[^"]*" points="([^"]*)"', svg
    ):
        corners = [float(pair.split(",")[0]) for pair in points.split()[:2]]
        widths[title] = corners[1] - corners[0]
    left = next(
        width for title, width in widths.items() if title.startswith("side.left") and "floor" in title
    )
    right = next(
        width for title, width in widths.items() if title.startswith("side.right") and "floor" in title
    )
    assert left > right


def test_a_flagged_board_is_drawn_bent_to_a_stated_exaggeration() -> None:
    made = report(SHELF)
    page = render_html([made])
    (drawn,) = svgs(page, "bend")
    found = re.search(r"<figcaption>shelf, drawn (\d+) times as much as real</figcaption>", page)
    assert found
    times = int(found[1])
    assert made.carried is not None
    member = next(member for (name, _), member in made.carried.bent.items() if name == "shelf")
    assert times == bend_times(member)
    assert isinstance(member.sag, BeamResult)
    worst = max(bay.sag for bay in member.sag.bays)
    # On paper the board is 330 units long; the drawn bend over the real one is what the words say.
    heights = {
        element.get("class"): [float(pair.split(",")[1]) for pair in (element.get("points") or "").split()]
        for element in drawn.iter(f"{SVG}polygon")
    }
    assert max(heights["bent"][:49]) - heights["straight"][0] == pytest.approx(
        worst * 330 / member.length * times, abs=0.11
    )


def test_a_sound_board_is_not_drawn_bent() -> None:
    assert svgs(render_html([report(SHELF.replace("48 across", "20 across"))]), "bend") == []


def test_a_board_that_does_not_bend_has_no_drawing() -> None:
    made = report(SHELF)
    assert made.carried is not None
    member = next(member for (name, _), member in made.carried.bent.items() if name == "shelf")
    assert isinstance(member.sag, BeamResult)
    flat = replace(member, sag=replace(member.sag, bays=()))
    assert bent_svg(flat, UnitSystem.INCH, "a") == ""


def test_hostile_names_stay_text() -> None:
    text = SHELF.replace('plan "Long shelf"', 'plan "<script>&</svg>"')
    page = render_html([report(text)])
    assert "<script" not in page
    assert len(svgs(page, "loads")) == 1


# ---------------------------------------------------------------- JSON and terminal


@pytest.mark.parametrize("text", [SHELF, BROKEN, TIPPING])
def test_the_json_follows_the_schema(text: str) -> None:
    document = json.loads(render_json([report(text)]))
    jsonschema.validate(document, SCHEMA)
    plan = document["plans"][0]
    assert plan["load_path"]["weights_n"] > 0


def test_the_json_has_every_force() -> None:
    path = json.loads(render_json([report(SHELF)]))["plans"][0]["load_path"]
    floor = sum(step["force_n"] for step in path["steps"] if step["to"] == "floor")
    assert floor == pytest.approx(path["weights_n"] + path["loads_n"], rel=1e-6)
    assert path["on_floor_n"] == pytest.approx(floor, rel=1e-6)


def test_the_terminal_tells_it_in_full_only() -> None:
    made = report(SHELF, lists=False)
    full = render_terminal([made], full=True)
    assert "How far each part is used, of its limit" in full
    assert re.search(r"^ +\d+ %  ##########  shelf: sag ", full, re.M)
    assert "Way of the loads" in full
    assert " -  side.left and side.right: " in full
    assert "How far each part is used" not in render_terminal([made], full=False)


def test_a_short_review_makes_none_of_it() -> None:
    assert report(SHELF, lists=False, carried=False).carried is None


@pytest.mark.parametrize("text", [SHELF, BROKEN])
def test_same_input_same_bytes(text: str) -> None:
    assert render_html([report(text)]) == render_html([report(text)])
    assert render_json([report(text)]) == render_json([report(text)])


@settings(max_examples=80, deadline=None)
@given(text=HEAPS)
def test_any_heap_of_boards_is_told_and_nothing_is_lost(text: str) -> None:
    made = report(text)
    page = render_html([made])
    svgs(page, "loads")
    svgs(page, "bend")
    document = json.loads(render_json([made]))
    jsonschema.validate(document, SCHEMA)
    assert render_terminal([made], full=True)
    path = document["plans"][0]["load_path"]
    if path is not None and not path["tips"]:
        # To the nine digits of the document.
        came = path["on_floor_n"] + path["on_wall_n"] + sum(each["force_n"] for each in path["ends"])
        assert came == pytest.approx(path["weights_n"] + path["loads_n"], rel=1e-7)


def test_a_sag_too_little_to_show_is_no_nothing() -> None:
    assert value_text(fine_length(0.01), UnitSystem.INCH) == "under 0.001 in"
    assert value_text(fine_length(0.004), UnitSystem.METRIC) == "under 0.01 mm"
    assert value_text(fine_length(0.0254), UnitSystem.INCH) == "0.001 in"
    assert value_text(fine_length(0.0), UnitSystem.INCH) == "0 in"
