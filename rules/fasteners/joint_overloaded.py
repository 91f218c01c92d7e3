"""Joints that a load asks more of than what holds them may bear."""

from __future__ import annotations

import math
from collections.abc import Iterator

from reviewer.findings import Figure, Filling, Finding, Severity, Working
from reviewer.model.plan import WALL
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.units import Value, count, force, length, percent
from reviewer.wording import listed
from reviewer.workshop.joint_capacity import JointCapacity, JointLoad, JointUse
from reviewer.workshop.joint_remedies import remedies

_DOES = {
    "shear": "{load} comes down there along the face, on ",
    "pull": "{load} pulls the parts apart there, on ",
    "shear and pull": "{load} comes down and pulls there at once, on ",
}


def _told_elsewhere(review: Review, load: JointLoad, use: JointUse) -> bool:
    """True for a part that nothing keeps level, for what is too short to reach, and for what hangs on the
    wall, which wall-fixing-too-weak judges as a whole: that is the fault.
    """
    if load.force.to == WALL and any(
        not piece.feet and load.force.part in piece.parts for piece in review.pieces
    ):
        return True
    if use.limit <= 0 and use.holder.kind in ("screws", "pocket screws", "nails"):
        return True
    member = review.carrying.members.get(load.force.part)
    return member is not None and member.free_end(review.limit("overhang-share").amount) is not None


def _severity(review: Review, use: JointUse) -> Severity | None:
    told_from, heavy_from = use.past(review.limits)
    if use.ratio > heavy_from + 1e-9:
        return Severity.ERROR
    if use.ratio > told_from + 1e-9:
        return Severity.WARNING
    near = use.ratio >= review.limit("joint-near-share").amount
    return Severity.WARNING if near and use.hold.certain else None


def _holder(use: JointUse) -> tuple[str, dict[str, Filling]]:
    """What holds the joint, in words: ``2 screws``, ``the dado``, ``the glue``."""
    if use.holder.what != "fastening":
        return f"the {use.holder.kind}", {}
    noun = use.holder.kind if use.holder.number != 1 else use.holder.kind.removesuffix("s")
    if use.one:
        return f"the hardest pulled of {{number}} {noun}", {"number": count(use.holder.number)}
    return f"{{number}} {noun}", {"number": count(use.holder.number)}


def _remedy(
    review: Review, capacity: JointCapacity, load: JointLoad, use: JointUse
) -> tuple[str, dict[str, Filling]]:
    values: dict[str, Filling] = {}
    ways = []
    kind = use.holder.kind
    for each in remedies(review, capacity, load):
        at = f"at_{each.what}"
        values[at] = percent(math.ceil(100 * each.ratio))
        if each.what == "more":
            values["more"] = count(each.amount)
            ways.append(f"use {{more}} {kind} in each joint: then it is at {{{at}}}")
        elif each.what == "longer":
            values["longer"] = length(each.amount)
            ways.append(f"use {kind} {{longer}} long: then it is at {{{at}}}")
        elif each.what == "thicker":
            values["thicker"] = each.said
            ways.append(f"use {{thicker}} {kind}: then it is at {{{at}}}")
        else:
            values["cleat"] = count(each.amount)
            ways.append(
                "screw a cleat to {to} under {part}, with {cleat} of the same screws across the grain: "
                f"then they are at {{{at}}}"
            )
    if not ways:
        if use.way == "shear":
            return (
                "Let {part} rest on something there, such as a cleat, a ledger or a dado that is fixed to "
                "{to}, or hold it at more places."
            ), values
        return (
            "Put something under {part}, such as a bracket, a leg or a brace, so that nothing pulls.",
            values,
        )
    said = ", or ".join(ways[:3])
    return f"{said[0].upper()}{said[1:]}.", values


def _working(load: JointLoad, use: JointUse) -> Working:
    figures = [Figure("shear along the face", force(load.force.shear))]
    if load.force.pull:
        figures.append(Figure("pull across the joint", force(load.force.pull)))
    if load.force.moment:
        figures.append(Figure("moment that opens the joint", Value(load.force.moment, "moment")))
    holder = use.holder
    if holder.what == "fastening":
        figures.append(Figure(f"{holder.kind} in the joint", count(holder.number)))
        if holder.shear is not None and use.way != "pull":
            figures.append(Figure("one bears in shear", force(holder.shear.force), holder.shear.source))
        if holder.pull is not None and use.way != "shear":
            figures.append(Figure("one bears in pull", force(holder.pull.force), holder.pull.source))
    formula = {
        "shear": "may bear = number × shear of one",
        "pull": "may bear = pull of the hardest pulled" if use.one else "may bear = number × pull of one",
        "shear and pull": "may bear, at the slant a of the load: W·Z / (W·cos² a + Z·sin² a) each",
    }[use.way]
    if holder.what == "housing":
        formula = "may bear = area that bears × stress that the wood may bear"
    elif holder.what == "glue":
        formula = "may bear = glued area × share of the wood's shear strength"
    elif use.way == "shear and pull" and holder.kind == "nails":
        formula = "may bear, at the slant a of the load: W·Z / (W·cos a + Z·sin a) each"
    return Working(
        tuple(figures),
        formula,
        Figure("comes there", force(use.force)),
        Figure("may bear", force(use.limit), use.hold.source),
    )


def _finding(
    review: Review, capacity: JointCapacity, group: list[JointLoad], use: JointUse, severity: Severity
) -> Finding:
    load = group[0]
    parts = tuple(dict.fromkeys(each.force.part for each in group))
    others = tuple(dict.fromkeys(each.force.to for each in group))
    holder, values = _holder(use)
    over = use.force - use.limit
    values |= {
        "parts": listed(parts),
        "others": listed(["the wall" if each == WALL else each for each in others]),
        "part": load.force.part,
        "to": "the wall" if load.force.to == WALL else load.force.to,
        "load": force(use.force),
        "limit": force(use.limit),
        "who": use.hold.who,
        "used": percent(math.ceil(100 * use.ratio)) if use.limit > 0 else "past any limit",
        "over": force(abs(over)),
        "mode": use.hold.mode,
    }
    says = f"Where {{parts}} {'meets' if len(parts) == 1 else 'meet'} {{others}}, {_DOES[use.way]}{holder}. "
    one = use.one or (use.holder.what == "fastening" and use.holder.number == 1)
    says += f"{'It' if one or use.holder.what != 'fastening' else 'They'} may bear {{limit}} ({{who}})"
    if use.ratio > 1 + 1e-9:
        says += ", so that is {over} too much: {used} of it. What gives way first: {mode}."
        do, more = _remedy(review, capacity, load, use)
    else:
        says += ", so only {over} is left: {used} of it. What would give way first: {mode}."
        do, more = "Choose clear wood for {parts} there, bore pilot holes, and add a fastener if you can.", {}
    clause = use.holder.fastening.span if use.holder.fastening is not None else load.force.joints[0].join.span
    loads = [each.span for part in parts for each in review.loads_by_part.get(part, ())]
    return Finding(
        parts=(*parts, *(each for each in others if each != WALL)),
        at=clause,
        also_at=tuple(loads[:1]),
        says=says,
        do=do,
        values=values | more,
        working=_working(load, use),
        severity=severity,
    )


@rule(
    "joint-overloaded",
    topic="fasteners",
    severity=Severity.ERROR,
    limits=("joint-near-share", "joint-estimate-share", "joint-error-share", "overhang-share", "wallboard"),
    needs=("plan.joins",),
)
def joint_overloaded(review: Review) -> Iterator[Finding]:
    """A joint that a load asks more of than its fasteners, its housing or its glue may bear.

    Goes wrong: The shelf holds for a week. Then the screws bend in their holes, the wood under them is
    crushed, and the end of the shelf comes down; or the ledge tips forward and draws its screws out.

    Judged by: What the load path brings to each joint, by statics: a load that comes down along the face
    shears, what hangs is pulled, what is held on one side alone turns open and pulls on what stands above.
    What lies on something is borne by it and loads no fastener; a dado, a lap or a tenon bears by its wood.
    Screws, nails and bolts: NDS 2018, all yield modes for shear, withdrawal by thread, wood and depth, two
    thirds of the shear in end grain, load duration, wet service outdoors, group action. Of several things
    that hold a joint the one that holds most counts. Beyond a value that the NDS covers it is an error;
    where the same equations only estimate (less than six diameters of depth, panels, pocket screws, metric
    screws whose root is not read, dowels, tenons, glue) a warning from joint-estimate-share times the value
    on, since good makers rely on such joints every day, and an error from joint-error-share times on. From
    joint-near-share of an NDS value on it is a warning that it is near.

    Leaves out: What a piece hangs on the wall by, which wall-fixing-too-weak judges. Sideways pushes (racks
    judges those), and parts that several joints keep from turning. Brackets, biscuits, wedges, shelf pins and
    glue that is pulled apart have no published value: where one of them helps, nothing is judged. Screws that
    never reach the far part, which is told by itself. Tearing at edges and ends. Buildings, and whatever
    people hang from: there a licensed engineer works it out.

    Sources: NDS 2018 chapters 11 and 12, as transcribed; end grain and glue: Wood Handbook ch. 8 and 10

    Flagged:

        plan "Screwed shelf" in inches
        stock board: 1x10 pine
        outline case: 24 across, 9 1/4 deep, 40 tall, on floor
        part side for each of left, right: board, upright, facing side, as tall as case, on floor
            flush with each of case, flush with front of case
        part shelf: board, across, flat, between side.left and side.right, flush with front of case
            bottom 20 above floor
        join shelf to side.*: screws #6 x 1 1/2, 2 per joint, from outside
        load shelf: 2 people seated

    Quiet:

        plan "Screwed shelf" in inches
        stock board: 1x10 pine
        outline case: 24 across, 9 1/4 deep, 40 tall, on floor
        part side for each of left, right: board, upright, facing side, as tall as case, on floor
            flush with each of case, flush with front of case
        part shelf: board, across, flat, between side.left and side.right, flush with front of case
            bottom 20 above floor
        join shelf to side.*: screws #8 x 2, 3 per joint, from outside
        load shelf: books
    """
    groups: dict[object, list[tuple[JointLoad, JointUse, Severity]]] = {}
    for load in review.joint_loads:
        use = load.worst
        if use is None or not load.judged:
            continue
        severity = _severity(review, use)
        if severity is None or _told_elsewhere(review, load, use):
            continue
        key = (load.force.joints[0].join.span, use.holder.kind, use.way, severity)
        groups.setdefault(key, []).append((load, use, severity))
    if not groups:
        return
    capacity = JointCapacity(review)
    for found in groups.values():
        found.sort(key=lambda each: -round(min(each[1].ratio, 1e9), 6))
        _, use, severity = found[0]
        yield _finding(review, capacity, [each[0] for each in found], use, severity)
