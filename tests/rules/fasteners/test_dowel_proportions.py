"""dowel-proportions: thickness and length of dowels against the wood about them."""

from __future__ import annotations

import pytest
from joint_plans import case, frame

from reviewer.findings import Severity
from tests.rules.mending import assert_mends
from tests.support import findings_of, judgement_of, told

RULE = "dowel-proportions"


def test_too_thick() -> None:
    assert told(case("dowels 1/2 x 1, 3 per joint, glue pva"), RULE) == [
        "warning shelf @ dowels 1/2 x 1: Dowels 1/2 in thick in shelf, 3/4 in thick, leave only 1/8 in of wood on "
        "each side, and it splits. At most 3/8 in is usual there (Tips for dowel joinery; Dowel sizing). → Take "
        "dowels between 1/4 in and 3/8 in thick."
    ]


@pytest.mark.parametrize(
    ("thick", "weight"),
    # A fifth of 3/4 in is 0.15 in, a half 3/8 in.
    [("9/64", Severity.NOTE), ("5/32", None), ("3/8", None), ("25/64", Severity.WARNING)],
)
def test_a_fifth_to_a_half(thick: str, weight: Severity | None) -> None:
    found = findings_of(frame(f"dowels {thick} x 1 1/2, 2 per joint, glue pva"), RULE)
    assert [each.weight for each in found] == ([weight] if weight is not None else [])


@pytest.mark.parametrize(
    ("long", "weight"),
    # A side 3/4 in thick has 3/4 - 1/8 - 1/16 = 9/16 in of room for a dowel: half of 1 1/8 in.
    [("1 1/8", None), ("1 1/4", Severity.NOTE), ("2", Severity.NOTE)],
)
def test_half_in_each_part(long: str, weight: Severity | None) -> None:
    found = findings_of(case(f"dowels 5/16 x {long}, 3 per joint, glue pva"), RULE)
    assert [each.weight for each in found] == ([weight] if weight is not None else [])


def test_the_note_shares_the_dowel_out() -> None:
    assert told(case("dowels 3/8 x 1 1/2, 3 per joint, glue pva"), RULE) == [
        "note side.left, side.right, shelf @ dowels 3/8 x 1 1/2: Half of a dowel, 3/4 in, and a hole a little "
        "deeper (Tips for dowel joinery) make 13/16 in, which leaves less than 1/8 in of side.left and "
        "side.right, 3/4 in thick there. → Let 1/2 in go into side.left and side.right and 1 in into "
        "shelf: holes 9/16 in and 1 1/16 in deep."
    ]


FACES = """
    plan "Doubled" in inches
    stock board: actual 3/4 x 5 1/2 pine
    part low: board, across, flat, 24 long, left at 0, front at 0, on floor
    part high: board, across, flat, 24 long, left at 0, front at 0, on low
    join high to low: dowels 3/8 x {long}, 3 per joint, glue pva
    """


def test_a_dowel_longer_than_both_parts_have_room_for() -> None:
    # Twice 9/16 in.
    assert findings_of(FACES.format(long="1 1/8"), RULE) == ()
    (said,) = told(FACES.format(long="1 1/2"), RULE)
    assert said.startswith("error high, low @")
    assert "there is room for 1 1/8 in, so they come out or hold the joint open" in said
    assert assert_mends(FACES.format(long="1 1/2"), RULE) == "dowels 3/8 x 1 1/8"


@pytest.mark.parametrize(("long", "flagged"), [("1/2", False), ("7/16", True)])
def test_a_short_dowel(long: str, flagged: bool) -> None:
    assert bool(findings_of(frame(f"dowels 1/4 x {long}, 2 per joint, glue pva"), RULE)) is flagged


def test_a_thin_side_has_no_room_for_a_thick_dowel() -> None:
    # 1/2 - 1/8 - 1/16 = 5/16 in of room, and 3/8 in is one diameter.
    text = frame("dowels 3/8 x 1 1/2, 2 per joint, glue pva", leg="1/2 x 3 red oak")
    (said,) = told(text.replace("leg, upright,", "leg, upright, facing side,"), RULE)
    assert "Dowels reach only 5/16 in into leg.left and leg.right, 1/2 in thick there" in said


def test_a_waiver() -> None:
    text = case(
        "dowels 1/2 x 1, 3 per joint", more='accept dowel-proportions on shelf because "they only line it up"'
    )
    judged = judgement_of(text, only=RULE)
    assert (judged.findings, len(judged.waived)) == ((), 1)
