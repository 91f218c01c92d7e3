"""dado-too-deep: what dadoes, grooves and rabbets leave of their board."""

from __future__ import annotations

import pytest
from joint_plans import case

from tests.support import findings_of, judgement_of, told

RULE = "dado-too-deep"


def test_half_an_inch_of_three_quarters() -> None:
    assert told(case("dado 1/2 deep, glue pva", housed="1/2"), RULE) == [
        "warning side.left, side.right, shelf @ dado 1/2 deep: A dado 1/2 in deep in side.left and side.right, "
        "3/4 in thick, leaves only 1/4 in of it; at most 0.412 in is usual (1/3 to 1/2; common practice, no "
        "source), so it is 0.088 in too deep and the board snaps there. → Cut it 1/4 in to 3/8 in deep, and let "
        "what goes in reach in by no more."
    ]


@pytest.mark.parametrize(
    ("kind", "deep", "flagged"),
    # 0.55 of 3/4 in is 0.4125 in, 0.67 of it 0.5025 in.
    [
        ("dado", "3/8", False),
        ("dado", "13/32", False),
        ("dado", "27/64", True),
        ("groove", "27/64", True),
        ("rabbet", "1/2", False),
        ("rabbet", "33/64", True),
    ],
)
def test_the_limits(kind: str, deep: str, flagged: bool) -> None:
    text = case(f"{kind} {deep} deep, glue pva", housed=deep)
    if kind == "rabbet":
        text = text.replace("bottom at 20", "flush with top of case")
    assert bool(findings_of(text, RULE)) is flagged


def test_right_through_is_an_error() -> None:
    (said,) = told(case("dado 3/4 deep, glue pva", housed="3/4"), RULE)
    assert said.startswith(
        "error side.left, side.right, shelf @ dado 3/4 deep: A dado 3/4 in deep goes right through"
    )


def test_a_cut_of_the_board_itself() -> None:
    text = """
        plan "Board" in inches
        stock board: actual 3/4 x 7 pine
        part board: board, across, flat, 24 long, left at 0, front at 0, on floor
            groove 1/4 by {deep} into top, 1 from front
        """
    assert findings_of(text.format(deep="3/8"), RULE) == ()
    (said,) = told(text.format(deep="1/2"), RULE)
    assert "A groove 1/2 in deep in board, 3/4 in thick, leaves only 1/4 in" in said


FACING = """
    plan "Two bays" in inches
    stock board: actual 3/4 x 11 1/4 red oak
    outline case: 60 across, 11 1/4 deep, 40 tall, on floor
    part side for each of left, right: board, upright, facing side, as tall as case, on floor
        flush with each of case, flush with front of case
    part middle: board, upright, facing side, as tall as case, on floor, centred across on case
        flush with front of case
    part shelf.left: board, across, flat, between side.left and middle, housed {deep} each end
        flush with front of case, bottom at 20
    part shelf.right: board, across, flat, between middle and side.right, housed {deep} each end
        flush with front of case, bottom at {height}
    join shelf.* to side.*, middle: dado {deep} deep, glue pva
    """


@pytest.mark.parametrize(
    ("deep", "height", "flagged"),
    # A third of 3/4 in is 1/4 in between: each may be 1/4 in deep; 3/8 in each meet in the middle.
    [("1/4", "20", False), ("9/32", "20", True), ("9/32", "24", False), ("9/32", "20 1/2", True)],
)
def test_dadoes_back_to_back(deep: str, height: str, flagged: bool) -> None:
    assert bool(findings_of(FACING.format(deep=deep, height=height), RULE)) is flagged


def test_dadoes_that_meet_are_an_error() -> None:
    (said,) = told(FACING.format(deep="3/8", height="20"), RULE)
    assert said.startswith(
        "error middle @ dado 3/8 deep: The dadoes on both faces of middle lie back to back"
    )
    assert "they meet and cut the board through" in said


def test_a_waiver() -> None:
    text = case(
        "dado 1/2 deep", housed="1/2", more='accept dado-too-deep on side.* because "it hangs on a wall"'
    )
    judged = judgement_of(text, only=RULE)
    assert (judged.findings, len(judged.waived)) == ((), 1)
