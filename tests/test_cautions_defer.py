"""Where work can hurt someone, every sentence gives the usual practice and defers; none of them certifies.

Read here: every caution of the workshop, every sentence about a regulated piece, the page of every rule of
safety, and every sentence that these rules can say (from their flagged plans and those in plans/flawed/).
"""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from reviewer.files import PlanFile, beside, read_plan
from reviewer.findings import SAFETY, Finding
from reviewer.pages import page_of
from reviewer.reference.cautions import regulated_pieces, shop_cautions
from reviewer.reports.cautions import _WORK
from reviewer.reports.content import Report
from reviewer.reports.html import render_html
from reviewer.reports.terminal import render_terminal
from reviewer.reviewing import reviewed
from reviewer.rulebook import all_rules
from reviewer.units import UnitSystem
from reviewer.wording import next_step, sentence
from tests.support import look_at, settings

RULES = {name: rule for name, rule in all_rules().items() if rule.topic == SAFETY}
FLAWED = sorted((Path(__file__).parent.parent / "plans" / "flawed").glob("*.plan"))

#: What no sentence of ours may promise.
PROMISES = re.compile(
    r"\b(?:(?:is|are|it's|will be|makes? it|perfectly|completely|totally) safe|complies|compliant|approved"
    r"|certified by|meets the (?:rule|standard|code)|no restraint (?:is )?needed|guarantee[sd]?|cannot tip"
    r"|can't tip|harmless|risk-free|foolproof|no danger)\b",
    re.IGNORECASE,
)
#: Who or what decides beyond us: one of them stands in each rule's page and in each next step.
DEFERS = re.compile(
    r"local (?:\w+ )?(?:codes?|rules|waste rules)|licensed|standards?\b|test laboratory|tradesperson|health office"
    r"|renovator|instructions|label|certif|an estimate is no test|in charge of the place|for a living|decides?\b",
    re.IGNORECASE,
)
#: What every page names: the codes of the place, or those who are licensed.
LOCAL = re.compile(r"local (?:codes?|rules)|licensed", re.IGNORECASE)


def said_by(name: str) -> list[tuple[Finding, str, str]]:
    """Everything that a rule says of its own flagged plan, and of every flawed plan."""
    found: list[tuple[Finding, UnitSystem]] = []
    own = look_at(page_of(RULES[name]).flagged, only=name)
    assert own.judgement
    assert own.review
    found += [(finding, own.review.units) for finding in own.judgement.findings]
    for path in FLAWED:
        text = read_plan(str(path))
        assert isinstance(text, PlanFile)
        there = reviewed(path.name, text.text, settings(), {name: RULES[name]}, beside(text))
        if there.judgement and there.review:
            found += [(finding, there.review.units) for finding in there.judgement.findings]
    return [(finding, sentence(finding, units), next_step(finding, units)) for finding, units in found]


@pytest.mark.parametrize("caution", shop_cautions(), ids=lambda caution: caution.about)
def test_a_caution_is_whole_and_promises_nothing(caution: object) -> None:
    hazard, usual = caution.hazard, caution.usual  # type: ignore[attr-defined]
    assert len(hazard) > 3
    assert usual.endswith(".")
    assert usual[0].isupper()
    assert not PROMISES.search(f"{hazard} {usual}")
    assert caution.source  # type: ignore[attr-defined]


@pytest.mark.parametrize("piece", regulated_pieces(), ids=lambda piece: piece.kind)
def test_a_regulated_piece_names_its_rule_and_promises_nothing(piece: object) -> None:
    words, rule = piece.words, piece.rule  # type: ignore[attr-defined]
    assert len(rule) > 5
    assert words.endswith(".")
    assert not PROMISES.search(words)


def test_the_reports_defer_where_they_list_cautions() -> None:
    found = look_at(page_of(RULES["tips"]).flagged)
    report = Report(found.source, review=found.review, judgement=found.judgement)
    page = " ".join(render_html([report]).split())
    listed = page.partition("Usual cautions</h3>")[2].partition("<dl")[0]
    assert "local codes, the manuals of your tools" in listed
    assert "licensed practice come first" in listed
    text = " ".join(render_terminal([report], full=True).split())
    listed = text.partition("Usual cautions for this work")[2]
    assert listed.index("licensed practice come first") < listed.index(_WORK["shop"])


@pytest.mark.parametrize("name", RULES)
def test_a_safety_rules_page_defers_and_promises_nothing(name: str) -> None:
    page = RULES[name].page.partition("Flagged:")[0]
    assert not PROMISES.search(page)
    assert LOCAL.search(page), "say who decides: local codes or rules, licensed practice"


@pytest.mark.parametrize("name", RULES)
def test_a_safety_finding_defers_and_promises_nothing(name: str) -> None:
    told = said_by(name)
    assert told
    for finding, says, do in told:
        assert not PROMISES.search(f"{says} {do}"), says
        assert DEFERS.search(do), f"{finding.rule}: {do}"


@pytest.mark.parametrize(
    "words",
    ["This shelf is safe.", "It complies with 16 CFR 1261.", "The rail makes it safe.", "It cannot tip."],
)
def test_a_promise_would_be_seen(words: str) -> None:
    assert PROMISES.search(words)
    assert not DEFERS.search("Make it wider.")
