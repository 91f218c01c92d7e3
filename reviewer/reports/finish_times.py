"""The days and hours of a timetable in words."""

from __future__ import annotations

import math
from datetime import timedelta

from reviewer.workshop.drying_times import DAY
from reviewer.workshop.finish_timetable import Timetable

_WEEKDAYS = ("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun")
_MONTHS = ("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")


def day_said(timetable: Timetable, at: float) -> str:
    """``Mon 1 Mar 2027``, or ``day 1`` where the plan names no start day."""
    day = math.floor(at / DAY)
    if timetable.start is None:
        return f"day {day + 1}"
    there = timetable.start + timedelta(days=day)
    return f"{_WEEKDAYS[there.weekday()]} {there.day} {_MONTHS[there.month - 1]} {there.year}"


def clock_said(at: float) -> str:
    """``09:15``."""
    minutes = round((at - math.floor(at / DAY) * DAY) * 60)
    return f"{minutes // 60:02d}:{minutes % 60:02d}"


def short_time_said(timetable: Timetable, at: float) -> str:
    """``Mon 1 Mar, 09:15``, where the year stands near."""
    day = day_said(timetable, at)
    return f"{day.rsplit(' ', 1)[0] if timetable.start else day}, {clock_said(at)}"


def time_said(timetable: Timetable, at: float) -> str:
    """``Mon 1 Mar 2027, 09:15``."""
    return f"{day_said(timetable, at)}, {clock_said(at)}"
