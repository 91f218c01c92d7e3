"""Fasteners in space: every place against a sum done by hand.

Pocket geometry: joints reference, section 5 (15 degrees read in two sources; mid-thickness common practice).
"""

from __future__ import annotations

import math

import pytest

from reviewer.units import MM_PER_INCH
from reviewer.workshop.placed import Placed
from tests.rules.sound_pieces import BENCH, BOOKCASE, PLANTER, WALL_SHELF
from tests.support import review_of

INCH = MM_PER_INCH


def placed_of(text: str, left: str, right: str) -> list[Placed]:
    return [each for each in review_of(text).placed if {each.head_part, each.point_part} == {left, right}]


def inches(point: tuple[float, float, float] | None) -> tuple[float, ...]:
    assert point is not None
    return tuple(round(each / INCH, 3) + 0.0 for each in point)


# ---------------------------------------------------------------- square-driven

LID = """
    plan "Lid" in inches
    stock board: actual 3/4 x 5 1/2 pine
    part side: board, upright, facing side, 6 tall, on floor, left at 0, front at 0
    part top: board, across, flat, 20 long, on side, left at 0, front at 0
    join top to side: {how}
"""


def test_screws_through_a_top_into_the_edge_of_a_side() -> None:
    # The side is 3/4 thick and 5 1/2 deep, 6 tall; the row stands in the middle of its 3/4, 1 in from its ends.
    one, two = placed_of(LID.format(how="screws #8 x 2, 2 per joint, from above, 1 from ends"), "top", "side")
    assert (one.head_part, one.point_part, one.number, two.number) == ("top", "side", 0, 1)
    assert [inches(at) for at in (one.mouth, one.head, one.point)] == [
        (0.375, 1, 6.75),
        (0.375, 1, 6.75),
        (0.375, 1, 4.75),
    ]
    assert inches(two.head) == (0.375, 4.5, 6.75)
    assert one.along == (0, 1, 0)
    assert one.surface_normal == (0, 0, -1)
    assert one.direction == (0, 0, -1)
    assert (one.diameter / INCH, one.head_diameter / INCH) == (pytest.approx(0.164), pytest.approx(0.312))
    assert not one.pattern_assumed


def test_the_usual_row_begins_five_diameters_from_the_end() -> None:
    one, two = placed_of(LID.format(how="screws #8 x 2, from above"), "top", "side")
    # 5 x 0.164 = 0.82 in (NDS commentary, end distance of bored screws).
    assert inches(one.head) == (0.375, 0.82, 6.75)
    assert inches(two.head) == (0.375, 4.68, 6.75)
    assert one.pattern_assumed


def test_a_counterbore_sinks_the_head() -> None:
    (one,) = placed_of(
        LID.format(how="screws #8 x 1 1/2, 1 per joint, from above, counterbored 3/8"), "top", "side"
    )
    assert [inches(at) for at in (one.mouth, one.head, one.point)] == [
        (0.375, 2.75, 6.75),
        (0.375, 2.75, 6.375),
        (0.375, 2.75, 4.875),
    ]
    assert one.hole_diameter == pytest.approx((0.312 + 1 / 16) * INCH)


def test_from_below_the_head_is_at_the_far_end_of_the_side() -> None:
    (one,) = placed_of(LID.format(how="screws #8 x 6 1/2, 1 per joint, from below"), "top", "side")
    assert (one.head_part, inches(one.head), inches(one.point)) == (
        "side",
        (0.375, 2.75, 0),
        (0.375, 2.75, 6.5),
    )


def test_every_so_far_stands_in_the_middle_of_the_joint() -> None:
    rail = review_of(BENCH).placed_by_joint
    (seat,) = (found for (left, right, _), found in rail.items() if (left, right) == ("seat.1", "rail.front"))
    # The rail is 35 in long, from 3 1/2 to 38 1/2; four screws 10 in apart are 30, so 2 1/2 in off its ends.
    assert [inches(each.head)[0] for each in seat] == [6, 16, 26, 36]
    # Counterbored 2 into a 3 1/2 rail whose top is at 16: head at 14 1/2, point 2 1/2 further up.
    assert {inches(each.head)[2] for each in seat} == {14.5}
    assert {inches(each.point)[2] for each in seat} == {17}


def test_screws_through_a_dadoed_side_go_into_the_middle_of_the_shelf_end() -> None:
    review = review_of(BOOKCASE)
    shelf = review.setting.solids["shelf.2"]
    found = placed_of(BOOKCASE, "shelf.2", "side.left")
    assert found
    for each in found:
        assert each.head_part == "side.left"
        assert each.head[0] == pytest.approx(review.setting.solids["side.left"].low[0])
        assert each.head[2] == pytest.approx((shelf.low[2] + shelf.high[2]) / 2)
        assert shelf.low[1] < each.head[1] < shelf.high[1]


def test_a_cleat_screwed_to_the_wall() -> None:
    for each in placed_of(WALL_SHELF, "cleat", "wall"):
        assert each.point[1] - each.head[1] == pytest.approx(each.length)
        assert each.surface_normal == (0, 1, 0)


def test_metric_screws_from_outside() -> None:
    review = review_of(PLANTER)
    slat = review.setting.solids["front.1"]
    for each in placed_of(PLANTER, "front.1", "post.front-left"):
        assert each.head[1] == pytest.approx(slat.low[1])
        assert each.surface_normal == (0, 1, 0)


# ---------------------------------------------------------------- two rows

CROSS = """
    plan "Two boards that cross" in inches
    stock board: actual 3/4 x {wide} pine
    part one: board, across, flat, 20 long, on floor, left at 0, front at 8
    part two: board, deep, flat, 20 long, on one, left at 8, front at 0
    join two to one: screws #8 x 1 1/4, {how}
"""


def test_a_joint_that_is_wide_both_ways_takes_two_rows() -> None:
    # 4 in by 4 in: rows a quarter of the width from its edges.
    found = placed_of(CROSS.format(wide=4, how="2 per joint, 1/2 from ends"), "one", "two")
    assert [inches(each.head)[:2] for each in found] == [(8.5, 9), (11.5, 11)]
    found = placed_of(CROSS.format(wide=4, how="4 per joint, 1/2 from ends"), "one", "two")
    assert [inches(each.head)[:2] for each in found] == [(8.5, 9), (8.5, 11), (11.5, 9), (11.5, 11)]


def test_a_narrow_joint_takes_one_row() -> None:
    found = placed_of(CROSS.format(wide="2 1/2", how="2 per joint, 1/2 from ends"), "one", "two")
    assert [inches(each.head)[:2] for each in found] == [(8.5, 9.25), (10, 9.25)]


def test_rows_stand_as_far_from_the_edges_as_the_plan_says() -> None:
    found = placed_of(CROSS.format(wide=4, how="2 per joint, 1/2 from ends, 3/4 from edges"), "one", "two")
    assert [inches(each.head)[:2] for each in found] == [(8.5, 8.75), (11.5, 11.25)]


# ---------------------------------------------------------------- pockets

POCKET = """
    plan "Pockets" in inches
    stock board: actual 3/4 x 3 1/2 pine
    outline frame: 24 across, 3 1/2 deep, 20 tall, on floor
    part post for each of left, right: board, upright, facing side, 20 tall, on floor, front at 0
        flush with each of frame
    part rail: board, across, {turn}, between post.left and post.right, front at 0, bottom at 5
    join rail to post.*: pocket screws 1 1/4, 2 per end, 3/4 from ends{more}
"""
SIN, COS = math.sin(math.radians(15)), math.cos(math.radians(15))


def test_a_pocket_screw_runs_at_15_degrees_out_of_the_middle_of_the_end() -> None:
    # Flat rail, so the pocket is on its underside. Its end is at 3/4, its middle at 5 3/8 up.
    one, _ = placed_of(POCKET.format(turn="flat", more=""), "rail", "post.left")
    assert one.head_part == "rail"
    # Half of the usual 1 1/4 in screw lies under the head; the axis meets the face 3/8 / tan 15 = 1.4 in from
    # the end (joints reference, section 5: 1.40 in).
    assert inches(one.head) == pytest.approx((0.75 + 0.625 * COS, 0.75, 5.375 - 0.625 * SIN), abs=0.001)
    assert inches(one.mouth) == pytest.approx((0.75 + 1.3995, 0.75, 5), abs=0.001)
    assert inches(one.point) == pytest.approx((0.75 - 0.625 * COS, 0.75, 5.375 + 0.625 * SIN), abs=0.001)
    assert one.hole_diameter == pytest.approx(0.375 * INCH)


@pytest.mark.parametrize(("more", "mouth"), [(", from above", 5.75), (", from below", 5)])
def test_a_stated_face_is_the_one_that_is_bored(more: str, mouth: float) -> None:
    one, _ = placed_of(POCKET.format(turn="flat", more=more), "rail", "post.left")
    assert inches(one.mouth)[2] == pytest.approx(mouth)


@pytest.mark.parametrize(
    ("more", "mouth"), [(", from front", 0), (", from back", 0.75), (", from inside", 0.75), ("", 0.75)]
)
def test_pockets_of_an_upright_board_are_inside_where_the_plan_does_not_say(more: str, mouth: float) -> None:
    one, two = placed_of(POCKET.format(turn="on edge", more=more), "rail", "post.left")
    assert inches(one.mouth)[1] == pytest.approx(mouth)
    assert [inches(each.head)[2] for each in (one, two)] == pytest.approx([5.75, 7.75])


# ---------------------------------------------------------------- toe-driven


def test_a_toe_nail_starts_on_the_side_a_third_of_its_length_from_the_end() -> None:
    text = """
        plan "Stud" in inches
        stock stud: actual 1 1/2 x 3 1/2 pine
        part plate: stud, across, flat, 20 long, on floor, left at 0, front at 0
        part post: stud, upright, facing front, 20 tall, on plate, left at 8, front at 0
        join post to plate: nails 3, 2 per joint, at 30 degrees, 1 from ends
        """
    one, two = placed_of(text, "post", "plate")
    assert (one.head_part, one.point_part) == ("post", "plate")
    # It starts a third of 3 in along itself before the joint: 1 x cos 30 above it (NDS, toe-nails).
    cos, sin = math.cos(math.radians(30)), math.sin(math.radians(30))
    assert inches(one.head) == pytest.approx((9, 1.5 if one.head[1] > 10 else 0, 1.5 + cos), abs=0.001)
    assert one.point[2] / INCH == pytest.approx(1.5 - 2 * cos, abs=0.001)
    assert abs(one.point[1] - one.head[1]) / INCH == pytest.approx(3 * sin)
    # In turn from both faces where the plan names no side.
    assert {round(each.head[1] / INCH, 3) + 0.0 for each in (one, two)} == {0, 1.5}


def test_through_a_face_at_a_slant_the_row_leans_together() -> None:
    one, two = placed_of(
        LID.format(how="screws #8 x 2, 2 per joint, from above, 1 from ends, at 15 degrees"), "top", "side"
    )
    assert inches(one.head) == pytest.approx((0.375, 1 - 0.75 * SIN / COS, 6.75), abs=0.001)
    assert inches(one.point) == pytest.approx(
        (0.375, 1 - 0.75 * SIN / COS + 2 * SIN, 6.75 - 2 * COS), abs=0.001
    )
    assert inches(two.point)[1] == pytest.approx(5.5 - inches(one.point)[1], abs=0.001)


# ---------------------------------------------------------------- hidden ones


def test_a_third_of_a_dowel_lies_in_the_face() -> None:
    found = placed_of(LID.format(how="dowels 3/8 x 2, 2 per joint, 1 from ends, glue"), "top", "side")
    assert [each.mouth for each in found] == [None, None]
    assert found[0].head_part == "side"
    assert inches(found[0].head) == pytest.approx((0.375, 1, 6 - 4 / 3), abs=0.001)
    assert inches(found[0].point) == pytest.approx((0.375, 1, 6 + 2 / 3), abs=0.001)


EDGES = """
    plan "Edge to edge" in millimetres
    stock board: actual 20 x 100 pine
    part one: board, across, flat, 600 long, on floor, left at 0, front at 0
    part two: board, across, flat, 600 long, on floor, left at 0, front at 100
    join one to two: {how}, glue
"""


def test_dowels_between_edges_lie_half_in_each() -> None:
    one, *_ = placed_of(EDGES.format(how="dowels 8 x 40, every 200, 100 from ends"), "one", "two")
    assert (one.head, one.point) == ((100, 80, 10), (100, 120, 10))


def test_the_largest_biscuit_that_fits() -> None:
    # #20 is 56 x 23 mm in a slot of 4 mm, for stock of 3/4 in and up (joints reference, 4.5).
    first, *_ = placed_of(EDGES.format(how="biscuits, every 200, 100 from ends"), "one", "two")
    assert (first.width, first.diameter) == (56, 4)
    assert (first.head, first.point) == ((100, 88.5, 10), (100, 111.5, 10))
    # In 16 mm stock #10: 53 x 19.
    thin = EDGES.replace("20 x 100", "16 x 100")
    first, *_ = placed_of(thin.format(how="biscuits, every 200, 100 from ends"), "one", "two")
    assert (first.width, first.length) == (53, 19)


def test_loose_tenons_keep_their_three_sizes() -> None:
    first, *_ = placed_of(
        EDGES.format(how="loose tenons 8 x 22 x 40, every 200, 100 from ends"), "one", "two"
    )
    assert (first.diameter, first.width, first.length) == (8, 22, 40)


# ---------------------------------------------------------------- what has no place


def test_nothing_is_placed_where_the_side_misses_the_joint_or_parts_do_not_meet() -> None:
    assert placed_of(LID.format(how="screws #8 x 2, from left"), "top", "side") == []
    assert placed_of(LID.format(how="clips"), "top", "side") == []
    assert (
        review_of(LID.replace("20 long, on side", "20 long, bottom at 9").format(how="screws #8 x 2")).placed
        == ()
    )


@pytest.mark.parametrize("end", ["left", "right"])
def test_a_notch_on_the_far_side_moves_no_screw(end: str) -> None:
    # The notched board meets the cleat with two pieces of its body: they are one patch all the same.
    text = f"""
        plan "Lipped board" in inches
        stock strip: actual 1 1/2 x 1 1/2 pine
        stock board: actual 1 x 10 pine
        part cleat: strip, across, flat, 20 long, left at 0, front at 4, on floor
        part board: board, across, flat, on cleat, 20 long, left at 0, front at 0
            notch 3 across by 1/2 tall at {end} top
        join board to cleat: screws #8 x 2, 2 per joint, 1 1/2 from ends, from below
        """
    heads = sorted(inches(each.head) for each in placed_of(text, "board", "cleat"))
    assert heads == [(1.5, 4.75, 0), (18.5, 4.75, 0)]
