"""How many of a thing a plan may say, and how a weight is shared over the parts that it names."""

from __future__ import annotations

import pytest

from reviewer.units import NEWTON_PER_POUND
from tests.support import look_at, review_of

TEXT = """
plan "Shelves" in inches
stock board: 1x8 pine, 8 ft
part low: board, across, flat, 30 long, on floor, left at 0, front at 0
part other: board, across, flat, {long} long, on floor, left at 50, front at 0
{load}
"""


def carried(load: str, long: int = 30) -> dict[str, float]:
    """Pounds on each part."""
    review = review_of(TEXT.format(load=load, long=long))
    return {
        name: round(sum(each.lasting + each.brief for each in found) / NEWTON_PER_POUND, 3)
        for name, found in review.declared.items()
    }


def test_a_weight_is_shared_and_what_goes_by_length_is_on_each() -> None:
    assert carried("load low, other: 40 lb") == {"low": 20, "other": 20}
    assert carried("load low, other: 40 lb", long=10) == {"low": 30, "other": 10}
    assert carried("load low: 40 lb\nload other: 40 lb") == {"low": 40, "other": 40}
    assert carried("load low, other: 12 lb per foot", long=10) == {"low": 30, "other": 10}


@pytest.mark.parametrize("said", ["20 books", "6 plants", "2 wine bottles"])
def test_what_goes_by_room_is_not_counted(said: str) -> None:
    (problem,) = look_at(TEXT.format(load=f"load low: {said}", long=30)).problems
    assert "not by their number" in problem.says
    assert carried(f"load low: {said}, 40 lb") == {"low": 40}


def test_lamps_can_be_counted() -> None:
    assert carried("load low: 2 lamps") == {"low": 24}
