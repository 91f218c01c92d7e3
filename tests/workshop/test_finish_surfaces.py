"""Which faces a finish goes on, in what order, and how much there is of them, by sums done by hand."""

from __future__ import annotations

import math

import pytest

from reviewer.units import MM_PER_INCH
from reviewer.workshop.finish_surfaces import face_word, orders
from tests.support import review_of

#: A lid 20 x 10 x 1 on a post 2 x 2 x 10, glued and screwed; inches.
PLAN = """
plan "Lid" in inches
stock wide: actual 1 x 10 red oak, 8 ft
stock thick: actual 2 x 2 red oak, 8 ft
part post: thick, upright, facing front, 10 tall, on floor, left at 4, front at 4
part lid: wide, across, flat, 20 long, left at 0, front at 0, on post
join lid to post: screws #8 x 2, 2 each, from above, glue pva
"""


def surfaces(*lines: str, plan: str = PLAN) -> dict[str, float]:
    """Square inches by what is said, such as ``top of lid``."""
    found = review_of(plan + "\n".join(lines) + "\n").schedules
    return {each.said: each.area / MM_PER_INCH**2 for each in found}


def layers(*lines: str) -> dict[str, list[str]]:
    found = review_of(PLAN + "\n".join(lines) + "\n").schedules
    return {each.said: [layer.product for layer in each.schedule.layers] for each in found}


def test_all_round_less_what_the_joint_hides() -> None:
    # The post's top, 2 x 2 = 4 in², lies against the lid's bottom, 20 x 10 = 200 in².
    assert surfaces("finish f: on lid, post, 1 coat of oil danish") == pytest.approx(
        {
            "left of post": 20,
            "right of post": 20,
            "front of post": 20,
            "back of post": 20,
            "bottom of post": 4,
            "top of post": 0,
            "left of lid": 10,
            "right of lid": 10,
            "front of lid": 20,
            "back of lid": 20,
            "bottom of lid": 196,
            "top of lid": 200,
        }
    )


def test_before_assembly_the_joint_hides_nothing_unless_masked() -> None:
    bare = surfaces("finish f: on lid, post, before assembly, 1 coat of oil danish")
    assert bare["bottom of lid"] == pytest.approx(200)
    assert bare["top of post"] == pytest.approx(4)
    masked = surfaces("finish f: on lid, post, before assembly, mask glue lines, 1 coat of oil danish")
    assert masked["bottom of lid"] == pytest.approx(196)
    assert masked["top of post"] == pytest.approx(0)


@pytest.mark.parametrize(
    ("on", "faces"),
    [
        ("top of lid", {"top"}),
        ("top and bottom of lid", {"top", "bottom"}),
        ("ends of lid", {"left", "right"}),
        ("edges of lid", {"front", "back"}),
        ("faces of lid, ends of lid", {"top", "bottom", "left", "right"}),
        ("all but bottom of lid", {"top", "left", "right", "front", "back"}),
        ("all but bottom and ends of lid", {"top", "front", "back"}),
        ("top of lid, lid", {"left", "right", "front", "back", "bottom", "top"}),
    ],
)
def test_faces_by_their_words(on: str, faces: set[str]) -> None:
    found = review_of(f"{PLAN}finish f: on {on}\n    1 coat of oil danish\n").schedules
    assert {face_word(each.face) for each in found} == faces


def test_grain_of_each_face() -> None:
    found = review_of(f"{PLAN}finish f: on lid\n    1 coat of oil danish\n").schedules
    assert {face_word(each.face): each.grain for each in found} == {
        "left": "end",
        "right": "end",
        "front": "edge",
        "back": "edge",
        "bottom": "face",
        "top": "face",
    }
    assert {each.material for each in found} == {"red oak"}


CASE = """
plan "Case" in inches
stock ply: birch plywood 3/4
outline case: 20 across, 10 deep, 30 tall, on floor
part side for each of left, right: ply, upright, facing side, 10 deep, as tall as case
    flush with each of case, flush with front of case, on floor
part base: ply, flat, 10 deep, between side.left and side.right across, flush with front of case, on floor
"""


@pytest.mark.parametrize("whole", ["case", "*"])
def test_inside_and_outside_of_a_case(whole: str) -> None:
    inside = surfaces(f"finish f: on inside of {whole}\n    1 coat of oil danish", plan=CASE)
    outside = surfaces(f"finish f: on outside of {whole}\n    1 coat of oil danish", plan=CASE)
    assert set(inside) == {
        "right of side.left",
        "left of side.right",
        "left of base",
        "right of base",
        "top of base",
    }
    assert set(outside) == {
        *("left of side.left", "front of side.left", "back of side.left", "bottom of side.left"),
        *("top of side.left", "right of side.right", "front of side.right", "back of side.right"),
        *("bottom of side.right", "top of side.right", "front of base", "back of base", "bottom of base"),
    }


def test_layers_of_two_finishes_on_one_face_follow_each_other() -> None:
    found = layers(
        "finish stained: on lid, 1 coat of stain gel",
        "finish clear: on top of lid, 2 coats of polyurethane oil",
    )
    assert found["top of lid"] == ["stain_gel", "poly_oil", "poly_oil"]
    assert found["bottom of lid"] == ["stain_gel"]


def test_what_goes_on_before_assembly_goes_below() -> None:
    found = layers(
        "finish late: on lid, 1 coat of wax paste",
        "finish early: on lid, before assembly, 1 coat of oil danish",
    )
    assert found["top of lid"] == ["oil_danish", "wax_paste"]


def test_steps_say_when_a_finish_goes_on() -> None:
    finish = "finish f: on lid, 1 coat of oil danish\n"
    before = review_of(PLAN + finish + 'step "a": finish f\nstep "b": join lid\n').plan
    after = review_of(PLAN + finish + 'step "a": join lid\nstep "b": finish f\n').plan
    assert [(each.when, each.told) for each in orders(before)] == [("before", "steps")]
    assert [(each.when, each.told) for each in orders(after)] == [("after", "steps")]
    assert [(each.when, each.told) for each in orders(review_of(PLAN + finish).plan)] == [
        ("after", "assumed")
    ]


def test_true_area_of_a_round_bar_and_of_a_board_with_a_hole() -> None:
    # A bar 2 across and 10 long: 2 π r² + 2 π r h = 2π + 20π in².
    bar = """
plan "Bar" in inches
stock dowel: round 2 red oak
part bar: dowel, upright, 10 tall, on floor, left at 0, front at 0
finish f: on bar
    1 coat of oil danish
"""
    found = review_of(bar).schedules
    assert sum(each.area for each in found) / MM_PER_INCH**2 == pytest.approx(22 * math.pi)
    ends = sum(each.area for each in found if each.grain == "end")
    assert ends / MM_PER_INCH**2 == pytest.approx(2 * math.pi)
    # A hole of 2 through a lid of 1: 2 π r² less of the faces, 2 π r t more of its wall.
    plain = sum(surfaces("finish f: on lid, 1 coat of oil danish").values())
    holed = PLAN.replace("20 long, left", "20 long, hole 2 through top, 10 from left, 8 from front, left")
    assert sum(surfaces("finish f: on lid, 1 coat of oil danish", plan=holed).values()) == pytest.approx(
        plain - 2 * math.pi + 2 * math.pi
    )
    tops = surfaces("finish f: on top of lid, 1 coat of oil danish", plan=holed)
    assert tops["top of lid"] < 200


def test_what_is_let_into_a_dado_is_hidden() -> None:
    plan = CASE.replace("birch plywood 3/4", "actual 1 x 10 red oak")
    plan = plan.replace("base: ply, flat", "base: ply, across, flat").replace(
        "across, flush with front of case, on floor",
        "across, housed 1/4 each end, flush with front of case, bottom 3 above floor",
    )
    plan += "join base to side.*: dado 1/4 deep, glue pva\n"
    found = surfaces("finish f: on base, side.*\n    1 coat of oil danish", plan=plan)
    # 18 x 10 of the base's top shows between the sides; 1 x 10 of the side's inner face takes the base.
    assert found["left of base"] == pytest.approx(0, abs=1e-6)
    assert found["top of base"] == pytest.approx(180)
    assert found["right of side.left"] == pytest.approx(300 - 10)
