"""Every rule's page is whole, and its two plans do what it says they do."""

from __future__ import annotations

import pytest

from reviewer.pages import HEADINGS, page_of
from reviewer.reference.limits import default_limits
from reviewer.rulebook import all_rules
from tests.support import judgement_of

RULES = all_rules()


def test_rules_were_found() -> None:
    assert len(RULES) >= 19


@pytest.mark.parametrize("name", RULES)
def test_page_is_whole(name: str) -> None:
    page = page_of(RULES[name])
    assert "\n" not in page.summary
    assert len(HEADINGS) == 6


@pytest.mark.parametrize("name", RULES)
def test_limits_exist(name: str) -> None:
    assert set(RULES[name].limits) <= set(default_limits())


@pytest.mark.parametrize("name", RULES)
def test_flagged_plan_is_flagged(name: str) -> None:
    found = judgement_of(page_of(RULES[name]).flagged)
    assert name in {finding.rule for finding in found.findings}


@pytest.mark.parametrize("name", RULES)
def test_quiet_plan_is_quiet(name: str) -> None:
    found = judgement_of(page_of(RULES[name]).quiet)
    assert name not in {finding.rule for finding in found.findings}
    assert name in found.ran
