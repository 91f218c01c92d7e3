"""Boards with a finish on one broad face: how firm it is told, and who is left out."""

from __future__ import annotations

import pytest

from reviewer.findings import Severity
from tests.support import findings_of, told

RULE = "one-face-finished"


def plan(on: str, coats: str = "2 coats of epoxy", stock: str = "actual 1 x 12 red oak") -> str:
    return f"""
plan "Top" in inches
stock board: {stock}
part top: board, across, flat, 30 long, bottom at 0, left at 0, front at 0
finish clear: on {on}
    {coats}
"""


def test_it_says_both_faces_and_the_width() -> None:
    assert told(plan("top and edges of top"), RULE) == [
        "warning top @ 2 coats of epoxy: top has epoxy on the top and bare wood on the bottom, and is 12 in wide (told from 5 29/32 in on): epoxy "
        "keeps damp out for weeks, so the bare face swells and shrinks alone and the board cups. → Put the same "
        "coats on the bottom of top as well.",
    ]


@pytest.mark.parametrize(
    ("coats", "severity"),
    [
        # Wood Handbook table 16-3 and its parent: epoxy still holds back most after 14 days, oil nothing.
        ("2 coats of epoxy", Severity.WARNING),
        ("3 coats of polyurethane oil", Severity.NOTE),
        ("2 coats of oil danish", Severity.NOTE),
    ],
)
def test_only_what_keeps_damp_out_is_a_warning(coats: str, severity: Severity) -> None:
    (one,) = findings_of(plan("all but bottom of top", coats), RULE)
    assert one.severity is severity


@pytest.mark.parametrize(
    ("on", "stock"),
    [
        ("top", "actual 1 x 12 red oak"),
        ("top and bottom of top", "actual 1 x 12 red oak"),
        ("edges of top", "actual 1 x 12 red oak"),
        ("top of top", "actual 1 x 5 red oak"),
    ],
)
def test_quiet(on: str, stock: str) -> None:
    assert told(plan(on, stock=stock), RULE) == []


def test_two_finishes_on_the_two_faces_are_no_bare_face() -> None:
    text = plan("top of top") + "finish below: on bottom of top\n    2 coats of epoxy\n"
    assert told(text, RULE) == []
