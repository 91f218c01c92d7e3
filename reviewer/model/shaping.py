"""Shaping clauses to cuttings: what is cut away from a part, every place of it an axis and a side.

What depends on sizes that are not known yet is left to setting out.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from reviewer.language import declarations as d
from reviewer.model.cut_making import OpenFace
from reviewer.model.facing import FaceCutter
from reviewer.model.hollowing import Hollower
from reviewer.model.shapes import Cutting, Rounded

#: More cuts than this nobody makes in a part: rows of shelf pin holes come to some dozens.
MAX_CUTS = 300


class Shaper(FaceCutter, Hollower):
    """Makes the cuttings of one part statement."""

    def cuttings(self) -> tuple[Cutting, ...]:
        """All that is cut away, in the order of the clauses."""
        if self.bar is not None:
            self.made.append(Rounded(self.bar.length, self.bar.span))
        for clause in self.spec.clauses:
            make = _MAKES.get(type(clause))
            if make is None:
                continue
            if type(clause) in _FOLLOWING:
                make(self, clause)
                continue
            self._close()
            count = len(self.made)
            if count >= MAX_CUTS:
                self.desk.problem(
                    clause.span,
                    f"“{self.spec.family}” has more than {MAX_CUTS} cuts from here on, far beyond any part.",
                    "Take out cuts that say a thing again, or make it of several parts.",
                )
                break
            make(self, clause)
            self.lost = self.open is None and len(self.made) == count
        self._close()
        return tuple(self.made)

    def _close(self) -> None:
        """Make the cut that was held open."""
        cut, self.open = self.open, None
        if isinstance(cut, OpenFace):
            self._close_face(cut)
        elif cut is not None:
            self._close_cut(cut)


#: Clauses that go with the cut before them.
_FOLLOWING: frozenset[type[Any]] = frozenset([d.LongPoint, d.Stopped, d.CutPlace])
_MAKES: dict[type[Any], Callable[[Shaper, Any], None]] = {
    d.FaceCutClause: Shaper._face_cut,
    d.LongPoint: Shaper._long_point,
    d.TaperClause: Shaper._taper,
    d.NotchClause: Shaper._notch,
    d.FittedNotchClause: Shaper._fitted,
    d.TrenchClause: Shaper._trench,
    d.Stopped: Shaper._stopped,
    d.HoleClause: Shaper._hole,
    d.CutPlace: Shaper._cut_place,
    d.CornersClause: Shaper._corners,
    d.EdgesClause: Shaper._edges,
}
