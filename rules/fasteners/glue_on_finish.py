"""Joints that are glued after their parts are finished."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Filling, Finding, Severity
from reviewer.model.plan import Work
from reviewer.records import NamedTuple
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
    """The step that finishes each part first; not where the glue lines are masked or some faces stay bare."""
    schedules = {finish.name: finish for finish in review.plan.finishes}
    found: dict[str, _Finished] = {}
    for number, step in enumerate(review.plan.steps):
        for work in step.works:
            schedule = schedules.get(work.finish or "")
            if work.verb != "finish" or schedule is None or schedule.masked:
                continue
            for part in work.parts:
                if part not in schedule.facings:
                    found.setdefault(part, _Finished(number, work))
    return found


def _before_assembly(review: Review) -> Iterator[Finding]:
    """Finishes that the plan puts before assembly, with no glue line masked."""
    for finish in review.plan.finishes:
        if finish.when != "before" or finish.masked:
            continue
        coated = frozenset(finish.on) - finish.facings.keys()
        glued = [
            joint
            for joint in review.setting.joints
            if joint.join.glue is not None and joint.meets and (joint.left in coated or joint.right in coated)
        ]
        if not glued:
            continue
        parts = tuple(
            dict.fromkeys(name for joint in glued for name in (joint.left, joint.right) if name in coated)
        )
        values: dict[str, Filling] = {"parts": listed(parts), "finish": finish.name}
        yield Finding(
            parts=parts,
            at=finish.span,
            also_at=tuple(dict.fromkeys(joint.join.glue_span or joint.join.span for joint in glued)),
            says="{finish} goes on {parts} before assembly, and they are glued after that: glue holds to "
            "wood, not to a finish, and the joint peels with the film.",
            do="Keep what is glued bare, and say so: “mask glue lines” in {finish}; or finish it after "
            "assembly.",
            values=values,
        )


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

    Judged by: A finish that says before assembly, without mask glue lines, on parts that are glued. And the
    plan's own steps: a joint is made in the first step that joins or fits both its parts, or in the only
    one that names either; where an earlier step finishes one of them, and none sands or shapes it after
    that, the glue would lie on the finish.

    Leaves out: Joints whose step is not plain. Finishes that mask their glue lines, which is the way to
    finish first. Parts of which a finish names only some faces.

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
    yield from _before_assembly(review)
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
            do="Put “{glue}” before “{finish}”, or keep what is glued bare and say so: “mask glue lines” in "
            "the finish.",
            values=values,
        )
