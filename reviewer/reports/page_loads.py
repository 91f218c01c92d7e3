"""How far parts are used and the way of the loads, as the page shows them."""

from __future__ import annotations

from collections.abc import Sequence

from reviewer.reports.load_drawing import load_drawing
from reviewer.reports.shown import LoadsShown, UseLine
from reviewer.reports.stock_lines import NAMES
from reviewer.reports.used import (
    ROWS,
    UseRow,
    landed_text,
    landings,
    limit_sources,
    more_rows,
    path_text,
    value_text,
)
from reviewer.setting_out.solid import Solid
from reviewer.units import UnitSystem
from reviewer.wording import filled, listed
from reviewer.workshop.load_path import LoadPath


def use_shown(
    rows: tuple[UseRow, ...], units: UnitSystem
) -> tuple[tuple[UseLine, ...], str, tuple[str, ...]]:
    """The hardest used parts in words, what is said of those left out, and who set the limits."""
    lines = tuple(
        UseLine(
            listed(row.parts, most=NAMES),
            f"{row.governs} on {row.on}" if row.on else row.governs,
            value_text(row.value, units),
            filled(row.limit, units),
            row.percent,
            f"{min(max(row.ratio, 0.0), 1.0) * 100:.0f}",
            "error" if row.ratio > 1 + 1e-9 else "",
        )
        for row in rows[:ROWS]
    )
    return lines, more_rows(len(rows)), limit_sources(rows[:ROWS])


def loads_shown(
    path: LoadPath | None, solids: Sequence[Solid], units: UnitSystem, prefix: str
) -> LoadsShown | None:
    """The way of the loads, drawn and in words; None before it is known."""
    if path is None:
        return None
    svg, remarks = load_drawing(path, solids, units, prefix)
    landed = landings(path)
    said = [landed_text(row, units) for row in landed[:ROWS]]
    if len(landed) > ROWS:
        said.append(f"and {len(landed) - ROWS} more")
    return LoadsShown(svg, path_text(path, units), remarks, tuple(said))
