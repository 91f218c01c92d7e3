"""How far stocks move: properties that hold for every wood, and the moisture that they are made up at."""

from __future__ import annotations

from typing import Literal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from reviewer.language.source import Span
from reviewer.model.plan import Room, Stock
from reviewer.reference.limits import default_limits
from reviewer.reference.materials import candidates, material, material_names
from reviewer.setting_out.solid import square_solid
from reviewer.units import percent
from reviewer.workshop.wood_movement import change_across, change_on, made_up, season
from tests.support import review_of

WOODS = sorted({candidates(words)[0] for words in material_names() if candidates(words)})
MOISTURES = st.floats(0, 30)


def stock(wood: str, sawn: Literal["flat", "quarter"] | None = None, moisture: float | None = None) -> Stock:
    return Stock(
        name="board",
        kind="board",
        material=wood,
        said=wood,
        thickness=20.0,
        width=100.0,
        offers=(),
        sawn=sawn,
        moisture=moisture,
        span=Span(0, 0),
    )


def test_there_are_woods_that_move() -> None:
    assert sum(material(wood).moves for wood in WOODS) > 50


@given(st.sampled_from(WOODS), st.floats(1, 2000), st.floats(0, 500), MOISTURES, MOISTURES)
def test_a_wider_board_never_moves_less(
    wood: str, width: float, more: float, start: float, end: float
) -> None:
    board = stock(wood)
    assert change_across(board, width + more, start, end) >= change_across(board, width, start, end)


@given(st.sampled_from(WOODS), st.floats(1, 2000), MOISTURES, MOISTURES)
def test_quarter_sawn_never_moves_more_than_flat_sawn(
    wood: str, width: float, start: float, end: float
) -> None:
    flat, quarter = (change_across(stock(wood, sawn), width, start, end) for sawn in ("flat", "quarter"))  # type: ignore[arg-type]
    assert quarter <= flat + 1e-12
    # Where the plan does not say, the cut that moves most is taken.
    assert change_across(stock(wood), width, start, end) == flat


@given(st.sampled_from(WOODS), st.floats(0, 30), st.floats(0, 30), st.floats(0, 5))
def test_a_longer_way_never_moves_less(wood: str, start: float, end: float, more: float) -> None:
    low, high = min(start, end), max(start, end)
    near, far = (change_across(stock(wood), 300, low, top) for top in (high, high + more))
    if (low >= 6 and high + more <= 14) or high > 14 or low < 6:  # by one and the same formula
        assert far >= near - 1e-9


@given(st.sampled_from(WOODS), MOISTURES, MOISTURES)
def test_a_board_moves_across_its_grain_only(wood: str, start: float, end: float) -> None:
    solid = square_solid("board", (0, 0, 0), (1000, 100, 20), 0, 1, 2)  # type: ignore[arg-type]
    assert change_on(stock(wood), solid, 0, start, end) == 0
    assert change_on(stock(wood), solid, 1, start, end) == change_across(stock(wood), 100, start, end)
    # Through the thickness of flat-sawn wood the rings lie as across the width of quarter-sawn wood.
    assert change_on(stock(wood), solid, 2, start, end) == change_across(
        stock(wood, "quarter"), 20, start, end
    )


@pytest.mark.parametrize("wood", [wood for wood in WOODS if not material(wood).moves])
def test_sheets_lie_still(wood: str) -> None:
    assert change_across(stock(wood), 1000, 6, 16) == 0


HEATED, OUTDOORS = "room hall: indoors", "room porch: outdoors"


@pytest.mark.parametrize(
    ("wood", "room", "moisture"),
    [
        ("red oak", HEATED, 8),  # kiln-dried, as it settles
        ("spruce-pine-fir", HEATED, 8),  # settles from 19 %
        ("spruce-pine-fir", OUTDOORS, 16),
        ("red oak", OUTDOORS, 8),  # goes out as dry as it was bought
        ("red oak, moisture 12 %", OUTDOORS, 12),
        ("red oak, moisture 12 %", HEATED, 8),
        ("red oak, moisture 5 %", HEATED, 5),
    ],
)
def test_wood_is_made_up_as_bought_or_settled(wood: str, room: str, moisture: float) -> None:
    review = review_of(
        f"""
        plan "Board" in millimetres
        stock board: actual 20 x 100 {wood}
        part board: board, across, flat, 600 long, on floor, left at 0, front at 0
        {room}
        """
    )
    year = season(review.plan, review.limits)
    assert made_up(review.plan.stocks["board"], review.limits, year).moisture == percent(moisture)


def test_air_sets_the_season_of_a_heated_room_alone() -> None:
    limits = default_limits()
    for end, humidity in (("low", 55.0), ("high", 80.0)):
        name = f"humidity-season-{end}"
        limits[name] = limits[name]._replace(value=percent(humidity))
    review = review_of('plan "Board" in millimetres\nstock board: actual 20 x 100 pine\n'
                       "part board: board, across, flat, 600 long, on floor, left at 0, front at 0")  # fmt: skip
    heated = season(review.plan, limits)
    # Wood Handbook Table 4-2 at 70 °F: 10.1 % and 16.0 %; settled wood is never drier than the air makes it.
    assert heated.dry.amount == pytest.approx(10.1, abs=0.1)
    assert heated.humid.amount == pytest.approx(16.0, abs=0.1)
    assert heated.settled.amount == heated.dry.amount
    outside = Room(name="porch", outdoors=True, span=Span(0, 0))
    plan = review.plan.model_copy(update={"room": outside})
    assert season(plan, limits).humid.amount == limits["moisture-outdoors-high"].amount
