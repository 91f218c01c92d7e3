"""Nails that a load pulls on along themselves."""

from __future__ import annotations

import math
from collections.abc import Iterator

from reviewer.findings import Figure, Filling, Finding, Severity, Working
from reviewer.mechanics.fasteners import hardest_pull
from reviewer.model.plan import WALL
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.units import count, force, length, percent
from reviewer.wording import listed
from reviewer.workshop.holds import Holder
from reviewer.workshop.joint_capacity import JointCapacity, JointLoad
from reviewer.workshop.joint_remedies import screws_instead


def _pulled_nail(load: JointLoad) -> tuple[Holder, float] | None:
    """The nails of a joint that a load pulls on, and how hard on the worst of them, N; else None."""
    if load.force.pull <= 0 and load.force.moment <= 0:
        return None
    if any(each.kind != "nails" and (each.pull is not None or each.open_pull) for each in load.holders):
        return None  # something that may hold a pull is there as well
    nails = next((each for each in load.holders if each.kind == "nails" and each.number), None)
    if nails is None:
        return None
    pull = load.force.pull / nails.number
    if load.force.moment > 0:
        pull += hardest_pull(nails.heights, load.force.moment) if nails.heights else math.inf
    return nails, pull


def _finding(review: Review, group: list[tuple[JointLoad, Holder, float]]) -> Finding:
    load, nails, pull = group[0]
    parts = tuple(dict.fromkeys(each[0].force.part for each in group))
    others = tuple(dict.fromkeys(each[0].force.to for each in group))
    values: dict[str, Filling] = {
        "parts": listed(parts),
        "others": listed(["the wall" if each == WALL else each for each in others]),
        "part": load.force.part,
        "number": count(nails.number),
        "pull": force(pull),
        "least": force(review.limit("nail-pull-least").amount),
    }
    says = (
        "{parts} hangs by nails from {others}: {pull} pulls on each of them along itself, day and night. "
        if len(parts) == 1
        else "{parts} hang by nails from {others}: {pull} pulls on each of them along itself, day and night. "
    )
    if load.force.moment > 0:
        says = "What {parts} carries turns the nails to {others} out: {pull} pulls on the hardest pulled. "
    held = nails.pull.force if nails.pull is not None else 0.0
    if held > 0:
        values["held"] = force(held)
        says += (
            "A new one draws out at five times {held} on average, but smooth nails let go under a pull that "
        )
        says += "stays, as the wood swells and shrinks."
    else:
        says += "In end grain a nail holds no pull at all."
    capacity = JointCapacity(review)
    remedy = screws_instead(review, capacity, load, nails)
    do = "Turn the joint so that the nails are sheared, not pulled, or hold {part} with screws or bolts."
    if remedy is not None:
        values |= {"gauge": remedy.said, "then": percent(math.ceil(100 * remedy.ratio))}
        do = "Use screws {gauge} of the same length in their place: then the joint is at {then} of what it "
        do += "may bear. Or let {part} rest on something."
    figures = [Figure("pull across the joint", force(load.force.pull)), Figure("nails", count(nails.number))]
    if nails.fastening is not None and nails.fastening.length is not None:
        figures.append(Figure("length", length(nails.fastening.length)))
    fastening = nails.fastening
    return Finding(
        parts=(*parts, *(each for each in others if each != WALL)),
        at=fastening.span if fastening is not None else load.force.joints[0].join.span,
        says=says,
        do=do,
        values=values,
        working=Working(
            tuple(figures),
            "pull on each = pull / number, and what a moment adds",
            Figure("pull on the hardest pulled", force(pull)),
            Figure(
                "a pull that counts",
                force(review.limit("nail-pull-least").amount),
                review.limit("nail-pull-least").source,
            ),
        ),
    )


@rule(
    "nail-in-tension",
    topic="fasteners",
    severity=Severity.ERROR,
    limits=("nail-pull-least",),
    needs=("plan.joins",),
)
def nail_in_tension(review: Review) -> Iterator[Finding]:
    """Smooth nails that a load pulls on along themselves let go in time.

    Goes wrong: The shelf that is nailed up from below, or the drawer bottom that is nailed on from
    underneath, holds while it is new. Each winter the wood shrinks away from the smooth shanks, and one day
    it is all on the floor.

    Judged by: What the load path brings to each joint. Where a part hangs from, or is turned off, what
    nothing but nails holds it to, by more than nail-pull-least for each nail, it is an error, however many
    nails there are. Glue on long grain, screws, bolts or hardware beside the nails make it quiet. A part
    that rests on something, or that nails hold against sliding, does not pull on them.

    Leaves out: Ring-shank and screw-shank nails, which the language does not tell apart. Clenched nails.
    Light trim that weighs next to nothing.

    Sources: EN 1995-1-1 8.3.2 (smooth nails take no lasting pull, as coded in two public libraries); NDS
    2018 12.2.3 (withdrawal, a quarter of it where the wood dries, none in end grain, as transcribed)

    Flagged:

        plan "Nailed tray" in inches
        stock board: 1x4 pine
        stock sheet: birch plywood 1/4
        outline box: 20 across, 12 deep, 3 1/2 tall, bottom 30 above floor
        part end for each of left, right: board, deep, on edge, 12 long, flush with each of box
            flush with front of box, flush with top of box, against wall
        part floor-board: sheet, across, flat, under end.left, from left of box to right of box
            from front of box to back of box
        join end.* to wall: screws #10 x 3, 2 per joint
        join floor-board to end.*: nails 1 1/4, 4 per joint, from below
        load floor-board: 30 lb
        room shed: indoors, wall behind, studs every 16, no children

    Quiet:

        plan "Screwed tray" in inches
        stock board: 1x4 pine
        stock sheet: birch plywood 1/4
        outline box: 20 across, 12 deep, 3 1/2 tall, bottom 30 above floor
        part end for each of left, right: board, deep, on edge, 12 long, flush with each of box
            flush with front of box, flush with top of box, against wall
        part floor-board: sheet, across, flat, under end.left, from left of box to right of box
            from front of box to back of box
        join end.* to wall: screws #10 x 3, 2 per joint
        join floor-board to end.*: screws #8 x 1 1/4, 4 per joint, from below
        load floor-board: 30 lb
        room shed: indoors, wall behind, studs every 16, no children
    """
    if not any(each.kind == "nails" for join in review.plan.joins for each in join.fastenings):
        return
    least = review.limit("nail-pull-least").amount
    groups: dict[object, list[tuple[JointLoad, Holder, float]]] = {}
    for load in review.joint_loads:
        found = _pulled_nail(load)
        if found is not None and found[1] > least:
            key = (
                found[0].fastening.span if found[0].fastening is not None else load.force.joints[0].join.span
            )
            groups.setdefault(key, []).append((load, *found))
    for group in groups.values():
        group.sort(key=lambda each: -round(min(each[2], 1e9), 6))
        yield _finding(review, group)
