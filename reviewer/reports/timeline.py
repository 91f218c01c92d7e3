"""The timetable of a finish as a drawing: days run down the sheet as on a rod, each finish in a column.

Work is a bar, drying a dashed line to the tick from which the next step may follow. Hours at night and days
without work are drawn short. Two finishes stand on a sheet, so that it can be read on a phone.
"""

from __future__ import annotations

import math
from bisect import bisect_right
from typing import NamedTuple

from reviewer.reports.finish_times import clock_said, day_said, time_said
from reviewer.reports.finishing import ending_said, what_said
from reviewer.reports.svg import Point, hatching, label, line, number, outline, words
from reviewer.workshop.drying_times import DAY
from reviewer.workshop.finish_timetable import Ending, Task, Timetable

#: The room at the left for days, a column, and a bar in it; drawing units.
GUTTER, COLUMN, BAR = 84.0, 158.0, 14.0
ABOVE, BELOW = 30.0, 64.0
#: A working hour, the night, and a stretch of days without work.
HOUR, NIGHT, IDLE = 34.0, 18.0, 30.0
#: No sheet is taller than this by its working hours.
TALLEST = 2400.0
#: Rows of words, and letters of a word beside a bar.
ROW, LETTERS = 13.0, 18
ON_A_SHEET = 2


class _Scale:
    """From hours to the height on the sheet."""

    def __init__(self, timetable: Timetable) -> None:
        begins, hours = timetable.begins, timetable.hours
        worked = sorted({math.floor(start / DAY) for task in timetable.tasks for start, _ in task.spans})
        last = math.floor(timetable.dry / DAY)
        tall = min(HOUR, TALLEST / (len(worked) * hours))
        self.times: list[float] = []
        self.heights: list[float] = []
        self.days: list[tuple[int, float, float]] = []  # of work: day, from, to
        self.idle: list[tuple[int, float, float]] = []  # stretches without: how many days, from, to
        y = ABOVE
        for place, day in enumerate(worked):
            top = y
            self._mark(day * DAY + begins, y)
            y += hours * tall
            self._mark(day * DAY + begins + hours, y)
            self.days.append((day, top, y))
            following = worked[place + 1] if place + 1 < len(worked) else max(last, day) + 1
            y += NIGHT
            if following - day > 1:
                self._mark((day + 1) * DAY, y)
                self.idle.append((following - day - 1, y, y + IDLE))
                y += IDLE
                self._mark(following * DAY, y)
                y += NIGHT / 2
        self._mark((max(last, worked[-1]) + 1) * DAY + begins, y)
        self.bottom = y

    def _mark(self, time: float, height: float) -> None:
        if not self.times or time > self.times[-1]:
            self.times.append(time)
            self.heights.append(height)

    def __call__(self, time: float) -> float:
        """Where a time lies; times outside are held at the ends."""
        place = bisect_right(self.times, time)
        if place == 0:
            return self.heights[0]
        if place == len(self.times):
            return self.heights[-1]
        (t0, t1), (y0, y1) = self.times[place - 1 : place + 1], self.heights[place - 1 : place + 1]
        return y0 + (y1 - y0) * (time - t0) / (t1 - t0)


class Sheet(NamedTuple):
    """One drawing: its SVG, and which finishes stand on it."""

    svg: str
    said: str


def _clipped(text: str) -> str:
    return text if len(text) <= LETTERS else f"{text[: LETTERS - 1].rstrip()}…"


def _short(task: Task) -> str:
    return _clipped(task.said.replace("coat of ", ""))


def _box(x: float, top: float, bottom: float) -> list[Point]:
    return [(x, top), (x + BAR, top), (x + BAR, bottom), (x, bottom)]


def _bar(task: Task, x: float, top: float, bottom: float) -> str:
    """A bar that is told apart without colour: full for coats, stroked for sanding, crossed for the rest."""
    box = _box(x, top, max(bottom, top + 3))
    if task.kind == "coat":
        return outline(box, "coat-bar")
    crossed = task.kind == "prepare"
    return outline(box, "work-bar") + hatching(box, "work-strokes", 4.0, crossed)


def _told(task: Task, timetable: Timetable) -> str:
    said = f"{what_said(task)}, {time_said(timetable, task.start)} to {clock_said(task.end)}"
    return f"{said}; dry {time_said(timetable, task.next)}" if task.waits else said


def _column(tasks: list[Task], x: float, scale: _Scale, timetable: Timetable) -> list[str]:
    drawn = []
    free = ABOVE
    centre = x + BAR / 2
    for task in tasks:
        shapes = [_bar(task, x, scale(start), scale(end)) for start, end in task.spans]
        if task.waits:
            end, dry = scale(task.end), scale(task.next)
            shapes.append(line((centre, end), (centre, dry), "drying"))
            shapes.append(line((x, dry), (x + BAR, dry), "dry-tick"))
        at = max(scale(task.start) + ROW - 3, free + ROW)
        free = at
        shapes.append(
            f'<text class="work-name" x="{number(x + BAR + 5)}" y="{number(at)}">{words(_short(task))}</text>'
        )
        drawn.append(f"<g><title>{words(_told(task, timetable))}</title>{''.join(shapes)}</g>")
    return drawn


def _foot(ending: Ending, x: float, scale: _Scale, timetable: Timetable) -> str:
    """Below the column: when the finish takes use."""
    top = scale(ending.dry)
    bottom = scale.bottom + BELOW - 6
    shapes = [line((x + BAR / 2, top), (x + BAR / 2, bottom), "curing")]
    if ending.light_use is not None and ending.cured is not None:
        light, cured = (
            day_said(timetable, math.ceil(at / DAY - 1e-9) * DAY) for at in (ending.light_use, ending.cured)
        )
        rows = (
            (("light use from", light), ("all use from", cured))
            if light != cured
            else (("all use from", cured),)
        )
        y = scale.bottom + ROW
        for name, day in rows:
            for text in (name, day):
                shapes.append(
                    f'<text class="work-name" x="{number(x + BAR + 5)}" y="{number(y)}">{words(text)}</text>'
                )
                y += ROW
    return f"<g><title>{words(ending_said(ending, timetable))}</title>{''.join(shapes)}</g>"


def _ground(scale: _Scale, timetable: Timetable, wide: float) -> list[str]:
    """Days, nights and stretches without work behind the columns."""
    drawn = []
    for day, top, bottom in scale.days:
        name = day_said(timetable, day * DAY)
        name = name.rsplit(" ", 1)[0] if timetable.start else name
        drawn.append(outline([(GUTTER, top), (wide, top), (wide, bottom), (GUTTER, bottom)], "work-day"))
        drawn.append(f'<text class="day-name" x="0" y="{number(top + ROW - 2)}">{words(name)}</text>')
        whole = math.ceil(timetable.begins)
        for hour in range(whole, math.floor(timetable.begins + timetable.hours) + 1):
            y = scale(day * DAY + hour)
            drawn.append(line((GUTTER - (8 if (hour - whole) % 2 == 0 else 4), y), (GUTTER, y), "hour-tick"))
        if bottom - top > 3 * ROW:
            ends = clock_said(timetable.begins + timetable.hours)
            drawn.append(f'<text class="hour" x="{number(GUTTER - 11)}" y="{number(bottom)}">{ends}</text>')
            drawn.append(
                f'<text class="hour" x="{number(GUTTER - 11)}" y="{number(top + 2 * ROW - 2)}">'
                f"{clock_said(timetable.begins)}</text>"
            )
    for days, top, bottom in scale.idle:
        y = (top + bottom) / 2
        said = "1 day" if days == 1 else f"{days} days"
        drawn.append(f'<text class="hour" x="{number(GUTTER - 11)}" y="{number(y + 4)}">{said}</text>')
        drawn.append(
            f'<path class="hour-tick" d="M{number(GUTTER)},{number(y - 6)}l5,4l-10,4l5,4" fill="none"/>'
        )
    return drawn


def timeline_sheets(timetable: Timetable, prefix: str) -> tuple[Sheet, ...]:
    """The drawings of a timetable, two finishes on each; none where it has no tasks."""
    if not timetable.tasks:
        return ()
    scale = _Scale(timetable)
    by_place: dict[int, list[Task]] = {}
    for task in timetable.tasks:
        by_place.setdefault(task.place, []).append(task)
    endings = [ending for ending in timetable.endings if ending.place in by_place]
    together = next((task for task in timetable.tasks if task.kind == "assemble"), None)
    sheets: list[Sheet] = []
    for first in range(0, len(endings), ON_A_SHEET):
        some = endings[first : first + ON_A_SHEET]
        wide = GUTTER + COLUMN * len(some)
        tall = scale.bottom + BELOW
        shapes = _ground(scale, timetable, wide)
        for place, ending in enumerate(some):
            x = GUTTER + 8 + COLUMN * place
            shapes.append(label((x + COLUMN / 2 - 8, ABOVE - 11), _clipped(ending.finish), "finish-name"))
            shapes += _column(by_place[ending.place], x, scale, timetable)
            shapes.append(_foot(ending, x, scale, timetable))
        if together is not None:
            y = scale(together.start)
            shapes.append(line((GUTTER, y), (wide, y), "together"))
            shapes.append(label(((GUTTER + wide) / 2, y - 3), together.said, "work-name"))
        name = f"{prefix}timeline-{len(sheets) + 1}"
        said = " ".join(ending_said(ending, timetable) for ending in some)
        names = " and ".join(ending.finish for ending in some)
        sheets.append(
            Sheet(
                f'<svg class="timeline" width="{number(wide)}" height="{number(tall)}" '
                f'viewBox="0 0 {number(wide)} {number(tall)}" role="img" '
                f'aria-labelledby="{name}-title {name}-desc">'
                f'<title id="{name}-title">When {words(names)} is sanded, coated and dry</title>'
                f'<desc id="{name}-desc">{words(said)}</desc>{"".join(shapes)}</svg>',
                names,
            )
        )
    return tuple(sheets)
