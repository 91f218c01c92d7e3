"""The finish's amounts, timetable and standing cautions as JSON, by ``review.schema.json``."""

from __future__ import annotations

from typing import TYPE_CHECKING

from reviewer.reports.finishing import Finishing
from reviewer.reports.json_values import Json, number
from reviewer.workshop.finish_quantities import Paper, ProductNeed
from reviewer.workshop.finish_timetable import Timetable

if TYPE_CHECKING:
    from reviewer.reports.content import Report


def _product(need: ProductNeed) -> Json:
    amount = need.amount
    return {
        "product": need.product,
        "said": need.said,
        "least_l": number(amount.least),
        "likely_l": number(amount.likely),
        "most_l": number(amount.most),
        "thinner_l": number(need.thinner.likely),
        "in_cans_l": number(need.have) if need.cans else None,
        "coats": [
            {
                "what": coat.layer.words,
                "parts": list(coat.parts),
                "area_m2": number(coat.area),
                "likely_l": number(coat.amount.likely),
            }
            for coat in need.coats
        ],
    }


def _paper(paper: Paper) -> Json:
    return {
        "grit": paper.grit,
        "bare_m2": number(paper.bare),
        "between_m2": number(paper.between),
        "discs": paper.discs,
    }


def _maybe(amount: float | None) -> float | None:
    return None if amount is None else number(amount)


def _timetable(timetable: Timetable | None) -> Json | None:
    if timetable is None:
        return None
    return {
        "start": timetable.start.isoformat() if timetable.start else None,
        "day_begins_h": number(timetable.begins),
        "hours_per_day_h": number(timetable.hours),
        "works": [
            {
                "finish": task.finish,
                "kind": task.kind,
                "what": task.said,
                "spans_h": [[number(start), number(end)] for start, end in task.spans],
                "next_h": number(task.next),
                "latest_h": _maybe(task.latest),
            }
            for task in timetable.tasks
        ],
        "ends": [
            {
                "finish": ending.finish,
                "dry_h": number(ending.dry),
                "light_use_h": _maybe(ending.light_use),
                "cured_h": _maybe(ending.cured),
            }
            for ending in timetable.endings
        ],
        "remarks": list(timetable.remarks),
    }


def finishing_json(found: Finishing | None) -> Json | None:
    """What the finishes take and when they are done; None for a plan without any."""
    if found is None:
        return None
    return {
        "products": [_product(need) for need in found.quantities.products],
        "sandpaper": [_paper(paper) for paper in found.quantities.papers],
        "timetable": _timetable(found.timetable),
        "needless": list(dict.fromkeys(can.said for can in found.quantities.needless)),
    }


def standing_json(report: Report) -> list[Json]:
    """The cautions that every report has."""
    return [
        {"name": caution.name, "says": caution.says, "source": caution.source} for caution in report.standing
    ]
