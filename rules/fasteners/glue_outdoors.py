"""Interior glue in a piece that stands outdoors."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Edit, Filling, Finding, Severity
from reviewer.model.plan import Join
from reviewer.reference.glues import glue
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.wording import listed

#: What the weather asks for, in the words of a plan.
_WEATHERPROOF = "exterior pva"


@rule("glue-outdoors", topic="fasteners", severity=Severity.WARNING)
def glue_outdoors(review: Review) -> Iterator[Finding]:
    """Glue that water softens holds a piece that stands outdoors.

    Goes wrong: Interior glue turns white and soft in the first wet week, and the joint slides open under the
    clamp marks of a summer's work.

    Judged by: The room says outdoors, and the glue table says of the glue that it is for dry rooms. A glue
    that bears damp but not the weather gives a note: under a roof it holds. Glue of no stated kind is
    taken as the usual wood glue, which is for dry rooms.

    Leaves out: Bathrooms, kitchens and unheated rooms. How long a finish keeps the water away.

    Sources: EN 204, classes D1 to D4 (two trade pages): outdoors asks for D4 with a coating, under cover for
    D3; ANSI/HPVA HP-1, types I and II

    Flagged:

        plan "Porch shelf" in inches
        stock board: actual 3/4 x 5 western red cedar
        part shelf: board, across, flat, 24 long, left at 0, front at 0, on floor
        part lip: board, across, on edge, 24 long, left at 0, against front of shelf, on floor
        join lip to shelf: glue pva
        room porch: outdoors

    Quiet:

        plan "Porch shelf" in inches
        stock board: actual 3/4 x 5 western red cedar
        part shelf: board, across, flat, 24 long, left at 0, front at 0, on floor
        part lip: board, across, on edge, 24 long, left at 0, against front of shelf, on floor
        join lip to shelf: glue exterior pva
        room porch: outdoors
    """
    room = review.plan.room
    if room is None or not room.outdoors:
        return
    met = {id(joint.join) for joint in review.setting.joints if joint.meets}
    by_glue: dict[str, list[Join]] = {}
    for join in review.plan.joins:
        if join.glue is not None and id(join) in met and glue(join.glue).outdoors != "exposed":
            by_glue.setdefault(join.glue, []).append(join)
    for key, joins in by_glue.items():
        known = glue(key)
        parts = tuple(
            dict.fromkeys(
                name
                for joint in review.setting.joints
                if joint.meets and joint.join.glue == key
                for name in (joint.left, joint.right)
                if name in review.plan.parts
            )
        )
        values: dict[str, Filling] = {
            "parts": listed(parts),
            "glue": known.said,
            "room": room.name,
            "bears": known.water_words,
            "class": known.water_class,
        }
        covered = known.outdoors == "covered"
        span = joins[0].glue_span or joins[0].span
        yield Finding(
            parts=parts,
            at=span,
            also_at=tuple(join.glue_span or join.span for join in joins[1:]),
            says="{room} is outdoors, and {glue} joins {parts}. Of water the glue table says: {bears} "
            "({class}). "
            + (
                "Under a roof it holds; in the rain it does not."
                if covered
                else "It softens in the first wet week."
            ),
            do="Use a weatherproof glue: PVA of class D4 (“glue exterior pva”), polyurethane, slow epoxy or "
            "resorcinol.",
            values=values,
            edit=Edit(span, f"glue {_WEATHERPROOF}") if len(joins) == 1 and joins[0].glue_span else None,
            severity=Severity.NOTE if covered else None,
        )
