"""Steps that go on before the glue of a step holds."""

from __future__ import annotations

import math
from collections.abc import Iterator

from reviewer.findings import Edit, Filling, Finding, Severity
from reviewer.model.plan import Step, Waiting, Work
from reviewer.reference.glues import glue
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.units import hours
from reviewer.wording import listed
from reviewer.workshop.gluing import glued_in_steps


def _waits(step: Step) -> list[Waiting]:
    """The waits of a step that come after what it joins."""
    works = [
        place
        for place, item in enumerate(step.items)
        if isinstance(item, Work) and item.verb in ("join", "fit")
    ]
    last = works[-1] if works else -1
    return [item for item in step.items[last + 1 :] if isinstance(item, Waiting)]


@rule("clamps-off-too-soon", topic="fasteners", severity=Severity.WARNING)
def clamps_off_too_soon(review: Review) -> Iterator[Finding]:
    """A step waits less for its glue than the glue needs in clamps.

    Goes wrong: The clamps come off while the glue is still soft. Nothing is to be seen, and the joint creeps
    open under the first load.

    Judged by: The wait that a step states after what it glues, against the shortest time in clamps that the
    glue table gives. Only a stated wait is judged.

    Leaves out: Steps that state no wait. Cold rooms, where every glue takes longer. The day that a joint
    needs before it is put to use, and joints that screws hold while the glue dries.

    Sources: the glue table, each glue with its source

    Flagged:

        plan "Shelf edge" in inches
        stock board: actual 3/4 x 5 pine
        part shelf: board, across, flat, 24 long, left at 0, front at 0, on floor
        part lip: board, across, on edge, 24 long, left at 0, against front of shelf, on floor
        join lip to shelf: glue urea
        step "Glue": join lip, wait 1 h

    Quiet:

        plan "Shelf edge" in inches
        stock board: actual 3/4 x 5 pine
        part shelf: board, across, flat, 24 long, left at 0, front at 0, on floor
        part lip: board, across, on edge, 24 long, left at 0, against front of shelf, on floor
        join lip to shelf: glue urea
        step "Glue": join lip, wait 12 h
    """
    for number, joints in glued_in_steps(review).items():
        step = review.plan.steps[number]
        waits = _waits(step)
        loose = [
            joint
            for joint in joints
            if not any(
                each.kind in ("screws", "pocket screws", "nails", "bolts") for each in joint.join.fastenings
            )
        ]
        if not waits or not loose:
            continue
        waited = math.fsum(each.hours for each in waits)
        slowest = max((glue(joint.join.glue or "") for joint in loose), key=lambda known: known.clamped[0])
        if waited >= slowest.clamped[0] - 1e-9:
            continue
        parts = tuple(dict.fromkeys(joint.left for joint in loose if joint.join.glue == slowest.key))
        need = slowest.clamped[0]
        values: dict[str, Filling] = {
            "step": step.title,
            "parts": listed(parts),
            "waited": hours(waited),
            "need": hours(need),
            "lack": hours(need - waited),
            "glue": slowest.said,
            "who": slowest.times_source,
        }
        in_plan = f"{need:g} h" if need >= 1 else f"{math.ceil(need * 60 - 1e-9)} min"
        yield Finding(
            parts=parts,
            at=waits[-1].span,
            says="“{step}” waits {waited} after gluing {parts}, and {glue} needs {need} in clamps at the "
            "least ({who}): {lack} is missing.",
            do="Wait {need} or more before the clamps come off.",
            values=values,
            edit=Edit(waits[0].span, f"wait {in_plan}") if len(waits) == 1 else None,
        )
