"""A smoke alarm that the piece covers."""

from __future__ import annotations

import math
from collections.abc import Iterator

from reviewer.findings import Figure, Filling, Finding, Severity, Working
from reviewer.plan_words import called
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.units import length
from reviewer.workshop.wall_covers import around, behind, clear_of


@rule(
    "covers-alarm",
    topic="safety",
    severity=Severity.WARNING,
    limits=("alarm-width",),
    needs=("alarms",),
)
def covers_alarm(review: Review) -> Iterator[Finding]:
    """A smoke alarm with a part of the piece in front of it.

    Goes wrong: A tall cupboard goes up before the alarm. Smoke comes to it late or not at all, nobody sees
    its light or presses its button, and its battery is never changed.

    Judged by: Each alarm on the wall behind, alarm-width wide, against every part in front of it, at whatever
    depth. Nothing at all may be in front of it.

    Leaves out: Alarms on the ceiling and on other walls; what comes close above, below or beside one, for
    which we have read no figure. The alarm's own instructions say how much room it needs, and the local code
    says where alarms have to be.

    Sources: keep alarms clear: International Residential Code R314, from study notes on it (one source);
    how wide one is: from memory

    Flagged:

        plan "Cupboard" in inches
        stock panel: birch plywood 3/4
        part front: panel, upright, facing front, 36 across, 96 tall, on floor, left at 0, front at 0
        room hall: indoors, wall behind, alarm 20 across 90 up

    Quiet:

        plan "Cupboard" in inches
        stock panel: birch plywood 3/4
        part front: panel, upright, facing front, 36 across, 80 tall, on floor, left at 0, front at 0
        room hall: indoors, wall behind, alarm 20 across 90 up
    """
    if not behind(review):
        return
    wide = review.limit("alarm-width")
    for alarm in review.alarms:
        clear = clear_of(review, around(alarm, wide.amount, wide.amount), math.inf)
        if not clear.before:
            continue
        values: dict[str, Filling] = {
            "parts": called(review.plan, clear.parts),
            "stand": "stand" if len(clear.parts) > 1 else "stands",
            "across": length(alarm.across),
            "up": length(alarm.up),
            "off": length(clear.before[0].gap),
            "wide": wide.value,
        }
        yield Finding(
            parts=clear.parts,
            at=alarm.span or review.plan.span,
            says="{parts} {stand} in front of the smoke alarm {across} across and {up} up, {off} off the "
            "wall: smoke comes to it late or not at all.",
            do="Choose another place for the piece; the alarm's instructions say how much room it needs, and "
            "the local code says where it may hang.",
            values=values,
            working=Working(
                (Figure("width of an alarm", wide.value, wide.source),),
                "wall - back of the nearest part in front of it",
                Figure("off the wall", values["off"]),
            ),
            also_at=tuple(dict.fromkeys(review.span_of(name) for name in clear.parts))[:2],
        )
