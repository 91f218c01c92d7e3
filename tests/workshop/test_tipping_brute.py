"""Every state of random pieces against a scan: the piece is turned in space about each side of its feet.

The scan shares nothing with the project but the places of the parts: the outline of the feet is that of a
general geometry library, leaning is a turn of every weight about the edge, and what opens is tried at many
openings, in every set that does not want the same room.
"""

from __future__ import annotations

import math
import random
from collections.abc import Iterator
from itertools import combinations

import pytest
from shapely.geometry import MultiPoint

from reviewer.review import Review
from reviewer.units import MM_PER_INCH, NEWTON_PER_KG, NEWTON_PER_POUND
from reviewer.workshop.opening import Opening
from reviewer.workshop.tipping import State
from reviewer.workshop.tipping_scene import Scene
from reviewer.workshop.tipping_states import Tipping
from tests.support import review_of

Place = tuple[float, float, float]
Edge = tuple[tuple[float, float], tuple[float, float]]
Point = tuple[float, Place]  # newtons and where they act

FLOOR_LEAN = math.atan(0.1875 / 12)  # the limit floor-out: 3/16 in in each foot
CARPET = 0.43 * MM_PER_INCH
CHILD = 60 * NEWTON_PER_POUND
PUSH, PUSH_HIGH = 10 * NEWTON_PER_POUND, 56 * MM_PER_INCH
SEEDS = range(240)
OPENINGS_TRIED = 361


def interlocked(seed: int) -> bool:
    """Whether the drawers of a case lock one another, so that one opens at a time."""
    return seed % 2 == 0


def random_plan(seed: int) -> str:
    """A stool on three legs, a splayed stand, or a case with drawers and a door."""
    dice = random.Random(seed)
    head = [
        f'plan "Random {seed}" in millimetres',
        "stock post: actual 40 x 40 european beech, 2.4 m",
        "stock wide: actual 20 x 600 european beech, 2.4 m",
        "stock ply: birch plywood 18 mm, sheet 1220 x 2440",
        "stock thin: birch plywood 6 mm, sheet 1220 x 2440",
    ]
    if seed % 3 == 0:
        tall = dice.randint(300, 900)
        feet = [(dice.randint(200, 700), dice.randint(200, 700)) for _ in range(3 if seed % 2 else 4)]
        head += [
            f"part leg.{i}: post, upright, {tall} tall, on floor, left at {x}, front at {y}"
            for i, (x, y) in enumerate(feet)
        ]
        head.append(
            f"part seat: wide, across, flat, {dice.randint(200, 700)} long, on leg.0, "
            f"left at {dice.randint(100, 260)}, front at {dice.randint(80, 260)}"
        )
        head.append("load seat: 1 person standing")
    elif seed % 3 == 1:
        tall = dice.randint(300, 1100)
        x, y, away, deep = 300, 300, dice.randint(200, 600), dice.randint(160, 400)
        towards = ("left", "right", "back") if seed % 2 else ("left", "right", "front", "back")
        places = [(x, y), (x + away, y), (x + away // 2, y + deep), (x, y + deep)]
        head += [
            f"part leg.{i}: post, upright, {tall} tall, on floor, left at {px}, front at {py}, "
            f"splayed {dice.randint(2, 14)} degrees towards {way}"
            for i, ((px, py), way) in enumerate(zip(places, towards, strict=False))
        ]
        head += [
            f"part seat: wide, across, flat, {away + dice.randint(40, 300)} long, bottom at {tall}, "
            f"left at {x - dice.randint(0, 100)}, front at {y - dice.randint(0, 120)}",
            "load seat: 1 person standing",
        ]
    else:
        wide, deep, tall = dice.randint(420, 1000), dice.randint(280, 560), dice.randint(600, 1600)
        drawers, travel = dice.randint(1, 3), dice.randint(120, 480)
        head += [
            f"outline case: {wide} across, {deep} deep, {tall} tall, on floor",
            "part side for each of left, right: ply, facing side, as deep as case, as tall as case, on floor",
            "    flush with each of case, flush with front of case",
            "part top: ply, flat, as deep as case, between side.left and side.right across, flush with top of case",
            "    flush with front of case",
            "part base: ply, flat, as deep as case, between side.left and side.right across, bottom at 80",
            "    flush with front of case",
            "part mid: ply, flat, as deep as case, between side.left and side.right across",
            f"    bottom at {tall // 2}, flush with front of case",
            "assembly drawer: between side.left and side.right across with 12 each end, front 0 behind front of case",
            f"    {deep - 60} deep, 100 tall, {drawers} copies spread evenly up between mid and top",
            f"    slides out {travel}",
            "    part wall for each of left, right: thin, facing side, as deep as drawer, as tall as drawer",
            "        flush with each of drawer, flush with front of drawer, flush with bottom of drawer",
            "    part end for each of front, back: thin, facing front, between wall.left and wall.right across",
            "        flush with each of drawer, as tall as drawer, flush with bottom of drawer",
            "    part floor: thin, flat, between wall.left and wall.right across",
            "        from back of end.front to front of end.back, flush with bottom of drawer",
            "part door: ply, facing front, from left of side.left to right of side.right, against front of side.left",
            f"    from top of base to bottom of mid, opens {dice.choice((80, 95, 110, 170))} degrees, "
            f"hinged {dice.choice(('left', 'right', 'bottom'))}",
            f"fit drawer.* to side.*: slides{', one at a time' if interlocked(seed) else ''}",
            "fit door to side.left: 2 hinges",
        ]
        if dice.random() < 0.4:
            head.append(f"load drawer.*.floor: {dice.randint(2, 30)} kg")
        head.append(f"room: indoors, floor {dice.choice(('wood', 'carpet'))}, children under 6")
    return "\n".join(head) + "\n"


# ------------------------------------------------------------------ the scan


def sides(review: Review, tipping: Tipping) -> list[Edge]:
    """The sides of the outline around all that stands on the floor, from the parts' own lowest corners."""
    feet = []
    for name in tipping.piece.parts:
        solid = review.setting.solids[name]
        if solid.body is None:
            (x0, y0, z0), (x1, y1, _) = solid.low, solid.high
            corners: list[Place] = [(x, y, z0) for x in (x0, x1) for y in (y0, y1)]
        else:
            corners = [c for piece in solid.body.pieces for face in piece.faces for c in face.ring]
        feet += [(x, y) for x, y, z in corners if abs(z) < 1e-6]
    ring = list(MultiPoint(feet).convex_hull.exterior.coords)[:-1]
    return [(a, b) for a, b in zip(ring, ring[1:] + ring[:1], strict=True) if math.dist(a, b) > 1e-6]


def inside_by(edge: Edge, place: Place, lean: float, middle: Place) -> float:
    """How far inside an edge a place is, once all is turned about the edge by ``lean``, away from the middle."""
    (ax, ay), (bx, by) = edge
    run = math.dist(*edge)
    kx, ky = (bx - ax) / run, (by - ay) / run
    nx, ny = -ky, kx  # towards the inside, or away from it
    if (middle[0] - ax) * nx + (middle[1] - ay) * ny < 0:
        nx, ny = -nx, -ny
    rx, ry, rz = place[0] - ax, place[1] - ay, place[2]
    # Turned about the edge so that the far side rises (Rodrigues, with the axis in the floor).
    along = rx * kx + ry * ky
    away = rx * nx + ry * ny
    turned = away * math.cos(lean) - rz * math.sin(lean)
    assert math.isfinite(along)
    return turned


def moments(edge: Edge, points: list[Point], lean: float, middle: Place) -> tuple[float, float]:
    """What holds and what turns."""
    each = [newtons * inside_by(edge, place, lean, middle) for newtons, place in points]
    return sum(m for m in each if m > 0), -sum(m for m in each if m < 0)


def depth_of(edge: Edge, edges: list[Edge], middle: Place) -> float:
    return max(inside_by(edge, (*corner, 0.0), 0.0, middle) for pair in edges for corner in pair)


def ways(opening: Opening) -> Iterator[float]:
    most = opening.travel if opening.way == "drawer" else math.radians(opening.moved.moving.degrees or 0)
    for step in range(OPENINGS_TRIED):
        yield most * step / (OPENINGS_TRIED - 1)


def opened_by_hand(opening: Opening, place: Place, turn: float) -> Place:
    """A drawer comes to the front; a door or a flap turns about the edge of its box that the plan hinges."""
    if opening.way == "drawer":
        return place[0], place[1] - turn, place[2]
    low, high = opening.box
    axis, end = opening.moved.moving.hinge or (0, "low")
    hinge_at = (low if end == "low" else high)[axis]
    sign = 1.0 if end == "low" else -1.0
    u, v = sign * (place[axis] - hinge_at), low[1] - place[1]
    u2, v2 = u * math.cos(turn) - v * math.sin(turn), u * math.sin(turn) + v * math.cos(turn)
    moved = list(place)
    moved[axis] = hinge_at + sign * u2
    moved[1] = low[1] - v2
    return moved[0], moved[1], moved[2]


def weights(
    tipping: Tipping, review: Review, opened: dict[str, float], filled: bool
) -> tuple[list[Point], list[Point]]:
    """Every part where it is, as one for what stays shut; and what is in open drawers."""
    shut_kg, shut = 0.0, [0.0, 0.0, 0.0]
    points: list[Point] = []
    contents: list[Point] = []
    moving = {name: opening for opening in tipping.openings for name in opening.parts}
    grouped: dict[str, list[tuple[float, Place]]] = {}
    for name in tipping.piece.parts:
        mass = review.masses[name]
        where: Place = (mass.x, mass.y, mass.z)
        owner = moving.get(name)
        if owner is not None and owner.name in opened:
            grouped.setdefault(owner.name, []).append(
                (mass.kg, opened_by_hand(owner, where, opened[owner.name]))
            )
        else:
            shut_kg += mass.kg
            shut = [s + mass.kg * w for s, w in zip(shut, where, strict=True)]
    points.append((shut_kg * NEWTON_PER_KG, (shut[0] / shut_kg, shut[1] / shut_kg, shut[2] / shut_kg)))
    for group in grouped.values():
        kg = sum(each for each, _ in group)
        x, y, z = (sum(each * place[axis] for each, place in group) / kg for axis in range(3))
        points.append((kg * NEWTON_PER_KG, (x, y, z)))
    for opening in tipping.openings:
        if filled and opening.name in opened and opening.contents is not None:
            inside = opening.contents
            at = opened_by_hand(opening, (inside.x, inside.y, inside.z), opened[opening.name])
            contents.append((inside.kg * NEWTON_PER_KG, at))
    return points, contents


def at_worst(
    edge: Edge, points: list[Point], contents: list[Point], others: list[Point], lean: float, middle: Place
) -> tuple[float, float]:
    """Contents that may be gone count only where they turn it over."""
    kept = [each for each in contents if inside_by(edge, each[1], lean, middle) < 0]
    return moments(edge, [*points, *kept, *others], lean, middle)


def boxes_clash(one: list[Place], two: list[Place]) -> bool:
    return all(
        min(max(p[a] for p in one), max(p[a] for p in two))
        - max(min(p[a] for p in one), min(p[a] for p in two))
        > 0.05
        for a in range(3)
    )


def ratio_of(held: float, turned: float) -> float:
    return held / turned if turned > 1e-9 else math.inf


def state_of(tipping: Tipping, kind: str) -> State | None:
    return next((state for state in tipping.states if state.kind == kind), None)


@pytest.mark.parametrize("seed", SEEDS)
def test_each_state_is_the_worst_of_a_scan(seed: int) -> None:
    review = review_of(random_plan(seed))
    assert review.tipping
    for tipping in review.tipping:
        check(review, tipping, locked=interlocked(seed))


def check(review: Review, tipping: Tipping, *, locked: bool) -> None:
    edges = sides(review, tipping)
    middle = (
        sum(x for a, _ in edges for x in a[:1]) / len(edges),
        sum(a[1] for a, _ in edges) / len(edges),
        0.0,
    )
    carpet = review.plan.room is not None and review.plan.room.floor == "carpet"

    def lean_of(edge: Edge, *, block: bool = False) -> float:
        if block or carpet:
            return math.asin(min(1.0, CARPET / depth_of(edge, edges, middle)))
        return FLOOR_LEAN

    shut, _ = weights(tipping, review, {}, filled=False)

    # On a floor out of level: weight by arm against weight by height, over every side.
    uneven = state_of(tipping, "carpet" if carpet else "floor")
    assert uneven is not None
    expected = min(
        ratio_of(
            max(0.0, sum(n * inside_by(edge, p, 0.0, middle) for n, p in shut)) * math.cos(lean_of(edge)),
            sum(n * p[2] for n, p in shut) * math.sin(lean_of(edge)),
        )
        for edge in edges
    )
    assert uneven.balance.ratio == pytest.approx(expected, rel=1e-6)

    # Each door and drawer at many openings; all that do not clash, in every set.
    alone, everything, on_one, on_all = math.inf, math.inf, math.inf, math.inf
    by_edge = [(edge, lean_of(edge)) for edge in edges]
    for edge, lean in by_edge:
        block = lean_of(edge, block=True)
        worst_turns: dict[str, float] = {}
        for opening in tipping.openings:
            found = []
            for turn in ways(opening):
                points, contents = weights(tipping, review, {opening.name: turn}, filled=True)
                mass = points[1]
                found.append((inside_by(edge, mass[1], 0.0, middle), turn))
                alone = min(alone, ratio_of(*at_worst(edge, points, contents, [], lean, middle)))
            worst_turns[opening.name] = min(found)[1]
            if opening.way != "drawer" and worst_turns[opening.name] < 0.1:
                worst_turns[opening.name] = 0.0  # hardly open at all
            corners = [
                opened_by_hand(opening, corner, worst_turns[opening.name]) for corner in opening.corners()
            ]
            points, contents = weights(
                tipping, review, {opening.name: worst_turns[opening.name]}, filled=True
            )
            if min(c[2] for c in corners) > PUSH_HIGH or worst_turns[opening.name] < 1e-9:
                continue
            for corner in corners:
                child = (CHILD, (corner[0], corner[1], min(corner[2], PUSH_HIGH)))
                on_one = min(on_one, ratio_of(*at_worst(edge, points, contents, [child], block, middle)))
        for many in range(2, len(tipping.openings) + 1):
            for some in combinations(tipping.openings, many):
                if locked and sum(o.name.startswith("drawer") for o in some) > 1:
                    continue
                placed = {
                    o.name: [opened_by_hand(o, c, worst_turns[o.name]) for c in o.corners()] for o in some
                }
                if any(boxes_clash(placed[a.name], placed[b.name]) for a, b in combinations(some, 2)):
                    continue
                turns = {o.name: worst_turns[o.name] for o in some}
                points, contents = weights(tipping, review, turns, filled=True)
                everything = min(everything, ratio_of(*at_worst(edge, points, contents, [], lean, middle)))
                for o in some:
                    if min(c[2] for c in placed[o.name]) > PUSH_HIGH:
                        continue
                    for corner in placed[o.name]:
                        child = (CHILD, (corner[0], corner[1], min(corner[2], PUSH_HIGH)))
                        made = at_worst(edge, points, contents, [child], block, middle)
                        on_all = min(on_all, ratio_of(*made))
    scan_step = 2e-3  # a door is tried at 361 openings
    for kind, scanned in (("open", alone), ("all open", everything)):
        state = state_of(tipping, kind)
        assert (state is None) == (scanned == math.inf), kind
        if state is not None and math.isfinite(scanned):
            assert state.balance.ratio == pytest.approx(scanned, rel=scan_step), kind
    scene = Scene(tipping.piece, review.plan, review.setting, review.limits, tipping.openings)
    hung = [s for e in scene.edges for s in (scene._child_on(e, o, ()) for o in tipping.openings) if s]
    if hung and math.isfinite(on_one):
        assert min(s.balance.ratio for s in hung) == pytest.approx(on_one, rel=scan_step)
    together = [s for s in map(scene.child_all_open, scene.edges) if s is not None]
    if together and math.isfinite(on_all):
        assert min(s.balance.ratio for s in together) == pytest.approx(on_all, rel=scan_step)

    # A push at the top, over every side.
    high = min(tipping.piece.height, PUSH_HIGH)
    pushes = []
    for edge in edges:
        lean = lean_of(edge, block=True) if carpet else 0.0
        held, turned = moments(edge, shut, lean, middle)
        pushes.append(ratio_of(held, turned + PUSH * high * math.cos(lean)))
    assert min(scene.push(edge).balance.ratio for edge in scene.edges) == pytest.approx(min(pushes), rel=1e-6)
