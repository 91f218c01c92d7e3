"""What is told of the two ends of a strap: the weaker one, its slope, and screws that come out."""

from __future__ import annotations

import pytest

from reviewer.findings import Severity
from tests.rules.mending import assert_mends
from tests.rules.safety.test_wall_restraints import case
from tests.support import findings_of, look_at, told

WEAK, OUT = "restraint-too-weak", "strap-screw-comes-out"
E, W, N = Severity.ERROR, Severity.WARNING, Severity.NOTE
STRAP = "strap, screws #10 x 2 1/2 into stud, {more}, 56 up, 2 of them"
RAIL = (
    "part rail: board, across, facing front, rip 3, between side.left and side.right\n"
    "    against front of back, top 58 above floor\nload shelf"
)


def weighed(plan: str, rule: str = WEAK) -> list[Severity]:
    return [finding.weight for finding in findings_of(plan, rule)]


@pytest.mark.parametrize(
    "more",
    [
        "screws #8 x 3/4 into piece",
        "2 screws #8 x 3/4 into piece",
        "screws #8 x 1 into piece, 56 up on wall",
        "screws 4 mm x 20 mm into piece",
    ],
)
def test_what_good_makers_do_is_quiet(more: str) -> None:
    assert weighed(case(STRAP.format(more=more))) == []
    assert weighed(case(STRAP.format(more=more)), OUT) == []


@pytest.mark.parametrize(("away", "down"), [(" 1 away", 55.75), (" 2 away", 55), (" 4 away", 54)])
def test_a_strap_that_falls_a_little_over_a_gap_is_quiet(away: str, down: float) -> None:
    plan = case(STRAP.format(more=f"2 screws #8 x 3/4 into piece, {down} up on wall"))
    assert weighed(plan.replace("wall behind", f"wall behind{away}")) == []


def test_words_of_a_weak_end_at_the_piece() -> None:
    # 2850 · 0.67² · 0.138 in · (1/2 in less 1.5 mm of strap and the 0.2 in back) = 42.9 lb, through the back.
    plan = case(STRAP.format(more="screws #6 x 1/2 into piece"))
    (said,) = told(plan, WEAK)
    assert said.startswith(
        "warning side.left, side.right @ screws #6 x 1/2 into piece: Each restraint of case is to hold 60 lb "
        "(test load of ASTM F3096-23 since May 2023 (law-firm note)), but at the piece its screw holds only "
    )
    assert "of thread in the edge of side.left. → Use screws #6 x 3/4 into piece:" in said
    assert "with the points inside" in said
    assert assert_mends(plan, WEAK) == "screws #6 x 3/4 into piece"


def test_the_weaker_end_is_told_and_both_where_both_are_weak() -> None:
    both = case("strap, screws #6 x 1 into stud, screws #6 x 1/2 into piece, 56 up, 2 of them")
    (said,) = told(both, WEAK)
    assert "at the piece" in said or "but its screw holds only" in said
    wall = case("strap, screws #6 x 1 into stud, screws #8 x 1 into piece, 56 up, 2 of them")
    (wall_said,) = told(wall, WEAK)
    assert "of thread in a stud" in wall_said
    assert_mends(wall, WEAK)


def test_end_grain_is_told_as_such() -> None:
    words = "strap, screws #10 x 2 1/2 into stud, screws #8 x 1 into piece, on top, 62 up on wall, 2 of them"
    plan = case(words, what="side.left, side.right").replace("wall behind", "wall behind 4 away")
    (finding,) = findings_of(plan, WEAK)
    assert finding.weight == E
    (said,) = told(plan, WEAK)
    assert "in the end of side.left" in said
    assert "End grain lets go of screws that are pulled" in said
    assert assert_mends(plan, WEAK) == "60 up on wall"


def test_a_strap_along_the_back_is_a_note_while_the_balance_is_held() -> None:
    plan = case(STRAP.format(more="2 screws #8 x 3/4 into piece, 55 up on wall"))
    assert weighed(plan) == [N]
    (said,) = told(plan, WEAK)
    assert "It lies flat along the back, with no room to run level" in said
    assert "Write “56 up on wall”, so that it runs level" in said
    assert assert_mends(plan, WEAK) == "56 up on wall"


def test_a_strap_that_rises_by_its_wall_end_is_lowered() -> None:
    plan = case(STRAP.format(more="59 up on wall"))
    (said,) = told(plan, WEAK)
    assert said.startswith("error")
    assert "holds case at 56 in and meets the wall at 59 in" in said
    assert assert_mends(plan, WEAK) == "56 up on wall"


def test_more_straps_or_more_screws_are_tried() -> None:
    # A heavy push takes more than one small screw can hold at the piece.
    plan = case(STRAP.format(more="screws #6 x 1/2 into piece")) + "limit restraint-force: 150 lb\n"
    text = assert_mends(plan, WEAK)
    assert "into piece" in text


def test_a_screw_that_comes_out_of_a_rail() -> None:
    plan = case(STRAP.format(more="screws #8 x 1 1/4 into piece"), what="rail").replace("load shelf", RAIL)
    # 1 1/4 in less 1.5 mm of strap and 0.2 in of back is 0.99 in, in a rail of 3/4 in.
    (said,) = told(plan, OUT)
    assert said.startswith(
        "error rail @ screws #8 x 1 1/4 into piece: The 1 1/4 in screws of the strap at rail go into rail, which "
        "is 3/4 in thick there, and come out of its far side by "
    )
    assert_mends(plan, OUT)
    near = plan.replace("1 1/4 into piece", "1 into piece")
    assert weighed(near, OUT) in ([], [W])
    assert weighed(plan.replace("1 1/4 into piece", "3/4 into piece"), OUT) == []


def test_the_piece_end_into_masonry_is_judged_too() -> None:
    plan = case(STRAP.format(more="screws #6 x 1/2 into piece").replace("into stud", "into masonry"))
    assert weighed(plan) == [W]


@pytest.mark.parametrize(
    ("words", "says"),
    [
        ("cleat, screws #10 x 3 into stud, 55 up on wall", "A cleat is a rail on the wall"),
        ("cleat, screws #8 x 1 into piece", "A cleat is a rail on the wall"),
        (
            "screws #10 x 3 into stud, on top 2 from back",
            "Screws through the piece go straight into the wall",
        ),
        ("strap, 0 up on wall", "must be more than 0"),
        ("strap, on top 0 from back", "must be more than 0"),
        ("strap, 0 screws #8 x 1 into piece", "can't be 0"),
        ("strap, screws #99 x 1 into piece", "no screw gauge"),
    ],
)
def test_what_no_strap_can_have_is_told(words: str, says: str) -> None:
    found = look_at(case(words))
    assert [problem for problem in found.problems if says in problem.says]


@pytest.mark.parametrize(
    "words",
    [
        "strap, screws #8 x 0.001 into piece, 0.001 up on wall, 0.001 up",
        "bracket, 100 screws #14 x 9999 into piece, on top 9999 from back, 99999 up on wall",
        "strap, on top, 60 up on wall, screws 0.001 mm x 0.001 mm into piece, 100 of them",
        "strap, 30 up, on top 3 from back, screws 16 mm into piece",
    ],
)
@pytest.mark.parametrize("away", ["", " 0.0001 away", " 9999 away"])
def test_odd_plans_are_told_of_in_sentences(words: str, away: str) -> None:
    found = look_at(case(words).replace("wall behind", f"wall behind{away}"))
    if found.judgement is not None:
        assert not [each.rule for each in found.judgement.findings if each.rule == "rule-crashed"]
