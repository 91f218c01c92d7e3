"""Joints that are glued after their parts are finished."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from reviewer.findings import Filling, Finding, Severity
from reviewer.model.plan import Work
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.setting_out.result import Joint
from reviewer.wording import listed
from reviewer.workshop.gluing import glued_in_steps


class _Finished(NamedTuple):
    """The step that finishes a part first."""

    step: int
    work: Work


def _finished(review: Review) -> dict[str, _Finished]:
    found: dict[str, _Finished] = {}
    for number, step in enumerate(review.plan.steps):
        for work in step.works:
            if work.verb == "finish":
                for part in work.parts:
                    found.setdefault(part, _Finished(number, work))
    return found


def _bared(review: Review, part: str, after: int, before: int) -> bool:
    """True when a step between sands or shapes the part again, which bares the wood."""
    return any(
        part in work.parts and work.verb in ("sand", "shape", "cut")
        for step in review.plan.steps[after + 1 : before + 1]
        for work in step.works
    )


@rule("glue-on-finish", topic="fasteners", severity=Severity.WARNING)
def glue_on_finish(review: Review) -> Iterator[Finding]:
    """A joint is glued where a finish lies on the wood already.

    Goes wrong: Glue holds to wood, not to varnish: the joint is as strong as the film, and peels with it.

    Judged by: The plan's own steps. A joint is made in the first step that joins or fits both its parts, or
    in the only one that names either; where an earlier step finishes one of them, and none sands or
    shapes it after that, the glue would lie on the finish.

    Leaves out: Plans without steps. Joints whose step is not plain. Faces that are masked while the rest is
    finished, which is the way to finish first: say so with accept.

    Sources: common practice, no source; the glue table says which glues the finish keeps off

    Flagged:

        plan "Stool" in inches
        stock board: actual 3/4 x 5 pine
        part shelf: board, across, flat, 24 long, left at 0, front at 0, on floor
        part lip: board, across, on edge, 24 long, left at 0, against front of shelf, on floor
        join lip to shelf: glue pva
        finish clear: on shelf, lip, sand 120, 2 coats of polyurethane waterborne
        step "Finish": finish clear
        step "Glue": join lip

    Quiet:

        plan "Stool" in inches
        stock board: actual 3/4 x 5 pine
        part shelf: board, across, flat, 24 long, left at 0, front at 0, on floor
        part lip: board, across, on edge, 24 long, left at 0, against front of shelf, on floor
        join lip to shelf: glue pva
        finish clear: on shelf, lip, sand 120, 2 coats of polyurethane waterborne
        step "Glue": join lip
        step "Finish": finish clear
    """
    if not any(work.verb == "finish" for step in review.plan.steps for work in step.works):
        return
    finished = _finished(review)
    groups: dict[tuple[int, int], list[tuple[Joint, list[str]]]] = {}
    for number, joints in glued_in_steps(review).items():
        for joint in joints:
            coated = [
                name
                for name in (joint.left, joint.right)
                if name in finished
                and finished[name].step < number
                and not _bared(review, name, finished[name].step, number)
            ]
            if coated:
                groups.setdefault((finished[coated[0]].step, number), []).append((joint, coated))
    for (before, number), found in groups.items():
        parts = tuple(dict.fromkeys(name for _, coated in found for name in coated))
        steps = review.plan.steps
        values: dict[str, Filling] = {
            "parts": listed(parts),
            "finish": steps[before].title,
            "glue": steps[number].title,
        }
        yield Finding(
            parts=parts,
            at=found[0][0].join.glue_span or found[0][0].join.span,
            also_at=(finished[parts[0]].work.span, steps[number].span),
            says="“{finish}” finishes {parts}, and “{glue}” glues them after that: glue holds to wood, not "
            "to a finish, and the joint peels with the film.",
            do="Put “{glue}” before “{finish}”, or mask the faces that are glued and say so with accept.",
            values=values,
        )
