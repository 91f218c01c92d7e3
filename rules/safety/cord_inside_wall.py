"""A flexible cord inside a wall, through one, or under a carpet."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Finding, Severity
from reviewer.review import Review
from reviewer.rulebook import rule

_READ = "NEC 400.12, as two articles of the electrical trade explain it"
_RECALLED = "NEC 400.12, from memory"

#: By the way that a cord runs: what is wrong with it, and who says so.
_WAYS = {
    "inside wall": ("nobody sees it chafe or get hot there", _READ),
    "through wall": ("the edges of the hole wear it where nobody looks", _READ),
    "through floor": ("the edges of the hole wear it where nobody looks", _READ),
    "through ceiling": ("the edges of the hole wear it where nobody looks", _RECALLED),
    "through doorway": ("the door pinches it and feet catch it", _READ),
    "under carpet": (
        "feet and furniture crush it, and its heat cannot get away",
        "common advice on fire safety, from memory",
    ),
}
_IN_SIGHT = (
    "Lead it in plain sight along the wall, unpinched, or in a channel on its surface that is listed for it"
)
_DO = {
    "inside wall": (
        "{in_sight}, or have a listed in-wall kit or an outlet where the piece stands fitted by a licensed "
        "electrician; the local code decides."
    ),
    "under carpet": (
        "{in_sight}, or have an outlet put in where the piece stands; the local code decides, and a licensed "
        "electrician knows it."
    ),
}
_ELSE = (
    "Plug it in on this side: use an outlet in the room that the piece stands in, or have one put in by a "
    "licensed electrician; the local code decides."
)


@rule(
    "cord-inside-wall",
    topic="safety",
    severity=Severity.ERROR,
    needs=("cords",),
)
def cord_inside_wall(review: Review) -> Iterator[Finding]:
    """A cord that runs inside a wall, through a wall, floor, ceiling or doorway, or under a carpet.

    Goes wrong: The cord of a lamp or a screen is led behind the plaster so that it does not show. It is not
    made for that: it gets hot, is chafed by the edge of the hole or struck by the next screw, and what
    begins to burn there is seen last.

    Judged by: The ways of cords that the room names. Inside a wall, through a wall, a floor or a doorway is
    an error; through a ceiling and under a carpet a warning, as those are from memory.

    Leaves out: Holes in the piece itself, such as one for a cord in its back; cords that a drawer or a door
    may pinch; how much a cord carries; wiring that is fixed in the building. That is for a licensed
    electrician, and the local code decides. Where a listed in-wall kit is what the plan means, accept the
    finding and say so.

    Sources: NEC 400.12, uses not permitted, as two articles of the electrical trade explain it (read); its
    words on ceilings, and the advice about carpets, from memory

    Flagged:

        plan "Shelf" in inches
        stock board: 1x8 pine, 8 ft
        part shelf: board, across, flat, 30 long, on floor, left at 0, front at 0
        room den: indoors, wall behind, cord inside wall

    Quiet:

        plan "Shelf" in inches
        stock board: 1x8 pine, 8 ft
        part shelf: board, across, flat, 30 long, on floor, left at 0, front at 0
        room den: indoors, wall behind, cord along wall
    """
    told = set()
    for cord in review.cords:
        if cord.way not in _WAYS or cord.way in told:
            continue
        told.add(cord.way)
        harm, source = _WAYS[cord.way]
        where = cord.way.replace(" ", " a ") if cord.way != "inside wall" else "inside the wall"
        yield Finding(
            parts=(),
            at=cord.span or review.plan.span,
            says="A cord of {title} runs {where}: {harm}, and a flexible cord is not made to run there "
            "({source}).",
            do=_DO.get(cord.way, _ELSE),
            values={
                "title": review.plan.title,
                "where": where,
                "harm": harm,
                "source": source,
                "in_sight": _IN_SIGHT,
            },
            severity=Severity.ERROR if source == _READ else Severity.WARNING,
        )
