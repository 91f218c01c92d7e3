"""lap-short: half laps that join boards end to end."""

from __future__ import annotations

import pytest

from tests.support import findings_of, told

RULE = "lap-short"
RAIL = """
    plan "Long rail" in inches
    stock rail: actual 1 1/2 x 3 1/2 pine
    part one: rail, across, on edge, 40 long, left at 0, front at 0, on floor
    part two: rail, {way}, on edge, 40 long, left at {at}, front at 0, on floor
    join one to two: half lap, glue pva
    """


@pytest.mark.parametrize(("at", "flagged"), [("33", False), ("33 1/16", True), ("37", True)])
def test_two_widths(at: str, flagged: bool) -> None:
    # Twice 3 1/2 in is 7 in.
    assert bool(findings_of(RAIL.format(way="across", at=at), RULE)) is flagged


def test_the_words() -> None:
    assert told(RAIL.format(way="across", at="37"), RULE) == [
        "warning one, two @ half lap: The half lap of one and two is 3 in long on boards 3 1/2 in wide; end to end "
        "7 in is the least (common practice, no source), so 4 in is missing. → Let them lap 7 in or more, or put "
        "a third board beside the joint."
    ]


def test_laps_that_cross() -> None:
    assert findings_of(RAIL.format(way="deep", at="20"), RULE) == ()
