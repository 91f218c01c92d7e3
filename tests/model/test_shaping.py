"""Each shaping clause to its record, by hand, in millimetres, and the wood that it takes away."""

from __future__ import annotations

import subprocess
import sys
from itertools import permutations
from pathlib import Path
from typing import Any

import pytest

from reviewer.model.shapes import Cutting
from reviewer.setting_out.solid import Solid
from tests.model.placed import Placed, in_box, placed
from tests.model.shaped import BAR, HEAD, LYING, PLACE, RISING, SHEET, UPRIGHT, plain


def cuttings(clauses: str, part: str = LYING) -> tuple[Cutting, ...]:
    """What the clauses cut away from a part of :data:`HEAD`."""
    shape = placed(f"{HEAD}part a: {part}, {clauses}\n").plan.parts["a"].shape
    return () if shape is None else shape.cuttings


HERE = Path(__file__).parents[2]
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


def test_plan_without_a_shaped_part_pays_nothing_for_shapes() -> None:
    """In a fresh interpreter: none of their modules is loaded."""
    script = (
        "import sys; from tests.model.placed import in_box;"
        "in_box('part a: board, across, flat, 500 long, left at 0, front at 0, on floor');"
        "print(sorted(name for name in sys.modules if name.startswith(('reviewer.model.sh', 'reviewer.model.sl',"
        " 'reviewer.model.lea', 'reviewer.geometry'))))"
    )
    done = subprocess.run(
        [sys.executable, "-c", script], capture_output=True, text=True, check=True, cwd=HERE
    )
    assert done.stdout == "['reviewer.model.shapes']\n"


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
