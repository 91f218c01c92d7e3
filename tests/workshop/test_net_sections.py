"""Net sections: what a cut leaves, by hand; and the sag of a weakened beam against a general solver."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from Pynite import FEModel3D

from reviewer.mechanics.beam import BeamResult, LineLoad, second_moment, solve_beam
from reviewer.model.plan import Axis
from reviewer.setting_out.solid import square_solid
from reviewer.units import MM_PER_INCH
from reviewer.workshop.net_sections import NetSection, Room, net_sections, sag_growth
from tests.support import review_of

LENGTH, WIDTH, HEIGHT = 1000.0, 100.0, 40.0
BOARD = square_solid("board", (0.0, 0.0, 0.0), (LENGTH, WIDTH, HEIGHT), Axis.ACROSS, Axis.DEEP, Axis.UP)
WHOLE = second_moment(WIDTH, HEIGHT)


def room(
    start: float, end: float, bottom: float, top: float, front: float = 0.0, back: float = WIDTH
) -> Room:
    return Room((start, front, bottom), (end, back, top), "dado")


def test_a_whole_board_has_no_weak_stretch() -> None:
    assert net_sections(BOARD, Axis.ACROSS, (), None) == ()
    beside = Room((0.0, 200.0, 0.0), (LENGTH, 300.0, HEIGHT), "dado")
    assert net_sections(BOARD, Axis.ACROSS, [beside], None) == ()


def test_a_dado_by_hand() -> None:
    (net,) = net_sections(BOARD, Axis.ACROSS, [room(400, 420, 30, 40)], None)
    assert (net.start, net.end, net.why) == (400, 420, "dado")
    assert net.area == pytest.approx(WIDTH * 30)
    assert net.second_moment == pytest.approx(second_moment(WIDTH, 30))
    assert net.modulus == pytest.approx(WIDTH * 30**2 / 6)


def test_two_cuts_in_one_place_take_what_both_take_once() -> None:
    cuts = [room(400, 420, 30, 40), room(410, 430, 25, 40)]
    found = net_sections(BOARD, Axis.ACROSS, cuts, None)
    assert [(net.start, net.end) for net in found] == [(400, 410), (410, 420), (420, 430)]
    assert [net.area for net in found] == pytest.approx([3000, 2500, 2500])


def board(cut: str) -> str:
    return f"""
        plan "Board" in millimetres
        stock board: actual 40 x 100 spruce-pine-fir
        stock post: actual 50 x 100 spruce-pine-fir
        part left: post, upright, facing side, 400 tall, on floor, left at 0, front at 0
        part right: post, upright, facing side, 400 tall, on floor, left 1000 right of left, front at 0
        part board: board, across, flat, between left and right, front at 0, bottom at 200{cut}
        join board to left, right: screws 5 x 80, 3 per joint
        load board: 50 kg
        room hall: indoors
        """


@pytest.mark.parametrize(
    ("cut", "area", "second"),
    [
        (", notch 100 across by 10 tall at top, 450 from left", 3000, second_moment(100, 30)),
        (", hole 20 through top, 500 from left, 50 from front", 3200, second_moment(80, 40)),
        (", hole 20 through front, 500 from left, 20 from top", 2000, (100 * 40**3 - 100 * 20**3) / 12),
        (", rabbet 10 by 10 into top along front", 3900, None),
    ],
)
def test_the_cuts_of_a_plan_by_hand(cut: str, area: float, second: float | None) -> None:
    member = review_of(board(cut)).carrying.members["board"]
    net = min(member.sections, key=lambda each: each.area)
    assert net.area == pytest.approx(area)
    if second is not None:
        assert net.second_moment == pytest.approx(second)
    assert net.why == cut.split()[1]
    assert member.weakness > 1


def test_a_round_bar_is_weaker_than_its_bounds() -> None:
    text = board("").replace("actual 40 x 100", "round 40").replace("across, flat", "across")
    member = review_of(text).carrying.members["board"]
    # π·d⁴/64 over d⁴/12 is 0.589; the bar counts as a many-sided one.
    assert 1 / member.weakness == pytest.approx(0.589, rel=0.03)


def solved(stiffness: float) -> BeamResult:
    found = solve_beam(LENGTH, [0.0, LENGTH], stiffness, [], [LineLoad(0.0, LENGTH, 0.5)])
    assert isinstance(found, BeamResult)
    return found


def test_a_groove_all_along_is_a_thinner_board() -> None:
    (net,) = net_sections(BOARD, Axis.ACROSS, [room(0, LENGTH, 30, 40)], None)
    growth = sag_growth(solved(1e10), [net], WHOLE)
    assert growth == pytest.approx((40 / 30) ** 3, rel=1e-6)


@pytest.mark.parametrize(
    ("start", "end", "left"),
    [(450, 550, 0.3), (200, 300, 0.3), (0, 200, 0.2), (300, 700, 0.5), (480, 520, 0.1)],
)
def test_the_sag_of_a_weakened_beam_is_that_of_a_general_solver(
    start: float, end: float, left: float
) -> None:
    """PyNiteFEA (a test-only library) solves the stepped beam; the energy of bending comes within 10 %."""
    young = 10_000.0
    model = FEModel3D()
    model.add_material("wood", young, young / 2.6, 0.3, 0.0)
    for name, share in (("whole", 1.0), ("weak", left)):
        model.add_section(name, 1e6, WHOLE * share, WHOLE * share, WHOLE * share)
    marks = sorted({0.0, LENGTH, start, end, *(LENGTH * step / 40 for step in range(41))})
    for number, place in enumerate(marks):
        model.add_node(f"N{number}", place, 0.0, 0.0)
        ends = place in (0.0, LENGTH)
        model.def_support(f"N{number}", number == 0, ends, True, number == 0, True, False)
    for number, (low, high) in enumerate(pairwise(marks)):
        section = "weak" if start <= low and high <= end else "whole"
        model.add_member(f"M{number}", f"N{number}", f"N{number + 1}", "wood", section)
        model.add_member_dist_load(f"M{number}", "FY", -0.5, -0.5)
    model.analyze_linear()
    theirs = max(-node.DY["Combo 1"] for node in model.nodes.values())
    even = solved(young * WHOLE)
    net = NetSection(start, end, WIDTH * HEIGHT, WHOLE * left, 1.0, "dado")
    ours = even.bays[0].sag * sag_growth(even, [net], WHOLE)
    assert ours == pytest.approx(theirs, rel=0.1)
    assert theirs / even.bays[0].sag > 1.01


CUT = st.tuples(st.integers(0, 18), st.integers(1, 6), st.integers(1, 30), st.booleans())


@settings(max_examples=80, deadline=None)
@given(cuts=st.lists(CUT, min_size=1, max_size=4))
def test_no_cut_makes_a_board_stronger(cuts: list[tuple[int, int, int, bool]]) -> None:
    rooms = []
    for start, long, deep, top in cuts:
        low, high = (HEIGHT - deep, HEIGHT) if top else (0.0, float(deep))
        rooms.append(room(start * 50, min(start * 50 + long * 50, LENGTH), low, high, 0.0, WIDTH * 0.6))
    found = net_sections(BOARD, Axis.ACROSS, rooms, None)
    assert found
    for net in found:
        assert 0 < net.area < WIDTH * HEIGHT
        assert 0 < net.second_moment < WHOLE
    assert sag_growth(solved(1e10), found, WHOLE) >= 1
    deeper = net_sections(BOARD, Axis.ACROSS, [*rooms, room(400, 600, 0, 8)], None)
    assert sag_growth(solved(1e10), deeper, WHOLE) >= sag_growth(solved(1e10), found, WHOLE) - 1e-9


def test_mortises_and_dadoes_of_joints_count() -> None:
    text = """
        plan "Frame" in inches
        stock rail: actual 1 1/2 x 5 1/2 red oak
        stock slat: actual 3/4 x 3 1/2 red oak
        part post.a: rail, upright, facing side, 30 tall, on floor, left at 0, front at 0
        part post.b: rail, upright, facing side, 30 tall, on floor, left at 41 1/2, front at 0
        part rail: rail, across, on edge, between post.a and post.b, front at 0, bottom at 10
        part slat: slat, deep, flat, 20 long, left at 20, front at 1, bottom at 12
        join rail to post.*: screws #8 x 3, 2 per joint
        join slat to rail: mortise and tenon 1/2 long, glue pva
        load rail: 100 lb
        """
    member = review_of(text).carrying.members["rail"]
    (net,) = member.sections
    assert net.why == "mortise and tenon"
    assert (net.end - net.start) / MM_PER_INCH == pytest.approx(3.5)
    # 1/2 in of the 1 1/2 in over 3/4 in of the height.
    assert net.area / MM_PER_INCH**2 == pytest.approx(1.5 * 5.5 - 0.5 * 0.75)
