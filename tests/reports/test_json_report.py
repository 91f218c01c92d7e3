"""The JSON report against its published schema, with the reference validator (jsonschema)."""

from __future__ import annotations

import json
from collections.abc import Iterator
from dataclasses import replace
from importlib import resources
from typing import Any

import jsonschema
import pytest
from made_by_hand import INCH, bench_report, bookcase_report, clean_bench_report

from reviewer.findings import Edit, Finding, Severity
from reviewer.judging import Judgement
from reviewer.language.problems import FileProblem, ReadingProblem
from reviewer.language.source import Source, Span
from reviewer.reports.buying import cut_list_of
from reviewer.reports.content import Bought, Buying, Hardware, Piece, Report, unread
from reviewer.reports.json_report import render_json
from reviewer.units import UnitSystem, Value, length, ratio, show
from reviewer.workshop.assumptions import Assumption

SCHEMA = json.loads((resources.files("reviewer.reports") / "review.schema.json").read_text(encoding="utf-8"))


def full_report() -> Report:
    report = bench_report()
    assert report.review
    return replace(
        report,
        cut_list=cut_list_of(report.review),
        mass=17.25,
        assumptions=(
            Assumption(
                "seat.1", "it is {value} wet", Value(12, "percent"), "a table", "moisture 12 %", Span(0, 4)
            ),
        ),
        buying=Buying(
            (
                Bought("stud", "2x4", 96 * INCH, None, 4.1, (Piece("rail.front", 0, 35 * INCH),), 61 * INCH),
                Bought("ply", "birch", 2440, 1220, None, (Piece("back", 0, 800, 10, 400),), 2.0e6),
            ),
            (Hardware(40, "screws #8 x 2 1/2", "seat"), Hardware(None, "glue pva", "rails")),
            13.9,
            ("No stock of that width is sold.",),
        ),
    )


def problem_report() -> Report:
    source = Source("b.plan", "part leg: stdu\n")
    problem = ReadingProblem(Span(10, 14), "No such stock.", "Write a stock.", ("stud",), (Span(0, 4),))
    return Report(source, problems=(problem,))


REPORTS = {
    "whole": lambda: [full_report(), bookcase_report()],
    "clean": lambda: [clean_bench_report()],
    "none": list,
    "unread": lambda: [unread(FileProblem("gone.plan", "There is none.", "Check the name."))],
    "problems": lambda: [problem_report()],
}


@pytest.mark.parametrize("name", REPORTS)
def test_every_report_follows_the_schema(name: str) -> None:
    text = render_json(REPORTS[name]())
    assert text.endswith("}\n")
    jsonschema.validate(json.loads(text), SCHEMA, cls=jsonschema.Draft202012Validator)


def test_the_schema_is_itself_valid() -> None:
    jsonschema.Draft202012Validator.check_schema(SCHEMA)
    assert SCHEMA["$schema"] == "https://json-schema.org/draft/2020-12/schema"
    assert SCHEMA["$id"] == "urn:dryfit:review:1"
    assert json.loads(render_json([]))["format"] == SCHEMA["$id"]


def objects(node: Any, path: str = "") -> Iterator[tuple[str, dict[str, Any]]]:
    if isinstance(node, dict):
        if node.get("type") == "object":
            yield path, node
        for key, value in node.items():
            yield from objects(value, f"{path}/{key}")
    elif isinstance(node, list):
        for index, value in enumerate(node):
            yield from objects(value, f"{path}/{index}")


def test_the_schema_is_closed_and_asks_for_everything() -> None:
    found = dict(objects(SCHEMA))
    assert len(found) >= 20
    maps = [path for path, node in found.items() if node["additionalProperties"] is not False]
    assert maps == ["/$defs/finding/properties/values"]
    of_used_files = {"/$defs/plan": ["uses"], "/$defs/span": ["file"]}  # only where a plan uses files
    for path, node in found.items():
        if path not in maps:
            asked = [name for name in node["properties"] if name not in of_used_files.get(path, [])]
            assert node["required"] == asked, path


def test_an_unknown_key_is_refused_anywhere() -> None:
    document = json.loads(render_json([full_report()]))
    document["plans"][0]["findings"][0]["working"]["figures"][0]["more"] = 1
    with pytest.raises(jsonschema.ValidationError, match="'more' was unexpected"):
        jsonschema.validate(document, SCHEMA)


def test_keys_come_in_the_order_of_the_schema() -> None:
    document = json.loads(render_json([full_report()]))
    assert list(document) == SCHEMA["required"]
    assert list(document["plans"][0]) == SCHEMA["$defs"]["plan"]["required"]
    assert list(document["plans"][0]["findings"][0]) == SCHEMA["$defs"]["finding"]["required"]


def test_a_finding_whole() -> None:
    finding = json.loads(render_json([bench_report()]))["plans"][0]["findings"][1]  # tips stands first
    # 41 1/2 in = 1054.1 mm, 35 in = 889 mm, 6 1/2 in = 165.1 mm, 1/32 in = 0.79375 mm
    assert finding == {
        "rule": "cut-does-not-fit",
        "topic": "fit",
        "severity": "error",
        "parts": ["rail.front"],
        "says": "rail.front is cut 41 1/2 in long, but it has 35 in to fill: 6 1/2 in too much.",
        "do": "Cut it 35 in long.",
        "at": {"start": 397, "end": 407, "line": 13, "column": 46, "end_line": 13, "end_column": 56},
        "also_at": [{"start": 229, "end": 237, "line": 10, "column": 1, "end_line": 10, "end_column": 9}],
        "values": {
            "part": {"text": "rail.front"},
            "cut": {"amount": 1054.1, "unit": "mm", "kind": "length", "text": "41 1/2 in"},
            "space": {"amount": 889.0, "unit": "mm", "kind": "length", "text": "35 in"},
            "over": {"amount": 165.1, "unit": "mm", "kind": "length", "text": "6 1/2 in"},
        },
        "working": {
            "figures": [
                {
                    "name": "stated cut",
                    "value": {"amount": 1054.1, "unit": "mm", "kind": "length", "text": "41 1/2 in"},
                    "source": "the plan",
                },
                {
                    "name": "space between the legs",
                    "value": {"amount": 889.0, "unit": "mm", "kind": "length", "text": "35 in"},
                    "source": "setting-out",
                },
            ],
            "formula": "stated cut - space",
            "result": {
                "name": "too long by",
                "value": {"amount": 165.1, "unit": "mm", "kind": "length", "text": "6 1/2 in"},
                "source": "",
            },
            "limit": {
                "name": "allowed",
                "value": {"amount": 0.79375, "unit": "mm", "kind": "fine length", "text": "1/32 in"},
                "source": "common practice, no source",
            },
        },
        "edit": {
            "at": {"start": 397, "end": 407, "line": 13, "column": 46, "end_line": 13, "end_column": 56},
            "text": "cut 35",
        },
        "accepted_because": None,
    }


def test_spans_are_the_plan_s_own_words() -> None:
    report = bench_report()
    for found in json.loads(render_json([report]))["plans"][0]["findings"]:
        at = found["at"]
        words = report.source.text[at["start"] : at["end"]]
        assert report.source.line(at["line"])[at["column"] - 1 :].startswith(words)


def test_waivers_keep_their_reason() -> None:
    accepted = json.loads(render_json([bench_report()]))["plans"][0]["accepted"]
    assert [item["accepted_because"] for item in accepted] == ["the gap between the seat planks is wanted"]


def test_a_part_where_it_stands() -> None:
    parts = json.loads(render_json([bench_report()]))["plans"][0]["parts"]
    rail = next(part for part in parts if part["name"] == "rail.front")
    # by hand: from 6 1/2 to 41 1/2 in across, 0 to 1 1/2 deep, 12 1/2 to 16 up
    assert rail["low_mm"] == [165.1, 0.0, 317.5]
    assert rail["high_mm"] == [1054.1, 38.1, 406.4]
    assert (rail["length_mm"], rail["width_mm"], rail["thickness_mm"]) == (889.0, 88.9, 38.1)
    assert rail["volume_mm3"] == round(889.0 * 88.9 * 38.1, 2)
    assert (rail["along"], rail["across"], rail["through"]) == ([1, 0, 0], [0, 0, 1], [0, 1, 0])


def one_finding(value: Value) -> Any:
    report = bench_report()
    finding = Finding((), Span(0, 4), "It is {x}.", "Mend it.", {"x": value}).stamped(
        "tips", "safety", Severity.NOTE
    )
    shown = render_json([replace(report, judgement=Judgement((finding,), (), ("tips",)))])
    jsonschema.validate(json.loads(shown), SCHEMA)
    return json.loads(shown)["plans"][0]["findings"][0]["values"]["x"]


def test_numbers_without_an_end_are_null_and_minus_nought_is_nought() -> None:
    assert one_finding(ratio(float("inf"))) == {
        "amount": None,
        "unit": "1",
        "kind": "ratio",
        "text": show(ratio(float("inf")), UnitSystem.INCH),
    }
    assert str(one_finding(length(-0.0))["amount"]) == "0.0"
    assert one_finding(length(1 / 3))["amount"] == 0.333333333


KINDS = SCHEMA["$defs"]["measure"]["properties"]["kind"]["enum"]


@pytest.mark.parametrize("kind", KINDS)
def test_every_kind_of_value_names_its_unit(kind: Any) -> None:
    assert one_finding(Value(2.0, kind))["unit"]


def test_text_that_is_no_utf8_is_still_json() -> None:
    source = Source("bad\udc80.plan", "part \udcff\n")
    report = Report(source, problems=(ReadingProblem(Span(5, 6), "What is \udcff?", "Write words."),))
    text = render_json([report])
    text.encode("utf-8")
    assert json.loads(text)["plans"][0]["text_problems"][0]["says"] == "What is \udcff?"


def test_an_edit_that_takes_words_out() -> None:
    report = bench_report()
    assert report.judgement
    first = replace(report.judgement.findings[0], edit=Edit(Span(0, 4), ""))
    shown = render_json([replace(report, judgement=Judgement((first,), (), ("x",)))])
    assert json.loads(shown)["plans"][0]["findings"][0]["edit"]["text"] == ""
