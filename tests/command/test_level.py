"""The lightest finding that fails a review: the folder's word, and the call's word over it."""

from __future__ import annotations

from pathlib import Path

import pytest

from reviewer.cli import main

#: One warning and no error: nothing keeps the seat on its frame.
LOOSE = (Path(__file__).parents[2] / "plans" / "flawed" / "touching-not-joined.plan").read_text(
    encoding="utf-8"
)


@pytest.fixture
def plan(tmp_path: Path) -> Path:
    path = tmp_path / "loose.plan"
    path.write_text(LOOSE, encoding="utf-8")
    return path


def test_by_itself_a_warning_does_not_fail(plan: Path) -> None:
    assert main(["review", str(plan)]) == 0


def test_a_folder_can_ask_for_more(plan: Path) -> None:
    (plan.parent / "dryfit.toml").write_text('level = "warning"\n', encoding="utf-8")
    assert main(["review", str(plan)]) == 1


def test_the_call_has_the_last_word(plan: Path) -> None:
    (plan.parent / "dryfit.toml").write_text('level = "warning"\n', encoding="utf-8")
    assert main(["review", "--level", "error", str(plan)]) == 0
    (plan.parent / "dryfit.toml").unlink()
    assert main(["review", "--level", "warning", str(plan)]) == 1


def test_a_level_that_nothing_knows_is_refused(plan: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (plan.parent / "dryfit.toml").write_text('level = "loud"\n', encoding="utf-8")
    assert main(["review", str(plan)]) == 2
    said = capsys.readouterr().err
    assert "The level is given as “loud”." in said
    assert "error, warning" in said
