"""Baskets that give all parts, that cannot, and that leave it open; sums by hand beside each."""

from __future__ import annotations

import pytest

from reviewer.findings import Severity
from tests.rules.everyday_pieces import BENCH
from tests.support import findings_of, judgement_of, told

RULE = "basket-short"
E, W = Severity.ERROR, Severity.WARNING

SEATS = """
plan "Seat boards" in inches
stock plank: 2x8 spruce-pine-fir, 8 ft at 9.80, 10 ft at 12.60
part seat: plank, across, flat, %s long, bottom at 0, left at 0, front at 0
    %s copies side by side deep, gap 1/8
%s
"""


def weights(plan: str) -> list[Severity]:
    return [finding.weight for finding in findings_of(plan, RULE)]


def test_words_of_two_seats_out_of_one_board() -> None:
    # By hand (design notes): 48 + 48 and a saw cut of 1/8 is 96 1/8 in; 96 less 1/4 at each end is 95 1/2.
    assert told(SEATS % (48, 2, "buy: 1 plank 8 ft"), RULE) == [
        "error seat.2 @ 1 plank 8 ft: 1 plank 8 ft does not give all that plank is needed for: seat.2 has "
        "nothing to come from. The parts with the saw cuts between them come to 96 1/8 in and there are 95 "
        "1/2 in (saw cuts of 1/8 in, 1/4 in off each end: common practice, no source). → Add 1 plank 8 ft: "
        "with it everything was found to come out."
    ]


def test_at_the_length_that_just_fits() -> None:
    # Two pieces and a cut of 1/8 in 95 1/2: 47 11/16 each.
    assert weights(SEATS % ("47 11/16", 2, "buy: 1 plank 8 ft")) == []
    assert weights(SEATS % ("47 3/4", 2, "buy: 1 plank 8 ft")) == [E]


def test_kerf_and_trimmed_ends_are_the_limits_in_force() -> None:
    whole = "buy: 1 plank 8 ft\nlimit trimmed-end: 0\nlimit kerf: 0"
    assert weights(SEATS % (48, 2, whole)) == []
    assert weights(SEATS % (48, 2, whole.replace("kerf: 0", "kerf: 1/8"))) == [E]


def test_nothing_without_a_basket() -> None:
    assert findings_of(SEATS % (48, 2, ""), RULE) == ()


def test_words_of_too_few_of_one_size() -> None:
    # Two boards of 95 1/2 in give two of 33 in each (2 x 33 + 1/8, a third would need 99 1/4).
    assert told(SEATS % (33, 5, "buy: 2 plank 8 ft"), RULE) == [
        "error seat.5 @ 2 plank 8 ft: 2 plank 8 ft do not give all that plank is needed for: seat.5 has "
        "nothing to come from. 5 parts of 33 in or longer are needed, and that gives 4 of them (saw cuts of "
        "1/8 in, 1/4 in off each end: common practice, no source). → Add 1 plank 8 ft: with it everything "
        "was found to come out."
    ]


def test_words_of_a_part_longer_than_any_board() -> None:
    assert told(SEATS % (125, 1, "buy: 1 plank 10 ft"), RULE) == [
        "error seat.1 @ 1 plank 10 ft: 1 plank 10 ft does not give all that plank is needed for: seat.1 has "
        "nothing to come from. seat.1 needs 125 in and the largest to be had there is 119 1/2 in (saw cuts "
        "of 1/8 in, 1/4 in off each end: common practice, no source). → No length or size on offer helps: "
        "look for larger stock, or make the parts smaller."
    ]


def test_every_way_tried() -> None:
    # Two boards of 95 1/2 in. Three pieces of 40 and two of 33 in come to 186 with three cuts 186 3/8 of 191,
    # but 40 + 40 leaves 15, 40 + 33 leaves 22 and 33 + 33 leaves 29: no board gives three.
    plan = """
    plan "Rails" in inches
    stock stud: 2x4 spruce-pine-fir, 8 ft
    part long: stud, across, on edge, 40 long, bottom at 0, left at 0, front at 0
        3 copies every 2 deep
    part short: stud, across, on edge, 33 long, bottom at 20, left at 0, front at 0
        2 copies every 2 deep
    buy: 2 stud 8 ft
    """
    (finding,) = findings_of(plan, RULE)
    assert finding.weight is E
    assert finding.values["added"] == "1 stud 8 ft"


def test_words_of_a_stock_that_the_basket_forgets() -> None:
    plan = BENCH.replace("buy: 2 stud 10 ft, 1 plank 10 ft", "buy: 1 plank 10 ft")
    (line,) = told(plan, RULE)
    assert line == (
        "error rail.front, rail.back, leg.front-left, leg.front-right, leg.back-left, leg.back-right, "
        "end.left, end.right, stretcher @ buy: The basket has no stud, and rail.front, rail.back, "
        "leg.front-left, leg.front-right and 5 more are cut from it. → Add 2 stud 8 ft: with it everything "
        "was found to come out."
    )


def test_the_bench_of_the_language_page_comes_out_of_its_basket() -> None:
    # By hand: 35 + 35 + 16 + 9 and three cuts are 95 3/8 of 95 1/2 in; the rest is 66 in; a seat a plank.
    assert weights(BENCH.replace("buy: 2 stud 10 ft, 1 plank 10 ft", "buy: 2 stud 8 ft, 2 plank 8 ft")) == []
    assert weights(BENCH.replace("buy: 2 stud 10 ft, 1 plank 10 ft", "buy: 2 stud 8 ft, 1 plank 8 ft")) == [E]
    assert weights(BENCH) == []


SHEET = """
plan "Panels" in %s
stock ply: birch plywood %s
part panel: ply, facing front, %s, bottom at 0, left at 0, front at 0
    %s copies every %s deep
%s
"""


def test_words_of_a_sheet_too_few_in_inches() -> None:
    # 40 x 60 in twice is 33.3 sq ft; a sheet is 32.
    plan = SHEET % ("inches", "3/4, sheet 48 x 96 at 64", "40 across, 60 tall", 2, 2, "buy: 1 ply")
    assert told(plan, RULE) == [
        "error panel.2 @ 1 ply: 1 ply does not give all that ply is needed for: panel.2 has nothing to come "
        "from. The parts come to 33.3 sq ft, and there are 32 sq ft without a single saw cut (saw cuts of "
        "1/8 in, 0 in off each edge: common practice, no source). → Add 1 ply: with it everything was found "
        "to come out."
    ]


def test_a_metric_sheet() -> None:
    plan = SHEET % ("millimetres", "18, sheet 1220 x 2440", "600 across, 1300 tall", 3, 50, "buy: %s ply")
    # Two of 600 mm lie side by side in 1220 mm with a cut between; 1300 mm goes once into 2440 mm.
    assert weights(plan % 1) == [E]
    assert weights(plan % 2) == []


EDITED = [
    SEATS % (48, 2, "buy: 1 plank 8 ft"),
    SEATS % (33, 5, "buy: 2 plank 8 ft   # one of them from the last job"),
    SEATS % (100, 3, "buy: 1 plank 8 ft\nbuy: 1 plank 10 ft"),
    BENCH.replace("buy: 2 stud 10 ft, 1 plank 10 ft", "buy: 1 plank 10 ft"),
    SHEET % ("inches", "3/4, sheet 48 x 96 at 64", "40 across, 60 tall", 2, 2, "buy: 1 ply"),
    SHEET % ("millimetres", "18, sheet 1220 x 2440", "600 across, 1300 tall", 3, 50, "buy: 1 ply"),
]


@pytest.mark.parametrize("plan", EDITED)
def test_the_edit_mends_it(plan: str) -> None:
    (finding,) = findings_of(plan, RULE)
    edit = finding.edit
    assert edit is not None
    changed = plan[: edit.span.start] + edit.text + plan[edit.span.end :]
    assert findings_of(changed, RULE) == ()


def test_ripped_parts_leave_it_open() -> None:
    # Two strips of 3 in may come side by side out of one 7 1/4 in plank, or not: it is not proven.
    plan = """
    plan "Strips" in inches
    stock plank: 2x8 spruce-pine-fir, 8 ft
    part strip: plank, across, flat, rip 3, 60 long, bottom at 0, left at 0, front at 0
        2 copies side by side deep, gap 1
    buy: 1 plank 8 ft
    """
    assert told(plan, RULE) == [
        "warning strip.2 @ 1 plank 8 ft: No way was found to get all that plank is needed for out of 1 plank "
        "8 ft, and none was ruled out: strip.2 has nothing to come from in the best of them, which takes a "
        "full board for each ripped part; strips may come side by side. → Lay it out by hand, or add to the "
        "basket to be certain."
    ]


def test_waiver_works() -> None:
    plan = SEATS % (48, 2, 'buy: 1 plank 8 ft\naccept basket-short because "an offcut waits in the shed"')
    judgement = judgement_of(plan, RULE)
    assert judgement.findings == ()
    assert [finding.rule for finding in judgement.waived] == [RULE]


def test_the_addition_stands_beside_its_own_stock() -> None:
    plan = SEATS % (48, 2, "buy: 1 plank 8 ft, 3 stud 8 ft")
    plan = plan.replace("part seat", "stock stud: 2x4 spruce-pine-fir, 8 ft\npart seat")
    (finding,) = findings_of(plan, RULE)
    assert finding.edit is not None
    assert plan[: finding.edit.span.start].endswith("buy: 1 plank 8 ft")
