"""A window that the piece takes too much of."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Figure, Filling, Finding, Severity, Working
from reviewer.plan_words import called
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.units import length, percent
from reviewer.workshop.wall_covers import behind, clear_of, patch_of


@rule(
    "covers-window",
    topic="fit",
    severity=Severity.WARNING,
    limits=("window-depth", "window-covered"),
    needs=("windows",),
)
def covers_window(review: Review) -> Iterator[Finding]:
    """A window that the piece stands in front of.

    Goes wrong: The tall bookcase fits the wall to an inch, and the window is behind it. The room is dark, the
    window can't be opened or cleaned, and the sun bleaches the books from behind.

    Judged by: How much of each window on the wall behind is hidden, seen from straight in front, by parts
    that stand nearer to the wall than window-depth; more than window-covered is told.

    Leaves out: Windows that people are to get out by, which blocks-escape judges; what stands on the piece;
    whether the window still opens; how much daylight and air a room has to have, which the local code says.

    Sources: own choice; open shelves across a window and a bench a little over its sill are everyday work

    Flagged:

        plan "Bookcase" in inches
        stock panel: birch plywood 3/4
        outline case: 36 across, 12 deep, 60 tall, on floor
        part side for each of left, right: panel, upright, facing side, 12 deep, 60 tall, on floor
            flush with each of case, flush with front of case
        part back: panel, upright, facing front, 60 tall, between side.left and side.right across, on floor
            flush with back of case
        join back to side.*: screws #8 x 2, 3 per joint
        room study: indoors, wall behind, window 36 wide 48 tall 10 across 30 up

    Quiet:

        plan "Bookcase" in inches
        stock panel: birch plywood 3/4
        outline case: 36 across, 12 deep, 32 tall, on floor
        part side for each of left, right: panel, upright, facing side, 12 deep, 32 tall, on floor
            flush with each of case, flush with front of case
        part back: panel, upright, facing front, 32 tall, between side.left and side.right across, on floor
            flush with back of case
        join back to side.*: screws #8 x 2, 3 per joint
        room study: indoors, wall behind, window 36 wide 48 tall 10 across 30 up
    """
    if not behind(review):
        return
    depth, most = review.limit("window-depth"), review.limit("window-covered")
    for window in review.windows:
        place = patch_of(window)
        clear = clear_of(review, place, depth.amount)
        share = 100 * (1 - clear.left.area / place.area)
        if share <= most.amount:
            continue
        values: dict[str, Filling] = {
            "parts": called(review.plan, clear.parts),
            "cover": "cover" if len(clear.parts) > 1 else "covers",
            "across": length(window.across),
            "up": length(window.up),
            "share": percent(share),
            "most": most.value,
            "source": most.source.partition(":")[0],
        }
        yield Finding(
            parts=clear.parts,
            at=window.span or review.plan.span,
            says="{parts} {cover} {share} of the window {across} across and {up} up: more than {most} is "
            "much for light, air and cleaning ({source}).",
            do="Choose another place for the piece, keep it below the sill, or leave its back out there.",
            values=values,
            working=Working(
                (Figure("in front, when nearer than", depth.value, depth.source),),
                "area of the window behind the parts / its whole area",
                Figure("hidden", values["share"]),
                Figure("at most", most.value, most.source),
            ),
            also_at=tuple(dict.fromkeys(review.span_of(name) for name in clear.parts))[:2],
        )
