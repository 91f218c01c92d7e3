"""Which parts a join pairs, the part-and-joint graph, and where the wall stands."""

from __future__ import annotations

import networkx
import pytest

from reviewer.model.plan import Axis
from tests.model.bench import INCH_BENCH
from tests.model.placed import Placed, in_box, placed

TABLE = (
    "part leg: board, upright, facing side, as tall as box, in each corner of box",
    "part rail for each of front, back: board, across, on edge, flush with each of box, flush with top of box\n"
    "    between leg.each-left and leg.each-right",
    "part top: board, across, flat, on box, from left of box to right of box, 3 copies side by side deep, row centred on box",
)


def pairs(found: Placed) -> list[tuple[str, str, bool]]:
    return [(joint.left, joint.right, joint.meets) for joint in found.setting.joints]


def test_join_pairs_every_part_with_every_other_that_it_meets() -> None:
    found = in_box(*TABLE, "join rail.* to leg.*: biscuits")
    assert pairs(found) == [
        ("rail.front", "leg.front-left", True),
        ("rail.front", "leg.front-right", True),
        ("rail.back", "leg.back-left", True),
        ("rail.back", "leg.back-right", True),
    ]
    first = found.setting.joints[0]
    assert first.contact is not None
    assert (first.contact.axis, first.contact.area) == (0, 20 * 100)
    assert first.overlap is None
    assert [joint.right for joint in found.setting.joints_of["rail.front"]] == [
        "leg.front-left",
        "leg.front-right",
    ]


def test_joint_takes_the_largest_face_and_space_that_a_housing_needs() -> None:
    found = in_box(
        "part side for each of left, right: board, upright, facing side, 400 tall, on floor, front at 0\n"
        "    flush with each of box",
        "part shelf: board, across, flat, between side.left and side.right housed 5 each end, front at 0\n"
        "    bottom 100 above floor",
        "join shelf to side.*: dado 5 deep",
    )
    assert pairs(found) == [("shelf", "side.left", True), ("shelf", "side.right", True)]
    for joint in found.setting.joints:
        assert joint.contact is None
        assert joint.overlap is not None
        assert joint.overlap.depths == pytest.approx((5, 100, 20))


def test_parts_out_of_reach_are_kept_with_the_nearest() -> None:
    found = in_box(
        "part a: board, across, flat, 100 long, left at 0, front at 0, on floor",
        "part b: board, across, flat, 100 long, left at 150, front at 0, on floor",
        "part c: board, across, flat, 100 long, left at 900, front at 0, on floor",
        "join a to c, b: biscuits",
    )
    assert ("a", "b", False) in pairs(found)
    assert all(not meets for _, _, meets in pairs(found))
    assert not found.setting.graph.has_edge("a", "b")


def test_join_with_the_floor_and_the_wall() -> None:
    found = in_box(
        "part cleat: board, across, on edge, 300 long, left at 0, against wall, bottom 100 above floor",
        "part post: board, upright, facing side, 50 tall, left at 0, back 40 in front of wall, on floor",
        "join cleat to wall: screws 4 x 60",
        "join post to floor: screws 4 x 60",
    )
    assert pairs(found) == [("cleat", "wall", True), ("post", "floor", True)]


def test_part_named_in_both_lists_is_not_joined_to_itself() -> None:
    found = in_box(*TABLE, "join top.* to top.*: biscuits")
    assert pairs(found) == [("top.1", "top.2", True), ("top.2", "top.3", True)]


def test_graph_has_parts_floor_and_wall_and_every_meeting_once() -> None:
    found = placed(INCH_BENCH)
    graph = found.setting.graph
    assert set(graph) == {"floor", "wall", *found.plan.parts}
    assert found.setting.graph is graph
    for one, two, data in graph.edges(data=True):
        assert data["contacts"] or data["overlaps"] or data["joints"]
        for contact in data["contacts"]:
            assert {contact.first, contact.second} == {one, two}
        for joint in data["joints"]:
            assert {joint.left, joint.right} == {one, two}
    assert sum(len(data["contacts"]) for _, _, data in graph.edges(data=True)) == len(found.setting.contacts)
    assert sum(len(data["joints"]) for _, _, data in graph.edges(data=True)) == sum(
        joint.meets for joint in found.setting.joints
    )
    assert sorted(graph["floor"]) == sorted(name for name in found.plan.parts if name.startswith("leg"))
    # By networkx's own account the bench is one piece on the floor, and seat.2 reaches the wall behind it.
    assert networkx.node_connected_component(graph, "floor") == set(graph)
    assert list(graph["wall"]) == ["seat.2"]


def test_restraint_ties_parts_to_the_wall_in_the_graph() -> None:
    found = in_box(*TABLE, "restrain top.* to wall: strap")
    assert sorted(found.setting.graph["wall"]) == ["top.1", "top.2", "top.3"]


@pytest.mark.parametrize(
    ("room", "wall"),
    [
        ("", None),
        ("room: indoors", None),
        ("room: wall behind", (Axis.DEEP, 300)),
        ("room: wall behind 25 away", (Axis.DEEP, 325)),
        ("room: wall left", (Axis.ACROSS, 0)),
        ("room: wall left 25 away", (Axis.ACROSS, -25)),
        ("room: wall right 25 away", (Axis.ACROSS, 625)),
    ],
)
def test_wall_stands_where_the_room_has_it(room: str, wall: tuple[Axis, float] | None) -> None:
    found = in_box(*TABLE, room)
    assert found.setting.wall == wall
    touching = {contact.other("wall") for contact in found.setting.contacts_of("wall")}
    if wall in ((Axis.DEEP, 300), (Axis.ACROSS, 0)):
        assert {"leg.back-left", "top.3"} <= touching or {"leg.front-left", "top.1"} <= touching
    else:
        assert touching == set()


def test_plan_set_out_from_the_wall_has_it_at_the_origin() -> None:
    found = in_box(
        "part cleat: board, across, on edge, 300 long, left at 0, against wall, bottom 100 above floor",
        "room: wall behind 25 away",
    )
    assert found.setting.wall == (Axis.DEEP, 0)
    (contact,) = found.setting.contacts_of("wall")
    assert (contact.first, contact.second, contact.axis, contact.area) == ("cleat", "wall", 1, 300 * 100)
    assert (contact.first_surface, contact.second_surface) == ("face", "face")


def test_floor_carries_what_stands_on_it() -> None:
    found = in_box(*TABLE)
    assert [contact.second for contact in found.setting.contacts_of("floor")] == [
        f"leg.{corner}" for corner in ("front-left", "front-right", "back-left", "back-right")
    ]
    assert {contact.area for contact in found.setting.contacts_of("floor")} == {20 * 100}
    assert {contact.second_surface for contact in found.setting.contacts_of("floor")} == {"end"}
    assert found.setting.contacts_of("nobody") == ()


def test_solid_knows_its_sizes_and_middle() -> None:
    found = in_box("part a: board, deep, on edge, 200 long, left at 10, front at 20, bottom at 30")
    solid = found.setting.solids["a"]
    assert (solid.length, solid.width, solid.thickness) == (200, 100, 20)
    assert solid.centre == (20, 120, 80)
    assert solid.volume == 200 * 100 * 20
    assert solid.square
    assert [solid.extent(axis) for axis in range(3)] == [20, 200, 100]
    assert solid.directions == ((0, 1, 0), (0, 0, 1), (1, 0, 0))
