"""``--calendar``: written whole beside the review, or not at all with a word on why."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from tests.command.conftest import Ran
from tests.command.pieces import FLAWED, SOUND, UNREADABLE

Run = Callable[..., Ran]
FINISH = "finish oiled: on block, 2 coats of oil danish, dry 24 h\n"
START = "shop: start 2027-03-01\n"


def test_it_is_written_beside_the_review(run: Run) -> None:
    Path("a.plan").write_text(SOUND + FINISH + START)
    ran = run("review", "a.plan", "--calendar", "a.ics")
    assert (ran.status, ran.err) == (0, "")
    assert Path("a.ics").read_bytes().startswith(b"BEGIN:VCALENDAR\r\n")
    assert sorted(path.name for path in Path().iterdir()) == ["a.ics", "a.plan"]


def test_a_plan_with_something_to_mend_has_its_calendar_and_its_status(run: Run) -> None:
    Path("a.plan").write_text(FLAWED + FINISH + START)
    assert run("review", "a.plan", "--calendar", "a.ics").status == 1
    assert Path("a.ics").exists()


def test_without_a_start_day_nothing_is_written(run: Run) -> None:
    Path("a.plan").write_text(SOUND + FINISH)
    Path("a.ics").write_text("kept")
    ran = run("review", "a.plan", "--calendar", "a.ics")
    assert ran.status == 2
    assert ran.err == (
        "dryfit: No calendar was written: a.plan does not say on which day the finishing starts. Add it to the "
        "plan: shop: start 2027-03-01\n"
    )
    assert Path("a.ics").read_text() == "kept"
    assert "Nothing to mend" in ran.out


def test_what_it_asks_for_helps(run: Run) -> None:
    Path("a.plan").write_text(SOUND + FINISH + "shop: start 2027-03-01\n")
    assert run("review", "a.plan", "--calendar", "a.ics").status == 0


def test_several_sizes_have_no_one_calendar(run: Run) -> None:
    Path("a.plan").write_text(SOUND.replace("300 long", "size long") + "size = 300\n" + FINISH + START)
    ran = run("review", "a.plan", "--measure", "size=300,400", "--calendar", "a.ics")
    assert ran.status == 2
    assert "set to several sizes" in ran.err
    assert not Path("a.ics").exists()
    assert run("review", "a.plan", "--measure", "size=400", "--calendar", "a.ics").status == 0


def test_a_plan_that_does_not_read_has_none(run: Run) -> None:
    Path("a.plan").write_text(UNREADABLE)
    ran = run("review", "a.plan", "--calendar", "a.ics")
    assert ran.status == 2
    assert "can't be read" in ran.err


def test_it_never_goes_over_a_plan(run: Run) -> None:
    text = SOUND + FINISH + START
    Path("a.plan").write_text(text)
    ran = run("review", "a.plan", "--calendar", "a.plan")
    assert ran.status == 2
    assert Path("a.plan").read_text() == text
