"""Wood and water: how moist wood becomes in a room, and how far it moves on the way.

Moisture in percent of ovendry mass, temperatures in °C, relative humidity as a fraction from 0 to 1.
"""

from __future__ import annotations

from typing import Literal

from reviewer.units import KG_PER_M3_PER_LB_PER_FT3

#: Above this moisture the walls of the wood are full and it neither swells nor shrinks (Wood Handbook ch. 4).
FIBRE_SATURATION_PCT = 30.0
#: The range in which a movement coefficient holds (Wood Handbook ch. 13).
COEFFICIENT_RANGE_PCT = (6.0, 14.0)

_WATER_LB_PER_FT3 = 62.4


def equilibrium_moisture(temperature_c: float, relative_humidity: float) -> float:
    """The moisture content that wood settles at in such air, percent.

    Source: Wood Handbook (FPL-GTR-282) equation 4-5 with its Celsius constants. Fitted to spruce; woods
    rich in resin or extractives run one to three points lower (from memory). Drying and wetting wood
    differ by one to four points, so a tenth is finer than the data.
    """
    t, h = temperature_c, relative_humidity
    if not 0 <= h <= 1:
        raise ValueError("relative humidity is a fraction from 0 to 1")
    w = 349 + 1.29 * t + 0.0135 * t * t
    k = 0.805 + 0.000736 * t - 0.00000273 * t * t
    k1 = 6.27 - 0.00938 * t - 0.000303 * t * t
    k2 = 1.91 + 0.0407 * t - 0.000293 * t * t
    kh = k * h
    one, two = k1 * kh, k1 * k2 * kh * kh
    return 1800 / w * (kh / (1 - kh) + (one + 2 * two) / (1 + one + two))


def width_change(width: float, coefficient: float, from_pct: float, to_pct: float) -> float:
    """How much wider the wood becomes, in the width's unit; negative when it shrinks.

    ``coefficient`` is the change per percent of moisture: tangential for flat-sawn width, radial for
    quarter-sawn width. Holds from 6 to 14 % moisture. Source: Wood Handbook ch. 13.
    """
    return width * coefficient * (to_pct - from_pct)


def width_change_by_shrinkage(width: float, shrinkage_pct: float, from_pct: float, to_pct: float) -> float:
    """How much wider the wood becomes over any range of moisture; negative when it shrinks.

    ``shrinkage_pct`` is the tabled shrinkage from green to ovendry. Moisture above fibre saturation
    counts as fibre saturation. Source: Wood Handbook equation 13-3 (from memory).
    """
    start, end = min(from_pct, FIBRE_SATURATION_PCT), min(to_pct, FIBRE_SATURATION_PCT)
    if shrinkage_pct == 0:
        return 0.0
    rest = FIBRE_SATURATION_PCT * 100 / shrinkage_pct - FIBRE_SATURATION_PCT + start
    return width * (end - start) / rest


def seasonal_change(
    width: float, from_pct: float, to_pct: float, coefficient: float, shrinkage_pct: float | None = None
) -> float:
    """How much wider the wood becomes, by the coefficient from 6 to 14 % and by shrinkage beyond.

    With no ``shrinkage_pct`` the coefficient serves for every range. Signed as :func:`width_change`.
    """
    low, high = COEFFICIENT_RANGE_PCT
    inside = low <= min(from_pct, to_pct) and max(from_pct, to_pct) <= high
    if inside or shrinkage_pct is None:
        return width_change(width, coefficient, from_pct, to_pct)
    return width_change_by_shrinkage(width, shrinkage_pct, from_pct, to_pct)


def coefficient_from_shrinkage(shrinkage_pct: float, low_saturation: bool = False) -> float:
    """The movement coefficient per percent of moisture, from the shrinkage green to ovendry in percent.

    ``low_saturation`` is for western redcedar, northern white cedar and redwood, whose fibre saturation
    is near 22 %. Derived: shrinkage shared evenly over the moisture range, based on the size at 10 %.
    It fits the tabled pairs of single species within about 1 %, not the tabled group means (red oak,
    white oak), mahoganies or teak.
    """
    shrinkage = shrinkage_pct / 100
    saturation = 22.0 if low_saturation else FIBRE_SATURATION_PCT
    return shrinkage / (saturation - (saturation - 10) * shrinkage)


def lumber_shrinkage(moisture_pct: float, direction: Literal["width", "thickness"]) -> float:
    """The shrinkage of construction lumber from green down to a moisture content, percent.

    Fitted for 8 to 19 %. Source: FPL-RP-489 (1989).
    """
    if direction == "width":
        return 6.031 - 0.215 * moisture_pct
    return 5.062 - 0.181 * moisture_pct


def lumber_size(
    size: float, from_pct: float, to_pct: float, direction: Literal["width", "thickness"]
) -> float:
    """The size of construction lumber after its moisture has changed, in the size's unit.

    Source: FPL-RP-489 (1989): both sizes from the green one.
    """
    before, after = lumber_shrinkage(from_pct, direction), lumber_shrinkage(to_pct, direction)
    return size * (100 - after) / (100 - before)


def density_of_lumber(specific_gravity: float, moisture_pct: float) -> float:
    """The density of lumber as it lies, kg/m³, from its NDS specific gravity (ovendry mass and volume).

    Source: NDS Supplement 3.1.3 (formula from memory).
    """
    swollen = specific_gravity / (1 + 0.009 * specific_gravity * moisture_pct)
    return _WATER_LB_PER_FT3 * swollen * (1 + moisture_pct / 100) * KG_PER_M3_PER_LB_PER_FT3
