"""Notes of what was taken for granted; what is assumed and why is tested in tests/workshop/test_assuming.py."""

from __future__ import annotations

import pytest

from reviewer.findings import Severity
from tests.rules.everyday_pieces import EVERYDAY
from tests.rules.sound_pieces import SOUND_PIECES
from tests.support import findings_of, judgement_of, review_of, told

RULE = "assumed"

SHELF = """
plan "Shelf" in inches
stock board: actual 3/4 x 7 1/4 red oak
part shelf: board, across, flat, 24 long, left at 0, front at 0, on floor
room: indoors, heated, wall behind
load shelf: books
"""


def test_a_note_says_what_was_taken_and_from_where_and_how_to_say_otherwise() -> None:
    assert (
        "note - @ stock board: board: taken as flat sawn, which moves most (common practice, no source). → "
        "To say otherwise, write: quarter sawn"
    ) in told(SHELF, RULE)


def test_what_no_words_can_state_is_to_be_kept_in_mind() -> None:
    weight = next(line for line in told(SHELF, RULE) if "weigh" in line)
    # Red oak 0.63 × 1.12 × 1000 kg/m³ = 705.6 kg/m³; 24 × 7 1/4 × 3/4 in = 130.5 in³ = 0.0021385 m³: 1.509 kg = 3.33 lb
    assert weight.startswith(
        "note - @ stock board: red oak: all parts of it weigh 3.33 lb, at 12 % moisture ("
    )
    assert weight.endswith(" → Keep it in mind where a result is near its limit.")


@pytest.mark.parametrize("name", [*SOUND_PIECES, *EVERYDAY])
def test_one_note_for_each_assumption_and_not_too_many(name: str) -> None:
    text = {**SOUND_PIECES, **EVERYDAY}[name]
    found = findings_of(text, RULE)
    assert len(found) == len(review_of(text).assumptions)
    assert {finding.weight for finding in found} == {Severity.NOTE}
    assert 5 <= len(found) <= 18


def test_it_can_be_accepted_all_at_once() -> None:
    judged = judgement_of(SHELF + 'accept assumed because "usual figures will do"\n', only=RULE)
    assert judged.findings == ()
    assert len(judged.waived) == len(findings_of(SHELF, RULE))
