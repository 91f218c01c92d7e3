"""Nothing worse than a note about pieces that makers rightly build every day."""

from __future__ import annotations

import pytest

from reviewer.findings import Severity
from tests.rules.everyday_pieces import EVERYDAY
from tests.rules.sound_pieces import SOUND_PIECES
from tests.support import findings_of, look_at

RULES = ("will-not-bond", "coat-too-soon", "tips", "restraint-missing", "basket-short", "wrong-metal")


@pytest.mark.parametrize("rule", RULES)
@pytest.mark.parametrize("name", EVERYDAY)
def test_everyday_piece_is_quiet(name: str, rule: str) -> None:
    found = look_at(EVERYDAY[name], only=rule)
    assert found.judgement is not None
    assert not found.judgement.waiting
    assert [(each.rule, each.says) for each in found.judgement.findings if each.weight > Severity.NOTE] == []


@pytest.mark.parametrize("rule", RULES)
@pytest.mark.parametrize("name", SOUND_PIECES)
def test_sound_piece_is_quiet(name: str, rule: str) -> None:
    assert [each.says for each in findings_of(SOUND_PIECES[name], rule) if each.weight > Severity.NOTE] == []
