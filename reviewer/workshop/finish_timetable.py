"""When what is done to a finish: hands-on work within the hours of the shop, and drying by day and night.

Times are hours from midnight before the first day. Each finish is gone through step by step; while one
dries, the maker works on another. Finishes keep the order of the plan: a later one takes the hours that the
earlier ones leave free, so that a longer wait in a finish never brings that finish to its end sooner.
"""

from __future__ import annotations

import math
from bisect import bisect, insort
from collections.abc import Iterable, Iterator
from datetime import date, timedelta
from itertools import pairwise
from typing import TYPE_CHECKING, Literal, NamedTuple

from reviewer.model.plan import Coats, Sanding, Shop, Surfacing
from reviewer.reference.finishes import finish
from reviewer.reference.spreading import work_time
from reviewer.reference.usual_values import usual_value
from reviewer.workshop.coating import Meeting, ordinal
from reviewer.workshop.finish_quantities import CoatKey, coat_keys
from reviewer.workshop.finish_surfaces import orders

if TYPE_CHECKING:
    from reviewer.review import Review

Kind = Literal["sand", "prepare", "coat", "assemble"]

DAY = 24.0
#: Times are told to a quarter of an hour; work and waits are rounded up to it.
QUARTER = 0.25
#: A timetable over more days or works than these is told as too long, not worked out.
MOST_DAYS, MOST_WORKS = 3660, 2000

#: Drying stretched by less than this goes without a word.
WORTH_TELLING = 1.1

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


class _Work(NamedTuple):
    """A work before it has its time."""

    kind: Kind
    said: str
    area: float
    hands_on: float
    waits: float
    whole: bool  # a coat is not left half done
    recoat_within: float | None = None
    products: tuple[str, ...] = ()
    key: CoatKey | None = None
    grits: tuple[int, ...] = ()


def _up(amount: float) -> float:
    return math.ceil(amount / QUARTER - 1e-9) * QUARTER


# ---------------------------------------------------------------- the air


def slowed_by(air: float, label: float) -> float:
    """How many times as long drying takes in air of one temperature as in that of the label, both °C.

    Twice for each 20 °F, fitted to the recoat table of Unified Facilities Guide Specification 09971.
    """
    return float(2 ** ((label - air) / usual_value("drying-doubles-by")))


def drying_factor(shop: Shop | None, waits: float = 0.0) -> float:
    """How many times as long a coat dries in this shop as the tables say; never less than once.

    Twice as long for each 20 °F below the tables' air, fitted to a published recoat table, and longer in damp
    air (common practice, no source). A wait of half a day or more goes by the night's temperature.
    """
    if shop is None:
        return 1.0
    factor = 1.0
    warmth = [
        each
        for each in (shop.temperature, shop.night_temperature if waits >= DAY / 2 else None)
        if each is not None
    ]
    if warmth:
        coldest = max(min(warmth), usual_value("drying-fit-coldest"))
        factor = max(1.0, slowed_by(coldest, usual_value("drying-coolest")))
    if shop.humidity is not None:
        if shop.humidity > usual_value("drying-wet-from"):
            factor *= usual_value("drying-wet-factor")
        elif shop.humidity > usual_value("drying-damp-from"):
            factor *= usual_value("drying-damp-factor")
    return factor


def _air_remarks(shop: Shop | None) -> Iterator[str]:
    if shop is None:
        return
    if drying_factor(shop, DAY) > WORTH_TELLING:
        yield "The shop is cooler or damper than labels' drying times are for, so waits are stretched."
    warmth = [each for each in (shop.temperature, shop.night_temperature) if each is not None]
    if warmth and min(warmth) < usual_value("drying-fit-coldest"):
        yield "It gets colder in the shop than drying times are known for: go by the label."


# ---------------------------------------------------------------- the works


class _Drying(NamedTuple):
    """How long a coat dries before what follows, and until when more of the same needs no scuffing."""

    waits: float
    within: float | None


def _dries(meeting: Meeting, following: Meeting | None, shop: Shop | None) -> _Drying:
    layer = meeting.upper
    least = following.wait if following else None
    known = finish(layer.product)
    if layer.dry is None:
        recoat = known.recoat or known.touch_dry or (0.0, 0.0)
        waits = max(recoat[1], least or 0.0)
        waits *= drying_factor(shop, waits)
    else:
        waits = layer.dry
        # A cold shop makes the tables' least wait longer, never the maker's own shorter.
        if least is not None and (following is None or following.pair.window is None):
            waits = max(waits, least * drying_factor(shop, least))
    # What is sanded before the next coat holds it at any time.
    same = following is not None and following.same_product and not following.upper.sanded
    within = known.scuff_after if same else None
    return _Drying(waits, within)


def _drying(review: Review) -> dict[CoatKey, _Drying]:
    """Each coat's drying on the slowest of the surfaces that it goes on."""
    found: dict[CoatKey, _Drying] = {}
    for schedule in review.finished_alike:
        met = schedule.meetings
        for index, key in enumerate(coat_keys(review.plan, schedule.places)):
            following = met[index + 1] if index + 1 < len(met) else None
            new = _dries(met[index], following, review.plan.shop)
            known = found.get(key, new)
            windows = [each.within for each in (known, new) if each.within is not None]
            found[key] = _Drying(max(known.waits, new.waits), min(windows, default=None))
    return found


_PREPARED = {
    "fill holes": "fill holes",
    "seal knots": "seal the knots",
    "age": "age the wood",
    "wipe": "wipe down",
    "plug pockets": "plug the pockets",
    "raise grain": "raise the grain",
    "distress edges": "wear the edges",
    "distress faces": "wear the faces",
    "glue size": "brush on glue size",
    "clean off glue": "clean off glue",
    "strip old paint": "strip the old paint",
    "strip old finish": "strip the old finish",
    "test board": "try it all on a test board",
}


def _grits(grits: tuple[int, ...]) -> str:
    return f"sand {', '.join(map(str, grits))}"


def _works(review: Review, place: int, area: float, drying: dict[CoatKey, _Drying]) -> Iterator[_Work]:
    """The works of one finish in order."""
    steps = review.plan.finishes[place].steps
    last = max((index for index, step in enumerate(steps) if isinstance(step, Coats)), default=-1)
    for index, step in enumerate(steps):
        match step:
            case Sanding(grits=grits):
                coated = any(isinstance(each, Coats) for each in steps[:index])
                took = work_time("sand between" if coated else "sand")
                hours = math.fsum(took.hands_on(area) for _ in grits)
                yield _Work("sand", _grits(grits), area, hours, 0.0, False, grits=grits)
            case Surfacing(work=work, stuff=stuff, product=product):
                took = work_time(work)
                said = f"{_PREPARED[work]} with {stuff}" if stuff else _PREPARED[work]
                products = (product,) if product else ()
                yield _Work("prepare", said, area, took.hands_on(area), took.waits, False, products=products)
            case Coats():
                for number in range(1, step.count + 1):
                    if number > 1 and step.sanded_between is not None:
                        yield _sanded_between(step.sanded_between, area)
                    key = CoatKey(place, index, number)
                    dries = drying.get(key, _Drying(step.dry_hours or 0.0, None))
                    nth = f"{ordinal(number)} coat" if step.count > 1 else "coat"
                    hours = work_time(step.applied or "brush").hands_on(area)
                    yield _Work(
                        "coat",
                        f"{nth} of {step.said}",
                        area,
                        hours,
                        dries.waits,
                        True,
                        dries.within,
                        (step.product,),
                        key,
                    )
                if step.count == 1 and step.sanded_between is not None and index < last:
                    yield _sanded_between(step.sanded_between, area)


def _sanded_between(grit: int, area: float) -> _Work:
    took = work_time("sand between").hands_on(area)
    return _Work("sand", f"sand {grit} lightly", area, took, 0.0, False, grits=(grit,))


# ---------------------------------------------------------------- the clock


class _Hands:
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


class _Placed(NamedTuple):
    work: _Work
    spans: tuple[tuple[float, float], ...]

    @property
    def next(self) -> float:
        return self.spans[-1][1] + _up(self.work.waits)


def _one_after_another(hands: _Hands, works: Iterable[_Work], ready: float) -> list[_Placed] | None:
    placed: list[_Placed] = []
    for work in works:
        if len(placed) > MOST_WORKS:
            return None
        spans = hands.take(ready, max(QUARTER, _up(work.hands_on)), work.whole)
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
    hours = _up(
        shop.hours_per_day if shop and shop.hours_per_day is not None else usual_value("shop-hours-per-day")
    )
    begins = min(begins, DAY - hours)
    start = shop.start if shop else None
    empty = Timetable((), (), start, begins, hours, (TOO_LONG,))
    areas: dict[int, float] = {}
    for surface in review.schedules:
        for place in surface.finishes:
            areas[place] = areas.get(place, 0.0) + surface.area * _M2
    drying = _drying(review)
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
    hands = _Hands(begins, hours)
    tracks: dict[int, list[_Placed]] = {}
    assembly: _Placed | None = None
    dry_before: list[float] = []
    for place in sequence:
        after = order[place].when == "after"
        if after and dry_before and assembly is None:
            took = work_time("assembly")
            work = _Work("assemble", "put the piece together", 0.0, took.setup, took.waits, False)
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
        track = _one_after_another(hands, _works(review, place, areas[place], drying), ready)
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
    remarks = (*_air_remarks(shop), *_late(tasks))
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
                waits=_up(work.waits),
                next=end + _up(work.waits),
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
        waits=_up(placed.work.waits),
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


# ---------------------------------------------------------------- words

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
