"""Ends, edges, rows and pilot holes. Diameters: NDS 2018 Tables 12.5.1 (least), joints reference 2.8 and 2.9."""

from __future__ import annotations

import pytest

from reviewer.findings import Severity
from tests.rules.everyday_pieces import EVERYDAY
from tests.rules.sound_pieces import SOUND_PIECES
from tests.support import findings_of, told

SLAT = """
plan "Slats" in inches
stock strip: actual {thick} x 2 1/2 {wood}
part rail: strip, deep, on edge, 12 long, on floor, left at 0, front at 0
part slat: strip, across, flat, 20 long, on rail, left at {left}, front at 2
join slat to rail: {how}
"""


def slat(left: str, how: str, wood: str = "pine", thick: str = "3/4") -> str:
    return SLAT.format(left=left, how=how, wood=wood, thick=thick)


@pytest.mark.parametrize(
    ("left", "how", "flagged"),
    [
        # The rail is 3/4 thick, so its screws stand 3/8 in from the slat's end, less what the slat is set in.
        # A #8 in a bored hole asks for 2 x 0.164 = 0.328 in.
        ("0.07", "screws #8 x 1 1/2, 2 per joint, from above", False),
        ("0.1", "screws #8 x 1 1/2, 2 per joint, from above", False),
        ("0.2", "screws #8 x 1 1/2, 2 per joint, from above", True),
        # With no hole 3.5 x 0.164 = 0.574 in.
        ("0", "screws #8 x 1 1/2, 2 per joint, from above, no pilot holes", True),
        ("-1/4", "screws #8 x 1 1/2, 2 per joint, from above, no pilot holes", False),
        # Nails go in without: a 4d nail of 0.0985 in asks for 0.345 in.
        ("0", "nails 1 1/2, 2 per joint, from above", False),
        ("1/8", "nails 1 1/2, 2 per joint, from above", True),
        ("1/8", "nails 1 1/2, 2 per joint, from above, pilot holes", False),
    ],
)
def test_distance_to_the_end_by_diameter(left: str, how: str, flagged: bool) -> None:
    # What is set in by x leaves half of (3/4 - x) from the middle of the joint to the slat's end.
    left = left.replace("-", "0 - ")
    assert bool(findings_of(slat(left, how), "splits-end")) is flagged


def test_hardwood_asks_for_more_where_no_hole_is_bored() -> None:
    how = "nails 1 1/2, 2 per joint, from above"
    assert findings_of(slat("0", how), "splits-end") == ()
    # 1.5 x 3.5 x 0.0985 in = 0.517 in.
    (says,) = told(slat("0", how, wood="red oak"), "splits-end")
    assert "only 3/8 in from the left end of slat; 0.517 in is the least" in says
    assert says.endswith("Bore pilot holes: then 0.197 in is enough.")


def test_plywood_does_not_split_at_its_end() -> None:
    text = """
        plan "Sheet" in inches
        stock ply: birch plywood 3/4
        part rail: ply, facing side, 3 tall, 12 deep, on floor, left at 0, front at 0
        part top: ply, flat, 20 across, 12 deep, on rail, left at 1/4, front at 0
        join top to rail: screws #8 x 2, every 4, from above, no pilot holes
        """
    assert findings_of(text, "splits-end") == ()


def test_a_row_along_the_grain() -> None:
    text = """
        plan "Row" in inches
        stock board: actual 3/4 x 2 1/2 pine
        part low: board, across, flat, 20 long, on floor, left at 0, front at 0
        part high: board, across, flat, 20 long, on low, left at 0, front at 0
        join high to low: screws #8 x 1 1/4, every {apart}, from above
        """
    # 3 x 0.164 = 0.492 in.
    assert findings_of(text.format(apart="0.5"), "splits-end") == ()
    (says,) = told(text.format(apart="0.4"), "splits-end")
    assert "stand as little as 0.4 in from each other along the grain; 0.492 in is the least" in says
    # 0.4 in is 3 diameters of a #5, which is 1/8 in thick.
    assert says.endswith("Use #5 screws here: for them 3/8 in is enough.")


@pytest.mark.parametrize(
    ("thick", "how", "flagged"),
    [
        # Into the middle of an edge: 1.5 x 0.164 = 0.246 in of a #8.
        ("1/2", "screws #8 x 1 1/4, 2 per joint, from above", False),
        ("0.46", "screws #8 x 1 1/4, 2 per joint, from above", True),
        # Everyday: a #8 in the edge of 3/4 in stock, 2.3 diameters (joints reference, 3.1).
        ("3/4", "screws #8 x 1 1/2, 2 per joint, from above", False),
    ],
)
def test_distance_to_the_edge_by_diameter(thick: str, how: str, flagged: bool) -> None:
    found = findings_of(slat("0", how, thick=thick), "splits-edge")
    assert bool(found) is flagged


def test_a_thinner_screw_that_is_named_is_thin_enough() -> None:
    (says,) = told(slat("0", "screws #10 x 1 1/4, 2 per joint, from above", thick="1/2"), "splits-edge")
    assert says.endswith("Use #8 screws here: for them 0.246 in is enough.")


@pytest.mark.parametrize(("wood", "flagged"), [("pine", False), ("red oak", True), ("hard maple", True)])
def test_hard_wood_asks_for_a_pilot_hole(wood: str, flagged: bool) -> None:
    how = "screws #8 x 1 1/2, 2 per joint, from above{}"
    assert bool(findings_of(slat("0", how.format(", no pilot holes"), wood=wood), "no-pilot")) is flagged
    assert findings_of(slat("0", how.format(""), wood=wood), "no-pilot") == ()


@pytest.mark.parametrize("rule", ["splits-end", "splits-edge", "no-pilot"])
@pytest.mark.parametrize("piece", [*SOUND_PIECES, *EVERYDAY])
def test_everyday_pieces_are_left_alone(piece: str, rule: str) -> None:
    found = findings_of({**SOUND_PIECES, **EVERYDAY}[piece], rule)
    assert all(finding.weight is Severity.NOTE for finding in found)
