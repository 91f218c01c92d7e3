"""What was taken for granted."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Figure, Finding, Severity, Working
from reviewer.review import Review
from reviewer.rulebook import rule


@rule("assumed", topic="assumptions", severity=Severity.NOTE)
def assumed(review: Review) -> Iterator[Finding]:
    """The plan leaves something open, and the review took a usual value for it.

    Goes wrong: The figure is a fair guess, but not yours: another wood is less stiff, your yard's
    lumber is wetter, the paint dries slower. A result near its limit can go the other way.

    Judged by: Every value that the review needed and the plan does not state, with where it comes from,
    once for all the parts it serves. Stating it in the plan replaces it and takes this note away.

    Leaves out: What no clause of the plan language can state.

    Sources: named with each note

    Flagged:

        plan "Shelf" in inches
        stock board: 1x8 pine
        part shelf: board, across, flat, 24 long, left at 0, front at 0, on floor
        load shelf: books

    Quiet:

        plan "Shelf" in inches
        stock board: 1x8 pine
        part shelf: board, across, flat, 24 long, left at 0, front at 0, on floor
        load shelf: books
        accept assumed because "the usual figures will do for a shelf on the floor"
    """
    for taken in review.assumptions:
        yield Finding(
            parts=(),
            at=taken.span,
            says=f"{{about}}: {taken.what} ({{source}}).",
            do="To say otherwise, write: {say}"
            if taken.say
            else "Keep it in mind where a result is near its limit.",
            values={"about": taken.about, "value": taken.value, "source": taken.source, "say": taken.say},
            working=Working((Figure(taken.about, taken.value, taken.source),)),
        )
