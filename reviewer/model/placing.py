"""Placing clauses to relations: one equation a clause, on the axis and face that it speaks of.

``between`` follows the slanting faces of parts that lean. All other clauses (flush, on, against, from … to,
offsets) go by the setting-out box of the part they name, leaning or not.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any, Literal

from reviewer.language import declarations as d
from reviewer.language.source import Span
from reviewer.model.desk import Desk
from reviewer.model.naming import SolidNames
from reviewer.model.plan import FLOOR, GROUNDS, WALL, Axis, Cut, Edge, Relation, Slope, Term, Touch
from reviewer.model.shapes import EndTowards

if TYPE_CHECKING:
    from reviewer.model.leaning import Leaners

Which = Literal["low", "high", "mid", "size"]

#: Which kinds of clause settle an axis first. Lower settles; the rest are checked against it.
RANK_STOCK = 0  # the wood's own size can't be argued with
RANK_SPAN = 10  # between, from … to
RANK_FACE = 20  # flush, on, against, offsets, coordinates
RANK_MIDDLE = 25  # centred
RANK_SIZE = 30  # 36 long, as tall as
RANK_DEFAULT = 90  # an outline stands at the origin unless it says otherwise

FACES: dict[str, tuple[Axis, Which]] = {
    "left": (Axis.ACROSS, "low"),
    "right": (Axis.ACROSS, "high"),
    "front": (Axis.DEEP, "low"),
    "back": (Axis.DEEP, "high"),
    "bottom": (Axis.UP, "low"),
    "top": (Axis.UP, "high"),
}
DIRECTIONS: dict[str, Axis] = {"across": Axis.ACROSS, "deep": Axis.DEEP, "up": Axis.UP}
_SIZE_AXES: dict[str, Axis] = {
    "across": Axis.ACROSS,
    "wide": Axis.ACROSS,
    "deep": Axis.DEEP,
    "tall": Axis.UP,
}
#: What an offset's way means: its axis, its sign, and the face it counts from when none is said.
_WAYS: dict[str, tuple[Axis, float, str]] = {
    "above": (Axis.UP, 1.0, "top"),
    "below": (Axis.UP, -1.0, "bottom"),
    "behind": (Axis.DEEP, 1.0, "back"),
    "in front": (Axis.DEEP, -1.0, "front"),
    "right": (Axis.ACROSS, 1.0, "right"),
    "left": (Axis.ACROSS, -1.0, "left"),
}
#: By axis, the two faces on it and the words that count along it.
_COUNTED = {
    Axis.ACROSS: ("left and right", "left of or right of"),
    Axis.DEEP: ("front and back", "behind or in front of"),
    Axis.UP: ("bottom and top", "above or below"),
}
#: The one face that a plan can refer to, of each of the room's own faces.
GROUND_FACES: dict[str, tuple[Axis, Which]] = {FLOOR: (Axis.UP, "high"), WALL: (Axis.DEEP, "low")}
_OPPOSITE: dict[Which, Which] = {"low": "high", "high": "low", "mid": "mid", "size": "size"}


@dataclass
class Placing:
    """The relations of one part or outline as they gather."""

    name: str
    relations: list[Relation] = field(default_factory=list)
    touches: list[Touch] = field(default_factory=list)
    cut: Cut | None = None
    housed: float = 0.0
    doubtful: bool = False
    slanting: list[EndTowards] = field(default_factory=list)  # the ends that meet a leaning part


class Placer:
    """Turns clauses into relations for one named thing."""

    def __init__(
        self,
        desk: Desk,
        names: SolidNames,
        long: Axis | None,
        each: str | None,
        what: str = "A part of a sheet",
        leaners: Leaners | None = None,
    ) -> None:
        self.desk = desk
        self.what = what  # what has no long axis, for the message
        self.names = names
        self.long = long
        self.each = each
        self.leaners = leaners  # the parts that lean, where ends are to follow their faces
        self.name = ""  # of what is being placed, for messages

    def place(self, name: str, clauses: Iterable[Any]) -> Placing:
        """The relations of all clauses that place or size; the others are passed over."""
        self.name = name
        placing = Placing(name)
        for clause in clauses:
            place = _PLACES.get(type(clause))
            if place is not None:
                place(self, placing, clause)
        return placing

    # ------------------------------------------------------------ small helpers

    def resolve(self, word: d.Word) -> str | None:
        """The name that a word refers to; None when it can't be had (told)."""
        return self.names.found(word, self.each, self.name)

    def _find(self, placing: Placing, word: d.Word) -> str | None:
        name = self.resolve(word)
        if name is None:
            placing.doubtful = True
        return name

    def _has(self, placing: Placing, name: str, axis: Axis, which: Which, span: Span) -> bool:
        """Whether a solid has that edge. All have, but the floor is only a top and the wall only a front."""
        if name not in GROUNDS or GROUND_FACES[name] == (axis, which):
            return True
        return self._refuse(placing, name, span)

    def _refuse(self, placing: Placing, name: str, span: Span) -> bool:
        if name == FLOOR:
            says, do = "The floor is only a top to stand on.", "Write: on floor, or: bottom 15 above floor"
        else:
            says, do = "The wall is only a front to stand against.", "Write: against wall"
        self.desk.problem(span, says, do)
        placing.doubtful = True
        return False

    def face(self, word: d.Word) -> tuple[Axis, Which] | None:
        """Axis and side of a face word; ``each`` stands for the copy's own word."""
        text = word.text
        if text == "each":
            text = self.each or ""
        found = FACES.get(text)
        if found is None and not (word.text == "each" and self.desk.told_for_copies(word.span)):
            said, do = (
                f"“{text}”" if text else "each",
                "Name one of the six, or let the copies be called by faces: ",
            )
            do += "for each of left, right"
            if text and word.text == "each":
                said = f"“each” stands for “{text}” here, and that"
                if set(text.split("-")) <= FACES.keys():
                    do = "For one at each corner write: in each corner of frame"
            self.desk.problem(
                word.span, f"{said} is no face: the faces are left, right, front, back, bottom and top.", do
            )
        return found

    def _term(self, name: str, axis: Axis, which: Which) -> tuple[Term, ...]:
        return (Term(1.0, Edge(name, axis, which)),)

    def _promise(self, placing: Placing, name: str, axis: Axis, span: Span) -> None:
        if name in GROUNDS or self.names.is_wood(name):
            placing.touches.append(Touch(name, axis, span))

    # ------------------------------------------------------------ spans

    def _slack_mm(self, placing: Placing, slack: d.Slack | None) -> tuple[float, bool] | None:
        """How far each end moves outward (mm), and whether the ends still meet their faces."""
        if slack is None:
            return 0.0, True
        size = self.desk.mm(slack.size)
        if size is None:
            placing.doubtful = True
            return None
        if slack.kind == "less":
            return -size / 2, False
        if slack.kind == "clear":
            return -size, False
        if slack.kind == "housed":
            placing.housed = size
        return size, slack.kind == "housed"

    def _between(self, placing: Placing, clause: d.Between) -> None:
        axis = DIRECTIONS[clause.direction] if clause.direction else self.long
        if axis is None:
            self.desk.problem(
                clause.span,
                f"{self.what} has no long axis of its own, so it is not clear which way this runs.",
                "Say the direction at the end: between side.left and side.right across",
            )
            placing.doubtful = True
            return
        first, second = self._find(placing, clause.first), self._find(placing, clause.second)
        moved = self._slack_mm(placing, clause.slack)
        if first is None or second is None or moved is None:
            return
        for name in (first, second):
            if name in GROUNDS and not self._has(placing, name, axis, GROUND_FACES[name][1], clause.span):
                return
        outward, meets = moved
        ends = (Term(1.0, Edge(first, axis, "mid")), Term(1.0, Edge(second, axis, "mid")))
        after: tuple[Slope, ...] = ()
        before: tuple[Slope, ...] = ()
        if self.leaners:
            after, before = self._slopes(placing, first, second, axis, outward, clause.span)
        placing.relations += (
            Relation(axis, "low", ends, -outward, RANK_SPAN, clause.span, "after", after),
            Relation(axis, "high", ends, outward, RANK_SPAN, clause.span, "before", before),
        )
        if meets:
            self._promise(placing, first, axis, clause.span)
            self._promise(placing, second, axis, clause.span)

    def _slopes(
        self, placing: Placing, first: str, second: str, axis: Axis, outward: float, span: Span
    ) -> tuple[tuple[Slope, ...], tuple[Slope, ...]]:
        """What leaning neighbours add to the faces of their boxes, at the low end and at the high end.

        An end that comes to the very face is also cut to its slope. One with a slack, or let into its
        neighbour, is placed by the slope and stays as it is cut.
        """
        assert self.leaners is not None
        slope = self.leaners.slope
        met = [name for name in (first, second) if self.leaners.slants(name, axis)]
        if not met:
            return (), ()
        if outward == 0.0:
            placing.slanting += (EndTowards(axis, name, span) for name in met)
        after = (slope(first, axis, "high"), slope(second, axis, "high"))
        return after, (slope(first, axis, "low"), slope(second, axis, "low"))

    def _from_to(self, placing: Placing, clause: d.FromTo) -> None:
        faces = []
        for point in (clause.first, clause.second):
            if point.face is None:
                self.desk.problem(
                    point.span,
                    f"“{point.name.text}” has six faces, and this does not say which one is meant.",
                    f"Name the face: from left of {point.name.text} to …",
                )
                placing.doubtful = True
                return
            face = self.face(point.face)
            name = self._find(placing, point.name)
            if face is None or name is None:
                placing.doubtful = True
                return
            if not self._has(placing, name, *face, point.span):
                return
            faces.append((name, face))
        (first, (axis, low)), (second, (axis_2, high)) = faces
        if axis != axis_2:
            self.desk.problem(
                clause.span,
                "The two faces look different ways, so there is no straight run from one to the other.",
                "Name two faces that look the same way, such as left and right.",
            )
            placing.doubtful = True
            return
        moved = self._slack_mm(placing, clause.slack)
        if moved is None:
            return
        placing.relations += (
            Relation(axis, "low", self._term(first, axis, low), -moved[0], RANK_SPAN, clause.span),
            Relation(axis, "high", self._term(second, axis, high), moved[0], RANK_SPAN, clause.span),
        )

    # ------------------------------------------------------------ faces

    def _flush(self, placing: Placing, clause: d.Flush) -> None:
        face = self.face(clause.face)
        name = self._find(placing, clause.name)
        if face is None or name is None:
            placing.doubtful = True
            return
        if name in GROUNDS:
            self._refuse(placing, name, clause.span)
            return
        axis, which = face
        placing.relations.append(
            Relation(axis, which, self._term(name, axis, which), 0.0, RANK_FACE, clause.span)
        )

    def _centred(self, placing: Placing, clause: d.Centred) -> None:
        axis = DIRECTIONS[clause.direction]
        name = self._find(placing, clause.name)
        if name is not None and self._has(placing, name, axis, "mid", clause.span):
            placing.relations.append(
                Relation(axis, "mid", self._term(name, axis, "mid"), 0.0, RANK_MIDDLE, clause.span)
            )

    def _meets(self, placing: Placing, clause: d.Meets) -> None:
        name = self._find(placing, clause.point.name)
        if name is None:
            return
        if clause.kind == "on":
            axis, theirs = FACES["top"]
        elif clause.kind == "under":
            axis, theirs = FACES["bottom"]
        elif clause.point.face is not None:
            face = self.face(clause.point.face)
            if face is None:
                placing.doubtful = True
                return
            axis, theirs = face
        elif name in GROUNDS:
            axis, theirs = GROUND_FACES[name]
        else:
            self.desk.problem(
                clause.span,
                f"“{clause.point.name.text}” has six faces, and this does not say which one is met.",
                f"Name the face: against left of {clause.point.name.text}",
            )
            placing.doubtful = True
            return
        if not self._has(placing, name, axis, theirs, clause.span):
            return
        placing.relations.append(
            Relation(axis, _OPPOSITE[theirs], self._term(name, axis, theirs), 0.0, RANK_FACE, clause.span)
        )
        self._promise(placing, name, axis, clause.span)

    def _offset(self, placing: Placing, clause: d.Offset) -> None:
        face = self.face(clause.face)
        size = self.desk.mm(clause.size)
        if face is None or size is None:
            placing.doubtful = True
            return
        axis, which = face
        if clause.point is None:
            placing.relations.append(Relation(axis, which, (), size, RANK_FACE, clause.span))
            return
        name = self._find(placing, clause.point.name)
        if name is None:
            return
        if clause.way in ("inside", "outside"):
            found = self.face(clause.point.face) if clause.point.face else face
            sign = 1.0 if found and (found[1] == "low") == (clause.way == "inside") else -1.0
            way_axis = axis
        else:
            way_axis, sign, default = _WAYS[clause.way]
            found = self.face(clause.point.face) if clause.point.face else FACES[default]
        if found is not None and clause.point.face is None and name in GROUNDS:
            found = GROUND_FACES[name] if GROUND_FACES[name][0] == found[0] else found
        if found is None or found[0] != axis or way_axis != axis:
            if found is not None:
                self._tell_crossed(clause, axis, way_axis)
            placing.doubtful = True
            return
        if self._has(placing, name, *found, clause.span):
            placing.relations.append(
                Relation(axis, which, self._term(name, axis, found[1]), sign * size, RANK_FACE, clause.span)
            )

    def _tell_crossed(self, clause: d.Offset, axis: Axis, way_axis: Axis) -> None:
        """An offset that mixes two directions: the face of the part, the way, or the face it counts from."""
        pair, ways = _COUNTED[axis]
        if way_axis != axis:
            way = f"{clause.way} of" if clause.way in ("in front", "left", "right") else clause.way
            self.desk.problem(
                clause.span,
                f"The {clause.face.text} of a part can't be counted {way} something: it looks another way.",
                f"Count {pair} with {ways}.",
            )
            return
        assert clause.point is not None
        assert clause.point.face is not None
        self.desk.problem(
            clause.point.span,
            f"The {clause.point.face.text} of “{clause.point.name.text}” looks another way "
            f"than the {clause.face.text} that is counted from it.",
            f"Name a face that looks the same way: {pair.replace(' and ', ' or ')}.",
        )

    # ------------------------------------------------------------ sizes

    def _size_axis(self, way: str, span: Span) -> Axis | None:
        axis = _SIZE_AXES.get(way, self.long)
        if axis is None:
            self.desk.problem(
                span,
                f"{self.what} has no long axis of its own, so it is not clear which size this is.",
                "Say it by direction: 36 across, 12 deep, 72 tall",
            )
        return axis

    def _sized(self, placing: Placing, clause: d.Sized) -> None:
        axis = self._size_axis(clause.way, clause.span)
        size = self.desk.size_mm(clause.size, "size")
        if axis is None or size is None:
            placing.doubtful = True
            return
        placing.relations.append(Relation(axis, "size", (), size, RANK_SIZE, clause.span))

    def _sized_as(self, placing: Placing, clause: d.SizedAs) -> None:
        axis = self._size_axis(clause.way, clause.span)
        name = self._find(placing, clause.name)
        if axis is None or name is None:
            placing.doubtful = True
            return
        if not self._has(placing, name, axis, "size", clause.span):
            return
        placing.relations.append(
            Relation(axis, "size", self._term(name, axis, "size"), 0.0, RANK_SIZE, clause.span)
        )

    def _cut(self, placing: Placing, clause: d.CutClause) -> None:
        length = self.desk.size_mm(clause.size, "cut")
        if length is not None:
            placing.cut = Cut(length, clause.span)


_PLACES: dict[type[Any], Callable[[Placer, Placing, Any], None]] = {
    d.Between: Placer._between,
    d.FromTo: Placer._from_to,
    d.Flush: Placer._flush,
    d.Centred: Placer._centred,
    d.Meets: Placer._meets,
    d.Offset: Placer._offset,
    d.Sized: Placer._sized,
    d.SizedAs: Placer._sized_as,
    d.CutClause: Placer._cut,
}
