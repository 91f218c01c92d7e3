"""Frames in space as heaps of springs: beams, bars, panels, joints and supports, each linear and exact.

A beam that is even is six springs between its ends, and they act at its elastic centre: there stretch, twist,
two bendings and two shears do not know of one another (the elastic-centre form of the stiffness method, a
textbook result). A turning spring at an end only shifts that centre towards itself. So all that a frame
consists of comes to one thing, a :class:`~reviewer.mechanics.frame_solver.Spring`, the matrix is never
negative, and whatever is added can only make a frame stiffer (Rayleigh).

Places in mm, forces in N, moments in N·mm, turns in rad by the right hand.
"""

from __future__ import annotations

import math
from collections.abc import Mapping

from reviewer.geometry.vectors import UNITS, Vector, cross, minus, moved, unit
from reviewer.mechanics.frame_solver import Factors, Loose, Six, Spring
from reviewer.records import NamedTuple

__all__ = [
    "FIRM",
    "PINNED",
    "RIGID",
    "Bars",
    "Frame",
    "Loose",
    "Section",
    "Six",
    "Turning",
    "rectangle",
]


class Section(NamedTuple):
    """What a beam sets against stretch (E·A, N), twist and bending (G·J, E·I, N·mm²), and shear (G·A, N).

    ``wide`` is bending that shows as a shift along the beam's own ``wide`` way, ``thick`` across it. A shear
    stiffness of infinity leaves shear out.
    """

    stretch: float
    twist: float
    bend_wide: float
    bend_thick: float
    shear_wide: float = math.inf
    shear_thick: float = math.inf


class Turning(NamedTuple):
    """What the end of a beam sets against turning, N·mm a rad: about itself, its wide and its thick way."""

    along: float = math.inf
    wide: float = math.inf
    thick: float = math.inf


FIRM = Turning()
PINNED = Turning(math.inf, 0.0, 0.0)
RIGID: tuple[float, float, float] = (math.inf, math.inf, math.inf)
#: Stands for a joint that gives nothing, N/mm and N·mm a rad: stiffer than any wood, and still solvable.
_UNGIVING = 1e6
_UNGIVING_TURN = 1e10


class Bars(NamedTuple):
    """Two crossed bars that shear as a panel does: the stiffness E·A (N) of each."""

    stretch: float

    @classmethod
    def of_panel(cls, width: float, height: float, shear: float) -> Bars:
        """Of a panel with the shear stiffness G·t (N/mm): E·A = G·t·d³ / (2·b·h), d the diagonal."""
        return cls(shear * math.hypot(width, height) ** 3 / (2 * width * height))


def rectangle(width: float, thickness: float, young: float, shear: float) -> Section:
    """The section of a board: ``young`` and ``shear`` are its moduli along it, MPa.

    The twist of a rectangle is b·t³·(1 - 0.63·t/b·(1 - t⁴/12·b⁴)) / 3 (Roark, from memory); the shear area
    is 5/6 of the section.
    """
    long, short = max(width, thickness), min(width, thickness)
    ratio = short / long
    twist = long * short**3 * (1 / 3 - 0.21 * ratio * (1 - ratio**4 / 12))
    area = width * thickness
    return Section(
        young * area,
        shear * twist,
        young * thickness * width**3 / 12,
        young * width * thickness**3 / 12,
        shear * area * 5 / 6,
        shear * area * 5 / 6,
    )


def _in_a_row(*gives: float) -> float:
    """The stiffness of springs in a row, by how much each gives to one of force."""
    whole = math.fsum(gives)
    return 1 / whole if 0 < whole < math.inf else 0.0


def _give(stiffness: float) -> float:
    return 1 / stiffness if stiffness else math.inf


class Frame:
    """A frame as it is put together. Nodes count from 0."""

    def __init__(self) -> None:
        self.places: list[Vector] = []
        self.springs: list[Spring] = []
        self.fixed: list[tuple[int, int]] = []

    def node(self, place: Vector) -> int:
        """A new node, by number."""
        self.places.append(place)
        return len(self.places) - 1

    def fix(self, node: int, *freedoms: int) -> None:
        """Hold some freedoms of a node (0 to 2 shifts, 3 to 5 turns) where they are."""
        self.fixed += [(node, freedom) for freedom in freedoms]

    def hold(
        self,
        node: int,
        place: Vector,
        shift: tuple[float, float, float],
        turn: tuple[float, float, float] = (0.0, 0.0, 0.0),
    ) -> None:
        """Springs to the ground at a place that the node reaches with a stiff arm, N/mm and N·mm a rad."""
        for way, shifting, turning in zip(UNITS, shift, turn, strict=True):
            if shifting:
                about = cross(minus(place, self.places[node]), way)
                self.springs.append(Spring(min(shifting, _UNGIVING), ((node, (*way, *about)),)))
            if turning:
                spring = Spring(min(turning, _UNGIVING_TURN), ((node, (0.0, 0.0, 0.0, *way)),))
                self.springs.append(spring)

    def beam(
        self,
        start: int,
        end: int,
        section: Section,
        wide: Vector,
        at_start: Turning = FIRM,
        at_end: Turning = FIRM,
    ) -> None:
        """An even beam between two nodes. ``wide`` is a way that its wide side lies in, not along it.

        Raises ValueError where the two nodes are in one place.
        """
        one, two = self.places[start], self.places[end]
        length = math.dist(one, two)
        if length <= 0:
            raise ValueError(f"nodes {start} and {end} are in one place")
        along = unit(minus(two, one))
        thick = unit(cross(along, wide))
        wide = cross(thick, along)
        self._shift(start, end, along, one, section.stretch / length)
        twist = _in_a_row(length / section.twist, _give(at_start.along), _give(at_end.along))
        self._turn(start, end, along, twist)
        if at_start is FIRM and at_end is FIRM:
            # As below, with nothing that gives at the ends: most of a frame is made of these.
            middle = moved(one, along, length / 2)
            for bend, shear, way, about in (
                (section.bend_wide, section.shear_wide, wide, thick),
                (section.bend_thick, section.shear_thick, thick, wide),
            ):
                self._shift(start, end, way, middle, 1 / (length**3 / (12 * bend) + length / shear))
                self._turn(start, end, about, bend / length)
            return
        # Shifted along `wide` it is bent about `thick`, and the other way round.
        for bend, shear, way, about, left, right in (
            (section.bend_wide, section.shear_wide, wide, thick, at_start.thick, at_end.thick),
            (section.bend_thick, section.shear_thick, thick, wide, at_start.wide, at_end.wide),
        ):
            self._bend(start, end, (length, bend, shear), (along, way, about), (_give(left), _give(right)))

    def _bend(
        self,
        start: int,
        end: int,
        beam: tuple[float, float, float],
        ways: tuple[Vector, Vector, Vector],
        gives: tuple[float, float],
    ) -> None:
        length, bend, shear = beam
        along, way, about = ways
        left, right = gives
        own = length / bend
        shearing = length**3 / (12 * bend) + length / shear
        if math.isinf(left) and math.isinf(right):
            return  # pinned at both ends: nothing but a bar
        if math.isinf(left):
            centre, turning = 0.0, math.inf
            shifting = shearing + own * length**2 / 4 + right * length**2
        elif math.isinf(right):
            centre, turning = length, math.inf
            shifting = shearing + own * length**2 / 4 + left * length**2
        else:
            turning = own + left + right
            centre = (own * length / 2 + right * length) / turning
            shifting = (
                shearing
                + own * (length / 2 - centre) ** 2
                + left * centre**2
                + right * (length - centre) ** 2
            )
        place = moved(self.places[start], along, centre)
        self._shift(start, end, way, place, 1 / shifting)
        self._turn(start, end, about, _in_a_row(turning))

    def bar(self, start: int, end: int, stretch: float) -> None:
        """A bar that only pulls and pushes: ``stretch`` is its E·A, N."""
        one, two = self.places[start], self.places[end]
        self._shift(start, end, unit(minus(two, one)), one, stretch / math.dist(one, two))

    def panel(self, corners: tuple[int, int, int, int], shear: float) -> None:
        """A panel that only shears, as a pair of diagonals; ``shear`` is its G·t, N/mm; corners go round."""
        first, second, third, fourth = corners
        width = math.dist(self.places[first], self.places[second])
        height = math.dist(self.places[second], self.places[third])
        bars = Bars.of_panel(width, height, shear)
        self.bar(first, third, bars.stretch)
        self.bar(second, fourth, bars.stretch)

    def joint(
        self,
        one: int,
        two: int,
        place: Vector,
        ways: tuple[Vector, Vector, Vector],
        shift: tuple[float, float, float],
        turn: tuple[float, float, float],
    ) -> None:
        """A joint at a place of its own, to which both nodes reach with arms that do not bend.

        Along and about each of three square ``ways`` it gives by its stiffness: N/mm and N·mm a rad.
        """
        for way, shifting, turning in zip(ways, shift, turn, strict=True):
            self._shift(one, two, way, place, min(shifting, _UNGIVING))
            self._turn(one, two, way, min(turning, _UNGIVING_TURN))

    def _shift(self, one: int, two: int, way: Vector, place: Vector, stiffness: float) -> None:
        """A spring along a way between two nodes, at a place that both reach with stiff arms."""
        if stiffness:
            a, b, c = way
            x, y, z = place
            # The turns' share is the arm crossed with the way; written out, as most of a frame is made here.
            k, m, n = self.places[one]
            k, m, n = x - k, y - m, z - n
            p, q, r = self.places[two]
            p, q, r = x - p, y - q, z - r
            first = (-a, -b, -c, n * b - m * c, k * c - n * a, m * a - k * b)
            second = (a, b, c, q * c - r * b, r * a - p * c, p * b - q * a)
            self.springs.append(Spring(stiffness, ((one, first), (two, second))))

    def _turn(self, one: int, two: int, way: Vector, stiffness: float) -> None:
        if stiffness:
            a, b, c = way
            first, second = (0.0, 0.0, 0.0, -a, -b, -c), (0.0, 0.0, 0.0, a, b, c)
            self.springs.append(Spring(stiffness, ((one, first), (two, second))))

    def factors(self, most: float = math.inf) -> Factors:
        """The frame made ready for any number of loads; its ``loose`` says what nothing holds.

        Raises :class:`~reviewer.mechanics.frame_solver.TooLargeError` past so much work.
        """
        return Factors(len(self.places), self.springs, self.fixed, most)

    def solve(self, loads: Mapping[int, Six]) -> tuple[Six, ...] | Loose:
        """How every node moves under loads by node, or what of it nothing holds: never a number then."""
        ready = self.factors()
        return ready.loose if ready.loose is not None else ready.solve(dict(loads))
