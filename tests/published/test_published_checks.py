"""Answers printed by others, or worked by hand from a named formula, against the project's mechanics.

Each row of ``data/checks_*.csv`` names its formula, its inputs with their units, the expected answer, how
far off it may be and why the row is to be believed: ``published`` (the answer is printed in the source),
``derived`` (worked out by hand from the named formula), ``from memory`` or ``common practice``.
"""

from __future__ import annotations

import csv
from collections import Counter
from pathlib import Path
from typing import NamedTuple

import published_finish_amounts  # noqa: F401 - its formulas join the others
import published_finishes  # noqa: F401
import published_members  # noqa: F401
import published_people  # noqa: F401
import published_restraints  # noqa: F401
import published_room  # noqa: F401
import published_standing  # noqa: F401
import pytest
from published_formulas import FORMULAS
from published_measures import INSIDE, Inputs

DATA = Path(__file__).parent / "data"
KINDS = {"published", "derived", "from memory", "common practice"}
#: How many rows each file holds, so that a lost row is missed.
ROWS = {
    "moisture": 158,
    "beams": 189,
    "fasteners": 204,
    "stability": 59,
    "members": 87,
    "finishes": 70,
    "people": 52,
    "finish_amounts": 34,
    "room": 76,
    "restraint": 48,
}


class Check(NamedTuple):
    """One row, and where it stands."""

    place: str
    formula: str
    inputs: str
    expected: str
    tolerance: str
    unit: str
    source: str
    kind: str


def rows(topic: str) -> list[Check]:
    with (DATA / f"checks_{topic}.csv").open(encoding="utf-8", newline="") as file:
        return [Check(f"{topic}-{number}", **row) for number, row in enumerate(csv.DictReader(file), 2)]


CHECKS = [check for topic in ROWS for check in rows(topic)]


@pytest.mark.parametrize("check", CHECKS, ids=[f"{c.place}-{c.formula.replace(' ', '-')}" for c in CHECKS])
def test_answer(check: Check) -> None:
    inputs = Inputs(check.inputs)
    answer = FORMULAS[check.formula](inputs)
    assert inputs.used >= set(inputs), f"inputs nobody read: {set(inputs) - inputs.used}"
    if isinstance(answer, str):
        assert answer == check.expected, check.source
        return
    unit = INSIDE[check.unit]
    # The last term is for the rounding of binary numbers, where a row asks for the very answer.
    allowed = float(check.tolerance) + 1e-9 * abs(float(check.expected))
    assert abs(answer / unit - float(check.expected)) <= allowed, (
        f"{check.formula}({check.inputs}) = {answer / unit:.6g} {check.unit}, not {check.expected}; "
        f"{check.source}"
    )


@pytest.mark.parametrize("topic", ROWS)
def test_no_row_is_lost(topic: str) -> None:
    found = rows(topic)
    assert len(found) == ROWS[topic]
    assert len({(check.formula, check.inputs, check.expected) for check in found}) == len(found)


def test_every_row_says_why_it_is_believed() -> None:
    assert {check.kind for check in CHECKS} == KINDS
    assert all(check.source for check in CHECKS)
    assert Counter(check.kind for check in CHECKS)["published"] >= 300


def test_every_formula_is_checked() -> None:
    assert {check.formula for check in CHECKS} == set(FORMULAS)
