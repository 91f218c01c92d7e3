"""Sound pieces, as good makers build them every day: the rules about wood and joints leave them alone."""

from __future__ import annotations

import pytest

from reviewer.findings import Severity
from tests.rules.sound_pieces import SOUND_PIECES
from tests.support import findings_of, review_of

RULES = (
    "sags",
    "unsupported-end",
    "overhang-too-long",
    "bearing-too-short",
    "screw-breaks-through",
    "screw-too-short",
    "pocket-mismatch",
    "side-misses-joint",
    "joint-overloaded",
    "end-grain-only",
    "nail-in-tension",
    "movement-locked",
    "racks",
    "panel-trapped",
    "gap-closes",
    "yard-wet",
    "mixed-across-grain",
)


@pytest.mark.parametrize("piece", SOUND_PIECES)
def test_the_piece_can_be_judged(piece: str) -> None:
    setting = review_of(SOUND_PIECES[piece]).setting
    assert setting.solids
    assert (setting.unsettled, setting.clashes, setting.broken_touches) == ((), (), ())
    assert all(joint.meets for joint in setting.joints)


@pytest.mark.parametrize("rule", RULES)
@pytest.mark.parametrize("piece", SOUND_PIECES)
def test_a_sound_piece_is_left_alone(piece: str, rule: str) -> None:
    heavy = [finding for finding in findings_of(SOUND_PIECES[piece], rule) if finding.weight > Severity.NOTE]
    assert heavy == []
