"""Limits by name: a default with its source, a folder's settings over it, the plan's own word over both."""

from __future__ import annotations

from collections.abc import Mapping

from reviewer.records import NamedTuple
from reviewer.units import Value


class Limit(NamedTuple):
    """A limit in force: its value, and who set it (a source, the settings file, or the plan)."""

    name: str
    value: Value
    meaning: str
    source: str

    @property
    def amount(self) -> float:
        """The number in the inside unit of its kind."""
        return self.value.amount


Limits = Mapping[str, Limit]
