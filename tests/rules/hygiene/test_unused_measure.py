"""Measures that nothing uses."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from reviewer.language.reading import read
from reviewer.language.sharing import nothing_in_files
from reviewer.model.builder import understand
from reviewer.model.outside import asked_measures
from reviewer.reference.limits import default_limits
from reviewer.reviewing import opened
from reviewer.rulebook import all_rules
from reviewer.sizing import sizes_reviewed
from tests.rules.mending import with_edit
from tests.support import findings_of, look_at, plans_shared, settings, told

RULE = "unused-measure"

SHELF = """
plan "Shelf" in inches
length = 24
depth = 9 + 1/8
stock board: 1x8 pine
part shelf: board, across, flat, length long, left at 0, front at 0, on floor
"""
TAIL = "across, flat, left at 0, front at 20, on floor\n"
PLANS = sorted(Path("plans").glob("*.plan"))


def test_one_that_nothing_names_is_told_and_taken_out() -> None:
    assert told(SHELF, RULE) == [
        "warning - @ depth: Nothing in the plan uses the measure depth. → "
        "Take it out, or write it where it is meant."
    ]
    mended = with_edit(SHELF, findings_of(SHELF, RULE)[0])
    assert "depth" not in mended
    assert findings_of(mended, RULE) == ()


@pytest.mark.parametrize(
    "more",
    [
        f"part more: board, depth long, {TAIL}",
        f"part more: board, 2 * (3 + depth) long, {TAIL}",
        "inner = depth - 1\npart more: board, inner long, " + TAIL,
        "try depth: 8, 10\n",
        "try length: from depth to 2 * depth by 3\n",
        f"part more: board, 24 long, only when depth over 60, {TAIL}",
        f"part more: board, depth long, only when length over 60, {TAIL}",
        f"part more: board, 24 long, only when length over 60, only when depth over 60, {TAIL}",
        "assembly tray: left at 0, front at 20, only when length over 60\n"
        "    part end: board, across, flat, depth long, left at 0, front at 20, on floor\n",
        "load shelf: 20 kg at depth from left\n",
    ],
)
def test_one_that_something_names_is_not(more: str) -> None:
    found = look_at(SHELF + more, only=RULE)
    assert found.problems == ()
    assert found.judgement is not None
    assert found.judgement.findings == ()


def test_what_only_an_unused_one_is_worked_out_from_waits_for_its_turn() -> None:
    plan = SHELF + "inner = depth - 1\n"
    assert [finding.values["name"] for finding in findings_of(plan, RULE)] == ["inner"]
    mended = with_edit(plan, findings_of(plan, RULE)[0])
    assert [finding.values["name"] for finding in findings_of(mended, RULE)] == ["depth"]


def test_one_that_is_set_from_outside_is_not() -> None:
    for name, found in (("depth", []), ("length", ["depth"])):
        (size,) = sizes_reviewed(
            opened("shelf.plan", SHELF), settings(), all_rules(), asked_measures([f"{name}=12"])
        )
        assert size.found.judgement is not None
        names = [each.values["name"] for each in size.found.judgement.findings if each.rule == RULE]
        assert names == found


# ---------------------------------------------------------------- where it is likely meant


def steps(plan: str) -> list[str]:
    return [line.partition("depth: ")[2] for line in told(plan, RULE)]


def test_the_one_place_where_its_length_is_a_number_is_told() -> None:
    plan = f"{SHELF}part more: board, 9 1/8 long, {TAIL}"
    assert steps(plan) == [
        "Nothing in the plan uses the measure depth, but 9 1/8 in stands as a number in “9 1/8 long”. → "
        "If it is meant there, write depth in place of the number. If not, take it out."
    ]
    (finding,) = findings_of(plan, RULE)
    assert finding.edit is None
    assert [plan[span.start : span.end] for span in finding.also_at] == ["9 1/8 long"]


def test_a_number_in_another_unit_is_the_same_length() -> None:
    assert "“231.775 mm long”" in steps(f"{SHELF}part more: board, 231.775 mm long, {TAIL}")[0]


def test_the_one_other_measure_of_its_length_is_told() -> None:
    plan = f"{SHELF}wide = 9 1/8\npart more: board, wide long, {TAIL}"
    assert steps(plan) == [
        "Nothing in the plan uses the measure depth, and wide is 9 1/8 in too. → "
        "If wide should follow it, write: wide = depth. If not, take depth out."
    ]


@pytest.mark.parametrize(
    "more",
    [
        f"part more: board, 9 1/8 long, {TAIL}part again: board, 9 1/8 long, {TAIL}",
        f"wide = 9 1/8\npart more: board, 9 1/8 long, {TAIL}part again: board, wide long, {TAIL}",
        f"part more: board, 9 1/16 long, {TAIL}",
        "room: indoors, wall behind, studs every 9 1/8\n",
        "wide = 9 1/8\n",
    ],
    ids=["two places", "a place and a measure", "near", "not of a part", "as little used"],
)
def test_no_place_is_told_where_it_is_not_sure(more: str) -> None:
    assert steps(SHELF + more)[:1] == [
        "Nothing in the plan uses the measure depth. → Take it out, or write it where it is meant."
    ]


def test_counts_are_no_lengths() -> None:
    plan = SHELF.replace("9 + 1/8", "3") + (
        "part slat: board, across, flat, 24 long, left at 0, on floor\n"
        "    3 copies side by side deep, gap 1/8, front at 20\n"
    )
    assert look_at(plan).problems == ()
    assert "number" not in steps(plan)[0]


# ---------------------------------------------------------------- used files and slips


def test_measures_of_a_used_file_are_not_told_and_one_in_their_place_is_used_there() -> None:
    shared = "edge = 1\nspare = 5\nstock thick: actual edge x 4 pine\n"
    plan = SHELF.replace("depth = 9 + 1/8", 'use "yard.plan"\nedge = 2') + (
        f"part more: thick, 24 long, {TAIL}"
    )
    found = look_at(plan, only=RULE, files={"yard.plan": shared})
    assert found.judgement is not None
    assert found.judgement.findings == ()


def test_one_that_a_misspelt_name_means_is_left_to_unknown_name() -> None:
    plan = f"{SHELF}part more: board, depht long, {TAIL}"
    assert told(plan, RULE) == []
    assert len(told(plan, "unknown-name")) == 1
    assert told(f"{SHELF}load shelf: 20 kg, at depth from left", RULE) == []  # a comma too many
    assert len(told(f"{SHELF}part more: board, reach long, {TAIL}", RULE)) == 1


@pytest.mark.parametrize("path", PLANS[::4], ids=lambda path: path.stem)
def test_taking_one_out_changes_nothing_whatever_it_is_called(path: Path) -> None:
    """A measure's name may be a word that the plan has for something else: without it that reads as before."""
    text = path.read_text("utf-8").rstrip("\n") + "\n"
    plain = read(text, nothing_in_files).statements
    limits = dict(default_limits())
    taken = 0
    for word in dict.fromkeys(re.findall(r"(?<![\w.\"])[a-z][a-z-]+(?![\w.*])", text)):
        added = f"{text}{word} = 77.7\n"
        plan = understand(read(added, plans_shared()), limits).plan
        for unused in plan.unused_measures if plan else ():
            if unused.name == word:
                taken += 1
                start, end = unused.statement
                assert read(added[:start] + added[end:], nothing_in_files).statements == plain
    assert taken > 5
