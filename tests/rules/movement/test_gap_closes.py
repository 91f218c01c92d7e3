"""gap-closes: growth by hand, from which side it comes, and what is left for a door to move in."""

from __future__ import annotations

import pytest

from reviewer.findings import Severity
from reviewer.units import MM_PER_INCH
from tests.support import findings_of, told

RULE = "gap-closes"


def planks(
    plank: str = "actual 1 x 9 1/4 red oak",
    gap: str = "1/16",
    room: str = "porch: outdoors",
    count: int = 2,
    how: str = "flat",
    more: str = "",
) -> str:
    return f"""
        plan "Slatted seat" in inches
        stock plank: {plank}
        stock post: actual 2 x 2 red oak
        outline frame: 40 across, 30 deep, 16 tall, on floor
        part leg: post, upright, as tall as frame, in each corner of frame
        part rail for each of left, right: post, deep, flat, between leg.front-each and leg.back-each
            flush with top of frame, flush with each of leg.front-each
        part seat: plank, across, {how}, on frame, from left of frame to right of frame
            {count} copies side by side deep, gap {gap}, row centred on frame
        join rail.* to leg.*: dowels 3/8 x 2, 2 per joint, glue pva
        join seat.* to rail.*: screws #8 x 1 3/4, 2 per joint, from below, counterbored 1, slotted
        room {room}
        {more}
        """


def test_planks_that_swell_outdoors() -> None:
    # Kiln-dried at 8 %, 16 % outdoors; 8.6 % green to dry (Wood Handbook Table 4-3), equation 13-3:
    # 9.25 · 8 / (30·100/8.6 - 30 + 8) = 0.2264 in, half of it from each of the two.
    assert told(planks(), RULE) == [
        "warning seat.1, seat.2 @ seat: seat.1 and seat.2 grow 0.226 in into the gap of 1/16 in between them, "
        "as red oak comes from 8 % of moisture to 16 % in the humid season. It closes: 0.164 in more than there is. "
        "→ Leave 1/4 in between them: of that 0.024 in stays open in the humid season, with wood from 8 % of moisture."
    ]


def test_the_remedy_holds() -> None:
    assert findings_of(planks(gap="1/4"), RULE) == ()
    (finding,) = findings_of(planks(gap="7/32"), RULE)
    assert finding.weight is Severity.NOTE  # 0.0077 in: no tape shows so little
    assert [f.weight for f in findings_of(planks(gap="3/16"), RULE)] == [Severity.WARNING]


def test_the_working_can_be_done_again_by_hand() -> None:
    (finding,) = findings_of(planks(room="hall: indoors", gap="1/32"), RULE)
    assert finding.working is not None
    size, per_percent, start, humid, growth, gap = (f.value.amount for f in finding.working.figures)  # type: ignore[union-attr]
    assert (size / MM_PER_INCH, per_percent, start, humid) == (pytest.approx(9.25), 0.00369, 8, 10)
    assert growth == pytest.approx(size * per_percent * 2)
    assert finding.working.result is not None
    assert finding.working.result.value.amount == pytest.approx(gap - growth)  # type: ignore[union-attr]


@pytest.mark.parametrize(
    ("text", "weight"),
    [
        # 9.25 · 0.00369 · 2 = 0.0683 in, over by 0.006; from 6 % 0.137 in.
        (planks(room="hall: indoors"), Severity.NOTE),
        (planks(room="hall: indoors", gap="1/8"), Severity.NOTE),  # only from the dry end of the year
        (planks(room="hall: indoors", gap="5/32"), None),
        (planks(plank="actual 1 x 9 1/4 red oak, moisture 8 %", room="hall: indoors", gap="1/8"), None),
        (planks(plank="birch plywood 3/4", how="flat, 9 1/4 deep").replace("plank, across, flat", "plank, flat"), None),
        # Bought as wet as it ever gets there it only shrinks; but 19 % is the most that it may be, so a note.
        (planks(plank="2x10 spruce-pine-fir", gap="1/8"), Severity.NOTE),
        (planks(plank="2x10 spruce-pine-fir, moisture 19 %", gap="1/8"), None),
        (planks(plank="2x10 spruce-pine-fir, moisture 12 %", gap="1/16"), Severity.WARNING),
        # On edge the thickness counts: 1 in moves by 0.02 in at most, radially.
        (planks(gap="1/32", how="on edge"), None),
        (planks(gap="0"), None),
        (planks(room="shed: indoors, unheated"), Severity.WARNING),
    ],
)  # fmt: skip
def test_planks(text: str, weight: Severity | None) -> None:
    assert [finding.weight for finding in findings_of(text, RULE)] == ([] if weight is None else [weight])


def test_thickness_counts_where_boards_stand_on_edge() -> None:
    # 4.0 % radially: 1 · 8 / (3000/4.0 - 22) = 0.011 in.
    (finding,) = findings_of(planks(gap="1/100", how="on edge"), RULE)
    assert finding.values["growth"].amount / MM_PER_INCH == pytest.approx(8 / (3000 / 4.0 - 22), rel=1e-6)  # type: ignore[union-attr]


def test_a_row_is_told_once() -> None:
    (finding,) = findings_of(planks(plank="actual 1 x 7 red oak", count=3), RULE)
    assert finding.parts == ("seat.1", "seat.2", "seat.3")


# ---------------------------------------------------------------- doors and drawers


def cupboard(
    wood: str = "red oak",
    gap: str = "1/16",
    wide: str = "16 3/8",
    hinged: str = "left",
    more: str = "",
    up: str = "upright",
) -> str:
    return f"""
        plan "Wall cupboard" in inches
        stock wide: actual 3/4 x 11 1/4 red oak
        stock leaf: actual 3/4 x 30 {wood}
        outline case: 18 across, 11 1/4 deep, 24 tall, on floor
        part side for each of left, right: wide, upright, facing side, as tall as case, on floor
            flush with each of case, flush with front of case
        part base: wide, across, flat, between side.left and side.right, flush with front of case, on floor
        part top: wide, across, flat, between side.left and side.right, flush with front of case
            flush with top of case
        part door: leaf, {up}, facing front, rip {wide}
            {hinged} {gap} inside side.{hinged}, flush with front of case
            from top of base to bottom of top, less 1/8, opens 110 degrees, hinged {hinged}
        join base, top to side.*: dovetails, glue pva
        fit door to side.{hinged}: 2 hinges 2 1/2, screws #6 x 5/8
        room hall: indoors
        {more}
        """.replace("left 1/16 inside side.left", "left 1/16 right of side.left").replace(
        "right 1/16 inside side.right", "right 1/16 left of side.right"
    )


def test_a_door_grows_away_from_its_hinges() -> None:
    # 16.375 · 0.00369 · 2 = 0.1208 in; the sixteenth at the hinges does not help.
    # From 6 %: 0.2417 + 1/64 = 0.2573: the next sixteenth is 5/16 in.
    assert told(cupboard(), RULE) == [
        "warning door @ door: door swells 0.121 in side to side, as red oak comes from 8 % of moisture to 10 % in "
        "the humid season; to side.right it has a gap of 1/16 in, so 0.058 in too little. → Leave 5/16 in there: of "
        "that 0.071 in stays open in the humid season, with wood from 6 % of moisture."
    ]
    assert "to side.left it has a gap" in told(cupboard(hinged="right"), RULE)[0]


@pytest.mark.parametrize(
    ("wide", "weight"),
    [
        ("16 3/8", Severity.WARNING),
        ("16 5/16", Severity.WARNING),  # 1/8 in: 0.0046 is left, less than a sixty-fourth
        ("16 1/4", Severity.NOTE),  # 3/16 in: closes only from the dry end of the year
        ("16 1/8", None),  # 5/16 in
    ],
)
def test_the_room_that_a_door_needs(wide: str, weight: Severity | None) -> None:
    assert [f.weight for f in findings_of(cupboard(wide=wide), RULE)] == ([] if weight is None else [weight])


def test_what_is_left_is_said() -> None:
    # 1/8 in less 16.3125 · 0.00369 · 2 = 0.1204 in.
    (said,) = told(cupboard(wide="16 5/16"), RULE)
    assert (
        "to side.right it has a gap of 1/8 in, so 0.005 in is left. To move freely it needs 0.016 in (common "
        "practice, no source). → Leave 5/16 in there:" in said
    )


def test_sheets_and_doors_over_the_edges_are_left_alone() -> None:
    ply = (
        cupboard()
        .replace("actual 3/4 x 30 red oak", "birch plywood 3/4")
        .replace("rip 16 3/8", "16 3/8 across")
    )
    assert findings_of(ply.replace("leaf, upright, facing front", "leaf, facing front"), RULE) == ()
    over = cupboard().replace(
        "flush with front of case\n            from top of base",
        "against front of side.left\n            from top of base",
    )
    assert findings_of(over, RULE) == ()


PAIR = """
    plan "Two doors" in millimetres
    stock wide: actual 20 x 300 beech
    stock leaf: actual 20 x 400 beech
    outline case: 840 across, 300 deep, 600 tall, on floor
    part side for each of left, right: wide, upright, facing side, as tall as case, on floor
        flush with each of case, flush with front of case
    part base: wide, across, flat, between side.left and side.right, flush with front of case, on floor
    part top: wide, across, flat, between side.left and side.right, flush with front of case, flush with top of case
    part door.left: leaf, upright, facing front, rip 397, left 1 right of side.left, flush with front of case
        from top of base to bottom of top, less 4, opens 110 degrees, hinged left
    part door.right: leaf, upright, facing front, rip 397, right 1 left of side.right, flush with front of case
        from top of base to bottom of top, less 4, opens 110 degrees, hinged right
    join base, top to side.*: dovetails, glue pva
    fit door.left to side.left: 2 hinges 60
    fit door.right to side.right: 2 hinges 60
    room hall: indoors
    """


def test_a_pair_of_doors_grows_from_both_sides() -> None:
    # 800 mm less 2 · 398: 4 mm between them; 2 · 397 · 0.00431 · 2 = 6.84 mm.
    first, second = told(PAIR, RULE)
    assert first.startswith(
        "warning door.left @ door.left: door.left and door.right swell 6.84 mm side to side, as American beech "
        "comes from 8 % of moisture to 10 % in the humid season; to door.right there is a gap of 4 mm, so 2.84 mm too "
        "little. → Leave 15 mm there:"
    )
    assert second.startswith("warning door.right")


def drawer(front: str = "actual 20 x 220 red oak", gap: int = 3, tall: int = 214, more: str = "") -> str:
    """A drawer with a solid front between a rail and a top 220 apart."""
    return f"""
        plan "Drawer" in millimetres
        stock wide: actual 20 x 300 red oak
        stock front: {front}
        stock ply: birch plywood 12
        outline case: 500 across, 300 deep, 260 tall, on floor
        part side for each of left, right: wide, upright, facing side, as tall as case, on floor
            flush with each of case, flush with front of case
        part base: wide, across, flat, between side.left and side.right, flush with front of case, on floor
        part top: wide, across, flat, between side.left and side.right, flush with front of case
            flush with top of case
        assembly drawer: between side.left and side.right across with 2 each end, 280 deep, {tall} tall
            flush with front of case, bottom {gap} above top of base, slides out 240
            part front: front, across, on edge, from left of drawer to right of drawer, rip {tall}
                flush with front of drawer, flush with bottom of drawer
            part side for each of left, right: ply, facing side, flush with each of drawer, 150 tall
                from back of front to back of drawer, flush with bottom of drawer
            join front to side.*: screws 4 x 40, 3 per joint, from front
        join base, top to side.*: dovetails, glue pva
        room hall: indoors
        {more}
        """


def test_a_drawer_has_the_room_of_both_sides() -> None:
    # 214 mm · 0.00369 · 2 = 1.58 mm against 6 mm in all; tight: 217 mm with 1 mm below and 2 above: 1.6 mm of 3.
    assert findings_of(drawer(), RULE) == ()
    (finding,) = findings_of(drawer(gap=1, tall=217), RULE)
    assert finding.values["growth"].amount == pytest.approx(217 * 0.00369 * 4)  # type: ignore[union-attr]
    assert finding.weight is Severity.NOTE  # 1.4 mm is left from 8 %, nothing from 6 %
    (said,) = told(drawer(front="actual 20 x 220 red oak, moisture 6 %", gap=1, tall=217), RULE)
    assert said.startswith(
        "warning drawer.front @ front: drawer swells 3.2 mm up and down, as red oak comes from 6 % of moisture to "
        "10 % in the humid season; to base and top it has 3 mm in all, so 0.2 mm too little. → Leave 4 mm in all:"
    )
    assert (
        findings_of(
            drawer(front="birch plywood 20")
            .replace("front, across, on edge", "front, facing front")
            .replace(", rip 214", ", 214 tall"),
            RULE,
        )
        == ()
    )


def test_a_panel_in_a_frame_swells_in_its_grooves() -> None:
    """A door of stiles, rails and a panel grows by its stiles alone: the panel has its grooves."""
    text = """
        plan "Framed door" in inches
        stock wide: actual 3/4 x 11 1/4 red oak
        stock strip: actual 3/4 x 2 red oak
        stock thin: actual 1/4 x 13 red oak
        outline case: 18 across, 11 1/4 deep, 24 tall, on floor
        part side for each of left, right: wide, upright, facing side, as tall as case, on floor
            flush with each of case, flush with front of case
        part base: wide, across, flat, between side.left and side.right, flush with front of case, on floor
        part top: wide, across, flat, between side.left and side.right, flush with front of case
            flush with top of case
        assembly door: from right of side.left to left of side.right, less 1/8, 3/4 deep, flush with front of case
            from top of base to bottom of top, less 1/8, opens 110 degrees, hinged left
            part stile for each of left, right: strip, upright, facing front, flush with each of door
                flush with front of door, from bottom of door to top of door
            part rail for each of bottom, top: strip, across, on edge, between stile.left and stile.right, housed 3/4 each end
                flush with front of door, flush with each of door
            part panel: thin, upright, facing front, between stile.left and stile.right across, housed {housed} each end
                between rail.bottom and rail.top up, housed 1/4 each end, rip to fit, centred deep on stile.left
            join rail.* to stile.*: mortise and tenon 3/4 long, glue pva
            join panel to rail.*, stile.*: groove {groove}
        join base, top to side.*: dovetails, glue pva
        fit door to side.left: 2 hinges 2 1/2
        room hall: indoors
        """
    # Two stiles of 2 in: 4 · 0.00369 · 4 = 0.059 in, more than a sixteenth less a sixty-fourth: a note at most.
    (finding,) = findings_of(text.format(housed="1/4", groove="1/2 deep"), RULE)
    assert finding.parts == ("door.stile.left", "door.stile.right")
    assert finding.values["growth"].amount / MM_PER_INCH == pytest.approx(4 * 0.00369 * 4)  # type: ignore[union-attr]
    # Glued in, it takes its frame along: 12 3/8 in of panel more.
    glued = findings_of(text.format(housed="1/4", groove="1/2 deep, glue pva"), RULE)
    assert "door.panel" in glued[0].parts
    assert glued[0].weight is Severity.WARNING


def test_the_plan_can_set_what_a_door_needs() -> None:
    assert findings_of(cupboard(wide="16 1/8", more="limit moving-clearance: 1/8"), RULE) != ()


def test_a_drawer_set_tight_in_the_dry_months_binds() -> None:
    # 220 mm from 6 to 10 %: 220 · 0.00369 · 4 = 3.25 mm, and no room at all.
    (said,) = told(drawer(front="actual 20 x 220 red oak, moisture 6 %", gap=0, tall=220), RULE)
    assert "to base and top it has no gap at all, so 3.25 mm too little. → Leave 4 mm in all:" in said


def test_a_door_set_tight_binds() -> None:
    (said,) = told(cupboard(wide="16 7/16"), RULE)
    assert "to side.right it has no gap at all, so 0.121 in too little. → Leave 5/16 in there:" in said
