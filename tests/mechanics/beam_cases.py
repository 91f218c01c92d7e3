"""Random beams for the tests of the beam, all from one seed."""

from __future__ import annotations

import random
from typing import NamedTuple

from reviewer.mechanics.beam import BeamResult, LineLoad, PointLoad, solve_beam


class BeamCase(NamedTuple):
    """Everything that ``solve_beam`` takes."""

    length: float
    supports: list[float]
    bending_stiffness: float
    point_loads: list[PointLoad]
    line_loads: list[LineLoad]
    clamps: list[float]


def solved(case: BeamCase) -> BeamResult:
    result = solve_beam(*case)
    assert isinstance(result, BeamResult)
    return result


def random_beam(seed: int) -> BeamCase:
    """A beam of a furniture's size: one to six bays, overhangs at neither, one or both ends, mixed loads."""
    dice = random.Random(seed)
    length = dice.uniform(200, 4000)
    count = dice.randint(2, 7)
    low = dice.choice([0.0, dice.uniform(0.02, 0.3)])
    high = dice.choice([1.0, dice.uniform(0.7, 0.98)])
    inner = sorted(dice.uniform(low + 0.01, high - 0.01) for _ in range(count - 2))
    supports = [length * share for share in (low, *inner, high)]
    clamps = [supports.pop(dice.randrange(count))] if seed % 5 == 4 else []
    points = [
        PointLoad(dice.choice([0.0, length, dice.uniform(0, length)]), dice.uniform(-300, 900))
        for _ in range(dice.randint(0, 4))
    ]
    lines = []
    for _ in range(dice.randint(1, 3)):
        start, end = sorted((dice.uniform(0, length), dice.uniform(0, length)))
        lines.append(LineLoad(start, end, dice.uniform(-0.2, 1.0)))
    if seed % 3 == 0:
        lines.append(LineLoad(0.0, length, dice.uniform(0.05, 0.5)))
    return BeamCase(length, supports, dice.uniform(1e8, 1e12), points, lines, clamps)


def total_load(case: BeamCase) -> float:
    return sum(p.force for p in case.point_loads) + sum(
        w.intensity * (w.end - w.start) for w in case.line_loads
    )
