"""Shaped and slanted parts on paper, against rays cast through their convex pieces by brute force."""

from __future__ import annotations

import math
import random
import xml.etree.ElementTree as ElementTree

import pytest
from shapely.geometry import MultiPoint, Point, Polygon
from shapely.ops import unary_union

from reviewer.findings import Severity
from reviewer.geometry.slanting import level_section
from reviewer.model.plan import Axis
from reviewer.model.shapes import Arrises, Corners, FittedNotch, Hole, Lean, Reach, Rising, Rounded
from reviewer.reports.drawing import Flag, drawing_of
from reviewer.reports.projection import ABOVE, FRONT, IN_DEPTH, RIGHT, View, dot, far_to_near, seen
from reviewer.reports.shaped import Depths, shaped_pieces
from reviewer.setting_out.solid import Solid, Vector, square_solid
from reviewer.units import UnitSystem
from tests.setting_out.shaped_by_hand import (
    ACROSS_FLAT,
    ACROSS_ON_EDGE,
    DEEP_FLAT,
    SPAN,
    UPRIGHT,
    WHOLE,
    made,
    notch,
    placed,
)
from tests.setting_out.test_shaped_parts import frame_rails

VIEWS = (FRONT, RIGHT, ABOVE, IN_DEPTH)


def leg(name: str, x: float, y: float, across: float, deep: float) -> object:
    wide, thick = level_section(across, deep, 1, 45, 30)
    high = (x + wide + 400 * abs(across), y + thick + 400 * abs(deep), 400.0)
    return placed(name, (x, y, 0), high, (2, 0, 1), slant=Lean(across, deep, SPAN))


def stool() -> list[Solid]:
    run = 0.12
    seat = [Corners("rounded", 60, (), SPAN), Arrises("rounded", 6, SPAN),
            Hole(2, "high", 80, None, (Reach("middle"), Reach("middle")), SPAN)]  # fmt: skip
    return list(
        made(
            leg("l1", 0, 0, run, run), leg("l2", 500, 0, -run, run),  # type: ignore[arg-type]
            leg("l3", 0, 250, run, -run), leg("l4", 500, 250, -run, -run),  # type: ignore[arg-type]
            placed("seat", (0, -20, 400), (600, 400, 430), ACROSS_FLAT, seat),
            placed("rung", (120, 160, 180), (480, 190, 210), ACROSS_FLAT, [Rounded(30, SPAN)]),
            placed("brace", (140, 80, 60), (400, 100, 400), ACROSS_ON_EDGE,
                   slant=Rising(0, 2, "high", "plumb", "level", SPAN), width=50),
        ).values()
    )  # fmt: skip


def laps() -> list[Solid]:
    post = square_solid("post", (50, 300, 20), (100, 350, 500), Axis.UP, Axis.ACROSS, Axis.DEEP)
    crossed = made(
        placed("lower", (0, 170, 0), (400, 230, 20), ACROSS_FLAT,
               [notch(Reach("middle", 0, 60), WHOLE, Reach("high", 0, 10))]),
        placed("upper", (170, 0, 0), (230, 400, 20), DEEP_FLAT,
               [notch(WHOLE, Reach("middle", 0, 60), Reach("low", 0, 10))]),
    )  # fmt: skip
    return [*crossed.values(), post]


def heap(seed: int) -> list[Solid]:
    """Leaning posts, some with a notch for a board that goes through them."""
    chance = random.Random(seed)
    boards = [
        square_solid(
            f"b{i}", (0, 150.0 * i + 10, 200), (900, 150.0 * i + 35, 260), Axis.ACROSS, Axis.UP, Axis.DEEP
        )
        for i in range(3)
    ]
    posts = []
    for i in range(3):
        for j in range(4):
            run = chance.uniform(-0.2, 0.2)
            x, y = 200.0 * j + 20, 150.0 * i + chance.choice([0.0, 40.0])
            low, high = (x, y, 0.0), (x + 45 + 400 * abs(run), y + 45, 400.0)
            posts.append(
                placed(f"p{i}.{j}", low, high, UPRIGHT, [FittedNotch(f"b{i}", 0.0, SPAN)] if y % 150 == 0 else [],
                       Lean(run, 0.0, SPAN))
            )  # fmt: skip
    return [*made(*posts, square=boards).values(), *boards]


def entry(solid: Solid, eye: Vector, way: Vector) -> float:
    """How far along a ray a solid begins, piece by piece and plane by plane."""
    best = math.inf
    planes = (
        [[(face.normal, face.offset) for face in piece.faces] for piece in solid.body.pieces]
        if solid.body
        else [
            [
                (
                    tuple(sign if a == axis else 0.0 for a in range(3)),
                    sign * (solid.high if sign > 0 else solid.low)[axis],
                )
                for axis in range(3)
                for sign in (1.0, -1.0)
            ]
        ]
    )
    for piece in planes:
        near, far = -math.inf, math.inf
        for normal, offset in piece:
            turn, room = dot(normal, way), offset - dot(normal, eye)  # type: ignore[arg-type]
            if abs(turn) < 1e-12:
                if room < 0:
                    near = math.inf
            elif turn > 0:
                far = min(far, room / turn)
            else:
                near = max(near, room / turn)
        if near < far - 1e-6:
            best = min(best, near)
    return best


@pytest.mark.parametrize("view", VIEWS, ids=lambda view: view.name)
@pytest.mark.parametrize(
    "scene",
    [
        stool,
        laps,
        lambda: list(frame_rails(600, 400, 60, 20).values()),
        *(lambda s=s: heap(s) for s in range(3)),
    ],
    ids=["stool", "half lap", "frame", "heap 0", "heap 1", "heap 2"],
)
def test_near_wood_covers_far_wood(scene: object, view: View) -> None:
    solids: list[Solid] = scene()  # type: ignore[operator]
    shown = [
        piece
        for solid in solids
        for piece in (shaped_pieces(solid, view) if solid.body else [seen(solid, view)])
    ]
    order = far_to_near(shown, view, Depths(view).in_front)
    assert len(order) == len(shown)
    outlines = [unary_union([Polygon(face.corners) for face in one.faces]).buffer(1e-9) for one in order]
    low = [min(one.low[i] for one in order) for i in (0, 1)]
    high = [max(one.high[i] for one in order) for i in (0, 1)]
    chance = random.Random(5)
    hits = wrong = 0
    for _ in range(500):
        x, y = chance.uniform(low[0], high[0]), chance.uniform(low[1], high[1])
        eye = tuple(x * view.right[i] + y * view.up[i] + 1e5 * view.toward[i] for i in range(3))
        way = tuple(-part for part in view.toward)
        distances = sorted((entry(s, eye, way), s.name) for s in solids)  # type: ignore[arg-type]
        if distances[0][0] == math.inf:
            continue
        if len(distances) > 1 and distances[1][0] - distances[0][0] < 0.1:
            continue  # on a seam between two
        hits += 1
        on_top = [
            one.solid.name for one, shape in zip(order, outlines, strict=True) if shape.contains(Point(x, y))
        ]
        wrong += not on_top or on_top[-1] != distances[0][1]
    assert hits > 50
    assert wrong == 0


@pytest.mark.parametrize("view", VIEWS, ids=lambda view: view.name)
def test_visible_faces_of_a_convex_part_fill_its_shadow(view: View) -> None:
    for solid in stool():
        assert solid.body is not None
        (piece,) = solid.body.pieces
        (one,) = shaped_pieces(solid, view)
        points = [(dot(c, view.right), dot(c, view.up)) for face in piece.faces for c in face.ring]
        shadow = MultiPoint(points).convex_hull
        faces = [Polygon(face.corners) for face in one.faces if face.shade != "hole"]
        assert unary_union(faces).symmetric_difference(shadow).area < 1e-6 * shadow.area
        assert sum(face.area for face in faces) == pytest.approx(shadow.area)
        # What is drawn as an edge runs all round the shadow.
        rims = unary_union([Polygon(p).buffer(0.01) if len(set(p)) > 2 else MultiPoint(p).convex_hull.buffer(0.01)
                            for face in one.faces if face.rims for p in face.rims])  # fmt: skip
        assert rims.buffer(0.01).contains(shadow.boundary)


def test_a_notched_rail_shows_no_line_where_its_pieces_meet() -> None:
    lower = laps()[0]
    rims = [rim for one in shaped_pieces(lower, FRONT) for face in one.faces for rim in face.rims or ()]
    # From the front: a U. Its outline has 8 corners, and no side stands at the notch's foot below 10.
    uprights = sorted((a[0], min(a[1], b[1]), max(a[1], b[1])) for a, b in rims if abs(a[0] - b[0]) < 1e-6)
    assert [tuple(round(x, 6) for x in each) for each in uprights] == [
        (0, 0, 20),
        (170, 10, 20),
        (230, 10, 20),
        (400, 0, 20),
    ]


def test_holes_show_in_the_views_that_look_into_them() -> None:
    seat = next(solid for solid in stool() if solid.name == "seat")
    mouths = {
        view.name: sum(face.shade == "hole" for one in shaped_pieces(seat, view) for face in one.faces)
        for view in VIEWS
    }
    assert list(mouths.values()) == [0, 0, 1, 1]


def test_drawings_of_shaped_parts_are_well_formed() -> None:
    drawing = drawing_of([*stool(), *laps()], UnitSystem.METRIC, {"upper": Flag((1,), Severity.ERROR)})
    for view in drawing.views:
        root = ElementTree.fromstring(view.svg)
        ids = [node.get("id") for node in root.iter() if node.get("id")]
        assert len(ids) == len(set(ids)) == 11  # the view and its ten parts, each once
    depth = next(view.svg for view in drawing.views if view.slot == "depth")
    assert 'class="rim flagged error"' in depth
    assert drawing.anchors["upper"] in depth
    again = drawing_of([*stool(), *laps()], UnitSystem.METRIC, {"upper": Flag((1,), Severity.ERROR)})
    assert drawing == again
