"""Numbers as makers write them. Unit lengths: the international inch of 25.4 mm, exact by definition."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from reviewer.language.numbers import NumberError, parsed
from reviewer.model.plan import Measure
from tests.language.reading_texts import told, understood

PART = "stock stud: 2x4 pine\npart a: stud, across, flat, 9 long, left at 0, front at 0, on floor\n"


def measure(text: str, unit: str = "inches") -> float:
    """A measure of a plan in millimetres."""
    found = understood(f'plan "a" in {unit}\n{PART}h = {text}\n')
    assert found.plan is not None, [problem.says for problem in found.problems]
    one: Measure = found.plan.measures[0]
    return one.amount


@pytest.mark.parametrize(
    ("text", "inches"),
    [
        ("2", 2),
        ("2.5", 2.5),
        ("2 1/2", 2.5),
        ("2-1/2", 2.5),
        ("2½", 2.5),
        ("2 ½", 2.5),
        ("½", 0.5),
        ("⅞", 0.875),
        ("3/4", 0.75),
        ("23/32", 0.71875),
        ("2\u00a01/2", 2.5),
        ("2  1/2", 2.5),
        ('2 1/2"', 2.5),
        ("2 1/2 in", 2.5),
        ("2 1/2 inches", 2.5),
        ("2½”", 2.5),
        ("5 ft", 60),
        ("5'", 60),
        ("5’", 60),
        ("5 ft 5", 65),
        ("5 ft 5 in", 65),
        ("5' 5\"", 65),
        ("5’ 5″", 65),
        ("5'5\"", 65),
        ("5 feet 5 1/2 inches", 65.5),
        ("5 ft 5½", 65.5),
        ("1/2 ft", 6),
        ("25.4 mm", 1),
        ("2.54 cm", 1),
        ("0.0254 m", 1),
        ("254mm", 10),
        ("1 metre", 1000 / 25.4),
        ("1 meter", 1000 / 25.4),
    ],
)
def test_number_in_an_inch_plan(text: str, inches: float) -> None:
    assert measure(text) == pytest.approx(inches * 25.4, abs=1e-9)


@pytest.mark.parametrize(
    ("text", "unit", "mm"),
    [
        ("18", "millimetres", 18),
        ("18", "mm", 18),
        ("18", "millimeters", 18),
        ("18 mm", "inches", 18),
        ("1.2 m", "mm", 1200),
        ("1.2", "metres", 1200),
        ("1.2", "m", 1200),
        ("60", "cm", 600),
        ("60", "centimeters", 600),
        ("3 in", "mm", 76.2),
        ("1 ft", "cm", 304.8),
        ("٣", "mm", 3),
    ],
)
def test_bare_number_is_in_the_plans_unit_and_any_may_carry_its_own(text: str, unit: str, mm: float) -> None:
    assert measure(text, unit) == pytest.approx(mm, abs=1e-9)


@pytest.mark.parametrize(
    ("text", "inches"),
    [
        ("1 + 2 * 3", 7),
        ("(1 + 2) * 3", 9),
        ("10 - 4 - 3", 3),
        ("12 / 4 / 3", 1),
        ("17 1/2 - 1 1/2", 16),
        ("2 * 3 ft - 1", 71),
        ("1/2 / 2", 0.25),
        ("(10 - (3 + 2)) * 2", 10),
    ],
)
def test_sums(text: str, inches: float) -> None:
    assert measure(text) == pytest.approx(inches * 25.4, abs=1e-9)


def test_minus_needs_its_spaces_between_names_and_not_between_numbers() -> None:
    assert measure("10 - 4") == pytest.approx(6 * 25.4)
    (one,) = told(f'plan "a" in inches\n{PART}k = 10\nh = k-4\n')
    assert one.startswith("k-4: “k-4” is read as one name")


@pytest.mark.parametrize("sizes", ["1 1/2 x 3 1/2", "1 1/2 × 3 1/2", "1 1/2 X 3 1/2", "1 1/2x3 1/2", "1½×3½"])
def test_two_sizes_with_any_cross_between(sizes: str) -> None:
    text = f'plan "a" in inches\nstock s: actual {sizes} pine\n'
    text += "part a: s, across, flat, 9 long, left at 0, front at 0, on floor\n"
    plan = understood(text).plan
    assert plan is not None
    assert plan.stocks["s"].thickness == pytest.approx(38.1)
    assert plan.stocks["s"].width == pytest.approx(88.9)


@pytest.mark.parametrize("text", ["30 x 80", "30x80", "30×80", "30 x80", "30x 80", "30 in x 6 ft 8"])
def test_two_measures_may_touch_their_x_where_no_nominal_size_can_stand(text: str) -> None:
    plan = understood(f'plan "a" in inches\n{PART}room: doorway {text}\n').plan
    assert plan is not None
    assert plan.room is not None
    assert plan.room.doorway == pytest.approx((30 * 25.4, 80 * 25.4))


def test_fraction_before_an_x() -> None:
    text = 'plan "a" in inches\nstock s: actual 3/4x5 1/2 pine\n'
    plan = understood(text + "part a: s, across, flat, 9 long, left at 0, front at 0, on floor\n").plan
    assert plan is not None
    assert (plan.stocks["s"].thickness, plan.stocks["s"].width) == pytest.approx((0.75 * 25.4, 5.5 * 25.4))


@pytest.mark.parametrize("text", ["1/0", "2 1/0", "5 ft 1/0"])
def test_fraction_over_nothing_is_refused(text: str) -> None:
    with pytest.raises(NumberError, match="nothing below its line"):
        parsed(text)


@settings(max_examples=300, derandomize=True, deadline=None)
@given(st.integers(0, 400), st.integers(0, 63), st.sampled_from([2, 4, 8, 16, 32, 64]))
def test_any_fraction_of_an_inch(whole: int, over: int, under: int) -> None:
    for text in (f"{whole} {over}/{under}", f"{whole}-{over}/{under}"):
        assert parsed(text) == (pytest.approx(whole + over / under), None)
        assert parsed(f"{text} in") == (pytest.approx(whole + over / under), "in")
    assert parsed(f"{whole} ft {over}/{under}") == (pytest.approx(12 * whole + over / under), "in")
