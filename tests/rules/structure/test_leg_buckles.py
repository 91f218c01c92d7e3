"""leg-buckles: the published column in a piece, figures by hand, braces and remedies."""

from __future__ import annotations

import math

import pytest

from reviewer.findings import Severity
from reviewer.units import MM_PER_INCH, MPA_PER_PSI
from reviewer.workshop.columns import Column
from reviewer.workshop.utilisation import Utilisation
from tests.support import findings_of, judgement_of, review_of, told

RULE = "leg-buckles"


def buckling(text: str, part: str) -> Utilisation:
    (found,) = [each for each in review_of(text).utilisations if (each.part, each.kind) == (part, "buckling")]
    return found


def post(
    load: str, stock: str = "4x4 spruce-pine-fir, grade no.2", tall: str = "87.6", more: str = ""
) -> str:
    return f"""
        plan "Post" in inches
        stock post: {stock}
        stock rail: 2x4 spruce-pine-fir
        part post: post, upright, facing front, {tall} tall, on floor, left at 0, front at 0
        {more}
        load post: {load}
        """


def test_the_published_post() -> None:
    # HUD Residential Structural Design Guide example 5.6: 4x4 spruce-pine-fir No.2, 7.3 ft: F_c' 579 psi, and
    # 4,800 lb uses 68 % of it (checks W63 and W64 of the materials reference). 16 people of 300 lb.
    found = buckling(post("16 people standing"), "post")
    assert found.limit.amount / MPA_PER_PSI == pytest.approx(579, abs=2)
    own = review_of(post("16 people standing")).masses["post"].weight
    assert own < 100
    assert found.ratio == pytest.approx(0.68, abs=0.01)


def table(side: float = 12, stock: str = "red oak", load: str = "60 kg", more: str = "") -> str:
    return f"""
        plan "Plant stand" in millimetres
        stock stick: actual {side} x {side} {stock}
        stock top: birch plywood 18
        outline stand: 300 across, 300 deep, 1018 tall, on floor
        part leg: stick, upright, facing front, 1000 tall, on floor, in each corner of stand
        part top: top, flat, 300 across, 300 deep, on leg.front-left
            flush with left of stand, flush with front of stand
        join top to leg.*: glue pva, screws 4 x 50, 1 per joint, from above
        {more}
        load top: {load}
        """


def test_thin_legs_by_hand() -> None:
    # Red oak E 1.82 million psi; E_min 0.36 of it; F_cE = 0.822·E_min / (1000/12)²; F_c* = 14,300/6 psi.
    least = 0.36 * 1.82e6
    buckling_stress = 0.822 * least / (1000 / 12) ** 2
    crushing = 14300 / 6
    ratio = buckling_stress / crushing
    half = (1 + ratio) / 1.6
    by_hand = crushing * (half - math.sqrt(half**2 - ratio / 0.8))
    found = buckling(table(), "leg.front-left")
    assert found.limit.amount / MPA_PER_PSI == pytest.approx(by_hand, rel=1e-4)
    (finding,) = findings_of(table(), RULE)
    assert finding.weight is Severity.ERROR  # its stiffness governs, which was read
    assert finding.parts == ("leg.front-left", "leg.front-right", "leg.back-left", "leg.back-right")


def test_what_it_says() -> None:
    (said,) = told(table(), RULE)
    assert said.endswith(
        "each carry 150 N, are 12 mm thick, and nothing keeps them from bowing out over 1000 mm. 76.5 N is the "
        "most for red oak (the mean at failure over 6; common practice, no source), so that is 73.8 N too much: "
        "197 % of what it may bear. → Make leg.front-left, leg.front-right, leg.back-left and leg.back-right "
        "20.1 mm thick: then it is at 25 %, or join a rail or a panel to it at half of that height: then it is "
        "at 50 %."
    )


RAILS = """part rail for each of front, back: stick, across, flat, between leg.{at}-left and leg.{at}-right
            flush with {at} of leg.{at}-left, bottom 494 above floor"""
BRACED = "\n        ".join(
    f"part rail-{at}: stick, across, flat, between leg.{at}-left and leg.{at}-right, "
    f"flush with {at} of leg.{at}-left, bottom 494 above floor\n"
    f"        join rail-{at} to leg.{at}-left, leg.{at}-right: dowels 6 x 20, 1 per joint, glue pva"
    for at in ("front", "back")
)


def test_a_rail_half_way_up_does_what_was_told() -> None:
    found = buckling(table(more=BRACED), "leg.front-left")
    assert isinstance(found.by, Column)
    assert found.by.free == pytest.approx(494)
    assert [each.weight for each in findings_of(table(more=BRACED), RULE)] == []


def test_a_thicker_leg_does() -> None:
    assert told(table(side=20.1), RULE) == []


def test_slender_but_lightly_loaded_legs_only_warn() -> None:
    # 1000 / 12 = 83 times its thickness, over 50 (NDS 3.7.1.4).
    (finding,) = findings_of(table(load="20 kg"), RULE)
    assert finding.weight is Severity.WARNING
    (said,) = told(table(load="20 kg"), RULE)
    assert "That is 83.3 times the thickness, and 50 is the most" in said
    assert told(table(load="1 kg"), RULE) == []


def test_a_round_leg_counts_as_a_square_one_of_its_area() -> None:
    text = post("1 person standing", stock="round 1 red oak", tall="30")
    found = buckling(text, "post")
    assert isinstance(found.by, Column)
    assert found.by.area / MM_PER_INCH**2 == pytest.approx(math.pi / 4)


def test_a_tapered_leg_counts_with_its_thin_end() -> None:
    text = post("1 person standing", stock="actual 2 x 2 red oak", tall="30").replace(
        "front at 0", "front at 0, taper to 1 at bottom end", 1
    )
    found = buckling(text, "post")
    assert isinstance(found.by, Column)
    assert found.by.least / MM_PER_INCH == pytest.approx(1)


def test_the_side_of_a_bookcase_is_braced_by_its_shelves() -> None:
    from tests.rules.sound_pieces import BOOKCASE

    found = [each for each in review_of(BOOKCASE).utilisations if each.kind == "buckling"]
    assert found
    assert max(each.ratio for each in found) < 0.1


def test_a_back_that_misses_its_join_is_told_once() -> None:
    """What would keep it from bowing out is what it misses: one slip, one finding."""
    text = """
plan "Case" in inches
stock board: actual 3/4 x 11 1/4 poplar, 8 ft
stock ply: birch plywood 1/4, sheet 48 x 96
outline case: 32 across, 12 deep, 80 tall, on floor
part side for each of left, right: board, upright, facing side, as tall as case
    on floor, flush with each of case, flush with front of case
part shelf: board, across, flat, between side.left and side.right housed 1/4 each end, flush with front of case
    6 copies spread evenly up from bottom of case to top of case
part back: ply, facing front, from left of case to right of case, from bottom of case to top of case
    {place}
join shelf.* to side.*: dado 1/4 deep, glue pva
join back to side.*, shelf.*: nails 1, every 6
load shelf.*: books
"""
    rules = {each.rule for each in judgement_of(text.format(place="flush with back of case")).findings}
    assert "joint-out-of-reach" in rules
    assert "leg-buckles" not in rules
    assert told(text.format(place="flush with back of case"), RULE) != []  # by itself it is seen
    assert told(text.format(place="against back of side.left"), RULE) == []
