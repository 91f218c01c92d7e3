"""The review as JSON for other programs, as ``review.schema.json`` promises it.

Numbers are in the units used inside, which every measure names; beside each stands the text that a
person would read, in the plan's unit. Offsets count code points from 0, lines and columns from 1.
"""

from __future__ import annotations

import json
import math
import re
from collections.abc import Sequence
from typing import TYPE_CHECKING, Any

from reviewer import __version__
from reviewer.findings import Edit, Figure, Filling, Finding, Working
from reviewer.language.numbers import MM_PER
from reviewer.language.problems import ReadingProblem
from reviewer.language.source import Source, Span
from reviewer.model.plan import FLOOR, WALL
from reviewer.plan_words import plan_unit
from reviewer.reference.cautions import Caution
from reviewer.reports.cautions import cautions_at_work
from reviewer.reports.content import Bought, Buying, CutRow, Piece, Report, verdict
from reviewer.reports.finishing_json import finishing_json, standing_json
from reviewer.reports.joint_use import JointUseRow
from reviewer.reports.lists import finish_steps
from reviewer.reports.order import Order, order_of
from reviewer.reports.room import room_line
from reviewer.reports.used import UseRow, path_text
from reviewer.review import Review
from reviewer.setting_out.solid import Solid
from reviewer.units import Kind, UnitSystem, Value, show
from reviewer.wording import fill, next_step, sentence
from reviewer.workshop.assumptions import Assumption
from reviewer.workshop.load_path import LoadPath

if TYPE_CHECKING:
    from reviewer.model.outside import SetMeasure

#: The name of the format; a change that breaks readers gets a new number.
FORMAT = "urn:dryfit:review:1"

_SURROGATE = re.compile("[\ud800-\udfff]")  # has no UTF-8 of its own; JSON can spell it out

_INSIDE_UNITS: dict[Kind, str] = {
    "length": "mm",
    "fine length": "mm",
    "force": "N",
    "mass": "kg",
    "stress": "MPa",
    "moment": "N·mm",
    "area": "mm²",
    "volume": "mm³",
    "liquid": "mm³",
    "line load": "N/mm",
    "count": "1",
    "ratio": "1",
    "percent": "%",
    "angle": "°",
    "hours": "h",
    "temperature": "°C",
    "money": "as in the plan",
}

Json = dict[str, Any]


def _number(amount: float) -> float | None:
    """The number to nine digits, so that no machine's last bit shows; None where there is no limit."""
    return float(f"{amount:.9g}") + 0.0 if math.isfinite(amount) else None


def _numbers(amounts: Sequence[float]) -> list[float | None]:
    return [_number(amount) for amount in amounts]


def _span(source: Source, span: Span) -> Json:
    first, last = source.place(span.start), source.place(span.end)
    file = source.file_at(span.start)
    begins = file.start if file else 0
    return {
        **({"file": file.name} if file else {}),
        "start": span.start - begins,
        "end": span.end - begins,
        "line": first.line,
        "column": first.column,
        "end_line": last.line,
        "end_column": last.column,
    }


def _filling(filling: Filling, system: UnitSystem) -> Json:
    if not isinstance(filling, Value):
        return {"text": filling}
    return {
        "amount": _number(filling.amount),
        "unit": _INSIDE_UNITS[filling.kind],
        "kind": filling.kind,
        "text": show(filling, system),
    }


def _figure(figure: Figure | None, system: UnitSystem) -> Json | None:
    if figure is None:
        return None
    return {"name": figure.name, "value": _filling(figure.value, system), "source": figure.source}


def _working(working: Working | None, system: UnitSystem) -> Json | None:
    if working is None:
        return None
    return {
        "figures": [_figure(figure, system) for figure in working.figures],
        "formula": working.formula,
        "result": _figure(working.result, system),
        "limit": _figure(working.limit, system),
    }


def _edit(edit: Edit | None, source: Source) -> Json | None:
    return {"at": _span(source, edit.span), "text": edit.text} if edit else None


def _finding(finding: Finding, report: Report) -> Json:
    source, system = report.source, report.units
    return {
        "rule": finding.rule,
        "topic": finding.topic,
        "severity": finding.weight.word,
        "parts": list(finding.parts),
        "says": sentence(finding, system),
        "do": next_step(finding, system),
        "at": _span(source, finding.at),
        "also_at": [_span(source, span) for span in finding.also_at],
        "values": {name: _filling(value, system) for name, value in finding.values.items()},
        "working": _working(finding.working, system),
        "edit": _edit(finding.edit, source),
        "accepted_because": finding.waived_because,
    }


def _problem(problem: ReadingProblem, source: Source) -> Json:
    return {
        "says": problem.says,
        "do": problem.do,
        "near": list(problem.near),
        "at": _span(source, problem.span),
        "also_at": [_span(source, span) for span in problem.also_at],
    }


def _part(solid: Solid, review: Review) -> Json:
    part = review.plan.parts.get(solid.name)
    return {
        "name": solid.name,
        "stock": part.stock if part else None,
        "length_mm": _number(solid.length),
        "width_mm": _number(solid.width),
        "thickness_mm": _number(solid.thickness),
        "volume_mm3": _number(solid.volume),
        "low_mm": _numbers(solid.low),
        "high_mm": _numbers(solid.high),
        "along": _numbers(solid.directions[0]),
        "across": _numbers(solid.directions[1]),
        "through": _numbers(solid.directions[2]),
        "at": _span(review.source, review.span_of(solid.name)),
    }


def _cut_row(row: CutRow) -> Json:
    return {
        "parts": list(row.parts),
        "stock": row.stock,
        "said": row.said,
        "length_mm": _number(row.length),
        "width_mm": _number(row.width),
        "thickness_mm": _number(row.thickness),
    }


def _piece(piece: Piece) -> Json:
    return {
        "part": piece.part,
        "start_mm": _number(piece.at),
        "length_mm": _number(piece.length),
        "across_mm": _number(piece.across),
        "width_mm": None if piece.width is None else _number(piece.width),
    }


def _bought(board: Bought) -> Json:
    return {
        "stock": board.stock,
        "said": board.said,
        "length_mm": _number(board.length),
        "width_mm": None if board.width is None else _number(board.width),
        "price": None if board.price is None else _number(board.price),
        "pieces": [_piece(piece) for piece in board.pieces],
        "left_over": _number(board.left_over),
    }


def _buying(buying: Buying | None) -> Json | None:
    if buying is None:
        return None
    return {
        "boards": [_bought(board) for board in buying.boards],
        "hardware": [
            {
                "how_many": item.how_many,
                "said": item.said,
                "why": item.why,
                "price": None if item.price is None else _number(item.price),
            }
            for item in buying.hardware
        ],
        "total": None if buying.total is None else _number(buying.total),
        "remarks": list(buying.remarks),
    }


def _assumption(taken: Assumption, report: Report) -> Json:
    return {
        "about": taken.about,
        "says": fill(taken.what, {"value": taken.value}, report.units),
        "value": _filling(taken.value, report.units),
        "source": taken.source,
        "say": taken.say,
        "at": _span(report.source, taken.span),
    }


def _caution(caution: Caution, work: str) -> Json:
    return {
        "work": work,
        "about": caution.about,
        "hazard": caution.hazard,
        "usual": caution.usual,
        "status": caution.status,
        "source": caution.source,
    }


def _order(order: Order) -> Json:
    return {
        "steps": [
            {"title": step.title, "does": list(step.does), "waits_h": _number(step.waits)}
            for step in order.steps
        ],
        "waits_h": _number(order.waits),
        "proposed": order.proposed,
    }


def _use_row(row: UseRow, system: UnitSystem) -> Json:
    return {
        "parts": list(row.parts),
        "governs": row.governs,
        "on": row.on or None,
        "value": _filling(row.value, system),
        "limit": _filling(row.limit, system),
        "ratio": _number(row.ratio),
        "source": row.source,
    }


def _joint_use(row: JointUseRow, system: UnitSystem) -> Json:
    known = row.limit is not None and row.ratio is not None and math.isfinite(row.ratio)
    return {
        "parts": list(row.parts),
        "to": list(row.to),
        "way": row.way,
        "comes": _filling(row.comes, system),
        "limit": _filling(row.limit, system) if row.limit is not None else None,
        "ratio": _number(row.ratio) if known and row.ratio is not None else None,
        "holds": row.holds,
        "gives_way": row.mode,
        "who": row.who,
        "source": row.source,
        "why": row.why,
        "open": bool(row.open),
    }


def _load_path(path: LoadPath | None, system: UnitSystem) -> Json | None:
    if path is None:
        return None
    known = not path.tips
    return {
        "says": path_text(path, system),
        "weights_n": _number(path.weights),
        "loads_n": _number(path.loads),
        "on_floor_n": _number(path.on(FLOOR)) if known else None,
        "on_wall_n": _number(path.on(WALL)) if known else None,
        "loads": [
            {"part": each.part, "at_mm": _numbers(each.at), "force_n": _number(each.force)}
            for each in path.puts
        ],
        "steps": [
            {"part": each.part, "to": each.to, "at_mm": _numbers(each.at), "force_n": _number(each.force)}
            for each in path.steps
        ],
        "ends": [{"part": name, "force_n": _number(amount)} for name, amount in path.ends],
        "tips": list(path.tips),
    }


def _stability(report: Report) -> list[Json]:
    if not report.stability:
        return []
    from reviewer.reports.stability_json import stability_json

    return [stability_json(each, report.units) for each in report.stability]


def _in_room(report: Report) -> Json | None:
    if report.in_room is None:
        return None
    from reviewer.reports.in_room_json import in_room_json

    return in_room_json(report.in_room)


def _wall_fixings(report: Report) -> list[Json]:
    if not report.wall_fixings or report.review is None:
        return []
    from reviewer.reports.wall_fixing_json import wall_fixing_json

    return [wall_fixing_json(each, report.review) for each in report.wall_fixings]


def _understood(report: Report) -> Json:
    """What is known once the text is understood; empty lists before."""
    review = report.review
    if review is None:
        return {
            "title": None,
            "unit": None,
            "room": None,
            "in_room": None,
            "limits": [],
            "parts": [],
            "finishes": [],
            "order": _order(Order((), 0.0)),
            "cautions": [],
        }
    cautions = cautions_at_work(review, report.mass)
    return {
        "title": review.plan.title,
        "unit": review.units.value,
        "room": room_line(review.plan.room, review.units) if review.plan.room else None,
        "in_room": _in_room(report),
        "limits": [
            {
                "name": limit.name,
                "value": _filling(limit.value, review.units),
                "meaning": limit.meaning,
                "source": limit.source,
            }
            for _, limit in sorted(review.limits.items())
        ],
        "parts": [_part(solid, review) for solid in review.setting.solids.values()],
        "finishes": [
            {
                "name": finish.name,
                "on": list(finish.on),
                "steps": [step._asdict() for step in finish_steps(finish, review.units)],
            }
            for finish in review.plan.finishes
        ],
        "order": _order(order_of(review)),
        "cautions": [_caution(caution, part.title) for part in cautions for caution in part.cautions],
    }


def _set_measure(measure: SetMeasure) -> Json:
    from reviewer.reports.sizes import size_text

    own, own_mm = measure.own, measure.own_mm
    return {
        "name": measure.name,
        "size_mm": _number(measure.mm),
        "text": size_text(measure.amount, measure.unit),
        "plan_mm": None if own_mm is None else _number(own_mm),
        "plan_text": None if own is None else size_text(own, measure.unit),
        "tried": measure.tried,
    }


def _sizes_to_try(report: Report) -> list[Json]:
    if report.review is None or not report.review.plan.trials:
        return []
    plan = report.review.plan
    unit_mm = MM_PER[plan_unit(report.source, plan)]
    return [
        {
            "name": trial.name,
            "sizes_mm": _numbers([amount * unit_mm for amount in trial.amounts]),
            "at": _span(report.source, trial.span),
        }
        for trial in plan.trials
    ]


def _plan(report: Report) -> Json:
    trouble = report.file_problem
    return {
        "file": report.source.name,
        **({"uses": [file.name for file in report.source.used]} if report.source.used else {}),
        "reviewed": report.judgement is not None,
        "measures": [_set_measure(measure) for measure in report.measures],
        "sizes_to_try": _sizes_to_try(report),
        **_understood(report),
        "file_problem": {"says": trouble.says, "do": trouble.do} if trouble else None,
        "text_problems": [_problem(problem, report.source) for problem in report.problems],
        "findings": [_finding(finding, report) for finding in report.findings],
        "accepted": [_finding(finding, report) for finding in report.waived],
        "rules": list(report.judgement.ran) if report.judgement else [],
        "waiting": list(report.waiting),
        "use": [_use_row(row, report.units) for row in report.carried.use] if report.carried else [],
        "joint_use": [_joint_use(row, report.units) for row in report.carried.joints]
        if report.carried
        else [],
        "load_path": _load_path(report.carried.path, report.units) if report.carried else None,
        "stability": _stability(report),
        "wall_fixings": _wall_fixings(report),
        "mass_kg": None if report.mass is None else _number(report.mass),
        "assumptions": [_assumption(taken, report) for taken in report.assumptions],
        "cut_list": [_cut_row(row) for row in report.cut_list],
        "joints": [row._asdict() for row in report.joints],
        "buying": _buying(report.buying),
        "finishing": finishing_json(report.finishing),
        "standing": standing_json(report),
    }


def render_json(reports: Sequence[Report]) -> str:
    """The review of some plans as one JSON document that follows ``review.schema.json``."""
    said = verdict(reports)
    document = {
        "format": FORMAT,
        "written_by": f"dryfit {__version__}",
        "verdict": {
            "headline": said.headline,
            "to_mend": said.to_mend,
            "to_think_over": said.to_think_over,
            "notes": said.notes,
            "accepted": said.waived,
            "rules": said.rules,
            "unreviewed": said.unreviewed,
        },
        "plans": [_plan(report) for report in reports],
    }
    text = json.dumps(document, ensure_ascii=False, indent=1, allow_nan=False)
    return _SURROGATE.sub(lambda found: f"\\u{ord(found[0]):04x}", text) + "\n"
