"""A load at one spot of a part: where it rests, what it bends, and what it tips. Sums are done by hand."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from reviewer.mechanics.beam import BeamResult
from reviewer.model.plan import Axis, Spot
from reviewer.reference.materials import material
from reviewer.review import Review
from reviewer.units import MM_PER_INCH, NEWTON_PER_KG, NEWTON_PER_POUND
from reviewer.workshop.loading import resting
from reviewer.workshop.tipping_states import states
from tests.support import look_at, review_of, told

INCH = MM_PER_INCH

#: Knife edges stand at the middles of both sides: 47 1/4 in apart.
SHELF = """
plan "Shelf" in inches
stock board: actual 3/4 x 9 1/4 ponderosa pine
outline case: 48 across, 9 1/4 deep, 13 tall, on floor
part side for each of left, right: board, upright, facing side, 12 tall, on floor
    flush with each of case, flush with front of case
part shelf: board, across, flat, on side.left, from left of case to right of case, flush with front of case
join shelf to side.*: screws #8 x 2, 3 per joint, from above
room study: indoors
"""


def review(load: str) -> Review:
    return review_of(SHELF + (f"load shelf: {load}\n" if load else ""))


def sag(load: str) -> float:
    """The long-term sag of the shelf, mm."""
    made = review(load).carrying.members["shelf"].sag
    assert isinstance(made, BeamResult)
    return max(bay.sag for bay in made.bays)


def test_in_the_middle_it_sags_by_a_force_times_the_span_cubed_over_48_e_i() -> None:
    # 200 lb in the middle of 47 1/4 in; what lasts grows twofold over the years (creep of solid wood indoors).
    force, span = 200 * NEWTON_PER_POUND, 47.25 * INCH
    inertia = 9.25 * 0.75**3 / 12 * INCH**4
    by_hand = 2 * force * span**3 / (48 * material("ponderosa pine").modulus_of_elasticity * inertia)
    assert sag("200 lb at 24 from left") - sag("") == pytest.approx(by_hand, rel=1e-3)
    assert sag("200 lb at 24 from right") == pytest.approx(sag("200 lb at 24 from left"))


def test_at_a_quarter_it_sags_less() -> None:
    # Beam tables: a force b from the nearer support bends a span by F·b·(L² - b²)^1.5 / (9·√3·L·E·I).
    force, span, near = 200 * NEWTON_PER_POUND, 47.25 * INCH, 12 * INCH
    stiffness = material("ponderosa pine").modulus_of_elasticity * 9.25 * 0.75**3 / 12 * INCH**4
    by_hand = 2 * force * near * (span**2 - near**2) ** 1.5 / (9 * math.sqrt(3) * span * stiffness)
    # The board's own weight sags most in the middle, this a little beside it.
    assert sag("200 lb at 12 3/8 from left") - sag("") == pytest.approx(by_hand, rel=2e-3)


@settings(max_examples=30, deadline=None)
@given(
    places=st.lists(st.integers(1, 24), min_size=2, max_size=2, unique=True),
    end=st.sampled_from(["left", "right"]),
)
def test_nearer_to_the_middle_it_sags_more(places: list[int], end: str) -> None:
    outer, inner = (sag(f"90 lb at {place} from {end}") for place in sorted(places))
    assert inner > outer


def test_it_goes_to_the_nearer_support() -> None:
    # 80 lb at 12 3/8 from the left end is 12 of 47 1/4 in from the left support: 3 parts in 4 go there.
    loaded, bare = review("80 lb at 12 3/8 from left").carrying, review("").carrying
    assert loaded.on_floor - bare.on_floor == pytest.approx(80 * NEWTON_PER_POUND)
    standing = loaded.members["shelf"].standing
    empty = bare.members["shelf"].standing
    assert isinstance(standing, BeamResult)
    assert isinstance(empty, BeamResult)
    reactions = [a.force - b.force for a, b in zip(standing.reactions, empty.reactions, strict=True)]
    pounds = [reaction / NEWTON_PER_POUND for reaction in reactions]
    assert pounds == [pytest.approx(80 * 35.25 / 47.25, rel=1e-3), pytest.approx(80 * 12 / 47.25, rel=1e-3)]


def test_what_the_model_keeps() -> None:
    (load,) = review("36 kg at 12 from right").plan.loads
    assert (load.use, load.weight, load.spot) == ("stated", 36, Spot(Axis.ACROSS, "high", 12 * INCH))
    assert load.lasting
    # A person's weight and place; the next spot is a load of its own.
    person, box = review("1 person standing, 80 kg at 12 from left, 5 kg at 2 from front").plan.loads
    assert (person.use, person.weight, person.lasting) == ("people standing", 80, False)
    assert person.spot == Spot(Axis.ACROSS, "low", 12 * INCH)
    assert (box.use, box.weight, box.spot) == ("stated", 5, Spot(Axis.DEEP, "low", 2 * INCH))


def test_counted_across_the_part_it_rests_where_it_does_most() -> None:
    assert sag("200 lb at 2 from front") == pytest.approx(sag("200 lb at 24 from left"))


@pytest.mark.parametrize(
    ("load", "says", "do"),
    [
        (
            "80 kg at 12 from top",
            "The place of a load can't be counted from “top”.",
            "Count it from left, right, front or back: 80 kg at 12 from left",
        ),
        (
            "80 kg at (2 - 3) from left",
            "The load rests -1 in from the left, which is off the part.",
            "Write a distance from 0.",
        ),
    ],
)
def test_a_place_that_is_none(load: str, says: str, do: str) -> None:
    problems = look_at(SHELF + f"load shelf: {load}\n").problems
    assert [(problem.says, problem.do) for problem in problems] == [(says, do)]


BENCH = """
plan "Bench" in inches
stock plank: actual 2 x 12 red oak, 8 ft
outline frame: 28 across, 12 deep, 16 tall, on floor
part leg for each of left, right: plank, upright, facing side, as tall as frame
    on floor, flush with each of frame, flush with front of frame
part seat: plank, across, flat, 48 long, on frame, centred across on frame, flush with front of frame
join seat to leg.*: dowels 3/8 x 2, 3 per joint, glue pva
load seat: {load}
"""


@pytest.mark.parametrize(("place", "outside"), [(4, 6), (1, 9)])
def test_at_the_end_of_a_bench_it_tips_by_its_own_lever(place: int, outside: int) -> None:
    # The seat stands 10 in past the legs, so 60 kg at 4 in from its end lie 6 in outside.
    made = review_of(BENCH.format(load=f"60 kg at {place} from left"))
    spread, spots = resting(made.declared, made.setting)
    assert spread == {"seat": 0}
    (piece,) = made.pieces
    (state,) = (
        each
        for each in states(piece, made.plan, made.setting, made.limits, spread, spots)
        if each.kind == "loaded"
    )
    assert (state.force, state.place) == (
        pytest.approx(60 * NEWTON_PER_KG),
        pytest.approx(outside * INCH),
    )
    assert state.balance.overturning == pytest.approx(60 * NEWTON_PER_KG * outside * INCH)


def test_between_the_legs_it_tips_nothing() -> None:
    assert told(BENCH.format(load="60 kg at 24 from left"), "tips") == []


def test_a_load_past_the_end_of_its_part() -> None:
    text = SHELF + "load shelf, side.left: 20 lb at 50 from right\n"
    assert told(text, "load-off-part") == [
        "error shelf @ 20 lb at 50 from right: A load rests 50 in from the right of shelf, which is 48 in across "
        "only: it is 2 in off the end. → Count its place from the part's own end, or name the part that it does "
        "rest on.",
        "error side.left @ 20 lb at 50 from right: A load rests 50 in from the right of side.left, which is 3/4 in "
        "across only: it is 49 1/4 in off the end. → Count its place from the part's own end, or name the part "
        "that it does rest on.",
    ]
    assert told(SHELF + "load shelf: 20 lb at 48 from left\n", "load-off-part") == []
    assert told(SHELF + "load shelf: 20 lb\n", "load-off-part") == []
