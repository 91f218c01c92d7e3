"""What is taken for granted, and that the words told with it are plan language that replaces it.

Values are those of the tables, whose sources are tested with them; sums over them are done by hand here.
"""

from __future__ import annotations

import re
from textwrap import dedent

import pytest

from reviewer.reports.content import assumption_text
from reviewer.review import Review
from reviewer.units import MM_PER_FOOT, NEWTON_PER_POUND
from reviewer.workshop.assumptions import Assumption
from tests.support import look_at, review_of

#: A piece that leaves open nearly all that can be left open.
OPEN = """
plan "Open questions" in inches
stock board: 1x12 pine
stock strip: 1x3 red oak
stock ply: birch plywood 3/4
outline case: 30 across, 11 1/4 deep, 48 tall, on floor
part side for each of left, right: board, upright, facing side, as tall as case, on floor, front at 0
    flush with each of case
part shelf: board, across, flat, between side.left and side.right, housed 1/4 each end, front at 0
    3 copies spread evenly up from bottom of case to top of case
part back: ply, facing front, from left of case to right of case, from bottom of case to top of case
    against back of side.left
part strip: strip, across, on edge, between side.left and side.right, front at 0, bottom at 4
part foot: board, across, flat, 6 long, left at 10, front at 0, bottom at 2
part prop: board, upright, facing side, left at 12, front at 0, from top of floor to bottom of foot
part leaf: board, across, flat, 20 long, left at 40, front at 0, on floor
part block: board, across, flat, 10 long, left at 60, front at 0, on leaf
join shelf.* to side.*: dado, glue
join strip to side.*: pocket screws 1 1/4
join back to side.*, shelf.*: screws #8 x 1 5/8
join foot to prop: screws #8 x 2
finish clear: on side.*, shelf.*
    sand 150
    2 coats of polyurethane waterborne
load shelf.*: books
load strip: 2 people seated
load foot: plants
restrain case to wall: strap, screws #10 x 2 1/2 into stud, 46 up, 2 of them
"""


def assumed(text: str) -> list[Assumption]:
    return list(review_of(text).assumptions)


def named(text: str, words: str) -> Assumption:
    """The one assumption whose sentence holds some words."""
    found = [taken for taken in assumed(text) if words in f"{taken.about}: {taken.what}"]
    assert len(found) == 1, [f"{taken.about}: {taken.what}" for taken in assumed(text)]
    return found[0]


def stated(review: Review, taken: Assumption) -> str:
    """The plan with an assumption's own words put in: a new line, other words, or one clause more."""
    text, span, say = review.source.text, taken.span, taken.say
    if re.match(r"(limit|room)\b", say):
        return f"{text}\n{say}\n"
    there = review.source.words(span)
    if there.startswith("stock") and "taken as {value}" in taken.what and "“" in taken.what:
        word = taken.what.partition("“")[2].partition("”")[0]
        line = text.index(word, span.end)
        return text[:line] + say + text[line + len(word) :]
    if say.startswith(there) or (there + " ").startswith(say.split()[0] + " "):
        return text[: span.start] + say + text[span.end :]
    if there.split()[0] in ("stock", "room") or text[span.end :].lstrip().startswith(":"):
        colon = text.index(":", span.end) + 1
        return f"{text[:colon]} {say},{text[colon:]}"
    return f"{text[: span.end]}, {say}{text[span.end :]}"


def test_all_that_the_open_piece_leaves_open_is_told() -> None:
    assert [f"{taken.about}: {taken.what}" for taken in assumed(OPEN)] == [
        "the room: taken as {value}",
        "board: “pine” is taken as {value}",
        "ply: “birch plywood” is taken as {value}",
        "ponderosa pine: all parts of it weigh {value}, at 12 % moisture",
        "hardwood plywood: all parts of it weigh {value}, at 12 % moisture",
        "red oak: all parts of it weigh {value}, at 12 % moisture",
        "ponderosa pine: bends as wood of mean stiffness {value} (modulus of elasticity)",
        "red oak: bends as wood of mean stiffness {value} (modulus of elasticity)",
        "ponderosa pine: is taken to bear a bending stress of {value}",
        "red oak: is taken to bear a bending stress of {value}",
        "ponderosa pine and red oak: under a load that stays, sags in the long run to {value} times what it does "
        "at first",
        "shelf.1, shelf.2 and shelf.3: books: planned at {value} of shelf",
        "strip: people seated: planned at {value} in all",
        "foot: plants: planned at {value} in all on foot",
        "board and strip: taken as {value}, which moves most",
        "board: bought at {value} moisture",
        "strip: bought at {value} moisture",
        "the room: wood there comes to {value} moisture at the dry end of the year",
        "the room: wood there comes to {value} moisture at the humid end of the year",
        "back: the grain of the sheet is taken to run {value}, along the longer side",
        "pocket screws of “strip to side.*”: taken to be {value} in each joint",
        "screws of “back to side.*, shelf.*” and 1 more join: taken to be {value} in each joint",
        "screws of “back to side.*, shelf.*” and 1 more join: taken to be driven through {value}",
        "pocket screws of “strip to side.*”: taken to begin {value} from the ends of each joint",
        "screws of “back to side.*, shelf.*” and 1 more join: taken to begin {value} from the ends of each joint",
        "screws of “back to side.*, shelf.*” and 1 more join: taken to go into {value}",
        "glue of “shelf.* to side.*”: taken as {value}",
        "dado of “shelf.* to side.*”: room is made for {value} in side.left: half of the wood",
        "polyurethane waterborne: each coat is taken to dry {value} before the next",
        "clear: taken to go on {value}",
        "case: what screws its strap to the piece is taken to hold what is asked, {value}",
        "the wall: its studs are taken to be {value} apart",
        "the studs: taken as light softwood, of specific gravity {value}",
        "the wall: its board is taken to be {value} thick",
        "the saw: each cut is taken to eat {value}",
        "every board: {value} is sawn off each end as bought, to get it square",
    ]


@pytest.mark.parametrize("place", range(32))
def test_the_words_told_read_and_replace_it(place: int) -> None:
    review = review_of(OPEN)
    taken = review.assumptions[place]
    if not taken.say:
        assert any(words in taken.what for words in ("weigh", "sags in the long run", "bends as"))
        return
    text = stated(review, taken)
    looked = look_at(text, only="assumed")
    assert looked.problems == ()
    assert looked.review is not None
    assert looked.review.plan.unknown == ()
    left = [(other.about, other.what) for other in looked.review.assumptions]
    assert (taken.about, taken.what) not in left
    assert len(left) <= len(review.assumptions)


def test_every_assumption_has_a_source_and_makes_a_sentence() -> None:
    review = review_of(OPEN)
    for taken in review.assumptions:
        assert taken.source
        text = assumption_text(taken, review.units)
        assert "{" not in text
        assert review.source.words(taken.span).strip()


# ---------------------------------------------------------------- values


def test_the_weight_is_the_density_of_the_table_times_the_volume() -> None:
    """Red oak: specific gravity 0.63 at 12 % (species.csv, Wood Handbook): 705.6 kg/m³ with its water."""
    text = """
    plan "Block" in millimetres
    stock beam: actual 100 x 200 red oak
    part block: beam, across, flat, 500 long, left at 0, front at 0, on floor
    """
    assert named(text, "weigh").value.amount == pytest.approx(0.1 * 0.2 * 0.5 * 0.63 * 1.12 * 1000)


def test_books_are_planned_at_25_pounds_a_foot() -> None:
    """loads.csv, books, mixed household shelf, high: 25 lb per foot."""
    taken = named(OPEN, "books")
    assert taken.value.amount == pytest.approx(25 * NEWTON_PER_POUND / MM_PER_FOOT)
    assert taken.say == "books, 25 lb per foot"


def test_people_are_planned_each() -> None:
    """loads.csv, one seated person: 275 lb, two of them."""
    assert named(OPEN, "people seated").say == "2 people seated, 550 lb"


def test_a_metric_plan_is_told_in_kilograms() -> None:
    text = """
    plan "Shelf" in millimetres
    stock board: actual 20 x 300 red oak
    part shelf: board, across, flat, 600 long, left at 0, front at 0, on floor
    load shelf: books
    """
    assert named(text, "books").say == "books, 37.2 kg per metre"  # 25 × 0.45359 / 0.3048


@pytest.mark.parametrize(
    ("room", "low", "high"),
    [
        ("indoors", 6, 10),
        ("indoors, heated", 6, 10),
        ("indoors, unheated", 8, 16),
        ("outdoors", 8, 16),
    ],
)
def test_the_moisture_of_the_season_follows_the_room(room: str, low: float, high: float) -> None:
    """limits.csv: moisture-season-* for a heated room, moisture-outdoors-* for the rest."""
    text = OPEN + f"room: {room}\n"
    assert named(text, "dry end").value.amount == low
    assert named(text, "humid end").value.amount == high


@pytest.mark.parametrize(
    ("stock", "moisture"),
    [("2x4 spruce-pine-fir", 19), ("actual 1 x 6 red oak", 8), ("edge-glued pine panel 3/4", 8)],
)
def test_the_moisture_at_the_yard_follows_the_stock(stock: str, moisture: float) -> None:
    text = f"""
    plan "Yard" in inches
    stock wood: {stock}
    part block: wood, {"across, flat, 5 deep" if "panel" in stock else "across, flat"}, 20 across, left at 0, front at 0, on floor
    """
    assert named(text, "bought at").value.amount == moisture


def test_plywood_lies_still_and_asks_for_no_moisture() -> None:
    text = """
    plan "Sheet" in inches
    stock ply: birch plywood 3/4
    part panel: ply, flat, 20 across, 10 deep, left at 0, front at 0, on floor
    """
    assert [
        taken for taken in assumed(text) if "moisture at" in taken.what or "{value} moisture" in taken.what
    ] == []


# ---------------------------------------------------------------- what is stated is not assumed

CLOSED = """
plan "Nothing left open" in inches
stock board: actual 3/4 x 11 1/4 red oak, moisture 8 %, flat sawn, grade d30
outline case: 30 across, 11 1/4 deep, 48 tall, on floor
part side for each of left, right: board, upright, facing side, as tall as case, on floor, front at 0
    flush with each of case
part shelf: board, across, flat, between side.left and side.right, housed 1/4 each end, front at 0
    3 copies spread evenly up from bottom of case to top of case
join shelf.* to side.*: dado 1/4 deep, glue yellow pva, screws #8 x 2, 3 per end, 1 from ends, from outside, pilot holes
finish clear: on side.*, shelf.*
    after assembly
    2 coats of polyurethane waterborne, dry 3 h
load shelf.*: books, 25 lb per foot
room hall: indoors, heated, wall behind, studs every 16
restrain case to wall: strap, screws #10 x 2 1/2 into stud, 46 up, 2 of them
    screws #8 x 5/8 into piece
limit moisture-season-low: 6
limit moisture-season-high: 10
limit kerf: 1/8
limit trimmed-end: 1/4
limit stud-gravity: 0.5
limit wallboard: 5/8
"""


def test_only_what_no_words_can_state_is_left() -> None:
    assert [taken.what for taken in assumed(CLOSED)] == [
        "all parts of it weigh {value}, at 12 % moisture",
        "under a load that stays, sags in the long run to {value} times what it does at first",
    ]


def test_a_larger_piece_takes_no_more_for_granted() -> None:
    many = dedent(OPEN).replace("3 copies spread", "60 copies spread")
    assert len(assumed(many)) == len(assumed(OPEN))


def test_from_which_side_is_worked_out_from_the_piece() -> None:
    text = """
    plan "Sides" in inches
    stock thin: actual 1/2 x 6 red oak
    stock thick: actual 1 x 6 red oak
    part {low}: {low_stock}, across, flat, 20 long, left at 0, front at 0, on floor
    part {high}: {high_stock}, across, flat, 20 long, left at 0, front at 0, on {low}
    join {low} to {high}: screws #8 x 1 1/4, every 6
    """
    thin_below = text.format(low="one", high="two", low_stock="thin", high_stock="thick")
    thin_above = text.format(low="one", high="two", low_stock="thick", high_stock="thin")
    assert named(thin_below, "driven through").say == "from below"
    assert named(thin_above, "driven through").say == "from above"
    assert named(thin_above, "driven through").value == "two"


def test_the_same_plan_gives_the_same_list() -> None:
    assert assumed(OPEN) == assumed(OPEN)


def test_two_stocks_of_one_wood_are_told_once() -> None:
    text = """
    plan "One wood" in inches
    stock thin: actual 3/4 x 6 red oak
    stock thick: actual 1 1/2 x 6 red oak
    part low for each of left, right: thick, deep, on edge, 6 long, front at 0, on floor, flush with each of box
    outline box: 40 across, 6 deep, 8 tall, on floor
    part one: thin, across, flat, 40 long, left at 0, front at 0, on low.left
    part two: thick, across, flat, 40 long, left at 0, front at 0, on one
    """
    assert named(text, "bends as").about == "red oak"
    assert named(text, "weigh").about == "red oak"


def test_framing_lumber_of_no_stated_grade_is_taken_as_number_two() -> None:
    text = OPEN.replace("1x3 red oak", "2x4 spruce-pine-fir").replace("pocket screws 1 1/4", "screws #8 x 3")
    taken = named(text, "as strong as")
    assert (taken.about, taken.value, taken.say) == ("spruce-pine-fir", "No.2", "grade no.2")
    graded = text.replace("2x4 spruce-pine-fir", "2x4 spruce-pine-fir, grade no.2")
    assert [each for each in assumed(graded) if "as strong as" in each.what] == []


def test_a_board_that_leans_is_named() -> None:
    text = """
        plan "Brace" in millimetres
        stock board: actual 20 x 100 pine
        part post: board, upright, facing side, 900 tall, left at 0, front at 0, on floor
        part far: board, upright, facing side, 880 tall, left at 620, front at 0, on floor
        part shelf: board, across, flat, 620 long, on far, against right of post, front at 0
        part brace: board, facing front, rip 60, rising towards right, against right of post, under shelf
            300 across, 300 tall, front at 20, lower end cut plumb, upper end cut level
        join brace to post, shelf: screws 4 x 40, 2 per joint
        join shelf to post: screws 4 x 40, 2 per joint
        load shelf: 20 kg
        """
    taken = named(dedent(text), "leans or slants")
    assert taken.about == "brace"
    review = review_of(text)
    assert "brace" not in review.carrying.members
    assert not any(each.part == "brace" and each.kind in ("bending", "sag") for each in review.utilisations)


@pytest.mark.parametrize(
    ("studs", "taken"),
    [
        ("", True),
        (", studs every 16", False),
        (", studs every 16 from 10", False),
        (", studs at 6 and 22", False),
    ],
)
def test_studs_that_the_plan_knows_are_not_taken_for_granted(studs: str, taken: bool) -> None:
    restrained = "\nrestrain case to wall: strap, screws #10 x 2 1/2 into stud, 56 up, 2 of them\n"
    for plan in (
        LEDGE.format(studs=studs),
        HALL_CASE.format(studs=studs) + restrained,
    ):
        words = [each.what for each in review_of(plan).assumptions]
        assert any("studs are taken" in each or "taken to meet" in each for each in words) is taken
        # What they are of, and the board before them, no plan has said.
        assert any("light softwood" in each for each in words)


LEDGE = """
plan "Ledge" in inches
stock strip: 1x4 pine
part cleat: strip, across, on edge, 40 long, left at 0, bottom 50 above floor, against wall
join cleat to wall: screws #10 x 3, 2 per joint
room hall: indoors, wall behind{studs}
"""
HALL_CASE = """
plan "Case" in inches
stock board: actual 3/4 x 11 1/4 red oak, 8 ft
outline case: 34 across, 11 1/4 deep, 60 tall, on floor
part side for each of left, right: board, upright, facing side, as tall as case
    on floor, flush with each of case, flush with front of case
part shelf: board, across, flat, between side.left and side.right, flush with front of case
    4 copies spread evenly up from bottom of case to top of case
room hall: indoors, wall behind{studs}
"""
