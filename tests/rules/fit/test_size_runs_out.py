"""Parts for which nothing is left. Sizes are sums of the plan's own sizes, done by hand."""

from __future__ import annotations

from tests.rules.mending import mended
from tests.support import findings_of, judgement_of, told

RULE = "size-runs-out"

FRAME = """
plan "Frame" in inches
stock stud: actual 1 1/2 x 3 1/2 spruce-pine-fir
outline frame: 42 across, 12 deep, 16 tall, on floor
"""


def test_faces_named_the_wrong_way_round_can_be_turned() -> None:
    text = (
        FRAME + "part rail: stud, across, flat, from right of frame to left of frame, front at 0, on floor\n"
    )
    assert told(text, RULE) == [
        "error rail @ from right of frame to left of frame: "
        "rail comes out inside out side to side: by “from right of frame to left of frame” its right face comes "
        "42 in before its left face. → Turn it round: from left of frame to right of frame"
    ]
    assert told(mended(text, RULE), RULE) == []


def test_legs_that_leave_no_room_between_them() -> None:
    # Two legs of 3 1/2 in 6 1/2 overlap by half an inch; in 7 they touch; in 7 1/16 a hair of rail is left.
    text = FRAME.replace("42 across", "{width} across") + (
        "part leg for each of left, right: stud, upright, facing front, 16 tall, on floor, front at 0\n"
        "    flush with each of frame\n"
        "part rail: stud, across, on edge, between leg.left and leg.right, front at 0, on floor\n"
    )
    assert told(text.format(width="6 1/2"), RULE) == [
        "error rail @ between leg.left and leg.right: "
        "rail comes out inside out side to side: by “between leg.left and leg.right” its right face comes "
        "1/2 in before its left face. → "
        "Set what “between leg.left and leg.right” names further apart, or name the faces that are really meant."
    ]
    assert told(text.format(width="7"), RULE) == [
        "error rail @ between leg.left and leg.right: "
        "Nothing is left for rail side to side: by “between leg.left and leg.right” its left and its right face "
        "fall together. → "
        "Set what “between leg.left and leg.right” names further apart, or name the faces that are really meant."
    ]
    assert told(text.format(width="7 1/16"), RULE) == []


def test_two_clauses_that_cross_are_both_named() -> None:
    text = """
    plan "Crossed" in millimetres
    stock board: actual 20 x 100 pine
    part board: board, across, flat, left at 300, right at 200, front at 0, on floor
    """
    assert told(text, RULE) == [
        "error board @ right at 200: "
        "board comes out inside out side to side: by “left at 300” and “right at 200” its right face comes "
        "100 mm before its left face. → "
        "Set what “left at 300” and “right at 200” names further apart, or name the faces that are really meant."
    ]


def test_copies_are_told_once() -> None:
    text = FRAME + (
        "part rail for each of front, back: stud, across, flat, from right of frame to left of frame, on floor\n"
        "    flush with each of frame\n"
    )
    found = findings_of(text, RULE)
    assert [finding.parts for finding in found] == [("rail.front", "rail.back")]


def test_it_can_be_accepted() -> None:
    text = (
        FRAME + "part rail: stud, across, flat, from right of frame to left of frame, front at 0, on floor\n"
    )
    judged = judgement_of(text + 'accept size-runs-out because "being drawn"\n', only=RULE)
    assert judged.findings == ()
    assert len(judged.waived) == 1
