"""Pieces that a rule speaks of, by title, by load and by shape; the figures are those of the scopes."""

from __future__ import annotations

import pytest

from reviewer.findings import Severity
from reviewer.reference.cautions import regulated_pieces, regulated_signs
from reviewer.workshop.regulated import _SHAPES
from reviewer.workshop.who_uses import made_for_a_child, word_in
from tests.rules.safety.test_people import HINGED, chest
from tests.support import findings_of, review_of, told

RULE = "regulated-piece"
BOARD = """
    plan "{title}" in inches
    stock board: 1x8 pine
    part board: board, across, flat, 30 long, on floor, left at 0, front at 0
    {more}
"""


def weights(plan: str) -> list[Severity]:
    return [finding.weight for finding in findings_of(plan, RULE)]


def titled(title: str, more: str = "") -> list[Severity]:
    return weights(BOARD.format(title=title, more=more))


def test_every_sign_names_a_kind_and_a_shape() -> None:
    kinds = {piece.kind for piece in regulated_pieces()}
    for sign in regulated_signs():
        assert sign.kind in kinds
        assert sign.words or sign.shape
        assert sign.shape in {*_SHAPES, ""}
        assert sign.weight in {severity.word for severity in Severity}


def test_what_must_not_be_built_at_home_is_an_error() -> None:
    stop = {piece.kind for piece in regulated_pieces() if piece.level in ("stop", "stop and refer")}
    # Made of glass, wired, on a fireplace: a plan of boards cannot say so, or warns only.
    unsaid = {
        "glass door in a building opening",
        "piece with built-in outlets, lights or a charger",
        "fireplace mantel or surround",
    }
    assert {sign.kind for sign in regulated_signs() if sign.weight == "error"} == stop - unsaid


@pytest.mark.parametrize(
    ("title", "found"),
    [
        ("Cot for the baby", [Severity.ERROR]),
        ("Bedside crib", [Severity.ERROR]),
        ("Cribbage board", []),
        ("Wine cradle", []),
        ("Highchair", [Severity.ERROR]),
        ("Bunk beds", [Severity.ERROR]),
        ("Bunker shelf", []),
        ("Toy box", [Severity.WARNING]),
        ("Toybox for blocks", [Severity.WARNING]),
        ("Learning tower", [Severity.WARNING]),
        ("Toddler bed", [Severity.WARNING]),
        ("Mantelpiece", [Severity.WARNING]),
        ("Children's stool", [Severity.NOTE]),
        ("Scottish stool", []),
        ("Plant nursery stool", []),
        ("Kid leather chair", []),
        ("Baby grand piano stool", []),
        ("High chair rail", []),
        ("Crib wall for the slope", []),
        ("Cot-side table", []),
        ("Shelf beside the crib", []),
        ("Cot with a side table", [Severity.ERROR]),
        ("Swing-top bin", []),
        ("Porch swing", [Severity.ERROR]),
        ("Kitchen helper trolley", []),
        ("Bench", []),
    ],
)
def test_titles(title: str, found: list[Severity]) -> None:
    assert titled(title) == found


def test_words_are_whole_and_the_longest_counts() -> None:
    assert word_in("Bunk Beds for two", ("bunk", "bunk bed")) == "bunk bed"
    assert word_in("Scot's stool", ("cot",)) is None
    assert word_in("COTS", ("cot",)) == "cot"


@pytest.mark.parametrize(
    ("title", "childs"),
    [
        ("Kids' table", True),
        ("Nursery bookcase", True),
        ("Plant stand for the nursery", True),  # it may be that of a child
        ("Baby's bookcase", True),
        ("Playroom shelf", True),
        ("Plant nursery bench", False),
        ("Nursery pots shelf", False),
        ("Nursery bench for seedlings", False),
        ("Potting bench, tree nursery", False),
        ("Kids' potting bench for the nursery", True),  # one word is enough
        ("Kid leather stool", False),
        ("Baby grand stool", False),
        ("Child-proof cabinet", False),
        ("Child's child-proof cabinet", False),
        ("Shelf for baby's breath", False),
    ],
)
def test_whom_a_title_gives_a_piece_to(title: str, childs: bool) -> None:
    assert made_for_a_child(review_of(BOARD.format(title=title, more="")).plan) is childs


def test_an_outline_may_say_it() -> None:
    outline = "outline crib: 52 across, 28 deep, 30 tall, on floor"
    assert titled("Sleeping place", outline) == [Severity.ERROR]


def test_its_whole_sentence() -> None:
    assert told(BOARD.format(title="Crib", more=""), RULE) == [
        'error - @ plan "Crib" in inches: Crib: its name says “crib”, so there is a rule or a standard for '
        "it: 16 CFR 1219 (ASTM F1169) (US federal). Do not build or alter a crib from a home plan: federal "
        "rules require design, testing and certification. Known limits such as slats no more than 2-3/8 in "
        "apart and corner posts no more than 1/16 in proud are only part of the rule. Buy a current "
        "certified crib. → Do not build it from this plan alone. Have it checked against the current text of "
        "that rule by a test laboratory or whoever is licensed to; other countries and your local code have "
        "rules of their own, and what is reckoned here certifies nothing."
    ]


# ---------------------------------------------------------------- beds

LOFT = """
    plan "{title}" in inches
    stock post: actual 3 x 3 pine, 8 ft
    stock rail: 2x6 pine, 8 ft
    stock slat: 1x4 pine, 8 ft
    outline nook: 80 across, 42 deep, 76 tall, on floor
    part post: post, upright, as tall as nook, in each corner of nook
    part side for each of front, back: rail, across, on edge
        between post.each-left and post.each-right, flush with each of nook, bottom {up} above floor
    part slat: slat, deep, flat, on side.front, from front of nook to back of nook
        12 copies spread evenly across from right of post.front-left to left of post.front-right
    {more}
    room den: indoors
"""
GUARD = """part guard for each of front, back: rail, across, on edge
        between post.each-left and post.each-right, flush with each of nook, bottom 62 above floor"""
LOWER = """part low for each of front, back: rail, across, on edge
        between post.each-left and post.each-right, flush with each of nook, bottom 8 above floor
    part lath: slat, deep, flat, on low.front, from front of nook to back of nook
        12 copies spread evenly across from right of post.front-left to left of post.front-right"""


def test_a_high_place_with_rails_is_known_without_its_name() -> None:
    assert weights(LOFT.format(title="Nook", up=48, more=GUARD)) == [Severity.WARNING]
    lain_on = GUARD + "\n    load slat.*: 1 person seated"
    assert weights(LOFT.format(title="Nook", up=48, more=lain_on)) == [Severity.ERROR]


def test_where_a_bunk_bed_begins() -> None:
    """16 CFR 1213.3(a)(1): the underside of the mattress support is over 30 in; a rail is 5 1/2 in."""
    assert weights(LOFT.format(title="Bunk", up="24 1/2", more="")) == [Severity.NOTE]
    assert weights(LOFT.format(title="Bunk", up="24 5/8", more="")) == [Severity.ERROR]


def test_two_places_one_above_the_other() -> None:
    (found,) = findings_of(LOFT.format(title="Nook", up=48, more=LOWER), RULE)
    assert found.weight is Severity.WARNING
    assert "16 CFR 1213" in str(found.values["rule"])


def test_what_things_are_stored_on_is_no_bed() -> None:
    stored = LOWER + "\n    load slat.*, lath.*: 40 kg"
    assert weights(LOFT.format(title="Rack", up=48, more=stored)) == []
    stood_on = LOWER + "\n    load slat.*, lath.*: 1 person standing"
    stage = findings_of(LOFT.format(title="Stage", up=48, more=stood_on), RULE)
    assert all("16 CFR 1213" not in str(found.values["rule"]) for found in stage)  # steps, but no bunk bed
    assert weights(LOFT.format(title="Rack", up=48, more="")) == []  # posts alone are no rails


def test_a_bunk_is_one_only_above_30_in() -> None:
    # W35: the underside of the mattress support at 29 in needs no rails, 16 CFR 1213.3(a)(1).
    low, high = LOFT.format(title="Bunk", up=20, more=""), LOFT.format(title="Bunk", up=48, more="")
    assert weights(low) == [Severity.NOTE]
    assert weights(high) == [Severity.ERROR]


# ---------------------------------------------------------------- chests


def test_a_lidded_chest() -> None:
    # 28.5 x 13.5 x 12 1/4 in of room is 2.7 cubic feet; the scope begins at 1.1.
    assert weights(chest()) == [Severity.NOTE]
    assert weights(chest(children=", children under 6")) == [Severity.WARNING]
    assert weights(chest(children=", no children")) == [Severity.NOTE]
    assert weights(chest(long=12)) == []
    assert weights(chest(moves="lifts out").replace("fit lid to wall.back: 3 hinges 2 1/2\n", "")) == []


def test_a_toy_chest() -> None:
    (finding,) = findings_of(chest(more="load base: toys"), RULE)
    assert finding.weight is Severity.WARNING
    assert "1250" in str(finding.values["rule"])
    assert weights(chest(more="load base: toys", children=", no children")) == [Severity.NOTE]
    (finding,) = findings_of(chest(title="Child's chest"), RULE)
    assert "1250" in str(finding.values["rule"])


def test_a_seat_with_a_lid() -> None:
    (finding,) = findings_of(chest(title="Window bench", children=", children under 6"), RULE)
    assert "toy or blanket chest" in str(finding.values["rule"])
    assert HINGED


# ---------------------------------------------------------------- loads


def test_a_screen_is_tied() -> None:
    assert titled("Low case", "load board: tv") == [Severity.WARNING]
    tied = "load board: tv\n    room den: indoors, wall behind\n    restrain board to wall: strap, screws #10 x 2 1/2 into stud, 10 up, 2 of them"
    assert titled("Low case", tied) == [Severity.NOTE]


def test_what_is_stood_on() -> None:
    assert titled("Step stool") == [Severity.WARNING]  # nothing says that anyone stands on it
    assert titled("Step stool", "load board: 1 person standing") == [Severity.NOTE]
    tall = """
        plan "Steps" in inches
        stock board: 1x8 pine
        part side: board, upright, facing side, {tall} tall, on floor, left at 0, front at 0
        part tread: board, across, flat, 20 long, on side, left at 0, front at 0
        load tread: 1 person standing
    """
    assert weights(tall.format(tall=35)) == [Severity.NOTE]
    assert weights(tall.format(tall=36)) == [Severity.WARNING]  # the tread is over 36 in: a ladder


@pytest.mark.parametrize(
    ("title", "tall", "age", "found"),
    [
        ("Child's stool", 24, 3, [Severity.ERROR]),  # 16 CFR 1231: up to three years
        ("Child's stool", 24, 4, [Severity.NOTE]),
        ("Toddler stool", 24, 9, [Severity.ERROR]),
        ("Child's stool", 10, 3, [Severity.NOTE]),
    ],
)
def test_a_high_seat_for_a_small_child(title: str, tall: int, age: int, found: list[Severity]) -> None:
    plan = f"""
        plan "{title}" in inches
        stock board: 1x12 pine
        part side: board, upright, facing side, {tall} tall, on floor, left at 0, front at 0
        part seat: board, across, flat, 12 long, on side, left at 0, front at 0
        load seat: 1 person seated
        room den: indoors, children under {age}
    """
    assert weights(plan) == found


# ---------------------------------------------------------------- storage for clothes

DRESSER = """
    plan "{title}" in inches
    stock ply: birch plywood 3/4, sheet 48 x 96 at 64
    stock box: birch plywood 1/2, sheet 48 x 96 at 52
    outline case: 32 across, 18 deep, {tall} tall, on floor
    part side for each of left, right: ply, facing side, as deep as case, as tall as case, on floor
        flush with each of case, flush with front of case
    part bottom: ply, flat, as deep as case, between side.left and side.right across
        flush with front of case, bottom 2 above floor
    part top: ply, flat, as deep as case, between side.left and side.right across
        flush with front of case, flush with top of case
    assembly drawer: between side.left and side.right across with 1/2 each end, front 0 behind front of case
        16 deep, 5 tall, 4 copies spread evenly up between bottom and top, slides out 14
        part side for each of left, right: box, facing side, as deep as drawer, as tall as drawer
            flush with each of drawer, flush with front of drawer, flush with bottom of drawer
        part end for each of front, back: box, facing front, between side.left and side.right across
            flush with each of drawer, as tall as drawer, flush with bottom of drawer
        part floor: box, flat, between side.left and side.right across, between end.front and end.back deep
            flush with bottom of drawer
    {more}
    room den: indoors{children}
"""


def dresser(title: str = "Case", tall: int = 40, more: str = "", children: str = "") -> str:
    return DRESSER.format(title=title, tall=tall, more=more, children=children)


def test_storage_for_clothes() -> None:
    assert weights(dresser()) == [Severity.NOTE]  # by its size alone
    assert weights(dresser(more="load drawer.*.floor: folded clothes")) == [Severity.WARNING]
    assert weights(dresser(title="Dresser")) == [Severity.WARNING]
    assert weights(dresser(title="Dresser", children=", no children")) == [Severity.NOTE]


def test_storage_below_the_scope() -> None:
    assert weights(dresser(tall=26)) == []  # under 27 in
    assert weights(dresser(title="Dresser", tall=26)) == [Severity.NOTE]


def test_its_figures_are_those_of_a_tape() -> None:
    (finding,) = findings_of(dresser(), RULE)
    assert finding.working
    shown = {figure.name: figure.value for figure in finding.working.figures}
    volume = shown["room in drawers and behind doors"]
    # Sheets of 18 and 12 mm. Inside a drawer: 32 in less two sides, 1 in for slides and two drawer sides;
    # 16 in less two ends. Above its floor: the five gaps share what four drawers leave of the case.
    width, deep = 32 * 25.4 - 2 * 18 - 25.4 - 2 * 12, 16 * 25.4 - 2 * 12
    gap = (40 * 25.4 - 18 - (2 * 25.4 + 18) - 4 * 5 * 25.4) / 5
    by_hand = 4 * width * deep * (5 * 25.4 - 12 + gap - 25.4 / 8)
    assert volume.amount == pytest.approx(by_hand, rel=0.002)  # type: ignore[union-attr]
