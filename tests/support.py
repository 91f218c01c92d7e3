"""What the tests share: a review of a plan's text, and its findings as a person reads them."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from pathlib import Path
from textwrap import dedent

from reviewer.findings import Finding
from reviewer.judging import Judgement
from reviewer.language.sharing import Loader, from_texts
from reviewer.reference.limits import default_limits
from reviewer.review import Review
from reviewer.reviewing import Reviewed, reviewed
from reviewer.rulebook import all_rules
from reviewer.settings import Settings
from reviewer.wording import next_step, sentence


@cache
def settings() -> Settings:
    return Settings(default_limits())


@cache
def plans_shared() -> Loader:
    """Gives the files that the plans in plans/ use, wherever their text is reviewed."""
    folder = Path(__file__).parent.parent / "plans"
    files = sorted((folder / "shared").glob("*.plan"))
    return from_texts({path.relative_to(folder).as_posix(): path.read_text("utf-8") for path in files})


def look_at(
    text: str, *, only: str | None = None, name: str = "test.plan", files: Mapping[str, str] | None = None
) -> Reviewed:
    """The review of a plan (indented text is fine) with the ``files`` it may use. ``only`` keeps one rule."""
    rules = all_rules()
    shelf = rules if only is None else {only: rules[only]}
    return reviewed(name, dedent(text), settings(), shelf, from_texts(files or {}))


def review_of(text: str) -> Review:
    """The review in hand, without a rule run. Fails when the text cannot be understood."""
    found = reviewed("test.plan", dedent(text), settings(), {})
    assert found.review is not None, [problem.says for problem in found.problems]
    return found.review


def judgement_of(text: str, only: str | None = None) -> Judgement:
    """The judgement of a plan that can be understood."""
    found = look_at(text, only=only)
    assert found.judgement is not None, [problem.says for problem in found.problems]
    return found.judgement


def findings_of(text: str, rule: str) -> tuple[Finding, ...]:
    """What one rule finds in a plan."""
    return judgement_of(text, only=rule).findings


def told(text: str, rule: str) -> list[str]:
    """What one rule says of a plan: ``severity parts @ marked words: sentence → next step``."""
    found = look_at(text, only=rule)
    assert found.judgement is not None, [problem.says for problem in found.problems]
    assert found.review is not None
    units = found.review.units
    return [
        f"{finding.weight.word} {', '.join(finding.parts) or '-'} @ {found.source.words(finding.at)}: "
        f"{sentence(finding, units)} → {next_step(finding, units)}"
        for finding in found.judgement.findings
    ]
