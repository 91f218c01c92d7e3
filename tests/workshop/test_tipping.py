"""States of a piece against worked examples of statics, with the piece's own weights put in by hand."""

from __future__ import annotations

from dataclasses import replace

import pytest
from shapely.geometry import Polygon, box

from reviewer.mechanics.mass import Mass
from reviewer.mechanics.stability import TippingEdge
from reviewer.model.plan import Axis
from reviewer.reference.limits import default_limits
from reviewer.review import Review
from reviewer.setting_out.solid import square_solid
from reviewer.units import KG_PER_POUND, MM_PER_INCH, NEWTON_PER_KG, NEWTON_PER_POUND
from reviewer.workshop.standing import Piece, pieces
from reviewer.workshop.tipping import State, free_edges, outside_share, restraint_hold, side_of
from reviewer.workshop.tipping_scene import Scene
from reviewer.workshop.tipping_states import climbed, pushed, states
from tests.support import review_of

LIMITS = default_limits()
POUND_INCH = NEWTON_PER_POUND * MM_PER_INCH


def weighing(piece: Piece, *masses: tuple[float, float, float, float]) -> Piece:
    """The piece with masses of so many pounds at so many inches across, deep and up."""
    made = tuple(Mass(lb * KG_PER_POUND, *(place * MM_PER_INCH for place in at)) for lb, *at in masses)
    return replace(piece, masses=made)


def only_piece(review: Review) -> Piece:
    (found,) = pieces(review.plan, review.setting, review.masses)
    return found


def of_kind(found: tuple[State, ...], kind: str) -> State:
    (state,) = [each for each in found if each.kind == kind]
    return state


CASE = """
plan "Case" in inches
stock board: actual 3/4 x 12 red oak, 8 ft
outline case: 36 across, 12 deep, %s tall, on floor
part side for each of left, right: board, upright, facing side, as tall as case
    on floor, flush with each of case, flush with front of case
part shelf: board, across, flat, between side.left and side.right, flush with front of case
    4 copies spread evenly up from bottom of case to top of case
load shelf.*: books
room: indoors, wall behind, children under 6
"""


def test_a_bookcase_of_80_lb_just_tips_at_a_push_of_10_lb() -> None:
    # Safety notes W1: bookcase 80 lb, centre 6 in from the edge, pushed at 48 in: 10.0 lb (plain statics).
    review = review_of(CASE % 48)
    piece = weighing(only_piece(review), (80, 18, 6, 24))
    (state,) = pushed(Scene(piece, review.plan, review.setting, LIMITS))
    assert state.balance.restoring == pytest.approx(480 * POUND_INCH)
    assert state.balance.overturning == pytest.approx(480 * POUND_INCH)
    assert state.balance.ratio == pytest.approx(1.0)
    assert state.sides == ("front",)


def test_a_push_is_no_higher_than_the_limit() -> None:
    # 10 lb at 56 in (ASTM F2057-23, from memory), on 80 lb at 6 in: 480 over 560.
    review = review_of(CASE % 72)
    piece = weighing(only_piece(review), (80, 18, 6, 36))
    (state,) = pushed(Scene(piece, review.plan, review.setting, LIMITS))
    assert state.balance.ratio == pytest.approx(480 / 560)


def test_a_child_on_the_front_with_carpet_under_the_back_by_hand() -> None:
    # Equations (2) and (5): sin t = 0.43/12, t = 2.0535 degrees. Shelves' tops at 0.75, 24.5, 48.25, 72;
    # the highest within 56 in is at 48.25, flush with the feet, so e = 0.
    # M_s = 80 (6 cos t - 36 sin t) = 80 (5.99615 - 1.29) = 376.49; M_o = 60 x 48.25 x 0.0358333 = 103.74.
    review = review_of(CASE % 72)
    piece = weighing(only_piece(review), (80, 18, 6, 36))
    (state,) = climbed(Scene(piece, review.plan, review.setting, LIMITS))
    assert state.balance.restoring / POUND_INCH == pytest.approx(376.49, abs=0.02)
    assert state.balance.overturning / POUND_INCH == pytest.approx(103.74, abs=0.02)
    assert state.place == pytest.approx(48.25 * MM_PER_INCH)


RESTRAINED = CASE % 72 + "restrain case to wall: strap, screws #10 x 2 1/2 into %s, 68 up, 2 of them\n"


def test_a_restraint_counts_with_its_test_load_at_its_height() -> None:
    # Equation (14) turned round: two restraints of 60 lb (ASTM F3096-23) at 68 in hold 2 x 60 x 68 = 8160.
    review = review_of(RESTRAINED % "stud")
    piece = weighing(only_piece(review), (80, 18, 6, 36))
    assert restraint_hold(piece, LIMITS, review.setting) == pytest.approx(8160 * POUND_INCH)
    (state,) = pushed(Scene(piece, review.plan, review.setting, LIMITS))
    # The straps pull straight to the wall: now it is nearest to tipping sideways, 80 x 18 over 560.
    assert state.sides == ("left", "right")
    assert state.balance.ratio == pytest.approx(80 * 18 / 560)
    scene = Scene(piece, review.plan, review.setting, LIMITS)
    (front,) = [edge for edge in scene.edges if side_of(edge) == "front"]
    assert scene.push(front).balance.ratio == pytest.approx((480 + 8160) / 560)
    assert scene.push(front).unheld == pytest.approx((480 - 560) * POUND_INCH)


def test_a_restraint_is_no_higher_than_the_piece_and_at_its_top_where_none_is_said() -> None:
    for words in ("90 up, ", ""):
        review = review_of((RESTRAINED % "stud").replace("68 up, ", words))
        assert restraint_hold(only_piece(review), LIMITS, review.setting) == pytest.approx(8640 * POUND_INCH)


@pytest.mark.parametrize(
    ("away", "wall", "lever"),
    [
        # Equation (14) with y 68 and x 12 in: 68 cos φ + x sin φ falling, less where it rises.
        ("", 68, 68.0),
        ("", 66, 12.0),  # along the back: the depth
        (" 2 away", 66, (68 + 12) / 2**0.5),
        (" 2 away", 70, (68 - 12) / 2**0.5),
    ],
)
def test_a_restraint_counts_by_the_slope_of_its_strap(away: str, wall: int, lever: float) -> None:
    text = (RESTRAINED % "stud").replace("68 up", f"68 up, {wall} up on wall")
    review = review_of(text.replace("wall behind", f"wall behind{away}"))
    piece = only_piece(review)
    lever += (
        (piece.high[1] - piece.low[1] - 12 * 25.4) / 25.4 * (0 if lever == 68 else 1 if lever == 12 else 0)
    )
    assert restraint_hold(piece, LIMITS, review.setting) == pytest.approx(120 * lever * POUND_INCH, rel=1e-3)


def test_a_restraint_in_wallboard_holds_nothing() -> None:
    # FEMA (2008): screws held by wallboard alone pull out.
    review = review_of(RESTRAINED % "board")
    assert restraint_hold(only_piece(review), LIMITS, review.setting) == 0.0


BENCH = """
plan "Bench" in inches
stock plank: actual 2 x 12 red oak, 8 ft
outline frame: 28 across, 12 deep, 16 tall, on floor
part leg for each of left, right: plank, upright, facing side, as tall as frame
    on floor, flush with each of frame, flush with front of frame
part seat: plank, across, flat, 48 long, on frame, centred across on frame, flush with front of frame
load seat: 2 people seated
"""


def test_a_sitter_at_the_end_of_a_bench() -> None:
    # Safety notes W17: bench 40 lb, 48 in long, legs 10 in in; a sitter 60 mm in from the end tips it from
    # 73.3 lb on. The planned sitter weighs 275 lb (BIFMA), so the ratio is 73.3 over 275.
    review = review_of(BENCH)
    piece = weighing(only_piece(review), (40, 14, 6, 10))
    state = of_kind(states(piece, review.plan, review.setting, LIMITS, {}), "person")
    assert state.balance.ratio == pytest.approx(73.3 / 275, abs=0.0005)
    assert state.sides == ("left", "right")
    assert state.place / MM_PER_INCH == pytest.approx(10 - 60 / 25.4)


def test_feet_moved_out_as_told_reach_the_ratio() -> None:
    review = review_of(BENCH)
    piece = weighing(only_piece(review), (40, 14, 6, 10))
    state = of_kind(states(piece, review.plan, review.setting, LIMITS, {}), "person")
    for least in (0.5, 1.0, 1.25, 2.0):
        # By hand: 40 lb at 14 + d inside, 275 lb at 7.638 - d outside.
        moved = state.further_out(least) / MM_PER_INCH
        assert 40 * (14 + moved) / (275 * (10 - 60 / 25.4 - moved)) == pytest.approx(least)
    assert state.further_out(0.2) == 0.0


CHAIR = """
plan "Chair" in millimetres
stock post: actual 40 x 40 european beech, 2.4 m
stock top: actual 30 x 500 european beech, 2.4 m
part leg.left: post, upright, 420 tall, on floor, left at 0, front at 0
part leg.right: like leg.left, left at 460
part leg.third: like leg.left, front at 360
part leg.fourth: like leg.right, front at 360
part seat: top, across, flat, on leg.left, left at 0, 500 long, front at %s
load seat: 1 person seated
room: indoors, wall behind
"""


@pytest.mark.parametrize(("overhang", "margin"), [(40, 16_200), (90, -13_800)])
def test_a_sitter_before_the_feet_of_a_chair(overhang: int, margin: int) -> None:
    # Safety notes W18: chair 60 N at 220 mm behind its feet, seat 450 mm up, 600 N at 60 mm inside its
    # front edge and 20 N level (EN 1022:2018): +16 200 N·mm at 40 mm overhang, -13 800 N·mm at 90 mm.
    review = review_of(CHAIR % f"0 - {overhang}")
    piece = replace(only_piece(review), masses=(Mass(60 / NEWTON_PER_KG, 250, 220, 300),))
    scene = Scene(piece, review.plan, review.setting, LIMITS)
    (front,) = [edge for edge in scene.edges if side_of(edge) == "front"]
    seat_test, _ = scene.sitting(front, piece.loads[0])
    assert seat_test.kind == "sitter"
    assert seat_test.balance.margin == pytest.approx(margin, abs=50)


def test_the_worse_of_the_seat_test_and_the_heavy_sitter_is_told() -> None:
    # At 90 mm overhang: 275 lb is 1223 N at 30 mm outside, 36 700 against 13 200; the seat test has 27 000.
    review = review_of(CHAIR % "0 - 90")
    piece = replace(only_piece(review), masses=(Mass(60 / NEWTON_PER_KG, 250, 220, 300),))
    *_, state = states(piece, review.plan, review.setting, LIMITS, {})
    assert (state.kind, state.sides) == ("person", ("front",))
    assert state.balance.ratio == pytest.approx(13_200 / (275 * NEWTON_PER_POUND * 30))


def test_the_wall_catches_a_piece_that_leans_back() -> None:
    near = review_of(CHAIR % 0)
    assert [edge.outward[1] for edge in _edges(near)] == pytest.approx([-1.0, 0.0, 0.0], abs=1e-9)
    # 800 mm off the wall it has fallen before it gets there.
    far = review_of((CHAIR % 0).replace("wall behind", "wall behind 800 mm away"))
    assert len(_edges(far)) == 4


def _edges(review: Review) -> tuple[TippingEdge, ...]:
    return free_edges(only_piece(review), review.setting)


def test_weight_outside_the_feet_tips_it_by_itself() -> None:
    review = review_of(BENCH.replace("load seat: 2 people seated", ""))
    # 30 lb at 14 in inside the left edge, 50 lb hung 9 in outside it: 420 holds, 450 turns.
    piece = weighing(only_piece(review), (30, 14, 6, 8), (50, -9, 6, 16))
    state = of_kind(states(piece, review.plan, review.setting, LIMITS, {}), "empty")
    assert state.sides == ("left",)
    assert state.balance.ratio == pytest.approx(420 / 450)


@pytest.mark.parametrize(
    "line", [((0, 0), (0, 10)), ((30, -5), (-20, 60)), ((100, 0), (0, 40)), ((-50, 5), (90, 15))]
)
def test_the_share_outside_an_edge_against_a_general_geometry_library(
    line: tuple[tuple[float, float], tuple[float, float]],
) -> None:
    solid = square_solid("shelf", (-20.0, -10.0, 0.0), (80.0, 30.0, 20.0), Axis.ACROSS, Axis.DEEP, Axis.UP)
    (sx, sy), (ex, ey) = line
    edge = TippingEdge((sx, sy), (ex, ey))
    share, lever = outside_share(solid, edge)
    out_x, out_y = edge.outward
    run_x, run_y = -out_y * 1e4, out_x * 1e4
    beyond = Polygon(
        [
            (sx - run_x, sy - run_y),
            (sx + run_x, sy + run_y),
            (sx + run_x + out_x * 1e4, sy + run_y + out_y * 1e4),
            (sx - run_x + out_x * 1e4, sy - run_y + out_y * 1e4),
        ]
    ).intersection(box(-20, -10, 80, 30))
    assert share == pytest.approx(beyond.area / 4000)
    if beyond.area:
        assert lever == pytest.approx(-edge.arm(beyond.centroid.x, beyond.centroid.y))


def test_two_pieces_that_do_not_touch_stand_by_themselves() -> None:
    review = review_of(BENCH + "part block: plank, across, flat, 20 long, on floor, left at 80, front at 0\n")
    found = pieces(review.plan, review.setting, review.masses)
    assert [piece.parts for piece in found] == [("leg.left", "leg.right", "seat"), ("block",)]
    assert found[1].whole.kg == pytest.approx(review.masses["block"].kg)


def test_storage_is_shelves_one_over_another() -> None:
    case = only_piece(review_of(CASE % 48))
    assert (case.levels, case.stored, case.storage) == (4, True, True)
    bench = only_piece(review_of(BENCH))
    assert (bench.levels, bench.stored, bench.storage, bench.shelved) == (1, False, False, False)


def test_feet_moved_out_past_the_sitter_by_hand() -> None:
    # The chair at 90 mm overhang in the seat test: 13 200 against 600 x 30 + 9000. For twice as much: 30 mm
    # on the sitter holds it down too: 13 200 + 60 d + 600 (d - 30) = 2 x 9000, so d = 34.545 mm.
    review = review_of(CHAIR % "0 - 90")
    piece = replace(only_piece(review), masses=(Mass(60 / NEWTON_PER_KG, 250, 220, 300),))
    scene = Scene(piece, review.plan, review.setting, LIMITS)
    (front,) = [edge for edge in scene.edges if side_of(edge) == "front"]
    seat_test, _ = scene.sitting(front, piece.loads[0])
    assert seat_test.further_out(2.0) == pytest.approx((18_000 - 13_200 + 18_000) / 660)
    # With 20.55/810 m it is still outside: 13 200 + 60 d = 1.25 (27 000 - 600 d).
    assert seat_test.further_out(1.25) == pytest.approx((33_750 - 13_200) / 810)


TABLE = """
plan "Table" in inches
stock board: actual 3/4 x 11 1/4 red oak, 8 ft
stock strip: actual 3/4 x 2 1/2 red oak, 8 ft
outline frame: 30 across, 11 1/4 deep, 28 tall, on floor
part leg for each of left, right: board, upright, facing side, as tall as frame
    on floor, flush with each of frame, flush with front of frame
part under: board, across, flat, on leg.left, from left of frame to right of frame, flush with front of frame
part top: board, across, flat, on under, from left of frame to right of frame, flush with front of frame
part stretcher: strip, across, flat, between leg.left and leg.right, centred deep on frame, bottom at 8
load top: books
"""


def test_a_doubled_top_and_a_stretcher_make_no_levels_and_a_table_of_books_is_no_storage() -> None:
    table = only_piece(review_of(TABLE))
    assert (table.levels, table.stored, table.storage) == (1, True, False)
    pile = (
        TABLE.partition("part under")[0]
        + """\
part board: board, across, flat, bottom at 28, left at 0, front at 0, 30 long
    20 copies every 3/4 up
"""
    )
    assert only_piece(review_of(pile)).levels == 1
    shelf = TABLE.replace("stretcher: strip", "stretcher: board")
    assert only_piece(review_of(shelf)).levels == 2
    assert only_piece(review_of(shelf)).storage
