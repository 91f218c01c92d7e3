"""The room in the model and on the report's line."""

from __future__ import annotations

import json

import pytest

from reviewer.model.plan import Heater, OnWall, Room
from reviewer.reports.gathering import report_of
from reviewer.reports.html import render_html
from reviewer.reports.json_report import render_json
from reviewer.reports.room import room_line
from tests.support import look_at, review_of

SHELF = """
plan "Shelf" in inches
stock board: 1x8 pine
part shelf: board, across, flat, 24 long, left at 0, front at 0, on floor
"""


def room(facts: str, name: str = "hall") -> Room:
    found = review_of(f"{SHELF}room {name}: {facts}\n").plan.room
    assert found is not None
    return found


def test_facts_of_the_room_in_mm() -> None:
    made = room(
        "stairs 30 wide, skirting 4 tall by 1 deep, outlet 3 across 12 up, outlet 9 across 12 up\n"
        "    switch 5 across 48 up, heater left 10 away, heater front 20 away"
    )
    assert made.stairs == pytest.approx(762)
    assert made.skirting == (pytest.approx(101.6), pytest.approx(25.4))
    assert [tuple(round(each, 1) for each in place) for place in made.outlets] == [
        (76.2, 304.8),
        (228.6, 304.8),
    ]
    assert made.switches == (OnWall(pytest.approx(127), pytest.approx(1219.2)),)
    assert made.heaters == (Heater("left", pytest.approx(254)), Heater("front", pytest.approx(508)))
    assert made.said == {"stairs", "skirting", "outlets", "switches", "heaters"}
    assert room("skirting 4 tall").skirting == (pytest.approx(101.6), None)


@pytest.mark.parametrize(
    ("facts", "line"),
    [
        ("indoors", "hall: indoors"),
        ("outdoors", "hall: outdoors"),
        ("indoors, unheated, wall left 2 away", "hall: indoors, unheated, wall on the left, 2 in away"),
        (
            "wall behind, studs every 16, floor carpet, doorway 30 x 80, ceiling 96, children under 6",
            "hall: wall behind, studs every 16 in, floor carpet, doorway 30 in wide and 80 in tall, "
            "ceiling 96 in up, children under 6 years",
        ),
        (
            "stairs 30 wide, skirting 4 tall by 1 deep, outlet 3 across 12 up, switch 5 across 48 up\n"
            "    heater behind 10 away, heater right 8 away, no children",
            "hall: stairs 30 in wide, skirting 4 in tall and 1 in deep, outlet 3 in across and 12 in up, "
            "switch 5 in across and 48 in up, heater behind, 10 in away, heater on the right, 8 in away, "
            "no children",
        ),
    ],
)
def test_the_line_says_what_the_plan_says(facts: str, line: str) -> None:
    made = room(facts)
    units = review_of(SHELF).units
    assert room_line(made, units) == line


def test_the_reports_have_it() -> None:
    found = look_at(f"{SHELF}room hall: indoors, stairs 30 wide\n", only="tips")
    report = report_of(found.source, found.problems, found.review, found.judgement)
    assert '<p class="small">Stands in hall: indoors, stairs 30 in wide</p>' in render_html([report])
    assert json.loads(render_json([report]))["plans"][0]["room"] == "hall: indoors, stairs 30 in wide"
