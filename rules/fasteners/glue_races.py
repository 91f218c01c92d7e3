"""Steps that glue more joints than the glue stays open for."""

from __future__ import annotations

import math
from collections.abc import Iterator

from reviewer.findings import Figure, Filling, Finding, Severity, Working
from reviewer.reference.glues import glue
from reviewer.reference.usual_values import usual_value
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.units import count, hours
from reviewer.workshop.gluing import glued_in_steps, gluing_hours


@rule("glue-races", topic="fasteners", severity=Severity.WARNING)
def glue_races(review: Review) -> Iterator[Finding]:
    """One step glues so many joints that the first ones set before the last are closed.

    Goes wrong: Glue is spread on twenty joints, and when the last clamp goes on the first have skinned over.
    The frame is out of square, and can be neither closed nor opened.

    Judged by: The glued joints of each of the plan's steps, a minute for each, against the longest time that
    the glue table gives for its being open or, where that is longer, for putting together.

    Leaves out: Plans without steps. Joints whose step is not plain. How many hands there are, and how many
    clamps.

    Sources: the glue table, each glue with its source; a minute a joint is our own choice

    Flagged:

        plan "Slats" in inches
        stock slat: actual 3/4 x 2 pine
        stock rail: actual 3/4 x 3 pine
        part rail: rail, across, flat, 60 long, left at 0, front at 0, on floor
        part slat: slat, deep, flat, 10 long, on rail, front at 0, left at 0
            24 copies every 2 1/2 across
        join slat.* to rail: glue pva
        step "Glue up": join slat.*

    Quiet:

        plan "Slats" in inches
        stock slat: actual 3/4 x 2 pine
        stock rail: actual 3/4 x 3 pine
        part rail: rail, across, flat, 60 long, left at 0, front at 0, on floor
        part slat: slat, deep, flat, 10 long, on rail, front at 0, left at 0
            6 copies every 2 1/2 across
        join slat.* to rail: glue pva
        step "Glue up": join slat.*
    """
    for number, joints in glued_in_steps(review).items():
        step = review.plan.steps[number]
        keys = tuple(dict.fromkeys(joint.join.glue for joint in joints if joint.join.glue is not None))
        known = min((glue(key) for key in keys), key=lambda each: max(each.open_time[1], each.assembly[1]))
        most, needed = max(known.open_time[1], known.assembly[1]), gluing_hours(len(joints))
        if needed <= most + 1e-9:
            continue
        parts = tuple(dict.fromkeys(joint.left for joint in joints))
        each_minutes = usual_value("glue-joint-minutes")
        values: dict[str, Filling] = {
            "step": step.title,
            "joints": count(len(joints)),
            "needed": hours(needed),
            "most": hours(most),
            "glue": known.said,
            "who": known.times_source,
            "lots": count(math.ceil(needed / most - 1e-9)),
            "each": hours(each_minutes / 60),
        }
        yield Finding(
            parts=parts,
            at=step.span,
            also_at=tuple(dict.fromkeys(joint.join.span for joint in joints)),
            says="“{step}” glues {joints} joints in one go: at {each} a joint that takes {needed}, and "
            "{glue} has to be closed within {most} at the longest ({who}). The first joints set before the "
            "last are together.",
            do="Glue it in {lots} lots, each a step of its own, or take a glue that stays open longer.",
            values=values,
            working=Working(
                (
                    Figure("joints", count(len(joints))),
                    Figure("time for a joint", hours(each_minutes / 60), "own choice"),
                ),
                "time = joints × time for a joint",
                Figure("time", hours(needed)),
                Figure("longest", hours(most), known.times_source),
            ),
        )
