"""When what is done to a finish: hands-on work within the hours of the shop, and drying by day and night.

Times are hours from midnight before the first day. Each finish is gone through step by step; while one
dries, the maker works on another. Finishes keep the order of the plan: a later one takes the hours that the
earlier ones leave free, so that a longer wait in a finish never brings that finish to its end sooner.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator
from datetime import date
from itertools import pairwise
from typing import TYPE_CHECKING, NamedTuple

from reviewer.reference.finishes import finish
from reviewer.reference.spreading import work_time
from reviewer.reference.usual_values import usual_value
from reviewer.workshop.drying_times import DAY, air_remarks, drying_factor, drying_of
from reviewer.workshop.finish_quantities import CoatKey
from reviewer.workshop.finish_surfaces import orders
from reviewer.workshop.finish_works import Kind, Work, works_of
from reviewer.workshop.working_hours import MOST_DAYS, MOST_WORKS, QUARTER, FreeHours, rounded_up

if TYPE_CHECKING:
    from reviewer.review import Review

_M2 = 1e-6  # of a mm²


class Task(NamedTuple):
    """One work on a finish. ``spans`` are when hands are on it, one a day at the most.

    ``waits`` is how long it dries, and ``next`` from when on its next step may follow. ``latest`` is when a
    coat of the same has to be on, or the surface be scuffed first; None where nothing limits it.
    ``meanwhile`` names the finishes that are drying while this is done.
    """

    finish: str
    place: int
    kind: Kind
    said: str
    area: float  # m²
    spans: tuple[tuple[float, float], ...]
    waits: float
    next: float
    latest: float | None
    meanwhile: tuple[str, ...]
    products: tuple[str, ...] = ()
    key: CoatKey | None = None
    grits: tuple[int, ...] = ()

    @property
    def start(self) -> float:
        return self.spans[0][0]

    @property
    def end(self) -> float:
        return self.spans[-1][1]


class Ending(NamedTuple):
    """When a finish is dry, takes light use and is cured through. ``cured``: None where no table says."""

    finish: str
    place: int
    dry: float
    light_use: float | None
    cured: float | None


class Timetable(NamedTuple):
    """All works in the order they begin. ``begins`` and ``hours`` are those of the working day.

    ``start`` is the day that hour 0 belongs to; None where the plan names none.
    """

    tasks: tuple[Task, ...]
    endings: tuple[Ending, ...]
    start: date | None
    begins: float
    hours: float
    remarks: tuple[str, ...]

    @property
    def hands_on(self) -> float:
        """Hours of work in all."""
        return math.fsum(end - start for task in self.tasks for start, end in task.spans)

    @property
    def dry(self) -> float:
        """When the last coat of all is dry."""
        return max(ending.dry for ending in self.endings)


class _Placed(NamedTuple):
    work: Work
    spans: tuple[tuple[float, float], ...]

    @property
    def next(self) -> float:
        return self.spans[-1][1] + rounded_up(self.work.waits)


def _one_after_another(hands: FreeHours, works: Iterable[Work], ready: float) -> list[_Placed] | None:
    placed: list[_Placed] = []
    for work in works:
        if len(placed) > MOST_WORKS:
            return None
        spans = hands.take(ready, max(QUARTER, rounded_up(work.hands_on)), work.whole)
        if spans is None:
            return None
        placed.append(_Placed(work, spans))
        ready = placed[-1].next
        if ready > MOST_DAYS * DAY:
            return None
    return placed


TOO_LONG = "The finishing would go on for more than ten years or two thousand works, so no timetable is made."

NO_DAYS_LEFT = "The calendar ends before this finishing would: look at the start day."


def finish_timetable(review: Review) -> Timetable | None:
    """The timetable of all finishes; None for a plan without any coat or sanding.

    Where it would be longer than can be told, it has a remark and no tasks.
    """
    plan = review.plan
    shop = plan.shop
    begins = usual_value("shop-day-begins")
    hours = rounded_up(
        shop.hours_per_day if shop and shop.hours_per_day is not None else usual_value("shop-hours-per-day")
    )
    begins = min(begins, DAY - hours)
    start = shop.start if shop else None
    empty = Timetable((), (), start, begins, hours, (TOO_LONG,))
    areas: dict[int, float] = {}
    for surface in review.schedules:
        for place in surface.finishes:
            areas[place] = areas.get(place, 0.0) + surface.area * _M2
    drying = drying_of(review)
    order = orders(plan)
    sequence = sorted(
        (place for place in areas if plan.finishes[place].steps),
        key=lambda place: (order[place].when == "after", order[place].step, place),
    )
    if not sequence:
        return None
    below: dict[int, set[int]] = {place: set() for place in sequence}
    for schedule in review.finished_alike:
        for index, place in enumerate(schedule.places):
            if place in below:
                below[place].update(schedule.places[:index])
    hands = FreeHours(begins, hours)
    tracks: dict[int, list[_Placed]] = {}
    assembly: _Placed | None = None
    dry_before: list[float] = []
    for place in sequence:
        after = order[place].when == "after"
        if after and dry_before and assembly is None:
            took = work_time("assembly")
            work = Work("assemble", "put the piece together", 0.0, took.setup, took.waits, False)
            spans = hands.take(max(dry_before), QUARTER, False)
            if spans is None:
                return empty
            assembly = _Placed(work, spans)
        ready = max(
            (
                tracks[under][-1].next
                for under in sequence
                if under in below[place] and under in tracks and tracks[under]
            ),
            default=0.0,
        )
        if after and assembly is not None:
            ready = max(ready, assembly.next)
        track = _one_after_another(hands, works_of(review, place, areas[place], drying), ready)
        if track is None or sum(map(len, tracks.values())) > MOST_WORKS:
            return empty
        tracks[place] = track
        if not after and track:
            dry_before.append(track[-1].next)
    tasks = list(_tasks(review, tracks))
    if assembly is not None:
        tasks.append(_assembly(assembly, tracks, review))
    tasks.sort(key=lambda task: (task.start, task.place))
    endings = tuple(_ending(review, place, track) for place, track in tracks.items())
    if start is not None:
        last = max(max(each.dry, each.cured or 0.0) for each in endings)
        # A day to spare: an event of a whole day ends on the day after.
        if last / DAY + 2 > (date.max - start).days:
            return empty._replace(remarks=(NO_DAYS_LEFT,))
    remarks = (*air_remarks(shop), *_late(tasks))
    return Timetable(tuple(tasks), endings, start, begins, hours, remarks)


def _drying_then(review: Review, tracks: dict[int, list[_Placed]], place: int, at: float) -> tuple[str, ...]:
    """The other finishes that dry at a time."""
    return tuple(
        review.plan.finishes[other].name
        for other, track in tracks.items()
        if other != place and any(each.work.waits and each.spans[-1][1] <= at < each.next for each in track)
    )


def _tasks(review: Review, tracks: dict[int, list[_Placed]]) -> Iterator[Task]:
    for place, track in tracks.items():
        for work, spans in track:
            end = spans[-1][1]
            yield Task(
                finish=review.plan.finishes[place].name,
                place=place,
                kind=work.kind,
                said=work.said,
                area=work.area,
                spans=spans,
                waits=rounded_up(work.waits),
                next=end + rounded_up(work.waits),
                latest=None if work.recoat_within is None else end + work.recoat_within,
                meanwhile=_drying_then(review, tracks, place, spans[0][0]),
                products=work.products,
                key=work.key,
                grits=work.grits,
            )


def _assembly(placed: _Placed, tracks: dict[int, list[_Placed]], review: Review) -> Task:
    return Task(
        finish="",
        place=-1,
        kind="assemble",
        said=placed.work.said,
        area=0.0,
        spans=placed.spans,
        waits=rounded_up(placed.work.waits),
        next=placed.next,
        latest=None,
        meanwhile=(),
    )


def _late(tasks: list[Task]) -> Iterator[str]:
    """Coats that go on after the surface below needs scuffing, with no sanding between."""
    by_finish: dict[int, list[Task]] = {}
    for task in tasks:
        by_finish.setdefault(task.place, []).append(task)
    for track in by_finish.values():
        for one, other in pairwise(track):
            if other.kind == "coat" and one.latest is not None and other.start > one.latest + 1e-9:
                yield (
                    f"{one.finish}: the {other.said} goes on later than the one below holds it without "
                    "scuffing; sand lightly first."
                )


def _ending(review: Review, place: int, track: list[_Placed]) -> Ending:
    """When a finish takes use. Wax and oils that never dry have no date."""
    shop = review.plan.shop
    dry = max((placed.next for placed in track), default=0.0)
    coats = [placed for placed in track if placed.work.kind == "coat"]
    cured = []
    for placed in coats:
        cure = finish(placed.work.products[0]).full_cure
        if cure is not None:
            cured.append(placed.spans[-1][1] + cure[1] * drying_factor(shop, DAY))
    through = max(max(cured), dry) if cured else None
    light = None
    if through is not None:
        usual = coats[-1].spans[-1][1] + usual_value("light-use-after") * drying_factor(shop, DAY)
        light = min(max(usual, dry), through)
    return Ending(review.plan.finishes[place].name, place, dry, light, through)
