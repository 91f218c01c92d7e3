"""Openings that let a child's body through and hold its head, or that hold a finger."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Figure, Filling, Finding, Severity, Working
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.units import count, fine_length, length
from reviewer.workshop.openings import PAIRS, Opening, narrow_gaps, openings

_HEAD = (
    "Between {first} and {second} is an opening of {gap}, {up} above the floor: from {torso} on a small "
    "child's body slips through, and below {head} its head does not."
)
_HEAD_DO = (
    "Set them closer than {torso} or at least {head} apart, or close the opening; the rules for children's "
    "furniture and your local code decide, so have it checked where children climb."
)
_FINGER = (
    "Between {first} and {second} is a gap of {gap}: small fingers go into gaps from {least} on and stick "
    "in those below {most}."
)
_FINGER_DO = (
    "Make the gap narrower than {least} or at least {most}; for a child's piece the standards for "
    "children's furniture decide."
)
_CUT_SHORT = "There are so many bars here that only {pairs} pairs of them were looked at for openings."
_CUT_SHORT_DO = (
    "Measure the other openings by hand: none from {torso} up to {head} where children climb; the rules for "
    "children's furniture and your local code decide."
)


def _finding(review: Review, opening: Opening, says: str, do: str, limits: tuple[str, str]) -> Finding:
    head = says is _HEAD
    show = length if head else fine_length
    least, most = (review.limit(name) for name in limits)
    here, there = review.span_of(opening.second), review.span_of(opening.first)
    values: dict[str, Filling] = {
        "first": opening.first,
        "second": opening.second,
        "gap": show(opening.gap),
        "up": length(opening.low[2]),
        "torso": least.value,
        "head": most.value,
        "least": least.value,
        "most": most.value,
    }
    return Finding(
        parts=(opening.first, opening.second),
        at=here,
        says=says,
        do=do,
        values=values,
        working=Working(
            figures=(
                Figure("opening" if head else "gap", show(opening.gap), "by the plan"),
                Figure("from", least.value, least.source),
            ),
            limit=Figure("below", most.value, most.source),
        ),
        also_at=(there,) if there != here else (),
        severity=Severity.WARNING if head else Severity.NOTE,
    )


@rule(
    "entraps",
    topic="safety",
    severity=Severity.WARNING,
    limits=(
        "opening-torso",
        "opening-head",
        "opening-height",
        "opening-depth",
        "finger-gap-least",
        "finger-gap-most",
        "child-age",
    ),
)
def entraps(review: Review) -> Iterator[Finding]:
    """An opening between bars that a child can get stuck in.

    Goes wrong: A child slips feet first between two rails of a bed or a landing, hangs by its head and
    strangles; or a finger goes into a slot and swells there.

    Judged by: Only where the plan says that children are about, or the title gives the piece to a child.
    Openings between two bars (rails, slats, rungs) that are closed all round and go right through, from
    the size of a body up to the size of a head, whose lower edge is so high that feet do not reach the
    ground. Gaps between the slats of one row from finger size up to where a finger comes out again are a
    note.

    Leaves out: Openings that are open at an end, V-shaped ones, those between leaning bars, holes, and what
    a mattress or a cushion closes. Lower openings, which matter in a cot: have those checked. This is a
    measurement and no test; the rules for children's furniture, local codes and licensed practice decide.

    Sources: 9 in from 16 CFR 1213.3 (read); 3.5 in, 600 mm and the finger sizes from memory of the
    playground handbook of the CPSC, EN 1176-1 and EN 716-1.

    Flagged:

        plan "Landing rail" in inches
        stock post: actual 3 x 3 pine, 8 ft
        stock rail: 2x4 pine, 8 ft
        part post.left: post, upright, 48 tall, on floor, front at 0, left at 0
        part post.right: post, upright, 48 tall, on floor, front at 0, left at 60
        part rail: rail, across, on edge, between post.left and post.right, front 1 behind front of post.left
            3 copies every 10 up, bottom 24 above floor
        room landing: indoors, children under 6

    Quiet:

        plan "Landing rail" in inches
        stock post: actual 3 x 3 pine, 8 ft
        stock rail: 2x4 pine, 8 ft
        part post.left: post, upright, 48 tall, on floor, front at 0, left at 0
        part post.right: post, upright, 48 tall, on floor, front at 0, left at 60
        part rail: rail, across, on edge, between post.left and post.right, front 1 behind front of post.left
            4 copies every 6 1/2 up, bottom 24 above floor
        room landing: indoors, children under 6
    """
    from reviewer.workshop.who_uses import children_here

    if not children_here(review.plan, review.limits):
        return
    torso, head = review.limit("opening-torso"), review.limit("opening-head")
    found = openings(
        review.plan,
        review.setting,
        torso.amount,
        head.amount,
        review.limit("opening-height").amount,
        review.limit("opening-depth").amount,
    )
    for opening in found.found:
        yield _finding(review, opening, _HEAD, _HEAD_DO, ("opening-torso", "opening-head"))
    if found.cut_short:
        yield Finding(
            parts=(),
            at=review.plan.span,
            says=_CUT_SHORT,
            do=_CUT_SHORT_DO,
            values={"pairs": count(PAIRS), "torso": torso.value, "head": head.value},
            severity=Severity.NOTE,
        )
    least, most = review.limit("finger-gap-least").amount, review.limit("finger-gap-most").amount
    for gap in narrow_gaps(review.plan, review.setting, least, most):
        yield _finding(review, gap, _FINGER, _FINGER_DO, ("finger-gap-least", "finger-gap-most"))
