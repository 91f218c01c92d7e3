"""butt-over-air: where two boards may meet end to end."""

from __future__ import annotations

import pytest

from tests.support import told

RULE = "butt-over-air"


def bench(second: str = "left at 23", third: str = "left at 35 1/2", more: str = "") -> str:
    return f"""
        plan "Bench" in inches
        stock plank: 2x8 spruce-pine-fir
        outline base: 60 across, 7 1/4 deep, 18 tall, on floor
        part leg.1: plank, upright, facing side, 16 1/2 tall, on floor, left at 0, flush with front of base
        part leg.2: plank, upright, facing side, 16 1/2 tall, on floor, {second}, flush with front of base
        part leg.3: plank, upright, facing side, 16 1/2 tall, on floor, {third}, flush with front of base
        part leg.4: plank, upright, facing side, 16 1/2 tall, on floor, flush with right of base
            flush with front of base
        part seat.1: plank, across, flat, on leg.1, 30 long, flush with left of base, flush with front of base
        part seat.2: plank, across, flat, on leg.4, from right of seat.1 to right of base
            flush with front of base
        join seat.* to leg.*: screws #8 x 3, 3 per joint, from above
        join seat.1 to seat.2: glue pva
        {more}
        """


def test_what_it_says() -> None:
    # The joint is at 30 in; leg.2 ends at 24 1/2, leg.3 begins at 35 1/2.
    assert told(bench(), RULE) == [
        "error seat.1, seat.2 @ seat.2: seat.1 meets seat.2 end to end with nothing under the joint: the "
        "nearest support of one of them is 5 1/2 in away, and each end needs 1/4 in of its own (depth of an "
        "ordinary dado, 1/4 to 3/8 in; common practice, no source). → Move the joint over a support that is at "
        "least 1/2 in thick: then each end has 1/4 in of its own. Or join a batten under both boards across the joint."
    ]


@pytest.mark.parametrize(
    ("second", "third", "flagged"),
    [
        ("left at 29 1/4", "left at 40", False),  # both ends lie on one leg
        ("left at 28 1/2", "left at 30", False),  # each on its own
        ("left at 28 1/2", "left at 30 1/4", False),  # the second one starts 1/4 in from the joint
        ("left at 28 1/2", "left at 30 3/8", True),
        ("left at 28", "left at 30", True),  # the first one ends 1/2 in past its leg
    ],
)
def test_how_near_the_supports_must_be(second: str, third: str, flagged: bool) -> None:
    assert bool(told(bench(second, third), RULE)) == flagged


def test_a_batten_under_both_boards_holds_them() -> None:
    batten = """part batten: plank, across, flat, 8 long, under seat.1, left at 26, flush with front of base
        join batten to seat.*: glue pva, screws #8 x 2 1/2, 4 per joint, from below"""
    assert told(bench(more=batten), RULE) == []
    short = batten.replace("8 long", "4 long")  # it ends at the joint
    assert told(bench(more=short).replace("join batten to seat.*", "join batten to seat.1"), RULE) != []


def test_boards_on_a_floor_and_on_a_wall_may_meet_anywhere() -> None:
    text = """
        plan "Ledge" in inches
        stock strip: 1x4 pine
        part ledge.1: strip, across, on edge, 30 long, against wall, left at 0, bottom at 40
        part ledge.2: strip, across, on edge, 30 long, against wall, left at 30, bottom at 40
        part sill.1: strip, across, flat, 30 long, on floor, left at 0, front at 5
        part sill.2: strip, across, flat, 30 long, on floor, left at 30, front at 5
        join ledge.* to wall: screws #8 x 2 1/2, every 16
        """
    assert told(text, RULE) == []


def test_a_rail_that_ends_at_a_post_is_no_butt() -> None:
    from tests.rules.sound_pieces import BENCH

    assert told(BENCH, RULE) == []
