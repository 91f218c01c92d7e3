"""Leaning parts as their neighbours meet them: where a slanting face stands at the height of another part."""

from __future__ import annotations

import math
from collections.abc import Iterable
from typing import Literal

from reviewer.model.plan import Axis, Edge, Relation, Slope, Term
from reviewer.model.rows import Copied, Row
from reviewer.model.shapes import Lean
from reviewer.records import NamedTuple

#: Stands for a part's own name until each copy has its own.
OWN = ""


class Leaner(NamedTuple):
    """A leaning part: its lean, the axis of its thickness, and its thickness (mm)."""

    lean: Lean
    thick: Axis
    thickness: float

    @property
    def runs(self) -> tuple[float, float]:
        """How far its middle line moves across and deep for each mm up."""
        return self.lean.run_across, self.lean.run_deep


class Leaners(dict[str, Leaner]):
    """The leaning parts of a plan by name."""

    def slants(self, name: str, axis: int) -> bool:
        """Whether the faces of a part on an axis are out of plumb."""
        return axis != Axis.UP and name in self and self[name].runs[axis] != 0.0

    def slope(self, name: str, axis: int, which: Literal["low", "high"]) -> Slope:
        """What a part's own height and place add to the face of a leaning neighbour's box.

        At a height z the face of a board with run r stands r · (z - z₀) from that of its box, where z₀ is the
        end at which it touches the box: of the low face the lower one when it leans towards the high side,
        and so on. Where a board leans both ways, its edges are not square to the axes of the piece: the edge
        moves by k = rᵥ rₜ / (1 + rₜ²) for each mm in the direction of the thickness, and the box stands
        |rᵥ rₜ| · thickness / (2 √(1 + rₜ²)) outside it at the middle line (own derivation, from the level
        section in :func:`reviewer.geometry.slanting.level_section`).
        """
        if not self.slants(name, axis):
            return Slope((), 0.0)
        leaner = self[name]
        run = leaner.runs[axis]
        touching: Literal["low", "high"] = "low" if (run > 0) == (which == "low") else "high"
        terms = [Term(run, Edge(OWN, Axis.UP, "mid")), Term(-run, Edge(name, Axis.UP, touching))]
        offset = 0.0
        other = Axis(1 - axis)
        cross = leaner.runs[other]
        if axis != leaner.thick and cross:
            tilt = math.sqrt(1 + cross * cross)
            turn = run * cross / (tilt * tilt)
            terms += (
                Term(turn, Edge(OWN, other, "mid")),
                Term(-turn, Edge(name, other, "mid")),
                Term(-turn * cross, Edge(OWN, Axis.UP, "mid")),
                Term(turn * cross, Edge(name, Axis.UP, "mid")),
            )
            inside = abs(run * cross) * leaner.thickness / (2 * tilt)
            offset = inside if which == "low" else -inside
        return Slope(tuple(terms), offset)

    def owned(self, relations: Iterable[Relation], name: str) -> tuple[Relation, ...]:
        """The relations with a part's own edges under its name."""
        return tuple(_owned(relation, name) for relation in relations)

    def owned_one(self, one: Copied) -> Copied:
        """A part or an outline whose relations speak of its own edges by its name."""
        return one.model_copy(update={"relations": self.owned(one.relations, one.name)})

    def owned_row(self, row: Row[Copied]) -> Row[Copied]:
        """A row and its copies, each with its own edges under its own name."""
        copies = tuple(self.owned_one(copy) for copy in row.copies)
        return row._replace(box=self.owned_one(row.box), copies=copies)


def _owned(relation: Relation, name: str) -> Relation:
    slopes = tuple(Slope(_terms(each.terms, name), each.offset) for each in relation.slopes)
    return relation._replace(terms=_terms(relation.terms, name), slopes=slopes)


def _terms(terms: tuple[Term, ...], name: str) -> tuple[Term, ...]:
    if all(term.edge.solid != OWN for term in terms):
        return terms
    return tuple(
        Term(term.factor, term.edge._replace(solid=name)) if term.edge.solid == OWN else term
        for term in terms
    )
