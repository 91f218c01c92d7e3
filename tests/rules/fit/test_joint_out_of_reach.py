"""Joins of parts that do not meet. Gaps are sums of the plan's own sizes, done by hand."""

from __future__ import annotations

import pytest

from tests.rules.everyday_pieces import EVERYDAY
from tests.rules.sound_pieces import SOUND_PIECES
from tests.support import findings_of, judgement_of, told

RULE = "joint-out-of-reach"

TABLE = """
plan "Table" in inches
stock post: actual 2 x 2 red oak
stock board: actual 3/4 x 3 red oak
outline frame: 30 across, 20 deep, 28 tall, on floor
part leg: post, upright, as tall as frame, in each corner of frame
part rail for each of front, back: board, across, on edge, between leg.each-left and leg.each-right
    flush with each of frame, flush with top of frame
join rail.* to leg.*: dowels 3/8 x 2, 2 per end, glue pva
"""


def test_parts_apart_are_told_how_far_and_which_way() -> None:
    text = TABLE + (
        "part brace: board, deep, flat, 10 long, centred deep on frame, centred across on frame, on floor\n"
        "join brace to rail.*: screws #8 x 2, 2 per end\n"
    )
    # Rails: 25 to 28 up, the front one 0 to 3/4 deep. The brace: 0 to 3/4 up, 5 to 15 deep.
    assert told(text, RULE) == [
        "error brace, rail.front @ brace: "
        "brace does not meet rail.front, the nearest of its list: "
        "they are 4 1/4 in apart front to back and 24 1/4 in up and down. → "
        "Move them together, or take brace out of this join."
    ]


def test_each_part_of_the_first_list_must_meet_something() -> None:
    text = TABLE + (
        "part end for each of left, right: board, deep, on edge, between leg.front-each and leg.back-each\n"
        "    flush with each of frame, flush with top of frame\n"
        "part shelf: board, across, flat, 20 long, centred across on frame, centred deep on frame, bottom at 10\n"
        "join end.*, shelf to leg.*: screws #8 x 3, 2 per end\n"
    )
    # The shelf runs from 5 to 25 across and 8 1/2 to 11 1/2 deep, the legs from 0 to 2 both ways.
    assert told(text, RULE) == [
        "error shelf, leg.front-left @ end.*, shelf: "
        "shelf does not meet leg.front-left, the nearest of its list: "
        "they are 3 in apart side to side and 6 1/2 in front to back. → "
        "Move them together, or take shelf out of this join."
    ]


def test_of_copies_joined_to_it_is_enough_that_one_is_met() -> None:
    text = TABLE + (
        "part slat: board, across, on edge, from left of frame to right of frame, against front of leg.front-left\n"
        "    4 copies side by side up, gap 1, bottom 2 above floor\n"
        "part cleat: board, deep, flat, 6 long, front at 0, left at 5, bottom at {low}\n"
        "join slat.* to leg.*: screws #8 x 2, 2 per joint\n"
        "join cleat to slat.*: screws #8 x 2, 1 per joint\n"
    )
    # Slats from 2 to 5, 6 to 9 …: at 3 the cleat meets the first, at 5 1/8 it looks into the gap.
    assert told(text.format(low="3"), RULE) == []
    assert [f.parts for f in findings_of(text.format(low="5 1/8"), RULE)] == [("cleat", "slat.1")]


def test_a_named_part_of_the_second_list_must_be_met() -> None:
    text = TABLE + (
        "part shelf: board, across, flat, between leg.front-left and leg.front-right, front at 0, bottom at 10\n"
        "part block: board, across, flat, 4 long, left at 10, front at 0, on floor\n"
        "join shelf to leg.*, block: screws #8 x 3, 2 per end\n"
    )
    assert told(text, RULE) == [
        "error block, shelf @ leg.*, block: "
        "block does not meet shelf: they are 9 1/4 in apart up and down. → "
        "Move them together, or take block out of this join."
    ]


def test_touching_along_a_line_is_no_meeting() -> None:
    text = """
    plan "Edge to edge" in millimetres
    stock batten: actual 20 x 60 pine
    part one: batten, across, flat, 600 long, left at 0, front at 0, on floor
    part two: batten, across, flat, 600 long, left at 0, front at 60, bottom at 20
    join one to two: glue pva
    """
    assert told(text, RULE) == [
        "error one, two @ one: one does not meet two: they touch along a line only. → "
        "Move them together, or take one out of this join."
    ]


BUTT = """
plan "Butt" in millimetres
stock batten: actual 20 x 60 pine
part one: batten, across, flat, 600 long, left at 0, front at 0, on floor
part two: batten, across, flat, 600 long, left at 600 - {shared}, front at 0, bottom at 20
join one to two: {how}
"""


def test_a_patch_too_small_for_a_fastener_is_told() -> None:
    # 60 wide: 1 mm of overlap is 60 mm², under the limit of 100 mm².
    assert told(BUTT.format(shared="1", how="screws 4 x 30"), RULE) == [
        "error one, two @ join one to two: one meets two on 1 mm by 60 mm only, too small a patch for a fastener. → "
        "Let them meet on more, or join them to something else there."
    ]
    finding = findings_of(BUTT.format(shared="1", how="screws 4 x 30"), RULE)[0]
    assert finding.working is not None
    assert finding.working.result is not None
    assert finding.working.result.value.amount == pytest.approx(60.0)


@pytest.mark.parametrize(("shared", "how"), [("1.7", "screws 4 x 30"), ("1", "glue pva")])
def test_a_patch_large_enough_or_not_fastened_is_quiet(shared: str, how: str) -> None:
    assert told(BUTT.format(shared=shared, how=how), RULE) == []


def test_the_limit_can_be_set() -> None:
    text = BUTT.format(shared="1.7", how="screws 4 x 30") + "limit touching-least-area: 110\n"
    assert len(findings_of(text, RULE)) == 1


WALL = """
plan "Cleat" in inches
stock board: actual 3/4 x 3 red oak
part cleat: board, across, on edge, 24 long, left at 0, {place}, bottom at 40
join cleat to wall: screws #10 x 3, every 16
"""


def test_a_join_to_the_wall_needs_the_wall() -> None:
    assert told(WALL.format(place="back at 0"), RULE) == [
        "error cleat, wall @ cleat: cleat is joined to the wall, but the plan does not say where it is. → "
        "Say it in the room statement, such as: room: indoors, wall behind"
    ]
    away = "part back: board, across, flat, 24 long, left at 0, against wall, on floor\n"
    assert told(WALL.format(place="back at 0 - 2") + away, RULE) == [
        "error cleat, wall @ cleat: cleat does not meet the wall: they are 2 in apart front to back. → "
        "Move them together, or take cleat out of this join."
    ]
    assert told(WALL.format(place="against wall"), RULE) == []


def test_what_misses_its_place_is_left_to_meets_nothing() -> None:
    text = TABLE + (
        "part shelf: board, across, flat, between leg.front-left and leg.front-right, front at 0, bottom at 30\n"
        "join shelf to leg.*: screws #8 x 3, 2 per end\n"
    )
    assert told(text, RULE) == []
    assert len(findings_of(text, "meets-nothing")) == 1


def test_it_can_be_accepted() -> None:
    text = (
        BUTT.format(shared="(0 - 5)", how="glue pva")
        + 'accept joint-out-of-reach because "a spline bridges it"\n'
    )
    judged = judgement_of(text, only=RULE)
    assert judged.findings == ()
    assert len(judged.waived) == 1


@pytest.mark.parametrize("name", [*SOUND_PIECES, *(name for name in EVERYDAY if name != "workbench")])
def test_sound_pieces_are_quiet(name: str) -> None:
    assert told({**SOUND_PIECES, **EVERYDAY}[name], RULE) == []
