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


@pytest.mark.parametrize("joint", ["dowels 3/8 x 2", "loose tenons 3/8 x 1 x 2", "mitre", "butt"])
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


def test_a_half_lap_at_an_end_takes_length() -> None:
    # The leg is 2 in square: a rail lapped with it must reach its far side.
    (found,) = told(table("half lap"), RULE)
    assert "nothing of them goes into the half lap: cut like that, they are 2 in too short" in found
    assert told(table("half lap", ", past 2 each end"), RULE) == []


CROSS = """
    plan "Cross" in inches
    stock board: actual 3/4 x 2 red oak
    part low: board, across, flat, 20 long, left at 0, front at 9, on floor
    part high: board, deep, flat, 20 long, left at 9, front at 0, bottom at {at}
    join high to low: {joint}, glue pva
"""


def test_boards_that_lie_on_each_other_are_not_lapped() -> None:
    assert told(CROSS.format(at="3/4", joint="half lap"), RULE) == [
        "error high, low @ half lap: high lies on low with its whole thickness, so the half lap takes nothing out of "
        "either: cut, it lets them 3/4 in into each other. → Set it 3/4 in further in, flush with what it crosses, or "
        "leave the half lap out and let it lie on top."
    ]
    assert told(CROSS.format(at="0", joint="half lap"), RULE) == []
    assert told(CROSS.format(at="3/4", joint="bridle"), RULE) != []
    assert told(CROSS.format(at="3/4", joint="dowels 3/8 x 1"), RULE) == []


ROW = """
    plan "Boards" in inches
    stock board: actual 3/4 x 3 1/2 white pine
    part slat: board, deep, flat, 20 long, left at 0, front at 0, on floor
        3 copies every {every} across
    join slat.* to slat.*: {joint}
"""


@pytest.mark.parametrize("joint", ["tongue and groove", "half lap"])
def test_boards_side_by_side_need_wood_for_the_tongue(joint: str) -> None:
    (said,) = told(ROW.format(every="3 1/2", joint=joint), RULE)
    # A third of 3/4 in.
    assert said.startswith("warning slat.1, slat.2, slat.3 @ ")
    assert "slat.1, slat.2 and slat.3 only touch, edge to edge" in said
    assert "about 1/4 in: “every 3 1/4” in place of their full width" in said
    assert told(ROW.format(every="3 1/4", joint=joint), RULE) == []


CASE = """
    plan "Case" in millimetres
    stock board: actual 18 x 200 pine
    stock panel: birch plywood 6
    outline case: 600 across, 200 deep, 900 tall, on floor
    part side for each of left, right: board, upright, facing side, 900 tall, on floor, front at 0
        flush with each of case
    part back: panel, upright, facing front, 600 wide, 900 tall, on floor, front {at}, left at 0
    join back to side.*: rabbet 6 deep, screws 3.5 x 25
"""


def test_a_back_that_lies_on_the_edges_of_its_sides_lies_in_no_rabbet() -> None:
    text = CASE.replace("600 wide, ", "600 across, ")
    (said,) = told(text.format(at="at 200"), RULE)
    assert (
        "back lies against the edge of side.left and side.right, so nothing of it goes into the rabbet."
        in said
    )
    assert "Set it 6 mm further in" in said
    assert told(text.format(at="at 194"), RULE) == []
