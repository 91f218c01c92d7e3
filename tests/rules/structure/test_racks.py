"""Pieces that sway, fold, and stand still: the whole message, and the limits from both sides."""

from __future__ import annotations

import re

import pytest

from reviewer.findings import Severity
from reviewer.units import Value
from tests.rules.everyday_pieces import EVERYDAY
from tests.rules.sound_pieces import SOUND_PIECES
from tests.support import findings_of, told
from tests.workshop.test_swaying import OPEN_SHELF, SCREWS, STAND

RULE = "racks"


def test_open_shelf_is_told_with_what_helps_most() -> None:
    assert told(OPEN_SHELF % (4, SCREWS), RULE) == [
        "warning side.left, side.right @ side: Open shelf sways 0.867 in side to side when pushed with 22.5 lb "
        "at 59 5/8 in up, and that is with every joint as stiff as its kind can be. The limit is 0.596 in (the "
        "height divided by 100; own choice: more than that the eye sees and the hand feels), so that is 0.271 in "
        "too much. → Of what was tried by estimate this helps most: screw a back panel over its whole back; it "
        "then sways 0.028 in side to side."
    ]


def test_every_change_stands_in_the_working() -> None:
    (found,) = findings_of(OPEN_SHELF % (4, SCREWS), RULE)
    assert found.working is not None
    figures = {figure.name: figure.value for figure in found.working.figures}
    tried = {name: value for name, value in figures.items() if name.startswith("sway if you ")}
    assert next(iter(tried)) == "sway if you screw a back panel over its whole back"
    assert "sway if you screw a diagonal brace over its back" in tried
    assert "sway if you glue its joints as well" in tried
    amounts = [value.amount for value in tried.values() if isinstance(value, Value)]
    assert amounts == sorted(amounts)


def test_one_bolt_a_joint_is_an_error_without_a_number() -> None:
    (message,) = told(STAND % 1, RULE)
    says, _ = message.split(" → ")
    assert says == (
        "error leg.front-left, leg.front-right, leg.back-left, leg.back-right @ leg: Nothing but pins holds "
        "Bolted stand when it is pushed side to side: the joints that could hold it square turn about the one "
        "fastener of each, so it folds over."
    )
    assert not re.search(r"\d mm", says)
    assert told(STAND % 2, RULE) == []


@pytest.mark.parametrize(
    ("joint", "count"),
    [
        (SCREWS, 1),
        ("nails 2, 3 per joint, from outside", 1),
        (f"{SCREWS}, glue pva", 0),
        ("dado 1/4 deep, glue pva", 0),
        ("brackets, 2 per joint", 0),
    ],
)
def test_it_is_the_joints_that_hold_an_open_shelf(joint: str, count: int) -> None:
    housed = "between side.left and side.right, housed 1/4 each end"
    text = OPEN_SHELF % (4, joint)
    if "dado" in joint:
        text = text.replace("between side.left and side.right", housed)
    assert len(findings_of(text, RULE)) == count


def test_the_limits_are_the_plans_to_set() -> None:
    shelf = OPEN_SHELF % (4, SCREWS)
    (found,) = findings_of(shelf, RULE)
    moved, limit = found.values["moved"], found.values["limit"]
    assert isinstance(moved, Value)
    assert isinstance(limit, Value)
    ratio = 100 * limit.amount / moved.amount  # height over sway
    assert findings_of(f"{shelf}limit sway-ratio: {ratio * 0.999:.3f}\n", RULE) == ()
    assert len(findings_of(f"{shelf}limit sway-ratio: {ratio * 1.001:.3f}\n", RULE)) == 1
    assert findings_of(f"{shelf}limit sway-force: 10\n", RULE) == ()


@pytest.mark.parametrize("piece", [*SOUND_PIECES.values(), *EVERYDAY.values()])
def test_what_good_makers_build_is_left_alone(piece: str) -> None:
    assert findings_of(piece, RULE) == ()


def test_a_back_stills_it() -> None:
    back = """
stock thin: birch plywood 1/4, sheet 48 x 96
part back: thin, facing front, from left of case to right of case
    from bottom of case to top of case, against back of case
join back to side.*: nails 1 1/4, every 6, from outside
"""
    assert told(OPEN_SHELF % (4, SCREWS) + back, RULE) == []


def test_very_many_parts_are_named_in_a_note(monkeypatch: pytest.MonkeyPatch) -> None:
    from reviewer.workshop import swaying

    monkeypatch.setattr(swaying, "MOST_PARTS", 5)
    (found,) = findings_of(OPEN_SHELF % (4, SCREWS), RULE)
    assert found.weight is Severity.NOTE
    assert told(OPEN_SHELF % (4, SCREWS), RULE)[0].endswith(
        "Push it sideways by hand once it stands, and brace it if it gives."
    )
