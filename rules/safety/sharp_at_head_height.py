"""Square corners that stick out where heads are."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Figure, Finding, Severity, Working
from reviewer.limits import Limit
from reviewer.model.plan import Axis
from reviewer.model.shapes import Arrises, Corners, Rounded
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.setting_out.solid import Solid
from reviewer.units import TOLERANCE_MM, length
from reviewer.workshop.standing import Piece
from reviewer.workshop.who_uses import children_here, made_for_a_child, word_in

#: Rooms that people walk through: own choice.
_WALKED = ("hall", "hallway", "corridor", "passage", "landing", "entrance", "entry", "stair", "lobby")

_SAYS = (
    "{part} sticks out {out} with square corners {up} above the floor, where {whose} heads are ({low} to "
    "{high}): what sticks out more than {most} above the floor is walked into."
)
_DO = (
    "Round its front corners, for example “corners rounded {radius}”, or hang it higher or lower; where many "
    "people pass, your local code decides."
)
_CASE = (
    "{part} stands out {out} {from}, {up} above the floor, where {whose} heads are ({low} to {high}): "
    "what sticks out more than {most} above the floor is walked into."
)
_CASE_DO = (
    "Put it where nobody walks past, or make it shallower, and round its front edges well; where "
    "many people pass, your local code decides."
)
#: Parts at the outside of a piece that are looked at: own choice, far more than a piece has.
_OUTERMOST = 40
_CHILDREN, _GROWN = "children's", "grown people's"


def _rounded(review: Review, part: str) -> bool:
    shape = review.plan.parts[part].shape
    return shape is not None and any(isinstance(cut, Corners | Arrises | Rounded) for cut in shape.cuttings)


def _outermost(review: Review, piece: Piece) -> list[str]:
    """The flat parts that reach the outside of a piece at some side: nothing sticks out further."""
    solids = review.setting.solids
    return [
        name
        for name in piece.parts
        if solids[name].thick == Axis.UP
        and any(
            solids[name].low[axis] <= piece.low[axis] + TOLERANCE_MM
            or solids[name].high[axis] >= piece.high[axis] - TOLERANCE_MM
            for axis in (Axis.ACROSS, Axis.DEEP)
        )
    ][:_OUTERMOST]


def _beside(review: Review, piece: Piece, solid: Solid) -> str | None:
    """What runs up or down from every corner of a part that is not at the wall: a case has no free corner."""
    solids = review.setting.solids
    wall = review.setting.wall
    there: str | None = None
    for x in (solid.low[0], solid.high[0]):
        for y in (solid.low[1], solid.high[1]):
            if wall is not None and abs((x, y)[wall[0]] - wall[1]) <= TOLERANCE_MM:
                continue
            there = next(
                (
                    name
                    for name in piece.parts
                    if name != solid.name
                    and solids[name].thick != Axis.UP
                    and all(
                        solids[name].low[axis] - TOLERANCE_MM <= at <= solids[name].high[axis] + TOLERANCE_MM
                        for axis, at in enumerate((x, y))
                    )
                    and solids[name].low[2] <= solid.high[2] + TOLERANCE_MM
                    and solids[name].high[2] >= solid.low[2] - TOLERANCE_MM
                ),
                None,
            )
            if there is None:
                return None
    return there


def _sticks_out(review: Review, piece: Piece, solid: Solid) -> float:
    """How far a part stands out beyond what is below it in its piece, or from the wall that it hangs on."""
    below = [
        review.setting.solids[name]
        for name in piece.parts
        if review.setting.solids[name].low[Axis.UP] < solid.low[Axis.UP] - TOLERANCE_MM
        and review.setting.solids[name].extent(Axis.UP) > solid.extent(Axis.UP)
    ]
    if not piece.feet:
        wall = review.setting.wall
        if wall is None:
            return 0.0
        axis, place = wall
        return max(abs(solid.low[axis] - place), abs(solid.high[axis] - place))
    if not below:
        return 0.0
    return max(
        max(
            min(other.low[axis] for other in below) - solid.low[axis],
            solid.high[axis] - max(other.high[axis] for other in below),
        )
        for axis in (Axis.ACROSS, Axis.DEEP)
    )


@rule(
    "sharp-at-head-height",
    topic="safety",
    severity=Severity.WARNING,
    limits=(
        "overhang-walked-into",
        "head-height-least",
        "head-height-most",
        "child-head-least",
        "child-head-most",
        "child-age",
    ),
    needs=("plan.room",),
)
def sharp_at_head_height(review: Review) -> Iterator[Finding]:
    """A part that sticks out with square corners where heads are.

    Goes wrong: A shelf in the hall or the end of a long top is walked into; for a child running by it is
    just at the height of the eyes.

    Judged by: A flat part that stands out from the wall it hangs on, or beyond what it stands on, by more
    than people notice, with square corners: at grown people's height in rooms that people walk through
    (hall, landing, corridor), at children's height where the plan says that children are about or the
    title gives the piece to a child. One of a piece is told, that which sticks out furthest; where uprights
    run along all its corners, as in a wall cabinet, it is the case that sticks out. In a room that is not
    walked through it is a note, unless the piece is a child's.

    Leaves out: Corners behind other things, edges that are only eased with sandpaper and do not stand in
    the plan, and whether anyone passes there. Local codes decide for halls that many people use.

    Sources: 4 in, 27 in and 80 in as in the ADA standards 307.2 and 307.4 (from memory), made for public
    ways; heights of heads are an own choice.

    Flagged:

        plan "Hall shelf" in inches
        stock board: actual 3/4 x 9 1/4 pine, 6 ft
        part cleat: board, across, on edge, rip 2 1/2, 30 long, against wall, bottom 60 above floor, left at 1
        part shelf: board, across, flat, 32 long, on cleat, back 0 in front of front of wall, left at 0
        join cleat to wall: screws #10 x 3, every 10
        join shelf to cleat: screws #8 x 2, every 8, from above
        room hall: indoors, wall behind, studs every 16

    Quiet:

        plan "Hall shelf" in inches
        stock board: actual 3/4 x 9 1/4 pine, 6 ft
        part cleat: board, across, on edge, rip 2 1/2, 30 long, against wall, bottom 60 above floor, left at 1
        part shelf: board, across, flat, 32 long, on cleat, back 0 in front of front of wall, left at 0
            corners rounded 2
        join cleat to wall: screws #10 x 3, every 10
        join shelf to cleat: screws #8 x 2, every 8, from above
        room hall: indoors, wall behind, studs every 16
    """
    ranges: list[tuple[str, Limit, Limit]] = []
    walked = review.plan.room is not None and word_in(review.plan.room.name, _WALKED) is not None
    if children_here(review.plan, review.limits):
        ranges.append((_CHILDREN, review.limit("child-head-least"), review.limit("child-head-most")))
    if walked:
        ranges.append((_GROWN, review.limit("head-height-least"), review.limit("head-height-most")))
    if not ranges:
        return
    most = review.limit("overhang-walked-into")
    for piece in review.pieces:
        best: tuple[float, Solid, str, tuple[str, Limit, Limit]] | None = None
        for name in _outermost(review, piece):
            solid = review.setting.solids[name]
            within = next(
                (
                    each
                    for each in ranges
                    if each[1].amount <= solid.high[Axis.UP] and solid.low[Axis.UP] <= each[2].amount
                ),
                None,
            )
            if within is None:
                continue
            part = _beside(review, piece, solid) or name
            if _rounded(review, part):
                continue
            out = _sticks_out(review, piece, solid)
            if out > most.amount + TOLERANCE_MM and (
                best is None or (round(out, 3), best[1].low) > (round(best[0], 3), solid.low)
            ):
                best = out, solid, part, within
        if best is None:
            continue
        out, solid, part, (whose, low, high) = best
        yield Finding(
            parts=(part,),
            at=review.span_of(part),
            says=_SAYS if part == solid.name else _CASE,
            do=_DO if part == solid.name else _CASE_DO,
            values={
                "part": part,
                "out": length(out),
                "from": "beyond what it stands on" if piece.feet else "from the wall",
                "up": length(review.setting.solids[part].low[Axis.UP]),
                "whose": whose,
                "low": low.value,
                "high": high.value,
                "most": most.value,
                "radius": "1 1/2" if review.units.value == "inch" else "40",
            },
            working=Working(
                figures=(
                    Figure("sticks out", length(out), "beyond what holds it"),
                    Figure(f"{whose} heads, from", low.value, low.source),
                    Figure(f"{whose} heads, to", high.value, high.source),
                ),
                limit=Figure("walked into from", most.value, most.source),
            ),
            severity=Severity.WARNING if walked or made_for_a_child(review.plan) else Severity.NOTE,
        )
