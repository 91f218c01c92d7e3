"""Parts placed from one another in a circle."""

from __future__ import annotations

from tests.support import findings_of, judgement_of, told

RULE = "placed-in-circle"

HEAD = """
plan "Boards" in inches
stock board: actual 3/4 x 5 1/2 red oak
"""
TWO = (
    HEAD
    + """part lower: board, across, flat, 24 long, left at 0, front at 0, under upper
part upper: board, across, flat, 24 long, left at 0, front at 0, on lower
"""
)


def test_two_on_each_other_are_told_once() -> None:
    assert told(TWO, RULE) == [
        "error lower, upper @ under upper: "
        "lower and upper are placed from one another in a circle up and down: lower → upper → lower. → "
        "Give one of them a place up and down that does not come from the others, such as: on floor"
    ]
    assert told(TWO.replace("under upper", "on floor"), RULE) == []


def test_what_waits_for_the_circle_is_counted() -> None:
    text = TWO + "part book: board, upright, facing front, 8 tall, left at 0, front at 0, on upper\n"
    assert told(text, RULE) == [
        "error lower, upper @ under upper: "
        "lower and upper are placed from one another in a circle up and down: lower → upper → lower. "
        "1 other part waits for that. → "
        "Give one of them a place up and down that does not come from the others, such as: on floor"
    ]


def test_three_in_a_circle_are_told_in_their_order_whatever_the_order_of_the_text() -> None:
    parts = [
        "part c: board, across, flat, 24 long, front at 0, on floor, against left of b\n",
        "part a: board, across, flat, 24 long, front at 0, on floor, against left of c\n",
        "part b: board, across, flat, 24 long, front at 0, on floor, against left of a\n",
    ]
    said = {told(HEAD + "".join(order), RULE)[0] for order in (parts, parts[::-1])}
    assert said == {
        "error a, c, b @ against left of c: "
        "a, c and b are placed from one another in a circle side to side: a → c → b → a. → "
        "Give one of them a place side to side that does not come from the others, such as: left at 0"
    }


def test_a_long_circle_is_not_listed_whole() -> None:
    names = [f"b{number:03}" for number in range(300)]
    text = HEAD + "".join(
        f"part {name}: board, across, flat, 24 long, left at 0, front at 0, on {names[place - 1]}\n"
        for place, name in enumerate(names)
    )
    found = findings_of(text, RULE)
    assert len(found) == 1
    assert len(found[0].parts) == 300
    assert str(found[0].values["parts"]) == "b000, b299, b298, b297 and 296 more"
    assert len(str(found[0].values["chain"])) < 120


def test_a_part_placed_from_itself() -> None:
    text = HEAD + "part stack: board, across, flat, 24 long, left at 0, front at 0, on stack\n"
    assert told(text, RULE) == [
        "error stack @ on stack: stack is placed from itself up and down. → "
        "Give stack a place up and down of its own, such as on floor."
    ]


def test_a_circle_on_two_axes_is_told_once() -> None:
    text = HEAD + (
        "part one: board, across, flat, 24 long, left at 0, flush with front of two, on two\n"
        "part two: board, across, flat, 24 long, left at 0, flush with front of one, under one\n"
    )
    found = findings_of(text, RULE)
    assert [finding.values["along"] for finding in found] == ["front to back and up and down"]


def test_it_can_be_accepted() -> None:
    judged = judgement_of(TWO + 'accept placed-in-circle on lower because "being drawn"\n', only=RULE)
    assert judged.findings == ()
    assert len(judged.waived) == 1
