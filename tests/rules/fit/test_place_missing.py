"""Parts that the plan does not place, and clauses that would."""

from __future__ import annotations

import re

import pytest

from tests.support import findings_of, judgement_of, look_at, told

RULE = "place-missing"

CASE = """
plan "Case" in inches
stock board: actual 3/4 x 7 1/4 red oak
stock ply: birch plywood 3/4
outline case: 24 across, 7 1/4 deep, 30 tall, on floor
part side for each of left, right: board, upright, facing side, 30 tall, on floor, front at 0
    flush with each of case
"""


def examples_of(text: str, rule: str = RULE) -> list[str]:
    """The clauses that the first finding offers."""
    return str(findings_of(text, rule)[0].values["examples"]).split(" — or: ")


def test_a_shelf_of_no_stated_height_is_told_with_what_would_settle_it() -> None:
    assert told(
        CASE + "part shelf: board, across, flat, between side.left and side.right, front at 0\n", RULE
    ) == [
        "error shelf @ shelf: shelf has no place up and down yet: only its size is known. → "
        "Add what settles it, such as: flush with bottom of case — or: on floor — or: centred up on case"
    ]


@pytest.mark.parametrize(
    ("part", "along", "known"),
    [
        ("board, across, flat, between side.left and side.right, front at 0", "up and down", "size"),
        ("board, across, flat, between side.left and side.right, on floor", "front to back", "size"),
        ("board, across, flat, 10 long, front at 0, on floor", "side to side", "size"),
        ("board, across, flat, left at 3, front at 0, on floor", "side to side", "left face"),
        ("board, across, flat, right at 20, front at 0, on floor", "side to side", "right face"),
        ("board, across, flat, centred across on case, front at 0, on floor", "side to side", "middle"),
        ("board, across, flat, front at 0, on floor", "side to side", "nothing"),
        ("board, upright, facing side, front at 0, left at 0, on floor", "up and down", "bottom face"),
        ("ply, facing front, 20 across, left at 0, front at 0, top at 20", "up and down", "top face"),
        ("ply, flat, 20 across, left at 0, back at 5, on floor", "front to back", "back face"),
    ],
)
def test_every_clause_that_is_offered_settles_it(part: str, along: str, known: str) -> None:
    text = CASE + f"part extra: {part}\n"
    found = findings_of(text, RULE)
    assert [(finding.parts, finding.values["along"]) for finding in found] == [(("extra",), along)]
    assert known in str(found[0].values["known"])
    for example in examples_of(text):
        settled = text.replace(part, f"{part}, {example.replace(' and ', ', ')}")
        looked = look_at(settled, only=RULE)
        assert looked.problems == (), example
        assert looked.review is not None
        assert looked.review.setting.unsettled == (), example


def test_each_direction_is_told_by_itself() -> None:
    found = findings_of(CASE + "part extra: board, across, flat\n", RULE)
    assert [finding.values["along"] for finding in found] == ["side to side", "front to back", "up and down"]


def test_copies_are_told_once_and_what_waits_is_counted() -> None:
    text = """
    plan "Legs" in millimetres
    stock post: actual 40 x 40 pine
    outline frame: 500 across, 500 deep, 400 tall, on floor
    part leg: post, upright, in each corner of frame
    part rail: post, across, between leg.front-left and leg.front-right, flush with front of frame
        flush with top of leg.front-left
    """
    assert told(text, RULE) == [
        "error leg.front-left, leg.front-right, leg.back-left, leg.back-right @ leg: "
        "leg.front-left, leg.front-right, leg.back-left and leg.back-right have no place up and down yet: "
        "only its bottom face is known of each. 1 other part waits for them. → "
        "Add what settles it, such as: 36 tall — or: as tall as frame — or: flush with top of frame"
    ]


def test_what_waits_for_it_is_counted() -> None:
    text = CASE + (
        "part shelf: board, across, flat, between side.left and side.right, front at 0\n"
        "part book: board, upright, facing front, 6 tall, on shelf, front at 0, left at 5\n"
        "part other: board, upright, facing front, 6 tall, on shelf, front at 0, left at 15\n"
    )
    assert " 2 other parts wait for it. → " in told(text, RULE)[0]
    assert len(told(text, RULE)) == 1


def test_a_row_is_called_a_row() -> None:
    text = CASE + (
        "part slat: board, across, flat, between side.left and side.right, on floor\n"
        "    3 copies side by side deep, gap 1/4\n"
    )
    assert told(text, RULE)[0].startswith(
        "error slat @ slat: The row slat has no place front to back yet: only how much room the row takes is known."
    )
    for example in examples_of(text):
        looked = look_at(text.replace("gap 1/4", f"gap 1/4, {example}"), only=RULE)
        assert looked.review is not None
        assert looked.review.setting.unsettled == (), example


def test_without_anything_to_refer_to_plain_places_are_offered() -> None:
    text = """
    plan "Board" in inches
    stock board: actual 3/4 x 7 1/4 red oak
    part board: board, across, flat, front at 0, on floor
    """
    assert examples_of(text) == ["left at 0 and 36 across"]
    assert re.search(r"nothing is said of it", told(text, RULE)[0])


def test_an_outline_is_called_an_outline() -> None:
    text = CASE + "outline drawer: 10 across, 5 deep, on floor\n"
    assert told(text, RULE)[0].startswith(
        "error drawer @ outline drawer: The outline drawer has no place up and down yet: only its bottom face"
    )


def test_an_unknown_name_is_told_instead() -> None:
    text = CASE + "part shelf: board, across, flat, between side.left and sid.right, front at 0, on floor\n"
    assert told(text, RULE) == []
    assert len(findings_of(text, "unknown-name")) == 1


def test_it_can_be_accepted() -> None:
    text = CASE + "part extra: board, across, flat, 10 long, front at 0, on floor\n"
    judged = judgement_of(text + 'accept place-missing on extra because "not drawn yet"\n', only=RULE)
    assert judged.findings == ()
    assert len(judged.waived) == 1
