"""A part for which no wood is left."""

from __future__ import annotations

import re
from collections.abc import Iterator

from reviewer.findings import Edit, Filling, Finding, Severity
from reviewer.language.source import Span
from reviewer.model.placing import RANK_DEFAULT
from reviewer.plan_words import quoted
from reviewer.review import Review
from reviewer.rulebook import Timing, rule
from reviewer.setting_out.directions import ALONG, FACES
from reviewer.setting_out.result import Unsettled
from reviewer.units import TOLERANCE_MM, count, fine_length
from reviewer.wording import listed

_FROM_TO = re.compile(r"from (\S+ of \S+) to (\S+ of \S+)", re.IGNORECASE)


def _clauses(review: Review, trouble: Unsettled) -> tuple[Span, ...]:
    """The clauses that place the part on the axis, the one to blame first."""
    found = review.plan.parts.get(trouble.solid) or review.plan.boxes.get(trouble.solid)
    assert found is not None
    others = [
        relation.span
        for relation in found.relations
        if relation.axis == trouble.axis and relation.rank < RANK_DEFAULT and relation.span != found.span
    ]
    return tuple(dict.fromkeys((trouble.span, *sorted(others))))


@rule(
    "size-runs-out", topic="fit", severity=Severity.ERROR, timing=Timing.ALWAYS, needs=("setting.unsettled",)
)
def size_runs_out(review: Review) -> Iterator[Finding]:
    """What a part is placed between leaves it no wood at all.

    Goes wrong: Its far end comes out before its near end: a shelf between two sides that touch, a rail
    from the right of a frame to the left of it. Nothing can be cut to that.

    Judged by: Low and high face of the part on each axis, as its clauses give them; less than a hair
    between them, or the wrong way round, is the fault.

    Leaves out: Parts that are only very thin or short: those can be cut, if hardly.

    Sources: plain geometry

    Flagged:

        plan "Rail" in inches
        stock stud: 2x4 spruce-pine-fir
        outline frame: 42 across, 12 deep, 16 tall, on floor
        part rail: stud, across, flat, from right of frame to left of frame, front at 0, on floor

    Quiet:

        plan "Rail" in inches
        stock stud: 2x4 spruce-pine-fir
        outline frame: 42 across, 12 deep, 16 tall, on floor
        part rail: stud, across, flat, from left of frame to right of frame, front at 0, on floor
    """
    alike: dict[tuple[object, ...], list[Unsettled]] = {}
    for trouble in review.setting.unsettled:
        if trouble.why == "inside-out":
            key = (trouble.span, trouble.axis, round(trouble.size, 2))
            alike.setdefault(key, []).append(trouble)
    for group in alike.values():
        first = group[0]
        names = tuple(trouble.solid for trouble in group)
        clauses = _clauses(review, first)
        crossed = -first.size > TOLERANCE_MM
        near, far = FACES[first.axis]
        one = len(names) == 1
        values: dict[str, Filling] = {
            "parts": listed(names),
            "along": ALONG[first.axis],
            "clauses": " and ".join(quoted(review.source, span) for span in sorted(clauses[:2])),
            "crossed": fine_length(-first.size),
            "near": near,
            "far": far,
            "waiting": count(first.drags),
        }
        says = (
            f"{{parts}} {'comes' if one else 'come'} out inside out {{along}}: by {{clauses}} its {{far}} "
            "face comes {crossed} before its {near} face."
            if crossed
            else "Nothing is left for {parts} {along}: by {clauses} its {near} "
            "and its {far} face fall together."
        )
        edit = None
        do = "Set what {clauses} names further apart, or name the faces that are really meant."
        turned = _FROM_TO.fullmatch(" ".join(review.source.words(first.span).split()))
        if turned and crossed:
            values["turned"] = f"from {turned[2]} to {turned[1]}"
            do = "Turn it round: {turned}"
            edit = Edit(first.span, str(values["turned"]))
        yield Finding(
            parts=names, at=first.span, also_at=clauses[1:], says=says, do=do, values=values, edit=edit
        )
