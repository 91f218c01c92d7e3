"""Clauses that put one part in two places. Differences are sums of the plan's own sizes, done by hand."""

from __future__ import annotations

import pytest

from tests.rules.everyday_pieces import EVERYDAY
from tests.rules.sound_pieces import SOUND_PIECES
from tests.support import findings_of, judgement_of, told

RULE = "placing-disagrees"

FRAME = """
plan "Frame" in inches
stock stud: actual 1 1/2 x 3 1/2 spruce-pine-fir
outline frame: 42 across, 12 deep, 16 tall, on floor
part rail: stud, across, on edge, from left of frame to right of frame, front at 0, {clauses}
"""


def test_a_stated_length_against_the_run() -> None:
    assert told(FRAME.format(clauses="40 long, on floor"), RULE) == [
        "error rail @ 40 long: "
        "rail: “40 long” makes it 40 in side to side, but “from left of frame to right of frame” leaves 42 in, "
        "2 in more. → "
        "Take out “40 long” if “from left of frame to right of frame” is right; if not, mend "
        "“from left of frame to right of frame” and keep “40 long”."
    ]
    assert told(FRAME.format(clauses="42 long, on floor"), RULE) == []
    assert told(FRAME.format(clauses="as long as frame, on floor"), RULE) == []


def test_a_face_against_another_clause() -> None:
    # 3 1/2 of stud on the floor puts the top at 3 1/2, not at 16.
    assert told(FRAME.format(clauses="on floor, flush with top of frame"), RULE) == [
        "error rail @ on floor: "
        "rail: “on floor” puts the bottom 12 1/2 in further down than “flush with top of frame” does. → "
        "Take out “on floor” if “flush with top of frame” is right; if not, mend “flush with top of frame” "
        "and keep “on floor”."
    ]


def test_the_order_of_the_clauses_changes_nothing() -> None:
    one = told(FRAME.format(clauses="on floor, flush with top of frame"), RULE)
    two = told(FRAME.format(clauses="flush with top of frame, on floor"), RULE)
    assert one == two


def test_a_size_against_the_stock() -> None:
    assert told(FRAME.format(clauses="on floor, 4 tall"), RULE) == [
        "error rail @ 4 tall: rail: “4 tall” makes it 4 in up and down, but the stock (stud) leaves 3 1/2 in, "
        "1/2 in less. → "
        "Take out “4 tall” if the stock (stud) is right; if not, mend the stock (stud) and keep “4 tall”."
    ]


@pytest.mark.parametrize(("tall", "found"), [("3.5", 0), ("3.5019", 0), ("3.5021", 1)])
def test_a_hair_is_no_disagreement(tall: str, found: int) -> None:
    # The tolerance is 0.05 mm = 0.00197 in.
    assert len(findings_of(FRAME.format(clauses=f"on floor, {tall} tall"), RULE)) == found


def test_a_middle_against_two_faces_in_millimetres() -> None:
    text = """
    plan "Middle" in millimetres
    stock board: actual 20 x 100 pine
    outline frame: 500 across, 300 deep, 400 tall, on floor
    part board: board, deep, flat, 300 long, front at 0, on floor, left at 150, centred across on frame
    """
    # 100 wide from 150 has its middle at 200; the frame's is at 250.
    assert told(text, RULE) == [
        "error board @ centred across on frame: "
        "board: “centred across on frame” puts the middle 50 mm further to the right than “left at 150” does. → "
        "Take out “centred across on frame” if “left at 150” is right; if not, mend “left at 150” and keep "
        "“centred across on frame”."
    ]


def test_copies_that_disagree_alike_are_told_once() -> None:
    text = FRAME.format(clauses="on floor, 40 long").replace("part rail:", "part rail for each of one, two:")
    assert [finding.parts for finding in findings_of(text, RULE)] == [("rail.one", "rail.two")]


def test_it_judges_while_another_part_has_no_place() -> None:
    text = FRAME.format(clauses="40 long, on floor") + "part loose: stud, across, flat\n"
    assert len(findings_of(text, RULE)) == 1


def test_it_can_be_accepted() -> None:
    text = (
        FRAME.format(clauses="40 long, on floor") + 'accept placing-disagrees on rail because "being drawn"\n'
    )
    judged = judgement_of(text, only=RULE)
    assert judged.findings == ()
    assert len(judged.waived) == 1


@pytest.mark.parametrize("name", [*SOUND_PIECES, *EVERYDAY])
def test_sound_pieces_are_quiet(name: str) -> None:
    assert told({**SOUND_PIECES, **EVERYDAY}[name], RULE) == []
