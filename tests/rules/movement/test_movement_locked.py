"""movement-locked: how far wood moves by hand, what fixings give, and what the trade leaves alone."""

from __future__ import annotations

import pytest

from reviewer.findings import Severity
from reviewer.units import MM_PER_INCH
from tests.rules.mending import assert_mends
from tests.rules.sound_pieces import BENCH
from tests.support import findings_of, judgement_of, told

RULE = "movement-locked"
SCREWS = "screws #8 x 1 1/4, 3 per joint, from below, counterbored 2 3/4"


def table(
    wood: str = "red oak",
    wide: str = "20",
    deep: str = "18",
    how: str = SCREWS,
    room: str = "parlour: indoors",
    more: str = "",
) -> str:
    """A solid top on a frame of aprons."""
    return f"""
        plan "Table" in inches
        stock strip: actual 3/4 x 3 1/2 {wood}
        stock panel: actual 3/4 x {wide} {wood}
        stock post: actual 1 1/2 x 1 1/2 {wood}
        outline frame: 30 across, {deep} deep, 29 tall, on floor
        part leg: post, upright, as tall as frame, in each corner of frame
        part apron for each of front, back: strip, across, on edge, between leg.each-left and leg.each-right
            flush with top of frame, flush with each of leg.each-left
        part end for each of left, right: strip, deep, on edge, between leg.front-each and leg.back-each
            flush with top of frame, flush with each of leg.front-each
        part top: panel, across, flat, on frame, from left of frame to right of frame, centred deep on frame
        join apron.*, end.* to leg.*: pocket screws 1 1/4, 2 per end, glue pva
        join top to apron.*, end.*: {how}
        room {room}
        {more}
        """


def test_a_wide_top_screwed_down() -> None:
    # 18 in less half of both aprons is 17 1/4; red oak 0.00369 per point (Wood Handbook Table 13-5) and four
    # points: 0.255 in, more than slots give.
    assert told(table(), RULE) == [
        "error top @ screws #8 x 1 1/4: top is held over 17 1/4 in across the grain by apron.front, apron.back, "
        "end.left and end.right. Over that red oak moves 0.255 in over a year (from 6 % to 10 % of moisture); "
        "screws in round holes give 1/16 in (common practice, no source), so 0.192 in too little. → Slot the holes "
        "across the grain, or use clips. Each edge then moves 0.127 in, and a slot gives 1/4 in. One row along the "
        "middle may stay fixed."
    ]


def test_a_narrower_top_needs_slots() -> None:
    text = table(wide="12", deep="10")
    assert told(text, RULE) == [
        "warning top @ screws #8 x 1 1/4: top is held over 9 1/4 in across the grain by apron.front, apron.back, "
        "end.left and end.right. Over that red oak moves 0.137 in over a year (from 6 % to 10 % of moisture); "
        "screws in round holes give 1/16 in (common practice, no source), so 0.074 in too little. → Slot the holes "
        "across the grain, or use clips. Each edge then moves 0.068 in, and a slot gives 1/4 in. One row along the "
        "middle may stay fixed."
    ]
    assert assert_mends(text, RULE) == "screws #8 x 1 1/4, slotted"


def test_the_working_can_be_done_again_by_hand() -> None:
    (finding,) = findings_of(table(), RULE)
    assert finding.working is not None
    width, coefficient, dry, humid = (figure.value.amount for figure in finding.working.figures)  # type: ignore[union-attr]
    assert (width / MM_PER_INCH, coefficient, dry, humid) == (pytest.approx(17.25), 0.00369, 6, 10)
    assert finding.working.formula == "change = width × change per percent × (humid - dry)"
    assert finding.working.result is not None
    assert finding.working.result.value.amount == pytest.approx(width * coefficient * 4)  # type: ignore[union-attr]
    assert "Wood Handbook" in finding.working.figures[1].source


def test_outdoors_the_whole_shrinkage_is_used() -> None:
    # 8 to 16 % is outside the range of the coefficient: 7.8 % green to dry for spruce-pine-fir, equation 13-3:
    # 9.25 · 8 / (30·100/7.8 - 30 + 8) = 0.2041 in.
    text = table(wood="spruce-pine-fir", wide="12", deep="10", room="porch: outdoors")
    (finding,) = findings_of(text, RULE)
    assert finding.values["change"].amount / MM_PER_INCH == pytest.approx(  # type: ignore[union-attr]
        9.25 * 8 / (3000 / 7.8 - 22), rel=1e-6
    )
    assert finding.working is not None
    assert finding.working.formula.startswith("change = width × (humid - dry) / (30 · 100 / S")


def test_wood_wet_from_the_yard_is_said_apart() -> None:
    # 19 % at the yard, 8 % in the room: by equation 13-3 from the width as bought: 9.25 · 11 / (30·100/7.8 - 30 + 19) = 0.272 in.
    (said,) = told(table(wood="spruce-pine-fir", wide="12", deep="10"), RULE)
    assert "Before that it shrinks 0.272 in once, as it dries from 19 % at the yard to 8 %." in said
    dry = table(wood="spruce-pine-fir, moisture 9 %", wide="12", deep="10")
    assert "Before that" not in told(dry, RULE)[0]


def test_glue_across_the_grain() -> None:
    assert told(table(how="glue pva"), RULE) == [
        "error top @ glue pva: top is held over 17 1/4 in across the grain by apron.front, apron.back, end.left and "
        "end.right. Over that red oak moves 0.255 in over a year (from 6 % to 10 % of moisture); glue across the "
        "grain gives 1/32 in (common practice, no source), so 0.223 in too little. → Glue it over 4 in at most, "
        "at one edge or in the middle, and let the rest slide: 4 in of it moves 0.059 in. Or use a sheet for one of the two."
    ]


def test_a_top_too_wide_even_for_slots_at_both_edges() -> None:
    # 41 1/4 · 0.00431 · 4 = 0.711 in for beech: 0.356 in at each edge.
    (said,) = told(table(wood="american beech", wide="44", deep="42", how=f"{SCREWS}, slotted"), RULE)
    assert "as far as 20 5/8 in across the grain from the middle" in said
    assert "moves 0.356 in" in said
    assert said.endswith(
        "→ Use clips there: they slide as far as it needs. Or make it of boards with gaps between them, each held "
        "over 29 in at most in slots."
    )


def test_clips_mend_what_slots_do_not() -> None:
    text = table(wood="american beech", wide="44", deep="42", how=f"{SCREWS}, slotted").replace(
        ", 3 per joint, from below, counterbored 2 3/4, slotted", ""
    )
    assert assert_mends(text.replace("screws #8 x 1 1/4", "screws #8 x 1 1/4, slotted"), RULE) == "clips"


def test_glue_with_slotted_screws_is_still_glue() -> None:
    (said,) = told(table(how=f"{SCREWS}, slotted, glue pva"), RULE)
    assert "glue across the grain gives 1/32 in" in said


@pytest.mark.parametrize(
    ("wood", "weight"),
    [
        ("black cherry", None),  # 38 1/4 / 2 · 0.00248 · 4 = 0.190 in at each edge
        ("red oak", Severity.ERROR),  # 0.282 in by 0.00369
        ("american beech", Severity.ERROR),  # 0.330 in by 0.00431: more than slots give
    ],
)
def test_a_slot_at_each_edge_gives_a_quarter_of_an_inch(wood: str, weight: Severity | None) -> None:
    found = findings_of(table(wood=wood, wide="41", deep="39", how=f"{SCREWS}, slotted"), RULE)
    assert [finding.weight for finding in found] == ([] if weight is None else [weight])


def test_one_edge_fixed_and_the_other_slotted() -> None:
    # What one side may not do, the other does: the whole width lies between them.
    text = table(wide="12", deep="10").replace(
        f"join top to apron.*, end.*: {SCREWS}",
        f"join top to apron.front: {SCREWS}\n        join top to apron.back, end.*: {SCREWS}, slotted",
    )
    assert findings_of(text, RULE) == ()


def test_quarter_sawn_wood_moves_less() -> None:
    # 9 1/4 · 0.00158 · 4 = 0.058 in, less than 1/16.
    assert findings_of(table(wood="red oak, quarter sawn", wide="12", deep="10"), RULE) == ()


def test_a_top_that_runs_the_other_way() -> None:
    # Its width lies across now, as that of the square posts does; they are too narrow to give way.
    text = """
        plan "Table" in inches
        stock strip: actual 3/4 x 3 1/2 red oak
        stock panel: actual 3/4 x 20 red oak
        stock post: actual 1 1/2 x 1 1/2 red oak
        outline frame: 18 across, 30 deep, 29 tall, on floor
        part leg: post, upright, as tall as frame, in each corner of frame
        part apron for each of front, back: strip, across, on edge, between leg.each-left and leg.each-right
            flush with top of frame, flush with each of leg.each-left
        part end for each of left, right: strip, deep, on edge, between leg.front-each and leg.back-each
            flush with top of frame, flush with each of leg.front-each
        part top: panel, deep, flat, on frame, from front of frame to back of frame, centred across on frame
        join apron.*, end.* to leg.*: pocket screws 1 1/4, 2 per end, glue pva
        join top to end.*: screws #8 x 1 1/4, 3 per joint, from below, counterbored 2 3/4
        """
    (finding,) = findings_of(text, RULE)
    assert finding.values["width"].amount / MM_PER_INCH == pytest.approx(17.25)  # type: ignore[union-attr]


# ---------------------------------------------------------------- planks and rails


def planks(
    plank: str, deep: str, count: int = 2, gap: str = "1/8", more: str = "", room: str = "indoors"
) -> str:
    """Planks across two rails, two screws to each."""
    return f"""
        plan "Planks" in inches
        stock plank: {plank} spruce-pine-fir
        stock stud: 2x4 spruce-pine-fir
        outline frame: 48 across, {deep} deep, 16 tall, on floor
        part leg: stud, upright, facing front, as tall as frame, in each corner of frame
        part rail for each of left, right: stud, deep, on edge, between leg.front-each and leg.back-each
            flush with top of frame, flush with each of leg.front-each
        part seat: plank, across, flat, on frame, from left of frame to right of frame, past 2 each end
            {count} copies side by side deep, gap {gap}, row centred on frame
        join rail.* to leg.*: pocket screws 2 1/2, 2 per end, glue pva
        join seat.* to rail.*: screws #8 x 2 1/2, 2 per joint, from below, counterbored 2
        room hall: {room}
        {more}
        """


@pytest.mark.parametrize(
    ("plank", "deep", "count", "room"),
    [
        ("2x8", "14 1/2", 2, "indoors"),
        ("2x8", "14 1/2", 2, "outdoors"),
        ("5/4x6", "17", 3, "outdoors"),  # a deck
        ("2x6", "17", 3, "outdoors"),
    ],
)
def test_planks_with_gaps_are_judged_each_by_its_own_screws(
    plank: str, deep: str, count: int, room: str
) -> None:
    assert findings_of(planks(plank, deep, count, room=room), RULE) == ()


def test_wide_planks() -> None:
    # The patch on the rail is 9 11/16 in (11 1/4 less what lies on the legs); less five diameters of a #8 at
    # each end 8 1/16: 8.05 · 0.00274 · 4 = 0.088 in.
    assert told(planks("2x12", "22 1/2"), RULE) == [
        "warning seat.1, seat.2 @ screws #8 x 2 1/2: seat.1 and seat.2 are held over 8 1/16 in across the grain by "
        "rail.left and rail.right. Over that spruce-pine-fir moves 0.088 in over a year (from 6 % to 10 % of "
        "moisture); screws in round holes give 1/16 in (common practice, no source), so 0.026 in too little. Before "
        "that it shrinks 0.237 in once, as it dries from 19 % at the yard to 8 %. → Slot the holes across the grain, "
        "or use clips. Each edge then moves 0.044 in, and a slot gives 1/4 in. One row along the middle may stay fixed."
    ]


def test_planks_glued_edge_to_edge_move_as_one() -> None:
    text = planks("2x8", "14 1/2", gap="0", more="join seat.1 to seat.2: glue pva, biscuits")
    (finding,) = findings_of(text, RULE)
    assert finding.parts == ("seat.1", "seat.2")
    assert finding.values["width"].amount / MM_PER_INCH > 9  # type: ignore[union-attr]
    assert findings_of(planks("2x8", "14 1/2", gap="0"), RULE) == ()


def test_the_bench_and_its_glued_rails_are_left_alone() -> None:
    # Rails 3 1/2 in wide, glued and screwed to the legs by their ends.
    assert findings_of(BENCH, RULE) == ()
    assert findings_of(BENCH.replace("room hall: indoors", "room hall: outdoors"), RULE) == ()


# ---------------------------------------------------------------- cases


def case(
    wide: str,
    how: str,
    side: str = "ply, facing side, {wide} deep, 30 tall",
    shelf: str = "board, across, flat",
) -> str:
    return f"""
        plan "Case" in inches
        stock ply: birch plywood 3/4
        stock board: actual 3/4 x {wide} pine
        outline case: 30 across, {wide} deep, 30 tall, on floor
        part side for each of left, right: {side.format(wide=wide)}
            on floor, flush with front of case, flush with each of case
        part shelf: {shelf}, between side.left and side.right, housed 1/4 each end
            flush with front of case, bottom at 10
        join shelf to side.*: dado 1/4 deep, {how}
        room study: indoors
        """


def test_a_solid_shelf_glued_into_plywood_sides() -> None:
    # 9 1/4 · 0.00216 · 4 = 0.08 in for ponderosa pine, against 1/32.
    (said,) = told(case("9 1/4", "glue pva"), RULE)
    assert said.startswith(
        "warning shelf @ glue pva: shelf is held over 9 1/4 in across the grain by side.left and side.right. Over "
        "that ponderosa pine moves 0.08 in over a year"
    )


@pytest.mark.parametrize(
    ("wide", "how", "weight"),
    [
        ("9 1/4", "no glue", None),  # it slides in its dado
        ("4", "glue pva", None),  # crossed grain up to 4 in may be glued
        ("5", "glue pva", Severity.NOTE),  # 0.043 in: over by less than the tape shows
        ("7 1/4", "glue pva", Severity.WARNING),
        ("7 1/4", "no glue, screws #8 x 2, 3 per joint, from outside", None),  # 5 5/8 in between the screws
    ],
)
def test_shelves_in_plywood_sides(wide: str, how: str, weight: Severity | None) -> None:
    found = findings_of(case(wide, how), RULE)
    assert [finding.weight for finding in found] == ([] if weight is None else [weight])


def test_a_solid_shelf_in_solid_sides_moves_with_them() -> None:
    assert findings_of(case("9 1/4", "glue pva", side="board, upright, facing side, 30 tall"), RULE) == ()


def test_plywood_lies_still() -> None:
    text = case("9 1/4", "glue pva", shelf="ply, flat, 9 1/4 deep").replace(
        "between side.left and side.right,", "between side.left and side.right across,"
    )
    assert findings_of(text, RULE) == ()


def test_solid_sides_glued_to_a_plywood_shelf() -> None:
    text = case(
        "9 1/4", "glue pva", side="board, upright, facing side, 30 tall", shelf="ply, flat, 9 1/4 deep"
    )
    text = text.replace("between side.left and side.right,", "between side.left and side.right across,")
    (finding,) = findings_of(text, RULE)
    assert finding.parts == ("side.left", "side.right")


BATTEN = """
    plan "Board" in {unit}
    stock panel: actual {thick} x {wide} hard maple
    stock strip: actual {thick} x {narrow} hard maple
    part panel: panel, across, flat, {long} long, left at 0, front at 0, bottom at {thick}
    part batten.left: strip, deep, flat, {across} long, on floor, front at 0, left at {near}
    part batten.right: strip, deep, flat, {across} long, on floor, front at 0, left at {far}
    join batten.* to panel: {how}
    """


def batten(how: str, across: str = "12") -> str:
    return BATTEN.format(
        unit="inches", thick="3/4", wide="12", narrow="2 1/2", long="24", across=across, near="2", far="19", how=how
    )  # fmt: skip


def test_battens_glued_across_a_board() -> None:
    # 12 · 0.00353 · 4 = 0.169 in.
    (said,) = told(batten("glue pva"), RULE)
    assert said.startswith(
        "error panel @ glue pva: panel is held over 12 in across the grain by batten.left and batten.right. Over that "
        "hard maple moves 0.169 in"
    )


def test_battens_in_millimetres() -> None:
    text = BATTEN.format(
        unit="millimetres", thick="20", wide="300", narrow="60", long="600", across="300", near="50", far="480",
        how="screws 4 x 35, 3 per joint, from below",
    )  # fmt: skip
    # Screws five diameters (20 mm) from the ends: 260 mm · 0.00353 · 4 = 3.67 mm.
    assert told(text, RULE) == [
        "warning panel @ screws 4 x 35: panel is held over 260 mm across the grain by batten.left and batten.right. "
        "Over that hard maple moves 3.67 mm over a year (from 6 % to 10 % of moisture); screws in round holes give "
        "1.59 mm (common practice, no source), so 2.08 mm too little. → Slot the holes across the grain, or use "
        "clips. Each edge then moves 1.84 mm, and a slot gives 6.35 mm. One row along the middle may stay fixed."
    ]
    assert assert_mends(text, RULE) == "screws 4 x 35, slotted"


def test_screws_stand_where_their_spacing_puts_them() -> None:
    # Every 4 in on 12 in: three of them, 8 in from the first to the last; 8 · 0.00353 · 4 = 0.113 in.
    (finding,) = findings_of(batten("screws #8 x 1 1/4, every 4, from below"), RULE)
    assert finding.values["width"].amount / MM_PER_INCH == pytest.approx(8)  # type: ignore[union-attr]
    # One in the middle holds nothing back.
    assert findings_of(batten("screws #8 x 1 1/4, 1 per joint, from below"), RULE) == ()


@pytest.mark.parametrize(
    ("across", "how", "flagged"),
    [
        ("4", "glue pva", False),
        ("4 1/16", "glue pva", True),
        ("6", "screws #8 x 1 1/4, 2 per joint, from below", False),
        ("7 5/8", "screws #8 x 1 1/4, 2 per joint, from below", False),  # 5.98 in between them
        ("7 11/16", "screws #8 x 1 1/4, 2 per joint, from below", True),
    ],
)
def test_narrow_crossings_are_left_alone(across: str, how: str, flagged: bool) -> None:
    assert bool(findings_of(batten(how, across), RULE)) is flagged


def test_two_battens_that_nothing_ties_together_hold_nothing() -> None:
    # Strips along the grain, one at each edge: the panel carries them along.
    text = """
        plan "Tray" in inches
        stock panel: actual 3/4 x 14 hard maple
        stock strip: actual 3/4 x 2 1/2 hard maple
        stock post: actual 1 1/2 x 1 1/2 hard maple
        part panel: panel, across, flat, 24 long, left at 0, front at 0, bottom at 10
        part lip.front: strip, across, on edge, 20 long, under panel, front at 0, left at 2
        part lip.back: strip, across, on edge, 20 long, under panel, back at 14, left at 2
        join lip.* to panel: screws #8 x 3, 3 per joint, from below, counterbored 1
        {tie}
        """
    assert findings_of(text.format(tie=""), RULE) == ()
    tie = """part tie: strip, deep, on edge, between lip.front and lip.back, left at 10, flush with bottom of lip.front
        join tie to lip.*: pocket screws 1 1/4, 2 per end"""
    (finding,) = findings_of(text.format(tie=tie), RULE)
    assert finding.parts == ("panel",)
    # From the middle of one lip to that of the other.
    assert finding.values["width"].amount / MM_PER_INCH == pytest.approx(13.25)  # type: ignore[union-attr]


def test_a_board_end_glued_over_its_whole_width() -> None:
    text = """
        plan "Breadboard" in inches
        stock panel: actual 3/4 x 14 hard maple
        stock strip: actual 3/4 x 2 1/2 hard maple
        part panel: panel, across, flat, 24 long, on floor, left at 3, front at 0
        part cap: strip, deep, flat, 14 long, against left of panel, front at 0, on floor
        join cap to panel: {how}
        """
    (finding,) = findings_of(text.format(how="mortise and tenon, glue pva"), RULE)
    assert finding.parts == ("panel",)
    assert finding.values["gives"].amount / MM_PER_INCH == pytest.approx(1 / 32)  # type: ignore[union-attr]
    # Bare glue on end grain holds nothing back.
    assert findings_of(text.format(how="glue pva"), RULE) == ()


def test_the_plan_can_set_the_season() -> None:
    text = table(wide="12", deep="10")
    calm = table(
        wide="12",
        deep="10",
        more="limit moisture-season-low: 8\n        limit moisture-season-high: 9",
    )
    assert len(findings_of(text, RULE)) == 1
    assert findings_of(calm, RULE) == ()


def test_the_plan_can_state_its_air() -> None:
    # 68 °F is 20 °C: Wood Handbook Table 4-2 has 6.9 % at 35 % humidity and 12 % at 65 % for 70 °F.
    text = table(more="limit humidity-season-low: 35\n        limit humidity-season-high: 65")
    (finding,) = findings_of(text, RULE)
    assert finding.values["dry"].amount == pytest.approx(6.9, abs=0.1)  # type: ignore[union-attr]
    assert finding.values["humid"].amount == pytest.approx(12.0, abs=0.1)  # type: ignore[union-attr]
    swing = finding.values["humid"].amount - finding.values["dry"].amount  # type: ignore[union-attr]
    assert finding.values["change"].amount / MM_PER_INCH == pytest.approx(17.25 * 0.00369 * swing)  # type: ignore[union-attr]
    assert finding.working is not None
    assert finding.working.figures[2].source.startswith("35 % humidity at 20 °C, set in this plan")
    # A room between 45 and 55 % hardly moves: 17.25 · 0.00369 · 1.7 = 0.108 in is still more than screws give.
    steady = table(more="limit humidity-season-low: 45\n        limit humidity-season-high: 55")
    assert findings_of(steady, RULE)[0].weight is Severity.WARNING
    assert (
        findings_of(table(more="limit humidity-season-low: 49\n        limit humidity-season-high: 50"), RULE)
        == ()
    )


def test_a_waiver() -> None:
    text = table(more='accept movement-locked on top because "it stands in a museum store"')
    judged = judgement_of(text, only=RULE)
    assert (judged.findings, len(judged.waived)) == ((), 1)


def test_clips_let_a_top_move() -> None:
    assert told(table(how="clips, 3 per joint"), RULE) == []
    # One row of screws along the front holds it at one place; clips at the back slide.
    text = table(how="clips, 3 per joint").replace(
        "join top to apron.*, end.*: clips",
        f"join top to apron.front: {SCREWS}\n        join top to apron.back, end.*: clips",
    )
    assert told(text, RULE) == []


def test_loose_tenons_hold_like_dowels() -> None:
    # 0.255 in over 17 1/4 in, as for the screws above; a tenon gives 1/32 in.
    (told_of_top,) = findings_of(table(how="loose tenons 1/4 x 1 1/2, 3 per joint, glue pva"), RULE)
    assert told_of_top.severity is Severity.ERROR
    (text,) = told(table(how="loose tenons 1/4 x 1 1/2, 3 per joint"), RULE)
    assert "dowels and tenons give 1/32 in (common practice, no source), so 0.223 in too little" in text


@pytest.mark.parametrize("joint", ["glue pva", "biscuits, every 8, glue pva", "tongue and groove, glue pva"])
def test_boards_glued_edge_to_edge_do_not_hold_each_other(joint: str) -> None:
    # Three boards of 11 in: the middle one is fixed at both edges, 11 in apart, to what moves along with it.
    text = f"""
        plan "Lid" in inches
        stock wide: actual 3/4 x 11 red oak
        part board: wide, across, flat, 40 long, left at 0, on floor
            3 copies side by side deep, front at 0
        join board.* to board.*: {joint}
        room parlour: indoors
        """
    assert told(text, RULE) == []


@pytest.mark.parametrize(
    ("how", "held"),
    [
        ("biscuits, every 4, glue pva", True),  # glue holds in the slots of biscuits, on end grain too
        ("biscuits, every 4", False),
        ("butt, glue pva", False),
        ("mortise and tenon, wedges", True),
        ("mortise and tenon", False),
        ("clips, 3 per joint", False),
        ("tongue and groove, glue pva", True),
        ("groove 3/8 deep", False),
    ],
)
def test_what_holds_a_board_at_its_end(how: str, held: bool) -> None:
    # 14 · 0.00353 · 4 = 0.198 in against 1/32.
    housed = "left at 2 5/8" if how.startswith(("mortise", "tongue", "groove")) else "left at 3"
    text = f"""
        plan "Breadboard" in inches
        stock panel: actual 3/4 x 14 hard maple
        stock strip: actual 3/4 x 3 hard maple
        part panel: panel, across, flat, 24 long, on floor, {housed}, front at 0
        part cap: strip, deep, flat, 14 long, left at 0, front at 0, on floor
        join cap to panel: {how}
        """
    assert [finding.parts for finding in findings_of(text, RULE)] == ([("panel",)] if held else [])


def test_a_breadboard_end_glued_all_over_is_an_error() -> None:
    """24 · 0.00248 · 4 = 0.238 in of black cherry: the cheeks of a tongue are long grain, unlike those of a dado."""
    text = """
        plan "Top" in inches
        stock board: actual 7/8 x 24 black cherry
        stock end: actual 7/8 x 3 black cherry
        part top: board, across, flat, 40 long, on floor, left at 0, front at 0
        part bread.left: end, deep, flat, 24 long, on floor, right 1/4 right of left of top, front at 0
        part bread.right: end, deep, flat, 24 long, on floor, left 1/4 left of right of top, front at 0
        join bread.* to top: {joint}, glue pva
        room den: indoors
        """
    (finding,) = findings_of(text.format(joint="tongue and groove"), RULE)
    assert finding.weight is Severity.ERROR
    assert finding.values["change"].amount == pytest.approx(24 * 25.4 * 0.00248 * 4)  # type: ignore[union-attr]
    (dado,) = findings_of(text.format(joint="dado 1/4 deep"), RULE)
    assert dado.weight is Severity.WARNING
