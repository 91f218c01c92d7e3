"""A rule's page: its docstring, read into sections, with the two plans that the tests run."""

from __future__ import annotations

import re
from dataclasses import dataclass
from textwrap import dedent

from reviewer.rulebook import Rule

#: The headings of a page, in order. The last two are plans.
HEADINGS = ("Goes wrong", "Judged by", "Leaves out", "Sources", "Flagged", "Quiet")
_HEADING = re.compile(rf"^({'|'.join(HEADINGS)}):[ ]?", re.MULTILINE)


class PageError(Exception):
    """A rule's docstring lacks a heading or a plan."""


@dataclass(frozen=True)
class Page:
    """A rule's documentation, part by part. ``flagged`` and ``quiet`` are whole plans."""

    summary: str
    goes_wrong: str
    judged_by: str
    leaves_out: str
    sources: str
    flagged: str
    quiet: str


def page_of(rule: Rule) -> Page:
    """The page of a rule. Raises PageError when a heading is missing or out of order."""
    text = rule.page
    found = list(_HEADING.finditer(text))
    if tuple(match.group(1) for match in found) != HEADINGS:
        raise PageError(f"{rule.name}: a page has the headings {', '.join(HEADINGS)}, once each, in order")
    ends = [match.start() for match in found[1:]] + [len(text)]
    bodies = [text[match.end() : end].strip("\n") for match, end in zip(found, ends, strict=True)]
    prose = [" ".join(body.split()) for body in bodies[:4]]
    plans = [dedent(body) + "\n" for body in bodies[4:]]
    summary = text[: found[0].start()].strip()
    if not summary or not all(prose) or not all(plan.strip() for plan in plans):
        raise PageError(f"{rule.name}: a part of its page is empty")
    return Page(summary, *prose, *plans)
