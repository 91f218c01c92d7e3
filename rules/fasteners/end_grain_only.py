"""Joints that carry a load by fasteners in end grain alone."""

from __future__ import annotations

import math
from collections.abc import Iterator

from reviewer.findings import Figure, Filling, Finding, Severity, Working
from reviewer.model.plan import WALL
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.units import force, percent
from reviewer.wording import listed
from reviewer.workshop.joint_capacity import JointLoad


def _pull(load: JointLoad) -> float:
    """What takes the joint apart, N: the pull, and what turns it open at the lever of the joint's height."""
    force = load.force
    height = max(force.high[2] - force.low[2], 1.0)
    return force.pull + force.moment / height


def _why(review: Review, load: JointLoad) -> str | None:
    """How a joint hangs on end grain: *pull*, *nails* or *screws*; None where it does not."""
    holders = [each for each in load.holders if each.what != "fastening" or each.number]
    if not holders or not load.force.loads or not all(each.end_grain for each in holders):
        return None
    least = review.limit("end-grain-load").amount
    if load.force.shear + _pull(load) < least:
        return None
    fasteners = [each for each in holders if each.what == "fastening"]
    if not fasteners:
        return None  # told by glue-on-end-grain
    if load.force.pull > 0 or load.force.moment > 0:
        return "pull"
    if all(each.kind == "nails" for each in fasteners):
        return "nails"
    worst = load.worst
    if worst is not None and review.limit("end-grain-share").amount <= worst.ratio <= 1:
        return "screws"
    return None


_SAYS = {
    "pull": "{parts} {hold} to {others} by {kind} in end grain alone, and {load} pulls on them along the "
    "fibres. Threads in end grain cut them short, so the building code allows no pull there.",
    "nails": "{parts} {hold} to {others} by nails in end grain alone, and {load} comes there. They work "
    "loose as the wood swells and shrinks.",
    "screws": "{parts} {hold} to {others} by {kind} in end grain alone, and {load} comes there: {used} of "
    "what they may bear. Screws in end grain split it and work loose, so that leaves little.",
}
_DO = {
    "pull": "Let {part} rest on a cleat or in a dado, or drive the screws into side grain, such as into a "
    "block glued into the corner.",
    "nails": "Use screws with pilot holes, house {part} in {to}, or put a cleat under it.",
    "screws": "House {part} in {to}, put a cleat under it, or glue in dowels across its end for the screws "
    "to bite.",
}


def _finding(review: Review, why: str, group: list[JointLoad]) -> Finding:
    load = group[0]
    parts = tuple(dict.fromkeys(each.force.part for each in group))
    others = tuple(dict.fromkeys(each.force.to for each in group))
    pull = _pull(load)
    height = max(load.force.high[2] - load.force.low[2], 1.0)
    comes = pull if why == "pull" else load.force.shear + pull
    holder = next((each for each in load.holders if each.what == "fastening"), load.holders[0])
    values: dict[str, Filling] = {
        "parts": listed(parts),
        "others": listed(["the wall" if each == WALL else each for each in others]),
        "part": load.force.part,
        "to": "the wall" if load.force.to == WALL else load.force.to,
        "hold": "is held" if len(parts) == 1 else "are held",
        "load": force(comes),
        "kind": holder.kind,
    }
    if load.worst is not None:
        ratio = load.worst.ratio  # without end where a fastener has no hold at all, as one far too short
        values["used"] = percent(math.ceil(100 * ratio)) if math.isfinite(ratio) else "all and more"
    joint = load.force.joints[0]
    at = holder.fastening.span if holder.fastening is not None else joint.join.span
    share = review.limit("end-grain-share")
    return Finding(
        parts=(*parts, *(each for each in others if each != WALL)),
        at=at,
        says=_SAYS[why],
        do=_DO[why],
        values=values,
        working=Working(
            (
                Figure("shear", force(load.force.shear)),
                Figure("pull", force(load.force.pull)),
                Figure("pull of what turns it open", force(load.force.moment / height)),
            ),
            "load = pull + pull of what turns it open" if why == "pull" else "load = shear + pull",
            Figure("load", force(comes)),
            Figure(
                "share of the value from which screws are told", percent(100 * share.amount), share.source
            ),
        ),
    )


@rule(
    "end-grain-only",
    topic="fasteners",
    severity=Severity.WARNING,
    limits=("end-grain-share", "end-grain-load"),
    needs=("plan.joins",),
)
def end_grain_only(review: Review) -> Iterator[Finding]:
    """A load that hangs on fasteners in end grain alone.

    Goes wrong: A screw in end grain lies between the fibres and cuts them short. It feels tight on the
    bench. A season of swelling, or a child that pulls at the rail, opens the joint.

    Judged by: Joints that the load path goes through, and that nothing holds but fasteners whose points
    stand in end grain (glue on that end does not count). Nails alone and any pull along the fibres are
    told; screws that a load only shears, as good makers use them every day, not before they are at end-
    grain-share of what they may bear (two thirds of the value in side grain). Dowels that are glued,
    housings, brackets and glue on side grain make it quiet. Less than end-grain-load is no load.

    Leaves out: Glue alone on end grain, which glue-on-end-grain tells. Edges of sheets, which have no end
    grain. Sideways pushes. A joint past what it may bear is joint-overloaded's.

    Sources: NDS 2018 12.2.2.3 and 12.2.3.4 (no withdrawal of screws and nails in end grain, as transcribed)

    Flagged:

        plan "Nailed bench" in inches
        stock board: actual 1 1/4 x 11 pine
        outline bench: 30 across, 11 deep, 17 tall, on floor
        part side for each of left, right: board, upright, facing side, as tall as bench, on floor
            flush with each of bench, flush with front of bench
        part seat: board, across, flat, between side.left and side.right, flush with front of bench
            flush with top of bench
        join seat to side.*: nails 3, 8 per joint, from outside, glue pva
        load seat: 1 person seated

    Quiet:

        plan "Screwed bench" in inches
        stock board: actual 1 1/4 x 11 pine
        outline bench: 30 across, 11 deep, 17 tall, on floor
        part side for each of left, right: board, upright, facing side, as tall as bench, on floor
            flush with each of bench, flush with front of bench
        part seat: board, across, flat, between side.left and side.right, flush with front of bench
            flush with top of bench
        join seat to side.*: screws #10 x 3, 4 per joint, from outside, glue pva
        load seat: 1 person seated
    """
    groups: dict[object, tuple[str, list[JointLoad]]] = {}
    for load in review.joint_loads:
        why = _why(review, load)
        if why is not None:
            key = (load.force.joints[0].join.span, why)
            groups.setdefault(key, (why, []))[1].append(load)
    for why, group in groups.values():
        group.sort(key=lambda each: -round(each.force.shear + _pull(each), 6))
        yield _finding(review, why, group)
