"""Leaning and rising parts, by hand, in millimetres; and parts that stand between leaning ones.

tan 8° = 0.140541, cos 8° = 0.990268.
"""

from __future__ import annotations

from itertools import permutations
from math import cos, radians, sqrt, tan
from typing import Any

import pytest

from reviewer.model.shapes import EndTowards, Lean, Rising
from tests.model.placed import Placed, in_box, placed
from tests.model.shaped import HEAD, PLACE, plain

TAN, COS = tan(radians(8)), cos(radians(8))
TAN_4 = tan(radians(4))
UPRIGHT = f"board, upright, facing front, 300 tall, {PLACE}"


def slant(found: Placed, name: str) -> Any:
    shape = found.plan.parts[name].shape
    return None if shape is None else shape.slant


def runs(found: Placed, name: str) -> tuple[float, float]:
    lean = slant(found, name)
    assert isinstance(lean, Lean)
    return round(lean.run_across, 6), round(lean.run_deep, 6)


# ------------------------------------------------------------ leaning


@pytest.mark.parametrize(
    ("clause", "across", "deep"),
    [
        ("tilted 8 degrees towards right", TAN, 0),
        ("tilted 8 degrees towards left", -TAN, 0),
        ("tilted 8 degrees towards back", 0, TAN),
        ("tilted 8 degrees towards front", 0, -TAN),
        ("splayed 8 degrees towards right", -TAN, 0),
        ("splayed 8 degrees towards front", 0, TAN),
        ("splayed 8 degrees towards left and 4 degrees towards back", TAN, -TAN_4),
        ("tilted 8 degrees towards front and 4 degrees towards left", -TAN_4, -TAN),
    ],
)
def test_a_tilted_part_has_its_top_on_that_side_and_a_splayed_one_its_foot(
    clause: str, across: float, deep: float
) -> None:
    found = in_box(f"part a: {UPRIGHT}, {clause}")
    assert runs(found, "a") == (round(across, 6), round(deep, 6))


def test_leaning_towards_each() -> None:
    found = in_box(
        "part a for each of left, right: board, upright, facing front, 300 tall, on floor, front at 0",
        "    flush with each of box, splayed 8 degrees towards each",
    )
    assert runs(found, "a.left") == (round(TAN, 6), 0)
    assert runs(found, "a.right") == (round(-TAN, 6), 0)


@pytest.mark.parametrize(
    ("clause", "across", "deep"),
    [
        ("splayed 8 degrees outwards", TAN, TAN),
        ("splayed 8 degrees outwards across", TAN, 0),
        ("splayed 8 degrees outwards deep", 0, TAN),
        ("splayed 8 degrees outwards across and 4 degrees deep", TAN, TAN_4),
        ("tilted 4 degrees outwards deep", 0, -TAN_4),
    ],
)
def test_outwards_in_corners(clause: str, across: float, deep: float) -> None:
    """Of a leg that is splayed outwards the foot is in its corner, and its top inwards of that."""
    found = in_box(f"part leg: board, upright, facing side, as tall as box, in each corner of box, {clause}")
    for name, to_right, to_back in (
        ("leg.front-left", 1, 1),
        ("leg.front-right", -1, 1),
        ("leg.back-left", 1, -1),
        ("leg.back-right", -1, -1),
    ):
        assert runs(found, name) == (round(to_right * across, 6) + 0.0, round(to_back * deep, 6) + 0.0)


def test_fixed_side_in_corners_is_the_same_for_all_four() -> None:
    found = in_box(
        "part leg: board, upright, facing side, as tall as box, in each corner of box",
        "    tilted 8 degrees towards back",
    )
    assert {runs(found, name) for name in found.plan.parts} == {(0, round(TAN, 6))}


@pytest.mark.parametrize(
    ("turned", "clause", "across", "deep"),
    [
        ("facing front", "towards left", 100 / COS + 300 * TAN, 20),
        ("facing side", "towards left", 20 / COS + 300 * TAN, 100),
        ("facing front", "towards back", 100, 20 / COS + 300 * TAN),
        ("facing side", "towards back", 20, 100 / COS + 300 * TAN),
        ("facing front, rip 60, plane 15", "towards left", 60 / COS + 300 * TAN, 15),
    ],
)
def test_room_of_a_leaning_board(turned: str, clause: str, across: float, deep: float) -> None:
    """The level section, section / cos 8°, and how far it leans over its own height, 300 tan 8°."""
    found = in_box(f"part a: board, upright, {turned}, 300 tall, {PLACE}, tilted 8 degrees {clause}")
    assert found.box("a") == (0, 0, 0, round(across, 3), round(deep, 3), 300)
    section = (60, 15) if "rip" in turned else (100, 20)
    assert found.setting.solids["a"].size[1:] == pytest.approx(section)
    assert found.setting.miscuts == ()


def test_length_of_a_leaning_board_is_to_its_long_points() -> None:
    """300 / cos 8° and, for the level ends, 100 tan 8° more: 317.002."""
    found = in_box(f"part a: {UPRIGHT}, tilted 8 degrees towards left")
    assert found.cut("a") == round(300 / COS + 100 * TAN, 4) == 317.0024


@pytest.mark.parametrize("turned", ["facing front", "facing side"])
def test_board_that_leans_both_ways_keeps_its_section(turned: str) -> None:
    """The box is worked out from the section, and the solid from the box: the section comes back."""
    found = in_box(
        f"part a: board, upright, {turned}, 300 tall, {PLACE}",
        "    tilted 20 degrees towards left and 15 degrees towards front",
    )
    assert found.setting.solids["a"].size[1:] == pytest.approx((100, 20))
    assert found.troubles == []
    assert found.setting.miscuts == ()
    # Level slices of one board are alike, and stand one on the other: volume = level area x height, and the
    # level area is the square section over the cosine of the angle out of plumb.
    out_of_plumb = sqrt(1 + tan(radians(20)) ** 2 + tan(radians(15)) ** 2)
    assert found.setting.solids["a"].volume == pytest.approx(100 * 20 * out_of_plumb * 300)


# ------------------------------------------------------------ between leaning parts

TRESTLE = (
    "outline room: 900 across, 400 deep, 450 tall, on floor",
    "part leg: board, upright, facing front, as tall as room, in each corner of room",
    "    splayed 8 degrees outwards across",
)
RAIL = "part rail: board, across, on edge, flush with front of room, bottom 130 above floor"


def trestle(*lines: str) -> Placed:
    return in_box("\n" + "\n".join(TRESTLE), *lines)


def inner(height: float) -> float:
    """How far from the side of the room the inner face of a leg stands at a height."""
    return 100 / COS + height * TAN


def test_stretcher_comes_to_the_slanting_faces_at_its_own_middle() -> None:
    """The rail's middle is 180 up: 900 - 2 (100 / cos 8° + 180 tan 8°) = 647.440 there, and
    2 · 50 tan 8° = 14.054 more to its long points, below."""
    found = trestle(f"{RAIL}, between leg.front-left and leg.front-right")
    assert found.troubles == []
    middle = 900 - 2 * inner(180)
    assert round(middle, 3) == 647.440
    assert found.cut("rail") == round(middle + 100 * TAN, 4)
    left, *_, right = found.box("rail")[0], found.box("rail")[3]
    assert (left, right) == (round(inner(130), 3), round(900 - inner(130), 3))
    assert found.setting.overlaps == ()
    assert found.setting.miscuts == ()
    met = [contact for contact in found.setting.contacts if "rail" in (contact.first, contact.second)]
    # Each end is 100 / cos 8° long and 20 wide.
    assert [contact.area for contact in met] == pytest.approx([100 / COS * 20] * 2)


@pytest.mark.parametrize("ends", ["leg.front-left and leg.front-right", "leg.front-right and leg.front-left"])
@pytest.mark.parametrize(
    ("slack", "outward"),
    [("less 4", -2), ("with 4 each end", -4), ("past 4 each end", 4), ("housed 4 each end", 4)],
)
def test_ends_with_slack_are_placed_by_the_slope_and_stay_square(
    ends: str, slack: str, outward: float
) -> None:
    found = trestle(f"{RAIL}, between {ends} {slack}")
    assert found.plan.parts["rail"].shape is None
    assert found.box("rail")[0::3] == (round(inner(180) - outward, 3), round(900 - inner(180) + outward, 3))


def test_between_a_leaning_part_and_a_square_one() -> None:
    found = trestle(
        "part post: board, upright, facing side, 400 tall, left at 500, front at 0, on floor",
        f"{RAIL}, between post and leg.front-left",
    )
    shape = found.plan.parts["rail"].shape
    assert shape is not None
    assert [plain(each) for each in shape.cuttings] == [("EndTowards", 0, "leg.front-left", ())]
    assert found.cut("rail") == round(500 - inner(180) + 50 * TAN, 4)
    assert found.troubles == []


def test_between_on_an_axis_that_they_do_not_lean_along_is_plain() -> None:
    found = trestle(
        "part side: board, deep, on edge, between leg.front-left and leg.back-left, left at 50, bottom at 100"
    )
    assert found.plan.parts["side"].shape is None
    assert found.box("side")[1::3] == (20, 380)


def test_outline_and_sheet_between_leaning_parts() -> None:
    found = trestle(
        "outline gap: between leg.front-left and leg.front-right across, 20 deep, 100 tall, front at 0, bottom at 130",
        "part panel: ply, facing front, between leg.front-left and leg.front-right across, 100 tall",
        "    front at 0, bottom at 130",
    )
    assert found.box("gap")[0::3] == (round(inner(180), 3), round(900 - inner(180), 3))
    assert found.setting.miscuts == ()
    assert found.box("panel")[0::3] == (round(inner(130), 3), round(900 - inner(130), 3))


def test_rungs_in_a_row_each_have_their_own_length() -> None:
    found = trestle(
        "part rung: board, across, on edge, rip 40, between leg.front-left and leg.front-right, front at 0",
        "    3 copies every 100 up, bottom at 60",
    )
    assert found.troubles == []
    assert found.setting.miscuts == ()
    for number, height in ((1, 80), (2, 180), (3, 280)):
        assert found.cut(f"rung.{number}") == round(900 - 2 * inner(height) + 40 * TAN, 4)


def test_row_along_itself_between_leaning_parts_is_placed_by_their_slope() -> None:
    found = trestle(
        "part slat: board, upright, facing front, 100 tall, front at 0, bottom at 130",
        "    between leg.front-left and leg.front-right across, 3 copies side by side across, gap to fit",
    )
    assert found.box("slat.1")[0] == round(inner(180), 3)
    assert found.box("slat.3")[3] == round(900 - inner(180), 3)
    assert all(part.shape is None for name, part in found.plan.parts.items() if name.startswith("slat"))


def test_mirrored_stretcher_is_cut_to_the_legs_on_its_own_side() -> None:
    found = trestle(
        f"{RAIL}, between leg.front-left and leg.front-right",
        "part back: like rail, mirrored deep about room",
        "part front: like back, mirrored deep about room, bottom 300 above floor",
    )
    assert found.box("back")[0::3] == found.box("rail")[0::3]
    assert found.cut("back") == found.cut("rail")
    assert found.setting.miscuts == ()
    pairs = [(contact.first, contact.second) for contact in found.setting.contacts]
    assert ("leg.back-left", "back") in pairs
    assert ("back", "leg.back-right") in pairs


def test_mirrored_part_that_says_its_own_length_has_ends_of_its_own() -> None:
    found = trestle(
        f"{RAIL}, between leg.front-left and leg.front-right",
        "part back: like rail, mirrored deep about room, 300 long, left at 200",
    )
    assert found.plan.parts["back"].shape is None
    assert found.cut("back") == 300


def test_mirrored_stretcher_without_such_a_leg_keeps_square_ends() -> None:
    found = trestle(
        "outline far: 900 across, 2000 deep, 450 tall, left at 0, front at 0, on floor",
        f"{RAIL}, between leg.front-left and leg.front-right",
        "part back: like rail, mirrored deep about far",
    )
    assert found.setting.miscuts == ()
    # Its box is the mirror's all the same, from the slopes at its middle height.
    assert found.cut("back") == round(900 - 2 * inner(180), 4)


@pytest.mark.parametrize("turned", ["facing front", "facing side"])
@pytest.mark.parametrize("where", ["front at 12", "front at 15", "front at 18"])
def test_legs_that_lean_both_ways_meet_a_stretcher_face_to_face(turned: str, where: str) -> None:
    """Such a leg's edge turns away along its thickness, so the place of the rail front to back counts too.

    The ends meet the legs just so: nothing overlaps, and each meets all over its end.
    """
    found = in_box(
        "stock slim: actual 12 x 40 pine",
        "stock post: actual 60 x 60 pine",
        "outline room: 900 across, 400 deep, 450 tall, on floor",
        f"part leg: post, upright, {turned}, as tall as room, in each corner of room",
        "    splayed 12 degrees outwards across and 5 degrees deep",
        f"part rail: slim, across, on edge, between leg.front-left and leg.front-right, {where}, bottom at 100",
        f"outline gap: between leg.front-left and leg.front-right across, 12 deep, 40 tall, {where}, bottom at 100",
    )
    assert found.troubles == []
    assert found.setting.overlaps == ()
    assert found.setting.miscuts == ()
    met = [contact for contact in found.setting.contacts if "rail" in (contact.first, contact.second)]
    assert len(met) == 2
    solid = found.setting.solids["rail"]
    ends = sorted((contact.low[0] + contact.high[0]) / 2 for contact in met)
    assert solid.volume == pytest.approx((ends[1] - ends[0]) * 12 * 40)
    # What the slope settles, by an outline with the rail's middle line: where that line meets the legs.
    gap = found.setting.extents["gap"]
    assert (gap.low[0], gap.high[0]) == pytest.approx(ends)


def test_part_without_a_height_is_told_at_its_height_alone() -> None:
    found = trestle(
        "part rail: board, across, on edge, between leg.front-left and leg.front-right, front at 0"
    )
    assert found.troubles == [("rail", 2, "missing")]


def test_what_hangs_on_a_part_without_a_height_is_counted() -> None:
    found = trestle(
        "part rail: board, across, on edge, between leg.front-left and leg.front-right, front at 0",
        "part peg: board, across, flat, 50 long, flush with left of rail, front at 100, on floor",
    )
    (one,) = found.setting.unsettled
    assert (one.solid, one.axis, one.drags) == ("rail", 2, 1)


def test_circle_through_a_height() -> None:
    found = trestle(
        "part rail: board, across, on edge, between leg.front-left and leg.front-right, front at 0, on block",
        "part block: board, across, flat, 50 long, left at 300, front at 0, top 10 above bottom of rail",
    )
    assert found.troubles == [("block", 2, "circle")]


STATEMENTS = (
    "outline room: 900 across, 400 deep, 450 tall, on floor",
    "part leg: board, upright, facing front, as tall as room, in each corner of room, splayed 8 degrees outwards",
    "part rail: board, across, on edge, front at 20, bottom 130 above floor, between leg.front-left and leg.front-right",
    "part back: like rail, mirrored deep about room",
    "part brace: board, facing front, rising towards right, from left of room to right of room, front at 0"
    ", bottom 5 above top of rail, top at 450, ends cut level, rip 40",
)


def test_order_of_statements_never_matters() -> None:
    found = []
    for order in permutations(STATEMENTS):
        piece = in_box(*order)
        assert piece.troubles == []
        found.append({name: (piece.box(name), piece.cut(name)) for name in sorted(piece.plan.parts)})
    assert len(found[0]) == 7
    assert all(each == found[0] for each in found[1:])


def test_inch_and_metric_plans_are_equals() -> None:
    text = """\
plan "Trestle" in inches
stock board: actual 3/4 x 4 pine
stock bar: round 1 1/4 red oak
outline room: 36 across, 16 deep, 18 tall, on floor
part leg: board, upright, facing front, as tall as room, in each corner of room, splayed 8 degrees outwards
part rail: board, across, on edge, front 1 inside room, bottom 4 above floor, plane 5/8
    between leg.front-left and leg.front-right, hole 1 1/4 through front, 6 from left
part pole: bar, deep, from front of room to back of room, left 12 inside room, bottom 10 above floor
"""
    metric = text
    for inch, mm in (
        ("in inches", "in millimetres"),
        ("3/4 x 4", "19.05 x 101.6"),
        ("1 1/4", "31.75"),
        ("36 across, 16 deep, 18 tall", "914.4 across, 406.4 deep, 457.2 tall"),
        ("front 1 inside", "front 25.4 inside"),
        ("bottom 4 above", "bottom 101.6 above"),
        ("plane 5/8", "plane 15.875"),
        ("6 from left", "152.4 from left"),
        ("left 12 inside", "left 304.8 inside"),
        ("bottom 10 above", "bottom 254 above"),
    ):
        metric = metric.replace(inch, mm)
    one, two = placed(text), placed(metric)
    assert one.troubles == two.troubles == []
    for name in one.plan.parts:
        assert one.box(name) == two.box(name)
        assert one.cut(name) == two.cut(name)
        assert one.setting.solids[name].volume == pytest.approx(two.setting.solids[name].volume)


# ------------------------------------------------------------ like and mirrored


def test_leaning_is_taken_over_and_mirrored() -> None:
    found = in_box(
        "part a: board, upright, facing front, 300 tall, on floor, flush with left of box, front at 0",
        "    splayed 8 degrees towards left and 4 degrees towards front",
        "part b: like a, mirrored across about box",
        "part c: like b, mirrored deep about box",
        "part d: like a, flush with back of box, tilted 4 degrees towards left",
    )
    assert runs(found, "a") == (round(TAN, 6), round(TAN_4, 6))
    assert runs(found, "b") == (round(-TAN, 6), round(TAN_4, 6))
    assert runs(found, "c") == (round(-TAN, 6), round(-TAN_4, 6))
    assert runs(found, "d") == (round(-TAN_4, 6), 0)
    assert found.troubles == []
    assert found.box("b")[3] == 600


def test_mirror_of_one_corner_leans_to_the_mirrored_side() -> None:
    found = in_box(
        "part leg: board, upright, facing front, as tall as box, in each corner of box, splayed 8 degrees outwards",
        "part extra: like leg.back-left, mirrored up about box",
        "part other: like leg.back-left, mirrored across about box",
    )
    assert runs(found, "extra") == runs(found, "leg.back-left")
    assert runs(found, "other") == runs(found, "leg.back-right")


def test_one_way_of_slanting_replaces_the_other() -> None:
    found = in_box(
        f"part a: board, facing front, rising towards right, 300 across, 200 tall, {PLACE}, rip 40",
        "part b: like a, ends cut plumb, front at 100",
        "part c: like a, mirrored across about box",
        "part d: like b, upright, left at 50, tilted 8 degrees towards left",
    )
    assert runs(found, "d") == (round(-TAN, 6), 0)
    assert plain(slant(found, "b")) == ("Rising", 0, 2, "high", "plumb", "plumb")
    assert plain(slant(found, "c")) == ("Rising", 0, 2, "low", "square", "square")
    assert found.cut("c") == found.cut("a")


# ------------------------------------------------------------ rising


@pytest.mark.parametrize(
    ("part", "record"),
    [
        ("facing front, rising towards right", ("Rising", 0, 2, "high", "square", "square")),
        ("facing front, rising towards left", ("Rising", 0, 2, "low", "square", "square")),
        ("facing side, rising towards back", ("Rising", 1, 2, "high", "square", "square")),
        ("flat, rising towards left", ("Rising", 0, 1, "low", "square", "square")),
        ("facing front, rising towards right, ends cut level", ("Rising", 0, 2, "high", "level", "level")),
        (
            "facing front, rising towards right, upper end cut plumb, lower end cut pointed",
            ("Rising", 0, 2, "high", "corner", "plumb"),
        ),
    ],
)
def test_rising(part: str, record: tuple[Any, ...]) -> None:
    axes = {
        "facing front": "300 across, 200 tall",
        "facing side": "300 deep, 200 tall",
        "flat": "300 across, 200 deep",
    }
    sizes = next(said for turned, said in axes.items() if part.startswith(turned))
    found = placed(f"{HEAD}part a: board, {part}, {sizes}, rip 40, {PLACE}\n")
    rising = slant(found, "a")
    assert isinstance(rising, Rising)
    assert plain(rising) == record
    part_a = found.plan.parts["a"]
    assert (int(part_a.long), int(part_a.wide)) == (rising.along_axis, rising.up_axis)
    assert found.setting.solids["a"].size[1:] == pytest.approx((40, 20))
    assert found.troubles == []


def test_knee_brace_between_a_post_and_a_shelf() -> None:
    """A brace of 60 at 45° with its lower end plumb against the post and its upper end level under the shelf.

    Its faces on the post and under the shelf are 60 √2 long. Along its upper edge it is shorter than along
    its lower one by 60 at each end; the box of 300 x 300 has the longer edge of 300 √2 in it.
    """
    found = in_box(
        "part post: board, upright, facing side, 900 tall, left at 0, front at 0, on floor",
        "part shelf: board, across, flat, 600 long, against right of post, front at 0, top at 900",
        "part brace: board, facing front, rip 60, rising towards right, against right of post, under shelf",
        "    300 across, 300 tall, front at 20, lower end cut plumb, upper end cut level",
    )
    assert found.troubles == []
    assert found.setting.overlaps == ()
    met = {
        contact.other("brace"): contact.area
        for contact in found.setting.contacts
        if "brace" in (contact.first, contact.second)
    }
    assert met == {"post": pytest.approx(60 * sqrt(2) * 20), "shelf": pytest.approx(60 * sqrt(2) * 20)}
    assert found.cut("brace") == round(300 * sqrt(2), 4)
    assert found.box("brace") == (20, 20, 580, 320, 40, 880)


def test_brace_between_leaning_parts_goes_by_their_boxes() -> None:
    found = trestle(
        "part brace: board, facing front, rip 40, rising towards right, front at 0, bottom at 100, top at 400",
        "    between leg.front-left and leg.front-right across",
    )
    shape = found.plan.parts["brace"].shape
    assert shape is not None
    assert not any(isinstance(each, EndTowards) for each in shape.cuttings)
    assert found.box("brace")[0::3] == (round(inner(450), 3), round(900 - inner(450), 3))
