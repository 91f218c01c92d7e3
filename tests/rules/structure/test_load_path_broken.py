"""Loads that no joint brings down. Weights are sums of the plan's own sizes, done by hand."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, settings

from reviewer.mechanics.beam import BeamResult
from tests.rules.everyday_pieces import EVERYDAY
from tests.rules.sound_pieces import SOUND_PIECES
from tests.rules.test_any_heap import HEAPS
from tests.support import findings_of, judgement_of, look_at, review_of, told

RULE = "load-path-broken"

SIDES = """
plan "Case" in inches
stock board: actual 3/4 x 11 1/4 red oak
outline case: 30 across, 11 1/4 deep, 36 tall, on floor
part side for each of left, right: board, upright, facing side, 36 tall, on floor
    front at 0, flush with each of case
"""
SHELF = (
    "part shelf: board, across, flat, between side.left and side.right, front at 0, bottom 12 above floor\n"
)


def test_a_shelf_that_only_touches_the_sides() -> None:
    # 28 1/2 x 11 1/4 x 3/4 in of red oak at 705 kg/m³: 2.78 kg or 6.13 lb.
    kg = 28.5 * 11.25 * 0.75 * 25.4**3 / 1e9 * review_of(SIDES).material_of("side.left").density
    assert round(kg / 0.45359237, 2) == 6.13
    assert told(SIDES + SHELF, RULE) == [
        "error shelf @ shelf: "
        "Nothing brings the weight of shelf, 6.13 lb, to the floor or the wall: "
        "it only touches side.left and side.right, with no joint there. → "
        "Join shelf to side.left and side.right, or put something under shelf that stands."
    ]


def test_a_load_on_it_is_named_and_counted() -> None:
    text = SIDES + SHELF + "load shelf: 50 lb\n"
    (sentence,) = told(text, RULE)
    assert "Nothing brings shelf and its load, 56.1 lb in all, to the floor or the wall" in sentence
    found = look_at(text, only=RULE)
    assert found.judgement is not None
    (finding,) = found.judgement.findings
    lines = [found.source.place(span.start).line for span in finding.also_at]
    # The load stands on the last line, the sides on the fifth.
    assert lines == [len(text.splitlines()), 5]


@pytest.mark.parametrize("held", ["screws #8 x 2, 3 per end, from outside", "glue pva", "shelf pins"])
def test_a_joint_carries_it(held: str) -> None:
    assert told(SIDES + SHELF + f"join shelf to side.*: {held}\n", RULE) == []


def test_a_join_of_nothing_carries_nothing() -> None:
    text = SIDES + SHELF + 'join shelf to side.*: none because "it is wedged in"\n'
    assert [finding.parts for finding in findings_of(text, RULE)] == [("shelf",)]


def test_copies_are_told_once() -> None:
    text = SIDES + (
        "part shelf: board, across, flat, between side.left and side.right, front at 0\n"
        "    3 copies every 8 up, bottom 4 above floor\n"
    )
    assert [finding.parts for finding in findings_of(text, RULE)] == [("shelf.1", "shelf.2", "shelf.3")]


WALL_SHELF = """
plan "Wall shelf" in inches
stock board: actual 3/4 x 7 1/4 pine
part shelf: board, across, flat, 24 long, left at 0, back at 0, bottom 40 above floor
part cleat: board, across, on edge, 24 long, left at 0, against wall, under shelf
join shelf to cleat: screws #8 x 2, every 8, from above
room: indoors, wall behind
"""


def test_the_path_is_shown_to_where_it_ends() -> None:
    (sentence,) = told(WALL_SHELF + "load shelf: 20 lb\n", RULE)
    assert sentence.startswith(
        "error shelf, cleat @ cleat: The load on shelf goes to cleat and ends there: "
        "shelf and cleat only touch the wall, with no joint there. 24.2 lb in all cannot reach the floor or the wall."
    )
    (finding,) = findings_of(WALL_SHELF + "load shelf: 20 lb\n", RULE)
    assert finding.working is not None
    assert "shelf → cleat → ends" in [figure.value for figure in finding.working.figures]
    for fixed in (
        "join cleat to wall: screws #10 x 3, every 16\n",
        "restrain cleat to wall: screws #10 x 3 into stud, 37 up, 2 of them\n",
    ):
        assert told(WALL_SHELF + fixed, RULE) == []


def test_what_rests_on_it_belongs_to_the_path() -> None:
    text = SIDES + SHELF + "part box: board, across, flat, 10 long, left at 8, front at 0, on shelf\n"
    text += "load box: 10 lb\n"
    (sentence,) = told(text, RULE)
    assert (
        "The load on box goes to shelf and ends there: shelf only touches side.left and side.right"
        in sentence
    )


# ---------------------------------------------------------------- dry joints


def raised(shelf: str, join: str) -> str:
    """A case whose sides hang above the floor, screwed to posts outside of them."""
    return f"""
    plan "Raised case" in millimetres
    stock board: actual 20 x 200 pine
    outline case: 600 across, 200 deep, 600 tall, bottom 100 above floor
    part post.left: board, upright, facing side, 500 tall, on floor, front at 0, left at 0 - 20
    part post.right: board, upright, facing side, 500 tall, on floor, front at 0, left at 600
    part side for each of left, right: board, upright, facing side, as tall as case, flush with bottom of case
        front at 0, flush with each of case
    part bottom: board, across, flat, between side.left and side.right, housed 8 each end, front at 0
        {shelf}
    join side.left to post.left: screws 5 x 35, 4 per joint
    join side.right to post.right: screws 5 x 35, 4 per joint
    join bottom to side.*: {join}
    load bottom: 12 kg
    """


def test_a_dry_housing_with_no_wood_under_it_lets_the_board_slide_down() -> None:
    (sentence,) = told(raised("flush with bottom of case", "rabbet 8 deep"), RULE)
    assert (
        "it is only let into side.left and side.right, where nothing keeps it from sliding down" in sentence
    )
    assert sentence.endswith(
        "Glue or screw bottom to side.left and side.right, or put a rail or a cleat under bottom."
    )


@pytest.mark.parametrize("join", ["rabbet 8 deep, glue pva", "rabbet 8 deep, nails 1.5 x 40, every 50"])
def test_glue_or_nails_hold_it(join: str) -> None:
    assert told(raised("flush with bottom of case", join), RULE) == []


def test_a_dry_housing_with_wood_under_it_carries() -> None:
    assert told(raised("bottom 40 above bottom of case", "dado 8 deep"), RULE) == []


def test_no_number_is_given_for_what_nothing_carries() -> None:
    broken = review_of(raised("flush with bottom of case", "rabbet 8 deep")).carrying
    sound = review_of(raised("flush with bottom of case", "rabbet 8 deep, glue pva")).carrying
    assert "bottom" not in broken.members
    assert isinstance(sound.members["bottom"].standing, BeamResult)
    assert list(broken.lost) == ["bottom"]
    assert broken.on_floor + broken.lost["bottom"] == pytest.approx(sound.on_floor, rel=1e-9)
    assert "bottom" not in broken.handed


HUNG = """
plan "Hung rail" in millimetres
stock board: actual 30 x 90 pine
outline frame: 800 across, 90 deep, 500 tall, on floor
part leg for each of left, right: board, upright, facing side, 470 tall, on floor, front at 0
    flush with each of frame
part top: board, across, flat, on leg.left, from left of frame to right of frame, front at 0
part rail: board, across, on edge, 300 long, centred across on frame, front at 20, under top
join top to leg.*: screws 5 x 80, 2 per joint
join rail to top: {how}
"""


@pytest.mark.parametrize(
    ("how", "holds"),
    [
        ("dowels 8 x 40, 2 per joint", False),
        ("loose tenons 8 x 20 x 40, 2 per joint", False),
        ("dowels 8 x 40, 2 per joint, glue pva", True),
        ("screws 5 x 80, 3 per joint", True),
        ("glue pva", True),
        ("brackets", True),
        ('none because "it is clamped"', False),
    ],
)
def test_what_hangs_by_dry_pegs_drops_out(how: str, holds: bool) -> None:
    found = told(HUNG.replace("{how}", how), RULE)
    assert (found == []) is holds
    if "dowels" in how and not holds:
        assert "it only hangs in top dry, and drops out." in found[0]


# ---------------------------------------------------------------- who tells


def test_every_stuck_part_is_told_by_one_rule_only() -> None:
    text = (
        SIDES
        + SHELF
        + ("part tray: board, across, flat, 20 long, left at 50, front at 0, bottom 5 above floor\n")
    )
    both = {rule: [finding.parts for finding in findings_of(text, rule)] for rule in (RULE, "part-floats")}
    assert both == {RULE: [("shelf",)], "part-floats": [("tray",)]}


@settings(max_examples=80, deadline=None)
@given(text=HEAPS)
def test_of_any_heap_what_is_stuck_is_told_once(text: str) -> None:
    review = review_of(text)
    told_here = [part for finding in findings_of(text, RULE) for part in finding.parts]
    told_there = [part for finding in findings_of(text, "part-floats") for part in finding.parts]
    assert len({*told_here, *told_there}) == len(told_here) + len(told_there)
    elsewhere = {
        part
        for island in review.islands
        if not review.told_by_place.isdisjoint(island.parts)
        for part in island.parts
    }
    assert {*told_here, *told_there} == review.stranded - elsewhere
    assert set(review.holding.floating) <= review.stranded
    assert set(review.carrying.lost) <= review.stranded


def test_two_parts_that_hold_up_only_each_other() -> None:
    # A circle: the ledge is screwed to the shelf, and the shelf lies on the ledge.
    text = (
        SIDES
        + SHELF
        + (
            "part ledge: board, across, on edge, between side.left and side.right, front at 0, under shelf\n"
            "join shelf to ledge: screws #8 x 2, every 8, from above\n"
        )
    )
    (finding,) = findings_of(text, RULE)
    assert finding.parts == ("shelf", "ledge")
    carrying = review_of(text).carrying
    assert math.fsum(carrying.lost.values()) > 0
    assert {each.to.by for part in finding.parts for each in carrying.handed.get(part, ())} <= set(
        finding.parts
    )


def test_it_can_be_accepted() -> None:
    text = SIDES + SHELF + 'accept load-path-broken on shelf because "it is hung on cords from the ceiling"\n'
    judged = judgement_of(text, only=RULE)
    assert judged.findings == ()
    assert [finding.parts for finding in judged.waived] == [("shelf",)]


@pytest.mark.parametrize("name", [*SOUND_PIECES, *EVERYDAY])
def test_sound_pieces_are_quiet(name: str) -> None:
    assert told({**SOUND_PIECES, **EVERYDAY}[name], RULE) == []
