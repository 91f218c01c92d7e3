"""The piece in its room: what is drawn, where, what is left to words, and the same in text and JSON."""

from __future__ import annotations

import json
import re
import xml.etree.ElementTree as ElementTree

import pytest

from reviewer.reports.content import Report
from reviewer.reports.gathering import report_of
from reviewer.reports.html import render_html
from reviewer.reports.in_room import MOVEMENTS, in_room
from reviewer.reports.json_report import render_json
from reviewer.reports.room_drawing import PARTS, RoomShown, room_drawing
from reviewer.reports.terminal import render_terminal
from reviewer.reports.wall_drawing import WallShown, wall_drawing
from tests.support import look_at, review_of

SVG = "{http://www.w3.org/2000/svg}"
CUPBOARD = """
plan "Cupboard" in inches
stock panel: birch plywood 3/4
outline case: 24 across, 14 deep, 30 tall, on floor
part side for each of left, right: panel, upright, facing side, 14 deep, 30 tall, on floor
    flush with each of case, flush with back of case
part board for each of bottom, top: panel, across, flat, 14 deep
    between side.left and side.right across
    flush with each of case, flush with back of case
part door: panel, upright, facing front, 24 across, 29 1/2 tall, bottom 1/4 above floor
    centred across on case, against front of side.left, opens 110 degrees, hinged left
{room}
"""


def drawn(room: str) -> RoomShown | None:
    review = review_of(CUPBOARD.format(room=room))
    return room_drawing(review, in_room(review), "p-")


def on_wall(room: str) -> WallShown | None:
    review = review_of(CUPBOARD.format(room=room))
    return wall_drawing(review, in_room(review), "p-")


def elements(shown: RoomShown | WallShown) -> list[ElementTree.Element]:
    return list(ElementTree.fromstring(shown.svg.replace("<svg ", f'<svg xmlns="{SVG[1:-1]}" ', 1)).iter())


def test_nothing_to_draw() -> None:
    assert drawn("") is None
    plain = 'plan "Bench" in inches\nstock board: 1x8 pine\n'
    plain += "part seat: board, across, flat, 24 long, left at 0, front at 0, on floor\nroom hall: indoors\n"
    assert in_room(review_of(plain)) is None
    assert room_drawing(review_of(plain), None, "") is None


def test_what_is_drawn_and_said() -> None:
    """The leaf, 24 long, strikes the skirting, 2 - 5/8 away: sin (x - 90) = 1.39 / 24."""
    shown = drawn(
        "room hall: indoors, wall behind, wall left 2 away, skirting 4 tall, outlet 6 across 12 up\n"
        "    switch 20 across 48 up, heater right 10 away, stove front 100 away"
    )
    assert shown is not None
    assert shown.said == (
        "wall behind, close by",
        "wall on the left, 2 in away",
        "heater on the right, 10 in away",
        "stove in front, 100 in away",
        "door opens 110°, strikes at 93.3°",
        "outlet 6 in across, 12 in up",
        "switch 20 in across, 48 in up",
    )
    assert shown.remarks == ("Too far away to be drawn: stove in front.",)
    found = elements(shown)
    texts = {each.text for each in found if each.tag == f"{SVG}text"}
    assert {"strikes at 93.3°", "wall 2 in", "heater 10 in", "outlet 12 in up", "switch 48 in up"} <= texts
    kinds = [each.get("class") for each in found]
    assert kinds.count("socket") == 2
    assert kinds.count("struck") == 1
    assert kinds.count("hot") == 1
    assert kinds.count("floor") == 2  # the faces of both walls
    # The way of the free corner begins at the front of the case and ends outside of it.
    (arc,) = [each for each in found if each.tag == f"{SVG}polyline"]
    points = [tuple(map(float, point.split(","))) for point in str(arc.get("points")).split()]
    assert points[-1][0] < points[0][0]
    assert max(y for _, y in points) > points[0][1]


def test_everything_stays_on_the_paper() -> None:
    shown = drawn("room hall: indoors, wall front 30 away, heater left 1 away, wall right 50 away")
    assert shown is not None
    wide, tall = (float(each) for each in re.findall(r'viewBox="0 0 (\S+) (\S+)"', shown.svg)[0])
    numbers = re.findall(r"(-?\d+(?:\.\d)?),(-?\d+(?:\.\d)?)", shown.svg)
    assert all(-20 <= float(x) <= wide + 20 and -20 <= float(y) <= tall + 20 for x, y in numbers)


@pytest.mark.parametrize("room", ["room hall: wall behind", "room hall: wall left"])
def test_the_page_has_it(room: str) -> None:
    found = look_at(CUPBOARD.format(room=room))
    report = report_of(found.source, found.problems, found.review, found.judgement)
    page = render_html([report])
    assert '<section id="plan1-room">' in page
    assert page == render_html([report])


FULL_ROOM = (
    "room hall: indoors, wall behind, wall left 2 away, skirting 4 tall, outlet 6 across 12 up\n"
    "    switch 20 across 48 up, heater right 10 away"
)


def reported(room: str) -> Report:
    found = look_at(CUPBOARD.format(room=room))
    return report_of(found.source, found.problems, found.review, found.judgement)


def test_text_and_json_tell_the_same() -> None:
    """2 in = 50.8 mm to the left wall; the leaf strikes the skirting at 93.3 degrees (sum above)."""
    told = reported(FULL_ROOM)
    plan = json.loads(render_json([told]))["plans"][0]
    text = " ".join(render_terminal([told], full=True).split())
    assert f"In its room Stands in {plan['room']}." in text
    shown = drawn(FULL_ROOM)
    assert shown is not None
    for line in shown.said:
        assert f" - {line}" in text
    room = plan["in_room"]
    said = [each["says"] for each in (*room["near"], *room["opens"], *room["sockets"]) if each["says"]]
    assert tuple(said) == shown.said
    near = [(each["kind"], each["side"], each["away_mm"]) for each in room["near"]]
    assert ("wall", "left", 50.8) in near
    assert ("skirting", "left", 34.925) in near  # 5/8 in thick where the plan does not say
    assert ("heater", "right", 254.0) in near
    (door,) = room["opens"]
    assert (door["name"], door["opens_degrees"], door["slides_mm"]) == ("door", 110.0, None)
    assert door["strikes_at_degrees"] == pytest.approx(93.3, abs=0.05)
    assert door["strikes_at_mm"] is None
    assert room["sockets"][0] == {
        "kind": "outlet",
        "across_mm": 152.4,
        "up_mm": 304.8,
        "says": "outlet 6 in across, 12 in up",
    }


def test_a_room_of_which_nothing_counts_is_a_line() -> None:
    plain = CUPBOARD.format(room="room hall: indoors").replace(", opens 110 degrees, hinged left", "")
    found = look_at(plain)
    told = report_of(found.source, found.problems, found.review, found.judgement)
    plan = json.loads(render_json([told]))["plans"][0]
    assert (plan["room"], plan["in_room"]) == ("hall: indoors", None)
    assert "Stands in hall: indoors.\n\n" in render_terminal([told], full=True)
    assert "Stands in" not in render_terminal([told])


def test_the_short_terminal_review_leaves_it_out() -> None:
    found = look_at(CUPBOARD.format(room=FULL_ROOM))
    short = report_of(found.source, found.problems, found.review, found.judgement, lists=False, carried=False)
    assert short.in_room is None
    assert "In its room" not in render_terminal([short])


MANY = """
plan "Row of flaps" in inches
stock panel: birch plywood 3/4
part base: panel, across, flat, 14 deep, {wide} long, left at 0, front at 0, on floor
part flap: panel, upright, facing front, 8 across, 10 tall, left at 0, bottom 1 above floor
    against front of base, opens 90 degrees, hinged left
    {copies} copies every 9 across
room hall: indoors, wall behind
"""


def test_what_is_too_much_is_counted() -> None:
    copies = MOVEMENTS + 2
    review = review_of(MANY.format(copies=copies, wide=9 * copies))
    found = in_room(review)
    assert found is not None
    assert len(found.opens) == copies
    assert found.said[-1] == "2 more things open; the JSON has all"
    assert len(found.said) == 1 + MOVEMENTS + 1


def test_a_piece_of_many_parts_is_told_in_words_only() -> None:
    review = review_of(MANY.format(copies=PARTS, wide=9 * PARTS))
    shown = room_drawing(review, in_room(review), "p-")
    assert shown is not None
    assert shown.svg == ""
    assert shown.said[0] == "wall behind, close by"
    assert shown.remarks == ("A piece of more than 400 parts is not drawn in its room.",)


WALL = (
    "room hall: indoors, wall behind, escape window 30 wide 48 tall 10 across 24 up, vent 14 wide 6 tall 2 across 4 up\n"
    "    panel 15 wide 28 tall 50 across 44 up, alarm 12 across 70 up, window 20 wide 30 tall 200 across 40 up\n"
    "    outlet 6 across 12 up, switch 45 across 48 up"
)


def test_the_wall_seen_through_the_piece() -> None:
    """The cupboard ends 24 across and 30 up: clear of the window are 16 beside it, and 42 over it."""
    shown, above = on_wall(WALL), drawn(WALL)
    assert shown is not None
    assert above is not None
    assert above.said[-5:] == (
        "escape window 30 in by 48 in, 10 in across, 24 in up, of it clear 30 in by 42 in, 30 in up",
        "vent 14 in by 6 in, 2 in across, 4 in up",
        "panel 15 in by 28 in, 50 in across, 44 in up",
        "window 20 in by 30 in, 200 in across, 40 in up",
        "alarm 12 in across, 70 in up",
    )
    assert shown.remarks == ("Too far away to be drawn: window.",)
    found = elements(shown)
    kinds = [each.get("class") for each in found]
    assert kinds.count("on-wall") == 4
    assert kinds.count("socket") == 2
    assert kinds.count("swing") == 1
    texts = {each.text for each in found if each.tag == f"{SVG}text"}
    assert {"escape window", "vent", "panel", "alarm", "clear"} <= texts
    # The cupboard and the window keep their proportions: 24 of 30, and 30 of 48.
    boxes = [each.get("points", "") for each in found if each.get("class") in ("on-wall", "swing")]
    clear, window = ([tuple(map(float, at.split(","))) for at in box.split()] for box in boxes[:2])
    assert (clear[0][1] - clear[2][1]) / (window[0][1] - window[2][1]) == pytest.approx(42 / 48, abs=0.01)
    wide, tall = (float(each) for each in re.findall(r'viewBox="0 0 (\S+) (\S+)"', shown.svg)[0])
    numbers = re.findall(r"(-?\d+(?:\.\d)?),(-?\d+(?:\.\d)?)", shown.svg)
    assert all(0 <= float(x) <= wide and 0 <= float(y) <= tall for x, y in numbers)


def test_windows_are_gaps_in_the_wall_from_above() -> None:
    shown = drawn(WALL)
    assert shown is not None
    kinds = [each.get("class") for each in elements(shown)]
    assert kinds.count("gap-in-wall") == 3  # the far window is left out
    assert kinds.count("socket") == 2


def test_no_wall_is_drawn_without_something_on_it() -> None:
    assert on_wall("room hall: wall behind, outlet 6 across 12 up") is None
    assert on_wall("room hall: wall left, window 20 wide 30 tall 20 across 40 up") is None
    assert on_wall("room hall: wall behind, window 20 wide 30 tall 200 across 40 up") is None


def test_the_page_has_both_drawings() -> None:
    found = look_at(CUPBOARD.format(room=WALL))
    report = report_of(found.source, found.problems, found.review, found.judgement)
    page = render_html([report])
    assert "The wall behind, seen through the piece" in page
    assert "plan1-on-wall-name" in page
    assert page == render_html([report])


def test_what_is_on_the_wall_in_text_and_json() -> None:
    """10 in = 254 mm, 30 in = 762 mm; over the cupboard, 30 up, 42 in are left of the window."""
    told = reported(WALL)
    room = json.loads(render_json([told]))["plans"][0]["in_room"]
    text = " ".join(render_terminal([told], full=True).split())
    assert [each["kind"] for each in room["on_wall"]] == ["escape window", "vent", "panel", "window", "alarm"]
    window = room["on_wall"][0]
    assert (window["across_mm"], window["wide_mm"]) == (254.0, 762.0)
    assert window["clear"] == {"across_mm": 254.0, "up_mm": 762.0, "wide_mm": 762.0, "tall_mm": 1066.8}
    assert room["on_wall"][1]["clear"] is None
    for each in room["on_wall"]:
        assert f" - {each['says']}" in text


def test_nothing_clear_is_said_so() -> None:
    shown = drawn("room hall: wall behind, escape window 20 wide 24 tall 2 across 4 up")
    assert shown is not None
    assert shown.said[-1] == "escape window 20 in by 24 in, 2 in across, 4 in up, nothing of it clear"
