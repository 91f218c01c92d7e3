"""Circles are those that a general graph library finds (networkx, its strongly connected components)."""

from __future__ import annotations

import networkx
from hypothesis import given
from hypothesis import strategies as st

from reviewer.workshop.circles import circles

NAMES = "abcdefgh"
LEADS = st.dictionaries(st.sampled_from(NAMES), st.lists(st.sampled_from(NAMES), max_size=4), max_size=8)


@given(LEADS)
def test_they_are_the_strongly_connected_components(leads: dict[str, list[str]]) -> None:
    graph = networkx.DiGraph([(one, other) for one, others in leads.items() for other in others])
    theirs = {frozenset(group) for group in networkx.strongly_connected_components(graph) if len(group) > 1}
    ours = list(circles(leads))
    assert set(ours) == theirs
    assert len(ours) == len(theirs)


def test_a_long_way_round_is_one_circle() -> None:
    count = 20_000
    leads = {str(number): [str((number + 1) % count)] for number in range(count)}
    assert [len(group) for group in circles(leads)] == [count]


def test_a_long_way_without_return_is_none() -> None:
    leads = {str(number): [str(number + 1)] for number in range(20_000)}
    assert list(circles(leads)) == []
