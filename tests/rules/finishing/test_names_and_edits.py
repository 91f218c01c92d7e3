"""Findings of coats call many copies as the plan does, and their edits take all that goes with a product."""

from __future__ import annotations

import pytest

from tests.support import findings_of, told

SHELF = """
plan "Window shelf" in inches
stock board: actual 3/4 x 7 1/4 yellow-poplar, 8 ft
part shelf: board, across, flat, 24 long, bottom at 0, left at 0, front at 0
finish white: on shelf
    1 coat of primer acrylic
    2 coats of enamel %s white, dry %s
    sand 220
    2 coats of polyurethane oil%s
"""
RACK = """
plan "Paint rack" in inches
stock board: actual 3/4 x 7 1/4 yellow-poplar, 8 ft
part shelf: board, across, flat, 24 long, left at 0, front at 0, bottom at 0
    6 copies every 8 up
finish white: on shelf.*
    1 coat of primer acrylic
    2 coats of enamel acrylic white, dry 24 h
    sand 220
    2 coats of polyurethane oil
"""


def test_copies_are_called_as_the_plan_calls_them() -> None:
    (line,) = told(RACK, "yellows-light-colour")
    assert ": On shelf.*, polyurethane oil turns amber" in line


@pytest.mark.parametrize(
    ("how", "left"),
    [
        ("", ""),
        (", dry 24 h", ""),
        (", dry 24 h, by brush", ", by brush"),
        (", by brush, dry 24 h", ", by brush"),
    ],
)
def test_the_drying_time_of_what_is_replaced_goes_with_it(how: str, left: str) -> None:
    plan = SHELF % ("acrylic", "24 h", how)
    (finding,) = findings_of(plan, "yellows-light-colour")
    assert finding.edit is not None
    start, end = finding.edit.span
    changed = plan[:start] + finding.edit.text + plan[end:]
    assert changed == plan.replace(f"polyurethane oil{how}", f"polyurethane waterborne{left}")
    assert findings_of(changed, "yellows-light-colour") == ()


def test_where_what_lies_below_must_dry_longer_first_that_is_said() -> None:
    # Waterborne over alkyd enamel waits 7 days (the compatibility table: common practice, no source).
    plan = SHELF % ("alkyd", "24 h", "")
    (finding,) = findings_of(plan, "yellows-light-colour")
    assert finding.edit is None  # a change of two places
    (line,) = told(plan, "yellows-light-colour")
    assert line.endswith(", once enamel alkyd white has dried 7 days.")
    assert findings_of(SHELF % ("alkyd", "7 days", ""), "yellows-light-colour")[0].edit is not None
