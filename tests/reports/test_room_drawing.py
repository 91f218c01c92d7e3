"""The piece in its room from above: what is drawn, where, and what is left to words."""

from __future__ import annotations

import re
import xml.etree.ElementTree as ElementTree

import pytest

from reviewer.reports.gathering import report_of
from reviewer.reports.html import render_html
from reviewer.reports.room_drawing import RoomShown, room_drawing
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
    return room_drawing(review_of(CUPBOARD.format(room=room)), "p-")


def elements(shown: RoomShown) -> list[ElementTree.Element]:
    return list(ElementTree.fromstring(shown.svg.replace("<svg ", f'<svg xmlns="{SVG[1:-1]}" ', 1)).iter())


def test_nothing_to_draw() -> None:
    assert drawn("") is None
    plain = 'plan "Bench" in inches\nstock board: 1x8 pine\n'
    plain += "part seat: board, across, flat, 24 long, left at 0, front at 0, on floor\nroom hall: indoors\n"
    assert room_drawing(review_of(plain), "") is None


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
