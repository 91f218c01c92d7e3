"""How each piece keeps standing, as ``review.schema.json`` promises it."""

from __future__ import annotations

import math

from reviewer.reports.json_values import Json, number, small
from reviewer.reports.stability import StandingShown, StandRow, TriedRow
from reviewer.units import UnitSystem, Value, show


def _value(value: Value | None, system: UnitSystem) -> Json | None:
    if value is None or not math.isfinite(value.amount):
        return None
    units = {"force": "N", "angle": "°", "length": "mm", "mass": "kg", "count": ""}
    return {
        "amount": number(value.amount),
        "unit": units[value.kind],
        "kind": value.kind,
        "text": show(value, system),
    }


def _state(row: StandRow, system: UnitSystem) -> Json:
    state = row.state
    edge = state.balance.edge
    return {
        "kind": state.kind,
        "says": row.what,
        "outcome": row.outcome,
        "judged": state.judged,
        "sides": list(state.sides),
        "edge_mm": [
            [small(edge.start[0]), small(edge.start[1])],
            [small(edge.end[0]), small(edge.end[1])],
        ],
        "tilt_degrees": small(state.tilt),
        "holds_n_mm": small(state.balance.restoring),
        "turns_n_mm": small(state.balance.overturning),
        "margin_n_mm": small(state.balance.margin),
        "by_restraints_n_mm": small(state.hold),
        "ratio": number(state.balance.ratio),
        "tips_at": _value(state.tips_at, system),
        "open": [opening.name for opening, _ in state.opened],
        "kept_shut": list(state.kept_shut),
        "on": state.on or None,
        "forces": [
            {
                "role": act.role,
                "says": act.said,
                "force_n": small(act.newtons),
                "at_mm": [small(each) for each in act.at],
                "lever_mm": small(act.lever),
            }
            for act in state.acts
        ],
        "source": state.source,
    }


def _change(row: TriedRow, system: UnitSystem) -> Json:
    return {
        "change": row.tried.change,
        "says": row.what,
        "amount": _value(row.tried.amount, system),
        "ratio": number(row.tried.ratio),
        "state": row.tried.worst.kind,
        "enough": _value(row.tried.enough, system),
    }


def stability_json(shown: StandingShown, system: UnitSystem) -> Json:
    """A piece that stands: its mass and feet, its states nearest to tipping first, the changes tried."""
    piece = shown.tipping.piece
    return {
        "piece": shown.name,
        "parts": list(piece.parts),
        "says": shown.said,
        "scope": shown.scope,
        "mass_kg": number(piece.whole.kg),
        "centre_mm": [small(piece.whole.x), small(piece.whole.y), small(piece.whole.z)],
        "footprint_mm": [[small(x), small(y)] for x, y in piece.polygon or ()],
        "states": [_state(row, system) for row in shown.rows],
        "changes": [_change(row, system) for row in shown.changes],
        "best": shown.best or None,
    }
