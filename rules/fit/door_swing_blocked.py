"""A door or a lid that strikes something before it is open."""

from __future__ import annotations

import math
from collections.abc import Iterator

from reviewer.findings import Filling, Finding, Severity
from reviewer.model.plan import Axis
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.rules.fit._swing_words import alike, angle, rounded_up, thing, things, working
from reviewer.units import Value, fine_length, length
from reviewer.workshop.swings import Clash, Stroke

#: A door that opens a quarter turn can be used; a lid that does not go past upright falls shut unless a stay
#: holds it. How far past: common practice, no source.
_QUARTER = math.pi / 2
_PAST_UPRIGHT = math.radians(3)
#: A lid that a stay holds can be used from here on: own choice.
_HELD = math.radians(70)
#: A door that strikes within so much of being shut binds on the edge of its opening, radians.
_BINDING = math.radians(25)
#: Hinges could hold a door at its free edge where something stands still this near to it, mm, along so much
#: of it: own choice, a thickness of board.
_BESIDE_MM = 25.0
_RUNS_ALONG = 0.5


def _beside_free_edge(stroke: Stroke, face: tuple[Axis, str], slack: float) -> bool:
    """Whether what it strikes begins beyond the edge that the hinges are not on."""
    axis, side = face
    closed, obstacle = stroke.moved.closed, stroke.obstacle
    if side == "low":
        return obstacle.low[axis] >= closed.high[axis] - slack
    return obstacle.high[axis] <= closed.low[axis] + slack


def _could_hang_there(review: Review, stroke: Stroke) -> bool:
    """Whether something that stands still runs along the free edge: the other door of a pair holds none."""
    moved = stroke.moved
    hinge, face = moved.hinge, moved.moving.hinge
    assert hinge is not None
    assert face is not None
    if hinge.axis != Axis.UP:
        return False  # a lid or a flap is what it is by the edge that its hinges are on
    closed, moving = moved.closed, {name for each in review.plan.movings for name in each.parts}
    edge = closed.high[face[0]] if face[1] == "low" else closed.low[face[0]]
    through, along = hinge.opens_along, hinge.axis
    return any(
        name not in moving
        and solid.low[face[0]] <= edge + _BESIDE_MM
        and solid.high[face[0]] >= edge - _BESIDE_MM
        and solid.low[through] <= closed.high[through] + _BESIDE_MM
        and solid.high[through] >= closed.low[through] - _BESIDE_MM
        and min(solid.high[along], closed.high[along]) - max(solid.low[along], closed.low[along])
        >= _RUNS_ALONG * (closed.high[along] - closed.low[along])
        for name, solid in review.setting.solids.items()
    )


def _is_flap(stroke: Stroke) -> bool:
    """Whether it is hinged at its bottom and opens downwards: a quarter turn is all it needs."""
    face = stroke.moved.moving.hinge
    return face is not None and face[0] == Axis.UP and face[1] == "low"


def _has_a_stay(review: Review, stroke: Stroke) -> bool:
    own = {*stroke.moved.moving.parts}
    return any(
        piece.kind == "stays" for fit in review.plan.fits if own & {*fit.parts} for piece in fit.pieces
    )


def _do(review: Review, stroke: Stroke, values: dict[str, Filling]) -> str:
    moved, obstacle = stroke.moved, stroke.obstacle
    hinge = moved.hinge
    assert hinge is not None
    if obstacle.kind != "part":
        values["further"] = rounded_up(stroke.further, review.units)
        plan = "" if stroke.way < _QUARTER - 1e-6 else ", or write “opens {whole}” if that is enough"
        if _is_flap(stroke) or (hinge.axis != Axis.UP and _has_a_stay(review, stroke)):
            return f"Set the piece {{further}} further from {{other}}{plan}."
        if hinge.axis != Axis.UP:
            return (
                "Set the piece {further} further from {other}, and give the lid a stay in any case: one that "
                "does not go well past upright falls on hands and heads."
            )
        side = ", or hinge {door} on its other side" if _could_hang_there(review, stroke) else ""
        return f"Set the piece {{further}} further from {{other}}{side}{plan}."
    face = moved.moving.hinge
    assert face is not None
    if stroke.way < _BINDING and _beside_free_edge(stroke, face, review.limit("cut-difference").amount):
        wide = moved.closed.high[face[0]] - moved.closed.low[face[0]]
        thick = moved.closed.high[hinge.opens_along] - moved.closed.low[hinge.opens_along]
        values["gap"] = fine_length(math.hypot(wide, thick) - wide + review.limit("cut-difference").amount)
        return (
            "Leave {gap} or more between its free edge and {other}, or plane that edge back at a bevel: the "
            "inner corner of a door swings out further than the door is wide."
        )
    side = "Hinge {door} on its other side, move" if _could_hang_there(review, stroke) else "Move"
    return f"{side} {{other}} out of its way, or let {{door}} open less: “opens {{whole}}”."


def _stroke(review: Review, strokes: list[Stroke]) -> Finding:
    stroke = strokes[0]
    moved = stroke.moved
    hinge = moved.hinge
    assert hinge is not None
    lid = hinge.axis != Axis.UP and not _is_flap(stroke)
    enough = stroke.way >= _QUARTER - 1e-6
    if lid:
        enough = stroke.way >= (_HELD if _has_a_stay(review, stroke) else _QUARTER + _PAST_UPRIGHT)
    hot = stroke.obstacle.kind in ("heater", "stove", "flue")
    names, many = things(review, strokes)
    values: dict[str, Filling] = {
        "door": names,
        "other": thing(strokes),
        "way": angle(stroke.way),
        "whole": f"{max(1, math.floor(math.degrees(stroke.way) + 1e-6))} degrees",
        "asked": Value(moved.moving.degrees or 0.0, "angle"),
    }
    do = _do(review, stroke, values)
    return Finding(
        parts=tuple(dict.fromkeys(each.part for each in strokes)),
        at=moved.moving.span,
        says=(
            f"{{door}} {'strike' if many else 'strikes'} {{other}} when "
            f"{'they have' if many else 'it has'} opened "
            "{way}; the plan has {asked}."
        ),
        do=do,
        values=values,
        working=working(review, stroke, angle(stroke.way), values["asked"]),
        also_at=(review.span_of(stroke.obstacle.name),) if stroke.obstacle.kind == "part" else (),
        severity=Severity.WARNING if enough or hot else Severity.ERROR,
    )


def _clash(review: Review, clash: Clash) -> Finding:
    one, two = clash.one.moving, clash.two.moving
    return Finding(
        parts=(one.parts[0], two.parts[0]),
        at=one.span,
        says=(
            "{one} and {two} can't both be open: at {first} and {second} they would share {depth} of room."
        ),
        do="Hinge one of them on its other side, or let one open no further than 90 degrees.",
        values={
            "one": one.name,
            "two": two.name,
            "first": Value(one.degrees or 0.0, "angle"),
            "second": Value(two.degrees or 0.0, "angle"),
            "depth": length(clash.depth),
        },
        also_at=(two.span,),
        severity=Severity.WARNING,
    )


@rule(
    "door-swing-blocked",
    topic="fit",
    severity=Severity.ERROR,
    limits=("cut-difference", "skirting-thickness"),
    needs=("plan.movings",),
)
def door_swing_blocked(review: Review) -> Iterator[Finding]:
    """A door or a lid that strikes something before it is as open as the plan says.

    Goes wrong: The door hits the wall after a hand's breadth, or the skirting that nobody thought of. Two
    doors dent each other. An inset door binds on its opening, because its inner corner swings out further
    than the door is wide.

    Judged by: The door turned about the outer corner of its hinged edge, as butt hinges turn it, against
    every other part with all else shut, and against the walls, the skirting and the heaters of the room.
    The angle of the first stroke is exact for square boards. An error where a door opens less than a
    quarter turn or a lid without a stay does not get well past upright, else a warning; and a warning for two
    doors that are in each other's way when both are open, and for heaters, whose size is not known.
    cut-difference of shared room is no stroke.

    Leaves out: Handles and knobs, which need more room; hinges with a cup or two pins, which carry the door
    away from its edge; doors that fold; parts that share room when it is shut. Shaped parts are looked at
    step by step. Beyond some 20,000 pairs of parts it looks no further, and says so.

    Sources: plane geometry

    Flagged:

        plan "Cupboard in a narrow hall" in inches
        stock panel: birch plywood 3/4
        outline case: 24 across, 14 deep, 30 tall, on floor
        part side for each of left, right: panel, upright, facing side, 14 deep, 30 tall, on floor
            flush with each of case, flush with back of case
        part board for each of bottom, top: panel, across, flat, 14 deep
            between side.left and side.right across
            flush with each of case, flush with back of case
        join board.* to side.*: screws #8 x 2, 3 per joint
        part door: panel, upright, facing front, 24 across, 29 1/2 tall, bottom 1/4 above floor
            centred across on case, against front of side.left, opens 90 degrees, hinged left
        fit door to side.left: 2 hinges 2 1/2
        room hall: indoors, wall behind, wall front 20 away

    Quiet:

        plan "Cupboard in a narrow hall" in inches
        stock panel: birch plywood 3/4
        outline case: 24 across, 14 deep, 30 tall, on floor
        part side for each of left, right: panel, upright, facing side, 14 deep, 30 tall, on floor
            flush with each of case, flush with back of case
        part board for each of bottom, top: panel, across, flat, 14 deep
            between side.left and side.right across
            flush with each of case, flush with back of case
        join board.* to side.*: screws #8 x 2, 3 per joint
        part door: panel, upright, facing front, 24 across, 29 1/2 tall, bottom 1/4 above floor
            centred across on case, against front of side.left, opens 90 degrees, hinged left
        fit door to side.left: 2 hinges 2 1/2
        room hall: indoors, wall behind, wall left, wall front 26 away
    """
    found = review.swings
    strokes = [stroke for stroke in found.strokes if stroke.moved.hinge is not None]
    for group in alike(review, strokes):
        yield _stroke(review, group)
    for clash in found.clashes:
        yield _clash(review, clash)
    if found.stopped:
        yield Finding(
            parts=(),
            at=review.plan.movings[0].span,
            says="So much lies in the way of what moves that not all of it was looked at.",
            do="Mend what is told here, then review the plan again.",
            severity=Severity.NOTE,
        )
