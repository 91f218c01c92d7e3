"""Each placing clause by a sum done by hand. The box is 600 across, 300 deep, 400 tall, in millimetres."""

from __future__ import annotations

import pytest

from tests.model.placed import Placed, in_box

POSTS = (
    "part post for each of left, right: board, upright, facing side, 400 tall, on floor, front at 0",
    "    flush with each of box",
)


def with_posts(clauses: str, stock: str = "board, across, flat") -> Placed:
    return in_box(*POSTS, f"part a: {stock}, {clauses}")


@pytest.mark.parametrize("ends", ["post.left and post.right", "post.right and post.left"])
@pytest.mark.parametrize(
    ("slack", "left", "right", "housed"),
    [
        ("", 20, 580, 0),
        ("less 4", 22, 578, 0),
        ("with 4 each end", 24, 576, 0),
        ("past 4 each end", 16, 584, 0),
        ("housed 4 each end", 16, 584, 4),
    ],
)
@pytest.mark.parametrize("comma", [" ", ", "])
def test_between_in_either_order(
    ends: str, slack: str, left: float, right: float, housed: float, comma: str
) -> None:
    found = with_posts(f"between {ends}{comma if slack else ''}{slack}, front at 0, on floor")
    assert found.box("a") == (left, 0, 0, right, 100, 20)
    assert found.plan.parts["a"].housed == housed


@pytest.mark.parametrize(
    ("slack", "left", "right"), [("", 0, 600), ("less 4", 2, 598), ("past 30 each end", -30, 630)]
)
def test_from_face_to_face(slack: str, left: float, right: float) -> None:
    found = with_posts(f"from left of box to right of box {slack}, front at 0, on floor")
    assert found.box("a")[0::3] == (left, right)


def test_from_any_face_to_any_other_that_looks_the_same_way() -> None:
    found = with_posts("from right of post.left to left of post.right, front at 0, on floor")
    assert found.box("a")[0::3] == (20, 580)
    assert found.troubles == []


def test_between_promises_contact_and_its_slack_takes_that_back() -> None:
    missing = "bottom 500 above floor, front at 0"
    assert with_posts(f"between post.left and post.right, {missing}").troubles == [
        ("a", "post.left"),
        ("a", "post.right"),
    ]
    assert with_posts(f"between post.left and post.right housed 4 each end, {missing}").troubles == [
        ("a", "post.left"),
        ("a", "post.right"),
    ]
    assert with_posts(f"between post.left and post.right less 4, {missing}").troubles == []


def test_between_along_a_stated_direction() -> None:
    found = in_box(
        "part low: board, across, flat, 90 long, left at 0, front at 0, on floor",
        "part high: board, across, flat, 90 long, left at 0, front at 0, bottom 200 above floor",
        "part a: ply, facing front, between low and high up, 50 across, left at 0, front at 0",
    )
    assert found.box("a") == (0, 0, 20, 50, 18, 200)


def test_between_the_floor_and_a_part_and_a_part_and_the_wall() -> None:
    found = in_box(
        "part high: board, across, flat, 90 long, left at 0, against wall, bottom 200 above floor",
        "part low: board, across, flat, 90 long, left at 0, back 200 in front of wall, bottom 200 above floor",
        "part a: board, upright, facing side, between floor and high, left at 0, flush with front of high",
        "part b: board, deep, flat, between low and wall, left at 100, bottom 200 above floor",
    )
    assert found.box("a") == (0, -100, 0, 20, 0, 200)
    assert found.box("b") == (100, -200, 200, 200, 0, 220)


FACES = ("left", "right", "front", "back", "bottom", "top")


@pytest.mark.parametrize(
    ("face", "axis", "low"),
    [("left", 0, 0), ("right", 0, 510), ("front", 1, 0), ("back", 1, 200), ("bottom", 2, 0), ("top", 2, 380)],
)
def test_flush_with_each_face(face: str, axis: int, low: float) -> None:
    others = {0: "left at 7", 1: "front at 7", 2: "bottom at 7"}
    rest = ", ".join(clause for each, clause in others.items() if each != axis)
    found = with_posts(f"90 long, flush with {face} of box, {rest}")
    assert found.box("a")[axis] == low
    assert [place for each, place in enumerate(found.box("a")[:3]) if each != axis] == [7, 7]


@pytest.mark.parametrize(
    ("clause", "axis", "low"),
    [
        ("bottom 15 above floor", 2, 15),
        ("bottom 15 above box", 2, 415),
        ("bottom 15 above bottom of box", 2, 15),
        ("top 15 above box", 2, 395),
        ("top 15 below top of box", 2, 365),
        ("top 15 below box", 2, -35),
        ("bottom 15 below floor", 2, -15),
        ("left 5 right of box", 0, 605),
        ("left 5 right of left of box", 0, 5),
        ("right 5 left of box", 0, -95),
        ("right 5 left of right of box", 0, 505),
        ("front 5 behind box", 1, 305),
        ("front 5 behind front of box", 1, 5),
        ("back 5 in front of box", 1, -105),
        ("back 5 in front of back of box", 1, 195),
        ("left 5 inside box", 0, 5),
        ("left 5 inside left of box", 0, 5),
        ("left 5 outside box", 0, -5),
        ("right 5 inside box", 0, 505),
        ("right 5 outside box", 0, 515),
        ("front 5 inside box", 1, 5),
        ("back 5 outside box", 1, 205),
        ("top 5 inside box", 2, 375),
        ("bottom 5 outside box", 2, -5),
        ("left at 4", 0, 4),
        ("right at 100", 0, 10),
        ("back at 0", 1, -100),
        ("top at 20", 2, 0),
        ("on box", 2, 400),
        ("under box", 2, -20),
        ("on floor", 2, 0),
        ("against right of box", 0, 600),
        ("against left of box", 0, -90),
        ("against front of box", 1, -100),
        ("against back of box", 1, 300),
        ("against top of box", 2, 400),
        ("against floor", 2, 0),
        ("centred across on box", 0, 255),
        ("centred deep on box", 1, 100),
        ("centred up on box", 2, 190),
    ],
)
def test_offsets_contacts_and_middles(clause: str, axis: int, low: float) -> None:
    """The part is 90 across, 100 deep, 20 tall."""
    others = {0: "left at 7", 1: "front at 7", 2: "bottom at 7"}
    rest = ", ".join(other for each, other in others.items() if each != axis)
    found = with_posts(f"90 long, {clause}, {rest}")
    assert found.box("a")[axis] == low
    assert found.troubles == []


def test_plan_that_refers_to_the_wall_is_set_out_from_it() -> None:
    found = in_box(
        "part cleat: board, across, on edge, 500 long, against wall, centred across on box, bottom 300 above floor",
        "part shelf: board, across, flat, 500 long, on cleat, front 60 in front of wall, left at 0",
    )
    assert found.box("cleat")[1::3] == (-20, 0)
    assert found.box("shelf")[1::3] == (-60, 40)
    assert found.box("box")[1::3] == (-300, 0)  # an outline that says nothing stands before the wall


def test_outline_stands_at_the_origin_until_it_says_otherwise() -> None:
    found = in_box(
        "outline a: 10 across, 10 deep, 10 tall, on floor",
        "outline b: 10 across, 10 deep, 10 tall, left 5 right of box, centred deep on box, on box",
        "outline c: from left of box to right of box, from front of box to back of box, on b, 5 tall, less 20",
        "part any: board, across, flat, 90 long, left at 0, front at 0, on floor",
    )
    assert found.box("a") == (0, 0, 0, 10, 10, 10)
    assert found.box("b") == (605, 145, 400, 615, 155, 410)
    assert found.box("c") == (0, 10, 410, 600, 290, 415)


@pytest.mark.parametrize(
    ("stock", "clauses", "size"),
    [
        ("board, across, flat", "90 long", (90, 100, 20)),
        ("board, across, on edge", "90 across", (90, 20, 100)),
        ("board, across, facing front", "90 across", (90, 20, 100)),
        ("board, deep, flat", "90 long", (100, 90, 20)),
        ("board, deep, on edge", "90 deep", (20, 90, 100)),
        ("board, deep, facing side", "90 deep", (20, 90, 100)),
        ("board, upright, facing front", "90 tall", (100, 20, 90)),
        ("board, upright, facing side", "as tall as box", (20, 100, 400)),
        ("board, across, flat", "as wide as box", (600, 100, 20)),
        ("board, across, flat", "as long as post.left", (20, 100, 20)),
        ("board, across, flat, rip 30", "90 long", (90, 30, 20)),
        ("ply, flat", "90 across, 80 deep", (90, 80, 18)),
        ("ply, facing front", "90 across, 80 tall", (90, 18, 80)),
        ("ply, facing side", "as deep as box, as tall as box", (18, 300, 400)),
        ("ply, deep, flat", "90 long, 70 across", (70, 90, 18)),
    ],
)
def test_sizes_follow_stock_and_turning(stock: str, clauses: str, size: tuple[float, ...]) -> None:
    """Birch plywood of 18 mm is 18 mm thick in a metric plan."""
    found = with_posts(f"{clauses}, left at 0, front at 0, on floor", stock)
    assert found.box("a")[3:] == pytest.approx(size)


def test_square_section_needs_no_turning() -> None:
    found = in_box(
        "stock post: actual 45 x 45 pine", "part a: post, upright, 90 tall, left at 0, front at 0, on floor"
    )
    assert found.box("a") == (0, 0, 0, 45, 45, 90)


def test_sheet_without_a_stated_run_is_long_along_its_longer_side() -> None:
    found = in_box(
        "part wide: ply, flat, 500 across, 200 deep, left at 0, front at 0, on floor",
        "part deep: ply, flat, 200 across, 250 deep, left at 0, front at 0, on floor",
        "part said: ply, across, flat, 200 across, 250 deep, left at 0, front at 0, on floor",
        "part grained: ply, flat, grain deep, 500 across, 200 deep, left at 0, front at 0, on floor",
    )
    solids = found.setting.solids
    assert [solids[name].size[:2] for name in ("wide", "deep", "said", "grained")] == [
        (500, 200),
        (250, 200),
        (200, 250),
        (200, 500),
    ]
    assert [found.plan.parts[name].grain_said for name in ("wide", "said", "grained")] == [False, True, True]


def test_stated_cut_is_only_ever_compared() -> None:
    found = with_posts("between post.left and post.right, cut 300, front at 0, on floor")
    assert found.cut("a") == 560
    cut = found.plan.parts["a"].cut
    assert cut is not None
    assert cut.length == 300
    assert found.troubles == []
