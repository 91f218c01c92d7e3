"""Parts that stand and carry down: the length over which each could bow, and what it may then bear."""

from __future__ import annotations

import math

from reviewer.mechanics.strength import axial_stress, column_buckling_stress, column_stability
from reviewer.model.plan import Axis, Stock
from reviewer.model.shapes import Rounded, Shape, Taper
from reviewer.records import NamedTuple
from reviewer.setting_out.result import Joint, SettingOut
from reviewer.setting_out.solid import Solid
from reviewer.units import TOLERANCE_MM
from reviewer.workshop.strengths import Strength, Strengths

#: A round column counts as a square one of the same area (NDS 3.7.3).
_ROUND = math.sqrt(math.pi / 4)
#: Below this share of the crushing value a column bows long before its wood gives way.
_SLENDER = 0.5


class Column(NamedTuple):
    """An upright part: the longest stretch with nothing to hold it, and the sides of its section, mm.

    ``upright`` is the cosine of its lean: along itself it is pressed with the force down over that.
    """

    part: str
    free: float
    sides: tuple[float, float]
    upright: float = 1.0

    def stress(self, force: float) -> float:
        """The stress along it (MPa) under a force straight down, N."""
        return axial_stress(force / self.upright, *self.sides)

    @property
    def least(self) -> float:
        return min(self.sides)

    @property
    def area(self) -> float:
        return self.sides[0] * self.sides[1]

    @property
    def slenderness(self) -> float:
        """Its free length over its thin side."""
        return self.free / self.least


def _held(joint: Joint) -> tuple[float, float] | None:
    """From where to where up a joint holds a part; None where nothing binds it."""
    join = joint.join
    binds = join.glue or join.housing or any(each.kind != "none" for each in join.fastenings)
    where = joint.contact or joint.overlap
    if not binds or where is None:
        return None
    low, high = where.low[Axis.UP], where.high[Axis.UP]
    return low, high


def column(name: str, solid: Solid, stock: Stock, shape: Shape | None, setting: SettingOut) -> Column:
    """An upright part as a column. It is held at both ends and wherever something is joined to it."""
    sides = [solid.width, solid.thickness]
    if stock.round:
        sides = [side * _ROUND for side in sides]
    for cutting in shape.cuttings if shape else ():
        if isinstance(cutting, Taper):
            place = 0 if cutting.across_axis == solid.wide else 1
            sides[place] = min(sides[place], cutting.to)
        elif isinstance(cutting, Rounded):
            sides = [cutting.diameter * _ROUND] * 2
    low, high = solid.low[Axis.UP], solid.high[Axis.UP]
    held = [found for joint in setting.joints_of.get(name, ()) if (found := _held(joint)) is not None]
    at, free = low, 0.0
    for start, end in sorted([*held, (high, high)]):
        free = max(free, start - at)
        at = max(at, end)
    # A leaning part is longer than it is tall.
    free *= solid.length / (high - low) if high - low > TOLERANCE_MM else 1.0
    return Column(name, free, (sides[0], sides[1]), abs(solid.directions[0][Axis.UP]))


def column_strength(one: Column, values: Strengths) -> Strength:
    """What an upright part may be pressed with along its grain, MPa, bowing over its thin side."""
    crushing = values.compression
    if one.free <= 0:
        return crushing
    certain = crushing.certain
    if values.crushing_characteristic is not None:
        certain = None
        from reviewer.mechanics.eurocode import column_reduction

        factor = column_reduction(one.free, one.least, values.crushing_characteristic, values.least_modulus)
        rule = "EN 1995-1-1 6.3.2 (from memory)"
    else:
        buckling = column_buckling_stress(one.free, one.least, values.least_modulus)
        factor = column_stability(buckling, crushing.value)
        rule = "NDS 3.7.1, column stability"
        if buckling <= _SLENDER * crushing.value and crushing.standing != "from memory":
            # Its stiffness governs, which was read, whatever sets what the wood may be pressed with.
            certain = 1.0
    value = crushing.value * factor
    return crushing._replace(value=value, source=f"{crushing.source}; {rule}", certain=certain)
