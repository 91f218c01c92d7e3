"""Parts that stand beside others and that nothing ties to them."""

from __future__ import annotations

import pytest

from tests.support import findings_of, judgement_of, look_at, told

RULE = "never-joined"
#: Every rule that tells of a part that is loose, in the air or not where it should be.
OF_LOOSE_PARTS = (
    RULE,
    "touching-not-joined",
    "load-path-broken",
    "part-floats",
    "moves-unfitted",
    "unsupported-end",
    "meets-nothing",
    "parts-overlap",
    "joint-out-of-reach",
)

CASE = """
plan "Case" in inches
stock board: 1x10 pine
stock ply: birch plywood 1/4
stock strip: actual 3/4 x 1 1/2 pine
outline case: 24 across, 9 1/4 deep, 30 tall, on floor
part side for each of left, right: board, upright, facing side, as tall as case, on floor
    flush with each of case, flush with front of case
part top: board, across, flat, between side.left and side.right, flush with top of case
    flush with front of case
join top to side.*: screws #8 x 2, 3 per joint, from outside
"""
BACK = """part back: ply, facing front, 24 across, 30 tall, on floor, against back of case
    flush with left of case
"""
BENCH = """
plan "Bench" in inches
stock stud: 2x4 spruce-pine-fir
outline frame: 30 across, 12 deep, 16 tall, on floor
part leg: stud, upright, facing front, as tall as frame, in each corner of frame
part rail for each of front, back: stud, across, on edge
    between leg.each-left and leg.each-right, flush with each of frame, flush with top of frame
part end for each of left, right: stud, deep, on edge
    between leg.front-each and leg.back-each, flush with each of frame, flush with top of frame
join rail.*, end.* to {legs}: pocket screws 2 1/2, 2 per joint, glue pva
"""


def loose(plan: str) -> list[tuple[str, str, tuple[str, ...]]]:
    """What all rules about loose parts tell, each with its weight and the parts that it is about."""
    found = judgement_of(plan).findings
    return [(each.rule, each.weight.word, each.parts) for each in found if each.rule in OF_LOOSE_PARTS]


def test_a_back_that_stands_behind_its_case_is_told() -> None:
    assert told(CASE + BACK, RULE) == [
        "warning back, side.left, side.right, top @ back: "
        "back only touches side.left, side.right and top, and no join names it. → "
        "Say what holds it: join back to side.*, top: screws, dowels or glue — or that it stays loose: "
        'join back to side.*, top: none because "…"'
    ]
    assert [rule for rule, _, _ in loose(CASE + BACK)] == [RULE]


@pytest.mark.parametrize(
    "more",
    [
        "join back to side.*, top: screws #6 x 1, every 6, from back\n",
        'join back to side.*: none because "it slides out"\n',
        "join side.*, top to *: glue pva\n",
        "restrain back to wall: screws #10 x 2 1/2 into stud, 24 up\n",
        'accept never-joined on back because "it is wedged in"\n',
    ],
)
def test_a_back_that_something_names_is_not(more: str) -> None:
    found = look_at(CASE + BACK + more, only=RULE)
    assert found.problems == ()
    assert found.judgement is not None
    assert found.judgement.findings == ()


def test_a_restraint_of_the_whole_case_does_not_hold_its_back() -> None:
    more = "room: indoors, wall behind\nrestrain case to wall: screws #10 x 2 1/2 into stud, 24 up\n"
    assert len(findings_of(CASE + BACK + more, RULE)) == 1


def test_knobs_and_feet_hold_no_part_to_another() -> None:
    assert len(findings_of(CASE + BACK + "fit back: 1 knobs\n", RULE)) == 1
    assert len(findings_of(CASE + BACK + "fit back to floor: 2 glides\n", RULE)) == 1


def test_hinges_do() -> None:
    assert findings_of(CASE + BACK + "fit back to side.left: 2 hinges 2, screws #6 x 5/8\n", RULE) == ()


def test_a_plan_without_joins_is_no_case_for_it() -> None:
    plan = CASE[: CASE.index("join")].replace("flush with top of case\n", "on floor\n") + BACK
    assert look_at(plan).problems == ()
    assert findings_of(plan, RULE) == ()


# ---------------------------------------------------------------- one teller


def test_what_lies_on_another_part_is_touching_not_joined() -> None:
    more = (
        "part lid: strip, across, flat, 24 long, on case, flush with left of case, flush with front of case\n"
    )
    assert [rule for rule, _, _ in loose(CASE + more)] == ["touching-not-joined"]


def test_what_stands_under_another_part_is_too() -> None:
    more = "part prop: strip, upright, facing front, on floor, under top, left 5 right of left of case, front at 1\n"
    assert [rule for rule, _, _ in loose(CASE + more)] == ["touching-not-joined"]


def test_what_nothing_holds_up_is_load_path_broken() -> None:
    more = BACK.replace("30 tall, on floor", "20 tall, bottom 5 above floor")
    assert [rule for rule, _, _ in loose(CASE + more)] == ["load-path-broken"]


def test_what_touches_nothing_is_part_floats_or_a_piece_by_itself() -> None:
    away = BACK.replace("against back of case", "front 3 behind back of case")
    assert loose(CASE + away) == []
    up = away.replace("on floor", "bottom 5 above floor")
    assert [rule for rule, _, _ in loose(CASE + up)] == ["part-floats"]


def test_what_shares_space_is_parts_overlap() -> None:
    more = BACK.replace("against back of case", "back 0 in front of back of case")
    assert [rule for rule, _, _ in loose(CASE + more)] == ["parts-overlap"]


def test_what_shares_space_with_one_part_is_not_told_for_the_others_that_it_touches() -> None:
    more = """part back: ply, facing front, between side.left and side.right across, 30 tall, on floor
    flush with back of case
"""
    assert [rule for rule, _, _ in loose(CASE + more)] == ["parts-overlap"]


def test_what_misses_its_place_is_meets_nothing() -> None:
    more = f"""{BACK}join back to side.*: screws #6 x 1, 2 per joint, from back
part block: strip, upright, facing front, 20 tall, on floor, against left of side.left, front 20 behind back
part post: strip, upright, facing front, 20 tall, on floor, flush with front of block, against left of block
"""
    assert [(rule, parts) for rule, _, parts in loose(CASE + more)] == [
        ("meets-nothing", ("block", "side.left")),
        (RULE, ("post", "block")),
    ]


def test_a_door_without_hinges_is_moves_unfitted() -> None:
    door = """part door: board, upright, facing front, 26 tall, bottom 1 above floor, right 1/8 left of left of side.right
    flush with front of case, opens 110 degrees, hinged right
"""
    assert [rule for rule, _, _ in loose(CASE + door)] == ["moves-unfitted"]


def test_a_forgotten_leg_is_told_in_place_of_the_rail_that_stops_at_it() -> None:
    assert loose(BENCH.format(legs="leg.*")) == []
    plan = BENCH.format(legs="leg.front-left, leg.front-right, leg.back-left")
    assert loose(plan) == [(RULE, "error", ("leg.back-right", "rail.back", "end.right"))]
    assert told(plan, RULE) == [
        "error leg.back-right, rail.back, end.right @ leg: "
        "leg.back-right only touches rail.back and end.right, and no join names it. "
        "rail.back and end.right stop there with nothing else under that end. → "
        "Say what holds it: join leg.back-right to rail.back, end.right: screws, dowels or glue — or that "
        'it stays loose: join leg.back-right to rail.back, end.right: none because "…"'
    ]


def test_where_that_is_accepted_the_rail_is_told() -> None:
    plan = BENCH.format(legs="leg.front-left, leg.front-right, leg.back-left")
    plan += 'accept never-joined on leg.back-right because "it comes later"\n'
    assert ("unsupported-end", "error", ("rail.back",)) in loose(plan)


def test_copies_are_told_together_and_parts_that_only_touch_each_other() -> None:
    row = "part block: strip, across, flat, 10 long, on floor, left at 40\n    3 copies side by side deep, front at 0\n"
    assert told(CASE + row, RULE) == [
        "warning block.1, block.2, block.3 @ block: block.1, block.2 and block.3 only touch each other, "
        "and no join names them. → Say what holds them: join block.* to block.*: screws, dowels or glue — or "
        'that they stay loose: join block.* to block.*: none because "…"'
    ]
    mended = CASE + row + 'join block.* to block.*: none because "…"\n'
    assert findings_of(mended, RULE) == ()


# ---------------------------------------------------------------- what moves

DRAWER = """
part bottom: like top, on floor
join bottom to side.*: screws #8 x 2, 3 per joint, from outside
assembly drawer: slides out 6
    outline box: 20 across, 8 deep, 1 1/2 tall, left 2 right of left of case, on bottom, front 1/2 behind front of case
    part side for each of left, right: strip, deep, on edge, from front of box to back of box
        flush with each of box, flush with bottom of box
    part front: strip, across, on edge, between side.left and side.right, flush with front of box
        flush with bottom of box
    part back: strip, across, on edge, between side.left and side.right, flush with back of box
        flush with bottom of box
    join side.* to front: screws #6 x 1 1/2, 1 per joint, from outside
"""


def test_a_part_of_a_drawer_that_slides_on_what_is_below_it_is_told() -> None:
    assert told(CASE + DRAWER, RULE) == [
        "warning drawer.back, drawer.side.left, drawer.side.right @ back: drawer.back only touches "
        "drawer.side.left and drawer.side.right, and no join names it. → Say what holds it: join drawer.back to "
        "drawer.side.*: screws, dowels or glue — or that it stays loose: join drawer.back to drawer.side.*: "
        'none because "…"'
    ]


def test_a_tray_that_lifts_out_is_not() -> None:
    tray = BACK.replace("\n    flush", ", lifts out\n    flush")
    assert findings_of(CASE + tray, RULE) == ()


def test_what_stands_beside_a_drawer_alone_is_not() -> None:
    more = """part stop: strip, upright, facing side, 1 tall, on bottom, against left of drawer.side.left
    front 2 behind front of case
join stop to bottom: none because "it is only laid in"
"""
    assert len(findings_of(CASE + DRAWER + more, RULE)) == 1
    more = more.replace("on bottom", "on floor").replace("join stop to bottom", "join back to side.left")
    case = CASE.replace("join top", BACK + "join top")
    floor = DRAWER.replace("on bottom, front", "on floor, front").replace(
        "part bottom: like top, on floor\n", ""
    )
    floor = floor.replace("join bottom to side.*: screws #8 x 2, 3 per joint, from outside\n", "")
    assert [each.parts[0] for each in findings_of(case + floor + more, RULE)] == ["drawer.back"]


def test_what_hangs_on_slides_is_held_by_them() -> None:
    plan = CASE + DRAWER.replace("left 2 right", "left 1 1/4 right").replace("20 across", "21 1/2 across")
    plan = plan.replace("    join side.* to front: screws #6 x 1 1/2, 1 per joint, from outside\n", "")
    plan = plan.replace("on bottom, front 1/2", "bottom 5 above floor, front 1/2")
    plan += "fit drawer to side.*: slides 8, screws #6 x 5/8\n"
    found = loose(plan)
    assert {rule for rule, _, _ in found} == {"load-path-broken"}
