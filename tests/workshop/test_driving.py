"""Grip, bite and cover of fasteners against sums done by hand."""

from __future__ import annotations

import math

import pytest

from reviewer.units import MM_PER_INCH
from reviewer.workshop.driving import Driven
from reviewer.workshop.fastener_counts import fastener_list
from reviewer.workshop.fastener_rows import row_ends
from tests.rules.sound_pieces import BENCH, BOOKCASE, PLANTER, WALL_SHELF
from tests.support import review_of

INCH = MM_PER_INCH
COS = math.cos(math.radians(15))


def driven_of(text: str, left: str, right: str) -> Driven:
    """The one kind of fastener of a joint."""
    (found,) = (
        each for each in review_of(text).driven if {each.joint.left, each.joint.right} == {left, right}
    )
    return found


def figures(driven: Driven, unit: float = INCH) -> tuple[float, ...]:
    return tuple(round(each / unit, 3) for each in (driven.grip, driven.bite, driven.behind, driven.cover))


# ---------------------------------------------------------------- the bench


def test_pocket_screws_in_two_by_fours() -> None:
    # Joints reference, section 5: 1 1/2 in stock, 2 1/2 in screw: grip 1.25, depth 1.21, cover 0.29 in.
    end = driven_of(BENCH, "end.left", "leg.front-left")
    assert figures(end) == (1.25, 1.207, 1.5, 0.293)
    assert (end.head_part, end.point_part) == ("end.left", "leg.front-left")
    assert (end.head_surface, end.point_surface) == ("end", "face")
    # A rail meets the leg's edge, which is 3 1/2 in deep; at 15 degrees from the middle of 1 1/2 in the axis
    # leaves the leg's back face 3/4 / tan 15 = 2.799 in on.
    assert figures(driven_of(BENCH, "rail.front", "leg.front-left")) == (1.25, 1.207, 2.799, 1.592)


def test_screws_from_below_counterbored() -> None:
    # A 3 1/2 in rail counterbored 2 leaves 1 1/2 under the head; 2 1/2 - 1 1/2 = 1 into 1 1/2 of seat.
    seat = driven_of(BENCH, "seat.1", "rail.front")
    assert figures(seat) == (1.5, 1.0, 1.5, 0.5)
    assert (seat.head_part, seat.point_part) == ("rail.front", "seat.1")
    assert (seat.count, seat.count_assumed, seat.side_assumed, seat.misses) == (4, False, False, False)


def test_as_many_as_stand_every_ten_inches_and_clear_of_the_ends() -> None:
    # 35 in of rail less five diameters (0.82 in) at each end: 33.4 in hold three gaps of 10.
    assert driven_of(BENCH, "seat.1", "rail.front").count == 4
    # 4 7/16 in of end rail: one.
    assert driven_of(BENCH, "seat.1", "end.left").count == 1


@pytest.mark.parametrize(
    ("length", "spacing", "count"),
    [
        (30, 10, 3),
        (31.5, 10, 3),
        (31.7, 10, 4),
        (20, 10, 2),
        (11, 10, 1),
        (12, 10, 2),
        (1, 10, 1),
        (20, 6, 4),
    ],
)
def test_spacing_counts(length: float, spacing: float, count: int) -> None:
    # In all of them a gauge of 0.164 in keeps 0.82 in off each end: 1.64 in are lost.
    text = f"""
        plan "Row" in inches
        stock board: 1x4 pine
        part one: board, across, flat, {length} long, on floor, left at 0, front at 0
        part two: board, across, flat, {length} long, on one, left at 0, front at 0
        join two to one: screws #8 x 1 1/4, every {spacing}
        """
    # Where the board is shorter than wide, the row runs across it.
    expected = 1 if length < 3.5 else count
    assert driven_of(text, "one", "two").count == expected


# ---------------------------------------------------------------- dadoes, rabbets, laps


def test_screws_through_a_dadoed_side_from_outside() -> None:
    # A 3/4 in sheet measures 0.72 in; a dado 1/4 deep leaves 0.47 under the head: 1.625 - 0.47 = 1.155.
    shelf = driven_of(BOOKCASE, "shelf.2", "side.left")
    assert shelf.head_part == "side.left"
    assert figures(shelf)[:2] == (0.47, 1.155)
    # The shelf is 30 - 2 · 0.72 + 2 · 0.25 in long.
    assert figures(shelf)[2:] == (29.06, 27.905)
    assert (shelf.head_surface, shelf.point_surface) == ("face", "end")


RABBET = """
    plan "Back in a rabbet" in inches
    stock board: actual 3/4 x 8 pine
    stock thin: hardboard 1/4
    outline case: 24 across, 8 deep, 20 tall, on floor
    part side for each of left, right: board, upright, facing side, 20 tall, on floor, flush with front of case
        flush with each of case
    part back: thin, facing front, from left of case to right of case, less 3/4, 20 tall, on floor
        flush with back of case
    join back to side.*: rabbet {depth} deep, {how}
"""


def test_a_back_let_into_a_rabbet_is_fastened_from_behind() -> None:
    review = review_of(RABBET.format(depth="3/8", how="screws #6 x 1, every 6"))
    thick = review.setting.solids["back"].thickness
    back = next(each for each in review.driven if each.joint.right == "side.left")
    assert back.axis == 1
    assert (back.head_part, back.point_part) == ("back", "side.left")
    assert back.grip == pytest.approx(thick)
    # The side is 8 in deep there, less the rabbet.
    assert back.behind == pytest.approx(8 * INCH - thick)
    assert not back.misses


def test_a_rabbet_can_be_fastened_across_its_other_face() -> None:
    review = review_of(RABBET.format(depth="3/8", how="screws #6 x 1, every 6, from left"))
    left = next(each for each in review.driven if each.joint.right == "side.left")
    # Through the 3/8 in that is left of the side, into the edge of the back.
    assert (left.axis, left.head_part, left.misses) == (0, "side.left", False)
    assert left.grip == pytest.approx(0.375 * INCH)


def test_a_rabbet_fastened_from_the_front_goes_through_what_is_left_of_the_side() -> None:
    review = review_of(RABBET.format(depth="3/8", how="screws #6 x 8, every 6, from front"))
    thick = review.setting.solids["back"].thickness
    front = next(each for each in review.driven if each.joint.right == "side.left")
    assert (front.head_part, front.point_part) == ("side.left", "back")
    assert front.grip == pytest.approx(8 * INCH - thick)
    assert front.behind == pytest.approx(thick)


def test_a_thin_panel_in_a_deep_groove_goes_in_along_the_groove() -> None:
    # The groove is deeper than the panel is thick; the joint is across all the same.
    text = RABBET.replace("less 3/4", "less 1/2").replace("flush with back of case", "back at 7")
    text = text.replace(
        "rabbet {depth} deep, {how}", "groove 1/2 deep, screws #6 x 1, 2 per joint, from outside"
    )
    review = review_of(text)
    panel = next(each for each in review.driven if each.joint.right == "side.left")
    assert panel.axis == 0
    assert panel.head_part == "side.left"
    assert panel.grip == pytest.approx(0.25 * INCH)


def test_a_half_lap_leaves_half_of_each() -> None:
    text = """
        plan "Cross" in inches
        stock board: actual 1 1/2 x 3 1/2 pine
        part one: board, across, flat, 20 long, on floor, left at 0, front at 8
        part two: board, deep, flat, 20 long, on floor, left at 8, front at 0
        join one to two: half lap, screws #8 x 1 1/4, 2 per joint, from above
        """
    assert figures(driven_of(text, "one", "two")) == (0.75, 0.5, 0.75, 0.25)


# ---------------------------------------------------------------- layers


LAYERS = """
    plan "Three layers" in inches
    stock board: actual 3/4 x 5 1/2 pine
    part low: board, across, flat, {low} long, on floor, left at 0, front at 0
    part middle: board, across, flat, 20 long, on low, left at 0, front at 0
    part top: board, across, flat, 20 long, on middle, left at 0, front at 0
    join top to middle: screws #8 x {length}, 4 per joint, from above
"""


def test_what_lies_whole_behind_the_far_part_counts_with_it() -> None:
    through = driven_of(LAYERS.format(low=20, length=2), "top", "middle")
    # 2 - 3/4 = 1 1/4 of bite: through the middle board into the low one.
    assert figures(through) == (0.75, 1.25, 1.5, 0.25)
    assert through.beyond == ("low",)


def test_what_lies_behind_only_in_part_does_not_count() -> None:
    through = driven_of(LAYERS.format(low=15, length=2), "top", "middle")
    assert figures(through) == (0.75, 1.25, 0.75, -0.5)
    assert through.beyond == ()


def test_a_part_behind_counts_for_the_cover_of_a_point_that_stays_in_front_of_it() -> None:
    near = driven_of(LAYERS.format(low=20, length="1 7/16"), "top", "middle")
    assert figures(near) == (0.75, 0.688, 1.5, 0.812)
    assert near.beyond == ()


def test_the_floor_is_no_wood() -> None:
    long = driven_of(LAYERS.format(low=20, length=3), "top", "middle")
    assert figures(long) == (0.75, 2.25, 1.5, -0.75)
    assert long.beyond == ("low",)


# ---------------------------------------------------------------- walls, nails, metric


def test_screws_into_the_wall() -> None:
    cleat = driven_of(WALL_SHELF, "cleat", "wall")
    assert (cleat.head_part, cleat.point_part) == ("cleat", "wall")
    assert (cleat.grip / INCH, cleat.bite / INCH) == (pytest.approx(0.75), pytest.approx(2.25))
    assert cleat.cover == math.inf


def test_metric_screws_from_outside() -> None:
    # 20 mm slat on a 45 mm post: 45 - 20 = 25 in the post, 20 left.
    slat = driven_of(PLANTER, "front.1", "post.front-left")
    assert slat.head_part == "front.1"
    assert figures(slat, 1.0) == (20, 25, 45, 20)
    # 70 mm through the 45 mm post into the end of a 170 mm bearer.
    bearer = driven_of(PLANTER, "bearer.left", "post.front-left")
    assert bearer.head_part == "post.front-left"
    assert figures(bearer, 1.0) == (45, 25, 170, 145)


def test_nails_go_through_the_thinner_part() -> None:
    back = driven_of(BOOKCASE, "back", "side.left")
    assert back.head_part == "back"
    assert back.side_assumed


# ---------------------------------------------------------------- pockets


POCKET = """
    plan "Pockets" in inches
    stock board: actual {stock} x 5 1/2 pine
    stock post: actual {mate} x 5 1/2 pine
    outline frame: 24 across, 5 1/2 deep, 20 tall, on floor
    part post for each of left, right: post, upright, facing side, 20 tall, on floor, front at 0
        flush with each of frame
    part rail: board, across, {turn}, between post.left and post.right, front at 0, bottom at 5
    join rail to post.*: pocket screws {length}, 2 per end{more}
"""


def pocket(stock: str, mate: str, length: str, turn: str = "flat", more: str = "") -> Driven:
    text = POCKET.format(stock=stock, mate=mate, length=length, turn=turn, more=more)
    return driven_of(text, "rail", "post.left")


@pytest.mark.parametrize(
    ("stock", "length", "figures_of_the_table"),
    [
        # Joints reference, section 5, table: grip, depth, cover in a mate as thick.
        ("1/2", "1", (0.5, 0.48, 0.5, 0.02)),
        ("3/4", "1 1/4", (0.625, 0.6, 0.75, 0.15)),
        ("1", "1 1/2", (0.75, 0.72, 1.0, 0.28)),
        ("1 1/2", "2 1/2", (1.25, 1.21, 1.5, 0.29)),
    ],
)
def test_usual_pocket_screws(stock: str, length: str, figures_of_the_table: tuple[float, ...]) -> None:
    found = pocket(stock, stock, length)
    assert figures(found) == pytest.approx(figures_of_the_table, abs=0.006)


def test_a_longer_pocket_screw_does_not_move_the_stop_on_the_drill() -> None:
    # In 3/4 in stock 5/8 in lies under the head whatever the screw: 2 1/2 - 5/8 goes on at 15 degrees.
    found = pocket("3/4", "3/4", "2 1/2")
    assert found.grip / INCH == pytest.approx(0.625)
    assert found.bite / INCH == pytest.approx(1.875 * COS)
    assert found.cover / INCH == pytest.approx(0.75 - 1.875 * COS)


def test_a_pocket_screw_shorter_than_what_lies_under_its_head_never_leaves_the_wood() -> None:
    found = pocket("1 1/2", "1 1/2", "1")
    assert found.bite == 0.0


def test_pockets_bored_in_the_edge_count_with_the_width_of_the_board() -> None:
    # From below a rail on edge is 5 1/2 in thick, which no chart lists: half of the screw lies under the head.
    found = pocket("3/4", "3/4", "1 1/4", turn="on edge", more=", from below")
    assert found.pocket_stock / INCH == pytest.approx(5.5)
    assert not found.misses


def test_a_pocket_cannot_be_bored_from_the_end() -> None:
    assert pocket("3/4", "3/4", "1 1/4", more=", from left").misses


def test_pockets_are_bored_in_the_board_that_ends_there_whichever_is_named_first() -> None:
    text = POCKET.format(stock="3/4", mate="3/4", length="1 1/4", turn="flat", more="")
    turned = text.replace("join rail to post.*", "join post.left, post.right to rail")
    assert driven_of(turned, "rail", "post.left").head_part == "rail"
    # A sheet that lies across leaves through its edge.
    assert driven_of(BOOKCASE, "toe", "shelf.1").head_part == "toe"


# ---------------------------------------------------------------- sides


LID = """
    plan "Lid" in inches
    stock board: actual 3/4 x 5 1/2 pine
    outline box: 20 across, 5 1/2 deep, 6 tall, on floor
    part side for each of left, right: board, upright, facing side, as tall as box, on floor, front at 0
        flush with each of box
    part top: board, across, flat, on box, from left of box to right of box, front at 0
    join top to side.*: screws #8 x 2, 2 per joint{side}
"""


@pytest.mark.parametrize(
    ("side", "head", "misses"),
    [
        ("", "top", False),
        (", from above", "top", False),
        (", from outside", "top", False),
        (", from below", "side.left", False),
        (", from inside", "side.left", False),
        (", from left", "top", True),
        (", from front", "top", True),
    ],
)
def test_the_side_settles_which_part_is_under_the_head(side: str, head: str, misses: bool) -> None:
    found = driven_of(LID.format(side=side), "top", "side.left")
    assert (found.head_part, found.misses) == (head, misses)
    assert found.side_assumed == (side == "" or misses)


def test_another_length_of_the_same_fastener() -> None:
    found = driven_of(LID.format(side=""), "top", "side.left")
    assert found.bite_of(50) == pytest.approx(50 - 0.75 * INCH)
    assert found.cover_of(50) == pytest.approx(6 * INCH - 50 + 0.75 * INCH)
    assert found.bite_of(10) == 0.0
    screw = pocket("3/4", "3/4", "1 1/4")
    assert screw.bite_of(screw.length) == pytest.approx(screw.bite)
    assert screw.cover_of(screw.length) == pytest.approx(screw.cover)


# ---------------------------------------------------------------- where the plan says so

LEDGE = """
plan "Ledge" in millimetres
stock board: actual 20 x 100 pine
part rail: board, across, on edge, 600 long, left at 0, front at 0, on floor
part shelf: board, across, flat, 600 long, left at 0, front at 0, on rail
join shelf to rail: {how}
"""


def test_a_row_begins_where_the_plan_says() -> None:
    # 600 less 60 at each end leaves 480: four gaps of 120 and five screws; at 90 from the ends 420: four.
    (near,) = review_of(LEDGE.format(how="screws 4 x 50, every 120, 60 from ends")).driven
    (far,) = review_of(LEDGE.format(how="screws 4 x 50, every 120, 90 from ends")).driven
    assert (near.count, far.count) == (5, 4)
    assert row_ends(0, 600, 5, near.fastening) == (60, 540)
    # Nothing stands past the middle, however far from the ends the plan says.
    assert row_ends(0, 100, 2, far.fastening) == (50, 50)


def test_what_goes_in_at_a_slant_bites_less() -> None:
    review = review_of(LEDGE.format(how="screws 4 x 50, every 120, 60 from ends, at 30 degrees"))
    (driven,) = review.driven
    cos = math.cos(math.radians(30))
    # 20 mm of shelf are 20 / cos 30 along the screw; the rest goes (50 - 23.09) x cos 30 deep.
    assert driven.grip == pytest.approx(20 / cos)
    assert driven.bite == driven.bite_of(50) == pytest.approx(50 * cos - 20)
    (screws,) = fastener_list(review)
    assert screws.count == 5
