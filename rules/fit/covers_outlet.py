"""An outlet or a switch that the piece covers."""

from __future__ import annotations

import math
from collections.abc import Iterator

from reviewer.findings import Figure, Filling, Finding, Severity, Working
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.units import TOLERANCE_MM, fine_length, length
from reviewer.wording import listed
from reviewer.workshop.wall_covers import around, behind, clear_of


@rule(
    "covers-outlet",
    topic="fit",
    severity=Severity.WARNING,
    limits=("plug-depth", "outlet-width", "outlet-height"),
    needs=("sockets",),
)
def covers_outlet(review: Review) -> Iterator[Finding]:
    """An outlet or a switch that can't be reached any more.

    Goes wrong: The only outlet of that wall is behind the bookcase. The lamp hangs on a cord that runs
    under the rug, and a plug that grows warm is seen by nobody.

    Judged by: Each outlet and switch of the room on the wall behind, with the size of a common plate,
    against the parts in front of it. An outlet counts as covered where any part but a door is in front of
    it, at whatever depth; what stands nearer to the wall than plug-depth leaves no room for a plug at all.
    Nothing at all may be in front of a switch.

    Leaves out: What stands on shelves; outlets on other walls; how light the piece is to move; the wiring.
    Cutting for an outlet, moving one, or building over one is for a licensed electrician and the local
    code: keep one in reach, and run no cord through or inside a wall.

    Sources: keep one in reach: model electrical code, from memory; sizes: from memory; room for a plug: own
    choice

    Flagged:

        plan "Bookcase" in inches
        stock panel: birch plywood 3/4
        outline case: 36 across, 12 deep, 40 tall, on floor
        part side for each of left, right: panel, upright, facing side, 12 deep, 40 tall, on floor
            flush with each of case, flush with front of case
        part back: panel, upright, facing front, 40 tall, between side.left and side.right across, on floor
            flush with back of case
        join back to side.*: screws #8 x 2, 3 per joint
        room study: indoors, wall behind, outlet 18 across 12 up

    Quiet:

        plan "Bookcase" in inches
        stock panel: birch plywood 3/4
        outline case: 36 across, 12 deep, 40 tall, on floor
        part side for each of left, right: panel, upright, facing side, 12 deep, 40 tall, on floor
            flush with each of case, flush with front of case
        part back: panel, upright, facing front, 20 tall, between side.left and side.right across
            flush with back of case, flush with top of case
        join back to side.*: screws #8 x 2, 3 per joint
        room study: indoors, wall behind, outlet 18 across 12 up, switch 40 across 45 up
    """
    room = review.plan.room
    if room is None or not behind(review):
        return
    wide, tall = review.limit("outlet-width").amount, review.limit("outlet-height").amount
    opens = frozenset(
        part for moving in review.plan.movings if moving.kind != "slides" for part in moving.parts
    )
    for kind, place in review.sockets:
        plate = around(place, wide, tall)
        covering = [
            each
            for each in clear_of(review, plate, math.inf).before
            if kind == "switch" or each.part not in opens  # a door can be opened for an outlet
        ]
        if not covering:
            continue
        first = covering[0]
        gap = first.gap
        plug = review.limit("plug-depth")
        names = [each.part for each in covering]
        values: dict[str, Filling] = {
            "parts": listed(names),
            "cover": "cover" if len(names) > 1 else "covers",
            "kind": kind,
            "across": length(place.across),
            "up": length(place.up),
            "first": first.part,
            "gap": length(gap),
            "plug": plug.value,
            "wide": fine_length(wide),
            "tall": fine_length(tall),
        }
        says = "{parts} {cover} the {kind} {across} across and {up} up"
        if kind == "outlet" and gap < plug.amount - TOLERANCE_MM:
            says += ", and {first} leaves {gap} for a plug, where {plug} is needed."
        else:
            says += ", so that nobody reaches it."
        sheet = (
            f"Cut an opening well over {{wide}} by {{tall}} through {'{parts}' if len(names) < 3 else 'them'}"
        )
        yield Finding(
            parts=tuple(names),
            at=place.span or room.span,
            says=says,
            do=(
                f"{f'{sheet}, or choose' if kind == 'outlet' else 'Choose'} another place for the piece; "
                "a licensed electrician can move the {kind}, and the local code decides what may be covered."
            ),
            values=values,
            working=Working(
                (
                    Figure("plate", values["wide"], review.limit("outlet-width").source),
                    Figure("by", values["tall"], review.limit("outlet-height").source),
                ),
                "wall - back of the nearest part in front of it",
                Figure("room behind the piece", length(gap)),
                Figure("for a plug", plug.value, plug.source) if kind == "outlet" else None,
            ),
            also_at=tuple(dict.fromkeys(review.span_of(name) for name in names))[:2],
        )
