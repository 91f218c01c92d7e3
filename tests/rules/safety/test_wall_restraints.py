"""The three rules of wall restraints: too weak, into board only, and more than there can be studs."""

from __future__ import annotations

import re

import pytest

from reviewer.findings import Severity
from reviewer.rulebook import all_rules
from tests.rules.mending import assert_mends, with_edit
from tests.support import findings_of, judgement_of, look_at, told

WEAK, BOARD, STUD = "restraint-too-weak", "anchor-in-board-only", "restraint-misses-stud"
RULES = (WEAK, BOARD, STUD)
E, W, N = Severity.ERROR, Severity.WARNING, Severity.NOTE

CASE = """
plan "Hall case" in inches
stock board: actual 3/4 x 11 1/4 red oak, 8 ft
stock thin: birch plywood 1/4, sheet 48 x 96
outline case: {width} across, 11 1/2 deep, 60 tall, on floor
part side for each of left, right: board, upright, facing side, as tall as case
    on floor, flush with each of case, flush with front of case
part shelf: board, across, flat, between side.left and side.right, flush with front of case
    4 copies spread evenly up from bottom of case to top of case
part back: thin, upright, facing front, from left of case to right of case, against back of side.left
    from bottom of case to top of case
load shelf.*: books
room hall: indoors, wall behind{room}
restrain {what} to wall: {words}
"""


def case(
    words: str, width: str = "34", room: str = ", studs every 16, children under 6", what: str = "case"
) -> str:
    return CASE.format(words=words, width=width, room=room, what=what)


def heard(plan: str) -> list[tuple[str, Severity]]:
    return [(rule, finding.weight) for rule in RULES for finding in findings_of(plan, rule)]


@pytest.mark.parametrize(
    "words",
    [
        "strap, screws #10 x 2 1/2 into stud, 56 up, 2 of them",
        "bracket, screws #8 x 2 1/2 into stud, 56 up, 2 of them",
        "bracket, screws 5 mm x 60 mm into stud, 59 up, 2 of them",
        "cleat, screws #10 x 3 into stud, 58 up, 2 of them",
        "strap, screws #10 x 2 1/2 into masonry, 56 up, 2 of them",
        "strap, screws #10 x 2 1/2, 56 up, 2 of them",
    ],
)
def test_what_good_makers_do_is_quiet(words: str) -> None:
    assert heard(case(words)) == []


def test_words_of_a_short_screw() -> None:
    # 2850 · 0.42² · 0.138 in · 3/4 in = 52 lb; 1 1/2 in of thread takes 2 1/4 in: 104 lb.
    plan = case("strap, screws #6 x 1 1/4 into stud, 56 up, 2 of them")
    assert told(plan, WEAK) == [
        "error side.left, side.right @ screws #6 x 1 1/4 into stud: Each restraint of case is to hold 60 lb "
        "(test load of ASTM F3096-23 since May 2023 (law-firm note)), but its screw holds only 52 lb by "
        "estimate: 3/4 in of thread in a stud of light softwood (National Design Specification for Wood "
        "Construction 2018 Supplement, Table 4A (spruce-pine-fir)). → Use screws #6 x 2 1/4 into stud: it has "
        "1 1/2 in of thread in the stud and holds 104 lb by estimate. An estimate is no test: the restraint's "
        "own instructions and local codes decide."
    ]
    assert assert_mends(plan, WEAK) == "screws #6 x 2 1/4 into stud"


def test_a_cleat_takes_length_from_its_screw() -> None:
    # 3/4 in of rail and 1/2 in of board leave 1/4 in of 1 1/2 in, and 1 in of 2 1/4 in.
    assert heard(case("cleat, screws #10 x 1 1/2 into stud, 56 up, 2 of them")) == [(WEAK, E)]
    assert heard(case("cleat, screws #10 x 2 1/4 into stud, 56 up, 2 of them")) == []
    assert_mends(case("cleat, screws #10 x 1 1/2 into stud, 56 up, 2 of them"), WEAK)


def test_a_thin_back_holds_nothing() -> None:
    plan = case("strap, screws #10 x 2 1/2 into stud, 56 up, 2 of them", what="back")
    (said,) = told(plan, WEAK)
    assert said.startswith(
        "error back @ 56 up: At 56 in up only back is there to screw the restraint to, 0.2 in"
    )
    assert "At least 15/32 in is asked" in said
    assert "Fix it to side.left and side.right in place of back: 3/4 in thick there." in said
    assert heard(plan.replace("restrain back", "restrain side.left, side.right")) == []


def test_a_strap_between_the_shelves_of_named_parts_is_moved_to_one() -> None:
    plan = case("strap, screws #10 x 2 1/2 into stud, 50 up, 2 of them", what="shelf.4")
    (said,) = told(plan, WEAK)
    assert "At 50 in up nothing of shelf.4" in said
    assert "Fix it to side.left and side.right in place of shelf.4: 3/4 in thick there." in said


def test_a_screw_through_the_piece_wants_a_rail_and_is_moved_to_one() -> None:
    plan = case("screws #10 x 2 1/2 into stud, 30 up, 2 of them")
    (said,) = told(plan, WEAK)
    assert "At 30 in up only back is there" in said
    assert "Add a rail at that height, at least 15/32 in thick and joined to both sides" in said
    rail = plan.replace(
        "load shelf",
        "part rail: board, across, facing front, rip 3, between side.left and side.right\n"
        "    against front of back, top 58 above floor\nload shelf",
    )
    (moved,) = told(rail, WEAK)
    assert "Fix it at 57 in up, into rail, which is 3/4 in thick." in moved
    assert assert_mends(rail, WEAK) == "57 up"


def test_a_gap_before_the_wall_takes_length_from_a_screw_through_the_piece() -> None:
    plan = case("screws #10 x 3 into stud, 57 up, 2 of them").replace(
        "load shelf",
        "part rail: board, across, facing front, rip 3, between side.left and side.right\n"
        "    against front of back, top 58 above floor\nload shelf",
    )
    # 3 in less 3/4 in of rail, 0.2 in of back and 1/2 in of board: 1.55 in; a gap of 1 1/4 in leaves 0.3 in.
    assert heard(plan) == []
    assert heard(plan.replace("wall behind", "wall behind 1 1/4 away")) == [(WEAK, E)]
    assert heard(plan.replace("wall behind", "wall behind 1 3/4 away")) == [(BOARD, E)]


def test_a_strap_that_rises_to_the_wall_is_lowered() -> None:
    plan = case("strap, screws #10 x 2 1/2 into stud, 64 up, 2 of them")
    (said,) = told(plan, WEAK)
    assert "fixed 64 in up on the wall, above the top of case at 60 in" in said
    assert_mends(plan, WEAK)


def test_one_point_is_a_warning_and_no_screw_a_note() -> None:
    one = case("strap, screws #10 x 2 1/2 into stud, 56 up")
    assert heard(one) == [(WEAK, W)]
    assert "tied to the wall at one point; 2 studs are asked" in told(one, WEAK)[0]
    # No second stud can be behind a narrow piece, so none is asked for.
    assert heard(case("strap, screws #10 x 2 1/2 into stud, 56 up", width="14")) == []
    unsaid = case("strap, 56 up, 2 of them")
    assert heard(unsaid) == [(WEAK, N)]
    assert "can't be estimated; each is to hold 60 lb" in told(unsaid, WEAK)[0]


def test_words_of_board_only() -> None:
    plan = case("strap, screws #10 x 2 1/2 into board, 56 up, 2 of them")
    (said,) = told(plan, BOARD)
    assert said.startswith(
        "error side.left, side.right @ screws #10 x 2 1/2 into board: The plan fixes case to the wall with "
        "screws into the wallboard."
    )
    assert "1 21/32 in of thread then sits in the stud and holds 159 lb by estimate." in said
    assert heard(plan) == [(BOARD, E)]
    assert assert_mends(plan, BOARD) == "screws #10 x 2 1/2 into stud"


def test_a_screw_that_ends_in_the_board_is_told_there_alone() -> None:
    plan = case("strap, screws #8 x 1/2 into stud, 56 up, 2 of them")
    assert heard(plan) == [(BOARD, E)]
    assert "1/2 in of board lies before the stud" in told(plan, BOARD)[0]
    cleat = case("cleat, screws #8 x 1 1/4 into stud, 56 up, 2 of them")
    assert heard(cleat) == [(BOARD, E)]
    assert "3/4 in before the wall and 1/2 in of board lies before the stud" in told(cleat, BOARD)[0]
    assert_mends(cleat, BOARD)


def test_the_board_said_in_the_plan_counts() -> None:
    plan = case("strap, screws #8 x 1 1/2 into stud, 56 up, 2 of them")
    assert heard(plan) == []
    assert heard(f"{plan}limit wallboard: 1 1/4\n") == [(WEAK, E)]
    assert heard(f"{plan}limit wallboard: 1 1/2\n") == [(BOARD, E)]
    # Denser studs hold the same screw better: 2850 · 0.55² · 0.138 · 3/4 in = 89 lb.
    light = case("strap, screws #6 x 1 1/4 into stud, 56 up, 2 of them")
    assert heard(f"{light}limit stud-gravity: 0.55\n") == []


def test_two_straps_on_a_narrow_case() -> None:
    plan = case("strap, screws #10 x 2 1/2 into stud, 56 up, 2 of them", width="14")
    (said,) = told(plan, STUD)
    assert said.startswith(
        "error side.left, side.right @ 2 of them: case is 14 in wide, so it may well have no stud right behind "
        "it (16 in apart: the plan's room), and at most 1: 2 restraints side by side cannot all reach one."
    )
    assert assert_mends(plan, STUD) == "cleat, screws #10 x 2 3/4 into stud"


def test_studs_are_counted_over_what_is_named() -> None:
    words = "strap, screws #10 x 2 1/2 into stud, 56 up, 2 of them"
    assert heard(case(words, width="17")) == []  # two may lie behind it
    assert heard(case(words, width="17", room=", studs every 24")) == [(STUD, E)]
    (said,) = told(case(words, what="side.left"), STUD)
    assert "the piece is 34 in wide, and each restraint then goes into a stud of its own" in said
    assert heard(case(words, what="side.left, side.right")) == []
    assert heard(case(words.replace("stud", "masonry"), width="14")) == []


@pytest.mark.parametrize("rule", [*RULES, "wall-fixing-too-weak"])
def test_each_page_defers(rule: str) -> None:
    page = " ".join(all_rules()[rule].page.split())
    assert "local codes and licensed practice decide" in page
    assert "no certificate" in page


@pytest.mark.parametrize(
    "words",
    [
        "strap, screws #6 x 1 into stud, 56 up, 2 of them",
        "strap, screws #10 x 2 1/2 into board, 56 up, 2 of them",
        "strap, screws #10 x 2 1/2 into stud, 64 up, 2 of them",
        "strap, screws #10 x 2 1/2 into stud, 56 up",
        "strap, 56 up, 2 of them",
    ],
)
def test_every_next_step_defers(words: str) -> None:
    for rule in RULES:
        for said in told(case(words), rule):
            assert re.search(r"local codes", said.split(" → ")[1])


def test_waived_only_with_a_reason_and_still_seen() -> None:
    plan = case("strap, screws #6 x 1 into stud, 56 up, 2 of them")
    assert look_at(f"{plan}accept {WEAK} on side.left, side.right\n").judgement is None
    because = f'{plan}accept {WEAK} on side.left, side.right because "a builder screws it to the frame"\n'
    judged = judgement_of(because)
    (kept,) = [finding for finding in judged.findings if finding.rule == WEAK]
    assert (kept.rule, kept.weight) == (WEAK, Severity.NOTE)
    assert kept.waived_because == "a builder screws it to the frame"


@pytest.mark.parametrize(
    "words",
    [
        "strap, screws #6 x 1000 into stud, 1000000 up, 100 of them",
        "screws 0.001 mm x 0.001 mm into stud, 0.001 up",
        "cleat",
        "bracket, screws #14 x 99 into board, 59 up, 100 of them",
    ],
)
@pytest.mark.parametrize("room", ["", ", studs every 0.001", ", studs every 9999"])
def test_odd_plans_are_told_of_in_sentences(words: str, room: str) -> None:
    found = look_at(case(words, room=room))
    if found.judgement is not None:
        assert not [each.rule for each in found.judgement.findings if each.rule == "rule-crashed"]


def test_the_edit_keeps_the_rest_of_the_line() -> None:
    plan = case("strap, screws #6 x 1 into stud, 56 up, 2 of them")
    (finding,) = findings_of(plan, WEAK)
    assert "strap, screws #6 x 2 1/4 into stud, 56 up, 2 of them" in with_edit(plan, finding)


@pytest.mark.parametrize("width", ["14", "17", "34"])
@pytest.mark.parametrize("wall", ["wall behind", "wall left", "wall right"])
def test_the_restraint_that_is_told_where_one_is_missing_is_none_of_these_faults(
    width: str, wall: str
) -> None:
    bare = case("cleat", width=width).replace("wall behind", wall)
    bare = "\n".join(line for line in bare.splitlines() if not line.startswith("restrain ")) + "\n"
    (finding,) = findings_of(bare, "restraint-missing")
    assert heard(with_edit(bare, finding)) == []
