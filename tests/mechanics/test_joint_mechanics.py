"""Gaps, slanted nails, joints that turn open, glued dowels, and woods by their gravity."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from reviewer.mechanics.fasteners import (
    glued_dowel_pull,
    hardest_pull,
    toe_lengths,
    wet_service,
)
from reviewer.mechanics.wood_by_gravity import bearing_by_gravity, shear_by_gravity
from reviewer.mechanics.yield_modes import Joint, bending_yield_strength, yield_modes
from reviewer.reference.materials import material, material_keys
from reviewer.units import MM_PER_INCH, MPA_PER_PSI


@st.composite
def shear_joints(draw: st.DrawFn) -> Joint:
    def between(low: float, high: float) -> float:
        return draw(st.floats(low, high))

    diameter = between(2, 12)
    return Joint(
        diameter,
        diameter,
        between(5, 60),
        between(5, 60),
        between(10, 60),
        between(10, 60),
        between(300, 700),
        draw(st.sampled_from([0.0, 45.0, 90.0])),
    )


@given(shear_joints())
def test_no_gap_gives_the_yield_modes_of_the_standard(joint: Joint) -> None:
    # AWC TR-12 (from memory) and NDS 2018 Table 12.3.1A are two ways to write the same modes.
    plain, gapped = yield_modes(joint), yield_modes(joint._replace(gap=1e-9))
    assert plain.keys() == gapped.keys()
    for mode, force in plain.items():
        assert gapped[mode] == pytest.approx(force, rel=1e-5)


@given(shear_joints(), st.floats(0.1, 30))
def test_a_gap_only_weakens(joint: Joint, gap: float) -> None:
    plain, gapped = yield_modes(joint), yield_modes(joint._replace(gap=gap))
    for mode, force in plain.items():
        assert gapped[mode] <= force * (1 + 1e-9)
    assert gapped["IV"] < plain["IV"]


@pytest.mark.parametrize(
    ("inches", "psi"),
    # NDS 2018 Table I1, and the wood screws of Table 12L that use it (No. 6 to No. 14), as transcribed.
    [(0.113, 1e5), (0.138, 1e5), (0.164, 9e4), (0.19, 8e4), (0.216, 8e4), (0.242, 7e4), (0.375, 45e3)],
)
def test_bending_yield_strength(inches: float, psi: float) -> None:
    assert bending_yield_strength(inches * MM_PER_INCH) == pytest.approx(psi * MPA_PER_PSI)


def test_toe_driven_nail() -> None:
    # NDS commentary: l_s the lesser of t_s and L/3, l_m = L cos 30 - L/3; a 3 in nail through 1 1/2 in.
    side, main = toe_lengths(3 * MM_PER_INCH, 1.5 * MM_PER_INCH)
    assert side == pytest.approx(1.0 * MM_PER_INCH)
    assert main == pytest.approx((3 * math.cos(math.pi / 6) - 1) * MM_PER_INCH)
    assert toe_lengths(3 * MM_PER_INCH, 0.5 * MM_PER_INCH)[0] == pytest.approx(0.5 * MM_PER_INCH)


def test_wet_service() -> None:
    # NDS 2018 Table 11.3.3, as transcribed.
    assert (wet_service("screw", True), wet_service("screw", False)) == (0.7, 0.7)
    assert (wet_service("nail", True), wet_service("nail", False)) == (0.25, 0.7)


@given(st.lists(st.floats(1, 300), min_size=1, max_size=8), st.floats(1, 1e6))
def test_pulls_hold_the_moment(heights: list[float], moment: float) -> None:
    hardest = hardest_pull(heights, moment)
    pulls = [hardest * each / max(heights) for each in heights]
    assert math.fsum(p * z for p, z in zip(pulls, heights, strict=True)) == pytest.approx(moment)


def test_glued_dowel() -> None:
    # pi D L tau with the 3.0 MPa of BioResources 13(3): an 8 mm dowel, 20 mm deep, draws at about 1.5 kN.
    assert glued_dowel_pull(8, 20, 3.0) == pytest.approx(1508, abs=1)


def test_strengths_by_gravity_are_near_the_species_of_the_handbook() -> None:
    # Wood Handbook Table 5-3 for each species against the fits of Table 5-11 (from memory).
    shears, bearings = [], []
    for key in material_keys():
        wood = material(key)
        if wood.kind != "species" or wood.specific_gravity is None:
            continue
        hard = wood.family == "hardwood"
        if wood.shear_strength is not None:
            shears.append(shear_by_gravity(wood.specific_gravity, hard) / wood.shear_strength)
        if wood.bearing_strength is not None:
            bearings.append(bearing_by_gravity(wood.specific_gravity, hard) / wood.bearing_strength)
    assert len(shears) > 40
    assert len(bearings) > 40
    assert sum(0.67 < each < 1.5 for each in shears) > 0.9 * len(shears)
    assert sum(0.6 < each < 1.6 for each in bearings) > 0.85 * len(bearings)
    assert 0.9 < sorted(shears)[len(shears) // 2] < 1.1
    assert 0.85 < sorted(bearings)[len(bearings) // 2] < 1.15
