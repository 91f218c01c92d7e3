"""How a piece is fixed to the wall, as the page, the terminal and the JSON tell it: drawing, figures, cautions."""

from __future__ import annotations

import html
import json
import math
import re
import subprocess
import sys
from pathlib import Path
from xml.etree import ElementTree

import pytest

from reviewer.reports.content import Report
from reviewer.reports.gathering import report_of
from reviewer.reports.html import render_html
from reviewer.reports.json_report import render_json
from reviewer.reports.terminal import render_terminal
from reviewer.reports.wall_fixing import LEAD, PIECES, wall_fixings
from reviewer.reports.wall_fixing_drawing import WallFixingOnPage, wall_fixings_on_page
from tests.rules.safety.test_wall_restraints import case
from tests.support import look_at, review_of
from tests.workshop.test_wall_studs import SHELF

PLANS = Path(__file__).parent.parent.parent / "plans"


def shown(text: str) -> tuple[WallFixingOnPage, ...]:
    review = review_of(text)
    return wall_fixings_on_page(review, wall_fixings(review), "plan1-")


def report(text: str) -> Report:
    found = look_at(text)
    return report_of(found.source, found.problems, found.review, found.judgement)


def figures(text: str) -> dict[str, str]:
    (only,) = shown(text)
    return dict(only.figures)


def test_a_tied_case_in_figures() -> None:
    found = figures(case("strap, screws #10 x 2 1/2 into stud, 56 up, 2 of them"))
    assert found["Each of 2 is to hold"].startswith("60 lb: test load")
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


def test_both_ends_and_the_slope_in_figures() -> None:
    words = (
        "strap, screws #10 x 2 1/2 into stud, 2 screws #8 x 3/4 into piece, 56 up, 55 up on wall, 2 of them"
    )
    found = figures(case(words).replace("wall behind", "wall behind 1 away"))
    # (14): 56 cos 45 + 11.45 sin 45 = 47.7 in, the back 0.2 in behind the 11 1/4 in sides.
    assert found["The strap runs"] == (
        "falls at 45° to 55 in up on the wall; lever over the edge that tips 47 11/16 in"
    )
    assert "45°" not in found["Pull on each restraint of case, 56 in up"]
    assert found["Its screws at the piece"].startswith("2 together ")
    assert found["Its screws at the piece"].endswith("of thread in the edge of side.left")
    assert "straight across" in found["Its screw in the wall"]
    level = figures(case("strap, screws #10 x 2 1/2 into stud, 56 up, 2 of them"))
    assert level["The strap runs"].startswith("level, as the plan says no height at the wall")
    assert level["Its screws at the piece"] == "not estimated: the plan does not say which"
    flat = figures(case(words))
    assert flat["The strap runs"].startswith("flat along the back, 55 in up on the wall")


@pytest.mark.parametrize("wall", ["wall behind 1 away", "wall left 2 away", "wall right 3 away"])
@pytest.mark.parametrize(
    "ends", ["56 up, 55 up on wall", "56 up, 58 up on wall", "on top 3 from back, 58 up on wall"]
)
def test_the_side_view_has_the_lever_square_to_the_strap(wall: str, ends: str) -> None:
    words = f"strap, screws #10 x 2 1/2 into stud, {ends}, 2 of them"
    text = case(words, room=", studs every 16, children under 6").replace("wall behind", wall)
    (only,) = shown(text)
    (found,) = review_of(text).restrained
    if found.tied[0].lever <= 0:
        assert only.side == ""
        return
    drawn = ElementTree.fromstring(only.side)
    at = {
        each.get("class"): [float(each.get(name, "0")) for name in ("x1", "y1", "x2", "y2")]
        for each in drawn.iter()
        if each.tag == "line" and each.get("class") in ("lever", "strap", "floor")
    }
    ex, ey, fx, fy = at["lever"]
    hx, hy, wx, wy = at["strap"]
    across = (fx - ex) * (wx - hx) + (fy - ey) * (wy - hy)
    assert across == pytest.approx(
        0.0, abs=0.02 * math.hypot(fx - ex, fy - ey) * math.hypot(wx - hx, wy - hy)
    )
    assert ey == pytest.approx(at["floor"][1])
    # To scale: the hold stands as high as it does.
    scale = (ey - hy) / found.tied[0].on_piece
    assert math.hypot(fx - ex, fy - ey) / scale == pytest.approx(found.tied[0].lever, rel=0.01)
    wide, tall = float(drawn.get("width", "0")), float(drawn.get("height", "0"))
    assert 0 <= fx <= wide
    assert 0 <= fy <= tall


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


TRUE = case("strap, screws #10 x 2 1/2 into stud, 56 up, @", room=", studs every 16 from 5, children under 6")


def true(count: int) -> str:
    return TRUE.replace("@", f"{count} of them")


def drawn_studs(svg: str) -> list[tuple[float, float]]:
    """From where to where on the paper each stud is drawn."""
    found = set()
    for each in ElementTree.fromstring(svg).iter():
        if each.get("class") == "stud":
            xs = [float(number) for number in re.findall(r"([-\d.]+)[, ][-\d.]+", str(each.attrib))]
            found.add((min(xs), max(xs)))
    return sorted(found)


def fixings(svg: str) -> list[float]:
    drawn = ElementTree.fromstring(svg)
    return [float(each.get("cx", "0")) for each in drawn.iter() if each.get("class") == "fix"]


def test_studs_that_the_plan_says_are_told_and_drawn_where_they_are() -> None:
    found = figures(true(2))
    assert found["Studs behind it"] == (
        "2, at 5 in and 21 in from the plan's left corner, as the plan says: probe each before you drill"
    )
    (only,) = shown(true(2))
    assert only.caption == (
        "The wall seen through the piece; dashed, the studs as the plan says, measured from the plan's left "
        "corner. Dots are fixings"
    )
    studs = [(low + high) / 2 for low, high in drawn_studs(only.svg)]
    assert len(studs) == 4  # at -11, 5, 21 and 37
    assert fixings(only.svg) == pytest.approx([studs[1], studs[2]], abs=0.1)
    for inches in (-11, 5, 21, 37):
        assert f">{inches} in</text>" in only.svg
    # 60 in tall is 300 on the paper: a stud is 1 1/2 in wide, and 16 in to the next.
    low, high = drawn_studs(only.svg)[0]
    assert high - low == pytest.approx(7.5, abs=0.1)
    assert studs[1] - studs[0] == pytest.approx(80.0, abs=0.1)


@pytest.mark.parametrize(("wall", "way"), [("wall left", 1), ("wall right", -1)])
def test_studs_of_a_wall_at_the_side_are_drawn_as_one_stands_before_it(wall: str, way: int) -> None:
    text = true(1).replace("wall behind", wall)
    assert figures(text)["Studs behind it"].startswith("1, at 5 in from the plan's front corner")
    (only,) = shown(text)
    # Before the wall on the left the front is at the left hand, before the one on the right at the right hand.
    drawn = ElementTree.fromstring(only.svg)
    at = {each.text: float(each.get("x", "0")) for each in drawn.iter() if (each.text or "").endswith(" in")}
    assert at["21 in"] - at["5 in"] == pytest.approx(way * 80.0, abs=0.1)
    assert fixings(only.svg) == pytest.approx([at["5 in"]], abs=0.1)


def test_a_restraint_without_a_stud_is_drawn_open() -> None:
    strap = "strap, screws #10 x 2 1/2 into stud, 56 up"
    (only,) = shown(case(f"{strap}, 2 of them", width="20", room=", studs at 6 and 22, children under 6"))
    assert (only.svg.count('class="fix"'), only.svg.count('class="fix missed"')) == (1, 1)
    assert only.caption.endswith("; open circles meet none")
    none = case(f"{strap}, 1 of them", room=", studs at 40, children under 6")
    assert figures(none)["Studs behind it"] == (
        "none where it is: the plan has no stud behind it, and the nearest is at 40 in from the plan's left "
        "corner, 6 in off to the right"
    )


def test_a_rail_past_a_narrow_piece_is_told_by_its_studs() -> None:
    words = "cleat, screws #10 x 3 into stud, 58 up, 2 of them"
    text = case(words, width="14", room=", studs every 16 from 10, children under 6")
    assert figures(text)["Studs that its rail reaches"] == (
        "2, at 6 in left of the plan's left corner and 10 in right of it: probe each before you drill"
    )
    (only,) = shown(text)
    assert len(fixings(only.svg)) == 2


def test_what_hangs_is_drawn_on_its_studs() -> None:
    text = SHELF.format(screws="every 16", studs="studs every 16 from 10")
    found = figures(text)
    assert found["Studs behind it"].startswith(
        "2, at 10 in and 26 in from the plan's left corner, as the plan"
    )
    assert found["Screws that meet a stud"] == "2 of 2, at 10 in and 26 in from the plan's left corner"
    (only,) = shown(text)
    studs = [(low + high) / 2 for low, high in drawn_studs(only.svg)]
    assert fixings(only.svg) == pytest.approx(studs[1:3], abs=0.1)
    assert "the studs as the plan says" in only.caption
    missed = SHELF.format(screws="3 per joint, 2 from ends", studs="studs at 2 and 30")
    assert figures(missed)["Screws that meet a stud"] == "1 of 3, at 2 in from the plan's left corner"


def test_the_json_has_the_places_of_the_studs() -> None:
    (fixing,) = json.loads(render_json([report(true(2))]))["plans"][0]["wall_fixings"]
    (restraint,) = fixing["restrained"]["restraints"]
    assert restraint["stud_places_mm"] == [127.0, 533.4]
    (fixing,) = json.loads(render_json([report(TIED)]))["plans"][0]["wall_fixings"]
    assert fixing["restrained"]["restraints"][0]["stud_places_mm"] is None
    text = SHELF.format(screws="every 16", studs="studs every 16 from 10")
    (fixing,) = json.loads(render_json([report(text)]))["plans"][0]["wall_fixings"]
    assert fixing["hung"]["stud_places_mm"] == [254.0, 660.4]


def test_a_plan_without_a_wall_has_no_such_part() -> None:
    assert shown((PLANS / "plant-stand.plan").read_text("utf-8")) == ()


def test_the_page_defers() -> None:
    page = render_html([report(case("strap, screws #10 x 2 1/2 into stud, 56 up, 2 of them"))])
    assert "a calculation is no certification" in page
    assert "local codes and licensed practice come first" in page
    assert 'id="plan1-wall"' in page


TIED = case("strap, screws #10 x 2 1/2 into stud, 56 up, 2 of them")
MANY = """
plan "A row of ledges" in inches
stock board: 1x4 pine
room hall: indoors, wall behind, studs every 16
part ledge: board, across, on edge, 40 long, left at 0, bottom 60 above floor, against wall
    {copies} copies every 48 across
join ledge.* to wall: screws #8 x 3, every 16
"""


def test_every_report_tells_the_same_figures() -> None:
    told = report(TIED)
    page, text = render_html([told]), render_terminal([told], full=True)
    (fixing,) = json.loads(render_json([told]))["plans"][0]["wall_fixings"]
    flat = " ".join(text.split())
    assert "Fixing to the wall" in text
    assert LEAD in flat
    assert fixing["says"] == LEAD
    assert LEAD in page
    found = figures(TIED)
    assert len(found) == 8
    assert {each["name"]: each["text"] for each in fixing["figures"]} == found
    for name, value in found.items():
        assert f"- {name}: {value}" in flat
        assert f'<th scope="row">{name}</th><td>{value}</td>' in page
    assert len(fixing["remarks"]) == 2
    for remark in fixing["remarks"]:
        assert remark in flat
        assert remark in html.unescape(page)


def test_the_short_terminal_review_leaves_it_out() -> None:
    found = look_at(TIED)
    short = report_of(found.source, found.problems, found.review, found.judgement, lists=False, carried=False)
    assert short.wall_fixings == ()
    assert "Fixing to the wall" not in render_terminal([short])


def test_a_tied_case_in_json() -> None:
    """60 lb of test load = 266.9 N; 56 in = 1422.4 mm; 1 21/32 in of thread is 42 mm."""
    (fixing,) = json.loads(render_json([report(TIED)]))["plans"][0]["wall_fixings"]
    assert fixing["hung"] is None
    restrained = fixing["restrained"]
    assert restrained["needed_n"] == pytest.approx(60 * 4.448222, rel=1e-6)
    assert 0 < restrained["pull_n"] < restrained["needed_n"]
    (tied,) = restrained["restraints"]
    assert (tied["of"], tied["device"], tied["count"], tied["into"]) == ("case", "strap", 2, "stud")
    assert tied["height_mm"] == pytest.approx(1422.4)
    assert tied["fixed_to"] == ["side.left", "side.right"]
    assert tied["holds_n"] == pytest.approx(159 * 4.448222, rel=0.005)
    assert tied["thread_mm"] == pytest.approx(1.65625 * 25.4, abs=0.4)
    assert (tied["board_only"], tied["studs_for_certain"], tied["studs_at_most"]) == (False, 2, 3)
    assert (tied["slope_degrees"], tied["at_piece"]) == (0.0, None)
    assert tied["wall_height_mm"] == tied["lever_mm"] == pytest.approx(1422.4)
    text = TIED.replace("56 up", "56 up, 54 up on wall, 2 screws #8 x 3/4 into piece")
    (fixing,) = json.loads(render_json([report(text.replace("wall behind", "wall behind 2 away"))]))["plans"][
        0
    ]["wall_fixings"]
    (tied,) = fixing["restrained"]["restraints"]
    assert tied["slope_degrees"] == pytest.approx(45.0)
    assert tied["wall_height_mm"] == pytest.approx(54 * 25.4)
    assert (tied["at_piece"]["surface"], tied["at_piece"]["screws"]) == ("edge", 2)
    assert tied["at_piece"]["holds_n"] > 60 * 4.448222


def test_masonry_has_no_hold_in_json() -> None:
    text = case("strap, screws #10 x 2 1/2 into masonry, 56 up, 2 of them")
    (fixing,) = json.loads(render_json([report(text)]))["plans"][0]["wall_fixings"]
    (tied,) = fixing["restrained"]["restraints"]
    assert (tied["holds_n"], tied["thread_mm"], tied["studs_for_certain"]) == (None, None, None)


def test_what_hangs_in_json_balances() -> None:
    """Moments about the line that it bears on, and the weight on the screws, summed here again."""
    told = report((PLANS / "wall-shelf.plan").read_text("utf-8"))
    (fixing,) = json.loads(render_json([told]))["plans"][0]["wall_fixings"]
    hung = fixing["hung"]
    assert fixing["restrained"] is None
    assert hung["moment_n_mm"] == pytest.approx(hung["weight_n"] * hung["out_mm"], rel=1e-6)
    turned = sum(each["pull_n"] * (each["up_mm"] - hung["bearing_mm"]) for each in hung["screws"])
    assert turned == pytest.approx(hung["moment_n_mm"], rel=1e-6)
    assert sum(each["shear_n"] for each in hung["screws"]) == pytest.approx(hung["weight_n"], rel=1e-6)
    assert sum(each["pull_n"] for each in hung["screws"]) == pytest.approx(hung["pull_n"], rel=1e-6)
    assert all(each["meets_stud"] for each in hung["screws"])


def test_many_pieces_are_counted_in_text_and_whole_in_json() -> None:
    told = report(MANY.format(copies=PIECES + 3))
    document = json.loads(render_json([told]))["plans"][0]
    assert len(document["wall_fixings"]) == PIECES + 3
    more = "3 more pieces are fixed to the wall; the JSON has them all."
    assert more in render_terminal([told], full=True)
    page = render_html([told])
    assert more in page
    assert page.count('class="view wall-fixing"') == PIECES


def test_text_and_json_load_no_drawing() -> None:
    code = (
        "import sys\nfrom reviewer.reports.wall_fixing_json import wall_fixing_json\n"
        "print([name for name in sys.modules if name.startswith('reviewer.reports') and "
        "any(word in name for word in ('drawing', 'svg', 'projection'))])"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, check=True, text=True)
    assert done.stdout.strip() == "[]"
