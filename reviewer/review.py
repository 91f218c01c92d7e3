"""A review in hand: the plan, the piece in space, and everything worked out from them, once, on demand.

Rules and reports read this and nothing else. Each ``cached_property`` is a stage of the road that
costs nothing until something asks for it.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from reviewer.language.source import Source, Span
from reviewer.limits import Limit, Limits
from reviewer.model.plan import Plan
from reviewer.setting_out.result import SettingOut
from reviewer.units import UnitSystem

if TYPE_CHECKING:
    pass


@dataclass(frozen=True, eq=False)
class Review:
    """One plan under review. Frozen: a rule can read, never write."""

    source: Source
    plan: Plan
    setting: SettingOut
    limits: Limits

    @property
    def units(self) -> UnitSystem:
        return self.plan.units

    def limit(self, name: str) -> Limit:
        """A limit in force here: the plan's own word, else the folder's settings, else the default."""
        return self.limits[name]

    def span_of(self, part: str) -> Span:
        """Where a part was declared; the title line for the floor, the wall and the whole piece."""
        found = self.plan.parts.get(part)
        return found.span if found else self.plan.span
