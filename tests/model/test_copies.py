"""Copies: in corners, by name, in rows. Every place is pinned by a sum done by hand, in millimetres."""

from __future__ import annotations

import pytest

from tests.language.reading_texts import told
from tests.model.placed import MM, in_box


def test_in_each_corner() -> None:
    found = in_box("part leg: board, upright, facing side, as tall as box, in each corner of box")
    assert {name: found.box(name) for name in found.plan.parts} == {
        "leg.front-left": (0, 0, 0, 20, 100, 400),
        "leg.front-right": (580, 0, 0, 600, 100, 400),
        "leg.back-left": (0, 200, 0, 20, 300, 400),
        "leg.back-right": (580, 200, 0, 600, 300, 400),
    }
    assert {part.family for part in found.plan.parts.values()} == {"leg"}


def test_corners_stand_on_the_boxs_bottom_unless_told_otherwise() -> None:
    found = in_box(
        "part leg: board, upright, facing side, 50 tall, in each corner of box, bottom 30 above floor"
    )
    assert found.box("leg.back-left") == (0, 200, 30, 20, 300, 80)
    assert found.troubles == []


def test_for_each_and_its_own_word_in_references_and_faces() -> None:
    found = in_box(
        "part leg: board, upright, facing side, as tall as box, in each corner of box",
        """
        part rail for each of front, back: board, across, on edge, flush with each of box, flush with top of box
            between leg.each-left and leg.each-right
        """,
    )
    assert found.box("rail.front") == (20, 0, 300, 580, 20, 400)
    assert found.box("rail.back") == (20, 280, 300, 580, 300, 400)


def test_for_each_of_numbers() -> None:
    found = in_box("part a for each of 1, 2: board, across, flat, 90 long, left at 0, front at 0, on floor")
    assert list(found.plan.parts) == ["a.1", "a.2"]


def test_corners_for_each() -> None:
    found = in_box(
        "outline low: 600 across, 300 deep, 100 tall, on floor",
        "outline high: 600 across, 300 deep, 100 tall, bottom 300 above floor",
        "part foot for each of low, high: board, upright, facing side, 100 tall, in each corner of each",
    )
    assert len(found.plan.parts) == 8
    assert found.box("foot.high.back-right") == (580, 200, 300, 600, 300, 400)


ROW = "part slat: board, across, flat, on box, from left of box to right of box"


def test_side_by_side_with_a_gap_centred() -> None:
    found = in_box(f"{ROW}, 2 copies side by side deep, gap 10, row centred on box")
    # 2 x 100 + 10 = 210; (300 - 210) / 2 = 45
    assert found.box("slat.1") == (0, 45, 400, 600, 145, 420)
    assert found.box("slat.2") == (0, 155, 400, 600, 255, 420)
    assert found.box("slat") == (0, 45, 400, 600, 255, 420)


def test_side_by_side_without_a_gap_from_a_face() -> None:
    found = in_box(f"{ROW}, 3 copies side by side deep, flush with back of box")
    assert [found.box(f"slat.{n}")[1::3] for n in (1, 2, 3)] == [(0, 100), (100, 200), (200, 300)]
    assert found.troubles == []


def test_side_by_side_gap_to_fit() -> None:
    found = in_box(f"{ROW}, 2 copies side by side deep, gap to fit, from front of box to back of box")
    # 300 - 2 x 100 = 100 left for the one gap
    assert [found.box(f"slat.{n}")[1::3] for n in (1, 2)] == [(0, 100), (200, 300)]


def test_side_by_side_ripped_to_fit_with_a_gap() -> None:
    found = in_box(f"{ROW}, 4 copies side by side deep, rip to fit, gap 4, from front of box to back of box")
    # (300 - 3 x 4) / 4 = 72
    assert [found.box(f"slat.{n}")[1::3] for n in (1, 2, 3, 4)] == [
        (0, 72),
        (76, 148),
        (152, 224),
        (228, 300),
    ]
    assert found.troubles == []


def test_a_row_that_does_not_fit_between_its_faces_disagrees() -> None:
    found = in_box(f"{ROW}, 4 copies side by side deep, from front of box to back of box")
    assert found.troubles == [("slat", 1, "low", 100.0)]


def test_every() -> None:
    found = in_box(
        f"{ROW}, 3 copies every 80 up, flush with front of box".replace("on box", "bottom 10 above floor")
    )
    assert [found.box(f"slat.{n}")[2::3] for n in (1, 2, 3)] == [(10, 30), (90, 110), (170, 190)]


@pytest.mark.parametrize("row", ["left, right", "right, left"])
def test_spread_evenly_between(row: str) -> None:
    one, two = row.split(", ")
    found = in_box(
        "part post for each of left, right: board, upright, facing side, 400 tall, on floor, front at 0",
        "    flush with each of box",
        f"part slat: board, upright, facing side, 400 tall, on floor, front at 0, "
        f"3 copies spread evenly across between post.{one} and post.{two}",
    )
    # 600 - 2 x 20 = 560 between the posts; (560 - 3 x 20) / 4 = 125 for each opening
    assert [found.box(f"slat.{n}")[0] for n in (1, 2, 3)] == [145, 290, 435]
    assert found.box("slat")[0::3] == (20, 580)


def test_spread_evenly_from_face_to_face_with_the_ends_in() -> None:
    found = in_box(
        f"{ROW}, 3 copies spread evenly up from bottom of box to top of box, flush with front of box".replace(
            "on box, ", ""
        )
    )
    # 0, (400 - 20) / 2 = 190, 380
    assert [found.box(f"slat.{n}")[2] for n in (1, 2, 3)] == [0, 190, 380]


def test_spread_evenly_from_box_to_box_uses_their_outer_faces() -> None:
    found = in_box(
        "outline other: 100 across, 300 deep, 400 tall, left 200 right of box, on floor",
        "part slat: board, upright, facing side, 400 tall, on floor, front at 0",
        "    2 copies spread evenly across from box to other",
    )
    assert [found.box(f"slat.{n}")[0] for n in (1, 2)] == [0, 880]


def test_rows_of_corners() -> None:
    found = in_box(
        "part peg: board, upright, facing side, 40 tall, in each corner of box, 2 copies every 50 up"
    )
    assert list(found.plan.parts)[:3] == ["peg.front-left.1", "peg.front-left.2", "peg.front-right.1"]
    assert found.box("peg.back-right.2") == (580, 200, 50, 600, 300, 90)


def test_row_keeps_a_promise_along_itself_when_an_end_of_it_does() -> None:
    sides = "part side for each of left, right: ply, facing side, as deep as box, as tall as box, flush with each of box\n"
    sides += "    flush with front of box, on floor"
    row = "part board: board, deep, flat, as deep as box, flush with front of box, 3 copies side by side across, rip to fit"
    kept = in_box(sides, f"{row}, between side.left and side.right across, on floor")
    assert kept.troubles == []
    # Above the sides the row meets neither; each end is told against its own neighbour.
    missed = in_box(sides, f"{row}, between side.left and side.right across, bottom 500 above floor")
    assert missed.troubles == [("board.1", "side.left"), ("board.3", "side.right")]


def test_one_copy_is_a_row_too() -> None:
    found = in_box(f"{ROW}, 1 copy side by side deep, flush with front of box")
    assert list(found.plan.parts) == ["slat.1"]


def test_copies_are_referred_to_one_by_one_and_as_a_row() -> None:
    found = in_box(
        f"{ROW}, 2 copies side by side deep, gap 10, row centred on box",
        "part cap: board, deep, flat, from front of slat to back of slat, left at 0, on slat.2",
    )
    assert found.box("cap") == (0, 45, 420, 100, 255, 440)


def test_name_of_a_copy_that_another_part_has_is_told() -> None:
    text = (
        MM
        + f"part slat.2: board, across, flat, 90 long, left at 0, front at 0, on floor\n{ROW}, 2 copies every 9 deep\n"
    )
    assert [line.partition(" →")[0] for line in told(text)] == ["slat: The name “slat.2” is given twice."]
