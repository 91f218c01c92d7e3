"""How each piece keeps standing, as the page shows it: drawings, a table of states, the changes tried."""

from __future__ import annotations

import math
import re
from typing import NamedTuple

from reviewer.model.plan import Axis
from reviewer.reports.content import Report
from reviewer.reports.footprint_drawing import footprint_drawing, key_of
from reviewer.reports.stability import PIECES, StandingShown, StandRow, TriedRow
from reviewer.reports.stability_drawing import balance_drawing, key_text
from reviewer.setting_out.result import SettingOut

#: Drawings of a piece: its states nearest to tipping; and of all pieces of a plan together.
DRAWN_EACH, DRAWN_IN_ALL = 4, 12


class BalanceDrawn(NamedTuple):
    """A drawing of a state, what it shows, and what its letters are."""

    svg: str
    said: str
    key: str


class StandingOnPage(NamedTuple):
    """A piece that stands; ``sign`` is the weight whose sign stands by its state, ``feet`` as from above."""

    name: str
    said: str
    scope: str
    sign: str
    drawings: tuple[BalanceDrawn, ...]
    feet: BalanceDrawn | None
    rows: tuple[StandRow, ...]
    changes: tuple[TriedRow, ...]
    best: str


def stability_on_page(report: Report, prefix: str) -> tuple[tuple[StandingOnPage, ...], str]:
    """The pieces of the page, and what is said of those that are left out."""
    if not report.stability or report.review is None:
        return (), ""
    drawn = 0
    pieces = []
    for index, each in enumerate(report.stability[:PIECES], 1):
        drawings = _drawings(each, report, f"{prefix}balance-{index}", DRAWN_IN_ALL - drawn)
        drawn += len(drawings)
        outcome = each.rows[0].outcome if each.rows else "stands"
        sign = {"tips": "error", "too close to call": "warning"}.get(outcome, "accepted")
        feet = _feet(each, report, f"{prefix}feet-{index}") if drawings else None
        pieces.append(
            StandingOnPage(
                each.name, each.said, each.scope, sign, drawings, feet, each.rows, each.changes, each.best
            )
        )
    left = len(report.stability) - PIECES
    return tuple(pieces), f"{left} more pieces stand; the JSON has them all." if left > 0 else ""


def unbroken(text: str) -> str:
    """The text with every measure in one line: “6 15/32 in” over two lines would read as 6."""
    return re.sub(r"(?<=\d) (?=\d+/\d|lb|in\b|mm\b|kg\b|N\b)", "\u00a0", text)


def restraint_heights_of(shown: StandingShown, setting: SettingOut) -> tuple[float, float] | None:
    """How high the highest restraint of a piece that counts holds it and meets the wall, mm; None without."""
    top = shown.tipping.piece.height
    heights = []
    for each in shown.tipping.piece.restraints:
        if each.into == "board":
            continue
        stated = each.height
        if stated is None:
            stated = max(setting.solids[name].high[Axis.UP] for name in each.what if name in setting.solids)
        held = min(stated, top)
        heights.append((held, held if each.wall_height is None else each.wall_height))
    return max(heights, default=None)


def _feet(shown: StandingShown, report: Report, name: str) -> BalanceDrawn | None:
    """The feet from above, with the edges of the state nearest to tipping."""
    worst, piece = shown.tipping.worst, shown.tipping.piece
    if worst is None:
        return None
    svg = footprint_drawing(worst, piece, report.units, name)
    key = unbroken(key_of(worst, piece, report.units))
    return BalanceDrawn(svg, "where it stands", key) if svg else None


def _drawings(shown: StandingShown, report: Report, name: str, room: int) -> tuple[BalanceDrawn, ...]:
    review = report.review
    assert review is not None
    rows = [row for row in shown.rows if row.state.judged and math.isfinite(row.state.balance.ratio)]
    solids = [review.setting.solids[part] for part in shown.tipping.piece.parts]
    tied, on_wall = restraint_heights_of(shown, review.setting) or (None, None)
    found = []
    for number, row in enumerate((rows or list(shown.rows[:1]))[: min(DRAWN_EACH, room)], 1):
        svg = balance_drawing(
            row.state, solids, row.outcome, report.units, f"{name}-{number}", restraint=tied, on_wall=on_wall
        )
        if svg:
            key = unbroken(key_text(row.state, report.units))
            found.append(BalanceDrawn(svg, row.what, key))
    return tuple(found)
