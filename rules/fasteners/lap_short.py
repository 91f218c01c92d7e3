"""Half laps that join boards end to end over too short a length."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Figure, Filling, Finding, Severity, Working
from reviewer.language.source import Span
from reviewer.model.plan import GROUNDS
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.setting_out.result import Joint
from reviewer.units import TOLERANCE_MM, fine_length, length, ratio
from reviewer.wording import listed


def _lap(review: Review, joint: Joint) -> tuple[float, float] | None:
    """How long a lap in one line is, and how wide its boards are, mm; None for any other joint."""
    housing, overlap = joint.join.housing, joint.overlap
    if housing is None or housing.kind != "half lap" or overlap is None:
        return None
    if joint.left in GROUNDS or joint.right in GROUNDS:
        return None
    one, two = review.setting.solids[joint.left], review.setting.solids[joint.right]
    if one.long != two.long or not (one.square and two.square):
        return None
    return overlap.depths[one.long], min(one.width, two.width)


@rule("lap-short", topic="fasteners", severity=Severity.WARNING, limits=("lap-length-share",))
def lap_short(review: Review) -> Iterator[Finding]:
    """A half lap makes one long board of two, and is too short to carry across.

    Goes wrong: Half the wood is gone on each side of a lap, and its glue alone carries over it. A lap as
    long as the board is wide opens like a hinge under load.

    Judged by: Half laps of two boards that run the same way: the length that they share against
    lap-length-share times the narrower width.

    Leaves out: Laps that cross or meet at a corner, whose length is the width of the mate. That each board
    loses half of its thickness, which is the joint's own nature here. Parts that lean. What such a joint
    bears, for joint-overloaded.

    Sources: common practice, no source (two to three widths)

    Flagged:

        plan "Long rail" in inches
        stock rail: actual 1 1/2 x 3 1/2 pine
        part rail.left: rail, across, on edge, 40 long, left at 0, front at 0, on floor
        part rail.right: rail, across, on edge, 40 long, left at 37, front at 0, on floor
        join rail.left to rail.right: half lap, glue pva

    Quiet:

        plan "Long rail" in inches
        stock rail: actual 1 1/2 x 3 1/2 pine
        part rail.left: rail, across, on edge, 44 long, left at 0, front at 0, on floor
        part rail.right: rail, across, on edge, 44 long, left at 36, front at 0, on floor
        join rail.left to rail.right: half lap, glue pva
    """
    if not any(join.housing is not None and join.housing.kind == "half lap" for join in review.plan.joins):
        return
    limit = review.limit("lap-length-share")
    groups: dict[Span, list[tuple[float, float, Joint]]] = {}
    for joint in review.setting.joints:
        lap = _lap(review, joint)
        if lap is not None and lap[0] < lap[1] * limit.amount - TOLERANCE_MM:
            assert joint.join.housing is not None
            groups.setdefault(joint.join.housing.span, []).append((*lap, joint))
    for span, found in groups.items():
        long, wide, worst = min(found, key=lambda each: round(each[0] / each[1], 3))
        parts = tuple(dict.fromkeys(name for _, _, joint in found for name in (joint.left, joint.right)))
        values: dict[str, Filling] = {
            "parts": listed(parts),
            "long": length(long),
            "wide": length(wide),
            "least": length(wide * limit.amount),
            "lack": fine_length(wide * limit.amount - long),
            "who": limit.source,
        }
        yield Finding(
            parts=parts,
            at=span,
            also_at=(review.span_of(worst.right),),
            says="The half lap of {parts} is {long} long on boards {wide} wide; end to end {least} is the "
            "least "
            "({who}), so {lack} is missing.",
            do="Let them lap {least} or more, or put a third board beside the joint.",
            values=values,
            working=Working(
                (Figure("lap", length(long)), Figure("width", length(wide))),
                "share = lap / width",
                Figure("share", ratio(round(long / wide, 2))),
                Figure("least", ratio(limit.amount), limit.source),
            ),
        )
