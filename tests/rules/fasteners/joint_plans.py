"""A rail between two legs, and a shelf between two sides, for the tests of joints."""

from __future__ import annotations


def frame(
    how: str, *, rail: str = "3/4 x 3 red oak", leg: str = "2 x 2 red oak", housed: str = "0", more: str = ""
) -> str:
    """One rail let into, or met by, two legs; centred on them."""
    return f"""
        plan "Frame" in inches
        stock leg: actual {leg}
        stock rail: actual {rail}
        outline frame: 40 across, 2 deep, 17 tall, on floor
        part leg for each of left, right: leg, upright, as tall as frame, flush with each of frame, on floor
            front at 0
        part rail: rail, across, on edge, between leg.left and leg.right, housed {housed} each end
            centred deep on leg.left, flush with top of frame
        join rail to leg.*: {how}
        {more}
        """


def case(how: str, *, board: str = "3/4 x 11 1/4 red oak", housed: str = "0", more: str = "") -> str:
    """One shelf between two sides."""
    return f"""
        plan "Case" in inches
        stock board: actual {board}
        outline case: 30 across, 11 1/4 deep, 40 tall, on floor
        part side for each of left, right: board, upright, facing side, as tall as case, on floor
            flush with each of case, flush with front of case
        part shelf: board, across, flat, between side.left and side.right, housed {housed} each end
            flush with front of case, bottom at 20
        join shelf to side.*: {how}
        {more}
        """


def edges(how: str, *, board: str = "3/4 x 5 pine", more: str = "") -> str:
    """A lip against the front edge of a shelf."""
    return f"""
        plan "Edge" in inches
        stock board: actual {board}
        part shelf: board, across, flat, 24 long, left at 0, front at 0, on floor
        part lip: board, across, on edge, 24 long, left at 0, against front of shelf, on floor
        join lip to shelf: {how}
        {more}
        """
