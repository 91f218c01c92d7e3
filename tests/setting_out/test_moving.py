"""Where doors, lids and drawers are when open, and what they sweep: every number by hand, in millimetres."""

from __future__ import annotations

import math

import pytest

from reviewer.setting_out.moving import Moved, moved
from tests.model.placed import in_box

#: Shown to a thousandth of a millimetre.
CLOSE = pytest.approx


def movement(line: str, *more: str) -> Moved:
    found = in_box(line, *more)
    assert found.troubles == []
    (only,) = moved(found.plan, found.setting)
    return only


def test_a_door_hinged_left_swings_to_the_front() -> None:
    door = movement(
        "part door: ply, facing front, 400 across, 300 tall, left at 100, front at 0, bottom at 50"
        ", opens 90 degrees, hinged left"
    )
    assert door.hinge is not None
    assert (door.hinge.start, door.hinge.end) == ((100, 0, 50), (100, 0, 350))
    # A quarter turn about its front left edge: what ran 400 to the right runs 400 to the front, and the
    # 18 of its thickness, which lay behind the edge, lie to the right of it.
    assert door.open["door"].low == CLOSE((100, -400, 50))
    assert door.open["door"].high == CLOSE((118, 0, 350))
    # The far back corner, the furthest from the hinge, is furthest right when it is level with it. It does
    # not come round to the front: its turn ends 18 to the right of that.
    assert door.whole_swept.low == CLOSE((100, -400, 50))
    assert door.whole_swept.high == CLOSE((100 + math.hypot(400, 18), 18, 350))


def test_a_door_hinged_right_swings_the_other_way() -> None:
    door = movement(
        "part door: ply, facing front, 400 across, 300 tall, left at 100, front at 0, bottom at 50"
        ", opens 90 degrees, hinged right"
    )
    assert door.open["door"].low == CLOSE((482, -400, 50))
    assert door.open["door"].high == CLOSE((500, 0, 350))


def test_a_door_that_opens_wide_passes_its_side() -> None:
    door = movement(
        "part door: ply, facing front, 400 across, 300 tall, left at 100, front at 0, bottom at 50"
        ", opens 120 degrees, hinged left"
    )
    # Its free edge is 400 from the hinge at 120 degrees: 200 to the left and 346.41 to the front; the
    # corner at the back of that edge is 18 times the cosine of 60 degrees, 9, further to the front.
    assert door.open["door"].low == CLOSE((-100, -355.410, 50), abs=0.001)
    # Its thickness looks back and to the right now: 18 times the sine of 120 degrees.
    assert door.open["door"].high[0] == CLOSE(100 + 18 * math.sin(math.radians(120)))
    assert door.whole_swept.low[:2] == CLOSE((-100, -math.hypot(400, 18)))


def test_a_lid_hinged_at_the_back_swings_up() -> None:
    lid = movement(
        "part lid: ply, flat, 500 across, 250 deep, left at 0, front at 0, bottom at 400"
        ", opens 90 degrees, hinged back"
    )
    assert lid.hinge is not None
    assert (lid.hinge.start, lid.hinge.end) == ((0, 250, 418), (500, 250, 418))
    assert lid.open["lid"].low == CLOSE((0, 232, 418))
    assert lid.open["lid"].high == CLOSE((500, 250, 668))


def test_a_flap_hinged_at_the_bottom_swings_down_to_the_front() -> None:
    flap = movement(
        "part flap: ply, facing front, 500 across, 250 tall, left at 0, front at 10, bottom at 100"
        ", opens 90 degrees, hinged bottom"
    )
    assert flap.open["flap"].low == CLOSE((0, -240, 100))
    assert flap.open["flap"].high == CLOSE((500, 10, 118))


def test_a_door_in_the_side_opens_away_from_the_piece() -> None:
    found = in_box(
        "part door: ply, facing side, 200 deep, 300 tall, left at 0, front at 0, bottom at 50"
        ", opens 90 degrees, hinged back",
        "part far: ply, facing side, 200 deep, 300 tall, left at 500, front at 0, bottom at 50",
    )
    (door,) = moved(found.plan, found.setting)
    assert door.open["door"].low == CLOSE((-200, 182, 50))
    assert door.open["door"].high == CLOSE((0, 200, 350))


def test_a_drawer_slides_to_the_front() -> None:
    found = in_box(
        """
        assembly drawer: 300 across, 250 deep, 100 tall, left at 20, front at 5, bottom at 40, slides out 200
            part front: board, across, on edge, as wide as drawer, flush with left of drawer
                flush with front of drawer, flush with bottom of drawer
            part back: like front, mirrored deep about drawer
        """
    )
    (drawer,) = moved(found.plan, found.setting)
    assert drawer.closed == ("drawer", (20, 5, 40), (320, 255, 140))
    assert drawer.open["drawer.back"] == ("drawer.back", (20, 35, 40), (320, 55, 140))
    assert drawer.swept["drawer.back"] == ("drawer.back", (20, 35, 40), (320, 255, 140))
    assert drawer.whole_swept == ("drawer", (20, -195, 40), (320, 255, 140))


def test_what_lifts_out_has_no_open_place() -> None:
    tray = movement("part tray: ply, flat, 200 across, 200 deep, left at 0, front at 0, on floor, lifts out")
    assert (tray.open, tray.hinge, tray.whole_swept.high) == ({}, None, (200, 200, 18))
