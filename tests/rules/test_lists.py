"""The lists of rules say what the files say, and what a rule needs is what it finds nothing without."""

from __future__ import annotations

import importlib
import sys
from collections.abc import Iterator
from operator import attrgetter
from pathlib import Path

import pytest

from reviewer.judging import CRASHED, judge
from reviewer.pages import page_of
from reviewer.review import Review
from reviewer.reviewing import reviewed
from reviewer.rulebook import LIST, RuleNameError, all_rules, collected, modules, packages, rules_in
from reviewer.shelf import list_of, main
from tests.support import review_of, settings

PLANS = sorted(Path("plans").rglob("*.plan"))
BENCH = """
    plan "Bench" in inches
    stock board: 1x8 pine
    part seat: board, across, flat, 30 long, left at 0, front at 0, on floor
"""
RULE = '''
from reviewer.findings import Finding, Severity
from reviewer.rulebook import rule

@rule("{name}", topic="pack", severity=Severity.NOTE, needs=({needs}))
def judged(review):
    """{name} is told."""
    yield Finding((), review.plan.span, "Told.", "Do.")
'''


@pytest.mark.parametrize("package", packages())
def test_the_list_says_what_the_files_say(package: str) -> None:
    (folder,) = importlib.import_module(package).__path__
    written = Path(folder, LIST)
    assert written.exists(), "run python -m reviewer.shelf"
    assert written.read_text(encoding="utf-8") == list_of(package), "run python -m reviewer.shelf"


def test_the_shelf_from_the_lists_is_the_shelf_from_the_files() -> None:
    made = {
        rule.name: rule for package in packages() for module in modules(package) for rule in rules_in(module)
    }
    assert {name: rule.facts for name, rule in all_rules().items()} == {
        name: made[name].facts for name in sorted(made)
    }
    assert {name: rule.page for name, rule in all_rules().items()} == {
        name: made[name].page for name in sorted(made)
    }


def _idle(review: Review) -> int:
    """How many rules lack what they need here. They are asked all the same, and must find nothing."""
    placed = review.setting.whole and not review.plan.unknown
    idle = 0
    for rule in all_rules().values():
        if rule.timing.value == "whole" and not placed:
            continue
        if not all(attrgetter(need)(review) for need in rule.needs):
            idle += 1
            assert list(rule.judge(review)) == [], rule.name
    return idle


@pytest.mark.parametrize("name", all_rules())
def test_a_rule_finds_nothing_without_what_it_needs(name: str) -> None:
    page = page_of(all_rules()[name])
    assert _idle(review_of(page.flagged)) + _idle(review_of(page.quiet)) > 5


@pytest.mark.parametrize("plan", PLANS, ids=str)
def test_nor_in_a_plan_of_ours(plan: Path) -> None:
    review = reviewed(plan.name, plan.read_text(encoding="utf-8"), settings(), {}).review
    if review is None:
        pytest.skip("a plan with a slip in its words, a file that others use, or one that uses others")
    assert _idle(review) > 0


# ---------------------------------------------------------------- a workshop's own pack


@pytest.fixture
def pack(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[Path]:
    folder = tmp_path / "workshop_pack"
    folder.mkdir()
    (folder / "__init__.py").write_text("")
    (folder / "one.py").write_text(RULE.format(name="one-told", needs=""))
    (folder / "two.py").write_text(RULE.format(name="two-told", needs='"plan.finishes",'))
    monkeypatch.syspath_prepend(str(tmp_path))
    yield folder
    for name in [name for name in sys.modules if name.startswith("workshop_pack")]:
        del sys.modules[name]


def test_a_pack_without_a_list_is_read_file_by_file(pack: Path) -> None:
    assert list(collected(["workshop_pack"])) == ["one-told", "two-told"]
    assert "workshop_pack.two" in sys.modules


def test_a_pack_with_a_list_loads_what_is_needed(pack: Path) -> None:
    main(["workshop_pack"])
    for name in ("workshop_pack.one", "workshop_pack.two"):
        del sys.modules[name]
    rules = collected(["workshop_pack"])
    assert list(rules) == ["one-told", "two-told"]
    found = judge(review_of(BENCH), rules)
    assert [finding.rule for finding in found.findings] == ["one-told"]
    assert found.ran == ("one-told", "two-told")
    assert "workshop_pack.one" in sys.modules
    assert "workshop_pack.two" not in sys.modules
    assert rules["two-told"].page == "two-told is told."


def test_a_new_file_is_found_before_the_list_knows_it(pack: Path) -> None:
    main(["workshop_pack"])
    (pack / "three.py").write_text(RULE.format(name="three-told", needs=""))
    importlib.invalidate_caches()
    assert list(collected(["workshop_pack"])) == ["one-told", "three-told", "two-told"]


def test_a_list_older_than_its_files_is_told(pack: Path) -> None:
    main(["workshop_pack"])
    (pack / LIST).write_text((pack / LIST).read_text().replace('"note"', '"error"'))
    found = judge(review_of(BENCH), collected(["workshop_pack"]))
    assert [finding.rule for finding in found.findings] == [CRASHED]
    assert "python -m reviewer.shelf workshop_pack" in str(found.findings[0].values["why"])


def test_a_name_used_twice_is_refused_on_lists_too(pack: Path) -> None:
    (pack / "two.py").write_text(RULE.format(name="one-told", needs=""))
    main(["workshop_pack"])
    with pytest.raises(RuleNameError):
        collected(["workshop_pack"])


def test_a_pack_with_folders_has_no_list(pack: Path) -> None:
    (pack / "more").mkdir()
    (pack / "more" / "__init__.py").write_text("")
    (pack / "more" / "three.py").write_text(RULE.format(name="three-told", needs=""))
    importlib.invalidate_caches()
    assert "three-told" in collected(["workshop_pack"])
    with pytest.raises(ValueError, match="folders"):
        main(["workshop_pack"])
