"""The room in the model and on the report's line."""

from __future__ import annotations

import json

import pytest

from reviewer.model.plan import Room
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
    assert [(round(place.across, 1), round(place.up, 1)) for place in made.outlets] == [
        (76.2, 304.8),
        (228.6, 304.8),
    ]
    assert [place[:2] for place in made.switches] == [(pytest.approx(127), pytest.approx(1219.2))]
    assert [(each.kind, each.side) for each in made.heaters] == [("heater", "left"), ("heater", "front")]
    assert [each.away for each in made.heaters] == [pytest.approx(254), pytest.approx(508)]
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
        ("studs every 16 from 10", "hall: studs every 16 in from 10 in"),
        ("studs at 22 and 6, studs at 39", "hall: studs at 6 in, 22 in and 39 in"),
        (
            "wall left, wall front 40 away, hall 36 wide, stairs 30 wide, landing 36 x 40\n"
            "    stove right 40 away, flue behind 20 away, firebox 30 up, cord under carpet, cord along wall",
            "hall: wall on the left, wall in front, 40 in away, hall 36 in wide, stairs 30 in wide, "
            "landing 36 in by 40 in, stove on the right, 40 in away, flue behind, 20 in away, firebox up to 30 in, "
            "cord under carpet, cord along wall",
        ),
        (
            "wall behind, escape window 24 wide 36 tall 60 across 30 up at grade, vent 14 wide 6 tall (0 - 2) across 0 up\n"
            "    alarm 9 across 90 up",
            "hall: wall behind, escape window 24 in wide and 36 in tall, 60 in across and 30 in up, near the ground "
            "outside, vent 14 in wide and 6 in tall, -2 in across and 0 in up, alarm 9 in across and 90 in up",
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


def test_the_wall_that_it_stands_against_is_the_one_behind() -> None:
    """Whatever the order, and whatever other walls there are."""
    for facts in (
        "wall left 3 away, wall behind 1 away",
        "wall behind 1 away, wall left 3 away, wall front 40 away",
    ):
        made = room(facts)
        assert (made.wall, made.wall_gap) == ("behind", pytest.approx(25.4))
        assert made.walls["left"] == pytest.approx(76.2)
    assert room("wall front 40 away").wall is None


def test_the_reports_have_it() -> None:
    found = look_at(f"{SHELF}room hall: indoors, stairs 30 wide\n", only="tips")
    report = report_of(found.source, found.problems, found.review, found.judgement)
    assert '<p class="small">Stands in hall: indoors, stairs 30 in wide</p>' in render_html([report])
    assert json.loads(render_json([report]))["plans"][0]["room"] == "hall: indoors, stairs 30 in wide"
