"""What is left of a board over its supports: by hand, and no cut makes an end stronger."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from reviewer.mechanics.eurocode import notch_share
from reviewer.mechanics.pocket_screws import POCKET_RADIUS, SLANT_DEGREES
from reviewer.mechanics.strength import compression_notch_depth, tension_notch_share
from reviewer.units import MM_PER_INCH
from reviewer.workshop.end_cuts import EndCut
from reviewer.workshop.member import Member
from reviewer.workshop.stressing import Stressed
from tests.support import review_of, told

INCH2 = MM_PER_INCH**2


def joist(cut: str, load: str = "900 lb", wood: str = "spruce-pine-fir, grade no.2", low: str = "30") -> str:
    return f"""
        plan "Joist" in inches
        stock joist: actual 1 1/2 x 7 1/4 {wood}
        stock post: actual 3 1/2 x 3 1/2 spruce-pine-fir
        outline case: 60 across, 3 1/2 deep, 40 tall, on floor
        part post for each of left, right: post, upright, 30 tall, on floor, front at 0, flush with each of case
        part joist: joist, across, on edge, from left of case to right of case, front at 0
            bottom {low} above floor{cut}
        join joist to post.*: screws #10 x 4, 2 per joint, from above
        load joist: {load}
        room hall: indoors
        """


NOTCHED = (
    ", notch 3 1/2 across by 1 3/4 tall at left bottom, notch 3 1/2 across by 1 3/4 tall at right bottom"
)


def member_of(text: str, name: str) -> Member:
    return review_of(text).carrying.members[name]


def shear_of(text: str, name: str) -> tuple[float, Stressed]:
    (found,) = [each for each in review_of(text).utilisations if (each.part, each.kind) == (name, "shear")]
    assert isinstance(found.by, Stressed)
    return found.value.amount, found.by


def test_a_whole_joist_has_no_cut_ends() -> None:
    assert member_of(joist(""), "joist").ends == ()


def test_a_notched_joist_by_hand() -> None:
    member = member_of(joist(NOTCHED, low="28 1/4"), "joist")
    assert [each.end for each in member.ends] == [0, 1]
    for cut in member.ends:
        assert cut.area / INCH2 == pytest.approx(1.5 * 5.5)
        assert cut.left / MM_PER_INCH == pytest.approx(5.5)
        assert cut.why == "notch"
        assert cut.share(by_class=False) == pytest.approx((5.5 / 7.25) ** 2)
    stress, by = shear_of(joist(NOTCHED, low="28 1/4"), "joist")
    # The whole force of the support, not that a height away from it, over (d_n / d)² of the section.
    assert stress == pytest.approx(1.5 * abs(by.effect) / (1.5 * 5.5 * INCH2) / (5.5 / 7.25) ** 2)


def test_the_sides_of_a_notch_clamp_nothing() -> None:
    """A joist sits in its notch with two faces: still one support, so its post is pressed by half the load."""
    member = member_of(joist(NOTCHED, low="28 1/4"), "joist")
    assert len(member.supports) == 2
    assert all(not hasattr(each, "moment") or each.moment == 0 for each in member.standing.reactions)  # type: ignore[union-attr]


def test_a_notch_above_costs_no_more_than_its_area() -> None:
    cut = ", notch 3 1/2 across by 1 3/4 tall at left top, notch 3 1/2 across by 1 3/4 tall at right top"
    ends = member_of(joist(cut), "joist").ends
    assert [each.share(by_class=False) for each in ends] == [1.0, 1.0]
    # It ends at the inner edge of the support: the whole depth bears (d - (d - d_n)·0).
    assert [each.area / INCH2 for each in ends] == pytest.approx([1.5 * 7.25] * 2)


def test_a_notch_that_is_too_deep_is_told_with_what_was_tried() -> None:
    deep = NOTCHED.replace("1 3/4", "3 1/2")
    (said,) = told(joist(deep, load="500 lb", low="26 1/2"), "overstressed")
    assert "where the notch weakens it over its support, counting that such an end splits" in said
    assert "Cut the notch " in said
    assert told(joist("", load="500 lb"), "overstressed") == []


RAIL = """
    plan "Rail" in inches
    stock leg: actual 2 x 2 red oak
    stock rail: actual 3/4 x 3 red oak
    outline frame: 40 across, 2 deep, 17 tall, on floor
    part leg for each of left, right: leg, upright, 17 tall, on floor, front at 0, flush with each of frame
    part rail: rail, across, on edge, between leg.left and leg.right, housed 1 each end
        centred deep on leg.left, flush with top of frame
    join rail to leg.*: {joint}
    load rail: 100 lb
    room hall: indoors
    """


@pytest.mark.parametrize(
    ("joint", "thick"),
    [
        ("mortise and tenon 1 long, glue pva", 0.75 / 3),
        ("mortise and tenon 1 long 3/8 thick, glue pva", 0.375),
    ],
)
def test_a_tenon_bears_what_its_section_does(joint: str, thick: float) -> None:
    ends = member_of(RAIL.format(joint=joint), "rail").ends
    assert [each.why for each in ends] == ["tenon", "tenon"]
    assert [each.area / INCH2 for each in ends] == pytest.approx([thick * 3] * 2, rel=2e-4)
    assert not any(each.notched for each in ends)


def test_a_tenon_of_a_flat_board_is_notched_on_both_sides() -> None:
    text = RAIL.format(joint="mortise and tenon 1 long, glue pva").replace("on edge", "flat")
    text = text.replace("3/4 x 3", "3/4 x 1 1/2")
    for cut in member_of(text, "rail").ends:
        assert cut.area / INCH2 == pytest.approx(1.5 * 0.25, rel=2e-4)
        assert cut.left / MM_PER_INCH == pytest.approx(
            0.5, rel=2e-4
        )  # the shoulder below; the wood above goes on


def test_pockets_take_their_width_and_depth() -> None:
    text = RAIL.format(joint="pocket screws 1 1/4, 2 per end").replace(", housed 1 each end", "")
    ends = member_of(text, "rail").ends
    assert [each.why for each in ends] == ["pockets for screws"] * 2
    slant = math.radians(SLANT_DEGREES)
    # 3/4 in wood, head 5/8 in back along the axis: the pocket is a whole bore there.
    deep = 0.75 / 2 * MM_PER_INCH - 0.625 * MM_PER_INCH * math.sin(slant) + POCKET_RADIUS * math.cos(slant)
    taken = 2 * 2 * POCKET_RADIUS * min(deep, 2 * POCKET_RADIUS / math.cos(slant))
    assert [each.area for each in ends] == pytest.approx([0.75 * 3 * INCH2 - taken] * 2)


def test_pockets_along_an_edge_weaken_a_rail_in_its_span() -> None:
    text = (
        RAIL.format(joint="dowels 3/8 x 2, 2 per joint, glue pva").replace(", housed 1 each end", "")
        + """
    stock board: actual 3/4 x 6 red oak
    part top: board, across, flat, on frame, from left of frame to right of frame, centred deep on leg.left
    join rail to top: pocket screws 1 1/4, every 8
    """
    )
    member = member_of(text, "rail")
    assert {each.why for each in member.sections} == {"pockets for screws"}
    assert 1 < member.weakness < 1.1
    assert member.ends == ()


depths = st.floats(20, 300)
shares = st.floats(0.1, 0.999)


@given(depth=depths, one=shares, two=shares, corner=st.floats(0, 200))
def test_a_deeper_notch_never_bears_more(depth: float, one: float, two: float, corner: float) -> None:
    less, more = sorted((one, two))
    for by_class in (False, True):
        deep, slight = (
            EndCut(0, 0.0, share * depth, depth, share * depth, corner, "notch") for share in (less, more)
        )
        assert deep.area * deep.share(by_class) <= slight.area * slight.share(by_class) * (1 + 1e-9)
        assert 0 < deep.share(by_class) <= 1


@given(depth=depths, share=shares, one=st.floats(0, 300), two=st.floats(0, 300))
def test_a_longer_notch_never_bears_more(depth: float, share: float, one: float, two: float) -> None:
    near, far = sorted((one, two))
    left = depth * share
    assert notch_share(depth, left, far) <= notch_share(depth, left, near)
    assert (
        left - 1e-9
        <= compression_notch_depth(depth, left, far)
        <= compression_notch_depth(depth, left, near)
        <= depth
    )
    assert tension_notch_share(depth, left) == pytest.approx(share**2)
    assert notch_share(depth, left, near, slope=3.0) >= notch_share(depth, left, near)
