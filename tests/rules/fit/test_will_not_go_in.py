"""The way into the room: doorway, hall, stairs, landing and standing up, by hand."""

from __future__ import annotations

import pytest

from reviewer.workshop.going_in import carried
from tests.rules.everyday_pieces import EVERYDAY
from tests.rules.sound_pieces import SOUND_PIECES
from tests.support import judgement_of, review_of, told

RULE = "will-not-go-in"

#: A case 36 wide; what joins it and what the room is are put in.
CASE = """
plan "Wardrobe" in inches
stock panel: birch plywood 3/4
outline case: 36 across, {deep} deep, {tall} tall, on floor
part side for each of left, right: panel, upright, facing side, {deep} deep, {tall} tall, on floor
    flush with each of case, flush with front of case
part board for each of bottom, top: panel, across, flat, {deep} deep
    between side.left and side.right across
    flush with each of case, flush with front of case
join board.* to side.*: {join}
{more}room bedroom: {room}
"""
GLUED = "screws #8 x 2, 3 per joint, glue pva"


def case(room: str, deep: str = "24", tall: str = "90", join: str = GLUED, more: str = "") -> str:
    return CASE.format(room=room, deep=deep, tall=tall, join=join, more=more)


def test_a_tall_case_under_its_ceiling() -> None:
    """W29: 90 by 24 is 93.1 on the diagonal; the largest is √(92² - 24²) = 88.81."""
    assert told(case("doorway 32 x 80, ceiling 92"), RULE) == [
        "error side.left, side.right, board.bottom, board.top @ ceiling 92: Wardrobe can't be stood up in the "
        "room: it lies on its way in through the doorway, and being tilted up it reaches 93 5/32 in, 1 5/32 in "
        "more than the ceiling at 92 in. → Make it at most 88 13/16 in tall, or put it together standing in the "
        "room, or let it go in as parts: join some with bolts, or write a step that says “in the room” for "
        "what is joined there."
    ]


@pytest.mark.parametrize(
    ("room", "deep", "tall", "weights"),
    [
        ("ceiling 92", "24", "84", []),  # W29: 87.4
        ("ceiling 86", "16", "84", []),  # W29: 85.5
        ("ceiling 85", "16", "84", ["warning"]),  # no doorway is said, so it is not sure to lie
        ("ceiling 85, doorway 40 x 86", "16", "84", []),  # it walks in on its feet
        ("ceiling 85, doorway 30 x 86", "16", "84", []),  # its 16 in side first, 36 would not
        ("ceiling 85, doorway 40 x 80", "16", "84", ["error"]),
        ("ceiling 80, doorway 40 x 90", "16", "84", ["error"]),  # taller than the room
        ("doorway 32 x 80", "24", "90", []),  # top first: 36 by 24 goes through
        ("doorway 25 x 80", "24", "90", ["warning"]),  # half an inch on each side
        ("doorway 23 x 80", "24", "90", ["error"]),
        ("stairs 30 wide", "24", "78", []),
        ("stairs 25 wide", "24", "78", ["warning"]),
        ("stairs 22 wide", "24", "78", ["error"]),
        ("hall 36 wide, doorway 32 x 80", "24", "90", ["warning"]),  # 36 · 32 / 24 = 48 < 90
        ("hall 36 wide, doorway 23 x 80", "24", "90", ["error"]),  # the doorway tells it, and nothing else
        ("hall 36 wide, doorway 32 x 80", "10", "78", []),  # on its feet 36 by 10: 36 · 32 / 10 = 115
        ("landing 40 x 40", "24", "78", []),  # on end 36 by 24: 80 √2 - 48 = 65
        ("landing 40 x 40", "24", "90", ["warning"]),  # too tall to stand on end
        ("indoors, wall behind", "24", "90", []),
    ],
)
def test_ways_by_hand(room: str, deep: str, tall: str, weights: list[str]) -> None:
    assert [line.split()[0] for line in told(case(room, deep, tall), RULE)] == weights


def test_each_way_says_its_figure() -> None:
    (door,) = told(case("doorway 23 x 80"), RULE)
    assert "36 in across, 24 in deep and 90 in tall" in door
    assert "even top first, turned in the opening as suits it best, it is 1 in too large" in door
    assert "Make it at most 21 in deep" in door  # and a margin of 1 in on each side
    (hall,) = told(case("hall 36 wide, doorway 32 x 80"), RULE)
    assert "with its 36 in side upright, which goes best, it may be 48 in long there, and it is 90 in" in hall
    (landing,) = told(case("landing 40 x 40"), RULE)
    assert "it may be 65 1/8 in long there, and it is 90 in" in landing
    (finding,) = judgement_of(case("doorway 23 x 80"), only=RULE).findings
    assert finding.working is not None
    assert [figure.name for figure in finding.working.figures] == ["side first", "front first", "top first"]


def test_what_bolts_hold_goes_in_apart() -> None:
    """Two sides of 90 by 24 by 3/4, and boards: each stands up flat against the wall, 93.1 or over its edge."""
    room = "doorway 32 x 80, ceiling 92"
    for join, more in (
        ("bolts 5/16 x 3, 2 per joint", ""),
        (GLUED, 'step "Put it up": in the room, join side.*, board.*\n'),
    ):
        text = case(room, join=join, more=more)
        assert (
            len(carried(review_of(text))) == 3
        )  # a side (told once for both), the board on the floor, the other
        assert told(text, RULE) == []
    elsewhere = case(room, more='step "Put it up": join side.*, board.*\n')
    assert len(carried(review_of(elsewhere))) == 1
    assert len(told(elsewhere, RULE)) == 1
    glued = case(room, join="bolts 5/16 x 3, 2 per joint, glue pva")
    assert len(told(glued, RULE)) == 1


def test_doors_go_in_with_the_case_and_drawers_do_not() -> None:
    more = """part door: panel, upright, facing front, 36 across, 89 tall, bottom 1/2 above floor
    flush with left of case, against front of side.left, opens 90 degrees, hinged left
fit door to side.left: 3 hinges 3
part tray: panel, flat, 33 1/2 across, 20 deep, bottom 30 above floor, centred across on case
    front 1 behind front of case, slides out 12
fit tray to side.*: slides 14
"""
    found = carried(review_of(case("doorway 32 x 80", more=more)))
    assert [("door" in one.parts, "tray" in one.parts) for one in found] == [(True, False), (False, True)]


@pytest.mark.parametrize("plan", [*SOUND_PIECES.values(), *EVERYDAY.values()])
def test_sound_pieces_are_quiet(plan: str) -> None:
    assert told(plan, RULE) == []


STEPPED = """
plan "Stepped case" in inches
stock panel: birch plywood 3/4
part low for each of left, right: panel, upright, facing side, 24 deep, 20 tall, on floor, front at 0, {ends}
part tall for each of left, right: panel, upright, facing side, 10 deep, 70 tall, on low.each, {place}, {ends}
part shelf: panel, across, flat, 10 deep, between tall.left and tall.right, flush with top of tall.left, {place}
join tall.* to low.*: dowels 3/8 x 2, 3 per joint, glue pva
join shelf to tall.*: screws #8 x 2, 2 per joint, glue pva
outline frame: 60 across, 24 deep, 90 tall, on floor
room hall: ceiling {ceiling}, doorway 70 x 40
"""


@pytest.mark.parametrize("place", ["front at 0", "front at 14"])
def test_a_stepped_case_tips_up_the_way_that_takes_less(place: str) -> None:
    """Over the side that is straight: √(10² + 90²) = 90.55; over the other √(24² + 90²) = 93.1, across 108.2."""
    for ceiling, lines in ((90, 1), (91, 0)):
        text = STEPPED.format(place=place, ends="each 0 inside frame", ceiling=ceiling)
        assert len(told(text, RULE)) == lines, ceiling


TRAY = """
plan "Open case" in inches
stock panel: birch plywood 3/4
part side for each of left, right: panel, upright, facing side, 20 deep, 30 tall, on floor, front at 0, {ends}
part base: panel, across, flat, 20 deep, between side.left and side.right, bottom 10 above floor, front at 0
join base to side.*: screws #8 x 2, 3 per joint, glue pva
{more}
outline frame: 30 across, 20 deep, 30 tall, on floor
room hall: doorway 70 x 80
"""


@pytest.mark.parametrize(
    ("more", "clusters"),
    [
        ("part tray: panel, flat, 20 across, 15 deep, on base, left at 2, front at 0, slides out 12", 2),
        ("part tray: panel, flat, 20 across, 15 deep, on base, left at 2, front at 0, lifts out", 2),
        # Nothing says what holds it, so it is not known to come off.
        ("part tray: panel, flat, 20 across, 15 deep, on base, left at 2, front at 0", 1),
        # A door that touches nothing hangs on its hinges, and goes in with the case.
        (
            "part door: panel, facing front, 28 across, 8 tall, bottom 12 above floor, left at 1\n"
            "    front 1 behind front of side.left, opens 90 degrees, hinged left\n"
            "fit door to side.left: 2 hinges 2",
            1,
        ),
        # A box of its own that stands on it and is joined to itself alone comes off.
        (
            "part post: panel, upright, facing side, 10 deep, 5 tall, on base, left at 5, front at 1\n"
            "part lid: panel, flat, 10 across, 10 deep, on post, left at 5, front at 1\n"
            "join lid to post: screws #8 x 2, 2 per joint",
            2,
        ),
    ],
)
def test_what_is_carried_in_as_one(more: str, clusters: int) -> None:
    assert len(carried(review_of(TRAY.format(more=more, ends="each 0 inside frame")))) == clusters
