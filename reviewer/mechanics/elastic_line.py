"""The bent line of a beam, piece by piece: exact polynomials between places where the load changes.

The engine under :mod:`reviewer.mechanics.beam`; same signs and units. Deflection and slope carry the
factor E·I, so a stiffness is only ever divided out at the end.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from itertools import pairwise

from reviewer.records import NamedTuple


class Piece(NamedTuple):
    """A stretch with no change of load: the state at its start. Deflection and slope are times E·I."""

    start: float
    length: float
    deflection: float
    slope: float
    moment: float
    shear: float
    intensity: float

    def deflection_at(self, d: float) -> float:
        bending = self.moment / 2 + d * (self.shear / 6 - d * self.intensity / 24)
        return self.deflection + d * (self.slope - d * bending)

    def slope_at(self, d: float) -> float:
        return self.slope - d * (self.moment + d * (self.shear / 2 - d * self.intensity / 6))

    def moment_at(self, d: float) -> float:
        return self.moment + d * (self.shear - d * self.intensity / 2)

    def shear_at(self, d: float) -> float:
        return self.shear - d * self.intensity

    def after(self, force: float, intensity: float, length: float) -> Piece:
        """The piece that follows this one across a point load."""
        d = self.length
        return Piece(
            self.start + d,
            length,
            self.deflection_at(d),
            self.slope_at(d),
            self.moment_at(d),
            self.shear_at(d) - force,
            intensity,
        )


def even_shear(piece: Piece) -> Iterator[float]:
    """Where the shear passes through nothing, so that the moment is at its largest."""
    if piece.intensity:
        d = piece.shear / piece.intensity
        if 0 < d < piece.length:
            yield d


def turning_points(piece: Piece) -> Iterator[float]:
    """Where the beam lies level, so that the deflection is at its largest.

    The slope is monotone between places of no moment, so one crossing at most lies between two of them.
    """
    marks = [0.0, *_no_moment(piece), piece.length]
    for low, high in pairwise(marks):
        if piece.slope_at(low) * piece.slope_at(high) < 0:
            yield _level(piece, low, high)


def _no_moment(piece: Piece) -> list[float]:
    """The places inside the piece where M + V·d - q·d²/2 = 0, in order."""
    a, b, c = -piece.intensity / 2, piece.shear, piece.moment
    if a == 0:
        roots = [-c / b] if b else []
    else:
        inside = b * b - 4 * a * c
        if inside < 0:
            return []
        # The two roots from the one sum that does not lose digits.
        half = -(b + math.copysign(math.sqrt(inside), b)) / 2
        roots = [half / a] + ([c / half] if half else [])
    return sorted(d for d in set(roots) if 0 < d < piece.length)


def _level(piece: Piece, low: float, high: float) -> float:
    """The crossing of the slope between two places of unlike sign: Newton's steps, halved if they leave."""
    rising = piece.slope_at(high) > 0
    d = (low + high) / 2
    for _ in range(100):
        slope = piece.slope_at(d)
        if (slope > 0) == rising:
            high = d
        else:
            low = d
        moment = piece.moment_at(d)
        following = d + slope / moment if moment else low
        if not low < following < high:
            following = (low + high) / 2
        if abs(following - d) <= 1e-12 * piece.length:
            return following
        d = following
    return d
