"""screw-breaks-through: what it says, where it begins to, and the lengths that it names."""

from __future__ import annotations

import pytest

from reviewer.findings import Severity
from tests.rules.mending import assert_mends
from tests.rules.sound_pieces import BENCH
from tests.support import findings_of, judgement_of, told

RULE = "screw-breaks-through"


def lid(cleat: str, thick: str = "3/4", more: str = "") -> str:
    """A cleat of 3/4 in under a lid: the join between them is what matters."""
    return f"""
        plan "Lid" in inches
        stock board: actual {thick} x 5 1/2 pine
        outline box: 20 across, 5 1/2 deep, 6 tall, on floor
        part side for each of left, right: board, upright, facing side, as tall as box, on floor, front at 0
            flush with each of box
        part top: board, across, flat, on box, from left of box to right of box, front at 0
        part cleat: board, across, flat, 10 long, under top, front at 0, centred across on box
        join top to side.*: screws #8 x 2, 2 per joint, from above
        join cleat to top: {cleat}
        {more}
        """


def test_screws_that_come_out() -> None:
    # 2 in through 3/4 of cleat into 3/4 of top: 1/2 in comes out.
    text = lid("screws #8 x 2, 4 per joint, from below")
    assert told(text, RULE) == [
        "error top, cleat @ screws #8 x 2: The screws from cleat into top come out of the far face by 1/2 in; the "
        "limit is 1/8 in (common practice, no source), so 5/8 in is missing. → Use 1 1/4 in screws here: they bite "
        "1/2 in and leave 1/4 in."
    ]
    assert assert_mends(text, RULE) == "screws #8 x 1 1/4"


def test_screws_that_end_at_the_far_face() -> None:
    assert told(lid("screws #8 x 1 1/2, 4 per joint, from below"), RULE) == [
        "error top, cleat @ screws #8 x 1 1/2: The screws from cleat into top end right at the far face; the limit "
        "is 1/8 in (common practice, no source), so 1/8 in is missing. → Use 1 1/4 in screws here: they bite 1/2 "
        "in and leave 1/4 in."
    ]


def test_too_little_left_is_a_warning() -> None:
    assert told(lid("screws #8 x 1 7/16, 4 per joint, from below"), RULE) == [
        "warning top, cleat @ screws #8 x 1 7/16: The screws from cleat into top leave only 1/16 in of wood over "
        "their points; the limit is 1/8 in (common practice, no source), so 1/16 in is missing. → Use 1 1/4 in "
        "screws here: they bite 1/2 in and leave 1/4 in."
    ]


@pytest.mark.parametrize(
    ("length", "weight"),
    [
        ("1 1/4", None),
        ("1 3/8", None),  # just 1/8 in is left
        ("1.39", None),  # half of a mark on the tape (1/64 in) is let go
        ("1.395", Severity.WARNING),
        ("1.49", Severity.WARNING),
        ("1 1/2", Severity.ERROR),
        ("1.51", Severity.ERROR),
    ],
)
def test_at_the_limit(length: str, weight: Severity | None) -> None:
    found = findings_of(lid(f"screws #8 x {length}, 4 per joint, from below"), RULE)
    assert [finding.weight for finding in found] == ([] if weight is None else [weight])


def test_the_plan_can_set_the_limit() -> None:
    cleat = "screws #8 x 1 1/4, 4 per joint, from below"
    assert findings_of(lid(cleat), RULE) == ()
    (said,) = told(lid(cleat, more="limit cover: 5/16"), RULE)
    assert "leave only 1/4 in of wood over their points; the limit is 5/16 in (set in this plan)" in said


def test_metric_screws_and_nails() -> None:
    text = """
        plan "Deckel" in millimetres
        stock board: actual 18 x 140 pine
        part low: board, across, flat, 300 long, left at 0, front at 0, bottom at 100
        part top: board, across, flat, 300 long, on low, left at 0, front at 0
        join top to low: {how}, 4 per joint, from above
        """
    screws = text.format(how="screws 4 x 40")
    assert told(screws, RULE) == [
        "error low, top @ screws 4 x 40: The screws from top into low come out of the far face by 4 mm; the limit "
        "is 3.17 mm (common practice, no source), so 7.17 mm is missing. → Use 30 mm screws here: they bite 12 mm "
        "and leave 6 mm."
    ]
    assert assert_mends(screws, RULE) == "screws 4 x 30"
    nails = text.format(how="nails 1.8 x 35")
    (said,) = told(nails, RULE)
    assert said.startswith(
        "warning low, top @ nails 1.8 x 35: The nails from top into low leave only 1 mm of wood over their points"
    )
    assert assert_mends(nails, RULE) == "nails 1.8 x 30"


def test_the_bench_with_longer_screws_is_told_once_for_all_its_rails() -> None:
    text = BENCH.replace("screws #8 x 2 1/2", "screws #8 x 3 1/2")
    assert told(text, RULE) == [
        "error seat.1, seat.2, rail.front, end.left, end.right, stretcher, rail.back @ screws #8 x 3 1/2: The "
        "screws from rail.front, end.*, stretcher and rail.back into seat.1 and seat.2 come out of the "
        "far face by 1/2 in; the limit is 1/8 in (common practice, no source), so 5/8 in is missing. → Use 2 3/4 in "
        "screws here: they bite 1 1/4 in and leave 1/4 in."
    ]
    assert assert_mends(text, RULE) == "screws #8 x 2 3/4"


def test_long_pocket_screws() -> None:
    # 3 in in 1 1/2 in stock: 1 1/4 under the head, (3 - 1 1/4) · cos 15° = 1.69 in goes on; the legs that the
    # end rails meet are 1 1/2 in thick there, those that the long rails meet 3 1/2.
    text = BENCH.replace(
        "pocket screws 2 1/2, 2 per end, from inside", "pocket screws 3, 2 per end, from inside"
    )
    assert told(text, RULE) == [
        "error leg.front-left, leg.back-left, leg.front-right, leg.back-right, end.left, end.right @ pocket "
        "screws 3: The pocket screws from end.left and end.right into leg.front-left, leg.back-left, "
        "leg.front-right and leg.back-right come out of the far face by 0.19 in; the limit is 1/8 in (common "
        "practice, no source), so 0.315 in is missing. → Use 2 1/2 in pocket screws here: they bite 1 7/32 in and "
        "leave 0.293 in."
    ]
    assert assert_mends(text, RULE) == "pocket screws 2 1/2"


def pockets(stock: str, mate: str, length: str) -> str:
    return f"""
        plan "Pockets" in inches
        stock board: actual {stock} x 5 1/2 pine
        stock post: actual {mate} x 5 1/2 pine
        outline frame: 24 across, 5 1/2 deep, 20 tall, on floor
        part post for each of left, right: post, upright, facing side, 20 tall, on floor, front at 0
            flush with each of frame
        part rail: board, across, flat, between post.left and post.right, front at 0, bottom at 5
        join rail to post.*: pocket screws {length}, 2 per end
        """


@pytest.mark.parametrize(
    ("stock", "length"),
    [("1/2", "1"), ("3/4", "1 1/4"), ("0.72", "1 1/4"), ("1", "1 1/2"), ("1 1/2", "2 1/2")],
)
def test_usual_pocket_screws_into_the_same_stock_are_left_alone(stock: str, length: str) -> None:
    assert findings_of(pockets(stock, stock, length), RULE) == ()


def test_a_usual_pocket_screw_that_does_not_stay_inside_is_told() -> None:
    # 12 mm sheet is bored like 1/2 in: 0.483 in of a 1 in screw goes on, into 0.47 in.
    assert told(pockets("0.47", "0.47", "1"), RULE) == [
        "error post.left, post.right, rail @ pocket screws 1: The pocket screws from rail into post.left and "
        "post.right come out of the far face by 0.013 in; the limit is 1/8 in (common practice, no source), so "
        "0.138 in is missing. → No usual length of pocket screws bites here and stays inside: make post.left at "
        "least 1/2 in thick, or join it with dowels and glue."
    ]


def test_joints_that_differ_say_up_to() -> None:
    text = """
        plan "Two posts" in inches
        stock board: actual 3/4 x 5 1/2 pine
        stock thin: actual 3/8 x 5 1/2 pine
        part low: board, across, flat, 10 long, left at 0, front at 0, bottom at 4
        part low-thin: thin, across, flat, 10 long, left at 10, front at 0, bottom 4 3/8 above floor
        part top: board, across, flat, 20 long, on low, left at 0, front at 0
        join top to low, low-thin: screws #8 x 1 3/4, 4 per joint, from above
        """
    (said,) = told(text, RULE)
    assert "into low-thin and low come out of the far face by up to 5/8 in" in said
    # No length bites in both and stays inside both.
    assert "Use 1 1/4 in screws" not in said


def test_a_length_for_some_of_the_joints_is_named_without_an_edit() -> None:
    text = """
        plan "Two boards" in inches
        stock board: actual 3/4 x 5 1/2 pine
        stock thick: actual 2 x 5 1/2 pine
        part low: board, across, flat, 10 long, left at 0, front at 0, bottom at 4
        part low-thick: thick, across, flat, 10 long, left at 10, front at 0, bottom 2 3/4 above floor
        part top: board, across, flat, 10 long, on low, left at 0, front at 0
        part top-thick: thick, across, flat, 10 long, on low-thick, left at 10, front at 0
        join top, top-thick to low, low-thick: screws #8 x 2 1/2, 4 per joint, from above
        """
    (finding,) = findings_of(text, RULE)
    assert finding.parts == ("low", "top")
    assert finding.edit is None
    (said,) = told(text, RULE)
    assert said.endswith(
        "→ Use 1 1/4 in screws here in a join of their own: they bite 1/2 in and leave 1/4 in."
    )


def test_where_no_usual_length_will_do() -> None:
    assert told(lid("screws #8 x 1/2, 4 per joint, from below", thick="1/4"), RULE) == [
        "error top, cleat @ screws #8 x 1/2: The screws from cleat into top end right at the far face; the limit is "
        "1/8 in (common practice, no source), so 1/8 in is missing. → No usual length of screws bites here and "
        "stays inside: make top at least 5/8 in thick, or join it with dowels and glue."
    ]


def test_a_length_given_by_a_measure_is_not_edited() -> None:
    text = lid("screws #8 x long, 4 per joint, from below").replace(
        "in inches\n", "in inches\n        long = 2\n"
    )
    (finding,) = findings_of(text, RULE)
    assert finding.edit is None


@pytest.mark.parametrize(
    "words", ["screws #8 x 2 in", "screws #8 x 50 mm", "screws #8 x 2.0", "screws 4 mm x 2"]
)
def test_the_edit_keeps_the_plans_own_words(words: str) -> None:
    text = lid(f"{words}, 4 per joint, from below")
    assert assert_mends(text, RULE) == f"{words[: words.rindex('x') + 2]}1 1/4"


def test_bolts_and_walls_and_layers_are_left_alone() -> None:
    assert findings_of(lid("bolts 1/4 x 2 1/2, 2 per joint"), RULE) == ()
    layers = """
        plan "Layers" in inches
        stock board: actual 3/4 x 5 1/2 pine
        part low: board, across, flat, 20 long, left at 0, front at 0, bottom at 4
        part middle: board, across, flat, 20 long, on low, left at 0, front at 0
        part top: board, across, flat, 20 long, on middle, left at 0, front at 0
        join top to middle: screws #8 x 2, 4 per joint, from above
        """
    assert findings_of(layers, RULE) == ()
    (said,) = told(layers.replace("x 2, 4", "x 2 1/2, 4"), RULE)
    assert "come out of the far face by 1/4 in" in said


def test_a_waiver() -> None:
    text = lid(
        "screws #8 x 1 1/2, 4 per joint, from below",
        more='accept screw-breaks-through on cleat because "a plug covers the top"',
    )
    judged = judgement_of(text, only=RULE)
    assert (judged.findings, judged.waived[0].waived_because) == ((), "a plug covers the top")


# ---------------------------------------------------------------- at the real place

LEG = """
plan "Leg and rail" in inches
stock post: actual 1 1/2 x 1 1/2 pine
stock board: actual 3/4 x 3 1/2 pine
part post: post, upright, facing front, 20 tall, on floor, left at 3/4, front at 0{shape}
part rail: board, deep, on edge, 12 long, left at 0, front at 0, bottom at 16
join rail to post: screws #8 x {how}, 2 per joint, from left
"""


def test_a_screw_beside_a_taper_comes_out_though_the_middle_is_thick() -> None:
    # 1 3/4 in less 3/4 in of rail is 1 in; the post narrows from 1 1/2 to 1/2 over its upper 10 in.
    assert told(LEG.format(shape="", how="1 3/4"), "screw-breaks-through") == []
    tapered = LEG.format(shape="\n    taper to 1/2 at top end over 10 on right", how="1 3/4")
    (says,) = told(tapered, "screw-breaks-through")
    # The upper of the two stands 0.82 in below the rail's top at 19 1/2: 1.32 in below the post's top, where
    # the post is 0.632 in thick, so 1 in of screw comes out by 0.368 in.
    assert "come out of the far face by 0.368 in" in says


def test_heads_sunk_right_through_or_nearly() -> None:
    through = told(LEG.format(shape="", how="1 1/4, counterbored 3/4"), "screw-breaks-through")
    assert any("3/4 in deep in rail leaves no wood under the heads" in says for says in through)
    nearly = told(LEG.format(shape="", how="1 1/4, counterbored 11/16"), "screw-breaks-through")
    assert any(
        says.startswith("warning") and "only 1/16 in of wood under the heads" in says for says in nearly
    )
    assert told(LEG.format(shape="", how="1 1/4, counterbored 1/2"), "screw-breaks-through") == []


def test_a_thread_that_shows_at_a_side() -> None:
    text = """
        plan "Thin edge" in inches
        stock strip: actual 1/8 x 2 1/2 pine
        stock board: actual 3/4 x 2 1/2 pine
        part rail: strip, across, on edge, 20 long, on floor, left at 0, front at 0
        part top: board, across, flat, 20 long, on rail, left at 0, front at 0
        join top to rail: screws #8 x 2, every 6, from above
        """
    (says,) = told(text, "screw-breaks-through")
    assert "The thread of the screws from top comes out at a side of rail" in says
    assert findings_of(text.replace("actual 1/8", "actual 1/4"), "screw-breaks-through") == ()
