"""The wood in front of and beside each fastener, against points sampled along its path through the solids."""

from __future__ import annotations

from collections.abc import Sequence

from reviewer.geometry.vectors import Vector, dot, moved
from reviewer.review import Review
from reviewer.setting_out.bodies import body_of
from reviewer.workshop.paths import Paths
from reviewer.workshop.placed import Placed
from reviewer.workshop.wood_along import Wood
from tests.support import review_of
from tests.workshop.random_corners import corners

CORNERS = [*corners(110, seed=8), *corners(130, seed=9, shaped=True)]
STEP_MM = 0.5


def in_wood(review: Review, bodies: dict[str, object], at: Vector, only: Sequence[str] = ()) -> bool:
    """Whether a point lies in any part (or in one of ``only``), by the faces of its convex pieces."""
    for name, solid in review.setting.solids.items():
        if only and name not in only:
            continue
        if name not in bodies:
            bodies[name] = body_of(solid)
        body = bodies[name]
        for piece in body.pieces:  # type: ignore[attr-defined]
            if all(dot(face.normal, at) <= face.offset + 1e-6 for face in piece.faces):
                return True
    return False


def comes_out_after(review: Review, bodies: dict[str, object], each: Placed, upto: float) -> float:
    """How far along the fastener from its head the wood ends, beginning at the seam; by points."""
    along = each.grip + STEP_MM
    if not in_wood(review, bodies, moved(each.head, each.direction, along), (each.point_part,)):
        return each.grip  # it misses the far part
    while along < upto and in_wood(review, bodies, moved(each.head, each.direction, along)):
        along += STEP_MM
    return along


def test_random_corners_come_out_where_points_along_their_paths_do() -> None:
    out, judged = 0, 0
    for text in CORNERS:
        review = review_of(text)
        paths, bodies = Paths(Wood(review.setting)), {}
        for each in review.placed:
            if each.kind not in ("screws", "nails", "pocket screws") or each.grip >= each.length - 1:
                continue
            reach = paths.least([each])
            square = dot(each.direction, each.surface_normal)
            worked_out = each.grip + reach.behind / square
            brute = comes_out_after(review, bodies, each, each.length + 8)
            judged += 1
            # What lies behind is looked at to 10 mm past the point and no further.
            assert min(worked_out, each.length + 8) <= brute + 2 * STEP_MM, text
            assert min(worked_out, each.length + 8) >= brute - 2 * STEP_MM, text
            out += brute < each.length - STEP_MM
    assert judged > 600
    assert out > 40


def test_threads_that_show_do_so_by_points_around_them() -> None:
    shown = clear = 0
    for text in CORNERS:
        review = review_of(text)
        paths, bodies = Paths(Wood(review.setting)), {}
        for each in review.placed:
            if each.mouth is None or each.kind == "bolts":
                continue
            beside = paths.beside(each)
            # Somewhere along it a point at half its thickness lies in no wood; else all do, with the axis.
            radius, way = each.diameter / 2, each.direction
            aside = (
                way[1] * each.along[2] - way[2] * each.along[1],
                way[2] * each.along[0] - way[0] * each.along[2],
                way[0] * each.along[1] - way[1] * each.along[0],
            )
            end = each.length - 2 * each.diameter
            near = (each.head_part, each.point_part, *paths.wood.beside(each.point_part))
            start = each.grip + paths.past_seam(each)
            samples = [start + (end - start) * number / 80 for number in range(1, 81)]
            if each.point_part not in review.setting.solids or not samples[-1] > samples[0]:
                continue
            share = 1.0 if beside is not None else 0.98
            bare = any(
                not in_wood(
                    review, bodies, moved(moved(each.head, way, far), side, sign * radius * share), near
                )
                for far in samples
                for side in (each.along, aside)
                for sign in (1, -1)
            )
            if beside is not None:
                shown += 1
                assert bare, text
            elif all(in_wood(review, bodies, moved(each.head, way, far), near) for far in samples):
                clear += 1
                assert not bare, text
    assert shown > 5
    assert clear > 300
