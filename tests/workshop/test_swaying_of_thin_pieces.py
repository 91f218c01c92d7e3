"""A gate or a panel is no frame that could rack front to back."""

import pytest

from reviewer.workshop.swaying import Swaying
from tests.support import review_of

GATE = """
plan "Garden gate" in millimetres
stock board: actual 22 x 120 western red cedar
outline gate: 1000 across, 44 deep, 1500 tall, on floor
part slat: board, upright, facing front, as tall as gate, on floor, flush with front of gate
    8 copies side by side across, gap to fit, from left of gate to right of gate
part rail for each of bottom, top: board, across, on edge, from left of gate to right of gate
    against back of slat.1, each 100 inside gate
join slat.* to rail.*: screws 4 x 40, {count} per joint, from front
"""


def test_a_gate_is_not_asked_to_stand_by_its_joints_front_to_back(monkeypatch: pytest.MonkeyPatch) -> None:
    text = GATE.format(count=1)
    assert review_of(text).swaying == []
    # Asked all the same, it would be told to fold over front to back.
    monkeypatch.setattr("reviewer.workshop.swaying._thin", lambda *_: False)
    assert [each.sway.axis for each in review_of(text).swaying if isinstance(each, Swaying)] == [1]
