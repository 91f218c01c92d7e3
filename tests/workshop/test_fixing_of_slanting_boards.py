"""A slanting board is not judged for movement by the room that its slant takes up."""

from tests.support import findings_of

GATE = """
plan "Garden gate" in millimetres
stock board: actual 22 x 120 western red cedar
outline gate: 1000 across, 44 deep, 1500 tall, on floor
part slat: board, upright, facing front, as tall as gate, on floor, flush with front of gate
    8 copies side by side across, gap to fit, from left of gate to right of gate
part brace: board, {run}, from left of gate to right of gate, against back of slat.1
join slat.* to brace: screws 4 x 40, 2 per joint, from front
room garden: outdoors
"""


def test_brace_is_not_held_across_more_than_its_width() -> None:
    rising = "facing front, rising towards right, ends cut pointed, from bottom of gate to top of gate"
    assert findings_of(GATE.format(run=rising), "movement-locked") == ()


def test_a_wide_panel_in_its_place_is() -> None:
    level = "across, on edge, bottom 100 above floor"
    wide = GATE.replace(
        "stock board: actual 22 x 120", "stock panel: actual 22 x 400 beech\nstock board: actual 22 x 120"
    )
    text = wide.format(run=level).replace("part brace: board", "part brace: panel")
    assert len(findings_of(text, "movement-locked")) == 1
