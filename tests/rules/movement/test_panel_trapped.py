"""panel-trapped: what a panel grows by hand, the room its grooves leave, and who tells of glue."""

from __future__ import annotations

import pytest

from reviewer.findings import Severity
from reviewer.units import MM_PER_INCH
from tests.rules.mending import assert_mends
from tests.support import findings_of, told

RULE = "panel-trapped"


def side(
    wood: str = "red oak",
    housed: str = "1/4",
    groove: str = "groove 1/4 deep",
    room: str = "parlour: indoors",
    rails: str = "actual 3/4 x 3 red oak",
    low: str = "15 3/4",
    more: str = "",
) -> str:
    """A panel with its grain across, between two rails 12 3/4 in apart: 13 1/4 in wide in 1/4 in grooves."""
    return f"""
        plan "Chest side" in inches
        stock post: actual 1 3/4 x 1 3/4 red oak
        stock rail: {rails}
        stock board: actual 3/8 x 14 {wood}
        outline frame: 24 across, 1 3/4 deep, 20 tall, on floor
        part post for each of left, right: post, upright, as tall as frame, on floor, flush with each of frame
            front at 0
        part rail.top: rail, across, on edge, between post.left and post.right, housed 3/4 each end
            flush with top of frame, front at 1/2
        part rail.low: like rail.top, top {low} below top of frame
        part panel: board, across, on edge, between post.left and post.right across, housed 1/4 each end
            between rail.low and rail.top up, housed {housed} each end, rip to fit, centred deep on rail.top
        join rail.* to post.*: mortise and tenon 3/4 long, glue pva
        join panel to post.*, rail.*: {groove}
        room {room}
        {more}
        """


def test_a_panel_at_the_bottom_of_its_grooves() -> None:
    # 13 1/4 in of red oak, bought at 8 % (Wood Handbook ch. 13), 10 % in summer: 13.25 · 0.00369 · 2 = 0.0978 in.
    # Put together at 6 % it is 0.1956 in, so 0.098 for each groove: with 1/4 in the next sixteenth is 3/8 in.
    assert told(side(), RULE) == [
        "warning panel @ groove 1/4 deep: panel has too little room to swell. Over 13 1/4 in across the grain red "
        "oak grows 0.098 in from 8 % of moisture to 10 % in the humid season; the room is none in the groove of "
        "rail.low and none in the groove of rail.top, so 0.098 in too little. → Cut both grooves 3/8 in deep and "
        "leave the panel as it is: that is 1/4 in of room for the 0.196 in that it grows from 6 %, the dry end of the "
        "year."
    ]
    assert assert_mends(side(), RULE) == "groove 3/8 deep"


def test_the_working_can_be_done_again_by_hand() -> None:
    (finding,) = findings_of(side(), RULE)
    assert finding.working is not None
    width, per_percent, start, humid = (figure.value.amount for figure in finding.working.figures)  # type: ignore[union-attr]
    assert (width / MM_PER_INCH, per_percent, start, humid) == (pytest.approx(13.25), 0.00369, 8, 10)
    assert finding.working.result is not None
    assert finding.working.result.value.amount == pytest.approx(width * per_percent * 2)  # type: ignore[union-attr]
    assert finding.working.limit is not None
    assert finding.working.limit.value.amount == pytest.approx(0, abs=1e-6)  # type: ignore[union-attr]
    assert "Wood Handbook" in finding.working.figures[1].source


@pytest.mark.parametrize(
    ("housed", "weight"),
    [
        ("1/4", Severity.WARNING),
        ("7/32", Severity.WARNING),  # 1/16 in for 0.097
        ("13/64", Severity.NOTE),  # 3/32 in for 0.097: no tape shows so little
        ("3/16", Severity.NOTE),  # 1/8 in for 0.097, but 0.194 when put together at 6 %
        ("1/8", None),  # 1/4 in
    ],
)
def test_room_is_depth_less_what_goes_in(housed: str, weight: Severity | None) -> None:
    found = findings_of(side(housed=housed), RULE)
    assert [finding.weight for finding in found] == ([] if weight is None else [weight])


def test_put_together_at_the_dry_end_of_the_year_is_a_note() -> None:
    # 13 1/8 in from 6 to 10 %: 13.125 · 0.00369 · 4 = 0.1937 in against 1/8 in.
    (said,) = told(side(housed="3/16"), RULE)
    assert said.startswith(
        "note panel @ groove 1/4 deep: Put together at the dry end of the year, panel has too little room to swell. "
        "Over 13 1/8 in across the grain red oak grows 0.194 in from 6 % of moisture to 10 %"
    )
    # The plan says how moist it is: then nothing is guessed.
    assert told(side(wood="red oak, moisture 9 %", housed="3/16"), RULE) == []


def test_wood_wet_from_the_yard_has_settled_first() -> None:
    # 19 % at the yard counts as 8 % in the room: 13.25 · 0.00274 · 2 = 0.0726 in for spruce-pine-fir.
    (finding,) = findings_of(side(wood="spruce-pine-fir, moisture 19 %"), RULE)
    assert finding.values["growth"].amount / MM_PER_INCH == pytest.approx(13.25 * 0.00274 * 2, rel=0.01)  # type: ignore[union-attr]


def test_kiln_dried_wood_outdoors_grows_by_eight_points() -> None:
    # Equation 13-3, S 8.6 %: 13.25 · 8 / (30·100/8.6 - 30 + 8) = 0.324 in.
    text = side(room="porch: outdoors", housed="1/8")
    (finding,) = findings_of(text, RULE)
    wide = 13.0
    assert finding.values["growth"].amount / MM_PER_INCH == pytest.approx(
        wide * 8 / (3000 / 8.6 - 22), rel=1e-6
    )  # type: ignore[union-attr]
    # Wood as wet as the yard sells it only shrinks from there.
    assert findings_of(side(wood="red oak, moisture 19 %", room="porch: outdoors"), RULE) == ()
    assert findings_of(side(room="shed: indoors, unheated", housed="1/8"), RULE) != ()


def test_quarter_sawn_and_sheet_panels() -> None:
    # 13 3/16 · 0.00158 · 2 = 0.042 in against 1/16 in.
    assert findings_of(side(wood="red oak, quarter sawn", housed="7/32"), RULE)[0].weight is Severity.NOTE
    assert findings_of(side(wood="red oak, quarter sawn, moisture 8 %", housed="7/32"), RULE) == ()
    ply = (
        side()
        .replace("actual 3/8 x 14 red oak", "birch plywood 3/8")
        .replace("board, across, on edge", "board, facing front")
    )
    assert findings_of(ply.replace(" rip to fit,", ""), RULE) == ()


def test_a_rail_too_thin_for_a_deeper_groove() -> None:
    # The groove may take half of 1/2 in; 15 3/4 in come to 0.2325 in over the year: a quarter less, so 15 1/2 in.
    (said,) = told(side(rails="actual 1/2 x 1/2 red oak", groove="groove 1/4 deep"), RULE)
    assert "→ Make it 15 1/2 in wide: that leaves 1/4 in of room for the 0.232 in" in said


def test_a_panel_against_something_has_room_on_one_side_only() -> None:
    text = """
        plan "Drawer bottom" in inches
        stock box: actual 1/2 x 5 red oak
        stock thin: actual 1/4 x 15 red oak
        outline tray: 16 across, 15 deep, 5 tall, on floor
        part side for each of left, right: box, deep, on edge, 15 long, flush with each of tray, on floor, front at 0
        part end for each of front, back: box, across, on edge, between side.left and side.right
            flush with each of tray, on floor
        part bottom: thin, across, flat, between side.left and side.right across, housed 1/4 each end
            from back of end.front to {back}, front 1/4 in front of back of end.front, rip to fit, bottom at 1/2
        join end.* to side.*: dowels 5/16 x 1 1/2, 3 per joint, glue pva
        join bottom to side.*, end.front: groove 1/4 deep
        room hall: indoors
        """
    trapped = text.replace(
        "from back of end.front to {back}, front 1/4 in front of back of end.front, rip to fit",
        "back 0 in front of front of end.back, front 1/4 in front of back of end.front, rip to fit",
    )
    (said,) = told(trapped, RULE)
    assert "the room is none in the groove of end.front and none against end.back" in said
    assert "Cut the groove" in said or "wide: that leaves" in said
    free = text.replace(
        "from back of end.front to {back}, front 1/4 in front of back of end.front, rip to fit",
        "back 1/8 in front of front of end.back, front 1/4 in front of back of end.front, rip to fit",
    )
    assert findings_of(free, RULE) == ()


def test_glue_in_the_grooves() -> None:
    # The whole swing: 13 · 0.00369 · 4 = 0.1919 in against 1/32 in of glue.
    text = side(housed="1/8", groove="groove 1/4 deep, glue pva")
    assert told(text, RULE) == [
        "warning panel @ glue pva: panel is glued into the grooves of rail.low, rail.top, post.left and post.right. Over 13 in across "
        "the grain red oak moves 0.192 in over a year (from 6 % to 10 % of moisture); glue across the grain gives "
        "1/32 in (common practice, no source), so 0.161 in too little. → Leave the glue out of the grooves, so that "
        "the panel slides in them; a dab at the middle of each end is enough. The grooves then have 1/4 in of room "
        "for the 0.096 in that it grows."
    ]
    assert assert_mends(text, RULE) == "no glue"
    # One fault is told once.
    assert findings_of(text, "movement-locked") == ()


def test_glue_without_room_asks_for_both() -> None:
    (said,) = told(side(groove="groove 1/4 deep, glue pva"), RULE)
    assert said.endswith("The grooves must be deeper too: they lack 0.098 in of what it grows.")
    assert findings_of(side(groove="groove 1/4 deep, glue pva"), RULE)[0].edit is None


def test_glued_at_one_edge_it_moves_at_the_other() -> None:
    split = side(housed="1/8").replace(
        "join panel to post.*, rail.*: groove 1/4 deep",
        "join panel to post.*, rail.top: groove 1/4 deep\n        join panel to rail.low: groove {}, glue pva",
    )
    # 1/8 in in the groove of the top rail for 0.096 in: enough, but not from the dry end of the year.
    assert [f.weight for f in findings_of(split.format("1/4 deep"), RULE)] == [Severity.NOTE]
    assert "none in the glued groove of rail.low" in told(split.format("1/4 deep"), RULE)[0]


def test_narrow_panels_may_be_glued() -> None:
    # 2 3/4 + 1 1/4 = 4 in.
    assert findings_of(side(housed="1/8", low="6 3/4", groove="groove 1/4 deep, glue pva"), RULE) == ()


def test_copies_are_told_once() -> None:
    text = """
        plan "Two trays" in millimetres
        stock box: actual 12 x 120 red oak
        stock thin: actual 8 x 400 red oak
        assembly tray: 400 across, 380 deep, 120 tall, left at 0, front at 0, 2 copies every 200 up, bottom at 0
            part side for each of left, right: box, deep, on edge, 380 long, flush with each of tray
                flush with bottom of tray, flush with front of tray
            part end for each of front, back: box, across, on edge, between side.left and side.right
                flush with each of tray, flush with bottom of tray
            part floor: thin, across, flat, between side.left and side.right, housed 6 each end
                between end.front and end.back deep, housed 6 each end, rip to fit, bottom 10 above bottom of tray
            join end.* to side.*: dowels 8 x 40, 3 per joint, glue pva
            join floor to side.*, end.*: groove 6 deep
        room hall: indoors
        """
    # 368 mm: 368 · 0.00369 · 2 = 2.72 mm; half of the 12 mm of the ends is all that a groove may take, and 6 mm is
    # that: so narrower by the 5.43 mm of the whole year, in full millimetres.
    assert told(text, RULE) == [
        "warning tray.1.floor, tray.2.floor @ groove 6 deep: tray.1.floor and tray.2.floor have too little room to "
        "swell. Over 368 mm across the grain red oak grows 2.72 mm from 8 % of moisture to 10 % in the humid season; "
        "the room is none in the groove of tray.1.end.front and none in the groove of tray.1.end.back, so 2.72 mm "
        "too little. → Make it 362 mm wide: that leaves 6 mm of room for the 5.43 mm that it grows from 6 %, the dry "
        "end of the year."
    ]


def test_the_plan_can_set_the_season() -> None:
    assert (
        findings_of(side(more="limit moisture-season-high: 8\n        limit moisture-season-low: 7"), RULE)[
            0
        ].weight
        is Severity.NOTE
    )
    assert (
        findings_of(side(more="limit moisture-season-high: 8\n        limit moisture-season-low: 8"), RULE)
        == ()
    )


def test_wood_that_only_shrinks_traps_nothing() -> None:
    # A season that runs backwards, by the plan's own word.
    assert (
        findings_of(side(more="limit moisture-season-high: 7\n        limit moisture-season-low: 12"), RULE)
        == ()
    )
