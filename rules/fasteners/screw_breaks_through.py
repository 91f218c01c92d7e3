"""Screws and nails that come out of the far face."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Edit, Figure, Filling, Finding, Severity, Working
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.units import TOLERANCE_MM, fine_length, length
from reviewer.wording import listed
from reviewer.workshop.driving import Driven
from reviewer.workshop.screw_lengths import (
    Pulled,
    bite_least,
    by_fastening,
    cover_asked,
    fitting_lengths,
    lacks_cover,
    pulled_pairs,
    thickness_that_does,
    with_length,
)


def _remedy(
    review: Review, group: list[Driven], failing: list[Driven], pulled: Pulled
) -> tuple[str, dict[str, Filling], Edit | None]:
    """A length that keeps bite and cover in every joint of these words; else the next best thing."""
    worst = failing[0]
    kind = {"kind": worst.kind}
    for joints, apart in ((group, ""), (failing, " in a join of their own")):
        lengths = fitting_lengths(joints, review.limits, pulled, review.units)
        if lengths:
            use = lengths[-1]
            values: dict[str, Filling] = {
                **kind,
                "use": length(use),
                "spare": fine_length(min(each.cover_of(use) for each in failing)),
                "bite": length(min(each.bite_of(use) for each in failing)),
            }
            edit = with_length(review.source, review.plan, worst.fastening, use) if not apart else None
            return f"Use {{use}} {{kind}} here{apart}: they bite {{bite}} and leave {{spare}}.", values, edit
    asked = cover_asked(worst, worst.length, review.limits).amount
    needed = asked - worst.cover
    if needed <= worst.fastening.counterbore:
        less = worst.fastening.counterbore - needed
        return "Counterbore only {less} deep.", {"less": fine_length(less)}, None
    bite = bite_least(worst, review.limits).amount
    thick = thickness_that_does(worst, bite, review.limits, review.units)
    values = {"point": worst.point_part, "thick": length(thick), "kind": worst.kind}
    return (
        "No usual length of {kind} bites here and stays inside: make {point} at least {thick} thick, "
        "or join it with dowels and glue.",
        values,
        None,
    )


def _finding(review: Review, group: list[Driven], failing: list[Driven], pulled: Pulled) -> Finding:
    failing.sort(key=lambda each: round(each.cover, 2))
    worst = failing[0]
    asked = cover_asked(worst, worst.length, review.limits)
    heads = tuple(dict.fromkeys(each.head_part for each in failing))
    points = tuple(dict.fromkeys(each.point_part for each in failing))
    comes_out = worst.cover < -TOLERANCE_MM
    alike = all(abs(each.cover - worst.cover) <= TOLERANCE_MM for each in failing)
    do, more, edit = _remedy(review, group, failing, pulled)
    values: dict[str, Filling] = {
        "kind": worst.kind,
        "heads": listed(heads),
        "points": listed(points),
        "out": fine_length(-worst.cover),
        "left": fine_length(worst.cover),
        "limit": fine_length(asked.limit.amount),
        "who": asked.limit.source,
        "lack": fine_length(asked.limit.amount - worst.cover),
        "long": length(worst.length),
        "grip": length(worst.grip),
        "behind": length(worst.behind),
        **more,
    }
    up_to = "" if alike else "up to "
    if comes_out:
        says = f"come out of the far face by {up_to}{{out}}"
    elif worst.cover <= TOLERANCE_MM:
        says = "end right at the far face"
    else:
        says = f"leave {'only ' if alike else 'as little as '}{{left}} of wood over their points"
    says += "; the limit is {limit} ({who}), so {lack} is missing."
    return Finding(
        parts=tuple(dict.fromkeys((*points, *heads))),
        at=worst.fastening.span,
        says=f"The {{kind}} from {{heads}} into {{points}} {says}",
        do=do,
        values=values,
        working=Working(
            (
                Figure("length", length(worst.length)),
                Figure(f"wood of {worst.head_part} under the head", length(worst.grip)),
                Figure("bite", fine_length(worst.bite)),
                Figure(f"wood of {worst.point_part}", length(worst.behind)),
            ),
            "wood over the point = wood - (length - wood under the head)"
            if worst.pocket is None
            else "wood over the point = wood - (length - wood under the head) × cos 15°",
            Figure("wood over the point", fine_length(worst.cover)),
            Figure("limit", fine_length(asked.limit.amount), asked.limit.source),
        ),
        edit=edit,
        severity=Severity.ERROR if worst.cover <= TOLERANCE_MM else Severity.WARNING,
    )


@rule(
    "screw-breaks-through",
    topic="fasteners",
    severity=Severity.ERROR,
    limits=("cover", "cut-difference", "bite-least", "bite-pull", "bite-diameters", "wallboard",
            "pocket-length-difference"),
    needs=("driven",),
)  # fmt: skip
def screw_breaks_through(review: Review) -> Iterator[Finding]:
    """A screw longer than the wood in front of it comes out of the far face.

    Goes wrong: The point tears out a crater in the show face, or pricks whoever sits on it. Nobody sees
    it coming, because the sum has three terms: the screw, the wood under its head, the wood beyond.

    Judged by: A screw or nail lies square to the faces that meet. Its bite is its length less the wood
    under its head, which a counterbore and a housing make less; what is left of the far part beyond the
    bite is held against the limit cover, with half of a mark on the tape let go. A pocket screw runs at
    15 degrees from the stop that is set for its stock: half of the usual screw lies under the head. The
    usual pocket screw for a stock is only told when it does not stay inside. A part that lies whole
    behind the far one counts with it. Out of the wood is an error, too little left a warning.

    Leaves out: Bolts, which come out on purpose, and nails meant to be clenched. Points that meet another
    screw. The set of the drill's stop where it is not the usual one.

    Sources: 1/8 in over the point: common practice, no source; pocket geometry: 15 degrees read in two
    sources, the rest common practice, no source

    Flagged:

        plan "Long screws" in inches
        stock board: actual 3/4 x 5 1/2 pine
        outline box: 20 across, 5 1/2 deep, 6 tall, on floor
        part side for each of left, right: board, upright, facing side, as tall as box, on floor
            flush with each of box, flush with front of box
        part top: board, across, flat, on box, from left of box to right of box, flush with front of box
        part cleat: board, across, flat, 10 long, under top, flush with front of box, centred across on box
        join top to side.*: screws #8 x 2, 2 per joint, from above
        join cleat to top: screws #8 x 1 1/2, 4 per joint, from below

    Quiet:

        plan "Right screws" in inches
        stock board: actual 3/4 x 5 1/2 pine
        outline box: 20 across, 5 1/2 deep, 6 tall, on floor
        part side for each of left, right: board, upright, facing side, as tall as box, on floor
            flush with each of box, flush with front of box
        part top: board, across, flat, on box, from left of box to right of box, flush with front of box
        part cleat: board, across, flat, 10 long, under top, flush with front of box, centred across on box
        join top to side.*: screws #8 x 2, 2 per joint, from above
        join cleat to top: screws #8 x 1 1/4, 4 per joint, from below
    """
    pulled: Pulled | None = None
    for group in by_fastening(review.driven):
        failing = [
            each
            for each in group
            if each.kind != "bolts" and not each.misses and lacks_cover(each, each.length, review.limits)
        ]
        if failing:
            if pulled is None:
                pulled = pulled_pairs(review.holding, review.carrying)
            yield _finding(review, group, failing, pulled)
