"""Utilisations as a whole: every kind is there, and what must hold for any piece."""

from __future__ import annotations

import math

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from reviewer.mechanics.beam import BeamResult, LineLoad, solve_beam
from reviewer.review import Review
from reviewer.workshop.utilisation import Utilisation
from tests.rules.sound_pieces import BENCH, SOUND_PIECES
from tests.support import review_of

WOODS = {"ponderosa pine": 8.9, "red oak": 12.5, "yellow birch": 13.9}  # GPa, Wood Handbook, rounded


def shelf(
    span: int = 900, load: float = 40.0, wood: str = "ponderosa pine", high: int = 20, props: int = 0
) -> str:
    """A board on two posts, and so many more spread evenly between them."""
    posts = [
        f"part post.{n}: post, upright, facing side, 400 tall, on floor, left at {span * n / (props + 1):.4f}, front at 0"
        for n in range(props + 2)
    ]
    lines = "\n        ".join(posts)
    return f"""
        plan "Shelf" in millimetres
        stock board: actual {high} x 200 {wood}
        stock post: actual 40 x 200 ponderosa pine
        {lines}
        part board: board, across, flat, {span + 40} long, left at 0, front at 0, on post.0
        join board to post.*: screws 5 x 60, 3 per joint
        load board: {load:g} kg
        room hall: indoors
        """


def figures(review: Review, part: str = "board") -> dict[str, Utilisation]:
    return {each.kind: each for each in review.utilisations if each.part == part}


def ratios(text: str) -> dict[str, float]:
    found = figures(review_of(text))
    return {kind: each.ratio for kind, each in found.items()}


@pytest.mark.parametrize("name", SOUND_PIECES)
def test_every_sound_piece_is_used_within_its_strength(name: str) -> None:
    found = review_of(SOUND_PIECES[name]).utilisations
    assert found
    for each in found:
        assert each.source
        assert each.named
        assert 0 <= each.ratio <= 1, (each.part, each.kind)
        assert math.isfinite(each.ratio)


def test_a_bench_has_every_kind() -> None:
    review = review_of(BENCH)
    assert {each.kind for each in review.utilisations} == {"bending", "shear", "bearing", "buckling", "sag"}
    assert review.utilisations is review.utilisations  # worked out once


def test_what_each_part_hands_on_is_what_comes_to_the_ground() -> None:
    carrying = review_of(BENCH).carrying
    floor = math.fsum(
        each.force for handed in carrying.handed.values() for each in handed if each.to.by == "floor"
    )
    assert floor == pytest.approx(carrying.on_floor, rel=1e-9)


@settings(max_examples=25, deadline=None)
@given(
    span=st.integers(300, 1800),
    load=st.integers(1, 150),
    more=st.integers(1, 100),
    high=st.sampled_from([12, 20, 38]),
)
def test_more_load_never_means_less_use(span: int, load: int, more: int, high: int) -> None:
    less, greater = (ratios(shelf(span, kg, high=high)) for kg in (load, load + more))
    for kind, used in less.items():
        assert greater[kind] >= used - 1e-12, kind


@settings(max_examples=25, deadline=None)
@given(
    span=st.integers(300, 1800),
    load=st.integers(1, 150),
    woods=st.permutations(sorted(WOODS)),
)
def test_a_stiffer_species_never_sags_more_under_a_heavy_load(span: int, load: int, woods: list[str]) -> None:
    soft, stiff = sorted(woods[:2], key=lambda wood: WOODS[wood])
    # A stiffer wood is heavier too: what it carries must outweigh that.
    assume(load > 20)
    assert ratios(shelf(span, load, stiff))["sag"] <= ratios(shelf(span, load, soft))["sag"]


@settings(max_examples=25, deadline=None)
@given(span=st.integers(600, 1800), load=st.integers(1, 150), props=st.integers(0, 2))
def test_one_more_support_never_bends_or_sags_more(span: int, load: int, props: int) -> None:
    fewer, more = (ratios(shelf(span, load, props=count)) for count in (props, props + 1))
    for kind in ("bending", "sag"):
        assert more[kind] <= fewer[kind] + 1e-9, kind


@settings(max_examples=60, deadline=None)
@given(
    length=st.integers(300, 3000),
    load=st.floats(0.01, 5),
    at=st.floats(0.1, 0.9),
)
def test_a_support_in_a_simple_span_never_bends_its_middle_more(length: int, load: float, at: float) -> None:
    line = [LineLoad(0.0, float(length), load)]
    simple = solve_beam(length, [0.0, length], 1e10, [], line)
    propped = solve_beam(length, [0.0, at * length, length], 1e10, [], line)
    assert isinstance(simple, BeamResult)
    assert isinstance(propped, BeamResult)
    assert abs(propped.moment(length / 2)) <= abs(simple.moment(length / 2)) + 1e-6
    assert math.fsum(each.force for each in propped.reactions) == pytest.approx(load * length)


@settings(max_examples=25, deadline=None)
@given(span=st.integers(300, 1800), load=st.integers(0, 150), props=st.integers(0, 3))
def test_the_reactions_of_a_board_are_its_load(span: int, load: int, props: int) -> None:
    review = review_of(shelf(span, max(load, 1), props=props))
    handed = review.carrying.handed["board"]
    whole = review.masses["board"].weight + math.fsum(review.carrying.declared.values())
    assert math.fsum(each.force for each in handed) == pytest.approx(whole, rel=1e-9)


@settings(max_examples=20, deadline=None)
@given(height=st.integers(300, 2000), side=st.integers(10, 60), more=st.integers(1, 30))
def test_a_thicker_or_a_shorter_leg_is_never_used_more(height: int, side: int, more: int) -> None:
    def used(tall: int, thick: int) -> float:
        text = f"""
            plan "Post" in millimetres
            stock post: actual {thick} x {thick} red oak
            part post: post, upright, facing front, {tall} tall, on floor, left at 0, front at 0
            load post: 50 kg
            """
        return figures(review_of(text), "post")["buckling"].ratio

    assert used(height, side + more) < used(height, side)
    assert used(height + more, side) > used(height, side)
