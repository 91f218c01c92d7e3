"""Mean strengths of clear wood by its specific gravity, for woods whose own no table has.

MPa at 12 % moisture; specific gravity of ovendry mass and volume at 12 %. Source: Wood Handbook, FPL-GTR-190
(2010), Table 5-11, from memory; the tests hold them against the species of Table 5-3. Rough: a species
may lie a third to either side.
"""

from __future__ import annotations

import math

#: Coefficient and power of the specific gravity: softwoods, hardwoods.
_SHEAR = ((16.6, 0.85), (21.9, 1.13))
_BEARING = ((16.5, 1.57), (21.6, 2.09))


def shear_by_gravity(gravity: float, hardwood: bool) -> float:
    """Shear along the grain, mean at failure, MPa."""
    coefficient, power = _SHEAR[hardwood]
    return coefficient * math.pow(gravity, power)


def bearing_by_gravity(gravity: float, hardwood: bool) -> float:
    """Pressure across the grain, mean at the proportional limit, MPa."""
    coefficient, power = _BEARING[hardwood]
    return coefficient * math.pow(gravity, power)
