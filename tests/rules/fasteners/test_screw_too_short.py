"""screw-too-short: what it says, where it begins to, and what good makers do every day."""

from __future__ import annotations

import pytest

from reviewer.findings import Severity
from tests.rules.mending import assert_mends
from tests.rules.sound_pieces import BENCH
from tests.support import findings_of, judgement_of, told

RULE = "screw-too-short"


def lid(cleat: str, more: str = "") -> str:
    """A cleat of 3/4 in under a lid of 3/4 in: the join between them is what matters."""
    return f"""
        plan "Lid" in inches
        stock board: actual 3/4 x 5 1/2 pine
        outline box: 20 across, 5 1/2 deep, 6 tall, on floor
        part side for each of left, right: board, upright, facing side, as tall as box, on floor, front at 0
            flush with each of box
        part top: board, across, flat, on box, from left of box to right of box, front at 0
        part cleat: board, across, flat, 10 long, under top, front at 0, centred across on box
        join top to side.*: screws #8 x 2, 2 per joint, from above
        join cleat to top: {cleat}
        {more}
        """


def test_screws_that_never_reach() -> None:
    # Without the counterbore the rails put 3 1/2 in under the heads of 2 1/2 in screws.
    text = BENCH.replace("from below, counterbored 2", "from below")
    assert told(text, RULE) == [
        "error seat.1, seat.2, rail.front, end.left, end.right, stretcher, rail.back @ screws #8 x 2 1/2: The "
        "2 1/2 in screws from rail.front, end.left, end.right, stretcher and 1 more never reach seat.1 and seat.2: "
        "3 1/2 in of wood lies under their heads, so they end 1 in short of the joint and hold nothing. → Use 4 in "
        "screws here: they bite 1/2 in, or counterbore these 1 1/2 in deep."
    ]
    assert assert_mends(text, RULE) == "screws #8 x 4"


def test_the_counterbore_that_is_named_does() -> None:
    assert findings_of(BENCH.replace("counterbored 2", "counterbored 1 1/2"), RULE) == ()
    assert len(findings_of(BENCH.replace("counterbored 2", "counterbored 1 3/8"), RULE)) == 1


def test_screws_that_end_at_the_joint() -> None:
    text = lid("screws #8 x 3/4, 4 per joint, from below")
    assert told(text, RULE) == [
        "error top, cleat @ screws #8 x 3/4: The 3/4 in screws from cleat never reach top: 3/4 in of wood lies "
        "under their heads, so they end at the joint and hold nothing. → Use 1 1/4 in screws here: they bite 1/2 in."
    ]
    assert assert_mends(text, RULE) == "screws #8 x 1 1/4"


def test_screws_that_hardly_bite() -> None:
    text = lid("screws #8 x 1, 4 per joint, from below")
    assert told(text, RULE) == [
        "error top, cleat @ screws #8 x 1: The screws from cleat bite only 1/4 in into top. 15/32 in is the least "
        "(worked out from the usual chart of pocket screws: 0.48 in of a 1 in screw in 1/2 in stock), so 7/32 in "
        "is missing. → Use 1 1/4 in screws here: they bite 1/2 in, or counterbore these 1/4 in deep."
    ]
    assert assert_mends(text, RULE) == "screws #8 x 1 1/4"
    assert findings_of(lid("screws #8 x 1, 4 per joint, from below, counterbored 1/4"), RULE) == ()


@pytest.mark.parametrize(
    ("length", "flagged"),
    [("1 1/4", False), ("1 7/32", False), ("1.215", True), ("1 3/16", True)],  # 15/32 in of bite is the least
)
def test_at_the_least_bite(length: str, flagged: bool) -> None:
    found = findings_of(lid(f"screws #8 x {length}, 4 per joint, from below"), RULE)
    assert [finding.weight for finding in found] == ([Severity.ERROR] if flagged else [])


def test_metric_screws() -> None:
    text = """
        plan "Leiste" in millimetres
        stock board: actual 18 x 140 pine
        part low: board, across, flat, 300 long, on floor, left at 0, front at 0
        part top: board, across, flat, 300 long, on low, left at 0, front at 0
        join top to low: screws 4 x {length}, 4 per joint, from above
        """
    # 4 x 30 through 18 into 18 is everyday work: 12 mm of bite.
    assert findings_of(text.format(length=30), RULE) == ()
    assert told(text.format(length=25), RULE) == [
        "error low, top @ screws 4 x 25: The screws from top bite only 7 mm into low. 11.91 mm is the least (worked "
        "out from the usual chart of pocket screws: 0.48 in of a 1 in screw in 1/2 in stock), so 4.91 mm is "
        "missing. → Use 30 mm screws here: they bite 12 mm, or counterbore these 5 mm deep."
    ]
    assert assert_mends(text.format(length=25), RULE) == "screws 4 x 30"


def pockets(stock: str, length: str) -> str:
    return f"""
        plan "Pockets" in inches
        stock board: actual {stock} x 5 1/2 pine
        stock post: actual 1 1/2 x 5 1/2 pine
        outline frame: 24 across, 5 1/2 deep, 20 tall, on floor
        part post for each of left, right: post, upright, facing side, 20 tall, on floor, front at 0
            flush with each of frame
        part rail: board, across, flat, between post.left and post.right, front at 0, bottom at 5
        join rail to post.*: pocket screws {length}, 2 per end
        """


@pytest.mark.parametrize(
    ("stock", "length"),
    [("1/2", "1"), ("0.47", "1"), ("3/4", "1 1/4"), ("1", "1 1/2"), ("1 1/4", "2"), ("1 1/2", "2 1/2")],
)
def test_usual_pocket_screws_are_left_alone(stock: str, length: str) -> None:
    assert findings_of(pockets(stock, length), RULE) == ()


def test_a_short_pocket_screw_is_told_here_and_not_by_its_length_as_well() -> None:
    text = pockets("3/4", "1")
    assert told(text, RULE) == [
        "error post.left, post.right, rail @ pocket screws 1: The pocket screws from rail bite only 0.362 in into "
        "post.left and post.right. 15/32 in is the least (worked out from the usual chart of pocket screws: 0.48 in "
        "of a 1 in screw in 1/2 in stock), so 0.107 in is missing. → Use 1 1/4 in pocket screws here: they bite "
        "19/32 in."
    ]
    assert findings_of(text, "pocket-mismatch") == ()
    assert assert_mends(text, RULE) == "pocket screws 1 1/4"


# ---------------------------------------------------------------- walls


def cleat(length: str, gauge: str = "#10", more: str = "") -> str:
    return f"""
        plan "Wall shelf" in inches
        stock board: 1x10 pine
        stock strip: 1x3 pine
        part cleat: strip, across, on edge, 34 long, against wall, bottom 48 above floor, left at 1
        part shelf: board, across, flat, 36 long, on cleat, against wall, left at 0
        join cleat to wall: screws {gauge} x {length}, 3 per joint
        join shelf to cleat: screws #8 x 1 5/8, every 8, from above, glue pva
        load shelf: books
        room hall: indoors, wall behind, studs every 16
        {more}
        """


def test_wallboard_holds_nothing() -> None:
    text = cleat("2")
    # 2 - 3/4 = 1 1/4, of which 1/2 is board; six diameters of 0.19 in and the board are 1.64 in.
    assert told(text, RULE) == [
        "warning cleat @ screws #10 x 2: The screws from cleat bite only 1 1/4 in into the wall, and the first 1/2 "
        "in of that is board that holds nothing (FEMA, Anchor tall bookcases and file cabinets (2008)). 1.64 in is "
        "the least (National Design Specification for Wood Construction 2018, penetration of wood screws, as "
        "transcribed), so 0.39 in is missing. → Use 2 1/2 in screws here: they bite 1 3/4 in."
    ]
    assert assert_mends(text, RULE) == "screws #10 x 2 1/2"


@pytest.mark.parametrize(
    ("length", "weight"),
    [
        ("1 5/8", Severity.ERROR),  # 7/8 in, less than 1/2 of board and 15/32
        ("1 3/4", Severity.WARNING),
        ("2 3/8", Severity.WARNING),
        ("2 13/32", None),  # 1.656 in
        ("3", None),
    ],
)
def test_screws_into_the_wall(length: str, weight: Severity | None) -> None:
    found = findings_of(cleat(length), RULE)
    assert [finding.weight for finding in found] == ([] if weight is None else [weight])


def test_a_thinner_screw_needs_less() -> None:
    # Six diameters of a #8 are 0.984 in; with the board 1.484: 2 1/4 less 3/4 is 1 1/2.
    assert findings_of(cleat("2 1/4", gauge="#8"), RULE) == ()


BLOCK = """
    plan "Block" in inches
    stock beam: actual 8 x 8 pine
    part block: beam, across, flat, 20 long, {place}, left at 0
    join block to {ground}: screws #8 x 3/4, every 16
    """


@pytest.mark.parametrize(
    ("place", "ground", "remedy"),
    [
        (
            "against wall, bottom 48 above floor",
            "wall",
            "No usual length of screws bites 31/32 in here: fix a thinner cleat to the wall with them, and "
            "block to the cleat.",
        ),
        (
            "on floor, front at 0",
            "floor",
            "No usual length of screws bites 15/32 in here: hold block to the floor with brackets and screws "
            "of their own.",
        ),
    ],
)
def test_neither_the_wall_nor_the_floor_can_be_made_thicker(place: str, ground: str, remedy: str) -> None:
    (said,) = told(BLOCK.format(place=place, ground=ground), RULE)
    assert f"from block never reach the {ground}:" in said
    assert said.endswith(f"→ {remedy}")


# ---------------------------------------------------------------- pull


def hanging(length: str, load: str = "load low: 20 lb") -> str:
    """A board screwed to posts from below: it hangs."""
    return f"""
        plan "Hanging shelf" in inches
        stock board: actual 3/4 x 5 1/2 pine
        stock post: actual 1 1/2 x 5 1/2 pine
        outline frame: 20 across, 5 1/2 deep, 20 tall, on floor
        part leg for each of left, right: post, upright, facing side, 20 tall, on floor, front at 0
            flush with each of frame
        part rail: post, across, flat, between leg.left and leg.right, front at 0, flush with top of frame
        part low: board, across, flat, 10 long, under rail, front at 0, centred across on frame
        join rail to leg.*: dowels 3/8 x 3, 2 per joint, glue pva
        join low to rail: screws #8 x {length}, 2 per joint, from below
        {load}
        """


def test_a_load_that_pulls_on_the_screws() -> None:
    text = hanging("1 1/2")
    assert told(text, RULE) == [
        "warning rail, low @ screws #8 x 1 1/2: The screws from low bite only 3/4 in into rail, and a load pulls on "
        "them there. 1 in is the least (How to choose the correct size wood screws, 1 to 1-1/2 in (how-to page)), "
        "so 1/4 in is missing. → Use 1 3/4 in screws here: they bite 1 in, or counterbore these 1/4 in deep."
    ]
    assert assert_mends(text, RULE) == "screws #8 x 1 3/4"


def test_what_hangs_by_itself_may_hang_by_less() -> None:
    assert findings_of(hanging("1 1/4", load=""), RULE) == ()
    assert findings_of(hanging("1 3/4"), RULE) == ()


# ---------------------------------------------------------------- the rest


def test_nails_are_told_only_when_they_never_reach() -> None:
    assert findings_of(lid("nails 1, 4 per joint, from below"), RULE) == ()
    text = lid("nails 3/4, 4 per joint, from below")
    (finding,) = findings_of(text, RULE)
    assert finding.weight is Severity.ERROR
    assert assert_mends(text, RULE) == "nails 1"


def test_where_no_usual_length_will_do() -> None:
    text = """
        plan "Thin" in inches
        stock board: actual 3/4 x 5 1/2 pine
        stock thin: actual 3/8 x 5 1/2 pine
        part low: thin, across, flat, 10 long, on floor, left at 0, front at 0
        part top: board, across, flat, 10 long, on low, left at 0, front at 0
        join top to low: screws #8 x 1, 4 per joint, from above
        """
    (said,) = told(text, RULE)
    assert said.endswith(
        "→ No usual length of screws bites here and stays inside: make low at least 5/8 in thick, or join it "
        "another way, such as dowels and glue."
    )


def test_bolts_are_left_alone() -> None:
    assert findings_of(lid("bolts 1/4 x 1/2, 2 per joint"), RULE) == ()


def test_a_waiver() -> None:
    text = lid(
        "screws #8 x 1, 4 per joint, from below",
        more='accept screw-too-short on cleat because "they only hold it while the glue dries"',
    )
    judged = judgement_of(text, only=RULE)
    assert (judged.findings, len(judged.waived)) == ((), 1)
