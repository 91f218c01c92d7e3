"""tenon-proportions: tenons, loose tenons and biscuits against the wood about them."""

from __future__ import annotations

import pytest
from joint_plans import frame

from reviewer.findings import Severity
from tests.rules.mending import assert_mends
from tests.support import findings_of, judgement_of, told

RULE = "tenon-proportions"


def tenon(thick: str, long: str = "1", **kinds: str) -> str:
    return frame(f"mortise and tenon {long} long {thick} thick, glue pva", housed=long, **kinds)


def test_too_thick() -> None:
    assert told(tenon("1/2"), RULE) == [
        "warning rail, leg.left, leg.right @ mortise and tenon 1 long 1/2 thick: The tenon of rail is 1/2 in "
        "thick on wood 3/4 in thick: that leaves shoulders of only 1/8 in each, too little to bear on. At most "
        "3/8 in is usual (Sizes of mortise-and-tenon joints in older texts, machine practice). → Make it about "
        "1/4 in thick, a third of the wood."
    ]
    assert assert_mends(tenon("1/2"), RULE) == "mortise and tenon 1 long 1/4 thick"


@pytest.mark.parametrize(
    ("thick", "flagged"),
    # A quarter to a half of 3/4 in: 3/16 to 3/8 in. A board let in whole has no shoulders.
    [("11/64", True), ("3/16", False), ("1/4", False), ("3/8", False), ("25/64", True), ("3/4", False)],
)
def test_a_quarter_to_a_half(thick: str, flagged: bool) -> None:
    assert bool(findings_of(tenon(thick), RULE)) is flagged


@pytest.mark.parametrize(
    ("thick", "weight"),
    # Legs 3/4 in thick, the tenon in the middle: half of what is left lies on each side.
    [("3/8", None), ("13/32", Severity.WARNING)],
)
def test_the_walls_beside_the_mortise(thick: str, weight: Severity | None) -> None:
    text = tenon(thick, rail="1 x 3 red oak", leg="3/4 x 3 red oak")
    text = text.replace("leg, upright,", "leg, upright, facing front,")
    found = findings_of(text, RULE)
    assert [each.weight for each in found] == ([weight] if weight is not None else [])
    if found:
        assert "leaves 0.172 in of leg.left and leg.right beside it" in told(text, RULE)[0]


def test_a_tenon_at_the_very_side_breaks_out() -> None:
    # The rail stands half an inch out of the leg: they share 1/4 in, less than the tenon is thick.
    text = tenon("3/8").replace("centred deep on leg.left", "front 1/2 in front of front of leg.left")
    (said,) = told(text, RULE)
    assert said.startswith("error leg.left, leg.right, rail @")
    assert "breaks out of the side of leg.left and leg.right" in said


@pytest.mark.parametrize(
    ("long", "flagged"),
    # Legs 2 in thick: 3/16 in must be left, or nothing; and 3/4 in is deep enough for any leg.
    [("1 13/16", False), ("1 27/32", True), ("2", False), ("3/4", False), ("11/16", True)],
)
def test_how_far_it_goes_in(long: str, flagged: bool) -> None:
    assert bool(findings_of(tenon("1/4", long), RULE)) is flagged


def test_a_thin_leg_asks_for_half_of_itself() -> None:
    # Half of 1 in is 1/2 in.
    thin = {"leg": "1 x 1 red oak"}
    assert findings_of(tenon("1/4", "1/2", **thin), RULE) == ()
    (said,) = told(tenon("1/4", "7/16", **thin), RULE)
    assert "goes only 7/16 in into leg.left and leg.right, 1 in thick there; 1/2 in is the least" in said


def test_a_thickness_that_is_not_stated_is_a_third() -> None:
    assert findings_of(frame("mortise and tenon 1 long, glue pva", housed="1"), RULE) == ()


@pytest.mark.parametrize(("thick", "flagged"), [("3/8", False), ("25/64", True)])
def test_loose_tenons(thick: str, flagged: bool) -> None:
    text = frame(f"loose tenons {thick} x 1 x 2, 1 per joint, glue pva")
    assert bool(findings_of(text, RULE)) is flagged


@pytest.mark.parametrize(("rail", "flagged"), [("1/2", False), ("0.47", False), ("0.45", True)])
def test_biscuits(rail: str, flagged: bool) -> None:
    text = frame("biscuits, 1 per joint, glue pva", rail=f"{rail} x 3 red oak")
    assert bool(findings_of(text, RULE)) is flagged


def test_a_waiver() -> None:
    text = frame(
        "mortise and tenon 1 long 1/2 thick",
        housed="1",
        more='accept tenon-proportions on rail because "as it was"',
    )
    judged = judgement_of(text, only=RULE)
    assert (judged.findings, len(judged.waived)) == ((), 1)
