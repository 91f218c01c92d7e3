"""Loads that the plan puts past the end of what is to carry them."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Figure, Filling, Finding, Severity, Working
from reviewer.model.plan import Load, Spot
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.setting_out.directions import FACES
from reviewer.units import TOLERANCE_MM, length
from reviewer.wording import listed

_ALONG = ("across", "deep", "tall")


def _finding(review: Review, load: Load, spot: Spot, parts: tuple[str, ...]) -> Finding:
    away, whole = length(spot.away), length(review.setting.solids[parts[0]].extent(spot.axis))
    past = length(away.amount - whole.amount)
    face = FACES[spot.axis][0 if spot.end == "low" else 1]
    are = "is" if len(parts) == 1 else "are"
    values: dict[str, Filling] = {"parts": listed(parts), "away": away, "whole": whole, "past": past}
    return Finding(
        parts=parts,
        at=load.span,
        also_at=(review.span_of(parts[0]),),
        says=f"A load rests {{away}} from the {face} of {{parts}}, which {are} {{whole}} "
        f"{_ALONG[spot.axis]} only: it is {{past}} off the end.",
        do="Count its place from the part's own end, or name the part that it does rest on.",
        values=values,
        working=Working(
            (Figure(f"place from the {face}", away, "the plan"), Figure("the part", whole)),
            "place - part",
            Figure("off the end", past),
        ),
    )


@rule("load-off-part", topic="structure", severity=Severity.ERROR, needs=("plan.loads",))
def load_off_part(review: Review) -> Iterator[Finding]:
    """A load is put where the part that is to carry it has ended.

    Goes wrong: The place was counted from the end of the whole piece, or the part was made shorter since.
    What it really does to the piece is not reviewed, since nobody knows where it rests.

    Judged by: The stated place of a load from a face of each part it is on, against the size of that part
    along the same direction. For all else that is worked out such a load is taken to rest at the end.

    Leaves out: Loads without a stated place.

    Sources: plain geometry

    Flagged:

        plan "Shelf" in inches
        stock board: actual 3/4 x 9 1/4 pine
        part side for each of left, right: board, upright, facing side, 12 tall, on floor, front at 0
            flush with each of case
        outline case: 30 across, 9 1/4 deep, 13 tall, on floor
        part shelf: board, across, flat, from left of case to right of case, front at 0, on side.left
        load shelf: 20 lb at 40 from left

    Quiet:

        plan "Shelf" in inches
        stock board: actual 3/4 x 9 1/4 pine
        part side for each of left, right: board, upright, facing side, 12 tall, on floor, front at 0
            flush with each of case
        outline case: 30 across, 9 1/4 deep, 13 tall, on floor
        part shelf: board, across, flat, from left of case to right of case, front at 0, on side.left
        load shelf: 20 lb at 10 from left
    """
    solids = review.setting.solids
    for load in review.plan.loads:
        if load.spot is None:
            continue
        alike: dict[float, list[str]] = {}
        for name in load.on:
            whole = solids[name].extent(load.spot.axis)
            if load.spot.away > whole + TOLERANCE_MM:
                alike.setdefault(round(whole, 2), []).append(name)
        for parts in alike.values():
            yield _finding(review, load, load.spot, tuple(parts))
