"""Glue: the surface that joints have, how much glue that is, and in which step it is spread."""

from __future__ import annotations

import math

import pytest

from reviewer.reference.glues import glue, glue_keys
from reviewer.reference.packs import packs_for
from reviewer.units import MM3_PER_FLUID_OUNCE, MM_PER_FOOT, MM_PER_INCH
from reviewer.workshop.gluing import glue_lines, glue_list, glue_volume, glued_in_steps, gluing_hours
from tests.support import review_of

SQUARE_INCH = MM_PER_INCH**2
FRAME = """
plan "Frame" in inches
stock post: actual 2 x 2 red oak
stock rail: actual 3/4 x 3 red oak
outline frame: 40 across, 2 deep, 17 tall, on floor
part leg for each of left, right: post, upright, as tall as frame, flush with each of frame, on floor
    front at 0
part rail: rail, across, on edge, between leg.left and leg.right, housed {housed} each end
    centred deep on frame, flush with top of frame
join rail to leg.*: {how}, glue pva
"""


def area_of(how: str, housed: str = "0") -> float:
    """The glued surface of one end of the rail, in square inches."""
    lines = glue_lines(review_of(FRAME.format(how=how, housed=housed)))
    assert len(lines) == 2
    assert math.isclose(lines[0].area, lines[1].area)
    return lines[0].area / SQUARE_INCH


@pytest.mark.parametrize(
    ("how", "housed", "area"),
    [
        # Worked by hand from the usual form of each joint.
        ("butt", "0", 3 * 0.75),
        ("dado 1/2 deep", "1/2", 3 * 0.75 + 2 * 0.5 * 3),
        ("mortise and tenon 1 long 1/4 thick", "1", 2 * 1 * (3 + 0.25)),
        ("dowels 3/8 x 2, 2 per joint", "0", 3 * 0.75 + 2 * math.pi * 0.375 * 2),
        # The rail is 3/4 in thick and 3 in wide: the largest biscuit, 56 by 23 mm, fits.
        ("biscuits, 1 per joint", "0", 3 * 0.75 + 2 * 56 * 23 / SQUARE_INCH),
        ("loose tenons 1/4 x 1 x 2, 1 per joint", "0", 3 * 0.75 + 2 * 2 * (0.25 + 1)),
    ],
)
def test_surface(how: str, housed: str, area: float) -> None:
    assert area_of(how, housed) == pytest.approx(area, rel=1e-6)


def test_a_gallon_covers_two_hundred_square_feet() -> None:
    """Common practice, no source: 200 to 300 square feet of glue line a gallon; the lower is planned with."""
    volume = glue_volume("pva_yellow", 200 * MM_PER_FOOT**2)
    assert volume is not None
    assert volume / MM3_PER_FLUID_OUNCE == pytest.approx(128)
    assert [key for key in glue_keys() if glue(key).spread is None] == [
        "hide_hot", "hide_liquid", "epoxy_fast", "epoxy_slow", "ca", "urea_powder", "urea_2part", "resorcinol",
    ]  # fmt: skip


def test_each_glue_is_summed_over_its_joints() -> None:
    text = FRAME.format(how="dado 1/2 deep", housed="1/2")
    (needed,) = glue_list(review_of(text))
    assert (needed.key, needed.joints) == ("pva_yellow", 2)
    assert needed.area / SQUARE_INCH == pytest.approx(2 * (3 * 0.75 + 3))
    assert glue_list(review_of(text.replace(", glue pva", ""))) == ()


STEPS = FRAME.format(how="dado 1/2 deep", housed="1/2") + (
    "part top: rail, across, flat, on frame, from left of frame to right of frame, front at 0\n"
    "join top to leg.*: glue pva\n"
)


@pytest.mark.parametrize(
    ("steps", "found"),
    [
        ('step "One": join rail\nstep "Two": join top\n', {0: 2, 1: 2}),
        # Where two steps name the leg, and none the rail with it, neither is plainly meant.
        ('step "One": join leg.*\nstep "Two": fit leg.*\n', {}),
        ('step "One": join rail, leg.*\nstep "Two": join top, leg.*\n', {0: 2, 1: 2}),
        ('step "One": cut rail\n', {}),
        ("", {}),
    ],
)
def test_the_step_of_a_joint(steps: str, found: dict[int, int]) -> None:
    joints = glued_in_steps(review_of(STEPS + steps))
    assert {number: len(some) for number, some in joints.items()} == found


def test_a_minute_a_joint() -> None:
    assert gluing_hours(30) == pytest.approx(0.5)


@pytest.mark.parametrize(
    ("kind", "needed", "packs"),
    [
        ("screws", 1, ((1, 50),)),
        ("screws", 50, ((1, 50),)),
        ("screws", 51, ((1, 100),)),
        ("screws", 210, ((1, 200), (1, 50))),
        ("screws", 0, ()),
        ("pocket screws", 300, ((1, 250), (1, 50))),
        ("dowels", 8, ((1, 50),)),
        ("bolts", 8, ()),
    ],
)
def test_boxes(kind: str, needed: int, packs: tuple[tuple[int, int], ...]) -> None:
    assert packs_for(kind, needed) == packs


@pytest.mark.parametrize("kind", ["screws", "pocket screws", "nails", "dowels", "biscuits"])
def test_boxes_leave_as_little_over_as_they_can(kind: str) -> None:
    least = min(size for _, size in packs_for(kind, 1))
    for needed in range(1, 700):
        held = sum(number * size for number, size in packs_for(kind, needed))
        assert needed <= held < needed + least
