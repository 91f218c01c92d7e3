"""Parts below the floor or inside the wall."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Finding, Severity
from reviewer.model.plan import FLOOR, WALL, Axis
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.setting_out.directions import placing_span
from reviewer.units import TOLERANCE_MM, fine_length
from reviewer.wording import listed


def _past(review: Review) -> Iterator[tuple[str, str, int, float]]:
    """Each part past a ground: part, ground, axis and how far, mm."""
    wall = review.setting.wall
    on_the_left = review.plan.room is not None and review.plan.room.wall == "left"
    for name, solid in review.setting.solids.items():
        if solid.low[Axis.UP] < -TOLERANCE_MM:
            yield name, FLOOR, Axis.UP, -solid.low[Axis.UP]
        if wall is not None:
            axis, place = wall
            left = axis == Axis.ACROSS and on_the_left
            past = place - solid.low[axis] if left else solid.high[axis] - place
            if past > TOLERANCE_MM:
                yield name, WALL, axis, past


@rule("past-floor-or-wall", topic="fit", severity=Severity.ERROR)
def past_floor_or_wall(review: Review) -> Iterator[Finding]:
    """A part reaches into the floor or into the wall.

    Goes wrong: Floor and wall do not give way. The part has to be cut shorter on the spot, or the
    whole piece stands higher, or further out, than it was drawn.

    Judged by: The lowest point of each part against the floor, and the side towards the wall against
    the wall's face. The wall's face is the origin where the plan is set out from the wall.

    Leaves out: Skirting, sockets and walls out of plumb. A wall that only the room statement names
    stands right behind the piece, so nothing can reach into it.

    Sources: plain geometry

    Flagged:

        plan "Wall shelf" in inches
        stock board: 1x8 pine
        part shelf: board, across, flat, 24 long, left at 0, back at 1/2, bottom 40 above floor
        part cleat: board, across, on edge, 24 long, left at 0, against wall, under shelf
        join shelf to cleat: screws #8 x 2, every 8, from above
        join cleat to wall: screws #10 x 3, every 16

    Quiet:

        plan "Wall shelf" in inches
        stock board: 1x8 pine
        part shelf: board, across, flat, 24 long, left at 0, back at 0, bottom 40 above floor
        part cleat: board, across, on edge, 24 long, left at 0, against wall, under shelf
        join shelf to cleat: screws #8 x 2, every 8, from above
        join cleat to wall: screws #10 x 3, every 16
    """
    alike: dict[tuple[str, str, int, float], list[str]] = {}
    for name, ground, axis, depth in _past(review):
        key = (review.plan.parts[name].family, ground, axis, round(depth, 2))
        alike.setdefault(key, []).append(name)
    for (_, ground, axis, depth), names in alike.items():
        reaches = "reaches" if len(names) == 1 else "reach"
        yield Finding(
            parts=tuple(names),
            at=placing_span(review.plan, names[0], axis),
            says=f"{{parts}} {reaches} {{depth}} into the {ground}.",
            do="Raise {parts} by {depth}, or cut that much off below."
            if ground == FLOOR
            else "Set {parts} {depth} out from the wall, or cut that much off behind.",
            values={"parts": listed(names), "depth": fine_length(depth)},
        )
