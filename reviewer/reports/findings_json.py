"""Findings, text not read, and what was taken for granted, as ``review.schema.json`` promises them."""

from __future__ import annotations

from reviewer.findings import Edit, Figure, Finding, Working
from reviewer.language.problems import ReadingProblem
from reviewer.language.source import Source
from reviewer.reports.content import Report
from reviewer.reports.json_values import Json, span_json, value_json
from reviewer.units import UnitSystem
from reviewer.wording import fill, next_step, sentence
from reviewer.workshop.assumptions import Assumption


def finding_json(finding: Finding, report: Report) -> Json:
    """A finding with its sentences, its values and its working."""
    source, system = report.source, report.units
    return {
        "rule": finding.rule,
        "topic": finding.topic,
        "severity": finding.weight.word,
        "parts": list(finding.parts),
        "says": sentence(finding, system),
        "do": next_step(finding, system),
        "at": span_json(source, finding.at),
        "also_at": [span_json(source, span) for span in finding.also_at],
        "values": {name: value_json(value, system) for name, value in finding.values.items()},
        "working": _working(finding.working, system),
        "edit": _edit(finding.edit, source),
        "accepted_because": finding.waived_because,
    }


def problem_json(problem: ReadingProblem, source: Source) -> Json:
    """Words that could not be understood."""
    return {
        "says": problem.says,
        "do": problem.do,
        "near": list(problem.near),
        "at": span_json(source, problem.span),
        "also_at": [span_json(source, span) for span in problem.also_at],
    }


def assumption_json(taken: Assumption, report: Report) -> Json:
    """A thing taken for granted, and what to write to say otherwise."""
    return {
        "about": taken.about,
        "says": fill(taken.what, {"value": taken.value}, report.units),
        "value": value_json(taken.value, report.units),
        "source": taken.source,
        "say": taken.say,
        "at": span_json(report.source, taken.span),
    }


def _figure(figure: Figure | None, system: UnitSystem) -> Json | None:
    if figure is None:
        return None
    return {"name": figure.name, "value": value_json(figure.value, system), "source": figure.source}


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
    return {"at": span_json(source, edit.span), "text": edit.text} if edit else None
