"""What a join says, as the model keeps it."""

from __future__ import annotations

import pytest

from reviewer.model.plan import Join
from tests.support import look_at, review_of

CASE = """
plan "Case" in millimetres
stock board: actual 18 x 300 pine
outline case: 600 across, 300 deep, 900 tall, on floor
part side for each of left, right: board, upright, facing side, 900 tall, on floor, front at 0
    flush with each of case
part shelf: board, across, flat, between side.left and side.right, front at 0, bottom at 400
"""


def join(how: str) -> Join:
    return review_of(CASE + f"join shelf to side.*: {how}\n").plan.joins[0]


def test_facts_go_to_the_fastener_before_them() -> None:
    made = join(
        "screws 4 x 50, 30 from ends, 9 from edge, at 15 degrees, stainless, pilot holes 3\n"
        "    wedges, 2 per joint"
    )
    screws, wedges = made.fastenings
    assert (screws.from_end, screws.from_edge, screws.angle) == (30, 9, 15)
    assert (screws.metal, screws.pilot, screws.pilot_diameter) == ("stainless", "drilled", 3)
    assert (wedges.kind, wedges.count, wedges.from_end, wedges.metal) == ("wedges", 2, None, None)


@pytest.mark.parametrize(
    ("how", "sizes"),
    [
        ("loose tenons 8 x 40", (8, None, 40)),
        ("loose tenons 8 x 20 x 40", (8, 20, 40)),
        ("clips", (None,) * 3),
    ],
)
def test_sizes_of_loose_tenons_are_thickness_width_and_length(how: str, sizes: tuple[object, ...]) -> None:
    (made,) = join(how).fastenings
    assert (made.diameter, made.width, made.length) == sizes


def test_a_butt_joint_names_no_fastener() -> None:
    made = join("butt, glue pva")
    assert (made.butt, made.fastenings, made.housing, made.glue) == (True, (), None, "pva_yellow")
    assert not join("glue pva").butt


def test_a_tenon_has_a_length_and_a_thickness() -> None:
    housing = join("mortise and tenon 30 long 6 thick").housing
    assert housing is not None
    assert (housing.kind, housing.depth, housing.thickness) == ("mortise and tenon", 30, 6)


@pytest.mark.parametrize(
    "kind", ["splined mitre", "bridle", "tongue and groove", "dovetails", "box joint", "mitre", "half lap"]
)
def test_housings_of_no_depth(kind: str) -> None:
    housing = join(f"{kind}, glue pva").housing
    assert housing is not None
    assert (housing.kind, housing.depth) == (kind, None)


@pytest.mark.parametrize("angle", ["0", "90", "120", "5 mm"])
def test_an_angle_that_nothing_is_driven_at(angle: str) -> None:
    problems = look_at(CASE + f"join shelf to side.*: screws 4 x 50, at {angle} degrees\n").problems
    assert [(problem.says, problem.do) for problem in problems] == [
        (
            f"A fastener can't be driven at {angle} degrees.",
            "Write an angle above 0 and below 90, or leave it out where it goes in square.",
        )
    ]


def test_a_fact_without_a_fastener_is_told() -> None:
    problems = look_at(CASE + "join shelf to side.*: butt, stainless, glue pva\n").problems
    assert [problem.says for problem in problems] == [
        "This says how a fastener goes in, but no fastener stands before it."
    ]


def test_the_side_that_a_fastener_is_driven_from_keeps_its_words() -> None:
    text = CASE + (
        "join shelf to side.left: screws 4 x 50, from  outside # from left\n"
        "join shelf to side.right: screws 4 x 50\n    2 per end, from left\n"
    )
    first, second = (each.fastenings[0] for each in review_of(text).plan.joins)
    assert first.from_span is not None
    assert second.from_span is not None
    assert text[first.from_span.start : first.from_span.end] == "from  outside"
    assert text[second.from_span.start : second.from_span.end] == "from left"
    assert join("screws 4 x 50").fastenings[0].from_span is None
