"""Waivers that accept nothing."""

from __future__ import annotations

from textwrap import dedent

import pytest

from reviewer.findings import Finding
from reviewer.reference.limits import default_limits
from reviewer.reviewing import reviewed
from reviewer.rulebook import all_rules
from reviewer.settings import Settings
from reviewer.wording import next_step, sentence
from tests.rules.mending import with_edit
from tests.support import judgement_of, look_at

RULE = "waiver-unused"

FLOATING = """
plan "Shelf" in inches
stock board: actual 3/4 x 7 1/4 red oak
part shelf: board, across, flat, 24 long, left at 0, front at 0, bottom 40 above floor
part other: board, across, flat, 24 long, left at 40, front at 0, on floor
"""


def of_rule(text: str) -> list[Finding]:
    return [finding for finding in judgement_of(text).findings if finding.rule == RULE]


def said(text: str) -> list[str]:
    """What the rule says after all others have judged."""
    looked = look_at(text)
    assert looked.judgement is not None, [problem.says for problem in looked.problems]
    assert looked.review is not None
    units = looked.review.units
    return [
        f"{finding.weight.word} {', '.join(finding.parts) or '-'} @ {looked.source.words(finding.at)}: "
        f"{sentence(finding, units)} → {next_step(finding, units)}"
        for finding in looked.judgement.findings
        if finding.rule == RULE
    ]


def test_one_that_accepts_something_is_quiet() -> None:
    assert said(FLOATING + 'accept part-floats on shelf because "cords"\n') == []
    assert said(FLOATING + 'accept part-floats because "cords"\n') == []


def test_one_on_another_part_is_told() -> None:
    text = FLOATING + 'accept part-floats on other because "cords"\n'
    assert said(text) == [
        "warning other @ part-floats: Nothing of part-floats is found on other, so this accepts nothing. → "
        "Take this waiver out."
    ]
    assert of_rule(with_edit(text, of_rule(text)[0])) == []


def test_one_for_the_whole_piece_is_told() -> None:
    assert said(FLOATING + 'accept parts-overlap because "they give"\n') == [
        "warning - @ parts-overlap: Nothing of parts-overlap is found, so this accepts nothing. → "
        "Take this waiver out."
    ]


def test_a_misspelt_rule_is_told_with_the_nearest_and_mended() -> None:
    text = FLOATING + 'accept part-flaots on shelf because "cords"\n'
    found = of_rule(text)
    assert said(text)[0].startswith(
        "warning shelf @ part-flaots: No rule is called “part-flaots”, so this accepts nothing. → "
        "Did you mean part-floats"
    )
    changed = with_edit(text, found[0])
    assert 'accept part-floats on shelf because "cords"' in changed
    assert of_rule(changed) == []


def test_a_name_near_to_no_rule() -> None:
    assert said(FLOATING + 'accept zzzzzzzz because "why not"\n') == [
        "warning - @ zzzzzzzz: No rule is called “zzzzzzzz”, so this accepts nothing. → "
        "See dryfit rules for all of them."
    ]


def test_the_second_of_two_alike_is_told() -> None:
    text = (
        FLOATING
        + 'accept part-floats on shelf because "cords"\naccept part-floats on shelf because "ropes"\n'
    )
    assert said(text) == [
        "warning shelf @ part-floats: What part-floats finds on shelf is accepted further up already. → "
        "Take this waiver out."
    ]
    changed = with_edit(text, of_rule(text)[0])
    assert "cords" in changed
    assert "ropes" not in changed
    assert of_rule(changed) == []


def test_a_rule_that_settings_keep_silent_is_told() -> None:
    text = dedent(FLOATING) + 'accept part-floats on shelf because "cords"\n'
    silent = Settings(default_limits(), {"part-floats": None})
    judged = reviewed("test.plan", text, silent, all_rules()).judgement
    assert judged is not None
    found = [finding for finding in judged.findings if finding.rule == RULE]
    assert [finding.says for finding in found] == [
        "{rule} is kept silent here, so there is nothing of it to accept."
    ]


def test_rules_that_still_wait_are_not_asked() -> None:
    unplaced = FLOATING + "part loose: board, across, flat\n"
    assert said(unplaced + 'accept part-floats on shelf because "cords"\n') == []
    # place-missing judges in any state, so its waivers can be told.
    assert len(said(unplaced + 'accept place-missing on other because "later"\n')) == 1
    assert said(unplaced + 'accept place-missing on loose because "later"\n') == []


def test_its_own_waiver_is_not_asked() -> None:
    text = (
        FLOATING
        + 'accept part-floats on other because "cords"\naccept waiver-unused because "kept for later"\n'
    )
    judged = judgement_of(text)
    assert [finding.rule for finding in judged.waived] == [RULE]
    assert of_rule(text) == []


@pytest.mark.parametrize("rule", ["assumed", "part-floats"])
def test_every_kind_of_rule_can_be_waived(rule: str) -> None:
    assert said(FLOATING + f'accept {rule} because "known"\n') == []


@pytest.mark.parametrize(
    ("first", "second", "on"),
    [
        (" on shelf", " on shelf, other", " on shelf, other"),
        (" on shelf", "", ""),
        ("", " on shelf", " on shelf"),
    ],
)
def test_one_that_shares_its_parts_with_another_is_told_so(first: str, second: str, on: str) -> None:
    text = (
        FLOATING + f'accept part-floats{first} because "cords"\naccept part-floats{second} because "ropes"\n'
    )
    assert [line.partition("part-floats: ")[2] for line in said(text)] == [
        f"What part-floats finds{on} is accepted further up already. → Take this waiver out."
    ]


def test_another_that_accepts_nothing_either_is_no_reason() -> None:
    text = FLOATING + 'accept part-floats on other because "a"\naccept part-floats on other because "b"\n'
    assert [line.partition("part-floats: ")[2].partition(" →")[0] for line in said(text)] == [
        "Nothing of part-floats is found on other, so this accepts nothing."
    ] * 2
