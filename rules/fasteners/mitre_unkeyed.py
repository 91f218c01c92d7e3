"""Plain mitres that nothing but glue on end grain holds."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Edit, Filling, Finding, Severity
from reviewer.language.source import Span
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.setting_out.result import Joint
from reviewer.wording import listed
from reviewer.workshop.gluing import mitred_by_ends


def _laden(review: Review) -> frozenset[str]:
    """Parts that carry something: a load of the plan's, or another part."""
    carries = {held.by for supports in review.holding.supports.values() for held in supports}
    return frozenset(carries | set(review.loads_by_part))


def _finding(review: Review, group: list[Joint], laden: bool) -> Finding:
    parts = tuple(dict.fromkeys(name for joint in group for name in (joint.left, joint.right)))
    join = group[0].join
    assert join.housing is not None
    values: dict[str, Filling] = {"parts": listed(parts)}
    held = "glue alone" if join.glue is not None else "nothing at all"
    says = f"The mitres of {{parts}} are held by {held}, and both faces of a mitre are nearly end grain"
    says += ", in a frame that carries weight." if laden else "."
    return Finding(
        parts=parts,
        at=join.housing.span,
        says=says + " They open at the heel when the wood dries, and let go.",
        do="Put a spline or keys across them (“splined mitre”), or dowels or biscuits, or choose a half lap.",
        values=values,
        edit=Edit(join.housing.span, "splined mitre"),
        severity=None if laden else Severity.NOTE,
    )


@rule("mitre-unkeyed", topic="fasteners", severity=Severity.WARNING)
def mitre_unkeyed(review: Review) -> Iterator[Finding]:
    """A mitre of solid boards that glue on end grain holds alone.

    Goes wrong: Glue sinks into the open pores of a mitre and starves the joint. It looks perfect until the
    first dry winter, opens at the heel, and the corner comes apart in the hand.

    Judged by: Plain mitres of two solid boards that run different ways and meet at their ends, with no
    fastener, biscuit, dowel or wedge. Where one of them carries a load of the plan's or another part it is
    a warning, elsewhere a note: many a picture frame holds.

    Leaves out: Mitres along the edges of boards, whose glue meets long grain. Sheets, half of whose layers
    run along the joint. Mitres that other joints nearby relieve.

    Sources: Wood Handbook ch. 10: an end-grain joint reaches about a quarter of the wood's strength along
    the grain at best, and a slanting one that is to carry needs a slope of 1 in 12; the rest common
    practice, no source

    Flagged:

        plan "Frame stand" in inches
        stock rail: actual 3/4 x 2 red oak
        outline frame: 24 across, 12 deep, 3/4 tall, on floor
        part front: rail, across, flat, from left of frame to right of frame, flush with front of frame
            on floor
        part back: like front, mirrored deep about frame
        part end for each of left, right: rail, deep, flat, from front of frame to back of frame
            flush with each of frame, on floor
        part tray: rail, across, flat, from left of frame to right of frame, on front
            flush with front of frame
        join front, back to end.*: mitre, glue pva
        join tray to front: glue pva
        load tray: 5 kg

    Quiet:

        plan "Frame stand" in inches
        stock rail: actual 3/4 x 2 red oak
        outline frame: 24 across, 12 deep, 3/4 tall, on floor
        part front: rail, across, flat, from left of frame to right of frame, flush with front of frame
            on floor
        part back: like front, mirrored deep about frame
        part end for each of left, right: rail, deep, flat, from front of frame to back of frame
            flush with each of frame, on floor
        part tray: rail, across, flat, from left of frame to right of frame, on front
            flush with front of frame
        join front, back to end.*: splined mitre, glue pva
        join tray to front: glue pva
        load tray: 5 kg
    """
    if not any(join.housing is not None and join.housing.kind == "mitre" for join in review.plan.joins):
        return
    laden = _laden(review)
    groups: dict[Span, list[Joint]] = {}
    for joint in mitred_by_ends(review):
        assert joint.join.housing is not None
        groups.setdefault(joint.join.housing.span, []).append(joint)
    for group in groups.values():
        yield _finding(review, group, any(joint.left in laden or joint.right in laden for joint in group))
