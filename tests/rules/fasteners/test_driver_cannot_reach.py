"""driver-cannot-reach: what stands in the way, how much room there is, and the step that helps."""

from __future__ import annotations

import pytest

from tests.support import findings_of, told

RULE = "driver-cannot-reach"

RACK = """
plan "Rack" in {unit}
stock board: actual 3/4 in x 9 1/4 in pine
outline rack: {wide} in across, 9 1/4 in deep, 24 in tall, on floor
part side for each of left, right: board, upright, facing side, as tall as rack, on floor
    flush with each of rack, flush with front of rack
part shelf: board, across, flat, between side.left and side.right, bottom 4 in above floor
    flush with front of rack
join shelf to side.*: pocket screws 1 1/4 in, 2 per end, 1 in from ends
{more}
"""


def rack(wide: str = "5 1/2", unit: str = "inches", more: str = "") -> str:
    return RACK.format(wide=wide, unit=unit, more=more)


def test_no_tool_gets_in() -> None:
    assert told(rack(), RULE) == [
        "error shelf, side.left, side.right @ pocket screws 1 1/4 in: side.right and side.left stand in front of "
        "the pocket screws from shelf into side.left and side.right, and no order of work leaves the way free: a "
        "screwdriver needs 8 5/16 in (common practice, no source) and there is 2 21/32 in, so 5 21/32 in is "
        "missing. → Screw through side.left from its other side into the end of shelf instead: there the way is "
        "free."
    ]


def test_in_millimetres() -> None:
    (said,) = told(rack(unit="millimetres"), RULE)
    assert " mm (common practice" in said
    assert " in (" not in said


def test_only_an_angle_driver_gets_in() -> None:
    (said,) = told(rack("8"), RULE)
    assert said.startswith("note shelf")
    assert said.endswith(
        "Only an angle driver gets in. → Have an angle driver at hand, no longer than 4 in with its bit."
    )


@pytest.mark.parametrize("more", ["limit short-driver-length: 8", "limit short-driver-length: 200 mm"])
def test_a_shop_without_one(more: str) -> None:
    (said,) = told(rack("8", more=more), RULE)
    assert said.startswith("error")


def test_a_wide_rack_is_quiet() -> None:
    assert told(rack("24"), RULE) == []


ORDER = """
plan "Order" in inches
stock board: actual 3/4 x 5 1/2 pine
part low: board, across, flat, 20 long, left at 0, front at 0, on floor
part middle: board, across, flat, 20 long, left at 0, front at 0, on low
part top: board, across, flat, 20 long, left at 0, front at 0, on middle
join middle to low: screws #8 x 1 1/4, 2 per joint, 2 from ends, 2 from edge, from above
join top to middle: screws #8 x 1 1/4, 2 per joint, from above
{steps}
"""


def test_another_order_would_do() -> None:
    late = 'step "Lid": join top, middle\nstep "Body": join low'
    (said,) = told(ORDER.format(steps=late), RULE)
    assert said == (
        "error middle, low @ screws #8 x 1 1/4: top stands in front of the screws from middle into low, when “Body” "
        "joins them: a screwdriver needs 9 in (common practice, no source) and there is no room at all, so 9 in is "
        "missing. → Join middle to low in a step before top is put in: then the way is free."
    )
    assert not findings_of(ORDER.format(steps=""), RULE)
