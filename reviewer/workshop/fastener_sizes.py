"""How thick a fastener is, how wide its head, and how wide the hole that its head sits in; mm."""

from __future__ import annotations

from functools import lru_cache

from reviewer.model.plan import Fastening, FasteningKind
from reviewer.records import NamedTuple
from reviewer.reference import gauges
from reviewer.reference.usual_values import usual_value
from reviewer.units import MM_PER_INCH


class Thickness(NamedTuple):
    """Across a fastener, mm. ``head`` is 0 for what has none, ``hole`` where nothing is sunk in."""

    diameter: float
    head: float
    hole: float


@lru_cache(maxsize=1)
def _usual_screw() -> gauges.Screw:
    usual = gauges.gauge(f"#{usual_value('screw-gauge'):.0f}")
    assert usual is not None
    return usual


def diameter_of(fastening: Fastening) -> float:
    """Across a fastener, mm; where the plan names no size that of the usual one of its kind."""
    if fastening.diameter:
        return fastening.diameter
    if fastening.kind == "nails" and fastening.length:
        return gauges.nail_of_length(fastening.length).diameter
    return _usual_screw().diameter


@lru_cache(maxsize=512)
def _thickness(
    kind: FasteningKind, gauge: str | None, diameter: float, length: float, sunk: bool, stock: float
) -> Thickness:
    wider = usual_value("head-over-shank") * diameter
    if kind == "pocket screws":
        usual = gauges.pocket_screw(stock)
        screw = gauges.gauge(usual.gauges[0]) if usual is not None else None
        hole = gauges.pocket_geometry().pocket_diameter
        return Thickness(
            screw.diameter if screw else diameter, usual_value("pocket-head") * MM_PER_INCH, hole
        )
    if kind in ("dowels", "loose tenons", "biscuits"):
        return Thickness(diameter, 0.0, 0.0)
    head = None
    if kind == "screws":
        found = gauges.gauge(gauge) if gauge else gauges.metric_screw(diameter)
        head = found.head if found is not None else None
    elif kind == "nails":
        nail = gauges.nail_of_length(length)
        head = nail.head if nail.head and abs(nail.diameter - diameter) < nail.diameter / 10 else None
    head = head or wider
    over = usual_value("counterbore-over-head") * MM_PER_INCH
    return Thickness(diameter, head, head + over if sunk else 0.0)


def thickness_of(fastening: Fastening, stock: float = 0.0) -> Thickness:
    """The thickness of a fastener; ``stock`` is the thickness (mm) that a pocket is bored in."""
    return _thickness(
        fastening.kind,
        fastening.gauge,
        diameter_of(fastening),
        fastening.length or 0.0,
        fastening.counterbore > 0,
        stock,
    )


@lru_cache(maxsize=64)
def biscuit_for(stock: float, room: float) -> gauges.Biscuit:
    """The largest biscuit for stock of a thickness that the length of a joint has room for (mm)."""
    every = gauges.biscuits()
    fitting = [each for each in every if each.stock_least <= stock + 1.0 and each.length <= room]
    return fitting[-1] if fitting else every[0]
