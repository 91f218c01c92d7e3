"""Frames in space against a general structural solver (PyNiteFEA, a test-only library)."""

from __future__ import annotations

import pytest
from frame_cases import FrameCase

from reviewer.mechanics.frame import Loose
from reviewer.workshop.swaying_structure import structure
from tests.general_solver import general, kept, swayed
from tests.rules.sound_pieces import SOUND_PIECES
from tests.support import review_of

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


@pytest.mark.parametrize("name", ["bench", "bookcase", "side table"])
def test_frames_of_pieces_with_their_joints(name: str) -> None:
    """Joints as the solver can hold them, with stiff arms: those cost both of us the last digits.

    This is the frame that the benchmark compares the two on.
    """
    review = review_of(SOUND_PIECES[name])
    (piece,) = review.pieces
    standing = structure(review, piece)
    assert standing is not None
    frame, top = kept(standing)
    model = general(frame, top, (0, 1))
    model.analyze_linear(check_stability=False)
    for axis in (0, 1):
        push = [0.0] * 6
        push[axis] = 1.0
        a, b, c, d, e, f = push
        moved = frame.solve(dict.fromkeys(top, (a, b, c, d, e, f)))
        assert not isinstance(moved, Loose)
        ours = sum(moved[node][axis] for node in top) / len(top)
        assert ours == pytest.approx(swayed(model, top, axis), rel=1e-4)
