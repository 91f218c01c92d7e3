"""The sample bench set out: every place pinned by a sum done by hand from the plan's own numbers."""

from __future__ import annotations

import pytest

from tests.model.bench import INCH_BENCH, METRIC_BENCH
from tests.model.placed import placed

# A 2x4 is 1 1/2 by 3 1/2 and a 2x8 is 1 1/2 by 7 1/4 (American Softwood Lumber Standard PS 20).
# left, front, bottom, right, back, top in inches, by hand:
PLACES = {
    "frame": (0, 0, 0, 42, 12, 16),  # 48 - 6, 12, 17 1/2 - 1 1/2
    "leg.front-left": (0, 0, 0, 3.5, 1.5, 16),
    "leg.front-right": (38.5, 0, 0, 42, 1.5, 16),  # 42 - 3 1/2
    "leg.back-left": (0, 10.5, 0, 3.5, 12, 16),  # 12 - 1 1/2
    "leg.back-right": (38.5, 10.5, 0, 42, 12, 16),
    "rail.front": (3.5, 0, 12.5, 38.5, 1.5, 16),  # 16 - 3 1/2
    "rail.back": (3.5, 10.5, 12.5, 38.5, 12, 16),
    "end.left": (0, 1.5, 12.5, 1.5, 10.5, 16),
    "end.right": (40.5, 1.5, 12.5, 42, 10.5, 16),
    "stretcher": (20.25, 1.5, 12.5, 21.75, 10.5, 16),  # 42 / 2 - 3/4
    "seat.1": (-3, -1.312, 16, 45, 5.938, 17.5),  # (12 - 2 x 7 1/4 - 1/8) / 2 = -1 5/16
    "seat.2": (-3, 6.062, 16, 45, 13.312, 17.5),  # 5 15/16 + 1/8 = 6 1/16
    "seat": (-3, -1.312, 16, 45, 13.312, 17.5),
}
CUTS = {
    "rail.front": 35,
    "rail.back": 35,
    "end.left": 9,
    "end.right": 9,
    "stretcher": 9,
    "seat.1": 48,
    "seat.2": 48,
}
CUTS |= {f"leg.{corner}": 16 for corner in ("front-left", "front-right", "back-left", "back-right")}


@pytest.mark.parametrize("text", [INCH_BENCH, METRIC_BENCH], ids=["inches", "millimetres"])
def test_places_and_cut_lengths(text: str) -> None:
    bench = placed(text)
    found = {name: bench.box(name, 25.4) for name in (*bench.setting.extents, *bench.setting.solids)}
    assert found == {name: pytest.approx(place, abs=0.001) for name, place in PLACES.items()}
    assert {name: bench.cut(name, 25.4) for name in bench.setting.solids} == CUTS
    assert bench.troubles == []


def test_metric_twin_is_the_same_bench() -> None:
    inch, metric = placed(INCH_BENCH), placed(METRIC_BENCH)
    for name, solid in inch.setting.solids.items():
        twin = metric.setting.solids[name]
        assert solid.low == pytest.approx(twin.low, abs=1e-9)
        assert solid.high == pytest.approx(twin.high, abs=1e-9)
    assert [(c.first, c.second, c.axis) for c in inch.setting.contacts] == [
        (c.first, c.second, c.axis) for c in metric.setting.contacts
    ]


def test_moving_one_measure_moves_the_whole_bench() -> None:
    longer = placed(
        INCH_BENCH.replace("length = 48 ", "length = 60 ").replace("height = 17 1/2", "height = 18")
    )
    assert longer.cut("rail.front", 25.4) == 47
    assert longer.cut("seat.2", 25.4) == 60
    assert longer.cut("leg.back-right", 25.4) == 16.5
    assert longer.box("leg.back-right", 25.4)[:3] == (50.5, 10.5, 0)
    assert longer.box("end.right", 25.4)[0] == 52.5
    assert longer.box("stretcher", 25.4)[0] == 26.25
    assert longer.box("seat.1", 25.4)[2] == 16.5
    assert longer.troubles == []


def test_what_the_bench_says_besides() -> None:
    plan = placed(INCH_BENCH).plan
    assert [(measure.name, round(measure.amount, 3), measure.used) for measure in plan.measures] == [
        ("length", 1219.2, True),
        ("height", 444.5, True),
    ]
    assert plan.stocks["stud"].thickness == pytest.approx(38.1)
    assert plan.stocks["plank"].width == pytest.approx(184.15)
    assert [offer.price for offer in plan.stocks["stud"].offers] == [4.1, 5.6]
    pocket, _, screws = (join.fastenings[0] for join in plan.joins)
    assert (pocket.kind, pocket.length, pocket.count, pocket.driven_from) == (
        "pocket screws",
        63.5,
        2,
        "inside",
    )
    assert (screws.gauge, screws.length, screws.counterbore) == ("#8", 63.5, 50.8)
    assert screws.spacing == pytest.approx(254)
    assert plan.joins[0].glue == "pva_yellow"
    assert plan.joins[0].left == ("rail.front", "rail.back", "end.left", "end.right")
    painted, clear = plan.finishes
    assert painted.on[-1] == "stretcher"
    assert painted.steps[0].grits == (80, 120, 150)  # type: ignore[union-attr]
    coats = painted.steps[2]
    assert (coats.count, coats.dry_hours, coats.sanded_between) == (2, 4, 320)  # type: ignore[union-attr]
    assert clear.steps[1].dry_hours == 72  # type: ignore[union-attr]
    assert plan.loads[0].on == ("seat.1", "seat.2")
    assert (plan.loads[0].use, plan.loads[0].count) == ("people seated", 2)
    room = plan.room
    assert room is not None
    assert (room.name, room.wall, room.stud_spacing, room.floor) == ("hall", "behind", 406.4, "wood")
    assert room.doorway == (762, 2032)
    assert room.children_under == 6
    assert plan.basket is not None
    assert [(line.count, line.stock, line.length) for line in plan.basket.lines] == [
        (2, "stud", pytest.approx(2438.4)),
        (2, "plank", pytest.approx(2438.4)),
    ]
    assert plan.tools == ("mitre saw", "drill", "pocket-hole jig", "orbital sander")
    assert plan.waivers[0].on == ("seat.1", "seat.2")


CASE = """\
plan "Case" in millimetres
stock ply: birch plywood 18
outline case: 800 across, 300 deep, 1200 tall, on floor
part side for each of left, right: ply, facing side, as deep as case, as tall as case, on floor
    flush with each of case, flush with front of case
part shelf: ply, flat, between side.{near} and side.{far} across, 280 deep, flush with back of case
    bottom 300 above floor
part post: ply, facing front, 80 across, {near} 150 {away} of {near} of case, on shelf, flush with front of shelf
    200 tall
part half: ply, flat, from left of case to right of case, less 100, 120 deep, front at 0, on post
part back: like half, mirrored across about case, bottom 900 above floor
"""


def test_plan_with_left_and_right_changed_is_the_piece_in_a_mirror() -> None:
    here = placed(CASE.format(near="left", far="right", away="right"))
    there = placed(CASE.format(near="right", far="left", away="left"))
    assert here.troubles == there.troubles == []
    assert here.box("post") == (150, 20, 318, 230, 38, 518)
    swap = {"side.left": "side.right", "side.right": "side.left"}
    for name in here.setting.solids:
        left, front, bottom, right, back, top = here.box(name)
        assert there.box(swap.get(name, name)) == (800 - right, front, bottom, 800 - left, back, top)
