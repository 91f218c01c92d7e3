"""Slips in shaping and slanting clauses: each told once, in words for a maker."""

from __future__ import annotations

import pytest

from tests.language.reading_texts import told, understood
from tests.model.shaped import HEAD, LYING
from tests.model.shaping_slips import SHAPING, SLANTING


@pytest.mark.parametrize(("part", "clauses", "sentence"), SHAPING + SLANTING)
def test_what_makes_no_sense_is_told_once(part: str, clauses: str, sentence: str) -> None:
    assert told(f"{HEAD}part a: {part}, {clauses}\n") == [sentence]


def test_unknown_part_of_a_notch_is_an_unknown_name() -> None:
    text = f"{HEAD}part a: {LYING}, notch for othr\n"
    found = understood(text).plan
    assert found is not None
    assert [(unknown.name, unknown.near) for unknown in found.unknown] == [("othr", ("other",))]


def test_each_copy_tells_a_slip_only_once() -> None:
    text = f"{HEAD}part a for each of left, right: {LYING}, mitre 45 at left end\n"
    assert len(told(text)) == 1


def test_nothing_is_said_of_a_cut_beside_a_clause_that_could_not_be_read() -> None:
    """The mitre could not be read; that nothing stands before its long point is not told as well."""
    sentences = told(f"{HEAD}part a: {LYING}, mitre 45 at lft end, long at front\n")
    assert len(sentences) == 1
    assert "lft" in sentences[0]


def test_outline_takes_no_cuts() -> None:
    (sentence,) = told(f"{HEAD}outline b: 30 across, 30 deep, 30 tall, on floor, hole 8 through top\n")
    assert sentence.startswith("hole")
