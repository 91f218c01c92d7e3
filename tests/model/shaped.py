"""What the tests of shaped and slanted parts share.

The board is 20 x 100. Lying it runs across, its width deep, its thickness up; upright facing front it runs
up, its width across, its thickness deep.
"""

from __future__ import annotations

from typing import Any

HEAD = """\
plan "Test" in millimetres
stock board: actual 20 x 100 pine
stock ply: birch plywood 18
stock bar: round 30 red oak
outline box: 600 across, 300 deep, 400 tall, on floor
part other: board, across, flat, 90 long, left at 0, front at 0, on floor
"""
PLACE = "left at 0, front at 0, on floor"
LYING = f"board, across, flat, 500 long, {PLACE}"
UPRIGHT = f"board, upright, facing front, 300 tall, {PLACE}"
SHEET = f"ply, flat, 400 across, 200 deep, {PLACE}"
BAR = f"bar, across, 500 long, {PLACE}"
LEANING = f"{UPRIGHT}, tilted 8 degrees towards left"
RISING = f"board, facing front, rising towards right, 300 across, 300 tall, {PLACE}"


def plain(record: Any) -> Any:
    """A record as its name and its values, without where it is said."""
    if not hasattr(record, "_fields"):
        return tuple(plain(each) for each in record) if isinstance(record, tuple) else record
    values = [plain(getattr(record, field)) for field in record._fields if field != "span"]
    return (type(record).__name__, *values)
