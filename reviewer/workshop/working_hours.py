"""The maker's own hours: which of them are free, and taking some for a work.

Times are hours from midnight before the first day.
"""

from __future__ import annotations

import math
from bisect import bisect, insort

from reviewer.workshop.drying_times import DAY

#: Times are told to a quarter of an hour; work and waits are rounded up to it.
QUARTER = 0.25
#: A timetable over more days or works than these is told as too long, not worked out.
MOST_DAYS, MOST_WORKS = 3660, 2000


def rounded_up(amount: float) -> float:
    """Hours, up to the next quarter."""
    return math.ceil(amount / QUARTER - 1e-9) * QUARTER


class FreeHours:
    """The hours of the maker that are still free."""

    def __init__(self, begins: float, hours: float) -> None:
        self.begins, self.hours = begins, hours
        self.taken: list[tuple[float, float]] = []

    def _free(self, after: float) -> tuple[float, float]:
        """The first stretch of free working time that does not begin before ``after``."""
        day = math.floor(after / DAY)
        place = max(0, bisect(self.taken, (after, math.inf)) - 1)
        while True:
            low = max(after, day * DAY + self.begins)
            high = day * DAY + self.begins + self.hours
            while low < high:
                while place < len(self.taken) and self.taken[place][1] <= low:
                    place += 1
                if place == len(self.taken) or self.taken[place][0] >= high:
                    return low, high
                start, end = self.taken[place]
                if start > low:
                    return low, start
                low = end
            day += 1

    def take(self, after: float, hours: float, whole: bool) -> tuple[tuple[float, float], ...] | None:
        """When so many hours of work can be done; None where they would take more days than are told."""
        spans: list[tuple[float, float]] = []
        left, at = hours, after
        while left > 1e-9:
            low, high = self._free(at)
            if low > MOST_DAYS * DAY:
                return None
            fits = high - low >= left - 1e-9
            if whole and not fits:
                # A coat longer than the day begins with it and is gone on with until it is done.
                day = math.floor(low / DAY) * DAY + self.begins
                if hours > self.hours and abs(low - day) < 1e-9 and high - low >= self.hours - 1e-9:
                    spans.append((low, low + left))
                    break
                at = high
                continue
            spans.append((low, min(high, low + left)))
            left -= spans[-1][1] - spans[-1][0]
            at = high
        for span in spans:
            insort(self.taken, span)
        return tuple(spans)
