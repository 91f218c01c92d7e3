"""What a part statement says for each of its names, with what it takes over from the part it is like."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from typing import Any, NamedTuple, TypeVar

from reviewer.language import declarations as d
from reviewer.language.source import Span
from reviewer.language.wordings import round_trip
from reviewer.model.desk import Desk
from reviewer.model.naming import with_each
from reviewer.model.placing import DIRECTIONS, FACES
from reviewer.model.plan import Axis

LONG = {"across": Axis.ACROSS, "deep": Axis.DEEP, "upright": Axis.UP}
_SIZES = {"across": Axis.ACROSS, "wide": Axis.ACROSS, "deep": Axis.DEEP, "tall": Axis.UP}
#: Clauses that a statement has room for once, and what they say.
_ONCE: dict[type[Any], str] = {
    d.OfStock: "what it is cut from",
    d.Runs: "which way it runs",
    d.Turned: "how it is turned",
    d.Like: "what it is like",
    d.Mirrored: "how it is mirrored",
    d.InCorners: "which corners it stands in",
    d.CutClause: "what length it is cut to",
    d.Rip: "how wide it is ripped",
    d.GrainClause: "which way its grain runs",
    d.Copies: "how many copies there are",
    d.Gap: "how wide the gaps are",
    d.RowCentred: "where the row is centred",
    d.Planed: "how thick it is planed",
    d.RoundClause: "how thick a bar it is",
    d.Leaning: "which way it leans",
    d.RisingClause: "which way it rises",
    d.Opens: "how far it opens",
    d.Hinged: "where it is hinged",
    d.SlidesOut: "how far it slides",
    d.LiftsOut: "that it lifts out",
}
#: What is cut away from a part. One's own such clauses replace all of the other's.
_CUTTING: frozenset[type[Any]] = frozenset(
    [
        d.FaceCutClause,
        d.LongPoint,
        d.TaperClause,
        d.NotchClause,
        d.FittedNotchClause,
        d.TrenchClause,
        d.Stopped,
        d.HoleClause,
        d.CutPlace,
        d.CornersClause,
        d.EdgesClause,
    ]
)
_SLANTING: frozenset[type[Any]] = frozenset([d.Leaning, d.RisingClause])
#: Clauses that make a part other than a square board of its stock.
SHAPING = _CUTTING | _SLANTING | {d.Ended, d.Planed, d.RoundClause}
_MOVING_ORDER: tuple[type[Any], ...] = (d.Opens, d.SlidesOut, d.LiftsOut, d.Hinged)
_MOVING = frozenset(_MOVING_ORDER)
#: What a mirrored part keeps of the other's own clauses; its place follows from the mirror.
_KEPT_IN_MIRROR: frozenset[type[Any]] = (
    SHAPING | _MOVING | {d.OfStock, d.Runs, d.Turned, d.Rip, d.GrainClause}
)
#: Kinds of clause of which one's own replaces the other's.
_REPLACED = _KEPT_IN_MIRROR | {d.Copies, d.Gap, d.RowCentred, d.InCorners, d.CutClause}
_C = TypeVar("_C")


class Mirror(NamedTuple):
    """Of which part, on which axis, about what, and where that is said."""

    of: str
    axis: Axis
    about: d.Word
    span: Span


@dataclass(frozen=True)
class Spec:
    """What a part statement says for one name, before its clauses become equations."""

    name: str
    family: str
    statement: d.Statement
    each: str | None
    clauses: tuple[Any, ...]
    mirror: Mirror | None = None
    _by_kind: dict[type[Any], Any] = field(init=False, repr=False, compare=False)

    def __post_init__(self) -> None:
        object.__setattr__(self, "_by_kind", {type(clause): clause for clause in self.clauses})

    def only(self, kind: type[_C]) -> _C | None:
        """The clause of a kind. Where a likeness left two, one's own stands behind and counts."""
        return self._by_kind.get(kind)

    @property
    def shaped(self) -> bool:
        """Whether a clause makes it other than a square board of its stock."""
        return not SHAPING.isdisjoint(self._by_kind)

    @property
    def moves(self) -> tuple[Any, ...]:
        """What it says of how it moves; one's own words replace those of a likeness."""
        if _MOVING.isdisjoint(self._by_kind):
            return ()
        said = (self._by_kind[kind] for kind in _MOVING_ORDER if kind in self._by_kind)
        if self.each is None:
            return tuple(said)
        return tuple(
            clause._replace(face=clause.face._replace(text=with_each(clause.face.text, self.each)))
            if isinstance(clause, d.Hinged)
            else clause
            for clause in said
        )

    @property
    def long(self) -> Axis | None:
        """Where the long axis runs; None when no clause says so."""
        runs = self.only(d.Runs)
        return LONG[runs.way] if runs else None


def checked_clauses(desk: Desk, statement: d.Statement) -> tuple[Any, ...]:
    """A statement's clauses, each slack in the span clause before it; what is said twice is told."""
    kinds = set(map(type, statement.clauses))
    if len(kinds) < len(statement.clauses) and not kinds.isdisjoint(_ONCE):
        _tell_twice(desk, statement)
    if d.Slack not in kinds:
        return statement.clauses
    made: list[Any] = []
    may_follow = d.Like in kinds
    for clause in statement.clauses:
        if not isinstance(clause, d.Slack):
            made.append(clause)
            continue
        place = _last_span(made)
        if place is None:
            if may_follow:
                made.append(clause)  # it changes the slack of the part that this one is like
                continue
            desk.problem(
                clause.span,
                "This says how the ends differ, but no clause before it says what the ends meet.",
                "Put it after a clause such as: between side.left and side.right",
            )
        elif made[place].slack is not None:
            desk.problem(
                clause.span,
                "This says a second time how the ends differ.",
                "Keep one of the two.",
                also_at=(made[place].slack.span,),
            )
        else:
            made[place] = made[place]._replace(slack=clause)
    return tuple(made)


def _last_span(clauses: Sequence[Any]) -> int | None:
    places = [place for place, clause in enumerate(clauses) if isinstance(clause, d.Between | d.FromTo)]
    return places[-1] if places else None


def _tell_twice(desk: Desk, statement: d.Statement) -> None:
    seen: dict[type[Any], Any] = {}
    clauses: tuple[Any, ...] = statement.clauses
    for clause in clauses:
        kind = type(clause)
        if kind not in _ONCE:
            continue
        first = seen.setdefault(kind, clause)
        if first is not clause and not (kind is d.OfStock and first.name.text != clause.name.text):
            assert statement.name is not None
            desk.problem(
                clause.span,
                f"The {statement.kind} “{statement.name.text}” says twice {_ONCE[kind]}.",
                "Keep one of the two.",
                also_at=(first.span,),
            )


class Likeness:
    """Works out what parts take over from the parts they are like. Each chain is walked once."""

    def __init__(self, desk: Desk, specs: dict[str, Spec], doubtful: set[str]) -> None:
        self.desk = desk
        self.specs = specs
        self.doubtful = doubtful
        self._done: dict[str, Spec] = {}

    def of(self, spec: Spec) -> Spec:
        """The spec with all that it takes over. A circle is told once, at the first name of the alphabet."""
        chain: list[Spec] = []
        names: set[str] = set()
        current: Spec | None = spec
        base: Spec | None = None
        while current is not None:
            if current.name in self._done:
                base = self._done[current.name]
                break
            if current.name in names:
                self._tell_circle(chain[[each.name for each in chain].index(current.name) :])
                break
            names.add(current.name)
            chain.append(current)
            current = self._other(current)
        while chain:
            current = chain.pop()
            if base is None:
                base = current
                if current.only(d.Like) is not None:  # like something that can't be had
                    own = tuple(c for c in current.clauses if not isinstance(c, d.Like | d.Mirrored))
                    base = replace(current, clauses=own)
            else:
                base = self._taken_over(current, base)
            self._done[current.name] = base
        assert base is not None
        return base

    def _other(self, spec: Spec) -> Spec | None:
        like = spec.only(d.Like)
        if like is None:
            mirrored = spec.only(d.Mirrored)
            if mirrored is not None:
                self.doubtful.add(spec.name)
                self.desk.problem(
                    mirrored.span,
                    f"“{spec.family}” is mirrored, but it does not say which part it mirrors.",
                    "Name the part before it: like rail.front, mirrored deep about frame",
                )
            return None
        name = with_each(like.name.text, spec.each)
        other = self.specs.get(name)
        stem = name.rpartition(".")[0]
        if other is None and spec.only(d.Mirrored) is not None and self._many(stem):
            other = self.specs[stem]  # one copy has a place of its own to mirror
        if other is not None:
            return other
        self.doubtful.add(spec.name)
        copies = [known for known in self.specs if known.startswith(f"{name}.")]
        if self._many(stem):
            self.desk.problem(
                like.name.span,
                f"“{name}” is one copy of many, so there is no statement of its own to be like.",
                f"Name the statement it comes from: like {stem}",
            )
        elif copies:
            self.desk.problem(
                like.name.span,
                f"“{name}” stands for several parts, and a part can be like only one.",
                f"Name one of them, such as {copies[0]}.",
            )
        else:
            self.desk.unknown_name(like.name._replace(text=name), "part", self.specs)
        return None

    def _many(self, name: str) -> bool:
        """Whether a statement makes a row or corners out of its name."""
        spec = self.specs.get(name)
        return spec is not None and (spec.only(d.Copies) or spec.only(d.InCorners)) is not None

    def _tell_circle(self, circle: list[Spec]) -> None:
        start = min(range(len(circle)), key=lambda place: circle[place].name)
        turned = [*circle[start:], *circle[:start]]
        like = turned[0].only(d.Like)
        assert like is not None
        said = round_trip([each.name for each in turned])
        self.doubtful.update(each.name for each in circle)
        self.desk.problem(
            like.span,
            f"“{turned[0].name}” is said to be like itself, in a circle: {said}."
            if len(turned) > 1
            else f"“{turned[0].name}” is said to be like itself.",
            "Let one of them say its stock and place in full." if len(turned) > 1 else "Name another part.",
        )

    def _taken_over(self, spec: Spec, other: Spec) -> Spec:
        if not self.desk.room_for_clauses(len(other.clauses), spec.statement.head):
            self.doubtful.add(spec.name)
            return spec
        mirrored = spec.only(d.Mirrored)
        own = tuple(c for c in spec.clauses if not isinstance(c, d.Like | d.Mirrored))
        replaced = {type(c) for c in own} & _REPLACED
        if not _CUTTING.isdisjoint(replaced):
            replaced |= _CUTTING
        if not _SLANTING.isdisjoint(replaced):
            replaced |= {*_SLANTING, d.Ended}
        if not replaced.isdisjoint((d.Opens, d.SlidesOut, d.LiftsOut)):
            replaced |= _MOVING - ({d.Hinged} if d.Opens in replaced else set())
        if mirrored:
            like = spec.only(d.Like)
            assert like is not None
            kept = [c for c in other.clauses if type(c) in _KEPT_IN_MIRROR and type(c) not in replaced]
            of = with_each(like.name.text, spec.each)
            mirror = Mirror(of, DIRECTIONS[mirrored.direction], mirrored.about, mirrored.span)
            if other.shaped or other.moves:
                from reviewer.model.mirroring import mirrored_clauses

                kept = mirrored_clauses(kept, mirror, other.each)
            return replace(spec, clauses=(*kept, *own), mirror=mirror)
        long = spec.long if spec.long is not None else other.long
        row = spec.only(d.Copies) or other.only(d.Copies)
        each = spec.each if spec.each is not None else other.each
        settled = {axis for c in own for axis in axes_of(c, long, each, row)}
        kept = [
            c
            for c in other.clauses
            if type(c) not in replaced and not (axes_of(c, long, each, row) & settled)
        ]
        slack = next((c for c in reversed(own) if isinstance(c, d.Slack)), None)
        if slack is not None:
            own = tuple(c for c in own if c is not slack)
            place = _last_span(kept)
            if place is None:
                self.desk.problem(
                    slack.span,
                    f"This says how the ends differ, but “{other.name}” does not say what its ends meet.",
                    "Put it after a clause such as: between side.left and side.right",
                )
            else:
                kept[place] = kept[place]._replace(slack=slack)
        return replace(spec, clauses=(*kept, *own), each=each, mirror=other.mirror)


def axes_of(clause: Any, long: Axis | None, each: str | None, row: d.Copies | None) -> set[Axis]:
    """The axes that a clause says something about, so that a likeness knows what its own clauses replace."""

    def of_face(word: d.Word | None) -> set[Axis]:
        text = word.text if word else ""
        found = FACES.get(each or "" if text == "each" else text)
        return set() if found is None else {found[0]}

    def either(axis: Axis | None) -> set[Axis]:
        return set() if axis is None else {axis}

    if isinstance(clause, d.Between):
        return either(DIRECTIONS[clause.direction] if clause.direction else long)
    if isinstance(clause, d.FromTo):
        return of_face(clause.first.face)
    if isinstance(clause, d.Flush | d.Offset):
        return of_face(clause.face)
    if isinstance(clause, d.Centred):
        return {DIRECTIONS[clause.direction]}
    if isinstance(clause, d.Meets):
        if clause.kind in ("on", "under"):
            return {Axis.UP}
        if clause.point.face is None:
            return {Axis.DEEP} if clause.point.name.text == "wall" else {Axis.UP}
        return of_face(clause.point.face)
    if isinstance(clause, d.Sized | d.SizedAs):
        return either(_SIZES.get(clause.way, long))
    if isinstance(clause, d.RowCentred):
        return {DIRECTIONS[row.direction]} if row else set()
    if isinstance(clause, d.Copies) and clause.kind in ("spread between", "spread from"):
        return {DIRECTIONS[clause.direction]}
    return set()
