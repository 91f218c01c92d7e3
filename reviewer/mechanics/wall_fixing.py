"""What fixes a piece to a framed wall: the studs behind it, and the pull on each of its screws.

Lengths mm, forces N, moments N·mm. (n) are the numbers of the project's safety reference, section 2.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import NamedTuple

#: Beginnings of the studs that are tried, times fasteners that are looked at: beyond any furniture.
_MOST_LOOKS = 300_000


class Studs(NamedTuple):
    """How many studs lie behind a width: wherever the piece stands, and where it stands best."""

    certain: int
    most: int


def studs_behind(width: float, spacing: float) -> Studs:
    """The middles of studs behind a width: at least ⌊w / s⌋, at most ⌈w / s⌉. Plain counting."""
    if width <= 0 or spacing <= 0:
        return Studs(0, 0)
    return Studs(math.floor(width / spacing + 1e-9), math.ceil(width / spacing - 1e-9))


class Row(NamedTuple):
    """Fasteners of one joint by their places along the wall, mm.

    ``reach`` is where the joint begins and ends if they may stand anywhere in it, else None: then they
    stand at their places.
    """

    places: tuple[float, ...]
    reach: tuple[float, float] | None = None


def on_studs(
    rows: Sequence[Row], spacing: float, off: float, load: float | None = None
) -> tuple[tuple[float | None, ...], ...]:
    """Where the fasteners of some rows meet studs when these lie as luckily as they can.

    Row by row, for each fastener the middle of its stud, or None for one between studs. A place meets a
    stud no further than ``off`` from its middle. Studs are ``spacing`` apart and may begin anywhere; of
    equal choices the one with the most different studs counts, then the one whose studs lie best about a
    ``load``. In the luckiest of all choices some place, or some end of a joint, is at the rim or the middle
    of a stud, or the load is at or midway between studs, so only those are tried.
    """
    ways: dict[int, float] = {}
    for row in rows:
        places = row.places if row.reach is None else (*row.reach, sum(row.reach) / 2)
        for place in places:
            for first in (place, place - off, place + off):
                ways.setdefault(round(first % spacing), first)
    if load is not None:
        for first in (load, load + spacing / 2):
            ways.setdefault(round(first % spacing), first)
    best: tuple[tuple[float | None, ...], ...] = tuple((None,) * len(row.places) for row in rows)
    most = (0, 0, -math.inf)
    most_ways = max(3, _MOST_LOOKS // max(1, sum(len(row.places) for row in rows)))
    for first in list(ways.values())[:most_ways]:
        met = tuple(_met(row, first, spacing, off) for row in rows)
        found = [stud for row in met for stud in row if stud is not None]
        if not found:
            continue
        aside = 0.0 if load is None else -round(abs(math.fsum(found) / len(found) - load), 1)
        if (len(found), len(set(found)), aside) > most:
            most, best = (len(found), len(set(found)), aside), met
    return best


def _met(row: Row, first: float, spacing: float, off: float) -> tuple[float | None, ...]:
    """The stud of each fastener of a row, when one stud is at ``first``."""
    if row.reach is not None:
        low = math.ceil((row.reach[0] - first) / spacing - 1e-9)
        high = math.floor((row.reach[1] - first) / spacing + 1e-9)
        if high < low:
            return (None,) * len(row.places)
        studs = high - low + 1
        count = len(row.places)
        # Spread over the studs that there are, the outer ones first.
        return tuple(
            round(first + (low + (number * (studs - 1) // max(count - 1, 1))) * spacing, 3)
            if studs <= count or count > 1
            else round(first + (low + studs // 2) * spacing, 3)
            for number in range(count)
        )
    found: list[float | None] = []
    for place in row.places:
        stud = first + round((place - first) / spacing) * spacing
        found.append(round(stud, 3) if abs(place - stud) <= off + 1e-6 else None)
    return tuple(found)


def pulls(moment: float, heights: Sequence[float]) -> tuple[float, ...]:
    """The pull on each screw of a piece that hangs on the wall, N.

    ``heights`` are those above the line where it bears on the wall, mm: a stiff piece turns about that
    line, so each pull goes with its height. T = M·h / Σh²; for screws of one height M / (n·h), which is
    (13). Screws at the line or below hold nothing back.
    """
    squares = math.fsum(height * height for height in heights if height > 0)
    return tuple(moment * max(height, 0.0) / squares if squares else math.inf for height in heights)
