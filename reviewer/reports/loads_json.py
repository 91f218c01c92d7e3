"""How far parts and joints are used, and the way of the loads, as ``review.schema.json`` promises them."""

from __future__ import annotations

import math

from reviewer.model.plan import FLOOR, WALL
from reviewer.reports.joint_use import JointUseRow
from reviewer.reports.json_values import Json, number, numbers, value_json
from reviewer.reports.used import UseRow, path_text
from reviewer.units import UnitSystem
from reviewer.workshop.load_path import LoadPath


def use_json(row: UseRow, system: UnitSystem) -> Json:
    """Parts that are used alike: what they come to, and what they may."""
    return {
        "parts": list(row.parts),
        "governs": row.governs,
        "on": row.on or None,
        "value": value_json(row.value, system),
        "limit": value_json(row.limit, system),
        "ratio": number(row.ratio),
        "source": row.source,
    }


def joint_use_json(row: JointUseRow, system: UnitSystem) -> Json:
    """Joints that are used alike: what comes to them, and what they may bear."""
    known = row.limit is not None and row.ratio is not None and math.isfinite(row.ratio)
    return {
        "parts": list(row.parts),
        "to": list(row.to),
        "way": row.way,
        "comes": value_json(row.comes, system),
        "limit": value_json(row.limit, system) if row.limit is not None else None,
        "ratio": number(row.ratio) if known and row.ratio is not None else None,
        "holds": row.holds,
        "gives_way": row.mode,
        "who": row.who,
        "source": row.source,
        "why": row.why,
        "open": bool(row.open),
    }


def load_path_json(path: LoadPath | None, system: UnitSystem) -> Json | None:
    """What the piece weighs and bears, and how that comes down; None before it is known."""
    if path is None:
        return None
    known = not path.tips
    return {
        "says": path_text(path, system),
        "weights_n": number(path.weights),
        "loads_n": number(path.loads),
        "on_floor_n": number(path.on(FLOOR)) if known else None,
        "on_wall_n": number(path.on(WALL)) if known else None,
        "loads": [
            {"part": each.part, "at_mm": numbers(each.at), "force_n": number(each.force)}
            for each in path.puts
        ],
        "steps": [
            {"part": each.part, "to": each.to, "at_mm": numbers(each.at), "force_n": number(each.force)}
            for each in path.steps
        ],
        "ends": [{"part": name, "force_n": number(amount)} for name, amount in path.ends],
        "tips": list(path.tips),
    }
