"""Shelves and cupboards on the wall: which are told, in which words, and what is tried."""

from __future__ import annotations

import pytest

from reviewer.findings import Severity
from tests.rules.mending import assert_mends
from tests.support import findings_of, told
from tests.workshop.test_restraining import SHELF

RULE, JOINT = "wall-fixing-too-weak", "joint-overloaded"
E, W = Severity.ERROR, Severity.WARNING

LEDGE = """
plan "Ledge" in inches
stock board: 1x{board} pine
stock strip: 1x{strip} pine
outline place: 40 across, {deep} deep, {tall} tall, bottom 50 above floor, against wall
part cleat: strip, across, on edge, from left of place to right of place, against wall, under shelf
part shelf: board, across, flat, from left of place to right of place, against wall
    flush with top of place
join cleat to wall: screws {screws}, pilot holes
join shelf to cleat: screws #8 x 2, every 8, from above, pilot holes
load shelf: {load}
room hall: indoors, wall behind{room}
"""

CUPBOARD = """
plan "Wall cupboard" in inches
stock ply: birch plywood 3/4, sheet 48 x 96
stock thin: birch plywood 1/4, sheet 48 x 96
outline box: 32 across, 11 deep, 30 tall, bottom 54 above floor, against wall
part side for each of left, right: ply, upright, facing side, as deep as box, as tall as box
    flush with each of box, flush with front of box, flush with bottom of box
part board: ply, flat, between side.left and side.right across, as deep as box, flush with front of box
    3 copies spread evenly up from bottom of box to top of box
part rail: ply, across, on edge, rip 4, between side.left and side.right, against wall, under board.3
join board.* to side.*: screws #8 x 2, 3 per joint, from outside, glue pva
join rail to side.*, board.3: screws #8 x 2, 2 per joint, glue pva
join rail to wall: screws {screws}, pilot holes
load board.1, board.2: {load}
room kitchen: indoors, wall behind, studs every 16
"""


def ledge(
    screws: str = "#10 x 3, every 16",
    load: str = "books",
    room: str = ", studs every 16",
    size: tuple[str, str, str, str] = ("10", "2", "9 1/4", "2 1/4"),
) -> str:
    board, strip, deep, tall = size
    return LEDGE.format(board=board, strip=strip, deep=deep, tall=tall, screws=screws, load=load, room=room)


def weights(plan: str) -> list[Severity]:
    return [finding.weight for finding in findings_of(plan, RULE)]


def test_words_of_a_deep_shelf_on_a_low_cleat() -> None:
    # (13) over three screws: 88.6 lb · 4.59 in / 0.75 in = 542 lb, a third of it 181 lb.
    (said,) = told(ledge(), RULE)
    assert said.startswith(
        "warning cleat @ screws #10 x 3: Ledge weighs 88.6 lb with what the plan puts on it, and that lies "
        "4 19/32 in off the wall. So its screws are pulled out with 542 lb in all and sheared besides: the "
        "hardest used, through cleat 50 3/4 in up, gets 181 lb of pull and 29.5 lb of shear, which is "
    )
    assert "; or let it bear on the wall 1 in further down" in said
    assert said.endswith(
        "masonry and metal studs need hardware of their own with its maker's data, and local codes decide."
    )


@pytest.mark.parametrize(
    "plan",
    [
        ledge(size=("6", "4", "5 1/2", "4 1/4")),
        ledge(size=("6", "6", "5 1/2", "6 1/4"), load="15 lb"),
        ledge(size=("8", "4", "7 1/4", "4 1/4"), screws="#10 x 3, 3 per joint"),
        ledge(size=("8", "6", "7 1/4", "6 1/4"), screws="#8 x 3, 3 per joint", room=""),
        CUPBOARD.format(screws="#10 x 3, 4 per joint", load="20 lb"),
    ],
)
def test_what_good_makers_hang_is_quiet(plan: str) -> None:
    assert weights(plan) == []


def test_a_heavier_load_is_told_and_more_of_it_is_an_error() -> None:
    weighed = {
        kg: weights(ledge(load=f"{kg} lb", size=("8", "4", "7 1/4", "4 1/4"))) for kg in (20, 140, 300)
    }
    assert weighed == {20: [], 140: [W], 300: [E]}


def test_screws_between_the_studs_hold_nothing() -> None:
    plan = ledge(screws="#10 x 3, every 12", size=("8", "4", "7 1/4", "4 1/4"))
    (said,) = told(plan, RULE)
    assert "Of 4 screws only 1 can meet a stud: the plan's studs are 16 in apart" in said
    assert "Put a screw into every stud behind it (16 in apart)" in said
    # Where the plan does not say that the wall has studs, no screw is taken to miss them.
    assert weights(plan.replace(", studs every 16", "")) == []


def test_all_on_one_stud_is_a_warning() -> None:
    plan = ledge(screws="#10 x 3, 1 per joint", load="5 lb", size=("8", "4", "7 1/4", "4 1/4"))
    assert weights(plan) == [W]
    (said,) = told(plan, RULE)
    assert (
        "All screws of Ledge that can meet a stud are in one and the same stud, and it is 40 in wide" in said
    )
    assert "Use twice as many of them, each into a stud" in said
    # Narrower than the studs are apart it has to hang on one.
    assert weights(plan.replace("40 across", "14 across")) == []


def test_thicker_screws_and_more_are_tried() -> None:
    (said,) = told(CUPBOARD.format(screws="#8 x 2 1/4, 2 per joint", load="100 lb"), RULE)
    assert (
        "→ Use screws #12, 2 1/2 in long: the hardest used is then at 96 %; or use twice as many of them"
        in said
    )
    assert weights(CUPBOARD.format(screws="#12 x 2 1/2, 2 per joint", load="100 lb")) == []
    assert weights(CUPBOARD.format(screws="#8 x 2 1/4, 4 per joint", load="100 lb")) == []


def test_longer_screws_are_offered_where_they_do() -> None:
    low = SHELF.replace("6 x 100", "6 x 90").replace("40 x 100", "40 x 45").replace("120 tall", "65 tall")
    plan = low.format(screws="3 per joint", load="60 kg", room="")
    assert weights(plan) == [W]
    (said,) = told(plan, RULE)
    assert "→ Use screws 115 mm long: the hardest used is then at 97 %" in said
    assert assert_mends(plan, RULE) == "screws 6 x 115"


def test_one_rule_tells() -> None:
    assert findings_of(ledge(), JOINT) == ()
    short = ledge(screws="#10 x 1 1/2, every 16", room="")
    assert weights(short) == []  # screw-too-short
    assert findings_of(short, "screw-too-short") != ()


def test_what_stands_on_the_floor_is_not_judged() -> None:
    plan = ledge().replace("bottom 50 above floor, ", "on floor, ")
    assert weights(plan) == []


def test_masonry_is_given_no_number() -> None:
    assert weights(ledge() + "restrain shelf to wall: bracket, screws #10 x 3 into masonry\n") == []


def test_a_thin_back_is_to_get_a_rail() -> None:
    plan = CUPBOARD.format(screws="#8 x 2 1/2, 4 per joint", load="dishes").replace(
        "part rail: ply, across, on edge, rip 4, between side.left and side.right, against wall, under board.3",
        "part rail: thin, across, on edge, rip 4, between side.left and side.right, against wall, under board.3",
    )
    (said,) = told(plan, RULE)
    assert (
        "→ Screw through a rail at least 15/32 in thick, joined to the sides, rather than through rail alone."
        in said
    )
