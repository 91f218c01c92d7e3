"""The plans in plans/ review clean; each in plans/flawed/ raises what its mark says, on that part and line."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from reviewer.files import PlanFile, beside, read_plan
from reviewer.findings import Severity
from reviewer.reviewing import Reviewed, reviewed
from reviewer.rulebook import all_rules
from reviewer.wording import next_step, sentence
from tests.support import settings

PLANS = Path(__file__).parent.parent / "plans"
SOUND = sorted(PLANS.glob("*.plan"))
FLAWED = sorted((PLANS / "flawed").glob("*.plan"))
MARK = re.compile(r"#\s*<-\s*(?P<rule>[\w-]+)(?::\s*(?P<part>\S+))?")


def review(path: Path) -> Reviewed:
    plan = read_plan(str(path))
    assert isinstance(plan, PlanFile)
    return reviewed(path.name, plan.text, settings(), all_rules(), beside(plan))


def test_there_are_plans() -> None:
    assert len(SOUND) >= 4
    assert len(FLAWED) >= 21
    assert any(" in millimetres" in path.read_text(encoding="utf-8") for path in SOUND)


@pytest.mark.parametrize("path", SOUND, ids=lambda path: path.stem)
def test_sound_plan_reviews_clean(path: Path) -> None:
    found = review(path)
    assert found.problems == ()
    assert found.judgement is not None
    heavy = [f"{f.rule}: {f.says}" for f in found.judgement.findings if f.weight > Severity.NOTE]
    assert heavy == []
    assert not found.judgement.waiting


@pytest.mark.parametrize("path", FLAWED, ids=lambda path: path.stem)
def test_flawed_plan_raises_what_its_mark_says(path: Path) -> None:
    found = review(path)
    marks = [
        (number, match["rule"], match["part"])
        for number, line in enumerate(found.source.text.splitlines(), start=1)
        if (match := MARK.search(line))
    ]
    assert len(marks) == 1
    line, rule, part = marks[0]
    if rule == "unreadable":
        assert found.judgement is None
        assert [found.source.place(problem.span.start).line for problem in found.problems] == [line]
        return
    assert found.judgement is not None, [problem.says for problem in found.problems]
    here = [
        finding
        for finding in found.judgement.findings
        if finding.rule == rule and (part == "-" or part in finding.parts)
    ]
    assert here, sorted({finding.rule for finding in found.judgement.findings})
    assert line in [found.source.place(finding.at.start).line for finding in here]


@pytest.mark.parametrize("path", FLAWED, ids=lambda path: path.stem)
def test_flawed_plan_has_that_one_slip(path: Path) -> None:
    """The marked fault is the only error, so that the plan teaches one thing."""
    found = review(path)
    if found.judgement is None:
        return
    match = MARK.search(found.source.text)
    assert match
    errors = {finding.rule for finding in found.judgement.findings if finding.weight is Severity.ERROR}
    assert errors <= {match["rule"]}


@pytest.mark.parametrize("path", [*SOUND, *FLAWED], ids=lambda path: path.stem)
def test_no_sentence_says_a_word_twice(path: Path) -> None:
    """A unit or a count that is filled in must not stand in the template as well."""
    found = review(path)
    if found.review is None or found.judgement is None:
        return
    for finding in found.judgement.findings:
        said = f"{sentence(finding, found.review.units)} {next_step(finding, found.review.units)}"
        # "0.5 in in the long run" is right: an inch, then a word.
        assert not re.search(r"\b(?!in\b)([a-z]{2,}) \1\b", said), said


def test_every_rule_has_a_flawed_plan() -> None:
    shown = {match["rule"] for path in FLAWED for match in MARK.finditer(path.read_text(encoding="utf-8"))}
    # A note of something taken for granted is no flaw; every plan shows it.
    assert set(all_rules()) - shown == {"assumed"}
