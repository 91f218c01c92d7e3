"""A plan for the tests of pocket screws."""

from __future__ import annotations


def pockets(board: str, length: str, more: str = "", unit: str = "inches", tail: str = "") -> str:
    """A rail bored for pocket screws between two thick posts."""
    wide = "5 1/2" if unit == "inches" else "140"
    thick = "1 1/2" if unit == "inches" else "45"
    return f"""
        plan "Pockets" in {unit}
        stock board: actual {board}
        stock post: actual {thick} x {wide} pine
        outline frame: 24 in across, {wide} deep, 20 in tall, on floor
        part post for each of left, right: post, upright, facing side, 20 in tall, on floor, front at 0
            flush with each of frame
        part rail: board, across, flat, between post.left and post.right, front at 0, bottom at 5
        join rail to post.*: pocket screws {length}, 2 per end{more}
        {tail}
        """
