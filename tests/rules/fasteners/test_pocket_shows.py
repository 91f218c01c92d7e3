"""pocket-shows: which faces are seen, what covers a pocket, and the face to bore instead."""

from __future__ import annotations

import pytest

from tests.rules.mending import assert_mends
from tests.support import judgement_of, told

RULE = "pocket-shows"

FRAME = """
plan "Frame" in inches
stock stile: actual 3/4 x 2 1/2 pine
outline frame: 24 across, 3 deep, 30 tall, on floor
part stile for each of left, right: stile, upright, facing front, as tall as frame, on floor
    flush with each of frame, flush with back of frame
part rail: stile, across, on edge, between stile.left and stile.right, flush with top of frame
    flush with back of frame
join rail to stile.*: pocket screws 1 1/4, 2 per end{side}
{more}
"""


def frame(side: str = ", from front", more: str = "") -> str:
    return FRAME.format(side=side, more=more)


def test_pockets_in_front() -> None:
    assert told(frame(), RULE) == [
        "warning rail @ from front: The pockets in rail are bored in the front face, which is seen when the piece "
        "is in use: nothing covers them. → Bore them from the other face (“from back”); where they are to be "
        "plugged, say so in the finish of that face (“plug pockets”)."
    ]
    assert assert_mends(frame(), RULE) == "from back"


@pytest.mark.parametrize("side", ["", ", from back", ", from below"])
def test_faces_that_are_not_seen(side: str) -> None:
    assert told(frame(side), RULE) == []


def test_what_covers_them() -> None:
    cover = "part cover: stile, across, on edge, 24 long, left at 0, front at 1 1/2, "
    assert told(frame(more=f"{cover}flush with top of frame"), RULE) == []
    assert len(told(frame(more=f"{cover}on floor"), RULE)) == 1


def test_the_inside_of_an_open_case_is_not_seen() -> None:
    text = """
plan "Case" in inches
stock board: actual 3/4 x 9 1/4 pine
stock rail: actual 3/4 x 2 1/2 pine
outline case: 24 across, 9 1/4 deep, 30 tall, on floor
part side for each of left, right: board, upright, facing side, as tall as case, on floor
    flush with each of case, flush with front of case
part rail: rail, across, on edge, between side.left and side.right, flush with top of case
    flush with {where} of case
join rail to side.*: pocket screws 1 1/4, 2 per end, from front
"""
    assert told(text.format(where="back"), RULE) == []
    assert len(told(text.format(where="front"), RULE)) == 1


def test_plugged_pockets_are_no_pockets() -> None:
    """Only where the finish with the plugs is on the face that they are bored in."""
    plugs = "plug pockets, sand 120, 150, 2 coats of enamel acrylic, dry 4 h"
    assert told(frame(more=f"finish painted: on rail, {plugs}"), RULE) == []
    assert told(frame(more=f"finish painted: on front of rail, {plugs}"), RULE) == []
    assert len(told(frame(more=f"finish painted: on back of rail, {plugs}"), RULE)) == 1
    assert len(told(frame(more=f"finish painted: on stile.*, {plugs}"), RULE)) == 1
    assert (
        len(told(frame(more="finish painted: on rail, sand 120, 150, 2 coats of enamel acrylic"), RULE)) == 1
    )


def test_an_accepted_one_stays_with_its_reason() -> None:
    text = frame(more='accept pocket-shows on rail because "the row of pockets is wanted"')
    accepted = judgement_of(text, only=RULE).waived
    assert [finding.waived_because for finding in accepted] == ["the row of pockets is wanted"]
    assert told(text, RULE) == []


def test_a_top_from_above() -> None:
    text = """
plan "Top" in inches
stock board: actual 3/4 x 5 1/2 pine
outline box: 20 across, 5 1/2 deep, 10 tall, on floor
part side for each of left, right: board, upright, facing side, as tall as box, on floor
    flush with each of box, flush with front of box
part top: board, across, flat, between side.left and side.right, flush with top of box, flush with front of box
join top to side.*: pocket screws 1 1/4, 2 per end, from {side}
"""
    assert len(told(text.format(side="above"), RULE)) == 1
    assert told(text.format(side="below"), RULE) == []


def test_a_side_at_the_wall() -> None:
    text = """
plan "Side" in inches
stock stile: actual 3/4 x 2 1/2 pine
outline frame: 3/4 across, 24 deep, 30 tall, on floor
part stile for each of front, back: stile, upright, facing side, as tall as frame, on floor
    flush with each of frame, flush with left of frame
part rail: stile, deep, on edge, between stile.front and stile.back, flush with top of frame
    flush with left of frame
join rail to stile.*: pocket screws 1 1/4, 2 per end, from {side}
room hall: indoors, wall left
"""
    assert told(text.format(side="left"), RULE) == []
    assert len(told(text.format(side="right"), RULE)) == 1
