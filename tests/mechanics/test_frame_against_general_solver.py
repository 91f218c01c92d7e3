"""Frames in space against a general structural solver (PyNiteFEA, a test-only library)."""

from __future__ import annotations

import pytest
from frame_cases import FrameCase

from reviewer.mechanics.frame import Loose

RELATIVE = 1e-6


@pytest.mark.parametrize("seed", range(200))
def test_every_node_moves_alike(seed: int) -> None:
    case = FrameCase(seed)
    ours = case.ours.solve(case.loads)
    assert not isinstance(ours, Loose)
    theirs = case.solve_theirs()
    for freedoms in (slice(0, 3), slice(3, 6)):
        largest = max(abs(each) for node in theirs for each in node[freedoms])
        assert largest > 0
        for one, two in zip(ours, theirs, strict=True):
            for mine, other in zip(one[freedoms], two[freedoms], strict=True):
                assert abs(mine - other) <= RELATIVE * largest
