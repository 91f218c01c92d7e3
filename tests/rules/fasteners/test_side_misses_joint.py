"""side-misses-joint: the sides that do not lead across, the words that say so, and the side that does."""

from __future__ import annotations

import pytest

from tests.rules.mending import assert_mends, with_edit
from tests.rules.sound_pieces import BENCH
from tests.support import findings_of, judgement_of, look_at, told

RULE = "side-misses-joint"


def lid(how: str = "screws #8 x 2, 2 per joint", more: str = "", unit: str = "inches") -> str:
    return f"""
plan "Lid" in {unit}
stock board: actual 3/4 in x 5 1/2 in pine
outline box: 20 in across, 5 1/2 in deep, 6 in tall, on floor
part side for each of left, right: board, upright, facing side, as tall as box, on floor, front at 0
    flush with each of box
part top: board, across, flat, on box, from left of box to right of box, front at 0
join top to side.*: {how}
{more}
"""


def test_screws_along_the_joint() -> None:
    text = lid("screws #8 x 2, 2 per joint, from left")
    assert told(text, RULE) == [
        "error top, side.left, side.right @ from left: The screws of top to side.left and top to side.right are "
        "driven from the left, but there the parts meet one above the other: driven that way they run along the "
        "joint and never cross it. → Drive them from below or above."
    ]
    assert assert_mends(text, RULE) == "from above"


@pytest.mark.parametrize(
    ("side", "flagged"),
    [
        ("above", False),
        ("below", False),
        ("inside", False),
        ("outside", False),
        ("left", True),
        ("right", True),
        ("front", True),
        ("back", True),
    ],
)
def test_every_side(side: str, flagged: bool) -> None:
    assert bool(findings_of(lid(f"screws #8 x 2, 2 per joint, from {side}"), RULE)) is flagged


def test_metric_screws_and_nails_alike() -> None:
    for how in ("screws 4 x 50, 2 per joint, from front", "nails 2 x 50, 2 per joint, from front"):
        (finding,) = findings_of(lid(how, unit="millimetres"), RULE)
        assert finding.parts == ("top", "side.left", "side.right")


def test_the_marked_words_are_not_those_of_a_comment_or_of_another_join() -> None:
    text = lid(
        "screws #8 x 2, 2 per joint  # not from left, they said\n    from left",
        more="# from left",
    )
    (finding,) = findings_of(text, RULE)
    mended = with_edit(text, finding)
    assert "# not from left, they said\n    from above" in mended
    assert findings_of(mended, RULE) == ()


def test_a_better_side_for_only_some_joints_gets_no_edit() -> None:
    # Two arms and a foot in one join: from the front only the arm in front is crossed.
    text = """
plan "Post" in inches
stock post: actual 1 1/2 x 1 1/2 pine
part post: post, upright, 20 tall, on floor, left at 0, front at 0
part arm: post, across, flat, 10 long, against right of post, front at 0, bottom at 8
part front-arm: post, across, flat, 10 long, left at 0, against front of post, bottom at 12
join arm, front-arm to post: screws #8 x 2 1/2, 2 per joint, from front
"""
    (finding,) = findings_of(text, RULE)
    assert finding.parts == ("arm", "post")
    assert finding.edit is None
    (said,) = told(text, RULE)
    assert said.endswith("→ Drive them from the left or the right in a join of its own.")


def test_no_side_is_offered_from_which_the_same_screws_would_not_do() -> None:
    # From above a 1 in screw would bite 1/4 in only.
    (finding,) = findings_of(lid("screws #8 x 1, 2 per joint, from left"), RULE)
    assert finding.edit is None


def test_pockets_bored_from_the_end() -> None:
    text = BENCH.replace("join stretcher to rail.*: pocket screws 2 1/2, 2 per end", "join stretcher to rail.*: "
        "pocket screws 2 1/2, 2 per end, from front")  # fmt: skip
    assert told(text, RULE) == [
        "error stretcher, rail.front, rail.back @ from front: The pockets of stretcher to rail.front and stretcher "
        "to rail.back can't be bored from the front: that is the way the screws run there, since the parts meet one "
        "behind the other. → Bore them from the left, the right, below or above."
    ]


def test_other_rules_leave_a_missed_joint_alone() -> None:
    text = lid("screws #8 x 6, 2 per joint, from left")
    judged = look_at(text).judgement
    assert judged is not None
    about_screws = {f.rule for f in judged.findings} & {"screw-too-short", "screw-breaks-through"}
    assert about_screws == set()


def test_a_waiver() -> None:
    text = lid(
        "screws #8 x 2, 2 per joint, from left",
        more='accept side-misses-joint on top because "driven at a slant by hand"',
    )
    judged = judgement_of(text, only=RULE)
    assert (judged.findings, len(judged.waived)) == ((), 1)
