"""Screws and nails that come out of the far face."""

from __future__ import annotations

from collections.abc import Iterator

from reviewer.findings import Edit, Figure, Filling, Finding, Severity, Working
from reviewer.geometry.vectors import moved
from reviewer.language.source import Span
from reviewer.plan_words import called
from reviewer.review import Review
from reviewer.rulebook import rule
from reviewer.units import TOLERANCE_MM, count, fine_length, length
from reviewer.workshop.driving import Driven
from reviewer.workshop.paths import Beside, Paths
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
from reviewer.workshop.tape import taped
from reviewer.workshop.wood_along import Wood


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
        "heads": called(review.plan, heads),
        "points": called(review.plan, points),
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
    if worst.behind <= TOLERANCE_MM:
        says = "find no wood of {points} where they stand: it is cut away there, or they run past it"
        do, edit = "Set them where {points} has wood behind the joint, or drive them at another place.", None
        return Finding(
            parts=tuple(dict.fromkeys((*points, *heads))),
            at=worst.fastening.span,
            says=f"The {{kind}} from {{heads}} {says}.",
            do=do,
            values=values,
        )
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


def _at_the_side(review: Review, shown: list[Beside]) -> Finding:
    """Threads that come out beside an edge, a taper, a notch or a groove."""
    worst = min(
        shown,
        key=lambda each: (
            -round(each.shows, 2),
            each.placed.head_part,
            each.placed.point_part,
            each.placed.number,
        ),
    )
    placed = worst.placed
    solid = review.setting.solids[placed.point_part]
    spot = taped(solid, moved(placed.head, placed.direction, placed.grip))
    thread = placed.diameter / 2
    values: dict[str, Filling] = {
        "kind": placed.kind,
        "head": placed.head_part,
        "point": placed.point_part,
        "shows": fine_length(worst.shows),
        "thick": fine_length(placed.diameter),
        "end": spot.end,
        "along": length(spot.from_end),
        "times": count(len(shown)),
        "left": fine_length(max(0.0, thread - worst.shows)),
    }
    more = "; {times} are like it." if len(shown) > 1 else "."
    return Finding(
        parts=(placed.point_part, placed.head_part),
        at=placed.fastening.span,
        says=f"The thread of the {{kind}} from {{head}} comes out at a side of {{point}}, {{along}} from its "
        f"{{end}} end: it is {{thick}} thick, and the wood beside it is {{shows}} too thin for half of "
        f"that{more}",
        do="Set them further into {point}, or take thinner or shorter ones.",
        values=values,
        working=Working(
            (Figure("half of the thickness", fine_length(thread)),),
            "what shows = half of the thickness - wood from the middle of the thread to the side",
            Figure("what shows", fine_length(worst.shows)),
            None,
        ),
    )


def _sunk_too_deep(review: Review, failing: list[Driven]) -> Finding:
    """Heads that are sunk so deep that next to nothing holds them back."""
    worst = min(failing, key=lambda each: round(each.grip, 2))
    limit = review.limit("cover")
    heads = tuple(dict.fromkeys(each.head_part for each in failing))
    most = worst.grip + worst.fastening.counterbore - limit.amount
    values: dict[str, Filling] = {
        "kind": worst.kind,
        "heads": called(review.plan, heads),
        "deep": length(worst.fastening.counterbore),
        "left": fine_length(worst.grip),
        "limit": fine_length(limit.amount),
        "who": limit.source,
        "most": fine_length(max(0.0, most)),
    }
    through = worst.grip <= TOLERANCE_MM
    says = (
        "leaves no wood under the heads: they go right through"
        if through
        else (
            "leaves only {left} of wood under the heads, which may pull through; {limit} is the least ({who})"
        )
    )
    return Finding(
        parts=heads,
        at=worst.fastening.span,
        says=f"Sinking the {{kind}} {{deep}} deep in {{heads}} {says}.",
        do="Sink them at most {most} deep." if most > 1.0 else "Let the heads sit on the surface.",
        values=values,
        severity=Severity.ERROR if through else Severity.WARNING,
    )


#: A thread shows when more than this share of half its thickness does: round wood is many-sided here.
_SHOWS_SHARE = 0.2


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
    usual pocket screw for a stock is only told when it does not stay inside. All is measured at the real
    place of each fastener, through the true shape of the parts: beside a taper, in a notch, over a groove.
    What lies against the far part there counts with it. Out of the wood is an error, too little left a
    warning. A thread that comes out at a side before its point tapers is an error too, and so is a head
    sunk right through; less wood than the limit cover under a sunk head is a warning.

    Leaves out: Round wood is many-sided where a thread is held against its side. Holes bored in a part
    count as wood. Bolts, which come out on purpose, and nails meant to be clenched. Points that meet another
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
        sunk = [
            each for each in group if _sunk(each) and each.grip < review.limit("cover").amount - TOLERANCE_MM
        ]
        if sunk:
            yield _sunk_too_deep(review, sunk)
    told = {(each.joint[:2], each.fastening.span) for each in review.driven if _told(review, each)}
    yield from _threads_at_a_side(review, told)


def _sunk(each: Driven) -> bool:
    return each.fastening.counterbore > 0 and not each.misses and each.pocket is None


def _told(review: Review, each: Driven) -> bool:
    return each.kind == "bolts" or each.misses or lacks_cover(each, each.length, review.limits)


def _threads_at_a_side(review: Review, told: set[tuple[tuple[str, str], Span]]) -> Iterator[Finding]:
    """Those that are not told already, by the words of the plan."""
    if not review.driven:
        return
    paths = Paths(Wood(review.setting))
    shown: dict[Span, list[Beside]] = {}
    for placed in review.placed:
        joint = placed.joint
        if placed.mouth is None or (joint[:2], placed.fastening.span) in told:
            continue
        if joint.overlap is not None and joint.join.housing is None:
            continue  # parts that claim the same space are told by themselves
        beside = paths.beside(placed)
        if beside is not None and beside.shows > _SHOWS_SHARE * placed.diameter / 2:
            shown.setdefault(placed.fastening.span, []).append(beside)
    for group in shown.values():
        yield _at_the_side(review, group)
