"""From a plan to the cut list, what to buy, and whether the basket is enough. Sums are done by hand."""

from __future__ import annotations

import pytest
from cutting_checks import assert_bars_right, assert_sheets_right

from reviewer.review import Review
from reviewer.workshop.cut_list import cut_list, pieces_by_stock
from reviewer.workshop.cutting import Bar
from reviewer.workshop.fastener_counts import fastener_list
from reviewer.workshop.outcomes import CannotFit, Chosen, Fits, Undecided
from reviewer.workshop.sheet_layout import Sheet, SheetLayout
from reviewer.workshop.shopping import StockInBasket, basket_outcome, shopping_list
from tests.rules.sound_pieces import BENCH, BOOKCASE, PLANTER, WALL_SHELF
from tests.support import review_of

INCH = 25.4
FOOT = 12 * INCH
PRICED_BENCH = BENCH.replace(
    "spruce-pine-fir, 8 ft", "spruce-pine-fir, 8 ft at 4.10, 10 ft at 5.60", 1
).replace("spruce-pine-fir, 8 ft\n", "spruce-pine-fir, 8 ft at 9.80\n", 1)


def rows(review: Review) -> list[tuple[str, int, float, float, float]]:
    return [
        (
            row.stock.name,
            row.count,
            round(row.length / INCH, 3),
            round(row.width / INCH, 3),
            round(row.thickness / INCH, 3),
        )
        for row in cut_list(review)
    ]


def basket(text: str, buy: str) -> dict[str, StockInBasket]:
    outcome = basket_outcome(review_of(text + f"buy: {buy}\n"))
    assert outcome is not None
    return {stock.stock.name: stock for stock in outcome.stocks}


def test_cut_list_of_the_bench() -> None:
    # Legs 17 1/2 - 1 1/2 = 16; rails 42 - 2 x 3 1/2 = 35; ends and stretcher 12 - 2 x 1 1/2 = 9.
    review = review_of(BENCH)
    assert rows(review) == [
        ("stud", 4, 16, 3.5, 1.5),
        ("stud", 2, 35, 3.5, 1.5),
        ("stud", 3, 9, 3.5, 1.5),
        ("plank", 2, 48, 7.25, 1.5),
    ]
    assert cut_list(review)[2].names == ("end.left", "end.right", "stretcher")
    assert not any(row.ripped or row.planed for row in cut_list(review))


def test_bench_is_bought_at_its_cheapest() -> None:
    # 161 in of stud: two of 8 ft (8.20) against one of 10 ft and one of 8 ft (9.70). Seats as below.
    shopping = shopping_list(review_of(PRICED_BENCH))
    stud, plank = shopping.stocks
    assert isinstance(stud.outcome, Chosen)
    assert (stud.price, stud.outcome.proven, stud.usual) == (8.2, True, False)
    assert stud.outcome.layout.bought == (Bar(pytest.approx(8 * FOOT), 4.1, 2),)
    assert stud.least / INCH == pytest.approx(161)
    assert plank.price == 19.6
    assert shopping.price == 27.8
    assert stud.layout is not None
    assert stud.layout.waste == pytest.approx(100 * (1 - 161 / 192))
    assert_bars_right(stud.layout, stud.pieces.bars, INCH / 8, INCH / 4)


def test_screws_are_counted_joint_by_joint() -> None:
    # Pocket screws, 2 per end: rails and ends meet two legs each, the stretcher two rails: 10 joints.
    pocket, screws = fastener_list(review_of(BENCH))
    assert (pocket.kind, pocket.count, pocket.joints, pocket.assumed) == ("pocket screws", 20, 10, 0)
    assert pocket.length == pytest.approx(2.5 * INCH)
    # Seat screws every 10: along a rail of 35 there are 4, on each of six short crossings 1.
    assert (screws.kind, screws.gauge, screws.count, screws.joints) == ("screws", "#8", 2 * 4 + 6, 8)


def test_fasteners_of_an_unstated_number_are_marked() -> None:
    text = BENCH.replace("pocket screws 2 1/2, 2 per end, from inside", "pocket screws 2 1/2, from inside")
    pocket = fastener_list(review_of(text))[0]
    assert (pocket.count, pocket.assumed) == (20, 16)


FRAME = """
plan "Frame" in millimetres
stock board: actual 20 x 100 pine
outline frame: 600 across, 300 deep, 300 tall, on floor
part side for each of left, right: board, upright, facing side, 300 tall, on floor, front at 0
    flush with each of frame
part rail: board, across, on edge, between side.left and side.right, front at 0, bottom at 200
part top: board, across, flat, from left of frame to right of frame, front at 0, on side.left
"""


def test_every_kind_of_fastener_is_counted_by_size_and_metal() -> None:
    text = FRAME + (
        "join rail to side.*: loose tenons 8 x 20 x 40, 3 per joint, wedges, glue pva\n"
        "join top to side.*: clips, 2 per joint, screws 4 x 16, 2 per joint, brass\n"
        "join top to rail: screws 4 x 16, 5 each\n"
        "join rail to top: biscuits, every 150, 65 from ends\n"
    )
    found = {(each.kind, each.metal): each for each in fastener_list(review_of(text))}
    tenons = found["loose tenons", None]
    assert (tenons.diameter, tenons.width, tenons.length) == (8, 20, 40)
    # Two joints of each side; the rail is 560 long, less 65 at each end 430: two gaps of 150, three biscuits.
    assert {kind: (each.count, each.joints, each.assumed) for kind, each in found.items()} == {
        ("loose tenons", None): (6, 2, 0),
        ("wedges", None): (4, 2, 4),
        ("clips", None): (4, 2, 0),
        ("screws", "brass"): (4, 2, 0),
        ("screws", None): (5, 1, 0),
        ("biscuits", None): (3, 1, 0),
    }


@pytest.mark.parametrize(
    ("count", "bought"), [(1, 10), (9, 10), (10, 20), (14, 20), (18, 20), (19, 30), (100, 110), (101, 120)]
)
def test_screws_are_bought_with_spares_in_tens(count: int, bought: int) -> None:
    # A tenth more, rounded up to tens: 9 → 9.9 → 10, 18 → 19.8 → 20, 19 → 20.9 → 30, 100 → 110.
    review = review_of(FRAME + f"join top to rail: screws 4 x 16, {count} each\n")
    (screws,) = fastener_list(review)
    assert screws.to_buy(review.limits) == bought
    dowels = review_of(FRAME + f"join top to rail: dowels 8 x 40, {count} each\n")
    assert fastener_list(dowels)[0].to_buy(dowels.limits) == count


def test_a_workshop_sets_its_own_spares() -> None:
    review = review_of(
        FRAME + "limit screw-spares: 0\nlimit screw-step: 100\njoin top to rail: screws 4 x 16, 100 each\n"
    )
    assert fastener_list(review)[0].to_buy(review.limits) == 100


def test_wall_restraint_is_on_the_list() -> None:
    (restraint,) = shopping_list(review_of(BOOKCASE)).hardware.restraints
    assert (restraint.device, restraint.gauge, restraint.count) == ("bracket", "#10", 2)


def test_usual_lengths_stand_in_for_a_yard_that_the_plan_does_not_name() -> None:
    # 1x10 and 1x3 come in 6, 8, 10 and 12 ft (lumber_sizes.csv). Shelf 36; cleat 34 and lip 36: 70 and a
    # cut, 70 1/8 of the 71 1/2 in that 6 ft have between trimmed ends.
    board, strip = shopping_list(review_of(WALL_SHELF)).stocks
    for stock in (board, strip):
        assert stock.usual
        assert stock.layout is not None
        assert [(round(bar.length / FOOT, 6), bar.count) for bar in stock.layout.bought] == [(6, 1)]
    assert shopping_list(review_of(WALL_SHELF)).price is None


def test_stock_of_unknown_lengths_is_left_open() -> None:
    slat, post = shopping_list(review_of(PLANTER)).stocks
    assert (slat.outcome, slat.layout, slat.price) == (None, None, None)
    assert slat.pieces.ripped == ("floor-slat.1", "floor-slat.2")
    assert post.pieces.ripped == ()
    # Six slats of 800 front and back, six ends of 300 - 2 x 20, two floor slats of 760.
    assert slat.least == pytest.approx(6 * 800 + 6 * 260 + 2 * 760)


def test_bookcase_comes_from_a_sheet_of_each() -> None:
    ply, thin = shopping_list(review_of(BOOKCASE)).stocks
    for stock in (ply, thin):
        assert isinstance(stock.layout, SheetLayout)
        assert len(stock.layout.sheets) == 1
        assert stock.turned == ()
        assert_sheets_right(stock.layout, stock.pieces.sheets, INCH / 8, 0)


GRAIN = """
plan "Two panels" in inches
stock ply: birch plywood 3/4, sheet 48 x 96 at 64
part low: ply, flat, {long} across, {wide} deep, on floor, left at 0, front at 0{grain}
"""


def test_length_of_a_sheet_part_runs_with_its_grain() -> None:
    review = review_of(GRAIN.format(long=40, wide=30, grain=", grain deep"))
    (pieces,) = pieces_by_stock(review)
    (piece,) = pieces.sheets
    assert (piece.length / INCH, piece.width / INCH) == (pytest.approx(30), pytest.approx(40))
    assert not piece.turns
    assert pieces.turnable == ()
    (assumed,) = pieces_by_stock(review_of(GRAIN.format(long=40, wide=30, grain="")))
    assert assumed.sheets[0].length / INCH == pytest.approx(40)
    assert assumed.turnable == ("low",)


TWO = """
plan "Two panels" in inches
stock ply: birch plywood 3/4, sheet 48 x 96 at 64
part low: ply, flat, 95 across, 25 deep, on floor, left at 0, front at 0
part high: ply, flat, 40 across, 20 deep, bottom at 10, left at 0, front at 0{more}
part last: ply, flat, 40 across, 20 deep, bottom at 20, left at 0, front at 0{more}
part more: ply, flat, 22 across, 21 deep, bottom at 30, left at 0, front at 0, grain deep
"""


def test_an_assumed_grain_gives_way_only_where_that_saves_a_sheet() -> None:
    # Beside a panel of 95 x 25 a strip of 22 7/8 is left: two of 40 x 20 and one of 21 x 22 do not go
    # in with their grain along it (40 + 40 + 21), and turned they are too wide for it.
    kept = shopping_list(review_of(TWO.format(more=""))).stocks[0]
    assert isinstance(kept.layout, SheetLayout)
    assert len(kept.layout.sheets) == 2
    assert kept.turned == ()
    # Beyond a panel of 50 x 46 there are 45 7/8 of the length: too little for one of 47 x 44 with its
    # grain along the sheet, enough the other way round.
    one = GRAIN.format(long=50, wide=46, grain="") + (
        "part high: ply, flat, 47 across, 44 deep, bottom at 10, left at 0, front at 0\n"
    )
    free = shopping_list(review_of(one)).stocks[0]
    assert isinstance(free.layout, SheetLayout)
    assert len(free.layout.sheets) == 1
    assert free.turned == ("high",)
    said = shopping_list(review_of(one.replace("bottom at 10", "grain across, bottom at 10"))).stocks[0]
    assert isinstance(said.layout, SheetLayout)
    assert len(said.layout.sheets) == 2
    assert said.turned == ()


def test_two_seats_from_one_plank_is_short() -> None:
    found = basket(BENCH, "2 stud 8 ft, 1 plank 8 ft")
    assert isinstance(found["stud"].outcome, Fits)
    short = found["plank"].outcome
    assert isinstance(short, CannotFit)
    assert short.proof.by == "material"
    assert short.proof.needed / INCH == pytest.approx(96.125)
    assert short.proof.available / INCH == pytest.approx(95.5)  # 1/4 trimmed off each end
    assert [piece.name for piece in short.left_over] == ["seat.2"]
    assert short.addition is not None
    assert [(bar.length / FOOT, bar.count) for bar in short.addition.buy] == [(pytest.approx(8), 1)]


def test_basket_that_is_too_full_says_what_stays_whole() -> None:
    found = basket(BENCH, "3 stud 8 ft, 2 plank 8 ft")
    outcome = found["stud"].outcome
    assert isinstance(outcome, Fits)
    assert [(bar.length / FOOT, bar.count) for bar in outcome.untouched] == [(pytest.approx(8), 1)]


def test_lines_of_one_stock_go_together() -> None:
    found = basket(
        BENCH.replace("plank: 2x8 spruce-pine-fir, 8 ft", "plank: 2x8 spruce-pine-fir, 8 ft, 10 ft"),
        "1 stud 8 ft, 1 plank 10 ft, 1 stud 8 ft, 1 plank 8 ft",
    )
    assert isinstance(found["stud"].outcome, Fits)
    assert [line.count for line in found["stud"].lines] == [1, 1]
    plank = found["plank"].outcome
    assert isinstance(plank, Fits)  # both seats from the 10 ft: 96 1/8 of 119 1/2
    assert [(bar.length / FOOT, bar.count) for bar in plank.untouched] == [(pytest.approx(8), 1)]


def test_basket_without_a_stock_and_with_a_needless_one() -> None:
    text = BENCH.replace("outline frame", "stock spare: 1x4 pine, 6 ft\noutline frame")
    outcome = basket_outcome(review_of(text + "buy: 2 stud 8 ft, 4 spare 6 ft\n"))
    assert outcome is not None
    assert [stock.stock.name for stock in outcome.stocks] == ["stud", "plank"]
    assert outcome.stocks[1].lines == ()
    assert isinstance(outcome.stocks[1].outcome, CannotFit)
    assert [(line.count, line.stock) for line in outcome.needless] == [(4, "spare")]
    assert outcome.unsized == ()
    assert basket_outcome(review_of(BENCH)) is None


def test_sheets_in_the_basket() -> None:
    found = basket(BOOKCASE, "2 ply, 1 thin")
    outcome = found["ply"].outcome
    assert isinstance(outcome, Fits)
    assert outcome.untouched == (Sheet(pytest.approx(96 * INCH), pytest.approx(48 * INCH), None, 1),)
    assert isinstance(found["thin"].outcome, Fits)
    assert found["thin"].outcome.untouched == ()


STRIPS = """
plan "Strips" in inches
stock board: 1x8 pine, 4 ft
"""


def strips(rip: str) -> str:
    text = STRIPS
    for place, name in enumerate("abc"):
        text += (
            f"part {name}: board, across, flat{rip}, 40 long, on floor, left at 0, front at {place * 10}\n"
        )
    return text


def test_strips_that_may_come_side_by_side_are_not_called_impossible() -> None:
    # Three of 40 x 2 do come out of one board of 48 x 7 1/4, but each is counted as a length of its own.
    ripped = basket(strips(", rip 2"), "1 board 4 ft")["board"]
    assert ripped.pieces.ripped == ("a", "b", "c")
    assert isinstance(ripped.outcome, Undecided)
    assert len(ripped.outcome.left_over) == 2
    whole = basket(strips(""), "1 board 4 ft")["board"]
    assert whole.pieces.ripped == ()
    assert isinstance(whole.outcome, CannotFit)
    enough = basket(strips(", rip 2"), "3 board 4 ft")["board"]
    assert isinstance(enough.outcome, Fits)


def test_limits_of_the_plan_are_used() -> None:
    # Two of 47 3/4 and a cut are 95 5/8: too much between ends trimmed by 1/4, enough for untrimmed ones.
    text = BENCH.replace("length = 48", "length = 47 3/4")
    assert isinstance(basket(text, "2 stud 8 ft, 1 plank 8 ft")["plank"].outcome, CannotFit)
    untrimmed = text + "limit trimmed-end: 0\n"
    assert isinstance(basket(untrimmed, "2 stud 8 ft, 1 plank 8 ft")["plank"].outcome, Fits)


def test_the_screws_of_a_strap_at_the_piece_are_on_the_list() -> None:
    from reviewer.reports.buying import buying_of

    text = BOOKCASE.replace("into stud", "into stud, 3 screws #8 x 3/4 into piece")
    said = [each.said for each in buying_of(review_of(text)).hardware if "to the wall" in each.said]
    assert len(said) == 1
    assert said[0].endswith("into stud, 3 screws #8 × 3/4 in into the piece")
