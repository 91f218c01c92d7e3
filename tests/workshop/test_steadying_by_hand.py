"""What a maker's own plans brought out: each figure by hand, and each remedy tried in the plan itself.

Wood weighs its specific gravity at 12 % and the water in it (Wood Handbook, Table 5-3a): red oak 0.63, yellow-
poplar 0.42, hard maple 0.63, white ash 0.60, times 1.12 of 62.43 lb a cubic foot. Moments are plain statics.
"""

from __future__ import annotations

import math
import xml.etree.ElementTree as ET
from dataclasses import replace

import pytest

from reviewer.mechanics.mass import Mass
from reviewer.mechanics.stability import Balance, TippingEdge
from reviewer.reports.footprint_drawing import footprint_drawing, key_of
from reviewer.reports.gathering import report_of
from reviewer.reports.html import render_html
from reviewer.reports.stability import stability_of
from reviewer.units import MM_PER_INCH, NEWTON_PER_POUND, UnitSystem
from reviewer.workshop.restraining import wall_side, worst_state
from reviewer.workshop.standing import Piece
from reviewer.workshop.steadying import wide_enough
from reviewer.workshop.tipping import State, edges_of, free_edges
from reviewer.workshop.tipping_states import Tipping
from tests.support import findings_of, judgement_of, look_at, review_of, told

POUND_INCH = NEWTON_PER_POUND * MM_PER_INCH
#: Pounds a cubic inch of wood of that specific gravity.
PER_CUBIC_INCH = 1.12 * 62.43 / 1728


def tipping_of(plan: str) -> Tipping:
    (found,) = review_of(plan).tipping
    return found


def piece_of(plan: str) -> Piece:
    return tipping_of(plan).piece


def state(plan: str, kind: str) -> State:
    return next(each for each in tipping_of(plan).states if each.kind == kind)


def pounds(moment: float) -> float:
    return moment / POUND_INCH


# ------------------------------------------------------------ a ladder shelf leans on its wall

LADDER = """
plan "Ladder shelf" in inches
stock rail: actual 3/4 x 2 1/2 poplar, 8 ft
stock board: actual 3/4 x 9 1/4 poplar, 8 ft
outline frame: 24 across, 15 1/4 deep, 72 tall, on floor
part rail for each of left, right: rail, upright, facing side, 72 tall, on floor, flush with each of frame
    flush with front of frame, tilted 10 degrees towards back
part shelf.1: board, across, flat, between rail.left and rail.right, bottom 12 above floor, front at 1, rip 9
part shelf.2: like shelf.1, bottom 32 above floor, front at 4 1/2, rip 7
part shelf.3: like shelf.1, bottom 52 above floor, front at 8, rip 6
join shelf.* to rail.*: screws #8 x 2, 2 per end, from outside
load shelf.*: books
room: indoors, wall behind%s, floor wood, children under 6
"""


def test_a_ladder_that_leans_on_the_wall_does_not_fall_towards_it() -> None:
    # Its feet reach 2.54 in back and its middle lies 7.7 in back: without the wall it would fall at once.
    piece = piece_of(LADDER % "")
    assert piece.whole.y / MM_PER_INCH > 7
    assert all("back" not in each.sides for each in tipping_of(LADDER % "").states)
    # A touch pulls it off the wall to the front, which a restraint mends and its rule tells.
    (finding,) = findings_of(LADDER % "", "tips")
    assert finding.told_by == "restraint-missing"
    assert "touched" in finding.says
    assert finding.values["side"] == "the front"
    # 1 in off the wall nothing holds it up any more.
    assert "back" in {side for each in tipping_of(LADDER % " 1 away").states for side in each.sides}


def test_what_falls_by_itself_has_nothing_that_holds_it_down() -> None:
    # A weight behind its own feet turns the piece over with all of its moment; a moment below 0 holds nothing.
    for each in tipping_of(LADDER % " 1 away").states:
        assert each.balance.restoring >= 0
        assert each.balance.ratio >= 0
    floor = state(LADDER % " 1 away", "floor")
    piece = piece_of(LADDER % " 1 away")
    lean = math.atan(0.1875 / 12)
    arm, high = (2.5386 - piece.whole.y / MM_PER_INCH), piece.whole.z / MM_PER_INCH
    heavy = piece.whole.weight / NEWTON_PER_POUND
    assert floor.balance.restoring == 0
    turned = heavy * (-arm * math.cos(lean) + high * math.sin(lean))
    assert pounds(floor.balance.overturning) == pytest.approx(turned, rel=1e-3)


# ------------------------------------------------------------ a case that stands sideways

SIDEWAYS = """
plan "Bookcase by the left wall" in inches
stock board: actual 3/4 x 5 1/4 red oak, 8 ft
outline case: 5 1/4 across, 32 deep, 60 tall, on floor
part side for each of front, back: board, upright, facing front, as tall as case, on floor
    flush with each of case, flush with right of case
part shelf: board, deep, flat, between side.front and side.back, flush with right of case
    5 copies spread evenly up from bottom of case to top of case
load shelf.*: books
room: indoors, wall %s, floor wood, children under 6
"""


def test_a_child_climbs_the_open_side_of_a_case_that_stands_sideways() -> None:
    # Two sides of 3/4 x 5 1/4 x 60 in and five shelves of 3/4 x 5 1/4 x 30 1/2 are 1072.97 cu in, 27.36 lb...
    heavy = (2 * 60 + 5 * 30.5) * 0.75 * 5.25 * 0.63 * PER_CUBIC_INCH
    plan = SIDEWAYS.replace("5 1/4", "6 1/2")
    heavy = heavy / 5.25 * 6.5  # ... and of 6 1/2 in 33.88 lb, over the 30 lb of the standard's scope.
    assert piece_of(plan % "left").whole.weight / NEWTON_PER_POUND == pytest.approx(heavy, rel=2e-3)
    # The child hangs where the shelves are open: to the right, away from the wall. sin t = 0.43 / 6.5. The
    # highest shelf within 56 in has its top at 45.19 in (five from 0.75 to 60, every 14.81). (2), (5)
    child = state(plan % "left", "child")
    assert child.sides == ("right",)
    lean = math.asin(0.43 / 6.5)
    held = heavy * (3.25 * math.cos(lean) - 30 * math.sin(lean))
    turned = 60 * (0.75 + 3 * (60 - 0.75) / 4) * math.sin(lean)
    assert pounds(child.balance.restoring) == pytest.approx(held, rel=2e-3)
    assert pounds(child.balance.overturning) == pytest.approx(turned, rel=2e-3)
    # By the right wall it is the left side that is open.
    mirrored = (plan % "right").replace("flush with right of case", "flush with left of case")
    assert state(mirrored, "child").sides == ("left",)


# ------------------------------------------------------------ someone leans on a table's very edge

BAR = """
plan "Bar table" in inches
stock top: actual 1 x 20 hard maple, 6 ft
stock post: actual 2 1/2 x 2 1/2 hard maple, 8 ft
outline frame: 30 across, 10 deep, 41 tall, on floor
part leg: post, upright, facing front, as tall as frame, in each corner of frame
part top: top, across, flat, on frame, 44 long, centred across on frame, centred deep on frame
load top: 1 person leaning
room: indoors, no children
"""


def test_who_leans_on_a_bar_table_leans_on_its_very_edge() -> None:
    # A top of 1 x 20 x 44 in, 880 cu in, and four legs of 2 1/2 x 2 1/2 x 41, 1025 cu in: 48.57 lb at 5 in.
    # 75 lb (planning value, common practice) 5 in outside the legs, not 60 mm further in as a sitter is.
    heavy = (880 + 1025) * 0.63 * PER_CUBIC_INCH
    found = state(BAR, "person")
    assert found.sides == ("front", "back")
    assert found.place / MM_PER_INCH == pytest.approx(5)
    assert pounds(found.balance.restoring) == pytest.approx(heavy * 5, rel=2e-3)
    assert pounds(found.balance.overturning) == pytest.approx(375)
    assert found.tips_at.amount / NEWTON_PER_POUND == pytest.approx(heavy, rel=2e-3)
    (finding,) = findings_of(BAR, "tips")
    assert finding.weight.word == "error"  # 0.648


# ------------------------------------------------------------ a table on a cross

PEDESTAL = """
plan "Pedestal table" in inches
stock top: actual 1 x 36 hard maple, 4 ft
stock post: actual 3 1/2 x 3 1/2 hard maple, 8 ft
stock bar: actual 1 1/2 x 3 1/2 hard maple, 8 ft
outline place: 36 across, 36 deep, 29 tall, on floor
part foot.deep: bar, deep, on edge, %s long, centred across on place, centred deep on place, on floor
part foot.across: bar, across, on edge, %s long, centred across on place, centred deep on place, on floor
part post: post, upright, facing front, on foot.deep, flush with top of place, centred across on place
    centred deep on place
part top: top, across, flat, 36 long, on post, centred across on place, centred deep on place, corners rounded 18
join foot.across to foot.deep: half lap, glue pva
join foot.* to post: screws #10 x 4, 2 per joint
join top to post: brackets, 2 per joint
load top: 1 person leaning
room: indoors, no children
"""


def test_a_round_table_on_a_cross_tips_between_its_feet() -> None:
    # The footprint has corners at 11 in along each bar, 3/4 in to its sides: between two bars the edge runs
    # from (11, 3/4) to (3/4, 11), (11 + 3/4) / sqrt 2 = 8.309 in from the middle. The top reaches 18 in.
    found = state(PEDESTAL % (22, 22), "person")
    out = 18 - 11.75 / math.sqrt(2)
    assert found.place / MM_PER_INCH == pytest.approx(out, abs=0.02)
    assert pounds(found.balance.overturning) == pytest.approx(75 * out, rel=2e-3)
    heavy = piece_of(PEDESTAL % (22, 22)).whole.weight / NEWTON_PER_POUND
    # A disc of 36 in, 1017.9 cu in, a post of 25 1/2 in, 312.4, and two bars of 22 in, less what is lapped.
    wood = math.pi * 18**2 + 3.5**2 * 25.5 + 2 * 22 * 1.5 * 3.5 - 1.5 * 1.5 * 3.5
    assert heavy == pytest.approx(wood * 0.63 * PER_CUBIC_INCH, rel=0.01)
    assert pounds(found.balance.restoring) == pytest.approx(heavy * 11.75 / math.sqrt(2), rel=2e-3)
    # It faces front and left alike, so it is no side more than another.
    assert found.sides == ("front", "back", "left", "right")
    assert " tips over to any side " in told(PEDESTAL % (22, 22), "tips")[0]


# ------------------------------------------------------------ remedies hold when they are tried in the plan

STOOL = """
plan "Milking stool" in inches
stock seat: actual 1 1/2 x 12 white ash, 4 ft
stock post: actual 1 1/2 x 1 1/2 white ash, 8 ft
outline base: %s across, 9 deep, 12 tall, on floor, left at %s
part leg for each of left, right: post, upright, facing front, as tall as base, on floor
    flush with each of base, flush with front of base
part leg-3: post, upright, facing front, as tall as base, on floor, centred across on base
    flush with back of base
part seat: seat, across, flat, 12 long, on base, left at 0, centred deep on base, corners rounded 6
load seat: 1 person seated
room: indoors, no children
"""


def test_feet_further_out_are_tried_until_no_side_is_weak() -> None:
    # A stool whose two legs in front stand 10 in apart tips to the left and right, and once those are mended
    # to the front: all of it is told at once.
    review = review_of(STOOL % (10, 1))
    (found,) = review.tipping
    wider = wide_enough(found, review)
    assert wider is not None
    assert wider.ratio >= 1.25 * (1 - 1e-6)
    one_side = [each for each in found.states if each.balance.ratio < 1.25]
    assert wider.further >= max(each.further_out(1.25) for each in one_side) - 1e-6
    (line,) = told(STOOL % (10, 1), "tips")
    assert "still too little" not in line


#: A shallow case in the middle of a room falls to the front and to the back alike, but not by as much.
FREE = """
plan "Room divider" in inches
stock board: actual 3/4 x 7 1/4 red oak, 8 ft
outline case: 44 across, 7 1/4 deep, 45 tall, on floor
part side for each of left, right: board, upright, facing side, as tall as case, on floor
    flush with each of case, flush with front of case
part shelf: board, across, flat, between side.left and side.right, flush with front of case
    4 copies spread evenly up from bottom of case to top of case
part back: board, across, on edge, between side.left and side.right, flush with back of case, bottom 20 above floor
load shelf.*: books
room: indoors, no children
"""


def test_both_sides_of_a_free_standing_case_are_told_to_go_out() -> None:
    review = review_of(FREE)
    (found,) = review.tipping
    wider = wide_enough(found, review)
    assert wider is not None
    assert wider.sides == ("front", "back")
    # By hand: 1.25 x 10 lb x 45 in over its weight is the arm that the push needs on either side.
    heavy = found.piece.whole.weight / NEWTON_PER_POUND
    needed = 1.25 * 450 / heavy
    front = found.piece.whole.y / MM_PER_INCH
    behind = 7.25 - front
    assert wider.further / MM_PER_INCH == pytest.approx(needed - min(front, behind), abs=0.01)
    assert wider.ratio == pytest.approx(1.25, abs=1e-3)
    (shown,) = stability_of(review)
    (deeper,) = [row for row in shown.changes if row.tried.change == "deeper"]
    assert deeper.enough.endswith(" further out at the front and back")


# ------------------------------------------------------------ one piece, though a join of it does not reach


def test_a_part_that_a_join_does_not_reach_is_no_piece_by_itself() -> None:
    # The plywood back is 0.2 in thick and set out 0.05 in too far off: joint-out-of-reach tells that, and
    # nobody is told to strap a sheet of plywood to the wall.
    plan = """
        plan "Low bookcase" in inches
        stock board: actual 3/4 x 11 1/4 pine panel, 8 ft
        stock thin: birch plywood 1/4, sheet 48 x 96
        outline case: 30 across, 11 1/2 deep, 30 tall, on floor
        part side for each of left, right: board, upright, facing side, as tall as case, on floor
            flush with each of case, flush with front of case
        part shelf: board, across, flat, between side.left and side.right, flush with front of case
            3 copies spread evenly up from bottom of case to top of case
        part back: thin, facing front, from left of case to right of case, as tall as case, on floor
            flush with back of case
        join back to side.*, shelf.*: screws #6 x 1, from back, every 6
        room: indoors, no children
        """
    assert piece_of(plan).parts[-1] == "back"
    rules = {each.rule for each in judgement_of(plan).findings}
    assert "joint-out-of-reach" in rules
    assert "tips" not in rules


def test_all_of_a_pattern_that_meets_nothing_belongs_to_the_piece() -> None:
    plan = STOOL % (14, 0) + "join seat to leg.*, leg-3: dowels 1/2 x 2, 2 per joint\n"
    plan = plan.replace("12 long, on base", "4 long, rip 5, bottom 12 above floor").replace(
        "left at 0, centred deep on base, corners rounded 6", "left at 5, flush with back of base"
    )
    assert len(review_of(plan).pieces) == 1


# ------------------------------------------------------------ all that the plan puts on it


def test_loaded_as_the_plan_says() -> None:
    # Sides of 36 in and three shelves of 28 1/2 in of red oak 3/4 x 11 1/4: (72 + 85.5) x 8.4375 = 1328.9 cu in,
    # 33.87 lb, its middle at 5.625 and 18. Of 120 lb each shelf has 40, 5 in over its top
    # (custom): at 5.75, 23.375 and 41. A floor that falls 3/16 in a foot leans by 0.895 degrees. (2)
    plan = """
        plan "Case" in inches
        stock board: actual 3/4 x 11 1/4 red oak, 8 ft
        outline case: 30 across, 11 1/4 deep, 36 tall, on floor
        part side for each of left, right: board, upright, facing side, as tall as case, on floor
            flush with each of case, flush with front of case
        part shelf: board, across, flat, between side.left and side.right, flush with front of case
            3 copies spread evenly up from bottom of case to top of case
        load shelf.*: 120 lb
        room: indoors, wall behind, no children
        """
    found = state(plan, "declared")
    heavy = 1328.9 * 0.63 * PER_CUBIC_INCH
    lean = math.atan(0.1875 / 12)
    held = (heavy + 120) * 5.625 * math.cos(lean)
    turned = (heavy * 18 + 40 * (5.75 + 23.375 + 41)) * math.sin(lean)
    assert found.force / NEWTON_PER_POUND == pytest.approx(120)
    assert pounds(found.balance.restoring) == pytest.approx(held, rel=2e-3)
    assert pounds(found.balance.overturning) == pytest.approx(turned, rel=2e-3)
    # On one spot of each shelf, as far back as before, it holds as much.
    spot = found.balance.restoring
    assert state(
        plan.replace("120 lb", "120 lb at 14 from left"), "declared"
    ).balance.restoring == pytest.approx(spot)
    (shown,) = stability_of(review_of(plan))
    assert "with all that the plan puts on it (120 lb), on a floor that lets it lean" in [
        row.what for row in shown.rows
    ]


# ------------------------------------------------------------ the seat test with the sitter inside the feet


def test_with_the_sitter_inside_the_feet_it_is_the_push_that_tips() -> None:
    # A stool of 14 in a side under a seat of 14 in: the sitter of 600 N (EN 1022) sits 60 mm inside the feet, so
    # what tips it is a push: all that holds it down over the height of the seat.
    plan = """
        plan "Stool" in inches
        stock seat: actual 1 1/4 x 14 white ash, 4 ft
        stock post: actual 1 1/4 x 1 1/4 white ash, 8 ft
        outline base: 14 across, 14 deep, 24 tall, on floor
        part leg: post, upright, facing front, 24 tall, in each corner of base
        part seat: seat, across, flat, 14 long, on base, centred across on base, centred deep on base
        load seat: 1 person seated
        room: indoors, no children
        """
    found = state(plan, "sitter")
    heavy = piece_of(plan).whole.weight
    assert found.tips_at.amount == pytest.approx(
        (heavy * 7 * MM_PER_INCH + 600 * 60) / (25.25 * MM_PER_INCH), rel=1e-3
    )
    (shown,) = stability_of(review_of(plan))
    (row,) = [row for row in shown.rows if row.state.kind == "sitter"]
    assert row.tips_at.startswith("a push of ")


# ------------------------------------------------------------ the feet from above


def points_of(svg: str, css: str) -> list[list[tuple[float, float]]]:
    space = "{http://www.w3.org/2000/svg}"
    root = ET.fromstring(svg.replace("<svg ", f'<svg xmlns="{space[1:-1]}" ', 1))
    found = []
    for each in root.iter():
        if each.get("class") != css:
            continue
        if each.tag == f"{space}line":
            found.append([(float(each.attrib[f"x{i}"]), float(each.attrib[f"y{i}"])) for i in (1, 2)])
        else:
            pairs = [pair.split(",") for pair in each.attrib["points"].split()]
            found.append([(float(x), float(y)) for x, y in pairs])
    return found


def test_the_feet_of_a_stool_on_three_legs_from_above() -> None:
    # Legs of 1 1/2 in in a place of 10 x 9 in: a triangle with its corners cut off, two in front, one behind.
    plan = STOOL % (10, 1)
    found, piece = state(plan, "person"), piece_of(plan)
    svg = footprint_drawing(found, piece, UnitSystem.INCH, "feet")
    (outline,) = points_of(svg, "footprint")
    assert len(outline) == 6
    (dashed,) = points_of(svg, "stands-open")
    scale = (max(x for x, _ in dashed) - min(x for x, _ in dashed)) / 12
    left, bottom = min(x for x, _ in dashed), max(y for _, y in dashed)
    # The seat of 12 in stands out 1 in at the left and 1 1/2 in at the front. Paper runs down, the front is below.
    by_hand = [(0, 0), (10, 0), (10, 1.5), (5.75, 9), (4.25, 9), (0, 1.5)]
    expected = {(round((x + 1) * scale + left), round(bottom - (y + 1.5) * scale)) for x, y in by_hand}
    assert {(round(x), round(y)) for x, y in outline} == expected
    # It tips over the two slanting edges, from a leg in front to the one behind, and over no other.
    heavy = points_of(svg, "tips-over")
    assert len(heavy) == 2
    assert all(abs(one[0] - two[0]) > 3 * scale and abs(one[1] - two[1]) > 7 * scale for one, two in heavy)
    assert "6 corners" in key_of(found, piece, UnitSystem.INCH)


def test_the_page_shows_the_feet_of_each_piece_once() -> None:
    found = look_at(STOOL % (10, 1))
    page = render_html([report_of(found.source, found.problems, found.review, found.judgement)])
    assert page.count('class="view footprint-view"') == 1


# ------------------------------------------------------------ what no test saw when a line was broken


def test_a_wall_catches_a_piece_up_to_the_gap_by_hand() -> None:
    # A post of 200 x 200 x 1000 mm with its middle at 100 and 500 falls back from a lean of 100 / 500 on. Its
    # top, 1000 up, has then gone 200 mm: a wall 195 mm off catches it, one 205 mm off does not. (10)
    plan = """
        plan "Post" in millimetres
        stock post: actual 200 x 200 beech, 2 m
        part post: post, upright, facing front, 1000 tall, on floor, left at 0, front at 0
        room: indoors, wall behind %s away
        """
    near, far = review_of(plan % 195), review_of(plan % 205)
    assert len(free_edges(near.pieces[0], near.setting)) == 3
    assert len(free_edges(far.pieces[0], far.setting)) == 4
    # Heavy at the foot it must lean further before it goes: its middle at 300, 333 mm at the top.
    low = replace(far.pieces[0], masses=(Mass(10.0, 100.0, 100.0, 300.0),))
    assert len(free_edges(low, far.setting)) == 3


def test_castors_never_turn_past_the_middle_of_a_narrow_base() -> None:
    # 2 in deep, and a wheel may stand 1 1/2 in inside its corner: both lines then meet in the middle, at 1 in.
    plan = """
        plan "Trolley" in inches
        stock board: actual 3/4 x 2 red oak, 8 ft
        part board: board, across, flat, 30 long, bottom 3 above floor, left at 0, front at 0
        fit board to floor: 4 castors, 3 tall
        room: indoors
        """
    (piece,) = review_of(plan).pieces
    places = {
        round(edge.start[1] / MM_PER_INCH, 6)
        for edge in edges_of(piece, 1.5 * MM_PER_INCH)
        if edge.outward[1]
    }
    assert places == {1.0}


def test_feet_moved_out_under_a_load_that_overhangs_by_hand() -> None:
    # A board of 2 m of 100 N/m on feet that stand 0.6 m inside its left end: 60 N at 0.3 m turns it, 18 Nm.
    # Moved out by d the overhang is 0.6 - d: 100 (0.6 - d)^2 / 2. With 20 N of its own at 0.4 m, 8 Nm + 20 d:
    # 8 + 20 d = 1.25 x 50 (0.6 - d)^2, so d = (95 - sqrt 5400) / 125 = 0.17212 m.
    edge = TippingEdge((600.0, 0.0), (600.0, -1000.0))
    loaded = State(
        kind="loaded", balance=Balance(edge, 8000.0, 18000.0), force=60.0, place=300.0, said="", span=None,
        weight=20.0, shifts=0.0, source="",
    )  # fmt: skip
    d = loaded.further_out(1.25) / 1000
    assert 8 + 20 * d == pytest.approx(1.25 * 50 * (0.6 - d) ** 2, abs=1e-3)
    assert d == pytest.approx((95 - math.sqrt(5400)) / 125, abs=1e-5)


def test_a_child_is_reckoned_with_where_the_plan_does_not_say_that_none_come() -> None:
    # A shallow case that only a child tips: it lacks the moment unless the plan says no children.
    plan = SIDEWAYS.replace("wall %s", "wall behind%s").replace(
        "5 1/4 across, 32 deep", "32 across, 5 1/4 deep"
    )
    plan = plan.replace(
        "for each of front, back: board, upright, facing front",
        "for each of left, right: board, upright, facing side",
    )
    plan = plan.replace("flush with right of case", "flush with front of case")
    plan = plan.replace(
        "deep, flat, between side.front and side.back", "across, flat, between side.left and side.right"
    )
    plan = (
        plan.replace("children under 6", "%s") + "limit tip-push-force: 0.1 lb\nlimit child-weight: 400 lb\n"
    )
    plan += "restrain case to wall: strap, screws #10 x 2 1/2 into stud, 56 up, 2 of them\n"

    def lacks(words: str) -> float:
        review = review_of((plan % ("", words)).replace(", \n", "\n"))
        (piece,) = review.pieces
        return worst_state(piece, review, wall_side(piece, review))[1]

    assert lacks("no children") == 0
    assert lacks("children under 6") > 0
    assert lacks("") == pytest.approx(lacks("children under 6"))
    # Even where it says nothing of the room at all.
    bare = "\n".join(line for line in (plan % ("", "")).splitlines() if not line.startswith("room"))
    review = review_of(bare)
    (piece,) = review.pieces
    assert worst_state(piece, review, wall_side(piece, review))[1] == pytest.approx(lacks(""), rel=1e-6)
