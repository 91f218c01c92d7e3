"""A piece that tips and lacks a restraint: one fault is told once, two are told twice."""

from __future__ import annotations

from pathlib import Path

import pytest

from reviewer.units import Value
from tests.support import findings_of, judgement_of

NARROW = """\
plan "Narrow case" in inches
stock board: actual 3/4 x %s red oak, 8 ft
outline case: %s across, %s deep, 72 tall, on floor
part side for each of left, right: board, upright, facing side, as tall as case
    on floor, flush with each of case, flush with front of case
part shelf: board, across, flat, between side.left and side.right, flush with front of case
    5 copies spread evenly up from bottom of case to top of case
join shelf.* to side.*: dado 1/4 deep, glue pva
load shelf.*: books
room hall: indoors, wall behind%s, children under 6
"""
CHEST = (Path(__file__).parents[3] / "plans" / "games-chest.plan").read_text(encoding="utf-8")
HEAVY = (
    CHEST.replace(", one at a time", "")
    .replace("indoors, no children", "indoors, wall behind, children under 6")
    .replace("finish clear", "load drawer.*: 300 lb\nfinish clear")
)


def told(text: str) -> dict[str, str]:
    """The next step of each of the two rules that tells the piece."""
    found = judgement_of(text).findings
    return {each.rule: each.do for each in found if each.rule in ("tips", "restraint-missing")}


@pytest.mark.parametrize(("wide", "deep"), [("9", "11 1/4"), ("9", "9 1/4"), ("30", "9 1/4")])
def test_what_falls_forward_or_sideways_is_told_once_with_what_holds_both(wide: str, deep: str) -> None:
    text = NARROW % (deep, wide, deep, "")
    assert findings_of(text, "tips") != ()
    assert list(told(text)) == ["restraint-missing"]
    (found,) = [each for each in judgement_of(text).findings if each.rule == "restraint-missing"]
    assert " As it is, it tips over to {side}" in found.says
    # Written down, nothing of it is left to tell.
    mended = text + str(found.values["words"]) + "\n"
    assert told(mended) == {}


def test_a_tie_that_is_not_enough_is_told_once_and_says_so() -> None:
    assert list(told(HEAVY)) == ["restraint-missing"]
    (found,) = [each for each in judgement_of(HEAVY).findings if each.rule == "restraint-missing"]
    assert " As it is, it tips over to {side}" in found.says
    assert "still too little, so do more besides" in found.do
    # The ratio told is that of the piece once it is tied so.
    (then,) = findings_of(HEAVY + str(found.values["words"]) + "\n", "tips")
    now, promised = then.values["ratio"], found.values["then"]
    assert isinstance(now, Value)
    assert isinstance(promised, Value)
    assert now.amount == pytest.approx(promised.amount, rel=1e-3)


def test_a_fall_towards_the_wall_is_a_fault_of_its_own() -> None:
    # The wall is 6 in away, too far to catch a case so shallow: a strap holds back the fall to the front alone.
    text = NARROW % ("5 1/2", "30", "5 1/2", " 6 away")
    steps = told(text)
    assert list(steps) == ["restraint-missing", "tips"]
    (found,) = [each for each in judgement_of(text).findings if each.rule == "restraint-missing"]
    assert "As it is" not in found.says
    assert "Tie it" not in steps["tips"]
