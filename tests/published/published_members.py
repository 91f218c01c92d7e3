"""Published spans and columns played on whole pieces, so that carrying, tables and factors are checked too."""

from __future__ import annotations

from published_formulas import formula
from published_measures import Inputs

from reviewer.mechanics.beam import BeamResult
from reviewer.mechanics.eurocode import column_reduction
from reviewer.model.plan import Axis
from reviewer.reference.grades import strength_class
from reviewer.review import Review
from reviewer.setting_out.solid import square_solid
from reviewer.units import MM_PER_FOOT, MM_PER_INCH, NEWTON_PER_POUND
from reviewer.workshop.bearing import bearings_of
from reviewer.workshop.columns import Column, column_strength
from reviewer.workshop.end_cuts import end_cuts
from reviewer.workshop.holding import Held
from reviewer.workshop.net_sections import Room, net_sections
from reviewer.workshop.strengths import Strength, strength_factor, strengths
from reviewer.workshop.utilisation import Utilisation
from tests.support import review_of

#: NDS C_r: the joists of the span tables are three or more, side by side; a piece's boards are not.
_REPETITIVE = 1.15


def _joist(size: str, wood: str, grade: str, span_mm: float, newtons: float) -> Review:
    """One joist between two posts, its ends flat against them, under an even load."""
    span, pounds = span_mm / MM_PER_INCH, newtons / NEWTON_PER_POUND
    return review_of(f"""
        plan "Joist" in inches
        stock joist: {size} {wood}, grade {grade}
        stock post: actual 6 x 6 {wood}
        part left: post, upright, facing side, 40 tall, on floor, left at 0, front at 0
        part right: post, upright, facing side, 40 tall, on floor, left {span:.6f} right of left, front at 0
        part joist: joist, across, on edge, between left and right, front at 0, bottom at 10
        join joist to left, right: screws #8 x 3, 3 per joint
        load joist: {pounds:.6f} lb
        room hall: indoors
        """)


def _of(review: Review, part: str, kind: str) -> Utilisation:
    (found,) = [each for each in review.utilisations if (each.part, each.kind) == (part, kind)]
    return found


def _laden(i: Inputs, pressure: float) -> Review:
    """The joist whose own weight is a part of the pressure, as the span tables have it."""
    span = i.measure("span")
    words = i.word("size"), i.word("wood"), i.word("grade"), span
    bare = _joist(*words, 1.0)
    whole = pressure * i.measure("spacing") * span
    return _joist(*words, whole - bare.masses["joist"].weight)


@formula("bending used at a printed span")
def _(i: Inputs) -> float:
    found = _of(_laden(i, i.measure("live") + i.measure("dead")), "joist", "bending")
    # The tables are for loads of ten years in all; what a plan states in pounds stays.
    return found.ratio * strength_factor("duration-lasting") / _REPETITIVE


@formula("sag used at a printed span")
def _(i: Inputs) -> float:
    i.word("dead")
    member = _laden(i, i.measure("live")).carrying.members["joist"]
    assert isinstance(member.standing, BeamResult)
    (bay,) = member.standing.bays
    return bay.sag / bay.length * i.measure("limit")


def _values(i: Inputs) -> Strength:
    review = _joist(i.word("size"), i.word("wood"), i.word("grade"), 2000.0, 100.0)
    member = review.carrying.members["joist"]
    found = strengths(
        review.stock_of("joist"),
        (member.width, member.height),
        flat=i.word("flat") == "yes",
        brief=i.word("brief") == "yes",
    )
    value = getattr(found, i.word("of"))
    assert isinstance(value, Strength)
    return value


@formula("design value of a stock")
def _(i: Inputs) -> float:
    return _values(i).value


@formula("column of a stock")
def _(i: Inputs) -> float:
    review = _joist("2x4", i.word("wood"), i.word("grade"), 2000.0, 100.0)
    sides = i.measure("width"), i.measure("depth")
    values = strengths(review.stock_of("joist"), sides, flat=False, brief=True)
    return column_strength(Column("post", i.measure("length"), sides), values).value


@formula("column reduction of a class")
def _(i: Inputs) -> float:
    known = strength_class(i.word("class"))
    assert known is not None
    return column_reduction(i.measure("length"), i.measure("depth"), known.compression, known.modulus_least)


@formula("section left by a cut")
def _(i: Inputs) -> float:
    """A board along across, ``cut`` wide and ``deep`` high taken out at ``at`` above its bottom."""
    width, height = i.measure("width"), i.measure("height")
    solid = square_solid(
        "board", (0.0, 0.0, 0.0), (MM_PER_FOOT, width, height), Axis.ACROSS, Axis.DEEP, Axis.UP
    )
    low = i.measure("at")
    room = Room((100.0, 0.0, low), (150.0, i.measure("cut"), low + i.measure("deep")), "dado")
    (net,) = net_sections(solid, Axis.ACROSS, [room], None)
    return {"modulus": net.modulus, "second": net.second_moment, "area": net.area}[i.word("of")]


@formula("shear that a notched end bears")
def _(i: Inputs) -> float:
    """The most shear at an end with a notch below (or above: ``over``), played on a joist between posts."""
    width, depth, notch = i.measure("width"), i.measure("depth"), i.measure("notch")
    where, seat = i.word("side", "below"), i.measure("seat")
    joist = square_solid("joist", (0.0, 0.0, 0.0), (4000.0, width, depth), Axis.ACROSS, Axis.UP, Axis.DEEP)
    low, high = (0.0, notch) if where == "below" else (depth - notch, depth)
    room = Room((0.0, 0.0, low), (i.measure("cut"), width, high), "notch")
    held = Held("post", "rests", (0.0, 0.0, low), (seat, width, low), True)
    other = Held("post", "rests", (4000.0 - seat, 0.0, low), (4000.0, width, low), True)
    bearings = bearings_of(joist, Axis.ACROSS, [held, other])
    sections = net_sections(joist, Axis.ACROSS, [room], None)
    (cut,) = end_cuts(joist, Axis.ACROSS, bearings, [seat / 2, 4000.0 - seat / 2], sections, ())
    share = cut.share(by_class=i.word("by", "NDS") != "NDS")
    return i.measure("strength") * cut.area / 1.5 * share
