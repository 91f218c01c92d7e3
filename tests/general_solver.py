"""The frame of a piece as a general structural solver (PyNiteFEA, test-only) can hold it: the same answer.

It has neither springs that turn between two nodes nor shear in its beams, so shear is left out on both sides,
and a joint is three rods that meet at its place, one along each way, which stretch and twist but do not bend;
stiff arms lead to them from the nodes that the joint ties. What we are asked to hold firm is as stiff there.
"""

from __future__ import annotations

import math
from typing import Any

from Pynite import FEModel3D

from reviewer.geometry.vectors import UNITS, Vector, moved
from reviewer.mechanics.frame import FIRM, Frame, Section, Turning
from reviewer.workshop import swaying_frame
from reviewer.workshop.swaying_structure import Structure

#: E·I and E·A of an arm over its length, N·mm and N/mm: it gives less than a millionth of what its joint does.
_ARM_BENDS, _ARM_STRETCHES = 3e12, 3e9
_SHORT_MM = 7.3
#: Where a node lies on a beam the solver joins the two, so what only lies there is put this far beside it.
_BESIDE_MM = 1e-5
_FREEDOMS = ("DX", "DY", "DZ")


class Kept(Frame):
    """A frame that remembers its beams, joints and holds as they were asked for, and knows no shear."""

    def __init__(self) -> None:
        super().__init__()
        self.beams: list[tuple[int, int, Section]] = []
        self.joints: list[tuple[int, int, Vector, Vector, Vector]] = []
        self.holds: list[tuple[int, Vector, Vector]] = []
        self.wides: list[Vector] = []

    def beam(
        self,
        start: int,
        end: int,
        section: Section,
        wide: Vector,
        at_start: Turning = FIRM,
        at_end: Turning = FIRM,
    ) -> None:
        section = section._replace(shear_wide=math.inf, shear_thick=math.inf)
        self.beams.append((start, end, section))
        self.wides.append(wide)
        super().beam(start, end, section, wide, at_start, at_end)

    def joint(self, one: int, two: int, place: Vector, ways: Any, shift: Vector, turn: Vector) -> None:
        assert ways == UNITS
        self.joints.append((one, two, place, shift, turn))
        super().joint(one, two, place, ways, shift, turn)

    def hold(self, node: int, place: Vector, shift: Vector, turn: Vector = (0.0, 0.0, 0.0)) -> None:
        assert not any(turn)
        self.holds.append((node, place, shift))
        super().hold(node, place, shift, turn)


def kept(standing: Structure) -> tuple[Kept, list[int]]:
    """The frame of a piece with what it is made of, and the nodes at its top."""
    whole = swaying_frame.Frame
    swaying_frame.Frame = Kept  # type: ignore[misc]
    try:
        frame, top, _ = swaying_frame.framed(standing)
    finally:
        swaying_frame.Frame = whole  # type: ignore[misc]
    assert isinstance(frame, Kept)
    return frame, top


def general(frame: Kept, top: list[int], axes: tuple[int, ...] = (0,), *, short: bool = False) -> FEModel3D:
    """The same frame, pushed by 1 N at each node of its top: a load combination for each axis.

    ``short`` takes each joint as one member between the nodes that it ties: no more the same frame.
    """
    model = FEModel3D()
    model.add_material("wood", 1.0, 1.0, 0.3, 0.0)
    for number, place in enumerate(frame.places):
        model.add_node(f"N{number}", *place)

    def arm(name: str, node: int, place: Vector) -> str:
        long = math.dist(place, frame.places[node])
        if long < 1e-6:
            return f"N{node}"
        x, y, z = place
        beside = _BESIDE_MM * (1 + len(model.nodes) % 7)
        model.add_node(name, x + beside, y + beside, z + beside)
        bends = _ARM_BENDS * long
        model.add_section(f"A{name}", _ARM_STRETCHES * long, bends, bends, bends)
        model.add_member(f"A{name}", f"N{node}", name, "wood", f"A{name}")
        return name

    for number, (start, end, section) in enumerate(frame.beams):
        name = f"B{number}"
        sizes = section.stretch, section.bend_thick, section.bend_wide, section.twist
        model.add_section(name, *sizes)
        model.add_member(name, f"N{start}", f"N{end}", "wood", name)
        # Its own second way may be our first: then the bendings change places.
        own = model.members[name].T()[1, :3]
        if abs(sum(a * b for a, b in zip(own, frame.wides[number], strict=True))) < 0.5:
            model.sections[name].Iy, model.sections[name].Iz = section.bend_wide, section.bend_thick
    for number, (one, two, place, shift, turn) in enumerate(frame.joints):
        if short:
            name = f"J{number}"
            model.add_section(name, 1e6, 1e9, 1e9, 1e9)
            if math.dist(frame.places[one], frame.places[two]) > 1e-6:
                model.add_member(name, f"N{one}", f"N{two}", "wood", name)
            continue
        start_of_rods = arm(f"P{number}", one, place)
        for way, letter in enumerate("XYZ"):
            name = f"Q{number}{letter}"
            end_of_rod = arm(name, two, moved(place, UNITS[way], _SHORT_MM))
            sizes = min(shift[way], 1e6) * _SHORT_MM, 1.0, 1.0, min(turn[way], 1e10) * _SHORT_MM
            model.add_section(name, *sizes)
            model.add_member(name, start_of_rods, end_of_rod, "wood", name)
            model.def_releases(name, Ryi=True, Rzi=True, Ryj=True, Rzj=True)
    for number, (node, place, shift) in enumerate(frame.holds):
        held = f"N{node}" if short else arm(f"G{number}", node, place)
        for way, freedom in enumerate(_FREEDOMS):
            if shift[way]:
                model.def_support_spring(held, freedom, min(shift[way], 1e6))
    for axis in axes:
        model.add_load_combo(f"push {axis}", {f"push {axis}": 1.0})
        for node in top:
            model.add_node_load(f"N{node}", "FXFYFZ"[2 * axis : 2 * axis + 2], 1.0, case=f"push {axis}")
    return model


def swayed(model: FEModel3D, top: list[int], axis: int) -> float:
    """How far the top has moved along an axis under the push along it, the mean of its nodes, mm."""
    return sum(
        float(getattr(model.nodes[f"N{node}"], _FREEDOMS[axis])[f"push {axis}"]) for node in top
    ) / len(top)
