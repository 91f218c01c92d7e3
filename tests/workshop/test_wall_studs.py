"""Studs whose places are known: counted, looked for and shifted to, against scans that try every place."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from reviewer.mechanics.wall_fixing import (
    Row,
    TrueStuds,
    on_true_studs,
    shift_onto,
    slid,
    studs_reached,
)
from reviewer.review import Review
from reviewer.units import MM_PER_INCH
from reviewer.workshop.restraining import restrained, studs_for
from reviewer.workshop.wall_hung import wall_hung
from reviewer.workshop.wall_studs import rail_studs, stud_words, studs_beside
from tests.support import review_of

OFF = 12.7

#: Whole millimetres, so that nothing lies on an edge by rounding; the edge itself has tests of its own.
PLACES = st.lists(st.integers(-1500, 3000).map(float), max_size=8).map(
    lambda found: tuple(sorted(set(found)))
)


def a_wall(places: tuple[float, ...], first: float, spacing: float) -> TrueStuds:
    """A row and single studs, none of which is one of the row."""
    single = [place for place in places if not spacing or (place - first) % spacing]
    return TrueStuds(tuple(single), first, spacing)


WALLS = st.builds(
    a_wall, PLACES, st.integers(-700, 700).map(float), st.sampled_from([0.0, 40.0, 300.0, 400.0, 610.0])
)
SPANS = st.tuples(st.integers(-800, 2000), st.integers(0, 1500)).map(
    lambda at: (float(at[0]), float(sum(at)))
)


def all_of(studs: TrueStuds) -> list[float]:
    """Every stud of a long wall, by a plain walk."""
    row = [studs.first + step * studs.spacing for step in range(-300, 301)] if studs.spacing else []
    return sorted({*studs.places, *row})


@given(studs=WALLS, span=SPANS)
def test_the_studs_behind_a_width_are_what_a_walk_along_the_wall_finds(
    studs: TrueStuds, span: tuple[float, float]
) -> None:
    low, high = span
    # A screw stands somewhere behind the width, and in the stud no further than so far from its middle.
    walked = [stud for stud in all_of(studs) if stud + OFF >= low and stud - OFF <= high]
    found = studs_reached(studs, low, high, OFF)
    assert found.places == pytest.approx(tuple(walked))
    assert found.certain == found.most == len(walked)


@given(studs=WALLS, span=SPANS)
def test_the_next_studs_beside_a_width(studs: TrueStuds, span: tuple[float, float]) -> None:
    low, high = span
    below, above = studs.beside(low, high)
    assert below == max((stud for stud in all_of(studs) if stud < low), default=None)
    assert above == min((stud for stud in all_of(studs) if stud > high), default=None)


@given(studs=WALLS, place=st.integers(-800, 2000).map(float))
def test_the_nearest_stud(studs: TrueStuds, place: float) -> None:
    found = studs.nearest(place)
    away = [abs(stud - place) for stud in all_of(studs)]
    assert (found is None) == (not away)
    if found is not None:
        assert abs(found - place) == pytest.approx(min(away))


@given(
    studs=WALLS,
    span=SPANS,
    wanted=st.integers(1, 4),
    side=st.sampled_from([-1.0, 1.0]),
    off=st.sampled_from([0.0, 12.0]),
)
def test_no_shorter_shift_brings_as_many_studs_behind_it(
    studs: TrueStuds, span: tuple[float, float], wanted: int, side: float, off: float
) -> None:
    low, high = span
    most = 450.0

    def behind(way: float) -> int:
        return sum(1 for stud in all_of(studs) if low + way - off <= stud <= high + way + off)

    scanned = next((step * side for step in range(int(most) + 1) if behind(step * side) >= wanted), None)
    found = shift_onto(studs, low, high, off, wanted, most, side)
    assert found == (None if scanned is None else pytest.approx(scanned))


@given(studs=WALLS, places=st.lists(st.integers(0, 1200).map(float), min_size=1, max_size=6))
def test_a_screw_in_its_place_meets_a_stud_or_does_not(studs: TrueStuds, places: list[float]) -> None:
    (found,) = on_true_studs([Row(tuple(places))], studs, OFF)
    for place, stud in zip(places, found, strict=True):
        near = [each for each in all_of(studs) if abs(each - place) <= OFF]
        assert (stud is None) == (not near)
        assert stud is None or abs(stud - place) == pytest.approx(min(abs(each - place) for each in near))


@given(studs=WALLS, span=SPANS, count=st.integers(2, 6))
def test_screws_that_may_be_moved_go_into_as_many_studs_as_there_are(
    studs: TrueStuds, span: tuple[float, float], count: int
) -> None:
    (found,) = on_true_studs([Row((0.0,) * count, span)], studs, OFF)
    behind = studs_reached(studs, *span, OFF).places or ()
    assert len({stud for stud in found if stud is not None}) == min(count, len(behind))
    assert set(found) <= {*behind, None}
    if behind:
        assert (found[0], found[-1]) == (behind[0], behind[-1])
        into = [found.count(stud) for stud in behind if stud in found]
        assert max(into) - min(into) <= 1 or count < len(behind)


@given(studs=WALLS, span=SPANS, every=st.sampled_from([150.0, 300.0, 400.0, 406.4]))
def test_a_row_is_slid_so_that_no_other_place_meets_more(
    studs: TrueStuds, span: tuple[float, float], every: float
) -> None:
    low, high = span
    row = slid(span, every, studs, OFF)

    def met(places: list[float]) -> int:
        return sum(1 for place in places if any(abs(stud - place) <= OFF + 1e-6 for stud in all_of(studs)))

    scanned = 0
    for step in range(int(min(every, high - low)) + 1):
        places = [low + step + number * every for number in range(int((high - low - step) // every) + 1)]
        scanned = max(scanned, met(places))
    assert met(list(row)) >= scanned
    assert all(low - 1e-6 <= place <= high + 1e-6 for place in row)
    assert all(after - before == pytest.approx(every) for before, after in pairwise(row))


def test_a_row_with_endless_screws_stays_where_it_is() -> None:
    assert slid((0.0, 1000.0), 0.001, TrueStuds((500.0,)), OFF) == ()


CASE = """
plan "Case" in {unit}
stock board: actual 20 mm x 300 mm red oak
outline case: {width} across, 300 mm deep, 1500 mm tall, on floor{at}
part side for each of left, right: board, upright, facing side, as tall as case
    on floor, flush with each of case, flush with front of case
part shelf: board, across, flat, between side.left and side.right, flush with front of case
    4 copies spread evenly up from bottom of case to top of case
load shelf.*: books
room hall: indoors, wall behind, {studs}, children under 6
restrain case to wall: strap, screws 5 mm x 60 mm into stud, 1400 mm up, {count} of them
"""


def behind(studs: str, width: str, unit: str = "inches", at: str = "") -> tuple[float, ...] | None:
    review = review_of(CASE.format(unit=unit, width=width, studs=studs, at=at, count=1))
    (found,) = restrained(review)
    counted = studs_for(found.tied[0], found, review)
    assert counted is not None
    return counted.places


@pytest.mark.parametrize(
    ("studs", "width", "inches"),
    [
        ("studs every 16 from 10", "34", [10, 26]),
        ("studs every 16 from 2", "34", [2, 18, 34]),
        # A screw half an inch from its middle still holds: 1 1/2 in less 1/4 in at each edge.
        ("studs every 16 from 2 1/2", "34", [2.5, 18.5, 34.5]),
        ("studs every 16 from 2 9/16", "34", [2.5625, 18.5625]),
        ("studs every 16 from 15 1/2", "34", [-0.5, 15.5, 31.5]),
        ("studs every 16 from 15 7/16", "34", [15.4375, 31.4375]),
        ("studs every 24 from 30", "34", [6, 30]),
        ("studs every 16 from 15", "14", []),
        ("studs at 6 and 22 and 39", "34", [6, 22]),
        ("studs at 39 and 6, studs at 22", "40", [6, 22, 39]),
        ("studs at (0 - 6) and 70", "34", []),
        # Measured twice: no two studs lie in one another, but two may stand side by side.
        ("studs every 16 from 10, studs at 10 1/4 and 26", "34", [10, 26]),
        ("studs at 10 and 11 and 11 3/4", "34", [10, 11.75]),
        ("studs every 16 from 10, studs at 11 1/2", "34", [10, 11.5, 26]),
        # A row and a single one beside it, as next to a window.
        ("studs every 16 from 10, studs at 20", "34", [10, 20, 26]),
    ],
)
def test_studs_behind_a_case_by_hand(studs: str, width: str, inches: list[float]) -> None:
    places = behind(studs, width)
    assert places is not None
    assert [place / MM_PER_INCH for place in places] == pytest.approx(inches)


def test_the_case_is_counted_where_it_stands() -> None:
    # From 20 in to 54 in: the first of its studs is the second of the wall.
    places = behind("studs every 16 from 10", "34", at=", left at 20")
    assert places is not None
    assert [place / MM_PER_INCH for place in places] == pytest.approx([26, 42])
    assert behind("studs every 400 from 250", "900", "millimetres") == pytest.approx((250, 650))


def test_of_a_spacing_alone_no_places_are_known() -> None:
    assert behind("studs every 16", "34") is None


def kept_singles(singles: list[int], row: list[int]) -> list[int]:
    """Single studs that are no other one over again, from the corner on."""
    kept: list[int] = []
    for at in sorted(set(singles)):
        if all(abs(at - other) >= 38.1 for other in [*row, *kept]):
            kept.append(at)
    return kept


@given(
    width=st.integers(200, 1600),
    left=st.integers(0, 800),
    first=st.integers(0, 600),
    spacing=st.sampled_from([300, 400, 610]),
    singles=st.lists(st.integers(0, 2600), max_size=4),
)
def test_studs_behind_random_pieces_before_random_walls(
    width: int, left: int, first: int, spacing: int, singles: list[int]
) -> None:
    words = f"studs every {spacing} from {first}"
    if singles:
        words += f", studs at {' and '.join(str(each) for each in singles)}"
    row = [first + step * spacing for step in range(-20, 21)]
    # A stud is 38.1 mm wide: nearer than that it is the same one.
    wall = sorted([*row, *kept_singles(singles, row)])
    walked = [at for at in wall if left - OFF <= at <= left + width + OFF]
    found = behind(words, str(width), "millimetres", f", left at {left}")
    assert found == pytest.approx(tuple(walked))


def test_a_rail_reaches_the_studs_beside_a_narrow_piece() -> None:
    review = review_of(CASE.format(unit="inches", width="14", studs="studs every 16 from 10", at="", count=1))
    inch = MM_PER_INCH
    assert rail_studs(review, 0.0, 14 * inch, 2) == pytest.approx((-6 * inch, 10 * inch))
    assert rail_studs(review, 0.0, 14 * inch, 5) == ()
    assert studs_beside(review, 0.0, 14 * inch) == [
        pytest.approx((-6 * inch, 6 * inch)),
        pytest.approx((26 * inch, 12 * inch)),
    ]
    assert (
        stud_words(review, (-6 * inch, 10 * inch), 0)
        == "6 in left of the plan's left corner and 10 in right of it"
    )
    assert stud_words(review, (10 * inch, 26 * inch), 1) == "10 in and 26 in from the plan's front corner"


SHELF = """
plan "Shelf" in inches
stock board: 1x8 pine
stock strip: 1x4 pine
outline place: 40 across, 7 1/4 deep, 4 1/4 tall, bottom 50 above floor, against wall
part cleat: strip, across, on edge, from left of place to right of place, against wall, under shelf
part shelf: board, across, flat, from left of place to right of place, against wall
    flush with top of place
join cleat to wall: screws #10 x 3, {screws}, pilot holes
join shelf to cleat: screws #8 x 2, every 8, from above, pilot holes
load shelf: 20 lb
room hall: indoors, wall behind, {studs}
"""


@pytest.mark.parametrize(
    ("screws", "studs", "at", "met"),
    [
        # Of no spacing: onto the studs, the outer ones first.
        ("2 per joint", "studs every 16 from 10", [10, 26], [10, 26]),
        ("3 per joint", "studs every 16 from 10", [10, 10, 26], [10, 26]),
        ("2 per joint", "studs every 16 from 4", [4, 36], [4, 36]),
        ("1 per joint", "studs at 6 and 19 and 39", [19], [19]),
        # In their places: 2, 20 and 38.
        ("3 per joint, 2 from ends", "studs at 2 and 18 and 38 1/2", [2, 20, 38], [2, 38.5]),
        ("3 per joint, 2 from ends", "studs every 16 from 10", [2, 20, 38], []),
        # A row of a spacing is slid: two of three fit where the studs are.
        ("every 16", "studs every 16 from 10", [10, 26], [10, 26]),
        ("every 16", "studs every 16 from 4", [4, 20, 36], [4, 20, 36]),
        ("every 16, 6 from ends", "studs every 16 from 4", [20], [20]),
        # 39 1/4 leaves less than the end distance of 5 diameters, 0.95 in, but the stud is wide enough.
        ("2 per joint", "studs at 4 and 39 1/4", [4, 39.05], [4, 39.25]),
    ],
)
def test_screws_of_a_shelf_by_hand(screws: str, studs: str, at: list[float], met: list[float]) -> None:
    (hung,) = wall_hung(review_of(SHELF.format(screws=screws, studs=studs)))
    assert [point.along / MM_PER_INCH for point in hung.points] == pytest.approx(at, abs=0.01)
    assert [stud / MM_PER_INCH for stud in hung.met] == pytest.approx(met)
    assert hung.studs == len(met)
    held = [point for point in hung.points if point.meets]
    assert all(point.pull == point.shear == 0 for point in hung.points if not point.meets)
    assert sum(point.shear for point in held) == pytest.approx(hung.weight if held else 0.0)


@given(
    first=st.integers(0, 15),
    count=st.integers(1, 5),
    inset=st.integers(1, 8),
)
def test_a_screw_holds_only_where_it_truly_lies_on_a_stud(first: int, count: int, inset: int) -> None:
    assume(count > 1)
    review = review_of(
        SHELF.format(screws=f"{count} per joint, {inset} from ends", studs=f"studs every 16 from {first}")
    )
    hung = next(wall_hung(review))
    for point in hung.points:
        along = point.along / MM_PER_INCH
        off = min(abs(along - first - 16 * step) for step in range(-2, 4))
        assert point.meets == (off <= 0.5 + 1e-9)


def test_a_rail_takes_the_nearest_studs_and_what_is_reached_is_not_beside() -> None:
    inch = MM_PER_INCH

    def wall(studs: str) -> Review:
        return review_of(CASE.format(unit="inches", width="14", studs=studs, at="", count=1))

    # The middle of the case is 7 in from the corner: 17 in is 10 in off it, -10 in 17 in.
    assert rail_studs(wall("studs at (0 - 10) and 5 and 17"), 0.0, 14 * inch, 2) == pytest.approx(
        (5 * inch, 17 * inch)
    )
    # 14 1/4 in is just past the side of the case: near enough to its stud's middle to hold.
    beside = studs_beside(wall("studs at 10 and 14 1/4 and 30"), 0.0, 14 * inch)
    assert beside == [pytest.approx((30 * inch, 16 * inch))]
