"""The one place where measures change unit: millimetres inside, the plan's unit for a person.

Inside the program lengths are millimetres, forces newtons, masses kilograms, stresses megapascals,
moments newton-millimetres, times hours and temperatures degrees Celsius.
"""

from __future__ import annotations

import math
from enum import Enum
from typing import Literal

from reviewer.records import NamedTuple

MM_PER_INCH = 25.4  # exact by definition (international inch, 1959)
MM_PER_FOOT = 12 * MM_PER_INCH
LITRES_PER_GALLON = 3.785411784  # US liquid gallon, exact by definition (231 cubic inches)
KG_PER_POUND = 0.45359237  # exact by definition (international pound, 1959)
NEWTON_PER_KG = 9.80665  # standard gravity, exact by definition (CGPM 1901)
NEWTON_PER_POUND = KG_PER_POUND * NEWTON_PER_KG
MPA_PER_PSI = NEWTON_PER_POUND / MM_PER_INCH**2
KG_PER_M3_PER_LB_PER_FT3 = KG_PER_POUND / (MM_PER_FOOT / 1000) ** 3

#: A US gallon is 231 cubic inches and 128 fluid ounces by definition.
MM3_PER_FLUID_OUNCE = 231 * MM_PER_INCH**3 / 128
MM3_PER_LITRE = 1_000_000.0

#: Two places closer than this are the same place. A tenth of the finest mark on a bench rule.
TOLERANCE_MM = 0.05

Kind = Literal[
    "length",
    "fine length",
    "force",
    "mass",
    "stress",
    "moment",
    "area",
    "opening area",
    "volume",
    "liquid",
    "line load",
    "count",
    "ratio",
    "percent",
    "angle",
    "hours",
    "temperature",
    "money",
]


class UnitSystem(Enum):
    """The unit that a plan is written in, as a drawing's title block states it."""

    INCH = "inch"
    METRIC = "metric"


class Value(NamedTuple):
    """An amount in the inside unit of its kind: what findings carry instead of words."""

    amount: float
    kind: Kind


def length(amount_mm: float) -> Value:
    """A length shown to 1/16 in or to a millimetre."""
    return Value(amount_mm, "length")


def fine_length(amount_mm: float) -> Value:
    """A length where sixteenths are too coarse: gaps, sag, movement."""
    return Value(amount_mm, "fine length")


def force(amount_n: float) -> Value:
    """A force in newtons, shown as pounds in an inch plan."""
    return Value(amount_n, "force")


def mass(amount_kg: float) -> Value:
    """A mass in kilograms, shown as pounds in an inch plan."""
    return Value(amount_kg, "mass")


def count(amount: float) -> Value:
    """A bare number of things."""
    return Value(amount, "count")


def ratio(amount: float) -> Value:
    """A pure number."""
    return Value(amount, "ratio")


def area(amount_mm2: float) -> Value:
    """An area in square millimetres."""
    return Value(amount_mm2, "area")


def liquid(amount_mm3: float) -> Value:
    """So much of a liquid, such as glue, in cubic millimetres."""
    return Value(amount_mm3, "liquid")


def percent(amount: float) -> Value:
    """An amount already in percent (12 means 12 %)."""
    return Value(amount, "percent")


def hours(amount_h: float) -> Value:
    """A time in hours, shown in days once it is long."""
    return Value(amount_h, "hours")


def close(a_mm: float, b_mm: float) -> bool:
    """True when two places are the same place within the one tolerance."""
    return abs(a_mm - b_mm) <= TOLERANCE_MM


def _plain(amount: float, places: int) -> str:
    text = f"{amount:.{places}f}"
    if "." in text:
        text = text.rstrip("0").rstrip(".")
    return "0" if text == "-0" else text


def significant(amount: float, digits: int = 3) -> str:
    """The number to so many significant digits, never in powers of ten."""
    if amount == 0 or not math.isfinite(amount):
        return "0" if amount == 0 else "no limit"
    places = max(0, digits - 1 - math.floor(math.log10(abs(amount))))
    return _plain(amount, places)


def inches(amount_mm: float, parts: int = 16) -> str:
    """``41 1/2`` for a length in millimetres, to the nearest 1/``parts`` inch, without the unit."""
    total = math.floor(abs(amount_mm) / MM_PER_INCH * parts + 0.5)
    whole, rest = divmod(total, parts)
    sign = "-" if amount_mm < 0 and total else ""
    if not rest:
        return f"{sign}{whole}"
    shared = math.gcd(rest, parts)
    fraction = f"{rest // shared}/{parts // shared}"
    return f"{sign}{whole} {fraction}" if whole else f"{sign}{fraction}"


def _show_length(amount_mm: float, system: UnitSystem) -> str:
    if system is UnitSystem.METRIC:
        return f"{_plain(amount_mm, 1)} mm"
    sixteenths = abs(amount_mm) / MM_PER_INCH * 16
    if abs(sixteenths - round(sixteenths)) <= 0.04:
        return f"{inches(amount_mm)} in"
    return f"{inches(amount_mm, 32)} in"


def _show_fine_length(amount_mm: float, system: UnitSystem) -> str:
    if system is UnitSystem.METRIC:
        return f"{_plain(amount_mm, 2)} mm"
    thirty_seconds = amount_mm / MM_PER_INCH * 32
    if abs(thirty_seconds - round(thirty_seconds)) <= 0.02:
        return f"{inches(amount_mm, 32)} in"
    return f"{_plain(amount_mm / MM_PER_INCH, 3)} in"


def _show_hours(amount_h: float) -> str:
    if amount_h >= 48:
        return f"{_plain(amount_h / 24, 1)} days"
    if 0 < amount_h < 1:
        return f"{_plain(amount_h * 60, 0)} min"
    return f"{_plain(amount_h, 1)} h"


def _show_liquid(amount_mm3: float, metric: bool) -> str:
    """Litres, or US fluid ounces, quarts and gallons as cans have them, to two digits: no coat is surer."""
    amount_l = amount_mm3 / MM3_PER_LITRE
    if metric:
        return f"{_two_digits(amount_l)} l" if amount_l >= 0.995 else f"{_two_digits(amount_l * 1000)} ml"
    gallons = amount_l / LITRES_PER_GALLON
    if gallons * 128 < 31.5:
        return f"{_two_digits(gallons * 128)} fl oz"
    return f"{_two_digits(gallons * 4)} qt" if gallons < 0.995 else f"{_two_digits(gallons)} gal"


def _two_digits(amount: float) -> str:
    if amount <= 0:
        return "0"
    places = 1 - math.floor(math.log10(amount))
    return _plain(round(amount, places), max(0, places))


def show(value: Value, system: UnitSystem) -> str:
    """The value for a person, unit included, in the plan's own unit system."""
    amount, kind = value
    metric = system is UnitSystem.METRIC
    match kind:
        case "length":
            return _show_length(amount, system)
        case "fine length":
            return _show_fine_length(amount, system)
        case "force":
            return f"{significant(amount)} N" if metric else f"{significant(amount / NEWTON_PER_POUND)} lb"
        case "mass":
            return f"{significant(amount)} kg" if metric else f"{significant(amount / KG_PER_POUND)} lb"
        case "stress":
            return f"{significant(amount)} MPa" if metric else f"{significant(amount / MPA_PER_PSI)} psi"
        case "moment":
            if metric:
                return f"{significant(amount / 1000)} N·m"
            return f"{significant(amount / NEWTON_PER_POUND / MM_PER_FOOT)} lb·ft"
        case "area" | "opening area":
            if metric:
                return f"{significant(amount / 1e6)} m²"
            return f"{significant(amount / MM_PER_FOOT**2)} sq ft"
        case "volume":
            if metric:
                return f"{significant(amount / 1e9)} m³"
            return f"{significant(amount / MM_PER_FOOT**3)} cu ft"
        case "liquid":
            return _show_liquid(amount, metric)
        case "line load":
            if metric:
                return f"{significant(amount * 1000 / NEWTON_PER_KG)} kg per m"
            return f"{significant(amount * MM_PER_FOOT / NEWTON_PER_POUND)} lb per ft"
        case "count":
            return _plain(amount, 0)
        case "ratio":
            return significant(amount)
        case "percent":
            return f"{significant(amount)} %"
        case "angle":
            return f"{_plain(amount, 1)}°"
        case "hours":
            return _show_hours(amount)
        case "temperature":
            return f"{_plain(amount, 0)} °C" if metric else f"{_plain(amount * 9 / 5 + 32, 0)} °F"
        case "money":
            return f"{amount:.2f}"
