"""Shapes that can't be cut: every fault told with its figures, and the limit just met is quiet."""

from __future__ import annotations

import pytest

from reviewer.setting_out.result import Fault
from rules.fit.cannot_be_cut import _TOLD
from tests.support import judgement_of, told

RULE = "cannot-be-cut"

HEAD = """
plan "Shapes" in millimetres
stock board: actual 20 x 100 red oak
stock post: actual 60 x 60 red oak
part base: board, across, flat, 400 long, left at 0, front at 0, on floor
"""
RAIL = "part rail: board, across, flat, 500 long, left at 0, front at 300, on floor"

CASES = {
    "taper to 120 at left end": (
        "error rail @ taper to 120 at left end: rail is to taper to 120 mm, but is only 100 mm wide to begin "
        "with. → Taper it to less than 100 mm."
    ),
    "taper to 60 at left end over 700": (
        "error rail @ taper to 60 at left end over 700: The taper of rail is to run over 700 mm, but the wood is "
        "only 500 mm long. → Let the taper run over 500 mm or less."
    ),
    "mitre 80 at left end, long at front": (
        "error rail @ mitre 80 at left end: The mitre takes 567.13 mm off one side of rail, where there is only "
        "500 mm. → Use a smaller angle, or make rail longer."
    ),
    "notch 500 across by 100 deep at left front": (
        "error rail @ notch 500 across by 100 deep at left front: The notch takes away all of rail. → "
        "Make the notch smaller, or leave rail out."
    ),
    "hole 30 through top, 600 from left, 50 from front": (
        "error rail @ hole 30 through top: A hole in rail has its middle outside of the wood. → "
        "Look at where the hole is: its place counts from the faces of the part."
    ),
    "hole 30 through top, 100 from left, 10 from front": (
        "error rail @ hole 30 through top: A hole of 30 mm breaks out at the side of rail. → "
        "Move its middle further in, or make it smaller: it needs half of 30 mm of wood all round its middle."
    ),
    "hole 10 by 25 into top, 100 from left, 50 from front": (
        "error rail @ hole 10 by 25 into top: A hole in rail is to be 25 mm deep, but there the wood is only "
        "20 mm thick. → Make it less than 20 mm deep, or let it go right through."
    ),
    "corners rounded 60": (
        "error rail @ corners rounded 60: Corners rounded by 60 mm do not fit on rail: there is room for 50 mm "
        "at each. → Make them 50 mm or less."
    ),
    "edges chamfered 15": (
        "error rail @ edges chamfered 15: Edges chamfered by 15 mm do not fit on rail: half of the wood is "
        "10 mm. → Make them 10 mm or less."
    ),
    "notch for base": (
        "error rail @ notch for base: rail has a notch for base, but base does not go through the wood there. → "
        "Move rail or base until they share space, or leave the notch out."
    ),
}


@pytest.mark.parametrize("clause", CASES)
def test_what_cannot_be_cut(clause: str) -> None:
    assert told(f"{HEAD}{RAIL}, {clause}\n", RULE) == [CASES[clause]]


@pytest.mark.parametrize(
    "clause",
    [
        "taper to 99 at left end",
        "taper to 60 at left end over 500",
        "mitre 78 at left end, long at front",
        "notch 499 across by 100 deep at left front",
        "hole 30 through top, 100 from left, 15 from front",
        "hole 10 by 20 into top, 100 from left, 50 from front",
        "corners rounded 50",
        "edges chamfered 10",
        "round 20",
    ],
)
def test_what_just_can_be_cut_is_quiet(clause: str) -> None:
    assert told(f"{HEAD}{RAIL}, {clause}\n", RULE) == []


def test_a_dado_through_the_board_cuts_it_in_two() -> None:
    assert told(f"{HEAD}{RAIL}, dado 40 by 20 into top, 200 from left\n", RULE) == [
        "error rail @ dado 40 by 20 into top: The dado cuts rail in two. → Make the dado smaller, or write two parts."
    ]


def test_a_brace_that_does_not_fit_keeps_the_rest_waiting() -> None:
    text = HEAD + (
        "part brace: board, facing front, rising towards right, 80 across, 80 tall, left at 0, front at 50\n"
        "    bottom at 20\n"
    )
    assert told(text, RULE) == [
        "error brace @ rising towards right: brace is 100 mm wide, and can't rise in a room of 80 mm by 80 mm with "
        "its ends cut so. → Give brace more room, use a narrower board, or have the ends cut another way."
    ]
    assert "tips" in judgement_of(text).waiting


def test_copies_with_the_same_fault_are_told_once() -> None:
    text = HEAD + (
        "part leg: post, upright, facing front, 400 tall, on floor, front at 500, left at 0, taper to 70 at bottom end\n"
        "    2 copies every 100 across\n"
    )
    assert told(text, RULE) == [
        "error leg.1, leg.2 @ taper to 70 at bottom end: leg.1 and leg.2 are to taper to 70 mm, but are only 60 mm wide to "
        "begin with. → Taper them to less than 60 mm."
    ]


def test_every_fault_has_its_words() -> None:
    assert set(_TOLD) == set(Fault.__args__)  # type: ignore[attr-defined]
