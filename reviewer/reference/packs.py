"""The boxes and bags that fasteners are sold in."""

from __future__ import annotations

import math

from reviewer.reference.tables import Row, table


class Pack(Row):
    """A usual box of a kind of fastener, and how many are in it."""

    kind: str
    pieces: int
    source: str
    status: str


def packs_for(kind: str, needed: int) -> tuple[tuple[int, int], ...]:
    """Boxes that hold at least so many: ``((1, 200), (1, 50))``, one of 200 and one of 50.

    They leave as little over as boxes can, in as few as can be. Empty for what is sold singly, and for none.
    """
    sizes = sorted((row.pieces for row in table("packs.csv", Pack) if row.kind == kind), reverse=True)
    if not sizes or needed < 1:
        return ()
    # Every box is a whole number of the smallest, so the largest first is also the fewest.
    left = math.ceil(needed / sizes[-1]) * sizes[-1]
    found = []
    for size in sizes:
        number, left = divmod(left, size)
        if number:
            found.append((number, size))
    return tuple(found)
