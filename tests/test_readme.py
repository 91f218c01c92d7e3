"""What the README shows is what the tool says today."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from reviewer.cli import main

TOP = Path(__file__).parent.parent
README = (TOP / "README.md").read_text(encoding="utf-8")
BLOCKS = re.findall(r"^```(?:\w*)\n(.*?)^```", README, re.DOTALL | re.MULTILINE)


def test_the_language_page_shows_the_reading_bench() -> None:
    assert (TOP / "plans" / "reading-bench.plan").read_text(encoding="utf-8") in BLOCKS


def test_the_terminal_shows_a_real_review(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    shown = next(block for block in BLOCKS if "plans/flawed/" in block and "error:" in block)
    monkeypatch.chdir(TOP)
    assert main(["review", "plans/flawed/cut-does-not-fit.plan"]) == 1
    said = capsys.readouterr().out
    first, last = shown.split("\n…\n")
    assert said.startswith(first)
    assert said.endswith(last.lstrip("\n"))


def test_the_table_of_sizes_is_a_real_one(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    said = re.search(
        r'`--measure "(length=[^"]+)"`, the bench below gives\n\n  ```\n(.*?)\n  ```', README, re.DOTALL
    )
    assert said
    monkeypatch.chdir(TOP)
    assert main(["review", "plans/reading-bench.plan", "--measure", said[1]]) == 1
    shown = re.sub("^  ", "", said[2], flags=re.MULTILINE)
    assert capsys.readouterr().out.startswith(f"{shown}\n\n")


def test_the_two_commands_come_first_and_name_what_exists() -> None:
    review, run_tests = BLOCKS[:2]
    assert README.index(review) < README.index("## ")
    plan = re.search(r"review (\S+\.plan) --html", review)
    assert plan
    assert (TOP / plan.group(1)).is_file()
    assert run_tests.rstrip().endswith("python -m pytest")
    assert "python -m pytest" in (TOP / ".ci" / "run").read_text(encoding="utf-8")


@pytest.mark.parametrize("target", re.findall(r"\]\(([^)#:]+)\)", README))
def test_what_it_points_at_is_there(target: str) -> None:
    assert (TOP / target).exists()
