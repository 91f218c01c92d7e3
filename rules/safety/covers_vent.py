"""A vent that the piece covers."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Figure, Filling, Finding, Severity, Working
from reviewer.plan_words import called
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.units import length, percent
from reviewer.workshop.wall_covers import behind, clear_of, patch_of


@rule(
    "covers-vent",
    topic="safety",
    severity=Severity.WARNING,
    limits=("vent-gap", "vent-covered"),
    needs=("vents",),
)
def covers_vent(review: Review) -> Iterator[Finding]:
    """A grille for warm air, return air or combustion air that the piece covers.

    Goes wrong: The back of a bookcase lies over the grille. The furnace gets no air back and runs hot, the
    wood before it dries out and warps; and where a fire takes its air by it, its gases come into the room.

    Judged by: The parts that stand nearer to the wall than vent-gap, and how much of each vent on the wall
    behind they cover; more than vent-covered is told. A leg or an edge in front of it takes less than that.

    Leaves out: Vents in floors, ceilings and other walls, where the air goes once it is past the grille, and
    what each vent is for: the appliance's manual and the local code say how much has to stay open. A licensed
    installer can move one.

    Sources: room in front of a vent: common practice, no source; how much may be covered: own choice

    Flagged:

        plan "Bookcase" in inches
        stock panel: birch plywood 3/4
        outline case: 36 across, 12 deep, 40 tall, on floor
        part side for each of left, right: panel, upright, facing side, 12 deep, 40 tall, on floor
            flush with each of case, flush with front of case
        part back: panel, upright, facing front, 40 tall, between side.left and side.right across, on floor
            flush with back of case
        join back to side.*: screws #8 x 2, 3 per joint
        room study: indoors, wall behind, vent 14 wide 6 tall 10 across 4 up

    Quiet:

        plan "Bookcase" in inches
        stock panel: birch plywood 3/4
        outline case: 36 across, 12 deep, 40 tall, on floor
        part side for each of left, right: panel, upright, facing side, 12 deep, 40 tall, on floor
            flush with each of case, flush with front of case
        part back: panel, upright, facing front, 24 tall, between side.left and side.right across
            flush with back of case, flush with top of case
        join back to side.*: screws #8 x 2, 3 per joint
        room study: indoors, wall behind, vent 14 wide 6 tall 10 across 4 up
    """
    if not behind(review):
        return
    gap, most = review.limit("vent-gap"), review.limit("vent-covered")
    for vent in review.vents:
        place = patch_of(vent)
        clear = clear_of(review, place, gap.amount)
        share = 100 * (1 - clear.left.area / place.area)
        if share <= most.amount:
            continue
        values: dict[str, Filling] = {
            "parts": called(review.plan, clear.parts),
            "cover": "cover" if len(clear.parts) > 1 else "covers",
            "across": length(vent.across),
            "up": length(vent.up),
            "share": percent(share),
            "most": most.value,
            "off": length(clear.before[0].gap),
            "gap": gap.value,
            "source": gap.source.partition(";")[0],
        }
        yield Finding(
            parts=clear.parts,
            at=vent.span or review.plan.span,
            says="{parts} {cover} {share} of the vent {across} across and {up} up, {off} off the wall: {gap} "
            "is to stay clear before a vent ({source}), or the air that a heater or a fire needs does not "
            "come through.",
            do="Leave out or cut away what is before it, or set the piece {gap} off the wall or elsewhere; "
            "the appliance's instructions and the local code decide, and a licensed installer can move a "
            "vent.",
            values=values,
            working=Working(
                (Figure("room before the vent", gap.value, gap.source),),
                "area of the vent behind what is nearer than that / its whole area",
                Figure("covered", values["share"]),
                Figure("at most", most.value, most.source),
            ),
            also_at=tuple(dict.fromkeys(review.span_of(name) for name in clear.parts))[:2],
        )
