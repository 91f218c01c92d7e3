"""Each shaping clause to its record, by hand, in millimetres; and what is told of those that make no sense.

The board is 20 x 100. Lying it runs across, its width deep, its thickness up; upright facing front it runs
up, its width across, its thickness deep.
"""

from __future__ import annotations

from itertools import permutations
from typing import Any

import pytest

from reviewer.model.shapes import Cutting
from reviewer.setting_out.solid import Solid
from tests.language.reading_texts import told, understood
from tests.model.placed import Placed, in_box, placed

HEAD = """\
plan "Test" in millimetres
stock board: actual 20 x 100 pine
stock ply: birch plywood 18
stock bar: round 30 red oak
outline box: 600 across, 300 deep, 400 tall, on floor
part other: board, across, flat, 90 long, left at 0, front at 0, on floor
"""
PLACE = "left at 0, front at 0, on floor"
LYING = f"board, across, flat, 500 long, {PLACE}"
UPRIGHT = f"board, upright, facing front, 300 tall, {PLACE}"
SHEET = f"ply, flat, 400 across, 200 deep, {PLACE}"
BAR = f"bar, across, 500 long, {PLACE}"
LEANING = f"{UPRIGHT}, tilted 8 degrees towards left"
RISING = f"board, facing front, rising towards right, 300 across, 300 tall, {PLACE}"


def cuttings(clauses: str, part: str = LYING) -> tuple[Cutting, ...]:
    """What the clauses cut away from a part of :data:`HEAD`."""
    shape = placed(f"{HEAD}part a: {part}, {clauses}\n").plan.parts["a"].shape
    return () if shape is None else shape.cuttings


def plain(record: Any) -> Any:
    """A record as its name and its values, without where it is said."""
    if not hasattr(record, "_fields"):
        return tuple(plain(each) for each in record) if isinstance(record, tuple) else record
    values = [plain(getattr(record, field)) for field in record._fields if field != "span"]
    return (type(record).__name__, *values)


WHOLE = ("Reach", "whole", 0.0, 0.0)


def reach(start: str, away: float, size: float) -> tuple[str, str, float, float]:
    return ("Reach", start, away, size)


def middle(size: float) -> tuple[str, str, float, float]:
    return reach("middle", 0.0, size)


@pytest.mark.parametrize(
    ("part", "clauses", "records"),
    [
        # A mitre slants across the width, a bevel through the thickness.
        (LYING, "mitre 45 at left end, long at front", [("FaceCut", "mitre", 0, "low", 45, 1, "low")]),
        (LYING, "bevel 30 at right end, long at top", [("FaceCut", "bevel", 0, "high", 30, 2, "high")]),
        (
            LYING,
            "mitre 45 at both ends, long at back",
            [("FaceCut", "mitre", 0, "low", 45, 1, "high"), ("FaceCut", "mitre", 0, "high", 45, 1, "high")],
        ),
        (
            LYING,
            "mitre 45 at left end, long at back, bevel 10 at left end, long at top",
            [("FaceCut", "mitre", 0, "low", 45, 1, "high"), ("FaceCut", "bevel", 0, "low", 10, 2, "high")],
        ),
        (UPRIGHT, "mitre 45 at top end, long at left", [("FaceCut", "mitre", 2, "high", 45, 0, "low")]),
        (UPRIGHT, "bevel 5 along left, long at back", [("FaceCut", "bevel", 0, "low", 5, 1, "high")]),
        (SHEET, "bevel 45 at front end, long at top", [("FaceCut", "bevel", 1, "low", 45, 2, "high")]),
        (SHEET, "bevel 45 along left, long at top", [("FaceCut", "bevel", 0, "low", 45, 2, "high")]),
        (
            f"{SHEET}, grain deep",
            "mitre 9 at both ends, long at left",
            [("FaceCut", "mitre", 1, "low", 9, 0, "low"), ("FaceCut", "mitre", 1, "high", 9, 0, "low")],
        ),
        (RISING, "bevel 5 along top, long at front", [("FaceCut", "bevel", 2, "high", 5, 1, "low")]),
        # Tapers.
        (LYING, "taper to 60 at left end", [("Taper", 0, "low", 1, "both", 60, None)]),
        (UPRIGHT, "taper to 60 at bottom end over 120", [("Taper", 2, "low", 0, "both", 60, 120)]),
        (UPRIGHT, "taper to 60 at bottom end over 120 on left", [("Taper", 2, "low", 0, "low", 60, 120)]),
        (UPRIGHT, "taper to 12 at top end on back", [("Taper", 2, "high", 1, "high", 12, None)]),
        (SHEET, "taper to 50 at front end on left", [("Taper", 1, "low", 0, "low", 50, None)]),
        # Notches: from the faces that are named, in the middle, or counted.
        (
            UPRIGHT,
            "notch 30 across by 40 tall at left bottom",
            [("BoxCut", "notch", reach("low", 0, 30), WHOLE, reach("low", 0, 40))],
        ),
        (
            UPRIGHT,
            "notch 8 deep by 40 tall at back",
            [("BoxCut", "notch", WHOLE, reach("high", 0, 8), middle(40))],
        ),
        (
            UPRIGHT,
            "notch 8 deep by 40 tall at back, 70 from top",
            [("BoxCut", "notch", WHOLE, reach("high", 0, 8), reach("high", 70, 40))],
        ),
        (
            UPRIGHT,
            "notch 8 deep by 40 tall by 10 across at back, 70 from bottom, 5 from right",
            [("BoxCut", "notch", reach("high", 5, 10), reach("high", 0, 8), reach("low", 70, 40))],
        ),
        (LYING, "notch for other", [("FittedNotch", "other", 0.0)]),
        (LYING, "notch for other with 0.5 clear", [("FittedNotch", "other", 0.5)]),
        # A dado runs across the grain, a groove along it.
        (
            LYING,
            "dado 18 by 6 into top",
            [("BoxCut", "dado", middle(18), WHOLE, reach("high", 0, 6))],
        ),
        (
            LYING,
            "dado 18 by 6 into bottom, 70 from right",
            [("BoxCut", "dado", reach("high", 70, 18), WHOLE, reach("low", 0, 6))],
        ),
        (
            LYING,
            "groove 6 by 8 into top, 10 from front",
            [("BoxCut", "groove", WHOLE, reach("low", 10, 6), reach("high", 0, 8))],
        ),
        (
            LYING,
            "dado 18 by 6 into front",  # into the edge: through the thickness
            [("BoxCut", "dado", middle(18), reach("low", 0, 6), WHOLE)],
        ),
        (
            LYING,
            "groove 6 by 8 into back",
            [("BoxCut", "groove", WHOLE, reach("high", 0, 8), middle(6))],
        ),
        (
            LYING,
            "dado 18 by 6 into top, stopped 10 at front",
            [("BoxCut", "dado", middle(18), reach("short", 10, 0), reach("high", 0, 6))],
        ),
        (
            LYING,
            "groove 6 by 8 into top, stopped 12 at right, 10 from front, stopped 10 at left",
            [("BoxCut", "groove", reach("short", 10, 12), reach("low", 10, 6), reach("high", 0, 8))],
        ),
        # Where a sheet does not say how its grain runs, the place of a dado tells which way it goes.
        (
            SHEET,
            "dado 18 by 6 into top, 70 from left",
            [("BoxCut", "dado", reach("low", 70, 18), WHOLE, reach("high", 0, 6))],
        ),
        (
            SHEET,
            "dado 18 by 6 into top, 70 from front",
            [("BoxCut", "dado", WHOLE, reach("low", 70, 18), reach("high", 0, 6))],
        ),
        (
            SHEET,
            "dado 18 by 6 into top, stopped 9 at left",
            [("BoxCut", "dado", reach("short", 9, 0), middle(18), reach("high", 0, 6))],
        ),
        (
            f"{SHEET}, grain deep",
            "dado 18 by 6 into top",
            [("BoxCut", "dado", WHOLE, middle(18), reach("high", 0, 6))],
        ),
        (
            f"{SHEET}, grain deep",
            "groove 18 by 6 into top",
            [("BoxCut", "groove", middle(18), WHOLE, reach("high", 0, 6))],
        ),
        (SHEET, "groove 6 by 8 into left", [("BoxCut", "groove", reach("low", 0, 8), WHOLE, middle(6))]),
        (
            LYING,
            "rabbet 12 by 6 into top along back",
            [("BoxCut", "rabbet", WHOLE, reach("high", 0, 12), reach("high", 0, 6))],
        ),
        (
            LYING,
            "rabbet 12 by 6 into bottom along left, stopped 20 at front",
            [("BoxCut", "rabbet", reach("low", 0, 12), reach("short", 20, 0), reach("low", 0, 6))],
        ),
        # Holes: places count to their middle.
        (LYING, "hole 8 through top", [("Hole", 2, "high", 8, None, (middle(0), middle(0)))]),
        (
            LYING,
            "hole 8 by 12 into bottom, 40 from right, 30 from front",
            [("Hole", 2, "low", 8, 12, (reach("high", 40, 0), reach("low", 30, 0)))],
        ),
        (
            LYING,
            "hole 8 by 40 into left, 30 from back, hole 5 through front, 60 from left",
            [
                ("Hole", 0, "low", 8, 40, (reach("high", 30, 0), middle(0))),
                ("Hole", 1, "low", 5, None, (reach("low", 60, 0), middle(0))),
            ],
        ),
        # Corners of the wide face, in the order of the axes; edges; bars.
        (LYING, "corners rounded 15", [("Corners", "rounded", 15, ())]),
        (LYING, "corner back left chamfered 15", [("Corners", "chamfered", 15, (("low", "high"),))]),
        (UPRIGHT, "corner top right rounded 15", [("Corners", "rounded", 15, (("high", "high"),))]),
        (LYING, "edges rounded 3", [("Arrises", "rounded", 3)]),
        (LYING, "edges chamfered 3", [("Arrises", "chamfered", 3)]),
        (LYING, "round 16", [("Rounded", 16)]),
        # A bar has no wide face of its own: its thickness counts as deep, its width as up.
        (
            BAR,
            "mitre 45 at left end, long at bottom",
            [("Rounded", 30), ("FaceCut", "mitre", 0, "low", 45, 2, "low")],
        ),
        (BAR, "round 25", [("Rounded", 25)]),
    ],
)
def test_clause_to_record(part: str, clauses: str, records: list[tuple[Any, ...]]) -> None:
    assert [plain(each) for each in cuttings(clauses, part)] == records


def test_places_go_with_the_cut_before_them_whatever_stands_between() -> None:
    """Placing clauses may stand among shaping ones; only another cut ends a cut."""
    found = in_box(
        "part a: board, across, flat, dado 18 by 6 into top, 500 long, left at 0, 70 from left, front at 0",
        "    stopped 9 at back, on floor, edges rounded 2",
    )
    assert found.plan.parts["a"].shape is not None
    assert [plain(each) for each in found.plan.parts["a"].shape.cuttings] == [
        ("BoxCut", "dado", reach("low", 70, 18), reach("short", 0, 9), reach("high", 0, 6)),
        ("Arrises", "rounded", 2),
    ]


def test_plain_part_has_no_shape() -> None:
    assert cuttings("edges rounded 2") != ()
    assert in_box(f"part a: {LYING}").plan.parts["a"].shape is None


# ------------------------------------------------------------ thickness, round bars, and wood in the piece


def box_of(clauses: str) -> tuple[float, ...]:
    return placed(f"{HEAD}part a: {clauses}\n").box("a")


def test_planed_ripped_and_round_sizes() -> None:
    assert box_of(f"{LYING}, plane 16") == (0, 0, 0, 500, 100, 16)
    assert box_of(f"{LYING}, plane 20") == (0, 0, 0, 500, 100, 20)
    assert box_of(f"{LYING}, plane 16, rip 60") == (0, 0, 0, 500, 60, 16)
    assert box_of(f"{LYING}, round 16") == (0, 0, 0, 500, 16, 16)
    assert box_of(BAR) == (0, 0, 0, 500, 30, 30)
    assert box_of(f"{BAR}, round 12") == (0, 0, 0, 500, 12, 12)


def solid(clauses: str) -> Solid:
    found = placed(f"{HEAD}part a: {clauses}\n")
    assert found.setting.miscuts == ()
    return found.setting.solids["a"]


def test_round_bar_weighs_as_a_cylinder() -> None:
    """π · 15² · 500."""
    assert solid(BAR).volume == pytest.approx(353_429.17, abs=0.01)


def test_wood_taken_away_by_hand() -> None:
    whole = 500 * 100 * 20
    assert solid(f"{LYING}, dado 18 by 6 into top").volume == pytest.approx(whole - 18 * 6 * 100)
    assert solid(f"{LYING}, dado 18 by 6 into top, stopped 10 at front").volume == pytest.approx(
        whole - 18 * 6 * 90
    )
    assert solid(
        f"{LYING}, groove 6 by 8 into front, stopped 30 at left, stopped 50 at right"
    ).volume == pytest.approx(whole - 6 * 8 * 420)
    assert solid(f"{LYING}, mitre 45 at both ends, long at front").volume == pytest.approx(
        whole - 100 * 100 * 20
    )
    assert solid(f"{LYING}, rabbet 12 by 6 into top along left").volume == pytest.approx(whole - 12 * 6 * 100)


def test_notch_for_another_part_is_as_large_as_it_needs() -> None:
    found = in_box(
        "part a: board, across, on edge, 500 long, left at 0, front at 40, on floor, notch for b with 1 clear",
        "part b: board, deep, flat, 100 long, left at 200, front at 0, on floor, rip 60",
    )
    assert found.setting.overlaps == ()
    assert found.setting.miscuts == ()
    # 60 and 1 at each side wide, 20 and 1 tall, through 20 of thickness.
    assert found.setting.solids["a"].volume == pytest.approx(500 * 100 * 20 - 62 * 21 * 20)


FRAME = """\
plan "Frame" in {unit}
stock strip: actual {thick} x {wide} pine
outline box: {across} across, {deep} deep, {tall} tall, on floor
part rail for each of bottom, top: strip, across, on edge, as wide as box, left at 0, front at 0
    flush with each of box, mitre 45 at both ends, long at each
part stile for each of left, right: strip, upright, facing front, as tall as box, on floor, front at 0
    flush with each of box, mitre 45 at both ends, long at each
"""
INCHES = {"unit": "inches", "thick": "3/4", "wide": "2", "across": "20", "deep": "3", "tall": "16"}
METRIC = {"unit": "mm", "thick": "19.05", "wide": "50.8", "across": "508", "deep": "76.2", "tall": "406.4"}


@pytest.mark.parametrize("sizes", [INCHES, METRIC])
def test_picture_frame_closes_at_its_four_mitres(sizes: dict[str, str]) -> None:
    found = placed(FRAME.format(**sizes))
    assert found.setting.overlaps == ()
    assert found.troubles == []
    joints = [contact for contact in found.setting.contacts if contact.first != "floor"]
    assert [(joint.first, joint.second) for joint in joints] == [
        ("stile.left", "rail.bottom"),
        ("rail.bottom", "stile.right"),
        ("stile.left", "rail.top"),
        ("rail.top", "stile.right"),
    ]
    # 2 in of width cut at 45° is 2 · √2 long and 3/4 thick.
    assert [joint.area for joint in joints] == pytest.approx([2 * 2**0.5 * 0.75 * 25.4**2] * 4)
    assert found.cut("rail.top", 25.4) == 20


# ------------------------------------------------------------ like and mirrored


def shape_of(found: Placed, name: str) -> list[Any]:
    shape = found.plan.parts[name].shape
    return [] if shape is None else [plain(each) for each in shape.cuttings]


def test_likeness_takes_cuts_over_and_ones_own_replace_them_all() -> None:
    found = in_box(
        f"part a: {LYING}, dado 18 by 6 into top, 70 from left, edges rounded 2, plane 16",
        "part b: like a, on a",
        "part c: like a, on b, hole 8 through top",
        "part d: like a, on c, plane 12",
    )
    dado = ("BoxCut", "dado", reach("low", 70, 18), WHOLE, reach("high", 0, 6))
    assert shape_of(found, "b") == shape_of(found, "d") == [dado, ("Arrises", "rounded", 2)]
    assert shape_of(found, "c") == [("Hole", 2, "high", 8, None, (middle(0), middle(0)))]
    assert [found.box(name)[2::3] for name in "abcd"] == [(0, 16), (16, 32), (32, 48), (48, 60)]


def test_mirrored_part_has_its_cuts_on_the_other_side() -> None:
    found = in_box(
        "part a for each of left: board, across, flat, 200 long, front at 0, on floor, flush with each of box",
        "    mitre 30 at each end, long at front, dado 18 by 6 into top, 70 from each, corner front right rounded 9",
        "part b: like a.left, mirrored across about box",
        "part c: like b, mirrored deep about box",
        "part d: like a.left, mirrored across about box, hole 8 through top",
    )
    assert shape_of(found, "a.left") == [
        ("FaceCut", "mitre", 0, "low", 30, 1, "low"),
        ("BoxCut", "dado", reach("low", 70, 18), WHOLE, reach("high", 0, 6)),
        ("Corners", "rounded", 9, (("high", "low"),)),
    ]
    assert shape_of(found, "b") == [
        ("FaceCut", "mitre", 0, "high", 30, 1, "low"),
        ("BoxCut", "dado", reach("high", 70, 18), WHOLE, reach("high", 0, 6)),
        ("Corners", "rounded", 9, (("low", "low"),)),
    ]
    assert shape_of(found, "c") == [
        ("FaceCut", "mitre", 0, "high", 30, 1, "high"),
        ("BoxCut", "dado", reach("high", 70, 18), WHOLE, reach("high", 0, 6)),
        ("Corners", "rounded", 9, (("low", "high"),)),
    ]
    assert shape_of(found, "d") == [("Hole", 2, "high", 8, None, (middle(0), middle(0)))]
    assert found.box("b")[0::3] == (400, 600)


def test_rows_and_corners_have_the_shape_on_every_copy() -> None:
    found = in_box(
        "part slat: board, across, flat, on box, 500 long, left at 0, 2 copies side by side deep, gap 10",
        "    front at 0, corners rounded 9",
        "part leg: board, upright, facing side, as tall as box, in each corner of box, hole 8 through left",
    )
    assert shape_of(found, "slat.1") == shape_of(found, "slat.2") == [("Corners", "rounded", 9, ())]
    legs = [name for name in found.plan.parts if name.startswith("leg")]
    assert len(legs) == 4
    assert {tuple(shape_of(found, leg)) for leg in legs} == {
        (("Hole", 0, "low", 8, None, (middle(0), middle(0))),)
    }


def test_order_of_clauses_other_than_those_of_one_cut_never_matters() -> None:
    groups = (
        "mitre 45 at left end, long at front",
        "dado 18 by 6 into top, 70 from right, stopped 9 at back",
        "plane 16",
    )
    found = []
    for order in permutations((*groups, "500 long", PLACE)):
        plan = placed(f"{HEAD}part a: board, across, flat, {', '.join(order)}\n")
        found.append((sorted(shape_of(plan, "a")), plan.box("a"), plan.setting.solids["a"].volume))
    assert all(each == found[0] for each in found[1:])


# ------------------------------------------------------------ what is told

TOLD = [
    (
        LYING,
        "plane 30",
        "plane 30: “a” is planed to 30 mm, and its stock is only 20 mm thick. → "
        "Plane it to less, or choose a thicker stock.",
    ),
    (
        SHEET,
        "plane 10",
        "plane 10: “a” is cut from a sheet, which is not planed. → "
        "Leave this out, or cut the part from a board.",
    ),
    (
        SHEET,
        "round 10",
        "round 10: “a” is cut from a sheet, which makes no round bar. → "
        "Leave this out, or cut the part from a board.",
    ),
    (
        LYING,
        "round 25",
        "round 25: “a” is to be 25 mm round, and its stock is only 20 mm thick. → "
        "Make it thinner, or choose a thicker stock.",
    ),
    (
        LYING,
        "round 15, rip 30",
        "rip 30: “a” is a round bar, as wide and as thick as its diameter. → Leave this out.",
    ),
    (
        BAR,
        "rip 10",
        "rip 10: “a” is a round bar, as wide and as thick as its diameter. → Leave this out.",
    ),
    (
        BAR,
        "corners rounded 3",
        "corners rounded 3: “a” is a round bar, which has no corners and no edges. → Leave this out.",
    ),
    (
        LYING,
        "mitre 45 at left end",
        "mitre 45 at left end: This mitre of “a” does not say which side keeps its length. → "
        "Add long at front or long at back behind it.",
    ),
    (
        LYING,
        "mitre 45 at both ends, long at top",
        "top: This mitre slants front to back, so the top is not the side that keeps its length. "
        "→ "
        "Write long at front or long at back.",
    ),
    (
        LYING,
        "mitre 45 at front end, long at top",
        "front: “a” runs side to side, so its front is no end of it. → Its ends are its left and its right.",
    ),
    (
        LYING,
        "bevel 45 at left end, long at front",
        "front: This bevel slants up and down, so the front is not the side that keeps its "
        "length. → "
        "Write long at bottom or long at top.",
    ),
    (
        LYING,
        "bevel 45 at left end, long at top, long at bottom",
        "long at bottom: This says a second time which side of the bevel keeps its length. → "
        "Keep one of the two.",
    ),
    (
        LYING,
        "long at top",
        "long at top: This says which side keeps its length, but no mitre or bevel stands before "
        "it. → "
        "Put it behind one: mitre 45 at left end, long at top",
    ),
    (
        LYING,
        "mitre 90 at left end, long at front",
        "90: A mitre of 90 degrees can't be made: dryfit takes 0.1 to 80 degrees. → "
        "Look at the angle: it is counted from a square cut.",
    ),
    (
        LYING,
        "mitre 45 mm at left end, long at front",
        "45 mm: An angle is in degrees, and this has a unit of length. → Write it without a unit.",
    ),
    (
        LYING,
        "bevel 10 along top, long at front",
        "top: The top of “a” is a wide face, and a bevel along the part goes on an edge. → "
        "Name the front or back.",
    ),
    (
        LYING,
        "bevel 10 along left, long at top",
        "left: The left of “a” is an end, and a bevel along the part goes on an edge. → "
        "Name the front or back, or write: bevel 10 at left end",
    ),
    (
        LYING,
        "bevel 10 along front",
        "bevel 10 along front: This bevel of “a” does not say which side keeps its length. → "
        "Add long at bottom or long at top behind it.",
    ),
    (
        SHEET,
        "mitre 45 at both ends, long at front",
        "mitre 45 at both ends: “a” does not say which way its grain runs, so it is not clear "
        "which are its ends. → "
        "Name each end: mitre 45 at left end",
    ),
    (
        LYING,
        "taper to 10 at front end",
        "front: “a” runs side to side, so its front is no end of it. → Its ends are its left and its right.",
    ),
    (
        LYING,
        "taper to 10 at left end on right",
        "right: The right of “a” is an end, and a taper is cut on a side. → "
        "Name a side, or none for both edges alike: taper to 1 at left end on front",
    ),
    (
        LYING,
        "taper to 0 at left end",
        "0: The size at the end of the taper comes to 0 mm, and it must be more than 0. → "
        "Look at the number, or at the measures that it is worked out from.",
    ),
    (
        LYING,
        "notch 20 across by 30 across at left",
        "30 across: This notch gives two sizes side to side. → Keep one of the two.",
    ),
    (
        LYING,
        "notch 20 across at left front",
        "front: This notch is at the front, but it does not say how far it reaches front to back."
        " → "
        "Add its size that way, such as: by 2 deep",
    ),
    (
        LYING,
        "notch 20 across at left right",
        "right: This says a second time where the notch is side to side. → Keep one of the two.",
    ),
    (
        LYING,
        "notch 20 across at left, 10 from left",
        "10 from left: This says a second time where the notch is side to side. → Keep one of the two.",
    ),
    (
        LYING,
        "notch 20 across at left, 10 from top",
        "10 from top: This notch goes right across the part up and down, so it has no place from "
        "the top. → "
        "Give the notch a size that way, such as: by 2 tall, or leave this out.",
    ),
    (
        LYING,
        "notch 20 across by 30 deep at front, 10 from left, 20 from right",
        "20 from right: This says a second time where the notch is side to side. → Keep one of the two.",
    ),
    (
        LYING,
        "notch for a",
        "a: “a” can't have a notch for itself. → Name the part that goes into it.",
    ),
    (
        LYING,
        "notch for box",
        "box: “box” is not a part, so a notch can't be made for it. → Name a part.",
    ),
    (
        LYING,
        "notch for floor",
        "floor: “floor” is not a part, so a notch can't be made for it. → Name a part.",
    ),
    (
        LYING,
        "notch for other with (0 - 3) clear",
        "notch for other with (0 - 3) clear: The notch is to be less than no wider than the part."
        " → "
        "Write 0 or more.",
    ),
    (
        LYING,
        "notch for other, 3 from left",
        "3 from left: A notch for another part is where that part goes, so it has no place of its"
        " own. → "
        "Leave this out, or give the notch its own sizes: notch 2 deep by 4 tall at front",
    ),
    (
        LYING,
        "dado 20 by 5 into left",
        "left: The left of “a” is an end, and a dado goes into a face or an edge along the part. "
        "→ "
        "Name another face, such as the bottom or top.",
    ),
    (
        LYING,
        "dado 20 by 5 into top, 10 from front",
        "10 from front: This dado goes right across the part front to back, so it has no place "
        "from the front. → "
        "Count its place from the left or right, or leave this out.",
    ),
    (
        LYING,
        "dado 20 by 5 into top, 10 from top",
        "10 from top: The dado itself says already where it is up and down. → "
        "Count its place from the left or right, or leave this out.",
    ),
    (
        LYING,
        "dado 20 by 5 into top, 10 from left, stopped 3 at left",
        "left: This dado runs front to back, so it can't stop at the left. → Name the front or back.",
    ),
    (
        LYING,
        "dado 20 by 5 into top, stopped 3 at front, stopped 4 at front",
        "stopped 4 at front: This says a second time where the dado stops. → Keep one of the two.",
    ),
    (
        LYING,
        "stopped 3 at front",
        "stopped 3 at front: This says where a cut stops, but no dado, groove or rabbet stands "
        "before it. → "
        "Put it behind one: dado 3/4 by 1/4 into right, 12 from bottom, stopped 1 at front",
    ),
    (
        LYING,
        "rabbet 20 by 5 into top along bottom",
        "bottom: A rabbet goes into one face along another that meets it, and these two do not "
        "meet. → "
        "Name a face that meets the first: rabbet 1/2 by 1/4 into top along left",
    ),
    (
        LYING,
        "rabbet 20 by 5 into top along left, 3 from left",
        "3 from left: The rabbet itself says already where it is side to side. → Leave this out.",
    ),
    (
        LYING,
        "rabbet 20 by 5 into top along left, 3 from front",
        "3 from front: This rabbet goes right across the part front to back, so it has no place "
        "from the front. → "
        "Leave this out.",
    ),
    (
        SHEET,
        "dado 20 by 5 into top",
        "dado 20 by 5 into top: “a” does not say which way its grain runs, so it is not clear "
        "which way this dado runs. → "
        "Say where it is, such as: 4 from left",
    ),
    (
        SHEET,
        "groove 20 by 5 into top, stopped 3 at top",
        "groove 20 by 5 into top: “a” does not say which way its grain runs, so it is not clear "
        "which way this groove runs. → "
        "Say where it is, such as: 4 from left",
    ),
    (
        LYING,
        "hole 5 through top, 3 from top",
        "3 from top: The hole itself says already where it is up and down. → "
        "Count its place from the left, right, front or back, or leave this out.",
    ),
    (
        LYING,
        "2 from left",
        "2 from left: This says where a cut is, but no notch, dado, groove, rabbet or hole stands"
        " before it. → "
        "Put it behind one: hole 3/8 through front, 2 from left",
    ),
    (
        LYING,
        "hole 5 through top, 3 from left, 5 from right",
        "5 from right: This says a second time where the hole is side to side. → Keep one of the two.",
    ),
    (
        LYING,
        "hole 5 through top, (0 - 3) from left",
        "0 - 3: This comes to -3 mm, which is outside the part. → "
        "Count from the other side, or look at the number.",
    ),
    (
        LYING,
        "hole 5 through each",
        "each: each is no face: the faces are left, right, front, back, bottom and top. → "
        "Name one of the six, or let the copies be called by faces: for each of left, right",
    ),
    (
        LYING,
        "corner top left rounded 3",
        "corner top left rounded 3: A corner of “a” is where two sides of its wide face meet, and"
        " these two do not meet there. → "
        "Name the left or right and the front or back.",
    ),
    (
        LYING,
        "corner left right rounded 3",
        "corner left right rounded 3: A corner of “a” is where two sides of its wide face meet, "
        "and these two do not meet there. → "
        "Name the left or right and the front or back.",
    ),
    (
        LYING,
        "corners rounded 0",
        "0: The size of the corner comes to 0 mm, and it must be more than 0. → "
        "Look at the number, or at the measures that it is worked out from.",
    ),
    (
        LYING,
        "notch 0 across at left",
        "0: The size of the notch comes to 0 mm, and it must be more than 0. → "
        "Look at the number, or at the measures that it is worked out from.",
    ),
    (
        LYING,
        "hole 8 by 0 into top",
        "0: The depth of the hole comes to 0 mm, and it must be more than 0. → "
        "Look at the number, or at the measures that it is worked out from.",
    ),
    (
        LYING,
        "hole 8 through top, dado 18 by 6 into left, 3 from front",
        "left: The left of “a” is an end, and a dado goes into a face or an edge along the part. "
        "→ "
        "Name another face, such as the bottom or top.",
    ),
    (
        LYING,
        "corners rounded 3, 3 from left",
        "3 from left: This says where a cut is, but no notch, dado, groove, rabbet or hole stands"
        " before it. → "
        "Put it behind one: hole 3/8 through front, 2 from left",
    ),
    (
        LYING,
        "edges chamfered 2, round 12",
        "edges chamfered 2: “a” is a round bar, which has no corners and no edges. → Leave this out.",
    ),
    (
        SHEET,
        "groove 6 by 3 into top",
        "groove 6 by 3 into top: “a” does not say which way its grain runs, so it is not clear "
        "which way this groove runs. → "
        "Say where it is, such as: 4 from left",
    ),
]


@pytest.mark.parametrize(("part", "clauses", "sentence"), TOLD)
def test_what_makes_no_sense_is_told_once(part: str, clauses: str, sentence: str) -> None:
    assert told(f"{HEAD}part a: {part}, {clauses}\n") == [sentence]


def test_unknown_part_of_a_notch_is_an_unknown_name() -> None:
    text = f"{HEAD}part a: {LYING}, notch for othr\n"
    found = understood(text).plan
    assert found is not None
    assert [(unknown.name, unknown.near) for unknown in found.unknown] == [("othr", ("other",))]


def test_each_copy_tells_a_slip_only_once() -> None:
    text = f"{HEAD}part a for each of left, right: {LYING}, mitre 45 at left end\n"
    assert len(told(text)) == 1


def test_nothing_is_said_of_a_cut_beside_a_clause_that_could_not_be_read() -> None:
    """The mitre could not be read; that nothing stands before its long point is not told as well."""
    sentences = told(f"{HEAD}part a: {LYING}, mitre 45 at lft end, long at front\n")
    assert len(sentences) == 1
    assert "lft" in sentences[0]


def test_outline_takes_no_cuts() -> None:
    (sentence,) = told(f"{HEAD}outline b: 30 across, 30 deep, 30 tall, on floor, hole 8 through top\n")
    assert sentence.startswith("hole")
