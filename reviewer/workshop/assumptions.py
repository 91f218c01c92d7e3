"""What the plan leaves unsaid and the reviewer had to take for granted, each with its source."""

from __future__ import annotations

from reviewer.findings import Filling
from reviewer.language.source import Span
from reviewer.records import NamedTuple


class Assumption(NamedTuple):
    """One thing taken for granted: about which parts, what, where it comes from, how to say otherwise."""

    about: str  # "seat.1", "every pocket screw", "the hall"
    what: str  # template, may use {value}
    value: Filling
    source: str
    say: str  # the words that would replace it in the plan
    span: Span
