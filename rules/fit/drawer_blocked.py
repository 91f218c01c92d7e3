"""A drawer that strikes something before it is out."""

from __future__ import annotations

import math
from collections.abc import Iterator

from reviewer.findings import Filling, Finding, Severity
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.rules.fit._swing_words import alike, angle, rounded_up, thing, things, working
from reviewer.units import length
from reviewer.workshop.swings import BehindDoor, Stroke

#: A drawer that comes out this far of its way can be used: own choice.
_ENOUGH = 2 / 3


def _do_behind(review: Review, behind: BehindDoor, values: dict[str, Filling]) -> str:
    """How to get a drawer past an open door, as far as was tried."""
    ways = []
    if behind.clears is not None:
        values["clears"] = angle(behind.clears)
        ways.append("hang {door} so that it opens to {clears} (“opens {whole}”)")
        values["whole"] = f"{math.degrees(behind.clears):.0f} degrees"
    if behind.stands_in is not None:
        values["pack"] = rounded_up(behind.stands_in, review.units)
        ways.append("make {drawer} {pack} narrower and pack its slide on the hinged side out by that")
    told = ", or ".join(ways) or "let {door} open further"
    return f"{told[0].upper()}{told[1:]}: an open door stands in front of its own opening."


def _finding(review: Review, strokes: list[Stroke]) -> Finding:
    stroke = strokes[0]
    moving = stroke.moved.moving
    travel = moving.distance or 0.0
    names, many = things(review, strokes)
    values: dict[str, Filling] = {
        "drawer": names,
        "other": thing(strokes),
        "part": stroke.part,
        "way": length(max(0.0, stroke.way)),
        "asked": length(travel),
    }
    enough = stroke.behind is None and stroke.way >= _ENOUGH * travel
    strike = "strike" if many else "strikes"
    if stroke.behind is not None:
        behind = stroke.behind
        values |= {"door": behind.door, "open": angle(behind.angle)}
        says = f"{{drawer}} {strike} {{other}} of {{door}} even with that door open at {{open}}."
        do = _do_behind(review, behind, values)
        if stroke.obstacle.name == behind.door:
            says = f"{{drawer}} {strike} {{door}} even with that door open at {{open}}."
    elif stroke.obstacle.kind == "part":
        stand = "stand" if len({each.obstacle.name for each in strokes}) > 1 else "stands"
        says = (
            f"{{drawer}} {strike} {{other}} after {{way}} of {{asked}}: {{other}} {stand} in front of "
            f"{{part}}."
        )
        do = "Make {drawer} smaller, or set {other} out of its way."
    else:
        values["further"] = rounded_up(stroke.further, review.units)
        says = f"{{drawer}} {strike} {{other}} after {{way}} of {{asked}}."
        do = (
            "Set the piece {further} further from {other}, and leave room to stand there besides, or write "
            "“slides out” with less."
        )
    return Finding(
        parts=tuple(dict.fromkeys(each.part for each in strokes)),
        at=moving.span,
        says=says,
        do=do,
        values=values,
        working=working(review, stroke, values["way"], values["asked"]),
        also_at=(review.span_of(stroke.obstacle.name),) if stroke.obstacle.kind == "part" else (),
        severity=Severity.WARNING if enough else Severity.ERROR,
    )


@rule(
    "drawer-blocked",
    topic="fit",
    severity=Severity.ERROR,
    limits=("cut-difference", "skirting-thickness"),
    needs=("plan.movings",),
)
def drawer_blocked(review: Review) -> Iterator[Finding]:
    """A drawer that strikes something before it is out.

    Goes wrong: The drawer is as wide as the case, and the frame in front of the case is not. Or it sits
    behind a door that opens a quarter turn only, and the door's own thickness stands in the way.

    Judged by: All that a drawer passes through on its way, part by part, against every other part with all
    else shut, and against the walls, the skirting and the heaters of the room. A door in front of it is
    opened as far as it goes. An error, but a warning where it comes out for two thirds of its way.
    cut-difference of shared room is no stroke.

    Leaves out: Pulls and knobs; what is in the drawer; room for a person in front of it; parts that share
    room when it is shut; drawers that slide another way than to the front. Shaped parts are looked at step
    by step.

    Sources: plane geometry

    Flagged:

        plan "Chest" in inches
        stock panel: birch plywood 3/4
        stock strip: actual 3/4 x 1 1/2 pine
        outline case: 24 across, 16 deep, 12 tall, on floor
        part side for each of left, right: panel, upright, facing side, 16 deep, 12 tall, on floor
            flush with each of case, flush with front of case
        part stile for each of left, right: strip, upright, facing front, 12 tall, on floor
            against front of side.each, flush with each of case
        part tray: panel, flat, 21 1/2 across, 14 deep, bottom 2 above floor, centred across on case
            front 1 behind front of case, slides out 12
        join stile.* to side.*: glue pva
        fit tray to side.*: slides 14

    Quiet:

        plan "Chest" in inches
        stock panel: birch plywood 3/4
        stock strip: actual 3/4 x 1 1/2 pine
        outline case: 24 across, 16 deep, 12 tall, on floor
        part side for each of left, right: panel, upright, facing side, 16 deep, 12 tall, on floor
            flush with each of case, flush with front of case
        part stile for each of left, right: strip, upright, facing front, 12 tall, on floor
            against front of side.each, flush with each of case
        part tray: panel, flat, 20 3/4 across, 14 deep, bottom 2 above floor, centred across on case
            front 1 behind front of case, slides out 12
        join stile.* to side.*: glue pva
        fit tray to side.*: slides 14
    """
    strokes = [stroke for stroke in review.swings.strokes if stroke.moved.hinge is None]
    for group in alike(review, strokes):
        yield _finding(review, group)
