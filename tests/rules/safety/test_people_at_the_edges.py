"""Cases just beside those that the rules about people tell: each was found by breaking a line and seeing no test fail."""

from __future__ import annotations

import pytest

from tests.support import findings_of, review_of, told

# ------------------------------------------------------------------ openings


def bars(low: float, gap: float, thick: str = "25 x 25") -> list[str]:
    text = f"""
        plan "Screen" in millimetres
        stock bar: actual {thick} european beech
        stock rail: actual 25 x 25 european beech
        part low: rail, across, on edge, 600 long, front at 0, left at 0, bottom {low - 25} above floor
        part bar: bar, upright, facing front, 400 tall, front at 0, on low, left at 0
            4 copies every {gap + 25} across
        part high: rail, across, on edge, 600 long, front at 0, left at 0, on bar.1
        room den: indoors, children under 6
    """
    return told(text, "entraps")


def test_an_opening_counts_from_its_lower_edge() -> None:
    """EN 1176-1 (from memory): 600 mm to the lower edge; the upper edge of these is at 950 and 1010 mm."""
    assert bars(low=550, gap=120) == []
    (line,) = bars(low=610, gap=120)
    assert "an opening of 120 mm, 610 mm above the floor" in line


def test_fingers_go_between_thin_slats_too() -> None:
    """EN 716-1 (from memory): 7 mm up to 12 mm. How thick the slats are does not matter, so long as they have some."""
    assert len(bars(low=610, gap=8)) == 1
    (line,) = bars(low=610, gap=8, thick="9 x 25")
    assert line.startswith("note ")
    assert "a gap of 8 mm" in line
    assert bars(low=610, gap=6, thick="9 x 25") == []
    assert bars(low=610, gap=12, thick="9 x 25") == []


def test_pegs_are_no_slats() -> None:
    """A gap of 8 mm between pegs that are no longer than a finger is wide, 12 mm, holds none."""
    text = """
        plan "Pegs" in millimetres
        stock peg: actual 10 x 10 european beech
        part peg: peg, upright, facing front, {tall} tall, front at 0, bottom 610 above floor, left at 0
            4 copies every 18 across
        room den: indoors, children under 6
    """
    assert told(text.format(tall=12), "entraps") == []
    assert len(told(text.format(tall=13), "entraps")) == 1


# ------------------------------------------------------------------ pinches

DOOR = """
    plan "Nursery cupboard" in millimetres
    stock ply: birch plywood 18 mm
    part side: ply, facing side, 350 deep, 600 tall, on floor, left at 0, front at 18
    part door: ply, facing front, 400 across, 600 tall, bottom 0 above floor, front at 0, left at 0
        opens 100 degrees, hinged left
    part other: ply, facing front, 100 across, {tall} tall, bottom 0 above floor, front at {front}, left at 412
    fit door to side: 2 hinges 64
    room nursery: indoors, children under 4
"""


def test_a_door_squeezes_against_what_is_in_its_own_plane_and_tall_enough_for_a_finger() -> None:
    """A gap of 12 mm, between the 8 and 25 mm of EN 581-1 and EN 12520 (from memory)."""
    (line,) = told(DOOR.format(tall=600, front=0), "pinches")
    assert "Beside door is a gap of 12 mm to other" in line
    assert told(DOOR.format(tall=600, front=18), "pinches") == []  # it stands behind the door
    assert told(DOOR.format(tall=24, front=0), "pinches") == []
    assert len(told(DOOR.format(tall=26, front=0), "pinches")) == 1


LEAVES = """
    plan "Table" in inches
    stock top: actual 3/4 x 18 pine panel, 8 ft
    part end for each of left, right: top, upright, facing side, 28 tall, on floor, each 0 inside top, front at 0
    part top: top, across, flat, 36 long, left at 0, front at 0, bottom 28 above floor
    part leaf: top, deep, flat, 18 long, rip 12, right 0 left of left of top, front at 0, flush with top of top
        opens 90 degrees, hinged right
    fit leaf to top: 2 hinges 2
    {more}
"""


def test_the_leaf_of_a_table_is_no_lid() -> None:
    """It lies on nothing that it could fall shut on; over a box it does."""
    assert told(LEAVES.format(more=""), "pinches") == []
    box = "part box: top, deep, on edge, rip 6, 18 long, {where}, right 6 left of left of top, front at 0"
    near = box.format(where="bottom 22 above floor")
    assert len(told(LEAVES.format(more=near), "pinches")) == 1
    far = box.format(where="on floor")
    assert told(LEAVES.format(more=far), "pinches") == []


# ------------------------------------------------------------------ head height

SHELF = """
    plan "Hall shelf" in inches
    stock board: actual 3/4 x 9 1/4 pine, 6 ft
    part cleat: board, across, on edge, rip 2 1/2, 30 long, against wall, bottom {up} above floor, left at 1
    part shelf: board, across, flat, 32 long, on cleat, back 0 in front of front of wall, left at 0
    {more}
    room hall: indoors, wall behind, studs every 16
"""


def test_a_shelf_that_begins_below_the_highest_head_counts() -> None:
    """80 in (ADA 307.4, from memory): its underside is at 79 3/4 in and its top at 80 1/2 in, or above."""
    assert len(told(SHELF.format(up="77 1/4", more=""), "sharp-at-head-height")) == 1
    assert told(SHELF.format(up="77 3/4", more=""), "sharp-at-head-height") == []


def test_uprights_elsewhere_leave_a_shelf_its_corners() -> None:
    """A box further up hangs on the same cleat; its sides stand over the shelf's ends and do not reach them."""
    more = """part post: board, across, on edge, 32 long, on cleat, back 0 in front of front of wall, left at 0
    part end for each of left, right: board, deep, on edge, 8 1/2 long, bottom 64 above floor
        each 0 inside shelf, back 0 in front of front of post"""
    (finding,) = findings_of(SHELF.format(up=55, more=more), "sharp-at-head-height")
    assert finding.parts == ("shelf",)


def test_a_case_whose_sides_stop_short_of_the_wall_has_no_corner_there() -> None:
    more = """part end for each of left, right: board, deep, on edge, 8 long, on shelf, each 0 inside shelf
        front 0 behind front of shelf
    join end.* to shelf: screws #8 x 2, 2 per joint"""
    (finding,) = findings_of(SHELF.format(up=60, more=more), "sharp-at-head-height")
    assert finding.parts in (("end.left",), ("end.right",))


TOP = """
    plan "Children's stand" in inches
    stock plank: actual 1 x 12 pine
    part leg: plank, upright, facing side, 30 tall, on floor, left at 20, front at 0
    part top: plank, across, flat, {long} long, on leg, left at {left}, front at 0
    room den: indoors
"""


@pytest.mark.parametrize(("left", "long", "told_"), [(15, 6, 1), (17, 4, 0), (20, 6, 1), (20, 4, 0)])
def test_a_top_sticks_out_on_either_side(left: float, long: float, told_: int) -> None:
    """The leg is 1 in thick, from 20 to 21: 5 in beyond it are walked into, 3 in are not (4 in, ADA 307.2)."""
    assert len(findings_of(TOP.format(left=left, long=long), "sharp-at-head-height")) == told_


# ------------------------------------------------------------------ heights and heat


def test_a_shelf_far_above_a_seat_is_no_table() -> None:
    text = """
        plan "Desk and bench" in inches
        stock plank: actual 1 1/2 x 11 1/4 pine, 8 ft
        part leg: plank, upright, facing side, 16 tall, on floor, left at 0, front at 0
        part seat: plank, across, flat, 30 long, on leg, left at 0, front at 0
        part stand: plank, upright, facing side, {up} tall, on floor, left at 0, front at 30
        part top: plank, across, flat, 30 long, on stand, left at 0, front at 30
        load seat: 1 person seated
    """
    said = [line for line in told(text.format(up=34), "height-unusual") if "above seat" in line]
    assert len(said) == 1
    # 500 mm = 19.7 in: a bar and its stool; 40 in above the seat nobody sits at it.
    assert [line for line in told(text.format(up=56), "height-unusual") if "above seat" in line] == []


def test_how_much_further_off_the_piece_goes() -> None:
    """12 in from a heater on the wall (a city fire department): 8 in are 4 too few."""
    text = """
        plan "Bench" in inches
        stock plank: actual 1 1/2 x 11 1/4 southern pine
        part seat: plank, across, flat, 40 long, left at 0, front at 0, on floor
        room hall: indoors, heater left {away} away
    """
    (line,) = told(text.format(away=8), "heat-too-close")
    assert "→ Set the piece 4 in further off" in line
    assert told(text.format(away=12), "heat-too-close") == []


# ------------------------------------------------------------------ what a drawer holds

CHEST = """
    plan "Chest" in millimetres
    stock ply: birch plywood 18 mm
    outline case: 500 across, 400 deep, 800 tall, on floor
    part side for each of left, right: ply, facing side, 400 deep, 800 tall, on floor, flush with each of case
        front 0 behind front of case
    part top: ply, flat, 400 deep, between side.left and side.right across, flush with top of case
        front 0 behind front of case
    join top to side.*: screws 4 x 50, every 100
    {moves}
"""
TRAY = """assembly drawer: left 13 right of right of side.left, right 13 left of left of side.right
        front 0 behind front of case, 300 deep, 200 tall, bottom 400 above floor, slides out 250
        part side for each of left, right: ply, facing side, flush with each of drawer, 300 deep, 200 tall
            front 0 behind front of drawer, flush with bottom of drawer
        part end for each of front, back: ply, facing front, between side.left and side.right across, 200 tall
            flush with each of drawer, flush with bottom of drawer
        part base: ply, flat, between side.left and side.right across, between end.front and end.back deep
            flush with bottom of drawer
        {more}"""


def held(moves: str) -> float:
    """Litres."""
    review = review_of(CHEST.format(moves=moves))
    (piece,) = (each for each in review.pieces if each.feet)
    return piece.enclosed / 1e6


def test_a_divider_takes_no_room_from_a_drawer() -> None:
    """Inside 500 - 36 - 26 - 36 = 402 by 300 - 36 = 264 mm; 782 - 418 = 364 mm up to the top, less 1/8 in.

    402 x 264 x 360.825 = 38.29 l (CPSC guidance on clothing storage units).
    """
    assert held(TRAY.format(more="")) == pytest.approx(38.294, abs=0.005)
    divider = "part middle: ply, facing side, between end.front and end.back deep, on base, 150 tall, centred across on drawer"
    assert held(TRAY.format(more=divider)) == pytest.approx(38.294, abs=0.005)


def test_a_lid_closes_off_no_cupboard() -> None:
    lid = """part lid: ply, flat, 500 across, 300 deep, on side.left, left 0 inside case
        front 0 behind front of case, opens 95 degrees, hinged back"""
    assert held(lid) == 0
    door = """part door: ply, facing front, 500 across, 800 tall, left 0 inside case, bottom 0 above floor
        back 0 in front of front of case, opens 95 degrees, hinged left"""
    # Half of 500 x 800 x 400 mm is 80 l.
    assert held(door) == pytest.approx(80, abs=0.01)


# ------------------------------------------------------------------ lifting

LEAF = """
    plan "Table with a leaf" in millimetres
    stock slab: actual 30 x 1000 red oak, 3 m
    part leaf: slab, across, flat, {long} long, bottom 720 above floor, left at 0, front at 0, lifts out
    part leg for each of left, right: slab, upright, facing side, rip 100, 720 tall, on floor, front at 0
        each 0 inside leaf
"""


def test_a_part_that_is_lifted_in_use() -> None:
    """705.6 kg/m³ (Wood Handbook, table 5-3): 1 m x 30 mm x 1.1 m is 23.28 kg and 1.09 m 23.07; 51 lb = 23.13 kg."""
    heavy = [each for each in findings_of(LEAF.format(long=1100), "too-heavy-to-lift-alone") if each.parts]
    assert [each.weight.word for each in heavy] == ["warning"]
    assert heavy[0].parts == ("leaf",)
    assert not [each for each in findings_of(LEAF.format(long=1090), "too-heavy-to-lift-alone") if each.parts]


TIED = """
    plan "Slab on the wall" in millimetres
    stock slab: actual 60 x 500 red oak, 3 m
    part slab: slab, upright, facing front, 1500 tall, {bottom}, against wall, left at 0
    join slab to wall: screws 8 x 120, every 400
    room den: indoors, wall behind, studs every 400
"""


def test_what_stands_and_is_screwed_to_the_wall_need_not_be_held_up() -> None:
    """0.06 x 0.5 x 1.5 x 705.6 = 31.8 kg either way."""
    (stands,) = told(TIED.format(bottom="on floor"), "too-heavy-to-lift-alone")
    assert stands.startswith("note ")
    assert "31.8 kg" in stands
    (hangs,) = told(TIED.format(bottom="bottom 300 above floor"), "too-heavy-to-lift-alone")
    assert hangs.startswith("warning ")
    assert "has to be held up to the wall while it is fixed" in hangs
