"""Glued joints with more room in them than the glue fills."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Figure, Filling, Finding, Severity, Working
from reviewer.language.source import Span
from reviewer.reference.glues import glue
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.units import TOLERANCE_MM, fine_length
from reviewer.wording import listed
from reviewer.workshop.gluing import Slack, slack_in_recesses


@rule("glue-gap", topic="fasteners", severity=Severity.WARNING)
def glue_gap(review: Review) -> Iterator[Finding]:
    """A glued part stands in a dado or groove that is wider than it is, by more than the glue fills.

    Goes wrong: A dado is cut for 3/4 in plywood, which measures 23/32. The shelf rattles in it, and
    the glue that should hold it is a brittle fillet in a gap.

    Judged by: The width of a dado or a groove that a part's own clause cuts, against the thickness of the
    glued part that stands in it, and the widest gap that the glue table gives. Differences below the finest
    that a tape shows are let go.

    Leaves out: Dadoes that a join makes, which are cut to fit. Gaps between faces, which are for
    open-joint. The depth of a dado, where a little room is wanted.

    Sources: the glue table, whose gaps are from memory

    Flagged:

        plan "Case" in inches
        stock ply: birch plywood 3/4
        outline case: 24 across, 10 deep, 30 tall, on floor
        part side.left: ply, upright, facing side, 10 deep, as tall as case, on floor
            flush with left of case, flush with front of case, dado 3/4 by 1/4 into right, 12 from bottom
        part side.right: ply, upright, facing side, 10 deep, as tall as case, on floor
            flush with right of case, flush with front of case, dado 3/4 by 1/4 into left, 12 from bottom
        part shelf: ply, flat, 10 deep, between side.left and side.right across, housed 1/4 each end
            flush with front of case, bottom at 12
        join shelf to side.*: glue pva

    Quiet:

        plan "Case" in inches
        stock ply: birch plywood 3/4
        outline case: 24 across, 10 deep, 30 tall, on floor
        part side.left: ply, upright, facing side, 10 deep, as tall as case, on floor
            flush with left of case, flush with front of case, dado 23/32 by 1/4 into right, 12 from bottom
        part side.right: ply, upright, facing side, 10 deep, as tall as case, on floor
            flush with right of case, flush with front of case, dado 23/32 by 1/4 into left, 12 from bottom
        part shelf: ply, flat, 10 deep, between side.left and side.right across, housed 1/4 each end
            flush with front of case, bottom at 12
        join shelf to side.*: glue pva
    """
    if not any(join.glue is not None for join in review.plan.joins):
        return
    groups: dict[Span, list[Slack]] = {}
    for slack in slack_in_recesses(review):
        allowed = glue(slack.joint.join.glue or "").widest_gap
        if slack.gap > allowed + review.limit("cut-difference").amount + TOLERANCE_MM:
            groups.setdefault(slack.joint.join.glue_span or slack.joint.join.span, []).append(slack)
    for span, found in groups.items():
        worst = max(found, key=lambda each: round(each.gap, 3))
        known = glue(worst.joint.join.glue or "")
        parts = tuple(dict.fromkeys(each.part for each in found))
        others = tuple(dict.fromkeys(each.into for each in found))
        values: dict[str, Filling] = {
            "parts": listed(parts),
            "others": listed(others),
            "wide": fine_length(worst.wide),
            "thick": fine_length(worst.thick),
            "gap": fine_length(worst.gap),
            "fills": fine_length(known.widest_gap),
            "glue": known.said,
        }
        yield Finding(
            parts=(*parts, *others),
            at=span,
            says="{parts}, {thick} thick, in a cut {wide} wide in {others}: a gap of {gap}, and {glue} fills "
            "{fills} at most (glue table, from memory).",
            do="Cut it {thick} wide: measure the board, since a nominal size is only its name. Or fill the "
            "gap with thickened slow epoxy.",
            values=values,
            working=Working(
                (
                    Figure("cut", fine_length(worst.wide)),
                    Figure(f"thickness of {worst.part}", fine_length(worst.thick)),
                ),
                "gap = cut - thickness",
                Figure("gap", fine_length(worst.gap)),
                Figure("fills", fine_length(known.widest_gap), "glue table, from memory"),
            ),
        )
