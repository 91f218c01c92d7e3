"""The drawings: what hides what, against rays cast by brute force and against shapely's geometry."""

from __future__ import annotations

import math
import random
import re
import xml.etree.ElementTree as ElementTree

import pytest
from made_by_hand import bench_solids, board, bookcase_solids
from shapely.geometry import LineString, MultiPoint, Polygon
from shapely.ops import unary_union

from reviewer.findings import Severity
from reviewer.model.plan import Axis
from reviewer.reports.drawing import DRAWN, LABELLED, Flag, drawing_of
from reviewer.reports.projection import (
    ABOVE,
    FRONT,
    IN_DEPTH,
    RIGHT,
    Seen,
    View,
    dot,
    far_to_near,
    hidden,
    seen,
)
from reviewer.reports.svg import hatching, label, number, outline
from reviewer.setting_out.solid import Solid, Vector
from reviewer.units import UnitSystem

VIEWS = (FRONT, RIGHT, ABOVE, IN_DEPTH)
ERROR = Flag((1,), Severity.ERROR)


def slanted_leg() -> Solid:
    """A leg 45 by 30 and 500 long, leaning over by the 3-4-5 triangle: its top is 300 to the right."""
    along, across, through = (0.6, 0.0, 0.8), (0.8, 0.0, -0.6), (0.0, 1.0, 0.0)
    half = tuple(abs(along[i]) * 250 + abs(across[i]) * 22.5 + abs(through[i]) * 15 for i in range(3))
    low = (150 - half[0], 15 - half[1], 200 - half[2])
    high = (150 + half[0], 15 + half[1], 200 + half[2])
    return Solid("leg", low, high, Axis.UP, Axis.ACROSS, Axis.DEEP, (along, across, through), (500, 45, 30))


def corners(solid: Solid) -> list[Vector]:
    out = []
    for a in (-0.5, 0.5):
        for b in (-0.5, 0.5):
            for c in (-0.5, 0.5):
                share = (a * solid.size[0], b * solid.size[1], c * solid.size[2])
                out.append(
                    tuple(
                        solid.centre[i] + sum(share[k] * solid.directions[k][i] for k in range(3))
                        for i in range(3)
                    )
                )
    return out  # type: ignore[return-value]


@pytest.mark.parametrize("view", VIEWS, ids=lambda view: view.name)
@pytest.mark.parametrize("solid", [*bench_solids()[:1], slanted_leg()], ids=lambda solid: solid.name)
def test_visible_faces_fill_the_shadow_of_the_solid(solid: Solid, view: View) -> None:
    shown = seen(solid, view)
    shadow = MultiPoint([(dot(c, view.right), dot(c, view.up)) for c in corners(solid)]).convex_hull
    faces = unary_union([Polygon(face.corners) for face in shown.faces])
    assert faces.symmetric_difference(shadow).area < 1e-6 * shadow.area
    assert sum(Polygon(face.corners).area for face in shown.faces) == pytest.approx(shadow.area)
    assert (*shown.low, *shown.high) == pytest.approx(shadow.bounds)


def test_a_view_is_a_right_handed_set_of_unit_vectors() -> None:
    for view in VIEWS:
        for vector in (view.right, view.up, view.toward):
            assert math.hypot(*vector) == pytest.approx(1)
        r, u, t = view.right, view.up, view.toward
        cross = (r[1] * u[2] - r[2] * u[1], r[2] * u[0] - r[0] * u[2], r[0] * u[1] - r[1] * u[0])
        assert cross == pytest.approx(t)


def entry(solid: Solid, eye: Vector, way: Vector) -> float:
    """How far along a ray a square solid begins; infinite when it is missed (slab method)."""
    near, far = -math.inf, math.inf
    for axis in range(3):
        if abs(way[axis]) < 1e-12:
            if not solid.low[axis] < eye[axis] < solid.high[axis]:
                return math.inf
            continue
        a = (solid.low[axis] - eye[axis]) / way[axis]
        b = (solid.high[axis] - eye[axis]) / way[axis]
        near, far = max(near, min(a, b)), min(far, max(a, b))
    return near if near < far - 1e-9 else math.inf


def wrongly_painted(solids: list[Solid], view: View, rays: int, seed: int) -> int:
    """How many random rays see another solid than the last one painted at their place."""
    order = far_to_near([seen(solid, view) for solid in solids], view)
    low = [min(one.low[i] for one in order) for i in (0, 1)]
    high = [max(one.high[i] for one in order) for i in (0, 1)]
    chance = random.Random(seed)
    wrong = hits = 0
    for _ in range(rays):
        x, y = chance.uniform(low[0], high[0]), chance.uniform(low[1], high[1])
        eye = tuple(x * view.right[i] + y * view.up[i] + 1e5 * view.toward[i] for i in range(3))
        way = tuple(-part for part in view.toward)
        distance, name = min((entry(s, eye, way), s.name) for s in solids)  # type: ignore[arg-type]
        if distance == math.inf:
            continue
        hits += 1
        on_top = [one for one in order if entry(one.solid, eye, way) < math.inf][-1]  # type: ignore[arg-type]
        wrong += on_top.solid.name != name
    assert hits > rays / 5
    return wrong


@pytest.mark.parametrize("view", VIEWS, ids=lambda view: view.name)
def test_near_wood_covers_far_wood(view: View) -> None:
    assert wrongly_painted(list(bench_solids()), view, 2000, 1) == 0
    assert wrongly_painted(list(bookcase_solids()), view, 2000, 2) == 0


@pytest.mark.parametrize("seed", range(8))
def test_near_wood_covers_far_wood_in_a_heap(seed: int) -> None:
    chance = random.Random(seed)
    heap: list[Solid] = []
    while len(heap) < 25:
        low = tuple(chance.randrange(0, 1000, 50) for _ in range(3))
        size = tuple(chance.choice((50, 100, 400)) for _ in range(3))
        new = board(f"b{len(heap)}", low, size, Axis.ACROSS, Axis.DEEP)
        if all(any(new.low[i] >= o.high[i] or o.low[i] >= new.high[i] for i in range(3)) for o in heap):
            heap.append(new)
    for view in VIEWS:
        assert wrongly_painted(heap, view, 400, seed) == 0


def test_a_shelf_housed_in_a_side_is_not_drawn_over_it() -> None:
    side = board("side", (300, 0, 0), (18, 280, 500), Axis.UP, Axis.DEEP)
    shelf = board("shelf", (0, 0, 200), (306, 280, 18), Axis.ACROSS, Axis.DEEP)  # 6 mm into the side
    order = far_to_near([seen(side, IN_DEPTH), seen(shelf, IN_DEPTH)], IN_DEPTH)
    assert [one.solid.name for one in order] == ["shelf", "side"]


def test_a_ring_of_boards_is_drawn_whole() -> None:
    # each board lies over the next one round: no order is right, but none may be lost
    ring = [
        board("a", (0, 0, 0), (300, 100, 50), Axis.ACROSS, Axis.DEEP),
        board("b", (200, 0, 50), (100, 300, 50), Axis.DEEP, Axis.ACROSS),
        board("c", (0, 200, 100), (300, 100, 50), Axis.ACROSS, Axis.DEEP),
    ]
    order = far_to_near([seen(solid, IN_DEPTH) for solid in ring], IN_DEPTH)
    assert sorted(one.solid.name for one in order) == ["a", "b", "c"]


def test_what_is_hidden() -> None:
    solids = {solid.name: solid for solid in bench_solids()}

    def behind(name: str, view: View) -> bool:
        order = far_to_near([seen(solid, view) for solid in solids.values()], view)
        place = next(i for i, one in enumerate(order) if one.solid.name == name)
        return hidden(order[place], order[place + 1 :])

    assert behind("rail.back", FRONT)
    assert not behind("rail.front", FRONT)
    assert behind("rail.front", ABOVE)
    assert not behind("seat.1", ABOVE)


def drawn(**flags: Flag) -> dict[str, str]:
    named = {name.replace("_", "."): flag for name, flag in flags.items()}
    return {v.slot: v.svg for v in drawing_of(bench_solids(), UnitSystem.INCH, named, "p-").views}


def test_every_view_is_well_formed_and_titled() -> None:
    views = drawn(rail_front=ERROR)
    assert list(views) == ["above", "depth", "front", "right"]
    for svg in views.values():
        root = ElementTree.fromstring(svg)
        titles = [node.text for node in root.iter("title")]
        assert len(titles) == 11  # the view and its ten parts
        assert "rail.front: 35 × 3 1/2 × 1 1/2 in; finding 1 (error)" in titles
        assert "seat.1: 48 × 7 1/4 × 1 1/2 in" in titles
        ids = [node.get("id") for node in root.iter() if node.get("id")]
        assert len(ids) == len(set(ids)) == 11


def measures(svg: str) -> list[str]:
    return re.findall(r'class="measure"[^>]*>([^<]+)<', svg)


def test_overall_measures_in_the_plan_s_unit() -> None:
    views = drawn()
    # by hand: 48 across; two seats of 7 1/4 with 1/8 between are 14 5/8 deep; 16 + 1 1/2 up
    assert measures(views["front"]) == ["48 in", "17 1/2 in"]
    assert measures(views["right"]) == ["14 5/8 in"]
    assert measures(views["above"]) == ["14 5/8 in"]
    assert measures(views["depth"]) == []
    case = {v.slot: v.svg for v in drawing_of(bookcase_solids(), UnitSystem.METRIC, {}).views}
    assert measures(case["front"]) == ["800 mm", "1830 mm"]


def test_the_three_flat_views_share_one_scale() -> None:
    views = {slot: ElementTree.fromstring(svg) for slot, svg in drawn().items()}

    def box(slot: str, name: str) -> tuple[float, float]:
        group = next(g for g in views[slot].iter("g") if (g.findtext("title") or "").startswith(f"{name}:"))
        polygons = [p.get("points", "") for p in group.iter("polygon")]
        points = [tuple(map(float, pair.split(","))) for text in polygons for pair in text.split()]
        xs, ys = [p[0] for p in points], [p[1] for p in points]
        return max(xs) - min(xs), max(ys) - min(ys)

    front, above, right = box("front", "seat.1"), box("above", "seat.1"), box("right", "seat.1")
    assert front[0] == pytest.approx(above[0], abs=0.2)
    assert front[1] == pytest.approx(right[1], abs=0.2)
    assert above[1] == pytest.approx(right[0], abs=0.2)


def test_lettering_stays_readable_when_a_view_is_350_wide() -> None:
    # dimensions are set at 14 units; 350 / width must leave them at least 10 px tall
    for views in (
        drawn(),
        {v.slot: v.svg for v in drawing_of(bookcase_solids(), UnitSystem.METRIC, {}).views},
    ):
        for svg in views.values():
            wide = float(ElementTree.fromstring(svg).get("width", "0"))
            assert 14 * min(1, 350 / wide) >= 10


def test_flagged_parts_stand_out_by_strokes_and_a_label_not_by_colour_alone() -> None:
    plain, flagged = drawn()["front"], drawn(rail_front=Flag((2, 5), Severity.WARNING))["front"]
    assert "hatch" not in plain
    assert 'class="tag-text' not in plain
    assert '<path class="hatch warning" d="M' in flagged
    assert '<a href="#p-finding-2">' in flagged
    assert ">2, 5</text>" in flagged
    assert flagged.count('class="flagged warning"') == 1


def test_a_flagged_part_behind_another_is_dashed() -> None:
    views = drawn(rail_back=ERROR)
    assert 'class="hidden"' in views["front"]
    assert 'class="hidden"' not in drawn(rail_front=ERROR)["front"]


def test_labels_do_not_cover_each_other() -> None:
    flags = {solid.name: Flag((n + 1,), Severity.ERROR) for n, solid in enumerate(bench_solids())}
    for view in drawing_of(bench_solids(), UnitSystem.INCH, flags).views:
        boxes = [
            tuple(float(node.get(key, "0")) for key in ("x", "y", "width", "height"))
            for node in ElementTree.fromstring(view.svg).iter("rect")
        ]
        assert len(boxes) == 10
        for i, (x, y, w, h) in enumerate(boxes):
            for a, b, c, d in boxes[i + 1 :]:
                assert x + w <= a or a + c <= x or y + h <= b or b + d <= y, view.name


def test_nothing_to_draw_is_said() -> None:
    empty = drawing_of((), UnitSystem.INCH, {})
    assert empty.views == ()
    assert empty.remarks == ("No part could be set out in space, so there is nothing to draw.",)


def test_ten_thousand_parts_are_cut_to_size_and_say_so() -> None:
    many = [
        board(f"s.{n}", (n % 100 * 100, n // 100 * 300, 0), (90, 250, 20), Axis.DEEP, Axis.ACROSS)
        for n in range(10_000)
    ]
    flags = {f"s.{n}": ERROR for n in range(9_000, 9_050)}
    drawing = drawing_of(many, UnitSystem.METRIC, flags)
    assert drawing.remarks == (
        "400 of 10000 parts are drawn: those with findings first, then the largest.",
        "50 parts are hatched; 30 of them carry a label, and the list of findings names them all.",
    )
    assert (DRAWN, LABELLED) == (400, 30)
    assert set(flags) <= set(drawing.anchors)
    assert len(drawing.anchors) == 400
    assert sum(len(view.svg) for view in drawing.views) < 2_000_000


def test_hatching_stays_inside_its_shape() -> None:
    shape = ((10.0, 10.0), (80.0, 25.0), (70.0, 90.0), (15.0, 60.0))
    path = hatching(shape, "h", crossed=True)
    strokes = [tuple(map(float, pair)) for pair in re.findall(r"[ML](-?[\d.]+),(-?[\d.]+)", path)]
    lines = [LineString(pair) for pair in zip(strokes[::2], strokes[1::2], strict=True)]
    # by hand, every 7: x + y runs from 20 to 160 (21 … 154: 20 strokes), y - x from -55 to 45 (-49 … 42: 14)
    assert len(lines) == 34
    room = Polygon(shape).buffer(0.15)  # coordinates are rounded to a tenth
    assert all(room.contains(line) for line in lines)
    assert hatching(((0, 0), (1, 0), (1, 1)), "h") == ""


def test_numbers_and_words_in_strokes() -> None:
    assert [number(x) for x in (0.0, -0.04, 1.25, -3.0, 10.06)] == ["0", "0", "1.2", "-3", "10.1"]
    assert outline(((0, 0), (1, 0.5)), "x") == '<polygon class="x" points="0,0 1,0.5"/>'
    assert (
        label((1, 2), "<a>&\"'\x1b", "m") == '<text class="m" x="1" y="2">&lt;a&gt;&amp;&quot;&#x27;␛</text>'
    )


def test_same_strokes_whatever_the_order_of_flags() -> None:
    one = {"seat.1": ERROR, "rail.front": Flag((2,), Severity.WARNING)}
    other = dict(reversed(one.items()))
    assert drawing_of(bench_solids(), UnitSystem.INCH, one) == drawing_of(
        bench_solids(), UnitSystem.INCH, other
    )


def test_seen_keeps_the_solid() -> None:
    leg = slanted_leg()
    assert isinstance(seen(leg, FRONT), Seen)
    assert seen(leg, FRONT).solid is leg
