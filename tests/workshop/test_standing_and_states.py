"""Which states there are and what each counts: lines that no test saw when they were broken, each by hand."""

from __future__ import annotations

import math
from dataclasses import replace
from pathlib import Path

import pytest

from reviewer.findings import Severity
from reviewer.mechanics.stability import Balance, TippingEdge, support_polygon
from reviewer.rules.safety._tip_words import _severity
from reviewer.units import MM_PER_INCH, NEWTON_PER_POUND, Value
from reviewer.workshop.enclosed_volume import Room, counted, door_volume
from reviewer.workshop.standing import Piece
from reviewer.workshop.steadying import wider
from reviewer.workshop.tipping import Kind, State
from tests.support import findings_of, review_of, told

PLANS = Path(__file__).parents[2] / "plans"

#: A case of red oak with a door, so many inches tall, the door's bottom so high, on such a floor.
CUPBOARD = """
plan "Cupboard" in inches
stock board: actual 3/4 x 11 1/4 red oak, 8 ft
stock ply: birch plywood 3/4, sheet 48 x 96
outline case: 30 across, 11 1/4 deep, 72 tall, on floor
part side for each of left, right: board, upright, facing side, as tall as case, on floor
    flush with each of case, flush with front of case
part shelf: board, across, flat, between side.left and side.right, flush with front of case
    5 copies spread evenly up from bottom of case to top of case
part door: ply, facing front, 14 across, {tall} tall, back 0 in front of front of side.left
    flush with left of case, bottom {bottom} above floor, opens 90 degrees, hinged left
fit door to side.left: 2 hinges
room: indoors, wall behind, floor {floor}, children under 6
"""


def state(plan: str, kind: str) -> State:
    (found,) = review_of(plan).tipping
    return next(each for each in found.states if each.kind == kind)


def kinds(plan: str) -> list[str]:
    (found,) = review_of(plan).tipping
    return [each.kind for each in found.states]


def piece_of(plan: str) -> Piece:
    (found,) = review_of(plan).pieces
    return found


def test_a_child_hangs_on_a_tall_door_no_higher_than_it_reaches() -> None:
    # The door's top is at 70 in; a child reaches 56 (height of the push in ASTM F2057-23, from memory).
    child = state(CUPBOARD.format(tall=68, bottom=2, floor="wood"), "child")
    assert child.on == "door"
    assert child.place / MM_PER_INCH == pytest.approx(56)


def test_nobody_hangs_on_a_door_that_is_all_above_a_childs_reach() -> None:
    low = state(CUPBOARD.format(tall=14, bottom="55 1/2", floor="wood"), "child")
    assert low.on == "door"
    high = state(CUPBOARD.format(tall=14, bottom=57, floor="wood"), "child")
    assert high.on.startswith("shelf")


def test_a_push_on_carpet_leans_the_piece_first() -> None:
    # sin t = 0.43 / 11.25 (test block of ASTM F2057-23): its middle comes nearer to the edge, so less holds.
    plan = CUPBOARD.format(tall=60, bottom=2, floor="carpet")
    push, piece = state(plan, "push"), piece_of(plan)
    lean = math.asin(0.43 / 11.25)
    whole = piece.whole
    # The edge of the feet is the front of the sides, at y = 0; the door hangs in front of it.
    front = min(y for _, y in piece.polygon or ())
    arm = (whole.y - front) * math.cos(lean) - whole.z * math.sin(lean)
    assert push.tilt == pytest.approx(math.degrees(lean))
    turned = 10 * NEWTON_PER_POUND * 56 * MM_PER_INCH * math.cos(lean)
    assert push.balance.restoring - push.balance.overturning == pytest.approx(
        whole.weight * arm - turned, rel=1e-6
    )


def test_a_door_that_reaches_the_floor_is_no_foot() -> None:
    # Its leaf stands 3/4 in before the sides; it would turn away from under the piece when it opens.
    piece = piece_of(CUPBOARD.format(tall=68, bottom=0, floor="wood"))
    assert piece.feet == ("side.left", "side.right", "shelf.1")
    ys = [y / MM_PER_INCH for _, y in piece.polygon or ()]
    assert (min(ys), max(ys)) == (pytest.approx(0), pytest.approx(11.25))


TABLE = """
plan "Table" in millimetres
stock board: actual 20 x 300 red oak, 2400
outline frame: 900 across, 300 deep, 700 tall, on floor
part leg for each of left, right: board, upright, facing side, as tall as frame, on floor
    flush with each of frame, flush with front of frame
part top: board, across, flat, on frame, from left of frame to right of frame, flush with front of frame
part under: board, across, flat, %s
%s
"""


@pytest.mark.parametrize(("gap", "levels"), [(20, 1), (60, 1), (99, 1), (101, 2), (300, 2)])
def test_two_boards_with_no_room_for_a_book_between_are_one_level(gap: int, levels: int) -> None:
    # Own choice: a lying book, 100 mm.
    place = f"between leg.left and leg.right, flush with front of frame, top {gap} below top of frame"
    assert piece_of(TABLE % (place, "")).levels == levels


@pytest.mark.parametrize(("long", "levels"), [(280, 1), (320, 2), (560, 2)])
def test_a_board_makes_a_level_from_a_third_of_the_floor_plan_on(long: int, levels: int) -> None:
    # Own choice: a third of 900 x 300 mm is a board 300 mm long.
    place = f"{long} long, against right of leg.left, flush with front of frame, bottom 200 above floor"
    assert piece_of(TABLE % (place, "")).levels == levels


def test_a_table_with_a_load_is_looked_at_top_heavy_too() -> None:
    place = "between leg.left and leg.right, flush with front of frame, bottom 650 above floor"
    assert "high" not in kinds(TABLE % (place, ""))
    assert "high" in kinds(TABLE % (place, "load top: 20 kg"))


def test_half_of_the_room_behind_a_door_counts() -> None:
    # CPSC business guidance, Clothing Storage Units: drawers whole, behind doors half.
    box = ((0.0, 0.0, 0.0), (1.0, 1.0, 1.0))
    rooms = [Room("a", "drawer", box, 2.0), Room("b", "drawer", box, 1.0)]
    rooms += [
        Room("c", "door", box, door_volume(3.0, 1.0, 1.0)),
        Room("d", "door", box, door_volume(1.0, 1.0, 1.0)),
    ]
    assert counted(rooms) == pytest.approx(5.0)


def test_the_feet_of_a_cross_moved_out_keep_its_shape() -> None:
    # An octagon between the ends of two bars: every side 20 mm further out, corners with it, none added.
    corners = [(300, 20), (20, 300), (-20, 300), (-300, 20), (-300, -20), (-20, -300), (20, -300), (300, -20)]
    base = piece_of(
        TABLE % ("between leg.left and leg.right, flush with front of frame, bottom 300 above floor", "")
    )
    piece = replace(base, polygon=support_polygon([(float(x), float(y)) for x, y in corners]))
    out = wider(piece, ("front", "back", "left", "right"), 20.0)
    assert len(out.polygon or ()) == 8
    before = sorted(round(edge.arm(0.0, 0.0), 6) for edge in piece.edges)
    after = sorted(round(edge.arm(0.0, 0.0), 6) for edge in out.edges)
    assert after == pytest.approx([arm + 20 for arm in before])


@pytest.mark.parametrize(
    ("kind", "in_scope", "weight"),
    [
        ("all open", False, Severity.WARNING),
        ("all open", True, Severity.ERROR),
        ("open", False, Severity.ERROR),
    ],
)
def test_all_open_at_once_is_an_error_only_where_its_standard_speaks(
    kind: Kind, in_scope: bool, weight: Severity
) -> None:
    edge = TippingEdge((0.0, 0.0), (100.0, 0.0))
    found = State(
        kind=kind, balance=Balance(edge, 1.0, 2.0), force=0.0, place=0.0, said="", span=None,
        weight=10.0, shifts=0.0, source="",
    )  # fmt: skip
    assert _severity(found, 0.9, in_scope) is weight


def test_each_restraint_is_to_hold_its_share_of_the_pull() -> None:
    # Two sides of 72 in and five shelves of 28 1/2 in, 3/4 x 11 1/4: 2417.3 cu in of red oak, 61.62 lb at 5.625 in.
    # A push of 200 lb at 56 in lacks 11200 - 346.6 over 68 in: 159.6 lb, 79.8 for each of two, over 60.
    plan = CUPBOARD[: CUPBOARD.index("part door")] + (
        "room: indoors, wall behind, no children\nlimit tip-push-force: 200 lb\n"
    )
    (found,) = findings_of(plan, "restraint-missing")
    pull = found.values["pull"]
    assert isinstance(pull, Value)
    heavy = (144 + 142.5) * 0.75 * 11.25 * 0.63 * 1.12 * 62.43 / 1728
    assert pull.amount / NEWTON_PER_POUND == pytest.approx((11200 - heavy * 5.625) / 68 / 2, rel=1e-3)


def test_nobody_straps_a_seat_to_a_wall() -> None:
    plan = """
        plan "Wall bench" in inches
        stock plank: actual 1 1/2 x 17 1/4 douglas fir, 8 ft
        stock post: actual 1 1/2 x 11 1/4 douglas fir, 8 ft
        outline frame: 40 across, 11 1/4 deep, 16 tall, on floor
        part leg for each of left, right: post, upright, facing side, as tall as frame, on floor
            flush with each of frame, flush with front of frame
        part seat: plank, across, flat, on frame, from left of frame to right of frame, flush with back of frame
        load seat: 2 people seated
        room: indoors, wall behind
        """
    (line,) = told(plan, "tips")
    assert "tips over to the front with 2 people seated" in line
    assert "Tie it" not in line
    assert "further out at the front" in line


@pytest.mark.parametrize(
    ("plan", "sides"),
    [
        ("low-table.plan", ("front", "back")),
        ("open-bookcase.plan", ("left", "right")),
        ("plant-stand.plan", ("front", "back", "left", "right")),
    ],
)
def test_sides_on_which_an_empty_piece_leans_as_far_are_told_together(
    plan: str, sides: tuple[str, ...]
) -> None:
    # Nothing turns it, so the lean that tips it decides: the same both ways, but for the last bits of a sum.
    (found,) = review_of((PLANS / plan).read_text(encoding="utf-8")).tipping
    assert next(each for each in found.states if each.kind == "empty").sides == sides
