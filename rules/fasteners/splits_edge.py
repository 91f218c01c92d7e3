"""Fasteners so near to the edge of a board that they split it off or bulge out."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Finding, Severity
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.rules.fasteners._split_words import split_findings


@rule("splits-edge", topic="fasteners", severity=Severity.WARNING, limits=("split-edge",))
def splits_edge(review: Review) -> Iterator[Finding]:
    """A screw or nail close to the edge of a board breaks the edge off, or bulges its side.

    Goes wrong: The wood between the fastener and the edge is thinner than the fastener pushes aside. It
    bulges, cracks along the grain or breaks out, and the fastener holds nothing.

    Judged by: For every screw, nail, pocket screw and bolt, in both of its parts, the distance from its
    middle where it enters to the nearer edge (into end grain: to the nearer edge and face), in diameters,
    against split-edge. A screw in the middle of a 3/4 in edge stands at 2.3 diameters of a #8, which
    makers do every day; the 2.5 that the standard's commentary suggests is not asked for.

    Leaves out: How hard a load pushes towards the edge; for that 4 diameters are asked for.

    Sources: National Design Specification for Wood Construction 2018, Table 12.5.1C, as transcribed, where
    it is the least for bolts and lag screws

    Flagged:

        plan "Thin edge" in inches
        stock strip: actual 1/2 x 2 1/2 pine
        stock board: actual 3/4 x 2 1/2 pine
        part rail: strip, across, on edge, 20 long, on floor, left at 0, front at 0
        part top: board, across, flat, 20 long, on rail, left at 0, front at 0
        join top to rail: screws #10 x 2, every 6, from above

    Quiet:

        plan "Thin screws" in inches
        stock strip: actual 1/2 x 2 1/2 pine
        stock board: actual 3/4 x 2 1/2 pine
        part rail: strip, across, on edge, 20 long, on floor, left at 0, front at 0
        part top: board, across, flat, 20 long, on rail, left at 0, front at 0
        join top to rail: screws #6 x 2, every 6, from above
    """
    yield from split_findings(review, ("edge",))
