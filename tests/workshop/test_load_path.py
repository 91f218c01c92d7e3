"""The way of every load to floor and wall: nothing is lost, every part is in balance, and a solver agrees."""

from __future__ import annotations

import math
from collections import defaultdict
from pathlib import Path

import pytest
from stacked_pieces import random_piece, reactions_at_once, reactions_one_by_one

from reviewer.mechanics.beam import BeamResult
from reviewer.model.plan import GROUNDS
from reviewer.review import Review
from reviewer.reviewing import reviewed
from tests.rules.everyday_pieces import EVERYDAY
from tests.rules.sound_pieces import SOUND_PIECES
from tests.support import plans_shared, review_of, settings

PLANS = sorted((Path(__file__).parents[2] / "plans").glob("*.plan"))
#: The middle plank of its top lies on no leg: joint-out-of-reach tells of it.
PIECES = {**SOUND_PIECES, **EVERYDAY}
PIECES.pop("workbench")
RELATIVE = 1e-9
SOLVER = 1e-6


def review_at(path: Path) -> Review:
    review = reviewed(path.name, path.read_text("utf-8"), settings(), {}, plans_shared()).review
    assert review is not None
    return review


def passed(review: Review) -> list[tuple[str, str, float]]:
    """Every force on its way down: from which part, to what, N."""
    handed = review.carrying.handed.items()
    return [(part, each.to.by, each.force) for part, found in handed for each in found]


def balanced(review: Review) -> None:
    """Every part hands on what it weighs, bears and takes; all of it arrives at floor and wall."""
    carrying = review.carrying
    total = math.fsum(mass.weight for mass in review.masses.values())
    total += math.fsum(carrying.declared.values())
    assert carrying.lost == {}
    assert carrying.on_floor + carrying.on_wall == pytest.approx(total, rel=RELATIVE)
    takes: dict[str, list[float]] = defaultdict(list)
    gives: dict[str, list[float]] = defaultdict(list)
    for part, to, force in passed(review):
        # A part's forces come before those of what holds it.
        assert to not in gives
        takes[to].append(force)
        gives[part].append(force)
    assert math.fsum(force for ground in GROUNDS for force in takes[ground]) == pytest.approx(
        total, rel=RELATIVE
    )
    for name, mass in review.masses.items():
        has = mass.weight + carrying.declared.get(name, 0.0) + math.fsum(takes[name])
        assert math.fsum(gives[name]) == pytest.approx(has, rel=RELATIVE, abs=RELATIVE * total)


@pytest.mark.parametrize("path", PLANS, ids=lambda path: path.stem)
def test_every_part_of_a_plan_is_in_balance(path: Path) -> None:
    balanced(review_at(path))


@pytest.mark.parametrize("name", PIECES)
def test_every_part_of_a_small_piece_is_in_balance(name: str) -> None:
    balanced(review_of(PIECES[name]))


@pytest.mark.parametrize("path", PLANS, ids=lambda path: path.stem)
def test_no_beam_of_a_plan_turns(path: Path) -> None:
    """The moments of loads and reactions about a beam's low end cancel, where nothing clamps it."""
    review = review_at(path)
    for member in review.carrying.members.values():
        if not isinstance(member.standing, BeamResult) or member.clamped:
            continue
        share = member.share
        loads = sum(member.uniform) * member.length**2 / 2
        loads += math.fsum(
            (s.end - s.start) * (s.lasting + s.brief) * (s.start + s.end) / 2 for s in member.spreads
        )
        loads += math.fsum(point.at * (point.lasting + point.brief) for point in member.points)
        held = math.fsum(each.at * each.force for each in member.standing.reactions)
        assert held == pytest.approx(loads * share, rel=1e-8, abs=1e-6)


@pytest.mark.parametrize("seed", range(200))
def test_reactions_of_a_stacked_piece_agree_with_the_solver(seed: int) -> None:
    piece = random_piece(seed)
    review = review_of(piece.text)
    weights = {name: mass.weight for name, mass in review.masses.items()}
    ours: dict[tuple[str, str], float] = defaultdict(float)
    for part, to, force in passed(review):
        ours[part, to] += force
    theirs = reactions_one_by_one(piece, weights)
    largest = max(map(abs, theirs.values()))
    level = {pair for pair in ours if pair[1] != "floor"}
    assert level == set(theirs)
    for pair, force in theirs.items():
        assert abs(ours[pair] - force) <= SOLVER * largest, pair
    if seed % 2:
        # On two supports throughout, statics alone settle it: one model of all of it must say the same.
        for post, force in reactions_at_once(piece, weights).items():
            assert abs(ours[post, "floor"] - weights[post] - force) <= SOLVER * largest, post
