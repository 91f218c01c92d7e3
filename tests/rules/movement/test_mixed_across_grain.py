"""mixed-across-grain: broad faces glued together, by hand, and which rule tells of which glue."""

from __future__ import annotations

import pytest

from reviewer.findings import Severity
from reviewer.units import MM_PER_INCH
from tests.support import findings_of, told

RULE = "mixed-across-grain"


def slab(
    wood: str = "red oak",
    wide: str = "14",
    how: str = "glue pva",
    core: str = "ply, flat, 24 across, {wide} deep",
    more: str = "",
) -> str:
    """A board glued face to face onto a sheet."""
    return f"""
        plan "Tray top" in inches
        stock ply: birch plywood 1/2
        stock crossed: actual 1/2 x 24 red oak
        stock board: actual 3/4 x {wide} {wood}
        part core: {core.format(wide=wide)}, on floor, left at 0, front at 0
        part face: board, across, flat, 24 long, on core, left at 0, front at 0
        join face to core: {how}
        {more}
        """


CROSSED = "crossed, deep, flat, {wide} long"


def test_a_board_on_plywood() -> None:
    # 14 · 0.00369 · 4 = 0.2066 in, half of it 0.103.
    assert told(slab(), RULE) == [
        "warning face, core @ glue pva: face is glued face to face to core, hardwood plywood, which lies still. Over "
        "14 in across the grain red oak moves 0.207 in over a year (from 6 % to 10 % of moisture); glue across the "
        "grain gives 1/32 in (common practice, no source), so 0.175 in too little: it cups, splits or lets go. → Glue "
        "only a strip of 4 in along the middle and hold both edges with screws in slotted holes: each edge then moves "
        "0.103 in, and slots give 1/4 in."
    ]


def test_two_boards_crossed_are_told_once_by_the_wider() -> None:
    # The crossed board is 24 in wide: 24 · 0.00369 · 4 = 0.3542 in.
    (said,) = told(slab(core=CROSSED), RULE)
    assert said.startswith(
        "warning core, face @ glue pva: core is glued face to face to face whose grain runs across it. Over 24 in "
        "across the grain red oak moves 0.354 in"
    )
    assert "→ Let the grain of both run the same way, so that they move as one. Or: glue only a strip" in said


def test_a_board_too_wide_for_slots() -> None:
    # 40 · 0.00431 · 4 = 0.69 in of beech: 0.345 at each edge. 40 · 0.5 / 0.6896 = 29 in.
    (said,) = told(slab(wood="american beech", wide="40"), RULE)
    assert "screw it on in boards up to 29 in wide with gaps between them" in said


def test_the_working_can_be_done_again_by_hand() -> None:
    (finding,) = findings_of(slab(), RULE)
    assert finding.working is not None
    width, per_percent, dry, humid = (f.value.amount for f in finding.working.figures)  # type: ignore[union-attr]
    assert (width / MM_PER_INCH, per_percent, dry, humid) == (pytest.approx(14), 0.00369, 6, 10)
    assert finding.working.result is not None
    assert finding.working.result.value.amount == pytest.approx(width * per_percent * 4)  # type: ignore[union-attr]
    outdoors = findings_of(slab(more="room porch: outdoors"), RULE)[0]
    # 14 · 8 / (30·100/8.6 - 30 + 8)
    assert outdoors.values["change"].amount / MM_PER_INCH == pytest.approx(14 * 8 / (3000 / 8.6 - 22))  # type: ignore[union-attr]


@pytest.mark.parametrize(
    ("text", "weight"),
    [
        (slab(wide="4"), None),
        (slab(wide="4 1/8"), Severity.WARNING),  # 0.061 in, over by 0.03
        (slab(wood="red oak, quarter sawn", wide="6"), Severity.NOTE),  # 6 · 0.00158 · 4 = 0.038 in
        (slab(how="screws #6 x 1, 4 per joint, from below, slotted"), None),
        (slab(wood="hard maple", core="board, across, flat, 24 long"), None),  # alike
        (slab(wood="birch plywood 3/4").replace("actual 3/4 x 14 birch plywood 3/4", "birch plywood 3/4").replace("face: board, across, flat, 24 long", "face: ply, flat, 24 across, 14 deep"), None),
    ],
)  # fmt: skip
def test_what_is_left_alone(text: str, weight: Severity | None) -> None:
    assert [finding.weight for finding in findings_of(text, RULE)] == ([] if weight is None else [weight])


def test_boards_glued_edge_to_edge_count_as_one() -> None:
    # Five boards of 3 in on one sheet: 15 · 0.00369 · 4 = 0.2214 in.
    text = """
        plan "Tray top" in inches
        stock ply: birch plywood 1/2
        stock board: actual 3/4 x 5 red oak
        part core: ply, flat, 24 across, 15 deep, on floor, left at 0, front at 0
        part face: board, across, flat, 24 long, on core, left at 0, front at 0, 3 copies side by side deep
        join face.* to face.*: glue pva
        join face.* to core: glue pva
        """
    (finding,) = findings_of(text, RULE)
    assert finding.parts == ("face.1", "face.2", "face.3", "core")
    assert finding.values["change"].amount / MM_PER_INCH == pytest.approx(15 * 0.00369 * 4)  # type: ignore[union-attr]
    assert findings_of(text, "movement-locked") == ()


def test_one_fault_is_told_once() -> None:
    for text in (slab(), slab(core=CROSSED)):
        assert findings_of(text, "movement-locked") == ()
        assert findings_of(text, "yard-wet") == ()
    # A batten, 2 1/2 in wide, is movement-locked's.
    batten = slab(core="crossed, deep, flat, 14 long, rip 2 1/2")
    assert findings_of(batten, RULE) == ()
    assert len(findings_of(batten, "movement-locked")) == 1
    # Screws in round holes besides the glue are a fault of their own.
    both = slab(wide="30", how="glue pva, screws #6 x 1, every 3, from below")
    assert len(findings_of(both, RULE)) == 1
    assert len(findings_of(both, "movement-locked")) == 1
