"""No part loses its name to the language, and a reference means what it says."""

from __future__ import annotations

import pytest

from reviewer.language.tables import tables
from reviewer.setting_out.setting import set_out
from tests.language.reading_texts import told, understood

TITLE = """\
plan "Names" in millimetres
stock board: actual 20 x 100 pine
outline case-box: 500 across, 300 deep, 400 tall, on floor
"""

#: Words of the language but for the room's own faces, and others that makers call parts by.
OTHERS = (
    "shelf front.top side.left h m mm ft beach reach.each left-each top-2 x2 x3y äpfel regal_1 a.1 stock.part"
)
NAMES = sorted({*tables().words, *OTHERS.split()} - {"floor", "wall"})


@pytest.mark.parametrize("name", NAMES)
def test_part_of_any_name_is_declared_and_referred_to_everywhere(name: str) -> None:
    text = TITLE + (
        f"part {name}: board, across, flat, 200 long, left at 0, front at 0, on floor\n"
        f"part post: board, across, flat, 200 long, flush with left of {name}, flush with front of {name}\n"
        f"    bottom 50 above top of {name}\n"
        f"part second: board, across, flat, 200 long, against right of {name}, front 5 behind front of {name}\n"
        f"    flush with top of {name}\n"
        f"part third: board, deep, flat, between {name} and post up, rip 20, left at 0, front at 0, as long as {name}\n"
        f"part fourth: like {name}, centred across on {name}, under {name}\n"
        f"part fifth: like {name}, mirrored across about {name}\n"
        f"part sixth: board, across, flat, from left of {name} to right of {name}, on floor, left 1 inside {name}\n"
        "    front at 0\n"
        f"join {name} to post: screws 4 x 40\n"
        f"join post to {name}: screws 4 x 40\n"
        f"finish oiled: on post, {name}, third\n    1 coat of boiled linseed oil\n"
        f"load {name}, post: 10 kg\n"
        f"restrain {name} to wall: strap\n"
        f'accept open-joint on {name}, post because "wanted"\n'
    )
    plan = understood(text).plan
    assert plan is not None, told(text)
    assert plan.unknown == ()
    assert list(plan.parts) == [name, "post", "second", "third", "fourth", "fifth", "sixth"]
    assert {word for join in plan.joins for word in join.left} == {name, "post"}
    assert plan.finishes[0].on == ("post", name, "third")
    assert [load.on for load in plan.loads] == [(name, "post")]
    assert plan.waivers[0].on == (name, "post")
    solids = set_out(plan).solids
    assert solids["post"].low == (0, 0, 70)
    assert solids["second"].low == (200, 5, 0)
    assert solids["fifth"].low == (0, 0, 0)


@pytest.mark.parametrize("name", [name for name in NAMES if name != "edge"])
def test_part_of_any_name_is_stood_on(name: str) -> None:
    text = TITLE + (
        f"part {name}: board, across, flat, 200 long, left at 0, front at 0, on floor\n"
        f"part post: board, across, flat, 200 long, left at 0, front at 0, on {name}\n"
    )
    plan = understood(text).plan
    assert plan is not None, told(text)
    assert set_out(plan).solids["post"].low == (0, 0, 20)


def test_on_edge_always_says_how_a_board_is_turned() -> None:
    """A part called edge is met as: against top of edge."""
    text = TITLE + (
        "part edge: board, across, flat, 200 long, left at 0, front at 0, on floor\n"
        "part a: board, across, on edge, 200 long, left at 0, front at 0, against top of edge\n"
    )
    plan = understood(text).plan
    assert plan is not None
    assert set_out(plan).solids["a"].low == (0, 0, 20)


def test_flush_with_top_of_top() -> None:
    text = TITLE + (
        "part top: board, across, flat, 200 long, left at 0, front at 0, bottom 300 above floor\n"
        "part back: board, across, on edge, 200 long, left at 0, against back of top, flush with top of top\n"
    )
    plan = understood(text).plan
    assert plan is not None
    assert set_out(plan).solids["back"].low == (0, 100, 220)


def test_each_is_the_copys_own_word_only_where_it_stands_alone() -> None:
    text = TITLE + (
        "part left-beach: board, across, flat, 200 long, left at 0, front at 0, on floor\n"
        "part a for each of left, right: board, across, flat, 200 long, flush with each of case-box, front at 0\n"
        "    on left-beach\n"
        "part b for each of left, right: like a.each, on a.each\n"
    )
    plan = understood(text).plan
    assert plan is not None, told(text)
    solids = set_out(plan).solids
    assert solids["a.left"].low == (0, 0, 20)
    assert solids["a.right"].low == (300, 0, 20)
    assert solids["b.right"].low == (300, 0, 40)


NO_MEASURES = ["as", "at", "centred", "grain", "mirrored", "of"]
MEASURES = [word for word in tables().words if word not in NO_MEASURES]


@pytest.mark.parametrize("word", MEASURES)
def test_measure_of_nearly_any_name_is_used_everywhere(word: str) -> None:
    text = TITLE + (
        f"{word} = 100\n"
        f"part a: board, across, flat, {word} long, left at {word}, front {word} behind front of case-box\n"
        f"    bottom {word} + 1 above floor, cut {word}\n"
        f"part b: board, across, flat, from left of a to right of a less {word} - 100, front at {word} - 100\n"
        "    on a\n"
    )
    plan = understood(text).plan
    assert plan is not None, told(text)
    solids = set_out(plan).solids
    assert solids["a"].low == (100, 100, 101)
    assert solids["a"].length == 100
    assert solids["b"].low == (100, 0, 121)


@pytest.mark.parametrize("word", NO_MEASURES)
def test_words_that_no_measure_can_be_called_are_told(word: str) -> None:
    (one,) = told(
        f"{TITLE}part a: board, across, flat, 9 long, left at 0, front at 0, on floor\n{word} = 3\n"
    )
    assert one == (
        f"{word}: “{word}” could be read two ways in a plan, so no measure can be called that. → "
        f"Choose another name, such as {word}-1."
    )


NO_STOCKS = ["across", "deep", "flat", "foot", "ft", "in", "inches", "metre", "mm", "upright"]
STOCKS = [word for word in tables().words if word not in (*NO_STOCKS, "metres")]


@pytest.mark.parametrize("word", STOCKS)
def test_stock_of_nearly_any_name_is_cut_from(word: str) -> None:
    text = (
        f'plan "a" in millimetres\nstock {word}: actual 20 x 100 pine, 2400\n'
        f"part a: {word}, across, flat, 200 long, left at 0, front at 0, on floor\n"
        f"part b: across, {word}, flat, 200 long, left at 0, front at 0, on a\n"
        f"buy: 2 {word} 2400, 1 {word}\n"
    )
    plan = understood(text).plan
    assert plan is not None, told(text)
    assert [part.stock for part in plan.parts.values()] == [word, word]
    assert plan.basket is not None
    assert [line.length for line in plan.basket.lines] == [2400, 2400]


@pytest.mark.parametrize("word", NO_STOCKS)
def test_words_that_no_stock_can_be_called_are_told(word: str) -> None:
    found = told(f'plan "a" in millimetres\nstock {word}: actual 20 x 100 pine\n')
    assert found == [
        f"{word}: “{word}” could be read two ways in a plan, so no stock can be called that. → "
        f"Choose another name, such as {word}-stock."
    ]
