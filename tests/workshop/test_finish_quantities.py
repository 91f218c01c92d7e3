"""How much finish and paper a plan takes: sums done by hand, areas against trimesh, and what must always hold."""

from __future__ import annotations

import math

import pytest
import trimesh
from hypothesis import given, settings
from hypothesis import strategies as st

from reviewer.reference.finishes import finish_keys
from reviewer.reference.spreading import spread
from reviewer.units import LITRES_PER_GALLON
from reviewer.workshop.finish_quantities import (
    Amount,
    ProductNeed,
    Quantities,
    cans_for,
    coat_litres,
    finish_quantities,
)
from tests.support import review_of

BOARD = """
plan "Board" in millimetres
stock board: actual 20 x 200 pine
part shelf: board, across, flat, 1000 long, left at 0, front at 0, bottom at 0
part other: board, across, flat, 1000 long, left at 0, front at 0, bottom at 500
"""
#: All round: faces 2 x 1.0 x 0.2, edges 2 x 1.0 x 0.02, ends 2 x 0.2 x 0.02 m².
FACES, EDGES, ENDS = 0.4, 0.04, 0.008
ROUND = FACES + EDGES + ENDS


def quantities(*lines: str) -> Quantities:
    return finish_quantities(review_of(BOARD + "\n".join(lines) + "\n"))


def only(*lines: str) -> ProductNeed:
    (need,) = quantities(*lines).products
    return need


def test_two_coats_by_hand() -> None:
    """Enamel acrylic, 350 to 400 ft² a gallon: 8.590 to 9.817 m² a litre; 15 % stays in brush and can."""
    need = only("finish f: on shelf, 2 coats of enamel acrylic")
    low, high = 350 / 40.746, 400 / 40.746  # 1 m²/L = 40.746 ft²/gal, finishing notes section 3
    first = ROUND + ENDS  # bare end grain twice
    assert need.amount.most == pytest.approx((first + ROUND) / low * 1.15, rel=1e-4)
    assert need.amount.least == pytest.approx((first + ROUND) / high * 1.15, rel=1e-4)
    assert need.amount.likely == pytest.approx((first / low + ROUND / ((low + high) / 2)) * 1.15, rel=1e-4)
    assert [coat.area for coat in need.coats] == pytest.approx([ROUND, ROUND])


def test_end_grain_alone_drinks_twice_what_an_edge_does() -> None:
    ends = only("finish f: on ends of shelf, 1 coat of oil danish").amount.likely / ENDS
    edges = only("finish f: on edges of shelf, 1 coat of oil danish").amount.likely / EDGES
    assert ends == pytest.approx(2 * edges)


def test_on_a_seal_end_grain_drinks_no_more() -> None:
    ends = quantities(
        "finish f: on ends of shelf", "    1 coat of shellac dewaxed, 1 coat of varnish spar oil"
    )
    faces = quantities(
        "finish f: on faces of shelf", "    1 coat of shellac dewaxed, 1 coat of varnish spar oil"
    )
    assert ends.products[1].amount.most / ENDS == pytest.approx(faces.products[1].amount.most / FACES)


def test_a_thinned_coat_takes_so_much_less_from_the_can() -> None:
    plain = only("finish f: on shelf, 1 coat of oil tung")
    thinned = only("finish f: on shelf, 1 coat of oil tung, thinned 25 %")
    assert thinned.amount.likely == pytest.approx(plain.amount.likely / 1.25)
    assert thinned.thinner.likely == pytest.approx(plain.amount.likely * 0.2)
    assert plain.thinner.likely == 0


def test_a_flat_coat_goes_less_far_than_a_glossy_one() -> None:
    flat, shiny = (
        quantities("finish f: on shelf", "    1 coat of shellac dewaxed", f"    1 coat of {name}")
        .products[1]
        .amount.likely
        for name in ("polyurethane waterborne matt", "polyurethane waterborne gloss")
    )
    assert flat == pytest.approx(ROUND / (350 / 40.746) * 1.15, rel=1e-4)
    assert shiny == pytest.approx(ROUND / (500 / 40.746) * 1.15, rel=1e-4)


def test_hidden_wood_takes_nothing_and_bare_glue_lines_none_either() -> None:
    joined = "join other to shelf: screws #8 x 1, 2 per joint, glue pva"
    stacked = BOARD.replace("bottom at 500", "bottom at 20")
    before = finish_quantities(
        review_of(f"{stacked}{joined}\nfinish f: on shelf, before assembly, 1 coat of oil tung\n")
    )
    after = finish_quantities(review_of(f"{stacked}{joined}\nfinish f: on shelf, 1 coat of oil tung\n"))
    assert before.products[0].coats[0].area == pytest.approx(ROUND)
    assert after.products[0].coats[0].area == pytest.approx(ROUND - 0.2)


def test_knots_are_spots() -> None:
    found = quantities(
        "finish f: on shelf, sand 120, seal knots with shellac dewaxed, 1 coat of enamel acrylic"
    )
    knots = next(need for need in found.products if need.product == "shellac_dewaxed")
    assert knots.coats == ()
    assert knots.amount.most == pytest.approx(coat_litres("shellac_dewaxed", ROUND * 0.05, bare=True).most)


@pytest.mark.parametrize("product", finish_keys())
def test_every_class_has_a_spread_and_says_where_it_comes_from(product: str) -> None:
    found = spread(product)
    assert 0 < found.least <= found.most
    assert found.source


def test_paper_by_grit() -> None:
    """0.8 m² to a disc on bare wood, 2 m² between coats: common practice, no source."""
    found = quantities(
        "finish f: on shelf, other, sand 120, 150", "    3 coats of polyurethane oil, sand 220 between coats"
    )
    bare = 2 * ROUND
    assert [(paper.grit, paper.discs) for paper in found.papers] == [(120, 2), (150, 2), (220, 1)]
    assert found.papers[2].between == pytest.approx(2 * bare)
    assert found.papers[0].sheets == 1


# ---------------------------------------------------------------- cans


def test_cans_of_the_very_colour_first_then_those_of_none() -> None:
    found = quantities(
        "finish a: on shelf, 1 coat of enamel acrylic white",
        "    have 100 ml of enamel acrylic white, have 1 l of enamel acrylic",
        "finish b: on other, 1 coat of enamel acrylic black",
    )
    white, black = found.products
    assert white.have == pytest.approx(max(0.1, white.amount.most))
    assert [can.said for can in black.cans] == ["enamel acrylic"]
    assert black.have == pytest.approx(min(black.amount.most, 1.1 - white.have))


def test_a_can_of_another_colour_is_no_help_and_is_told() -> None:
    found = quantities("finish a: on shelf, 1 coat of enamel acrylic white, have 1 l of enamel acrylic black")
    assert found.products[0].cans == ()
    assert [can.said for can in found.needless] == ["enamel acrylic black"]


def test_more_than_the_largest_can_takes_several() -> None:
    assert cans_for(9.5, "inch").said == "3 gallons"
    assert cans_for(5.1, "metric").said == "10 l"
    assert cans_for(LITRES_PER_GALLON / 4, "inch").said == "1 quart"


# ---------------------------------------------------------------- areas


def test_areas_of_shaped_parts_against_trimesh() -> None:
    """The hull of the corners worked out by hand, as trimesh measures it."""
    review = review_of("""
        plan "Leg" in millimetres
        stock post: actual 60 x 60 beech
        part leg: post, upright, facing front, 700 tall, left at 0, front at 0, bottom at 0
            taper to 30 at bottom end over 500 on right
        part rail: post, across, flat, 800 long, left at 0, front at 200, bottom at 0
            mitre 45 at both ends, long at back
        finish f: on leg, rail, 1 coat of oil danish
        """)
    leg = [(x, y, z) for y in (0, 60) for x, z in ((0, 0), (30, 0), (60, 500), (60, 700), (0, 700))]
    rail = [(x, y, z) for z in (0, 60) for x, y in ((0, 260), (800, 260), (60, 200), (740, 200))]
    areas = {
        name: math.fsum(each.area for each in review.schedules if each.part == name)
        for name in ("leg", "rail")
    }
    assert areas["leg"] == pytest.approx(trimesh.convex.convex_hull(leg).area, rel=1e-6)
    assert areas["rail"] == pytest.approx(trimesh.convex.convex_hull(rail).area, rel=1e-6)


# ---------------------------------------------------------------- always

PRODUCTS = ("polyurethane oil", "enamel acrylic", "oil tung", "shellac dewaxed", "stain oil")


@settings(max_examples=40, deadline=None)
@given(
    st.sampled_from(PRODUCTS),
    st.integers(1, 8),
    st.integers(1, 4),
    st.sampled_from(("", ", by spray", ", by rag", ", thinned 20 %")),
)
def test_more_coats_never_take_less(product: str, coats: int, more: int, how: str) -> None:
    one = only(f"finish f: on shelf, {coats} coats of {product}{how}").amount
    other = only(f"finish f: on shelf, {coats + more} coats of {product}{how}").amount
    assert one.least < other.least
    assert one.likely < other.likely
    assert one.most < other.most


@settings(max_examples=60, deadline=None)
@given(
    st.sampled_from(finish_keys()),
    st.floats(0, 1e4),
    st.booleans(),
    st.booleans(),
    st.sampled_from(("matt", "satin", "gloss", None)),
    st.sampled_from(("brush", "spray", "rag", "roller", None)),
)
def test_likely_lies_between_least_and_most(
    product: str, area: float, bare: bool, end: bool, sheen: str | None, tool: str | None
) -> None:
    found = coat_litres(product, area, bare=bare, end_grain=end, sheen=sheen, tool=tool)
    assert 0 <= found.least <= found.likely * (1 + 1e-9)
    assert found.likely <= found.most * (1 + 1e-9)


def test_amounts_add_up() -> None:
    assert Amount(1, 2, 3).and_(Amount(1, 1, 1)).times(2) == Amount(4, 6, 8)
