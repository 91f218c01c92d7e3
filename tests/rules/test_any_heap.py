"""Heaps of boards put together anyhow: the rules about structure, fasteners and movement finish on all of them."""

from __future__ import annotations

from hypothesis import given, settings
from hypothesis import strategies as st

from reviewer.judging import CRASHED, judge
from reviewer.rulebook import all_rules
from tests.support import review_of

TOPICS = ("structure", "fasteners", "movement")
RULES = {name: rule for name, rule in all_rules().items() if rule.topic in TOPICS}

PART = st.tuples(
    st.sampled_from(
        [
            "board, across, flat",
            "board, across, on edge",
            "board, deep, flat",
            "board, deep, on edge",
            "board, upright, facing front",
            "post, upright",
            "post, across, flat",
            "sheet, flat, 200 deep, 300 across",
            "sheet, facing front, 200 tall, 300 across",
        ]
    ),
    st.integers(1, 8),
    st.integers(0, 6),
    st.integers(0, 6),
    st.integers(0, 5),
)
HOW = st.sampled_from(
    [
        "glue pva",
        "screws 4 x 40, 2 per joint",
        "screws 5 x 120, every 60, from left, glue pva",
        "screws #8 x 40, from below, counterbored 30",
        "pocket screws 32, 2 per end, fine thread",
        "pocket screws 63, from above",
        "nails 2 x 20",
        "bolts 6 x 100, 2 per joint",
        "dowels 8 x 40, 2 per joint, glue pva",
        "dado 6 deep, glue pva",
        "half lap, screws 4 x 20, 2 per joint",
        "rabbet 9 deep, nails 1.5 x 25, every 100, from back",
        "mortise and tenon 30 long, glue pva",
        "brackets",
        "shelf pins",
        "butt, glue pva",
        "loose tenons 8 x 20 x 40, 2 per joint, glue pva",
        "wedges, glue pva",
        "clips, screws 4 x 16, 10 from edge",
        "bridle, glue pva",
        "dovetails, glue pva",
        "box joint",
        "tongue and groove",
        "splined mitre, glue pva",
        "mortise and tenon 30 long 6 thick, wedges",
        "screws 4 x 50, at 30 degrees, 20 from ends, every 60, stainless",
        'none because "it lies loose"',
    ]
)
LOAD = st.sampled_from(
    [
        "books",
        "2 people seated",
        "1 person standing",
        "30 kg",
        "20 kg per metre",
        "plants",
        "9 kg at 30 from left",
        "5 kg at 9 from front",
    ]
)


def heap(
    parts: list[tuple[str, int, int, int, int]], joins: list[tuple[int, str]], load: str | None, room: str
) -> str:
    """The plan of a heap of boards."""
    lines = [
        'plan "Heap" in millimetres',
        "stock board: actual 20 x 100 red oak",
        "stock post: actual 50 x 50 spruce-pine-fir, grade c24",
        "stock sheet: birch plywood 18",
    ]
    for number, (what, long, left, front, bottom) in enumerate(parts):
        size = "" if what.startswith("sheet") else f", {long * 100} long"
        lines.append(
            f"part p{number}: {what}{size}, left at {left * 50}, front at {front * 50}, bottom at {bottom * 50}"
        )
    names = [f"p{number}" for number in range(len(parts))]
    for first, how in joins:
        one = names[first % len(names)]
        others = [name for name in names if name != one]
        if others:
            lines.append(f"join {one} to {', '.join(others)}: {how}")
    if room.endswith("behind"):
        lines.append(f"join {names[0]} to wall: screws 6 x 80, 2 per joint")
    if load:
        lines.append(f"load {', '.join(names)}: {load}")
    lines.append(f"room hall: {room}")
    return "\n".join(lines)


#: What makes up a heap: its parts, its joins, a load and a room.
HEAPS = st.builds(
    heap,
    st.lists(PART, min_size=1, max_size=8),
    st.lists(st.tuples(st.integers(0, 7), HOW), max_size=4),
    st.one_of(st.none(), LOAD),
    st.sampled_from(["indoors", "outdoors", "indoors, wall behind", "indoors, unheated, wall left"]),
)


@settings(max_examples=120, deadline=None)
@given(text=HEAPS)
def test_no_rule_breaks_down(text: str) -> None:
    judged = judge(review_of(text), RULES)
    assert [finding.values for finding in judged.findings if finding.rule == CRASHED] == []
    assert set(judged.ran) == set(RULES)
