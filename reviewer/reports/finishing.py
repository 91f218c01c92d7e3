"""What a report tells of the finish: how much it takes, when it is done, and what goes on each surface."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, NamedTuple

from reviewer.reports.content import counted_word
from reviewer.reports.finish_times import clock_said, day_said, short_time_said, time_said
from reviewer.units import MM3_PER_LITRE, UnitSystem, Value, hours, liquid, show
from reviewer.wording import listed
from reviewer.workshop.drying_times import DAY
from reviewer.workshop.finish_quantities import (
    Amount,
    Paper,
    ProductNeed,
    Quantities,
    cans_for,
    coat_keys,
    finish_quantities,
)
from reviewer.workshop.finish_timetable import (
    Ending,
    Task,
    Timetable,
    finish_timetable,
)

if TYPE_CHECKING:
    from reviewer.review import Review

_M2 = 1e6  # mm² in a m²
#: Names of surfaces in a caption before it says how many more there are.
NAMES = 6
#: Tables by surface on the page; the others are counted.
SURFACES = 12
#: Rows of the timetable on the page and in the terminal; the others are counted.
ROWS = 120


class Finishing(NamedTuple):
    """What the finishes of a plan take, and their timetable where there is one."""

    review: Review
    quantities: Quantities
    timetable: Timetable | None


class NeedRow(NamedTuple):
    """A product to have: how much of it, what for, and what the plan has or what to buy."""

    what: str
    amount: str
    why: str
    cans: str


class TimeRow(NamedTuple):
    """A work in the timetable. ``day`` is empty where it is that of the row before."""

    day: str
    clock: str
    what: str
    next: str
    meanwhile: str


class LayerRow(NamedTuple):
    """A layer on a surface: when it goes on, what it takes, how long it dries, the window for the next."""

    what: str
    when: str
    takes: str
    dries: str
    next: str
    latest: str


class SurfaceTable(NamedTuple):
    """All that goes on some faces alike."""

    where: str
    area: str
    rows: tuple[LayerRow, ...]


def finishing_of(review: Review) -> Finishing | None:
    """How much finish and when; None for a plan that finishes nothing."""
    if not review.plan.finishes or not review.schedules:
        return None
    return Finishing(review, finish_quantities(review), finish_timetable(review))


# ---------------------------------------------------------------- how much


def litres_said(amount: float, units: UnitSystem) -> str:
    """``16 fl oz``; in a metric plan ``470 ml``."""
    return show(liquid(amount * MM3_PER_LITRE), units)


def _area(square_metres: float, units: UnitSystem) -> str:
    return show(Value(square_metres * _M2, "area"), units)


def amount_said(amount: Amount, units: UnitSystem) -> str:
    """``about 16 fl oz (13 to 19 fl oz)``."""
    likely, least, most = (litres_said(each, units) for each in (amount.likely, amount.least, amount.most))
    if least == most:
        return f"about {likely}"
    unit = most.split(" ", 1)[1]
    least = least.removesuffix(f" {unit}")
    return f"about {likely} ({least} to {most})"


def _coats_said(need: ProductNeed, units: UnitSystem) -> str:
    """``1 coat on 12.7 sq ft and 2 coats on 30 sq ft``: coats of like areas together."""
    counts: dict[str, int] = {}
    for coat in need.coats:
        said = _area(coat.area, units)
        counts[said] = counts.get(said, 0) + 1
    told = [f"{counted_word(count, 'coat')} on {area}" for area, count in counts.items()]
    if need.spots.likely:
        told.append("the knots")
    return listed(told)


def _cans_said(need: ProductNeed, units: UnitSystem) -> str:
    most = need.amount.most
    if not need.cans:
        return f"buy {cans_for(most, units.value).said}"
    have = f"the plan has {litres_said(need.have, units)}"
    if need.have >= most - 1e-9:
        return f"{have}: enough"
    return f"{have}: buy {cans_for(most - need.have, units.value).said} more"


def need_rows(found: Finishing, units: UnitSystem) -> tuple[NeedRow, ...]:
    """Products, thinners and sandpaper, in the order they are needed."""
    rows = []
    for need in found.quantities.products:
        rows.append(
            NeedRow(
                need.said, amount_said(need.amount, units), _coats_said(need, units), _cans_said(need, units)
            )
        )
        if need.thinner.likely:
            rows.append(
                NeedRow(
                    f"thinner that the label of {need.said} names", amount_said(need.thinner, units), "", ""
                )
            )
    rows += [_paper_row(paper, units) for paper in found.quantities.papers]
    return tuple(rows)


def _paper_row(paper: Paper, units: UnitSystem) -> NeedRow:
    over = []
    if paper.bare:
        over.append(f"{_area(paper.bare, units)} of bare wood")
    if paper.between:
        over.append(f"{_area(paper.between, units)} between coats")
    discs = counted_word(paper.discs, "disc")
    return NeedRow(
        f"sandpaper {paper.grit} grit", f"{discs} or {counted_word(paper.sheets, 'sheet')}", listed(over), ""
    )


NEEDS_LEAD = (
    "From the true areas of the surfaces. Bare wood and end grain take more, a full brush keeps some; the "
    "label on the can wins. Discs are 5 in (125 mm), and a sheet by hand makes four of them."
)


def needless_said(found: Finishing) -> tuple[str, ...]:
    """Cans that no coat of the plan is of."""
    names = dict.fromkeys(can.said for can in found.quantities.needless)
    return tuple(f"{name}: the plan has cans of it, and no coat is of it." for name in names)


# ---------------------------------------------------------------- when


def _next(task: Task, timetable: Timetable) -> str:
    if task.kind == "assemble":
        return f"dry {time_said(timetable, task.next)}"
    if not task.waits:
        return ""
    return f"dry {_time_near(task.next, task.end, timetable)}"


def _time_near(at: float, other: float, timetable: Timetable) -> str:
    """A time, its day left out where that is the day of the other."""
    if math.floor(at / DAY) == math.floor(other / DAY):
        return clock_said(at)
    return time_said(timetable, at)


def _latest(task: Task, timetable: Timetable) -> str:
    return "" if task.latest is None else short_time_said(timetable, task.latest)


def what_said(task: Task) -> str:
    """``painted: 1st coat of primer acrylic``."""
    return f"{task.finish}: {task.said}" if task.finish else task.said


def time_rows(timetable: Timetable) -> tuple[TimeRow, ...]:
    """The timetable, each stretch of work in a row, in the order of the clock."""
    stretches = sorted(
        (
            (start, end, task.place, index, task)
            for task in timetable.tasks
            for index, (start, end) in enumerate(task.spans)
        ),
        key=lambda each: each[:4],
    )
    rows: list[TimeRow] = []
    before = ""
    for start, end, _, index, task in stretches:
        day = day_said(timetable, start)
        last = index == len(task.spans) - 1
        said = what_said(task) if not index else f"{what_said(task)}, gone on with"
        rows.append(
            TimeRow(
                "" if day == before else day,
                f"{clock_said(start)}–{clock_said(end)}",
                said,
                _next(task, timetable) if last else "",
                f"while {listed(task.meanwhile)} dries" if task.meanwhile and not index else "",
            )
        )
        before = day
    return tuple(rows)


def ending_said(ending: Ending, timetable: Timetable) -> str:
    """When a finish is dry, takes light use and is cured, as a sentence."""
    said = f"{ending.finish} is dry {time_said(timetable, ending.dry)}"
    if ending.light_use is None or ending.cured is None:
        return f"{said}; for use, go by the label."
    light = day_said(timetable, _days_up(ending.light_use))
    cured = day_said(timetable, _days_up(ending.cured))
    if light == cured:
        return f"{said}, and takes all use from {cured}."
    return f"{said}, takes light use from {light} and hard use, wet things and wax from {cured}."


def _days_up(at: float) -> float:
    """The first whole day from a time on."""
    return math.ceil(at / DAY - 1e-9) * DAY


def timetable_lead(timetable: Timetable, units: UnitSystem) -> str:
    """What the clock goes by, and how much of it all is work."""
    hands = show(hours(timetable.hands_on), units)
    begins, ends = clock_said(timetable.begins), clock_said(timetable.begins + timetable.hours)
    if timetable.begins + timetable.hours >= DAY:
        ends = "24:00"
    start = "" if timetable.start else " Say “start 2027-03-01” in a shop statement for dates."
    return (
        f"About {hands} of work, from {begins} to {ends} each day; coats dry by day and night. How long work "
        f"takes is common practice, no source; drying is as the plan says, else by the tables.{start}"
    )


# ---------------------------------------------------------------- by surface


def surface_tables(found: Finishing, units: UnitSystem) -> tuple[tuple[SurfaceTable, ...], int]:
    """A table for each set of faces that is finished alike, and how many more there are."""
    timetable = found.timetable
    if timetable is None or not timetable.tasks:
        return (), 0
    plan = found.review.plan
    by_place: dict[int, list[Task]] = {}
    for task in timetable.tasks:
        by_place.setdefault(task.place, []).append(task)
    taken = {coat.key: coat for need in found.quantities.products for coat in need.coats}
    areas: dict[int, float] = {}
    ends: dict[int, float] = {}
    for surface in found.review.schedules:
        key = id(surface.schedule)
        areas[key] = areas.get(key, 0.0) + surface.area / _M2
        if surface.grain == "end":
            ends[key] = ends.get(key, 0.0) + surface.area / _M2
    alike = found.review.finished_alike
    tables = []
    for schedule in alike[:SURFACES]:
        area, end = areas.get(id(schedule), 0.0), ends.get(id(schedule), 0.0)
        said = _area(area, units)
        if end > 0:
            said += f", {_area(end, units)} of it end grain"
        keys = coat_keys(plan, schedule.places)
        rows = []
        for task in (task for place in schedule.places for task in by_place.get(place, ())):
            coat = taken.get(task.key) if task.key in keys and task.key is not None else None
            share = area / coat.area if coat and coat.area else 0.0
            rows.append(
                LayerRow(
                    task.said,
                    short_time_said(timetable, task.start),
                    litres_said(coat.amount.likely * share, units) if coat and share else "",
                    show(hours(task.waits), units) if task.waits else "",
                    short_time_said(timetable, task.next) if task.waits else "",
                    _latest(task, timetable),
                )
            )
        where = listed(tuple(schedule.where.values()), most=NAMES)
        tables.append(SurfaceTable(where, said, tuple(rows)))
    return tuple(tables), max(0, len(alike) - SURFACES)


# ---------------------------------------------------------------- in lines


def finishing_lines(
    found: Finishing, units: UnitSystem
) -> tuple[tuple[str, tuple[tuple[str, str], ...]], ...]:
    """What a full review tells in the terminal: a title, and lines by what stands before each."""
    needs = []
    for need in need_rows(found, units):
        said = f"{need.what}: {need.amount}"
        said += f" for {need.why}" if need.why else ""
        needs.append((" -  ", f"{said}; {need.cans}." if need.cans else f"{said}."))
    needs += [(" -  ", text) for text in (*needless_said(found), NEEDS_LEAD)]
    blocks = [("What the finish takes", tuple(needs))]
    timetable = found.timetable
    if timetable is None:
        return tuple(blocks)
    lines = [(" -  ", text) for text in timetable.remarks]
    rows = time_rows(timetable)
    for row in rows[:ROWS]:
        if row.day:
            lines.append((" -  ", f"{row.day}:"))
        said = ", ".join(each for each in (row.what, row.meanwhile) if each)
        lines.append((f"    {row.clock}  ", f"{said}; {row.next}." if row.next else f"{said}."))
    if len(rows) > ROWS:
        lines.append((" -  ", f"and {len(rows) - ROWS} more"))
    lines += [(" -  ", ending_said(ending, timetable)) for ending in timetable.endings]
    if timetable.tasks:
        lines.append((" -  ", timetable_lead(timetable, units)))
    blocks.append(("When the finish is done", tuple(lines)))
    return tuple(blocks)
