"""Cutting layouts for boards: which bars to buy, and whether the bars at hand give all pieces.

The saw turns ``kerf`` mm to dust at every cut. A bar of usable length U gives n pieces when their
lengths and the n - 1 cuts between them come to no more than U. What is then left beyond the last
piece needs one more cut: the blade takes its kerf from it and the rest is the offcut; where less than
a kerf is left the blade takes all of it, and where nothing is left there is no last cut. So more kerf
never makes a piece fit, and a longer bar never makes one not fit.

``trim`` mm are lost at each end of every bar for checks, paint and ends out of square; the cut that
squares an end is part of it. Lengths are mm and compared with the one tolerance of
:mod:`reviewer.units`, once per bar. Every piece comes out of one bar whole.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from typing import Literal

from reviewer.records import NamedTuple
from reviewer.units import TOLERANCE_MM
from reviewer.workshop.bar_search import Found, search_layout
from reviewer.workshop.outcomes import Addition, CannotFit, Chosen, Fits, Proof, Undecided
from reviewer.workshop.quick_layouts import BarKind, Use

#: Whole steps per mm inside the search: every 1/64 in is a whole number of them.
TICKS_PER_MM = 1_000_000
#: Whole steps per unit of money: a hundredth of a cent.
TICKS_PER_MONEY = 10_000


class Piece(NamedTuple):
    """A piece to cut: its name and its length, mm."""

    name: str
    length: float


@dataclass(frozen=True)
class Bar:
    """Bars of one length, mm: on offer, in the basket or to buy. ``count`` None: as many as wanted."""

    length: float
    price: float | None = None
    count: int | None = None


class Cut(NamedTuple):
    """A piece in its bar: ``start`` is measured from the bar's sawn or bought end, mm."""

    name: str
    start: float
    length: float


class CutBar(NamedTuple):
    """One bar and its pieces from one end to the other; ``offcut`` is what is left to use, mm."""

    length: float
    price: float | None
    cuts: tuple[Cut, ...]
    offcut: float


@dataclass(frozen=True)
class BarLayout:
    """Bars and what comes out of each; the longest bar first."""

    bars: tuple[CutBar, ...]
    kerf: float
    trim: float

    @property
    def bought(self) -> tuple[Bar, ...]:
        """The bars by length and price, with how many of each."""
        numbers: dict[tuple[float, float | None], int] = {}
        for bar in self.bars:
            numbers[bar.length, bar.price] = numbers.get((bar.length, bar.price), 0) + 1
        return tuple(Bar(length, price, number) for (length, price), number in numbers.items())

    @property
    def length(self) -> float:
        """All bars end to end, mm."""
        return math.fsum(bar.length for bar in self.bars)

    @property
    def cut_length(self) -> float:
        """All pieces end to end, mm."""
        return math.fsum(cut.length for bar in self.bars for cut in bar.cuts)

    @property
    def price(self) -> float | None:
        """What the bars cost together; None when the price of one is not known."""
        return sum_of_prices(bar.price for bar in self.bars)

    @property
    def waste(self) -> float:
        """The share of the bars that ends up in no piece, percent: dust, trimmed ends and offcuts."""
        return 100 * (1 - self.cut_length / self.length) if self.bars else 0.0


BarsChosen = Chosen[BarLayout]
BarsFit = Fits[BarLayout, Bar]
BarsCannotFit = CannotFit[BarLayout, Piece, Bar]
BarsUndecided = Undecided[BarLayout, Piece, Bar]


def sum_of_prices(prices: Iterable[float | None]) -> float | None:
    """The prices together, or None when one is missing."""
    total: list[float] = []
    for price in prices:
        if price is None:
            return None
        total.append(price)
    return round(math.fsum(total), 4)


def in_ticks(length_mm: float) -> int:
    """A length as a whole number of steps."""
    return round(length_mm * TICKS_PER_MM)


def check_lengths(what: str, lengths: Iterable[float]) -> None:
    """Raise ValueError unless every length is a number above nothing."""
    for length in lengths:
        if not (math.isfinite(length) and length > 0):
            raise ValueError(f"{what} must have a length above nothing, not {length!r} mm")


class _Bench:
    """The pieces grouped by length and the bars as the search takes them."""

    def __init__(self, pieces: Sequence[Piece], bars: Sequence[Bar], kerf: float, trim: float) -> None:
        check_lengths("a piece", (piece.length for piece in pieces))
        check_lengths("a bar", (bar.length for bar in bars))
        if not (math.isfinite(kerf) and math.isfinite(trim) and kerf >= 0 and trim >= 0):
            raise ValueError(f"kerf and trim cannot be below nothing: {kerf!r} mm, {trim!r} mm")
        self.kerf, self.trim, self.bars = kerf, trim, tuple(bars)
        self.groups: dict[int, list[Piece]] = {}
        for piece in pieces:
            self.groups.setdefault(in_ticks(piece.length), []).append(piece)
        lengths = sorted(self.groups, reverse=True)
        self.groups = {length: self.groups[length] for length in lengths}
        self.sizes = [length + in_ticks(kerf) for length in lengths]
        self.demand = [len(self.groups[length]) for length in lengths]

    def capacity(self, bar: Bar) -> int:
        """What the sizes (each with one kerf) in a bar may come to; 0 when trimming leaves nothing."""
        usable = in_ticks(bar.length) - 2 * in_ticks(self.trim)
        return usable + in_ticks(self.kerf) + in_ticks(TOLERANCE_MM) if usable > 0 else 0

    def usable(self, bar: Bar) -> float:
        """The length of a bar without its trimmed ends, mm."""
        return max(0.0, bar.length - 2 * self.trim)

    def search(self, costs: Sequence[int], free: int = 0) -> Found:
        """The search over all bars; the first ``free`` of them cost nothing and are not counted."""
        kinds = [
            BarKind(self.capacity(bar), 0 if place < free else cost, place >= free, bar.count)
            for place, (bar, cost) in enumerate(zip(self.bars, costs, strict=True))
        ]
        return search_layout(self.sizes, self.demand, kinds)

    def layout(self, uses: Sequence[Use]) -> tuple[BarLayout, tuple[Piece, ...]]:
        """The patterns with the pieces' names put in, plan order, and the pieces that are left."""
        queues = [iter(group) for group in self.groups.values()]

        def order(use: Use) -> tuple[float, tuple[tuple[int, int], ...], int]:
            return (-self.bars[use.kind].length, tuple((i, -number) for i, number in use.cuts), use.kind)

        made: list[CutBar] = []
        for use in sorted(uses, key=order):
            bar = self.bars[use.kind]
            for _ in range(use.times):
                cuts: list[Cut] = []
                start = self.trim
                for index, number in use.cuts:
                    for _ in range(number):
                        piece = next(queues[index])
                        cuts.append(Cut(piece.name, start, piece.length))
                        start += piece.length + self.kerf
                offcut = max(0.0, bar.length - self.trim - start)
                made.append(CutBar(bar.length, bar.price, tuple(cuts), offcut))
        left = tuple(piece for queue in queues for piece in queue)
        return BarLayout(tuple(made), self.kerf, self.trim), left

    # ------------------------------------------------------------ proofs

    def too_big(self) -> Proof[Piece] | None:
        widest = max((self.capacity(bar) for bar in self.bars if bar.count != 0), default=0)
        if not widest:
            return None
        kerf = in_ticks(self.kerf)
        pieces = tuple(p for length, group in self.groups.items() if length + kerf > widest for p in group)
        longest = max(self.usable(bar) for bar in self.bars if bar.count != 0)
        return Proof("too big", pieces, pieces[0].length, longest) if pieces else None

    def material(self, by: Literal["material", "every way"]) -> Proof[Piece]:
        bars = [(bar, bar.count or 0) for bar in self.bars if self.capacity(bar)]
        pieces = tuple(piece for group in self.groups.values() for piece in group)
        cuts = max(0, len(pieces) - sum(count for _, count in bars))
        needed = math.fsum(piece.length for piece in pieces) + cuts * self.kerf
        return Proof(by, pieces, needed, math.fsum(self.usable(bar) * count for bar, count in bars))

    def short_of_material(self) -> bool:
        there = sum(self.capacity(bar) * (bar.count or 0) for bar in self.bars)
        return sum(size * number for size, number in zip(self.sizes, self.demand, strict=True)) > there

    def number(self) -> Proof[Piece] | None:
        """The length from which on the bars give fewest too few pieces, if there is one."""
        worst, worst_at, available_at = 0, -1, 0
        wanted = 0
        for place, (size, number) in enumerate(zip(self.sizes, self.demand, strict=True)):
            wanted += number
            available = sum((self.capacity(bar) // size) * (bar.count or 0) for bar in self.bars)
            if wanted - available > worst:
                worst, worst_at, available_at = wanted - available, place, available
        if worst_at < 0:
            return None
        groups = list(self.groups.values())[: worst_at + 1]
        pieces = tuple(piece for group in groups for piece in group)
        return Proof("number", pieces, len(pieces), available_at)

    def proof(self, found: Found) -> Proof[Piece] | None:
        """The simplest reason why it cannot be, or None when there is none yet."""
        too_big = self.too_big()
        if too_big:
            return too_big
        if all(bar.count is not None for bar in self.bars):
            if self.short_of_material():
                return self.material("material")
            number = self.number()
            if number:
                return number
        return self.material("every way") if found.proven else None


def _numbers(bars: Sequence[Bar], uses: Sequence[Use]) -> list[int]:
    numbers = [0] * len(bars)
    for use in uses:
        numbers[use.kind] += use.times
    return numbers


def _untouched(bars: Sequence[Bar], numbers: Sequence[int]) -> tuple[Bar, ...]:
    return tuple(
        bar if bar.count is None else replace(bar, count=bar.count - number)
        for bar, number in zip(bars, numbers, strict=True)
        if bar.count is None or bar.count > number
    )


def choose_bars(
    pieces: Sequence[Piece], offers: Sequence[Bar], kerf: float, trim: float = 0.0
) -> BarsChosen | BarsCannotFit | BarsUndecided:
    """The cheapest bars that give all pieces, and how to cut them.

    Cheapest by price when every offer has one, else the least length bought; then the fewest bars.
    ``kerf`` and ``trim`` are mm. For a household's pieces the answer is proven (``Chosen.proven``);
    thousands of pieces get a good layout and a bound. Raises ValueError for a length that is none.
    """
    bench = _Bench(pieces, offers, kerf, trim)
    prices = [bar.price for bar in offers]
    by_price = sum_of_prices(prices) is not None
    costs = [
        round((bar.price or 0.0) * TICKS_PER_MONEY) if by_price else in_ticks(bar.length) for bar in offers
    ]
    found = bench.search(costs)
    if found.uses is not None:
        layout, _ = bench.layout(found.uses)
        at_least = found.cost_at_least / (TICKS_PER_MONEY if by_price else TICKS_PER_MM)
        return Chosen(layout, found.proven, at_least, "price" if by_price else "length")
    best, left = bench.layout(found.nearest)
    proof = bench.proof(found)
    return CannotFit(proof, best, left, None) if proof else Undecided(best, left, None)


def fit_in_basket(
    pieces: Sequence[Piece],
    bars: Sequence[Bar],
    kerf: float,
    trim: float = 0.0,
    offers: Sequence[Bar] = (),
) -> BarsFit | BarsCannotFit | BarsUndecided:
    """Whether the bars give all pieces, with the layout or with the proof that there is none.

    A layout that fits uses the least length of the basket that the search finds. When it does not fit,
    ``offers`` are what may be added. ``kerf`` and ``trim`` are mm. Raises ValueError for a length that
    is none.
    """
    bench = _Bench(pieces, bars, kerf, trim)
    found = bench.search([in_ticks(bar.length) for bar in bars])
    if found.uses is not None:
        return Fits(bench.layout(found.uses)[0], _untouched(bars, _numbers(bars, found.uses)))
    best, left = bench.layout(found.nearest)
    proof = bench.proof(found)
    addition = None
    if offers:
        wider = _Bench(pieces, [*bars, *offers], kerf, trim)
        more = wider.search([in_ticks(bar.length) for bar in wider.bars], free=len(bars))
        if more.uses is not None:
            layout, numbers = wider.layout(more.uses)[0], _numbers(wider.bars, more.uses)
            there, bought = numbers[: len(bars)], numbers[len(bars) :]
            if not any(bought):  # the second look found what the first did not
                return Fits(layout, _untouched(bars, there))
            buy = tuple(replace(bar, count=n) for bar, n in zip(offers, bought, strict=True) if n)
            addition = Addition(buy, layout, more.proven)
    return CannotFit(proof, best, left, addition) if proof else Undecided(best, left, addition)
