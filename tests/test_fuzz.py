"""A batch of the fuzzing that is run by hand (tests/fuzz.py): no text crashes, none takes over 2 s."""

from __future__ import annotations

import pytest

from tests.fuzz import run

#: Ten batches of texts, a fresh stretch of numbers each; by hand the first 200,000 are run.
BATCHES = 10
TEXTS = 150


@pytest.mark.parametrize("batch", range(BATCHES))
def test_no_text_of_a_batch_goes_wrong(batch: int) -> None:
    found = run(batch * 20_000, TEXTS, workers=1)
    assert [each for each in found if each.wrong] == []
    assert {each.end for each in found} == {"unreadable", "reviewed"}  # both are gone through
