"""Boards: layouts by hand, against open instances, and against a general integer solver."""

from __future__ import annotations

from itertools import pairwise

import pytest
from cutting_checks import assert_bars_right, assert_bought_from, bar_instances, least_cost
from hypothesis import given, settings
from hypothesis import strategies as st

from reviewer.workshop.cutting import Bar, BarLayout, Piece, choose_bars, fit_in_basket
from reviewer.workshop.outcomes import CannotFit, Chosen, Fits, Undecided

INCH = 25.4
FOOT = 12 * INCH
EIGHTH = INCH / 8


def calm(examples: int) -> settings:
    return settings(deadline=None, derandomize=True, database=None, max_examples=examples)


def inches(*lengths: float) -> list[Piece]:
    return [Piece(f"p{place}", length * INCH) for place, length in enumerate(lengths, 1)]


def cut_up(layout: BarLayout) -> list[list[float]]:
    """The pieces of each bar in inches."""
    return [[round(cut.length / INCH, 4) for cut in bar.cuts] for bar in layout.bars]


# ---------------------------------------------------------------- by hand


def test_two_seats_of_48_do_not_come_from_one_8_foot_plank() -> None:
    # 48 + 48 = 96 leaves nothing for the saw, which takes 1/8: 96 1/8 in all.
    answer = fit_in_basket(inches(48, 48), [Bar(8 * FOOT, count=1)], EIGHTH, 0, [Bar(8 * FOOT)])
    assert isinstance(answer, CannotFit)
    assert answer.proof.by == "material"
    assert answer.proof.needed / INCH == pytest.approx(96.125)
    assert answer.proof.available / INCH == pytest.approx(96)
    assert [piece.name for piece in answer.left_over] == ["p2"]
    assert answer.addition is not None
    assert answer.addition.buy == (Bar(8 * FOOT, count=1),)
    assert answer.addition.proven
    assert cut_up(answer.addition.layout) == [[48], [48]]


@pytest.mark.parametrize(
    ("second", "fits"),
    [
        (47.875, True),  # 48 + 1/8 + 47 7/8 = 96: the last piece ends with the board, no last cut
        (47.875 + 0.04 / INCH, True),  # within the one tolerance of 0.05 mm
        (47.875 + 0.06 / INCH, False),  # beyond it
        (47.8, True),  # 0.075 in left: less than a kerf, the blade takes it all
    ],
)
def test_where_a_board_is_just_long_enough(second: float, fits: bool) -> None:
    answer = fit_in_basket(inches(48, second), [Bar(8 * FOOT, count=1)], EIGHTH)
    assert isinstance(answer, Fits if fits else CannotFit)
    if isinstance(answer, Fits):
        assert answer.layout.bars[0].offcut == 0


def test_offcut_is_what_the_last_cut_leaves() -> None:
    # 35 + 9 + 9 + 16 + 16 = 85, five cuts of 1/8 = 5/8; 96 - 85 5/8 = 10 3/8.
    answer = fit_in_basket(inches(35, 9, 9, 16, 16), [Bar(8 * FOOT, count=1)], EIGHTH)
    assert isinstance(answer, Fits)
    assert cut_up(answer.layout) == [[35, 16, 16, 9, 9]]
    assert answer.layout.bars[0].offcut / INCH == pytest.approx(10.375)
    starts = [cut.start / INCH for cut in answer.layout.bars[0].cuts]
    assert starts == pytest.approx([0, 35.125, 51.25, 67.375, 76.5])
    assert answer.layout.waste == pytest.approx(100 * (1 - 85 / 96))


def test_studs_of_the_reading_bench_come_from_two_of_8_feet() -> None:
    # Legs 4 x 16, rails 2 x 35, ends and stretcher 3 x 9: 161 in, so one of 8 ft is too little.
    # With 1/4 in trimmed off each end, 35 + 35 + 16 + 9 and three cuts are 95 3/8 of 95 1/2.
    bench = inches(16, 16, 16, 16, 35, 35, 9, 9, 9)
    answer = choose_bars(bench, [Bar(8 * FOOT, 4.10), Bar(10 * FOOT, 5.60)], EIGHTH, INCH / 4)
    assert isinstance(answer, Chosen)
    assert (answer.measure, answer.proven, answer.at_least) == ("price", True, 8.2)
    assert cut_up(answer.layout) == [[35, 35, 16, 9], [16, 16, 16, 9, 9]]
    assert answer.layout.price == 8.2
    assert answer.layout.bought == (Bar(8 * FOOT, 4.10, 2),)
    assert_bars_right(answer.layout, bench, EIGHTH, INCH / 4)


def test_trimmed_ends_count() -> None:
    assert isinstance(fit_in_basket(inches(95.5), [Bar(8 * FOOT, count=1)], EIGHTH, INCH / 4), Fits)
    answer = fit_in_basket(inches(95.6), [Bar(8 * FOOT, count=1)], EIGHTH, INCH / 4)
    assert isinstance(answer, CannotFit)
    assert answer.proof.by == "too big"
    assert answer.proof.available / INCH == pytest.approx(95.5)
    assert isinstance(fit_in_basket(inches(1), [Bar(10, count=9)], EIGHTH, 5), CannotFit)


def test_dearer_but_longer_board_wins_only_when_it_is_cheaper_in_all() -> None:
    seats = inches(48, 48)  # two of 8 ft, or one of 10 ft

    def bought(short: float | None, long: float | None) -> tuple[Bar, ...]:
        answer = choose_bars(seats, [Bar(8 * FOOT, short), Bar(10 * FOOT, long)], EIGHTH)
        assert isinstance(answer, Chosen)
        assert answer.proven
        return answer.layout.bought

    assert bought(9.8, 12.0) == (Bar(10 * FOOT, 12.0, 1),)
    assert bought(9.8, 25.0) == (Bar(8 * FOOT, 9.8, 2),)
    # Without a price for each, the least length counts: 10 ft against 16 ft.
    assert bought(1.0, None) == (Bar(10 * FOOT, None, 1),)


def test_of_equal_length_the_fewest_boards() -> None:
    answer = choose_bars(inches(40, 40, 40, 40), [Bar(84 * INCH), Bar(168 * INCH)], 0)
    assert isinstance(answer, Chosen)
    assert answer.layout.bought == (Bar(168 * INCH, None, 1),)


def test_enough_of_everything_is_not_always_enough() -> None:
    # 70 + 60 + 35 + 35 is 200 of 200. But 70 leaves 30, which is too little for a 35, and after 60 and
    # one 35 the other 35 has nowhere to go.
    pieces = [Piece("a", 70), Piece("b", 60), Piece("c", 35), Piece("d", 35)]
    answer = fit_in_basket(pieces, [Bar(100, count=2)], 0)
    assert isinstance(answer, CannotFit)
    assert answer.proof.by == "every way"
    assert (answer.proof.needed, answer.proof.available) == (200, 200)
    assert answer.left_over == (Piece("d", 35),)


def test_too_many_large_pieces_are_counted() -> None:
    # Three of 60 in boards of 100: one each, whatever the small ones do.
    answer = fit_in_basket([Piece(n, 60) for n in "abc"] + [Piece("d", 5)], [Bar(100, count=2)], 0)
    assert isinstance(answer, CannotFit)
    assert answer.proof.by == "number"
    assert (answer.proof.needed, answer.proof.available) == (3, 2)
    assert [piece.name for piece in answer.proof.pieces] == ["a", "b", "c"]


def test_shortest_board_to_add_is_the_one_that_does_it() -> None:
    offers = [Bar(12 * FOOT), Bar(6 * FOOT), Bar(3 * FOOT)]
    answer = fit_in_basket(inches(48, 48), [Bar(8 * FOOT, count=1)], EIGHTH, 0, offers)
    assert isinstance(answer, CannotFit)
    assert answer.addition is not None
    assert answer.addition.buy == (Bar(6 * FOOT, count=1),)
    assert_bars_right(answer.addition.layout, inches(48, 48), EIGHTH, 0)


def test_nothing_to_add_helps_a_piece_too_long_for_every_board() -> None:
    answer = fit_in_basket(inches(100, 20), [Bar(8 * FOOT, count=1)], EIGHTH, 0, [Bar(8 * FOOT)])
    assert isinstance(answer, CannotFit)
    assert answer.proof.by == "too big"
    assert [piece.name for piece in answer.proof.pieces] == ["p1"]
    assert [piece.name for piece in answer.left_over] == ["p1"]
    assert cut_up(answer.best) == [[20]]
    assert answer.addition is None


def test_board_left_whole_is_told() -> None:
    answer = fit_in_basket(inches(40, 40), [Bar(8 * FOOT, count=2), Bar(6 * FOOT, count=1)], EIGHTH)
    assert isinstance(answer, Fits)
    assert answer.untouched == (Bar(8 * FOOT, count=1), Bar(6 * FOOT, count=1))


def test_offers_can_run_out() -> None:
    answer = choose_bars(inches(48, 48, 48), [Bar(8 * FOOT, 1.0, 2), Bar(5 * FOOT, 9.0)], EIGHTH)
    assert isinstance(answer, Chosen)
    assert answer.layout.bought == (Bar(8 * FOOT, 1.0, 2), Bar(5 * FOOT, 9.0, 1))
    short = choose_bars(inches(48, 48, 48), [Bar(8 * FOOT, 1.0, 2)], EIGHTH)
    assert isinstance(short, CannotFit)
    assert short.proof.by == "number"


def test_nothing_to_cut_and_nothing_to_cut_from() -> None:
    nothing = choose_bars([], [Bar(100)], 3)
    assert isinstance(nothing, Chosen)
    assert (nothing.layout.bars, nothing.proven, nothing.layout.waste) == ((), True, 0)
    empty = fit_in_basket([Piece("a", 10)], [], 3)
    assert isinstance(empty, CannotFit)
    assert (empty.proof.by, empty.proof.available) == ("material", 0)
    assert isinstance(choose_bars([Piece("a", 10)], [], 3), CannotFit)
    assert isinstance(fit_in_basket([], [], 3), Fits)


@pytest.mark.parametrize(
    ("piece", "bar", "kerf", "trim"),
    [(0, 10, 1, 0), (-5, 10, 1, 0), (float("nan"), 10, 1, 0), (5, 0, 1, 0), (5, 10, -1, 0), (5, 10, 1, -1)],
)
def test_lengths_that_are_none_are_refused(piece: float, bar: float, kerf: float, trim: float) -> None:
    with pytest.raises(ValueError, match="nothing"):
        choose_bars([Piece("a", piece)], [Bar(bar)], kerf, trim)


def test_names_follow_the_order_of_the_plan() -> None:
    pieces = [Piece(name, 30.0) for name in ("rail.front", "rail.back", "rail.middle")]
    answer = choose_bars(pieces, [Bar(65.0)], 1)
    assert isinstance(answer, Chosen)
    assert [[cut.name for cut in bar.cuts] for bar in answer.layout.bars] == [
        ["rail.front", "rail.back"],
        ["rail.middle"],
    ]


def test_a_large_order_is_near_its_bound() -> None:
    # 5,000 pieces of 40 lengths, made up by a fixed rule; the bound is the material's.
    pieces = [Piece(f"p{i}", 200.0 + 37 * (i * i % 40)) for i in range(5000)]
    answer = choose_bars(pieces, [Bar(2440.0), Bar(3050.0)], 3, 6)
    assert isinstance(answer, Chosen)
    assert_bars_right(answer.layout, pieces, 3, 6)
    assert answer.at_least <= answer.layout.length <= 1.01 * answer.at_least


# ---------------------------------------------------------------- open instances


def test_open_instances_reach_the_material_bound() -> None:
    """Falkenauer 1996, 20 instances of 120 pieces: the bound is known to be the optimum of every one."""
    above = []
    instances = bar_instances()
    assert len(instances) == 20
    for instance in instances:
        pieces = [Piece(f"p{i}", length) for i, length in enumerate(instance.pieces)]
        answer = choose_bars(pieces, [Bar(instance.bar)], 0)
        assert isinstance(answer, Chosen)
        assert_bars_right(answer.layout, pieces, 0, 0)
        used = len(answer.layout.bars)
        assert instance.material_bound <= used <= instance.material_bound + 1
        assert round(answer.at_least / instance.bar) <= used
        if used > instance.material_bound:
            above.append(instance.name)
        else:
            assert answer.proven
    assert above == ["u120_08"]  # 19 of 20 reach it


# ---------------------------------------------------------------- against a general solver

lengths = st.lists(st.integers(8, 70), min_size=1, max_size=5, unique=True)


@st.composite
def orders(draw: st.DrawFn) -> list[int]:
    """Up to 14 pieces of up to 5 lengths."""
    return draw(st.lists(st.sampled_from(draw(lengths)), min_size=1, max_size=14))


kerfs = st.integers(0, 4)
priced = st.lists(
    st.tuples(st.integers(50, 120), st.integers(1, 30), st.none() | st.integers(0, 4)), min_size=1, max_size=3
)
unpriced = st.lists(st.tuples(st.integers(50, 120), st.none(), st.none()), min_size=1, max_size=3)
baskets = st.lists(st.tuples(st.integers(50, 120), st.integers(0, 4)), min_size=1, max_size=3)


def named(order: list[int]) -> list[Piece]:
    return [Piece(f"p{place}", length) for place, length in enumerate(order)]


@calm(150)
@given(orders(), priced | unpriced, kerfs)
def test_cheapest_bars_agree_with_a_general_solver(
    order: list[int], offers: list[tuple[int, int | None, int | None]], kerf: int
) -> None:
    by_price = all(price is not None for _, price, _ in offers)
    bars = [
        (length, float(price if by_price and price else length), count) for length, price, count in offers
    ]
    expected = least_cost(order, bars, kerf)
    answer = choose_bars(named(order), [Bar(*offer) for offer in offers], kerf)
    if expected is None:
        assert isinstance(answer, CannotFit)
        return
    assert isinstance(answer, Chosen)
    assert answer.proven
    assert answer.measure == ("price" if by_price else "length")
    cost = answer.layout.price if by_price else answer.layout.length
    assert cost == pytest.approx(expected)
    assert answer.at_least == pytest.approx(expected)
    assert_bars_right(answer.layout, named(order), kerf, 0)
    assert_bought_from(answer.layout, [(length, count) for length, _, count in offers])


@calm(150)
@given(orders(), baskets, kerfs)
def test_basket_verdicts_agree_with_a_general_solver(
    order: list[int], basket: list[tuple[int, int]], kerf: int
) -> None:
    bars = [(length, float(length), count) for length, count in basket]
    expected = least_cost(order, bars, kerf)
    extra = (60, 75, 90)
    answer = fit_in_basket(
        named(order),
        [Bar(length, count=count) for length, count in basket],
        kerf,
        0,
        [Bar(x) for x in extra],
    )
    if expected is not None:
        assert isinstance(answer, Fits)
        assert_bars_right(answer.layout, named(order), kerf, 0)
        assert_bought_from(answer.layout, basket)
        assert answer.layout.length == pytest.approx(expected)
        return
    assert isinstance(answer, CannotFit)
    with_more = least_cost(
        order,
        [(length, 0.0, count) for length, count in basket] + [(x, float(x), None) for x in extra],
        kerf,
    )
    if with_more is None:
        assert answer.addition is None
        return
    assert answer.addition is not None
    assert answer.addition.proven
    added = sum(bar.length * (bar.count or 0) for bar in answer.addition.buy)
    assert added == pytest.approx(with_more)
    assert_bars_right(answer.addition.layout, named(order), kerf, 0)
    placed = [(c.name, c.length) for bar in answer.best.bars for c in bar.cuts]
    assert_bars_right(answer.best, placed, kerf, 0)
    assert sorted(placed + [tuple(piece) for piece in answer.left_over]) == sorted(map(tuple, named(order)))


# ---------------------------------------------------------------- what must always hold

fractions = st.integers(1, 40_000).map(lambda number: number / 16 * INCH / 8)


@calm(120)
@given(
    st.lists(fractions, min_size=1, max_size=12),
    st.lists(st.tuples(st.integers(20, 120), st.integers(1, 3)), min_size=1, max_size=3),
    st.floats(0, 10),
    st.floats(0, 20),
    st.integers(20, 120),
)
def test_more_wood_never_hurts_and_more_sawdust_never_helps(
    cut: list[float], basket: list[tuple[int, int]], kerf: float, trim: float, more: int
) -> None:
    pieces = [Piece(f"p{i}", length / 10) for i, length in enumerate(cut)]
    bars = [Bar(length * INCH, count=count) for length, count in basket]

    def fits(bars: list[Bar], kerf: float, trim: float) -> bool | None:
        answer = fit_in_basket(pieces, bars, kerf, trim)
        if isinstance(answer, Fits):
            assert_bars_right(answer.layout, pieces, kerf, trim)
            assert_bought_from(answer.layout, [(bar.length, bar.count) for bar in bars])
        return None if isinstance(answer, Undecided) else isinstance(answer, Fits)

    now = fits(bars, kerf, trim)
    assert now is not None
    if now:
        assert fits([*bars, Bar(more * INCH, count=1)], kerf, trim)
        assert fits([Bar(bar.length + 1, count=bar.count) for bar in bars], kerf, trim)
        assert fits(bars, kerf / 2, trim)
        assert fits(bars, kerf, trim / 2)
    else:
        assert not fits(bars[1:], kerf, trim)
        assert not fits(bars, kerf + 1, trim)
        assert not fits(bars, kerf, trim + 1)


@calm(60)
@given(orders(), unpriced, st.randoms(use_true_random=False))
def test_order_of_the_pieces_changes_names_only(
    order: list[int], offers: list[tuple[int, None, None]], chance: object
) -> None:
    shuffled = list(order)
    chance.shuffle(shuffled)  # type: ignore[attr-defined]
    one, two = (choose_bars(named(o), [Bar(*offer) for offer in offers], 2) for o in (order, shuffled))
    assert type(one) is type(two)
    if isinstance(one, Chosen) and isinstance(two, Chosen):
        assert [[c.length for c in bar.cuts] for bar in one.layout.bars] == [
            [c.length for c in bar.cuts] for bar in two.layout.bars
        ]


def test_more_kerf_never_costs_less() -> None:
    pieces = inches(35, 35, 16, 16, 16, 16, 9, 9, 9, 30, 30, 22)
    costs = []
    for kerf in (0, 1, 2, 3, 4, 6, 10, 25):
        answer = choose_bars(pieces, [Bar(8 * FOOT, 4.1), Bar(10 * FOOT, 5.6), Bar(6 * FOOT, 3.3)], kerf)
        assert isinstance(answer, Chosen)
        assert answer.proven
        costs.append(answer.layout.price)
    assert costs == sorted(costs, key=lambda price: price or 0)
    assert all(one is not None and two is not None for one, two in pairwise(costs))


def test_what_is_not_known_is_not_claimed() -> None:
    """u120_08 comes out of 50 bars (README of the data), which a first look does not find.

    So it must say neither yes nor no; of 49 it must say no.
    """
    instance = next(found for found in bar_instances() if found.name == "u120_08")
    pieces = [Piece(f"p{i}", length) for i, length in enumerate(instance.pieces)]
    answer = fit_in_basket(pieces, [Bar(150, count=50)], 0)
    assert isinstance(answer, Undecided)
    assert len(answer.best.bars) <= 50
    assert 0 < sum(piece.length for piece in answer.left_over) < 150
    less = fit_in_basket(pieces, [Bar(150, count=49)], 0)
    assert isinstance(less, CannotFit)
    assert less.proof.by == "material"
    # Looking for what to add, it finds that nothing need be added.
    again = fit_in_basket(pieces, [Bar(150, count=50)], 0, 0, [Bar(150)])
    assert isinstance(again, Fits)
    assert again.untouched == ()
    assert_bars_right(again.layout, pieces, 0, 0)
