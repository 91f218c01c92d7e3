"""Exit status and streams: 0 nothing to mend, 1 findings at the asked level, 2 a plan or the call can't be read."""

from __future__ import annotations

import os
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.command.conftest import Ran
from tests.command.pieces import FLAWED, SOUND, UNREADABLE

Run = Callable[..., Ran]


def test_nothing_to_mend(run: Run) -> None:
    Path("a.plan").write_text(SOUND)
    ran = run("review", "a.plan")
    assert (ran.status, ran.err) == (0, "")
    assert "Nothing to mend" in ran.out


def test_something_to_mend(run: Run) -> None:
    Path("a.plan").write_text(FLAWED)
    ran = run("review", "a.plan")
    assert (ran.status, ran.err) == (1, "")
    assert "parts-overlap" in ran.out


def test_text_that_does_not_read(run: Run) -> None:
    Path("a.plan").write_text(UNREADABLE)
    ran = run("review", "a.plan")
    assert (ran.status, ran.err) == (2, "")
    assert "a.plan:4:1: error: text not read" in ran.out
    assert "No statement begins with “prat”." in ran.out


def test_worst_of_several_plans_counts(run: Run) -> None:
    for name, text in (("a.plan", SOUND), ("b.plan", FLAWED), ("c.plan", UNREADABLE)):
        Path(name).write_text(text)
    assert run("review", "a.plan", "b.plan").status == 1
    assert run("review", "a.plan", "b.plan", "c.plan").status == 2


def test_level_makes_lighter_findings_count(run: Run) -> None:
    Path("a.plan").write_text(SOUND)
    weights = [run("review", "a.plan", "--level", level).status for level in ("error", "warning", "note")]
    assert weights == sorted(weights)
    assert weights[0] == 0
    assert weights[-1] == 1  # what is taken for granted of the block is a note


@pytest.mark.parametrize(
    "call",
    [
        [],
        ["review"],
        ["revue", "a.plan"],
        ["review", "a.plan", "--level", "all"],
        ["review", "--htlm", "x", "a.plan"],
    ],
)
def test_call_that_makes_no_sense(run: Run, call: list[str]) -> None:
    ran = run(*call)
    assert ran.status == 2
    assert ran.out == ""
    assert "usage: dryfit" in ran.err


def test_rule_that_is_not_there(run: Run) -> None:
    ran = run("explain", "part-overlap")
    assert (ran.status, ran.out) == (2, "")
    assert ran.err.startswith("dryfit: no rule is called “part-overlap”. Did you mean parts-overlap")


def test_rule_and_lists_are_shown(run: Run) -> None:
    assert run("explain", "parts-overlap").out.startswith("parts-overlap (error, about fit)\n")
    assert "parts-overlap" in run("rules").out
    assert "sag-ratio: 240\n" in run("limits").out
    assert run("--version").status == 0


def test_report_over_a_plan_is_refused_and_the_plan_stays(run: Run) -> None:
    Path("a.plan").write_text(SOUND)
    for option in ("--html", "--json"):
        ran = run("review", "a.plan", option, "a.plan")
        assert ran.status == 2
        assert ran.err == (
            "dryfit: a.plan is a plan under review; a report would wipe it out. "
            "Name another file for the report.\n"
        )
    assert Path("a.plan").read_text() == SOUND


def test_report_in_a_folder_that_is_not_there(run: Run) -> None:
    Path("a.plan").write_text(SOUND)
    ran = run("review", "a.plan", "--json", "no/such/a.json")
    assert ran.status == 2
    assert "There is no folder" in ran.err


def as_command(*arguments: str, cwd: Path, **more: str) -> subprocess.CompletedProcess[bytes]:
    return subprocess.run(
        [sys.executable, "-m", "reviewer", *arguments],
        cwd=cwd,
        capture_output=True,
        env={**os.environ, "NO_COLOR": "1", **more},
        check=False,
    )


def test_same_bytes_whatever_the_hash_seed_and_the_folder(tmp_path: Path) -> None:
    here, there = tmp_path / "here", tmp_path / "there" / "deeper"
    for folder in (here, there):
        folder.mkdir(parents=True)
        (folder / "a.plan").write_text(FLAWED)
        (folder / "b.plan").write_text(UNREADABLE)
    runs = [
        as_command("review", ".", "--html", "r.html", "--json", "r.json", cwd=folder, PYTHONHASHSEED=seed)
        for folder, seed in ((here, "0"), (here, "42"), (there, "7"))
    ]
    seen = {(ran.returncode, ran.stdout, ran.stderr) for ran in runs}
    assert len(seen) == 1
    assert (here / "r.html").read_bytes() == (there / "r.html").read_bytes()
    assert (here / "r.json").read_bytes() == (there / "r.json").read_bytes()
    assert runs[0].returncode == 2


def test_reader_that_goes_away_is_no_traceback(tmp_path: Path) -> None:
    (tmp_path / "a.plan").write_text(FLAWED)
    command = subprocess.Popen(
        [sys.executable, "-m", "reviewer", "review", *["a.plan"], "--full"],
        cwd=tmp_path,
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
    )
    assert command.stdout is not None
    assert command.stderr is not None
    command.stdout.close()  # like a pager that is left at once
    assert command.stderr.read() == b""
    assert command.wait() == 141
    command.stderr.close()


def test_output_is_utf_8_whatever_the_locale(tmp_path: Path) -> None:
    (tmp_path / "a.plan").write_text(UNREADABLE)
    ran = as_command("review", "a.plan", cwd=tmp_path, LC_ALL="C", PYTHONIOENCODING="ascii", PYTHONUTF8="0")
    assert ran.returncode == 2
    assert "“prat”" in ran.stdout.decode("utf-8")


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="only some systems have an output that is full")
@pytest.mark.parametrize("asked", [["review", "{plan}"], ["review", "{plan}", "--full"], ["rules"]])
def test_an_output_that_is_full_is_told(asked: list[str], tmp_path: Path) -> None:
    plan = tmp_path / "p.plan"
    plan.write_text(SOUND, encoding="utf-8")
    with open("/dev/full", "w") as full:
        command = [sys.executable, "-m", "reviewer", *(word.format(plan=plan) for word in asked)]
        done = subprocess.run(command, stdout=full, stderr=subprocess.PIPE, text=True, check=False)
    assert done.returncode == 2
    assert done.stderr == (
        "dryfit: What was found could not be written out: No space left on device. "
        "Make room there, or send it elsewhere.\n"
    )
