"""A straight beam on any number of supports: where it pushes, how far it sags, how hard it is bent.

The beam is even (one E·I), lies along x from 0 to its length in mm, and rests on knife edges that may
hold it down as well as up, as a joint does. Loads and sag are positive downwards, reactions positive
upwards, moments positive when the beam sags. Deflection is that of bending alone: shear is left out,
because tabled stiffness comes from tests that already hold it (Wood Handbook, note on MOE).

The rotations at the supports are the unknowns (slope-deflection form of the stiffness method). They
make a three-diagonal system whose diagonal outweighs its neighbours however unlike the bays are, so
it needs no pivoting and grows in step with the number of supports. Between places where the load
changes, the deflection is an exact polynomial of degree four.
"""

from __future__ import annotations

import math
from bisect import bisect_right
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Literal

from reviewer.mechanics.beam_loads import LineLoad, PointLoad, Stretch, dealt_out, on_beam
from reviewer.mechanics.elastic_line import Piece, even_shear, turning_points
from reviewer.records import NamedTuple
from reviewer.units import TOLERANCE_MM

__all__ = [
    "Bay",
    "BeamResult",
    "LineLoad",
    "PointLoad",
    "Reaction",
    "Unstable",
    "long_term",
    "second_moment",
    "section_modulus",
    "solve_beam",
]


class Reaction(NamedTuple):
    """What a support gives the beam: newtons upwards, and N·mm clockwise where it is clamped."""

    at: float
    force: float
    moment: float = 0.0


class Unstable(NamedTuple):
    """The beam cannot stand: it has ``supports`` knife edges (none or one) and no clamp."""

    supports: int


class Bay(NamedTuple):
    """A stretch between two supports, or an overhang beyond the last one, and the worst of it.

    Lengths in mm, moment in N·mm, shear in N. ``sag`` is measured from the line through the supports,
    downwards, never below 0; ``rise`` is the same upwards. ``moment`` and ``shear`` are the largest in
    size and keep their sign.
    """

    kind: Literal["span", "overhang"]
    start: float
    end: float
    sag: float
    sag_at: float
    rise: float
    rise_at: float
    moment: float
    moment_at: float
    shear: float
    shear_at: float

    @property
    def length(self) -> float:
        """The span in mm that a limit such as span / 240 is taken of."""
        return self.end - self.start


@dataclass(frozen=True, slots=True)
class BeamResult:
    """A solved beam: its reactions, its bays from start to end, and the state at any place."""

    length: float
    bending_stiffness: float
    reactions: tuple[Reaction, ...]
    bays: tuple[Bay, ...]
    _pieces: tuple[Piece, ...]

    def deflection(self, at: float) -> float:
        """The sag at a place, mm downwards from the line of the supports."""
        piece, d = self._find(at)
        return piece.deflection_at(d) / self.bending_stiffness

    def moment(self, at: float) -> float:
        """The bending moment at a place, N·mm, sagging positive."""
        piece, d = self._find(at)
        return piece.moment_at(d)

    def shear(self, at: float) -> float:
        """The shear force at a place, N; just beyond it where a force acts there."""
        piece, d = self._find(at)
        return piece.shear_at(d)

    def _find(self, at: float) -> tuple[Piece, float]:
        if not -TOLERANCE_MM <= at <= self.length + TOLERANCE_MM:
            raise ValueError(f"{at} mm is off a beam {self.length} mm long")
        place = min(max(at, 0.0), self.length)
        index = bisect_right(self._pieces, place, key=lambda piece: piece.start) - 1
        piece = self._pieces[max(index, 0)]
        return piece, place - piece.start


def second_moment(width: float, thickness: float) -> float:
    """The second moment of area of a rectangle, mm⁴, bent across its thickness: b·h³/12."""
    return width * thickness**3 / 12


def section_modulus(width: float, thickness: float) -> float:
    """The section modulus of a rectangle, mm³, bent across its thickness: b·h²/6."""
    return width * thickness**2 / 6


def long_term(instant_lasting: float, instant_brief: float, creep_factor: float) -> float:
    """The deflection after years: the lasting part grown by creep, the brief part as it is.

    Source: NDS 3.5.2 (factor 1.5 to 2.0); EN 1995-1-1 Table 3.2 with ``creep_factor`` = 1 + k_def.
    A beam may as well be solved once with its lasting loads times the factor: deflection is linear.
    """
    return creep_factor * instant_lasting + instant_brief


def solve_beam(
    length: float,
    supports: Iterable[float],
    bending_stiffness: float,
    point_loads: Iterable[PointLoad] = (),
    line_loads: Iterable[LineLoad] = (),
    clamps: Iterable[float] = (),
) -> BeamResult | Unstable:
    """The beam's reactions, worst sag, moment and shear per bay; ``Unstable`` if it would fall or swing.

    ``length`` and places in mm, ``bending_stiffness`` E·I in N·mm². ``supports`` are knife edges,
    ``clamps`` supports that also keep the beam from turning. Supports nearer to each other than the
    one tolerance are one support. Raises ValueError for measures that are no beam: a length or
    stiffness that is not positive, anything off the beam, a line load whose end comes before its start.
    """
    if not (0 < length < math.inf and 0 < bending_stiffness < math.inf):
        raise ValueError("a beam has a length and a stiffness above zero")
    held = _merged(supports, clamps, length)
    if len(held) < 2 and not any(clamped for _, clamped in held):
        return Unstable(len(held))
    before, spans, beyond = dealt_out(length, [at for at, _ in held], point_loads, line_loads)
    rotations, end_moments = _rotations(held, before, spans, beyond)
    shear_after = [
        (to - fro + stretch.total() * stretch.length - stretch.moment_about_start()) / stretch.length
        for stretch, (fro, to) in zip(spans, end_moments, strict=True)
    ]
    pieces_by_bay: list[tuple[Literal["span", "overhang"], float, list[Piece]]] = []
    if before:
        pieces_by_bay.append(("overhang", before.end, _pieces_before(before, rotations[0])))
    for stretch, rotation, (moment, _), shear in zip(
        spans, rotations[:-1], end_moments, shear_after, strict=True
    ):
        pieces_by_bay.append(("span", stretch.start, _pieces(stretch, 0.0, rotation, moment, shear)))
    if beyond:
        pieces = _pieces(beyond, 0.0, rotations[-1], -beyond.moment_about_start(), beyond.total())
        pieces_by_bay.append(("overhang", beyond.start, pieces))

    return BeamResult(
        length,
        bending_stiffness,
        _reactions(held, before, spans, beyond, end_moments, shear_after),
        tuple(_bay(kind, held_at, pieces, bending_stiffness) for kind, held_at, pieces in pieces_by_bay),
        tuple(piece for _, _, pieces in pieces_by_bay for piece in pieces),
    )


def _merged(supports: Iterable[float], clamps: Iterable[float], length: float) -> list[tuple[float, bool]]:
    """Supports in order, one per place; the beam's ends take supports that lie within tolerance of them."""
    asked = [(on_beam(at, length), False) for at in supports]
    asked += [(on_beam(at, length), True) for at in clamps]
    runs: list[list[tuple[float, bool]]] = []
    for support in sorted(asked):
        if runs and support[0] - runs[-1][-1][0] <= TOLERANCE_MM:
            runs[-1].append(support)
        else:
            runs.append([support])
    held = []
    for run in runs:
        # The middle, so that a beam and its mirror image merge alike.
        at = (run[0][0] + run[-1][0]) / 2
        if at <= TOLERANCE_MM:
            at = 0.0
        elif at >= length - TOLERANCE_MM:
            at = length
        held.append((at, any(clamped for _, clamped in run)))
    return held


def _moment_before(before: Stretch | None) -> float:
    """The moment of the overhang before the first support at that support."""
    return -(before.total() * before.length - before.moment_about_start()) if before else 0.0


def _moment_beyond(beyond: Stretch | None) -> float:
    return -beyond.moment_about_start() if beyond else 0.0


def _rotations(
    held: Sequence[tuple[float, bool]],
    before: Stretch | None,
    spans: Sequence[Stretch],
    beyond: Stretch | None,
) -> tuple[list[float], list[tuple[float, float]]]:
    """The rotation (times E·I) at each support, and the moments at both ends of each span."""
    clamped_moments = [stretch.clamped_moments() for stretch in spans]
    count = len(held)
    diagonal = [0.0] * count
    right = [0.0] * count
    right[0] += _moment_before(before)
    right[-1] -= _moment_beyond(beyond)
    for i, (stretch, (at_start, at_end)) in enumerate(zip(spans, clamped_moments, strict=True)):
        diagonal[i] += 4 / stretch.length
        diagonal[i + 1] += 4 / stretch.length
        right[i] -= at_start
        right[i + 1] += at_end
    off = [0.0 if held[i][1] or held[i + 1][1] else 2 / s.length for i, s in enumerate(spans)]
    for i, (_, clamped) in enumerate(held):
        if clamped:
            diagonal[i], right[i] = 1.0, 0.0
    for i in range(1, count):
        share = off[i - 1] / diagonal[i - 1]
        diagonal[i] -= share * off[i - 1]
        right[i] -= share * right[i - 1]
    turned = [0.0] * count
    for i in reversed(range(count)):
        coupled = off[i] * turned[i + 1] if i + 1 < count else 0.0
        turned[i] = (right[i] - coupled) / diagonal[i]
    end_moments = []
    for i, (stretch, (at_start, at_end)) in enumerate(zip(spans, clamped_moments, strict=True)):
        a, b = turned[i], turned[i + 1]
        end_moments.append(
            (at_start + (4 * a + 2 * b) / stretch.length, at_end - (2 * a + 4 * b) / stretch.length)
        )
    return turned, end_moments


def _reactions(
    held: Sequence[tuple[float, bool]],
    before: Stretch | None,
    spans: Sequence[Stretch],
    beyond: Stretch | None,
    end_moments: Sequence[tuple[float, float]],
    shear_after: Sequence[float],
) -> tuple[Reaction, ...]:
    shear_left = [-before.total() if before else 0.0]
    moment_left = [_moment_before(before)]
    for stretch, (_, at_end), shear in zip(spans, end_moments, shear_after, strict=True):
        shear_left.append(shear - stretch.total())
        moment_left.append(at_end)
    shear_right = [*shear_after, beyond.total() if beyond else 0.0]
    moment_right = [*(at_start for at_start, _ in end_moments), _moment_beyond(beyond)]
    return tuple(
        Reaction(at, shear_right[i] - shear_left[i], moment_right[i] - moment_left[i] if clamped else 0.0)
        for i, (at, clamped) in enumerate(held)
    )


def _pieces(stretch: Stretch, deflection: float, slope: float, moment: float, shear: float) -> list[Piece]:
    """The stretch cut where its load changes, from the state at its start."""
    marks = {0.0, stretch.length, *(p.at for p in stretch.points)}
    jumps: dict[float, float] = {}
    for start, end, intensity in stretch.lines:
        marks.update((start, end))
        jumps[start] = jumps.get(start, 0.0) + intensity
        jumps[end] = jumps.get(end, 0.0) - intensity
    forces: dict[float, float] = {}
    for at, force in stretch.points:
        forces[at] = forces.get(at, 0.0) + force
    places = sorted(marks)
    intensity = 0.0
    piece = Piece(stretch.start, 0.0, deflection, slope, moment, shear, 0.0)
    pieces = []
    for place, following in pairwise(places):
        intensity += jumps.get(place, 0.0)
        piece = piece.after(forces.get(place, 0.0), intensity, following - place)
        pieces.append(piece)
    return pieces


def _pieces_before(before: Stretch, rotation: float) -> list[Piece]:
    """The overhang before the first support: found from its free end, then turned to meet the support."""
    loose = _pieces(before, 0.0, 0.0, 0.0, 0.0)
    last = loose[-1]
    slope = rotation - last.slope_at(last.length)
    deflection = -last.deflection_at(last.length) - slope * before.length
    return _pieces(before, deflection, slope, 0.0, 0.0)


def _bay(
    kind: Literal["span", "overhang"], held_at: float, pieces: Sequence[Piece], bending_stiffness: float
) -> Bay:
    """The worst of a stretch; ``held_at`` is a support of it, where it neither sags nor rises."""
    start = pieces[0].start
    end = pieces[-1].start + pieces[-1].length
    sag = rise = moment = shear = 0.0
    sag_at = rise_at = moment_at = shear_at = held_at
    for piece in pieces:
        for d in (0.0, *turning_points(piece), piece.length):
            deflection = piece.deflection_at(d)
            if deflection > sag:
                sag, sag_at = deflection, piece.start + d
            if -deflection > rise:
                rise, rise_at = -deflection, piece.start + d
        for d in (0.0, *even_shear(piece), piece.length):
            bent = piece.moment_at(d)
            if abs(bent) > abs(moment):
                moment, moment_at = bent, piece.start + d
        for d in (0.0, piece.length):
            cut = piece.shear_at(d)
            if abs(cut) > abs(shear):
                shear, shear_at = cut, piece.start + d
    return Bay(
        kind,
        start,
        end,
        sag / bending_stiffness,
        sag_at,
        rise / bending_stiffness,
        rise_at,
        moment,
        moment_at,
        shear,
        shear_at,
    )
