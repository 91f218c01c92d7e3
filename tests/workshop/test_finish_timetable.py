"""When a finish is done: a week gone through by hand, and what must hold for every one."""

from __future__ import annotations

from datetime import date
from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from reviewer.reports.finish_times import clock_said, day_said, time_said
from reviewer.workshop.drying_times import DAY
from reviewer.workshop.finish_timetable import (
    NO_DAYS_LEFT,
    TOO_LONG,
    Timetable,
    finish_timetable,
)
from tests.support import review_of

BOARD = """
plan "Board" in millimetres
stock board: actual 20 x 200 pine
part shelf: board, across, flat, 1000 long, left at 0, front at 0, bottom at 0
part other: board, across, flat, 1000 long, left at 0, front at 0, bottom at 500
"""


def timetable(*lines: str) -> Timetable:
    found = finish_timetable(review_of(BOARD + "\n".join(lines) + "\n"))
    assert found is not None
    return found


def told(found: Timetable) -> list[str]:
    return [
        f"{time_said(found, start)}-{clock_said(end)} {task.finish}: {task.said}"
        for task in found.tasks
        for start, end in task.spans
    ]


def test_two_days_by_hand() -> None:
    """0.448 m² all round. Sanding two grits: 2 x (0.1 h + 0.448 / 4) = 0.42 h, so half an hour; a coat by
    brush: 0.25 + 0.448 / 4 = 0.36 h, half an hour too; a light sanding 0.1 + 0.448 / 8 = 0.16 h, a quarter.
    The first coat is dry at 14:00, after the day's four hours, so the second waits for the morning.
    """
    found = timetable(
        "shop: start 2027-03-01, 4 h per day",
        "finish f: on shelf, sand 120, 150",
        "    2 coats of enamel acrylic, dry 4 h, sand 220 between coats",
    )
    assert told(found) == [
        "Mon 1 Mar 2027, 09:00-09:30 f: sand 120, 150",
        "Mon 1 Mar 2027, 09:30-10:00 f: 1st coat of enamel acrylic",
        "Tue 2 Mar 2027, 09:00-09:15 f: sand 220 lightly",
        "Tue 2 Mar 2027, 09:15-09:45 f: 2nd coat of enamel acrylic",
    ]
    (ending,) = found.endings
    assert time_said(found, found.tasks[1].next) == "Mon 1 Mar 2027, 14:00"
    assert time_said(found, ending.dry) == "Tue 2 Mar 2027, 13:45"
    # A week to light use, thirty days to full cure, both from the last coat.
    assert ending.light_use == pytest.approx(DAY + 9.75 + 7 * DAY)
    assert ending.cured == pytest.approx(DAY + 9.75 + 30 * DAY)
    assert found.hands_on == pytest.approx(1.75)


def test_without_a_start_days_are_counted() -> None:
    found = timetable("finish f: on shelf, 1 coat of shellac dewaxed")
    assert time_said(found, found.tasks[0].start) == "day 1, 09:00"
    assert found.start is None


def test_while_one_dries_another_is_worked_on() -> None:
    found = timetable(
        "shop: 8 h per day",
        "finish slow: on shelf, 2 coats of oil danish, dry 4 h",
        "finish quick: on other, 2 coats of shellac dewaxed, dry 1 h",
    )
    assert told(found) == [
        "day 1, 09:00-09:30 slow: 1st coat of oil danish",
        "day 1, 09:30-10:00 quick: 1st coat of shellac dewaxed",
        "day 1, 11:00-11:30 quick: 2nd coat of shellac dewaxed",
        "day 1, 13:30-14:00 slow: 2nd coat of oil danish",
    ]
    assert found.tasks[1].meanwhile == ("slow",)


def test_a_finish_over_another_waits_for_it() -> None:
    found = timetable(
        "finish stained: on shelf, 1 coat of stain oil, dry 72 h",
        "finish clear: on top of shelf, other, 1 coat of polyurethane waterborne",
    )
    stained, clear = found.tasks
    assert clear.start >= stained.end + 72


def test_what_is_finished_after_assembly_waits_for_the_glue() -> None:
    found = timetable(
        "finish first: on shelf, before assembly, 1 coat of shellac dewaxed, dry 1 h",
        "finish last: on other, 1 coat of shellac dewaxed, dry 1 h",
    )
    kinds = [task.kind for task in found.tasks]
    assert kinds == ["coat", "assemble", "coat"]
    assert found.tasks[2].start >= found.tasks[1].next >= found.tasks[0].next + DAY


def test_a_cold_damp_shop_dries_slower_and_never_faster() -> None:
    """W23 of the finishing notes: 6 h at 70 °F become 12.7 h at 60 °F and 60 %, to the next quarter."""
    steps = "finish f: on shelf, 2 coats of polyurethane oil"
    usual = timetable(steps)
    cold = timetable("shop: 60 F, 60 % humidity", steps)
    warm = timetable("shop: 90 F, 30 % humidity", steps)
    assert usual.tasks[0].waits == 10  # the longer of 4 to 10 h
    assert cold.tasks[0].waits == pytest.approx(10 * 12.65 / 6, abs=0.26)
    assert warm.tasks[0].waits == 10
    assert cold.remarks
    assert not usual.remarks


def test_the_night_counts_for_waits_over_night() -> None:
    steps = "finish f: on shelf, 2 coats of oil danish"
    day = timetable("shop: 70 F", steps).tasks[0].waits
    night = timetable("shop: 70 F, 58 F at night", steps).tasks[0].waits
    assert night > day


def test_a_coat_past_its_window_is_told_where_nothing_scuffs_it() -> None:
    """Oil polyurethane holds more of itself for 24 h without scuffing (data sheets, notes S12 to S16)."""
    steps = "finish f: on shelf, 2 coats of polyurethane oil, dry 30 h"
    assert any("scuff" in remark for remark in timetable(steps).remarks)
    assert not timetable(f"{steps}, sand 220 between coats").remarks
    assert not timetable(
        "finish f: on shelf, 2 coats of polyurethane oil, dry 6 h", "shop: 9 h per day"
    ).remarks


def test_sanding_longer_than_the_day_goes_on_the_next() -> None:
    found = timetable("shop: 0.25 h per day", "finish f: on shelf, sand 80, 120, 150, 1 coat of oil danish")
    sanding = found.tasks[0]
    assert len(sanding.spans) == 3
    assert [start for start, _ in sanding.spans] == [9, 33, 57]
    # A coat is not left half done: it takes half an hour from the beginning of a day.
    assert found.tasks[1].spans == ((81.0, 81.5),)


def test_what_nobody_lives_to_see_is_told_not_worked_out() -> None:
    found = timetable("finish f: on shelf, 2 coats of oil danish, dry 9000 days")
    assert (found.tasks, found.remarks) == ((), (TOO_LONG,))
    found = timetable("shop: start 9999-12-20", "finish f: on shelf, 1 coat of polyurethane oil")
    assert (found.tasks, found.remarks) == ((), (NO_DAYS_LEFT,))


def test_days_are_named_as_on_any_calendar() -> None:
    found = timetable("shop: start 2028-02-28", "finish f: on shelf, 1 coat of shellac dewaxed")
    assert [day_said(found, day * DAY) for day in range(3)] == [
        "Mon 28 Feb 2028",
        "Tue 29 Feb 2028",
        "Wed 1 Mar 2028",
    ]
    assert found.start == date(2028, 2, 28)


# ---------------------------------------------------------------- always

FINISHES = ("polyurethane oil", "enamel acrylic", "oil tung", "shellac dewaxed", "stain gel")
coats = st.builds(
    lambda count, product, dry, sanded: (count, product, dry, sanded),
    st.integers(1, 4),
    st.sampled_from(FINISHES),
    st.integers(1, 100),
    st.booleans(),
)


def _line(count: int, product: str, dry: int, sanded: bool, longer: int = 0) -> str:
    return f"    {count} coats of {product}, dry {dry + longer} h" + (
        ", sand 320 between coats" if sanded else ""
    )


def _plan(
    hours: int,
    first: list[tuple[int, str, int, bool]],
    second: list[tuple[int, str, int, bool]],
    longer: int = 0,
    which: int = 0,
) -> Timetable:
    lines = [f"shop: {hours} h per day", "finish a: on shelf, sand 120"]
    lines += [_line(*each, longer=longer if place == which else 0) for place, each in enumerate(first)]
    lines += ["finish b: on other, sand 120", *(_line(*each) for each in second)]
    return timetable(*lines)


steps = st.lists(coats, min_size=1, max_size=3)


@settings(max_examples=60, deadline=None)
@given(st.integers(1, 12), steps, steps, st.integers(1, 200), st.integers(0, 2))
def test_a_longer_wait_never_ends_a_finish_sooner(
    hours: int,
    first: list[tuple[int, str, int, bool]],
    second: list[tuple[int, str, int, bool]],
    longer: int,
    which: int,
) -> None:
    before, after = _plan(hours, first, second), _plan(hours, first, second, longer, which)
    assert before.endings[0].dry <= after.endings[0].dry
    alone = timetable(f"shop: {hours} h per day", "finish a: on shelf", *(_line(*each) for each in first))
    slower = timetable(
        f"shop: {hours} h per day",
        "finish a: on shelf",
        *(_line(*each, longer=longer if place == which else 0) for place, each in enumerate(first)),
    )
    assert alone.dry <= slower.dry


@settings(max_examples=60, deadline=None)
@given(st.integers(1, 12), steps, steps)
def test_one_pair_of_hands_in_working_hours_and_every_coat_dry(
    hours: int, first: list[tuple[int, str, int, bool]], second: list[tuple[int, str, int, bool]]
) -> None:
    found = _plan(hours, first, second)
    spans = sorted(span for task in found.tasks for span in task.spans)
    assert all(one[1] <= other[0] for one, other in pairwise(spans))
    for start, end in spans:
        assert found.begins <= start % DAY
        assert end % DAY <= found.begins + found.hours
    for name in ("a", "b"):
        mine = [task for task in found.tasks if task.finish == name]
        assert all(one.next <= other.start for one, other in pairwise(mine))
