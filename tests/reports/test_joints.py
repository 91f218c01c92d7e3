"""The list of joints, and the fasteners to buy, in words."""

from __future__ import annotations

import json

import pytest

from reviewer.reports.content import Hardware, JointRow, Report
from reviewer.reports.gathering import report_of
from reviewer.reports.html import render_html
from reviewer.reports.json_report import render_json
from reviewer.reports.terminal import render_terminal
from tests.support import look_at

CASE = """
plan "Case" in inches
stock board: actual 3/4 x 11 1/4 red oak
outline case: 30 across, 11 1/4 deep, 36 tall, on floor
part side for each of left, right: board, upright, facing side, 36 tall, on floor
    front at 0, flush with each of case
part shelf: board, across, flat, between side.left and side.right, housed 1/4 each end
    front at 0, bottom 12 above floor
part top: board, across, flat, from left of case to right of case, front at 0, on side.left
"""


def report(how: str, top: str = "clips, 2 per joint") -> Report:
    found = look_at(
        CASE + f"join shelf to side.left,\n  side.right: {how}\njoin top to side.*: {top}\n", only="tips"
    )
    assert found.review is not None, found.problems
    return report_of(found.source, found.problems, found.review, found.judgement)


@pytest.mark.parametrize(
    ("how", "row"),
    [
        # 11 1/4 × (3/4 + 2 × 1/4) sq in twice, at 128 fl oz for 200 sq ft: 0.125 fl oz.
        (
            "dado 1/4 deep, glue pva",
            ("dado, 1/4 in deep", "", "PVA, yellow (aliphatic), interior, about 0.13 fl oz"),
        ),
        (
            "mortise and tenon 1/4 long 3/8 thick, wedges, 1 per joint",
            ("mortise and tenon, 1/4 in long, 3/8 in thick", "2 wedges", ""),
        ),
        ("butt, glue pva", ("butt joint", "", "PVA, yellow (aliphatic), interior, about 0.075 fl oz")),
        (
            "screws #8 x 2, 3 per end, brass, loose tenons 1/4 x 3/4 x 1 1/2",
            ("", "6 screws #8 × 2 in, brass; 4 loose tenons 1/4 in × 3/4 in × 1 1/2 in", ""),
        ),
        ('none because "it lifts out"', ("not fastened: “it lifts out”", "", "")),
    ],
)
def test_a_join_in_words(how: str, row: tuple[str, str, str]) -> None:
    made = report(how).joints
    assert made[0] == JointRow("shelf to side.left, side.right", *row, joints=2)
    assert made[1] == JointRow("top to side.*", "face to end", "4 clips", "", 2)


def test_what_is_bought_says_what_is_spare() -> None:
    buying = report("screws #8 x 2, 7 per end, loose tenons 1/4 x 3/4 x 1 1/2, 1 per joint").buying
    assert buying is not None
    assert buying.hardware == (
        Hardware(20, "screws #8 × 2 in", "14 in 2 joints, the rest spare; in boxes as usual: 1 of 50"),
        Hardware(2, "loose tenons 1/4 in × 3/4 in × 1 1/2 in", "in 2 joints"),
        Hardware(4, "clips", "in 2 joints"),
    )


def test_the_page_and_the_document_have_them() -> None:
    made = report("bridle, glue pva")
    page = render_html([made])
    assert '-joints">Joints</a>' in page
    assert "<td>bridle</td><td>none</td><td>PVA, yellow (aliphatic), interior, a few drops</td>" in page
    assert json.loads(render_json([made]))["plans"][0]["joints"][0] == {
        "parts": "shelf to side.left, side.right",
        "how": "bridle",
        "fasteners": "",
        "glue": "PVA, yellow (aliphatic), interior, a few drops",
        "joints": 2,
    }


def test_parts_that_meet_in_several_ways_have_no_one_word() -> None:
    # The top lies on the ends of both sides with its face; on the shelf's face it would be face to face.
    text = CASE.replace("housed 1/4 each end", "less 0").replace(
        "bottom 12 above floor", "top 36 above floor"
    )
    found = look_at(text + "join top to side.*, shelf: glue pva\n", only="tips")
    assert found.review is not None, found.problems
    (row,) = report_of(found.source, found.problems, found.review, found.judgement).joints
    assert (row.how, row.joints) == ("", 3)
    assert "<td>in several ways</td>" in render_html(
        [report_of(found.source, found.problems, found.review, found.judgement)]
    )


def test_the_full_review_in_the_terminal_lists_them() -> None:
    made = report("dado 1/4 deep, glue pva")
    said = " ".join(render_terminal([made], full=True).split())
    assert (
        "What the joints take - shelf to side.left, side.right (2 joints): dado, 1/4 in deep; PVA, yellow "
        "(aliphatic), interior, about 0.13 fl oz - top to side.* (2 joints): face to end; 4 clips" in said
    )
    assert (
        "- PVA, yellow (aliphatic), interior, about 0.13 fl oz: 0.195 sq ft of glue line in 2 joints; 1 fl oz "
        "covers 1.56 sq ft at the least (common practice, no source)" in said
    )
    assert "What the joints take" not in render_terminal([made])


def test_glue_of_no_known_spread_is_left_to_its_label() -> None:
    buying = report("dado 1/4 deep, glue slow epoxy").buying
    assert buying is not None
    assert buying.hardware[-1] == Hardware(
        None,
        "Epoxy, slow (structural or marine)",
        "0.195 sq ft of glue line in 2 joints; how far it goes the label says",
    )
