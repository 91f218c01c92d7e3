"""What stands in the way of doors and drawers, against looking at random plans by small steps (shapely)."""

from __future__ import annotations

import math
import random

import pytest
from shapely.affinity import rotate
from shapely.geometry import box

from reviewer.model.plan import Axis
from reviewer.review import Review
from tests.support import review_of

STEPS = 900
SLACK = 0.4064  # cut-difference: 0.016 in


def _random_plan(chance: random.Random) -> str:
    """A door on a case, hinged left or right, and a post somewhere in front of it or beside it."""
    wide, tall, thick = chance.randrange(200, 900), chance.randrange(300, 900), chance.randrange(12, 40)
    side = chance.choice(("left", "right"))
    place = f"600 - {chance.randrange(0, 900)}"
    across, deep = chance.randrange(10, 300), chance.randrange(10, 300)
    return f"""
plan "Random" in millimetres
stock panel: birch plywood {thick} mm
stock post: actual {across} x {deep} pine
part door: panel, upright, facing front, {wide} across, {tall} tall, left at {place}, front at 0, bottom at 10
    opens {chance.randrange(60, 180)} degrees, hinged {side}
part thing: post, upright, facing side, {chance.randrange(300, 900)} tall, bottom at {chance.randrange(0, 400)}
    left at 1500 - {chance.randrange(400, 2100)}, front at 100 - {chance.randrange(100, 900)}
"""


def _by_steps(review: Review) -> float | None:
    """The first of many turns at which the door shares area with the thing; seen from above."""
    door, thing = review.setting.solids["door"], review.setting.solids["thing"]
    (moving,) = review.plan.movings
    if min(door.high[2], thing.high[2]) - max(door.low[2], thing.low[2]) <= SLACK:
        return None
    assert moving.hinge is not None
    left = moving.hinge == (Axis.ACROSS, "low")
    pin = (door.low[0] if left else door.high[0], door.low[1])
    leaf = box(door.low[0], door.low[1], door.high[0], door.high[1])
    still = box(thing.low[0], thing.low[1], thing.high[0], thing.high[1])
    if leaf.intersection(still).area > 0:
        return None
    still = still.buffer(-SLACK, join_style="mitre")
    for step in range(STEPS + 1):
        turn = math.radians(moving.degrees or 0) * step / STEPS
        # Seen from above with the back up, a door hinged left opens clockwise.
        if rotate(leaf, -turn if left else turn, origin=pin, use_radians=True).intersects(still):
            return turn
    return None


def test_doors_on_random_hinges() -> None:
    chance = random.Random(5)
    struck = clear = 0
    for _ in range(240):
        review = review_of(_random_plan(chance))
        strokes = review.swings.strokes
        seen = _by_steps(review)
        if seen is None:
            clear += 1
            assert strokes == ()
            continue
        struck += 1
        (stroke,) = strokes
        assert stroke.obstacle.name == "thing"
        # A corner meets a shrunk corner a little sooner or later than a depth is reached.
        assert stroke.way == pytest.approx(seen, abs=0.012)
    assert struck > 60
    assert clear > 60


CASE = """
plan "Case" in millimetres
stock panel: birch plywood 18 mm
outline case: 600 across, 500 deep, 720 tall, on floor
part side for each of left, right: panel, upright, facing side, 500 deep, as tall as case, on floor
    flush with each of case, flush with front of case
part door: panel, upright, facing front, 561 across, 680 tall, bottom 20 above floor
    left 1 right of right of side.left, flush with front of side.left, opens {degrees} degrees, hinged left
fit door to side.left: 2 hinges 60
part tray: panel, flat, {wide} across, 400 deep, bottom 200 above floor, {place}
    front 30 behind front of case, slides out 350
fit tray to side.*: slides 400
"""


def test_a_drawer_behind_a_door() -> None:
    """At 90 degrees the leaf stands 18 mm into the opening, from 19 to 37 mm; at 180 it is out of the way."""
    for degrees, wide, place, struck in (
        (90, 540, "centred across on case", True),
        (180, 540, "centred across on case", False),
        (90, 500, "left 45 right of left of case", False),
    ):
        found = review_of(CASE.format(degrees=degrees, wide=wide, place=place)).swings.strokes
        assert bool(found) is struck, (degrees, wide)
        if struck:
            (stroke,) = found
            assert stroke.behind is not None
            assert stroke.behind.door == "door"
            assert stroke.behind.angle == pytest.approx(math.pi / 2)
            # The tray begins at 30: the leaf's inner corner, at 19 + 18 sin x, is past it from 142 degrees on.
            assert stroke.behind.clears == pytest.approx(math.radians(155))
            assert stroke.behind.stands_in == pytest.approx(19 + 18 - 30, abs=0.01)
            assert stroke.way == pytest.approx(30, abs=0.5)  # to the front of the case, where the leaf begins


def test_a_wall_leaves_a_door_no_room() -> None:
    """A leaf 561 wide hinged 19 mm from the case's left side; the wall is 200 mm further left.

    Its far front corner is at radius 561 from the pin: 219 = 561 cos(180 - x), so x = 112.98 degrees.
    """
    text = CASE.format(degrees=170, wide=500, place="left 50 right of left of case")
    found = review_of(text + "room hall: indoors, wall left 200 away\n").swings.strokes
    (stroke,) = [each for each in found if each.obstacle.kind == "wall"]
    exact = math.degrees(math.pi - math.acos((219 + SLACK) / 561))
    assert math.degrees(stroke.way) == pytest.approx(exact, abs=0.01)
    assert stroke.further == pytest.approx(561 * math.cos(math.radians(10)) - 219, abs=0.01)
    # A skirting 20 mm thick is struck first, and told instead.
    skirted = review_of(text + "room hall: indoors, wall left 200 away, skirting 90 tall by 20 deep\n")
    (first, second) = sorted(skirted.swings.strokes, key=lambda each: each.way)[:1] * 2
    assert first.obstacle.kind == "skirting"
    assert first.way < math.radians(exact)
    assert second is first


PAIR = """
plan "Pair" in millimetres
stock panel: birch plywood 18 mm
part stile: panel, upright, facing side, 300 deep, 700 tall, left at 400, front at 18, on floor
part door.left: panel, upright, facing front, 400 across, 600 tall, left at 0, front at 0, bottom at 20
    opens {degrees} degrees, hinged right
part door.right: panel, upright, facing front, 400 across, 600 tall, left at 418, front at 0, bottom at 20
    opens {degrees} degrees, hinged left
"""


def test_two_doors_on_one_stile() -> None:
    """Each alone is clear; past 90 degrees both lean over the stile between them and share room."""
    assert review_of(PAIR.format(degrees=90)).swings.clashes == ()
    found = review_of(PAIR.format(degrees=100)).swings
    assert found.strokes == ()
    (clash,) = found.clashes
    assert (clash.one.moving.name, clash.two.moving.name) == ("door.left", "door.right")
    assert 40 < clash.depth < 60


SHAPED = """
plan "Shaped" in millimetres
stock panel: birch plywood 18 mm
stock post: actual 60 x 60 pine
part door: panel, upright, facing front, 500 across, 600 tall, left at 0, front at 0, bottom at 20
    opens 110 degrees, hinged left
part post: post, upright, 700 tall, left at 300, back at 0 - 100, on floor{notch}
"""


def test_a_notch_lets_a_door_pass() -> None:
    (stroke,) = review_of(SHAPED.format(notch="")).swings.strokes
    assert stroke.obstacle.name == "post"
    notched = review_of(SHAPED.format(notch="\n    notch 60 deep by 690 tall at back bottom"))
    assert notched.setting.solids["post"].body is not None
    assert notched.swings.strokes == ()
    short = review_of(SHAPED.format(notch="\n    notch 60 deep by 100 tall at back bottom"))
    (again,) = short.swings.strokes
    assert again.way == pytest.approx(stroke.way, abs=math.radians(2))


def _doors(rows: int) -> str:
    """Doors beside each other in so many rows; each swings past the closed one next to it."""
    text = 'plan "Doors" in millimetres\nstock panel: birch plywood 18 mm\n'
    for row in range(rows):
        for number in range(12):
            text += (
                f"part door.{row}-{number}: panel, upright, facing front, 400 across, 500 tall\n"
                f"    left at {403 * number}, front at 0, bottom at {510 * row}\n"
                "    opens 110 degrees, hinged left\n"
            )
    return text


def test_growth_is_near_linear() -> None:
    """Four times as many doors are four times as many pairs, not sixteen times."""
    small, large = (review_of(_doors(rows)).swings for rows in (6, 24))
    for found in (small, large):
        assert found.strokes == ()
        assert not found.stopped
    assert 0 < large.pairs <= 5 * small.pairs
