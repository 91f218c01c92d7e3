"""Many names in one sentence: all copies of a part under the one name that a list of the plan gives them."""

from __future__ import annotations

from reviewer.plan_words import called
from tests.rules.everyday_pieces import BENCH
from tests.support import review_of

LEGS = ["leg.front-left", "leg.front-right", "leg.back-left", "leg.back-right"]


def test_all_copies_are_told_as_the_plan_lists_them() -> None:
    plan = review_of(BENCH).plan
    assert called(plan, LEGS) == "leg.front-left, leg.front-right, leg.back-left and leg.back-right"
    assert called(plan, [*LEGS, "rail.front"]) == "leg.* and rail.front"
    assert called(plan, [*LEGS, "the wall"]) == "leg.* and the wall"


def test_some_copies_keep_their_names() -> None:
    plan = review_of(BENCH).plan
    said = called(plan, [*LEGS[:3], "end.left", "end.right"])
    assert said == "leg.front-left, leg.front-right, leg.back-left and end.*"
