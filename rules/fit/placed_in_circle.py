"""Parts that are placed from one another in a circle."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Finding, Severity
from reviewer.language.source import Span
from reviewer.language.wordings import round_trip
from reviewer.review import Review
from reviewer.rulebook import Timing, rule
from reviewer.setting_out.directions import ALONG, FACES
from reviewer.setting_out.result import Unsettled
from reviewer.units import count
from reviewer.wording import listed


@rule(
    "placed-in-circle",
    topic="fit",
    severity=Severity.ERROR,
    timing=Timing.ALWAYS,
    needs=("setting.unsettled",),
)
def placed_in_circle(review: Review) -> Iterator[Finding]:
    """Parts are placed from one another, and none of them from anything that stands still.

    Goes wrong: Each place waits for the next one and the last for the first, so none can be worked
    out, and nothing that meets these parts either.

    Judged by: Following on each axis from what a part is placed to what that is placed from. Coming
    back to the start is a circle. It is told once, with the parts in the order of the circle.

    Leaves out: Circles of measures (a = b, b = a), which are told when the text is read.

    Sources: plain geometry

    Flagged:

        plan "Two boards" in inches
        stock board: 1x6 pine
        part lower: board, across, flat, 24 long, left at 0, front at 0, under upper
        part upper: board, across, flat, 24 long, left at 0, front at 0, on lower

    Quiet:

        plan "Two boards" in inches
        stock board: 1x6 pine
        part lower: board, across, flat, 24 long, left at 0, front at 0, on floor
        part upper: board, across, flat, 24 long, left at 0, front at 0, on lower
    """
    circles: dict[tuple[str, ...], list[Unsettled]] = {}
    for trouble in review.setting.unsettled:
        if trouble.why == "circle":
            circles.setdefault(trouble.circle, []).append(trouble)
    for names, troubles in circles.items():
        first = troubles[0]
        waiting = max(trouble.drags for trouble in troubles) - (len(names) - 1)
        along = " and ".join(dict.fromkeys(ALONG[trouble.axis] for trouble in troubles))
        chain = round_trip(names)
        says = (
            "{part} is placed from itself {along}."
            if len(names) == 1
            else "{parts} are placed from one another in a circle {along}: {chain}."
        )
        low = FACES[first.axis][0]
        own = "on floor" if first.axis == 2 else f"{low} at 0"
        waits = "part waits" if waiting == 1 else "parts wait"
        rest = f" {{waiting}} other {waits} for that." if waiting > 0 else ""
        yield Finding(
            parts=names,
            at=first.span,
            also_at=tuple(dict.fromkeys(_span(review, name) for name in names[1:])),
            says=says + rest,
            do="Give {part} a place {along} of its own, such as {own}."
            if len(names) == 1
            else "Give one of them a place {along} that does not come from the others, such as: {own}",
            values={
                "part": names[0],
                "parts": listed(names),
                "along": along,
                "chain": chain,
                "own": own,
                "waiting": count(waiting),
            },
        )


def _span(review: Review, name: str) -> Span:
    box = review.plan.boxes.get(name)
    return box.span if box else review.span_of(name)
