"""What a report tells of the finish: amounts, times, surfaces, cautions that stand, and the calendar file."""

from __future__ import annotations

import json
import re
from datetime import UTC, date, datetime
from pathlib import Path
from textwrap import dedent
from typing import Any
from xml.etree import ElementTree

import icalendar
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from reviewer.reports.calendar_file import NoCalendarError, render_calendar
from reviewer.reports.content import Report
from reviewer.reports.finishing import NEEDS_LEAD, finishing_lines
from reviewer.reports.gathering import report_of
from reviewer.reports.html import render_html
from reviewer.reports.json_report import render_json
from reviewer.reports.terminal import render_terminal
from reviewer.rulebook import all_rules
from tests.support import look_at

PLAN = """
plan "Shelf" in inches
stock board: actual 3/4 x 9 1/4 red oak, 8 ft
part top: board, across, flat, 24 long, left at 0, front at 0, on floor
part base: board, across, flat, 24 long, left at 0, front at 20, on floor
shop: start 2027-03-01, 4 h per day
finish painted: on base
    sand 120, 150
    1 coat of primer acrylic
    2 coats of enamel acrylic, sand 220 between coats
finish clear: on top
    sand 120, 150, 180
    2 coats of polyurethane oil, dry 10 h
    have 1 pint of polyurethane oil
"""


def report(text: str = PLAN) -> Report:
    found = look_at(dedent(text))
    return report_of(found.source, found.problems, found.review, found.judgement, all_rules())


def calendar(text: str = PLAN) -> icalendar.Calendar:
    return icalendar.Calendar.from_ical(render_calendar([report(text)]))


# ---------------------------------------------------------------- in words


def test_lines_of_the_full_review() -> None:
    found = report().finishing
    assert found is not None
    (takes, needs), (done, times) = finishing_lines(found, report().units)
    assert (takes, done) == ("What the finish takes", "When the finish is done")
    assert [text for _, text in needs] == [
        "primer acrylic: about 1.5 fl oz (1.3 to 1.5 fl oz) for 1 coat on 3.43 sq ft; buy 1/2 pint.",
        "enamel acrylic: about 2.7 fl oz (2.5 to 2.9 fl oz) for 2 coats on 3.43 sq ft; buy 1/2 pint.",
        "polyurethane oil: about 2.9 fl oz (1.7 to 3.4 fl oz) for 2 coats on 3.43 sq ft; the plan has 16 fl oz: "
        "enough.",
        "sandpaper 120 grit: 1 disc or 1 sheet for 6.86 sq ft of bare wood.",
        "sandpaper 150 grit: 1 disc or 1 sheet for 6.86 sq ft of bare wood.",
        "sandpaper 180 grit: 1 disc or 1 sheet for 3.43 sq ft of bare wood.",
        "sandpaper 220 grit: 1 disc or 1 sheet for 3.43 sq ft between coats.",
        NEEDS_LEAD,
    ]
    said = "\n".join(head + text for head, text in times)
    assert "Mon 1 Mar 2027:" in said
    assert "while painted dries" in said
    assert "clear is dry " in said


def test_the_page_has_the_drawing_the_table_and_the_surfaces() -> None:
    page = render_html([report()])
    (svg,) = re.findall(r'<svg class="timeline".*?</svg>', page)
    tree = ElementTree.fromstring(svg)
    assert tree.attrib["role"] == "img"
    assert tree[0].tag == "title"
    assert tree[1].tag == "desc"
    assert tree[0].text == "When painted and clear is sanded, coated and dry"
    assert len([each for each in tree.iter("polygon") if each.attrib["class"] == "coat-bar"]) == 5
    named = {tree[0].attrib["id"], tree[1].attrib["id"]}
    assert set(tree.attrib["aria-labelledby"].split()) == named
    assert "The timetable, work by work" in page
    assert page.count("From the wood outwards") == 2
    assert "On base: 3.43 sq ft, 0.0964 sq ft of it end grain" in page


def test_a_layer_past_its_window_shows_by_when() -> None:
    page = render_html([report()])
    # 2nd step of clear: oil polyurethane holds more of itself for 24 h.
    assert re.search(
        r"1st coat of polyurethane oil<br>.*?10 h: from [^;<]*; scuff first if later than Tue 2 Mar, \d\d:\d\d<",
        page,
        re.DOTALL,
    )


def test_four_finishes_stand_on_two_sheets() -> None:
    more = "".join(
        f"part p{n}: board, across, flat, 24 long, left at 0, front at {40 + 20 * n}, on floor\n"
        f"finish f{n}: on p{n}, 1 coat of shellac dewaxed\n"
        for n in range(2)
    )
    assert render_html([report(PLAN + more)]).count('<svg class="timeline"') == 2


def test_json_has_the_same_figures() -> None:
    plan = json.loads(render_json([report()]))["plans"][0]
    clear = plan["finishing"]["products"][2]
    assert clear["product"] == "poly_oil"
    assert clear["in_cans_l"] == pytest.approx(0.473, abs=0.001)
    assert plan["finishing"]["timetable"]["start"] == "2027-03-01"
    assert [each["name"] for each in plan["standing"]] == ["rags-self-heat"]


def test_a_plan_without_a_finish_says_nothing_of_it() -> None:
    bare = report(PLAN[: PLAN.index("shop:")])
    assert bare.finishing is None
    assert "Finish and sandpaper" not in render_html([bare])
    assert json.loads(render_json([bare]))["plans"][0]["finishing"] is None


# ---------------------------------------------------------------- cautions that stand


def test_oily_rags_are_told_in_every_report_and_fail_none() -> None:
    found = report()
    assert found.passes
    for told in (
        render_terminal([found]),
        render_terminal([found], full=True),
        render_html([found]),
        render_json([found]),
    ):
        assert "rags-self-heat" in told
        assert "polyurethane oil on them heat up" in " ".join(told.split())


def test_the_page_has_it_once() -> None:
    page = " ".join(render_html([report()]).split())
    assert page.count("never in a pile or ordinary bin") == 1


def test_no_waiver_takes_the_caution_out() -> None:
    text = f'{PLAN}accept rags-self-heat because "I know"\n'
    assert "Caution: rags-self-heat" in render_terminal([report(text)])


def test_water_based_finishes_bring_none() -> None:
    text = PLAN.replace("polyurethane oil", "polyurethane waterborne")
    assert report(text).standing == ()
    assert "rags-self-heat" not in render_terminal([report(text)])


@pytest.mark.parametrize(
    ("more", "named"),
    [
        ("    strip old paint", ["rags-self-heat", "old-paint"]),
        ("    seal knots with shellac dewaxed", ["rags-self-heat"]),
    ],
)
def test_old_paint(more: str, named: list[str]) -> None:
    assert [each.name for each in report(f"{PLAN}{more}\n").standing] == named


def test_reclaimed_wood_may_carry_old_paint() -> None:
    text = PLAN.replace("red oak, 8 ft", "red oak, 8 ft, reclaimed")
    assert "old-paint" in [each.name for each in report(text).standing]
    assert "licensed practice" in report(text).standing[-1].says


# ---------------------------------------------------------------- the calendar


def test_read_back_with_the_library() -> None:
    events = list(calendar().walk("VEVENT"))
    first = events[0]
    assert str(first["SUMMARY"]) == "painted: sand 120, 150 (Shelf)"
    assert first.decoded("DTSTART") == datetime(2027, 3, 1, 9)
    assert first.decoded("DTEND") == datetime(2027, 3, 1, 9, 30)
    assert {event.decoded("DTSTAMP") for event in events} == {datetime(2027, 3, 1, tzinfo=UTC)}
    assert len({str(event["UID"]) for event in events}) == len(events)
    oily = [event for event in events if "coat of polyurethane oil" in str(event["SUMMARY"])]
    assert len(oily) == 2
    assert all("heat up by themselves" in str(event["DESCRIPTION"]) for event in oily)
    days = {
        str(event["SUMMARY"]): event.decoded("DTSTART") for event in events if "light" in event["SUMMARY"]
    }
    # Primer on the 1st dries overnight, a coat on the 2nd past the working day, so the last is on the 3rd of
    # March at about ten: light use a week later, told from the first whole day.
    assert days["painted takes light use (Shelf)"] == date(2027, 3, 11)


def test_lines_are_folded_as_rfc_5545_asks() -> None:
    """RFC 5545 section 3.1: lines end in CRLF and have no more than 75 octets without it."""
    text = render_calendar(
        [report(PLAN.replace('"Shelf"', '"Ein Bücherbrett für den Lesesaal, ' + "ü" * 90 + '"'))]
    )
    assert text.endswith("END:VCALENDAR\r\n")
    assert "\n" not in text.replace("\r\n", "")
    lines = text.split("\r\n")
    assert max(len(line.encode()) for line in lines) <= 75
    assert any(line.startswith(" ") for line in lines)
    (event, *_) = icalendar.Calendar.from_ical(text).walk("VEVENT")
    assert "ü" * 90 in str(event["SUMMARY"])


def test_the_same_bytes_and_the_same_marks() -> None:
    one, two = render_calendar([report()]), render_calendar([report()])
    assert one == two
    later = calendar(PLAN.replace("2027-03-01", "2027-06-01"))
    marks = [str(event["UID"]) for event in calendar().walk("VEVENT")]
    assert [str(event["UID"]) for event in later.walk("VEVENT")] == marks
    slower = calendar(PLAN.replace("dry 10 h", "dry 40 h"))
    assert sorted(str(event["UID"]) for event in slower.walk("VEVENT")) == sorted(marks)


@pytest.mark.parametrize(
    ("text", "says"),
    [
        (PLAN.replace("start 2027-03-01, ", ""), "does not say on which day the finishing starts"),
        (PLAN[: PLAN.index("shop:")], "no part that has its place gets a finish"),
        (PLAN.replace("start 2027-03-01", "start 9999-12-30"), "No calendar was written for test.plan."),
    ],
)
def test_why_there_is_no_calendar(text: str, says: str) -> None:
    with pytest.raises(NoCalendarError) as error:
        render_calendar([report(text)])
    assert says in error.value.says


@settings(max_examples=25, deadline=None)
@given(st.text(alphabet=st.characters(exclude_characters='"\n\r#'), min_size=1, max_size=30), st.dates())
def test_any_title_and_any_day_reads_back(title: str, start: date) -> None:
    text = PLAN.replace('"Shelf"', f'"{title}"').replace("2027-03-01", start.isoformat())
    found = look_at(text)
    if found.review is None or found.problems:
        return
    made = report_of(found.source, found.problems, found.review, found.judgement, {})
    try:
        written = render_calendar([made])
    except NoCalendarError:
        return
    events: list[Any] = list(icalendar.Calendar.from_ical(written).walk("VEVENT"))
    assert events[0].decoded("DTSTART").date() == start


def test_hostile_names_stay_text() -> None:
    text = PLAN.replace('"Shelf"', '"x;y,z END:VCALENDAR"')
    assert render_calendar([report(text)]).count("\r\nEND:VCALENDAR") == 1


def test_what_is_written_is_what_is_rendered(tmp_path: Path) -> None:
    from reviewer.reports.writing import write_whole

    write_whole(tmp_path / "a.ics", render_calendar([report()]), what="calendar")
    assert (tmp_path / "a.ics").read_bytes().decode() == render_calendar([report()])
