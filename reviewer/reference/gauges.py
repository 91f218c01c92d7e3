"""Screws and nails by the names that a maker uses: "#8", 4.5 mm, "8d"; and the usual pocket screws."""

from __future__ import annotations

import re
from functools import lru_cache
from typing import Literal

from reviewer.records import NamedTuple
from reviewer.reference.sources import Standing, cited, named, standing
from reviewer.reference.tables import Row, table
from reviewer.units import MM_PER_INCH, TOLERANCE_MM, close

_WOOD_SCREW = "wood screw (ASME B18.6.1)"
_METRIC_SCREW = "metric wood / chipboard screw (full thread)"


class Hole(NamedTuple):
    """A drilled hole: the drill as it is sold, and its smallest and largest usual size, mm."""

    said: str
    smallest: float
    largest: float


class Screw(NamedTuple):
    """A wood screw, mm. ``root`` is a rolled thread's; older cut threads have the smaller ``root_cut``."""

    said: str  # "#8" or "4.5 mm"
    diameter: float  # shank of a gauge, outer thread of a metric screw
    root: float | None
    root_cut: float | None
    head: float | None
    tip: float  # two diameters of taper
    full_thread: bool
    pilot_softwood: Hole | None
    pilot_hardwood: Hole | None
    clearance: Hole | None
    source: str
    status: Standing
    note: str

    def thread(self, length: float) -> float:
        """The threaded part of a screw of a length, mm: max(4 D, 2/3 L) (NDS 2018, Appendix L, least)."""
        return length if self.full_thread else min(length, max(4 * self.diameter, 2 * length / 3))


class PocketScrew(NamedTuple):
    """The usual pocket screw for a stock, mm."""

    length: float
    thread: Literal["coarse", "fine"]
    gauges: tuple[str, ...]  # the usual one first
    source: str
    status: Standing


class PocketGeometry(NamedTuple):
    """How a pocket hole lies in its board: angle in degrees to the face, diameters in mm."""

    angle: float
    exit_share: float  # where the axis leaves the end, as a share of the thickness
    grip_share: float  # how far the head sits back from the end, as a share of the screw
    pocket_diameter: float
    pilot_diameter: float
    source: str


class Nail(NamedTuple):
    """A nail by its penny size, mm."""

    said: str
    diameter: float
    length: float
    head: float | None
    source: str
    status: Standing


class _Fastener(Row):
    kind: str
    size: str
    major_d_in: str
    major_d_mm: str
    src_major: str
    root_d_in: str
    root_alt_in: str
    head_d_in: str
    src_head: str
    usual_lengths: str
    src_lengths: str
    pilot_softwood: str
    pilot_hardwood: str
    clearance_hole: str
    for_stock: str
    confidence: str
    notes: str


class _Pocket(Row):
    stock_from_in: float
    stock_to_in: float
    length_in: float
    wood: str
    thread: str
    gauges: tuple[str, ...]
    src: str
    status: str


class _Geometry(Row):
    name: str
    amount: float
    unit: str
    src: str


_SIZE = re.compile(r"(\d+(?:\.\d+)?)(?:/(\d+))?")
_HOLE = re.compile(r"(?P<sizes>\d[\d./]*(?:-\d[\d./]*)?) (?P<unit>in|mm)\b")


def _hole(text: str) -> Hole | None:
    """The hole of "5/64 in", "3/32-7/64 in" or "2.5 mm"; None for anything that names no size."""
    found = _HOLE.match(text)
    if not found:
        return None
    unit = MM_PER_INCH if found["unit"] == "in" else 1.0
    sizes = sorted(float(over) / float(under or 1) * unit for over, under in _SIZE.findall(found["sizes"]))
    return Hole(found[0], sizes[0], sizes[-1])


def _in_mm(cell: str) -> float | None:
    return float(cell) * MM_PER_INCH if cell else None


def _screw(row: _Fastener) -> Screw:
    metric = row.kind == _METRIC_SCREW
    diameter = float(row.major_d_mm) if metric else float(row.major_d_in) * MM_PER_INCH
    return Screw(
        said=row.size if metric else row.size.replace("No. ", "#"),
        diameter=diameter,
        root=_in_mm(row.root_d_in),
        root_cut=_in_mm(row.root_alt_in),
        head=_in_mm(row.head_d_in),
        tip=2 * diameter,
        full_thread=metric,
        pilot_softwood=_hole(row.pilot_softwood),
        pilot_hardwood=_hole(row.pilot_hardwood),
        clearance=_hole(row.clearance_hole),
        source=named(row.src_major, row.confidence),
        status=standing(row.confidence),
        note=row.notes,
    )


@lru_cache(maxsize=1)
def _rows() -> dict[str, list[_Fastener]]:
    rows: dict[str, list[_Fastener]] = {}
    for row in table("fasteners.csv", _Fastener):
        rows.setdefault(row.kind, []).append(row)
    return rows


@lru_cache(maxsize=1)
def _gauges() -> dict[str, Screw]:
    return {screw.said: screw for screw in map(_screw, _rows()[_WOOD_SCREW])}


@lru_cache(maxsize=1)
def _metric() -> tuple[Screw, ...]:
    return tuple(map(_screw, _rows()[_METRIC_SCREW]))


def gauge(words: str) -> Screw | None:
    """The wood screw of a gauge: "#8", "8" or "No. 8"; None when the table has no such gauge."""
    number = re.fullmatch(r"\s*(?:#|no\.?\s*)?\s*(\d+)\s*", words.casefold())
    return _gauges().get(f"#{number[1]}") if number else None


def gauge_names() -> tuple[str, ...]:
    """Every gauge, thinnest first: "#4", "#5", …"""
    return tuple(_gauges())


def metric_screw(diameter_mm: float) -> Screw | None:
    """The chipboard screw of an outer diameter; None when the table has no such size."""
    return next((screw for screw in _metric() if close(screw.diameter, diameter_mm)), None)


def metric_screw_at_most(diameter_mm: float) -> Screw:
    """The thickest chipboard screw of the table that is no thicker; the thinnest where all are thicker."""
    fitting = [screw for screw in _metric() if screw.diameter <= diameter_mm + TOLERANCE_MM]
    return fitting[-1] if fitting else _metric()[0]


def metric_screw_names() -> tuple[str, ...]:
    """Every metric screw, thinnest first: "3.0 mm", …"""
    return tuple(screw.said for screw in _metric())


#: How far stock may be from the thickness that the chart names: half a step of the chart's own scale.
_CHART_STEP = MM_PER_INCH / 8


def pocket_screw(stock_thickness: float, hardwood: bool = False) -> PocketScrew | None:
    """The usual pocket screw for stock of a thickness in mm; None where the usual chart says nothing.

    The nearest line of the chart counts, if the stock is within 1/16 in of it: 18 mm reads as 3/4 in.
    """
    wood = "hardwood" if hardwood else "softwood"
    near: list[tuple[float, _Pocket]] = []
    for row in table("pocket_screws.csv", _Pocket):
        low, high = row.stock_from_in * MM_PER_INCH, row.stock_to_in * MM_PER_INCH
        off = max(low - stock_thickness, stock_thickness - high, 0.0)
        if row.wood == wood and off <= _CHART_STEP / 2:
            near.append((off, row))
    if not near:
        return None
    row = min(near, key=lambda item: item[0])[1]
    return PocketScrew(
        row.length_in * MM_PER_INCH,
        "coarse" if row.thread == "coarse" else "fine",
        row.gauges,
        named(row.src, row.status),
        standing(row.status),
    )


@lru_cache(maxsize=1)
def pocket_geometry() -> PocketGeometry:
    """The usual pocket hole: 15 degrees to the face, leaving the end at half the thickness."""
    rows = {row.name: row for row in table("pocket_geometry.csv", _Geometry)}

    def amount(name: str) -> float:
        return rows[name].amount * (MM_PER_INCH if rows[name].unit == "in" else 1.0)

    return PocketGeometry(
        amount("angle"),
        amount("exit-share"),
        amount("grip-share"),
        amount("pocket-diameter"),
        amount("pilot-diameter"),
        f"angle: {cited(rows['angle'].src)}; the rest: {rows['pocket-diameter'].src}",
    )


@lru_cache(maxsize=64)
def nail(penny: str, kind: Literal["common", "box", "finishing", "sinker"] = "common") -> Nail | None:
    """The nail of a penny size ("8d"); None when the table has no such nail."""
    for row in _rows().get(f"{kind} nail", ()):
        if row.size == penny.strip().casefold():
            return Nail(
                f"{row.size} {kind} nail",
                float(row.major_d_in) * MM_PER_INCH,
                float(row.usual_lengths.removesuffix(" in")) * MM_PER_INCH,
                _in_mm(row.head_d_in),
                named(row.src_major, row.confidence),
                standing(row.confidence),
            )
    return None


@lru_cache(maxsize=64)
def nail_of_length(length_mm: float) -> Nail:
    """The common nail whose length comes nearest to one in mm: what a nail of no stated thickness is."""
    found = [common for row in _rows()["common nail"] if (common := nail(row.size)) is not None]
    return min(found, key=lambda each: (abs(each.length - length_mm), each.length))


class Biscuit(NamedTuple):
    """A biscuit, mm: ``length`` along the joint, ``width`` across it (half in each part), and its slot."""

    said: str
    length: float
    width: float
    slot: float
    stock_least: float  # the thinnest stock that it is for
    source: str


#: The thinnest stock that each is for stands in words: "1/2 to 5/8 in", "3/4 in and up".
_BISCUIT = re.compile(r"(\d+) x (\d+) x (\d+) mm")


@lru_cache(maxsize=1)
def biscuits() -> tuple[Biscuit, ...]:
    """Every biscuit of the table, the smallest first."""
    found = []
    for row in _rows()["biscuit"]:
        sizes, stock = _BISCUIT.match(row.usual_lengths), _hole(f"{row.for_stock.split()[0]} in")
        if sizes is not None and stock is not None:
            length, width, slot = (float(each) for each in sizes.groups())
            found.append(
                Biscuit(
                    row.size,
                    length,
                    width,
                    slot,
                    stock.smallest,
                    named(row.src_lengths, row.confidence),
                )
            )
    return tuple(sorted(found, key=lambda each: each.length))
