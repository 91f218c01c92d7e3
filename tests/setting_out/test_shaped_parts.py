"""Solids of shaped parts: sums by hand, formulas for round bodies, and scipy's half-spaces for the rest.

Formulas for cylinder, frustum and circle segment: any table of mensuration, from memory.
"""

from __future__ import annotations

import math
import random

import pytest

from reviewer.geometry.slanting import level_section, rise, section_of_level
from reviewer.model.plan import Axis
from reviewer.model.shapes import (
    Arrises,
    BoxCut,
    Corners,
    EndToSuit,
    FaceCut,
    FittedNotch,
    Hole,
    Lean,
    Reach,
    Rising,
    Rounded,
    Taper,
)
from reviewer.setting_out.contacts import ground_contacts, meetings
from reviewer.setting_out.result import Contact, Overlap
from reviewer.setting_out.setting import gaps
from reviewer.setting_out.solid import Solid, square_solid
from tests.geometry import reference
from tests.setting_out.shaped_by_hand import (
    ACROSS_FLAT,
    ACROSS_ON_EDGE,
    DEEP_FLAT,
    SPAN,
    UPRIGHT,
    WHOLE,
    made,
    miscuts,
    mitre,
    notch,
    one_made,
    placed,
)

# ------------------------------------------------------------ sums by hand


def frame_rails(length: float, depth: float, width: float, thick: float) -> dict[str, Solid]:
    return made(
        placed("front", (0, 0, 0), (length, width, thick), ACROSS_FLAT,
               [mitre(0, "low", 1, "low"), mitre(0, "high", 1, "low")]),
        placed("back", (0, depth - width, 0), (length, depth, thick), ACROSS_FLAT,
               [mitre(0, "low", 1, "high"), mitre(0, "high", 1, "high")]),
        placed("left", (0, 0, 0), (width, depth, thick), DEEP_FLAT,
               [mitre(1, "low", 0, "low"), mitre(1, "high", 0, "low")]),
        placed("right", (length - width, 0, 0), (length, depth, thick), DEEP_FLAT,
               [mitre(1, "low", 0, "high"), mitre(1, "high", 0, "high")]),
    )  # fmt: skip


def test_frame_of_four_mitred_rails() -> None:
    """600 by 400 outside, rails 60 by 20: each mitre is 60 √2 by 20, each rail a trapezium."""
    rails = frame_rails(600, 400, 60, 20)
    found = meetings(list(rails.values()))
    assert found.overlaps == ()
    assert len(found.contacts) == 4
    for contact in found.contacts:
        assert contact.area == pytest.approx(60 * math.sqrt(2) * 20)
        assert (contact.first_surface, contact.second_surface) == ("end", "end")
        assert sorted(abs(part) for part in contact.normal) == pytest.approx(
            [0, math.sqrt(0.5), math.sqrt(0.5)]
        )
        assert [b - a for a, b in zip(contact.low, contact.high, strict=True)] == pytest.approx([60, 60, 20])
    assert {frozenset((c.first, c.second)) for c in found.contacts} == {
        frozenset(pair)
        for pair in (("front", "left"), ("front", "right"), ("back", "left"), ("back", "right"))
    }
    assert rails["front"].volume == pytest.approx((600 + 480) / 2 * 60 * 20)
    assert rails["left"].volume == pytest.approx((400 + 280) / 2 * 60 * 20)
    assert rails["front"].size == pytest.approx((600, 60, 20))  # to the long point
    # Centroid of a trapezium from its long side: h/3 (a + 2 b) / (a + b).
    assert rails["front"].centre == pytest.approx((300, 60 / 3 * (600 + 2 * 480) / (600 + 480), 10))
    areas = rails["front"].surface_area()
    assert areas["end"] == pytest.approx(2 * 60 * math.sqrt(2) * 20)
    assert areas["face"] == pytest.approx(2 * 540 * 60)
    assert areas["edge"] == pytest.approx((600 + 480) * 20)


def half_laps() -> dict[str, Solid]:
    """Two boards 400 by 60 by 20 that cross in the middle, half of each cut away."""
    return made(
        placed("lower", (0, 170, 0), (400, 230, 20), ACROSS_FLAT,
               [notch(Reach("middle", 0, 60), WHOLE, Reach("high", 0, 10))]),
        placed("upper", (170, 0, 0), (230, 400, 20), DEEP_FLAT,
               [notch(WHOLE, Reach("middle", 0, 60), Reach("low", 0, 10))]),
    )  # fmt: skip


def test_half_lap_makes_room_and_meets_on_five_faces() -> None:
    """60 by 60 in the middle, and four shoulders 60 by 10."""
    laps = half_laps()
    found = meetings(list(laps.values()))
    assert found.overlaps == ()
    areas = sorted(round(contact.area, 6) for contact in found.contacts)
    assert areas == [600, 600, 600, 600, 3600]
    (flat,) = [contact for contact in found.contacts if contact.area > 1000]
    assert (flat.first, flat.second, flat.axis) == ("lower", "upper", 2)
    assert (*flat.low, *flat.high) == pytest.approx((170, 170, 10, 230, 230, 10))
    assert (flat.first_surface, flat.second_surface) == ("face", "face")
    assert flat.normal == (0, 0, 1)
    assert laps["lower"].volume == pytest.approx(400 * 60 * 20 - 60 * 60 * 10)
    # Two faces less the notch, the floor of the notch, both edges less it, and two shoulders.
    assert laps["lower"].surface_area() == pytest.approx(
        {"end": 2 * 60 * 20 + 2 * 60 * 10, "edge": 2 * 400 * 20 - 2 * 60 * 10, "face": 2 * 400 * 60}
    )


def test_a_half_lap_too_shallow_still_overlaps() -> None:
    parts = (
        placed("lower", (0, 170, 0), (400, 230, 20), ACROSS_FLAT,
               [notch(Reach("middle", 0, 60), WHOLE, Reach("high", 0, 8))]),
        placed("upper", (170, 0, 0), (230, 400, 20), DEEP_FLAT,
               [notch(WHOLE, Reach("middle", 0, 60), Reach("low", 0, 10))]),
    )  # fmt: skip
    found = meetings(list(made(*parts).values()))
    assert found.contacts == ()
    (overlap,) = found.overlaps
    assert overlap.volume == pytest.approx(60 * 60 * 2)
    assert overlap.depths == pytest.approx((60, 60, 2))


def splayed_leg(degrees: float = 8.0) -> Solid:
    run = math.tan(math.radians(degrees))
    level = 45 / math.cos(math.radians(degrees))
    return one_made(
        placed("leg", (0, 0, 0), (level + 400 * run, 45, 400), UPRIGHT, slant=Lean(run, 0.0, SPAN))
    )


def test_splayed_leg() -> None:
    """45 by 45, leaning 8° to the right, 400 tall between level ends. By hand."""
    leg = splayed_leg()
    turn = math.radians(8)
    assert leg.volume == pytest.approx(45 * 45 * 400 / math.cos(turn))
    assert leg.centre == pytest.approx(((45 / math.cos(turn) + 400 * math.tan(turn)) / 2, 22.5, 200))
    # Long point: the middle line, and half a width times tan 8° at each end.
    assert leg.size == pytest.approx((400 / math.cos(turn) + 45 * math.tan(turn), 45, 45))
    assert not leg.square
    (foot,) = ground_contacts(leg, "floor", 2, 0.0)
    assert (foot.first, foot.second, foot.second_surface) == ("floor", "leg", "end")
    assert foot.low == pytest.approx((0, 0, 0), abs=1e-9)
    assert foot.high == pytest.approx((45 / math.cos(turn), 45, 0), abs=1e-9)
    assert foot.area == pytest.approx(45 * 45 / math.cos(turn))
    assert foot.normal == (0, 0, 1)
    # A seat on top meets the level end, 400 tan 8° further on.
    seat = square_solid("seat", (-50, -50, 400), (300, 300, 420), Axis.ACROSS, Axis.DEEP, Axis.UP)
    (top,) = meetings([leg, seat]).contacts
    assert (top.first, top.second, top.axis) == ("leg", "seat", 2)
    assert top.low == pytest.approx((400 * math.tan(turn), 0, 400))
    assert top.area == pytest.approx(45 * 45 / math.cos(turn))


def test_knee_brace_between_post_and_beam() -> None:
    """45 by 95 on edge between a plumb and a level cut, 300 each way: it meets both over 95 √2 by 45."""
    brace = one_made(
        placed("brace", (100, 0, 700), (400, 45, 1000), ACROSS_ON_EDGE,
               slant=Rising(0, 2, "high", "plumb", "level", SPAN), width=95)
    )  # fmt: skip
    assert (*brace.low, *brace.high) == pytest.approx((100, 0, 700, 400, 45, 1000))
    assert brace.directions[0] == pytest.approx((math.sqrt(0.5), 0, math.sqrt(0.5)))
    middle = (300 - 95 * math.sqrt(0.5)) * math.sqrt(2)  # of the middle line
    assert brace.volume == pytest.approx(middle * 95 * 45)
    assert brace.size == pytest.approx((middle + 95, 95, 45))
    post = square_solid("post", (5, 0, 0), (100, 45, 1000), Axis.UP, Axis.ACROSS, Axis.DEEP)
    beam = square_solid("beam", (5, 0, 1000), (900, 45, 1095), Axis.ACROSS, Axis.UP, Axis.DEEP)
    found = [contact for contact in meetings([post, beam, brace]).contacts if "brace" in contact[:2]]
    assert [(c.first, c.second, c.axis) for c in found] == [("post", "brace", 0), ("brace", "beam", 2)]
    for contact in found:
        assert contact.area == pytest.approx(95 * math.sqrt(2) * 45)
        assert contact.surface_of("brace") == "end"


def test_stretcher_cut_to_suit_two_splayed_legs() -> None:
    """Between legs that lean 8° each way: its ends are cut to their faces and meet over the whole end."""
    run, level = math.tan(math.radians(8)), 45 / math.cos(math.radians(8))
    wide = level + 400 * run
    legs = made(
        placed("left", (0, 0, 0), (wide, 45, 400), UPRIGHT, slant=Lean(run, 0.0, SPAN)),
        placed("right", (600, 0, 0), (600 + wide, 45, 400), UPRIGHT, slant=Lean(-run, 0.0, SPAN)),
        # Set out between the bounds of the legs: each end has to be made longer, its top less than its bottom.
        placed("rail", (wide, 10, 100), (600, 35, 160), ACROSS_ON_EDGE,
               [EndToSuit(0, "low", "left", SPAN), EndToSuit(0, "high", "right", SPAN)]),
    )  # fmt: skip
    rail = legs["rail"]

    # The left leg's inner face stands at level + z tan 8°, the right one's at 600 + (400 - z) tan 8°.
    def at(z: float) -> float:
        return 600 + (400 - z) * run - (level + z * run)

    assert rail.volume == pytest.approx((at(100) + at(160)) / 2 * 60 * 25)
    assert rail.size == pytest.approx((at(100), 60, 25))
    assert rail.low == pytest.approx((level + 100 * run, 10, 100))
    found = [contact for contact in meetings(list(legs.values())).contacts if "rail" in contact[:2]]
    assert len(found) == 2
    for contact in found:
        assert contact.area == pytest.approx(60 / math.cos(math.radians(8)) * 25)
        assert contact.surface_of("rail") == "end"
    assert meetings(list(legs.values())).overlaps == ()


def test_rail_in_a_fitted_notch_of_a_splayed_leg() -> None:
    run, level = math.tan(math.radians(8)), 45 / math.cos(math.radians(8))
    rail = square_solid("rail", (-100, 30, 200), (400, 55, 260), Axis.ACROSS, Axis.UP, Axis.DEEP)
    leg = one_made(
        placed("leg", (0, 0, 0), (level + 400 * run, 45, 400), UPRIGHT,
               [FittedNotch("rail", 0.0, SPAN)], Lean(run, 0.0, SPAN)),
        square=[rail],
    )  # fmt: skip
    assert leg.volume == pytest.approx(45 * level * 400 - level * 60 * 15)
    found = meetings([rail, leg])
    assert found.overlaps == ()
    assert sorted((c.axis, round(c.area, 3)) for c in found.contacts) == [
        (1, round(level * 60, 3)),
        (2, round(level * 15, 3)),
        (2, round(level * 15, 3)),
    ]


def test_a_fitted_notch_with_clearance_touches_nowhere() -> None:
    rail = square_solid("rail", (-100, 30, 200), (400, 60, 260), Axis.ACROSS, Axis.UP, Axis.DEEP)
    post = one_made(
        placed("post", (0, 0, 0), (60, 45, 400), UPRIGHT, [FittedNotch("rail", 1.5, SPAN)]), square=[rail]
    )
    assert post.volume == pytest.approx(60 * 45 * 400 - 60 * (15 + 1.5) * 63)
    assert meetings([rail, post])[:2] == ((), ())


def test_parts_notched_for_each_other_in_a_circle_take_each_other_uncut() -> None:
    parts = made(
        placed("a", (0, 170, 0), (400, 230, 20), ACROSS_FLAT, [FittedNotch("b", 0.0, SPAN)]),
        placed("b", (170, 0, 10), (230, 400, 30), DEEP_FLAT, [FittedNotch("a", 0.0, SPAN)]),
        # Fitted to one of the circle, and so made after it.
        placed("c", (0, 0, 20), (400, 60, 40), ACROSS_FLAT, [FittedNotch("b", 0.0, SPAN)]),
    )
    assert parts["a"].volume == pytest.approx(400 * 60 * 20 - 60 * 60 * 10)
    assert parts["b"].volume == pytest.approx(400 * 60 * 20 - 60 * 60 * 10)
    assert parts["c"].volume == pytest.approx(400 * 60 * 20 - 60 * 60 * 10)
    assert list(parts) == ["a", "b", "c"]


# ------------------------------------------------------------ tapers and round things, by formula


def test_leg_tapered_on_two_faces() -> None:
    """75 square, 700 tall, below 100 from the top both inner faces fall back to 40 at the foot."""
    leg = one_made(
        placed("leg", (0, 0, 0), (75, 75, 700), UPRIGHT,
               [Taper(2, "low", 0, "high", 40, 600, SPAN), Taper(2, "low", 1, "high", 40, 600, SPAN)])
    )  # fmt: skip
    # A square frustum: h/3 (a² + ab + b²).
    assert leg.volume == pytest.approx(75 * 75 * 100 + 600 / 3 * (75**2 + 75 * 40 + 40**2))
    (foot,) = ground_contacts(leg, "floor", 2, 0.0)
    assert (foot.low, foot.high, foot.area) == ((0, 0, 0), pytest.approx((40, 40, 0)), pytest.approx(1600))
    assert leg.size == (700, 75, 75)


def test_taper_of_both_faces_over_the_whole_length() -> None:
    leg = one_made(
        placed("leg", (0, 0, 0), (80, 20, 500), UPRIGHT, [Taper(2, "low", 0, "both", 40, None, SPAN)])
    )
    assert leg.volume == pytest.approx((80 + 40) / 2 * 500 * 20)
    slope = math.hypot(500, 20)
    assert leg.surface_area() == pytest.approx(
        {"end": (80 + 40) * 20, "edge": 2 * slope * 20, "face": 2 * 60 * 500}
    )


@pytest.mark.parametrize("diameter", [8.0, 30.0, 120.0])
def test_round_bar(diameter: float) -> None:
    bar = one_made(placed("bar", (0, 0, 0), (500, 120, 120), ACROSS_FLAT, [Rounded(diameter, SPAN)]))
    radius = diameter / 2
    assert bar.volume == pytest.approx(math.pi * radius**2 * 500)
    assert bar.centre == pytest.approx((250, 60, 60))
    areas = bar.surface_area()
    assert areas["end"] == pytest.approx(2 * math.pi * radius**2)
    assert areas["edge"] + areas["face"] == pytest.approx(math.pi * diameter * 500)
    assert (*bar.low, *bar.high) == pytest.approx(
        (0, 60 - radius, 60 - radius, 500, 60 + radius, 60 + radius)
    )
    assert bar.size == (500, 120, 120)  # what it is turned from


def test_round_bar_with_a_mitred_end_and_a_taper() -> None:
    """A cylinder cut slanting is as long as its axis; a frustum is πh/3 (R² + Rr + r²)."""
    cut = one_made(
        placed("bar", (0, 0, 0), (500, 40, 40), ACROSS_FLAT, [Rounded(40, SPAN), mitre(0, "low", 1, "low")])
    )
    assert cut.volume == pytest.approx(math.pi * 400 * (500 - 20))
    assert cut.surface_area()["end"] == pytest.approx(math.pi * 400 * (1 + math.sqrt(2)), rel=1e-3)
    leg = one_made(
        placed(
            "leg",
            (0, 0, 0),
            (40, 40, 400),
            UPRIGHT,
            [Rounded(40, SPAN), Taper(2, "low", 0, "both", 20, 300, SPAN)],
        )
    )
    assert leg.volume == pytest.approx(math.pi * 400 * 100 + math.pi * 300 / 3 * (400 + 200 + 100))
    areas = leg.surface_area()
    assert areas["end"] == pytest.approx(math.pi * (400 + 100))
    assert areas["edge"] + areas["face"] == pytest.approx(
        math.pi * 40 * 100 + math.pi * 30 * math.hypot(300, 10)
    )


def test_round_top_and_rounded_corners() -> None:
    """A square with corners of half its side is a circle; with radius r each corner loses r² (1 - π/4)."""
    top = one_made(placed("top", (0, 0, 0), (600, 600, 20), ACROSS_FLAT, [Corners("rounded", 300, (), SPAN)]))
    assert top.volume == pytest.approx(math.pi * 300**2 * 20)
    areas = top.surface_area()
    assert areas["face"] == pytest.approx(2 * math.pi * 300**2)
    assert areas["edge"] + areas["end"] == pytest.approx(2 * math.pi * 300 * 20)
    shelf = one_made(
        placed(
            "shelf",
            (0, 0, 0),
            (600, 300, 20),
            ACROSS_FLAT,
            [Corners("rounded", 50, (("low", "low"), ("high", "low")), SPAN)],
        )
    )
    assert shelf.volume == pytest.approx((600 * 300 - 2 * 2500 * (1 - math.pi / 4)) * 20)
    cut = one_made(
        placed("cut", (0, 0, 0), (600, 300, 20), ACROSS_FLAT, [Corners("chamfered", 50, (), SPAN)])
    )
    assert cut.volume == pytest.approx((600 * 300 - 4 * 1250) * 20)


def test_centre_of_a_top_with_a_half_round_end() -> None:
    """A rectangle 400 by 400 and a half circle of radius 200, whose centre lies 4 r / 3 π beyond it."""
    corners = Corners("rounded", 200, (("high", "low"), ("high", "high")), SPAN)
    top = one_made(placed("top", (0, 0, 0), (600, 400, 20), ACROSS_FLAT, [corners]))
    round_area = math.pi * 200**2 / 2
    moment = 400 * 400 * 200 + round_area * (400 + 4 * 200 / (3 * math.pi))
    assert top.centre[0] == pytest.approx(moment / (400 * 400 + round_area), abs=1e-3)
    assert top.centre[1:] == pytest.approx((200, 10))


@pytest.mark.parametrize("kind", ["rounded", "chamfered"])
def test_eased_arrises(kind: str) -> None:
    """Four long edges lose r² (1 - π/4) or r²/2 each."""
    board = one_made(placed("b", (0, 0, 0), (500, 100, 20), ACROSS_FLAT, [Arrises(kind, 5, SPAN)]))  # type: ignore[arg-type]
    lost = 25 * (1 - math.pi / 4) if kind == "rounded" else 12.5
    assert board.volume == pytest.approx((2000 - 4 * lost) * 500)
    areas = board.surface_area()
    assert areas["end"] == pytest.approx(2 * (2000 - 4 * lost))
    girth = 2 * (90 + 10) + (2 * math.pi * 5 if kind == "rounded" else 4 * 5 * math.sqrt(2))
    assert areas["edge"] + areas["face"] == pytest.approx(girth * 500)
    # The flat of the face that is left is what another part meets.
    post = square_solid("post", (0, 0, 20), (50, 100, 300), Axis.UP, Axis.DEEP, Axis.ACROSS)
    (contact,) = meetings([board, post]).contacts
    assert contact.area == pytest.approx(50 * 90)


def test_arrises_of_a_tapered_leg_follow_the_taper() -> None:
    cuts = [Taper(2, "low", 0, "both", 40, None, SPAN), Arrises("chamfered", 4, SPAN)]
    leg = one_made(placed("leg", (0, 0, 0), (80, 20, 500), UPRIGHT, cuts))
    slope = math.hypot(500, 20)
    # Each edge runs along the slope; its chamfer is 8 mm² square to the edge.
    assert leg.volume == pytest.approx(60 * 500 * 20 - 4 * 8 * slope, rel=1e-4)


def test_holes() -> None:
    """Through the thickness, from an edge 30 deep, and right through a leg that is notched in the middle."""
    through = one_made(
        placed("b", (0, 0, 0), (500, 100, 20), ACROSS_FLAT,
               [Hole(2, "high", 30, None, (Reach("low", 100), Reach("middle", 0)), SPAN)])
    )  # fmt: skip
    circle = math.pi * 15**2
    assert through.volume == pytest.approx(500 * 100 * 20 - circle * 20)
    areas = through.surface_area()
    assert areas["face"] == pytest.approx(2 * 500 * 100 - 2 * circle)
    assert sum(areas.values()) == pytest.approx(2 * (50000 + 10000 + 2000) - 2 * circle + math.pi * 30 * 20)
    moment = 500 * 100 * 20 * 250 - circle * 20 * 100
    assert through.centre[0] == pytest.approx(moment / through.volume)
    blind = one_made(
        placed("b", (0, 0, 0), (500, 100, 20), ACROSS_FLAT,
               [Hole(1, "low", 10, 30, (Reach("middle", 50), Reach("middle", 0)), SPAN)])
    )  # fmt: skip
    assert blind.volume == pytest.approx(500 * 100 * 20 - math.pi * 25 * 30)
    assert blind.surface_area()["edge"] == pytest.approx(2 * 500 * 20)
    notched = one_made(
        placed("p", (0, 0, 0), (60, 60, 400), UPRIGHT,
               [notch(WHOLE, Reach("middle", 0, 20), Reach("high", 0, 100)),
                Hole(1, "low", 10, None, (Reach("middle", 0), Reach("high", 50)), SPAN)])
    )  # fmt: skip
    assert notched.volume == pytest.approx(60 * 60 * 400 - 60 * 20 * 100 - math.pi * 25 * 40)


def test_a_hole_makes_room_for_a_round_bar() -> None:
    post = one_made(
        placed("post", (0, 0, 0), (60, 60, 400), UPRIGHT,
               [Hole(0, "low", 25, None, (Reach("middle", 0), Reach("low", 200)), SPAN)])
    )  # fmt: skip
    bar = one_made(placed("bar", (-100, 15, 185), (300, 45, 215), ACROSS_FLAT, [Rounded(25, SPAN)]))
    found = meetings([post, bar])
    assert found.overlaps == ()
    (contact,) = found.contacts  # all round the wall; it rests in the post
    assert (contact.first, contact.second, contact.axis, contact.normal) == ("post", "bar", 2, (0, 0, 1))
    assert contact.area == pytest.approx(math.pi * 25 * 60)
    assert (*contact.low, *contact.high) == pytest.approx((0, 17.5, 187.5, 60, 42.5, 212.5))
    thicker = one_made(placed("bar", (-100, 15, 185), (300, 45, 215), ACROSS_FLAT, [Rounded(30, SPAN)]))
    (overlap,) = meetings([post, thicker]).overlaps
    assert overlap.volume == pytest.approx(math.pi * (15**2 - 12.5**2) * 60, rel=0.02)


def test_a_round_leg_in_a_blind_hole_carries_the_seat() -> None:
    hole = Hole(2, "low", 30, 25, (Reach("low", 50), Reach("low", 50)), SPAN)
    seat = one_made(placed("seat", (0, 0, 400), (300, 300, 440), ACROSS_FLAT, [hole]))
    leg = one_made(placed("leg", (35, 35, 0), (65, 65, 425), UPRIGHT, [Rounded(30, SPAN)]))
    found = meetings([seat, leg])
    assert found.overlaps == ()
    floor, wall = found.contacts
    assert (floor.first, floor.second, floor.axis, floor.first_surface) == ("leg", "seat", 2, "end")
    assert floor.area == pytest.approx(math.pi * 15**2, rel=0.005)
    assert (wall.axis, wall.area) == (1, pytest.approx(math.pi * 30 * 25))
    thin = one_made(placed("leg", (35, 35, 0), (65, 65, 420), UPRIGHT, [Rounded(28, SPAN)]))
    assert meetings([seat, thin])[:2] == ((), ())


def test_a_bevelled_edge_and_a_compound_mitre() -> None:
    bevel = FaceCut("bevel", 1, "low", 30, 2, "low", SPAN)
    shelf = one_made(placed("shelf", (0, 0, 0), (500, 100, 20), ACROSS_FLAT, [bevel]))
    assert shelf.volume == pytest.approx(500 * (100 * 20 - 20 * 20 * math.tan(math.radians(30)) / 2))
    assert shelf.surface_area()["edge"] == pytest.approx(500 * 20 * (1 + 1 / math.cos(math.radians(30))))
    # One saw cut: behind a plane that falls back across the width and through the thickness at once.
    both = [mitre(0, "high", 1, "low", 30), FaceCut("bevel", 0, "high", 10, 2, "high", SPAN)]
    rail = one_made(placed("rail", (0, 0, 0), (500, 100, 20), ACROSS_FLAT, both))
    mean = 500 - 50 * math.tan(math.radians(30)) - 10 * math.tan(math.radians(10))
    assert rail.volume == pytest.approx(mean * 100 * 20)
    assert len(rail.body.pieces[0].faces) == 6  # type: ignore[union-attr]


# ------------------------------------------------------------ random parts against half-spaces


def square_rows(low: list[float], high: list[float]) -> list[tuple[tuple[float, float, float], float]]:
    rows = []
    for axis in range(3):
        for sign, place in ((-1.0, low[axis]), (1.0, high[axis])):
            normal = [0.0, 0.0, 0.0]
            normal[axis] = sign
            rows.append((tuple(normal), sign * place))
    return rows  # type: ignore[return-value]


def compare(solid: Solid, planes: list[tuple[tuple[float, float, float], float]]) -> None:
    mesh = reference.body_of(reference.rows_of(planes))
    assert mesh is not None
    assert solid.volume == pytest.approx(mesh.volume, rel=1e-6)
    assert solid.centre == pytest.approx(tuple(mesh.center_mass), abs=1e-4)
    assert sum(solid.surface_area().values()) == pytest.approx(mesh.area, rel=1e-6)
    assert (*solid.low, *solid.high) == pytest.approx(mesh.bounds.reshape(6), abs=1e-5)


@pytest.mark.parametrize("seed", range(80))
def test_random_boards_with_mitres_bevels_and_tapers(seed: int) -> None:
    chance = random.Random(seed)
    lie = chance.choice([(0, 1, 2), (0, 2, 1), (1, 0, 2), (1, 2, 0), (2, 0, 1), (2, 1, 0)])
    long, wide, thick = lie
    low = [chance.uniform(-500, 500) for _ in range(3)]
    size = [0.0, 0.0, 0.0]
    size[long], size[wide], size[thick] = (
        chance.uniform(300, 900),
        chance.uniform(40, 140),
        chance.uniform(15, 50),
    )
    high = [a + b for a, b in zip(low, size, strict=True)]
    planes = square_rows(low, high)
    cuts: list[object] = []
    for side in ("low", "high"):
        if chance.random() < 0.7:
            kind, across = chance.choice([("mitre", wide), ("bevel", thick)])
            degrees = chance.uniform(5, 45)
            long_side = chance.choice(["low", "high"])
            cuts.append(FaceCut(kind, long, side, degrees, across, long_side, SPAN))  # type: ignore[arg-type]
            # Three corners of the cut: both at the long point, and one that has fallen back.
            out = 1.0 if side == "high" else -1.0
            normal = [0.0, 0.0, 0.0]
            normal[long] = out * math.cos(math.radians(degrees))
            normal[across] = math.sin(math.radians(degrees)) * (-1.0 if long_side == "high" else 1.0)
            point = list(low)
            point[long] = high[long] if side == "high" else low[long]
            point[across] = high[across] if long_side == "high" else low[across]
            planes.append((tuple(normal), sum(n * p for n, p in zip(normal, point, strict=True))))  # type: ignore[arg-type]
    if chance.random() < 0.7:
        side, faces = chance.choice(["low", "high"]), chance.choice(["low", "high", "both"])
        to, over = size[wide] * chance.uniform(0.3, 0.9), chance.uniform(100, 250)
        cuts.append(Taper(long, side, wide, faces, to, over, SPAN))  # type: ignore[arg-type]
        back = (size[wide] - to) / (2 if faces == "both" else 1)
        for face in ("low", "high") if faces == "both" else (faces,):
            normal = [0.0, 0.0, 0.0]
            normal[wide] = over * (1.0 if face == "high" else -1.0)
            normal[long] = back * (1.0 if side == "high" else -1.0)
            point = list(low)
            point[long] = high[long] - over if side == "high" else low[long] + over
            point[wide] = high[wide] if face == "high" else low[wide]
            planes.append((tuple(normal), sum(n * p for n, p in zip(normal, point, strict=True))))  # type: ignore[arg-type]
    solid = one_made(placed("part", tuple(low), tuple(high), lie, cuts))  # type: ignore[arg-type]
    compare(solid, planes)
    # The mirrored twin has the same figures.
    twin = mirrored(solid, low, high, lie, cuts)
    assert twin.volume == pytest.approx(solid.volume)
    assert twin.surface_area() == pytest.approx(solid.surface_area())
    assert twin.size == pytest.approx(solid.size)
    assert twin.centre == pytest.approx((low[0] + high[0] - solid.centre[0], *solid.centre[1:]))


OTHER = {"low": "high", "high": "low", "both": "both"}


def mirrored(
    solid: Solid, low: list[float], high: list[float], lie: tuple[int, int, int], cuts: list[object]
) -> Solid:
    """The same part seen in a mirror across."""
    turned: list[object] = []
    for cut in cuts:
        if isinstance(cut, FaceCut):
            cut = cut._replace(
                side=OTHER[cut.side] if cut.axis == 0 else cut.side,  # type: ignore[arg-type]
                long_side=OTHER[cut.long_side] if cut.long_axis == 0 else cut.long_side,  # type: ignore[arg-type]
            )
        if isinstance(cut, Taper):
            cut = cut._replace(
                side=OTHER[cut.side] if cut.axis == 0 else cut.side,  # type: ignore[arg-type]
                faces=OTHER[cut.faces] if cut.across_axis == 0 else cut.faces,  # type: ignore[arg-type]
            )
        turned.append(cut)
    return one_made(placed("twin", tuple(low), tuple(high), lie, turned))  # type: ignore[arg-type]


@pytest.mark.parametrize("seed", range(60))
def test_random_leaning_boards(seed: int) -> None:
    """Level section by qhull, from the board's own square section; compound splay in two of three."""
    chance = random.Random(seed)
    runs = [chance.uniform(-0.4, 0.4), chance.uniform(-0.4, 0.4)]
    if seed % 3 == 0:
        runs[chance.randint(0, 1)] = 0.0
    thick_axis = chance.randint(0, 1)
    width, thickness, tall = chance.uniform(40, 100), chance.uniform(20, 40), chance.uniform(300, 700)
    # Own ways for the reference: along the middle line, and the face that keeps a level line on the wide axis.
    import numpy as np

    along = np.array([*runs, 1.0]) / math.sqrt(1 + runs[0] ** 2 + runs[1] ** 2)
    level = np.eye(3)[1 - thick_axis]
    out = np.cross(along, level)
    out /= np.linalg.norm(out)
    over = np.cross(along, out)
    planes = [
        ((0.0, 0.0, 1.0), tall),
        ((0.0, 0.0, -1.0), 0.0),
        *[(tuple(sign * out), thickness / 2 + sign * out @ along * 0) for sign in (1, -1)],
        *[(tuple(sign * over), width / 2) for sign in (1, -1)],
    ]
    mesh = reference.body_of(reference.rows_of(planes))  # type: ignore[arg-type]
    assert mesh is not None
    section = reference.body_of(
        reference.rows_of([((0.0, 0.0, 1.0), 0.5), ((0.0, 0.0, -1.0), 0.5), *planes[2:]])  # type: ignore[list-item]
    )
    assert section is not None
    flat = section.extents[:2] - np.abs(runs)
    assert level_section(*runs, thick_axis, width, thickness) == pytest.approx(tuple(flat), abs=1e-6)
    assert section_of_level(*runs, thick_axis, *flat) == pytest.approx((width, thickness), abs=1e-6)
    low, high = (tuple(float(x) for x in row) for row in mesh.bounds)
    lie = (2, 1 - thick_axis, thick_axis)
    leg = one_made(placed("leg", low, high, lie, slant=Lean(*runs, SPAN)))  # type: ignore[arg-type]
    compare(leg, planes)  # type: ignore[arg-type]
    assert leg.size[1:] == pytest.approx((width, thickness), abs=1e-6)
    spread = mesh.vertices @ along
    assert leg.length == pytest.approx(spread.max() - spread.min(), abs=1e-6)
    (foot,) = ground_contacts(leg, "floor", 2, 0.0)
    assert foot.area == pytest.approx(mesh.volume / tall, rel=1e-6)


@pytest.mark.parametrize("seed", range(60))
def test_random_braces_fill_their_boxes(seed: int) -> None:
    """The board is cut from its angle, and its bounds by qhull are the box that the angle came from."""
    chance = random.Random(seed)
    along, up = chance.sample(range(3), 2) if seed % 2 else (chance.randint(0, 1), 2)
    ends = [chance.choice(["square", "level", "plumb", "corner"]) for _ in range(2)]
    width, thick = chance.uniform(40, 90), chance.uniform(18, 45)
    low = [chance.uniform(-100, 100) for _ in range(3)]
    size = [thick] * 3
    size[along], size[up] = chance.uniform(250, 900), chance.uniform(250, 900)
    high = [a + b for a, b in zip(low, size, strict=True)]
    towards = chance.choice(["low", "high"])
    lie = (along, up, 3 - along - up) if chance.random() < 0.5 else (up, along, 3 - along - up)
    brace = one_made(
        placed(
            "brace", tuple(low), tuple(high), lie, slant=Rising(along, up, towards, *ends, SPAN), width=width
        )  # type: ignore[arg-type]
    )
    assert (*brace.low, *brace.high) == pytest.approx((*low, *high), abs=1e-6)
    way = brace.directions[0]
    assert way[up] * way[along] * (1 if towards == "high" else -1) > 0
    assert brace.size[1:] == pytest.approx((width, thick))
    # Built again from the middle of the lower end, found as the point of the middle line where its cut is.
    found = rise(size[along], size[up], width, *ends)  # type: ignore[arg-type]
    assert found is not None
    sign = 1.0 if towards == "high" else -1.0
    climb, out = [0.0, 0.0, 0.0], [0.0, 0.0, 0.0]
    climb[along], climb[up] = sign * math.cos(found.angle), math.sin(found.angle)
    out[along], out[up] = -sign * math.sin(found.angle), math.cos(found.angle)

    def at(place: tuple[float, float]) -> list[float]:
        point = [(a + b) / 2 for a, b in zip(low, high, strict=True)]
        point[along] = low[along] + place[0] if sign > 0 else high[along] - place[0]
        point[up] = low[up] + place[1]
        return point

    start, end = at(found.low), at(found.high)

    def plane(normal: list[float], point: list[float], more: float = 0.0) -> tuple[tuple[float, ...], float]:
        return tuple(normal), sum(n * p for n, p in zip(normal, point, strict=True)) + more

    planes = [
        plane(out, start, width / 2),
        plane([-x for x in out], start, width / 2),
        *square_rows(low, high),
    ]
    if ends[0] == "square":
        planes.append(plane([-x for x in climb], start))
    if ends[1] == "square":
        planes.append(plane(climb, end))
    compare(brace, planes)  # type: ignore[arg-type]


@pytest.mark.parametrize("seed", range(60))
def test_random_pairs_of_slanted_parts(seed: int) -> None:
    """Overlap and contact between two convex parts, by qhull and shapely."""
    chance = random.Random(seed)
    solids, planes = [], []
    for name in ("a", "b"):
        run = [chance.uniform(-0.3, 0.3), chance.choice([0.0, chance.uniform(-0.3, 0.3)])]
        low = [chance.uniform(0, 60), chance.uniform(0, 60), chance.uniform(0, 200)]
        tall = chance.uniform(200, 400)
        extent = [tall * abs(each) + chance.uniform(40, 90) for each in run]
        high = (low[0] + extent[0], low[1] + extent[1], low[2] + tall)
        solid = one_made(placed(name, tuple(low), high, UPRIGHT, slant=Lean(*run, SPAN)))  # type: ignore[arg-type]
        assert solid.body is not None
        solids.append(solid)
        planes.append([(face.normal, face.offset) for face in solid.body.pieces[0].faces])
    rows = [reference.rows_of(each) for each in planes]
    expected = reference.volume(reference.rows_of([*planes[0], *planes[1]]))
    found = meetings(solids)
    if expected > 5:
        (overlap,) = found.overlaps
        assert overlap.volume == pytest.approx(expected, rel=1e-6)
        both = reference.body_of(reference.rows_of([*planes[0], *planes[1]]))
        assert both is not None
        assert (*overlap.low, *overlap.high) == pytest.approx(both.bounds.reshape(6), abs=1e-4)
    elif expected == 0:
        assert found.overlaps == ()
        assert sum(c.area for c in found.contacts) == pytest.approx(
            reference.shared_face_area(*rows), abs=1e-3
        )


@pytest.mark.parametrize("seed", range(40))
def test_what_is_cut_and_what_is_left_are_the_board(seed: int) -> None:
    """A leaning or mitred board, and the block that its notch takes: volumes add up by qhull."""
    chance = random.Random(seed)
    run = chance.uniform(-0.3, 0.3)
    low, high = (0.0, 0.0, 0.0), (45 + 400 * abs(run), 60.0, 400.0)
    block_low = (chance.uniform(-20, 100), chance.uniform(-20, 30), chance.uniform(50, 200))
    block_high = tuple(a + chance.uniform(20, 120) for a in block_low)
    block = square_solid("block", block_low, block_high, Axis.ACROSS, Axis.DEEP, Axis.UP)  # type: ignore[arg-type]
    whole = one_made(placed("leg", low, high, UPRIGHT, slant=Lean(run, 0.0, SPAN)))
    leg = placed("leg", low, high, UPRIGHT, [FittedNotch("block", 0.0, SPAN)], Lean(run, 0.0, SPAN))
    told = miscuts(leg, square=[block])
    assert whole.body is not None
    planes = [(face.normal, face.offset) for face in whole.body.pieces[0].faces]
    taken = reference.volume(reference.rows_of([*planes, *square_rows(list(block_low), list(block_high))]))
    if told:
        assert told[0].what in ("cuts in two", "misses the wood")
        assert (taken == 0) == (told[0].what == "misses the wood")
        return
    notched = one_made(leg, square=[block])
    assert notched.volume + taken == pytest.approx(whole.volume)
    found = meetings([notched, block])
    assert found.overlaps == ()
    assert found.contacts != ()


# ------------------------------------------------------------ what can't be cut


BOARD = ((0.0, 0.0, 0.0), (500.0, 100.0, 20.0))


@pytest.mark.parametrize(
    ("cut", "what", "figures"),
    [
        (Taper(0, "high", 1, "low", 120, None, SPAN), "taper too wide", (120, 100)),
        (Taper(0, "high", 1, "low", 60, 700, SPAN), "taper too long", (700, 500)),
        (notch(WHOLE, WHOLE, WHOLE), "takes everything", ()),
        (notch(Reach("middle", 0, 40), WHOLE, WHOLE), "cuts in two", ()),
        (notch(Reach("low", 600, 40), WHOLE, WHOLE), "misses the wood", ()),
        (Hole(2, "high", 10, None, (Reach("low", 600), Reach("low", 50)), SPAN), "hole misses the wood", ()),
        (Hole(2, "high", 30, None, (Reach("low", 100), Reach("low", 10)), SPAN), "hole breaks out", (30,)),
        (Hole(2, "high", 10, 25, (Reach("low", 100), Reach("low", 50)), SPAN), "hole too deep", (25, 20)),
        (Corners("rounded", 60, (), SPAN), "corner too big", (60, 50)),
        (Corners("rounded", 120, (("low", "low"),), SPAN), "corner too big", (120, 100)),
        (Arrises("rounded", 12, SPAN), "arris too big", (12, 10)),
        (Rounded(30, SPAN), "bar too thick", (30, 20)),
        (mitre(0, "low", 1, "low", 80), "mitre takes the length", (100 * math.tan(math.radians(80)), 500)),
        (EndToSuit(0, "low", "nowhere near", SPAN), "end meets nothing", ()),
    ],
    ids=lambda value: value if isinstance(value, str) else None,
)  # fmt: skip
def test_what_cannot_be_cut_is_told_and_left_out(cut: object, what: str, figures: tuple[float, ...]) -> None:
    far = square_solid("nowhere near", (-90, 900, 900), (-20, 990, 990), Axis.UP, Axis.ACROSS, Axis.DEEP)
    part = placed("part", *BOARD, cuttings=[cut])  # type: ignore[list-item]
    (told,) = miscuts(part, square=[far])
    assert (told.part, told.what, told.unmade) == ("part", what, False)
    assert told.figures == pytest.approx(figures)
    from reviewer.setting_out.shaping import shaped_solids

    solid = shaped_solids({"part": part}, {"nowhere near": far}).solids["part"]
    if what not in ("taper too long", "hole too deep"):
        assert solid.volume == pytest.approx(500 * 100 * 20)
    assert (solid.low, solid.high) == BOARD


def test_two_mitres_that_eat_each_other_are_told() -> None:
    """Both take 300 of the same side of a board 500 long."""
    cuts = [mitre(0, "low", 1, "low", 71.565), mitre(0, "high", 1, "low", 71.565)]
    (told,) = miscuts(placed("part", *BOARD, cuttings=cuts))
    assert told.what == "mitre takes the length"
    assert told.figures == pytest.approx((600, 500), abs=0.1)


@pytest.mark.parametrize("width", [700.0, None])
def test_a_brace_that_does_not_fit_its_box_has_no_solid(width: float | None) -> None:
    part = placed("brace", (0, 0, 0), (300, 45, 300), ACROSS_ON_EDGE,
                  slant=Rising(0, 2, "high", "square", "square", SPAN), width=width)  # fmt: skip
    (told,) = miscuts(part)
    assert (told.what, told.unmade) == ("brace does not fit", True)
    assert told.figures == (width or 0.0, 300, 300)


def test_a_lean_without_room_for_the_wood_has_no_solid() -> None:
    (told,) = miscuts(placed("leg", (0, 0, 0), (50, 45, 400), UPRIGHT, slant=Lean(0.2, 0.0, SPAN)))
    assert (told.what, told.unmade) == ("leans too far", True)
    assert told.figures == pytest.approx((80, 50))


def test_so_many_notches_come_to_an_end() -> None:
    cuts = [
        BoxCut("groove", Reach("low", 2.0 * i + 0.5, 1.0), WHOLE, Reach("high", 0, 5), SPAN)
        for i in range(240)
    ]
    told = miscuts(placed("part", *BOARD, cuttings=cuts))
    assert told
    assert {each.what for each in told} == {"too many cuts"}


def test_feet_of_a_part_with_an_arch() -> None:
    """A bottom rail cut out in the middle stands on two feet, 80 by 20 each."""
    rail = one_made(
        placed(
            "rail",
            (0, 0, 0),
            (500, 20, 100),
            ACROSS_ON_EDGE,
            [notch(Reach("middle", 0, 340), WHOLE, Reach("low", 0, 60))],
        )
    )
    feet = ground_contacts(rail, "floor", 2, 0.0)
    assert [foot.area for foot in feet] == pytest.approx([1600, 1600])
    assert [(*foot.low, *foot.high) for foot in feet] == [
        pytest.approx((0, 0, 0, 80, 20, 0)),
        pytest.approx((420, 0, 0, 500, 20, 0)),
    ]
    assert ground_contacts(rail, "floor", 2, -5.0) == ()
    (wall,) = ground_contacts(rail, "wall", 1, 20.0)
    assert (wall.first, wall.second, wall.first_surface, wall.normal) == ("rail", "wall", "face", (0, 1, 0))
    assert wall.area == pytest.approx(500 * 100 - 340 * 60)


def test_copies_are_the_same_board_somewhere_else() -> None:
    cuts = [notch(Reach("low", 0, 50), WHOLE, Reach("high", 0, 10)),
            Hole(2, "high", 10, None, (Reach("low", 200), Reach("low", 50)), SPAN)]  # fmt: skip
    found = made(
        *(
            placed(f"c{i}", (0, 150.0 * i, 7.0 * i), (500, 150.0 * i + 100, 7.0 * i + 20), cuttings=cuts)
            for i in range(3)
        )
    )
    for i, solid in enumerate(found.values()):
        alone = one_made(
            placed(f"c{i}", (0, 150.0 * i, 7.0 * i), (500, 150.0 * i + 100, 7.0 * i + 20), cuttings=cuts)
        )
        assert solid.name == f"c{i}"
        assert (solid.low, solid.high, solid.size) == (alone.low, alone.high, alone.size)
        assert solid.volume == pytest.approx(alone.volume)
        assert solid.centre == pytest.approx(alone.centre)
        assert solid.surface_area() == pytest.approx(alone.surface_area())
        touching = square_solid("t", (0, 0, 7.0 * i + 20), (500, 600, 99), Axis.UP, Axis.ACROSS, Axis.DEEP)
        assert [c.area for c in meetings([solid, touching]).contacts] == pytest.approx(
            [c.area for c in meetings([alone, touching]).contacts]
        )


def test_meeting_is_the_same_from_either_side() -> None:
    solids = [*frame_rails(600, 400, 60, 20).values(), *half_laps().values(), splayed_leg()]

    def key(each: Contact | Overlap) -> tuple[object, ...]:
        return (each.first, each.second, *(round(place, 6) for place in (*each.low, *each.high)))

    there, back = meetings(solids), meetings(solids[::-1])
    assert sorted(map(key, there.contacts)) == sorted(map(key, back.contacts))
    assert sorted(map(key, there.overlaps)) == sorted(map(key, back.overlaps))


def test_wood_along_an_axis_is_that_of_the_board_not_of_its_bounds() -> None:
    """By hand: across an 8° leg a level line goes through 45 / cos 8°, up through it 45 / sin 8°."""
    leg, turn = splayed_leg(), math.radians(8)
    assert [leg.through(axis) for axis in range(3)] == pytest.approx(
        [45 / math.cos(turn), 45, min(45 / math.sin(turn), leg.length / math.cos(turn))]
    )
    board = square_solid("b", (0, 0, 0), (500, 100, 20), Axis.ACROSS, Axis.DEEP, Axis.UP)
    assert [board.through(axis) for axis in range(3)] == [500, 100, 20]


def test_a_gap_between_parts_whose_bounds_share_ground() -> None:
    """By hand: an 8° leg's face at a height of 160 stands at 45.44 + 22.49 = 67.93; a rail from 70 on is 2.07 off there."""
    leg = splayed_leg()
    rail = square_solid("rail", (70, 0, 100), (300, 40, 160), Axis.ACROSS, Axis.UP, Axis.DEEP)
    turn = math.radians(8)
    face = 45 / math.cos(turn) + 160 * math.tan(turn)
    assert gaps(leg, rail) == pytest.approx((70 - face, 0, 0))
    touching = square_solid("rail", (face, 0, 100), (300, 40, 160), Axis.ACROSS, Axis.UP, Axis.DEEP)
    assert gaps(leg, touching) == (0, 0, 0)
    far = square_solid("rail", (200, 100, 100), (300, 140, 160), Axis.ACROSS, Axis.UP, Axis.DEEP)
    assert gaps(leg, far) == pytest.approx((200 - leg.high[0], 55, 0))
