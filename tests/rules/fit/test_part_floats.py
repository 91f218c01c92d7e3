"""Parts that nothing holds up. Gaps are sums of the plan's own sizes, done by hand."""

from __future__ import annotations

import pytest

from tests.rules.everyday_pieces import EVERYDAY
from tests.rules.sound_pieces import SOUND_PIECES
from tests.support import findings_of, judgement_of, told

RULE = "part-floats"

SIDES = """
plan "Case" in inches
stock board: actual 3/4 x 11 1/4 red oak
outline case: 30 across, 11 1/4 deep, 36 tall, on floor
part side for each of left, right: board, upright, facing side, 36 tall, on floor
    front at 0, flush with each of case
"""
SHELF = (
    "part shelf: board, across, flat, between side.left and side.right, front at 0, bottom 12 above floor\n"
)


def test_what_touches_something_that_stands_is_told_by_its_own_rule() -> None:
    assert told(SIDES + SHELF, RULE) == []
    assert len(findings_of(SIDES + SHELF, "load-path-broken")) == 1


def test_the_nearest_part_that_stands_is_named_with_the_gap() -> None:
    # The sides end at 36; the top is drawn 2 in higher and reaches over both.
    text = SIDES + "part top: board, across, flat, 30 long, left at 0, front at 0, bottom 38 above floor\n"
    assert told(text, RULE) == [
        "error top @ bottom 38 above floor: "
        "top hangs in the air: it is 2 in above side.left, the nearest part that stands, with nothing between. → "
        "Close the gap of 2 in to side.left, or add what holds top up."
    ]
    assert told(text.replace("bottom 38", "bottom 36"), RULE) == []


def test_what_hangs_together_is_told_once() -> None:
    text = SIDES + (
        "part tray: board, across, flat, 20 long, left at 40, front at 0, bottom 5 above floor\n"
        "part post for each of left, right: board, upright, facing side, 10 tall, on tray, front at 0\n"
        "    flush with each of tray\n"
        "part lid: board, across, flat, on post.left, from left of tray to right of tray, front at 0\n"
    )
    # The tray begins at 40; the right side ends at 30, 10 in away. The floor is only 5 in below.
    assert told(text, RULE) == [
        "error tray, post.left, post.right, lid @ bottom 5 above floor: "
        "tray, post.left, post.right and lid hang in the air: tray is 5 in above the floor, with nothing between. → "
        "Close the gap of 5 in to the floor, or add what holds tray, post.left, post.right and lid up."
    ]


def test_copies_that_hang_alike_are_told_once() -> None:
    text = SIDES + (
        "part shelf: board, across, flat, 20 long, left at 5, front at 0\n"
        "    3 copies every 8 up, bottom 8 above floor\n"
    )
    assert [finding.parts for finding in findings_of(text, RULE)] == [("shelf.1", "shelf.2", "shelf.3")]


def test_a_whole_piece_off_the_floor_is_told_once_in_millimetres() -> None:
    text = """
    plan "Bench" in millimetres
    stock board: actual 40 x 200 pine
    outline frame: 900 across, 200 deep, 400 tall, bottom 12 above floor
    part leg for each of left, right: board, upright, facing side, flush with bottom of frame, 360 tall
        front at 0, flush with each of frame
    part seat: board, across, flat, on leg.left, from left of frame to right of frame, front at 0
    join seat to leg.*: dowels 10 x 40, glue pva
    """
    assert told(text, RULE) == [
        "error leg.left, leg.right, seat @ flush with bottom of frame: "
        "leg.left, leg.right and seat hang in the air: leg.left is 12 mm above the floor, with nothing between. → "
        "Close the gap of 12 mm to the floor, or add what holds leg.left, leg.right and seat up."
    ]
    assert told(text.replace("bottom 12 above floor", "on floor"), RULE) == []


WALL_SHELF = """
plan "Wall shelf" in inches
stock board: actual 3/4 x 7 1/4 pine
part shelf: board, across, flat, 24 long, left at 0, back at 0, bottom 40 above floor
part cleat: board, across, on edge, 24 long, left at 0, against wall, under shelf
join shelf to cleat: screws #8 x 2, every 8, from above
room: indoors, wall behind
"""


def test_the_gap_to_the_wall_is_told() -> None:
    text = WALL_SHELF.replace("back at 0", "back at 0 - 1").replace("against wall", "back at 0 - 1")
    text += "part wall-board: board, across, flat, 2 long, left at 0, against wall, on floor\n"
    assert told(text, RULE) == [
        "error shelf, cleat @ back at 0 - 1: "
        "shelf and cleat hang in the air: shelf is 1 in in front of the wall, with nothing between. → "
        "Close the gap of 1 in to the wall, or add what holds shelf and cleat up."
    ]


def test_parts_that_share_space_or_miss_their_place_are_told_by_their_own_rules() -> None:
    overlapping = SIDES + (
        "part shelf: board, across, flat, from left of case to right of case, front at 0, bottom 12 above floor\n"
    )
    missing = SIDES + SHELF.replace("bottom 12", "bottom 37")
    unreached = SIDES + SHELF.replace("between side.left and side.right", "10 long, left at 5")
    unreached += "join shelf to side.*: screws #8 x 2, 3 per end\n"
    others = (
        (overlapping, "parts-overlap"),
        (missing, "meets-nothing"),
        (unreached, "joint-out-of-reach"),
    )
    for text, other in others:
        assert told(text, RULE) == []
        assert len(findings_of(text, other)) == 1


def test_it_can_be_accepted() -> None:
    shelf = SHELF.replace("between side.left and side.right", "10 long, left at 5")
    text = SIDES + shelf + 'accept part-floats on shelf because "it is hung on cords from the ceiling"\n'
    judged = judgement_of(text, only=RULE)
    assert judged.findings == ()
    assert [finding.parts for finding in judged.waived] == [("shelf",)]


@pytest.mark.parametrize("name", [*SOUND_PIECES, *EVERYDAY])
def test_sound_pieces_are_quiet(name: str) -> None:
    assert told({**SOUND_PIECES, **EVERYDAY}[name], RULE) == []
