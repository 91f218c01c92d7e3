"""A board as a beam on the supports that bear: solved once for all its copies."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterable, Sequence

from reviewer.mechanics.beam import BeamResult, Unstable, solve_beam
from reviewer.mechanics.beam_loads import LineLoad, PointLoad
from reviewer.records import NamedTuple
from reviewer.workshop.loading import Carried, Spread


class Beam(NamedTuple):
    """A board as a beam: its length (mm), bending stiffness (N·mm²), loads and creep.

    Rounded far below what matters, so that copies of one board are one beam.
    """

    length: float
    bending_stiffness: float
    uniform: tuple[float, float]
    spreads: tuple[Spread, ...]
    points: tuple[Carried, ...]
    creep: float
    clamped: bool

    def sharing(self, share: float) -> Beam:
        """The beam with its own share of stiffness and loads."""
        if share == 1.0:
            return self
        return self._replace(
            bending_stiffness=self.bending_stiffness * share,
            uniform=(self.uniform[0] * share, self.uniform[1] * share),
            spreads=tuple(Spread(a, b, slow * share, quick * share) for a, b, slow, quick in self.spreads),
            points=tuple(Carried(at, slow * share, quick * share) for at, slow, quick in self.points),
        )

    def solved(self, places: Iterable[float], growth: float = 1.0) -> BeamResult | Unstable:
        """The beam on some supports, its lasting loads ``growth`` times."""
        whole = LineLoad(0.0, self.length, growth * self.uniform[0] + self.uniform[1])
        lines = [LineLoad(each.start, each.end, growth * each.lasting + each.brief) for each in self.spreads]
        forces = [PointLoad(each.at, growth * each.lasting + each.brief) for each in self.points]
        edges: Iterable[float] = () if self.clamped else places
        clamps: Iterable[float] = places if self.clamped else ()
        return solve_beam(self.length, edges, self.bending_stiffness, forces, [whole, *lines], clamps)


#: A pull smaller than this is none.
_LEAST_PULL_N = 1e-6
#: Where a beam is held, and whether it is held down there too.
Along = tuple[tuple[float, bool], ...]
#: The supports that bear (by their number), the beam under its loads, and the same in the long run.
Stood = tuple[tuple[int, ...], BeamResult | Unstable, BeamResult | Unstable]


def rounded_place(mm: float) -> float:
    """A place without the last digits, in which a copy elsewhere in the piece differs."""
    return round(mm, 6)


def rounded_size(amount: float) -> float:
    """A force or stiffness without the last digits, likewise."""
    return float(f"{amount:.12g}")


def rounded(load: Carried) -> Carried:
    """A force without the last digits of its place and size."""
    return Carried(rounded_place(load.at), rounded_size(load.lasting), rounded_size(load.brief))


def rounded_spread(load: Spread) -> Spread:
    """A load on a stretch without the last digits of its places and size."""
    start, end, lasting, brief = load
    return Spread(rounded_place(start), rounded_place(end), rounded_size(lasting), rounded_size(brief))


def stood(beam: Beam, share: float, along: Along) -> Stood:
    """The beam on those of its supports that bear: a mere rest that would have to pull it down lets go.

    Of the beams that bend as one this one carries ``share`` of the loads itself: that is how it stands.
    """
    kept, own = tuple(range(len(along))), beam.sharing(share)
    while True:
        standing = own.solved([along[index][0] for index in kept])
        if isinstance(standing, Unstable):
            return kept, standing, standing
        gone = _lifted(along, kept, standing)
        if not gone:
            return kept, standing, beam.solved([along[index][0] for index in kept], beam.creep)
        kept = tuple(index for index in kept if index not in gone)


def _lifted(along: Along, kept: tuple[int, ...], standing: BeamResult) -> set[int]:
    """The supports that let go: of each run of neighbours that would pull, those that pull most."""
    gone: set[int] = set()
    worst: tuple[float, list[int]] | None = None
    for force, here in at_reactions([along[index][0] for index in kept], standing):
        indexes = [kept[each] for each in here]
        pulls = force < -_LEAST_PULL_N and not any(along[index][1] for index in indexes)
        if pulls and (worst is None or force < worst[0]):
            worst = force, indexes
        elif not pulls and worst is not None:
            gone.update(worst[1])
            worst = None
    if worst is not None:
        gone.update(worst[1])
    return gone


def at_reactions(places: Sequence[float], standing: BeamResult) -> list[tuple[float, list[int]]]:
    """Each reaction of a beam (N) with the supports, by number, that it took for that one."""
    where = [reaction.at for reaction in standing.reactions]
    found: list[tuple[float, list[int]]] = [(each.force, []) for each in standing.reactions]
    for number, place in enumerate(places):
        near = bisect_left(where, place)
        if near == len(where) or (near and place - where[near - 1] <= where[near] - place):
            near -= 1
        found[near][1].append(number)
    return found
