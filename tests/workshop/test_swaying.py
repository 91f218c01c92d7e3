"""How far pieces sway: by hand for a portal of boards, and what must hold for any piece."""

from __future__ import annotations

import math
import re

import pytest

from reviewer.mechanics.frame import Loose
from reviewer.model.plan import Axis
from reviewer.reference.joint_stiffness import End, joint_stiffness
from reviewer.review import Review
from reviewer.workshop import swaying, swaying_frame, swaying_joints
from reviewer.workshop.swaying import NotJudged, Swaying
from reviewer.workshop.swaying_frame import Budget, framed, mechanism, sways
from reviewer.workshop.swaying_joints import Tie, along_parts
from reviewer.workshop.swaying_quick import clamped, panelled, plainly_stiff, storeys
from reviewer.workshop.swaying_remedies import _braces, _panels, _stretchers
from reviewer.workshop.swaying_structure import Structure, structure
from tests.rules.everyday_pieces import EVERYDAY
from tests.rules.sound_pieces import SOUND_PIECES
from tests.support import review_of

PUSH = 100.0
OPEN_SHELF = """
plan "Open shelf" in inches
stock board: 1x8 pine, 8 ft
outline case: 30 across, 7 1/4 deep, 60 tall, on floor
part side for each of left, right: board, upright, facing side, as tall as case
    on floor, flush with each of case, flush with front of case
part shelf: board, across, flat, between side.left and side.right, flush with front of case
    %s copies spread evenly up from bottom of case to top of case
join shelf.* to side.*: %s
"""
SCREWS = "screws #8 x 2, 2 per joint, from outside"
STAND = """
plan "Bolted stand" in millimetres
stock leg: actual 30 x 60 pine, 2400
outline frame: 600 across, 400 deep, 700 tall, on floor
part leg: leg, upright, facing front, as tall as frame, in each corner of frame
part rail.front: leg, across, on edge, from left of leg.front-left to right of leg.front-right
    against back of leg.front-left, top 50 below top of frame
part rail.back: leg, across, on edge, from left of leg.back-left to right of leg.back-right
    against front of leg.back-left, top 50 below top of frame
part end for each of left, right: leg, deep, flat, between leg.front-each and leg.back-each
    flush with each of frame, flush with top of frame
join rail.* to leg.*: bolts 8 x 70, %s per joint
join end.* to leg.*: screws 5 x 80, 2 per joint
"""
ENDS: tuple[End, ...] = ("stiff", "soft")
PIECES = {f"sound {name}": text for name, text in SOUND_PIECES.items()}
PIECES |= {f"everyday {name}": text for name, text in EVERYDAY.items()}
PIECES |= {"open shelf": OPEN_SHELF % (4, SCREWS), "two bolts": STAND % 2, "one bolt": STAND % 1}


def standing(text: str, end: End = "stiff", *, glued: bool = False) -> tuple[Review, Structure]:
    review = review_of(text)
    (piece,) = review.pieces
    found = structure(review, piece, end, glued=glued)
    assert found is not None
    return review, found


def swayed(found: Structure, axis: int = Axis.ACROSS) -> float:
    (sway,) = sways(found, [axis], PUSH, Budget(math.inf))
    assert sway.moved is not None
    assert sway.moved > 0
    return sway.moved


def structures() -> dict[str, Structure]:
    """Every piece of the tests that stands on the floor, with stiff joints and with soft ones."""
    found = {}
    for name, text in PIECES.items():
        review = review_of(text)
        for piece in review.pieces:
            for end in ENDS:
                whole = structure(review, piece, end) if piece.feet else None
                if whole is not None:
                    found[f"{name}, {end}"] = whole
    assert len(found) > 20
    return found


STRUCTURES = structures()


def test_open_shelf_by_hand() -> None:
    """The sum of the storeys, from the plan's own sizes; the frame comes out a little stiffer."""
    review, found = standing(OPEN_SHELF % (2, SCREWS))
    young = review.material_of("side.left").modulus_of_elasticity
    thick, wide, tall, long = 0.75 * 25.4, 7.25 * 25.4, 60 * 25.4, 28.5 * 25.4
    inertia = wide * thick**3 / 12
    # Two screws into end grain at the stiff end, 4,500 N/mm each, on a patch 3/4 in high: levers of a third.
    spring = 2 * 4500.0 * thick**2 / 3
    # A shelf at the floor and one at the top: half of the push in each side, S-shaped between the shelves.
    low, high = thick / 2, tall - thick / 2
    moments = (PUSH / 2 * (low + (high - low) / 2), PUSH / 2 * ((high - low) / 2 + tall - high))
    joints = 2 * sum(moment**2 / spring for moment in moments)
    shelves = sum(moment**2 * long / (3 * young * inertia) for moment in moments)
    ends = low**3 / 3 + (high - low) ** 3 / 12 + (tall - high) ** 3 / 3
    sides = 2 * (PUSH / 2) ** 2 * ends / (young * inertia)
    by_hand = (joints + shelves + sides) / PUSH
    assert storeys(found, Axis.ACROSS, PUSH) == pytest.approx(by_hand, rel=1e-3)
    assert 0.5 * by_hand < swayed(found) <= by_hand


def test_frame_of_legs_by_hand() -> None:
    """A stool on four legs: their bending, that of its rails, and glued corners with two dowels each."""
    review, found = standing(EVERYDAY["stool"])
    young = review.material_of("leg.front-left").modulus_of_elasticity
    leg, rail = 45**4 / 12, 20 * 70**3 / 12
    at, span = 400 - 35.0, 360 - 90.0
    # Two portals share the push; the rails lie 35 mm below the top, to which the legs go on.
    bending = PUSH / 2 * (at**3 + 35**3) / (6 * young * leg)
    turning = PUSH / 2 * 400 * 400 * span / (12 * young * rail)
    spring = 60.0 * 20 * 70**3 / 12 + 2 * 8_000 * 70**2 / 3
    corners = PUSH / 2 * 400 * 400 / (2 * spring)
    assert swayed(found) == pytest.approx(bending + turning + corners, rel=0.15)


@pytest.mark.parametrize("name", STRUCTURES)
@pytest.mark.parametrize("axis", [Axis.ACROSS, Axis.DEEP])
def test_the_quick_sums_keep_their_margin(name: str, axis: Axis) -> None:
    found = STRUCTURES[name]
    moved = swayed(found, axis)
    # The sums know no sliding in the joints and no turning on plan: the margin is for that.
    assert storeys(found, axis, PUSH) >= moved * (0.8 if found.end == "stiff" else 0.6)
    assert clamped(found, axis, PUSH) >= moved * 0.8
    if panelled(found, axis):
        assert moved <= found.height / (1000 if found.end == "stiff" else 400)
    for allowed in (0.01, 0.1, 1.0, 10.0):
        if plainly_stiff(found, axis, PUSH, allowed) and not panelled(found, axis):
            assert moved <= allowed


@pytest.mark.parametrize("name", STRUCTURES)
def test_stiffer_joints_never_sway_more(name: str) -> None:
    found = STRUCTURES[name]
    stiffer = found._replace(
        ties=tuple(
            tie._replace(
                shift=tuple(3 * each for each in tie.shift), turn=tuple(3 * each for each in tie.turn)
            )
            for tie in found.ties
        )
    )
    for axis in (Axis.ACROSS, Axis.DEEP):
        assert swayed(stiffer, axis) <= swayed(found, axis) * (1 + 1e-9)


@pytest.mark.parametrize("name", STRUCTURES)
def test_a_joint_less_never_sways_less(name: str) -> None:
    """With one joint all but gone, every board and place kept, the piece is no stiffer."""
    found = STRUCTURES[name]
    for number in range(0, len(found.ties), 5):
        ties = list(found.ties)
        ties[number] = ties[number]._replace(shift=(0.0,) * 3, turn=(0.0,) * 3)
        for axis in (Axis.ACROSS, Axis.DEEP):
            assert swayed(found._replace(ties=tuple(ties)), axis) >= swayed(found, axis) * (1 - 1e-9)


def test_glue_only_helps() -> None:
    for text in (OPEN_SHELF % (4, SCREWS), STAND % 2):
        assert swayed(standing(text, glued=True)[1]) < swayed(standing(text)[1])


@pytest.mark.parametrize(("bolts", "folds"), [(1, True), (2, False)])
def test_one_fastener_a_joint_folds(bolts: int, folds: bool) -> None:
    _, found = standing(STAND % bolts)
    assert mechanism(found, Axis.ACROSS, Budget(math.inf)) is folds
    assert not mechanism(found, Axis.DEEP, Budget(math.inf))  # its ends are screwed twice


@pytest.mark.parametrize("text", [OPEN_SHELF % (4, SCREWS), STAND % 1])
def test_every_change_tried_helps_and_keeps_the_order(text: str) -> None:
    (found,) = review_of(text).swaying
    assert isinstance(found, Swaying)
    assert [each.moved for each in found.remedies] == sorted(each.moved for each in found.remedies)
    assert len(found.remedies) >= 3
    assert all(each.moved < (found.sway.moved or math.inf) for each in found.remedies)


def test_a_wall_that_holds_the_top_stills_it() -> None:
    loose = OPEN_SHELF % (4, SCREWS)
    assert len(review_of(loose).swaying) == 1
    room = "room: indoors, wall behind\n"
    strap = room + "restrain case to wall: strap, screws #10 x 2 1/2 into stud, 59 up"
    bracket = strap.replace("strap", "bracket")
    assert len(review_of(loose + strap).swaying) == 1  # a strap lets it go sideways
    assert review_of(loose + bracket).swaying == []


def test_a_row_of_alike_pieces_is_worked_out_once(monkeypatch: pytest.MonkeyPatch) -> None:
    one = OPEN_SHELF.split("\n", 3)
    lines = [*one[:3]]
    for number in range(3):
        rest = re.sub(r"(?<!facing )\b(case|side|shelf)\b", rf"\g<1>{number}", one[3] % (4, SCREWS))
        lines.append(rest.replace("on floor\npart", f"on floor, left at {40 * number}\npart", 1))
    runs = []
    whole = swaying_frame.framed
    monkeypatch.setattr(
        swaying_frame, "framed", lambda *given, **more: runs.append(1) or whole(*given, **more)
    )
    first = review_of(OPEN_SHELF % (4, SCREWS)).swaying
    alone = len(runs)
    found = review_of("\n".join(lines)).swaying
    assert len(runs) == 2 * alone
    assert [each.sway.moved for each in found if isinstance(each, Swaying)] == pytest.approx(
        [each.sway.moved for each in first if isinstance(each, Swaying)] * 3
    )


def test_very_many_parts_are_not_judged(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(swaying, "MOST_PARTS", 5)
    (found,) = review_of(OPEN_SHELF % (4, SCREWS)).swaying
    assert isinstance(found, NotJudged)
    assert found.parts == 6


@pytest.mark.parametrize("work", [0, 100])
def test_past_the_work_for_all_frames_pieces_are_not_judged(
    work: int, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(swaying, "_MOST_WORK", work)
    (found,) = review_of(OPEN_SHELF % (4, SCREWS)).swaying
    assert isinstance(found, NotJudged)


def test_a_part_that_turns_by_itself_does_not_hide_a_fold() -> None:
    turning = """
part arm: leg, across, on edge, 300 long, against front of leg.front-left, bottom 300 above floor
    left 0 right of left of frame
part hand: leg, upright, facing front, 60 long, against front of arm, bottom 300 above floor
    right 0 left of right of arm
join arm to leg.front-left: bolts 8 x 70, 1 per joint
join hand to arm: bolts 8 x 70, 2 per joint
"""
    _, found = standing(STAND % 1 + turning)
    assert mechanism(found, Axis.ACROSS, Budget(math.inf))
    _, found = standing(STAND % 2 + turning)
    assert not mechanism(found, Axis.ACROSS, Budget(math.inf))


def test_a_piece_that_its_joins_do_not_make_one_is_left_alone() -> None:
    text = (OPEN_SHELF % (4, SCREWS)).replace("to side.*", "to side.left")
    assert review_of(text).swaying == []


def test_a_plan_without_joins_is_left_alone() -> None:
    assert review_of((OPEN_SHELF % (4, SCREWS)).split("\njoin")[0]).swaying == []


def test_a_long_joint_keeps_its_stiffness_in_parts() -> None:
    tie = Tie("a", "b", 0, (0.0, 0.0, 0.0), (0.0, 20.0, 900.0), (9.0, 6.0, 3.0), (27.0, 27.0, 3.0), True)
    parts = along_parts(tie, [2])
    assert len(parts) == 3
    for axis in range(3):
        assert sum(part.shift[axis] for part in parts) == pytest.approx(tie.shift[axis])
    assert [part.middle[2] for part in parts] == [150.0, 450.0, 750.0]
    assert along_parts(tie, [1]) == [tie]


def test_stiffness_of_screws_by_hand() -> None:
    # Two screws on a patch of 60 by 30 mm: 6,000 N/mm along and 2,500 across, each.
    tie = swaying_joints.of_screws(("a", "b"), 0, ((0.0, 0.0, 0.0), (0.0, 60.0, 30.0)), 2)
    assert tie.shift == (12_000.0, 5_000.0, 5_000.0)
    assert tie.turn[1] == pytest.approx(12_000 * 30**2 / 3)
    assert tie.turn[2] == pytest.approx(12_000 * 60**2 / 3)
    assert tie.turn[0] == pytest.approx(5_000 * (60**2 + 30**2) / 6)
    assert not tie.turns
    alone = swaying_joints.of_screws(("a", "b"), 0, ((0.0, 0.0, 0.0), (0.0, 60.0, 30.0)), 1)
    assert (alone.turns, alone.turn[0]) == (True, 0.0)


def test_every_range_has_its_ends_in_order() -> None:
    for row in joint_stiffness().values():
        assert row.along("soft") <= row.along("stiff"), row
        assert row.across("soft") <= row.across("stiff"), row
        assert "own estimate" in row.status


@pytest.mark.parametrize("name", [name.removesuffix(", soft") for name in STRUCTURES if "soft" in name])
def test_soft_joints_never_sway_less(name: str) -> None:
    for axis in (Axis.ACROSS, Axis.DEEP):
        assert swayed(STRUCTURES[f"{name}, soft"], axis) >= swayed(STRUCTURES[f"{name}, stiff"], axis)


@pytest.mark.parametrize("name", STRUCTURES)
def test_more_never_sways_more(name: str) -> None:
    """A panel, a stretcher and a brace, made as the remedies make them; and a stiffer species."""
    found = STRUCTURES[name]
    stiffer = found._replace(
        rods={
            rod_name: rod._replace(young=rod.young * 1.3, shear=rod.shear * 1.3)
            for rod_name, rod in found.rods.items()
        }
    )
    for axis in (Axis.ACROSS, Axis.DEEP):
        before = swayed(found, axis)
        assert swayed(stiffer, axis) <= before * (1 + 1e-9)
        for change in (_panels, _stretchers, _braces):
            made = change(found, axis)
            if made is None:
                continue
            more = found.with_more(*made)
            # The same nodes bear the push, so that what is added is all that differs.
            assert worked(more, found, axis) <= worked(found, found, axis) * (1 + 1e-6)


def worked(found: Structure, before: Structure, axis: int) -> float:
    """What a push shared by the tops of the uprights does: none of what was added bears any of it."""
    frame, _, _ = framed(found)
    heads = {name: rod.high[2] for name, rod in before.rods.items()}
    highest = max(heads, key=lambda name: (heads[name], name))
    target = before.rods[highest].middle
    node = min(range(len(frame.places)), key=lambda each: (math.dist(frame.places[each], target), each))
    load = [0.0] * 6
    load[axis] = PUSH
    a, b, c, d, e, f = load
    moved = frame.solve({node: (a, b, c, d, e, f)})
    assert not isinstance(moved, Loose)
    return moved[node][axis]
