"""The room in drawers and behind doors: sums by hand, one figure in the whole report, and cost by parts.

How it counts is from the CPSC guidance on clothing storage units: a drawer's height to the lowest thing above
it less 1/8 in, and half of the space behind a door.
"""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from reviewer.reports.stability import stability_of
from reviewer.units import MM_PER_FOOT, MM_PER_INCH
from reviewer.workshop.enclosed_volume import Room
from tests.support import findings_of, review_of, told

PLANS = Path(__file__).parents[2] / "plans"

TEXT = """
plan "Case" in millimetres
stock ply: actual 18 x 400 red oak, 3 m
outline case: 800 across, 400 deep, 900 tall, on floor
part side for each of left, right: ply, upright, facing side, as tall as case, on floor
    flush with each of case, flush with front of case
part top: ply, across, flat, between side.left and side.right, flush with top of case, flush with front of case
join top to side.*: screws 4 x 50, every 100
{more}
"""
DRAWER = """assembly drawer: between side.left and side.right across with 12 each end, front 0 behind front of case
    390 deep, 150 tall, bottom 300 above floor, slides out 250
    part wall for each of left, right: ply, deep, on edge, rip 150, flush with each of drawer
        390 long, flush with front of drawer, flush with bottom of drawer
    part end for each of front, back: ply, across, on edge, rip 150, between wall.left and wall.right
        flush with each of drawer, flush with bottom of drawer
    part bottom: ply, across, flat, rip to fit, between wall.left and wall.right
        from back of end.front to front of end.back, flush with bottom of drawer
    {more}
"""
#: 800 - 36 - 24 - 36 = 704 wide, 390 - 36 = 354 deep, up to the top 882 - 318 = 564 less 3.175 mm.
EMPTY = 704 * 354 * (564 - 0.125 * MM_PER_INCH)


def rooms(more: str) -> tuple[Room, ...]:
    (piece,) = (each for each in review_of(TEXT.format(more=more)).pieces if each.feet)
    return piece.rooms


def test_a_drawer_by_hand() -> None:
    (room,) = rooms(DRAWER.format(more=""))
    assert room.way == "drawer"
    assert room.counted == pytest.approx(EMPTY, rel=1e-9)


def test_two_dividers_take_no_room() -> None:
    two = """part divider: ply, deep, on edge, rip 100, from back of end.front to front of end.back
        on bottom, left 200 right of left of drawer
    part other: ply, deep, on edge, rip 100, from back of end.front to front of end.back
        on bottom, left 450 right of left of drawer"""
    (room,) = rooms(DRAWER.format(more=two))
    assert room.counted == pytest.approx(EMPTY, rel=1e-9)


def test_a_front_laid_on_the_box_takes_none_either() -> None:
    laid = "part face: ply, across, on edge, rip 180, 780 long, against front of end.front, centred across on drawer"
    (room,) = rooms(DRAWER.format(more=laid) + "\n")
    assert room.counted == pytest.approx(EMPTY, rel=1e-9)


def test_a_second_wall_inside_the_first_does() -> None:
    more = "part liner: ply, across, on edge, rip 100, against back of end.front, on bottom\n        between wall.left and wall.right"
    (room,) = rooms(DRAWER.format(more=more))
    assert room.counted == pytest.approx(704 * (354 - 18) * (564 - 0.125 * MM_PER_INCH), rel=1e-9)


def test_the_lowest_thing_above_ends_it_even_at_the_side() -> None:
    kicker = "part kicker: ply, deep, flat, rip 60, 300 long, against right of side.left, bottom at 500, front at 0\n"
    (room,) = rooms(kicker + DRAWER.format(more=""))
    assert room.counted == pytest.approx(704 * 354 * (500 - 318 - 0.125 * MM_PER_INCH), rel=1e-9)


DOOR = """part door: ply, upright, facing front, 700 tall, rip 300, left 20 right of left of case, bottom at 100
    back 0 in front of front of case, opens 95 degrees, hinged left
"""


def test_behind_a_door_to_the_back_or_to_the_end_of_the_piece() -> None:
    (room,) = rooms(DOOR)
    assert (room.way, room.counted) == ("door", pytest.approx(300 * 700 * 400 / 2))
    back = "part back: ply, upright, facing front, 880 tall, rip 390, bottom at 0, left 18 right of left of case\n    back at 380\n"
    (room,) = rooms(back + DOOR)
    assert room.counted == pytest.approx(300 * 700 * (380 - 18) / 2)


def test_a_door_in_the_side_has_the_width_behind_it() -> None:
    door = DOOR.replace("facing front", "facing side").replace(
        "rip 300, left 20 right of left of case", "rip 300, front at 50"
    )
    door = door.replace("back 0 in front of front of case", "right 0 left of left of case").replace(
        "hinged left", "hinged front"
    )
    # Up to the left side of the case itself, which is right behind it: nothing is closed off.
    assert [room.counted for room in rooms(door)] == [0.0]
    right = door.replace("right 0 left of left of case", "left 0 right of right of case")
    assert [room.counted for room in rooms(right)] == [0.0]


def test_a_door_in_an_open_side_has_all_that_lies_behind_it() -> None:
    posts = TEXT.replace("as tall as case, on floor", "as tall as case, on floor, rip 40")
    door = """part door: ply, upright, facing side, 700 tall, rip 300, front at 50, bottom at 100
        {place}, opens 95 degrees, hinged front
    """
    for place in ("right 0 left of left of case", "left 0 right of right of case"):
        found = review_of(posts.format(more=door.format(place=place))).pieces
        (piece,) = (each for each in found if each.feet)
        # The piece with the door nowhere fixed to it ends at its own sides: 800 mm of width, half of it.
        assert [room.counted for room in piece.rooms] == [pytest.approx(300 * 700 * 800 / 2)]


@pytest.mark.parametrize("name", ["map-cabinet.plan", "flawed/drawers-tip.plan", "base-cabinet.plan"])
def test_every_report_says_one_figure(name: str) -> None:
    text = (PLANS / name).read_text(encoding="utf-8")
    review = review_of(text)
    shown = [
        float(found.group(1))
        for each in stability_of(review)
        if (found := re.search(r"with ([\d.]+) cu ft in drawers", each.scope))
    ]
    assert shown
    (piece,) = (each for each in review.pieces if each.rooms)
    assert shown == [pytest.approx(piece.enclosed / MM_PER_FOOT**3, abs=0.006)]
    for finding in findings_of(text, "regulated-piece"):
        assert finding.working is not None
        said = [each.value.amount for each in finding.working.figures if each.name.endswith("behind doors")]
        assert said == [] or said == [piece.enclosed]


def test_the_map_cabinet_by_hand() -> None:
    """In inches: behind the door and in two drawers, whose measures are read from the plan."""
    review = review_of((PLANS / "map-cabinet.plan").read_text(encoding="utf-8"))
    (piece,) = (each for each in review.pieces if each.rooms)
    door, first, last = piece.rooms
    solids = review.setting.solids
    leaf = solids["door.leaf"]
    # The case has no back, so the room behind the leaf goes to the back of the piece.
    behind = leaf.extent(0) * leaf.extent(2) * (piece.high[1] - leaf.high[1]) / 2
    assert door.counted == pytest.approx(behind, rel=1e-9)
    for room, above in ((first, solids["drawer.2.bottom"].low[2]), (last, solids["top"].low[2])):
        bottom = solids[f"{room.name}.bottom"]
        level = bottom.extent(0) * bottom.extent(1)
        assert room.counted == pytest.approx(level * (above - bottom.high[2] - 0.125 * MM_PER_INCH), rel=1e-9)


def test_a_drawer_that_nothing_hangs_counts_for_its_piece_and_in_the_report() -> None:
    text = TEXT.format(more=DRAWER.format(more="")).replace("red oak", "hickory")  # over 30 lb
    assert "drawer" not in "".join(next(each.parts for each in review_of(text).pieces if each.feet))
    scope = "".join(each.scope for each in stability_of(review_of(text)))
    assert round(EMPTY / 1e9, 2) == 0.14
    assert "0.14 m³ in drawers" in scope
    assert told(text, "regulated-piece")
