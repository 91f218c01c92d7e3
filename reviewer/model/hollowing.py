"""Cuts that take a piece out of a part: notches, dados, grooves, rabbets and holes, and where they are."""

from __future__ import annotations

from reviewer.language import declarations as d
from reviewer.language.source import Span
from reviewer.model.cut_making import CutMaker, OpenCut
from reviewer.model.plan import GROUNDS, Axis
from reviewer.model.shapes import BoxCut, FittedNotch, Hole, Reach, Side
from reviewer.model.wood import PAIRS, RUNS, either_face

_SIDES: tuple[Side, Side] = ("low", "high")
_EXAMPLES = ("2 across", "2 deep", "2 tall")
_SIZE_AXES = {"across": Axis.ACROSS, "deep": Axis.DEEP, "tall": Axis.UP}


class Hollower(CutMaker):
    """Makes cuttings of notch, trench and hole clauses."""

    def _notch(self, clause: d.NotchClause) -> None:
        sizes: dict[int, float] = {}
        broken = False
        for said in clause.sizes:
            size = self.desk.size_mm(said.size, "size of the notch")
            axis = _SIZE_AXES[said.way]
            if axis in sizes:
                self._problem(said.span, f"This notch gives two sizes {RUNS[axis]}.", "Keep one of the two.")
            if size is None:
                broken = True
            else:
                sizes[axis] = size
        cut = OpenCut("notch", clause.span, sizes, {})
        for word in clause.faces:
            face = self._face(word)
            if face is None or broken:
                broken = True
                continue
            on, side = face
            if on not in sizes:
                low = _EXAMPLES[on]
                self._problem(
                    word.span,
                    f"This notch is at the {word.text}, but it does not say how far it reaches {RUNS[on]}.",
                    f"Add its size that way, such as: by {low}",
                )
                broken = True
            elif on in cut.fixed:
                self._tell_placed_twice(cut, on, word.span)
            else:
                cut.fixed[on] = Reach(side, 0.0, sizes[on]), word.span
        if not broken:
            self.open = cut

    def _fitted(self, clause: d.FittedNotchClause) -> None:
        name = self.placer.resolve(clause.name)
        clear = self.desk.mm(clause.clear) if clause.clear is not None else 0.0
        if name is None or clear is None:
            return
        names = self.placer.names
        if clear < 0:
            self._problem(
                clause.span, "The notch is to be less than no wider than the part.", "Write 0 or more."
            )
        elif name == self.spec.name or name.startswith(f"{self.spec.name}."):
            self._problem(
                clause.name.span,
                f"“{self.name}” can't have a notch for itself.",
                "Name the part that goes into it.",
            )
        elif name in GROUNDS or not names.is_wood(name):
            self._problem(
                clause.name.span, f"“{name}” is not a part, so a notch can't be made for it.", "Name a part."
            )
        else:
            self.made.append(FittedNotch(name, clear, clause.span))

    def _trench(self, clause: d.TrenchClause) -> None:
        width = self.desk.size_mm(clause.width, f"width of the {clause.kind}")
        depth = self.desk.size_mm(clause.depth, f"depth of the {clause.kind}")
        into = self._face(clause.face)
        along = self._face(clause.along) if clause.along is not None else None
        if width is None or depth is None or into is None or (along is None) != (clause.along is None):
            return
        axis, side = into
        if axis == self.long and not self.sheet:
            self._problem(
                clause.face.span,
                f"The {clause.face.text} of “{self.name}” is an end, and a {clause.kind} goes into a face "
                "or an edge along the part.",
                f"Name another face, such as the {either_face(self.thick)}.",
            )
            return
        cut = OpenCut(clause.kind, clause.span, {axis: depth}, {axis: (Reach(side, 0.0, depth), clause.span)})
        if along is not None:
            assert clause.along is not None
            if along[0] == axis:
                self._problem(
                    clause.along.span,
                    "A rabbet goes into one face along another that meets it, and these two do not meet.",
                    "Name a face that meets the first: rabbet 1/2 by 1/4 into "
                    f"{clause.face.text} along {PAIRS[(axis + 1) % 3][0]}",
                )
                return
            cut.sizes[along[0]] = width
            cut.fixed[along[0]] = Reach(along[1], 0.0, width), clause.span
            cut.run = 3 - axis - along[0]
        else:
            cut.width = width
            self._turn(cut, self._trench_run(clause.kind, axis))
        self.open = cut

    def _trench_run(self, kind: str, axis: int) -> int | None:
        """Which way a dado or a groove into a face on ``axis`` runs; None while its place alone can tell."""
        if axis == self.thick:
            if not self.run_said:
                return None
            return int(self.wide if kind == "dado" else self.long)
        other = self._in_plane(axis)
        return int(self.thick) if kind == "dado" else other

    @staticmethod
    def _turn(cut: OpenCut, run: int | None) -> None:
        if run is not None and cut.run is None:
            (into,) = cut.fixed
            cut.run = run
            cut.sizes[3 - run - into] = cut.width

    def _stopped(self, clause: d.Stopped) -> None:
        cut = self.open
        if not isinstance(cut, OpenCut) or cut.kind not in ("dado", "groove", "rabbet"):
            self._tell_nothing_before(
                clause.span,
                "This says where a cut stops, but no dado, groove or rabbet stands before it.",
                "Put it behind one: dado 3/4 by 1/4 into right, 12 from bottom, stopped 1 at front",
            )
            return
        size = self.desk.size_mm(clause.size, "stretch left uncut")
        face = self._face(clause.face)
        if size is None or face is None:
            return
        axis, side = face
        if cut.run is None and axis != self.thick:
            self._turn(cut, axis)
        if axis != cut.run:
            if cut.run is None:
                self._tell_unturned(cut)
            else:
                self._problem(
                    clause.face.span,
                    f"This {cut.kind} runs {RUNS[cut.run]}, so it can't stop at the {clause.face.text}.",
                    f"Name the {either_face(cut.run)}.",
                )
        elif side in cut.stops:
            self._problem(
                clause.span,
                f"This says a second time where the {cut.kind} stops.",
                "Keep one of the two.",
                also_at=(cut.stops[side][1],),
            )
        else:
            cut.stops[side] = size, clause.span

    def _tell_unturned(self, cut: OpenCut) -> None:
        self._problem(
            cut.span,
            f"“{self.name}” does not say which way its grain runs, so it is not clear "
            f"which way this {cut.kind} runs.",
            f"Say where it is, such as: 4 from {PAIRS[self.long][0]}",
        )

    def _hole(self, clause: d.HoleClause) -> None:
        diameter = self.desk.size_mm(clause.diameter, "diameter of the hole")
        depth = self.desk.size_mm(clause.depth, "depth of the hole") if clause.depth is not None else None
        face = self._face(clause.face)
        if diameter is None or face is None or (depth is None) != (clause.depth is None):
            return
        axis, side = face
        middle = Reach("middle")
        cut = OpenCut(
            "hole",
            clause.span,
            {other: 0.0 for other in range(3) if other != axis},
            {axis: (Reach(side), clause.span)},
            hole=Hole(axis, side, diameter, depth, (middle, middle), clause.span),
        )
        self.open = cut

    def _cut_place(self, clause: d.CutPlace) -> None:
        cut = self.open
        if self.made and isinstance(self.made[-1], FittedNotch) and cut is None and not self.lost:
            self._problem(
                clause.span,
                "A notch for another part is where that part goes, so it has no place of its own.",
                "Leave this out, or give the notch its own sizes: notch 2 deep by 4 tall at front",
            )
            return
        if not isinstance(cut, OpenCut):
            self._tell_nothing_before(
                clause.span,
                "This says where a cut is, but no notch, dado, groove, rabbet or hole stands before it.",
                "Put it behind one: hole 3/8 through front, 2 from left",
            )
            return
        away = self.desk.mm(clause.size)
        face = self._face(clause.face)
        if away is None or face is None:
            return
        axis, side = face
        if away < 0:
            self._problem(
                clause.size.span,
                f"This comes to {self.desk.said(away)}, which is outside the part.",
                "Count from the other side, or look at the number.",
            )
        elif axis in cut.fixed:
            self._tell_placed_twice(cut, axis, clause.span)
        else:
            if cut.run is None and cut.width and axis != self.thick:
                self._turn(cut, self._in_plane(axis))
            if axis in cut.sizes:
                cut.fixed[axis] = Reach(side, away, cut.sizes[axis]), clause.span
            else:
                self._tell_whole(cut, axis, clause)

    def _place_it_from(self, cut: OpenCut) -> str:
        """The next step of a writer who placed a cut where it can't be placed."""
        free = [axis for axis in cut.sizes if axis not in cut.fixed]
        return (
            f"Count its place from the {either_face(*free)}, or leave this out."
            if free
            else "Leave this out."
        )

    def _tell_placed_twice(self, cut: OpenCut, axis: int, span: Span) -> None:
        first = cut.fixed[axis][1]
        if first == cut.span and cut.kind != "notch":
            says = f"The {cut.kind} itself says already where it is {RUNS[axis]}."
            do = self._place_it_from(cut)
        else:
            says, do = (
                f"This says a second time where the {cut.kind} is {RUNS[axis]}.",
                "Keep one of the two.",
            )
        self._problem(span, says, do, also_at=(first,))

    def _tell_whole(self, cut: OpenCut, axis: int, clause: d.CutPlace) -> None:
        by_size = f"Give the notch a size that way, such as: by {_EXAMPLES[axis]}, or leave this out."
        self._problem(
            clause.span,
            f"This {cut.kind} goes right across the part {RUNS[axis]}, so it has no place "
            f"from the {clause.face.text}.",
            by_size if cut.kind == "notch" else self._place_it_from(cut),
        )

    def _close_cut(self, cut: OpenCut) -> None:
        if cut.width and cut.run is None:
            if not self.spec.statement.damaged:
                self._tell_unturned(cut)
            return
        reaches = []
        for axis in range(3):
            if axis in cut.fixed:
                reaches.append(cut.fixed[axis][0])
            elif axis in cut.sizes:
                reaches.append(Reach("middle", 0.0, cut.sizes[axis]))
            elif cut.stops:
                low, high = (cut.stops[side][0] if side in cut.stops else 0.0 for side in _SIDES)
                reaches.append(Reach("short", low, high))
            else:
                reaches.append(Reach("whole"))
        if cut.hole is not None:
            one, two = (reach for axis, reach in enumerate(reaches) if axis != cut.hole.axis)
            self.made.append(cut.hole._replace(places=(one, two)))
        else:
            across, deep, up = reaches
            self.made.append(BoxCut(cut.kind, across, deep, up, cut.span))  # type: ignore[arg-type]
