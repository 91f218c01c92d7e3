"""The command ``tidy``: what it writes, what it tells, and that it never harms a plan."""

from __future__ import annotations

import os
from collections.abc import Callable
from pathlib import Path

import pytest

from reviewer import tidy
from tests.command.conftest import Ran
from tests.command.pieces import SOUND, UNREADABLE

Run = Callable[..., Ran]
TIDY = SOUND
UNTIDY = SOUND.replace("part block: board,", "PART  block: board ,\t") + "# the end"


def test_plans_are_written_anew(run: Run) -> None:
    Path("a.plan").write_text(UNTIDY)
    Path("b.plan").write_text(TIDY)
    before = os.stat("b.plan").st_ino
    assert run("tidy", "a.plan", "b.plan") == (0, "1 plan tidied; 1 plan is tidy already.\n", "")
    assert Path("a.plan").read_text() == TIDY + "# the end\n"
    assert os.stat("b.plan").st_ino == before  # it was not even written again
    assert run("tidy", ".") == (0, "2 plans are tidy already.\n", "")
    assert sorted(os.listdir()) == ["a.plan", "b.plan"]


def test_check_changes_nothing_and_shows_the_first_lines(run: Run) -> None:
    Path("a.plan").write_text(UNTIDY)
    Path("b.plan").write_text(TIDY)
    ran = run("tidy", "--check", "a.plan", "b.plan")
    assert ran.status == 1
    assert ran.err == ""
    assert ran.out == (
        "a.plan: not tidy\n"
        "    has no line end after its last line\n"
        "      3 | PART  block: board ,     across, flat, 300 long, left at 0, front at 0, on floor\n"
        "   tidy | part block: board, across, flat, 300 long, left at 0, front at 0, on floor\n"
        "\n"
        "1 plan is not tidy; 1 plan is tidy.\n"
    )
    assert Path("a.plan").read_text() == UNTIDY


def test_check_of_tidy_plans(run: Run) -> None:
    Path("a.plan").write_text(TIDY)
    assert run("tidy", "--check", "a.plan") == (0, "1 plan is tidy.\n", "")


def test_differences_that_cannot_be_seen_are_told(run: Run) -> None:
    lines = TIDY.splitlines()
    text = "\ufeff" + "\r\n".join([lines[0], "", "", lines[1] + "  ", lines[2], "h=1", "k=2", "m=3"])
    Path("a.plan").write_bytes(text.encode())
    ran = run("tidy", "--check", "a.plan")
    assert ran.out == (
        "a.plan: not tidy\n"
        "    begins with a byte-order mark\n"
        "    has line ends of Windows\n"
        "    has no line end after its last line\n"
        "      2 | (an empty line too many)\n"
        "      4 | stock board: actual 45 x 95 pine (blanks at its end)\n"
        "      6 | h=1\n"
        "   tidy | h = 1\n"
        "        and 2 more lines\n"
        "\n"
        "1 plan is not tidy.\n"
    )
    assert run("tidy", "a.plan").status == 0
    assert b"\r" not in Path("a.plan").read_bytes()
    assert Path("a.plan").read_bytes()[:5] == b"plan "


def test_long_lines_are_shown_around_their_first_difference(run: Run) -> None:
    long = "h = " + "1 + " * 50 + "1"
    Path("a.plan").write_text(f"{TIDY}{long}+ 2 {'# ' + 'a' * 90}\n")
    out = run("tidy", "--check", "a.plan").out.splitlines()
    assert all(len(line) <= 88 for line in out)
    assert "1 + 1 + 1+ 2 # aaaa" in out[1]
    assert "1 + 1 + 1 + 2  # aaa" in out[2]
    assert out[1].index("…") == out[2].index("…") == 10


def test_standard_input_comes_out_tidied(run: Run) -> None:
    ran = run("tidy", "-", stdin=UNTIDY.encode())
    assert ran == (0, TIDY + "# the end\n", "1 plan tidied.\n")
    assert run("tidy", "-", stdin=TIDY.encode()) == (0, TIDY, "1 plan is tidy already.\n")


def test_standard_input_can_be_checked(run: Run) -> None:
    ran = run("tidy", "--check", "-", stdin=UNTIDY.encode())
    assert ran.status == 1
    assert ran.out.startswith("standard input: not tidy\n")
    assert run("tidy", "-", "--check", stdin=TIDY.encode()).status == 0


@pytest.mark.parametrize("check", [(), ("--check",)])
def test_a_text_that_cannot_be_read_is_left_alone(run: Run, check: tuple[str, ...]) -> None:
    Path("a.plan").write_text(UNREADABLE + "  \n")
    Path("b.plan").write_text(UNTIDY)
    ran = run("tidy", *check, "a.plan", "b.plan", "none.plan")
    told = run("review", "a.plan", "none.plan").out
    assert ran.status == 2
    problems = told[: told.index("2 things to mend")]
    assert "prat" in problems
    assert problems in ran.out
    assert ran.out.endswith("2 plans left alone: the text cannot be read.\n")
    assert Path("a.plan").read_text() == UNREADABLE + "  \n"
    assert Path("b.plan").read_text() == (UNTIDY if check else TIDY + "# the end\n")


def test_standard_input_that_cannot_be_read_gives_no_text(run: Run) -> None:
    ran = run("tidy", "-", stdin=UNREADABLE.encode())
    assert (ran.status, ran.out) == (2, "")
    assert "standard input:4:1: error: text not read" in ran.err


def test_a_link_stays_one_and_its_plan_is_tidied(run: Run) -> None:
    Path("a.plan").write_text(UNTIDY)
    Path("a.plan").chmod(0o640)
    Path("link.plan").symlink_to("a.plan")
    assert run("tidy", "link.plan").status == 0
    assert Path("link.plan").is_symlink()
    assert Path("a.plan").read_text() == TIDY + "# the end\n"
    assert os.stat("a.plan").st_mode & 0o777 == 0o640


def test_trouble_with_one_plan_leaves_it_whole_and_goes_on(run: Run, monkeypatch: pytest.MonkeyPatch) -> None:
    Path("a.plan").write_text(UNTIDY)
    Path("b.plan").write_text(UNTIDY)
    replaced = os.replace

    def full(source: str, target: Path) -> None:
        if target.name == "a.plan":
            raise OSError(28, "No space left on device")
        replaced(source, target)

    monkeypatch.setattr(os, "replace", full)
    ran = run("tidy", "a.plan", "b.plan")
    assert ran.status == 2
    assert "The tidy plan could not be written to a.plan: No space left on device." in ran.err
    assert ran.out == "1 plan tidied.\n"
    assert Path("a.plan").read_text() == UNTIDY
    assert Path("b.plan").read_text() == TIDY + "# the end\n"
    assert sorted(os.listdir()) == ["a.plan", "b.plan"]


def test_a_plan_that_may_only_be_read_is_not_replaced(run: Run, monkeypatch: pytest.MonkeyPatch) -> None:
    Path("a.plan").write_text(UNTIDY)
    monkeypatch.setattr(tidy.os, "access", lambda path, mode: False)  # root may write everywhere
    ran = run("tidy", "a.plan")
    assert ran.status == 2
    assert ran.err == "dryfit: a.plan may only be read, so it was not changed. Make it writable first.\n"
    assert Path("a.plan").read_text() == UNTIDY


def test_controls_are_shown_as_signs(run: Run) -> None:
    Path("a.plan").write_text(TIDY + "h=1 # \x1b[31m\n")
    out = run("tidy", "--check", "a.plan").out
    assert "\x1b" not in out
    assert "h=1 # ␛[31m" in out
