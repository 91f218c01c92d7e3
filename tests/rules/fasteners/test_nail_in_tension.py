"""nail-in-tension: what hangs by nails or turns them out, and what holds besides."""

from __future__ import annotations

import pytest

from reviewer.findings import Severity
from tests.support import findings_of, told

RULE = "nail-in-tension"


def tray(join: str, load: str = "30 lb") -> str:
    return f"""
        plan "Tray" in inches
        stock board: 1x4 pine
        stock sheet: birch plywood 1/2
        outline box: 20 across, 12 deep, 3 1/2 tall, bottom 30 above floor, against wall
        part end for each of left, right: board, deep, on edge, 12 long, flush with each of box
            flush with front of box, flush with top of box, against wall
        part floor-board: sheet, across, flat, under end.left, from left of box to right of box
            from front of box to back of box
        join end.* to wall: screws #10 x 3, 2 per joint
        join floor-board to end.*: {join}, from below
        load floor-board: {load}
        room shed: indoors, wall behind, studs every 16, no children
        """


def test_a_floor_nailed_on_from_below() -> None:
    (said,) = told(tray("nails 1 1/2, 4 per joint"), RULE)
    assert said.startswith("error floor-board, end.left, end.right @ nails 1 1/2: floor-board hangs by nails")
    assert "on each of them along itself, day and night" in said
    assert "Use screws #" in said


def test_each_nail_bears_its_share() -> None:
    four = findings_of(tray("nails 1 1/2, 4 per joint"), RULE)[0]
    eight = findings_of(tray("nails 1 1/2, 8 per joint"), RULE)[0]
    (one, two) = (each.values["pull"] for each in (four, eight))
    assert not isinstance(one, str)
    assert not isinstance(two, str)
    assert one.amount == pytest.approx(2 * two.amount)


@pytest.mark.parametrize(
    "join",
    ["screws #8 x 1 1/4, 4 per joint", "nails 1 1/2, 4 per joint, glue pva", "bolts 1/4 x 2, 2 per joint"],
)
def test_what_holds_a_pull_is_quiet(join: str) -> None:
    assert findings_of(tray(join), RULE) == ()


def test_trim_is_quiet() -> None:
    text = tray("nails 1 1/2, 40 per joint").replace("        load floor-board: 30 lb\n", "")
    assert findings_of(text, RULE) == ()


def test_nails_that_are_sheared_are_quiet() -> None:
    text = """
        plan "Crate side" in inches
        stock board: 1x4 pine
        outline box: 20 across, 12 deep, 12 tall, on floor
        part post for each of left, right: board, upright, facing front, as tall as box, on floor
            flush with each of box, flush with back of box
        part slat: board, across, on edge, 20 long, against front of post.left, left at 0, bottom 6 above floor
        join slat to post.*: nails 1 1/4, 3 per joint, from front
        load slat: 10 lb
        """
    assert [f for f in findings_of(text, RULE) if f.weight is Severity.ERROR] == []
