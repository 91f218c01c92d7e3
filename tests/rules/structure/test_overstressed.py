"""overstressed: figures by hand, what makes it an error, net sections, and remedies that are tried."""

from __future__ import annotations

import pytest

from reviewer.findings import Severity
from reviewer.units import MM_PER_INCH, MPA_PER_PSI, NEWTON_PER_POUND, Value
from reviewer.workshop.utilisation import Utilisation
from tests.support import findings_of, judgement_of, review_of, told

RULE = "overstressed"


def seat(
    width: float = 40,
    stock: str = "2x8 spruce-pine-fir, grade no.2",
    load: str = "2 people standing",
    cut: str = "",
    more: str = "",
) -> str:
    """A plank across two legs 1 1/2 in thick: it spans from middle to middle of them."""
    return f"""
        plan "Seat" in inches
        stock plank: {stock}
        stock leg: 2x8 spruce-pine-fir, grade no.2
        outline base: {width} across, 7 1/4 deep, 20 tall, on floor
        part leg for each of left, right: leg, upright, facing side, 16 tall, on floor
            flush with each of base, flush with front of base
        part seat: plank, across, flat, on leg.left, from left of base to right of base
            flush with front of base{cut}
        join seat to leg.*: screws #8 x 3, 3 per joint, from above
        load seat: {load}
        {more}
        """


def of(text: str, part: str, kind: str) -> Utilisation:
    (found,) = [each for each in review_of(text).utilisations if (each.part, each.kind) == (part, kind)]
    return found


def psi(found: Utilisation) -> tuple[float, float]:
    return found.value.amount / MPA_PER_PSI, found.limit.amount / MPA_PER_PSI


def own_weight(text: str, part: str) -> float:
    """lb."""
    return review_of(text).masses[part].weight / NEWTON_PER_POUND


# ---------------------------------------------------------------- figures by hand


def test_bending_of_a_seat_by_hand() -> None:
    # Two people of 300 lb in the middle of 38 1/2 in; S = 7.25·1.5²/6 = 2.719 in³. The ends past the legs'
    # middles, 3/4 in each, take off next to nothing.
    text = seat()
    moment = 600 * 38.5 / 4 + own_weight(text, "seat") * 38.5 / 8
    stress, most = psi(of(text, "seat", "bending"))
    assert stress == pytest.approx(moment / 2.71875, rel=0.001)
    # 875 psi · C_F 1.2 (8 in) · C_fu 1.15 · C_D 1.0: NDS 2018 Supplement Table 4A.
    assert most == pytest.approx(875 * 1.2 * 1.15, rel=1e-6)


def test_loads_that_stay_count_for_more() -> None:
    _, brief = psi(of(seat(), "seat", "bending"))
    _, lasting = psi(of(seat(load="600 lb"), "seat", "bending"))
    assert lasting / brief == pytest.approx(0.9)  # NDS load duration, permanent


def test_shear_by_hand() -> None:
    # 1.5·V / A with V at 1 1/2 in from the middle of a leg: half of 600 lb and of the plank, less 1 1/2 in of it.
    text = seat()
    own = own_weight(text, "seat")
    shear = 300 + own / 40 * (20 - 0.75 - 1.5)
    stress, most = psi(of(text, "seat", "shear"))
    assert stress == pytest.approx(1.5 * shear / (7.25 * 1.5), rel=0.001)
    assert most == pytest.approx(135)


def test_bearing_by_hand() -> None:
    # Half of the load and of the plank on 1 1/2 x 7 1/4 in of each leg; F_c-perp 425 psi, with no C_D.
    text = seat()
    found = [each for each in review_of(text).utilisations if (each.part, each.kind) == ("seat", "bearing")]
    assert len(found) == 2
    stress, most = psi(found[0])
    assert stress == pytest.approx((600 + own_weight(text, "seat")) / 2 / (1.5 * 7.25), rel=0.001)
    assert most == pytest.approx(425)


def test_what_it_says() -> None:
    assert told(seat(), RULE) == [
        "error seat @ 2 people standing: seat is bent to 2136 psi. spruce-pine-fir No.2 may bear 1207 psi in "
        "bending (NDS 2018), so that is 929 psi too much: 177 % of what it may bear. Bending governs; shear is "
        "at 31 % and bearing is at 7 %. It also sags 0.253 in where 0.16 in is the limit; what is told next "
        "is enough for both. → Use 4x8: then it is at 33 %, or put a support under the middle of "
        "the span: then it is at 72 %, or bring the supports to 21 3/4 in from each other: then it is at 100 %."
    ]


def test_a_seat_on_thin_stubs_is_crushed() -> None:
    # Four stubs of 3/4 x 3/4 in bear 2400 lb and a little: 2400 / 4 / 0.5625 = 1067 psi, over 425.
    text = """
        plan "Stubs" in inches
        stock plank: actual 3 1/2 x 11 1/4 spruce-pine-fir, grade no.2
        stock stub: actual 3/4 x 3/4 red oak
        outline base: 14 across, 11 1/4 deep, 10 tall, on floor
        part stub: stub, upright, facing front, 4 tall, on floor, in each corner of base
        part seat: plank, across, flat, on stub.front-left, from left of base to right of base
            flush with front of base
        join seat to stub.*: screws #8 x 3, 1 per joint, from above
        load seat: 8 people standing
        """
    (said,) = told(text, RULE)
    assert said.startswith(
        "error seat @ 8 people standing: seat is pressed across its grain to 1071 psi where "
    )
    assert "spruce-pine-fir No.2 may bear 425 psi in bearing (NDS 2018)" in said
    assert "Bearing governs" in said
    # 1071 / 425 · 3/4 in = 1.89 in, told in eighths: 2 in, and 1.89 / 2.
    assert "Let them meet over 3/4 in by 2 in, not 3/4 in by 3/4 in: then it is at 94 %." in said


# ---------------------------------------------------------------- at the limits


def loaded_to(ratio: float, stock: str = "2x8 spruce-pine-fir, grade no.2") -> str:
    """The seat under people of a stated weight on one spot, so that its bending comes to a ratio."""
    bare = of(seat(stock=stock, load="0.001 lb at 20 from left"), "seat", "bending").value.amount
    laden = of(seat(stock=stock, load="100 lb at 20 from left"), "seat", "bending")
    wanted = (ratio * laden.limit.amount - bare) / (laden.value.amount - bare) * 100
    return seat(stock=stock, load=f"{wanted:.6f} lb at 20 from left")


@pytest.mark.parametrize(
    ("ratio", "weight"),
    [
        (0.89, None),
        (0.91, Severity.NOTE),
        (0.999, Severity.NOTE),
        (1.001, Severity.ERROR),
        (5, Severity.ERROR),
    ],
)
def test_graded_lumber_near_at_and_past_the_limit(ratio: float, weight: Severity | None) -> None:
    found = findings_of(loaded_to(ratio), RULE)
    assert [finding.weight for finding in found] == ([] if weight is None else [weight])


@pytest.mark.parametrize(
    ("ratio", "weight"),
    [(0.999, Severity.NOTE), (1.001, Severity.WARNING), (2.99, Severity.WARNING), (3.01, Severity.ERROR)],
)
def test_what_only_custom_sets_warns_until_it_is_far_beyond(ratio: float, weight: Severity) -> None:
    found = findings_of(loaded_to(ratio, "actual 1 1/2 x 7 1/4 red oak"), RULE)
    assert [finding.weight for finding in found] == [weight]
    assert "common practice, no source" in told(loaded_to(1.5, "actual 1 1/2 x 7 1/4 red oak"), RULE)[0]


@pytest.mark.parametrize(("ratio", "weight"), [(1.49, Severity.WARNING), (1.51, Severity.ERROR)])
def test_a_strength_class_is_an_error_only_without_the_remembered_factor(
    ratio: float, weight: Severity
) -> None:
    stock = "actual 1 1/2 x 7 1/4 spruce-pine-fir, grade c24"
    found = of(seat(stock=stock), "seat", "bending")
    # By hand: k_mod 0.8 · 24 / 1.3 / 1.5 MPa.
    assert found.limit.amount == pytest.approx(0.8 * 24 / 1.3 / 1.5)
    assert [finding.weight for finding in findings_of(loaded_to(ratio, stock), RULE)] == [weight]


def test_a_value_from_memory_never_makes_an_error() -> None:
    stock = "actual 1 1/2 x 7 1/4 spanish cedar"
    assert of(seat(stock=stock), "seat", "bending").standing == "from memory"
    assert [finding.weight for finding in findings_of(loaded_to(6, stock), RULE)] == [Severity.WARNING]


def test_a_clear_board_is_asked_for_a_sixth_of_its_strength() -> None:
    # Red oak 14,300 psi at failure (Wood Handbook Table 5-3b).
    _, most = psi(of(seat(stock="actual 1 1/2 x 7 1/4 red oak"), "seat", "bending"))
    assert most == pytest.approx(14300 / 6, rel=1e-6)


# ---------------------------------------------------------------- what is cut away


def test_a_notch_over_half_the_thickness_leaves_a_quarter_of_the_strength() -> None:
    plain = of(seat(load="600 lb"), "seat", "bending").value.amount
    notched = seat(load="600 lb", cut=", notch 2 across by 3/4 tall at bottom, 19 from left")
    found = of(notched, "seat", "bending")
    # The full load lies all over; at 1 in from the middle the moment is 0.998 of the largest.
    assert found.value.amount / plain == pytest.approx(4, rel=0.01)
    (said,) = told(notched, RULE)
    assert "where the notch weakens it" in said


def test_a_hole_through_a_plank_takes_its_width() -> None:
    plain = of(seat(load="600 lb"), "seat", "bending").value.amount
    holed = of(
        seat(load="600 lb", cut=", hole 3 5/8 through top, 20 from left, 3 5/8 from front"), "seat", "bending"
    )
    assert holed.value.amount / plain == pytest.approx(2, rel=0.01)


CROSS = """
    plan "Cross" in inches
    stock rail: 2x4 spruce-pine-fir, grade no.2
    outline base: 41 1/2 across, 41 1/2 deep, 20 tall, on floor
    part post for each of left, right: rail, upright, facing side, 16 tall, on floor
        flush with each of base, centred deep on base
    part pole for each of front, back: rail, upright, facing front, 16 tall, on floor
        flush with each of base, centred across on base
    part long: rail, across, flat, on post.left, from left of base to right of base, centred deep on base
    part short: rail, deep, flat, on pole.front, from front of base to back of base, centred across on base
    join long to post.*: screws #8 x 3, 2 per joint, from above
    join short to pole.*: screws #8 x 3, 2 per joint, from above
    {join}
    load long: 100 lb
    """


def test_a_half_lap_halves_both_rails() -> None:
    # 1 1/2 in thick rails let into each other by half: S there is a quarter, and both are so weakened.
    review = review_of(CROSS.format(join="join long to short: half lap, glue pva"))
    for name in ("long", "short"):
        member = review.carrying.members[name]
        (net,) = member.sections
        assert net.why == "half lap"
        assert net.modulus == pytest.approx(member.width * member.height**2 / 6 / 4)
        assert (net.end - net.start) / MM_PER_INCH == pytest.approx(3.5)


# ---------------------------------------------------------------- remedies are tried


def test_the_support_and_the_span_that_are_named_do() -> None:
    (finding,) = findings_of(seat(), RULE)
    prop = "part prop: leg, upright, facing side, 16 tall, under seat, centred across on base, front at 0"
    assert [each.weight for each in findings_of(seat(more=prop), RULE)] == []
    span = finding.values["shorter"].amount / MM_PER_INCH  # type: ignore[union-attr]
    assert [each.weight for each in findings_of(seat(span + 1.5), RULE)] == [Severity.NOTE]
    assert [each.weight for each in findings_of(seat(span + 2), RULE)] == [Severity.ERROR]


def test_the_stock_of_the_plan_is_named_first() -> None:
    text = seat(more="stock stout: actual 2 1/2 x 7 1/4 spruce-pine-fir, grade no.2")
    (said,) = told(text, RULE)
    assert "Use the stock stout of this plan: then it is at " in said
    assert told(text.replace("part seat: plank", "part seat: stout"), RULE) == []


def test_a_rail_on_edge_is_made_higher() -> None:
    text = seat().replace("part seat: plank, across, flat", "part seat: plank, across, on edge, rip 1 3/4")
    (said,) = told(text, RULE)
    assert "→ Use a board " in said
    assert " high or more: then it is at " in said


RAIL = """
plan "Coat rail" in inches
stock stick: actual 3/4 x 3 1/2 pine, 8 ft
stock leg: actual 1 1/2 x 3 1/2 pine, 8 ft
outline place: 60 across, 3 1/2 deep, 40 tall, on floor
part leg for each of left, right: leg, upright, facing side, 39 1/4 tall, on floor
    flush with each of place, flush with front of place
part rail: stick, across, flat, on leg.left, from left of place to right of place, flush with front of place
join rail to leg.*: screws #8 x 2, 1 per joint, from above
load rail: %s lb
"""


def test_what_breaks_and_sags_is_told_once_as_an_error() -> None:
    # A long way past its strength: sags waits, its figures stand here, and what is told cures both.
    judged = judgement_of(RAIL % 460).findings
    (found,) = [each for each in judged if each.rule in ("overstressed", "sags")]
    assert (found.rule, found.weight.word) == ("overstressed", "error")
    (alone,) = findings_of(RAIL % 460, "sags")
    assert (found.values["sag"], found.values["sag_limit"]) == (alone.values["sag"], alone.values["limit"])
    assert " It also sags {sag} where {sag_limit} is the limit" in found.says
    height = found.values["height"]
    assert isinstance(height, Value)
    thick = (RAIL % 460).replace("actual 3/4", f"actual {height.amount / 25.4:g}")
    thick = thick.replace("39 1/4 tall", f"{40 - height.amount / 25.4:g} tall")
    again = [each for each in judgement_of(thick).findings if each.rule in ("overstressed", "sags")]
    assert [each for each in again if each.weight.word != "note"] == []


def test_where_strength_only_warns_the_sag_tells_both() -> None:
    judged = judgement_of(RAIL % 72).findings
    (found,) = [each for each in judged if each.rule in ("sags", "overstressed")]
    assert (found.rule, found.weight.word) == ("sags", "error")
    (alone,) = findings_of(RAIL % 72, "overstressed")
    assert alone.weight.word == "warning"
    assert (found.values["stress"], found.values["most"]) == (alone.values["stress"], alone.values["most"])
    assert " It is also bent to {stress} where {wood} may bear {most}" in found.says
    # What is told next is enough for both.
    height = found.values["height"]
    assert isinstance(height, Value)
    thick = (RAIL % 72).replace("actual 3/4", f"actual {height.amount / 25.4:g}")
    thick = thick.replace("39 1/4 tall", f"{40 - height.amount / 25.4:g} tall")
    again = [each for each in judgement_of(thick).findings if each.rule in ("overstressed", "sags")]
    assert [each for each in again if each.weight.word != "note"] == []
    # Accepted, the sag no longer stands for the stress.
    accepted = judgement_of(RAIL % 72 + 'accept sags on rail because "a curve is wanted"\n').findings
    assert [each.rule for each in accepted if each.rule in ("sags", "overstressed")] == ["overstressed"]
