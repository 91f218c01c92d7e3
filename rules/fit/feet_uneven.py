"""A foot that does not reach the floor."""

from __future__ import annotations

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


def _upright(solid: Solid) -> bool:
    """A leg or a post, or a side that stands on end: taller than it is wide and thick."""
    return solid.long == Axis.UP


@rule("feet-uneven", topic="fit", severity=Severity.WARNING, limits=("foot-gap",))
def feet_uneven(review: Review) -> Iterator[Finding]:
    """A piece that stands on fewer feet than it has.

    Goes wrong: One leg is a saw cut short. The stool stands on three and rocks, and no sanding of the long
    ones ends well.

    Judged by: Upright parts that end above the floor by no more than foot-gap with nothing under them,
    while others stand on it. The piece rocks by as much as they lack.

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
        many = len(names) > 1
        yield Finding(
            parts=tuple(names),
            at=placing_span(review.plan, names[0], Axis.UP),
            says=(
                f"{{parts}} {'end' if many else 'ends'} {{gap}} above the floor with nothing under "
                f"{'them' if many else 'it'}, while {{standing}} "
                f"{'stands' if len(standing) == 1 else 'stand'} on "
                "it: the piece rocks by that much."
            ),
            do=f"Make {{parts}} {{gap}} longer below, or put {'levellers' if many else 'a leveller'} under "
            f"{'them' if many else 'it'}.",
            values={"parts": listed(names), "gap": fine_length(gap), "standing": listed(standing, most=3)},
            working=Working(
                (Figure("stand on the floor", count(len(standing))),),
                "foot - floor",
                Figure("gap", fine_length(gap)),
                Figure("meant to stand, up to", limit.value, limit.source),
            ),
            also_at=(review.span_of(standing[0]),),
        )
