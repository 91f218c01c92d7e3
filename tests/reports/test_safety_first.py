"""What can hurt someone comes first in every report, and neither settings nor waivers put it out of sight."""

from __future__ import annotations

import json
import re
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

from reviewer.findings import SAFETY, Finding, Severity
from reviewer.judging import Judgement, judge
from reviewer.model.outside import SetMeasure
from reviewer.reports.content import Report
from reviewer.reports.html import render_html
from reviewer.reports.json_report import render_json
from reviewer.reports.sizes import size_tables
from reviewer.reports.terminal import render_terminal
from reviewer.review import Review
from reviewer.rulebook import Rule
from tests.support import review_of

#: Tips when someone sits at its end; the seat also lies loose, which hurts nobody.
BENCH = """
plan "Porch bench" in inches
stock plank: actual 1 1/2 x 11 1/4 southern pine, 8 ft
outline frame: 28 across, 11 1/4 deep, 16 tall, on floor
part leg for each of left, right: plank, upright, facing side, as tall as frame
    on floor, flush with each of frame, flush with front of frame
part seat: plank, across, flat, 48 long, on frame, centred across on frame
    flush with front of frame
load seat: 2 people seated
"""
ACCEPTED = BENCH + 'accept tips because "two posts hold its ends"\n'
REASON = "two posts hold its ends"


def _finds(says: str, severity: Severity | None = None) -> object:
    def judged(review: Review) -> Iterator[Finding]:
        yield Finding(("seat",), review.plan.span, says, "Mend it.", severity=severity)

    return judged


def _rule(name: str, topic: str, severity: Severity) -> Rule:
    return Rule(name, topic, severity, (), _finds(f"{name} says so."))  # type: ignore[arg-type]


SHELF = {
    rule.name: rule
    for rule in (
        _rule("first-by-name", "fit", Severity.ERROR),
        _rule("hurts", SAFETY, Severity.ERROR),
        _rule("hurts-less", SAFETY, Severity.NOTE),
        _rule("lesser", "fit", Severity.NOTE),
    )
}


def _judged(waiver: str = "", severities: dict[str, Severity | None] | None = None) -> Judgement:
    return judge(review_of(BENCH + waiver), SHELF, severities)


def _report(waiver: str = "", severities: dict[str, Severity | None] | None = None) -> Report:
    review = review_of(BENCH + waiver)
    return Report(review.source, review=review, judgement=judge(review, SHELF, severities))


def test_it_comes_first_however_heavy() -> None:
    assert [f.rule for f in _judged().findings] == ["hurts", "hurts-less", "first-by-name", "lesser"]


def test_accepted_it_is_a_note_with_its_reason() -> None:
    found = _judged('accept hurts because "ropes hold it"\n')
    assert [f.rule for f in found.findings] == ["hurts", "hurts-less", "first-by-name", "lesser"]
    (kept,) = [f for f in found.findings if f.rule == "hurts"]
    assert (kept.weight, kept.waived_because) == (Severity.NOTE, "ropes hold it")
    assert found.waived == ()


def test_other_findings_leave_the_list_when_accepted() -> None:
    found = _judged('accept first-by-name because "it is meant so"\n')
    assert "first-by-name" not in {f.rule for f in found.findings}
    assert [f.rule for f in found.waived] == ["first-by-name"]


def test_a_folder_cannot_silence_it() -> None:
    found = _judged(severities={"hurts": None, "first-by-name": None, "hurts-less": None, "lesser": None})
    assert [(f.rule, f.weight) for f in found.findings] == [
        ("hurts", Severity.NOTE),
        ("hurts-less", Severity.NOTE),
    ]
    assert "hurts" in found.ran
    assert "first-by-name" not in found.ran


def test_accepted_it_weighs_nothing_at_any_level() -> None:
    quiet: dict[str, Severity | None] = {"first-by-name": None, "lesser": None}
    accepted = 'accept hurts because "ropes hold it"\naccept hurts-less because "known"\n'
    assert _judged(accepted, quiet).worst is None
    assert _judged('accept hurts because "ropes"\n', quiet).worst is Severity.NOTE


@pytest.mark.parametrize("full", [False, True])
def test_terminal(full: bool) -> None:
    text = render_terminal([_report('accept hurts because "ropes hold it"\n')], full=full)
    block, _, others = text.partition("1 error: do not build this\n")
    assert "\n2 notes where someone can be hurt: these come first, however heavy\n" in block
    assert "hurts says so." in block
    assert "accepted “ropes hold it”" in block
    assert "first-by-name says so." in others
    assert "\n1 more note: worth knowing\n" in others
    assert "1 accepted with a reason" in text


@pytest.mark.parametrize("full", [False, True])
def test_headings_in_the_terminal_count_what_stands_below_them(full: bool) -> None:
    lines = render_terminal([_report()], full=full).splitlines()
    headings = [line for line in lines if re.match(r"\d+ (more )?(error|note)", line)]
    assert headings == [
        "1 error and 1 note where someone can be hurt: do not build this",
        "1 more error: do not build this",
        "1 more note: worth knowing",
    ]


#: Findings of every weight of both kinds, so that only the order is left to settle.
MANY = {
    rule.name: rule
    for topic, kind in (("fit", "plain"), (SAFETY, "sharp"))
    for rule in (
        _rule(f"{kind}-error", topic, Severity.ERROR),
        _rule(f"{kind}-warning", topic, Severity.WARNING),
        _rule(f"{kind}-note", topic, Severity.NOTE),
        _rule(f"{kind}-known", topic, Severity.ERROR),
    )
}


def test_all_reports_tell_in_the_same_order() -> None:
    review = review_of(BENCH + 'accept sharp-known because "ropes hold it"\n')
    report = Report(review.source, review=review, judgement=judge(review, MANY))
    wanted = [
        "sharp-error",
        "sharp-warning",
        "sharp-known",  # accepted, so a note; by its name before the other note
        "sharp-note",
        "plain-error",
        "plain-known",
        "plain-warning",
        "plain-note",
    ]
    (plan,) = json.loads(render_json([report]))["plans"]
    assert [found["rule"] for found in plan["findings"]] == wanted
    said = re.compile(r"((?:sharp|plain)-\w+) says so\.")
    assert said.findall(render_terminal([report])) == wanted
    assert said.findall(render_terminal([report], full=True)) == wanted
    page = render_html([report]).partition("<h3>Where someone can be hurt</h3>")[2]
    assert said.findall(page)[: len(wanted)] == wanted


def test_the_first_thing_to_mend_of_a_size_is_what_can_hurt_someone() -> None:
    review = review_of(BENCH + 'accept sharp-error because "ropes hold it"\n')
    shelf = {name: MANY[name] for name in ("plain-error", "sharp-error", "sharp-warning", "sharp-note")}
    report = Report(
        review.source,
        review=review,
        judgement=judge(review, shelf),
        measures=(SetMeasure("long", 48, 48, "in"),),
        varied=("long",),
        level=Severity.NOTE,
    )
    ((row,),) = (table.rows for table in size_tables([report]))
    assert row.first == "sharp-warning on seat"


def test_many_notes_of_safety_are_never_folded() -> None:
    def many(review: Review) -> Iterator[Finding]:
        for number in range(12):
            yield Finding((), review.plan.span, f"Corner {number} is sharp.", "Round it.")

    review = review_of(BENCH)
    shelf = {"sharp": Rule("sharp", SAFETY, Severity.NOTE, (), many)}
    text = render_terminal([Report(review.source, review=review, judgement=judge(review, shelf))])
    assert text.count("is sharp.") == 12
    assert text.count("Round it.") == 12


def test_page() -> None:
    text = render_html([_report('accept hurts because "ropes hold it"\n')])
    block = text.partition("Where someone can be hurt")[2].partition("</section>")[0]
    assert "hurts says so." in block
    assert "because “ropes hold it”" in block
    assert "hurts-less says so." in block
    titles = re.findall(r"<h3>([^<]+)</h3>", text)
    assert titles.index("Where someone can be hurt") < titles.index("To mend before you buy wood")


def test_json() -> None:
    (plan,) = json.loads(render_json([_report('accept hurts because "ropes hold it"\n')]))["plans"]
    kept = [f for f in plan["findings"] if f["rule"] == "hurts"]
    assert [(f["severity"], f["accepted_because"]) for f in kept] == [("note", "ropes hold it")]
    assert plan["accepted"] == []


def dryfit(folder: Path, *words: str) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [sys.executable, "-m", "reviewer", "review", "bench.plan", *words],
        cwd=folder,
        capture_output=True,
        text=True,
        timeout=60,
        check=False,
    )


@pytest.mark.parametrize("level", ["error", "warning", "note"])
def test_no_level_hides_it(tmp_path: Path, level: str) -> None:
    (tmp_path / "bench.plan").write_text(BENCH)
    found = dryfit(tmp_path, "--level", level)
    assert found.returncode == 1
    assert "error: tips" in found.stdout


def test_silent_in_a_folder_it_is_told_as_a_note(tmp_path: Path) -> None:
    (tmp_path / "bench.plan").write_text(BENCH)
    (tmp_path / "dryfit.toml").write_text('[rules]\ntips = "silent"\nsags = "silent"\n')
    assert "note: tips" in dryfit(tmp_path).stdout


def test_accepted_in_a_plan_it_is_told_with_its_reason(tmp_path: Path) -> None:
    (tmp_path / "bench.plan").write_text(ACCEPTED)
    said = dryfit(tmp_path).stdout
    assert "note: tips" in said
    assert f"“{REASON}”" in said
