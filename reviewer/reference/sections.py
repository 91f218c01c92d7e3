"""What the yard sells: board sections behind their nominal names, sheet thicknesses and sheet sizes."""

from __future__ import annotations

import re
from functools import lru_cache

from reviewer.records import NamedTuple
from reviewer.reference.sources import Standing, named, standing
from reviewer.reference.tables import Row, table
from reviewer.units import MM_PER_FOOT, MM_PER_INCH, close

_NOMINAL_REGION = "US/Canada"  # elsewhere boards are named by their size


class Section(NamedTuple):
    """A board as dressed and dry. ``width`` is None for hardwood sold in random widths."""

    nominal: str
    kind: str  # "dimension", "board (softwood)", "hardwood quarter, S2S", …
    thickness: float  # mm
    width: float | None  # mm
    usual_lengths: tuple[float, ...]  # mm, shortest first
    source: str
    status: Standing
    note: str


class SheetThickness(NamedTuple):
    """The real thickness of a sheet sold under a nominal one; ``least`` and ``most`` where tabled. mm."""

    nominal: str
    actual: float
    least: float | None
    most: float | None
    source: str
    status: Standing
    note: str


class SheetSize(NamedTuple):
    """A sheet as sold, mm: its long side and its short side."""

    length: float
    width: float
    source: str
    status: Standing


class _Lumber(Row):
    region: str
    kind: str
    nominal: str
    actual_thickness_in: str
    actual_width_in: str
    lengths: tuple[str, ...]
    length_unit: str
    src_size: str
    confidence: str
    notes: str


class _Sheet(Row):
    key: tuple[str, ...]
    also_sold_as: str
    nominal_thickness: str
    actual_or_label_in: float | None
    actual_or_label_mm: float | None
    min_in: float | None
    max_in: float | None
    min_mm: float | None
    max_mm: float | None
    sheet_size: str
    src: str
    confidence: str
    notes: str


_MM_PER = {"ft": MM_PER_FOOT, "m": 1000.0, "in": MM_PER_INCH, "mm": 1.0}
_QUARTERS = re.compile(r"\d+/4")
_BY = re.compile(r"\s*[x×]\s*")
_SHEET = re.compile(r"(\d+)x(\d+)")


def _section(row: _Lumber) -> Section:
    unit = _MM_PER.get(row.length_unit, 1.0)
    width = row.actual_width_in
    return Section(
        row.nominal,
        row.kind,
        float(row.actual_thickness_in) * MM_PER_INCH,
        None if width == "random" else float(width) * MM_PER_INCH,
        tuple(float(length) * unit for length in row.lengths),
        named(row.src_size, row.confidence),
        standing(row.confidence),
        row.notes,
    )


@lru_cache(maxsize=1)
def _nominal_rows() -> dict[str, _Lumber]:
    rows: dict[str, _Lumber] = {}
    for row in table("lumber_sizes.csv", _Lumber):
        if row.region == _NOMINAL_REGION and ("x" in row.nominal or _QUARTERS.fullmatch(row.nominal)):
            rows.setdefault(row.nominal, row)
    return rows


@lru_cache(maxsize=64)
def nominal_section(nominal: str) -> Section | None:
    """The dressed, dry section behind "2x4", "5/4x6" or "8/4"; None when nothing is sold by that name."""
    row = _nominal_rows().get(_BY.sub("x", nominal.strip().casefold()))
    return _section(row) if row else None


@lru_cache(maxsize=1)
def nominal_names() -> tuple[str, ...]:
    """Every nominal name, in the table's order: thin before thick, narrow before wide."""
    return tuple(_nominal_rows())


def _inches(text: str) -> float | None:
    """mm of "3/4", "1-1/8", "23/32" or "1"; None for a thickness named in millimetres."""
    if not text or text.endswith("mm"):
        return None
    total = 0.0
    for part in text.split("-"):
        over, _, under = part.partition("/")
        total += float(over) / float(under or 1)
    return total * MM_PER_INCH


def _nominal_mm(row: _Sheet) -> tuple[float, ...]:
    names = (row.nominal_thickness, row.also_sold_as)
    in_inches = (_inches(name) for name in names)
    in_mm = (float(name.removesuffix(" mm")) for name in names if name.endswith("mm"))
    return (*(mm for mm in in_inches if mm is not None), *in_mm)


@lru_cache(maxsize=1)
def _thicknesses() -> dict[str, tuple[_Sheet, ...]]:
    found: dict[str, list[_Sheet]] = {}
    for row in table("sheet_sizes.csv", _Sheet):
        for key in row.key:
            found.setdefault(key, []).append(row)
    return {key: tuple(rows) for key, rows in found.items()}


def _thickness(row: _Sheet) -> SheetThickness:
    in_mm = row.nominal_thickness.endswith("mm")
    least, most = (row.min_mm, row.max_mm) if in_mm else (row.min_in, row.max_in)
    actual = row.actual_or_label_mm if in_mm else row.actual_or_label_in
    assert actual is not None
    unit = 1.0 if in_mm else MM_PER_INCH
    return SheetThickness(
        row.nominal_thickness if in_mm else f"{row.nominal_thickness} in",
        actual * unit,
        None if least is None else least * unit,
        None if most is None else most * unit,
        named(row.src, row.confidence),
        standing(row.confidence),
        row.notes,
    )


@lru_cache(maxsize=256)
def sheet_thickness(panel_key: str, nominal_mm: float) -> SheetThickness | None:
    """What a sheet sold as so many millimetres (19.05 for 3/4 in) really measures; None when not tabled."""
    near = (
        (abs(nominal_mm - name), at, row)
        for at, row in enumerate(_thicknesses().get(panel_key, ()))
        for name in _nominal_mm(row)
        if close(nominal_mm, name)
    )
    found = min(near, key=lambda item: item[:2], default=None)  # 19 mm and 3/4 in are that near
    return _thickness(found[2]) if found else None


@lru_cache(maxsize=64)
def sheet_sizes(panel_key: str) -> tuple[SheetSize, ...]:
    """The usual sheets of a panel, mm, in the table's order without repeats; empty when not tabled."""
    sizes: dict[tuple[float, float], SheetSize] = {}
    for row in _thicknesses().get(panel_key, ()):
        unit = 1.0 if row.sheet_size.endswith("mm") else MM_PER_INCH
        for one, other in _SHEET.findall(row.sheet_size):
            sides = float(one) * unit, float(other) * unit
            size = SheetSize(max(sides), min(sides), named(row.src, row.confidence), standing(row.confidence))
            sizes.setdefault((size.length, size.width), size)
    return tuple(sizes.values())
