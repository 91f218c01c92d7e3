"""The two ends of a wall strap: its line against vectors in space, and what its screws hold, by hand."""

from __future__ import annotations

import math

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from reviewer.reference.gauges import gauge
from reviewer.reference.limits import default_limits
from reviewer.units import NEWTON_PER_POUND
from reviewer.workshop.restraining import Restrained, Tied, Trial, restrained, restrained_piece
from reviewer.workshop.strap_ends import pulled_and_sheared, sloping_lever, strap_line
from reviewer.workshop.strap_remedies import better_at_piece, held_level, piece_screw_words
from reviewer.workshop.stud_screws import stud_hold
from tests.rules.safety.test_wall_restraints import case
from tests.support import review_of

ENDS = "strap, screws #10 x 2 1/2 into stud, {more}, 56 up, 2 of them"


def tied_of(plan: str) -> tuple[Restrained, Tied]:
    (found,) = restrained(review_of(plan))
    (tied,) = found.tied
    return found, tied


def pounds(newton: float) -> float:
    return newton / NEWTON_PER_POUND


UP, WALL, GAP = st.floats(100, 2500), st.floats(10, 2600), st.floats(0, 300)


def moment_of(up: float, arm: float, end: tuple[float, float]) -> float:
    """The moment about the edge of a pull of 1 N from (arm, up) to an end on the wall: |r × F|, by vectors."""
    start = (arm, up)
    run = (end[0] - start[0], end[1] - start[1])
    size = math.hypot(*run)
    force = (run[0] / size, run[1] / size)
    # Towards the wall (x) at a height holds the piece back; upwards (z) behind the edge turns it over.
    return start[1] * force[0] - start[0] * force[1]


@given(up=UP, wall=WALL, gap=GAP, arm=st.floats(50, 800))
def test_the_lever_is_the_moment_of_a_pull_of_one_newton(
    up: float, wall: float, gap: float, arm: float
) -> None:
    assume(math.hypot(gap, up - wall) > 1.0 and abs(up - wall) > 0.5)
    line = strap_line(up, wall, gap)
    assume(line.slope != 0)
    assert sloping_lever(up, arm, line.slope) == pytest.approx(
        max(0.0, moment_of(up, arm, (arm + gap, wall))), abs=0.5
    )


@given(up=UP, wall=WALL, gap=GAP, depth=st.floats(100, 800), share=st.floats(0, 1))
def test_the_lever_of_a_strap_on_a_top(
    up: float, wall: float, gap: float, depth: float, share: float
) -> None:
    before = depth * share
    assume(abs(up - wall) > 0.5)
    line = strap_line(up, wall, gap, before)
    assume(line.slope != 0)
    # A tight strap pulls from the last place where it touches the piece.
    start = depth if wall < up else depth - before
    lever = sloping_lever(line.up, depth - line.before, line.slope)
    assert lever == pytest.approx(max(0.0, moment_of(up, start, (depth + gap, wall))), abs=0.5)


@given(up=UP, drop=st.floats(0, 400), gap=GAP, arm=st.floats(50, 800))
def test_a_falling_strap_is_what_equation_14_says_and_never_less_than_the_depth_allows(
    up: float, drop: float, gap: float, arm: float
) -> None:
    line = strap_line(up, up - drop, gap)
    slope = math.radians(line.slope)
    lever = sloping_lever(up, arm, line.slope)
    assert lever == pytest.approx(up * math.cos(slope) + arm * math.sin(slope))
    assert min(up, arm) - 1e-6 <= lever <= math.hypot(up, arm) + 1e-6
    # Rising as steeply never holds better.
    assert sloping_lever(up, arm, -line.slope) <= lever + 1e-6


@given(pull=st.floats(1, 2000), shear=st.floats(1, 2000), angle=st.floats(0, 90))
def test_pulled_and_sheared_at_once_a_screw_holds_no_more_than_either_allows(
    pull: float, shear: float, angle: float
) -> None:
    both = pulled_and_sheared(pull, shear, angle)
    assert both * math.sin(math.radians(angle)) <= pull * (1 + 1e-6)
    assert both * math.cos(math.radians(angle)) <= shear * (1 + 1e-6)
    assert both >= min(pull, shear) * (1 - 1e-6)


@given(angle=st.floats(0, 90), steeper=st.floats(0, 90))
def test_a_screw_in_a_stud_holds_less_the_more_the_strap_slants(angle: float, steeper: float) -> None:
    angle, steeper = sorted((angle, steeper))
    screw = gauge("#10")
    assert screw is not None
    holds = [stud_hold(screw, 60, 0, default_limits(), each).pull for each in (angle, steeper)]
    assert holds[0] <= holds[1] + 1e-9


def test_a_level_strap_is_as_before() -> None:
    plain = tied_of(case(ENDS.format(more="2 of them")))
    said = tied_of(case(ENDS.format(more="56 up on wall")))
    assert said[1].lever == plain[1].lever == pytest.approx(56 * 25.4)
    assert said[0].pull == plain[0].pull
    assert said[1].hold == plain[1].hold
    assert said[1].hold is not None
    assert said[1].hold.shear is None


@pytest.mark.parametrize(
    ("what", "through"),
    [
        # The case has a 1/4 in plywood back, 0.2 in thick, behind its sides: the strap lies on that.
        ("side.left", 0.2),
        ("case", 0.2),
    ],
)
def test_screws_at_the_piece_by_hand(what: str, through: float) -> None:
    # NDS 12.2-2 with the NDS gravity of red oak, 0.67: 2850 · 0.67² · 0.164 lb for each inch of thread.
    _, tied = tied_of(case(ENDS.format(more="screws #8 x 3/4 into piece"), what=what))
    end = tied.at_piece
    assert end is not None
    assert (end.surface, end.grained, end.certain) == ("edge", True, False)
    thread = min(0.75 - 1.5 / 25.4 - through, 4 * 0.164)
    assert end.thread / 25.4 == pytest.approx(thread, abs=0.02)
    assert pounds(end.holds) == pytest.approx(2850 * 0.67**2 * 0.164 * end.thread / 25.4, rel=1e-3)
    twice = tied_of(case(ENDS.format(more="2 screws #8 x 3/4 into piece"), what=what))[1].at_piece
    assert twice is not None
    assert twice.holds == pytest.approx(2 * end.holds)


def test_on_the_top_screws_are_sheared_and_end_grain_is_not_pulled() -> None:
    words = "strap, screws #10 x 2 1/2 into stud, screws #8 x 5/8 into piece, on top, {wall} up on wall, 2 of them"
    # The shelf at the top lies flat, so a strap on the whole case is screwed to its face.
    _, level = tied_of(case(words.format(wall=60)))
    assert level.at_piece is not None
    assert (level.at_piece.part, level.at_piece.surface) == ("shelf.4", "face")
    assert level.at_piece.holds == pytest.approx(level.at_piece.shear)
    # On the sides it comes to end grain: sheared the NDS lets it hold two thirds, pulled nothing.
    sides = case(words.format(wall=60), what="side.left, side.right")
    _, end = tied_of(sides)
    assert end.at_piece is not None
    assert (end.at_piece.surface, end.at_piece.withdrawal) == ("end", 0.0)
    assert end.at_piece.holds == pytest.approx(0.67 * level.at_piece.shear)
    rising = tied_of(case(words.format(wall=61), what="side.left, side.right", room=" 2 away"))[1]
    assert rising.at_piece is not None
    assert rising.at_piece.holds == 0.0


def test_the_edge_of_plywood_holds_less_than_its_face() -> None:
    oak = case(ENDS.format(more="screws #8 x 3/4 into piece"))
    plan = oak.replace("actual 3/4 x 11 1/4 red oak, 8 ft", "birch plywood 3/4, sheet 48 x 96").replace(
        "    on floor, flush", "    11 1/4 deep, on floor, flush"
    )
    plan = plan.replace("part shelf: board, across, flat,", "part shelf: board, across, flat, 11 1/4 deep,")
    _, tied = tied_of(plan)
    end = tied.at_piece
    assert end is not None
    assert (end.surface, end.grained) == ("edge", False)
    # The table of joint factors: 0.75 of what the face holds.
    per_inch = 2850 * end.gravity**2 * 0.164
    assert pounds(end.withdrawal) == pytest.approx(0.75 * per_inch * end.thread / 25.4, rel=1e-3)


def test_what_is_told_as_better_holds_and_stays_inside() -> None:
    plan = case(ENDS.format(more="screws #6 x 1/2 into piece"))
    review = review_of(plan)
    (found,) = restrained(review)
    better = better_at_piece(review, found, 0)
    assert better is not None
    again = tied_of(case(ENDS.format(more=piece_screw_words(review, better.screw, better.number))))
    assert again[1].at_piece == better.end
    assert better.end.holds >= again[0].needed
    assert better.end.over >= review.limit("cover").amount - 1e-6


def test_a_strap_that_is_levelled_holds_at_both_ends() -> None:
    review = review_of(case(ENDS.format(more="2 screws #8 x 3/4 into piece, 55 up on wall")))
    (found,) = restrained(review)
    assert found.tied[0].line.along_back
    assert found.tied[0].lever == pytest.approx(found.arm)
    level = held_level(review, found, 0)
    assert level is not None
    assert all(held >= level.needed for held in level.tied[0].held)
    assert restrained_piece(review, found.piece, {0: Trial(on_wall=56 * 25.4)}, found).pull < found.pull


def test_a_part_before_the_back_lets_the_strap_run() -> None:
    plan = case("strap, screws #10 x 2 1/2 into stud, 56 up, 55 up on wall, 2 of them", what="rail").replace(
        "load shelf",
        "part rail: board, across, facing front, rip 3, between side.left and side.right\n"
        "    back 2 inside back of case, top 58 above floor\nload shelf",
    )
    bare = "\n".join(line for line in plan.splitlines() if "thin, upright" not in line)
    bare = bare.replace("    from bottom of case to top of case\n", "")
    _, tied = tied_of(bare)
    assert tied.line.run > 25.4
    assert tied.line.before == pytest.approx(tied.line.run)
    assert tied.at_piece is None


@pytest.mark.parametrize("wall", [50, 58])
def test_a_falling_strap_on_a_top_only_shears_its_screws(wall: int) -> None:
    """It bends over the back edge, so at its screws it lies flat, however steeply it falls behind."""
    words = "strap, screws #10 x 2 1/2 into stud, screws #8 x 5/8 into piece, on top, {wall} up on wall, 2 of them"
    _, tied = tied_of(case(words.format(wall=wall), room=" 2 away"))
    assert tied.line.slope > 40
    assert tied.line.from_face == 0.0
    assert tied.at_piece is not None
    assert tied.at_piece.holds == pytest.approx(tied.at_piece.shear)


def test_of_named_parts_the_weakest_counts_and_of_the_whole_piece_the_best() -> None:
    """Red oak sides and a rail of a lighter wood stand at the same height at the back."""
    hanger = (
        "stock light: actual 3/4 x 3 1/2 western red cedar, 8 ft\n"
        "part hanger: light, across, on edge, between side.left and side.right, flush with back of side.left\n"
        "    bottom 54 above floor\n"
    )
    words = ENDS.format(more="screws #8 x 3/4 into piece")
    parts = {}
    for what in ("case", "side.left, hanger", "hanger", "side.left"):
        plan = case(words, what=what)
        _, tied = tied_of(plan.replace("restrain", f"{hanger}restrain", 1))
        assert tied.at_piece is not None
        parts[what] = (tied.at_piece.part, tied.at_piece.holds)
    assert parts["hanger"][1] < parts["side.left"][1]
    assert parts["case"] == parts["side.left"]
    assert parts["side.left, hanger"] == parts["hanger"]
