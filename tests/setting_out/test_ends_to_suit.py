"""Ends cut to the slanting faces of what they meet."""

import math

import pytest

from tests.support import review_of

HORSE = """
plan "Sawhorse" in millimetres
stock leg: actual 40 x 90 spruce-pine-fir
stock ply: birch plywood 12
outline horse: 900 across, 600 deep, 800 tall, on floor
part leg for each of left, right: leg, upright, facing side, from bottom of horse to top of horse
    flush with front of horse, splayed 10 degrees towards front, each 80 inside horse
part back-leg for each of left, right: like leg.each, mirrored deep about horse
part shelf: ply, flat, 800 across, centred across on horse, between leg.left and back-leg.left deep
    bottom 200 above floor
"""


def test_a_shelf_that_is_wider_than_the_leg_it_is_cut_to() -> None:
    """Its middle looks at no leg, but its ends do; both are bevelled by 10 degrees."""
    review = review_of(HORSE)
    assert review.setting.miscuts == ()
    assert review.setting.overlaps == ()
    shelf = review.setting.solids["shelf"]
    ply = shelf.thickness
    # A leg's level section is 90 / cos 10 deep; its foot goes 800 tan 10 further out than its head.
    slope = math.tan(math.radians(10))
    section = 90 / math.cos(math.radians(10))
    # At the shelf's underside the inner face of the front leg stands this far from its foot's front.
    inner = 200 * slope + section
    assert shelf.low[1] == pytest.approx(inner, abs=1e-6)
    assert shelf.extent(1) == pytest.approx(600 - 2 * inner, abs=1e-6)
    # Each end falls back by the slope over the thickness.
    area = 600 - 2 * inner - ply * slope
    assert shelf.volume == pytest.approx(800 * ply * area, rel=1e-9)
    assert {contact.other("shelf") for contact in review.setting.contacts_of("shelf")} == {
        "leg.left",
        "leg.right",
        "back-leg.left",
        "back-leg.right",
    }
