"""Ends of boards that nothing but glue holds."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Filling, Finding, Severity
from reviewer.language.source import Span
from reviewer.reference.glues import glue
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.units import percent
from reviewer.wording import listed
from reviewer.workshop.gluing import glued_by_ends_alone


@rule("glue-on-end-grain", topic="fasteners", severity=Severity.WARNING)
def glue_on_end_grain(review: Review) -> Iterator[Finding]:
    """The end of a board is glued on with nothing else to hold it.

    Goes wrong: End grain drinks the glue and leaves little in the joint. A rail glued between two legs by its
    ends holds while nobody leans on it.

    Judged by: Glued joints without fastener and without housing, where a solid board meets with its end.
    Not where the same two parts are held otherwise too, or both by a third part: a kick that is screwed
    to the bottom above it may be glued to the sides.

    Leaves out: Sheets, half of whose edge is long grain. Plain mitres, for mitre-unkeyed. Whether the joint
    bears its load, for joint-overloaded.

    Sources: Wood Handbook ch. 10: end-grain joints cannot be made strong enough for ordinary service; a
    quarter of the wood's strength along the grain at the very best

    Flagged:

        plan "Bench frame" in inches
        stock post: actual 2 x 2 red oak
        stock rail: actual 3/4 x 3 red oak
        outline frame: 30 across, 2 deep, 16 tall, on floor
        part leg for each of left, right: post, upright, as tall as frame, on floor
            flush with each of frame, flush with front of frame
        part rail: rail, across, on edge, between leg.left and leg.right, flush with top of frame
            centred deep on frame
        join rail to leg.*: glue pva

    Quiet:

        plan "Bench frame" in inches
        stock post: actual 2 x 2 red oak
        stock rail: actual 3/4 x 3 red oak
        outline frame: 30 across, 2 deep, 16 tall, on floor
        part leg for each of left, right: post, upright, as tall as frame, on floor
            flush with each of frame, flush with front of frame
        part rail: rail, across, on edge, between leg.left and leg.right, flush with top of frame
            centred deep on frame
        join rail to leg.*: dowels 1/4 x 1 1/2, 2 per joint, glue pva
    """
    if not any(join.glue is not None and not join.fastenings for join in review.plan.joins):
        return
    groups: dict[Span, list[tuple[str, str, str]]] = {}
    for joint, ends in glued_by_ends_alone(review):
        span = joint.join.glue_span or joint.join.span
        for name in ends:
            other = joint.right if name == joint.left else joint.left
            groups.setdefault(span, []).append((name, other, joint.join.glue or ""))
    for span, found in groups.items():
        parts = tuple(dict.fromkeys(name for name, _, _ in found))
        others = tuple(dict.fromkeys(other for _, other, _ in found if other not in parts))
        one = len(parts) == 1
        values: dict[str, Filling] = {
            "parts": listed(parts),
            "others": listed(others) or "each other",
            "share": percent(100 * glue(found[0][2]).end_grain_fraction),
        }
        yield Finding(
            parts=(*parts, *others),
            at=span,
            says=f"{{parts}} {'is' if one else 'are'} glued to {{others}} by "
            f"{'its end' if one else 'their ends'} "
            "alone. End grain drinks the glue: at the very best such a joint reaches {share} of the wood's "
            "strength along the grain (Wood Handbook ch. 10), and in use it lets go.",
            do="Add dowels, screws or loose tenons, or let the end in with a dado or a tenon.",
            values=values,
        )
