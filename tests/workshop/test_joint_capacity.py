"""What comes to joints and what they may bear: statics by hand, and cells of the printed tables."""

from __future__ import annotations

import math
from typing import get_args

import pytest

from reviewer.mechanics.yield_modes import Joint as ShearJoint
from reviewer.mechanics.yield_modes import bending_yield_strength, dowel_bearing_strength, shear_value
from reviewer.model.plan import FasteningKind, HousingKind
from reviewer.reference.glues import glue_keys
from reviewer.reference.joint_values import glue_line, gravity_of, joint_statement
from reviewer.reference.limits import default_limits
from reviewer.units import MM_PER_INCH, NEWTON_PER_KG, NEWTON_PER_POUND
from reviewer.workshop.holds import Hold, Holder
from reviewer.workshop.joint_capacity import JointLoad
from tests.support import review_of


def plank_between(join: str, *, board: str = "actual 1 1/2 x 7 1/4 douglas-fir-larch", load: str = "") -> str:
    """A level board between two uprights."""
    return f"""
        plan "Board between posts" in inches
        stock board: {board}
        stock post: actual 3 1/2 x 7 1/4 douglas-fir-larch
        outline frame: 40 across, 7 1/4 deep, 20 tall, on floor
        part post for each of left, right: post, upright, facing side, as tall as frame, on floor
            flush with each of frame, flush with front of frame
        part board: board, across, flat, between post.left and post.right, flush with front of frame
            bottom 10 above floor
        {join}
        {load or "load board: 1 person standing"}
        """


def on_post(join: str, side: str, *, way: str = "across", more: str = "") -> str:
    """A board fixed to the front faces of two posts, whose load comes down along those faces."""
    return f"""
        plan "Board on posts" in inches
        stock side: actual {side} x 5 1/2 douglas-fir-larch
        stock post: actual 3 1/2 x 3 1/2 douglas-fir-larch
        outline frame: 40 across, 10 deep, 20 tall, on floor
        part post for each of left, right: post, upright, facing front, as tall as frame, on floor
            flush with each of frame, flush with back of frame
        part board: side, {way}, on edge, 40 long, against front of post.left, left at 0, bottom 10 above floor
        {join}
        load board: 1 person standing
        {more}
        """


def loads_of(text: str, part: str = "board") -> list[JointLoad]:
    return [load for load in review_of(text).joint_loads if load.force.part == part]


def holder_of(text: str, kind: str, part: str = "board") -> Holder:
    return next(each for each in loads_of(text, part)[0].holders if each.kind == kind)


def force_of(hold: Hold | None) -> float:
    assert hold is not None
    return hold.force / NEWTON_PER_POUND


# ---------------------------------------------------------------- what comes there


def test_a_load_between_two_posts_shears_each_joint_by_half() -> None:
    text = plank_between(
        "join board to post.*: screws #10 x 5, 2 per joint, from outside", load="load board: 100 kg"
    )
    review = review_of(text)
    found = [load.force for load in review.joint_loads if load.force.part == "board"]
    whole = 100 * NEWTON_PER_KG + review.masses["board"].weight
    assert [force.to for force in found] == ["post.left", "post.right"]
    for force in found:
        assert force.shear == pytest.approx(whole / 2)
        assert (force.pull, force.presses, force.moment) == (0.0, 0.0, 0.0)


def test_what_lies_on_something_loads_no_screw() -> None:
    text = """
        plan "Board on posts" in inches
        stock board: 2x8 douglas-fir-larch
        outline frame: 40 across, 7 1/4 deep, 20 tall, on floor
        part post for each of left, right: board, upright, facing side, 18 1/2 tall, on floor
            flush with each of frame, flush with front of frame
        part board: board, across, flat, on post.left, from left of frame to right of frame, flush with front of frame
        join board to post.*: screws #8 x 3, 2 per joint, from above
        load board: 1 person standing
        """
    for load in loads_of(text):
        assert load.force.presses > 0
        assert not load.force.loads
        assert load.use == ()


def test_what_hangs_pulls() -> None:
    text = """
        plan "Hanging board" in inches
        stock board: 2x8 douglas-fir-larch
        outline frame: 40 across, 7 1/4 deep, 20 tall, on floor
        part post for each of left, right: board, upright, facing side, 18 1/2 tall, on floor
            flush with each of frame, flush with front of frame
        part top: board, across, flat, on post.left, from left of frame to right of frame, flush with front of frame
        part board: board, across, flat, 20 long, under top, centred across on frame, flush with front of frame
        join top to post.*: screws #8 x 3, 2 per joint, from above
        join board to top: screws #8 x 2 1/2, 6 per joint, from below
        load board: 20 kg
        """
    review = review_of(text)
    (load,) = [each for each in review.joint_loads if each.force.part == "board"]
    assert load.force.pull == pytest.approx(20 * NEWTON_PER_KG + review.masses["board"].weight)
    assert load.force.shear == 0.0
    use = load.worst
    assert use is not None
    assert use.way == "pull"
    # Six #8 screws with 1 in of thread in G 0.50 (NDS 12.2-2: 117 lb per inch), held for months (0.9).
    assert force_of(use.hold) == pytest.approx(0.9 * 117 * 1.0, rel=0.01)
    assert use.limit == pytest.approx(6 * use.hold.force)


LEDGE = """
    plan "Ledge" in millimetres
    stock board: actual 20 x 100 red oak
    stock plate: actual 20 x 120 red oak
    outline place: 600 across, 120 deep, 120 tall, bottom 1200 above floor, against wall
    part plate: plate, across, on edge, from left of place to right of place, against wall, bottom 1200 above floor
    part ledge: board, across, flat, from left of place to right of place, against front of plate
        flush with bottom of plate
    join plate to wall: screws 6 x 100, 2 per joint
    join ledge to plate: screws 4 x 50, 4 per joint, from back
    load ledge: 10 kg
    room reading room: indoors, wall behind, studs every 400
    """


def test_what_is_held_on_one_side_turns_its_joint_open() -> None:
    review = review_of(LEDGE)
    load = next(each for each in review.joint_loads if each.force.part == "ledge")
    whole = 10 * NEWTON_PER_KG + review.masses["ledge"].weight
    # The middle of the ledge is 50 mm in front of the plate; its screws stand 10 mm above its lower edge.
    assert load.force.moment == pytest.approx(whole * 50)
    assert load.force.shear == pytest.approx(whole)
    screws = next(each for each in load.holders if each.kind == "screws")
    assert screws.heights == pytest.approx((10.0,) * 4)
    use = load.worst
    assert use is not None
    assert (use.way, use.one) == ("shear and pull", True)
    pull, shear = whole * 50 / (4 * 10), whole / 4
    assert use.force == pytest.approx(math.hypot(pull, shear))
    # NDS 12.4-1 with the slant of the load.
    slant = math.atan2(pull, shear)
    assert screws.pull is not None
    assert screws.shear is not None
    w, z = screws.pull.force, screws.shear.force
    assert use.limit == pytest.approx(w * z / (w * math.cos(slant) ** 2 + z * math.sin(slant) ** 2))


def test_what_else_holds_a_part_keeps_it_from_turning() -> None:
    joined = LEDGE.replace(
        "    join plate to wall",
        "    part end: board, deep, on edge, 90 long, against front of plate, flush with left of place\n"
        "        on ledge\n"
        "    join end to plate, ledge: screws 4 x 40, 2 per joint, from back\n"
        "    join plate to wall",
    )
    found = [each.force for each in review_of(joined).joint_loads]
    assert {force.part for force in found} >= {"ledge", "plate"}
    assert all(force.moment == 0.0 for force in found if force.part == "ledge")


def test_short_bearings_that_overlap_do_not_pry() -> None:
    # A seat that lies on a leg and on the rail behind it, which share one hand's breadth.
    text = """
        plan "Seat on legs and rails" in inches
        stock plank: 2x8 spruce-pine-fir
        stock stud: 2x4 spruce-pine-fir
        outline frame: 44 across, 14 3/4 deep, 16 tall, on floor
        part leg: stud, upright, facing front, as tall as frame, in each corner of frame
        part rail for each of left, right: stud, deep, on edge, between leg.front-each and leg.back-each
            flush with top of frame, flush with each of leg.front-each
        part seat: plank, across, flat, on frame, from left of frame to right of frame, past 2 each end
            2 copies side by side deep, gap 1/4, row centred on frame
        join rail.* to leg.*: pocket screws 2 1/2, 2 per end
        join seat.* to rail.*: screws #8 x 2 1/2, 2 per joint, from below, counterbored 2
        load seat.*: 2 people seated
        """
    review = review_of(text)
    handed = [each for name in ("seat.1", "seat.2") for each in review.carrying.handed[name]]
    assert all(each.force >= -1e-6 for each in handed)
    whole = sum(each.force for each in handed)
    loads = sum(each.lasting + each.brief for load in review.declared.values() for each in load)
    assert whole == pytest.approx(loads + review.masses["seat.1"].weight + review.masses["seat.2"].weight)


# ---------------------------------------------------------------- cells of the printed tables, on whole plans


@pytest.mark.parametrize(
    ("join", "side", "kind", "pounds", "tolerance", "mode"),
    [
        # NDS 2018 Table 12L: No. 10 and No. 8 through 1/2 in of G 0.50, 10 D deep (third-party transcription).
        ("screws #10 x 2.4, 2 per joint", "1/2", "screws", 90, 1, "IIIs"),
        ("screws #8 x 2.14, 2 per joint", "1/2", "screws", 73, 1, "IIIs"),
        # Table 12L: No. 10 through 1 1/2 in.
        ("screws #10 x 3.4, 2 per joint", "1 1/2", "screws", 117, 1, "IV"),
        # Table 12N: 10d common, 0.148 x 3 in, through 3/4 and 1 in.
        ("nails 0.148 x 3, 2 per joint", "3/4", "nails", 105, 1, "IIIs"),
        ("nails 0.148 x 3, 2 per joint", "1", "nails", 118, 1, "IV"),
        # Table 12N: 8d common, 0.131 x 2 1/2 in, through 1 in.
        ("nails 0.131 x 2 1/2, 2 per joint", "1", "nails", 97, 1, "IV"),
    ],
)
def test_shear_of_one_fastener(
    join: str, side: str, kind: str, pounds: float, tolerance: float, mode: str
) -> None:
    holder = holder_of(on_post(f"join board to post.*: {join}, from front", side), kind)
    assert force_of(holder.shear) == pytest.approx(pounds, abs=tolerance)
    assert holder.shear is not None
    assert holder.shear.mode.endswith(f"(mode {mode})")
    assert holder.shear.certain


def test_shear_of_a_bolt() -> None:
    # NDS 2018 Table 12A: 1/2 in bolt, 1 1/2 in on both sides, G 0.50, load across both grains: 220 lb;
    # here the post's grain runs along the load, so the value lies between that and 480 lb along both.
    text = on_post("join board to post.*: bolts 1/2 x 3, 1 per joint, from front", "1 1/2").replace(
        "stock post: actual 3 1/2 x 3 1/2", "stock post: actual 1 1/2 x 3 1/2"
    )
    assert 220 < force_of(holder_of(text, "bolts").shear) < 480


def test_months_of_load_and_weather_take_from_it() -> None:
    # NDS 2018 Table 2.3.2: 0.9 for loads that stay; Table 11.3.3: 0.7 for wood that is wet in service.
    brief = on_post("join board to post.*: screws #10 x 2.4, 2 per joint, from front", "1/2")
    lasting = brief.replace("1 person standing", "50 kg")
    wet = on_post(
        "join board to post.*: screws #10 x 2.4, 2 per joint, from front", "1/2", more="room yard: outdoors"
    )
    dry = force_of(holder_of(brief, "screws").shear)
    assert force_of(holder_of(lasting, "screws").shear) == pytest.approx(0.9 * dry)
    assert force_of(holder_of(wet, "screws").shear) == pytest.approx(0.7 * dry)


def test_end_grain_keeps_two_thirds_of_the_shear() -> None:
    # NDS 2018 12.5.2: C_eg 0.67 in shear; no withdrawal value for screws, so that pull is an estimate.
    across = holder_of(
        on_post("join board to post.*: screws #8 x 5, 2 per joint, from front", "3 1/2"), "screws"
    )
    text = plank_between("join board to post.*: screws #8 x 5, 2 per joint, from outside")
    end = holder_of(text, "screws")
    assert end.end_grain
    assert not across.end_grain
    assert end.shear is not None
    assert across.shear is not None
    assert end.shear.force == pytest.approx(0.67 * across.shear.force, rel=1e-3)
    assert end.shear.certain
    assert end.pull is not None
    assert not end.pull.certain


def test_nails_in_end_grain_hold_no_pull() -> None:
    holder = holder_of(
        plank_between("join board to post.*: nails 0.162 x 5, 2 per joint, from outside"), "nails"
    )
    assert holder.pull is not None
    assert holder.pull.force == 0.0


def test_less_than_six_diameters_is_an_estimate() -> None:
    # NDS 2018 Table 12L: 6 D is the least depth for any value.
    shallow = holder_of(
        on_post("join board to post.*: screws #10 x 1 1/2, 2 per joint, from front", "1/2"), "screws"
    )
    deep = holder_of(
        on_post("join board to post.*: screws #10 x 1 3/4, 2 per joint, from front", "1/2"), "screws"
    )
    assert shallow.shear is not None
    assert deep.shear is not None
    assert (shallow.shear.certain, deep.shear.certain) == (False, True)
    assert shallow.shear.force <= deep.shear.force


def test_the_tip_of_a_shallow_screw_does_not_bear() -> None:
    # NDS 2018 12.3.5.3: l_m = p - E/2, E = 2 D. No. 10 through 1/2 in, 1/2 in deep: 0.31 in bears.
    text = on_post("join board to post.*: screws #10 x 1, 2 per joint, from front", "1/2")
    holder = holder_of(text, "screws")
    wood = dowel_bearing_strength(0.50, 0.19 * MM_PER_INCH)
    expected = shear_value(
        ShearJoint(
            0.152 * MM_PER_INCH,
            0.19 * MM_PER_INCH,
            0.31 * MM_PER_INCH,
            0.5 * MM_PER_INCH,
            wood,
            wood,
            bending_yield_strength(0.19 * MM_PER_INCH),
        )
    )
    assert expected.mode in ("Im", "II", "IIIm")
    assert holder.shear is not None
    assert holder.shear.force == pytest.approx(expected.force, rel=1e-3)


def test_a_pocket_screw_mixes_pull_and_shear() -> None:
    # NDS 12.4-1 at 15 and 75 degrees: each lies between the plain pull and the plain shear.
    text = on_post("join board to post.*: screws #8 x 2 1/2, 2 per joint, from front", "1 1/2")
    plain = holder_of(text, "screws")
    pocket = holder_of(
        plank_between("join board to post.*: pocket screws 2 1/2, 2 per joint"), "pocket screws"
    )
    assert pocket.shear is not None
    assert pocket.pull is not None
    assert not pocket.shear.certain
    assert plain.shear is not None
    assert pocket.shear.force > 0
    assert pocket.pull.force > 0


def test_a_dado_carries_the_shear_and_leaves_the_screws_alone() -> None:
    text = plank_between(
        "join board to post.*: dado 3/8 deep, screws #8 x 5, 2 per joint, from outside"
    ).replace("between post.left and post.right,", "between post.left and post.right, housed 3/8 each end,")
    load = loads_of(text)[0]
    use = load.worst
    assert use is not None
    assert use.holder.kind == "dado"
    # 7 1/4 by 3/8 in of Douglas fir-larch, F_c⊥ 625 psi (NDS 2018 Supplement Table 4A).
    assert use.limit / NEWTON_PER_POUND == pytest.approx(7.25 * 0.375 * 625, rel=0.01)


def test_a_tenon_by_the_less_of_bearing_and_shear() -> None:
    text = plank_between(
        "join board to post.*: mortise and tenon 1 long 1/2 thick, glue pva",
        board="actual 1 1/2 x 7 1/4 douglas-fir-larch",
    ).replace("between post.left and post.right,", "between post.left and post.right, housed 1 each end,")
    holders = loads_of(text)[0].holders
    tenon = next(each for each in holders if each.kind == "mortise and tenon")
    assert tenon.shear is not None
    # Pressed: 1/2 by 1 in at 625 psi; sheared: 1/2 by 1 1/2 in at 180 psi over 1.5 (Supplement Table 4A).
    assert tenon.shear.force / NEWTON_PER_POUND == pytest.approx(
        min(0.5 * 1 * 625, 0.5 * 1.5 * 180 / 1.5), rel=0.02
    )


def test_glue_on_an_end_counts_for_nothing() -> None:
    load = loads_of(plank_between("join board to post.*: glue pva"))[0]
    (glue,) = load.holders
    assert glue.shear is None
    assert glue.end_grain
    assert "end grain" in load.why[0]


def test_what_nobody_knows_is_said_and_not_judged() -> None:
    load = loads_of(plank_between("join board to post.*: brackets, 2 per joint"))[0]
    assert load.use == ()
    assert load.why == (joint_statement("fastening", "brackets").says,)
    both = loads_of(plank_between("join board to post.*: brackets, 1 per joint, nails 1, 1 per joint"))[0]
    assert not both.judged or both.worst is None or both.worst.ratio <= 1


# ---------------------------------------------------------------- every kind has a value or a reason


@pytest.mark.parametrize("kind", get_args(FasteningKind))
def test_every_fastening_has_a_value_or_says_why_not(kind: FasteningKind) -> None:
    said = joint_statement("fastening", kind)
    assert said.source
    assert (said.shear or said.pull) != ("No value is given" in said.says and "pull hangs" not in said.says)


@pytest.mark.parametrize("kind", get_args(HousingKind))
def test_every_housing_has_a_value_or_says_why_not(kind: HousingKind) -> None:
    said = joint_statement("housing", kind)
    assert said.source
    assert said.shear != said.says.startswith("No value is given")


@pytest.mark.parametrize("glue", glue_keys())
@pytest.mark.parametrize("pairing", ["side to side", "crossed grain", "end to side", "end to end"])
def test_every_glue_has_a_range_for_every_pairing(glue: str, pairing: str) -> None:
    line = glue_line(glue, pairing)
    assert 0 <= line.low < line.high <= 1
    assert line.source
    if pairing.startswith("end"):
        assert line.low == 0  # not relied upon


SIZES = {
    "screws": "screws #8 x 5, 2 per joint, from outside",
    "pocket screws": "pocket screws 2 1/2, 2 per joint",
    "nails": "nails 4, 2 per joint, from outside",
    "dowels": "dowels 1/2 x 2, 2 per joint, glue pva",
    "bolts": "bolts 3/8 x 6, 2 per joint, from outside",
    "biscuits": "biscuits, 2 per joint",
    "brackets": "brackets, 2 per joint",
    "shelf pins": "shelf pins, 2 per joint, glue pva",
    "loose tenons": "loose tenons 3/8 x 1 1/2 x 2, 2 per joint, glue pva",
    "wedges": "wedges, 2 per joint",
    "clips": "clips, 2 per joint",
}


@pytest.mark.parametrize("kind", [kind for kind in get_args(FasteningKind) if kind != "none"])
def test_every_fastening_in_a_plan_gives_what_the_table_says(kind: str) -> None:
    found = loads_of(plank_between(f"join board to post.*: {SIZES[kind]}"))
    holder = next(each for each in found[0].holders if each.kind == kind)
    said = joint_statement("fastening", kind)  # type: ignore[arg-type]
    assert (holder.shear is not None, holder.pull is not None) == (said.shear, said.pull)
    if holder.shear is None:
        assert holder.why == said.says


@pytest.mark.parametrize("kind", get_args(HousingKind))
def test_every_housing_in_a_plan_gives_what_the_table_says(kind: str) -> None:
    text = plank_between(f"join board to post.*: {kind}, glue pva").replace(
        "between post.left and post.right,", "between post.left and post.right, housed 1/2 each end,"
    )
    found = loads_of(text)
    holder = next(each for each in found[0].holders if each.kind == kind)
    said = joint_statement("housing", kind)
    assert (holder.shear is not None) == said.shear
    if holder.shear is None:
        assert holder.why == said.says


def test_specific_gravities_are_the_standards() -> None:
    # NDS 2018 Table 12.3.3A, as transcribed.
    assert gravity_of("douglas-fir-larch").value == 0.50
    assert gravity_of("spruce-pine-fir").value == 0.42
    assert gravity_of("red oak").value == 0.67
    assert default_limits()["stud-gravity"].amount == 0.42
    assert gravity_of("black walnut").value == 0.55  # Wood Handbook Table 5-3, at 12 % moisture
    assert 0.5 < gravity_of("mdf").value < 0.9
