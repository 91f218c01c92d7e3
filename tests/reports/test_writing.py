"""Reports go to disk whole or not at all."""

from __future__ import annotations

import os
import stat
from pathlib import Path

import pytest

from reviewer.reports.writing import PlanInTheWayError, ReportNotWrittenError, write_whole


def test_text_arrives_as_written(tmp_path: Path) -> None:
    write_whole(tmp_path / "a.html", "½\r\nend\n")
    assert (tmp_path / "a.html").read_bytes() == "½\r\nend\n".encode()
    assert os.listdir(tmp_path) == ["a.html"]


def test_an_old_report_is_replaced_and_keeps_its_mode(tmp_path: Path) -> None:
    target = tmp_path / "a.html"
    target.write_text("a longer text that was here before")
    target.chmod(0o640)
    write_whole(target, "new")
    assert target.read_text() == "new"
    assert stat.S_IMODE(target.stat().st_mode) == 0o640


def test_a_new_report_is_readable_as_the_umask_says(tmp_path: Path) -> None:
    before = os.umask(0o022)
    try:
        write_whole(tmp_path / "a.html", "x")
    finally:
        os.umask(before)
    assert stat.S_IMODE((tmp_path / "a.html").stat().st_mode) == 0o644


def test_a_plan_is_never_written_over(tmp_path: Path) -> None:
    plan = tmp_path / "bench.plan"
    plan.write_text("plan")
    with pytest.raises(PlanInTheWayError) as caught:
        write_whole(plan, "report", plans=[tmp_path / "other.plan", plan])
    assert caught.value.says == f"{plan} is a plan under review; a report would wipe it out."
    assert caught.value.do == "Name another file for the report."
    assert plan.read_text() == "plan"


@pytest.mark.parametrize("how", ["symlink_to", "hardlink_to", "relative"])
def test_not_through_a_side_door_either(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, how: str) -> None:
    plan = tmp_path / "bench.plan"
    plan.write_text("plan")
    if how == "relative":
        monkeypatch.chdir(tmp_path)
        door = Path("./x/../bench.plan")
        (tmp_path / "x").mkdir()
    else:
        door = tmp_path / "door.html"
        getattr(door, how)(plan)
    with pytest.raises(PlanInTheWayError):
        write_whole(door, "report", plans=[plan])
    assert plan.read_text() == "plan"


def test_a_link_is_followed_not_replaced(tmp_path: Path) -> None:
    real = tmp_path / "real.html"
    real.write_text("old")
    link = tmp_path / "link.html"
    link.symlink_to(real)
    write_whole(link, "new")
    assert link.is_symlink()
    assert real.read_text() == "new"


def test_trouble_leaves_the_old_report_whole(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    target = tmp_path / "a.html"
    target.write_text("old")

    def full(*_: object) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "replace", full)
    with pytest.raises(ReportNotWrittenError) as caught:
        write_whole(target, "new")
    assert caught.value.says == f"The report could not be written to {target}: No space left on device."
    assert target.read_text() == "old"
    assert os.listdir(tmp_path) == ["a.html"]


def test_an_interrupt_leaves_nothing_behind(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def stopped(*_: object) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr(os, "fsync", stopped)
    with pytest.raises(KeyboardInterrupt):
        write_whole(tmp_path / "a.html", "new")
    assert os.listdir(tmp_path) == []


@pytest.mark.parametrize(
    ("name", "says"),
    [
        ("", "{0} is a folder."),
        ("no/such/a.html", "There is no folder {0}/no/such."),
        ("pipe", "{0}/pipe is not an ordinary file."),
        ("a\0b", "The report could not be written to {0}/a\0b: embedded null byte."),
    ],
)
def test_odd_places_are_refused_in_words(tmp_path: Path, name: str, says: str) -> None:
    os.mkfifo(tmp_path / "pipe")
    with pytest.raises(ReportNotWrittenError) as caught:
        write_whole(tmp_path / name, "x")
    assert caught.value.says == says.format(tmp_path)
    assert os.listdir(tmp_path) == ["pipe"]


def test_a_character_without_utf8_does_not_stop_the_report(tmp_path: Path) -> None:
    write_whole(tmp_path / "a.txt", "x\udc80y")
    assert (tmp_path / "a.txt").read_bytes() == b"x\\udc80y"
