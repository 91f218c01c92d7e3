"""Numbers as a plan's writer would write them, read back by the reader itself."""

from __future__ import annotations

import pytest

from reviewer.language.numbers import MM_PER, Unit, parsed
from reviewer.language.source import Source, Span
from reviewer.plan_words import number_text, plan_unit, quoted
from tests.support import review_of

INCH = 25.4


@pytest.mark.parametrize(
    ("amount", "unit", "within", "text"),
    [
        (35 * INCH, "in", 0.05, "35"),
        (4.5 * INCH, "in", 0.05, "4 1/2"),
        (0.75 * INCH, "in", 0.05, "3/4"),
        (INCH / 32, "in", 0.05, "1/32"),
        (INCH / 64, "in", 0.05, "1/64"),
        (INCH / 3, "in", INCH / 64, "11/32"),
        (INCH / 3, "in", 0.05, "0.3333"),
        (889.0, "mm", 0.05, "889"),
        (889.04, "mm", 0.05, "889"),
        (35.5, "mm", 0.05, "35.5"),
        (350.0, "cm", 0.05, "35"),
        (350.0, "m", 0.05, "0.35"),
    ],
)
def test_numbers(amount: float, unit: Unit, within: float, text: str) -> None:
    assert number_text(amount, unit, within) == text
    back, read_unit = parsed(text)
    assert read_unit is None
    assert abs(back * MM_PER[unit] - amount) <= within + 1e-9


@pytest.mark.parametrize(
    ("title", "unit"),
    [
        ("inches", "in"),
        ("inch", "in"),
        ("millimetres", "mm"),
        ("mm", "mm"),
        ("millimeters", "mm"),
        ("centimetres", "cm"),
        ("CM", "cm"),
        ("metres", "m"),
        ("Meters", "m"),
    ],
)
def test_the_unit_is_that_of_the_title(title: str, unit: Unit) -> None:
    text = f"""
    plan "Set in stone" in {title}
    stock board: actual 20 mm x 200 mm pine
    part board: board, across, flat, 600 mm long, left at 0, front at 0, on floor
    """
    review = review_of(text)
    assert plan_unit(review.source, review.plan) == unit


def test_words_over_two_lines_are_quoted_on_one() -> None:
    source = Source("a.plan", "between a\n    and b, on floor")
    assert quoted(source, Span(0, 20)) == "“between a and b,”"
