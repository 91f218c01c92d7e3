"""A part that spans, as a beam with its supports and loads."""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import replace
from typing import TYPE_CHECKING

from reviewer.mechanics.beam import BeamResult, Unstable
from reviewer.records import NamedTuple, dataclass
from reviewer.units import TOLERANCE_MM
from reviewer.workshop.bearing import Bearing
from reviewer.workshop.bending import Beam
from reviewer.workshop.holding import Held
from reviewer.workshop.loading import Carried, Declared, Spread, placed

if TYPE_CHECKING:
    from reviewer.workshop.end_cuts import EndCut
    from reviewer.workshop.net_sections import NetSection


class Beside(NamedTuple):
    """A beam that a part lies along: where it bears, and its bending stiffness, N·mm²."""

    bearing: Bearing
    stiffness: float


@dataclass(frozen=True)
class Member:
    """A part that spans: its axis, its supports along it, its loads and its solved beam.

    Places are mm from the part's low end, ``width`` and ``height`` its section as it bends.
    ``bearings`` are the stretches that its supports hold and ``supports`` the knife edges they are
    reckoned as. ``uniform`` is lasting and brief N/mm over the whole length, ``own`` the part of the
    lasting that it weighs itself; ``spreads`` and ``points`` come on top. All of these are made of
    ``declared``, the loads of the plan, and ``arrived``, the forces of what it holds up. ``sag`` is
    solved with the lasting loads grown by creep, ``standing`` with all loads as they are, for reactions.
    ``clamped`` is a part let into its only support, which keeps it from turning.

    ``stiffened`` is the bending stiffness (N·mm²) of what is fixed along it and bends with it, ``beside``
    that of the beams that it lies along and shares its load with: it carries ``share`` of it itself.
    ``sag`` holds all of that; ``standing`` is the part's own share.

    ``sections`` are the stretches where cuts and joints leave less than the bounds, and ``weakness`` how
    much farther it sags for that. ``ends`` are the cuts over its outer supports.
    """

    part: str
    axis: int
    length: float
    width: float
    height: float
    bearings: tuple[Bearing, ...]
    supports: tuple[tuple[float, Held], ...]
    uniform: tuple[float, float]
    own: float
    spreads: tuple[Spread, ...]
    points: tuple[Carried, ...]
    declared: tuple[Declared, ...]
    arrived: tuple[Carried, ...]
    modulus: float
    second_moment: float
    stiffened: float
    beside: tuple[Beside, ...]
    creep: float
    clamped: bool
    sag: BeamResult | Unstable
    standing: BeamResult | Unstable
    sections: tuple[NetSection, ...] = ()
    weakness: float = 1.0
    ends: tuple[EndCut, ...] = ()

    @property
    def places(self) -> tuple[float, ...]:
        return tuple(at for at, _ in self.supports)

    @property
    def share(self) -> float:
        own = self.modulus * self.second_moment + self.stiffened
        return own / (own + math.fsum(each.stiffness for each in self.beside))

    @property
    def outer(self) -> tuple[float, float]:
        """From where to where along the part its bearings reach, mm from its low end."""
        return min(each.start for each in self.bearings), max(each.end for each in self.bearings)

    def free_end(self, share: float) -> int | None:
        """The end with nothing under it (0 low, 1 high); None for a part that its supports keep level.

        So it is when all of them lie under one half, when it would tip, and when it lies loose on one
        support and sticks out past it by more than ``share`` of that support's length.
        """
        if self.clamped:
            return None
        low, high = self.outer
        half, reach = self.length / 2, max(low, self.length - high)
        one_half = high < half - TOLERANCE_MM or low > half + TOLERANCE_MM
        loose = len(self.bearings) == 1 and not self.bearings[0].held.joined
        balances = loose and reach > share * (high - low) + TOLERANCE_MM
        if isinstance(self.standing, BeamResult) and not one_half and not balances:
            return None
        return 1 if low + high <= self.length else 0

    @property
    def own_share(self) -> float:
        """The share of its standing moments that it bears itself, not what is fixed along it."""
        own = self.modulus * self.second_moment
        return own / (own + self.stiffened)

    def again(
        self,
        times_height: float = 1.0,
        more: Iterable[float] = (),
        times_length: float = 1.0,
        growth: float | None = None,
    ) -> BeamResult | Unstable:
        """The long-term sag of the same part so many times as high or as long, or with more supports.

        What stands on a spot that the plan does not name moves to where it then does most. Loads by length
        or area shrink with the part, the rest does not. ``growth`` of the lasting loads is that of creep
        where none is given; with 1 it is how the whole of what bends together stands.
        """
        places = sorted(place * times_length for place in (*self.places, *more))
        length = self.length * times_length
        declared = [each.shrunk(times_length) for each in self.declared]
        uniform, spreads, points = placed(declared, places, length, self.axis)
        return Beam(
            length,
            self.modulus * self.second_moment * times_height**3 / self.weakness
            + self.stiffened
            + math.fsum(each.stiffness for each in self.beside),
            (self.own * times_height + uniform[0], uniform[1]),
            tuple(spreads),
            (*points, *(each._replace(at=each.at * times_length) for each in self.arrived)),
            self.creep,
            self.clamped and len(places) == 1,
        ).solved(places, self.creep if growth is None else growth)

    def retried(
        self, times_height: float = 1.0, more: Iterable[float] = (), times_length: float = 1.0
    ) -> Member:
        """The same part so many times as high or as long, or with more supports: a remedy, tried.

        Its cuts grow with its height, to be cautious. What bends with it counts as fixed along it.
        """
        more = tuple(more)
        return replace(
            self,
            length=self.length * times_length,
            height=self.height * times_height,
            bearings=tuple(
                each._replace(start=each.start * times_length, end=each.end * times_length)
                for each in self.bearings
            ),
            second_moment=self.second_moment * times_height**3,
            stiffened=self.stiffened + math.fsum(each.stiffness for each in self.beside),
            beside=(),
            sag=self.again(times_height, more, times_length),
            standing=self.again(times_height, more, times_length, 1.0),
            sections=tuple(each.scaled(times_height, times_length) for each in self.sections),
            ends=tuple(each.scaled(times_height, times_length) for each in self.ends),
        )
