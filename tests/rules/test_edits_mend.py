"""Every edit that a review of a flawed plan offers, made: its finding goes and no new one comes."""

from __future__ import annotations

from collections import Counter
from pathlib import Path

import pytest

from reviewer.findings import Finding, Severity
from reviewer.reviewing import reviewed
from reviewer.rulebook import all_rules
from tests.support import plans_shared, settings

FLAWED = sorted((Path(__file__).parents[2] / "plans" / "flawed").glob("*.plan"))


def findings(name: str, text: str) -> tuple[Finding, ...] | None:
    """What is found in a plan; None where it can't be understood."""
    found = reviewed(name, text, settings(), all_rules(), plans_shared())
    return found.judgement.findings if found.judgement is not None else None


def told(found: tuple[Finding, ...]) -> Counter[tuple[str, tuple[str, ...]]]:
    """By rule and parts, what is more than a note: of what was put right, more may be worth knowing."""
    return Counter((each.rule, each.parts) for each in found if each.weight > Severity.NOTE)


#: What is known and still to be mended.
KNOWN: dict[str, str] = {}


@pytest.mark.parametrize(
    "path",
    [
        pytest.param(path, marks=pytest.mark.xfail(reason=KNOWN[path.stem], strict=True))
        if path.stem in KNOWN
        else path
        for path in FLAWED
    ],
    ids=[path.stem for path in FLAWED],
)
def test_every_edit_mends(path: Path) -> None:
    text = path.read_text("utf-8")
    before = findings(path.name, text)
    for finding in before or ():
        if finding.edit is None:
            continue
        assert before is not None
        start, end = finding.edit.span
        changed = text[:start] + finding.edit.text + text[end:]
        after = findings(path.name, changed)
        assert after is not None, (finding.rule, finding.edit.text)
        same = [
            each
            for each in after
            if (each.rule, each.at.start) == (finding.rule, finding.at.start)
            and each.weight >= finding.weight  # what stays is no more than worth knowing
        ]
        assert not same, (finding.rule, finding.edit.text, same[0].says)
        new = told(after) - told(before)
        assert not new, (finding.rule, finding.edit.text, new)
