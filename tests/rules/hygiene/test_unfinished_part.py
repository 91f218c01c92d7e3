"""Parts that no finish covers: told where they are seen, quiet where makers leave them bare."""

from __future__ import annotations

import pytest

from tests.support import told

RULE = "unfinished-part"

#: A box open at the front, with a shelf inside it and a cleat behind its front rail.
PLAN = """
plan "Box" in inches
stock ply: birch plywood 3/4
stock strip: actual 1 x 1 red oak, 8 ft
outline case: 20 across, 10 deep, 20 tall, on floor
part side for each of left, right: ply, upright, facing side, 10 deep, as tall as case
    flush with each of case, flush with front of case, on floor
part top: ply, flat, 10 deep, on side.left, from left of case to right of case, flush with front of case
part face: ply, facing front, 20 tall, on floor, from left of case to right of case, front 1 in front of case
part cleat: strip, across, flat, 12 long, under top, left at 4, front at 4
"""


def test_a_part_in_sight_is_told_whole() -> None:
    assert told(PLAN + "finish f: on side.*, face, cleat\n    2 coats of oil danish\n", RULE) == [
        "warning top @ top: No finish goes on top; the plan's others have f. → Add top to the list of a finish, or accept that it "
        "stays bare, with the reason.",
    ]


def test_copies_are_told_together() -> None:
    (one,) = told(PLAN + "finish f: on top, face, cleat\n    2 coats of oil danish\n", RULE)
    assert one.startswith(
        "warning side.left, side.right @ side: No finish goes on side.left and side.right; "
    )
    assert "Add side.* to the list" in one


@pytest.mark.parametrize(
    "finish",
    [
        "",  # a plan without any finish says nothing of it
        "finish f: on side.*, top, face\n    2 coats of oil danish\n",  # the cleat is out of sight
        "finish f: on top of top, outside of side.*, face\n    2 coats of oil danish\n",  # one face is enough
    ],
)
def test_what_is_out_of_sight_may_stay_bare(finish: str) -> None:
    assert told(PLAN + finish, RULE) == []


def test_treated_wood_may_stay_bare() -> None:
    finish = "finish f: on side.*, face\n    2 coats of oil danish\npart post: deck, upright, facing front, 20 tall, on floor, left at 40, front at 0\nstock deck: 2x4 southern pine, treated\n"
    assert len(told(PLAN + finish, RULE)) == 1  # the top, not the post
