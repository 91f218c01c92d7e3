"""Pull on restraints and on screws of what hangs, by hand and over random pieces."""

from __future__ import annotations

import math

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from reviewer.mechanics.wall_fixing import Row, on_studs, pulls, studs_behind
from reviewer.reference.limits import default_limits
from reviewer.units import MM_PER_INCH, NEWTON_PER_POUND
from reviewer.workshop.restraining import Trial, lever_of, restrained, restrained_piece
from reviewer.workshop.strap_ends import sloping_lever
from reviewer.workshop.stud_screws import screw_of, stud_hold
from reviewer.workshop.wall_hung import Trial as Hanging
from reviewer.workshop.wall_hung import hung_piece, wall_hung
from tests.support import review_of

#: 100 N pushes and a case that weighs what its sides and top weigh; see the sums in the tests.
TALL = """
plan "Tall case" in millimetres
stock board: actual 20 x 300 beech, 2400
outline case: 600 across, 300 deep, 2000 tall, on floor
part side for each of left, right: board, upright, facing side, as tall as case
    on floor, flush with each of case, flush with front of case
part shelf: board, across, flat, between side.left and side.right, flush with front of case
    5 copies spread evenly up from bottom of case to top of case
load shelf.*: books
room hall: indoors, wall behind{room}, no children
restrain case to wall: strap, screws 5 x 60 into stud, {words}
limit tip-push-force: {force}
limit tip-push-height: 1500
"""

SHELF = """
plan "Shelf" in millimetres
stock board: actual 20 x 200 beech, 2400
stock cleat: actual 40 x 100 beech, 2400
outline place: 1000 across, 200 deep, 120 tall, bottom 1400 above floor, against wall
part cleat: cleat, across, on edge, from left of place to right of place, against wall, under shelf
part shelf: board, across, flat, from left of place to right of place, against wall, flush with top of place
join cleat to wall: screws 6 x 100, {screws}, pilot holes
join shelf to cleat: screws 4 x 45, from above, every 200, pilot holes
load shelf: {load}
room hall: indoors, wall behind{room}
"""


def tall(words: str = "1900 up, 2 of them", force: str = "60", room: str = ", studs every 400") -> str:
    return TALL.format(words=words, force=force, room=room)


def test_the_pull_is_what_the_balance_lacks_over_the_levers() -> None:
    review = review_of(tall(force="60"))
    (found,) = restrained(review)
    # Statics: a push of 60 N at 1500 mm turns it, its weight at half its depth holds it down.
    weight = sum(mass.weight for mass in review.masses.values())
    lacks = 60 * 1500 - weight * 150
    assert found.lacks == pytest.approx(lacks, rel=1e-6)
    assert found.pull == pytest.approx(lacks / (2 * 1900), rel=1e-6)
    assert found.needed == pytest.approx(max(found.pull, 60 * NEWTON_PER_POUND))
    assert found.tied[0].fixed_to == ("side.left", "side.right")


def test_the_test_load_counts_where_it_is_more() -> None:
    (found,) = restrained(review_of(tall(force="40")))
    assert found.pull < found.needed == pytest.approx(60 * NEWTON_PER_POUND)


def test_two_statements_share_by_their_levers() -> None:
    both = tall("1900 up") + "restrain case to wall: strap, screws 5 x 60 into stud, 1000 up\n"
    (found,) = restrained(review_of(both))
    assert found.pull == pytest.approx(found.lacks / 2900)


def test_one_into_board_leaves_all_to_the_other() -> None:
    both = tall("1900 up") + "restrain case to wall: strap, screws 5 x 60 into board, 1000 up\n"
    (found,) = restrained(review_of(both))
    assert found.pull == pytest.approx(found.lacks / 1900)


def test_a_level_strap_on_a_piece_before_a_wall_to_the_left() -> None:
    text = tall(room=", studs every 400").replace("wall behind", "wall left")
    (found,) = restrained(review_of(text))
    assert (found.wall.axis, found.wall.towards) == (0, -1.0)
    assert found.state is not None
    assert found.state.balance.edge.outward[0] == pytest.approx(1.0)


HEIGHTS = st.integers(100, 1990)


@given(low=HEIGHTS, high=HEIGHTS, count=st.integers(1, 6))
def test_higher_fixing_never_asks_for_more(low: int, high: int, count: int) -> None:
    low, high = sorted((low, high))
    (found,) = _TALL
    at = [
        restrained_piece(_REVIEW, found.piece, {0: Trial(height=float(height), many=count)}).needed
        for height in (low, high)
    ]
    assert at[1] <= at[0] + 1e-9
    more = restrained_piece(_REVIEW, found.piece, {0: Trial(height=float(low), many=count + 1)})
    assert more.needed <= at[0] + 1e-9


_REVIEW = review_of(tall(force="200"))
_TALL = list(restrained(_REVIEW))


@given(up=st.floats(200, 2000), back=st.floats(50, 600), slope=st.floats(0, 89), steeper=st.floats(0, 89))
def test_a_rising_strap_is_never_better_than_a_level_one(
    up: float, back: float, slope: float, steeper: float
) -> None:
    slope, steeper = sorted((slope, steeper))
    level = sloping_lever(up, back, 0.0)
    assert sloping_lever(up, back, -slope) <= level + 1e-9
    assert sloping_lever(up, back, -steeper) <= sloping_lever(up, back, -slope) + 1e-9
    assert level == pytest.approx(lever_of(up, up, 30.0, back))


@given(
    length=st.floats(10, 150),
    longer=st.floats(0, 50),
    wood=st.floats(0, 40),
    gauge=st.sampled_from(["#6", "#8", "#10", "#12", "#14"]),
)
def test_a_longer_screw_never_holds_less_and_wood_before_it_never_helps(
    length: float, longer: float, wood: float, gauge: str
) -> None:
    screw, limits = screw_of(gauge, None), default_limits()
    assert screw is not None
    # A screw that comes out behind the stud has part of its thread there.
    assume(length + longer <= wood + limits["wallboard"].amount + limits["stud-depth"].amount)
    hold = stud_hold(screw, length, wood, limits)
    assert stud_hold(screw, length + longer, wood, limits).pull >= hold.pull - 1e-6
    assert stud_hold(screw, length, wood + 5, limits).pull <= hold.pull + 1e-6
    assert 0 <= hold.thread <= length


@given(width=st.floats(1, 3000), spacing=st.floats(50, 700), start=st.floats(0, 1))
def test_studs_behind_a_width_are_what_a_count_finds(width: float, spacing: float, start: float) -> None:
    studs = studs_behind(width, spacing)
    first = start * spacing
    counted = sum(1 for number in range(100) if 0 < first + number * spacing < width)
    if all(abs(first + number * spacing - width) > 1e-6 for number in range(100)) and start > 0:
        assert studs.certain <= counted <= studs.most


PLACES = st.lists(st.integers(0, 1200).map(float), min_size=1, max_size=6)


@given(rows=st.lists(PLACES, min_size=1, max_size=3), spacing=st.sampled_from([300.0, 400.0, 406.4, 610.0]))
def test_as_many_screws_meet_studs_as_a_scan_of_all_places_finds(
    rows: list[list[float]], spacing: float
) -> None:
    found = on_studs([Row(tuple(row)) for row in rows], spacing, 12.7)
    met = sum(1 for row in found for stud in row if stud is not None)
    places = [place for row in rows for place in row]
    scanned = 0
    for step in range(math.ceil(spacing / 0.5)):
        off = [abs((place - step * 0.5 + spacing / 2) % spacing - spacing / 2) for place in places]
        scanned = max(scanned, sum(1 for each in off if each <= 12.7))
    assert met >= scanned
    studs = [stud for row in found for stud in row if stud is not None]
    assert all(abs((stud - studs[0]) / spacing - round((stud - studs[0]) / spacing)) < 1e-3 for stud in studs)
    for row, stood in zip(rows, found, strict=True):
        assert all(
            stud is None or abs(stud - place) <= 12.7 + 2e-3 for place, stud in zip(row, stood, strict=True)
        )


def test_a_row_that_may_be_moved_goes_onto_the_studs() -> None:
    (moved,) = on_studs([Row((0.0, 0.0, 0.0), (0.0, 1000.0))], 400.0, 12.7)
    assert None not in moved
    assert len(set(moved)) == 3
    (narrow,) = on_studs([Row((0.0, 0.0), (0.0, 100.0))], 400.0, 12.7)
    assert len(set(narrow)) == 1


@given(moment=st.floats(1, 1e7), heights=st.lists(st.floats(1, 2000), min_size=1, max_size=8))
def test_the_pulls_balance_the_moment(moment: float, heights: list[float]) -> None:
    found = pulls(moment, heights)
    assert sum(pull * height for pull, height in zip(found, heights, strict=True)) == pytest.approx(moment)
    twice = pulls(moment, [*heights, *heights])
    assert max(twice) == pytest.approx(max(found) / 2)


def test_a_shelf_by_hand() -> None:
    # No studs told, so all three count. The cleat's screws sit 50 mm above its lower edge.
    review = review_of(SHELF.format(screws="3 per joint", load="30 kg", room=""))
    (hung,) = wall_hung(review)
    board, cleat = review.masses["shelf"].weight, review.masses["cleat"].weight
    load = 30 * 9.80665
    moment = (board + load) * 100 + cleat * 20
    assert hung.weight == pytest.approx(board + cleat + load)
    assert hung.moment == pytest.approx(moment)
    assert hung.bearing == pytest.approx(1400.0)
    squares = sum((point.up - 1400) ** 2 for point in hung.points)
    for point in hung.points:
        assert point.pull == pytest.approx(moment * (point.up - 1400) / squares)
        assert point.shear == pytest.approx(hung.weight / 3)


@given(kg=st.integers(1, 60), lower=st.integers(0, 300), count=st.integers(1, 5))
def test_more_load_uses_more_and_a_longer_lever_less(kg: int, lower: int, count: int) -> None:
    review = review_of(SHELF.format(screws=f"{count} per joint", load=f"{kg} kg", room=""))
    (hung,) = wall_hung(review)
    heavier = review_of(SHELF.format(screws=f"{count} per joint", load=f"{kg + 5} kg", room=""))
    (more,) = wall_hung(heavier)
    assert more.used > hung.used
    deeper = hung_piece(review, hung.piece, Hanging(lower=float(lower)))
    doubled = hung_piece(review, hung.piece, Hanging(times=2))
    assert deeper is not None
    assert doubled is not None
    assert deeper.used <= hung.used + 1e-9
    assert doubled.used <= hung.used + 1e-9


def test_screws_between_studs_hold_nothing() -> None:
    every = SHELF.format(screws="every 300", load="10 kg", room=", studs every 400")
    (hung,) = wall_hung(review_of(every))
    assert hung.missed > 0
    assert all(point.pull == point.shear == 0 for point in hung.points if not point.meets)
    fitting = SHELF.format(screws="every 400", load="10 kg", room=", studs every 400")
    (good,) = wall_hung(review_of(fitting))
    assert (good.missed, good.studs) == (0, len(good.points))
    assert default_limits()["stud-target"].amount == MM_PER_INCH / 2


def test_into_masonry_nothing_is_worked_out() -> None:
    text = SHELF.format(screws="3 per joint", load="30 kg", room="")
    assert (
        list(wall_hung(review_of(text + "restrain shelf to wall: bracket, screws 8 x 80 into masonry\n")))
        == []
    )


def test_a_screw_that_seeks_its_stud_keeps_off_the_ends_of_its_rail() -> None:
    # 5 diameters from the end of the joint (NDS 2018, the end distance of bored screws): 30 mm for one of 6 mm.
    (found,) = wall_hung(
        review_of(SHELF.format(screws="2 per joint", load="10 kg", room=", studs every 400"))
    )
    assert [fixing.reach for fixing in found.fixings] == [pytest.approx((30.0, 970.0))]
