"""pocket-in-thin-stock: the thinnest stock that a pocket is bored in."""

from __future__ import annotations

import pytest
from pocket_plans import pockets

from tests.support import findings_of, judgement_of, told

RULE = "pocket-in-thin-stock"


def test_thin_stock_is_an_error() -> None:
    assert told(pockets("3/8 x 5 1/2 pine", "1"), RULE) == [
        "error rail @ pocket screws 1: rail is 3/8 in thick, too thin for a pocket: 1/2 in is the least (common "
        "practice, no source), so 1/8 in is missing and the head would not sit inside the wood. → Screw through the "
        "other part into the edge of rail, use a cleat or dowels, or take stock 1/2 in thick."
    ]


@pytest.mark.parametrize(("thick", "flagged"), [("1/2", False), ("0.47", False), ("0.45", True)])
def test_a_sheet_sold_as_half_an_inch_is_thick_enough(thick: str, flagged: bool) -> None:
    assert bool(findings_of(pockets(f"{thick} x 5 1/2 pine", "1"), RULE)) is flagged


def test_a_workshop_with_a_small_bit_sets_its_own_least() -> None:
    text = pockets("3/8 x 5 1/2 pine", "1", tail="limit pocket-stock-least: 3/8")
    assert findings_of(text, RULE) == ()


def test_a_waiver() -> None:
    text = pockets("3/8 x 5 1/2 pine", "1", tail='accept pocket-in-thin-stock on rail because "a small bit"')
    judged = judgement_of(text, only=RULE)
    assert (judged.findings, len(judged.waived)) == ((), 1)
