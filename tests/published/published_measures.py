"""Reads the written measures of the published checks: ``D=0.25 in; G=0.42`` into inside units."""

from __future__ import annotations

from reviewer.units import (
    KG_PER_M3_PER_LB_PER_FT3,
    LITRES_PER_GALLON,
    MM_PER_FOOT,
    MM_PER_INCH,
    MPA_PER_PSI,
    NEWTON_PER_POUND,
)

#: What one of each unit is in the unit that the program works in.
INSIDE = {
    "": 1.0,
    "%": 1.0,
    "deg": 1.0,
    "mm": 1.0,
    "in": MM_PER_INCH,
    "ft": MM_PER_FOOT,
    "in2": MM_PER_INCH**2,
    "in3": MM_PER_INCH**3,
    "in4": MM_PER_INCH**4,
    "kg": 1.0,
    "ft3": MM_PER_FOOT**3,
    "dm3": 1e6,
    "N": 1.0,
    "lb": NEWTON_PER_POUND,
    "lb/in": NEWTON_PER_POUND / MM_PER_INCH,
    "lb/ft": NEWTON_PER_POUND / MM_PER_FOOT,
    "psf": NEWTON_PER_POUND / MM_PER_FOOT**2,
    "psi": MPA_PER_PSI,
    "MPa": 1.0,
    "lb in": NEWTON_PER_POUND * MM_PER_INCH,
    "N mm": 1.0,
    "kg/m3": 1.0,
    "mil": MM_PER_INCH / 1000,
    "ft2": MM_PER_FOOT**2,
    "m2": 1e6,
    "gal": LITRES_PER_GALLON,
    "qt": LITRES_PER_GALLON / 4,
    "fl oz": LITRES_PER_GALLON / 128,
    "l": 1.0,
    "ft2/gal": (MM_PER_FOOT / 1000) ** 2 / LITRES_PER_GALLON,
    "m2/l": 1.0,
    "h": 1.0,
    "lb/ft3": KG_PER_M3_PER_LB_PER_FT3,
}


class Inputs(dict[str, str]):
    """The inputs of one check by name, still as written; reading one marks it as used."""

    def __init__(self, text: str) -> None:
        super().__init__(
            (name.strip(), value.strip())
            for name, _, value in (part.partition("=") for part in text.split(";"))
        )
        self.used: set[str] = set()

    def word(self, name: str, otherwise: str = "") -> str:
        """The input as written."""
        self.used.add(name)
        return self.get(name, otherwise)

    def measure(self, name: str, otherwise: float | None = None) -> float:
        """The input in the inside unit. Raises KeyError when it is missing and nothing stands in for it."""
        self.used.add(name)
        if name not in self and otherwise is not None:
            return otherwise
        number, _, unit = self[name].partition(" ")
        if unit == "degF":
            return (float(number) - 32) * 5 / 9
        return float(number) * INSIDE[unit]
