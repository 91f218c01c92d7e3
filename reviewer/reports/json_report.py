"""The review as JSON for other programs, as ``review.schema.json`` promises it.

Numbers are in the units used inside, which every measure names; beside each stands the text that a
person would read, in the plan's unit. Offsets count code points from 0, lines and columns from 1.
"""

from __future__ import annotations

import json
import re
from collections.abc import Sequence
from typing import TYPE_CHECKING

from reviewer import __version__
from reviewer.language.numbers import MM_PER
from reviewer.plan_words import plan_unit
from reviewer.reports.cautions import cautions_at_work
from reviewer.reports.content import DEFERS, Report, verdict
from reviewer.reports.findings_json import assumption_json, finding_json, problem_json
from reviewer.reports.finishing_json import finishing_json, standing_json
from reviewer.reports.json_values import Json, number, numbers, span_json, value_json
from reviewer.reports.lists import finish_steps
from reviewer.reports.lists_json import buying_json, caution_json, cut_row_json, order_json, part_json
from reviewer.reports.loads_json import joint_use_json, load_path_json, use_json
from reviewer.reports.order import Order, order_of
from reviewer.reports.room import room_line

if TYPE_CHECKING:
    from reviewer.model.outside import SetMeasure

#: The name of the format; a change that breaks readers gets a new number.
FORMAT = "urn:dryfit:review:1"

_SURROGATE = re.compile("[\ud800-\udfff]")  # has no UTF-8 of its own; JSON can spell it out


def _plan(report: Report) -> Json:
    trouble = report.file_problem
    return {
        "file": report.source.name,
        **({"uses": [file.name for file in report.source.used]} if report.source.used else {}),
        "reviewed": report.judgement is not None,
        "passes": report.passes,
        "measures": [_set_measure(measure) for measure in report.measures],
        "sizes_to_try": _sizes_to_try(report),
        **_understood(report),
        "file_problem": {"says": trouble.says, "do": trouble.do} if trouble else None,
        "text_problems": [problem_json(problem, report.source) for problem in report.problems],
        "findings": [finding_json(finding, report) for finding in report.findings],
        "accepted": [finding_json(finding, report) for finding in report.waived],
        "rules": list(report.judgement.ran) if report.judgement else [],
        "waiting": list(report.waiting),
        "use": [use_json(row, report.units) for row in report.carried.use] if report.carried else [],
        "joint_use": [joint_use_json(row, report.units) for row in report.carried.joints]
        if report.carried
        else [],
        "load_path": load_path_json(report.carried.path, report.units) if report.carried else None,
        "stability": _stability(report),
        "wall_fixings": _wall_fixings(report),
        "mass_kg": None if report.mass is None else number(report.mass),
        "assumptions": [assumption_json(taken, report) for taken in report.assumptions],
        "cut_list": [cut_row_json(row) for row in report.cut_list],
        "joints": [row._asdict() for row in report.joints],
        "buying": buying_json(report.buying),
        "finishing": finishing_json(report.finishing),
        "standing": standing_json(report),
    }


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
            "order": order_json(Order((), 0.0)),
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
                "value": value_json(limit.value, review.units),
                "meaning": limit.meaning,
                "source": limit.source,
            }
            for _, limit in sorted(review.limits.items())
        ],
        "parts": [part_json(solid, review) for solid in review.setting.solids.values()],
        "finishes": [
            {
                "name": finish.name,
                "on": list(finish.on),
                "steps": [step._asdict() for step in finish_steps(finish, review.units)],
            }
            for finish in review.plan.finishes
        ],
        "order": order_json(order_of(review)),
        "cautions": [caution_json(caution, part.title) for part in cautions for caution in part.cautions],
    }


def _set_measure(measure: SetMeasure) -> Json:
    from reviewer.reports.sizes import size_text

    own, own_mm = measure.own, measure.own_mm
    return {
        "name": measure.name,
        "size_mm": number(measure.mm),
        "text": size_text(measure.amount, measure.unit),
        "plan_mm": None if own_mm is None else number(own_mm),
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
            "sizes_mm": numbers([amount * unit_mm for amount in trial.amounts]),
            "at": span_json(report.source, trial.span),
        }
        for trial in plan.trials
    ]


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


def render_json(reports: Sequence[Report]) -> str:
    """The review of some plans as one JSON document that follows ``review.schema.json``."""
    said = verdict(reports)
    document = {
        "format": FORMAT,
        "written_by": f"dryfit {__version__}",
        "defers": DEFERS,
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
