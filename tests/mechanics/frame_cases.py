"""Random frames in space, put together both by us and by the general structural solver."""

from __future__ import annotations

import random

from Pynite import FEModel3D

from reviewer.mechanics.frame import FIRM, PINNED, Frame, Section, Six

_TURNS = ("RX", "RY", "RZ")


class FrameCase:
    """A frame of one to three bays by one or two, of one to three storeys, on feet of every kind.

    Some rails are pinned at one end, some bays are braced with bars, some filled with a panel; feet are
    clamped, or stand on springs against turning, or on pins where the rails above are firm.
    """

    def __init__(self, seed: int, size: tuple[int, int, int] | None = None) -> None:
        self.draw = random.Random(seed)
        self.ours = Frame()
        self.theirs = FEModel3D()
        self.theirs.add_material("wood", 1.0, 1.0, 0.3, 0.0)
        self.loads: dict[int, Six] = {}
        self._members = 0
        draw = self.draw
        drawn = (draw.randint(1, 3), draw.randint(1, 2), draw.randint(1, 3))
        bays, rows, storeys = size or drawn
        nodes: dict[tuple[int, int, int], int] = {}
        for x in range(bays + 1):
            for y in range(rows + 1):
                for z in range(storeys + 1):
                    wander = [draw.uniform(-60, 60) for _ in range(3)]
                    nodes[x, y, z] = self.node(500 * x + wander[0], 400 * y + wander[1], 600 * z + wander[2])
        pinned_feet = draw.random() < 0.3
        for (x, y, z), node in nodes.items():
            if z == 0:
                self.foot(node, pinned_feet)
            else:
                self.beam(nodes[x, y, z - 1], node)
                for other in ((x - 1, y, z), (x, y - 1, z)):
                    if other in nodes:
                        self.beam(nodes[other], node, draw.random() < 0.2)
                if x and draw.random() < 0.2:
                    self.bar(nodes[x - 1, y, z - 1], node)
                if y and draw.random() < 0.1:
                    self.panel(nodes[x, y - 1, z - 1], nodes[x, y, z - 1], node, nodes[x, y - 1, z])
                if draw.random() < 0.5:
                    self.load(node)
        self.load(nodes[0, 0, storeys])

    def node(self, *place: float) -> int:
        number = self.ours.node((place[0], place[1], place[2]))
        self.theirs.add_node(f"N{number}", *place)
        return number

    def foot(self, node: int, pinned: bool) -> None:
        sprung = not pinned and self.draw.random() < 0.5
        self.theirs.def_support(f"N{node}", True, True, True, *[not (pinned or sprung)] * 3)
        self.ours.fix(node, 0, 1, 2, *(() if pinned or sprung else (3, 4, 5)))
        if sprung:
            for number, turn in enumerate(_TURNS):
                stiffness = 10 ** self.draw.uniform(5, 9)
                about = [0.0, 0.0, 0.0]
                about[number] = stiffness
                place = self.ours.places[node]
                self.ours.hold(node, place, (0.0, 0.0, 0.0), (about[0], about[1], about[2]))
                self.theirs.def_support_spring(f"N{node}", turn, stiffness)

    def beam(self, start: int, end: int, pin: bool = False) -> None:
        draw = self.draw
        width, thickness = draw.uniform(30, 120), draw.uniform(18, 45)
        young = draw.uniform(6000, 14000)
        area, wide, thick = width * thickness, thickness * width**3 / 12, width * thickness**3 / 12
        twist = draw.uniform(0.05, 0.3) * wide
        at_end = PINNED if pin else FIRM
        # The other solver's material has moduli of 1, so that its section holds the whole stiffness.
        name = self._member(start, end, (young * area, young * thick, young * wide, young / 16 * twist))
        if pin:
            self.theirs.def_releases(name, Ryj=True, Rzj=True)
        section = Section(young * area, young / 16 * twist, young * wide, young * thick)
        own = self.theirs.members[name].T()[1, :3]
        self.ours.beam(start, end, section, (float(own[0]), float(own[1]), float(own[2])), FIRM, at_end)

    def _member(self, start: int, end: int, stiffness: tuple[float, float, float, float]) -> str:
        self._members += 1
        name = f"M{self._members}"
        self.theirs.add_section(name, *stiffness)
        self.theirs.add_member(name, f"N{start}", f"N{end}", "wood", name)
        return name

    def bar(self, start: int, end: int, stretch: float | None = None) -> None:
        stretch = stretch or 10 ** self.draw.uniform(4, 7)
        name = self._member(start, end, (stretch, 1.0, 1.0, 1e-6))
        self.theirs.def_releases(name, Ryi=True, Rzi=True, Ryj=True, Rzj=True)
        self.ours.bar(start, end, stretch)

    def panel(self, one: int, two: int, three: int, four: int) -> None:
        shear = 10 ** self.draw.uniform(1, 4)
        before = len(self.ours.springs)
        self.ours.panel((one, two, three, four), shear)
        assert len(self.ours.springs) == before + 2
        width = self.theirs.nodes[f"N{one}"].distance(self.theirs.nodes[f"N{two}"])
        height = self.theirs.nodes[f"N{two}"].distance(self.theirs.nodes[f"N{three}"])
        stretch = shear * (width**2 + height**2) ** 1.5 / (2 * width * height)
        for start, end in ((one, three), (two, four)):
            name = self._member(start, end, (stretch, 1.0, 1.0, 1e-6))
            self.theirs.def_releases(name, Ryi=True, Rzi=True, Ryj=True, Rzj=True)

    def load(self, node: int) -> None:
        forces = [self.draw.uniform(-300, 300) for _ in range(3)]
        moments = [self.draw.uniform(-2e4, 2e4) for _ in range(3)]
        before = self.loads.get(node, (0.0,) * 6)
        a, b, c, d, e, f = (old + new for old, new in zip(before, forces + moments, strict=True))
        self.loads[node] = (a, b, c, d, e, f)
        for name, amount in zip(("FX", "FY", "FZ", "MX", "MY", "MZ"), forces + moments, strict=True):
            self.theirs.add_node_load(f"N{node}", name, amount)

    def solve_theirs(self) -> list[tuple[float, ...]]:
        self.theirs.analyze_linear(check_stability=False, sparse=False)
        return [
            tuple(
                float(getattr(self.theirs.nodes[f"N{number}"], name)["Combo 1"])
                for name in ("DX", "DY", "DZ", "RX", "RY", "RZ")
            )
            for number in range(len(self.ours.places))
        ]
