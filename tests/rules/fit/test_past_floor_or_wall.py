"""Parts that reach into the floor or the wall."""

from __future__ import annotations

import pytest

from tests.rules.everyday_pieces import EVERYDAY
from tests.rules.sound_pieces import SOUND_PIECES
from tests.support import judgement_of, told

RULE = "past-floor-or-wall"

LEGS = """
plan "Legs" in {unit}
stock post: actual {thick} x {thick} red oak
outline frame: {size} across, {size} deep, {size} tall, bottom {below} below floor
part leg: post, upright, as tall as frame, in each corner of frame
"""


def test_legs_below_the_floor_are_told_once() -> None:
    # `bottom N below floor` counts from the floor's own bottom, so the outline is set by coordinate here.
    text = LEGS.format(unit="inches", thick="2", size="16", below="1/4").replace(
        "bottom 1/4 below floor", "bottom at 0 - 1/4"
    )
    assert told(text, RULE) == [
        "error leg.front-left, leg.front-right, leg.back-left, leg.back-right @ in each corner of frame: "
        "leg.front-left, leg.front-right, leg.back-left and leg.back-right reach 1/4 in into the floor. → "
        "Raise leg.front-left, leg.front-right, leg.back-left and leg.back-right by 1/4 in, "
        "or cut that much off below."
    ]
    assert told(text.replace("0 - 1/4", "0"), RULE) == []


SHELF = """
plan "Wall shelf" in millimetres
stock board: actual 20 x 200 pine
part shelf: board, across, flat, 600 long, left at 0, {place}, bottom 1200 above floor
part cleat: board, across, on edge, rip 40, 600 long, left at 0, against wall, under shelf
join shelf to cleat: screws 4 x 50, every 200, from above
join cleat to wall: screws 5 x 80, every 400
"""


def test_a_part_inside_the_wall_is_told() -> None:
    assert told(SHELF.format(place="back at 15"), RULE) == [
        "error shelf @ back at 15: shelf reaches 15 mm into the wall. → "
        "Set shelf 15 mm out from the wall, or cut that much off behind."
    ]


@pytest.mark.parametrize("place", ["back at 0", "against wall", "back 15 in front of wall", "back at 0.04"])
def test_up_to_the_wall_is_quiet(place: str) -> None:
    assert told(SHELF.format(place=place), RULE) == []


def test_it_can_be_accepted() -> None:
    text = (
        SHELF.format(place="back at 15") + 'accept past-floor-or-wall because "the wall has a recess there"\n'
    )
    judged = judgement_of(text, only=RULE)
    assert judged.findings == ()
    assert len(judged.waived) == 1


@pytest.mark.parametrize("name", [*SOUND_PIECES, *EVERYDAY])
def test_sound_pieces_are_quiet(name: str) -> None:
    assert told({**SOUND_PIECES, **EVERYDAY}[name], RULE) == []
