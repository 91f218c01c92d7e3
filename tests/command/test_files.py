"""Which files a call means, and what is said of one that gives no plan."""

from __future__ import annotations

import os
from collections.abc import Callable
from pathlib import Path

import pytest

from reviewer.files import MAX_BYTES, PlanFile, plans_meant, read_plan
from reviewer.language.problems import FileProblem
from tests.command.conftest import Ran
from tests.command.pieces import FLAWED, SOUND

Run = Callable[..., Ran]


def problem(name: str) -> FileProblem:
    found = read_plan(name)
    assert isinstance(found, FileProblem)
    return found


def test_standard_input(run: Run) -> None:
    ran = run("review", "-", stdin=FLAWED.encode())
    assert ran.status == 1
    assert "standard input:" in ran.out


def test_standard_input_with_windows_lines_and_a_mark_at_its_start(run: Run) -> None:
    assert run("review", "-", stdin=b"\xef\xbb\xbf" + SOUND.replace("\n", "\r\n").encode()).status == 0


def test_folder_means_every_plan_below_it_sorted(run: Run, tmp_path: Path) -> None:
    (tmp_path / "in" / "deep").mkdir(parents=True)
    for name in ("in/b.plan", "in/a.plan", "in/deep/c.plan", "in/notes.txt"):
        (tmp_path / name).write_text(SOUND)
    (tmp_path / "in" / "folder.plan").mkdir()
    names, problems = plans_meant(["in"])
    assert [Path(name).as_posix() for name in names] == ["in/a.plan", "in/b.plan", "in/deep/c.plan"]
    assert problems == []
    assert run("review", "in").status == 0


def test_plan_named_twice_is_reviewed_once(run: Run) -> None:
    Path("a.plan").write_text(SOUND)
    assert plans_meant(["a.plan", ".", "a.plan"]) == (["a.plan"], [])


def test_folder_without_plans(run: Run, tmp_path: Path) -> None:
    (tmp_path / "empty").mkdir()
    ran = run("review", "empty")
    assert ran.status == 2
    assert "There is no plan in the folder empty." in ran.out
    assert "A plan's file name ends in .plan; name the file itself, or another folder." in ran.out


def test_missing_file_with_a_near_name(run: Run) -> None:
    Path("reading-bench.plan").write_text(SOUND)
    for name in ("reding-bench.plan", "reading-bench", "reading-bench.txt"):
        assert problem(name) == (name, f"There is no file {name}.", "Did you mean reading-bench.plan?")
    assert run("review", "reding-bench.plan").status == 2


def test_missing_file_without_one(run: Run) -> None:
    Path("reading-bench.plan").write_text(SOUND)
    assert problem("stool.plan").do == "Look at the folder and the spelling of the name."
    assert problem("no/such/folder/a.plan").do == "Look at the folder and the spelling of the name."


def test_binary_file(run: Run) -> None:
    Path("a.plan").write_bytes(bytes(range(256)))
    assert problem("a.plan") == (
        "a.plan",
        "a.plan is not a text file.",
        "Name a plan, which is plain text in UTF-8.",
    )
    Path("a.plan").write_bytes(b"a" * 10_000 + b"\0")
    assert problem("a.plan").says == "a.plan is not a text file."


@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "utf-16", "utf-16-le", "utf-16-be"])
def test_encodings(run: Run, encoding: str) -> None:
    text = SOUND.replace("Block", "Bänkchen 🪵")
    data = text.encode(encoding)
    if encoding in ("utf-16-le", "utf-16-be"):
        data = "\ufeff".encode(encoding) + data
    Path("a.plan").write_bytes(data)
    found = read_plan("a.plan")
    assert isinstance(found, PlanFile)
    assert found.text.removeprefix("\ufeff") == text
    assert run("review", "a.plan").status == 0


def test_utf_16_without_its_mark_and_cut_short(run: Run) -> None:
    Path("a.plan").write_bytes(SOUND.encode("utf-16-le"))
    assert problem("a.plan").says == "a.plan is not a text file."
    Path("a.plan").write_bytes(SOUND.encode("utf-16")[:-1])
    assert "a.plan is not text in UTF-8" in problem("a.plan").says


def test_other_encodings_are_told_with_the_line(run: Run) -> None:
    Path("a.plan").write_bytes(b'plan "A" in inches\n# f\xfcr die Diele\n')
    assert problem("a.plan") == (
        "a.plan",
        "a.plan is not text in UTF-8: line 2 holds something else.",
        "Save it again as UTF-8 (plain text).",
    )


def test_file_far_too_large(run: Run) -> None:
    Path("a.plan").write_bytes(b"#" * (MAX_BYTES + 1))
    assert problem("a.plan").says == "a.plan is larger than 16 MB, far beyond any plan."


def test_no_ordinary_file(run: Run, tmp_path: Path) -> None:
    os.mkfifo(tmp_path / "a.plan")
    assert problem("a.plan").says == "a.plan is not an ordinary file."
    assert run("review", "a.plan").status == 2


@pytest.mark.parametrize("name", ["a" * 5_000, "a\0b.plan", ""])
def test_names_that_no_file_can_have(run: Run, name: str) -> None:
    ran = run("review", name)
    assert ran.status == 2
    assert "Traceback" not in ran.out + ran.err


@pytest.mark.skipif(not hasattr(os, "geteuid") or os.geteuid() == 0, reason="root may read everything")
def test_unreadable_file(run: Run) -> None:
    Path("a.plan").write_text(SOUND)
    Path("a.plan").chmod(0)
    assert problem("a.plan").says == "a.plan cannot be opened: Permission denied."


def test_file_that_cannot_be_opened(run: Run, monkeypatch: pytest.MonkeyPatch) -> None:
    Path("a.plan").write_text(SOUND)

    def refuse(*_: object, **__: object) -> None:
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr(Path, "open", refuse)
    assert problem("a.plan") == (
        "a.plan",
        "a.plan cannot be opened: Permission denied.",
        "Look at the name and who may read it.",
    )


def test_folder_out_of_reach(run: Run, monkeypatch: pytest.MonkeyPatch) -> None:
    def refuse(*_: object, **__: object) -> None:
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr(Path, "is_dir", refuse)
    assert plans_meant(["kept/a.plan"]) == (["kept/a.plan"], [])
