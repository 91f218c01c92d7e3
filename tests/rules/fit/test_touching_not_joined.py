"""Load-bearing contact with nothing to hold it."""

from __future__ import annotations

from textwrap import dedent

import pytest

from tests.rules.everyday_pieces import EVERYDAY
from tests.rules.sound_pieces import SOUND_PIECES
from tests.support import findings_of, judgement_of, told

RULE = "touching-not-joined"

BENCH = """
plan "Slatted bench" in inches
stock stud: actual 1 1/2 x 3 1/2 spruce-pine-fir
outline frame: 30 across, 12 deep, 16 tall, on floor
part leg for each of left, right: stud, upright, facing side, 14 1/2 tall, on floor
    flush with each of frame, centred deep on frame
part bearer for each of left, right: stud, deep, flat, 12 long, on leg.each
    flush with each of frame, flush with front of frame
join bearer.* to leg.*: screws #8 x 3, 2 per end, from above
part slat: stud, across, flat, from left of frame to right of frame, on bearer.left
    3 copies side by side deep, gap 1/4, row centred on frame
"""


def test_slats_that_lie_loose_are_told_once() -> None:
    # 1 1/2 of slat and 3/4 of the 1 1/2 below is 2 5/8; an inch of bite makes 2 1/2.
    assert told(BENCH, RULE) == [
        "warning slat.1, slat.2, slat.3, bearer.left, bearer.right @ on bearer.left: "
        "slat.1, slat.2 and slat.3 lie on bearer.left and bearer.right with nothing to hold them there. → "
        "Fasten them: join slat.* to bearer.*: screws #8 x 2 1/2, from above — or say that they stay loose: "
        'join slat.* to bearer.*: none because "…"'
    ]


def test_both_ways_out_that_are_told_are_plan_words_that_settle_it() -> None:
    for line in (
        "join slat.* to bearer.*: screws #8 x 2 1/2, from above\n",
        'join slat.* to bearer.*: none because "the slats lift out"\n',
    ):
        assert told(BENCH + line, RULE) == []


@pytest.mark.parametrize("held", ["shelf pins", "glue pva", "dowels 3/8 x 2", "brackets"])
def test_every_join_holds(held: str) -> None:
    assert told(BENCH + f"join slat.* to bearer.*: {held}\n", RULE) == []


def test_a_join_at_one_end_keeps_a_board_from_sliding() -> None:
    tied = BENCH + (
        "part stretcher: stud, across, flat, between leg.left and leg.right, centred deep on frame, bottom at 4\n"
        "join stretcher to leg.*: screws #8 x 3, 2 per end\n"
        "join slat.* to bearer.left: screws #8 x 2 1/2, from above\n"
    )
    assert told(tied, RULE) == []
    # Without the stretcher nothing but weight keeps the right leg under the slats.
    legs_apart = BENCH + "join slat.* to bearer.left: screws #8 x 2 1/2, from above\n"
    assert [finding.parts[0] for finding in findings_of(legs_apart, RULE)] == ["bearer.right"]


def test_what_others_hold_rigidly_need_not_be_joined_there() -> None:
    # The shelf is dadoed into both sides; the divider under it is joined to the bottom and to the back of it.
    text = """
    plan "Case" in inches
    stock board: actual 3/4 x 11 1/4 red oak
    outline case: 30 across, 11 1/4 deep, 36 tall, on floor
    part side for each of left, right: board, upright, facing side, 36 tall, on floor
        front at 0, flush with each of case
    part bottom: board, across, flat, between side.left and side.right, front at 0, on floor
    part shelf: board, across, flat, between side.left and side.right, front at 0, bottom at 12
    part divider: board, upright, facing side, from top of bottom to bottom of shelf, front at 0
        centred across on case
    join bottom, shelf to side.*: dowels 3/8 x 2, 3 per end, glue pva
    join divider to {held}: glue pva
    """
    assert told(text.format(held="bottom"), RULE) == []
    loose = text.format(held="bottom").replace("join divider to bottom: glue pva", "")
    assert told(loose, RULE) == [
        "warning divider, bottom, shelf @ from top of bottom to bottom of shelf: "
        "divider stands on bottom and under shelf with nothing to hold it there. → "
        "Fasten it: join divider to bottom, shelf: brackets — or say that it stays loose: "
        'join divider to bottom, shelf: none because "…"'
    ]


def test_a_whole_case_on_a_loose_base_is_told_once() -> None:
    text = """
    plan "Case on a base" in millimetres
    stock board: actual 20 x 300 pine
    outline case: 600 across, 300 deep, 800 tall, bottom 20 above floor
    part base: board, across, flat, 600 long, left at 0, front at 0, on floor
    part side for each of left, right: board, upright, facing side, 800 tall, on base, front at 0
        flush with each of case
    part top: board, across, flat, between side.left and side.right, front at 0, flush with top of case
    join top to side.*: screws 4 x 50, 3 per end
    """
    assert told(text, RULE) == [
        "warning base, side.left, side.right @ on floor: "
        "base stands under side.left and side.right with nothing to hold it there. → "
        "Fasten it: join base to side.*: brackets — or say that it stays loose: "
        'join base to side.*: none because "…"'
    ]
    tied = (
        dedent(text)
        + "room: indoors, wall behind\nrestrain top to wall: strap, screws 5 x 60 into stud, 700 up\n"
    )
    assert len(findings_of(tied, RULE)) == 1  # the strap holds the case, and nothing holds the base
    fixed = dedent(text) + "join base to floor: brackets\n"
    assert len(findings_of(fixed, RULE)) == 1  # now it is the case that can slide off


def test_standing_on_the_floor_is_no_fault() -> None:
    text = """
    plan "Block" in inches
    stock board: actual 3/4 x 3 red oak
    part block: board, across, flat, 6 long, left at 0, front at 0, on floor
    """
    assert told(text, RULE) == []


def test_metric_screws_for_a_metric_plan() -> None:
    text = """
    plan "Lid" in millimetres
    stock board: actual 20 x 300 pine
    part box: board, across, on edge, 600 long, left at 0, front at 0, on floor
    part lid: board, across, flat, 600 long, left at 0, front at 0, on box
    """
    # 20 through the lid and an inch of bite: 45 is the longest usual screw within 45.4.
    assert told(text, RULE) == [
        "warning lid, box @ on box: lid lies on box with nothing to hold it there. → "
        "Fasten it: join lid to box: screws 4 mm x 45, from above — or say that it stays loose: "
        'join lid to box: none because "…"'
    ]
    assert told(dedent(text) + "join lid to box: screws 4 mm x 45, from above\n", RULE) == []


def test_it_can_be_accepted() -> None:
    text = BENCH + 'accept touching-not-joined on slat.* because "they lift out"\n'
    judged = judgement_of(text, only=RULE)
    assert judged.findings == ()
    assert len(judged.waived) == 1


@pytest.mark.parametrize(
    "name", [*SOUND_PIECES, *(name for name in EVERYDAY if name not in ("stool", "lamp table"))]
)
def test_sound_pieces_are_quiet(name: str) -> None:
    assert told({**SOUND_PIECES, **EVERYDAY}[name], RULE) == []


def test_what_is_tied_to_the_wall_cannot_slide() -> None:
    text = """
    plan "Crate on a chest" in millimetres
    stock board: actual 20 x 300 pine
    part chest: board, across, on edge, 600 long, left at 0, against wall, on floor
    part crate: board, across, flat, 300 long, left at 0, against wall, on chest
    """
    assert len(findings_of(text, RULE)) == 1
    tied = dedent(text) + "restrain crate to wall: strap, screws 5 x 60 into stud, 300 up\n"
    assert told(tied, RULE) == [
        "warning chest, crate @ on floor: chest stands under crate with nothing to hold it there. → "
        "Fasten it: join chest to crate: screws 4 mm x 45, from above — or say that it stays loose: "
        'join chest to crate: none because "…"'
    ]
    both = tied + "restrain chest to wall: strap, screws 5 x 60 into stud, 250 up\n"
    assert told(both, RULE) == []
