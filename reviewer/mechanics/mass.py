"""Masses and the place where many act as one."""

from __future__ import annotations

import math
from collections.abc import Iterable

from reviewer.records import NamedTuple
from reviewer.units import NEWTON_PER_KG


class Mass(NamedTuple):
    """A mass in kg and its centre: x and y along the floor, z up from it, mm."""

    kg: float
    x: float
    y: float
    z: float

    @property
    def weight(self) -> float:
        """Its weight in newtons."""
        return self.kg * NEWTON_PER_KG

    def moved(self, x: float = 0.0, y: float = 0.0, z: float = 0.0) -> Mass:
        """The same mass so many mm further on: an opened drawer, a turned door."""
        return Mass(self.kg, self.x + x, self.y + y, self.z + z)


def combined(masses: Iterable[Mass]) -> Mass | None:
    """One mass in place of many, at their common centre; None when they weigh nothing."""
    held = list(masses)
    total = math.fsum(mass.kg for mass in held)
    if total <= 0:
        return None
    return Mass(
        total,
        math.fsum(mass.kg * mass.x for mass in held) / total,
        math.fsum(mass.kg * mass.y for mass in held) / total,
        math.fsum(mass.kg * mass.z for mass in held) / total,
    )
