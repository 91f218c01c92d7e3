"""Fasteners: what any formula of theirs must do, where the published answers leave a gap."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from reviewer.mechanics import eurocode
from reviewer.mechanics.fasteners import (
    LARGE_DIAMETER,
    bolt_hole,
    grip,
    group_action,
    head_pull_through,
    lag_screw_hole,
    least_thread,
    penetration_factor,
    pull_and_shear,
    screw_hole_for_pull,
    screw_hole_for_shear,
    widest_nail_hole,
    withdrawal_per_mm,
)
from reviewer.mechanics.pocket_screws import pocket_path
from reviewer.mechanics.yield_modes import (
    Joint,
    at_an_angle,
    bearing_in_main,
    dowel_bearing_strength,
    shear_value,
    yield_modes,
)
from reviewer.units import MM_PER_INCH, MPA_PER_PSI, NEWTON_PER_POUND

gravities = st.floats(0.31, 0.73)
angles = st.floats(0.0, 90.0)


def test_withdrawal_in_inside_units() -> None:
    # No. 10 in G 0.50: 135.375 lb per inch (NDS 12.2-2) is 23.708 N per mm.
    assert withdrawal_per_mm("wood screw", 0.50, 4.826) == pytest.approx(23.7078, abs=1e-4)
    # Ring shank 0.135 in, G 0.42: 1800·0.42²·0.135 = 42.865 lb per inch (NDS 12.2-5).
    ring = withdrawal_per_mm("ring-shank nail", 0.42, 0.135 * MM_PER_INCH)
    assert ring * MM_PER_INCH / NEWTON_PER_POUND == pytest.approx(42.8652)
    # Stainless 0.148 in, G 0.42: 465·0.42^1.5·0.148 = 18.732 lb per inch (NDS 12.2-4).
    stainless = withdrawal_per_mm("stainless nail", 0.42, 0.148 * MM_PER_INCH)
    assert stainless * MM_PER_INCH / NEWTON_PER_POUND == pytest.approx(18.7322, abs=1e-4)


def test_grip_is_the_thread_inside_the_main_member() -> None:
    assert grip(50.0, 33.0, 19.0) == pytest.approx(31.0)  # thread starts in the side member
    assert grip(50.0, 20.0, 19.0) == pytest.approx(20.0)  # shank reaches into the main member
    assert grip(50.0, 33.0, 19.0, main=12.0) == pytest.approx(12.0)  # it comes out of the far face
    assert grip(50.0, 33.0, 19.0, tip=4.0) == pytest.approx(27.0)
    assert grip(15.0, 10.0, 19.0) == 0.0  # it never gets there
    assert least_thread(50.0, 4.0) == pytest.approx(100 / 3)
    assert least_thread(20.0, 4.0) == pytest.approx(16.0)


def test_a_thick_side_member_adds_nothing_beyond_two_and_a_half_heads() -> None:
    head = 8.0
    at_limit = head_pull_through(head, 0.5, 2.5 * head)
    assert head_pull_through(head, 0.5, 5 * head) == at_limit
    assert head_pull_through(head, 0.5, 1.25 * head) == pytest.approx(at_limit / 2)


@given(st.floats(10, 5000), st.floats(10, 5000), angles)
def test_pull_and_shear_lies_between_the_two(withdrawal: float, lateral: float, angle: float) -> None:
    for kind in ("screw", "nail"):
        assert pull_and_shear(kind, withdrawal, lateral, 90) == pytest.approx(withdrawal)  # type: ignore[arg-type]
        assert pull_and_shear(kind, withdrawal, lateral, 0) == pytest.approx(lateral)  # type: ignore[arg-type]
    low, high = sorted((withdrawal, lateral))
    value = pull_and_shear("screw", withdrawal, lateral, angle)
    assert low * (1 - 1e-9) <= value <= high * (1 + 1e-9)
    assert pull_and_shear("nail", withdrawal, lateral, angle) <= value * (1 + 1e-9)


def test_a_fastener_that_cannot_be_pulled_holds_nothing_at_a_slant() -> None:
    assert pull_and_shear("nail", 0.0, 200.0, 30.0) == 0.0
    assert pull_and_shear("screw", 0.0, 0.0, 30.0) == 0.0


def test_penetration_has_a_floor_and_a_ceiling() -> None:
    assert penetration_factor("screw", 5.99, 1.0) == 0.0
    assert penetration_factor("screw", 6.0, 1.0) == pytest.approx(0.6)
    assert penetration_factor("nail", 14.0, 1.0) == 1.0
    assert penetration_factor("lag screw", 4.0, 1.0) == pytest.approx(0.5)
    assert penetration_factor("lag screw", 3.9, 1.0) == 0.0


def test_group_action() -> None:
    assert group_action(5, 50.0, LARGE_DIAMETER - 0.01, 1e6, 1e6) == 1.0
    assert group_action(1, 50.0, 12.0, 1e6, 1e6) == 1.0
    values = [group_action(n, 80.0, 12.7, 2e7, 1e7) for n in range(2, 12)]
    assert values == sorted(values, reverse=True)
    assert 0 < values[-1] < values[0] < 1
    assert group_action(6, 80.0, 12.7, 2e7, 1e7) == group_action(6, 80.0, 12.7, 1e7, 2e7)
    # Two bolts between two like members share alike, whatever the spacing.
    assert group_action(2, 80.0, 12.7, 1e7, 1e7) == pytest.approx(1.0)


@pytest.mark.parametrize(("steel", "modulus"), [(False, 180_000.0), (True, 270_000.0)])
@pytest.mark.parametrize(("count", "stiffer"), [(3, 1.0), (5, 0.4), (8, 2.5)])
def test_group_action_is_that_of_a_row_of_springs(
    steel: bool, modulus: float, count: int, stiffer: float
) -> None:
    # The model behind the equation, solved outright: members as bars, fasteners as springs of
    # modulus · D^1.5 lb per inch (NDS 11.3.6); the hardest worked spring sets the group.
    diameter, spacing, main = 9.0, 60.0, 3e6
    side = main * stiffer
    spring = modulus * (diameter / 25.4) ** 1.5 * 4.4482216152605 / 25.4
    size = 2 * count
    stiffness, load = np.zeros((size, size)), np.zeros(size)

    def join(a: int, b: int, k: float) -> None:
        stiffness[a, a] += k
        stiffness[b, b] += k
        stiffness[a, b] -= k
        stiffness[b, a] -= k

    for i in range(count):
        join(i, count + i, spring)
        if i + 1 < count:
            join(i, i + 1, main / spacing)
            join(count + i, count + i + 1, side / spacing)
    load[0], load[-1] = 1.0, -1.0
    moved = np.linalg.lstsq(stiffness, load, rcond=None)[0]
    carried = spring * (moved[:count] - moved[count:])
    assert carried.sum() == pytest.approx(1.0)
    ours = group_action(count, spacing, diameter, main, side, steel_side=steel)
    assert ours == pytest.approx(carried.sum() / (count * carried.max()), rel=1e-9)
    assert ours < 0.98


def test_lead_holes() -> None:
    assert screw_hole_for_pull(0.60, 3.0) == pytest.approx(2.1)
    assert screw_hole_for_pull(0.50, 3.0) == 0.0
    assert screw_hole_for_shear(0.67, 4.0, 3.0) == (4.0, 3.0)
    assert screw_hole_for_shear(0.42, 4.0, 3.2) == pytest.approx((3.5, 2.8))
    assert lag_screw_hole(0.67, 10.0) == pytest.approx((6.5, 8.5))
    assert lag_screw_hole(0.55, 10.0) == pytest.approx((6.0, 7.5))
    assert lag_screw_hole(0.42, 10.0) == pytest.approx((4.0, 7.0))
    assert widest_nail_hole(0.6, 4.0) == pytest.approx(3.0)
    assert bolt_hole(12.7) == pytest.approx((13.49375, 14.2875))


@given(gravities, angles)
def test_bearing_at_an_angle_lies_between_along_and_across(gravity: float, angle: float) -> None:
    along, across = (dowel_bearing_strength(gravity, 12.7, a) for a in (0.0, 90.0))
    assert along == pytest.approx(11_200 * gravity * MPA_PER_PSI)
    assert across * (1 - 1e-9) <= dowel_bearing_strength(gravity, 12.7, angle) <= along * (1 + 1e-9)
    assert dowel_bearing_strength(gravity, 4.0, angle) == dowel_bearing_strength(gravity, 4.0)


def test_hankinson_at_forty_five_degrees() -> None:
    assert at_an_angle(40.0, 10.0, 45.0) == pytest.approx(16.0)


joints = st.builds(
    Joint,
    gap=st.just(0.0),
    diameter=st.floats(2.0, 5.0),
    nominal_diameter=st.just(5.0),
    main_length=st.floats(5.0, 100.0),
    side_length=st.floats(3.0, 60.0),
    main_strength=st.floats(10.0, 60.0),
    side_strength=st.floats(10.0, 60.0),
    bending_yield=st.floats(300.0, 700.0),
    angle=st.just(0.0),
    double_shear=st.just(False),
)


@given(joints)
def test_modes_mirror_when_the_members_change_places(joint: Joint) -> None:
    # Main and side are names only: in single shear the same joint seen from the other side is as strong.
    other = joint._replace(
        main_length=joint.side_length,
        side_length=joint.main_length,
        main_strength=joint.side_strength,
        side_strength=joint.main_strength,
    )
    here, there = yield_modes(joint), yield_modes(other)
    assert here["Im"] == pytest.approx(there["Is"])
    assert here["IIIm"] == pytest.approx(there["IIIs"])
    assert here["II"] == pytest.approx(there["II"])
    assert here["IV"] == pytest.approx(there["IV"])


@given(joints, st.floats(1.01, 3.0))
def test_thicker_or_harder_wood_never_weakens_a_joint(joint: Joint, factor: float) -> None:
    value = shear_value(joint)
    assert value.force == min(yield_modes(joint).values())
    for better in (
        joint._replace(main_length=joint.main_length * factor),
        joint._replace(side_length=joint.side_length * factor),
        joint._replace(main_strength=joint.main_strength * factor),
        joint._replace(bending_yield=joint.bending_yield * factor),
    ):
        assert shear_value(better).force >= value.force * (1 - 1e-9)


@given(joints)
def test_double_shear_is_twice_single_but_for_the_main_member(joint: Joint) -> None:
    single, double = yield_modes(joint), yield_modes(joint._replace(double_shear=True))
    assert set(double) == {"Im", "Is", "IIIs", "IV"}
    assert double["Im"] == single["Im"]
    for mode in ("Is", "IIIs", "IV"):
        assert double[mode] == pytest.approx(2 * single[mode])  # type: ignore[index]


def test_reduction_terms() -> None:
    # NDS Table 12.3.1B: K_D 2.2 up to 0.17 in, then 10 D + 0.5; 4, 3.6, 3.2 times K_theta from 1/4 in on.
    def crush(diameter: float, nominal: float, angle: float) -> float:
        joint = Joint(diameter, nominal, 30.0, 20.0, 30.0, 30.0, 500.0, angle)
        return diameter * 30 * 30 / yield_modes(joint)["Im"]

    inch = MM_PER_INCH
    assert crush(0.16 * inch, 0.16 * inch, 90) == pytest.approx(2.2)
    assert crush(0.20 * inch, 0.20 * inch, 90) == pytest.approx(2.5)
    assert crush(0.173 * inch, 0.25 * inch, 90) == pytest.approx(2.23 * 1.25)
    assert crush(0.25 * inch, 0.25 * inch, 0) == pytest.approx(4.0)
    assert crush(0.5 * inch, 0.5 * inch, 45) == pytest.approx(4.5)


def test_a_joint_with_no_bite_is_refused() -> None:
    with pytest.raises(ValueError, match="wood on both sides"):
        yield_modes(Joint(4.0, 4.0, 0.0, 19.0, 30.0, 30.0, 600.0))
    assert bearing_in_main(3.0, 8.0) == 0.0


@given(st.floats(10, 60), st.floats(20, 90), st.floats(0, 30))
def test_pocket_path_ends_where_its_screw_ends(stock: float, screw: float, slant: float) -> None:
    path = pocket_path(stock, screw, 19.0, slant_degrees=slant + 5)
    assert math.hypot(path.depth, path.drift) == pytest.approx(screw - path.grip)
    assert path.depth + path.cover == pytest.approx(19.0)
    assert math.atan2(stock / 2, path.entry) == pytest.approx(math.radians(slant + 5))


def test_a_deeper_seat_sends_the_screw_further() -> None:
    usual, deep = pocket_path(19.05, 31.75, 19.05), pocket_path(19.05, 31.75, 19.05, grip=8.0)
    assert usual.grip == pytest.approx(15.875)
    assert deep.depth > usual.depth
    assert deep.cover < 0 < usual.cover
    # Half-inch stock seats only part of a 3/8 in pocket's head.
    assert not pocket_path(12.7, 25.4, 12.7).head_seated
    assert pocket_path(19.05, 31.75, 19.05).head_seated


def test_eurocode_modes_mirror_when_the_members_change_places() -> None:
    here = eurocode.sideways_modes(38.0, 52.0, 3.4, 20.0, 25.0, 4300.0)
    there = eurocode.sideways_modes(52.0, 38.0, 3.4, 25.0, 20.0, 4300.0)
    assert here["a"] == pytest.approx(there["b"])
    assert here["c"] == pytest.approx(there["c"])
    assert here["d"] == pytest.approx(there["e"])
    assert here["f"] == pytest.approx(there["f"])


def test_eurocode_rope_action_has_a_ceiling() -> None:
    sideways = eurocode.sideways_modes(38.0, 52.0, 3.4, 20.0, 20.0, 4300.0)
    bare = eurocode.shear_capacity(sideways, 0.0, "round nail")
    assert bare.force == min(sideways.values())
    assert eurocode.shear_capacity(sideways, 1e6, "round nail").force == pytest.approx(bare.force * 1.15)
    little = eurocode.shear_capacity(sideways, 40.0, "screw")
    assert little.force == pytest.approx(bare.force + 10)


def test_eurocode_withdrawal_limits() -> None:
    whole = eurocode.nail_withdrawal(3.0, 350.0, 36.0, 7.0, 38.0)
    assert whole == pytest.approx(20e-6 * 350**2 * 3 * 36)
    assert eurocode.nail_withdrawal(3.0, 350.0, 30.0, 7.0, 38.0) == pytest.approx(whole * 30 / 36 * 0.5)
    assert eurocode.nail_withdrawal(3.0, 350.0, 23.9, 7.0, 38.0) == 0.0
    # A small head in a thin board gives way before the point.
    head = eurocode.nail_withdrawal(3.0, 350.0, 90.0, 6.0, 10.0)
    assert head == pytest.approx(20e-6 * 350**2 * 3 * 10 + 70e-6 * 350**2 * 36)
    assert eurocode.screw_withdrawal(15.0, 6.0, 35.9) == 0.0
    assert eurocode.screw_withdrawal(15.0, 6.0, 50.0, 29.0) == 0.0
    one = eurocode.screw_withdrawal(15.0, 8.0, 50.0)
    assert one == pytest.approx(6000.0)
    assert eurocode.screw_withdrawal(15.0, 8.0, 50.0, count=4) == pytest.approx(6000 * 4**0.9)
    assert eurocode.screw_withdrawal(15.0, 8.0, 50.0, 30.0) == pytest.approx(6000 / 1.15)


def test_eurocode_small_rules() -> None:
    assert eurocode.yield_moment(600.0, 3.4, square=True) == pytest.approx(
        1.5 * eurocode.yield_moment(600.0, 3.4)
    )
    assert eurocode.embedment_strength(6.0, 350.0, True) == pytest.approx(0.082 * 0.94 * 350)
    assert eurocode.embedment_at_angle(26.978, 6.0, 90.0, "softwood") == pytest.approx(26.978 / 1.44)
    assert eurocode.embedment_at_angle(26.978, 6.0, 90.0, "lvl") == pytest.approx(26.978 / 1.39)
    assert eurocode.embedment_at_angle(26.978, 6.0, 90.0, "hardwood") == pytest.approx(26.978 / 0.99)
    assert eurocode.embedment_at_angle(26.978, 6.0, 0.0, "softwood") == pytest.approx(26.978)
    assert eurocode.embedment_at_angle(26.978, 6.0, 45.0, "softwood") == pytest.approx(26.978 / 1.22)
    assert eurocode.screw_effective_diameter(5.0, 3.0, 20.0) == 5.0
    assert eurocode.screw_effective_diameter(5.0, 3.0, 19.9) == pytest.approx(3.3)
    assert eurocode.declared_withdrawal_strength(12.0, 350.0, 350.0) == 12.0
    assert eurocode.declared_withdrawal_strength(12.0, 700.0, 350.0) == pytest.approx(12 * 2**0.8)
    assert eurocode.screw_head_pull(13.0, 10.0, 350.0, 350.0) == pytest.approx(1300.0)
    assert eurocode.least_penetration(4.0, smooth=True) == 32.0
    assert eurocode.least_penetration(4.0, smooth=False) == 24.0
    assert eurocode.may_go_unbored(28.0, 4.0, 350.0)
    assert not eurocode.may_go_unbored(27.9, 4.0, 350.0)
    assert not eurocode.may_go_unbored(100.0, 4.0, 501.0)
    assert eurocode.may_go_unbored(100.0, 6.0, 350.0)
    assert not eurocode.may_go_unbored(100.0, 6.1, 350.0)
    assert eurocode.nails_in_a_row(3.9, 1.0) == 0.0
    assert eurocode.nails_in_a_row(7.0, 1.0) == pytest.approx(0.7)
    assert eurocode.nails_in_a_row(30.0, 1.0) == 1.0


@pytest.mark.parametrize(
    ("diameter", "density", "prebored", "angle", "expected"),
    [
        # EN 1995-1-1 Table 8.2 in multiples of d, read through two public libraries.
        (4.0, 350.0, False, 0.0, (10, 5, 15, 10, 5, 5)),
        (4.0, 350.0, False, 90.0, (5, 5, 10, 10, 7, 5)),
        (5.0, 350.0, False, 0.0, (12, 5, 15, 10, 5, 5)),
        (5.0, 350.0, False, 90.0, (5, 5, 10, 10, 10, 5)),
        (4.0, 450.0, False, 0.0, (15, 7, 20, 15, 7, 7)),
        (5.0, 450.0, False, 90.0, (7, 7, 15, 15, 12, 7)),
        (4.0, 350.0, True, 0.0, (5, 3, 12, 7, 3, 3)),
        (4.0, 350.0, True, 90.0, (4, 4, 7, 7, 5, 3)),
        (5.0, 350.0, True, 90.0, (4, 4, 7, 7, 7, 3)),
    ],
)
def test_eurocode_distances(
    diameter: float, density: float, prebored: bool, angle: float, expected: tuple[int, ...]
) -> None:
    distances = eurocode.least_distances(diameter, density, prebored, angle)
    assert [d / diameter for d in distances] == pytest.approx(list(expected))
