"""Frames in space against closed formulas, and what no frame may do.

The formulas are textbook results of the slope-deflection method, from memory; each is worked out beside it.
"""

from __future__ import annotations

import math
import random

import numpy as np
import pytest
from frame_cases import FrameCase

from reviewer.geometry.vectors import UNITS
from reviewer.mechanics.frame import FIRM, PINNED, RIGID, Bars, Frame, Loose, Section, Six, Turning, rectangle
from reviewer.mechanics.frame_solver import TooLargeError, UnsolvedError, stretch

YOUNG, HEIGHT, SPAN, PUSH = 10_000.0, 700.0, 1200.0, 100.0
LEG, RAIL = 38**4 / 12, 19 * 89**3 / 12
STILL: Six = (0.0, 0.0, 0.0, 0.0, 0.0, 0.0)


def section(inertia: float) -> Section:
    """A section that only bends: it can't be stretched, twisted or sheared."""
    return Section(1e12, 1e12, YOUNG * inertia, YOUNG * inertia)


def pushed(amount: float = PUSH) -> Six:
    return (amount, 0.0, 0.0, 0.0, 0.0, 0.0)


def portal(feet: tuple[int, ...], at_corners: Turning = FIRM) -> float:
    """The sway of two legs with a rail on top, in the plane of across and up, mm."""
    frame = Frame()
    low = [frame.node((x, 0.0, 0.0)) for x in (0.0, SPAN)]
    high = [frame.node((x, 0.0, HEIGHT)) for x in (0.0, SPAN)]
    for foot, head in zip(low, high, strict=True):
        frame.beam(foot, head, section(LEG), (1.0, 0.0, 0.0))
        frame.fix(foot, *feet)
        frame.fix(head, 1)  # in its plane
    frame.beam(*high, section(RAIL), (0.0, 0.0, 1.0), at_corners, at_corners)
    found = frame.solve(dict.fromkeys(high, pushed(PUSH / 2)))
    assert not isinstance(found, Loose)
    assert found[high[0]][0] == pytest.approx(found[high[1]][0])
    return found[high[0]][0]


def test_portal_clamped_at_its_feet() -> None:
    # d = H·h³/(12·E·I)·(3·k + 2)/(6·k + 1), k = I_rail·h/(I_leg·l).
    k = RAIL * HEIGHT / (LEG * SPAN)
    by_hand = PUSH * HEIGHT**3 / (12 * YOUNG * LEG) * (3 * k + 2) / (6 * k + 1)
    assert portal((0, 1, 2, 3, 4, 5)) == pytest.approx(by_hand, rel=1e-4)


def test_portal_on_pins() -> None:
    # Each leg is a cantilever of H/2, each corner turns by M·l/(6·E·I_rail) with M = H·h/2.
    by_hand = PUSH * HEIGHT**3 / (6 * YOUNG * LEG) + PUSH * HEIGHT**2 * SPAN / (12 * YOUNG * RAIL)
    assert portal((0, 1, 2, 3, 5)) == pytest.approx(by_hand, rel=1e-4)


@pytest.mark.parametrize("spring", [1e5, 2e6, 5e7, 1e9])
def test_portal_on_pins_with_springs_at_its_corners(spring: float) -> None:
    # The spring of a corner lies in a row with its half of the rail: it turns by M/k more.
    by_hand = (
        PUSH * HEIGHT**3 / (6 * YOUNG * LEG)
        + PUSH * HEIGHT**2 * SPAN / (12 * YOUNG * RAIL)
        + PUSH * HEIGHT**2 / (2 * spring)
    )
    about_deep = Turning(math.inf, spring, spring)
    assert portal((0, 1, 2, 3, 5), about_deep) == pytest.approx(by_hand, rel=1e-4)


def test_portal_of_nothing_but_pins_is_told_with_its_motion() -> None:
    frame = Frame()
    low = [frame.node((x, 0.0, 0.0)) for x in (0.0, SPAN)]
    high = [frame.node((x, 0.0, HEIGHT)) for x in (0.0, SPAN)]
    for foot, head in zip(low, high, strict=True):
        frame.beam(foot, head, section(LEG), (1.0, 0.0, 0.0))
        frame.fix(foot, 0, 1, 2, 3, 5)
        frame.fix(head, 1)
    frame.beam(*high, section(RAIL), (0.0, 0.0, 1.0), PINNED, PINNED)
    found = frame.solve({high[0]: pushed()})
    assert isinstance(found, Loose)
    shifts = [found.motion[node][0] for node in high]
    assert shifts[0] == pytest.approx(shifts[1])
    assert abs(shifts[0]) > 0
    assert max(abs(stretch(spring, found.motion)) for spring in frame.springs) <= 1e-6 * abs(shifts[0])
    ready = frame.factors()
    with pytest.raises(ValueError, match="nothing holds"):
        ready.solve({high[0]: pushed()})


def test_a_free_node_is_loose_and_a_bar_does_not_turn() -> None:
    frame = Frame()
    here, there = frame.node((0.0, 0.0, 0.0)), frame.node((500.0, 0.0, 0.0))
    frame.fix(here, 0, 1, 2)
    frame.bar(here, there, 1e6)
    assert isinstance(frame.solve({}), Loose)  # the far end may go up and down
    frame.fix(there, 1, 2)
    found = frame.solve({there: pushed()})
    assert not isinstance(found, Loose)
    assert found[there][0] == pytest.approx(PUSH * 500 / 1e6)
    turned = frame.solve({there: (0.0, 0.0, 0.0, 5.0, 0.0, 0.0)})
    assert isinstance(turned, Loose)
    assert (turned.node, turned.freedom) == (there, 3)


def test_cantilever_with_shear_and_twist() -> None:
    # d = F·L³/(3·E·I) + F·L/(G·A_s); twist = T·L/(G·J), J = 0.1406·a⁴ for a square (from memory).
    side, length = 40.0, 600.0
    bar = rectangle(side, side, YOUNG, YOUNG / 16)
    frame = Frame()
    root, tip = frame.node((0.0, 0.0, 0.0)), frame.node((0.0, 0.0, length))
    frame.fix(root, 0, 1, 2, 3, 4, 5)
    frame.beam(root, tip, bar, (1.0, 0.0, 0.0))
    found = frame.solve({tip: (PUSH, 0.0, 0.0, 0.0, 0.0, 1e4)})
    assert not isinstance(found, Loose)
    bending = PUSH * length**3 / (3 * YOUNG * side**4 / 12)
    shearing = PUSH * length / (YOUNG / 16 * side**2 * 5 / 6)
    assert found[tip][0] == pytest.approx(bending + shearing, rel=1e-9)
    assert found[tip][5] == pytest.approx(1e4 * length / (YOUNG / 16 * 0.1406 * side**4), rel=2e-3)


@pytest.mark.parametrize(("root", "end"), [(1e6, math.inf), (math.inf, 1e6), (3e5, 4e6)])
def test_springs_at_either_end_give_in_their_own_place(root: float, end: float) -> None:
    # Root clamped, tip kept from turning: both ends carry moments M0 + M1 = F·L, and their springs turn alike
    # with the beam: by the elastic centre c = (L²/2EI + L/k1)/(L/EI + 1/k0 + 1/k1) from the root.
    length, own = 600.0, 600.0 / (YOUNG * LEG)
    frame = Frame()
    foot, tip = frame.node((0.0, 0.0, 0.0)), frame.node((0.0, 0.0, length))
    frame.fix(foot, 0, 1, 2, 3, 4, 5)
    frame.fix(tip, 3, 4, 5)
    frame.beam(
        foot, tip, section(LEG), (1.0, 0.0, 0.0), Turning(math.inf, root, root), Turning(math.inf, end, end)
    )
    found = frame.solve({tip: pushed()})
    assert not isinstance(found, Loose)
    whole = own + 1 / root + 1 / end
    at_root = PUSH * (own * length / 2 + length / end) / whole
    at_tip = PUSH * length - at_root
    # Castigliano over the moment that falls evenly from the one to the other with its sign turned.
    work = own / 3 * (at_root**2 - at_root * at_tip + at_tip**2) + at_root**2 / root + at_tip**2 / end
    assert found[tip][0] == pytest.approx(work / PUSH, rel=1e-6)


def test_panel_shears_as_a_panel() -> None:
    # A push along the top of a square-cornered panel on rollers: H = G·t·b·(d/h).
    width, height, shear = 800.0, 500.0, 4000.0
    frame = Frame()
    corners = [frame.node(place) for place in ((0, 0, 0), (width, 0, 0), (width, 0, height), (0, 0, height))]
    for corner in corners:
        frame.fix(corner, 1, 2)  # what stretches of the sides is nothing
    frame.fix(corners[0], 0)
    frame.fix(corners[1], 0)
    frame.panel((corners[0], corners[1], corners[2], corners[3]), shear)
    found = frame.solve(dict.fromkeys(corners[2:], pushed(PUSH / 2)))
    assert not isinstance(found, Loose)
    assert found[corners[2]][0] == pytest.approx(PUSH * height / (shear * width))
    assert Bars.of_panel(width, height, shear).stretch > 0


def test_joint_reaches_with_stiff_arms() -> None:
    # A rail fixed to the face of a leg, 19 mm off its axis: as one moved there, and turning by its spring.
    spring, arm, length = 3e6, 19.0, 400.0
    frame = Frame()
    leg, near, far = (frame.node((x, 0.0, 0.0)) for x in (0.0, arm, arm + length))
    frame.fix(leg, 0, 1, 2, 3, 4, 5)
    frame.joint(leg, near, (arm, 0.0, 0.0), UNITS, RIGID, (spring, spring, spring))
    frame.beam(near, far, section(RAIL), (0.0, 0.0, 1.0))
    found = frame.solve({far: (0.0, 0.0, -PUSH, 0.0, 0.0, 0.0)})
    assert not isinstance(found, Loose)
    by_hand = PUSH * length**3 / (3 * YOUNG * RAIL) + PUSH * length**2 / spring
    assert -found[far][2] == pytest.approx(by_hand, rel=1e-3)


@pytest.mark.parametrize("seed", range(40))
def test_more_never_sways_more(seed: int) -> None:
    """Whatever is added to a frame, the work that the same load does in it grows no greater (Rayleigh)."""
    case, draw = FrameCase(seed), random.Random(seed)

    def work() -> float:
        found = case.ours.solve(case.loads)
        assert not isinstance(found, Loose)
        done = sum(
            sum(force * shift for force, shift in zip(load, found[node], strict=True))
            for node, load in case.loads.items()
        )
        # What the load does is what the springs hold: the answer keeps the balance.
        assert case.ours.factors().energy(found) == pytest.approx(done, rel=1e-6)
        return done

    before = work()
    nodes = range(len(case.ours.places))
    for _ in range(3):
        one, two = draw.sample(nodes, 2)
        if draw.random() < 0.5:
            case.ours.bar(one, two, 10 ** draw.uniform(2, 7))
        else:
            case.ours.joint(one, two, case.ours.places[one], UNITS, (9.0, 0.0, 1e4), (1e5, 1e3, 0.0))
        after = work()
        assert after <= before * (1 + 1e-9)
        before = after
    # And stiffer springs where there were softer ones.
    springs = case.ours.springs
    springs[:] = [spring._replace(stiffness=spring.stiffness * draw.choice((1.0, 3.0))) for spring in springs]
    assert work() <= before * (1 + 1e-9)


def matrix(frame: Frame) -> tuple[np.ndarray, np.ndarray]:
    """The stiffness matrix as a sum of springs, by numpy (test-only), and which freedoms may move."""
    size = 6 * len(frame.places)
    whole = np.zeros((size, size))
    for spring in frame.springs:
        row = np.zeros(size)
        for node, parts in spring.stretch:
            row[6 * node : 6 * node + 6] += parts
        whole += spring.stiffness * np.outer(row, row)
    free = np.ones(size, dtype=bool)
    for node, freedom in frame.fixed:
        free[6 * node + freedom] = False
    # A turn that nothing takes part in is no motion of the frame.
    free[[k for k in range(size) if k % 6 > 2 and not whole[k, k]]] = False
    return whole, free


@pytest.mark.parametrize("seed", range(200))
def test_missing_supports_never_give_a_number(seed: int) -> None:
    """Some or all that holds a random frame is taken away: loose exactly where its matrix has no full rank.

    Lengths are measured in metres for the rank (numpy's singular values), so that turns weigh like shifts.
    """
    case, draw = FrameCase(seed), random.Random(1000 + seed)
    frame = case.ours
    share = draw.choice((0.0, 0.2, 0.5, 0.8))
    frame.fixed[:] = [each for each in frame.fixed if draw.random() < share]
    frame.springs[:] = [each for each in frame.springs if len(each.stretch) > 1 or draw.random() < share]
    if draw.random() < 0.3:  # and some of what joins it
        frame.springs[:] = [each for each in frame.springs if draw.random() < 0.7]
    whole, free = matrix(frame)
    sizes = np.array([1.0, 1.0, 1.0, 1e-3, 1e-3, 1e-3] * len(frame.places))
    scaled = (sizes[:, None] * whole * sizes)[np.ix_(free, free)]
    diagonal = np.sqrt(np.diag(scaled))
    held = bool(diagonal.all())
    if held:
        values = np.linalg.svd(scaled / np.outer(diagonal, diagonal), compute_uv=False)
        held = values[-1] > 1e-10
    ready = frame.factors()
    if not held:
        assert ready.loose is not None
        motion = ready.loose.motion
        most = max(abs(each) for node in motion for each in node)
        assert most > 0
        # The motion that is told is one that no spring minds.
        stiffest = max(spring.stiffness for spring in frame.springs)
        assert ready.energy(motion) <= 1e-9 * stiffest * most**2 * 1e6
        return
    if ready.loose is not None:
        pytest.fail("held, and told as loose")
    try:
        found = ready.solve(case.loads)
    except UnsolvedError:
        return
    if isinstance(found, Loose):
        return
    load = np.array([case.loads.get(node, STILL) for node in range(len(frame.places))]).ravel()
    exact = np.linalg.solve(whole[np.ix_(free, free)], load[free])
    ours = np.array(found).ravel()[free]
    assert np.abs(ours - exact).max() <= 1e-5 * np.abs(exact).max()


@pytest.mark.parametrize("seed", range(40))
@pytest.mark.parametrize("weak", [1e-3, 1e-6, 1e-9, 1e-12, 1e-15])
def test_a_thread_is_no_support(seed: int, weak: float) -> None:
    """What holds a frame at all grows weaker and weaker: right, or told as loose or unsolved; never wrong."""
    case = FrameCase(seed)
    frame = case.ours
    frame.fixed[:] = []
    frame.springs[:] = [each for each in frame.springs if len(each.stretch) > 1]
    for place in frame.places:  # one soft pin at every foot, in place of what held it
        if abs(place[2]) < 61:
            frame.hold(frame.places.index(place), place, (weak * 1e6, weak * 1e6, weak * 1e6))
    push = dict.fromkeys(range(len(frame.places)), pushed(1.0))
    try:
        found = frame.solve(push)
    except UnsolvedError:
        return
    if isinstance(found, Loose):
        assert weak < 1e-3
        return
    # The pins together carry the whole push: so the mean of their shifts is known whatever is above.
    feet = [node for node, place in enumerate(frame.places) if abs(place[2]) < 61]
    mean = len(push) / (len(feet) * weak * 1e6)
    assert sum(found[node][0] for node in feet) / len(feet) == pytest.approx(mean, rel=1e-4)


def test_nothing_that_is_no_number_comes_through() -> None:
    for stiffness in (math.nan, math.inf):
        case = FrameCase(5)
        first = case.ours.springs[0]
        case.ours.springs[0] = first._replace(stiffness=stiffness)
        try:
            found = case.ours.solve(case.loads)
        except UnsolvedError:
            continue
        assert isinstance(found, Loose)


def test_work_is_bounded_and_counted() -> None:
    case = FrameCase(3, (3, 1, 3))
    work = case.ours.factors().work
    assert work > len(case.ours.places)
    assert case.ours.factors(work).work == work
    with pytest.raises(TooLargeError):
        case.ours.factors(work - 1)


def test_an_answer_that_does_not_keep_the_balance_is_none() -> None:
    case = FrameCase(3)
    ready = case.ours.factors()
    assert not isinstance(ready.solve(case.loads), Loose)
    ready._pivots[-1][0][0] *= 1.01  # as rounding would spoil it
    with pytest.raises(UnsolvedError):
        ready.solve(case.loads)


def test_beam_of_no_length_is_refused() -> None:
    frame = Frame()
    one, two = frame.node((1.0, 2.0, 3.0)), frame.node((1.0, 2.0, 3.0))
    with pytest.raises(ValueError, match="one place"):
        frame.beam(one, two, section(LEG), (1.0, 0.0, 0.0))
