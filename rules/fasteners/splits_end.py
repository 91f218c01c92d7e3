"""Fasteners so near to the end of a board, or to the next in their row, that it splits along the grain."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Finding, Severity
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.rules.fasteners._split_words import split_findings


@rule(
    "splits-end",
    topic="fasteners",
    severity=Severity.WARNING,
    limits=("split-end", "split-end-unbored", "split-spacing", "split-spacing-unbored", "split-hardwood"),
)
def splits_end(review: Review) -> Iterator[Finding]:
    """A screw or nail close to the end of a board, or to its neighbour along the grain, splits it.

    Goes wrong: A fastener is a wedge. Near an end there is too little wood to hold the fibres together, and
    the board opens along its grain, often only when the last turn is driven or after a winter.

    Judged by: For every screw, nail, pocket screw and bolt, in both of its parts, the distance from its
    middle where it enters to the nearer end of the board, in diameters, against split-end; where no hole is
    bored (nails, and screws with no pilot holes) against split-end-unbored, which hardwood and fibre panels
    raise by split-hardwood. The next of the same row along the same grain is held against split-spacing in
    the same way. Bored holes are taken for screws of which the plan says nothing.

    Leaves out: Plywood, whose plies cross. Two that run into each other: fasteners-collide tells those.
    What goes into end grain, which has edges only. How hard a load pushes towards the end; for that 10
    diameters are asked for, and 5 for none.

    Sources: National Design Specification for Wood Construction 2018, Tables 12.5.1A and B, as transcribed,
    where they are the least for bolts and lag screws; EN 1995-1-1, Table 8.2, second-hand

    Flagged:

        plan "Slats near their ends" in inches
        stock strip: actual 3/4 x 2 1/2 pine
        outline tray: 20 across, 12 deep, 1 1/2 tall, on floor
        part rail for each of left, right: strip, deep, flat, 12 long, on floor, flush with each of tray
            front at 0
        part slat: strip, across, flat, on rail.left, left at 2 1/4, 15 1/2 long, front at 2
        join slat to rail.*: screws #8 x 1 1/4, 2 per joint, from above, no pilot holes

    Quiet:

        plan "Slats over their rails" in inches
        stock strip: actual 3/4 x 2 1/2 pine
        outline tray: 20 across, 12 deep, 1 1/2 tall, on floor
        part rail for each of left, right: strip, deep, flat, 12 long, on floor, flush with each of tray
            front at 0
        part slat: strip, across, flat, on rail.left, from left of tray to right of tray, front at 2
        join slat to rail.*: screws #8 x 1 1/4, 2 per joint, from above, no pilot holes
    """
    yield from split_findings(review, ("end", "row"))
