"""Doors and drawers open, castors turned inwards, floors out of level: worked examples of statics by hand.

The dresser is that of the safety notes' checks: a case of 70 lb at (9, 18), four drawers of 10 lb at 9 in
when shut and 6, 14, 22 and 30 in up, travel 14 in, faces above the front feet, base 18 in deep, 36 in tall.
"""

from __future__ import annotations

from dataclasses import replace

import pytest

from reviewer.limits import Limits
from reviewer.mechanics.mass import Mass
from reviewer.reference.limits import default_limits
from reviewer.review import Review
from reviewer.units import KG_PER_POUND, MM_PER_FOOT, MM_PER_INCH, NEWTON_PER_POUND
from reviewer.workshop.opening import Opening, clash
from reviewer.workshop.standing import Piece
from reviewer.workshop.steadying import tried_changes, wider
from reviewer.workshop.tipping import State, side_of
from reviewer.workshop.tipping_scene import Scene
from reviewer.workshop.tipping_states import Tipping, states, storage_tested
from tests.support import findings_of, review_of, told

LIMITS = default_limits()
LEVEL: Limits = {
    **LIMITS,
    "floor-out": LIMITS["floor-out"]._replace(value=LIMITS["floor-out"].value._replace(amount=0.0)),
}
POUND_INCH = NEWTON_PER_POUND * MM_PER_INCH

DRESSER = """\
plan "Dresser" in inches
stock ply: birch plywood 3/4, sheet 48 x 96
stock box: birch plywood 1/2, sheet 48 x 96
outline case: 30 across, 18 deep, 36 tall, on floor
part side for each of left, right: ply, facing side, as deep as case, as tall as case, on floor
    flush with each of case, flush with front of case
part top: ply, flat, as deep as case, between side.left and side.right across, flush with top of case
    flush with front of case
part base: ply, flat, as deep as case, between side.left and side.right across, bottom at 1
    flush with front of case
%s
room: indoors, wall behind%s
"""
DRAWER = """\
assembly drawer{n}: between side.left and side.right across with 1/2 each end, front 0 behind front of case
    17 deep, 5 tall, bottom {up} above floor, slides out 14
    part wall for each of left, right: box, facing side, as deep as drawer{n}, as tall as drawer{n}
        flush with each of drawer{n}, flush with front of drawer{n}, flush with bottom of drawer{n}
    part end for each of front, back: box, facing front, between wall.left and wall.right across
        flush with each of drawer{n}, as tall as drawer{n}, flush with bottom of drawer{n}
    part floor: box, flat, between wall.left and wall.right across
        from back of end.front to front of end.back, flush with bottom of drawer{n}
fit drawer{n} to side.*: slides 16
"""


def dresser_text(room: str = "") -> str:
    return DRESSER % ("".join(DRAWER.format(n=n, up=3 + 8 * n) for n in range(4)), room)


def mass(lb: float, x: float, y: float, z: float) -> Mass:
    return Mass(lb * KG_PER_POUND, x * MM_PER_INCH, y * MM_PER_INCH, z * MM_PER_INCH)


def dresser(room: str = "", filling: float = 0.0) -> tuple[Review, Piece, tuple[Opening, ...]]:
    """The dresser with the weights of the notes; ``filling`` lb in each drawer at its middle."""
    review = review_of(dresser_text(room))
    (found,) = review.tipping
    heights = (6, 14, 22, 30)
    opens = tuple(
        each._replace(mass=mass(10, 15, 9, z), contents=mass(filling, 15, 9, z) if filling else None)
        for each, z in zip(found.openings, heights, strict=True)
    )
    piece = replace(found.piece, masses=(mass(70, 15, 9, 18), *(mass(10, 15, 9, z) for z in heights)))
    return review, piece, opens


def scene_of(made: tuple[Review, Piece, tuple[Opening, ...]], limits: Limits = LEVEL) -> Scene:
    review, piece, opens = made
    return Scene(piece, review.plan, review.setting, limits, opens)


def at_front(scene: Scene, states_there: list[State]) -> State:
    (found,) = [s for s in states_there if side_of(s.balance.edge) == "front"]
    return found


def margin(state: State) -> float:
    return state.balance.margin / POUND_INCH


def test_the_dresser_with_drawers_open() -> None:
    # Safety notes W5: shut 990, one open 850, all open 430 lb·in; just tipped by 60.7 lb, then by 30.7 lb.
    scene = scene_of(dresser())
    empty = at_front(scene, [scene.empty(edge) for edge in scene.edges])
    assert margin(empty) == pytest.approx(990, abs=0.5)
    (front,) = [edge for edge in scene.edges if side_of(edge) == "front"]
    for one in scene.opened(front):
        assert margin(one) == pytest.approx(850, abs=0.5)
        assert one.tips_at is not None
        assert one.tips_at.amount / NEWTON_PER_POUND == pytest.approx(60.7, abs=0.1)
    everything = scene.all_opened(front)
    assert everything is not None
    assert margin(everything) == pytest.approx(430, abs=0.5)
    assert everything.tips_at is not None
    assert everything.tips_at.amount / NEWTON_PER_POUND == pytest.approx(30.7, abs=0.1)


def test_a_child_on_the_top_drawer_tips_it_on_carpet() -> None:
    # Safety notes W6: 60 lb on the top drawer, 32 in up, block 0.43 in: 885.6 against 802.5, short of 83.2;
    # 54.4 lb there just tips it. Ours hold 28 in where the top of the drawer is, so the load is set there.
    scene = scene_of(dresser())
    (front,) = [edge for edge in scene.edges if side_of(edge) == "front"]
    top = scene.openings[3]
    assert top.hold(front, 14 * MM_PER_INCH)[1:] == pytest.approx((-14 * MM_PER_INCH, 32 * MM_PER_INCH))
    child = scene._child_on(front, top, ())
    assert child is not None
    assert margin(child) == pytest.approx(-83.2, abs=0.5)
    assert child.tips_at is not None
    assert child.tips_at.amount / NEWTON_PER_POUND == pytest.approx(54.4, abs=0.1)
    assert child.opened == ((top, 14 * MM_PER_INCH),)
    # W22: a set of 40 lb on top is a load that may be gone, so it is not counted: the answer stays.
    assert all(act.role in ("weight", "load") for act in child.acts)
    # The worst of the four is the highest: its lean takes most.
    assert scene.child(front) == child


def test_all_drawers_filled_and_the_travel_that_just_tips() -> None:
    # Safety notes W8: 12.4 lb in each of 10 lb: +182 lb·in. At 16.03 in of travel it just tips.
    scene = scene_of(dresser(filling=12.4))
    (front,) = [edge for edge in scene.edges if side_of(edge) == "front"]
    everything = scene.all_opened(front)
    assert everything is not None
    assert margin(everything) == pytest.approx(182, abs=1)
    assert everything.balance.ratio == pytest.approx(630 / 448, abs=0.001)


def test_contents_behind_the_feet_do_not_count() -> None:
    # Drawn out by 14 in the middle is 5 in before the feet; by 4 in it would be 5 in behind and hold it down.
    scene = scene_of(dresser(filling=12.4))
    (front,) = [edge for edge in scene.edges if side_of(edge) == "front"]
    own = scene.own(front, 0.0, [(scene.openings[0], 4 * MM_PER_INCH)], filled=True)
    assert [act.role for act in own] == ["weight", "weight"]
    own = scene.own(front, 0.0, [(scene.openings[0], 14 * MM_PER_INCH)], filled=True)
    assert [act.role for act in own] == ["weight", "weight", "contents"]


def test_ballast_and_feet_that_just_balance_it() -> None:
    # Safety notes W24: 4.9 lb fixed at (17, 2) leaves a margin of 0 in W6.
    review, piece, opens = dresser()
    heavier = replace(piece, masses=(*piece.masses, mass(4.909, 15, 17, 2)))
    scene = scene_of((review, heavier, opens))
    (front,) = [edge for edge in scene.edges if side_of(edge) == "front"]
    child = scene._child_on(front, scene.openings[3], ())
    assert child is not None
    assert margin(child) == pytest.approx(0, abs=0.5)


def test_changes_are_tried_on_the_whole_piece() -> None:
    review, piece, opens = dresser(", children under 6")
    met = states(piece, review.plan, review.setting, review.limits, {}, openings=opens)
    found = tried_changes(Tipping(piece, met, opens), review)
    assert {each.change for each in found} == {"restraint", "ballast", "deeper", "interlock"}
    assert found[0].change == "restraint"
    assert [each.ratio for each in found] == sorted((each.ratio for each in found), reverse=True)
    # As much as is told to be enough is enough, worked out anew, and a tenth less is not.
    by_change = {each.change: each for each in found}
    least = review.limit("tip-ratio-least").amount
    for share, reached in ((1.01, True), (0.9, False)):
        wide = wider(piece, ("front",), by_change["deeper"].enough.amount * share)
        again = Tipping(
            wide, states(wide, review.plan, review.setting, review.limits, {}, openings=opens), opens
        )
        assert again.worst is not None
        assert (again.worst.balance.ratio >= least) == reached


DOOR = """\
plan "Case with a door" in inches
stock ply: birch plywood 3/4, sheet 48 x 96
outline case: 24 across, 20 deep, 30 tall, on floor, front at 1
part side for each of left, right: ply, facing side, as deep as case, as tall as case, on floor
    flush with each of case, flush with front of case
part top: ply, flat, as deep as case, between side.left and side.right across, flush with top of case
    flush with front of case
part base: ply, flat, as deep as case, between side.left and side.right across, bottom at 1
    flush with front of case
part door: ply, facing front, from left of case to right of case, against front of side.left
    from bottom of base to top of case, opens %s degrees, hinged %s
fit door to side.left: 2 hinges
room: indoors
"""


def door_scene(degrees: int, hinged: str = "left") -> tuple[Scene, Opening]:
    review = review_of(DOOR % (degrees, hinged))
    (found,) = review.tipping
    scene = Scene(found.piece, review.plan, review.setting, LEVEL, found.openings)
    return scene, found.openings[0]


def test_a_door_is_worst_straight_out_and_a_child_hangs_on_its_far_edge() -> None:
    # Safety notes W19: a door 24 in wide of 20 lb, hinged at the feet line, is 12 in out at 90 degrees.
    scene, door = door_scene(110)
    (front,) = [edge for edge in scene.edges if side_of(edge) == "front"]
    turn = door.turn(front)
    moved = door.opened(door.mass, turn)
    # The hinge is at the front of the door of 0.72 in, so far before the feet; its middle is a hair more than
    # 12 in from it.
    radius = (12**2 + 0.36**2) ** 0.5
    assert front.arm(moved.x, moved.y) / MM_PER_INCH == pytest.approx(-0.72 - radius, abs=0.001)
    hold = door.hold(front, turn)
    assert -front.arm(hold[0], hold[1]) / MM_PER_INCH == pytest.approx(24.72, abs=0.02)
    assert hold[2] / MM_PER_INCH == pytest.approx(30)
    # One that opens by 60 degrees only does not come so far: 12 sin 60 + 0.375 cos 60 less the half thickness.
    scene, short = door_scene(60)
    assert short.turn(front) == pytest.approx(1.0472, abs=0.0001)


def test_a_flap_hinged_below_comes_down_to_the_front() -> None:
    scene, flap = door_scene(90, "bottom")
    (front,) = [edge for edge in scene.edges if side_of(edge) == "front"]
    assert flap.way == "door"
    hold = flap.hold(front, flap.turn(front))
    # Level with the bottom of the case, 29 in out of its hinge, which is 0.72 in before the feet.
    bottom = 1 + 0.72
    assert -front.arm(hold[0], hold[1]) / MM_PER_INCH == pytest.approx(30 - 1 + 0.72, abs=0.02)
    assert hold[2] / MM_PER_INCH < bottom
    assert scene._child_on(front, flap, ()) is not None


LID = """\
plan "Small chest" in inches
stock ply: birch plywood 3/4, sheet 48 x 96
outline chest: 24 across, 10 deep, 12 tall, on floor
part side for each of left, right: ply, facing side, as deep as chest, as tall as chest, on floor
    flush with each of chest, flush with front of chest
part base: ply, flat, as deep as chest, between side.left and side.right across, bottom at 1
    flush with front of chest
part lid: ply, flat, on side.left, from left of chest to right of chest, from front of chest to back of chest
    opens %s degrees, hinged back
fit lid to side.left: 2 hinges
"""


def test_a_lid_that_falls_open_leans_to_the_back_and_no_child_hangs_on_it() -> None:
    review = review_of(LID % 170)
    (found,) = review.tipping
    (lid,) = found.openings
    assert lid.way == "lid"
    scene = Scene(found.piece, review.plan, review.setting, LEVEL, found.openings)
    (back,) = [edge for edge in scene.edges if side_of(edge) == "back"]
    (opened,) = scene.opened(back)
    assert opened.acts[1].lever < 0 < opened.acts[0].lever
    assert scene._child_on(back, lid, ()) is None


def test_drawers_in_each_others_way_are_not_open_together() -> None:
    assert clash(((0, 0, 0), (10, 10, 10)), ((9, 9, 9), (20, 20, 20)))
    assert not clash(((0, 0, 0), (10, 10, 10)), ((10, 0, 0), (20, 10, 10)))


def test_room_in_drawers_and_the_scope() -> None:
    # Between walls of half-inch plywood (really t) and from its bottom up to the one above, 8 in on: of drawers
    # 30 - 2 x 0.72 - 1 in wide and 17 in deep; the last up to the top, 36 - 0.72 - 27 - t.
    review, piece, opens = dresser()
    t = review.plan.stocks["box"].thickness / MM_PER_INCH
    assert review.plan.stocks["ply"].thickness / MM_PER_INCH == pytest.approx(0.72)
    level = (30 - 2 * 0.72 - 1 - 2 * t) * (17 - 2 * t)
    assert [room.name for room in piece.rooms] == [each.name for each in opens]
    inches = [room.counted / MM_PER_INCH**3 for room in piece.rooms]
    # The height is taken less 1/8 in (CPSC guidance on clothing storage units).
    heights = [8 - t - 0.125] * 3 + [36 - 0.72 - 27 - t - 0.125]
    assert inches == pytest.approx([level * each for each in heights], rel=1e-6)
    assert piece.enclosed / MM_PER_FOOT**3 == pytest.approx(sum(inches) / 1728)
    assert storage_tested(piece, LIMITS)
    (found,) = review.tipping
    # 8.5 lb in each cubic foot.
    (first, *_) = found.openings
    assert first.contents is not None
    assert first.contents.kg / KG_PER_POUND == pytest.approx(8.5 * inches[0] / 1728, rel=1e-6)
    lighter = replace(piece, masses=(mass(29.9, 15, 9, 18),))
    assert not storage_tested(lighter, LIMITS)


CASTORS = """\
plan "Trolley" in inches
stock ply: birch plywood 3/4, sheet 48 x 96
part board: ply, flat, 20 across, 16 deep, bottom at %s, left at 10, front at 10
part post: ply, facing side, 12 deep, 30 tall, on board, left at 19, front at 12
%s
"""


def test_castors_stand_inside_the_corners_when_they_are_turned_inwards() -> None:
    # The limit castor-swivel: 1 1/2 in inside every side, so the base is 13 in deep and not 16.
    castors = review_of(CASTORS % (3, "fit board to floor: 4 castors, 3 tall"))
    (found,) = castors.tipping
    scene = Scene(found.piece, castors.plan, castors.setting, castors.limits, found.openings)
    (front,) = [edge for edge in scene.edges if side_of(edge) == "front"]
    assert front.start[1] / MM_PER_INCH == pytest.approx(11.5)
    (glides,) = review_of(CASTORS % (1, "fit board to floor: 4 glides, 1 tall")).tipping
    assert min(y for _, y in glides.piece.polygon or ()) / MM_PER_INCH == pytest.approx(10)
    assert not glides.piece.castors


# ------------------------------------------------------------------ what makers rightly do

LAMP_TABLE = """\
plan "Lamp table" in inches
stock leg: actual 1 1/2 x 1 1/2 hard maple, 8 ft
stock ply: birch plywood 1/2, sheet 48 x 96
stock top: actual 3/4 x 18 hard maple, 4 ft
outline frame: 16 across, 16 deep, 24 tall, on floor
part leg: leg, upright, as tall as frame, in each corner of frame
part side for each of left, right: ply, facing side, 6 tall, between leg.front-each and leg.back-each deep
    flush with each of frame, flush with top of frame
part back: ply, facing front, 6 tall, between leg.back-left and leg.back-right across
    flush with back of frame, flush with top of frame
part top: top, across, flat, on frame, 18 long, centred across on frame, centred deep on frame
assembly drawer: between side.left and side.right across with 1/2 each end, 14 deep, front 0 behind front of frame
    4 tall, bottom 19 above floor, slides out 10
    part wall for each of left, right: ply, facing side, as deep as drawer, as tall as drawer
        flush with each of drawer, flush with front of drawer, flush with bottom of drawer
    part end for each of front, back: ply, facing front, between wall.left and wall.right across
        flush with each of drawer, as tall as drawer, flush with bottom of drawer
    part floor: ply, flat, between wall.left and wall.right across
        from back of end.front to front of end.back, flush with bottom of drawer
fit drawer to side.*: slides
room: indoors, wall behind, children under 6
"""


def test_a_lamp_table_with_a_drawer_is_not_judged_by_tests_for_storage() -> None:
    assert findings_of(LAMP_TABLE, "tips") == ()
    assert findings_of(LAMP_TABLE, "restraint-missing") == ()
    (found,) = review_of(LAMP_TABLE).tipping
    assert [state.kind for state in found.states] == ["empty", "floor", "open"]


def test_a_drawer_so_heavy_that_it_tips_a_table_by_itself_is_told() -> None:
    (line,) = told(LAMP_TABLE + "load drawer.floor: 60 lb\n", "tips")
    assert line.startswith("error ")
    assert "Lamp table tips over to the front with drawer open and filled (the plan): by estimate" in line
    assert "→ Put less weight into what opens and more into the case" in line


def test_a_dresser_where_children_live_is_told_with_the_drawer() -> None:
    text = dresser_text(", children under 6")
    (line,) = told(text, "tips")
    assert line.startswith("error ")
    assert "tips over to the front when a child of 60 lb hangs on drawer3" in line
    assert "with everything open that can be open together" in line
    tied = "restrain case to wall: strap, screws #10 x 2 1/2 into stud, 32 up, 2 of them\n"
    assert findings_of(text + tied, "tips") == ()


def test_the_plan_says_how_hard_and_how_high_it_is_pushed() -> None:
    text = dresser_text() + "limit tip-push-force: 15 lb\nlimit tip-push-height: 20\n"
    (found,) = review_of(text).tipping
    push = next(state for state in found.states if state.kind == "push")
    assert push.balance.overturning / POUND_INCH == pytest.approx(15 * 20)


MANY = """\
plan "Many trays" in millimetres
stock ply: birch plywood 12 mm, sheet 1220 x 2440
outline case: 400 across, 400 deep, 5000 tall, on floor
part side for each of left, right: ply, facing side, as deep as case, as tall as case, on floor
    flush with each of case, flush with front of case
part base: ply, flat, as deep as case, between side.left and side.right across, on floor, flush with front of case
part top: ply, flat, as deep as case, between side.left and side.right across, flush with top of case
    flush with front of case
assembly tray: between side.left and side.right across with 12 each end, front 0 behind front of case
    300 deep, 20 tall, 120 copies spread evenly up between base and top, slides out 200
    part leaf: ply, flat, from left of tray to right of tray, from front of tray to back of tray
        flush with bottom of tray
fit tray.* to side.*: slides
"""


def test_so_many_drawers_are_bounded_and_that_is_said() -> None:
    from reviewer.reports.stability import stability_of

    (shown,) = stability_of(review_of(MANY))
    assert len(shown.tipping.openings) == 120
    assert "Of its 120 doors and drawers the heaviest 100 were looked at." in shown.scope
