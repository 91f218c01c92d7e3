"""What hardware holds, what it does not reach, and what hangs on nothing. The cabinet is the demo's own."""

from __future__ import annotations

import pytest

from reviewer.findings import Severity
from reviewer.model.plan import FLOOR
from reviewer.reports.buying import buying_of
from tests.support import findings_of, judgement_of, review_of, told
from tests.test_plans import PLANS

#: A map cabinet of the reading room: a door at the left, two drawers at the right.
CABINET = (PLANS / "map-cabinet.plan").read_text(encoding="utf-8")


def test_a_sound_cabinet_with_a_door_and_two_drawers_is_quiet() -> None:
    told = [(each.rule, each.weight) for each in judgement_of(CABINET).findings if each.rule != "assumed"]
    # By its size it could hold clothes, which a rule is about; that is worth a note and no more.
    assert told == [("regulated-piece", Severity.NOTE)]


def test_where_its_drawers_are() -> None:
    """The opening is 36 - 3/4 - 17 3/4 = 17 1/2 wide, so a drawer is 16 1/2; 24 1/2 high, so 10 are to spare."""
    review = review_of(CABINET)
    inch = 25.4
    front = review.setting.solids["drawer.2.front"]
    assert front.length / inch == pytest.approx(16.5)
    # From the top of the base, 4 3/4: three openings of 10 / 3 and one drawer are below the second.
    assert front.low[2] / inch == pytest.approx(4.75 + 2 * 10 / 3 + 7.25)
    assert review.setting.solids["drawer.1.bottom"].extent(0) / inch == pytest.approx(
        16.5 - 2 * 0.47, abs=0.01
    )


def test_all_weight_comes_to_the_floor_through_the_hardware() -> None:
    review = review_of(CABINET)
    assert review.holding.floating == ()
    weight = sum(mass.kg for mass in review.masses.values()) + 10
    assert review.carrying.on_floor + review.carrying.on_wall == pytest.approx(weight * 9.80665, rel=0.001)
    assert {held.by for held in review.holding.supports["drawer.1.side.left"]} >= {"divider"}
    assert {held.by for held in review.holding.supports["door.leaf"]} == {"side.left"}


def test_doors_and_drawers_weigh_on_the_piece_that_they_hang_in() -> None:
    (piece,) = review_of(CABINET).pieces
    assert "door.leaf" in piece.parts
    assert "drawer.2.bottom" in piece.parts


def test_hardware_on_the_shopping_list() -> None:
    lines = [each for each in buying_of(review_of(CABINET)).hardware if "in" not in each.why.split()[:1]]
    assert [(each.how_many, each.said, each.why, each.price) for each in lines[-5:-1]] == [
        (2, "hinges 2 1/2 in", "for door", 8.2),
        (2, "pairs of slides 14 in", "for drawer.1 and drawer.2", 24.0),
        (3, "knobs", "for door, drawer.1.front and drawer.2.front", 6.0),
        (None, "screws #6 × 5/8 in", "for the hinges and slides, one in each hole", None),
    ]
    assert "of glue line in" in lines[-1].why


def test_hinges_without_a_number_are_two() -> None:
    text = CABINET.replace("2 hinges 2 1/2 at 4.10", "hinges")
    (line,) = [each for each in buying_of(review_of(text)).hardware if each.said == "hinges"]
    assert (line.how_many, line.why) == (2, "for door; the number of 2 of them is taken for granted")


# ---------------------------------------------------------------- out of reach


def test_slides_that_do_not_reach() -> None:
    text = CABINET.replace("across with 1/2 each end", "across with 3/4 each end")
    assert told(text, "joint-out-of-reach") == [
        "error drawer.1.side.left, drawer.2.side.left, divider @ fit drawer.* to divider, side.right: "
        "The slides of drawer.1.side.left and drawer.2.side.left do not reach divider: they are 3/4 in side to "
        "side apart, and slides hold across up to 5/8 in on each side (common practice, no source). → "
        "Move them together, put a spacer between them, or fit drawer.1.side.left and drawer.2.side.left to "
        "something nearer."
    ]
    assert findings_of(text, "part-floats") == ()
    assert findings_of(text, "moves-unfitted") == ()


def test_slides_that_reach_one_side_only() -> None:
    text = CABINET.replace(
        "between divider and side.right across with 1/2 each end",
        "left 1/2 right of right of divider, right 1 left of left of side.right",
    )
    (line,) = told(text, "joint-out-of-reach")
    assert "do not reach side.right: on the other side they are 1 in side to side apart" in line


def test_a_hinge_that_does_not_reach() -> None:
    text = CABINET.replace("less 1/4\n    back 0 in front of front", "less 1/4\n    back 1 in front of front")
    (line,) = told(text, "joint-out-of-reach")
    assert line.startswith(
        "error door.leaf, side.left @ fit door to side.left: The hinges of door.leaf do not reach side.left: "
        "they are 1/8 in side to side and 1 in front to back apart, and hinges hold across up to 1/4 in"
    )


@pytest.mark.parametrize(("gap", "held"), [("1/4", True), ("5/16", False)])
def test_a_hinge_reaches_a_quarter_of_an_inch(gap: str, held: bool) -> None:
    text = CABINET.replace(
        "from right of side.left to left of divider, less 1/4",
        f"left {gap} right of right of side.left, right 1/8 left of left of divider",
    )
    assert (findings_of(text, "joint-out-of-reach") == ()) is held


def test_a_plan_can_say_how_far_its_hardware_reaches() -> None:
    text = CABINET.replace("across with 1/2 each end", "across with 3/4 each end")
    assert findings_of(f"{text}limit slide-reach: 3/4\n", "joint-out-of-reach") == ()


# ---------------------------------------------------------------- nothing that hangs it


def without(line: str) -> str:
    assert line in CABINET
    return CABINET.replace(line, "")


def test_drawers_that_nothing_hangs() -> None:
    text = without("fit drawer.* to divider, side.right: slides 14 at 12, screws #6 x 5/8\n")
    (line,) = told(text, "moves-unfitted")
    assert line.endswith(
        "@ slides out 14: drawer.1 and drawer.2 slide out 14 in, but nothing hangs them: no hardware, and "
        "nothing that they rest on. → Say what holds them: fit drawer.* to side.right: slides 14 in"
    )
    assert findings_of(text, "part-floats") == ()


def test_a_door_that_nothing_hangs() -> None:
    text = without("fit door to side.left: 2 hinges 2 1/2 at 4.10, screws #6 x 5/8\n")
    assert told(text, "moves-unfitted") == [
        "warning door.leaf @ opens 110 degrees, hinged left: door opens 110 degrees, hinged left, but nothing "
        "hangs it: no hardware, and nothing that it rests on. → "
        "Say what holds it: fit door to side.left: 2 hinges"
    ]


def test_a_drawer_on_wooden_runners_hangs_on_nothing_more() -> None:
    text = without("fit drawer.* to divider, side.right: slides 14 at 12, screws #6 x 5/8\n") + (
        "part runner for each of 1, 2: thin, flat, from right of divider to left of side.right, 16 deep\n"
        "    under drawer.each, flush with front of side.left\n"
        "join runner.* to divider, side.right: screws #6 x 1 1/2, 3 per joint, from outside\n"
    )
    assert findings_of(text, "moves-unfitted") == ()
    assert findings_of(text, "touching-not-joined") == ()
    assert findings_of(text, "part-floats") == ()


def test_a_slip_in_a_join_of_a_member_is_told_once() -> None:
    (line,) = told(CABINET.replace("join back to side.*:", "join back to front:"), "joint-out-of-reach")
    assert line.startswith("error drawer.1.back, drawer.2.back, drawer.1.front, drawer.2.front @ back:")


CHEST = """\
plan "Book chest" in inches
stock board: actual 3/4 x 15 pine panel
outline chest: 30 across, 15 deep, 15 tall, on floor
part end for each of left, right: board, deep, on edge, flush with each of chest, as long as chest, on floor
    from front of chest to back of chest
part wall for each of front, back: board, across, on edge, between end.left and end.right, on floor
    flush with each of chest
part floorboard: board, across, flat, between end.left and end.right, rip 13 1/2, bottom 0 above floor
    centred deep on chest
join wall.*, floorboard to end.*: screws #8 x 2, 3 per joint, from outside
part lid: board, across, flat, from left of chest to right of chest, on end.left, flush with front of chest
    opens 100 degrees, hinged back
""".replace("as long as chest, on floor\n", "on floor\n")


def test_a_lid_on_its_box_wants_hinges_or_a_join() -> None:
    assert findings_of(CHEST, "moves-unfitted") == ()  # it lies on the box
    (line,) = told(CHEST, "touching-not-joined")
    assert line.startswith("warning lid")
    hinged = CHEST + "fit lid to wall.back: 2 hinges 2 1/2, 1 stays\n"
    for rule in ("touching-not-joined", "part-floats", "joint-out-of-reach", "unsupported-end"):
        assert findings_of(hinged, rule) == ()


# ---------------------------------------------------------------- castors

TROLLEY = (
    """\
plan "Book trolley" in inches
stock board: actual 3/4 x 11 1/4 pine panel
outline cart: 24 across, 11 1/4 deep, 20 tall, bottom 2 1/2 above floor
part side for each of left, right: board, upright, facing side, as tall as cart, flush with bottom of cart
    flush with each of cart, flush with front of cart
part shelf for each of low, high: board, across, flat, between side.left and side.right
    flush with front of cart, bottom (each) above bottom of cart
join shelf.* to side.*: screws #8 x 2, 3 per joint, from outside
fit side.* to floor: 2 castors at 5, 2 1/2 tall, screws #10 x 3/4
load shelf.*: books
room hall: indoors, no children
""".replace("part shelf for each of low, high", "part shelf")
    .replace("(each)", "1")
    .replace("shelf.*", "shelf")
)


def test_a_trolley_stands_on_its_castors() -> None:
    review = review_of(TROLLEY)
    assert review.holding.floating == ()
    assert {held.by for held in review.holding.supports["side.left"]} == {FLOOR}
    (piece,) = review.pieces
    assert piece.feet == ("side.left", "side.right")
    assert piece.polygon is not None
    assert sorted({round(x / 25.4, 3) for x, _ in piece.polygon}) == [0, 24]
    assert review.carrying.on_floor > 0
    rules = {each.rule for each in judgement_of(TROLLEY).findings}
    assert rules.isdisjoint({"part-floats", "touching-not-joined", "joint-out-of-reach", "unsupported-end"})
    (line,) = [each for each in buying_of(review).hardware if each.said == "castors"]
    assert (line.how_many, line.price) == (4, 20.0)


def test_castors_that_are_not_as_tall_as_the_part_is_high() -> None:
    assert told(TROLLEY.replace("2 1/2 tall", "3 tall"), "joint-out-of-reach") == [
        "error side.left, side.right @ fit side.* to floor: The underside of side.left and side.right is "
        "2 1/2 in above the floor, and their castors are 3 in tall. → "
        "Set it out 3 in above the floor, or say how tall they are: castors, 2 1/2 in tall"
    ]


def test_castors_of_no_stated_height() -> None:
    assert findings_of(TROLLEY.replace(", 2 1/2 tall", ""), "joint-out-of-reach") == ()
    far = TROLLEY.replace(", 2 1/2 tall", "").replace("bottom 2 1/2 above", "bottom 7 above")
    (line,) = told(far, "joint-out-of-reach")
    assert (
        "is 7 in above the floor, and their castors of no stated height are taken as at most 6 in tall "
        "(common practice, no source). → Say how tall they are: castors, 7 in tall" in line
    )
