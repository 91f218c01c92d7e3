"""unsupported-end, overhang-too-long and bearing-too-short: one board, its supports moved about."""

from __future__ import annotations

import pytest

from reviewer.findings import Severity
from tests.support import findings_of, judgement_of, told

FREE, LONG, SHORT = "unsupported-end", "overhang-too-long", "bearing-too-short"


def seat(*lefts: str, loose: bool = False, width: str = "48", more: str = "") -> str:
    """A plank over plank legs of 1 1/2 in, each at its place from the left."""
    legs = "".join(
        f"""
part leg.{number}: plank, upright, facing side, as tall as base, on floor, flush with front of base
    left at {left}"""
        for number, left in enumerate(lefts, start=1)
    )
    fixed = "join seat to leg.*: screws #8 x 3, 3 per joint, from above"
    if len(lefts) == 1:
        fixed = fixed.replace("leg.*", "leg.1")
    return f"""
plan "Bench" in inches
stock plank: 2x8 spruce-pine-fir
outline base: {width} across, 7 1/4 deep, 16 tall, on floor{legs}
part seat: plank, across, flat, on leg.1, from left of base to right of base, flush with front of base
{"" if loose else fixed}
{more}
"""


# ---------------------------------------------------------------- unsupported-end


def test_one_leg_is_missing() -> None:
    assert told(seat("0"), FREE) == [
        "error seat @ seat: seat has nothing under its right end: 46 1/2 in of 48 in stick out past leg.1, which "
        "holds it at the left end only. → Put a leg, a cleat or a bracket under the right end of seat: then "
        "it sags 0.008 in in the long run, or fix it along the whole length."
    ]


def test_two_legs_under_one_half() -> None:
    assert told(seat("36", "46 1/2"), FREE) == [
        "error seat @ seat: seat has nothing under its left end: 36 in of 48 in stick out past leg.1 and leg.2, "
        "which hold it at the right end only. → Put a leg, a cleat or a bracket under the left end of seat: then "
        "it sags 0.002 in in the long run, or fix it along the whole length."
    ]


def test_a_plank_balancing_on_one_leg() -> None:
    assert told(seat("23 1/4", loose=True), FREE) == [
        "error seat @ seat: seat has nothing under its right end: 23 1/4 in of 48 in stick out past leg.1, which "
        "holds it in the middle only. → Put a leg, a cleat or a bracket under the right end of seat: then "
        "it sags 0.01 in in the long run, or fix it along the whole length."
    ]


@pytest.mark.parametrize(
    ("lefts", "rule"),
    [
        (("0", "22 3/8"), FREE),  # ends at 23 7/8: nothing under the right half
        (("0", "22 1/2"), LONG),  # reaches the very middle
        (("0", "22 5/8"), LONG),
        (("0", "46 1/2"), None),
    ],
)
def test_supports_under_both_halves(lefts: tuple[str, ...], rule: str | None) -> None:
    said = [name for name in (FREE, LONG, SHORT) if findings_of(seat(*lefts), name)]
    assert said == ([] if rule is None else [rule])


def test_its_sag_is_not_told_as_well() -> None:
    text = seat("0", "10", more="load seat: 2 people seated")
    assert findings_of(text, "sags") == ()
    assert len(findings_of(text, FREE)) == 1


def test_copies_are_told_once_and_in_millimetres() -> None:
    text = """
        plan "Arms" in millimetres
        stock board: actual 20 x 60 pine
        stock post: actual 60 x 60 pine
        part post: post, upright, 1000 tall, on floor, left at 0, front at 0
        part arm: board, across, flat, 400 long, front at 0, left at 60, bottom at 200
            3 copies every 250 up
        join arm.* to post: screws 6 x 80, 2 per joint, from outside
        """
    assert told(text, FREE) == [
        "error arm.1, arm.2, arm.3 @ arm: arm.1, arm.2 and arm.3 have nothing under their right end: 400 mm of "
        "400 mm each stick out past post, which holds them at the left end only. → Put a leg, a cleat or a "
        "bracket under the right end of arm.1, arm.2 and arm.3: then they sag 0.01 mm in the long run, "
        "or fix them along the whole length."
    ]


def brackets(nominal: str, length: str) -> str:
    """A wall shelf on two arms, screwed to the wall by their ends."""
    return f"""
        plan "Bracket shelf" in inches
        stock strip: {nominal} pine
        stock board: 1x10 pine
        part arm.left: strip, deep, on edge, {length} long, against wall, bottom at 40, left at 4
        part arm.right: like arm.left, mirrored across about shelf
        part shelf: board, across, flat, 36 long, on arm.left, against wall, left at 0
        join arm.* to wall: screws #10 x 4, 2 per joint
        join shelf to arm.*: screws #8 x 1 1/4, 2 per joint, from above
        room hall: indoors, wall behind
        """


@pytest.mark.parametrize(
    ("nominal", "length", "flagged"),
    [
        ("1x4", "9", False),  # 3 1/2 in of joint for 9 in: more than a quarter
        ("1x2", "6", False),  # 1 1/2 for 6: a quarter
        ("1x2", "6 1/4", True),
    ],
)
def test_a_bracket_holds_by_a_tall_joint(nominal: str, length: str, flagged: bool) -> None:
    assert bool(findings_of(brackets(nominal, length), FREE)) is flagged


def test_a_shelf_screwed_to_a_cleat_along_its_back_is_left_alone() -> None:
    text = """
        plan "Wall shelf" in millimetres
        stock board: actual 20 x 250 pine
        stock strip: actual 20 x 60 pine
        part cleat: strip, across, on edge, 860 long, against wall, bottom 1200 above floor, left at 20
        part shelf: board, across, flat, 900 long, on cleat, against wall, left at 0
        join cleat to wall: screws 5 x 80, every 400
        join shelf to cleat: screws 4 x 45, every 200, from above
        room hall: indoors, wall behind
        """
    for rule in (FREE, LONG, SHORT):
        assert findings_of(text, rule) == ()


def test_a_peg_let_into_a_rail_is_left_alone() -> None:
    text = """
        plan "Peg" in inches
        stock strip: 1x4 pine
        stock peg: actual 3/4 x 3/4 hard maple
        part rail: strip, across, on edge, 20 long, against wall, left at 0, bottom at 60
        part peg: peg, deep, 3 1/2 long, back 1/2 behind front of rail, left at 10, bottom at 61
        join rail to wall: screws #10 x 3, 3 per joint
        join peg to rail: {joint}
        room hall: indoors, wall behind
        """
    tenon = text.format(joint="mortise and tenon 1/2 long, glue pva")
    assert [findings_of(tenon, rule) for rule in (FREE, LONG)] == [(), ()]
    # Stuck on by its end it holds by a joint 3/4 in tall, and sticks out 3 1/2.
    butt = text.replace("back 1/2 behind front of rail", "against front of rail").format(joint="glue pva")
    assert [finding.parts for finding in findings_of(butt, FREE)] == [("peg",)]


def test_a_waiver_of_a_free_end() -> None:
    text = seat("0", more='accept unsupported-end on seat because "it folds down onto the old bench"')
    judged = judgement_of(text, only=FREE)
    assert (judged.findings, len(judged.waived)) == ((), 1)


# ---------------------------------------------------------------- overhang-too-long


def test_both_ends_stick_out_too_far() -> None:
    assert told(seat("10", "36 1/2"), LONG) == [
        "warning seat @ seat: seat sticks out 10 in at the left and right ends. With 28 in between its outer "
        "supports 7 in is the most (0.25 of it; common practice, no source), so that is 3 in too much. → Move "
        "both outer supports out by 2 in: then 8 in sticks out past 32 in. Or cut 3 in off each end."
    ]


def test_one_end_sticks_out_too_far() -> None:
    # 48 - 30 - 1 1/2 = 16 1/2 in past 31 1/2: a quarter is 7 7/8. Moved out by x: 16 1/2 - x = (31 1/2 + x)/4.
    assert told(seat("0", "30"), LONG) == [
        "warning seat @ seat: seat sticks out 16 1/2 in at the right end. With 31 1/2 in between its outer "
        "supports 7 7/8 in is the most (0.25 of it; common practice, no source), so that is 8 5/8 in too much. "
        "→ Move the outer support there out by 6 29/32 in: then 9 19/32 in sticks out past 38 13/32 in. Or cut 8 5/8 in "
        "off that end."
    ]


@pytest.mark.parametrize(("inset", "flagged"), [("3", False), ("8", False), ("8 1/16", True)])
def test_a_quarter_of_what_lies_between_the_supports(inset: str, flagged: bool) -> None:
    # 8 in past 32 in is just a quarter.
    found = findings_of(seat(inset, f"46 1/2 - {inset}"), LONG)
    assert [finding.weight for finding in found] == ([Severity.WARNING] if flagged else [])


def test_the_remedies_do() -> None:
    # 12 in past 24: move both out by 4 (8 past 32), or cut 6 off each end.
    assert told(seat("12", "34 1/2"), LONG)[0].endswith(
        "so that is 6 in too much. → Move both outer supports out by 4 in: then 8 in sticks out past 32 in. "
        "Or cut 6 in off each end."
    )
    assert findings_of(seat("8", "38 1/2"), LONG) == ()
    assert findings_of(seat("6", "28 1/2", width="36"), LONG) == ()


def test_the_plan_can_set_the_share() -> None:
    text = seat("10", "36 1/2", more="limit overhang-share: 0.4")
    assert findings_of(text, LONG) == ()
    (said,) = told(seat("3", "43 1/2", more="limit overhang-share: 0.05"), LONG)
    assert "2 3/32 in is the most (0.05 of it; set in this plan)" in said


def test_a_waiver_of_an_overhang() -> None:
    text = seat("10", "36 1/2", more='accept overhang-too-long because "it is a shelf for hats"')
    assert judgement_of(text, only=LONG).findings == ()


# ---------------------------------------------------------------- bearing-too-short


LEDGES = """
    plan "Ledges" in {unit}
    stock board: {board}
    stock ledge: {ledge}
    outline case: {case} across, {deep} deep, 12 in tall, on floor
    part side for each of left, right: board, upright, facing side, 12 in tall, on floor
        flush with each of case, flush with front of case
    part ledge.left: ledge, deep, on edge, {deep} long, against right of side.left
        flush with front of case, bottom 5 in above floor
    part ledge.right: like ledge.left, mirrored across about case
    part shelf: board, across, flat, on ledge.left, {shelf}, flush with front of case
    join ledge.* to side.*: glue pva
    {more}
"""


def ledges(ledge: str, shelf: str = "between side.left and side.right", more: str = "") -> str:
    ledge, board = f"actual {ledge} x 3/4 pine", "1x8 pine"
    return LEDGES.format(
        unit="inches", board=board, ledge=ledge, case="24", deep="7 1/4", shelf=shelf, more=more
    )


def test_ledges_too_thin() -> None:
    assert told(ledges("3/16"), SHORT) == [
        "error shelf, ledge.left, ledge.right @ shelf: shelf rests on only 3/16 in of ledge.left and ledge.right "
        "at the left and right ends. 1/4 in is the least (depth of an ordinary dado, 1/4 to 3/8 in; common "
        "practice, no source), so 1/16 in is missing. → Use stock at least 1/4 in thick for ledge.left and ledge.right: "
        "then it rests on 1/4 in. Or let shelf into a dado, or put a cleat under there."
    ]


def test_a_shelf_cut_too_short_in_millimetres() -> None:
    text = LEDGES.format(
        unit="millimetres",
        board="actual 18 x 180 pine",
        ledge="actual 12 x 20 pine",
        case="600",
        deep="180",
        shelf="from right of side.left to left of side.right, less 14",
        more="",
    )
    # 7 mm short at each end leaves 5 of 12 mm.
    assert told(text, SHORT) == [
        "error shelf, ledge.left, ledge.right @ shelf: shelf rests on only 5 mm of ledge.left and ledge.right at "
        "the left and right ends. 6.35 mm is the least (depth of an ordinary dado, 1/4 to 3/8 in; common practice, "
        "no source), so 1.35 mm is missing. → Make shelf 1.35 mm longer at the left and right ends: then it "
        "rests on 6.35 mm. Or let shelf into a dado, or put a cleat under there."
    ]


@pytest.mark.parametrize(("ledge", "flagged"), [("1/4", False), ("15/64", True), ("3/4", False)])
def test_at_the_least_bearing(ledge: str, flagged: bool) -> None:
    assert bool(findings_of(ledges(ledge), SHORT)) is flagged


def test_an_end_that_is_joined_or_let_in_is_left_alone() -> None:
    joined = ledges("1/8", more="join shelf to side.*: glue pva, screws #8 x 2, 2 per joint, from outside")
    assert findings_of(joined, SHORT) == ()
    housed = """
        plan "Shallow dado" in inches
        stock board: 1x8 pine
        outline case: 24 across, 7 1/4 deep, 12 tall, on floor
        part side for each of left, right: board, upright, facing side, 12 tall, on floor
            flush with each of case, flush with front of case
        part shelf: board, across, flat, between side.left and side.right, housed 3/16 each end
            flush with front of case, bottom at 5
        join shelf to side.*: dado 3/16 deep, glue pva
        """
    assert findings_of(housed, SHORT) == ()


def test_a_thin_back_under_a_lid_is_no_end() -> None:
    # The lid rests on the sides; along its back edge it lies on 1/8 in of hardboard as well.
    text = """
        plan "Lid" in inches
        stock board: 1x8 pine
        stock thin: hardboard 1/8
        outline case: 24 across, 7 1/4 deep, 12 tall, on floor
        part side for each of left, right: board, upright, facing side, 12 tall, on floor
            flush with each of case, flush with front of case
        part back: thin, facing front, between side.left and side.right across, 12 tall, on floor
            flush with back of case
        part lid: board, across, flat, on side.left, from left of case to right of case, flush with front of case
        """
    assert findings_of(text, SHORT) == ()


def test_a_waiver_of_a_short_bearing() -> None:
    text = ledges("3/16", more='accept bearing-too-short on shelf because "it is glued in as well"')
    assert judgement_of(text, only=SHORT).findings == ()
