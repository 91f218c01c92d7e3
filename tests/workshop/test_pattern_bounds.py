"""The bounds behind the layouts: each is a proof, so each is held against every pattern there is."""

from __future__ import annotations

from itertools import product

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from reviewer.workshop.pattern_bounds import (
    PLACES,
    Kind,
    Steps,
    best_fill,
    cost_programme,
    material_measure,
    material_worths,
    sharing_measure,
)

calm = settings(deadline=None, derandomize=True, database=None, max_examples=100)


def every_pattern(sizes: tuple[int, ...], demand: tuple[int, ...], capacity: int) -> list[tuple[int, ...]]:
    ranges = [range(number + 1) for number in demand]
    return [
        pattern
        for pattern in product(*ranges)
        if sum(s * n for s, n in zip(sizes, pattern, strict=True)) <= capacity
    ]


def worth(each: tuple[int, ...], pattern: tuple[int, ...]) -> int:
    return sum(e * n for e, n in zip(each, pattern, strict=True))


@st.composite
def problems(
    draw: st.DrawFn,
) -> tuple[tuple[int, ...], tuple[int, ...], tuple[Kind, ...]]:
    """Sizes, longest first, how many of each, and kinds of bar, the first without limit."""
    sizes = tuple(sorted(draw(st.sets(st.integers(5, 60), min_size=1, max_size=4)), reverse=True))
    demand = tuple(draw(st.integers(1, 4)) for _ in sizes)
    kinds = [Kind(draw(st.integers(60, 130)), draw(st.integers(1, 50)), None)]
    for _ in range(draw(st.integers(0, 2))):
        kinds.append(Kind(draw(st.integers(20, 130)), draw(st.integers(0, 50)), draw(st.integers(0, 4))))
    return sizes, demand, tuple(kinds)


@calm
@given(problems(), st.lists(st.integers(0, 1000), min_size=4, max_size=4))
def test_best_fill_is_the_best_of_all_patterns(
    problem: tuple[tuple[int, ...], tuple[int, ...], tuple[Kind, ...]], values: list[int]
) -> None:
    sizes, demand, kinds = problem
    each = tuple(values[: len(sizes)])
    fill = best_fill(each, sizes, demand, kinds[0].capacity, Steps(100_000))
    best = max(worth(each, pattern) for pattern in every_pattern(sizes, demand, kinds[0].capacity))
    assert fill.value == fill.at_most == best == worth(each, fill.pattern)
    hasty = best_fill(each, sizes, demand, kinds[0].capacity, Steps(1))
    assert hasty.value <= best <= hasty.at_most


@calm
@given(problems())
def test_no_pattern_is_worth_more_than_its_bar(
    problem: tuple[tuple[int, ...], tuple[int, ...], tuple[Kind, ...]],
) -> None:
    sizes, demand, kinds = problem
    for worths in (material_worths(sizes, kinds), cost_programme(sizes, demand, kinds).worths):
        for kind, rent in zip(kinds, worths.rents, strict=True):
            assert rent == 0 or kind.limit is not None
            for pattern in every_pattern(sizes, demand, kind.capacity):
                assert worth(worths.each, pattern) <= (kind.weight << PLACES) + rent


@calm
@given(problems(), st.lists(st.integers(0, 4), min_size=3, max_size=3))
def test_no_bar_holds_more_than_its_measure(
    problem: tuple[tuple[int, ...], tuple[int, ...], tuple[Kind, ...]], limits: list[int]
) -> None:
    sizes, demand, some = problem
    kinds = tuple(kind._replace(limit=limit) for kind, limit in zip(some, limits, strict=False))
    for measure in (material_measure(sizes, demand, kinds), sharing_measure(sizes, demand, kinds)[0]):
        for kind, most in zip(kinds, measure.most, strict=True):
            for pattern in every_pattern(sizes, demand, kind.capacity):
                assert worth(measure.each, pattern) <= most


def test_programme_finds_the_known_bound() -> None:
    """Worked by hand: halves, thirds and sixths of a bar.

    One bar of 60; three pieces of 30, three of 20: 1.5 bars and 1 bar, 2.5 in all, so three.
    """
    worths = cost_programme((30, 20), (3, 3), (Kind(60, 1, None),)).worths
    assert worths.value((3, 3), (None,)) / (1 << PLACES) == pytest.approx(2.5)
    assert worths.at_least((3, 3), (None,)) == 3


def test_sharing_measure_sees_what_plain_size_does_not() -> None:
    """Three pieces of 51 in two bars of 100 leave 47 over, and yet do not fit: one goes in each."""
    kinds = (Kind(100, 0, 2),)
    assert not material_measure((51, 5), (3, 1), (Kind(160, 0, 2),)).overfull((3, 1), (2,))
    measure, _ = sharing_measure((51, 5), (3, 1), kinds)
    assert measure.overfull((3, 1), (2,))
    assert not measure.overfull((2, 1), (2,))
