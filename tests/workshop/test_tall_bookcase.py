"""A tall bookcase bare, loaded high, with a child on a shelf, and restrained: every figure worked by hand.

Red oak weighs 705.6 kg/m³ (specific gravity 0.63 at 12 %, Wood Handbook Table 5-3a, and the water in it).
Two sides of 3/4 x 12 x 72 in and four shelves of 3/4 x 12 x 34 1/2 in are 2538 cu in, 0.041590 m³,
29.346 kg: W = 64.697 lb. The case is alike before and behind and above and below: x = 6, y = 36.
"""

from __future__ import annotations

import math
import xml.etree.ElementTree as ET

import pytest

from reviewer.reports.stability import outcome_of, stability_of
from reviewer.reports.stability_drawing import balance_drawing
from reviewer.review import Review
from reviewer.units import MM_PER_INCH, NEWTON_PER_POUND, UnitSystem
from reviewer.workshop.tipping import State, side_of
from reviewer.workshop.tipping_scene import Scene
from tests.support import findings_of, review_of

CASE = """\
plan "Tall case" in inches
stock board: actual 3/4 x 12 red oak, 8 ft
outline case: 36 across, 12 deep, 72 tall, on floor
part side for each of left, right: board, upright, facing side, as tall as case
    on floor, flush with each of case, flush with front of case
part shelf: board, across, flat, between side.left and side.right, flush with front of case
    4 copies spread evenly up from bottom of case to top of case
load shelf.*: books
room: indoors, wall behind, children under 6
"""
STRAPS = "restrain case to wall: strap, screws #10 x 2 1/2 into stud, 68 up, 2 of them\n"
W = 64.697
POUND_INCH = NEWTON_PER_POUND * MM_PER_INCH


def state(kind: str, plan: str = CASE) -> State:
    (found,) = review_of(plan).tipping
    return next(each for each in found.states if each.kind == kind)


def pounds(moment: float) -> float:
    return moment / POUND_INCH


def test_it_weighs_what_its_boards_weigh() -> None:
    (found,) = review_of(CASE).tipping
    assert found.piece.whole.weight / NEWTON_PER_POUND == pytest.approx(W, abs=0.001)


def test_bare_it_leans_by_nine_degrees_and_a_pull_of_7_lb_brings_it_down() -> None:
    # Level and empty: W x 6 = 388.2 lb·in holds, nothing turns; it falls from atan(6/36) = 9.462 degrees on.
    empty = state("empty")
    assert pounds(empty.balance.restoring) == pytest.approx(W * 6, abs=0.05)
    assert empty.tips_at is not None
    assert empty.tips_at.amount == pytest.approx(9.462, abs=0.001)
    # Pulled at 56 in with 10 lb: 560 against 388.2, a ratio of 0.693; 388.2 / 56 = 6.93 lb just tips it.
    push = state("push")
    assert pounds(push.balance.overturning) == pytest.approx(560, abs=0.01)
    assert push.balance.ratio == pytest.approx(0.6932, abs=0.0002)
    assert push.tips_at is not None
    assert push.tips_at.amount / NEWTON_PER_POUND == pytest.approx(6.932, abs=0.001)


def test_loaded_high_it_is_top_heavy() -> None:
    # Books at 25 lb a foot on the top board of 34 1/2 in: 71.875 lb with their middle 5 in over it, at 77.
    # A shelf lower, at 53 1/4, has 6 / 53.25 = 0.113 of arm to height, more than the whole: it would help.
    # A floor that falls 3/16 in a foot leans by 0.895 degrees: sin 0.015623, cos 0.999878.
    # 136.572 x 6 x cos = 819.33 holds, (64.697 x 36 + 71.875 x 77) x sin = 7863.5 x 0.015623 = 122.85 turns.
    high = state("high")
    assert [act.said for act in high.acts] == ["its own weight", "on shelf.4"]
    assert high.force / NEWTON_PER_POUND == pytest.approx(71.875, abs=0.001)
    assert pounds(high.balance.restoring) == pytest.approx(819.33, abs=0.05)
    assert pounds(high.balance.overturning) == pytest.approx(122.85, abs=0.05)
    # Its middle is now 57.58 in up: atan(6 / 57.58) = 5.949 degrees instead of 9.462.
    assert high.tips_at is not None
    assert high.tips_at.amount == pytest.approx(5.949, abs=0.001)


def test_a_child_on_a_shelf() -> None:
    # On the edge of the highest shelf within 56 in, 48 1/4 up, straight over the feet; carpet lifts the back
    # by 0.43 in: sin 0.0358333, cos 0.999358. W (6 cos - 36 sin) = 64.697 x (5.99615 - 1.29) = 304.47 holds,
    # 60 x 48.25 x 0.0358333 = 103.74 turns.
    child = state("child")
    assert child.on == "shelf.3"
    assert pounds(child.balance.restoring) == pytest.approx(304.47, abs=0.05)
    assert pounds(child.balance.overturning) == pytest.approx(103.74, abs=0.02)
    assert child.balance.ratio == pytest.approx(2.935, abs=0.001)
    # 304.47 over an arm of 48.25 x 0.0358333 = 1.729 in: 176 lb there would do it.
    assert child.tips_at is not None
    assert child.tips_at.amount / NEWTON_PER_POUND == pytest.approx(176.1, abs=0.1)


def front_push(review: Review) -> State:
    (found,) = review.tipping
    scene = Scene(found.piece, review.plan, review.setting, review.limits, found.openings)
    (front,) = [edge for edge in scene.edges if side_of(edge) == "front"]
    return scene.push(front)


def test_restrained_two_straps_hold_what_it_lacks_many_times() -> None:
    # Bare it lacks 560 - 388.2 = 171.8 lb·in, 2.53 lb in straps 68 in up (14). Two hold 2 x 60 x 68 = 8160.
    assert pounds(front_push(review_of(CASE)).balance.margin) == pytest.approx(-171.8, abs=0.05)
    tied = front_push(review_of(CASE + STRAPS))
    assert pounds(tied.hold) == pytest.approx(8160, abs=0.01)
    assert pounds(tied.unheld) == pytest.approx(-171.8, abs=0.05)
    assert tied.balance.ratio == pytest.approx((388.18 + 8160) / 560, abs=0.001)
    assert [finding.weight.word for finding in findings_of(CASE, "tips")] == ["warning"]
    assert findings_of(CASE + STRAPS, "tips") == ()
    # Now it is nearest to tipping along the wall, where a strap is no help: W x 18 / 560.
    (found,) = review_of(CASE + STRAPS).tipping
    assert found.worst is not None
    assert found.worst.sides == ("left", "right")
    assert found.worst.balance.ratio == pytest.approx(W * 18 / 560, abs=0.001)


def places(svg: str) -> tuple[float, float, float, float]:
    """Where the edge and the middle of the weight are on paper: x of both, and how high the middle is."""
    root = ET.fromstring(svg)
    edges = [each for each in root.iter() if each.get("class") == "edge"]
    corners = [tuple(map(float, pair.split(","))) for pair in edges[0].get("points", "").split()]
    middle = next(each for each in root.iter() if each.get("class") == "centre")
    return corners[0][0], corners[0][1], float(middle.get("cx", 0)), float(middle.get("cy", 0))


@pytest.mark.parametrize("kind", ["push", "high", "child"])
def test_the_drawing_has_the_forces_in_their_places(kind: str) -> None:
    review = review_of(CASE)
    found = state(kind)
    solids = list(review.setting.solids.values())
    svg = balance_drawing(found, solids, outcome_of(found, review.limits), UnitSystem.INCH, "it")
    edge_x, floor, x, y = places(svg)
    # The middle of its weight is 36 in up and 6 in inside, turned about the edge by the lean.
    lean = math.radians(found.tilt)
    across = 6 * math.cos(lean) - 36 * math.sin(lean)
    up = 36 * math.cos(lean) + 6 * math.sin(lean)
    assert (x - edge_x) / (floor - y) == pytest.approx(across / up, abs=0.002)
    words = " ".join(each.text or "" for each in ET.fromstring(svg).iter() if each.text)
    assert "A 64.7 lb" in words
    held = {"push": "32.3 lb·ft holds", "high": "68.3 lb·ft holds", "child": "25.4 lb·ft holds"}[kind]
    assert held in words
    assert ("TIPS, ratio 0.693" in words) == (kind == "push")
    # One full arrow turns it; its own weight and books behind the edge hold it.
    full = svg.count('class="turns"')
    assert full == (0 if kind == "high" else 1)
    assert svg.count('class="holds"') == (2 if kind == "high" else 1)


def test_a_tied_case_shows_its_strap_and_the_wall() -> None:
    review = review_of(CASE + STRAPS)
    solids = list(review.setting.solids.values())
    svg = balance_drawing(front_push(review), solids, "stands", UnitSystem.INCH, "it", restraint=68 * 25.4)
    assert 'class="strap"' in svg
    assert ">tied<" in svg
    assert "the wall restraints add 680 lb·ft" in svg  # 8160 / 12


def test_which_change_helps_most_is_tried_and_told() -> None:
    (shown,) = stability_of(review_of(CASE))
    # Two straps leave only the fall along the wall: 64.697 x 18 / 560 = 2.08. Feet 2 in further out at the
    # front: 64.697 x 8 / 560 = 0.924. Ballast of 20 lb over the back feet: (388.18 + 20 x 12) / 560 = 1.122.
    assert [(row.tried.change, row.ratio) for row in shown.changes] == [
        ("restraint", "2.08"),
        ("ballast", "1.12"),
        ("deeper", "0.924"),
    ]
    # Enough for 1.25 times 560 = 700: 311.8 more, which is 26 lb at 12 in and 4.82 in more under 64.697 lb.
    assert [row.enough for row in shown.changes] == [
        "4.59 lb of pull in all",
        "26 lb of ballast",
        "4 13/16 in further out at the front",
    ]
    assert shown.best == (
        "Of the changes, each tried by itself, this one helps most: tied to the wall with 2 straps into "
        "studs, 68 in up, 120 lb together. It takes the least ratio of any state from 0.693 to 2.08; the others come "
        "to 1.12 and 0.924. That is enough by estimate."
    )
