"""How loads travel: nothing is lost on the way, and the sums of small pieces done by hand."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from reviewer.mechanics.beam import BeamResult, Unstable
from reviewer.units import MM_PER_INCH, NEWTON_PER_KG, NEWTON_PER_POUND
from reviewer.workshop.carrying import Carrying
from reviewer.workshop.member import Member
from tests.rules.sound_pieces import BENCH, BOOKCASE, PLANTER, SOUND_PIECES, STEP_STOOL, WALL_SHELF
from tests.support import review_of

INCH = MM_PER_INCH


def pounds(newtons: float) -> float:
    return newtons / NEWTON_PER_POUND


def weight_of(text: str) -> float:
    """What a piece weighs with its declared loads, N."""
    review = review_of(text)
    own = math.fsum(mass.weight for mass in review.masses.values())
    return own + math.fsum(review.carrying.declared.values())


def solved(member: Member) -> BeamResult:
    assert isinstance(member.sag, BeamResult)
    return member.sag


# ---------------------------------------------------------------- totals


@pytest.mark.parametrize("name", SOUND_PIECES)
def test_all_that_weighs_reaches_the_ground(name: str) -> None:
    text = SOUND_PIECES[name]
    carrying = review_of(text).carrying
    assert carrying.on_floor + carrying.on_wall == pytest.approx(weight_of(text), rel=1e-9)
    assert carrying.lost == {}


def test_the_bench_brings_two_people_and_itself_to_the_floor() -> None:
    # Two people at 275 lb, the planning figure of the load table; boards by hand: four legs 16, two rails
    # 35, two ends 9, a stretcher 9 of 1 1/2 x 3 1/2, two planks 48 of 1 1/2 x 7 1/4, at 448 kg/m³.
    inches = (4 * 16 + 2 * 35 + 3 * 9) * 1.5 * 3.5 + 2 * 48 * 1.5 * 7.25
    own = inches * INCH**3 / 1e9 * 448 * NEWTON_PER_KG
    carrying = review_of(BENCH).carrying
    assert pounds(carrying.declared["seat.1"]) == pytest.approx(275, abs=0.1)
    assert carrying.on_floor == pytest.approx(550 * NEWTON_PER_POUND + own, rel=1e-4)
    assert carrying.on_wall == 0.0


def test_a_wall_shelf_hangs_all_its_load_on_the_wall() -> None:
    carrying = review_of(WALL_SHELF).carrying
    # 25 lb of books a foot on three feet.
    assert pounds(carrying.declared["shelf"]) == pytest.approx(75, abs=0.1)
    assert carrying.on_floor == 0.0
    assert carrying.on_wall == pytest.approx(weight_of(WALL_SHELF), rel=1e-9)


BOX = st.tuples(
    st.sampled_from(
        ["across, flat", "across, on edge", "deep, flat", "deep, on edge", "upright, facing front"]
    ),
    st.integers(1, 8),  # length, in steps of 100 mm
    st.integers(0, 6),
    st.integers(0, 6),
    st.integers(0, 5),
)


@settings(max_examples=150, deadline=None)
@given(boxes=st.lists(BOX, min_size=1, max_size=9), links=st.integers(0, 4), load=st.integers(0, 3))
def test_of_any_heap_of_boards_nothing_is_lost(
    boxes: list[tuple[str, int, int, int, int]], links: int, load: int
) -> None:
    lines = ['plan "Heap" in millimetres', "stock board: actual 50 x 100 spruce-pine-fir"]
    for number, (way, long, left, front, bottom) in enumerate(boxes):
        lines.append(
            f"part p{number}: board, {way}, {long * 100} long, "
            f"left at {left * 100}, front at {front * 50}, bottom at {bottom * 50}"
        )
    names = [f"p{number}" for number in range(len(boxes))]
    for number in range(min(links, len(boxes) - 1)):
        lines.append(f"join p{number} to {', '.join(names[number + 1 :])}: screws 5 x 80, 2 per joint")
    if load:
        lines.append(f"load p*: {load * 10} kg" if len(boxes) > 1 else f"load p0: {load * 10} kg")
    text = "\n".join(lines).replace("load p*:", f"load {', '.join(names)}:")
    carrying: Carrying = review_of(text).carrying
    arrived = carrying.on_floor + carrying.on_wall + math.fsum(carrying.lost.values())
    assert arrived == pytest.approx(weight_of(text), rel=1e-9)


# ---------------------------------------------------------------- one board


def shelf(
    span_in: float, stock: str = "actual 3/4 x 11 1/4 ponderosa pine", load: str = "25 lb per foot"
) -> str:
    """A shelf let between two posts: its ends meet their faces, so the span is all of it."""
    return f"""
        plan "Shelf" in inches
        stock board: {stock}
        stock post: actual 2 x 11 1/4 ponderosa pine
        part left-post: post, upright, facing side, 20 tall, on floor, left at 0, front at 0
        part right-post: post, upright, facing side, 20 tall, on floor, left {span_in} right of left-post
            front at 0
        part shelf: board, across, flat, between left-post and right-post, flush with front of left-post
            bottom at 10
        join shelf to left-post, right-post: screws #8 x 3, 3 per joint
        {f"load shelf: {load}" if load else ""}
        room hall: indoors
        """


def test_the_sag_of_a_simple_shelf_is_that_of_the_handbook_formula() -> None:
    # Worked check W80 of the materials reference (derived there from the Wood Handbook's formula):
    # ponderosa 3/4 x 11 1/4 x 36 in under 25 lb/ft, E 1.29 million psi: 0.0893 in at first.
    member = review_of(shelf(36)).carrying.members["shelf"]
    assert isinstance(member.standing, BeamResult)
    own = member.own / (25 * NEWTON_PER_POUND / (12 * INCH))
    (bay,) = member.standing.bays
    assert bay.sag / INCH == pytest.approx(0.0893 * (1 + own), abs=0.0005)
    # In the long run a shelf of solid wood sags twice that (Wood Handbook ch. 5: creep about as large).
    (bay,) = solved(member).bays
    assert member.creep == 2.0
    assert bay.sag / INCH == pytest.approx(2 * 0.0893 * (1 + own), abs=0.001)


def test_half_of_a_shelf_goes_to_each_post() -> None:
    review = review_of(shelf(36))
    member = review.carrying.members["shelf"]
    assert isinstance(member.standing, BeamResult)
    left, right = (reaction.force for reaction in member.standing.reactions)
    whole = review.masses["shelf"].weight + 75 * NEWTON_PER_POUND
    assert left == pytest.approx(whole / 2, rel=1e-6)
    assert right == pytest.approx(whole / 2, rel=1e-6)


def test_a_sheet_lying_on_rails_spans_from_rail_to_rail() -> None:
    text = """
        plan "Sheet seat" in inches
        stock sheet: {material} {thick}
        stock stud: 2x4 spruce-pine-fir
        outline frame: 48 across, 20 deep, 16 tall, on floor
        part leg: stud, upright, facing front, as tall as frame, in each corner of frame
        part rail for each of front, back: stud, across, on edge, between leg.each-left and leg.each-right
            flush with top of frame, flush with each of frame
        part seat: sheet, flat, on rail.front, from left of frame to right of frame
            from front of frame to back of frame
        join rail.* to leg.*: pocket screws 2 1/2, 2 per end
        """
    member = review_of(text.format(material="birch plywood", thick="3/4")).carrying.members["seat"]
    assert member.axis == 1
    # The middles of the rails, 3/4 in from the edges.
    assert [round(place / INCH, 3) for place in sorted(set(member.places))] == [0.75, 19.25]
    # Across the grain of the sheet it is less stiff (hardwood plywood: 600,000 psi, panel table).
    assert member.modulus == pytest.approx(600_000 * 0.00689476, rel=1e-4)
    assert member.width / INCH == pytest.approx(48)


def test_a_board_let_into_its_only_support_is_clamped() -> None:
    text = """
        plan "Peg" in inches
        stock strip: 1x4 pine
        stock peg: actual 3/4 x 3/4 hard maple
        part rail: strip, across, on edge, 20 long, against wall, left at 0, bottom at 60
        part peg: peg, deep, 3 long, back 1/2 behind front of rail, left at 10, bottom at 61
        join rail to wall: screws #10 x 3, 3 per joint
        join peg to rail: mortise and tenon 1/2 long, glue pva
        load peg: 10 lb
        """
    member = review_of(text).carrying.members["peg"]
    assert member.clamped
    # An even load W on a cantilever: W·L³ / (8·E·I), from the middle of the tenon; materials reference F6.
    long = 2.75 * INCH
    load = (member.uniform[0] * member.creep + member.uniform[1]) * long
    expected = load * long**3 / (8 * member.modulus * member.second_moment)
    free = max(solved(member).bays, key=lambda bay: bay.length)
    assert free.kind == "overhang"
    assert free.sag == pytest.approx(expected, rel=1e-6)


def test_a_board_on_one_narrow_support_that_nothing_holds_down_would_tip() -> None:
    text = """
        plan "Seesaw" in inches
        stock board: 1x6 pine
        stock stud: 2x4 spruce-pine-fir
        part post: stud, upright, facing side, 10 tall, on floor, left at 0, front at 0
        part board: board, across, flat, 30 long, on post, left at 0, front at 0
        {join}
        """
    loose = review_of(text.format(join="")).carrying
    assert loose.members["board"].standing == Unstable(1)
    # All the same it weighs on the post.
    assert loose.on_floor == pytest.approx(weight_of(text.format(join="")), rel=1e-9)
    fixed = review_of(text.format(join="join board to post: screws #8 x 2 1/2, 2 per joint")).carrying
    member = fixed.members["board"]
    assert isinstance(member.standing, BeamResult)
    # The two ends of the only bearing hold it: one pushes up, the other pulls down.
    assert [round(place / INCH, 3) for place in member.places] == [0, 1.5]
    assert member.standing.reactions[0].force < 0 < member.standing.reactions[1].force


def test_a_short_bearing_does_not_stiffen_the_board() -> None:
    # Screwed down on posts 3 in wide it still bends like a board on two edges, 45 in apart.
    text = """
        plan "Bench board" in inches
        stock board: actual 1 x 8 ponderosa pine
        stock post: actual 3 x 8 ponderosa pine
        part post for each of left, right: post, upright, facing side, 10 tall, on floor, front at 0
            flush with each of frame
        outline frame: 48 across, 8 deep, 10 tall, on floor
        part board: board, across, flat, on post.left, from left of frame to right of frame, front at 0
        join board to post.*: screws #8 x 3, 4 per joint
        load board: 10 lb per foot
        room hall: indoors
        """
    member = review_of(text).carrying.members["board"]
    assert [round(place / INCH, 3) for place in member.places] == [1.5, 46.5]
    span = next(bay for bay in solved(member).bays if bay.kind == "span")
    load = member.uniform[0] * member.creep
    length = 45 * INCH
    simple = 5 * load * length**4 / (384 * member.modulus * member.second_moment)
    # The free ends of 1 1/2 in take a little off: M = w·a²/2 at both supports, times L²/(8·E·I).
    ends = load * (1.5 * INCH) ** 2 / 2 * length**2 / (8 * member.modulus * member.second_moment)
    assert span.sag == pytest.approx(simple - ends, rel=1e-6)


# ---------------------------------------------------------------- people and things


def test_people_take_their_places_in_the_middle_of_the_longest_bay() -> None:
    text = shelf(60, stock="actual 1 1/2 x 11 1/4 ponderosa pine", load="1 person seated")
    member = review_of(text).carrying.members["shelf"]
    (seated,) = member.spreads
    # 24 in of bench for each (load table).
    assert (seated.start / INCH, seated.end / INCH) == (pytest.approx(18), pytest.approx(42))
    assert seated.lasting == 0
    assert pounds(seated.brief * 24 * INCH) == pytest.approx(275, abs=0.1)
    full = review_of(shelf(60, load="3 people seated")).carrying.members["shelf"]
    assert full.spreads == ()
    assert pounds(full.uniform[1] * 60 * INCH) == pytest.approx(3 * 275, abs=0.2)


def test_someone_standing_is_on_one_spot() -> None:
    member = review_of(shelf(36, load="1 person standing")).carrying.members["shelf"]
    (stands,) = member.points
    assert stands.at / INCH == pytest.approx(18)
    assert pounds(stands.brief) == pytest.approx(300, abs=0.1)
    # P·L³ / (48·E·I) for the person, 5·w·L⁴ / (384·E·I) for the board: materials reference F6.
    bending, length = member.modulus * member.second_moment, 36 * INCH
    expected = stands.brief * length**3 / (48 * bending)
    expected += 5 * member.own * member.creep * length**4 / (384 * bending)
    (bay,) = solved(member).bays
    assert bay.sag == pytest.approx(expected, rel=1e-6)


def test_boards_that_lie_abreast_share_a_load_per_foot() -> None:
    text = """
        plan "Two planks" in inches
        stock plank: actual 1 x 6 ponderosa pine
        stock post: actual 2 x 12 ponderosa pine
        outline frame: 36 across, 12 deep, 16 tall, on floor
        part post for each of left, right: post, upright, facing side, as tall as frame, on floor
            flush with front of frame, flush with each of frame
        part plank: plank, across, flat, on frame, from left of frame to right of frame
            2 copies side by side deep, front at 0
        part low-shelf: plank, across, flat, between post.left and post.right, front at 0, bottom at 4
        join low-shelf to post.*: glue pva, dowels 3/8 x 2, 2 per joint
        load plank.*, low-shelf: 20 lb per foot
        """
    declared = review_of(text).carrying.declared
    assert pounds(declared["plank.1"]) == pytest.approx(30)
    assert pounds(declared["plank.2"]) == pytest.approx(30)
    # The one below is a shelf of its own, 32 in long.
    assert pounds(declared["low-shelf"]) == pytest.approx(20 * 32 / 12)


@settings(max_examples=40, deadline=None)
@given(
    span=st.integers(12, 90),
    pounds_each=st.lists(st.integers(1, 400), min_size=2, max_size=2, unique=True),
    load=st.sampled_from(["{} lb", "{} lb per foot", "1 person standing, {} lb"]),
)
def test_more_load_never_sags_less(span: int, pounds_each: list[int], load: str) -> None:
    less, more = (
        max(
            bay.sag
            for bay in solved(review_of(shelf(span, load=load.format(each))).carrying.members["shelf"]).bays
        )
        for each in sorted(pounds_each)
    )
    assert more > less


# ---------------------------------------------------------------- wood and room


def test_the_stated_grade_sets_the_stiffness() -> None:
    # EN 338 (2003): C24 has a mean modulus of 11,000 N/mm²; NDS 2018: SPF No.2 1.4 million psi.
    plain = review_of(shelf(36)).carrying.members["shelf"].modulus
    c24 = review_of(shelf(36, "actual 3/4 x 11 1/4 ponderosa pine, grade c24")).carrying
    assert c24.members["shelf"].modulus == 11_000
    assert plain != 11_000
    graded = review_of(shelf(36, "2x12 spruce-pine-fir, grade no.2")).carrying
    assert graded.members["shelf"].modulus == pytest.approx(1_400_000 * 0.00689476, rel=1e-4)


@pytest.mark.parametrize(
    ("room", "stock", "factor"),
    [
        ("indoors", "actual 3/4 x 11 1/4 ponderosa pine", 2.0),
        ("indoors, unheated", "actual 3/4 x 11 1/4 ponderosa pine", 2.0),
        ("outdoors", "actual 3/4 x 11 1/4 ponderosa pine", 3.0),  # 1 + k_def, EN 1995-1-1 Table 3.2
        ("outdoors", "birch plywood 3/4", 3.5),
        ("indoors", "mdf 3/4", 3.25),
        ("indoors", "particleboard 3/4", 3.25),
    ],
)
def test_creep_follows_the_wood_and_the_room(room: str, stock: str, factor: float) -> None:
    text = shelf(24, stock).replace(
        "part shelf: board, across, flat,", "part shelf: board, across, flat, 11 1/4 deep,"
    )
    text = text.replace("room hall: indoors", f"room hall: {room}")
    assert review_of(text).carrying.members["shelf"].creep == factor


def test_trying_again_thicker_or_with_a_support() -> None:
    member = review_of(shelf(36)).carrying.members["shelf"]
    (before,) = solved(member).bays
    same, thicker, propped = member.again(), member.again(2.0), member.again(more=(member.length / 2,))
    assert isinstance(same, BeamResult)
    assert isinstance(thicker, BeamResult)
    assert isinstance(propped, BeamResult)
    assert same.bays[0].sag == pytest.approx(before.sag, rel=1e-9)
    # Twice as thick is eight times as stiff, and the board weighs twice as much.
    whole = member.uniform[0]
    assert thicker.bays[0].sag == pytest.approx(before.sag / 8 * (whole + member.own) / whole, rel=1e-9)
    # Two equal spans: W·L³/(185·E·I) each (materials reference F6, from memory).
    half, load = 18 * INCH, whole * member.creep * 18 * INCH
    expected = load * half**3 / (185 * member.modulus * member.second_moment)
    assert propped.bays[0].sag == pytest.approx(expected, rel=0.005)


def test_two_beams_along_each_other_share_the_load_by_their_stiffness() -> None:
    text = """
        plan "Doubled" in inches
        stock board: actual 1 x 6 ponderosa pine
        stock strip: actual 1 x 2 ponderosa pine
        stock post: actual 2 x 6 ponderosa pine
        outline frame: 40 across, 6 deep, 16 tall, on floor
        part post for each of left, right: post, upright, facing side, as tall as frame, on floor
            flush with front of frame, flush with each of frame
        part board: board, across, flat, between post.left and post.right, flush with front of frame, bottom at 12
        part strip: strip, across, on edge, between post.left and post.right, under board, flush with front of frame
        join board, strip to post.*: glue pva, dowels 3/8 x 2, 2 per joint
        join strip to board: glue pva
        load board: 30 lb per foot
        room hall: indoors
        """
    review = review_of(text)
    board, strip = (review.carrying.members[name] for name in ("board", "strip"))
    # I of 6 x 1 flat is 0.5 in⁴, of 1 x 2 on edge 0.6667 in⁴: 3/7 and 4/7 of the load.
    assert board.share == pytest.approx(0.5 / (0.5 + 2 / 3))
    whole = 90 * NEWTON_PER_POUND + review.masses["board"].weight
    assert isinstance(board.standing, BeamResult)
    assert math.fsum(each.force for each in board.standing.reactions) == pytest.approx(3 / 7 * whole)
    assert isinstance(strip.standing, BeamResult)
    down = math.fsum(each.force for each in strip.standing.reactions)
    assert down == pytest.approx(4 / 7 * whole + review.masses["strip"].weight)
    # They sag alike, as one beam of both would.
    both = 5 * board.creep * board.uniform[0] * board.length**4
    both /= 384 * board.modulus * board.second_moment * 7 / 3
    (bay,) = solved(board).bays
    assert bay.sag == pytest.approx(both, rel=1e-6)
    assert solved(strip).bays[0].sag == pytest.approx(bay.sag, rel=0.04)
    assert review.carrying.on_floor == pytest.approx(weight_of(text), rel=1e-9)


def test_members_of_the_pieces() -> None:
    bookcase = review_of(BOOKCASE).carrying.members
    # The clear 28 9/16 in and half of the two dadoes of 1/4 in.
    assert [
        round(bay.length / INCH, 4) for bay in solved(bookcase["shelf.3"]).bays if bay.kind == "span"
    ] == [28.81]
    assert "side.left" not in bookcase
    planter = review_of(PLANTER).carrying.members
    assert [round(place) for place in planter["floor-slat.1"].places] == [22, 380, 738]
    stool = review_of(STEP_STOOL).carrying
    assert pounds(stool.on_floor) == pytest.approx(307.2, abs=0.1)


AREA = """
    plan "Board" in {unit}
    stock board: actual {thick} x {wide} red oak
    stock post: actual {wide} x {thick} red oak
    part post.left: post, upright, facing side, {tall} tall, on floor, left at 0, front at 0
    part post.right: post, upright, facing side, {tall} tall, on floor, left {apart} right of left of post.left
        front at 0
    part board: board, across, flat, from left of post.left to right of post.right, front at 0, on post.left
    join board to post.*: screws #8 x 2, 3 per joint, from above
    load board: {load}
    """
_INCH: dict[str, object] = {"unit": "inches", "thick": 1, "wide": 8, "tall": 20, "apart": 47}
_METRIC: dict[str, object] = {"unit": "millimetres", "thick": 25, "wide": 200, "tall": 500, "apart": 975}


@pytest.mark.parametrize(
    ("sizes", "load", "newtons"),
    [
        # 48 in by 8 in is 8/3 square feet.
        (_INCH, "30 lb per square foot", 80 * NEWTON_PER_POUND),
        (_INCH, "30 lb per foot", 120 * NEWTON_PER_POUND),
        (_INCH, "30 lb", 30 * NEWTON_PER_POUND),
        (_INCH, "30 lb at 12 from left", 30 * NEWTON_PER_POUND),
        # 1000 mm by 200 mm is 0.2 m².
        (_METRIC, "150 kg per square metre", 30 * NEWTON_PER_KG),
    ],
)
def test_loads_at_a_spot_by_length_and_by_area_are_carried(
    sizes: dict[str, object], load: str, newtons: float
) -> None:
    review = review_of(AREA.format(load=load, **sizes))
    assert review.carrying.declared["board"] == pytest.approx(newtons, rel=1e-9)
    handed = math.fsum(each.force for each in review.carrying.handed["board"])
    assert handed == pytest.approx(newtons + review.masses["board"].weight, rel=1e-9)
    standing = review.carrying.members["board"].standing
    assert isinstance(standing, BeamResult)
    assert math.fsum(each.force for each in standing.reactions) == pytest.approx(handed, rel=1e-9)


def test_a_wider_board_takes_more_of_a_load_by_area() -> None:
    """A board twice as wide carries twice as much of a load by area, and no more of one by length."""
    for load, times in (("30 lb per square foot", 2), ("30 lb per foot", 1)):
        text = AREA.format(load=load, **_INCH)
        one = review_of(text).carrying.declared["board"]
        wide = review_of(text.replace("1 x 8 red oak", "1 x 16 red oak", 1))
        assert wide.carrying.declared["board"] == pytest.approx(times * one)
