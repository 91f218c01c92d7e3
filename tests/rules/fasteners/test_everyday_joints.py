"""Nothing worse than a note from the rules of joints about pieces that makers rightly build every day."""

from __future__ import annotations

import pytest

from reviewer.findings import Severity
from tests.rules.everyday_pieces import EVERYDAY
from tests.rules.sound_pieces import SOUND_PIECES
from tests.support import findings_of

RULES = (
    "tenon-proportions", "dado-too-deep", "dowel-proportions", "lap-short", "mitre-unkeyed", "glue-on-end-grain",
    "glue-outdoors", "glue-on-finish", "glue-on-oily-wood", "glue-gap", "glue-races", "clamps-off-too-soon",
    "glued-wet", "pocket-in-thin-stock", "pocket-mismatch",
)  # fmt: skip
PIECES = {**EVERYDAY, **{f"sound {name}": text for name, text in SOUND_PIECES.items()}}


@pytest.mark.parametrize("rule", RULES)
def test_everyday_pieces_are_quiet(rule: str) -> None:
    assert len(PIECES) > 8
    for name, text in PIECES.items():
        heavy = [each.says for each in findings_of(text, rule) if each.weight > Severity.NOTE]
        assert heavy == [], name


@pytest.mark.parametrize("name", PIECES)
def test_metal_is_asked_about_outdoors_alone(name: str) -> None:
    text = PIECES[name]
    found = findings_of(text, "wrong-metal")
    assert bool(found) is ("outdoors" in text and "screws" in text and "stainless" not in text)
