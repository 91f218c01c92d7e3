"""The beam by its closed forms and by what any beam must do."""

from __future__ import annotations

import math
from fractions import Fraction
from itertools import pairwise

import pytest
from beam_cases import BeamCase, random_beam, solved, total_load
from hypothesis import given
from hypothesis import strategies as st

from reviewer.mechanics.beam import (
    BeamResult,
    LineLoad,
    PointLoad,
    Unstable,
    long_term,
    second_moment,
    section_modulus,
    solve_beam,
)
from reviewer.units import TOLERANCE_MM

seeds = st.integers(0, 100_000)


def simple(
    points: list[PointLoad], lines: list[LineLoad], length: float = 900.0, ei: float = 2e9
) -> BeamResult:
    return solved(BeamCase(length, [0.0, length], ei, points, lines, []))


def test_simple_span_with_a_point_load_off_centre() -> None:
    # Structural handbooks: R = P·b/L, M = P·a·b/L, worst sag P·b·(L²-b²)^1.5 / (9·√3·L·E·I).
    length, a, force, ei = 900.0, 600.0, 400.0, 2e9
    b = length - a
    result = simple([PointLoad(a, force)], [])
    assert [r.force for r in result.reactions] == pytest.approx([force * b / length, force * a / length])
    bay = result.bays[0]
    assert (bay.kind, bay.length) == ("span", 900.0)
    assert bay.moment == pytest.approx(force * a * b / length)
    assert bay.moment_at == pytest.approx(a)
    assert bay.sag == pytest.approx(force * b * (length**2 - b**2) ** 1.5 / (9 * math.sqrt(3) * length * ei))
    assert bay.sag_at == pytest.approx(math.sqrt((length**2 - b**2) / 3))
    assert bay.shear == pytest.approx(-force * a / length)
    assert result.deflection(a) == pytest.approx(force * a**2 * b**2 / (3 * ei * length))


def test_simple_span_with_a_load_on_its_first_part() -> None:
    # Structural handbooks: R1 = w·a·(2L-a)/2L, M = R1²/2w, sag at x ≤ a as below.
    length, a, w, ei = 900.0, 350.0, 0.8, 2e9
    result = simple([], [LineLoad(0.0, a, w)])
    first = w * a * (2 * length - a) / (2 * length)
    assert result.reactions[0].force == pytest.approx(first)
    assert result.bays[0].moment == pytest.approx(first**2 / (2 * w))
    assert result.bays[0].moment_at == pytest.approx(first / w)
    for x in (100.0, 300.0):
        sag = w * x * (a**2 * (2 * length - a) ** 2 - 2 * a * x**2 * (2 * length - a) + length * x**3)
        assert result.deflection(x) == pytest.approx(sag / (24 * ei * length))
    beyond = w * a**2 * (length - 600) * (4 * 600 * length - 2 * 600**2 - a**2) / (24 * ei * length)
    assert result.deflection(600) == pytest.approx(beyond)


def test_overhang_with_a_load_at_its_tip() -> None:
    # Structural handbooks: tip P·a²·(L+a)/3EI, span rises P·a·L²/(9√3·E·I) at L/√3.
    length, a, force, ei = 800.0, 200.0, 250.0, 3e9
    for mirrored in (False, True):
        supports = [a, a + length] if mirrored else [0.0, length]
        tip = 0.0 if mirrored else length + a
        result = solved(BeamCase(length + a, supports, ei, [PointLoad(tip, force)], [], []))
        span, overhang = result.bays[::-1] if mirrored else result.bays
        assert (span.kind, overhang.kind) == ("span", "overhang")
        assert overhang.length == pytest.approx(a)
        assert overhang.sag == pytest.approx(force * a**2 * (length + a) / (3 * ei))
        assert overhang.sag_at == pytest.approx(tip)
        assert overhang.moment == pytest.approx(-force * a)
        assert span.rise == pytest.approx(force * a * length**2 / (9 * math.sqrt(3) * ei))
        assert span.sag == pytest.approx(0.0, abs=1e-12)
        far, near = (1, 0) if mirrored else (0, 1)
        assert result.reactions[far].force == pytest.approx(-force * a / length)
        assert result.reactions[near].force == pytest.approx(force * (length + a) / length)


def test_cantilever_from_either_end() -> None:
    for clamp, tip in ((0.0, 600.0), (600.0, 0.0)):
        result = solved(BeamCase(600.0, [], 1e9, [PointLoad(tip, 90.0)], [], [clamp]))
        (bay,) = result.bays
        assert (bay.kind, bay.length, bay.sag_at) == ("overhang", 600.0, tip)
        assert bay.sag == pytest.approx(90 * 600**3 / 3e9)
        assert bay.moment == pytest.approx(-90 * 600)
        assert abs(result.reactions[0].moment) == pytest.approx(90 * 600)


def test_propped_cantilever() -> None:
    # Structural handbooks: prop 3wL/8, clamped moment wL²/8.
    result = solved(BeamCase(700.0, [700.0], 1e9, [], [LineLoad(0, 700, 0.5)], [0.0]))
    assert result.reactions[1].force == pytest.approx(3 * 0.5 * 700 / 8)
    assert result.reactions[0].moment == pytest.approx(-0.5 * 700**2 / 8)


def test_a_load_over_a_support_goes_straight_down() -> None:
    result = solved(BeamCase(1000.0, [0.0, 400.0, 1000.0], 1e9, [PointLoad(400.0, 77.0)], [], []))
    assert [r.force for r in result.reactions] == pytest.approx([0.0, 77.0, 0.0], abs=1e-9)
    assert max(bay.sag for bay in result.bays) == 0.0


@pytest.mark.parametrize(
    ("supports", "count"), [([], 0), ([300.0], 1), ([300.0, 300.0 + TOLERANCE_MM / 2], 1), ([0.0, 0.04], 1)]
)
def test_fewer_than_two_supports_give_no_number(supports: list[float], count: int) -> None:
    assert solve_beam(900.0, supports, 1e9, [PointLoad(100, 1)]) == Unstable(count)


def test_supports_within_tolerance_are_one() -> None:
    apart = solved(BeamCase(900.0, [0.04, 449.98, 450.02, 899.97], 1e9, [PointLoad(200, 50)], [], []))
    one = solved(BeamCase(900.0, [0.0, 450.0, 900.0], 1e9, [PointLoad(200, 50)], [], []))
    assert [r.at for r in apart.reactions] == [0.0, 450.0, 900.0]
    assert apart == one


def test_a_bare_beam_lies_still() -> None:
    result = solved(BeamCase(900.0, [100.0, 500.0], 1e9, [], [], []))
    assert [(bay.sag, bay.rise, bay.moment, bay.shear) for bay in result.bays] == [(0, 0, 0, 0)] * 3
    assert [(bay.kind, bay.length) for bay in result.bays] == [
        ("overhang", 100.0),
        ("span", 400.0),
        ("overhang", 400.0),
    ]


@pytest.mark.parametrize(
    ("length", "supports", "ei", "points", "lines"),
    [
        (0.0, [0.0], 1e9, [], []),
        (math.nan, [0.0], 1e9, [], []),
        (900.0, [0.0, 900.0], 0.0, [], []),
        (900.0, [0.0, 901.0], 1e9, [], []),
        (900.0, [0.0, math.nan], 1e9, [], []),
        (900.0, [0.0, 900.0], 1e9, [PointLoad(-1.0, 5.0)], []),
        (900.0, [0.0, 900.0], 1e9, [PointLoad(5.0, math.inf)], []),
        (900.0, [0.0, 900.0], 1e9, [], [LineLoad(500.0, 400.0, 1.0)]),
        (900.0, [0.0, 900.0], 1e9, [], [LineLoad(500.0, 950.0, 1.0)]),
    ],
)
def test_what_is_no_beam_is_refused(
    length: float, supports: list[float], ei: float, points: list[PointLoad], lines: list[LineLoad]
) -> None:
    with pytest.raises(ValueError, match=r"beam|load"):
        solve_beam(length, supports, ei, points, lines)


def test_a_place_off_the_beam_is_refused() -> None:
    with pytest.raises(ValueError, match="off a beam"):
        simple([], []).deflection(901.0)


def exact_reactions(places: list[float], line: float) -> list[Fraction]:
    """The reactions under an even load by the equation of three moments, in whole fractions."""
    at = [Fraction(place) for place in places]
    w = Fraction(line)
    spans = [b - a for a, b in pairwise(at)]
    inner = len(spans) - 1
    rows = [[Fraction(0)] * inner for _ in range(inner)]
    right = []
    for k in range(inner):
        left, after = spans[k], spans[k + 1]
        rows[k][k] = 2 * (left + after)
        if k:
            rows[k][k - 1] = left
        if k + 1 < inner:
            rows[k][k + 1] = after
        right.append(-w * (left**3 + after**3) / 4)
    for k in range(1, inner):
        share = rows[k][k - 1] / rows[k - 1][k - 1]
        rows[k][k] -= share * rows[k - 1][k]
        right[k] -= share * right[k - 1]
    solution = [Fraction(0)] * inner
    for k in reversed(range(inner)):
        known = rows[k][k + 1] * solution[k + 1] if k + 1 < inner else 0
        solution[k] = (right[k] - known) / rows[k][k]
    moments = [Fraction(0), *solution, Fraction(0)]
    forces = [Fraction(0)] * len(at)
    for k, span in enumerate(spans):
        start = w * span / 2 + (moments[k + 1] - moments[k]) / span
        forces[k] += start
        forces[k + 1] += w * span - start
    return forces


@pytest.mark.parametrize("pattern", ["even", "tiny bays", "growing"])
def test_sixty_supports_keep_their_digits(pattern: str) -> None:
    # Against the equation of three moments, another method, worked in whole fractions.
    gaps = {
        "even": [50.0] * 59,
        "tiny bays": [0.0625 if k % 2 else 400.0 for k in range(59)],
        "growing": [0.0625 * 1.2**k for k in range(59)],
    }[pattern]
    places = [0.0]
    for gap in gaps:
        places.append(places[-1] + gap)
    case = BeamCase(places[-1], places, 1e9, [], [LineLoad(0.0, places[-1], 0.25)], [])
    ours = [reaction.force for reaction in solved(case).reactions]
    exact = [float(force) for force in exact_reactions(places, 0.25)]
    size = max(map(abs, exact))
    assert len(ours) == 60
    assert ours == pytest.approx(exact, rel=1e-9, abs=1e-9 * size)


@given(seeds)
def test_the_reactions_carry_the_whole_load(seed: int) -> None:
    case = random_beam(seed)
    result = solved(case)
    forces = [reaction.force for reaction in result.reactions]
    size = sum(map(abs, forces)) + sum(abs(p.force) for p in case.point_loads) + 1
    assert sum(forces) == pytest.approx(total_load(case), abs=1e-9 * size)
    about_start = (
        sum(p.at * p.force for p in case.point_loads)
        + sum(w.intensity * (w.end**2 - w.start**2) / 2 for w in case.line_loads)
        - sum(reaction.at * reaction.force for reaction in result.reactions)
        + sum(reaction.moment for reaction in result.reactions)
    )
    assert about_start == pytest.approx(0.0, abs=1e-9 * size * case.length)


@given(seeds)
def test_the_beam_rests_on_its_supports_and_is_unbroken(seed: int) -> None:
    case = random_beam(seed)
    result = solved(case)
    size = max(max(bay.sag, bay.rise) for bay in result.bays)
    for place in [reaction.at for reaction in result.reactions]:
        assert result.deflection(place) == pytest.approx(0.0, abs=1e-9 * size)
        before, after = max(0.0, place - 1e-7), min(case.length, place + 1e-7)
        assert result.deflection(before) == pytest.approx(result.deflection(after), abs=1e-6 * size)


@given(seeds, st.floats(1.01, 10.0))
def test_more_load_never_sags_less(seed: int, factor: float) -> None:
    case = random_beam(seed)
    heavier = case._replace(
        point_loads=[PointLoad(at, force * factor) for at, force in case.point_loads],
        line_loads=[LineLoad(a, b, w * factor) for a, b, w in case.line_loads],
    )
    for light, heavy in zip(solved(case).bays, solved(heavier).bays, strict=True):
        assert heavy.sag == pytest.approx(light.sag * factor, rel=1e-9, abs=1e-12)


@given(seeds, st.floats(1.0, 500.0))
def test_a_heavier_simple_shelf_never_sags_less(seed: int, more: float) -> None:
    # On one span every load bends it the same way, so one more load anywhere adds to the sag.
    case = random_beam(seed)
    loads = [PointLoad(at, abs(force)) for at, force in case.point_loads]
    shelf = BeamCase(
        case.length, [0.0, case.length], case.bending_stiffness, loads, [LineLoad(0, 100, 1)], []
    )
    fuller = shelf._replace(point_loads=[*loads, PointLoad(case.length * 0.3, more)])
    assert solved(fuller).bays[0].sag > solved(shelf).bays[0].sag


@given(seeds, st.floats(1.01, 100.0))
def test_a_stiffer_beam_sags_less_and_pushes_the_same(seed: int, factor: float) -> None:
    case = random_beam(seed)
    soft = solved(case)
    stiff = solved(case._replace(bending_stiffness=case.bending_stiffness * factor))
    assert stiff.reactions == soft.reactions
    for before, after in zip(soft.bays, stiff.bays, strict=True):
        assert after.sag == pytest.approx(before.sag / factor, rel=1e-12)
        assert after.moment == before.moment


@given(st.floats(100, 4000), st.floats(0.01, 5), st.floats(0.05, 0.95))
def test_a_support_under_a_loaded_span_never_bends_it_more(length: float, line: float, place: float) -> None:
    load = [LineLoad(0.0, length, line)]
    open_span = solved(BeamCase(length, [0.0, length], 1e9, [], load, []))
    held = solved(BeamCase(length, [0.0, length * place, length], 1e9, [], load, []))
    assert max(bay.moment for bay in held.bays) <= open_span.bays[0].moment
    assert max(bay.sag for bay in held.bays) < open_span.bays[0].sag
    middle = solved(BeamCase(length, [0.0, length / 2, length], 1e9, [], load, []))
    assert abs(middle.moment(length / 2)) <= open_span.moment(length / 2) * (1 + 1e-9)


@given(seeds)
def test_a_beam_and_its_mirror_agree(seed: int) -> None:
    case = random_beam(seed)
    mirror = BeamCase(
        case.length,
        [case.length - at for at in case.supports],
        case.bending_stiffness,
        [PointLoad(case.length - at, force) for at, force in case.point_loads],
        [LineLoad(case.length - b, case.length - a, w) for a, b, w in case.line_loads],
        [case.length - at for at in case.clamps],
    )
    one, other = solved(case), solved(mirror)
    size = max(max(bay.sag, bay.rise) for bay in one.bays)
    for bay, reflected in zip(one.bays, reversed(other.bays), strict=True):
        assert reflected.kind == bay.kind
        assert reflected.sag == pytest.approx(bay.sag, abs=1e-8 * size)
        assert reflected.rise == pytest.approx(bay.rise, abs=1e-8 * size)


@given(seeds)
def test_the_order_of_loads_and_supports_does_not_matter(seed: int) -> None:
    case = random_beam(seed)
    turned = case._replace(
        supports=case.supports[::-1], point_loads=case.point_loads[::-1], line_loads=case.line_loads[::-1]
    )
    assert solved(turned) == solved(case)


def test_section_of_a_rectangle() -> None:
    assert second_moment(40.0, 12.0) == pytest.approx(5760.0)
    assert section_modulus(40.0, 12.0) == pytest.approx(960.0)


def test_long_term_grows_only_what_lasts() -> None:
    assert long_term(2.0, 0.5, 1.5) == pytest.approx(3.5)
