"""Parts that end at the face of what they should be let into."""

from __future__ import annotations

import pytest

from tests.rules.everyday_pieces import EVERYDAY
from tests.rules.sound_pieces import SOUND_PIECES
from tests.support import findings_of, told

RULE = "housing-empty"

TABLE = """
plan "Low table" in {unit}
stock leg: actual {leg} x {leg} red oak
stock rail: actual {thin} x {wide} red oak
outline frame: {long} across, {deep} deep, {tall} tall, on floor
part leg: leg, upright, as tall as frame, in each corner of frame
part rail for each of front, back: rail, across, on edge, between leg.each-left and leg.each-right{slack}
    centred deep on leg.each-left, flush with top of frame
join rail.* to leg.*: {joint}, glue pva
"""
INCH = {"unit": "inches", "leg": 2, "thin": "3/4", "wide": 3, "long": 40, "deep": 20, "tall": 17}
METRIC = {"unit": "millimetres", "leg": 50, "thin": 20, "wide": 70, "long": 1000, "deep": 500, "tall": 430}


def table(joint: str, slack: str = "", sizes: dict[str, object] = INCH) -> str:
    return TABLE.format(joint=joint, slack=slack, **sizes)


def test_the_sentence() -> None:
    assert told(table("mortise and tenon 1 long"), RULE) == [
        "error rail.front, rail.back, leg.front-left, leg.front-right, leg.back-left, leg.back-right @ mortise "
        "and tenon 1 long: rail.front and rail.back end at the face of leg.front-left, leg.front-right, "
        "leg.back-left and leg.back-right, so nothing of them goes into the mortise: cut like that, they are "
        "1 in too short at each such end. → Let them reach in, with “housed 1 each end” after what they are "
        "between, or choose a joint that takes no length, such as dowels."
    ]


def test_no_stated_depth_takes_half_of_what_it_goes_into() -> None:
    (found,) = told(table("mortise and tenon", sizes=METRIC), RULE)
    assert "25 mm too short" in found
    assert "“housed 25 each end”" in found


@pytest.mark.parametrize("joint", ["dovetails", "box joint"])
def test_corner_joints_go_right_through(joint: str) -> None:
    """The leg is 2 in square, so pins that go right through it take 2 in at each end."""
    (found,) = told(table(joint), RULE)
    assert f"goes into the {joint}: cut like that, they are 2 in too short at each such end." in found
    assert "“housed 2 each end”" in found
    assert told(table(joint, ", housed 2 each end"), RULE) == []


@pytest.mark.parametrize("joint", ["dado 1 deep", "groove 1 deep", "mortise and tenon 1 long"])
def test_what_reaches_in_is_quiet(joint: str) -> None:
    assert told(table(joint), RULE) != []
    assert told(table(joint, ", housed 1 each end"), RULE) == []


@pytest.mark.parametrize("joint", ["dowels 3/8 x 2", "loose tenons 3/8 x 1 x 2", "half lap", "mitre", "butt"])
def test_joints_that_take_no_length_are_not_asked(joint: str) -> None:
    assert told(table(joint), RULE) == []


def test_parts_that_meet_face_to_face_are_not_asked() -> None:
    text = """
        plan "Two boards" in inches
        stock board: actual 3/4 x 6 red oak
        part low: board, across, flat, 20 long, left at 0, front at 0, on floor
        part high: board, across, flat, 20 long, left at 0, front at 0, on low
        join high to low: groove 1/4 deep
    """
    assert findings_of(text, RULE) == ()


@pytest.mark.parametrize("text", [*SOUND_PIECES.values(), *EVERYDAY.values()])
def test_sound_pieces_are_quiet(text: str) -> None:
    assert findings_of(text, RULE) == ()
