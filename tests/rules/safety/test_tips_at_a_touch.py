"""What goes over at a touch: statics by hand, and where the rule is quiet. All limits of it are an own choice.

A square post of side b that stands by itself goes over when F·h > W·b/2: the push at its top against its own
weight at the middle of its foot.
"""

from __future__ import annotations

import pytest

from reviewer.findings import Severity
from reviewer.reports.stability import stability_of
from reviewer.units import MM_PER_INCH, NEWTON_PER_POUND
from tests.support import findings_of, review_of, told

POST = """
plan "{title}" in inches
stock block: actual {side} x {side} hickory, 8 ft
stock leaf: actual 3/4 x 12 red oak, 8 ft
part post: block, upright, {tall} tall, on floor, left at 40, front at 40
room hall: indoors, {room}
{more}
"""


def post(
    *, side: float = 3, tall: float = 40, room: str = "children under 6", more: str = "", title: str = "Post"
) -> str:
    return POST.format(side=side, tall=tall, room=room, more=more, title=title)


def severity(text: str) -> Severity | None:
    return max((each.weight for each in findings_of(text, "tips")), default=None)


def test_the_balance_by_hand() -> None:
    review = review_of(post())
    (found,) = review.tipping
    state = next(each for each in found.states if each.kind == "touch")
    weight = found.piece.whole.weight
    # 2.5 lb at 40 in against W at 1.5 in.
    assert state.balance.restoring == pytest.approx(weight * 1.5 * MM_PER_INCH)
    assert state.balance.overturning == pytest.approx(2.5 * NEWTON_PER_POUND * 40 * MM_PER_INCH)
    assert state.tips_at.amount == pytest.approx(weight * 1.5 / 40)
    assert state.sides == ("front", "back", "left", "right")


def test_what_is_taller_than_a_reach_is_touched_at_the_reach() -> None:
    # The height of the storage test's push, 56 in, is how high anyone is taken to touch it.
    (found,) = review_of(post(tall=80)).tipping
    assert next(each for each in found.states if each.kind == "touch").place == pytest.approx(
        56 * MM_PER_INCH
    )


@pytest.mark.parametrize(("tall", "kinds"), [(29.9, False), (30, True)])
def test_it_begins_at_the_height_of_a_small_child(tall: float, kinds: bool) -> None:
    (found,) = review_of(post(tall=tall)).tipping
    assert any(each.kind == "touch" for each in found.states) == kinds


def test_children_make_it_a_warning_where_it_is_heavy_enough_to_hurt() -> None:
    # Hickory of 3 x 3 x 36 in weighs about 9.4 lb, of 3 x 3 x 48 in about 12.6 lb: the limit is 10 lb.
    (light,), (heavy,) = review_of(post(tall=36)).tipping, review_of(post(tall=48)).tipping
    assert light.piece.whole.weight < 10 * NEWTON_PER_POUND < heavy.piece.whole.weight
    assert severity(post(tall=36)) is Severity.NOTE
    assert severity(post(tall=48)) is Severity.WARNING
    assert severity(post(tall=48, room="no children")) is Severity.NOTE
    assert severity(post(tall=48, room="no children", title="Child's coat tree")) is Severity.WARNING
    assert severity(post(tall=48, room="floor wood")) is Severity.NOTE


def test_without_children_less_is_asked() -> None:
    # A post of 5 in weighs about 29.1 lb: x 2.5 / 40 = 1.82 lb tip it, a ratio of 1.21 to 1.5 lb; of 5 1/2 in
    # 35.2 lb x 2.75 / 40 = 2.42 lb: 1.61 to 1.5 lb, 0.97 to 2.5 lb.
    assert severity(post(side=5.5, room="no children")) is None
    assert severity(post(side=5.5)) is Severity.WARNING
    (line,) = told(post(side=5.5), "tips")
    assert "is close to tipping over to any side when it is empty and touched with 2.5 lb at 40 in up" in line
    (note,) = told(post(side=5, room="no children"), "tips")
    assert "touched with 1.5 lb at 40 in up, about what a sleeve that catches" in note


def test_what_stays_on_it_holds_it_down_but_a_child_comes_while_it_is_empty() -> None:
    # 7 1/4 in deep and 32 in tall, about 9.7 lb: 1.1 lb tips it empty, ten times that with its books.
    shelf = """
        plan "Low shelf" in inches
        stock board: 1x8 pine
        outline frame: 48 across, 7 1/4 deep, 32 tall, on floor
        part end for each of left, right: board, upright, facing side, as tall as frame
            flush with each of frame, flush with front of frame, on floor
        part shelf: board, across, flat, between end.left and end.right, flush with front of frame
            bottom 30 above floor
        join shelf to end.*: screws #8 x 2, 2 per joint, from outside, glue pva
        {load}
        room hall: indoors, {children}
    """
    for load, children, told_of in (
        ("load shelf: books", "no children", False),
        ("load shelf: books", "children under 6", True),
        ("", "no children", True),
    ):
        (found,) = review_of(shelf.format(load=load, children=children)).tipping
        assert any(each.kind == "touch" for each in found.states) is told_of, (load, children)


def test_seats_storage_and_what_is_tied_are_left_to_their_own_tests() -> None:
    seat = post(more="load post: 1 person seated")
    (found,) = review_of(seat).tipping
    assert not any(each.kind == "touch" for each in found.states)
    tied = post(
        room="children under 6, wall behind, studs every 16",
        more="restrain post to wall: bracket, screws #10 x 2 1/2 into stud, 38 up, 2 of them",
    ).replace("front at 40", "against wall")
    assert severity(tied) is None


def test_storage_gets_the_larger_push_alone() -> None:
    case = """
        plan "Case" in inches
        stock board: actual 3/4 x 11 1/4 red oak, 8 ft
        outline case: 30 across, 11 1/4 deep, 60 tall, on floor
        part side for each of left, right: board, upright, facing side, as tall as case
            on floor, flush with each of case, flush with front of case
        part shelf: board, across, flat, between side.left and side.right, flush with front of case
            4 copies spread evenly up from bottom of case to top of case
        load shelf.*: books
        room hall: indoors, children under 6
    """
    (found,) = review_of(case).tipping
    kinds = [each.kind for each in found.states]
    assert "push" in kinds
    assert "touch" not in kinds


def test_a_remedy_is_tried_and_told() -> None:
    (line,) = told(post(tall=48), "tips")
    assert "→ Set the feet" in line or "→ Fix 20 lb of ballast low" in line
    assert "the least ratio of any state is then" in line


def test_the_report_says_what_is_asked_and_that_it_is_an_own_choice() -> None:
    (shown,) = stability_of(review_of(post()))
    assert "a touch of 2.5 lb at its top is tried on it: an own choice and no test" in shown.scope
    assert shown.rows[0].what == "a touch at its top, 2.5 lb at 40 in up"
    (low,) = stability_of(review_of(post(tall=20)))
    assert "touch" not in low.scope


def test_a_limit_of_the_plan_counts() -> None:
    assert told(post(tall=48, more="limit touch-push-children: 1/4 lb"), "tips") == []
