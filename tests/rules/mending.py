"""Edits that findings offer, applied: the fault must go and no other may come."""

from __future__ import annotations

from collections import Counter
from textwrap import dedent

from reviewer.findings import Finding
from tests.support import findings_of, judgement_of


def with_edit(text: str, finding: Finding) -> str:
    """The plan with the finding's edit made."""
    assert finding.edit is not None
    plain, (start, end) = dedent(text), finding.edit.span
    return plain[:start] + finding.edit.text + plain[end:]


def _told(text: str) -> Counter[tuple[str, tuple[str, ...]]]:
    # Of what is put right, more may be taken for granted; that is no fault.
    findings = (finding for finding in judgement_of(text).findings if finding.rule != "assumed")
    return Counter((finding.rule, finding.parts) for finding in findings)


def assert_mends(text: str, rule: str) -> str:
    """Apply the edit of a rule's only finding. It goes, and no new finding comes. Returns the new words."""
    (finding,) = findings_of(text, rule)
    changed = with_edit(text, finding)
    assert findings_of(changed, rule) == ()
    new = _told(changed) - _told(text)
    assert not new, new
    assert finding.edit is not None
    return finding.edit.text


def mended(text: str, rule: str) -> str:
    """The plan with the edit of a rule's first finding made."""
    return with_edit(text, findings_of(text, rule)[0])
