"""Whether bodies can be moved together: knots against trying every group and every way, and real joints."""

from __future__ import annotations

from itertools import combinations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from reviewer.workshop.going_together import EVERY_WAY, held_apart, knots, opposite, way_bit
from reviewer.workshop.joining_order import steps_of_joints
from tests.support import review_of

Links = dict[int, dict[int, int]]


def comes_apart(bodies: frozenset[int], links: Links) -> bool:
    """Whether bodies can be parted to the last, by trying every group and every way: slow and plain."""
    if len(bodies) < 2:
        return True
    for count in range(1, len(bodies)):
        for group in combinations(sorted(bodies), count):
            rest = bodies - frozenset(group)
            ways = EVERY_WAY
            for one in group:
                for two in rest:
                    ways &= links[one].get(two, EVERY_WAY)
            if ways:
                return comes_apart(frozenset(group), links) and comes_apart(rest, links)
    return False


@st.composite
def linked(draw: st.DrawFn) -> Links:
    count = draw(st.integers(2, 5))
    links: Links = {body: {} for body in range(count)}
    for one, two in combinations(range(count), 2):
        if draw(st.booleans()):
            ways = draw(st.integers(0, EVERY_WAY)) & draw(st.integers(0, EVERY_WAY))
            links[one][two], links[two][one] = ways, opposite(ways)
    return links


@given(linked())
def test_knots_are_what_no_group_and_no_way_parts(links: Links) -> None:
    assert (knots(links, links) == []) == comes_apart(frozenset(links), links)


def test_pairs_that_part_only_as_pairs() -> None:
    # Two halves come apart sideways; each half then upwards. No body by itself can move at all.
    sideways, upwards = way_bit(0, False) | way_bit(0, True), way_bit(2, False) | way_bit(2, True)
    links = {0: {1: upwards, 2: sideways}, 1: {0: upwards, 3: sideways}, 2: {3: upwards, 0: sideways}}
    links[3] = {2: upwards, 1: sideways}
    assert knots(links, links) == []
    links[0][2], links[2][0] = 0, 0
    assert knots(links, links) == [[0, 2]]  # the other two come off upwards


def test_ways_turned_round() -> None:
    assert opposite(way_bit(0, True)) == way_bit(0, False)
    assert opposite(way_bit(2, False) | way_bit(1, True)) == way_bit(2, True) | way_bit(1, False)
    assert opposite(EVERY_WAY) == EVERY_WAY


FRAME = """
plan "Door" in inches
stock stile: actual 3/4 x 2 pine
stock ply: birch plywood 1/4, sheet 48 x 96
outline door: 18 across, 3/4 deep, 24 tall, on floor
part stile for each of left, right: stile, upright, facing front, as tall as door, on floor
    flush with each of door, flush with front of door
part rail for each of bottom, top: stile, across, on edge, between stile.left and stile.right
    housed 1 each end, flush with each of door, flush with front of door
part panel: ply, upright, facing front
    between stile.left and stile.right across, housed 3/8 each end
    between rail.bottom and rail.top up, housed 3/8 each end, centred deep on door
join rail.* to stile.*: {rails}
join panel to stile.*, rail.*: groove 1/2 deep
{steps}
"""


def held(text: str) -> list[tuple[tuple[str, ...], ...]]:
    review = review_of(text)
    joints = [joint for joint in review.setting.joints if joint.meets]
    hidden = [placed for placed in review.placed if placed.mouth is None]
    steps = steps_of_joints(review.plan.steps, joints)
    return [each.bodies for each in held_apart(review.setting, hidden, joints, steps)]


TENONS = "mortise and tenon 1 long 1/4 thick"


@pytest.mark.parametrize(
    ("steps", "stuck"),
    [
        ("", False),  # any order: a stile goes on last
        ('step "All": join stile.*, rail.*, panel', False),
        ('step "Frame": join stile.*, rail.*\nstep "Panel": join panel', True),
        (
            'step "Half": join stile.left, rail.*\nstep "Panel": join panel\nstep "Close": join stile.right',
            False,
        ),
        (
            'step "Panel first": join panel, stile.left, rail.bottom\nstep "Rest": join rail.top, stile.right',
            False,
        ),
    ],
)
def test_a_panel_in_its_frame(steps: str, stuck: bool) -> None:
    found = held(FRAME.format(rails=TENONS, steps=steps))
    assert bool(found) is stuck
    if stuck:
        assert ("panel",) in found[0]


def test_screwed_rails_come_off_again_only_before_they_are_on() -> None:
    # The rails are not let in, but once they are joined the panel is closed in all the same.
    steps = 'step "Frame": join stile.*, rail.*\nstep "Panel": join panel'
    assert held(FRAME.format(rails="dowels 3/8 x 1 1/2", steps=steps))


BETWEEN_POSTS = """
plan "Rail between posts" in inches
stock post: actual 2 x 2 pine
stock rail: actual 3/4 x 3 pine
outline frame: 30 across, 2 deep, 20 tall, on floor
part post for each of left, right: post, upright, as tall as frame, on floor, flush with each of frame
    flush with front of frame
part tie: rail, across, on edge, between post.left and post.right, bottom 2 above floor, centred deep on frame
part rail: rail, across, on edge, between post.left and post.right, flush with top of frame, {how}
join tie to post.*: screws #8 x 3, 2 per end, from outside
join rail to post.*: {joint}
{steps}
"""


@pytest.mark.parametrize(
    ("how", "joint", "stuck"),
    [
        ("housed 1 each end, centred deep on frame", "mortise and tenon 1 long", True),
        ("centred deep on frame", "dowels 3/8 x 1 1/2, 2 per end", True),
        ("centred deep on frame", "loose tenons 1/4 x 1 x 1 1/2, 1 per end", True),
        ("centred deep on frame", "screws #8 x 3, 2 per end, from outside", False),
        ("housed 1/2 each end, centred deep on frame", "dado 1/2 deep", False),  # it drops in from the top
    ],
)
def test_a_rail_that_comes_last(how: str, joint: str, stuck: bool) -> None:
    late = 'step "Posts": join tie\nstep "Rail": join rail'
    assert bool(held(BETWEEN_POSTS.format(how=how, joint=joint, steps=late))) is stuck
    assert not held(BETWEEN_POSTS.format(how=how, joint=joint, steps=""))
