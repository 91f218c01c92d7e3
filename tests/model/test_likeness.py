"""``like`` and ``mirrored``: what is taken over, what a clause of one's own drops, and what is refused."""

from __future__ import annotations

from tests.model.placed import in_box

RAIL = (
    "part rail: board, across, on edge, from left of box to right of box, flush with front of box, on floor"
)


def test_everything_is_taken_over() -> None:
    found = in_box(RAIL, "part other: like rail")
    assert found.box("other") == found.box("rail") == (0, 0, 0, 600, 20, 100)
    assert found.plan.parts["other"].family == "other"


def test_clause_of_ones_own_drops_all_that_was_said_of_its_axis() -> None:
    found = in_box(
        RAIL,
        "part high: like rail, flush with top of box",
        "part back: like high, flush with back of box",
        "part short: like back, 200 long, left 50 right of left of box",
    )
    assert found.box("high") == (0, 0, 300, 600, 20, 400)
    assert found.box("back") == (0, 280, 300, 600, 300, 400)
    assert found.box("short") == (50, 280, 300, 250, 300, 400)
    assert found.troubles == []


def test_stock_and_turning_of_ones_own_replace_the_others() -> None:
    found = in_box(
        "stock thin: actual 10 x 50 pine",
        RAIL,
        "part flat-one: like rail, flat",
        "part thin-one: like rail, thin",
        "part ripped: like rail, rip 60",
        "part plain: like ripped, rip 80",
    )
    assert found.box("flat-one") == (0, 0, 0, 600, 100, 20)
    assert found.box("thin-one") == (0, 0, 0, 600, 10, 50)
    assert found.box("ripped") == (0, 0, 0, 600, 20, 60)
    assert found.box("plain") == (0, 0, 0, 600, 20, 80)


def test_like_before_what_it_is_like_and_through_several() -> None:
    found = in_box("part c: like b, flush with top of box", "part b: like rail, flush with back of box", RAIL)
    assert found.box("c") == (0, 280, 300, 600, 300, 400)


def test_rows_and_corners_are_taken_over_with_their_names() -> None:
    row = (
        "part slat: board, across, flat, on box, from left of box to right of box, 2 copies side by side deep"
    )
    found = in_box(
        f"{row}, gap 10, row centred on box",
        "part upper: like slat, bottom 500 above floor",
        "part three: like slat, 3 copies side by side deep, bottom 600 above floor",
        "part front: like slat, flush with front of box, bottom 700 above floor",
        "part leg: board, upright, facing side, as tall as box, in each corner of box",
        "part post: like leg, 50 tall",
        "part cap: board, across, flat, 90 long, left at 0, flush with front of upper.2, on post.back-left",
    )
    assert found.box("upper.2") == (0, 155, 500, 600, 255, 520)
    assert found.box("three.1")[1::3] == (
        -10,
        90,
    )  # (300 - 3 x 100 - 2 x 10) / 2
    assert found.box("front.1")[1::3] == (0, 100)
    assert found.box("post.back-right") == (580, 200, 0, 600, 300, 50)
    assert found.box("cap")[2] == 50


def test_slack_of_ones_own_changes_the_span_that_is_taken_over() -> None:
    found = in_box(
        RAIL,
        "part loose: like rail, less 10",
        "part long: like loose, past 5 each end",
        "part other: like loose, from left of box to right of box",
    )
    assert found.box("loose")[0::3] == (5, 595)
    assert found.box("long")[0::3] == (-5, 605)
    assert found.box("other")[0::3] == (0, 600)


def test_stated_cut_is_taken_over_until_another_is_stated() -> None:
    found = in_box(f"{RAIL}, cut 590", "part a: like rail", "part b: like rail, cut 600")
    cuts = [part.cut.length for part in found.plan.parts.values() if part.cut]
    assert cuts == [590, 590, 600]


def test_each_of_the_copy_goes_along() -> None:
    found = in_box(
        "part side for each of left, right: board, upright, facing side, 400 tall, on floor, front at 0",
        "    flush with each of box",
        "part inner for each of left, right: like side.each, front 100 behind front of side.each",
        "part lone: like side.left, front 200 behind front of box",
    )
    assert found.box("inner.right") == (580, 100, 0, 600, 200, 400)
    assert found.box("lone") == (0, 200, 0, 20, 300, 400)


def test_mirrored_on_each_axis() -> None:
    found = in_box(
        "part a: board, across, flat, 200 long, left at 50, front at 10, bottom at 30",
        "part b: like a, mirrored across about box",
        "part c: like a, mirrored deep about box",
        "part d: like a, mirrored up about box",
        "part e: like b, mirrored deep about box",
    )
    assert found.box("a") == (50, 10, 30, 250, 110, 50)
    assert found.box("b") == (350, 10, 30, 550, 110, 50)
    assert found.box("c") == (50, 190, 30, 250, 290, 50)
    assert found.box("d") == (50, 10, 350, 250, 110, 370)
    assert found.box("e") == (350, 190, 30, 550, 290, 50)
    assert found.troubles == []


def test_clause_of_ones_own_goes_before_the_mirror_on_its_axis() -> None:
    found = in_box(
        "part a: board, across, flat, 200 long, left at 50, front at 10, on floor",
        "part b: like a, mirrored across about box, flush with top of box, flush with back of box",
        "part c: like a, mirrored across about box, 100 long, left at 0",
    )
    assert found.box("b") == (350, 200, 380, 550, 300, 400)
    assert found.box("c") == (0, 10, 0, 100, 110, 20)


def test_one_copy_can_be_mirrored() -> None:
    found = in_box(
        "part leg: board, upright, facing side, as tall as box, in each corner of box",
        "part post: like leg.front-left, mirrored across about box, 50 tall, on floor",
    )
    assert found.box("post") == (580, 0, 0, 600, 100, 50)


def test_mirror_follows_its_part_whatever_stands_first() -> None:
    lines = (
        "part b: like a, mirrored across about box",
        "part a: board, across, flat, 200 long, left 5 right of right of c, front at 0, on floor",
        "part c: board, across, flat, 40 long, left at 0, front at 0, on floor",
    )
    for order in (lines, lines[::-1]):
        assert in_box(*order).box("b")[0::3] == (355, 555)
