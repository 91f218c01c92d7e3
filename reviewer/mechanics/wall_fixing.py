"""What fixes a piece to a framed wall: the studs behind it, and the pull on each of its screws.

Lengths mm, forces N, moments N·mm. (n) are the numbers of the project's safety reference, section 2.
"""

from __future__ import annotations

import math
from bisect import bisect_left, bisect_right
from collections.abc import Sequence
from typing import NamedTuple

#: Beginnings of the studs that are tried, times fasteners that are looked at: beyond any furniture.
_MOST_LOOKS = 300_000
#: More studs than any wall of furniture has: beyond, they are not listed.
MOST_STUDS = 400
#: Nearer than this is the same place, mm.
_CLOSE = 1e-6


class Studs(NamedTuple):
    """How many studs lie behind a width: wherever the piece stands, and where it stands best.

    ``places`` are their middles where it is known where they lie, mm, in order (no more than are drawn);
    else None. Then both counts are what lies behind it where it stands.
    """

    certain: int
    most: int
    places: tuple[float, ...] | None = None


def studs_behind(width: float, spacing: float) -> Studs:
    """The middles of studs behind a width: at least ⌊w / s⌋, at most ⌈w / s⌉. Plain counting."""
    if width <= 0 or spacing <= 0:
        return Studs(0, 0)
    return Studs(math.floor(width / spacing + 1e-9), math.ceil(width / spacing - 1e-9))


class TrueStuds(NamedTuple):
    """Where the studs of a wall lie, mm along it: single ones, or a row without end, or both.

    No single one is one of the row over again (``true_studs`` sees to that).
    """

    places: tuple[float, ...] = ()  # in order
    first: float = 0.0
    spacing: float = 0.0  # 0: no row

    def between(self, low: float, high: float, most: int = MOST_STUDS) -> tuple[float, ...]:
        """The middles of the studs from one place to another, in order; the first ones if there are more."""
        first, last = bisect_left(self.places, low - _CLOSE), bisect_right(self.places, high + _CLOSE)
        found = list(self.places[first:last])
        if self.spacing > 0:
            start = math.ceil((low - _CLOSE - self.first) / self.spacing)
            end = math.floor((high + _CLOSE - self.first) / self.spacing)
            found += [self.first + step * self.spacing for step in range(start, min(end + 1, start + most))]
        return tuple(sorted(found)[:most])

    def moved(self, way: float) -> TrueStuds:
        """The same studs, so far further along the wall."""
        return TrueStuds(tuple(place + way for place in self.places), self.first + way, self.spacing)

    def nearest(self, place: float) -> float | None:
        """The middle of the stud that lies nearest to a place; None where there is none."""
        number = bisect_left(self.places, place)
        found = list(self.places[max(0, number - 1) : number + 1])
        if self.spacing > 0:
            found.append(self.first + round((place - self.first) / self.spacing) * self.spacing)
        return min(found, key=lambda stud: (round(abs(stud - place), 6), stud), default=None)

    def beside(self, low: float, high: float) -> tuple[float | None, float | None]:
        """The middles of the next stud below a place and the next above another; None where there is none."""
        under, over = bisect_left(self.places, low - _CLOSE), bisect_right(self.places, high + _CLOSE)
        below, above = list(self.places[max(0, under - 1) : under]), list(self.places[over : over + 1])
        if self.spacing > 0:
            below.append(
                self.first + (math.ceil((low - _CLOSE - self.first) / self.spacing) - 1) * self.spacing
            )
            above.append(
                self.first + (math.floor((high + _CLOSE - self.first) / self.spacing) + 1) * self.spacing
            )
        return max(below, default=None), min(above, default=None)


def studs_reached(studs: TrueStuds, low: float, high: float, off: float) -> Studs:
    """The studs that a screw between two places gets into, no further than ``off`` from their middles."""
    found = studs.between(low - off, high + off) if high >= low else ()
    return Studs(len(found), len(found), found)


def shift_onto(
    studs: TrueStuds, low: float, high: float, off: float, wanted: int, most: float, side: float
) -> float | None:
    """The least way along the wall, mm, after which so many studs are reached between two places.

    ``side`` is 1.0 for ways towards higher places and -1.0 for the others, whose ways are below 0. None where
    no way as far as ``most`` does; 0.0 where they are reached now. At the end of the least way a stud has
    just come in at an end, so only those ways are tried.
    """
    if studs_reached(studs, low, high, off).most >= wanted:
        return 0.0
    ways = {
        way
        for stud in studs.between(low - off - most, high + off + most)
        for way in (stud - off - high, stud + off - low)
        if 0 < way * side <= most
    }
    for way in sorted(ways, key=abs):
        if studs_reached(studs, low + way, high + way, off).most >= wanted:
            return way
    return None


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
        return tuple(round(first + (low + number) * spacing, 3) for number in _spread(count, studs))
    found: list[float | None] = []
    for place in row.places:
        stud = first + round((place - first) / spacing) * spacing
        found.append(round(stud, 3) if abs(place - stud) <= off + 1e-6 else None)
    return tuple(found)


def _spread(count: int, studs: int) -> list[int]:
    """The numbers of the studs that some fasteners go into: the outer ones first, shared out evenly."""
    if count == 1:
        return [studs // 2]
    if count < studs:
        return [number * (studs - 1) // (count - 1) for number in range(count)]
    return [number * studs // count for number in range(count)]


def on_true_studs(
    rows: Sequence[Row], studs: TrueStuds, off: float, load: float | None = None
) -> tuple[tuple[float | None, ...], ...]:
    """The same where it is known where the studs lie: what is fixed in its place meets one or does not.

    A row that may be moved goes onto the studs that it reaches, the outer ones first; a single fastener onto
    the one nearest to the ``load``.
    """
    found: list[tuple[float | None, ...]] = []
    for row in rows:
        count = len(row.places)
        if row.reach is None:
            near = [studs.nearest(place) for place in row.places]
            found.append(
                tuple(
                    stud if stud is not None and abs(stud - place) <= off + _CLOSE else None
                    for place, stud in zip(row.places, near, strict=True)
                )
            )
            continue
        reached = studs.between(row.reach[0] - off, row.reach[1] + off)
        if not reached:
            found.append((None,) * count)
        elif count == 1:
            middle = sum(row.reach) / 2 if load is None else load
            found.append((min(reached, key=lambda stud: (round(abs(stud - middle), 6), stud)),))
        else:
            found.append(tuple(reached[number] for number in _spread(count, len(reached))))
    return tuple(found)


def slid(
    reach: tuple[float, float], every: float, studs: TrueStuds, off: float, load: float | None = None
) -> tuple[float, ...]:
    """The places of a row of fasteners of one spacing, slid along its joint so that most of them meet studs.

    As many as the joint has room for; of equal rows the one with fewer that miss, then the one nearest to the
    middles of its studs, then the one whose middle is nearest to the ``load``. Empty where none meets a stud.
    """
    if reach[1] - reach[0] > MOST_STUDS * every:
        return ()  # no row of screws that anyone drives
    found = studs.between(reach[0] - off, reach[1] + off)
    firsts: dict[int, float] = {}
    for stud in found:
        for place in (stud, stud - off, stud + off):
            inside = min(max(place, reach[0]), reach[1])
            firsts.setdefault(round((inside - reach[0]) % every * 1000), inside)
    best: tuple[float, ...] = ()
    most = (0, 0, -math.inf, -math.inf)
    looks = max(3, round(_MOST_LOOKS / (1 + (reach[1] - reach[0]) / every)))
    for first in list(firsts.values())[:looks]:
        start = math.ceil((reach[0] - first) / every - _CLOSE)
        end = math.floor((reach[1] - first) / every + _CLOSE)
        places = tuple(first + step * every for step in range(start, end + 1))
        (met,) = on_true_studs([Row(places)], studs, off)
        beside = [abs(stud - place) for stud, place in zip(met, places, strict=True) if stud is not None]
        aside = 0.0 if load is None else -round(abs(math.fsum(places) / len(places) - load), 1)
        good = (len(beside), len(beside) - len(places), -round(math.fsum(beside), 1), aside)
        if good > most:
            most, best = good, places
    return best


def pulls(moment: float, heights: Sequence[float]) -> tuple[float, ...]:
    """The pull on each screw of a piece that hangs on the wall, N.

    ``heights`` are those above the line where it bears on the wall, mm: a stiff piece turns about that
    line, so each pull goes with its height. T = M·h / Σh²; for screws of one height M / (n·h), which is
    (13). Screws at the line or below hold nothing back.
    """
    squares = math.fsum(height * height for height in heights if height > 0)
    return tuple(moment * max(height, 0.0) / squares if squares else math.inf for height in heights)
