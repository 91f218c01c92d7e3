"""A part that is declared but could not be made is no unknown name elsewhere: its own fault is told once."""

from __future__ import annotations

from tests.support import look_at


def test_an_unknown_stock_is_told_once_beside_other_faults() -> None:
    found = look_at(
        """
        plan "Rack" in inches
        stock board: 1x8 pine
        part end for each of left, right: bord, upright, facing side, 9 tall, on floor
        part shelf: board, across, flat, 0 long, on floor, left at 0, front at 0
        join end.* to shelf: screws #8 x 2
        finish oil: on end.left, end.right, shelf, 2 coats of oil danish
        """
    )
    assert [problem.says for problem in found.problems] == [
        "No stock is called “bord”.",
        "The size comes to 0 in, and it must be more than 0.",
    ]
