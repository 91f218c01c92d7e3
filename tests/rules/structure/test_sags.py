"""sags: what it says, where it begins to say it, and how the remedies do when they are tried."""

from __future__ import annotations

from textwrap import dedent

import pytest

from reviewer.findings import Severity
from reviewer.mechanics.beam import BeamResult
from reviewer.units import MM_PER_INCH
from tests.support import findings_of, judgement_of, review_of, told

RULE = "sags"


def shelf(width: str = "48", stock: str = "1x10 pine", load: str = "books", more: str = "") -> str:
    return dedent(f"""
        plan "Shelf" in inches
        stock board: {stock}
        outline case: {width} across, 9 1/4 deep, 13 tall, on floor
        part side for each of left, right: board, upright, facing side, rip 9 1/4, 12 tall, on floor
            flush with each of case, flush with front of case
        part shelf: board, across, flat, rip 9 1/4, on side.left, from left of case to right of case
            flush with front of case
        join shelf to side.*: screws #8 x 2, 3 per joint, from above
        load shelf: {load}
        room study: indoors
        {more}
        """)


def test_a_long_shelf_of_books() -> None:
    # By hand: 5·w·L⁴/(384·E·I) with ponderosa pine (E 1.29 million psi), I = 9.25·0.75³/12 = 0.3252 in⁴,
    # L 47.25 in, w = 2 · (25 lb/ft of books + 1.35 lb/ft of board) / 12: 0.68 in.
    assert told(shelf(), RULE) == [
        "error shelf @ books: shelf sags 0.679 in over a span of 47 1/4 in in the long run. The limit is "
        "0.197 in (the span divided by 240; common practice, no source), so that is 0.482 in too much. → "
        "Use stock 1 5/32 in thick or more (the next usual size is 2x10: then it sags 0.089 in), or put a "
        "support under the middle of the span: then it sags 0.018 in, or bring the supports to 31 1/4 in from "
        "each other: then it sags 0.13 in."
    ]


def test_the_working_can_be_done_again_by_hand() -> None:
    (finding,) = findings_of(shelf(), RULE)
    assert finding.working is not None
    figures = {figure.name: figure for figure in finding.working.figures}
    assert figures["span"].value.amount == pytest.approx(47.25 * MM_PER_INCH)  # type: ignore[union-attr]
    assert "books" in figures["load that stays"].source
    assert "Wood Handbook" in figures["stiffness E of ponderosa pine"].source
    assert figures["growth of a lasting sag over the years"].value.amount == 2.0  # type: ignore[union-attr]
    w = 2 * (figures["load that stays"].value.amount + figures["its own weight"].value.amount)  # type: ignore[union-attr]
    e = figures["stiffness E of ponderosa pine"].value.amount  # type: ignore[union-attr]
    b, h = (figures[name].value.amount for name in ("width b", "thickness h, as it bends"))  # type: ignore[union-attr]
    span = 47.25 * MM_PER_INCH
    assert finding.working.result is not None
    # The bearings are short of 1 1/2 in: their free ends take less than 1 in 1000 off.
    by_hand = 5 * w * span**4 / (384 * e * b * h**3 / 12)
    assert finding.working.result.value.amount == pytest.approx(by_hand, rel=0.002)  # type: ignore[union-attr]


def test_a_metric_shelf_of_sheet() -> None:
    text = """
        plan "Sheet shelf" in millimetres
        stock ply: birch plywood 12
        outline case: 900 across, 250 deep, 500 tall, on floor
        part side for each of left, right: ply, facing side, 250 deep, 500 tall, on floor
            flush with front of case, flush with each of case
        part shelf: ply, flat, between side.left and side.right across, 250 deep, flush with front of case
            3 copies spread evenly up from bottom of case to top of case
        join shelf.* to side.*: glue pva, screws 4 x 30, 3 per joint
        load shelf.2, shelf.3: 30 kg per metre
        """
    # Copies that the same words load alike are told once; shelf.1 lies on the floor.
    assert told(text, RULE) == [
        "error shelf.2, shelf.3 @ 30 kg per metre: shelf.2 and shelf.3 each sag 19.19 mm over a span of 876 mm "
        "in the long run. The limit is 3.65 mm (the span divided by 240; common practice, no source), so that "
        "is 15.54 mm too much. → Use stock 21.1 mm thick or more (then it sags 3.65 mm), or put a support under "
        "the middle of the span: then it sags 0.5 mm, or bring the supports to 503 mm from each other: then it "
        "sags 2.09 mm."
    ]


def test_an_overhang_counts_with_twice_its_length() -> None:
    text = """
        plan "Diving board" in millimetres
        stock board: actual 18 x 200 pine
        stock post: actual 45 x 200 pine
        part post.a: post, upright, facing side, 400 tall, on floor, front at 0, left at 0
        part post.b: post, upright, facing side, 400 tall, on floor, front at 0, left at 700
        part board: board, across, flat, on post.a, left at 0, front at 0, 1200 long
        join board to post.a, post.b: screws 5 x 60, 3 per joint
        load board: 60 kg
        """
    # 477.5 mm past the middle of the second post: 2 · 477.5 / 240 = 3.98 mm.
    assert told(text, RULE) == [
        "error board @ 60 kg: board sags 14.51 mm at the end of an overhang of 477.5 mm in the long run. The "
        "limit is 3.98 mm (twice the overhang divided by 240; common practice, no source), so that is 10.53 mm "
        "too much. → Use stock 27.9 mm thick or more (the stock post of this plan does: then it sags 0.97 mm), "
        "or put a support under its free end: then it sags 1.96 mm."
    ]


def test_the_stricter_limit_counts_and_says_who_set_it() -> None:
    assert told(shelf("28", more="limit sag-per-foot: 0.02"), RULE) == [
        "warning shelf @ books: shelf sags 0.075 in over a span of 27 1/4 in in the long run. The limit is "
        "0.045 in (0.02 in a foot of the span; set in this plan), so that is 0.03 in too much. → Use stock "
        "7/8 in thick or more (the next usual size is 5/4x10: then it sags 0.032 in), or put a support under the "
        "middle of the span: then it sags 0.002 in, or bring the supports to 23 in from each other: then it "
        "sags 0.038 in."
    ]
    assert told(shelf("28", more="limit sag-per-foot: 1/2"), RULE) == []


def test_a_rail_on_edge_is_made_higher_and_a_person_moves_to_the_weakest_place() -> None:
    text = """
        plan "Coat rail" in inches
        stock strip: 1x3 pine
        stock stud: 2x4 spruce-pine-fir
        outline frame: 72 across, 3 1/2 deep, 60 tall, on floor
        part post for each of left, right: stud, upright, facing side, as tall as frame, on floor
            flush with each of frame, flush with front of frame
        part rail: strip, across, on edge, between post.left and post.right, flush with top of frame
            centred deep on frame
        join rail to post.*: pocket screws 1 1/4, 2 per end
        load rail: 1 person leaning
        """
    assert told(text, RULE) == [
        "warning rail @ 1 person leaning: rail sags 0.422 in over a span of 69 in in the long run. The limit is "
        "0.287 in (the span divided by 240; common practice, no source), so that is 0.134 in too much. It is also "
        "bent to 1679 psi where ponderosa pine may bear 1567 psi (the mean at failure over 6; common practice, "
        "no source); what is told next is enough for both. → Use a "
        "board 2 7/8 in high or more (then it sags 0.279 in), or put a support under the middle of the span: "
        "then it sags 0.037 in, or bring the supports to 57 1/8 in from each other: then it sags 0.238 in."
    ]


def test_no_support_is_offered_that_would_not_do() -> None:
    (said,) = told(shelf(load="1 person standing"), RULE)
    assert said.endswith("→ Use stock 1 5/8 in thick or more (then it sags 0.162 in).")


# ---------------------------------------------------------------- at the limits


def share_of(text: str) -> float:
    """The sag of the shelf over what span / 240 allows."""
    member = review_of(text).carrying.members["shelf"]
    assert isinstance(member.sag, BeamResult)
    bay = max(member.sag.bays, key=lambda each: each.sag)
    return bay.sag / bay.length * 240


def weight_at(ratio_times: float) -> str:
    """The plan with the sag limit set so that the sag is so many times it."""
    ratio = 240 / share_of(shelf("36")) * ratio_times
    return shelf("36", more=f"limit sag-ratio: {ratio:.6f}")


@pytest.mark.parametrize(
    ("times", "weight"),
    [
        (0.79, None),
        (0.81, Severity.NOTE),
        (0.99, Severity.NOTE),
        (1.01, Severity.WARNING),
        (1.99, Severity.WARNING),
        (2.01, Severity.ERROR),
    ],
)
def test_near_at_and_past_the_limit(times: float, weight: Severity | None) -> None:
    found = findings_of(weight_at(times), RULE)
    assert [finding.weight for finding in found] == ([] if weight is None else [weight])


def test_near_the_limit_it_is_only_a_note() -> None:
    assert told(shelf("30"), RULE) == [
        "note shelf @ books: shelf sags 0.1 in over a span of 29 1/4 in in the long run. The limit is 0.122 in "
        "(the span divided by 240; common practice, no source), so only 0.022 in is left, and boards differ by "
        "more. → Choose the stiffest boards for shelf, or lay them so that a bow points up."
    ]


def test_a_limit_of_nothing_sets_none() -> None:
    assert told(shelf("36", more="limit sag-ratio: 0"), RULE) == []


# ---------------------------------------------------------------- remedies, waivers, near misses


@pytest.mark.parametrize("width", ["36", "40", "48"])
def test_the_thickness_that_is_named_does(width: str) -> None:
    (finding,) = findings_of(shelf(width), RULE)
    needed = finding.values["height"].amount / MM_PER_INCH  # type: ignore[union-attr]
    # 1/64 in either side of it, since the board of the tried plan bears on sides that are as thick.
    assert [f.weight for f in findings_of(_thick(width, needed + 1 / 64), RULE)] == [Severity.NOTE]
    assert [f.weight for f in findings_of(_thick(width, needed - 1 / 64), RULE)] == [Severity.WARNING]


def _thick(width: str, inches: float) -> str:
    """The shelf of another thickness on the same sides."""
    text = shelf(width).replace(
        "stock board:", f"stock thick: actual {inches:.5f} x 9 1/4 pine\nstock board:"
    )
    return text.replace("part shelf: board", "part shelf: thick")


def test_the_shorter_span_that_is_named_does_and_no_longer_one() -> None:
    (finding,) = findings_of(shelf("48"), RULE)
    span = finding.values["shorter"].amount / MM_PER_INCH  # type: ignore[union-attr]
    # By hand: with the load by the foot sag over span goes with the cube: 47.25 / (0.679 / 0.197)^(1/3) = 31.3.
    assert span == pytest.approx(31.25)
    # The span goes from middle to middle of the bearings, 3/4 in less than the case is wide.
    assert [f.weight for f in findings_of(shelf(f"{span + 0.75:g}"), RULE)] == [Severity.NOTE]
    assert [f.weight for f in findings_of(shelf(f"{span + 1:g}"), RULE)] == [Severity.WARNING]


def test_the_thicker_stock_of_the_plan_is_tried_and_does() -> None:
    text = shelf("48").replace("stock board:", "stock thick: actual 1 1/4 x 9 1/4 pine\nstock board:")
    (said,) = told(text, RULE)
    assert "(the stock thick of this plan does: then it sags 0.152 in)" in said
    assert [f.weight for f in findings_of(text.replace("part shelf: board", "part shelf: thick"), RULE)] == []


def test_a_support_in_the_middle_does() -> None:
    prop = "part prop: board, upright, facing side, rip 9 1/4, 12 tall, under shelf, centred across on case, front at 0"
    assert told(shelf("48", more=prop), RULE) == []


def test_a_stiffer_wood_or_a_lighter_load_is_enough() -> None:
    assert told(shelf("32", stock="actual 3/4 x 9 1/4 red oak"), RULE) == []
    assert told(shelf("36", load="ornaments"), RULE) == []


EDGED = """
    plan "Shelf with a strip" in inches
    stock board: 1x10 pine
    stock strip: actual 3/4 x 1 1/2 {wood}
    outline case: 36 across, 9 1/4 deep, 20 tall, on floor
    part side for each of left, right: board, upright, facing side, 20 tall, on floor
        flush with each of case, flush with front of case
    part shelf: board, across, flat, between side.left and side.right, housed 1/4 each end
        flush with front of case, bottom at 10
    join shelf to side.*: dado 1/4 deep, glue pva
    load shelf: books
    room study: indoors
    {strip}
    """
STRIP = """part strip: strip, across, on edge, between side.left and side.right, under shelf, flush with front of case
    join strip to shelf: glue pva
    {ends}"""


def test_a_dado_does_not_stiffen_a_shelf() -> None:
    # 36 less the sides is 34 1/2, and half of each dado: 34 3/4 in as a simple span.
    (said,) = told(EDGED.format(wood="pine", strip=""), RULE)
    assert said.startswith("warning shelf @ books: shelf sags 0.199 in over a span of 34 3/4 in")


def strip(ends: str) -> str:
    return STRIP.format(ends=ends)


@pytest.mark.parametrize(
    "ends", ["", "join strip to side.*: glue pva, screws #8 x 2, 1 per joint, from outside"]
)
@pytest.mark.parametrize("wood", ["pine", "red oak"])
def test_a_strip_under_the_edge_bends_with_the_shelf(wood: str, ends: str) -> None:
    # Side by side: I of 9 1/4 x 3/4 is 0.3252 in⁴, of the strip 3/4 x 1 1/2 0.2109 in⁴; oak is 1.82 / 1.29
    # times as stiff. The strip weighs a little too.
    found = review_of(EDGED.format(wood=wood, strip=strip(ends))).carrying.members["shelf"]
    bare = review_of(EDGED.format(wood=wood, strip="")).carrying.members["shelf"]
    assert isinstance(found.sag, BeamResult)
    assert isinstance(bare.sag, BeamResult)
    stiffer = 1 + 0.2109 / 0.3252 * (1.82 / 1.29 if wood == "red oak" else 1)
    sags = [max(bay.sag for bay in result.bays) for result in (bare.sag, found.sag)]
    assert sags[0] / sags[1] == pytest.approx(stiffer, rel=0.02)
    # 0.199 in comes down to 0.121 and 0.104 in, of 0.145 in allowed.
    weights = [each.weight for each in findings_of(EDGED.format(wood=wood, strip=strip(ends)), RULE)]
    assert weights == ([] if wood == "red oak" else [Severity.NOTE])


def test_a_cleat_on_the_wall_carries_a_shelf_all_along() -> None:
    text = EDGED.format(wood="pine", strip="").replace("outline case: 36", "outline case: 48")
    text = text.replace("9 1/4 deep, 20 tall, on floor", "9 1/4 deep, 20 tall, on floor, against wall")
    assert told(text, RULE) != []
    cleat = """part cleat: strip, across, on edge, between side.left and side.right, under shelf, against wall
    join cleat to wall: screws #10 x 3, every 16
    join cleat to shelf: screws #8 x 1 1/4, every 8"""
    text = text.replace("    room study: indoors", "    room study: indoors, wall behind\n    " + cleat)
    assert told(text, RULE) == []


def test_a_waiver_is_kept_with_its_reason() -> None:
    judged = judgement_of(shelf("36", more='accept sags on shelf because "paperbacks only"'), only=RULE)
    assert judged.findings == ()
    (waived,) = judged.waived
    assert (waived.parts, waived.waived_because) == (("shelf",), "paperbacks only")


def test_an_inch_plan_and_its_metric_twin_agree() -> None:
    metric = """
        plan "Shelf" in millimetres
        stock board: actual 19.05 x 234.95 pine
        outline case: 1219.2 across, 234.95 deep, 330.2 tall, on floor
        part side for each of left, right: board, upright, facing side, 304.8 tall, on floor
            flush with each of case, flush with front of case
        part shelf: board, across, flat, on side.left, from left of case to right of case
            flush with front of case
        join shelf to side.*: screws #8 x 50.8, 3 per joint, from above
        load shelf: books
        room study: indoors
        """
    (inch,) = findings_of(shelf(), RULE)
    (twin,) = findings_of(metric, RULE)
    assert twin.weight is inch.weight
    assert twin.values["sag"].amount == pytest.approx(inch.values["sag"].amount, rel=1e-9)  # type: ignore[union-attr]
