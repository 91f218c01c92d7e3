"""Which part goes into which, how deep, and the room that the joint makes. Depths are sums done by hand."""

from __future__ import annotations

import math

import pytest

from reviewer.workshop.housing import Housed, housed_joints
from tests.support import review_of

CASE = """
plan "Case" in millimetres
stock board: actual 18 x 300 pine
stock thin: actual 6 x 600 pine
outline case: 600 across, 300 deep, 900 tall, on floor
part side for each of left, right: board, upright, facing side, 900 tall, on floor, front at 0
    flush with each of case
part shelf: board, across, flat, between side.left and side.right, housed 5 each end, front at 0, bottom at 400
part panel: thin, upright, facing front, 800 tall, on floor, from right of side.left to left of side.right
    past 9 each end, rip 582, back at 300
"""


def only(text: str) -> Housed:
    return housed_joints(review_of(text).setting)[0]


@pytest.mark.parametrize(
    ("joint", "depth", "room", "said"),
    [
        ("dado 5 deep", 5, 5, True),
        ("dado 4 deep", 5, 4, True),
        ("dado", 5, 9, False),
        ("groove", 5, 9, False),
        ("mortise and tenon 7 long", 5, 7, True),
        ("mortise and tenon", 5, 9, False),
    ],
)
def test_a_shelf_in_a_side(joint: str, depth: float, room: float, said: bool) -> None:
    made = only(CASE + f"join shelf to side.*: {joint}, glue pva\n")
    assert (made.part, made.into, made.axis) == ("shelf", "side.left", 0)
    assert made.depth == pytest.approx(depth)
    assert made.room == pytest.approx(room)
    assert made.room_said is said
    assert made.short == pytest.approx(depth - room)


def test_it_goes_by_the_grain_and_not_by_the_order_of_the_join() -> None:
    made = only(CASE + "join side.* to shelf: dado 5 deep, glue pva\n")
    assert (made.part, made.into) == ("shelf", "side.left")


def test_a_panel_in_a_groove_goes_in_across_and_in_a_rabbet_from_behind() -> None:
    groove = only(CASE + "join panel to side.*: groove 9 deep\n")
    rabbet = only(CASE + "join panel to side.*: rabbet 6 deep, glue pva\n")
    assert (groove.axis, groove.depth) == (0, pytest.approx(9))
    assert (rabbet.axis, rabbet.depth) == (1, pytest.approx(6))


def test_a_long_tenon_goes_in_along_the_rail() -> None:
    text = """
    plan "Frame" in millimetres
    stock post: actual 80 x 80 pine
    stock rail: actual 20 x 100 pine
    outline frame: 900 across, 80 deep, 700 tall, on floor
    part post for each of left, right: post, upright, 700 tall, on floor, front at 0, flush with each of frame
    part rail: rail, across, on edge, between post.left and post.right, housed 50 each end
        centred deep on frame, flush with top of frame
    join rail to post.*: mortise and tenon 50 long, glue pva
    """
    made = only(text)
    assert (made.part, made.into, made.axis, made.depth) == ("rail", "post.left", 0, pytest.approx(50))


def test_a_half_lap_takes_half_of_each_and_a_mitre_all_of_a_corner() -> None:
    cross = """
    plan "Cross" in millimetres
    stock batten: actual {first} x 60 pine
    stock other: actual {second} x 60 pine
    part lath: batten, across, flat, 600 long, left at 0, front at 270, on floor
    part strip: other, deep, flat, 600 long, left at {left}, front at {front}, on floor
    join lath to strip: {joint}, glue pva
    """
    lap = only(cross.format(first=20, second=30, left=270, front=0, joint="half lap"))
    assert (lap.axis, lap.depth, lap.room) == (2, pytest.approx(20), pytest.approx(25))
    middle = only(cross.format(first=20, second=20, left=270, front=0, joint="mitre"))
    corner = only(cross.format(first=20, second=20, left=0, front=270, joint="mitre"))
    assert middle.room == 0
    assert corner.room == math.inf


def test_without_shared_space_nothing_is_housed() -> None:
    text = CASE.replace(", housed 5 each end", "") + "join shelf to side.*: dado 5 deep, glue pva\n"
    assert housed_joints(review_of(text).setting) == ()


#: Two boards, 20 thick and 100 wide, whose ends run through each other at a corner of a box.
BOX = """
plan "Box" in millimetres
stock board: actual 20 x 100 pine
part front: board, across, on edge, 400 long, left at 0, front at 0, on floor
part side: board, deep, on edge, 300 long, left at {left}, front at {front}, on floor
"""


@pytest.mark.parametrize("joint", ["dovetails", "box joint", "mitre", "splined mitre"])
def test_a_corner_takes_all_it_needs_where_both_end(joint: str) -> None:
    corner = only(BOX.format(left=0, front=0) + f"join side to front: {joint}, glue pva\n")
    assert (corner.room, corner.room_said) == (math.inf, True)
    assert corner.depth == pytest.approx(20)


@pytest.mark.parametrize("joint", ["dovetails", "box joint"])
def test_dovetails_make_no_room_in_the_middle_of_a_board(joint: str) -> None:
    middle = only(BOX.format(left=150, front=0) + f"join side to front: {joint}, glue pva\n")
    assert (middle.room, middle.short) == (0, pytest.approx(20))


def test_lapped_dovetails_stop_short_of_the_face() -> None:
    # The side begins 8 behind the front's face, so it goes 12 into its 20; both still end in the corner.
    lapped = only(BOX.format(left=0, front=8) + "join side to front: dovetails, glue pva\n")
    assert (lapped.axis, lapped.depth, lapped.room) == (1, pytest.approx(12), math.inf)


BRIDLE = """
plan "Trestle" in millimetres
stock post: actual 80 x 80 pine
stock rail: actual 20 x 100 pine
part post: post, upright, {tall} tall, on floor, left at 200, front at 0
part rail: rail, across, on edge, 600 long, left at 0, front at 30, bottom at 400
join rail to post: bridle, glue pva
"""


def test_a_bridle_takes_a_whole_rail_at_the_end_of_a_post() -> None:
    at_end = only(BRIDLE.format(tall=500))
    # The axis square to both: the rail's own 20 lie in the slot.
    assert (at_end.axis, at_end.depth, at_end.room) == (1, pytest.approx(20), math.inf)
    through = only(BRIDLE.format(tall=700))
    assert (through.axis, through.room) == (1, 0)


TONGUE = """
plan "Boarding" in millimetres
stock board: actual 20 x 100 pine
part one: board, upright, facing front, 500 tall, on floor, left at 0, front at 0
part two: board, upright, facing front, 500 tall, on floor, left at 100 - {tongue}, front at {front}
join one to two: tongue and groove
"""


@pytest.mark.parametrize(("tongue", "short"), [(6, -14), (20, 0), (22, 2)])
def test_a_tongue_goes_in_along_the_edge_and_no_deeper_than_the_board_is_thick(
    tongue: float, short: float
) -> None:
    made = only(TONGUE.format(tongue=tongue, front=0))
    assert (made.axis, made.depth, made.room) == (0, pytest.approx(tongue), pytest.approx(20))
    assert made.short == pytest.approx(short)


def test_a_tongue_makes_no_room_face_to_face() -> None:
    # 60 of their width and 5 of their thickness lie in each other: no edge goes into an edge.
    made = only(TONGUE.format(tongue=60, front=15))
    assert (made.axis, made.room) == (1, 0)
