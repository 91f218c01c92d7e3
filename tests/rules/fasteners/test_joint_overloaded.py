"""joint-overloaded: shear, pull and both against what screws, nails, bolts and housings may bear."""

from __future__ import annotations

import re

import pytest

from reviewer.findings import Severity
from tests.support import findings_of, told

RULE = "joint-overloaded"


def bench(join: str, load: str = "2 people seated", wide: str = "42") -> str:
    """A seat between two board sides."""
    return f"""
        plan "Bench" in inches
        stock board: 2x12 spruce-pine-fir
        outline bench: {wide} across, 11 1/4 deep, 24 tall, on floor
        part side for each of left, right: board, upright, facing side, as tall as bench, on floor
            flush with each of bench, flush with front of bench
        part seat: board, across, flat, between side.left and side.right, flush with front of bench
            bottom 16 above floor
        join seat to side.*: {join}
        load seat: {load}
        """


def test_thin_screws_under_two_people() -> None:
    assert told(bench("screws #6 x 2 1/2, 2 per joint, from outside"), RULE) == [
        "error seat, side.left, side.right @ screws #6 x 2 1/2: Where seat meets side.left and side.right, 280 lb "
        "comes down there along the face, on 2 screws. They may bear 82.4 lb (NDS 2018), so that is 198 lb too "
        "much: 341 % of it. What gives way first: the screw bends on both sides of the joint (mode IV), in end "
        "grain. → Use 7 screws in each joint: then it is at 98 %, or screw a cleat to side.left under seat, with 5 "
        "of the same screws across the grain: then they are at 92 %."
    ]


def test_the_first_remedy_does() -> None:
    found = told(bench("screws #6 x 2 1/2, 7 per joint, from outside"), RULE)
    # NDS values are met at 98 %: near, so that is a warning.
    assert [text.split(" ")[0] for text in found] == ["warning"]
    assert "98 % of it" in found[0]
    assert told(bench("screws #6 x 2 1/2, 8 per joint, from outside"), RULE) == []


def test_thicker_screws_are_tried() -> None:
    said = told(bench("screws #8 x 3, 4 per joint, from outside", "1 person standing"), RULE)
    for text in said:
        for gauge in re.findall(r"use #(\d+) screws", text):
            again = bench(f"screws #{gauge} x 3, 4 per joint, from outside", "1 person standing")
            assert [f for f in findings_of(again, RULE) if f.weight is Severity.ERROR] == []


def test_an_estimate_warns_and_far_beyond_is_an_error() -> None:
    # Pocket screws stand less than six diameters deep, for which the NDS has no value.
    few = findings_of(bench("pocket screws 2 1/2, 2 per joint", "2 people seated"), RULE)
    assert [finding.weight for finding in few] == [Severity.WARNING]
    heavy = findings_of(bench("pocket screws 2 1/2, 2 per joint", "400 kg"), RULE)
    assert [finding.weight for finding in heavy] == [Severity.ERROR]


@pytest.mark.parametrize(
    "join",
    [
        "dado 1/2 deep, screws #6 x 2 1/2, 2 per joint, from outside",
        "brackets, 2 per joint, screws #6 x 2 1/2, 1 per joint, from outside",
        "screws #10 x 3, 8 per joint, from outside",
    ],
)
def test_what_bears_or_may_bear_besides_is_quiet(join: str) -> None:
    text = bench(join)
    if "dado" in join:
        text = text.replace("side.right, flush", "side.right, housed 1/2 each end, flush")
    assert findings_of(text, RULE) == ()


def test_a_seat_on_cleats_is_quiet() -> None:
    text = bench("screws #6 x 2 1/2, 2 per joint, from outside").replace(
        "join seat",
        "part cleat.left: board, deep, on edge, 11 1/4 long, rip 2, under seat, against right of side.left\n"
        "            flush with front of bench\n"
        "        part cleat.right: like cleat.left, mirrored across about bench\n"
        "        join cleat.* to side.*: screws #10 x 2 3/4, 6 per joint, from outside\n"
        "        join seat",
    )
    assert "cleat" in text
    assert [f for f in findings_of(text, RULE) if "seat" in f.parts] == []


def test_a_shelf_on_one_wall_turns_off_its_screws() -> None:
    text = """
        plan "Ledge" in millimetres
        stock board: actual 18 x 250 pine
        stock plate: actual 18 x 100 pine
        outline place: 800 across, 268 deep, 100 tall, bottom 1200 above floor, against wall
        part plate: plate, across, on edge, from left of place to right of place, against wall
            flush with bottom of place
        part shelf: board, across, flat, from left of place to right of place, against front of plate
            centred up on place
        join plate to wall: screws 6 x 100, every 400
        join shelf to plate: screws 4 x 50, 3 per joint, from back
        load shelf: books
        room reading room: indoors, wall behind, studs every 400, no children
        """
    (finding,) = [f for f in findings_of(text, RULE) if "shelf" in f.parts]
    assert finding.weight is Severity.ERROR  # far beyond an estimate
    said = told(text, RULE)[-1] if "shelf" in told(text, RULE)[-1] else told(text, RULE)[0]
    assert "comes down and pulls there at once, on the hardest pulled of 3 screws" in said
    assert finding.working is not None
    names = [figure.name for figure in finding.working.figures]
    assert "moment that opens the joint" in names


def test_an_unsupported_end_is_told_there_alone() -> None:
    text = (
        bench("screws #6 x 2 1/2, 2 per joint, from outside")
        .replace("between side.left and side.right, flush", "against right of side.left, 30 long, flush")
        .replace("join seat to side.*", "join seat to side.left")
    )
    assert findings_of(text, "unsupported-end") != ()
    assert findings_of(text, RULE) == ()


def test_screws_that_never_reach_are_told_once() -> None:
    short = bench("screws #8 x 1 1/4, 2 per joint, from outside")
    assert told(short, RULE) == []
    assert len(findings_of(short, "screw-too-short")) == 1
