"""Sheets: layouts by hand, against open instances, and against a general integer solver."""

from __future__ import annotations

from itertools import combinations

import pytest
from cutting_checks import Rectangle, assert_sheets_right, can_be_cut_apart, sheet_holds, sheet_instance
from hypothesis import given, settings
from hypothesis import strategies as st

from reviewer.workshop.few_sheets import Few
from reviewer.workshop.outcomes import CannotFit, Chosen, Fits, Undecided
from reviewer.workshop.sheet_cutting import choose_sheets, fit_in_sheets
from reviewer.workshop.sheet_layout import Offcut, PlacedPiece, Sheet, SheetCut, SheetPiece
from reviewer.workshop.sheet_search import Packed, Shape, SheetKind

INCH = 25.4
KERF = INCH / 8
FULL = Sheet(96 * INCH, 48 * INCH, 64.0)


def calm(examples: int) -> settings:
    return settings(deadline=None, derandomize=True, database=None, max_examples=examples)


def inches(*sizes: tuple[float, float], turns: bool = False) -> list[SheetPiece]:
    return [
        SheetPiece(f"p{place}", length * INCH, width * INCH, turns)
        for place, (length, width) in enumerate(sizes, 1)
    ]


# ---------------------------------------------------------------- by hand


def test_small_bookcase_comes_from_one_sheet() -> None:
    # Strips of 11 1/4 in: four and three cuts are 45 3/8 of 48. Two sides of 72 need a strip each;
    # three shelves of 30 and two cuts are 90 1/4 of 96, so five shelves take the other two strips.
    pieces = inches((72, 11.25), (72, 11.25), *[(30, 11.25)] * 5)
    answer = choose_sheets(pieces, [FULL], KERF)
    assert isinstance(answer, Chosen)
    assert (answer.proven, answer.at_least, answer.layout.price) == (True, 64.0, 64.0)
    assert_sheets_right(answer.layout, pieces, KERF, 0)
    more = choose_sheets(inches((72, 11.25), (72, 11.25), *[(30, 11.25)] * 7), [FULL], KERF)
    assert isinstance(more, Chosen)
    assert len(more.layout.sheets) == 2


def test_two_halves_do_not_come_from_one_sheet() -> None:
    # 24 + 24 = 48 leaves nothing for the saw.
    answer = fit_in_sheets(
        inches((96, 24), (96, 24)), [Sheet(96 * INCH, 48 * INCH, count=1)], KERF, 0, [FULL]
    )
    assert isinstance(answer, CannotFit)
    assert answer.proof.by == "number"
    assert (answer.proof.needed, answer.proof.available) == (2, 1)
    assert [piece.name for piece in answer.left_over] == ["p2"]
    assert answer.addition is not None
    assert answer.addition.buy == (Sheet(FULL.length, FULL.width, 64.0, 1),)
    assert isinstance(
        fit_in_sheets(inches((96, 24), (96, 23.875)), [Sheet(FULL.length, FULL.width, count=1)], KERF), Fits
    )


def test_grain_keeps_a_piece_from_turning() -> None:
    # A back of 36 along the grain and 60 across is wider than a sheet, unless it may be turned.
    one = [Sheet(FULL.length, FULL.width, count=1)]
    kept = fit_in_sheets(inches((36, 60)), one, KERF)
    assert isinstance(kept, CannotFit)
    assert kept.proof.by == "too big"
    assert (kept.proof.needed / INCH, kept.proof.available / INCH) == pytest.approx((60, 48))
    free = fit_in_sheets(inches((36, 60), turns=True), one, KERF)
    assert isinstance(free, Fits)
    (placed,) = free.layout.sheets[0].pieces
    assert placed == PlacedPiece("p1", 0.0, 0.0, 60 * INCH, 36 * INCH, True)


def test_cuts_are_told_in_the_order_to_make_them() -> None:
    # One piece of 60 x 20 from 96 x 48: two cuts, each from edge to edge of what it cuts.
    answer = fit_in_sheets(inches((60, 20)), [Sheet(FULL.length, FULL.width, count=1)], KERF)
    assert isinstance(answer, Fits)
    sheet = answer.layout.sheets[0]
    first, second = sheet.cuts
    assert isinstance(sheet.tree, SheetCut)
    assert {first.how, second.how} == {"crosscut", "rip"}
    assert (first.length, first.width) == (FULL.length, FULL.width)
    at = {cut.how: cut.at / INCH for cut in (first, second)}
    assert at == {"crosscut": pytest.approx(60), "rip": pytest.approx(20)}
    assert len(sheet.offcuts) == 2
    assert all(isinstance(offcut, Offcut) for offcut in sheet.offcuts)
    freed = 60 * 20 + sum(offcut.length * offcut.width for offcut in sheet.offcuts) / INCH**2
    assert freed == pytest.approx(
        96 * 48
        - (first.length if first.how == "rip" else first.width) / INCH / 8
        - (60 if second.how == "rip" else 20) / 8
    )  # less what the saw takes


def test_a_piece_as_large_as_the_sheet_needs_no_cut() -> None:
    answer = fit_in_sheets(inches((96, 48)), [Sheet(FULL.length, FULL.width, count=1)], KERF)
    assert isinstance(answer, Fits)
    assert answer.layout.sheets[0].cuts == ()
    assert answer.layout.waste == pytest.approx(0)
    trimmed = fit_in_sheets(inches((96, 48)), [Sheet(FULL.length, FULL.width, count=1)], KERF, 1)
    assert isinstance(trimmed, CannotFit)


def test_pieces_that_lock_each_other_in_are_not_for_a_saw() -> None:
    # Four of 200 x 100 around one of 100 x 100 fill 300 x 300, but no cut from edge to edge frees any.
    pieces = [
        SheetPiece("a", 200, 100),
        SheetPiece("b", 100, 200),
        SheetPiece("c", 200, 100),
        SheetPiece("d", 100, 200),
        SheetPiece("e", 100, 100),
    ]
    ring = [
        Rectangle(0, 0, 200, 100),
        Rectangle(200, 0, 100, 200),
        Rectangle(100, 200, 200, 100),
        Rectangle(0, 100, 100, 200),
        Rectangle(100, 100, 100, 100),
    ]
    assert not can_be_cut_apart(ring, 0)
    answer = fit_in_sheets(pieces, [Sheet(300, 300, count=1)], 0)
    assert isinstance(answer, CannotFit)
    assert answer.proof.by == "every way"
    assert answer.proof.needed == answer.proof.available == 90_000
    wider = fit_in_sheets(pieces, [Sheet(400, 300, count=1)], 0)
    assert isinstance(wider, Fits)
    assert_sheets_right(wider.layout, pieces, 0, 0)


def test_cheaper_sheet_is_taken_where_it_is_enough() -> None:
    offers = [FULL, Sheet(48 * INCH, 48 * INCH, 36.0)]
    small = choose_sheets(inches((40, 40)), offers, KERF)
    both = choose_sheets(inches((40, 40), (40, 40)), offers, KERF)
    three = choose_sheets(inches((40, 40), (40, 40), (40, 40)), offers, KERF)
    assert isinstance(small, Chosen)
    assert isinstance(both, Chosen)
    assert isinstance(three, Chosen)
    assert small.layout.bought == (Sheet(48 * INCH, 48 * INCH, 36.0, 1),)
    assert both.layout.price == 64.0  # against 72
    assert three.layout.price == 100.0
    assert small.proven
    assert both.proven
    assert three.proven


def test_sheet_left_whole_is_told() -> None:
    answer = fit_in_sheets(inches((40, 40)), [Sheet(FULL.length, FULL.width, count=3)], KERF)
    assert isinstance(answer, Fits)
    assert answer.untouched == (Sheet(FULL.length, FULL.width, count=2),)


def test_material_that_is_short_is_told_as_area() -> None:
    answer = fit_in_sheets(inches(*[(48, 24)] * 5), [Sheet(FULL.length, FULL.width, count=1)], KERF)
    assert isinstance(answer, CannotFit)
    assert answer.proof.by == "material"
    assert answer.proof.needed / INCH**2 == pytest.approx(5 * 48 * 24)
    assert answer.proof.available / INCH**2 == pytest.approx(96 * 48)


def test_nothing_to_cut_and_nothing_to_cut_from() -> None:
    assert isinstance(fit_in_sheets([], [], 3), Fits)
    assert isinstance(choose_sheets([], [FULL], 3), Chosen)
    empty = fit_in_sheets(inches((10, 10)), [], 3, 0, [FULL])
    assert isinstance(empty, CannotFit)
    assert empty.proof.by == "material"
    assert empty.addition is not None
    assert len(empty.addition.layout.sheets) == 1
    assert isinstance(choose_sheets(inches((10, 10)), [], 3), CannotFit)


@pytest.mark.parametrize(("length", "width"), [(0, 10), (10, -1), (float("inf"), 10)])
def test_sizes_that_are_none_are_refused(length: float, width: float) -> None:
    with pytest.raises(ValueError, match="nothing"):
        choose_sheets([SheetPiece("a", length, width)], [FULL], KERF)
    with pytest.raises(ValueError, match="nothing"):
        choose_sheets([SheetPiece("a", 10, 10)], [Sheet(length, width)], KERF)


def test_a_large_order_is_laid_out_right() -> None:
    pieces = [
        SheetPiece(f"p{i}", 150.0 + 41 * (i * i % 23), 90.0 + 29 * (i * 7 % 17), i % 3 == 0)
        for i in range(700)
    ]
    answer = choose_sheets(pieces, [Sheet(2440.0, 1220.0)], 3)
    assert isinstance(answer, Chosen)
    assert_sheets_right(answer.layout, pieces, 3, 0)
    assert answer.layout.area <= 1.15 * answer.at_least


# ---------------------------------------------------------------- open instances


@pytest.mark.parametrize(
    ("number", "turns", "area_bound", "used", "proven"),
    [
        (1, False, 3, 5, True),
        (1, True, 3, 4, True),
        (2, False, 5, 6, True),
        (2, True, 5, 6, False),
        (3, False, 7, 8, True),
        (3, True, 7, 8, False),
        (4, False, 12, 14, False),
        (4, True, 12, 13, False),
    ],
)
def test_open_instances_are_packed_right(
    number: int, turns: bool, area_bound: int, used: int, proven: bool
) -> None:
    """Beasley 1985: each of the given pieces once, from as few sheets as may be; no optimum is published."""
    (length, width), sizes = sheet_instance(number)
    pieces = [SheetPiece(f"p{i}", *size, turns) for i, size in enumerate(sizes)]
    assert -(-sum(a * b for a, b in sizes) // (length * width)) == area_bound
    answer = choose_sheets(pieces, [Sheet(length, width)], 0)
    assert isinstance(answer, Chosen)
    assert_sheets_right(answer.layout, pieces, 0, 0)
    assert (len(answer.layout.sheets), answer.proven) == (used, proven)
    assert area_bound <= round(answer.at_least / (length * width)) <= used


# ---------------------------------------------------------------- against a general solver

piece_sizes = st.tuples(st.integers(10, 100), st.integers(10, 80), st.booleans())


def named(sizes: list[tuple[int, int, bool]]) -> list[SheetPiece]:
    return [SheetPiece(f"p{place}", *size) for place, size in enumerate(sizes)]


@calm(120)
@given(st.lists(piece_sizes, min_size=1, max_size=4), st.integers(0, 6))
def test_one_sheet_verdicts_agree_with_a_general_solver(
    sizes: list[tuple[int, int, bool]], kerf: int
) -> None:
    answer = fit_in_sheets(named(sizes), [Sheet(100, 80, count=1)], kerf)
    if sheet_holds(sizes, 100, 80, kerf):
        assert isinstance(answer, Fits)
        assert_sheets_right(answer.layout, named(sizes), kerf, 0)
    else:
        assert isinstance(answer, CannotFit)


def least_weight(
    sizes: list[tuple[int, int, bool]], kinds: list[tuple[int, int, int]], kerf: int
) -> int | None:
    """The least weight of sheets (length, width, weight) for up to four pieces.

    By the general solver on every group of them, then by every way to split them into groups.
    """
    everyone = tuple(range(len(sizes)))
    groups = [group for count in everyone for group in combinations(everyone, count + 1)]
    costs: dict[tuple[int, ...], int] = {}
    for group in groups:
        holding = [
            weight
            for length, width, weight in kinds
            if sheet_holds([sizes[i] for i in group], length, width, kerf)
        ]
        if holding:
            costs[group] = min(holding)
    least: dict[tuple[int, ...], int] = {(): 0}
    for group in groups:
        ways = [
            least[rest] + cost
            for one, cost in costs.items()
            if set(one) <= set(group) and (rest := tuple(i for i in group if i not in one)) in least
        ]
        if ways:
            least[group] = min(ways)
    return least.get(everyone)


@calm(60)
@given(st.lists(piece_sizes, min_size=2, max_size=4), st.integers(0, 6))
def test_fewest_sheets_agree_with_a_general_solver(sizes: list[tuple[int, int, bool]], kerf: int) -> None:
    answer = choose_sheets(named(sizes), [Sheet(100, 80)], kerf)
    expected = least_weight(sizes, [(100, 80, 1)], kerf)
    if expected is None:
        assert isinstance(answer, CannotFit)
        assert answer.proof.by == "too big"
        return
    assert isinstance(answer, Chosen)
    assert answer.proven
    assert len(answer.layout.sheets) == expected
    assert answer.at_least == expected * 100 * 80
    assert_sheets_right(answer.layout, named(sizes), kerf, 0)


@calm(60)
@given(st.lists(piece_sizes, min_size=1, max_size=4), st.integers(0, 6), st.integers(1, 9))
def test_going_through_a_handful_agrees_with_a_general_solver(
    sizes: list[tuple[int, int, bool]], kerf: int, weight: int
) -> None:
    """The complete search alone, without the quick methods that mostly come first."""
    shapes = [Shape(length + kerf, width + kerf, turns, 1) for length, width, turns in sizes]
    kinds = [SheetKind(100 + kerf, 80 + kerf, 6, None), SheetKind(60 + kerf, 70 + kerf, weight, None)]
    answer = Few(shapes, kinds).run()
    expected = least_weight(sizes, [(100, 80, 6), (60, 70, weight)], kerf)
    if expected is None:
        assert answer is False
        return
    assert isinstance(answer, Packed)
    assert answer.weight == expected
    one = Few(shapes, [kinds[0]._replace(limit=1)]).run()
    assert (one is False) == (not sheet_holds(sizes, 100, 80, kerf))
    assert Few(shapes, kinds, steps=0).run() is None


# ---------------------------------------------------------------- what must always hold


@calm(60)
@given(
    st.lists(piece_sizes, min_size=1, max_size=7),
    st.lists(
        st.tuples(st.integers(60, 200), st.integers(40, 120), st.integers(1, 2)), min_size=1, max_size=2
    ),
    st.floats(0, 6),
    st.floats(0, 5),
)
def test_more_sheet_never_hurts_and_more_sawdust_never_helps(
    sizes: list[tuple[int, int, bool]], basket: list[tuple[int, int, int]], kerf: float, trim: float
) -> None:
    pieces = named(sizes)
    sheets = [Sheet(length, width, count=count) for length, width, count in basket]

    def fits(sheets: list[Sheet], kerf: float, trim: float, pieces: list[SheetPiece] = pieces) -> bool | None:
        answer = fit_in_sheets(pieces, sheets, kerf, trim)
        if isinstance(answer, Fits):
            assert_sheets_right(answer.layout, pieces, kerf, trim)
        return None if isinstance(answer, Undecided) else isinstance(answer, Fits)

    now = fits(sheets, kerf, trim)
    if now:
        assert fits([*sheets, Sheet(150, 90, count=1)], kerf, trim) is not False
        assert fits(sheets, kerf / 2, trim) is not False
        assert fits(sheets, kerf, trim / 2) is not False
        assert fits(sheets, kerf, trim, [piece._replace(turns=True) for piece in pieces]) is not False
    elif now is False:
        assert not fits(sheets[1:], kerf, trim)
        assert not fits(sheets, kerf + 1, trim)
        assert not fits(sheets, kerf, trim + 1)
        assert not fits(sheets, kerf, trim, [piece._replace(turns=False) for piece in pieces])


def test_many_alike_and_very_narrow_ones_are_laid_out() -> None:
    # 400 strips of 3 x 1200 and 399 cuts of 1 are 1599 of 3000: one sheet, cut four hundred times over.
    pieces = [SheetPiece(f"p{i}", 3.0, 1200.0) for i in range(400)]
    answer = choose_sheets(pieces, [Sheet(3000.0, 1220.0)], 1)
    assert isinstance(answer, Chosen)
    assert answer.proven
    (sheet,) = answer.layout.sheets
    assert len(sheet.pieces) == 400
    assert len(sheet.cuts) == 401
    assert sum(offcut.length for offcut in sheet.offcuts if offcut.width > 1000) == pytest.approx(1400)
