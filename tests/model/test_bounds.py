"""What a short plan could make dryfit work out without end is bounded, and the bound is told where it is met."""

from __future__ import annotations

import pytest

from reviewer.language.reading import read
from reviewer.limits import Limit
from reviewer.model.builder import understand
from reviewer.reference.limits import default_limits
from tests.benchmark import shelving
from tests.language import reading_texts

HEAD = """plan "Planters by the door" in inches
stock stud: 2x4 pine, 8 ft at 4
part sole: stud, across, flat, 12 long, left at 0, front at 0, on floor
"""
CLAUSES = {
    "copies by name": "part rail for each of a, b, c, d: stud, across, flat, 12 long, on floor, front at 9",
    "copies in a row": "part rail: stud, across, flat, 12 long, on floor, left at 0, 9 copies every 9 deep",
    "likeness": "part rail: like sole\npart post: like sole\npart top: like rail",
}
LISTS = {
    "join": "join rail to sole, rail.*: glue pva\njoin rail to rail: glue pva",
    "load": "load rail: books\nload rail.*: books",
    "restraint": "outline all: 9 tall\nrestrain all to wall: strap\nrestrain all to wall: strap",
}
ROW = "part rail: stud, across, flat, 12 long, on floor, left at 0, 5 copies every 9 deep\n"


@pytest.fixture(scope="module")
def limits() -> dict[str, Limit]:
    return default_limits()


def told(text: str, limits: dict[str, Limit]) -> list[tuple[str, str]]:
    """The head of what is told, and the words of the plan that it is told at."""
    return [
        (problem.says.partition(",")[0], text[problem.span.start : problem.span.end].partition(":")[0])
        for problem in understand(read(text), limits).problems
    ]


@pytest.mark.parametrize("statements", CLAUSES.values(), ids=CLAUSES)
def test_clauses_of_all_parts_together(
    statements: str, limits: dict[str, Limit], monkeypatch: pytest.MonkeyPatch
) -> None:
    text = HEAD + statements + "\n"
    assert told(text, limits) == []
    monkeypatch.setattr("reviewer.model.desk.MAX_CLAUSES", 18)
    assert [says for says, _ in told(text, limits)] == [
        "With this the parts come to more than 18 clauses in all"
    ]


@pytest.mark.parametrize("statements", LISTS.values(), ids=LISTS)
def test_names_of_all_lists_together(
    statements: str, limits: dict[str, Limit], monkeypatch: pytest.MonkeyPatch
) -> None:
    text = HEAD + ROW + statements + "\n"
    assert told(text, limits) == []
    monkeypatch.setattr("reviewer.model.desk.MAX_LISTED", 11)
    assert [says for says, _ in told(text, limits)] == [
        "With this the lists of the plan name parts more than 11 times in all"
    ]


def test_a_bound_that_is_met_is_told_once(limits: dict[str, Limit], monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("reviewer.model.desk.MAX_CLAUSES", 2)
    assert len(told(HEAD + ROW, limits)) == 1


def test_shelving_comes_to_a_fraction_of_the_bounds(
    limits: dict[str, Limit], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("reviewer.model.desk.MAX_CLAUSES", 25_000)
    monkeypatch.setattr("reviewer.model.desk.MAX_LISTED", 25_000)
    assert told(shelving(1_000), limits) == []


def test_cuts_in_one_part_are_bounded_and_told_once() -> None:
    hole = ", hole 3 through front, 9 from left, 9 from top"
    text = (
        'plan "Pegboard" in millimetres\nstock ply: birch plywood 12\n'
        "part board: ply, facing front, 900 across, 600 tall, left at 0, front at 0, on floor"
    )
    assert reading_texts.told(text + hole * 300) == []
    (one,) = reading_texts.told(text + hole * 400)
    assert one == (
        "hole 3 through front: “board” has more than 300 cuts from here on, far beyond any part. → "
        "Take out cuts that say a thing again, or make it of several parts."
    )
