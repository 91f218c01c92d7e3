"""How parts and assemblies move in use: what the plan says of doors, lids, drawers and trays."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from reviewer.language import declarations as d
from reviewer.language.source import Span
from reviewer.model.desk import Desk
from reviewer.model.placing import FACES
from reviewer.model.plan import Axis, Moving
from reviewer.records import NamedTuple

#: Nothing that is hinged swings further round than this: it would be where it began.
MAX_DEGREES = 270
_WAYS: dict[type[Any], str] = {d.Opens: "opens", d.SlidesOut: "slides", d.LiftsOut: "lifts"}


class Mover(NamedTuple):
    """Something that moves as one: a part, or an assembly with all its parts."""

    name: str
    parts: tuple[str, ...]
    clauses: tuple[Any, ...]


def movings_of(desk: Desk, movers: Iterable[Mover]) -> tuple[Moving, ...]:
    """Every movement that the plan states, one for each copy. A clause is looked through once."""
    found = []
    understood: dict[tuple[Span, str], dict[str, Any] | None] = {}
    for mover in movers:
        hinged = next((clause.face.text for clause in mover.clauses if isinstance(clause, d.Hinged)), "")
        first = mover.clauses[0].span, hinged  # hinged each is not alike for all copies
        if first not in understood:
            understood[first] = _movement(desk, mover.name, mover.clauses)
        facts = understood[first]
        if facts is not None and mover.parts:
            found.append(Moving(name=mover.name, parts=mover.parts, **facts))
    return tuple(found)


def _movement(desk: Desk, name: str, clauses: tuple[Any, ...]) -> dict[str, Any] | None:
    ways = [clause for clause in clauses if type(clause) in _WAYS]
    hinges = [clause for clause in clauses if isinstance(clause, d.Hinged)]
    for second in [*ways[1:2], *hinges[1:2]]:
        desk.problem(
            second.span,
            f"“{name}” says twice how it moves.",
            "Keep one of the two.",
            also_at=((hinges if isinstance(second, d.Hinged) else ways)[0].span,),
        )
        return None
    way = ways[0] if ways else None
    hinge = hinges[0] if hinges else None
    if not isinstance(way, d.Opens) and hinge is not None:
        desk.problem(
            hinge.span,
            f"This says where “{name}” is hinged, but not how far it opens.",
            f"Say both: opens 110 degrees, hinged {hinge.face.text}",
        )
        return None
    assert way is not None
    facts: dict[str, Any] = {"kind": _WAYS[type(way)], "span": way.span}
    if isinstance(way, d.SlidesOut):
        facts["distance"] = desk.size_mm(way.size, "way that it slides")
        return facts if facts["distance"] is not None else None
    if not isinstance(way, d.Opens):
        return facts
    if not 0 < way.angle.amount <= MAX_DEGREES or way.angle.unit is not None:
        unit = f" {way.angle.unit}" if way.angle.unit else ""
        desk.problem(
            way.angle.span,
            f"“{name}” can't open {way.angle.amount:g}{unit} degrees.",
            f"Write a number above 0 and up to {MAX_DEGREES}, such as: opens 110 degrees",
        )
        return None
    if hinge is None:
        desk.problem(
            way.span,
            f"“{name}” opens, but the plan does not say where it is hinged.",
            "Name the face that its hinges are on: opens 110 degrees, hinged left",
        )
        return None
    face = FACES.get(hinge.face.text)
    if face is None:
        desk.problem(
            hinge.face.span,
            f"“{hinge.face.text}” is no face that “{name}” can be hinged at.",
            "Name one of left, right, top, bottom, back and front.",
        )
        return None
    axis, side = face
    facts |= {"degrees": way.angle.amount, "hinge": (Axis(axis), side)}
    facts["span"] = Span(min(way.span.start, hinge.span.start), max(way.span.end, hinge.span.end))
    return facts
