"""Whether a tool gets at a fastener when its turn comes: the room by hand, and the order of work."""

from __future__ import annotations

import pytest

from reviewer.units import MM_PER_INCH
from reviewer.workshop.joining_order import Groups, never_undone, steps_of_joints
from reviewer.workshop.reaching import OutOfReach, Reach, out_of_reach, room_for
from tests.support import review_of

SLOT = """
plan "Slot" in inches
stock board: actual 3/4 x 5 1/2 pine
outline box: {wide} across, 5 1/2 deep, 20 tall, on floor
part side for each of left, right: board, upright, facing side, as tall as box, on floor
    flush with each of box, flush with front of box
part spacer: board, across, flat, between side.left and side.right, bottom 10 above floor
    flush with front of box
join spacer to side.*: {how}
{more}
"""


def found(wide: str, how: str, more: str = "") -> tuple[OutOfReach, ...]:
    return out_of_reach(review_of(SLOT.format(wide=wide, how=how, more=more)))


POCKETS = "pocket screws 1 1/4, 2 per end, 1 from ends, from below"


def test_room_by_hand() -> None:
    # Between the boards 4 in. The pocket's axis leaves the face 3/8 in over tan 15° = 1.4 in from the end, and
    # what is free along it is the rest over cos 15°, less what the handle's edge gains: 7/8 in times tan 15°.
    review = review_of(SLOT.format(wide="5 1/2", how=POCKETS, more=""))
    one = out_of_reach(review)[0]
    room = room_for(Reach(review.setting, review.limits), one)
    by_hand = (4 - 1.3995) / 0.96593
    assert room.parts == ("side.right",)
    assert room.tool.name == "screwdriver"
    assert room.free / MM_PER_INCH == pytest.approx(by_hand, abs=0.08)


@pytest.mark.parametrize(
    ("wide", "outcome"),
    [("5 1/2", "none"), ("8", "angle driver"), ("24", "free")],
)
def test_pockets_between_two_boards(wide: str, outcome: str) -> None:
    told = found(wide, POCKETS)
    assert {each.special.name if each.special else "none" for each in told} == (
        set() if outcome == "free" else {outcome}
    )
    # Either side can be joined first; then the other is in the way.
    assert len(told) == (0 if outcome == "free" else 2)


def test_screws_from_outside_are_free() -> None:
    assert found("5 1/2", "screws #8 x 2, 2 per end, from outside") == ()


def test_limits_of_the_shop_decide() -> None:
    # A shop with a tiny driver drives them.
    small = "limit screwdriver-handle: 1\nlimit screwdriver-shaft: 1/2"
    assert found("5 1/2", POCKETS, small) == ()


STACK = """
plan "Stack" in inches
stock board: actual 3/4 x 5 1/2 pine
part low: board, across, flat, 20 long, left at 0, front at 0, on floor
part middle: board, across, flat, 20 long, left at 0, front at 0, on low
part top: board, across, flat, 20 long, left at 0, front at 0, on middle
join middle to low: screws #8 x 1 1/4, 2 per joint, from above
join top to middle: screws #8 x 1 1/4, 2 per joint, from above
{steps}
"""


@pytest.mark.parametrize(
    ("steps", "stuck"),
    [
        ("", ()),  # the middle first: any order that works will do
        ('step "All": join low, middle, top', ()),
        ('step "Up": join low, middle\nstep "Top": join top', ()),
        ('step "Top": join top, middle\nstep "Down": join low', (("middle", "low"),)),
    ],
)
def test_the_order_of_work_counts(steps: str, stuck: tuple[tuple[str, str], ...]) -> None:
    told = out_of_reach(review_of(STACK.format(steps=steps)))
    assert tuple((each.placed.head_part, each.placed.point_part) for each in told) == stuck
    assert all(each.sooner for each in told)


BOLTED = """
plan "Bolted" in inches
stock post: actual 2 x 4 pine
part block: post, upright, facing front, 20 tall, left at 0, front at 0, on floor
part near: post, upright, facing front, 20 tall, left at 0, front at {near}, on floor
part far: post, upright, facing front, 20 tall, left at 0, front at {far}, on floor
part rear: post, upright, facing front, 20 tall, left at 0, front at {rear}, on floor
join near to far: bolts 3/8 x 4 1/2, 2 per joint, 2 from ends, from front
"""


@pytest.mark.parametrize(
    ("before", "behind", "parts"),
    [
        (5, 3, ()),
        (4, 3, ("block",)),  # the bolt is 4 1/2 in long and has to go in
        (5, 1, ("rear",)),  # the nut stands out 1/2 in, and a spanner takes 1 in from its end on
        (4, 1, ("block", "rear")),
    ],
)
def test_a_bolt_goes_in_over_its_length_and_a_spanner_at_both_ends(
    before: float, behind: float, parts: tuple[str, ...]
) -> None:
    text = BOLTED.format(near=2 + before, far=4 + before, rear=6 + before + behind)
    review = review_of(text)
    reach = Reach(review.setting, review.limits)
    assert [each.parts for each in reach.ways(review.placed[0])] == [parts]


def test_the_room_at_the_nut_of_a_bolt() -> None:
    text = BOLTED.format(near=7, far=9, rear=11.75)
    review = review_of(text)
    reach = Reach(review.setting, review.limits)
    bolt = next(placed for placed in review.placed if placed.kind == "bolts")
    told = OutOfReach(bolt, Holding(), None, None, sooner=False)
    # By hand: the bolt ends 1/2 in behind the far post, the next post stands 3/4 in behind it: 1/4 in is free.
    room = room_for(reach, told)
    assert room.parts == ("rear",)
    assert room.free / MM_PER_INCH == pytest.approx(0.25, abs=0.01)
    assert room.needs / MM_PER_INCH == pytest.approx(1.0)


class Holding(Groups):
    """Everything hangs together."""

    def __init__(self) -> None:
        super().__init__(())

    def of(self, part: str) -> str:
        return "one"


def test_groups_by_joints() -> None:
    review = review_of(STACK.format(steps=""))
    joints = list(review.setting.joints)
    groups = Groups(joints[:1])
    assert groups.of("low") == groups.of("middle") != groups.of("top")
    assert steps_of_joints((), joints) == [None, None]
    assert never_undone(joints, [None, None], {}) == {}


def test_what_can_not_be_undone_is_told_once_and_then_out_of_the_way() -> None:
    review = review_of(STACK.format(steps=""))
    joints = list(review.setting.joints)
    stuck = never_undone(
        joints, [0, 1], {1: lambda groups: False, 0: lambda groups: groups.of("top") == "top"}
    )
    assert list(stuck) == [1]
