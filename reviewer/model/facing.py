"""Cuts that leave a part one solid block: mitred and bevelled ends and edges, tapers, corners, arrises."""

from __future__ import annotations

from reviewer.language import declarations as d
from reviewer.language.source import Span
from reviewer.model.cut_making import CutMaker, OpenFace
from reviewer.model.shapes import Arrises, Corners, FaceCut, Side, Taper
from reviewer.model.wood import PAIRS, RUNS, checked_degrees, either_face

#: From a cut that nobody could tell from a square one to one that no saw makes.
_CUT_DEGREES = (0.1, 80.0)
_BOTH: tuple[Side, ...] = ("low", "high")


class FaceCutter(CutMaker):
    """Makes cuttings of mitre, bevel, taper, corner and edge clauses."""

    def _face_cut(self, clause: d.FaceCutClause) -> None:
        degrees = checked_degrees(self.desk, clause.angle, _CUT_DEGREES, f"A {clause.kind}", "a square cut")
        face = None if clause.face is None else self._face(clause.face)
        if degrees is None or (clause.face is not None and face is None):
            return
        if clause.along:
            assert face is not None
            axis, side = face
            if not self._may_be_edge(clause, axis):
                return
            self.open = OpenFace("bevel", clause.span, degrees, axis, (side,), self.thick)
            return
        if self.slant is not None:
            self._tell_slanted_end(clause)
            return
        if face is None:
            if not self.run_said:
                self._problem(
                    clause.span,
                    f"“{self.name}” does not say which way its grain runs, so it is not clear "
                    "which are its ends.",
                    f"Name each end: {clause.kind} 45 at {PAIRS[self.long][0]} end",
                )
                return
            axis, sides = int(self.long), _BOTH
        else:
            axis, sides = face[0], (face[1],)
            if not self._may_be_end(clause, axis):
                return
        long_axis = self.thick if clause.kind == "bevel" else self._in_plane(axis)
        self.open = OpenFace(clause.kind, clause.span, degrees, axis, sides, long_axis)

    def _tell_slanted_end(self, clause: d.FaceCutClause) -> None:
        if self.slant == "leans":
            self._problem(
                clause.span,
                f"“{self.name}” leans, so its ends are cut level and take no {clause.kind}.",
                "Leave this out.",
            )
        else:
            self._problem(
                clause.span,
                f"“{self.name}” rises, and how its ends are cut is said another way.",
                "Write one of: ends cut square, ends cut level, ends cut plumb, ends cut pointed",
            )

    def _may_be_edge(self, clause: d.FaceCutClause, axis: int) -> bool:
        assert clause.face is not None
        word = clause.face.text
        if axis == self.thick:
            self._problem(
                clause.face.span,
                f"The {word} of “{self.name}” is a wide face, and a bevel along the part goes on an edge.",
                f"Name the {either_face(self.wide)}.",
            )
            return False
        if axis == self.long and not self.sheet:
            self._problem(
                clause.face.span,
                f"The {word} of “{self.name}” is an end, and a bevel along the part goes on an edge.",
                f"Name the {either_face(self.wide)}, or write: bevel 10 at {PAIRS[axis][0]} end",
            )
            return False
        return True

    def _may_be_end(self, clause: d.FaceCutClause | d.TaperClause, axis: int) -> bool:
        if axis == self.long or (self.sheet and axis != self.thick):
            return True
        word = clause.end if isinstance(clause, d.TaperClause) else clause.face
        assert word is not None
        low, high = PAIRS[self.long]
        self._problem(
            word.span,
            f"“{self.name}” runs {RUNS[self.long]}, so its {word.text} is no end of it.",
            f"Its ends are its {low} and its {high}.",
        )
        return False

    def _long_point(self, clause: d.LongPoint) -> None:
        cut = self.open
        if not isinstance(cut, OpenFace):
            self._tell_nothing_before(
                clause.span,
                "This says which side keeps its length, but no mitre or bevel stands before it.",
                "Put it behind one: mitre 45 at left end, long at top",
            )
            return
        face = self._face(clause.face)
        if face is None:
            return
        axis, side = face
        if axis != cut.long_axis:
            self._problem(
                clause.face.span,
                f"This {cut.kind} slants {RUNS[cut.long_axis]}, so the {clause.face.text} "
                "is not the side that keeps its length.",
                f"Write long at {PAIRS[cut.long_axis][0]} or long at {PAIRS[cut.long_axis][1]}.",
            )
            cut.long = side, clause.span  # told: not to be missed as well
        elif cut.long is not None:
            self._problem(
                clause.span,
                f"This says a second time which side of the {cut.kind} keeps its length.",
                "Keep one of the two.",
                also_at=(cut.long[1],),
            )
        else:
            cut.long = side, clause.span

    def _close_face(self, cut: OpenFace) -> None:
        if cut.long is None:
            if not self.spec.statement.damaged:
                low, high = PAIRS[cut.long_axis]
                self._problem(
                    cut.span,
                    f"This {cut.kind} of “{self.name}” does not say which side keeps its length.",
                    f"Add long at {low} or long at {high} behind it.",
                )
            return
        self.made += (
            FaceCut(cut.kind, cut.axis, side, cut.degrees, cut.long_axis, cut.long[0], cut.span)
            for side in cut.sides
        )

    def _taper(self, clause: d.TaperClause) -> None:
        to = self.desk.size_mm(clause.to, "size at the end of the taper")
        over = self.desk.size_mm(clause.over, "length of the taper") if clause.over is not None else None
        end = self._face(clause.end)
        face = self._face(clause.face) if clause.face is not None else None
        if to is None or end is None or (face is None) != (clause.face is None):
            return
        if (over is None) != (clause.over is None) or not self._may_be_end(clause, end[0]):
            return
        if face is None:
            self.made.append(Taper(*end, self._in_plane(end[0]), "both", to, over, clause.span))
        elif face[0] == end[0]:
            assert clause.face is not None
            self._problem(
                clause.face.span,
                f"The {clause.face.text} of “{self.name}” is an end, and a taper is cut on a side.",
                "Name a side, or none for both edges alike: taper to 1 at "
                f"{clause.end.text} end on {PAIRS[self._in_plane(end[0])][0]}",
            )
        else:
            self.made.append(Taper(*end, *face, to, over, clause.span))

    # ------------------------------------------------------------ corners and edges

    def _corners(self, clause: d.CornersClause) -> None:
        size = self.desk.size_mm(clause.size, "size of the corner")
        faces = [self._face(word) for word in clause.faces]
        if size is None or None in faces or self._is_bar(clause.span):
            return
        which: tuple[tuple[Side, Side], ...] = ()
        if clause.faces:
            named = {face[0]: face[1] for face in faces if face is not None}
            first, second = sorted((int(self.long), int(self.wide)))
            if set(named) != {first, second}:
                self._problem(
                    clause.span,
                    f"A corner of “{self.name}” is where two sides of its wide face meet, "
                    "and these two do not meet there.",
                    f"Name the {either_face(first)} and the {either_face(second)}.",
                )
                return
            which = ((named[first], named[second]),)
        self.made.append(Corners(clause.kind, size, which, clause.span))

    def _edges(self, clause: d.EdgesClause) -> None:
        size = self.desk.size_mm(clause.size, "size of the edges")
        if size is not None and not self._is_bar(clause.span):
            self.made.append(Arrises(clause.kind, size, clause.span))

    def _is_bar(self, span: Span) -> bool:
        if self.bar is not None:
            self._problem(
                span, f"“{self.name}” is a round bar, which has no corners and no edges.", "Leave this out."
            )
        return self.bar is not None
