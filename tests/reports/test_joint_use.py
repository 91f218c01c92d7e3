"""How far joints are used: what is past its limit, and what an estimate lets go, are told as the rules do."""

from __future__ import annotations

import pytest

from reviewer.findings import Severity
from reviewer.reports.joint_use import JointUseRow, joint_use_lines, joint_use_rows, joint_use_text
from reviewer.units import UnitSystem, force
from tests.support import look_at

#: A shelf that hangs on its screws alone.
LEDGE = """
plan "Ledge" in inches
stock board: actual 3/4 x 7 1/4 poplar
outline case: 31 1/2 across, 7 1/4 deep, 40 tall, on floor
part side for each of left, right: board, upright, facing side, as tall as case, on floor
    flush with each of case, flush with front of case
part shelf: board, across, flat, between side.left and side.right, bottom at 30, flush with front of case
join shelf to side.*: {joint}, 2 per end, from outside
load shelf: {kg} kg
"""


def row(ratio: float | None, told_from: float = 1.0, heavy_from: float = 1.0, open_: str = "") -> JointUseRow:
    return JointUseRow(
        ("shelf",),
        ("side",),
        "along the face",
        force(100.0),
        force(80.0),
        ratio,
        "2 screws",
        "the screw bends",
        "by the NDS",
        "the source",
        "",
        open_,
        told_from,
        heavy_from,
    )


@pytest.mark.parametrize(
    ("ratio", "told_from", "heavy_from", "weight", "let_go"),
    [
        (0.9, 1.0, 1.0, "", False),
        (1.0, 1.0, 1.0, "", False),
        (1.01, 1.0, 1.0, "error", False),
        (1.01, 1.5, 3.0, "", True),
        (1.49, 1.5, 3.0, "", True),
        (1.51, 1.5, 3.0, "warning", False),
        (3.01, 1.5, 3.0, "error", False),
        (None, 1.0, 1.0, "", False),
    ],
)
def test_a_row_weighs_what_its_finding_weighs(
    ratio: float | None, told_from: float, heavy_from: float, weight: str, let_go: bool
) -> None:
    one = row(ratio, told_from, heavy_from)
    assert one.weight == weight
    (line,), _, _ = joint_use_lines((one,), UnitSystem.INCH, 5)
    assert line.weight == weight
    said = "An estimate is a fault from 150 % on."
    assert (said in line.says) is let_go
    assert (said in joint_use_text(one, UnitSystem.INCH)) is let_go


def test_what_holds_besides_lets_go_without_a_word() -> None:
    one = row(2.0, open_="the glue")
    assert (one.weight, one.let_go) == ("", "")


@pytest.mark.parametrize(
    ("kg", "joint", "weight"),
    [
        (5, "screws #8 x 1 1/4", ""),
        (60, "screws #8 x 1 1/4", ""),  # an estimate at 106 %
        (120, "screws #8 x 1 1/4", "warning"),
        (400, "screws #8 x 1 1/4", "error"),
        (60, "screws #8 x 2 1/2", ""),
        (120, "screws #8 x 2 1/2", "error"),  # long enough for the NDS
    ],
)
def test_the_table_says_what_the_rule_says(kg: int, joint: str, weight: str) -> None:
    """Along a scale of loads, a row has a sign exactly where joint-overloaded has a finding of that weight."""
    found = look_at(LEDGE.format(kg=kg, joint=joint))
    assert found.review is not None
    assert found.judgement is not None
    told = [
        {Severity.ERROR: "error", Severity.WARNING: "warning"}[each.weight]
        for each in found.judgement.findings
        if each.rule == "joint-overloaded"
    ]
    assert "".join(told) == weight
    assert [each.weight for each in joint_use_rows(found.review)] == [weight]
