"""What would mend the weak end of a wall strap, tried on the piece itself before it is told."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING, NamedTuple

from reviewer.plan_words import number_text, plan_unit
from reviewer.reference import gauges
from reviewer.reference.usual_values import usual_value
from reviewer.units import TOLERANCE_MM, UnitSystem
from reviewer.workshop.restraining import Restrained, Screwed, Tied, Trial, restrained_piece
from reviewer.workshop.strap_ends import PieceEnd
from reviewer.workshop.usual_sizes import screw_lengths

if TYPE_CHECKING:
    from reviewer.review import Review

#: Screws that fit the hole of a strap or a bracket: common practice, no source.
_GAUGES = ("#8", "#10", "#12")
_METRIC_MM = (4.0, 5.0, 6.0)
#: The most screws in one end that are told: the holes of a usual bracket, common practice.
_MOST_SCREWS = 4
#: Lengths that are tried, from the shortest: up to 2 in or 45 mm, as strap screws are bought (own choice).
_MOST_LENGTHS = 7


class BetterEnd(NamedTuple):
    """Screws of a strap at the piece that hold what is asked, and what they hold."""

    screw: Screwed
    number: int
    end: PieceEnd
    needed: float


def held_level(review: Review, found: Restrained, number: int) -> Restrained | None:
    """The piece once a strap of it runs level, where both its ends then hold; None where they do not."""
    tied = found.tied[number]
    if tied.restraint.wall_height is None or not tied.line.slope:
        return None
    tried = restrained_piece(review, found.piece, {number: Trial(on_wall=tied.on_piece)}, found)
    return tried if all(held >= tried.needed - 1e-6 for held in tried.tied[number].held) else None


def _sizes(now: Screwed | None, units: UnitSystem) -> Iterator[tuple[str | None, float | None, float]]:
    """Gauge or thickness to try, the screw's own first, each with its diameter in mm."""
    own = 0.0
    if now is not None:
        screw = gauges.gauge(now.gauge) if now.gauge else gauges.metric_screw_at_most(now.diameter or 0.0)
        own = screw.diameter if screw is not None else 0.0
        yield now.gauge, now.diameter if now.gauge is None else None, own
    if units is UnitSystem.INCH or (now is not None and now.gauge):
        usual: list[tuple[str | None, float | None]] = [(name, None) for name in _GAUGES]
    else:
        usual = [(None, size) for size in _METRIC_MM]
    for name, size in usual:
        screw = gauges.gauge(name) if name else gauges.metric_screw_at_most(size or 0.0)
        if screw is not None and screw.diameter > own + TOLERANCE_MM:
            yield name, size, screw.diameter


def piece_screw_of(tied: Tied) -> Screwed | None:
    """The screw of a strap at the piece, as the plan says it."""
    restraint = tied.restraint
    if restraint.piece_length is None or not (restraint.piece_gauge or restraint.piece_diameter):
        return None
    return Screwed(restraint.piece_gauge, restraint.piece_diameter, restraint.piece_length)


def longest_inside(review: Review, end: PieceEnd) -> float:
    """The longest screw that leaves wood over its point in the part, mm."""
    return usual_value("strap-thickness") + end.covered + end.deep - review.limit("cover").amount


def better_at_piece(review: Review, found: Restrained, number: int) -> BetterEnd | None:
    """The fewest, thinnest and shortest screws at the piece that hold what is asked and stay inside."""
    now = piece_screw_of(found.tied[number])
    first = found.tied[number].restraint.piece_screws
    lengths = screw_lengths(review.units)[:_MOST_LENGTHS]
    for many in range(first, max(first, _MOST_SCREWS) + 1):
        for gauge, diameter, _ in _sizes(now, review.units):
            for length in lengths:
                screw = Screwed(gauge, diameter, length)
                trial = Trial(piece_screw=screw, piece_screws=many)
                tried = restrained_piece(review, found.piece, {number: trial}, found)
                end = tried.tied[number].at_piece
                if end is None:
                    return None
                if length > longest_inside(review, end) + TOLERANCE_MM:
                    break
                if end.holds >= tried.needed:
                    return BetterEnd(screw, many, end, tried.needed)
    return None


def piece_screw_words(review: Review, screw: Screwed, number: int) -> str:
    """The clause that says the screws of a strap at the piece: ``2 screws #8 x 5/8 into piece``."""
    unit = plan_unit(review.source, review.plan)
    if screw.gauge:
        size = screw.gauge
    elif unit == "mm":
        size = number_text(screw.diameter or 0.0, unit)
    else:
        size = f"{number_text(screw.diameter or 0.0, 'mm')} mm"
    many = f"{number} " if number > 1 else ""
    return f"{many}screws {size} x {number_text(screw.length, unit)} into piece"
