"""The search through all patterns by itself: without the quick methods that mostly spare it the work."""

from __future__ import annotations

from collections import Counter

import pytest
from cutting_checks import least_cost
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from reviewer.workshop import bar_search
from reviewer.workshop.bar_search import Found, search_layout
from reviewer.workshop.quick_layouts import BarKind, Task

Offer = tuple[int, int, int | None]


def calm(examples: int) -> settings:
    return settings(
        deadline=None,
        derandomize=True,
        database=None,
        max_examples=examples,
        suppress_health_check=[HealthCheck.function_scoped_fixture],
    )


@st.composite
def orders(draw: st.DrawFn) -> list[int]:
    """Up to 8 pieces of up to 4 lengths."""
    lengths = draw(st.lists(st.integers(8, 70), min_size=1, max_size=4, unique=True))
    return draw(st.lists(st.sampled_from(lengths), min_size=1, max_size=8))


free_offers = st.lists(
    st.tuples(st.integers(70, 120), st.integers(1, 30), st.none() | st.integers(0, 4)), min_size=1, max_size=3
)
baskets = st.lists(
    st.tuples(st.integers(50, 120), st.integers(1, 30), st.integers(0, 3)), min_size=1, max_size=3
)


def searched(order: list[int], offers: list[Offer], **effort: int) -> Found:
    numbers = Counter(order)
    sizes = sorted(numbers, reverse=True)
    kinds = [BarKind(length, cost, True, limit) for length, cost, limit in offers]
    return search_layout(sizes, [numbers[size] for size in sizes], kinds, **effort)


def cost(found: Found, offers: list[Offer]) -> int:
    assert found.uses is not None
    return sum(offers[use.kind][1] * use.times for use in found.uses)


def assert_true(found: Found, order: list[int], offers: list[Offer]) -> None:
    """The layout is one, and what is claimed of it is so; the general solver knows."""
    expected = least_cost(order, [(length, float(price), limit) for length, price, limit in offers], 0)
    if found.uses is None:
        assert expected is None or not found.proven
        return
    sizes = sorted(set(order), reverse=True)
    cut: Counter[int] = Counter()
    for use in found.uses:
        length, _, limit = offers[use.kind]
        assert sum(sizes[index] * number for index, number in use.cuts) <= length
        for index, number in use.cuts:
            cut[sizes[index]] += number * use.times
        assert limit is None or sum(u.times for u in found.uses if u.kind == use.kind) <= limit
    assert cut == Counter(order)
    assert expected is not None
    assert found.cost_at_least <= round(expected) <= cost(found, offers)
    if found.proven:
        assert cost(found, offers) == round(expected) == found.cost_at_least


@pytest.fixture
def slow(monkeypatch: pytest.MonkeyPatch) -> None:
    """No quick layouts: whatever is found, the search through all patterns has found."""
    monkeypatch.setattr(Task, "quick", lambda *_: None)


@pytest.fixture
def starved(slow: None, monkeypatch: pytest.MonkeyPatch) -> None:
    """Hardly any effort for a choice of bars."""
    monkeypatch.setattr(bar_search, "_CHOICE_STEPS", 12)


@pytest.mark.usefixtures("slow")
@calm(150)
@given(orders(), free_offers | baskets)
def test_search_alone_finds_the_cheapest(order: list[int], offers: list[Offer]) -> None:
    found = searched(order, offers)
    assert_true(found, order, offers)
    assert found.proven


@pytest.mark.usefixtures("starved")
@calm(150)
@given(orders(), free_offers | baskets, st.integers(20, 400))
def test_search_that_gives_up_claims_nothing_false(order: list[int], offers: list[Offer], steps: int) -> None:
    assert_true(searched(order, offers, steps=steps), order, offers)


@pytest.mark.usefixtures("slow")
def test_a_layout_that_just_misses_is_ruled_out_by_going_through_all() -> None:
    """By hand: 70, 60, 35, 35 from bars of 100 take three, though two hold as much."""
    found = searched([70, 60, 35, 35], [(100, 1, None)])
    assert (found.proven, found.cost_at_least) == (True, 3)
    assert searched([70, 60, 35, 35], [(100, 1, 2)]).uses is None


@pytest.mark.usefixtures("starved")
def test_effort_that_runs_out_leaves_it_open() -> None:
    order = [17, 19, 23, 29, 31, 37, 41, 43, 47, 53, 17, 19, 23, 29, 31, 37, 41, 43, 47, 53]
    found = searched(order, [(100, 1, 7)], steps=12)  # 680 of 700
    assert (found.uses, found.proven) == (None, False)


#: Orders for which more than one choice of bars lies between the bound and the first layout found, so
#: that it matters in which order they are taken up, and what one that is too little says of the others.
CHOOSY: list[tuple[list[int], list[Offer], int]] = [
    ([14] * 5 + [50] * 3 + [66] * 3, [(82, 4, None), (109, 7, None), (156, 27, None)], 23),
    ([13] * 4 + [19, 28, 65, 65, 67, 67], [(100, 27, None), (146, 13, None), (139, 10, None)], 30),
    ([8] * 4 + [40] * 3 + [66] * 2, [(105, 8, None), (149, 14, None), (77, 6, None)], 26),
    ([10] * 3 + [62] * 4, [(134, 27, None), (99, 23, None)], 73),
    ([14] * 6 + [27] + [49] * 3, [(94, 26, None), (118, 27, None)], 78),
    ([12, 16, 53, 53, 62, 62, 62], [(143, 9, None), (95, 24, None)], 27),
]


@pytest.mark.usefixtures("slow")
@pytest.mark.parametrize(("order", "offers", "least"), CHOOSY)
def test_choices_of_bars_are_taken_up_cheapest_first(
    order: list[int], offers: list[Offer], least: int
) -> None:
    bars = [(length, float(price), limit) for length, price, limit in offers]
    assert least_cost(order, bars, 0) == pytest.approx(least)
    found = searched(order, offers)
    assert (cost(found, offers), found.cost_at_least, found.proven) == (least, least, True)


@pytest.mark.usefixtures("starved")
@pytest.mark.parametrize(("order", "offers", "least"), CHOOSY)
def test_a_choice_given_up_on_is_not_ruled_out(order: list[int], offers: list[Offer], least: int) -> None:
    found = searched(order, offers, steps=100)
    assert found.cost_at_least <= least
    assert_true(found, order, offers)
