"""The clause that puts a part where it is."""

from __future__ import annotations

import pytest

from reviewer.setting_out.directions import placing_span, side_of
from tests.support import review_of

TEXT = """
plan "Frame" in inches
stock stud: actual 1 1/2 x 3 1/2 pine
outline frame: 42 across, 12 deep, 16 tall, on floor
part leg: stud, upright, facing front, as tall as frame, in each corner of frame
part rail: stud, across, on edge, 30 long, left at 5, flush with front of frame, on floor
part seat: stud, across, flat, 42 long, left at 0, on frame, 3 copies side by side deep, gap 1/8, front at 0
"""


@pytest.mark.parametrize(
    ("name", "axis", "words"),
    [
        ("rail", 0, "left at 5"),
        ("rail", 1, "flush with front of frame"),
        ("rail", 2, "on floor"),
        ("leg.back-right", 1, "in each corner of frame"),
        ("leg.back-right", 2, "in each corner of frame"),
        ("seat.2", 1, "3 copies side by side deep"),
        ("seat.2", 2, "on frame"),
        ("frame", 2, "on floor"),
        ("frame", 1, "12 deep"),
        ("nobody", 0, 'plan "Frame" in inches'),
    ],
)
def test_the_clause_that_places(name: str, axis: int, words: str) -> None:
    review = review_of(TEXT)
    assert review.source.words(placing_span(review.plan, name, axis)) == words


def test_which_of_two_is_on_the_high_side() -> None:
    solids = review_of(TEXT).setting.solids
    assert side_of(solids["leg.back-right"], solids["leg.front-left"], 0) == 1
    assert side_of(solids["leg.front-left"], solids["leg.back-right"], 0) == 0
