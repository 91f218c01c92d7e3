"""A board with a finish on it: the smallest plan that a finishing rule can judge."""

from __future__ import annotations

from reviewer.findings import Finding
from tests.support import findings_of

OAK = "actual 3/4 x 9 1/4 red oak"


def board(*steps: str, stock: str = OAK, more: str = "") -> str:
    """A plan in inches whose one board gets the steps."""
    lines = [
        'plan "Window board" in inches',
        f"stock board: {stock}, 8 ft",
        "part sill: board, across, flat, 24 long, bottom at 0, left at 0, front at 0",
        "finish whole: on sill",
        *(f"    {step}" for step in steps),
        more,
    ]
    return "\n".join(lines) + "\n"


def mended(plan: str, rule: str) -> tuple[str, tuple[Finding, ...]]:
    """The plan with the edit of its only finding applied, and what the rule then says."""
    (finding,) = findings_of(plan, rule)
    edit = finding.edit
    assert edit is not None
    changed = plan[: edit.span.start] + edit.text + plan[edit.span.end :]
    return changed, findings_of(changed, rule)
