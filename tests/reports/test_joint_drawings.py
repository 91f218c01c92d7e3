"""Joints in section: every kind has its drawing, to scale, with the measures of the sums beside it."""

from __future__ import annotations

import re
import xml.etree.ElementTree as ElementTree
from typing import get_args

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely.geometry import Point, Polygon
from shapely.ops import unary_union

from reviewer.model.plan import FasteningKind, HousingKind
from reviewer.reports import joint_drawings as module
from reviewer.reports.fastener_shapes import outlines_of
from reviewer.reports.flat_shapes import (
    area,
    clipped,
    common,
    long_strokes,
    ring_strokes,
    sides,
    stretch_inside,
    true_edges,
    without,
)
from reviewer.reports.gathering import report_of
from reviewer.reports.html import render_html
from reviewer.reports.joint_drawings import NOT_DRAWN, JointDrawn, joint_drawings
from reviewer.reports.joint_section import section_of
from tests.support import look_at

CASE = """
plan "Case" in inches
stock board: actual 3/4 x 5 1/2 pine
outline case: 30 across, 5 1/2 deep, 20 tall, on floor
part side for each of left, right: board, upright, facing side, as tall as case, on floor
    flush with each of case, flush with front of case
part shelf: board, across, flat, between side.left and side.right{housed}, bottom 10 above floor
    flush with front of case
join shelf to side.*: {how}
{more}
"""
#: Two boards that meet at a corner: all of the corner is in both.
CORNER = """
plan "Corner" in inches
stock board: actual 3/4 x 5 1/2 pine
part front: board, across, on edge, 20 long, left at 0, front at 0, on floor
part side: board, deep, on edge, 12 long, left at 0, front at 0, on floor
join front to side: {how}, glue pva
"""
CROSS = """
plan "Cross" in inches
stock rail: actual 1 1/2 x 1 1/2 pine
part rail: rail, across, flat, 20 long, left at 0, front at 5, on floor
part post: rail, deep, flat, 12 long, left at {left}, front at 0, on floor
join rail to post: {how}
"""
EDGES = """
plan "Edges" in inches
stock board: actual 3/4 x 5 1/2 pine
part one: board, across, flat, 20 long, left at 0, front at 0, on floor
part two: board, across, flat, 20 long, left at 0, front at 5 1/4, on floor
join one to two: tongue and groove
"""
FASTENED: dict[FasteningKind, str] = {
    "screws": "screws #8 x 2, 3 per end, from outside",
    "pocket screws": "pocket screws 1 1/4, 2 per end",
    "nails": "nails 2, 3 per end, from outside",
    "dowels": "dowels 3/8 x 1 1/2, 2 per end",
    "bolts": "bolts 1/4 x 3, 2 per end, from outside",
    "biscuits": "biscuits, 2 per end",
    "brackets": "brackets",
    "shelf pins": "shelf pins, 2 per end",
    "loose tenons": "loose tenons 1/4 x 3/4 x 1, 2 per end",
    "wedges": "wedges, 1 per end",
    "clips": "clips, 2 per end",
    "none": 'none because "it lifts out"',
}
HOUSED: dict[HousingKind, str] = {
    "dado": CASE.format(housed=", housed 1/4 each end", how="dado 1/4 deep", more=""),
    "rabbet": CASE.format(housed=", housed 1/4 each end", how="rabbet 1/4 deep", more=""),
    "groove": CASE.format(housed=", housed 1/4 each end", how="groove 1/4 deep", more=""),
    "mortise and tenon": CASE.format(
        housed=", housed 1/2 each end", how="mortise and tenon 1/2 long 1/4 thick", more=""
    ),
    "half lap": CROSS.format(left=8, how="half lap"),
    "bridle": CROSS.format(left=0, how="bridle"),
    "mitre": CORNER.format(how="mitre"),
    "splined mitre": CORNER.format(how="splined mitre"),
    "dovetails": CORNER.format(how="dovetails"),
    "box joint": CORNER.format(how="box joint"),
    "tongue and groove": EDGES,
}


def case(how: str, housed: str = "", more: str = "") -> str:
    return CASE.format(housed=housed, how=how, more=more)


def drawings(text: str, only: str | None = "cut-does-not-fit") -> module.JointDrawings:
    found = look_at(text, only=only)
    assert found.review is not None, [problem.says for problem in found.problems]
    findings = found.judgement.findings if found.judgement is not None else ()
    return joint_drawings(found.review, findings, 1, "plan1-")


def one(text: str) -> JointDrawn:
    (drawn,) = drawings(text).drawn
    return drawn


def strokes(drawn: JointDrawn, css: str) -> list[str]:
    root = ElementTree.fromstring(drawn.svg)
    return [
        each.get("points") or each.get("d") or ""
        for each in root.iter()
        if css in (each.get("class") or "").split()
    ]


# ---------------------------------------------------------------- every kind


def test_the_kinds_here_are_the_kinds_of_the_language() -> None:
    assert set(FASTENED) == set(get_args(FasteningKind))
    assert set(HOUSED) == set(get_args(HousingKind))


@pytest.mark.parametrize("kind", get_args(FasteningKind))
def test_every_kind_of_fastener_is_drawn_or_says_why_not(kind: FasteningKind) -> None:
    drawn = one(case(FASTENED[kind]))
    root = ElementTree.fromstring(drawn.svg)  # whole XML
    assert root.get("role") == "img"
    named = {each.get("id") for each in root.iter() if each.get("id")}
    assert named == set((root.get("aria-labelledby") or "").split())
    assert len(strokes(drawn, "cut-wood")) >= 2
    fasteners = strokes(drawn, "fastener")
    if kind in NOT_DRAWN:
        assert fasteners == []
        assert not NOT_DRAWN[kind] or NOT_DRAWN[kind] in drawn.remarks
    else:
        assert fasteners
        assert "bite" in dict(drawn.measures) or "in the lower" in dict(drawn.measures)
    assert drawn.alike.startswith("2 joints like this: shelf to side.left and shelf to side.right")
    assert len(drawn.svg) < 9000


@pytest.mark.parametrize("kind", get_args(HousingKind))
def test_every_housing_is_drawn(kind: HousingKind) -> None:
    drawn = drawings(HOUSED[kind]).drawn[0]
    assert kind in drawn.said
    assert "goes in" in dict(drawn.measures) or "shared" in dict(drawn.measures)
    assert len(strokes(drawn, "cut-wood")) >= 2
    assert len(strokes(drawn, "grain")) >= 2


@pytest.mark.parametrize("kind", get_args(HousingKind))
def test_no_wood_is_in_two_parts_and_none_is_lost(kind: HousingKind) -> None:
    """Against shapely: the pieces of both parts do not share room and together are what both solids cut."""
    review = look_at(HOUSED[kind], only="cut-does-not-fit").review
    assert review is not None
    section = section_of(review.setting.joints[0], review.setting, None)
    assert section is not None
    pieces = [[Polygon(piece) for piece in wood.pieces] for wood in section.woods]
    whole = unary_union([piece for some in pieces for piece in some])
    assert sum(piece.area for some in pieces for piece in some) == pytest.approx(whole.area, rel=1e-6)
    from reviewer.reports.joint_section import cut_through

    upper = section.of(section.upper)  # in one piece: what is cut out of a joint is cut out of the other part
    whole_upper = unary_union([Polygon(piece) for piece in upper]).buffer(0.01).buffer(-0.05)
    assert whole_upper.geom_type == "Polygon"
    solids = [review.setting.solids[name] for name in review.setting.joints[0][:2]]
    uncut = unary_union([Polygon(shape) for solid in solids for shape in cut_through(solid, section.plane)])
    assert whole.symmetric_difference(uncut).area < 1e-3 * whole.area


# ---------------------------------------------------------------- measures


def test_measures_are_those_of_the_sum() -> None:
    # By hand: 2 in screw through 3/4 in of side; the shelf is long, so no cover is worth telling.
    drawn = one(case("screws #8 x 2, 3 per end, from outside"))
    assert dict(drawn.measures)["under head"] == "3/4 in"
    assert dict(drawn.measures)["bite"] == "1 1/4 in"
    assert "cover" not in dict(drawn.measures)
    assert dict(drawn.measures)["to edge"] == "3/8 in"  # the middle of a shelf 3/4 in thick


STACK = """
plan "Stack" in {unit}
stock board: actual 3/4 in x 5 1/2 in pine
part low: board, across, flat, 20 in long, left at 0, front at 0, on floor
part top: board, across, flat, 20 in long, left at 0, front at 0, on low
join top to low: screws #8 x {long}, 2 per joint, from above
"""


@pytest.mark.parametrize(
    ("long", "name", "value", "out"),
    [
        ("1 1/4 in", "cover", "1/4 in", False),  # 3/4 + 3/4 - 1 1/4
        ("1 1/2 in", "cover", "none", False),
        ("1 3/4 in", "comes out", "1/4 in", True),
    ],
)
def test_what_is_left_over_the_point(long: str, name: str, value: str, out: bool) -> None:
    drawn = one(STACK.format(unit="inches", long=long))
    assert dict(drawn.measures)[name] == value
    assert bool(strokes(drawn, "out")) is out
    # The mark does not live by its colour alone: a ring and a cross stand at the point.
    assert ("out-ring" in drawn.svg and "out-cross" in drawn.svg) is out
    assert ("The point comes out of the wood." in drawn.svg) is out


def test_in_the_units_of_the_plan() -> None:
    drawn = one(STACK.format(unit="millimetres", long="1 1/4 in"))
    assert dict(drawn.measures)["bite"] == "12.7 mm"
    assert " in<" not in drawn.svg


def test_to_scale() -> None:
    """What is drawn of a screw and of the wood is in one scale, that of 1 1/4 in to 3/4 in."""
    review = look_at(STACK.format(unit="inches", long="1 1/4 in"), only="cut-does-not-fit").review
    assert review is not None
    drawn = one(STACK.format(unit="inches", long="1 1/4 in"))

    def tall(points: str) -> float:
        ys = [float(pair.split(",")[1]) for pair in points.split()]
        return max(ys) - min(ys)

    (screw,) = strokes(drawn, "metal")
    boards = strokes(drawn, "cut-wood")
    assert tall(screw) / tall(boards[0]) == pytest.approx(1.25 / 0.75, rel=0.02)
    placed = review.placed[0]
    (shape,) = outlines_of(placed)
    assert max(along for along, _ in shape.outline) == pytest.approx(placed.length)
    assert max(aside for _, aside in shape.outline) == pytest.approx(placed.head_diameter / 2)


def test_end_grain_and_long_grain_are_told_apart() -> None:
    drawn = one(case("screws #8 x 2, 3 per end, from outside"))
    assert len(strokes(drawn, "long-grain")) == 2
    cross = drawings(HOUSED["half lap"]).drawn[0]
    assert len(strokes(cross, "end-grain")) == 1
    text = case(FASTENED["screws"]).replace("actual 3/4 x 5 1/2 pine", "birch plywood 3/4, sheet 48 x 96")
    for head in ("part side for each of left, right: board,", "part shelf: board,"):
        text = text.replace(head, f"{head} 5 1/2 deep,")
    assert len(strokes(one(text), "sheet-grain")) == 2


# ---------------------------------------------------------------- which, and in what order


def test_flagged_joints_come_first_with_their_findings(monkeypatch: pytest.MonkeyPatch) -> None:
    text = STACK.format(unit="inches", long="1 3/4") + (
        "part lid: board, across, flat, 20 in long, left at 0, front at 0, on top\n"
        "join lid to top: screws #8 x 1 1/4, 2 per joint, from above\n"
    )
    flagged = "join top to low: screws #8 x 1 3/4, 2 per joint, from above\n"
    text = text.replace(flagged, "") + flagged
    found = drawings(text, only="screw-breaks-through").drawn
    assert [(each.title, each.weight) for each in found] == [("top on low", "error"), ("lid on top", "")]
    assert found[0].findings == ((1, "plan1-finding-1", "screw-breaks-through"),)
    monkeypatch.setattr(module, "LOOKED_AT", 1)
    assert [each.title for each in drawings(text, only="screw-breaks-through").drawn] == ["top on low"]


def test_a_flagged_joint_is_cut_through_its_worst_fastener() -> None:
    # The board is 1 in thick and 1/2 in under its dado: the screw in the middle comes out, the first does not.
    board = """
plan "Board with a dado" in inches
stock strip: actual 1 1/2 x 1 1/2 pine
stock board: actual 1 x 10 pine
part cleat: strip, across, flat, 20 long, left at 0, front at 4, on floor
part board: board, across, flat, on cleat, 20 long, left at 0, front at 0, dado 2 by 1/2 into top, 9 from left
join board to cleat: screws #8 x 2 1/4, 3 per joint, 1 1/2 from ends, from below, pilot holes
"""
    (flagged,) = drawings(board, only="screw-breaks-through").drawn
    assert dict(flagged.measures)["comes out"] == "1/4 in"
    (quiet,) = drawings(board).drawn
    assert dict(quiet.measures)["cover"] == "1/4 in"


def test_joints_that_are_alike_are_drawn_once() -> None:
    shelves = (
        "part shelf.{n}: like shelf, bottom {up} above floor\njoin shelf.{n} to side.*: " + FASTENED["screws"]
    )
    more = "\n".join(shelves.format(n=number, up=12 + number) for number in range(1, 5))
    drawn = one(case(FASTENED["screws"], more=more))
    assert drawn.alike.startswith("10 joints like this: ")
    other = drawings(case(FASTENED["screws"], more=more.replace("#8 x 2", "#8 x 1 3/4"))).drawn
    assert [each.alike.split()[0] for each in other] == ["2", "8"]


def test_no_more_than_so_many_and_it_says_so(monkeypatch: pytest.MonkeyPatch) -> None:
    shelves = (
        "part shelf.{n}: like shelf, bottom {up} above floor\njoin shelf.{n} to side.*: screws #8 x 1 {n}/16"
    )
    more = "\n".join(shelves.format(n=number, up=11 + number) for number in range(1, 9))
    text = case(FASTENED["screws"], more=more)
    assert drawings(text).remarks == ()
    monkeypatch.setattr(module, "DRAWN", 3)
    few = drawings(text)
    assert len(few.drawn) == 3
    assert few.remarks == (
        "3 of 9 kinds of joint are drawn: those with findings first, then in the plan's order.",
    )
    monkeypatch.setattr(module, "LOOKED_AT", 2)
    assert drawings(text).remarks[0].startswith("2 of at least 3 kinds of joint are drawn")


def test_same_bytes_and_ids_of_their_own() -> None:
    text = case(FASTENED["pocket screws"])
    first, second = drawings(text), drawings(text)
    assert first == second
    found = look_at(text)
    assert found.review is not None
    html = render_html([report_of(found.source, (), found.review, found.judgement)] * 2)
    ids = re.findall(r' id="([^"]+)"', html)
    assert len(ids) == len(set(ids))
    assert 'id="plan1-section-1-name"' in html
    assert 'id="plan2-section-1-name"' in html


def test_a_joint_to_the_wall_and_one_that_nothing_meets() -> None:
    text = """
plan "Cleat" in inches
stock board: actual 3/4 x 3 1/2 pine
part cleat: board, across, on edge, 20 long, left at 0, against wall, bottom 40 above floor
join cleat to wall: screws #8 x 3, 2 per joint, from front
room hall: indoors, wall behind
"""
    drawn = one(text)
    assert "cut-ground" in drawn.svg
    assert "comes out" not in dict(drawn.measures)


# ---------------------------------------------------------------- shapes against shapely

COORD = st.floats(-50, 50).map(lambda each: round(each, 2))


@st.composite
def outlines(draw: st.DrawFn) -> tuple[tuple[float, float], ...]:
    hull = Polygon(draw(st.lists(st.tuples(COORD, COORD), min_size=4, max_size=8, unique=True))).convex_hull
    if hull.geom_type != "Polygon" or hull.area < 5:
        return ((0.0, 0.0), (9.0, 0.0), (9.0, 7.0), (0.0, 7.0))
    return tuple(hull.exterior.coords)[:-1]


@given(outlines(), outlines())
def test_what_two_shapes_share_and_what_one_leaves(one_: tuple, two: tuple) -> None:
    a, b = Polygon(one_), Polygon(two)
    assert area(common(one_, sides(two))) == pytest.approx(a.intersection(b).area, abs=1e-3)
    left = without(one_, two)
    assert sum(map(area, left)) == pytest.approx(a.difference(b).area, abs=1e-3)
    assert all(area(clipped(piece, sides(two)[0])) <= area(piece) + 1e-6 for piece in left)


@given(outlines(), outlines())
def test_true_edges_are_the_outline(one_: tuple, two: tuple) -> None:
    a, b = Polygon(one_), Polygon(two)
    left = without(one_, two)
    rest = a.difference(b)
    if not left or rest.area < 1 or a.intersection(b).area < 1:
        return
    far = ((-999.0, -999.0), (999.0, -999.0), (999.0, 999.0), (-999.0, 999.0))
    drawn = sum(((p[0] - q[0]) ** 2 + (p[1] - q[1]) ** 2) ** 0.5 for p, q in true_edges(left, far))
    assert drawn == pytest.approx(rest.length, abs=0.5)


@given(outlines(), st.tuples(COORD, COORD))
def test_strokes_stay_inside(shape: tuple, middle: tuple[float, float]) -> None:
    grown = Polygon(shape).buffer(0.15)
    path = ring_strokes(shape, middle, (5.5, 8.0, 6.5)) + long_strokes(shape, (0.6, 0.8), (5.0, 8.5))
    for x, y in re.findall(r"(-?[\d.]+),(-?[\d.]+)", path):
        assert grown.covers(Point(float(x), float(y)))


def test_a_stretch_inside() -> None:
    square = ((0.0, 0.0), (10.0, 0.0), (10.0, 10.0), (0.0, 10.0))
    assert stretch_inside(square, (-5.0, 5.0), (1.0, 0.0)) == pytest.approx((5.0, 15.0))
    assert stretch_inside(square, (-5.0, 11.0), (1.0, 0.0)) is None
