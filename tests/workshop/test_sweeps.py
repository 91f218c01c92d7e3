"""The room that tools take: cylinders against boards, held against sampling and another way of finding it.

The reference knows neither hulls nor faces: it steps to and fro between the nearest points of the cylinder and
of the board (alternating projections onto convex sets, von Neumann 1933), which meet where the two share room.
"""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from reviewer.model.plan import Axis
from reviewer.setting_out.solid import Solid, square_solid
from reviewer.workshop.sweeps import Near, Sweep, free_up_to, stands_in

CLEAR = 0.6  # mm: cases nearer than this to touching are left to neither side


def board(low: tuple[float, float, float], high: tuple[float, float, float], name: str = "board") -> Solid:
    return square_solid(name, low, high, Axis.ACROSS, Axis.DEEP, Axis.UP)


def turned_board(middle: np.ndarray, size: np.ndarray, turn: np.ndarray) -> Solid:
    """A board standing anyhow; the rows of ``turn`` are its own ways."""
    half = np.abs(turn.T) @ (size / 2)
    low, high = tuple(map(float, middle - half)), tuple(map(float, middle + half))
    ways = tuple(tuple(map(float, row)) for row in turn)
    return Solid("board", low, high, Axis.ACROSS, Axis.DEEP, Axis.UP, ways, tuple(map(float, size)))  # type: ignore[arg-type]


def gap(solid: Solid, sweep: Sweep) -> float:
    """How far a board is from a cylinder, mm, by alternating projections; 0 where they share room."""
    turn, size = np.array(solid.directions), np.array(solid.size)
    middle = (np.array(solid.low) + np.array(solid.high)) / 2
    start, way = np.array(sweep.start), np.array(sweep.way)
    at = middle
    for _ in range(600):
        along = float(np.clip((at - start) @ way, sweep.low, sweep.high))
        off = at - start - ((at - start) @ way) * way
        far = float(np.linalg.norm(off))
        in_cylinder = start + along * way + (off if far <= sweep.radius else off / far * sweep.radius)
        at = middle + turn.T @ np.clip(turn @ (in_cylinder - middle), -size / 2, size / 2)
        if np.linalg.norm(at - in_cylinder) < 1e-7:
            return 0.0
    return float(np.linalg.norm(at - in_cylinder))


def rotation(a: float, b: float, c: float) -> np.ndarray:
    def about(axis: int, angle: float) -> np.ndarray:
        one, two = (each for each in range(3) if each != axis)
        found = np.eye(3)
        found[one, one] = found[two, two] = math.cos(angle)
        found[one, two], found[two, one] = -math.sin(angle), math.sin(angle)
        return found

    return about(0, a) @ about(1, b) @ about(2, c)


ANGLE = st.floats(0, 2 * math.pi)
PLACE = st.floats(-120, 120)
SIZE = st.floats(4, 150)


@st.composite
def cases(draw: st.DrawFn) -> tuple[Solid, Sweep]:
    turn = rotation(*(draw(ANGLE) for _ in range(3))) if draw(st.booleans()) else np.eye(3)
    solid = turned_board(
        np.array([draw(PLACE) for _ in range(3)]), np.array([draw(SIZE) for _ in range(3)]), turn
    )
    way = (
        rotation(draw(ANGLE), draw(ANGLE), 0.0)[0]
        if draw(st.booleans())
        else np.eye(3)[draw(st.integers(0, 2))]
    )
    start = tuple(draw(PLACE) for _ in range(3))
    low = draw(st.floats(0, 60))
    sweep = Sweep(start, tuple(map(float, way)), low, low + draw(st.floats(5, 250)), draw(st.floats(2, 45)))  # type: ignore[arg-type]
    return solid, sweep


@given(cases())
def test_a_board_in_the_way_as_another_method_finds_it(case: tuple[Solid, Sweep]) -> None:
    solid, sweep = case
    larger = sweep._replace(low=sweep.low - CLEAR, high=sweep.high + CLEAR, radius=sweep.radius + CLEAR)
    smaller = sweep._replace(low=sweep.low + CLEAR, high=sweep.high - CLEAR, radius=sweep.radius - CLEAR)
    if gap(solid, smaller) == 0.0:
        assert stands_in(solid, sweep)
    elif gap(solid, larger) > 0.05:
        assert not stands_in(solid, sweep)


@given(cases())
def test_no_sampled_point_of_wood_is_overlooked(case: tuple[Solid, Sweep]) -> None:
    solid, sweep = case
    turn, size = np.array(solid.directions), np.array(solid.size)
    middle = (np.array(solid.low) + np.array(solid.high)) / 2
    shares = np.linspace(-0.49, 0.49, 9)
    spots = middle + np.array([(a, b, c) for a in shares for b in shares for c in shares]) * size @ turn
    away = spots - np.array(sweep.start)
    along = away @ np.array(sweep.way)
    aside = np.linalg.norm(away - np.outer(along, np.array(sweep.way)), axis=1)
    inside = (along > sweep.low + CLEAR) & (along < sweep.high - CLEAR) & (aside < sweep.radius - CLEAR)
    if inside.any():
        assert stands_in(solid, sweep)
        assert free_up_to(solid, sweep) <= along[inside].min() + 0.1


@pytest.mark.parametrize(
    ("low", "high", "stands"),
    [
        ((50, -100, -100), (60, 100, 100), True),  # across the way
        ((200, -100, -100), (210, 100, 100), False),  # where the cylinder ends, touching it
        ((199, -100, -100), (210, 100, 100), True),
        ((0, 30, -100), (300, 60, 100), False),  # beside it, touching it
        ((0, 29, -100), (300, 60, 100), True),
        ((-20, 0, -100), (0, 60, 100), False),  # at its mouth
        ((40, 22, 22), (60, 60, 60), False),  # in the corner that a square bar would take, not a round one
        ((40, 21, 21), (60, 60, 60), True),
    ],
)
def test_flat_ends_and_round_sides(
    low: tuple[float, float, float], high: tuple[float, float, float], stands: bool
) -> None:
    # By hand: 30 mm round from the origin along the first axis, 200 long; 30 / sqrt(2) = 21.2 on the diagonal.
    assert stands_in(board(low, high), Sweep((0, 0, 0), (1, 0, 0), 0, 200, 30)) is stands


def test_how_far_it_is_free() -> None:
    sweep = Sweep((0, 0, 0), (0, 0, 1), 10, 200, 30)
    assert free_up_to(board((-5, -5, 80), (5, 5, 90)), sweep) == pytest.approx(80, abs=0.05)
    assert free_up_to(board((-5, 40, 80), (5, 50, 90)), sweep) == 200


BOXES = st.lists(st.tuples(*[st.integers(-40, 40)] * 3, *[st.integers(1, 30)] * 3), max_size=60)


@given(BOXES, st.tuples(*[st.integers(-40, 40)] * 3, *[st.integers(1, 40)] * 3))
def test_what_is_near_is_what_a_plain_look_finds(
    boxes: list[tuple[int, ...]], asked: tuple[int, ...]
) -> None:
    solids = [
        board(box[:3], tuple(a + b for a, b in zip(box[:3], box[3:], strict=True)), f"b{number}")  # type: ignore[arg-type]
        for number, box in enumerate(boxes)
    ]
    low, high = asked[:3], tuple(a + b for a, b in zip(asked[:3], asked[3:], strict=True))
    plain = [
        solid.name
        for solid in solids
        if all(solid.low[axis] < high[axis] and solid.high[axis] > low[axis] for axis in range(3))
    ]
    assert [solid.name for solid in Near(solids).within((low, high))] == plain  # type: ignore[arg-type]
