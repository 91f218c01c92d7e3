"""How a question about cutting can end, for boards and sheets alike.

``L`` is a layout, ``P`` a piece, ``S`` stock: bars or sheets.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Generic, Literal, TypeVar

L = TypeVar("L")
P = TypeVar("P")
S = TypeVar("S")


@dataclass(frozen=True)
class Proof(Generic[P]):
    """Why no layout can exist.

    ``too big``: ``pieces`` are those that no bar or sheet holds even alone; ``needed`` is the size of
    the first that is too much and ``available`` the most there is that way, mm. ``material``: all pieces
    (of boards with the least cuts between them) against all there is, mm (sheets: mm²). ``number``:
    ``pieces`` are so many that the bars give too few of even the smallest of them (sheets: too few side
    by side); ``needed`` and ``available`` are counts.
    ``every way``: every layout was tried or ruled out; the figures are those of ``material``, which
    alone would have been enough.
    """

    by: Literal["too big", "material", "number", "every way"]
    pieces: tuple[P, ...]
    needed: float
    available: float


@dataclass(frozen=True)
class Addition(Generic[L, S]):
    """What to buy besides, tried: ``layout`` cuts everything from the basket and ``buy`` together.

    ``proven``: no shorter addition from the same offers will do.
    """

    buy: tuple[S, ...]
    layout: L
    proven: bool


@dataclass(frozen=True)
class Chosen(Generic[L]):
    """The cheapest layout found, by what ``measure`` says.

    ``proven``: none is cheaper. ``at_least``: a bound that none beats, in money, mm or mm².
    """

    layout: L
    proven: bool
    at_least: float
    measure: Literal["price", "length", "area"]


@dataclass(frozen=True)
class Fits(Generic[L, S]):
    """Everything comes out. ``untouched`` are the bars or sheets that this layout leaves whole."""

    layout: L
    untouched: tuple[S, ...]


@dataclass(frozen=True)
class CannotFit(Generic[L, P, S]):
    """Proven: not everything comes out.

    ``best`` is the layout found that leaves least out, ``left_over`` the pieces that it leaves without
    a home, largest first. ``addition`` is None when no offer helps or none was given.
    """

    proof: Proof[P]
    best: L
    left_over: tuple[P, ...]
    addition: Addition[L, S] | None


@dataclass(frozen=True)
class Undecided(Generic[L, P, S]):
    """No layout was found and none was ruled out within the effort; fields as in :class:`CannotFit`."""

    best: L
    left_over: tuple[P, ...]
    addition: Addition[L, S] | None
