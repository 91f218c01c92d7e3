"""What a review says: values and spans here, words made at the edge.

A finding's sentences are templates (``"{part} is {cut} long"``) filled from ``values`` by
:mod:`reviewer.wording`, in the plan's own unit. So equality, JSON and tests see numbers, not prose.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field, replace
from enum import IntEnum

from reviewer.language.source import Span
from reviewer.records import dataclass
from reviewer.units import Value


class Severity(IntEnum):
    """How much a finding matters. The order is the order of weight."""

    NOTE = 1  # worth knowing
    WARNING = 2  # a good maker would change it
    ERROR = 3  # do not build this

    @property
    def word(self) -> str:
        return self.name.lower()


#: The topic of what can hurt someone: told first, never silent, and still told when it is accepted.
SAFETY = "safety"

#: What a template may be filled with: a measure, or the plan's own words (part names, stock names).
Filling = Value | str


@dataclass(frozen=True)
class Figure:
    """One line of the working: a name for the bench, its value, and where the value comes from."""

    name: str
    value: Filling
    source: str = ""


@dataclass(frozen=True)
class Working:
    """The sum behind a finding, so that anyone can do it again by hand."""

    figures: tuple[Figure, ...]
    formula: str = ""
    result: Figure | None = None
    limit: Figure | None = None


@dataclass(frozen=True)
class Edit:
    """A change of the plan's text: put ``text`` in place of the words under ``span``."""

    span: Span
    text: str


@dataclass(frozen=True)
class Finding:
    """One thing a rule saw. Rules fill the upper half; the judge stamps the lower half."""

    parts: tuple[str, ...]
    at: Span
    says: str
    do: str
    values: Mapping[str, Filling] = field(default_factory=dict)
    working: Working | None = None
    also_at: tuple[Span, ...] = ()
    edit: Edit | None = None
    severity: Severity | None = None  # only where it differs from the rule's own
    told_by: str = ""  # the rule that tells the same fault, and what to do about it, of the same parts
    settles: tuple[Span, ...] = ()  # words that are wrong: what others tell of them only follows from this

    rule: str = ""
    topic: str = ""
    weight: Severity = Severity.NOTE  # the severity in force after settings
    waived_because: str | None = None

    def stamped(self, rule: str, topic: str, weight: Severity) -> Finding:
        """The same finding with its rule's name and the severity in force."""
        return replace(self, rule=rule, topic=topic, weight=weight)


def rank(finding: Finding) -> tuple[bool, int]:
    """Where a finding stands in every report: what can hurt someone first, however heavy, then by weight."""
    return finding.topic != SAFETY, -finding.weight
