"""A piece that its room's skirting keeps from the wall."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Figure, Filling, Finding, Severity, Working
from reviewer.model.plan import Axis
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.setting_out.solid import Solid
from reviewer.units import TOLERANCE_MM, fine_length, length
from reviewer.wording import listed


def _depth_into(solid: Solid, face: float, tall: float, deep: float) -> float:
    """How far a part reaches into the skirting, mm; 0 where it clears it."""
    if solid.low[Axis.UP] >= tall - TOLERANCE_MM or solid.high[Axis.DEEP] <= face - deep + TOLERANCE_MM:
        return 0.0
    if solid.body is None:
        return solid.high[Axis.DEEP] - (face - deep)
    from reviewer.geometry.convex import box, intersection

    far = 1e5
    skirting = box((-far, face - deep, 0.0), (far, face + far, tall))
    bits = [bit for piece in solid.body.pieces if (bit := intersection(piece, skirting)) is not None]
    return max((bit.high[Axis.DEEP] - (face - deep) for bit in bits), default=0.0)


@rule(
    "stands-off-wall",
    topic="fit",
    severity=Severity.NOTE,
    limits=("skirting-thickness",),
    needs=("skirting", "setting.wall"),
)
def stands_off_wall(review: Review) -> Iterator[Finding]:
    """A piece that the skirting keeps from the wall it is drawn against.

    Goes wrong: The case is drawn tight to the wall, and stands a finger's breadth off it: things fall down
    behind, and a screw through the back into a stud is too short, or bends the back.

    Judged by: What of the piece is within the height of the skirting and nearer to the wall than it is
    thick. It is a note, and a warning where the piece is fixed to that wall.

    Leaves out: Walls out of plumb, and skirtings that are not as thick at their top as at their foot.

    Sources: thickness where the plan does not say: common practice, no source

    Flagged:

        plan "Case" in inches
        stock panel: birch plywood 3/4
        part side: panel, upright, facing side, 12 deep, 40 tall, left at 0, front at 0, on floor
        room study: indoors, wall behind, skirting 4 tall by 5/8 deep

    Quiet:

        plan "Case" in inches
        stock panel: birch plywood 3/4
        part side: panel, upright, facing side, 12 deep, 40 tall, left at 0, front at 0, on floor
            notch 5/8 deep by 4 tall at back bottom
        room study: indoors, wall behind, skirting 4 tall by 5/8 deep
    """
    room, wall = review.plan.room, review.setting.wall
    if room is None or room.skirting is None or wall is None or wall[0] != Axis.DEEP:
        return
    usual = review.limit("skirting-thickness")
    tall, said = room.skirting
    deep = said if said is not None else usual.amount
    into = {
        solid.name: found
        for solid in review.setting.solids.values()
        if (found := _depth_into(solid, wall[1], tall, deep)) > TOLERANCE_MM
    }
    if not into:
        return
    most = max(into.values())
    fixed = bool(review.plan.restraints) or any(piece.fixed for piece in review.pieces)
    values: dict[str, Filling] = {
        "parts": listed(list(into)),
        "meet": "meets" if len(into) == 1 else "meet",
        "tall": length(tall),
        "deep": fine_length(deep),
        "assumed": "" if said is not None else f" ({usual.source})",
        "off": fine_length(most),
    }
    yield Finding(
        parts=tuple(into),
        at=room.spans.get("skirting", room.span),
        says=(
            "{parts} {meet} the skirting, {tall} tall and {deep} thick{assumed}: the piece stands {off} "
            "further "
            "from the wall than it is drawn."
        ),
        do=(
            "Notch {parts} {off} deep by {tall} tall at back bottom, or draw the piece off the wall "
            "(“wall behind "
            "{off} away”)"
            + (
                " and give what fixes it to the wall that much more length, with a packing behind."
                if fixed
                else "."
            )
        ),
        values=values,
        working=Working(
            (Figure("skirting", fine_length(deep), "as planned" if said is not None else usual.source),),
            "skirting - gap behind the piece",
            Figure("stands off by", fine_length(most)),
        ),
        also_at=tuple(dict.fromkeys(review.span_of(name) for name in into))[:2],
        severity=Severity.WARNING if fixed else None,
    )
