"""What the rules about doors and drawers say alike. No rule of its own."""

from __future__ import annotations

import math

from reviewer.findings import Figure, Filling, Working
from reviewer.model.plan import Moving
from reviewer.review import Review
from reviewer.units import MM_PER_INCH, UnitSystem, Value, length
from reviewer.wording import listed
from reviewer.workshop.swings import Stroke

#: So many doors or drawers are named one by one.
_FEW = 3
_SIDE = {"left": "on the left", "right": "on the right", "front": "in front", "behind": "behind"}


def thing(strokes: list[Stroke]) -> str:
    """``side.left``, ``the wall on the right`` or ``the stove behind``."""
    obstacle = strokes[0].obstacle
    if obstacle.kind == "part" or obstacle.side is None:
        return listed(list(dict.fromkeys(stroke.obstacle.name for stroke in strokes)))
    return f"the {obstacle.kind} {_SIDE[obstacle.side]}"


def things(review: Review, strokes: list[Stroke]) -> tuple[str, bool]:
    """What strikes, and whether they are several."""
    names = list(dict.fromkeys(stroke.moved.moving.name for stroke in strokes))
    if len(names) > _FEW:
        return stem(review, strokes[0].moved.moving), True
    return listed(names), len(names) > 1


def rounded_up(amount_mm: float, system: UnitSystem) -> Value:
    """A length that can be stepped off in a room: the next quarter of an inch or 5 mm up."""
    step = MM_PER_INCH / 4 if system is UnitSystem.INCH else 5.0
    return length(step * max(1, math.ceil(amount_mm / step - 1e-6)))


def stem(review: Review, moving: Moving) -> str:
    """What a list calls the thing and its copies."""
    part = review.plan.parts.get(moving.name)
    if part is not None:
        return part.with_copies
    for each in review.plan.assemblies:
        if each.name == moving.name:
            return each.stem if each.stem == each.name else f"{each.stem}.*"
    return moving.name


def family(review: Review, name: str) -> str:
    """The family of a part, so that copies are told once; the name itself for all else."""
    part = review.plan.parts.get(name)
    return part.family if part else name


def angle(radians: float) -> Value:
    return Value(math.degrees(radians), "angle")


def working(review: Review, stroke: Stroke, way: Filling, asked: Filling) -> Working:
    """The figures of one thing in the way."""
    hinge = stroke.moved.hinge
    figures = []
    if hinge is not None:
        figures.append(Figure("turns about its hinged edge, at", _place(hinge.start), "its outer corner"))
    figures.append(Figure("strikes with", stroke.part))
    return Working(
        tuple(figures),
        "where the turning outline first shares room with what stands still"
        if hinge is not None
        else "the way to the nearest thing in front of it",
        Figure("free way", way),
        Figure("as planned", asked),
    )


def _place(at: tuple[float, float, float]) -> Filling:
    return length(at[0])


def alike(review: Review, strokes: list[Stroke]) -> list[list[Stroke]]:
    """Strokes of copies against copies after the same way, together."""
    groups: dict[tuple[object, ...], list[Stroke]] = {}
    for stroke in strokes:
        key = (
            stem(review, stroke.moved.moving),
            stroke.obstacle.kind,
            stroke.obstacle.side,
            family(review, stroke.obstacle.name),
            round(stroke.way, 2),
            stroke.behind is None,
        )
        groups.setdefault(key, []).append(stroke)
    return list(groups.values())
