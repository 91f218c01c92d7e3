"""Faces a hair apart. Gaps are sums of the plan's own sizes, done by hand."""

from __future__ import annotations

import pytest

from tests.rules.sound_pieces import BOOKCASE as PLYWOOD_CASE
from tests.rules.sound_pieces import SIDE_TABLE, STEP_STOOL, WALL_SHELF
from tests.support import findings_of, judgement_of, told

RULE = "open-joint"

CASE = """
plan "Bookcase shelf" in millimetres
stock board: actual 18 x 200 pine
outline case: 600 across, 200 deep, 900 tall, on floor
part side for each of left, right: board, upright, facing side, 900 tall, on floor, front at 0
    flush with each of case
part shelf: board, across, flat, {long} long, front at 0, centred across on case, bottom 400 above floor
"""


def test_a_shelf_a_hair_too_short_is_told_with_both_gaps() -> None:
    # 600 less two sides of 18 is 564: a shelf of 562 leaves 1 mm at each end.
    assert told(CASE.format(long=562), RULE) == [
        "warning side.left, side.right, shelf @ centred across on case: "
        "shelf stands 1 mm off side.left and side.right side to side, so close that they look meant to touch. → "
        'Close the gap, or keep it and say why: accept open-joint on shelf because "…"'
    ]


@pytest.mark.parametrize(("gap", "found"), [(0, 0), (0.04, 0), (0.06, 1), (2, 1), (2.01, 0)])
def test_from_the_tolerance_up_to_the_limit(gap: float, found: int) -> None:
    text = CASE.format(long=564 - 2 * gap) + "limit open-joint-gap: 2\n"
    assert len(findings_of(text, RULE)) == found


def test_the_gap_of_a_row_counts_too() -> None:
    # Three planks with 3/32 between them: one finding for both gaps.
    text = """
    plan "Planks" in inches
    stock plank: actual 1 1/2 x 7 1/4 spruce-pine-fir
    part seat: plank, across, flat, 48 long, left at 0, on floor
        3 copies side by side deep, gap {gap}, front at 0
    """
    assert told(text.format(gap="3/32"), RULE) == [
        "warning seat.1, seat.2, seat.3 @ 3 copies side by side deep: "
        "seat.1, seat.2 and seat.3 stand 3/32 in apart front to back, so close that they look meant to touch. → "
        "Keep the gap for the boards to swell into and say that it is wanted: accept open-joint on seat.* because "
        '"…". Or lay them touching.'
    ]
    assert len(findings_of(text.format(gap="1/8"), RULE)) == 1
    assert told(text.format(gap="3/16"), RULE) == []
    # 7 1/4 · 0.00274 · (10 - 6) = 0.079 in: the boards fill 1/16 when made up dry, which gap-closes tells alone.
    assert told(text.format(gap="1/16"), RULE) == []
    assert len(findings_of(text.format(gap="1/16"), "gap-closes")) == 1
    assert told(text.format(gap="3/32"), "gap-closes") == []


def test_the_gap_of_a_row_of_sheets_is_to_be_closed() -> None:
    text = """
    plan "Panels" in inches
    stock board: birch plywood 3/4, sheet 48 x 96
    part seat: board, across, flat, 48 long, 7 deep, left at 0, on floor
        2 copies side by side deep, gap 1/16, front at 0
    """
    (said,) = told(text, RULE)
    assert "→ Close the gap, or keep it and say why" in said


def test_the_way_out_that_is_told_is_a_waiver_that_reads() -> None:
    text = CASE.format(long=562) + 'accept open-joint on shelf because "it has to slide in"\n'
    judged = judgement_of(text, only=RULE)
    assert judged.findings == ()
    assert [finding.waived_because for finding in judged.waived] == ["it has to slide in"]


@pytest.mark.parametrize(
    "place",
    [
        "between side.left and side.right less 2",
        "between side.left and side.right with 1 each end",
        "562 long, left 1 right of right of side.left",
    ],
)
def test_a_gap_stated_between_these_two_is_meant(place: str) -> None:
    text = CASE.replace("{long} long", place)
    text = text.replace(", centred across on case", "")
    found = findings_of(text, RULE)
    # The last one states the gap at its left end only; that at its right end is told.
    assert [finding.parts for finding in found] == ([("side.right", "shelf")] if "long" in place else [])


def test_a_thin_part_in_the_gap_fills_it() -> None:
    text = """
    plan "Shim" in millimetres
    stock board: actual 20 x 200 pine
    stock veneer: actual 2 x 200 pine
    part lower: board, across, flat, 600 long, left at 0, front at 0, on floor
    {shim}
    part upper: board, across, flat, 600 long, left at 0, front at 0, bottom at 22
    """
    shim = "part shim: veneer, across, flat, 600 long, left at 0, front at 0, on lower"
    assert told(text.format(shim=shim), RULE) == []
    assert len(findings_of(text.format(shim=""), RULE)) == 1


@pytest.mark.parametrize(("shared", "found"), [(95, 0), (105, 1)])
def test_faces_that_hardly_look_at_each_other_are_quiet(shared: int, found: int) -> None:
    """Half of the smaller face is the mark: 200 wide, so 100."""
    text = f"""
    plan "Past each other" in millimetres
    stock board: actual 20 x 200 pine
    part one: board, across, flat, 600 long, left at 0, front at 0, on floor
    part two: board, across, flat, 600 long, left at 0, front at 200 - {shared}, bottom at 21
    """
    assert len(findings_of(text, RULE)) == found


def test_a_join_out_of_reach_is_not_told_twice() -> None:
    text = CASE.format(long=562) + "join shelf to side.*: screws 4 x 50, 2 per end\n"
    assert told(text, RULE) == []
    assert len(findings_of(text, "joint-out-of-reach")) == 1


def test_a_plan_far_too_crowded_says_so(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("reviewer.setting_out.contacts.MAX_CANDIDATES", 0)
    assert told(CASE.format(long=562), RULE) == [
        'warning - @ plan "Bookcase shelf" in millimetres: '
        "So many parts lie so close together that the search for gaps between them was given up. → "
        "Mend the parts that overlap and review again, or split the plan."
    ]


@pytest.mark.parametrize("text", [STEP_STOOL, SIDE_TABLE, WALL_SHELF, PLYWOOD_CASE])
def test_sound_pieces_are_quiet(text: str) -> None:
    assert told(text, RULE) == []


def test_bounds_of_slanting_parts_a_hair_apart_are_no_joint() -> None:
    """The legs' boxes, 20 / cos 8° + 300 tan 8° = 62.36 across, stand 1 mm apart; their faces nowhere so near."""
    text = """
        plan "Two legs" in millimetres
        stock board: actual 20 x 100 pine
        part one: board, upright, facing side, 300 tall, on floor, front at 0, left at 0{lean}
        part two: board, upright, facing side, 300 tall, on floor, front at 0, left at {left}{lean}
    """
    lean = ", tilted 8 degrees towards right"
    assert told(text.format(left=63.36, lean=lean), "open-joint") == []
    assert len(told(text.format(left=21, lean=""), "open-joint")) == 1
