"""A foot that does not reach the floor."""

from __future__ import annotations

import math
from collections.abc import Iterator

from reviewer.findings import Figure, Finding, Severity, Working
from reviewer.model.plan import FLOOR, Axis
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.setting_out.directions import placing_span
from reviewer.setting_out.solid import Solid
from reviewer.units import TOLERANCE_MM, count, fine_length
from reviewer.wording import listed


def _short(review: Review, most: float) -> dict[float, list[str]]:
    """Upright parts that end a little above the floor with nothing under them, by how much, mm."""
    found: dict[float, list[str]] = {}
    for name, solid in review.setting.solids.items():
        low = solid.low[Axis.UP]
        if not TOLERANCE_MM < low <= most + TOLERANCE_MM or not _upright(solid):
            continue
        if any(
            contact.axis == Axis.UP and contact.low[Axis.UP] <= low + TOLERANCE_MM
            for contact in review.setting.contacts_of(name)
        ):
            continue  # it stands on something
        if name in review.moves_with or (review.hanging and any(h.part == name for h in review.hanging.hung)):
            continue
        found.setdefault(round(low, 2), []).append(name)
    return found


def _outside(review: Review, name: str) -> bool:
    """Whether a foot stands outside of those on the floor, so that the piece can tilt down to it."""
    solid = review.setting.solids[name]
    corners = [(x, y) for x in (solid.low[0], solid.high[0]) for y in (solid.low[1], solid.high[1])]
    polygon = next((piece.polygon for piece in review.pieces if name in piece.parts), None)
    if not polygon:
        return True
    for number, (x1, y1) in enumerate(polygon):
        x0, y0 = polygon[number - 1]
        long = max(math.dist((x0, y0), (x1, y1)), TOLERANCE_MM)
        for x, y in corners:
            if ((x1 - x0) * (y - y0) - (y1 - y0) * (x - x0)) / long < -TOLERANCE_MM:
                return True
    return False


def _upright(solid: Solid) -> bool:
    """A leg or a post, or a side that stands on end: taller than it is wide and thick."""
    return solid.long == Axis.UP


@rule("feet-uneven", topic="fit", severity=Severity.WARNING, limits=("foot-gap",))
def feet_uneven(review: Review) -> Iterator[Finding]:
    """A piece that stands on fewer feet than it has.

    Goes wrong: One leg is a saw cut short. The stool stands on three and rocks, and no sanding of the long
    ones ends well.

    Judged by: Upright parts that end above the floor by no more than foot-gap with nothing under them,
    while others stand on it. Outside of those the piece rocks by as much as they lack; between them they
    carry nothing.

    Leaves out: Floors that are out of level, and how far wood goes out of true: four feet without levellers
    rock on most floors. What hangs, moves or stands on castors, glides or levellers. Kick boards.

    Sources: plane geometry; how near to the floor is meant to stand on it: own choice

    Flagged:

        plan "Stool" in inches
        stock post: actual 1 1/2 x 1 1/2 pine
        outline frame: 14 across, 12 deep, 17 tall, on floor
        part leg for each of left, right: post, upright, as tall as frame, on floor
            flush with each of frame, flush with front of frame
        part prop for each of left, right: post, upright, 16 7/8 tall, flush with top of frame
            flush with each of frame, flush with back of frame

    Quiet:

        plan "Stool" in inches
        stock post: actual 1 1/2 x 1 1/2 pine
        outline frame: 14 across, 12 deep, 17 tall, on floor
        part leg: post, upright, as tall as frame, in each corner of frame
    """
    standing = [contact.other(FLOOR) for contact in review.setting.contacts_of(FLOOR)]
    if not standing:
        return
    limit = review.limit("foot-gap")
    for gap, names in _short(review, limit.amount).items():
        ends, carry, them = ("end", "they carry", "them") if len(names) > 1 else ("ends", "it carries", "it")
        stand = "stands" if len(standing) == 1 else "stand"
        outcome = "the piece rocks by that much"
        if not any(_outside(review, name) for name in names):
            outcome = f"{carry} nothing until the piece sags down to the floor"
        yield Finding(
            parts=tuple(names),
            at=placing_span(review.plan, names[0], Axis.UP),
            says=f"{{parts}} {ends} {{gap}} above the floor with nothing under {them}, while "
            f"{{standing}} {stand} on it: {outcome}.",
            do=f"Make {{parts}} {{gap}} longer below, or put levellers under {them}.",
            values={"parts": listed(names), "gap": fine_length(gap), "standing": listed(standing, most=3)},
            working=Working(
                (Figure("stand on the floor", count(len(standing))),),
                "foot - floor",
                Figure("gap", fine_length(gap)),
                Figure("meant to stand, up to", limit.value, limit.source),
            ),
            also_at=(review.span_of(standing[0]),),
        )
