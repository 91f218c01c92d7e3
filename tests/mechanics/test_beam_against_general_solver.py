"""The beam against a general structural solver (PyNiteFEA, a test-only library) on random beams.

The other solver works in space with six freedoms to a node; its members here have no shear area, so both
know bending alone.
"""

from __future__ import annotations

import pytest
from beam_cases import BeamCase, random_beam, solved
from Pynite import FEModel3D

BEAMS = range(120)
RELATIVE = 1e-6


def other_model(case: BeamCase) -> FEModel3D:
    """The beam along X under loads along -Y, held against everything that is not bending."""
    model = FEModel3D()
    young = 10_000.0
    model.add_material("wood", young, young / 2.6, 0.3, 0.0)
    inertia = case.bending_stiffness / young
    model.add_section("board", 1000.0, inertia, inertia, inertia)
    places = sorted({0.0, case.length, *case.supports, *case.clamps})
    for number, place in enumerate(places):
        model.add_node(f"N{number}", place, 0.0, 0.0)
        model.def_support(
            f"N{number}",
            support_DX=number == 0,
            support_DY=place in case.supports or place in case.clamps,
            support_DZ=True,
            support_RX=number == 0,
            support_RY=True,
            support_RZ=place in case.clamps,
        )
    model.add_member("beam", "N0", f"N{len(places) - 1}", "wood", "board")
    for place, force in case.point_loads:
        model.add_member_pt_load("beam", "FY", -force, place)
    for start, end, intensity in case.line_loads:
        model.add_member_dist_load("beam", "FY", -intensity, -intensity, start, end)
    model.analyze_linear()
    return model


@pytest.mark.parametrize("seed", BEAMS)
def test_reactions_and_deflections_agree(seed: int) -> None:
    case = random_beam(seed)
    ours, other = solved(case), other_model(case)
    places = sorted({0.0, case.length, *case.supports, *case.clamps})
    theirs = {place: other.nodes[f"N{number}"] for number, place in enumerate(places)}

    largest = max(abs(reaction.force) for reaction in ours.reactions)
    assert [reaction.at for reaction in ours.reactions] == sorted(case.supports + case.clamps)
    for reaction in ours.reactions:
        node = theirs[reaction.at]
        assert abs(reaction.force - node.RxnFY["Combo 1"]) <= RELATIVE * largest
        if reaction.at in case.clamps:
            moment = node.RxnMZ["Combo 1"]
            assert abs(-reaction.moment - moment) <= RELATIVE * largest * case.length

    beam = other.members["beam"]
    stations = [case.length * step / 60 for step in range(61)]
    sags = [-beam.deflection("dy", x) for x in stations]
    worst = max(abs(sag) for sag in sags)
    assert worst > 0
    for x, sag in zip(stations, sags, strict=True):
        assert abs(ours.deflection(x) - sag) <= RELATIVE * worst, f"at {x} mm of {case.length}"


@pytest.mark.parametrize("seed", BEAMS[:60])
def test_worst_of_each_bay_is_the_worst_of_a_fine_walk(seed: int) -> None:
    case = random_beam(seed)
    ours = solved(case)
    assert ours.bays[0].start == 0
    assert ours.bays[-1].end == pytest.approx(case.length)
    hardest = max(abs(bay.moment) for bay in ours.bays)
    strongest = max(abs(bay.shear) for bay in ours.bays)
    for bay in ours.bays:
        places = [bay.start + bay.length * step / 1000 for step in range(1001)]
        # A hair inside at the ends, for moment and shear jump over a support.
        inside = [bay.start + 1e-6, *places[1:-1], bay.end - 1e-6]
        sags = [ours.deflection(x) for x in places]
        moments = [ours.moment(x) for x in inside]
        size = max(map(abs, sags))
        # A walk in 1000 steps misses a smooth peak by some millionths of it.
        assert bay.sag == pytest.approx(max(0.0, *sags), abs=1e-5 * size)
        assert bay.rise == pytest.approx(max(0.0, *(-sag for sag in sags)), abs=1e-5 * size)
        assert ours.deflection(bay.sag_at) == pytest.approx(bay.sag, abs=1e-9 * size)
        assert ours.deflection(bay.rise_at) == pytest.approx(-bay.rise, abs=1e-9 * size)
        # A point load makes a kink that the walk may step over, never a peak that it alone sees.
        assert max(map(abs, moments)) <= abs(bay.moment) + 1e-9 * hardest
        assert max(map(abs, moments)) >= abs(bay.moment) * 0.99
        assert ours.moment(min(max(bay.moment_at, inside[0]), inside[-1])) == pytest.approx(
            bay.moment, abs=1e-6 * hardest
        )
        shears = [ours.shear(x) for x in inside]
        assert max(map(abs, shears)) <= abs(bay.shear) + 1e-9 * strongest
        assert max(map(abs, shears)) >= abs(bay.shear) * 0.9
