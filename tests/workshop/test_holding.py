"""Who holds up whom, on small pieces that anyone can check in the head."""

from __future__ import annotations

from pathlib import Path

import pytest

from reviewer.workshop.holding import Holding
from tests.rules.sound_pieces import BENCH, BOOKCASE, SOUND_PIECES, WALL_SHELF
from tests.support import review_of


def holding_of(text: str) -> Holding:
    return review_of(text).holding


def held(holding: Holding, part: str) -> set[tuple[str, str]]:
    return {(support.by, support.how) for support in holding.supports.get(part, ())}


def test_a_bench_stands_on_its_legs() -> None:
    found = holding_of(BENCH)
    assert held(found, "leg.front-left") == {("floor", "rests")}
    assert held(found, "rail.front") == {("leg.front-left", "joint"), ("leg.front-right", "joint")}
    assert held(found, "end.left") == {("leg.front-left", "joint"), ("leg.back-left", "joint")}
    assert held(found, "stretcher") == {("rail.front", "joint"), ("rail.back", "joint")}
    assert held(found, "seat.1") == {
        (name, "rests")
        for name in (
            "leg.front-left",
            "leg.front-right",
            "rail.front",
            "end.left",
            "end.right",
            "stretcher",
        )
    }
    assert found.floating == ()


def test_bookcase_shelves_hang_in_their_dadoes_and_not_on_the_nailed_back() -> None:
    found = holding_of(BOOKCASE)
    assert held(found, "shelf.3") == {("side.left", "joint"), ("side.right", "joint")}
    assert all(support.housed for support in found.supports["shelf.3"])
    # The lowest lies on the toe board as well, which stands on the floor.
    assert held(found, "shelf.1") == {("side.left", "joint"), ("side.right", "joint"), ("toe", "rests")}
    # It reaches the floor, so the nails hold nothing up.
    assert held(found, "back") == {("floor", "rests")}


def test_a_wall_shelf_rests_on_its_cleat_and_the_cleat_on_the_wall() -> None:
    found = holding_of(WALL_SHELF)
    assert held(found, "cleat") == {("wall", "joint")}
    assert held(found, "shelf") == {("cleat", "rests")}
    assert held(found, "lip") == {("shelf", "hangs")}


TRAY = """
    plan "Tray under two rails" in inches
    stock stud: 2x4 spruce-pine-fir
    stock board: 1x12 pine
    outline frame: 30 across, 12 deep, 20 tall, on floor
    part leg: stud, upright, facing side, as tall as frame, in each corner of frame
    part rail for each of front, back: stud, across, on edge, between leg.each-left and leg.each-right
        flush with top of frame, flush with each of frame
    part tray: board, across, flat, under rail.front, from right of leg.front-left to left of leg.front-right
        centred deep on frame
    part box: board, across, flat, on tray, 10 long, centred across on frame, centred deep on frame
    join rail.* to leg.*: pocket screws 2 1/2, 2 per end
    join tray to rail.*: screws #8 x 2, every 6, from below
"""


def test_a_tray_screwed_under_two_rails_hangs_from_both() -> None:
    # Neither rail is the only way to the tray, and still none of them rests on it.
    found = holding_of(TRAY)
    assert held(found, "tray") == {("rail.front", "hangs"), ("rail.back", "hangs")}
    assert held(found, "rail.front") == {("leg.front-left", "joint"), ("leg.front-right", "joint")}
    assert held(found, "box") == {("tray", "rests")}
    order = found.order
    assert order.index("box") < order.index("tray") < order.index("rail.back") < order.index("leg.back-left")


def test_what_only_lies_under_a_part_does_not_hang_from_it() -> None:
    found = holding_of(TRAY.replace("join tray to rail.*: screws #8 x 2, every 6, from below", ""))
    assert found.floating == ("tray", "box")
    assert "tray" not in found.supports


CIRCLE = """
    plan "Arm with a hook" in inches
    stock stud: 2x4 spruce-pine-fir
    part post: stud, upright, facing front, 40 tall, on floor, left at 0, front at 0
    part arm: stud, across, on edge, 20 long, left at 3 1/2, front at 0, bottom at 30
    part strap: stud, upright, facing front, 14 tall, left at 10, front at 1 1/2, bottom at 20
    part hook: stud, deep, on edge, 1 1/2 long, front at 0, left at 11, bottom at 26 1/2
    join arm to post: dowels 1/2 x 3, 2 per joint, glue pva
    join strap to arm: screws #8 x 2 1/2, 4 per joint
    join hook to strap: screws #8 x 2 1/2, 2 per joint
"""


def test_a_circle_of_supports_is_broken_where_it_leads_away_from_the_ground() -> None:
    # The arm touches the hook's top, the hook is on the strap, the strap is on the arm.
    found = holding_of(CIRCLE)
    assert held(found, "strap") == {("arm", "joint")}
    assert held(found, "hook") == {("strap", "joint")}
    assert held(found, "arm") == {("post", "joint")}
    assert held(found, "post") == {("floor", "rests")}
    assert sorted(found.order) == ["arm", "hook", "post", "strap"]
    assert found.order == ("hook", "strap", "arm", "post")


def test_an_island_floats() -> None:
    found = holding_of(
        """
        plan "Island" in inches
        stock board: 1x6 pine
        part base: board, across, flat, 20 long, on floor, left at 0, front at 0
        part one: board, across, flat, 20 long, left at 0, front at 0, bottom at 10
        part two: board, across, flat, 20 long, on one, left at 0, front at 0
        join one to two: screws #8 x 1 1/4, 4 per joint
        """
    )
    assert found.floating == ("one", "two")
    assert held(found, "base") == {("floor", "rests")}


CABINET = """
    plan "Hung cabinet" in inches
    stock ply: birch plywood 3/4
    outline case: 24 across, 12 deep, 20 tall, bottom {bottom} above floor, against wall
    part side for each of left, right: ply, facing side, 12 deep, 20 tall, flush with bottom of case
        flush with front of case, flush with each of case
    part shelf: ply, flat, between side.left and side.right across, 12 deep, flush with front of case
        flush with bottom of case
    join shelf to side.*: glue pva, screws #8 x 2, 3 per joint
    restrain case to wall: {device}
    room kitchen: indoors, wall behind
"""


def test_a_wall_restraint_holds_up_only_what_nothing_else_does() -> None:
    hung = holding_of(CABINET.format(bottom=50, device="bracket"))
    assert hung.floating == ()
    assert held(hung, "side.left") == {("wall", "joint")}
    standing = holding_of(CABINET.format(bottom=0, device="bracket"))
    assert held(standing, "side.left") == {("floor", "rests")}
    assert "wall" not in {support.by for supports in standing.supports.values() for support in supports}


def test_a_strap_holds_nothing_up() -> None:
    strapped = holding_of(CABINET.format(bottom=50, device="strap"))
    assert set(strapped.floating) == {"side.left", "side.right", "shelf"}


def test_leaning_on_the_wall_holds_nothing_up() -> None:
    found = holding_of(
        """
        plan "Leaning" in inches
        stock board: 1x6 pine
        part one: board, across, on edge, 20 long, against wall, left at 0, bottom at 10
        """
    )
    assert found.floating == ("one",)


def test_a_join_that_gives_a_reason_instead_of_fasteners_holds_nothing() -> None:
    text = """
        plan "Loose" in inches
        stock board: 1x6 pine
        part side: board, upright, facing side, 20 tall, on floor, left at 0, front at 0
        part arm: board, across, flat, 10 long, against right of side, front at 0, bottom at 10
        join arm to side: {how}
        """
    assert held(holding_of(text.format(how="glue pva")), "arm") == {("side", "joint")}
    loose = holding_of(text.format(how='none because "it slides out"'))
    assert loose.floating == ("arm",)


def test_a_board_on_edge_holds_a_flat_one_as_near_to_the_ground() -> None:
    # Both are fixed to the sides; the rail is stiff and the shelf is not.
    text = """
        plan "Shelf and rail" in inches
        stock board: 1x10 pine
        stock strip: 1x4 pine
        outline case: 36 across, 10 deep, 20 tall, on floor
        part side for each of left, right: board, upright, facing side, 20 tall, on floor, flush with each of case
            flush with front of case
        part shelf: board, across, flat, rip 8 1/2, between side.left and side.right, flush with front of case
            bottom at 10
        part rail: strip, across, on edge, between side.left and side.right, against back of shelf, bottom at 9
        join shelf, rail to side.*: glue pva, screws #8 x 2, 2 per joint
        join rail to shelf: {how}
        """
    glued = holding_of(text.format(how="glue pva"))
    assert held(glued, "shelf") == {(name, "joint") for name in ("side.left", "side.right", "rail")}
    assert held(glued, "rail") == {("side.left", "joint"), ("side.right", "joint")}
    # Nails alone hold up nothing that a firmer joint holds.
    nailed = holding_of(text.format(how="nails 1 1/2, every 6"))
    assert held(nailed, "shelf") == {("side.left", "joint"), ("side.right", "joint")}


def test_a_seat_on_tenoned_legs_rests_on_them() -> None:
    found = holding_of(
        """
        plan "Tenoned stool" in inches
        stock plank: 2x10 spruce-pine-fir
        stock post: actual 2 x 2 hard maple
        outline base: 16 across, 9 1/4 deep, 16 tall, on floor
        part leg: post, upright, 17 tall, in each corner of base
        part seat: plank, across, flat, on base, from left of base to right of base, past 2 each end
            centred deep on base
        join seat to leg.*: mortise and tenon 1 long, glue pva
        """
    )
    assert {how for _, how in held(found, "seat")} == {"rests"}
    assert len(found.supports["seat"]) == 4
    assert all(support.housed for support in found.supports["seat"])


def test_what_hangs_in_a_drawer_hangs_in_its_sides() -> None:
    plan = Path(__file__).parents[2] / "plans" / "map-cabinet.plan"
    holding = holding_of(plan.read_text("utf-8"))
    # The divider is further from the floor than the right side; the drawer hangs in both all the same.
    for part in ("front", "back", "bottom"):
        by = {name for name, _ in held(holding, f"drawer.1.{part}")}
        assert {"drawer.1.side.left", "drawer.1.side.right"} <= by
    assert held(holding, "drawer.1.side.left") == {("divider", "joint")}


@pytest.mark.parametrize("name", SOUND_PIECES)
def test_every_part_comes_before_what_holds_it(name: str) -> None:
    review = review_of(SOUND_PIECES[name])
    place = {part: number for number, part in enumerate(review.holding.order)}
    assert set(place) == set(review.setting.solids)
    for part, supports in review.holding.supports.items():
        for support in supports:
            assert support.by in ("floor", "wall") or place[part] < place[support.by]
    assert review.holding.floating == ()
