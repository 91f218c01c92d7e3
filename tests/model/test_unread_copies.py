"""One slip is one message: what is unknown only because a clause of copies could not be read is not told."""

from __future__ import annotations

import pytest

from tests.support import look_at

CASE = """\
plan "Case" in inches
stock board: 1x10 pine, 8 ft
outline case: 30 across, 9 1/4 deep, 60 tall, on floor
part side for each of left, right: board, upright, facing side, as tall as case, on floor
    flush with each of case, flush with front of case
part shelf: board, across, flat, between side.left and side.right, flush with front of case
    %s
part rung: like shelf
join shelf.* to side.*: screws #8 x 2, 2 per end
join rung.2 to side.*: screws #8 x 2, 2 per end
finish clear: on shelf.*, side.*
    1 coat of shellac dewaxed
load shelf.2: books
fit shelf.3 to side.*: 4 shelf pins
step "Glue up": join shelf.*
accept sags on shelf.* because "a curve is wanted"
"""
DRAWERS = """\
plan "Case" in inches
stock board: 1x10 pine, 8 ft
outline case: 30 across, 9 1/4 deep, 60 tall, on floor
part side for each of left, right: board, upright, facing side, as tall as case, on floor
    flush with each of case, flush with front of case
assembly drawer: between side.left and side.right across with 1/2 each end, front 0 behind front of case
    8 deep, 6 tall, 4 %s spread evenly up from bottom of case to top of case, slides out 14
    part slat: board, across, flat, from left of drawer to right of drawer, flush with front of drawer
        2 %s every 3 up
    load slat.*: 4 kg
fit drawer.* to side.*: slides 14, one at a time
load drawer.2.slat.1: 4 kg
load drawer.*.slat: 4 kg
load drawer.*.slat.2: 4 kg
"""
BROKEN = (
    "4 copys every 6 up",
    "4 copies sprad evenly up from bottom of case to top of case",
    "in eech corner of case",
)


def told(text: str) -> list[str]:
    return [problem.says for problem in look_at(text).problems]


@pytest.mark.parametrize("clause", BROKEN)
def test_a_copies_clause_that_does_not_read_is_told_alone(clause: str) -> None:
    assert len(told(CASE % clause)) == 1


def test_the_copies_of_assemblies_and_of_their_parts() -> None:
    assert told(DRAWERS % ("copies", "copies")) == []
    for words in (("copis", "copies"), ("copies", "copis")):
        (says,) = told(DRAWERS % words)
        assert "copis" in says
    assert len(told(DRAWERS % ("copis", "copis"))) == 2


def test_what_no_copies_would_make_is_still_told() -> None:
    text = CASE % BROKEN[0] + "load shelv.*: books\nload side.2: books\nload shelf.upper: books\n"
    assert told(text)[1:] == [
        "No part is called “shelv.*”.",
        "No part is called “side.2”.",
        "No part is called “shelf.upper”.",
    ]


def test_copies_that_read_leave_a_number_too_many_to_be_told() -> None:
    text = CASE % "4 copies every 6 up, flsh with back of case" + "load shelf.9: books\n"
    assert told(text)[1:] == ["No part is called “shelf.9”."]


def test_hostile_patterns_are_bounded() -> None:
    head = 'plan "Many" in inches\nstock b: 1x10 pine\n'
    many = "".join(f"part p{n}: b, across, 4 copys every 6 up\n" for n in range(900))
    found = told(head + many + "".join(f"load *.q{n}.2: books\n" for n in range(900)))
    assert found
