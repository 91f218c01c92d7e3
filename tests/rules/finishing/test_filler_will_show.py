"""Wood filler under what goes on it: by the compatibility table's rows for patches (common practice, no source)."""

from __future__ import annotations

import pytest

from tests.rules.finishing.finish_plans import board
from tests.support import told

RULE = "filler-will-show"


def test_it_is_told_whole() -> None:
    assert told(board("fill holes with wood filler", "1 coat of stain gel, dry 24 h"), RULE) == [
        "warning sill @ fill holes with wood filler: On sill, the coat of stain gel goes over holes filled with wood "
        "filler, and filler does not take colour like the wood around it: each patch stays a pale spot (common "
        "practice, no source). → Fill the holes after the colour is on, with filler tinted to match it; try both on "
        "a test board."
    ]


@pytest.mark.parametrize(
    ("steps", "shows"),
    [
        (["fill holes", "1 coat of stain oil"], True),
        (["fill holes", "1 coat of oil danish"], True),
        (["fill holes", "2 coats of polyurethane waterborne"], True),
        (["1 coat of stain gel", "fill holes with wood filler", "2 coats of polyurethane oil"], True),
        (["1 coat of stain gel", "fill holes with tinted filler", "2 coats of polyurethane oil"], False),
        (["fill holes with wood filler", "1 coat of primer acrylic", "2 coats of enamel acrylic"], False),
        (["fill holes with wood filler", "1 coat of shellac dewaxed", "2 coats of enamel acrylic"], False),
        (["plug pockets", "1 coat of stain gel"], False),
        (["2 coats of polyurethane oil", "fill holes with wood filler"], False),  # nothing goes over it
    ],
)
def test_by_what_goes_over_it(steps: list[str], shows: bool) -> None:
    assert bool(told(board(*steps), RULE)) is shows
