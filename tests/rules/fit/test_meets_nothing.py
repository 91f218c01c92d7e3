"""Parts that miss what they are placed at. Gaps are sums of the plan's own sizes, done by hand."""

from __future__ import annotations

import pytest

from tests.rules.everyday_pieces import EVERYDAY
from tests.rules.sound_pieces import SOUND_PIECES
from tests.support import findings_of, judgement_of, told

RULE = "meets-nothing"

CASE = """
plan "Case" in inches
stock board: actual 3/4 x 11 1/4 red oak
outline case: 30 across, 24 deep, 36 tall, on floor
part side for each of left, right: board, upright, facing side, 30 tall, on floor
    front at 0, flush with each of case
part shelf: board, across, flat, between side.left and side.right, {place}
"""


def test_a_shelf_above_the_sides_misses_both() -> None:
    # The sides end at 30, the shelf begins at 32.
    assert told(CASE.format(place="front at 0, bottom 32 above floor"), RULE) == [
        "error shelf, side.left, side.right @ between side.left and side.right: "
        "shelf misses side.left and side.right: the plan says “between side.left and side.right”, "
        "but it is 2 in above them. → "
        "Move shelf more than 2 in down, or name in “between side.left and side.right” what it really meets."
    ]


def test_both_other_axes_are_told() -> None:
    # The sides end 11 1/4 back, the shelf begins at 12: 3/4 behind.
    assert told(CASE.format(place="front at 12, bottom 32 above floor"), RULE) == [
        "error shelf, side.left, side.right @ between side.left and side.right: "
        "shelf misses side.left and side.right: the plan says “between side.left and side.right”, "
        "but it is 3/4 in behind and 2 in above them. → "
        "Move shelf more than 3/4 in to the front and more than 2 in down, "
        "or name in “between side.left and side.right” what it really meets."
    ]


def test_a_bare_line_is_no_meeting() -> None:
    assert told(CASE.format(place="front at 0, bottom 30 above floor"), RULE) == [
        "error shelf, side.left, side.right @ between side.left and side.right: "
        "shelf misses side.left and side.right: the plan says “between side.left and side.right”, "
        "but it touches along a line only. → "
        "Move shelf so that faces meet, or name in “between side.left and side.right” what it really meets."
    ]


@pytest.mark.parametrize(
    "place", ["front at 0, bottom 29 7/8 above floor", "front at 11, bottom 4 above floor"]
)
def test_any_shared_face_keeps_the_promise(place: str) -> None:
    assert told(CASE.format(place=place), RULE) == []


def test_copies_that_miss_alike_are_told_once() -> None:
    text = """
    plan "Bench" in millimetres
    stock post: actual 40 x 40 pine
    stock board: actual 20 x 300 pine
    outline frame: 900 across, 400 deep, 420 tall, on floor
    part leg: post, upright, 400 tall, in each corner of frame
    part end for each of left, right: post, deep, between leg.front-each and leg.back-each
        flush with each of frame, bottom 400 above floor
    part top: board, across, flat, 900 long, left at 0, front at 0, on end.left
    """
    # The ends stand on the legs' top corner: they touch along a line, each with two legs.
    found = findings_of(text, RULE)
    assert [finding.parts for finding in found] == [
        ("end.left", "end.right", "leg.front-left", "leg.back-left", "leg.front-right", "leg.back-right")
    ]
    off = text.replace("bottom 400", "bottom 425")
    assert told(off, RULE) == [
        "error end.left, end.right, leg.front-left, leg.back-left, leg.front-right, leg.back-right "
        "@ between leg.front-each and leg.back-each: "
        "end.left and end.right miss leg.front-left, leg.back-left, leg.front-right and leg.back-right: "
        "the plan says “between leg.front-each and leg.back-each”, but end.left is 25 mm above leg.front-left. → "
        "Move end.left and end.right more than 25 mm down, "
        "or name in “between leg.front-each and leg.back-each” what they really meet."
    ]


@pytest.mark.parametrize(
    ("clause", "missed"),
    [
        ("on side.left", "1 in to the right of it"),
        ("against right of side.left", "2 in above it"),
        ("under side.left", None),
    ],
)
def test_on_under_and_against_promise_too(clause: str, missed: str | None) -> None:
    text = """
    plan "Blocks" in inches
    stock board: actual 3/4 x 3 red oak
    part side.left: board, upright, facing side, 30 tall, bottom at 2, front at 0, left at 0
    part block: board, across, flat, 6 long, front at 0, {place}, {clause}
    """
    place = {"on": "left at 1 3/4", "against": "bottom at 34", "under": "left at 0"}[clause.split()[0]]
    found = told(text.format(place=place, clause=clause), RULE)
    if missed is None:
        assert found == []
    else:
        assert len(found) == 1
        assert f"but it is {missed}. →" in found[0]


def test_outlines_floor_and_slack_promise_nothing() -> None:
    text = """
    plan "Loose" in inches
    stock board: actual 3/4 x 3 red oak
    outline box: 12 across, 3 deep, 12 tall, on floor
    part foot for each of left, right: board, upright, facing side, 4 tall, on floor, front at 0, flush with each of box
    part lid: board, across, flat, on box, from left of box to right of box, front at 0
    part bar: board, across, flat, between foot.left and foot.right with 1/8 each end, front at 0, bottom at 8
    """
    assert told(text, RULE) == []


def test_clauses_that_disagree_are_left_to_their_own_rule() -> None:
    text = """
    plan "Disagreeing" in inches
    stock board: actual 3/4 x 3 red oak
    part low: board, across, flat, 12 long, left at 0, front at 0, on floor
    part high: board, across, flat, 12 long, left at 0, front at 0, top at 5, on low
    """
    assert told(text, RULE) == []
    assert len(findings_of(text, "placing-disagrees")) == 1


def test_it_can_be_accepted() -> None:
    text = CASE.format(place="front at 0, bottom 32 above floor")
    text += 'accept meets-nothing on shelf because "cords hold it above the sides"\n'
    judged = judgement_of(text, only=RULE)
    assert judged.findings == ()
    assert len(judged.waived) == 1


@pytest.mark.parametrize("name", [*SOUND_PIECES, *EVERYDAY])
def test_sound_pieces_are_quiet(name: str) -> None:
    assert told({**SOUND_PIECES, **EVERYDAY}[name], RULE) == []
