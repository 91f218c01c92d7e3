"""pocket-mismatch: lengths, threads and stock against the usual chart."""

from __future__ import annotations

import pytest
from pocket_plans import pockets

from reviewer.findings import Severity
from tests.rules.mending import assert_mends
from tests.support import findings_of, judgement_of, told

RULE = "pocket-mismatch"


PINE, OAK = "3/4 x 5 1/2 pine", "3/4 x 5 1/2 red oak"


def test_shorter_than_usual() -> None:
    text = pockets("1 1/2 x 5 1/2 pine", "2")
    assert told(text, RULE) == [
        "warning rail @ pocket screws 2: Pocket screws 2 in long are 1/2 in shorter than usual for rail, 1 1/2 in "
        "thick: 2 1/2 in (Screw for 1-1/2 in stock: 2-1/2 in, 15 degrees typical). They bite 0.724 in; the usual "
        "ones bite 1.207 in. → Use 2 1/2 in pocket screws."
    ]
    assert assert_mends(text, RULE) == "pocket screws 2 1/2"


def test_longer_than_usual() -> None:
    text = pockets(PINE, "1 1/2")
    assert told(text, RULE) == [
        "warning rail @ pocket screws 1 1/2: Pocket screws 1 1/2 in long are 1/4 in longer than usual for rail, 3/4 "
        "in thick: 1 1/4 in (common practice, no source). They bite 0.845 in, and leave 0.655 in of wood over the "
        "point. → Use 1 1/4 in pocket screws."
    ]
    assert assert_mends(text, RULE) == "pocket screws 1 1/4"


@pytest.mark.parametrize(
    ("length", "flagged"),
    [("2 1/2", False), ("2 3/8", False), ("2 5/8", False), ("2 11/32", True), ("2 21/32", True)],
)
def test_an_eighth_either_way(length: str, flagged: bool) -> None:
    text = pockets("1 1/2 x 5 1/2 pine", length).replace(
        "stock post: actual 1 1/2", "stock post: actual 2 1/2"
    )
    assert [finding.weight for finding in findings_of(text, RULE)] == ([Severity.WARNING] if flagged else [])


def test_metric_stock_reads_as_the_nearest_line_of_the_chart() -> None:
    assert findings_of(pockets("18 x 140 pine", "32", unit="millimetres"), RULE) == ()
    assert findings_of(pockets("18 x 140 pine", "30", unit="millimetres"), RULE) == ()
    text = pockets("18 x 140 pine", "40", unit="millimetres")
    assert told(text, RULE) == [
        "warning rail @ pocket screws 40: Pocket screws 40 mm long are 8 mm longer than usual for rail, 18 mm thick: "
        "32 mm (common practice, no source). They bite 23.3 mm, and leave 21.7 mm of wood over the point. → Use 32 "
        "mm pocket screws."
    ]
    assert assert_mends(text, RULE) == "pocket screws 32"


@pytest.mark.parametrize("board", ["1 3/8 x 5 1/2 pine", "1 3/4 x 5 1/2 pine"])
def test_stock_that_the_chart_does_not_list_is_left_alone(board: str) -> None:
    assert findings_of(pockets(board, "2"), RULE) == ()


def test_a_screw_that_also_comes_out_is_told_once() -> None:
    text = pockets(PINE, "2 1/2").replace("actual 1 1/2 x", "actual 3/4 x")
    assert findings_of(text, RULE) == ()
    assert len(findings_of(text, "screw-breaks-through")) == 1


def test_threads() -> None:
    assert told(pockets(PINE, "1 1/4", ", fine thread"), RULE) == [
        "warning rail @ pocket screws 1 1/4: The pocket screws in rail have a fine thread, and for ponderosa pine a "
        "coarse one is usual (common practice, no source): a fine thread strips soft wood and sheets. → Use pocket "
        "screws with a coarse thread."
    ]
    assert told(pockets(OAK, "1 1/4", ", coarse thread"), RULE) == [
        "warning rail @ pocket screws 1 1/4: The pocket screws in rail have a coarse thread, and for red oak a fine "
        "one is usual (common practice, no source): a coarse thread splits hard wood. → Use pocket screws with a "
        "fine thread."
    ]


@pytest.mark.parametrize(
    ("board", "thread"), [(PINE, ", coarse thread"), (OAK, ", fine thread"), (PINE, ""), (OAK, "")]
)
def test_the_right_thread_or_none_said(board: str, thread: str) -> None:
    assert findings_of(pockets(board, "1 1/4", thread), RULE) == ()


def test_a_sheet_takes_a_coarse_thread() -> None:
    text = pockets(PINE, "1 1/4", ", {} thread").replace(
        "stock board: actual 3/4 x 5 1/2 pine", "stock board: birch plywood 3/4"
    )
    text = text.replace("part rail: board, across, flat,", "part rail: board, flat, 5 1/2 deep,")
    text = text.replace("between post.left and post.right,", "between post.left and post.right across,")
    assert findings_of(text.format("coarse"), RULE) == ()
    (said,) = told(text.format("fine"), RULE)
    assert "for hardwood plywood a coarse one is usual" in said


def test_stock_too_thin_for_a_pocket_is_told_by_its_own_rule() -> None:
    assert findings_of(pockets("3/8 x 5 1/2 pine", "1"), RULE) == ()


def test_rails_of_two_thicknesses_in_one_join_get_no_edit() -> None:
    thicker = "part thicker: four-quarter, across, flat, between post.left and post.right, front at 0, bottom at 10\n        "
    text = pockets(PINE, "1 1/4").replace(
        "join rail to", f"stock four-quarter: actual 1 x 5 1/2 pine\n        {thicker}join rail, thicker to"
    )
    (finding,) = findings_of(text, RULE)
    assert (finding.parts, finding.edit) == (("thicker",), None)


def test_a_waiver() -> None:
    text = pockets(PINE, "1 1/2", tail='accept pocket-mismatch on rail because "the jig is set for them"')
    judged = judgement_of(text, only=RULE)
    assert (judged.findings, len(judged.waived)) == ((), 1)
