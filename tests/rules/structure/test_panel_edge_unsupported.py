"""panel-edge-unsupported: the front of a sheet that is held behind."""

from __future__ import annotations

from reviewer.units import MM_PER_INCH, NEWTON_PER_POUND
from tests.support import findings_of, review_of, told

RULE = "panel-edge-unsupported"


def shelf(width: float = 48, stock: str = "birch plywood 1/2", more: str = "") -> str:
    return f"""
        plan "Alcove" in inches
        stock ply: birch plywood 1/2
        stock board: {stock}
        stock strip: 1x2 pine
        outline alcove: {width} across, 12 deep, 30 tall, on floor, against wall
        part side for each of left, right: ply, upright, facing side, as tall as alcove, 12 deep, on floor
            flush with each of alcove, flush with front of alcove
        part cleat: strip, across, on edge, between side.left and side.right, against wall, bottom at 20
        part shelf: board, across, flat, between side.left and side.right, on cleat, 12 deep
            flush with front of alcove
        join shelf to side.*: glue pva, screws #6 x 1 1/4, 3 per joint, from outside
        join shelf to cleat: glue pva
        join cleat to wall: screws #10 x 3, every 16
        {more}
        load shelf: books
        room hall: indoors, wall behind
        """


def test_the_drop_by_hand() -> None:
    # 47 1/16 in between the sides; 12 in deep less the cleat's 3/4: 11 1/4 in free. A strip 12 in wide carries
    # 25 lb/ft and its own weight, grown by creep; a shallow shelf drops in proportion of depth over gap.
    (finding,) = findings_of(shelf(), RULE)
    review = review_of(shelf())
    member = review.carrying.members["shelf"]
    gap, depth = 48 - 2 * 15 / 32, 11.25
    load = member.creep * (25 / 12 + review.masses["shelf"].weight / NEWTON_PER_POUND / gap)
    modulus = member.modulus / 0.00689475729
    inertia = 12 * (member.height / MM_PER_INCH) ** 3 / 12
    by_hand = 5 * load * gap**4 / (384 * modulus * inertia) * depth / gap
    assert abs(finding.values["sag"].amount / MM_PER_INCH / by_hand - 1) < 0.002  # type: ignore[union-attr]


def test_sags_does_not_see_it_and_this_does() -> None:
    assert told(shelf(), "sags") == []
    (said,) = told(shelf(), RULE)
    assert said.startswith(
        "warning shelf @ shelf: shelf has nothing under its front edge over 47 1/16 in: it drops 0.646 in there in "
        "the long run while the other edge is held. The limit is 0.196 in (the span divided by 240; common "
        "practice, no source), so that is 0.45 in too much."
    )


def test_a_short_or_a_thick_shelf_is_quiet() -> None:
    assert told(shelf(24), RULE) == []
    assert told(shelf(40, "birch plywood 3/4"), RULE) == []


def test_a_strip_under_the_front_edge_holds_it() -> None:
    strip = """part lip: strip, across, on edge, between side.left and side.right, under shelf
            flush with front of alcove
        join lip to shelf: glue pva
        join lip to side.*: screws #8 x 2, 1 per joint, from outside"""
    assert told(shelf(more=strip), RULE) == []


def test_a_leg_under_the_middle_of_the_edge_does_what_was_told() -> None:
    leg = """part prop: strip, upright, facing front, 20 tall, on floor, centred across on alcove
            flush with front of alcove
        join prop to shelf: screws #8 x 2, 1 per joint, from above"""
    text = shelf(more=leg.replace("20 tall", "from top of floor to bottom of shelf"))
    assert told(text, RULE) == []


def test_solid_boards_and_no_limit_are_left_alone() -> None:
    assert told(shelf(stock="actual 1/2 x 12 pine"), RULE) == []
    assert told(shelf(more="limit sag-ratio: 0"), RULE) == []
