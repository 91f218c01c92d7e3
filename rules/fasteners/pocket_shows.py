"""Pockets in a face that is seen when the piece is in use."""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import TYPE_CHECKING

from reviewer.findings import Edit, Filling, Finding, Severity
from reviewer.geometry.vectors import Vector, dot, moved, times, unit
from reviewer.model.plan import GROUNDS, Surfacing
from reviewer.records import NamedTuple
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.wording import listed

if TYPE_CHECKING:
    from reviewer.workshop.placed import Placed

#: A face that looks this much one way (as a cosine) counts as looking there.
_MOSTLY = 0.7
#: What covers a pocket is looked for along a line so thick, mm.
_THIN = 1.0


#: The sides of a part in words, low and high, by axis.
_SIDES = (("left", "right"), ("front", "back"), ("under", "top"))


class _Face(NamedTuple):
    """The face that a pocket is bored in: where, and the way that it looks."""

    at: Vector
    out: Vector


def _face(placed: Placed) -> _Face | None:
    if placed.mouth is None:
        return None
    through = moved(placed.direction, placed.surface_normal, -dot(placed.direction, placed.surface_normal))
    if math.hypot(*through) < 1e-6:
        return None
    return _Face(placed.mouth, times(unit(through), -1.0))


def _side(out: Vector) -> str:
    """Which way a face looks, in a word."""
    axis = max(range(3), key=lambda each: abs(out[each]))
    return _SIDES[axis][out[axis] > 0]


class _Eye:
    """What can be seen of a piece from outside."""

    def __init__(self, review: Review) -> None:
        solids = [solid for name, solid in review.setting.solids.items() if name not in GROUNDS]
        low = [min(solid.low[axis] for solid in solids) for axis in range(3)]
        high = [max(solid.high[axis] for solid in solids) for axis in range(3)]
        self.near = review.near
        self.middle = ((low[0] + high[0]) / 2, (low[1] + high[1]) / 2, (low[2] + high[2]) / 2)
        self.far = math.dist(low, high)
        room = review.plan.room
        wall = room.wall if room is not None else None
        self.unseen = {"under", "back", *((wall,) if wall in ("left", "right") else ())}

    def sees(self, face: _Face, part: str) -> bool:
        """Whether a pocket in a face of a part shows: on the outside, with nothing in front of it."""
        from reviewer.workshop.sweeps import Sweep, stands_in

        if _side(face.out) in self.unseen or max(map(abs, face.out)) < _MOSTLY:
            return False
        to_middle = tuple(a - b for a, b in zip(self.middle, face.at, strict=True))
        if sum(a * b for a, b in zip(to_middle, face.out, strict=True)) > 0:
            return False  # it looks inwards
        line = Sweep(face.at, face.out, 0.0, self.far, _THIN)
        return not any(
            solid.name != part and stands_in(solid, line) for solid in self.near.within(line.bounds)
        )


def _plugged(review: Review) -> set[tuple[str, str]]:
    """The parts, each with a side of it, whose finish plugs the pockets there."""
    plugging = [
        place
        for place, finish in enumerate(review.plan.finishes)
        if any(isinstance(step, Surfacing) and step.work == "plug pockets" for step in finish.steps)
    ]
    if not plugging:
        return set()
    return {
        (each.part, _SIDES[each.face[0]][each.face[1] == "high"])
        for each in review.schedules
        if any(place in each.finishes for place in plugging)
    }


#: What the plan says for the face opposite to one.
_OPPOSITE = {
    "front": "back",
    "back": "front",
    "left": "right",
    "right": "left",
    "top": "below",
    "under": "above",
}


def _other_side(review: Review, eye: _Eye, group: list[Placed], sides: tuple[str, ...]) -> str | None:
    """The side to bore from instead, where the pockets are out of sight; None where that shows too."""
    if len(sides) != 1:
        return None
    for placed in group:
        face, solid = _face(placed), review.setting.solids[placed.head_part]
        assert face is not None
        through = solid.through(max(range(3), key=lambda axis: abs(face.out[axis])))
        if eye.sees(_Face(moved(face.at, face.out, -through), times(face.out, -1.0)), placed.head_part):
            return None
    return _OPPOSITE[sides[0]]


def _finding(review: Review, eye: _Eye, group: list[Placed]) -> Finding:
    heads = tuple(dict.fromkeys(placed.head_part for placed in group))
    faces = (_face(placed) for placed in group)
    sides = tuple(dict.fromkeys(_side(face.out) for face in faces if face is not None))
    fastening = group[0].fastening
    other = _other_side(review, eye, group, sides)
    values: dict[str, Filling] = {"heads": listed(heads), "sides": listed(sides), "other": other or ""}
    edit = None
    if other is not None and fastening.from_span is not None:
        edit = Edit(fastening.from_span, f"from {other}")
    do = (
        "Bore them from the other face (“from {other}”)" if other else "Use dowels or screws from behind here"
    )
    return Finding(
        parts=heads,
        at=fastening.from_span or fastening.span,
        says=f"The pockets in {{heads}} are bored in the {{sides}} {'face' if len(sides) == 1 else 'faces'}, "
        f"which {'is' if len(sides) == 1 else 'are'} seen when the piece is in use: nothing covers them.",
        do=f"{do}; where they are to be plugged, say so in the finish of that face (“plug pockets”).",
        values=values,
        edit=edit,
    )


@rule("pocket-shows", topic="fasteners", severity=Severity.WARNING, needs=("placed",))
def pocket_shows(review: Review) -> Iterator[Finding]:
    """A pocket in a face that shows is a row of long holes in the finished piece.

    Goes wrong: A pocket is an open slot, an inch and more long. Bored in the wrong face it looks out at
    whoever comes in, and a plug of another wood makes it worse.

    Judged by: The face that the pocket is bored in. It shows when it looks to the front, up, or to a side
    that no wall is on, away from the middle of the piece, and no other part stands in front of the pocket.

    Leaves out: The back and the underside, which are not seen in use, and the inside of an open case.
    How far up the piece hangs: a top face above the eyes is told too. Pockets in a face whose finish says
    `plug pockets`: plugs-show tells what shows of those.

    Sources: common practice, no source

    Flagged:

        plan "Pockets in front" in inches
        stock board: actual 3/4 x 3 1/2 pine
        outline frame: 24 across, 3 1/2 deep, 20 tall, on floor
        part post for each of left, right: board, upright, facing front, as tall as frame, on floor
            flush with each of frame, flush with front of frame
        part rail: board, across, on edge, between post.left and post.right, flush with top of frame
            flush with front of frame
        join rail to post.*: pocket screws 1 1/4, 2 per end, from front

    Quiet:

        plan "Pockets behind" in inches
        stock board: actual 3/4 x 3 1/2 pine
        outline frame: 24 across, 3 1/2 deep, 20 tall, on floor
        part post for each of left, right: board, upright, facing front, as tall as frame, on floor
            flush with each of frame, flush with front of frame
        part rail: board, across, on edge, between post.left and post.right, flush with top of frame
            flush with front of frame
        join rail to post.*: pocket screws 1 1/4, 2 per end, from back
    """
    pockets = [placed for placed in review.placed if placed.kind == "pocket screws"]
    if not pockets:
        return
    eye, plugged = _Eye(review), _plugged(review)
    groups: dict[int, list[Placed]] = {}
    for placed in pockets:
        face = _face(placed)
        if face is None or (placed.head_part, _side(face.out)) in plugged:
            continue
        if eye.sees(face, placed.head_part):
            groups.setdefault(id(placed.fastening), []).append(placed)
    for group in groups.values():
        yield _finding(review, eye, group)
