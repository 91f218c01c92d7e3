"""Orders of work in which a part has no way in, or a hole is bored when it no longer can be."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from reviewer.findings import Filling, Finding, Severity
from reviewer.model.plan import GROUNDS, Step
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.setting_out.result import Joint
from reviewer.wording import listed
from reviewer.workshop.joining_order import steps_of_joints

if TYPE_CHECKING:
    from reviewer.workshop.going_together import Held
    from reviewer.workshop.placed import Placed

_HIDDEN = ("dowels", "loose tenons", "biscuits")
_BORED = {"pocket screws": "pockets", "dowels": "dowel holes", "loose tenons": "mortises"}


def _no_way_in(review: Review, held: Held, sooner: bool) -> Finding:
    """Bodies that can't be moved together. The smallest is told: it is what a maker holds in the hand."""
    joints = held.joints
    among = frozenset(part for joint in joints for part in (joint.left, joint.right))
    body = next((each for each in held.bodies if among & frozenset(each)), held.bodies[0])
    mine = frozenset(body)
    holders = tuple(
        dict.fromkeys(
            other
            for joint in joints
            for part, other in ((joint.left, joint.right), (joint.right, joint.left))
            if part in mine and other not in mine
        )
    )
    values: dict[str, Filling] = {"part": listed(body, most=3), "holders": listed(holders)}
    if held.step is not None and sooner:
        values["step"] = review.plan.steps[held.step].title
        says = (
            "{part} can't go into place in “{step}”: it is let into {holders}, which by then are joined to "
            "each other, and there is no way that leads into all of them."
        )
        do = "Join {part} to {holders} in the same step that joins those to each other."
    else:
        says = (
            "{part} can't be put together with {holders}: each is let into the next so that none can move "
            "in last, in whatever order they are joined."
        )
        do = (
            "Let one of these joints run out at an end so that the part slides in, or butt it and use screws "
            "there."
        )
    if not holders:
        values["holders"] = listed(tuple(sorted(among - mine)))
    span = min((joint.join.housing or joint.join).span for joint in joints)
    return Finding(
        parts=tuple(dict.fromkeys((*body, *holders))),
        at=span,
        also_at=(review.plan.steps[held.step].span,) if held.step is not None and sooner else (),
        says=says,
        do=do,
        values=values,
    )


def _ways_in(review: Review, joints: list[Joint]) -> Iterator[Finding]:
    hidden = [placed for placed in review.placed if placed.kind in _HIDDEN]
    if not hidden and all(joint.join.housing is None for joint in joints):
        return
    from reviewer.workshop.going_together import held_apart

    anyhow = held_apart(review.setting, hidden, joints, [None] * len(joints))
    for held in anyhow:
        yield _no_way_in(review, held, sooner=False)
    if review.plan.steps and not anyhow:
        for held in held_apart(review.setting, hidden, joints, steps_of_joints(review.plan.steps, joints)):
            yield _no_way_in(review, held, sooner=True)


def _drilled(steps: tuple[Step, ...]) -> dict[str, tuple[int, int]]:
    """The first and the last step that drills each part."""
    found: dict[str, tuple[int, int]] = {}
    for number, step in enumerate(steps):
        for work in step.works:
            if work.verb == "drill":
                for part in work.parts:
                    found[part] = (found.get(part, (number, 0))[0], number)
    return found


def _drilled_late(review: Review, joints: list[Joint]) -> Iterator[Finding]:
    """Pockets and holes for hidden fasteners that a step bores after their joint is closed."""
    steps = review.plan.steps
    drilled = _drilled(steps)
    if not drilled:
        return
    made = dict(zip(map(id, joints), steps_of_joints(steps, joints), strict=True))
    late: dict[tuple[str, int, int], dict[str, None]] = {}
    first: dict[tuple[str, int, int], Placed] = {}
    for placed in review.placed:
        closed = made.get(id(placed.joint))
        if placed.number or placed.kind not in _BORED or closed is None:
            continue
        own = (placed.head_part,) if placed.kind == "pocket screws" else (placed.head_part, placed.point_part)
        for part in own:
            if part not in GROUNDS and part in drilled and drilled[part][0] > closed:
                key = (placed.kind, closed, drilled[part][0])
                late.setdefault(key, {})[part] = None
                first.setdefault(key, placed)
    for (kind, closed, number), parts in late.items():
        values: dict[str, Filling] = {
            "parts": listed(tuple(parts)),
            "holes": _BORED[kind],
            "there": steps[number].title,
            "here": steps[closed].title,
        }
        work = next(work for work in steps[number].works if work.verb == "drill")
        yield Finding(
            parts=tuple(parts),
            at=work.span,
            also_at=(first[kind, closed, number].fastening.span,),
            says="The {holes} in {parts} are drilled in “{there}”, after “{here}” has joined them: the joint "
            "is closed by then.",
            do="Put “{there}” before “{here}”.",
            values=values,
        )


@rule("step-impossible", topic="fit", severity=Severity.ERROR, needs=("plan.joins",))
def step_impossible(review: Review) -> Iterator[Finding]:
    """A part that has no way into its place when its turn comes can't be put in at all.

    Goes wrong: The frame is glued, and the panel that sits in its grooves lies on the bench. Or the last
    tenon has to go in between two posts that no longer move. The glue has set, and the saw comes out.

    Judged by: What is let into its neighbours (dado, groove, mortise and tenon, tongue and groove, dowels,
    biscuits, loose tenons) and what stands against what. A part, or parts joined in earlier steps, must be
    able to move out along an axis of the piece, one after the other or some together; what can't come out
    can't go in. The steps of the plan say what is joined before; within a step, or without steps, any
    order will do. Pockets, dowel holes and mortises are drilled before the step that closes their joint.

    Leaves out: What stands further on in the way of a part that moves. Parts that go in at a slant or are
    bent in. Slanted and shaped parts, laps, bridles, mitres and dovetails, which are taken to go together.
    Knots of more than 120 bodies. A groove is taken to run out at both ends, a dado where it comes to an
    edge. What is glued over a finish.

    Sources: common practice, no source

    Flagged:

        plan "Panel too late" in inches
        stock stile: actual 3/4 x 2 pine
        stock ply: birch plywood 1/4, sheet 48 x 96
        outline frame: 18 across, 3/4 deep, 24 tall, on floor
        part stile for each of left, right: stile, upright, facing front, as tall as frame, on floor
            flush with each of frame, flush with front of frame
        part rail for each of bottom, top: stile, across, on edge, between stile.left and stile.right
            housed 1 each end, flush with each of frame, flush with front of frame
        part panel: ply, upright, facing front
            between stile.left and stile.right across, housed 3/8 each end
            between rail.bottom and rail.top up, housed 3/8 each end, centred deep on frame
        join rail.* to stile.*: mortise and tenon 1 long 1/4 thick, glue pva
        join panel to stile.*, rail.*: groove 1/2 deep
        step "Glue the frame": join stile.*, rail.*, wait 1 h
        step "Put in the panel": join panel

    Quiet:

        plan "Panel in time" in inches
        stock stile: actual 3/4 x 2 pine
        stock ply: birch plywood 1/4, sheet 48 x 96
        outline frame: 18 across, 3/4 deep, 24 tall, on floor
        part stile for each of left, right: stile, upright, facing front, as tall as frame, on floor
            flush with each of frame, flush with front of frame
        part rail for each of bottom, top: stile, across, on edge, between stile.left and stile.right
            housed 1 each end, flush with each of frame, flush with front of frame
        part panel: ply, upright, facing front
            between stile.left and stile.right across, housed 3/8 each end
            between rail.bottom and rail.top up, housed 3/8 each end, centred deep on frame
        join rail.* to stile.*: mortise and tenon 1 long 1/4 thick, glue pva
        join panel to stile.*, rail.*: groove 1/2 deep
        step "Glue the frame": join stile.*, rail.*, panel, wait 1 h
    """
    joints = [joint for joint in review.setting.joints if joint.meets]
    yield from _ways_in(review, joints)
    if review.plan.steps:
        yield from _drilled_late(review, joints)
