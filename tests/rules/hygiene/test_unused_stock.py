"""Stock that no part is cut from."""

from __future__ import annotations

import pytest

from tests.rules.mending import with_edit
from tests.support import findings_of, look_at, told

RULE = "unused-stock"

SHELF = """
plan "Shelf" in inches
length = 24
stock board: 1x8 pine
stock cleat: 1x2 pine, 8 ft at 2.10
    grade no.2
part shelf: board, across, flat, length long, left at 0, front at 0, on floor
"""
TAIL = "across, flat, 24 long, left at 0, front at 20, on floor\n"


def test_one_that_no_part_names_is_told_and_taken_out() -> None:
    assert told(SHELF, RULE) == [
        "warning - @ stock cleat: No part is cut from the stock cleat (1x2 pine), and none of it is bought. → "
        "Name it in the part that is meant to be cut from it, or take it out."
    ]
    mended = with_edit(SHELF, findings_of(SHELF, RULE)[0])
    assert "cleat" not in mended
    assert "no.2" not in mended
    assert findings_of(mended, RULE) == ()


@pytest.mark.parametrize(
    "more",
    [
        f"part under: cleat, {TAIL}",
        "buy: 1 board 8 ft, 2 cleat 8 ft\n",
        f"part under: cleat, only when length over 60, {TAIL}",
        f"part under for each of a, b: cleat, only when length over 60, {TAIL}",
        "assembly tray: left at 0, front at 20\n"
        "    outline box: 24 across, 4 deep, 3 tall, on floor\n"
        "    part end: cleat, across, flat, 24 long, left at 0, front at 20, on floor\n",
        "assembly tray: left at 0, front at 20, only when length over 60\n"
        "    part end: cleat, across, flat, 24 long, left at 0, front at 20, on floor\n",
    ],
    ids=["a part", "bought", "left out", "copies left out", "in an assembly", "in one left out"],
)
def test_one_that_something_names_is_not(more: str) -> None:
    found = look_at(SHELF + more, only=RULE)
    assert found.problems == ()
    assert found.judgement is not None
    assert found.judgement.findings == ()


def test_one_that_a_part_is_like_another_with_is_not() -> None:
    more = f"part one: cleat, {TAIL}part two: like one, front at 40\n"
    assert told(SHELF + more, RULE) == []


def test_stock_of_a_used_file_is_not_but_the_plans_own_is() -> None:
    shared = "stock cleat: 1x2 pine\nstock post: 4x4 pine\n"
    plan = SHELF.replace("length = 24", 'use "yard.plan"\nlength = 24')
    own = look_at(plan, only=RULE, files={"yard.plan": shared})
    assert own.judgement is not None
    assert [finding.values["name"] for finding in own.judgement.findings] == ["cleat"]
    borrowed = plan.replace("stock cleat: 1x2 pine, 8 ft at 2.10\n    grade no.2\n", "")
    none = look_at(borrowed, only=RULE, files={"yard.plan": shared})
    assert none.judgement is not None
    assert none.judgement.findings == ()


def test_one_that_a_misspelt_name_means_is_left_to_unknown_name() -> None:
    plan = f"{SHELF}part under: cleet, {TAIL}"
    assert told(plan, RULE) == []
    assert len(told(plan, "unknown-name")) == 1


def test_where_a_part_names_a_stock_that_nobody_knows_that_part_is_told() -> None:
    plan = f"{SHELF}part under: furring, {TAIL}"
    assert told(plan, RULE) == [
        "warning - @ stock cleat: No part is cut from the stock cleat (1x2 pine), and none of it is bought. → "
        "If “furring” is meant to be this one, write cleat there. If not, take it out."
    ]
    (finding,) = findings_of(plan, RULE)
    assert finding.edit is None
    assert [plan[span.start : span.end] for span in finding.also_at] == ["furring"]


def test_two_strange_names_are_no_sign() -> None:
    plan = f"{SHELF}part under: furring, {TAIL}part over: strapping, {TAIL}"
    assert [line.partition("→ ")[2] for line in told(plan, RULE)] == [
        "Name it in the part that is meant to be cut from it, or take it out."
    ]


def test_a_stock_with_a_slip_in_it_is_told_as_that_alone() -> None:
    found = look_at(SHELF.replace("1x2 pine, 8", "1x2 pin, 8"))
    assert len(found.problems) == 1
    assert found.judgement is None
