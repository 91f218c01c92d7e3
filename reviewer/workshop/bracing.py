"""Slanting members as struts and ties: what pulls and presses them when a piece is pushed at its top.

Legs that splay as far as a brace are asked the same.

A brace has no load of its own that statics alone could bring down, so it is asked of the frame of the piece
(``swaying_frame``): everything the parts weigh and carry, and the push of ``sway-force`` either way, side to
side and front to back. Both ends of the joints' ranges are taken, and the worse one counts.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import TYPE_CHECKING

from reviewer.model.plan import Axis
from reviewer.records import NamedTuple
from reviewer.reference.joint_stiffness import End
from reviewer.reference.usual_values import usual_value
from reviewer.workshop.columns import Column, column
from reviewer.workshop.swaying_structure import structure

if TYPE_CHECKING:
    from reviewer.review import Review
    from reviewer.workshop.standing import Piece
    from reviewer.workshop.swaying_frame import Budget

_ENDS: tuple[End, End] = ("stiff", "soft")
#: The work that all frames for braces of a plan may take, in the blocks that the solver counts.
_MOST_WORK = 20_000
_MOST_PARTS = 200


class Brace(NamedTuple):
    """A slanting part: the most that pulls and that presses it along itself (N), and the part as a column.

    ``brief`` is the share of the harder of the two that does not stay: the push, people.
    """

    part: str
    pulled: float
    pressed: float
    brief: float
    column: Column


def braces(review: Review) -> Iterator[Brace]:
    """Every brace that the frame of its piece can be asked about; none of a frame that nothing holds."""
    leaning = frozenset(
        name
        for name, solid in review.setting.solids.items()
        if solid.body is not None and _slants(solid.directions[0])
    )
    if not leaning or not review.plan.joins:
        return
    from reviewer.workshop.swaying_frame import Budget

    budget = Budget(_MOST_WORK)
    for piece in review.pieces:
        if piece.feet and len(piece.parts) <= _MOST_PARTS and not leaning.isdisjoint(piece.parts):
            yield from _of_piece(review, piece, budget)


def _slants(along: tuple[float, float, float]) -> bool:
    """Whether a board runs slanting to all three ways of the piece: a brace, a strut or a splayed leg."""
    return max(abs(each) for each in along) < math.cos(math.radians(usual_value("brace-slant")))


def _of_piece(review: Review, piece: Piece, budget: Budget) -> Iterator[Brace]:
    from reviewer.mechanics.frame_solver import TooLargeError, UnsolvedError
    from reviewer.workshop.swaying_frame import along_rods, mechanism

    push = review.limit("sway-force").amount
    loads = {
        name: (
            review.masses[name].weight + math.fsum(each.lasting for each in review.declared.get(name, ())),
            math.fsum(each.brief for each in review.declared.get(name, ())),
        )
        for name in piece.parts
        if name in review.masses
    }
    worst: dict[str, tuple[float, float, float, float]] = {}
    for end in _ENDS:
        standing = structure(review, piece, end)
        if standing is None or standing.height <= 0 or not standing.joined():
            return
        asked = [name for name, rod in standing.rods.items() if _slants(rod.directions[0])]
        try:
            if any(mechanism(standing, axis, budget) for axis in (Axis.ACROSS, Axis.DEEP)):
                return  # told by racks; friction alone is no figure
            found = along_rods(standing, asked, push, loads, budget)
        except (TooLargeError, UnsolvedError):
            return
        for name, (pulled, pressed, brief, free) in found.items():
            known = worst.get(name, (0.0, 0.0, 0.0, 0.0))
            harder = max(pulled, pressed) > max(known[:2])
            worst[name] = (
                max(pulled, known[0]),
                max(pressed, known[1]),
                brief if harder else known[2],
                max(free, known[3]),
            )
    for name, (pulled, pressed, brief, free) in worst.items():
        shape = review.plan.parts[name].shape
        one = column(name, review.setting.solids[name], review.stock_of(name), shape, review.setting)
        # Between its joints, and along itself: what the frame tells is no force straight down.
        yield Brace(name, pulled, pressed, brief, one._replace(free=free, upright=1.0))
