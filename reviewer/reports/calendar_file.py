"""The timetable of a finish as an iCalendar file (RFC 5545), to put in a phone.

Times are those of the clock in the shop, wherever the phone is. Nothing in it comes from the day it is
written on: a plan and its start day give the same bytes each time, and a work keeps its mark, so that a
calendar that takes the file in again moves the work instead of adding it.
"""

from __future__ import annotations

import hashlib
import math
from collections.abc import Iterator, Sequence
from datetime import UTC, date, datetime, time, timedelta
from typing import TYPE_CHECKING

from reviewer.reports.content import Report
from reviewer.reports.excerpt import one_line, visible
from reviewer.reports.finish_times import time_said
from reviewer.reports.finishing import what_said
from reviewer.reports.standing import products_of
from reviewer.workshop.drying_times import DAY
from reviewer.workshop.finish_timetable import Task, Timetable

if TYPE_CHECKING:
    from icalendar import Event

PRODUCT = "-//dryfit//finish timetable//EN"


class NoCalendarError(Exception):
    """No calendar can be made; ``says`` why, ``do`` what helps."""

    def __init__(self, says: str, do: str) -> None:
        super().__init__(f"{says} {do}")
        self.says = says
        self.do = do


def _at(start: date, hour: float) -> datetime:
    return datetime.combine(start, time()) + timedelta(minutes=round(hour * 60))


def _uid(*marks: object) -> str:
    """A mark that stays the same as long as the work does."""
    text = "\0".join(map(str, marks))
    return f"{hashlib.sha256(text.encode('utf-8', 'surrogatepass')).hexdigest()[:32]}@dryfit"


def _plain(text: str) -> str:
    """Text that a calendar can hold: no controls, no lone surrogates."""
    return visible(one_line(text)).encode("utf-8", "backslashreplace").decode()


def _event(uid: str, stamp: datetime, said: str, told: str) -> Event:
    from icalendar import Event

    event = Event()
    event.add("uid", uid)
    event.add("dtstamp", stamp)
    event.add("summary", _plain(said))
    if told:
        event.add("description", _plain(told))
    return event


def _told(task: Task, timetable: Timetable, cautions: dict[str, str]) -> str:
    said = [f"Dry {time_said(timetable, task.next)}."] if task.waits else []
    if task.latest is not None:
        said.append(f"Scuff it first if the next coat is later than {time_said(timetable, task.latest)}.")
    said += dict.fromkeys(cautions[product] for product in task.products if product in cautions)
    return " ".join(said)


def _events(report: Report, timetable: Timetable, start: date) -> Iterator[Event]:
    review = report.review
    assert review is not None
    title = review.plan.title
    # A stamp has to be there; the start day is the only one that the plan knows.
    stamp = datetime.combine(start, time(), tzinfo=UTC)
    heating = {caution.name: caution.says for caution in report.standing}.get("rags-self-heat", "")
    from reviewer.reference.finishes import finish

    cautions = {product: heating for product in products_of(review.plan) if finish(product).rags_self_heat}
    counted: dict[tuple[str, str], int] = {}
    for task in timetable.tasks:
        name = (task.finish, task.said)
        counted[name] = counted.get(name, 0) + 1
        for index, (begin, end) in enumerate(task.spans):
            last = index == len(task.spans) - 1
            event = _event(
                _uid(title, *name, counted[name], index),
                stamp,
                f"{what_said(task)}{', gone on with' if index else ''} ({title})",
                _told(task, timetable, cautions) if last else "",
            )
            event.add("dtstart", _at(start, begin))
            event.add("dtend", _at(start, end))
            yield event
    for ending in timetable.endings:
        for said, at in (("takes light use", ending.light_use), ("is cured: hard use, wax", ending.cured)):
            if at is None:
                continue
            day = start + timedelta(days=math.ceil(at / DAY - 1e-9))
            event = _event(
                _uid(title, ending.finish, ending.place, said), stamp, f"{ending.finish} {said} ({title})", ""
            )
            event.add("dtstart", day)
            event.add("dtend", day + timedelta(days=1))
            event.add("transp", "TRANSPARENT")
            yield event


def render_calendar(reports: Sequence[Report]) -> str:
    """The timetables of some plans as one calendar, lines ending as RFC 5545 asks.

    Raises NoCalendarError where a plan can't be read, is set to several sizes, names no start day, or has no
    finish, and where its timetable is too long to tell.
    """
    from icalendar import Calendar

    calendar = Calendar()
    calendar.add("prodid", PRODUCT)
    calendar.add("version", "2.0")
    told = False
    for report in reports:
        name = report.source.name
        if report.review is None:
            raise NoCalendarError(f"No calendar was written: {name} can't be read.", "Mend its text first.")
        if report.varied:
            raise NoCalendarError(
                "No calendar was written: the plan is set to several sizes.", "Ask for one size."
            )
        found = report.finishing
        if found is None or found.timetable is None:
            continue
        timetable = found.timetable
        if timetable.start is None:
            raise NoCalendarError(
                f"No calendar was written: {name} does not say on which day the finishing starts.",
                "Add it to the plan: shop: start 2027-03-01",
            )
        if not timetable.tasks:
            raise NoCalendarError(f"No calendar was written for {name}.", " ".join(timetable.remarks))
        for event in _events(report, timetable, timetable.start):
            calendar.add_component(event)
        told = True
    if not told:
        raise NoCalendarError(
            "No calendar was written: no part that has its place gets a finish.",
            "Add a finish statement, or mend what is told above.",
        )
    text: str = calendar.to_ical().decode("utf-8")
    return text
