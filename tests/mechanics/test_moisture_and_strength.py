"""Moisture and strength: what the formulas must do where the published answers leave a gap."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from reviewer.mechanics.moisture import (
    equilibrium_moisture,
    lumber_size,
    seasonal_change,
    width_change,
    width_change_by_shrinkage,
)
from reviewer.mechanics.strength import (
    Factors,
    axial_stress,
    beam_stability,
    bearing_stress,
    bending_stress,
    column_stability,
    design_value,
    shear_stress,
)


@given(st.floats(-1, 38), st.floats(0.0, 0.98), st.floats(0.001, 0.02))
def test_damper_air_makes_damper_wood(temperature: float, humidity: float, more: float) -> None:
    assert equilibrium_moisture(temperature, humidity + more) > equilibrium_moisture(temperature, humidity)


def test_equilibrium_at_the_ends() -> None:
    assert equilibrium_moisture(20.0, 0.0) == 0.0
    assert 25 < equilibrium_moisture(20.0, 1.0) < 32  # fibre saturation, about 30 %
    for humidity in (-0.01, 1.01, 45.0):
        with pytest.raises(ValueError, match="fraction"):
            equilibrium_moisture(20.0, humidity)


def test_seasonal_change_takes_the_coefficient_inside_its_range_and_shrinkage_beyond() -> None:
    assert seasonal_change(300.0, 6.0, 14.0, 0.0024, 7.0) == width_change(300.0, 0.0024, 6.0, 14.0)
    assert seasonal_change(300.0, 19.0, 8.0, 0.0024, 7.0) == width_change_by_shrinkage(300.0, 7.0, 19.0, 8.0)
    assert seasonal_change(300.0, 8.0, 5.9, 0.0024, 7.0) == width_change_by_shrinkage(300.0, 7.0, 8.0, 5.9)
    assert seasonal_change(300.0, 8.0, 14.1, 0.0024, 7.0) == width_change_by_shrinkage(300.0, 7.0, 8.0, 14.1)
    assert seasonal_change(300.0, 19.0, 8.0, 0.0024) == width_change(300.0, 0.0024, 19.0, 8.0)


def test_green_to_ovendry_is_the_tabled_shrinkage() -> None:
    # The meaning of the tabled figure, and a check of the formula's shape.
    assert width_change_by_shrinkage(100.0, 7.8, 30.0, 0.0) == pytest.approx(-7.8)
    assert width_change_by_shrinkage(100.0, 7.8, 60.0, 0.0) == pytest.approx(-7.8)
    assert width_change_by_shrinkage(100.0, 7.8, 60.0, 35.0) == 0.0
    assert width_change_by_shrinkage(100.0, 0.0, 30.0, 0.0) == 0.0


@given(st.floats(50, 600), st.floats(2, 12), st.floats(0, 30), st.floats(0, 30))
def test_wood_comes_back_to_its_width(width: float, shrinkage: float, one: float, other: float) -> None:
    moved = width + width_change_by_shrinkage(width, shrinkage, one, other)
    assert moved + width_change_by_shrinkage(moved, shrinkage, other, one) == pytest.approx(width)
    assert lumber_size(lumber_size(width, one, other, "width"), other, one, "width") == pytest.approx(width)


def test_stresses() -> None:
    assert bending_stress(-48_000.0, 960.0) == pytest.approx(50.0)
    assert shear_stress(-800.0, 40.0, 15.0) == pytest.approx(2.0)
    assert bearing_stress(600.0, 40.0, 30.0) == pytest.approx(0.5)
    assert axial_stress(-600.0, 40.0, 15.0) == pytest.approx(1.0)


#: A factor each, all primes, so that a product tells which ones are in it.
PRIMES = Factors(2, 3, 5, 7, 11, 13, 17, 19, 23, 29)


@pytest.mark.parametrize(
    ("of", "expected"),
    [
        # NDS 2018 Table 4.3.1, read off by hand.
        ("bending", 2 * 3 * 5 * 7 * 11 * 13 * 17 * 23),
        ("tension", 2 * 3 * 5 * 7 * 13),
        ("shear", 2 * 3 * 5 * 13),
        ("bearing", 3 * 5 * 13 * 19),
        ("compression", 2 * 3 * 5 * 7 * 13 * 29),
        ("modulus", 3 * 5 * 13),
    ],
)
def test_each_property_takes_its_own_factors(of: str, expected: int) -> None:
    assert design_value(of, 1.0, PRIMES) == expected  # type: ignore[arg-type]
    assert design_value(of, 7.0, Factors()) == 7.0  # type: ignore[arg-type]


@given(st.floats(1e-6, 1e6))
def test_stability_factors_lie_between_none_and_whole(ratio: float) -> None:
    for factor in (column_stability(ratio, 1.0), beam_stability(ratio, 1.0)):
        assert 0 < factor <= 1
        assert factor <= ratio
    assert column_stability(ratio * 2, 1.0) > column_stability(ratio, 1.0)


def test_a_very_slender_column_is_limited_by_buckling_alone() -> None:
    assert column_stability(1e-7, 1.0) == pytest.approx(1e-7, rel=1e-6)
    assert column_stability(0.5, 1.0, built_up=0.6) == pytest.approx(0.6 * column_stability(0.5, 1.0))
