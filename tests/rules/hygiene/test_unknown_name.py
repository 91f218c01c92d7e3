"""Names that nothing declares, and the edits that mend them."""

from __future__ import annotations

import pytest

from tests.rules.everyday_pieces import EVERYDAY
from tests.rules.mending import mended
from tests.rules.sound_pieces import SOUND_PIECES
from tests.support import findings_of, judgement_of, told

RULE = "unknown-name"

TABLE = """
plan "Table" in inches
width = 30
stock board: actual 3/4 x 3 red oak
outline frame: width across, 20 deep, 28 tall, on floor
part rail for each of front, back: board, across, on edge, from left of frame to right of frame
    flush with each of frame, on floor
part end for each of left, right: board, deep, on edge, between rail.front and rail.back
    flush with each of frame, on floor
join end.* to rail.*: dowels 3/8 x 2, 2 per end, glue pva
load rail.front: books
"""


@pytest.mark.parametrize(
    ("right", "wrong", "what", "near"),
    [
        ("between rail.front and", "between rail.frnt and", "part", "rail.front"),
        (
            "part end for each of left, right: board",
            "part end for each of left, right: bord",
            "stock",
            "board",
        ),
        ("width across", "widht across", "measure", "width"),
        ("load rail.front: books", "load rail.front: boks", "load", "books"),
        ("glue pva", "glue yelow pva", "glue", "yellow pva"),
        ("join end.*", "join edn.*", "part", "end.*"),
        ("to rail.*", "to rial.*", "part", "rail.*"),
    ],
)
def test_a_slip_is_told_with_the_nearest_name_and_mended(
    right: str, wrong: str, what: str, near: str
) -> None:
    assert right in TABLE
    text = TABLE.replace(right, wrong)
    found = findings_of(text, RULE)
    assert [finding.values["what"] for finding in found] == [what]
    assert str(found[0].values["near"]).split(", ")[0].split(" or ")[0] == near
    changed = mended(text, RULE)
    assert findings_of(changed, RULE) == ()
    assert changed == TABLE.replace("glue pva", "glue yellow pva") if what == "glue" else changed == TABLE


def test_the_message_whole() -> None:
    text = TABLE.replace("between rail.front and", "between rail.frnt and")
    assert told(text, RULE) == [
        "error - @ rail.frnt: No part is called “rail.frnt”. → Did you mean rail.front?"
    ]


def test_a_name_used_in_several_places_is_told_once() -> None:
    text = TABLE + "join shelf to rail.*: glue pva\nload shelf: books\nload rail.back, shelf: books\n"
    found = findings_of(text, RULE)
    assert len(found) == 1
    assert len(found[0].also_at) == 2
    assert found[0].edit is None  # one edit can't mend three places
    assert told(text, RULE) == [
        "error - @ shelf: No part is called “shelf”. → Look at its spelling, or add the part that it should stand for."
    ]


def test_a_name_with_the_copies_own_word_is_told_as_it_comes_out() -> None:
    text = TABLE.replace("between rail.front and rail.back", "between rail.x-each and rail.back")
    found = findings_of(text, RULE)
    assert [finding.values["name"] for finding in found] == ["rail.x-left"]
    # The words there are “rail.x-each”; the name of one copy in their place would be wrong for the other.
    assert found[0].edit is None


@pytest.mark.parametrize(
    ("line", "says"),
    [
        (
            "load rail.back: qqqq",
            "“qqqq” is no load that dryfit's tables know. → Use a plainer word, such as books",
        ),
        (
            "join rail.* to end.*: glue zzzz",
            "“zzzz” is no glue that dryfit's tables know. → Use a plain word",
        ),
        (
            "part x: qqqq, across, flat",
            "No stock is called “qqqq”. → Look at its spelling, or declare it, such as:",
        ),
    ],
)
def test_without_a_near_name_it_says_what_would_do(line: str, says: str) -> None:
    assert says in told(TABLE + line + "\n", RULE)[0]


@pytest.mark.parametrize(
    ("broken", "whole"),
    [
        ("glue zzzz", "glue yellow pva"),
        ("2 coats of zzzz", "2 coats of polyurethane waterborne"),
        ("load rail.back: zzzz", "load rail.back: 20 kg"),
    ],
)
def test_the_words_it_offers_read(broken: str, whole: str) -> None:
    lines = {
        "glue": "join rail.* to end.*: ",
        "2": "finish clear: on rail.*, ",
        "load": "",
    }
    text = TABLE + lines[broken.split()[0]]
    assert str(findings_of(text + broken + "\n", RULE)[0].do).endswith(whole.removeprefix("load rail.back: "))
    assert findings_of(text + whole + "\n", RULE) == ()


def test_it_judges_before_the_others_and_they_wait() -> None:
    judged = judgement_of(TABLE.replace("between rail.front and", "between rail.frnt and"))
    assert {finding.rule for finding in judged.findings} == {RULE}
    assert "parts-overlap" in judged.waiting


@pytest.mark.parametrize("name", [*SOUND_PIECES, *EVERYDAY])
def test_sound_pieces_are_quiet(name: str) -> None:
    assert told({**SOUND_PIECES, **EVERYDAY}[name], RULE) == []


def test_one_edit_is_not_offered_for_three_places() -> None:
    text = TABLE + "join rail.fron to end.*: glue pva\nload rail.fron: books\n"
    found = findings_of(text, RULE)
    assert [(finding.values["near"], finding.edit) for finding in found] == [("rail.front or rail", None)]


def test_a_part_that_a_slip_kept_from_being_made_is_not_told_as_well() -> None:
    text = TABLE.replace("part end for each of left, right: board", "part end for each of left, right: bord")
    assert [finding.values["name"] for finding in findings_of(text, RULE)] == ["bord"]


@pytest.mark.parametrize(
    ("word", "near"),
    [("bikes", "binders, books or files"), ("stones", "shoes or toys"), ("dices", "dishes, discs or files")],
)
def test_a_word_spelt_alike_that_means_something_else_gets_no_edit(word: str, near: str) -> None:
    text = f"""
        plan "Rack" in inches
        stock board: 1x8 pine
        part shelf: board, across, flat, 24 long, left at 0, front at 0, on floor
        load shelf: {word}
    """
    (finding,) = findings_of(text, "unknown-name")
    assert finding.edit is None
    assert told(text, "unknown-name") == [
        f"error - @ {word}: “{word}” is no load that dryfit's tables know. → Did you mean {near}? If not: "
        "use a plainer word, such as books or people seated, or give the weight, such as: 20 kg"
    ]


@pytest.mark.parametrize(
    ("word", "meant"), [("boks", "books"), ("bookss", "books"), ("dishse", "dishes"), ("dishas", "dishes")]
)
def test_a_slip_of_the_pen_gets_one(word: str, meant: str) -> None:
    text = f"""
        plan "Rack" in inches
        stock board: 1x8 pine
        part shelf: board, across, flat, 24 long, left at 0, front at 0, on floor
        load shelf: {word}
    """
    (finding,) = findings_of(text, "unknown-name")
    assert finding.edit is not None
    assert finding.edit.text == meant
