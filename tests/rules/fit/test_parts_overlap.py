"""Parts that claim one space. Expected depths are sums of the plan's own sizes, done by hand."""

from __future__ import annotations

import pytest

from reviewer.findings import Severity
from tests.rules.everyday_pieces import EVERYDAY
from tests.rules.mending import mended
from tests.rules.sound_pieces import SOUND_PIECES
from tests.support import findings_of, judgement_of, told

RULE = "parts-overlap"

CASE = """
plan "Case" in inches
stock board: actual 3/4 x 11 1/4 red oak
outline case: 30 across, 11 1/4 deep, 36 tall, on floor
part side for each of left, right: board, upright, facing side, 36 tall, on floor
    front at 0, flush with each of case
"""
#: A shelf whose ends go 1/4 in into each side, as a dado asks.
HOUSED = (
    CASE
    + """part shelf: board, across, flat, between side.left and side.right, housed 1/4 each end
    front at 0, bottom 12 above floor
"""
)


def test_a_shelf_as_wide_as_the_case_runs_into_both_sides() -> None:
    text = (
        CASE + "part shelf: board, across, flat, from left of case to right of case, front at 0, on floor\n"
    )
    assert told(text, RULE) == [
        "error shelf, side.left, side.right @ from left of case to right of case: "
        "shelf runs 3/4 in into side.left and side.right side to side, and no joint makes room for that. → "
        "Take 3/4 in off shelf at side.left and side.right, or join them with what makes room, such as a dado "
        "or a half lap."
    ]


def test_a_board_across_another_is_told_the_least_shift() -> None:
    # Both lie on the floor, 3/4 thick: up is the shortest way out.
    text = CASE + "part plank: board, across, flat, 12 long, left at 10, front at 0, on floor\n"
    text += "part other: board, deep, flat, 20 long, left at 12, front at 0, bottom 1/2 above floor\n"
    # other from 1/2 to 1 1/4, plank from 0 to 3/4: 1/4 shared. The plank is the smaller one and moves down.
    assert told(text, RULE) == [
        "error plank, other @ on floor: "
        "plank runs 1/4 in into other up and down, and no joint makes room for that. → "
        "Move plank 1/4 in down, or join them with what makes room, such as a dado or a half lap."
    ]


def test_a_shelf_between_four_legs_can_be_notched_for_them() -> None:
    # The shelf is as large as the frame, so each leg stands 3 1/2 by 1 1/2 in one of its corners.
    text = """
    plan "Stand" in inches
    stock stud: 2x4 spruce-pine-fir
    stock wide: actual 3/4 x 12 pine
    outline frame: 30 across, 12 deep, 16 tall, on floor
    part leg: stud, upright, facing front, as tall as frame, in each corner of frame
    part shelf: wide, across, flat, from left of frame to right of frame, flush with front of frame
        bottom 6 above floor
    """
    legs = "leg.front-left, leg.front-right, leg.back-left and leg.back-right"
    assert told(text, RULE) == [
        "error leg.front-left, leg.front-right, leg.back-left, leg.back-right, shelf @ in each corner of frame: "
        f"{legs} run 1 1/2 in into shelf front to back, and no joint makes room for that. → "
        "Set them 1 1/2 in apart front to back, join them with what makes room, such as a dado or a half lap, "
        f"or notch shelf for {legs} with a clause for each, such as: notch for leg.front-left"
    ]
    clauses = [f"notch for leg.{end}-{side}" for end in ("front", "back") for side in ("left", "right")]
    assert told(text.rstrip() + f"\n        {', '.join(clauses)}\n", RULE) == []
    assert told(text.rstrip() + f"\n        {', '.join(clauses[:3])}\n", RULE) != []


POST = """
plan "Gate post" in millimetres
stock post: actual 80 x 80 pine
stock rail: actual 20 x 100 pine
part post: post, upright, 700 tall, on floor, left at 200, front at 0
part rail: rail, across, on edge, 600 long, left at 0, front at {front}, bottom at 400
"""


@pytest.mark.parametrize(("front", "offered"), [(0, True), (20, False), (60, True), (70, True)])
def test_a_rail_let_into_the_face_of_a_post(front: int, offered: bool) -> None:
    # Flush with a face it is a notch, open to that side; in the middle of the post it is a mortise.
    (text,) = told(POST.format(front=front), RULE)
    assert text.endswith("or notch post for rail with the clause: notch for rail") is offered


def test_a_notch_takes_no_more_than_half() -> None:
    # A post of 80: a rail 40 thick takes half of it, one of 41 more.
    half = POST.replace("actual 20 x 100", "actual 40 x 100").format(front=0)
    assert "notch post for rail" in told(half, RULE)[0]
    more = POST.replace("actual 20 x 100", "actual 41 x 100").format(front=0)
    assert "notch" not in told(more, RULE)[0]


def test_copies_are_told_once() -> None:
    text = CASE + (
        "part shelf: board, across, flat, from left of case to right of case, front at 0\n"
        "    3 copies spread evenly up from bottom of case to top of case\n"
    )
    found = findings_of(text, RULE)
    assert len(found) == 1
    assert found[0].parts == ("shelf.1", "shelf.2", "shelf.3", "side.left", "side.right")


@pytest.mark.parametrize(
    "joint",
    ["dado 1/4 deep", "dado", "groove 3/8 deep", "rabbet 1/4 deep", "mortise and tenon 1/4 long"],
)
def test_a_housing_deep_enough_makes_room(joint: str) -> None:
    assert told(HOUSED + f"join shelf to side.*: {joint}, glue pva\n", RULE) == []


def test_a_housing_too_shallow_is_told_by_how_much() -> None:
    text = HOUSED + "join shelf to side.*: dado 3/16 deep, glue pva\n"
    assert told(text, RULE) == [
        "error shelf, side.left, side.right @ dado 3/16 deep: "
        "shelf goes 1/4 in into side.left and side.right side to side, but the dado is 3/16 in deep: "
        "1/16 in too shallow. → "
        "Make the dado 1/4 in deep, or let shelf go in 1/16 in less."
    ]
    assert told(mended(text, RULE), RULE) == []


def test_a_housing_of_no_stated_depth_makes_room_up_to_half_of_the_wood() -> None:
    # Half of 3/4 is 3/8; the near miss is just as deep, the fault a sixteenth deeper.
    at_half = HOUSED.replace("housed 1/4", "housed 3/8") + "join shelf to side.*: dado, glue pva\n"
    deeper = HOUSED.replace("housed 1/4", "housed 7/16") + "join shelf to side.*: dado, glue pva\n"
    assert told(at_half, RULE) == []
    assert told(deeper, RULE) == [
        "error shelf, side.left, side.right @ dado: "
        "shelf goes 7/16 in into side.left and side.right side to side, but the dado has no stated depth, "
        "and the usual half of the wood is 3/8 in: 1/16 in too shallow. → Let shelf go in 1/16 in less."
    ]
    # Deeper than half of the wood is no remedy, so no edit is offered.
    assert findings_of(deeper, RULE)[0].edit is None


def test_a_long_tenon_is_measured_along_the_rail() -> None:
    """A 2 in tenon of a rail 3/4 thick: the shared space is thinnest across the rail, not along it."""
    frame = """
    plan "Frame" in inches
    stock post: actual 3 x 3 red oak
    stock rail: actual 3/4 x 4 red oak
    outline frame: 40 across, 3 deep, 30 tall, on floor
    part post for each of left, right: post, upright, 30 tall, on floor, front at 0, flush with each of frame
    part rail: rail, across, on edge, between post.left and post.right, housed 2 each end
        centred deep on frame, flush with top of frame
    join rail to post.*: mortise and tenon {long} long, glue pva
    """
    assert told(frame.format(long="2"), RULE) == []
    assert told(frame.format(long="1 3/4"), RULE) == [
        "error rail, post.left, post.right @ mortise and tenon 1 3/4 long: "
        "rail goes 2 in into post.left and post.right side to side, but the mortise and tenon is 1 3/4 in long: "
        "1/4 in too shallow. → Let rail go in 1/4 in less."
    ]


CROSS = """
plan "Cross" in millimetres
stock batten: actual 20 x 60 pine
part lath: batten, across, flat, 600 long, left at 0, front at 270, on floor
part strip: batten, deep, flat, 600 long, left at 270, front at 0, on floor
"""


def test_a_half_lap_makes_room_for_a_crossing() -> None:
    assert told(CROSS + "join lath to strip: half lap, glue pva\n", RULE) == []
    assert told(CROSS, RULE) == [
        "error strip, lath @ on floor: "
        "strip runs 20 mm into lath up and down, and no joint makes room for that. → "
        "Move strip 20 mm down, or join them with what makes room, such as a dado or a half lap."
    ]


def test_a_mitre_makes_room_in_a_corner_only() -> None:
    corner = CROSS.replace("left at 270, front at 0", "left at 0, front at 270")
    assert told(corner + "join lath to strip: mitre, glue pva\n", RULE) == []
    assert told(CROSS + "join lath to strip: mitre, glue pva\n", RULE) == [
        "error lath, strip @ mitre: "
        "lath goes 20 mm into strip up and down, but a mitre makes room only where both parts end. → "
        "Let both end in the corner, or use a joint for the middle of a part, such as a half lap."
    ]


@pytest.mark.parametrize("joint", ["dovetails", "box joint", "splined mitre", "bridle"])
def test_other_joints_of_a_corner(joint: str) -> None:
    corner = CROSS.replace("left at 270, front at 0", "left at 0, front at 270")
    assert told(corner + f"join lath to strip: {joint}, glue pva\n", RULE) == []
    a, make, where, do = {
        "bridle": ("a ", "makes", "at the end of one of the parts", "Let one of them end there"),
        "dovetails": ("", "make", "where both parts end", "Let both end in the corner"),
    }.get(joint, ("a ", "makes", "where both parts end", "Let both end in the corner"))
    assert told(CROSS + f"join lath to strip: {joint}, glue pva\n", RULE) == [
        f"error lath, strip @ {joint}: "
        f"lath goes 20 mm into strip up and down, but {a}{joint} {make} room only {where}. → "
        f"{do}, or use a joint for the middle of a part, such as a half lap."
    ]


def test_a_tongue_deeper_than_its_board_is_thick() -> None:
    text = """
    plan "Boarding" in millimetres
    stock board: actual 20 x 100 pine
    part one: board, upright, facing front, 500 tall, on floor, left at 0, front at 0
    part two: board, upright, facing front, 500 tall, on floor, left at {left}, front at 0
    join one to two: tongue and groove
    """
    assert told(text.format(left=92), RULE) == []
    assert told(text.format(left=75), RULE) == [
        "error one, two @ tongue and groove: "
        "one goes 25 mm into two side to side, but a tongue and groove makes room only along edges that meet, "
        "as deep as the thinner part is thick. → Let them meet edge to edge, or let one go in 5 mm less."
    ]


@pytest.mark.parametrize(
    ("shared", "weight"),
    [("0.04", None), ("0.3", Severity.WARNING), ("0.5", Severity.ERROR)],
)
def test_a_hair_is_no_overlap_and_a_shaving_only_a_warning(shared: str, weight: Severity | None) -> None:
    # The tolerance is 0.05 mm, the limit cut-difference 1/64 in = 0.397 mm.
    text = f"""
    plan "Stack" in millimetres
    stock batten: actual 20 x 60 pine
    part lower: batten, across, flat, 600 long, left at 0, front at 0, on floor
    part upper: batten, across, flat, 500 long, left at 0, front at 0, bottom 20 - {shared} above floor
    """
    assert [finding.weight for finding in findings_of(text, RULE)] == ([] if weight is None else [weight])


def test_touching_faces_do_not_overlap() -> None:
    text = CASE + "part shelf: board, across, flat, between side.left and side.right, front at 0, on floor\n"
    assert told(text, RULE) == []


def test_it_can_be_accepted() -> None:
    text = CROSS + 'accept parts-overlap on lath because "they are cut on the spot"\n'
    judged = judgement_of(text, only=RULE)
    assert judged.findings == ()
    assert [finding.waived_because for finding in judged.waived] == ["they are cut on the spot"]


def test_renaming_changes_only_names() -> None:
    def renamed(text: str) -> str:
        return text.replace("lath", "zig").replace("strip", "aft")

    assert told(renamed(CROSS), RULE) == [renamed(line) for line in told(CROSS, RULE)]


def test_a_piece_far_too_crowded_says_so(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("reviewer.setting_out.contacts.MAX_PAIRS", 3)
    text = CASE + (
        "part shelf: board, across, flat, from left of case to right of case, front at 0\n"
        "    3 copies spread evenly up from bottom of case to top of case\n"
    )
    assert told(text, RULE)[0] == (
        'error - @ plan "Case" in inches: '
        "So many parts touch or share space that the search stopped after 6 meetings: "
        "the rest of the piece is not looked at. → Mend the overlaps told here and review again, or split the plan."
    )


@pytest.mark.parametrize("name", [*SOUND_PIECES, *EVERYDAY])
def test_sound_pieces_are_quiet(name: str) -> None:
    assert told({**SOUND_PIECES, **EVERYDAY}[name], RULE) == []


def test_of_two_joints_the_deeper_counts() -> None:
    shallow, deep = "join shelf to side.*: dado 1/8 deep\n", "join shelf to side.*: dado 1/4 deep\n"
    assert told(HOUSED + shallow + deep, RULE) == []
    assert told(HOUSED + deep + shallow, RULE) == []


def test_a_leaning_leg_is_told_how_far_it_really_is_in_the_way() -> None:
    """By hand: at its top, 300 up, the leg's high face is 20 / cos 8° + 300 tan 8° = 62.36 across; the post begins at 60.

    Its bounds would say so too; but lower down, 150 up, the face is only at 41.28, and a post there 40 across is 1.28 in.
    """
    text = """
        plan "Leg and post" in millimetres
        stock board: actual 20 x 100 pine
        part leg: board, upright, facing side, 300 tall, left at 0, front at 0, on floor
            tilted 8 degrees towards right
        part post: board, upright, facing side, {tall} tall, left at {left}, front at 0, on floor
    """
    top, middle = (
        told(text.format(tall=tall, left=left), "parts-overlap") for tall, left in ((300, 60), (150, 40))
    )
    assert "leg runs 2.36 mm into post side to side" in top[0] or "post runs 2.36 mm into leg" in top[0]
    assert "1.28 mm into" in middle[0]
